// SPDX-License-Identifier: MIT
// The second translation unit; where the machine takes it, compiled for a later processor than the first.
#include "two_units.hpp"

std::vector<double> numbers_from_b(const baywork::Girder& g) { return two_units::numbers(g); }
baywork::Girder girder_from_b() { return two_units::girder(); }
