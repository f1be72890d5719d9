// SPDX-License-Identifier: MIT
// Textbook formulas of one span with overhanging ends, with shear deflection.
//
// Signs, units, sources and range as in beam_formulas.hpp; L is the span, c an overhang, both [m]. Unequal overhangs
// and other loads: continuous_beam.hpp.
#pragma once

#include <baywork/closed_form/beam_formulas.hpp>

namespace baywork::closed_form {

/// Equal overhangs c on both sides, q on the whole beam.
template <Scalar S = double>
struct OverhangFormulas {
  ClosedForm<S> support_moment;  ///< -q c^2/2
  ClosedForm<S> mid_moment;      ///< q (L^2 - 4 c^2)/8
  ClosedForm<S> mid_deflection;  ///< 5 q L^4/(384 EI) - q c^2 L^2/(16 EI) + q L^2/(8 S)
  ClosedForm<S> tip_deflection;  ///< q c (3 c^3 + 6 c^2 L - L^3)/(24 EI) + q c^2/(2 S)
};

/// The overhang's end moments lift the span, w = -(q c^2/2) L^2/(8 EI), and turn its supports by
/// q c^2 L/(4 EI) - q L^3/(24 EI); the tip adds the cantilever's own q c^4/(8 EI) + q c^2/(2 S). Constant moments shear
/// nothing. Derived here by superposition.
template <Scalar S>
OverhangFormulas<S> overhangs_uniform(const S& q, const S& L, const S& c, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("q", q, L, EI, shear);
  require::not_negative(c, "beam formula", "overhang");
  n.push_back({"c", value_of(c)});
  const S s = detail::flexibility(shear);
  const S L2 = S(L * L);
  const S c2 = S(c * c);
  return {detail::beam_form(S(-q * c2 / S(2)), "-{q}*{c}^2/2", n),
          detail::beam_form(S(q * (L2 - S(4) * c2) / S(8)), "{q}*({L}^2 - 4*{c}^2)/8", n),
          detail::beam_form(S(S(5) * q * L2 * L2 / (S(384) * EI) - q * c2 * L2 / (S(16) * EI) + q * L2 / S(8) * s),
                            "5*{q}*{L}^4/(384*{EI}) - {q}*{c}^2*{L}^2/(16*{EI}) + {q}*{L}^2/(8*{S})", n),
          detail::beam_form(S(q * c * (S(3) * c2 * c + S(6) * c2 * L - L2 * L) / (S(24) * EI) + q * c2 / S(2) * s),
                            "{q}*{c}*(3*{c}^3 + 6*{c}^2*{L} - {L}^3)/(24*{EI}) + {q}*{c}^2/(2*{S})", n)};
}

/// P at the tip of one overhang c: largest reaction P (1 + c/L) at the support beside it (the far one is pulled up by
/// P c/L: it must hold down), M = -P c there, tip w = P c^2 (L + c)/(3 EI) + P c (1 + c/L)/S (span and overhang shear).
template <Scalar S>
BeamFormulas<S> overhang_end_load(const S& P, const S& L, const S& c, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("P", P, L, EI, shear);
  require::not_negative(c, "beam formula", "overhang");
  n.push_back({"c", value_of(c)});
  const S r = S(P * (L + c) / L);
  return {detail::beam_form(r, "{P}*({L} + {c})/{L}", n), detail::beam_form(S(-P * c), "-{P}*{c}", n),
          detail::beam_form(S(P * c * c * (L + c) / (S(3) * EI) + r * c * detail::flexibility(shear)),
                            "{P}*{c}^2*({L} + {c})/(3*{EI}) + {P}*{c}*({L} + {c})/({L}*{S})", n)};
}

}  // namespace baywork::closed_form
