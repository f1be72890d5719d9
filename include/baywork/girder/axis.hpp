// SPDX-License-Identifier: MIT
// The line a girder follows: straight, cambered or curved in plan; and its division into bays.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/vec3.hpp>

namespace baywork {

/// `camber`: rise at mid-length of a parabola through both ends [m]. `plan_radius`: radius of a circle in plan, to the
/// left (+y) where positive, 0 for straight [m]; the tangent at mid-length runs along x and cross-sections stay square
/// to the circle. Distances along the axis are measured on it in plan.
template <Scalar S = double>
struct BasicAxis {
  S camber = S(0);
  S plan_radius = S(0);

  /// Point with offsets y (to the left) and z (up) from the axis at distance s of length l.
  Vec3<S> point(const S& s, const S& l, const S& y, const S& z) const {
    const S t = S(s / l);
    const S rise = S(z + S(4) * camber * t * (S(1) - t));
    if (value_of(plan_radius) == 0.0) return {s, y, rise};
    using std::cos;
    using std::sin;
    const S angle = S((s - l / S(2)) / plan_radius);
    const S sine = S(sin(angle)), cosine = S(cos(angle));
    return {S(l / S(2) + (plan_radius - y) * sine), S(plan_radius - (plan_radius - y) * cosine), rise};
  }
};
using Axis = BasicAxis<double>;

namespace detail {

/// Stations of `bays` equal bays, or of individual lengths where these are given.
template <class S>
std::vector<S> stations_of(std::size_t bays, const S& bay_length, const std::vector<S>& lengths) {
  std::vector<S> x{S(0)};
  if (lengths.empty()) {
    if (bays == 0) fail<BadDescription>("girder", "it has no bays", "one bay or more is accepted");
    if (bays > 1000000) fail<BadDescription>("girder", "it has " + std::to_string(bays) + " bays", "up to a million bays are accepted");
    require::positive(bay_length, "girder", "bay length");
    for (std::size_t i = 1; i <= bays; ++i) x.push_back(S(S(static_cast<double>(i)) * bay_length));
    return x;
  }
  if (bays != 0 && bays != lengths.size())
    fail<BadDescription>("girder", std::to_string(bays) + " bays are given, but " + std::to_string(lengths.size()) + " bay lengths",
                         "one length for each bay is accepted");
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    require::positive(lengths[i], "bay " + std::to_string(i + 1), "bay length");
    x.push_back(S(x.back() + lengths[i]));
  }
  return x;
}

template <class S>
void check_axis(const BasicAxis<S>& axis, const S& length, const S& half_width) {
  require::finite(axis.camber, "axis", "camber");
  require::finite(axis.plan_radius, "axis", "plan radius");
  const double r = std::abs(value_of(axis.plan_radius));
  if (r > 0 && (r <= value_of(half_width) || value_of(length) > 6.28 * r))
    fail<BadDescription>("axis", "plan radius is " + text::number(axis.plan_radius) + " m",
                         "a radius beyond half the width, and a girder of less than a full circle, are accepted");
}

}  // namespace detail
}  // namespace baywork
