// SPDX-License-Identifier: MIT
// Cost of each picture of a 40-bay box girder, after everything drawn is solved; its size in bytes beside it.
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
  Analysis analysis{[] {
    Girder g = bench::girder(bench::Kind::box, 40);
    g.supports = simply_supported();
    return g;
  }()};
  std::vector<LoadCase> described{
      {"self-weight", Nature::permanent, {self_weight()}},
      {"wind", Nature::wind, {wind_on(Side::left, 200.0_Pa), wind_on_bars(250.0_Pa, {0, -1, 0})}}};
  Cases cases = analysis.solve(described);
  std::vector<Combination> all = combinations(en1990::ultimate(), cases.kinds());
  verify::Proof proof = verify::by_material(cases, en1990::ultimate());
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
  row("n_m_points", [](const Solved&, const Response& r) { return show::n_m_points(r); });
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
}
