// SPDX-License-Identifier: MIT
// Bars in compression as EN 1993-1-1 and EN 1999-1-1 both have them: Euler's load, and the curve below it.
#pragma once

#include <cmath>
#include <limits>

#include <baywork/core/scalar.hpp>

namespace baywork::verify {

/// N_cr = pi² E I / L²: Euler's load of a buckling length L; infinite for L = 0.
inline double euler_load(double E, double second_moment, double length) {
  const double k = pi_v<double> / length;
  return length > 0.0 ? E * second_moment * k * k : std::numeric_limits<double>::infinity();
}

/// chi = 1 / (phi + sqrt(phi² - lambda²)) <= 1, phi = 0.5 [1 + alpha (lambda - lambda_0) + lambda²]; 1 up to lambda_0.
inline double column_factor(double alpha, double lambda_0, double lambda) {
  if (lambda <= lambda_0) return 1.0;
  const double phi = 0.5 * (1.0 + alpha * (lambda - lambda_0) + lambda * lambda);
  const double chi = 1.0 / (phi + std::sqrt(phi * phi - lambda * lambda));
  return smaller(chi, 1.0);
}

}  // namespace baywork::verify
