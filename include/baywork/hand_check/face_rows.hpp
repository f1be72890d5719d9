// SPDX-License-Identifier: MIT
// Diagonals of braced faces by statics, bars of open faces by the portal method.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/chord_rows.hpp>
#include <baywork/hand_check/face_shares.hpp>
#include <baywork/hand_check/row.hpp>
#include <baywork/response/panel_table.hpp>

namespace baywork::detail {

class FaceHand {
 public:
  FaceHand(const Response& r, const HandModel& h, std::size_t i)
      : r_(r), h_(h), f_(h.girder.faces[i]), why_(h.no_shares()) {
    if (why_.empty() && !f_.no_closed_form.empty()) why_ = f_.no_closed_form;
    if (!why_.empty()) return;
    for (std::size_t p = 0; p < r.model().faces[f_.face].panels.size(); ++p) {
      const FaceShares s = h.shares(p * f_.span, f_.span);
      if (!s.unknown.empty()) why_ = s.unknown;
      V_.push_back(s.V[i]);
    }
    for (std::size_t j = 0; j < h.girder.faces.size(); ++j)
      if (j == h.girder.opposite[i] && j != i && !h.girder.no_stiffness[std::abs(f_.tz()) > 0.5 ? 0 : 1].empty() &&
          why_.empty())
        why_ = h.girder.no_stiffness[std::abs(f_.tz()) > 0.5 ? 0 : 1];
  }

  void add(std::vector<HandCheck>& rows) const {
    if (f_.layout == Layout::open) return add_open(rows);
    add_diagonal(rows);
  }

 private:
  static constexpr double more = 1 + 1e-9;  ///< what counts as larger: the first of equals is taken
  static constexpr double smooth = 0.3;  ///< how far V may differ from a neighbour's where the portal method is asked

  const std::vector<PanelMembers>& panels() const { return r_.model().faces[f_.face].panels; }
  std::string place(std::size_t p) const {
    return "bay " + std::to_string(panels()[p].first_station + 1) + ", " + f_.name + " face";
  }
  const std::string& dull() const {
    static const std::string text = "the beam gives this face little or no shear";
    return text;
  }

  /// Most that any face carries [N]: what is small beside it is decided by what a hand calculation leaves out.
  double most_of_all() const {
    double most = 0;
    for (std::size_t b = 0; b < r_.girder().bays(); ++b)
      for (const double v : h_.shares(b, 1).V) most = (std::max)(most, std::abs(v));
    return most;
  }
  double largest(const std::vector<double>& list) const {
    double most = 0;
    for (const double v : list) most = (std::max)(most, std::abs(v));
    return most;
  }

  /// Panels beside a step of V have kinks in their chords, which then carry shear by themselves. A plain rest at the
  /// girder's end makes none; a clamp does, and so does a rest on one side of the section, whose force must first
  /// spread.
  bool smooth_shear(std::size_t p) const {
    const bool vertical = std::abs(f_.tz()) > 1e-9, horizontal = std::abs(f_.ty()) > 1e-9;
    for (const bool end : {false, true}) {
      if (end ? p + 1 < V_.size() : p > 0) {
        const double there = V_[end ? p + 1 : p - 1];
        if (std::abs(there - V_[p]) > smooth * std::abs(V_[p])) return false;
        continue;
      }
      for (const bool v : {true, false}) {
        const PlaneBeam& plane = h_.plane(v);
        if (!(v ? vertical : horizontal) || !plane.loaded) continue;
        for (std::size_t i = 0; i < plane.supports.stations.size(); ++i)
          if (plane.supports.stations[i] == (end ? r_.girder().bays() : 0) &&
              (plane.supports.off_centre || plane.supports.supports[i].rotational_stiffness > 0))
            return false;
      }
    }
    return true;
  }

  /// Force that the chords' mean strain by the girder's bending would put in a diagonal if posts kept the face's depth:
  /// E Ad e s^2/d^2.
  double squeezed(std::size_t p) const {
    const ChordHand hand(r_, h_);
    if (!hand.why_not().empty()) return 0;
    double strain = 0;
    for (const std::size_t c : {f_.first_chord, f_.second_chord})
      strain += hand.force(c, p, false).value / (2 * h_.girder.E * h_.girder.chords[c].A);
    const double d = f_.diagonal();
    return std::abs(f_.facts.brace.material.E * f_.facts.brace.section.area * strain * f_.s * f_.s / (d * d));
  }

  /// N = V d/h in a single diagonal and in both of a K, half of it in crossed ones; times the part of V that is not
  /// carried by the frame of chords and rigid posts beside them. Where chords are shared by inclined faces that part is
  /// only known within itself. Two crossed diagonals also share the loads of their joints: half their difference
  /// counts.
  closed_form::ClosedForm<> diagonal_form(std::size_t p) const {
    const double V = sense_of(r_, f_, panels()[p], 0) * V_[p], d = f_.diagonal();
    const bool crossed = f_.layout == Layout::crossed;
    return {V * d / (crossed ? 2 * f_.h : f_.h) * f_.diagonals_part(),
            true,
            crossed ? "{V}*{d}/(2*{h})*{Sd}/({Sd} + {Sf})" : "{V}*{d}/{h}*{Sd}/({Sd} + {Sf})",
            "",
            {{"V", V}, {"d", d}, {"h", f_.h}, {"Sd", f_.stiffness.value}, {"Sf", f_.frame.value}}};
  }
  HandCheck diagonal_row(const char* quantity, std::size_t p) const {
    const std::size_t n = panels()[p].diagonals.size();
    const auto N = [&](std::size_t i) { return r_.face(f_.face).diagonal(p, i).forces(fraction{0.5}).N; };
    const bool pair = n == 2 && (f_.layout == Layout::crossed || f_.layout == Layout::k);
    return hand_row(pair ? std::string(quantity) + ", half the difference of the two" : quantity, place(p), "N",
                    n == 0 ? 0.0
                    : pair ? (N(0) - N(1)) / 2
                           : N(0));
  }

  void add_diagonal(std::vector<HandCheck>& rows) const {
    std::size_t most = 0, best = V_.size();
    for (std::size_t i = 0; i < V_.size(); ++i) {
      if (std::abs(V_[i]) > more * std::abs(V_[most])) most = i;
      if (smooth_shear(i) && (best == V_.size() || std::abs(V_[i]) > more * std::abs(V_[best]))) best = i;
    }
    HandCheck row = diagonal_row("largest force of a diagonal", most);
    if (!why_.empty()) return rows.push_back(not_covered(row, why_));
    if (largest(V_) < 0.05 * most_of_all() || vanishes(V_[most], h_.loads.size))
      return rows.push_back(not_covered(row, dull()));
    const auto compare = [&](const HandCheck& r, std::size_t p, std::string why) {
      const closed_form::ClosedForm<> form = diagonal_form(p);
      const double squeeze = squeezed(p) / std::abs(form.value);
      if (why.empty() && squeeze > 0.05) why = "the chords' strain stretches this face's diagonals as well";
      const bool square = std::abs(f_.ty() * f_.tz()) < 1e-9;
      // promised: what is known to be left out comes on top
      rows.push_back(compared(r, 0.05 + squeeze + (square ? 0.0 : f_.frame.value / f_.S()), form, why));
    };
    compare(row, most, most == best ? "" : "the chords carry more of the shear beside a support or a step of it");
    if (most != best && best != V_.size())
      compare(diagonal_row("force of a diagonal where the shear is smooth", best), best, "");
  }

  /// Loads of a chord between the panel's joints, towards -t, on a bar clamped at both ends: its end moments [N m].
  struct ClampedEnds {
    double start = 0, end = 0;
  };
  ClampedEnds clamped_ends(std::size_t chord, std::size_t p) const {
    const std::vector<double>& x = r_.girder().stations;
    const PanelMembers& panel = panels()[p];
    closed_form::BeamLoads<> loads;
    for (std::size_t b = panel.first_station; b < panel.last_station; ++b) {
      const std::size_t m = r_.model().chord_member(b, chord);
      const MemberAxes<>& axes = r_.analysis().axes(m);
      const auto down = [&](const Vec3<>& local) {
        const Vec3<> f = axes.to_global(local);
        return -(f.y * f_.ty() + f.z * f_.tz());
      };
      const double from = x[b] - x[panel.first_station];
      const auto place = [&](double a) { return (std::min)(f_.s, from + a); };
      for (const MemberLoad& l : r_.loads().on_members) {
        if (l.member != m) continue;
        if (l.kind == MemberLoad::Kind::line && l.b > l.a)
          loads.lines.push_back({down(l.first), down(l.last), place(l.a), place(l.b)});
        if (l.kind == MemberLoad::Kind::force) loads.points.push_back({down(l.first), place(l.a)});
      }
    }
    const closed_form::ContinuousBeam<> bar(
        {f_.s, 1, rigid_stiffness, {closed_form::clamp_at(0.0), closed_form::clamp_at(f_.s)}}, loads);
    return {bar.moment(0), bar.moment(f_.s)};
  }

  /// V and the loads between joints are much as in the panels beside it, and these are no odd ones themselves: then
  /// joints turn as in repeating panels.
  bool calm(std::size_t p) const {
    if (p == 0 || p + 1 >= V_.size() || !smooth_shear(p) || !smooth_shear(p - 1) || !smooth_shear(p + 1)) return false;
    const double size = std::abs(V_[p]);
    for (const std::size_t n : {p - 1, p + 1})
      for (const std::size_t c : {f_.first_chord, f_.second_chord}) {
        const ClampedEnds here = clamped_ends(c, p), there = clamped_ends(c, n);
        if (std::abs(here.start - there.start) + std::abs(here.end - there.end) > smooth * size * f_.s / 4)
          return false;
      }
    return true;
  }

  /// Sagging moments of a chord's ends, in the plane of the face, towards -t: sway -+V_i s/2, the fixed-end moment of
  /// its own loads (a clamped bar's: the joints turn little by them), and the chord's own part of the girder's moment M
  /// Io/I (the curvature is the girder's).
  closed_form::ClosedForm<> chord_end(std::size_t p, bool first_chord, bool end) const {
    const GirderBeam& g = h_.girder;
    const std::size_t chord = first_chord ? f_.first_chord : f_.second_chord,
                      station = end ? panels()[p].last_station : panels()[p].first_station;
    const bool vertical = std::abs(f_.tz()) > 0.5;
    const PlaneBeam& plane = h_.plane(vertical);
    const double Vi = -V_[p] * (first_chord ? f_.share_1 : 1 - f_.share_1) * (end ? 1 : -1);
    const ClampedEnds local = clamped_ends(chord, p);
    const double m = end ? local.end : local.start;
    const double M =
        (plane.solved ? (end ? plane.M_before[station] : plane.M[station]) : 0.0) * (vertical ? f_.tz() : f_.ty());
    const double Io = vertical ? g.chords[chord].own_vertical : g.chords[chord].own_horizontal;
    const double second_moment = vertical ? g.group.I_vertical : g.group.I_horizontal;
    return {Vi * f_.s / 2 + m + M * Io / second_moment,
            true,
            "{Vi}*{s}/2 + {m} + {M}*{Io}/{I}",
            "portal method",
            {{"Vi", Vi}, {"s", f_.s}, {"m", m}, {"M", M}, {"Io", Io}, {"I", second_moment}}};
  }

  void add_open(std::vector<HandCheck>& rows) const {
    const PanelTable table = panel_table(r_, f_.face);
    std::size_t best = panels().size(), steepest = 0;
    std::string why = why_;
    for (std::size_t p = 0; p < V_.size() && why.empty(); ++p) {
      if (std::abs(V_[p]) > more * std::abs(V_[steepest])) steepest = p;
      if (calm(p) && (best == panels().size() || std::abs(V_[p]) > more * std::abs(V_[best]))) best = p;
    }
    if (why.empty() && (vanishes(V_[steepest], h_.loads.size) || largest(V_) < 0.05 * most_of_all())) why = dull();
    if (why.empty() && !f_.braced() && std::abs(f_.ty() * f_.tz()) > 1e-9) why = "the face is inclined";
    if (why.empty() && best == panels().size())
      why = "no panel lies away from supports, point loads and steps of the shear";
    const std::size_t p = why.empty() ? best : panels().size() / 2;
    const PanelRow& panel = table.panels[p];
    if (!why.empty()) {
      rows.push_back(not_covered(hand_row("end moment of a chord", place(p), "Nm", panel.chord_moment()), why));
      rows.push_back(
          not_covered(hand_row("end moment of a cross member", place(p), "Nm", table.cross_member_moment(panel)), why));
      return;
    }
    closed_form::ClosedForm<> most;
    bool first = true, end = true;
    for (const bool c : {true, false})
      for (const bool e : {true, false})
        if (const closed_form::ClosedForm<> f = chord_end(p, c, e); std::abs(f.value) > std::abs(most.value))
          most = f, first = c, end = e;
    const double solver = first ? (end ? panel.first_chord_end : panel.first_chord_start)
                                : (end ? panel.second_chord_end : panel.second_chord_start);
    const std::string chord =
        r_.girder().chords[first ? f_.first_chord : f_.second_chord].name + " chord's " + (end ? "end" : "start");
    const double sign = most.value < 0 ? -1 : 1;
    rows.push_back(compared(hand_row("end moment of a chord", place(p) + ", " + chord, "Nm", sign * std::abs(solver)),
                            0.10, most));

    const std::size_t station = panels()[end ? p : p - 1].last_station;
    const double Va = V_[end ? p : p - 1], Vb = V_[end ? p + 1 : p], share = (std::max)(f_.share_1, 1 - f_.share_1);
    closed_form::ClosedForm<> cross{share * (Va + Vb) * f_.s / 2,
                                    true,
                                    "{share}*({V1} + {V2})*{s}/2",
                                    "portal method",
                                    {{"share", share}, {"V1", Va}, {"V2", Vb}, {"s", f_.s}}};
    const double measured = table.cross_members[station].end_moment();
    rows.push_back(compared(hand_row("end moment of a cross member",
                                     place_text(station, r_.girder().stations[station]) + ", " + f_.name + " face",
                                     "Nm", cross.value < 0 ? -measured : measured),
                            0.10, cross));
  }

  const Response& r_;
  const HandModel& h_;
  const HandFace& f_;
  std::string why_;
  std::vector<double> V_;  ///< of each panel, on the cut, from first to second chord [N]
};

inline void add_faces(const Response& r, const HandModel& h, std::vector<HandCheck>& rows) {
  for (std::size_t i = 0; i < h.girder.faces.size(); ++i) FaceHand(r, h, i).add(rows);
}

}  // namespace baywork::detail
