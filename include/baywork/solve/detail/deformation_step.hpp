// SPDX-License-Identifier: MIT
// One step along a chain in deformation coordinates: the matrix from which a station's coordinates are eliminated.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include <baywork/solve/detail/chain_ground.hpp>
#include <baywork/solve/detail/deformed_bay.hpp>
#include <baywork/solve/detail/rigid_arms.hpp>

namespace baywork::detail {

/// One eliminated station's coordinates: r (6), s (6), a (n1 - 6), r' (6), a' (n2 - 6), of which r and s stand for the
/// same. For most stations e = (s, a) is eliminated; a held or sprung motion is its own coordinate instead:
///   a_p = y - R_p r           at a joint beside the reference,
///   s = r' - T r, with r = y  at the reference itself,
/// so a stiff spring or a rigid support is never part of a difference. What is left of r is r = T⁻¹ (r' - s).
/// Each substitution adds multiples of one row and column to others: `each(target, source, factor)`.
template <class S, class Each>
void substitute(const GroundTie<S>* tie, const GroundTie<S>* end, std::size_t n1, const Vec3<S>* arms, const Vec3<S>* step, const Each& each) {
  std::array<Term<S>, 3> terms;
  std::array<bool, 6> own{};
  for (; tie != end; ++tie) {
    if (tie->kind == GroundTie<S>::Kind::idle) continue;
    const std::size_t u = tie->unknown;
    if (u < 6) {
      own[u] = true;
      continue;
    }
    const std::size_t count = rigid_terms(u % 6, arms[u / 6], terms);
    for (std::size_t t = 0; t < count; ++t) each(terms[t].of, 6 + u, S(-terms[t].factor));
  }
  if (step == nullptr) return;  // the meeting station keeps its r
  const std::size_t far = n1 + 6;
  for (std::size_t k = 0; k < 6; ++k) {
    if (!own[k]) continue;
    each(far + k, 6 + k, S(1));
    const std::size_t count = rigid_terms(k, *step, terms);
    for (std::size_t t = 0; t < count; ++t) each(terms[t].of, 6 + k, S(-terms[t].factor));
  }
  for (std::size_t k = 0; k < 6; ++k) {  // displacements before rotations: they are made of them
    if (own[k]) continue;
    each(far + k, k, S(1));
    each(6 + k, k, S(-1));
    const std::size_t count = rigid_terms(k, *step, terms);
    for (std::size_t t = 1; t < count; ++t) each(terms[t].of, k, S(-terms[t].factor));
  }
}

/// Which coordinate stands for each motion of the reference: its own (r) where it is tied, else s.
template <class S>
std::array<std::size_t, 6> slots(const GroundTie<S>* tie, const GroundTie<S>* end) {
  std::array<std::size_t, 6> slot{6, 7, 8, 9, 10, 11};
  for (; tie != end; ++tie)
    if (tie->unknown < 6 && tie->kind != GroundTie<S>::Kind::idle) slot[tie->unknown] = tie->unknown;
  return slot;
}

/// K of e = (s, a) and k = (r', a'): the bay's, and the state's with r = T⁻¹ (r' - s):
///   P = T⁻ᵀ S_rr T⁻¹, Q = T⁻ᵀ S_ra;  ss += P, as -= Qᵀ, aa += S_aa, r's -= P, r'a += Q, r'r' += P.
template <class S>
void plain_step(const GroundTie<S>* tie, const GroundTie<S>* end, const Vec3<S>& d, const DeformedBay<S>& bay, const S* s, std::size_t lds, std::vector<S>& k) {
  const std::size_t n1 = bay.n1, ld = bay.ld;
  k = bay.k;
  for (std::size_t c = 6; c < n1; ++c)
    for (std::size_t r = c; r < n1; ++r) k[c * ld + r] += s[c * lds + r];
  for (; tie != end; ++tie) k[tie->unknown * ld + tie->unknown] = S(1);  // a pinned joint's turning: nothing there
  bool resisted = false;
  for (std::size_t c = 0; c < 6; ++c) resisted = resisted || value_of(s[c * lds + c]) != 0.0;
  if (!resisted) return;
  // T⁻ᵀ v: forces at the near reference, taken to the far one: m - D × f
  const auto taken = [&](S* v) {
    const Vec3<S> m = cross(d, Vec3<S>{v[0], v[1], v[2]});
    for (std::size_t j = 0; j < 3; ++j) v[3 + j] -= m[j];
  };
  std::array<S, 36> P;
  for (std::size_t c = 0; c < 6; ++c)
    for (std::size_t r = 0; r < 6; ++r) P[6 * c + r] = r < c ? s[r * lds + c] : s[c * lds + r];
  for (std::size_t c = 0; c < 6; ++c) taken(&P[6 * c]);
  for (std::size_t r = 0; r < 6; ++r) {
    std::array<S, 6> row;
    for (std::size_t c = 0; c < 6; ++c) row[c] = P[6 * c + r];
    taken(row.data());
    for (std::size_t c = 0; c < 6; ++c) P[6 * c + r] = row[c];
  }
  for (std::size_t c = 0; c < 6; ++c)
    for (std::size_t r = 0; r < 6; ++r) {
      if (r >= c) {
        k[c * ld + r] += P[6 * c + r];
        k[(n1 + c) * ld + n1 + r] += P[6 * c + r];
      }
      k[c * ld + n1 + r] -= P[6 * c + r];
    }
  for (std::size_t a = 6; a < n1; ++a) {
    std::array<S, 6> q;
    for (std::size_t r = 0; r < 6; ++r) q[r] = s[r * lds + a];
    taken(q.data());
    for (std::size_t r = 0; r < 6; ++r) {
      k[r * ld + a] -= q[r];
      k[a * ld + n1 + r] += q[r];
    }
  }
}

/// The same with supports, whatever the ties: see substitute(). k becomes (n1 + n2)², `ld` apart; `g` is scratch.
template <class S>
void general_step(const GroundTie<S>* tie, const GroundTie<S>* end, const Vec3<S>* arms, const Vec3<S>& d, const DeformedBay<S>& bay, const S* s,
                  std::size_t lds, std::size_t ld, std::vector<S>& k, std::vector<S>& g) {
  const std::size_t n1 = bay.n1, n = bay.n1 + bay.n2, all = n + 6;
  g.assign(all * all, S(0));
  const auto at = [&](std::size_t r, std::size_t c) -> S& { return g[c * all + r]; };
  const auto add = [&](std::size_t r, std::size_t c, const S& v) {
    at(r, c) += v;
    if (r != c) at(c, r) += v;
  };
  for (std::size_t c = 0; c < n; ++c)
    for (std::size_t r = c; r < n; ++r) add(6 + r, 6 + c, bay.k[c * bay.ld + r]);
  const auto near = [](std::size_t u) { return u < 6 ? u : u + 6; };
  for (std::size_t c = 0; c < n1; ++c)
    for (std::size_t r = c; r < n1; ++r) add(near(r), near(c), s[c * lds + r]);
  substitute(tie, end, n1, arms, &d, [&](std::size_t target, std::size_t source, const S& f) {
    for (std::size_t r = 0; r < all; ++r) at(r, target) += S(f * at(r, source));
    for (std::size_t c = 0; c < all; ++c) at(target, c) += S(f * at(source, c));
  });
  const std::array<std::size_t, 6> slot = slots(tie, end);
  const auto from = [&](std::size_t u) { return u < 6 ? slot[u] : u + 6; };
  k.assign(ld * n, S(0));
  for (std::size_t c = 0; c < n; ++c)
    for (std::size_t r = c; r < n; ++r) k[c * ld + r] = at(from(r), from(c));
  tie_down(tie, end, n, ld, k.data());
}

/// The last station's matrix over (r, a), of which the lower triangle counts, with its ties.
template <class S>
void end_step(const GroundTie<S>* tie, const GroundTie<S>* end, const Vec3<S>* arms, std::size_t n, std::size_t ld, S* k) {
  for (std::size_t c = 0; c < n; ++c)
    for (std::size_t r = 0; r < c; ++r) k[c * ld + r] = k[r * ld + c];
  substitute(tie, end, n, arms, static_cast<const Vec3<S>*>(nullptr), [&](std::size_t target, std::size_t source, const S& f) {
    for (std::size_t r = 0; r < n; ++r) k[target * ld + r] += S(f * k[(source - 6) * ld + r]);
    for (std::size_t c = 0; c < n; ++c) k[c * ld + target] += S(f * k[c * ld + source - 6]);
  });
  tie_down(tie, end, n, ld, k);
}

}  // namespace baywork::detail
