// SPDX-License-Identifier: MIT
// What hand calculations are written in and compared with.
#pragma once

#include <cmath>

#include <doctest/doctest.h>

// Not global themselves: a local of a library's template may have the same name.
namespace by_hand {

inline constexpr double pi = 3.14159265358979323846, deg = pi / 180, mm = 1e-3, MPa = 1e6;

inline bool close(double is, double should, double relative) {
  const bool good = std::fabs(is - should) <= relative * std::fabs(should);
  if (!good) MESSAGE("is ", is, " should be ", should);
  return good;
}

}  // namespace by_hand

using namespace by_hand;
