// SPDX-License-Identifier: MIT
// Which motions of the nodes are unknowns, and in which order.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/frame/frame.hpp>

namespace baywork::detail {

/// Numbers of the unknowns; -1 marks a motion that is held, -2 one that nothing resists and nothing may load
/// (the rotations of a joint where only axial bars meet).
struct Freedoms {
  static constexpr int held = -1, idle = -2;
  std::vector<int> number;  ///< six per node
  std::size_t count = 0;
  bool any_idle = false;

  int of(std::size_t node, std::size_t motion) const { return number[6 * node + motion]; }
};

/// A node has turning stiffness where a beam meets it, or an axial bar with a rigid arm, or a spring: notes what a member
/// gives its nodes.
template <class S>
void see_turning(const BasicMember<S>& m, std::vector<char>& resists) {
  const auto has_arm = [](const Vec3<S>& v) {
    return value_of(v.x) != 0.0 || value_of(v.y) != 0.0 || value_of(v.z) != 0.0;
  };
  const bool beam = m.kind == MemberKind::beam;
  if (beam || has_arm(m.start.offset)) resists[m.from] = 1;
  if (beam || has_arm(m.end.offset)) resists[m.to] = 1;
}
template <class S>
void see_turning_springs(const BasicFrame<S>& frame, std::vector<char>& resists) {
  for (const BasicSupport<S>& s : frame.supports)
    for (std::size_t i = 3; i < 6; ++i)
      if (s.motion[i].kind == BasicRestraint<S>::Kind::spring) resists[s.node] = 1;
}
template <class S>
std::vector<char> nodes_that_resist_turning(const BasicFrame<S>& frame) {
  std::vector<char> resists(frame.nodes.size(), 0);
  for (const BasicMember<S>& m : frame.members) see_turning(m, resists);
  see_turning_springs(frame, resists);
  return resists;
}
template <class S>
Freedoms number_freedoms(const BasicFrame<S>& frame, const std::vector<char>& resists) {
  Freedoms f;
  f.number.assign(6 * frame.nodes.size(), 0);
  for (const BasicSupport<S>& s : frame.supports)
    for (std::size_t i = 0; i < 6; ++i)
      if (s.motion[i].kind == BasicRestraint<S>::Kind::fixed) f.number[6 * s.node + i] = Freedoms::held;
  int next = 0;
  for (std::size_t n = 0; n < frame.nodes.size(); ++n)
    for (std::size_t i = 0; i < 6; ++i) {
      int& number = f.number[6 * n + i];
      if (number == Freedoms::held) continue;
      const bool idle = i >= 3 && resists[n] == 0;
      number = idle ? Freedoms::idle : next++;
      f.any_idle = f.any_idle || idle;
    }
  f.count = static_cast<std::size_t>(next);
  return f;
}

/// Largest distance of node numbers that a member spans: small for a girder numbered station by station.
template <class S>
std::size_t node_reach(const BasicFrame<S>& frame) {
  std::size_t reach = 0;
  for (const BasicMember<S>& m : frame.members) reach = (std::max)(reach, m.from > m.to ? m.from - m.to : m.to - m.from);
  return reach;
}

}  // namespace baywork::detail
