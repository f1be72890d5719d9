// SPDX-License-Identifier: MIT
// How many additions and multiplications one core can do in a second, in its widest registers.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>

#if defined(__x86_64__) && defined(__GNUC__)
#include <immintrin.h>
#endif

namespace bench {
namespace detail {

#if defined(__x86_64__) && defined(__GNUC__)
// 12 sums that do not wait for each other: more than the latency (4 or 5 cycles) times the two units of a core.
__attribute__((target("avx512f"), noinline)) inline double fma_avx512(std::size_t rounds) {
  __m512d sum[12];
  for (__m512d& s : sum) s = _mm512_set1_pd(1.0);
  const __m512d factor = _mm512_set1_pd(0.999999999), more = _mm512_set1_pd(1e-9);
  for (std::size_t r = 0; r < rounds; ++r)
    for (__m512d& s : sum) s = _mm512_fmadd_pd(s, factor, more);
  double lanes[8], out = 0;
  for (const __m512d& s : sum) {
    _mm512_storeu_pd(lanes, s);
    out += lanes[0];
  }
  return out;
}
__attribute__((target("avx2,fma"), noinline)) inline double fma_avx2(std::size_t rounds) {
  __m256d sum[12];
  for (__m256d& s : sum) s = _mm256_set1_pd(1.0);
  const __m256d factor = _mm256_set1_pd(0.999999999), more = _mm256_set1_pd(1e-9);
  for (std::size_t r = 0; r < rounds; ++r)
    for (__m256d& s : sum) s = _mm256_fmadd_pd(s, factor, more);
  double lanes[4], out = 0;
  for (const __m256d& s : sum) {
    _mm256_storeu_pd(lanes, s);
    out += lanes[0];
  }
  return out;
}
#endif

inline double plain_sums(std::size_t rounds) {
  double sum[12];
  for (double& s : sum) s = 1.0;
  for (std::size_t r = 0; r < rounds; ++r)
    for (double& s : sum) s = s * 0.999999999 + 1e-9;
  double out = 0;
  for (const double s : sum) out += s;
  return out;
}

template <class Kernel>
double flops_per_second(Kernel kernel, double lanes) {
  constexpr std::size_t rounds = 2'000'000;
  double best = 0;
  volatile double kept = 0;
  for (int i = 0; i < 8; ++i) {
    const auto start = std::chrono::steady_clock::now();
    kept = kernel(rounds);
    const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
    best = (std::max)(best, 2 * 12 * lanes * static_cast<double>(rounds) / time.count());
  }
  static_cast<void>(kept);
  return best;
}

}  // namespace detail

/// Fused multiply-adds (two operations each) per second, the best of eight runs.
inline double measured_peak() {
#if defined(__x86_64__) && defined(__GNUC__)
  if (__builtin_cpu_supports("avx512f")) return detail::flops_per_second(detail::fma_avx512, 8);
  if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"))
    return detail::flops_per_second(detail::fma_avx2, 4);
#endif
  return detail::flops_per_second(detail::plain_sums, 1);
}

}  // namespace bench
