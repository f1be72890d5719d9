// SPDX-License-Identifier: MIT
// Recomputes rows of a proof from what they print: the printed left side against the printed utilisation.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/verify.hpp>

#include "calculator.hpp"
#include "small_box.hpp"

/// Units after a number are skipped. `nudge` multiplies the number counted `nudged`.
class RowCalculator : public Calculator {
 public:
  RowCalculator(std::string text, std::size_t nudged, double nudge)
      : Calculator(std::move(text)), nudged_(nudged), nudge_(nudge) {}
  std::size_t numbers() const { return count_; }

 private:
  double number(double v, const std::string& digits) override {
    for (const char* unit : {" kNm", " kN", " mm2", " MPa", " m"})
      if (take(std::string(unit))) break;
    // the formulas' own constants are exact
    for (const char* exact : {"1", "2", "3", "4", "6", "0.6", "0.8", "1.02", "1.4", "1.7"})
      if (digits == exact) return v;
    return count_++ == nudged_ ? v * nudge_ : v;
  }

  std::size_t count_ = 0, nudged_;
  double nudge_;
};

struct Printed {
  std::string left;
  double result = 0;
};
inline Printed printed(const std::string& text) {
  const std::size_t last = text.rfind(" = "), before = text.rfind(" = ", last - 1);
  REQUIRE(before != std::string::npos);
  return {text.substr(before + 3, last - before - 3), std::strtod(text.c_str() + last + 3, nullptr)};
}

/// The left side may differ from the result by what the sixth digit of each number, and of the result, leaves open:
/// half a unit of it is at most 5e-6 of the number.
struct Recomputed {
  double value = 0, slack = 0;
};
inline Recomputed recompute(const Printed& p) {
  constexpr double half_digit = 5e-6;
  RowCalculator plain(p.left, static_cast<std::size_t>(-1), 1.0);
  Recomputed out;
  out.value = plain.run();
  out.slack = half_digit * std::abs(p.result) + 1e-15;
  for (std::size_t i = 0; i < plain.numbers(); ++i) {
    const double up = RowCalculator(p.left, i, 1.0 + half_digit).run(),
                 down = RowCalculator(p.left, i, 1.0 - half_digit).run();
    out.slack += (std::max)(std::abs(up - out.value), std::abs(down - out.value));
  }
  return out;
}

inline void recompute_row(const baywork::verify::Row& row) {
  const std::string text = baywork::verify::text(row);
  INFO(text);
  REQUIRE(std::isfinite(row.utilisation));
  const Printed p = printed(text);
  const Recomputed r = recompute(p);
  CHECK(std::abs(r.value - p.result) <= r.slack);
  CHECK(r.slack <= 1e-3 * p.result);
  CHECK(std::abs(p.result - row.utilisation) <= 1e-5 * row.utilisation);
  CHECK(std::abs(row.utilisation - row.demand / row.resistance) <= 1e-12 * row.utilisation);
}

/// What has been recomputed: rows by proof and check, the clauses met ("EN 1999-1-1:2007 6.2.9.3"), and the numbers
/// that are named by a formula of their own, "(1 - n^1.7)".
struct Seen {
  std::map<std::pair<std::string, baywork::verify::Check>, int> rows{};
  std::set<std::string> clauses{}, formulas{};
};

/// A number whose name is a formula of other numbers of its row, all of them printed, has that formula's value.
inline void recompute_names(const baywork::verify::Row& row, Seen& seen) {
  for (std::size_t i = 0; i < row.n_numbers; ++i) {
    const std::string name = row.numbers[i].symbol;
    if (name.find_first_of("-^") == std::string::npos || name.find('(') == std::string::npos) continue;
    std::string formula = name;
    std::vector<std::size_t> others;
    for (std::size_t k = 0; k < row.n_numbers; ++k)
      if (k != i && row.numbers[k].symbol[0] != '\0') others.push_back(k);
    std::sort(others.begin(), others.end(), [&](std::size_t a, std::size_t b) {
      return std::string(row.numbers[a].symbol).size() > std::string(row.numbers[b].symbol).size();
    });
    for (const std::size_t k : others)
      baywork::verify::detail::replace_all(formula, row.numbers[k].symbol,
                                           baywork::verify::detail::printed(row.numbers[k]));
    double should = 0;
    if (name == "cos(pi*n/2)") {
      should = std::cos(std::acos(-1.0) / 2 * std::strtod(formula.c_str() + 7, nullptr));
    } else {
      std::string bare = formula;
      for (const char* known : {"sqrt", " kNm", " kN", " mm2", " MPa", " m"})
        baywork::verify::detail::replace_all(bare, known, "");
      if (bare.find_first_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_") != std::string::npos) continue;
      should = RowCalculator(formula, static_cast<std::size_t>(-1), 1.0).run();
    }
    should = (std::max)(0.0, (std::min)(should, 1.0));  // shares that are left
    INFO(name << " = " << formula);
    // what the sixth digits leave open, most of all in a difference
    CHECK(row.numbers[i].value == doctest::Approx(should).epsilon(2e-5).scale(1.0));
    seen.formulas.insert(name);
  }
}

inline void recompute_all(const std::string& what, const baywork::verify::Proof& proof, Seen& seen) {
  using baywork::verify::Check;
  REQUIRE(!proof.rows().empty());
  for (const baywork::verify::Row& row : proof.rows()) {
    if (row.check == Check::outside_scope) continue;
    INFO(what << ": " << baywork::verify::text(row));
    recompute_row(row);
    recompute_names(row, seen);
    ++seen.rows[{what, row.check}];
    seen.clauses.insert(std::string(row.standard) + " " + row.clause);
  }
}

inline void all_checks_seen(const std::string& what, const Seen& seen) {
  for (std::size_t c = 0; c < baywork::verify::n_member_checks; ++c) {
    const auto check = static_cast<baywork::verify::Check>(c);
    INFO(what << ", " << baywork::verify::name(check));
    CHECK(seen.rows.count({what, check}) == 1);
  }
}

inline bool any_clause(const baywork::verify::Proof& proof, const std::string& clause) {
  for (const baywork::verify::Row& r : proof.rows())
    if (clause == r.clause) return true;
  return false;
}
inline bool any_text(const baywork::verify::Proof& proof, const std::string& words) {
  for (const baywork::verify::Row& r : proof.rows())
    if (baywork::verify::text(r).find(words) != std::string::npos) return true;
  return false;
}

/// A box with wind, load hung eccentrically and self-weight: all six forces in all bars but the axial ones.
inline baywork::verify::Proof proof_of(const baywork::Bar& chord, const baywork::Bar& cross, const baywork::Bar& brace,
                                       double load, double pull = 0.0, const baywork::verify::Basis& basis = {}) {
  using namespace baywork;
  const Analysis analysis{small_box(6, chord, cross, brace)};
  std::vector<Action> hung{point_load(ChordOf::bottom_left, 1.1, load), wind_on(Side::left, load / 2.0)};
  if (pull != 0.0) hung.push_back(point_load(ChordOf::top_left, 3.0, Vec3<>{pull, 0, 0}));
  const Cases cases = analysis.solve(
      {LoadCase{"self-weight", Nature::permanent, {self_weight()}}, LoadCase{"hung", Nature::imposed, hung}});
  return verify::by_material(cases, en1990::ultimate(), basis);
}

template <class ShapeType>
baywork::verify::Proof proof_of(const ShapeType& chord, const ShapeType& cross, const ShapeType& brace,
                                const baywork::material::Material& m, double load, double pull = 0.0,
                                const baywork::verify::Basis& basis = {}) {
  using baywork::Bar;
  return proof_of(Bar{chord, m}, Bar{cross, m}, Bar{brace, m}, load, pull, basis);
}
