// SPDX-License-Identifier: MIT
// Shear stiffness of one braced face: force per unit shear strain, from the stretch of its bars.
//
// All by the same virtual work: a face shear of 1 puts the force n in each bar of a panel of length s, and
// 1/S = sum of n^2 l/(E A) over the panel, divided by s. Chords do not count (their stretch is the girder's bending).
// s is always the projection of ONE diagonal on the chord, h the distance of the chord axes, d the diagonal's length.
// EN 1993-1-1, figure 6.9, gives the same stiffnesses with the module `a` of two diagonals (value from memory).
// All: SI units, any girder with many panels; joints may be pinned or rigid (rigid ones add less than the chords'
// own bending). Result in N.
#pragma once

#include <baywork/closed_form/formula.hpp>

namespace baywork::closed_form {

/// d = sqrt(s^2 + h^2) [m]: a diagonal that runs s along the chord and h across the face.
template <Scalar S>
S diagonal_length(const S& s, const S& h) {
  return root(S(s * s + h * h));
}

namespace detail {
inline constexpr const char* braced_range =
    "repeating panels; deformation by stretch of diagonals and cross members only";

template <class S>
void check_face(const S& E, const S& A_diagonal, const S& s, const S& h) {
  require::positive(E, "braced face", "modulus of elasticity");
  require::positive(A_diagonal, "braced face", "area of the diagonal");
  require::positive(s, "braced face", "panel length");
  require::positive(h, "braced face", "face depth");
}
}  // namespace detail

/// Alternating diagonals, with or without posts, and layouts shifted by half a panel between faces:
/// n = d/h in every diagonal, posts carry nothing, S = E Ad s h^2/d^3.
template <Scalar S>
ClosedForm<S> alternating_face_stiffness(const S& E, const S& A_diagonal, const S& s, const S& h) {
  detail::check_face(E, A_diagonal, s, h);
  const S d = diagonal_length(s, h);
  return {
      S(E * A_diagonal * s * h * h / detail::cube(d)),
      true,
      "{E}*{Ad}*{s}*{h}^2/{d}^3",
      detail::braced_range,
      {{"E", value_of(E)}, {"Ad", value_of(A_diagonal)}, {"s", value_of(s)}, {"h", value_of(h)}, {"d", value_of(d)}}};
}

/// All diagonals of one direction, with posts: n = d/h in the diagonal and 1 in the post,
/// 1/S = d^3/(E Ad s h^2) + h/(E Av s).
template <Scalar S>
ClosedForm<S> single_direction_face_stiffness(const S& E, const S& A_diagonal, const S& A_post, const S& s,
                                              const S& h) {
  detail::check_face(E, A_diagonal, s, h);
  require::positive(A_post, "braced face", "area of the post");
  const S d = diagonal_length(s, h);
  const S f = S(detail::cube(d) / (E * A_diagonal * s * h * h) + h / (E * A_post * s));
  return {S(S(1) / f),
          true,
          "1/({d}^3/({E}*{Ad}*{s}*{h}^2) + {h}/({E}*{Av}*{s}))",
          detail::braced_range,
          {{"E", value_of(E)},
           {"Ad", value_of(A_diagonal)},
           {"Av", value_of(A_post)},
           {"s", value_of(s)},
           {"h", value_of(h)},
           {"d", value_of(d)}}};
}

/// Crossed equal diagonals, both active: each carries half of d/h, S = 2 E Ad s h^2/d^3; posts carry nothing.
/// Diagonals that only pull leave one per panel: that is single_direction_face_stiffness.
template <Scalar S>
ClosedForm<S> crossed_face_stiffness(const S& E, const S& A_diagonal, const S& s, const S& h) {
  ClosedForm<S> f = alternating_face_stiffness(E, A_diagonal, s, h);
  f.value = S(S(2) * f.value);
  f.formula = "2*{E}*{Ad}*{s}*{h}^2/{d}^3";
  return f;
}

/// K: from both chords to the middle of the next post, d^2 = s^2 + h^2/4. Both diagonals carry d/h (one pulls, one
/// pushes), each half of the post 1/2: 1/S = 2 d^3/(E Ad s h^2) + h/(4 E Av s).
template <Scalar S>
ClosedForm<S> k_face_stiffness(const S& E, const S& A_diagonal, const S& A_post, const S& s, const S& h) {
  detail::check_face(E, A_diagonal, s, h);
  require::positive(A_post, "braced face", "area of the post");
  const S d = diagonal_length(s, S(h / S(2)));
  const S f = S(S(2) * detail::cube(d) / (E * A_diagonal * s * h * h) + h / (S(4) * E * A_post * s));
  return {S(S(1) / f),
          true,
          "1/(2*{d}^3/({E}*{Ad}*{s}*{h}^2) + {h}/(4*{E}*{Av}*{s}))",
          detail::braced_range,
          {{"E", value_of(E)},
           {"Ad", value_of(A_diagonal)},
           {"Av", value_of(A_post)},
           {"s", value_of(s)},
           {"h", value_of(h)},
           {"d", value_of(d)}}};
}

}  // namespace baywork::closed_form
