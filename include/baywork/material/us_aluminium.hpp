// SPDX-License-Identifier: MIT
// Wrought aluminium alloys of the Aluminum Design Manual with their strength beside welds.
#pragma once

#include <baywork/material/material.hpp>

namespace baywork::material {

/// One thousand pounds force per square inch: 4448.2216152605 N / 645.16 mm² [Pa].
inline constexpr double ksi = 4448.2216152605 / 645.16e-6;

namespace detail {
/// F_ty = F_cy; buckling constants are those of artificially aged tempers. E = 10,100 ksi, G = 3,800 ksi.
inline Material us_aged_6xxx(const char* name, double max_thickness, double ty, double tu, double tyw, double tuw) {
  Material m;
  m.name = name;
  m.source = "Aluminum Design Manual 2020, Part I, Tables A.4.3 and A.4.1, value from memory";
  m.family = Family::aluminium;
  m.buckling_class = BucklingClass::a;
  m.product = Product::extruded_tube;
  m.E = 10100 * ksi;
  m.G = 3800 * ksi;
  m.density = 2700;
  m.thermal_expansion = 23e-6;
  m.steps = {{max_thickness, ty * ksi, tu * ksi, tyw * ksi, tuw * ksi}};
  m.alloy_group = AlloyGroup::heat_treated_6xxx;
  return m;
}
}  // namespace detail

/// 35 / 38 ksi, beside welds 15 / 24 ksi (5xxx filler, or walls up to 3/8 in); extruded tube up to 1 in.
inline Material us_6061_t6() { return detail::us_aged_6xxx("6061-T6, extruded tube", 0.0254, 35, 38, 15, 24); }
/// 25 / 30 ksi, beside welds 8 / 17 ksi; extruded tube up to 1 in.
inline Material us_6063_t6() { return detail::us_aged_6xxx("6063-T6, extruded tube", 0.0254, 25, 30, 8, 17); }

}  // namespace baywork::material
