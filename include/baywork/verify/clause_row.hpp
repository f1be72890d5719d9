// SPDX-License-Identifier: MIT
// What the clause functions of all standards take and give: forces at a section, one row per clause, reasons.
#pragma once

#include <cmath>
#include <cstdint>
#include <limits>

#include <baywork/core/scalar.hpp>

namespace baywork::verify {

/// Design forces at one section, in the bar's own axes [N, Nm]. N is positive in tension; the signs of the others do
/// not matter to the clauses.
struct SectionForces {
  double N = 0;
  double Vy = 0, Vz = 0;
  double T = 0;
  double My = 0, Mz = 0;
};

/// One clause answered. For a plain comparison effect / resistance = utilisation, in N or Nm; for an interaction
/// effect is the left side of the formula and resistance is 1. The text is static: making a row allocates nothing.
struct ClauseRow {
  double utilisation = 0;  ///< fulfilled at 1 and below; infinity where nothing is left to resist with
  double effect = 0;
  double resistance = 1;
  const char* clause = "";
};

/// Why a resistance is not given. Such a resistance is 0, so that no check with a force in it can pass.
enum class Scope : std::uint8_t { covered, class_4, class_4_tube, slender_web, shape_unknown };

inline const char* reason(Scope scope) {
  switch (scope) {
    case Scope::covered: return "";
    case Scope::class_4: return "class 4 cross-section: its effective section is not covered";
    case Scope::class_4_tube:
      return "class 4 round tube: EN 1993-1-1 leaves it to EN 1993-1-6 (shell buckling), which is not covered";
    case Scope::slender_web: return "slender web: shear buckling is not covered";
    case Scope::shape_unknown: return "a shape without plate elements cannot be put in a class";
  }
  return "";
}

/// |effect| / resistance: 0 without an effect, infinity without a resistance.
inline double ratio(double effect, double resistance) {
  const double e = magnitude(effect);
  if (e == 0.0) return 0.0;
  return resistance > 0.0 ? e / resistance : std::numeric_limits<double>::infinity();
}

/// sqrt(a² + b²) of forces or moments: they are far from the ends of the range that hypot keeps clear of.
inline double resultant(double a, double b) { return std::sqrt(a * a + b * b); }

/// The row of a plain comparison.
inline ClauseRow compare(double effect, double resistance, const char* clause) {
  return {ratio(effect, resistance), magnitude(effect), resistance, clause};
}

/// The row of an interaction formula with the left side `sum`.
inline ClauseRow interaction_row(double sum, const char* clause) { return {sum, sum, 1.0, clause}; }

}  // namespace baywork::verify
