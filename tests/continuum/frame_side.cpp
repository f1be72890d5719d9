// SPDX-License-Identifier: MIT
// The frame's half of the comparison with a plane-stress continuum: a clamped open-frame girder, printed as CSV.
//
// Arguments: bays, clear length, depth and thickness of every bar [m], E [Pa], Poisson's ratio, tip force [N].
// The girder lies in x-y: two chords along x, clamped at x = 0, a cross member along y at the end of every bay. All
// bars are solid rectangles of one depth (in the plane) and one clear length L, so that axes are L + depth apart; only
// the first chord bars, which start at the clamp, are L + depth/2 long. Half of the force acts on either end joint, +y.
//
// Lines: model,deflection,,,v   mean displacement along y of the two end joints [m]
//        model,moment,bar,end,M bending moment where the bar leaves the joint (or the clamp) [Nm]; positive with
//                               tension on the side of +y for chords and of -x for cross members
// Models of a joint:
//   "centre lines"   bars from node to node, the joint's size neglected
//   "stiff joints"   rigid arms from the nodes to the joint's faces
//   "sheared joints" rigid arms, and between joint and cross member a spring for the shear of the joint's panel
#include <array>
#include <cstddef>
#include <cstdio>
#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/section/solid.hpp>
#include <baywork/solve.hpp>

namespace {

using namespace baywork;

struct Bars {
  std::size_t bays = 0;
  double clear = 0, depth = 0, thickness = 0;
  double E = 0, poisson = 0, force = 0;
};

enum class JointModel { centre_lines, stiff, sheared };

/// Depth of the solid rectangle along local y, which is in the plane.
FrameSection section_of(const Bars& b) {
  const SectionData<double> d = SolidRectangle<double>{b.thickness, b.depth}.data();
  FrameSection s;
  s.E = b.E;
  s.G = b.E / (2.0 * (1.0 + b.poisson));
  s.A = d.area;
  s.Iy = d.Iy;
  s.Iz = d.Iz;
  s.J = d.It;
  s.shear_y = d.shear_y;  // 5/6 of the area
  s.shear_z = d.shear_z;
  return s;
}

/// Rotational stiffness of a joint's panel in shear [Nm/rad]. A cross member's moment M enters the chord as a couple of
/// two forces M/z; between them the panel carries the shear M/z on the chord's shear area As and is distorted by
/// M/(z G As), through which the couple turns: M per distortion is G As z. In a solid rectangle the stress is linear
/// over the depth, so that z is 2/3 of it. The same form as the web panel in shear of EN 1993-1-8:2005, Table 6.11,
/// k1 = 0.38 Avc / (beta z) with beta = 1 for a joint on one side, in S = E z² k1 of 6.3.1 (0.38 is G/E = 1/2.6;
/// values from memory).
double panel_stiffness(const FrameSection& s, double depth) { return s.G * s.shear_y * (2.0 / 3.0) * depth; }

/// A bar, and how much of its flexible length lies inside the joints at its start and its end [m].
struct Bar {
  std::string name;
  std::size_t member = 0;
  double hidden_start = 0, hidden_end = 0;
};

struct Girder {
  Frame frame;
  std::vector<Bar> bars;
  std::array<std::size_t, 2> tip{};
};

Girder girder_of(const Bars& b, JointModel joint) {
  const double arm = b.depth / 2.0;
  const double hidden = joint == JointModel::centre_lines ? arm : 0.0;
  const double rigid = joint == JointModel::centre_lines ? 0.0 : arm;
  const double pitch = b.clear + b.depth;
  const FrameSection section = section_of(b);
  const Vec3<double> out_of_plane{0, 0, 1};

  Girder g;
  Frame& frame = g.frame;
  std::array<std::size_t, 2> last{frame.add_node({0, 0, 0}), frame.add_node({0, pitch, 0})};
  const std::array<std::size_t, 2> root = last;
  for (std::size_t bay = 0; bay < b.bays; ++bay) {
    const double x = static_cast<double>(bay + 1) * pitch - arm;
    const std::array<std::size_t, 2> next{frame.add_node({x, 0, 0}), frame.add_node({x, pitch, 0})};
    for (std::size_t chord = 0; chord < 2; ++chord) {
      const std::size_t m = frame.add_beam(last[chord], next[chord], section, out_of_plane);
      if (bay > 0) frame.members[m].start.offset = {rigid, 0, 0};
      frame.members[m].end.offset = {-rigid, 0, 0};
      g.bars.push_back({"chord " + std::to_string(chord + 1) + " bay " + std::to_string(bay + 1), m,
                        bay > 0 ? hidden : 0.0, hidden});
    }
    const std::size_t m = frame.add_beam(next[0], next[1], section, out_of_plane);
    Member& cross_member = frame.members[m];
    cross_member.start.offset = {0, rigid, 0};
    cross_member.end.offset = {0, -rigid, 0};
    if (joint == JointModel::sheared)
      cross_member.start.about_z = cross_member.end.about_z = panel_stiffness(section, b.depth);
    g.bars.push_back({"cross member " + std::to_string(bay + 1), m, hidden, hidden});
    last = next;
  }
  frame.hold_in_plane_xy();
  frame.clamp(root[0]);
  frame.clamp(root[1]);
  g.tip = last;
  return g;
}

void print(const Bars& b, const char* model, JointModel joint) {
  const Girder g = girder_of(b, joint);
  FrameLoads loads;
  for (const std::size_t node : g.tip) loads.force(node, {0, b.force / 2.0, 0});
  const FrameSolver solver(g.frame);
  const FrameAnswer answer = solver.solve(loads);

  const double v = (answer.displacement(g.tip[0]).y + answer.displacement(g.tip[1]).y) / 2.0;
  std::printf("%s,deflection,,,%.15g\n", model, v);
  for (const Bar& bar : g.bars) {
    // A couple about +z on the start pulls at the side of local +y; on the end it pushes there. M runs straight.
    const double length = solver.axes(bar.member).length;
    const double at_start = answer.members[bar.member].start[5], at_end = -answer.members[bar.member].end[5];
    const double slope = (at_end - at_start) / length;
    std::printf("%s,moment,%s,start,%.15g\n", model, bar.name.c_str(), at_start + slope * bar.hidden_start);
    std::printf("%s,moment,%s,end,%.15g\n", model, bar.name.c_str(), at_end - slope * bar.hidden_end);
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 8) {
    std::cerr << "arguments: bays clear-length depth thickness E poisson force\n";
    return 2;
  }
  try {
    const Bars b{std::stoul(argv[1]), std::stod(argv[2]), std::stod(argv[3]), std::stod(argv[4]),
                 std::stod(argv[5]),  std::stod(argv[6]), std::stod(argv[7])};
    print(b, "centre lines", JointModel::centre_lines);
    print(b, "stiff joints", JointModel::stiff);
    print(b, "sheared joints", JointModel::sheared);
  } catch (const std::exception& e) {
    std::cerr << e.what() << '\n';
    return 1;
  }
  return 0;
}
