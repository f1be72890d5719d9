// SPDX-License-Identifier: MIT
// A frame with its loads and its answer told anew: turned, mirrored, in other units.
#pragma once

#include <array>
#include <cstddef>
#include <utility>

#include <baywork/frame.hpp>
#include <baywork/solve.hpp>

namespace physics {

using namespace baywork;
using Six = std::array<double, 6>;
using Load = MemberLoad::Kind;

inline Vec3<> forces(const Six& s) { return {s[0], s[1], s[2]}; }
inline Vec3<> moments(const Six& s) { return {s[3], s[4], s[5]}; }

/// A rotation (hand +1), or a rotation with mirroring (hand -1), of a frame, its loads and its answer. Mirrored axes
/// would be left-handed: local y turns round instead, and what turns (couples, rotations) turns the other way.
struct Turn {
  std::array<Vec3<>, 3> row{};
  double hand = 1;

  Vec3<> operator()(const Vec3<>& v) const { return {dot(row[0], v), dot(row[1], v), dot(row[2], v)}; }
  Vec3<> local(const Vec3<>& v) const { return {v.x, hand * v.y, v.z}; }
  Vec3<> local_couple(const Vec3<>& v) const { return hand * local(v); }
  Six global(const Six& s) const { return join((*this)(forces(s)), hand * (*this)(moments(s))); }
  Six local(const Six& s) const { return join(local(forces(s)), local_couple(moments(s))); }
  static Six join(const Vec3<>& a, const Vec3<>& b) { return {a.x, a.y, a.z, b.x, b.y, b.z}; }

  Frame of(Frame f) const {
    for (Node& n : f.nodes) n.at = (*this)(n.at);
    for (Member& m : f.members) {
      m.up = (*this)(m.up);
      m.roll *= hand;
      m.start.offset = (*this)(m.start.offset);
      m.end.offset = (*this)(m.end.offset);
    }
    return f;
  }
  FrameLoads of(FrameLoads l) const {
    for (NodeLoad& p : l.on_nodes) p = {p.node, (*this)(p.force), hand * (*this)(p.couple)};
    for (MemberLoad& p : l.on_members) {
      p.first = p.kind == Load::couple ? local_couple(p.first) : local(p.first);
      p.last = local(p.last);
    }
    for (const SupportMotion& s : std::exchange(l.motions, {})) {
      Six d{};
      d[static_cast<std::size_t>(s.motion)] = s.displacement;
      d = global(d);
      for (std::size_t k = 0; k < 6; ++k) l.settle(s.node, static_cast<Motion>(k), d[k]);
    }
    return l;
  }
  FrameAnswer of(FrameAnswer a) const {
    for (std::size_t n = 0; n < a.motions.size(); n += 6) {
      Six u{};
      for (std::size_t k = 0; k < 6; ++k) u[k] = a.motions[n + k];
      u = global(u);
      for (std::size_t k = 0; k < 6; ++k) a.motions[n + k] = u[k];
    }
    for (MemberAnswer& m : a.members) {
      m.start = local(m.start);
      m.end = local(m.end);
    }
    for (Reaction& s : a.reactions) s.value = global(s.value);
    return a;
  }
};

/// The same frame, loads and answer with a metre written as `metre` units of length and a newton as `newton` of force.
struct Units {
  double metre = 1, newton = 1;

  Frame of(Frame f) const {
    const double m = metre, n = newton;
    for (Node& p : f.nodes) p.at = m * p.at;
    for (Member& b : f.members) {
      FrameSection& s = b.section;
      for (double* x : {&s.E, &s.G}) *x *= n / (m * m);
      for (double* x : {&s.A, &s.shear_y, &s.shear_z}) *x *= m * m;
      for (double* x : {&s.Iy, &s.Iz, &s.J}) *x *= m * m * m * m;
      for (MemberEnd* e : {&b.start, &b.end}) {
        for (double* x : {&e->axial, &e->shear_y, &e->shear_z}) *x *= n / m;
        for (double* x : {&e->torsion, &e->about_y, &e->about_z}) *x *= n * m;
        e->offset = m * e->offset;
      }
    }
    for (Support& s : f.supports)
      for (std::size_t k = 0; k < 6; ++k) s.motion[k].stiffness *= k < 3 ? n / m : n * m;
    return f;
  }
  FrameLoads of(FrameLoads l) const {
    for (NodeLoad& p : l.on_nodes) p = {p.node, newton * p.force, newton * metre * p.couple};
    for (MemberLoad& p : l.on_members) {
      p.a *= metre;
      p.b *= metre;
      const double f = p.kind == Load::line ? newton / metre : (p.kind == Load::force ? newton : newton * metre);
      const bool heat = p.kind == Load::temperature;
      p.first = heat ? Vec3<>{p.first.x, p.first.y / metre, p.first.z / metre} : f * p.first;
      p.last = heat ? p.last : f * p.last;
    }
    for (SupportMotion& s : l.motions) s.displacement *= static_cast<int>(s.motion) < 3 ? metre : 1.0;
    return l;
  }
  FrameAnswer of(FrameAnswer a) const {
    for (std::size_t i = 0; i < a.motions.size(); ++i) a.motions[i] *= i % 6 < 3 ? metre : 1.0;
    const auto scale = [this](Six& s) {
      for (std::size_t k = 0; k < 6; ++k) s[k] *= k < 3 ? newton : newton * metre;
    };
    for (MemberAnswer& m : a.members) {
      scale(m.start);
      scale(m.end);
    }
    for (Reaction& s : a.reactions) scale(s.value);
    return a;
  }
};

}  // namespace physics
