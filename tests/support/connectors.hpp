// SPDX-License-Identifier: MIT
// One connector of each kind for chords of 60.3 x 5 mm.
#pragma once

#include <baywork/girder.hpp>

inline baywork::material::Material bar_alloy() {
  return baywork::material::en_aw_6082_t6(baywork::material::Product::rod_or_bar);
}
inline baywork::PinCoupler coupler() {
  using namespace baywork::literals;
  return {.pin = 16_mm,
          .hole = 16.5_mm,
          .blade = 20_mm,
          .fork = 10_mm,
          .gap = 0.5_mm,
          .end = 16_mm,
          .side = 16_mm,
          .reach = 35_mm,
          .plate_material = bar_alloy(),
          .pin_material = baywork::material::s355(),
          .throat = 4_mm};
}
inline baywork::BoltedEndPlate plates() {
  using namespace baywork::literals;
  return {.plate = 15_mm,
          .diameter = 150_mm,
          .bolt_circle = 110_mm,
          .bolts = 6,
          .bolt = baywork::metric_bolt(12_mm, baywork::BoltClass::c8_8),
          .hole = 13_mm,
          .eccentricity = 2_mm,
          .throat = 4_mm,
          .plate_material = baywork::material::s355()};
}
inline baywork::Spigot spigot() {
  using namespace baywork::literals;
  return {.diameter = 50_mm,
          .reach = 120_mm,
          .pin = 12_mm,
          .hole = 12.5_mm,
          .pins = 2,
          .end = 20_mm,
          .spigot_material = bar_alloy(),
          .pin_material = baywork::material::s355()};
}
