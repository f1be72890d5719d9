// SPDX-License-Identifier: MIT
// Solving with a kept fast factor: for one right-hand side, and for many side by side.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include <baywork/solve/detail/chain_fast.hpp>

namespace baywork::detail {

template <class S>
void FastChain<S>::make_lists() {
  std::vector<std::uint32_t> list_of_type(bays_->types(), no_list);
  lists_.clear();
  list_of_.assign(stations() - 1, no_list);
  unknowns_.assign(1, static_cast<std::uint32_t>(bays_->unknowns(0)));
  for (std::size_t j = 0; j + 1 < stations(); ++j) {
    const BayType<S>& type = bays_->type(j);
    const std::size_t rows = bays_->unknowns(j), columns = bays_->unknowns(j + 1);
    unknowns_.push_back(static_cast<std::uint32_t>(columns));
    // to list what is full costs as much as some solutions gain by it
    if (type.count < 2 || (type.count < 8 && 72 * type.blocks.size() > rows * columns)) continue;
    std::uint32_t& list = list_of_type[bays_->type_index(j)];
    if (list == no_list) {
      list = static_cast<std::uint32_t>(lists_.size());
      CouplingLists<S>& l = lists_.emplace_back();
      l.plain.make(type.blocks, false, rows / 6);
      l.turned.make(type.blocks, true, columns / 6);
    }
    list_of_[j] = list;
  }
}

/// Takes z of station `from` through the coupling off what station `to` has at y.
template <class S>
void FastChain<S>::couple(std::size_t from, std::size_t to, const S* z, S* y) const {
  const std::size_t segment = (std::min)(from, to);
  if (const std::uint32_t l = list_of_[segment]; l != no_list) return K::minus_block_rows((from < to ? lists_[l].turned : lists_[l].plain).view(), z, y);
  const std::vector<BasicBlock6<S>>& c = bays_->type(segment).blocks;
  if (from < to)
    K::minus_transposed_times(c.data(), c.size(), z, y);
  else
    K::minus_blocks_times(c.data(), c.size(), z, y);
}

/// In: what station i's inverse makes of its forces goes on to the next one and is not kept. Back: with the neighbour's
/// motions known, x_i = P_i (f_i - C x_next). Both ends take turns, coupling by coupling and inverse by inverse: neither
/// waits for the other.
template <class S>
void FastChain<S>::solve(S* x, S* work) const {
  const std::size_t last = unknowns_.size() - 1, steps = (std::max)(meet_, last - meet_);
  const auto at = [&](std::size_t i) { return x + start_[i]; };
  const auto apply = [&](std::size_t i, S* y) { K::apply(unknowns_[i], packed(i), at(i), y); };
  const auto apply_in_place = [&](std::size_t i) { K::apply_in_place(unknowns_[i], packed(i), at(i)); };
  // what an end has last found, in turns at two places
  const auto left = [&](std::size_t i) { return work + i % 2 * widest_; };
  const auto right = [&](std::size_t i) { return work + (2 + i % 2) * widest_; };
  apply(0, left(0));
  if (last > meet_) apply(last, right(last));
  for (std::size_t k = 1; k < steps; ++k) {
    const std::size_t r = last - k;
    if (k < meet_) couple(k - 1, k, left(k - 1), at(k));
    if (r > meet_) couple(r + 1, r, right(r + 1), at(r));
    if (k < meet_) apply(k, left(k));
    if (r > meet_) apply(r, right(r));
  }
  if (last > meet_) couple(meet_ + 1, meet_, right(meet_ + 1), at(meet_));
  couple(meet_ - 1, meet_, left(meet_ - 1), at(meet_));
  apply_in_place(meet_);
  for (std::size_t k = steps; k-- > 0;) {
    const std::size_t r = last - k;
    if (k < meet_) couple(k + 1, k, at(k + 1), at(k));
    if (r > meet_) couple(r - 1, r, at(r - 1), at(r));
    if (k < meet_) apply_in_place(k);
    if (r > meet_) apply_in_place(r);
  }
}

/// The same for groups of eight that stand side by side, a few groups at a time so that they stay in the cache. Stations
/// inside segments come first and last.
template <class S>
class FastChain<S>::Many {
 public:
  Many(const FastChain& chain, ManySpace& space, std::size_t at_once) : chain_(chain), runs_(*chain.bays_), space_(space), at_once_(at_once) {
    const std::size_t room = 8 * at_once * padded(6 * ChainLayout::most_joints);
    space.groups.resize(8 * at_once * runs_.length());
    space.z.resize(3 * room);
    z_ = space.z.data();
    next_ = z_ + room;
    middle_ = next_ + room;
    space.rows.resize(runs_.types());
    for (auto& r : space.rows) r.made = false;
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
      for (std::size_t s = 0; s < runs_.bays().stations(); ++s)
        K::to_group(unknowns(s), ld, b + runs_.start(s) + 8 * g * ld, columns(g), at(s) + 8 * g * unknowns(s));
    runs_.for_each_joint(false, [&](std::size_t first, std::size_t middle, std::size_t end, std::uint32_t l, std::uint32_t r, const S* p) {
      apply(p, middle, z_);
      minus(l, false, first, middle, z_);
      minus(r, true, end, middle, z_);
    });
    for (std::size_t j = 0; j < meet; ++j) {
      apply(packed(j), station(j), z_);
      minus(runs_.type_index(j), true, station(j + 1), station(j), z_);
    }
    for (std::size_t j = last; j > meet; --j) {
      apply(packed(j), station(j), z_);
      minus(runs_.type_index(j - 1), false, station(j - 1), station(j), z_);
    }
    apply(packed(meet), station(meet), middle_);
    put(x, station(meet), middle_);
    for (const bool left : {true, false}) {
      const S* known = middle_;
      for (std::size_t j = meet; left ? j > 0 : j < last;) {
        const std::size_t from = left ? j-- : j++;
        minus(runs_.type_index((std::min)(j, from)), !left, station(j), station(from), known);
        apply(packed(j), station(j), z_);
        put(x, station(j), z_);
        known = z_;
        std::swap(z_, next_);
      }
    }
    runs_.for_each_joint(true, [&](std::size_t first, std::size_t middle, std::size_t end, std::uint32_t l, std::uint32_t r, const S* p) {
      minus(l, true, middle, first, at(first));
      minus(r, false, middle, end, at(end));
      apply(p, middle, z_);
      put(x, middle, z_);
    });
  }

 private:
  std::size_t unknowns(std::size_t s) const { return runs_.bays().unknowns(s); }
  S* at(std::size_t s) const { return space_.groups.data() + 8 * at_once_ * runs_.start(s); }
  std::size_t columns(std::size_t group) const { return (std::min)(count_ - 8 * group, std::size_t{8}); }
  /// Motions found: to the caller, and to where stations inside segments look for them.
  void put(S* x, std::size_t s, const S* from) const {
    for (std::size_t g = 0; g < groups_; ++g) K::from_group(unknowns(s), ld_, from + 8 * g * unknowns(s), columns(g), x + runs_.start(s) + 8 * g * ld_);
    if (runs_.stations() < runs_.bays().stations()) std::copy(from, from + 8 * groups_ * unknowns(s), at(s));
  }
  void apply(const S* packed, std::size_t s, S* z) const { K::apply_groups(unknowns(s), packed, groups_, at(s), z); }
  /// at(to) -= C z, or Cᵀ z, C of a segment of this type, z of station `from`.
  void minus(std::uint32_t type, bool turned, std::size_t to, std::size_t from, const S* z) const {
    auto& rows = space_.rows[type];
    if (!rows.made) {
      const std::vector<BasicBlock6<S>>& c = runs_.type_of(type).blocks;
      const std::size_t n1 = unknowns(turned ? from : to), n2 = unknowns(turned ? to : from);
      rows.plain.make(c, false, n1, n2, space_.full);
      rows.turned.make(c, true, n2, n1, space_.full);
      rows.made = true;
    }
    // with nothing left out, the rows of C one after the other are the columns of its transpose
    const RowLists<S>&c = turned ? rows.turned : rows.plain, &other = turned ? rows.plain : rows.turned;
    if (other.value.size() == unknowns(to) * unknowns(from))
      K::minus_times_groups(unknowns(to), unknowns(from), other.value.data(), groups_, z, at(to));
    else
      K::minus_rows_groups(c.view(), groups_, unknowns(from), z, at(to));
  }

  const FastChain& chain_;
  const ChainRuns<S>& runs_;
  ManySpace& space_;
  std::size_t at_once_, groups_ = 0, count_ = 0, ld_ = 0;
  S *z_, *next_, *middle_;
};

template <class S>
void FastChain<S>::solve_many(const S* b, S* x, std::size_t ld, std::size_t m, ManySpace& space) const {
  constexpr std::size_t most = 4;
  const std::size_t all = (m + 7) / 8, rounds = (all + most - 1) / most;
  if (rounds == 0) return;
  const std::size_t at_once = (all + rounds - 1) / rounds;
  Many many(*this, space, at_once);
  for (std::size_t k = 0; k < m; k += 8 * at_once) many.solve(b + k * ld, x + k * ld, ld, (std::min)(m - k, 8 * at_once));
}

}  // namespace baywork::detail
