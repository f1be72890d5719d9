// SPDX-License-Identifier: MIT
// Chords whose cross members are too soft to hold them buckle over more than a bay: beside whole frames' eigenvalues.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/verify.hpp>

#include "support/dense_buckling.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;

constexpr std::size_t bays = 8;

Bar tube(double d, double t) { return {RoundTube{d, t}, material::s355h()}; }

Analysis ladder(const Face& web) {
  return Analysis{LadderGirder{.bays = bays,
                               .bay_length = 0.5,
                               .depth = 0.5,
                               .chord = tube(60.3_mm, 4.0_mm),
                               .web = web,
                               .supports = simply_supported()}};
}

/// Over which length a hinged column buckles at the force at which one compressed chord buckles in the ladder's plane.
/// Euler's theory knows no shear: the frame is made rigid against it.
double true_length(const Analysis& a, std::size_t chord) {
  const GirderModel& m = a.model();
  Frame f = m.frame;
  for (Member& bar : f.members) bar.section.shear_y = bar.section.shear_z = rigid_stiffness;
  f.supports.clear();
  for (std::size_t i = 0; i < f.nodes.size(); ++i) f.fix(i, {Motion::uy, Motion::rx, Motion::rz});
  f.fix(m.chord_node(0, 0), {Motion::uz});
  f.fix(m.chord_node(bays, 0), {Motion::uz});
  f.fix(m.chord_node(bays / 2, 0), {Motion::ux});
  std::vector<double> N(f.members.size(), 0.0);
  for (std::size_t b = 0; b < bays; ++b) N[m.chord_member(b, chord)] = -1.0;
  const FrameSection& s = f.members[m.chord_member(0, chord)].section;
  return 3.14159265358979 * std::sqrt(s.E * s.Iy / DenseBuckling(f, 3).critical_factor(N));
}

}  // namespace

TEST_CASE("soft cross members: no chord buckles over more than its system length, in zigzags and in equal diagonals") {
  const Bar brace = tube(33.7_mm, 2.6_mm);
  bool longer = false;
  for (const double d : {42.4_mm, 26.9_mm, 10.0_mm, 5.0_mm, 3.0_mm, 2.0_mm, 1.0_mm, 0.5_mm})
    for (const Face& web :
         {Face(braced(alternating, brace, tube(d, d / 10))), Face(braced(mirrored_towards, brace, tube(d, d / 10)))}) {
      const Analysis a = ladder(web);
      const auto lengths = verify::system_lengths(a);
      for (std::size_t chord = 0; chord < 2; ++chord) {
        const double L = true_length(a, chord);
        INFO("cross members of " << d << " m: chord " << chord << " buckles over " << L << " m");
        for (std::size_t b = 2; b + 2 < bays; ++b)
          CHECK(L <= lengths[a.model().chord_member(b, chord)].about_y * 1.0001);
        longer = longer || L > 0.75;  // a bay has 0.5
      }
    }
  CHECK(longer);
}

TEST_CASE("cross members that hold leave a chord its bay, soft ones more: by hand") {
  // E I = 210e9 x 281,729e-12 = 59,160 Nm2; the stout cross member has E A / L = 210e9 x 325.1e-6 / 0.5 = 1.37e8 N/m,
  // of which 2 x 4 pi2 E I / l3 = 3.74e7 would do; one of 5 mm with walls of 0.5 mm has 2.969e6 N/m: pi (8 x 59,160 x
  // 0.5 / (pi2 x 2.969e6))^(1/4) = 0.942 m
  const Bar brace = tube(33.7_mm, 2.6_mm);
  const Analysis stout = ladder(braced(alternating, brace, tube(42.4_mm, 2.6_mm)));
  CHECK(verify::system_lengths(stout)[stout.model().chord_member(3, 1)].about_y == Approx(0.5));
  const Analysis soft = ladder(braced(alternating, brace, tube(5.0_mm, 0.5_mm)));
  CHECK(verify::system_lengths(soft)[soft.model().chord_member(3, 1)].about_y == Approx(0.942).epsilon(1e-3));
  // softer still, it holds nothing: the girder's ends do
  const Analysis none = ladder(braced(alternating, brace, tube(1.0_mm, 0.1_mm)));
  CHECK(verify::system_lengths(none)[none.model().chord_member(3, 1)].about_y == Approx(4.0));
}

TEST_CASE("soft cross members in triangular and box girders: no chord buckles over more than its system length") {
  // A round chord takes the longer of its two. Whole frames on their supports; the bars at both ends are stout, as no
  // chord's end is a hold that might be soft. Two chords pushed together as well in zigzags; between equal diagonals
  // soft posts let such a pair shear or twist as a whole, which is no matter of system lengths.
  const Bar brace = tube(33.7_mm, 2.6_mm), chord = tube(60.3_mm, 4.0_mm);
  bool longer = false;
  const auto hold = [&](const Girder& g, double d, bool pairs) {
    const Analysis a{g};
    const GirderModel& m = a.model();
    Frame f = m.frame;
    for (Member& bar : f.members) {
      bar.section.shear_y = bar.section.shear_z = rigid_stiffness;
      const int station = f.nodes[bar.from].address.station;
      if (f.nodes[bar.to].address.station == station && (station == 0 || station == static_cast<int>(bays)))
        bar.section.A *= 1e4;
    }
    const DenseBuckling dense(f);
    const auto lengths = verify::system_lengths(a);
    const std::size_t chords = g.chords.size();
    for (const std::size_t c : {std::size_t{0}, chords - 1, chords, chords + 1}) {  // two alone, two with the next
      if (c >= chords && !pairs) continue;
      std::vector<double> N(f.members.size(), 0.0);
      for (std::size_t b = 0; b < bays; ++b) {
        N[m.chord_member(b, c % chords)] = -1.0;
        if (c >= chords) N[m.chord_member(b, (c + 1) % chords)] = -1.0;
      }
      const FrameSection& s = f.members[m.chord_member(0, 0)].section;
      const double L = 3.14159265358979 * std::sqrt(s.E * s.Iy / dense.critical_factor(N));
      INFO(chords << " chords, cross members of " << d << " m: chord " << c << " buckles over " << L << " m");
      for (std::size_t b = 2; b + 2 < bays; ++b) {
        const verify::SystemLength& is = lengths[m.chord_member(b, c % chords)];
        CHECK(L <= (is.about_y > is.about_z ? is.about_y : is.about_z) * 1.0001);
      }
      longer = longer || L > 0.75;
    }
  };
  for (const double d : {42.4_mm, 10.0_mm, 5.0_mm, 2.0_mm, 1.0_mm})
    for (const bool zigzag : {true, false}) {
      const Bar soft = tube(d, d / 10);
      const Face web = zigzag ? Face(braced(alternating, brace, soft)) : Face(braced(mirrored_towards, brace, soft));
      hold(TriangularGirder{.bays = bays,
                            .bay_length = 0.5,
                            .width = 0.5,
                            .depth = 0.5,
                            .chord = chord,
                            .faces = {.base = web, .left = web, .right = web},
                            .supports = simply_supported()}
               .girder(),
           d, zigzag);
      hold(BoxGirder{.bays = bays,
                     .bay_length = 0.5,
                     .width = 0.5,
                     .depth = 0.5,
                     .chord = chord,
                     .faces = {.top = web, .bottom = web, .left = web, .right = web},
                     .diaphragms = end_diaphragms(brace),
                     .supports = simply_supported()}
               .girder(),
           d, zigzag);
    }
  CHECK(longer);
}
