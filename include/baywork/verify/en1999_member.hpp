// SPDX-License-Identifier: MIT
// All checks of one aluminium bar by EN 1999-1-1, and the rows that show them.
#pragma once

#include <array>
#include <limits>
#include <string_view>

#include <baywork/verify/en1999_buckling.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/quick_bound.hpp>
#include <baywork/verify/row.hpp>

namespace baywork::verify::detail {

/// Resistances of a bar and what its length makes of them. Checks depend on the section alone (see Place), so that all
/// of them, buckling included, are made section by section.
struct AluminiumMember {
  static constexpr const char* standard = "EN 1999-1-1:2007";
  static constexpr std::string_view clause_prefix = "EN 1999-1-1 ";
  const en1999::BarResistance* r = nullptr;
  en1999::Buckling b{};
  double L_cr_y = 0, L_cr_z = 0;
  double length = 0;
  /// Its ends are ends of its buckling wave about y or z; else a weld may lie anywhere on it (safe side).
  bool wave_y = false, wave_z = false;
  en1999::RoundForm form = en1999::RoundForm::resultant;
  en1999::AxialExponent exponent = en1999::AxialExponent::fixed;

  const QuickBound* quick = nullptr;  ///< where it holds: see at_most()

  Weights weights() const { return weights_of(*r); }

  en1999::BucklingPlace on_wave(const Place& at) const {
    if (at.softening == en1999::Softening::none) return {};  // somewhere the wave has its middle
    const double sine = wave_y || wave_z ? en1999::place_on_wave(at.x, length) : 1.0;
    return {en1999::omega_0(*r, at.softening), wave_y ? sine : 1.0, wave_z ? sine : 1.0};
  }

  ClauseRow check(Check c, const SectionForces& f, const Place& at) const {
    switch (c) {
      case Check::axial: return en1999::axial(*r, f.N, at.softening);
      case Check::bending: return en1999::bending(*r, f, at.softening);
      case Check::shear: return en1999::shear(*r, f, at.softening);
      case Check::torsion: return en1999::torsion(*r, f.T, at.softening);
      case Check::bending_and_axial: return en1999::bending_and_axial(*r, f, at.softening, form);
      case Check::buckling: return en1999::flexural_buckling(*r, b, f.N, on_wave(at));
      case Check::beam_column:
        return -f.N > no_force * r->N_c_Rd ? en1999::beam_column(*r, b, f, on_wave(at), form, exponent)
                                           : interaction_row(0.0, "EN 1999-1-1 6.3.3.1");
      default: break;  // not a check of a bar by itself
    }
    return {};
  }

  static constexpr std::array<Check, 7> section_checks{Check::axial,      Check::bending,           Check::shear,
                                                       Check::torsion,    Check::bending_and_axial, Check::buckling,
                                                       Check::beam_column};
  static constexpr std::array<Check, 0> whole_checks{};

  static void take_whole(GreatestForces&, const std::array<double, 6>&, const MemberLoads<double>&, double) {}

  /// Whether a check rises with every force.
  static constexpr bool rises(Check) { return true; }

  /// Whether a check depends on where a section lies, softening apart.
  bool depends_on_x(Check c) const { return (wave_y || wave_z) && (c == Check::buckling || c == Check::beam_column); }

  /// At least the utilisation under f and under any smaller forces with N of the same sign: all terms rise with them.
  double most(Check c, const SectionForces& f, const Place& at, double) const { return check(c, f, at).utilisation; }

  /// At least the utilisation, in a few operations; infinity where those do not tell.
  double at_most(Check c, const SectionForces& f, const Place& at) const {
    if (quick != nullptr && c == Check::bending_and_axial) return quick->bending_and_axial(f, at.softening);
    const bool whole_omega = at.softening == en1999::Softening::none || !(wave_y || wave_z);
    if (quick != nullptr && c == Check::beam_column && whole_omega) return quick->beam_column(f, b, at.softening);
    return std::numeric_limits<double>::infinity();
  }

  /// Formula and numbers of a row.
  void explain(Check c, const SectionForces& f, const Place& at, Row& row) const {
    switch (c) {
      case Check::axial: return explain_axial(f, at, row);
      case Check::bending: return explain_bending(f, at, row);
      case Check::shear: return explain_shear(f, at, row);
      case Check::torsion: return explain_torsion(f, at, row);
      case Check::bending_and_axial: return explain_interaction(f, at, row);
      case Check::buckling: return explain_buckling(f, at, row);
      case Check::beam_column: return explain_beam_column(f, at, row);
      default: return;  // not a check of a bar by itself
    }
  }

 private:
  bool round() const { return is_round(r->kind); }
  /// Whether two moments count as their resultant; else a round bar prints its moments as other shapes do.
  bool resultant() const { return round() && form == en1999::RoundForm::resultant; }
  double haz(const Place& at) const { return at.softening == en1999::Softening::none ? 1.0 : r->rho_o_haz; }

  void explain_axial(const SectionForces& f, const Place& at, Row& row) const {
    row.formula = "{a}/({b}*{c})";
    row.add("N_Ed", magnitude(f.N), kilonewton);
    row.add("omega_0", en1999::omega_0(*r, at.softening));
    row.add(f.N >= 0.0 ? "N_o,Rd" : "N_c,Rd", f.N >= 0.0 ? r->N_o_Rd : r->N_c_Rd, kilonewton);
    if (f.N < 0.0) row.add("A_eff", r->A_eff, square_millimetre);
    row.add("f_o", r->fo, megapascal);
  }

  void explain_bending(const SectionForces& f, const Place& at, Row& row) const {
    bool about_y = true;
    if (!round())
      about_y = ratio(f.My, en1999::bending_resistance(*r, at.softening, true)) >
                ratio(f.Mz, en1999::bending_resistance(*r, at.softening, false));
    const double omega = en1999::omega_0(*r, at.softening);
    const double M_Rd = en1999::bending_resistance(*r, at.softening, about_y), M_o = about_y ? r->M_y_Rd : r->M_z_Rd;
    const bool fracture = M_Rd < omega * M_o;
    row.formula = round() ? "sqrt(({a})^2 + ({b})^2)/({c}*{d})" : "{a}/({c}*{d})";
    row.add(about_y ? "M_y,Ed" : "M_z,Ed", magnitude(about_y ? f.My : f.Mz), kilonewton_metre);
    row.add(round() ? "M_z,Ed" : "", magnitude(f.Mz), kilonewton_metre);
    row.add("omega_0", fracture ? 1.0 : omega);
    row.add(fracture ? "M_u,Rd" : "M_o,Rd", fracture ? M_Rd : M_o, kilonewton_metre);
    row.add("f_o", r->fo, megapascal);
  }

  /// The factor that a torque leaves, and the torque behind it.
  void add_torsion_factor(double left, Row& row) const {
    row.add(r->kind == ShapeKind::i_shape ? "sqrt(1 - T_Ed/(1.25*T_Rd))" : "(1 - T_Ed/T_Rd)", left);
  }
  void explain_shear(const SectionForces& f, const Place& at, Row& row) const {
    const double t = en1999::torsion(*r, f.T, at.softening).utilisation;
    const double left = en1999::shear_left_by_torsion(r->kind, t);
    const bool one = !round() && r->kind != ShapeKind::solid_rectangle;
    const bool along_y = one && ratio(f.Vy, r->V_y_Rd) >= ratio(f.Vz, r->V_z_Rd);
    row.formula = one       ? "{a}/({b}*{c}*{d})"
                  : round() ? "sqrt(({a})^2 + ({e})^2)/({b}*{c}*{d})"
                            : "sqrt(({a}/({b}*{c}*{d}))^2 + ({e}/({b}*{c}*{f}))^2)";
    row.add(one && !along_y ? "V_z,Ed" : "V_y,Ed", magnitude(one && !along_y ? f.Vz : f.Vy), kilonewton);
    row.add("rho_o,haz", haz(at));
    add_torsion_factor(left, row);
    const char* V_Rd = round() ? "V_Rd" : one && !along_y ? "V_z,Rd" : "V_y,Rd";
    row.add(V_Rd, along_y || (!round() && !one) ? r->V_y_Rd : r->V_z_Rd, kilonewton);
    if (!one) row.add("V_z,Ed", magnitude(f.Vz), kilonewton);
    if (!one && !round()) row.add("V_z,Rd", r->V_z_Rd, kilonewton);
    if (t > 0.0) {
      row.add("T_Ed", magnitude(f.T), kilonewton_metre);
      row.add("T_Rd", haz(at) * r->T_Rd, kilonewton_metre);
    }
  }

  void explain_torsion(const SectionForces& f, const Place& at, Row& row) const {
    row.formula = "{a}/({b}*{c})";
    row.add("T_Ed", magnitude(f.T), kilonewton_metre);
    row.add("rho_o,haz", haz(at));
    row.add("T_Rd", r->T_Rd, kilonewton_metre);
  }

  void explain_interaction(const SectionForces& f, const Place& at, Row& row) const {
    const double V = en1999::shear(*r, f, at.softening).utilisation;
    const double omega = en1999::omega_0(*r, at.softening), left = en1999::strength_left_by_shear(V, r->slender_webs);
    const double N_Rd = f.N >= 0.0 ? r->N_o_Rd : r->N_c_Rd;
    const double n = ratio(f.N, omega * left * N_Rd), my = ratio(f.My, omega * left * r->M_y_Rd),
                 mz = ratio(f.Mz, omega * left * r->M_z_Rd);
    double of_N = r->psi, of_My = 1.0, of_Mz = 1.0;
    if (en1999::detail::is_hollow(r->kind) || en1999::detail::is_solid(r->kind)) {
      row.formula = resultant() ? "({a}/({b}*{c}*{d}))^{e} + (sqrt(({f})^2 + ({h})^2)/({b}*{c}*{g}))^1.02"
                                : "({a}/({b}*{c}*{d}))^{e} + (({f}/({b}*{c}*{g}))^1.7 + ({h}/({b}*{c}*{i}))^1.7)^0.6";
    } else if (r->kind == ShapeKind::i_shape) {
      using en1999::detail::power;
      const bool in_plane = power(n, r->xi_0) + my >= power(n, r->eta_0) + power(my, r->gamma_0) + power(mz, r->xi_0);
      row.formula = in_plane ? "({a}/({b}*{c}*{d}))^{e} + {f}/({b}*{c}*{g})"
                             : "({a}/({b}*{c}*{d}))^{e} + ({f}/({b}*{c}*{g}))^{j} + ({h}/({b}*{c}*{i}))^{k}";
      of_N = in_plane ? r->xi_0 : r->eta_0;
      of_My = r->gamma_0;
      of_Mz = r->xi_0;
    } else {
      row.formula = "{a}/({b}*{c}*{d}) + {f}/({b}*{c}*{g}) + {h}/({b}*{c}*{i})";
    }
    row.add("N_Ed", magnitude(f.N), kilonewton);
    row.add("omega_0", omega);
    row.add("(f_o,V/f_o)", left);
    row.add(f.N >= 0.0 ? "N_o,Rd" : "N_c,Rd", N_Rd, kilonewton);
    row.add(r->kind == ShapeKind::i_shape ? "xi" : "psi", of_N);
    row.add("M_y,Ed", magnitude(f.My), kilonewton_metre);
    row.add(resultant() ? "M_Rd" : "M_y,Rd", r->M_y_Rd, kilonewton_metre);
    row.add("M_z,Ed", magnitude(f.Mz), kilonewton_metre);
    row.add(resultant() ? "" : "M_z,Rd", r->M_z_Rd, kilonewton_metre);
    const bool i_shape = r->kind == ShapeKind::i_shape;
    row.add(i_shape ? "gamma_0" : "", of_My);
    row.add(i_shape ? "xi_0" : "", of_Mz);
    if (left < 1.0) row.add("V_Ed/V_Rd", V);
  }

  struct Axis {
    double chi, kappa, lambda, L_cr, N_cr, omega_x;
  };
  Axis weaker_axis(const en1999::BucklingPlace& at) const {
    return axis(en1999::buckling_resistance(*r, b, at, true) < en1999::buckling_resistance(*r, b, at, false), at);
  }
  Axis axis(bool y, const en1999::BucklingPlace& at) const {
    if (y) return {b.chi_y, b.kappa_y, b.lambda_y, L_cr_y, b.N_cr_y, en1999::omega_x(at.omega_0, b.chi_y, at.sine_y)};
    return {b.chi_z, b.kappa_z, b.lambda_z, L_cr_z, b.N_cr_z, en1999::omega_x(at.omega_0, b.chi_z, at.sine_z)};
  }
  void add_buckling(const SectionForces& f, const Axis& axis, Row& row) const {
    row.add("N_Ed", f.N < 0.0 ? -f.N : 0.0, kilonewton);
    row.add("kappa", axis.kappa);
    row.add("chi", axis.chi);
    row.add("omega_x", axis.omega_x);
    row.add(r->welded_along ? "(A_eff*f_o/gamma_M1)" : "N_c,Rd", r->N_eff_Rd, kilonewton);
  }
  void add_slenderness(const Axis& axis, Row& row) const {
    row.add("lambda", axis.lambda);
    row.add("L_cr", axis.L_cr, metre);
    row.add("N_cr", axis.N_cr, kilonewton);
  }

  void explain_buckling(const SectionForces& f, const Place& at, Row& row) const {
    const Axis axis = weaker_axis(on_wave(at));
    row.formula = "{a}/({b}*{c}*{d}*{e})";
    add_buckling(f, axis, row);
    add_slenderness(axis, row);
    if (r->welded_along) row.add("A_1/A", r->softened_share);
  }

  void explain_beam_column(const SectionForces& f, const Place& at, Row& row) const {
    using en1999::axial_exponent;
    using en1999::detail::power;
    const en1999::BucklingPlace p = on_wave(at);
    Axis governing = weaker_axis(p);
    double psi_c = 0.8, xi_zc = 0.8;
    const bool i_shape = r->kind == ShapeKind::i_shape;
    if (en1999::detail::is_hollow(r->kind)) {
      row.formula = resultant() ? "({a}/({b}*{c}*{d}*{e}))^{k} + (sqrt(({f})^2 + ({h})^2)/{g})^1.02/{j}"
                                : "({a}/({b}*{c}*{d}*{e}))^{k} + (({f}/{g})^1.7 + ({h}/{i})^1.7)^0.6/{j}";
      const double psi_y = axial_exponent(exponent, r->psi, b.chi_y), psi_z = axial_exponent(exponent, r->psi, b.chi_z);
      const auto term = [&](bool y, double psi) {
        return power(ratio(f.N, en1999::buckling_resistance(*r, b, p, y)), psi);
      };
      const bool y = term(true, psi_y) > term(false, psi_z);
      governing = axis(y, p);
      psi_c = y ? psi_y : psi_z;
    } else if (i_shape) {
      const auto n = [&](bool y) { return ratio(f.N, en1999::buckling_resistance(*r, b, p, y)); };
      const double my = ratio(f.My, r->M_y_Rd) / p.omega_0, mz = ratio(f.Mz, r->M_z_Rd) / p.omega_0;
      const double xi_yc = axial_exponent(exponent, r->xi_0, b.chi_y);
      const double eta_c = axial_exponent(exponent, r->eta_0, b.chi_z);
      xi_zc = axial_exponent(exponent, r->xi_0, b.chi_z);
      const bool about_y =
          power(n(true), xi_yc) + my >= power(n(false), eta_c) + power(my, r->gamma_0) + power(mz, xi_zc);
      row.formula = about_y ? "({a}/({b}*{c}*{d}*{e}))^{k} + {f}/({j}*{g})"
                            : "({a}/({b}*{c}*{d}*{e}))^{k} + ({f}/({j}*{g}))^{l} + ({h}/({j}*{i}))^{m}";
      governing = axis(about_y, p);
      psi_c = about_y ? xi_yc : eta_c;
    } else {
      row.formula = "({a}/({b}*{c}*{d}*{e}))^{k} + ({f}/({j}*{g}))^0.8 + ({h}/({j}*{i}))^0.8";
    }
    add_buckling(f, governing, row);
    row.add("M_y,Ed", magnitude(f.My), kilonewton_metre);
    row.add(resultant() ? "M_Rd" : "M_y,Rd", r->M_y_Rd, kilonewton_metre);
    row.add("M_z,Ed", magnitude(f.Mz), kilonewton_metre);
    row.add(resultant() ? "" : "M_z,Rd", r->M_z_Rd, kilonewton_metre);
    row.add("omega_0", p.omega_0);
    row.add(i_shape ? "eta_c" : "psi_c", psi_c);
    row.add(i_shape ? "gamma_0" : "", r->gamma_0);
    row.add(i_shape ? "xi_zc" : "", xi_zc);
    add_slenderness(governing, row);
  }
};

}  // namespace baywork::verify::detail
