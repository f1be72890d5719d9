// SPDX-License-Identifier: MIT
// Load patterns, load tables over spans beside a beam's hand calculation, and vertical with horizontal loads.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/connectors.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using rating::Pattern;
using rating::Rater;
using rating::Verdict;

BoxGirder box(std::size_t bays, Supports supports = simply_supported()) {
  const auto side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .diaphragms = end_diaphragms(brace_bar()),
          .supports = std::move(supports)};
}
LoadCase own() { return {"self-weight", Nature::permanent, {self_weight()}}; }

/// Moment about the first support of all loads over their sum: where their resultant acts.
double centre_of(const rating::PatternLoad& l) {
  double at = 0;
  for (const double x : l.places) at += x / static_cast<double>(l.places.size());
  return l.places.empty() ? 0.5 * (l.from + l.to) : at;
}

}  // namespace

TEST_CASE("patterns lie where their words say, of unit size in all, shared by the lower chords") {
  const Analysis analysis{box(12)};
  const std::vector<std::vector<double>> places{{}, {3}, {2, 4}, {1.5, 3, 4.5}, {1.2, 2.4, 3.6, 4.8}};
  for (std::size_t i = 0; i < 5; ++i) {
    const rating::PatternLoad l = rating::pattern_load(analysis, rating::patterns_between_supports[i]);
    REQUIRE(l.places.size() == places[i].size());
    for (std::size_t k = 0; k < l.places.size(); ++k) CHECK(l.places[k] == Approx(places[i][k]));
    CHECK(centre_of(l) == Approx(3.0));
    const Response r = analysis.solve(l.unit);
    CHECK(r.total_load().z == Approx(-l.total()).epsilon(1e-12));
    CHECK(r.reactions()[0].force.z == Approx(l.total() / 4).epsilon(1e-6));
  }
  rating::Loading at_stations;
  at_stations.points_at = rating::PointsAt::stations;
  at_stations.chords = {ChordOf::top_left};
  at_stations.direction = {0, -3, 0};
  const rating::PatternLoad moved = rating::pattern_load(analysis, Pattern::fifth_points, at_stations);
  const std::vector<double> nearest{1.0, 2.5, 3.5, 5.0};
  for (std::size_t k = 0; k < 4; ++k) CHECK(moved.places[k] == Approx(nearest[k]));
  CHECK(analysis.solve(moved.unit).total_load().y == Approx(-4.0));

  // overhangs: the longer free end, also at the start
  const Analysis over{box(12, hung_at({1.5, 5.5}))}, cantilevered{box(6, cantilever())};
  CHECK(rating::pattern_load(over, Pattern::centre_point).places[0] == Approx(3.5));
  CHECK(rating::pattern_load(over, Pattern::cantilever_end).places[0] == Approx(0.0));
  CHECK(rating::pattern_load(over, Pattern::cantilever_uniform).length() == Approx(1.5));
  CHECK(rating::pattern_load(cantilevered, Pattern::cantilever_end).places[0] == Approx(3.0));
  CHECK_THROWS_AS(rating::pattern_load(analysis, Pattern::cantilever_end), BadDescription);
  CHECK_THROWS_AS(rating::pattern_load(cantilevered, Pattern::uniform), BadDescription);
  const Analysis two_bays{box(2)};
  CHECK_THROWS_AS(rating::pattern_load(two_bays, Pattern::fifth_points, at_stations), BadDescription);
}

TEST_CASE("the hand table is the table of beam statics") {
  // With M, V, g, L and all factors 1: loads P each, self-weight g deducted.
  rating::HandCapacity c;
  c.M = 90e3, c.V = 17e3, c.g = 170, c.EI = 1.5e7, c.S = 1.2e7;
  const CombinationSet ones{"plain", "of this test", "", "", 1, 1, {1, 1}, {1, 1}, {1, 1}, {1, 1}};
  const double M = c.M, V = c.V, g = c.g, L = 9.0, EI = c.EI, S = c.S;
  struct Line {
    Pattern pattern;
    double by_M, by_V, w;
  };
  const std::vector<Line> table{
      {Pattern::uniform, 8 * M / (L * L) - g, 2 * V / L - g, 5 * std::pow(L, 4) / (384 * EI) + L * L / (8 * S)},
      {Pattern::centre_point, 4 * M / L - g * L / 2, 2 * V - g * L, L * L * L / (48 * EI) + L / (4 * S)},
      {Pattern::third_points, 3 * M / L - 3 * g * L / 8, V - g * L / 2, 23 * L * L * L / (648 * EI) + L / (3 * S)},
      {Pattern::quarter_points, 2 * M / L - g * L / 4, (V - g * L / 2) / 1.5,
       19 * L * L * L / (384 * EI) + L / (2 * S)},
      {Pattern::fifth_points, 5 * M / (3 * L) - 5 * g * L / 24, (V - g * L / 2) / 2,
       63 * L * L * L / (1000 * EI) + 3 * L / (5 * S)},
      {Pattern::cantilever_uniform, 2 * M / (L * L) - g, V / L - g, std::pow(L, 4) / (8 * EI) + L * L / (2 * S)},
      {Pattern::cantilever_end, M / L - g * L / 2, V - g * L, L * L * L / (3 * EI) + L / S}};
  for (const Line& line : table) {
    const rating::HandLoad h = rating::hand_load(c, line.pattern, L, ones);
    CHECK(h.by_moment == Approx(line.by_M).epsilon(1e-12));
    CHECK(h.by_shear == Approx(line.by_V).epsilon(1e-12));
    CHECK(h.deflection == Approx(line.w * h.least()).epsilon(1e-12));
  }
  // Rules of the trade, true only where the moment governs and without self-weight: a uniform load in all is twice the
  // centre load; a cantilever's end load is the centre load of four times the span.
  c.g = 0;
  const auto by_M = [&](Pattern p, double l) { return rating::hand_load(c, p, l, ones).by_moment; };
  const auto by_V = [&](Pattern p, double l) { return rating::hand_load(c, p, l, ones).by_shear; };
  CHECK(by_M(Pattern::uniform, L) * L == Approx(2 * by_M(Pattern::centre_point, L)));
  CHECK(by_M(Pattern::cantilever_end, L) == Approx(by_M(Pattern::centre_point, 4 * L)));
  CHECK(by_V(Pattern::uniform, L) * L == Approx(by_V(Pattern::centre_point, L)));
  CHECK(by_V(Pattern::cantilever_end, L) == Approx(by_V(Pattern::centre_point, 4 * L) / 2));
}

TEST_CASE("a load table falls with the span, agrees with the hand table, and each cell is its own proof") {
  const std::vector<std::size_t> bays{12, 20, 28, 36, 44};
  rating::TableTerms terms;
  terms.loading.points_at = rating::PointsAt::stations;
  const rating::LoadTable t = rating::load_table(
      bays, [](std::size_t n) { return box(n); }, terms);
  REQUIRE(t.rows.size() == bays.size());
  for (std::size_t i = 0; i < t.rows.size(); ++i) {
    const Analysis analysis{box(bays[i])};
    const rating::HandCapacity hand = rating::hand_capacity(analysis);
    CHECK(hand.no_hand_calculation == "");
    const double L = t.rows[i].span;
    CHECK(L == Approx(0.5 * static_cast<double>(bays[i])));
    CHECK(hand.g * L == Approx(-analysis.solve({self_weight()}).total_load().z).epsilon(1e-9));
    for (std::size_t p = 0; p < 5; ++p) {
      const rating::TableCell& cell = t.rows[i].cells[p];
      CHECK(cell.pattern == terms.patterns[p]);
      REQUIRE(cell.allowable.verdict == Verdict::member);
      CHECK(cell.total == Approx(cell.each * (p == 0 ? L : static_cast<double>(p))));
      if (i > 0) CHECK(cell.total < t.rows[i - 1].cells[p].total);
      // Bending of chords and eccentric loads, which the hand calculation leaves out, cost up to a quarter. The ends'
      // diagonals carry less than V d/h, here V/2 sqrt(2) in each side, as loads lie within the end bays and chords are
      // clamped in the posts: what the frame leaves them of it.
      const rating::HandLoad h = rating::hand_load(hand, cell.pattern, L);
      const Response unit = analysis.solve(rating::pattern_load(analysis, cell.pattern, terms.loading).unit);
      double pushed = 0;
      for (std::size_t m = 0; m < analysis.model().frame.members.size(); ++m)
        if (analysis.model().frame.members[m].address.role == Role::diagonal)
          pushed = std::fmax(pushed, -unit.member(m).forces(fraction{0.5}).N);
      const double left = pushed / (-unit.total_load().z / 2 / 2 * std::sqrt(2.0));
      CHECK(left < 1.0);
      INFO(L << " m, " << rating::name(cell.pattern) << ": " << cell.each << " N, by hand " << h.by_moment << " N and "
             << h.by_shear << " N, of which diagonals have " << left);
      CHECK(cell.each < 1.03 * std::fmin(h.by_moment, h.by_shear / left));
      CHECK(cell.each > 0.72 * h.least());
      if (p == 0 || p == 1) CHECK(cell.deflection == Approx(h.deflection / h.least() * cell.each).epsilon(0.015));
    }
  }
  // M and V of the first row by hand: N_Rd of a welded chord between stations and of a diagonal between its welds
  const rating::HandCapacity hand = rating::hand_capacity(Analysis{box(12)});
  // A fo/1.1 = 197.42 kN; chord over 0.5 m: lambda 0.4845, chi 0.9109, weld 0.5; four chords 0.5 m apart: M = 2 N h
  // less their own bending, which takes I_own / I = 0.0062 of it: N = M (h/2) A/I
  const double A = chord_bar().section.area, I = 4 * (A * 0.25 * 0.25 + chord_bar().section.Iy);
  CHECK(hand.M == Approx(0.9109 * 0.5 * A * 250e6 / 1.1 * I / (A * 0.25)).epsilon(1e-4));
  // the diagonals of the sides count whether or not a face before them has any panels
  BoxGirder topless = box(12);
  topless.faces.top = Face{};
  CHECK(rating::hand_capacity(Analysis{topless}).V == Approx(hand.V).epsilon(1e-9));
  // another girder by its own span: a row does not depend on its neighbours
  const rating::LoadTable one = rating::load_table(
      std::vector<double>{14.0}, [](double L) { return box(static_cast<std::size_t>(2 * L + 0.5)); }, terms);
  for (std::size_t p = 0; p < 5; ++p) CHECK(one.rows[0].cells[p].each == t.rows[2].cells[p].each);
  CHECK_THROWS_AS(rating::load_table(std::vector<double>{}, [](double) { return box(4); }), BadDescription);
}

TEST_CASE("a table says what it assumes, and its printed loads are never more than those found") {
  rating::TableTerms terms;
  terms.terms.deflection = rating::DeflectionLimit{200, rating::DeflectionOf::variable, 0};
  terms.placed = {LoadCase{"self-weight", Nature::permanent, {self_weight(1.05)}}};
  const rating::LoadTable t = rating::load_table(
      std::vector<std::size_t>{12, 40}, [](std::size_t n) { return box(n); }, terms);
  CHECK(t.rows[1].cells[0].allowable.verdict == Verdict::deflection);
  CHECK(t.rows[1].cells[0].deflection == Approx(20.0 / 200).epsilon(1e-9));
  std::ostringstream out;
  out << t;
  const std::string text = out.str();
  for (const char* said :
       {"checked by a licensed engineer", "deducted, with their factors: self-weight", "EN 1990:2002+A1:2005",
        "orientation:", "supports: lower chords held at both ends", "NOT be added", "NOT be interpolated",
        "no dynamic factor", "length/200 of variable loads", "9.81", "each", "total", "deflection limit"})
    CHECK_MESSAGE(text.find(said) != std::string::npos, said);
  CHECK(rating::rounded_down(6.6399, 2) == "6.63");
  CHECK(rating::rounded_down(6.64, 2) == "6.64");
  CHECK(rating::rounded_down(-6.6399, 2) == "-6.63");  // a load upwards is not printed larger either
  CHECK(rating::rounded_down(-0.001, 2) == "0.00");
  terms.placed.clear();
  std::ostringstream bare;
  bare << rating::load_table(
      std::vector<std::size_t>{12}, [](std::size_t n) { return box(n); }, terms);
  CHECK(bare.str().find("NOT deducted") != std::string::npos);
  // a bar outside the scope prints its word in place of a number
  BoxGirder thin = box(12);
  thin.chord = Bar{RoundTube{200.0_mm, 2.0_mm}, material::s355h()};
  std::ostringstream outside;
  outside << rating::load_table(std::vector<int>{1}, [&](int) { return thin; });
  CHECK(outside.str().find("outside the scope: bottom left chord, class 4") != std::string::npos);
}

TEST_CASE("vertical and horizontal loads together make a closed curve whose every point is at its limit") {
  const Analysis analysis{box(12)};
  const Rater rater(analysis.solve(std::vector{own()}));
  const auto central = rating::interaction_curve(rater, {.rays = 16}),
             hanging = rating::interaction_curve(rater, {.rays = 16, .eccentricity = 0.8});
  REQUIRE(central.size() == 17);
  for (const auto& curve : {central, hanging}) {
    CHECK(curve.front().vertical == curve.back().vertical);
    CHECK(curve.front().horizontal == curve.back().horizontal);
    for (const rating::InteractionPoint& p : curve) {
      CHECK(p.allowable.verdict == Verdict::member);
      CHECK(p.allowable.row.utilisation == Approx(1.0).epsilon(1e-9));
    }
  }
  // the axes are the loads alone, and the girder is as wide to the left as to the right
  const auto alone = [&](const Vec3<>& direction, std::vector<ChordRef> chords) {
    const auto l =
        rating::pattern_load(analysis, Pattern::uniform, {std::move(chords), rating::PointsAt::places, direction});
    return rater.allowable(l.unit).factor;
  };
  CHECK(central[0].vertical == Approx(alone({0, 0, -1}, {})).epsilon(1e-9));
  CHECK(central[8].vertical == Approx(-alone({0, 0, 1}, {})).epsilon(1e-9));
  CHECK(central[4].horizontal ==
        Approx(alone({0, -1, 0}, {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{3}})).epsilon(1e-9));
  for (std::size_t i = 1; i < 8; ++i) {
    CHECK(central[i].horizontal == Approx(-central[16 - i].horizontal).epsilon(0.01));
    CHECK(central[i].vertical == Approx(central[16 - i].vertical).epsilon(0.01).scale(1e3));
  }
  // eccentric, less of the horizontal load: its torsion is h e, in all
  CHECK(hanging[4].horizontal < 0.9 * central[4].horizontal);
  CHECK(hanging[0].vertical == Approx(central[0].vertical).epsilon(1e-9));
  std::vector<Action> torque;
  rating::detail::add_unit_torque(analysis.girder(), 0.0, 6.0, 2.0, torque);
  double about_x = 0;
  const Response r = analysis.solve(torque);
  CHECK(length(r.total_load()) < 1e-9);
  for (const auto& s : r.reactions()) {
    const Vec3<> at = analysis.model()
                          .frame
                          .nodes[analysis.model().chord_node(static_cast<std::size_t>(s.address.station),
                                                             static_cast<std::size_t>(s.address.chord))]
                          .at;
    about_x += cross(at, s.force).x + s.couple.x;
  }
  CHECK(about_x == Approx(-2.0 * 6.0).epsilon(1e-9));
  CHECK_THROWS_AS(rating::interaction_curve(rater, {.rays = 3}), BadDescription);
}

TEST_CASE("a table's head says of splices and stability whether they are checked") {
  const auto head = [](const Connector& connector, const verify::Stability& stability) {
    rating::TableTerms terms;
    terms.terms.basis.stability = stability;
    terms.patterns = {Pattern::uniform};
    std::ostringstream out;
    out << rating::load_table(
        std::vector<std::size_t>{12},
        [&](std::size_t bays) {
          BoxGirder g = box(bays);
          g.modules = {0, {4}, connector};
          return g;
        },
        terms);
    return out.str();
  };
  const auto says = [](const std::string& text, const char* words) { return text.find(words) != std::string::npos; };
  const std::string plain = head(RigidSplice{}, {});
  CHECK(says(plain, "splices (their connectors are not described), stability of the whole, supports."));
  PinCoupler thin = coupler();
  thin.pin = 8e-3;
  thin.hole = 8.5e-3;
  thin.fit.slack = 1e-3;
  const std::string full = head(thin, {.checked = true, .imperfections = true});
  CHECK(says(full, "; splices, in every chord pin and fork: pin 8 mm"));
  CHECK(says(full, "bows and kinks of 5.3.3 in every combination"));
  CHECK(says(full, "Not checked: joints, welds, sway of what the girder hangs from or stands on, supports."));
  CHECK(says(full, "slack of splices with it"));
  CHECK(says(full, "chord: splice, pin in bending and shear, EN 1999-1-1:2007 8.5.14"));
}
