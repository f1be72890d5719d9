// SPDX-License-Identifier: MIT
// Textbook formulas of simply supported beams and cantilevers, with shear deflection.
//
// Signs: loads and deflections down, reactions up, sagging moments positive. q [N/m], P [N], L [m], EI [N m^2],
// shear stiffness S [N] (infinite: Euler-Bernoulli). Bending parts: W. C. Young and R. G. Budynas, Roark's Formulas for
// Stress and Strain, chapter 8 (values from memory); shear parts: w_shear = M/S wherever supports give no moment
// (dw/dx = V/S and V = dM/dx), derived. Range: small displacements, constant EI and S, any slenderness.
#pragma once

#include <array>

#include <baywork/closed_form/formula.hpp>

namespace baywork::closed_form {

/// The three numbers of a table line.
template <Scalar S = double>
struct BeamFormulas {
  ClosedForm<S> reaction;    ///< the largest one [N]
  ClosedForm<S> moment;      ///< the largest in magnitude, sagging positive [N m]
  ClosedForm<S> deflection;  ///< at mid-span, or at a cantilever's tip [m]
};

namespace detail {
inline constexpr const char* beam_range = "small displacements, constant EI and S";

/// A deflection made of a bending and a shear part.
template <class S>
ClosedForm<S> beam_form(const S& value, const char* formula, std::vector<NamedNumber> numbers, bool valid = true) {
  return {value, valid, formula, beam_range, std::move(numbers)};
}
template <class S>
std::vector<NamedNumber> beam_numbers(const char* load, const S& v, const S& L, const S& EI, const S& shear) {
  require::positive(L, "beam formula", "span");
  require::positive(EI, "beam formula", "bending stiffness");
  if (!is_infinite(shear)) require::positive(shear, "beam formula", "shear stiffness");
  return {{load, value_of(v)}, {"L", value_of(L)}, {"EI", value_of(EI)}, {"S", value_of(shear)}};
}
}  // namespace detail

/// Simply supported, q all along: R = q L/2, M = q L^2/8, w = 5 q L^4/(384 EI) + q L^2/(8 S).
template <Scalar S>
BeamFormulas<S> simple_span_uniform(const S& q, const S& L, const S& EI, const S& shear) {
  const auto n = detail::beam_numbers("q", q, L, EI, shear);
  const S m = S(q * L * L / S(8));
  const S w = S(S(5) * q * detail::fourth(L) / (S(384) * EI) + m * detail::flexibility(shear));
  return {detail::beam_form(S(q * L / S(2)), "{q}*{L}/2", n), detail::beam_form(m, "{q}*{L}^2/8", n),
          detail::beam_form(w, "5*{q}*{L}^4/(384*{EI}) + {q}*{L}^2/(8*{S})", n)};
}

/// Simply supported, from q1 at the left end to q2 at the right: larger of R = (2 q1 + q2) L/6 and (q1 + 2 q2) L/6; the
/// moment and deflection AT MID-SPAN are those of the mean load (the rest is antisymmetric). The largest moment lies
/// beside mid-span where q1 and q2 differ.
template <Scalar S>
BeamFormulas<S> simple_span_trapezoid(const S& q1, const S& q2, const S& L, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("q1", q1, L, EI, shear);
  n.push_back({"q2", value_of(q2)});
  const bool left = value_of(q1) > value_of(q2);
  const S r = left ? S((S(2) * q1 + q2) * L / S(6)) : S((q1 + S(2) * q2) * L / S(6));
  const S m = S((q1 + q2) * L * L / S(16));
  const S w = S(S(5) * (q1 + q2) * detail::fourth(L) / (S(768) * EI) + m * detail::flexibility(shear));
  return {detail::beam_form(r, left ? "(2*{q1} + {q2})*{L}/6" : "({q1} + 2*{q2})*{L}/6", n),
          detail::beam_form(m, "({q1} + {q2})*{L}^2/16", n),
          detail::beam_form(w, "5*({q1} + {q2})*{L}^4/(768*{EI}) + ({q1} + {q2})*{L}^2/(16*{S})", n)};
}

/// Simply supported, n = 1 to 4 equal loads P at the (n + 1)th points (centre, thirds, quarters, fifths):
/// R = n P/2; M = P L/4, P L/3, P L/2, 3 P L/5; w = c P L^3/EI + M/S with c = 1/48, 23/648, 19/384, 63/1000.
/// c is the sum of b (3 L^2 - 4 b^2)/48 over the loads, b the distance to the nearer support (in L).
template <Scalar S>
BeamFormulas<S> simple_span_equal_points(int loads, const S& P, const S& L, const S& EI, const S& shear) {
  struct Row {
    int m_num, m_den, w_num, w_den;
    const char *r, *m, *w;
  };
  static constexpr std::array<Row, 4> rows{{
      {1, 4, 1, 48, "{P}/2", "{P}*{L}/4", "{P}*{L}^3/(48*{EI}) + {P}*{L}/(4*{S})"},
      {1, 3, 23, 648, "{P}", "{P}*{L}/3", "23*{P}*{L}^3/(648*{EI}) + {P}*{L}/(3*{S})"},
      {1, 2, 19, 384, "3*{P}/2", "{P}*{L}/2", "19*{P}*{L}^3/(384*{EI}) + {P}*{L}/(2*{S})"},
      {3, 5, 63, 1000, "2*{P}", "3*{P}*{L}/5", "63*{P}*{L}^3/(1000*{EI}) + 3*{P}*{L}/(5*{S})"},
  }};
  if (loads < 1 || loads > 4)
    fail<BadDescription>("beam formula", std::to_string(loads) + " equal loads", "1 to 4 are accepted");
  const auto n = detail::beam_numbers("P", P, L, EI, shear);
  const Row& row = rows[static_cast<std::size_t>(loads - 1)];
  const S m = S(S(row.m_num) * P * L / S(row.m_den));
  const S w = S(S(row.w_num) * P * detail::cube(L) / (S(row.w_den) * EI) + m * detail::flexibility(shear));
  return {detail::beam_form(S(S(loads) * P / S(2)), row.r, n), detail::beam_form(m, row.m, n),
          detail::beam_form(w, row.w, n)};
}

/// Simply supported, P at a from the left end: R = P (L - a)/L or P a/L, M = P a (L - a)/L, and the deflection UNDER
/// THE LOAD w = P a^2 (L - a)^2/(3 EI L) + P a (L - a)/(S L). Valid for 0 <= a <= L.
template <Scalar S>
BeamFormulas<S> simple_span_point(const S& P, const S& a, const S& L, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("P", P, L, EI, shear);
  n.push_back({"a", value_of(a)});
  const S b = S(L - a);
  const bool valid = value_of(a) >= 0.0 && value_of(b) >= 0.0;
  const bool left = value_of(b) > value_of(a);
  const S m = S(P * a * b / L);
  const S w = S(P * a * a * b * b / (S(3) * EI * L) + m * detail::flexibility(shear));
  const S r = left ? S(P * b / L) : S(P * a / L);
  return {detail::beam_form(r, left ? "{P}*({L} - {a})/{L}" : "{P}*{a}/{L}", n, valid),
          detail::beam_form(m, "{P}*{a}*({L} - {a})/{L}", n, valid),
          detail::beam_form(w, "{P}*{a}^2*({L} - {a})^2/(3*{EI}*{L}) + {P}*{a}*({L} - {a})/({S}*{L})", n, valid)};
}

/// Simply supported, q over the middle c of the span: R = q c/2, M = q c (2 L - c)/8,
/// w = q c (8 L^3 - 4 L c^2 + c^3)/(384 EI) + q c (2 L - c)/(8 S). Valid for 0 <= c <= L.
/// Derived: integral of the centre-load influence x (3 L^2 - 4 x^2)/48 over the loaded length.
template <Scalar S>
BeamFormulas<S> simple_span_middle_part(const S& q, const S& c, const S& L, const S& EI, const S& shear) {
  auto n = detail::beam_numbers("q", q, L, EI, shear);
  n.push_back({"c", value_of(c)});
  const bool valid = value_of(c) >= 0.0 && value_of(c) <= value_of(L);
  const S m = S(q * c * (S(2) * L - c) / S(8));
  const S w = S(q * c * (S(8) * detail::cube(L) - S(4) * L * c * c + detail::cube(c)) / (S(384) * EI) +
                m * detail::flexibility(shear));
  return {detail::beam_form(S(q * c / S(2)), "{q}*{c}/2", n, valid),
          detail::beam_form(m, "{q}*{c}*(2*{L} - {c})/8", n, valid),
          detail::beam_form(w, "{q}*{c}*(8*{L}^3 - 4*{L}*{c}^2 + {c}^3)/(384*{EI}) + {q}*{c}*(2*{L} - {c})/(8*{S})", n,
                            valid)};
}

/// Cantilever, clamped at its root, q all along: R = q L, M = -q L^2/2 at the root,
/// w = q L^4/(8 EI) + q L^2/(2 S) at the tip. The turn of a real root comes on top.
template <Scalar S>
BeamFormulas<S> cantilever_uniform(const S& q, const S& L, const S& EI, const S& shear) {
  const auto n = detail::beam_numbers("q", q, L, EI, shear);
  const S m = S(q * L * L / S(2));
  const S w = S(q * detail::fourth(L) / (S(8) * EI) + m * detail::flexibility(shear));
  return {detail::beam_form(S(q * L), "{q}*{L}", n), detail::beam_form(S(-m), "-{q}*{L}^2/2", n),
          detail::beam_form(w, "{q}*{L}^4/(8*{EI}) + {q}*{L}^2/(2*{S})", n)};
}

/// Cantilever, P at the tip: R = P, M = -P L, w = P L^3/(3 EI) + P L/S.
template <Scalar S>
BeamFormulas<S> cantilever_end_load(const S& P, const S& L, const S& EI, const S& shear) {
  const auto n = detail::beam_numbers("P", P, L, EI, shear);
  const S m = S(P * L);
  const S w = S(P * detail::cube(L) / (S(3) * EI) + m * detail::flexibility(shear));
  return {detail::beam_form(P, "{P}", n), detail::beam_form(S(-m), "-{P}*{L}", n),
          detail::beam_form(w, "{P}*{L}^3/(3*{EI}) + {P}*{L}/{S}", n)};
}

}  // namespace baywork::closed_form
