// SPDX-License-Identifier: MIT
// A formula's value together with the formula itself, so that it can be printed and recomputed by hand.
#pragma once

#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>

namespace baywork::closed_form {

/// A symbol of a formula and the number that was put in for it.
struct NamedNumber {
  const char* name = "";
  double value = 0;
};

/// Value of a formula. `formula` is written with * / ^ + - ( ) and its symbols in braces:
/// "5*{q}*{L}^4/(384*{EI}) + {q}*{L}^2/(8*{S})"; `numbers` holds every symbol once.
template <Scalar S = double>
struct ClosedForm {
  S value = S(0);
  bool valid = true;  ///< false: computed, but outside `range`
  const char* formula = "";
  const char* range = "";  ///< where the formula holds
  std::vector<NamedNumber> numbers{};
};

namespace detail {
/// Calls literal(char) for plain characters and symbol(name) for each {name}.
template <class Literal, class Symbol>
void walk(const std::string& formula, Literal literal, Symbol symbol) {
  for (std::size_t i = 0; i < formula.size(); ++i) {
    if (formula[i] != '{') {
      literal(formula[i]);
      continue;
    }
    const std::size_t end = formula.find('}', i);
    if (end == std::string::npos)
      fail<BadDescription>("formula " + formula, "a brace is not closed", "symbols as {name} are accepted");
    symbol(formula.substr(i + 1, end - i - 1));
    i = end;
  }
}
}  // namespace detail

/// The formula in symbols: braces taken away.
inline std::string symbols(const std::string& formula) {
  std::string out;
  detail::walk(
      formula, [&out](char c) { out += c; }, [&out](const std::string& name) { out += name; });
  return out;
}

/// The formula with numbers put in for its symbols; negative ones in parentheses. Throws BadDescription for a symbol
/// that `numbers` does not hold.
inline std::string numbers_in(const std::string& formula, const std::vector<NamedNumber>& numbers, int digits = 6) {
  std::string out;
  detail::walk(
      formula, [&out](char c) { out += c; },
      [&](const std::string& name) {
        for (const NamedNumber& n : numbers)
          if (name == n.name) {
            const std::string v = text::number(n.value, digits);
            out += v.front() == '-' ? "(" + v + ")" : v;
            return;
          }
        fail<BadDescription>("formula " + formula, "no number is given for " + name,
                             "one number per symbol is accepted");
      });
  return out;
}

/// "formula in symbols = formula in numbers = value", with `digits` significant digits (6 or more can be recomputed).
template <class S>
std::string with_numbers(const ClosedForm<S>& f, int digits = 6) {
  return symbols(f.formula) + " = " + numbers_in(f.formula, f.numbers, digits) + " = " + text::number(f.value, digits);
}

namespace detail {
template <class S>
S square(const S& x) {
  return S(x * x);
}
template <class S>
S cube(const S& x) {
  return S(x * x * x);
}
template <class S>
S fourth(const S& x) {
  const S y = S(x * x);
  return S(y * y);
}
/// 1/stiffness; a rigid part (infinity) has no flexibility, whatever derivatives it carries.
template <class S>
S flexibility(const S& stiffness) {
  if (is_infinite(stiffness)) return S(0);
  return S(S(1) / stiffness);
}
}  // namespace detail

}  // namespace baywork::closed_form
