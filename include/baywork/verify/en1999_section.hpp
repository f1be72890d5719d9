// SPDX-License-Identifier: MIT
// EN 1999-1-1:2007, 6.2.3 to 6.2.10: forces at one section against its resistances, with or without a local weld.
#pragma once

#include <baywork/verify/en1999_resistance.hpp>

namespace baywork::en1999 {

/// A local weld at the section, by the length of softened metal along the bar. `within_width`: at most the least
/// width of the section, so that its neighbours hold it and fracture counts; `beyond_width`: longer, yielding counts.
enum class Softening : std::uint8_t { none, within_width, beyond_width };

/// 6.2.9.3: which of the two a softened length is [m].
inline Softening softening(const BarResistance& r, double softened_length) {
  if (!(softened_length > 0.0)) return Softening::none;
  return softened_length <= r.least_width * (1.0 + 1e-12) ? Softening::within_width : Softening::beyond_width;
}

/// omega_0: 1 without a local weld; (rho_u,haz fu / gamma_M2) / (fo / gamma_M1) <= 1 by 6.2.9.3 (1); rho_o,haz by
/// 6.2.9.3 (2). Values from memory, check against the standard.
inline double omega_0(const BarResistance& r, Softening s) {
  if (s == Softening::none) return 1.0;
  return s == Softening::within_width ? r.omega_u : r.omega_o;
}

/// How the two moments of a round section enter. `resultant`: sqrt(My² + Mz²) as the one moment about the axis it
/// bends, which any axis of a round section may be: the answer does not turn with the axes. `components`: 6.2.9.2 word
/// by word, up to 2^0.09 = 1.064 times more at 45 degrees.
enum class RoundForm : bool { resultant, components };

namespace detail {

inline bool is_solid(ShapeKind k) { return k == ShapeKind::solid_rectangle || k == ShapeKind::solid_round; }
inline bool is_hollow(ShapeKind k) { return k == ShapeKind::round_tube || k == ShapeKind::rectangular_hollow; }

inline double power(double base, double exponent) { return base == 0.0 ? 0.0 : std::pow(base, exponent); }

/// [(my)^1.7 + (mz)^1.7]^0.6 of 6.2.9.2 and 6.3.3.1; a single moment enters as m^1.02.
inline double moment_sum(double my, double mz, bool round, RoundForm form) {
  if (round && form == RoundForm::resultant) return power(verify::resultant(my, mz), 1.02);
  return power(power(my, 1.7) + power(mz, 1.7), 0.6);
}

}  // namespace detail

/// Share of V_Rd that a torque leaves, 6.2.7.3, with t = tau_t / (fo / (sqrt(3) gamma_M1)): sqrt(1 - t / 1.25) for I
/// sections, 1 - t for hollow ones. Solids and other shapes take 1 - t, the sum of the greatest stresses; warping
/// stresses of open shapes are not in it.
inline double shear_left_by_torsion(ShapeKind kind, double t) {
  if (kind == ShapeKind::i_shape) return t < 1.25 ? std::sqrt(1.0 - t / 1.25) : 0.0;
  return t < 1.0 ? 1.0 - t : 0.0;
}

/// fo,V / fo of 6.2.8: 1 up to half the shear resistance, then 1 - (2 V / V_Rd - 1)², 0 from V_Rd on. Slender webs,
/// 6.7.6 with all the moment in the webs (safe side): M / (2 M_Rd) + V / V_Rd <= 1, so 2 (1 - V / V_Rd). Values from
/// memory, check against the standard.
inline double strength_left_by_shear(double shear_utilisation, bool slender_webs = false) {
  if (shear_utilisation <= 0.5) return 1.0;
  if (shear_utilisation >= 1.0) return 0.0;
  if (slender_webs) return 2.0 * (1.0 - shear_utilisation);
  const double x = 2.0 * shear_utilisation - 1.0;
  return 1.0 - x * x;
}

/// 6.2.3, 6.2.4: N against N_o,Rd or N_c,Rd; at a local weld against omega_0 times that, which is the lesser of
/// yielding and N_u,haz,Rd = A rho_u,haz fu / gamma_M2 (short), or A fo,haz / gamma_M1 (long).
inline verify::ClauseRow axial(const BarResistance& r, double N, Softening s = Softening::none) {
  if (N >= 0.0) return verify::compare(N, omega_0(r, s) * r.N_o_Rd, "EN 1999-1-1 6.2.3");
  return verify::compare(N, omega_0(r, s) * r.N_c_Rd, "EN 1999-1-1 6.2.4");
}

/// M_Rd of 6.2.5.1 about one axis: M_o,Rd = alpha Wel fo / gamma_M1; at a local weld the lesser of omega_0 times that
/// and M_u,Rd = W_net fu / gamma_M2, in which W_net is elastic and softened: Wel rho_u,haz fu / gamma_M2.
inline double bending_resistance(const BarResistance& r, Softening s, bool about_y) {
  const double M_o = omega_0(r, s) * (about_y ? r.M_y_Rd : r.M_z_Rd);
  return s == Softening::none ? M_o : smaller(M_o, about_y ? r.M_u_haz_y_Rd : r.M_u_haz_z_Rd);
}

/// 6.2.5: bending alone, of a round section the resultant moment, else about the worse axis.
inline verify::ClauseRow bending(const BarResistance& r, const verify::SectionForces& f,
                                 Softening s = Softening::none) {
  const char* clause = "EN 1999-1-1 6.2.5";
  const double M_y_Rd = bending_resistance(r, s, true);
  if (is_round(r.kind)) return verify::compare(verify::resultant(f.My, f.Mz), M_y_Rd, clause);
  const verify::ClauseRow y = verify::compare(f.My, M_y_Rd, clause);
  const verify::ClauseRow z = verify::compare(f.Mz, bending_resistance(r, s, false), clause);
  return y.utilisation > z.utilisation ? y : z;
}

/// 6.2.7: the torque against T_Rd, at a local weld of either length against rho_o,haz T_Rd.
inline verify::ClauseRow torsion(const BarResistance& r, double T, Softening s = Softening::none) {
  return verify::compare(T, (s == Softening::none ? 1.0 : r.rho_o_haz) * r.T_Rd, "EN 1999-1-1 6.2.7");
}

/// 6.2.6 and, with a torque, 6.2.7.3. Round sections answer to sqrt(Vy² + Vz²), solid rectangles to the same of the two
/// ratios; elsewhere different walls carry Vy and Vz and the worse one counts. At a local weld the shear area has
/// rho_o,haz t (6.2.6 (2)). effect / resistance are those of the governing direction.
inline verify::ClauseRow shear(const BarResistance& r, const verify::SectionForces& f, Softening s = Softening::none) {
  const double haz = s == Softening::none ? 1.0 : r.rho_o_haz;
  const double t = torsion(r, f.T, s).utilisation;
  const char* clause = t > 0.0 ? "EN 1999-1-1 6.2.7.3" : "EN 1999-1-1 6.2.6";
  const double left = haz * shear_left_by_torsion(r.kind, t);
  if (is_round(r.kind)) return verify::compare(verify::resultant(f.Vy, f.Vz), left * r.V_z_Rd, clause);
  const verify::ClauseRow y = verify::compare(f.Vy, left * r.V_y_Rd, clause);
  const verify::ClauseRow z = verify::compare(f.Vz, left * r.V_z_Rd, clause);
  if (r.kind == ShapeKind::solid_rectangle)
    return verify::interaction_row(verify::resultant(y.utilisation, z.utilisation), clause);
  return y.utilisation > z.utilisation ? y : z;
}

/// The left side of 6.2.9 for the three ratios n = N/(omega_0 N_Rd), my = My/(omega_0 My_Rd), mz.
/// Hollow and solid sections, 6.2.9.2: n^psi + [my^1.7 + mz^1.7]^0.6. I sections, 6.2.9.1: the greater of
/// n^xi_0 + my and n^eta_0 + my^gamma_0 + mz^xi_0. Other shapes: n + my + mz, which the elastic limit gives.
/// Exponents from memory, check against the standard.
inline double interaction(const BarResistance& r, double n, double my, double mz,
                          RoundForm form = RoundForm::resultant) {
  if (detail::is_hollow(r.kind) || detail::is_solid(r.kind))
    return detail::power(n, r.psi) + detail::moment_sum(my, mz, is_round(r.kind), form);
  if (r.kind == ShapeKind::i_shape) {
    const double in_plane = detail::power(n, r.xi_0) + my;
    const double both = detail::power(n, r.eta_0) + detail::power(my, r.gamma_0) + detail::power(mz, r.xi_0);
    return larger(in_plane, both);
  }
  return n + my + mz;
}

/// 6.2.9 with 6.2.8 and 6.2.10: axial force and bending at one section, the strength lowered to fo,V where the shear
/// force is above half its resistance. The lowered strength is used for the whole section. It reaches 0, and the
/// utilisation infinity, where the shear resistance is used up.
inline verify::ClauseRow bending_and_axial(const BarResistance& r, const verify::SectionForces& f,
                                           Softening s = Softening::none, RoundForm form = RoundForm::resultant) {
  const double V = shear(r, f, s).utilisation;
  const double left = omega_0(r, s) * strength_left_by_shear(V, r.slender_webs);
  const double n = verify::ratio(f.N, left * (f.N >= 0.0 ? r.N_o_Rd : r.N_c_Rd));
  const double my = verify::ratio(f.My, left * r.M_y_Rd);
  const double mz = verify::ratio(f.Mz, left * r.M_z_Rd);
  const double sum = interaction(r, n, my, mz, form);
  if (s != Softening::none) return verify::interaction_row(sum, "EN 1999-1-1 6.2.9.3");
  if (V > 0.5) return verify::interaction_row(sum, "EN 1999-1-1 6.2.10");
  return verify::interaction_row(sum, r.kind == ShapeKind::i_shape ? "EN 1999-1-1 6.2.9.1" : "EN 1999-1-1 6.2.9.2");
}

}  // namespace baywork::en1999
