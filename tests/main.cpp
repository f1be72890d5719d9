// SPDX-License-Identifier: MIT
// The main function of the test program, and the solver compiled once for all topics; each topic is a file of its own
// beside this one.
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include <doctest/doctest.h>

#include <baywork/solve/frame_solver.hpp>

template class baywork::BasicFrameSolver<double>;
