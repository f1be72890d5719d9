// SPDX-License-Identifier: MIT
// EN 1993-1-5:2006, 4.4 and 5: slender walls of rectangular hollow sections, in compression, bending and shear.
#pragma once

#include <cmath>

#include <baywork/verify/effective_box.hpp>
#include <baywork/verify/en1993_class.hpp>

namespace baywork::en1993 {

/// k_sigma of Table 4.1 for an internal wall with the stress ratio psi = least / greatest compression, from 1 to -3.
/// Values from memory, check against the standard.
inline double buckling_coefficient(double psi) {
  if (psi >= 0.0) return 8.2 / (1.05 + psi);
  if (psi > -1.0) return 7.81 - 6.29 * psi + 9.78 * psi * psi;
  return 5.98 * (1.0 - psi) * (1.0 - psi);
}

/// lambda_p = (c / t) / (28.4 epsilon sqrt(k_sigma)), 4.4 (2).
inline double plate_slenderness(double c, double t, double psi, double fy) {
  return c / t / (28.4 * epsilon(fy) * std::sqrt(buckling_coefficient(psi)));
}

/// rho of an internal wall, (4.2): 1 up to lambda_p = 0.5 + sqrt(0.085 - 0.055 psi), then
/// (lambda_p - 0.055 (3 + psi)) / lambda_p² <= 1. Value from memory, check against the standard.
inline double width_left(double lambda_p, double psi) {
  if (lambda_p <= 0.5 + std::sqrt(0.085 - 0.055 * psi)) return 1.0;
  const double rho = (lambda_p - 0.055 * (3.0 + psi)) / (lambda_p * lambda_p);
  return smaller(rho, 1.0);
}
inline double width_left(double c, double t, double psi, double fy) {
  return width_left(plate_slenderness(c, t, psi, fy), psi);
}

/// A_eff under uniform compression: every flat wall keeps rho c. Both axes stay where they were, so e_N = 0.
inline double effective_area(const SectionData<double>& s, double fy) {
  double area = s.area;
  for (std::size_t i = 0; i < 2; ++i) {
    const PlateElement<double>& p = s.plates[i];
    area -= 2.0 * (1.0 - width_left(p.c, p.t, 1.0, fy)) * p.c * p.t;
  }
  return area;
}

/// W_eff in bending about one axis: the compressed flange keeps rho c; of its compressed length b_c a web keeps
/// 0.4 rho b_c at the flange and 0.6 rho b_c at the neutral axis, Table 4.1, which is found by iteration (4.4 (3)).
inline double effective_modulus(const SectionData<double>& s, double fy, bool about_y) {
  const verify::detail::BentBox b = verify::detail::bent_box(s, about_y);
  using verify::detail::TakenAway;
  return verify::detail::effective_modulus(b, width_left(b.flange, b.wall, 1.0, fy),
                                           [&](double psi, double compressed) {
                                             const double left = width_left(b.web, b.wall, psi, fy) * compressed;
                                             return TakenAway{0.6 * left, compressed - 0.4 * left, 2.0 * b.wall};
                                           });
}

/// chi_w of a web without stiffeners, 5.3 with Table 5.1 (non-rigid end post, eta = 1): 1 up to lambda_w = 0.83, then
/// 0.83 / lambda_w, with lambda_w = h_w / (86.4 t epsilon). The standard's eta up to 1.2 would give more. Steady with
/// 6.2.6 (6) of EN 1993-1-1, whose limit 72 epsilon is 0.83 rounded up. Values from memory, check against the standard.
inline double shear_buckling_factor(double h_w, double t, double fy) {
  const double lambda_w = h_w / (86.4 * t * epsilon(fy));
  return lambda_w <= 0.83 ? 1.0 : 0.83 / lambda_w;
}

}  // namespace baywork::en1993
