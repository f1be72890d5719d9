// SPDX-License-Identifier: MIT
// Buckling lengths that EN 1993-1-1 BB.1 allows for bars of braced faces, as factors of their system lengths.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/verify/sway.hpp>
#include <baywork/verify/system_lengths.hpp>

namespace baywork::verify {

namespace detail {

inline bool is_hollow_steel(const Bar& bar) {
  return bar.material.family == material::Family::steel &&
         (bar.section.kind == ShapeKind::round_tube || bar.section.kind == ShapeKind::rectangular_hollow);
}

/// A bar between two chords, BB.1.3 (3): 0.75 about both axes where bar and chords are hollow, the chords parallel, and
/// the bar is less than 0.6 as wide as either chord; else 0.9 in the plane of the face and 1 out of it, BB.1.1 (3).
inline BucklingFactors of_web_member(const Analysis& analysis, std::size_t m, std::size_t bay, const GirderFace& face) {
  const GirderModel& model = analysis.model();
  const Bar& own = model.bar(m);
  const std::size_t a = model.chord_member(bay, face.first_chord), b = model.chord_member(bay, face.second_chord);
  const auto thin_on = [&](const Bar& chord) {
    return is_hollow_steel(chord) && larger(own.section.height, own.section.width) <
                                         0.6 * smaller(chord.section.height, chord.section.width) * (1.0 - 1e-9);
  };
  const bool parallel = length(cross(analysis.axes(a).x, analysis.axes(b).x)) < 1e-6;
  if (is_hollow_steel(own) && parallel && thin_on(model.bar(a)) && thin_on(model.bar(b))) return {0.75, 0.75};
  return {1.0, 0.9};
}

}  // namespace detail

/// Of every member. Steel bars alone: EN 1999-1-1 has no such rule. Chords of hollow section 0.9, BB.1.3 (1), in the
/// directions that braced faces hold (the clause allows it sideways for a ladder's chord, too); diagonals and posts of
/// braced faces as of_web_member(), their joints being welded all round; posts in several pieces, bars on them, other
/// bars, and every chord and cross member that borders an open panel: 1, never less. Values from memory, check against
/// the standard and the national annex.
inline std::vector<BucklingFactors> code_lengths(const Analysis& analysis, const OpenBars& open) {
  const GirderModel& model = analysis.model();
  std::vector<BucklingFactors> out(model.frame.members.size());
  for (std::size_t c = 0; c < model.girder.chords.size(); ++c)
    for (std::size_t b = 0; b < model.girder.bays(); ++b) {
      const std::size_t m = model.chord_member(b, c);
      if (open.in_open_face[m] || !detail::is_hollow_steel(model.bar(m))) continue;
      out[m] = {open.sway[m].about_y ? 1.0 : 0.9, open.sway[m].about_z ? 1.0 : 0.9};
    }
  for (std::size_t f = 0; f < model.faces.size(); ++f) {
    const auto take = [&](std::size_t m, std::size_t bay) {
      const Member& member = model.frame.members[m];
      const bool on_chords =
          model.frame.nodes[member.from].address.chord >= 0 && model.frame.nodes[member.to].address.chord >= 0;
      if (on_chords && !open.in_open_face[m] && model.bar(m).material.family == material::Family::steel)
        out[m] = detail::of_web_member(analysis, m, bay, model.girder.faces[f]);
    };
    for (const PanelMembers& p : model.faces[f].panels)
      for (const std::size_t m : p.diagonals) take(m, p.first_station);
    const auto& posts = model.faces[f].cross_members;
    for (std::size_t s = 0; s < posts.size(); ++s)
      if (posts[s].size() == 1) take(posts[s][0], s < model.girder.bays() ? s : s - 1);
  }
  return out;
}

}  // namespace baywork::verify
