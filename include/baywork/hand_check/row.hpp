// SPDX-License-Identifier: MIT
// One number of a response beside the same number by hand.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include <baywork/closed_form/formula.hpp>
#include <baywork/core/text.hpp>

namespace baywork {

/// Values in SI units. `difference()` is (solver - closed form)/scale, where the scale is the closed form itself unless
/// that may rightly be zero (sums of loads). Where no closed form applies it is NaN, and so is the difference.
struct HandCheck {
  std::string quantity;  ///< "deflection of the axis, down"
  std::string where;     ///< "station 13, x = 6 m"
  double solver = 0;
  double closed_form = std::numeric_limits<double>::quiet_NaN();
  std::string unit;
  double expected = 0;  ///< relative difference that the closed form promises to stay within
  bool valid = false;   ///< the closed form holds here
  std::string reason;   ///< why it does not, where it does not
  std::string formula;  ///< in symbols
  std::string numbers;  ///< the same with numbers put in, SI units: can be recomputed
  double scale = 0;     ///< what the difference is measured against, at least |closed form|

  double difference() const {
    if (!is_finite(closed_form)) return closed_form;
    const double size = (std::max)(std::abs(closed_form), scale);
    if (size > 0) return (solver - closed_form) / size;
    return solver == 0 ? 0.0 : std::numeric_limits<double>::quiet_NaN();  // nothing to measure against
  }
  /// Not valid, or within what is promised.
  bool agrees() const { return !valid || std::abs(difference()) <= expected; }
  /// One of its two values as tables for people show it; the data keep what was computed.
  std::string printed(double v) const;
};

namespace detail {

/// Digits of the numbers put into formulas: enough for the sums of long girders to be recomputed to six digits.
inline constexpr int hand_digits = 9;

inline HandCheck hand_row(std::string quantity, std::string where, const char* unit, double solver) {
  HandCheck row;
  row.quantity = std::move(quantity);
  row.where = std::move(where);
  row.unit = unit;
  row.solver = solver;
  return row;
}

/// A closed form beside the solver's number; `reason` not empty: computed, but not valid.
inline HandCheck compared(HandCheck row, double expected, const closed_form::ClosedForm<>& form,
                          const std::string& reason = "") {
  row.closed_form = form.value;
  row.expected = expected;
  row.valid = reason.empty() && form.valid && is_finite(form.value);
  row.reason = !reason.empty() ? reason : row.valid ? "" : std::string("holds for: ") + form.range;
  row.formula = closed_form::symbols(form.formula);
  row.numbers = closed_form::numbers_in(form.formula, form.numbers, hand_digits);
  return row;
}
inline HandCheck not_covered(HandCheck row, const std::string& reason) {
  row.reason = "not covered: " + reason;
  return row;
}
/// A closed form of rounding size, where the others are of size `typical`, says "nothing": no relative difference of it
/// means anything.
inline bool vanishes(double value, double typical) { return !(std::abs(value) > 1e-9 * typical); }
/// The value, or a plain zero where it is the rounding of others of size `typical`.
inline double plainly(double value, double typical) { return vanishes(value, typical) ? 0.0 : value; }

inline std::string place_text(std::size_t station, double x) {
  return "station " + std::to_string(station + 1) + ", x = " + text::number(x) + " m";
}

}  // namespace detail

inline std::string HandCheck::printed(double v) const {
  const double form = is_finite(closed_form) ? std::abs(closed_form) : 0.0;
  return text::number(detail::plainly(v, (std::max)({scale, form, std::abs(solver)})), 7);
}

}  // namespace baywork
