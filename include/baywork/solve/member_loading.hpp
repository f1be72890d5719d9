// SPDX-License-Identifier: MIT
// What a load along a member does while its ends are held by pins: exact deformations and end forces.
#pragma once

#include <array>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/solve/member_stiffness.hpp>

namespace baywork {

/// The member as a simple beam under its own loads (no end moments; axial load and torque carried at the start, or at
/// the end where the start is released): the deformations `modes` it would show, and the forces on its two ends.
/// Fixed-end actions are then -k·modes, exact for every load here.
template <Scalar S = double>
struct MemberLoading {
  MemberModes<S> modes{S(0), S(0), S(0), S(0), S(0), S(0)};
  Vec3<S> start{}, end{};                      ///< forces on the bar's ends, local axes [N]
  S start_torque = S(0), end_torque = S(0);    ///< about local x [Nm]
};

namespace detail {

/// Rotation of the simple beam's start (end) about z, per unit force along y at distance x: x(L-x)(2L-x)/(6 L EI)
/// and -x(L²-x²)/(6 L EI) (Timoshenko, Strength of Materials I, simple beam with one load; derived by unit moments).
/// A force causes no shear part: the shear strains of a beam without end moments sum to zero.
template <class S>
S start_rotation(const S& x, const S& L) {
  return S(x * (L - x) * (S(2) * L - x) / (S(6) * L));
}
template <class S>
S end_rotation(const S& x, const S& L) {
  return S(-(x * (L * L - x * x)) / (S(6) * L));
}

template <class S>
struct LoadingMaker {
  const BasicMember<S>& m;
  const S& L;
  MemberLoading<S>& out;

  bool from_end(const S& start_spring) const { return value_of(start_spring) == 0.0; }

  /// A force at x: every other load is made of these.
  void force(const S& x, const Vec3<S>& p) {
    const BasicFrameSection<S>& s = m.section;
    const S t = S(x / L);
    const S u = S(S(1) - t);
    if (from_end(m.start.axial)) {
      out.modes[0] -= S(p.x * ((L - x) / (s.E * s.A) + flexibility(m.end.axial)));
      out.end.x -= p.x;
    } else {
      out.modes[0] += S(p.x * (x / (s.E * s.A) + flexibility(m.start.axial)));
      out.start.x -= p.x;
    }
    out.start.y -= S(u * p.y);
    out.start.z -= S(u * p.z);
    out.end.y -= S(t * p.y);
    out.end.z -= S(t * p.z);
    if (m.kind == MemberKind::axial) return;
    // transverse end springs turn the line between the bar's ends; rotations are counted from the nodes' line
    const S turn_y = S((t * flexibility(m.end.shear_y) - u * flexibility(m.start.shear_y)) / L);
    const S turn_z = S((t * flexibility(m.end.shear_z) - u * flexibility(m.start.shear_z)) / L);
    bend(2, s.Iz, S(p.y * start_rotation(x, L)), S(p.y * end_rotation(x, L)), S(p.y * turn_y));
    bend(4, s.Iy, S(-(p.z * start_rotation(x, L))), S(-(p.z * end_rotation(x, L))), S(-(p.z * turn_z)));
  }

  void bend(std::size_t i, const S& second_moment, const S& at_start, const S& at_end, const S& turn) {
    const S EI = S(m.section.E * second_moment);
    if (value_of(EI) == 0.0) return;  // no bending stiffness: nothing to hold back
    out.modes[i] += S(at_start / EI + turn);
    out.modes[i + 1] += S(at_end / EI + turn);
  }

  /// A couple at x on the cross-section: derivative of the force's effect, and its shear part C/(G As L) at both ends.
  void couple(const S& x, const Vec3<S>& c) {
    const BasicFrameSection<S>& s = m.section;
    const bool at_end = from_end(m.start.torsion);
    const S GJ = S(s.G * s.J);
    (at_end ? out.end_torque : out.start_torque) -= c.x;
    out.start.y += S(c.z / L);
    out.end.y -= S(c.z / L);
    out.start.z -= S(c.y / L);
    out.end.z += S(c.y / L);
    if (m.kind == MemberKind::axial) return;
    if (value_of(GJ) != 0.0)
      out.modes[1] += at_end ? S(-(c.x * ((L - x) / GJ + flexibility(m.end.torsion))))
                             : S(c.x * (x / GJ + flexibility(m.start.torsion)));
    const S slope_start = S((S(2) * L * L - S(6) * L * x + S(3) * x * x) / (S(6) * L));
    const S slope_end = S((S(3) * x * x - L * L) / (S(6) * L));
    const S spring_y = S((flexibility(m.start.shear_y) + flexibility(m.end.shear_y)) / (L * L));
    const S spring_z = S((flexibility(m.start.shear_z) + flexibility(m.end.shear_z)) / (L * L));
    bend(2, s.Iz, S(c.z * slope_start), S(c.z * slope_end),
         S(c.z * (shear_flexibility(s.G, s.shear_y) / L + spring_y)));
    bend(4, s.Iy, S(c.y * slope_start), S(c.y * slope_end),
         S(c.y * (shear_flexibility(s.G, s.shear_z) / L + spring_z)));
  }

  /// A line load as three forces at Gauss points: exact, since a linear load times a cubic influence is of degree four.
  void line(const BasicMemberLoad<S>& l) {
    const S half = S((l.b - l.a) / S(2)), middle = S((l.a + l.b) / S(2));
    const S reach = root(S(S(3) / S(5)));
    const std::array<S, 3> at{S(-reach), S(0), reach};
    const std::array<S, 3> weight{S(S(5) / S(9)), S(S(8) / S(9)), S(S(5) / S(9))};
    for (std::size_t i = 0; i < 3; ++i) {
      const S t = S((S(1) + at[i]) / S(2));
      const Vec3<S> q = l.first + t * (l.last - l.first);
      force(S(middle + at[i] * half), S(weight[i] * half) * q);
    }
  }

  /// Hotter fibres are longer: mean α T L, and curvature -α dT/dy about z, +α dT/dz about y.
  void temperature(const BasicMemberLoad<S>& l) {
    const S& alpha = m.section.thermal_expansion;
    out.modes[0] += S(alpha * L * (l.first.x + l.last.x) / S(2));
    if (m.kind == MemberKind::axial) return;
    const S bow_z = S(alpha * l.first.y * L / S(2)), bow_y = S(alpha * l.first.z * L / S(2));
    out.modes[2] += bow_z;
    out.modes[3] -= bow_z;
    out.modes[4] -= bow_y;
    out.modes[5] += bow_y;
  }
};

}  // namespace detail

/// Adds one load's part to a member's loading. L is the flexible length.
template <Scalar S>
void add_loading(const BasicMember<S>& m, const S& L, const BasicMemberLoad<S>& load, MemberLoading<S>& out) {
  detail::LoadingMaker<S> maker{m, L, out};
  using Kind = typename BasicMemberLoad<S>::Kind;
  switch (load.kind) {
    case Kind::line: maker.line(load); break;
    case Kind::force: maker.force(load.a, load.first); break;
    case Kind::couple: maker.couple(load.a, load.first); break;
    case Kind::temperature: maker.temperature(load); break;
  }
}

}  // namespace baywork
