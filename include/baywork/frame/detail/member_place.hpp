// SPDX-License-Identifier: MIT
// Loads on a member measured from joint to joint, whatever its rigid arms are.
#pragma once

#include <cstddef>

#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/member_axes.hpp>

namespace baywork::detail {

/// Puts loads (global axes) at distances from the member's start node towards its end node. What falls on a rigid arm
/// goes to the node as force and couple. Only arms along the bar (joint sizes) shift the distances; arms across it
/// (brace eccentricity) leave them as fractions of the bar.
template <class S>
struct MemberPlace {
  const BasicFrame<S>& frame;
  const MemberAxes<S>& axes;
  BasicFrameLoads<S>& out;
  std::size_t member;

  S arm_start() const { return dot(frame.members[member].start.offset, axes.x); }
  S arm_end() const { return S(-dot(frame.members[member].end.offset, axes.x)); }
  bool joint_sized() const { return frame.members[member].kind == MemberKind::beam; }
  /// Distance that the loads are measured over.
  S whole() const { return joint_sized() ? S(axes.length + arm_start() + arm_end()) : axes.length; }

  void point(const S& x, const Vec3<S>& force, const Vec3<S>& couple) {
    const BasicMember<S>& m = frame.members[member];
    S at = joint_sized() ? S(x - arm_start()) : x;
    const double slack = 1e-12 * value_of(axes.length);
    if (value_of(at) < -slack) return on_node(m.from, axes.start + at * axes.x, force, couple);
    if (value_of(at) > value_of(axes.length) + slack) return on_node(m.to, axes.start + at * axes.x, force, couple);
    if (value_of(at) < 0.0) at = S(0);
    if (value_of(at) > value_of(axes.length)) at = axes.length;
    const auto any = [](const Vec3<S>& v) { return value_of(v.x) != 0.0 || value_of(v.y) != 0.0 || value_of(v.z) != 0.0; };
    if (any(force)) out.force_on(member, at, axes.to_local(force));
    if (any(couple)) out.couple_on(member, at, axes.to_local(couple));
  }

  void line(const S& a, const S& b, const Vec3<S>& qa, const Vec3<S>& qb) {
    if (!(value_of(a) < value_of(b))) return;
    const BasicMember<S>& m = frame.members[member];
    const S shift = joint_sized() ? arm_start() : S(0);
    const auto q = [&](const S& x) { return qa + S((x - a) / (b - a)) * (qb - qa); };
    const S inner_a = larger(a, shift), inner_b = smaller(b, S(shift + axes.length));
    if (value_of(a) < value_of(shift)) on_arm(m.from, shift, a, smaller(b, shift), q);
    if (value_of(inner_a) < value_of(inner_b))
      out.line(member, S(inner_a - shift), S(inner_b - shift), axes.to_local(q(inner_a)), axes.to_local(q(inner_b)));
    if (value_of(b) > value_of(S(shift + axes.length))) on_arm(m.to, shift, larger(a, S(shift + axes.length)), b, q);
  }

 private:
  void on_node(std::size_t node, const Vec3<S>& at, const Vec3<S>& force, const Vec3<S>& couple) {
    out.on_nodes.push_back({node, force, couple + cross(at - frame.nodes[node].at, force)});
  }
  template <class Q>
  void on_arm(std::size_t node, const S& shift, const S& a, const S& b, const Q& q) {
    // a straight load is two triangles, at a third and two thirds of its reach
    if (value_of(S(b - a)) <= 1e-12 * value_of(axes.length)) return;
    const S half = S((b - a) / S(2));
    on_node(node, axes.start + S(a + (b - a) / S(3) - shift) * axes.x, half * q(a), {});
    on_node(node, axes.start + S(b - (b - a) / S(3) - shift) * axes.x, half * q(b), {});
  }
};

}  // namespace baywork::detail
