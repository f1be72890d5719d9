// SPDX-License-Identifier: MIT
// What a girder may carry of two loads together, as a closed curve round the origin.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/rating/allowable.hpp>

namespace baywork::rating::detail {

/// Sizes of the two loads, and what governs there.
struct CurvePoint {
  double first = 0, second = 0;
  Allowable allowable{};
};

/// Points along `rays` rays from the origin, counter-clockwise from (+, 0) and closed: the last point is the first. Rays
/// are spaced evenly after each axis is measured by its own greatest load. `along(a, b)` rates a times the first load
/// with b times the second. Empty where what is placed leaves nothing or a bar is outside the scope.
template <class Along>
std::vector<CurvePoint> closed_curve(const std::string& place, std::size_t rays, Along along) {
  if (rays < 4) fail<BadDescription>(place, std::to_string(rays) + " rays", "4 or more are accepted");
  double most[2] = {0, 0};
  for (const double sign : {1.0, -1.0})
    for (const int k : {0, 1}) {
      const Allowable a = along(k == 0 ? sign : 0.0, k == 1 ? sign : 0.0);
      if (a.verdict == Verdict::nothing_left || a.verdict == Verdict::outside_scope) return {};
      most[k] = larger(most[k], a.factor);
    }
  std::vector<CurvePoint> out;
  for (std::size_t i = 0; i < rays; ++i) {
    const double turn = 2.0 * pi_v<double> * static_cast<double>(i) / static_cast<double>(rays);
    const auto clean = [](double x) { return std::abs(x) < 1e-15 ? 0.0 : x; };
    const double a = clean(std::cos(turn)) * most[0], b = clean(std::sin(turn)) * most[1];
    const Allowable found = along(a, b);
    out.push_back({found.factor * a, found.factor * b, found});
  }
  out.push_back(out.front());
  return out;
}

}  // namespace baywork::rating::detail
