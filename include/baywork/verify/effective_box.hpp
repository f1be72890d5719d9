// SPDX-License-Identifier: MIT
// The effective section of a rectangular hollow section in class 4: what is left of area and moduli once the parts of
// its walls that buckle are taken away.
#pragma once

#include <array>

#include <baywork/core/scalar.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork::verify::detail {

/// Metal taken away between two heights from the middle, up towards the compressed flange [m], `thickness` thick.
struct TakenAway {
  double from = 0, to = 0, thickness = 0;

  double area() const { return (to - from) * thickness; }
  double middle() const { return 0.5 * (from + to); }
  double about_middle() const { return area() * (middle() * middle() + (to - from) * (to - from) / 12.0); }
};

/// A hollow section bent about one axis, seen from it: its depth, and the flat lengths of its flanges and webs.
struct BentBox {
  double area = 0, second_moment = 0, depth = 0, wall = 0, flange = 0, web = 0;
};

inline BentBox bent_box(const SectionData<double>& s, bool about_y) {
  const double along_z = s.plates[0].c, along_y = s.plates[1].c;
  return about_y ? BentBox{s.area, s.Iy, s.height, s.wall, along_y, along_z}
                 : BentBox{s.area, s.Iz, s.width, s.wall, along_z, along_y};
}

/// Effective elastic modulus [m³]. `flange_left` is the share of the compressed flange's flat part that is left;
/// `web(psi, compressed)` gives what both webs lose, between the neutral axis (0) and the edge of their flat part
/// (`compressed`), for a stress ratio psi = tension / compression < 0 of the flats' edges. What is lost moves
/// the neutral axis towards the tension flange, which lengthens the compressed part of the webs: worked out over and
/// over until it stays. The compressed flange is then the farther one and its modulus the lesser.
template <class Web>
double effective_modulus(const BentBox& b, double flange_left, Web web) {
  std::array<TakenAway, 2> lost{};
  lost[0] = {0.5 * b.depth - b.wall, 0.5 * b.depth, (1.0 - flange_left) * b.flange};
  double down = 0;  // of the neutral axis
  double area = 0, second_moment = 0;
  for (int i = 0; i < 200; ++i) {
    const double compressed = 0.5 * b.web + down;
    const TakenAway of_web = web(-(0.5 * b.web - down) / compressed, compressed);
    lost[1] = {of_web.from - down, of_web.to - down, of_web.thickness};
    double first = 0;
    area = b.area;
    second_moment = b.second_moment;
    for (const TakenAway& p : lost) {
      area -= p.area();
      first += p.area() * p.middle();
      second_moment -= p.about_middle();
    }
    const double before = down;
    down = first / area;
    if (magnitude(down - before) <= 1e-15 * b.depth) break;
  }
  return (second_moment - area * down * down) / (0.5 * b.depth + down);
}

}  // namespace baywork::verify::detail
