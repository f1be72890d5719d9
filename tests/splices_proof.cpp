// SPDX-License-Identifier: MIT
// Splices in a proof: rows recomputed from their text, and by hand from the frame's forces; what must not pass.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"
#include "support/recomputed_rows.hpp"
#include "support/small_box.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using verify::Check;
using verify::Proof;
using verify::Row;

constexpr double kN = 1e3;

/// Six bays, spliced in the middle; alloy with couplers or spigots, steel with plates.
BoxGirder box(const Connector& c, const material::Material& m) {
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, m}, brace{RoundTube{33.7_mm, 3.2_mm}, m};
  BoxGirder b = small_box(6, chord, brace, brace);
  b.modules = {0, {3}, c};
  return b;
}
BoxGirder aluminium(const Connector& c) { return box(c, material::en_aw_6082_t6()); }
BoxGirder steel(const Connector& c) { return box(c, material::s355h()); }

std::vector<LoadCase> cases(double up = 1.0) {
  return {{"self-weight", Nature::permanent, {self_weight()}},
          {"screen", Nature::imposed, {line_load({ChordOf::bottom_left, ChordOf::bottom_right}, up * 4.0_kN_per_m)}},
          {"wind", Nature::wind, {wind_on(Side::left, 900.0), point_load(ChordOf::bottom_left, 1.2, {0, -800, 0})}}};
}
Proof prove(const BoxGirder& g, const std::vector<LoadCase>& loads = cases()) {
  const Analysis a{g};
  return verify::by_material(a.solve(loads), en1990::ultimate());
}
/// Proof of one response, and the response's connector forces.
struct One {
  Analysis analysis;
  Response response;
  Proof proof;
  One(const BoxGirder& g, const std::vector<Action>& load, const verify::Basis& basis = {})
      : analysis(g), response(analysis.solve(load)), proof(verify::by_material(response, basis)) {}
  CutForces at(std::size_t chord) const { return response.splice(3)[chord]; }
  /// The row of a chord whose remark begins so.
  Row row(std::size_t chord, const std::string& remark) const {
    for (const Row& r : proof.rows())
      if (r.check == Check::splice && r.address.chord == static_cast<int>(chord) &&
          std::string(r.reason).rfind(remark, 0) == 0)
        return r;
    FAIL("no row " << remark);
    return {};
  }
};
const std::vector<Action> hung{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 5.0_kN_per_m),
                               point_load(ChordOf::top_left, 0.7, {0, -600, 0})};

std::vector<Row> splice_rows(const Proof& p) {
  std::vector<Row> out;
  for (const Row& r : p.rows())
    if (r.check == Check::splice) out.push_back(r);
  return out;
}

}  // namespace

TEST_CASE("every splice row can be recomputed from what it prints") {
  PinCoupler again = coupler();
  again.replaceable = true;
  Spigot tube = spigot();
  tube.wall = 10_mm;
  tube.pins = 1;
  std::size_t kinds = 0;
  for (const BoxGirder& g :
       {aluminium(coupler()), aluminium(again), steel(plates()), aluminium(spigot()), aluminium(tube)}) {
    const std::vector<Row> rows = splice_rows(prove(g));
    for (const Row& row : rows) {
      recompute_row(row);
      CHECK(row.member == no_member);
      CHECK(verify::place(row).rfind("station 4, ", 0) == 0);
      CHECK(row.standard[0] == 'E');
    }
    kinds += rows.size() / 4;
  }
  CHECK(kinds >= 40);
}

TEST_CASE("coupler rows by hand from the frame's forces") {
  const One o(aluminium(coupler()), hung);
  for (std::size_t c = 0; c < 4; ++c) {
    const CutForces f = o.at(c);
    REQUIRE(std::abs(f.My) < 1e-6);  // the pin lies level
    // F = sqrt(N^2 + Vz^2) + 2 (|Mz| + |T|)/(20 + 1 + 10 mm)
    const double F = std::hypot(f.N, f.Vz) + 2 * (std::abs(f.Mz) + std::abs(f.T)) / 0.031;
    // shear: F/2 against 0.6 pi 16^2/4 * 490/1.25 = 47.290 kN
    CHECK(close(o.row(c, "pin in shear").utilisation, F / 2 / (47.2898 * kN), 1e-5));
    // softened blade 20 mm of 6082 T6, fo,haz 125: 1.5 * 20 * 16 * 125/1.25 = 48 kN; the plates of the fork 24 kN each
    CHECK(close(o.row(c, "blade in bearing").utilisation, F / (48 * kN), 1e-9));
    CHECK(close(o.row(c, "plate of the fork in bearing").utilisation, F / (48 * kN), 1e-9));
    // bending: F (20 + 2 + 20)/8 mm against 1.5 * pi 16^3/32 * 355/1.25 = 171.305 Nm
    const double m = F * 42 * mm / 8 / 171.305, v = F / 2 / (47.2898 * kN);
    CHECK(close(o.row(c, "pin in bending and shear").utilisation, m * m + v * v, 1e-5));
    // pulled chords: 16 mm take what needs them all by F * 1.25/(2 * 20 * 125) + 2/3 * 16.5 mm, which is 20 kN; sides
    // 42 kN; pushed chords have no N in it
    const double pull = F - std::hypot(f.N, f.Vz) + std::hypot(std::max(f.N, 0.0), f.Vz);
    CHECK(close(o.row(c, "metal between the hole and the plate's end").utilisation, pull / (20 * kN), 1e-9));
    CHECK(close(o.row(c, "metal between the hole and the plate's sides").utilisation, pull / (42 * kN), 1e-9));
    // blade at its root, w = 16.5 + 32 = 48.5, f = 125/1.1: N/(w t) + 6 V reach/(t w^2) + 6 (H reach + M)/(w t^2); each
    // plate of the fork: half of F and V, all of H
    const double fo = 125 * MPa / 1.1, w = 48.5 * mm;
    const auto root = [&](double t, double share, double M) {
      return (share * F / (w * t) + 6 * share * std::abs(f.Vz) * 35 * mm / (t * w * w) +
              6 * (std::abs(f.Vy) * 35 * mm + M) / (w * t * t)) /
             fo;
    };
    const double blade = root(20 * mm, 1, std::abs(f.Mz) + std::abs(f.T)), fork = root(10 * mm, 0.5, 0);
    CHECK(close(o.row(c, blade >= fork ? "blade at its root" : "plate of the fork at its root").utilisation,
                std::max(blade, fork), 1e-9));
    // weld, throat 4: the root's forces on a ring of 60.3 mm (line loads as in weld.hpp)
    const double M = std::hypot(std::abs(f.Vz) * 35 * mm, std::abs(f.Mz) + std::abs(f.Vy) * 35 * mm);
    const double n = std::abs(f.N) / (pi * 60.3 * mm) + 4 * M / (pi * 60.3 * mm * 60.3 * mm);
    const Row weld = o.row(c, "weld between connector and chord");
    CHECK(weld.demand >= n * std::sqrt(2.0) / (4 * mm) * 0.999);  // throat: sqrt(2) n/a and more with shear
    CHECK(weld.utilisation > 0);
  }
}

TEST_CASE("end-plate rows by hand from the frame's forces") {
  const One o(steel(plates()), hung);
  // m = (110 - 60.3)/2 - 0.8 * 4 sqrt(2) = 20.3245, e = 20, n = 20; pitch pi 60.3/6 = 31.573 mm = l_eff (2 pi m 127.7,
  // 4 m + 1.25 e 106.3); M_pl = 0.25 * 31.573 * 225 * 355 = 630.48 Nm; M12 8.8: As = 84.267 mm2, 48.538 kN each.
  // Mode 1: 4 * 630.48/0.0203245 = 124.08 kN; mode 2: (2 * 630.48 + 20e-3 * 97.075e3)/0.0403245 = 79.417 kN; mode
  // 3: 97.08 kN. One bolt: 39.709 kN.
  for (std::size_t c = 0; c < 4; ++c) {
    const CutForces f = o.at(c);
    const double M = std::hypot(f.My, f.Mz) + std::abs(f.N) * 2 * mm;
    const double F_t = std::max(0.0, f.N / 6 + 4 * M / (6 * 110 * mm)),
                 F_v = std::hypot(f.Vy, f.Vz) / 6 + 2 * std::abs(f.T) / (6 * 110 * mm);
    const bool pulled = F_t > 0;
    const std::vector<Row> rows = splice_rows(o.proof);
    const auto stub = std::find_if(rows.begin(), rows.end(), [&](const Row& r) {
      return std::string(r.clause) == "6.2.4, Table 6.2" && r.address.chord == static_cast<int>(c);
    });
    CHECK((stub != rows.end()) == pulled);
    if (pulled) CHECK(close(stub->utilisation, F_t / (39.709 * kN), 1e-4));
    CHECK(close(o.row(c, "bolt in shear").utilisation,
                F_v / (0.6 * 800e6 * 84.267e-6 / 1.25) + F_t / (1.4 * 39.709 * kN), 1e-4));
    // punching: prying grows the bolt's force by 48.538/39.709; 0.6 pi 18 * 15 * 490/1.25 = 199.503 kN
    if (pulled) CHECK(close(o.row(c, "bolt's head").utilisation, F_t * 48.538 / 39.709 / (199.503 * kN), 1e-4));
    // bearing: e1 = e2 = 20 mm of 57.6/2: k1 = 2.5, alpha = 20/39: 2.5 * 0.512821 * 490 * 12 * 15/1.25 = 90.462 kN
    CHECK(close(o.row(c, "plate in bearing").utilisation, F_v / (90.462 * kN), 1e-4));
    // chord 60.3 x 5: A = 868.65 mm2, Wel = 11104 mm3, 355 MPa
    CHECK(close(o.row(c, "chord at the plate").utilisation,
                std::abs(f.N) / (868.65e-6 * 355e6) + M / (11104e-9 * 355e6), 1e-4));
  }
}

TEST_CASE("spigot rows by hand from the frame's forces") {
  const One o(aluminium(spigot()), hung);
  for (std::size_t c = 0; c < 4; ++c) {
    const CutForces f = o.at(c);
    const double V = std::hypot(f.Vy, f.Vz), M = std::hypot(f.My, f.Mz), l = 120 * mm;
    // two pins: F = sqrt((N/2)^2 + (T/50 mm)^2); one plane carries half: 0.6 pi 36 * 490/1.25 = 26.6005 kN
    const double F = std::hypot(f.N / 2, f.T / (50 * mm));
    CHECK(close(o.row(c, "pin in shear").utilisation, F / 2 / (26.6005 * kN), 1e-5));
    // chord's wall 5 mm, fo 250 (not softened): 1.5 * 5 * 12 * 250/1.25 = 18 kN against F/2; solid spigot, fo 250:
    // 1.5 * 50 * 12 * 260/1.25 for 20 mm < D: bar above 20 mm has 260 MPa
    CHECK(close(o.row(c, "chord's wall in bearing").utilisation, F / 2 / (18 * kN), 1e-9));
    CHECK(close(o.row(c, "spigot in bearing").utilisation, F / (187.2 * kN), 1e-9));
    // first hole at 20 + 6.25 = 26.25 mm, last at 93.75 of 120
    const auto left = [&](double x) {
      const double r = x / l;
      return M * (1 - 3 * r * r + 2 * r * r * r) + V * x * (1 - r) * (1 - r);
    };
    // chord: 743.65 mm2 and 7925 mm3 net, fu 290/1.25; spigot: 1338.5 mm2 and 7063.6 mm3, fu 310/1.25
    CHECK(close(o.row(c, "chord at the hole").utilisation,
                std::abs(f.N) / (0.9 * 743.65e-6 * 232e6) + (M + V * 93.75 * mm - left(93.75 * mm)) / (7925e-9 * 232e6),
                1e-3));
    CHECK(close(o.row(c, "spigot at the hole").utilisation,
                std::abs(f.N) / (0.9 * 1338.5e-6 * 248e6) + left(26.25 * mm) / (7063.6e-9 * 248e6), 1e-3));
    // between the chords: A = 1963.5 mm2, W = 12272 mm3, 260/1.1
    CHECK(close(o.row(c, "spigot between").utilisation,
                std::abs(f.N) / (1963.5e-6 * 260e6 / 1.1) + (M + 4 * V * l / 27) / (12272e-9 * 260e6 / 1.1), 1e-4));
    const double q = 4 * V / l + 6 * M / (l * l);
    CHECK(close(o.row(c, "chord's mouth in bearing").utilisation, q / (1.5 * 50 * mm * 250e6 / 1.25), 1e-9));
    CHECK(close(o.row(c, "chord's mouth in ring").utilisation, q / (2 * 5 * mm) / (250e6 / 1.1), 1e-9));
  }
}

TEST_CASE("splices that are not described are said not to be covered") {
  const Proof plain = prove(aluminium(RigidSplice{}));
  CHECK(splice_rows(plain).empty());
  const auto says = [](const std::vector<std::string>& list, const std::string& words) {
    return std::any_of(list.begin(), list.end(),
                       [&](const std::string& s) { return s.find(words) != std::string::npos; });
  };
  CHECK(says(plain.not_covered(), "their connectors are not described"));
  const Proof described = prove(aluminium(coupler()));
  CHECK(!says(described.not_covered(), "not described"));
  CHECK(says(described.assumptions(),
             "in every chord pin and fork: pin 16 mm in holes of 16.5 mm, level; blade 20 mm, fork 2 x 10"));
  // whoever changes a number of a connector changes its words, from which a report's digest is made
  const auto differ = [](const Connector& a, const Connector& b) { CHECK(words_of(a) != words_of(b)); };
  PinCoupler c = coupler();
  c.reach += 1e-6;
  differ(c, coupler());
  BoltedEndPlate p = plates();
  p.bolt.grade = BoltClass::c10_9;
  differ(p, plates());
  Spigot s = spigot();
  s.fit.slack = 1e-4;
  differ(s, spigot());
  std::ostringstream page;
  page << described;
  CHECK(page.str().find("splice") != std::string::npos);
}

TEST_CASE("the worst combination is kept, row by row") {
  const Analysis a{aluminium(coupler())};
  const Cases solved = a.solve(cases());
  const Proof all = verify::by_material(solved, en1990::ultimate());
  std::vector<double> most;
  std::size_t n = 0;
  for (std::size_t i = 0; i < all.combinations().size(); ++i) {
    const std::vector<Row> one = splice_rows(verify::by_material(solved.combine(all.combinations()[i])));
    n = std::max(n, one.size());
    if (one.size() != splice_rows(all).size()) continue;
    if (most.empty()) most.resize(one.size());
    for (std::size_t k = 0; k < one.size(); ++k) most[k] = std::max(most[k], one[k].utilisation);
  }
  const std::vector<Row> rows = splice_rows(all);
  REQUIRE(most.size() == rows.size());
  CHECK(n == rows.size());
  for (std::size_t k = 0; k < rows.size(); ++k) {
    CHECK(close(rows[k].utilisation, most[k], 1e-9));
    const std::vector<Row> again =
        splice_rows(verify::by_material(solved.combine(all.combinations()[rows[k].combination])));
    CHECK(close(again[k].utilisation, rows[k].utilisation, 1e-9));
  }
}

TEST_CASE("what cannot be checked does not pass") {
  const auto outside = [](const BoxGirder& g, const std::string& words) {
    const Proof p = prove(g, cases(0.01));
    bool said = false;
    for (const Row& r : p.outside_scope()) said = said || std::string(r.reason).find(words) != std::string::npos;
    CHECK_MESSAGE(said, words);
    CHECK(!p.passes());
    CHECK(p.verdict().rfind("not proved", 0) == 0);
  };
  PinCoupler c = coupler();
  c.plate_material = material::s355();  // welded to an alloy chord
  outside(aluminium(c), "different metals");
  c.throat = 0;  // bolted or clamped on: not welded, only the pin is proved
  CHECK_NOTHROW(prove(aluminium(c)));
  c.pin_material.steps.clear();
  outside(aluminium(c), "strength of a part is not known");
  BoltedEndPlate p = plates();
  p.bolt_circle = 80_mm;
  outside(steel(p), "so near the chord");
  p = plates();
  p.throat = 2_mm;
  outside(steel(p), "below 3 mm");
  BoxGirder square = steel(plates());
  square.chord = Bar{SquareHollow{60_mm, 5_mm}, material::s355h()};
  outside(square, "not a round tube");
  Spigot s = spigot();
  s.diameter = 51_mm;  // the chord has 50.3 mm
  CHECK_THROWS_AS(prove(aluminium(s)), BadDescription);
}

TEST_CASE("unsafe readings of a splice fail") {
  // softened plates: the coupler's blade counts with fo,haz though its alloy has 250 MPa
  PinCoupler unwelded = coupler();
  unwelded.welded = false;
  const One soft(aluminium(coupler()), hung), hard(aluminium(unwelded), hung);
  CHECK(close(soft.row(0, "blade in bearing").utilisation, 2 * hard.row(0, "blade in bearing").utilisation, 1e-9));
  // a pin drawn again has 0.4 of the bearing left: 0.6/1.5, and gamma 1 for gamma_Mp
  PinCoupler again = coupler();
  again.replaceable = true;
  const One drawn(aluminium(again), hung);
  CHECK(close(drawn.row(0, "pin that is drawn again").utilisation,
              drawn.row(0, "blade in bearing").utilisation * 1.5 / 0.6 / 1.25, 1e-9));
  // eccentric bolts: the moment N e counts though the frame's axes meet
  BoltedEndPlate centred = plates();
  centred.eccentricity = 0;
  const One off(steel(plates()), hung), on(steel(centred), hung);
  CHECK(off.row(0, "bolt in shear").utilisation > on.row(0, "bolt in shear").utilisation * 1.02);
  // a coupler farther from its weld: shear bends plates and weld over the reach
  PinCoupler far = coupler();
  far.reach = 105_mm;
  const One longer(aluminium(far), hung);
  CHECK(longer.row(0, "weld between").utilisation > soft.row(0, "weld between").utilisation);
  const double near_root = soft.row(0, "").utilisation;
  CHECK(near_root > 0);
}

TEST_CASE("a spigot that its holes leave nothing of, or more holes than two, or too little metal behind them") {
  // a hole of 30 mm leaves 1963.5 - 1500 mm2 of 50 mm, and 306.80e3 - 30 * 50^3/12 < 0 mm4: nothing bends
  Spigot hollowed = spigot();
  hollowed.pin = 29_mm;
  hollowed.hole = 30_mm;
  hollowed.pins = 1;
  const One none(aluminium(hollowed), hung);
  CHECK(std::isinf(none.row(0, "spigot at the hole").utilisation));
  CHECK_FALSE(none.proof.passes());
  // where the third hole lies is not said: the greatest moment anywhere counts, M + 4/27 V l
  Spigot three = spigot();
  three.pins = 3;
  const One more(aluminium(three), hung);
  for (std::size_t c = 0; c < 4; ++c) {
    const CutForces f = more.at(c);
    const double M = std::hypot(f.My, f.Mz) + 4 * std::hypot(f.Vy, f.Vz) * 120 * mm / 27;
    CHECK(close(more.row(c, "spigot at the hole").utilisation,
                std::abs(f.N) / (0.9 * 1338.5e-6 * 248e6) + M / (7063.6e-9 * 248e6), 1e-3));
  }
  // 2 * 12.5 + 2 * 50 mm do not fit into 120 mm
  Spigot far = spigot();
  far.end = 50_mm;
  CHECK_THROWS_WITH_AS((void)prove(aluminium(far)), doctest::Contains("do not fit into its reach"), BadDescription);
}
