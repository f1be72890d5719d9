// SPDX-License-Identifier: MIT
// System lengths of a girder's bars for buckling about their two axes: from hold to hold.
#pragma once

#include <cstddef>
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

/// The members at each node, chords left out.
inline std::vector<std::vector<std::size_t>> face_bars_at_nodes(const GirderModel& model) {
  std::vector<std::vector<std::size_t>> out(model.frame.nodes.size());
  for (std::size_t m = 0; m < model.frame.members.size(); ++m) {
    if (model.frame.members[m].address.role == Role::chord) continue;
    out[model.frame.members[m].from].push_back(m);
    out[model.frame.members[m].to].push_back(m);
  }
  return out;
}

/// Whether a chord joint is held along `d`, square to the chord's axis `x`. A bar and a support hold along their own
/// direction (|cos| above 0.9); two that are not in line (|sin| above 0.2) hold along every direction. A bar within 12
/// degrees of the chord's axis holds nothing.
inline bool is_held(const Analysis& analysis, const std::vector<std::vector<std::size_t>>& bars, std::size_t node,
                    const Vec3<>& x, const Vec3<>& d) {
  std::vector<Vec3<>> holds;
  const auto add = [&](const Vec3<>& u) {
    const Vec3<> across = u - dot(u, x) * x;
    if (length(across) > 0.2) holds.push_back(unit(across));
  };
  for (const std::size_t m : bars[node]) add(analysis.axes(m).x);
  for (const Support& s : analysis.model().frame.supports)
    if (s.node == node)
      for (std::size_t i = 0; i < 3; ++i)
        if (s.motion[i].kind != Restraint::Kind::free) {
          Vec3<> u{};
          u[i] = 1.0;
          add(u);
        }
  for (std::size_t i = 0; i < holds.size(); ++i) {
    if (magnitude(dot(holds[i], d)) > 0.9) return true;
    for (std::size_t j = 0; j < i; ++j)
      if (length(cross(holds[i], holds[j])) > 0.2) return true;
  }
  return false;
}

}  // namespace detail

/// Of every member. Bars between joints: from joint to joint, and out of the plane of its face a split post over all
/// its pieces. Chords: between the stations that hold them along the axis they would move along, or the girder's ends.
/// Whether those stations themselves stay in place is the stability of the whole girder, which is not asked here.
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

  const auto bars = detail::face_bars_at_nodes(model);
  const std::size_t bays = model.girder.bays();
  std::vector<double> bay_lengths(bays);
  for (std::size_t c = 0; c < model.girder.chords.size(); ++c) {
    for (std::size_t b = 0; b < bays; ++b) bay_lengths[b] = out[model.chord_member(b, c)].about_y;
    for (const bool about_y : {true, false}) {
      std::size_t first = 0;  // bays first ... b lie between two holds
      double between = 0;
      for (std::size_t b = 0; b < bays; ++b) {
        between += bay_lengths[b];
        const MemberAxes<>& axes = analysis.axes(model.chord_member(b, c));
        const bool held =
            detail::is_held(analysis, bars, model.chord_node(b + 1, c), axes.x, about_y ? axes.z : axes.y);
        if (!held && b + 1 < bays) continue;
        for (; first <= b; ++first) {
          SystemLength& s = out[model.chord_member(first, c)];
          (about_y ? s.about_y : s.about_z) = between;
        }
        between = 0;
      }
    }
  }
  return out;
}

}  // namespace baywork::verify
