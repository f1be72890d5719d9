// SPDX-License-Identifier: MIT
// Random space frames that are stable and neither long nor slender, loads of every kind for them, and how far two
// answers are apart.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <doctest/doctest.h>

#include <baywork/frame.hpp>
#include <baywork/solve.hpp>

#include "varied_frames.hpp"

namespace physics {

using namespace baywork;
using varied::Random;

/// One to four chords of 2 to 12 joints in all, posts between them, and at least one brace, which is the last member;
/// clamped at one end. Every bar's joints may be soft or set off, those of braces also released.
inline Frame space_frame(Random& r) {
  Frame f;
  const auto bar = [&](std::size_t from, std::size_t to, bool may_be_released) {
    Member m;
    m.from = from;
    m.to = to;
    m.section = varied::section(r, r.in(0.05, 0.15));
    m.up = r.vector(1.0);
    m.roll = r.in(-3, 3);
    const double rod = m.section.E * m.section.A, bend = m.section.E * m.section.Iz;  // bars are about 1 m long
    for (MemberEnd* e : {&m.start, &m.end}) {
      if (r.chance(0.2)) e->offset = r.vector(0.05);
      if (r.chance(0.2)) e->about_y = bend * r.over_orders(0.1, 100);
      if (r.chance(0.2)) e->about_z = bend * r.over_orders(0.1, 100);
      if (r.chance(0.2)) e->torsion = bend * r.over_orders(0.1, 100);
      if (r.chance(0.2)) e->shear_y = bend * r.over_orders(1, 1000);
      if (r.chance(0.2)) e->shear_z = bend * r.over_orders(1, 1000);
      if (r.chance(0.2)) e->axial = rod * r.over_orders(0.1, 100);
      if (may_be_released && r.chance(0.3)) e->about_y = 0;
      if (may_be_released && r.chance(0.3)) e->about_z = 0;
    }
    if (may_be_released && r.chance(0.2)) (r.chance(0.5) ? m.start : m.end).axial = 0;
    if (may_be_released && r.chance(0.2)) (r.chance(0.5) ? m.start : m.end).torsion = 0;
    if (may_be_released && r.chance(0.3)) m.kind = MemberKind::axial;
    f.add_member(m);
  };
  const std::size_t chords = 1 + r.below(4), stations = 2 + r.below(12 / chords - 1), nodes = chords * stations;
  for (std::size_t i = 0; i < nodes; ++i) {
    const std::size_t k = i % chords;
    f.add_node(Vec3<>{static_cast<double>(i / chords), k == 1 || k == 2 ? 1.0 : 0.0, k >= 2 ? 1.0 : 0.0} +
               r.vector(0.15));
  }
  for (std::size_t i = 0; i < nodes; ++i) {
    if (i >= chords) bar(i - chords, i, false);
    if (i % chords > 0) bar(i - 1, i, false);
  }
  for (std::size_t i = 0; i < 1 + nodes / 3; ++i) {
    const std::size_t from = r.below(nodes);
    bar(from, (from + 1 + r.below(nodes - 1)) % nodes, true);
  }
  for (std::size_t k = 0; k < chords; ++k) f.clamp(k);
  if (nodes > chords + 1 && r.chance(0.3)) f.clamp(nodes - 1);
  if (nodes > chords + 1 && r.chance(0.5)) {  // alike in all directions: rotation changes nothing
    const double stiffness = r.over_orders(1e4, 1e8);
    for (const Motion m : {Motion::ux, Motion::uy, Motion::uz}) f.spring(nodes - 2, m, stiffness);
    for (const Motion m : {Motion::rx, Motion::ry, Motion::rz}) f.spring(nodes - 2, m, stiffness / 10);
  }
  return f;
}

/// Forces and couples on joints: forces at least on the last two, of which one is free.
inline FrameLoads node_loads(Random& r, const Frame& f) {
  FrameLoads loads;
  for (std::size_t n = 1; n <= 2; ++n) loads.force(f.nodes.size() - n, r.vector(1e3));
  for (std::size_t n = r.below(3); n > 0; --n) loads.couple(r.below(f.nodes.size()), r.vector(1e3));
  for (std::size_t n = r.below(3); n > 0; --n) loads.force(r.below(f.nodes.size()), r.vector(1e3));
  return loads;
}
inline void add_settlements(Random& r, const Frame& f, FrameLoads& loads) {
  for (std::size_t n = r.below(3); n > 0; --n)
    loads.settle(f.supports[r.below(f.supports.size())].node, static_cast<Motion>(r.below(6)), r.in(-1e-3, 1e-3));
}
/// Loads of every kind.
inline FrameLoads any_loads(Random& r, const Frame& f) {
  varied::Case c{"", f, node_loads(r, f)};
  varied::add_loads(r, c);
  add_settlements(r, f, c.loads);
  return c.loads;
}

/// Calls see(a, b, kind) for all numbers of two answers; kinds: displacement, rotation, force, moment.
template <class See>
void for_numbers(const FrameAnswer& a, const FrameAnswer& b, See see) {
  for (std::size_t i = 0; i < a.motions.size(); ++i) see(a.motions[i], b.motions[i], i % 6 < 3 ? 0U : 1U);
  const auto six = [&see](const Six& x, const Six& y) {
    for (std::size_t k = 0; k < 6; ++k) see(x[k], y[k], k < 3 ? 2U : 3U);
  };
  for (std::size_t i = 0; i < a.members.size(); ++i) {
    six(a.members[i].start, b.members[i].start);
    six(a.members[i].end, b.members[i].end);
  }
  for (std::size_t i = 0; i < a.reactions.size(); ++i) six(a.reactions[i].value, b.reactions[i].value);
}

/// Largest difference of two answers, each kind against its largest value, or the other kind's with a lever of a metre.
inline double difference(const FrameAnswer& a, const FrameAnswer& b, double metre = 1) {
  REQUIRE(a.motions.size() == b.motions.size());
  std::array<double, 4> size{}, apart{};
  for_numbers(a, b, [&](double x, double y, std::size_t kind) {
    size[kind] = (std::max)(size[kind], std::abs(x));
    apart[kind] = (std::max)(apart[kind], std::abs(x - y));
  });
  const double motion = (std::max)(size[0], size[1] * metre), force = (std::max)(size[2], size[3] / metre);
  return (std::max)({apart[0] / motion, apart[1] * metre / motion, apart[2] / force, apart[3] / metre / force});
}

}  // namespace physics
