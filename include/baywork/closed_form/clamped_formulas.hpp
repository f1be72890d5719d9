// SPDX-License-Identifier: MIT
// Textbook formulas of beams with one or both ends clamped, with shear deflection.
//
// Signs, units, sources and range as in beam_formulas.hpp. f = 12 EI/(S L^2) is zero for a beam without shear strain;
// the shear parts are derived here by the force method on the cantilever or simply supported beam.
#pragma once

#include <baywork/closed_form/beam_formulas.hpp>

namespace baywork::closed_form {

namespace detail {
template <class S>
S shear_ratio(const S& L, const S& EI, const S& shear) {
  return S(S(12) * EI / (L * L) * flexibility(shear));
}
}  // namespace detail

/// Both ends clamped, q all along: R = q L/2, M = -q L^2/12 at the ends (+q L^2/24 at mid-span) whatever S is,
/// w = q L^4/(384 EI) + q L^2/(8 S).
template <Scalar S>
BeamFormulas<S> clamped_span_uniform(const S& q, const S& L, const S& EI, const S& shear) {
  const auto n = detail::beam_numbers("q", q, L, EI, shear);
  const S w = S(q * detail::fourth(L) / (S(384) * EI) + q * L * L / S(8) * detail::flexibility(shear));
  return {detail::beam_form(S(q * L / S(2)), "{q}*{L}/2", n),
          detail::beam_form(S(-q * L * L / S(12)), "-{q}*{L}^2/12", n),
          detail::beam_form(w, "{q}*{L}^4/(384*{EI}) + {q}*{L}^2/(8*{S})", n)};
}

/// Both ends clamped, P at mid-span: R = P/2, M = -P L/8 at the ends (+P L/8 under the load) whatever S is,
/// w = P L^3/(192 EI) + P L/(4 S).
template <Scalar S>
BeamFormulas<S> clamped_span_centre_load(const S& P, const S& L, const S& EI, const S& shear) {
  const auto n = detail::beam_numbers("P", P, L, EI, shear);
  const S w = S(P * detail::cube(L) / (S(192) * EI) + P * L / S(4) * detail::flexibility(shear));
  return {detail::beam_form(S(P / S(2)), "{P}/2", n), detail::beam_form(S(-P * L / S(8)), "-{P}*{L}/8", n),
          detail::beam_form(w, "{P}*{L}^3/(192*{EI}) + {P}*{L}/(4*{S})", n)};
}

/// Both ends clamped, P at a from the left, b = L - a: moment AT THE LEFT END -P a b/(L (1 + f)) (b/L + f/2);
/// the right end's with a and b exchanged. Valid for 0 <= a <= L.
template <Scalar S>
ClosedForm<S> clamped_span_point_left_moment(const S& P, const S& a, const S& L, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("P", P, L, EI, shear);
  const S f = detail::shear_ratio(L, EI, shear);
  const S b = S(L - a);
  n.push_back({"a", value_of(a)});
  n.push_back({"f", value_of(f)});
  const bool valid = value_of(a) >= 0.0 && value_of(b) >= 0.0;
  return detail::beam_form(S(-P * a * b / (L * (S(1) + f)) * (b / L + f / S(2))),
                           "-{P}*{a}*({L} - {a})/({L}*(1 + {f}))*(({L} - {a})/{L} + {f}/2)", n, valid);
}

/// One end clamped, the other simply supported, q all along: reaction AT THE SIMPLE END (3 q L/8) (1 + f/3)/(1 + f/4);
/// the moment at the clamp is R L - q L^2/2. (Here alone the smaller reaction is given: all else follows from it.)
template <Scalar S>
ClosedForm<S> propped_span_uniform_reaction(const S& q, const S& L, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("q", q, L, EI, shear);
  const S f = detail::shear_ratio(L, EI, shear);
  n.push_back({"f", value_of(f)});
  return detail::beam_form(S(S(3) * q * L / S(8) * (S(1) + f / S(3)) / (S(1) + f / S(4))),
                           "3*{q}*{L}/8*(1 + {f}/3)/(1 + {f}/4)", n);
}

/// One end clamped, the other simply supported, P at mid-span: reaction AT THE SIMPLE END (5 P/16) (1 + 2f/5)/(1 +
/// f/4); the moment at the clamp is R L - P L/2.
template <Scalar S>
ClosedForm<S> propped_span_centre_load_reaction(const S& P, const S& L, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("P", P, L, EI, shear);
  const S f = detail::shear_ratio(L, EI, shear);
  n.push_back({"f", value_of(f)});
  return detail::beam_form(S(S(5) * P / S(16) * (S(1) + S(2) * f / S(5)) / (S(1) + f / S(4))),
                           "5*{P}/16*(1 + 2*{f}/5)/(1 + {f}/4)", n);
}

}  // namespace baywork::closed_form
