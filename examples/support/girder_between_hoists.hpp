// SPDX-License-Identifier: MIT
// The harbour cinema's screen girder without its overhangs, at any span: hung by its upper chords at both ends.
#pragma once

#include <cmath>
#include <cstddef>

#include <baywork/girder.hpp>

namespace examples {

/// Of bays of 0.5 m; braced faces upright, open faces level.
inline baywork::BoxGirder girder_between_hoists(double span) {
  using namespace baywork;
  using namespace baywork::literals;
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};  // sizes of EN 10220
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  return {.bays = static_cast<std::size_t>(std::lround(span / 0.5_m)),
          .bay_length = 0.5_m,
          .width = 0.5_m,
          .depth = 0.5_m,
          .chord = chord,
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .diaphragms = end_diaphragms(brace),
          .supports = hung_at({0.0, span})};
}

}  // namespace examples
