// SPDX-License-Identifier: MIT
// Products with many vectors, eight side by side: number u of all eight stands in x[8 u] to x[8 u + 7].
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// Lanes that hold number u of eight vectors.
inline constexpr Size abreast = 8 / lanes;
/// Rows whose sums stay in registers.
inline constexpr Size rows_at_once = lanes == 8 ? 24 : 12 / abreast;

/// `rows` rows of y = a x, or y -= a x, for one group; rows of a are `step` apart.
template <bool minus, Size rows, class Step, Size... Cell>
BAYWORK_KERNEL_HELPER void group_rows(Size columns, Step step, Size ld, const double* a, const double* x, double* y,
                                      std::index_sequence<Cell...> cells) {
  Lanes sums[rows * abreast];
  clear(sums, cells);
  for (Size c = 0; c < columns; ++c, a += ld, x += 8) {
    Lanes xc[abreast];
    load<1>(xc, x, lanes, std::make_index_sequence<abreast>{});
    ((sums[Cell] = BAYWORK_KERNEL_MADD((a[Cell / abreast * step] - Lanes{}), xc[Cell % abreast], sums[Cell])), ...);
  }
  if constexpr (minus)
    ((at(y + Cell * lanes).v -= sums[Cell]), ...);
  else
    store<1>(sums, y, lanes, cells);
}
template <bool minus, class Step>
BAYWORK_KERNEL_HELPER void group_product(Size rows, Size columns, Step step, Size ld, const double* a, const double* x, double* y) {
  Size r = 0;
  for (; r + rows_at_once <= rows; r += rows_at_once)
    group_rows<minus, rows_at_once>(columns, step, ld, a + r * step, x, y + 8 * r, std::make_index_sequence<rows_at_once * abreast>{});
  for (; r + 12 <= rows; r += 12)
    group_rows<minus, 12>(columns, step, ld, a + r * step, x, y + 8 * r, std::make_index_sequence<12 * abreast>{});
  for (; r + 6 <= rows; r += 6)
    group_rows<minus, 6>(columns, step, ld, a + r * step, x, y + 8 * r, std::make_index_sequence<6 * abreast>{});
  for (; r < rows; ++r) group_rows<minus, 1>(columns, step, ld, a + r * step, x, y + 8 * r, std::make_index_sequence<abreast>{});
}

BAYWORK_KERNEL_FUNCTION void apply_groups(Size n, const double* packed, Size groups, const double* x, double* y) {
  alignas(64) double full[most_unpacked * most_unpacked];
  const Size ld = rounded_up(n, side);
  unpack(n, packed, full);
  for (; groups > 0; --groups, x += 8 * n, y += 8 * n) group_product<false>(n, n, fixed<1>, ld, full, x, y);
}
template <class Step>
BAYWORK_KERNEL_HELPER void group_products(bool minus, Size rows, Size columns, Step step, Size ld, const double* a,
                                          Size groups, Size x_apart, const double* x, Size y_apart, double* y) {
  for (; groups > 0; --groups, x += x_apart, y += y_apart)
    if (minus)
      group_product<true>(rows, columns, step, ld, a, x, y);
    else
      group_product<false>(rows, columns, step, ld, a, x, y);
}
BAYWORK_KERNEL_FUNCTION void times_groups(bool minus, Size rows, Size columns, Size step, Size ld, const double* a,
                                          Size groups, Size x_apart, const double* x, Size y_apart, double* y) {
  if (step == 1)
    group_products(minus, rows, columns, fixed<1>, ld, a, groups, x_apart, x, y_apart, y);
  else
    group_products(minus, rows, columns, fixed<2>, ld, a, groups, x_apart, x, y_apart, y);
}

/// `count` groups at once, so that each number of the matrix is fetched for all of them.
template <bool minus, Size count, Size... Cell>
BAYWORK_KERNEL_HELPER void listed_rows(const RowsOf<double>& a, Size x_apart, const double* x, double* y,
                                       std::index_sequence<Cell...> cells) {
  const std::uint32_t* c = a.column;
  const double* value = a.value;
  const Size rows = a.rows;
  for (Size r = 0; r < rows; ++r) {
    const std::uint32_t* const stop = a.column + a.end[r];
    if (c == stop) continue;
    Lanes sums[count * abreast];
    clear(sums, cells);
    for (; c != stop; ++c, ++value) {
      const Lanes v = *value - Lanes{};
      const double* const xc = x + 8 * *c;
      ((sums[Cell] = BAYWORK_KERNEL_MADD(v, at(xc + Cell / abreast * x_apart + Cell % abreast * lanes).v, sums[Cell])),
       ...);
    }
    double* const yr = y + 8 * r;
    if (minus)
      ((at(yr + Cell / abreast * 8 * rows + Cell % abreast * lanes).v -= sums[Cell]), ...);
    else
      ((at(yr + Cell / abreast * 8 * rows + Cell % abreast * lanes).v = sums[Cell]), ...);
  }
}
template <bool minus>
BAYWORK_KERNEL_HELPER void listed_groups(const RowsOf<double>& c, Size groups, Size x_size, const double* x, double* y) {
  for (; groups >= 4; groups -= 4, x += 32 * x_size, y += 32 * c.rows)
    listed_rows<minus, 4>(c, 8 * x_size, x, y, std::make_index_sequence<4 * abreast>{});
  for (; groups > 0; --groups, x += 8 * x_size, y += 8 * c.rows)
    listed_rows<minus, 1>(c, 8 * x_size, x, y, std::make_index_sequence<abreast>{});
}
BAYWORK_KERNEL_FUNCTION void rows_groups(bool minus, const RowsOf<double>& c, Size groups, Size x_size, const double* x,
                                         double* y) {
  if (minus)
    listed_groups<true>(c, groups, x_size, x, y);
  else
    listed_groups<false>(c, groups, x_size, x, y);
}

BAYWORK_KERNEL_FUNCTION void to_group(Size n, Size ld, const double* columns, Size count, double* group) {
  Size c = 0;
  for (; c + 4 <= count; c += 4) {
    Size i = 0;
    for (; i + 4 <= n; i += 4) transpose_tile<false>(columns + i + c * ld, ld, group + 8 * i + c, 8);
    for (; i < n; ++i)
      for (Size k = c; k < c + 4; ++k) group[8 * i + k] = columns[i + k * ld];
  }
  for (; c < 8; ++c)
    for (Size i = 0; i < n; ++i) group[8 * i + c] = c < count ? columns[i + c * ld] : 0.0;
}
BAYWORK_KERNEL_FUNCTION void from_group(Size n, Size ld, const double* group, Size count, double* columns) {
  Size c = 0;
  for (; c + 4 <= count; c += 4) {
    Size i = 0;
    for (; i + 4 <= n; i += 4) transpose_tile<false>(group + 8 * i + c, 8, columns + i + c * ld, ld);
    for (; i < n; ++i)
      for (Size k = c; k < c + 4; ++k) columns[i + k * ld] = group[8 * i + k];
  }
  for (; c < count; ++c)
    for (Size i = 0; i < n; ++i) columns[i + c * ld] = group[8 * i + c];
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
