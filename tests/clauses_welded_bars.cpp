// SPDX-License-Identifier: MIT
// Aluminium bars with welds along and across them (EN 1999-1-1 6.1.6, 6.2.9.3, 6.3.1, 6.3.3) against hand calculations
// and against the yield surface of a partly softened ring.
#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

#include <baywork/material/aluminium.hpp>
#include <baywork/section/rectangular_hollow.hpp>
#include <baywork/section/round_tube.hpp>
#include <baywork/verify/en1999_buckling.hpp>
#include <baywork/verify/en1999_softened_arc.hpp>

#include "support/by_hand.hpp"

namespace {

using namespace baywork;
using namespace baywork::en1999;
using material::BucklingClass;
using verify::SectionForces;

// EN AW-6082 T6 up to 5 mm: 250, 290 | 125, 185, class A (EN 1999-1-1 Table 3.2b, value from memory).
const material::Material& alloy() {
  static const material::Material m = material::en_aw_6082_t6();
  return m;
}
SectionData<double> big_tube() { return RoundTube{114.3 * mm, 5 * mm}.data(); }
SectionData<double> small_tube() { return RoundTube{60 * mm, 4 * mm}.data(); }

/// Fully plastic forces of a thin ring of radius 1 whose wall has the strength rho within `arc` of the direction 0 and
/// 1 elsewhere, in compression beyond the line cos(u - turn) = cut, over those of the whole ring.
struct Plastic {
  double n = 0, m = 0;
};
Plastic plastic_ring(double rho, double arc, double turn, double cut) {
  constexpr int pieces = 1440;
  double N = 0, My = 0, Mz = 0;
  for (int i = 0; i < pieces; ++i) {
    const double u = -pi + 2 * pi * (i + 0.5) / pieces, f = std::fabs(u) < arc ? rho : 1.0;
    const double sign = std::cos(u - turn) > cut ? 1.0 : -1.0;
    N += f * sign;
    My += f * sign * std::cos(u);
    Mz += f * sign * std::sin(u);
  }
  return {std::fabs(N) / pieces, std::hypot(My, Mz) * 2 * pi / pieces / 4};
}

}  // namespace

TEST_CASE("EN 1999: no plastic state of a ring softened over an arc lies within what the refined factor allows") {
  // 6.2.9.2 with omega_0 = 1 - (1 - rho) sin(arc): (n/omega)^1.3 + (m/omega)^1.02 >= 1 for every fully plastic state,
  // whatever the direction of the moment and the axial force.
  for (const double rho : {0.3, 0.5, 0.638})
    for (const double arc : {0.2, 0.5, 0.8022, 1.1, 1.4, 1.55}) {
      const auto least_sum = [&](double omega) {
        double least = 10;
        for (int turn = 0; turn < 24; ++turn)
          for (int cut = -20; cut <= 20; ++cut) {
            const Plastic p = plastic_ring(rho, arc, turn * pi / 24, 1.05 * cut / 20);
            const double sum = std::pow(p.n / omega, 1.3) + std::pow(p.m / omega, 1.02);
            least = sum < least ? sum : least;
          }
        return least;
      };
      CHECK(least_sum(1 - (1 - rho) * std::sin(arc)) > 1.0);
      // what the arc alone takes, without as much opposite, would be too little: its force is off the middle
      CHECK(least_sum(1 - (1 - rho) * std::sin(arc) / 2) < 1.0);
    }
  // the elastic modulus of a one-sided arc, by sums about its own axis, is above the mirrored one's
  for (const double rho : {0.5, 0.638})
    for (const double arc : {0.3, 0.8, 1.2}) {
      constexpr int pieces = 4000;
      double A = 0, S = 0, I2 = 0;
      for (int i = 0; i < pieces; ++i) {
        const double u = -pi + 2 * pi * (i + 0.5) / pieces, t = std::fabs(u) < arc ? rho : 1.0;
        A += t;
        S += t * std::cos(u);
        I2 += t * std::cos(u) * std::cos(u);
      }
      const double e = S / A, W = (I2 - A * e * e) / (1 + std::fabs(e)) / (pieces / 2.0);
      CHECK(W > 1 - (1 - rho) * (2 * arc + std::sin(2 * arc)) / pi);
    }
}

TEST_CASE("EN 1999: factors of a softened arc") {
  // 114.3 x 5 with a 48.3 bar on it, b_haz 20 mm: arc = asin(48.3/114.3) + 20/54.65 = 0.802247, sin 0.718920,
  // (2 arc + sin(2 arc))/pi = 0.828855 (hand). rho_o,haz = 0.5: omega_0 = 0.640540; rho_u,haz = 185/290:
  // (0.739702 290/1.25)/(250/1.1) = 0.755087; M_u,Rd takes 0.699897 of Wel fu/gamma_M2.
  const BarResistance whole = resistance(big_tube(), alloy(), {}, Welded::yes);
  const BarResistance r = softened_arc(whole, 0.802247);
  CHECK(close(omega_0(r, Softening::beyond_width), 0.640540, 1e-6));
  CHECK(close(omega_0(r, Softening::within_width), 0.755087, 1e-5));
  CHECK(close(r.M_u_haz_y_Rd, 0.699897 * big_tube().Wel_y * 290e6 / 1.25, 1e-5));
  CHECK(close(r.N_u_haz_Rd, (1 - (1 - 185.0 / 290) * 2 * 0.802247 / pi) * big_tube().area * 290e6 / 1.25, 1e-5));
  CHECK(r.V_z_Rd == whole.V_z_Rd);
  CHECK(close(shear(r, {0, 0, 1e3, 0, 0, 0}, Softening::beyond_width).resistance, 0.5 * whole.V_z_Rd, 1e-12));
  CHECK(close(torsion(r, 1e3, Softening::within_width).resistance, 0.5 * whole.T_Rd, 1e-12));
  // nothing softened, everything softened
  CHECK(close(softened_arc(whole, 0.0).omega_o, 1.0, 1e-12));
  CHECK(close(softened_arc(whole, 1.5707963).omega_o, whole.omega_o, 1e-6));
  CHECK(close(softened_arc(whole, 1.5707963).omega_u, whole.omega_u, 1e-6));
  CHECK(close(softened_arc(whole, 1.5707963).M_u_haz_y_Rd, whole.M_u_haz_y_Rd, 1e-6));
  CHECK(softened_arc(whole, en1999::whole_section).omega_o == whole.omega_o);
  // other shapes stay softened all round
  const BarResistance box = resistance(RectangularHollow{80 * mm, 50 * mm, 4 * mm}.data(), alloy());
  CHECK(softened_arc(box, 0.3).omega_o == box.omega_o);
  for (double phi = 0.1; phi < 1.5; phi += 0.1)
    CHECK(softened_arc(whole, phi).omega_u < softened_arc(whole, phi - 0.1).omega_u + 1e-12);
}

TEST_CASE("EN 1999: a tube with a rail welded along it") {
  // 114.3 x 5, foot 10 mm wide, b_haz 20 mm: 50 5 = 250 mm² softened, by hand: A = 1716.880, A_1 = 1716.880 - 125 =
  // 1591.880 mm², A_1/A = 0.927194, N_o,Rd = A_1 250/1.1 = 361.791 kN.
  // Bending, softened h²/(2 I) = 250 114.3²/5138404 = 0.635630, left 0.682185; class 3 (14.026 of 13 and 18, welded),
  // alpha = 1 + 0.794719 (59774.12/44955.42 - 1) = 1.261964: M_Rd = 0.682185 1.261964 44955.42 250/1.1 = 8.79587 kNm.
  const SectionData<double> s = big_tube();
  const BarResistance r = resistance(s, alloy(), {}, Welded::yes, {true, 250e-6});
  CHECK(close(r.softened_share, 0.927194, 1e-6));
  CHECK(close(r.N_o_Rd, 361.791e3, 1e-5));
  CHECK(close(r.N_c_Rd, 361.791e3, 1e-5));
  CHECK(close(r.M_y_Rd, 8795.866, 1e-6));
  CHECK(close(r.V_z_Rd, 125.3281e3, 1e-5));  // 0.6 1591.880 250/(sqrt(3) 1.1)
  CHECK(close(r.T_Rd, 5898.869, 1e-5));      // the flow passes the softened strip: 0.5 2 44955.42 250/(sqrt(3) 1.1)
  // Buckling over 3 m, by hand: lambda = 1.475242, chi = 0.381525; Table 6.5: 1 - 0.072806 10^-1.475242 -
  // (0.05 + 0.0927194) 1.475242^(1.3 (-0.475242)) = 0.885320; N_b,Rd = 0.885320 0.381525 390.200 = 131.799 kN
  const Buckling b = buckling(r, s, 70e9, 3.0, 3.0);
  CHECK(close(b.lambda_y, 1.475242, 1e-6));
  CHECK(close(b.chi_y, 0.381525, 1e-6));
  CHECK(close(b.kappa_y, 0.885320, 1e-6));
  CHECK(close(flexural_buckling(r, b, -1e3).resistance, 131.7986e3, 1e-5));
  // one weld across it in the middle of the wave, too: both factors
  CHECK(close(flexural_buckling(r, b, -1e3, {0.5, 1, 1}).resistance, 0.5 * 131.7986e3, 1e-5));
  // about each axis with its own slenderness
  const Buckling two = buckling(r, s, 70e9, 3.0, 1.5);
  CHECK(close(two.lambda_z, 0.737621, 1e-5));
  CHECK(two.kappa_z == kappa_longitudinal(BucklingClass::a, two.lambda_z, r.softened_share));
  CHECK(two.kappa_z != two.kappa_y);
  // a weld that softens nothing (temper O) still has kappa, residual stresses in it: A_1/A = 1
  const BarResistance seam = resistance(s, alloy(), {}, Welded::yes, {true, 0.0});
  CHECK(seam.softened_share == 1.0);
  CHECK(buckling(seam, s, 70e9, 3.0, 3.0).kappa_y < 1.0);
  CHECK(buckling(resistance(s, alloy()), s, 70e9, 3.0, 3.0).kappa_y == 1.0);
  // more than the section is the whole section: rho_o,haz of everything
  const BarResistance all = resistance(s, alloy(), {}, Welded::yes, {true, 1.0});
  CHECK(close(all.N_o_Rd, 0.5 * 390.2e3, 1e-5));
  CHECK(close(all.M_y_Rd, 0.5 * resistance(s, alloy(), {}, Welded::yes).M_y_Rd, 1e-12));
}

TEST_CASE("EN 1999 6.2.3 and 6.2.5.1: across a weld and across holes, by hand") {
  // tube 60 x 4: 703.717 185/1.25 = 104.150 kN; Wel 185/1.25 = 1367.838 Nm; W_net = 8000 mm³ with fu = 290: 1856 Nm
  CHECK(close(tension_haz(703.717e-6, 185e6), 104.150e3, 1e-5));
  CHECK(close(bending_net(9242.147e-9, 185e6), 1367.838, 1e-6));
  CHECK(close(bending_net(8000e-9, 290e6), 1856.0, 1e-12));
  // at a local weld the lesser of omega_0 M_Rd (0.6512 2855.76 = 1859.67, 0.5 2855.76 = 1427.88) and that
  const BarResistance r = resistance(small_tube(), alloy());
  CHECK(close(bending_resistance(r, Softening::within_width, true), 1367.838, 1e-6));
  CHECK(close(bending_resistance(r, Softening::beyond_width, true), 1367.838, 1e-6));
  CHECK(close(bending_resistance(r, Softening::none, true), 2855.758, 1e-6));
  // tension: omega_0 N_o,Rd is the lesser of yielding, 159.936 kN, and N_u,haz,Rd
  CHECK(close(axial(r, 50e3, Softening::within_width).resistance, 104.150e3, 1e-5));
  CHECK(close(axial(r, 50e3, Softening::none).resistance, 159.9356e3, 1e-6));
}

TEST_CASE("EN 1999 Table 6.5: kappa along the bar") {
  // By hand; class A for A_1/A = 1, 0.8 and 0.6, class B.
  struct Row {
    double lambda, one, some, much, class_b;
  };
  for (const Row& row : {Row{.2, .971870, .849430, .726989, 1.0}, Row{.5, .904408, .853908, .803408, .904574},
                         Row{1.0, .85, .85, .85, .80}, Row{1.5, .884752, .893794, .902836, .841029},
                         Row{2.0, .939081, .945204, .951326, .918403}}) {
    CHECK(close(kappa_longitudinal(BucklingClass::a, row.lambda, 1.0), row.one, 1e-6));
    CHECK(close(kappa_longitudinal(BucklingClass::a, row.lambda, 0.8), row.some, 1e-6));
    CHECK(close(kappa_longitudinal(BucklingClass::a, row.lambda, 0.6), row.much, 1e-6));
    CHECK(close(kappa_longitudinal(BucklingClass::b, row.lambda, 0.7), row.class_b, 1e-6));
  }
}

TEST_CASE("EN 1999 6.3.3: a weld inside the wave, unequal end moments") {
  // Tube 60 x 4 over 1 m: N_Rd = 159.936 kN, chi = 0.684078, M_Rd = 2.85576 kNm; weld of omega_0 = 0.5 at x_s = 0.2 m:
  // sin(36 deg) = 0.587785, omega_x = 0.5/(0.684078 + 0.315922 0.587785) = 0.574863; N = 20 kN, M = 0.3 kNm there:
  // (20/(0.684078 0.574863 159.936))^0.8 + (0.3/2.85576)^1.02/0.5 = 0.399882 + 0.200844 = 0.600726 (hand).
  const SectionData<double> s = small_tube();
  const BarResistance r = resistance(s, alloy());
  const Buckling b = buckling(r, s, 70e9, 1.0, 1.0);
  const double sine = place_on_wave(0.2, 1.0);
  CHECK(close(sine, 0.587785, 1e-6));
  CHECK(close(omega_x(0.5, b.chi_y, sine), 0.574863, 1e-5));
  CHECK(close(beam_column(r, b, {-20e3, 0, 0, 0, 300, 0}, {0.5, sine, sine}).utilisation, 0.600726, 1e-5));
  // 6.3.3.5: no weld, moments 0.8 and 0.2 kNm at the ends. At the end with 0.8 (x_s = 0) chi omega_x = 1:
  // (20/159.936)^0.8 + (0.8/2.85576)^1.02 = 0.189526 + 0.273096 = 0.462622; in the middle chi alone and 0.5 kNm:
  // (20/109.408)^0.8 + (0.5/2.85576)^1.02 = 0.256793 + 0.169088 = 0.425881. The safe form, 0.8 kNm at mid-wave:
  // 0.529890.
  CHECK(close(beam_column(r, b, {-20e3, 0, 0, 0, 800, 0}, {1, 0, 0}).utilisation, 0.462622, 1e-5));
  CHECK(close(beam_column(r, b, {-20e3, 0, 0, 0, 500, 0}, {1, 1, 1}).utilisation, 0.425881, 1e-5));
  CHECK(close(beam_column(r, b, {-20e3, 0, 0, 0, 800, 0}).utilisation, 0.529890, 1e-5));
  // lambda_haz, 6.3.3.3 (3): 0.958347 sqrt(0.5) = 0.677654
  CHECK(close(buckling(r, s, 70e9, 1.0, 1.0, 0.5).lambda_y, 0.677654, 1e-5));
  // its chi, by hand: phi = 0.5 (1 + 0.2 0.577654 + 0.459215) = 0.787373, chi = 1/(0.787373 + 0.400931) = 0.841535
  CHECK(close(buckling(r, s, 70e9, 1.0, 1.0, 0.5).chi_y, 0.841535, 1e-5));
  // 6.2.9.2 word by word: My = Mz = 0.8 kNm, N = 0: (2 0.280136^1.7)^0.6 = 0.413937; resultant (1.131371/2.85576)^1.02
  // = 0.388903, 2^0.09 less (hand)
  CHECK(close(bending_and_axial(r, {0, 0, 0, 0, 800, 800}, Softening::none, RoundForm::components).utilisation,
              0.413937, 1e-5));
  CHECK(close(bending_and_axial(r, {0, 0, 0, 0, 800, 800}).utilisation, 0.388903, 1e-5));
  // psi_c by chi: 1.3 0.684078 = 0.889301; (20/109.408)^0.889301 = 0.220636 (hand); never below 0.8
  CHECK(close(beam_column(r, b, {-20e3, 0, 0, 0, 0, 0}, {}, RoundForm::resultant, AxialExponent::by_chi).utilisation,
              0.220636, 1e-5));
  CHECK(axial_exponent(AxialExponent::by_chi, 1.3, 0.5) == 0.8);
  CHECK(axial_exponent(AxialExponent::fixed, 1.3, 1.0) == 0.8);
}
