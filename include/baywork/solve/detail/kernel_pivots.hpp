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

/// L of a pivot block with each of its numbers in all lanes.
struct PivotLanes {
  Lanes l10, l20, l30, l21, l31, l32;
};
BAYWORK_KERNEL_HELPER void spread_out(PivotLanes& l, const PivotBlock& p) {
  l.l10 = p.l10 - Lanes{}, l.l20 = p.l20 - Lanes{}, l.l30 = p.l30 - Lanes{};
  l.l21 = p.l21 - Lanes{}, l.l31 = p.l31 - Lanes{}, l.l32 = p.l32 - Lanes{};
}
/// One row tile of columns b: Z = B L⁻ᵀ in place.
template <Size width>
BAYWORK_KERNEL_HELPER void solve_tile(const PivotLanes& l, Lanes* b) {
  if (width > 1) b[1] = BAYWORK_KERNEL_MADD(-l.l10, b[0], b[1]);
  if (width > 2) {
    b[2] = BAYWORK_KERNEL_MADD(-l.l20, b[0], b[2]), b[3] = BAYWORK_KERNEL_MADD(-l.l30, b[0], b[3]);
    b[2] = BAYWORK_KERNEL_MADD(-l.l21, b[1], b[2]), b[3] = BAYWORK_KERNEL_MADD(-l.l31, b[1], b[3]);
    b[3] = BAYWORK_KERNEL_MADD(-l.l32, b[2], b[3]);
  }
}
/// The same for Y L⁻¹.
template <Size width>
BAYWORK_KERNEL_HELPER void solve_tile_back(const PivotLanes& l, Lanes* y) {
  if (width > 2) {
    y[2] = BAYWORK_KERNEL_MADD(-l.l32, y[3], y[2]);
    y[1] = BAYWORK_KERNEL_MADD(-l.l31, y[3], y[1]), y[0] = BAYWORK_KERNEL_MADD(-l.l30, y[3], y[0]);
    y[1] = BAYWORK_KERNEL_MADD(-l.l21, y[2], y[1]), y[0] = BAYWORK_KERNEL_MADD(-l.l20, y[2], y[0]);
  }
  if (width > 1) y[0] = BAYWORK_KERNEL_MADD(-l.l10, y[1], y[0]);
}
/// minus_z := -Z, and z := Z D⁻¹ times `sign`.
template <Size width>
BAYWORK_KERNEL_HELPER void divide_tile(const PivotBlock& p, double sign, Lanes* z, double* minus_z, Size ldz) {
  at(minus_z).v = -z[0], z[0] *= sign * p.d0;
  if (width > 1) at(minus_z + ldz).v = -z[1], z[1] *= sign * p.d1;
  if (width > 2) at(minus_z + 2 * ldz).v = -z[2], z[2] *= sign * p.d2;
  if (width > 2) at(minus_z + 3 * ldz).v = -z[3], z[3] *= sign * p.d3;
}

/// Row tiles [top, rows) of the pivot columns: -Z into minus_z, and Y = Z D⁻¹ instead of them.
template <Size width>
BAYWORK_KERNEL_HELPER void solve_panel(const PivotBlock& p, Size top, Size rows, double* columns, Size ld,
                                       double* minus_z, Size ldz) {
  constexpr std::make_index_sequence<width> cells;
  PivotLanes l;
  spread_out(l, p);
  for (Size i = top; i < rows; i += lanes) {
    Lanes b[width];
    load<1>(b, columns + i, ld, cells);
    solve_tile<width>(l, b);
    divide_tile<width>(p, 1.0, b, minus_z + i, ldz);
    store<1>(b, columns + i, ld, cells);
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
