// SPDX-License-Identifier: MIT
// The fast form: block-tridiagonal elimination from both ends to the middle, with the inverse of each pivot kept.
#pragma once

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <baywork/solve/detail/aligned_vector.hpp>
#include <baywork/solve/detail/chain_runs.hpp>
#include <baywork/solve/detail/coupling_lists.hpp>
#include <baywork/solve/detail/kernels.hpp>
#include <baywork/solve/solve_path.hpp>

namespace baywork::detail {

/// K of a chain is block-tridiagonal: D_i on the diagonal, C_i between station i and i + 1. From the left,
///   P_i = (D_i - C_{i-1}ᵀ P_{i-1} C_{i-1})⁻¹,
/// from the right likewise, and where both meet, each takes its part off the meeting station's D. Only P_i is kept
/// (symmetric, packed); C_i is a handful of 6 x 6 blocks that bays of one type share.
///
/// The motions are absolute, so the large rigid motion of a long girder meets its stiffness, and about 3e-18 n⁴ of the
/// answer is lost over n bays per span: the certificate says when that is too much.
/// Source: block elimination of tridiagonal systems as in G. H. Golub, C. F. Van Loan, Matrix Computations, 4.5
/// (value from memory); elimination from both ends is common practice.
template <class S>
class FastChain {
 public:
  /// Factors; false where a pivot is not positive. The same numbers come out with one thread or two.
  bool compute(const PreparedFrame<S>& p, const ChainRuns<S>& runs, const ChainGround<S>& ground, RunBoth run = one_after_the_other) {
    bays_ = &runs;
    place();
    return refactor(p, ground, 0, stations() - 1, run);
  }
  /// Factors anew after a change in bays or stations `first` to `last`: what lies between them and the nearer end stays.
  bool refactor(const PreparedFrame<S>& p, const ChainGround<S>& ground, std::size_t first, std::size_t last, RunBoth run = one_after_the_other) {
    static std::atomic<std::uint64_t> factors{0};
    number_ = ++factors;
    const std::size_t n = stations();
    const std::size_t half = widest_ * (4 * widest_ + 2);
    const Room<S> room(2 * half);
    Task task{this, &p, &ground, (std::min)(first, meet_), (std::max)((std::min)(last, n - 1), meet_), {room.begin(), widest_}, {room.begin() + half, widest_}};
    run(
        [](void* c) {
          Task& t = *static_cast<Task*>(c);
          t.self->sweep(*t.p, *t.ground, true, t.first, t.left);
        },
        [](void* c) {
          Task& t = *static_cast<Task*>(c);
          t.self->sweep(*t.p, *t.ground, false, t.last, t.right);
        },
        &task);
    make_lists();
    return meet(ground, task.left, task.right);
  }

  std::size_t stations() const noexcept { return bays_->stations(); }
  /// Smallest pivot against the stiffness its unknown had on its own.
  double smallest_pivot_ratio() const noexcept { return smallest_of(ratio_); }
  std::size_t bytes() const noexcept {
    std::size_t sum = packed_.size() * sizeof(S);
    for (const CouplingLists<S>& l : lists_) sum += l.bytes();
    return sum;
  }
  /// Additions and multiplications of factoring: an inverse per station, its product with the coupling, and what the next
  /// station loses (half: it is symmetric).
  double flops() const {
    double sum = 0.0;
    for (std::size_t i = 0; i < stations(); ++i) {
      const double n = static_cast<double>(bays_->unknowns(i));
      sum += n * n * n;
      if (i == meet_) continue;
      const std::size_t to = i < meet_ ? i + 1 : i - 1;
      sum += (2.0 * n + static_cast<double>(bays_->unknowns(to))) * numbers_in(bays_->type((std::min)(i, to)).blocks);
    }
    return sum;
  }
  /// Of one solution: inverse and coupling on the way in and on the way back.
  double solve_flops() const {
    double sum = 0.0;
    for (std::size_t i = 0; i < stations(); ++i) {
      const double n = static_cast<double>(bays_->unknowns(i));
      sum += (i == meet_ ? 2.0 : 4.0) * n * n;
      if (i + 1 == stations()) continue;
      const std::uint32_t t = list_of_[i];
      sum += t != no_list ? 2.0 * static_cast<double>(lists_[t].plain.value.size() + lists_[t].turned.value.size()) : 144.0 * static_cast<double>(bays_->type(i).blocks.size());
    }
    return sum;
  }

  /// x := K⁻¹ x. `work`: work_size() numbers.
  void solve(S* x, S* work) const;
  std::size_t work_size() const noexcept { return 4 * widest_; }
  /// What solving for many right-hand sides needs; kept, it takes memory and time once for each factor.
  struct ManySpace {
    struct Rows {
      RowLists<S> plain, turned;
      bool made = false;
    };
    /// P of a joint in halves, and what goes from it to the first and the last station and back.
    struct Joint {
      HalvedProduct<S> pivot, to_first, to_last, from_first, from_last;
      bool made = false;
    };
    std::uint64_t factor = 0;            ///< whose the lists are
    AlignedVector<S> groups, z;
    std::vector<S> full;
    std::vector<Rows> rows;              ///< couplings of segments by their type
    std::vector<Joint> joints;           ///< by their sort
    std::vector<S*> place;               ///< of each station's groups
    std::vector<std::uint32_t> order;    ///< of joints
  };
  /// x := K⁻¹ b for m columns, both `ld` apart, on all stations: those inside segments, too. x may be b.
  void solve_many(const S* b, S* x, std::size_t ld, std::size_t m, ManySpace& space) const;

 private:
  using K = KernelsOf<S>;
  static constexpr std::uint32_t no_list = static_cast<std::uint32_t>(-1);
  /// What a sweep from one end works with.
  struct Space {
    S *m, *next;              ///< what is left of a station's stiffness and of its neighbour's
    S *own, *next_own;        ///< the diagonals that both had on their own
    S *product, *scratch;
    std::vector<BasicBlock6<S>> turned_blocks{};
    std::uint32_t turned_type = static_cast<std::uint32_t>(-1);

    Space(S* s, std::size_t widest)
        : m(s), next(m + widest * widest), own(next + widest * widest), next_own(own + widest), product(next_own + widest), scratch(product + widest * widest) {}
  };
  struct Task {
    FastChain* self;
    const PreparedFrame<S>* p;
    const ChainGround<S>* ground;
    std::size_t first, last;
    Space left, right;  ///< `m` is what the two ends leave at the meeting station
  };

  class Many;
  void make_lists();
  void couple(std::size_t from, std::size_t to, const S* z, S* y) const;

  const S* packed(std::size_t i) const { return packed_.data() + packed_start_[i]; }

  void place() {
    const std::size_t n = stations();
    meet_ = n / 2;
    start_.clear();
    start_.reserve(n);
    packed_start_.reserve(n + 1);
    packed_start_.assign(1, 0);
    ratio_.assign(n, 1.0);
    widest_ = 0;
    for (std::size_t i = 0; i < n; ++i) {
      start_.push_back(bays_->start(bays_->station(i)));
      packed_start_.push_back(packed_start_.back() + K::packed_size(bays_->unknowns(i)));
      widest_ = (std::max)(widest_, padded(bays_->unknowns(i)));
    }
    packed_.resize(packed_start_.back());
  }

  /// m := its inverse, with nothing where a motion is held; the pivot ratio against `own`, the diagonal before elimination.
  double invert(const ChainGround<S>& ground, std::size_t i, std::size_t n, std::size_t ld, S* m, const S* own) const {
    tie_down(ground.begin(i), ground.end(i), n, ld, m);
    double left = 1.0;
    const GroundTie<S>* tie = ground.begin(i);
    for (std::size_t k = 0; k < n; ++k) {
      if (tie != ground.end(i) && tie->unknown == k && (tie++)->kind != GroundTie<S>::Kind::spring) continue;  // a 1 stands there
      const double d = value_of(m[k * ld + k]), o = value_of(own[k]);
      if (!(d > 0.0)) return 0.0;
      if (d < left * o) left = d / o;
    }
    const double ratio = K::invert(n, ld, m);
    for (const GroundTie<S>* t = ground.begin(i); t != ground.end(i); ++t)
      if (t->kind != GroundTie<S>::Kind::spring) m[t->unknown * ld + t->unknown] = S(0);
    return ratio * left;
  }

  /// Eliminates from one end (or from station `from` on, whose neighbour towards the end is kept) to the meeting station.
  /// That station's own stiffness comes with the sweep from the left.
  void sweep(const PreparedFrame<S>& p, const ChainGround<S>& ground, bool forward, std::size_t from, Space& s) {
    const std::size_t end = forward ? 0 : stations() - 1;
    const auto start_from_own = [&](std::size_t j, S* m, S* diagonal) {
      const std::size_t nj = bays_->unknowns(j), ld = padded(nj);
      if (j == meet_ && !forward) {
        std::fill(m, m + ld * nj, S(0));
        return;
      }
      bays_->own(p, j, m);
      for (std::size_t k = 0; k < nj; ++k) diagonal[k] = m[k * ld + k];
    };
    std::size_t i = (forward ? from < meet_ : from > meet_) ? from : meet_;
    start_from_own(i, s.m, s.own);
    if (i != end) {  // take up where an earlier factorisation stands
      const std::size_t kept = forward ? i - 1 : i + 1, nk = bays_->unknowns(kept), ni = bays_->unknowns(i), ld = padded(nk);
      const std::vector<BasicBlock6<S>>& c = oriented((std::min)(kept, i), forward, s);
      std::fill(s.scratch, s.scratch + ld * ni, S(0));
      add_blocks(c, s.scratch, ld);
      K::apply_many(nk, packed(kept), ld, s.scratch, s.product, ni);
      K::minus_blocks_transposed(nk, ni, ld, s.product, c.data(), c.size(), padded(ni), s.m, s.scratch);
    }
    for (; i != meet_; forward ? ++i : --i) {
      const std::size_t to = forward ? i + 1 : i - 1, bay = (std::min)(i, to);
      const std::size_t ni = bays_->unknowns(i), nt = bays_->unknowns(to), ld = padded(ni), ldt = padded(nt);
      ratio_[i] = invert(ground, bays_->station(i), ni, ld, s.m, s.own);
      K::pack(ni, ld, s.m, packed_.data() + packed_start_[i]);
      const std::vector<BasicBlock6<S>>& c = oriented(bay, forward, s);
      K::times_blocks(ni, nt, ld, s.m, c.data(), c.size(), ld, s.product);
      start_from_own(to, s.next, s.next_own);
      K::minus_blocks_transposed(ni, nt, ld, s.product, c.data(), c.size(), ldt, s.next, s.scratch);
      std::swap(s.m, s.next);
      std::swap(s.own, s.next_own);
    }
  }

  /// The blocks from the eliminated station to the one that takes over.
  const std::vector<BasicBlock6<S>>& oriented(std::size_t bay, bool forward, Space& s) const {
    const std::vector<BasicBlock6<S>>& c = bays_->type(bay).blocks;
    if (forward) return c;
    if (s.turned_type == bays_->type_index(bay)) return s.turned_blocks;
    s.turned_type = bays_->type_index(bay);
    turn(c, s.turned_blocks);
    return s.turned_blocks;
  }

  bool meet(const ChainGround<S>& ground, const Space& left, const Space& right) {
    const std::size_t n = bays_->unknowns(meet_), ld = padded(n);
    for (std::size_t k = 0; k < ld * n; ++k) left.m[k] += right.m[k];
    ratio_[meet_] = invert(ground, bays_->station(meet_), n, ld, left.m, left.own);
    K::pack(n, ld, left.m, packed_.data() + packed_start_[meet_]);
    return smallest_pivot_ratio() > 0.0;
  }

  const ChainRuns<S>* bays_ = nullptr;
  std::size_t meet_ = 0, widest_ = 0;
  std::uint64_t number_ = 0;                       ///< each factor of the program has its own
  std::vector<std::size_t> start_, packed_start_;
  std::vector<std::uint32_t> unknowns_, list_of_;  ///< of each station and segment, close together for solving
  AlignedVector<S> packed_;
  std::vector<CouplingLists<S>> lists_;            ///< of segment types that occur more than once
  std::vector<double> ratio_;
};

}  // namespace baywork::detail

#include <baywork/solve/detail/chain_fast_many.hpp>
#include <baywork/solve/detail/chain_fast_solve.hpp>
