// SPDX-License-Identifier: MIT
// Combination factors of EN 1990, as data with their edition; nationally determined, here as recommended.
#pragma once

#include <baywork/load/load_case.hpp>

namespace baywork::en1990 {

/// Persistent and transient design situations, strength: γG 1.35 / 1.00, γQ 1.50 (Table A1.2(B), expression (6.10));
/// ψ0 of imposed loads categories A to D 0.7, wind 0.6, snow up to 1000 m 0.5, temperature 0.6 (Table A1.1).
inline CombinationSet ultimate() {
  return {"EN 1990 (6.10) ultimate", "EN 1990:2002+A1:2005, Tables A1.1 and A1.2(B), recommended values", 1.35, 1.00, 1.50, 0.7, 0.6, 0.5, 0.6};
}

/// Loss of static equilibrium: γG 1.10 / 0.90, γQ 1.50 (Table A1.2(A)).
inline CombinationSet equilibrium() {
  return {"EN 1990 (6.10) equilibrium", "EN 1990:2002+A1:2005, Tables A1.1 and A1.2(A), recommended values", 1.10, 0.90, 1.50, 0.7, 0.6, 0.5, 0.6};
}

/// Characteristic combination for serviceability, all γ 1 (expression (6.14b)).
inline CombinationSet characteristic() {
  return {"EN 1990 (6.14b) characteristic", "EN 1990:2002+A1:2005, Table A1.1, recommended values", 1.00, 1.00, 1.00, 0.7, 0.6, 0.5, 0.6};
}

}  // namespace baywork::en1990
