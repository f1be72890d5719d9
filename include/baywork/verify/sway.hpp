// SPDX-License-Identifier: MIT
// Which bars of a girder may sway as they buckle: those of open faces, whose joints no diagonal holds in place.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/response/analysis.hpp>

namespace baywork::verify {

/// Whether the ends of a bar may move against each other while it buckles about its local y or z.
struct Sway {
  bool about_y = true, about_z = true;
};

/// Of every member: whether it sways, and whether it borders an open panel (or a panel is missing there).
struct OpenBars {
  std::vector<Sway> sway;
  std::vector<bool> in_open_face;
};

namespace detail {

/// Panels without any diagonal are open, those of a user's own bars too.
inline bool is_open(const GirderModel& model, const PanelMembers& panel) {
  for (const std::size_t m : panel.diagonals)
    if (model.frame.members[m].address.role == Role::diagonal) return false;
  return true;
}

/// In which bays a face is open: where its panel is, and where there is none.
inline std::vector<bool> open_bays(const GirderModel& model, const FaceMembers& face) {
  std::vector<bool> out(model.girder.bays(), true);
  for (const PanelMembers& p : face.panels) {
    const bool open = is_open(model, p);
    for (std::size_t b = p.first_station; b < p.last_station; ++b) out[b] = open;
  }
  return out;
}

/// A chord in one bay: a braced face holds its joints along the face, an open one lets them move along it. About an
/// axis it does not sway where at least one braced face has a part (|cos| above 0.3) in that direction, and no open one
/// has any (above 0.1).
inline void take_chord(const Analysis& analysis, std::size_t bay, std::size_t chord,
                       const std::vector<std::vector<bool>>& open_of_face, OpenBars& out) {
  const GirderModel& model = analysis.model();
  const std::size_t m = model.chord_member(bay, chord);
  const MemberAxes<>& axes = analysis.axes(m);
  bool any_open = false, held_z = false, held_y = false, free_z = false, free_y = false;
  for (std::size_t f = 0; f < model.faces.size(); ++f) {
    const GirderFace& face = model.girder.faces[f];
    if (face.first_chord != chord && face.second_chord != chord) continue;
    const std::size_t other = face.first_chord == chord ? face.second_chord : face.first_chord;
    const bool open = open_of_face[f][bay];
    const Vec3<> to_other =
        model.frame.nodes[model.chord_node(bay, other)].at - model.frame.nodes[model.chord_node(bay, chord)].at;
    const Vec3<> along_face = unit(to_other - dot(to_other, axes.x) * axes.x);
    const double least = open ? 0.1 : 0.3;
    const bool z = magnitude(dot(along_face, axes.z)) > least, y = magnitude(dot(along_face, axes.y)) > least;
    any_open = any_open || open;
    (open ? free_z : held_z) = (open ? free_z : held_z) || z;
    (open ? free_y : held_y) = (open ? free_y : held_y) || y;
  }
  out.in_open_face[m] = any_open;
  out.sway[m] = {free_z || !held_z, free_y || !held_y};
}

/// Face bars: diagonals and the cross members between braced panels do not sway, all others may.
inline void take_face(const GirderModel& model, const FaceMembers& face, OpenBars& out) {
  std::vector<bool> beside_open(face.cross_members.size(), false), beside_braced(face.cross_members.size(), false);
  for (const PanelMembers& p : face.panels) {
    const bool open = is_open(model, p);
    for (const std::size_t s : {p.first_station, p.last_station}) (open ? beside_open : beside_braced)[s] = true;
    for (const std::size_t m : p.diagonals) {
      if (model.frame.members[m].address.role != Role::diagonal) continue;
      out.sway[m] = {false, false};
      out.in_open_face[m] = false;
    }
  }
  for (std::size_t s = 0; s < face.cross_members.size(); ++s)
    for (const std::size_t m : face.cross_members[s]) {
      const bool held = beside_braced[s] && !beside_open[s];
      out.sway[m] = {!held, !held};
      out.in_open_face[m] = !held;
    }
}

}  // namespace detail

/// Bars of which nothing is known, diaphragms and a user's own, count as swaying (safe side).
inline OpenBars open_bars(const Analysis& analysis) {
  const GirderModel& model = analysis.model();
  const std::size_t n = model.frame.members.size();
  OpenBars out{std::vector<Sway>(n), std::vector<bool>(n, true)};
  std::vector<std::vector<bool>> open_of_face;
  for (const FaceMembers& face : model.faces) open_of_face.push_back(detail::open_bays(model, face));
  for (std::size_t c = 0; c < model.girder.chords.size(); ++c)
    for (std::size_t b = 0; b < model.girder.bays(); ++b) detail::take_chord(analysis, b, c, open_of_face, out);
  for (const FaceMembers& face : model.faces) detail::take_face(model, face, out);
  return out;
}

}  // namespace baywork::verify
