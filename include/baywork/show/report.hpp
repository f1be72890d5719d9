// SPDX-License-Identifier: MIT
// The report: one page that a licensed engineer can check line by line, and sign.
#pragma once

#include <algorithm>
#include <cstddef>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/response/hoist_table.hpp>
#include <baywork/show/axial_forces.hpp>
#include <baywork/show/bending_moments.hpp>
#include <baywork/show/deformed_shape.hpp>
#include <baywork/show/girder_drawing.hpp>
#include <baywork/show/hoist_reactions.hpp>
#include <baywork/show/input_digest.hpp>
#include <baywork/show/load_drawing.hpp>
#include <baywork/show/n_m_points.hpp>
#include <baywork/show/panel_drawing.hpp>
#include <baywork/show/rating_charts.hpp>
#include <baywork/show/reactions.hpp>
#include <baywork/show/report_tables.hpp>
#include <baywork/show/utilisation_map.hpp>

namespace baywork::show {

/// What a report is made of besides the solved cases and their proof. Parts that are not given are left out.
struct ReportParts {
  std::string title = "Girder report";
  std::vector<LoadCase> loads{};  ///< the cases as described, to be told in words
  std::vector<rating::LoadTable> tables{};
  struct Curve {
    std::string about;  ///< "the wind 1 m below the girder's middle"
    std::vector<rating::InteractionPoint> points;
  };
  std::vector<Curve> interaction{};
  std::vector<HoistStudy> hoists{};  ///< which hoist carries what
  verify::Basis basis{};             ///< of the proof, for the curves of N against M
};

/// What holds for every result of this library.
inline std::vector<std::string> cautions() {
  return {
      "This is a calculation aid, not a load certificate. A licensed engineer who has the standards must check it; "
      "local "
      "codes and authorities decide.",
      "It holds for the geometry, sections, alloys, tempers, welds and supports entered, and for no others. Parts of "
      "other makes or modules must not be mixed in.",
      "Loads are static unless a factor is shown. Nothing here covers people flown or fall arrest.",
      "Loads and slings act where they are drawn, on all chords named. More than two hoists never share a load as if "
      "they were level: use load cells.",
      "Outdoors: the wind limits, taking down the cladding, guys, ballast and ground belong into an operations plan.",
      "Supports, slings, hoists, towers and the building are not checked. Fatigue, fire, ice, ponding, damage and wear "
      "are "
      "not covered unless they were entered.",
      "Metal beside welds keeps about half its strength: no repair by welding, no drilling.",
      "Loads of tables must not be added, nor interpolated between spans.",
  };
}

namespace detail {

inline std::vector<std::string> open_faces_of(const Girder& g) {
  std::vector<std::string> out;
  for (const GirderFace& f : g.faces)
    for (std::size_t i = 0; i < f.panels.given(); ++i)
      if (f.panels.panel(i).facts().layout == Layout::open) {
        out.push_back(f.name);
        break;
      }
  return out;
}

/// Every source that says of itself that it is a value from memory.
inline std::vector<std::string> from_memory(const GirderModel& model, const verify::Proof& proof) {
  std::vector<std::string> out;
  const auto add = [&out](const std::string& s) {
    if (std::find(out.begin(), out.end(), s) == out.end()) out.push_back(s);
  };
  for (const Bar& b : model.bars)
    if (b.material.source.find("memory") != std::string::npos) add(b.material.name + ": " + b.material.source + ".");
  for (const std::string& s : proof.assumptions())
    if (s.find("memory") != std::string::npos) add(s);
  return out;
}

/// The panel of greatest shear.
inline std::size_t most_sheared(const PanelTable& t) {
  std::size_t out = 0;
  for (std::size_t i = 0; i < t.panels.size(); ++i)
    if (magnitude(t.panels[i].shear) > magnitude(t.panels[out].shear)) out = i;
  return out;
}

}  // namespace detail

/// The case that a report draws: the one whose own largest axial force is greatest.
inline const Response& case_drawn(const Cases& cases) {
  std::size_t out = 0;
  double most = -1;
  for (std::size_t i = 0; i < cases.size(); ++i)
    for (const MemberAnswer& m : cases[i].answer().members)
      if (magnitude(m.end[0]) > most) {
        most = magnitude(m.end[0]);
        out = i;
      }
  return cases[out];
}

/// One HTML file without anything outside it. Equal input on an equal processor path gives equal bytes.
inline std::string report(const Cases& cases, const verify::Proof& proof, const ReportParts& parts = {}) {
  const GirderModel& model = cases.analysis().model();
  const Girder& g = model.girder;
  Page page(parts.title);
  int pictures = 0;
  // a proof of hoists' states or with imperfections combines more cases than these
  const bool of_these_cases = std::all_of(proof.combinations().begin(), proof.combinations().end(),
                                          [&cases](const Combination& c) { return c.factors.size() == cases.size(); });
  const auto look = [&pictures] { return Look{680, "p" + std::to_string(++pictures), false}; };

  page.section("Read this first");
  page.list(cautions());

  page.section("In short");
  page.paragraph("Proof: " + proof.verdict() + ".", proof.passes() ? "" : "alarm");
  if (!proof.rows().empty() && proof.outside_scope().empty()) {
    const verify::Row& worst = proof.worst();
    page.paragraph("Governing: " + place(worst) + ", " + name(worst.check) + ", " + worst.standard + ' ' +
                   worst.clause + ", in " + proof.combinations()[worst.combination].name + '.');
  }
  const std::vector<HeldReaction> held =
      of_these_cases ? held_reactions(cases, proof.combinations()) : std::vector<HeldReaction>{};
  for (const HeldReaction& r : held)
    if (r.goes_slack())
      page.paragraph("GOES SLACK: " + model.frame.name_of_node(model.frame.supports[r.support].node) + ", hung, in " +
                         proof.combinations()[r.range.least_in].name +
                         ". The answer does not hold there: slings and hoists only pull.",
                     "alarm");
  page.paragraph("It says nothing of what is listed as not covered below.");

  page.section("Taken for granted");
  page.list(proof.assumptions());
  page.heading("Not covered");
  page.list(proof.not_covered());

  page.section("The girder");
  page.paragraph(std::to_string(g.chords.size()) + " chords, " + std::to_string(g.bays()) + " bays, " +
                 baywork::text::number(g.span(), 6) + " m long, " + std::to_string(model.frame.members.size()) +
                 " bars, " + std::to_string(model.frame.nodes.size()) + " joints.");
  page.picture("The girder", girder_drawing(cases.analysis(), look()));
  detail::add_bars(page, model);
  detail::add_supports(page, model);

  page.section("What acts");
  if (!parts.loads.empty()) detail::add_loads(page, parts.loads, g);
  for (const LoadCase& c : parts.loads) page.picture("Loads of " + c.name, load_drawing(cases.analysis(), c, look()));
  detail::add_combinations(page, proof);

  page.section("What the girder does");
  detail::add_cases(page, cases);
  const Response& shown = case_drawn(cases);
  page.picture("Axial forces, " + shown.name(), axial_forces(shown, look()));
  page.picture("Bending in the planes of the faces, " + shown.name(), bending_moments(shown, in_plane, look()));
  page.picture("Deformed shape, " + shown.name(), deformed_shape(shown, look()));

  page.section("Open faces, panel by panel");
  const std::vector<std::string> faces = detail::open_faces_of(g);
  if (faces.empty()) page.paragraph("The girder has no open face.");
  for (const std::string& f : faces)
    page.picture("Most sheared panel of the " + f + " face",
                 panel_drawing(shown, f, detail::most_sheared(panel_table(shown, f)), look()));
  for (const std::string& f : faces) detail::add_portals(page, cases, f);

  page.section("Proof, row by row");
  if (!proof.rows().empty()) {
    page.picture("Utilisation of all bars", utilisation_map(model, proof, look()));
    if (of_these_cases)
      page.picture("Axial force against moment",
                   n_m_points(cases.combine(proof.combinations()[proof.worst().combination]), parts.basis, look()));
  }
  detail::add_proof_rows(page, proof);

  page.section("The same by hand");
  page.paragraph(
      "Each number of the solver beside a closed form. A difference larger than promised, or a form that does not "
      "hold here, is said in its row.");
  for (std::size_t i = 0; i < cases.size(); ++i) detail::add_hand_checks(page, hand_checks(cases[i]));

  if (!parts.tables.empty() || !parts.interaction.empty()) page.section("What it may carry");
  for (const rating::LoadTable& t : parts.tables) {
    detail::add_load_table(page, t);
    page.picture("Allowable loads over spans", load_table_chart(t, look()));
  }
  for (const ReportParts::Curve& c : parts.interaction) {
    if (c.points.empty()) continue;
    page.picture("Down and across together, " + c.about, interaction_picture(c.points, look()));
    detail::add_interaction(page, c.about, c.points);
  }

  page.section("At the supports");
  if (of_these_cases) {
    page.picture("Reactions", reactions(cases, proof.combinations(), look()));
    detail::add_reactions(page, model.frame, held);
  }
  for (const HoistStudy& h : parts.hoists) {
    page.picture("What each hoist carries", hoist_reactions(h, look()));
    std::ostringstream table;
    table << h;
    page.columns("Which hoist carries what", table.str());
  }

  page.section("Values from memory");
  page.paragraph(
      "These numbers were not read from the standard when the library was written. Compare each with the edition in "
      "force before use:");
  page.list(detail::from_memory(model, proof));

  page.section("How it was computed");
  page.paragraph(std::string("baywork ") + version_text + "; linear first-order frame analysis; solved as " +
                 (cases.analysis().solver().path() == SolvePath::sparse ? "a general frame" : "a chain of stations") +
                 "; every answer carries a bound of its error.");
  page.paragraph("SHA-256 of the input (frame, materials, loads, combinations, assumptions): " +
                 input_digest(cases, proof));
  page.table("Checked and signed", {{"name"}, {"qualification"}, {"date"}, {"signature"}},
             {{"", "", "", ""}, {"", "", "", ""}}, "sign");
  return page.finished();
}

/// Writes the report; throws std::ios_base::failure where the file cannot be written.
inline void write_report(const std::string& file, const Cases& cases, const verify::Proof& proof,
                         const ReportParts& parts = {}) {
  std::ofstream out(file, std::ios::binary);
  out.exceptions(std::ofstream::badbit | std::ofstream::failbit);
  out << report(cases, proof, parts);
}

}  // namespace baywork::show
