// SPDX-License-Identifier: MIT
// Two translation units include the library, link, pass its types to each other and agree.
#include <cmath>
#include <cstdio>

#include "two_units.hpp"

namespace {

// Contraction to fused operations moves the last bits; another layout of a struct would move everything.
bool agree(double a, double b) { return std::abs(a - b) <= 1e-13 * std::abs(b); }

}  // namespace

int main() {
  const baywork::SectionData<> here = two_units::ring(0.0603, 0.005);
  const baywork::SectionData<> there = ring_from_b(0.0603, 0.005);
  const bool good = here.designation == there.designation && agree(here.area, there.area) && agree(here.Iy, there.Iy) &&
                    agree(here.iz, there.iz) && agree(here.plates[3].c, there.plates[3].c) && here.area > 0.0;
  if (!good) std::puts("two units with different compiler flags disagree");
  return good ? 0 : 1;
}
