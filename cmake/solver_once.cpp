// SPDX-License-Identifier: MIT
// The solver for double and the proof, compiled once for this project's examples and measurements: see the end of
// frame_solver.hpp.
#include <baywork/solve/frame_solver.hpp>
#include <baywork/verify/prove.hpp>

template class baywork::BasicFrameSolver<double>;
template baywork::verify::Proof baywork::verify::detail::prove_as_asked<void>(const Cases&, std::vector<Combination>,
                                                                              const std::string&, const Basis&,
                                                                              Standards);
