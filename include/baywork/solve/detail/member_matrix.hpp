// SPDX-License-Identifier: MIT
// The 12 x 12 stiffness of a member between its nodes, in global axes.
#pragma once

#include <array>
#include <concepts>
#include <cstddef>

#include <baywork/core/scalar.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/solve/detail/member_sorts.hpp>

namespace baywork::detail {

/// A 3 x 3 matrix by rows.
template <class S>
struct Small3 {
  std::array<S, 9> v{S(0), S(0), S(0), S(0), S(0), S(0), S(0), S(0), S(0)};

  S& operator()(std::size_t r, std::size_t c) { return v[3 * r + c]; }
  const S& operator()(std::size_t r, std::size_t c) const { return v[3 * r + c]; }
  /// a bᵀ
  static Small3 outer(const Vec3<S>& a, const Vec3<S>& b) {
    Small3 m;
    m.v = {S(a.x * b.x), S(a.x * b.y), S(a.x * b.z), S(a.y * b.x), S(a.y * b.y), S(a.y * b.z), S(a.z * b.x), S(a.z * b.y), S(a.z * b.z)};
    return m;
  }
  /// f a + g b
  static Small3 sum(const S& f, const Small3& a, const S& g, const Small3& b) {
    Small3 m;
    for (std::size_t i = 0; i < 9; ++i) m.v[i] = S(f * a.v[i] + g * b.v[i]);
    return m;
  }
  friend Small3 operator*(const Small3& a, const Small3& b) {
    Small3 p;
    for (std::size_t r = 0; r < 3; ++r)
      for (std::size_t c = 0; c < 3; ++c) p(r, c) = S(a(r, 0) * b(0, c) + a(r, 1) * b(1, c) + a(r, 2) * b(2, c));
    return p;
  }
  Small3& operator+=(const Small3& b) {
    for (std::size_t i = 0; i < 9; ++i) v[i] += b.v[i];
    return *this;
  }
  Small3 transposed() const {
    Small3 t;
    for (std::size_t r = 0; r < 3; ++r)
      for (std::size_t c = 0; c < 3; ++c) t(c, r) = (*this)(r, c);
    return t;
  }
  /// ω -> arm × ω
  static Small3 cross_of(const Vec3<S>& a) {
    Small3 m;
    m.v = {S(0), S(-a.z), a.y, a.z, S(0), S(-a.x), S(-a.y), a.x, S(0)};
    return m;
  }
};

/// Calls put(row, column, value) for each entry of the member's matrix, both triangles; rows and columns 0 to 5 are the
/// start node's motions, 6 to 11 the end node's.
///
/// With d the difference of the flexible ends' displacements and φ, ψ the rotations of start and end, the deformations
/// of MemberModes give the energy ½ (d, φ, ψ)ᵀ K (d, φ, ψ) with, for the bending [[a, b], [b, c]] about z (a, b, c with
/// the shear part, its sums without it: it cancels there),
///   K_dd = N x xᵀ + Σ (a + 2b + c)/L² (y yᵀ | z zᵀ),   K_dφ = -(a + b)/L y zᵀ (about z), +(a' + b')/L z yᵀ (about y),
///   K_φφ = T x xᵀ + a z zᵀ + a' y yᵀ,   K_φψ = -T x xᵀ + b z zᵀ + b' y yᵀ,   and so on;
/// rigid arms add d += arm_s × φ - arm_e × ψ. All are outer products of the three axes: no 12 x 12 triple product.
template <class S, class Put>
void put_member_matrix(const MemberIn<S>& m, const Put& put) {
  using M = Small3<S>;
  const Vec3<S>&x = m.geometry.x, &y = m.geometry.y, &z = m.geometry.z;
  const BendingStiffness<S>&bz = m.stiffness.about_z, &by = m.stiffness.about_y;
  const S per = m.geometry.per_length;
  const M xx = M::outer(x, x), yy = M::outer(y, y), zz = M::outer(z, z), yz = M::outer(y, z), zy = yz.transposed();
  const auto turning = [&](const S& torsion, const S& about_z, const S& about_y) {
    return M::sum(torsion, xx, S(1), M::sum(about_z, zz, about_y, yy));
  };
  M dd = M::sum(m.stiffness.axial, xx, S(1), M::sum(S((bz.start + S(2) * bz.cross + bz.end) * per * per), yy,
                                                    S((by.start + S(2) * by.cross + by.end) * per * per), zz));
  const auto none = [](const BendingStiffness<S>& b) {
    return value_of(b.start) == 0.0 && value_of(b.cross) == 0.0 && value_of(b.end) == 0.0 && value_of(b.shear) == 0.0;
  };
  if (std::floating_point<S> && !m.geometry.has_arms && value_of(m.stiffness.torsion) == 0.0 && none(bz) && none(by)) {  // a bar
    for (std::size_t r = 0; r < 3; ++r)
      for (std::size_t c = 0; c < 3; ++c) {
        put(r, c, dd(r, c)), put(r + 6, c + 6, dd(r, c));
        put(r, c + 6, S(-dd(r, c))), put(r + 6, c, S(-dd(r, c)));
      }
    return;
  }
  const auto both = [](const S& first, const S& second) { return S(first + second); };
  M ds = M::sum(S(-(both(bz.start, bz.cross) * per)), yz, S(both(by.start, by.cross) * per), zy);
  M de = M::sum(S(-(both(bz.cross, bz.end) * per)), yz, S(both(by.cross, by.end) * per), zy);
  M ss = turning(m.stiffness.torsion, S(bz.start + bz.shear), S(by.start + by.shear));
  M se = turning(S(-m.stiffness.torsion), S(bz.cross - bz.shear), S(by.cross - by.shear));
  M ee = turning(m.stiffness.torsion, S(bz.end + bz.shear), S(by.end + by.shear));
  if (m.geometry.has_arms) {
    const M as = M::cross_of(m.geometry.arm_start), ae = M::cross_of(S(-1) * m.geometry.arm_end);
    const M ast = as.transposed(), aet = ae.transposed();
    // with d = d0 + as φ + ae ψ
    ss += ast * dd * as;
    ss += ast * ds;
    ss += ds.transposed() * as;
    se += ast * dd * ae;
    se += ast * de;
    se += ds.transposed() * ae;
    ee += aet * dd * ae;
    ee += aet * de;
    ee += de.transposed() * ae;
    ds += dd * as;
    de += dd * ae;
  }
  for (std::size_t r = 0; r < 3; ++r)
    for (std::size_t c = 0; c < 3; ++c) {
      put(r, c, dd(r, c)), put(r + 6, c + 6, dd(r, c));
      put(r, c + 6, S(-dd(r, c))), put(r + 6, c, S(-dd(r, c)));
      put(r, c + 3, S(-ds(r, c))), put(c + 3, r, S(-ds(r, c)));
      put(r, c + 9, S(-de(r, c))), put(c + 9, r, S(-de(r, c)));
      put(r + 6, c + 3, ds(r, c)), put(c + 3, r + 6, ds(r, c));
      put(r + 6, c + 9, de(r, c)), put(c + 9, r + 6, de(r, c));
      put(r + 3, c + 3, ss(r, c)), put(r + 9, c + 9, ee(r, c));
      put(r + 3, c + 9, se(r, c)), put(c + 9, r + 3, se(r, c));
    }
}

}  // namespace baywork::detail
