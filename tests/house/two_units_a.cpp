// SPDX-License-Identifier: MIT
// Two translation units with different flags include the library, link, pass its types to each other and agree.
#include <cmath>
#include <cstdio>

#include "two_units.hpp"

int main() {
  const baywork::Girder theirs = girder_from_b();  // made there, destroyed here
  const std::vector<double> here = two_units::numbers(theirs), there = numbers_from_b(two_units::girder());
  bool good = here.size() == 4 && there.size() == 4;
  // Contraction to fused operations moves the last bits; another layout of a type would move everything.
  for (std::size_t i = 0; good && i < here.size(); ++i)
    good = here[i] != 0.0 && std::abs(here[i] - there[i]) <= 1e-12 * std::abs(there[i]);
  if (!good) std::puts("two units with different compiler flags disagree");
  return good ? 0 : 1;
}
