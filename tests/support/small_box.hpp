// SPDX-License-Identifier: MIT
// The box girder of many tests: half a metre wide, deep and from bay to bay, sides braced, top and bottom open.
#pragma once

#include <cstddef>
#include <utility>

#include <baywork/girder.hpp>
#include <baywork/material.hpp>
#include <baywork/section.hpp>

inline baywork::BoxGirder small_box(std::size_t bays, const baywork::Bar& chord, const baywork::Bar& cross,
                                    const baywork::Bar& brace,
                                    baywork::Supports supports = baywork::simply_supported()) {
  using namespace baywork;
  const Face side = braced(alternating, brace, cross), level = open(cross);
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = chord,
          .faces = {.top = level, .bottom = level, .left = side, .right = side},
          .supports = std::move(supports)};
}

/// All of one metal, with bars across both ends that keep them in shape; braces whose joints are within the scope.
inline baywork::BoxGirder stiff_ended_box(const baywork::material::Material& m, std::size_t bays, double chord_wall = 5e-3) {
  using namespace baywork;
  const auto tube = [&](double d, double t) { return Bar{RoundTube{d, t}, m}; };
  const Bar brace = tube(42.4e-3, 3.2e-3);
  BoxGirder out = small_box(bays, tube(60.3e-3, chord_wall), tube(48.3e-3, 4.0e-3), brace);
  out.diaphragms = end_diaphragms(brace);
  return out;
}
