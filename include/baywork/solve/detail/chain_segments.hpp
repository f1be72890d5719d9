// SPDX-License-Identifier: MIT
// Identical bays of a chain joined to longer and longer segments, each kind of which is worked out once.
#pragma once

#include <algorithm>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include <baywork/solve/detail/aligned_vector.hpp>
#include <baywork/solve/detail/chain_bays.hpp>
#include <baywork/solve/detail/chain_ground.hpp>
#include <baywork/solve/detail/chain_halves.hpp>
#include <baywork/solve/detail/kernels.hpp>

namespace baywork::detail {

/// Two segments joined by eliminating the station between them.
template <class S>
struct Joined {
  std::uint32_t left = 0, right = 0;     ///< segments it is made of
  BayType<S> segment;                    ///< what it is to its ends; of halves, put together only where it stays in the chain
};
/// What solving needs of it where it is not joined in halves.
/// All in one room: the packed inverse P of the stiffness of the station between; P C_leftᵀ and P C_right, which take
/// the ends' motions to that station; and their transposes with the sign turned, which take its forces to the ends.
template <class S>
struct WholeJoint {
  std::size_t size;
  Room<S> room;
  S *pivot, *from_left, *from_right, *minus_to_left, *minus_to_right;

  WholeJoint(std::size_t n, std::size_t n1, std::size_t n2)
      : size(padded(KernelsOf<S>::packed_size(n)) + padded(n) * (n1 + n2) + (padded(n1) + padded(n2)) * n), room(size),
        pivot(room.begin()), from_left(pivot + padded(KernelsOf<S>::packed_size(n))), from_right(from_left + padded(n) * n1),
        minus_to_left(from_right + padded(n) * n2), minus_to_right(minus_to_left + padded(n1) * n) {}
  std::size_t bytes() const noexcept { return size * sizeof(S); }
};

/// A segment, from station to station: a bay, or several bays whose stations in between are eliminated.
struct Segment {
  std::uint32_t type = 0, first = 0, last = 0;
};
/// Where two segments are joined.
struct SegmentJoint {
  std::uint32_t joined = 0, first = 0, middle = 0, last = 0;
};

/// The segments of a chain. Those made of the same bays are worked out once, by joining two of a kind again and again: 2,
/// 4, 8 bays.
///
/// Joining: with P the inverse of (K22 of the left one + the station's members + K11 of the right one),
///   K11' = K11 - C P Cᵀ (C of the left), K22' = K22 - Cᵀ P C (C of the right), C' = -C_left P C_right.
/// Loads between go to the ends by the same matrices, motions come back by them. Where the bays are their own mirror
/// images, this is done for what the mirror keeps and for what it turns about apart (HalvedSegments).
template <class S>
class ChainSegments {
 public:
  ChainSegments() = default;
  /// `longest`: bays in a segment, at most; 1 joins nothing.
  ChainSegments(const PreparedFrame<S>& p, const ChainBays<S>& bays, const ChainGround<S>& ground, std::size_t longest) : bays_(&bays) {
    for (std::size_t i = 0; i < bays.stations(); ++i) widest_ = (std::max)(widest_, padded(bays.unknowns(i)));
    segments_.reserve(bays.stations());
    for (std::size_t b = 0; b + 1 < bays.stations(); ++b) segments_.push_back({bays.type_index(b), static_cast<std::uint32_t>(b), static_cast<std::uint32_t>(b + 1)});
    Space space;
    if (longest > 1) {
      space.next.reserve(segments_.size());
      joints_.reserve(segments_.size());
    }
    while (longest > 1 && join_once(p, ground, longest, space)) {
    }
    if (!space.halves) return;
    mirror_ = space.halves->mirror();
    for (const Segment& s : segments_)  // what the chain that is left needs
      if (s.type >= bays.types())
        if (BayType<S>& segment = joined_[s.type - bays.types()].segment; segment.blocks.empty()) space.halves->put_together(s.type, segment);
  }

  const std::vector<Segment>& segments() const noexcept { return segments_; }
  /// Where they have been joined, from short to long ones.
  const std::vector<SegmentJoint>& joints() const noexcept { return joints_; }
  const BayType<S>& type_of(std::uint32_t t) const {
    return t < bays_->types() ? bays_->type_at(t) : joined_[t - bays_->types()].segment;
  }
  std::size_t types() const noexcept { return bays_->types() + joined_.size(); }
  const Joined<S>& joined(const SegmentJoint& i) const { return joined_[i.joined]; }
  const WholeJoint<S>& whole(const SegmentJoint& i) const { return whole_[i.joined]; }
  const HalvedJoint<S>& halved(const SegmentJoint& i) const { return halved_[i.joined]; }
  std::size_t sorts_in_halves() const noexcept { return halved_.size(); }
  /// Whether segments are joined in halves, and by which mirror.
  bool in_halves() const noexcept { return mirror_.found; }
  const ChainMirror<S>& mirror() const noexcept { return mirror_; }

  double smallest_pivot_ratio() const noexcept { return ratio_; }
  std::size_t bytes() const noexcept {
    std::size_t sum = 0;
    for (const Joined<S>& t : joined_) sum += t.segment.blocks.size() * sizeof(BasicBlock6<S>);
    for (const WholeJoint<S>& t : whole_) sum += t.bytes();
    for (const HalvedJoint<S>& t : halved_) sum += t.bytes();
    return sum;
  }
  /// Additions and multiplications of joining: an inverse, its products with both couplings, what both ends lose (half:
  /// it is symmetric), and the new coupling.
  double flops() const noexcept { return flops_; }

 private:
  static constexpr std::uint32_t none = static_cast<std::uint32_t>(-1);

  /// Two neighbours, how often they occur, and the segment made of them (number + 1).
  struct Pair {
    std::uint32_t left = 0, right = 0, between = 0, count = 0, made = 0;
    bool seen = false;
  };
  /// What joining needs besides its result.
  struct Space {
    std::vector<Pair> pairs;
    std::vector<std::uint32_t> pair_of;
    std::vector<Segment> next;
    std::unique_ptr<Room<S>> room;
    std::vector<BasicBlock6<S>> turned_blocks;
    std::optional<HalvedSegments<S>> halves;
    std::vector<std::uint32_t> bay_types, stations_between;
  };

  /// Joins neighbours that occur as a pair three times or more, in halves also long ones that occur once; false where
  /// there are none. In a chain of more than `most` different pairs, those met after them are left alone.
  bool join_once(const PreparedFrame<S>& p, const ChainGround<S>& ground, std::size_t longest, Space& space) {
    constexpr std::size_t most = 64;
    space.pairs.clear();
    space.pair_of.assign(segments_.size(), none);
    for (std::size_t j = 0; j + 1 < segments_.size(); j += 2) {
      const Segment&a = segments_[j], &b = segments_[j + 1];
      if (b.last - a.first > longest || ground.begin(a.last) != ground.end(a.last)) continue;
      const std::uint32_t between = bays_->station_type(a.last);
      std::size_t i = 0;
      while (i < space.pairs.size() && (space.pairs[i].left != a.type || space.pairs[i].right != b.type || space.pairs[i].between != between)) ++i;
      if (i == most) continue;
      if (i == space.pairs.size()) space.pairs.push_back({a.type, b.type, between, 0, 0, false});
      ++space.pairs[i].count;
      space.pair_of[j] = static_cast<std::uint32_t>(i);
    }
    if (joined_.empty()) look_for_halves(p, space);
    space.next.clear();
    bool any = false;
    for (std::size_t j = 0; j < segments_.size(); j += 2) {
      const std::uint32_t i = space.pair_of[j];
      if (i == none || !is_worth_joining(space, space.pairs[i].count, j)) {
        space.next.push_back(segments_[j]);
        if (j + 1 < segments_.size()) space.next.push_back(segments_[j + 1]);
        continue;
      }
      const Segment&a = segments_[j], &b = segments_[j + 1];
      if (space.pairs[i].made == 0) {
        space.halves ? join_halves(a, b, space) : join(p, a, b, space);
        space.pairs[i].made = static_cast<std::uint32_t>(joined_.size());
      }
      const std::uint32_t t = space.pairs[i].made - 1;
      ++joined_[t].segment.count;
      joints_.push_back({t, a.first, a.last, b.last});
      space.next.push_back({static_cast<std::uint32_t>(bays_->types() + t), a.first, b.last});
      any = true;
    }
    segments_.swap(space.next);
    return any;
  }

  /// Before anything is joined: whether all that occurs three times is its own mirror image.
  void look_for_halves(const PreparedFrame<S>& p, Space& space) const {
    if constexpr (std::floating_point<S>) {
      space.bay_types.clear(), space.stations_between.clear();
      for (std::size_t j = 0; j + 1 < segments_.size(); j += 2) {
        const std::uint32_t i = space.pair_of[j];
        if (i == none || space.pairs[i].count < 3 || space.pairs[i].seen) continue;
        space.pairs[i].seen = true;
        space.bay_types.insert(space.bay_types.end(), {segments_[j].type, segments_[j + 1].type});
        space.stations_between.push_back(segments_[j].last);
      }
      if (space.bay_types.empty()) return;
      space.halves.emplace(p, *bays_);
      if (!space.halves->find(space.bay_types, space.stations_between)) space.halves.reset();
    }
  }
  /// A segment that occurs but once or twice costs memory of its own: that is little where it is long.
  bool is_worth_joining(Space& space, std::size_t count, std::size_t j) const {
    const Segment&a = segments_[j], &b = segments_[j + 1];
    if (!space.halves) return count >= 3;
    const bool enough = count >= 3 || (b.last - b.first >= 4 && a.last - a.first >= 4);
    return enough && space.halves->segment(a.type) && space.halves->segment(b.type) && space.halves->between(a.last);
  }
  void join_halves(const Segment& a, const Segment& b, Space& space) {
    const std::uint32_t made = static_cast<std::uint32_t>(types());
    halved_.push_back(space.halves->join(a.type, b.type, a.last, made, ratio_));
    joined_.push_back({a.type, b.type, {}});
    flops_ += space.halves->flops();
  }
  void join(const PreparedFrame<S>& p, const Segment& a, const Segment& b, Space& space) {
    using K = KernelsOf<S>;
    const std::size_t n1 = bays_->unknowns(a.first), n = bays_->unknowns(a.last), n2 = bays_->unknowns(b.last);
    const std::size_t ld = padded(n), ld1 = padded(n1), ld2 = padded(n2), size = widest_ * widest_;
    BayType<S>& segment = joined_.emplace_back(Joined<S>{a.type, b.type, {}}).segment;
    WholeJoint<S>& out = whole_.emplace_back(n, n1, n2);
    const BayType<S>&ta = type_of(a.type), &tb = type_of(b.type);
    const std::vector<BasicBlock6<S>>&ca = ta.blocks, &cb = tb.blocks;
    std::vector<BasicBlock6<S>>& cat = space.turned_blocks;  // from the middle to the first station
    turn(ca, cat);
    if (!space.room) space.room = std::make_unique<Room<S>>(2 * size);
    S *const m = space.room->begin(), *const k = m + size;
    const auto start = [](S* to, std::size_t count, const std::vector<BasicBlock6<S>>& blocks, std::size_t ldk) {
      std::fill(to, to + count, S(0));
      add_blocks(blocks, to, ldk);
    };
    start(m, ld * n, ta.second, ld);
    add_blocks(tb.first, m, ld);
    bays_->add_station(p, a.last, m, ld);
    for (std::size_t u = 0; u < n; ++u) see_ratio(bays_->size_of_pivot(u, value_of(m[u * ld + u])), ratio_);
    see_ratio(K::invert(n, ld, m), ratio_);
    K::pack(n, ld, m, out.pivot);
    K::times_blocks(n, n2, ld, m, cb.data(), cb.size(), ld, out.from_right);
    start(k, ld2 * n2, tb.second, ld2);
    K::minus_blocks_transposed(n, n2, ld, out.from_right, cb.data(), cb.size(), ld2, k, out.minus_to_right);
    ChainBays<S>::find_blocks(k, ld2, n2, n2, true, segment.second);
    K::times_blocks(n, n1, ld, m, cat.data(), cat.size(), ld, out.from_left);
    start(k, ld1 * n1, ta.first, ld1);
    K::minus_blocks_transposed(n, n1, ld, out.from_left, cat.data(), cat.size(), ld1, k, out.minus_to_left);
    ChainBays<S>::find_blocks(k, ld1, n1, n1, true, segment.first);
    // C' = -C_a P C_b, and what takes forces to the left holds -C_a P
    K::times_blocks(n1, n2, ld1, out.minus_to_left, cb.data(), cb.size(), ld1, k);
    ChainBays<S>::find_blocks(k, ld1, n1, n2, false, segment.blocks);
    const double nd = static_cast<double>(n);
    flops_ += nd * nd * nd + (2.0 * nd + static_cast<double>(n1)) * numbers_in(ca) + (2.0 * nd + static_cast<double>(n2 + 2 * n1)) * numbers_in(cb);
  }

  const ChainBays<S>* bays_ = nullptr;
  std::size_t widest_ = 0;
  std::vector<Segment> segments_;
  std::vector<SegmentJoint> joints_;
  std::vector<Joined<S>> joined_;
  std::vector<WholeJoint<S>> whole_;     ///< of each joined one, or
  std::vector<HalvedJoint<S>> halved_;
  ChainMirror<S> mirror_;
  double ratio_ = 1.0, flops_ = 0.0;
};

}  // namespace baywork::detail
