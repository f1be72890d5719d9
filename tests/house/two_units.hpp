// SPDX-License-Identifier: MIT
// What both translation units of two_units_{a,b}.cpp compute, each with its own compiler flags.
#pragma once

#include <baywork/baywork.hpp>

namespace two_units {

/// A ring's section data [m] from its outer diameter and wall, by the formulas for a circle less a circle.
inline baywork::SectionData<> ring(double diameter, double wall) {
  const double outer = diameter / 2.0;
  const double inner = outer - wall;
  baywork::SectionData<> data;
  data.designation = "ring";
  data.area = baywork::pi_v<double> * (outer * outer - inner * inner);
  data.Iy = data.Iz = baywork::pi_v<double> / 4.0 * (outer * outer * outer * outer - inner * inner * inner * inner);
  data.iy = data.iz = baywork::root(data.Iy / data.area);
  data.plates[3].c = wall;
  return data;
}

}  // namespace two_units

/// Defined in two_units_b.cpp: the same computation under that unit's flags.
baywork::SectionData<> ring_from_b(double diameter, double wall);
