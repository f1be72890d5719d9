// SPDX-License-Identifier: MIT
// A panel type of one's own: a diamond, four diagonals between the middles of chords' panel ends and cross members.
//
//        second chord  o-----------o
//                      |\         /|
//                      | o-------o |      here: a cross member at each end, and a horizontal bar in the middle that
//                      |/         \|      is tied to the corners by four short diagonals
//         first chord  o-----------o
#include <iostream>

#include <baywork/response.hpp>

using namespace baywork;
using namespace baywork::literals;

// begin of the panel
struct DiamondPanel {
  Bar cross, brace, middle;

  std::vector<Piece> pieces(const PanelSite&) const {
    const PanelPoint left{0.25, 0.5}, right{0.75, 0.5};
    return {{{0, 0}, {0, 1}, Role::cross_member, cross, {}, 0},
            {{1, 0}, {1, 1}, Role::cross_member, cross, {}, 0},
            {left, right, Role::user, middle, {}, 0},
            {{0, 0}, left, Role::user, brace, {}, 0},
            {{0, 1}, left, Role::user, brace, {}, 0},
            {{1, 0}, right, Role::user, brace, {}, 0},
            {{1, 1}, right, Role::user, brace, {}, 0}};
  }
};
// end of the panel

int main() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar tube{RoundTube{48.3_mm, 4.0_mm}, alloy}, thin{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto ladder = [&](const Face& web) {
    return LadderGirder{.bays = 10, .bay_length = 0.6_m, .depth = 0.6_m, .chord = tube, .web = web, .supports = simply_supported()};
  };
  const Analysis own{ladder(DiamondPanel{tube, thin, thin})}, plain{ladder(open(tube))};
  for (const auto* a : {&own, &plain}) {
    const auto r = a->solve({line_load({ChordOf::top}, 1.0_kN_per_m)});
    std::cout << (a == &own ? "diamond panels: " : "open panels:    ") << text::fixed(-1e3 * r.axis_deflection(3.0).z, 3)
              << " mm at mid-span, certified to " << text::number(r.certificate().worst(), 2) << '\n';
  }
  std::cout << "A calculation aid: results must be checked by a licensed engineer against the standards that apply.\n";
}
