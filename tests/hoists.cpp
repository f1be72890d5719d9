// SPDX-License-Identifier: MIT
// Girders on several hoists: level, off level, slack, against closed forms, against girders without the slack lines,
// against every possible set of lines, and by statics.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <memory>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/closed_form.hpp>
#include <baywork/response.hpp>

#include "support/bare_bar.hpp"
#include "support/by_hand.hpp"
#include "support/if_stable.hpp"
#include "support/random.hpp"
#include "support/small_box.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

Bar tube() { return {RoundTube{60.3_mm, 5.0_mm}, material::en_aw_6082_t6()}; }
Bar thin() { return {RoundTube{33.7_mm, 3.2_mm}, material::en_aw_6082_t6()}; }

/// Two chords side by side under equal loads: two plain beams, for which the beam's closed forms are exact.
LadderGirder pair(std::size_t bays, Supports supports) {
  return {.bays = bays,
          .bay_length = 0.5,
          .depth = 0.4,
          .flat = true,
          .chord = tube(),
          .web = open(thin()),
          .supports = std::move(supports)};
}
double EI() { return 2 * tube().material.E * tube().section.Iy; }
double GA() { return 2 * tube().material.G * tube().section.shear_z; }
const std::vector<ChordRef> both{ChordOf::bottom, ChordOf::top};

BoxGirder box(std::size_t bays, Supports supports) {
  BoxGirder b = small_box(bays, tube(), thin(), thin(), std::move(supports));
  b.diaphragms = end_diaphragms(thin());
  return b;
}

const HoistCase& named(const HoistStudy& s, const std::string& words) {
  for (const HoistCase& c : s.cases())
    if (c.name.find(words) != std::string::npos) return c;
  FAIL("no case " << words);
  return s.cases()[0];
}

}  // namespace

TEST_CASE("two equal spans: the middle hoist takes what the closed form says") {
  // closed_form/two_span.hpp (force method): R = (d0 - lowered)/(f + 1/k_mid), d0 = 5 q (2l)^4/(384 EI) +
  // q (2l)^2/(8 S) + q l/k_end, f = (2l)^3/(48 EI) + 2l/(4 S) + 1/(2 k_end)
  const double q = 300, l = 3;
  for (const double k : {rigid_stiffness, 40e3}) {
    const Analysis a{pair(12, hung_at<double>({0.0, l, 2 * l}, k))};
    const double low = 0.004;
    const HoistStudy study(a.solve({line_load(both, q)}), {low, true});
    const auto hand = [&](double lowered) {
      return closed_form::two_equal_spans_uniform(
          q, l, EI(), GA(), {.end_stiffness = 2 * k, .middle_stiffness = 2 * k, .middle_lowered = lowered});
    };
    CHECK(close(study.cases()[0].pull[1], hand(0).middle_reaction.value, 1e-8));
    CHECK(close(study.cases()[0].pull[0], hand(0).end_reaction.value, 1e-8));
    CHECK(close(named(study, "hoist 2 at 3 m 4 mm low").pull[1], hand(low).middle_reaction.value, 1e-8));
    CHECK(close(named(study, "hoist 2 at 3 m 4 mm high").pull[1], hand(-low).middle_reaction.value, 1e-8));
    const HoistShare middle = study.share(1), end = study.share(0);
    CHECK(close(middle.slack_from, hand(0).slack_lowering.value, 1e-8));
    CHECK(!middle.needed);
    CHECK(middle.least == doctest::Approx(0.0));
    CHECK(study.cases()[middle.least_in].name == "hoist 2 at 3 m slack");
    // with the middle one slack the ends take half each
    CHECK(end.greatest == doctest::Approx(q * l).epsilon(1e-8));
    // lowered by a little less than d0 it still pulls, by a little more it does not, and the others carry all
    for (const double part : {0.999, 1.001}) {
      const HoistStudy near(a.solve({line_load(both, q)}), {part * middle.slack_from, false});
      const HoistCase& c = named(near, "hoist 2 at 3 m");
      const HoistCase& lowered = near.cases()[4];
      CHECK(c.pull[1] > 0);
      CHECK((lowered.pull[1] > 1e-6) == (part < 1));
      CHECK(lowered.slack[2] == (part > 1));
      if (part > 1) CHECK(close(lowered.rise[2], 0.001 * middle.slack_from, 1e-4));
    }
    CHECK(study.imbalance() < 1e-9);
  }
  // limits: 5/8 of the load for rigid supports and no shear strain; with real shear a little less
  const Analysis a{pair(12, hung_at({0.0, 3.0, 6.0}))};
  const HoistStudy rigid(a.solve({line_load(both, 300.0)}));
  const double R = rigid.cases()[0].pull[1];
  CHECK(R < 0.625 * 1800);
  CHECK(R > 0.61 * 1800);
}

TEST_CASE("four hoists at odd places, each off level, against the continuous beam") {
  const std::vector<double> at{0.5, 2.0, 5.0, 7.5};
  const Analysis a{pair(16, hung_at(at))};
  const double off = 0.0015;
  const HoistStudy study(
      a.solve({line_load(both, 400.0), point_load(ChordOf::bottom, 3.3, 200.0), point_load(ChordOf::top, 3.3, 200.0)}),
      {off, false});
  const auto hand = [&](std::size_t which, double down) {
    closed_form::StraightBeam<> beam{8.0, EI(), GA(), {}};
    for (std::size_t i = 0; i < 4; ++i) beam.supports.push_back({at[i], rigid_stiffness, i == which ? down : 0.0, 0.0});
    return closed_form::ContinuousBeam<>(beam, {{{400.0, 3.3}}, {{400.0, 400.0, 0.0, 8.0}}, {}});
  };
  REQUIRE(study.cases().size() == 9);
  for (std::size_t c = 0; c < 9; ++c) {
    const std::size_t which = c == 0 ? 4 : (c - 1) / 2;
    const auto beam = hand(which, c % 2 == 1 ? -off : off);  // high, then low
    const HoistCase& is = study.cases()[c];
    for (std::size_t i = 0; i < 4; ++i) {
      REQUIRE(beam.reaction(i) > 0);  // otherwise the beam, which is held both ways, says nothing
      CHECK(close(is.pull[i], beam.reaction(i), 1e-7));
    }
    // the chords' moment at the third hoist, half each
    const MemberView bar = is.response.member(is.response.model().chord_member(9, 0));
    CHECK(close(std::abs(bar.forces(fraction{1}, CutSide::before).My), std::abs(beam.moment(5.0)) / 2, 1e-6));
  }
  // what a line pulls per metre of another's rise: reciprocal; nothing for rigid motions
  const HoistLines lines(a);
  const std::size_t n = 8;
  double size = 0;
  for (std::size_t i = 0; i < n; ++i) size = std::max(size, lines.stiffness(i, i));
  for (std::size_t i = 0; i < n; ++i) {
    double lift = 0, turn = 0;
    for (std::size_t j = 0; j < n; ++j) {
      CHECK(std::abs(lines.stiffness(i, j) - lines.stiffness(j, i)) < 1e-7 * size);
      lift += lines.stiffness(i, j);
    }
    for (std::size_t h = 0; h < 4; ++h)
      for (const std::size_t j : study.hoists()[h].lines) turn += at[h] * lines.stiffness(i, j);
    CHECK(std::abs(lift) < 1e-6 * size);
    CHECK(std::abs(turn) < 1e-6 * size);
  }
}

TEST_CASE("the box girder on three hoists follows the two-span formula") {
  // E 70 GPa, width 0.5, depth 0.4, bays 0.5 m, two spans of 6 m, q = 1 kN/m; chords 6e-4 m2, diagonals 2.5e-4, posts
  // 1.5e-4 (1.5e-7, 0.8e-7 m4). By hand: EI = E A h^2 = 6.72e6 Nm2; S of two alternating faces 2 E Ad s h^2/d^3 =
  // 2 * 70e9 * 2.5e-4 * 0.5 * 0.16/0.640312^3 = 1.06655e7 N; d0 = 5 q 12^4/(384 EI) + q 12^2/(8 S) = 40.179 + 1.688 mm;
  // f = 12^3/(48 EI) + 12/(4 S) = 5.3571e-6 + 2.8128e-7 m/N; R = d0/f = 7425 N. A lattice is not quite a beam.
  const double E = 70e9;
  const Bar chord = bare(E, 6e-4, 1.5e-7, 3e-7), post = bare(E, 1.5e-4, 0.8e-7, 1.6e-7),
            brace = bare(E, 2.5e-4, 0.8e-7, 1.6e-7);
  const auto side = braced(alternating, brace, post);
  const BoxGirder g{.bays = 24,
                    .bay_length = 0.5,
                    .width = 0.5,
                    .depth = 0.4,
                    .chord = chord,
                    .faces = {.top = open(post), .bottom = open(post), .left = side, .right = side},
                    .diaphragms = end_diaphragms(brace),
                    .supports = hung_at({0.0, 6.0, 12.0})};
  const Analysis a{g};
  const HoistStudy study(a.solve({line_load({ChordOf::top_left, ChordOf::top_right}, 1000.0)}));
  CHECK(close(study.cases()[0].pull[1], 7425.0, 0.015));
  CHECK(close(study.share(1).slack_from, 41.867e-3, 0.015));
  CHECK(study.total() == doctest::Approx(12e3));
}

TEST_CASE("a slack hoist is a hoist that is not there") {
  const std::vector<Action> load{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 500.0),
                                 point_load(ChordOf::bottom_left, 2.2, 300.0)};
  const Analysis three{box(16, hung_at({0.5, 4.0, 7.5}))};
  const Analysis two{
      box(16, hung_at({0.5, 7.5}).with(hold(ChordOf::top_right, 4.0).fix({Motion::uy})))};  // the guy stays
  const HoistStudy study(three.solve(load), {0.0, true});
  const Response without = two.solve(load);
  const HoistCase& gone = named(study, "hoist 2 at 4 m slack");
  for (std::size_t i = 0; i < without.answer().members.size(); ++i)
    for (std::size_t k = 0; k < 6; ++k)
      CHECK(gone.response.answer().members[i].start[k] ==
            doctest::Approx(without.answer().members[i].start[k]).epsilon(1e-6).scale(1e3));
  CHECK(close(study.share(1).slack_from,
              std::max(-without.deflection(ChordOf::top_left, 4.0).z, -without.deflection(ChordOf::top_right, 4.0).z),
              1e-6));
  // the chords' envelope is over the cases: that of the missing hoist is the worst for the bottom chords' tension
  const std::vector<ChordEnvelope> chords = chord_envelopes(study);
  double most = 0;
  for (std::size_t b = 0; b < 16; ++b)
    most = std::max(most, without.chord(ChordOf::bottom_left).bay(b).extremes(0).greatest);
  CHECK(close(chords[0].tension.value, most, 1e-6));
  CHECK(study.cases()[chords[0].tension.in].name == "hoist 2 at 4 m slack");
  std::ostringstream page;
  page << study;
  // without hoist 1 the load's centre, left of 4 m, is not between the other two
  CHECK(study.share(0).needed);
  CHECK(page.str().find("hoist 1 at 0.5 m slack: THE GIRDER DOES NOT HANG") != std::string::npos);
  CHECK(page.str().find("hoist 2 at 4 m slack: THE GIRDER") == std::string::npos);
  CHECK(page.str().find("load in all 4.300 kN") != std::string::npos);

  // two hoists: each is needed
  const HoistStudy pair_of(two.solve(load));
  CHECK(pair_of.share(0).needed);
  CHECK(pair_of.share(1).needed);
  CHECK(!named(pair_of, "hoist 1 at 0.5 m slack").hangs);
  std::ostringstream table;
  table << pair_of;
  CHECK(table.str().find("hoist 2 at 7.5 m slack: THE GIRDER DOES NOT HANG") != std::string::npos);
  CHECK(table.str().find("needed") != std::string::npos);
  // off level, a girder on two hoists of two lines each only tilts: the pulls stay
  for (std::size_t h = 0; h < 2; ++h)
    for (const char* how : {" 20 mm high", " 20 mm low"})
      CHECK(close(named(pair_of, std::string(h == 0 ? "hoist 1 at 0.5 m" : "hoist 2 at 7.5 m") + how).pull[h],
                  pair_of.cases()[0].pull[h], 1e-6));
}

TEST_CASE("of all sets of lines that pull, the study finds the one that is in balance") {
  // every set of the six lines is tried on a girder that has no others: it holds if all pull and no joint of the rest
  // stays below its line; forces of two such sets are the same
  const std::vector<double> at{0.0, 2.0, 4.0};
  const std::vector<ChordOf> upper{ChordOf::top_right, ChordOf::top_left};
  const auto supports = [&](unsigned set) {
    Supports s = held_by({hold(ChordOf::bottom_left, 0.0).fix({Motion::ux, Motion::uy}),
                          hold(ChordOf::bottom_left, 4.0).fix({Motion::uy})});
    for (std::size_t i = 0; i < 6; ++i)
      if ((set >> i & 1U) != 0) s = s.with(hold(upper[i % 2], at[i / 2]).fix({Motion::uz}));
    return s;
  };
  const Analysis all{box(12, supports(63))};
  std::vector<std::unique_ptr<Analysis>> sets(64);
  for (unsigned s = 1; s < 64; ++s) sets[s] = if_stable(box(12, supports(s)));
  Random random(20240518);
  int slack_seen = 0, falls = 0;
  for (int trial = 0; trial < 25; ++trial) {
    std::vector<Action> load{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, random.over_orders(20, 400))};
    for (int i = 0; i < 2; ++i)
      load.push_back(point_load(random.chance(0.5) ? ChordOf::bottom_left : ChordOf::bottom_right, random.in(0, 6),
                                random.over_orders(100, 3000)));
    bool found = false;
    std::vector<double> pulls;
    for (unsigned s = 1; s < 64; ++s) {
      if (!sets[s]) continue;
      const Response r = sets[s]->solve(load);
      bool holds = true;
      std::vector<double> p(6, 0.0);
      std::size_t support = 0;
      for (const Reaction& x : r.answer().reactions) {
        const Support& held = r.model().frame.supports[support++];
        if (held.motion[2].kind == Restraint::Kind::free) continue;
        const Address& a = r.model().frame.nodes[x.node].address;
        const std::size_t line = 2 * static_cast<std::size_t>(a.station / 4) + (a.chord == 2 ? 0U : 1U);
        p[line] = x.value[2];
        holds = holds && x.value[2] > -1e-6;
      }
      for (std::size_t i = 0; i < 6; ++i)
        if ((s >> i & 1U) == 0) holds = holds && r.deflection(upper[i % 2], at[i / 2]).z > -1e-12;
      if (!holds) continue;
      if (found)
        for (std::size_t i = 0; i < 6; ++i) CHECK(std::abs(p[i] - pulls[i]) < 1e-3);
      found = true;
      pulls = p;
    }
    const Response level = all.solve(load);
    if (!found) {
      ++falls;
      CHECK_THROWS_AS(HoistStudy(level, {0.0, false}), UnstableFrame);
      continue;
    }
    const HoistStudy study(level, {0.0, false});
    const HoistCase& c = study.cases()[0];
    // the study's lines are in the order of the supports
    for (std::size_t h = 0; h < 3; ++h) {
      CHECK(std::abs(c.pull[h] - pulls[2 * h] - pulls[2 * h + 1]) < 1e-5 * study.total());
      for (const std::size_t l : study.hoists()[h].lines) slack_seen += c.slack[l] ? 1 : 0;
    }
    CHECK(study.imbalance() < 1e-9);
  }
  CHECK(slack_seen > 5);
  CHECK(falls > 0);
}

TEST_CASE("the complementarity problem, against every set of lines") {
  // C = A A^T of any rank: R = q + C x, R >= 0, x >= 0, R x = 0. Such problems have one R where they have any.
  Random random(7);
  int none = 0, some = 0;
  for (int trial = 0; trial < 400; ++trial) {
    const std::size_t n = 2 + random.below(5), rank = 1 + random.below(n);
    std::vector<std::vector<double>> A(n, std::vector<double>(rank)), C(n, std::vector<double>(n, 0.0));
    for (auto& row : A)
      for (double& v : row) v = random.in(-1, 1);
    std::vector<double> q(n);
    for (std::size_t i = 0; i < n; ++i) {
      q[i] = random.in(-1, 1.5);
      for (std::size_t j = 0; j < n; ++j)
        for (std::size_t k = 0; k < rank; ++k) C[i][j] += 1e5 * A[i][k] * A[j][k];
    }
    std::vector<bool> gone(n, false);
    gone[0] = random.chance(0.3);
    const detail::OneWay found(C, q, gone, 1e-6);
    // by hand: for each set of slack lines the equations C_ss x_s = -q_s by elimination
    bool exists = false;
    std::vector<double> R(n);
    for (unsigned set = 0; set < (1U << n) && !exists; ++set) {
      if (gone[0] && (set & 1U) == 0) continue;
      std::vector<std::size_t> s;
      for (std::size_t i = 0; i < n; ++i)
        if ((set >> i & 1U) != 0) s.push_back(i);
      std::vector<std::vector<double>> M(s.size(), std::vector<double>(s.size() + 1));
      for (std::size_t i = 0; i < s.size(); ++i) {
        for (std::size_t j = 0; j < s.size(); ++j) M[i][j] = C[s[i]][s[j]] / 1e5;
        M[i][s.size()] = -q[s[i]] / 1e5;
      }
      bool regular = true;
      for (std::size_t k = 0; k < s.size() && regular; ++k) {
        std::size_t best = k;
        for (std::size_t i = k; i < s.size(); ++i)
          if (std::abs(M[i][k]) > std::abs(M[best][k])) best = i;
        std::swap(M[k], M[best]);
        regular = std::abs(M[k][k]) > 1e-7;
        for (std::size_t i = 0; i < s.size() && regular; ++i) {
          if (i == k) continue;
          const double f = M[i][k] / M[k][k];
          for (std::size_t j = k; j <= s.size(); ++j) M[i][j] -= f * M[k][j];
        }
      }
      if (!regular) continue;
      bool holds = true;
      for (std::size_t i = 0; i < n; ++i) R[i] = q[i];
      for (std::size_t k = 0; k < s.size(); ++k) {
        const double x = M[k][s.size()] / M[k][k];
        holds = holds && (x >= -1e-12 || gone[s[k]]);
        for (std::size_t i = 0; i < n; ++i) R[i] += C[i][s[k]] * x;
      }
      for (const double r : R) holds = holds && r >= -1e-9;
      exists = holds;
    }
    CHECK(found.solved() == exists);
    ++(exists ? some : none);
    if (!exists || !found.solved()) continue;
    for (std::size_t i = 0; i < n; ++i) {
      double is = q[i];
      for (std::size_t j = 0; j < n; ++j) is += C[i][j] * found.x()[j];
      CHECK(std::abs(is - R[i]) < 1e-7);
      CHECK((gone[i] || found.x()[i] >= 0));
      CHECK((found.x()[i] == 0 || std::abs(is) < 1e-9));
    }
  }
  CHECK(none > 40);
  CHECK(some > 100);
}

TEST_CASE("a line that is just unloaded is no line that pushes: the girder hangs on as it is") {
  // A load on the overhang takes all that the first hoist has of a uniform one (statics: R0 = 0 where the moments about
  // the second hoist balance), but for rounding: R0 is some 1e-13 N, of either sign.
  int below = 0, trials = 0;
  for (std::size_t bays = 8; bays <= 16; bays += 2)
    for (std::size_t hold = 3; hold + 2 < bays; ++hold)
      for (const double k : {rigid_stiffness, 40e3}) {
        const double at = 0.5 * static_cast<double>(hold), end = 0.5 * static_cast<double>(bays), q = 137.0;
        if (2.0 * at <= end) continue;  // the uniform load alone would already tip it
        const Analysis a{box(bays, hung_at<double>({0.0, at}, k))};
        // q end (at - end/2) = P (end - at)
        const double P = q * end * (at - 0.5 * end) / (end - at);
        std::vector<Action> load{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, q)};
        for (const ChordOf c : {ChordOf::bottom_left, ChordOf::bottom_right})
          load.push_back(point_load(c, end, 0.5 * P));
        const Response r = a.solve(load);
        const HoistLines lines(a);
        double first = 0, least = 0;
        for (const std::size_t l : lines.hoists()[0].lines) {
          first += lines.pull(r, l);
          least = lines.pull(r, l) < least ? lines.pull(r, l) : least;
        }
        INFO(bays << " bays, hoist at " << at << " m: " << least << " N");
        REQUIRE(std::abs(first) < 1e-8 * (q * end + P));
        below += least < 0.0;
        ++trials;
        const HoistStudy study(r, {0.0, true});
        CHECK(std::abs(study.cases()[0].pull[0]) < 1e-8 * study.total());
        CHECK(close(study.cases()[0].pull[1], q * end + P, 1e-8));
        CHECK(study.imbalance() < 1e-9);
      }
  CHECK(below > trials / 4);
}

TEST_CASE("the complementarity problem where lines are just unloaded: R = 0 and x = 0 at once") {
  // Built from its answer, so that it has one: R and x as they shall be, q = R - C x with all its rounding.
  Random random(11);
  for (int trial = 0; trial < 2000; ++trial) {
    const std::size_t n = 2 + random.below(6), rank = 1 + random.below(n);
    std::vector<std::vector<double>> A(n, std::vector<double>(rank)), C(n, std::vector<double>(n, 0.0));
    for (auto& row : A)
      for (double& v : row) v = random.in(-1, 1);
    std::vector<double> R(n, 0.0), x(n, 0.0), q(n);
    for (std::size_t i = 0; i < n; ++i) {
      const double kind = random.in(0, 1);
      if (kind < 0.4) R[i] = random.in(100, 1e4);
      if (kind > 0.7) x[i] = random.in(0.001, 0.1);
    }
    for (std::size_t i = 0; i < n; ++i) {
      q[i] = R[i];
      for (std::size_t j = 0; j < n; ++j) {
        for (std::size_t k = 0; k < rank; ++k) C[i][j] += 1e5 * A[i][k] * A[j][k];
        q[i] -= C[i][j] * x[j];
      }
    }
    const detail::OneWay found(C, q, std::vector<bool>(n, false), 1e-6);
    REQUIRE(found.solved());
    for (std::size_t i = 0; i < n; ++i) {  // all answers have the same R
      double is = q[i];
      for (std::size_t j = 0; j < n; ++j) is += C[i][j] * found.x()[j];
      CHECK(std::abs(is - R[i]) < 1e-3);
      CHECK(found.x()[i] >= 0.0);
      CHECK((found.x()[i] == 0.0 || std::abs(is) < 1e-3));
    }
  }
}

TEST_CASE("hoists that mean nothing are refused") {
  BoxGirder g = box(8, cantilever());
  const Analysis clamped{g};
  const Response r = clamped.solve({self_weight()});
  CHECK_THROWS_AS(HoistStudy{r}, BadDescription);
  const Analysis hung{box(8, hung_at({0.0, 2.0, 4.0}))};
  CHECK_THROWS_AS(HoistStudy(hung.solve({self_weight()}), {-0.01, true}), BadDescription);
  // lifted by the wind
  CHECK_THROWS_AS(HoistStudy(hung.solve({line_load({ChordOf::top_left}, -300.0)})), UnstableFrame);
  // a load far out on the overhang
  const Analysis out{box(16, hung_at({2.0, 3.0}))};
  CHECK_THROWS_AS(HoistStudy(out.solve(
                      {point_load(ChordOf::bottom_left, 8.0, 500.0), point_load(ChordOf::bottom_right, 8.0, 500.0)})),
                  UnstableFrame);
}
