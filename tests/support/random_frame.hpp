// SPDX-License-Identifier: MIT
// Random sound space frames, ladder- and box-like with random braces, and random load cases on them. SI units.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/member_axes.hpp>

#include "random.hpp"

/// Roughly a tube; no two stiffnesses alike.
inline baywork::FrameSection random_section(Random& r) {
  baywork::FrameSection s;
  const double d = r.over_orders(0.03, 0.2), t = d * r.in(0.03, 0.15);
  s.E = r.chance(0.5) ? 70e9 : 210e9;
  s.G = s.E / 2.6;
  s.A = 3.1 * d * t;
  s.Iy = s.A * d * d / 8 * r.in(0.5, 1.5);
  s.Iz = s.A * d * d / 8 * r.in(0.5, 1.5);
  s.J = s.Iy + s.Iz;
  s.shear_y = r.chance(0.8) ? s.A * r.in(0.3, 0.9) : baywork::rigid_stiffness;
  s.shear_z = r.chance(0.8) ? s.A * r.in(0.3, 0.9) : baywork::rigid_stiffness;
  s.thermal_expansion = r.in(1e-5, 2.5e-5);
  return s;
}

/// A frame whose first `chords` nodes are clamped; from 2 to 12 nodes. Every bar has its `up` given.
struct RandomFrame {
  baywork::Frame frame;
  std::size_t chords = 1, first_cross_member = 0, first_brace = 0;
};

inline RandomFrame random_frame(Random& r) {
  using baywork::Frame;
  using baywork::Member;
  RandomFrame out;
  Frame& f = out.frame;
  const std::size_t n = out.chords = 1 + r.below(4), bays = 1 + r.below(12 / n > 1 ? 12 / n - 1 : 1);
  const double depth = r.in(0.3, 1.5), bay = r.in(0.4, 3);
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t c = 0; c < n; ++c) {
      const double turn = 6.283185307179586 * static_cast<double>(c) / static_cast<double>(n) + 0.3;
      const baywork::Vec3<> at{bay * static_cast<double>(i), depth * std::cos(turn), depth * std::sin(turn)};
      f.add_node(at + r.vector(0.1 * depth));
    }
  const auto add = [&](std::size_t a, std::size_t b) {
    Member m;
    m.from = a;
    m.to = b;
    m.section = random_section(r);
    const baywork::Vec3<> along = f.nodes[b].at - f.nodes[a].at;
    do m.up = r.vector(1);
    while (length(cross(m.up, along)) < 0.2 * length(along) * length(m.up));
    m.roll = r.chance(0.5) ? r.in(-3, 3) : 0.0;
    const double bend = m.section.E * m.section.Iy / length(along);
    for (baywork::MemberEnd* e : {&m.start, &m.end}) {
      if (r.chance(0.2)) e->about_y = bend * r.over_orders(0.1, 50);
      if (r.chance(0.2)) e->about_z = bend * r.over_orders(0.1, 50);
      if (r.chance(0.1)) e->torsion = bend * r.over_orders(0.1, 50);
      if (r.chance(0.1)) e->axial = m.section.E * m.section.A / length(along) * r.over_orders(0.1, 50);
      if (r.chance(0.1)) e->shear_y = m.section.E * m.section.A / length(along) * r.over_orders(0.01, 50);
      if (r.chance(0.15)) e->offset = r.vector(0.08 * depth);
    }
    f.add_member(m);
  };
  for (std::size_t i = 0; i < bays; ++i)
    for (std::size_t c = 0; c < n; ++c) add(n * i + c, n * (i + 1) + c);
  out.first_cross_member = f.members.size();
  for (std::size_t i = 1; i <= bays; ++i)
    for (std::size_t c = 0; n > 1 && c < (n == 2 ? 1 : n); ++c) add(n * i + c, n * i + (c + 1) % n);
  out.first_brace = f.members.size();
  for (std::size_t k = r.below(4); n > 1 && k-- > 0;) {
    const std::size_t a = r.below(f.nodes.size()), b = r.below(f.nodes.size());
    if (a == b) continue;
    add(a, b);
    Member& m = f.members.back();
    if (r.chance(0.5)) {
      m.kind = baywork::MemberKind::axial;
    } else {
      m.start.about_y = m.start.about_z = 0;
      if (r.chance(0.5)) m.end.about_y = m.end.about_z = 0;
    }
  }
  for (std::size_t c = 0; c < n; ++c) f.clamp(c);
  return out;
}

/// Forces and couples on some free nodes, at least one.
inline void random_node_loads(Random& r, const RandomFrame& f, baywork::FrameLoads& loads) {
  const std::size_t last = f.frame.nodes.size() - 1;
  for (std::size_t n = f.chords; n <= last; ++n) {
    if (n < last && r.chance(0.4)) continue;
    loads.force(n, r.vector(1000));
    if (r.chance(0.5)) loads.couple(n, r.vector(500));
  }
}

/// Loads along some members: forces, couples, partial trapezoids, temperatures.
inline void random_member_loads(Random& r, const RandomFrame& f, baywork::FrameLoads& loads) {
  for (std::size_t i = 0; i < f.frame.members.size(); ++i) {
    const double l = axes_of(f.frame, f.frame.members[i]).length, a = r.in(0, 0.5) * l, b = r.in(0.5, 1) * l;
    const bool axial = f.frame.members[i].kind == baywork::MemberKind::axial;
    switch (r.below(axial ? 4 : 8)) {
      case 0: loads.line(i, a, b, r.vector(500), r.vector(500)); break;
      case 1: loads.force_on(i, a, r.vector(1000)); break;
      case 2: loads.temperature(i, r.in(-30, 30), r.in(-99, 99), r.in(-99, 99)); break;
      case 4: loads.couple_on(i, b, r.vector(300)); break;
      default: break;
    }
  }
}
