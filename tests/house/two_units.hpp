// SPDX-License-Identifier: MIT
// What both translation units of two_units_{a,b}.cpp compute, each with its own compiler flags.
#pragma once

#include <baywork/baywork.hpp>
#include <vector>

namespace two_units {

inline baywork::Girder girder() {
  const auto alloy = baywork::material::en_aw_6082_t6();
  const baywork::Bar chord{baywork::RoundTube{0.0603, 0.005}, alloy}, cross{baywork::RoundTube{0.0483, 0.004}, alloy};
  const baywork::Bar brace{baywork::RoundTube{0.0269, 0.0032}, alloy};
  const auto side = baywork::braced(baywork::alternating, brace, cross);
  const auto flat = baywork::open(cross);
  return baywork::BoxGirder{.bays = 12, .bay_length = 0.5, .width = 0.5, .depth = 0.5, .chord = chord,
                            .faces = {.top = flat, .bottom = flat, .left = side, .right = side},
                            .supports = baywork::simply_supported()}
      .girder();
}

/// Mid-span motions and a chord force: the main path with everything that allocates.
inline std::vector<double> numbers(const baywork::Girder& g) {
  const baywork::Analysis analysis{g};
  const auto r = analysis.solve({baywork::self_weight(), baywork::wind_on(baywork::Side::left, 300.0),
                                 baywork::point_load(baywork::ChordOf::bottom_right, 2.2, 900.0)});
  const auto u = r.axis_deflection(3.0);
  return {u.y, u.z, r.twist(3.0), r.chord(baywork::ChordOf::top_left).axial(5)};
}

}  // namespace two_units

// Defined in two_units_b.cpp: the same under that unit's flags, and a girder made there.
std::vector<double> numbers_from_b(const baywork::Girder& g);
baywork::Girder girder_from_b();
