// SPDX-License-Identifier: MIT
// What holds the stations of a chain: held motions, springs to the ground, and turnings that nothing resists.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/solve/detail/chain_layout.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>

namespace baywork::detail {

template <class S>
struct GroundTie {
  enum class Kind : std::uint8_t { held, spring, idle } kind = Kind::held;
  std::uint32_t unknown = 0;  ///< of its station
  S stiffness = S(0);
};

/// Ties of every station, in the order of its unknowns.
template <class S>
class ChainGround {
 public:
  ChainGround() = default;
  ChainGround(const PreparedFrame<S>& p, const ChainLayout& l) {
    std::vector<std::int32_t> support(p.frame.nodes.size(), -1);
    for (std::size_t j = 0; j < p.frame.supports.size(); ++j)
      if (support[p.frame.supports[j].node] < 0) support[p.frame.supports[j].node] = static_cast<std::int32_t>(j);
    first_.reserve(l.stations.size() + 1);
    first_.push_back(0);
    for (std::size_t s = 0; s < l.stations.size(); ++s) {
      std::uint32_t unknown = 0;
      for (const std::uint32_t* n = l.stations.begin(s); n != l.stations.end(s); ++n) {
        if (support[*n] < 0 && p.freedoms.of(*n, 3) != Freedoms::idle) {  // most joints
          unknown += 6;
          continue;
        }
        for (std::size_t k = 0; k < 6; ++k, ++unknown) {
          const int number = p.freedoms.of(*n, k);
          if (number == Freedoms::held) ties_.push_back({GroundTie<S>::Kind::held, unknown, S(0)});
          if (number == Freedoms::idle) ties_.push_back({GroundTie<S>::Kind::idle, unknown, S(0)});
          if (number >= 0 && support[*n] >= 0) {
            S stiffness = S(0);
            for (const BasicSupport<S>& at : p.frame.supports)
              if (at.node == *n && at.motion[k].kind == BasicRestraint<S>::Kind::spring) stiffness += at.motion[k].stiffness;
            if (value_of(stiffness) != 0.0) ties_.push_back({GroundTie<S>::Kind::spring, unknown, stiffness});
          }
        }
      }
      first_.push_back(static_cast<std::uint32_t>(ties_.size()));
    }
  }

  const GroundTie<S>* begin(std::size_t station) const { return ties_.data() + first_[station]; }
  /// Whether some motion of a station is held or sprung.
  bool holds(std::size_t station) const {
    return std::any_of(begin(station), end(station), [](const GroundTie<S>& t) { return t.kind != GroundTie<S>::Kind::idle; });
  }
  const GroundTie<S>* end(std::size_t station) const { return ties_.data() + first_[station + 1]; }

 private:
  std::vector<std::uint32_t> first_;
  std::vector<GroundTie<S>> ties_;
};

/// Springs added, held and idle coordinates cut off; of k the lower triangle counts.
template <class S>
void tie_down(const GroundTie<S>* tie, const GroundTie<S>* end, std::size_t n, std::size_t ld, S* k) {
  for (; tie != end; ++tie) {
    const std::size_t u = tie->unknown;
    if (tie->kind == GroundTie<S>::Kind::spring) {
      k[u * ld + u] += tie->stiffness;
      continue;
    }
    for (std::size_t c = 0; c < u; ++c) k[c * ld + u] = S(0);
    for (std::size_t r = u + 1; r < n; ++r) k[u * ld + r] = S(0);
    k[u * ld + u] = S(1);
  }
}

}  // namespace baywork::detail
