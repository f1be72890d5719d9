// SPDX-License-Identifier: MIT
// EN 1999-1-1:2007, 6.2.3 to 6.2.7: all resistances of one section in one material, worked out once.
#pragma once

#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1999_effective.hpp>

namespace baywork::en1999 {

/// Welds that run along the whole bar, and the area that they soften [m²], 6.1.6.
struct WeldedAlong {
  bool any = false;
  double softened = 0;
};

/// Resistances of the parent metal [N, Nm], and the factors that turn them into those beside a local weld.
struct BarResistance {
  ShapeKind kind = ShapeKind::other;
  material::BucklingClass buckling_class = material::BucklingClass::a;
  verify::Scope scope = verify::Scope::covered;
  bool needs_lateral_check = false;  ///< open or flat: lateral-torsional buckling is to be checked or prevented

  int class_N = 0, class_M_y = 0, class_M_z = 0;
  double fo = 0, fu = 0;  ///< Pa, of the parent metal at this wall thickness
  double rho_o_haz = 1, rho_u_haz = 1;
  double A_eff = 0;                 ///< m²; gross for classes 1 to 3; softening left out
  bool welded_along = false;        ///< kappa of 6.3.1 is then below 1, softened or not
  double softened_share = 1;        ///< A_1 / A of welds along the bar, 6.3.1
  double alpha_y = 1, alpha_z = 1;  ///< shape factors, Table 6.4
  double least_width = 0;           ///< m; the longest softened length that 6.2.9.3 (1) takes as local

  double N_o_Rd = 0;                          ///< A fo / gamma_M1: yielding in tension, 6.2.3
  double N_u_haz_Rd = 0;                      ///< A rho_u,haz fu / gamma_M2: fracture across a local weld, 6.2.3
  double N_c_Rd = 0;                          ///< A_eff fo / gamma_M1, 6.2.4; less what welds along the bar soften
  double N_eff_Rd = 0;                        ///< A_eff fo / gamma_M1, of which buckling takes kappa chi, 6.3.1.1
  double M_y_Rd = 0, M_z_Rd = 0;              ///< alpha Wel fo / gamma_M1, 6.2.5
  double M_u_haz_y_Rd = 0, M_u_haz_z_Rd = 0;  ///< Wel rho_u,haz fu / gamma_M2: fracture across a local weld, 6.2.5.1
  double V_y_Rd = 0, V_z_Rd = 0;              ///< Av fo / (sqrt(3) gamma_M1), 6.2.6
  double T_Rd = 0;                            ///< Wt fo / (sqrt(3) gamma_M1), 6.2.7, with the elastic Wt (safe side)
  bool slender_webs = false;                  ///< 6.5.5 holds V_Rd: hw / tw above 39 epsilon
  double omega_u = 1;  ///< omega_0 where the softened length is at most the least width, 6.2.9.3 (1)
  double omega_o = 1;  ///< omega_0 where it is longer, 6.2.9.3 (2)

  double psi = 1;                           ///< exponent of hollow and solid sections, 6.2.9.2
  double eta_0 = 1, gamma_0 = 1, xi_0 = 1;  ///< exponents of I sections, 6.2.9.1
};

/// N_o,Rd = A fo / gamma_M1: yielding of the gross section in tension, 6.2.3 (2) a.
inline double tension_gross(double area, double fo, const PartialFactors& factors = {}) {
  return area * fo / factors.gamma_M1;
}
/// N_u,Rd = 0.9 A_net fu / gamma_M2: fracture across holes, 6.2.3 (2) b.
inline double tension_net(double net_area, double fu, const PartialFactors& factors = {}) {
  return 0.9 * net_area * fu / factors.gamma_M2;
}
/// N_u,Rd = A rho_u,haz fu / gamma_M2: fracture of a section softened all round, 6.2.3 (2) c; fu_haz = rho_u,haz fu.
inline double tension_haz(double area, double fu_haz, const PartialFactors& factors = {}) {
  return area * fu_haz / factors.gamma_M2;
}
/// M_u,Rd = W_net fu / gamma_M2: fracture of a section with holes in bending, 6.2.5.1.
inline double bending_net(double net_modulus, double fu, const PartialFactors& factors = {}) {
  return net_modulus * fu / factors.gamma_M2;
}
/// V_Rd = Av fo / (sqrt(3) gamma_M1), 6.2.6 (2).
inline double shear_resistance(double shear_area, double fo, const PartialFactors& factors = {}) {
  return shear_area * fo / (std::sqrt(3.0) * factors.gamma_M1);
}

/// Shape factor alpha of Table 6.4: Wpl/Wel (classes 1 and 2); 1 + share (Wpl/Wel - 1) with share =
/// (beta_3 - beta)/(beta_3 - beta_2) (class 3); rho_c (class 4: W_eff >= rho_c Wel when every wall is thinned; a hollow
/// section has its own W_eff). Steady across all class limits. Wpl/Wel of class 1 is not raised for strain hardening
/// (Annex F is not used).
inline double shape_factor(const ElementClass& element, double Wel, double Wpl) {
  if (element.class_ == 0) return 0.0;
  if (element.class_ <= 2) return Wpl / Wel;
  if (element.class_ == 3) return 1.0 + element.share * (Wpl / Wel - 1.0);
  return element.rho_c;
}

/// omega_0 of 6.2.9.3 (1): (rho_u,haz fu / gamma_M2) / (fo / gamma_M1), at most 1.
inline double omega_local(double fo, double fu_haz, const PartialFactors& factors = {}) {
  const double omega = (fu_haz / factors.gamma_M2) / (fo / factors.gamma_M1);
  return smaller(omega, 1.0);
}

namespace detail {

/// What welds along the bar leave of a modulus, with rho t in an area `softened` [m²] and t elsewhere. Where it lies
/// is not asked: it is put at the extreme fibre, and as much opposite, so that the axis stays where it was. The elastic
/// modulus loses most, (1 - rho) softened h² / (2 I), and never more than the whole section would; plastic moduli are
/// taken to lose the same (safe side).
inline double modulus_left(double softened, double rho, double depth, double second_moment) {
  const double lost = smaller(1.0, softened * depth * depth / (2.0 * second_moment));
  return 1.0 - (1.0 - rho) * lost;
}

}  // namespace detail

/// All resistances of a bar's section. `welded` says whether walls carry welds (class limits); softening beside a
/// local weld is asked for later, where it matters (omega_u, omega_o). What welds along the bar soften counts rho_o,haz
/// in N_o,Rd (6.2.3 (2) a), N_c,Rd, moduli and shear areas, and all round in T_Rd, as one shear flow passes all walls;
/// in class 4 on top of rho_c, where the standard takes the lesser (safe side).
/// Shear areas, 6.2.6 (2): 0.6 A of a round tube, 0.8 A of a solid, else the webs from flange to flange. In class 4 the
/// wall of every element but those of rectangular hollow sections is thinned to the worst rho_c, also where the
/// standard would thin only the compressed parts (safe side).
/// Clause constants from memory, check against the standard.
inline BarResistance resistance(const SectionData<double>& s, const material::Material& m,
                                const PartialFactors& factors = {}, Welded welded = Welded::no,
                                const WeldedAlong& along = {}) {
  if (m.family != material::Family::aluminium || m.buckling_class == material::BucklingClass::none)
    fail<OutsideScope>("material " + m.name, "EN 1999-1-1 was asked for a metal without an aluminium buckling class",
                       "wrought aluminium of buckling class A or B is accepted");
  const material::StrengthStep& f = material::strength(m, s.wall);
  BarResistance r;
  r.kind = s.kind;
  r.buckling_class = m.buckling_class;
  r.fo = f.yield;
  r.fu = f.ultimate;
  r.rho_o_haz = f.haz_yield / f.yield;
  r.rho_u_haz = f.haz_ultimate / f.ultimate;
  r.least_width = smaller(s.height, s.width);
  r.omega_u = omega_local(r.fo, f.haz_ultimate, factors);
  r.omega_o = r.rho_o_haz;
  const double softened = smaller(along.softened, s.area), lost = softened * (1.0 - r.rho_o_haz);
  r.welded_along = along.any;
  r.softened_share = 1.0 - lost / s.area;
  r.N_o_Rd = tension_gross(s.area - lost, r.fo, factors);
  r.N_u_haz_Rd = tension_haz(s.area, f.haz_ultimate, factors);

  const ElementClass in_N = classify(s, r.fo, m.buckling_class, welded, Loading::compression);
  const ElementClass in_M_y = classify(s, r.fo, m.buckling_class, welded, Loading::bending_y);
  const ElementClass in_M_z = classify(s, r.fo, m.buckling_class, welded, Loading::bending_z);
  r.class_N = in_N.class_;
  r.class_M_y = in_M_y.class_;
  r.class_M_z = in_M_z.class_;
  if (in_N.class_ == 0) r.scope = verify::Scope::shape_unknown;
  const bool box = s.kind == ShapeKind::rectangular_hollow;
  const ClassLimits& internal = class_limits(m.buckling_class, welded, false);
  r.A_eff = box && r.class_N == 4 ? effective_area(s, r.fo, internal) : in_N.rho_c * s.area;
  r.N_eff_Rd = r.A_eff * r.fo / factors.gamma_M1;
  r.N_c_Rd = larger(0.0, r.A_eff - lost) * r.fo / factors.gamma_M1;
  const auto alpha = [&](const ElementClass& e, double Wel, double Wpl, bool about_y) {
    return box && e.class_ == 4 ? effective_modulus(s, r.fo, internal, about_y) / Wel : shape_factor(e, Wel, Wpl);
  };
  const double left_y = detail::modulus_left(softened, r.rho_o_haz, s.height, s.Iy);
  const double left_z = detail::modulus_left(softened, r.rho_o_haz, s.width, s.Iz);
  r.alpha_y = left_y * alpha(in_M_y, s.Wel_y, s.Wpl_y, true);
  r.alpha_z = left_z * alpha(in_M_z, s.Wel_z, s.Wpl_z, false);
  r.M_y_Rd = r.alpha_y * s.Wel_y * r.fo / factors.gamma_M1;
  r.M_z_Rd = r.alpha_z * s.Wel_z * r.fo / factors.gamma_M1;

  r.M_u_haz_y_Rd = bending_net(s.Wel_y, f.haz_ultimate, factors);
  r.M_u_haz_z_Rd = bending_net(s.Wel_z, f.haz_ultimate, factors);

  const bool solid = s.kind == ShapeKind::solid_round || s.kind == ShapeKind::solid_rectangle;
  const bool whole = solid || s.kind == ShapeKind::round_tube;
  double web_y = s.web_area_y;
  double web_z = s.web_area_z;
  double torsion_left = 1.0;
  // A web is slender above hw / tw = 39 epsilon (6.2.6 (1)); hw reaches from flange to flange.
  if (box) {
    const double h_y = s.width - 2.0 * s.wall, h_z = s.height - 2.0 * s.wall;
    const double v_y = shear_buckling_factor(h_y, s.wall, r.fo), v_z = shear_buckling_factor(h_z, s.wall, r.fo);
    web_y = v_y * 2.0 * h_y * s.wall;
    web_z = v_z * 2.0 * h_z * s.wall;
    torsion_left = smaller(v_y, v_z);
    r.slender_webs = torsion_left < 1.0;
  } else if (!whole) {
    const double slender = 39.0 * epsilon(r.fo);
    for (std::size_t i = 0; i < s.n_plates; ++i)
      if (!s.plates[i].outstand && s.plates[i].c > slender * s.plates[i].t)
        (s.plates[i].bends_about_y ? web_z : web_y) = 0.0;
    if (web_y < s.web_area_y || web_z < s.web_area_z) r.scope = verify::Scope::slender_web;
  }
  const double whole_area = (solid ? 0.8 : 0.6) * (s.area - lost);
  r.V_y_Rd = shear_resistance(whole ? whole_area : larger(0.0, web_y - lost), r.fo, factors);
  r.V_z_Rd = shear_resistance(whole ? whole_area : larger(0.0, web_z - lost), r.fo, factors);
  r.T_Rd = torsion_left * (lost > 0.0 ? r.rho_o_haz : 1.0) * shear_resistance(s.Wt, r.fo, factors);

  // The exponents grow with the plastic reserve alpha and fall to 1, the elastic sum, without one. For hollow sections
  // of classes 1 and 2 psi reaches the 1.3 that the standard gives; classes 3 and 4 get less (safe side).
  const auto between = [](double x, double high) { return larger(1.0, smaller(x, high)); };
  r.psi = between(r.alpha_y * r.alpha_z, solid ? 2.0 : 1.3);
  r.eta_0 = between(r.alpha_z * r.alpha_z * r.alpha_y * r.alpha_y, 2.0);
  r.gamma_0 = between(r.alpha_z * r.alpha_z, 1.56);
  r.xi_0 = between(r.alpha_y * r.alpha_y, 1.56);
  r.needs_lateral_check =
      s.kind != ShapeKind::round_tube && s.kind != ShapeKind::solid_round && s.kind != ShapeKind::rectangular_hollow;
  return r;
}

}  // namespace baywork::en1999
