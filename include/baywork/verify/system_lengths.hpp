// SPDX-License-Identifier: MIT
// System lengths of a girder's bars for buckling about their two axes: from hold to hold.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <span>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/response/analysis.hpp>
#include <baywork/verify/basis.hpp>

namespace baywork::verify {

/// Lengths [m] for buckling about local y and z.
struct SystemLength {
  double about_y = 0, about_z = 0;
};

namespace detail {

/// The members at each node, chords left out, one node's after the other's.
class FaceBarsAtNodes {
 public:
  explicit FaceBarsAtNodes(const GirderModel& model) : begin_(model.frame.nodes.size() + 1) {
    const std::vector<Member>& members = model.frame.members;
    for (const Member& m : members)
      if (m.address.role != Role::chord)
        for (const std::size_t node : {m.from, m.to}) ++begin_[node];
    std::partial_sum(begin_.begin(), begin_.end(), begin_.begin());
    bars_.resize(begin_.back());
    for (std::size_t m = members.size(); m-- > 0;)  // from the last one, so that they come to lie in their order
      if (members[m].address.role != Role::chord)
        for (const std::size_t node : {members[m].from, members[m].to}) bars_[--begin_[node]] = m;
  }
  std::span<const std::size_t> operator[](std::size_t node) const {
    return {bars_.data() + begin_[node], bars_.data() + begin_[node + 1]};
  }

 private:
  std::vector<std::size_t> begin_, bars_;
};

inline constexpr double unyielding = 1e20;  ///< [N/m]: of a rigid support, finite so that sums stay numbers

/// How stiffly [N/m] a chord joint is held along the chord's y and z; 0 where it is not.
struct Hold {
  double along_y = 0, along_z = 0;
};
/// A bar and a support hold along their own direction (|cos| above 0.9); two that are not in line (|sin| above 0.2)
/// hold along every direction, the joint being free to slip aside. A bar within 12 degrees of the chord's axis holds
/// nothing. Where a face has a cross member its diagonals do not count: what they lead to is held no better than by the
/// next cross member.
inline Hold hold(const Analysis& analysis, std::span<const std::size_t> bars, std::size_t node,
                 const MemberAxes<>& chord) {
  const Frame& frame = analysis.model().frame;
  Hold in_line;
  double yy = 0, yz = 0, zz = 0;
  std::vector<Vec3<>> seen;
  seen.reserve(bars.size());
  bool two = false;
  const auto add = [&](const Vec3<>& u, double k) {
    const Vec3<> across = u - dot(u, chord.x) * chord.x;
    if (!(length(across) > 0.2) || !(k > 0.0)) return;
    const double y = dot(across, chord.y), z = dot(across, chord.z);
    yy += k * y * y;
    yz += k * y * z;
    zz += k * z * z;
    const Vec3<> direction = unit(across);
    if (magnitude(dot(direction, chord.y)) > 0.9) in_line.along_y += k * y * y;
    if (magnitude(dot(direction, chord.z)) > 0.9) in_line.along_z += k * z * z;
    for (const Vec3<>& other : seen) two = two || length(cross(other, direction)) > 0.2;
    seen.push_back(direction);
  };
  for (const std::size_t m : bars) {
    const Member& bar = frame.members[m];
    const bool left_out =
        bar.address.role != Role::cross_member && std::any_of(bars.begin(), bars.end(), [&](std::size_t i) {
          const Address& other = frame.members[i].address;
          return other.role == Role::cross_member && other.face == bar.address.face;
        });
    if (left_out) continue;
    const MemberAxes<>& axes = analysis.axes(m);
    add(axes.x,
        baywork::detail::rod_stiffness(bar.section.E * bar.section.A, axes.length, bar.start.axial, bar.end.axial));
  }
  for (const Support& s : frame.supports)
    if (s.node == node)
      for (std::size_t i = 0; i < 3; ++i)
        if (s.motion[i].kind != Restraint::Kind::free) {
          Vec3<> u{};
          u[i] = 1.0;
          add(u, s.motion[i].kind == Restraint::Kind::spring ? s.motion[i].stiffness : unyielding);
        }
  if (!two) return in_line;
  return {larger(in_line.along_y, zz > 0.0 ? yy - yz * yz / zz : 0.0),
          larger(in_line.along_z, yy > 0.0 ? zz - yz * yz / yy : 0.0)};
}

/// Over which length [m] a chord of bending stiffness EI [Nm²] buckles between joints `apart` [m] that are held by k
/// [N/m] each. Smeared, N = 2 √(EI k / apart) (F. Engesser; S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability,
/// 2.10, value from memory) = π² EI / L². Single springs keep a chord straight from k = 4 N / L on (2.6), of which the
/// smeared ones would ask π²/4 alone; and the chord at the other end gives way as much as this one where it is no
/// stiffer: so k counts for π²/32 of itself. Infinite for k = 0.
inline double length_between_soft_holds(double EI, double apart, double k) {
  return pi_v<double> * std::pow(8.0 * EI * apart / (pi_v<double> * pi_v<double> * k), 0.25);
}

}  // namespace detail

/// Of every member. Bars between joints: from joint to joint, and out of the plane of its face a split post over all
/// its pieces. Chords: between the stations that hold them along the axis they would move along, or the girder's ends;
/// longer beside stations whose bars are too soft to hold them.
/// Whether those stations themselves stay in place is the stability of the whole girder, which is not asked here: two
/// chords pushed alike between equal diagonals with soft posts shear or twist as one.
inline std::vector<SystemLength> system_lengths(const Analysis& analysis) {
  const GirderModel& model = analysis.model();
  std::vector<SystemLength> out(model.frame.members.size());
  for (std::size_t m = 0; m < out.size(); ++m) {
    const Member& member = model.frame.members[m];
    const double nodes = length(model.frame.nodes[member.to].at - model.frame.nodes[member.from].at);
    out[m].about_y = out[m].about_z = larger(nodes, analysis.axes(m).length);
  }
  for (const FaceMembers& face : model.faces)
    for (const std::vector<std::size_t>& pieces : face.cross_members) {
      double whole = 0;
      for (const std::size_t m : pieces) whole += out[m].about_z;
      for (const std::size_t m : pieces) out[m].about_y = whole;
    }

  const detail::FaceBarsAtNodes bars(model);
  const std::size_t bays = model.girder.bays();
  std::vector<double> bay_lengths(bays);
  std::vector<detail::Hold> holds(bays);  // at each bay's end
  for (std::size_t c = 0; c < model.girder.chords.size(); ++c) {
    for (std::size_t b = 0; b < bays; ++b) bay_lengths[b] = out[model.chord_member(b, c)].about_y;
    for (std::size_t b = 0; b + 1 < bays; ++b) {
      const std::size_t node = model.chord_node(b + 1, c);
      holds[b] = detail::hold(analysis, bars[node], node, analysis.axes(model.chord_member(b, c)));
    }
    for (const bool about_y : {true, false}) {
      const auto length_of = [&](std::size_t b) -> double& {
        SystemLength& s = out[model.chord_member(b, c)];
        return about_y ? s.about_y : s.about_z;
      };
      std::vector<double> soft(bays, 0.0);  // lengths that soft holds leave
      std::size_t first = 0;                // bays first ... b lie between two holds, the girder's ends among them
      double between = 0, since = 0;        // the last hold, and the last bar that might have been one
      for (std::size_t b = 0; b < bays; ++b) {
        between += bay_lengths[b];
        since += bay_lengths[b];
        if (b + 1 < bays) {
          const FrameSection& s = model.frame.members[model.chord_member(b, c)].section;
          const double k = about_y ? holds[b].along_z : holds[b].along_y, apart = 0.5 * (since + bay_lengths[b + 1]),
                       L = detail::length_between_soft_holds(s.E * (about_y ? s.Iy : s.Iz), apart, k);
          if (k > 0.0) since = 0;
          if (!(L < 3.0 * apart)) continue;  // so soft that it is none
          soft[b] = larger(soft[b], L);
          soft[b + 1] = L;
        }
        for (; first <= b; ++first) length_of(first) = between;
        between = 0;
      }
      for (std::size_t b = 0; b < bays; ++b) length_of(b) = larger(length_of(b), soft[b]);
    }
  }
  return out;
}

}  // namespace baywork::verify
