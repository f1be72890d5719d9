// SPDX-License-Identifier: MIT
// A spigot in a tube: contact along its reach, bending of both, net sections at the pins' holes.
#pragma once

#include <baywork/core/scalar.hpp>

namespace baywork::verify {

/// A round section with a hole through both walls of a tube, or through a solid bar, across its middle. `W` takes the
/// hole as lying at the outermost fibres (safe side).
struct HoledRound {
  double A = 0, W = 0;  ///< whole
  double A_net = 0, W_net = 0;
};

/// wall 0: solid. A_net = A - 2 d0 t, or A - d0 D; I_net = I - 2 d0 t (D - t)²/4 - 2 d0 t³/12, or I - d0 D³/12.
inline HoledRound holed_round(double D, double wall, double d0) {
  HoledRound out;
  const double inner = wall > 0.0 ? D - 2.0 * wall : 0.0;
  const double second_moment = pi_v<double> / 64.0 * (D * D * D * D - inner * inner * inner * inner);
  out.A = pi_v<double> / 4.0 * (D * D - inner * inner);
  out.W = 2.0 * second_moment / D;
  const double t = wall > 0.0 ? wall : 0.5 * D;
  out.A_net = out.A - 2.0 * d0 * t;
  out.W_net = 2.0 / D * (second_moment - 2.0 * d0 * t * (0.25 * (D - t) * (D - t) + t * t / 12.0));
  return out;
}

/// Forces between a spigot and the tube that holds it over the length l, under shear V and moment M at the tube's
/// mouth. Both are taken as straight, so that the pressure per length runs straight from q_0 at the mouth to q_1 at the
/// spigot's end: integral q = V and integral q x = -M give q_0 = 4 V/l + 6 M/l², q_1 = -(2 V/l + 6 M/l²). (Derived
/// here.)
struct SpigotContact {
  double l = 0, V = 0, M = 0;  ///< V and M as sizes that add up (safe side) [m, N, Nm]

  double q_mouth() const { return 4.0 * V / l + 6.0 * M / (l * l); }
  /// Moment left in the spigot at x from the mouth: M (1 - 3 r² + 2 r³) + V l r (1 - r)², r = x/l.
  double spigot_moment(double x) const {
    const double r = x / l;
    return M * (1.0 - 3.0 * r * r + 2.0 * r * r * r) + V * l * r * (1.0 - r) * (1.0 - r);
  }
  /// Nowhere more than this: M + 4/27 V l, the second part at x = l/3.
  double spigot_moment_most() const { return M + 4.0 / 27.0 * V * l; }
  /// Moment that the tube has taken over at x: M (3 r² - 2 r³) + V l (r - r (1 - r)²).
  double tube_moment(double x) const {
    const double r = x / l;
    return M * (3.0 * r * r - 2.0 * r * r * r) + V * l * (r - r * (1.0 - r) * (1.0 - r));
  }
};

/// Ring tension in the tube's wall at the mouth: half of the spigot's push on each side [Pa]. A close fit is taken,
/// that bends the wall little.
inline double ring_stress(double q, double wall) { return q / (2.0 * wall); }

}  // namespace baywork::verify
