// SPDX-License-Identifier: MIT
// Random boxes: the closed forms' least critical load of all pairs never exceeds the eigenvalue of the whole frame.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/verify.hpp>

#include "support/dense_buckling.hpp"
#include "support/random.hpp"

namespace {

using namespace baywork;

Bar tube(double d, double t) { return {RoundTube{d, t}, material::s355h()}; }

/// Layouts that hold both chords at every station; zigzags hold each at every second one.
Face face_of(std::size_t layout, const Bar& diagonal, const Bar& cross) {
  switch (layout) {
    case 0: return braced(crossed, diagonal, cross);
    case 1: return braced(single_direction, diagonal, cross);
    default: return baywork::open(cross);
  }
}

}  // namespace

TEST_CASE("random boxes: closed forms are on the safe side of the frame's eigenvalue") {
  Random r(20261126);
  std::size_t compared = 0, near = 0;
  for (int k = 0; k < 160; ++k) {
    const std::size_t bays = 6 + 2 * r.below(3);
    const Bar chord = tube(r.in(0.05, 0.08), 0.004), cross = tube(r.in(0.02, 0.08), 0.003);
    const Bar post = tube(r.in(0.02, 0.07), 0.003), diagonal = tube(r.in(0.02, 0.045), 0.0026);
    const Face side = face_of(r.below(3), diagonal, post);
    const Analysis a{BoxGirder{.bays = bays,
                               .bay_length = r.in(0.3, 1.2),
                               .width = r.in(0.3, 1.0),
                               .depth = r.in(0.3, 1.0),
                               .chord = chord,
                               .faces = {.top = face_of(r.below(3), diagonal, cross),
                                         .bottom = face_of(r.below(3), diagonal, cross),
                                         .left = side,
                                         .right = side},
                               .diaphragms = end_diaphragms(diagonal),
                               .supports = simply_supported()}};
    const verify::Basis basis;
    const std::vector<bool> none(a.model().frame.members.size(), false);
    const std::vector<verify::PairColumn> pairs = verify::detail::ColumnMaker(a, basis, none).make();

    // 1 N in the top pair, `pull` the other way in the bottom pair: the sides share the difference
    const double pull = 0.5 * static_cast<double>(r.below(3));
    std::vector<double> N(none.size(), 0.0);
    for (std::size_t b = 0; b < bays; ++b)
      for (std::size_t c = 0; c < 4; ++c) N[a.model().chord_member(b, c)] = c > 1 ? -0.5 : 0.5 * pull;
    const double exact = DenseBuckling(a.model().frame).critical_factor(N);
    if (exact > 1.2 * pairs[2].N_bay) continue;  // chords buckle between stations, which is their own check

    double least = verify::answer_of(pairs[2], a.girder().stations, false, pull, true).N_cr;
    for (const std::size_t sides : {std::size_t{1}, std::size_t{3}})
      if (pull < 1.0)
        least = std::fmin(
            least, 2.0 / (1.0 - pull) * verify::answer_of(pairs[sides], a.girder().stations, false, 0.0, false).N_cr);
    INFO("box " << k << ", pull " << pull << ": " << least << ", exact " << exact);
    CHECK(least <= 1.03 * exact);
    ++compared;
    near += least > 0.7 * exact;
  }
  CHECK(compared > 40);
  CHECK(near > compared / 2);  // and of use
}
