// SPDX-License-Identifier: MIT
// EN 1993-1-1:2005, 6.2.3 to 6.2.7: all resistances of one section in one steel, worked out once.
#pragma once

#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1993_effective.hpp>

namespace baywork::en1993 {

/// Resistances [N, Nm]. Rk values are those without a partial factor, for 6.3.
struct BarResistance {
  ShapeKind kind = ShapeKind::other;
  material::Product product = material::Product::hot_finished;
  verify::Scope scope = verify::Scope::covered;
  bool needs_lateral_check = false;  ///< open or flat: lateral-torsional buckling is to be checked or prevented

  int class_N = 0, class_M_y = 0, class_M_z = 0;
  bool plastic = false;             ///< bending alone or with tension: classes 1 and 2
  bool plastic_compressed = false;  ///< with compression, classed as if uniformly compressed (safe side)
  double fy = 0, fu = 0;            ///< Pa, at this wall thickness
  double gamma_M1 = 1;

  double A_eff = 0;  ///< m²; gross for classes 1 to 3

  double N_pl_Rd = 0;                       ///< A fy / gamma_M0, 6.2.3 (2) a
  double N_c_Rd = 0;                        ///< A_eff fy / gamma_M0, 6.2.4
  double M_y_Rd = 0, M_z_Rd = 0;            ///< Wpl, Wel (class 3) or W_eff (class 4) times fy / gamma_M0, 6.2.5
  double M_el_y_Rd = 0, M_el_z_Rd = 0;      ///< Wel or (class 4) W_eff times fy / gamma_M0
  double V_y_Rd = 0, V_z_Rd = 0;            ///< Av fy / (sqrt(3) gamma_M0), 6.2.6 (2); solids elastic, 6.2.6 (4);
                                            ///< slender webs EN 1993-1-5 5.2
  double V_el_y_Rd = 0, V_el_z_Rd = 0;      ///< shear at which the greatest stress is fy / (sqrt(3) gamma_M0)
  double T_Rd = 0;                          ///< Wt fy / (sqrt(3) gamma_M0), 6.2.7, elastic
  double N_Rk = 0, M_y_Rk = 0, M_z_Rk = 0;  ///< of the compressed bar, Table 6.7

  double a_w = 0, a_f = 0;  ///< shares of webs and flanges in A, at most 0.5, 6.2.9.1 (5)
  double web_share_y = 1;   ///< share of M_y,pl that a shear force Vz weakens, 6.2.8 (5); 1: all of it
};

/// N_pl,Rd = A fy / gamma_M0, 6.2.3 (2) a.
inline double tension_gross(double area, double fy, const PartialFactors& factors = {}) {
  return area * fy / factors.gamma_M0;
}
/// N_u,Rd = 0.9 A_net fu / gamma_M2, 6.2.3 (2) b.
inline double tension_net(double net_area, double fu, const PartialFactors& factors = {}) {
  return 0.9 * net_area * fu / factors.gamma_M2;
}
/// M_c,Rd = W fy / gamma_M0, 6.2.5 (2), with Wpl for classes 1 and 2 and Wel for class 3.
inline double bending(double modulus, double fy, const PartialFactors& factors = {}) {
  return modulus * fy / factors.gamma_M0;
}
/// V_pl,Rd = Av fy / (sqrt(3) gamma_M0), 6.2.6 (2).
inline double shear_resistance(double shear_area, double fy, const PartialFactors& factors = {}) {
  return shear_area * fy / (std::sqrt(3.0) * factors.gamma_M0);
}

namespace detail {

/// The modulus of a class; `effective` is that of class 4.
inline double modulus(int class_, double Wpl, double Wel, double effective) {
  if (class_ == 0) return 0.0;
  return class_ <= 2 ? Wpl : class_ == 3 ? Wel : effective;
}

/// Shear areas [m²]: 6.2.6 (3) and, for the greatest elastic stress, V S / (I t) of 6.2.6 (4) turned into an area.
struct ShearAreas {
  double y = 0, z = 0, elastic_y = 0, elastic_z = 0;
};

/// Round tube: Av = 2 A / pi; a thin ring has its greatest stress 2 V / A. Rectangular hollow section: A h / (b + h).
/// Solids: 4 V / 3 A (round) and 3 V / 2 A (rectangle), also used as their resistance. Other shapes: the webs. In any
/// web the greatest stress is at most 1.5 times the mean, which a plain rectangle has and flanges even out.
inline ShearAreas shear_areas(const SectionData<double>& s) {
  const double A = s.area;
  switch (s.kind) {
    case ShapeKind::round_tube: return {2.0 * A / pi_v<double>, 2.0 * A / pi_v<double>, A / 2.0, A / 2.0};
    case ShapeKind::solid_round: return {0.75 * A, 0.75 * A, 0.75 * A, 0.75 * A};
    case ShapeKind::solid_rectangle: return {A / 1.5, A / 1.5, A / 1.5, A / 1.5};
    case ShapeKind::rectangular_hollow:
      return {A * s.width / (s.width + s.height), A * s.height / (s.width + s.height), s.web_area_y / 1.5,
              s.web_area_z / 1.5};
    default: return {s.web_area_y, s.web_area_z, s.web_area_y / 1.5, s.web_area_z / 1.5};
  }
}

}  // namespace detail

/// All resistances of a bar's section. Class limits, shear areas and Table 6.7 from memory, check against the standard.
inline BarResistance resistance(const SectionData<double>& s, const material::Material& m,
                                const PartialFactors& factors = {}) {
  if (m.family != material::Family::steel)
    fail<OutsideScope>("material " + m.name, "EN 1993-1-1 was asked for a metal that is not steel",
                       "structural steel is accepted");
  const material::StrengthStep& f = material::strength(m, s.wall);
  BarResistance r;
  r.kind = s.kind;
  r.product = m.product;
  r.fy = f.yield;
  r.fu = f.ultimate;
  r.gamma_M1 = factors.gamma_M1;
  r.class_N = section_class(s, r.fy, Loading::compression);
  r.class_M_y = section_class(s, r.fy, Loading::bending_y);
  r.class_M_z = section_class(s, r.fy, Loading::bending_z);
  const bool box = s.kind == ShapeKind::rectangular_hollow;
  if (r.class_N == 0) r.scope = verify::Scope::shape_unknown;
  if (r.class_N == 4 && !box)
    r.scope = s.kind == ShapeKind::round_tube ? verify::Scope::class_4_tube : verify::Scope::class_4;
  const bool plates_known = s.kind != ShapeKind::channel && s.kind != ShapeKind::other;
  r.plastic = plates_known && r.class_M_y <= 2 && r.class_M_z <= 2;
  r.plastic_compressed = r.plastic && r.class_N <= 2;

  r.N_pl_Rd = tension_gross(s.area, r.fy, factors);
  if (r.class_N >= 1 && r.class_N <= 3) r.A_eff = s.area;
  if (r.class_N == 4 && box) r.A_eff = effective_area(s, r.fy);
  r.N_c_Rd = tension_gross(r.A_eff, r.fy, factors);
  r.N_Rk = r.A_eff * r.fy;
  const double W_eff_y = r.class_M_y == 4 && box ? effective_modulus(s, r.fy, true) : 0.0;
  const double W_eff_z = r.class_M_z == 4 && box ? effective_modulus(s, r.fy, false) : 0.0;
  r.M_y_Rd = bending(detail::modulus(r.class_M_y, s.Wpl_y, s.Wel_y, W_eff_y), r.fy, factors);
  r.M_z_Rd = bending(detail::modulus(r.class_M_z, s.Wpl_z, s.Wel_z, W_eff_z), r.fy, factors);
  const double W_el_y = detail::modulus(r.class_M_y, s.Wel_y, s.Wel_y, W_eff_y);
  const double W_el_z = detail::modulus(r.class_M_z, s.Wel_z, s.Wel_z, W_eff_z);
  r.M_el_y_Rd = bending(W_el_y, r.fy, factors);
  r.M_el_z_Rd = bending(W_el_z, r.fy, factors);
  // of the compressed bar: nothing where its class is unknown or its effective area is
  const bool compressible = r.A_eff > 0.0;
  r.M_y_Rk = (r.plastic_compressed ? s.Wpl_y : compressible ? W_el_y : 0.0) * r.fy;
  r.M_z_Rk = (r.plastic_compressed ? s.Wpl_z : compressible ? W_el_z : 0.0) * r.fy;

  detail::ShearAreas Av = detail::shear_areas(s);
  // 6.2.6 (6) with eta = 1: beyond hw / tw = 72 epsilon shear buckling governs; hw reaches from flange to flange.
  const double slender = 72.0 * epsilon(r.fy);
  bool slender_y = false;
  bool slender_z = false;
  double flange_area = 0.0;
  for (std::size_t i = 0; i < s.n_plates; ++i) {
    const PlateElement<double>& p = s.plates[i];
    if (!box && !p.outstand && p.c > slender * p.t) (p.bends_about_y ? slender_z : slender_y) = true;
    if (s.kind == ShapeKind::i_shape && !p.bends_about_y) flange_area = 2.0 * s.width * p.t;
    // 6.2.8 (5): M_y,V = (Wpl - rho Aw² / (4 tw)) fy / gamma_M0
    if (s.kind == ShapeKind::i_shape && p.bends_about_y && r.plastic)
      r.web_share_y = smaller(1.0, s.web_area_z * s.web_area_z / (4.0 * p.t * s.Wpl_y));
  }
  if (slender_y) Av.y = Av.elastic_y = 0.0;
  if (slender_z) Av.z = Av.elastic_z = 0.0;
  if (slender_y || slender_z) r.scope = verify::Scope::slender_web;
  r.V_y_Rd = shear_resistance(Av.y, r.fy, factors);
  r.V_z_Rd = shear_resistance(Av.z, r.fy, factors);
  r.V_el_y_Rd = shear_resistance(Av.elastic_y, r.fy, factors);
  r.V_el_z_Rd = shear_resistance(Av.elastic_z, r.fy, factors);
  r.T_Rd = shear_resistance(s.Wt, r.fy, factors);

  if (box) {  // shear force and torque alike; with gamma_M1
    const double chi_y = shear_buckling_factor(s.width - 2.0 * s.wall, s.wall, r.fy);
    const double chi_z = shear_buckling_factor(s.height - 2.0 * s.wall, s.wall, r.fy);
    const double gamma = factors.gamma_M0 / factors.gamma_M1;
    const auto buckled = [&](double& V_Rd, double h_w, double chi) {
      V_Rd = smaller(V_Rd, chi * gamma * shear_resistance(2.0 * h_w * s.wall, r.fy, factors));
    };
    if (chi_y < 1.0) buckled(r.V_y_Rd, s.width - 2.0 * s.wall, chi_y);
    if (chi_z < 1.0) buckled(r.V_z_Rd, s.height - 2.0 * s.wall, chi_z);
    const auto lessened = [&](double chi) { return chi < 1.0 ? smaller(1.0, chi * gamma) : 1.0; };
    r.V_el_y_Rd *= lessened(chi_y);
    r.V_el_z_Rd *= lessened(chi_z);
    r.T_Rd *= smaller(lessened(chi_y), lessened(chi_z));
  }

  const double a_w = 1.0 - (box ? 2.0 * s.width * s.wall : flange_area) / s.area;
  const double a_f = 1.0 - 2.0 * s.height * s.wall / s.area;
  r.a_w = larger(0.0, smaller(a_w, 0.5));
  r.a_f = box ? larger(0.0, smaller(a_f, 0.5)) : 0.0;
  r.needs_lateral_check = !is_round(s.kind) && !box;
  return r;
}

}  // namespace baywork::en1993
