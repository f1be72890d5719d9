// SPDX-License-Identifier: MIT
// The allowable-stress route in proofs, ratings and load tables: its rows recomputed from print, its scope, its welds.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/recomputed_rows.hpp"
#include "support/refused.hpp"

using namespace baywork;
using namespace baywork::literals;
using verify::Check;
using verify::Row;

namespace {

Bar us(double D, double t) { return {RoundTube{D, t}, material::us_6061_t6()}; }
Bar chord() { return us(60.3_mm, 5.0_mm); }
Bar cross() { return us(48.3_mm, 4.0_mm); }
Bar brace() { return us(26.9_mm, 3.2_mm); }

BoxGirder box(const Bar& c = chord(), std::size_t bays = 8) {
  const Face side = braced(alternating, brace(), cross());
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.6,
          .chord = c,
          .faces = {.top = open(cross()), .bottom = open(cross()), .left = side, .right = side},
          .supports = simply_supported()};
}
std::vector<LoadCase> loads(double size = 1.0) {
  return {
      LoadCase{"self-weight", Nature::permanent, {self_weight()}, {}},
      LoadCase{"screen",
               Nature::imposed,
               {point_load(ChordOf::bottom_left, 1.1, size * 4000.0), line_load({ChordOf::bottom_right}, size * 900.0)},
               {}},
      LoadCase{"wind", Nature::wind, {wind_on(Side::left, size * 400.0)}, {}}};
}

}  // namespace

TEST_CASE("every row by allowable stresses can be recomputed from what it prints") {
  const Analysis a{box()};
  const verify::Proof proof = verify::allowable_stress(a.solve(loads()), asce7::allowable_stress());
  std::set<Check> seen;
  for (const Row& row : proof.rows()) {
    const std::string text = verify::text(row);
    INFO(text);
    REQUIRE(row.check != Check::outside_scope);
    seen.insert(row.check);
    const Printed p = printed(text);
    const Recomputed r = recompute(p);
    CHECK(std::abs(r.value - p.result) <= 1.01 * r.slack);
    CHECK(r.slack <= 1e-3 * p.result);
    CHECK(row.utilisation == doctest::Approx(row.demand / row.resistance).epsilon(1e-12));
    CHECK(std::string(row.standard) == "Aluminum Design Manual 2020");
    CHECK(std::string(row.reason) == allowable::label);
  }
  CHECK(seen.size() == verify::n_member_checks);
  std::ostringstream out;
  out << proof;
  for (const char* s : {"ANSI E1.2", "Omega = 1.65", "1.95 of rupture", "0.85 of every strength for repeated use",
                        "Low confidence", "ASCE/SEI 7-05", "10,100 ksi"})
    CHECK_MESSAGE(has(out.str(), s), s);
}

TEST_CASE(
    "one chord by hand, from its forces to its row: 4 m, two point loads of 5 kN each on the lower chords at "
    "mid-span") {
  // Simple beam of 4 m: M = 10 · 4/4 = 10 kNm without self-weight; top chords 10/0.6/2 = 8.33 kN each at mid-span, less
  // what the chords carry by bending: the solver's N is taken, within 15 % of that. Bay 500 mm: kL/r = 500/19.63126 =
  // 25.4696; the bars' welds lie farther than 25 mm from the joints, so that the column counts as affected, F_cyw = 15
  // ksi: 45.10898 kN (clauses_allowable.cpp). Utilisation of E.2 = N/45.10898.
  const Analysis a{box()};
  const Response r =
      a.solve({point_load(ChordOf::bottom_left, 2.0, 5000.0), point_load(ChordOf::bottom_right, 2.0, 5000.0)});
  const verify::Proof proof = verify::allowable_stress(r);
  const std::size_t m = a.model().chord_member(3, a.girder().chord(ChordOf::top_left));
  const double N = r.chord(ChordOf::top_left).axial(3);
  CHECK(N < -0.85 * 8333);
  CHECK(N > -1.15 * 8333);
  bool met = false;
  for (const Row& row : proof.rows_of(m)) {
    if (row.check != Check::buckling) continue;
    met = true;
    CHECK(close(row.utilisation, -N / 45108.98, 1e-6));
    CHECK(std::string(row.clause) == "E.2");
  }
  CHECK(met);
}

TEST_CASE("welds: chords carry them inside their length, braces end at them") {
  const Analysis a{box()};
  const verify::Proof proof = verify::allowable_stress(a.solve(loads()), asce7::allowable_stress());
  // 26.9 x 3.2: A = pi 3.2 · 23.7 = 238.258 mm2; parent metal in the E.2 rows of all diagonals, F_cyw in those of
  // chords
  std::size_t chords = 0, diagonals = 0;
  for (const Row& row : proof.rows()) {
    if (row.check != Check::buckling) continue;
    const bool affected = has(verify::notes(row), "F_cyw = 103.421 MPa");
    if (row.address.role == Role::chord) {
      CHECK(affected);
      ++chords;
    } else if (row.address.role == Role::diagonal) {
      CHECK(!affected);
      CHECK(has(verify::notes(row), "F_cy = 241.317 MPa"));
      ++diagonals;
    }
  }
  CHECK(chords > 5);
  CHECK(diagonals > 5);
  // metal is affected within 1 in, not within EN 1999-1-1's 20 mm: 5.4 mm more on either side of a joint
  const auto en = verify::welded_ends(a), us_ends = verify::welded_ends(a, {}, allowable::weld_extent);
  const std::size_t m = a.model().chord_member(3, 0);
  CHECK(close(us_ends[m].start.reach - en[m].start.reach, 5.4_mm, 1e-9));
  CHECK(close(us_ends[m].start.length - en[m].start.length, 10.8_mm, 1e-9));
}

TEST_CASE("utilisations rise with the loads, and with a lesser factor of use") {
  const Analysis a{box()};
  const auto at = [&](double size, double use) {
    verify::Basis basis;
    basis.allowable.repeated_use = use;
    return verify::allowable_stress(a.solve(loads(size)), asce7::allowable_stress(), basis);
  };
  const verify::Proof once = at(1, 1), used = at(1, 0.85), twice = at(2, 1);
  REQUIRE(once.rows().size() == used.rows().size());
  for (std::size_t i = 0; i < once.rows().size(); ++i) {
    const Row &o = once.rows()[i], &u = used.rows()[i];
    if (o.check == Check::bending_and_axial)
      CHECK(u.utilisation > o.utilisation / 0.85 * (1 - 1e-12));  // the square of shear grows faster
    else
      CHECK(close(u.utilisation, o.utilisation / 0.85, 1e-9));
  }
  CHECK(twice.worst().utilisation > once.worst().utilisation);
  verify::Basis bad;
  for (const double use : {0.0, 1.2, std::nan("")}) {
    bad.allowable.repeated_use = use;
    CHECK(has(refused([&] { (void)verify::allowable_stress(a.solve(loads()), asce7::allowable_stress(), bad); }),
              "factor of repeated use"));
  }
  bad = {};
  bad.allowable.rupture = 0;
  CHECK(has(refused([&] { (void)verify::allowable_stress(a.solve(loads()), asce7::allowable_stress(), bad); }),
            "safety factor of rupture"));
}

TEST_CASE("outside the scope: steel, other shapes, thin walls; never a pass") {
  for (const Bar& c :
       {Bar{RoundTube{60.3_mm, 5.0_mm}, material::s235h()},
        Bar{RectangularHollow{60.0_mm, 60.0_mm, 4.0_mm}, material::us_6061_t6()}, us(101.6_mm, 2.0_mm)}) {
    const Analysis a{box(c)};
    const verify::Proof proof = verify::allowable_stress(a.solve(loads(0.01)), asce7::allowable_stress());
    CHECK(!proof.passes());
    CHECK(proof.outside_scope().size() == 32);  // four chords of eight bays
    CHECK(has(proof.verdict(), "not proved"));
    rating::Terms terms;
    terms.set = asce7::allowable_stress();
    terms.standards = verify::Standards::allowable_stress;
    CHECK(rating::Rater(a, terms).allowable({line_load({ChordOf::bottom_left}, 1.0)}).verdict ==
          rating::Verdict::outside_scope);
  }
}

TEST_CASE("sets and resistances of different methods are refused, the stability of the whole as well") {
  const Analysis a{box()};
  const Cases cases = a.solve(loads());
  CHECK(has(refused([&] { (void)verify::by_material(cases, asce7::allowable_stress()); }), "its loads are unfactored"));
  CHECK(has(refused([&] { (void)verify::allowable_stress(cases, en1990::ultimate()); }), "its loads are factored"));
  rating::Terms terms;
  terms.standards = verify::Standards::allowable_stress;
  CHECK(has(refused([&] { (void)rating::Rater(a, terms); }), "EN 1990 (6.10) ultimate: its loads are factored"));
  terms = {};
  terms.set = asce7::allowable_stress();
  CHECK(has(refused([&] { (void)rating::Rater(a, terms); }), "its loads are unfactored"));
  terms = {};
  terms.nature = Nature::accidental;  // EN 1990's ultimate set leaves accidents out: such a load would never be limited
  CHECK(has(refused([&] { (void)rating::Rater(a, terms); }), "its nature is accidental"));
  // partial factors beside unfactored loads would leave no safety: neither columns nor connectors are asked
  verify::Basis stability;
  stability.stability.checked = true;
  CHECK(has(refused([&] { (void)verify::allowable_stress(cases, asce7::allowable_stress(), stability); }),
            "the girder as a whole is to be checked for stability"));
  BoxGirder spliced = box();
  spliced.modules = {0,
                     {4},
                     BoltedEndPlate{.plate = 15_mm,
                                    .diameter = 150_mm,
                                    .bolt_circle = 110_mm,
                                    .bolts = 6,
                                    .bolt = metric_bolt(12_mm, BoltClass::c8_8),
                                    .hole = 13_mm,
                                    .throat = 4_mm,
                                    .plate_material = material::us_6061_t6()}};
  const Analysis of_spliced{spliced};
  const verify::Proof proof = verify::allowable_stress(of_spliced.solve(loads(0.1)), asce7::allowable_stress());
  CHECK(!proof.passes());
  CHECK(proof.outside_scope().size() == 4);
  CHECK(has(proof.verdict(), "allowable stresses are given for bars alone"));
}

TEST_CASE("rating by allowable stresses: the load found makes the proof just 1, by both searches") {
  rating::Terms terms;
  terms.set = asce7::allowable_stress();
  terms.standards = verify::Standards::allowable_stress;
  for (const double x : {0.4, 1.1, 2.0}) {
    const Analysis a{box()};
    const std::vector<LoadCase> placed{loads()[0], loads()[2]};
    const rating::Rater rater(a.solve(placed), terms);
    const Response unit = a.solve({point_load(ChordOf::bottom_left, x, 1000.0)});
    const rating::Allowable least = rater.allowable(unit), each = rater.allowable(unit, rating::Search::every_bar);
    REQUIRE(least.verdict == rating::Verdict::member);
    CHECK(close(least.factor, each.factor, 1e-9));
    std::vector<LoadCase> with = placed;
    with.push_back({"load", Nature::imposed, {point_load(ChordOf::bottom_left, x, 1000.0 * least.factor)}, {}});
    CHECK(close(verify::allowable_stress(a.solve(with), terms.set).worst().utilisation, 1.0, 1e-9));
    CHECK(std::string(least.row.standard) == "Aluminum Design Manual 2020");
    // a dense scan finds no crossing before
    for (int i = 1; i < 100; ++i) CHECK(rater.utilisation(unit, least.factor * i / 100.0) <= 1.0);
  }
}

TEST_CASE("the hand calculation beside a table, by this route") {
  // four chords 0.6 m apart in height, the column with its welds: 45.10898 kN (clauses_allowable.cpp). Plane sections
  // leave the chords' own bending its share: M = 2 N h (1 + r²/(h/2)²), r = 19.63126 mm; with a factor of use 0.9 that
  // much less
  const Analysis a{box()};
  const double M = 2 * 45108.98 * 0.6 * (1 + std::pow(19.63126 / 300, 2));
  verify::Basis basis;
  CHECK(close(rating::hand_capacity(a, basis, verify::Standards::allowable_stress).M, M, 1e-6));
  basis.use = 0.9;
  CHECK(close(rating::hand_capacity(a, basis, verify::Standards::allowable_stress).M, 0.9 * M, 1e-6));
}

TEST_CASE("a bar says that it is welded along, and its allowable stresses fall; wear keeps the welds") {
  // one line that holds 20 mm of a 60.3 x 5 tube, 1 in to both sides: (20 + 50.8) · 5 = 354 mm²
  const Bar railed = chord().welded_along({1, 20.0_mm});
  CHECK(close(allowable::affected_along(railed), 354e-6, 1e-12));
  CHECK(allowable::affected_along(chord()) == 0.0);
  CHECK(worn(railed, 0.1).along.lines == 1);
  const auto greatest = [](const Bar& diagonal) {
    const Face side = braced(alternating, diagonal, cross());
    BoxGirder g = box();
    g.faces.left = g.faces.right = side;
    const Analysis a{g};
    const Cases cases = a.solve(loads());
    const verify::Proof proof = verify::allowable_stress(cases, asce7::allowable_stress());
    double most = 0;
    for (const Row& r : proof.rows())
      if (r.address.role == Role::diagonal && r.check == Check::buckling) most = larger(most, r.utilisation);
    return most;
  };
  CHECK(greatest(brace().welded_along({1, 0.0})) > 1.05 * greatest(brace()));
}

TEST_CASE("the head of a load table names the route, its factors and its confidence") {
  rating::TableTerms t;
  t.terms.set = asce7::allowable_stress();
  t.terms.standards = verify::Standards::allowable_stress;
  t.terms.basis.use = 0.9;
  t.patterns = {rating::Pattern::uniform};
  std::ostringstream out;
  out << rating::load_table(
      std::vector<std::size_t>{8}, [](std::size_t bays) { return box(chord(), bays); }, t);
  for (const char* s :
       {"allowable stress design, ASCE/SEI 7-05", "allowable stresses, Aluminum Design Manual 2020 after ANSI E1.2",
        "Omega 1.65 and 1.95", "repeated use 0.85", "low confidence", "worn: 0.9 of every resistance"})
    CHECK_MESSAGE(has(out.str(), s), s);
  CHECK(!has(out.str(), "EN 1999-1-1"));
}
