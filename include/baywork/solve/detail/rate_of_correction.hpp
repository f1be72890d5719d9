// SPDX-License-Identifier: MIT
// How fast corrections with a factorisation shrink: what a path must show before it is taken.
#pragma once

#include <algorithm>
#include <array>
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
    std::vector<std::size_t> tied;
    for (std::size_t i = 0; i < residual.size(); ++i)
      if (p.freedoms.number[i] < 0) tied.push_back(i);
    const auto keep_free = [&] {
      for (const std::size_t i : tied) residual[i] = A(0);
    };
    std::uint32_t any = 1;
    for (std::size_t i = 0; i < residual.size(); ++i) {
      any =
          any * 1664525U + 1013904223U;  // a linear congruence will do: D. E. Knuth, vol. 2, 3.3.4 (value from memory)
      const double size = 0.2 + 1.6 * 0x1p-32 * static_cast<double>(any);
      residual[i] = A(S(i % 6 < 3 ? size : (size - 1.0) * p.shortest));
    }
    keep_free();
    const auto balance = [&](double* sizes) {
      p.add_member_forces(d, -1.0, residual, sizes);
      p.add_spring_forces(d, -1.0, residual);
      keep_free();
    };
    const auto size_of = [&](const Sizes& s) {
      return std::array<double, 2>{(std::max)(s[0], s[1] * p.longest), (std::max)(s[2] * p.longest, s[3])};
    };
    Sizes sizes{}, unseen{};
    solve(residual, d);
    see_motions(d, sizes);
    balance(&sizes[2]);
    const auto [first, first_force] = size_of(sizes);
    double last = first, last_force = first_force;
    for (int step = 1; step < 8; ++step) {
      solve(residual, d);
      sizes = {};
      see_motions(d, sizes);
      see_member_forces(p, d, sizes);
      const auto [motion, force] = size_of(sizes);
      if (!(motion < last) || !(force <= last_force)) return 1.0;
      rate = (std::max)({rate, motion / last, last_force > 0 ? force / last_force : 0.0});
      // far enough for what shrinks slowest to show, not so far that the residual's own rounding does. Where hardly
      // anything is left after one step, a hidden thousandth would not matter: solutions see their own corrections, too
      if (!(rate < limit) || rate < 1e-8 || (motion < 1e-13 * first && force <= 1e-13 * first_force)) break;
      last = motion;
      last_force = force;
      balance(&unseen[2]);
    }
  }
  return rate;
}

}  // namespace baywork::detail
