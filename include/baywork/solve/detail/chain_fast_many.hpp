// SPDX-License-Identifier: MIT
// Solving with a kept fast factor for many right-hand sides, side by side.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <utility>
#include <vector>

#include <baywork/solve/detail/chain_fast.hpp>

namespace baywork::detail {

/// As for one, in groups of eight that stand side by side, a few groups at a time so that they stay in the cache. Stations
/// inside segments come first and last.
template <class S>
class FastChain<S>::Many {
 public:
  Many(const FastChain& chain, ManySpace& space, std::size_t at_once) : chain_(chain), runs_(*chain.bays_), made_(runs_.made()), space_(space), at_once_(at_once) {
    const std::size_t room = 8 * at_once * padded(6 * ChainLayout::most_joints), stations = runs_.bays().stations();
    space.groups.resize(8 * at_once * runs_.length());
    space.z.resize(3 * room);
    z_ = space.z.data();
    next_ = z_ + room;
    middle_ = next_ + room;
    space.place.resize(stations);
    for (std::size_t s = 0; s < stations; ++s) space.place[s] = space.groups.data() + 8 * at_once * runs_.start(s);
    if (space.factor == chain.number_) return;
    space.factor = chain.number_;
    space.rows.resize(made_.types());
    for (auto& r : space.rows) r.made = false;
    space.joints.resize(made_.sorts_in_halves());
    for (auto& j : space.joints) j.made = false;
    // a joint as soon as both its segments are done: their stations are still at hand
    space.order.resize(runs_.joints().size());
    std::iota(space.order.begin(), space.order.end(), 0U);
    std::stable_sort(space.order.begin(), space.order.end(), [&](std::uint32_t i, std::uint32_t j) { return runs_.joints()[i].last < runs_.joints()[j].last; });
  }

  void solve(const S* b, S* x, std::size_t ld, std::size_t count) {
    ld_ = ld;
    count_ = count;
    groups_ = (count + 7) / 8;
    const std::size_t meet = chain_.meet_, last = chain_.stations() - 1;
    const auto station = [&](std::size_t j) { return runs_.station(j); };
    const auto packed = [&](std::size_t j) { return chain_.packed(j); };
    // eight columns from end to end: more at once than that, and reading ahead fails
    for (std::size_t g = 0; g < groups_; ++g)
      for (std::size_t s = 0; s < runs_.bays().stations(); ++s) take(b, g, s);
    for (const std::uint32_t i : space_.order) through(runs_.joints()[i]);
    for (const std::uint32_t s : runs_.ends_in_halves()) to_whole(s);
    for (std::size_t j = 0; j < meet; ++j) {
      apply(packed(j), station(j), z_);
      minus(runs_.type_index(j), true, station(j + 1), station(j), z_);
    }
    for (std::size_t j = last; j > meet; --j) {
      apply(packed(j), station(j), z_);
      minus(runs_.type_index(j - 1), false, station(j - 1), station(j), z_);
    }
    apply(packed(meet), station(meet), middle_);
    put(station(meet), middle_);
    for (const bool left : {true, false}) {
      const S* known = middle_;
      for (std::size_t j = meet; left ? j > 0 : j < last;) {
        const std::size_t from = left ? j-- : j++;
        minus(runs_.type_index((std::min)(j, from)), !left, station(j), station(from), known);
        apply(packed(j), station(j), z_);
        put(station(j), z_);
        known = z_;
        std::swap(z_, next_);
      }
    }
    for (const std::uint32_t s : runs_.ends_in_halves()) to_halves(s);
    for (std::size_t i = space_.order.size(); i-- > 0;) back(runs_.joints()[space_.order[i]]);
    for (std::size_t g = 0; g < groups_; ++g)
      for (std::size_t s = 0; s < runs_.bays().stations(); ++s) give(x, g, s);
  }

 private:
  using Joint = SegmentJoint;

  std::size_t unknowns(std::size_t s) const { return runs_.bays().unknowns(s); }
  S*& at(std::size_t s) const { return space_.place[s]; }
  std::size_t columns(std::size_t group) const { return (std::min)(count_ - 8 * group, std::size_t{8}); }
  template <class Do>
  void for_each_group(std::size_t s, const Do& what) const {
    for (std::size_t g = 0; g < groups_; ++g) what(at(s) + 8 * g * unknowns(s));
  }
  void take(const S* b, std::size_t g, std::size_t s) const {
    S* const group = at(s) + 8 * g * unknowns(s);
    const S* const from = b + runs_.start(s) + 8 * g * ld_;
    if (runs_.stands_in_halves(s))
      K::to_halves_group(made_.mirror().joint, ld_, from, columns(g), group);
    else
      K::to_group(unknowns(s), ld_, from, columns(g), group);
  }
  void give(S* x, std::size_t g, std::size_t s) const {
    const S* const group = at(s) + 8 * g * unknowns(s);
    S* const to = x + runs_.start(s) + 8 * g * ld_;
    if (runs_.stands_in_halves(s))
      K::from_halves_group(made_.mirror().joint, ld_, group, columns(g), to);
    else
      K::from_group(unknowns(s), ld_, group, columns(g), to);
  }
  /// Motions found: to where stations inside segments look for them.
  void put(std::size_t s, const S* from) const { std::copy(from, from + 8 * groups_ * unknowns(s), at(s)); }
  /// The few stations of the shorter chain between segments in halves.
  void to_whole(std::size_t s) const {
    std::array<S, 16 * joint_half> columns;
    for_each_group(s, [&](S* group) {
      K::from_halves_group(made_.mirror().joint, 2 * joint_half, group, 8, columns.data());
      K::to_group(2 * joint_half, 2 * joint_half, columns.data(), 8, group);
    });
  }
  void to_halves(std::size_t s) const {
    std::array<S, 16 * joint_half> columns;
    for_each_group(s, [&](S* group) {
      K::from_group(2 * joint_half, 2 * joint_half, group, 8, columns.data());
      K::to_halves_group(made_.mirror().joint, 2 * joint_half, columns.data(), 8, group);
    });
  }

  void through(const Joint& i) {
    if (!runs_.in_halves()) {
      apply(made_.whole(i).pivot, i.middle, z_);
      minus(made_.joined(i).left, false, i.first, i.middle, z_);
      return minus(made_.joined(i).right, true, i.last, i.middle, z_);
    }
    const auto& j = products(i);
    times(false, j.pivot, at(i.middle), z_);
    const S* const given = is_thin(i) ? z_ : at(i.middle);
    times(true, j.to_first, given, at(i.first));
    times(true, j.to_last, given, at(i.last));
    if (!is_thin(i)) std::swap(at(i.middle), z_);
  }
  void back(const Joint& i) {
    if (!runs_.in_halves()) {
      minus(made_.joined(i).left, true, i.middle, i.first, at(i.first));
      minus(made_.joined(i).right, false, i.middle, i.last, at(i.last));
      apply(made_.whole(i).pivot, i.middle, z_);
      return std::swap(at(i.middle), z_);
    }
    const auto& j = products(i);
    times(true, j.from_first, at(i.first), at(i.middle));
    times(true, j.from_last, at(i.last), at(i.middle));
    if (!is_thin(i)) return;
    times(false, j.pivot, at(i.middle), z_);
    std::swap(at(i.middle), z_);
  }
  void apply(const S* packed, std::size_t s, S* z) const { K::apply_groups(unknowns(s), packed, groups_, at(s), z); }
  /// Between two bays, whose couplings are mostly nothing: P and they are less work than their product.
  bool is_thin(const Joint& i) const { return (std::max)(made_.joined(i).left, made_.joined(i).right) < runs_.bays().types(); }
  const typename ManySpace::Joint& products(const Joint& i) const {
    constexpr std::size_t n = joint_half;
    auto& j = space_.joints[i.joined];
    if (j.made) return j;
    j.made = true;
    const S* const swept = made_.halved(i).swept();
    j.pivot.make(swept, 3 * n);
    if (!is_thin(i)) {
      j.to_first.make(swept + 2 * n, 3 * n), j.to_last.make(swept + 4 * n, 3 * n);
      j.from_first.make(made_.halved(i).turned(), n), j.from_last.make(made_.halved(i).turned() + 2 * n * n, n);
      return j;
    }
    const auto coupling = [&](std::uint32_t type, HalvedProduct<S>& plain, HalvedProduct<S>& turned) {
      space_.full.assign(2 * n * n, S(0));
      made_.mirror().add(made_.type_of(type).blocks, false, space_.full.data(), n);
      plain.make(space_.full.data(), n);
      space_.full.assign(2 * n * n, S(0));
      made_.mirror().add_turned(made_.type_of(type).blocks, space_.full.data(), n);
      turned.make(space_.full.data(), n);
    };
    coupling(made_.joined(i).left, j.to_first, j.from_first);
    coupling(made_.joined(i).right, j.from_last, j.to_last);
    return j;
  }
  /// y = a x, or y -= a x, for both halves of stations.
  void times(bool minus, const HalvedProduct<S>& a, const S* x, S* y) const {
    constexpr std::size_t n = joint_half, apart = 16 * n;
    if (!a.rows.column.empty()) K::rows_groups(minus, a.rows.view(), groups_, 2 * n, x, y);
    for (std::size_t h = 0; h < 2; ++h)
      if (a.full[h]) K::times_groups(minus, n, n, 2, 2 * n, a.value.data() + h, groups_, apart, x + 8 * h * n, apart, y + 8 * h * n);
  }
  /// at(to) -= C z, or Cᵀ z, C of a segment of this type, z of station `from`.
  void minus(std::uint32_t type, bool turned, std::size_t to, std::size_t from, const S* z) const {
    auto& rows = space_.rows[type];
    const std::size_t rows_out = unknowns(to), columns = unknowns(from);
    if (!rows.made) {
      const std::vector<BasicBlock6<S>>& c = made_.type_of(type).blocks;
      rows.plain.make(c, false, turned ? columns : rows_out, turned ? rows_out : columns, space_.full);
      rows.turned.make(c, true, turned ? rows_out : columns, turned ? columns : rows_out, space_.full);
      rows.made = true;
    }
    // with nothing left out, the rows of C one after the other are the columns of its transpose
    const RowLists<S>&c = turned ? rows.turned : rows.plain, &other = turned ? rows.plain : rows.turned;
    if (other.value.size() == rows_out * columns)
      K::times_groups(true, rows_out, columns, 1, rows_out, other.value.data(), groups_, 8 * columns, z, 8 * rows_out, at(to));
    else
      K::rows_groups(true, c.view(), groups_, columns, z, at(to));
  }

  const FastChain& chain_;
  const ChainRuns<S>& runs_;
  const ChainSegments<S>& made_;
  ManySpace& space_;
  std::size_t at_once_, groups_ = 0, count_ = 0, ld_ = 0;
  S *z_, *next_, *middle_;
};

template <class S>
void FastChain<S>::solve_many(const S* b, S* x, std::size_t ld, std::size_t m, ManySpace& space) const {
  constexpr std::size_t most = 4;
  const std::size_t alone = m % 8 <= 4 ? m % 8 : 0, side_by_side = m - alone;  // a few cost less alone than a group
  const std::size_t all = (side_by_side + 7) / 8, rounds = (all + most - 1) / most;
  if (rounds > 0) {
    const std::size_t at_once = (all + rounds - 1) / rounds;
    Many many(*this, space, at_once);
    for (std::size_t k = 0; k < side_by_side; k += 8 * at_once)
      many.solve(b + k * ld, x + k * ld, ld, (std::min)(side_by_side - k, 8 * at_once));
  }
  space.z.resize((std::max)(space.z.size(), (std::max)(work_size(), ChainRuns<S>::together * padded(6 * ChainLayout::most_joints))));
  for (std::size_t k = side_by_side; k < m; ++k) {
    S* const one = x + k * ld;
    if (one != b + k * ld) std::copy(b + k * ld, b + k * ld + bays_->length(), one);
    bays_->gather(one, space.z.data());
    solve(one, space.z.data());
    bays_->spread(one);
  }
}

}  // namespace baywork::detail
