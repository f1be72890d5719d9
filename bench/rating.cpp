// SPDX-License-Identifier: MIT
// Cost of a proof, of an allowable load and of a load table, after girder and placed loads are solved.
#include <benchmark/benchmark.h>

#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/rating.hpp>

#include "support/girders.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

Girder box(std::size_t bays, Supports supports) {
  Girder g = bench::girder(bench::Kind::box, bays);
  g.supports = std::move(supports);
  return g;
}

/// Self-weight and five actions of which one is there at a time: twelve combinations.
std::vector<LoadCase> twelve_combinations() {
  std::vector<LoadCase> out{{"self-weight", Nature::permanent, {self_weight()}},
                            {"wind", Nature::wind, {wind_on(Side::left, 200.0_Pa)}, "one"},
                            {"wind on bars", Nature::wind, {wind_on_bars(250.0_Pa, {0, -1, 0})}, "one"}};
  for (const double x : {4.1_m, 8.0_m, 14.3_m})
    out.push_back(
        {"hung at " + text::number(x), Nature::imposed, {point_load(ChordOf::bottom_left, x, 2.0_kN)}, "one"});
  return out;
}

/// Of the bars, and with their joints and welds; the time of each row beside it.
void prove(benchmark::State& state, const verify::Basis& basis) {
  const Analysis a{box(static_cast<std::size_t>(state.range(0)), simply_supported())};
  const Cases c = a.solve(twelve_combinations());
  if (combinations(en1990::ultimate(), c.kinds()).size() != static_cast<std::size_t>(state.range(1)))
    return state.SkipWithError("other combinations than said");
  std::size_t rows = 0;
  for (auto _ : state) {
    const verify::Proof proof = verify::by_material(c, en1990::ultimate(), basis);
    rows = proof.rows().size();
    benchmark::DoNotOptimize(proof);
  }
  using benchmark::Counter;
  state.counters["rows"] = static_cast<double>(rows);
  state.counters["per_row"] = Counter(static_cast<double>(rows), Counter::kIsIterationInvariantRate | Counter::kInvert);
}
void proof(benchmark::State& state) { prove(state, {}); }
void proof_with_joints(benchmark::State& state) {
  verify::Basis basis;
  basis.joints = {.checked = true, .throat = 3.0_mm};
  prove(state, basis);
}

void envelope(benchmark::State& state) {
  const Analysis a{box(40, simply_supported())};
  const Cases c = a.solve(twelve_combinations());
  for (auto _ : state) benchmark::DoNotOptimize(Envelope(c, en1990::ultimate()));
}

void allowable_load(benchmark::State& state) {
  const Analysis a{box(40, simply_supported())};
  const rating::Rater rater(a.solve(twelve_combinations()));
  const Response unit = a.solve({point_load(ChordOf::bottom_left, 10.1, 1.0)});
  const auto how = state.range(0) == 0 ? rating::Search::below_least : rating::Search::every_bar;
  for (auto _ : state) benchmark::DoNotOptimize(rater.allowable(unit, how));
}

void prepare_to_rate(benchmark::State& state) {
  const Analysis a{box(40, simply_supported())};
  const Cases c = a.solve(twelve_combinations());
  for (auto _ : state) benchmark::DoNotOptimize(rating::Rater(c).terms());
}

/// Twenty spans from 6 to 25 m with an overhang of a quarter: all seven patterns, girders described and solved anew.
void table(benchmark::State& state) {
  std::vector<std::size_t> bays;
  for (std::size_t i = 0; i < 20; ++i) bays.push_back(12 + 2 * i);
  rating::TableTerms terms;
  for (const rating::Pattern p : rating::patterns_on_overhangs) terms.patterns.push_back(p);
  const auto girder = [](std::size_t n) {
    return box(n, continuous_over({0.0, 0.5 * static_cast<double>(n - n / 4)}));
  };
  for (auto _ : state) benchmark::DoNotOptimize(rating::load_table(bays, girder, terms));
}

BENCHMARK(proof)->ArgNames({"bays", "combinations"})->Args({40, 12})->Unit(benchmark::kMillisecond);
BENCHMARK(proof_with_joints)->ArgNames({"bays", "combinations"})->Args({40, 12})->Unit(benchmark::kMillisecond);
BENCHMARK(envelope)->Unit(benchmark::kMillisecond);
BENCHMARK(prepare_to_rate)->Unit(benchmark::kMillisecond);
BENCHMARK(allowable_load)->ArgName("every_bar")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(table)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
