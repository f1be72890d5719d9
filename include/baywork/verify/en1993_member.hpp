// SPDX-License-Identifier: MIT
// All checks of one steel bar by EN 1993-1-1, and the rows that show them.
#pragma once

#include <array>
#include <cmath>
#include <limits>
#include <string_view>

#include <baywork/verify/basis.hpp>
#include <baywork/verify/en1993_buckling.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/load_shape.hpp>
#include <baywork/verify/row.hpp>
#include <baywork/verify/sway.hpp>

namespace baywork::verify::detail {

/// Resistances of a bar and what its length makes of them. Buckling takes the greatest compression and the greatest
/// moments of the member, these times C_m (see MomentFactorRule).
struct SteelMember {
  static constexpr const char* standard = "EN 1993-1-1:2005";
  static constexpr std::string_view clause_prefix = "EN 1993-1-1 ";
  const en1993::BarResistance* r = nullptr;
  en1993::Buckling b{};
  double L_cr_y = 0, L_cr_z = 0;
  MomentFactorRule rule = MomentFactorRule::one;
  Sway sway{};

  Weights weights() const { return weights_of(*r); }

  ClauseRow check(Check c, const SectionForces& f, const Place&) const {
    switch (c) {
      case Check::axial: return en1993::axial(*r, f.N);
      case Check::bending: return en1993::bending(*r, f);
      case Check::shear: return en1993::shear(*r, f);
      case Check::torsion: return en1993::torsion(*r, f.T);
      case Check::bending_and_axial: return en1993::bending_and_axial(*r, f);
      case Check::buckling: return en1993::flexural_buckling(*r, b, f.N);
      case Check::beam_column:
        return -f.N > no_force * r->N_c_Rd ? en1993::beam_column(*r, b, f)
                                           : interaction_row(0.0, "EN 1993-1-1 6.3.3 (6.61)");
      default: break;  // not a check of a bar by itself
    }
    return {};
  }

  static constexpr std::array<Check, 5> section_checks{Check::axial, Check::bending, Check::shear, Check::torsion,
                                                       Check::bending_and_axial};
  static constexpr std::array<Check, 2> whole_checks{Check::buckling, Check::beam_column};

  /// Forces for whole_checks: the greatest ones, moments times C_m. Only loads spread evenly over the bar's whole
  /// length are those of Table B.3; others keep C_m = 1.
  void take_whole(GreatestForces& g, const std::array<double, 6>& start, const MemberLoads<double>& loads,
                  double length) const {
    g.whole = g.bound = g.forces;
    if (rule == MomentFactorRule::one || !strongest_in_the_middle(loads, length)) return;
    using baywork::detail::cut_forces;
    const CutForces first = cut_forces(start, loads, 0.0, CutSide::after);
    const CutForces middle = cut_forces(start, loads, 0.5 * length, CutSide::after);
    const CutForces last = cut_forces(start, loads, length, CutSide::before);
    const en1993::MomentDiagram about_y{first.My, middle.My, last.My}, about_z{first.Mz, middle.Mz, last.Mz};
    g.whole.My = en1993::equivalent_moment(about_y, g.forces.My, sway.about_y);
    g.whole.Mz = en1993::equivalent_moment(about_z, g.forces.Mz, sway.about_z);
    g.bound.My = en1993::equivalent_moment_bound(about_y, sway.about_y);
    g.bound.Mz = en1993::equivalent_moment_bound(about_z, sway.about_z);
  }

  /// Whether a check rises with every force: the exponents of 6.2.9.1 rise with N, so that its sum may fall.
  static constexpr bool rises(Check c) { return c != Check::bending_and_axial; }

  /// Whether a check depends on where a section lies.
  static constexpr bool depends_on_x(Check) { return false; }

  /// At least the utilisation under f and under any smaller forces with N of the same sign and at least `least_N` in
  /// size: the exponents of 6.2.9.1 rise with N, and bases up to 1 with the others. Infinity where a base may be above.
  double most(Check c, const SectionForces& f, const Place& at, double least_N) const {
    if (c != Check::bending_and_axial) return check(c, f, at).utilisation;
    const double u = en1993::bending_and_axial(*r, f, least_N).utilisation;
    return u <= 1.0 ? u : std::numeric_limits<double>::infinity();
  }

  /// Formula and numbers of a row.
  void explain(Check c, const SectionForces& f, const Place&, Row& row) const {
    switch (c) {
      case Check::axial: return explain_axial(f, row);
      case Check::bending: return explain_bending(f, row);
      case Check::shear: return explain_shear(f, row);
      case Check::torsion: return explain_torsion(f, row);
      case Check::bending_and_axial: return explain_interaction(f, row);
      case Check::buckling: return explain_buckling(f, row);
      case Check::beam_column: return explain_beam_column(f, row);
      default: return;  // not a check of a bar by itself
    }
  }

 private:
  bool round() const { return is_round(r->kind); }

  void explain_axial(const SectionForces& f, Row& row) const {
    row.formula = "{a}/{b}";
    row.add("N_Ed", magnitude(f.N), kilonewton);
    row.add(f.N >= 0.0 ? "N_pl,Rd" : "N_c,Rd", f.N >= 0.0 ? r->N_pl_Rd : r->N_c_Rd, kilonewton);
    row.add("f_y", r->fy, megapascal);
    if (f.N < 0.0 && r->class_N == 4) row.add("A_eff", r->A_eff, square_millimetre);
  }

  void explain_bending(const SectionForces& f, Row& row) const {
    const bool about_y = round() || ratio(f.My, r->M_y_Rd) > ratio(f.Mz, r->M_z_Rd);
    row.formula = round() ? "sqrt(({a})^2 + ({c})^2)/{b}" : "{a}/{b}";
    row.add(about_y ? "M_y,Ed" : "M_z,Ed", magnitude(about_y ? f.My : f.Mz), kilonewton_metre);
    row.add("M_c,Rd", about_y ? r->M_y_Rd : r->M_z_Rd, kilonewton_metre);
    row.add(round() ? "M_z,Ed" : "", magnitude(f.Mz), kilonewton_metre);
    row.add("f_y", r->fy, megapascal);
  }

  void explain_shear(const SectionForces& f, Row& row) const {
    const double left = en1993::shear_left_by_torsion(r->kind, en1993::torsion(*r, f.T).utilisation);
    const bool one = !round() && r->kind != ShapeKind::solid_rectangle;
    const bool along_y = one && ratio(f.Vy, r->V_y_Rd) >= ratio(f.Vz, r->V_z_Rd);
    row.formula = one       ? "{a}/({b}*{c})"
                  : round() ? "sqrt(({a})^2 + ({d})^2)/({b}*{c})"
                            : "sqrt(({a}/({b}*{c}))^2 + ({d}/({b}*{e}))^2)";
    row.add(one && !along_y ? "V_z,Ed" : "V_y,Ed", magnitude(one && !along_y ? f.Vz : f.Vy), kilonewton);
    row.add(r->kind == ShapeKind::i_shape ? "sqrt(1 - T_Ed/(1.25*T_Rd))" : "(1 - T_Ed/T_Rd)", left);
    const bool z = round() || (one && !along_y);
    row.add(round() ? "V_pl,Rd" : z ? "V_pl,z,Rd" : "V_pl,y,Rd", z ? r->V_z_Rd : r->V_y_Rd, kilonewton);
    if (!one) row.add("V_z,Ed", magnitude(f.Vz), kilonewton);
    if (!one && !round()) row.add("V_pl,z,Rd", r->V_z_Rd, kilonewton);
    if (f.T != 0.0) {
      row.add("T_Ed", magnitude(f.T), kilonewton_metre);
      row.add("T_Rd", r->T_Rd, kilonewton_metre);
    }
  }

  void explain_torsion(const SectionForces& f, Row& row) const {
    row.formula = "{a}/{b}";
    row.add("T_Ed", magnitude(f.T), kilonewton_metre);
    row.add("T_Rd", r->T_Rd, kilonewton_metre);
  }

  /// The parts of 6.2.9.1 as en1993::plastic_interaction() takes them.
  void explain_interaction(const SectionForces& f, Row& row) const {
    if (!(f.N < 0.0 ? r->plastic_compressed : r->plastic)) return explain_elastic(f, row);
    const double V = en1993::shear(*r, f).utilisation;
    const double rho = en1993::strength_lost_by_shear(V), left = 1.0 - rho;
    const double left_y = f.N == 0.0 && f.Vy == 0.0 ? 1.0 - rho * r->web_share_y : left;
    const double n = ratio(f.N, left * r->N_pl_Rd);
    const double sum =
        en1993::plastic_interaction(*r, n, ratio(f.My, left_y * r->M_y_Rd), ratio(f.Mz, left * r->M_z_Rd));
    double by_N_y = 1, by_N_z = 1, of_My = 1, of_Mz = 1;
    const bool flanged = r->kind == ShapeKind::rectangular_hollow || r->kind == ShapeKind::i_shape;
    const char* words_y = "(1 - n)/(1 - a_w/2)";
    switch (r->kind) {
      case ShapeKind::round_tube:
      case ShapeKind::solid_round:
        by_N_y = en1993::round_moment_left(n);
        words_y = by_N_y < std::cos(0.5 * pi_v<double> * n) ? "(1 - n^1.7)" : "cos(pi*n/2)";
        row.formula = "sqrt(({d})^2 + ({g})^2)/({b}*{e}*{f})";
        break;
      case ShapeKind::rectangular_hollow: {
        const double rest = 1.0 - 1.13 * n * n;
        of_My = of_Mz = rest > 1.66 / 6.0 ? 1.66 / rest : 6.0;
        by_N_y = en1993::flanged_moment_left(n, r->a_w);
        by_N_z = en1993::flanged_moment_left(n, r->a_f);
        row.formula = "({d}/({b}*{e}*{f}))^{j} + ({g}/({b}*{h}*{i}))^{k}";
        break;
      }
      case ShapeKind::i_shape:
        of_My = 2.0;
        of_Mz = larger(1.0, 5.0 * n);
        by_N_y = en1993::flanged_moment_left(n, r->a_w);
        by_N_z = en1993::flange_bending_left(n, r->a_w);
        row.formula = "({d}/({l}*{e}*{f}))^{j} + ({g}/({b}*{h}*{i}))^{k}";
        break;
      default:
        by_N_y = 1.0 - n * n;
        words_y = "(1 - n^2)";
        row.formula = "({d}/({b}*{f}) + {g}/({b}*{i}))/{e}";
    }
    if (!(sum > n)) row.formula = "{a}/({b}*{c})";
    row.add("N_Ed", magnitude(f.N), kilonewton);
    row.add("(1 - rho)", left);
    row.add("N_pl,Rd", r->N_pl_Rd, kilonewton);
    row.add("M_y,Ed", magnitude(f.My), kilonewton_metre);
    row.add(words_y, by_N_y);
    row.add(round() ? "M_pl,Rd" : "M_pl,y,Rd", r->M_y_Rd, kilonewton_metre);
    row.add("M_z,Ed", magnitude(f.Mz), kilonewton_metre);
    row.add(flanged ? "(M_N,z,Rd/M_pl,z,Rd)" : "", by_N_z);
    row.add(round() ? "" : "M_pl,z,Rd", r->M_z_Rd, kilonewton_metre);
    row.add(flanged ? "alpha" : "", of_My);
    row.add(flanged ? "beta" : "", of_Mz);
    row.add(r->kind == ShapeKind::i_shape ? "(1 - rho_y)" : "", left_y);
    row.add("n", n);
    row.add(flanged ? "a_w" : "", r->a_w);
    row.add(r->kind == ShapeKind::rectangular_hollow ? "a_f" : "", r->a_f);
    if (rho > 0.0) row.add("V_Ed/V_Rd", V);
  }

  void explain_elastic(const SectionForces& f, Row& row) const {
    const bool along_y = !round() && ratio(f.Vy, r->V_el_y_Rd) > ratio(f.Vz, r->V_el_z_Rd);
    row.formula = round()
                      ? "sqrt(({a}/{b} + sqrt(({c})^2 + ({e})^2)/{d})^2 + (sqrt(({g})^2 + ({k})^2)/{h} + {i}/{j})^2)"
                      : "sqrt(({a}/{b} + {c}/{d} + {e}/{f})^2 + ({g}/{h} + {i}/{j})^2)";
    row.add("N_Ed", magnitude(f.N), kilonewton);
    row.add(f.N >= 0.0 ? "N_pl,Rd" : "N_c,Rd", f.N >= 0.0 ? r->N_pl_Rd : r->N_c_Rd, kilonewton);
    row.add("M_y,Ed", magnitude(f.My), kilonewton_metre);
    row.add(round() ? "M_el,Rd" : "M_el,y,Rd", r->M_el_y_Rd, kilonewton_metre);
    row.add("M_z,Ed", magnitude(f.Mz), kilonewton_metre);
    row.add(round() ? "" : "M_el,z,Rd", r->M_el_z_Rd, kilonewton_metre);
    row.add(round() || along_y ? "V_y,Ed" : "V_z,Ed", magnitude(round() || along_y ? f.Vy : f.Vz), kilonewton);
    row.add("V_el,Rd", along_y ? r->V_el_y_Rd : r->V_el_z_Rd, kilonewton);
    row.add("T_Ed", magnitude(f.T), kilonewton_metre);
    row.add("T_Rd", r->T_Rd, kilonewton_metre);
    if (round()) row.add("V_z,Ed", magnitude(f.Vz), kilonewton);
  }

  void add_slenderness(bool y, Row& row) const {
    row.add("lambda", y ? b.lambda_y : b.lambda_z);
    row.add("L_cr", y ? L_cr_y : L_cr_z, metre);
    row.add("N_cr", y ? b.N_cr_y : b.N_cr_z, kilonewton);
  }
  void explain_buckling(const SectionForces& f, Row& row) const {
    const bool y = b.chi_y < b.chi_z;
    row.formula = "{a}/({b}*{c}/{d})";
    row.add("N_Ed", -f.N, kilonewton);
    row.add("chi", y ? b.chi_y : b.chi_z);
    row.add("N_Rk", r->N_Rk, kilonewton);
    row.add("gamma_M1", r->gamma_M1);
    add_slenderness(y, row);
  }

  void explain_beam_column(const SectionForces& f, Row& row) const {
    const double n_y = ratio(f.N, b.chi_y * r->N_Rk / r->gamma_M1), n_z = ratio(f.N, b.chi_z * r->N_Rk / r->gamma_M1);
    const double my = ratio(f.My, r->M_y_Rk / r->gamma_M1), mz = ratio(f.Mz, r->M_z_Rk / r->gamma_M1);
    const en1993::InteractionFactors k =
        en1993::interaction_factors(r->plastic_compressed, r->kind, b.lambda_y, b.lambda_z, n_y, n_z, {});
    const bool y = !(n_z + k.k_zy * my + k.k_zz * mz > n_y + k.k_yy * my + k.k_yz * mz);
    row.formula = "{a}/({b}*{c}/{d}) + {e}*{f}/({g}/{d}) + {h}*{i}/({j}/{d})";
    row.add("N_Ed", -f.N, kilonewton);
    row.add(y ? "chi_y" : "chi_z", y ? b.chi_y : b.chi_z);
    row.add("N_Rk", r->N_Rk, kilonewton);
    row.add("gamma_M1", r->gamma_M1);
    const bool one = rule == MomentFactorRule::one;
    row.add(one ? (y ? "k_yy" : "k_zy") : (y ? "(k_yy/C_my)" : "(k_zy/C_my)"), y ? k.k_yy : k.k_zy);
    row.add(one ? "M_y,Ed" : "(C_my*M_y,Ed)", f.My, kilonewton_metre);
    row.add("M_y,Rk", r->M_y_Rk, kilonewton_metre);
    row.add(one ? (y ? "k_yz" : "k_zz") : (y ? "(k_yz/C_mz)" : "(k_zz/C_mz)"), y ? k.k_yz : k.k_zz);
    row.add(one ? "M_z,Ed" : "(C_mz*M_z,Ed)", f.Mz, kilonewton_metre);
    row.add("M_z,Rk", r->M_z_Rk, kilonewton_metre);
    add_slenderness(y, row);
  }
};

}  // namespace baywork::verify::detail
