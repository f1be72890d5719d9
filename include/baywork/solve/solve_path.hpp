// SPDX-License-Identifier: MIT
// Which way a frame is solved, and what a caller may ask for.
#pragma once

#include <cstdint>

namespace baywork {

/// `chain` counts deformations, so that length costs no digits; `chain_fast` is the quicker form in plain displacements,
/// for girders short enough; `sparse` takes any frame. Asking for `automatic` gives one of the others.
enum class SolvePath : std::uint8_t { automatic, chain, chain_fast, sparse };

inline const char* name(SolvePath p) {
  switch (p) {
    case SolvePath::automatic: return "automatic";
    case SolvePath::chain: return "chain in deformations";
    case SolvePath::chain_fast: return "fast chain";
    case SolvePath::sparse: return "sparse";
  }
  return "sparse";
}

/// Runs two tasks that do not touch each other's data, and returns when both are done.
using RunBoth = void (*)(void (*first)(void*), void (*second)(void*), void* context);
inline void one_after_the_other(void (*first)(void*), void (*second)(void*), void* context) {
  first(context);
  second(context);
}

struct SolverOptions {
  double tolerance = 1e-10;  ///< largest certified error that is accepted
  SolvePath path = SolvePath::automatic;
  RunBoth run_both = one_after_the_other;  ///< in_two_threads (solve/two_threads.hpp) factors a chain from both ends at once
};

}  // namespace baywork
