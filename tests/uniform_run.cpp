// SPDX-License-Identifier: MIT
// Long uniform girders: the same as the girder built bar by bar, as beams of their length, and to the last digits.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>

#include <doctest/doctest.h>

#include <baywork/solve/frame_solver.hpp>
#include <baywork/solve/uniform_run.hpp>

#include "support/run_frames.hpp"

using namespace baywork;

namespace {

RunLayout layout_of(const runs::Cell& cell, std::size_t cells) {
  RunLayout l;
  l.cells = cells;
  l.first = cell.first;
  l.last = cell.last;
  return l;
}

void clamp(RunLayout& l, std::size_t station, std::size_t node) {
  l.fix(station, node, {Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz});
}

}  // namespace

TEST_CASE("a run answers as the girder built bar by bar: random cells, supports, springs, loads") {
  // Both are solutions of the same equations; the built one is certified to 1e-10 by twofold residuals.
  Random r(2024);
  double worst = 0;
  for (int trial = 0; trial < 120; ++trial) {
    const std::size_t chords = 1 + r.below(4);
    const runs::Cell cell = runs::random_cell(r, chords);
    const std::size_t n = trial < 12 ? static_cast<std::size_t>(trial) + 1 : 1 + r.below(40);
    RunLayout layout = layout_of(cell, n);
    clamp(layout, 0, cell.first[r.below(chords)]);
    for (std::size_t k = r.below(4); k > 0; --k) {
      const std::size_t station = r.below(n + 1), node = cell.first[r.below(chords)];
      const Motion motion = static_cast<Motion>(r.below(6));
      if (layout.restraint(station, node, motion).kind != Restraint::Kind::free) continue;
      if (r.chance(0.5))
        layout.fix(station, node, {motion}, r.chance(0.5) ? r.in(-1e-3, 1e-3) : 0.0);
      else
        layout.spring(station, node, motion, r.spread(1e2, 1e12));
    }
    if (r.chance(0.3)) clamp(layout, n, cell.first[chords - 1]);
    RunLoads loads;
    if (r.chance(0.8)) loads.everywhere = runs::random_loads(r, cell.frame);
    for (std::size_t k = r.below(3); k > 0; --k) {
      FrameLoads some;
      some.force(cell.first[0], r.vector(1e4));
      some.force(cell.last[0], r.vector(1e4));
      loads.at.push_back({r.below(n), some});
    }
    loads.at.push_back({n - 1, runs::random_loads(r, cell.frame)});
    RunWanted wanted;
    wanted.stations = {0, n, r.below(n + 1), n / 2};
    wanted.cells = {0, n - 1, r.below(n)};
    const UniformRun run(cell.frame, layout);
    const RunAnswer answer = run.solve(loads, wanted);
    const runs::Built b = runs::built(cell, layout);
    const FrameAnswer whole = FrameSolver(b.frame, 1e-9).solve(runs::built(b, loads));
    const double apart = runs::difference(cell, answer, b, whole);
    CAPTURE(trial);
    CAPTURE(chords);
    CAPTURE(n);
    CHECK(apart < 1e-10);
    worst = (std::max)(worst, apart);
  }
  MESSAGE("largest difference " << worst);
}
