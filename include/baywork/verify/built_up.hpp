// SPDX-License-Identifier: MIT
// Two chords and the face between them as one strut: EN 1993-1-1:2005, 6.4, and its imperfections, 5.3.2 and 5.3.3.
#pragma once

#include <cmath>
#include <limits>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/verify/en1993_buckling.hpp>

/// Values from memory, check against the standard and the national annex.
namespace baywork::en1993 {

/// A strut of two parallel equal chords. Laced: its face is braced; battened: its face is open.
struct BuiltUp {
  double length = 0;         ///< L [m], between points that hold it sideways
  double h0 = 0;             ///< between the chords' axes [m]
  double A_ch = 0;           ///< of one chord [m²]
  double I_ch = 0;           ///< of one chord, bending in the plane of the face [m⁴]
  double shear_stiffness = 0;  ///< S_v of the face: force per unit shear strain [N]
  double E = 0;              ///< [Pa]
  bool battened = false;
  double bay = 0;            ///< a [m]: from cross member to cross member
};

inline void validate(const BuiltUp& b) {
  const char* place = "built-up strut";
  require::positive(b.length, place, "length");
  require::positive(b.h0, place, "distance of chords");
  require::positive(b.A_ch, place, "area of a chord");
  require::not_negative(b.I_ch, place, "second moment of a chord");
  require::positive(b.shear_stiffness, place, "shear stiffness");
  require::positive(b.E, place, "modulus");
  require::positive(b.bay, place, "bay length");
  if (b.length < 3 * b.bay * (1 - 1e-9))
    fail<OutsideScope>(place, "it has fewer than three modules", "three equal modules or more are accepted (6.4.1)");
}

/// Efficiency factor mu of Table 6.8, lambda = L / i0, i0 = sqrt(I1 / (2 A_ch)), I1 = I_eff with mu = 1.
inline double batten_efficiency(double lambda) {
  if (lambda <= 75.0) return 1.0;
  return lambda >= 150.0 ? 0.0 : 2.0 - lambda / 75.0;
}

/// I_eff [m⁴]: laced 0.5 h0² A_ch (6.72), battened 0.5 h0² A_ch + 2 mu I_ch (6.74).
inline double effective_second_moment(const BuiltUp& b) {
  const double parallel = 0.5 * b.h0 * b.h0 * b.A_ch;
  if (!b.battened) return parallel;
  const double i0 = std::sqrt((parallel + 2.0 * b.I_ch) / (2.0 * b.A_ch));
  return parallel + 2.0 * batten_efficiency(b.length / i0) * b.I_ch;
}

/// S_v of a battened strut's n parallel open faces [N], (6.73): 24 E I_ch / (a² (1 + 2 I_ch h0 / (n I_b a))), at most
/// 2 pi² E I_ch / a².
inline double batten_shear_stiffness(double E, double I_ch, double I_b, double a, double h0, double n = 1) {
  const double k = pi_v<double> / a;
  return smaller(24.0 * E * I_ch / (a * a * (1.0 + 2.0 * I_ch * h0 / (n * I_b * a))), 2.0 * k * k * E * I_ch);
}

/// What 6.4.1 makes of a strut under the compression N_Ed (> 0, of both chords) and the first-order moment M_I at
/// mid-length.
struct BuiltUpForces {
  bool stable = false;  ///< N_Ed is below the critical load with shear
  double e0 = 0;        ///< L/500 [m]
  double N_cr = 0;      ///< pi² E I_eff / L² [N]
  double M_Ed = 0;      ///< (N_Ed e0 + M_I) / (1 - N_Ed/N_cr - N_Ed/S_v) [Nm]; infinite where not stable
  double N_ch = 0;      ///< 0.5 N_Ed + M_Ed h0 A_ch / (2 I_eff) (6.69): of the more compressed chord [N]
  double V_Ed = 0;      ///< pi M_Ed / L (6.70): of the face [N]
  double chord_moment = 0, batten_moment = 0, batten_shear = 0;  ///< battened: V a/4, V a/2, V a/h0 (Figure 6.11)
};
inline BuiltUpForces built_up_forces(const BuiltUp& b, double N_Ed, double M_I = 0.0) {
  validate(b);
  require::not_negative(N_Ed, "built-up strut", "compression");
  require::finite(M_I, "built-up strut", "moment");
  BuiltUpForces f;
  const double I_eff = effective_second_moment(b);
  f.e0 = b.length / 500.0;
  f.N_cr = euler_load(b.E, I_eff, b.length);
  const double left = 1.0 - N_Ed / f.N_cr - N_Ed / b.shear_stiffness;
  f.stable = left > 0.0;
  f.M_Ed = f.stable ? (N_Ed * f.e0 + magnitude(M_I)) / left : std::numeric_limits<double>::infinity();
  f.N_ch = 0.5 * N_Ed + f.M_Ed * b.h0 * b.A_ch / (2.0 * I_eff);
  f.V_Ed = pi_v<double> * f.M_Ed / b.length;
  if (b.battened) {
    f.chord_moment = f.V_Ed * b.bay / 4.0;
    f.batten_moment = f.V_Ed * b.bay / 2.0;
    f.batten_shear = f.V_Ed * b.bay / b.h0;
  }
  return f;
}

/// alpha_m = sqrt(0.5 (1 + 1/m)) of m members that lean on one bracing system, 5.3.2 (3) and 5.3.3 (1).
inline double shared_imperfection(double m) {
  require::positive(m, "imperfection", "number of members");
  return std::sqrt(0.5 * (1.0 + 1.0 / m));
}
/// phi = alpha_h alpha_m / 200, alpha_h = 2/sqrt(h) between 2/3 and 1, h the height [m] (5.5).
inline double initial_sway(double height, double m) {
  require::positive(height, "imperfection", "height");
  return smaller(1.0, larger(2.0 / 3.0, 2.0 / std::sqrt(height))) * shared_imperfection(m) / 200.0;
}

/// Load [N/m] that stands for the bow of what a bracing system (or an open face) holds straight, 5.3.3 (2), (5.13):
/// q_d = sum N_Ed 8 (e0 + delta_q) / L², e0 = alpha_m L / 500, delta_q its own deflection under q_d and other loads.
inline double bracing_load(double sum_of_N, double length, double m, double delta_q = 0.0) {
  require::not_negative(sum_of_N, "bracing load", "compression");
  require::positive(length, "bracing load", "length");
  require::not_negative(delta_q, "bracing load", "deflection");
  return sum_of_N * 8.0 * (shared_imperfection(m) * length / 500.0 + delta_q) / (length * length);
}
/// Force [N] on the bracing at a splice, 5.3.3 (4): alpha_m N_Ed / 100.
inline double splice_force(double N_Ed, double m) {
  require::not_negative(N_Ed, "bracing load at a splice", "compression");
  return shared_imperfection(m) * N_Ed / 100.0;
}

}  // namespace baywork::en1993
