// SPDX-License-Identifier: MIT
// Random numbers that are the same everywhere: std distributions differ from library to library.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>

#include <baywork/core/vec3.hpp>

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}

  double in(double low, double high) { return low + (high - low) * (static_cast<double>(engine_() >> 11U) * 0x1p-53); }
  /// Every order of magnitude as likely as the next.
  double over_orders(double low, double high) { return std::exp(in(std::log(low), std::log(high))); }
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(engine_() % n); }
  bool chance(double p) { return in(0, 1) < p; }
  baywork::Vec3<> vector(double size) { return {in(-size, size), in(-size, size), in(-size, size)}; }

 private:
  std::mt19937_64 engine_;
};
