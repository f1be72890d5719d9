// SPDX-License-Identifier: MIT
// Segments of a chain that is its own mirror image, joined half by half: a quarter of the work for each.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

#include <baywork/solve/detail/chain_bays.hpp>
#include <baywork/solve/detail/chain_mirror.hpp>
#include <baywork/solve/detail/kernels.hpp>

namespace baywork::detail {

/// What both halves of a joint between two segments keep for solving: `swept` and `turned` of Kernels::join.
template <class S>
struct HalvedJoint {
  static constexpr std::size_t square = 2 * joint_half * joint_half;
  Room<S> room{5 * square};

  S* swept() const { return room.begin(); }
  S* turned() const { return room.begin() + 3 * square; }
  static std::size_t bytes() noexcept { return 5 * square * sizeof(S); }
};

/// Joins segments of a chain whose bays and stations are their own mirror images.
template <class S>
class HalvedSegments {
 public:
  using K = KernelsOf<S>;

  HalvedSegments(const PreparedFrame<S>& p, const ChainBays<S>& bays) : p_(p), bays_(bays) {}

  const ChainMirror<S>& mirror() const noexcept { return mirror_; }

  /// Looks for a mirror across an axis of which these types of bays, and these stations, are their own images.
  bool find(const std::vector<std::uint32_t>& bay_types, const std::vector<std::uint32_t>& stations) {
    const Lists& joints = bays_.layout().stations;
    for (const std::size_t normal : {std::size_t{1}, std::size_t{0}, std::size_t{2}}) {
      mirror_ = ChainMirror<S>::across(normal, p_.frame, joints.begin(stations.front()), joints.end(stations.front()));
      if (!mirror_.found) continue;
      segments_.clear(), between_.clear();
      segments_.reserve(bays_.types() + 8);
      if (std::all_of(bay_types.begin(), bay_types.end(), [&](std::uint32_t t) { return segment(t) != nullptr; }) &&
          std::all_of(stations.begin(), stations.end(), [&](std::uint32_t s) { return between(s) != nullptr; }))
        return true;
    }
    mirror_ = {};
    return false;
  }

  /// A segment of a type as `Kernels::join` takes it; none where it is not its own mirror image.
  const S* segment(std::uint32_t type) {
    if (type >= segments_.size()) segments_.resize(type + 1);
    Known& s = segments_[type];
    if (!s.asked) {
      s.asked = true;
      if (type < bays_.types()) split_bay(bays_.type_at(type), s);
    }
    return s.room ? s.room->begin() : nullptr;
  }
  /// The stiffness of a station on its own, which has another one like it; none where it is not its own mirror image.
  const S* between(std::uint32_t station) {
    const std::uint32_t type = bays_.station_type(station);
    if (type >= between_.size()) between_.resize(type + 1);
    Known& s = between_[type];
    if (!s.asked) {
      s.asked = true;
      split_station(station, s);
    }
    return s.room ? s.room->begin() : nullptr;
  }

  /// Joins segments left and right at a station to one of the type `made`; takes note of pivots in `ratio`.
  HalvedJoint<S> join(std::uint32_t left, std::uint32_t right, std::uint32_t station, std::uint32_t made, double& ratio) {
    segment(made);
    S* const out = segments_[made].make(2 * joint_half);
    HalvedJoint<S> joint;
    std::array<S, 2 * joint_half> given{};
    see_ratio(K::join(segment(left), segment(right), between(station), given.data(), joint.swept(), joint.turned(), out), ratio);
    for (std::size_t u = 0; u < given.size(); ++u) see_ratio(bays_.size_of_pivot(u / 2, value_of(given[u])), ratio);
    return joint;
  }

  /// What a segment is to its ends' own motions.
  void put_together(std::uint32_t type, BayType<S>& out) {
    constexpr std::size_t ld = 2 * joint_half;
    const S* const s = segment(type);
    mirror_.put_together(s, ld, true, out.first);
    mirror_.put_together(s + 2 * joint_half * (ld + 1), ld, true, out.second);
    mirror_.put_together(s + 2 * joint_half, ld, false, out.blocks);
  }
  /// Additions and multiplications of a join: P, C P and what both ends lose (half: it is symmetric).
  static double flops() noexcept {
    constexpr double n = joint_half;
    return 2.0 * n * n * (n + 4.0 * n + 4.0 * n + 2.0);
  }

 private:
  /// A symmetric matrix in halves, lower triangles; none until it is made.
  struct Known {
    bool asked = false;
    std::unique_ptr<Room<S>> room;

    S* make(std::size_t order) {
      room = std::make_unique<Room<S>>(2 * order * order);
      return room->begin();
    }
    S* make_empty(std::size_t order) {
      S* const to = make(order);
      std::fill(to, to + 2 * order * order, S(0));
      return to;
    }
  };

  static double size_in(const std::vector<BasicBlock6<S>>& diagonal, int joint, std::size_t motion) {
    for (const BasicBlock6<S>& b : diagonal)
      if (b.row == joint && b.column == joint) return std::abs(value_of(b(motion, motion)));
    return 0.0;
  }
  void split_bay(const BayType<S>& t, Known& out) const {
    constexpr std::size_t n = joint_half, ld = 2 * n;
    if (bays_.unknowns(t.example) != 2 * n || bays_.unknowns(t.example + 1) != 2 * n) return;
    const auto first = [&](int joint, std::size_t k) { return size_in(t.first, joint, k); };
    const auto second = [&](int joint, std::size_t k) { return size_in(t.second, joint, k); };
    if (!mirror_.reflects(t.first, true, first, first) || !mirror_.reflects(t.second, true, second, second) ||
        !mirror_.reflects(t.blocks, false, first, second))
      return;
    S* const to = out.make_empty(2 * n);
    mirror_.add(t.first, true, to, ld);
    mirror_.add(t.second, true, to + 2 * n * (ld + 1), ld);
    mirror_.add_turned(t.blocks, to + 2 * n, ld);
  }
  void split_station(std::uint32_t station, Known& out) const {
    const std::vector<BasicBlock6<S>>* const blocks = bays_.station_blocks(station);
    if (blocks == nullptr || bays_.unknowns(station) != 2 * joint_half) return;
    const auto size = [&](int joint, std::size_t k) { return size_in(*blocks, joint, k); };
    if (mirror_.reflects(*blocks, true, size, size)) mirror_.add(*blocks, true, out.make_empty(joint_half), joint_half);
  }

  const PreparedFrame<S>& p_;
  const ChainBays<S>& bays_;
  ChainMirror<S> mirror_;
  std::vector<Known> segments_, between_;
};

}  // namespace baywork::detail
