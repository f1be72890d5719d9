// SPDX-License-Identifier: MIT
// EN 1993-1-1:2005, 6.3.1, 6.3.3 and Annex B (method 2): bars in compression and in compression with bending.
#pragma once

#include <baywork/verify/column_curve.hpp>
#include <baywork/verify/en1993_section.hpp>

namespace baywork::en1993 {

enum class BucklingCurve : std::uint8_t { a0, a, b, c, d };

/// Imperfection factor alpha of Table 6.1.
inline double imperfection(BucklingCurve curve) {
  switch (curve) {
    case BucklingCurve::a0: return 0.13;
    case BucklingCurve::a: return 0.21;
    case BucklingCurve::b: return 0.34;
    case BucklingCurve::c: return 0.49;
    case BucklingCurve::d: return 0.76;
  }
  return 0.76;
}

/// chi of (6.49), with lambda_0 = 0.2.
inline double reduction_factor(BucklingCurve curve, double lambda) {
  return verify::column_factor(imperfection(curve), 0.2, lambda);
}

/// Curve of Table 6.2. Hollow: hot finished a (a0 from S460 on), cold formed c. Rolled I with h/b > 1.2: about y a, z b
/// up to 40 mm flange, b, c up to 100 mm; else b, c up to 100 mm, d above; from S460 on a0 up to 40 mm and a above for
/// h/b > 1.2, else a. Channels, solids and others c; an I that is not rolled c about y and d about z. `fy` [Pa] of this
/// wall: a thick S460 that is down to less counts as a lower grade (safe side).
/// Values from memory, check against the standard.
inline BucklingCurve buckling_curve(ShapeKind kind, material::Product product, double fy, double height, double width,
                                    double flange, bool about_y) {
  const bool high_strength = fy >= 460e6 * (1.0 - 1e-9);
  if (kind == ShapeKind::round_tube || kind == ShapeKind::rectangular_hollow) {
    if (product != material::Product::hot_finished) return BucklingCurve::c;
    return high_strength ? BucklingCurve::a0 : BucklingCurve::a;
  }
  const bool rolled = product == material::Product::rolled || product == material::Product::hot_finished;
  if (kind != ShapeKind::i_shape) return BucklingCurve::c;
  if (!rolled) return about_y ? BucklingCurve::c : BucklingCurve::d;
  if (flange > 0.100) return high_strength && height <= 1.2 * width ? BucklingCurve::c : BucklingCurve::d;
  if (height > 1.2 * width && flange <= 0.040)
    return high_strength ? BucklingCurve::a0 : about_y ? BucklingCurve::a : BucklingCurve::b;
  return high_strength ? BucklingCurve::a : about_y ? BucklingCurve::b : BucklingCurve::c;
}

using verify::euler_load;

/// Flexural buckling of one bar about its two axes; worked out once per bar.
struct Buckling {
  BucklingCurve curve_y = BucklingCurve::d, curve_z = BucklingCurve::d;
  double N_cr_y = 0, N_cr_z = 0;      ///< N
  double lambda_y = 0, lambda_z = 0;  ///< sqrt(A_eff fy / N_cr), (6.50), (6.51)
  double chi_y = 1, chi_z = 1;
};

/// Buckling about y over `length_y` and about z over `length_z` [m], with the curves of Table 6.2.
inline Buckling buckling(const BarResistance& r, const SectionData<double>& s, double E, double length_y,
                         double length_z) {
  Buckling b;
  double flange = s.wall;
  for (std::size_t i = 0; i < s.n_plates; ++i)
    if (!s.plates[i].bends_about_y) flange = s.plates[i].t;
  b.curve_y = buckling_curve(r.kind, r.product, r.fy, s.height, s.width, flange, true);
  b.curve_z = buckling_curve(r.kind, r.product, r.fy, s.height, s.width, flange, false);
  b.N_cr_y = euler_load(E, s.Iy, length_y);
  b.N_cr_z = euler_load(E, s.Iz, length_z);
  b.lambda_y = std::sqrt(r.N_Rk / b.N_cr_y);
  b.lambda_z = std::sqrt(r.N_Rk / b.N_cr_z);
  b.chi_y = reduction_factor(b.curve_y, b.lambda_y);
  b.chi_z = reduction_factor(b.curve_z, b.lambda_z);
  return b;
}

/// 6.3.1.1: the compression of N against N_b,Rd = chi A_eff fy / gamma_M1 of the weaker axis; nothing under tension.
inline verify::ClauseRow flexural_buckling(const BarResistance& r, const Buckling& b, double N) {
  const double chi = smaller(b.chi_y, b.chi_z);
  return verify::compare(N < 0.0 ? N : 0.0, chi * r.N_Rk / r.gamma_M1, "EN 1993-1-1 6.3.1");
}

/// C_m of Table B.3 for a moment that runs straight from M to psi M (-1 <= psi <= 1): 0.6 + 0.4 psi >= 0.4.
/// For bars that buckle in a sway mode Table B.3 gives 0.9 whatever the diagram.
inline double moment_factor(double psi) { return larger(0.4, 0.6 + 0.4 * psi); }
inline constexpr double sway_moment_factor = 0.9;

/// Load between the ends of a bar, for Table B.3.
enum class SpanLoad : bool { uniform, concentrated };

/// C_m of Table B.3 with a load between the ends: end moments M_h (the greater) and psi M_h, M_s at mid-span, signs as
/// in one diagram. |M_s| <= |M_h| with alpha_s = M_s / M_h, else alpha_h = M_h / M_s.
/// Values from memory, check against the standard.
inline double moment_factor(double M_h, double psi, double M_s, SpanLoad load) {
  const bool uniform = load == SpanLoad::uniform;
  if (M_h == 0.0 && M_s == 0.0) return 1.0;
  if (magnitude(M_s) <= magnitude(M_h)) {
    const double a = M_s / M_h;
    if (a >= 0.0) return larger(0.4, 0.2 + 0.8 * a);
    const double rise = uniform ? (psi >= 0.0 ? 0.1 : 0.1 * (1.0 - psi)) : (psi >= 0.0 ? 0.0 : -0.2 * psi);
    return larger(0.4, rise - 0.8 * a);
  }
  const double a = M_h / M_s;
  const double turn = a < 0.0 && psi < 0.0 ? 1.0 + 2.0 * psi : 1.0;
  return uniform ? 0.95 + 0.05 * a * turn : 0.90 + 0.10 * a * turn;
}

/// Moments [Nm] at the start, in the middle and at the end of a bar, with the signs of one diagram.
struct MomentDiagram {
  double start = 0, middle = 0, end = 0;

  double greatest_end() const { return larger(magnitude(start), magnitude(end)); }
  double greatest() const { return larger(greatest_end(), magnitude(middle)); }
};

/// C_m of Table B.3 for a diagram that is straight or bent by a load spread evenly or towards the middle: the table's
/// column for even loads is nowhere below the one for concentrated ones, and for a straight diagram it gives 0.6 + 0.4
/// psi. At least 0.9 for a bar that may sway.
inline double moment_factor(const MomentDiagram& m, bool sways) {
  const bool first = magnitude(m.start) >= magnitude(m.end);
  const double M_h = first ? m.start : m.end, other = first ? m.end : m.start;
  const double C = moment_factor(M_h, M_h == 0.0 ? 0.0 : other / M_h, m.middle, SpanLoad::uniform);
  return sways ? larger(C, sway_moment_factor) : C;
}

/// C_m M [Nm] for the greatest moment M of the bar: C_m times the greatest of the three moments, and in full what the
/// moment is more elsewhere. At least C_m M, as C_m <= 1.
inline double equivalent_moment(const MomentDiagram& m, double greatest, bool sways) {
  return moment_factor(m, sways) * m.greatest() + larger(0.0, greatest - m.greatest());
}

/// At least equivalent_moment(), and convex in the three moments. In the table C_m M is at most 0.2 |M_h| + 0.8 |M_s|,
/// 0.95 |M_s| + 0.05 |M_h| or 0.4 |M_h|; elsewhere such a load adds to the straight line between the ends no more than
/// in the middle.
inline double equivalent_moment_bound(const MomentDiagram& m, bool sways) {
  const double h = m.greatest_end(), s = magnitude(m.middle);
  const double table = larger(larger(0.2 * h + 0.8 * s, 0.95 * s + 0.05 * h), 0.4 * h);
  const double floor = sways ? sway_moment_factor * larger(h, s) : 0.0;
  return larger(table, floor) + magnitude(m.middle - 0.5 * (m.start + m.end));
}

/// C_my and C_mz; 1, the greatest value of Table B.3, holds for every diagram.
struct MomentFactors {
  double C_my = 1, C_mz = 1;
};

/// Interaction factors of Table B.1 for bars that do not twist (hollow sections, and others that are held).
struct InteractionFactors {
  double k_yy = 1, k_yz = 1, k_zy = 1, k_zz = 1;
};

/// Table B.1. With n = N / (chi N_Rk / gamma_M1): classes 1 and 2 k_yy = C_my (1 + (lambda_y - 0.2) n_y) <=
/// C_my (1 + 0.8 n_y), k_zz alike or, for I sections, C_mz (1 + (2 lambda_z - 0.6) n_z) <= C_mz (1 + 1.4 n_z),
/// k_yz = 0.6 k_zz, k_zy = 0.6 k_yy. Classes 3 and 4: k = C_m (1 + 0.6 lambda n) <= C_m (1 + 0.6 n), k_yz = k_zz,
/// k_zy = 0.8 k_yy. A slenderness term below 0 (very stocky bars) counts as 0 (safe side).
/// Values from memory, check against the standard.
inline InteractionFactors interaction_factors(bool plastic, ShapeKind kind, double lambda_y, double lambda_z,
                                              double n_y, double n_z, const MomentFactors& C) {
  const auto between = [](double x, double high) { return larger(0.0, smaller(x, high)); };
  InteractionFactors k;
  if (plastic) {
    const bool open = kind == ShapeKind::i_shape;
    k.k_yy = C.C_my * (1.0 + between(lambda_y - 0.2, 0.8) * n_y);
    k.k_zz = C.C_mz * (1.0 + (open ? between(2.0 * lambda_z - 0.6, 1.4) : between(lambda_z - 0.2, 0.8)) * n_z);
    k.k_yz = 0.6 * k.k_zz;
    k.k_zy = 0.6 * k.k_yy;
  } else {
    k.k_yy = C.C_my * (1.0 + 0.6 * between(lambda_y, 1.0) * n_y);
    k.k_zz = C.C_mz * (1.0 + 0.6 * between(lambda_z, 1.0) * n_z);
    k.k_yz = k.k_zz;
    k.k_zy = 0.8 * k.k_yy;
  }
  return k;
}

/// 6.3.3 with chi_LT = 1: the greater of (6.61) and (6.62), under compression; 0 under tension. f.My and f.Mz are the
/// greatest moments along the bar. A round bar that has the same chi and C_m about both axes is NOT turned to its
/// resultant moment: the two rows are the standard's own.
inline verify::ClauseRow beam_column(const BarResistance& r, const Buckling& b, const verify::SectionForces& f,
                                     const MomentFactors& C = {}) {
  if (!(f.N < 0.0)) return verify::interaction_row(0.0, "EN 1993-1-1 6.3.3 (6.61)");
  const double n_y = verify::ratio(f.N, b.chi_y * r.N_Rk / r.gamma_M1);
  const double n_z = verify::ratio(f.N, b.chi_z * r.N_Rk / r.gamma_M1);
  const double my = verify::ratio(f.My, r.M_y_Rk / r.gamma_M1);
  const double mz = verify::ratio(f.Mz, r.M_z_Rk / r.gamma_M1);
  const InteractionFactors k = interaction_factors(r.plastic_compressed, r.kind, b.lambda_y, b.lambda_z, n_y, n_z, C);
  const double about_y = n_y + (my == 0.0 ? 0.0 : k.k_yy * my) + (mz == 0.0 ? 0.0 : k.k_yz * mz);
  const double about_z = n_z + (my == 0.0 ? 0.0 : k.k_zy * my) + (mz == 0.0 ? 0.0 : k.k_zz * mz);
  if (about_z > about_y) return verify::interaction_row(about_z, "EN 1993-1-1 6.3.3 (6.62)");
  return verify::interaction_row(about_y, "EN 1993-1-1 6.3.3 (6.61)");
}

}  // namespace baywork::en1993
