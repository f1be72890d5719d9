// SPDX-License-Identifier: MIT
// EN 1993-1-1:2005, 5.5 and 6.1: partial factors and cross-section classes.
#pragma once

#include <cmath>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/material/material.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork::en1993 {

/// Nationally determined partial factors, EN 1993-1-1 6.1 (1); the recommended values for buildings are set.
/// Values from memory, check against the standard and the national annex.
struct PartialFactors {
  double gamma_M0 = 1.00;  ///< resistance of cross-sections
  double gamma_M1 = 1.00;  ///< resistance of members to instability
  double gamma_M2 = 1.25;  ///< fracture in tension; welds, EN 1993-1-8 2.2
  double gamma_M5 = 1.00;  ///< joints of hollow sections, EN 1993-1-8 2.2
  double gamma_M6_ser = 1.00;  ///< pins that are drawn again, EN 1993-1-8 2.2
};

/// epsilon = sqrt(235 MPa / fy), Table 5.2; fy in Pa.
inline double epsilon(double fy) { return std::sqrt(235e6 / fy); }

/// Class of a round tube, Table 5.2 sheet 3: D / t up to 50, 70, 90 epsilon², in bending and compression alike.
inline int tube_class(double outer_diameter, double wall, double fy) {
  const double x = outer_diameter / wall / (235e6 / fy);
  return x <= 50.0 ? 1 : x <= 70.0 ? 2 : x <= 90.0 ? 3 : 4;
}

/// Class of a flat element, Table 5.2 sheets 1 and 2: c / t up to 33, 38, 42 epsilon (internal, compressed), 72, 83,
/// 124 epsilon (internal, halved by the neutral axis), 9, 10, 14 epsilon (outstand, compressed).
inline int plate_class(double c, double t, bool outstand, bool halved_by_neutral_axis, double fy) {
  const double x = c / t / epsilon(fy);
  if (outstand) return x <= 9.0 ? 1 : x <= 10.0 ? 2 : x <= 14.0 ? 3 : 4;
  if (halved_by_neutral_axis) return x <= 72.0 ? 1 : x <= 83.0 ? 2 : x <= 124.0 ? 3 : 4;
  return x <= 33.0 ? 1 : x <= 38.0 ? 2 : x <= 42.0 ? 3 : 4;
}

/// What loads the section, for classification.
enum class Loading : std::uint8_t { compression, bending_y, bending_z };

/// Class of the worst element, 5.5.2 (6); 0 for a shape without elements. Solids are class 1. Flanges of an I bent
/// about z count as uniformly compressed (safe side) and its web, on the neutral axis, is left out.
inline int section_class(const SectionData<double>& s, double fy, Loading loading) {
  if (s.kind == ShapeKind::solid_round || s.kind == ShapeKind::solid_rectangle) return 1;
  if (s.kind == ShapeKind::round_tube) return tube_class(s.height, s.wall, fy);
  int worst = 0;
  for (std::size_t i = 0; i < s.n_plates; ++i) {
    const PlateElement<double>& p = s.plates[i];
    if (loading == Loading::bending_z && p.bends_about_y && s.kind == ShapeKind::i_shape) continue;
    const bool side = loading == Loading::bending_y ? p.bends_about_y : !p.bends_about_y;
    const bool halved = loading != Loading::compression && side;
    worst = larger(worst, plate_class(p.c, p.t, p.outstand, halved, fy));
  }
  return worst;
}

}  // namespace baywork::en1993
