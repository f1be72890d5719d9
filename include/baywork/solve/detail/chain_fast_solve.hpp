// SPDX-License-Identifier: MIT
// Solving with a kept fast factor for one right-hand side.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include <baywork/solve/detail/chain_fast.hpp>

namespace baywork::detail {

template <class S>
void FastChain<S>::make_lists() {
  std::vector<std::uint32_t> list_of_type(bays_->made().types(), no_list);
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

}  // namespace baywork::detail
