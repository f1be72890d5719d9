// SPDX-License-Identifier: MIT
// Stands out of plumb as level forces, and what splices push on the face between two chords, by hand and by statics.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/verify.hpp>

#include "support/small_box.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;

constexpr double q = 3.0e3, span = 6.0;  // N/m on both top chords together

BoxGirder box() { return stiff_ended_box(material::s355h(), 12); }
Cases loaded(const Analysis& analysis) {
  return analysis.solve({LoadCase{"deck", Nature::permanent, {line_load({ChordOf::top_left, ChordOf::top_right}, q)}},
                         LoadCase{"hung", Nature::imposed, {point_load(ChordOf::bottom_left, 2.2, 4.0_kN)}},
                         LoadCase{"wind", Nature::wind, {wind_on(Side::left, 300.0)}}});
}
const Combination& named(const std::vector<Combination>& all, const std::string& name) {
  for (const Combination& c : all)
    if (c.name == name) return c;
  FAIL("no such combination: " << name);
  return all[0];
}
bool any_has(const std::vector<std::string>& lines, const std::string& words) {
  for (const std::string& l : lines)
    if (l.find(words) != std::string::npos) return true;
  return false;
}
std::size_t how_many(const std::vector<Combination>& all, const std::string& words) {
  std::size_t n = 0;
  for (const Combination& c : all) n += c.name.find(words) != std::string::npos;
  return n;
}
verify::Basis stands(double height, std::size_t columns) {
  verify::Basis b;
  b.stability.checked = true;
  b.stability.sway = {height, columns};
  return b;
}
/// Of all chords at the middle of a bay, along y: all that crosses a cut through a box without level diagonals.
double level_shear(const Response& r, std::size_t bay) {
  double sum = 0;
  for (std::size_t c = 0; c < r.girder().chords.size(); ++c)
    sum += r.member(r.model().chord_member(bay, c)).forces(fraction{0.5}).Vy;
  return sum;
}

}  // namespace

TEST_CASE("initial sway: every downward force of a combination pushes level by phi, where it acts") {
  // EN 1993-1-1:2005 5.3.2 (3) a, values from memory. h = 6.25 m: alpha_h = 2/2.5 = 0.8; m = 4: alpha_m =
  // sqrt(0.5 · 1.25) = 0.790569; phi = 0.8 · 0.790569/200 = 1/316.228
  CHECK(verify::angle_of({6.25, 4}) == Approx(1.0 / 316.228).epsilon(1e-6));
  const double phi = 0.8 * std::sqrt(0.625) / 200.0;
  const Analysis analysis{box()};
  const Cases cases = loaded(analysis);
  const verify::ImperfectCases all = verify::with_sway(cases, en1990::ultimate(), {6.25, 4});
  const std::string base = "1.35 deck + 1.5 hung + 0.9 wind";
  const Response plain = all.cases.combine(named(all.combinations, base));
  // 1.35 · 3 kN/m · 6 m + 1.5 · 4 kN = 24.3 + 6 = 30.3 kN down
  const double weight = 1.35 * q * span + 1.5 * 4e3;
  CHECK(plain.total_load().z == Approx(-weight));
  struct Way {
    const char* words;
    Vec3<> d;
  };
  for (const Way& w : {Way{"+y", {0, 1, 0}}, Way{"-y", {0, -1, 0}}, Way{"+x", {1, 0, 0}}, Way{"-x", {-1, 0, 0}}}) {
    INFO(w.words);
    const Response leaning =
        all.cases.combine(named(all.combinations, base + " + initial sway towards " + w.words));
    const Vec3<> pushed = leaning.total_load() - plain.total_load();
    CHECK(length(pushed - (phi * weight) * w.d) < 1e-9 * weight);
    CHECK(length(leaning.total_reaction() + leaning.total_load()) < 1e-6 * weight);
  }
  // Where it acts: a cut at 1.75 m, in the middle of the fourth bay, before the point load, has the left support's
  // level reaction less what acts before it: 1.35 · 3 kN/m (3 - 1.75) + 1.5 · 4 kN (6 - 2.2)/6 = 5.0625 + 3.8 kN, times
  // phi; both supports hold the girder sideways, as a simple beam.
  const Response leaning = all.cases.combine(named(all.combinations, base + " + initial sway towards +y"));
  const double V = phi * (1.35 * q * (0.5 * span - 1.75) + 1.5 * 4e3 * (span - 2.2) / span);
  CHECK(V == Approx(phi * 8862.5));
  CHECK(std::abs(level_shear(leaning, 3) - level_shear(plain, 3)) == Approx(V).epsilon(1e-6));
}

TEST_CASE("initial sway: upward forces lessen it, level ones and couples have no part") {
  const Analysis analysis{box()};
  const Cases cases = analysis.solve(
      {LoadCase{"deck", Nature::permanent, {line_load({ChordOf::top_left, ChordOf::top_right}, q)}},
       LoadCase{"uplift", Nature::wind, {line_load({ChordOf::top_left, ChordOf::top_right}, -400.0)}},
       LoadCase{"wind", Nature::wind, {wind_on(Side::left, 300.0)}},
       LoadCase{"warm", Nature::temperature, {warming(20.0)}}});
  const std::vector<Combination> two{{"weight and uplift", {1.0, 1.5, 0.0, 0.0}},
                                     {"wind and warmth", {0.0, 0.0, 1.5, 1.5}}};
  const verify::ImperfectCases all = verify::with_sway(cases, two, {4.0, 1});
  CHECK(all.combinations.size() == 5 + 1);  // nothing weighs in the second
  CHECK(all.cases.size() == 4 + 2 * 2);
  const Response plain = all.cases.combine(all.combinations[0]);
  const Response leaning = all.cases.combine(named(all.combinations, "weight and uplift + initial sway towards -y"));
  // 1/200 of (3000 - 1.5 · 400) N/m · 6 m = 14.4 kN: 72 N
  CHECK((leaning.total_load() - plain.total_load()).y == Approx(-72.0));
}

TEST_CASE("a proof with initial sway has five of each combination, is never better, and says so") {
  const Analysis analysis{box()};
  const Cases cases = loaded(analysis);
  verify::Basis without;
  without.stability.checked = true;
  const verify::Proof upright = verify::by_material(cases, en1990::ultimate(), without);
  const verify::Proof leaning = verify::by_material(cases, en1990::ultimate(), stands(5.0, 2));
  CHECK(leaning.combinations().size() == 5 * upright.combinations().size());
  bool some_more = false;
  for (const verify::Row& r : upright.rows())
    for (const verify::Row& o : leaning.rows())
      if (r.member != no_member && o.member == r.member && o.check == r.check) {
        CHECK(o.utilisation >= r.utilisation * (1 - 1e-12));
        some_more = some_more || o.utilisation > r.utilisation * (1 + 1e-6);
      }
  CHECK(some_more);
  // h = 5 m, m = 2: 200/(0.894427 · 0.866025) = 258.2
  CHECK(any_has(leaning.assumptions(), "out of plumb by 1/258.2"));
  CHECK_FALSE(any_has(upright.assumptions(), "out of plumb"));
  // bows join what leans as well: every face that matters to both sides
  verify::Basis both = stands(5.0, 2);
  both.stability.imperfections = true;
  const verify::Proof bowed = verify::by_material(cases, en1990::ultimate(), both);
  CHECK(how_many(bowed.combinations(), "initial sway towards +y + bow") > 0);
}

TEST_CASE("splices push on the face between two chords in every combination, with bows or without") {
  // EN 1993-1-1:2005 5.3.3 (4) and (5), values from memory: alpha_m N_Ed/100 at a splice, handed to the neighbouring
  // stations; the bows may be left out. Here alpha_m = sqrt(0.75). N_Ed of both top chords at the splice, 3 m: mean of
  // the two bays beside it, of which each has M at its middle over the depth: 4.05 kN/m (36 - 0.25)/8 / 0.5 m.
  BoxGirder girder = box();
  girder.modules = {.bays_each = 6};
  const Analysis analysis{girder};
  const Cases cases = analysis.solve(
      std::vector<LoadCase>{{"deck", Nature::permanent, {line_load({ChordOf::top_left, ChordOf::top_right}, q)}}});
  verify::Basis basis;
  basis.stability.checked = true;
  const verify::Proof proof = verify::by_material(cases, en1990::ultimate(), basis);
  CHECK(how_many(proof.combinations(), "bow") == 0);
  CHECK(how_many(proof.combinations(), "kinks") == 2 * 2);  // 1.35 and 1.0 deck, the top face to both sides
  CHECK(any_has(proof.assumptions(), "alpha_m N_Ed/100"));
  const verify::ImperfectCases all = verify::with_kinks(cases, combinations(en1990::ultimate(), cases.kinds()));
  const double N = 1.35 * q * (36.0 - 0.25) / 8.0 / 0.5, F = std::sqrt(0.75) * N / 100.0;
  for (const Combination& c : all.combinations) {
    if (c.name.find("1.35 deck") == std::string::npos || c.name.find("kinks") == std::string::npos) continue;
    const Response kinked = all.cases.combine(c), plain = all.cases.combine(named(all.combinations, "1.35 deck"));
    // halves of it cross the bays beside the splice, to opposite sides, and nothing the bays beyond
    const auto crossing = [&](std::size_t bay) { return level_shear(kinked, bay) - level_shear(plain, bay); };
    CHECK(std::abs(crossing(5)) == Approx(0.5 * F).epsilon(0.01));
    CHECK(crossing(6) == Approx(-crossing(5)).epsilon(1e-6));
    CHECK(std::abs(crossing(4)) < 1e-6 * F);
    CHECK(std::abs(crossing(7)) < 1e-6 * F);
  }
  // a girder that is not straight has none, and says so
  girder.axis.camber = 0.05;
  const Analysis cambered{girder};
  const Cases its = cambered.solve(
      std::vector<LoadCase>{{"deck", Nature::permanent, {line_load({ChordOf::top_left, ChordOf::top_right}, q)}}});
  const verify::Proof other = verify::by_material(its, en1990::ultimate(), basis);
  CHECK(how_many(other.combinations(), "kinks") == 0);
  CHECK(any_has(other.not_covered(), "not straight"));
}

TEST_CASE("initial sway that cannot be") {
  const Analysis analysis{box()};
  const Cases cases = loaded(analysis);
  CHECK_THROWS_AS(verify::by_material(cases, en1990::ultimate(), stands(-1.0, 1)), BadDescription);
  CHECK_THROWS_AS(verify::by_material(cases, en1990::ultimate(), stands(std::nan(""), 1)), BadDescription);
  CHECK_THROWS_AS(verify::by_material(cases, en1990::ultimate(), stands(4.0, 0)), BadDescription);
  verify::Basis alone = stands(4.0, 1);
  alone.stability.checked = false;
  CHECK_THROWS_AS(verify::by_material(cases, en1990::ultimate(), alone), BadDescription);
  BoxGirder hanging = box();
  hanging.supports = hung_at({0.5, 5.5});
  const Analysis hung{hanging};
  const Cases its = hung.solve(std::vector<LoadCase>{{"weight", Nature::permanent, {self_weight()}}});
  CHECK_THROWS_AS(verify::by_material(its, en1990::ultimate(), stands(4.0, 1)), BadDescription);
}
