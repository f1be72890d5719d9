// SPDX-License-Identifier: MIT
// Shear areas for stiffness: the area that stores, uniformly stressed, the energy of the true shear stresses.
#pragma once

#include <baywork/core/scalar.hpp>
#include <baywork/section/detail/lengths.hpp>

namespace baywork::detail {

/// Ring or disc, outer diameter D and inner d (0: solid) [m]; any transverse direction [m²].
/// Shear stress is the gradient of psi with div grad psi = -V z / I inside and no flux through the circles (elastic
/// flexure without lateral contraction). psi = V/I (-r³/8 + 3 (a² + b²) r / 8 + 3 a² b² / (8 r)) sin(theta), and
/// V² / As = integral of the squared stress gives, with m = d / D,
///   As = A 6 (1 + m²)² / (7 (1 + m²)² + 20 m²): 6/7 A for the disc, A/2 for the thin tube.
/// The same as G. R. Cowper, The shear coefficient in Timoshenko's beam theory, J. Appl. Mech. 33 (1966), for
/// Poisson's ratio 0. With 0.3 his values are 3 % (disc) and 6 % (thin tube) larger.
template <class S>
S shear_area_round(const S& area, const S& outer, const S& inner) {
  const S m2 = S(square(S(inner / outer)));
  const S q = square(S(S(1) + m2));
  return S(area * S(6) * q / (S(7) * q + S(20) * m2));
}

/// Two flanges joined by webs at their middles (I) or ends (box), shear along the webs [m²]. Lengths between middle
/// lines [m]: `height` between the flanges, `width` of a flange; `web` is the thickness of all webs together.
/// Jourawski's flow S(s) V / I in the middle line, As = I² / integral of S² / t ds: in the half flanges S = t s h / 2
/// from zero, in the webs S = p - t z² / 2 with p = b tf h / 2 + tw h² / 8. Equals Cowper's thin-walled box and
/// I (1966) for Poisson's ratio 0.
template <class S>
S shear_area_webs(const S& height, const S& width, const S& web, const S& flange) {
  const S second_moment = S(web * cube(height) / S(12) + width * flange * height * height / S(2));
  const S in_flanges = S(flange * height * height * cube(width) / S(24));
  const S p = S(width * flange * height / S(2) + web * height * height / S(8));
  const S h3 = cube(height);
  const S in_webs = S((p * p * height - p * web * h3 / S(12) + web * web * h3 * height * height / S(320)) / web);
  return S(second_moment * second_moment / (in_flanges + in_webs));
}

}  // namespace baywork::detail
