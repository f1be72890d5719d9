// SPDX-License-Identifier: MIT
// Compiled with -fno-exceptions: the main path runs, and a fault says its message and stops the program.
#include <baywork/baywork.hpp>
#include <csignal>
#include <cstdio>
#include <cstdlib>

int main() {
  const baywork::Bar tube{baywork::RoundTube{0.0483, 0.004}, baywork::material::en_aw_6082_t6()};
  const baywork::Analysis analysis{baywork::LadderGirder{
      .bays = 4, .bay_length = 0.5, .depth = 0.5, .chord = tube, .web = baywork::open(tube), .supports = baywork::simply_supported()}};
  const auto r = analysis.solve({baywork::line_load({baywork::ChordOf::top}, 1000.0)});
  if (!(r.axis_deflection(1.0).z < 0.0)) {
    std::puts("wrong result");
    return 1;
  }
  // The abort that must follow is this test's good end; ctest looks for the message itself.
  std::signal(SIGABRT, [](int) { std::_Exit(0); });
  baywork::require::positive(-1.0, "bay 3", "wall thickness");
  std::puts("went on after a fault");
  return 1;
}
