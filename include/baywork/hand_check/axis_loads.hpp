// SPDX-License-Identifier: MIT
// A response's loads brought to the girder's axis: as the loads of a beam, a shaft and a strut.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/closed_form/beam_loads.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/response/response.hpp>

namespace baywork {

/// Loads by place along a straight axis through (y0, z0). Signs of closed_form::BeamLoads: vertical ones down (along
/// -z), horizontal ones along -y. A couple that raises the sagging moment is z Fx + My in the vertical plane and
/// y Fx - Mz in the horizontal one (moment pulls at small z, small y; moments on a cut: My = int z s dA, Mz = -int y s
/// dA). Torques are about +x, kept as "point" and "line" loads [N m, N m/m]; pulls are along +x.
struct AxisLoads {
  closed_form::BeamLoads<> vertical, horizontal, torque, axial;
  Vec3<> points{}, lines{};  ///< sums of forces at places and of spread forces [N]
  double size = 0;           ///< sum of the magnitudes of all forces [N]
  bool temperature = false;
};

namespace detail {

class AxisLoadMaker {
 public:
  AxisLoadMaker(const Response& r, double y0, double z0) : r_(r), length_(r.girder().span()), y0_(y0), z0_(z0) {}

  AxisLoads make() {
    using Kind = MemberLoad::Kind;
    for (const NodeLoad& l : r_.loads().on_nodes) point(r_.model().frame.nodes[l.node].at, l.force, l.couple);
    for (const MemberLoad& l : r_.loads().on_members) {
      const MemberAxes<>& axes = r_.analysis().axes(l.member);
      const Vec3<> at_a = axes.start + l.a * axes.x, at_b = axes.start + l.b * axes.x;
      switch (l.kind) {
        case Kind::temperature: out_.temperature = true; break;
        case Kind::force: point(at_a, turned(axes, l.first), {}); break;
        case Kind::couple: point(at_a, {}, turned(axes, l.first)); break;
        case Kind::line: line(at_a, at_b, l.b - l.a, turned(axes, l.first), turned(axes, l.last)); break;
      }
    }
    return std::move(out_);
  }

 private:
  /// A bar's own components turned to x, y, z; what that leaves by rounding alone acts in no direction.
  static Vec3<> turned(const MemberAxes<>& axes, const Vec3<>& own) {
    Vec3<> v = axes.to_global(own);
    const double least = 1e-12 * length(v);
    for (double* c : {&v.x, &v.y, &v.z})
      if (std::abs(*c) <= least) *c = 0.0;
    return v;
  }
  double on_axis(double x) const { return (std::min)((std::max)(x, 0.0), length_); }
  double torque(const Vec3<>& at, const Vec3<>& f) const { return (at.y - y0_) * f.z - (at.z - z0_) * f.y; }

  void count(const Vec3<>& f, Vec3<>& sum) {
    sum += f;
    out_.size += std::sqrt(dot(f, f));
  }
  void couples(double x, double vertical, double horizontal) {
    if (vertical != 0.0) out_.vertical.couples.push_back({vertical, x});
    if (horizontal != 0.0) out_.horizontal.couples.push_back({horizontal, x});
  }
  static void add(closed_form::BeamLoads<>& to, double P, double x) {
    if (P != 0.0) to.points.push_back({P, x});
  }
  static void add(closed_form::BeamLoads<>& to, double qa, double qb, double a, double b) {
    if (qa != 0.0 || qb != 0.0) to.lines.push_back({qa, qb, a, b});
  }

  void point(const Vec3<>& at, const Vec3<>& f, const Vec3<>& c) {
    count(f, out_.points);
    put(at, f, c);
  }
  void put(const Vec3<>& at, const Vec3<>& f, const Vec3<>& c) {
    const double x = on_axis(at.x);
    add(out_.vertical, -f.z, x);
    add(out_.horizontal, -f.y, x);
    add(out_.axial, f.x, x);
    add(out_.torque, torque(at, f) + c.x, x);
    couples(x, (at.z - z0_) * f.x + c.y, (at.y - y0_) * f.x - c.z);
  }

  /// From qa at `a` to qb at `b` per metre of a bar of length l. What acts square to the axis becomes one force there.
  void line(const Vec3<>& a, const Vec3<>& b, double l, const Vec3<>& qa, const Vec3<>& qb) {
    if (!(l > 0)) return;
    const double run = b.x - a.x;
    if (run < -1e-9 * length_) return line(b, a, l, qb, qa);
    const Vec3<> total = (l / 2) * (qa + qb);
    count(total, out_.lines);
    if (std::abs(run) <= 1e-9 * length_) {  // square to the axis: two triangles, each at its own centre
      put(a + (1.0 / 3) * (b - a), (l / 2) * qa, {});
      put(a + (2.0 / 3) * (b - a), (l / 2) * qb, {});
      return;
    }
    const double f = l / run, xa = on_axis(a.x), xb = on_axis(b.x);
    add(out_.vertical, -f * qa.z, -f * qb.z, xa, xb);
    add(out_.horizontal, -f * qa.y, -f * qb.y, xa, xb);
    add(out_.axial, f * qa.x, f * qb.x, xa, xb);
    add(out_.torque, f * torque(a, qa), f * torque(b, qb), xa, xb);
    const Vec3<> middle = 0.5 * (a + b);  // beams know no spread couples: one in the middle
    couples(middle.x, (middle.z - z0_) * total.x, (middle.y - y0_) * total.x);
  }

  const Response& r_;
  double length_, y0_, z0_;
  AxisLoads out_;
};

/// Sum of the magnitudes of loads, couples over `arm` [N].
inline double size_of(const closed_form::BeamLoads<>& loads, double arm) {
  double sum = 0;
  for (const auto& p : loads.points) sum += std::abs(p.P);
  for (const auto& q : loads.lines) sum += 0.5 * (std::abs(q.qa) + std::abs(q.qb)) * (q.b - q.a);
  for (const auto& c : loads.couples) sum += std::abs(c.C) / arm;
  return sum;
}

}  // namespace detail

inline AxisLoads axis_loads(const Response& r, double y0, double z0) { return detail::AxisLoadMaker(r, y0, z0).make(); }

}  // namespace baywork
