// SPDX-License-Identifier: MIT
// EN 1993-1-8:2005, 7.4: what a chord of round tube takes from a brace welded to it.
#pragma once

#include <cmath>
#include <limits>

#include <baywork/verify/en1993_class.hpp>
#include <baywork/verify/tube_joint.hpp>

namespace baywork::en1993 {

/// Resistances of one brace's joint [N, Nm]: the lesser of chord face failure and punching shear. All are 0 outside the
/// scope. A punching resistance is infinite where the brace is too wide to punch.
struct JointResistance {
  verify::JointScope scope = verify::JointScope::not_tubes;
  double n_p = 0;           ///< greatest compression in the chord over its strength
  double k_p = 1, k_g = 1;  ///< for that compression, and for the gap
  double N_face = 0, M_ip_face = 0, M_op_face = 0;
  double N_punching = 0, M_ip_punching = 0, M_op_punching = 0;
  double N_Rd = 0, M_ip_Rd = 0, M_op_Rd = 0;
};

/// k_p = 1 - 0.3 n_p (1 + n_p) where the chord is compressed (n_p > 0), 1 where it is not, never below 0; Table 7.2
/// (value from memory).
inline double chord_stress_factor(double n_p) { return n_p <= 0.0 ? 1.0 : larger(0.0, 1.0 - 0.3 * n_p * (1.0 + n_p)); }

/// k_g = gamma^0.2 (1 + 0.024 gamma^1.2 / (1 + exp(0.5 g / t0 - 1.33))), Table 7.2; a negative gap is an overlap.
inline double gap_factor(double gamma, double gap_over_t0) {
  return std::pow(gamma, 0.2) * (1.0 + 0.024 * std::pow(gamma, 1.2) / (1.0 + std::exp(0.5 * gap_over_t0 - 1.33)));
}

/// Chord face failure by an axial force, Table 7.2 (values from memory): the factor of f k_p t0² / sin(theta) for each
/// type. K and N: both braces answer to the diameter of the compressed one, N2 = N1 sin(theta1) / sin(theta2).
inline double axial_face_factor(const verify::TubeJoint& j) {
  const double beta = j.beta();
  switch (j.type) {
    case verify::JointType::t_or_y: return std::pow(j.gamma(), 0.2) * (2.8 + 14.2 * beta * beta);
    case verify::JointType::x: return 5.2 / (1.0 - 0.81 * beta);
    case verify::JointType::k_or_n:
      return gap_factor(j.gamma(), j.partner.gap / j.t0) * (1.8 + 10.2 * (j.compressed ? j.d1 : j.partner.d) / j.d0);
  }
  return 0.0;
}

namespace detail {

inline void take_lesser(JointResistance& r) {
  r.N_Rd = smaller(r.N_face, r.N_punching);
  r.M_ip_Rd = smaller(r.M_ip_face, r.M_ip_punching);
  r.M_op_Rd = smaller(r.M_op_face, r.M_op_punching);
}

}  // namespace detail

/// Tables 7.2 and 7.5 of an unstressed chord with design strengths [Pa] of its metal, for its face and for punching,
/// and `lowered` times all resistances (7.1.1 for strong steels, Table 7.7 for a second plane). The joint is within the
/// geometric limits.
///
/// Face: in-plane moment 4.85 f t0² d1 sqrt(gamma) beta k_p / sin(theta), out of plane
/// f t0² d1 2.7 / (1 - 0.81 beta) k_p / sin(theta); values from memory. Table 7.5 gives the in-plane formula for T, X
/// and Y; K and N are taken like them, a brace alone (not confirmed).
/// Punching: shear along the footprint, an ellipse d1 by d1 / sin(theta), with the plastic stress pattern: axial
/// pi d1 (1 + sin) / (2 sin²), moments d1² (1 + 3 sin) / (4 sin²) and d1² (3 + sin) / (4 sin²). At 90 degrees
/// they are the ring's length and its plastic modulus, pi d1 and d1². Neither takes k_p.
inline JointResistance unstressed_joint(const verify::TubeJoint& j, double f_face, double f_punching, double lowered) {
  JointResistance r;
  r.scope = verify::JointScope::covered;
  if (j.type == verify::JointType::k_or_n) r.k_g = gap_factor(j.gamma(), j.partner.gap / j.t0);
  const double sine = std::sin(j.theta), beta = j.beta();
  const double face = lowered * f_face * j.t0 * j.t0 / sine;
  r.N_face = face * axial_face_factor(j);
  r.M_ip_face = face * j.d1 * 4.85 * std::sqrt(j.gamma()) * beta;
  r.M_op_face = face * j.d1 * 2.7 / (1.0 - 0.81 * beta);
  r.N_punching = r.M_ip_punching = r.M_op_punching = std::numeric_limits<double>::infinity();
  if (j.can_punch()) {
    const double punching = lowered * f_punching / std::sqrt(3.0) * j.t0 * j.d1 / (sine * sine);
    r.N_punching = punching * pi_v<double> * (1.0 + sine) / 2.0;
    r.M_ip_punching = punching * j.d1 * (1.0 + 3.0 * sine) / 4.0;
    r.M_op_punching = punching * j.d1 * (3.0 + sine) / 4.0;
  }
  detail::take_lesser(r);
  return r;
}

/// What an unstressed chord's resistance becomes under the greatest compression n_p.
inline JointResistance under_compression(JointResistance r, double n_p) {
  r.n_p = n_p;
  r.k_p = chord_stress_factor(n_p);
  for (double* face : {&r.N_face, &r.M_ip_face, &r.M_op_face}) *face *= r.k_p;
  detail::take_lesser(r);
  return r;
}

namespace detail {

inline JointResistance outside(verify::JointScope scope) {
  JointResistance r;
  r.scope = scope;
  return r;
}

/// 0.9 for steels above 355 MPa, 7.1.1 (4); their joints deform more before they break.
inline double strong_steel_factor(double fy) { return fy > 355e6 * (1.0 + 1e-9) ? 0.9 : 1.0; }

inline bool out_of_steel(double fy) { return fy > 460e6 * (1.0 + 1e-9); }

}  // namespace detail

/// Resistance of one brace's joint; fy [Pa] of chord and brace. Steels up to 460 MPa, tubes of class 1 or 2.
/// n_p is sigma gamma_M5 / fy0: the standard prints the division by gamma_M5 the other way, the same at its 1.0.
inline JointResistance joint_resistance(const verify::TubeJoint& j, const verify::ChordForces& chord, double fy0,
                                        double fy1, const PartialFactors& factors = {}) {
  const verify::JointScope geometry = verify::geometric_scope(j);
  if (geometry != verify::JointScope::covered) return detail::outside(geometry);
  if (!(fy0 > 0.0 && fy1 > 0.0 && factors.gamma_M5 > 0.0)) return detail::outside(verify::JointScope::bad_strength);
  const double strongest = larger(fy0, fy1);
  if (detail::out_of_steel(strongest)) return detail::outside(verify::JointScope::strong_metal);
  if (tube_class(j.d0, j.t0, fy0) > 2 || tube_class(j.d1, j.t1, fy1) > 2)
    return detail::outside(verify::JointScope::section_class);
  const double f = fy0 / factors.gamma_M5;
  return under_compression(unstressed_joint(j, f, f, j.planes * detail::strong_steel_factor(strongest)),
                           verify::chord_compression(j, chord) / f);
}

namespace detail {

/// Outside the scope nothing passes, not even a joint without a force.
inline verify::ClauseRow joint_row(const JointResistance& r, double effect, double resistance, const char* clause) {
  if (r.scope == verify::JointScope::covered) return verify::compare(effect, resistance, clause);
  return {std::numeric_limits<double>::infinity(), magnitude(effect), 0.0, clause};
}

}  // namespace detail

inline verify::ClauseRow joint_axial(const JointResistance& r, double N) {
  return detail::joint_row(r, N, r.N_Rd, "EN 1993-1-8 7.4.2 Table 7.2");
}
inline verify::ClauseRow joint_in_plane(const JointResistance& r, double M_ip) {
  return detail::joint_row(r, M_ip, r.M_ip_Rd, "EN 1993-1-8 7.4.2 Table 7.5");
}
inline verify::ClauseRow joint_out_of_plane(const JointResistance& r, double M_op) {
  return detail::joint_row(r, M_op, r.M_op_Rd, "EN 1993-1-8 7.4.2 Table 7.5");
}

/// N / N_Rd + (M_ip / M_ip,Rd)² + |M_op| / M_op,Rd, 7.4.2 (7.3).
inline verify::ClauseRow joint_interaction(const JointResistance& r, const verify::BraceForces& f) {
  const char* clause = "EN 1993-1-8 7.4.2 (7.3)";
  const double m = verify::ratio(f.M_ip, r.M_ip_Rd);
  const double sum = verify::ratio(f.N, r.N_Rd) + m * m + verify::ratio(f.M_op, r.M_op_Rd);
  if (r.scope == verify::JointScope::covered) return verify::interaction_row(sum, clause);
  return {std::numeric_limits<double>::infinity(), sum, 1.0, clause};
}

/// The chord between the braces of a KK gap joint: (N0 / N_pl,0,Rd)² + (V0 / V_pl,0,Rd)², Table 7.7 (value from
/// memory); V_pl,0 of the shear area 2 A / pi, `f` the design strength of its metal [Pa].
struct ChordInGap {
  double N_pl_Rd = 0, V_pl_Rd = 0;
};
inline ChordInGap chord_in_gap(const verify::TubeJoint& j, double f) {
  const double area = pi_v<double> * j.t0 * (j.d0 - j.t0);
  return {area * f, 2.0 * area / pi_v<double> * f / std::sqrt(3.0)};
}
inline verify::ClauseRow joint_gap(const ChordInGap& r, double N_0, double V_0) {
  const double n = verify::ratio(N_0, r.N_pl_Rd), v = verify::ratio(V_0, r.V_pl_Rd);
  return verify::interaction_row(n * n + v * v, "EN 1993-1-8 7.4.3 Table 7.7");
}

}  // namespace baywork::en1993
