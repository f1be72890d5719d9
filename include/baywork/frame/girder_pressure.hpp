// SPDX-License-Identifier: MIT
// How a pressure on a panel reaches the bars at its edges.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/frame/detail/member_place.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/girder_model.hpp>
#include <baywork/load/actions.hpp>

namespace baywork::detail {

/// Carries p·area of a panel to its edges. With a the length along the chords and h the depth, 45° lines give each
/// cross member a triangle and each chord the trapezoid between: the usual two-way share of cladding (common practice).
/// The area is that of the quadrilateral, half the cross product of its diagonals: where the edges' strips (exact for a
/// rectangle) add up to another one, as on tapered or curved panels, all of them are scaled to it. Loads act along the
/// panel's normal, towards the girder's inside where p is positive.
template <class S>
struct PressureCarrier {
  const BasicGirderModel<S>& model;
  const std::vector<MemberAxes<S>>& axes;
  BasicFrameLoads<S>& out;
  S area_met = S(0);  ///< of the strips put on edges so far [m²]

  void carry(std::size_t f, std::size_t p, const S& pressure, CarriedBy by) {
    area_met = S(0);
    const std::size_t first_line = out.on_members.size(), first_node = out.on_nodes.size();
    share_out(f, p, pressure, by);
    const PanelMembers& panel = model.faces[f].panels[p];
    const std::size_t a = model.girder.faces[f].first_chord, b = model.girder.faces[f].second_chord;
    const auto at = [this](std::size_t station, std::size_t chord) { return model.girder.joint(station, chord); };
    const Vec3<S> area = cross(at(panel.last_station, b) - at(panel.first_station, a), at(panel.last_station, a) - at(panel.first_station, b));
    const S scale = S(length(area) / (S(2) * area_met));
    for (std::size_t i = first_line; i < out.on_members.size(); ++i) {
      out.on_members[i].first = scale * out.on_members[i].first;
      out.on_members[i].last = scale * out.on_members[i].last;
    }
    for (std::size_t i = first_node; i < out.on_nodes.size(); ++i) {
      out.on_nodes[i].force = scale * out.on_nodes[i].force;
      out.on_nodes[i].couple = scale * out.on_nodes[i].couple;
    }
  }

 private:
  void share_out(std::size_t f, std::size_t p, const S& pressure, CarriedBy by) {
    const BasicFaceMembers<S>& face = model.faces[f];
    const PanelMembers& panel = face.panels[p];
    const BasicGirderFace<S>& side = model.girder.faces[f];
    const Vec3<S> load = S(-pressure) * face.normals[p];
    const std::vector<std::size_t>&start = face.cross_members[panel.first_station], &end = face.cross_members[panel.last_station];
    const bool both = !start.empty() && !end.empty();
    const S h0 = distance(panel.first_station, side.first_chord, side.second_chord);
    const S h1 = distance(panel.last_station, side.first_chord, side.second_chord);
    if (by == CarriedBy::chords || !both) return to_chords(side, panel, load, h0, h1, S(0));
    const S a = chord_length(side.first_chord, panel);
    if (by == CarriedBy::cross_members) {
      to_cross_member(start, load, S(a / S(2)), S(a / S(2)), h0);
      to_cross_member(end, load, S(a / S(2)), S(a / S(2)), h1);
      return;
    }
    // 45° lines: each edge's strip is as wide as the distance to its corners, at most half the panel
    const S reach0 = lesser(S(h0 / S(2)), S(a / S(2))), reach1 = lesser(S(h1 / S(2)), S(a / S(2)));
    to_cross_member(start, load, S(0), reach0, h0);
    to_cross_member(end, load, S(0), reach1, h1);
    to_chords(side, panel, load, h0, h1, S(1));
  }

  /// The smaller one; `first` where they are equal but for rounding. On a square panel each edge's reach must be half of
  /// the edge itself, so that the middle of its strip vanishes with its derivatives, which a piece left out would lose.
  static S lesser(const S& first, const S& second) {
    return value_of(second) < (1 - 1e-12) * value_of(first) ? second : first;
  }

  S distance(std::size_t station, std::size_t a, std::size_t b) const {
    return length(model.girder.joint(station, b) - model.girder.joint(station, a));
  }
  S chord_length(std::size_t c, const PanelMembers& panel) const {
    S l = S(0);
    for (std::size_t b = panel.first_station; b < panel.last_station; ++b) l += axes[model.chord_member(b, c)].length;
    return l;
  }

  /// Strip widths from `edge` at the ends to `middle` over the bar's middle part (equal: a constant width).
  void to_cross_member(const std::vector<std::size_t>& pieces, const Vec3<S>& load, const S& edge, const S& middle, const S& h) {
    const S ramp = value_of(edge) == value_of(middle) ? S(0) : middle;  // 45°: as long as it is wide
    S done = S(0);
    for (const std::size_t i : pieces) {
      const S l = place(i).whole();
      strip(i, l, done, h, ramp, edge, middle, load);
      done += l;
    }
  }

  /// Each chord takes half the depth; with `share` 1 less the cross members' 45° corners.
  void to_chords(const BasicGirderFace<S>& side, const PanelMembers& panel, const Vec3<S>& load, const S& h0, const S& h1, const S& share) {
    for (const std::size_t c : {side.first_chord, side.second_chord}) {
      const S a = chord_length(c, panel);
      S done = S(0);
      for (std::size_t b = panel.first_station; b < panel.last_station; ++b) {
        const std::size_t i = model.chord_member(b, c);
        const S l = axes[i].length;
        if (value_of(share) == 0.0) {
          const auto width = [&](const S& x) { return S((h0 + (x / a) * (h1 - h0)) / S(2)); };
          put(i, S(0), l, width(done), width(S(done + l)), load);
        } else {
          const S reach0 = lesser(S(a / S(2)), S(h0 / S(2))), reach1 = lesser(S(a / S(2)), S(h1 / S(2)));
          trapezoid(i, l, done, a, reach0, reach1, S(h0 / S(2)), S(h1 / S(2)), load);
        }
        done += l;
      }
    }
  }

  /// Width along a chord: rises from 0 to reach0 over reach0, runs straight to reach1, falls to 0 over reach1. Where
  /// the depth tapers, the widths follow half the depth at the two bends.
  void trapezoid(std::size_t i, const S& l, const S& done, const S& a, const S& reach0, const S& reach1, const S& half0,
                 const S& half1, const Vec3<S>& load) {
    const S bend0 = reach0, bend1 = S(a - reach1);
    const S w0 = lesser(bend0, S(half0 + (bend0 / a) * (half1 - half0)));
    const S w1 = lesser(reach1, S(half0 + (bend1 / a) * (half1 - half0)));
    ramp_part(i, l, done, S(0), bend0, S(0), w0, load);
    ramp_part(i, l, done, bend0, bend1, w0, w1, load);
    ramp_part(i, l, done, bend1, a, w1, S(0), load);
  }

  void strip(std::size_t i, const S& l, const S& done, const S& h, const S& ramp, const S& edge, const S& middle, const Vec3<S>& load) {
    if (value_of(ramp) == 0.0) return ramp_part(i, l, done, S(0), h, middle, middle, load);
    ramp_part(i, l, done, S(0), ramp, edge, middle, load);
    ramp_part(i, l, done, ramp, S(h - ramp), middle, middle, load);
    ramp_part(i, l, done, S(h - ramp), h, middle, edge, load);
  }

  /// The part of a straight piece of strip (from u0 to u1, widths w0 to w1) that lies on member i, which covers
  /// `done` to `done + l` of the edge.
  void ramp_part(std::size_t i, const S& l, const S& done, const S& u0, const S& u1, const S& w0, const S& w1, const Vec3<S>& load) {
    const S lo = larger(u0, done), hi = smaller(u1, S(done + l));
    if (!(value_of(S(hi - lo)) > 1e-12 * value_of(l))) return;
    const auto width = [&](const S& u) { return S(w0 + ((u - u0) / (u1 - u0)) * (w1 - w0)); };
    put(i, S(lo - done), S(hi - done), width(lo), width(hi), load);
  }
  void put(std::size_t i, const S& from, const S& to, const S& w0, const S& w1, const Vec3<S>& load) {
    place(i).line(from, to, w0 * load, w1 * load);
    area_met += S((to - from) * (w0 + w1) / S(2));
  }

  MemberPlace<S> place(std::size_t member) { return {model.frame, axes[member], out, member}; }
};

}  // namespace baywork::detail
