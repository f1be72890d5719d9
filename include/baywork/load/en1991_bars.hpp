// SPDX-License-Identifier: MIT
// Force coefficients of bare bars and of lattice girders in the wind.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/girder/panel_place.hpp>
#include <baywork/load/en1991_wind.hpp>

/// EN 1991-1-4:2005+A1:2010 for single bars, EN 1993-3-1:2006 Annex B for lattices. All without free ends (psi_lambda =
/// 1, safe side). Values from memory: check them against the standards.
namespace baywork::en1991 {

/// Re = b v(z_e) / nu with v = sqrt(2 q_p / rho) and nu = 15e-6 m²/s (7.15) and 7.9.1; b the diameter [m].
inline double reynolds_number(double diameter, double peak_pressure, double air_density = 1.25) {
  require::positive(diameter, "wind on a round bar", "diameter");
  return diameter * std::sqrt(2.0 / air_density * peak_pressure) / 15e-6;
}

/// Equivalent roughness k [m] of Table 7.13.
inline constexpr double rough_bright_steel = 0.05e-3, rough_galvanised = 0.2e-3, rough_rust = 2e-3;

/// c_f of a round bar, 7.9.2 with Figure 7.28: the greater of 0.11/(Re/1e6)^1.4 and 1.2 + 0.18 lg(10 k/b)/(1 + 0.4
/// lg(Re/1e6)), at most 1.2, which it is up to Re = 181,000: a tube of 60 mm at 45 m/s.
inline double round_bar_coefficient(double diameter, double peak_pressure, double roughness = rough_galvanised) {
  require::not_negative(peak_pressure, "wind on a round bar", "peak pressure");
  require::positive(roughness, "wind on a round bar", "roughness");
  const double Re = reynolds_number(diameter, peak_pressure) / 1e6;
  if (Re > 10.0)
    fail<OutsideScope>("wind on a round bar", "a Reynolds number of " + text::number(Re * 1e6),
                       "up to 1e7 is accepted (EN 1991-1-4 Figure 7.28)");
  const double smooth = 0.11 / std::pow(Re, 1.4);
  if (!(smooth < 1.2)) return 1.2;
  return smaller(1.2,
                 larger(smooth, 1.2 + 0.18 * std::log10(10.0 * roughness / diameter) / (1.0 + 0.4 * std::log10(Re))));
}

/// c_f of a rectangular bar, 7.6: c_f,0 of Figure 7.23 by d/b, d along the wind and b across it, straight between its
/// corners over lg(d/b), times psi_r of Figure 7.24 by r/b, from 1 for sharp corners to 0.5 at r/b = 0.2. Open shapes
/// with sharp edges: 2.0 (7.7).
inline constexpr double sharp_edged_coefficient = 2.0;
inline double rectangular_bar_coefficient(double along, double across, double corner_radius = 0) {
  require::positive(along, "wind on a rectangular bar", "side along the wind");
  require::positive(across, "wind on a rectangular bar", "side across the wind");
  require::not_negative(corner_radius, "wind on a rectangular bar", "corner radius");
  static constexpr std::array<std::array<double, 2>, 7> corners{
      {{0.2, 2.0}, {0.6, 2.35}, {0.7, 2.4}, {1.0, 2.1}, {2.0, 1.65}, {5.0, 1.0}, {10.0, 0.9}}};
  const double ratio = along / across;
  double c = ratio < corners.front()[0] ? corners.front()[1] : corners.back()[1];
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    if (ratio < corners[i][0] || ratio > corners[i + 1][0]) continue;
    const double share = std::log(ratio / corners[i][0]) / std::log(corners[i + 1][0] / corners[i][0]);
    c = corners[i][1] + share * (corners[i + 1][1] - corners[i][1]);
  }
  return c * larger(0.5, 1.0 - 2.5 * corner_radius / across);
}

/// What stands in the wind of a face, seen square to it, and the area that its outer edges enclose [m²].
struct FaceAreas {
  double round = 0, flat = 0, enclosed = 0;
  double solid() const { return round + flat; }
  double solidity() const { return solid() / enclosed; }  ///< phi
};
/// Chords and bars by length times width; where they cross both count. Cross members that two panels share count once.
inline FaceAreas face_areas(const Girder& g, const FaceRef& ref) {
  const GirderFace& f = g.faces[g.face(ref)];
  FaceAreas out;
  const auto add = [&out](const Bar& bar, double length) {
    (is_round(bar.section.kind) ? out.round : out.flat) += length * larger(bar.section.height, bar.section.width);
  };
  for (std::size_t i = 0; i < g.bays(); ++i) {
    double chords = 0, middle = 0;
    for (const std::size_t c : {f.first_chord, f.second_chord}) {
      const double along = length(g.joint(i + 1, c) - g.joint(i, c));
      add(g.chords[c].bar, along);
      middle += 0.5 * along;
      chords += 0.5 * larger(g.chords[c].bar.section.height, g.chords[c].bar.section.width);
    }
    const double depth = 0.5 * (length(g.joint(i, f.second_chord) - g.joint(i, f.first_chord)) +
                                length(g.joint(i + 1, f.second_chord) - g.joint(i + 1, f.first_chord)));
    out.enclosed += middle * (depth + chords);
  }
  if (f.panels.empty()) return out;
  const std::vector<std::size_t> bounds = f.panels.boundaries(g.bays());
  bool closed = false;  // by a cross member of the panel before
  for (std::size_t p = 0; p + 1 < bounds.size(); ++p) {
    const auto at = [&](const PanelPoint& point) { return point_of(g, f, bounds[p], bounds[p + 1], point); };
    bool closes = false;
    for (const Piece& piece : f.panels.panel(p).pieces(panel_site(g, f, bounds, p))) {
      const bool lengthwise = piece.from.along != piece.to.along;
      if (closed && !lengthwise && piece.from.along == 0.0) continue;
      closes = closes || (!lengthwise && piece.from.along == 1.0);
      add(piece.bar, length(at(piece.to) - at(piece.from)));
    }
    closed = closes;
  }
  return out;
}

/// c_f of a girder of four alike faces, wind square to one, on the solid area of that one face (EN 1993-3-1 B.2.2.1):
/// round bars below the drag crisis C_1 (1 - C_2 phi) + (C_1 + 0.875) phi², flat-sided ones 1.76 C_1 (1 - C_2 phi +
/// phi²), C_1 = 2.25, C_2 = 1.5, in proportion to their areas. Up to phi = 0.6.
inline double lattice_coefficient(const FaceAreas& a) {
  require::positive(a.solid(), "wind on a lattice", "solid area");
  const double phi = a.solidity(), C_1 = 2.25, C_2 = 1.5;
  if (phi > 0.6)
    fail<OutsideScope>("wind on a lattice", "a solidity of " + text::number(phi),
                       "up to 0.6 is accepted (EN 1993-3-1 B.2)");
  const double round = C_1 * (1.0 - C_2 * phi) + (C_1 + 0.875) * phi * phi;
  const double flat = 1.76 * C_1 * (1.0 - C_2 * phi + phi * phi);
  return (round * a.round + flat * a.flat) / a.solid();
}

/// Wind square to a face of a box girder, with the lee face in the windward one's shadow: half the lattice coefficient
/// on the bars of both. What of the top and bottom faces stands across the wind takes its share on top (safe side). The
/// shadow is that of a square cross-section: one deeper along the wind than the face is high is outside the scope.
inline BasicWindOnBars<> wind_on_lattice(const Girder& g, const FaceRef& face, double pressure) {
  const GirderFace& f = g.faces[g.face(face)];
  const char* place = "wind on a lattice";
  if (g.chords.size() != 4)
    fail<OutsideScope>(place, std::to_string(g.chords.size()) + " chords", "girders of four chords are accepted");
  const Vec3<> across = g.joint(0, f.second_chord) - g.joint(0, f.first_chord);
  const Vec3<> square = unit(cross(g.joint(g.bays(), f.first_chord) - g.joint(0, f.first_chord), across));
  double deep = 0;  // to the chord that lies farthest behind the face
  for (std::size_t c = 0; c < 4; ++c) {
    const double behind = dot(square, g.joint(0, c) - g.joint(0, f.first_chord));
    if (magnitude(behind) > magnitude(deep)) deep = behind;
  }
  if (magnitude(deep) > 1.1 * length(across))
    fail<OutsideScope>(place,
                       "the girder is " + text::number(magnitude(deep)) + " m deep behind a face of " +
                           text::number(length(across)) + " m",
                       "a depth along the wind up to the face's own height is accepted");
  const FaceAreas areas = face_areas(g, face);
  const double half = 0.5 * lattice_coefficient(areas);
  return wind_on_bars(pressure, deep < 0.0 ? -square : square, half, half);
}

}  // namespace baywork::en1991
