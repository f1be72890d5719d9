// SPDX-License-Identifier: MIT
// Factors a chain from both ends at the same time. Apart from the rest, for it needs threads.
#pragma once

#include <future>

#include <baywork/solve/solve_path.hpp>

namespace baywork {

/// For SolverOptions::run_both. Pays from some hundred bays on; the numbers are the same to the last bit.
inline void in_two_threads(void (*first)(void*), void (*second)(void*), void* context) {
  std::future<void> other = std::async(std::launch::async, first, context);
  second(context);
  other.get();
}

}  // namespace baywork
