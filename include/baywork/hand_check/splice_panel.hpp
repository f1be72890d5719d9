// SPDX-License-Identifier: MIT
// The panel across a splice: no bar crosses it, so the chords carry its shear by bending, V s/2 in all.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/face_shares.hpp>
#include <baywork/hand_check/row.hpp>

namespace baywork::detail {

/// The stations of the bars next to a splice on both sides; both the splice itself where bars meet there.
struct SplicePanel {
  std::size_t from = 0, to = 0;
};
/// In the order of the girder's splices.
inline std::vector<SplicePanel> splice_panels(const GirderModel& model) {
  std::vector<bool> tied(model.girder.stations.size(), false);
  tied.front() = tied.back() = true;
  for (const Member& m : model.frame.members)
    if (m.address.role != Role::chord)
      for (const std::size_t node : {m.from, m.to})
        tied[static_cast<std::size_t>(model.frame.nodes[node].address.station)] = true;
  std::vector<SplicePanel> out;
  for (const std::size_t splice : model.girder.splices) {
    SplicePanel p{splice, splice};
    while (!tied[p.from]) --p.from;
    while (!tied[p.to]) ++p.to;
    out.push_back(p);
  }
  return out;
}

/// In each plane the splice panel with most shear: the moments that build up in the chords over its length s are V s by
/// statics, of which each of n chords has V s/(2 n) at either end, one way and the other (portal method: equal chords,
/// turning point in the middle). The solver's number is the mean of its chords and ends. How the chords and ends share
/// it with unequal chords, torsion, or a connector off the middle, is the frame's business. Where V is not known by
/// hand (a continuous girder) it is that of the frame's cut.
inline void add_splice_panels(const Response& r, const HandModel& h, std::vector<HandCheck>& rows) {
  const Girder& g = r.girder();
  const double n = static_cast<double>(g.chords.size());
  const std::vector<SplicePanel> panels = splice_panels(r.model());
  for (const PlaneBeam* plane : {&h.vertical, &h.horizontal}) {
    const bool by_hand = plane->no_forces.empty() && plane->solved;
    std::size_t at = 0;
    SplicePanel panel;
    double V = 0;
    for (std::size_t k = 0; k < panels.size(); ++k) {
      const SplicePanel& p = panels[k];
      if (p.from == p.to) continue;
      double here = 0;  // positive if the part before it pushes up
      if (by_hand)
        here = (plane->M_before[p.to] - plane->M[p.from]) / (g.stations[p.to] - g.stations[p.from]);
      else
        for (const CutForces& f : r.splice(g.splices[k])) here -= plane->vertical ? f.Vz : f.Vy;
      if (panel.to > 0 && !(std::abs(here) > std::abs(V) * (1 + 1e-9))) continue;
      V = here;
      at = g.splices[k];
      panel = p;
    }
    if (panel.to == 0) continue;
    double sum = 0;
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      const CutForces a = r.member(r.model().chord_member(panel.from, c)).forces(fraction{0});
      const CutForces b = r.member(r.model().chord_member(panel.to - 1, c)).forces(fraction{1}, CutSide::before);
      sum += plane->vertical ? a.My - b.My : b.Mz - a.Mz;  // sagging
    }
    HandCheck row = hand_row(plane->vertical ? "chord's end moment across a splice, up and down"
                                             : "chord's end moment across a splice, sideways",
                             place_text(at, g.stations[at]), "Nm", sum / (2 * n));
    const double s = g.stations[panel.to] - g.stations[panel.from];
    row = compared(row, by_hand && plane->supports.determinate() ? 1e-6 : 0.05,
                   {V * s / (2 * n), true, "{V}/{n}*{s}/2", "portal method", {{"V", V}, {"n", n}, {"s", s}}});
    row.scale = 1e-3 * h.force_scale(r) * s;
    rows.push_back(row);
  }
}

}  // namespace baywork::detail
