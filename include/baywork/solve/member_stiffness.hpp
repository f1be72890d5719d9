// SPDX-License-Identifier: MIT
// A member in its own deformations: how it strains, how stiff it is against that, what its ends then feel.
#pragma once

#include <array>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/member_axes.hpp>

namespace baywork {

/// The six deformations of a member, or the six forces that do work on them:
///   0 elongation                                  N
///   1 twist, end against start                    T
///   2, 3 rotation about local z of start and end, from the chord line    Mz on the start, on the end
///   4, 5 the same about local y                   My on the start, on the end
/// Rigid motion deforms nothing: that is why residuals are summed here and not against an assembled matrix.
template <class R>
using MemberModes = std::array<R, 6>;

/// Bending stiffness in one plane: [[start, cross], [cross, end]] against the two end rotations, plus `shear` against
/// their difference. Apart, because a bar soft in shear has a `shear` that drowns the rest in one rounded matrix, and the
/// shear force is made of the rest.
template <Scalar S = double>
struct BendingStiffness {
  S start = S(0), cross = S(0), end = S(0), shear = S(0);

  /// Moments on start and end for their rotations vs, ve.
  template <class R>
  std::array<R, 2> operator()(const R& vs, const R& ve) const {
    const R common = R(R(shear) * R(vs - ve));
    return {R(R(start) * vs + R(cross) * ve + common), R(R(cross) * vs + R(end) * ve - common)};
  }
};

/// Stiffness against the modes: four uncoupled parts.
template <Scalar S = double>
struct MemberStiffness {
  S axial = S(0), torsion = S(0);
  BendingStiffness<S> about_z{}, about_y{};

  template <class R>
  MemberModes<R> operator*(const MemberModes<R>& v) const {
    const std::array<R, 2> z = about_z(v[2], v[3]), y = about_y(v[4], v[5]);
    return {R(R(axial) * v[0]), R(R(torsion) * v[1]), z[0], z[1], y[0], y[1]};
  }
};

namespace detail {

/// 1/k, with 1/infinity = 0 also for scalars that carry derivatives.
template <class S>
S flexibility(const S& k) {
  return is_infinite(k) ? S(0) : S(S(1) / k);
}

/// Bending in one plane of a Timoshenko bar with end springs, by inverting its flexibility
///   [[a + c + di, c - a/2], [c - a/2, a + c + dj]],  a = L/(3EI),  c = 1/(G As L) + (1/ki' + 1/kj')/L²,  d = 1/k,
/// where k are rotational and k' transverse end springs. The determinant is written without the terms that cancel.
/// A released rotation (k = 0) leaves the other end alone. Without springs this is the textbook matrix
/// EI/(L(1+Φ)) [[4+Φ, 2-Φ], [2-Φ, 4+Φ]], Φ = 12 EI/(G As L²) (Przemieniecki, Theory of Matrix Structural Analysis,
/// 5.6, value from memory; derived anew here).
template <class S>
BendingStiffness<S> bending_stiffness(const S& EI, const S& shear_flexibility, const S& L, const S& k_start,
                                      const S& k_end, const S& transverse) {
  BendingStiffness<S> k;
  if (value_of(EI) == 0.0) return k;
  const S a = S(L / (S(3) * EI));
  const S c = S(shear_flexibility / L + transverse / (L * L));
  const bool free_start = value_of(k_start) == 0.0, free_end = value_of(k_end) == 0.0;
  if (free_start && free_end) return k;
  if (free_start) {
    k.end = S(S(1) / (a + c + flexibility(k_end)));
    return k;
  }
  if (free_end) {
    k.start = S(S(1) / (a + c + flexibility(k_start)));
    return k;
  }
  const S di = flexibility(k_start), dj = flexibility(k_end);
  const S det = S(S(3) * a * a / S(4) + S(3) * a * c + (a + c) * (di + dj) + di * dj);
  k.start = S((a + dj) / det);
  k.cross = S(a / S(2) / det);
  k.end = S((a + di) / det);
  k.shear = S(c / det);
  return k;
}

/// Stiffness of a rod with a spring at each end; zero where an end is released or the rod has none.
template <class S>
S rod_stiffness(const S& k, const S& L, const S& k_start, const S& k_end) {
  if (value_of(k) == 0.0 || value_of(k_start) == 0.0 || value_of(k_end) == 0.0) return S(0);
  return S(S(1) / (L / k + flexibility(k_start) + flexibility(k_end)));
}

template <class S>
S shear_flexibility(const S& G, const S& area) {
  return is_infinite(area) ? S(0) : S(S(1) / (G * area));
}

}  // namespace detail

template <Scalar S>
MemberStiffness<S> stiffness_of(const BasicMember<S>& m, const S& L) {
  MemberStiffness<S> k;
  const BasicFrameSection<S>& s = m.section;
  k.axial = detail::rod_stiffness(S(s.E * s.A), L, m.start.axial, m.end.axial);
  if (m.kind == MemberKind::axial) return k;
  k.torsion = detail::rod_stiffness(S(s.G * s.J), L, m.start.torsion, m.end.torsion);
  k.about_z = detail::bending_stiffness(S(s.E * s.Iz), detail::shear_flexibility(s.G, s.shear_y), L, m.start.about_z,
                                        m.end.about_z,
                                        S(detail::flexibility(m.start.shear_y) + detail::flexibility(m.end.shear_y)));
  k.about_y = detail::bending_stiffness(S(s.E * s.Iy), detail::shear_flexibility(s.G, s.shear_z), L, m.start.about_y,
                                        m.end.about_y,
                                        S(detail::flexibility(m.start.shear_z) + detail::flexibility(m.end.shear_z)));
  return k;
}

/// Geometry of a member in the number type R: what turns node motions into deformations and back.
template <class R>
struct MemberGeometry {
  Vec3<R> x{}, y{}, z{};
  R per_length = R(0);
  Vec3<R> arm_start{}, arm_end{};  ///< rigid offsets, global
  bool has_arms = false;

  /// Deformations from the six motions of the start node and of the end node (global axes).
  MemberModes<R> deformations(const R* start, const R* end) const {
    const Vec3<R> rs{start[3], start[4], start[5]}, re{end[3], end[4], end[5]};
    Vec3<R> d{R(end[0] - start[0]), R(end[1] - start[1]), R(end[2] - start[2])};
    if (has_arms) {
      d += cross(re, arm_end);
      d -= cross(rs, arm_start);
    }
    const R chord_z = R(dot(y, d) * per_length);
    const R chord_y = R(-(dot(z, d) * per_length));
    return {dot(x, d),           R(dot(x, re) - dot(x, rs)), R(dot(z, rs) - chord_z),
            R(dot(z, re) - chord_z), R(dot(y, rs) - chord_y),    R(dot(y, re) - chord_y)};
  }
  /// Adds to the six forces on the start and end nodes' sides (global axes) what the mode forces q put on the member.
  void add_end_forces(const MemberModes<R>& q, R* start, R* end) const {
    const R vy = R(-((q[2] + q[3]) * per_length));
    const R vz = R((q[4] + q[5]) * per_length);
    const Vec3<R> f = q[0] * x + vy * y + vz * z;
    Vec3<R> ms = q[2] * z + q[4] * y - q[1] * x;
    Vec3<R> me = q[3] * z + q[5] * y + q[1] * x;
    if (has_arms) {
      ms -= cross(arm_start, f);
      me += cross(arm_end, f);
    }
    for (std::size_t i = 0; i < 3; ++i) {
      start[i] -= f[i];
      end[i] += f[i];
      start[i + 3] += ms[i];
      end[i + 3] += me[i];
    }
  }
};

/// `a`: the member's axes in R.
template <class R, Scalar S>
MemberGeometry<R> geometry_in(const MemberAxes<R>& a, const BasicMember<S>& m) {
  const auto wide = [](const Vec3<S>& v) { return Vec3<R>{R(v.x), R(v.y), R(v.z)}; };
  MemberGeometry<R> g;
  g.x = a.x;
  g.y = a.y;
  g.z = a.z;
  g.per_length = R(R(1) / a.length);
  g.arm_start = wide(m.start.offset);
  g.arm_end = wide(m.end.offset);
  const auto any = [](const Vec3<S>& v) { return value_of(v.x) != 0.0 || value_of(v.y) != 0.0 || value_of(v.z) != 0.0; };
  g.has_arms = any(m.start.offset) || any(m.end.offset);
  return g;
}

}  // namespace baywork
