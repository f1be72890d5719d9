// SPDX-License-Identifier: MIT
// Which members go four at a time: those of one sort together, what is left over in the order of the frame.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/frame/frame.hpp>
#include <baywork/solve/detail/lists.hpp>
#include <baywork/solve/detail/member_lanes.hpp>
#include <baywork/solve/detail/member_sorts.hpp>

namespace baywork::detail {

/// Some members of a frame in groups; empty where this machine cannot run them. Groups follow the frame's order as far
/// as sorts allow, so that a long girder is passed through once. Some thirteen bytes per member, apart from the
/// numbers, which groups of one sort share.
class MemberGroups {
 public:
  /// Groups the members that `each(take)` calls take(member) for.
  template <class Each>
  void make(const BasicFrame<double>& frame, const std::vector<MemberSort<double>>& sorts,
            const std::vector<std::uint32_t>& sort_of, const Each& each) {
    groups_.clear();
    lanes_.clear();
    if (!has_twofold_lanes()) return;
    struct Waiting {
      std::array<std::uint32_t, twofold_lanes> member{};
      std::uint32_t count = 0, lanes = MemberGroup::none;
    };
    std::vector<Waiting> waiting(sorts.size());
    each([&](std::uint32_t i) {
      Waiting& w = waiting[sort_of[i]];
      w.member[w.count++] = i;
      if (w.count < twofold_lanes) return;
      if (w.lanes == MemberGroup::none) {
        w.lanes = static_cast<std::uint32_t>(lanes_.size());
        lanes_.emplace_back();
        for (std::size_t lane = 0; lane < twofold_lanes; ++lane) lanes_.back().put(lane, sorts[sort_of[i]].accurate);
      }
      MemberGroup g;
      g.lanes = w.lanes;
      for (std::size_t lane = 0; lane < twofold_lanes; ++lane) place(frame, w.member[lane], lane, g);
      groups_.push_back(g);
      w.count = 0;
    });
    sort_by_place(frame.nodes.size());
    std::vector<std::uint32_t> left;
    for (const Waiting& w : waiting) left.insert(left.end(), w.member.begin(), w.member.begin() + w.count);
    std::sort(left.begin(), left.end());
    for (std::size_t first = 0; first < left.size(); first += twofold_lanes) {
      MemberGroup g;
      g.lanes = static_cast<std::uint32_t>(lanes_.size());
      lanes_.emplace_back();
      for (std::size_t lane = 0; lane < twofold_lanes && first + lane < left.size(); ++lane) {
        lanes_.back().put(lane, sorts[sort_of[left[first + lane]]].accurate);
        place(frame, left[first + lane], lane, g);
      }
      groups_.push_back(g);
    }
  }

  /// Takes a member's new numbers: its group then has lanes of its own.
  void renew(std::uint32_t member, const MemberSort<double>& sort) {
    for (MemberGroup& g : groups_)
      for (std::size_t lane = 0; lane < twofold_lanes; ++lane) {
        if (g.member[lane] != member) continue;
        const auto shares = [&g](const MemberGroup& other) { return other.lanes == g.lanes; };
        if (std::count_if(groups_.begin(), groups_.end(), shares) > 1) {
          lanes_.push_back(MemberLanes(lanes_[g.lanes]));
          g.lanes = static_cast<std::uint32_t>(lanes_.size() - 1);
        }
        lanes_[g.lanes].put(lane, sort.accurate);
        return;
      }
  }

  bool empty() const noexcept { return groups_.empty(); }
  const std::vector<MemberGroup>& groups() const noexcept { return groups_; }
  const MemberLanes* lanes() const noexcept { return lanes_.data(); }

 private:
  static void place(const BasicFrame<double>& frame, std::uint32_t member, std::size_t lane, MemberGroup& g) {
    g.member[lane] = member;
    g.from[lane] = static_cast<std::uint32_t>(frame.members[member].from);
    g.to[lane] = static_cast<std::uint32_t>(frame.members[member].to);
  }

  /// Girders list their members kind by kind: one pass along the girder instead of one for each kind finds the motions of
  /// its joints still at hand.
  void sort_by_place(std::size_t nodes) {
    constexpr std::size_t block = 256;
    if (nodes <= block) return;
    const Lists order = Lists::sorted(nodes / block + 1, groups_.size(), [&](std::size_t i) {
      return std::size_t{(std::min)(groups_[i].from[0], groups_[i].to[0])} / block;
    });
    std::vector<MemberGroup> sorted;
    sorted.reserve(groups_.size());
    for (const std::uint32_t i : order.items) sorted.push_back(groups_[i]);
    groups_.swap(sorted);
  }

  std::vector<MemberGroup> groups_;
  std::vector<MemberLanes> lanes_;
};

/// Other scalars have none.
struct NoGroups {};
template <class S>
struct GroupsOf {
  using type = NoGroups;
};
template <>
struct GroupsOf<double> {
  using type = MemberGroups;
};

}  // namespace baywork::detail
