// SPDX-License-Identifier: MIT
// The panel table of a face: how each panel carries its shear, by bending or by axial force.
#pragma once

#include <cstddef>
#include <limits>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/response/response.hpp>

namespace baywork {

/// One panel. Moments are about the face's outward normal, signs of the positive cut; "first" and "second" are the
/// face's two chords. A contraflexure is a fraction of the length, NaN where the moment keeps its sign.
template <Scalar S = double>
struct BasicPanelRow {
  std::size_t first_station = 0, last_station = 0;
  S length = S(0), depth = S(0);                   ///< of the panel, at its first station [m]
  S shear = S(0);                                  ///< in the plane of the face at mid-panel, from first to second chord [N]
  S diagonals_shear = S(0);                        ///< the part of it that diagonals carry [N]
  S first_chord_start = S(0), first_chord_end = S(0);    ///< in-plane moments at the panel's ends [Nm]
  S second_chord_start = S(0), second_chord_end = S(0);
  double first_chord_zero = 0, second_chord_zero = 0;    ///< contraflexure, as a fraction of the panel
  S angle_change = S(0);                           ///< of the right angle between chord and cross member [rad]

  S chord_moment() const {
    return larger(larger(magnitude(first_chord_start), magnitude(first_chord_end)),
                  larger(magnitude(second_chord_start), magnitude(second_chord_end)));
  }
};

/// One cross member or post (all of it, where a K splits it).
template <Scalar S = double>
struct BasicCrossMemberRow {
  std::size_t station = 0;
  bool present = false;
  S length = S(0);                                 ///< between the faces' chord axes [m]
  S first_end = S(0), second_end = S(0);           ///< in-plane end moments, signs of the positive cut [Nm]
  S out_of_plane_first = S(0), out_of_plane_second = S(0);
  S shear = S(0);                                  ///< in plane, at mid-length [N]
  S axial = S(0);                                  ///< [N]
  double zero = 0;                                 ///< contraflexure from the first chord, as a fraction
  S first_chord_step = S(0), second_chord_step = S(0);  ///< change of the chords' N across the station [N]

  S end_moment() const { return larger(magnitude(first_end), magnitude(second_end)); }
};

template <Scalar S = double>
struct BasicPanelTable {
  std::string face, response;
  std::vector<BasicPanelRow<S>> panels;
  std::vector<BasicCrossMemberRow<S>> cross_members;  ///< one for each station

  /// Largest cross-member end moment at either end of a panel [Nm].
  S cross_member_moment(const BasicPanelRow<S>& p) const {
    return larger(cross_members[p.first_station].end_moment(), cross_members[p.last_station].end_moment());
  }
};
using PanelRow = BasicPanelRow<double>;
using CrossMemberRow = BasicCrossMemberRow<double>;
using PanelTable = BasicPanelTable<double>;

namespace detail {

template <class S>
class PanelTableMaker {
 public:
  PanelTableMaker(const BasicResponse<S>& r, std::size_t face) : r_(r), g_(r.girder()), f_(face), members_(r.model().faces[face]) {}

  BasicPanelTable<S> make() {
    BasicPanelTable<S> t;
    t.face = g_.faces[f_].name;
    t.response = r_.name();
    for (std::size_t p = 0; p < members_.panels.size(); ++p) t.panels.push_back(panel(p));
    for (std::size_t s = 0; s < g_.stations.size(); ++s) t.cross_members.push_back(cross_member(s));
    return t;
  }

 private:
  std::size_t chord(bool first) const { return first ? g_.faces[f_].first_chord : g_.faces[f_].second_chord; }

  /// In-plane moment and shear of a chord: M·n, and V along n × x (which is Vy and Mz where local z is n).
  S moment(const BasicMemberView<S>& m, const Vec3<S>& n, fraction at, CutSide side) const {
    return dot(m.axes().to_global(m.forces(at, side).moment()), n);
  }

  BasicPanelRow<S> panel(std::size_t p) const {
    BasicPanelRow<S> row;
    const PanelMembers& here = members_.panels[p];
    const Vec3<S>& n = members_.normals[p];
    row.first_station = here.first_station;
    row.last_station = here.last_station;
    const Vec3<S> across = g_.joint(here.first_station, chord(false)) - g_.joint(here.first_station, chord(true));
    row.depth = length(across);
    const Vec3<S> t = unit(across);
    const Vec3<S> along = g_.joint(here.last_station, chord(true)) - g_.joint(here.first_station, chord(true));
    row.length = length(along);
    // the middle of the panel: of its middle bay, or just before the station in the middle of an even number of bays
    const std::size_t bays = here.last_station - here.first_station;
    const std::size_t middle = here.first_station + (bays - 1) / 2;
    const fraction at{bays % 2 == 1 ? 0.5 : 1.0};
    for (const bool first : {true, false}) {
      const BasicMemberView<S> start = r_.member(r_.model().chord_member(here.first_station, chord(first)));
      const BasicMemberView<S> end = r_.member(r_.model().chord_member(here.last_station - 1, chord(first)));
      const BasicMemberView<S> mid = r_.member(r_.model().chord_member(middle, chord(first)));
      const BasicCutForces<S> cut = mid.forces(at, CutSide::before);
      row.shear += dot(cut.Vy * mid.axes().y + cut.Vz * mid.axes().z, t);
      (first ? row.first_chord_start : row.second_chord_start) = moment(start, n, fraction{0}, CutSide::after);
      (first ? row.first_chord_end : row.second_chord_end) = moment(end, n, fraction{1}, CutSide::before);
      (first ? row.first_chord_zero : row.second_chord_zero) = zero_of_chord(here, chord(first), n);
    }
    for (const std::size_t d : here.diagonals) {
      const BasicMemberView<S> m = r_.member(d);
      const S sense = value_of(dot(m.axes().x, along)) < 0.0 ? S(-1) : S(1);
      row.diagonals_shear += S(sense * dot(m.axes().to_global(m.forces(fraction{0.5}).force()), t));
    }
    row.shear += row.diagonals_shear;
    row.angle_change = angle_change(here, unit(along), t, row);
    return row;
  }

  double zero_of_chord(const PanelMembers& here, std::size_t c, const Vec3<S>& n) const {
    double whole = 0, found = std::numeric_limits<double>::quiet_NaN();
    for (std::size_t b = here.first_station; b < here.last_station; ++b) {
      const BasicMemberView<S> m = r_.member(r_.model().chord_member(b, c));
      double at[1];
      if (!is_finite(found) && m.contraflexure(dot(n, m.axes().y), dot(n, m.axes().z), at, 1) > 0) found = whole + at[0];
      whole += value_of(m.length());
    }
    return found / whole;
  }

  S angle_change(const PanelMembers& here, const Vec3<S>& x, const Vec3<S>& t, const BasicPanelRow<S>& row) const {
    const auto u = [&](std::size_t station, bool first) { return r_.answer().displacement(r_.model().chord_node(station, chord(first))); };
    const std::size_t a = here.first_station, b = here.last_station;
    const S half = S(S(1) / S(2));
    const S turn_chords = S(half * (dot(u(b, true) - u(a, true), t) + dot(u(b, false) - u(a, false), t)) / row.length);
    const S turn_cross = S(half * (dot(u(a, false) - u(a, true), x) + dot(u(b, false) - u(b, true), x)) / row.depth);
    return S(turn_chords + turn_cross);
  }

  BasicCrossMemberRow<S> cross_member(std::size_t s) const {
    BasicCrossMemberRow<S> row;
    row.station = s;
    row.zero = std::numeric_limits<double>::quiet_NaN();
    for (const bool first : {true, false}) {
      const auto N = [&](std::size_t bay, double at, CutSide side) { return r_.member(r_.model().chord_member(bay, chord(first))).forces(fraction{at}, side).N; };
      const S before = s > 0 ? N(s - 1, 1.0, CutSide::before) : S(0), after = s < g_.bays() ? N(s, 0.0, CutSide::after) : S(0);
      (first ? row.first_chord_step : row.second_chord_step) = S(after - before);
    }
    const std::vector<std::size_t>& pieces = members_.cross_members[s];
    if (pieces.empty()) return row;
    row.present = true;
    const BasicMemberView<S> start = r_.member(pieces.front()), end = r_.member(pieces.back());
    const BasicCutForces<S> f = start.forces(fraction{0}, CutSide::after), l = end.forces(fraction{1}, CutSide::before);
    row.first_end = f.Mz;
    row.second_end = l.Mz;
    row.out_of_plane_first = f.My;
    row.out_of_plane_second = l.My;
    const BasicCutForces<S> m = pieces.size() == 1 ? start.forces(fraction{0.5}) : l;
    row.shear = m.Vy;
    row.axial = m.N;
    double whole = 0;
    for (const std::size_t i : pieces) {
      const BasicMemberView<S> piece = r_.member(i);
      double at[1];
      if (!is_finite(row.zero) && piece.contraflexure(S(0), S(1), at, 1) > 0) row.zero = whole + at[0];
      whole += value_of(piece.length());
    }
    row.zero /= whole;
    row.length = length(g_.joint(s, chord(false)) - g_.joint(s, chord(true)));
    return row;
  }

  const BasicResponse<S>& r_;
  const BasicGirder<S>& g_;
  std::size_t f_;
  const BasicFaceMembers<S>& members_;
};

}  // namespace detail

/// Throws BadDescription for an unknown face, or one without panels.
template <Scalar S>
BasicPanelTable<S> panel_table(const BasicResponse<S>& r, const FaceRef& face) {
  const std::size_t f = face.in(r.model().frame.names.faces);
  if (r.model().faces[f].panels.empty())
    fail<BadDescription>(r.girder().faces[f].name + " face", "a panel table is asked for, but it has no panels", "faces with panels are accepted");
  return detail::PanelTableMaker<S>(r, f).make();
}

/// Prints kN and kNm; "zero" is the place of contraflexure along the panel or cross member.
template <Scalar S>
std::ostream& operator<<(std::ostream& out, const BasicPanelTable<S>& t) {
  const auto cell = [](const S& v, double unit) { return text::right(text::fixed(value_of(v) / unit, 3), 10); };
  const auto part = [](double v) { return text::right(!is_finite(v) ? "-" : text::fixed(v, 3), 7); };
  out << "Panels of the " << t.face << " face, " << t.response << " (moments about the face's outward normal)\n"
      << "  bay     shear  by diag.   first chord moments   zero   second chord moments   zero  angle change\n"
      << "             kN        kN       kNm       kNm                kNm       kNm              mrad\n";
  for (const BasicPanelRow<S>& p : t.panels)
    out << text::right(std::to_string(p.first_station + 1), 5) << cell(p.shear, 1e3) << cell(p.diagonals_shear, 1e3)
        << cell(p.first_chord_start, 1e3) << cell(p.first_chord_end, 1e3) << part(p.first_chord_zero)
        << cell(p.second_chord_start, 1e3) << cell(p.second_chord_end, 1e3) << part(p.second_chord_zero) << cell(p.angle_change, 1e-3) << '\n';
  out << "  station  cross member moments     shear     axial   zero   chord force steps\n"
      << "                 kNm       kNm        kN        kN               kN        kN\n";
  for (const BasicCrossMemberRow<S>& c : t.cross_members) {
    if (!c.present) continue;
    out << text::right(std::to_string(c.station + 1), 9) << cell(c.first_end, 1e3) << cell(c.second_end, 1e3) << cell(c.shear, 1e3)
        << cell(c.axial, 1e3) << part(c.zero) << cell(c.first_chord_step, 1e3) << cell(c.second_chord_step, 1e3) << '\n';
  }
  return out;
}

}  // namespace baywork
