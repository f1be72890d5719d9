// SPDX-License-Identifier: MIT
// What every shape needs: designations in mm, checks of its lengths, small powers, the data that follow from others.
#pragma once

#include <concepts>
#include <initializer_list>
#include <string>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork::detail {

/// "round tube 60.3 x 5": the word and the lengths [m], printed in mm.
inline std::string designation(const char* word, std::initializer_list<double> lengths) {
  std::string out = word;
  const char* between = " ";
  for (const double length : lengths) {
    out += between + text::number(length / 1e-3);
    between = " x ";
  }
  return out;
}

template <class S>
std::string millimetres(const S& length) {
  return text::quantity(length, 1e-3, "mm");
}

/// Throws BadDescription unless `length` [m] is finite and above zero.
template <class S>
void require_length(const S& length, const std::string& place, const char* what) {
  if (!is_finite(length) || !(value_of(length) > 0.0))
    fail<BadDescription>(place, std::string(what) + " is " + millimetres(length),
                         "a finite length above zero is accepted");
}

/// Throws BadDescription unless `length` [m] is finite and zero or above.
template <class S>
void require_radius(const S& length, const std::string& place, const char* what) {
  if (!is_finite(length) || !(value_of(length) >= 0.0))
    fail<BadDescription>(place, std::string(what) + " is " + millimetres(length),
                         "a finite radius, zero or above, is accepted");
}

/// Throws BadDescription unless `length` stays below `limit` [m]; `limit_name` says what the limit is.
template <class S>
void require_below(const S& length, const S& limit, const std::string& place, const char* what,
                   const char* limit_name) {
  if (!(value_of(length) < value_of(limit)))
    fail<BadDescription>(place, std::string(what) + " is " + millimetres(length),
                         std::string("less than ") + limit_name + ", " + millimetres(limit) + ", is accepted");
}

/// Throws BadDescription if `length` exceeds `limit` [m].
template <class S>
void require_up_to(const S& length, const S& limit, const std::string& place, const char* what,
                   const char* limit_name) {
  if (value_of(length) > value_of(limit) * (1.0 + 1e-12))
    fail<BadDescription>(place, std::string(what) + " is " + millimetres(length),
                         std::string("up to ") + limit_name + ", " + millimetres(limit) + ", is accepted");
}

/// A constant with all the digits S can hold; scalars that carry derivatives are built from a double.
template <class S>
S constant(long double v) {
  if constexpr (std::floating_point<S>)
    return static_cast<S>(v);
  else
    return S(static_cast<double>(v));
}

template <class S>
S square(const S& x) {
  return S(x * x);
}
template <class S>
S cube(const S& x) {
  return S(x * x * x);
}

/// Fills the radii of gyration i = sqrt(I / A) of a section whose A, Iy and Iz are known.
template <class S>
void set_radii_of_gyration(SectionData<S>& d) {
  d.iy = root(S(d.Iy / d.area));
  d.iz = root(S(d.Iz / d.area));
}

}  // namespace baywork::detail
