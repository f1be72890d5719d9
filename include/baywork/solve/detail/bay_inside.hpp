// SPDX-License-Identifier: MIT
// Joints inside a bay, condensed before the chain is solved: their loads go to the stations, their motions come after.
#pragma once

#include <cstddef>

#include <baywork/solve/detail/chain_bays.hpp>

namespace baywork::detail {

/// What forces f on the inner joints amount to at the stations' joints: -(to_inner)ᵀ f, added to theirs.
template <class S>
void pass_on(const BayType<S>& t, std::size_t n1, std::size_t n2, const S* f, S* first, S* second) {
  const std::size_t ld = padded(t.inner);
  for (std::size_t u = 0; u < n1 + n2; ++u) {
    S sum = S(0);
    for (std::size_t j = 0; j < t.inner; ++j) sum += S(t.to_inner[u * ld + j] * f[j]);
    (u < n1 ? first[u] : second[u - n1]) -= sum;
  }
}

/// Motions of the inner joints, from the forces on them and the motions of the stations' joints (all counted from one
/// rigid motion): held_inner f - to_inner u.
template <class S>
void inside_motions(const BayType<S>& t, std::size_t n1, std::size_t n2, const S* f, const S* first, const S* second, S* out) {
  const std::size_t ld = padded(t.inner);
  for (std::size_t j = 0; j < t.inner; ++j) out[j] = S(0);
  for (std::size_t k = 0; k < t.inner; ++k)
    for (std::size_t j = 0; j < t.inner; ++j) out[j] += S(t.held_inner[k * ld + j] * f[k]);
  for (std::size_t u = 0; u < n1 + n2; ++u) {
    const S motion = u < n1 ? first[u] : second[u - n1];
    for (std::size_t j = 0; j < t.inner; ++j) out[j] -= S(t.to_inner[u * ld + j] * motion);
  }
}

}  // namespace baywork::detail
