// SPDX-License-Identifier: MIT
// Slender walls of hollow sections: effective sections and shear buckling of EN 1993-1-5 and EN 1999-1-1 against a
// published example, hand calculations, and sums over thin slices of the section.
#include <cmath>
#include <initializer_list>
#include <string>

#include <doctest/doctest.h>

#include <baywork/section/rectangular_hollow.hpp>
#include <baywork/section/round_tube.hpp>
#include <baywork/verify/en1993_buckling.hpp>
#include <baywork/verify/en1999_buckling.hpp>

#include "support/by_hand.hpp"

namespace {

using namespace baywork;
using verify::Scope;
using verify::SectionForces;

material::Material metal(material::Family family, double strength_mpa, double E) {
  material::Material m;
  m.name = "metal";
  m.family = family;
  m.product = family == material::Family::steel ? material::Product::hot_finished : material::Product::hollow_extrusion;
  m.buckling_class = family == material::Family::steel ? material::BucklingClass::none : material::BucklingClass::a;
  m.E = E;
  m.G = E / 2.6;
  const double f = strength_mpa * MPa;
  m.steps = {{0.3, f, 1.2 * f, f, 1.2 * f}};
  return m;
}
material::Material steel(double fy) { return metal(material::Family::steel, fy, 210e9); }
material::Material alloy(double fo) { return metal(material::Family::aluminium, fo, 70e9); }

SectionData<double> sharp(double h, double b, double t) {
  return RectangularHollow{h * mm, b * mm, t * mm, corners_of_radii(0, 0)}.data();
}
SectionData<double> tall_box() { return sharp(600, 200, 4); }

/// Elastic modulus of a sharp box about its horizontal axis, summed over slices: `taken(u, neutral)` is the thickness
/// [mm] gone from both webs together at the height u above the middle, with the neutral axis at `neutral`.
template <class Taken>
double sliced_modulus(double h, double b, double t, double flange_width_lost, Taken taken) {
  constexpr int n = 60000;
  double neutral = 0, inertia = 0;
  for (int round = 0; round < 60; ++round) {
    double A = 0, S = 0;
    for (int i = 0; i < n; ++i) {
      const double u = -h / 2 + h * (i + 0.5) / n;
      const bool flange = std::fabs(u) > h / 2 - t;
      const double width = flange ? b - (u > 0 ? flange_width_lost : 0.0) : 2 * t - taken(u, neutral);
      A += width;
      S += width * u;
    }
    neutral = S / A;
  }
  for (int i = 0; i < n; ++i) {
    const double u = -h / 2 + h * (i + 0.5) / n;
    const bool flange = std::fabs(u) > h / 2 - t;
    const double width = flange ? b - (u > 0 ? flange_width_lost : 0.0) : 2 * t - taken(u, neutral);
    inertia += width * (u - neutral) * (u - neutral) * h / n;
  }
  return inertia / (h / 2 - neutral);
}

}  // namespace

TEST_CASE("EN 1993-1-5 effective widths") {
  // Table 4.1 (values from memory): k_sigma 4, 7.81 and 23.9 at psi = 1, 0 and -1; the branches meet within 0.1 %.
  CHECK(close(en1993::buckling_coefficient(1.0), 4.0, 1e-12));
  CHECK(close(en1993::buckling_coefficient(0.0), 7.81, 1e-3));
  CHECK(close(en1993::buckling_coefficient(-0.0001), 7.81, 1e-3));
  CHECK(close(en1993::buckling_coefficient(-1.0), 23.9, 1e-3));
  CHECK(close(en1993::buckling_coefficient(-0.9999), 23.9, 2e-3));
  CHECK(close(en1993::buckling_coefficient(-2.0), 53.82, 1e-12));  // 5.98 · 9
  // (4.2): 1 up to 0.673 under uniform compression, where (0.673 - 0.22)/0.673² = 1.0002; 0.78 at lambda_p = 1
  CHECK(en1993::width_left(0.673, 1.0) == 1.0);
  CHECK(close(en1993::width_left(0.6733, 1.0), 1.0, 1e-3));
  CHECK(close(en1993::width_left(1.0, 1.0), 0.78, 1e-12));
  CHECK(close(en1993::width_left(2.0, 1.0), 0.445, 1e-12));  // 1.78/4
  CHECK(close(en1993::width_left(1.0, -1.0), 0.89, 1e-12));  // 1 - 0.055 · 2
  CHECK(en1993::width_left(0.874, -1.0) == 1.0);             // 0.5 + sqrt(0.14) = 0.87417
  CHECK(en1993::width_left(0.875, -1.0) < 1.0);

  // EN 10219-2 section 250 x 150 x 5 in S355, by hand: A = 3900 - 0.858407 75 = 3835.619 mm², flats 235 and 135 mm.
  // Long walls 47: lambda_p = 47/(56.8 0.813617) = 1.017021, rho = 0.797021/1.034331 = 0.770566; short walls 27:
  // 0.584246, whole. A_eff = 3835.619 - 2 0.229434 1175 = 3296.450 mm².
  const SectionData<double> s = RectangularHollow{250 * mm, 150 * mm, 5 * mm, cold_formed_corners}.data();
  const en1993::BarResistance r = en1993::resistance(s, steel(355));
  CHECK(r.scope == Scope::covered);
  CHECK((r.class_N == 4 && r.class_M_y == 2 && r.class_M_z == 4));
  CHECK(close(en1993::plate_slenderness(235, 5, 1.0, 355e6), 1.017021, 1e-6));
  CHECK(close(r.A_eff, 3296.450e-6, 1e-6));
  CHECK(close(r.N_c_Rd, 1170.240e3, 1e-6));
  CHECK(close(r.N_pl_Rd, 1361.645e3, 1e-6));
  // About z the long walls are flanges: 269.585 mm · 5 = 269.585 mm² are lost 72.5 mm up; the axis moves by
  // 269.585 72.5/3566.034 = 5.48084 mm, I_eff = 15079522 - 269.585 (72.5² + 25/12) - 3566.034 5.48084² = 13554834
  // mm⁴ over 80.48084 mm: 168423.1 mm³ (Wel 201060). The webs, 27, lose nothing.
  CHECK(close(r.M_z_Rd, 168423.1e-9 * 355e6, 1e-6));
  CHECK(close(r.M_el_z_Rd, r.M_z_Rd, 1e-15));
  CHECK(close(r.M_y_Rd, s.Wpl_y * 355e6, 1e-12));  // bent alone about y it is of class 2 ...
  CHECK(close(r.M_y_Rk, s.Wel_y * 355e6, 1e-12));  // ... compressed of class 4, with whole webs and flanges
  // 6.2.9.3: N/(A_eff fy) + My/(Wel,y fy) + Mz/(W_eff,z fy), e_N = 0
  const verify::ClauseRow sum =
      en1993::bending_and_axial(r, {-0.2 * r.N_c_Rd, 0, 0, 0, 0.3 * r.M_y_Rk, 0.4 * r.M_z_Rk});
  CHECK(close(sum.utilisation, 0.9, 1e-12));
  CHECK(std::string(sum.clause) == "EN 1993-1-1 6.2.9.3");
  // (6.51): lambda = sqrt(A_eff fy/N_cr); over 3 m about z N_cr = pi² 210000 15079522/9e6 = 3472.71 kN,
  // lambda = sqrt(1170.240/3472.71) = 0.580502
  const en1993::Buckling b = en1993::buckling(r, s, 210e9, 3.0, 3.0);
  CHECK(close(b.lambda_z, 0.580502, 1e-5));
  CHECK(close(en1993::flexural_buckling(r, b, -1e3).resistance, b.chi_z * 1170.240e3, 1e-6));
  // Table B.1, class 4 as class 3: k_zz = 1 + 0.6 0.580502 n_z, k_yz = k_zz, k_zy = 0.8 k_yy; (6.61) governs, and with
  // no moment about y (6.62)
  const double n = 0.3, n_z = n * 1170.240e3 / (b.chi_z * r.N_Rk), n_y = n * 1170.240e3 / (b.chi_y * r.N_Rk);
  const double k_zz = 1 + 0.6 * 0.580502 * n_z, k_yy = 1 + 0.6 * b.lambda_y * n_y;
  const SectionForces f{-n * r.N_c_Rd, 0, 0, 0, 0.1 * r.M_y_Rk, 0.5 * r.M_z_Rk};
  CHECK(close(en1993::beam_column(r, b, f).utilisation, n_y + k_yy * 0.1 + k_zz * 0.5, 1e-5));
  CHECK(close(en1993::beam_column(r, b, {f.N, 0, 0, 0, 0, f.Mz}).utilisation, n_z + k_zz * 0.5, 1e-5));
}

TEST_CASE("EN 1993-1-5: webs that buckle in bending, beside sums over slices") {
  // Box 600 x 200 x 4, S235: flange 48 lambda_p = 48/56.8 = 0.845070, rho = 0.625070/0.714144 = 0.875272 (hand); webs
  // 148 > 124.
  const double rho_f = (48 / 56.8 - 0.22) / std::pow(48 / 56.8, 2);
  CHECK(close(rho_f, 0.875272, 1e-6));
  const auto taken = [](double u, double neutral) {
    const double c = 592, compressed = c / 2 - neutral, psi = -(c / 2 + neutral) / compressed;
    const double k = 7.81 - 6.29 * psi + 9.78 * psi * psi, lambda = c / 4 / (28.4 * std::sqrt(k));
    const double rho =
        lambda <= 0.5 + std::sqrt(0.085 - 0.055 * psi) ? 1.0 : (lambda - 0.055 * (3 + psi)) / (lambda * lambda);
    const double above = u - neutral;
    return above > 0.6 * rho * compressed && above < (1 - 0.4 * rho) * compressed ? 8.0 : 0.0;
  };
  const en1993::BarResistance r = en1993::resistance(tall_box(), steel(235));
  CHECK((r.class_M_y == 4 && r.class_M_z == 4));
  const double W = sliced_modulus(600, 200, 4, (1 - rho_f) * 192, taken);
  CHECK(close(r.M_y_Rd, W * 1e-9 * 235e6, 2e-4));
  CHECK(W < 0.95 * tall_box().Wel_y * 1e9);
  // a wall just above the limit of class 3 loses little: 42 epsilon has lambda_p = 0.739, rho = 0.950
  const double just = en1993::resistance(sharp(178, 178, 4), steel(235)).A_eff / sharp(178, 178, 4).area;
  CHECK((just < 0.96 && just > 0.94));
}

TEST_CASE("EN 1999 class 4 hollow section of a published example") {
  // T. Hoeglund, TALAT Lecture 2301, example 5.1 (EAA 1999): square hollow section 70 x 1.9, fo = 200, gamma_M1 = 1.0,
  // E = 70000, L = 1 m: beta 34.8, class 4, rho_c 0.8, t_eff 1.52, A_eff 414.2 mm², I 4.004e5 mm⁴, lambda 0.547,
  // chi 0.891, N_b,Rd = 73.8 kN. It thins the corners as well, which takes 0.7 % of A_eff.
  const SectionData<double> s = sharp(70, 70, 1.9);
  const en1999::BarResistance r = en1999::resistance(s, alloy(200), {.gamma_M1 = 1.0});
  CHECK(r.class_N == 4);
  CHECK(close(en1999::plate_slenderness(66.2, 1.9, false), 34.8, 2e-3));
  const en1999::ClassLimits& limits = en1999::class_limits(material::BucklingClass::a, en1999::Welded::no, false);
  CHECK(close(en1999::thickness_left(66.2 / 1.9, 200e6, limits), 0.8, 1e-3));
  CHECK(close(r.A_eff, 414.2e-6, 0.008));
  CHECK(close(s.Iy, 4.004e-7, 2e-4));
  const en1999::Buckling b = en1999::buckling(r, s, 70e9, 1.0, 1.0);
  CHECK(std::fabs(b.lambda_y - 0.547) < 0.003);
  CHECK(std::fabs(b.chi_y - 0.891) < 0.001);
  CHECK(close(en1999::flexural_buckling(r, b, -1e3).resistance, 73.8e3, 0.008));
  // by hand with the flats alone thinned: A_eff = 517.560 - 4 0.199694 125.78 = 417.090, lambda 0.549174, chi 0.890610
  CHECK(close(r.A_eff, 417.090e-6, 1e-6));
  CHECK(close(b.chi_y, 0.890610, 1e-6));
  CHECK(close(en1999::flexural_buckling(r, b, -1e3).resistance, 74.2929e3, 1e-6));
  // Example 9.2: 180 x 120 x 6, fo = 140 (epsilon 1.336): web 28, class 3 in compression; bent about y web 11.2, class
  // 1, flange 18, class 2.
  const en1999::BarResistance r92 = en1999::resistance(sharp(180, 120, 6), alloy(140));
  CHECK((r92.class_N == 3 && r92.class_M_y == 2));
  CHECK(close(en1999::epsilon(140e6), 1.336, 1e-3));
}

TEST_CASE("EN 1999 effective thickness, element by element") {
  // Box 200 x 120 x 4, fo = 250, by hand: A = 2496 mm², walls 48 and 28: rho_c = 32/48 - 220/48² = 0.571181 and
  // 0.862245; A_eff = 2496 - 2 0.137755 448 - 2 0.428819 768 = 1713.905 mm². Thinned all over to the worst it would be
  // 1425.7.
  const en1999::BarResistance r = en1999::resistance(sharp(200, 120, 4), alloy(250));
  CHECK(close(r.A_eff, 1713.905e-6, 1e-6));
  CHECK(r.A_eff > 0.571181 * 2496e-6);
  CHECK(close(r.N_c_Rd, 1713.905 * 250 / 1.1, 1e-6));
  // Bent about y only the flange buckles, 61.7143 mm² 98 mm up: the axis moves 2.484507 mm, I_eff = 13331899 mm⁴,
  // W_eff = 130086.97 mm³. The webs, 0.4151 48 = 19.9, are of class 3.
  CHECK(r.class_M_y == 4);
  CHECK(close(r.M_y_Rd, 130086.97e-9 * 250e6 / 1.1, 1e-6));
  CHECK(close(r.alpha_y, 130086.97 / 139397.12, 1e-6));
  CHECK(r.psi == 1.0);
  // webs that buckle as well, beside the sum over slices: flange 48, rho_c 0.571181; web 148, psi by the axis
  const auto rho_c = [](double beta) { return beta <= 22 ? 1.0 : 32 / beta - 220 / (beta * beta); };
  const auto taken = [&](double u, double neutral) {
    const double compressed = 296 - neutral, psi = -(296 + neutral) / compressed;
    return u > neutral && u < 296 ? 8 * (1 - rho_c((0.70 + 0.30 * psi) * 148)) : 0.0;
  };
  const en1999::BarResistance tall = en1999::resistance(tall_box(), alloy(250));
  const double W = sliced_modulus(600, 200, 4, (1 - rho_c(48)) * 192, taken);
  CHECK(close(tall.M_y_Rd, W * 1e-9 * 250e6 / 1.1, 2e-4));
  // g of 6.1.4.3: 1 uniform, 0.7 to zero, 0.4 halved, 0.8/3 at psi = -2
  CHECK(close(en1999::bent_plate_slenderness(40, 1, 1.0), 40, 1e-12));
  CHECK(close(en1999::bent_plate_slenderness(40, 1, 0.0), 28, 1e-12));
  CHECK(close(en1999::bent_plate_slenderness(40, 1, -1.0), 16, 1e-12));
  CHECK(close(en1999::bent_plate_slenderness(40, 1, -2.0), 40 * 0.8 / 3, 1e-12));
  // steady where class 4 begins: a wall of 22
  const double below = en1999::resistance(sharp(24e0 * 4 - 0.001, 60, 4), alloy(250)).M_z_Rd;
  const double above = en1999::resistance(sharp(24e0 * 4 + 0.001, 60, 4), alloy(250)).M_z_Rd;
  CHECK(close(below, above, 1e-3));
  // a round tube is thinned all round: 250 x 2, beta = 3 sqrt(124) = 33.4066, rho_c = 0.760760
  const SectionData<double> thin = RoundTube{250 * mm, 2 * mm}.data();
  CHECK(close(en1999::resistance(thin, alloy(250)).A_eff, 0.760760 * thin.area, 1e-5));
}

TEST_CASE("EN 1993-1-5 shear buckling of webs") {
  // 5.3: 392/(86.4 4) = 1.134259, chi_w = 0.731755 (hand); 0.83 lambda_w is 71.7 epsilon, the 72 of 6.2.6 (6)
  CHECK(close(en1993::shear_buckling_factor(392, 4, 235e6), 0.731755, 1e-6));
  CHECK(en1993::shear_buckling_factor(286, 4, 235e6) == 1.0);
  CHECK(close(en1993::shear_buckling_factor(288, 4, 235e6), 1.0, 5e-3));
  // Box 400 x 200 x 4, S235, by hand: V_pl = 4736 400/600 235/sqrt(3) = 428.38 kN, V_b = 0.731755 3136 235/sqrt(3) =
  // 311.35 kN; along y nothing buckles: 4736 200/600 235/sqrt(3) = 214.19 kN
  const SectionData<double> s = sharp(400, 200, 4);
  const en1993::BarResistance r = en1993::resistance(s, steel(235));
  CHECK(r.scope == Scope::covered);
  CHECK(close(r.V_z_Rd, 311.350e3, 1e-6));
  CHECK(close(r.V_y_Rd, 214.189e3, 1e-5));
  // a torque's shear flow passes the same webs
  CHECK(close(r.T_Rd, 0.731755 * s.Wt * 235e6 / std::sqrt(3.0), 1e-6));
  // buckling has gamma_M1: with 1.1 also the torque's
  const en1993::BarResistance other = en1993::resistance(s, steel(235), {.gamma_M1 = 1.1});
  CHECK(close(other.V_z_Rd, 311.350e3 / 1.1, 1e-6));
  CHECK(close(other.V_y_Rd, r.V_y_Rd, 1e-12));
  CHECK(close(other.T_Rd, r.T_Rd / 1.1, 1e-12));
  // EN 1993-1-5 7.1 (1) with M_f = 0 at V = 0.75 V_b: M <= 1 - 0.5² = 0.75; ours is the same or less
  const double M = 0.75 * r.M_y_Rd;
  CHECK(en1993::bending_and_axial(r, {0, 0, 0.75 * r.V_z_Rd, 0, M, 0}).utilisation >= 1.0);
}

TEST_CASE("EN 1999 shear buckling of webs") {
  // 6.5.5 with k_tau = 5.34: 17 sqrt(5.34)/45 = 0.872986, 430 5.34/80² = 0.358781 (hand). The constants: 17 sqrt(5.34)
  // = 39.3, the limit 39 of 6.2.6; 5.34 pi² 70000/(12 0.91) sqrt(3)/250 = 2340.7 against 2296.2.
  CHECK(en1999::shear_buckling_factor(39, 1, 250e6) == 1.0);
  CHECK(en1999::shear_buckling_factor(39.2, 1, 250e6) == 1.0);
  CHECK(close(en1999::shear_buckling_factor(45, 1, 250e6), 0.872986, 1e-6));
  CHECK(close(en1999::shear_buckling_factor(80, 1, 250e6), 0.358781, 1e-5));
  CHECK(close(en1999::shear_buckling_factor(45 * 1.25, 1, 160e6), 0.872986, 1e-6));
  for (double x = 40; x < 200; x += 1) {
    const double critical = 5.34 * pi * pi * 70000 / (12 * 0.91) / (x * x) / (250 / std::sqrt(3.0));
    CHECK(en1999::shear_buckling_factor(x, 1, 250e6) <= critical * 0.982);
    CHECK(en1999::shear_buckling_factor(x, 1, 250e6) <= en1999::shear_buckling_factor(x - 1, 1, 250e6));
  }
  // Box 300 x 100 x 5: webs 290/5 = 58, v = 39.2844/58 = 0.677317; along y 18, whole. 6.2.6 (2): webs from flange to
  // flange, 2 290 5 = 2900 and 2 90 5 = 900 mm².
  const SectionData<double> s = sharp(300, 100, 5);
  const en1999::BarResistance r = en1999::resistance(s, alloy(250));
  CHECK(r.scope == Scope::covered);
  CHECK(close(r.V_z_Rd, 0.677317 * 2900 * 250 / std::sqrt(3.0) / 1.1, 1e-5));
  CHECK(close(r.V_y_Rd, 900 * 250 / std::sqrt(3.0) / 1.1, 1e-12));
  CHECK(close(r.T_Rd, 0.677317 * s.Wt * 250e6 / std::sqrt(3.0) / 1.1, 1e-5));
  // 6.7.6 with M_f = 0 at V = 0.75 V_Rd: M/(2 M_Rd) = 0.25, so half of M_Rd is left; plain webs keep 1 - 0.5² = 0.75
  CHECK(close(en1999::strength_left_by_shear(0.75, true), 0.5, 1e-12));
  CHECK(close(en1999::bending_and_axial(r, {0, 0, 0.75 * r.V_z_Rd, 0, 0.5 * r.M_y_Rd, 0}).utilisation, 1.0, 1e-9));
  CHECK(en1999::strength_left_by_shear(0.5, true) == 1.0);
  CHECK(en1999::strength_left_by_shear(1.0, true) == 0.0);
}

TEST_CASE("what no clause gives stays outside the scope, with its reason") {
  // EN 1993-1-1 Table 5.2 sheet 3: round tubes of class 4 go to EN 1993-1-6
  const en1993::BarResistance tube = en1993::resistance(RoundTube{400 * mm, 4 * mm}.data(), steel(235));
  CHECK(tube.scope == Scope::class_4_tube);
  CHECK(std::string(verify::reason(tube.scope)).find("EN 1993-1-6") != std::string::npos);
  CHECK(is_infinite(en1993::axial(tube, -1.0).utilisation));
  CHECK(is_infinite(en1993::bending(tube, {0, 0, 0, 0, 1.0, 0}).utilisation));
  for (const Scope s : {Scope::class_4, Scope::class_4_tube, Scope::slender_web, Scope::shape_unknown})
    CHECK(std::string(verify::reason(s)).size() > 20);
}
