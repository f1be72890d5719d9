// SPDX-License-Identifier: MIT
// The inverse of a symmetric positive definite matrix.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// Symmetric Gauss-Jordan elimination in the lower triangle, `width` pivots at a time, in place. Rows and columns
/// before the pivots are done: among themselves they hold their inverse, and with those to come what the sweep operator
/// leaves there (J. H. Goodnight, A tutorial on the SWEEP operator, The American Statistician 33 (1979) 149-158). With
/// B the pivot columns, rows before the pivots taken from the pivot rows and the pivot block L D Lᵀ replaced by 1: Z =
/// B L⁻ᵀ, Y = Z D⁻¹; the other columns become A - Y Zᵀ (A + Y Zᵀ in rows that are done, and with zero for A in the
/// pivot rows), and the pivot columns become Y L⁻¹. All goes through L: the inverse of an ill-conditioned pivot block
/// would spread its rounding (order 6, condition 1e8: errors of several hundred eps times the condition, not below 24).
template <Size width>
BAYWORK_KERNEL_HELPER Size sweep_columns(Size k, Size n, Size ld, double* a, double* y, double* minus_z, Size apart,
                                         double* inverse) {
  if (k + width > n) return k;
  const Size rows = rounded_up(n, lanes);
  PivotBlock p, next{};
  factor<width>(p, a + k * (ld + 1), ld);
  for (; k + width <= n; k += width, p = next) {
    const Size after = k + width, top = tile_start(k);
    double* const columns = a + k * ld;
    keep_pivots<width>(inverse + k, p);
    for (Size j = 0; j < k; j += width) {
      double* const left = a + k + j * ld;
      if (width == 4) {
        transpose_tile<false>(left, ld, y + j, apart);
        for (Size c = 0; c < 4; ++c)
          for (Size r = 0; r < 4; r += lanes_of_part) part(left + r + c * ld).v = Part{};
      } else {
        for (Size c = 0; c < width; ++c)
          for (Size r = 0; r < width; ++r) y[j + c + r * apart] = left[r + c * ld], left[r + c * ld] = 0.0;
      }
    }
    for (Size r = 0; r < width; ++r) {
      for (Size i = top; i < k; ++i) columns[i + r * ld] = y[i + r * apart];
      for (Size i = 0; i < width; ++i) columns[k + i + r * ld] = i == r ? 1.0 : 0.0;
    }
    solve_panel<width>(p, 0, top, y, apart, -1.0, y, apart, minus_z, apart);
    solve_panel<width>(p, top, rows, columns, ld, 1.0, y, apart, minus_z, apart);
    for (Size r = 0; r < width; ++r)
      for (Size i = top; i < k; ++i) y[i + r * apart] = -y[i + r * apart];
    // The next pivot block first: its factor is a long chain of operations that the other updates can run beside.
    Size done = after;
    if (after + width <= n) {
      done += width;
      update_lower(after, done, rows, width, y, apart, minus_z, apart, a, ld);
      factor<width>(next, a + after * (ld + 1), ld);
    }
    update_lower(0, k, rows, width, y, apart, minus_z, apart, a, ld);
    update_lower(done, n, rows, width, y, apart, minus_z, apart, a, ld);
    const Lanes l10 = p.l10 - Lanes{}, l20 = p.l20 - Lanes{}, l30 = p.l30 - Lanes{};
    const Lanes l21 = p.l21 - Lanes{}, l31 = p.l31 - Lanes{}, l32 = p.l32 - Lanes{};
    for (Size i = top; i < rows; i += lanes) {
      Lanes w0 = at(y + i).v;
      if (width > 1) {
        Lanes w1 = at(y + i + apart).v;
        if (width > 2) {
          const Lanes w3 = at(y + i + 3 * apart).v, w2 = BAYWORK_KERNEL_MADD(-l32, w3, at(y + i + 2 * apart).v);
          w1 = BAYWORK_KERNEL_MADD(-l31, w3, w1), w0 = BAYWORK_KERNEL_MADD(-l30, w3, w0);
          w1 = BAYWORK_KERNEL_MADD(-l21, w2, w1), w0 = BAYWORK_KERNEL_MADD(-l20, w2, w0);
          at(columns + i + 2 * ld).v = w2, at(columns + i + 3 * ld).v = w3;
        }
        w0 = BAYWORK_KERNEL_MADD(-l10, w1, w0);
        at(columns + i + ld).v = w1;
      }
      at(columns + i).v = w0;
    }
  }
  return k;
}

BAYWORK_KERNEL_FUNCTION double invert(Size n, Size ld, double* a) {
  constexpr Size most = 128;
  if (n > most) return PlainKernels<double>::invert(n, ld, a);
  alignas(64) double y[4 * most], minus_z[4 * most];
  Diagonals<most> d;
  keep_given(d, n, ld, a);
  Size done = sweep_columns<4>(0, n, ld, a, y, minus_z, most, d.inverse);
  done = sweep_columns<2>(done, n, ld, a, y, minus_z, most, d.inverse);
  sweep_columns<1>(done, n, ld, a, y, minus_z, most, d.inverse);
  const Size whole = n / 4 * 4;  // columns in whole tiles
  for (Size j = 0; j < n; j += 4) {
    const Size end = j + 4 < n ? j + 4 : n;
    for (Size c = j; c < end; ++c)
      for (Size r = c + 1; r < end; ++r) a[c + r * ld] = a[r + c * ld];
    for (Size i = j + 4; i < whole; i += 4) transpose_tile<false>(a + i + j * ld, ld, a + j + i * ld, ld);
    for (Size i = larger(whole, j + 4); i < n; ++i)
      for (Size c = j; c < end; ++c) a[c + i * ld] = a[i + c * ld];
  }
  Size worst = 0;
  return pivot_ratio(d, n, &worst);
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
