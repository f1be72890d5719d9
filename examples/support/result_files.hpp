// SPDX-License-Identifier: MIT
// Writes an example's tables into a folder: one CSV file each; where JSON is built in, all of them in one
// file, and the girder with its load cases in another.
#pragma once

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <baywork/data.hpp>
#ifdef BAYWORK_WITH_JSON
#include <baywork/json.hpp>
#endif

namespace examples {

/// The file's stream; what cannot be written throws.
inline std::ofstream open_file(const std::string& folder, const std::string& file) {
  std::filesystem::create_directories(folder);
  std::ofstream out;
  out.exceptions(std::ofstream::badbit | std::ofstream::failbit);
  out.open(std::filesystem::path(folder) / file, std::ios::binary);
  return out;
}

/// Says what has been written: each table, and what was asked for, the girder with its cases.
inline std::string write_results(const std::string& folder, const std::vector<baywork::DataTable>& tables,
                                 [[maybe_unused]] const baywork::Girder& girder,
                                 [[maybe_unused]] const std::vector<baywork::LoadCase>& load_cases) {
  std::string written;
  for (const baywork::DataTable& t : tables) {
    std::ofstream out = open_file(folder, t.name + ".csv");
    baywork::write_csv(out, t);
    written += (written.empty() ? "" : ", ") + t.name + ".csv";
  }
#ifdef BAYWORK_WITH_JSON
  std::ofstream out = open_file(folder, "results.json");
  baywork::write_json(out, tables);
  std::ofstream girder_out = open_file(folder, "girder.json");
  baywork::write_json(girder_out, baywork::GirderFile{girder, load_cases});
  written += ", results.json, girder.json";
#endif
  return written + " in " + folder;
}

}  // namespace examples
