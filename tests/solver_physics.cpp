// SPDX-License-Identifier: MIT
// Laws that every linear elastic frame must obey, on random space frames: equilibrium, reciprocity, superposition,
// invariance under rotation, mirroring, change of units and of numbering, balance of energy, limits of joint stiffness.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/frame.hpp>
#include <baywork/solve.hpp>

#include "support/retold_frames.hpp"
#include "support/space_frames.hpp"

namespace {

using namespace physics;

constexpr std::uint64_t frames = 500;  // per law

/// Tolerances are about ten to fifty times the worst deviation over 5000 seeds per law.
void small(double deviation, double tolerance) { CHECK(deviation <= tolerance); }

/// Calls law(random, frame) for every seed.
template <class Law>
void for_frames(std::uint64_t first_seed, Law law) {
  for (std::uint64_t seed = first_seed; seed < first_seed + frames; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    law(r, space_frame(r));
  }
}

double most(double size, const Vec3<>& v) { return (std::max)({size, std::abs(v.x), std::abs(v.y), std::abs(v.z)}); }

/// Resultant of a member load and its moment about the start of the bar, local axes.
std::pair<Vec3<>, Vec3<>> resultant(const MemberLoad& l) {
  const double b = l.b - l.a;
  if (l.kind == Load::couple) return {{}, l.first};
  if (l.kind == Load::temperature) return {};
  const Vec3<> first_moment = l.kind == Load::force
                                  ? l.a * l.first
                                  : (b / 2 * l.a) * (l.first + l.last) + (b * b / 6) * (l.first + 2.0 * l.last);
  return {l.kind == Load::force ? l.first : (b / 2) * (l.first + l.last), cross(Vec3<>{1, 0, 0}, first_moment)};
}

}  // namespace

TEST_CASE("every member, every joint and the whole frame are in equilibrium") {
  for_frames(1000, [](Random& r, const Frame& f) {
    const FrameSolver solver(f);
    const FrameLoads loads = any_loads(r, f);
    const FrameAnswer a = solver.solve(loads);
    double size = 0;
    for_numbers(
        a, a, [&size](double x, double, std::size_t kind) { size = kind < 2 ? size : (std::max)(size, std::abs(x)); });
    const std::size_t nodes = f.nodes.size();
    std::vector<Vec3<>> force(nodes), moment(nodes), member_force(f.members.size()), member_moment(f.members.size());
    Vec3<> sum, turn;
    const Vec3<> about = r.vector(2);
    const auto on_all = [&](const Vec3<>& at, const Vec3<>& p, const Vec3<>& c) {
      sum += p;
      turn += c + cross(at - about, p);
    };
    for (const MemberLoad& l : loads.on_members) {
      const auto [p, c] = resultant(l);
      member_force[l.member] += p;
      member_moment[l.member] += c;
      const MemberAxes<>& axes = solver.axes(l.member);
      on_all(axes.start, axes.to_global(p), axes.to_global(c));
    }
    double worst = 0;
    for (std::size_t i = 0; i < f.members.size(); ++i) {
      const Member& m = f.members[i];
      const MemberAnswer& e = a.members[i];
      const MemberAxes<>& axes = solver.axes(i);
      worst = most(worst, member_force[i] + forces(e.start) + forces(e.end));
      worst =
          most(worst, member_moment[i] + moments(e.start) + moments(e.end) + cross({axes.length, 0, 0}, forces(e.end)));
      for (const bool start : {true, false}) {
        const std::size_t n = start ? m.from : m.to;
        const Vec3<> p = axes.to_global(forces(start ? e.start : e.end));
        force[n] -= p;
        moment[n] -= axes.to_global(moments(start ? e.start : e.end)) + cross(start ? m.start.offset : m.end.offset, p);
      }
    }
    const auto on_node = [&](std::size_t n, const Vec3<>& p, const Vec3<>& c) {
      force[n] += p;
      moment[n] += c;
      on_all(f.nodes[n].at, p, c);
    };
    for (const NodeLoad& l : loads.on_nodes) on_node(l.node, l.force, l.couple);
    for (const Reaction& s : a.reactions) on_node(s.node, forces(s.value), moments(s.value));
    for (std::size_t n = 0; n < nodes; ++n) worst = most(most(worst, force[n]), moment[n]);
    small(most(most(worst, sum), turn) / size, 5e-14);
    small(a.certificate.equilibrium, 2e-14);
  });
}

namespace {

/// How a section of a member moves and turns, local axes, in a case without loads on the member: the simple Timoshenko
/// beam under end moments (Timoshenko, Strength of Materials I, simple beams with couples at the ends; shear from
/// v' = θ + V/(G As)) between ends that are where nodes, rigid arms and springs put them.
std::pair<Vec3<>, Vec3<>> motion_along(const FrameSolver& solver, const FrameAnswer& a, std::size_t i, double x) {
  const Member& m = solver.frame().members[i];
  const FrameSection& s = m.section;
  const MemberAxes<>& axes = solver.axes(i);
  const Six &p = a.members[i].start, &q = a.members[i].end;
  const double l = axes.length;
  const Vec3<> rs = a.rotation(m.from), re = a.rotation(m.to);
  const Vec3<> us = axes.to_local(a.displacement(m.from) + cross(rs, m.start.offset));
  const Vec3<> ue = axes.to_local(a.displacement(m.to) + cross(re, m.end.offset));
  const auto rod = [x, l](double start, double end, double force, double k_start, double k_end, double k) {
    return k_start > 0 ? start + force / k_start + force * x / k : end - force / k_end - force * (l - x) / k;
  };
  // deflection from the line between the bar's ends, and its slope, for moments ms and me
  const auto bow = [x, l](double ms, double me) {
    return (ms * x * (l - x) * (2 * l - x) - me * x * (l * l - x * x)) / (6 * l);
  };
  const auto slope = [x, l](double ms, double me) {
    return (ms * (2 * l * l - 6 * l * x + 3 * x * x) - me * (l * l - 3 * x * x)) / (6 * l);
  };
  const double EIz = s.E * s.Iz, EIy = s.E * s.Iy;
  const double vs = us.y - p[1] / m.start.shear_y, ve = ue.y - q[1] / m.end.shear_y;
  const double ws = us.z - p[2] / m.start.shear_z, we = ue.z - q[2] / m.end.shear_z;
  const double v_slope = (ve - vs) / l + slope(p[5], q[5]) / EIz, w_slope = (we - ws) / l - slope(p[4], q[4]) / EIy;
  return {{rod(us.x, ue.x, q[0], m.start.axial, m.end.axial, s.E * s.A), vs + (ve - vs) * x / l + bow(p[5], q[5]) / EIz,
           ws + (we - ws) * x / l - bow(p[4], q[4]) / EIy},
          {rod(dot(axes.x, rs), dot(axes.x, re), q[3], m.start.torsion, m.end.torsion, s.G * s.J),
           q[2] / (s.G * s.shear_z) - w_slope, v_slope - q[1] / (s.G * s.shear_y)}};
}

struct Work {
  double sum = 0, parts = 0;
  void add(double w) {
    sum += w;
    parts += std::abs(w);
  }
};

/// Work of one case's loads and supports through the motions of another, `through`, whose members bear no loads; and
/// of the other's stresses through the strains of this one's temperatures.
Work work(const FrameSolver& solver, const FrameLoads& loads, const FrameAnswer& answer, const FrameLoads& other,
          const FrameAnswer& through) {
  Work w;
  for (const NodeLoad& l : loads.on_nodes) {
    w.add(dot(l.force, through.displacement(l.node)));
    w.add(dot(l.couple, through.rotation(l.node)));
  }
  for (const SupportMotion& s : other.motions)
    for (const Reaction& r : answer.reactions)
      if (r.node == s.node) w.add(r.value[static_cast<std::size_t>(s.motion)] * s.displacement);
  for (const MemberLoad& l : loads.on_members) {
    const auto at = [&](double x) { return motion_along(solver, through, l.member, x); };
    if (l.kind == Load::force) w.add(dot(l.first, at(l.a).first));
    if (l.kind == Load::couple) w.add(dot(l.first, at(l.a).second));
    if (l.kind == Load::line) {  // Boole's rule, exact to the fifth degree
      const std::array<double, 5> weight{7, 32, 12, 32, 7};
      for (std::size_t k = 0; k < 5; ++k) {
        const double t = static_cast<double>(k) / 4;
        w.add((l.b - l.a) * weight[k] / 90 * dot(l.first + t * (l.last - l.first), at(l.a + t * (l.b - l.a)).first));
      }
    }
    if (l.kind == Load::temperature) {  // hotter fibres are longer; the other's moments are straight lines
      const Six &p = through.members[l.member].start, &q = through.members[l.member].end;
      const double half = solver.frame().members[l.member].section.thermal_expansion * solver.axes(l.member).length / 2;
      w.add(half * (l.first.x + l.last.x) * q[0]);
      w.add(half * l.first.y * (p[5] - q[5]));
      w.add(half * l.first.z * (q[4] - p[4]));
    }
  }
  return w;
}

}  // namespace

TEST_CASE("reciprocity: one case does the same work through another as that one through the first") {
  for_frames(2000, [](Random& r, const Frame& f) {  // Betti, also with moving supports and heated bars
    const FrameSolver solver(f);
    FrameLoads on_nodes = node_loads(r, f);
    add_settlements(r, f, on_nodes);
    const FrameLoads any = any_loads(r, f);
    const FrameAnswer a = solver.solve(any), b = solver.solve(on_nodes);
    const Work one = work(solver, any, a, on_nodes, b), other = work(solver, on_nodes, b, any, a);
    small(std::abs(one.sum - other.sum) / (one.parts + other.parts), 2e-14);
  });
}

TEST_CASE("work of the loads is twice the strain energy, from deformations and from forces") {
  for_frames(3000, [](Random& r, const Frame& f) {
    const FrameSolver solver(f);
    FrameLoads loads = node_loads(r, f);
    add_settlements(r, f, loads);
    const FrameAnswer a = solver.solve(loads);
    const Work outside = work(solver, loads, a, loads, a);
    double of_modes = 0, of_forces = 0, in_supports = 0;
    for (std::size_t j = 0; j < f.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k)
        if (f.supports[j].motion[k].kind == Restraint::Kind::spring)
          in_supports += a.reactions[j].value[k] * a.reactions[j].value[k] / f.supports[j].motion[k].stiffness;
    for (std::size_t i = 0; i < f.members.size(); ++i) {
      const Six &p = a.members[i].start, &q = a.members[i].end, &v = a.members[i].modes;
      of_modes += q[0] * v[0] + q[3] * v[1] + p[5] * v[2] + q[5] * v[3] + p[4] * v[4] + q[4] * v[5];
      const FrameSection& s = f.members[i].section;
      const double l = solver.axes(i).length;
      const auto bent = [l](double ms, double me) { return l / 3 * (ms * ms - ms * me + me * me); };
      of_forces += q[0] * q[0] * l / (s.E * s.A) + q[3] * q[3] * l / (s.G * s.J) + bent(p[5], q[5]) / (s.E * s.Iz) +
                   bent(p[4], q[4]) / (s.E * s.Iy) + q[1] * q[1] * l / (s.G * s.shear_y) +
                   q[2] * q[2] * l / (s.G * s.shear_z);
      for (const bool start : {true, false}) {
        const MemberEnd& e = start ? f.members[i].start : f.members[i].end;
        const Six k{e.axial, e.shear_y, e.shear_z, e.torsion, e.about_y, e.about_z}, &force = start ? p : q;
        for (std::size_t n = 0; n < 6; ++n)
          if (k[n] > 0) of_forces += force[n] * force[n] / k[n];
      }
    }
    small(std::abs(outside.sum - of_modes - in_supports) / outside.parts, 2e-14);
    small(std::abs(outside.sum - of_forces - in_supports) / outside.parts, 2e-14);
  });
}

TEST_CASE("superposition: the answer to a sum of cases is the sum of the answers") {
  for_frames(4000, [](Random& r, const Frame& f) {
    const FrameSolver solver(f);
    const FrameLoads one = any_loads(r, f), two = any_loads(r, f);
    const double factor = r.in(-3, 3);
    FrameLoads both = one;
    both.add(two, factor);
    FrameAnswer sum = solver.solve(one);
    const FrameAnswer b = solver.solve(two), whole = solver.solve(both);
    for (std::size_t i = 0; i < sum.motions.size(); ++i) sum.motions[i] += factor * b.motions[i];
    for (std::size_t k = 0; k < 6; ++k) {
      for (std::size_t i = 0; i < sum.members.size(); ++i) {
        sum.members[i].start[k] += factor * b.members[i].start[k];
        sum.members[i].end[k] += factor * b.members[i].end[k];
      }
      for (std::size_t i = 0; i < sum.reactions.size(); ++i)
        sum.reactions[i].value[k] += factor * b.reactions[i].value[k];
    }
    small(difference(sum, whole), 1e-13);
  });
}

namespace {

double change_by(const Turn& turn, Random& r, const Frame& f) {
  const FrameLoads loads = any_loads(r, f);
  return difference(turn.of(FrameSolver(f).solve(loads)), FrameSolver(turn.of(f)).solve(turn.of(loads)));
}
double change_by(const Units& units, Random& r, const Frame& f) {
  const FrameLoads loads = any_loads(r, f);
  return difference(units.of(FrameSolver(f).solve(loads)), FrameSolver(units.of(f)).solve(units.of(loads)),
                    units.metre);
}

}  // namespace

TEST_CASE("a rotated frame, also a mirrored and rotated one, answers alike") {
  for_frames(5000, [](Random& r, const Frame& f) {
    Turn turn{varied::any_axes(r), r.chance(0.5) ? 1.0 : -1.0};
    turn.row[0] = turn.hand * turn.row[0];
    small(change_by(turn, r, f), 1e-12);
  });
}

TEST_CASE("a frame mirrored in a coordinate plane answers alike to the last bit") {
  for_frames(6000, [](Random& r, const Frame& f) {
    Turn mirror{{Vec3<>{1, 0, 0}, Vec3<>{0, 1, 0}, Vec3<>{0, 0, 1}}, -1};
    Vec3<>& across = mirror.row[r.below(3)];
    across = -across;
    CHECK(change_by(mirror, r, f) == 0.0);
  });
}

TEST_CASE("units do not matter") {
  for_frames(7000, [](Random& r, const Frame& f) {
    small(change_by(Units{1000, 1}, r, f), 2e-13);
    // powers of two round nothing: nothing in the solver may know a unit, to the last bit
    const auto power = [&r] { return std::ldexp(1.0, static_cast<int>(r.below(41)) - 20); };
    CHECK(change_by(Units{power(), power()}, r, f) == 0.0);
  });
}

TEST_CASE("neither the numbering of joints, members and loads matters, nor which end of a member is its start") {
  for_frames(8000, [](Random& r, const Frame& f) {
    const auto shuffled = [&r](std::size_t n) {
      std::vector<std::size_t> order(n);
      std::iota(order.begin(), order.end(), std::size_t{0});
      for (std::size_t i = n; i > 1; --i) std::swap(order[i - 1], order[r.below(i)]);
      return order;
    };
    const FrameLoads loads = any_loads(r, f);
    const FrameAnswer a = FrameSolver(f).solve(loads);
    const std::vector<std::size_t> node = shuffled(f.nodes.size()), member = shuffled(f.members.size());  // new places
    std::vector<char> turned(f.members.size());
    for (char& t : turned) t = r.chance(0.5) ? 1 : 0;
    for (const MemberLoad& l : loads.on_members)  // a torque on an axial bar goes to its start, by definition
      if (l.kind == Load::couple && f.members[l.member].kind == MemberKind::axial) turned[l.member] = 0;
    // a turned member: x and y point the other way, z stays
    const auto around = [](const Vec3<>& v) { return Vec3<>{-v.x, -v.y, v.z}; };
    const auto six_around = [&](const Six& s) { return Turn::join(around(forces(s)), around(moments(s))); };

    Frame g = f;
    FrameAnswer expected = a;
    for (std::size_t i = 0; i < f.nodes.size(); ++i) {
      g.nodes[node[i]] = f.nodes[i];
      for (std::size_t k = 0; k < 6; ++k) expected.motions[6 * node[i] + k] = a.motions[6 * i + k];
    }
    for (std::size_t i = 0; i < f.members.size(); ++i) {
      Member m = f.members[i];
      MemberAnswer e = a.members[i];
      m.from = node[m.from];
      m.to = node[m.to];
      if (turned[i] != 0) {
        std::swap(m.from, m.to);
        std::swap(m.start, m.end);
        m.roll = -m.roll;
        e.start = six_around(a.members[i].end);
        e.end = six_around(a.members[i].start);
      }
      g.members[member[i]] = m;
      expected.members[member[i]] = e;
    }
    for (Support& s : g.supports) s.node = node[s.node];
    std::reverse(g.supports.begin(), g.supports.end());
    std::reverse(expected.reactions.begin(), expected.reactions.end());

    FrameLoads moved = loads;
    for (NodeLoad& l : moved.on_nodes) l.node = node[l.node];
    for (SupportMotion& s : moved.motions) s.node = node[s.node];
    for (MemberLoad& l : moved.on_members) {
      const double length = axes_of(f, f.members[l.member]).length;
      if (turned[l.member] != 0) {
        if (l.kind == Load::line) std::swap(l.first, l.last);
        l.first = l.kind == Load::temperature ? Vec3<>{l.first.x, -l.first.y, l.first.z} : around(l.first);
        l.last = l.kind == Load::temperature ? l.last : around(l.last);
        l.a = std::exchange(l.b, length - l.a);
        l.a = length - l.a;
      }
      l.member = member[l.member];
    }
    std::reverse(moved.on_nodes.begin(), moved.on_nodes.end());
    std::reverse(moved.on_members.begin(), moved.on_members.end());
    small(difference(expected, FrameSolver(g).solve(moved)), 2e-14);
  });
}

TEST_CASE("a soft joint lies between the released and the rigid one and turns into them at its limits") {
  for_frames(9000, [](Random& r, Frame f) {
    Member& m = f.members.back();
    m.kind = MemberKind::beam;
    for (MemberEnd* e : {&m.start, &m.end}) e->axial = e->torsion = e->about_y = e->about_z = rigid_stiffness;
    MemberEnd& e = r.chance(0.5) ? m.start : m.end;
    const FrameSection& s = m.section;
    const std::array<double*, 4> ties{&e.axial, &e.torsion, &e.about_y, &e.about_z};
    const std::array<double, 4> bar{s.E * s.A, s.G * s.J, s.E * s.Iy, s.E * s.Iz};  // about 1 m long
    const std::size_t kind = r.below(4);
    const FrameLoads loads = any_loads(r, f), on_nodes = node_loads(r, f);
    const auto solve = [&](double stiffness, const FrameLoads& of) {
      *ties[kind] = stiffness;
      return FrameSolver(f).solve(of);
    };
    // halving the distance to the limit halves the difference, down to none
    const auto tends = [&](double limit, double near, double nearer) {
      const FrameAnswer there = solve(limit, loads);
      const double far = difference(there, solve(near, loads)), half = difference(there, solve(nearer, loads));
      small(std::abs(far - 2 * half), 1e-2 * far + 1e-11);
    };
    tends(0.0, 2e-6 * bar[kind], 1e-6 * bar[kind]);
    tends(rigid_stiffness, 5e5 * bar[kind], 1e6 * bar[kind]);
    // by the theorem of least work a softer joint makes no frame stiffer
    const auto yielding = [&](double stiffness) {
      double w = 0;
      const FrameAnswer a = solve(stiffness, on_nodes);
      for (const NodeLoad& l : on_nodes.on_nodes)
        w += dot(l.force, a.displacement(l.node)) + dot(l.couple, a.rotation(l.node));
      return w;
    };
    const double k = bar[kind] * r.over_orders(1e-3, 1e3), released = yielding(0.0), soft = yielding(k),
                 rigid = yielding(rigid_stiffness);
    CHECK(rigid <= soft * (1 + 1e-12));
    CHECK(soft <= released * (1 + 1e-12));
    // with both ends released but for the force along it, a beam is an axial bar
    *ties[kind] = rigid_stiffness;
    m.start.about_y = m.start.about_z = m.end.about_y = m.end.about_z = m.end.torsion = 0.0;
    const FrameAnswer beam = FrameSolver(f).solve(loads);
    m.kind = MemberKind::axial;
    small(difference(beam, FrameSolver(f).solve(loads)), 5e-14);
  });
}
