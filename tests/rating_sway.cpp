// SPDX-License-Identifier: MIT
// Stands out of plumb inside an allowable load: beside loads that lean by themselves, and a dense scan and proofs.
#include <doctest/doctest.h>

#include <cstddef>
#include <cstdint>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/load_scan.hpp"
#include "support/small_box.hpp"
#include "support/varied_frames.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using rating::Allowable;
using rating::Rater;
using rating::Terms;
using varied::Random;

/// The other loads lean by this by themselves: h = 4 m, m = 1, 1/200 (EN 1993-1-1:2005 5.3.2 (3), values from memory).
constexpr double phi = 1.0 / 200;
const verify::InitialSway stands{4.0, 1};

/// A screen's weight along the lower chords and a load at a place, both leaning by a share of themselves.
LoadCase placed_leaning(const Vec3<>& by) {
  return {"screen", Nature::permanent,
          {line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 400.0 * (Vec3<>{0, 0, -1} + by),
                     400.0 * (Vec3<>{0, 0, -1} + by))}};
}
std::vector<Action> leaning(const Vec3<>& by) {
  return {point_load(ChordOf::top_right, 1.3, 1e3 * (Vec3<>{0.02, 0.1, -1} + by)),
          point_load(ChordOf::bottom_left, 2.0, 1e3 * (Vec3<>{0, -0.05, 0.2} - 0.2 * by))};
}

std::vector<Action> random_load(Random& r, const Girder& g) {
  std::vector<Action> out;
  for (std::size_t i = 0, n = 1 + r.below(2); i < n; ++i)
    out.push_back(point_load(ChordRef(r.below(g.chords.size())), r.in(0.1, 0.9) * g.span(),
                             Vec3<>{r.in(-0.3, 0.3), r.in(-0.3, 0.3), r.in(-1, 0.4)}));
  if (r.chance(0.3)) out.push_back(line_load({ChordRef(r.below(g.chords.size()))}, r.in(0, 1)));
  return out;
}

}  // namespace

TEST_CASE("an allowable load with initial sway is the least of five whose loads lean by themselves") {
  const Analysis analysis{stiff_ended_box(material::s355h(), 8)};
  double least = 1e300;
  for (const Vec3<>& d : {Vec3<>{}, Vec3<>{0, 1, 0}, Vec3<>{0, -1, 0}, Vec3<>{1, 0, 0}, Vec3<>{-1, 0, 0}}) {
    const Cases there = analysis.solve(std::vector<LoadCase>{placed_leaning(phi * d)});
    const Allowable a = Rater(there, terms_with({true})).allowable(leaning(phi * d));
    REQUIRE(a.is_load());
    least = a.factor < least ? a.factor : least;
  }
  const Cases there = analysis.solve(std::vector<LoadCase>{placed_leaning({})});
  const Allowable upright = Rater(there, terms_with({true})).allowable(leaning({})),
                  found = Rater(there, terms_with({.checked = true, .sway = stands})).allowable(leaning({}));
  REQUIRE(found.is_load());
  CHECK(close(found.factor, least, 1e-9));
  CHECK(found.factor < upright.factor * 0.999);
  CHECK(found.combination.find(" + initial sway towards ") != std::string::npos);
  // of nothing that weighs there is none, and what is placed leans by itself
  const std::vector<Action> level{point_load(ChordOf::top_left, 1.0, Vec3<>{0, 1e3, 0})};
  CHECK(Rater(analysis, terms_with({.checked = true, .sway = stands})).allowable(level).factor ==
        Rater(analysis, terms_with({true})).allowable(level).factor);
  CHECK(Rater(there, terms_with({.checked = true, .sway = stands})).allowable(level).factor <
        Rater(there, terms_with({true})).allowable(level).factor * (1 - 1e-6));
}

TEST_CASE("what is placed may leave nothing because it leans") {
  const Analysis analysis{stiff_ended_box(material::s355h(), 8)};
  const std::vector<Action> across{point_load(ChordOf::top_right, 2.0, Vec3<>{0, 0, -1e3})};
  const double upright = Rater(analysis, terms_with({true})).allowable(across).factor,
               leans = Rater(analysis, terms_with({.checked = true, .sway = stands})).allowable(across).factor;
  REQUIRE(leans < upright);
  // 1.5 f of an imposed load is 1.35 times 1.5/1.35 f of a permanent one: between the two limits
  const Cases there = analysis.solve(std::vector<LoadCase>{
      {"there", Nature::permanent,
       {point_load(ChordOf::top_right, 2.0, Vec3<>{0, 0, -0.5e3 * (upright + leans) * 1.5 / 1.35})}}});
  CHECK(Rater(there, terms_with({true})).allowable(across).is_load());
  const Allowable none = Rater(there, terms_with({.checked = true, .sway = stands})).allowable(across);
  CHECK(none.verdict == rating::Verdict::nothing_left);
  CHECK(none.combination.find(" + initial sway towards ") != std::string::npos);
}

TEST_CASE("a table's head says whether its loads lean; a girder that hangs has no sway of stands") {
  const auto girder = [](std::size_t bays) { return stiff_ended_box(material::s355h(), bays).girder(); };
  const auto head = [&](const verify::Stability& s) {
    rating::TableTerms t;
    t.terms = terms_with(s);
    t.patterns = {rating::Pattern::centre_point};
    std::ostringstream out;
    out << rating::load_table(std::vector<std::size_t>{8}, girder, t);
    return out.str();
  };
  const std::string upright = head({true}), leans = head({.checked = true, .sway = {5.0, 2}});
  CHECK(upright.find("Not checked: joints, welds, sway of what the girder hangs from or stands on") !=
        std::string::npos);
  CHECK(upright.find("out of plumb") == std::string::npos);
  CHECK(leans.find("out of plumb by 1/258.2 to all four sides") != std::string::npos);  // as in proof_stability_sway
  CHECK(leans.find("stability of what the girder stands on") != std::string::npos);
  BoxGirder hanging = stiff_ended_box(material::s355h(), 8);
  hanging.supports = hung_at({0.5, 3.5});
  const Analysis hung{hanging};
  CHECK_THROWS_AS(Rater(hung, terms_with({.checked = true, .sway = stands})), BadDescription);
  const Analysis standing{stiff_ended_box(material::s355h(), 8)};
  CHECK_THROWS_AS(Rater(standing, terms_with({.checked = false, .sway = stands})), BadDescription);
}

TEST_CASE("vertical and horizontal loads together lean too: every point of the curve is a proof's limit") {
  const Analysis analysis{stiff_ended_box(material::en_aw_6082_t6(), 6)};
  const Terms terms = terms_with({.checked = true, .sway = stands});
  const Rater rater(analysis, terms);
  const auto curve = rating::interaction_curve(rater, {.rays = 8});
  REQUIRE(curve.size() == 9);
  const Response v = analysis.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0)});
  const Vec3<> towards_minus_y{0, -1, 0};
  const Response h =
      analysis.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right, ChordOf::top_left, ChordOf::top_right},
                                towards_minus_y, towards_minus_y)});
  for (const rating::InteractionPoint& p : curve)
    for (const double share : {1 - 1e-6, 1 + 1e-6}) {
      INFO(p.vertical << " " << p.horizontal << " " << p.allowable);
      const Cases cases(analysis, {combine<double>({&v, &h}, {share * p.vertical, share * p.horizontal}, "both")},
                        {{"both", Nature::imposed, ""}});
      CHECK(verify::by_material(cases, terms.set, terms.basis).passes() == (share < 1));
    }
}

TEST_CASE("initial sway on random girders: no load below the allowable one fails, and just above it one part does") {
  std::size_t rated = 0, leaned = 0, bowed = 0, fell = 0, less = 0;
  for (std::uint64_t seed = 1; rated < 18; ++seed) {
    REQUIRE(seed < 200);
    Random r(seed);
    const bool alloy = r.chance(0.5);
    BoxGirder made =
        stiff_ended_box(alloy ? material::en_aw_6082_t6() : material::s235h(), 4 + r.below(5),
                        r.chance(0.5) ? 5.0_mm : 3.2_mm);
    made.depth = r.in(0.4, 0.7);
    made.width = r.in(0.4, 0.9);
    if (r.chance(0.3)) made.supports = continuous_over({0.0, 0.5 * static_cast<double>(made.bays - 1)});
    const Analysis analysis{made};
    Terms terms = terms_with({true, r.chance(0.4), false, {r.in(2.0, 8.0), 1 + r.below(4)}});
    terms.set.permanent_favourable = terms.set.permanent_unfavourable;
    const Response first = analysis.solve(random_load(r, analysis.girder()));
    const Allowable of_first = Rater(analysis, terms).allowable(first);
    INFO("seed " << seed << " " << of_first);
    if (!of_first.is_load()) continue;
    const PlacedAndLoad loads(r, first, of_first.factor, 0.3,
                              [&] { return analysis.solve(random_load(r, analysis.girder())); });
    const Rater rater(loads.placed, terms);
    const Allowable a = rater.allowable(loads.unit);
    INFO(a);
    if (!a.is_load()) continue;
    ++rated;
    Terms upright = terms;
    upright.basis.stability.sway = {};
    const Allowable b = Rater(loads.placed, upright).allowable(loads.unit);
    CHECK(a.factor <= b.factor * (1 + 1e-9));
    less += a.factor < b.factor * (1 - 1e-6);
    leaned += a.combination.find("initial sway") != std::string::npos;
    bowed += a.combination.find("+ initial sway towards") != std::string::npos &&
             a.combination.find("bow") != std::string::npos;
    fell += falls_below(rater, loads.unit, a, 40);
    loads.prove_beside(terms, a.factor, [&](const verify::Proof& proof, double share) {
      CHECK(proof.worst().utilisation >= rater.utilisation(loads.unit, share * a.factor) * (1 - 1e-6));
    });
  }
  CHECK(leaned > 12);
  CHECK(less > 12);
  CHECK(bowed > 4);
  CHECK(fell > 4);
}
