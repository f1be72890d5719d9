// SPDX-License-Identifier: MIT
// How far the welds at a joint soften the bars that meet there: EN 1999-1-1 6.1.6.3 with the girder's geometry.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/material/haz.hpp>
#include <baywork/verify/en1999_section.hpp>
#include <baywork/verify/en1999_softened_arc.hpp>
#include <baywork/verify/system_lengths.hpp>

namespace baywork::verify {

/// Softened metal at one end of a member. `reach` [m] is counted from the end of the member's flexible length; `length`
/// [m] is the length that 6.2.9.3 compares with the least width of the section; `arc` [rad] the half-angle of the arc
/// of a round chord that is softened (see en1999::softened_arc()), its opposite counted in.
struct WeldedEnd {
  double reach = 0, length = 0;
  double arc = en1999::whole_section;
};
/// Softened metal beside a weld across a member: `reach` [m] to both sides of a place, which may lie beyond its ends.
struct WeldedPlace {
  double at = 0, reach = 0;
};
struct WeldedEnds {
  WeldedEnd start{}, end{};
  std::vector<WeldedPlace> across{};
  bool known = true;  ///< false: TIG welding of a wall that the clause gives no extent for
};

/// The longest of a member's softened parts [m]: the weakest, as a longer one has no more strength.
inline double longest_softened(const WeldedEnds& w) {
  double most = larger(w.start.length, w.end.length);
  for (const WeldedPlace& p : w.across) most = larger(most, 2.0 * p.reach);
  return most;
}

namespace detail {

inline double depth_of(const Bar& bar) { return larger(bar.section.height, bar.section.width); }

/// What softened arcs of a ring leave when each counts for its opposite as well: half the angle that they cover of half
/// a turn. Each has a middle and a half-angle [rad].
inline double arc_with_opposites(const std::vector<std::pair<double, double>>& arcs) {
  const double pi = pi_v<double>;
  std::vector<std::pair<double, double>> covered;
  covered.reserve(2 * arcs.size());
  for (const auto& [middle, half] : arcs) {
    if (!(half < 0.5 * pi)) return en1999::whole_section;
    const double from = middle - half - pi * std::floor((middle - half) / pi), to = from + 2.0 * half;
    covered.emplace_back(from, smaller(to, pi));
    if (to > pi) covered.emplace_back(0.0, to - pi);
  }
  std::sort(covered.begin(), covered.end());
  double sum = 0, reached = 0;
  for (const auto& [from, to] : covered) {
    sum += larger(0.0, to - larger(from, reached));
    reached = larger(reached, to);
  }
  return 0.5 * sum;
}

/// b_haz [m], MIG where no process has been said; 0 where welds do not soften.
struct HazExtent {
  double size = 0;
  bool known = true;  ///< false: 6.1.6.3 gives none for TIG welding of walls above 6 mm
};
inline HazExtent softened_extent(const material::Material& m, double wall, const material::WeldHeat& heat) {
  const bool tig = m.welding == material::Welding::tig;
  if (tig && wall > 0.006 * (1.0 + 1e-9)) return {0.040, false};
  return {material::haz_extent(m, wall, tig ? material::Welding::tig : material::Welding::mig, heat)};
}

class WeldFinder {
 public:
  /// `given` [m]: the extent of the softened metal whatever the wall; 0: that of EN 1999-1-1.
  WeldFinder(const Analysis& analysis, const material::WeldHeat& heat, double given)
      : analysis_(analysis),
        heat_(heat),
        given_(given),
        model_(analysis.model()),
        bars_(model_),
        out_(model_.bar_index.size()) {}

  std::vector<WeldedEnds> find() {
    for (std::size_t c = 0; c < model_.girder.chords.size(); ++c)
      for (std::size_t i = 0; i <= model_.girder.bays(); ++i) chord_joint(i, c);
    for (std::size_t c = 0; c < model_.girder.chords.size(); ++c) across_chord(c);
    for (std::size_t m = 0; m < out_.size(); ++m) {
      if (model_.frame.members[m].address.role == Role::chord) continue;
      bar_end(m, true);
      bar_end(m, false);
      across_bar(m);
    }
    return std::move(out_);
  }

 private:
  /// b_haz [m] in `bar` from a weld to `other`: of the mean wall.
  double extent(const Bar& bar, const Bar& other, WeldedEnds& ends) const {
    if (bar.material.family != material::Family::aluminium) return 0.0;
    if (given_ > 0.0) return given_;
    const HazExtent b = softened_extent(bar.material, 0.5 * (bar.section.wall + other.section.wall), heat_);
    ends.known = ends.known && b.known;
    return b.size;
  }

  /// Sine of the angle between a bar and a carrier, kept off zero, and its cosine away from the node.
  struct Angle {
    double sine, cosine;
  };
  Angle angle(std::size_t m, std::size_t node, const Vec3<>& along) const {
    const double c = dot(analysis_.axes(m).x, along);
    const double s = std::sqrt(larger(0.01, 1.0 - c * c));
    return {s, model_.frame.members[m].from == node ? c : -c};
  }

  /// A chord is softened from the first to the last footprint of the bars on it, plus b_haz. A bar of depth d at the
  /// angle theta has a footprint d / sin(theta) long, its middle (depth of the chord / 2) / tan(theta) from where the
  /// axes meet. Round the chord it reaches asin(d / D) to both sides of the bar's direction, plus b_haz along the
  /// middle of the wall.
  void chord_joint(std::size_t station, std::size_t chord) {
    const std::size_t node = model_.chord_node(station, chord), bays = model_.girder.bays();
    const std::size_t before = station > 0 ? model_.chord_member(station - 1, chord) : no_member;
    const std::size_t after = station < bays ? model_.chord_member(station, chord) : no_member;
    const std::size_t any = after != no_member ? after : before;
    const Bar& own = model_.bar(any);
    const Vec3<> along = analysis_.axes(any).x;
    double low = 0, high = 0;
    bool first = true;
    arcs_.clear();
    for (const std::size_t m : bars_[node]) {
      const Member& member = model_.frame.members[m];
      const Angle a = angle(m, node, along);
      const double b = extent(own, model_.bar(m), out_[any]);
      if (b == 0.0) continue;
      const Vec3<>& arm = member.from == node ? member.start.offset : member.end.offset;
      const double middle = dot(arm, along) + 0.5 * depth_of(own) * a.cosine / a.sine;
      const double half = 0.5 * depth_of(model_.bar(m)) / a.sine + b;
      low = first ? middle - half : smaller(low, middle - half);
      high = first ? middle + half : larger(high, middle + half);
      first = false;
      const MemberAxes<>& axes = analysis_.axes(any);
      const Vec3<>& x = analysis_.axes(m).x;
      const double share = depth_of(model_.bar(m)) / depth_of(own);
      arcs_.emplace_back(std::atan2(dot(x, axes.z), dot(x, axes.y)),
                         std::asin(smaller(share, 1.0)) + 2.0 * b / (depth_of(own) - own.section.wall));
    }
    double length = high - low, arc = arc_with_opposites(arcs_);
    if (model_.girder.is_splice(station)) {  // connectors are welded in; how, is not known
      const double b = extent(own, own, out_[any]);
      if (b > 0.0) {
        length = larger(length, 2.0 * (depth_of(own) + b));
        arc = en1999::whole_section;
      }
      low = smaller(low, b > 0.0 ? -depth_of(own) - b : 0.0);
      high = larger(high, b > 0.0 ? depth_of(own) + b : 0.0);
    }
    if (!out_[any].known && before != no_member) out_[before].known = false;
    if (before != no_member) out_[before].end = {larger(0.0, -low), length, arc};
    if (after != no_member) out_[after].start = {larger(0.0, high), length, arc};
  }

  /// Any other bar is softened for b_haz from the weld, and up to there it has no metal of its own. On a chord the weld
  /// ends (depth of the chord / 2) / sin(theta) + (depth of the bar / 2) / tan(theta) from where the axes meet. Where
  /// there is no chord (joints of a face itself) footprints of bars at 30 degrees and more are covered.
  void bar_end(std::size_t m, bool start) {
    const Member& member = model_.frame.members[m];
    const std::size_t node = start ? member.from : member.to;
    const Address& at = model_.frame.nodes[node].address;
    WeldedEnd& end = start ? out_[m].start : out_[m].end;
    const Bar& own = model_.bar(m);
    if (at.chord >= 0) {
      const std::size_t station = static_cast<std::size_t>(at.station), bays = model_.girder.bays();
      const std::size_t c =
          model_.chord_member(station < bays ? station : bays - 1, static_cast<std::size_t>(at.chord));
      const double b = extent(own, model_.bar(c), out_[m]);
      if (b == 0.0) return;
      const Angle a = angle(m, node, analysis_.axes(c).x);
      const double to_weld = (depth_of(model_.bar(c)) + depth_of(own) * magnitude(a.cosine)) / (2.0 * a.sine);
      const Vec3<> arm = start ? member.start.offset : -member.end.offset;
      const double armed = member.kind == MemberKind::beam ? dot(arm, analysis_.axes(m).x) : 0.0;
      end = {larger(0.0, to_weld - armed) + b, b, en1999::whole_section};
      return;
    }
    for (const std::size_t other : bars_[node]) {
      if (other == m) continue;
      const double b = extent(own, model_.bar(other), out_[m]);
      if (b == 0.0) continue;
      const double half = depth_of(model_.bar(other)) + b;
      end = {larger(end.reach, half), larger(end.length, 2.0 * half), en1999::whole_section};
    }
  }

  /// What a weld across a bar softens: what it holds, and b_haz of the bar's own wall to both sides.
  void add_across(std::size_t m, double at, double width) {
    const Bar& own = model_.bar(m);
    const double b = extent(own, own, out_[m]);
    if (b == 0.0) return;
    const double reach = 0.5 * width + b, length = analysis_.axes(m).length;
    if (at + reach > 0.0 && at - reach < length) out_[m].across.push_back({at, reach});
  }
  [[noreturn]] static void beyond(const std::string& place, double at, double length) {
    fail<BadDescription>(place, "a weld across it is at " + text::number(at) + " m, but it is " + text::number(length) +
                                    " m long", "places along it are accepted");
  }
  /// Of a chord by places along the girder's axis, which a bay's own bar shares evenly.
  void across_chord(std::size_t chord) {
    const Girder& g = model_.girder;
    for (const WeldAcross& w : g.chords[chord].bar.across) {
      if (w.at > g.span() * (1.0 + 1e-12)) beyond(g.chords[chord].name + " chord", w.at, g.span());
      for (std::size_t b = 0; b < g.bays(); ++b) {
        const std::size_t m = model_.chord_member(b, chord);
        const double from = g.stations[b] - g.stations[0], bay = g.stations[b + 1] - g.stations[b];
        add_across(m, (w.at - from) / bay * analysis_.axes(m).length, w.width);
      }
    }
  }
  void across_bar(std::size_t m) {
    const double length = analysis_.axes(m).length;
    for (const WeldAcross& w : model_.bar(m).across) {
      if (w.at > length * (1.0 + 1e-12))
        beyond(text_of(model_.frame.members[m].address, model_.frame.names), w.at, length);
      add_across(m, w.at, w.width);
    }
  }

  const Analysis& analysis_;
  material::WeldHeat heat_;
  double given_;
  const GirderModel& model_;
  FaceBarsAtNodes bars_;
  std::vector<std::pair<double, double>> arcs_;  // of the joint at hand: its middle and half-angle each
  std::vector<WeldedEnds> out_;
};

}  // namespace detail

/// Of every member of a girder whose joints are all welded: cross members, diagonals and diaphragm bars at both ends,
/// chords at every station where a bar joins them or modules meet; and where welds lie across bars. Steel and annealed
/// aluminium are not softened. `heat` is that of all their welds; `extent` [m] replaces that of EN 1999-1-1 where it is
/// given.
inline std::vector<WeldedEnds> welded_ends(const Analysis& analysis, const material::WeldHeat& heat = {},
                                           double extent = 0.0) {
  return detail::WeldFinder(analysis, heat, extent).find();
}

/// What the welds along an aluminium bar soften, 6.1.6: each line its own width and b_haz to both sides. Walls that the
/// clause gives no extent for count as softened all round.
inline en1999::WeldedAlong welded_along(const Bar& bar, const material::WeldHeat& heat = {}) {
  if (bar.along.lines == 0 || bar.material.family != material::Family::aluminium) return {};
  const detail::HazExtent b = detail::softened_extent(bar.material, bar.section.wall, heat);
  if (!b.known) return {true, bar.section.area};
  if (b.size == 0.0) return {true, 0.0};
  return {true, smaller(bar.section.area, bar.along.lines * (bar.along.width + 2.0 * b.size) * bar.section.wall)};
}

/// Resistances of an aluminium bar with all its welds: those of its joints (class limits), and those along it.
inline en1999::BarResistance aluminium_resistance(const Bar& bar, const Basis& basis) {
  return en1999::resistance(bar.section, bar.material, basis.aluminium, en1999::welded_at_joints(bar.material),
                            welded_along(bar, basis.choices.heat));
}

}  // namespace baywork::verify
