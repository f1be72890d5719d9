// SPDX-License-Identifier: MIT
// The box girder of many tests: half a metre wide, deep and from bay to bay, sides braced, top and bottom open.
#pragma once

#include <cstddef>
#include <utility>

#include <baywork/girder.hpp>

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
