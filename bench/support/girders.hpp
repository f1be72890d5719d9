// SPDX-License-Identifier: MIT
// The girders that the programs of bench/ measure.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/girder.hpp>
#include <baywork/material.hpp>
#include <baywork/section.hpp>

namespace bench {

using namespace baywork;
using namespace baywork::literals;

/// box: two braced and two open faces, all bays alike (24 unknowns per station). irregular: a tapered box, no two of
/// whose bays are alike, its open faces' cross members from chord surface to chord surface. tapered, curved (in plan),
/// arched: boxes of equal bays so shaped. many_supports: a box held at every tenth station. triangular: 18 unknowns per
/// station. ladder: 12.
enum class Kind { box, irregular, triangular, ladder, tapered, curved, arched, many_supports };

inline const char* name(Kind s) {
  constexpr std::array<const char*, 8> names{"box",     "irregular", "triangular", "ladder",
                                             "tapered", "curved",    "arched",     "many_supports"};
  return names[static_cast<std::size_t>(s)];
}

/// Lengths between 0.4 m and 0.6 m, of which no two are alike: the golden section's multiples never meet.
inline std::vector<double> uneven_bays(std::size_t bays) {
  std::vector<double> lengths;
  for (std::size_t i = 0; i < bays; ++i) {
    const double turn = 0.6180339887498949 * static_cast<double>(i + 1);
    lengths.push_back(0.4 + 0.2 * (turn - std::floor(turn)));
  }
  return lengths;
}

inline Girder girder(Kind kind, std::size_t bays) {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  const double bay = 0.5, span = bay * static_cast<double>(bays);
  if (kind == Kind::triangular)
    return TriangularGirder{.bays = bays,
                            .bay_length = bay,
                            .width = 0.5,
                            .depth = 0.5,
                            .chord = chord,
                            .faces = {.base = open(cross), .left = side, .right = side},
                            .supports = simply_supported()}
        .girder();
  if (kind == Kind::ladder)
    return LadderGirder{
        .bays = bays, .bay_length = bay, .depth = 0.5, .chord = chord, .web = side, .supports = simply_supported()}
        .girder();
  BoxGirder box{.bays = bays,
                .bay_length = bay,
                .width = 0.5,
                .depth = 0.5,
                .chord = chord,
                .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
                .supports = simply_supported()};
  if (kind == Kind::irregular) {
    box.bay_lengths = uneven_bays(bays);
    box.faces.top = box.faces.bottom = open(cross, Joint{.to_chord_surface = true});
  }
  if (kind == Kind::irregular || kind == Kind::tapered) {
    box.end_width = 0.4;
    box.end_depth = 0.35;
  }
  if (kind == Kind::curved) box.axis.plan_radius = 2 * span;
  if (kind == Kind::arched) box.axis.camber = span / 10;
  if (kind == Kind::many_supports) {
    std::vector<double> places;
    for (std::size_t i = 0; i <= bays; i += 10) places.push_back(bay * static_cast<double>(i));
    if (bays % 10 != 0) places.push_back(span);
    box.supports = continuous_over<double>(places);
  }
  return box.girder();
}

}  // namespace bench
