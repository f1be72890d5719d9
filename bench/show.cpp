// SPDX-License-Identifier: MIT
// Cost of each picture of a 40-bay box girder and of its whole report, after everything drawn is solved; sizes in bytes
// beside them.
#include <benchmark/benchmark.h>

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/show.hpp>

#include "support/girders.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

/// All that pictures are drawn of, made once.
struct Solved {
  static Girder girder(std::size_t bays) {
    Girder g = bench::girder(bench::Kind::box, bays);
    g.supports = simply_supported();
    return g;
  }
  Analysis analysis{girder(40)};
  std::vector<LoadCase> described{
      {"self-weight", Nature::permanent, {self_weight()}},
      {"wind", Nature::wind, {wind_on(Side::left, 200.0_Pa), wind_on_bars(250.0_Pa, {0, -1, 0})}}};
  Cases cases = analysis.solve(described);
  std::vector<Combination> all = combinations(en1990::ultimate(), cases.kinds());
  verify::Proof proof = verify::by_material(cases, en1990::ultimate());
  show::ReportParts parts{
      .loads = described,
      .tables = {rating::load_table(std::vector<std::size_t>{12, 16, 20, 24, 28, 32, 36, 40}, girder)},
      .interaction = {{"the whole girder", rating::interaction_curve(rating::Rater(analysis), {.rays = 24})}},
      .hoists = {HoistStudy(cases["self-weight"])}};
};
const Solved& solved() {
  static const Solved s;
  return s;
}

template <class Draw>
void row(const char* name, Draw draw) {
  benchmark::RegisterBenchmark(name, [draw](benchmark::State& state) {
    const Solved& s = solved();
    std::size_t bytes = 0;
    for (auto _ : state) {
      const std::string picture = draw(s, s.cases["wind"]);
      bytes = picture.size();
      benchmark::DoNotOptimize(picture.data());
    }
    state.counters["bytes"] = static_cast<double>(bytes);
  })->Unit(benchmark::kMicrosecond);
}

}  // namespace

int main(int argc, char** argv) {
  row("girder", [](const Solved& s, const Response&) { return show::girder_drawing(s.analysis); });
  row("loads", [](const Solved& s, const Response&) { return show::load_drawing(s.analysis, s.described[1]); });
  row("axial_forces", [](const Solved&, const Response& r) { return show::axial_forces(r); });
  row("moments_in_plane", [](const Solved&, const Response& r) { return show::bending_moments(r, in_plane); });
  row("moments_out_of_plane", [](const Solved&, const Response& r) { return show::bending_moments(r, out_of_plane); });
  row("shear", [](const Solved&, const Response& r) { return show::shear_forces(r, in_plane); });
  row("torsion", [](const Solved&, const Response& r) { return show::torsion(r); });
  row("deformed", [](const Solved&, const Response& r) { return show::deformed_shape(r); });
  row("panel", [](const Solved&, const Response& r) { return show::panel_drawing(r, Side::bottom, 3); });
  row("shear_shares", [](const Solved&, const Response& r) { return show::shear_shares(r); });
  row("energy", [](const Solved&, const Response& r) { return show::energy_picture(r); });
  row("utilisation",
      [](const Solved& s, const Response&) { return show::utilisation_map(s.analysis.model(), s.proof); });
  row("reactions", [](const Solved& s, const Response&) { return show::reactions(s.cases, s.all); });
  row("hoists", [](const Solved& s, const Response&) { return show::hoist_reactions(s.parts.hoists[0]); });
  row("n_m_points", [](const Solved&, const Response& r) { return show::n_m_points(r); });
  row("load_table", [](const Solved& s, const Response&) { return show::load_table_chart(s.parts.tables[0]); });
  row("interaction",
      [](const Solved& s, const Response&) { return show::interaction_picture(s.parts.interaction[0].points); });
  row("report", [](const Solved& s, const Response&) { return show::report(s.cases, s.proof, s.parts); });
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
}
