// SPDX-License-Identifier: MIT
// What every linear elastic frame obeys, on random space frames: equilibrium, reciprocity, energy, invariances, limits.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/solve/frame_solver.hpp>

#include "support/random_frame.hpp"

using namespace baywork;

namespace {

constexpr std::uint64_t cases = 500;

/// Runs `check(random, frame)` on 500 frames; a failure prints the seed.
template <class Check>
void on_random_frames(std::uint64_t first_seed, Check check) {
  for (std::uint64_t seed = first_seed; seed < first_seed + cases; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    const RandomFrame f = random_frame(r);
    check(r, f);
  }
}

FrameLoads random_loads(Random& r, const RandomFrame& f) {
  FrameLoads loads;
  random_node_loads(r, f, loads);
  random_member_loads(r, f, loads);
  if (r.chance(0.3)) loads.settle(0, static_cast<Motion>(r.below(6)), r.in(-0.002, 0.002));
  return loads;
}

/// Largest difference of each kind (displacements, rotations, forces, moments) against the largest value of the kind;
/// `a` as it is and `b` as told by the two functions. A kind that is all but absent is measured against the other one.
struct Difference {
  std::array<double, 4> off{}, largest{};
  void take(std::size_t kind, double a, double b) {
    off[kind] = (std::max)(off[kind], std::abs(a - b));
    largest[kind] = (std::max)({largest[kind], std::abs(a), std::abs(b)});
  }
  double worst() const {
    double w = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      const double size = (std::max)(largest[k], 1e-3 * largest[k ^ 1U]);
      if (size > 0) w = (std::max)(w, off[k] / size);
    }
    return w;
  }
};

Difference difference(const FrameAnswer& a, const FrameAnswer& b) {
  Difference d;
  for (std::size_t i = 0; i < a.motions.size(); ++i) d.take(i % 6 < 3 ? 0 : 1, a.motions[i], b.motions[i]);
  for (std::size_t i = 0; i < a.members.size(); ++i)
    for (std::size_t k = 0; k < 6; ++k) {
      d.take(k < 3 ? 2 : 3, a.members[i].start[k], b.members[i].start[k]);
      d.take(k < 3 ? 2 : 3, a.members[i].end[k], b.members[i].end[k]);
    }
  return d;
}

Vec3<> force_in(const std::array<double, 6>& v) { return {v[0], v[1], v[2]}; }
Vec3<> couple_in(const std::array<double, 6>& v) { return {v[3], v[4], v[5]}; }

double work(const FrameLoads& loads, const FrameAnswer& a) {
  double w = 0;
  for (const NodeLoad& l : loads.on_nodes) w += dot(l.force, a.displacement(l.node)) + dot(l.couple, a.rotation(l.node));
  return w;
}

/// A frame and its loads after x -> T x, with T a rotation (proper) or a mirror, so that local results can be compared.
using Matrix = std::array<Vec3<>, 3>;  // rows
Vec3<> times(const Matrix& t, const Vec3<>& v) { return {dot(t[0], v), dot(t[1], v), dot(t[2], v)}; }

Matrix random_rotation(Random& r) {
  Vec3<> a;
  do a = r.vector(1);
  while (length(a) < 0.3);
  const Vec3<> x = unit(a), y = unit(cross(x, Vec3<>{x.y, x.z, -x.x}));
  return {x, y, cross(x, y)};
}

/// Turns places and directions; a mirrored bar keeps its local x and z, and its local y points the other way.
Frame moved(Frame f, const Matrix& t) {
  for (Member& m : f.members) {
    m.up = times(t, axes_of(f, m).z);
    m.roll = 0;
  }
  for (Member& m : f.members)
    for (MemberEnd* e : {&m.start, &m.end}) e->offset = times(t, e->offset);
  for (Node& n : f.nodes) n.at = times(t, n.at);
  return f;
}

/// `hand` is 1 for a rotation and -1 for a mirror: couples and rotations are axial vectors.
FrameLoads moved(FrameLoads loads, const Matrix& t, double hand) {
  for (NodeLoad& l : loads.on_nodes) {
    l.force = times(t, l.force);
    l.couple = hand * times(t, l.couple);
  }
  for (MemberLoad& l : loads.on_members)
    for (Vec3<>* v : {&l.first, &l.last}) {
      if (hand > 0) continue;
      if (l.kind == MemberLoad::Kind::couple)
        *v = {-v->x, v->y, -v->z};
      else
        v->y = -v->y;
    }
  return loads;
}

FrameAnswer moved(FrameAnswer a, const Matrix& t, double hand) {
  for (std::size_t n = 0; 6 * n < a.motions.size(); ++n) {
    const Vec3<> u = times(t, a.displacement(n)), w = hand * times(t, a.rotation(n));
    for (std::size_t k = 0; k < 3; ++k) {
      a.motions[6 * n + k] = u[k];
      a.motions[6 * n + 3 + k] = w[k];
    }
  }
  if (hand < 0)
    for (MemberAnswer& m : a.members)
      for (std::array<double, 6>* v : {&m.start, &m.end})
        for (const std::size_t k : {std::size_t{1}, std::size_t{3}, std::size_t{5}}) (*v)[k] = -(*v)[k];
  return a;
}

}  // namespace

TEST_CASE("equilibrium of the whole, of every node and of every member") {
  double worst = 0;
  on_random_frames(1000, [&](Random& r, const RandomFrame& f) {
    const FrameLoads loads = random_loads(r, f);
    const FrameSolver solver(f.frame);
    const FrameAnswer a = solver.solve(loads);
    std::vector<Vec3<>> force(f.frame.nodes.size()), couple(force.size());
    Vec3<> all_force, all_couple;
    double scale = 0, arm = 1;
    const auto add_to_whole = [&](const Vec3<>& at, const Vec3<>& p, const Vec3<>& c) {
      all_force += p;
      all_couple += cross(at, p) + c;
      scale += length(p) + length(c);
      arm = (std::max)(arm, length(at));
    };
    for (const NodeLoad& l : loads.on_nodes) {
      force[l.node] += l.force;
      couple[l.node] += l.couple;
      add_to_whole(f.frame.nodes[l.node].at, l.force, l.couple);
    }
    for (const Reaction& s : a.reactions) {
      force[s.node] += force_in(s.value);
      couple[s.node] += couple_in(s.value);
      add_to_whole(f.frame.nodes[s.node].at, force_in(s.value), couple_in(s.value));
    }
    std::vector<Vec3<>> member_force(f.frame.members.size()), member_couple(member_force.size());  // about its start
    for (const MemberLoad& l : loads.on_members) {
      const MemberAxes<>& axes = solver.axes(l.member);
      const auto act = [&](double x, const Vec3<>& p, const Vec3<>& c) {
        member_force[l.member] += p;
        member_couple[l.member] += cross(Vec3<>{x, 0, 0}, p) + c;
        add_to_whole(axes.start + x * axes.x, axes.to_global(p), axes.to_global(c));
      };
      if (l.kind == MemberLoad::Kind::force) act(l.a, l.first, {});
      if (l.kind == MemberLoad::Kind::couple) act(l.a, {}, l.first);
      if (l.kind == MemberLoad::Kind::line) {
        act(l.a + (l.b - l.a) / 3, ((l.b - l.a) / 2) * l.first, {});
        act(l.a + (l.b - l.a) * 2 / 3, ((l.b - l.a) / 2) * l.last, {});
      }
    }
    for (std::size_t i = 0; i < f.frame.members.size(); ++i) {
      const Member& m = f.frame.members[i];
      const MemberAxes<>& axes = solver.axes(i);
      const Vec3<> fs = force_in(a.members[i].start), fe = force_in(a.members[i].end);
      const Vec3<> cs = couple_in(a.members[i].start), ce = couple_in(a.members[i].end);
      scale = (std::max)({scale, length(fs), length(fe), length(cs), length(ce)});
      member_force[i] += fs + fe;
      member_couple[i] += cs + ce + cross(Vec3<>{axes.length, 0, 0}, fe);
      force[m.from] -= axes.to_global(fs);
      force[m.to] -= axes.to_global(fe);
      couple[m.from] -= axes.to_global(cs) + cross(m.start.offset, axes.to_global(fs));
      couple[m.to] -= axes.to_global(ce) + cross(m.end.offset, axes.to_global(fe));
    }
    double off = (std::max)(length(all_force), length(all_couple) / arm);
    for (const Vec3<>& v : force) off = (std::max)(off, length(v));
    for (const Vec3<>& v : couple) off = (std::max)(off, length(v));
    for (const Vec3<>& v : member_force) off = (std::max)(off, length(v));
    for (const Vec3<>& v : member_couple) off = (std::max)(off, length(v));
    CHECK(off < 1e-13 * scale * arm);
    CHECK(a.certificate.equilibrium < 1e-12);
    worst = (std::max)(worst, off / (scale * arm));
  });
  MESSAGE("equilibrium, worst " << worst);
}

TEST_CASE("reciprocity (E. Betti, J. C. Maxwell): what one load does on the other's motions") {
  double worst = 0;
  on_random_frames(2000, [&](Random& r, const RandomFrame& f) {
    FrameLoads one, two;
    random_node_loads(r, f, one);
    random_node_loads(r, f, two);
    const FrameSolver solver(f.frame);
    const FrameAnswer a = solver.solve(one), b = solver.solve(two);
    const double off = std::abs(work(one, b) - work(two, a)) / std::sqrt(work(one, a) * work(two, b));
    CHECK(off < 1e-12);
    worst = (std::max)(worst, off);
  });
  MESSAGE("reciprocity, worst " << worst);
}

TEST_CASE("superposition of load cases") {
  double worst = 0;
  on_random_frames(3000, [&](Random& r, const RandomFrame& f) {
    const FrameLoads one = random_loads(r, f), two = random_loads(r, f);
    const double factor = r.in(-2, 2);
    FrameLoads both = one;
    both.add(two, factor);
    const FrameSolver solver(f.frame);
    FrameAnswer a = solver.solve(one);
    const FrameAnswer b = solver.solve(two);
    for (std::size_t i = 0; i < a.motions.size(); ++i) a.motions[i] += factor * b.motions[i];
    for (std::size_t i = 0; i < a.members.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) {
        a.members[i].start[k] += factor * b.members[i].start[k];
        a.members[i].end[k] += factor * b.members[i].end[k];
      }
    const double off = difference(solver.solve(both), a).worst();
    CHECK(off < 1e-12);
    worst = (std::max)(worst, off);
  });
  MESSAGE("superposition, worst " << worst);
}

TEST_CASE("a turned or mirrored frame answers turned or mirrored") {
  // Coordinates are rounded anew by the motion: the answer may move by what a slender frame makes of one rounding.
  double worst = 0;
  on_random_frames(4000, [&](Random& r, const RandomFrame& f) {
    FrameLoads loads;
    random_node_loads(r, f, loads);
    random_member_loads(r, f, loads);
    const FrameAnswer a = FrameSolver(f.frame).solve(loads);
    const Matrix turn = random_rotation(r);
    const Matrix glass{Vec3<>{1, 0, 0}, Vec3<>{0, -1, 0}, Vec3<>{0, 0, 1}};
    const FrameAnswer turned = FrameSolver(moved(f.frame, turn)).solve(moved(loads, turn, 1));
    const FrameAnswer mirrored = FrameSolver(moved(f.frame, glass)).solve(moved(loads, glass, -1));
    const double off = (std::max)(difference(turned, moved(a, turn, 1)).worst(),
                                  difference(mirrored, moved(a, glass, -1)).worst());
    CHECK(off < 1e-10);
    worst = (std::max)(worst, off);
  });
  MESSAGE("rotation and mirror, worst " << worst);
}

TEST_CASE("metres and millimetres give the same answer") {
  double worst = 0;
  on_random_frames(5000, [&](Random& r, const RandomFrame& f) {
    const FrameLoads loads = random_loads(r, f);
    Frame small = f.frame;
    for (Node& n : small.nodes) n.at = 1e3 * n.at;
    for (Member& m : small.members) {
      FrameSection& s = m.section;
      s.E *= 1e-6;
      s.G *= 1e-6;
      for (double* area : {&s.A, &s.shear_y, &s.shear_z}) *area *= 1e6;
      for (double* inertia : {&s.Iy, &s.Iz, &s.J}) *inertia *= 1e12;
      for (MemberEnd* e : {&m.start, &m.end}) {
        e->offset = 1e3 * e->offset;
        for (double* k : {&e->axial, &e->shear_y, &e->shear_z}) *k *= 1e-3;
        for (double* k : {&e->torsion, &e->about_y, &e->about_z}) *k *= 1e3;
      }
    }
    FrameLoads on_small = loads;
    for (NodeLoad& l : on_small.on_nodes) l.couple = 1e3 * l.couple;
    for (MemberLoad& l : on_small.on_members) {
      l.a *= 1e3;
      l.b *= 1e3;
      if (l.kind == MemberLoad::Kind::couple) l.first = 1e3 * l.first;
      if (l.kind == MemberLoad::Kind::line) l.first = 1e-3 * l.first, l.last = 1e-3 * l.last;
      if (l.kind == MemberLoad::Kind::temperature) l.first.y *= 1e-3, l.first.z *= 1e-3;
    }
    for (SupportMotion& l : on_small.motions)
      if (l.motion == Motion::ux || l.motion == Motion::uy || l.motion == Motion::uz) l.displacement *= 1e3;
    FrameAnswer b = FrameSolver(small).solve(on_small);
    for (std::size_t i = 0; i < b.motions.size(); ++i) b.motions[i] *= i % 6 < 3 ? 1e-3 : 1;
    for (MemberAnswer& m : b.members)
      for (std::size_t k = 3; k < 6; ++k) m.start[k] *= 1e-3, m.end[k] *= 1e-3;
    const double off = difference(FrameSolver(f.frame).solve(loads), b).worst();
    CHECK(off < 1e-10);
    worst = (std::max)(worst, off);
  });
  MESSAGE("units, worst " << worst);
}

TEST_CASE("the order of nodes and members does not matter") {
  double worst = 0;
  on_random_frames(6000, [&](Random& r, const RandomFrame& f) {
    const FrameLoads loads = random_loads(r, f);
    const auto shuffled = [&r](std::size_t n) {
      std::vector<std::size_t> p(n);
      std::iota(p.begin(), p.end(), std::size_t{0});
      for (std::size_t i = n; i > 1; --i) std::swap(p[i - 1], p[r.below(i)]);
      return p;
    };
    const std::vector<std::size_t> node = shuffled(f.frame.nodes.size()), member = shuffled(f.frame.members.size());
    Frame other = f.frame;
    for (std::size_t i = 0; i < node.size(); ++i) other.nodes[node[i]] = f.frame.nodes[i];
    for (std::size_t i = 0; i < member.size(); ++i) {
      other.members[member[i]] = f.frame.members[i];
      other.members[member[i]].from = node[f.frame.members[i].from];
      other.members[member[i]].to = node[f.frame.members[i].to];
    }
    for (Support& s : other.supports) s.node = node[s.node];
    FrameLoads on_other = loads;
    for (NodeLoad& l : on_other.on_nodes) l.node = node[l.node];
    for (MemberLoad& l : on_other.on_members) l.member = member[l.member];
    for (SupportMotion& l : on_other.motions) l.node = node[l.node];
    const FrameAnswer found = FrameSolver(other).solve(on_other);
    FrameAnswer back = found;
    for (std::size_t i = 0; i < node.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) back.motions[6 * i + k] = found.motions[6 * node[i] + k];
    for (std::size_t i = 0; i < member.size(); ++i) back.members[i] = found.members[member[i]];
    const double off = difference(FrameSolver(f.frame).solve(loads), back).worst();
    CHECK(off < 1e-12);
    worst = (std::max)(worst, off);
  });
  MESSAGE("order, worst " << worst);
}

TEST_CASE("the work of the loads is the strain energy (B. P. E. Clapeyron)") {
  double worst = 0;
  on_random_frames(7000, [&](Random& r, const RandomFrame& f) {
    FrameLoads loads;
    random_node_loads(r, f, loads);
    const FrameSolver solver(f.frame);
    const FrameAnswer a = solver.solve(loads);
    double energy = 0;
    for (std::size_t i = 0; i < a.members.size(); ++i) {
      const MemberModes<double> q = solver.stiffness(i) * a.members[i].modes;
      for (std::size_t k = 0; k < 6; ++k) energy += q[k] * a.members[i].modes[k];
    }
    const double off = std::abs(energy / work(loads, a) - 1);
    CHECK(off < 1e-12);
    worst = (std::max)(worst, off);
  });
  MESSAGE("energy, worst " << worst);
}

TEST_CASE("very stiff and very soft joints reach the rigid and the pinned frame") {
  double worst = 0;
  on_random_frames(8000, [&](Random& r, const RandomFrame& f) {
    const FrameLoads loads = random_loads(r, f);
    const auto with_joints = [&](double stiffness) {
      Frame g = f.frame;
      for (std::size_t i = f.first_cross_member; i < f.first_brace; ++i) {
        Member& m = g.members[i];
        for (MemberEnd* e : {&m.start, &m.end}) {
          e->about_y = stiffness * m.section.E * m.section.Iy / axes_of(g, m).length;
          e->about_z = stiffness * m.section.E * m.section.Iz / axes_of(g, m).length;
        }
      }
      return FrameSolver(g).solve(loads);
    };
    const double off = (std::max)(difference(with_joints(1e10), with_joints(rigid_stiffness)).worst(),
                                  difference(with_joints(1e-10), with_joints(0)).worst());
    CHECK(off < 1e-7);  // 1e-10 times what the frame makes of a soft joint
    worst = (std::max)(worst, off);
  });
  MESSAGE("joints, worst " << worst);
}
