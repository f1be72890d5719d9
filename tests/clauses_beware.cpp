// SPDX-License-Identifier: MIT
// Readings of the clauses that are easy, wide-spread and unsafe: one test each, which fails where one is used.
// (That chords of open faces never take 0.9 or 0.75 of their length is tested in clauses_choices.cpp.)
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/rows.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using verify::Check;
using verify::Proof;
using verify::Row;

const material::Material& alloy() {
  static const material::Material m = material::en_aw_6082_t6();
  return m;
}
Bar tube(double d, double t, const material::Material& m) { return {RoundTube{d * mm, t * mm}, m}; }

/// Two cantilever bars, each with the axial force N and the transverse F at its tip; the posts carry nothing.
LadderGirder cantilevers(const Bar& bar, const Bar& post, double length) {
  return {.bays = 1,
          .bay_length = length,
          .depth = 0.5,
          .chord = bar,
          .web = open(post, pinned_joint()),
          .supports = cantilever()};
}
std::vector<Action> tips(double x, double N, double F) {
  return {point_load(ChordOf::bottom, x, Vec3<>{N, 0, -F}), point_load(ChordOf::top, x, Vec3<>{N, 0, -F})};
}

}  // namespace

TEST_CASE("beware: the factor beside a weld has two branches, and the longer softened length is 30 % worse") {
  // EN 1999-1-1 6.2.9.3 (values from memory). Chord 60.3 x 5 (least width 60.3 mm). A post of 26.9 mm softens 26.9 + 40
  // = 66.9 mm of it, more than the width: rho_o,haz = 125/250 = 0.5 of A fo/gamma_M1. A bar of 20 mm softens 60.0 mm:
  // rho_u,haz fu/gamma_M2 = 185/1.25 = 148 of 250/1.1 = 227.27 N/mm2, 0.6512: 30 % more. A = 868.6504 mm2.
  const double A = 868.6503687, N = 30e3;
  const Analysis longer{cantilevers(tube(60.3, 5, alloy()), tube(26.9, 3.2, alloy()), 0.8)};
  const Analysis local{cantilevers(tube(60.3, 5, alloy()), tube(20, 3, alloy()), 0.8)};
  const std::size_t chord = longer.model().chord_member(0, 0);
  CHECK(verify::welded_ends(longer)[chord].start.length == Approx(66.9 * mm));
  CHECK(verify::welded_ends(local)[chord].start.length == Approx(60.0 * mm));
  const double of_longer = utilisation(verify::en1999(longer.solve(tips(0.8, N, 0))), chord, Check::axial);
  const double of_local = utilisation(verify::en1999(local.solve(tips(0.8, N, 0))), chord, Check::axial);
  CHECK(of_longer == Approx(N / (A * 0.5 * 250 / 1.1)).epsilon(1e-6));
  CHECK(of_local == Approx(N / (A * 185 / 1.25)).epsilon(1e-6));
  CHECK(of_longer / of_local == Approx(1.3024).epsilon(1e-6));
  // braces at 45 degrees on a chord nearly always pass the width: 26.9 sqrt(2) + 40 = 78 > 60.3
  CHECK(26.9 * std::sqrt(2.0) + 40 > 60.3);
  // two welds that are local each, but whose softened lengths meet, are one long one
  const Analysis stub{cantilevers(tube(60.3, 5, alloy()), tube(20, 3, alloy()), 0.05)};
  CHECK(utilisation(verify::en1999(stub.solve(tips(0.05, N, 0))), chord, Check::axial) ==
        Approx(N / (A * 0.5 * 250 / 1.1)).epsilon(1e-6));
}

TEST_CASE("beware: punching, not the chord's face, governs the moments of thin braces") {
  // EN 1993-1-8 Tables 7.2 and 7.5 (values from memory), S235, chord 60 x 4 with a brace of 30 mm, by hand: face M_ip =
  // 749.1 Nm, M_op = 511.9 Nm, punching 488.4 Nm for both.
  const verify::TubeJoint j{.d0 = 60 * mm, .t0 = 4 * mm, .d1 = 30 * mm, .t1 = 3 * mm};
  const en1993::JointResistance r = en1993::joint_resistance(j, {}, 235 * MPa, 235 * MPa);
  CHECK(close(r.M_ip_Rd, 488.438, 1e-5));
  CHECK(close(r.M_op_Rd, 488.438, 1e-5));
  CHECK(r.M_ip_Rd < 0.66 * r.M_ip_face);
  CHECK(en1993::joint_in_plane(r, 500.0).utilisation > 1.0);
  // the aluminium joint takes the same branch
  const en1999::JointMetal metal{125 * MPa, 185 * MPa, 250 * MPa, 250 * MPa};
  const en1993::JointResistance light = en1999::joint_resistance(j, {}, metal);
  CHECK(light.M_ip_Rd == light.M_ip_punching);
  CHECK(light.M_ip_Rd < light.M_ip_face);
}

TEST_CASE("beware: the member formula at a welded end is not the section formula") {
  // EN 1999-1-1 6.3.3.1 at x_s = 0 has chi omega_x = omega_0, but keeps the exponent 0.8, where 6.2.9.3 has 1.3. Tube
  // 60 x 4, N = -50 kN, M = 0.8 kNm, omega_0 = 0.5, by hand: section (50/79.968)^1.3 + (0.8/1.42788)^1.02 = 1.0969;
  // member at its end (50/79.968)^0.8 + (0.8/2.85576)^1.02/0.5 = 1.2330; member in its middle, 0.5 m long, unwelded:
  // 0.6976.
  const SectionData<double> s = RoundTube{60 * mm, 4 * mm}.data();
  const en1999::BarResistance r = en1999::resistance(s, alloy());
  const en1999::Buckling b = en1999::buckling(r, s, 70e9, 0.5, 0.5);
  const verify::SectionForces f{-50e3, 0, 0, 0, 800, 0};
  const double section = en1999::bending_and_axial(r, f, en1999::Softening::beyond_width).utilisation;
  const double at_end = en1999::beam_column(r, b, f, {0.5, 0, 0}).utilisation;
  const double unwelded = en1999::beam_column(r, b, f).utilisation;
  CHECK(close(section, 1.0969, 1e-4));
  CHECK(close(at_end, 1.2330, 1e-4));
  CHECK(close(unwelded, 0.6976, 1e-4));
  // who takes the member formula with the moment in the middle alone passes a bar whose welded end fails
  CHECK((unwelded < 1.0 && section > 1.0));
  // in tension the member formula sees no axial force at all: the section's must be asked
  const verify::SectionForces pulled{79e3, 0, 0, 0, 100, 0};
  CHECK(en1999::beam_column(r, b, pulled, {0.5, 0, 0}).utilisation < 0.1);
  CHECK(en1999::bending_and_axial(r, pulled, en1999::Softening::beyond_width).utilisation > 1.0);
  // a proof asks both, at the welded end too: a cantilever 60 x 4 with posts that soften 88.3 mm of it
  const Analysis a{cantilevers(tube(60, 4, alloy()), tube(48.3, 4, alloy()), 0.5)};
  const std::size_t chord = a.model().chord_member(0, 0);
  const Proof p = verify::en1999(a.solve(tips(0.5, -50e3, 1600)));
  for (const Check c : {Check::bending_and_axial, Check::beam_column}) {
    bool there = false;
    for (const Row& row : p.rows())
      there = there || (row.member == chord && row.check == c && row.softened && row.x < 0.05);
    CHECK(there);
  }
  CHECK(utilisation(p, chord, Check::bending_and_axial) == Approx(1.0969).epsilon(1e-4));
  CHECK(utilisation(p, chord, Check::beam_column) >= 1.2330 * (1 - 1e-4));
}

TEST_CASE("beware: TIG lowers what is left beside a weld, and reaches farther") {
  // EN 1999-1-1 Table 3.2b, footnote (value from memory): walls up to 6 mm 0.8 times fo,haz and fu,haz; extent 30 mm.
  const material::Material mig = material::welded_by(alloy(), material::Welding::mig);
  const material::Material tig = material::welded_by(alloy(), material::Welding::tig);
  const Analysis by_mig{cantilevers(tube(60.3, 5, mig), tube(48.3, 4, mig), 0.8)};
  const Analysis by_tig{cantilevers(tube(60.3, 5, tig), tube(48.3, 4, tig), 0.8)};
  const std::size_t chord = by_mig.model().chord_member(0, 0);
  const Proof m = verify::en1999(by_mig.solve(tips(0.8, -20e3, 300))),
              t = verify::en1999(by_tig.solve(tips(0.8, -20e3, 300)));
  for (const Check c : {Check::axial, Check::bending, Check::shear, Check::buckling})
    CHECK(utilisation(t, chord, c) == Approx(utilisation(m, chord, c) / 0.8).epsilon(1e-6));
  CHECK(utilisation(t, chord, Check::bending_and_axial) > 1.25 * utilisation(m, chord, Check::bending_and_axial));
  CHECK(utilisation(t, chord, Check::beam_column) > 1.05 * utilisation(m, chord, Check::beam_column));
  CHECK(verify::welded_ends(by_tig)[chord].start.reach ==
        Approx(verify::welded_ends(by_mig)[chord].start.reach + 10 * mm));
  // a welding process that is not said is MIG, and the proof says so
  const Analysis unsaid{cantilevers(tube(60.3, 5, alloy()), tube(48.3, 4, alloy()), 0.8)};
  const Proof u = verify::en1999(unsaid.solve(tips(0.8, -20e3, 300)));
  CHECK(utilisation(u, chord, Check::axial) == utilisation(m, chord, Check::axial));
  bool said = false;
  for (const std::string& s : u.assumptions())
    said = said || s.find("MIG where the material does not say") != std::string::npos;
  CHECK(said);
}

TEST_CASE("beware: loads between the joints of neighbouring panels double the moment at the joint between them") {
  // A chord as an endless beam over its joints, one span a loaded with P in its middle: each end is held by 2 sqrt(3)
  // EI/a of the rest against 2 EI/a of its own, so of the fixed-end moment P a/8 the share sqrt(3)/(1 + sqrt(3))
  // remains: 0.0793 P a. The spans on both sides loaded: twice that, 0.1585 P a (hand calculation). A table or a proof
  // that looks at one loaded panel alone misses half.
  const double share = std::sqrt(3.0) / (1 + std::sqrt(3.0)) / 8;
  CHECK(close(share, 0.07925, 1e-3));
  // a web that hardly gives, its posts pinned in its plane: the chord alone turns over its joints
  const Bar chord = tube(60.3, 5, alloy()), stiff = tube(114.3, 10, alloy());
  auto web = braced(alternating, stiff, stiff);
  web.joint.in_plane = 0.0;
  const Analysis a{LadderGirder{
      .bays = 24, .bay_length = 0.5, .depth = 0.5, .chord = chord, .web = web, .supports = simply_supported()}};
  const double P = 1000, s = 0.5;
  // a load in the middle of a bay, less the same shared by the bay's joints: what bends the chord between them
  const auto bend = [&](std::initializer_list<int> bays) {
    std::vector<Action> between, at_joints;
    for (const int bay : bays) {
      between.push_back(point_load(ChordOf::top, (bay + 0.5) * s, P));
      at_joints.push_back(point_load(ChordOf::top, bay * s, P / 2));
      at_joints.push_back(point_load(ChordOf::top, (bay + 1) * s, P / 2));
    }
    const Response with = a.solve(between), without = a.solve(at_joints);
    const std::size_t m = a.model().chord_member(11, 1);
    REQUIRE(a.model().girder.chords[1].name == "top");
    return with.member(m).forces_at(s, CutSide::before).My - without.member(m).forces_at(s, CutSide::before).My;
  };
  const double one = bend({11}), other = bend({12}), both = bend({11, 12});
  CHECK(std::fabs(one) == Approx(share * P * s).epsilon(0.03));
  CHECK(std::fabs(other) == Approx(std::fabs(one)).epsilon(0.02));
  CHECK(both == Approx(one + other).epsilon(1e-6));
  CHECK(std::fabs(both) == Approx(2 * share * P * s).epsilon(0.03));
  // and the proof of the chord beside that joint takes the doubled moment
  const Response two = a.solve({point_load(ChordOf::top, 11.5 * s, P), point_load(ChordOf::top, 12.5 * s, P)});
  const std::size_t m = a.model().chord_member(11, 1);
  const double M = std::fabs(two.member(m).forces_at(s, CutSide::before).My);
  const en1999::BarResistance r = en1999::resistance(chord.section, chord.material, {}, en1999::Welded::yes);
  CHECK(utilisation(verify::en1999(two), m, Check::bending) >=
        M / en1999::bending_resistance(r, en1999::Softening::beyond_width, true) * (1 - 1e-9));
}
