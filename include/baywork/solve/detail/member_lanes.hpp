// SPDX-License-Identifier: MIT
// Members four at a time: strains, forces and end forces to twice the digits, in lanes.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include <baywork/solve/detail/member_sorts.hpp>
#include <baywork/solve/detail/twofold_lanes.hpp>
#include <baywork/solve/frame_answer.hpp>

namespace baywork::detail {

/// The numbers of four members, each as four hi and four lo: x, y, z (three each), 1/L, axial, torsion, bending about z
/// and about y (start, cross, end, shear), arms of start and end (three each). A lane of zeros is no member.
struct MemberLanes {
  static constexpr std::size_t x = 0, y = 3, z = 6, per_length = 9, axial = 10, torsion = 11, about_z = 12,
                               about_y = 16, arm_start = 20, arm_end = 23, count = 26;
  std::array<std::array<std::array<double, twofold_lanes>, 2>, count> value{};
  bool has_arms = false;

  void put(std::size_t lane, const MemberIn<Twofold<double>>& m) {
    const MemberGeometry<Twofold<double>>& g = m.geometry;
    const MemberStiffness<Twofold<double>>& k = m.stiffness;
    const std::array<Twofold<double>, count> all{
        g.x.x,           g.x.y,           g.x.z,         g.y.x,           g.y.y,           g.y.z,
        g.z.x,           g.z.y,           g.z.z,         g.per_length,    k.axial,         k.torsion,
        k.about_z.start, k.about_z.cross, k.about_z.end, k.about_z.shear, k.about_y.start, k.about_y.cross,
        k.about_y.end,   k.about_y.shear, g.arm_start.x, g.arm_start.y,   g.arm_start.z,   g.arm_end.x,
        g.arm_end.y,     g.arm_end.z};
    for (std::size_t i = 0; i < count; ++i) {
      value[i][0][lane] = all[i].hi;
      value[i][1][lane] = all[i].lo;
    }
    has_arms = has_arms || g.has_arms;
  }
};

/// Where the four are. Lanes that are no member stand at node 0.
struct MemberGroup {
  static constexpr std::uint32_t none = 0xFFFF'FFFF;
  std::array<std::uint32_t, twofold_lanes> from{}, to{}, member{none, none, none, none};
  std::uint32_t lanes = 0;  ///< which MemberLanes
};

/// Twofold numbers of a group, kept for what is left to do member by member: the forces q (six), and the shear forces
/// (q2 + q3)/L and (q4 + q5)/L.
using KeptForces = std::array<std::array<std::array<double, twofold_lanes>, 2>, 8>;

}  // namespace baywork::detail

#ifdef BAYWORK_DISPATCHED_KERNELS

namespace baywork::detail::twofold_lane {

struct Strain {
  Twofolds v[6], q[6], across[2];
};

BAYWORK_LANES_HELPER void load(const MemberLanes& m, std::size_t first, std::size_t count, Twofolds* out) {
  for (std::size_t i = 0; i < count; ++i) {
    out[i].hi = at(m.value[first + i][0].data()).v;
    out[i].lo = at(m.value[first + i][1].data()).v;
  }
}

/// Six motions of four nodes; `u` holds (hi, lo) six times per node.
BAYWORK_LANES_HELPER void gather(const double* u, const std::array<std::uint32_t, twofold_lanes>& node, Twofolds* out) {
  for (std::size_t i = 0; i < 3; ++i) {
    Lanes a = at(u + 12 * std::size_t{node[0]} + 4 * i).v, b = at(u + 12 * std::size_t{node[1]} + 4 * i).v;
    Lanes c = at(u + 12 * std::size_t{node[2]} + 4 * i).v, d = at(u + 12 * std::size_t{node[3]} + 4 * i).v;
    transpose(a, b, c, d);
    out[2 * i].hi = a;
    out[2 * i].lo = b;
    out[2 * i + 1].hi = c;
    out[2 * i + 1].lo = d;
  }
}
/// Adds six forces to each of four nodes, one node after the other: some may be the same.
BAYWORK_LANES_HELPER void scatter(const Twofolds* f, const std::array<std::uint32_t, twofold_lanes>& node,
                                  double* force) {
  for (std::size_t i = 0; i < 3; ++i) {
    Lanes a = f[2 * i].hi, b = f[2 * i].lo, c = f[2 * i + 1].hi, d = f[2 * i + 1].lo;
    transpose(a, b, c, d);
    add_pair(force + 12 * std::size_t{node[0]} + 4 * i, a);
    add_pair(force + 12 * std::size_t{node[1]} + 4 * i, b);
    add_pair(force + 12 * std::size_t{node[2]} + 4 * i, c);
    add_pair(force + 12 * std::size_t{node[3]} + 4 * i, d);
  }
}

/// BendingStiffness::operator(), v and q being those of start and end.
BAYWORK_LANES_HELPER void bend(const MemberLanes& m, std::size_t first, const Twofolds* v, Twofolds* q) {
  Twofolds k[4], turn, common;
  load(m, first, 4, k);
  subtract(v[0], v[1], turn);
  multiply(k[3], turn, common);
  multiply(k[0], v[0], q[0]);
  add_product(k[1], v[1], q[0]);
  add(q[0], common, q[0]);
  multiply(k[1], v[0], q[1]);
  add_product(k[2], v[1], q[1]);
  subtract(q[1], common, q[1]);
}

/// MemberGeometry::deformations and MemberStiffness::operator*.
BAYWORK_LANES_HELPER void strain(const MemberLanes& m, const MemberGroup& g, const double* u, Strain& s) {
  Twofolds start[6], end[6], axis[3], d[3], turn[3], chord, per_length;
  gather(u, g.from, start);
  gather(u, g.to, end);
  load(m, MemberLanes::per_length, 1, &per_length);
  for (std::size_t i = 0; i < 3; ++i) {
    subtract(end[i], start[i], d[i]);
    subtract(end[3 + i], start[3 + i], turn[i]);
  }
  if (m.has_arms) {
    Twofolds arm[3];
    load(m, MemberLanes::arm_end, 3, arm);
    add_cross(end + 3, arm, d);
    load(m, MemberLanes::arm_start, 3, arm);
    subtract_cross(start + 3, arm, d);
  }
  load(m, MemberLanes::x, 3, axis);
  dot(axis, d, s.v[0]);
  dot(axis, turn, s.v[1]);
  load(m, MemberLanes::y, 3, axis);
  dot(axis, d, chord);
  multiply(chord, per_length, chord);
  dot(axis, start + 3, s.v[4]);
  dot(axis, end + 3, s.v[5]);
  load(m, MemberLanes::z, 3, axis);
  dot(axis, start + 3, s.v[2]);
  dot(axis, end + 3, s.v[3]);
  subtract(s.v[2], chord, s.v[2]);
  subtract(s.v[3], chord, s.v[3]);
  dot(axis, d, chord);
  multiply(chord, per_length, chord);
  add(s.v[4], chord, s.v[4]);
  add(s.v[5], chord, s.v[5]);
  // Motions of a long girder are far larger than its strains, and what their sums lost would make a strain's lo as large
  // as its hi: a node would then sum forces of both signs with errors that leave it out of balance, and bend the girder.
  for (Twofolds& v : s.v) tidy(v);

  Twofolds k[2];
  load(m, MemberLanes::axial, 2, k);
  multiply(k[0], s.v[0], s.q[0]);
  multiply(k[1], s.v[1], s.q[1]);
  bend(m, MemberLanes::about_z, s.v + 2, s.q + 2);
  bend(m, MemberLanes::about_y, s.v + 4, s.q + 4);
  for (std::size_t i = 0; i < 2; ++i) {
    add(s.q[2 + 2 * i], s.q[3 + 2 * i], s.across[i]);
    multiply(s.across[i], per_length, s.across[i]);
  }
}

BAYWORK_LANES_HELPER void see(const Strain& s, Largest& largest) {
  see(s.q[0].hi + s.q[0].lo, largest.force);
  see(s.across[0].hi + s.across[0].lo, largest.force);
  see(s.across[1].hi + s.across[1].lo, largest.force);
  for (std::size_t i = 1; i < 6; ++i) see(s.q[i].hi + s.q[i].lo, largest.moment);
}

/// force += sign K u over `count` groups (MemberGeometry::add_end_forces); their forces are seen in sizes[2].
BAYWORK_LANES_FUNCTION void add_end_forces(const MemberLanes* members, const MemberGroup* groups, std::size_t count,
                                           const double* u, double sign, double* force, double* sizes) {
  Largest largest;
  for (const MemberGroup* g = groups; g != groups + count; ++g) {
    const MemberLanes& m = members[g->lanes];
    Strain s;
    strain(m, *g, u, s);
    see(s, largest);
    for (Twofolds& q : s.q) q.hi *= sign, q.lo *= sign;
    for (Twofolds& q : s.across) q.hi *= sign, q.lo *= sign;
    Twofolds x[3], y[3], z[3], on_start[6], on_end[6];
    load(m, MemberLanes::x, 3, x);
    load(m, MemberLanes::y, 3, y);
    load(m, MemberLanes::z, 3, z);
    for (std::size_t i = 0; i < 3; ++i) {
      multiply(s.q[0], x[i], on_end[i]);
      subtract_product(s.across[0], y[i], on_end[i]);
      add_product(s.across[1], z[i], on_end[i]);
      on_start[i].hi = -on_end[i].hi;
      on_start[i].lo = -on_end[i].lo;
      Twofolds twist;
      multiply(s.q[1], x[i], twist);
      multiply(s.q[2], z[i], on_start[3 + i]);
      add_product(s.q[4], y[i], on_start[3 + i]);
      subtract(on_start[3 + i], twist, on_start[3 + i]);
      multiply(s.q[3], z[i], on_end[3 + i]);
      add_product(s.q[5], y[i], on_end[3 + i]);
      add(on_end[3 + i], twist, on_end[3 + i]);
    }
    if (m.has_arms) {
      Twofolds arm[3];
      load(m, MemberLanes::arm_start, 3, arm);
      subtract_cross(arm, on_end, on_start + 3);
      load(m, MemberLanes::arm_end, 3, arm);
      add_cross(arm, on_end, on_end + 3);
    }
    scatter(on_start, g->from, force);
    scatter(on_end, g->to, force);
  }
  tell(largest, sizes);
}

/// The same forces, seen in sizes[2] alone.
BAYWORK_LANES_FUNCTION void see_forces(const MemberLanes* members, const MemberGroup* groups, std::size_t count,
                                       const double* u, double* sizes) {
  Largest largest;
  for (const MemberGroup* g = groups; g != groups + count; ++g) {
    Strain s;
    strain(members[g->lanes], *g, u, s);
    see(s, largest);
  }
  tell(largest, sizes);
}

/// Numbers `first` to `first` + 3 of four members' answers.
BAYWORK_LANES_HELPER void put(const Lanes& r0, const Lanes& r1, const Lanes& r2, const Lanes& r3, const MemberGroup& g,
                              std::size_t first, double* answers) {
  Lanes a = r0, b = r1, c = r2, d = r3;
  transpose(a, b, c, d);
  const auto to = [&g, first, answers](std::size_t lane) { return answers + 18 * std::size_t{g.member[lane]} + first; };
  if (g.member[0] != MemberGroup::none) at(to(0)).v = a;
  if (g.member[1] != MemberGroup::none) at(to(1)).v = b;
  if (g.member[2] != MemberGroup::none) at(to(2)).v = c;
  if (g.member[3] != MemberGroup::none) at(to(3)).v = d;
}

/// Answers of members as if no load acted along them, into `answers` (18 numbers per member of the frame); their forces
/// are seen in sizes[2]. With `kept`, which takes the forces of one group to twice the digits, they are not seen.
BAYWORK_LANES_FUNCTION void answer(const MemberLanes* members, const MemberGroup* groups, std::size_t count,
                                   const double* u, double* answers, KeptForces* kept, double* sizes) {
  Largest largest;
  for (const MemberGroup* g = groups; g != groups + count; ++g) {
    Strain s;
    strain(members[g->lanes], *g, u, s);
    if (kept == nullptr) {
      see(s, largest);
    } else {
      for (std::size_t i = 0; i < 8; ++i) {
        const Twofolds& f = i < 6 ? s.q[i] : s.across[i - 6];
        at((*kept)[i][0].data()).v = f.hi;
        at((*kept)[i][1].data()).v = f.lo;
      }
    }
    const Lanes axial = s.q[0].hi + s.q[0].lo, torque = s.q[1].hi + s.q[1].lo;
    const Lanes y = s.across[0].hi + s.across[0].lo, z = s.across[1].hi + s.across[1].lo;
    put(-axial, y, -z, -torque, *g, 0, answers);
    put(s.q[4].hi + s.q[4].lo, s.q[2].hi + s.q[2].lo, axial, -y, *g, 4, answers);
    put(z, torque, s.q[5].hi + s.q[5].lo, s.q[3].hi + s.q[3].lo, *g, 8, answers);
    put(s.v[0].hi + s.v[0].lo, s.v[1].hi + s.v[1].lo, s.v[2].hi + s.v[2].lo, s.v[3].hi + s.v[3].lo, *g, 12, answers);
    const Lanes v4 = s.v[4].hi + s.v[4].lo, v5 = s.v[5].hi + s.v[5].lo;
    for (std::size_t lane = 0; lane < twofold_lanes; ++lane) {
      if (g->member[lane] == MemberGroup::none) continue;
      answers[18 * std::size_t{g->member[lane]} + 16] = v4[lane];
      answers[18 * std::size_t{g->member[lane]} + 17] = v5[lane];
    }
  }
  tell(largest, sizes);
}

}  // namespace baywork::detail::twofold_lane

#endif
