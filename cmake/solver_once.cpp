// SPDX-License-Identifier: MIT
// The solver for double, compiled once for this project's programs: see the end of frame_solver.hpp.
#define BAYWORK_SOLVER_HERE
#include <baywork/solve/frame_solver.hpp>

template class baywork::BasicFrameSolver<double>;
