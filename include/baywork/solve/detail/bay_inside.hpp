// SPDX-License-Identifier: MIT
// Joints inside a bay, condensed before the chain is solved: their loads go to the stations, their motions come after.
#pragma once

#include <array>
#include <cstddef>

#include <baywork/solve/detail/chain_bays.hpp>
#include <baywork/solve/detail/rigid_arms.hpp>

namespace baywork::detail {

/// What forces f on the inner joints do at motion `outer` (of the first station's unknowns, then the second's):
/// -(to_inner)ᵀ f.
template <class S>
S passed_on(const BayType<S>& t, std::size_t outer, const S* f) {
  const S* const column = t.to_inner.data() + outer * padded(t.inner);
  S sum = S(0);
  for (std::size_t j = 0; j < t.inner; ++j) sum -= S(column[j] * f[j]);
  return sum;
}

/// Adds forces on inner joints to the coordinates r, s, a, r', a' of a step from the near station to the far one:
/// their resultant to r, and -(to_inner)ᵀ f to what the deformations do to the stations' joints, u = (a | R s + a').
template <class S>
void add_inside_forces(const BayType<S>& t, const ChainArms<S>& arms, std::size_t bay, bool near_first, std::size_t n1, std::size_t n2,
                       const S* f, S* h) {
  for (std::size_t j = 0; j < t.inner; j += 6) {
    const Vec3<accurate_t<S>> wide = arms.inside(bay, j / 6, near_first);
    add_resultant(f + j, Vec3<S>{rounded<S>(wide.x), rounded<S>(wide.y), rounded<S>(wide.z)}, h);
  }
  const std::size_t near = near_first ? 0 : n2, far = near_first ? n1 : 0;
  for (std::size_t u = 6; u < n1; ++u) h[6 + u] += passed_on(t, near + u, f);
  const Vec3<S>* const far_arms = arms.plain(near_first ? bay + 1 : bay);
  for (std::size_t u = 0; u < n2; u += 6) {
    std::array<S, 6> v;
    for (std::size_t k = 0; k < 6; ++k) v[k] = passed_on(t, far + u + k, f);
    add_resultant(v.data(), far_arms[u / 6], h + 6);
    if (u > 0)
      for (std::size_t k = 0; k < 6; ++k) h[n1 + 6 + u + k] += v[k];
  }
}

/// Motions of the inner joints counted from the near reference's rigid continuation: held_inner f - to_inner u, with
/// u = (a | R s + a'). `put(j, motion)`.
template <class S, class Put>
void inside_motions(const BayType<S>& t, const ChainArms<S>& arms, std::size_t bay, bool near_first, std::size_t n1, std::size_t n2,
                    const S* f, const std::array<S, 6>& s, const S* near_q, const S* far_q, const Put& put) {
  const std::size_t near = near_first ? 0 : n2, far = near_first ? n1 : 0, ld = padded(t.inner);
  const Vec3<S>* const far_arms = arms.plain(near_first ? bay + 1 : bay);
  for (std::size_t j = 0; j < t.inner; ++j) {
    S sum = S(0);
    if (f != nullptr)
      for (std::size_t k = 0; k < t.inner; ++k) sum += S(t.held_inner[k * ld + j] * f[k]);
    for (std::size_t u = 6; u < n1; ++u) sum -= S(t.to_inner[(near + u) * ld + j] * near_q[u]);
    for (std::size_t u = 0; u < n2; u += 6) {
      const std::array<S, 6> moved = rigid_motion(s, far_arms[u / 6]);
      for (std::size_t k = 0; k < 6; ++k) {
        const S motion = u > 0 ? S(moved[k] + far_q[u + k]) : moved[k];
        sum -= S(t.to_inner[(far + u + k) * ld + j] * motion);
      }
    }
    put(j, sum);
  }
}

}  // namespace baywork::detail
