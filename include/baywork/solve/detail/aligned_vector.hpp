// SPDX-License-Identifier: MIT
// Vectors that begin on a cache line: where lanes straddle two lines, reading a matrix takes half as long again.
#pragma once

#include <algorithm>
#include <cstddef>
#include <new>
#include <vector>

namespace baywork::detail {

template <class T>
struct OnCacheLine {
  using value_type = T;
  static constexpr std::align_val_t line{(std::max)(alignof(T), std::size_t{64})};

  OnCacheLine() = default;
  template <class U>
  OnCacheLine(const OnCacheLine<U>&) noexcept {}

  T* allocate(std::size_t n) { return static_cast<T*>(::operator new(n * sizeof(T), line)); }
  void deallocate(T* p, std::size_t) noexcept { ::operator delete(p, line); }
  friend bool operator==(const OnCacheLine&, const OnCacheLine&) noexcept { return true; }
};

template <class T>
using AlignedVector = std::vector<T, OnCacheLine<T>>;

}  // namespace baywork::detail
