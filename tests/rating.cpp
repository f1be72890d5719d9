// SPDX-License-Identifier: MIT
// Allowable loads beside hand calculations; what leaves nothing, limits nothing, leaps, or lies outside the scope.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using rating::Allowable;
using rating::Rater;
using rating::Terms;
using rating::Verdict;
using verify::Check;

/// Two cantilever bars 0.8 m long, the posts between them carry nothing: every force follows from statics.
LadderGirder two_cantilevers(const Bar& bar) {
  return {.bays = 1,
          .bay_length = 0.8,
          .depth = 0.5,
          .chord = bar,
          .web = open(cross_bar(), pinned_joint()),
          .supports = cantilever()};
}
/// N along each bar (pulling positive) and F down at its tip.
std::vector<Action> tips(double N, double F) {
  return {point_load(ChordOf::bottom, 0.8, Vec3<>{N, 0, -F}), point_load(ChordOf::top, 0.8, Vec3<>{N, 0, -F})};
}
LoadCase permanent(double N, double F) { return {"placed", Nature::permanent, tips(N, F)}; }
/// All factors 1.
CombinationSet plain_factors() { return {"plain", "of this test", "", "", 1, 1, {1, 1}, {1, 1}, {1, 1}, {1, 1}}; }

// 60.3 x 5 of EN AW-6082 T6: fo 250, fo,haz 125, fu,haz 185 N/mm2 (EN 1999-1-1 Table 3.2b, values from memory); beside
// the welded post omega_0 = 125/250. Partial factors 1.1 and 1.25.
constexpr double D = 0.0603, d = 0.0503, A = pi * (D * D - d * d) / 4, I = pi * (D * D * D * D - d * d * d * d) / 64;
constexpr double fo = 250e6, N_o_Rd = 0.5 * A * fo / 1.1;
/// Buckling over 0.8 m, class A: alpha 0.20, lambda_0 0.10 (6.3.1.2).
double chi() {
  const double N_cr = pi * pi * 70e9 * I / (0.8 * 0.8), lambda = std::sqrt(A * fo / N_cr);
  const double phi = 0.5 * (1 + 0.20 * (lambda - 0.10) + lambda * lambda);
  return 1 / (phi + std::sqrt(phi * phi - lambda * lambda));
}

BoxGirder box(std::size_t bays, const Bar& chord = chord_bar()) {
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, chord.material}, brace{RoundTube{26.9_mm, 3.2_mm}, chord.material};
  const auto side = braced(mirrored_towards, brace, cross);
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = chord,
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .supports = simply_supported()};
}
LoadCase own() { return {"self-weight", Nature::permanent, {self_weight()}}; }

}  // namespace

TEST_CASE("the allowable pull, push and bending of a bar agree with the hand calculation") {
  const Analysis analysis{two_cantilevers(chord_bar())};
  // pull: A fo,haz/1.1 = 1.5 P
  const Allowable pull = Rater(analysis).allowable(tips(1, 0));
  CHECK(pull.verdict == Verdict::member);
  CHECK(pull.factor == Approx(N_o_Rd / 1.5).epsilon(1e-9));
  CHECK(pull.row.utilisation == Approx(1.0).epsilon(1e-9));
  CHECK(pull.combination == "1.5 load");
  CHECK_FALSE(pull.jumps);

  // push: buckling, the weld in the middle of the wave: 0.5 chi
  const Allowable push = Rater(analysis).allowable(tips(-1, 0));
  CHECK(push.factor == Approx(chi() * N_o_Rd / 1.5).epsilon(1e-9));
  CHECK((push.row.check == Check::buckling || push.row.check == Check::beam_column));

  // bending at the root: Wel fu,haz/1.25, less than 0.5 Wpl fo/1.1
  const double Wel = I / (D / 2);
  const Allowable bend = Rater(analysis).allowable(tips(0, 1));
  CHECK(bend.factor == Approx(Wel * 185e6 / 1.25 / 0.8 / 1.5).epsilon(1e-9));
  CHECK(bend.row.check == Check::bending);
  CHECK(bend.row.x == Approx(0.0));
}

TEST_CASE("what is placed counts with the factor that hurts") {
  const Analysis analysis{two_cantilevers(chord_bar())};
  const double G = 10e3;
  // pulling alike: (N_Rd - 1.35 G)/1.5; pulling against a push: (N_Rd + 1.0 G)/1.5
  const Allowable alike = Rater(analysis.solve(std::vector{permanent(G, 0)})).allowable(tips(1, 0));
  CHECK(alike.factor == Approx((N_o_Rd - 1.35 * G) / 1.5).epsilon(1e-9));
  CHECK(alike.combination == "1.35 placed + 1.5 load");
  const Allowable against = Rater(analysis.solve(std::vector{permanent(-G, 0)})).allowable(tips(1, 0));
  CHECK(against.factor == Approx((N_o_Rd + 1.00 * G) / 1.5).epsilon(1e-9));

  // a wind W that may be there as well: leading 1.5 or beside the load 0.6 x 1.5; the load leading or 0.7 x 1.5
  const double W = 12e3;
  const LoadCase wind{"wind", Nature::wind, tips(W, 0)};
  const Allowable with_wind = Rater(analysis.solve(std::vector{permanent(G, 0), wind})).allowable(tips(1, 0));
  const double load_leads = (N_o_Rd - 1.35 * G - 0.9 * W) / 1.5, wind_leads = (N_o_Rd - 1.35 * G - 1.5 * W) / 1.05;
  CHECK(with_wind.factor == Approx(std::min(load_leads, wind_leads)).epsilon(1e-9));
  // as an alternative to that wind, another wind meets no wind
  Terms gust;
  gust.nature = Nature::wind;
  gust.alternative = "wind";
  const LoadCase excluded{"wind", Nature::wind, tips(W, 0), "wind"};
  const Allowable alone = Rater(analysis.solve(std::vector{permanent(G, 0), excluded}), gust).allowable(tips(1, 0));
  CHECK(alone.factor == Approx((N_o_Rd - 1.35 * G) / 1.5).epsilon(1e-9));
}

TEST_CASE("factors scale: twice the load or twice gamma leaves half, without dead load") {
  const Analysis analysis{box(8)};
  const std::vector<ChordRef> lower{ChordOf::bottom_left, ChordOf::bottom_right};
  const double once = Rater(analysis).allowable({line_load(lower, 1.0)}).factor;
  CHECK(Rater(analysis).allowable({line_load(lower, 2.0)}).factor == Approx(0.5 * once).epsilon(1e-9));
  Terms twice;
  twice.set.imposed.gamma *= 2;
  CHECK(Rater(analysis, twice).allowable({line_load(lower, 1.0)}).factor == Approx(0.5 * once).epsilon(1e-9));
  // and a load may be put together from parts
  const Response left = analysis.solve({line_load({ChordOf::bottom_left}, 0.5)});
  const Response right = analysis.solve({line_load({ChordOf::bottom_right}, 0.5)});
  const Response both = combine<double>({&left, &right}, {1.0, 1.0}, "both");
  CHECK(Rater(analysis).allowable(both).factor == Approx(once).epsilon(1e-9));
}

TEST_CASE("a mirrored load has the same allowable size") {
  const Analysis analysis{box(8)};
  const Rater rater(analysis.solve(std::vector{own()}));
  for (const double x : {0.4, 1.1, 1.5, 1.9}) {
    const Allowable a = rater.allowable({point_load(ChordOf::bottom_left, x, 1.0)});
    CHECK(a.verdict == Verdict::member);
    CHECK(rater.allowable({point_load(ChordOf::bottom_left, 4.0 - x, 1.0)}).factor == Approx(a.factor).epsilon(1e-7));
    CHECK(rater.allowable({point_load(ChordOf::bottom_right, x, 1.0)}).factor == Approx(a.factor).epsilon(0.02));
  }
}

TEST_CASE("the verification of all cases together passes at the allowable load and fails just above") {
  for (const Bar& chord : {chord_bar(), Bar{RectangularHollow{60.0_mm, 40.0_mm, 4.0_mm}, material::s355h()}}) {
    const Analysis analysis{box(6, chord)};
    const LoadCase wind{"wind", Nature::wind, {wind_on(Side::left, 300.0)}};
    const std::vector<Action> unit{point_load(ChordOf::bottom_left, 1.3, 1.0)};
    const Allowable a = Rater(analysis.solve(std::vector{own(), wind})).allowable(unit);
    REQUIRE(a.verdict == Verdict::member);
    const auto proof = [&](double P) {
      const LoadCase load{"load", Nature::imposed, {point_load(ChordOf::bottom_left, 1.3, P)}};
      return verify::by_material(analysis.solve(std::vector{own(), wind, load}), en1990::ultimate());
    };
    CHECK(proof(a.factor * (1 - 1e-6)).passes());
    CHECK_FALSE(proof(a.factor * (1 + 1e-6)).passes());
    const verify::Proof there = proof(a.factor);
    const verify::Row& worst = there.worst();
    CHECK(verify::place(worst) == verify::place(a.row));
    CHECK(worst.check == a.row.check);
    CHECK(worst.utilisation == Approx(1.0).epsilon(1e-6));
    CHECK(a.combination == there.combinations()[worst.combination].name);
  }
}

TEST_CASE("a load that first hurts and later helps is allowed up to where it first hurts") {
  // Each bar bends under what is placed; the load pushes it and lifts its tip. Push and bending together are more than
  // either alone (6.3.3.1): n^0.8 x^0.8 + (m (1 - x))^1.02/0.5 at x times the load is above 1 only in between.
  const Analysis analysis{two_cantilevers(chord_bar())};
  Terms terms;
  terms.set = plain_factors();
  terms.most = 1.0;
  const double M_placed = 0.98 * (I / (D / 2)) * 185e6 / 1.25, F = M_placed / 0.8, N = 0.77 * N_o_Rd;
  const Rater rater(analysis.solve(std::vector{permanent(0, F)}), terms);
  const Response unit = analysis.solve(tips(-N, -F));
  CHECK(rater.utilisation(unit, 0.0) < 1.0);
  CHECK(rater.utilisation(unit, 1.0) < 1.0);
  CHECK(rater.utilisation(unit, 0.4) > 1.0);
  const Allowable a = rater.allowable(unit);
  REQUIRE(a.verdict == Verdict::member);
  // also where the load halfway holds again, and the dip lies below it alone
  terms.most = 1.6;
  CHECK(rater.utilisation(unit, 0.8) < 1.0);
  const Rater further(analysis.solve(std::vector{permanent(0, F)}), terms);
  CHECK(further.allowable(unit).factor == Approx(a.factor).epsilon(1e-9));
  CHECK(further.allowable(unit, rating::Search::every_bar).factor == Approx(a.factor).epsilon(1e-9));
  const double n = N / (chi() * N_o_Rd), m = M_placed / ((D * D * D - d * d * d) / 6 * fo / 1.1);
  double low = 0, high = 0.4;  // rising up to there
  while (high - low > 1e-13) {
    const double x = (low + high) / 2;
    (std::pow(n * x, 0.8) + std::pow(m * (1 - x), 1.02) / 0.5 > 1 ? high : low) = x;
  }
  CHECK(a.factor == Approx(low).epsilon(1e-9));
  CHECK(a.row.utilisation == Approx(1.0).epsilon(1e-9));
  for (int i = 0; i <= 400; ++i) CHECK(rater.utilisation(unit, a.factor * i / 400.0) <= 1.0 + 1e-12);
  CHECK(rater.utilisation(unit, a.factor * (1 + 1e-6)) > 1.0);
}

TEST_CASE("where a check begins the utilisation leaps, and both sides are told") {
  // A steel tube bent about both axes, pulled by what is placed and pushed by the load. Pulled, the resultant moment
  // counts: sqrt(0.8^2 + 0.55^2) = 0.97. Pushed ever so little, 6.3.3 counts: 0.8 + 0.6 x 0.55 = 1.13.
  const Bar tube{RoundTube{60.3_mm, 5.0_mm}, material::s355h()};
  const Analysis analysis{two_cantilevers(tube)};
  Terms terms;
  terms.set = plain_factors();
  const double F = tube.section.Wpl_y * 355e6 / 0.8, G = 5e3;
  std::vector<Action> there;
  for (const ChordOf c : {ChordOf::bottom, ChordOf::top})
    there.push_back(point_load(c, 0.8, Vec3<>{G, 0.55 * F, -0.80 * F}));
  const Rater rater(analysis.solve(std::vector{LoadCase{"placed", Nature::permanent, there}}), terms);
  const Allowable a = rater.allowable(tips(-1, 0));
  REQUIRE(a.verdict == Verdict::member);
  CHECK(a.factor == Approx(G).epsilon(1e-6));
  CHECK(a.jumps);
  CHECK(a.row.utilisation == Approx(std::hypot(0.80, 0.55)).epsilon(1e-3));
  CHECK(a.row.check != Check::beam_column);
  CHECK(a.beyond.utilisation == Approx(1.13).epsilon(1e-3));
  CHECK(a.beyond.check == Check::beam_column);
  std::ostringstream text;
  text << a;
  CHECK(text.str().find("leaps") != std::string::npos);
}

TEST_CASE("nothing left, not limited, outside the scope: never a number without its word") {
  const Analysis analysis{two_cantilevers(chord_bar())};
  const Allowable none = Rater(analysis.solve(std::vector{permanent(N_o_Rd, 0)})).allowable(tips(1, 0));
  CHECK(none.verdict == Verdict::nothing_left);
  CHECK(none.factor == 0.0);
  CHECK(none.row.utilisation == Approx(std::pow(1.35, 1.3)).epsilon(1e-9));  // 6.2.9.3: n^1.3
  CHECK(none.combination.find("1.35 placed") != std::string::npos);
  // a load that would help does not make room: without it the girder fails
  CHECK(Rater(analysis.solve(std::vector{permanent(N_o_Rd, 0)})).allowable(tips(-1, 0)).verdict ==
        Verdict::nothing_left);

  // on a support a load stresses no bar
  const Analysis girder{box(4)};
  const Allowable free =
      Rater(girder.solve(std::vector{own()})).allowable({point_load(ChordOf::bottom_left, 0.0, 1.0)});
  CHECK(free.verdict == Verdict::not_limited);
  CHECK(free.factor == Terms{}.most);
  Terms low;
  low.most = 10.0;
  CHECK(Rater(girder, low).allowable({point_load(ChordOf::bottom_left, 1.0, 1.0)}).verdict == Verdict::not_limited);

  // D/t = 100 is class 4
  const Analysis thin{box(4, Bar{RoundTube{200.0_mm, 2.0_mm}, material::s355h()})};
  for (const bool with_placed : {false, true}) {
    const Allowable out =
        with_placed ? Rater(thin.solve(std::vector{own()})).allowable({point_load(ChordOf::bottom_left, 1.0, 1.0)})
                    : Rater(thin).allowable({point_load(ChordOf::bottom_left, 1.0, 1.0)});
    CHECK(out.verdict == Verdict::outside_scope);
    CHECK(out.factor == 0.0);
    CHECK(std::string(out.row.reason).find("class 4") != std::string::npos);
    std::ostringstream text;
    text << out;
    CHECK(text.str().find("outside the scope") == 0);
  }

  Terms bad;
  bad.most = 0.0;
  CHECK_THROWS_AS(Rater(analysis, bad), BadDescription);
  CHECK_THROWS_AS(Rater(analysis).allowable(girder.solve({self_weight()})), BadDescription);
}

TEST_CASE("a deflection limit governs where it is reached first, on the whole or the variable part") {
  // Tip of a cantilever with shear: w = F L^3/(3 EI) + F L/(G As)
  const Bar bar = chord_bar();
  const Analysis analysis{two_cantilevers(bar)};
  const double L = 0.8, EI = bar.material.E * bar.section.Iy, GA = bar.material.G * bar.section.shear_z;
  const double w = closed_form::cantilever_end_load(1.0, L, EI, GA).deflection.value;
  const double G = 200.0, limit = L / 250;
  const Cases placed = analysis.solve(std::vector{permanent(0, G)});
  Terms terms;
  terms.deflection = rating::DeflectionLimit{250, rating::DeflectionOf::whole, 0};
  const Allowable whole = Rater(placed, terms).allowable(tips(0, 1));
  CHECK(whole.verdict == Verdict::deflection);
  CHECK(whole.factor == Approx(limit / w - G).epsilon(1e-9));
  CHECK(whole.deflection == Approx(limit).epsilon(1e-9));
  CHECK(whole.variable_deflection == Approx(w * whole.factor).epsilon(1e-9));
  CHECK(whole.has_row);
  CHECK(whole.row.utilisation < 1.0);
  terms.deflection->of = rating::DeflectionOf::variable;
  const Allowable variable = Rater(placed, terms).allowable(tips(0, 1));
  CHECK(variable.factor == Approx(limit / w).epsilon(1e-9));
  // a wide limit leaves the bar to govern, and the deflection is told all the same
  terms.deflection->ratio = 10;
  const Allowable member = Rater(placed, terms).allowable(tips(0, 1));
  CHECK(member.verdict == Verdict::member);
  CHECK(member.factor == Approx(Rater(placed).allowable(tips(0, 1)).factor).epsilon(1e-12));
  CHECK(member.variable_deflection == Approx(w * member.factor).epsilon(1e-9));
  // what is placed deflects too much already
  terms.deflection = rating::DeflectionLimit{0.5 * L / (w * G) * 4, rating::DeflectionOf::whole, 0};
  const Allowable none = Rater(placed, terms).allowable(tips(0, 1));
  CHECK(none.verdict == Verdict::nothing_left);
  CHECK(none.factor == 0.0);
}
