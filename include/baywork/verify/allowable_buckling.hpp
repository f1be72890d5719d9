// SPDX-License-Identifier: MIT
// Aluminum Design Manual, Part I, Chapter B and E.2: buckling constants, and the stresses at which tubes give way.
#pragma once

#include <cmath>

#include <baywork/core/scalar.hpp>
#include <baywork/material/us_aluminium.hpp>

/// Allowable-stress design of round aluminium tubes after the Aluminum Design Manual 2020, Part I, as ANSI E1.2 asks.
/// Chapters C to H were compared with a public reprint of that edition; constants (Table B.4.2), local buckling
/// (B.5.4.5, B.5.5.4), H.1 and the factor of repeated use are values from memory, Table B.4.1 a value from memory and
/// compared with an earlier edition's Table 2-2. Low confidence: check all of it against the standards.
namespace baywork::allowable {

using material::ksi;

/// E = 10,100 ksi in all strengths (Table A.4.3); analysis takes the material's own.
inline constexpr double modulus = 10100 * ksi;

/// Straight lines B - D s that meet elastic buckling at s = C: of columns, and by sqrt(R_b/t) of tubes in compression
/// and bending; by lambda in shear. Pa.
struct BucklingConstants {
  double B_c = 0, D_c = 0, C_c = 0;
  double B_t = 0, D_t = 0;    ///< its C_t lies beyond R_b/t = 20, where the scope ends
  double B_tb = 0, D_tb = 0;  ///< so does C_tb
  double B_s = 0, D_s = 0, C_s = 0;
};

/// Tables B.4.2 (`aged`: tempers T5 to T9) and B.4.1 (all others, and all metal beside welds):
/// B_c = F_cy (1 + (F_cy/2250)^(1/2)), D_c = B_c/10 (B_c/E)^(1/2), C_c = 0.41 B_c/D_c; others 1000, B_c/20 (6
/// B_c/E)^(1/2), 2/3 B_c/D_c. B_t = F_cy (1 + (F_cy/50000)^(1/5)), D_t = B_t/4.5 (B_t/E)^(1/3); others 6500, 3.7. B_tb
/// = 1.5 B_t, D_tb = B_tb/2.7 (B_tb/E)^(1/3). B_s = F_sy (1 + (F_sy/800)^(1/3)), D_s, C_s as of columns; others 240. F
/// in ksi. (In each pair the root of the aged tempers' number is 1.5 times that of the others'.)
inline BucklingConstants buckling_constants(double F_cy, double F_sy, bool aged) {
  const auto raised = [](double F, double by, double power) { return F * (1.0 + std::pow(F / ksi / by, power)); };
  const auto line = [aged](double B, double& D, double& C) {
    D = aged ? B / 10.0 * std::sqrt(B / modulus) : B / 20.0 * std::sqrt(6.0 * B / modulus);
    C = (aged ? 0.41 : 2.0 / 3.0) * B / D;
  };
  BucklingConstants c;
  c.B_c = raised(F_cy, aged ? 2250 : 1000, 1.0 / 2);
  line(c.B_c, c.D_c, c.C_c);
  c.B_t = raised(F_cy, aged ? 50000 : 6500, 1.0 / 5);
  c.D_t = c.B_t / (aged ? 4.5 : 3.7) * std::cbrt(c.B_t / modulus);
  c.B_tb = 1.5 * c.B_t;
  c.D_tb = c.B_tb / 2.7 * std::cbrt(c.B_tb / modulus);
  c.B_s = raised(F_sy, aged ? 800 : 240, 1.0 / 3);
  line(c.B_s, c.D_s, c.C_s);
  return c;
}

/// F_c of a column with lambda = k L / r, E.2: F_cy up to lambda_1 = (B_c - F_cy)/D_c; (B_c - D_c lambda) (0.85 + 0.15
/// (C_c - lambda)/(C_c - lambda_1)) up to C_c; 0.85 pi² E / lambda² beyond.
///
/// 0.85 stands for the column's crookedness, which short columns do not feel: the second factor takes it in from 1 at
/// lambda_1 to 0.85 at C_c. There the line has B_c (1 - 0.41) = 0.59 B_c and, with C_c = 4.1 sqrt(E/B_c), Euler's curve
/// pi²/4.1² B_c = 0.587 B_c (other tempers: B_c/3 and 0.3331 B_c): the rounded constants leave a step down of half a
/// percent. Without the factor it would be 15 %.
inline double column_stress(const BucklingConstants& c, double F_cy, double lambda) {
  const double lambda_1 = (c.B_c - F_cy) / c.D_c;
  if (lambda <= lambda_1) return F_cy;
  if (lambda < c.C_c) return (c.B_c - c.D_c * lambda) * (0.85 + 0.15 * (c.C_c - lambda) / (c.C_c - lambda_1));
  const double k = pi_v<double> / lambda;
  return 0.85 * k * k * modulus;
}

/// F_c of a tube's wall, B.5.4.5: B_t - D_t sqrt(R_b/t), at most F_cy; R_b to the middle of the wall.
inline double wall_compression_stress(const BucklingConstants& c, double F_cy, double slenderness) {
  return smaller(F_cy, c.B_t - c.D_t * std::sqrt(slenderness));
}

/// F_b of a tube's wall in bending, B.5.5.4: B_tb - D_tb sqrt(R_b/t). Yielding limits it elsewhere (F.2).
inline double wall_bending_stress(const BucklingConstants& c, double slenderness) {
  return c.B_tb - c.D_tb * std::sqrt(slenderness);
}

/// lambda = 2.9 (R_b/t)^(5/8) (L/R_b)^(1/4): of a tube in shear, L from the greatest to no shear force (G.4-4); in
/// torsion, L between what stiffens it (H.2-6).
inline double shear_slenderness(double R_b, double t, double L) {
  return 2.9 * std::pow(R_b / t, 0.625) * std::pow(L / R_b, 0.25);
}

namespace detail {
inline double shear_stress(const BucklingConstants& c, double F_sy, double lambda, double raise, double slope) {
  if (lambda >= c.C_s / 1.25) {
    const double k = pi_v<double> / (1.25 * lambda);
    return raise * k * k * modulus;
  }
  return smaller(F_sy, raise * c.B_s - slope * c.D_s * lambda);
}
}  // namespace detail

/// F_s of a tube in shear, G.4: F_sy, 1.3 B_s - 1.63 D_s lambda, 1.3 pi² E/(1.25 lambda)² from C_s/1.25 on.
inline double tube_shear_stress(const BucklingConstants& c, double F_sy, double lambda) {
  return detail::shear_stress(c, F_sy, lambda, 1.3, 1.63);
}
/// F_s of a tube in torsion, H.2.1: F_sy, B_s - 1.25 D_s lambda, pi² E/(1.25 lambda)² from C_s/1.25 on.
inline double tube_torsion_stress(const BucklingConstants& c, double F_sy, double lambda) {
  return detail::shear_stress(c, F_sy, lambda, 1.0, 1.25);
}

}  // namespace baywork::allowable
