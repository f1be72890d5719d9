// SPDX-License-Identifier: MIT
// The first crossing on random girders, beside a dense scan of loads that evaluates every bar at every load.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/rating.hpp>

#include "support/if_stable.hpp"
#include "support/load_scan.hpp"
#include "support/random_described_girders.hpp"

namespace {

using namespace baywork;
using girders::Random;
using rating::Allowable;
using rating::Rater;
using rating::Terms;
using rating::Verdict;

/// Short girders, some with steel chords: round, hollow of two classes.
Girder short_girder(Random& r) {
  Girder g = girders::DescribedGirder(r, 3).alone();
  if (r.chance(0.5)) {
    const double size = r.in(0.04, 0.10), wall = r.in(0.003, 0.005);
    const Bar hollow{RectangularHollow{size, size * r.in(0.5, 1.0), wall}, material::s355h()};
    const Bar round{RoundTube{size, wall}, material::s235h()};
    const Bar chord = r.chance(0.7) ? hollow : round;
    for (Chord& c : g.chords) c.bar = chord;
  }
  return g;
}

std::vector<Action> random_load(Random& r, const Girder& g) {
  std::vector<Action> out;
  for (std::size_t i = 0, n = 1 + r.below(2); i < n; ++i)
    out.push_back(point_load(ChordRef(r.below(g.chords.size())), r.in(0, 1) * g.span(),
                             Vec3<>{r.in(-1, 1), r.in(-1, 1), r.in(-1, 1)}));
  if (r.chance(0.3))
    out.push_back(line_load({ChordRef(r.below(g.chords.size()))}, Vec3<>{0, r.in(-1, 1), r.in(-1, 1)},
                            Vec3<>{0, 0, r.in(-1, 1)}));
  return out;
}

}  // namespace

TEST_CASE("on random girders no load below the allowable one fails, and just above it one bar does") {
  std::size_t rated = 0, fell = 0;
  for (std::uint64_t seed = 1; rated < 110; ++seed) {
    REQUIRE(seed < 1000);
    Random r(seed);
    const Girder g = short_girder(r);
    const auto analysis = if_stable(g);
    if (!analysis) continue;
    // placed: a load of its own at half to nearly all that is allowed of it
    Terms terms;
    terms.set.permanent_favourable = terms.set.permanent_unfavourable;
    const Response first = analysis->solve(random_load(r, g));
    const Allowable of_first = Rater(*analysis, terms).allowable(first);
    if (of_first.verdict != Verdict::member) continue;
    const PlacedAndLoad loads(r, first, of_first.factor, 0.5, [&] { return analysis->solve(random_load(r, g)); });

    const Rater rater(loads.placed, terms);
    const Allowable a = rater.allowable(loads.unit);
    INFO("seed " << seed << ", " << g.chords.size() << " chords, " << g.bays() << " bays");
    if (a.verdict != Verdict::member) continue;
    ++rated;
    fell += falls_below(rater, loads.unit, a, 400);
    CHECK(rater.utilisation(loads.unit, a.factor) > 1.0 - (a.jumps ? 1.0 : 1e-9));
    // the proof of all cases together, solved and combined anew, says the same
    loads.prove_beside(terms, a.factor, [](const verify::Proof&, double) {});
  }
  CHECK(fell > 20);  // a load that helps first is no exception here
}

TEST_CASE("all forces of a loaded bar lie within the reach of its ends and loads") {
  std::size_t loaded = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    Random r(seed);
    const Girder g = short_girder(r);
    const auto analysis = if_stable(g);
    if (!analysis) continue;
    std::vector<Action> there = random_load(r, g), more = random_load(r, g);
    more.push_back(
        point_load(ChordRef(r.below(g.chords.size())), r.in(0, 1) * g.span(), Vec3<>{}, Vec3<>{r.in(-1, 1), 1, -1}));
    const Response placed = analysis->solve(there);
    rating::detail::Line line{0, 1.5};
    line.there.emplace(placed);
    const Response load = analysis->solve(more);
    const rating::detail::Unit unit(load);
    const rating::detail::Course course(line, &unit);
    const verify::detail::MemberDesign design(*analysis, {}, verify::Standards::by_material);
    const double from = r.in(0, 1), to = from + r.in(0, 2);
    std::vector<MemberLoad> loads;
    rating::detail::Trace trace;
    for (std::size_t m = 0; m < design.size(); ++m) {
      const auto range = course.range(m, from, to);
      const double slack =
          1e-9 * (1 + std::abs(range.N_least) + std::abs(range.N_most) + range.others.My + range.others.Mz);
      for (const double t : {0.0, 0.4, 1.0}) {
        const auto s = course.member(course.at(from + t * (to - from)), m, loads);
        loaded += s.loads.count > 0;
        rating::detail::trace(design, m, s.start, s.loads, 0, trace);
        for (const auto& [f, at] : trace.sections) {
          CHECK(f.N >= range.N_least - slack);
          CHECK(f.N <= range.N_most + slack);
          CHECK(std::abs(f.Vy) <= range.others.Vy + slack);
          CHECK(std::abs(f.Vz) <= range.others.Vz + slack);
          CHECK(std::abs(f.T) <= range.others.T + slack);
          CHECK(std::abs(f.My) <= range.others.My + slack);
          CHECK(std::abs(f.Mz) <= range.others.Mz + slack);
        }
      }
    }
  }
  CHECK(loaded > 50);
}

TEST_CASE("a bound of at most 1 between two sets of forces holds for all between them") {
  using rating::detail::Trace;
  const auto steel = material::s355h();
  const auto alloy = material::en_aw_6082_t6();
  const std::vector<Bar> bars{{RectangularHollow{0.06, 0.04, 0.004}, steel},
                              {RectangularHollow{0.12, 0.12, 0.0035}, steel},
                              {RoundTube{0.0603, 0.005}, steel},
                              {IShape{0.08, 0.06, 0.004, 0.005}, material::s355()},
                              {RectangularHollow{0.06, 0.04, 0.004}, alloy},
                              {RoundTube{0.0603, 0.005}, alloy},
                              {IShape{0.08, 0.06, 0.004, 0.005}, alloy},
                              {SolidRectangle{0.05, 0.02}, steel}};
  Random r(7);
  for (const Bar& bar : bars) {
    const Analysis analysis{LadderGirder{
        .bays = 1, .bay_length = 0.4, .depth = 0.5, .chord = bar, .web = open(bar), .supports = cantilever()}};
    const verify::detail::MemberDesign design(analysis, {}, verify::Standards::by_material);
    const double fA = bar.section.area * 2e8, fW = bar.section.Wel_y * 2e8;
    std::size_t close = 0;
    for (int i = 0; i < 2000; ++i) {
      const auto forces = [&] {
        const auto some = [&](double size) { return r.chance(0.3) ? 0.0 : r.in(-1, 1) * size; };
        return verify::SectionForces{some(fA), some(0.3 * fA), some(0.3 * fA), some(fW), some(fW), some(fW)};
      };
      const verify::SectionForces fa = forces(), fb = forces();
      const auto trace = [&](const verify::SectionForces& f, double size) {
        const verify::SectionForces s = rating::detail::sum({}, f, size);
        Trace out;
        out.sections.emplace_back(s, verify::detail::Place{0.2, 0, en1999::Softening::none});
        out.greatest.take(s, 0.2);
        return out;
      };
      double low = 0, high = 100;
      while (high - low > 1e-6 * high) {
        const double size = 0.5 * (low + high);
        const Trace ta = trace(fa, size), tb = trace(fb, size);
        (rating::detail::bound_between(design, 0, std::array{&ta, &tb}) <= 1.0 ? low : high) = size;
      }
      double most = 0;
      for (int k = 0; k <= 16; ++k) {
        const verify::SectionForces between =
            rating::detail::sum(rating::detail::sum({}, fa, k / 16.0), fb, 1.0 - k / 16.0);
        const double u = rating::detail::utilisation(design, 0, trace(between, low));
        CHECK(u <= 1.0 + 1e-12);
        most = u > most ? u : most;
      }
      close += most > 0.9;
    }
    CHECK(close > 100);  // the bound is no idle one
  }
}
