// SPDX-License-Identifier: MIT
// How fast corrections with a factorisation shrink: what a path must show before it is taken.
#pragma once

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/solve/detail/member_pass.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>

namespace baywork::detail {

/// The factor by which corrections with a factorisation come to shrink, from those for a load that stirs every motion.
/// `solve(forces, motions)` gives motions for forces. Known only where residuals have more digits than the scalar, else
/// taken for 0. What reaches `limit` is not followed further.
template <class S, class Solve>
double rate_of_correction(const PreparedFrame<S>& p, double limit, const Solve& solve) {
  using A = accurate_t<S>;
  double rate = 0;
  if constexpr (std::floating_point<S>) {
    std::vector<A> residual(6 * p.frame.nodes.size(), A(0)), d(residual.size(), A(0));
    const auto keep_free = [&] {
      for (std::size_t i = 0; i < residual.size(); ++i)
        if (p.freedoms.number[i] < 0) residual[i] = A(0);
    };
    std::uint32_t any = 1;
    for (std::size_t i = 0; i < residual.size(); ++i) {
      any =
          any * 1664525U + 1013904223U;  // a linear congruence will do: D. E. Knuth, vol. 2, 3.3.4 (value from memory)
      const double size = 0.2 + 1.6 * std::ldexp(static_cast<double>(any), -32);
      residual[i] = A(S(i % 6 < 3 ? size : (size - 1.0) * p.shortest));
    }
    keep_free();
    double first = 0, last = 0, first_force = 0, last_force = 0;
    for (int step = 0; step < 8; ++step) {
      Sizes s{};
      solve(residual, d);
      see_motions(d, s);
      p.add_member_forces(d, -1.0, residual, &s[2]);
      p.add_spring_forces(d, -1.0, residual);
      keep_free();
      const double motion = (std::max)(s[0], s[1] * p.longest), force = (std::max)(s[2] * p.longest, s[3]);
      if (step == 0) {
        first = motion;
        first_force = force;
      } else {
        if (!(motion < last) || !(force <= last_force)) return 1.0;
        rate = (std::max)({rate, motion / last, last_force > 0 ? force / last_force : 0.0});
        if (!(rate < limit)) break;
        // far enough for what shrinks slowest to show, not so far that the residual's own rounding does
        if (motion < 1e-13 * first && force <= 1e-13 * first_force) break;
      }
      last = motion;
      last_force = force;
    }
  }
  return rate;
}

}  // namespace baywork::detail
