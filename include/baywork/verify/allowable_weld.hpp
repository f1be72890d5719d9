// SPDX-License-Identifier: MIT
// The fillet all round a tube by allowable stresses: its throat, and the softened metal it is fused to.
#pragma once

#include <cmath>

#include <baywork/verify/allowable_tube.hpp>
#include <baywork/verify/weld.hpp>

namespace baywork::allowable {

/// F_sw [Pa], shear ultimate strength of filler metal in fillets, ADM 2020 I Table J.2.1: 17 ksi of 5356, 11.5 ksi of
/// 4043, along the weld; more across it is left out (safe side). Values from memory, low confidence. 4043A counts as
/// 4043.
inline double filler_shear_strength(en1999::Filler filler) {
  return (filler == en1999::Filler::en_5356 ? 17.0 : 11.5) * 6.894757e6;
}

/// Shear ultimate strengths [Pa]: of the filler, and of the softened metal on both sides, F_suw = 0.6 F_tuw.
struct WeldMetal {
  double F_sw = 0;
  double F_suw_brace = 0, F_suw_chord = 0;
};
inline WeldMetal weld_metal(double F_tuw_brace, double F_tuw_chord, en1999::Filler filler) {
  return {filler_shear_strength(filler), 0.6 * F_tuw_brace, 0.6 * F_tuw_chord};
}

/// J.2.2.1: a fillet shorter than four of its legs counts less, and is not covered here (value from memory).
inline verify::WeldScope weld_scope(const verify::SaddleWeld& w, const WeldMetal& m, const SafetyFactors& k = {}) {
  const verify::WeldScope s = verify::detail::weld_geometry(w, 4.0 * verify::leg(w));
  if (s != verify::WeldScope::covered) return s;
  return verify::detail::all_positive({m.F_sw, m.F_suw_brace, m.F_suw_chord, k.rupture})
             ? verify::WeldScope::covered
             : verify::WeldScope::bad_strength;
}

/// What all that a metre of weld carries is spread over: the throat, or the leg on either side [m].
inline double width_of(const verify::SaddleWeld& w, verify::WeldPart part) {
  return part == verify::WeldPart::throat ? w.throat : verify::leg(w);
}
inline double strength_of(const WeldMetal& m, verify::WeldPart part) {
  if (part == verify::WeldPart::throat) return m.F_sw;
  return part == verify::WeldPart::face_on_chord ? m.F_suw_chord : m.F_suw_brace;
}

/// J.2.2.2: the force per metre as shear, whatever its direction (common practice), sqrt(n² + v²)/a against k_rep
/// F_sw/Omega in the throat and sqrt(n² + v²)/leg against k_rep F_suw/Omega where it is fused to brace and chord. The
/// brace's wall at the toe is the bar's own check beside a weld. Low confidence.
inline verify::ClauseRow weld_part(const verify::SaddleWeld& w, const verify::LineLoads& l, verify::WeldPart part,
                                   const WeldMetal& m, const SafetyFactors& k = {}) {
  return verify::compare(verify::resultant(l.n, l.v) / width_of(w, part),
                         k.repeated_use * strength_of(m, part) / k.rupture, "ADM 2020 I J.2.2");
}

/// The part of a weld that governs: its throat or one of its two legs.
inline verify::WeldPart weakest_part(const verify::SaddleWeld& w, const WeldMetal& m) {
  using verify::WeldPart;
  WeldPart worst = WeldPart::throat;
  const auto carries = [&](WeldPart p) { return width_of(w, p) * strength_of(m, p); };
  for (const WeldPart p : {WeldPart::face_on_brace, WeldPart::face_on_chord})
    if (carries(p) < carries(worst)) worst = p;
  return worst;
}

/// The weld of a brace under its end forces.
inline verify::ClauseRow weld(const verify::SaddleWeld& w, const verify::LineLoads& l, const WeldMetal& m,
                              const SafetyFactors& k = {}) {
  if (weld_scope(w, m, k) != verify::WeldScope::covered)
    return verify::detail::unwelded_row(l.n, "ADM 2020 I J.2.2");
  return weld_part(w, l, weakest_part(w, m), m, k);
}

/// The throat [m] at which throat and legs carry what the brace's softened wall does at rupture, t F_tuw per metre: all
/// have one Omega.
inline double full_strength_throat(const verify::SaddleWeld& w, const WeldMetal& m) {
  const double wall = w.t * m.F_suw_brace / 0.6, lesser = smaller(m.F_suw_brace, m.F_suw_chord);
  return larger(wall / m.F_sw, wall / lesser * std::cos(0.5 * w.theta));
}

}  // namespace baywork::allowable
