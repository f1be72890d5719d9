// SPDX-License-Identifier: MIT
// What a load along a member does while its ends are held by pins: exact deformations and end forces.
#pragma once

#include <array>
#include <cstddef>

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

/// Rotation of the simple beam's start and end about z, by a force P along y at the fraction t = 1 - u of the length L:
/// P L² t u (1 + u)/(6 EI) and -P L² t u (1 + t)/(6 EI) (Timoshenko, Strength of Materials I, simple beam with one load;
/// derived by unit moments). A force causes no shear part: the shear strains of a beam without end moments sum to zero.
template <class S>
class LoadingMaker {
 public:
  LoadingMaker(const BasicMember<S>& member, const S& length, MemberLoading<S>& loading)
      : m(member), L(length), out(loading), per_L(inverse(length)), sixth(S(length * length / S(6))),
        per_EA(inverse(S(member.section.E * member.section.A))), per_EIy(inverse(S(member.section.E * member.section.Iy))),
        per_EIz(inverse(S(member.section.E * member.section.Iz))) {}

  /// A force at x: every other load is made of these.
  void force(const S& x, const Vec3<S>& p) {
    const S t = S(x * per_L);
    const S u = S(S(1) - t);
    if (from_end(m.start.axial)) {
      out.modes[0] -= S(p.x * ((L - x) * per_EA + flexibility(m.end.axial)));
      out.end.x -= p.x;
    } else {
      out.modes[0] += S(p.x * (x * per_EA + flexibility(m.start.axial)));
      out.start.x -= p.x;
    }
    out.start.y -= S(u * p.y);
    out.start.z -= S(u * p.z);
    out.end.y -= S(t * p.y);
    out.end.z -= S(t * p.z);
    if (m.kind == MemberKind::axial) return;
    const S turn = S(sixth * t * u);
    const S at_start = S(turn * (S(1) + u)), at_end = S(-(turn * (S(1) + t)));
    // transverse end springs turn the line between the bar's ends; rotations are counted from the nodes' line
    const S turn_y = S((t * flexibility(m.end.shear_y) - u * flexibility(m.start.shear_y)) * per_L);
    const S turn_z = S((t * flexibility(m.end.shear_z) - u * flexibility(m.start.shear_z)) * per_L);
    bend(2, per_EIz, p.y, at_start, at_end, turn_y);
    bend(4, per_EIy, S(-p.z), at_start, at_end, turn_z);
  }

  /// A couple at x on the cross-section: derivative of the force's effect, and its shear part C/(G As L) at both ends.
  void couple(const S& x, const Vec3<S>& c) {
    const BasicFrameSection<S>& s = m.section;
    const bool at_end = from_end(m.start.torsion);
    const S GJ = S(s.G * s.J);
    (at_end ? out.end_torque : out.start_torque) -= c.x;
    out.start.y += S(c.z * per_L);
    out.end.y -= S(c.z * per_L);
    out.start.z -= S(c.y * per_L);
    out.end.z += S(c.y * per_L);
    if (m.kind == MemberKind::axial) return;
    if (value_of(GJ) != 0.0)
      out.modes[1] += at_end ? S(-(c.x * ((L - x) / GJ + flexibility(m.end.torsion))))
                             : S(c.x * (x / GJ + flexibility(m.start.torsion)));
    const S slope_start = S((S(2) * L * L - S(6) * L * x + S(3) * x * x) * per_L / S(6));
    const S slope_end = S((S(3) * x * x - L * L) * per_L / S(6));
    const S spring_y = S((flexibility(m.start.shear_y) + flexibility(m.end.shear_y)) * per_L * per_L);
    const S spring_z = S((flexibility(m.start.shear_z) + flexibility(m.end.shear_z)) * per_L * per_L);
    bend(2, per_EIz, c.z, slope_start, slope_end, S(shear_flexibility(s.G, s.shear_y) * per_L + spring_y));
    bend(4, per_EIy, c.y, slope_start, slope_end, S(shear_flexibility(s.G, s.shear_z) * per_L + spring_z));
  }

  /// A line load as three forces at Gauss points: exact, since a linear load times a cubic influence is of degree four.
  void line(const BasicMemberLoad<S>& l) {
    static const S reach = root(S(S(3) / S(5)));
    static const std::array<S, 3> at{S((S(1) - reach) / S(2)), S(S(1) / S(2)), S((S(1) + reach) / S(2))};
    static const std::array<S, 3> weight{S(S(5) / S(18)), S(S(4) / S(9)), S(S(5) / S(18))};
    const S whole = S(l.b - l.a);
    const Vec3<S> more = l.last - l.first;
    for (std::size_t i = 0; i < 3; ++i)
      force(S(l.a + at[i] * whole), S(weight[i] * whole) * (l.first + at[i] * more));
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

 private:
  /// 1/x; zero for zero, which marks a bar without bending stiffness.
  static S inverse(const S& x) { return value_of(x) == 0.0 ? S(0) : S(S(1) / x); }
  static bool from_end(const S& start_spring) { return value_of(start_spring) == 0.0; }

  /// Load times rotations of the ends: by bending, and `turn` of the line between the ends; without bending stiffness
  /// there is nothing to hold back.
  void bend(std::size_t i, const S& per_EI, const S& load, const S& at_start, const S& at_end, const S& turn) {
    if (value_of(per_EI) == 0.0) return;
    out.modes[i] += S(load * (at_start * per_EI + turn));
    out.modes[i + 1] += S(load * (at_end * per_EI + turn));
  }

  const BasicMember<S>& m;
  const S& L;
  MemberLoading<S>& out;
  S per_L, sixth, per_EA, per_EIy, per_EIz;
};

}  // namespace detail

/// Adds one load's part to a member's loading. L is the flexible length.
template <Scalar S>
void add_loading(const BasicMember<S>& m, const S& L, const BasicMemberLoad<S>& load, MemberLoading<S>& out) {
  detail::LoadingMaker<S> maker(m, L, out);
  using Kind = typename BasicMemberLoad<S>::Kind;
  switch (load.kind) {
    case Kind::line: maker.line(load); break;
    case Kind::force: maker.force(load.a, load.first); break;
    case Kind::couple: maker.couple(load.a, load.first); break;
    case Kind::temperature: maker.temperature(load); break;
  }
}

}  // namespace baywork
