// SPDX-License-Identifier: MIT
// Two equal spans under a uniform load: what the middle support takes when supports give way, and when it goes slack.
#pragma once

#include <baywork/closed_form/beam_formulas.hpp>

namespace baywork::closed_form {

/// Supports of two equal spans: springs [N/m] (infinite: rigid), and how far the middle one's foot is lowered [m].
template <Scalar S = double>
struct TwoSpanSupports {
  S end_stiffness = S(rigid_stiffness);  ///< each end
  S middle_stiffness = S(rigid_stiffness);
  S middle_lowered = S(0);  ///< below the line through the two ends' feet
};

template <Scalar S = double>
struct TwoSpanAnswer {
  ClosedForm<S> middle_reaction;  ///< up [N]; valid while it does not pull down (slings and rests only push up)
  ClosedForm<S> end_reaction;     ///< each, q l - R/2 [N]
  ClosedForm<S> slack_lowering;   ///< the lowering at which the middle support goes slack [m]
};

/// Spans l, uniform load q on both. Without the middle support the beam's middle sinks by
///   d0 = 5 q (2l)^4/(384 EI) + q (2l)^2/(8 S) + q l/k_end;
/// unit reaction lifts it by f = (2l)^3/(48 EI) + 2l/(4 S) + 1/(2 k_end). With its own spring and lowered foot:
///   R = (d0 - lowered)/(f + 1/k_mid); slack from lowered = d0 on. Loads and lowering down, reactions up, SI units.
/// Limits: R = 5 (2 q l)/8 rigid without shear strain; R = q l for S -> 0. Source: derived here (force method).
template <Scalar S>
TwoSpanAnswer<S> two_equal_spans_uniform(const S& q, const S& l, const S& EI, const S& shear,
                                         const TwoSpanSupports<S>& supports = {}) {
  auto n = detail::beam_numbers("q", q, l, EI, shear);
  n[1].name = "l";
  for (const S& k : {supports.end_stiffness, supports.middle_stiffness})
    if (!is_infinite(k)) require::positive(k, "two spans", "stiffness of a support");
  require::finite(supports.middle_lowered, "two spans", "lowering of the middle support");
  n.push_back({"ke", value_of(supports.end_stiffness)});
  n.push_back({"km", value_of(supports.middle_stiffness)});
  n.push_back({"lowered", value_of(supports.middle_lowered)});
  const S L = S(S(2) * l);
  const S s = detail::flexibility(shear);
  const S e = detail::flexibility(supports.end_stiffness);
  const S d0 = S(S(5) * q * detail::fourth(L) / (S(384) * EI) + q * L * L / S(8) * s + q * l * e);
  const S f = S(detail::cube(L) / (S(48) * EI) + L / S(4) * s + e / S(2));
  const S R = S((d0 - supports.middle_lowered) / (f + detail::flexibility(supports.middle_stiffness)));
  const bool pushes = value_of(R) >= 0.0;
  n.push_back({"d0", value_of(d0)});
  n.push_back({"R", value_of(R)});
  const char* const range = "two equal spans; the middle support pushes up";
  return {{R, pushes, "({d0} - {lowered})/((2*{l})^3/(48*{EI}) + 2*{l}/(4*{S}) + 1/{km} + 1/(2*{ke}))", range, n},
          {S(q * l - R / S(2)), pushes, "{q}*{l} - {R}/2", range, n},
          {d0, true, "5*{q}*(2*{l})^4/(384*{EI}) + {q}*(2*{l})^2/(8*{S}) + {q}*{l}/{ke}", detail::beam_range, n}};
}

}  // namespace baywork::closed_form
