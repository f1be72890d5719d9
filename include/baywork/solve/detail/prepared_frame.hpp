// SPDX-License-Identifier: MIT
// A frame with everything that does not depend on the load worked out: geometry twice, stiffness, unknowns.
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

template <class S>
struct PreparedMember {
  MemberStiffness<S> stiffness{};
  MemberGeometry<S> geometry{};
  MemberGeometry<accurate_t<S>> accurate{};  ///< the same to twice the digits, for residuals
  MemberAxes<S> axes{};
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
      p.accurate = geometry_in<A, S>(frame, m);
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
  template <class R, class Geometry>
  void add_internal_forces(const std::vector<R>& u, const std::vector<S>& ground, std::vector<R>& force,
                           Geometry geometry) const {
    for (std::size_t i = 0; i < members.size(); ++i) {
      const BasicMember<S>& m = frame.members[i];
      const auto& g = geometry(members[i]);
      const MemberModes<R> v = g.deformations(&u[6 * m.from], &u[6 * m.to]);
      g.add_end_forces(members[i].stiffness * v, &force[6 * m.from], &force[6 * m.to]);
    }
    for (std::size_t j = 0; j < frame.supports.size(); ++j) {
      const BasicSupport<S>& s = frame.supports[j];
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind == BasicRestraint<S>::Kind::spring)
          force[6 * s.node + k] += R(s.motion[k].stiffness) * (u[6 * s.node + k] - R(ground[6 * j + k]));
    }
  }

  /// Loads as forces on the nodes (six per node, added), and each loaded member's own loading (kept for its forces).
  void reduce(const BasicFrameLoads<S>& loads, std::vector<S>& force, std::vector<MemberLoading<S>>& loading) const {
    for (const BasicNodeLoad<S>& l : loads.on_nodes)
      for (std::size_t k = 0; k < 3; ++k) {
        force[6 * l.node + k] += l.force[k];
        force[6 * l.node + 3 + k] += l.couple[k];
      }
    for (const BasicMemberLoad<S>& l : loads.on_members)
      add_loading(frame.members[l.member], members[l.member].axes.length, l, loading[l.member]);
    for (std::size_t i = 0; i < members.size(); ++i) {
      const MemberLoading<S>& l = loading[i];
      const BasicMember<S>& m = frame.members[i];
      const PreparedMember<S>& p = members[i];
      MemberModes<S> back = p.stiffness * l.modes;
      p.geometry.add_end_forces(back, &force[6 * m.from], &force[6 * m.to]);
      const Vec3<S> fs = p.axes.to_global(l.start), fe = p.axes.to_global(l.end);
      const Vec3<S> ms = l.start_torque * p.axes.x + cross(m.start.offset, fs);
      const Vec3<S> me = l.end_torque * p.axes.x + cross(m.end.offset, fe);
      for (std::size_t k = 0; k < 3; ++k) {
        force[6 * m.from + k] -= fs[k];
        force[6 * m.from + 3 + k] -= ms[k];
        force[6 * m.to + k] -= fe[k];
        force[6 * m.to + 3 + k] -= me[k];
      }
    }
  }

  /// Motions of the ground under each support (six per support) in this load case.
  void ground_motions(const BasicFrameLoads<S>& loads, std::vector<S>& ground) const {
    for (std::size_t j = 0; j < frame.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k) ground[6 * j + k] = frame.supports[j].motion[k].displacement;
    for (const BasicSupportMotion<S>& l : loads.motions)
      for (std::size_t j = 0; j < frame.supports.size(); ++j)
        if (frame.supports[j].node == l.node) ground[6 * j + static_cast<std::size_t>(l.motion)] += l.displacement;
  }
};

}  // namespace baywork::detail
