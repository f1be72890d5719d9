// SPDX-License-Identifier: MIT
// The shorter chain that joining leaves: forces inside its segments go to their ends, motions come back from there.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/solve/detail/chain_segments.hpp>
#include <baywork/solve/detail/lists.hpp>

namespace baywork::detail {

/// A chain whose bays are segments. Loads between go to the ends by the matrices of a joint, motions come back by them.
template <class S>
class ChainRuns {
 public:
  static constexpr std::size_t together = 4;  ///< stations inside segments that are dealt with at once

  ChainRuns() = default;
  /// `longest`: bays in a segment, at most; 1 joins nothing.
  ChainRuns(const PreparedFrame<S>& p, const ChainBays<S>& bays, const ChainGround<S>& ground, std::size_t longest)
      : bays_(&bays), made_(p, bays, ground, longest) {
    start_.reserve(bays.stations() + 1);
    start_.assign(1, 0);
    for (std::size_t i = 0; i < bays.stations(); ++i) start_.push_back(start_.back() + padded(bays.unknowns(i)));
    if (!made_.joints().empty()) place_joints();
    if (in_halves()) note_halves();
  }

  const ChainBays<S>& bays() const noexcept { return *bays_; }
  /// What has been joined.
  const ChainSegments<S>& made() const noexcept { return made_; }
  /// Stations of the shorter chain, and which of the frame's they are.
  std::size_t stations() const noexcept { return segments().size() + 1; }
  std::size_t station(std::size_t j) const { return j < segments().size() ? segments()[j].first : segments().back().last; }
  std::size_t unknowns(std::size_t j) const { return bays_->unknowns(station(j)); }
  const BayType<S>& type(std::size_t j) const { return made_.type_of(segments()[j].type); }
  std::uint32_t type_index(std::size_t j) const { return segments()[j].type; }
  /// The stiffness of segment j, in full.
  void matrix(std::size_t j, NodeMatrix<S>& m) const { put_together(type(j), unknowns(j), unknowns(j + 1), m); }
  /// Stiffness of station j on its own, into m (lower triangle; rows and columns as padded): of the segments on both sides
  /// and of the members inside the station.
  void own(const PreparedFrame<S>& p, std::size_t j, S* m) const {
    const std::size_t n = unknowns(j), ld = padded(n);
    std::fill(m, m + ld * n, S(0));
    if (j > 0) add_blocks(type(j - 1).second, m, ld);
    if (j < segments().size()) add_blocks(type(j).first, m, ld);
    bays_->add_station(p, station(j), m, ld);
  }
  bool joined(std::size_t j) const { return segments()[j].last > segments()[j].first + 1; }
  bool in_halves() const noexcept { return made_.in_halves(); }

  /// Where a station of the frame stands in a solution's vector.
  std::size_t start(std::size_t frame_station) const { return start_[frame_station]; }
  std::size_t length() const noexcept { return start_.back(); }

  /// Additions and multiplications of one solution: each station inside is multiplied with its inverse, and twice with
  /// what takes it to both ends.
  double solve_flops() const {
    double sum = 0.0;
    for (const SegmentJoint& i : joints_) {
      const double n = static_cast<double>(bays_->unknowns(i.middle));
      sum += 2.0 * n * n + 4.0 * n * static_cast<double>(bays_->unknowns(i.first) + bays_->unknowns(i.last));
    }
    return in_halves() ? 0.5 * sum : sum;
  }

  /// Takes forces on stations inside segments to the segments' ends. `z`: scratch of `together` stations.
  void gather(S* x, S* z) const {
    const auto at = [&](std::size_t station) { return x + start_[station]; };
    for (const std::uint32_t i : ends_in_halves_) mirror().split(at(i));
    for (std::size_t part = 0; part + 1 < parts_.size(); ++part) {
      const std::size_t first = parts_[part], last = parts_[part + 1];
      if (in_halves())
        for (std::size_t k = first; k < last; ++k) mirror().split(at(joints_[k].middle));
      for (std::size_t k = first, count = 0; k < last; k += count) {
        count = alike(last - k, [&](std::size_t i) { return joints_[k + i].joined; });
        gather_some(joints_[k], count, places(count, at, [&](std::size_t i) { return joints_[k + i]; }), z);
      }
    }
    for (const std::uint32_t i : ends_in_halves_) mirror().join(at(i));
  }
  /// Motions inside segment j from those of its ends; at(station) is where a station's motions stand.
  template <class At>
  void spread(std::size_t j, const At& at) const {
    if (!joined(j)) return;
    const Segment& ends = segments()[j];
    if (in_halves()) mirror().split(at(ends.first)), mirror().split(at(ends.last));
    spread_all(inside_.size(j), at, [&, inside = inside_.begin(j)](std::size_t k) { return joints_[inside[k]]; });
    if (in_halves())
      for (std::size_t i = ends.first; i <= ends.last; ++i) mirror().join(at(i));
  }
  void spread(S* x) const {
    const auto at = [&](std::size_t station) { return x + start_[station]; };
    for (const std::uint32_t i : ends_in_halves_) mirror().split(at(i));
    for (std::size_t part = parts_.size(); part-- > 1;) {
      const std::size_t first = parts_[part - 1], last = parts_[part];
      spread_all(last - first, at, [&](std::size_t k) { return joints_[first + k]; });
      if (in_halves())
        for (std::size_t k = first; k < last; ++k) mirror().join(at(joints_[k].middle));
    }
    for (const std::uint32_t i : ends_in_halves_) mirror().join(at(i));
  }

  /// Where segments are joined: short ones before the longer ones that they are part of.
  const std::vector<SegmentJoint>& joints() const noexcept { return joints_; }
  /// Stations that segments joined in halves run between; their vectors stand in halves meanwhile, like those inside.
  const std::vector<std::uint32_t>& ends_in_halves() const noexcept { return ends_in_halves_; }
  bool stands_in_halves(std::size_t station) const { return !in_halves_.empty() && in_halves_[station] != 0; }

 private:
  const std::vector<Segment>& segments() const noexcept { return made_.segments(); }
  const ChainMirror<S>& mirror() const noexcept { return made_.mirror(); }

  /// Joints in the order in which they are passed through: part by part of the chain, so that its vectors are still at
  /// hand from one level of segments to the next; within a part from short segments to long ones.
  void place_joints() {
    constexpr std::size_t stations_at_once = 96;
    std::vector<std::uint32_t> part_of(bays_->stations()), segment_of(bays_->stations());
    std::uint32_t part = 0;
    for (std::size_t j = 0, begin = 0; j < segments().size(); ++j) {
      const Segment& s = segments()[j];
      if (s.last - begin > stations_at_once) ++part, begin = s.first;
      for (std::size_t i = s.first; i < s.last; ++i) part_of[i] = part, segment_of[i] = static_cast<std::uint32_t>(j);
    }
    const std::vector<SegmentJoint>& made = made_.joints();
    Lists sorted = Lists::sorted(part + 1, made.size(), [&](std::size_t k) { return part_of[made[k].middle]; });
    joints_.reserve(made.size());
    for (const std::uint32_t k : sorted.items) joints_.push_back(made[k]);
    parts_.swap(sorted.first);
    inside_ = Lists::sorted(segments().size(), joints_.size(), [&](std::size_t k) { return segment_of[joints_[k].middle]; });
  }
  void note_halves() {
    in_halves_.assign(bays_->stations(), 0);
    for (const SegmentJoint& i : joints_) in_halves_[i.middle] = 1;
    for (std::size_t j = 0; j < segments().size(); ++j)
      if (joined(j))
        for (const std::uint32_t end : {segments()[j].first, segments()[j].last})
          if (in_halves_[end] == 0) in_halves_[end] = 1, ends_in_halves_.push_back(end);
  }

  /// How many of the next joints are of one sort, `together` at most: their vectors meet its matrices at once. They stand
  /// side by side, so that none has another's middle as an end.
  template <class SortOf>
  static std::size_t alike(std::size_t most, const SortOf& sort_of) {
    most = (std::min)(together, most);
    std::size_t count = 1;
    while (count < most && sort_of(count) == sort_of(0)) ++count;
    return count;
  }
  /// Where the vectors of some joints stand.
  struct Places {
    std::array<S*, together> first{}, middle{}, last{};
  };
  template <class At, class JointAt>
  static Places places(std::size_t count, const At& at, const JointAt& joint) {
    Places out;
    for (std::size_t i = 0; i < count; ++i) {
      const SegmentJoint& one = joint(i);
      out.first[i] = at(one.first), out.middle[i] = at(one.middle), out.last[i] = at(one.last);
    }
    return out;
  }

  void gather_some(const SegmentJoint& i, std::size_t count, const Places& to, S* z) const {
    using K = KernelsOf<S>;
    if (in_halves()) return K::through_joint(made_.halved(i).swept(), count, to.middle.data(), to.first.data(), to.last.data());
    std::array<S*, together> forces{};
    const WholeJoint<S>& t = made_.whole(i);
    const std::size_t n1 = bays_->unknowns(i.first), n = bays_->unknowns(i.middle), n2 = bays_->unknowns(i.last);
    for (std::size_t k = 0; k < count; ++k) {
      forces[k] = z + k * padded(n);
      for (std::size_t u = 0; u < padded(n); ++u) forces[k][u] = S(-to.middle[k][u]);
    }
    K::minus_times(n1, n, padded(n1), t.minus_to_left, count, forces.data(), to.first.data());
    K::minus_times(n2, n, padded(n2), t.minus_to_right, count, forces.data(), to.last.data());
    for (std::size_t k = 0; k < count; ++k) K::apply_in_place(n, t.pivot, to.middle[k]);
  }
  /// Motions at `n` joints, from the last one, between the longest segments, to the first.
  template <class At, class JointAt>
  void spread_all(std::size_t n, const At& at, const JointAt& joint) const {
    for (std::size_t k = n, count = 0; k > 0; k -= count) {
      count = alike(k, [&](std::size_t i) { return joint(k - 1 - i).joined; });
      spread_some(joint(k - 1), count, places(count, at, [&](std::size_t i) { return joint(k - count + i); }));
    }
  }
  void spread_some(const SegmentJoint& i, std::size_t count, const Places& to) const {
    using K = KernelsOf<S>;
    if (in_halves()) return K::back_through_joint(made_.halved(i).turned(), count, to.middle.data(), to.first.data(), to.last.data());
    const WholeJoint<S>& t = made_.whole(i);
    const std::size_t n1 = bays_->unknowns(i.first), n = bays_->unknowns(i.middle), n2 = bays_->unknowns(i.last);
    K::minus_times(n, n1, padded(n), t.from_left, count, to.first.data(), to.middle.data());
    K::minus_times(n, n2, padded(n), t.from_right, count, to.last.data(), to.middle.data());
  }

  const ChainBays<S>* bays_ = nullptr;
  ChainSegments<S> made_;
  std::vector<std::size_t> start_;
  std::vector<SegmentJoint> joints_;
  std::vector<std::uint32_t> parts_;  ///< which joints stand in a part of the chain: from parts_[i] to parts_[i + 1]
  Lists inside_;                      ///< which joints stand inside each segment
  std::vector<std::uint32_t> ends_in_halves_;
  std::vector<std::uint8_t> in_halves_;
};

}  // namespace baywork::detail
