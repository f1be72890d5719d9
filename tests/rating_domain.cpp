// SPDX-License-Identifier: MIT
// Moment against shear of an open-faced girder: beside the portal's hand calculation, symmetric, around the origin.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>

#include <baywork/rating.hpp>

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using rating::MomentShearPoint;
using rating::Rater;
using rating::Verdict;

const double a = 0.5, h = 0.5;  // of a panel [m]

/// Chords in elastic bending alone (76.1 x 1.5 of S235 is of class 3: D/t = 50.7 lies between 50 and 90), posts far
/// stronger than they.
Bar slender_chord() { return {RoundTube{76.1_mm, 1.5_mm}, material::s235h()}; }
LadderGirder open_ladder(const Bar& chord) {
  return {.bays = 7,
          .bay_length = a,
          .depth = h,
          .chord = chord,
          .web = open(Bar{RoundTube{139.7_mm, 12.5_mm}, material::s355h()}),
          .supports = simply_supported()};
}

}  // namespace

TEST_CASE("the open panel by hand: N of the chords from M, bending V a/4 at their ends") {
  const Bar bar = slender_chord();
  const Analysis analysis{open_ladder(bar)};
  // system lengths but sideways: a ladder's chord is held there at its ends alone; here by what it carries
  rating::Terms terms;
  terms.basis.lengths.chord.about_z = 1.0 / 7.0;
  const auto curve = rating::moment_shear_domain(Rater(analysis, terms));
  REQUIRE(curve.size() == 33);

  // Plane sections: I_g = 2 I + A h^2/2, each chord has N = M (h/2) A/I_g and bends by M I/I_g with the girder; V/2 in
  // each chord with no moment in the middle of the panel bends it by V/2 a/2 at the panel's ends. There the two add.
  // EN 1993-1-1 6.2.1 (5), 6.3.1 and 6.3.3, all forces times 1.5.
  const double A = bar.section.area, I_own = bar.section.Iy, I_g = 2 * I_own + A * h * h / 2;
  const auto r = en1993::resistance(bar.section, bar.material);
  const auto b = en1993::buckling(r, bar.section, bar.material.E, a, a);
  for (const MomentShearPoint& p : curve) {
    INFO(p.at.moment << " Nm, " << p.at.shear << " N: " << p.allowable);
    CHECK(p.allowable.verdict == Verdict::member);
    CHECK(p.allowable.row.address.role == Role::chord);
    const double moment = 1.5 * std::abs(p.at.moment), shear = 1.5 * std::abs(p.at.shear);
    const double N = moment * h / 2 * A / I_g, M = moment * I_own / I_g + shear * a / 4;
    double most = 0;
    for (const double sign : {1.0, -1.0}) {
      const verify::SectionForces f{sign * N, shear / 2, 0, 0, 0, M};
      for (const double u :
           {en1993::axial(r, f.N).utilisation, en1993::bending(r, f).utilisation, en1993::shear(r, f).utilisation,
            en1993::bending_and_axial(r, f).utilisation, en1993::flexural_buckling(r, b, f.N).utilisation,
            f.N < 0 ? en1993::beam_column(r, b, f).utilisation : 0.0})
        most = u > most ? u : most;
    }
    CHECK(most == Approx(1.0).epsilon(1e-4));
  }
}

TEST_CASE("a domain is closed, symmetric where the girder is, and holds the origin and what lies within") {
  const Bar tube{RoundTube{60.3_mm, 5.0_mm}, material::en_aw_6082_t6()};
  const Bar post{RoundTube{48.3_mm, 4.0_mm}, material::en_aw_6082_t6()};
  const Analysis analysis{
      BoxGirder{.bays = 7,
                .bay_length = a,
                .width = h,
                .depth = h,
                .chord = tube,
                .faces = {.top = open(post), .bottom = open(post), .left = open(post), .right = open(post)},
                .supports = simply_supported()}};
  const Rater rater(analysis);
  const auto curve = rating::moment_shear_domain(rater, {.rays = 16});
  REQUIRE(curve.size() == 17);
  CHECK(curve.front().at.moment == curve.back().at.moment);
  CHECK(curve.front().at.shear == curve.back().at.shear);
  for (std::size_t i = 0; i < 16; ++i) {
    const auto &p = curve[i].at, &q = curve[(i + 8) % 16].at;
    CHECK(std::hypot(p.moment, p.shear) > 0.0);
    // turned by half a turn about the middle of the middle bay, and upside down, the bay is itself; only the supports
    // are not, on the lower chords
    CHECK(q.moment == Approx(-p.moment).epsilon(0.02));
    CHECK(q.shear == Approx(-p.shear).epsilon(0.02));
  }
  // shear takes from the moment: the curve lies inside the rectangle, and beyond the straight line at no sharp corner
  const double M0 = curve[0].at.moment, V0 = curve[4].at.shear;
  CHECK(M0 > 0.0);
  CHECK(V0 > 0.0);
  for (std::size_t i = 1; i < 4; ++i) {
    CHECK(curve[i].at.moment < M0 * (1 + 1e-9));
    CHECK(curve[i].at.shear < V0 * (1 + 1e-9));
  }
  CHECK_THROWS_AS(rating::moment_shear_domain(rater, {.bay = 7}), BadDescription);
  CHECK_THROWS_AS(rating::moment_shear_domain(rater, {.rays = 3}), BadDescription);
}

TEST_CASE("the forces set are those meant: M and V of the cut, on a cantilever too") {
  // 1 kN down at the end of a cantilever of 2 m, in the middle of its second bay of 0.5 m: V = P on the part before the
  // cut (its reactions push it up), M = -P (2 - 0.75)
  const Bar bar{RoundTube{60.3_mm, 5.0_mm}, material::s355h()};
  const Analysis analysis{
      LadderGirder{.bays = 4, .bay_length = a, .depth = h, .chord = bar, .web = open(bar), .supports = cantilever()}};
  const Response r = analysis.solve({point_load(ChordOf::top, 2.0, 1e3)});
  const rating::MomentShear s = rating::detail::moment_shear_at(r, 0.75, 0.3);
  CHECK(s.shear == Approx(1e3).epsilon(1e-9));
  CHECK(s.moment == Approx(-1250).epsilon(1e-9));
}
