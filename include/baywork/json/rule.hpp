// SPDX-License-Identifier: MIT
// What a number of a file must be, and how much there may be of a list.
#pragma once

#include <cstdint>

#include <baywork/core/scalar.hpp>

namespace baywork::detail {

/// Infinity is allowed where it means "rigid" alone, and is written as that word: JSON has no infinity.
enum class Rule : std::uint8_t { any, positive, not_negative, stiffness, positive_or_rigid };
/// Which of JsonLimits holds for a list.
enum class Amount : std::uint8_t { stations, panels, parts, steps, plates };

inline bool may_be_rigid(Rule r) { return r == Rule::stiffness || r == Rule::positive_or_rigid; }
inline bool meets(double v, Rule r) {
  if (is_infinite(v)) return may_be_rigid(r);
  if (!is_finite(v)) return false;
  return r == Rule::any || v > 0.0 || (v == 0.0 && r != Rule::positive && r != Rule::positive_or_rigid);
}
inline const char* accepted(Rule r) {
  switch (r) {
    case Rule::any: return "a finite number is accepted";
    case Rule::positive: return "a finite number above zero is accepted";
    case Rule::not_negative: return "a finite number, zero or above, is accepted";
    case Rule::stiffness: return "zero, a finite number above it, or \"rigid\" is accepted";
    case Rule::positive_or_rigid: return "a finite number above zero, or \"rigid\", is accepted";
  }
  return "";
}

}  // namespace baywork::detail
