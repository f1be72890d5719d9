// SPDX-License-Identifier: MIT
// EN 1999-1-1:2007, 6.1: partial factors, cross-section classes and the effective thickness of class 4.
#pragma once

#include <array>
#include <cmath>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/material/material.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork::en1999 {

/// Nationally determined partial factors, EN 1999-1-1 6.1.3; the recommended values are set.
/// Values from memory, check against the standard and the national annex.
struct PartialFactors {
  double gamma_M1 = 1.10;  ///< yielding and instability
  double gamma_M2 = 1.25;  ///< fracture, also of the softened metal beside welds
  double gamma_Mw = 1.25;  ///< welds, 8.1.1
  double gamma_Mp = 1.25;  ///< pins, 8.1.1
};

/// Whether the walls of the bar carry welds: welded walls have stricter class limits (Table 6.2).
enum class Welded : bool { no, yes };

/// Of bars whose joints are welded: where a weld softens their metal they count as welded all along (safe side).
inline Welded welded_at_joints(const material::Material& m) {
  return m.alloy_group == material::AlloyGroup::annealed ? Welded::no : Welded::yes;
}

/// Limits of beta / epsilon between the classes (Table 6.2) and the constants of rho_c (Table 6.3).
struct ClassLimits {
  double beta_1 = 0, beta_2 = 0, beta_3 = 0;
  double C_1 = 0, C_2 = 0;
};

/// EN 1999-1-1 Tables 6.2 and 6.3. Values from memory, check against the standard; rho_c(beta_3) = 1 holds exactly in
/// all eight rows, which a wrong digit would break.
inline const ClassLimits& class_limits(material::BucklingClass buckling_class, Welded welded, bool outstand) {
  static constexpr std::array<ClassLimits, 8> table{{
      {11.0, 16.0, 22.0, 32.0, 220.0},  // class A internal
      {9.0, 13.0, 18.0, 29.0, 198.0},   // class A internal, welded
      {3.0, 4.5, 6.0, 10.0, 24.0},      // class A outstand
      {2.5, 4.0, 5.0, 9.0, 20.0},       // class A outstand, welded
      {13.0, 16.5, 18.0, 29.0, 198.0},  // class B internal
      {10.0, 13.5, 15.0, 25.0, 150.0},  // class B internal, welded
      {3.5, 4.5, 5.0, 9.0, 20.0},       // class B outstand
      {3.0, 3.5, 4.0, 8.0, 16.0},       // class B outstand, welded
  }};
  const std::size_t row = (buckling_class == material::BucklingClass::b ? 4U : 0U) + (outstand ? 2U : 0U) +
                          (welded == Welded::yes ? 1U : 0U);
  return table[row];
}

/// epsilon = sqrt(250 MPa / fo), 6.1.4.4; fo in Pa.
inline double epsilon(double fo) { return std::sqrt(250e6 / fo); }

/// Slenderness of a round tube in compression or bending, 6.1.4.3: beta = 3 sqrt(D / t), D to the middle of the wall.
inline double tube_slenderness(double outer_diameter, double wall) {
  return 3.0 * std::sqrt((outer_diameter - wall) / wall);
}

/// Slenderness of a flat element, 6.1.4.3: b / t, or 0.40 b / t for an internal element that the neutral axis halves.
inline double plate_slenderness(double c, double t, bool halved_by_neutral_axis) {
  return (halved_by_neutral_axis ? 0.40 : 1.0) * c / t;
}

/// What classification says of one element, or of the worst of several.
struct ElementClass {
  int class_ = 1;      ///< 1 to 4; 0: unknown
  double share = 1.0;  ///< class 3: (beta_3 - beta) / (beta_3 - beta_2), what is left of the plastic reserve
  double rho_c = 1.0;  ///< class 4: effective over real thickness
};

/// Class of an element of slenderness beta, 6.1.4.4, and for class 4 its rho_c = C1/(beta/eps) - C2/(beta/eps)^2,
/// 6.1.5 (2).
inline ElementClass classify(double beta, double fo, const ClassLimits& limits) {
  const double b = beta / epsilon(fo);
  if (b <= limits.beta_1) return {1, 1.0, 1.0};
  if (b <= limits.beta_2) return {2, 1.0, 1.0};
  if (b <= limits.beta_3) return {3, (limits.beta_3 - b) / (limits.beta_3 - limits.beta_2), 1.0};
  return {4, 0.0, limits.C_1 / b - limits.C_2 / (b * b)};
}

/// What loads the section, for classification: each load is classed by itself (6.2.9, 6.3.3).
enum class Loading : std::uint8_t { compression, bending_y, bending_z };

/// The worst element of a section. Solids are class 1. Flanges of an I bent about z are taken as uniformly compressed
/// (their stress falls towards the web: safe side) and its web, on the neutral axis, is left out.
inline ElementClass classify(const SectionData<double>& s, double fo, material::BucklingClass buckling_class,
                             Welded welded, Loading loading) {
  if (s.kind == ShapeKind::solid_round || s.kind == ShapeKind::solid_rectangle) return {};
  if (s.kind == ShapeKind::round_tube)
    return classify(tube_slenderness(s.height, s.wall), fo, class_limits(buckling_class, welded, false));
  if (s.n_plates == 0) return {0, 0.0, 0.0};
  ElementClass worst;
  for (std::size_t i = 0; i < s.n_plates; ++i) {
    const PlateElement<double>& p = s.plates[i];
    const bool side = loading == Loading::bending_y ? p.bends_about_y : !p.bends_about_y;
    const bool bent = loading != Loading::compression;
    if (loading == Loading::bending_z && p.bends_about_y && s.kind == ShapeKind::i_shape) continue;
    const double beta = plate_slenderness(p.c, p.t, bent && side && !p.outstand);
    const ElementClass e = classify(beta, fo, class_limits(buckling_class, welded, p.outstand));
    worst.class_ = larger(worst.class_, e.class_);
    worst.share = smaller(worst.share, e.share);
    worst.rho_c = smaller(worst.rho_c, e.rho_c);
  }
  return worst;
}

}  // namespace baywork::en1999
