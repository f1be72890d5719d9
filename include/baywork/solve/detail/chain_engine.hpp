// SPDX-License-Identifier: MIT
// A frame that is a chain, factored in one of the two forms; takes forces on nodes and gives motions of nodes.
#pragma once

#include <array>
#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

#include <baywork/solve/detail/bay_inside.hpp>
#include <baywork/solve/detail/chain_deformation.hpp>
#include <baywork/solve/detail/chain_fast.hpp>

namespace baywork::detail {

template <class S>
class ChainEngine {
 public:
  using A = accurate_t<S>;

  ChainEngine(const PreparedFrame<S>& p, ChainLayout layout)
      : bays_(std::make_unique<ChainBays<S>>(p, std::move(layout))), ground_(std::make_unique<ChainGround<S>>(p, bays_->layout())) {}

  const ChainBays<S>& bays() const noexcept { return *bays_; }
  const ChainLayout& layout() const noexcept { return bays_->layout(); }
  bool is_fast() const noexcept { return is_fast_; }
  const FastChain<S>& fast() const noexcept { return fast_; }
  const DeformationChain<S>& deformation() const noexcept { return deformation_; }

  /// Factors in the fast form or in deformations; false where a pivot is not above zero.
  bool factor(const PreparedFrame<S>& p, bool fast, RunBoth run) {
    is_fast_ = fast;
    if (!fast) fast_ = {};
    if (!(bays_->inner_ratio() > 0.0)) return false;
    return fast ? fast_.compute(p, *bays_, *ground_, run) : deformation_.compute(p, *bays_, *ground_, run);
  }
  /// Factors anew from a changed member's bay on, or from the station whose ties have changed.
  bool refactor_member(const PreparedFrame<S>& p, std::size_t member, RunBoth run) {
    const auto [first, last] = place_of(p.frame.members[member]);
    if (first != last) bays_->renew(p, first);
    return refactor(p, first, last, run);
  }
  bool refactor_support(const PreparedFrame<S>& p, std::size_t node, RunBoth run) {
    *ground_ = ChainGround<S>(p, bays_->layout());
    const std::size_t station = station_of(node);
    return refactor(p, station, station, run);
  }
  /// Whether a joint is condensed inside a bay.
  bool inside(std::size_t node) const { return station_of(node) == layout().stations.size(); }

  double smallest_pivot_ratio() const {
    const double r = is_fast_ ? fast_.smallest_pivot_ratio() : deformation_.smallest_pivot_ratio();
    return bays_->inner_ratio() < r ? bays_->inner_ratio() : r;
  }
  std::size_t bytes() const noexcept { return is_fast_ ? fast_.bytes() : deformation_.bytes(); }

  /// Numbers of scratch that solve() needs.
  std::size_t work_size() const {
    const std::size_t inner = 6 * layout().inner.items.size();
    return inner + (is_fast_ ? fast_.length() + fast_.work_size() : deformation_.length() + deformation_.work_size());
  }

  /// motions := K⁻¹ force, six per node each; nothing where a motion is held or idle.
  void solve(const std::vector<A>& force, std::vector<A>& motions, std::vector<S>& work) const {
    S* const f = work.data();
    S* const x = f + 6 * layout().inner.items.size();
    for (std::size_t i = 0; i < layout().inner.items.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) f[6 * i + k] = rounded<S>(force[6 * layout().inner.items[i] + k]);
    for (std::size_t s = 0; s < bays_->stations(); ++s) {
      S* to = x + start(s);
      for (const std::uint32_t* n = layout().stations.begin(s); n != layout().stations.end(s); ++n, to += 6)
        for (std::size_t k = 0; k < 6; ++k) to[k] = rounded<S>(force[6 * *n + k]);
      for (; to != x + start(s + 1); ++to) *to = S(0);
    }
    const auto inside = [&](std::size_t bay) -> const S* {
      return layout().inner.size(bay) > 0 ? f + 6 * layout().inner.first[bay] : nullptr;
    };
    if (is_fast_)
      solve_fast(x, inside, motions);
    else
      deformation_.solve(x, inside, Add{layout(), motions}, x + deformation_.length());
  }

 private:
  struct Add {
    const ChainLayout& layout;
    std::vector<A>& motions;

    void put(std::size_t node, const std::array<A, 6>& u) const {
      for (std::size_t k = 0; k < 6; ++k) motions[6 * node + k] = u[k];
    }
    void operator()(std::size_t station, std::size_t place, const std::array<A, 6>& u) const { put(layout.stations.begin(station)[place], u); }
    void inside(std::size_t bay, std::size_t place, const std::array<A, 6>& u) const { put(layout.inner.begin(bay)[place], u); }
  };

  std::size_t start(std::size_t station) const { return is_fast_ ? fast_.start(station) : deformation_.start(station); }
  std::size_t station_of(std::size_t node) const {
    const std::uint32_t place = layout().place[node];
    for (std::size_t s = 0; s < layout().stations.size(); ++s)
      if (place < layout().stations.size(s) && layout().stations.begin(s)[place] == node) return s;
    return layout().stations.size();
  }
  /// First and last station that a member has to do with.
  std::pair<std::size_t, std::size_t> place_of(const BasicMember<S>& m) const {
    const ChainLayout& l = layout();
    std::size_t a = station_of(m.from), b = station_of(m.to);
    for (std::size_t bay = 0; bay < l.bays(); ++bay)
      for (const std::uint32_t* n = l.inner.begin(bay); n != l.inner.end(bay); ++n)
        if (*n == m.from || *n == m.to) return {bay, bay + 1};
    if (b < a) std::swap(a, b);
    return {a, b};
  }
  bool refactor(const PreparedFrame<S>& p, std::size_t first, std::size_t last, RunBoth run) {
    if (!(bays_->inner_ratio() > 0.0)) return false;
    return is_fast_ ? fast_.refactor(p, *ground_, first, last, run) : deformation_.refactor(p, *ground_, first, last, run);
  }

  template <class Inside>
  void solve_fast(S* x, const Inside& inside, std::vector<A>& motions) const {
    const auto outer = [&](std::size_t bay, std::size_t u) {
      const std::size_t n1 = bays_->unknowns(bay);
      return u < n1 ? x + start(bay) + u : x + start(bay + 1) + (u - n1);
    };
    for (std::size_t bay = 0; bay < layout().bays(); ++bay)
      if (const S* f = inside(bay); f != nullptr)
        for (std::size_t u = 0; u < bays_->unknowns(bay) + bays_->unknowns(bay + 1); ++u) *outer(bay, u) += passed_on(bays_->type(bay), u, f);
    fast_.solve(x, x + fast_.length());
    for (std::size_t s = 0; s < bays_->stations(); ++s) {
      const S* from = x + start(s);
      for (const std::uint32_t* n = layout().stations.begin(s); n != layout().stations.end(s); ++n, from += 6)
        for (std::size_t k = 0; k < 6; ++k) motions[6 * *n + k] = A(from[k]);
    }
    for (std::size_t bay = 0; bay < layout().bays(); ++bay) {
      const S* const f = inside(bay);
      if (f == nullptr) continue;
      const BayType<S>& t = bays_->type(bay);
      const std::size_t ld = padded(t.inner);
      for (std::size_t j = 0; j < t.inner; ++j) {
        S sum = S(0);
        for (std::size_t k = 0; k < t.inner; ++k) sum += S(t.held_inner[k * ld + j] * f[k]);
        for (std::size_t u = 0; u < bays_->unknowns(bay) + bays_->unknowns(bay + 1); ++u) sum -= S(t.to_inner[u * ld + j] * *outer(bay, u));
        motions[6 * layout().inner.begin(bay)[j / 6] + j % 6] = A(sum);
      }
    }
  }

  std::unique_ptr<ChainBays<S>> bays_;  // apart, so that the factors may refer to them wherever this is moved
  std::unique_ptr<ChainGround<S>> ground_;
  bool is_fast_ = false;
  FastChain<S> fast_;
  DeformationChain<S> deformation_;
};

}  // namespace baywork::detail
