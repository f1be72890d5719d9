// SPDX-License-Identifier: MIT
// Frames and grids of textbooks, typed in as printed, against the values printed there.
// Textbook values are values from memory unless a case says otherwise; page numbers could not be compared.
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "support/textbook.hpp"

using namespace baywork;
using namespace textbook;

namespace {

constexpr double pi = 3.14159265358979323846;

/// Slope-deflection books count end moments clockwise on the member.
double clockwise_start(const FrameAnswer& a, std::size_t m) { return -a.members[m].start[5]; }
double clockwise_end(const FrameAnswer& a, std::size_t m) { return -a.members[m].end[5]; }
/// Moment with tension on the local -y side (below a beam drawn from left to right).
double sagging_start(const FrameAnswer& a, std::size_t m) { return -a.members[m].start[5]; }
double sagging_end(const FrameAnswer& a, std::size_t m) { return a.members[m].end[5]; }

/// Column A-B, beam B-C, column C-D; local -y is the inside of all three.
struct Portal {
  Frame frame;
  std::size_t a = 0, b = 1, c = 2, d = 3, left = 0, beam = 1, right = 2;
};

Portal portal(double left_height, double right_height, double span, double column_inertia, double beam_inertia,
              bool fixed_bases) {
  Portal p;
  p.frame.add_node({0, 0, 0}, "A");
  p.frame.add_node({0, left_height, 0}, "B");
  p.frame.add_node({span, left_height, 0}, "C");
  p.frame.add_node({span, left_height - right_height, 0}, "D");
  const FrameSection column = plane_section(1, stiff_area(column_inertia), column_inertia);
  p.frame.add_beam(0, 1, column);
  p.frame.add_beam(1, 2, plane_section(1, stiff_area(beam_inertia), beam_inertia));
  p.frame.add_beam(2, 3, column);
  p.frame.hold_in_plane_xy();
  for (const std::size_t base : {p.a, p.d})
    if (fixed_bases)
      p.frame.clamp(base);
    else
      p.frame.fix(base, {Motion::ux, Motion::uy});
  return p;
}

}  // namespace

TEST_CASE("sway frame with legs of two lengths by slope deflection") {
  // R. C. Hibbeler, Structural Analysis (8th ed.), example 11-8; kip, ft.
  const Portal p = portal(12, 18, 15, 1, 1, true);
  FrameLoads loads;
  loads.force(p.b, {40, 0, 0});
  const FrameAnswer a = FrameSolver(p.frame).solve(loads);
  printed("EI theta B", -a.rotation(p.b).z, "438.81");
  printed("EI theta C", -a.rotation(p.c).z, "136.18");
  printed("EI psi DC", a.displacement(p.c).x / 18, "375.26");
  printed("M AB", clockwise_start(a, p.left), "-208");
  printed("M BA", clockwise_end(a, p.left), "-135");
  printed("M BC", clockwise_start(a, p.beam), "135");
  printed("M CB", clockwise_end(a, p.beam), "94.8");
  printed("M CD", clockwise_start(a, p.right), "-94.8");
  printed("M DC", clockwise_end(a, p.right), "-110");
}

TEST_CASE("sway portal by moment distribution") {
  // R. C. Hibbeler, Structural Analysis, example 12-7; kN, m. The book stops after two cycles: its values are
  // up to 2 % off the exact ones.
  const Portal p = portal(5, 5, 5, 1, 1, true);
  FrameLoads loads;
  loads.force_on(p.beam, 1, {0, -16, 0});
  const FrameAnswer a = FrameSolver(p.frame).solve(loads);
  within("M AB", clockwise_start(a, p.left), 1.57, 0.02);
  within("M BA", clockwise_end(a, p.left), 4.79, 0.02);
  within("M BC", clockwise_start(a, p.beam), -4.79, 0.02);
  within("M CB", clockwise_end(a, p.beam), 3.71, 0.02);
  within("M CD", clockwise_start(a, p.right), -3.71, 0.02);
  within("M DC", clockwise_end(a, p.right), -2.63, 0.02);
}

TEST_CASE("symmetric portal under a triangular load") {
  // R. C. Hibbeler, Structural Analysis, example 11-6; kN, m.
  const Portal p = portal(12, 12, 8, 1, 1, true);
  FrameLoads loads;
  loads.line(p.beam, 0, 4, {0, 0, 0}, {0, -24, 0});
  loads.line(p.beam, 4, 8, {0, -24, 0}, {0, 0, 0});
  const FrameAnswer a = FrameSolver(p.frame).solve(loads);
  printed("M AB", clockwise_start(a, p.left), "22.9");
  printed("M BA", clockwise_end(a, p.left), "45.7");
  printed("M BC", clockwise_start(a, p.beam), "-45.7");
  printed("M CB", clockwise_end(a, p.beam), "45.7");
  printed("M DC", clockwise_end(a, p.right), "-22.9");
}

TEST_CASE("continuous beam with a linearly growing load") {
  // Worked example of moment distribution in a published lecture text (theory of structures 2, example 1); kN, m.
  // Fixed-end moments are cut, not rounded, after three decimals there: one unit of the last digit is allowed. The
  // final moments come from a hand distribution, up to 0.1 % off the exact ones.
  const double at_b = 48.0 * 4 / 7;
  Frame f;
  for (const double x : {0.0, 4.0, 7.0}) f.add_node({x, 0, 0});
  f.add_beam(0, 1, plane_section(1, stiff_area(2), 2));
  f.add_beam(1, 2, plane_section(1, stiff_area(4), 4));
  f.hold_in_plane_xy();
  f.clamp(0);
  Frame held = f;
  held.clamp(1);
  held.clamp(2);
  f.fix(1, {Motion::uy});
  f.fix(2, {Motion::uy});
  FrameLoads loads;
  loads.line(0, 0, 4, {0, 0, 0}, {0, -at_b, 0});
  loads.line(1, 0, 3, {0, -at_b, 0}, {0, -48, 0});
  const FrameAnswer fixed = FrameSolver(held).solve(loads);
  CHECK(std::abs(fixed.members[0].start[5] - 14.628) < 1e-3);
  CHECK(std::abs(fixed.members[0].end[5] + 21.943) < 1e-3);
  CHECK(std::abs(fixed.members[1].start[5] - 26.743) < 1e-3);
  CHECK(std::abs(fixed.members[1].end[5] + 29.828) < 1e-3);
  loads.couple(2, {0, 0, -6 * 1.5});
  loads.force(2, {0, -6, 0});
  const FrameAnswer a = FrameSolver(f).solve(loads);
  within("M AB", a.members[0].start[5], 12.104, 1e-3);
  within("M BA", a.members[0].end[5], -27.008, 1e-3);
  within("M BC", a.members[1].start[5], 27.009, 1e-3);
  within("M CB", a.members[1].end[5], -9.0, 1e-9);
}

TEST_CASE("rigid frame formulas: portals") {
  // A. Kleinlogel, Rahmenformeln; the same in the Steel Designers' Manual. M is counted positive with tension inside.
  struct Shape {
    double h, L, column, beam;
  };
  for (const Shape s : {Shape{4, 6, 2, 3}, Shape{3, 9, 1, 4}, Shape{7, 5, 3, 1}}) {
    const double h = s.h, L = s.L, k = s.beam / s.column * h / L, n1 = k + 2, n2 = 6 * k + 1, close = 1e-6;
    FrameLoads spread, centre, push, wind;
    const Portal pinned = portal(h, h, L, s.column, s.beam, false), fixed = portal(h, h, L, s.column, s.beam, true);
    spread.line(pinned.beam, L, {0, -1, 0});
    centre.force_on(pinned.beam, L / 2, {0, -1, 0});
    push.force(pinned.b, {1, 0, 0});
    wind.line(pinned.left, h, {0, -1, 0});
    const FrameSolver on_pins(pinned.frame), on_clamps(fixed.frame);

    FrameAnswer a = on_pins.solve(spread);
    within("pinned, spread, MB", sagging_start(a, 1), -L * L / (4 * (2 * k + 3)), close);
    within("pinned, spread, H", reaction(a, 0, Motion::ux), L * L / (4 * (2 * k + 3)) / h, close);
    a = on_pins.solve(centre);
    within("pinned, centre, MB", sagging_start(a, 1), -3 * L / (8 * (2 * k + 3)), close);
    a = on_pins.solve(push);
    within("pinned, push, MB", sagging_start(a, 1), h / 2, close);
    within("pinned, push, MC", sagging_end(a, 1), -h / 2, close);
    within("pinned, push, sway", a.displacement(1).x, h * h * h * (2 * k + 1) / (12 * s.column * k), close);
    a = on_pins.solve(wind);
    within("pinned, wind, MB", sagging_start(a, 1), h * h / 4 * (1 - k / (2 * (2 * k + 3))), close);
    within("pinned, wind, MC", sagging_end(a, 1), -h * h / 4 * (1 + k / (2 * (2 * k + 3))), close);

    a = on_clamps.solve(spread);
    within("fixed, spread, MA", sagging_start(a, 0), L * L / (12 * n1), close);
    within("fixed, spread, MB", sagging_start(a, 1), -L * L / (6 * n1), close);
    within("fixed, spread, HA", reaction(a, 0, Motion::ux), L * L / (4 * h * n1), close);
    a = on_clamps.solve(centre);
    within("fixed, centre, MA", sagging_start(a, 0), L / (8 * n1), close);
    within("fixed, centre, MB", sagging_start(a, 1), -L / (4 * n1), close);
    a = on_clamps.solve(push);
    within("fixed, push, MA", sagging_start(a, 0), -h / 2 * (3 * k + 1) / n2, close);
    within("fixed, push, MB", sagging_start(a, 1), h / 2 * 3 * k / n2, close);
    within("fixed, push, sway", a.displacement(1).x, h * h * h * (3 * k + 2) / (12 * s.column * n2), close);
    a = on_clamps.solve(wind);
    const double w = h * h / 4;
    within("fixed, wind, MA", sagging_start(a, 0), w * (-(k + 3) / (6 * n1) - (4 * k + 1) / n2), close);
    within("fixed, wind, MB", sagging_start(a, 1), w * (-k / (6 * n1) + 2 * k / n2), close);
    within("fixed, wind, MC", sagging_end(a, 1), w * (-k / (6 * n1) - 2 * k / n2), close);
    within("fixed, wind, MD", sagging_end(a, 2), w * (-(k + 3) / (6 * n1) + (4 * k + 1) / n2), close);
  }
}

TEST_CASE("rigid frame formulas: gable and closed ring") {
  // A. Kleinlogel, Rahmenformeln: pinned gable frame under a vertical load per plan length, and closed rectangle.
  const double h = 5, rise = 2, L = 12, column = 1.5, rafter = 1, s = std::hypot(L / 2, rise);
  const double k = rafter / column * h / s, m = 1 + rise / h, n = 2 * (k + 1) + m + m * (1 + 2 * m);
  Frame gable;
  for (const Vec3<>& at :
       {Vec3<>{0, 0, 0}, Vec3<>{0, h, 0}, Vec3<>{L / 2, h + rise, 0}, Vec3<>{L, h, 0}, Vec3<>{L, 0, 0}})
    gable.add_node(at);
  for (std::size_t i = 0; i < 4; ++i) {
    const double inertia = i == 0 || i == 3 ? column : rafter;
    gable.add_beam(i, i + 1, plane_section(1, stiff_area(inertia), inertia));
  }
  gable.hold_in_plane_xy();
  for (const std::size_t base : {std::size_t{0}, std::size_t{4}}) gable.fix(base, {Motion::ux, Motion::uy});
  FrameLoads loads;
  for (const std::size_t r : {std::size_t{1}, std::size_t{2}}) uniform(loads, gable, r, {0, -L / 2 / s, 0});
  FrameAnswer a = FrameSolver(gable).solve(loads);
  const double mb = -L * L / 16 * (3 + 5 * m) / n;
  within("gable, eaves", sagging_start(a, 1), mb, 1e-6);
  within("gable, ridge", sagging_end(a, 1), L * L / 8 + m * mb, 1e-6);
  within("gable, thrust", reaction(a, 0, Motion::ux), -mb / h, 1e-6);

  const double height = 3, width = 5, side = 1, top = 2, ratio = top / side * height / width;
  Frame ring;
  for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{width, 0, 0}, Vec3<>{width, height, 0}, Vec3<>{0, height, 0}})
    ring.add_node(at);
  for (std::size_t i = 0; i < 4; ++i) {
    const double inertia = i % 2 == 0 ? top : side;
    ring.add_beam(i, (i + 1) % 4, plane_section(1, stiff_area(inertia), inertia));
  }
  ring.hold_in_plane_xy();
  ring.fix(0, {Motion::ux, Motion::uy});
  ring.fix(1, {Motion::uy});
  const FrameSolver solver(ring);
  FrameLoads spread, opposite;
  for (const std::size_t i : {std::size_t{0}, std::size_t{2}}) {  // local y points inwards on both
    spread.line(i, width, {0, 1, 0});
    opposite.force_on(i, width / 2, {0, 1, 0});
  }
  a = solver.solve(spread);
  within("ring, spread load", std::abs(a.members[0].start[5]), width * width / 12 / (1 + ratio), 1e-6);
  a = solver.solve(opposite);
  within("ring, two opposite loads", std::abs(a.members[0].start[5]), width / 8 / (1 + ratio), 1e-6);
}

TEST_CASE("circular ring under two opposite loads") {
  // W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, rings, case 1, thin ring without shear and
  // axial strain. A quarter in 400 straight pieces: a polygon is some 1e-6 off the circle.
  const std::size_t pieces = 400;
  Frame f;
  for (std::size_t i = 0; i <= pieces; ++i) {
    const double t = pi / 2 * static_cast<double>(i) / static_cast<double>(pieces);
    f.add_node({std::cos(t), std::sin(t), 0});
  }
  for (std::size_t i = 0; i < pieces; ++i) f.add_beam(i, i + 1, plane_section(1, stiff_area(1), 1));
  f.hold_in_plane_xy();
  f.fix(0, {Motion::uy, Motion::rz});
  f.fix(pieces, {Motion::ux, Motion::rz});
  FrameLoads loads;
  loads.force(pieces, {0, -0.5, 0});
  const FrameAnswer a = FrameSolver(f).solve(loads);
  within("moment under the load", std::abs(a.members[pieces - 1].end[5]), 1 / pi, 1e-5);
  within("shortening", -2 * a.displacement(pieces).y, pi / 4 - 2 / pi, 1e-5);
  within("widening", 2 * a.displacement(0).x, 2 / pi - 0.5, 1e-5);
}

TEST_CASE("bracket bent in plan, loaded across its plane") {
  // Unit-load method (S. P. Timoshenko, Strength of Materials I): w = P (a³ + b³)/(3 EI) + P a b²/(GJ) = 37.380952.
  Frame f;
  f.add_node({0, 0, 0});
  f.add_node({2, 0, 0});
  f.add_node({2, 3, 0});
  FrameSection s = plane_section(1, 1, 1);
  s.J = 0.7;
  f.add_beam(0, 1, s);
  f.add_beam(1, 2, s);
  f.clamp(0);
  FrameLoads loads;
  loads.force(2, {0, 0, 1});
  printed("deflection", FrameSolver(f).solve(loads).displacement(2).z, "37.380952");
}

TEST_CASE("space frame of three members") {
  // A. Kassimali, Matrix Analysis of Structures, example 8.4; kip, inch. Local y lies upright (global Y is up), that
  // of the upright member along -X; angles of roll 0, 90 and 30 degrees.
  FrameSection s = plane_section(29000, 32.9, 716);
  s.G = 11500;
  s.Iy = 236;
  s.J = 15.1;
  Frame f;
  for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{-240, 0, 0}, Vec3<>{0, -240, 0}, Vec3<>{0, 0, -240}}) f.add_node(at);
  f.add_beam(1, 0, s, {0, 0, 1});
  f.members[f.add_beam(2, 0, s, {0, 0, 1})].roll = pi / 2;
  f.members[f.add_beam(3, 0, s, {-1, 0, 0})].roll = pi / 6;
  for (const std::size_t n : {std::size_t{1}, std::size_t{2}, std::size_t{3}}) f.clamp(n);
  FrameLoads loads;
  uniform(loads, f, 0, {0, -0.25, 0});
  loads.couple(0, {-1800, 0, 1800});
  const FrameAnswer a = FrameSolver(f).solve(loads);
  const std::vector<std::vector<std::string>> prints{
      {"-1.3522e-3", "-2.7965e-3", "-1.8120e-3", "-3.0021e-3", "1.0569e-3", "6.4986e-3"},
      {"5.3757", "44.106", "-.74272", "2.1722", "58.987", "2330.5"},
      {"-4.6249", "11.117", "-6.4607", "-515.55", "-.76472", "369.67"},
      {"-.75082", "4.7763", "7.2034", "-383.5", "-60.166", "-4.702"}};
  for (std::size_t k = 0; k < 6; ++k) {
    printed("motion " + std::to_string(k), a.motions[k], prints[0][k]);
    for (std::size_t n = 1; n < 4; ++n)
      printed("reaction " + std::to_string(k) + " at node " + std::to_string(n + 1),
              reaction(a, n, static_cast<Motion>(k)), prints[n][k]);
  }
}

TEST_CASE("grid of three members") {
  // D. L. Logan, A First Course in the Finite Element Method, example 5.5; kip, inch. The book rounds its stiffness
  // matrix to three digits: deviations up to 0.3 %.
  FrameSection s = plane_section(30000, 10, 400);
  s.G = 12000;
  s.J = 110;
  Frame f;
  for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{-240, 0, 120}, Vec3<>{-240, 0, -120}, Vec3<>{0, 0, -120}})
    f.add_node(at);
  for (const std::size_t n : {std::size_t{1}, std::size_t{2}, std::size_t{3}}) {
    f.add_beam(0, n, s, {0, 1, 0});
    f.clamp(n);
  }
  FrameLoads loads;
  loads.force(0, {0, -100, 0});
  const FrameAnswer a = FrameSolver(f).solve(loads);
  within("deflection", a.displacement(0).y, -2.83, 3e-3);
  within("rotation about x", a.rotation(0).x, 0.0295, 3e-3);
  within("rotation about z", a.rotation(0).z, -0.0169, 3e-3);
}

TEST_CASE("plane frames with axial strain") {
  SUBCASE("square portal") {  // D. L. Logan, A First Course in the Finite Element Method, example 5.1; lb, inch
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{0, 120, 0}, Vec3<>{120, 120, 0}, Vec3<>{120, 0, 0}})
      f.add_node(at);
    for (std::size_t i = 0; i < 3; ++i) f.add_beam(i, i + 1, plane_section(30e6, 10, i == 1 ? 100 : 200));
    f.hold_in_plane_xy();
    f.clamp(0);
    f.clamp(3);
    FrameLoads loads;
    loads.force(1, {10000, 0, 0});
    loads.couple(2, {0, 0, 5000});
    const FrameAnswer a = FrameSolver(f).solve(loads);
    printed("u2", a.displacement(1).x, ".211");
    printed("v2", a.displacement(1).y, ".00148");
    printed("rotation 2", a.rotation(1).z, "-.00153");
    printed("u3", a.displacement(2).x, ".209");
    printed("v3", a.displacement(2).y, "-.00148");
    printed("rotation 3", a.rotation(2).z, "-.00149");
    printed("axial, start", a.members[0].start[0], "-3.70e3");
    printed("shear, start", a.members[0].start[1], "4.99e3");
    printed("moment, start", a.members[0].start[5], "3.76e5");
    printed("axial, end", a.members[0].end[0], "3.70e3");
    printed("shear, end", a.members[0].end[1], "-4.99e3");
    printed("moment, end", a.members[0].end[5], "2.23e5");
  }
  SUBCASE("corner on a roller and a clamp") {  // R. C. Hibbeler, Structural Analysis, example 16-1; kip, inch
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 240, 0}, Vec3<>{240, 240, 0}, Vec3<>{240, 0, 0}}) f.add_node(at);
    f.add_beam(0, 1, plane_section(29000, 10, 500));
    f.add_beam(1, 2, plane_section(29000, 10, 500));
    f.hold_in_plane_xy();
    f.fix(0, {Motion::uy});
    f.clamp(2);
    FrameLoads loads;
    loads.force(1, {5, 0, 0});
    const FrameAnswer a = FrameSolver(f).solve(loads);
    printed("u", a.displacement(1).x, ".696");
    printed("v", a.displacement(1).y, "-1.55e-3");
    printed("rotation", a.rotation(1).z, "-2.488e-3");
    printed("u of the roller", a.displacement(0).x, ".696");
    printed("rotation of the roller", a.rotation(0).z, "1.234e-3");
    printed("roller", reaction(a, 0, Motion::uy), "-1.87");
    printed("base, x", reaction(a, 2, Motion::ux), "-5.00");
    printed("base, y", reaction(a, 2, Motion::uy), "1.87");
    printed("base, moment", reaction(a, 2, Motion::rz), "750");
  }
  SUBCASE("inclined leg") {  // R. C. Hibbeler, Structural Analysis, example 16-2; kip, inch
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{240, 180, 0}, Vec3<>{480, 180, 0}}) f.add_node(at);
    f.add_beam(0, 1, plane_section(29000, 12, 600));
    f.add_beam(1, 2, plane_section(29000, 12, 600));
    f.hold_in_plane_xy();
    f.clamp(0);
    f.clamp(2);
    FrameLoads loads;
    uniform(loads, f, 1, {0, -0.25, 0});
    const FrameAnswer a = FrameSolver(f).solve(loads);
    printed("u", a.displacement(1).x, ".0247");
    printed("v", a.displacement(1).y, "-.0954");
    printed("rotation", a.rotation(1).z, "-.00217");
  }
  SUBCASE("load on an inclined member") {  // A. Kassimali, Matrix Analysis of Structures, example 6.6; kip, inch
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{120, 240, 0}, Vec3<>{360, 240, 0}}) f.add_node(at);
    f.add_beam(0, 1, plane_section(29000, 11.8, 310));
    f.add_beam(1, 2, plane_section(29000, 11.8, 310));
    f.hold_in_plane_xy();
    f.clamp(0);
    f.clamp(2);
    FrameLoads loads;
    loads.force_on(0, length_of(f, 0) / 2, local(f, 0, {0, -90, 0}));
    uniform(loads, f, 1, {0, -1.5 / 12, 0});
    loads.couple(1, {0, 0, -125 * 12});
    const FrameAnswer a = FrameSolver(f).solve(loads);
    within("u", a.displacement(1).x, 0.021302, 5e-5);  // .0213014: the print is off by one in its last digit
    printed("v", a.displacement(1).y, "-.06732");
    printed("rotation", a.rotation(1).z, "-.0025499");
    const std::vector<std::string> left{"30.372", "102.09", "1216"}, right{"-30.372", "17.913", "-854.07"};
    const std::vector<Motion> motions{Motion::ux, Motion::uy, Motion::rz};
    for (std::size_t k = 0; k < 3; ++k) {
      printed("left reaction", reaction(a, 0, motions[k]), left[k]);
      printed("right reaction", reaction(a, 2, motions[k]), right[k]);
    }
  }
}
