// SPDX-License-Identifier: MIT
// The README's quick start.
#include <baywork/baywork.hpp>
#include <iostream>
using namespace baywork;
using namespace baywork::literals;

int main() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);  // carries gravity by axial force

  const BoxGirder girder{.bays = 12, .bay_length = 0.5_m, .width = 0.5_m, .depth = 0.5_m, .chord = chord,
                         .faces = {.top = open(cross), .bottom = open(cross),  // carry wind by bending
                                   .left = side, .right = side},
                         .supports = simply_supported()};

  const Analysis analysis{girder};  // owns girder, frame and factorisation
  const auto cases = analysis.solve(std::vector{
      LoadCase{"self-weight", Nature::permanent, {self_weight()}},
      LoadCase{"projector", Nature::imposed, {point_load(ChordOf::bottom_left, 3.1_m, 1.2_kN)}},
      LoadCase{"wind", Nature::wind, {wind_on(Side::left, 400.0_Pa)}}});
  const auto proof = verify::by_material(cases, en1990::ultimate());

  std::cout << proof.verdict() << "\n\n"
            << proof.worst() << "\n\n"  // bar, clause, formula with its numbers, utilisation
            << portal_table(panel_table(cases["wind"], Side::bottom)) << '\n';  // solver beside the portal method
  for (const auto& check : hand_checks(cases["projector"]).rows)
    if (check.valid && check.unit == "m")
      std::cout << check.quantity << ": " << text::quantity(check.solver, 1e-3, "mm", 5) << ", by hand "
                << text::quantity(check.closed_form, 1e-3, "mm", 5) << '\n';
}
