// SPDX-License-Identifier: MIT
// Tables of what a solved girder answers: the model, cases, reactions, members' forces, panels and cross members.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/data/table.hpp>
#include <baywork/hand_check/hand_checks.hpp>
#include <baywork/hand_check/panel_portal.hpp>
#include <baywork/response/cases.hpp>
#include <baywork/response/panel_table.hpp>

namespace baywork {

/// One row: how large the girder and its frame are.
inline DataTable model_data(const Analysis& a) {
  DataTable t{"model", {"chords", "faces", "bays", "span_m", "members", "unknowns", "solver"}, {}};
  detail::RowFiller(t) << a.girder().chords.size() << a.girder().faces.size() << a.girder().bays() << a.girder().span()
                       << a.model().frame.members.size() << a.solver().unknowns()
                       << std::string("baywork ") + version_text;
  return t;
}

/// One row for each case. Total load and total reaction balance; `certified_error` bounds the answer's relative error.
inline DataTable case_data(const Cases& cases) {
  DataTable t{"cases",
              {"case", "nature", "load_x_N", "load_y_N", "load_z_N", "reaction_x_N", "reaction_y_N", "reaction_z_N",
               "max_deflection_m", "certified_error"},
              {}};
  for (std::size_t i = 0; i < cases.size(); ++i)
    detail::RowFiller(t) << cases[i].name() << name(cases.kinds()[i].nature) << cases[i].total_load()
                         << cases[i].total_reaction() << cases[i].max_deflection() << cases[i].certificate().worst();
  return t;
}

/// One row for each case and held joint: what the support does to the girder, global axes.
inline DataTable reaction_data(const Cases& cases) {
  DataTable t{"reactions",
              {"case", "place", "station", "chord", "force_x_N", "force_y_N", "force_z_N", "couple_x_Nm", "couple_y_Nm",
               "couple_z_Nm"},
              {}};
  for (std::size_t i = 0; i < cases.size(); ++i)
    for (const auto& r : cases[i].reactions())
      detail::RowFiller(t) << cases[i].name() << text_of(r.address, cases[i].model().frame.names)
                           << detail::part_cell(r.address.station) << detail::part_cell(r.address.chord) << r.force
                           << r.couple;
  return t;
}

/// One row for each case and member: cut forces at its start and end, and their least and greatest value along it
/// (local axes; N tension positive).
inline DataTable member_force_data(const Cases& cases) {
  DataTable t{"member_forces", {"case", "member", "place", "role", "bay", "station", "face", "chord", "length_m"}, {}};
  for (const char* where : {"start", "end", "least", "greatest"})
    for (std::size_t k = 0; k < 6; ++k)
      t.columns.push_back(std::string(cut_force_names[k]) + "_" + where + (k < 3 ? "_N" : "_Nm"));
  for (std::size_t i = 0; i < cases.size(); ++i)
    for (std::size_t m = 0; m < cases[i].model().frame.members.size(); ++m) {
      const Address& at = cases[i].model().frame.members[m].address;
      const MemberView member = cases[i].member(m);
      detail::RowFiller row(t);
      row << cases[i].name() << m + 1 << cases[i].model().frame.name_of_member(m) << name(at.role)
          << detail::part_cell(at.bay) << detail::part_cell(at.station) << detail::part_cell(at.face)
          << detail::part_cell(at.chord) << member.length();
      const CutForces start = member.forces(fraction{0}), end = member.forces(fraction{1}, CutSide::before);
      for (std::size_t k = 0; k < 6; ++k) row << start[k];
      for (std::size_t k = 0; k < 6; ++k) row << end[k];
      std::array<double, 6> greatest{};
      for (std::size_t k = 0; k < 6; ++k) {
        const Extremes e = member.extremes(k);
        row << e.least;
        greatest[k] = e.greatest;
      }
      for (const double v : greatest) row << v;
    }
  return t;
}

/// One row for each panel of a face (BasicPanelRow), with the chords' end moment of the portal method.
inline DataTable panel_data(const PanelTable& panels) {
  DataTable t{"panels",
              {"case", "face", "bay", "last_bay", "length_m", "depth_m", "shear_N", "shear_by_diagonals_N",
               "first_chord_start_Nm", "first_chord_end_Nm", "second_chord_start_Nm", "second_chord_end_Nm",
               "first_chord_contraflexure", "second_chord_contraflexure", "angle_change_rad", "portal_chord_Nm"},
              {}};
  const PortalTable portal = portal_table(panels);
  for (std::size_t i = 0; i < panels.panels.size(); ++i) {
    const PanelRow& p = panels.panels[i];
    detail::RowFiller(t) << panels.response << panels.face << p.first_station + 1 << p.last_station << p.length
                         << p.depth << p.shear << p.diagonals_shear << p.first_chord_start << p.first_chord_end
                         << p.second_chord_start << p.second_chord_end << p.first_chord_zero << p.second_chord_zero
                         << p.angle_change << portal.rows[i].chord_portal;
  }
  return t;
}

/// One row for each cross member or post of a face (BasicCrossMemberRow), with the end moment of the portal method
/// where a panel begins.
inline DataTable cross_member_data(const PanelTable& panels) {
  DataTable t{"cross_members",
              {"case", "face", "station", "length_m", "first_end_Nm", "second_end_Nm", "out_of_plane_first_end_Nm",
               "out_of_plane_second_end_Nm", "shear_N", "axial_N", "contraflexure", "first_chord_step_N",
               "second_chord_step_N", "portal_Nm"},
              {}};
  const PortalTable portal = portal_table(panels);
  auto next = portal.rows.begin();  // both rise along the girder
  for (const CrossMemberRow& c : panels.cross_members) {
    while (next != portal.rows.end() && next->bay < c.station) ++next;
    if (!c.present) continue;
    DataCell by_hand;
    if (next != portal.rows.end() && next->bay == c.station) by_hand = detail::number_cell(next->cross_member_portal);
    detail::RowFiller(t) << panels.response << panels.face << c.station + 1 << c.length << c.first_end << c.second_end
                         << c.out_of_plane_first << c.out_of_plane_second << c.shear << c.axial << c.zero
                         << c.first_chord_step << c.second_chord_step << by_hand;
  }
  return t;
}

/// One row for each hand check (HandCheck).
inline DataTable hand_check_data(const std::vector<HandChecks>& all) {
  DataTable t{"hand_checks",
              {"case", "quantity", "place", "unit", "solver", "closed_form", "difference", "expected", "valid",
               "agrees", "reason", "formula", "numbers"},
              {}};
  for (const HandChecks& checks : all)
    for (const HandCheck& c : checks.rows)
      detail::RowFiller(t) << checks.response << c.quantity << c.where << c.unit << c.solver << c.closed_form
                           << c.difference() << c.expected << c.valid << c.agrees() << detail::word_cell(c.reason)
                           << detail::word_cell(c.formula) << detail::word_cell(c.numbers);
  return t;
}

}  // namespace baywork
