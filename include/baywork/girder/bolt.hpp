// SPDX-License-Identifier: MIT
// Bolts as they are bought: metric coarse thread by size and property class.
#pragma once

#include <array>
#include <cmath>
#include <cstdint>
#include <string>

#include <baywork/core/error.hpp>

namespace baywork {

/// Property classes of EN ISO 898-1 that EN 1993-1-8 Table 3.1 lists: the first number is fub / 100 MPa, the second
/// ten times fyb / fub.
enum class BoltClass : std::uint8_t { c4_6, c4_8, c5_6, c5_8, c6_8, c8_8, c10_9 };

inline const char* name(BoltClass c) {
  switch (c) {
    case BoltClass::c4_6: return "4.6";
    case BoltClass::c4_8: return "4.8";
    case BoltClass::c5_6: return "5.6";
    case BoltClass::c5_8: return "5.8";
    case BoltClass::c6_8: return "6.8";
    case BoltClass::c8_8: return "8.8";
    case BoltClass::c10_9: return "10.9";
  }
  return "";
}
inline double ultimate_of(BoltClass c) {
  static constexpr double fub[] = {400e6, 400e6, 500e6, 500e6, 600e6, 800e6, 1000e6};
  return fub[static_cast<std::size_t>(c)];
}

/// Lengths in m, areas in m². A default-made bolt is not given.
struct Bolt {
  double diameter = 0;     ///< nominal
  double stress_area = 0;  ///< of the thread
  double head = 0;         ///< across the flats of head and nut: the least diameter under them
  BoltClass grade = BoltClass::c8_8;
};

/// M8 to M30 with coarse thread. Pitch P of ISO 261, stress area pi/4 (d - 0.9382 P)² of EN ISO 898-1, widths across
/// flats of EN ISO 4014 (values from memory; the areas agree with the standard's table).
inline Bolt metric_bolt(double diameter, BoltClass grade) {
  struct Size {
    double d, pitch, flats;  ///< mm
  };
  static constexpr std::array<Size, 8> sizes{{{8, 1.25, 13},
                                              {10, 1.5, 16},
                                              {12, 1.75, 18},
                                              {16, 2, 24},
                                              {20, 2.5, 30},
                                              {24, 3, 36},
                                              {27, 3, 41},
                                              {30, 3.5, 46}}};
  for (const Size& s : sizes) {
    if (!(std::abs(diameter * 1e3 - s.d) < 1e-6)) continue;
    const double core = (s.d - 0.9382 * s.pitch) * 1e-3;
    return {diameter, pi_v<double> / 4.0 * core * core, s.flats * 1e-3, grade};
  }
  fail<BadDescription>("bolt", "its diameter is " + text::quantity(diameter, 1e-3, "mm"),
                       "8, 10, 12, 16, 20, 24, 27 or 30 mm is accepted");
}

}  // namespace baywork
