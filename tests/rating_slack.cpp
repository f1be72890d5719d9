// SPDX-License-Identifier: MIT
// Slack of splices in deflections of allowable loads: by the hand formula of a kink, and beside slack_sag() itself.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"
#include "support/small_box.hpp"
#include "support/varied_frames.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using rating::Allowable;
using rating::DeflectionLimit;
using rating::DeflectionOf;
using rating::Rater;
using rating::Terms;
using rating::Verdict;

/// 8 m, spliced at 3 m by end plates with slack.
BoxGirder loose(double slack) {
  const Bar bar{RoundTube{60.3_mm, 5.0_mm}, material::s355h()};
  BoxGirder b = small_box(16, bar, bar, bar);
  BoltedEndPlate p = plates();
  p.fit.slack = slack;
  b.modules = {0, {6}, p};
  return b;
}
std::vector<Action> down(double w) { return {line_load({ChordOf::bottom_left, ChordOf::bottom_right}, w)}; }

/// Two joints of one side, s = 1 mm longer each, turn the sides about the top joint of the bay before the splice,
/// x = 2.5 m, by s/h = 2 mrad: sag (s/h) x (L - 4)/L at mid-span, 2.5 mm (kinematics; as for slack_sag()).
constexpr double sag = 1e-3 / 0.5 * 2.5 * 4.0 / 8.0;

}  // namespace

TEST_CASE("printed deflections have the sag of slack in them") {
  const Analysis with{loose(1_mm)}, without{loose(0)};
  const Response unit = with.solve(down(1.0));
  const Allowable a = Rater(with).allowable(unit), b = Rater(without).allowable(down(1.0));
  REQUIRE(a.is_load());
  CHECK(a.factor == Approx(b.factor).epsilon(1e-6));  // forces do not know of it
  CHECK(a.deflection - b.deflection == Approx(sag).epsilon(0.05));
  CHECK(a.variable_deflection == a.deflection);

  // what is left of a limit: what the sag has not used up
  Terms terms;
  terms.deflection = DeflectionLimit{400, DeflectionOf::whole, 0};  // 20 mm
  const Allowable limited = Rater(with, terms).allowable(unit), elastic = Rater(without, terms).allowable(down(1.0));
  REQUIRE(elastic.verdict == Verdict::deflection);
  REQUIRE(limited.verdict == Verdict::deflection);
  CHECK(limited.deflection == Approx(8.0 / 400).epsilon(1e-9));
  CHECK(limited.factor == Approx(elastic.factor * (20 - 1e3 * sag) / 20).epsilon(0.02));

  // once the weight has opened the joints variable loads do so no more
  const Cases placed = with.solve(std::vector<LoadCase>{{"placed", Nature::permanent, down(50.0)}});
  const Allowable on_top = Rater(placed).allowable(unit);
  const Allowable plain =
      Rater(without.solve(std::vector<LoadCase>{{"placed", Nature::permanent, down(50.0)}})).allowable(down(1.0));
  CHECK(on_top.variable_deflection == Approx(plain.variable_deflection).epsilon(1e-6));
  CHECK(on_top.deflection - plain.deflection == Approx(sag).epsilon(0.05));
}

TEST_CASE("where joints open under a load its deflection leaps, and a limit within the leap is met there") {
  // Placed: 200 N/m up, so that the top joints have opened; 200 N/m down close them, and more opens the bottom ones:
  // the girder falls by twice the sag at that load, most under the kink: (s/h) x (L - x)/L at x = 2.5 m, 3.4375 mm.
  const Analysis analysis{loose(1_mm)};
  const Cases placed = analysis.solve(std::vector<LoadCase>{{"uplift", Nature::permanent, down(-200.0)}});
  const Response unit = analysis.solve(down(1.0));
  const Allowable free = Rater(placed).allowable(unit);
  REQUIRE(free.is_load());
  REQUIRE(free.factor > 400.0);
  double elastic = 0;  // of 200 N/m, at the chords' joints and bays
  for (std::size_t c = 0; c < 4; ++c)
    for (std::size_t b = 0; b < 16; ++b)
      for (const double t : {0.0, 0.5}) {
        const Vec3<> u = unit.member(analysis.model().chord_member(b, c)).displacement(fraction{t});
        elastic = length(u) > elastic ? length(u) : elastic;
      }
  elastic *= 200.0;
  Terms terms;
  const double most = 1e-3 / 0.5 * 2.5 * 5.5 / 8.0;
  for (const double part : {0.5, 1.5}) {
    terms.deflection = DeflectionLimit{8.0 / (elastic + part * most), DeflectionOf::variable, 0};
    const Allowable a = Rater(placed, terms).allowable(unit);
    CHECK(a.verdict == Verdict::deflection);
    CHECK(close(a.factor, 200.0, 1e-6));
    CHECK(a.variable_deflection <= a.deflection_limit);
    CHECK(a.variable_deflection >= (part < 1 ? elastic : most) * (1 - 1e-6));
  }
  // a limit beyond the leap is met later
  terms.deflection = DeflectionLimit{8.0 / (elastic + 2.5 * most), DeflectionOf::variable, 0};
  CHECK(Rater(placed, terms).allowable(unit).factor > 210.0);
}

TEST_CASE("random loads: up to the one that a limit allows no station moves further, slack with it") {
  std::size_t limited = 0, opened = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    varied::Random r(seed);
    BoxGirder box = loose(r.in(0.5e-3, 2e-3));
    box.modules.at = {3 + r.below(4), 9 + r.below(4)};
    const Analysis analysis{box};
    const auto some = [&] {
      std::vector<Action> out;
      for (int i = 0; i < 2; ++i)
        out.push_back(point_load(ChordRef(r.below(4)), r.in(0.2, 0.8) * 8.0, Vec3<>{0, r.in(-1, 1), r.in(-1, 1)}));
      return analysis.solve(out);
    };
    const Response first = some(), unit = some();
    const Response there = combine<double>({&first}, {r.in(200, 2000)}, "placed");
    const Cases placed(analysis, {there}, {{"placed", Nature::permanent, ""}});
    Terms terms;
    terms.deflection = DeflectionLimit{8.0 / r.in(0.006, 0.02), DeflectionOf::whole, 0};
    const Allowable a = Rater(placed, terms).allowable(unit);
    if (a.verdict != Verdict::deflection) continue;
    INFO("seed " << seed << ": " << a);
    ++limited;
    for (int i = 0; i <= 60; ++i) {
      const Response sum = combine<double>({&there, &unit}, {1.0, a.factor * i / 60 * (1 - 1e-9)}, "both");
      const SlackSag slack = slack_sag(sum);
      opened += slack.opened;
      for (std::size_t s = 0; s <= 16; ++s) {
        Vec3<> mean{};
        for (std::size_t c = 0; c < 4; ++c) mean += 0.25 * sum.answer().displacement(sum.model().chord_node(s, c));
        CHECK(length(mean + slack.at_station[s]) <= a.deflection_limit * (1 + 1e-9));
      }
    }
    CHECK(a.deflection <= a.deflection_limit * (1 + 1e-9));
  }
  CHECK(limited > 10);
  CHECK(opened > 1000);
}
