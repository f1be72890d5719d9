// SPDX-License-Identifier: MIT
// Combination factors beside those of EN 1990: practice of event structures, allowable-stress design.
#pragma once

#include <baywork/load/load_case.hpp>

namespace baywork {

namespace event_practice {

/// Strength of temporary event structures. Common practice after EN 13814 and EN 13782: permanent actions 1.1 to 1.35
/// (1.1 where weights are known well), variable 1.35, wind 1.2 to 1.5; combined without ψ0. The upper ends are set.
/// Values from memory: the standards and the permit for the place say which hold.
inline CombinationSet ultimate() {
  return {.name = "event structures, ultimate",
          .edition = "common practice after EN 13814:2004 and EN 13782:2015",
          .annex = "upper ends of the usual ranges",
          .confidence = "values from memory: check them against the standards and the permit",
          .permanent_unfavourable = 1.35,
          .permanent_favourable = 1.0,
          .imposed = {1.35, 1.0},
          .wind = {1.5, 1.0},
          .snow = {1.35, 1.0},
          .temperature = {1.35, 1.0}};
}

}  // namespace event_practice

namespace asce7 {

/// Allowable-stress design, ASCE/SEI 7-05 2.4.1: D + L, D + W, D + 0.75 (L + W + S), 0.6 D + W; temperature in full.
/// Values from memory. Wind is that of a characteristic pressure, as EN 1991-1-4 gives it; pressures of ASCE/SEI 7-10
/// and later are ultimate ones: wind.gamma is then 0.6. 0.6 D is taken beside all variable actions (safe side).
inline CombinationSet allowable_stress() {
  return {.name = "allowable stress design",
          .edition = "ASCE/SEI 7-05, 2.4.1",
          .annex = "",
          .confidence = "values from memory: check them against the standard",
          .permanent_unfavourable = 1.0,
          .permanent_favourable = 0.6,
          .imposed = {1.0, 1.0},
          .wind = {1.0, 1.0},
          .snow = {1.0, 1.0},
          .temperature = {1.0, 1.0},
          .several = 0.75,
          .method = Method::allowable_stress};
}

}  // namespace asce7

}  // namespace baywork
