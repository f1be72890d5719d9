// SPDX-License-Identifier: MIT
// How wrong can an answer be? From the size and the shrinking of the corrections, and from sums that must vanish.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/frame_answer.hpp>

namespace baywork::detail {

/// End forces and deformations of a member, from node motions in the residual's precision.
template <class S>
BasicMemberAnswer<S> member_answer(const PreparedFrame<S>& p, std::size_t i, const std::vector<accurate_t<S>>& u,
                                   const MemberLoading<accurate_t<S>>& l) {
  using A = accurate_t<S>;
  const BasicMember<S>& m = p.frame.members[i];
  const MemberIn<A>& in = p.members[i].accurate;
  const MemberModes<A> v = in.geometry.deformations(&u[6 * m.from], &u[6 * m.to]);
  MemberModes<A> net = v;
  if (l.present)
    for (std::size_t k = 0; k < 6; ++k) net[k] -= l.modes[k];
  const MemberModes<A> q = in.stiffness * net;
  const A vy = A((q[2] + q[3]) * in.geometry.per_length), vz = A((q[4] + q[5]) * in.geometry.per_length);
  const auto plain = [](const A& x) { return rounded<S>(x); };
  BasicMemberAnswer<S> out;
  for (std::size_t k = 0; k < 6; ++k) out.modes[k] = plain(v[k]);
  out.start = {plain(A(l.start.x - q[0])), plain(A(l.start.y + vy)), plain(A(l.start.z - vz)), plain(A(l.start_torque - q[1])), plain(q[4]), plain(q[2])};
  out.end = {plain(A(l.end.x + q[0])), plain(A(l.end.y - vy)), plain(A(l.end.z + vz)), plain(A(l.end_torque + q[1])), plain(q[5]), plain(q[3])};
  return out;
}

/// Largest value of each kind: displacements, rotations, forces, moments.
using Sizes = std::array<double, 4>;

/// Watches the corrections of a solve. With e the error before a correction d, d = e - e', and e' is smaller than e by
/// the factor ρ by which successive corrections shrink: the error left after d is about ρ |d|, bounded here by
/// 4 ρ |d|, plus what rounding the answer and its stiffnesses to the scalar can cost.
template <class S>
class Certifier {
 public:
  /// `unbalanced`: forces on the nodes before any of the unknowns has moved, held ones among them.
  Certifier(const PreparedFrame<S>& p, const std::vector<accurate_t<S>>& unbalanced) : p_(p) {
    for (std::size_t i = 0; i < unbalanced.size(); ++i)
      least_[i % 6 < 3 ? 2 : 3] = (std::max)(least_[i % 6 < 3 ? 2 : 3], least_share * std::abs(value_of(unbalanced[i])));
  }

  /// Takes the correction just added; true if another one is worth making.
  bool wants_more(int step, const std::vector<S>& d, const std::vector<accurate_t<S>>& u,
                  const std::vector<MemberLoading<accurate_t<S>>>& loading) {
    const Sizes correction = sizes_of_correction(d);
    found_.refinements = step;
    if (step == 0) {
      last_ = correction;
      return true;
    }
    const Sizes all = with_floors(sizes_of_answer(u, loading));
    double shrink = 0;
    for (std::size_t k = 0; k < 4; ++k)
      if (last_[k] > 0) shrink = (std::max)(shrink, (std::min)(correction[k] / last_[k], relative(correction[k], all[k]) / (relative(last_[k], all[k]) + 1e-300)));
    if (!is_finite(shrink) || shrink > 1) shrink = 1;
    double rest_motion = 0, rest_force = 0, largest = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      const double rel = relative(correction[k], all[k]);
      double& rest = k < 2 ? rest_motion : rest_force;
      rest = (std::max)(rest, rel * (shrink < 0.25 ? 4 * shrink : 10.0));
      largest = (std::max)(largest, rel);
    }
    const double rounding = 12 * unit_roundoff<S>();
    const bool better = step == 1 || (std::max)(rest_motion, rest_force) < best_;
    if (better) {
      best_ = (std::max)(rest_motion, rest_force);
      found_.displacement_error = rest_motion + rounding;
      found_.force_error = rest_force + rounding;
    }
    if (!is_finite(largest)) found_.displacement_error = found_.force_error = rigid_stiffness;
    last_ = correction;
    return better && is_finite(largest) && step < 20 && best_ > unit_roundoff<S>() / 4;
  }
  const Certificate& result() const noexcept { return found_; }

 private:
  /// Where a frame moves or warms freely its forces are truly zero, and can only be told from the forces it would take
  /// to prevent that.
  static constexpr double least_share = std::floating_point<S> ? 1e-9 : 1e-3;

  static double relative(double part, double whole) { return whole > 0 ? part / whole : 0.0; }

  Sizes with_floors(Sizes s) const {
    for (std::size_t k = 2; k < 4; ++k) s[k] = (std::max)(s[k], least_[k]);
    s[0] = (std::max)(s[0], 1e-3 * s[1] * p_.shortest);
    s[1] = (std::max)(s[1], 1e-3 * s[0] / p_.longest);
    s[2] = (std::max)(s[2], 1e-3 * s[3] / p_.longest);
    s[3] = (std::max)(s[3], 1e-3 * s[2] * p_.shortest);
    return s;
  }
  Sizes sizes_of_correction(const std::vector<S>& d) const {
    Sizes s{};
    std::array<S, 12> motion{};
    for (std::size_t i = 0; i < p_.members.size(); ++i) {
      const BasicMember<S>& m = p_.frame.members[i];
      for (std::size_t k = 0; k < 6; ++k) {
        const int a = p_.freedoms.of(m.from, k), b = p_.freedoms.of(m.to, k);
        motion[k] = a >= 0 ? d[static_cast<std::size_t>(a)] : S(0);
        motion[6 + k] = b >= 0 ? d[static_cast<std::size_t>(b)] : S(0);
        s[k < 3 ? 0 : 1] = (std::max)({s[k < 3 ? 0 : 1], std::abs(value_of(motion[k])), std::abs(value_of(motion[6 + k]))});
      }
      const MemberModes<S> q = p_.members[i].stiffness * p_.members[i].geometry.deformations(motion.data(), motion.data() + 6);
      const double l = value_of(p_.members[i].axes.length);
      s[2] = (std::max)({s[2], std::abs(value_of(q[0])), std::abs(value_of(S(q[2] + q[3]))) / l, std::abs(value_of(S(q[4] + q[5]))) / l});
      for (std::size_t k = 1; k < 6; ++k) s[3] = (std::max)(s[3], std::abs(value_of(q[k])));
    }
    return s;
  }
  Sizes sizes_of_answer(const std::vector<accurate_t<S>>& u, const std::vector<MemberLoading<accurate_t<S>>>& loading) const {
    Sizes s{};
    for (std::size_t i = 0; i < u.size(); ++i) s[i % 6 < 3 ? 0 : 1] = (std::max)(s[i % 6 < 3 ? 0 : 1], std::abs(value_of(u[i])));
    for (std::size_t i = 0; i < p_.members.size(); ++i) {
      const BasicMemberAnswer<S> a = member_answer(p_, i, u, loading[i]);
      for (std::size_t k = 0; k < 6; ++k)
        s[k < 3 ? 2 : 3] = (std::max)({s[k < 3 ? 2 : 3], std::abs(value_of(a.start[k])), std::abs(value_of(a.end[k]))});
    }
    return s;
  }

  const PreparedFrame<S>& p_;
  Certificate found_{};
  Sizes last_{}, least_{};
  double best_ = 0;
};

/// Sum of all loads (as given, not as reduced) and reactions: the largest component of force and of moment about the
/// origin, each against the sum of absolute parts.
template <class S>
double equilibrium_error(const PreparedFrame<S>& p, const BasicFrameLoads<S>& loads, const BasicFrameAnswer<S>& answer) {
  std::array<double, 6> sum{}, parts{};
  const auto add = [&](const Vec3<S>& at, const Vec3<S>& f, const Vec3<S>& c) {
    const Vec3<S> m = cross(at, f) + c;
    for (std::size_t k = 0; k < 3; ++k) {
      sum[k] += value_of(f[k]);
      parts[k] += std::abs(value_of(f[k]));
      sum[3 + k] += value_of(m[k]);
      parts[3 + k] += std::abs(value_of(m[k]));
    }
  };
  for (const BasicNodeLoad<S>& l : loads.on_nodes) add(p.frame.nodes[l.node].at, l.force, l.couple);
  using Kind = typename BasicMemberLoad<S>::Kind;
  for (const BasicMemberLoad<S>& l : loads.on_members) {
    const MemberAxes<S>& axes = p.members[l.member].axes;
    const Vec3<S> first = axes.to_global(l.first), last = axes.to_global(l.last);
    const auto at = [&](const S& x) { return axes.start + x * axes.x; };
    if (l.kind == Kind::force) add(at(l.a), first, {});
    if (l.kind == Kind::couple) add(at(l.a), {}, first);
    if (l.kind == Kind::line) {  // two triangles: q_a b/2 at a third, q_b b/2 at two thirds
      const S b = S(l.b - l.a);
      add(at(S(l.a + b / S(3))), S(b / S(2)) * first, {});
      add(at(S(l.b - b / S(3))), S(b / S(2)) * last, {});
    }
  }
  for (const BasicReaction<S>& r : answer.reactions)
    add(p.frame.nodes[r.node].at, {r.value[0], r.value[1], r.value[2]}, {r.value[3], r.value[4], r.value[5]});
  const double force = (std::max)({parts[0], parts[1], parts[2]}), moment = (std::max)({parts[3], parts[4], parts[5]});
  double worst = 0;
  for (std::size_t k = 0; k < 3; ++k) {
    if (force > 0) worst = (std::max)(worst, std::abs(sum[k]) / force);
    if (moment > 0) worst = (std::max)(worst, std::abs(sum[3 + k]) / moment);
  }
  return worst;
}

}  // namespace baywork::detail
