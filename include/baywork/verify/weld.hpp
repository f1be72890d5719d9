// SPDX-License-Identifier: MIT
// The fillet weld of a round tube on another one: line loads, throat and fusion faces, EN 1993-1-8 4.5 and
// EN 1999-1-1 8.6.3.
#pragma once

#include <cmath>
#include <cstdint>
#include <initializer_list>
#include <limits>
#include <string_view>

#include <baywork/core/scalar.hpp>
#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1993_class.hpp>
#include <baywork/verify/en1999_class.hpp>

namespace baywork::verify {

/// The weld all round a brace or cross member. `throat` is the least anywhere on its line, `theta` [rad] the acute
/// angle to the chord. Where the walls meet at less than 60 degrees (the heel of a flat brace) or more than 120 degrees
/// (the sides of a wide one), fillets pass into butt welds: the throat is then what the procedure is shown to give (EN
/// 1993-1-8 4.3.2.1, value from memory).
struct SaddleWeld {
  double d = 0, t = 0;                ///< the brace's outer diameter and wall [m]
  double theta = pi_v<double> / 2.0;  ///< 30 to 90 degrees
  double throat = 0;                  ///< m
};

/// What the tube's wall brings to the weld, per metre of the tube's perimeter [N/m]: n along the tube, v across.
struct LineLoads {
  double n = 0, v = 0;
};

/// n = |N| / (pi d) + 4 M / (pi d²), v = 2 V / (pi d) + 2 |T| / (pi d²): thin ring, so M / (pi r²), the greatest shear
/// flow V / (pi r), and Bredt's T / (2 pi r²). The greatest values are put at one place (safe side). The wall brings no
/// more per metre of weld than per metre of perimeter, as the weld's line is the longer one. That N is spread evenly
/// is not so in a soft chord: EN 1993-1-8 7.3.1 wants the wall's full strength then, see full_strength_throat().
inline LineLoads line_loads(double d, const SectionForces& f) {
  const double perimeter = pi_v<double> * d;
  return {magnitude(f.N) / perimeter + 4.0 * std::hypot(f.My, f.Mz) / (perimeter * d),
          2.0 * std::hypot(f.Vy, f.Vz) / perimeter + 2.0 * magnitude(f.T) / (perimeter * d)};
}

/// Stresses on a plane through or beside a weld [Pa]: normal to it, and in it across and along the weld's line.
struct WeldStress {
  double normal = 0, across = 0, along = 0;
};

/// sqrt(normal² + 3 (across² + along²)), of the directional method in both standards.
inline double equivalent(const WeldStress& s) {
  return std::sqrt(s.normal * s.normal + 3.0 * (s.across * s.across + s.along * s.along));
}

/// The throat halves the angle psi between the walls. n along the brace is n sin(psi/2) normal to it and n cos(psi/2)
/// across, together n sqrt(2 + cos psi) / a: most at the heel, where psi is least and equal to theta; given are the
/// stresses there. At 90 degrees this is the usual sqrt(2 n² + 3 v²) / a. Along the saddle's true line no single force
/// gives more; where its line runs aslant, N with a torque gives up to 1.8 % more. (Hand derivation, tested.)
inline WeldStress throat_stress(const SaddleWeld& w, const LineLoads& l) {
  const double half = 0.5 * w.theta;
  return {l.n * std::sin(half) / w.throat, l.n * std::cos(half) / w.throat, l.v / w.throat};
}

/// The leg of the fillet, along either wall: a / cos(psi / 2) at the heel, where it is shortest; a sqrt(2) at 90
/// degrees.
inline double leg(const SaddleWeld& w) { return w.throat / std::cos(0.5 * w.theta); }

/// Where a weld can fail: in its throat, in the brace's wall at its toe, or where it is fused to brace and chord.
enum class WeldPart : std::uint8_t { throat, toe, face_on_brace, face_on_chord };

/// At the toe the brace's whole wall carries n and v; the fusion face on the brace carries both as shear over the leg;
/// the one on the chord carries n sin(theta) as tension and the rest as shear. All at the heel. (Hand derivation.)
inline WeldStress part_stress(const SaddleWeld& w, const LineLoads& l, WeldPart part) {
  if (part == WeldPart::throat) return throat_stress(w, l);
  if (part == WeldPart::toe) return {l.n / w.t, 0.0, l.v / w.t};
  const double width = leg(w);
  if (part == WeldPart::face_on_brace) return {0.0, l.n / width, l.v / width};
  return {l.n * std::sin(w.theta) / width, l.n * std::cos(w.theta) / width, l.v / width};
}

/// Why a weld is not checked.
enum class WeldScope : std::uint8_t { covered, not_a_tube, angle, thin_throat, short_weld, bad_strength };

inline const char* reason(WeldScope scope) {
  switch (scope) {
    case WeldScope::covered: return "";
    case WeldScope::not_a_tube: return "weld: a diameter, wall or throat is not that of a welded round tube";
    case WeldScope::angle: return "weld: the brace does not meet the chord at 30 to 90 degrees";
    case WeldScope::thin_throat: return "weld: the throat is below 3 mm";
    case WeldScope::short_weld: return "weld: it is too short for its throat to carry load";
    case WeldScope::bad_strength: return "weld: a strength is not known, or a partial factor not positive";
  }
  return "";
}

namespace detail {

inline WeldScope weld_geometry(const SaddleWeld& w, double least_length) {
  constexpr double slack = 1e-9;
  if (!(w.t > 0.0 && 2.0 * w.t < w.d && is_finite(w.d) && w.throat > 0.0 && is_finite(w.throat)))
    return WeldScope::not_a_tube;
  if (!(w.theta >= pi_v<double> / 6.0 - slack && w.theta <= pi_v<double> / 2.0 + slack)) return WeldScope::angle;
  return pi_v<double> * w.d < least_length ? WeldScope::short_weld : WeldScope::covered;
}

inline bool all_positive(std::initializer_list<double> values) {
  for (const double v : values)
    if (!(v > 0.0)) return false;
  return true;
}

inline ClauseRow unwelded_row(double effect, const char* clause) {
  return {std::numeric_limits<double>::infinity(), effect, 0.0, clause};
}

}  // namespace detail
}  // namespace baywork::verify

namespace baywork::en1993 {

/// beta_w of Table 4.1 (value from memory): 0.8, 0.85, 0.9, 1.0 for S235, S275, S355 and S420 up; fy in Pa.
inline double correlation_factor(double fy) {
  const double mpa = fy / 1e6 * (1.0 - 1e-12);
  return mpa <= 235.0 ? 0.8 : mpa <= 275.0 ? 0.85 : mpa <= 355.0 ? 0.9 : 1.0;
}

/// The metal a weld joins: of the weaker part [Pa].
struct WeldMetal {
  double fy = 0, fu = 0;
};

/// Throats of 3 mm and up, 4.5.2 (2); length at least 30 mm and 6 throats, 4.5.1 (2). Values from memory.
inline verify::WeldScope weld_scope(const verify::SaddleWeld& w, const WeldMetal& m,
                                    const PartialFactors& factors = {}) {
  const verify::WeldScope s = verify::detail::weld_geometry(w, larger(0.030, 6.0 * w.throat));
  if (s != verify::WeldScope::covered) return s;
  if (!verify::detail::all_positive({m.fy, m.fu, factors.gamma_M0, factors.gamma_M2}))
    return verify::WeldScope::bad_strength;
  return w.throat < 0.003 * (1.0 - 1e-9) ? verify::WeldScope::thin_throat : verify::WeldScope::covered;
}

/// Directional method, 4.5.3.2 (6) [Pa]: the equivalent stress against fu / (beta_w gamma_M2), and the normal one
/// against 0.9 fu / gamma_M2; the worse of the two. Never raised for the direction of the load.
inline verify::ClauseRow fillet_weld(const verify::WeldStress& s, const WeldMetal& m,
                                     const PartialFactors& factors = {}) {
  const char* clause = "EN 1993-1-8 4.5.3.2 (6)";
  const double fu = m.fu / factors.gamma_M2;
  const verify::ClauseRow whole = verify::compare(equivalent(s), fu / correlation_factor(m.fy), clause);
  const verify::ClauseRow normal = verify::compare(s.normal, 0.9 * fu, clause);
  return normal.utilisation > whole.utilisation ? normal : whole;
}

/// The weld of a brace under its end forces.
inline verify::ClauseRow weld(const verify::SaddleWeld& w, const verify::LineLoads& l, const WeldMetal& m,
                              const PartialFactors& factors = {}) {
  if (weld_scope(w, m, factors) != verify::WeldScope::covered)
    return verify::detail::unwelded_row(l.n, "EN 1993-1-8 4.5.3.2 (6)");
  return fillet_weld(verify::throat_stress(w, l), m, factors);
}

/// The throat [m] at which the weld carries what the tube's wall does, t fy / gamma_M0 per metre: what 7.3.1 (4) asks
/// for unless a smaller weld is justified (value from memory). At 90 degrees 0.92 t in S235.
inline double full_strength_throat(const verify::SaddleWeld& w, const WeldMetal& m,
                                   const PartialFactors& factors = {}) {
  return w.t * m.fy / factors.gamma_M0 * std::sqrt(2.0 + std::cos(w.theta)) * correlation_factor(m.fy) *
         factors.gamma_M2 / m.fu;
}

/// That throat against the weld's own [m].
inline verify::ClauseRow full_strength(const verify::SaddleWeld& w, const WeldMetal& m,
                                       const PartialFactors& factors = {}) {
  const char* clause = "EN 1993-1-8 7.3.1 (4)";
  if (weld_scope(w, m, factors) != verify::WeldScope::covered) return verify::detail::unwelded_row(w.t, clause);
  return verify::compare(full_strength_throat(w, m, factors), w.throat, clause);
}

}  // namespace baywork::en1993

namespace baywork::en1999 {

enum class Filler : std::uint8_t { en_5356, en_4043a };

/// f_w [Pa] of Table 8.8 by parent alloy ("6082") and filler metal; of two alloys the lesser counts. 0 where none is
/// known here. Values from memory.
inline double weld_metal_strength(std::string_view alloy, Filler filler) {
  struct Line {
    std::string_view alloy;
    double en_5356, en_4043a;  ///< MPa
  };
  static constexpr Line lines[] = {{"5083", 240, 0},   {"6005A", 180, 160}, {"6060", 160, 150},
                                   {"6061", 190, 170}, {"6082", 210, 190},  {"7020", 260, 210}};
  for (const Line& l : lines)
    if (l.alloy == alloy) return 1e6 * (filler == Filler::en_5356 ? l.en_5356 : l.en_4043a);
  return 0.0;
}

/// "6082" of a material named "EN AW-6082 T6, ..."; empty for other names.
inline std::string_view alloy_of(const material::Material& m) {
  constexpr std::string_view prefix = "EN AW-";
  const std::string_view name = m.name;
  if (name.substr(0, prefix.size()) != prefix) return {};
  return name.substr(prefix.size(), name.find(' ', prefix.size()) - prefix.size());
}

/// Strengths of the weld and of the softened metal on both sides of it [Pa].
struct WeldMetal {
  double fw = 0;
  double fu_haz_brace = 0, fu_haz_chord = 0;
};

/// A weld shorter than 8 throats carries nothing, 8.6.3.3 (value from memory).
inline verify::WeldScope weld_scope(const verify::SaddleWeld& w, const WeldMetal& m,
                                    const PartialFactors& factors = {}) {
  const verify::WeldScope s = verify::detail::weld_geometry(w, 8.0 * w.throat);
  if (s != verify::WeldScope::covered) return s;
  return verify::detail::all_positive({m.fw, m.fu_haz_brace, m.fu_haz_chord, factors.gamma_Mw})
             ? verify::WeldScope::covered
             : verify::WeldScope::bad_strength;
}

/// The throat, 8.6.3.3 [Pa]: the equivalent stress against f_w / gamma_Mw.
inline verify::ClauseRow fillet_weld(const verify::WeldStress& s, double fw, const PartialFactors& factors = {}) {
  return verify::compare(equivalent(s), fw / factors.gamma_Mw, "EN 1999-1-1 8.6.3.3");
}

/// One part of a weld [Pa]: its throat by 8.6.3.3, or the softened metal beside it by 8.6.3.4,
/// sqrt(sigma² + 3 tau²) against f_u,haz / gamma_Mw (value from memory).
inline verify::ClauseRow weld_part(const verify::SaddleWeld& w, const verify::LineLoads& l, verify::WeldPart part,
                                   const WeldMetal& m, const PartialFactors& factors = {}) {
  const verify::WeldStress s = verify::part_stress(w, l, part);
  if (part == verify::WeldPart::throat) return fillet_weld(s, m.fw, factors);
  const double fu_haz = part == verify::WeldPart::face_on_chord ? m.fu_haz_chord : m.fu_haz_brace;
  return verify::compare(equivalent(s), fu_haz / factors.gamma_Mw, "EN 1999-1-1 8.6.3.4");
}

/// The part of a weld that governs.
inline verify::WeldPart weakest_part(const verify::SaddleWeld& w, const verify::LineLoads& l, const WeldMetal& m,
                                     const PartialFactors& factors = {}) {
  using verify::WeldPart;
  WeldPart worst = WeldPart::throat;
  double most = weld_part(w, l, worst, m, factors).utilisation;
  for (const WeldPart p : {WeldPart::toe, WeldPart::face_on_brace, WeldPart::face_on_chord}) {
    const double u = weld_part(w, l, p, m, factors).utilisation;
    if (!(u > most)) continue;
    most = u;
    worst = p;
  }
  return worst;
}

/// The weld of a brace under its end forces.
inline verify::ClauseRow weld(const verify::SaddleWeld& w, const verify::LineLoads& l, const WeldMetal& m,
                              const PartialFactors& factors = {}) {
  if (weld_scope(w, m, factors) != verify::WeldScope::covered)
    return verify::detail::unwelded_row(l.n, "EN 1999-1-1 8.6.3.3");
  return weld_part(w, l, weakest_part(w, l, m, factors), m, factors);
}

/// The throat [m] at which throat and fusion face of the brace carry what its softened wall does, t f_u,haz / gamma_Mw
/// per metre: the larger of t f_u,haz sqrt(2 + cos theta) / f_w and sqrt(3) t cos(theta / 2). (Hand derivation.)
inline double full_strength_throat(const verify::SaddleWeld& w, const WeldMetal& m) {
  return w.t *
         larger(m.fu_haz_brace * std::sqrt(2.0 + std::cos(w.theta)) / m.fw, std::sqrt(3.0) * std::cos(0.5 * w.theta));
}

}  // namespace baywork::en1999
