// SPDX-License-Identifier: MIT
// Joints and welds inside an allowable load: beside a hand calculation, and on random girders beside a dense scan.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/rating.hpp>

#include "support/load_scan.hpp"
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

verify::Basis with_joints(double throat) {
  verify::Basis basis;
  basis.joints = {.checked = true, .throat = throat};
  return basis;
}

/// Round tubes within the range of validity (EN 1993-1-8 Table 7.1, values from memory: 0.2 <= d1/d0 <= 1, d0/t0 <= 50,
/// angles from 30 degrees), of sizes of EN 10210-2.
Girder tube_girder(Random& r) {
  const material::Material m = r.chance(0.5) ? material::s235h() : material::en_aw_6082_t6();
  const Bar chord{RoundTube{r.chance(0.5) ? 60.3_mm : 76.1_mm, 5.0_mm}, m};
  const Bar cross{RoundTube{r.chance(0.5) ? 42.4_mm : 48.3_mm, 4.0_mm}, m};
  const Bar brace{RoundTube{33.7_mm, r.chance(0.5) ? 2.6_mm : 3.2_mm}, m};
  const double depth = r.in(0.45, 0.6);
  const Face side =
      r.chance(0.5) ? Face(braced(alternating, brace, cross)) : Face(braced(mirrored_towards, brace, cross));
  if (r.chance(0.3))
    return LadderGirder{.bays = 2 + r.below(3),
                        .bay_length = 0.5,
                        .depth = depth,
                        .chord = chord,
                        .web = open(cross),
                        .supports = cantilever()}
        .girder();
  return BoxGirder{.bays = 2 + r.below(3),
                   .bay_length = 0.5,
                   .width = depth,
                   .depth = depth,
                   .chord = chord,
                   .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
                   .supports = r.chance(0.5) ? simply_supported() : cantilever()}
      .girder();
}

}  // namespace

TEST_CASE("a T joint of an open face limits a cross member's load: by hand") {
  // One open bay that stands clamped at its start; two forces P pull the free ends of its chords apart: the cross
  // member at the free end is pulled with nearly P, whose joint is a T joint of EN 1993-1-8 Table 7.2 (value from
  // memory): N_Rd = f t0^2 gamma^0.2 (2.8 + 14.2 beta^2) = 5875 7.61^0.2 7.2081 N with beta = 0.557162, gamma = 7.61,
  // less what bends the joint: N/N_Rd + (M_ip/M_ip,Rd)^2 + M_op/M_op,Rd of (7.3).
  const Bar chord{RoundTube{76.1_mm, 5.0_mm}, material::s235h()}, post{RoundTube{42.4_mm, 4.0_mm}, material::s235h()};
  const Analysis analysis{LadderGirder{
      .bays = 1, .bay_length = 0.5, .depth = 0.5, .chord = chord, .web = open(post), .supports = cantilever()}};
  const Response unit = analysis.solve(
      {point_load(ChordOf::top, 0.5, Vec3<>{0, 0, 1e3}), point_load(ChordOf::bottom, 0.5, Vec3<>{0, 0, -1e3})});
  Terms terms;
  terms.basis = with_joints(0.0);
  const Allowable a = Rater(analysis, terms).allowable(unit);
  REQUIRE(a.verdict == Verdict::topic);
  CHECK(a.row.check == verify::Check::joint);
  const std::size_t free_post = analysis.model().faces[0].cross_members[1][0];
  CHECK(a.row.member == free_post);
  const CutForces at = unit.member(free_post).forces(fraction{0});
  const double f = 1.5 * a.factor, ft2 = 235e6 * 0.005 * 0.005, d1 = 0.0424, beta = d1 / 0.0761, gamma = 7.61;
  // the chord is pulled by no axial force, but bent: n_p of its greatest compression
  double n_p = 0;
  const double A = 3.14159265358979 / 4 * (0.0761 * 0.0761 - 0.0661 * 0.0661);
  const double W = 3.14159265358979 / 32 * (std::pow(0.0761, 4) - std::pow(0.0661, 4)) / 0.0761;
  const std::size_t own_chord = a.row.x == 0.0 ? 0 : 1;
  const CutForces c = unit.chord(ChordRef(own_chord)).bay(0).forces(fraction{1}, CutSide::before);
  n_p = f * (std::hypot(c.My, c.Mz) / W - c.N / A) / 235e6;
  const double k_p = n_p > 0 ? 1 - 0.3 * n_p * (1 + n_p) : 1.0;
  const double punching = 235e6 / std::sqrt(3.0) * 0.005 * d1 * d1;
  const double N_Rd = k_p * ft2 * std::pow(gamma, 0.2) * (2.8 + 14.2 * beta * beta);
  const double ip = k_p * ft2 * d1 * 4.85 * std::sqrt(gamma) * beta;
  const double u = f * at.N / N_Rd + std::pow(f * at.Mz / (ip < punching ? ip : punching), 2);
  CHECK(u == Approx(1.0).epsilon(1e-8));
  CHECK(a.row.utilisation == Approx(1.0).epsilon(1e-9));

  // without joints a bar governs, later
  const Allowable bars = Rater(analysis).allowable(unit);
  CHECK(bars.verdict == Verdict::member);
  CHECK(bars.factor > a.factor);
}

TEST_CASE("what is placed may use joints up, and joints outside the scope leave no load") {
  const Bar chord{RoundTube{76.1_mm, 5.0_mm}, material::s235h()}, post{RoundTube{42.4_mm, 4.0_mm}, material::s235h()};
  const auto ladder = [&](const Bar& bar) {
    return LadderGirder{
        .bays = 1, .bay_length = 0.5, .depth = 0.5, .chord = chord, .web = open(bar), .supports = cantilever()};
  };
  Terms terms;
  terms.basis = with_joints(0.0);
  const std::vector<Action> apart{point_load(ChordOf::top, 0.5, Vec3<>{0, 0, 1e3}),
                                  point_load(ChordOf::bottom, 0.5, Vec3<>{0, 0, -1e3})};
  const Analysis analysis{ladder(post)};
  const double all = Rater(analysis, terms).allowable(apart).factor;
  // 1.35 of what is placed and 1.5 of the load together make 1.5 times all
  const auto placed = [&](double share) {
    std::vector<Action> actions = apart;
    for (Action& action : actions) {
      auto& load = std::get<BasicChordPoint<>>(action);
      load.force = share * all * load.force;
    }
    return analysis.solve(std::vector<LoadCase>{{"placed", Nature::permanent, actions}});
  };
  const Cases half = placed(0.5), more = placed(1.2);
  CHECK(Rater(half, terms).allowable(apart).factor == Approx(all * (1.5 - 1.35 * 0.5) / 1.5).epsilon(1e-9));
  const Allowable none = Rater(more, terms).allowable(apart);
  CHECK(none.verdict == Verdict::nothing_left);
  CHECK(none.row.check == verify::Check::joint);
  CHECK(none.row.utilisation > 1.0);

  const Bar square{RectangularHollow{40.0_mm, 40.0_mm, 4.0_mm}, material::s235h()};
  const Analysis other{ladder(square)};
  const Allowable outside = Rater(other, terms).allowable(apart);
  CHECK(outside.verdict == Verdict::outside_scope);
  CHECK(outside.factor == 0.0);
}

TEST_CASE("joints on random girders: no load below the allowable one fails, and just above it one part does") {
  std::size_t rated = 0, by_joint = 0, by_weld = 0, fell = 0, outside = 0;
  for (std::uint64_t seed = 1; rated < 60; ++seed) {
    REQUIRE(seed < 600);
    Random r(seed);
    const Girder g = tube_girder(r);
    const Analysis analysis(g);
    Terms terms;
    terms.basis = with_joints(r.chance(0.6) ? r.in(0.003, 0.004) : 0.0);
    terms.set.permanent_favourable = terms.set.permanent_unfavourable;
    const Response first = analysis.solve(random_point_loads(r, g));
    const Allowable of_first = Rater(analysis, terms).allowable(first);
    INFO("seed " << seed << " " << of_first);
    outside += of_first.verdict == Verdict::outside_scope;
    if (!of_first.is_load()) continue;
    const PlacedAndLoad loads(r, first, of_first.factor, 0.5, [&] { return analysis.solve(random_point_loads(r, g)); });
    const Rater rater(loads.placed, terms);
    const Allowable a = rater.allowable(loads.unit);
    if (!a.is_load()) continue;
    ++rated;
    by_joint += a.verdict == Verdict::topic && a.row.check == verify::Check::joint;
    by_weld += a.verdict == Verdict::topic && a.row.check == verify::Check::weld;
    fell += falls_below(rater, loads.unit, a, 300);
    // the proof of all cases together, solved and combined anew, says the same, and what it finds worst
    loads.prove_beside(terms, a.factor, [&](const verify::Proof& proof, double share) {
      if (share > 0.9 && share < 1 && !a.jumps) CHECK(proof.worst().member == a.row.member);
    });
  }
  CHECK(outside < rated);
  CHECK(by_joint > 15);
  CHECK(by_weld > 0);
  CHECK(fell > 10);
}
