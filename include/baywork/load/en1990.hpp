// SPDX-License-Identifier: MIT
// Combination factors of EN 1990, as data with their edition; nationally determined, here as recommended.
#pragma once

#include <baywork/load/load_case.hpp>

namespace baywork::en1990 {

namespace detail {
/// psi_0 of imposed loads categories A to D 0.7, wind 0.6, snow up to 1000 m 0.5, temperature 0.6 (Table A1.1).
inline CombinationSet with(const char* name, const char* tables, double unfavourable, double favourable,
                           double gamma_Q) {
  return {.name = name,
          .edition = std::string("EN 1990:2002+A1:2005, ") + tables,
          .annex = "recommended values",
          .confidence = "",
          .permanent_unfavourable = unfavourable,
          .permanent_favourable = favourable,
          .imposed = {gamma_Q, 0.7},
          .wind = {gamma_Q, 0.6},
          .snow = {gamma_Q, 0.5},
          .temperature = {gamma_Q, 0.6}};
}
}  // namespace detail

/// Persistent and transient design situations, strength: γG 1.35 / 1.00, γQ 1.50 (Table A1.2(B), expression (6.10)).
inline CombinationSet ultimate() {
  return detail::with("EN 1990 (6.10) ultimate", "Tables A1.1 and A1.2(B)", 1.35, 1.00, 1.50);
}

/// Loss of static equilibrium: γG 1.10 / 0.90, γQ 1.50 (Table A1.2(A)).
inline CombinationSet equilibrium() {
  return detail::with("EN 1990 (6.10) equilibrium", "Tables A1.1 and A1.2(A)", 1.10, 0.90, 1.50);
}

/// Characteristic combination for serviceability, all γ 1 (expression (6.14b)).
inline CombinationSet characteristic() {
  return detail::with("EN 1990 (6.14b) characteristic", "Table A1.1", 1.00, 1.00, 1.00);
}

/// Accidental design situations (6.11b): G + A_d + ψ1 Q_1 + ψ2 Q_i, so that `gamma` is ψ1 and `gamma psi0` is ψ2. ψ1
/// and ψ2 of imposed loads categories C and D 0.7 and 0.6, wind 0.2 and 0, snow up to 1000 m 0.2 and 0, temperature 0.5
/// and 0 (Table A1.1, values from memory). Partial factors of the resistances are then often 1 as well: see
/// verify::Basis.
inline CombinationSet accidental() {
  CombinationSet s = detail::with("EN 1990 (6.11b) accidental", "Table A1.1", 1.00, 1.00, 1.00);
  s.confidence = "values from memory: check them against the standard and the national annex";
  s.imposed = {0.7, 0.6 / 0.7};
  s.wind = {0.2, 0.0};
  s.snow = {0.2, 0.0};
  s.temperature = {0.5, 0.0};
  s.accidental = 1.0;
  return s;
}

}  // namespace baywork::en1990
