// SPDX-License-Identifier: MIT
// The ends of face bars on chords: who meets whom at a joint, at which angle, and how far their footprints are apart.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/verify/system_lengths.hpp>

namespace baywork::verify {

/// One end of a cross member, diagonal or diaphragm bar, on a chord.
struct BraceEnd {
  std::size_t member = 0;
  bool at_start = true;
  std::size_t chord_before = no_member, chord_after = no_member;  ///< members of the chord that meet there
  Vec3<> away{};                                                  ///< unit, from the joint along the bar
  Vec3<> across_plane{};               ///< unit, square to bar and chord: moments about it act in their plane
  double sine = 1;                     ///< of the angle to the chord
  double middle = 0, half = 0;         ///< of the footprint along the chord, from the joint [m]
  std::vector<std::size_t> same_side;  ///< ends on this side of the chord, this one too, in their order along it
  bool opposite = false;               ///< a bar faces this one across the chord
  bool second_plane = false;           ///< bars meet the chord in another plane, 60 to 90 degrees from this one
  bool other_planes = false;           ///< bars meet the chord in planes at other angles
  std::size_t first = 0, last = 0;     ///< the ends of its joint are first ... last - 1

  std::size_t chord() const { return chord_after != no_member ? chord_after : chord_before; }
  double theta() const { return std::asin(smaller(sine, 1.0)); }
};

/// The ends on chords of every bar but the chords, and the bars that end elsewhere (on a post, in a face).
struct BraceEnds {
  std::vector<BraceEnd> ends;
  std::vector<std::size_t> elsewhere;  ///< members
};

namespace detail {

/// Cosines between the directions of bars across the chord. Within 20 degrees they share its side; within 20 degrees of
/// straight on they face each other; 57 to 93 degrees apart, 60 to 90 but for a girder's taper, they are in two planes.
inline constexpr double in_line = 0.94, two_planes_least = -0.05, two_planes_most = 0.55;

/// Where along the chord a bar's axis meets the chord's surface: (depth of the chord / 2) / tan(theta) from where the
/// axes meet, plus the bar's arm; its footprint is its depth / sin(theta) long.
inline BraceEnd brace_end(const Analysis& analysis, std::size_t member, bool at_start, std::size_t before,
                          std::size_t after) {
  const GirderModel& model = analysis.model();
  BraceEnd e;
  e.member = member;
  e.at_start = at_start;
  e.chord_before = before;
  e.chord_after = after;
  const Vec3<> along = analysis.axes(e.chord()).x;
  e.away = at_start ? analysis.axes(member).x : -analysis.axes(member).x;
  const double cosine = dot(e.away, along);
  const Vec3<> normal = cross(e.away, along);
  e.sine = larger(length(normal), 1e-6);
  e.across_plane = (1.0 / e.sine) * normal;
  const Member& m = model.frame.members[member];
  const Vec3<>& arm = at_start ? m.start.offset : m.end.offset;
  const SectionData<double>&c = model.bar(e.chord()).section, &b = model.bar(member).section;
  e.middle = dot(arm, along) + 0.5 * larger(c.height, c.width) * cosine / e.sine;
  e.half = 0.5 * larger(b.height, b.width) / e.sine;
  return e;
}

}  // namespace detail

inline BraceEnds brace_ends(const Analysis& analysis) {
  const GirderModel& model = analysis.model();
  const detail::FaceBarsAtNodes bars(model);
  const std::size_t bays = model.girder.bays();
  BraceEnds out;
  for (std::size_t node = 0; node < model.frame.nodes.size(); ++node) {
    const Address& at = model.frame.nodes[node].address;
    if (at.chord < 0) {
      out.elsewhere.insert(out.elsewhere.end(), bars[node].begin(), bars[node].end());
      continue;
    }
    const std::size_t station = static_cast<std::size_t>(at.station), c = static_cast<std::size_t>(at.chord);
    const std::size_t before = station > 0 ? model.chord_member(station - 1, c) : no_member;
    const std::size_t after = station < bays ? model.chord_member(station, c) : no_member;
    const std::size_t first = out.ends.size();
    for (const std::size_t m : bars[node])
      out.ends.push_back(detail::brace_end(analysis, m, model.frame.members[m].from == node, before, after));
    const auto radial = [&](const BraceEnd& e) { return cross(analysis.axes(e.chord()).x, e.across_plane); };
    for (std::size_t i = first; i < out.ends.size(); ++i) {
      BraceEnd& e = out.ends[i];
      e.first = first;
      e.last = out.ends.size();
      for (std::size_t j = first; j < out.ends.size(); ++j) {
        const double cosine = dot(radial(e), radial(out.ends[j]));
        if (i == j || cosine > detail::in_line)
          e.same_side.push_back(j);
        else if (cosine < -detail::in_line)
          e.opposite = true;
        else if (cosine > detail::two_planes_least && cosine < detail::two_planes_most)
          e.second_plane = true;
        else
          e.other_planes = true;
      }
      std::stable_sort(e.same_side.begin(), e.same_side.end(),
                       [&](std::size_t a, std::size_t b) { return out.ends[a].middle < out.ends[b].middle; });
    }
  }
  return out;
}

}  // namespace baywork::verify
