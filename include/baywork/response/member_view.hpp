// SPDX-License-Identifier: MIT
// One member of a response: forces and displacements at any point, extremes and energy, all exact between nodes.
#pragma once

#include <array>
#include <cstddef>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/response/cut_forces.hpp>
#include <baywork/response/detail/polynomial.hpp>
#include <baywork/solve/frame_answer.hpp>
#include <baywork/solve/member_stiffness.hpp>

namespace baywork {

/// A part of a member's length, 0 at its start and 1 at its end.
struct fraction {
  double value = 0;
};

/// Least and greatest value of a force along a member, and where [m from its start].
template <Scalar S = double>
struct BasicExtremes {
  S least = S(0), greatest = S(0);
  S least_at = S(0), greatest_at = S(0);
  S largest() const { return larger(magnitude(least), magnitude(greatest)); }
  const S& largest_at() const { return value_of(magnitude(least)) > value_of(magnitude(greatest)) ? least_at : greatest_at; }
};
using Extremes = BasicExtremes<double>;

/// Strain energy by the way it is stored [J].
template <Scalar S = double>
struct BasicEnergy {
  S axial = S(0), bending = S(0), shear = S(0), torsion = S(0);
  S total() const { return S(axial + bending + shear + torsion); }
  BasicEnergy& operator+=(const BasicEnergy& e) {
    axial += e.axial;
    bending += e.bending;
    shear += e.shear;
    torsion += e.torsion;
    return *this;
  }
};
using Energy = BasicEnergy<double>;

/// A light view: valid while the response and the analysis it came from live.
template <Scalar S = double>
class BasicMemberView {
 public:
  BasicMemberView(const BasicMember<S>& member, const MemberAxes<S>& axes, const BasicMemberAnswer<S>& answer,
                  const MemberLoads<S>& loads, const Vec3<S>& start_motion, const Vec3<S>& start_turn,
                  const Vec3<S>& end_motion, const Vec3<S>& end_turn)
      : m_(member), axes_(axes), answer_(answer), loads_(loads), us_(start_motion), rs_(start_turn), ue_(end_motion), re_(end_turn) {}

  /// Flexible length [m]; local axes in axes().
  const S& length() const { return axes_.length; }
  const MemberAxes<S>& axes() const { return axes_; }

  /// Cut forces at a fraction of the length; at a point load, on the side asked for.
  BasicCutForces<S> forces(fraction at, CutSide side = CutSide::after) const { return forces_at(S(S(at.value) * length()), side); }
  BasicCutForces<S> forces_at(const S& x, CutSide side = CutSide::after) const {
    if (!is_finite(x) || value_of(x) < -1e-9 * value_of(length()) || value_of(x) > (1 + 1e-9) * value_of(length()))
      fail<BadDescription>("member", "a cut at " + text::number(x) + " m is asked for", "0 to " + text::number(length()) + " m is accepted");
    return detail::cut_forces(answer_.start, loads_, x, side);
  }

  /// Extremes of a component (order of cut_force_names) over the whole member, both sides of every jump included.
  BasicExtremes<S> extremes(std::size_t component) const {
    BasicExtremes<S> e;
    bool first = true;
    const auto take = [&](const S& v, const S& x) {
      if (first || value_of(v) < value_of(e.least)) { e.least = v; e.least_at = x; }
      if (first || value_of(v) > value_of(e.greatest)) { e.greatest = v; e.greatest_at = x; }
      first = false;
    };
    take(detail::cut_forces(answer_.start, loads_, S(0), CutSide::before)[component], S(0));
    detail::for_each_stretch(answer_.start, loads_, length(), [&](const detail::Stretch<S>& s) {
      const std::array<S, 4> c = s.polynomial(component);
      take(c[0], s.from);
      take(detail::evaluate(c, s.length()), s.to);
      const std::array<double, 3> slope{value_of(c[1]), 2 * value_of(c[2]), 3 * value_of(c[3])};
      const auto roots = detail::roots_between(slope, 0.0, value_of(s.length()));
      for (std::size_t i = 0; i < roots.count; ++i) take(detail::evaluate(c, S(roots.at[i])), S(s.from + S(roots.at[i])));
    });
    take(detail::cut_forces(answer_.start, loads_, length(), CutSide::after)[component], length());
    return e;
  }

  /// Places [m] where a combination a·My + b·Mz of the moments changes its sign: points of contraflexure. At most
  /// `capacity` of them are written; returns how many there are.
  std::size_t contraflexure(const S& a, const S& b, double* places, std::size_t capacity) const {
    std::size_t n = 0;
    detail::for_each_stretch(answer_.start, loads_, length(), [&](const detail::Stretch<S>& s) {
      const std::array<S, 4> my = s.polynomial(4), mz = s.polynomial(5);
      std::array<double, 4> c{};
      for (std::size_t i = 0; i < 4; ++i) c[i] = value_of(S(a * my[i] + b * mz[i]));
      const auto roots = detail::roots_between(c, 0.0, value_of(s.length()));
      for (std::size_t i = 0; i < roots.count; ++i, ++n)
        if (n < capacity) places[n] = value_of(s.from) + roots.at[i];
    });
    return n;
  }

  /// Displacement of the bar's axis at x from its start, global axes [m].
  Vec3<S> displacement(fraction at) const { return displacement_at(S(S(at.value) * length())); }
  Vec3<S> displacement_at(const S& x) const {
    const Vec3<S> from = end_motion(true), to = end_motion(false);
    const Shape whole = shape(length()), here = shape(x);
    const S t = S(x / length());
    Vec3<S> local;
    local.x = axial_free_start() ? S(to.x - (whole.u - here.u)) : S(from.x + here.u);
    local.y = S(from.y + t * (to.y - from.y) + here.v - t * whole.v);
    local.z = S(from.z + t * (to.z - from.z) + here.w - t * whole.w);
    return axes_.to_global(local);
  }

  /// Least and greatest displacement along a direction (global axes, unit), over the whole member: displacements are
  /// polynomials of degree five between load changes, so these too are found and not sampled.
  BasicExtremes<S> displacement_extremes(const Vec3<S>& direction) const {
    BasicExtremes<S> e;
    bool first = true;
    const auto take = [&](const S& x) {
      const S v = dot(displacement_at(x), direction);
      if (first || value_of(v) < value_of(e.least)) { e.least = v; e.least_at = x; }
      if (first || value_of(v) > value_of(e.greatest)) { e.greatest = v; e.greatest_at = x; }
      first = false;
    };
    take(S(0));
    const Vec3<S> d = axes_.to_local(direction), from = end_motion(true), to = end_motion(false);
    const Shape whole = shape(length());
    const BasicFrameSection<S>& s = m_.section;
    const double fy = value_of(safe_inverse(S(s.E * s.Iz))), fz = value_of(safe_inverse(S(s.E * s.Iy)));
    const double gy = value_of(detail::shear_flexibility(s.G, s.shear_y)), gz = value_of(detail::shear_flexibility(s.G, s.shear_z));
    const double slope_y = value_of(S((to.y - from.y - whole.v) / length())), slope_z = value_of(S((to.z - from.z - whole.w) / length()));
    double turn_z = 0, turn_y = 0;
    detail::for_each_stretch(answer_.start, loads_, length(), [&](const detail::Stretch<S>& p) {
      const double x0 = value_of(p.from);
      std::array<double, 5> c{};  // derivative of the displacement along `direction`, in t = x − from
      double warm = 0, warm_slope = 0, bow_y = 0, bow_z = 0;
      for (const BasicMemberLoad<S>& l : loads_)
        if (l.kind == BasicMemberLoad<S>::Kind::temperature) {
          const double alpha = value_of(s.thermal_expansion);
          warm += alpha * value_of(l.first.x);
          warm_slope += alpha * value_of(S((l.last.x - l.first.x) / length()));
          bow_y += alpha * value_of(l.first.y);
          bow_z += alpha * value_of(l.first.z);
        }
      const auto N = p.polynomial(0), Vy = p.polynomial(1), Vz = p.polynomial(2), My = p.polynomial(4), Mz = p.polynomial(5);
      const double dx = value_of(d.x), dy = value_of(d.y), dz = value_of(d.z), EA = value_of(S(s.E * s.A));
      c[0] += dx * (warm + warm_slope * x0) + dy * (slope_y + turn_z - bow_y * x0) + dz * (slope_z - turn_y - bow_z * x0);
      c[1] += dx * warm_slope - dy * bow_y - dz * bow_z;
      for (std::size_t i = 0; i < 4; ++i) {
        c[i] += dx * value_of(N[i]) / EA + dy * gy * value_of(Vy[i]) + dz * gz * value_of(Vz[i]);
        c[i + 1] += (dy * fy * value_of(Mz[i]) - dz * fz * value_of(My[i])) / static_cast<double>(i + 1);
      }
      const auto roots = detail::roots_between(c, 0.0, value_of(p.length()));
      for (std::size_t i = 0; i < roots.count; ++i) take(S(p.from + S(roots.at[i])));
      turn_z += fy * value_of(integral(Mz, p.length()));
      turn_y += fz * value_of(integral(My, p.length()));
      take(p.to);
    });
    return e;
  }

  /// Strain energy of the bar itself, without its end springs [J]: exact, by four Gauss points on each stretch.
  BasicEnergy<S> energy() const {
    BasicEnergy<S> e;
    const BasicFrameSection<S>& s = m_.section;
    const S half = S(S(1) / S(2));
    detail::for_each_stretch(answer_.start, loads_, length(), [&](const detail::Stretch<S>& p) {
      for_gauss(p.length(), [&](const S& t, const S& w) {
        const auto at = [&](std::size_t c) { return detail::evaluate(p.polynomial(c), t); };
        const S N = at(0);
        e.axial += S(half * w * N * N / (s.E * s.A));
        const S Vy = at(1), Vz = at(2), T = at(3), My = at(4), Mz = at(5);
        if (value_of(s.Iy) > 0.0) e.bending += S(half * w * My * My / (s.E * s.Iy));
        if (value_of(s.Iz) > 0.0) e.bending += S(half * w * Mz * Mz / (s.E * s.Iz));
        e.shear += S(half * w * (Vy * Vy * detail::shear_flexibility(s.G, s.shear_y) + Vz * Vz * detail::shear_flexibility(s.G, s.shear_z)));
        if (value_of(s.J) > 0.0) e.torsion += S(half * w * T * T / (s.G * s.J));
      });
    });
    return e;
  }

 private:
  struct Shape {
    S u = S(0), v = S(0), w = S(0);  ///< from strains alone, with no motion and slope at the start
  };

  bool axial_free_start() const { return value_of(m_.start.axial) == 0.0; }

  /// Motion of the bar's own end (past arms and springs), local axes.
  Vec3<S> end_motion(bool start) const {
    const BasicMemberEnd<S>& e = start ? m_.start : m_.end;
    const std::array<S, 6>& f = start ? answer_.start : answer_.end;
    Vec3<S> u = axes_.to_local((start ? us_ : ue_) + cross(start ? rs_ : re_, e.offset));
    if (value_of(e.axial) > 0.0) u.x -= S(f[0] * detail::flexibility(e.axial));
    u.y -= S(f[1] * detail::flexibility(e.shear_y));
    u.z -= S(f[2] * detail::flexibility(e.shear_z));
    return u;
  }

  /// Integrates strains from the start to x: curvatures Mz/EIz, My/EIy and those of temperature, shear strains V/(G As).
  Shape shape(const S& x) const {
    Shape at;
    S turn_z = S(0), turn_y = S(0);
    const BasicFrameSection<S>& s = m_.section;
    const S fy = safe_inverse(S(s.E * s.Iz));
    const S fz = safe_inverse(S(s.E * s.Iy));
    const S gy = detail::shear_flexibility(s.G, s.shear_y), gz = detail::shear_flexibility(s.G, s.shear_z);
    detail::for_each_stretch(answer_.start, loads_, length(), [&](const detail::Stretch<S>& p) {
      if (value_of(p.from) >= value_of(x)) return;
      const S t = S(smaller(x, p.to) - p.from);
      const std::array<S, 4> N = p.polynomial(0), Vy = p.polynomial(1), Vz = p.polynomial(2), My = p.polynomial(4), Mz = p.polynomial(5);
      at.u += S(integral(N, t) / (s.E * s.A));
      at.v += S(turn_z * t + fy * double_integral(Mz, t) + gy * integral(Vy, t));
      at.w += S(gz * integral(Vz, t) - (turn_y * t + fz * double_integral(My, t)));
      turn_z += S(fy * integral(Mz, t));
      turn_y += S(fz * integral(My, t));
    });
    for (const BasicMemberLoad<S>& l : loads_) {
      if (l.kind != BasicMemberLoad<S>::Kind::temperature) continue;
      const S half = S(x * x / S(2));
      at.u += S(s.thermal_expansion * (l.first.x * x + (l.last.x - l.first.x) * half / length()));
      at.v -= S(s.thermal_expansion * l.first.y * half);
      at.w -= S(s.thermal_expansion * l.first.z * half);
    }
    return at;
  }

  static S safe_inverse(const S& v) { return value_of(v) > 0.0 ? S(S(1) / v) : S(0); }
  static S integral(const std::array<S, 4>& c, const S& t) {
    return S(t * (c[0] + t * (c[1] / S(2) + t * (c[2] / S(3) + t * c[3] / S(4)))));
  }
  static S double_integral(const std::array<S, 4>& c, const S& t) {
    return S(t * t * (c[0] / S(2) + t * (c[1] / S(6) + t * (c[2] / S(12) + t * c[3] / S(20)))));
  }
  template <class Take>
  static void for_gauss(const S& length, Take take) {
    // roots of P4: ±sqrt(3/7 ∓ 2/7 sqrt(6/5)), weights (18 ± sqrt 30)/36
    const S inner = root(S(S(3) / S(7) - S(2) / S(7) * root(S(S(6) / S(5)))));
    const S outer = root(S(S(3) / S(7) + S(2) / S(7) * root(S(S(6) / S(5)))));
    const S wi = S((S(18) + root(S(30))) / S(36)), wo = S((S(18) - root(S(30))) / S(36));
    const S h = S(length / S(2));
    for (const int sign : {-1, 1}) {
      take(S(h * (S(1) + S(sign) * inner)), S(h * wi));
      take(S(h * (S(1) + S(sign) * outer)), S(h * wo));
    }
  }

  const BasicMember<S>& m_;
  const MemberAxes<S>& axes_;
  const BasicMemberAnswer<S>& answer_;
  MemberLoads<S> loads_;
  Vec3<S> us_, rs_, ue_, re_;
};
using MemberView = BasicMemberView<double>;

}  // namespace baywork
