// SPDX-License-Identifier: MIT
// Writes an example's results: one tidy CSV table per kind, units in the header, and results.json with stable keys.
#pragma once

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <baywork/baywork.hpp>

namespace examples {

/// Text in quotation marks for JSON (quotation marks, backslashes and control characters escaped).
inline std::string quoted(const std::string& s) {
  std::string out = "\"";
  for (const char c : s) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (static_cast<unsigned char>(c) < 0x20) {
      out += ' ';
    } else {
      out += c;
    }
  }
  return out + '"';
}
/// A number to all its digits; null where there is none.
inline std::string json(double v) { return std::isfinite(v) ? baywork::text::number(v, 17) : "null"; }
inline std::string json(const baywork::Vec3<>& v) { return "[" + json(v.x) + ", " + json(v.y) + ", " + json(v.z) + "]"; }
/// A cell of CSV text (RFC 4180), and a number to ten digits, empty where there is none.
inline std::string cell(const std::string& s) {
  std::string out = "\"";
  for (const char c : s) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + '"';
}
inline std::string cell(double v) { return std::isfinite(v) ? baywork::text::number(v, 10) : ""; }

class ResultFiles {
 public:
  explicit ResultFiles(const std::string& folder) : folder_(folder) { std::filesystem::create_directories(folder_); }

  void cases(const baywork::Cases& cases) const {
    std::ofstream table = open("cases.csv"), reactions = open("reactions.csv");
    table << "case,load_x_N,load_y_N,load_z_N,reaction_x_N,reaction_y_N,reaction_z_N,max_deflection_m,certified_error\n";
    reactions << "case,place,x_N,y_N,z_N,about_x_Nm,about_y_Nm,about_z_Nm\n";
    for (std::size_t i = 0; i < cases.size(); ++i) {
      const baywork::Response& r = cases[i];
      const baywork::Vec3<> l = r.total_load(), s = r.total_reaction();
      table << cell(r.name()) << ',' << cell(l.x) << ',' << cell(l.y) << ',' << cell(l.z) << ',' << cell(s.x) << ',' << cell(s.y) << ','
            << cell(s.z) << ',' << cell(r.max_deflection()) << ',' << cell(r.certificate().worst()) << '\n';
      for (const auto& p : r.reactions())
        reactions << cell(r.name()) << ',' << cell(text_of(p.address, r.model().frame.names)) << ',' << cell(p.force.x) << ',' << cell(p.force.y)
                  << ',' << cell(p.force.z) << ',' << cell(p.couple.x) << ',' << cell(p.couple.y) << ',' << cell(p.couple.z) << '\n';
    }
  }

  void proof(const baywork::verify::Proof& proof) const {
    std::ofstream out = open("proof.csv");
    out << "utilisation,check,standard,clause,place,combination,formula\n";
    for (const auto& row : proof.governing())
      out << cell(row.utilisation) << ',' << cell(std::string(name(row.check))) << ',' << cell(std::string(row.standard)) << ','
          << cell(std::string(row.clause)) << ',' << cell(place(row)) << ',' << cell(proof.combinations()[row.combination].name) << ','
          << cell(text(row)) << '\n';
  }

  void hand_checks(const std::vector<baywork::HandChecks>& all) const {
    std::ofstream out = open("hand_checks.csv");
    out << "case,quantity,place,solver,closed_form,unit,difference,expected,valid,reason,formula,numbers\n";
    for (const auto& checks : all)
      for (const auto& c : checks.rows)
        out << cell(checks.response) << ',' << cell(c.quantity) << ',' << cell(c.where) << ',' << cell(c.solver) << ',' << cell(c.closed_form) << ','
            << cell(c.unit) << ',' << cell(c.difference()) << ',' << cell(c.expected) << ',' << (c.valid ? "true" : "false") << ','
            << cell(c.reason) << ',' << cell(c.formula) << ',' << cell(c.numbers) << '\n';
  }

  void panels(const baywork::PanelTable& t, const baywork::PortalTable& portal) const {
    std::ofstream out = open("panels.csv");
    out << "case,face,bay,shear_N,first_chord_start_Nm,first_chord_end_Nm,second_chord_start_Nm,second_chord_end_Nm,first_chord_contraflexure,"
           "second_chord_contraflexure,angle_change_rad,portal_chord_Nm,start_cross_member_first_Nm,start_cross_member_second_Nm,"
           "start_cross_member_shear_N,portal_cross_member_Nm,start_first_chord_step_N,start_second_chord_step_N\n";
    for (std::size_t i = 0; i < t.panels.size(); ++i) {
      const auto& p = t.panels[i];
      const auto& c = t.cross_members[p.first_station];
      out << cell(t.response) << ',' << cell(t.face) << ',' << p.first_station + 1 << ',' << cell(p.shear) << ',' << cell(p.first_chord_start) << ','
          << cell(p.first_chord_end) << ',' << cell(p.second_chord_start) << ',' << cell(p.second_chord_end) << ',' << cell(p.first_chord_zero) << ','
          << cell(p.second_chord_zero) << ',' << cell(p.angle_change) << ',' << cell(portal.rows[i].chord_portal) << ',' << cell(c.first_end) << ','
          << cell(c.second_end) << ',' << cell(c.shear) << ',' << cell(portal.rows[i].cross_member_portal) << ',' << cell(c.first_chord_step) << ','
          << cell(c.second_chord_step) << '\n';
    }
  }

  void json_file(const baywork::Cases& cases, const baywork::verify::Proof& proof, const std::vector<baywork::HandChecks>& all,
                 const baywork::PanelTable& t) const {
    const baywork::Analysis& a = cases.analysis();
    std::ofstream out = open("results.json");
    out << "{\n  \"model\": {\"chords\": " << a.girder().chords.size() << ", \"bays\": " << a.girder().bays() << ", \"members\": "
        << a.model().frame.members.size() << ", \"unknowns\": " << a.solver().unknowns() << "},\n  \"cases\": [";
    for (std::size_t i = 0; i < cases.size(); ++i) {
      const baywork::Response& r = cases[i];
      out << (i ? "," : "") << "\n    {\"name\": " << quoted(r.name()) << ", \"total_load_N\": " << json(r.total_load()) << ", \"reaction_N\": "
          << json(r.total_reaction()) << ", \"max_deflection_m\": " << json(r.max_deflection()) << ", \"certified_error\": "
          << json(r.certificate().worst()) << "}";
    }
    const auto& worst = proof.worst();
    out << "\n  ],\n  \"worst\": {\"combination\": " << quoted(proof.combinations()[worst.combination].name) << ", \"place\": " << quoted(place(worst))
        << ", \"clause\": " << quoted(std::string(worst.standard) + " " + worst.clause) << ", \"utilisation\": " << json(worst.utilisation)
        << "},\n  \"hand_checks\": [";
    const char* comma = "";
    for (const auto& checks : all)
      for (const auto& c : checks.rows) {
        out << comma << "\n    {\"quantity\": " << quoted(checks.response + ": " + c.quantity + ", " + c.where) << ", \"solver\": " << json(c.solver)
            << ", \"closed_form\": " << json(c.closed_form) << ", \"difference\": " << json(c.difference()) << ", \"valid\": "
            << (c.valid ? "true" : "false") << "}";
        comma = ",";
      }
    out << "\n  ],\n  \"panels\": [";
    for (std::size_t i = 0; i < t.panels.size(); ++i)
      out << (i ? "," : "") << "\n    {\"bay\": " << t.panels[i].first_station + 1 << ", \"shear_N\": " << json(t.panels[i].shear)
          << ", \"chord_moment_Nm\": " << json(t.panels[i].chord_moment()) << ", \"cross_member_moment_Nm\": "
          << json(t.cross_member_moment(t.panels[i])) << "}";
    out << "\n  ]\n}\n";
  }

 private:
  std::ofstream open(const std::string& file) const {
    std::ofstream out(std::filesystem::path(folder_) / file);
    out.exceptions(std::ofstream::badbit | std::ofstream::failbit);
    return out;
  }
  std::string folder_;
};

inline void write_results(const std::string& folder, const baywork::Cases& cases, const baywork::verify::Proof& proof,
                          const std::vector<baywork::HandChecks>& checks, const baywork::PortalTable& portal, const baywork::PanelTable& panels) {
  const ResultFiles files(folder);
  files.cases(cases);
  files.proof(proof);
  files.hand_checks(checks);
  files.panels(panels, portal);
  files.json_file(cases, proof, checks, panels);
}

}  // namespace examples
