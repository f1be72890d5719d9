// SPDX-License-Identifier: MIT
// Envelopes over combinations: against combining and looking, against statics, and what they print.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/response.hpp>

#include "support/if_stable.hpp"
#include "support/random_described_girders.hpp"

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using girders::Random;

namespace {

/// Whether e is what a list of values, one for each combination, has; values within rounding may trade places.
void check_extremes(const EnvelopeRange& e, const std::vector<double>& values) {
  double least = values[0], most = values[0], size = 0;
  for (const double v : values) {
    least = v < least ? v : least;
    most = v > most ? v : most;
    size = std::abs(v) > size ? std::abs(v) : size;
  }
  const double slack = 1e-12 * size;
  CHECK(std::abs(e.least - least) <= slack);
  CHECK(std::abs(e.most - most) <= slack);
  CHECK(std::abs(values[e.least_in] - least) <= slack);
  CHECK(std::abs(values[e.most_in] - most) <= slack);
}

}  // namespace

TEST_CASE("envelopes are what combining every combination shows") {
  std::size_t seen = 0;
  for (std::uint64_t seed = 1; seed <= 25; ++seed) {
    Random r(seed);
    const Girder g = girders::DescribedGirder(r, 4).alone();
    const auto analysis = if_stable(g);
    if (!analysis) continue;
    INFO("seed " << seed);
    ++seen;
    std::vector<LoadCase> cases{{"self-weight", Nature::permanent, {self_weight()}}};
    for (std::size_t i = 0; i < 3; ++i)
      cases.push_back({"load " + std::to_string(i),
                       i == 0 ? Nature::wind : Nature::imposed,
                       {point_load(ChordRef(r.below(g.chords.size())), r.in(0, 1) * g.span(),
                                   Vec3<>{r.in(-1e3, 1e3), r.in(-1e3, 1e3), r.in(-1e3, 1e3)})}});
    const Cases solved = analysis->solve(cases);
    const Envelope envelope(solved, en1990::ultimate());
    std::vector<Response> all;
    for (const Combination& c : envelope.combinations()) all.push_back(solved.combine(c));
    REQUIRE(all.size() > 10);
    for (std::size_t m = 0; m < envelope.members().size(); ++m)
      for (std::size_t i = 0; i < 6; ++i) {
        std::vector<double> start, end;
        for (const Response& response : all) {
          start.push_back(response.member(m).forces(fraction{0}, CutSide::before)[i]);
          end.push_back(response.answer().members[m].end[i]);
        }
        check_extremes(envelope.members()[m].start[i], start);
        check_extremes(envelope.members()[m].end[i], end);
      }
    for (std::size_t s = 0; s < envelope.supports().size(); ++s)
      for (std::size_t i = 0; i < 6; ++i) {
        std::vector<double> values;
        for (const Response& response : all) values.push_back(response.answer().reactions[s].value[i]);
        check_extremes(envelope.supports()[s].reaction[i], values);
      }
  }
  CHECK(seen > 15);
}

TEST_CASE("a simple span: the statics of one end, and what governs it") {
  // A ladder 4 m long on two supports; 1 kN hung from the middle, 4 kN up at a quarter (EN 1990 (6.10): 1.35 and 1.0
  // for what is always there, 1.5 for the rest). By levers: at the start 0.5 kN and -3 kN upwards.
  const Bar bar{RoundTube{60.3_mm, 5.0_mm}, material::s355h()};
  const Analysis analysis{LadderGirder{
      .bays = 8, .bay_length = 0.5, .depth = 0.5, .chord = bar, .web = open(bar), .supports = simply_supported()}};
  const Cases cases = analysis.solve({LoadCase{"hung", Nature::permanent, {point_load(ChordOf::bottom, 2.0, 1e3)}},
                                      LoadCase{"uplift", Nature::wind, {point_load(ChordOf::bottom, 1.0, -4e3)}}});
  const Envelope envelope(cases, en1990::ultimate());
  const EnvelopeRange* vertical = nullptr;
  for (const Envelope::OfSupport& s : envelope.supports())
    if (s.address.station == 0 && s.reaction[2].most != 0.0) vertical = &s.reaction[2];
  REQUIRE(vertical != nullptr);
  CHECK(vertical->most == Approx(1.35 * 500).epsilon(1e-9));
  CHECK(vertical->least == Approx(500 - 1.5 * 3000).epsilon(1e-9));
  CHECK(envelope.combinations()[vertical->least_in].name.find("uplift") != std::string::npos);
  CHECK(envelope.combinations()[vertical->most_in].name.find("uplift") == std::string::npos);

  std::ostringstream out;
  out << envelope;
  CHECK(out.str().find("fz kN") != std::string::npos);
  CHECK(out.str().find("0.675 (") != std::string::npos);
  CHECK(out.str().find("-4.000 (") != std::string::npos);
  CHECK(out.str().find("cross member  Vy kN") != std::string::npos);
  CHECK_THROWS_AS(Envelope(cases, {Combination{"one factor", {1.0}}}), BadDescription);
  CHECK_THROWS_AS(reaction_ranges(cases, {Combination{"one factor", {1.0}}}), BadDescription);
  CHECK_THROWS_AS(Envelope(cases, std::vector<Combination>{}), BadDescription);  // would read as no forces at all
}
