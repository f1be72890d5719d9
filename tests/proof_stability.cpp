// SPDX-License-Identifier: MIT
// Stability rows of a proof: beside hand calculations, recomputed from their print, and what they must not pass.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/verify.hpp>
#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/recomputed_rows.hpp"
#include "support/rows.hpp"
#include "support/small_box.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using verify::Check;
using verify::Proof;
using verify::Row;

Bar tube(double d, double t, const material::Material& m) { return {RoundTube{d, t}, m}; }

verify::Basis basis(bool imperfections = false) {
  verify::Basis b;
  b.stability = {true, imperfections};
  return b;
}

/// Two chords side by side, 12 bays of 0.5 m, tied by cross members alone.
LadderGirder flat_ladder(const material::Material& m, std::size_t bays = 12) {
  return {.bays = bays,
          .bay_length = 0.5,
          .depth = 0.5,
          .flat = true,
          .chord = tube(60.3_mm, 4.0_mm, m),
          .web = open(tube(48.3_mm, 4.0_mm, m)),
          .supports = simply_supported()};
}
/// N pushes both chords together from end to end, `more` of it shifted from the one to the other.
std::vector<Action> pushed(double length, double N, double more = 0.0) {
  const double one = N / 2 + more / 2, other = N / 2 - more / 2;
  return {point_load(ChordOf::bottom, 0.0, Vec3<>{one, 0, 0}), point_load(ChordOf::bottom, length, Vec3<>{-one, 0, 0}),
          point_load(ChordOf::top, 0.0, Vec3<>{other, 0, 0}), point_load(ChordOf::top, length, Vec3<>{-other, 0, 0})};
}

BoxGirder box(const material::Material& m, std::size_t bays = 12) { return stiff_ended_box(m, bays); }
/// w [N/m] down in all, on the four chords alike.
std::vector<Action> hung(double w) {
  return {line_load({ChordOf::bottom_left, ChordOf::bottom_right, ChordOf::top_right, ChordOf::top_left}, w)};
}

std::vector<Row> stability_rows(const Proof& p) {
  std::vector<Row> out;
  for (const Row& r : p.rows())
    if (r.check == Check::chord_pair || r.check == Check::built_up) out.push_back(r);
  return out;
}
const Row* row_of(const Proof& p, Check c, const std::string& face, Role role = Role::chord) {
  for (const Row& r : p.rows())
    if (r.check == c && r.face.text() == face && r.address.role == role) return &r;
  return nullptr;
}
bool outside_says(const Proof& p, const std::string& words) {
  for (const Row& r : p.outside_scope())
    if (std::string(r.reason).find(words) != std::string::npos) return true;
  return false;
}
bool any(const std::vector<std::string>& lines, const std::string& words) {
  for (const std::string& s : lines)
    if (s.find(words) != std::string::npos) return true;
  return false;
}

double recomputed(const Row& r) { return recompute(printed(verify::text(r))).value; }

}  // namespace

TEST_CASE("a flat steel ladder as a strut: pair row and built-up rows by hand") {
  // Chords 60.3 x 4: A 707.4867 mm2, I 281729.1 mm4; cross members 48.3 x 4: I 137675.8 mm4. S355 H hot finished, curve
  // a (alpha 0.21). a = h = 0.5 m, L = 6 m. S_v with the chords' share 1/(2 pi² E I/a²), and shear of the bars: 1/S =
  // a²/(2 pi² E I) + a h/(12 E I_b) + 1/(2 G Av) + a/(h G Av_b).
  const Analysis analysis{flat_ladder(material::s355h())};
  const double E = 210e9, G = 81e9, A = 707.4867e-6, I_ch = 281729.15e-12, I_b = 137675.75e-12, a = 0.5, h = 0.5,
               L = 6.0;
  const double Av = analysis.model().bars[0].section.shear_y, Av_b = analysis.model().bars[1].section.shear_y;
  const double S =
      1 / (a * a / (2 * pi * pi * E * I_ch) + a * h / (12 * E * I_b) + 1 / (2 * G * Av) + a / (h * G * Av_b));
  const double P = pi * pi * E * A * h * h / 2 / (L * L);
  const double N_cr = P / (1 + P / S) + pi * pi * 2 * E * I_ch / (L * L);
  const double N_Rd = 2 * A * 355e6, lambda = std::sqrt(N_Rd / N_cr);
  const double phi = 0.5 * (1 + 0.21 * (lambda - 0.2) + lambda * lambda),
               chi = 1 / (phi + std::sqrt(phi * phi - lambda * lambda));

  const double N = 60e3;
  const Proof p = verify::by_material(analysis.solve(pushed(L, N, 10e3)), basis());
  const Row* pair = row_of(p, Check::chord_pair, "web");
  REQUIRE(pair != nullptr);
  // of the couple 10 kN h/2 the chords' own bending takes 2 I_ch of 0.5 h² A + 2 I_ch, the rest is the pair's
  // difference
  const double dN = number(*pair, "dN_Ed");
  CHECK(dN == Approx(10e3 * 0.5 * h * h * A / (0.5 * h * h * A + 2 * I_ch)).epsilon(1e-3));
  CHECK(number(*pair, "S_v") == Approx(S).epsilon(1e-6));
  CHECK(number(*pair, "N_cr") == Approx(N_cr).epsilon(1e-6));
  CHECK(number(*pair, "half waves") == 1.0);
  CHECK(number(*pair, "L") == Approx(6.0));
  CHECK(pair->utilisation == Approx(N / (chi * N_Rd) + dN / ((1 - N / N_cr) * N_Rd)).epsilon(1e-6));

  // EN 1993-1-1 6.4.1: I_eff = 0.5 h0² A + 2 I_ch (lambda = L/i0 = 24, mu = 1), e0 = 12 mm, M_I = dN h0/2
  const double I_eff = 0.5 * h * h * A + 2 * I_ch, N_cr_v = pi * pi * E * I_eff / (L * L);
  const double M = (N * 0.012 + dN * h / 2) / (1 - N / N_cr_v - N / S), N_ch = N / 2 + M * h * A / (2 * I_eff),
               V = pi * M / L;
  const auto chi_of_chord = [&](double length) {
    const double l = std::sqrt(A * 355e6 * length * length / (pi * pi * E * I_ch)),
                 f = 0.5 * (1 + 0.21 * (l - 0.2) + l * l);
    return 1 / (f + std::sqrt(f * f - l * l));
  };
  double found = 0;
  for (const Row& r : stability_rows(p)) {
    if (r.check != Check::built_up) continue;
    if (std::string(r.clause) == "6.4.1 (6.69)") {
      CHECK(r.utilisation == Approx(N_ch / (chi_of_chord(a) * A * 355e6)).epsilon(1e-6));
      CHECK(number(r, "M_Ed") == Approx(M).epsilon(1e-6));
      ++found;
    } else if (r.address.role == Role::chord) {
      // between cross members: N_ch with V a/4 (Figure 6.11)
      CHECK(number(r, "N_Ed") == Approx(N_ch).epsilon(1e-6));
      CHECK(number(r, "M_z,Ed") == Approx(V * a / 4).epsilon(1e-6));
      ++found;
    } else {
      // cross member: V a/2 against M_pl = Wpl fy, Wpl = (D³ - d³)/6 = (48.3³ - 40.3³)/6 = 7871.3 mm3
      const double M_pl = (std::pow(48.3, 3) - std::pow(40.3, 3)) / 6 * 1e-9 * 355e6;
      CHECK(r.utilisation == Approx(V * a / 2 / M_pl).epsilon(1e-5));
      ++found;
    }
  }
  CHECK(found == 3);
  // N_cr/N = 14 or so: forces of first order hold, no row says else; but nothing holds the chords up and down
  CHECK(N_cr / N > 10);
  CHECK_FALSE(outside_says(p, "first order"));
  CHECK(outside_says(p, "no face holds this compressed chord sideways"));
}

TEST_CASE("aluminium takes the curve and the welds of EN 1999-1-1 with the same critical load") {
  // EN AW-6082 T6, class A (alpha 0.20, lambda_0 0.10), fo 250 N/mm2; cross members' footprint 48.3 + 2 · 20 mm exceeds
  // the chord's diameter: omega_0 = 125/250 (EN 1999-1-1 Tables 3.2b and 6.6, 6.2.9.3, values from memory)
  const Analysis analysis{flat_ladder(material::en_aw_6082_t6())};
  const double N = 10e3;
  const Proof p = verify::by_material(analysis.solve(pushed(6.0, N)), basis());
  const Row* pair = row_of(p, Check::chord_pair, "web");
  REQUIRE(pair != nullptr);
  const double N_Rd = 2 * 707.4867e-6 * 250e6 / 1.1, N_cr = number(*pair, "N_cr");
  const double l = std::sqrt(1.1 * N_Rd / N_cr), f = 0.5 * (1 + 0.20 * (l - 0.10) + l * l);
  CHECK(pair->utilisation == Approx(N / (0.5 / (f + std::sqrt(f * f - l * l)) * N_Rd)).epsilon(1e-6));
  CHECK(std::string(pair->standard) == "EN 1999-1-1:2007");
  CHECK(std::string(pair->reason).find("EN 1993-1-1 6.4.1") != std::string::npos);
  // the same bars of steel: N_cr goes with the modulus but for the shear of the bars (G/E differs a little)
  const Analysis of_steel{flat_ladder(material::s355h())};
  const Proof steel = verify::by_material(of_steel.solve(pushed(6.0, N)), basis());
  CHECK(number(*row_of(steel, Check::chord_pair, "web"), "N_cr") == Approx(3.0 * N_cr).epsilon(5e-3));
}

TEST_CASE("columns and struts of aluminium know the welds along their chords, and how warm all are laid") {
  // A line of 10 mm along 60.3 x 4, 20 mm of softened wall to both sides: 50 · 4 = 200 mm2 of 707.4867 at rho_o,haz 0.5:
  // A_1/A = 1 - 100/707.4867. Class A, Table 6.5: kappa = 1 - (1 - A_1/A) 10^-l - (0.05 + 0.1 A_1/A) l^(1.3 (1 - l))
  // (values from memory); the section counts with A_1.
  const material::Material m = material::en_aw_6082_t6();
  LadderGirder railed = flat_ladder(m);
  railed.chord = railed.chord.welded_along({.lines = 1, .width = 10.0_mm});
  const double N = 10e3, share = 1 - 100 / 707.4867;
  const Analysis with{railed}, without{flat_ladder(m)};
  const Proof p = verify::by_material(with.solve(pushed(6.0, N)), basis()),
              plain = verify::by_material(without.solve(pushed(6.0, N)), basis());
  const Row* pair = row_of(p, Check::chord_pair, "web");
  REQUIRE(pair != nullptr);
  const double l = number(*pair, "lambda"), f = 0.5 * (1 + 0.20 * (l - 0.10) + l * l);
  const double kappa = 1 - (1 - share) * std::pow(10.0, -l) - (0.05 + 0.1 * share) * std::pow(l, 1.3 * (1 - l));
  const double chi = 1 / (f + std::sqrt(f * f - l * l)), N_Rd = 2 * share * 707.4867e-6 * 250e6 / 1.1;
  CHECK(pair->utilisation == Approx(N / (kappa * chi * 0.5 * N_Rd)).epsilon(1e-6));
  CHECK(recomputed(*pair) == Approx(pair->utilisation).epsilon(1e-4));
  std::size_t struts = 0;
  for (const Row& r : stability_rows(p)) {
    if (r.check != Check::built_up || r.address.role != Role::chord) continue;
    ++struts;
    CHECK(recomputed(r) == Approx(r.utilisation).epsilon(1e-4));
    for (const Row& o : stability_rows(plain))
      if (o.check == r.check && o.address.role == r.address.role && std::string(o.clause) == r.clause)
        CHECK(r.utilisation > 1.1 * o.utilisation);
  }
  CHECK(struts == 2);

  // Cross members of 17.2 mm: 17.2 + 2 · 20 = 57.2 mm are within the chord's 60.3 mm, omega_0 = (185/1.25)/(250/1.1);
  // with 120 degrees between runs 17.2 + 2 · 30 mm are not, omega_0 = 0.5 (6.1.6.3, 6.2.9.3, values from memory)
  LadderGirder thin = flat_ladder(m);
  thin.web = open(tube(17.2_mm, 2.3_mm, m));
  const Analysis of_thin{thin};
  verify::Basis warm = basis();
  warm.choices.heat.interpass_celsius = 120;
  const auto omega_0 = [&](const verify::Basis& b) {
    const Proof of = verify::by_material(of_thin.solve(pushed(6.0, 1e3)), b);
    REQUIRE(row_of(of, Check::chord_pair, "web") != nullptr);
    return number(*row_of(of, Check::chord_pair, "web"), "omega_0");
  };
  CHECK(omega_0(basis()) == Approx(148.0 / (250.0 / 1.1)));
  CHECK(omega_0(warm) == Approx(0.5));
}

TEST_CASE("the wrong chords, too: uplift presses the bottom pair as weight presses the top pair") {
  const Analysis analysis{box(material::s355h())};
  const Proof down = verify::by_material(analysis.solve(hung(8e3)), basis());
  const Proof up = verify::by_material(analysis.solve(hung(-8e3)), basis());
  const Row *top = row_of(down, Check::chord_pair, "top"), *bottom = row_of(up, Check::chord_pair, "bottom");
  REQUIRE(top != nullptr);
  REQUIRE(bottom != nullptr);
  CHECK(row_of(down, Check::chord_pair, "bottom") == nullptr);
  CHECK(row_of(up, Check::chord_pair, "top") == nullptr);
  // M/h at mid-span, the mean of the two bays beside it: q L²/8 - q a²/8 with a = 0.5 m
  CHECK(number(*top, "N_Ed") == Approx((8e3 * 36 / 8 - 8e3 * 0.25 / 8) / 0.5).epsilon(0.01));
  CHECK(bottom->utilisation == Approx(top->utilisation).epsilon(0.05));
  CHECK(number(*top, "tension opposite/N_Ed") > 0.9);
  CHECK(number(*top, "c of the rings") > 0.0);
  // utilisations rise with the load, faster than it
  const Proof twice = verify::by_material(analysis.solve(hung(16e3)), basis());
  CHECK(row_of(twice, Check::chord_pair, "top")->utilisation >= 2 * top->utilisation * (1 - 1e-9));
}

TEST_CASE("a pair is not tied to an opposite pair that is pushed as well") {
  const Analysis analysis{box(material::s355h())};
  std::vector<Action> all;
  for (const ChordOf c : {ChordOf::bottom_left, ChordOf::bottom_right, ChordOf::top_right, ChordOf::top_left}) {
    all.push_back(point_load(c, 0.0, Vec3<>{20e3, 0, 0}));
    all.push_back(point_load(c, 6.0, Vec3<>{-20e3, 0, 0}));
  }
  const Proof p = verify::by_material(analysis.solve(all), basis());
  const Row* top = row_of(p, Check::chord_pair, "top");
  REQUIRE(top != nullptr);
  for (std::size_t i = 0; i < top->n_numbers; ++i) CHECK(std::string(top->numbers[i].symbol) != "c of the rings");
  const double P = pi * pi * 210e9 * 868.6504e-6 * 0.125 / 36, S = number(*top, "S_v");
  CHECK(number(*top, "N_cr") == Approx(P / (1 + P / S) + pi * pi * 2 * 210e9 * 334765.9e-12 / 36).epsilon(1e-6));
}

TEST_CASE("stability rows can be recomputed from their print") {
  std::size_t seen[2] = {0, 0};
  for (const material::Material& m : {material::s355h(), material::en_aw_6082_t6()})
    for (const bool bows : {false, true}) {
      BoxGirder girder = box(m);
      girder.modules = {.bays_each = 6};
      const Analysis analysis{girder};
      const Cases cases = analysis.solve({LoadCase{"weight", Nature::permanent, hung(1e3)},
                                          LoadCase{"wind", Nature::wind, {wind_on(Side::left, 300.0)}}});
      const Proof p = verify::by_material(cases, en1990::ultimate(), basis(bows));
      CHECK(p.passes());
      for (const Row& r : stability_rows(p)) {
        INFO(verify::text(r));
        CHECK(recomputed(r) == Approx(r.utilisation).epsilon(1e-4));
        CHECK(r.utilisation == Approx(r.demand / r.resistance).epsilon(1e-12));
        CHECK(r.n_numbers < r.numbers.size());
        ++seen[r.check == Check::built_up];
      }
    }
  CHECK(seen[0] >= 4);
  CHECK(seen[1] >= 12);
}

TEST_CASE("where the column is no model, the proof is outside the scope and says why") {
  const auto says = [](const auto& girder, const std::vector<Action>& actions, const std::string& words) {
    const Analysis analysis{girder};
    const Proof p = verify::by_material(analysis.solve(actions), basis());
    INFO(p.verdict());
    CHECK(outside_says(p, words));
    CHECK_FALSE(p.passes());
    CHECK(p.verdict().find("passes") == std::string::npos);
    CHECK(p.verdict().find("outside the scope (") != std::string::npos);
  };
  const material::Material m = material::s355h();
  BoxGirder loose = box(m);
  loose.diaphragms = {};
  says(loose, hung(100.0), "nothing holds both chords sideways");
  says(box(m, 2), hung(100.0), "fewer than three bays");
  const Analysis of_loose{loose};
  CHECK(verify::by_material(of_loose.solve(hung(100.0)), basis())
            .verdict()
            .find("not proved: 1 place is outside the scope (station ") == 0);
  BoxGirder differing = box(m);
  differing.chords.top_left = tube(76.1_mm, 5.0_mm, m);
  says(differing, hung(100.0), "its chords differ");
  BoxGirder curved = box(m);
  curved.axis.camber = 0.05;
  says(curved, hung(100.0), "curved, cambered or tapered");
  BoxGirder uneven = box(m);
  uneven.bays = 0;
  uneven.bay_lengths = {0.5, 0.5, 0.6, 0.5, 0.5};
  says(uneven, hung(100.0), "no closed form");
  LadderGirder upright = flat_ladder(m);
  upright.flat = false;
  says(upright, {line_load({ChordOf::top}, 100.0)}, "no face holds this compressed chord sideways");
  BoxGirder thin = box(m);
  thin.chord = tube(200.0_mm, 2.0_mm, m);
  says(thin, hung(100.0), "its chords are not checked");
  // an overhang counts with twice its length, and one without a second hold swings
  BoxGirder reaching = box(m);
  reaching.diaphragms = diaphragms_at({0, 4, 8, 12}, tube(42.4_mm, 3.2_mm, m));
  reaching.supports = hung_at({2.0, 4.0});
  const Analysis over{reaching};
  const Proof p = verify::by_material(over.solve(hung(1000.0)), basis());
  REQUIRE(row_of(p, Check::chord_pair, "bottom") != nullptr);
  CHECK(number(*row_of(p, Check::chord_pair, "bottom"), "L") == Approx(2.0 + 2 * 2.0 + 2 * 2.0));
}

TEST_CASE("forces of first order hold up to a tenth of the critical load, bows up to a third") {
  const Analysis analysis{flat_ladder(material::s355h())};
  const Proof little = verify::by_material(analysis.solve(pushed(6.0, 10e3)), basis());
  const double N_cr = number(*row_of(little, Check::chord_pair, "web"), "N_cr");
  const auto reasons = [&](double part, bool bows) {
    const Proof p = verify::by_material(analysis.solve(pushed(6.0, part * N_cr)), basis(bows));
    return std::string(outside_says(p, "more than a tenth") ? "tenth" : "") +
           (outside_says(p, "more than a third") ? "third" : "") + (outside_says(p, "without end") ? "endless" : "");
  };
  CHECK(reasons(0.099, false).empty());
  CHECK(reasons(0.101, false) == "tenth");
  CHECK(reasons(0.101, true).empty());
  CHECK(reasons(0.33, true).empty());
  CHECK(reasons(0.34, true) == "third");
  CHECK(reasons(1.5, true) == "thirdendless");
}

TEST_CASE("what is taken for granted and what is not covered follows what is asked for") {
  const Analysis analysis{box(material::s355h())};
  const Response r = analysis.solve(hung(1e3));
  const Proof without = verify::by_material(r), with = verify::by_material(r, basis()),
              bows = verify::by_material(r, basis(true));
  CHECK(any(without.not_covered(), "Stability of the girder as a whole"));
  CHECK(stability_rows(without).empty());
  CHECK_FALSE(any(with.not_covered(), "Stability of the girder as a whole"));
  CHECK(any(with.not_covered(), "other than a chord pair's"));
  CHECK(any(with.assumptions(), "not on the safe side beyond"));
  CHECK(any(with.assumptions(), "without imperfections"));
  CHECK(any(bows.assumptions(), "Bows of compressed chord pairs"));
  CHECK_FALSE(any(bows.assumptions(), "without imperfections"));
  CHECK(bows.combinations().size() > with.combinations().size());

  verify::Basis lonely;
  lonely.stability = {false, true};
  CHECK_THROWS_AS(verify::by_material(r, lonely), BadDescription);
}
