// SPDX-License-Identifier: MIT
// The three tubes of most test girders: the demo's.
#pragma once

#include <baywork/girder.hpp>

inline baywork::Bar tube(double diameter, double wall) {
  return {baywork::RoundTube{diameter, wall}, baywork::material::en_aw_6082_t6()};
}
inline baywork::Bar chord_bar() {
  using namespace baywork::literals;
  return tube(60.3_mm, 5.0_mm);
}
inline baywork::Bar cross_bar() {
  using namespace baywork::literals;
  return tube(48.3_mm, 4.0_mm);
}
inline baywork::Bar brace_bar() {
  using namespace baywork::literals;
  return tube(26.9_mm, 3.2_mm);
}
