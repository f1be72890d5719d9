// SPDX-License-Identifier: MIT
// Where a member's flexible length begins and ends, and how its local axes lie.
#pragma once

#include <cmath>

#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame.hpp>

namespace baywork {

/// Ends of the flexible bar and its right-handed local axes x, y, z as unit vectors (global components).
template <Scalar S = double>
struct MemberAxes {
  Vec3<S> start{}, end{};
  Vec3<S> x{}, y{}, z{};
  S length = S(0);

  Vec3<S> to_local(const Vec3<S>& g) const { return {dot(g, x), dot(g, y), dot(g, z)}; }
  Vec3<S> to_global(const Vec3<S>& l) const { return l.x * x + l.y * y + l.z * z; }
};

/// Local x from start to end; local z is the part of `up` square to it, turned by `roll` about x; y = z × x.
/// Without an `up`, local z leans to global z, or to global x where the bar is upright (|x·z| above 0.999).
/// R is the number type to compute in (S itself, or one with more digits for residuals).
/// Expects a checked frame: distinct ends, `up` not along the bar.
template <Scalar R, Scalar S>
MemberAxes<R> axes_in(const BasicFrame<S>& frame, const BasicMember<S>& m) {
  const auto wide = [](const Vec3<S>& v) { return Vec3<R>{R(v.x), R(v.y), R(v.z)}; };
  MemberAxes<R> a;
  a.start = wide(frame.nodes[m.from].at) + wide(m.start.offset);
  a.end = wide(frame.nodes[m.to].at) + wide(m.end.offset);
  const Vec3<R> d = a.end - a.start;
  a.length = length(d);
  a.x = unit(d);
  Vec3<R> up = wide(m.up);
  if (value_of(dot(up, up)) == 0.0) {
    const bool upright = std::abs(value_of(a.x.z)) > 0.999;
    up = upright ? Vec3<R>{R(1), R(0), R(0)} : Vec3<R>{R(0), R(0), R(1)};
  }
  a.y = unit(cross(up, a.x));
  a.z = cross(a.x, a.y);
  if (value_of(m.roll) != 0.0) {
    using std::cos;
    using std::sin;
    const R roll = R(m.roll);
    const R c = R(cos(roll)), s = R(sin(roll));
    a.y = c * a.y + s * a.z;
    a.z = cross(a.x, a.y);
  }
  return a;
}

template <Scalar S>
MemberAxes<S> axes_of(const BasicFrame<S>& frame, const BasicMember<S>& m) {
  return axes_in<S, S>(frame, m);
}

}  // namespace baywork
