// SPDX-License-Identifier: MIT
// What the rows of all connectors share: the chord they join, forces, strengths of their metal, how a row is written.
#pragma once

#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <string_view>
#include <vector>

#include <baywork/girder/bar.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/designed_weld.hpp>
#include <baywork/verify/pin.hpp>
#include <baywork/verify/row.hpp>

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
  row.take(answer);
  row.formula = formula;
  row.reason = remark;
  for (const Number& n : numbers) row.add(n.symbol, n.value, n.unit);
  at.out.push_back(row);
  return at.out.back();
}

/// The fillet all round between connector and chord, a tube that ends on it at a right angle: as the welds of bars.
/// `thickness` of the part that the chord is welded to.
inline DesignedWeld splice_weld(const SpliceSite& at, const material::Material& part, double thickness, double throat) {
  const Bar& c = at.chord;
  return designed_weld({c.section.height, c.section.wall, pi_v<double> / 2.0, throat}, {c.material, c.strength},
                       {part, material::strength(part, thickness)}, at.basis);
}
inline const char* splice_weld_outside(const SpliceSite& at, const material::Material& part, double thickness,
                                       double throat) {
  if (at.chord.section.kind != ShapeKind::round_tube) return "splice: the chord is not a round tube";
  if (at.chord.material.family != part.family)
    return "splice: connector and chord are of different metals and cannot be welded";
  return splice_weld(at, part, thickness, throat).outside;
}
inline void add_splice_weld(const SpliceSite& at, const material::Material& part, double thickness, double throat,
                            const SectionForces& f) {
  const DesignedWeld weld = splice_weld(at, part, thickness, throat);
  const LineLoads l = line_loads(weld.geometry.d, f);
  Row& row = add_row(at, weld.check(l, at.basis), "", {}, "weld between connector and chord");
  weld.explain(l, at.basis, row);
  row.add("N", f.N, kilonewton);
  row.add("M", std::hypot(f.My, f.Mz), kilonewton_metre);
}

}  // namespace baywork::verify::detail
