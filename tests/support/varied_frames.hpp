// SPDX-License-Identifier: MIT
// Random frames and loads of several characters: tangles with every kind of joint, slender cantilevers, long girders.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>

#include <baywork/frame.hpp>

#include "random.hpp"

namespace varied {

using ::Random;

struct Case {
  std::string character;
  baywork::Frame frame;
  baywork::FrameLoads loads;
};

/// A tube-like section, or one with unlike axes; half of them without shear strain.
inline baywork::FrameSection section(Random& r, double diameter) {
  const double area = 3.0 * diameter * diameter * r.over_orders(0.02, 0.2);
  baywork::FrameSection s;
  s.E = r.chance(0.5) ? 70e9 : 210e9;
  s.G = s.E / 2.6;
  s.A = area;
  s.Iy = s.Iz = area * diameter * diameter / 9.0;
  s.J = s.Iy + s.Iz;
  if (r.chance(0.4)) s.Iz *= r.over_orders(0.05, 1.0);
  if (r.chance(0.5)) s.shear_y = s.shear_z = area / 2.0;
  s.thermal_expansion = r.in(10e-6, 25e-6);
  return s;
}

/// Right-handed unit axes that point anywhere.
inline std::array<baywork::Vec3<>, 3> any_axes(Random& r) {
  const baywork::Vec3<> x = unit(r.vector(1.0) + baywork::Vec3<>{0, 0, 2});
  const baywork::Vec3<> y = unit(cross(x, r.vector(1.0) + baywork::Vec3<>{2, 0, 0}));
  return {x, y, cross(x, y)};
}

/// One kind of load alone, or several kinds together; on random parts.
inline void add_loads(Random& r, Case& c) {
  const std::size_t nodes = c.frame.nodes.size(), members = c.frame.members.size();
  const bool single = r.chance(0.6);
  const std::size_t only = r.below(7);
  const auto wanted = [&](std::size_t kind) { return single ? kind == only : r.chance(0.5); };
  for (std::size_t repeat = 0; repeat < 3; ++repeat) {
    const std::size_t m = r.below(members);
    const double l = axes_of(c.frame, c.frame.members[m]).length, a = r.in(0, l), b = r.in(a, l);
    const std::size_t n = r.below(nodes), way = r.below(3);
    const baywork::Vec3<> p = r.vector(1e3), q = r.vector(1e3), warmth = r.vector(50);
    if (wanted(0)) c.loads.force(n, p);
    if (wanted(1)) c.loads.couple(n, q);
    if (wanted(2)) c.loads.line(m, a, b, p, q);
    if (wanted(3)) c.loads.force_on(m, a, p);
    if (wanted(4)) c.loads.couple_on(m, b, q);
    if (wanted(5)) c.loads.temperature(m, warmth.x, 2 * warmth.y, 2 * warmth.z);
    if (wanted(6)) c.loads.settle(c.frame.supports[0].node, static_cast<baywork::Motion>(way), r.in(-0.01, 0.01));
  }
}

/// A tree of beams from a clamped joint with further bars between, of all kinds of ends.
inline Case tangle(Random& r) {
  Case c{"tangle", {}, {}};
  const std::size_t n = 2 + r.below(11);
  const double size = r.over_orders(0.5, 20);
  const auto bar = [&](std::size_t from, std::size_t to, bool may_be_released) {
    baywork::Member m;
    m.from = from;
    m.to = to;
    m.section = section(r, size * r.over_orders(0.002, 0.1));
    m.up = r.chance(0.5) ? r.vector(1.0) : baywork::Vec3<>{};
    m.roll = r.chance(0.3) ? r.in(-3, 3) : 0.0;
    for (baywork::MemberEnd* e : {&m.start, &m.end}) {
      if (r.chance(0.3)) e->about_y = r.over_orders(1e2, 1e8);
      if (r.chance(0.3)) e->about_z = r.over_orders(1e2, 1e8);
      if (r.chance(0.2)) e->shear_y = r.over_orders(1e4, 1e9);
      if (r.chance(0.2)) e->shear_z = r.over_orders(1e4, 1e9);
      if (r.chance(0.2)) e->axial = r.over_orders(1e5, 1e9);
      if (r.chance(0.2)) e->torsion = r.over_orders(1e3, 1e7);
      if (r.chance(0.2)) e->offset = r.vector(0.02 * size);
      if (may_be_released && r.chance(0.3)) e->about_y = e->about_z = 0.0;
    }
    if (may_be_released && r.chance(0.2)) m.start.axial = 0.0;
    if (may_be_released && r.chance(0.2)) m.end.torsion = 0.0;
    if (may_be_released && r.chance(0.2)) m.kind = baywork::MemberKind::axial;
    c.frame.add_member(m);
  };
  c.frame.add_node(r.vector(size));
  for (std::size_t i = 1; i < n; ++i) {
    c.frame.add_node(r.vector(size));
    bar(r.below(i), i, false);
  }
  for (std::size_t i = 0; i < n / 2; ++i)
    if (const std::size_t a = r.below(n), b = r.below(n); a != b) bar(a, b, true);
  c.frame.clamp(0);
  if (r.chance(0.3)) c.frame.clamp(n - 1);
  if (const std::size_t sprung = 1 + r.below(n - 1); r.chance(0.5))
    c.frame.spring(sprung, baywork::Motion::uz, r.over_orders(1e3, 1e9));
  add_loads(r, c);
  return c;
}

/// A straight cantilever of 1 to 60 pieces, 10 to 3000 times as long as deep.
inline Case cantilever(Random& r) {
  Case c{"slender cantilever", {}, {}};
  const std::size_t pieces = 1 + r.below(60);
  const double length = r.over_orders(1, 60);
  const baywork::FrameSection s = section(r, length / r.over_orders(10, 3000));
  const baywork::Vec3<> along = any_axes(r)[0];
  for (std::size_t i = 0; i <= pieces; ++i)
    c.frame.add_node((length * static_cast<double>(i) / static_cast<double>(pieces)) * along);
  for (std::size_t i = 0; i < pieces; ++i) c.frame.add_beam(i, i + 1, s);
  c.frame.clamp(0);
  add_loads(r, c);
  if (r.chance(0.3)) {  // a pull alone: its rounding must not bend what is soft across
    c.loads.clear();
    c.loads.force(pieces, 1e4 * along);
  }
  return c;
}

/// Two, three or four chords over up to 60 bays, open or braced, turned anyhow; cantilevered or held at both ends.
inline Case girder(Random& r) {
  Case c{"girder", {}, {}};
  const std::size_t bays = 5 + r.below(56), chords = 2 + r.below(3);
  const double bay = r.over_orders(0.2, 2), depth = r.over_orders(0.2, 2), jitter = r.chance(0.5) ? 0.02 * bay : 0.0;
  const std::array<baywork::Vec3<>, 3> axes = any_axes(r);
  const baywork::FrameSection chord = section(r, 0.06), post = section(r, 0.05), brace = section(r, 0.03);
  const bool braced = r.chance(0.6);
  const std::size_t faces = chords == 2 ? 1 : chords;
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t k = 0; k < chords; ++k) {
      const double turn = 6.283185307179586 * static_cast<double>(k) / static_cast<double>(chords);
      c.frame.add_node((bay * static_cast<double>(i)) * axes[0] + (depth * std::cos(turn)) * axes[1] +
                       (depth * std::sin(turn)) * axes[2] + r.vector(jitter));
    }
  for (std::size_t i = 0; i <= bays; ++i) {
    if (i > 0)
      for (std::size_t k = 0; k < chords; ++k) c.frame.add_beam((i - 1) * chords + k, i * chords + k, chord, axes[1] + axes[2]);
    for (std::size_t k = 0; k < faces; ++k) {
      const std::size_t next = (k + 1) % chords;
      c.frame.add_beam(i * chords + k, i * chords + next, post, axes[0]);
      if (braced && i > 0) {
        const bool up = i % 2 == 0;
        c.frame.add_beam((i - 1) * chords + (up ? k : next), i * chords + (up ? next : k), brace, axes[1] + axes[2]);
      }
    }
  }
  const bool at_both_ends = r.chance(0.5);
  for (std::size_t k = 0; k < chords; ++k) {
    c.frame.clamp(k);
    if (at_both_ends) c.frame.fix(bays * chords + k, {baywork::Motion::ux, baywork::Motion::uy, baywork::Motion::uz});
  }
  add_loads(r, c);
  if (r.chance(0.2)) {  // drawn out along its axis
    c.loads.clear();
    for (std::size_t k = 0; k < chords; ++k) c.loads.force(bays * chords + k - (at_both_ends ? chords : 0), 1e4 * axes[0]);
  }
  return c;
}

inline Case any_case(std::uint64_t seed) {
  Random r(seed);
  const std::size_t character = r.below(4);
  return character == 0 ? girder(r) : (character == 1 ? cantilever(r) : tangle(r));
}

}  // namespace varied
