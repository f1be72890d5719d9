// SPDX-License-Identifier: MIT
// The fillet all round a tube with the metals that it joins: what the welds of joints and of splices are checked with.
#pragma once

#include <baywork/material/material.hpp>
#include <baywork/verify/allowable_weld.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/row.hpp>
#include <baywork/verify/standards.hpp>
#include <baywork/verify/weld.hpp>

namespace baywork::verify::detail {

/// By EN 1999-1-1 or EN 1993-1-8, or of aluminium by allowable stresses.
struct DesignedWeld {
  SaddleWeld geometry{};
  bool aluminium = false, by_stress = false;
  allowable::WeldMetal allowable{};
  en1999::WeldMetal alloy{};
  en1993::WeldMetal steel{};
  const char* outside = "";

  ClauseRow check(const LineLoads& l, const Basis& b) const {
    if (by_stress) return allowable::weld(geometry, l, allowable, b.allowable);
    return aluminium ? en1999::weld(geometry, l, alloy, b.aluminium) : en1993::weld(geometry, l, steel, b.steel);
  }
  double full_strength_throat(const Basis& b) const {
    if (by_stress) return allowable::full_strength_throat(geometry, allowable);
    return aluminium ? en1999::full_strength_throat(geometry, alloy)
                     : en1993::full_strength_throat(geometry, steel, b.steel);
  }
  /// Formula and numbers of a row of check(). The normal stress alone never governs a throat, where at the heel the
  /// one across is as great or greater.
  void explain(const LineLoads& l, const Basis& b, Row& row) const {
    if (by_stress) return explain_allowable(l, b, row);
    const WeldPart part = aluminium ? en1999::weakest_part(geometry, l, alloy, b.aluminium) : WeldPart::throat;
    const WeldStress s = part_stress(geometry, l, part);
    row.formula = "sqrt(({a})^2 + 3*({b})^2 + 3*({c})^2)/{d}";
    row.add("sigma", s.normal, megapascal);
    row.add("tau", s.across, megapascal);
    row.add("tau_par", s.along, megapascal);
    row.add(!aluminium                 ? "(f_u/(beta_w*gamma_M2))"
            : part == WeldPart::throat ? "(f_w/gamma_Mw)"
                                       : "(f_u,haz/gamma_Mw)",
            row.resistance, megapascal);
    row.add("a", geometry.throat, metre);
  }
  const char* standard() const {
    return by_stress ? "Aluminum Design Manual 2020" : aluminium ? "EN 1999-1-1:2007" : "EN 1993-1-8:2005";
  }

 private:
  void explain_allowable(const LineLoads& l, const Basis& b, Row& row) const {
    const WeldPart part = allowable::weakest_part(geometry, allowable);
    const double width = allowable::width_of(geometry, part);
    row.reason = allowable::label;
    row.formula = "sqrt(({a})^2 + ({b})^2)/({c}*{d}/{e})";
    row.add("n/w", l.n / width, megapascal);
    row.add("v/w", l.v / width, megapascal);
    row.add("k_rep", b.allowable.repeated_use);
    row.add(part == WeldPart::throat ? "F_sw" : "F_suw", allowable::strength_of(allowable, part), megapascal);
    row.add("Omega", b.allowable.rupture);
    row.add(part == WeldPart::throat ? "w = a" : "w = leg", width, metre);
    row.add("a", geometry.throat, metre);
  }
};

/// One of two parts that are welded together, and its strengths at its own thickness.
struct WeldedPart {
  const material::Material& metal;
  const material::StrengthStep& strength;
};

/// `tube` ends on `other`; both are of steel or both of aluminium.
inline DesignedWeld designed_weld(const SaddleWeld& geometry, const WeldedPart& tube, const WeldedPart& other,
                                  const Basis& b, Standards which = Standards::by_material) {
  DesignedWeld out;
  out.geometry = geometry;
  out.aluminium = tube.metal.family == material::Family::aluminium;
  const material::StrengthStep &s = tube.strength, &o = other.strength;
  out.by_stress = which == Standards::allowable_stress;
  if (out.by_stress) {
    out.allowable = allowable::weld_metal(s.haz_ultimate, o.haz_ultimate, b.joints.filler);
    out.outside = out.aluminium ? reason(allowable::weld_scope(geometry, out.allowable, b.allowable))
                                : "weld: allowable stresses are given for aluminium alone";
  } else if (out.aluminium) {
    const double fw = smaller(en1999::weld_metal_strength(en1999::alloy_of(tube.metal), b.joints.filler),
                              en1999::weld_metal_strength(en1999::alloy_of(other.metal), b.joints.filler));
    out.alloy = {fw, s.haz_ultimate, o.haz_ultimate};
    out.outside = reason(en1999::weld_scope(geometry, out.alloy, b.aluminium));
  } else {
    // of the weaker part; of equals beta_w of the one that yields later, which is the greater
    const double fy = s.ultimate == o.ultimate ? larger(s.yield, o.yield) : s.ultimate < o.ultimate ? s.yield : o.yield;
    out.steel = {fy, smaller(s.ultimate, o.ultimate)};
    out.outside = reason(en1993::weld_scope(geometry, out.steel, b.steel));
  }
  return out;
}

}  // namespace baywork::verify::detail
