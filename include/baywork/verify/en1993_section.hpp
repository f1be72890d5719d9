// SPDX-License-Identifier: MIT
// EN 1993-1-1:2005, 6.2.1 to 6.2.10: forces at one section against its resistances.
#pragma once

#include <baywork/verify/en1993_resistance.hpp>

namespace baywork::en1993 {

namespace detail {

/// Ratios of two shear forces to their resistances as one: round and solid sections answer to the resultant, elsewhere
/// different walls carry Vy and Vz.
inline verify::ClauseRow shear_row(ShapeKind kind, double Vy, double Vz, double V_y, double V_z, const char* clause) {
  if (is_round(kind)) return verify::compare(verify::resultant(Vy, Vz), V_z, clause);
  const verify::ClauseRow y = verify::compare(Vy, V_y, clause);
  const verify::ClauseRow z = verify::compare(Vz, V_z, clause);
  if (kind == ShapeKind::solid_rectangle)
    return verify::interaction_row(verify::resultant(y.utilisation, z.utilisation), clause);
  return y.utilisation > z.utilisation ? y : z;
}

}  // namespace detail

/// 6.2.3, 6.2.4: the axial force against N_pl,Rd or N_c,Rd.
inline verify::ClauseRow axial(const BarResistance& r, double N) {
  if (N >= 0.0) return verify::compare(N, r.N_pl_Rd, "EN 1993-1-1 6.2.3");
  return verify::compare(N, r.N_c_Rd, "EN 1993-1-1 6.2.4");
}

/// 6.2.5: bending alone, of a round section the resultant moment, else about the worse axis.
inline verify::ClauseRow bending(const BarResistance& r, const verify::SectionForces& f) {
  const char* clause = "EN 1993-1-1 6.2.5";
  if (is_round(r.kind)) return verify::compare(verify::resultant(f.My, f.Mz), r.M_y_Rd, clause);
  const verify::ClauseRow y = verify::compare(f.My, r.M_y_Rd, clause);
  const verify::ClauseRow z = verify::compare(f.Mz, r.M_z_Rd, clause);
  return y.utilisation > z.utilisation ? y : z;
}

/// 6.2.7: the torque, taken as Saint-Venant's, against T_Rd.
inline verify::ClauseRow torsion(const BarResistance& r, double T) {
  return verify::compare(T, r.T_Rd, "EN 1993-1-1 6.2.7");
}

/// V_pl,T,Rd / V_pl,Rd, 6.2.7 (9), with t = tau_t / (fy / (sqrt(3) gamma_M0)): sqrt(1 - t / 1.25) for I sections,
/// (6.26), 1 - t for hollow ones, (6.28). Solids and other shapes take 1 - t, the sum of the greatest stresses; warping
/// stresses of open shapes are not in it.
inline double shear_left_by_torsion(ShapeKind kind, double t) {
  if (kind == ShapeKind::i_shape) return t < 1.25 ? std::sqrt(1.0 - t / 1.25) : 0.0;
  return t < 1.0 ? 1.0 - t : 0.0;
}

/// 6.2.6 and, with a torque, 6.2.7 (9).
inline verify::ClauseRow shear(const BarResistance& r, const verify::SectionForces& f) {
  const double left = shear_left_by_torsion(r.kind, torsion(r, f.T).utilisation);
  return detail::shear_row(r.kind, f.Vy, f.Vz, left * r.V_y_Rd, left * r.V_z_Rd,
                           f.T == 0.0 ? "EN 1993-1-1 6.2.6" : "EN 1993-1-1 6.2.7");
}

/// rho = (2 V / V_pl,Rd - 1)² above half the shear resistance, else 0, 6.2.8 (3); 1 from V_pl,Rd on.
inline double strength_lost_by_shear(double shear_utilisation) {
  if (shear_utilisation <= 0.5) return 0.0;
  if (shear_utilisation >= 1.0) return 1.0;
  const double x = 2.0 * shear_utilisation - 1.0;
  return x * x;
}

/// M_N,Rd / M_pl,Rd of a round tube for n = N / N_pl,Rd. A thin ring that yields all round has exactly cos(pi n / 2):
/// let the wall within the angle a of the outermost fibre be in compression and the rest in tension, then
/// n = 1 - 2 a / pi and M / M_pl = sin a. A thick ring and a solid bar have more. The rule 1 - n^1.7 (ENV
/// 1993-1-1:1992, 5.4.8.1, without its factor 1.04; value from memory) is below that up to n = 0.69; beyond it is too
/// high, by up to 0.8 % of M_pl and, close to n = 1, by 8 % of what is left. The smaller of the two is taken.
inline double round_moment_left(double n) {
  if (n >= 1.0) return 0.0;
  const double exact = std::cos(0.5 * pi_v<double> * n);
  const double rule = 1.0 - (n == 0.0 ? 0.0 : std::pow(n, 1.7));
  return smaller(exact, rule);
}

/// M_N,y,Rd / M_pl,y,Rd = (1 - n) / (1 - 0.5 a) <= 1, 6.2.9.1 (5): a hollow section about either axis with its a_w or
/// a_f, an I about y. The allowance of 6.2.9.1 (4), no reduction for small n, is not used (safe side).
inline double flanged_moment_left(double n, double a) {
  if (n >= 1.0) return 0.0;
  const double left = (1.0 - n) / (1.0 - 0.5 * a);
  return smaller(left, 1.0);
}

/// M_N,z,Rd / M_pl,z,Rd of an I section, 6.2.9.1 (5): 1 for n <= a, else 1 - ((n - a) / (1 - a))².
inline double flange_bending_left(double n, double a) {
  if (n <= a) return 1.0;
  if (n >= 1.0) return 0.0;
  const double x = (n - a) / (1.0 - a);
  return 1.0 - x * x;
}

/// The left side of 6.2.9.1 for n = N / N_pl,Rd, my = My / M_pl,y,Rd and mz.
/// Round: resultant moment / M_N (the square root of (6.41), the same limit). Rectangular hollow: (6.41) with
/// alpha = beta = 1.66 / (1 - 1.13 n²) <= 6. I: alpha 2, beta 5 n >= 1. Solid rectangle: 1 - n² on both axes, (6.32),
/// and the straight line between them. Never less than n. Where the sum is below 1 it is no load factor, and in a
/// hollow section it may fall while n grows: up to n = 0.5 a the moments are not reduced yet and the exponent rises
/// already; `n_exponents` is the n that the exponents are worked out with. Constants from memory, check against the
/// standard.
inline double plastic_interaction(const BarResistance& r, double n, double my, double mz, double n_exponents) {
  using verify::ratio;
  double sum = 0.0;
  switch (r.kind) {
    case ShapeKind::round_tube:
    case ShapeKind::solid_round: sum = ratio(verify::resultant(my, mz), round_moment_left(n)); break;
    case ShapeKind::rectangular_hollow: {
      const double rest = 1.0 - 1.13 * n_exponents * n_exponents;
      const double exponent = rest > 1.66 / 6.0 ? 1.66 / rest : 6.0;
      sum = std::pow(ratio(my, flanged_moment_left(n, r.a_w)), exponent) +
            std::pow(ratio(mz, flanged_moment_left(n, r.a_f)), exponent);
      break;
    }
    case ShapeKind::i_shape: {
      const double about_y = ratio(my, flanged_moment_left(n, r.a_w));
      const double beta = 5.0 * n_exponents > 1.0 ? 5.0 * n_exponents : 1.0;
      sum = about_y * about_y + std::pow(ratio(mz, flange_bending_left(n, r.a_w)), beta);
      break;
    }
    default: sum = ratio(my + mz, 1.0 - n * n);
  }
  return larger(sum, n);
}
inline double plastic_interaction(const BarResistance& r, double n, double my, double mz) {
  return plastic_interaction(r, n, my, mz, n);
}

/// 6.2.1 (5), in class 4 6.2.9.3: sqrt((sigma / fy)² + 3 (tau / fy)²) with the greatest sigma = N/A + My/Wel,y +
/// Mz/Wel,z and the greatest tau = V S/(I t) + T/Wt of the section, as if they met in one point (safe side); class 4
/// with A_eff and W_eff. The square root of the standard's left side: the same limit, and in proportion to the forces.
inline verify::ClauseRow elastic(const BarResistance& r, const verify::SectionForces& f) {
  const double n = verify::ratio(f.N, f.N >= 0.0 ? r.N_pl_Rd : r.N_c_Rd);
  const double my = verify::ratio(f.My, r.M_el_y_Rd);
  const double mz = verify::ratio(f.Mz, r.M_el_z_Rd);
  const double sigma = n + (is_round(r.kind) ? verify::resultant(my, mz) : my + mz);
  const double tau =
      detail::shear_row(r.kind, f.Vy, f.Vz, r.V_el_y_Rd, r.V_el_z_Rd, "").utilisation + torsion(r, f.T).utilisation;
  const bool effective = f.N < 0.0 ? r.class_N == 4 : larger(r.class_M_y, r.class_M_z) == 4;
  return verify::interaction_row(verify::resultant(sigma, tau),
                                 effective ? "EN 1993-1-1 6.2.9.3" : "EN 1993-1-1 6.2.1 (5)");
}

/// 6.2.9 with 6.2.8 and 6.2.10: axial force and bending at one section. Classes 1 and 2: 6.2.9.1, with fy lowered by
/// rho for the whole section where the shear force is above half its resistance (in a slender web more than EN 1993-1-5
/// 7.1 takes, which spares the flanges); an I in bending loses only its web's share, (6.30), where there is no axial
/// force. Classes 3 and 4, channels and other shapes: 6.2.1 (5). With a `least_N` [N]
/// the exponents are those of that axial force, unreduced: an answer up to 1 then holds for all N between it and f.N.
inline verify::ClauseRow bending_and_axial(const BarResistance& r, const verify::SectionForces& f,
                                           double least_N = std::numeric_limits<double>::infinity()) {
  if (!(f.N < 0.0 ? r.plastic_compressed : r.plastic)) return elastic(r, f);
  const double rho = strength_lost_by_shear(shear(r, f).utilisation);
  const double left = 1.0 - rho;
  const double left_y = f.N == 0.0 && f.Vy == 0.0 ? 1.0 - rho * r.web_share_y : left;
  const double n = verify::ratio(f.N, left * r.N_pl_Rd);
  const double n_exponents = is_infinite(least_N) ? n : verify::ratio(least_N, r.N_pl_Rd);
  const double sum = plastic_interaction(r, n, verify::ratio(f.My, left_y * r.M_y_Rd),
                                         verify::ratio(f.Mz, left * r.M_z_Rd), n_exponents);
  return verify::interaction_row(sum, rho > 0.0 ? "EN 1993-1-1 6.2.10" : "EN 1993-1-1 6.2.9.1");
}

}  // namespace baywork::en1993
