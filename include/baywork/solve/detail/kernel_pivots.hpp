// SPDX-License-Identifier: MIT
// Up to four pivots at a time: what the inverse and the partial factor share.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// L D Lᵀ of a block of the lower triangle, kept apart from the matrix: 1/d and the unit lower L. Always four by four;
/// what lies beyond the width is of a unit matrix.
struct PivotBlock {
  double d0, d1, d2, d3, l10, l20, l30, l21, l31, l32;
};

/// Factors the block at s, one number after another: lanes would only wait for each other.
template <Size width>
BAYWORK_KERNEL_HELPER void factor(PivotBlock& p, const double* s, Size ld) {
  double a11 = 1.0, a22 = 1.0, a33 = 1.0, a10 = 0.0, a20 = 0.0, a30 = 0.0, a21 = 0.0, a31 = 0.0, a32 = 0.0;
  const double a00 = s[0];
  if (width > 1) a10 = s[1], a11 = s[1 + ld];
  if (width > 2) a20 = s[2], a30 = s[3], a21 = s[2 + ld], a31 = s[3 + ld], a22 = s[2 + 2 * ld];
  if (width > 2) a32 = s[3 + 2 * ld], a33 = s[3 + 3 * ld];
  p.d0 = 1.0 / a00, p.l10 = a10 * p.d0, p.l20 = a20 * p.d0, p.l30 = a30 * p.d0;
  a11 -= p.l10 * a10, a21 -= p.l20 * a10, a31 -= p.l30 * a10;
  a22 -= p.l20 * a20, a32 -= p.l30 * a20, a33 -= p.l30 * a30;
  p.d1 = 1.0 / a11, p.l21 = a21 * p.d1, p.l31 = a31 * p.d1;
  a22 -= p.l21 * a21, a32 -= p.l31 * a21, a33 -= p.l31 * a31;
  p.d2 = 1.0 / a22, p.l32 = a32 * p.d2;
  a33 -= p.l32 * a32;
  p.d3 = 1.0 / a33;
}

/// Row tiles [top, rows) of columns b under or beside pivots: Z = B L⁻ᵀ. minus_z becomes -Z and y, which may be b,
/// becomes Z D⁻¹ times `sign`.
template <Size width>
BAYWORK_KERNEL_HELPER void solve_panel(const PivotBlock& p, Size top, Size rows, const double* b, Size ldb, double sign,
                                       double* y, Size ldy, double* minus_z, Size ldz) {
  const Lanes l10 = p.l10 - Lanes{}, l20 = p.l20 - Lanes{}, l30 = p.l30 - Lanes{};
  const Lanes l21 = p.l21 - Lanes{}, l31 = p.l31 - Lanes{}, l32 = p.l32 - Lanes{};
  const double d0 = sign * p.d0, d1 = sign * p.d1, d2 = sign * p.d2, d3 = sign * p.d3;
  for (Size i = top; i < rows; i += lanes) {
    const double* const bi = b + i;
    double *const yi = y + i, *const zi = minus_z + i;
    const Lanes z0 = at(bi).v;
    at(zi).v = -z0;
    at(yi).v = z0 * d0;
    if (width == 1) continue;
    const Lanes z1 = BAYWORK_KERNEL_MADD(-l10, z0, at(bi + ldb).v);
    at(zi + ldz).v = -z1;
    at(yi + ldy).v = z1 * d1;
    if (width == 2) continue;
    Lanes z2 = BAYWORK_KERNEL_MADD(-l20, z0, at(bi + 2 * ldb).v),
          z3 = BAYWORK_KERNEL_MADD(-l30, z0, at(bi + 3 * ldb).v);
    z2 = BAYWORK_KERNEL_MADD(-l21, z1, z2), z3 = BAYWORK_KERNEL_MADD(-l31, z1, z3);
    z3 = BAYWORK_KERNEL_MADD(-l32, z2, z3);
    at(zi + 2 * ldz).v = -z2, at(zi + 3 * ldz).v = -z3;
    at(yi + 2 * ldy).v = z2 * d2, at(yi + 3 * ldy).v = z3 * d3;
  }
}

/// Given diagonals and the pivots' inverses, as `pivot_ratio` needs them.
template <Size most>
struct Diagonals {
  double given[most], inverse[most];
};
template <Size most>
BAYWORK_KERNEL_HELPER void keep_given(Diagonals<most>& d, Size n, Size ld, const double* a) {
  for (Size j = 0; j < n; ++j) d.given[j] = a[j + j * ld];
}
template <Size width>
BAYWORK_KERNEL_HELPER void keep_pivots(double* inverse, const PivotBlock& p) {
  inverse[0] = p.d0;
  if (width > 1) inverse[1] = p.d1;
  if (width > 2) inverse[2] = p.d2, inverse[3] = p.d3;
}
/// The smallest pivot/|given|, found as the largest |given|/pivot, which costs one division: below zero and NaN are
/// worse than any size.
template <Size most>
BAYWORK_KERNEL_HELPER double pivot_ratio(const Diagonals<most>& d, Size n, Size* worst) {
  double largest = 0.0;
  for (Size j = 0; j < n; ++j) {
    const double given = d.given[j], inverse = (given < 0.0 ? -given : given) * d.inverse[j];
    if (inverse >= 0.0 && inverse <= largest) continue;
    largest = inverse;
    *worst = j;
    if (!(inverse >= 0.0)) break;
  }
  return 1.0 / largest;
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
