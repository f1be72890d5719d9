// SPDX-License-Identifier: MIT
// The panel table of an open face beside what the portal method says.
#pragma once

#include <cmath>
#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/closed_form/portal.hpp>
#include <baywork/core/text.hpp>
#include <baywork/response/panel_table.hpp>

namespace baywork {

/// Largest end moments of one panel, from the solver and from its shear by the portal method: each chord V·a/4, a cross
/// member the mean of what the chords of the panels beside it bring, doubled inside and single at an end.
struct PortalRow {
  std::size_t bay = 0;            ///< first bay of the panel, from 0
  double shear = 0;               ///< in the plane of the face at mid-panel [N]
  double length = 0, depth = 0;   ///< [m]
  double chord_moment = 0, chord_portal = 0;                 ///< largest of four ends; V a/4 [Nm]
  double cross_member_moment = 0, cross_member_portal = 0;   ///< of the cross member at the panel's start [Nm]
};

struct PortalTable {
  std::string face, response;
  std::vector<PortalRow> rows;
};

/// The portal method assumes equal chords and points of contraflexure in the middle of each bar; loads between joints
/// and unequal chords move them. Panels with diagonals get rows too: they show how little bends there.
inline PortalTable portal_table(const PanelTable& t) {
  PortalTable out{t.face, t.response, {}};
  for (std::size_t i = 0; i < t.panels.size(); ++i) {
    const PanelRow& p = t.panels[i];
    PortalRow row;
    row.bay = p.first_station;
    row.shear = p.shear;
    row.length = p.length;
    row.depth = p.depth;
    row.chord_moment = p.chord_moment();
    row.chord_portal = std::abs(closed_form::portal_panel(p.shear, p.length, p.depth).chord_end_moment);
    row.cross_member_moment = t.cross_members[p.first_station].end_moment();
    const double before = i > 0 ? t.panels[i - 1].shear : 0.0, before_length = i > 0 ? t.panels[i - 1].length : p.length;
    row.cross_member_portal = std::abs(closed_form::portal_cross_member_moment(before, before_length, p.shear, p.length));
    out.rows.push_back(row);
  }
  return out;
}

inline std::ostream& operator<<(std::ostream& out, const PortalTable& t) {
  const auto cell = [](double v, double unit, int decimals) { return text::right(text::fixed(v / unit, decimals), 11); };
  out << "Panels of the " << t.face << " face, " << t.response << ": end moments by the solver, and by hand (chord V*a/4, cross member (V1*a1+V2*a2)/4)\n"
      << "  bay    V [kN]      a [m]      h [m]   chord [Nm]   V*a/4 [Nm]   cross member [Nm]   by hand [Nm]\n";
  for (const PortalRow& r : t.rows)
    out << text::right(std::to_string(r.bay + 1), 5) << text::right(text::fixed(r.shear / 1e3, 5), 10) << cell(r.length, 1, 4) << cell(r.depth, 1, 4)
        << text::right(text::fixed(r.chord_moment, 3), 13) << text::right(text::fixed(r.chord_portal, 3), 13)
        << text::right(text::fixed(r.cross_member_moment, 3), 20) << text::right(text::fixed(r.cross_member_portal, 3), 15) << '\n';
  return out;
}

}  // namespace baywork
