// SPDX-License-Identifier: MIT
// EN 1999-1-1:2007, 6.1.5, 6.2.5 and 6.5.5: slender walls of rectangular hollow sections, in compression, bending and
// shear.
#pragma once

#include <cmath>

#include <baywork/verify/effective_box.hpp>
#include <baywork/verify/en1999_class.hpp>

namespace baywork::en1999 {

/// rho_c of a flat wall of slenderness beta, 6.1.5 (2); 1 in classes 1 to 3.
inline double thickness_left(double beta, double fo, const ClassLimits& limits) {
  const ElementClass e = classify(beta, fo, limits);
  return e.class_ == 4 ? e.rho_c : 1.0;
}

/// beta = g c / t of an internal wall with the stress ratio psi of its edges, 6.1.4.3: g = 0.70 + 0.30 psi for
/// psi > -1, else 0.80 / (1 - psi). Value from memory, check against the standard.
inline double bent_plate_slenderness(double c, double t, double psi) {
  return (psi > -1.0 ? 0.70 + 0.30 * psi : 0.80 / (1.0 - psi)) * c / t;
}

/// A_eff under uniform compression: every flat wall keeps rho_c t. Both axes stay where they were, so e_N = 0.
inline double effective_area(const SectionData<double>& s, double fo, const ClassLimits& limits) {
  double area = s.area;
  for (std::size_t i = 0; i < 2; ++i) {
    const PlateElement<double>& p = s.plates[i];
    area -= 2.0 * (1.0 - thickness_left(p.c / p.t, fo, limits)) * p.c * p.t;
  }
  return area;
}

/// W_eff in bending about one axis: the compressed flange and the compressed part of the webs keep rho_c t, with the
/// neutral axis found by iteration.
inline double effective_modulus(const SectionData<double>& s, double fo, const ClassLimits& limits, bool about_y) {
  const verify::detail::BentBox b = verify::detail::bent_box(s, about_y);
  using verify::detail::TakenAway;
  return verify::detail::effective_modulus(
      b, thickness_left(b.flange / b.wall, fo, limits), [&](double psi, double compressed) {
        const double left = thickness_left(bent_plate_slenderness(b.web, b.wall, psi), fo, limits);
        return TakenAway{0.0, compressed, 2.0 * (1.0 - left) * b.wall};
      });
}

/// v_1 of a long web without stiffeners, 6.5.5 (2) with k_tau = 5.34 and x = h_w / (t epsilon): 1 up to 39, the limit
/// of 6.2.6 (1), then 17 sqrt(k_tau) / x, but at most 430 k_tau / x², which is the elastic critical stress
/// k_tau pi² E / (12 (1 - nu²)) (t / h_w)² over fo / sqrt(3), rounded down by 2 % (hand derivation). Above 39 the value
/// of 17 sqrt(k_tau) / 39 is 1.007, cut to 1. Values from memory, check against the standard.
inline double shear_buckling_factor(double h_w, double t, double fo) {
  constexpr double k_tau = 5.34;
  const double x = h_w / t / epsilon(fo);
  if (x <= 39.0) return 1.0;
  const double v = smaller(17.0 * std::sqrt(k_tau) / x, 430.0 * k_tau / (x * x));
  return smaller(v, 1.0);
}

}  // namespace baywork::en1999
