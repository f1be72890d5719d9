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

namespace baywork::detail {

/// Lists of numbers one after the other: those of list i stand from first[i] to first[i + 1].
struct Lists {
  std::vector<std::uint32_t> first{0}, items;

  std::size_t size() const noexcept { return first.size() - 1; }
  std::size_t size(std::size_t i) const { return first[i + 1] - first[i]; }
  const std::uint32_t* begin(std::size_t i) const { return items.data() + first[i]; }
  const std::uint32_t* end(std::size_t i) const { return items.data() + first[i + 1]; }

  /// Sorts 0, 1, 2, ... into `count` lists by key; items without one (key beyond) are left out. Keeps their order.
  template <class KeyOf>
  static Lists sorted(std::size_t count, std::size_t n, const KeyOf& key_of) {
    Lists l;
    l.first.assign(count + 1, 0);
    for (std::size_t i = 0; i < n; ++i)
      if (const std::size_t k = key_of(i); k < count) ++l.first[k + 1];
    for (std::size_t k = 0; k < count; ++k) l.first[k + 1] += l.first[k];
    l.items.resize(l.first[count]);
    std::vector<std::uint32_t> next(l.first.begin(), l.first.end() - 1);
    for (std::size_t i = 0; i < n; ++i)
      if (const std::size_t k = key_of(i); k < count) l.items[next[k]++] = static_cast<std::uint32_t>(i);
    return l;
  }
};

/// A frame cut into stations such that members run within a station or to the next one. Joints that have to do with one
/// bay alone stand apart, to be condensed.
struct ChainLayout {
  static constexpr std::size_t most_joints = 8;  ///< per station: beyond that a general sparse order is the better one

  std::string why_not;               ///< empty: the frame is a chain
  Lists stations;                    ///< nodes of each station; the first one is its reference
  Lists inner;                       ///< nodes inside each bay
  Lists within, along;               ///< members inside a station, and of a bay
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
    return out;
  }

 private:
  struct Order {
    double cost = 0;
    std::size_t width = static_cast<std::size_t>(-1), groups = 0;
    std::vector<std::uint32_t> station;  ///< of each node
    std::vector<char> inner;             ///< it belongs to the bay after that station
  };

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
    Lists next = Lists::sorted(n, 2 * frame_.members.size(), [&](std::size_t i) { return i % 2 == 0 ? frame_.members[i / 2].from : frame_.members[i / 2].to; });
    std::vector<std::uint32_t> queue;
    std::uint32_t root = 0;
    for (int turn = 0; turn < 3; ++turn) {
      level_.assign(n, static_cast<std::uint32_t>(-1));
      queue.assign(1, root);
      level_[root] = 0;
      for (std::size_t q = 0; q < queue.size(); ++q)
        for (const std::uint32_t* i = next.begin(queue[q]); i != next.end(queue[q]); ++i) {
          const BasicMember<S>& m = frame_.members[*i / 2];
          const std::size_t other = *i % 2 == 0 ? m.to : m.from;
          if (level_[other] != static_cast<std::uint32_t>(-1)) continue;
          level_[other] = level_[queue[q]] + 1;
          queue.push_back(static_cast<std::uint32_t>(other));
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
    // what each joint is tied to: before, beside, after
    std::vector<std::uint32_t> low(level_), high(level_);
    for (const BasicMember<S>& m : frame_.members)
      for (const auto& [a, b] : {std::pair{m.from, m.to}, std::pair{m.to, m.from}}) {
        low[a] = (std::min)(low[a], level_[b]);
        high[a] = (std::max)(high[a], level_[b]);
      }
    Order o;
    o.station = level_;
    o.inner.assign(n, 0);
    for (std::size_t i = 0; i < n; ++i) {
      if (supported_[i] != 0 || level_[i] == 0 || level_[i] + 1 == levels || high[i] - low[i] > 1) continue;
      o.inner[i] = 1;
      o.station[i] = low[i];
    }
    // a bar from an inner joint to an inner one of another bay keeps both in their stations
    for (const BasicMember<S>& m : frame_.members)
      if (o.inner[m.from] != 0 && o.inner[m.to] != 0 && o.station[m.from] != o.station[m.to])
        for (const std::size_t i : {m.from, m.to}) o.inner[i] = 0, o.station[i] = level_[i];
    // merge stations that bars jump over
    std::vector<std::uint32_t> reach(levels, 0);
    for (const BasicMember<S>& m : frame_.members) {
      const auto [a, b] = std::minmax(o.station[m.from], o.station[m.to]);
      reach[a] = (std::max)(reach[a], b);
    }
    for (std::size_t i = 0; i < n; ++i)
      if (o.inner[i] != 0) reach[o.station[i]] = (std::max)(reach[o.station[i]], o.station[i] + 1);
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
    out.stations = Lists::sorted(stations, n, [&](std::size_t i) { return best_.inner[i] != 0 ? stations : best_.station[i]; });
    out.inner = Lists::sorted(stations - 1, n, [&](std::size_t i) { return best_.inner[i] != 0 ? best_.station[i] : stations; });
    const auto bay_of = [&](const BasicMember<S>& m) -> std::size_t {  // `stations` for members inside one
      const std::size_t a = m.from, b = m.to;
      if (best_.inner[a] != 0) return best_.station[a];
      if (best_.inner[b] != 0) return best_.station[b];
      if (best_.station[a] == best_.station[b]) return stations;
      return (std::min)(best_.station[a], best_.station[b]);
    };
    out.along = Lists::sorted(stations - 1, frame_.members.size(), [&](std::size_t i) { return bay_of(frame_.members[i]); });
    out.within = Lists::sorted(stations, frame_.members.size(), [&](std::size_t i) {
      const BasicMember<S>& m = frame_.members[i];
      return bay_of(m) == stations ? best_.station[m.from] : stations;
    });
    // the reference of a station: its first joint that resists turning
    const std::vector<char> resists = joints_of_beams();
    for (std::size_t s = 0; s < stations; ++s) {
      std::uint32_t* const nodes = out.stations.items.data() + out.stations.first[s];
      const std::size_t count = out.stations.size(s);
      std::size_t best = count;
      for (std::size_t i = count; i-- > 0;)
        if (resists[nodes[i]] != 0) best = i;
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
  std::vector<char> joints_of_beams() const {
    std::vector<char> beams(frame_.nodes.size(), 0);
    for (const BasicMember<S>& m : frame_.members)
      if (m.kind == MemberKind::beam) beams[m.from] = beams[m.to] = 1;
    return beams;
  }

  const BasicFrame<S>& frame_;
  std::vector<std::uint32_t> level_;
  std::vector<char> supported_;
  Order best_;
};

}  // namespace baywork::detail
