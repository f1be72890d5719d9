// SPDX-License-Identifier: MIT
// The stiffness of each bay between its two stations, worked out once for bays that are alike.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

#include <baywork/solve/detail/bay_type.hpp>
#include <baywork/solve/detail/chain_layout.hpp>
#include <baywork/solve/detail/member_matrix.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>

namespace baywork::detail {

/// least := the smaller of it and a pivot ratio; 0 where that is below zero or not a number.
inline void see_ratio(double ratio, double& least) noexcept {
  if (!(ratio >= least)) least = ratio > 0.0 ? ratio : 0.0;
}
/// The smallest of pivot ratios; 0 where one of them is not a number.
inline double smallest_of(const std::vector<double>& ratios) noexcept {
  double least = 1.0;
  for (const double r : ratios) {
    if (!(r >= 0.0)) return 0.0;
    if (r < least) least = r;
  }
  return least;
}

/// Stiffness of bays and stations of a chain. Bays of the same member sorts between the same places are one type.
template <class S>
class ChainBays {
 public:
  ChainBays() = default;
  ChainBays(const PreparedFrame<S>& p, ChainLayout layout) : layout_(std::move(layout)) { update(p); }

  const ChainLayout& layout() const noexcept { return layout_; }
  std::size_t stations() const noexcept { return layout_.stations.size(); }
  std::size_t unknowns(std::size_t station) const { return 6 * layout_.stations.size(station); }
  const BayType<S>& type(std::size_t bay) const { return types_[type_of_[bay]]; }
  const BayType<S>& type_at(std::uint32_t index) const { return types_[index]; }
  std::uint32_t type_index(std::size_t bay) const { return type_of_[bay]; }
  std::size_t types() const noexcept { return types_.size(); }
  /// Smallest pivot against its diagonal among joints inside bays: near the unit roundoff one of them is loose.
  double inner_ratio() const noexcept { return inner_ratio_; }
  /// A pivot against the largest stiffness of its sort in any bay: far below what bars are apart, it is what rounding has
  /// left of nothing. Ten times it, so that it can be told by the bounds of a ratio to the unknown's own stiffness.
  double size_of_pivot(std::size_t unknown, double pivot) const noexcept { return 10.0 * pivot / stiffest_[unknown % 6 < 3 ? 0 : 1]; }

  /// Finds the types anew, after members have changed.
  void update(const PreparedFrame<S>& p) {
    types_.clear();
    type_of_.clear();
    inner_ratio_ = 1.0;
    type_of_.reserve(layout_.bays());
    const std::size_t bays = layout_.bays();
    Finder<BayType<S>> find(types_, bays, layout_.along.items.size());
    for (std::size_t b = 0; b < bays; ++b) {
      find.begin(layout_.stations.size(b), layout_.stations.size(b + 1));
      for (const std::uint32_t* i = layout_.along.begin(b); i != layout_.along.end(b); ++i)
        find.see(p.sort_of[*i], code(b, layout_.ends[2 * *i]), code(b, layout_.ends[2 * *i + 1]));
      type_of_.push_back(find.end(b));
    }
    for (BayType<S>& t : types_) fill(p, t);
    find_stations(p);
  }
  /// The same for a station of which a member has changed.
  void renew_station(const PreparedFrame<S>& p) { find_stations(p); }
  /// Makes a type of its own for a bay of which a member has changed.
  void renew(const PreparedFrame<S>& p, std::size_t bay) {
    BayType<S>& old = types_[type_of_[bay]];
    if (old.count > 1) {
      --old.count;
      type_of_[bay] = static_cast<std::uint32_t>(types_.size());
      types_.emplace_back();
    }
    BayType<S>& t = types_[type_of_[bay]];
    t.example = static_cast<std::uint32_t>(bay);
    t.count = 1;
    fill(p, t);
    inner_ratio_ = 1.0;
    for (const BayType<S>& each : types_) see_ratio(each.inner_ratio, inner_ratio_);
  }

  std::uint32_t station_type(std::size_t station) const { return type_of_station_[station]; }
  /// Of the members inside a station, lower triangle; none where no other one is like it.
  const std::vector<BasicBlock6<S>>* station_blocks(std::size_t station) const {
    const StationType& t = stations_[type_of_station_[station]];
    return t.count > 1 ? &t.blocks : nullptr;
  }
  /// Adds the members inside a station to k (order `unknowns`, leading dimension ld), lower triangle.
  void add_station(const PreparedFrame<S>& p, std::size_t station, S* k, std::size_t ld) const {
    const StationType& t = stations_[type_of_station_[station]];
    if (t.count > 1)
      add_blocks(t.blocks, k, ld);
    else
      put_station(p, station, k, ld);
  }

  /// The same for the motions beside the reference's alone: a station does not resist its own rigid motion.
  void add_station_deformed(const PreparedFrame<S>& p, std::size_t station, S* k, std::size_t ld, std::vector<S>& scratch) const {
    const StationType& t = stations_[type_of_station_[station]];
    if (t.count > 1) {
      add_blocks(t.blocks, k, ld, 6);
      return;
    }
    const std::size_t n = unknowns(station), lds = padded(n);
    scratch.assign(lds * n, S(0));
    put_station(p, station, scratch.data(), lds);
    for (std::size_t c = 6; c < n; ++c)
      for (std::size_t r = c; r < n; ++r) k[c * ld + r] += scratch[c * lds + r];
  }

  /// The 6 x 6 blocks of a matrix (`rows` x `columns`) that are not zero; `lower`: those of its lower triangle.
  static void find_blocks(const S* m, std::size_t ld, std::size_t rows, std::size_t columns, bool lower, std::vector<BasicBlock6<S>>& blocks) {
    blocks.clear();
    const std::size_t across = columns / 6;
    blocks.reserve(lower ? across * (across + 1) / 2 : across * (rows / 6));
    for (std::size_t c = 0; c < columns; c += 6)
      for (std::size_t r = lower ? c : 0; r < rows; r += 6) {
        const S* const from = m + c * ld + r;
        bool any = false;
        for (std::size_t j = 0; j < 6 && !any; ++j)
          for (std::size_t i = 0; i < 6; ++i) any = any || value_of(from[j * ld + i]) != 0.0;
        if (!any) continue;
        blocks.emplace_back(static_cast<int>(r / 6), static_cast<int>(c / 6), [&](std::size_t i, std::size_t j) { return from[j * ld + i]; });
      }
  }

 private:
  struct StationType {
    std::uint32_t example = 0, count = 0;
    std::vector<BasicBlock6<S>> blocks;  ///< of the members inside, lower triangle; kept where the type occurs more than once
  };

  void put_station(const PreparedFrame<S>& p, std::size_t station, S* k, std::size_t ld) const {
    for (const std::uint32_t* i = layout_.within.begin(station); i != layout_.within.end(station); ++i) {
      const BasicMember<S>& m = p.frame.members[*i];
      const std::size_t from = 6 * layout_.place[m.from], to = 6 * layout_.place[m.to];
      put_member_matrix(p.sort(*i).plain, [&](std::size_t r, std::size_t c, const S& v) {
        k[(c < 6 ? from + c : to + c - 6) * ld + (r < 6 ? from + r : to + r - 6)] += v;
      });
    }
  }
  void find_stations(const PreparedFrame<S>& p) {
    stations_.clear();
    type_of_station_.clear();
    const std::vector<std::uint32_t>&ends = layout_.ends, &place = layout_.place;
    type_of_station_.reserve(stations());
    Finder<StationType> find(stations_, stations(), layout_.within.items.size());
    for (std::size_t s = 0; s < stations(); ++s) {
      find.begin(layout_.stations.size(s), 0);
      for (const std::uint32_t* i = layout_.within.begin(s); i != layout_.within.end(s); ++i)
        find.see(p.sort_of[*i], place[ends[2 * *i]], place[ends[2 * *i + 1]]);
      type_of_station_.push_back(find.end(s));
    }
    std::vector<S> k;
    for (StationType& t : stations_)
      if (t.count > 1) {
        const std::size_t n = unknowns(t.example), ld = padded(n);
        k.assign(ld * n, S(0));
        put_station(p, t.example, k.data(), ld);
        find_blocks(k.data(), ld, n, n, true, t.blocks);
      }
  }

  /// Gives things that are alike one number: each is described by words, between begin() and end(). Type has `example`
  /// and `count`.
  template <class Type>
  class Finder {
   public:
    Finder(std::vector<Type>& types, std::size_t things, std::size_t members) : types_(types) {
      start_.reserve(things);
      words_.resize(2 * things + 3 * members);
    }

    void begin(std::size_t first, std::size_t second) {
      start_.push_back(said_);
      words_[said_++] = static_cast<std::uint32_t>(first);
      words_[said_++] = static_cast<std::uint32_t>(second);
    }
    void see(std::uint32_t sort, std::uint32_t from, std::uint32_t to) {
      std::uint32_t* const w = words_.data() + said_;
      w[0] = sort, w[1] = from, w[2] = to;
      said_ += 3;
    }
    std::uint32_t end(std::size_t thing) {
      if constexpr (std::floating_point<S>) {
        // most often a bay is like the one before it or the one before that
        for (std::uint32_t& t : recent_)
          if (t < types_.size() && same(types_[t].example, thing)) {
            if (&t != recent_) std::swap(recent_[0], recent_[1]);
            return seen(recent_[0]);
          }
        const std::uint64_t hash = hash_of(thing);
        for (auto [at, last] = known_.equal_range(hash); at != last; ++at)
          if (same(types_[at->second].example, thing)) return seen(at->second);
        known_.emplace(hash, static_cast<std::uint32_t>(types_.size()));
      }
      types_.emplace_back();
      types_.back().example = static_cast<std::uint32_t>(thing);
      return seen(static_cast<std::uint32_t>(types_.size() - 1));
    }

   private:
    std::uint32_t seen(std::uint32_t t) {
      ++types_[t].count;
      if (recent_[0] != t) recent_[1] = std::exchange(recent_[0], t);
      return t;
    }
    /// The thing last described against an earlier one.
    bool same(std::size_t a, std::size_t b) const {
      const std::size_t size = said_ - start_[b];
      const std::uint32_t *const one = words_.data() + start_[a], *const other = words_.data() + start_[b];
      return start_[a + 1] - start_[a] == size && std::equal(one, one + size, other);
    }
    std::uint64_t hash_of(std::size_t thing) const {
      std::uint64_t h = said_ - start_[thing];
      for (std::size_t i = start_[thing]; i < said_; ++i) {
        h = (h ^ words_[i]) * 0xD6E8'FEB8'6659'FD93ULL;
        h ^= h >> 32;
      }
      return h;
    }
    std::vector<Type>& types_;
    std::vector<std::size_t> start_;    ///< of each thing's words
    std::vector<std::uint32_t> words_;
    std::size_t said_ = 0;              ///< number of words so far
    std::uint32_t recent_[2] = {static_cast<std::uint32_t>(-1), static_cast<std::uint32_t>(-1)};
    std::unordered_multimap<std::uint64_t, std::uint32_t> known_;
  };

  void fill(const PreparedFrame<S>& p, BayType<S>& t) {
    t.inner = 6 * layout_.inner.size(t.example);
    if (t.inner > 0)
      fill_condensed(p, t);
    else
      fill_directly(p, t);
    see_ratio(t.inner_ratio, inner_ratio_);
    for (const BasicBlock6<S>& b : t.first)
      for (std::size_t u = 0; u < 6 && b.row == b.column; ++u)
        if (const double d = value_of(b(u, u)); d > stiffest_[u < 3 ? 0 : 1]) stiffest_[u < 3 ? 0 : 1] = d;
  }

  /// Every bar runs from one station to the other: it adds to one block of each and to one between.
  void fill_directly(const PreparedFrame<S>& p, BayType<S>& t) const {
    const std::size_t bay = t.example;
    const auto diagonal = [](std::vector<BasicBlock6<S>>& blocks, std::size_t count) {
      blocks.clear();
      blocks.reserve(count);
      for (std::size_t i = 0; i < count; ++i) blocks.emplace_back(static_cast<int>(i), static_cast<int>(i));
    };
    diagonal(t.first, layout_.stations.size(bay));
    diagonal(t.second, layout_.stations.size(bay + 1));
    t.blocks.clear();
    t.blocks.reserve(layout_.along.size(bay));
    for (const std::uint32_t* i = layout_.along.begin(bay); i != layout_.along.end(bay); ++i) {
      const std::uint32_t a = layout_.ends[2 * *i], b = layout_.ends[2 * *i + 1];
      const bool forward = layout_.at[a] == bay;
      const std::uint32_t row = layout_.place[forward ? a : b], column = layout_.place[forward ? b : a];
      const auto at = std::find_if(t.blocks.begin(), t.blocks.end(), [&](const BasicBlock6<S>& k) {
        return std::pair(k.column, k.row) >= std::pair(static_cast<int>(column), static_cast<int>(row));
      });
      const bool known = at != t.blocks.end() && at->column == static_cast<int>(column) && at->row == static_cast<int>(row);
      BasicBlock6<S>& between = known ? *at : *t.blocks.emplace(at, static_cast<int>(row), static_cast<int>(column));
      BasicBlock6<S>&first = t.first[row], &second = t.second[column];
      put_member_matrix(p.sort(*i).plain, [&](std::size_t r, std::size_t c, const S& v) {
        if ((r < 6) == (c < 6))
          ((r < 6) == forward ? first : second)(r % 6, c % 6) += v;
        else if ((r < 6) == forward)
          between(r % 6, c % 6) += v;
      });
    }
    for (BasicBlock6<S>& b : t.blocks) b.measure();
  }

  /// Where a node stands among those of a bay: first station, second station, inside.
  std::uint32_t code(std::size_t bay, std::size_t node) const {
    const std::uint32_t at = layout_.at[node];
    return 3 * layout_.place[node] + (at == bay ? 0U : (at == bay + 1 ? 1U : 2U));
  }
  void fill_condensed(const PreparedFrame<S>& p, BayType<S>& t) const {
    const std::size_t bay = t.example;
    NodeMatrix<S> m;
    m.n1 = unknowns(bay);
    m.n2 = unknowns(bay + 1);
    m.second = padded(m.n1);
    const std::size_t outer = m.second + m.n2, all = outer + t.inner;
    m.ld = padded(all);
    m.k.assign(m.ld * all, S(0));
    const auto first = [&](std::size_t node) {
      const std::uint32_t c = code(bay, node);
      return 6 * (c / 3) + (c % 3 == 0 ? 0 : (c % 3 == 1 ? m.second : outer));
    };
    for (const std::uint32_t* i = layout_.along.begin(bay); i != layout_.along.end(bay); ++i) {
      const BasicMember<S>& member = p.frame.members[*i];
      const std::size_t from = first(member.from), to = first(member.to) - 6;
      put_member_matrix(p.sort(*i).plain, [&](std::size_t r, std::size_t c, const S& v) {
        m.k[(c < 6 ? from + c : to + c) * m.ld + (r < 6 ? from + r : to + r)] += v;
      });
    }
    t.inner_ratio = condense(p, t, m, outer);
    find_blocks(&m.at(0, m.second), m.ld, m.n1, m.n2, false, t.blocks);
    find_blocks(m.k.data(), m.ld, m.n1, m.n1, true, t.first);
    find_blocks(&m.at(m.second, m.second), m.ld, m.n2, m.n2, true, t.second);
  }

  /// K - K_w K_ww⁻¹ K_wᵀ; an idle motion inside (a pinned joint's turning) stays at rest. Any other that nothing
  /// resists is a mechanism, however much like an idle one its empty row looks.
  /// Returns the smallest pivot ratio.
  double condense(const PreparedFrame<S>& p, BayType<S>& t, NodeMatrix<S>& m, std::size_t outer) const {
    const std::size_t w = t.inner, ld = padded(w);
    t.held_inner.assign(ld * w, S(0));
    for (std::size_t c = 0; c < w; ++c)
      for (std::size_t r = 0; r < w; ++r) t.held_inner[c * ld + r] = m.at(outer + r, outer + c);
    const auto for_each_idle = [&](const S& diagonal) {
      for (std::size_t i = 0; i < w; ++i)
        if (p.freedoms.of(layout_.inner.begin(t.example)[i / 6], i % 6) == Freedoms::idle) t.held_inner[i * ld + i] = diagonal;
    };
    for_each_idle(S(1));
    const double ratio = KernelsOf<S>::invert(w, ld, t.held_inner.data());
    for_each_idle(S(0));
    const std::size_t n = m.n1 + m.n2;
    const auto row = [&](std::size_t u) { return u < m.n1 ? u : m.second + u - m.n1; };
    t.to_inner.assign(ld * n, S(0));
    for (std::size_t c = 0; c < n; ++c)
      for (std::size_t j = 0; j < w; ++j) {
        const S v = m.at(outer + j, row(c));
        if (value_of(v) != 0.0)
          for (std::size_t r = 0; r < w; ++r) t.to_inner[c * ld + r] += S(t.held_inner[j * ld + r] * v);
      }
    for (std::size_t c = 0; c < n; ++c)
      for (std::size_t r = c; r < n; ++r) {
        S sum = S(0);
        for (std::size_t j = 0; j < w; ++j) sum += S(m.at(outer + j, row(r)) * t.to_inner[c * ld + j]);
        m.at(row(r), row(c)) -= sum;
        m.at(row(c), row(r)) = m.at(row(r), row(c));
      }
    return ratio;
  }

  ChainLayout layout_;
  double inner_ratio_ = 1.0;
  std::array<double, 2> stiffest_{1e-300, 1e-300};  ///< against displacements, against rotations
  std::vector<BayType<S>> types_;
  std::vector<std::uint32_t> type_of_;
  std::vector<StationType> stations_;
  std::vector<std::uint32_t> type_of_station_;
};

}  // namespace baywork::detail
