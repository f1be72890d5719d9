// SPDX-License-Identifier: MIT
// An embedding developer's loop: a load dragged along a chord and solved anew at every step, without allocating.
#include <chrono>
#include <iostream>
#include <vector>

#include <baywork/response.hpp>

using namespace baywork;
using namespace baywork::literals;

int main() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy}, cross{RoundTube{48.3_mm, 4.0_mm}, alloy}, brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  const Analysis analysis{BoxGirder{.bays = 24, .bay_length = 0.5_m, .width = 0.5_m, .depth = 0.5_m, .chord = chord,
                                    .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
                                    .supports = hung_at({2.0_m, 10.0_m})}};
  std::vector<Action> actions{self_weight(), point_load(ChordOf::bottom_left, 0.0, 1.0_kN)};
  Response response;        // these two grow to size in the first solve;
  AnalysisWorkspace space;  // from then on a solve allocates nothing
  analysis.solve(actions, response, space);

  std::cout << "1 kN dragged along the bottom left chord, with self-weight\n\n"
            << "   at m   reaction at 2 m, kN   at 10 m, kN   deflection there, mm\n";
  const auto begin = std::chrono::steady_clock::now();
  int solves = 0;
  for (double x = 0; x <= 12.0; x += 0.05, ++solves) {
    std::get<BasicChordPoint<>>(actions[1]).x = x;
    analysis.solve(actions, response, space);
    if (solves % 40 != 0) continue;
    double first = 0, second = 0;
    for (const auto& r : response.answer().reactions)
      (analysis.model().frame.nodes[r.node].at.x < 6.0 ? first : second) += r.value[2];
    std::cout << text::right(text::fixed(x, 2), 7) << text::right(text::fixed(first / 1e3, 4), 22) << text::right(text::fixed(second / 1e3, 4), 14)
              << text::right(text::fixed(-1e3 * response.deflection(ChordOf::bottom_left, x).z, 3), 23) << '\n';
  }
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  std::cerr << solves << " solves, " << text::number(1e6 * seconds / solves, 3) << " microseconds each\n";
  std::cout << "\nA calculation aid: results must be checked by a licensed engineer against the standards that apply.\n";
}
