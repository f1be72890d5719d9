// SPDX-License-Identifier: MIT
// The inverse of a symmetric positive definite matrix.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// Rows of a row tile, counted from the pivots' first: below zero those that are done, below `width` the pivots.
template <Size... R>
BAYWORK_KERNEL_HELPER void count_rows(Lanes& rows, Size first, Size k, std::index_sequence<R...>) {
  rows = Lanes{static_cast<double>(R)...} + (static_cast<double>(first) - static_cast<double>(k));
}
/// Pivot columns in the row tile at `first`, k - first rows of which are done: those from the pivot rows, a unit matrix
/// for the pivot rows.
template <Size width>
BAYWORK_KERNEL_HELPER void load_mixed(const double* a, Size ld, Size first, Size k, const Lanes& row, Lanes* b) {
  constexpr std::make_index_sequence<width> cells;
  Lanes done[4] = {};
  if (width == 1)
    for (Size r = 0; r < lanes && first + r < k; ++r) done[0][r] = a[k + (first + r) * ld];
#if BAYWORK_KERNEL_LANES == 8
  if (width > 1 && first < k) load_rows(a + k + first * ld, ld, 0, done);
#endif
  load<1>(b, a + first + k * ld, ld, cells);
  for (Size c = 0; c < width; ++c) {
    const Lanes unit = row == static_cast<double>(c) - Lanes{} ? Lanes{} + 1.0 : Lanes{};
    b[c] = row < Lanes{} ? done[c] : (row < static_cast<double>(width) - Lanes{} ? unit : b[c]);
  }
}

/// Symmetric Gauss-Jordan elimination in the lower triangle, `width` pivots at a time, in place. Rows and columns
/// before the pivots are done: among themselves they hold their inverse, and with those to come what the sweep operator
/// leaves there (J. H. Goodnight, A tutorial on the SWEEP operator, The American Statistician 33 (1979) 149-158). With
/// B the pivot columns, rows before the pivots taken from the pivot rows and the pivot block L D Lᵀ replaced by 1: Z =
/// B L⁻ᵀ, Y = Z D⁻¹; the other columns become A - Y Zᵀ (A + Y Zᵀ in rows that are done, and with zero for A in the
/// pivot rows), and the pivot columns become Y L⁻¹. All goes through L: the inverse of an ill-conditioned pivot block
/// would spread its rounding (order 6, condition 1e8: errors of several hundred eps times the condition, not below 24).
/// Rows are turned in registers: what was stored in parts has to wait before it is read as a whole.
template <Size width>
BAYWORK_KERNEL_HELPER Size sweep_columns(Size k, Size n, Size ld, double* a, double* y, double* minus_z, Size apart,
                                         double* inverse) {
  if (k + width > n) return k;
  constexpr std::make_index_sequence<width> cells;
  constexpr std::make_index_sequence<lanes> all;
  const Size rows = rounded_up(n, lanes);
  PivotBlock p, next{};
  factor<width>(p, a + k * (ld + 1), ld);
  for (; k + width <= n; k += width, p = next) {
    const Size after = k + width, first = tile_start(k), end = rounded_up(after, lanes);
    double* const columns = a + k * ld;
    PivotLanes l;
    spread_out(l, p);
    keep_pivots<width>(inverse + k, p);
    Lanes b[4] = {};
    for (Size i = end; i < rows; i += lanes) {
      load<1>(b, columns + i, ld, cells);
      solve_tile<width>(l, b);
      divide_tile<width>(p, 1.0, b, minus_z + i, apart);
      store<1>(b, y + i, apart, cells);
      solve_tile_back<width>(l, b);
      store<1>(b, columns + i, ld, cells);
    }
    Lanes row;
    for (Size i = first; i < end; i += lanes) {
      count_rows(row, i, k, all);
      load_mixed<width>(a, ld, i, k, row, b);
      solve_tile<width>(l, b);
      divide_tile<width>(p, 1.0, b, minus_z + i, apart);
      for (Size c = 0; c < width; ++c) at(y + i + c * apart).v = row < Lanes{} ? -b[c] : b[c];
      solve_tile_back<width>(l, b);
      store<1>(b, columns + i, ld, cells);
    }
    // The next pivot block first: its factor is a long chain of operations that the other updates can run beside.
    Size begin = after;
    if (after + width <= n) {
      begin += width;
      update_lower(fixed<width>, after, begin, rows, y, apart, minus_z, apart, a, ld);
      factor<width>(next, a + after * (ld + 1), ld);
    }
    for (Size i = 0; i < first; i += lanes) {
      if (width > 1)
        load_rows(a + k + i * ld, ld, b);
      else
        for (Size r = 0; r < lanes; ++r) b[0][r] = a[k + (i + r) * ld];
      solve_tile<width>(l, b);
      divide_tile<width>(p, -1.0, b, minus_z + i, apart);
      store<1>(b, y + i, apart, cells);
    }
    for (Size i = first; i < end; i += lanes) {  // pivot rows of the columns that are done
      count_rows(row, i, k, all);
      for (Size j = 0; j < k; ++j) {
        Place& cell = at(a + i + j * ld);
        cell.v = row < Lanes{} ? cell.v : (row < static_cast<double>(width) - Lanes{} ? Lanes{} : cell.v);
      }
    }
    update_lower(fixed<width>, 0, k, rows, y, apart, minus_z, apart, a, ld);
    update_lower(fixed<width>, begin, n, rows, y, apart, minus_z, apart, a, ld);
  }
  return k;
}

#if BAYWORK_KERNEL_LANES == 8
// The same by whole tiles, eight pivots at a time.
template <Size q, Size... Before>
BAYWORK_KERNEL_HELPER void pass_back(Lanes* b, const double* minus_l, std::index_sequence<Before...>) {
  ((b[Before] = BAYWORK_KERNEL_MADD(b[q], (minus_l[8 * Before + q] - Lanes{}), b[Before])), ...);
}
/// Row tile i of the pivot columns at k: it becomes Y L⁻¹; on the way minus_z := -Z and y := Z D⁻¹ (-Z D⁻¹ in rows that
/// are done).
template <Size... Q>
BAYWORK_KERNEL_HELPER void pass_tile(Size i, Size k, Size ld, double* a, const double* minus_l, const double* inverse,
                                     double* y, double* minus_z, Size apart, std::index_sequence<Q...> all) {
  alignas(64) static constexpr double unit[16] = {0, 0, 0, 0, 0, 0, 0, 1};
  Lanes b[8];
  if (i > k) {
    load<1>(b, a + i + k * ld, ld, all);
  } else if (i == k) {
    ((b[Q] = at(unit + 7 - Q).v), ...);
  } else {
    double* const left = a + k + i * ld;
    load_rows(left, ld, b), load_rows(left + 4, ld, b + 4);
    ((at(left + Q * ld).v = Lanes{}), ...);
  }
  const double sign = i < k ? -1.0 : 1.0;
  (pass_on<Q>(b, minus_l, std::make_index_sequence<7 - Q>{}), ...);
  ((at(minus_z + i + Q * apart).v = -b[Q], b[Q] *= sign * inverse[k + Q]), ...);
  store<1>(b, y + i, apart, all);
  if (i < k) return;
  (pass_back<7 - Q>(b, minus_l, std::make_index_sequence<7 - Q>{}), ...);
  store<1>(b, a + i + k * ld, ld, all);
}
/// A function of its own: in a loop all of L would be kept in lanes, for which there are not registers enough.
BAYWORK_KERNEL_FUNCTION void pass_one(Size i, Size k, Size ld, double* a, const double* minus_l, const double* inverse,
                                      double* y, double* minus_z, Size apart) {
  pass_tile(i, k, ld, a, minus_l, inverse, y, minus_z, apart, std::make_index_sequence<8>{});
}
BAYWORK_KERNEL_HELPER Size sweep_tiles(Size n, Size ld, double* a, double* y, double* minus_z, Size apart,
                                       double* inverse) {
  constexpr std::make_index_sequence<8> all;
  alignas(64) double minus_l[64];
  const Size rows = rounded_up(n, 8);
  if (n >= 8) factor_tile(a, ld, minus_l, inverse, all);
  Size k = 0;
  for (; k + 8 <= n; k += 8) {
    for (Size i = 0; i < rows; i += 8) pass_one(i, k, ld, a, minus_l, inverse, y, minus_z, apart);
    Size begin = k + 8;
    if (k + 16 <= n) {
      begin += 8;
      update_lower(fixed<8>, k + 8, begin, rows, y, apart, minus_z, apart, a, ld);
      factor_tile(a + (k + 8) * (ld + 1), ld, minus_l, inverse + k + 8, all);
    }
    update_lower(fixed<8>, 0, k, rows, y, apart, minus_z, apart, a, ld);
    update_lower(fixed<8>, begin, n, rows, y, apart, minus_z, apart, a, ld);
  }
  return k;
}
#endif

BAYWORK_KERNEL_FUNCTION double invert(Size n, Size ld, double* a) {
  constexpr Size most_pivots = lanes < 8 ? 4 : 8, most = 128, apart = most + 8;  // columns a page apart would be taken for each other
  if (n > most) return PlainKernels<double>::invert(n, ld, a);
  alignas(64) double y[most_pivots * apart], minus_z[most_pivots * apart];
  Diagonals<most> d;
  keep_given(d, n, ld, a);
  Size done = 0;
#if BAYWORK_KERNEL_LANES == 8
  done = sweep_tiles(n, ld, a, y, minus_z, apart, d.inverse);
#endif
  done = sweep_columns<4>(done, n, ld, a, y, minus_z, apart, d.inverse);
  done = sweep_columns<2>(done, n, ld, a, y, minus_z, apart, d.inverse);
  sweep_columns<1>(done, n, ld, a, y, minus_z, apart, d.inverse);
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
