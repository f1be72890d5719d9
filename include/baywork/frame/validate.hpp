// SPDX-License-Identifier: MIT
// Refuses frames and load cases that mean nothing, naming the part in the frame's own words.
#pragma once

#include <array>
#include <cstddef>
#include <string>

#include <baywork/core/error.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/member_axes.hpp>

namespace baywork {

namespace detail {

template <class S, class Place>
void validate_end(const BasicMemberEnd<S>& e, const Place& place) {
  require::stiffness(e.axial, place, "axial end stiffness");
  require::stiffness(e.torsion, place, "torsional end stiffness");
  require::stiffness(e.about_y, place, "end stiffness about local y");
  require::stiffness(e.about_z, place, "end stiffness about local z");
  if (!is_infinite(e.shear_y)) require::positive(e.shear_y, place, "transverse end stiffness along local y");
  if (!is_infinite(e.shear_z)) require::positive(e.shear_z, place, "transverse end stiffness along local z");
  if (!is_finite(e.offset)) fail<BadDescription>(place(), "a rigid offset is not finite", "finite lengths are accepted");
}

template <class S, class Place>
void validate_section(const BasicFrameSection<S>& s, bool beam, const Place& place) {
  require::positive(s.E, place, "modulus of elasticity");
  require::positive(s.A, place, "cross-section area");
  require::not_negative(s.mass_per_metre, place, "mass per metre");
  require::finite(s.thermal_expansion, place, "thermal expansion");
  if (!beam) return;
  require::positive(s.G, place, "shear modulus");
  require::not_negative(s.Iy, place, "second moment of area about y");
  require::not_negative(s.Iz, place, "second moment of area about z");
  require::not_negative(s.J, place, "torsion constant");
  if (!is_infinite(s.shear_y)) require::positive(s.shear_y, place, "shear area along y");
  if (!is_infinite(s.shear_z)) require::positive(s.shear_z, place, "shear area along z");
}

template <class S, class Place>
void validate_restraints(const std::array<BasicRestraint<S>, 6>& motion, const Place& place) {
  for (const BasicRestraint<S>& r : motion) {
    if (r.kind == BasicRestraint<S>::Kind::spring) require::positive(r.stiffness, place, "spring stiffness");
    require::finite(r.displacement, place, "prescribed displacement");
  }
}

}  // namespace detail

/// Throws BadDescription for the first fault found: dangling members, bars without length, bad sections or supports.
/// seen(i) is called for each member that has passed: while it is at hand, others may do with it what they have to.
template <Scalar S, class Seen>
void validate(const BasicFrame<S>& frame, const Seen& seen) {
  if (frame.nodes.empty()) fail<BadDescription>("frame", "it has no nodes", "at least two nodes and a member are accepted");
  for (std::size_t n = 0; n < frame.nodes.size(); ++n)
    if (!is_finite(frame.nodes[n].at))
      fail<BadDescription>(frame.name_of_node(n), "its position is not finite", "finite coordinates are accepted");
  std::vector<char> used(frame.nodes.size(), 0);
  for (std::size_t i = 0; i < frame.members.size(); ++i) {
    const BasicMember<S>& m = frame.members[i];
    const auto place = [&] { return frame.name_of_member(i); };
    if (m.from >= frame.nodes.size() || m.to >= frame.nodes.size())
      fail<BadDescription>(place(), "it ends at a node that does not exist",
                           "nodes 1 to " + std::to_string(frame.nodes.size()) + " are accepted");
    detail::validate_section(m.section, m.kind == MemberKind::beam, place);
    detail::validate_end(m.start, place);
    detail::validate_end(m.end, place);
    require::finite(m.roll, place, "roll angle");
    const Vec3<S> d = (frame.nodes[m.to].at + m.end.offset) - (frame.nodes[m.from].at + m.start.offset);
    if (!(value_of(dot(d, d)) > 0.0))
      fail<BadDescription>(place(), "it has no length between its joints", "two places apart are accepted");
    if (!is_finite(m.up)) fail<BadDescription>(place(), "its orientation is not finite", "a finite direction is accepted");
    if (value_of(dot(m.up, m.up)) > 0.0) {
      const Vec3<S> side = cross(m.up, d);
      if (!(value_of(dot(side, side)) > 1e-12 * value_of(S(dot(m.up, m.up) * dot(d, d)))))
        fail<BadDescription>(place(), "its orientation lies along the bar", "a direction across the bar is accepted");
    }
    used[m.from] = used[m.to] = 1;
    seen(i);
  }
  for (std::size_t n = 0; n < used.size(); ++n)
    if (used[n] == 0) fail<BadDescription>(frame.name_of_node(n), "no member is attached to it", "connected nodes are accepted");
  for (const BasicSupport<S>& s : frame.supports) {
    if (s.node >= frame.nodes.size())
      fail<BadDescription>("support", "it holds node " + std::to_string(s.node + 1) + ", which does not exist",
                           "nodes 1 to " + std::to_string(frame.nodes.size()) + " are accepted");
    detail::validate_restraints(s.motion, [&] { return "support at " + frame.name_of_node(s.node); });
  }
}

template <Scalar S>
void validate(const BasicFrame<S>& frame) {
  validate(frame, [](std::size_t) {});
}

/// Throws BadDescription for loads that are not finite or act beyond a member, or on parts that do not exist.
template <Scalar S>
void validate(const BasicFrameLoads<S>& loads, const BasicFrame<S>& frame) {
  for (const BasicNodeLoad<S>& l : loads.on_nodes) {
    if (l.node >= frame.nodes.size())
      fail<BadDescription>("load", "it acts on node " + std::to_string(l.node + 1) + ", which does not exist",
                           "nodes 1 to " + std::to_string(frame.nodes.size()) + " are accepted");
    if (!is_finite(l.force) || !is_finite(l.couple))
      fail<BadDescription>("load on " + frame.name_of_node(l.node), "it is not finite", "finite loads are accepted");
  }
  for (const BasicMemberLoad<S>& l : loads.on_members) {
    if (l.member >= frame.members.size())
      fail<BadDescription>("load", "it acts on member " + std::to_string(l.member + 1) + ", which does not exist",
                           "members 1 to " + std::to_string(frame.members.size()) + " are accepted");
    if (!is_finite(l.first) || !is_finite(l.last) || !is_finite(l.a) || !is_finite(l.b))
      fail<BadDescription>("load on " + frame.name_of_member(l.member), "it is not finite", "finite loads are accepted");
    if (l.kind == BasicMemberLoad<S>::Kind::temperature) continue;
    const double length = value_of(axes_of(frame, frame.members[l.member]).length), slack = 1e-9 * length;
    if (value_of(l.a) < -slack || value_of(l.b) > length + slack || value_of(l.b) < value_of(l.a))
      fail<BadDescription>("load on " + frame.name_of_member(l.member),
                           "it reaches from " + text::number(l.a) + " m to " + text::number(l.b) + " m",
                           "places from 0 to " + text::number(length) + " m along the bar, in this order, are accepted");
  }
  for (const BasicSupportMotion<S>& l : loads.motions) {
    if (!frame.holds(l.node, l.motion))
      fail<BadDescription>(frame.name_of_node(l.node), std::string("a settlement along ") + motion_names[static_cast<std::size_t>(l.motion)] +
                           " is given where no support holds it", "a held or sprung motion is accepted");
    if (!is_finite(l.displacement))
      require::finite(l.displacement, "settlement at " + frame.name_of_node(l.node), "displacement");
  }
}

}  // namespace baywork
