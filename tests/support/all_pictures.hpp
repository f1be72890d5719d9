// SPDX-License-Identifier: MIT
// Every kind of picture of one girder under two cases, for tests that look at all of them.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/show.hpp>

#include "random.hpp"

namespace pictures {

using namespace baywork;
using Named = std::vector<std::pair<std::string, std::string>>;

/// Loads of every kind, some at random places.
inline std::vector<LoadCase> two_cases(const Girder& g, Random& r) {
  const ChordRef chord(r.below(g.chords.size())), other(r.below(g.chords.size()));
  const double span = g.span(), from = r.in(0.0, 0.4) * span, to = r.in(0.6, 1.0) * span;
  LoadCase own{"self-weight", Nature::permanent, {self_weight(1.05)}};
  LoadCase wind{"wind and what hangs",
                Nature::wind,
                {line_load({chord}, {0, -20, -60}, {0, 30, -120}, {from, to}),
                 point_load(other, r.in(0.0, 1.0) * span, r.over_orders(1.0, 1e4)),
                 point_load(chord, r.in(0.0, 1.0) * span, Vec3<>{100, r.in(-500, 500), 0}, Vec3<>{20, 0, 10}),
                 wind_on_bars(300.0, {0, r.chance(0.5) ? 1.0 : -1.0, 0.1}), warming(25.0)}};
  for (std::size_t f = 0; f < g.faces.size(); ++f)
    if (!g.faces[f].panels.empty() && r.chance(0.7)) wind.actions.push_back(wind_on(f, r.in(-600, 600)));
  return {own, wind};
}

/// A load table of this shape with numbers at random: what is drawn does not depend on how they were found.
inline rating::LoadTable random_table(const std::vector<LoadCase>& placed, Random& r) {
  rating::LoadTable t;
  t.girder = "4 chords";
  t.supports = "lower chords held at both ends";
  t.terms.placed = placed;
  const std::size_t rows = 1 + r.below(40);
  for (std::size_t i = 0; i < rows; ++i) {
    rating::TableRow row{2.0 + 0.5 * static_cast<double>(i), {}};
    for (const rating::Pattern p : rating::patterns_between_supports) {
      rating::TableCell c;
      c.pattern = p;
      c.allowable.verdict = static_cast<rating::Verdict>(r.below(5));
      c.allowable.has_row = true;
      c.allowable.row.address.has_role = true;
      c.allowable.row.address.role = static_cast<Role>(r.below(5));
      c.allowable.row.standard = "EN 1999-1-1:2007";
      c.allowable.row.clause = "6.3.3.1";
      c.allowable.row.reason = "no standard is known for it";
      c.total = r.over_orders(10.0, 1e6);
      row.cells.push_back(c);
    }
    t.rows.push_back(row);
  }
  return t;
}

inline Named all_of(const Analysis& a, Random& r, show::Look look) {
  const std::vector<LoadCase> described = two_cases(a.girder(), r);
  const Cases cases = a.solve(described);
  const Response& wind = cases[1];
  Named out;
  const auto add = [&](const char* kind, auto make) {
    look.id = std::string("p") + std::to_string(out.size());
    out.emplace_back(kind, make());
  };
  add("girder", [&] { return show::girder_drawing(a, look); });
  add("loads", [&] { return show::load_drawing(a, described[1], look); });
  add("axial forces", [&] { return show::axial_forces(wind, look); });
  add("moments in plane", [&] { return show::bending_moments(wind, in_plane, look); });
  add("moments out of plane", [&] { return show::bending_moments(wind, out_of_plane, look); });
  add("shear in plane", [&] { return show::shear_forces(wind, in_plane, look); });
  add("shear out of plane", [&] { return show::shear_forces(wind, out_of_plane, look); });
  add("torsion", [&] { return show::torsion(wind, look); });
  add("deformed", [&] { return show::deformed_shape(wind, look); });
  for (std::size_t f = 0; f < a.girder().faces.size(); ++f) {
    if (a.girder().faces[f].panels.empty()) continue;
    const std::size_t panels = a.model().faces[f].panels.size();
    add("panel", [&] { return show::panel_drawing(wind, f, r.below(panels), look); });
    break;
  }
  add("shear shares", [&] { return show::shear_shares(wind, look); });
  add("energy", [&] { return show::energy_picture(wind, look); });
  const verify::Proof proof = verify::by_material(cases, en1990::ultimate());
  add("utilisation", [&] { return show::utilisation_map(a.model(), proof, look); });
  add("reactions", [&] { return show::reactions(cases, combinations(en1990::ultimate(), cases.kinds()), look); });
  try {
    const HoistStudy study(cases[0]);
    add("hoists", [&] { return show::hoist_reactions(study, look); });
  } catch (const Error&) {  // held otherwise than by two hoists or more
  }
  add("N-M points", [&] { return show::n_m_points(wind, {}, look); });
  add("load table", [&] { return show::load_table_chart(random_table(described, r), look); });
  if (rating::detail::held_stations(a.model()).size() > 1) {
    const rating::Rater rater(a);
    add("interaction", [&] { return show::interaction_picture(rating::interaction_curve(rater, {.rays = 8}), look); });
  }
  return out;
}

}  // namespace pictures
