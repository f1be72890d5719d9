// SPDX-License-Identifier: MIT
// What the forces of a chord pair are at most and at least under all loads between several.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <baywork/verify/stability_forces.hpp>

namespace baywork::verify::detail {

/// What the checks of all pairs take of one load.
struct StabilityState {
  std::vector<PairForces> of;  ///< by pair
  double part = 0;             ///< the loads over those that buckle the frame; 0 where nothing is pushed, or closed
                               ///< forms are asked for
};

/// Parts of its greatest push up to which a pair counts as not pushed at a station.
inline constexpr double pushed_from = 1e-3;
/// Of what its chords differ by: what zigzags leave of a pair that is pushed and pulled alike.
inline constexpr double pair_pushed_from = 0.01;

/// Whether a station lies at or beyond the pair's outermost holds.
inline bool is_beyond(const ChordPair& p, std::size_t station) {
  return p.held.empty() || station <= p.held.front() || station >= p.held.back();
}

/// Bounds for all loads within the hull of several states. Pushes are straight in loads, so that those at one station
/// stay between their values there, and the pull opposite over the push, a quotient of two, too wherever the push is
/// above zero.
struct PairSpan {
  double N_least = 0, N_most = 0;                            ///< the greatest push of any station
  double dN_least = 0, dN_most = 0;                          ///< the greatest difference
  bool may_reach_beyond = false, must_reach_beyond = false;  ///< pushed beyond its holds
  double tension_least = 1, tension_most = 1;                ///< pull opposite over push

  PairSpan(const ChordPair& p, std::size_t opposite, std::size_t i, std::size_t last,
           std::span<const StabilityState* const> states) {
    struct Limits {
      double least = 0, most = 0;
      void take(double v, bool first) {
        least = first ? v : smaller(least, v);
        most = first ? v : larger(most, v);
      }
    };
    const auto limits = [&](auto value) {
      Limits out;
      for (std::size_t s = 0; s < states.size(); ++s) out.take(value(*states[s]), s == 0);
      return out;
    };
    std::vector<Limits> push(last);
    for (std::size_t k = 1; k < last; ++k) {
      push[k] = limits([&](const StabilityState& s) { return s.of[i].sum(k); });
      N_least = larger(N_least, push[k].least);
      N_most = larger(N_most, push[k].most);
      const Limits d = limits([&](const StabilityState& s) { return s.of[i].first_more(k); });
      dN_least = larger(dN_least, larger(d.least, -d.most));  // 0 where the sign changes
      dN_most = larger(dN_most, larger(magnitude(d.least), magnitude(d.most)));
    }
    for (std::size_t k = 1; k < last; ++k) {
      const bool may = push[k].most > pushed_from * N_least && push[k].most > 0.0,
                 must = push[k].least > pushed_from * N_most;
      if (is_beyond(p, k)) {
        may_reach_beyond = may_reach_beyond || may;
        must_reach_beyond = must_reach_beyond || must;
      }
      if (!may || opposite == i) continue;
      if (push[k].least > 0.0) {
        const Limits t = limits([&](const StabilityState& s) { return -s.of[opposite].sum(k) / s.of[i].sum(k); });
        tension_least = smaller(tension_least, t.least);
        if (must) tension_most = smaller(tension_most, t.most);
      } else {
        const Limits far = limits([&](const StabilityState& s) { return s.of[opposite].sum(k); });
        tension_least = smaller(tension_least, far.most <= 0.0 ? 0.0 : -1.0);
      }
    }
  }
};

}  // namespace baywork::verify::detail
