// SPDX-License-Identifier: MIT
// Girders of a thousand to a hundred thousand bays: digits that stiffness in double would have lost with the fourth
// power of the length, against 106 bits and against pure bending, whose answer is known exactly.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/frame.hpp>
#include <baywork/girder.hpp>
#include <baywork/solve.hpp>

#include "support/reference_solution.hpp"
#include "support/true_error.hpp"
#include "support/tubes.hpp"
#include "support/varied_frames.hpp"

using namespace baywork;

namespace {

constexpr double bay = 0.5, depth = 0.5;

/// Lengths of bays, irregular ones between half and one and a half times the usual.
std::vector<double> lengths(std::size_t bays, bool irregular) {
  varied::Random r(bays);
  std::vector<double> out(bays, bay);
  if (irregular)
    for (double& l : out) l *= r.in(0.5, 1.5);
  return out;
}

/// A box with two open and two braced faces on its ends.
BoxGirder box(std::size_t bays, bool irregular = false) {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  BoxGirder b{.bay_lengths = lengths(bays, irregular), .width = 0.4, .depth = depth, .chord = chord_bar()};
  b.faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side};
  b.diaphragms = end_diaphragms(brace_bar());
  b.supports = simply_supported();
  return b;
}
/// A ladder with an open web.
LadderGirder ladder(std::size_t bays, bool irregular = false) {
  return {.bay_lengths = lengths(bays, irregular),
          .depth = depth,
          .chord = chord_bar(),
          .web = open(cross_bar()),
          .supports = simply_supported()};
}
TriangularGirder triangle(std::size_t bays) {
  TriangularGirder t{.bay_lengths = lengths(bays, false),
                     .width = 0.4,
                     .depth = depth,
                     .chord = chord_bar(),
                     .supports = simply_supported()};
  const Face side = braced(alternating, brace_bar(), cross_bar());
  t.faces = {.base = side, .left = side, .right = open(cross_bar())};
  return t;
}
/// Supports at every so-manieth station, at both ends in any case.
std::vector<double> places(const std::vector<double>& lengths, std::size_t every) {
  std::vector<double> out{0.0};
  double x = 0;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    x += lengths[i];
    if ((i + 1) % every == 0 && i + 1 < lengths.size()) out.push_back(x);
  }
  out.push_back(x);
  return out;
}

struct Long {
  const char* what;
  std::function<Girder(std::size_t)> girder;
};

const std::vector<Long>& long_girders() {
  static const std::vector<Long> all{
      {"box", [](std::size_t n) { return box(n).girder(); }},
      {"irregular ladder", [](std::size_t n) { return ladder(n, true).girder(); }},
      {"tapered triangle",
       [](std::size_t n) {
         TriangularGirder t = triangle(n);
         t.end_depth = 3 * depth;
         return t.girder();
       }},
      {"curved triangle",
       [](std::size_t n) {
         TriangularGirder t = triangle(n);
         t.axis.plan_radius = bay * static_cast<double>(n);
         return t.girder();
       }},
      {"cambered irregular ladder, cantilevered",
       [](std::size_t n) {
         LadderGirder l = ladder(n, true);
         l.axis.camber = 0.1 * bay * static_cast<double>(n);
         l.supports = cantilever();
         return l.girder();
       }},
      {"irregular ladder on many supports",
       [](std::size_t n) {
         LadderGirder l = ladder(n, true);
         l.supports = continuous_over<double>(places(l.bay_lengths, 10));
         return l.girder();
       }},
      {"ladder hung on stiff springs far apart",
       [](std::size_t n) {
         LadderGirder l = ladder(n);
         l.supports = hung_at<double>(places(l.bay_lengths, n / 4), 1e9);
         return l.girder();
       }},
  };
  return all;
}

/// 1 kN/m downwards and a third of it sideways, on all chords.
FrameLoads uniform_load(const GirderModel& m) {
  FrameLoads loads;
  for (const std::size_t i : m.chord_members) {
    const MemberAxes<> axes = axes_of(m.frame, m.frame.members[i]);
    loads.line(i, axes.length, axes.to_local({0, 300.0, -1000.0}));
  }
  return loads;
}

void compare_with_reference(std::size_t bays, double allowed) {
  std::array<double, 2> worst{};
  for (const Long& l : long_girders()) {
    INFO(l.what << " of " << bays << " bays");
    const GirderModel m = model_of(l.girder(bays));
    const FrameLoads loads = uniform_load(m);
    const FrameAnswer a = FrameSolver(m.frame).solve(loads);
    reference::Solution exact(m.frame);
    REQUIRE(exact.sound());
    const reference::Answer truth = exact.solve(loads);
    CHECK(exact.last_correction() < 1e-3 * allowed);
    const std::array<double, 2> error = relative_error(m.frame, a, truth);
    CHECK(error[0] < allowed);
    CHECK(error[1] < allowed);
    CHECK(a.certificate.displacement_error >= error[0]);
    CHECK(a.certificate.force_error >= error[1]);
    for (std::size_t k = 0; k < 2; ++k) worst[k] = (std::max)(worst[k], error[k]);
  }
  MESSAGE(bays << " bays: largest error of motions " << worst[0] << ", of forces " << worst[1]);
}

/// Pure bending of a ladder or a box: sections stay plane, square to a curve of curvature κ; each chord takes E A κ z
/// and E I κ, and posts, diagonals and diaphragms nothing: along a diagonal from (x, -z) to (x + b, z) the elongation
/// κ b z (2x + b) by the rise of the curve cancels that by the turning sections. So w = κ x (l - x)/2 at the joints,
/// exactly.
template <class Description>
void bend_purely(const Description& d, double curvature, double allowed) {
  const GirderModel m = model_of(d.girder());
  const std::size_t bays = m.girder.bays(), chords = m.girder.chords.size();
  FrameLoads loads;
  for (std::size_t c = 0; c < chords; ++c) {
    const FrameSection& s = m.frame.members[m.chord_member(0, c)].section;
    const double pull = -s.E * s.A * curvature * m.girder.joint(0, c).z, moment = s.E * s.Iy * curvature;
    loads.force(m.chord_node(0, c), {-pull, 0, 0});
    loads.force(m.chord_node(bays, c), {pull, 0, 0});
    loads.couple(m.chord_node(0, c), {0, moment, 0});
    loads.couple(m.chord_node(bays, c), {0, -moment, 0});
  }
  const FrameAnswer a = FrameSolver(m.frame).solve(loads);
  const double span = m.girder.span(), sag = curvature * span * span / 8;
  double off = 0, off_force = 0, largest_force = 0;
  for (std::size_t i = 0; i <= bays; ++i) {
    const double x = m.girder.stations[i];
    for (std::size_t c = 0; c < chords; ++c)
      off = (std::max)(off, std::abs(a.displacement(m.chord_node(i, c)).z + curvature * x * (span - x) / 2));
  }
  for (std::size_t i = 0; i < m.frame.members.size(); ++i) {
    const bool chord = m.frame.members[i].address.role == Role::chord;
    const FrameSection& s = m.frame.members[i].section;
    const double exact = chord ? -s.E * s.A * curvature * m.frame.nodes[m.frame.members[i].from].at.z : 0.0;
    largest_force = (std::max)(largest_force, std::abs(exact));
    off_force = (std::max)(off_force, std::abs(a.members[i].end[0] - exact));
  }
  INFO(bays << " bays, " << chords << " chords: deflection off by " << off / sag << ", axial forces by "
            << off_force / largest_force);
  CHECK(off <= allowed * sag);
  CHECK(off_force <= allowed * largest_force);
}

}  // namespace

TEST_CASE("a thousand bays against 106 bits") { compare_with_reference(1000, 1e-12); }

TEST_CASE("ten thousand bays against 106 bits") { compare_with_reference(10000, 1e-11); }

TEST_CASE("pure bending of up to a hundred thousand bays, exactly") {
  bend_purely(box(1000), 1e-6, 1e-12);
  bend_purely(ladder(1000, true), 1e-6, 1e-12);
  bend_purely(box(10000), 1e-8, 1e-11);
  bend_purely(ladder(10000, true), 1e-8, 1e-11);
  bend_purely(ladder(100000), 1e-10, 1e-10);
}

TEST_CASE("a beam of 300,000 elements: motions far above all strains leave no joint out of balance") {
  // simple beam, a force at its middle: w = P L³ / 48 E I, Roark, table 8.1 (value from memory); without shear areas
  // nothing else bends it. E A / l of an element times that deflection is 10²⁰ times the force. Where residuals lost
  // digits of motions instead of strains, the answer was off by 1e-14, and certified to 1.3e-15.
  constexpr std::size_t elements = 300000;
  constexpr double l = 0.25;
  Frame f;
  const FrameSection s{.E = 70e9, .G = 26e9, .A = 1e-3, .Iy = 1e-6, .Iz = 1e-6, .J = 2e-6};
  for (std::size_t i = 0; i <= elements; ++i) f.add_node({l * static_cast<double>(i), 0, 0});
  for (std::size_t i = 0; i < elements; ++i) f.add_beam(i, i + 1, s);
  f.fix(0, {Motion::ux, Motion::uy, Motion::uz, Motion::rx});
  f.fix(elements, {Motion::uy, Motion::uz});
  FrameLoads loads;
  loads.force(elements / 2, {0, 0, -1000.0});
  const FrameAnswer a = FrameSolver(f).solve(loads);
  const double L = l * elements, w = 1000.0 * L * L * L / (48 * s.E * s.Iy);
  CHECK(std::abs(-a.displacement(elements / 2).z / w - 1) < a.certificate.displacement_error);
  CHECK(a.certificate.worst() < 2e-15);
}

TEST_CASE("a long sound girder is not suspected of being a mechanism, which would cost a search") {
  for (const bool irregular : {false, true}) {
    const detail::PreparedFrame<double> p(model_of(box(irregular ? 20000 : 100000, irregular).girder()).frame);
    detail::ChainEngine<double> chain(p, detail::ChainFinder<double>(p.frame).find());
    REQUIRE(chain.factor(p, false, 8, one_after_the_other));
    CHECK(chain.smallest_pivot_ratio() > 1e-12);
  }
}

TEST_CASE("how far a chain runs from hold to hold") {
  const auto longest = [](std::size_t bays, const std::vector<std::pair<std::size_t, bool>>& holds) {
    Frame f = model_of(box(bays).girder()).frame;
    f.supports.clear();
    for (const auto& [station, spring] : holds)
      for (std::size_t n = 0; n < f.nodes.size(); ++n)
        if (f.nodes[n].address.station == static_cast<int>(station)) {
          if (spring)
            f.spring(n, Motion::uz, 1e6);
          else
            f.fix(n, {Motion::ux, Motion::uy, Motion::uz});
        }
    const detail::PreparedFrame<double> p(f);
    return detail::ChainEngine<double>(p, detail::ChainFinder<double>(p.frame).find()).longest_span();
  };
  CHECK(longest(40, {{0, false}, {40, false}}) == 40);
  CHECK(longest(40, {{0, false}, {10, false}, {40, false}}) == 30);
  CHECK(longest(40, {{0, false}, {25, true}, {40, true}}) == 25);
  CHECK(longest(40, {{0, false}}) == 40);                   // a cantilever
  CHECK(longest(40, {{12, false}, {20, false}}) == 20);     // its free ends count, too
}
