// SPDX-License-Identifier: MIT
// A proof's search against one that walks every section of every member in every combination: the same, to the bit.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include <baywork/verify.hpp>

#include "support/if_stable.hpp"
#include "support/random_described_girders.hpp"

namespace {

using namespace baywork;
using girders::Random;
using verify::Check;
using verify::Proof;
using verify::Row;

/// Every section of every member in every combination, one after the other.
std::vector<Row> all_walked(const Cases& cases, const CombinationSet& set) {
  const verify::detail::MemberDesign design(cases.analysis(), {}, verify::Standards::by_material);
  std::vector<verify::detail::FoundOfMember> found(design.size());
  const std::vector<Combination> all = combinations(set, cases.kinds());
  for (std::size_t k = 0; k < all.size(); ++k) {
    const Response r = cases.combine(all[k]);
    for (std::size_t m = 0; m < design.size(); ++m)
      design.search_member(m, r.answer().members[m].start, r.loads_on(m), k, found[m]);
  }
  std::vector<Row> out;
  for (std::size_t m = 0; m < design.size(); ++m) {
    for (std::size_t c = 0; c < verify::n_member_checks; ++c)
      if (found[m][c].utilisation > verify::detail::no_force)
        out.push_back(design.row(m, static_cast<Check>(c), found[m][c]));
    if (design.is_outside(m)) out.push_back(design.outside_row(m));
  }
  return out;
}

std::size_t compare(const Cases& cases, const CombinationSet& set) {
  const std::vector<Row> walked = all_walked(cases, set);
  const Proof proof = verify::by_material(cases, set);
  REQUIRE(proof.rows().size() == walked.size());
  for (std::size_t i = 0; i < walked.size(); ++i) {
    const Row &a = walked[i], &b = proof.rows()[i];
    INFO(verify::place(a) << ": " << verify::name(a.check));
    CHECK(a.member == b.member);
    CHECK(a.check == b.check);
    CHECK(a.utilisation == b.utilisation);
    CHECK(a.x == b.x);
    CHECK(a.combination == b.combination);
    CHECK(a.softened == b.softened);
    CHECK(verify::text(a) == verify::text(b));
  }
  return walked.size();
}

/// Girders with bars of both metals and several shapes.
Girder some_girder(Random& r) {
  Girder g = girders::DescribedGirder(r, 4).alone();
  const double size = r.in(0.04, 0.10), wall = r.in(0.003, 0.005);
  const Bar bars[] = {{RectangularHollow{size, size * r.in(0.5, 1.0), wall}, material::s355h()},
                      {RoundTube{size, wall}, material::s235h()},
                      {RectangularHollow{size, size * r.in(0.5, 1.0), wall}, material::en_aw_6082_t6()},
                      {IShape{0.08, 0.06, 0.004, 0.005}, material::en_aw_6082_t6()},
                      {SolidRectangle{0.05, 0.02}, material::s235()}};
  if (r.chance(0.7))
    for (Chord& c : g.chords) c.bar = bars[r.below(5)];
  if (r.chance(0.5))
    for (Chord& c : g.chords)
      c.bar = c.bar.welded_across({{r.in(0, 1) * g.span(), r.in(0, 0.05)}, {r.in(0, 1) * g.span(), 0.0}});
  return g;
}

std::vector<LoadCase> some_cases(Random& r, const Girder& g) {
  const auto size = [&] { return r.over_orders(10.0, 4) * (r.chance(0.5) ? 1.0 : -1.0); };
  std::vector<LoadCase> out{{"self-weight", Nature::permanent, {self_weight()}},
                            {"wind", Nature::wind, {wind_on_bars(250.0, {0, -1, 0})}, "wind"},
                            {"other wind", Nature::wind, {wind_on_bars(250.0, {0, 1, 0.2})}, "wind"}};
  for (std::size_t i = 0, n = 1 + r.below(4); i < n; ++i) {
    const ChordRef chord(r.below(g.chords.size()));
    std::vector<Action> actions;
    if (r.chance(0.6))
      actions.push_back(point_load(chord, r.in(0, 1) * g.span(), Vec3<>{size(), size(), size()},
                                   r.chance(0.3) ? Vec3<>{size(), size(), size()} : Vec3<>{}));
    if (r.chance(0.3)) actions.push_back(line_load({chord}, Vec3<>{size(), 0, size()}, Vec3<>{0, size(), size()}));
    if (r.chance(0.3) || actions.empty()) actions.push_back(warming(r.in(-20, 40)));
    const bool alone = r.chance(0.5);
    out.push_back({"load " + std::to_string(i), r.chance(0.3) ? Nature::permanent : Nature::imposed, actions,
                   alone ? "load" : ""});
  }
  return out;
}

}  // namespace

TEST_CASE("the search finds what walking everything finds, to the bit, on random girders and loads") {
  std::size_t girders = 0, rows = 0, combinations_met = 0;
  for (std::uint64_t seed = 1; girders < 150; ++seed) {
    REQUIRE(seed < 1000);
    Random r(seed);
    const Girder g = some_girder(r);
    const auto analysis = if_stable(g);
    if (!analysis) continue;
    INFO("seed " << seed);
    ++girders;
    const Cases cases = analysis->solve(some_cases(r, g));
    combinations_met += combinations(en1990::ultimate(), cases.kinds()).size();
    rows += compare(cases, en1990::ultimate());
  }
  CHECK(rows > 10000);
  CHECK(combinations_met > 20 * girders);
}

TEST_CASE("what interactions are at most, told without powers: never less than they are, and close") {
  Random r(5);
  const verify::detail::PowerAtMost root(0.3);
  for (int i = 0; i < 20000; ++i) {
    const double x = r.over_orders(1e-6, 6), exact = std::pow(x, 0.3);
    if (!(x < 1.0)) continue;
    CHECK(root(x) >= exact * (1 - 1e-14));
    CHECK(root(x) <= 1.02 * exact);
  }
  CHECK(root(0.0) >= 0.0);
  CHECK(root(1e-300) >= std::pow(1e-300, 0.3));
  CHECK(std::isinf(root(1.0)));
  const Bar tube{RoundTube{0.06, 0.004}, material::en_aw_6082_t6()};
  const en1999::BarResistance of = verify::aluminium_resistance(tube, {});
  const verify::detail::QuickBound quick(of);
  std::size_t told = 0;
  for (int i = 0; i < 20000; ++i) {
    const auto s = static_cast<en1999::Softening>(r.below(3));
    const verify::SectionForces f{r.in(-1, 1) * of.N_o_Rd, r.in(-0.4, 0.4) * of.V_z_Rd, r.in(-0.4, 0.4) * of.V_z_Rd,
                                  r.in(-0.4, 0.4) * of.T_Rd, r.in(-0.7, 0.7) * of.M_y_Rd, r.in(-0.7, 0.7) * of.M_y_Rd};
    const double L = r.in(0.3, 3);
    const en1999::Buckling b = en1999::buckling(of, tube.section, tube.material.E, L, r.in(0.5, 1.5) * L);
    const double section = en1999::bending_and_axial(of, f, s).utilisation;
    const double member = en1999::beam_column(of, b, f, {en1999::omega_0(of, s), 1.0, 1.0}).utilisation;
    const double at_most = quick.bending_and_axial(f, s), column_at_most = quick.beam_column(f, b, s);
    CHECK(at_most >= section * (1 - 1e-12));
    if (f.N < 0.0) CHECK(column_at_most >= member * (1 - 1e-12));
    if (std::isinf(at_most) || std::isinf(column_at_most)) continue;
    CHECK(at_most <= 1.03 * section);
    if (f.N < 0.0) CHECK(column_at_most <= 1.03 * member);
    ++told;
  }
  CHECK(told > 2000);  // it is no idle bound
}

TEST_CASE("turning places: roots of random polynomials, and what keeps its sign") {
  Random r(3);
  std::size_t found = 0, kept = 0;
  for (int i = 0; i < 20000; ++i) {
    // (t - a)(t - b)(t - c) e with roots at least 0.02 apart, some outside of (0, 1), now and then times t^2 + d
    std::array<double, 6> c{};
    std::vector<double> roots;
    std::array<double, 3> places{r.in(-0.5, 0.2), r.in(0.25, 0.7), r.in(0.75, 1.5)};
    c[0] = r.in(-1, 1) < 0 ? -3.0 : 2.0;
    std::size_t degree = 0;
    const std::size_t linear = r.below(4);
    for (std::size_t k = 0; k < linear; ++k, ++degree) {
      for (std::size_t j = degree + 1; j > 0; --j) c[j] = c[j - 1] - places[k] * c[j];
      c[0] *= -places[k];
      if (places[k] > 0 && places[k] < 1) roots.push_back(places[k]);
    }
    if (r.chance(0.5)) {
      const double d = r.in(0.1, 1);
      for (std::size_t j = degree + 2; j >= 2; --j) c[j] = c[j - 2] + d * c[j];
      c[1] *= d;
      c[0] *= d;
    }
    const auto all = baywork::detail::roots_between(c, 0.0, 1.0);
    REQUIRE(all.count == roots.size());
    for (std::size_t k = 0; k < roots.size(); ++k) CHECK(std::abs(all.at[k] - roots[k]) < 1e-12);
    found += all.count;
    const double lo = r.in(0, 1), hi = lo + r.in(0, 1 - lo);
    bool changes = false;
    for (const double x : roots) changes = changes || (x >= lo && x <= hi);
    const bool keeps = baywork::detail::keeps_sign(c, lo, hi);
    CHECK_FALSE((keeps && changes));
    kept += keeps;
  }
  CHECK(found > 10000);
  CHECK(kept > 8000);  // it is no idle test
}
