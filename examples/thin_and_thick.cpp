// SPDX-License-Identifier: MIT
// A student's experiment: the same open ladder with thinner and thicker cross members. How does a frame without
// diagonals carry shear at all, and what do the cross members have to do with it?
#include <iostream>

#include <baywork/hand_check/panel_portal.hpp>
#include <baywork/response.hpp>

using namespace baywork;
using namespace baywork::literals;

int main() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};
  std::cout << "Open ladder, 8 bays of 0.5 m, 0.5 m deep, chords 60.3 x 5, 1 kN/m on the top chord, simply supported\n\n"
            << "  cross member   deflection   angle change   chord moment   cross member   chord bending  cross bending\n"
            << "   diameter mm           mm   bay 1   mrad    bay 1     Nm    station 2 Nm      % energy      % energy\n";
  for (const double diameter : {26.9_mm, 33.7_mm, 42.4_mm, 48.3_mm, 60.3_mm, 76.1_mm}) {
    const Bar cross{RoundTube{diameter, 3.2_mm}, alloy};
    const Analysis analysis{LadderGirder{
        .bays = 8, .bay_length = 0.5_m, .depth = 0.5_m, .chord = chord, .web = open(cross), .supports = simply_supported()}};
    const auto r = analysis.solve({line_load({ChordOf::top}, 1.0_kN_per_m)});
    const auto panels = panel_table(r, Side::web);
    const auto energy = energy_shares(r);
    double chords = 0;
    for (const EnergyRow& row : energy.rows)
      if (row.role == Role::chord) chords += row.energy.bending;
    const double all = energy.total.total();
    const auto cell = [](double v, int decimals, std::size_t width) { return text::right(text::fixed(v, decimals), width); };
    std::cout << cell(1e3 * diameter, 1, 14) << cell(-1e3 * r.axis_deflection(2.0).z, 3, 13) << cell(1e3 * panels.panels[0].angle_change, 3, 15)
              << cell(panels.panels[0].chord_moment(), 2, 15) << cell(panels.cross_members[1].end_moment(), 2, 16)
              << cell(100 * chords / all, 1, 14) << cell(100 * energy.of(0, Role::cross_member).bending / all, 1, 15) << '\n';
  }
  const Analysis middle{LadderGirder{.bays = 8, .bay_length = 0.5_m, .depth = 0.5_m, .chord = chord,
                                     .web = open(Bar{RoundTube{48.3_mm, 3.2_mm}, alloy}), .supports = simply_supported()}};
  std::cout << "\nThe same by hand, for 48.3 x 3.2:\n"
            << portal_table(panel_table(middle.solve({line_load({ChordOf::top}, 1.0_kN_per_m)}), Side::web))
            << "\nThicker cross members turn less at their joints: the right angles change less and the girder sags less. The\n"
               "shear to be carried stays the same; thin cross members leave more of it to the chords' own bending.\n"
               "A calculation aid: results must be checked by a licensed engineer against the standards that apply.\n";
}
