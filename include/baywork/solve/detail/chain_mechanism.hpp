// SPDX-License-Identifier: MIT
// Free motions of a chain, read off the pivots that vanish when it is eliminated in deformation coordinates.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <baywork/solve/detail/bay_inside.hpp>
#include <baywork/solve/detail/chain_bays.hpp>
#include <baywork/solve/detail/chain_ground.hpp>
#include <baywork/solve/detail/chain_runs.hpp>
#include <baywork/solve/detail/deformation_step.hpp>
#include <baywork/solve/detail/deformed_bay.hpp>
#include <baywork/solve/detail/rigid_arms.hpp>

namespace baywork::detail {

/// Eliminates stations from the first to the last, in the coordinates of substitute(). Where a pivot d_j vanishes, the
/// motion with e_j = 1, all later coordinates at rest and no force on all earlier ones has the energy ½ d_j: with
/// K = L D Lᵀ it is L⁻ᵀ e_j. Rigid motion never meets stiffness, so that holds for a girder of any length.
///
/// A pivot is suspected below 1e-9 of the stiffness its unknown had on its own, or below 1e-13 of the stiffest unknown
/// of its sort (what is left of a stiffness by rounding alone); the motion's own energy then decides. A confirmed one
/// is held, so that the next one is another motion.
template <class S>
class ChainMechanism {
 public:
  using A = accurate_t<S>;

  /// `energy_share(u)`: strain energy of a motion against that of its unknowns one by one; u has six numbers per node.
  template <class EnergyShare>
  ChainMechanism(const PreparedFrame<S>& p, const ChainBays<S>& bays, const std::vector<double>& diagonal,
                 const EnergyShare& energy_share)
      : p_(p),
        bays_(bays),
        l_(bays.layout()),
        ground_(p, bays.layout()),
        runs_(p, bays, ground_, 1),
        arms_(p.frame, runs_) {
    for (std::size_t i = 0; i < diagonal.size(); ++i) {
      double& stiffest = stiffest_[i % 6 < 3 ? 0 : 1];
      stiffest = (std::max)(stiffest, diagonal[i]);
    }
    const auto confirm = [&] {
      const bool free = energy_share(u_) < 1e-22;
      if (free) {
        found_.emplace_back(u_.size());
        for (std::size_t i = 0; i < u_.size(); ++i) found_.back()[i] = value_of(u_[i]);
      } else {
        ++refuted_;
      }
      return free;
    };
    inside_bays(confirm);
    if (!found_.empty()) return;  // the bays' own stiffness is void
    sweep(confirm);
  }

  /// Independent free motions, six numbers per node; at most `most_motions`.
  const std::vector<std::vector<double>>& found() const { return found_; }

 private:
  using Matrix = std::vector<S>;
  static constexpr double suspect = 1e-9;
  static constexpr std::size_t most_motions = 16, most_refuted = 64;

  bool enough() const { return found_.size() >= most_motions || refuted_ >= most_refuted; }
  const GroundTie<S>* ties(std::size_t i) const { return ground_.begin(i); }
  const GroundTie<S>* ties_end(std::size_t i) const { return ground_.end(i); }

  /// L D Lᵀ of the first n1 of n unknowns, column by column, L below the diagonal, 1/d or zero (held) on it; the rest
  /// becomes the Schur complement (lower triangle). `is_free(j)`: whether a suspected pivot is confirmed.
  template <class IsFree>
  void eliminate(std::size_t n1, std::size_t n, S* k, const IsFree& is_free) const {
    std::vector<double> own(n1);
    for (std::size_t j = 0; j < n1; ++j) own[j] = value_of(k[j * n + j]);
    for (std::size_t j = 0; j < n1; ++j) {
      S* const column = k + j * n;
      const double d = value_of(column[j]), stiffest = stiffest_[j % 6 < 3 ? 0 : 1];
      const bool doubtful = !(d > suspect * own[j]) || (!(d > 1e-13 * stiffest) && d != 1.0);  // 1: a held motion
      if (doubtful && (is_free(j) || !(d > 0.0))) {
        for (std::size_t r = j; r < n; ++r) column[r] = S(0);
        continue;
      }
      const S inverse = S(S(1) / column[j]);
      for (std::size_t c = j + 1; c < n; ++c) {
        const S factor = S(column[c] * inverse);
        if (value_of(factor) != 0.0)
          for (std::size_t r = c; r < n; ++r) k[c * n + r] -= S(column[r] * factor);
      }
      column[j] = inverse;
      for (std::size_t r = j + 1; r < n; ++r) column[r] = S(column[r] * inverse);
    }
  }
  /// e = -L₁₁⁻ᵀ L₂₁ᵀ (rest), for the unknowns before `from`; h holds the others.
  static void back_substitute(std::size_t from, std::size_t n, const S* l, S* h) {
    for (std::size_t q = from; q-- > 0;) {
      S sum = S(0);
      for (std::size_t r = q + 1; r < n; ++r) sum -= S(l[q * n + r] * h[r]);
      h[q] = sum;
    }
  }

  /// Joints inside a bay that move while both stations are at rest.
  template <class Confirm>
  void inside_bays(const Confirm& confirm) {
    std::vector<char> sound(bays_.types(), 0);  // a type without a doubtful pivot needs no second look
    for (std::size_t bay = 0; bay < l_.bays() && !enough(); ++bay) {
      const std::size_t n = 6 * l_.inner.size(bay);
      if (n == 0 || sound[bays_.type_index(bay)] != 0) continue;
      sound[bays_.type_index(bay)] = 1;
      Matrix k(n * n, S(0));
      const auto start = [&](std::size_t node) {
        const std::uint32_t place = l_.place[node];
        return place < l_.inner.size(bay) && l_.inner.begin(bay)[place] == node ? 6 * std::size_t{place} : n;
      };
      for (const std::uint32_t* m = l_.along.begin(bay); m != l_.along.end(bay); ++m) {
        const std::size_t from = start(p_.frame.members[*m].from), to = start(p_.frame.members[*m].to);
        put_member_matrix(p_.sort(*m).plain, [&](std::size_t r, std::size_t c, const S& v) {
          const std::size_t row = r < 6 ? from : to, column = c < 6 ? from : to;
          if (row < n && column < n) k[(column + c % 6) * n + row + r % 6] += v;
        });
      }
      const auto node = [&](std::size_t j) { return std::size_t{l_.inner.begin(bay)[j / 6]}; };
      for (std::size_t j = 0; j < n; ++j)
        if (p_.freedoms.of(node(j), j % 6) == Freedoms::idle) k[j * n + j] = S(1);
      eliminate(n, n, k.data(), [&](std::size_t j) {
        sound[bays_.type_index(bay)] = 0;
        if (enough()) return false;
        Matrix h(n, S(0));
        h[j] = S(1);
        back_substitute(j, n, k.data(), h.data());
        u_.assign(6 * p_.frame.nodes.size(), A(0));
        for (std::size_t i = 0; i < n; ++i) u_[6 * node(i) + i % 6] = A(h[i]);
        return confirm();
      });
    }
  }

  template <class Confirm>
  void sweep(const Confirm& confirm) {
    const std::size_t last = bays_.stations() - 1;
    factor_.resize(last + 1);
    Matrix state(bays_.unknowns(0) * bays_.unknowns(0), S(0));
    for (std::size_t i = 0; i <= last && !enough(); ++i) {
      const std::size_t n1 = bays_.unknowns(i), n = n1 + (i < last ? bays_.unknowns(i + 1) : 0);
      bays_.add_station_deformed(p_, i, state.data(), n1, station_scratch_);
      if (i < last) {
        const DeformedBay<S>& bay = kept_.get(runs_, arms_, i, true, node_scratch_, scratch_);
        general_step(ties(i), ties_end(i), arms_.plain(i), arms_.step(i), bay, state.data(), n1, n, factor_[i], general_scratch_);
      } else {
        factor_[i] = state;
        end_step(ties(i), ties_end(i), arms_.plain(i), n, n, factor_[i].data());
      }
      S* const k = factor_[i].data();
      eliminate(n1, n, k, [&](std::size_t j) {
        if (enough()) return false;
        Matrix h(n, S(0));
        h[j] = S(1);
        back_substitute(j, n, k, h.data());
        move(i, h);
        return confirm();
      });
      const std::size_t n2 = n - n1;
      state.assign(n2 * n2, S(0));
      for (std::size_t c = 0; c < n2; ++c)
        for (std::size_t r = c; r < n2; ++r) state[c * n2 + r] = k[(n1 + c) * n + n1 + r];
    }
  }
  /// Motions with the coordinates h at station i, none beyond, and what follows before it; left in u_.
  void move(std::size_t i, Matrix h) {
    u_.assign(6 * p_.frame.nodes.size(), A(0));
    std::array<A, 6> r;
    r.fill(A(0));
    Matrix far, near;
    far.assign(h.begin() + static_cast<std::ptrdiff_t>(bays_.unknowns(i)), h.end());
    for (std::size_t s = i;; --s) {
      near_reference(s, h, r);
      put_station(s, r, h, near);
      if (s + 1 < bays_.stations()) put_inside(s, r, near, far);
      if (s == 0) return;
      const std::size_t n1 = bays_.unknowns(s - 1), n = n1 + near.size();
      far = near;
      h.assign(n, S(0));
      std::copy(far.begin(), far.end(), h.begin() + static_cast<std::ptrdiff_t>(n1));
      back_substitute(n1, n, factor_[s - 1].data(), h.data());
    }
  }
  /// r of the far station becomes r of station s. At the last station there is none: its own r is e.
  void near_reference(std::size_t s, const Matrix& h, std::array<A, 6>& r) {
    rest_.fill(S(0));
    if (s + 1 == bays_.stations()) {
      for (std::size_t k = 0; k < 6; ++k) r[k] = A(h[k]);
      return;
    }
    const std::array<std::size_t, 6> slot = slots(ties(s), ties_end(s));
    const Vec3<A> d = arms_.step_wide(s);
    std::array<A, 6> near;
    for (std::size_t k = 3; k < 6; ++k) near[k] = slot[k] == k ? A(h[k]) : A(r[k] - A(h[k]));
    const Vec3<A> turned = cross(Vec3<A>{near[3], near[4], near[5]}, d);
    for (std::size_t k = 0; k < 3; ++k) near[k] = slot[k] == k ? A(h[k]) : A(A(r[k] - A(h[k])) - turned[k]);
    const std::array<A, 6> continued = rigid_motion(near, d);
    for (std::size_t k = 0; k < 6; ++k) rest_[k] = slot[k] == k ? rounded<S>(A(r[k] - continued[k])) : h[k];
    r = near;
  }
  /// Motions of a station's joints; q becomes (r, a).
  void put_station(std::size_t s, const std::array<A, 6>& r, const Matrix& h, Matrix& q) {
    const std::size_t n = bays_.unknowns(s);
    q.assign(n, S(0));
    const GroundTie<S>* tie = ties(s);
    for (std::size_t at = 0; at < n; at += 6) {
      const std::array<A, 6> rigid = rigid_motion(r, arms_.wide(s)[at / 6]);
      const std::size_t node = l_.stations.begin(s)[at / 6];
      for (std::size_t k = 0; k < 6; ++k) {
        const std::size_t u = at + k;
        while (tie != ties_end(s) && tie->unknown < u) ++tie;
        const bool tied = tie != ties_end(s) && tie->unknown == u, idle = tied && tie->kind == GroundTie<S>::Kind::idle;
        if (at == 0) {
          q[u] = rounded<S>(r[k]);
          u_[6 * node + k] = r[k];
        } else if (tied && !idle) {
          q[u] = rounded<S>(A(A(h[u]) - rigid[k]));
          u_[6 * node + k] = A(h[u]);
        } else {
          q[u] = h[u];
          if (!idle) u_[6 * node + k] = A(rigid[k] + A(h[u]));
        }
      }
    }
  }
  void put_inside(std::size_t bay, const std::array<A, 6>& r, const Matrix& near, const Matrix& far) {
    const BayType<S>& t = bays_.type(bay);
    if (t.inner == 0) return;
    const std::size_t n1 = near.size(), n2 = far.size();
    Matrix first(near), second(n2), motion(t.inner);  // counted from the rigid motion of the near reference
    for (std::size_t k = 0; k < 6; ++k) first[k] = S(0);
    for (std::size_t at = 0; at < n2; at += 6) {
      const std::array<S, 6> moved = rigid_motion(rest_, arms_.plain(bay + 1)[at / 6]);
      for (std::size_t k = 0; k < 6; ++k) second[at + k] = at == 0 ? moved[k] : S(moved[k] + far[at + k]);
    }
    const Matrix force(t.inner, S(0));
    inside_motions(t, n1, n2, force.data(), first.data(), second.data(), motion.data());
    for (std::size_t j = 0; j < t.inner; ++j) {
      const std::size_t node = l_.inner.begin(bay)[j / 6];
      const std::array<A, 6> rigid = rigid_motion(r, arm_between(p_.frame, std::size_t{*l_.stations.begin(bay)}, node));
      if (p_.freedoms.of(node, j % 6) >= 0) u_[6 * node + j % 6] = A(rigid[j % 6] + A(motion[j]));
    }
  }

  const PreparedFrame<S>& p_;
  const ChainBays<S>& bays_;
  const ChainLayout& l_;
  ChainGround<S> ground_;
  ChainRuns<S> runs_;  ///< none joined: every station has its pivots
  ChainArms<S> arms_;
  DeformedBays<S> kept_;
  NodeMatrix<S> node_scratch_;
  Matrix station_scratch_, general_scratch_;
  DeformedBay<S> scratch_;
  std::array<double, 2> stiffest_{};
  std::array<S, 6> rest_{};  ///< s of the last step back
  std::vector<Matrix> factor_;
  std::vector<A> u_;
  std::vector<std::vector<double>> found_;
  std::size_t refuted_ = 0;
};

}  // namespace baywork::detail
