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

/// The same one degree lower: what a polynomial is whose last coefficient is nothing.
template <std::size_t N>
std::array<double, N - 1> lowered(const std::array<double, N>& c) {
  std::array<double, N - 1> out{};
  for (std::size_t i = 0; i + 1 < N; ++i) out[i] = c[i];
  return out;
}

template <std::size_t N>
struct Roots {
  std::array<double, N> at{};
  std::size_t count = 0;
};

/// The one root between two places at which a polynomial that rises or falls throughout has different signs: Newton's
/// steps, halving wherever one leaves the bracket or gains less than halving would, until the bracket or the step is
/// the last bit, or two.
template <std::size_t N>
double root_in(const std::array<double, N>& c, double left, double right, bool rises) {
  double at = 0.5 * (left + right), last = right - left;
  for (int step = 0; step < 200; ++step) {
    double v = c[N - 1], slope = 0.0;
    for (std::size_t i = N - 1; i-- > 0;) {
      slope = slope * at + v;
      v = v * at + c[i];
    }
    ((v < 0.0) == rises ? left : right) = at;
    double next = at - v / slope;
    if (!(next > left && next < right) || !(std::abs(next - at) < 0.5 * last)) next = 0.5 * (left + right);
    last = std::abs(next - at);
    if (next == at || !(next > left && next < right) || last <= 4e-16 * std::abs(at)) return next;
    at = next;
  }
  return at;
}

/// Whether a polynomial is of one sign between two places, beyond all rounding, or zero throughout: told by its control
/// values there (those of Bernstein), between whose least and greatest it stays.
template <std::size_t N>
bool keeps_sign(std::array<double, N> c, double lo, double hi) {
  if constexpr (N > 2)
    if (c[N - 1] == 0.0) return keeps_sign(lowered(c), lo, hi);
  double size = 0, power = 1;
  for (std::size_t i = 0; i < N; ++i, power *= hi) size += std::abs(c[i]) * power;
  if (size == 0.0) return true;
  for (std::size_t i = 0; i + 1 < N; ++i)  // in t - lo
    for (std::size_t j = N - 1; j-- > i;) c[j] += lo * c[j + 1];
  power = 1;
  for (std::size_t i = 0; i < N; ++i, power *= hi - lo) c[i] *= power;  // over 0 to 1
  double least = c[0], most = c[0];
  for (std::size_t k = 1; k < N; ++k) {
    double control = c[0], weight = 1;  // sum of C(k, i) / C(N - 1, i) c[i]
    for (std::size_t i = 1; i <= k; ++i) {
      weight *= static_cast<double>(k - i + 1) / static_cast<double>(N - i);
      control += weight * c[i];
    }
    least = control < least ? control : least;
    most = control > most ? control : most;
  }
  const double rounding = 1e-12 * size;
  return least > rounding || most < -rounding;
}

/// Sign-changing roots in (lo, hi), rising: of a parabola the greater one first, in which nothing cancels, the other
/// from their product. Any other polynomial is monotonic between two neighbouring roots of its derivative, so that each
/// is found once.
template <std::size_t N>
Roots<N> roots_between(const std::array<double, N>& c, double lo, double hi) {
  Roots<N> out;
  const auto take = [&](double t) {
    if (t > lo && t < hi) out.at[out.count++] = t;
  };
  if constexpr (N == 2) {
    if (c[1] != 0.0) take(-c[0] / c[1]);
  } else if (c[N - 1] == 0.0) {
    const Roots<N - 1> all = roots_between(lowered(c), lo, hi);
    for (std::size_t i = 0; i < all.count; ++i) out.at[out.count++] = all.at[i];
  } else if constexpr (N == 3) {
    const double b = -0.5 * c[1], under = b * b - c[0] * c[2];
    if (!(under > 0.0)) return out;
    const double q = b + std::copysign(std::sqrt(under), b), one = q / c[2], other = c[0] / q;
    take(one < other ? one : other);
    take(one < other ? other : one);
  } else {
    std::array<double, N - 1> d{};
    for (std::size_t i = 1; i < N; ++i) d[i - 1] = c[i] * static_cast<double>(i);
    const Roots<N - 1> turns = roots_between(d, lo, hi);
    double a = lo, at_a = evaluate(c, lo);
    for (std::size_t i = 0; i <= turns.count; ++i) {
      const double b = i < turns.count ? turns.at[i] : hi;
      const double at_b = evaluate(c, b);
      if ((at_a < 0.0 && at_b > 0.0) || (at_a > 0.0 && at_b < 0.0))
        out.at[out.count++] = root_in(c, a, b, at_b > 0.0);
      a = b;
      at_a = at_b;
    }
  }
  return out;
}

}  // namespace baywork::detail
