// SPDX-License-Identifier: MIT
// Welds across bars between their ends: where metal is softened, which forces meet it, and where it lies on the wave.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/girder/worn.hpp>
#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/recomputed_rows.hpp"
#include "support/refused.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using verify::Check;
using verify::Row;

Bar tube(double D, double t) { return {RoundTube{D * mm, t * mm}, material::en_aw_6082_t6()}; }

/// Four bays of 2 m.
BoxGirder box() {
  const Bar cross = tube(48.3, 4), brace = tube(42.4, 3.2);
  const auto side = braced(alternating, brace, cross);
  return {.bays = 4,
          .bay_length = 2.0,
          .width = 0.8,
          .depth = 0.8,
          .chord = tube(60.3, 5),
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .supports = simply_supported()};
}
Row greatest(const verify::Proof& proof, std::size_t member, Check check) {
  for (const Row& r : proof.rows())
    if (r.member == member && r.check == check) return r;
  FAIL("no such row");
  return {};
}

}  // namespace

TEST_CASE("a clamp plate's welds soften what it holds and b_haz beside it, in the bays they reach") {
  // MIG, wall of 5 mm: b_haz = 20 mm (EN 1999-1-1:2007 6.1.6.3, value from memory). A plate of 50 mm: 25 + 20 = 45 mm
  // to both sides. At 2.03 m of a chord with joints at 0, 2, 4 ... m: 30 mm into the second bay, and 15 mm of it in the
  // first, whose own x is then 2.03.
  BoxGirder g = box();
  g.chord = g.chord.welded_across({{3.1, 50 * mm}, {2.03, 50 * mm}});
  const Analysis a{g};
  const std::vector<verify::WeldedEnds> ends = verify::welded_ends(a);
  const auto& second = ends[a.model().chord_member(1, 0)].across;
  REQUIRE(second.size() == 2);
  CHECK(close(second[0].at, 1.1, 1e-12));
  CHECK(close(second[0].reach, 45 * mm, 1e-12));
  CHECK(close(second[1].at, 0.03, 1e-9));
  const auto& first = ends[a.model().chord_member(0, 0)].across;
  REQUIRE(first.size() == 1);
  CHECK(close(first[0].at, 2.03, 1e-12));
  CHECK(ends[a.model().chord_member(2, 0)].across.empty());
  // allowable stresses: 1 in instead of b_haz
  CHECK(close(verify::welded_ends(a, {}, allowable::weld_extent)[a.model().chord_member(1, 0)].across[0].reach,
              50.4 * mm, 1e-12));
  // steel is not softened
  BoxGirder steel = box();
  steel.chord = Bar{RoundTube{60.3_mm, 5.0_mm}, material::s355h()}.welded_across({{3.1, 50 * mm}});
  const Analysis of_steel{steel};
  CHECK(verify::welded_ends(of_steel)[of_steel.model().chord_member(1, 0)].across.empty());
}

TEST_CASE("the section beside a weld across answers for the forces that are there, by the length that is softened") {
  // A cross member hinged at both ends against bending down, 0.8 m, with 6 kN in its middle: M = 6 · 0.8/4 = 1.2 kNm.
  // Tube 48.3 x 4 of 6082-T6 (250, 290, 125, 185 MPa; Table 3.2b, values from memory): W_el = 5.70, W_pl = 7.87 cm3
  // (EN 10210-2). beta = 3 sqrt(44.3/4) = 9.98, class 2 with welds: M_o,Rd = 7.87 · 250/1.1 = 1.78864 kNm, M_u,Rd =
  // 5.70 · 185/1.25 = 0.8436 kNm, the lesser at a weld.
  // Softened length of a lug of 10 mm: 10 + 2 · 20 = 50 mm, longer than the tube is wide: omega_0 = 125/250 by 6.2.9.3
  // (2); of 5 mm: 45 mm, omega_0 = (185/1.25)/(250/1.1) = 0.6512 by 6.2.9.3 (1).
  const Bar plain = tube(48.3, 4);
  const auto row_of = [&](const Bar& bar, Check check) {
    BoxGirder g = box();
    g.faces.bottom = open(bar, semi_rigid_joint(rigid_stiffness, 0.0));
    const Analysis a{g};
    const Response r = a.solve({cross_member_load(Side::bottom, 2, 0.5, 6.0_kN)});
    const std::size_t m = a.model().faces[a.girder().face(Side::bottom)].cross_members[2].front();
    const CutForces f = r.member(m).forces(fraction{0.5});
    CHECK(close(std::hypot(f.My, f.Mz), 1200.0, 1e-6));
    CHECK(std::abs(f.N) < 200.0);
    const Row row = greatest(verify::by_material(r), m, check);
    recompute_row(row);
    return row;
  };
  CHECK(close(row_of(plain, Check::bending).utilisation, 1.2 / 1.78864, 2e-3));
  const Row lug = row_of(plain.welded_across({{0.4, 10 * mm}}), Check::bending);
  CHECK(lug.softened);
  CHECK(close(lug.x, 0.4, 1e-9));
  CHECK(close(lug.utilisation, 1.2 / 0.8436, 2e-3));
  // N of less than 0.2 kN adds at most (0.2/(0.5 · 126))^1.3 = 0.0006
  const double wide = row_of(plain.welded_across({{0.4, 10 * mm}}), Check::bending_and_axial).utilisation;
  const double narrow = row_of(plain.welded_across({{0.4, 5 * mm}}), Check::bending_and_axial).utilisation;
  CHECK(close(wide, std::pow(1.2 / (0.5 * 1.78864), 1.02), 3e-3));
  CHECK(close(narrow, std::pow(1.2 / (0.6512 * 1.78864), 1.02), 3e-3));
  // at 0.2 m the moment is half as great, and the middle has parent metal: 1.2 · 0.225/0.4 at 0.2 + 0.025 m
  const Row aside = row_of(plain.welded_across({{0.2, 10 * mm}}), Check::bending);
  CHECK(close(aside.x, 0.225, 1e-9));
  CHECK(close(aside.utilisation, 1.2 * 0.225 / 0.4 / 0.8436, 2e-3));
}

TEST_CASE("a weld across a pinned bar takes its place on the buckling wave") {
  // EN 1999-1-1 6.3.3.3 (2), value from memory: omega_x = omega_0/(chi + (1 - chi) sin(pi x_s/l_c)), x_s where softened
  // metal comes nearest to the middle of the wave. A brace 42.4 x 3.2, sqrt(2² + 0.8²) = 2.154066 m long: I = 7.62 cm4,
  // A = 3.94 cm2 (EN 10210-2), N_cr = pi² 70 GPa · 7.62/2.154066² = 11.3458 kN, lambda = sqrt(394 · 250/11345.8)
  // = 2.94646, phi = 0.5 (1 + 0.2 (2.94646 - 0.1) + 2.94646²) = 5.12546, chi = 1/(phi + sqrt(phi² - lambda²)) = 0.107304.
  const double L = std::sqrt(4.64), chi = 0.107304;
  const auto row_of = [&](const std::vector<WeldAcross>& welds) {
    BoxGirder g = box();
    const Face side = braced(alternating, tube(42.4, 3.2).welded_across(welds), tube(48.3, 4));
    g.faces.left = g.faces.right = side;
    const Analysis a{g};
    const Response r = a.solve({line_load({ChordOf::top_left, ChordOf::top_right}, 200.0)});
    const verify::Proof proof = verify::by_material(r);
    for (const Row& row : proof.rows())
      if (row.check == Check::buckling && row.address.role == Role::diagonal) {
        recompute_row(row);
        CHECK(close(r.analysis().axes(row.member).length, L, 1e-9));
        return std::pair(row, -r.member(row.member).forces(fraction{0.5}).N);
      }
    FAIL("no compressed brace");
    return std::pair(Row{}, 0.0);
  };
  const auto [none, N] = row_of({});
  const double N_c = 394.0 * 250.0 / 1.1;  // N
  // its own ends are softened, but lie at the ends of the wave: the parent metal's N_b governs
  CHECK(close(none.utilisation, N / (chi * N_c), 0.01));
  // 0.6 m from the start, 40 mm wide: softened to 0.6 + 0.02 + 0.02 m, over 80 mm > 42.4 mm: omega_0 = 0.5
  const auto [quarter, N_1] = row_of({{0.6, 40 * mm}});
  CHECK(close(N_1, N, 1e-6));
  CHECK(quarter.softened);
  CHECK(close(quarter.x, 0.64, 1e-9));
  const double omega_x = 0.5 / (chi + (1 - chi) * std::sin(pi * 0.64 / L));
  CHECK(close(quarter.utilisation / none.utilisation, 1.0 / omega_x, 2e-3));
  // in the middle it is omega_0 itself; across the middle off centre as well
  for (const double at : {L / 2, L / 2 + 0.03})
    CHECK(close(row_of({{at, 40 * mm}}).first.utilisation / none.utilisation, 2.0, 2e-3));
}

TEST_CASE("parts of softened metal that meet count as longer than the bar is wide") {
  using en1999::Softening;
  const auto of = [](double l) {
    return l <= 0.0 ? Softening::none : l <= 0.06 ? Softening::within_width : Softening::beyond_width;
  };
  verify::WeldedEnds ends;
  ends.start = {0.03, 0.05};
  ends.end = {0.03, 0.05};
  ends.across = {{0.5, 0.025}};
  const verify::detail::SoftenedParts apart(ends, 1.0, of);
  CHECK(apart.at(0.0) == Softening::within_width);
  CHECK(apart.at(0.031) == Softening::none);
  CHECK(apart.at(0.475) == Softening::within_width);
  CHECK(apart.at(0.526) == Softening::none);
  CHECK(apart.at(0.98) == Softening::within_width);
  CHECK(apart.weakest().count == 1);
  const verify::Skipped plain = apart.not_softened();
  CHECK(close(plain.to - plain.from, 0.445, 1e-6));  // from 0.03 to 0.475, or as far behind
  ends.across = {{0.05, 0.025}, {0.5, 0.025}, {0.54, 0.025}, {0.7, 0.04}};
  const verify::detail::SoftenedParts met(ends, 1.0, of);
  CHECK(met.at(0.0) == Softening::beyond_width);  // the joint's reaches 0.03, the lug's begins at 0.025
  CHECK(met.at(0.07) == Softening::beyond_width);
  CHECK(met.at(0.48) == Softening::beyond_width);
  CHECK(met.at(0.56) == Softening::beyond_width);
  CHECK(met.at(0.7) == Softening::beyond_width);  // 80 mm by itself
  CHECK(met.at(0.98) == Softening::within_width);
  CHECK(met.weakest().count == 2);
  CHECK(met.not_softened().from > 0.075);
  CHECK(met.not_softened().to < 0.475);
}

TEST_CASE("allowable stresses: a column with a weld across it counts as affected") {
  // ADM 2020 I E.2 b, value from memory: a weld farther than 0.05 L from the ends
  const auto buckling = [](const std::vector<WeldAcross>& welds) {
    const auto us = [](double D, double t) { return Bar{RoundTube{D * mm, t * mm}, material::us_6061_t6()}; };
    BoxGirder g = box();
    g.chord = us(60.3, 5);
    const Bar cross = us(48.3, 4);
    const Face side = braced(alternating, us(42.4, 3.2).welded_across(welds), cross);
    g.faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side};
    const Analysis a{g};
    const Cases cases =
        a.solve(std::vector<LoadCase>{{"deck", Nature::imposed, {line_load({ChordOf::top_left}, 100.0)}}});
    const verify::Proof proof = verify::allowable_stress(cases, asce7::allowable_stress());
    for (const Row& row : proof.rows())
      if (row.check == Check::buckling && row.address.role == Role::diagonal) return verify::notes(row);
    FAIL("no compressed brace");
    return std::string{};
  };
  CHECK(has(buckling({}), "F_cy ="));
  CHECK(has(buckling({{0.1, 0.0}}), "F_cy ="));  // 0.1 m < 0.05 · 2.15 m
  CHECK(has(buckling({{0.12, 0.0}}), "F_cyw ="));
  CHECK(has(buckling({{1.0, 20 * mm}}), "F_cyw ="));
}

TEST_CASE("welds across bars: told, kept by wear, and refused where the bar is not") {
  const Bar lugged = tube(60.3, 5).welded_across({{3.1, 50 * mm}, {5.0, 0.0}});
  CHECK(has(lugged.text(), "welds across it at 3.1 m, 5 m"));
  CHECK(worn(lugged, 0.1).across.size() == 2);
  CHECK_THROWS_AS((void)lugged.welded_across({{-0.1, 0.0}}), BadDescription);
  CHECK_THROWS_AS((void)lugged.welded_across({{0.1, -0.01}}), BadDescription);
  CHECK_THROWS_AS((void)lugged.welded_across({{std::nan(""), 0.0}}), BadDescription);
  const auto proof_of = [](const BoxGirder& g) {
    const Analysis a{g};
    return verify::by_material(a.solve({self_weight()}));
  };
  BoxGirder g = box();
  g.chord = lugged;
  const verify::Proof proof = proof_of(g);
  bool said = false;
  for (const std::string& s : proof.assumptions()) said = said || has(s, "Welds across bars");
  CHECK(said);
  g.chord = tube(60.3, 5).welded_across({{8.1, 0.0}});
  CHECK(has(refused([&] { (void)proof_of(g); }), "chord: a weld across it is at 8.1 m, but it is 8 m long"));
  g.chord = tube(60.3, 5);
  g.faces.top = open(tube(48.3, 4).welded_across({{0.9, 0.0}}));
  CHECK(has(refused([&] { (void)proof_of(g); }), "a weld across it is at 0.9 m, but it is 0.8 m long"));
}
