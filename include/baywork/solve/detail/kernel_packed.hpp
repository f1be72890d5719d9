// SPDX-License-Identifier: MIT
// A symmetric matrix packed so that each number is read once, and products with it.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// Width of the packed block columns. Block column j holds its columns one after the other, each from row j side on, to
/// the last row rounded up to `side`; the square at its top is full.
inline constexpr Size side = lanes < 4 ? 4 : lanes;

BAYWORK_KERNEL_FUNCTION Size packed_size(Size n) {
  const Size sides = rounded_up(n, side) / side;
  return side * side * (sides * (sides + 1) / 2);
}

BAYWORK_KERNEL_FUNCTION void pack(Size n, Size ld, const double* full, double* packed) {
  const Size rows = rounded_up(n, side);
  for (Size j = 0; j < rows; ++j)
    for (Size i = j / side * side; i < rows; i += lanes, packed += lanes) {
      if (j < n)
        at(packed).v = at(full + i + j * ld).v;
      else
        at(packed).v = Lanes{};
    }
}

/// Block column by block column: below its square, each number serves its row and, mirrored, its column.
BAYWORK_KERNEL_FUNCTION void apply(Size n, const double* packed, const double* x, double* y) {
  const Size rows = rounded_up(n, side);
  for (Size i = 0; i < rows; i += lanes) at(y + i).v = Lanes{};
  for (Size j = 0; j < rows; j += side) {
    const Size length = rows - j;
    for (Size c = 0; c < side; c += 4, packed += 4 * length) {
      const double *const p0 = packed, *const p1 = p0 + length, *const p2 = p1 + length, *const p3 = p2 + length;
      const Lanes x0 = x[j + c] - Lanes{}, x1 = x[j + c + 1] - Lanes{};
      const Lanes x2 = x[j + c + 2] - Lanes{}, x3 = x[j + c + 3] - Lanes{};
      Lanes sums[4];
      clear(sums, std::make_index_sequence<4>{});
      for (Size i = 0; i < length; i += lanes) {
        const Lanes v0 = at(p0 + i).v, v1 = at(p1 + i).v, v2 = at(p2 + i).v, v3 = at(p3 + i).v;
        Lanes left = v0 * x0, right = v1 * x1;
        left = BAYWORK_KERNEL_MADD(v2, x2, left), right = BAYWORK_KERNEL_MADD(v3, x3, right);
        at(y + j + i).v += left + right;
        if (i < side) continue;
        const Lanes xi = at(x + j + i).v;
        sums[0] = BAYWORK_KERNEL_MADD(v0, xi, sums[0]), sums[1] = BAYWORK_KERNEL_MADD(v1, xi, sums[1]);
        sums[2] = BAYWORK_KERNEL_MADD(v2, xi, sums[2]), sums[3] = BAYWORK_KERNEL_MADD(v3, xi, sums[3]);
      }
      add_sums(sums, y + j + c);
    }
  }
}

template <Size columns>
BAYWORK_KERNEL_HELPER void product_chunks(Size n, const double* full, Size rows, const double* x, double* y, Size ld) {
  Size i = 0;
  for (; i + 3 * lanes <= rows; i += 3 * lanes) {
    constexpr std::make_index_sequence<3 * columns> cells;
    Lanes block[3 * columns];
    clear(block, cells);
    add_products<3, columns>(block, n, full + i, rows, x, ld, 1);
    store<3>(block, y + i, ld, cells);
  }
  for (; i < rows; i += lanes) {
    constexpr std::make_index_sequence<columns> cells;
    Lanes block[columns];
    clear(block, cells);
    add_products<1, columns>(block, n, full + i, rows, x, ld, 1);
    store<1>(block, y + i, ld, cells);
  }
}

/// Four vectors at a time, from the matrix in full.
BAYWORK_KERNEL_FUNCTION void apply_many(Size n, const double* packed, Size ld, const double* x, double* y, Size m) {
  constexpr Size most = 48;
  if (n <= most && m >= 4) {
    alignas(64) double full[most * most];
    const Size rows = rounded_up(n, side);
    const double* from = packed;
    for (Size j = 0; j < rows; ++j) {
      const Size top = j / side * side;
      for (Size i = top; i < rows; i += lanes, from += lanes) at(full + i + j * rows).v = at(from).v;
      if (j % 4 != 3) continue;
      for (Size i = top + side; i < rows; i += 4)
        transpose_tile<false>(full + i + (j - 3) * rows, rows, full + j - 3 + i * rows, rows);
    }
    for (; m >= 4; m -= 4, x += 4 * ld, y += 4 * ld) product_chunks<4>(n, full, rows, x, y, ld);
  }
  for (; m > 0; --m, x += ld, y += ld) apply(n, packed, x, y);
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
