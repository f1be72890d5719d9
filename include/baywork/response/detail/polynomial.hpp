// SPDX-License-Identifier: MIT
// Real roots of small polynomials in an interval: extremes along a member are found, not sampled.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace baywork::detail {

/// c[0] + c[1] t + ... by Horner, n coefficients.
template <class S, std::size_t N>
S evaluate(const std::array<S, N>& c, const S& t) {
  S v = c[N - 1];
  for (std::size_t i = N - 1; i-- > 0;) v = S(v * t + c[i]);
  return v;
}

template <std::size_t N>
struct Roots {
  std::array<double, N> at{};
  std::size_t count = 0;
};

/// Sign-changing roots in (lo, hi), rising. Between two neighbouring roots of the derivative a polynomial is monotonic,
/// so bisection there, carried to the last bit, finds each root once.
template <std::size_t N>
Roots<N> roots_between(const std::array<double, N>& c, double lo, double hi) {
  Roots<N> out;
  if constexpr (N == 2) {
    if (c[1] != 0.0) {
      const double t = -c[0] / c[1];
      if (t > lo && t < hi) out.at[out.count++] = t;
    }
    return out;
  } else {
    std::array<double, N - 1> d{};
    for (std::size_t i = 1; i < N; ++i) d[i - 1] = c[i] * static_cast<double>(i);
    const Roots<N - 1> turns = roots_between(d, lo, hi);
    double a = lo;
    for (std::size_t i = 0; i <= turns.count; ++i) {
      const double b = i < turns.count ? turns.at[i] : hi;
      double left = a, right = b;
      const double fl = evaluate(c, left), fr = evaluate(c, right);
      if ((fl < 0.0 && fr > 0.0) || (fl > 0.0 && fr < 0.0)) {
        for (int step = 0; step < 200; ++step) {
          const double middle = 0.5 * (left + right);
          if (!(middle > left && middle < right)) break;
          ((evaluate(c, middle) < 0.0) == (fl < 0.0) ? left : right) = middle;
        }
        out.at[out.count++] = 0.5 * (left + right);
      }
      a = b;
    }
    return out;
  }
}

}  // namespace baywork::detail
