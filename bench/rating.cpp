// SPDX-License-Identifier: MIT
// Cost of a proof, of an allowable load and of a load table, after girder and placed loads are solved.
#include <benchmark/benchmark.h>

#include <array>
#include <cstddef>
#include <cstdint>
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

/// What a proof and an allowable load may be asked to see besides bars.
enum Seen : std::size_t { bars, joints, pairs, bows, leaning, splices, eigenvalue, bows_by_eigenvalue };
constexpr std::array<const char*, 8> names{"bars",    "joints",  "pairs",      "bows",
                                           "leaning", "splices", "eigenvalue", "bows and eigenvalue"};
verify::Basis basis_of(Seen what) {
  verify::Basis b;
  if (what == joints) b.joints = {.checked = true, .throat = 3.0_mm};
  b.stability.checked = what >= pairs && what != splices;
  b.stability.imperfections = what == bows || what == leaning || what == bows_by_eigenvalue;
  b.stability.by_eigenvalue = what == eigenvalue || what == bows_by_eigenvalue;
  if (what == leaning) b.stability.sway = {4.0, 2};
  return b;
}
/// Beyond bars, with braces whose joints are within the scope, and ends that keep their shape: a bar across the
/// section would take the joints beside it out of the scope.
Girder girder_of(Seen what, std::size_t bays) {
  if (what == bars) return box(bays, simply_supported());
  const auto alloy = material::en_aw_6082_t6();
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy}, brace{RoundTube{42.4_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  Girder g = BoxGirder{.bays = bays,
                       .bay_length = 0.5,
                       .width = 0.5,
                       .depth = 0.5,
                       .chord = {RoundTube{60.3_mm, 5.0_mm}, alloy},
                       .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
                       .diaphragms = what == joints ? Diaphragms{} : end_diaphragms(brace),
                       .supports = simply_supported()}
                 .girder();
  if (what != splices) return g;
  const auto plate = material::en_aw_6082_t6(material::Product::rod_or_bar);
  for (std::size_t s = 4; s < bays; s += 4) g.splices.push_back(s);
  g.connector = PinCoupler{.pin = 16_mm,
                           .hole = 16.5_mm,
                           .blade = 20_mm,
                           .fork = 10_mm,
                           .gap = 0.5_mm,
                           .end = 16_mm,
                           .side = 16_mm,
                           .reach = 35_mm,
                           .plate_material = plate,
                           .pin_material = material::s355(),
                           .throat = 4_mm};
  return g;
}

/// The time of each row beside it.
void proof(benchmark::State& state) {
  const auto what = static_cast<Seen>(state.range(2));
  state.SetLabel(names[what]);
  const Analysis a{girder_of(what, static_cast<std::size_t>(state.range(0)))};
  const Cases c = a.solve(twelve_combinations());
  if (combinations(en1990::ultimate(), c.kinds()).size() != static_cast<std::size_t>(state.range(1)))
    return state.SkipWithError("other combinations than said");
  std::size_t rows = 0;
  for (auto _ : state) {
    const verify::Proof proof = verify::by_material(c, en1990::ultimate(), basis_of(what));
    rows = proof.rows().size();
    benchmark::DoNotOptimize(proof);
  }
  using benchmark::Counter;
  state.counters["rows"] = static_cast<double>(rows);
  state.counters["per_row"] = Counter(static_cast<double>(rows), Counter::kIsIterationInvariantRate | Counter::kInvert);
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

/// A shorter girder under its own weight: what is asked beyond bars, the rater made before.
void allowable_load_seeing(benchmark::State& state) {
  const auto what = static_cast<Seen>(state.range(0));
  state.SetLabel(names[what]);
  const Analysis a{girder_of(what, 16)};
  const Cases placed = a.solve(std::vector<LoadCase>{{"self-weight", Nature::permanent, {self_weight()}}});
  rating::Terms terms;
  terms.basis = basis_of(what);
  const rating::Rater rater(placed, terms);
  const Response unit = a.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0)});
  if (!rater.allowable(unit).is_load()) return state.SkipWithError("no load");
  for (auto _ : state) benchmark::DoNotOptimize(rater.allowable(unit));
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

constexpr std::array<std::size_t, 6> quick{bars, joints, pairs, bows, leaning, splices};
BENCHMARK(proof)->ArgNames({"bays", "combinations", "seeing"})->Apply([](auto* b) {
  for (const std::size_t what : quick) b->Args({40, 12, static_cast<std::int64_t>(what)});
})->Unit(benchmark::kMillisecond);
BENCHMARK(envelope)->Unit(benchmark::kMillisecond);
BENCHMARK(prepare_to_rate)->Unit(benchmark::kMillisecond);
BENCHMARK(allowable_load)->ArgName("every_bar")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);
BENCHMARK(allowable_load_seeing)->ArgName("what")->DenseRange(bars, bows_by_eigenvalue)->Unit(benchmark::kMillisecond);
BENCHMARK(table)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
