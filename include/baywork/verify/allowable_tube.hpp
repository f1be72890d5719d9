// SPDX-License-Identifier: MIT
// Allowable-stress design of round aluminium tubes: nominal strengths, their safety factors, and the clauses as rows.
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include <baywork/core/text.hpp>
#include <baywork/girder/bar.hpp>
#include <baywork/section/section_data.hpp>
#include <baywork/verify/allowable_buckling.hpp>
#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1999_section.hpp>

namespace baywork::allowable {

/// What to hold against it, on every row.
inline constexpr const char* label = "in part from memory: check against ANSI E1.2 and the Aluminum Design Manual";

/// Omega of building-type structures (D.1, E.1, F.1, G.1, H.2), and what ANSI E1.2 leaves of the load for repeated use
/// (value from memory, medium to low confidence).
struct SafetyFactors {
  double yielding = 1.65;  ///< and buckling
  double rupture = 1.95;
  double repeated_use = 0.85;
};

/// Metal within 1 in of a weld counts as affected (value from memory).
inline constexpr double weld_extent = 0.0254;

/// Strengths of the metal, F_cy = F_ty; beside welds F_tyw and F_tuw [Pa]. F_sy = 0.6 F_ty, F_su = 0.6 F_tu; k_t = 1,
/// as for all but a few unweldable alloys (Table A.4.3, from memory).
struct Metal {
  double F_ty = 0, F_tu = 0, F_tyw = 0, F_tuw = 0;
  bool aged = false;  ///< artificially: Table B.4.2
};

/// Of a bar's material. Aged: heat-treated alloys of the better buckling class of EN 1999-1-1, which are the tempers
/// T5, T6 and T66 but for some T5.
inline Metal metal_of(const material::Material& m, double wall) {
  const material::StrengthStep& s = material::strength(m, wall);
  const bool treated = m.alloy_group == material::AlloyGroup::heat_treated_6xxx ||
                       m.alloy_group == material::AlloyGroup::heat_treated_7xxx;
  return {s.yield, s.ultimate, s.haz_yield, s.haz_ultimate, treated && m.buckling_class == material::BucklingClass::a};
}

/// A nominal strength [N, Nm] with its own safety factor; nominal / omega is available.
struct Strength {
  double nominal = 0;
  double omega = 1;
  double available(const SafetyFactors& k) const { return k.repeated_use * nominal / omega; }
};
inline Strength lesser(const Strength& a, const Strength& b) {
  return a.nominal / a.omega <= b.nominal / b.omega ? a : b;
}

/// Strengths of a section, clear of welds and beside them. In tension a weld across the bar leaves yielding as it is
/// (D.2-1), rupture counts (D.2-4). Softened metal that is longer than the tube is wide is read as that of welds along
/// the bar, which lowers yielding, too (D.2-2; safe side). In bending both are lowered (safe side). Welds along the bar
/// affect a share of its area: strengths clear of welds across it are mixed by that share (D.2-2, D.2-4, E.2-2, G.1-2,
/// H.2-4); bending counts as affected all round, since the share may lie farthest from the axis (safe side).
struct TubeStrength {
  const char* outside = "";  ///< why it is not covered
  bool softened_by_welds = false;
  double share = 0;  ///< A_wz / A of welds along the bar
  double diameter = 0, area = 0, radius = 0, wall = 0, gyration = 0, torsion_modulus = 0;
  Metal metal{};
  BucklingConstants parent{}, welded{};
  std::array<Strength, 3> tension{};      ///< by en1999::Softening
  std::array<Strength, 2> compression{};  ///< of a short bar: clear of welds, beside them
  std::array<Strength, 2> bending{};

  double mixed(double of_parent, double of_welded) const { return of_parent + share * (of_welded - of_parent); }
};

/// Area that welds along a bar affect: each line its own width and 1 in to both sides [m²].
inline double affected_along(const Bar& bar) {
  return bar.along.lines * (bar.along.width + 2.0 * weld_extent) * bar.section.wall;
}

/// `affected_along`: area that welds along the bar affect [m²].
inline TubeStrength tube_strength(const SectionData<double>& s, const Metal& m, const SafetyFactors& k = {},
                                  double affected_along = 0) {
  TubeStrength r;
  if (s.kind != ShapeKind::round_tube) {
    r.outside = "not a round tube: allowable stresses are given for round tubes alone";
    return r;
  }
  r.diameter = s.height;
  r.area = s.area;
  r.wall = s.wall;
  r.radius = 0.5 * (s.height - s.wall);
  r.gyration = s.iy;
  r.torsion_modulus = s.Wt;
  const double slenderness = r.radius / r.wall;
  if (slenderness > 20.0) {
    r.outside = "R_b/t above 20: welds round such tubes are not covered";
    return r;
  }
  r.metal = m;
  r.softened_by_welds = m.F_tyw < m.F_ty || m.F_tuw < m.F_tu;
  r.share = r.softened_by_welds ? smaller(1.0, affected_along / s.area) : 0.0;
  r.parent = buckling_constants(m.F_ty, 0.6 * m.F_ty, m.aged);
  r.welded = buckling_constants(m.F_tyw, 0.6 * m.F_tyw, false);
  // D.2
  const Strength yielding{r.mixed(m.F_ty, m.F_tyw) * s.area, k.yielding};
  const Strength welded_yielding{m.F_tyw * s.area, k.yielding}, welded_rupture{m.F_tuw * s.area, k.rupture};
  r.tension = {lesser(yielding, {r.mixed(m.F_tu, m.F_tuw) * s.area, k.rupture}), lesser(yielding, welded_rupture),
               lesser(welded_yielding, welded_rupture)};
  // E.3 and F.2, F.3: Z F_ty, 1.5 S F_cy, Z F_tu, S F_b; a tube has Z < 1.5 S
  const auto bending = [&](double F_y, double F_u, const BucklingConstants& c) {
    const double M_y = smaller(s.Wpl_y, 1.5 * s.Wel_y) * F_y, M_b = s.Wel_y * wall_bending_stress(c, slenderness);
    return lesser({smaller(M_y, M_b), k.yielding}, {s.Wpl_y * F_u, k.rupture});
  };
  const double F_c = wall_compression_stress(r.parent, m.F_ty, slenderness);
  const double F_cw = wall_compression_stress(r.welded, m.F_tyw, slenderness);
  r.compression = {Strength{r.mixed(F_c, F_cw) * s.area, k.yielding}, Strength{F_cw * s.area, k.yielding}};
  r.bending[1] = bending(m.F_tyw, m.F_tuw, r.welded);
  r.bending[0] = r.share > 0.0 ? r.bending[1] : bending(m.F_ty, m.F_tu, r.parent);
  return r;
}

/// Which strengths hold beside a weld whose softened metal is so long [m].
inline en1999::Softening softening(const TubeStrength& r, double softened_length) {
  using en1999::Softening;
  if (!r.softened_by_welds || !(softened_length > 0.0)) return Softening::none;
  return softened_length <= r.diameter * (1.0 + 1e-12) ? Softening::within_width : Softening::beyond_width;
}

/// Strengths that a bar's lengths have a part in.
struct BarStrength {
  double lambda = 0;                           ///< greatest k L / r
  double P_e = 0;                              ///< pi² E A / lambda²; infinite for lambda = 0
  Strength column{};                           ///< E.2
  std::array<Strength, 2> shear{}, torsion{};  ///< clear of welds, beside them
};

/// `buckling_length` [m]; `weld_inside`: a weld across the bar lies farther than 0.05 of that length from its ends, so
/// that the column counts as affected over its whole length (E.2 b); `length`: of the bar, over which its shear force
/// and torque may keep their size.
inline BarStrength bar_strength(const TubeStrength& r, double buckling_length, double length, bool weld_inside,
                                const SafetyFactors& k = {}) {
  BarStrength b;
  b.lambda = buckling_length / r.gyration;
  const double euler = pi_v<double> / b.lambda;
  b.P_e = b.lambda > 0.0 ? euler * euler * modulus * r.area : std::numeric_limits<double>::infinity();
  const Metal& m = r.metal;
  const double F_welded = column_stress(r.welded, m.F_tyw, b.lambda);
  const bool welded = weld_inside && r.softened_by_welds;
  b.column = {(welded ? F_welded : r.mixed(column_stress(r.parent, m.F_ty, b.lambda), F_welded)) * r.area, k.yielding};
  const double lambda = shear_slenderness(r.radius, r.wall, length);
  // G.4: A/2; H.2.1: J/R
  const auto of = [&](auto stress, double size) {
    const double F_s = stress(r.parent, 0.6 * m.F_ty, lambda), F_sw = stress(r.welded, 0.6 * m.F_tyw, lambda);
    const auto strength = [&](double yielding, double rupture) {
      return lesser({yielding * size, k.yielding}, {0.6 * rupture * size, k.rupture});
    };
    return std::array<Strength, 2>{strength(r.mixed(F_s, F_sw), r.mixed(m.F_tu, m.F_tuw)), strength(F_sw, m.F_tuw)};
  };
  b.shear = of(tube_shear_stress, r.area / 2.0);
  b.torsion = of(tube_torsion_stress, r.torsion_modulus);
  return b;
}

/// The strength of a short bar against N, tension positive.
inline const Strength& axial_strength(const TubeStrength& r, double N, en1999::Softening s) {
  return N >= 0.0 ? r.tension[static_cast<std::size_t>(s)] : r.compression[s == en1999::Softening::none ? 0 : 1];
}
inline const Strength& at(const std::array<Strength, 2>& of, en1999::Softening s) {
  return of[s == en1999::Softening::none ? 0 : 1];
}

/// D.2, E.3.
inline verify::ClauseRow axial(const TubeStrength& r, double N, en1999::Softening s, const SafetyFactors& k = {}) {
  return verify::compare(N, axial_strength(r, N, s).available(k), N >= 0.0 ? "ADM 2020 I D.2" : "ADM 2020 I E.3");
}
/// F.2, F.3: the resultant moment, about the axis that it bends.
inline verify::ClauseRow bending(const TubeStrength& r, const verify::SectionForces& f, en1999::Softening s,
                                 const SafetyFactors& k = {}) {
  return verify::compare(verify::resultant(f.My, f.Mz), at(r.bending, s).available(k), "ADM 2020 I F.2/F.3");
}
/// G.4.
inline verify::ClauseRow shear(const BarStrength& b, const verify::SectionForces& f, en1999::Softening s,
                               const SafetyFactors& k = {}) {
  return verify::compare(verify::resultant(f.Vy, f.Vz), at(b.shear, s).available(k), "ADM 2020 I G.4");
}
/// H.2.1.
inline verify::ClauseRow torsion(const BarStrength& b, double T, en1999::Softening s, const SafetyFactors& k = {}) {
  return verify::compare(T, at(b.torsion, s).available(k), "ADM 2020 I H.2.1");
}
/// H.3.2, curved elements: f_c/F_c + f_b/F_b + (f_s/F_s)², the stresses of shear force and torque added; of tension the
/// same (safe side).
inline verify::ClauseRow bending_and_axial(const TubeStrength& r, const BarStrength& b, const verify::SectionForces& f,
                                           en1999::Softening s, const SafetyFactors& k = {}) {
  const double of_shear = shear(b, f, s, k).utilisation + torsion(b, f.T, s, k).utilisation;
  return verify::interaction_row(
      axial(r, f.N, s, k).utilisation + bending(r, f, s, k).utilisation + of_shear * of_shear, "ADM 2020 I H.3.2");
}
/// E.2.
inline verify::ClauseRow column(const BarStrength& b, double N, const SafetyFactors& k = {}) {
  return verify::compare(smaller(N, 0.0), b.column.available(k), "ADM 2020 I E.2");
}
/// 1.6 P_r / P_e: forces of first order are amplified by 1/(1 - 1.6 P_r/P_e), C_m = 1 (C.2 asks for second order, with
/// alpha = 1.6; the factor is common practice).
inline constexpr double alpha = 1.6;
/// H.1: P_r/P_c + M_r/M_c with the column's P_c and the amplified moment; infinite where the bar would buckle.
inline verify::ClauseRow beam_column(const TubeStrength& r, const BarStrength& b, const verify::SectionForces& f,
                                     en1999::Softening s, const SafetyFactors& k = {}) {
  const char* clause = "ADM 2020 I H.1";
  if (f.N >= 0.0) return verify::interaction_row(0.0, clause);
  const double left = 1.0 + alpha * f.N / b.P_e, m = bending(r, f, s, k).utilisation;
  if (left <= 0.0) return verify::interaction_row(std::numeric_limits<double>::infinity(), clause);
  return verify::interaction_row(column(b, f.N, k).utilisation + m / left, clause);
}

/// What a proof takes for granted by this route.
inline void add_words(const SafetyFactors& k, std::vector<std::string>& out) {
  using text::number;
  out.push_back("Aluminum Design Manual 2020, Part I (allowable stresses) after ANSI E1.2: Omega = " +
                number(k.yielding) + " of yielding and buckling, " + number(k.rupture) + " of rupture; " +
                number(k.repeated_use) + " of every strength for repeated use. Low confidence, " + label + ".");
  out.push_back(
      "Strengths are those of the bars' materials, which may be those of another standard; E = 10,100 ksi in all of "
      "them. Metal within 1 in of a weld is affected over the whole section. Moments in compressed bars are amplified by "
      "1/(1 - 1.6 P_r/P_e).");
}

}  // namespace baywork::allowable
