// SPDX-License-Identifier: MIT
// Splices inside an allowable load: beside a hand calculation, and on random girders beside a dense scan.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"
#include "support/load_scan.hpp"
#include "support/small_box.hpp"
#include "support/varied_frames.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using rating::Allowable;
using rating::Rater;
using rating::Terms;
using rating::Verdict;
using varied::Random;

/// Six bays, spliced in the middle.
BoxGirder spliced(const Connector& c, const material::Material& m) {
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, m}, brace{RoundTube{33.7_mm, 3.2_mm}, m};
  BoxGirder b = small_box(6, chord, brace, brace);
  b.modules = {0, {3}, c};
  return b;
}

/// A connector of any kind, often the weakest part of its girder.
Connector weak_connector(Random& r, bool alloy) {
  if (!alloy) {
    BoltedEndPlate p = plates();
    p.bolts = 3 + r.below(3);
    p.plate = r.in(0.008, 0.015);
    p.eccentricity = r.chance(0.5) ? r.in(0, 0.012) : 0.0;
    return p;
  }
  if (r.chance(0.5)) {
    PinCoupler c = coupler();
    c.pin = r.in(0.006, 0.011);
    c.hole = c.pin + 0.5e-3;
    c.replaceable = r.chance(0.3);
    c.axis = r.chance(0.5) ? PinAxis::level : PinAxis::upright;
    return c;
  }
  Spigot s = spigot();
  s.pins = 1 + r.below(2);
  s.pin = r.in(0.006, 0.009);
  if (r.chance(0.5)) s.wall = 10_mm;
  return s;
}

}  // namespace

TEST_CASE("a thin pin limits a girder's load: by hand") {
  // Pin of 10 mm of S355 (fup = 490 MPa, EN 10025-2) in two planes. Its shear: F/2 against 0.6 A fup/gamma_Mp =
  // 0.6 78.5398 mm2 490/1.25 = 18.4726 kN; its bending: F (b + 4 c + 2 a)/8 = F 42/8 mm against 1.5 Wel fyp/gamma_Mp =
  // 1.5 98.1748 mm3 355/1.25 = 41.8225 Nm, F alone 7.966 kN. Together (M/M_Rd)^2 + (V/V_Rd)^2 = 1 at
  // F = 1/sqrt((5.25 mm/41.8225 Nm)^2 + (1/36.945 kN)^2) = 7.78721 kN (EN 1993-1-8 Table 3.10, EN 1999-1-1 8.5.14 with
  // gamma_Mp: values from memory).
  PinCoupler thin = coupler();
  thin.pin = 10_mm;
  thin.hole = 10.5_mm;
  const Analysis analysis{spliced(thin, material::en_aw_6082_t6())};
  const Response unit = analysis.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0_kN_per_m)});
  const Rater rater(analysis);
  const Allowable a = rater.allowable(unit);
  REQUIRE(a.verdict == Verdict::topic);
  CHECK(a.row.check == verify::Check::splice);
  CHECK(a.row.reason == std::string("pin in bending and shear"));
  CHECK(verify::place(a.row).rfind("station 4, ", 0) == 0);
  double worst = 0;
  for (const CutForces& f : unit.splice(3)) {
    // what a moment about the upright axis and a torque put on the fork's plates, 31 mm apart in their middles
    const double F = std::hypot(f.N, f.Vz) + 2 * (std::abs(f.Mz) + std::abs(f.T)) / 0.031;
    worst = F > worst ? F : worst;
  }
  CHECK(close(1.5 * a.factor * worst, 7787.21, 1e-6));
  // with the usual pin of 16 mm a bar governs, later
  const Analysis usual{spliced(coupler(), material::en_aw_6082_t6())};
  CHECK(Rater(usual)
            .allowable(usual.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0_kN_per_m)}))
            .factor > a.factor);
}

TEST_CASE("connectors outside the scope leave no load, and what is placed may use them up") {
  const auto down = [](const Analysis& a, double size) {
    return a.solve(std::vector<LoadCase>{
        {"placed", Nature::permanent, {line_load({ChordOf::bottom_left, ChordOf::bottom_right}, size)}}});
  };
  // a steel blade cannot be welded to an aluminium chord
  PinCoupler steel = coupler();
  steel.plate_material = material::s355();
  const Analysis outside{spliced(steel, material::en_aw_6082_t6())};
  const Allowable none = Rater(outside).allowable({point_load(ChordOf::bottom_left, 1.5, 1.0)});
  CHECK(none.verdict == Verdict::outside_scope);
  CHECK(none.factor == 0.0);
  CHECK(std::string(none.row.reason).find("different metals") != std::string::npos);

  PinCoupler thin = coupler();
  thin.pin = 10_mm;
  thin.hole = 10.5_mm;
  const Analysis analysis{spliced(thin, material::en_aw_6082_t6())};
  const std::vector<Action> load{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0)};
  const double all = Rater(analysis).allowable(load).factor;
  // 1.35 of what is placed and 1.5 of the load together make 1.5 times all
  CHECK(close(Rater(down(analysis, 0.6 * all)).allowable(load).factor, all * (1.5 - 1.35 * 0.6) / 1.5, 1e-7));
  const Allowable left = Rater(down(analysis, 1.2 * all)).allowable(load);
  CHECK(left.verdict == Verdict::nothing_left);
  CHECK(left.row.check == verify::Check::splice);
}

TEST_CASE("splices on random girders: no load below the allowable one fails, and just above it one part does") {
  std::size_t rated = 0, by_splice = 0, fell = 0;
  for (std::uint64_t seed = 1; rated < 60; ++seed) {
    REQUIRE(seed < 300);
    Random r(seed);
    const bool alloy = r.chance(0.7);
    BoxGirder box = spliced(weak_connector(r, alloy), alloy ? material::en_aw_6082_t6() : material::s355h());
    box.modules.at = {1 + r.below(5)};
    const Girder g = box.girder();
    const Analysis analysis(g);
    Terms terms;
    terms.set.permanent_favourable = terms.set.permanent_unfavourable;
    const Response first = analysis.solve(random_point_loads(r, g));
    const Allowable of_first = Rater(analysis, terms).allowable(first);
    INFO("seed " << seed << " " << of_first);
    REQUIRE(of_first.is_load());
    const PlacedAndLoad loads(r, first, of_first.factor, 0.5, [&] { return analysis.solve(random_point_loads(r, g)); });
    const Rater rater(loads.placed, terms);
    const Allowable a = rater.allowable(loads.unit);
    if (!a.is_load()) continue;
    ++rated;
    by_splice += a.verdict == Verdict::topic && a.row.check == verify::Check::splice;
    fell += falls_below(rater, loads.unit, a, 300);
    // the proof of all cases together, solved and combined anew, says the same, and what it finds worst
    loads.prove_beside(terms, a.factor, [&](const verify::Proof& proof, double share) {
      if (share > 0.9 && share < 1 && !a.jumps) CHECK(verify::place(proof.worst()) == verify::place(a.row));
    });
  }
  CHECK(by_splice > 25);
  CHECK(fell > 10);
}

TEST_CASE("a bound of at most 1 between two sets of forces holds for a connector under all between them") {
  Random r(11);
  std::size_t close_ones = 0;
  for (int i = 0; i < 40; ++i) {
    const bool alloy = r.chance(0.7);
    const Analysis analysis{spliced(weak_connector(r, alloy), alloy ? material::en_aw_6082_t6() : material::s355h())};
    const verify::Basis basis;
    const std::vector<bool> skipped(analysis.model().bar_index.size(), false);
    const verify::detail::SpliceDesign design({analysis, basis, skipped});
    for (int k = 0; k < 20; ++k) {
      const auto forces = [&] {
        const auto some = [&](double most) { return r.chance(0.3) ? 0.0 : r.in(-1, 1) * most; };
        return verify::SectionForces{some(1e5), some(2e4), some(2e4), some(1e3), some(2e3), some(2e3)};
      };
      const verify::SectionForces a = forces(), b = forces();
      const auto times = [](const verify::SectionForces& f, double s) { return rating::detail::sum({}, f, s); };
      double low = 0, high = 100;
      while (high - low > 1e-6 * high) {
        const double size = 0.5 * (low + high);
        const verify::SectionForces one = times(a, size), other = times(b, size);
        (design.bound(0, std::array{&one, &other}) <= 1.0 ? low : high) = size;
      }
      double most = 0;
      for (int j = 0; j <= 16; ++j) {
        const double t = j / 16.0;
        const double u = design.utilisation(0, rating::detail::sum(times(a, low * t), times(b, low), 1.0 - t));
        CHECK(u <= 1.0 + 1e-12);
        most = u > most ? u : most;
      }
      close_ones += most > 0.9;
    }
  }
  CHECK(close_ones > 300);  // the bound is no idle one
}
