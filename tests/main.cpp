// SPDX-License-Identifier: MIT
// The main function of the test program, and solver and proof compiled once for all topics; each topic is a file of its own
// beside this one.
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include <doctest/doctest.h>

#include <baywork/solve/frame_solver.hpp>
#if !defined(BAYWORK_PLAIN_KERNELS) && !defined(__EMSCRIPTEN__)  // the solver alone is tried there
#include <baywork/verify/prove.hpp>
#endif

template class baywork::BasicFrameSolver<double>;
#if !defined(BAYWORK_PLAIN_KERNELS) && !defined(__EMSCRIPTEN__)
template baywork::verify::Proof baywork::verify::detail::prove_as_asked<void>(const Cases&, std::vector<Combination>,
                                                                              const std::string&, const Basis&,
                                                                              Standards);
#endif
