// SPDX-License-Identifier: MIT
// The proof, compiled once for this project's programs: see the end of frame_solver.hpp.
#include <baywork/verify/prove.hpp>

template baywork::verify::Proof baywork::verify::detail::prove_as_asked<void>(const Cases&, std::vector<Combination>,
                                                                              const std::string&, const Basis&,
                                                                              Standards);
