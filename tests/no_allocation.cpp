// SPDX-License-Identifier: MIT
// Further solves into a kept answer and workspace take no memory: counted by the program's own operator new.
#include <atomic>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <new>
#include <variant>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/verify.hpp>

#include "support/random_frame.hpp"

namespace {
std::atomic<std::size_t> allocations{0};

void* counted(std::size_t size) {
  allocations.fetch_add(1, std::memory_order_relaxed);
  void* p = std::malloc(size > 0 ? size : 1);
  if (p == nullptr) throw std::bad_alloc();
  return p;
}
}  // namespace

// They stand in for the library's own in the whole test program and differ from them by the count alone. Nothing here
// is aligned beyond what malloc gives, so the aligned forms stay as they are.
void* operator new(std::size_t size) { return counted(size); }
void* operator new[](std::size_t size) { return counted(size); }
// the forms without exceptions too, or they would take memory that the ones below give back elsewhere
void* operator new(std::size_t size, const std::nothrow_t&) noexcept { return counted(size); }
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept { return counted(size); }
void operator delete(void* p, const std::nothrow_t&) noexcept { std::free(p); }
void operator delete[](void* p, const std::nothrow_t&) noexcept { std::free(p); }
void operator delete(void* p) noexcept { std::free(p); }
void operator delete[](void* p) noexcept { std::free(p); }
void operator delete(void* p, std::size_t) noexcept { std::free(p); }
void operator delete[](void* p, std::size_t) noexcept { std::free(p); }

using namespace baywork;
using namespace baywork::literals;

static_assert(alignof(BasicSolveWorkspace<>) <= alignof(std::max_align_t) && alignof(Response) <= alignof(std::max_align_t));

TEST_CASE("a second solve allocates nothing") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    const RandomFrame f = random_frame(r);
    FrameLoads one, two;
    random_node_loads(r, f, one);
    random_member_loads(r, f, one);
    random_node_loads(r, f, two);
    random_member_loads(r, f, two);
    two.settle(0, Motion::uz, 0.001);
    const FrameSolver solver(f.frame);
    FrameAnswer answer;
    SolveWorkspace space;
    const std::size_t at_first = allocations.load();
    solver.solve(one, answer, space);
    CHECK(allocations.load() > at_first);  // the count works
    const std::vector<double> first = answer.motions;
    const std::size_t before = allocations.load();
    solver.solve(two, answer, space);
    solver.solve(one, answer, space);
    const std::size_t after = allocations.load();
    CHECK(after - before == 0);
    CHECK(answer.motions == first);
  }
}

namespace {

/// Every kind of action, in the order that the test moves them by.
std::vector<Action> all_actions() {
  return {point_load(ChordOf::bottom_left, 0.0, 1.0_kN),
          self_weight(),
          line_load({ChordOf::top_left, ChordOf::top_right}, 200.0),
          cross_member_load(Side::bottom, 3, 0.3, 500.0),
          wind_on(Side::left, 300.0),
          wind_on(Side::right, 300.0, CarriedBy::cross_members),
          wind_on_bars(100.0, {0, 1, 0}),
          warming(20.0),
          warming_of(ChordOf::top_left, 10.0),
          warming_across(3.0, 5.0),
          settlement(ChordOf::top_left, 1.0, Motion::uz, 0.002)};
}

BoxGirder hung_box() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy}, cross{RoundTube{48.3_mm, 4.0_mm}, alloy}, brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const Face side = braced(alternating, brace, cross);
  return {.bays = 8, .bay_length = 0.5_m, .width = 0.5_m, .depth = 0.5_m, .chord = chord,
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side}, .supports = hung_at({1.0_m, 3.0_m})};
}

}  // namespace

TEST_CASE("a girder solved again with its loads moved allocates nothing") {
  const Analysis analysis{hung_box()};
  for (std::size_t alone = 0; alone <= all_actions().size(); ++alone) {
    INFO("action " << alone << " of " << all_actions().size() << " (the last: all together)");
    std::vector<Action> actions{all_actions()[0]};
    if (alone > 0 && alone < all_actions().size()) actions.push_back(all_actions()[alone]);
    if (alone == all_actions().size()) actions = all_actions();
    BasicChordPoint<>& moved = std::get<BasicChordPoint<>>(actions[0]);
    moved.x = 0.1;  // between joints, as at every step below
    Response response;
    AnalysisWorkspace space;
    analysis.solve(actions, response, space);
    const double at_first = response.max_deflection();
    const std::size_t before = allocations.load();
    for (int step = 0; step < 39; ++step) {
      moved.x = 0.1 * step;
      analysis.solve(actions, response, space);
    }
    const std::size_t after = allocations.load();
    CHECK(after - before == 0);
    moved.x = 0.1;
    analysis.solve(actions, response, space);
    CHECK(response.max_deflection() == at_first);
  }
}

TEST_CASE("a proof's search takes no more memory for more combinations, joints and welds included") {
  const material::Material m = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, m}, cross{RoundTube{48.3_mm, 4.0_mm}, m}, brace{RoundTube{33.7_mm, 3.2_mm}, m};
  const Face side = braced(alternating, brace, cross);
  const Analysis analysis{BoxGirder{.bays = 6,
                                    .bay_length = 0.5,
                                    .width = 0.5,
                                    .depth = 0.5,
                                    .chord = chord,
                                    .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
                                    .supports = simply_supported()}};
  const Cases cases =
      analysis.solve({LoadCase{"self-weight", Nature::permanent, {self_weight()}},
                      LoadCase{"wind", Nature::wind, {wind_on_bars(250.0_Pa, {0, -1, 0})}},
                      LoadCase{"hung", Nature::imposed, {point_load(ChordOf::bottom_left, 1.1, 2.0_kN)}}});
  std::vector<const Response*> parts;
  for (std::size_t i = 0; i < cases.size(); ++i) parts.push_back(&cases[i]);
  const std::vector<Combination> once = combinations(en1990::ultimate(), cases.kinds());
  std::vector<Combination> often;
  for (int i = 0; i < 40; ++i) often.insert(often.end(), once.begin(), once.end());
  verify::Basis basis;
  basis.joints = {.checked = true, .throat = 3.0_mm};
  const auto taken = [&](const std::vector<Combination>& all) {
    verify::detail::Search search(analysis, basis, verify::Standards::by_material);
    const std::size_t before = allocations;
    search.take(parts, all);
    return allocations - before;
  };
  const std::size_t few = taken(once);
  CHECK(once.size() > 4);
  CHECK(few > 0);
  CHECK(taken(often) == few);
}
