// SPDX-License-Identifier: MIT
// How wrong can an answer be? From the size and the shrinking of the corrections, and from sums that must vanish.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <limits>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/solve/detail/member_pass.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/frame_answer.hpp>

namespace baywork::detail {

/// Watches the corrections of a solve. With e the error before a correction d, d = e - e', and e' is smaller than e by
/// the factor ρ by which corrections shrink: the error left after d is about ρ |d|, bounded here by 4 ρ |d|, plus what
/// rounding the answer and its stiffnesses to the scalar can cost. ρ is seen in the corrections themselves; but what
/// shrinks slowest may be hidden in the first of them, therefore it is never taken below the factorisation's own.
template <class S>
class Certifier {
 public:
  /// `unbalanced`: forces on the nodes before any of the unknowns has moved, held ones among them.
  Certifier(const PreparedFrame<S>& p, const std::vector<accurate_t<S>>& unbalanced, double rate = 0)
      : p_(p), rate_(rate) {
    see_motions(unbalanced, least_);  // forces and couples, laid out as motions are
    least_ = {0, 0, least_share * least_[0], least_share * least_[1]};
  }

  /// Takes the first solution, as a correction of nothing.
  void first(const Sizes& solution) { last_ = solution; }

  /// Takes the correction just added, and the answer with it; true if another one is worth making.
  bool wants_more(const Sizes& correction, const Sizes& answer) {
    const int step = ++found_.refinements;
    const Sizes all = with_floors(answer);
    double shrink = rate_;
    for (std::size_t k = 0; k < 4; ++k)
      if (last_[k] > 0)
        shrink = (std::max)(shrink, (std::min)(correction[k] / last_[k], relative(correction[k], all[k]) /
                                                                             (relative(last_[k], all[k]) + 1e-300)));
    if (!is_finite(shrink) || shrink > 1) shrink = 1;
    double rest_motion = 0, rest_force = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      const double rel = relative(correction[k], all[k]);
      double& rest = k < 2 ? rest_motion : rest_force;
      rest = (std::max)(rest, rel * (shrink < 0.25 ? 4 * shrink : 10.0));
    }
    const double rounding = 12 * unit_roundoff<S>();
    const bool better = step == 1 || (std::max)(rest_motion, rest_force) < best_;
    if (better) {
      best_ = (std::max)(rest_motion, rest_force);
      found_.displacement_error = rest_motion + rounding;
      found_.force_error = rest_force + rounding;
    }
    bool finite = true;
    for (std::size_t k = 0; k < 4; ++k) finite = finite && is_finite(correction[k]) && is_finite(answer[k]);
    if (!finite) found_.displacement_error = found_.force_error = std::numeric_limits<double>::infinity();
    last_ = correction;
    return (better || shrink < 0.5) && finite && step < 20 &&
           best_ > unit_roundoff<S>() / 4;  // a slow factor may start unevenly
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

  const PreparedFrame<S>& p_;
  Certificate found_{};
  Sizes last_{}, least_{};
  double rate_, best_ = 0;
};

/// Sum of all loads (as given, not as reduced) and reactions: the largest component of force and of moment about the
/// origin, each against the sum of absolute parts.
template <class S>
double equilibrium_error(const PreparedFrame<S>& p, const BasicFrameLoads<S>& loads,
                         const BasicFrameAnswer<S>& answer) {
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
    const BasicMember<S>& m = p.frame.members[l.member];
    const MemberIn<S>& in = p.sort(l.member).plain;
    const Vec3<S> first = in.to_global(l.first), last = in.to_global(l.last),
                  start = p.frame.nodes[m.from].at + m.start.offset;
    const auto at = [&](const S& x) { return start + x * in.geometry.x; };
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
