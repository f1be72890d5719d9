// SPDX-License-Identifier: MIT
// EN 1999-1-1:2007, 6.3: flexural buckling of bars in compression, with bending and with welds.
#pragma once

#include <baywork/verify/column_curve.hpp>
#include <baywork/verify/en1999_section.hpp>

namespace baywork::en1999 {

using verify::euler_load;

/// chi of 6.3.1.2 with Table 6.6: class A alpha 0.20, lambda_0 0.10; class B 0.32, 0. Values from memory, check against
/// the standard.
inline double reduction_factor(material::BucklingClass buckling_class, double lambda) {
  const bool b = buckling_class == material::BucklingClass::b;
  return verify::column_factor(b ? 0.32 : 0.20, b ? 0.0 : 0.10, lambda);
}

/// kappa of Table 6.5 for welds along the bar. softened_share = A_1 / A, A_1 = A - A_haz (1 - rho_o,haz).
/// Class A: 1 - (1 - A_1/A) 10^(-lambda) - (0.05 + 0.1 A_1/A) lambda^(1.3 (1 - lambda)).
/// Class B: 1 for lambda <= 0.2, else 1 + 0.04 (4 lambda)^(0.5 - lambda) - 0.22 lambda^(1.4 (1 - lambda)).
/// At most 1. For welds across the bar kappa is omega_x. Values from memory, check against the standard.
inline double kappa_longitudinal(material::BucklingClass buckling_class, double lambda, double softened_share) {
  double kappa = 1.0;
  if (buckling_class == material::BucklingClass::b) {
    if (lambda > 0.2)
      kappa = 1.0 + 0.04 * std::pow(4.0 * lambda, 0.5 - lambda) - 0.22 * std::pow(lambda, 1.4 * (1.0 - lambda));
  } else {
    kappa = 1.0 - (1.0 - softened_share) * std::pow(10.0, -lambda) -
            (0.05 + 0.1 * softened_share) * detail::power(lambda, 1.3 * (1.0 - lambda));
  }
  return smaller(kappa, 1.0);
}

/// sin(pi x_s / l_c): where along its buckling wave a section lies; x_s from a support or a point of contraflexure.
/// 1 at the middle, which is also the safe value for an unknown place.
inline double place_on_wave(double x_s, double l_c) { return magnitude(std::sin(pi_v<double> * x_s / l_c)); }

/// omega_x = omega_0 / (chi + (1 - chi) sin(pi x_s / l_c)): 6.3.3.3 (2) at a local weld; with omega_0 = 1 also 6.3.3.5
/// (1) for the section studied of a bar with unequal end moments. chi omega_x is omega_0 at the ends and chi omega_0 at
/// the middle. Value from memory, check against the standard.
inline double omega_x(double omega_0, double chi, double sine) { return omega_0 / (chi + (1.0 - chi) * sine); }

/// Flexural buckling of one bar about its two axes; worked out once per bar.
struct Buckling {
  double N_cr_y = 0, N_cr_z = 0;      ///< N
  double lambda_y = 0, lambda_z = 0;  ///< sqrt(A_eff fo / N_cr), 6.3.1.2
  double chi_y = 1, chi_z = 1;
  double kappa_y = 1, kappa_z = 1;  ///< for welds along the bar, kappa_longitudinal()
};

/// Buckling about y over `length_y` and about z over `length_z` [m] (buckling lengths, all effects of the ends in
/// them). An omega_0 below 1 gives lambda_haz = lambda sqrt(omega_0), 6.3.3.3 (3), for the check at a local weld; the
/// plain lambda is on the safe side of it.
inline Buckling buckling(const BarResistance& r, const SectionData<double>& s, double E, double length_y,
                         double length_z, double omega_0 = 1.0) {
  Buckling b;
  b.N_cr_y = euler_load(E, s.Iy, length_y);
  b.N_cr_z = euler_load(E, s.Iz, length_z);
  b.lambda_y = std::sqrt(r.A_eff * r.fo * omega_0 / b.N_cr_y);
  b.lambda_z = std::sqrt(r.A_eff * r.fo * omega_0 / b.N_cr_z);
  b.chi_y = reduction_factor(r.buckling_class, b.lambda_y);
  b.chi_z = reduction_factor(r.buckling_class, b.lambda_z);
  if (r.welded_along) {
    b.kappa_y = kappa_longitudinal(r.buckling_class, b.lambda_y, r.softened_share);
    b.kappa_z = kappa_longitudinal(r.buckling_class, b.lambda_z, r.softened_share);
  }
  return b;
}

/// Where on the bar, and at what weld, buckling is checked. The defaults hold anywhere on a bar without local welds.
struct BucklingPlace {
  double omega_0 = 1;             ///< of the section, omega_0()
  double sine_y = 1, sine_z = 1;  ///< place_on_wave() for buckling about y and about z
};

/// N_b,Rd = kappa chi omega_x A_eff fo / gamma_M1 about one axis, 6.3.1.1. A bar with welds along it and across it has
/// both factors (safe side).
inline double buckling_resistance(const BarResistance& r, const Buckling& b, const BucklingPlace& at, bool about_y) {
  const double chi = about_y ? b.chi_y : b.chi_z;
  return (about_y ? b.kappa_y : b.kappa_z) * chi * omega_x(at.omega_0, chi, about_y ? at.sine_y : at.sine_z) *
         r.N_eff_Rd;
}

/// 6.3.1: the compression of f.N against the least N_b,Rd; nothing under tension.
inline verify::ClauseRow flexural_buckling(const BarResistance& r, const Buckling& b, double N,
                                           const BucklingPlace& at = {}) {
  const double y = buckling_resistance(r, b, at, true);
  const double z = buckling_resistance(r, b, at, false);
  return verify::compare(N < 0.0 ? N : 0.0, smaller(y, z), "EN 1999-1-1 6.3.1");
}

/// Which exponent the axial term has: the fixed 0.8, or its permitted rise with chi (never below 0.8).
enum class AxialExponent : bool { fixed, by_chi };

/// 0.8, or factor chi >= 0.8 with the exponent `factor` of 6.2.9.
inline double axial_exponent(AxialExponent e, double factor, double chi) {
  return e == AxialExponent::by_chi ? larger(0.8, factor * chi) : 0.8;
}

/// 6.3.3.1: compression with bending, at the place of largest moment or at a local weld; f.My and f.Mz are those of
/// the place, second-order moments included where the analysis has them.
/// Hollow, (6.62): (N/(chi omega_x N_Rd))^psi_c + (1/omega_0)[(My/My_Rd)^1.7 + (Mz/Mz_Rd)^1.7]^0.6, psi_c = 0.8 or
/// 1.3 chi >= 0.8, the axis whose term is the greater counts. At an end section (sine 0) chi omega_x = omega_0 but
/// psi_c stays, so 6.2.9 is a check of its own. Solid: the same axial term, exponents 0.8 on both moments (safe side of
/// (6.60) taken for both axes). I sections held against lateral-torsional buckling: the greater of (6.59) about y and
/// (6.63), chi_LT = 1, about z. Other shapes: the I formula with exponents 0.8 about both axes. Values from memory,
/// check against the standard.
inline verify::ClauseRow beam_column(const BarResistance& r, const Buckling& b, const verify::SectionForces& f,
                                     const BucklingPlace& at = {}, RoundForm form = RoundForm::resultant,
                                     AxialExponent exponent = AxialExponent::fixed) {
  const double N = f.N < 0.0 ? f.N : 0.0;
  const double n_y = verify::ratio(N, buckling_resistance(r, b, at, true));
  const double n_z = verify::ratio(N, buckling_resistance(r, b, at, false));
  const double n = larger(n_y, n_z);
  const double my = verify::ratio(f.My, r.M_y_Rd);
  const double mz = verify::ratio(f.Mz, r.M_z_Rd);
  const auto rising = [exponent](double factor, double chi) { return axial_exponent(exponent, factor, chi); };
  if (detail::is_hollow(r.kind)) {
    const double psi_y = rising(r.psi, b.chi_y), psi_z = rising(r.psi, b.chi_z);
    const double axial = psi_y == psi_z ? detail::power(n, psi_y)
                                        : larger(detail::power(n_y, psi_y), detail::power(n_z, psi_z));
    const double moments = detail::moment_sum(my, mz, is_round(r.kind), form) / at.omega_0;
    return verify::interaction_row(axial + moments, "EN 1999-1-1 6.3.3.1 (6.62)");
  }
  if (r.kind == ShapeKind::i_shape) {
    const double about_y = detail::power(n_y, rising(r.xi_0, b.chi_y)) + my / at.omega_0;
    const double about_z = detail::power(n_z, rising(r.eta_0, b.chi_z)) + detail::power(my / at.omega_0, r.gamma_0) +
                           detail::power(mz / at.omega_0, rising(r.xi_0, b.chi_z));
    return verify::interaction_row(larger(about_y, about_z), "EN 1999-1-1 6.3.3.1");
  }
  const double moments = detail::power(my / at.omega_0, 0.8) + detail::power(mz / at.omega_0, 0.8);
  return verify::interaction_row(detail::power(n, 0.8) + moments, "EN 1999-1-1 6.3.3.1");
}

}  // namespace baywork::en1999
