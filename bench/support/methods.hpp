// SPDX-License-Identifier: MIT
// All methods that were built in.
#pragma once

#include "eigen_methods.hpp"
#include "method.hpp"
#include "ours.hpp"
#ifdef BAYWORK_BENCH_CHOLMOD
#include "cholmod_methods.hpp"
#endif
#ifdef BAYWORK_BENCH_LAPACK
#include "lapack_method.hpp"
#endif
#ifdef BAYWORK_BENCH_OPENBLAS
extern "C" void openblas_set_num_threads(int);
#endif

namespace bench {

/// Calls use.operator()<M>() for each method M.
template <class Use>
void for_each_method(Use&& use) {
  for_each_own_method(use);
  use.template operator()<EigenLlt>();
  use.template operator()<EigenLdlt>();
  use.template operator()<EigenLltNatural>();
#ifdef BAYWORK_BENCH_CHOLMOD
  use.template operator()<CholmodSimplicial>();
  use.template operator()<CholmodSimplicialNatural>();
  use.template operator()<CholmodSuper>();
#endif
#ifdef BAYWORK_BENCH_LAPACK
  use.template operator()<LapackBand>();
#endif
}

/// Which optional libraries are in, and how.
inline const char* libraries() {
  return "Eigen"
#ifdef BAYWORK_BENCH_CHOLMOD
         ", CHOLMOD"
#else
         ", no CHOLMOD (its rows are left out)"
#endif
#ifdef BAYWORK_BENCH_LAPACK
         ", LAPACK"
#else
         ", no LAPACK (its rows are left out)"
#endif
#ifdef BAYWORK_BENCH_OPENBLAS
         " of OpenBLAS on one thread"
#endif
      ;
}

inline void use_one_thread() {
#ifdef BAYWORK_BENCH_OPENBLAS
  openblas_set_num_threads(1);
#endif
}

}  // namespace bench
