// SPDX-License-Identifier: MIT
// The second translation unit; where the machine takes it, compiled for a later processor than the first.
#include "two_units.hpp"

baywork::SectionData<> ring_from_b(double diameter, double wall) { return two_units::ring(diameter, wall); }
