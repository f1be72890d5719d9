// SPDX-License-Identifier: MIT
// L D Lᵀ of the leading part of a symmetric matrix, and what is solved with it.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// The pivot block: L below its diagonal, the pivots' inverses on it.
template <Size width>
BAYWORK_KERNEL_HELPER void keep_block(double* s, Size ld, const PivotBlock& p) {
  s[0] = p.d0;
  if (width > 1) s[1] = p.l10, s[1 + ld] = p.d1;
  if (width > 2) s[2] = p.l20, s[3] = p.l30, s[2 + ld] = p.l21, s[3 + ld] = p.l31, s[2 + 2 * ld] = p.d2;
  if (width > 2) s[3 + 2 * ld] = p.l32, s[3 + 3 * ld] = p.d3;
}

#if BAYWORK_KERNEL_LANES == 8
/// A panel of less than a tile, if so many pivots are left before `end`, and what it does to the columns up to there.
template <Size width>
BAYWORK_KERNEL_HELPER Size eliminate_panel(Size first, Size end, Size n, Size ld, double* k, double* minus_z,
                                           Size apart, double* inverse) {
  if (first + width > end) return first;
  double *const columns = k + first * ld, *const s = columns + first;
  PivotBlock p;
  factor<width>(p, s, ld);
  solve_panel<width>(p, tile_start(first), n, columns, ld, minus_z, apart);
  keep_pivots<width>(inverse + first, p);
  keep_block<width>(s, ld, p);
  update_lower(fixed<width>, first + width, end, n, columns, ld, minus_z, apart, k, ld);
  return first + width;
}
/// The pivot tile: L below its diagonal, the pivots' inverses on it.
template <Size... Q>
BAYWORK_KERNEL_HELPER void keep_tile(double* tile, Size ld, const double* minus_l, const double* inverse,
                                     std::index_sequence<Q...>) {
  ((at(tile + Q * ld).v = -at(minus_l + 8 * Q).v, tile[Q * (ld + 1)] = inverse[Q]), ...);
}
/// A row tile of the pivot columns: -Z into minus_z, and Z D⁻¹ instead of it.
template <Size... Q>
BAYWORK_KERNEL_HELPER void divide_row_tile(double* rows, Size ld, const double* minus_l, const double* inverse,
                                           double* minus_z, Size apart, std::index_sequence<Q...> all) {
  Lanes b[8];
  load<1>(b, rows, ld, all);
  (pass_on<Q>(b, minus_l, std::make_index_sequence<7 - Q>{}), ...);
  ((at(minus_z + Q * apart).v = -b[Q], b[Q] *= inverse[Q]), ...);
  store<1>(b, rows, ld, all);
}
/// A function of its own: in a loop all of L would be kept in lanes, for which there are not registers enough.
BAYWORK_KERNEL_FUNCTION void divide_one(double* rows, Size ld, const double* minus_l, const double* inverse,
                                        double* minus_z, Size apart) {
  divide_row_tile(rows, ld, minus_l, inverse, minus_z, apart, std::make_index_sequence<8>{});
}
/// Groups of up to 24 pivots, by tiles and what is left of one: columns beyond a group are touched once for all of it.
BAYWORK_KERNEL_HELPER void eliminate_groups(Size n1, Size n, Size ld, double* k, double* minus_z, Size apart,
                                            double* inverse) {
  constexpr std::make_index_sequence<8> all;
  alignas(64) double minus_l[64];
  for (Size first = 0; first < n1;) {
    const Size end = smaller(first + 24, n1);
    Size p = first;
    for (; p + 8 <= end; p += 8) {
      double* const columns = k + p * ld;
      double* const mz = minus_z + (p - first) * apart;
      factor_tile(columns + p, ld, minus_l, inverse + p, all);
      keep_tile(columns + p, ld, minus_l, inverse + p, all);
      for (Size i = p + 8; i < n; i += 8) divide_one(columns + i, ld, minus_l, inverse + p, mz + i, apart);
      update_lower(fixed<8>, p + 8, end, n, columns, ld, mz, apart, k, ld);
    }
    p = eliminate_panel<4>(p, end, n, ld, k, minus_z + (p - first) * apart, apart, inverse);
    p = eliminate_panel<2>(p, end, n, ld, k, minus_z + (p - first) * apart, apart, inverse);
    eliminate_panel<1>(p, end, n, ld, k, minus_z + (p - first) * apart, apart, inverse);
    update_lower(end - first, end, n, n, k + first * ld, ld, minus_z, apart, k, ld);
    first = end;
  }
}
#else
template <Size width>
BAYWORK_KERNEL_HELPER Size eliminate_columns(Size first, Size n1, Size n, Size ld, double* k, double* minus_z, Size ldz,
                                             double* inverse) {
  if (first + width > n1) return first;
  PivotBlock p, next{};
  factor<width>(p, k + first * (ld + 1), ld);
  for (; first + width <= n1; first += width, p = next) {
    const Size after = first + width;
    double* const columns = k + first * ld;
    solve_panel<width>(p, tile_start(first), n, columns, ld, minus_z, ldz);
    keep_pivots<width>(inverse + first, p);
    keep_block<width>(columns + first, ld, p);
    // The next pivot block first: its factor is a long chain of operations that the other updates can run beside.
    Size done = after;
    if (after + width <= n1) {
      done += width;
      update_lower(fixed<width>, after, done, n, columns, ld, minus_z, ldz, k, ld);
      factor<width>(next, k + after * (ld + 1), ld);
    }
    update_lower(fixed<width>, done, n, n, columns, ld, minus_z, ldz, k, ld);
  }
  return first;
}
#endif

BAYWORK_KERNEL_FUNCTION double eliminate(Size n1, Size n2, Size ld, double* k, Size* worst) {
  // columns a page apart would be taken for each other
  constexpr Size most_pivots = lanes < 8 ? 4 : 24, most = 128, apart = most + 8;
  const Size n = n1 + n2;
  if (n > most) return PlainKernels<double>::eliminate(n1, n2, ld, k, worst);
  alignas(64) double minus_z[most_pivots * apart];
  Diagonals<most> d;
  keep_given(d, n1, ld, k);
#if BAYWORK_KERNEL_LANES == 8
  eliminate_groups(n1, n, ld, k, minus_z, apart, d.inverse);
#else
  Size done = eliminate_columns<4>(0, n1, n, ld, k, minus_z, apart, d.inverse);
  done = eliminate_columns<2>(done, n1, n, ld, k, minus_z, apart, d.inverse);
  eliminate_columns<1>(done, n1, n, ld, k, minus_z, apart, d.inverse);
#endif
  return pivot_ratio(d, n1, worst);
}

BAYWORK_KERNEL_FUNCTION void forward(Size n1, Size n2, Size ld, const double* l, double* h) {
  const Size n = n1 + n2;
  Size j = 0;
  for (; j + 4 <= n1; j += 4) {
    const double* const c = l + j * ld;
    const double h0 = h[j], h1 = h[j + 1] - c[j + 1] * h0;
    const double h2 = h[j + 2] - c[j + 2] * h0 - c[j + 2 + ld] * h1;
    const double h3 = h[j + 3] - c[j + 3] * h0 - c[j + 3 + ld] * h1 - c[j + 3 + 2 * ld] * h2;
    h[j + 1] = h1, h[j + 2] = h2, h[j + 3] = h3;
    Size i = j + 4;
    for (; i % lanes != 0 && i < n; ++i) h[i] -= c[i] * h0 + c[i + ld] * h1 + (c[i + 2 * ld] * h2 + c[i + 3 * ld] * h3);
    const Lanes m0 = Lanes{} - h0, m1 = Lanes{} - h1, m2 = Lanes{} - h2, m3 = Lanes{} - h3;
    for (; i < n; i += lanes) {
      Lanes sum = BAYWORK_KERNEL_MADD(at(c + i).v, m0, at(h + i).v);
      sum = BAYWORK_KERNEL_MADD(at(c + i + ld).v, m1, sum);
      sum = BAYWORK_KERNEL_MADD(at(c + i + 2 * ld).v, m2, sum);
      at(h + i).v = BAYWORK_KERNEL_MADD(at(c + i + 3 * ld).v, m3, sum);
    }
  }
  for (; j < n1; ++j)
    for (Size i = j + 1; i < n; ++i) h[i] -= l[i + j * ld] * h[j];
}

BAYWORK_KERNEL_FUNCTION void backward(Size n1, Size n2, Size ld, const double* l, double* h) {
  constexpr std::make_index_sequence<4> four;
  const Size n = n1 + n2;
  Size j = n1;
  for (; j % 4 != 0; --j) {
    double sum = h[j - 1] * l[(j - 1) * (ld + 1)];
    for (Size i = j; i < n; ++i) sum -= l[i + (j - 1) * ld] * h[i];
    h[j - 1] = sum;
  }
  for (; j > 0;) {
    j -= 4;
    const double* const c = l + j * ld;
    double s[4] = {};
    Size i = j + 4;
    for (; i % lanes != 0 && i < n; ++i)
      for (Size r = 0; r < 4; ++r) s[r] += c[i + r * ld] * h[i];
    Lanes sums[4];
    clear(sums, four);
    for (; i + lanes <= n; i += lanes) {
      const Lanes hi = at(h + i).v;
      add_dots(sums, c + i, ld, hi, four);
    }
    add_sums(sums, s);
    for (; i < n; ++i)
      for (Size r = 0; r < 4; ++r) s[r] += c[i + r * ld] * h[i];
    for (Size r = 0; r < 4; ++r) s[r] = h[j + r] * c[j + r + r * ld] - s[r];
    h[j + 3] = s[3];
    h[j + 2] = s[2] - c[j + 3 + 2 * ld] * h[j + 3];
    h[j + 1] = s[1] - c[j + 3 + ld] * h[j + 3] - c[j + 2 + ld] * h[j + 2];
    h[j] = s[0] - c[j + 3] * h[j + 3] - c[j + 2] * h[j + 2] - c[j + 1] * h[j + 1];
  }
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
