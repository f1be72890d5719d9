// SPDX-License-Identifier: MIT
// What the rows of all connectors share: the chord they join, forces, strengths of their metal, how a row is written.
#pragma once

#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <limits>
#include <string_view>
#include <vector>

#include <baywork/girder/bar.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/pin.hpp>
#include <baywork/verify/row.hpp>
#include <baywork/verify/weld.hpp>

namespace baywork::verify::detail {

/// What one connector is checked with: its chord, the basis and where its rows go.
struct SpliceSite {
  const Bar& chord;
  const Basis& basis;
  std::vector<Row>& out;
};

/// One metal where a connector needs it [Pa].
struct PartStrength {
  double fy = 0, fu = 0;  ///< fo for fy where aluminium; beside a weld the softened ones
  double f = 0;           ///< fy / gamma_M0, fo / gamma_M1
};

inline bool is_aluminium(const material::Material& m) { return m.family == material::Family::aluminium; }

inline PartStrength part_strength(const material::Material& m, double thickness, bool softened, const Basis& b) {
  const material::StrengthStep& s = material::strength(m, thickness);
  PartStrength out;
  out.fy = softened ? s.haz_yield : s.yield;
  out.fu = softened ? s.haz_ultimate : s.ultimate;
  out.f = out.fy / (is_aluminium(m) ? b.aluminium.gamma_M1 : b.steel.gamma_M0);
  return out;
}
inline double gamma_M2(const material::Material& m, const Basis& b) {
  return is_aluminium(m) ? b.aluminium.gamma_M2 : b.steel.gamma_M2;
}
inline PinRules pin_rules(const material::Material& plates, const Basis& b) {
  return is_aluminium(plates) ? en1999::pin_rules(b.aluminium, b.steel.gamma_M6_ser) : en1993::pin_rules(b.steel);
}

/// Why a metal's strength is not known; empty where it is.
inline const char* unknown_metal(std::initializer_list<const material::Material*> parts) {
  for (const material::Material* m : parts) {
    if (m->family == material::Family::other) return "splice: a part is neither of steel nor of aluminium";
    if (m->steps.empty()) return "splice: the strength of a part is not known";
  }
  return "";
}

/// Adds a row: the clause's answer, the formula that recomputes it, its numbers. Clauses name their standard first.
inline Row& add_row(const SpliceSite& at, const ClauseRow& answer, const char* formula,
                    std::initializer_list<Number> numbers, const char* remark = "") {
  constexpr std::size_t standard = std::string_view("EN 1993-1-8 ").size();
  const std::string_view clause = answer.clause;
  Row row;
  row.standard = clause.substr(0, standard) == "EN 1999-1-1 "   ? "EN 1999-1-1:2007"
                 : clause.substr(0, standard) == "EN 1993-1-1 " ? "EN 1993-1-1:2005"
                                                                : "EN 1993-1-8:2005";
  row.clause = answer.clause + standard;
  row.check = Check::splice;
  row.demand = answer.effect;
  row.resistance = answer.resistance;
  row.utilisation = answer.utilisation;
  row.formula = formula;
  row.reason = remark;
  for (const Number& n : numbers) row.add(n.symbol, n.value, n.unit);
  at.out.push_back(row);
  return at.out.back();
}

/// The fillet all round between connector and chord, a tube that ends on it at a right angle: as the welds of bars.
inline const char* splice_weld_outside(const SpliceSite& at, const material::Material& part, double throat) {
  const Bar& c = at.chord;
  if (c.section.kind != ShapeKind::round_tube) return "splice: the chord is not a round tube";
  if (c.material.family != part.family)
    return "splice: connector and chord are of different metals and cannot be welded";
  const SaddleWeld w{c.section.height, c.section.wall, pi_v<double> / 2.0, throat};
  if (is_aluminium(part)) {
    const double fw = smaller(en1999::weld_metal_strength(en1999::alloy_of(c.material), at.basis.joints.filler),
                              en1999::weld_metal_strength(en1999::alloy_of(part), at.basis.joints.filler));
    return reason(en1999::weld_scope(w, {fw, c.strength.haz_ultimate, c.strength.haz_ultimate}, at.basis.aluminium));
  }
  return reason(en1993::weld_scope(w, {c.strength.yield, c.strength.ultimate}, at.basis.steel));
}

/// `thickness` of the part that the chord is welded to.
inline void add_splice_weld(const SpliceSite& at, const material::Material& part, double thickness, double throat,
                            const SectionForces& f) {
  const Bar& c = at.chord;
  const SaddleWeld w{c.section.height, c.section.wall, pi_v<double> / 2.0, throat};
  const LineLoads l = line_loads(w.d, f);
  const material::StrengthStep& other = material::strength(part, thickness);
  WeldPart where = WeldPart::throat;
  ClauseRow answer;
  if (is_aluminium(part)) {
    const double fw = smaller(en1999::weld_metal_strength(en1999::alloy_of(c.material), at.basis.joints.filler),
                              en1999::weld_metal_strength(en1999::alloy_of(part), at.basis.joints.filler));
    const en1999::WeldMetal metal{fw, c.strength.haz_ultimate, other.haz_ultimate};
    where = en1999::weakest_part(w, l, metal, at.basis.aluminium);
    answer = en1999::weld(w, l, metal, at.basis.aluminium);
  } else {
    const bool weaker = other.ultimate < c.strength.ultimate;
    answer = en1993::weld(
        w, l, {weaker ? other.yield : c.strength.yield, weaker ? other.ultimate : c.strength.ultimate}, at.basis.steel);
  }
  const WeldStress s = part_stress(w, l, where);
  // the normal stress alone never governs a fillet at a right angle: there both parts of n are alike
  add_row(at, answer, "sqrt(({a})^2 + 3*({b})^2 + 3*({c})^2)/{d}",
          {{"sigma", s.normal, megapascal},
           {"tau", s.across, megapascal},
           {"tau_par", s.along, megapascal},
           {"f_w,Rd", answer.resistance, megapascal},
           {"a", throat, metre},
           {"N", f.N, kilonewton},
           {"M", std::hypot(f.My, f.Mz), kilonewton_metre}},
          "weld between connector and chord");
}

}  // namespace baywork::verify::detail
