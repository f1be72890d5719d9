// SPDX-License-Identifier: MIT
// A frame with everything that does not depend on the load worked out: members twice, unknowns.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/validate.hpp>
#include <baywork/solve/detail/freedoms.hpp>
#include <baywork/solve/detail/sparse_factor.hpp>
#include <baywork/solve/detail/twofold.hpp>
#include <baywork/solve/member_loading.hpp>
#include <baywork/solve/member_stiffness.hpp>

namespace baywork::detail {

/// A member in the number type R.
template <class R>
struct MemberIn {
  MemberAxes<R> axes{};
  MemberStiffness<R> stiffness{};
  MemberGeometry<R> geometry{};
};

/// Sections and end springs of m in the number type R: all that its loading needs.
template <class R, class S>
BasicMember<R> widened(const BasicMember<S>& m) {
  const auto end = [](const BasicMemberEnd<S>& e) {
    return BasicMemberEnd<R>{R(e.axial), R(e.shear_y), R(e.shear_z), R(e.torsion), R(e.about_y), R(e.about_z), {}};
  };
  const BasicFrameSection<S>& s = m.section;
  BasicMember<R> w;
  w.kind = m.kind;
  w.section = {R(s.E), R(s.G), R(s.A), R(s.Iy), R(s.Iz), R(s.J), R(s.shear_y), R(s.shear_z), R(0), R(s.thermal_expansion)};
  w.start = end(m.start);
  w.end = end(m.end);
  return w;
}

template <class S>
struct PreparedMember : MemberIn<S> {
  MemberIn<accurate_t<S>> accurate{};  ///< the same to twice the digits: residuals are those of the frame as it was given
  BasicMember<accurate_t<S>> wide{};   ///< what loads along it meet
  bool at_support = false;             ///< one of its nodes is held
};

template <class S>
struct PreparedFrame {
  using A = accurate_t<S>;

  BasicFrame<S> frame;
  std::vector<PreparedMember<S>> members;
  Freedoms freedoms;
  double shortest = 0, longest = 0;  ///< member lengths [m]

  explicit PreparedFrame(BasicFrame<S> f) : frame(std::move(f)) {
    validate(frame);
    freedoms = number_freedoms(frame);
    members.reserve(frame.members.size());
    shortest = rigid_stiffness;
    for (const BasicMember<S>& m : frame.members) {
      PreparedMember<S> p;
      p.axes = axes_of(frame, m);
      p.stiffness = stiffness_of(m, p.axes.length);
      p.geometry = geometry_in<S, S>(frame, m);
      p.wide = widened<A>(m);
      p.accurate.axes = axes_in<A, S>(frame, m);
      p.accurate.stiffness = stiffness_of(p.wide, p.accurate.axes.length);
      p.accurate.geometry = geometry_in<A, S>(frame, m);
      for (std::size_t k = 0; k < 6; ++k)
        p.at_support = p.at_support || freedoms.of(m.from, k) == Freedoms::held || freedoms.of(m.to, k) == Freedoms::held;
      members.push_back(p);
      shortest = (std::min)(shortest, value_of(p.axes.length));
      longest = (std::max)(longest, value_of(p.axes.length));
    }
  }

  /// Lower triangle of the stiffness of the unknowns, as a sum of entries.
  std::vector<Entry<S>> stiffness_entries() const {
    std::vector<Entry<S>> entries;
    entries.reserve(members.size() * 78 + 6 * frame.supports.size());
    for (std::size_t i = 0; i < members.size(); ++i) {
      const BasicMember<S>& m = frame.members[i];
      std::array<int, 12> number{};
      for (std::size_t k = 0; k < 6; ++k) {
        number[k] = freedoms.of(m.from, k);
        number[6 + k] = freedoms.of(m.to, k);
      }
      for (std::size_t c = 0; c < 12; ++c) {
        if (number[c] < 0) continue;
        std::array<S, 12> motion{}, force{};
        for (std::size_t k = 0; k < 12; ++k) motion[k] = force[k] = S(0);
        motion[c] = S(1);
        const MemberModes<S> v = members[i].geometry.deformations(motion.data(), motion.data() + 6);
        members[i].geometry.add_end_forces(members[i].stiffness * v, force.data(), force.data() + 6);
        for (std::size_t r = 0; r < 12; ++r)
          if (number[r] >= number[c] && value_of(force[r]) != 0.0) entries.push_back({number[r], number[c], force[r]});
      }
    }
    for (const BasicSupport<S>& s : frame.supports)
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind == BasicRestraint<S>::Kind::spring)
          entries.push_back({freedoms.of(s.node, k), freedoms.of(s.node, k), s.motion[k].stiffness});
    return entries;
  }

  /// Adds to `force` (six per node) what members and springs answer to the motions u; `ground` are the support motions.
  /// `at_supports`: only what is needed for the nodes with a held motion.
  void add_internal_forces(const std::vector<A>& u, const std::vector<A>& ground, std::vector<A>& force, bool at_supports = false) const {
    for (std::size_t i = 0; i < members.size(); ++i) {
      if (at_supports && !members[i].at_support) continue;
      const BasicMember<S>& m = frame.members[i];
      const MemberIn<A>& p = members[i].accurate;
      const MemberModes<A> v = p.geometry.deformations(&u[6 * m.from], &u[6 * m.to]);
      p.geometry.add_end_forces(p.stiffness * v, &force[6 * m.from], &force[6 * m.to]);
    }
    for (std::size_t j = 0; j < frame.supports.size(); ++j) {
      const BasicSupport<S>& s = frame.supports[j];
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind == BasicRestraint<S>::Kind::spring)
          force[6 * s.node + k] += A(A(s.motion[k].stiffness) * (u[6 * s.node + k] - ground[6 * j + k]));
    }
  }

  /// Loads as forces on the nodes (six per node, added), and each loaded member's own loading (kept for its forces).
  void reduce(const BasicFrameLoads<S>& loads, std::vector<A>& force, std::vector<MemberLoading<A>>& loading) const {
    const auto wide = [](const Vec3<S>& v) { return Vec3<A>{A(v.x), A(v.y), A(v.z)}; };
    for (const BasicNodeLoad<S>& l : loads.on_nodes)
      for (std::size_t k = 0; k < 3; ++k) {
        force[6 * l.node + k] += A(l.force[k]);
        force[6 * l.node + 3 + k] += A(l.couple[k]);
      }
    for (const BasicMemberLoad<S>& l : loads.on_members) {
      const BasicMemberLoad<A> w{static_cast<typename BasicMemberLoad<A>::Kind>(l.kind), l.member, A(l.a), A(l.b), wide(l.first), wide(l.last)};
      add_loading(members[l.member].wide, members[l.member].accurate.axes.length, w, loading[l.member]);
    }
    for (std::size_t i = 0; i < members.size(); ++i) {
      const MemberLoading<A>& l = loading[i];
      if (!l.present) continue;
      const BasicMember<S>& m = frame.members[i];
      const MemberIn<A>& p = members[i].accurate;
      p.geometry.add_end_forces(p.stiffness * l.modes, &force[6 * m.from], &force[6 * m.to]);
      const Vec3<A> fs = p.axes.to_global(l.start), fe = p.axes.to_global(l.end);
      const Vec3<A> ms = l.start_torque * p.axes.x + cross(p.geometry.arm_start, fs);
      const Vec3<A> me = l.end_torque * p.axes.x + cross(p.geometry.arm_end, fe);
      for (std::size_t k = 0; k < 3; ++k) {
        force[6 * m.from + k] -= fs[k];
        force[6 * m.from + 3 + k] -= ms[k];
        force[6 * m.to + k] -= fe[k];
        force[6 * m.to + 3 + k] -= me[k];
      }
    }
  }

  /// Motions of the ground under each support (six per support) in this load case.
  void ground_motions(const BasicFrameLoads<S>& loads, std::vector<A>& ground) const {
    for (std::size_t j = 0; j < frame.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k) ground[6 * j + k] = A(frame.supports[j].motion[k].displacement);
    for (const BasicSupportMotion<S>& l : loads.motions)
      for (std::size_t j = 0; j < frame.supports.size(); ++j)
        if (frame.supports[j].node == l.node) ground[6 * j + static_cast<std::size_t>(l.motion)] += A(l.displacement);
  }
};

}  // namespace baywork::detail
