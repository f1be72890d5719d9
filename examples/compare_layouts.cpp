// SPDX-License-Identifier: MIT
// A researcher's comparison: one box girder with its side faces braced in every layout, and open.
#include <iostream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response.hpp>

using namespace baywork;
using namespace baywork::literals;

int main() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy}, cross{RoundTube{48.3_mm, 4.0_mm}, alloy}, brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const std::vector<std::pair<std::string, Face>> sides{
      {"single direction", braced(single_direction, brace, cross)},
      {"falling towards mid-span", braced(mirrored_towards, brace, cross)},
      {"rising towards mid-span", braced(mirrored_away, brace, cross)},
      {"alternating, posts", braced(alternating, brace, cross)},
      {"alternating, no posts", braced(alternating, brace)},
      {"crossed", braced(crossed, brace, cross)},
      {"K", braced(k_braced, brace, cross)},
      {"alternating, two bays long", Face(braced(alternating, brace, cross)).spanning(2)},
      {"the same, half a panel off", Face(braced(alternating, brace, cross)).spanning(2, 1)},
      {"open", open(cross)}};
  std::cout << "Box girder, 20 bays of 0.5 m, 0.5 m x 0.5 m, open top and bottom, 1 kN/m shared by the lower chords\n\n"
            << "  side faces                      mass  deflection  1 kN x 0.5 m: twist  floor's turn  largest diagonal  chord bending\n"
            << "                                    kg          mm                 mrad          mrad                kN       % energy\n";
  for (const auto& [words, side] : sides) {
    const Analysis analysis{BoxGirder{.bays = 20, .bay_length = 0.5_m, .width = 0.5_m, .depth = 0.5_m, .chord = chord,
                                      .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
                                      .diaphragms = end_diaphragms(brace), .supports = simply_supported()}};
    const auto down = analysis.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0_kN_per_m)});
    const auto torque = analysis.solve({point_load(ChordOf::bottom_left, 5.0_m, Vec3<>{0, 0, -1.0_kN}), point_load(ChordOf::bottom_right, 5.0_m, Vec3<>{0, 0, 1.0_kN})});
    const auto weight = analysis.solve({self_weight()});
    const double turn = (torque.deflection(ChordOf::bottom_right, 5.0).z - torque.deflection(ChordOf::bottom_left, 5.0).z) / 0.5;
    double most = 0, bending = 0;
    for (std::size_t i = 0; i < analysis.model().frame.members.size(); ++i)
      if (analysis.model().frame.members[i].address.role == Role::diagonal) most = (std::max)(most, down.member(i).extremes(0).largest());
    const auto energy = energy_shares(down);
    for (const EnergyRow& row : energy.rows)
      if (row.role == Role::chord) bending += row.energy.bending;
    const auto cell = [](double v, int decimals, std::size_t width) { return text::right(text::fixed(v, decimals), width); };
    std::cout << "  " << text::left(words, 28) << cell(-weight.total_load().z / standard_gravity, 1, 8)
              << cell(-1e3 * down.axis_deflection(5.0).z, 3, 12) << cell(-1e3 * torque.twist(5.0), 3, 21)
              << cell(1e3 * turn, 3, 14) << cell(most / 1e3, 3, 18)
              << cell(100 * bending / energy.total.total(), 1, 15) << '\n';
  }
  std::cout << "\nWhere the floor turns far more than the section twists, the section distorts: without posts or diaphragms its\n"
               "four corners are hinges.\n"
               "A calculation aid: results must be checked by a licensed engineer against the standards that apply.\n";
}
