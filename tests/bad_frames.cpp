// SPDX-License-Identifier: MIT
// Frames and loads that mean nothing, and frames that can move: each refused, in words that name the part and the
// fault.
#include <cstddef>
#include <initializer_list>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/solve/frame_solver.hpp>

#include "support/tube_section.hpp"

using namespace baywork;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

/// What an attempt says when it throws E; "" if it does not.
template <class E, class Attempt>
std::string message_of(Attempt attempt) {
  try {
    attempt();
  } catch (const E& e) {
    return e.what();
  }
  return "";
}

void says(const std::string& message, std::initializer_list<const char*> parts) {
  INFO("message: " << message);
  CHECK_FALSE(message.empty());
  for (const char* part : parts) {
    INFO("expected: " << std::string(part));
    CHECK(message.find(part) != std::string::npos);
  }
}

/// A sound cantilever along x of one member "arm", clamped at node "root".
Frame cantilever() {
  Frame f;
  f.add_node({0, 0, 0}, "root");
  f.add_node({2, 0, 0}, "tip");
  f.add_beam(0, 1, tube_section());
  f.members[0].label = "arm";
  f.clamp(0);
  return f;
}

template <class Change>
void refused(Change change, std::initializer_list<const char*> parts) {
  Frame f = cantilever();
  change(f);
  says(message_of<BadDescription>([&] { FrameSolver solver(f); }), parts);
}

template <class Load>
void refused_load(Load load, std::initializer_list<const char*> parts) {
  const FrameSolver solver(cantilever());
  FrameLoads loads;
  load(loads);
  FrameAnswer answer;
  SolveWorkspace space;
  answer.motions = {1, 2, 3};
  says(message_of<BadDescription>([&] { solver.solve(loads, answer, space); }), parts);
  CHECK(answer.motions == std::vector<double>{1, 2, 3});  // nothing is half changed
}

void unstable(const Frame& f, std::initializer_list<const char*> parts) {
  says(message_of<UnstableFrame>([&] { FrameSolver solver(f); }), parts);
}

}  // namespace

TEST_CASE("the sound cantilever is accepted") {
  FrameLoads loads;
  loads.force(1, {0, 0, -100});
  CHECK(FrameSolver(cantilever()).solve(loads).displacement(1).z < 0);
}

TEST_CASE("bad nodes and members") {
  says(message_of<BadDescription>([] { FrameSolver solver{Frame{}}; }), {"frame", "no nodes"});
  refused([](Frame& f) { f.nodes[1].at.y = nan_value; }, {"node tip", "position is not finite"});
  refused([](Frame& f) { f.nodes[0].at.x = infinite; }, {"node root", "position is not finite"});
  refused([](Frame& f) { f.members[0].to = 7; }, {"member arm", "node that does not exist", "nodes 1 to 2"});
  refused([](Frame& f) { f.members[0].to = 0; }, {"member arm", "no length"});
  refused([](Frame& f) { f.nodes[1].at = {0, 0, 0}; }, {"member arm", "no length"});
  refused([](Frame& f) { f.members[0].start.offset = {2, 0, 0}; }, {"member arm", "no length"});
  refused([](Frame& f) { f.add_node({1, 1, 1}, "lost"); }, {"node lost", "no member is attached"});
  refused([](Frame& f) { f.members[0].up = {-3, 0, 0}; }, {"member arm", "orientation lies along the bar"});
  refused([](Frame& f) { f.members[0].up = {0, nan_value, 1}; }, {"member arm", "orientation is not finite"});
  refused([](Frame& f) { f.members[0].roll = infinite; }, {"member arm", "roll angle is inf"});
}

TEST_CASE("bad sections") {
  refused([](Frame& f) { f.members[0].section.E = 0; }, {"member arm", "modulus of elasticity is 0", "above zero"});
  refused([](Frame& f) { f.members[0].section.E = -70e9; }, {"member arm", "modulus of elasticity is -7e+10"});
  refused([](Frame& f) { f.members[0].section.G = nan_value; }, {"member arm", "shear modulus is"});
  refused([](Frame& f) { f.members[0].section.A = infinite; }, {"member arm", "cross-section area is inf"});
  refused([](Frame& f) { f.members[0].section.A = 0; }, {"member arm", "cross-section area is 0"});
  refused([](Frame& f) { f.members[0].section.Iy = -1e-6; }, {"member arm", "second moment of area about y is -1e-06"});
  refused([](Frame& f) { f.members[0].section.Iz = nan_value; }, {"member arm", "second moment of area about z"});
  refused([](Frame& f) { f.members[0].section.J = -1; }, {"member arm", "torsion constant is -1"});
  refused([](Frame& f) { f.members[0].section.shear_y = 0; }, {"member arm", "shear area along y is 0"});
  refused([](Frame& f) { f.members[0].section.shear_z = -1; }, {"member arm", "shear area along z is -1"});
  refused([](Frame& f) { f.members[0].section.mass_per_metre = -2; }, {"member arm", "mass per metre is -2"});
  refused([](Frame& f) { f.members[0].section.thermal_expansion = nan_value; }, {"member arm", "thermal expansion"});
}

TEST_CASE("bad joints and supports") {
  refused([](Frame& f) { f.members[0].start.about_y = -5; },
          {"member arm", "end stiffness about local y is -5", "zero (released)"});
  refused([](Frame& f) { f.members[0].end.about_z = nan_value; }, {"member arm", "end stiffness about local z"});
  refused([](Frame& f) { f.members[0].end.axial = -1; }, {"member arm", "axial end stiffness is -1"});
  refused([](Frame& f) { f.members[0].start.torsion = -1; }, {"member arm", "torsional end stiffness is -1"});
  refused([](Frame& f) { f.members[0].start.shear_y = 0; },
          {"member arm", "transverse end stiffness along local y is 0"});
  refused([](Frame& f) { f.members[0].end.shear_z = -4; },
          {"member arm", "transverse end stiffness along local z is -4"});
  refused([](Frame& f) { f.members[0].end.offset.z = nan_value; }, {"member arm", "rigid offset is not finite"});
  refused([](Frame& f) { f.clamp(9); }, {"support", "node 10", "does not exist"});
  refused([](Frame& f) { f.spring(1, Motion::uz, 0); }, {"support at node tip", "spring stiffness is 0"});
  refused([](Frame& f) { f.spring(1, Motion::rx, -1e3); }, {"support at node tip", "spring stiffness is -1000"});
  refused([](Frame& f) { f.spring(1, Motion::uy, infinite); }, {"support at node tip", "spring stiffness is inf"});
  refused([](Frame& f) { f.fix(0, {Motion::uz}, nan_value); }, {"support at node root", "prescribed displacement"});
  says(message_of<BadDescription>([] { FrameSolver solver(cantilever(), 0.0); }), {"solver", "tolerance is 0"});
  says(message_of<BadDescription>([] { FrameSolver solver(cantilever(), nan_value); }), {"solver", "tolerance"});
}

TEST_CASE("bad loads") {
  refused_load([](FrameLoads& l) { l.force(5, {1, 0, 0}); }, {"load", "node 6", "does not exist"});
  refused_load([](FrameLoads& l) { l.force(1, {nan_value, 0, 0}); }, {"load on node tip", "not finite"});
  refused_load([](FrameLoads& l) { l.couple(1, {0, infinite, 0}); }, {"load on node tip", "not finite"});
  refused_load([](FrameLoads& l) { l.line(3, 1, {0, 0, 1}); }, {"load", "member 4", "does not exist"});
  refused_load([](FrameLoads& l) { l.line(0, 2, {0, 0, nan_value}); }, {"load on member arm", "not finite"});
  refused_load([](FrameLoads& l) { l.line(0, nan_value, 2, {}, {}); }, {"load on member arm", "not finite"});
  refused_load([](FrameLoads& l) { l.force_on(0, 2.5, {0, 0, 1}); }, {"load on member arm", "2.5 m", "0 to 2 m"});
  refused_load([](FrameLoads& l) { l.couple_on(0, -0.1, {0, 0, 1}); }, {"load on member arm", "-0.1 m", "0 to 2 m"});
  refused_load(
      [](FrameLoads& l) {
        l.line(0, 1, 2.01, {0, 0, 1}, {0, 0, 1});
      },
      {"load on member arm", "2.01 m", "0 to 2 m"});
  refused_load([](FrameLoads& l) { l.line(0, 1.5, 1, {0, 0, 1}, {0, 0, 1}); }, {"load on member arm", "in this order"});
  refused_load([](FrameLoads& l) { l.temperature(0, nan_value); }, {"load on member arm", "not finite"});
  refused_load([](FrameLoads& l) { l.settle(1, Motion::uz, -0.01); },
               {"node tip", "settlement along z", "no support holds it"});
  refused_load([](FrameLoads& l) { l.settle(0, Motion::rx, infinite); },
               {"settlement at node root", "displacement is inf"});
}

TEST_CASE("frames that move as one piece") {
  Frame f = cantilever();
  f.supports.clear();
  unstable(f, {"the whole of it", "as one piece", "supports do not hold it", "add a support"});
  for (const auto& [free, words] :
       {std::pair{Motion::ux, "moves along x"}, std::pair{Motion::uy, "moves along y"},
        std::pair{Motion::uz, "moves along z"}, std::pair{Motion::rx, "turns about x"}}) {
    f = cantilever();
    f.restraint(0, free).kind = Restraint::Kind::free;
    unstable(f, {"the whole of it", words, "as one piece"});
  }
  f = cantilever();  // on a pin it turns about the pin: about y and along z
  f.restraint(0, Motion::ry).kind = Restraint::Kind::free;
  unstable(f, {"the whole of it", "turns about y"});
  f = cantilever();
  f.restraint(0, Motion::rz).kind = Restraint::Kind::free;
  unstable(f, {"the whole of it", "turns about z"});
}

TEST_CASE("mechanisms: the joints that move are named, and the way they move") {
  SUBCASE("square of bars without a diagonal") {
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{1, 0, 0}, Vec3<>{1, 1, 0}, Vec3<>{0, 1, 0}}) f.add_node(at);
    for (std::size_t i = 0; i < 4; ++i) f.add_axial(i, (i + 1) % 4, 70e9, 1e-3);
    f.hold_in_plane_xy();
    f.fix(0, {Motion::ux, Motion::uy});
    f.fix(1, {Motion::uy});
    unstable(f, {"joints move along x", "without any bar resisting", "node 3; node 4", "a diagonal"});
    f.add_axial(0, 2, 70e9, 1e-3);
    CHECK_NOTHROW(FrameSolver{f});
  }
  SUBCASE("four-bar linkage with pins") {
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{0, 1, 0}, Vec3<>{2, 1, 0}, Vec3<>{2, 0, 0}}) f.add_node(at);
    for (std::size_t i = 0; i < 3; ++i) f.add_beam(i, i + 1, tube_section());
    f.members[1].start = f.members[1].end = pinned_end();
    f.hold_in_plane_xy();
    for (const std::size_t n : {std::size_t{0}, std::size_t{3}}) f.fix(n, {Motion::ux, Motion::uy});
    unstable(f, {"joints move along x", "node 2; node 3"});
    f.fix(0, {Motion::rz});
    CHECK_NOTHROW(FrameSolver{f});
  }
  SUBCASE("joint of bars in one plane, out of that plane") {
    Frame f;
    f.add_node({0, 0, 0}, "hub");
    for (const Vec3<>& at : {Vec3<>{1, 0, 0}, Vec3<>{0, 1, 0}, Vec3<>{-1, -1, 0}}) {
      const std::size_t n = f.add_node(at);
      f.fix(n, {Motion::ux, Motion::uy, Motion::uz});
      f.add_axial(0, n, 70e9, 1e-3);
    }
    unstable(f, {"joints move along z", "node hub"});
  }
  SUBCASE("two bars in one line, across it") {
    Frame f;
    f.add_node({0, 0, 0}, "left");
    f.add_node({1, 0, 0}, "middle");
    f.add_node({2, 0, 0}, "right");
    f.add_axial(0, 1, 70e9, 1e-3);
    f.add_axial(1, 2, 70e9, 1e-3);
    f.hold_in_plane_xy();
    for (const std::size_t n : {std::size_t{0}, std::size_t{2}}) f.fix(n, {Motion::ux, Motion::uy});
    unstable(f, {"joints move along y", "node middle"});
  }
  SUBCASE("joint that spins: every bar released there") {
    Frame f = cantilever();
    f.add_node({4, 0, 0}, "far");
    f.add_beam(1, 2, tube_section());
    f.clamp(2);
    f.members[0].end = f.members[1].start = pinned_end();
    unstable(f, {"joints", "node tip"});
    f.members[0].end = {};
    CHECK_NOTHROW(FrameSolver{f});
    f.members[0].end.about_z = 0;  // about z alone the joint is loose
    unstable(f, {"joints turn about z", "node tip"});
  }
  SUBCASE("bar that spins about itself") {
    Frame f = cantilever();
    f.members[0].start.torsion = 0;
    unstable(f, {"joints turn about x", "node tip"});
  }
  SUBCASE("sway of a pinned portal with hinges at the corners") {
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{0, 0, 3}, Vec3<>{5, 0, 3}, Vec3<>{5, 0, 0}}) f.add_node(at);
    for (std::size_t i = 0; i < 3; ++i) f.add_beam(i, i + 1, tube_section());
    f.members[1].start.about_y = f.members[1].end.about_y = 0;
    for (const std::size_t n : {std::size_t{0}, std::size_t{3}})
      f.fix(n, {Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::rz});
    unstable(f, {"joints move along x", "node 2; node 3"});
  }
  SUBCASE("couple on a joint of axial bars") {
    Frame f;
    f.add_node({0, 0, 0}, "apex");
    for (const Vec3<>& at : {Vec3<>{1, 0, -1}, Vec3<>{-1, 1, -1}, Vec3<>{-1, -1, -1}}) {
      const std::size_t n = f.add_node(at);
      f.fix(n, {Motion::ux, Motion::uy, Motion::uz});
      f.add_axial(0, n, 70e9, 1e-3);
    }
    const FrameSolver solver(f);
    FrameLoads loads;
    loads.couple(0, {0, 1, 0});
    says(message_of<UnstableFrame>([&] { solver.solve(loads); }),
         {"node apex", "a couple acts in the rotation about y", "only axial bars meet there"});
  }
}
