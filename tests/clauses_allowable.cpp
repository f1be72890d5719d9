// SPDX-License-Identifier: MIT
// Allowable stresses of the Aluminum Design Manual: constants against published tables, clauses against hand
// calculations.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/random.hpp"
#include "support/tubes.hpp"

using namespace baywork;
using namespace baywork::allowable;
using en1999::Softening;
using verify::SectionForces;

namespace {

/// 6061-T6: F_ty = F_cy = 35, F_tu = 38, beside welds 15 and 24 ksi.
Metal metal() { return metal_of(material::us_6061_t6(), 5 * mm); }
Bar bar(double D = 60.3 * mm, double t = 5 * mm) { return {RoundTube{D, t}, material::us_6061_t6()}; }
TubeStrength tube() { return tube_strength(bar().section, metal()); }
BucklingConstants parent() { return buckling_constants(35 * ksi, 21 * ksi, true); }
BucklingConstants welded() { return buckling_constants(15 * ksi, 9 * ksi, false); }

constexpr double kN = 1e3, kNm = 1e3;

}  // namespace

TEST_CASE("units: 1 ksi is 6.894757 MPa (NIST SP 811, Appendix B)") { CHECK(close(ksi, 6.894757e6, 1e-7)); }

TEST_CASE("buckling constants of 6061-T6: Aluminum Design Manual 2005, Part VII, Table 1-1 (values from memory)") {
  // B_c 39.4, D_c 0.246, C_c 66; B_t 43.2, D_t 1.558; B_tb 64.8, D_tb 4.458 ksi
  const BucklingConstants c = parent();
  CHECK(close(c.B_c / ksi, 39.4, 1.3e-3));
  CHECK(close(c.D_c / ksi, 0.246, 2e-3));
  CHECK(close(c.C_c, 66, 8e-3));
  CHECK(close(c.B_t / ksi, 43.2, 1.2e-3));
  CHECK(close(c.D_t / ksi, 1.558, 4e-4));
  CHECK(close(c.B_tb / ksi, 64.8, 8e-4));
  CHECK(close(c.D_tb / ksi, 4.458, 2e-4));
  // shear, by hand: B_s = 21 (1 + (21/800)^(1/3)) = 27.24112, D_s = 2.724112 sqrt(27.24112/10100) = 0.1414740, C_s =
  // 0.41 B_s/D_s
  CHECK(close(c.B_s / ksi, 27.24112, 1e-6));
  CHECK(close(c.D_s / ksi, 0.1414740, 1e-6));
  CHECK(close(c.C_s, 78.94635, 1e-6));
}

TEST_CASE(
    "buckling constants of other tempers: 1100-H14 in Table 2-2 of the 2005 edition, allowable ksi at Omega 1.95") {
  // columns 7.4 - 0.034 kL/r up to 144, then 51100/(kL/r)²; round walls 8.6 - 0.275 sqrt(R_b/t); F_cy = 13 ksi.
  // Beside welds (F_cy = 3.5 ksi) 1.9 - 0.0045 kL/r up to 280 and 2.2 - 0.044 sqrt(R_b/t)
  const BucklingConstants c = buckling_constants(13 * ksi, 7.8 * ksi, false),
                          w = buckling_constants(3.5 * ksi, 2.1 * ksi, false);
  CHECK(close(c.B_c / ksi / 1.95, 7.4, 7e-3));
  CHECK(close(c.D_c / ksi / 1.95, 0.034, 1.5e-2));
  CHECK(close(c.C_c, 144, 2e-3));
  CHECK(close(pi * pi * modulus / ksi / 1.95, 51100, 5e-4));
  CHECK(close(c.B_t / ksi / 1.95, 8.6, 2e-3));
  CHECK(close(c.D_t / ksi / 1.95, 0.275, 1e-3));
  CHECK(close(w.B_c / ksi / 1.95, 1.9, 2e-3));
  CHECK(close(w.D_c / ksi / 1.95, 0.0045, 1e-2));
  CHECK(close(w.C_c, 280, 1.5e-2));
  CHECK(close(w.B_t / ksi / 1.95, 2.2, 4e-3));
  CHECK(close(w.D_t / ksi / 1.95, 0.044, 1.2e-2));
}

TEST_CASE("buckling constants of the metal beside welds in 6061-T6, by hand from Table B.4.1") {
  const BucklingConstants c = welded();
  CHECK(close(c.B_c / ksi, 16.83712, 1e-6));    // 15 (1 + sqrt(0.015))
  CHECK(close(c.D_c / ksi, 0.08419505, 1e-6));  // 16.83712/20 sqrt(6 16.83712/10100)
  CHECK(close(c.C_c, 133.3183, 1e-6));          // 2/3 16.83712/0.08419505
  CHECK(close(c.B_t / ksi, 19.45376, 1e-6));    // 15 (1 + (15/6500)^0.2)
  CHECK(close(c.D_t / ksi, 0.6541779, 1e-6));   // 19.45376/3.7 (19.45376/10100)^(1/3)
  CHECK(close(c.B_tb / ksi, 29.18064, 1e-6));   // 1.5 B_t
  CHECK(close(c.D_tb / ksi, 1.539296, 1e-6));   // 29.18064/2.7 (29.18064/10100)^(1/3)
  CHECK(close(c.B_s / ksi, 12.01245, 1e-6));    // 9 (1 + (9/240)^(1/3))
}

TEST_CASE("column curve, E.2: all three branches by hand, in ksi") {
  // 6061-T6: lambda_1 = (39.36527 - 35)/0.2457588 = 17.7624; at 40: (39.36527 - 9.830353)(0.85 + 0.15 (65.67316 - 40)/
  // (65.67316 - 17.7624)) = 29.53491 · 0.9303780 = 27.47864; at 80: 0.85 pi² 10100/6400 = 13.23915
  const auto F = [](double lambda) { return column_stress(parent(), 35 * ksi, lambda) / ksi; };
  CHECK(F(0) == doctest::Approx(35).epsilon(1e-12));
  CHECK(F(17) == doctest::Approx(35).epsilon(1e-12));
  CHECK(close(F(20), 34.20875, 1e-6));
  CHECK(close(F(40), 27.47864, 1e-6));
  CHECK(close(F(60), 21.36406, 1e-6));
  CHECK(close(F(80), 13.23915, 1e-6));
  CHECK(close(F(100), 8.473055, 1e-6));
  const auto W = [](double lambda) { return column_stress(welded(), 15 * ksi, lambda) / ksi; };
  CHECK(W(20) == doctest::Approx(15).epsilon(1e-12));  // lambda_1 = 1.837117/0.08419505 = 21.82
  CHECK(close(W(40), 13.13988, 1e-6));
  CHECK(close(W(140), 4.322987, 1e-6));
}

TEST_CASE("column curve: falling, and whole but for half a percent; without the factor it would leap by 15 %") {
  for (const bool aged : {true, false}) {
    const double F_cy = aged ? 35 * ksi : 15 * ksi;
    const BucklingConstants c = aged ? parent() : welded();
    for (double lambda = 0; lambda < 300; lambda += 0.25)
      CHECK(column_stress(c, F_cy, lambda + 0.25) <= column_stress(c, F_cy, lambda));
    const double lambda_1 = (c.B_c - F_cy) / c.D_c;
    CHECK(close(column_stress(c, F_cy, lambda_1 * (1 + 1e-9)), F_cy, 1e-8));
    const double before = column_stress(c, F_cy, c.C_c * (1 - 1e-12)), after = column_stress(c, F_cy, c.C_c);
    // 0.41 B_c/D_c: (1 - 0.41)/(pi²/4.1²) = 1.00489; 2/3: (1/3)/(3 pi²/(2 · 44.4444)) = 1.00070
    CHECK(close(before / after, aged ? 1.00489 : 1.00070, 1e-5));
    const double straight = c.B_c - c.D_c * c.C_c;  // as if short columns were straight and long ones crooked
    CHECK(1 - after / straight > 0.15);
    CHECK(1 - after / straight < 0.16);
  }
}

TEST_CASE("walls and shear: B.5.4.5, B.5.5.4, G.4, H.2.1 by hand, in ksi") {
  // R_b/t = 27.65/5 = 5.53: 43.18630 - 1.557668 · 2.351595 = 39.5 > 35; 64.77945 - 4.457713 · 2.351595 = 54.29671
  CHECK(close(wall_compression_stress(parent(), 35 * ksi, 5.53) / ksi, 35, 1e-12));
  CHECK(close(wall_bending_stress(parent(), 5.53) / ksi, 54.29671, 1e-6));
  CHECK(close(wall_compression_stress(parent(), 35 * ksi, 100) / ksi, 43.18630 - 15.57668, 1e-6));
  CHECK(close(wall_bending_stress(welded(), 5.53) / ksi, 25.56084, 1e-6));
  // 500 mm: 2.9 · 5.53^0.625 (500/27.65)^0.25 = 17.41486
  CHECK(close(shear_slenderness(27.65 * mm, 5 * mm, 0.5), 17.41486, 1e-6));
  CHECK(close(shear_slenderness(20, 1, 2000), 59.64056, 1e-6));  // 2.9 · 20^0.625 · 100^0.25
  // C_s/1.25 = 63.15708: at 59.64056 shear 1.3 · 27.24112 - 1.63 · 0.1414740 · 59.64056 = 21.66 > 21, torsion 27.24112
  // - 1.25 · 0.1414740 · 59.64056 = 16.69413; at 84.34450 1.3 pi² 10100/(1.25 · 84.34450)² = 11.65819 and 8.967835
  CHECK(close(tube_shear_stress(parent(), 21 * ksi, 59.64056) / ksi, 21, 1e-9));
  CHECK(close(tube_torsion_stress(parent(), 21 * ksi, 59.64056) / ksi, 16.69413, 1e-6));
  CHECK(close(tube_shear_stress(parent(), 21 * ksi, 84.34450) / ksi, 11.65819, 1e-6));
  CHECK(close(tube_torsion_stress(parent(), 21 * ksi, 84.34450) / ksi, 8.967835, 1e-6));
}

TEST_CASE("strengths of 60.3 x 5 in 6061-T6, by hand in inches and ksi, times 0.85") {
  // A = 1.346411 in², S = 0.6775678, Z = 0.9356232 in³, r = 0.7728841 in
  const TubeStrength r = tube();
  const SafetyFactors k;
  REQUIRE(r.outside[0] == '\0');
  CHECK(close(r.area, 1.346411 * 645.16e-6, 1e-6));
  CHECK(close(r.gyration, 19.63126 * mm, 1e-6));
  // D.2: clear of welds rupture 38/1.95 = 19.487 < 35/1.65 = 21.212; across a weld 24/1.95 = 12.308; along welds
  // 15/1.65 = 9.0909: times 0.85 · 1.346411 in² · 4.448222 kN/kip
  CHECK(close(r.tension[0].available(k), 99.20462 * kN, 1e-6));
  CHECK(close(r.tension[1].available(k), 62.65555 * kN, 1e-6));
  CHECK(close(r.tension[2].available(k), 46.27967 * kN, 1e-6));
  CHECK(r.tension[0].omega == 1.95);
  CHECK(r.tension[2].omega == 1.65);
  // E.3: 35/1.65, 15/1.65
  CHECK(close(r.compression[0].available(k), 107.9859 * kN, 1e-6));
  CHECK(close(r.compression[1].available(k), 46.27967 * kN, 1e-6));
  // F.2, F.3: Z F_ty 32.74681, S F_b 36.78970, Z F_tu 35.55368 kip in: rupture, 35.55368/1.95; beside
  // welds 14.03435/1.65
  CHECK(close(r.bending[0].available(k), 1.751012 * kNm, 1e-6));
  CHECK(r.bending[0].omega == 1.95);
  CHECK(close(r.bending[1].available(k), 0.8168595 * kNm, 1e-6));
  // without the factor of repeated use
  SafetyFactors once;
  once.repeated_use = 1;
  CHECK(close(r.tension[0].available(once), 99.20462 / 0.85 * kN, 1e-6));
}

TEST_CASE("strengths with a length: E.2, G.4, H.2.1, by hand") {
  const SafetyFactors k;
  const double P[] = {99.67731, 74.22628, 44.77677}, W[] = {45.10898, 37.19872, 29.74187},
               P_e[] = {920.3252, 230.0813, 102.2584};
  const double L[] = {0.5, 1.0, 1.5}, lambda[] = {25.46959, 50.93917, 76.40876};
  for (int i = 0; i < 3; ++i) {
    const BarStrength b = bar_strength(tube(), L[i], L[i], false), w = bar_strength(tube(), L[i], L[i], true);
    CHECK(close(b.lambda, lambda[i], 1e-6));
    CHECK(close(b.column.available(k), P[i] * kN, 1e-6));
    CHECK(close(w.column.available(k), W[i] * kN, 1e-6));
    CHECK(close(b.P_e, P_e[i] * kN, 1e-6));  // pi² E A/lambda²
  }
  // 500 mm: F_s = 21: rupture 0.6 38/1.95 = 11.692 < 21/1.65 = 12.727, A/2; beside welds 9/1.65
  const BarStrength b = bar_strength(tube(), 0.5, 0.5, false);
  CHECK(close(b.shear[0].available(k), 29.76139 * kN, 1e-6));
  CHECK(close(b.shear[1].available(k), 13.88390 * kN, 1e-6));
  CHECK(close(b.torsion[0].available(k), 1.521675 * kNm, 1e-6));
  CHECK(close(b.torsion[1].available(k), 0.7098725 * kNm, 1e-6));
}

TEST_CASE("welds along the bar: strengths mixed by the area they affect, D.2-2, D.2-4, E.2-2, G.1-2, H.2-4") {
  // one seam, 1 in to both sides of it: 2 · 25.4 · 5 = 254 mm² of A = pi 5 · 55.3 = 868.6504 mm²: share 0.2924076
  const SafetyFactors k;
  const TubeStrength r = tube_strength(bar().section, metal(), k, 254 * mm * mm);
  CHECK(close(r.share, 0.2924076, 1e-6));
  // rupture 38 - 0.2924076 · 14 = 33.906294 ksi, /1.95 = 17.38784; yielding 35 - 0.2924076 · 20 = 29.151848, /1.65
  // = 17.66779
  CHECK(close(r.tension[0].available(k), 99.20462 * kN * 33.906294 / 38, 1e-6));
  CHECK(close(r.tension[1].available(k), 62.65555 * kN, 1e-6));  // rupture at a weld across it as before
  CHECK(close(r.compression[0].available(k), 107.9859 * kN * 29.151848 / 35, 1e-6));
  CHECK(r.bending[0].available(k) == r.bending[1].available(k));
  const BarStrength b = bar_strength(r, 1.0, 0.5, false);
  // E.2-2 with 74.22628 and 37.19872 kN: 74.22628 - 0.2924076 · 37.02756 = 63.39914
  CHECK(close(b.column.available(k), 63.39914 * kN, 1e-6));
  CHECK(close(bar_strength(r, 1.0, 0.5, true).column.available(k), 37.19872 * kN, 1e-6));
  // shear: rupture 0.6 · 33.906294/1.95 = 10.43271 < yielding (21 - 0.2924076 · 12)/1.65 = 10.60067
  CHECK(close(b.shear[0].available(k), 29.76139 * kN * 33.906294 / 38, 1e-6));
  CHECK(close(b.torsion[0].available(k), 1.521675 * kNm * 33.906294 / 38, 1e-6));
  CHECK(close(b.shear[1].available(k), 13.88390 * kN, 1e-6));
  // affected all round: as beside welds
  const TubeStrength all = tube_strength(bar().section, metal(), k, 1.0);
  CHECK(all.share == 1.0);
  CHECK(close(all.tension[0].available(k), 46.27967 * kN, 1e-6));
}

TEST_CASE("clauses as rows: D.2, E.2, E.3, F.2, G.4, H.1, H.2.1, H.3.2") {
  const TubeStrength r = tube();
  const BarStrength b = bar_strength(r, 1.0, 1.0, false);
  CHECK(close(axial(r, 40 * kN, Softening::none).utilisation, 40 / 99.20462, 1e-6));
  CHECK(close(axial(r, 40 * kN, Softening::within_width).utilisation, 40 / 62.65555, 1e-6));
  CHECK(close(axial(r, 40 * kN, Softening::beyond_width).utilisation, 40 / 46.27967, 1e-6));
  CHECK(close(axial(r, -40 * kN, Softening::none).utilisation, 40 / 107.9859, 1e-6));
  CHECK(close(axial(r, -40 * kN, Softening::within_width).utilisation, 40 / 46.27967, 1e-6));
  const SectionForces f{-30 * kN, 3 * kN, 4 * kN, 0.1 * kNm, 0.3 * kNm, 0.4 * kNm};
  // resultants: M = 0.5 kNm, V = 5 kN
  CHECK(close(bending(r, f, Softening::none).utilisation, 0.5 / 1.751012, 1e-6));
  CHECK(close(shear(b, f, Softening::none).utilisation, 5 / 29.76139, 1e-6));
  CHECK(close(torsion(b, f.T, Softening::none).utilisation, 0.1 / 1.521675, 1e-6));
  // 30/107.9859 + 0.5/1.751012 + (5/29.76139 + 0.1/1.521675)² = 0.2778141 + 0.2855492 + 0.0546250
  CHECK(close(bending_and_axial(r, b, f, Softening::none).utilisation, 0.6179883, 1e-6));
  CHECK(close(column(b, f.N).utilisation, 30 / 74.22628, 1e-6));
  CHECK(column(b, 30 * kN).utilisation == 0.0);
  // 30/74.22628 + 0.5/1.751012/(1 - 1.6 · 30/230.0813) = 0.4041696 + 0.2855492/0.7913781
  CHECK(close(beam_column(r, b, f, Softening::none).utilisation, 0.7649952, 1e-6));
  CHECK(std::string(beam_column(r, b, f, Softening::none).clause) == "ADM 2020 I H.1");
  // nothing is left where 1.6 P reaches P_e
  SectionForces heavy = f;
  heavy.N = -230.0813 * kN / 1.6 * 1.000001;
  CHECK(beam_column(r, b, heavy, Softening::none).utilisation > 1e300);
  heavy.N = -heavy.N;
  CHECK(beam_column(r, b, heavy, Softening::none).utilisation == 0.0);
}

TEST_CASE("a moment turned about a tube's axis is the same moment") {
  const TubeStrength r = tube();
  const BarStrength b = bar_strength(r, 1.0, 1.0, false);
  const auto u = [&](double angle) {
    SectionForces f{-30 * kN, 0, 0, 0, 0.5 * kNm * std::cos(angle), 0.5 * kNm * std::sin(angle)};
    return beam_column(r, b, f, Softening::none).utilisation;
  };
  for (const double angle : {0.3, pi / 4, 1.2, pi / 2}) CHECK(close(u(angle), u(0.0), 1e-12));
}

TEST_CASE("every check rises with every force: what bounds of the search rest on") {
  const TubeStrength r = tube();
  const BarStrength b = bar_strength(r, 0.9, 0.9, true);
  const SafetyFactors k;
  const verify::detail::AllowableMember member{&r, b, k, 0.9, true};
  Random random(20);
  for (int i = 0; i < 4000; ++i) {
    const double sign = i % 2 == 0 ? 1.0 : -1.0;
    const SectionForces small{sign * random.in(0, 60) * kN, random.in(0, 20) * kN, random.in(0, 20) * kN,
                              random.in(0, 1) * kNm,        random.in(0, 1) * kNm, random.in(0, 1) * kNm};
    const auto up = [&](double v) { return v * random.in(1, 1.5); };
    const SectionForces large{up(small.N), up(small.Vy), up(small.Vz), up(small.T), up(small.My), up(small.Mz)};
    verify::detail::Place at;
    at.softening = static_cast<Softening>(i % 3);
    for (const verify::Check c : verify::detail::AllowableMember::section_checks) {
      CHECK(member.check(c, large, at).utilisation >= member.check(c, small, at).utilisation);
      CHECK(member.most(c, large, at, magnitude(small.N)) >= member.check(c, small, at).utilisation);
    }
    // and nowhere is a bar stronger beside a weld than clear of it, nor with longer softened metal
    verify::detail::Place clear, longer;
    longer.softening = Softening::beyond_width;
    for (const verify::Check c : verify::detail::AllowableMember::section_checks) {
      CHECK(member.check(c, small, clear).utilisation <= member.check(c, small, at).utilisation);
      CHECK(member.check(c, small, at).utilisation <= member.check(c, small, longer).utilisation);
    }
  }
}

TEST_CASE("what is not covered says so; what welds do not soften is not softened") {
  const auto outside = [](const Bar& b) {
    return std::string(tube_strength(b.section, metal_of(b.material, b.section.wall)).outside);
  };
  CHECK(outside({RectangularHollow{60 * mm, 60 * mm, 4 * mm}, material::us_6061_t6()}).find("not a round tube") == 0);
  CHECK(outside(bar(82 * mm, 2 * mm)).empty());  // R_b/t = 40/2 = 20
  CHECK(outside(bar(82.1 * mm, 2 * mm)).find("R_b/t above 20") == 0);
  const Bar soft{RoundTube{60 * mm, 5 * mm}, material::en_aw_5083_o()};
  const TubeStrength o = tube_strength(soft.section, metal_of(soft.material, 5 * mm));
  CHECK(softening(o, 1.0) == Softening::none);
  CHECK(!o.metal.aged);
  CHECK(softening(tube(), 0.0) == Softening::none);
  CHECK(softening(tube(), 60.3 * mm) == Softening::within_width);
  CHECK(softening(tube(), 60.4 * mm) == Softening::beyond_width);
  // tempers: T6 is aged, T4 and H are not
  CHECK(metal_of(material::en_aw_6082_t6(), 5 * mm).aged);
  CHECK(!metal_of(material::en_aw_6082_t4(), 5 * mm).aged);
  CHECK(!metal_of(material::en_aw_5083_h14(), 5 * mm).aged);
}
