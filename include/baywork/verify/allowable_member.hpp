// SPDX-License-Identifier: MIT
// All checks of one aluminium tube by allowable stresses, and the rows that show them.
#pragma once

#include <array>
#include <string_view>

#include <baywork/verify/allowable_tube.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/row.hpp>
#include <baywork/verify/softened_parts.hpp>
#include <baywork/verify/welded_ends.hpp>

namespace baywork::verify::detail {

/// Every check is made section by section, and rises with every force.
struct AllowableMember {
  static constexpr const char* standard = "Aluminum Design Manual 2020";
  static constexpr std::string_view clause_prefix = "ADM 2020 I ";
  const allowable::TubeStrength* r = nullptr;
  allowable::BarStrength b{};
  allowable::SafetyFactors k{};
  double buckling_length = 0;
  bool weld_inside = false;

  Weights weights() const { return {1, 1, 1, 1}; }

  ClauseRow check(Check c, const SectionForces& f, const Place& at) const {
    switch (c) {
      case Check::axial: return allowable::axial(*r, f.N, at.softening, k);
      case Check::bending: return allowable::bending(*r, f, at.softening, k);
      case Check::shear: return allowable::shear(b, f, at.softening, k);
      case Check::torsion: return allowable::torsion(b, f.T, at.softening, k);
      case Check::bending_and_axial: return allowable::bending_and_axial(*r, b, f, at.softening, k);
      case Check::buckling: return allowable::column(b, f.N, k);
      case Check::beam_column:
        return -f.N > no_force * b.column.nominal ? allowable::beam_column(*r, b, f, at.softening, k)
                                                  : interaction_row(0.0, "ADM 2020 I H.1");
      default: break;  // not a check of a bar by itself
    }
    return {};
  }

  static constexpr std::array<Check, 7> section_checks{Check::axial,      Check::bending,           Check::shear,
                                                       Check::torsion,    Check::bending_and_axial, Check::buckling,
                                                       Check::beam_column};
  static constexpr std::array<Check, 0> whole_checks{};

  /// Whether a check rises with every force; and whether it depends on where a section lies, softening apart.
  static constexpr bool rises(Check) { return true; }
  static constexpr bool depends_on_x(Check) { return false; }

  static void take_whole(GreatestForces&, const std::array<double, 6>&, const MemberLoads<double>&, double) {}

  double most(Check c, const SectionForces& f, const Place& at, double) const { return check(c, f, at).utilisation; }

  /// Formula and numbers of a row: r / (k R_n / Omega).
  void explain(Check c, const SectionForces& f, const Place& at, Row& row) const {
    row.reason = allowable::label;
    const double M = resultant(f.My, f.Mz), V = resultant(f.Vy, f.Vz);
    switch (c) {
      case Check::axial: return alone("P_r", magnitude(f.N), kilonewton, "P_n", axial(f, at), row);
      case Check::bending: return alone("M_r", M, kilonewton_metre, "M_n", bending(at), row);
      case Check::shear: return alone("V_r", V, kilonewton, "V_n", allowable::at(b.shear, at.softening), row);
      case Check::torsion:
        return alone("T_r", magnitude(f.T), kilonewton_metre, "T_n", allowable::at(b.torsion, at.softening), row);
      case Check::buckling:
        row.formula = plain_formula;
        add("P_r", magnitude(f.N), kilonewton, "P_n", b.column, true, row);
        return add_slenderness(row);
      case Check::bending_and_axial: {
        row.formula = "{a}/({b}*{c}/{d}) + {e}/({b}*{f}/{g}) + ({h}/({b}*{i}/{j}) + {k}/({b}*{l}/{m}))^2";
        add("P_r", magnitude(f.N), kilonewton, "P_n", axial(f, at), true, row);
        add("M_r", M, kilonewton_metre, "M_n", bending(at), false, row);
        add("V_r", V, kilonewton, "V_n", allowable::at(b.shear, at.softening), false, row);
        add("T_r", magnitude(f.T), kilonewton_metre, "T_n", allowable::at(b.torsion, at.softening), false, row);
        return;
      }
      case Check::beam_column:
        row.formula = "{a}/({b}*{c}/{d}) + {e}/({b}*{f}/{g}*(1 - {h}*{a}/{i}))";
        add("P_r", magnitude(f.N), kilonewton, "P_n", b.column, true, row);
        add("M_r", M, kilonewton_metre, "M_n", bending(at), false, row);
        row.add("alpha", allowable::alpha);
        row.add("P_e", b.P_e, kilonewton);
        return add_slenderness(row);
      default: return;  // not a check of a bar by itself
    }
  }

 private:
  static constexpr const char* plain_formula = "{a}/({b}*{c}/{d})";

  const allowable::Strength& axial(const SectionForces& f, const Place& at) const {
    return allowable::axial_strength(*r, f.N, at.softening);
  }
  const allowable::Strength& bending(const Place& at) const { return allowable::at(r->bending, at.softening); }

  void add(const char* effect, double size, Unit unit, const char* nominal, const allowable::Strength& s, bool with_use,
           Row& row) const {
    row.add(effect, size, unit);
    if (with_use) row.add("k_rep", k.repeated_use);
    row.add(nominal, s.nominal, unit);
    row.add("Omega", s.omega);
  }
  void alone(const char* effect, double size, Unit unit, const char* nominal, const allowable::Strength& s,
             Row& row) const {
    row.formula = plain_formula;
    add(effect, size, unit, nominal, s, true, row);
    row.add("A", r->area, square_millimetre);
    row.add(row.softened ? "F_tyw" : "F_ty", row.softened ? r->metal.F_tyw : r->metal.F_ty, megapascal);
    row.add(row.softened ? "F_tuw" : "F_tu", row.softened ? r->metal.F_tuw : r->metal.F_tu, megapascal);
  }
  void add_slenderness(Row& row) const {
    row.add("kL/r", b.lambda);
    row.add("kL", buckling_length, metre);
    row.add("A", r->area, square_millimetre);
    const bool welded = weld_inside && r->softened_by_welds;
    row.add(welded ? "F_cyw" : "F_cy", welded ? r->metal.F_tyw : r->metal.F_ty, megapascal);
  }
};

/// Bars of faces end where their welds are. A chord carries those of the bars on it some way inside, from the joints
/// that end it, and any bar those across it; any bar those of the joints that its system length `system` passes.
/// `length`: the bar's own; `buckling`: the buckling length.
inline AllowableMember allowable_member(const allowable::TubeStrength& r, const allowable::SafetyFactors& k,
                                        const Frame& frame, const Member& member, double length, const WeldedEnds& ends,
                                        const SoftenedParts& softened, double system, double buckling) {
  const double nodes = baywork::length(frame.nodes[member.to].at - frame.nodes[member.from].at);
  bool inside = system > nodes * (1.0 + 1e-9);
  if (member.address.role == Role::chord)
    inside = inside || larger(ends.start.reach, ends.end.reach) - allowable::weld_extent > 0.05 * buckling;
  inside = inside || softened.inside(0.05 * buckling + allowable::weld_extent);
  return {&r, allowable::bar_strength(r, buckling, length, inside, k), k, buckling, inside};
}

}  // namespace baywork::verify::detail
