// SPDX-License-Identifier: MIT
// Stability of the whole and bows inside an allowable load: by hand, and on random girders beside a dense scan.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"
#include "support/load_scan.hpp"
#include "support/small_box.hpp"
#include "support/varied_frames.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using rating::Allowable;
using rating::Rater;
using rating::Terms;
using rating::Verdict;
using varied::Random;

Bar tube(double d, double t, const material::Material& m) { return {RoundTube{d, t}, m}; }

/// N pushes every chord from end to end.
std::vector<Action> pushed(const Girder& g, double N) {
  std::vector<Action> out;
  for (std::size_t c = 0; c < g.chords.size(); ++c) {
    out.push_back(point_load(ChordRef(c), 0.0, Vec3<>{N, 0, 0}));
    out.push_back(point_load(ChordRef(c), g.span(), Vec3<>{-N, 0, 0}));
  }
  return out;
}
std::vector<Action> random_load(Random& r, const Girder& g) {
  std::vector<Action> out;
  for (std::size_t i = 0, n = 1 + r.below(2); i < n; ++i)
    out.push_back(point_load(ChordRef(r.below(g.chords.size())), r.in(0.1, 0.9) * g.span(),
                             Vec3<>{r.in(-1, 1), r.in(-0.3, 0.3), r.in(-1, 1)}));
  if (r.chance(0.6))
    for (const Action& a : pushed(g, r.in(0.2, 2.0))) out.push_back(a);
  return out;
}

}  // namespace

TEST_CASE("forces of first order end a load where a pair reaches a tenth of its critical load: by hand") {
  // Four chords 60.3 x 5 of S355 (A 868.6504 mm2, I 334765.9 mm4: Wpl and I of EN 10210-2 Annex B, of the ring) pushed
  // alike by 1.5 f 10 kN, cross members 48.3 x 4 (I 137675.8 mm4), a = b = 0.5 m, L = 6 m: the open pair as a column
  // soft in shear, EN 1993-1-1 6.4.1, N_cr = P/(1 + P/S) + pi² 2 E I/L², P = pi² E A b²/2/L², 1/S = a²/(2 pi² E I) +
  // a b/(12 E I_b) + 1/(2 G Av) + a/(b G Av_b). The opposite pair is pushed as well, so that no ring helps.
  const Analysis analysis{stiff_ended_box(material::s355h(), 12)};
  const double E = 210e9, G = 81e9, A = 868.6504e-6, I_ch = 334765.9e-12, I_b = 137675.75e-12, a = 0.5, L = 6.0;
  const double Av = analysis.girder().chords[0].bar.section.shear_y, Av_b = RoundTube{48.3_mm, 4.0_mm}.data().shear_y;
  const double S = 1 / (a * a / (2 * pi * pi * E * I_ch) + a * a / (12 * E * I_b) + 1 / (2 * G * Av) + 1 / (G * Av_b));
  const double P = pi * pi * E * A * a * a / 2 / (L * L), N_cr = P / (1 + P / S) + pi * pi * 2 * E * I_ch / (L * L);
  const Response unit = analysis.solve(pushed(analysis.girder(), 10e3));
  // the sides' diagonals take about a hundredth of the push: what is left in the chords, the mean of neighbouring bays
  double N = 0;
  for (std::size_t station = 1; station < 12; ++station) {
    double both = 0;
    for (const ChordOf c : {ChordOf::top_left, ChordOf::top_right})
      for (const std::size_t bay : {station - 1, station}) both -= 0.5 * unit.chord(c).bay(bay).forces(fraction{0.5}).N;
    N = both > N ? both : N;
  }
  CHECK(N == Approx(20e3).epsilon(0.02));
  const Allowable found = Rater(analysis, terms_with({true})).allowable(unit);
  REQUIRE(found.verdict == Verdict::topic);
  CHECK(found.jumps);
  CHECK(found.beyond.check == verify::Check::outside_scope);
  CHECK(std::string(found.beyond.reason).find("a tenth of the critical load") != std::string::npos);
  CHECK(close(1.5 * found.factor * N, 0.1 * N_cr, 1e-6));
  // with bows forces count up to a third of it, if nothing fails before
  const Allowable bowed = Rater(analysis, terms_with({true, true})).allowable(unit);
  REQUIRE(bowed.is_load());
  CHECK(bowed.factor > found.factor);
  CHECK(1.5 * bowed.factor * N <= N_cr / 3 * (1 + 1e-9));
}

TEST_CASE("a chord that no face holds leaves no load, unless the frame's eigenvalue stands for it") {
  const Bar chord = tube(60.3_mm, 4.0_mm, material::s355h());
  const Analysis analysis{LadderGirder{.bays = 8,
                                       .bay_length = 0.5,
                                       .depth = 0.5,
                                       .chord = chord,
                                       .web = braced(alternating, tube(33.7_mm, 3.2_mm, material::s355h()), chord),
                                       .supports = simply_supported()}};
  const std::vector<Action> load{line_load({ChordOf::top}, 1.0)};
  const Allowable none = Rater(analysis, terms_with({true})).allowable(load);
  CHECK(none.verdict == Verdict::outside_scope);
  CHECK(none.factor == 0.0);
  CHECK(std::string(none.row.reason).find("holds") != std::string::npos);
  const Response unit = analysis.solve(load);
  const Allowable some = Rater(analysis, terms_with({true, false, true})).allowable(unit);
  REQUIRE(some.is_load());
  // the eigenvalue of the same loads, at the tenth up to which forces of first order hold, or below
  const double critical = verify::critical_factor(unit, 1e-8).factor;
  CHECK(1.5 * some.factor <= 0.1 * critical * (1 + 1e-6));
  if (some.jumps) CHECK(close(1.5 * some.factor, 0.1 * critical, 1e-4));
}

TEST_CASE("what splices push on the faces is in a load also without bows, as in a proof") {
  BoxGirder made = stiff_ended_box(material::s235h(), 8);
  const Analysis whole(made);
  made.modules = {0, {4}};  // rigid: the same frame
  const Analysis analysis(made);
  const Terms terms = terms_with({true});
  const std::vector<Action> load = pushed(analysis.girder(), 1e3);
  const Response first = analysis.solve(load);
  const Rater rater(analysis, terms);
  const Allowable a = rater.allowable(first);
  REQUIRE(a.is_load());
  for (const double share : {0.3, 1 - 1e-6, 1 + 1e-6}) {
    const Response there = combine<double>({&first}, {share * a.factor}, "load");
    const Cases cases(analysis, {there}, {{"load", Nature::imposed, ""}});
    const verify::Proof proof = verify::by_material(cases, terms.set, terms.basis);
    CHECK(proof.passes() == (share < 1));
    if (share < 1)
      CHECK(proof.worst().utilisation == Approx(rater.utilisation(first, share * a.factor)).epsilon(1e-9));
    bool pushed_there = false;
    for (const Combination& c : proof.combinations())
      pushed_there = pushed_there || c.name.find("kinks") != std::string::npos;
    CHECK(pushed_there);
  }
  const double here = rater.utilisation(first, 0.5 * a.factor);
  CHECK(here > 1.001 * Rater(whole, terms).utilisation(whole.solve(load), 0.5 * a.factor));
}

TEST_CASE("stability on random girders: no load below the allowable one fails, and just above it one part does") {
  std::size_t rated = 0, by_pair = 0, by_scope = 0, with_bow = 0, fell = 0, by_value = 0, both = 0;
  for (std::uint64_t seed = 1; rated < 30; ++seed) {
    REQUIRE(seed < 200);
    Random r(seed);
    const bool alloy = r.chance(0.5);
    BoxGirder made =
        stiff_ended_box(alloy ? material::en_aw_6082_t6() : material::s235h(), 4 + r.below(5),
                        r.chance(0.5) ? 5.0_mm : 3.2_mm);
    made.depth = r.in(0.4, 0.7);
    made.width = r.in(0.4, 0.9);
    if (r.chance(0.3)) made.diaphragms.ends = false;
    if (r.chance(0.3)) made.supports = hung_at({0.0, 0.5 * static_cast<double>(made.bays - 1)});
    const bool bows = r.chance(0.6), eigenvalue = r.chance(bows ? 0.3 : 0.4);
    if (bows && r.chance(0.4)) made.modules = {0, {2}, alloy ? Connector(coupler()) : Connector(plates())};
    const Girder g = made.girder();
    const Analysis analysis(g);
    Terms terms = terms_with({true, bows, eigenvalue});
    terms.set.permanent_favourable = terms.set.permanent_unfavourable;
    const Response first = analysis.solve(random_load(r, g));
    const Allowable of_first = Rater(analysis, terms).allowable(first);
    INFO("seed " << seed << " " << of_first);
    if (!of_first.is_load()) continue;
    const PlacedAndLoad loads(r, first, of_first.factor, 0.3, [&] { return analysis.solve(random_load(r, g)); });
    const Rater rater(loads.placed, terms);
    const Allowable a = rater.allowable(loads.unit);
    INFO(a);
    if (!a.is_load()) continue;
    ++rated;
    by_value += eigenvalue && !bows;
    both += eigenvalue && bows;
    by_pair += a.row.check == verify::Check::chord_pair || a.row.check == verify::Check::built_up;
    by_scope += a.jumps && a.beyond.check == verify::Check::outside_scope;
    with_bow += a.combination.find("bow") != std::string::npos;
    if (eigenvalue) {  // every state costs a search for it
      for (int i = 0; i <= 20; ++i) CHECK(rater.utilisation(loads.unit, a.factor * i / 20 * (1 - 1e-9)) <= 1.0);
      CHECK(rater.utilisation(loads.unit, a.factor * (1 + 1e-6)) > 1.0);
      CHECK(rater.allowable(loads.unit, rating::Search::every_bar).factor == Approx(a.factor).epsilon(1e-6));
    } else {
      fell += falls_below(rater, loads.unit, a, 60);
    }
    // the proof of all cases together, solved and combined anew, with its own bows, says the same
    loads.prove_beside(terms, a.factor, [&](const verify::Proof& proof, double share) {
      CHECK(proof.worst().utilisation >= rater.utilisation(loads.unit, share * a.factor) * (1 - 1e-6));
    });
  }
  CHECK(by_pair + by_scope > 8);
  CHECK(with_bow > 5);
  CHECK(fell > 5);
  CHECK(by_value > 4);
  CHECK(both > 4);
}
