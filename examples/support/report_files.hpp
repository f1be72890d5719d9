// SPDX-License-Identifier: MIT
// Writes an example's report and its pictures, each a file of its own.
#pragma once

#include <fstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/show.hpp>

#include "result_files.hpp"

namespace examples {

/// Says what has been written.
inline std::string write_report(const std::string& folder, const baywork::Cases& cases,
                                const baywork::verify::Proof& proof, const baywork::show::ReportParts& parts) {
  using namespace baywork;
  const Response& shown = show::case_drawn(cases);
  const show::Look look{};
  std::vector<std::pair<std::string, std::string>> files{
      {"report.html", show::report(cases, proof, parts)},
      {"girder.svg", show::girder_drawing(cases.analysis(), look)},
      {"axial_forces.svg", show::axial_forces(shown, look)},
      {"moments.svg", show::bending_moments(shown, in_plane, look)},
      {"deformed.svg", show::deformed_shape(shown, look)},
      {"utilisation.svg", show::utilisation_map(cases.analysis().model(), proof, look)},
      {"reactions.svg", show::reactions(cases, proof.combinations(), look)}};
  for (const rating::LoadTable& t : parts.tables) files.emplace_back("load_table.svg", show::load_table_chart(t, look));
  for (const show::ReportParts::Curve& c : parts.interaction)
    files.emplace_back("interaction.svg", show::interaction_picture(c.points, look));
  std::string written;
  for (const auto& [name, content] : files) {
    std::ofstream out = open_file(folder, name);
    out << content;
    written += (written.empty() ? "" : ", ") + name;
  }
  return written + " in " + folder;
}

}  // namespace examples
