// SPDX-License-Identifier: MIT
// A round tube's section from the elementary formulas, apart from the library's own shapes.
#pragma once

#include <cmath>

#include <baywork/section/section_data.hpp>

#include "by_hand.hpp"

inline baywork::SectionData<double> ring(double D, double t) {
  const double d = D - 2 * t;
  baywork::SectionData<double> s;
  s.kind = baywork::ShapeKind::round_tube;
  s.area = pi / 4 * (D * D - d * d);
  s.Iy = s.Iz = pi / 64 * (std::pow(D, 4) - std::pow(d, 4));
  s.Wel_y = s.Wel_z = s.Iy / (D / 2);
  s.Wpl_y = s.Wpl_z = (D * D * D - d * d * d) / 6;
  s.It = 2 * s.Iy;
  s.Wt = 2 * s.Wel_y;
  s.height = s.width = D;
  s.wall = t;
  return s;
}
