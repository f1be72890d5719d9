// SPDX-License-Identifier: MIT
// Sums of loads and reactions, and the reaction of each place of support.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/face_shares.hpp>
#include <baywork/hand_check/row.hpp>

namespace baywork::detail {

/// Reactions against loads summed anew from the response's load list: nothing of the solver is in them.
inline void add_sums(const Response& r, const HandModel& h, std::vector<HandCheck>& rows) {
  const Vec3<> reaction = r.total_reaction();
  static constexpr const char* axes[] = {"x", "y", "z"};
  for (std::size_t i = 0; i < 3; ++i) {
    const double points = -h.loads.points[i], lines = -h.loads.lines[i];
    HandCheck row =
        compared(hand_row(std::string("sum of reactions along ") + axes[i], "all supports", "N", reaction[i]), 1e-9,
                 {points + lines, true, "{points} + {lines}", "", {{"points", points}, {"lines", lines}}});
    row.scale = h.force_scale(r);
    rows.push_back(row);
  }
}

inline double reaction_at(const Response& r, std::size_t station, std::size_t axis) {
  double sum = 0;
  for (const Response::SupportReaction& s : r.reactions())
    if (s.address.station == static_cast<int>(station)) sum += s.force[axis];
  return sum;
}

/// R from statics: R1 = (P (b - c) + K)/(b - a), with the resultant P at c, and couples K. Indeterminate: from the
/// beam.
inline closed_form::ClosedForm<> reaction_form(const HandModel& h, const PlaneBeam& p, std::size_t i) {
  const closed_form::BeamLoads<>& loads = p.vertical ? h.loads.vertical : h.loads.horizontal;
  const double R = p.solved->reaction(i);
  double P = 0, Px = 0, K = 0;
  for (const auto& l : loads.points) P += l.P, Px += l.P * l.x;
  for (const auto& l : loads.lines) {
    const double w = l.b - l.a;
    P += (l.qa + l.qb) / 2 * w;
    Px += (l.qa + l.qb) / 2 * w * l.a + (l.qa + 2 * l.qb) * w * w / 6;
  }
  for (const auto& l : loads.couples) K += l.C;
  const auto& s = p.supports.supports;
  if (s.size() == 1) return {R, true, "{P}", "statics", {{"P", P}}};
  if (p.supports.determinate()) {
    const double other = s[1 - i].x, here = s[i].x;
    // moments about the other support; a couple that sags raises the left reaction's moment the other way round
    return {R,
            true,
            "({Px} + {K} - {P}*{other})/({x} - {other})",
            "statics",
            {{"P", P}, {"Px", Px}, {"K", K}, {"x", here}, {"other", other}}};
  }
  double without = 0;  // what the beam without this support's reaction leaves: the others take the rest
  for (std::size_t j = 0; j < s.size(); ++j)
    if (j != i) without += p.solved->reaction(j);
  return {R, true, "{P} - {others}", "a continuous beam of constant EI and S", {{"P", P}, {"others", without}}};
}

inline void add_reactions(const Response& r, const HandModel& h, const PlaneBeam& p, std::vector<HandCheck>& rows) {
  const std::size_t axis = p.vertical ? 2 : 1;
  const std::string quantity = p.vertical ? "reaction, up" : "reaction, along y";
  for (std::size_t i = 0; i < p.supports.stations.size(); ++i) {
    const std::size_t station = p.supports.stations[i];
    HandCheck row =
        hand_row(quantity, place_text(station, r.girder().stations[station]), "N", reaction_at(r, station, axis));
    if (!p.no_forces.empty()) {
      rows.push_back(not_covered(row, p.no_forces));
      continue;
    }
    const bool statics = p.supports.determinate() || !p.loaded;
    row = compared(row, statics ? 1e-9 : 0.05, reaction_form(h, p, i));
    row.scale = statics ? h.force_scale(r) : 0.1 * p.load_size;  // an end reaction may be the small rest of large ones
    rows.push_back(row);
  }
}

}  // namespace baywork::detail
