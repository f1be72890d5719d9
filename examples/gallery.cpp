// SPDX-License-Identifier: MIT
// One of each picture for four girders of the harbour cinema: ladder, triangular, box, curved.
//
//   gallery [DIRECTORY [WIDTH]]     writes SVG files and index.html, into ./pictures where none is named, 800 px wide
//   or as asked
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/baywork.hpp>
#include <baywork/show.hpp>

using namespace baywork;
using namespace baywork::literals;

namespace {

struct Bars {
  material::Material alloy = material::en_aw_6082_t6();
  Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};  // sizes of EN 10220
  Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
};

/// The open ladder that holds the screen's lower edge.
Girder ladder(const Bars& b) {
  return LadderGirder{.bays = 16,
                      .bay_length = 0.5_m,
                      .depth = 0.5_m,
                      .chord = b.chord,
                      .web = open(b.cross),
                      .modules = {.bays_each = 8},
                      .supports = simply_supported()}
      .girder();
}
/// The triangular girder over the ticket booth, hung at three places.
Girder triangular(const Bars& b) {
  const auto side = braced(alternating, b.brace, b.cross);
  return TriangularGirder{.bays = 18,
                          .bay_length = 0.5_m,
                          .width = 0.5_m,
                          .depth = 0.45_m,
                          .chord = b.chord,
                          .faces = {.base = open(b.cross), .left = side, .right = side},
                          .modules = {.bays_each = 6},
                          .supports = hung_at({0.5, 4.5, 8.5})}
      .girder();
}
/// The screen girder: sides braced, top and bottom open.
Girder box(const Bars& b, std::size_t bays = 24, Axis axis = {}) {
  const auto side = braced(alternating, b.brace, b.cross);
  const double span = 0.5 * static_cast<double>(bays);
  BoxGirder g{.bays = bays,
              .bay_length = 0.5_m,
              .width = 0.5_m,
              .depth = 0.5_m,
              .chord = b.chord,
              .faces = {.top = open(b.cross), .bottom = open(b.cross), .left = side, .right = side}};
  g.diaphragms = end_diaphragms(b.brace);
  g.modules.bays_each = 8;
  g.axis = axis;
  g.supports = axis.plan_radius == 0.0 ? hung_at({2.0, span - 2.0}) : simply_supported();
  return g.girder();
}

/// Self-weight, a screen of 60 N/m, a projector, and wind of 122.5 Pa (gusts of 14 m/s): on bars, with the force
/// coefficient of a sign on a cloth over the left or only face, and on the upper half of a screen 4.5 m high.
std::vector<LoadCase> cases_on(const Girder& g) {
  const double l = g.span();
  std::vector<ChordRef> lower{ChordRef(std::size_t{0})};
  if (g.chords.size() > 2) lower.emplace_back(std::size_t{1});
  const FaceRef sheet = g.faces.size() == 1 ? FaceRef(std::size_t{0}) : FaceRef(Side::left);
  return {{"self-weight", Nature::permanent, {self_weight(1.05), line_load(lower, 60.0_N_per_m, {0.2 * l, 0.8 * l})}},
          {"projector", Nature::imposed, {point_load(lower[0], 0.52 * l, 0.9_kN)}},
          {"wind",
           Nature::wind,
           {wind_on(sheet, 220.5_Pa), wind_on_bars(122.5_Pa, {0, -1, 0}),
            line_load(lower, {0, -496.0_N_per_m, 0}, {0, -496.0_N_per_m, 0}, {0.2 * l, 0.8 * l})}}};
}

/// All pictures of one girder: name and text.
std::vector<std::pair<std::string, std::string>> pictures(const Girder& girder, const rating::LoadTable& table,
                                                          show::Look look) {
  const Analysis a{girder};
  const std::vector<LoadCase> described = cases_on(girder);
  const Cases cases = a.solve(described);
  const std::vector<Combination> all = combinations(en1990::ultimate(), cases.kinds());
  const Response together = cases.combine({"all loads together", {1.0, 1.0, 1.0}});
  const Response design = cases.combine({"1.35 permanent, 1.5 wind, 1.05 projector", {1.35, 1.05, 1.5}});
  const verify::Proof proof = verify::by_material(cases, en1990::ultimate());
  const rating::Rater rater(a.solve(std::vector<LoadCase>{described[0]}));
  std::vector<std::pair<std::string, std::string>> out;
  const auto add = [&](const std::string& name, auto make) {
    look.id = name;  // pictures of one page need different ones
    out.emplace_back(name, make());
  };
  add("girder", [&] { return show::girder_drawing(a, look); });
  add("loads", [&] { return show::load_drawing(a, described[2], look); });
  add("axial-forces", [&] { return show::axial_forces(together, look); });
  add("moments-in-plane", [&] { return show::bending_moments(together, in_plane, look); });
  add("moments-out-of-plane", [&] { return show::bending_moments(together, out_of_plane, look); });
  add("shear-in-plane", [&] { return show::shear_forces(together, in_plane, look); });
  add("shear-out-of-plane", [&] { return show::shear_forces(together, out_of_plane, look); });
  add("torsion", [&] { return show::torsion(together, look); });
  add("deformed", [&] { return show::deformed_shape(together, look); });
  add("panel", [&] { return show::panel_drawing(together, std::size_t{0}, 5, look); });
  add("shear-shares", [&] { return show::shear_shares(together, look); });
  add("energy", [&] { return show::energy_picture(together, look); });
  add("utilisation", [&] { return show::utilisation_map(a.model(), proof, look); });
  add("reactions", [&] { return show::reactions(cases, all, look); });
  if (girder.chords.size() == 3) {  // the girder on three hoists
    const HoistStudy study(cases[0]);
    add("hoists", [&] { return show::hoist_reactions(study, look); });
  }
  add("n-m-points", [&] { return show::n_m_points(design, {}, look); });
  add("interaction", [&] { return show::interaction_picture(rating::interaction_curve(rater), look); });
  add("load-table", [&] { return show::load_table_chart(table, look); });
  return out;
}

}  // namespace

int main(int argc, char** argv) {
  const std::filesystem::path directory = argc > 1 ? argv[1] : "pictures";
  const double width = argc > 2 ? std::stod(argv[2]) : 800.0;
  std::filesystem::create_directories(directory);
  const Bars bars;
  // tables over the same girder cut after ever more bays
  const auto table_of = [](const Girder& longest) {
    rating::TableTerms terms;
    terms.terms.deflection = rating::DeflectionLimit{200};
    std::vector<std::size_t> bays;
    for (std::size_t n = longest.bays() / 3; n <= longest.bays(); n += 2) bays.push_back(n);
    return rating::load_table(
        bays,
        [&](std::size_t n) {
          Girder g = longest;
          g.stations.resize(n + 1);
          g.joints.resize((n + 1) * g.chords.size());
          g.splices.clear();
          g.supports = simply_supported();
          return g;
        },
        terms);
  };
  const std::vector<std::pair<std::string, Girder>> girders{{"ladder", ladder(bars)},
                                                            {"triangular", triangular(bars)},
                                                            {"box", box(bars)},
                                                            {"curved", box(bars, 24, {.plan_radius = 12.0_m})}};
  std::ofstream index(directory / "index.html");
  index << "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"color-scheme\" "
           "content=\"light dark\">"
           "<title>Pictures of four girders</title></head><body>\n";
  std::size_t written = 0;
  for (const auto& [name, girder] : girders) {
    const rating::LoadTable t = table_of(girder);
    index << "<h1>" << name << "</h1>\n";
    for (const auto& [kind, svg] : pictures(girder, t, {.width = width})) {
      const std::string file = name + "-" + kind + ".svg";
      std::ofstream(directory / file) << svg;
      index << "<p><img src=\"" << file << "\" alt=\"" << name << " girder: " << kind << "\"></p>\n";
      ++written;
    }
  }
  index << "</body></html>\n";
  std::cout << written << " pictures of " << girders.size() << " girders are in " << directory.string()
            << ", with index.html\n";
}
