// SPDX-License-Identifier: MIT
// The largest chord force against statics of the section.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/face_shares.hpp>
#include <baywork/hand_check/row.hpp>

namespace baywork::detail {

/// +1 where a diagonal goes on from the face's first chord, -1 from the second: then N = sense V d/h in a single one.
inline double sense_of(const Response& r, const HandFace& f, const PanelMembers& panel, std::size_t diagonal) {
  const Member& m = r.model().frame.members[panel.diagonals[diagonal]];
  for (const std::size_t node : {m.from, m.to}) {
    const Address& a = r.model().frame.nodes[node].address;
    if (a.station == static_cast<int>(panel.first_station) && a.chord >= 0)
      return a.chord == static_cast<int>(f.first_chord) ? 1.0 : -1.0;
  }
  return 0.0;
}

/// Pull on the cut at x [N]: the loads along x beyond it, and the hold if it lies there.
inline double pull_at(const Response& r, const AxisLoads& loads, double x) {
  double all = 0, beyond = 0, hold = 0;
  const auto take = [&](double f, double at) {
    all += f;
    if (at > x) beyond += f;
  };
  for (const auto& p : loads.axial.points) take(p.P, p.x);
  for (const auto& q : loads.axial.lines) {  // a piece from each side of the cut
    const double cut = (std::min)((std::max)(x, q.a), q.b), qc = q.qa + (q.qb - q.qa) * (cut - q.a) / (q.b - q.a);
    take((q.qa + qc) / 2 * (cut - q.a), q.a);
    take((qc + q.qb) / 2 * (q.b - cut), cut < q.b ? q.b : q.a);
  }
  for (const Support& s : r.model().frame.supports)
    if (s.motion[0].kind != Restraint::Kind::free) hold = r.model().frame.nodes[s.node].at.x;
  return beyond - (hold > x ? all : 0.0);
}

/// The chord forces in mid-panel: N A/sum(A) - A dz Mv/Iv - A dy Mh/Ih - X/2, where X is what the diagonals of the
/// chord's faces carry along x: V s/h in single diagonals (half of it balances on each chord), nothing in open, crossed
/// and K panels. M is the moment in mid-panel from the joints' loads; with K at the panel's end, where both meet.
class ChordHand {
 public:
  ChordHand(const Response& r, const HandModel& h) : r_(r), h_(h) {}

  std::string why_not() const {
    if (const std::string why = h_.no_shares(); !why.empty()) return why;
    const GirderBeam& g = h_.girder;
    if (!(std::abs(g.group.I_mixed) <= 1e-6 * (g.group.I_vertical + g.group.I_horizontal)))
      return "the section bends vertically and horizontally at once";
    for (const HandFace& f : g.faces) {
      if (!f.no_closed_form.empty() && f.facts.gap == 0)
        return "the " + f.name + " face has no closed form: " + f.no_closed_form;
      if (f.facts.gap != 0) return "the " + f.name + " face's diagonals meet the chords beside the joints";
      if (f.span != g.faces.front().span) return "panels of different faces differ in length";
    }
    if (g.faces.empty()) return "no face has panels";
    for (const bool vertical : {true, false}) {
      int k = 0, other = 0;
      for (const HandFace& f : g.faces)
        if (std::abs(vertical ? f.tz() : f.ty()) > 1e-9) (f.layout == Layout::k ? k : other) += 1;
      if (k > 0 && other > 0) return "K and other panels share the shear";
    }
    return "";
  }

  /// `with_diagonals` false: from N and M alone, X left out.
  closed_form::ClosedForm<> force(std::size_t chord, std::size_t panel, bool with_diagonals = true) const {
    const GirderBeam& g = h_.girder;
    const std::size_t span = g.faces.front().span, first = panel * span, last = first + span;
    const std::vector<double>& x = r_.girder().stations;
    const FaceShares shares = h_.shares(first, span);
    double X = 0;
    for (std::size_t i = 0; with_diagonals && i < g.faces.size(); ++i) {
      const HandFace& f = g.faces[i];
      if ((f.first_chord != chord && f.second_chord != chord) || f.layout == Layout::open ||
          f.layout == Layout::crossed || f.layout == Layout::k)
        continue;
      X += sense_of(r_, f, r_.model().faces[f.face].panels[panel], 0) * shares.V[i] * f.diagonals_part() * f.s / f.h;
    }
    const closed_form::ChordArea<>& c = g.chords[chord];
    const double N = pull_at(r_, h_.loads, (x[first] + x[last]) / 2);
    const double Mv = moment(true, first, last), Mh = moment(false, first, last);
    const double value = N * c.A / g.group.A - c.A * (c.z - g.z0) * Mv / g.group.I_vertical -
                         c.A * (c.y - g.y0) * Mh / g.group.I_horizontal - X / 2;
    return {value,
            true,
            "{N}*{A}/{sum(A)} - {A}*{dz}*{Mv}/{Iv} - {A}*{dy}*{Mh}/{Ih} - {X}/2",
            "straight prismatic girder",
            {{"N", N},
             {"A", c.A},
             {"sum(A)", g.group.A},
             {"dz", c.z - g.z0},
             {"Mv", Mv},
             {"Iv", g.group.I_vertical},
             {"dy", c.y - g.y0},
             {"Mh", Mh},
             {"Ih", g.group.I_horizontal},
             {"X", X}}};
  }

 private:
  double moment(bool vertical, std::size_t first, std::size_t last) const {
    const PlaneBeam& p = h_.plane(vertical);
    if (!p.solved) return 0;
    for (const HandFace& f : h_.girder.faces)
      if (f.layout == Layout::k && std::abs(vertical ? f.tz() : f.ty()) > 1e-9) return p.M_before[last];
    return (p.M[first] + p.M_before[last]) / 2;
  }

  const Response& r_;
  const HandModel& h_;
};

inline void add_chord_force(const Response& r, const HandModel& h, std::vector<HandCheck>& rows) {
  const Girder& g = r.girder();
  const ChordHand hand(r, h);
  std::string why = hand.why_not();
  std::size_t chord = 0, panel = 0;
  const std::size_t span = h.girder.faces.empty() ? 1 : h.girder.faces.front().span;
  closed_form::ClosedForm<> most;
  if (why.empty())
    for (std::size_t p = 0; p < g.bays() / span; ++p) {
      if (const std::string unknown = h.shares(p * span, span).unknown; !unknown.empty()) why = unknown;
      for (std::size_t c = 0; c < g.chords.size(); ++c)
        if (closed_form::ClosedForm<> f = hand.force(c, p); std::abs(f.value) > (1 + 1e-9) * std::abs(most.value))
          most = f, chord = c, panel = p;
    }
  if (!why.empty()) panel = g.bays() / span / 2;
  const std::size_t bay = panel * span + (span - 1) / 2;
  const HandCheck row = hand_row("largest chord force, tension positive",
                                 "bay " + std::to_string(bay + 1) + ", " + g.chords[chord].name + " chord", "N",
                                 r.chord(chord).axial(bay));
  if (!why.empty()) return rows.push_back(not_covered(row, why));
  if (vanishes(most.value, h.loads.size)) return rows.push_back(not_covered(row, "no moment acts"));
  rows.push_back(compared(row, 0.05, most));
}

}  // namespace baywork::detail
