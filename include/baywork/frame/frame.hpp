// SPDX-License-Identifier: MIT
// The mechanical model as plain data: any plane or space frame can be typed in, with or without a girder.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/address.hpp>
#include <baywork/core/error.hpp>
#include <baywork/core/motion.hpp>
#include <baywork/core/vec3.hpp>

namespace baywork {

/// Stiffness of a bar as bare numbers. Local axes: x along the bar, My bends in x-z with Iy, Mz in x-y with Iz.
/// Units Pa, m², m⁴, kg/m, 1/K. An infinite shear area means no shear strain (Euler–Bernoulli).
template <Scalar S = double>
struct BasicFrameSection {
  S E = S(0), G = S(0);
  S A = S(0), Iy = S(0), Iz = S(0), J = S(0);
  S shear_y = S(rigid_stiffness), shear_z = S(rigid_stiffness);
  S mass_per_metre = S(0);
  S thermal_expansion = S(0);
};

/// How one end of a bar is tied to its node. Stiffnesses N/m and Nm/rad in the bar's local axes: infinity is rigid,
/// zero is released (not allowed for the two shears, whose release would leave no support for a load on the bar).
/// `offset` is the rigid arm from the node to the end of the flexible bar, in global axes [m].
template <Scalar S = double>
struct BasicMemberEnd {
  S axial = S(rigid_stiffness);
  S shear_y = S(rigid_stiffness), shear_z = S(rigid_stiffness);
  S torsion = S(rigid_stiffness);
  S about_y = S(rigid_stiffness), about_z = S(rigid_stiffness);
  Vec3<S> offset{};
};

/// Beams have all six end actions; axial bars carry N alone between nodes (a load on one bends it as a simple beam).
enum class MemberKind : std::uint8_t { beam, axial };

template <Scalar S = double>
struct BasicMember {
  std::size_t from = 0, to = 0;        ///< nodes; local x runs from `from` to `to`
  BasicFrameSection<S> section{};
  Vec3<S> up{};                        ///< direction that local z leans to; zero: global z (global x for upright bars)
  S roll = S(0);                       ///< further turn of the local axes about local x [rad]
  MemberKind kind = MemberKind::beam;
  BasicMemberEnd<S> start{}, end{};
  std::string label;                   ///< a typed-in frame's own name of the bar
  Address address{};                   ///< a girder's place of the bar
};

template <Scalar S = double>
struct BasicNode {
  Vec3<S> at{};
  std::string label;
  Address address{};
};

template <Scalar S = double>
struct BasicSupport {
  std::size_t node = 0;
  std::array<BasicRestraint<S>, 6> motion{};  ///< ux, uy, uz, rx, ry, rz in global axes
};

/// A frame: nodes, members, supports. Adding checks what can be checked at once; `validate()` checks the whole.
template <Scalar S = double>
struct BasicFrame {
  std::vector<BasicNode<S>> nodes;
  std::vector<BasicMember<S>> members;
  std::vector<BasicSupport<S>> supports;
  PartNames names;  ///< a girder's names of its parts, for messages

  std::size_t add_node(const Vec3<S>& at, std::string label = "") {
    nodes.push_back({at, std::move(label), {}});
    return nodes.size() - 1;
  }
  std::size_t add_member(BasicMember<S> member) {
    members.push_back(std::move(member));
    return members.size() - 1;
  }
  /// A member from node to node with local z leaning to `up`.
  std::size_t add_beam(std::size_t from, std::size_t to, const BasicFrameSection<S>& section, const Vec3<S>& up = {}) {
    BasicMember<S> m;
    m.from = from;
    m.to = to;
    m.section = section;
    m.up = up;
    return add_member(std::move(m));
  }
  /// An axial bar of area A and modulus E.
  std::size_t add_axial(std::size_t from, std::size_t to, const S& E, const S& A) {
    BasicMember<S> m;
    m.from = from;
    m.to = to;
    m.kind = MemberKind::axial;
    m.section.E = E;
    m.section.G = E;
    m.section.A = A;
    return add_member(std::move(m));
  }
  /// The restraint of one motion of a node, made free where there was none.
  BasicRestraint<S>& restraint(std::size_t node, Motion motion) {
    for (BasicSupport<S>& s : supports)
      if (s.node == node) return s.motion[static_cast<std::size_t>(motion)];
    supports.push_back({node, {}});
    return supports.back().motion[static_cast<std::size_t>(motion)];
  }
  /// Holds the motions of a node; `displacement` is the same for each of them.
  void fix(std::size_t node, std::initializer_list<Motion> motions, const S& displacement = S(0)) {
    for (const Motion m : motions) {
      BasicRestraint<S>& r = restraint(node, m);
      r.kind = BasicRestraint<S>::Kind::fixed;
      r.displacement = displacement;
    }
  }
  /// Holds all six motions of a node.
  void clamp(std::size_t node) {
    fix(node, {Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz});
  }
  /// Holds a motion by a spring to the ground.
  void spring(std::size_t node, Motion motion, const S& stiffness) {
    BasicRestraint<S>& r = restraint(node, motion);
    r.kind = BasicRestraint<S>::Kind::spring;
    r.stiffness = stiffness;
  }
  /// Whether a support holds this motion of a node, rigidly or by a spring.
  bool holds(std::size_t node, Motion motion) const {
    for (const BasicSupport<S>& s : supports)
      if (s.node == node && s.motion[static_cast<std::size_t>(motion)].kind != BasicRestraint<S>::Kind::free) return true;
    return false;
  }
  /// Makes a plane frame in x-y of a space frame: holds z and the rotations about x and y of every node.
  void hold_in_plane_xy() {
    for (std::size_t n = 0; n < nodes.size(); ++n) fix(n, {Motion::uz, Motion::rx, Motion::ry});
  }

  std::string name_of_node(std::size_t i) const {
    if (i >= nodes.size()) return "node " + std::to_string(i + 1);
    const BasicNode<S>& n = nodes[i];
    if (!n.label.empty()) return "node " + n.label;
    if (n.address == Address{}) return "node " + std::to_string(i + 1);
    return text_of(n.address, names);
  }
  std::string name_of_member(std::size_t i) const {
    if (i >= members.size()) return "member " + std::to_string(i + 1);
    const BasicMember<S>& m = members[i];
    if (!m.label.empty()) return "member " + m.label;
    if (m.address == Address{})
      return m.from < nodes.size() && m.to < nodes.size()
                 ? "member from " + name_of_node(m.from) + " to " + name_of_node(m.to)
                 : "member " + std::to_string(i + 1);
    return text_of(m.address, names);
  }
};

using FrameSection = BasicFrameSection<double>;
using MemberEnd = BasicMemberEnd<double>;
using Member = BasicMember<double>;
using Node = BasicNode<double>;
using Support = BasicSupport<double>;
using Frame = BasicFrame<double>;

/// An end that passes forces but no couples (torsion stays tied, or the bar could spin freely).
template <Scalar S = double>
BasicMemberEnd<S> pinned_end() {
  BasicMemberEnd<S> e;
  e.about_y = S(0);
  e.about_z = S(0);
  return e;
}

}  // namespace baywork
