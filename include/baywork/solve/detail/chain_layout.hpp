// SPDX-License-Identifier: MIT
// Sees from a frame that it is a chain: stations, bays between them, and joints inside a bay.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/frame/frame.hpp>
#include <baywork/solve/detail/freedoms.hpp>
#include <baywork/solve/detail/lists.hpp>

namespace baywork::detail {

/// A frame cut into stations such that members run within a station or to the next one. Joints that have to do with one
/// bay alone stand apart, to be condensed.
struct ChainLayout {
  static constexpr std::size_t most_joints = 8;  ///< per station: beyond that a general sparse order is the better one

  std::string why_not;               ///< empty: the frame is a chain
  Lists stations;                    ///< nodes of each station; the first one is its reference
  Lists inner;                       ///< nodes inside each bay
  Lists within, along;               ///< members inside a station, and of a bay
  std::vector<std::uint32_t> ends;   ///< of each member: the node it comes from and the one it goes to
  std::vector<std::uint32_t> place;  ///< of each node in its list
  std::vector<std::uint32_t> at;     ///< of each node: its station, or the bay it stands inside plus inner_flag
  bool turning = true;               ///< each station has a reference that resists turning

  static constexpr std::uint32_t inner_flag = 0x8000'0000U;

  bool found() const noexcept { return why_not.empty(); }
  std::size_t bays() const noexcept { return inner.size(); }
};

template <class S>
class ChainFinder {
 public:
  explicit ChainFinder(const BasicFrame<S>& frame) : frame_(frame) {}

  ChainLayout find() {
    ChainLayout out;
    read_members();
    supported_.assign(frame_.nodes.size(), 0);
    for (const BasicSupport<S>& s : frame_.supports)
      for (const BasicRestraint<S>& r : s.motion)
        if (r.kind != BasicRestraint<S>::Kind::free) supported_[s.node] = 1;
    best_.cost = rigid_stiffness;
    if (by_address()) consider();
    if (!(best_.width <= ChainLayout::most_joints)) {
      for (std::size_t c = 1; c <= ChainLayout::most_joints; ++c)
        if (frame_.nodes.size() % c == 0) {
          for (std::size_t n = 0; n < frame_.nodes.size(); ++n) level_[n] = static_cast<std::uint32_t>(n / c);
          consider();
        }
      if (!(best_.width <= ChainLayout::most_joints) && by_distance()) consider();
    }
    if (best_.groups < 3)
      out.why_not = "its joints do not lie in three or more stations with bars between neighbours alone";
    else if (best_.width > ChainLayout::most_joints)
      out.why_not = "its narrowest order of stations has " + std::to_string(best_.width) + " joints in one of them, and " +
                    std::to_string(ChainLayout::most_joints) + " are the most for a chain";
    if (out.found()) lay_out(out);
    out.ends.swap(ends_);
    return out;
  }

 private:
  struct Order {
    double cost = 0;
    std::size_t width = static_cast<std::size_t>(-1), groups = 0;
    std::vector<std::uint32_t> station;  ///< of each node
    std::vector<char> inner;             ///< it belongs to the bay after that station
  };

  /// What is asked of members again and again, next to each other.
  void read_members() {
    ends_.resize(2 * frame_.members.size());
    turning_.assign(frame_.nodes.size(), 0);
    std::uint32_t* end = ends_.data();
    for (const BasicMember<S>& m : frame_.members) {
      *end++ = static_cast<std::uint32_t>(m.from);
      *end++ = static_cast<std::uint32_t>(m.to);
      if (m.kind == MemberKind::beam) turning_[m.from] = turning_[m.to] = 1;
    }
  }

  bool by_address() {
    level_.assign(frame_.nodes.size(), 0);
    for (std::size_t n = 0; n < frame_.nodes.size(); ++n) {
      const int s = frame_.nodes[n].address.station;
      if (s < 0 || static_cast<std::size_t>(s) > frame_.nodes.size()) return false;
      level_[n] = static_cast<std::uint32_t>(s);
    }
    return true;
  }

  /// Levels of equal distance, in bars, from a joint as far out as can be found.
  bool by_distance() {
    const std::size_t n = frame_.nodes.size();
    Lists next = Lists::sorted(n, ends_.size(), [&](std::size_t i) { return ends_[i]; });
    std::vector<std::uint32_t> queue;
    std::uint32_t root = 0;
    for (int turn = 0; turn < 3; ++turn) {
      level_.assign(n, static_cast<std::uint32_t>(-1));
      queue.assign(1, root);
      level_[root] = 0;
      for (std::size_t q = 0; q < queue.size(); ++q)
        for (const std::uint32_t* i = next.begin(queue[q]); i != next.end(queue[q]); ++i) {
          const std::size_t other = ends_[*i ^ 1U];
          if (level_[other] != static_cast<std::uint32_t>(-1)) continue;
          level_[other] = level_[queue[q]] + 1;
          queue.push_back(ends_[*i ^ 1U]);
        }
      if (queue.size() < n) return false;
      root = queue.back();
    }
    return true;
  }

  /// Condenses and merges the levels of level_ until the frame is a chain, and keeps the result if it is the best so far.
  void consider() {
    const std::size_t n = frame_.nodes.size();
    const std::size_t levels = 1 + *std::max_element(level_.begin(), level_.end());
    if (levels < 3) return;
    // what each joint is tied to, before and after; and how far the bars from each level reach
    std::vector<std::uint32_t> low(level_), high(level_), reach(levels, 0);
    for (std::size_t i = 0; i < ends_.size(); i += 2) {
      const std::uint32_t a = ends_[i], b = ends_[i + 1], la = level_[a], lb = level_[b];
      if (la == lb) continue;
      low[a] = (std::min)(low[a], lb);
      low[b] = (std::min)(low[b], la);
      high[a] = (std::max)(high[a], lb);
      high[b] = (std::max)(high[b], la);
      std::uint32_t& far = reach[(std::min)(la, lb)];
      far = (std::max)({far, la, lb});
    }
    Order o;
    o.station = level_;
    o.inner.assign(n, 0);
    bool any = false;
    for (std::size_t i = 0; i < n; ++i) {
      if (high[i] - low[i] > 1 || supported_[i] != 0 || level_[i] == 0 || level_[i] + 1 == levels) continue;
      o.inner[i] = 1;
      o.station[i] = low[i];
      any = true;
    }
    if (any) {
      // a bar from an inner joint to an inner one of another bay keeps both in their stations
      for (std::size_t m = 0; m < ends_.size(); m += 2)
        if (const std::size_t a = ends_[m], b = ends_[m + 1]; o.inner[a] != 0 && o.inner[b] != 0 && o.station[a] != o.station[b])
          for (const std::size_t i : {a, b}) o.inner[i] = 0, o.station[i] = level_[i];
      reach.assign(levels, 0);
      for (std::size_t m = 0; m < ends_.size(); m += 2) {
        const auto [a, b] = std::minmax(o.station[ends_[m]], o.station[ends_[m + 1]]);
        reach[a] = (std::max)(reach[a], b);
      }
      for (std::size_t i = 0; i < n; ++i)
        if (o.inner[i] != 0) reach[o.station[i]] = (std::max)(reach[o.station[i]], o.station[i] + 1);
    }
    // merge stations that bars jump over
    std::vector<std::uint32_t> group(levels, 0);
    std::uint32_t begin = 0, end = 1, groups = 0, far = 0;
    while (begin < levels) {
      for (std::uint32_t l = begin; l < end; ++l) {
        group[l] = groups;
        far = (std::max)(far, reach[l]);
      }
      ++groups;
      const std::uint32_t next = (std::max)(end + 1, far + 1);
      begin = end;
      end = (std::min)(next, static_cast<std::uint32_t>(levels));
    }
    std::vector<std::uint32_t> width(groups, 0);
    for (std::size_t i = 0; i < n; ++i) {
      // merged stations take their inner joints in
      if (o.inner[i] != 0 && group[o.station[i]] == group[(std::min)(o.station[i] + 1, static_cast<std::uint32_t>(levels - 1))]) o.inner[i] = 0;
      o.station[i] = group[o.station[i]];
      if (o.inner[i] == 0) ++width[o.station[i]];
    }
    o.groups = groups;
    o.width = *std::max_element(width.begin(), width.end());
    if (*std::min_element(width.begin(), width.end()) == 0) return;
    for (const std::uint32_t w : width) o.cost += static_cast<double>(w) * w * w;
    if (o.groups >= 3 && o.cost < best_.cost) best_ = std::move(o);
  }

  void lay_out(ChainLayout& out) const {
    const std::size_t n = frame_.nodes.size(), stations = best_.groups;
    const std::size_t bays = stations - 1;
    out.stations = Lists::sorted(stations + bays, n, [&](std::size_t i) { return best_.inner[i] != 0 ? stations + best_.station[i] : best_.station[i]; });
    out.inner = out.stations.split(stations);
    std::vector<std::uint32_t> key(frame_.members.size());  // the bay, or the station after all bays
    for (std::size_t i = 0; i < key.size(); ++i) {
      const std::size_t a = ends_[2 * i], b = ends_[2 * i + 1];
      const std::uint32_t sa = best_.station[a], sb = best_.station[b];
      if (best_.inner[a] != 0)
        key[i] = sa;
      else if (best_.inner[b] != 0)
        key[i] = sb;
      else
        key[i] = sa == sb ? static_cast<std::uint32_t>(bays) + sa : (std::min)(sa, sb);
    }
    out.along = Lists::sorted(bays + stations, key.size(), [&](std::size_t i) { return key[i]; });
    out.within = out.along.split(bays);
    // the reference of a station: its first joint that resists turning
    for (std::size_t s = 0; s < stations; ++s) {
      std::uint32_t* const nodes = out.stations.items.data() + out.stations.first[s];
      const std::size_t count = out.stations.size(s);
      std::size_t best = count;
      for (std::size_t i = count; i-- > 0;)
        if (turning_[nodes[i]] != 0) best = i;
      if (best == count)
        out.turning = false;
      else
        std::rotate(nodes, nodes + best, nodes + best + 1);
    }
    out.place.assign(n, 0);
    out.at.assign(n, 0);
    for (const bool inside : {false, true}) {
      const Lists& l = inside ? out.inner : out.stations;
      for (std::size_t s = 0; s < l.size(); ++s)
        for (std::size_t i = 0; i < l.size(s); ++i) {
          out.place[l.begin(s)[i]] = static_cast<std::uint32_t>(i);
          out.at[l.begin(s)[i]] = static_cast<std::uint32_t>(s) | (inside ? ChainLayout::inner_flag : 0U);
        }
    }
  }

  const BasicFrame<S>& frame_;
  std::vector<std::uint32_t> ends_, level_;
  std::vector<char> supported_, turning_;
  Order best_;
};

}  // namespace baywork::detail
