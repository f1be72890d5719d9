// SPDX-License-Identifier: MIT
// A frame that is a chain, factored in one of the two forms; takes forces on nodes and gives motions of nodes.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

#include <baywork/solve/detail/bay_inside.hpp>
#include <baywork/solve/detail/carry_along.hpp>
#include <baywork/solve/detail/chain_deformation.hpp>
#include <baywork/solve/detail/chain_fast.hpp>

namespace baywork::detail {

template <class S>
class ChainEngine {
 public:
  using A = accurate_t<S>;

  ChainEngine(const PreparedFrame<S>& p, ChainLayout layout)
      : bays_(std::make_unique<ChainBays<S>>(p, std::move(layout))), ground_(std::make_unique<ChainGround<S>>(p, bays_->layout())),
        runs_(std::make_unique<ChainRuns<S>>()) {}

  const ChainBays<S>& bays() const noexcept { return *bays_; }
  const ChainLayout& layout() const noexcept { return bays_->layout(); }
  const ChainRuns<S>& runs() const noexcept { return *runs_; }
  bool is_fast() const noexcept { return is_fast_; }
  const FastChain<S>& fast() const noexcept { return fast_; }
  const DeformationChain<S>& deformation() const noexcept { return deformation_; }

  /// Bays in a segment, at most, that keep enough digits. Joining to 64, 32 or 16 leaves errors of 2e-8, 2e-9 or 1e-10 in
  /// bending moments (measured on boxes and triangular girders): the fast form itself loses more where it is chosen, and
  /// deformations as much over 100,000 bays.
  std::size_t longest(bool fast) const { return fast ? 64 : (layout().bays() > 50'000 ? 32 : 16); }
  /// Factors in the fast form or in deformations, identical bays joined to segments of up to `longest`; false where a
  /// pivot is not above zero.
  bool factor(const PreparedFrame<S>& p, bool fast, std::size_t longest, RunBoth run) {
    is_fast_ = fast;
    longest_ = longest;
    if (!fast) fast_ = {};
    if (!(bays_->inner_ratio() > 0.0)) return false;
    *runs_ = ChainRuns<S>(p, *bays_, *ground_, longest);
    if (!(runs_->made().smallest_pivot_ratio() > 0.0)) return false;
    return fast ? fast_.compute(p, *runs_, *ground_, run) : deformation_.compute(p, *runs_, *ground_, run);
  }
  /// Factors anew from a changed member's bay on, or from the station whose ties have changed.
  bool refactor_member(const PreparedFrame<S>& p, std::size_t member, RunBoth run) {
    const auto [first, last] = place_of(p.frame.members[member]);
    if (first != last)
      bays_->renew(p, first);
    else
      bays_->renew_station(p);
    return refactor(p, first, last, run);
  }
  bool refactor_support(const PreparedFrame<S>& p, std::size_t node, RunBoth run) {
    *ground_ = ChainGround<S>(p, bays_->layout());
    const std::size_t station = layout().at[node];
    return refactor(p, station, station, run);
  }

  /// Bays from one station that is held somehow to the next, at most.
  std::size_t longest_span() const {
    std::size_t longest = 0;
    const std::size_t n = bays_->stations();
    for (std::size_t s = 0, last = 0; s < n; ++s) {
      const bool held = ground_->holds(s);
      if (held || s + 1 == n) longest = (std::max)(longest, s - last);
      if (held) last = s;
    }
    return longest;
  }

  double smallest_pivot_ratio() const {
    const double r = is_fast_ ? fast_.smallest_pivot_ratio() : deformation_.smallest_pivot_ratio();
    return smallest_of({bays_->inner_ratio(), runs_->made().smallest_pivot_ratio(), r});
  }
  std::size_t bytes() const noexcept { return runs_->made().bytes() + (is_fast_ ? fast_.bytes() : deformation_.bytes()); }

  /// Numbers of scratch that solve() needs.
  std::size_t work_size() const {
    std::size_t widest = 6 * ChainLayout::most_joints;
    for (std::size_t b = 0; b < layout().bays(); ++b) widest = (std::max)(widest, 6 * layout().inner.size(b));
    return 6 * layout().inner.items.size() + runs_->length() + (is_fast_ ? fast_.work_size() : deformation_.work_size()) + 5 * padded(widest);
  }

  /// motions := K⁻¹ force, six per node each; nothing where a motion is held or idle.
  void solve(const PreparedFrame<S>& p, const std::vector<A>& force, std::vector<A>& motions, std::vector<S>& work) const {
    const Lists &stations = layout().stations, &inner = layout().inner;
    S* const f = work.data();
    S* const x = f + 6 * inner.items.size();
    S* const scratch = x + runs_->length();
    for (std::size_t i = 0; i < inner.items.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) f[6 * i + k] = rounded<S>(force[6 * inner.items[i] + k]);
    for (std::size_t s = 0; s < stations.size(); ++s) {
      S* to = x + runs_->start(s);
      for (const std::uint32_t* n = stations.begin(s); n != stations.end(s); ++n, to += 6)
        for (std::size_t k = 0; k < 6; ++k) to[k] = rounded<S>(force[6 * *n + k]);
      for (; to != x + runs_->start(s + 1); ++to) *to = S(0);
    }
    for (std::size_t b = 0; b < inner.size(); ++b)
      if (inner.size(b) > 0)
        pass_on(bays_->type(b), bays_->unknowns(b), bays_->unknowns(b + 1), f + 6 * inner.first[b], x + runs_->start(b), x + runs_->start(b + 1));
    runs_->gather(x, scratch);
    if (is_fast_) {
      fast_.solve(x, scratch);
      runs_->spread(x);
      for (std::size_t s = 0; s < stations.size(); ++s) put_station(s, x + runs_->start(s), motions);
      for (std::size_t b = 0; b < inner.size(); ++b)
        if (inner.size(b) > 0) {
          inside_motions(bays_->type(b), bays_->unknowns(b), bays_->unknowns(b + 1), f + 6 * inner.first[b], x + runs_->start(b), x + runs_->start(b + 1), scratch);
          for (std::size_t j = 0; j < 6 * inner.size(b); ++j) motions[6 * inner.begin(b)[j / 6] + j % 6] = A(scratch[j]);
        }
    } else {
      deformation_.solve(x, Follow{*this, p, motions, f, x, scratch + deformation_.work_size()}, scratch);
    }
  }

 private:
  void put_station(std::size_t station, const S* u, std::vector<A>& motions) const {
    for (const std::uint32_t* n = layout().stations.begin(station); n != layout().stations.end(station); ++n, u += 6)
      for (std::size_t k = 0; k < 6; ++k) motions[6 * *n + k] = A(u[k]);
  }

  /// Receives what DeformationChain finds, and follows it into segments and bays: motions there are counted from the
  /// rigid continuation of the segment's near reference, and added to it to twice the digits.
  struct Follow {
    const ChainEngine& e;
    const PreparedFrame<S>& p;
    std::vector<A>& motions;
    const S* f;
    S* x;
    S* scratch;

    void operator()(std::size_t j, std::size_t place, const std::array<A, 6>& u) const {
      const std::size_t node = e.layout().stations.begin(e.runs_->station(j))[place];
      for (std::size_t k = 0; k < 6; ++k) motions[6 * node + k] = u[k];
    }
    void others(std::size_t j, const std::array<A, 6>& r, const S* a) const {
      const std::size_t i = e.runs_->station(j);
      const std::uint32_t* const nodes = e.layout().stations.begin(i);
      carry_along(p.frame, *nodes, r, nodes + 1, e.layout().stations.size(i) - 1, a, motions);
    }
    void segment(std::size_t j, bool near_first, const std::array<A, 6>& near, const std::array<S, 6>& s, const S* near_q, const S* far_q) const {
      const ChainRuns<S>& runs = *e.runs_;
      const std::size_t first = runs.station(j), last = runs.station(j + 1);
      if (last == first + 1 && e.layout().inner.size(first) == 0) return;
      const std::size_t n1 = e.bays_->unknowns(first), n2 = e.bays_->unknowns(last), near_n = near_first ? n1 : n2, far_n = near_first ? n2 : n1;
      S* const u1 = scratch;
      S* const u2 = u1 + padded(n1);
      S* const z = u2 + padded(n2);
      S* const u_near = near_first ? u1 : u2;
      S* const u_far = near_first ? u2 : u1;
      std::fill(u1, z, S(0));
      for (std::size_t u = 6; u < near_n; ++u) u_near[u] = near_q[u];
      const Vec3<S>* const arms = e.deformation_.arms().plain(near_first ? j + 1 : j);
      for (std::size_t u = 0; u < far_n; ++u) {
        u_far[u] = rigid_motion(s, arms[u / 6])[u % 6];
        if (u >= 6) u_far[u] += far_q[u];
      }
      const auto at = [&](std::size_t station) { return station == first ? u1 : (station == last ? u2 : x + runs.start(station)); };
      runs.spread(j, at);
      const std::size_t base = *e.layout().stations.begin(near_first ? first : last);
      const Lists &stations = e.layout().stations, &inner = e.layout().inner;
      for (std::size_t i = first + 1; i < last; ++i) carry_along(p.frame, base, near, stations.begin(i), stations.size(i), at(i), motions);
      for (std::size_t b = first; b < last; ++b)
        if (inner.size(b) > 0) {
          inside_motions(e.bays_->type(b), e.bays_->unknowns(b), e.bays_->unknowns(b + 1), f + 6 * inner.first[b], at(b), at(b + 1), z);
          carry_along(p.frame, base, near, inner.begin(b), inner.size(b), z, motions);
        }
    }
  };

  /// First and last station that a member has to do with.
  std::pair<std::size_t, std::size_t> place_of(const BasicMember<S>& m) const {
    std::size_t a = layout().at[m.from], b = layout().at[m.to];
    for (const std::size_t at : {a, b})
      if ((at & ChainLayout::inner_flag) != 0) {
        const std::size_t bay = at & ~std::size_t{ChainLayout::inner_flag};
        return {bay, bay + 1};
      }
    if (b < a) std::swap(a, b);
    return {a, b};
  }
  bool refactor(const PreparedFrame<S>& p, std::size_t first, std::size_t last, RunBoth run) {
    if (runs_->stations() < bays_->stations() || !(bays_->inner_ratio() > 0.0)) return factor(p, is_fast_, longest_, run);
    *runs_ = ChainRuns<S>(p, *bays_, *ground_, 1);
    return is_fast_ ? fast_.refactor(p, *ground_, first, last, run) : deformation_.refactor(p, *ground_, first, last, run);
  }
  std::unique_ptr<ChainBays<S>> bays_;  // apart, so that the factors may refer to them wherever this is moved
  std::unique_ptr<ChainGround<S>> ground_;
  std::unique_ptr<ChainRuns<S>> runs_;
  std::size_t longest_ = 1;
  bool is_fast_ = false;
  FastChain<S> fast_;
  DeformationChain<S> deformation_;
};

}  // namespace baywork::detail
