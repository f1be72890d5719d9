// SPDX-License-Identifier: MIT
// A member's stiffness in global axes, as the list of its entries that are not zero.
#pragma once

#include <array>
#include <cstddef>

#include <baywork/core/vec3.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>

namespace bench {

using baywork::Vec3;

/// Entries of the lower triangle; rows and columns count the motions of the start node (0 to 5) and of the end node
/// (6 to 11).
template <class R>
struct MemberEntries {
  std::size_t count = 0;
  std::array<unsigned char, 78> row{}, column{};
  std::array<R, 78> value{};
};

template <class R>
using Block = std::array<R, 9>;  // by rows

namespace detail {

template <class R>
void add_outer(Block<R>& b, const R& f, const Vec3<R>& p, const Vec3<R>& q) {
  const Vec3<R> fp = f * p;
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j) b[3 * i + j] += R(fp[i] * q[j]);
}

template <class R>
Block<R> transposed(const Block<R>& b) {
  return {b[0], b[3], b[6], b[1], b[4], b[7], b[2], b[5], b[8]};
}

/// W with W v = v × a.
template <class R>
Block<R> turned_arm(const Vec3<R>& a) {
  return {R(0), a.z, R(-a.y), R(-a.z), R(0), a.x, a.y, R(-a.x), R(0)};
}

/// b += f p q.
template <class R>
void add_product(Block<R>& b, const R& f, const Block<R>& p, const Block<R>& q) {
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j)
      b[3 * i + j] += R(f * R(p[3 * i] * q[j] + p[3 * i + 1] * q[3 + j] + p[3 * i + 2] * q[6 + j]));
}

template <class R>
void put(MemberEntries<R>& out, std::size_t row, std::size_t column, const Block<R>& b, bool minus = false) {
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < (row == column ? i + 1 : 3); ++j) {
      if (baywork::value_of(b[3 * i + j]) == 0.0) continue;
      out.row[out.count] = static_cast<unsigned char>(row + i);
      out.column[out.count] = static_cast<unsigned char>(column + j);
      out.value[out.count++] = minus ? R(-b[3 * i + j]) : b[3 * i + j];
    }
}

}  // namespace detail

/// With d the motion of the flexible bar's end against its start, rs and re the turns of the two nodes, the strain
/// energy is ½ dᵀT d + dᵀ(A rs + B re) + ½ rsᵀP rs + rsᵀQ re + ½ reᵀR re. From the member's deformations (MemberModes):
/// bending about z turns the start by z·rs - y·d/L and the end by z·re - y·d/L, about y by y·rs + z·d/L and y·re +
/// z·d/L. Hence, with bending stiffness [[s + h, c - h], [c - h, e + h]] (BendingStiffness) and its sums s + c, c + e,
///   T = k x xᵀ + (s + 2c + e)/L² (y yᵀ about z, z zᵀ about y),
///   A = -(s + c)/L y zᵀ (about z) + (s + c)/L z yᵀ (about y),      B with c + e in place of s + c,
///   P = t x xᵀ + (s + h)(z zᵀ, y yᵀ),  Q = -t x xᵀ + (c - h)(…),   R = t x xᵀ + (e + h)(…).
/// Arms: d = ue - us + We re - Ws rs, where W v = v × arm, is put in for d.
template <class R>
void member_entries(const baywork::detail::MemberIn<R>& m, MemberEntries<R>& out) {
  using namespace detail;
  const auto& g = m.geometry;
  const auto &z = m.stiffness.about_z, &y = m.stiffness.about_y;
  out.count = 0;
  const R by = g.per_length;
  const R start_z = R(z.start + z.cross), end_z = R(z.cross + z.end), start_y = R(y.start + y.cross),
          end_y = R(y.cross + y.end);
  const auto zero = [](const R& v) { return baywork::value_of(v) == 0.0; };
  const bool bends = !(zero(start_z) && zero(end_z) && zero(start_y) && zero(end_y) && zero(m.stiffness.torsion));

  Block<R> T{};
  add_outer(T, m.stiffness.axial, g.x, g.x);
  if (!bends && !g.has_arms) {
    put(out, 0, 0, T);
    put(out, 6, 0, T, true);
    put(out, 6, 6, T);
    return;
  }
  Block<R> A{}, B{}, P{}, Q{}, E{};
  if (bends) {
    add_outer(T, R((start_z + end_z) * by * by), g.y, g.y);
    add_outer(T, R((start_y + end_y) * by * by), g.z, g.z);
    add_outer(A, R(-(start_z * by)), g.y, g.z);
    add_outer(A, R(start_y * by), g.z, g.y);
    add_outer(B, R(-(end_z * by)), g.y, g.z);
    add_outer(B, R(end_y * by), g.z, g.y);
    add_outer(P, m.stiffness.torsion, g.x, g.x);
    Q = P;
    for (R& q : Q) q = R(-q);
    E = P;
    add_outer(P, R(z.start + z.shear), g.z, g.z);
    add_outer(P, R(y.start + y.shear), g.y, g.y);
    add_outer(Q, R(z.cross - z.shear), g.z, g.z);
    add_outer(Q, R(y.cross - y.shear), g.y, g.y);
    add_outer(E, R(z.end + z.shear), g.z, g.z);
    add_outer(E, R(y.end + y.shear), g.y, g.y);
  }
  if (g.has_arms) {
    const Block<R> Ws = turned_arm(g.arm_start), We = turned_arm(g.arm_end);
    const Block<R> WsT = transposed(Ws), WeT = transposed(We);
    const Block<R> A0 = A, B0 = B;
    add_product(A, R(-1), T, Ws);
    add_product(B, R(1), T, We);
    add_product(P, R(-1), WsT, A0);
    add_product(P, R(-1), transposed(A), Ws);
    add_product(Q, R(-1), WsT, B);
    add_product(Q, R(1), transposed(A0), We);
    add_product(E, R(1), WeT, B0);
    add_product(E, R(1), transposed(B), We);
  }
  const Block<R> AT = transposed(A), BT = transposed(B);
  put(out, 0, 0, T);
  put(out, 3, 0, AT, true);
  put(out, 3, 3, P);
  put(out, 6, 0, T, true);
  put(out, 6, 3, A);
  put(out, 6, 6, T);
  put(out, 9, 0, BT, true);
  put(out, 9, 3, transposed(Q));
  put(out, 9, 6, BT);
  put(out, 9, 9, E);
}

}  // namespace bench
