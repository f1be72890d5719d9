// SPDX-License-Identifier: MIT
// Runs of identical bays, joined to longer ones that are worked out once; what is left is a shorter chain.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <baywork/solve/detail/aligned_vector.hpp>
#include <baywork/solve/detail/chain_bays.hpp>
#include <baywork/solve/detail/chain_ground.hpp>
#include <baywork/solve/detail/kernels.hpp>

namespace baywork::detail {

/// Two segments joined by eliminating the station between them.
template <class S>
struct Joined {
  std::uint32_t left = 0, right = 0;     ///< segments it is made of
  BayType<S> segment;                    ///< what it is to its ends
  AlignedVector<S> pivot;                ///< packed inverse P of the stiffness of the station between
  /// P C_leftᵀ and P C_right, which take the ends' motions to the station between, and their transposes, which take its
  /// forces to the ends.
  AlignedVector<S> from_left, from_right, to_left, to_right;

  static void keep(std::size_t n, std::size_t ends, const S* x, AlignedVector<S>& from, AlignedVector<S>& to) {
    const std::size_t ld = padded(n), ld_to = padded(ends);
    from.assign(x, x + ld * ends);
    to.assign(ld_to * n, S(0));
    for (std::size_t c = 0; c < ends; ++c)
      for (std::size_t r = 0; r < n; ++r) to[r * ld_to + c] = x[c * ld + r];
  }
  std::size_t bytes() const noexcept {
    return (pivot.size() + from_left.size() + from_right.size() + to_left.size() + to_right.size()) * sizeof(S) + segment.blocks.size() * sizeof(BasicBlock6<S>);
  }
};

/// A chain of segments. A segment is a bay, or several bays whose stations in between are eliminated; segments made of the
/// same bays are worked out once, by joining two of a kind again and again: 2, 4, 8 bays.
///
/// Joining: with P the inverse of (K22 of the left one + the station's members + K11 of the right one),
///   K11' = K11 - C P Cᵀ (C of the left), K22' = K22 - Cᵀ P C (C of the right), C' = -C_left P C_right.
/// Loads between go to the ends by the same matrices, motions come back by them.
template <class S>
class ChainRuns {
 public:
  ChainRuns() = default;
  /// `longest`: bays in a segment, at most; 1 joins nothing.
  ChainRuns(const PreparedFrame<S>& p, const ChainBays<S>& bays, const ChainGround<S>& ground, std::size_t longest) : bays_(&bays) {
    start_.reserve(bays.stations() + 1);
    start_.assign(1, 0);
    for (std::size_t i = 0; i < bays.stations(); ++i) start_.push_back(start_.back() + padded(bays.unknowns(i)));
    segments_.reserve(bays.stations());
    for (std::size_t b = 0; b + 1 < bays.stations(); ++b) segments_.push_back({bays.type_index(b), static_cast<std::uint32_t>(b), static_cast<std::uint32_t>(b + 1)});
    Space space;
    while (longest > 1 && join_once(p, ground, longest, space)) {
    }
    inside_ = Lists::sorted(segments_.size(), instances_.size(), [&](std::size_t k) {
      const auto after = std::upper_bound(segments_.begin(), segments_.end(), instances_[k].middle,
                                          [](std::uint32_t m, const Piece& s) { return m < s.first; });
      return static_cast<std::size_t>(after - segments_.begin()) - 1;
    });
  }

  const ChainBays<S>& bays() const noexcept { return *bays_; }
  /// Stations of the shorter chain, and which of the frame's they are.
  std::size_t stations() const noexcept { return segments_.size() + 1; }
  std::size_t station(std::size_t j) const { return j < segments_.size() ? segments_[j].first : segments_.back().last; }
  std::size_t unknowns(std::size_t j) const { return bays_->unknowns(station(j)); }
  const BayType<S>& type(std::size_t j) const { return type_of(segments_[j].type); }
  std::uint32_t type_index(std::size_t j) const { return segments_[j].type; }
  const NodeMatrix<S>& matrix(const PreparedFrame<S>& p, std::size_t j, NodeMatrix<S>& scratch) const {
    const Piece& s = segments_[j];
    return s.type < bays_->types() ? bays_->matrix(p, s.first, scratch) : type_of(s.type).matrix;
  }
  bool joined(std::size_t j) const { return inside_.size(j) > 0; }

  /// Where a station of the frame stands in a solution's vector.
  std::size_t start(std::size_t frame_station) const { return start_[frame_station]; }
  std::size_t length() const noexcept { return start_.back(); }
  double smallest_pivot_ratio() const noexcept { return ratio_; }
  std::size_t bytes() const noexcept {
    std::size_t sum = 0;
    for (const Joined<S>& t : joined_) sum += t.bytes();
    return sum;
  }

  /// Additions and multiplications of joining: an inverse, its products with both couplings, what both ends lose (half:
  /// it is symmetric), and the new coupling.
  double flops() const noexcept { return flops_; }
  /// Of one solution: each station inside is multiplied with its inverse, and twice with what takes it to both ends.
  double solve_flops() const {
    double sum = 0.0;
    for (const Instance& i : instances_) {
      const double n = static_cast<double>(bays_->unknowns(i.middle));
      sum += 2.0 * n * n + 4.0 * n * static_cast<double>(bays_->unknowns(i.first) + bays_->unknowns(i.last));
    }
    return sum;
  }

  /// Takes forces on stations inside segments to the segments' ends. `z`: scratch of a station.
  void gather(S* x, S* z) const {
    using K = KernelsOf<S>;
    for (const Instance& i : instances_) {
      const Joined<S>& t = joined_[i.joined];
      const std::size_t n = bays_->unknowns(i.middle), n1 = bays_->unknowns(i.first), n2 = bays_->unknowns(i.last);
      S* const xm = x + start_[i.middle];
      K::minus_times(n1, n, padded(n1), t.to_left.data(), xm, x + start_[i.first]);
      K::minus_times(n2, n, padded(n2), t.to_right.data(), xm, x + start_[i.last]);
      K::apply(n, t.pivot.data(), xm, z);
      std::copy(z, z + padded(n), xm);
    }
  }
  /// Motions inside segment j from those of its ends; at(station) is where a station's motions stand.
  template <class At>
  void spread(std::size_t j, const At& at) const {
    for (std::size_t k = inside_.size(j); k-- > 0;) spread_one(instances_[inside_.begin(j)[k]], at);
  }
  void spread(S* x) const {
    const auto at = [&](std::size_t station) { return x + start_[station]; };
    for (std::size_t k = instances_.size(); k-- > 0;) spread_one(instances_[k], at);
  }
  /// For what joins segments: f(first, middle, last, left type, right type, packed inverse), from short to long ones or back.
  template <class F>
  void for_each_joint(bool back, const F& f) const {
    for (std::size_t k = 0; k < instances_.size(); ++k) {
      const Instance& i = instances_[back ? instances_.size() - 1 - k : k];
      const Joined<S>& t = joined_[i.joined];
      f(i.first, i.middle, i.last, t.left, t.right, t.pivot.data());
    }
  }
  const BayType<S>& type_of(std::uint32_t t) const {
    return t < bays_->types() ? bays_->type_at(t) : joined_[t - bays_->types()].segment;
  }
  std::size_t types() const noexcept { return bays_->types() + joined_.size(); }

 private:
  struct Piece {
    std::uint32_t type = 0, first = 0, last = 0;  ///< a segment, from station to station
  };
  struct Instance {
    std::uint32_t joined = 0, first = 0, middle = 0, last = 0;
  };

  template <class At>
  void spread_one(const Instance& i, const At& at) const {
    using K = KernelsOf<S>;
    const Joined<S>& t = joined_[i.joined];
    const std::size_t n = bays_->unknowns(i.middle);
    K::minus_times(n, bays_->unknowns(i.first), padded(n), t.from_left.data(), at(i.first), at(i.middle));
    K::minus_times(n, bays_->unknowns(i.last), padded(n), t.from_right.data(), at(i.last), at(i.middle));
  }

  /// Two neighbours, how often they occur, and the segment made of them (number + 1).
  struct Pair {
    std::uint32_t left = 0, right = 0, between = 0, count = 0, made = 0;
  };
  /// What joining needs besides its result.
  struct Space {
    std::vector<Pair> pairs;
    std::vector<std::uint32_t> pair_of;
    std::vector<Piece> next;
    std::vector<S> m, xl, xr, turned;
    std::vector<BasicBlock6<S>> blocks;
    NodeMatrix<S> left, right;
  };

  /// Joins neighbours that occur as a pair three times or more; false where there are none. In a chain of more than
  /// `most` different pairs, those met after them are left alone.
  bool join_once(const PreparedFrame<S>& p, const ChainGround<S>& ground, std::size_t longest, Space& space) {
    constexpr std::size_t most = 64;
    constexpr std::uint32_t none = static_cast<std::uint32_t>(-1);
    space.pairs.clear();
    space.pair_of.assign(segments_.size(), none);
    for (std::size_t j = 0; j + 1 < segments_.size(); j += 2) {
      const Piece&a = segments_[j], &b = segments_[j + 1];
      if (b.last - a.first > longest || ground.begin(a.last) != ground.end(a.last)) continue;
      const std::uint32_t between = bays_->station_type(a.last);
      std::size_t i = 0;
      while (i < space.pairs.size() && (space.pairs[i].left != a.type || space.pairs[i].right != b.type || space.pairs[i].between != between)) ++i;
      if (i == most) continue;
      if (i == space.pairs.size()) space.pairs.push_back({a.type, b.type, between, 0, 0});
      ++space.pairs[i].count;
      space.pair_of[j] = static_cast<std::uint32_t>(i);
    }
    space.next.clear();
    bool any = false;
    for (std::size_t j = 0; j < segments_.size(); j += 2) {
      const std::uint32_t i = space.pair_of[j];
      if (i == none || space.pairs[i].count < 3) {
        space.next.push_back(segments_[j]);
        if (j + 1 < segments_.size()) space.next.push_back(segments_[j + 1]);
        continue;
      }
      const Piece&a = segments_[j], &b = segments_[j + 1];
      if (space.pairs[i].made == 0) {
        join(p, a, b, space);
        space.pairs[i].made = static_cast<std::uint32_t>(joined_.size());
      }
      const std::uint32_t t = space.pairs[i].made - 1;
      ++joined_[t].segment.count;
      instances_.push_back({t, a.first, a.last, b.last});
      space.next.push_back({static_cast<std::uint32_t>(bays_->types() + t), a.first, b.last});
      any = true;
    }
    segments_.swap(space.next);
    return any;
  }

  void see_ratio(double ratio) {
    if (!(ratio >= ratio_)) ratio_ = ratio > 0.0 ? ratio : 0.0;
  }
  void join(const PreparedFrame<S>& p, const Piece& a, const Piece& b, Space& space) {
    using K = KernelsOf<S>;
    const auto of = [&](const Piece& s, NodeMatrix<S>& scratch) -> const NodeMatrix<S>& {
      return s.type < bays_->types() ? bays_->matrix(p, s.first, scratch) : type_of(s.type).matrix;
    };
    Joined<S>& out = joined_.emplace_back();
    out.left = a.type;
    out.right = b.type;
    const NodeMatrix<S>&ka = of(a, space.left), &kb = of(b, space.right);
    const std::vector<BasicBlock6<S>>&ca = type_of(a.type).blocks, &cb = type_of(b.type).blocks;
    space.blocks.clear();  // of a, turned: from the middle to the first station
    for (const BasicBlock6<S>& block : ca) space.blocks.push_back(turned(block));
    const std::vector<BasicBlock6<S>>& cat = space.blocks;
    const std::size_t n1 = ka.n1, n = ka.n2, n2 = kb.n2, ld = padded(n);
    NodeMatrix<S>& k = out.segment.matrix;
    k.n1 = n1;
    k.n2 = n2;
    k.second = padded(n1);
    k.ld = k.second + padded(n2);
    k.k.resize(k.ld * (k.second + n2));
    const auto room = [](std::vector<S>& v, std::size_t size, bool clear) {  // rows beyond a column's last must be zero
      if (clear) v.clear();
      if (v.size() < size) v.resize(size);
    };
    room(space.m, ld * n, true);
    room(space.xl, ld * n1, ld != n);
    room(space.xr, ld * n2, ld != n);
    room(space.turned, k.ld * n, k.second != n1 || padded(n2) != n2);
    S *const m = space.m.data(), *const xl = space.xl.data(), *const xr = space.xr.data(), *const t = space.turned.data();
    for (std::size_t c = 0; c < n; ++c) {
      const S *const of_a = &ka.at(ka.second, ka.second + c), *const of_b = &kb.at(0, c);
      for (std::size_t r = 0; r < n; ++r) m[c * ld + r] = S(of_a[r] + of_b[r]);
    }
    bays_->add_station(p, a.last, m, ld);
    for (std::size_t u = 0; u < n; ++u) see_ratio(bays_->size_of_pivot(u, value_of(m[u * ld + u])));
    see_ratio(K::invert(n, ld, m));
    out.pivot.resize(K::packed_size(n));
    K::pack(n, ld, m, out.pivot.data());
    K::times_blocks(n, n2, ld, m, cb.data(), cb.size(), ld, xr);
    K::times_blocks(n, n1, ld, m, cat.data(), cat.size(), ld, xl);
    out.keep(n, n1, xl, out.from_left, out.to_left);
    out.keep(n, n2, xr, out.from_right, out.to_right);
    for (std::size_t c = 0; c < n1; ++c) std::copy(&ka.at(0, c), &ka.at(0, c) + n1, &k.at(0, c));
    for (std::size_t c = 0; c < n2; ++c) std::copy(&kb.at(kb.second, kb.second + c), &kb.at(kb.second, kb.second + c) + n2, &k.at(k.second, k.second + c));
    K::minus_blocks_transposed(n, n2, ld, xr, cb.data(), cb.size(), k.ld, &k.at(k.second, k.second), t);
    K::minus_blocks_transposed(n, n1, ld, xl, cat.data(), cat.size(), k.ld, &k.at(0, 0), t);
    // C' = -C_a (P C_b) = (-X_l)ᵀ C_b
    for (std::size_t c = 0; c < n; ++c)
      for (std::size_t r = 0; r < n1; ++r) t[c * k.ld + r] = S(-xl[r * ld + c]);
    K::times_blocks(n1, n2, k.ld, t, cb.data(), cb.size(), k.ld, &k.at(0, k.second));
    ChainBays<S>::find_blocks(k, out.segment.blocks);
    const double nd = static_cast<double>(n);
    flops_ += nd * nd * nd + 72.0 * nd * static_cast<double>(ca.size() + cb.size()) +
              36.0 * (static_cast<double>(n1 * ca.size()) + static_cast<double>(n2 * cb.size())) + 72.0 * static_cast<double>(n1 * cb.size());
  }

  const ChainBays<S>* bays_ = nullptr;
  std::vector<std::size_t> start_;
  std::vector<Piece> segments_;
  std::vector<Joined<S>> joined_;
  std::vector<Instance> instances_;
  Lists inside_;
  double ratio_ = 1.0, flops_ = 0.0;
};

}  // namespace baywork::detail
