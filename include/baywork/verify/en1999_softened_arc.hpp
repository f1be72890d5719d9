// SPDX-License-Identifier: MIT
// A round tube that welds soften over an arc of its wall only: the refined form of the factors beside a local weld.
#pragma once

#include <cmath>

#include <baywork/verify/en1999_resistance.hpp>

namespace baywork::en1999 {

/// The half-angle of an arc that, with as much opposite, is the whole section.
inline constexpr double whole_section = 1.5707963267948966;

/// Resistances of a round tube whose wall keeps rho t within an arc of half-angle phi [rad] and t elsewhere (6.1.6.2,
/// 6.2.5.1: W_net and A_net allow for softening by rho t); other shapes, and phi from whole_section on, stay as they
/// are. The arc may lie anywhere against the moment, so it is put at the extreme fibre; and as much is taken off
/// opposite, which keeps the axis where it was and is on the safe side (a stress field that equilibrium allows). Then
/// A keeps 1 - (1 - rho) 2 phi / pi, Wpl keeps 1 - (1 - rho) sin(phi), which is less, and Wel
/// 1 - (1 - rho) (2 phi + sin(2 phi)) / pi. omega_0 takes the share of Wpl for N and M alike: with rho_u,haz
/// by 6.2.9.3 (1), with rho_o,haz by (2). Shear and torsion keep rho_o,haz: the shear flow is greatest where the arc
/// may be. Hand derivation, tested.
inline BarResistance softened_arc(BarResistance r, double phi, const PartialFactors& factors = {}) {
  if (r.kind != ShapeKind::round_tube || !(phi < whole_section)) return r;
  const double plastic = std::sin(phi), elastic = (2.0 * phi + std::sin(2.0 * phi)) / pi_v<double>;
  const auto left = [](double rho, double share) { return 1.0 - (1.0 - rho) * share; };
  r.omega_u = omega_local(r.fo, left(r.rho_u_haz, plastic) * r.fu, factors);
  r.omega_o = left(r.rho_o_haz, plastic);
  const double of_moment = left(r.rho_u_haz, elastic) / r.rho_u_haz;
  r.M_u_haz_y_Rd *= of_moment;
  r.M_u_haz_z_Rd *= of_moment;
  r.N_u_haz_Rd *= left(r.rho_u_haz, 2.0 * phi / pi_v<double>) / r.rho_u_haz;
  return r;
}

}  // namespace baywork::en1999
