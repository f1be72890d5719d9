// SPDX-License-Identifier: MIT
// Runs of identical bays, joined to longer ones that are worked out once; what is left is a shorter chain.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

#include <baywork/solve/detail/chain_bays.hpp>
#include <baywork/solve/detail/chain_ground.hpp>
#include <baywork/solve/detail/kernels.hpp>

namespace baywork::detail {

/// Two segments joined by eliminating the station between them.
template <class S>
struct Joined {
  std::uint32_t left = 0, right = 0;     ///< segments it is made of
  BayType<S> segment;                    ///< what it is to its ends
  std::vector<S> pivot;                  ///< packed inverse of the stiffness of the station between
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
    start_.assign(1, 0);
    for (std::size_t i = 0; i < bays.stations(); ++i) start_.push_back(start_.back() + padded(bays.unknowns(i)));
    for (std::size_t b = 0; b + 1 < bays.stations(); ++b) segments_.push_back({bays.type_index(b), static_cast<std::uint32_t>(b), static_cast<std::uint32_t>(b + 1)});
    while (longest > 1 && join_once(p, ground, longest)) {
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
    for (const Joined<S>& t : joined_) sum += t.pivot.size() * sizeof(S) + t.segment.blocks.size() * sizeof(BasicBlock6<S>);
    return sum;
  }

  /// Takes forces on stations inside segments to the segments' ends. `z`: scratch of a station.
  void gather(S* x, S* z) const {
    for (const Instance& i : instances_) {
      const Joined<S>& t = joined_[i.joined];
      const std::size_t n = bays_->unknowns(i.middle);
      S* const xm = x + start_[i.middle];
      KernelsOf<S>::apply(n, t.pivot.data(), xm, z);
      std::copy(z, z + padded(n), xm);
      const std::vector<BasicBlock6<S>>&l = type_of(t.left).blocks, &r = type_of(t.right).blocks;
      KernelsOf<S>::minus_blocks_times(l.data(), l.size(), xm, x + start_[i.first]);
      KernelsOf<S>::minus_transposed_times(r.data(), r.size(), xm, x + start_[i.last]);
    }
  }
  /// Motions inside segment j from those of its ends; at(station) is where a station's motions stand. z: two stations.
  template <class At>
  void spread(std::size_t j, const At& at, S* z) const {
    for (std::size_t k = inside_.size(j); k-- > 0;) spread_one(instances_[inside_.begin(j)[k]], at, z);
  }
  void spread(S* x, S* z) const {
    const auto at = [&](std::size_t station) { return x + start_[station]; };
    for (std::size_t k = instances_.size(); k-- > 0;) spread_one(instances_[k], at, z);
  }
  /// The same for m right-hand sides, laid out as FastChain::solve_many has them.
  void gather_many(S* x, std::size_t m, S* z) const {
    for (const Instance& i : instances_) {
      const Joined<S>& t = joined_[i.joined];
      const std::size_t n = bays_->unknowns(i.middle), ld = padded(n);
      S* const xm = x + start_[i.middle] * m;
      KernelsOf<S>::apply_many(n, t.pivot.data(), ld, xm, z, m);
      std::copy(z, z + ld * m, xm);
      const std::vector<BasicBlock6<S>>&l = type_of(t.left).blocks, &r = type_of(t.right).blocks;
      KernelsOf<S>::minus_blocks_times_many(l.data(), l.size(), ld, xm, padded(bays_->unknowns(i.first)), x + start_[i.first] * m, m);
      KernelsOf<S>::minus_transposed_times_many(r.data(), r.size(), ld, xm, padded(bays_->unknowns(i.last)), x + start_[i.last] * m, m);
    }
  }
  void spread_many(S* x, std::size_t m, S* z) const {
    for (std::size_t k = instances_.size(); k-- > 0;) {
      const Instance& i = instances_[k];
      const Joined<S>& t = joined_[i.joined];
      const std::size_t n = bays_->unknowns(i.middle), ld = padded(n);
      S* const y = z + ld * m;
      std::fill(y, y + ld * m, S(0));
      const std::vector<BasicBlock6<S>>&l = type_of(t.left).blocks, &r = type_of(t.right).blocks;
      KernelsOf<S>::minus_transposed_times_many(l.data(), l.size(), padded(bays_->unknowns(i.first)), x + start_[i.first] * m, ld, y, m);
      KernelsOf<S>::minus_blocks_times_many(r.data(), r.size(), padded(bays_->unknowns(i.last)), x + start_[i.last] * m, ld, y, m);
      KernelsOf<S>::apply_many(n, t.pivot.data(), ld, y, z, m);
      S* const xm = x + start_[i.middle] * m;
      for (std::size_t u = 0; u < ld * m; ++u) xm[u] += z[u];
    }
  }

 private:
  struct Piece {
    std::uint32_t type = 0, first = 0, last = 0;  ///< a segment, from station to station
  };
  struct Instance {
    std::uint32_t joined = 0, first = 0, middle = 0, last = 0;
  };

  const BayType<S>& type_of(std::uint32_t t) const {
    return t < bays_->types() ? bays_->type_at(t) : joined_[t - bays_->types()].segment;
  }

  template <class At>
  void spread_one(const Instance& i, const At& at, S* z) const {
    const Joined<S>& t = joined_[i.joined];
    const std::size_t n = bays_->unknowns(i.middle), ld = padded(n);
    S* const y = z + ld;
    std::fill(y, y + ld, S(0));
    const std::vector<BasicBlock6<S>>&l = type_of(t.left).blocks, &r = type_of(t.right).blocks;
    KernelsOf<S>::minus_transposed_times(l.data(), l.size(), at(i.first), y);
    KernelsOf<S>::minus_blocks_times(r.data(), r.size(), at(i.last), y);
    KernelsOf<S>::apply(n, t.pivot.data(), y, z);
    S* const xm = at(i.middle);
    for (std::size_t u = 0; u < ld; ++u) xm[u] += z[u];
  }

  /// Joins neighbours that occur as a pair three times or more; false where there are none.
  bool join_once(const PreparedFrame<S>& p, const ChainGround<S>& ground, std::size_t longest) {
    std::unordered_map<std::uint64_t, std::pair<std::uint32_t, std::uint32_t>> pairs;  // to how often, and which
    const auto key = [&](std::size_t j) -> std::uint64_t {
      const Piece&a = segments_[j], &b = segments_[j + 1];
      if (b.last - a.first > longest || ground.begin(a.last) != ground.end(a.last)) return 0;
      return ((std::uint64_t{a.type} * 0x1F'FFFFULL + b.type) * 0x1F'FFFFULL + bays_->station_type(a.last)) + 1;
    };
    for (std::size_t j = 0; j + 1 < segments_.size(); j += 2)
      if (const std::uint64_t k = key(j); k != 0) ++pairs[k].first;
    std::vector<Piece> next;
    bool any = false;
    for (std::size_t j = 0; j < segments_.size(); ++j) {
      const std::uint64_t k = j % 2 == 0 && j + 1 < segments_.size() ? key(j) : 0;
      const auto found = k != 0 ? pairs.find(k) : pairs.end();
      if (found == pairs.end() || found->second.first < 3) {
        next.push_back(segments_[j]);
        if (j + 1 < segments_.size() && j % 2 == 0) next.push_back(segments_[++j]);
        continue;
      }
      const Piece&a = segments_[j], &b = segments_[j + 1];
      if (found->second.second == 0) {
        join(p, a, b);
        found->second.second = static_cast<std::uint32_t>(joined_.size());
      }
      const std::uint32_t t = found->second.second - 1;
      ++joined_[t].segment.count;
      instances_.push_back({t, a.first, a.last, b.last});
      next.push_back({static_cast<std::uint32_t>(bays_->types() + t), a.first, b.last});
      any = true;
      ++j;
    }
    segments_.swap(next);
    return any;
  }

  void join(const PreparedFrame<S>& p, const Piece& a, const Piece& b) {
    using K = KernelsOf<S>;
    NodeMatrix<S> scratch_a, scratch_b;
    const auto of = [&](const Piece& s, NodeMatrix<S>& scratch) -> const NodeMatrix<S>& {
      return s.type < bays_->types() ? bays_->matrix(p, s.first, scratch) : type_of(s.type).matrix;
    };
    const NodeMatrix<S>&ka = of(a, scratch_a), &kb = of(b, scratch_b);
    const std::vector<BasicBlock6<S>>& cb = type_of(b.type).blocks;
    std::vector<BasicBlock6<S>> ca = type_of(a.type).blocks;  // turned: from the middle to the first station
    for (BasicBlock6<S>& block : ca) block = turned(block);
    const std::size_t n1 = ka.n1, n = ka.n2, n2 = kb.n2, ld = padded(n);
    Joined<S> out;
    out.left = a.type;
    out.right = b.type;
    std::vector<S> m(ld * n, S(0)), xr(ld * n2), xl(ld * n1), scratch((std::max)(n, n2) * padded((std::max)({n, n1, n2})));
    for (std::size_t c = 0; c < n; ++c) {
      const S *const of_a = &ka.at(n1, n1 + c), *const of_b = &kb.at(0, c);
      for (std::size_t r = 0; r < n; ++r) m[c * ld + r] = S(of_a[r] + of_b[r]);
    }
    bays_->add_station(p, a.last, m.data(), ld);
    const double ratio = K::invert(n, ld, m.data());
    if (!(ratio >= ratio_)) ratio_ = ratio > 0.0 ? ratio : 0.0;
    out.pivot.resize(K::packed_size(n));
    K::pack(n, ld, m.data(), out.pivot.data());
    K::times_blocks(n, n2, ld, m.data(), cb.data(), cb.size(), ld, xr.data());
    K::times_blocks(n, n1, ld, m.data(), ca.data(), ca.size(), ld, xl.data());
    NodeMatrix<S>& k = out.segment.matrix;
    k.n1 = n1;
    k.n2 = n2;
    k.ld = padded(n1 + n2);
    k.k.assign(k.ld * (n1 + n2), S(0));
    std::vector<S> d;
    const auto side = [&](std::size_t size, const std::vector<S>& x, const std::vector<BasicBlock6<S>>& c, std::size_t to, const NodeMatrix<S>& from, std::size_t from_at) {
      const std::size_t lds = padded(size);
      d.assign(lds * size, S(0));
      for (std::size_t i = 0; i < size; ++i) std::copy(&from.at(from_at, from_at + i), &from.at(from_at, from_at + i) + size, d.data() + i * lds);
      K::minus_blocks_transposed(n, size, ld, x.data(), c.data(), c.size(), lds, d.data(), scratch.data());
      for (std::size_t i = 0; i < size; ++i) {
        S* const column = &k.at(to, to + i);
        for (std::size_t j = 0; j < i; ++j) column[j] = d[j * lds + i];
        for (std::size_t j = i; j < size; ++j) column[j] = d[i * lds + j];
      }
    };
    side(n1, xl, ca, 0, ka, 0);
    side(n2, xr, cb, n1, kb, n);
    // C' = -C_a (P C_b) = -(X_rᵀ C_aᵀ)ᵀ
    const std::size_t ld2 = padded(n2);
    std::vector<S> xt(ld2 * n, S(0)), ct(ld2 * n1);
    for (std::size_t c = 0; c < n2; ++c)
      for (std::size_t r = 0; r < n; ++r) xt[r * ld2 + c] = xr[c * ld + r];
    K::times_blocks(n2, n1, ld2, xt.data(), ca.data(), ca.size(), ld2, ct.data());
    for (std::size_t c = 0; c < n1; ++c) {
      S* const column = &k.at(n1, c);
      for (std::size_t r = 0; r < n2; ++r) column[r] = S(-ct[c * ld2 + r]);
    }
    for (std::size_t c = 0; c < n2; ++c)
      for (std::size_t r = 0; r < n1; ++r) k.at(r, n1 + c) = S(-ct[r * ld2 + c]);
    ChainBays<S>::find_blocks(k, out.segment.blocks);
    joined_.push_back(std::move(out));

  }

  const ChainBays<S>* bays_ = nullptr;
  std::vector<std::size_t> start_;
  std::vector<Piece> segments_;
  std::vector<Joined<S>> joined_;
  std::vector<Instance> instances_;
  Lists inside_;
  double ratio_ = 1.0;
};

}  // namespace baywork::detail
