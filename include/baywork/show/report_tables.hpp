// SPDX-License-Identifier: MIT
// The tables of a report: bars, cases, combinations, reactions, proof rows, hand checks, load tables, interaction.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/hand_checks.hpp>
#include <baywork/hand_check/panel_portal.hpp>
#include <baywork/rating/interaction.hpp>
#include <baywork/rating/table_text.hpp>
#include <baywork/show/html.hpp>
#include <baywork/show/load_words.hpp>
#include <baywork/show/reactions.hpp>
#include <baywork/verify/proof.hpp>

namespace baywork::show::detail {

using baywork::text::fixed;
using baywork::text::number;

inline void add_bars(Page& page, const GirderModel& model) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < model.bars.size(); ++i) {
    const Bar& b = model.bars[i];
    const auto count = std::count(model.bar_index.begin(), model.bar_index.end(), i);
    const auto mpa = [&](double v) { return b.has_strength() ? number(v / 1e6, 4) : std::string("not given"); };
    rows.push_back({b.text(), std::to_string(count), number(b.section.area / 1e-6), number(b.section.Iy / 1e-12),
                    number(b.section.Iz / 1e-12), number(b.mass_per_metre(), 4), mpa(b.strength.yield),
                    mpa(b.strength.ultimate), mpa(b.strength.haz_yield), mpa(b.strength.haz_ultimate)});
  }
  page.table("Bars: section, material and strengths (f beside welds: the softened metal)",
             {{"bar"},
              {"how many", true},
              {"A mm2", true},
              {"Iy mm4", true},
              {"Iz mm4", true},
              {"kg/m", true},
              {"yield MPa", true},
              {"ultimate MPa", true},
              {"yield beside welds MPa", true},
              {"ultimate beside welds MPa", true}},
             rows);
}

inline void add_supports(Page& page, const GirderModel& model) {
  std::vector<std::vector<std::string>> rows;
  for (const Support& s : model.frame.supports)
    rows.push_back({model.frame.name_of_node(s.node), held_words(model, s)});
  page.table(std::string("Supports, as modelled: they push as well as pull; ") + axes_words, {{"place"}, {"held"}},
             rows);
}

inline void add_loads(Page& page, const std::vector<LoadCase>& loads, const Girder& g) {
  std::vector<std::vector<std::string>> rows;
  for (const LoadCase& c : loads)
    for (std::size_t i = 0; i < c.actions.size(); ++i)
      rows.push_back(
          {i == 0 ? c.name : "", i == 0 ? name(c.nature) : "", words_of(c.actions[i], &g), i == 0 ? c.alternative : ""});
  page.table("Load cases, characteristic values",
             {{"case"}, {"nature"}, {"what acts"}, {"never together with others of"}}, rows);
}

inline void add_combinations(Page& page, const verify::Proof& proof) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < proof.combinations().size(); ++i)
    rows.push_back({std::to_string(i + 1), proof.combinations()[i].name});
  page.table("Combinations", {{"number", true}, {"factors and cases"}}, rows);
}

inline void add_cases(Page& page, const Cases& cases) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const Response& r = cases[i];
    const Vec3<> l = r.total_load(), s = r.total_reaction();
    const auto kn = [](double v) { return fixed(v / 1e3, 4); };
    rows.push_back({r.name(), kn(l.x), kn(l.y), kn(l.z), kn(s.x), kn(s.y), kn(s.z), fixed(1e3 * r.max_deflection(), 3),
                    number(r.certificate().displacement_error, 2), number(r.certificate().force_error, 2)});
  }
  page.table("Each case: sum of loads and of reactions, largest displacement, bound of the error of the solution",
             {{"case"},
              {"load x kN", true},
              {"y", true},
              {"z", true},
              {"reactions x kN", true},
              {"y", true},
              {"z", true},
              {"displacement mm", true},
              {"error of motions at most", true},
              {"of forces at most", true}},
             rows);
}

/// Least and greatest of each reaction over all combinations of a proof.
inline void add_reactions(Page& page, const Frame& frame, const std::vector<HeldReaction>& all) {
  std::vector<std::vector<std::string>> rows;
  for (const HeldReaction& r : all) {
    const char* unit = r.motion < 3 ? " kN" : " kNm";
    const bool none = r.range.least == 0.0 && r.range.most == 0.0;
    const auto in = [none](std::size_t k) { return none ? std::string("any") : std::to_string(k + 1); };
    rows.push_back({frame.name_of_node(frame.supports[r.support].node), motion_names[r.motion],
                    fixed(r.range.least / 1e3, 3) + unit, in(r.range.least_in), fixed(r.range.most / 1e3, 3) + unit,
                    in(r.range.most_in)});
  }
  page.table("Reactions, what each support does to the girder: least and greatest over all combinations, design values",
             {{"place"},
              {"direction"},
              {"least", true},
              {"in combination", true},
              {"greatest", true},
              {"in combination", true}},
             rows);
}

inline void add_proof_rows(Page& page, const verify::Proof& proof) {
  std::vector<std::vector<std::string>> rows;
  for (const verify::Row& r : proof.governing()) {
    const bool outside = r.check == verify::Check::outside_scope;
    const std::string behind = outside ? "" : notes(r);
    rows.push_back({utilisation_of(r), std::string(name(r.check)),
                    outside ? "" : std::string(r.standard) + ' ' + r.clause, place(r),
                    outside ? "" : std::to_string(r.combination + 1),
                    verify::text(r) + (behind.empty() ? "" : "; " + behind) +
                        (!outside && r.reason[0] != '\0' ? std::string("; ") + r.reason : "")});
  }
  page.table("Governing row of each check and kind of bar",
             {{"utilisation", true}, {"check"}, {"clause"}, {"place"}, {"combination", true}, {"formula and numbers"}},
             rows);
}

inline void add_hand_checks(Page& page, const HandChecks& checks) {
  std::vector<std::vector<std::string>> rows;
  for (const HandCheck& c : checks.rows) {
    const bool known = is_finite(c.closed_form);
    std::string say = c.numbers.empty() ? "" : c.formula + " = " + c.numbers;
    if (!c.valid) say += (say.empty() ? "" : "; ") + std::string("not valid here: ") + c.reason;
    if (c.valid && !c.agrees()) say += "; DIFFERS by more than promised";
    rows.push_back({c.quantity, c.where, c.printed(c.solver), known ? c.printed(c.closed_form) : "-", c.unit,
                    known && is_finite(c.difference()) ? fixed(100 * c.difference(), 3) + " %" : "-",
                    c.valid ? number(100 * c.expected) + " %" : "-", say});
  }
  page.table("By hand, " + checks.response + " (SI units)",
             {{"quantity"},
              {"where"},
              {"solver", true},
              {"by hand", true},
              {"unit"},
              {"difference", true},
              {"promised", true},
              {"formula and numbers"}},
             rows);
}

inline void add_portal(Page& page, const PortalTable& t) {
  std::vector<std::vector<std::string>> rows;
  for (const PortalRow& r : t.rows)
    rows.push_back({std::to_string(r.bay + 1), fixed(r.shear / 1e3, 4), fixed(r.length, 3), fixed(r.depth, 3),
                    fixed(r.chord_moment, 2), fixed(r.chord_portal, 2), fixed(r.cross_member_moment, 2),
                    fixed(r.cross_member_portal, 2)});
  page.table(
      "Panels of the " + t.face + " face, " + t.response + ": end moments by the solver and by the portal method",
      {{"bay", true},
       {"V kN", true},
       {"a m", true},
       {"h m", true},
       {"chord Nm", true},
       {"V a/4", true},
       {"cross member Nm", true},
       {"by hand", true}},
      rows);
}

/// Of the cases that shear a face; of the others, how little.
inline void add_portals(Page& page, const Cases& cases, const std::string& face) {
  std::vector<PanelTable> tables;
  std::vector<double> shear;
  double most = 0;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    tables.push_back(panel_table(cases[i], face));
    shear.push_back(0.0);
    for (const PanelRow& row : tables.back().panels) shear.back() = larger(shear.back(), magnitude(row.shear));
    most = larger(most, shear.back());
  }
  std::string little;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (shear[i] >= 0.01 * most && most > 0.0)
      add_portal(page, portal_table(tables[i]));
    else
      little += (little.empty() ? "" : ", ") + cases[i].name() + " (" + fixed(shear[i], 2) + " N)";
  }
  if (!little.empty())
    page.paragraph("No table of the " + face + " face, whose panels are sheared by less than a hundredth of the most: " +
                   little + ".");
}

inline void add_load_table(Page& page, const rating::LoadTable& t) {
  page.list(rating::assumptions(t));
  std::vector<std::vector<std::string>> rows;
  for (const rating::TableRow& r : t.rows)
    for (const rating::TableCell& c : r.cells) {
      const bool load = c.allowable.is_load();
      rows.push_back({fixed(r.span, 2), rating::name(c.pattern),
                      load ? rating::rounded_down(c.each / 1e3, 2) : rating::name(c.allowable.verdict),
                      load ? rating::rounded_down(c.each / t.terms.gravity, 0) : "",
                      load ? rating::rounded_down(c.total / 1e3, 2) : "", load ? fixed(1e3 * c.deflection, 1) : "",
                      rating::detail::note(c.allowable)});
    }
  page.table("Allowable loads",
             {{"span m", true},
              {"pattern"},
              {"each kN or kN/m", true},
              {"each kg or kg/m", true},
              {"total kN", true},
              {"deflection mm", true},
              {"governed by"}},
             rows);
}

inline void add_interaction(Page& page, const std::string& about, const std::vector<rating::InteractionPoint>& curve) {
  std::vector<std::vector<std::string>> rows;
  for (const rating::InteractionPoint& p : curve)
    rows.push_back({rating::rounded_down(p.vertical / 1e3, 3), rating::rounded_down(p.horizontal / 1e3, 3),
                    p.allowable.has_row ? place(p.allowable.row) : std::string(rating::name(p.allowable.verdict))});
  page.table("Down and across together, " + about + "; what lies between two rows is not computed",
             {{"down kN/m", true}, {"across kN/m", true}, {"governed by"}}, rows);
}

}  // namespace baywork::show::detail
