// SPDX-License-Identifier: MIT
// Clauses of EN 1993-1-1 against published tables and worked examples, hand calculations, and their own limits.
// "Gardner and Nethercot": L. Gardner, D. A. Nethercot, Designers' Guide to EN 1993-1-1, 2005; values from memory.
#include <cmath>
#include <initializer_list>
#include <string>

#include <doctest/doctest.h>

#include <baywork/verify/en1993_buckling.hpp>

#include "support/ring_by_hand.hpp"

namespace {

using namespace baywork;
using namespace baywork::en1993;
using material::Product;
using verify::Scope;
using verify::SectionForces;

// Section data from the elementary formulas or from tables, apart from the library's own shapes.

// Square hollow section 100 x 100 x 5, hot finished, by the formulas of EN 10210-2 Annex B (ro 7.5, ri 5 mm).
SectionData<double> shs_100x5() {
  SectionData<double> s;
  s.kind = ShapeKind::rectangular_hollow;
  s.area = 1873.17e-6;
  s.Iy = s.Iz = 2794323e-12;
  s.Wel_y = s.Wel_z = 55886.5e-9;
  s.Wpl_y = s.Wpl_z = 66358.4e-9;
  s.Wt = 81.8e-6;
  s.height = s.width = 0.100;
  s.wall = 0.005;
  s.web_area_y = s.web_area_z = 900e-6;
  s.plates[0] = {0.085, 0.005, false, true};
  s.plates[1] = {0.085, 0.005, false, false};
  s.n_plates = 2;
  return s;
}

// A rolled I from its table values [mm]; `root` is the fillet radius.
SectionData<double> rolled_i(double h, double b, double tw, double tf, double root, double A, double Iy, double Wpl) {
  SectionData<double> s;
  s.kind = ShapeKind::i_shape;
  s.area = A * 1e-6;
  s.Iy = Iy * 1e-12;
  s.Iz = 2 * tf * b * b * b / 12 * 1e-12;
  s.Wel_y = 2 * s.Iy / (h * 1e-3);
  s.Wel_z = 2 * s.Iz / (b * 1e-3);
  s.Wpl_y = Wpl * 1e-9;
  s.Wpl_z = tf * b * b / 2 * 1e-9;
  s.Wt = 1e-6;
  s.height = h * 1e-3;
  s.width = b * 1e-3;
  s.wall = tf * 1e-3;
  s.web_area_z = (h - 2 * tf) * tw * 1e-6;
  s.web_area_y = 2 * b * tf * 1e-6;
  s.plates[0] = {(h - 2 * tf - 2 * root) * 1e-3, tw * 1e-3, false, true};
  s.plates[1] = {((b - tw) / 2 - root) * 1e-3, tf * 1e-3, true, false};
  s.n_plates = 2;
  return s;
}

material::Material steel(double fy, double fu, Product product) {
  material::Material m;
  m.name = "steel";
  m.family = material::Family::steel;
  m.product = product;
  m.E = 210e9;
  m.G = 81e9;
  m.steps = {{0.3, fy, fu, fy, fu}};
  return m;
}
const material::Material s235 = steel(235e6, 360e6, Product::hot_finished);
const material::Material s275 = steel(275e6, 430e6, Product::hot_finished);
const material::Material s355 = steel(355e6, 490e6, Product::hot_finished);

}  // namespace

TEST_CASE("EN 1993 chi table") {
  // ENV 1993-1-1:1992 Table 5.5.2 (value from memory), the same formula as EN 1993-1-1 (6.49); a0 by hand.
  struct Row {
    double lambda, a0, a, b, c, d;
  };
  for (const Row& r : {Row{.2, 1, 1, 1, 1, 1}, Row{.5, .9513, .9243, .8842, .8430, .7793},
                       Row{.8, .8533, .7957, .7245, .6622, .5797}, Row{1.0, .7253, .6656, .5970, .5399, .4671},
                       Row{1.2, .5732, .5300, .4781, .4338, .3762}, Row{1.5, .3953, .3724, .3422, .3145, .2766},
                       Row{2.0, .2323, .2229, .2095, .1962, .1766}, Row{3.0, .1063, .1036, .0994, .0951, .0882}}) {
    CHECK(std::fabs(reduction_factor(BucklingCurve::a0, r.lambda) - r.a0) <= 0.5001e-4);
    CHECK(std::fabs(reduction_factor(BucklingCurve::a, r.lambda) - r.a) <= 0.5001e-4);
    CHECK(std::fabs(reduction_factor(BucklingCurve::b, r.lambda) - r.b) <= 0.5001e-4);
    CHECK(std::fabs(reduction_factor(BucklingCurve::c, r.lambda) - r.c) <= 0.5001e-4);
    CHECK(std::fabs(reduction_factor(BucklingCurve::d, r.lambda) - r.d) <= 0.5001e-4);
  }
  // Ayrton and Perry's quadratic behind (6.49)
  for (double l = 0.25; l < 4.0; l += 0.05) {
    const double x = reduction_factor(BucklingCurve::c, l);
    CHECK(std::fabs((1 - x) * (1 - x * l * l) - 0.49 * (l - 0.2) * x) < 1e-12);
    CHECK(x < reduction_factor(BucklingCurve::c, l - 0.05));
  }
}

TEST_CASE("EN 1993 classes") {
  // Table 5.2 (value from memory): 50, 70, 90 epsilon² at fy = 235
  CHECK(tube_class(50.0, 1.0, 235e6) == 1);
  CHECK(tube_class(50.01, 1.0, 235e6) == 2);
  CHECK(tube_class(70.01, 1.0, 235e6) == 3);
  CHECK(tube_class(90.01, 1.0, 235e6) == 4);
  CHECK(tube_class(45.0, 1.0, 355e6) == 2);  // 50 · 235/355 = 33.1; 70 · 0.662 = 46.3
  // Gardner and Nethercot, chapter 5: UC 254 x 254 x 73 in S275, compression: flange 7.77 <= 8.32, web 23.3 <= 30.5
  CHECK(plate_class(110.3, 14.2, true, false, 275e6) == 1);
  CHECK(plate_class(200.3, 8.6, false, false, 275e6) == 1);
  CHECK(plate_class(110.3, 14.2, true, false, 355e6) == 2);  // 9 epsilon = 7.32, 10 epsilon = 8.14
  CHECK(plate_class(72.0, 1.0, false, true, 235e6) == 1);
  CHECK(plate_class(123.0, 1.0, false, true, 235e6) == 3);
  CHECK(plate_class(43.0, 1.0, false, false, 235e6) == 4);
}

TEST_CASE("EN 1993 section resistances of published examples") {
  // Gardner and Nethercot, example 6.2: UC 254 x 254 x 73, S355, N_c,Rd = 3305 kN
  const SectionData<double> uc = rolled_i(254.1, 254.6, 8.6, 14.2, 12.7, 9310, 114.1e6, 992e3);
  CHECK(close(resistance(uc, s355).N_c_Rd, 3305e3, 2e-4));
  // Example 6.4: channel with Av = 2092 mm², S275: V_pl,Rd = 332 kN
  CHECK(close(shear_resistance(2092e-6, 275e6), 332e3, 1e-3));
  // Example 6.5: UB 406 x 178 x 74, S275, V_Ed = 525 kN, V_pl,Rd = 689.2 kN (Av = 4341 mm²), M_c,Rd = 412 kNm,
  // rho = 0.27, M_y,V,Rd = 386.8 kNm
  CHECK(close(shear_resistance(4341e-6, 275e6), 689.2e3, 2e-4));
  CHECK(std::fabs(strength_lost_by_shear(525.0 / 689.2) - 0.27) < 0.005);
  BarResistance ub = resistance(rolled_i(412.8, 179.5, 9.5, 16.0, 10.2, 9450, 273.1e6, 1501e3), s275);
  CHECK(close(ub.M_y_Rd, 412e3, 3e-3));
  ub.V_z_Rd = 689.2e3;  // the example counts the fillets to the shear area
  CHECK(close(bending_and_axial(ub, {0, 0, 525e3, 0, 386.8e3, 0}).utilisation, 1.0, 2e-3));
  // Example 6.6: UB 457 x 191 x 98, S235, N = 1400 kN: N_pl 2937.5 kN, M_pl 524.5 kNm, M_N,y,Rd = 342.2 kNm
  const BarResistance b98 = resistance(rolled_i(467.2, 192.8, 11.4, 19.6, 10.2, 12500, 457.3e6, 2232e3), s235);
  CHECK(close(b98.N_pl_Rd, 2937.5e3, 1e-4));
  CHECK(close(b98.M_y_Rd, 524.5e3, 1e-4));
  CHECK(close(flanged_moment_left(1400.0 / 2937.5, b98.a_w) * b98.M_y_Rd, 342.2e3, 1e-3));
  CHECK(close(bending_and_axial(b98, {1400e3, 0, 0, 0, 342.2e3, 0}).utilisation, 1.0, 2e-3));
}

TEST_CASE("EN 1993 buckling of published examples") {
  // Gardner and Nethercot, example 6.7: tube 244.5 x 10 hot finished S275, L = 4 m: N_c,Rd 2026.8 kN, N_cr 6571 kN,
  // lambda 0.56, chi 0.91, N_b,Rd 1836.5 kN (they round A to 7370 mm² and chi to two digits)
  const SectionData<double> tube = ring(0.2445, 0.010);
  const BarResistance r = resistance(tube, s275);
  CHECK(r.class_N == 1);  // 24.5 <= 50 · 0.8545
  CHECK(close(r.N_c_Rd, 2026.8e3, 1e-3));
  const Buckling b = buckling(r, tube, 210e9, 4.0, 4.0);
  CHECK(b.curve_y == BucklingCurve::a);
  CHECK(close(b.N_cr_y, 6571e3, 1e-3));
  CHECK(std::fabs(b.lambda_y - 0.56) < 0.006);
  CHECK(std::fabs(b.chi_y - 0.91) < 0.006);
  CHECK(close(flexural_buckling(r, b, -1630e3).resistance, 1836.5e3, 4e-3));
  // Example 6.9: hot finished 200 x 100 x 16, S355, A = 8300 mm², Iy = 36.78e6, Iz = 11.47e6 mm⁴: N_c,Rd = 2946.5 kN;
  // 7.2 m about y N_cr = 1470 kN, lambda 1.42, chi 0.41, N_b,y,Rd = 1209 kN; 3.6 m about z lambda 1.27, chi 0.49
  SectionData<double> rhs = shs_100x5();
  rhs.area = 8300e-6;
  rhs.Iy = 36.78e-6;
  rhs.Iz = 11.47e-6;
  rhs.height = 0.200;
  rhs.wall = 0.016;
  rhs.plates[0] = {0.152, 0.016, false, true};
  rhs.plates[1] = {0.052, 0.016, false, false};
  const BarResistance r69 = resistance(rhs, s355);
  CHECK(r69.class_N == 1);  // 152/16 = 9.5
  CHECK(close(r69.N_c_Rd, 2946.5e3, 1e-5));
  const Buckling b69 = buckling(r69, rhs, 210e9, 7.2, 3.6);
  CHECK(close(b69.N_cr_y, 1470e3, 1e-3));
  CHECK(std::fabs(b69.lambda_y - 1.42) < 0.006);
  CHECK(std::fabs(b69.chi_y - 0.41) < 0.005);
  CHECK(close(flexural_buckling(r69, b69, -90e3).resistance, 1209e3, 1e-3));
  CHECK(std::fabs(b69.lambda_z - 1.27) < 0.006);
  CHECK(std::fabs(b69.chi_z - 0.49) < 0.005);
  // Tube 60 x 4, S235, L = 1.5 m (hand): lambda = 0.80467, chi 0.7930 (a), 0.6592 (c)
  const SectionData<double> s60 = ring(0.060, 0.004);
  const Buckling hot = buckling(resistance(s60, s235), s60, 210e9, 1.5, 1.5);
  const BarResistance r60 = resistance(s60, steel(235e6, 360e6, Product::cold_formed));
  const Buckling cold = buckling(r60, s60, 210e9, 1.5, 1.5);
  CHECK(close(hot.lambda_y, 0.80467, 1e-5));
  CHECK(close(hot.chi_y, 0.7930, 1e-4));
  CHECK(cold.curve_y == BucklingCurve::c);
  CHECK(close(cold.chi_y, 0.6592, 1e-4));
  // the same tube's section resistances (hand): 703.717 · 235, 12565.33 · 235, 2 · 703.717 / pi · 235 / sqrt(3)
  CHECK(close(r60.N_pl_Rd, 165.373e3, 1e-5));
  CHECK(close(r60.M_y_Rd, 2952.85, 1e-5));
  CHECK(close(r60.V_z_Rd, 60.7834e3, 1e-5));
  CHECK(close(r60.T_Rd, 18484.29e-9 * 235e6 / std::sqrt(3.0), 1e-6));
  CHECK(flexural_buckling(r60, cold, 1e3).utilisation == 0.0);
}

TEST_CASE("EN 1993 buckling curves, Table 6.2") {
  // Table 6.2 (value from memory)
  using enum BucklingCurve;
  using enum ShapeKind;
  CHECK(buckling_curve(round_tube, Product::hot_finished, 355e6, .1, .1, .005, true) == a);
  CHECK(buckling_curve(rectangular_hollow, Product::hot_finished, 460e6, .1, .1, .005, true) == a0);
  CHECK(buckling_curve(rectangular_hollow, Product::cold_formed, 460e6, .1, .1, .005, false) == c);
  CHECK(buckling_curve(i_shape, Product::rolled, 235e6, .2, .1, .0085, true) == a);
  CHECK(buckling_curve(i_shape, Product::rolled, 235e6, .2, .1, .0085, false) == b);
  CHECK(buckling_curve(i_shape, Product::rolled, 235e6, .2, .2, .015, true) == b);
  CHECK(buckling_curve(i_shape, Product::rolled, 235e6, .2, .2, .015, false) == c);
  CHECK(buckling_curve(i_shape, Product::rolled, 235e6, .5, .3, .050, true) == b);
  CHECK(buckling_curve(i_shape, Product::rolled, 235e6, .4, .4, .125, true) == d);
  CHECK(buckling_curve(channel, Product::rolled, 235e6, .2, .075, .0115, true) == c);
  CHECK(buckling_curve(solid_round, Product::rolled, 235e6, .02, .02, .02, true) == c);
}

TEST_CASE("EN 1993 Annex B, hand calculations") {
  // IPE 200, S235, L = 3.5 m, N = 210 kN, My = 26.1 kNm, C_my 0.95, held against lateral-torsional buckling (about y
  // alone): N_cr 3287.4 kN, lambda 0.4512, chi 0.9388, n 0.3342, k_yy 1.0298, sum 0.8527
  const SectionData<double> ipe = rolled_i(200, 100, 5.6, 8.5, 12, 2848, 1943e4, 220.6e3);
  const BarResistance r = resistance(ipe, s235);
  CHECK(r.plastic_compressed);
  const Buckling b = buckling(r, ipe, 210e9, 3.5, 0.0);
  CHECK(close(b.N_cr_y, 3287.4e3, 1e-4));
  CHECK(close(b.lambda_y, 0.4512, 1e-4));
  CHECK(close(b.chi_y, 0.9388, 1e-4));
  const double n = 210e3 / (b.chi_y * r.N_Rk);
  CHECK(close(n, 0.3342, 2e-4));
  CHECK(close(interaction_factors(true, r.kind, b.lambda_y, 0, n, 0, {0.95, 1}).k_yy, 1.0298, 1e-4));
  CHECK(close(beam_column(r, b, {-210e3, 0, 0, 0, 26.1e3, 0}, {0.95, 1}).utilisation, 0.8527, 1e-4));

  // SHS 100 x 5, S355, L = 3 m, N = 100 kN, My = 8, Mz = 3 kNm, C_m 0.95: N_cr 643.5 kN, lambda 1.0165, chi(a) 0.6540,
  // n 0.2299, k 1.1247; (6.61) 0.6978, (6.62) 0.6023
  const SectionData<double> shs = shs_100x5();
  const BarResistance rs = resistance(shs, s355);
  CHECK(rs.class_N == 1);  // 85/5 = 17 <= 33 · 0.8136
  const Buckling bs = buckling(rs, shs, 210e9, 3.0, 3.0);
  CHECK(close(bs.N_cr_y, 643.5e3, 1e-4));
  CHECK(close(bs.lambda_y, 1.0165, 1e-4));
  CHECK(close(bs.chi_y, 0.6540, 1e-4));
  const double ns = 100e3 / (bs.chi_y * rs.N_Rk);
  const InteractionFactors k = interaction_factors(true, rs.kind, bs.lambda_y, bs.lambda_z, ns, ns, {0.95, 0.95});
  CHECK(close(k.k_yy, 1.1247, 1e-4));
  CHECK(close(k.k_yz, 0.6 * 1.1247, 1e-4));
  CHECK(close(beam_column(rs, bs, {-100e3, 0, 0, 0, 8e3, 3e3}, {0.95, 0.95}).utilisation, 0.6978, 1e-4));
  // with the moments exchanged (6.62) governs, at the same value
  CHECK(close(beam_column(rs, bs, {-100e3, 0, 0, 0, 3e3, 8e3}, {0.95, 0.95}).utilisation, 0.6978, 1e-4));
  CHECK(close(ns + k.k_zy * 8e3 / rs.M_y_Rk + k.k_zz * 3e3 / rs.M_z_Rk, 0.6023, 1e-4));

  // class 3 column of Table B.1: k_yy = 1 + 0.6 · 0.5 · 0.2 = 1.06, k_zy = 0.8 k_yy, k_yz = k_zz = 1 + 0.6 · 1 · 0.4
  const InteractionFactors e = interaction_factors(false, ShapeKind::round_tube, 0.5, 1.7, 0.2, 0.4, {});
  CHECK(close(e.k_yy, 1.06, 1e-12));
  CHECK(close(e.k_zy, 0.848, 1e-12));
  CHECK(close(e.k_yz, 1.24, 1e-12));
  CHECK(close(e.k_zz, 1.24, 1e-12));
  // I about z, classes 1 and 2: 1 + (2 · 0.8 - 0.6) 0.4 = 1.4; at most 1 + 1.4 · 0.4
  CHECK(close(interaction_factors(true, ShapeKind::i_shape, 0, 0.8, 0, 0.4, {}).k_zz, 1.4, 1e-12));
  CHECK(close(interaction_factors(true, ShapeKind::i_shape, 0, 2.0, 0, 0.4, {}).k_zz, 1.56, 1e-12));
  // without moments (6.61), (6.62) are the buckling check
  CHECK(close(beam_column(rs, bs, {-100e3, 0, 0, 0, 0, 0}).utilisation, flexural_buckling(rs, bs, -100e3).utilisation,
              1e-12));
}

TEST_CASE("EN 1993 moment factors, Table B.3") {
  // Table B.3 (value from memory)
  CHECK(close(moment_factor(1.0), 1.0, 1e-12));
  CHECK(close(moment_factor(0.0), 0.6, 1e-12));
  CHECK(close(moment_factor(-1.0), 0.4, 1e-12));
  CHECK(close(moment_factor(0.0, 0.0, 10.0, SpanLoad::uniform), 0.95, 1e-12));
  CHECK(close(moment_factor(0.0, 0.0, 10.0, SpanLoad::concentrated), 0.90, 1e-12));
  CHECK(close(moment_factor(-10.0, 1.0, 10.0, SpanLoad::uniform), 0.9, 1e-12));  // alpha_s = -1: 0.1 + 0.8
  CHECK(close(moment_factor(-12.0, 1.0, 6.0, SpanLoad::uniform), 0.5, 1e-12));   // both ends fixed
  CHECK(close(moment_factor(10.0, -1.0, -5.0, SpanLoad::concentrated), 0.6, 1e-12));
  // alpha_s = -0.5 between end moments of opposite sign: 0.1 (1 + 0.6) + 0.4; concentrated 0.2 · 0.6 + 0.4
  CHECK(close(moment_factor(10.0, -0.6, -5.0, SpanLoad::uniform), 0.56, 1e-12));
  CHECK(close(moment_factor(10.0, -0.6, -5.0, SpanLoad::concentrated), 0.52, 1e-12));
  // alpha_h = -0.5 with psi = -0.6: 0.95 - 0.025 (1 - 1.2)
  CHECK(close(moment_factor(-5.0, -0.6, 10.0, SpanLoad::uniform), 0.955, 1e-12));
  // steady where M_s passes M_h
  for (const double sign : {-1.0, 1.0})
    for (const SpanLoad load : {SpanLoad::uniform, SpanLoad::concentrated})
      CHECK(std::fabs(moment_factor(sign * 10.0, 0.5, 9.999, load) - moment_factor(sign * 10.0, 0.5, 10.001, load)) <
            1e-3);
}

TEST_CASE("EN 1993 thin ring that yields all round") {
  // Independent: sum over the wall of a ring whose angle |phi| < a about the extreme fibre yields the other way.
  // N / N_pl = 1 - a / (pi / 2), M / M_pl from the first moments; M_N = M_pl cos(pi n / 2).
  const int pieces = 200000;
  for (const double n : {0.0, 0.2, 0.5, 0.7, 0.8, 0.9}) {
    const double a = pi * (1 - n) / 2;
    double N = 0, M = 0, all = 0;
    for (int i = 0; i < pieces; ++i) {
      const double phi = -pi + 2 * pi * (i + 0.5) / pieces;
      const double sign = std::fabs(phi) < a ? -1.0 : 1.0;
      N += sign;
      M -= sign * std::cos(phi);
      all += std::fabs(std::cos(phi));
    }
    CHECK(std::fabs(N / pieces - n) < 1e-4);
    const double exact = M / all;
    CHECK(std::fabs(exact - std::cos(pi * n / 2)) < 1e-4);
    CHECK(round_moment_left(n) <= exact + 1e-4);
    CHECK(round_moment_left(n) >= exact - 0.0206);
  }
  // 1 - n^1.7 passes above the exact value between n = 0.69 and 0.70
  CHECK(1 - std::pow(0.69, 1.7) < std::cos(pi * 0.69 / 2));
  CHECK(1 - std::pow(0.70, 1.7) > std::cos(pi * 0.70 / 2));
  // solid round, exact: n = (2/pi)(f + sin f cos f), M / M_pl = cos³ f: more than the ring has
  for (double f = 0.05; f < 1.5; f += 0.05) {
    const double n = 2 / pi * (f + std::sin(f) * std::cos(f));
    CHECK(round_moment_left(n) <= std::pow(std::cos(f), 3));
  }
}

TEST_CASE("EN 1993 plastic interaction limits") {
  const BarResistance tube = resistance(ring(0.060, 0.004), s235);
  const BarResistance shs = resistance(shs_100x5(), s355);
  for (const BarResistance& r : {tube, shs}) {
    CHECK(close(bending_and_axial(r, {0, 0, 0, 0, r.M_y_Rd, 0}).utilisation, 1.0, 1e-9));
    CHECK(close(bending_and_axial(r, {-r.N_c_Rd, 0, 0, 0, 0, 0}).utilisation, 1.0, 1e-9));
    CHECK(bending_and_axial(r, {0, 0, 0.5 * r.V_z_Rd, 0, 1e3, 0}).utilisation ==
          bending_and_axial(r, {0, 0, 0, 0, 1e3, 0}).utilisation);
    CHECK(bending_and_axial(r, {0, 0, 0.9 * r.V_z_Rd, 0, 1e3, 0}).utilisation >
          bending_and_axial(r, {0, 0, 0, 0, 1e3, 0}).utilisation);
    CHECK(is_infinite(bending_and_axial(r, {0, 0, 1.0 * r.V_z_Rd, 0, 1e3, 0}).utilisation));
  }
  for (double n = 0.05; n < 1.0; n += 0.05) {
    CHECK(round_moment_left(n) < round_moment_left(n - 0.05));
    CHECK(flanged_moment_left(n, shs.a_w) <= flanged_moment_left(n - 0.05, shs.a_w));
    CHECK(bending_and_axial(tube, {n * tube.N_pl_Rd, 0, 0, 0, 1e3, 500}).utilisation >
          bending_and_axial(tube, {(n - 0.05) * tube.N_pl_Rd, 0, 0, 0, 1e3, 500}).utilisation);
  }
  // the tube does not turn with the axes
  for (int i = 0; i < 24; ++i) {
    const double a = i * pi / 12;
    CHECK(close(bending_and_axial(tube, {30e3, 0, 0, 0, 1e3 * std::cos(a), 1e3 * std::sin(a)}).utilisation,
                bending_and_axial(tube, {30e3, 0, 0, 0, 1e3, 0}).utilisation, 1e-12));
    CHECK(close(elastic(tube, {30e3, 2e3 * std::cos(a), 2e3 * std::sin(a), 0, 0, 0}).utilisation,
                elastic(tube, {30e3, 2e3, 0, 0, 0, 0}).utilisation, 1e-12));
  }
  // 6.2.9.1 (6), rectangular hollow without axial force: alpha = beta = 1.66
  CHECK(close(plastic_interaction(shs, 0.0, 0.4, 0.5), std::pow(0.4, 1.66) + std::pow(0.5, 1.66), 1e-12));
  // a_w = (1873.17 - 2 · 100 · 5) / 1873.17 = 0.46615; n = 0.4: 0.6 / (1 - 0.23307) = 0.78234 (hand)
  CHECK(close(shs.a_w, 0.46615, 1e-4));
  CHECK(close(flanged_moment_left(0.4, shs.a_w), 0.78234, 1e-4));
  // n = 0.4: alpha = 1.66 / (1 - 1.13 · 0.16) = 2.0264; (0.3/0.78234)^alpha + (0.4/0.78234)^alpha = 0.40020 (hand)
  CHECK(close(plastic_interaction(shs, 0.4, 0.3, 0.4), 0.40020, 1e-4));
  // n = 0.9: 1.66 / (1 - 0.9153) is above 6, so 6: M_N = 0.1 / 0.76693 = 0.13039; 2 (0.1/0.13039)^6 = 0.407 < n
  CHECK(close(plastic_interaction(shs, 0.9, 0.1, 0.1), 0.9, 1e-12));
  // I with a = 0.4, n = 0.3: M_N,y = 0.7 / 0.8, beta = 5 · 0.3: (0.5/0.875)² + 0.6^1.5 = 0.79129 (hand)
  BarResistance open;
  open.kind = ShapeKind::i_shape;
  open.a_w = 0.4;
  CHECK(close(plastic_interaction(open, 0.3, 0.5, 0.6), 0.79129, 1e-4));
  // (6.32): solid rectangle keeps 1 - n²; 75 % at half the axial force, exact for a yielding rectangle
  BarResistance solid;
  solid.kind = ShapeKind::solid_rectangle;
  CHECK(close(plastic_interaction(solid, 0.5, 0.75, 0.0), 1.0, 1e-12));
  CHECK(close(flange_bending_left(0.7, 0.4), 0.75, 1e-12));  // 1 - (0.3/0.6)²
  CHECK(flange_bending_left(0.4, 0.4) == 1.0);
  // 6.2.6 (4): greatest shear stress 1.5 V / A of a rectangle, 4 V / 3 A of a circle
  SectionData<double> bar;
  bar.kind = ShapeKind::solid_rectangle;
  bar.area = 1200e-6;
  bar.wall = 0.020;
  CHECK(close(resistance(bar, s235).V_y_Rd, 800e-6 * 235e6 / std::sqrt(3.0), 1e-12));
  bar.kind = ShapeKind::solid_round;
  CHECK(close(resistance(bar, s235).V_z_Rd, 900e-6 * 235e6 / std::sqrt(3.0), 1e-12));
  // 6.2.6 (3): rectangular hollow section A h / (b + h)
  CHECK(close(shs.V_z_Rd, 1873.17 / 2 * 355 / std::sqrt(3.0), 1e-12));
}

TEST_CASE("EN 1993 elastic check 6.2.1 (5)") {
  // Tube 60 x 4, S235 (hand): sigma = 30000/703.717 + 0.8e6/9242.15 = 129.19 MPa; tau = 2 · 10000/703.717 +
  // 0.5e6/18484.29 = 55.47 MPa; sqrt(129.19² + 3 · 55.47²)/235 = 0.6855
  const BarResistance r = resistance(ring(0.060, 0.004), s235);
  const double sigma = 30000 / 703.7168 + 0.8e6 / 9242.147;
  const double tau = 20000 / 703.7168 + 0.5e6 / 18484.29;
  const double mises = std::sqrt(sigma * sigma + 3 * tau * tau) / 235;
  CHECK(close(elastic(r, {30e3, 0, 10e3, 500, 800, 0}).utilisation, mises, 1e-6));
  CHECK(close(mises, 0.6855, 1e-3));
  // a class 3 tube: 80 <= 90, M = Wel fy, and the section check is this one
  const BarResistance three = resistance(ring(0.320, 0.004), s235);
  CHECK(three.class_N == 3);
  CHECK(close(three.M_y_Rd, ring(0.320, 0.004).Wel_y * 235e6, 1e-12));
  const SectionForces f{-0.3 * three.N_c_Rd, 0, 0, 0, 0.3 * three.M_y_Rd, 0.4 * three.M_y_Rd};
  CHECK(close(bending_and_axial(three, f).utilisation, 0.8, 1e-12));  // 0.3 + sqrt(0.3² + 0.4²)
}

TEST_CASE("EN 1993 6.2.3 net section, 6.2.5 moduli, 6.2.6 shear, by hand") {
  // tube 60 x 4 with two holes of 9 mm: 0.9 (703.717 - 2 9 4) 360/1.25 = 163.741 kN, below 703.717 235 = 165.373 kN
  CHECK(close(tension_net(631.717e-6, 360e6), 163.741e3, 1e-5));
  CHECK(tension_net(631.717e-6, 360e6) < tension_gross(703.717e-6, 235e6));
  CHECK(close(tension_gross(703.717e-6, 235e6, {.gamma_M0 = 1.1}), 150.339e3, 1e-5));
  CHECK(close(bending(12565.33e-9, 235e6), 2952.85, 1e-5));
  CHECK(close(bending(9242.147e-9, 235e6, {.gamma_M0 = 1.1}), 1974.459, 1e-5));
  CHECK(close(shear_resistance(448.0e-6, 235e6), 60.7833e3, 1e-5));  // Av = 2 703.717/pi = 448.000
  // 6.2.8 (3): rho = (2 0.8 - 1)² = 0.36, nothing up to half
  CHECK(close(strength_lost_by_shear(0.8), 0.36, 1e-12));
  CHECK(strength_lost_by_shear(0.5) == 0.0);
  // round tube: 1 - 0.4^1.7 = 0.789378 and, above 0.69, cos(0.8 pi/2) = 0.309017
  CHECK(close(round_moment_left(0.4), 0.789378, 1e-5));
  CHECK(close(round_moment_left(0.8), 0.309017, 1e-5));
}

TEST_CASE("EN 1993 torsion with shear, 6.2.7") {
  const BarResistance r = resistance(ring(0.060, 0.004), s235);
  CHECK(close(shear(r, {0, 0, 1e3, 0.25 * r.T_Rd, 0, 0}).resistance, 0.75 * r.V_z_Rd, 1e-12));  // (6.28)
  CHECK(close(shear_left_by_torsion(ShapeKind::i_shape, 0.45), 0.8, 1e-12));                    // (6.26)
  CHECK(close(shear(r, {0, 3e3, 4e3, 0, 0, 0}).effect, 5e3, 1e-12));
}

TEST_CASE("EN 1993 outside its scope") {
  const BarResistance thin = resistance(ring(0.400, 0.004), s235);  // 100 > 90
  CHECK(thin.class_N == 4);
  CHECK(thin.scope == Scope::class_4_tube);
  CHECK(std::string(verify::reason(thin.scope)).find("EN 1993-1-6") != std::string::npos);
  CHECK(is_infinite(axial(thin, -1.0).utilisation));
  CHECK(axial(thin, 1.0).utilisation < 1e-6);
  CHECK(is_infinite(bending_and_axial(thin, {0, 0, 0, 0, 1.0, 0}).utilisation));
  const Buckling b = buckling(thin, ring(0.400, 0.004), 210e9, 2, 2);
  CHECK(is_infinite(beam_column(thin, b, {-1, 0, 0, 0, 0, 0}).utilisation));
  material::Material other = s235;
  other.family = material::Family::aluminium;
  CHECK_THROWS_AS((void)resistance(ring(0.060, 0.004), other), OutsideScope);
}
