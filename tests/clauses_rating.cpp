// SPDX-License-Identifier: MIT
// A basis with other choices and with slender sections is rated as it is proved: no load below the allowable one fails.
#include <vector>

#include <doctest/doctest.h>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"

namespace {

using namespace baywork;
using rating::Allowable;
using rating::Rater;
using rating::Terms;
using rating::Verdict;

BoxGirder box(const Bar& chord, const Bar& cross, const Bar& brace, bool open_top) {
  const Face side = braced(alternating, brace, cross);
  const Face top = open_top ? Face{open(cross)} : side;
  return {.bays = 4,
          .bay_length = 0.6,
          .width = 0.5,
          .depth = 0.5,
          .chord = chord,
          .faces = {.top = top, .bottom = top, .left = side, .right = side},
          .supports = simply_supported()};
}
Bar tube(double d, double t, const material::Material& m) { return {RoundTube{d * mm, t * mm}, m}; }

/// `each`: also beside a search that follows every bar, which takes its time.
Allowable checked_by_scan(const BoxGirder& girder, const verify::Basis& basis, bool each = false) {
  const Analysis analysis{girder};
  Terms terms;
  terms.basis = basis;
  const Cases placed = analysis.solve(std::vector<LoadCase>{{"self-weight", Nature::permanent, {self_weight()}}});
  const Rater rater(placed, terms);
  const Response unit = analysis.solve({point_load(ChordOf::bottom_left, 0.9, 1.0), wind_on(Side::left, 0.3)});
  const Allowable a = rater.allowable(unit);
  REQUIRE(a.verdict == Verdict::member);
  if (each) CHECK(rater.allowable(unit, rating::Search::every_bar).factor == doctest::Approx(a.factor).epsilon(1e-9));
  for (int i = 1; i <= 60; ++i) CHECK(rater.utilisation(unit, a.factor * i / 60.0 * (1 - 1e-9)) <= 1.0);
  CHECK(rater.utilisation(unit, a.factor * (1 + 1e-6)) > 1.0);
  return a;
}

}  // namespace

TEST_CASE("allowable loads under other choices") {
  const material::Material alloy = material::en_aw_6082_t6(), steel = material::s355h();
  const BoxGirder light = box(tube(76.1, 4, alloy), tube(48.3, 4, alloy), tube(26.9, 3.2, alloy), false);
  const BoxGirder heavy = box(tube(60.3, 4, steel), tube(48.3, 4, steel), tube(26.9, 3.2, steel), true);
  verify::Basis on_wave, literal, rising, table;
  on_wave.choices.welds = verify::WeldsOnWave::where_they_are;
  literal.choices.round = en1999::RoundForm::components;
  rising.choices.axial_exponent = en1999::AxialExponent::by_chi;
  table.choices.moment_factors = verify::MomentFactorRule::table;
  table.lengths.rule = verify::LengthRule::code;
  const double usual = checked_by_scan(light, {}).factor, of_steel = checked_by_scan(heavy, {}).factor;
  CHECK(checked_by_scan(light, on_wave).factor >= usual * (1 - 1e-9));
  CHECK(checked_by_scan(light, literal).factor <= usual * (1 + 1e-9));
  CHECK(checked_by_scan(light, rising).factor >= usual * (1 - 1e-9));
  CHECK(checked_by_scan(heavy, table, true).factor >= of_steel * (1 - 1e-9));
}

TEST_CASE("allowable loads of slender sections, and of a chord with a rail") {
  const material::Material alloy = material::en_aw_6082_t6(),
                           hollow = material::en_aw_6082_t6(material::Product::hollow_extrusion),
                           steel = material::s355h();
  const Bar thin_steel{RectangularHollow{100 * mm, 60 * mm, 2 * mm}, steel};
  const Bar thin_alloy{RectangularHollow{100 * mm, 60 * mm, 2 * mm}, hollow};
  CHECK(en1993::resistance(thin_steel.section, steel).class_N == 4);
  CHECK(en1999::resistance(thin_alloy.section, hollow).class_N == 4);
  const Bar cross{RectangularHollow{50 * mm, 40 * mm, 3 * mm}, steel};
  checked_by_scan(box(thin_steel, cross, tube(26.9, 3.2, steel), true), {});
  checked_by_scan(box(thin_alloy, tube(48.3, 4, alloy), tube(26.9, 3.2, alloy), true), {});
  const Bar plain = tube(76.1, 4, alloy), railed = plain.welded_along({.lines = 1, .width = 10 * mm});
  const double without = checked_by_scan(box(plain, tube(48.3, 4, alloy), tube(26.9, 3.2, alloy), true), {}).factor;
  const double with = checked_by_scan(box(railed, tube(48.3, 4, alloy), tube(26.9, 3.2, alloy), true), {}).factor;
  CHECK(with <= without * (1 + 1e-9));
}
