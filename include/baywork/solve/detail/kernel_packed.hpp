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

#if BAYWORK_KERNEL_LANES == 8
/// Lanes from fours of doubles: eight at once would wait until two stores of four have reached the cache.
BAYWORK_KERNEL_HELPER void load_parts(Lanes& to, const double* x) {
  const Part low = part(x).v, high = part(x + 4).v;
  to = __builtin_shufflevector(low, high, 0, 1, 2, 3, 4, 5, 6, 7);
}
/// y[c] += the sum of the lanes of sums[c].
BAYWORK_KERNEL_HELPER void add_sums_of_square(const Lanes* sums, Lanes& y) {
  Part low{}, high{};
  sum_lanes(sums, low);
  sum_lanes(sums + 4, high);
  y += __builtin_shufflevector(low, high, 0, 1, 2, 3, 4, 5, 6, 7);
}

/// Column c of a block column `top` tiles down: each number serves its row and, below the square, its column.
template <Size top, Size tiles, Size... Tile>
BAYWORK_KERNEL_HELPER void apply_column(Size c, const double* packed, const double* x, const Lanes* xs, Lanes* ys,
                                        Lanes& sum, std::index_sequence<Tile...>) {
  const double* const from = packed + c * sizeof...(Tile) * lanes;
  const Lanes xc = x[top * lanes + c] - Lanes{};
  const Lanes v[] = {at(from + Tile * lanes).v...};
  Lanes* const y = ys + c % 2 * tiles;
  ((y[top + Tile] = BAYWORK_KERNEL_MADD(v[Tile], xc, y[top + Tile])), ...);
  ((sum = Tile == 0 ? sum : BAYWORK_KERNEL_MADD(v[Tile], xs[top + Tile], sum)), ...);
}
template <Size top, Size tiles, Size... Column>
BAYWORK_KERNEL_HELPER void apply_block_column(const double* packed, const double* x, const Lanes* xs, Lanes* ys,
                                              std::index_sequence<Column...> columns) {
  Lanes sums[lanes];
  clear(sums, columns);
  (apply_column<top, tiles>(Column, packed, x, xs, ys, sums[Column], std::make_index_sequence<tiles - top>{}), ...);
  if (top + 1 < tiles) add_sums_of_square(sums, ys[top]);
}
/// For orders of up to `tiles` tiles, which stay in registers.
template <Size tiles, Size... Tile>
BAYWORK_KERNEL_HELPER void apply_tiles(const double* packed, const double* x, double* y, std::index_sequence<Tile...>) {
  Lanes xs[tiles], ys[2 * tiles];
  (load_parts(xs[Tile], x + Tile * lanes), ...);
  clear(ys, std::make_index_sequence<2 * tiles>{});
  constexpr std::make_index_sequence<lanes> columns;
  (apply_block_column<Tile, tiles>(packed + lanes * lanes * (Tile * tiles - Tile * (Tile - 1) / 2), x, xs, ys, columns), ...);
  ((at(y + Tile * lanes).v = ys[Tile] + ys[tiles + Tile]), ...);
}
#endif

/// Block column by block column: below its square, each number serves its row and, mirrored, its column.
BAYWORK_KERNEL_FUNCTION void apply_any(Size n, const double* packed, const double* x, double* y) {
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

/// Whether y may be x.
BAYWORK_KERNEL_HELPER bool kept_in_registers(Size n) { return lanes == 8 && tiles_of(n) <= 4; }
BAYWORK_KERNEL_FUNCTION void apply(Size n, const double* packed, const double* x, double* y) {
#if BAYWORK_KERNEL_LANES == 8
  switch (tiles_of(n)) {
    case 1: return apply_tiles<1>(packed, x, y, std::make_index_sequence<1>{});
    case 2: return apply_tiles<2>(packed, x, y, std::make_index_sequence<2>{});
    case 3: return apply_tiles<3>(packed, x, y, std::make_index_sequence<3>{});
    case 4: return apply_tiles<4>(packed, x, y, std::make_index_sequence<4>{});
    default: break;
  }
#endif
  apply_any(n, packed, x, y);
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

/// Orders that are unpacked on the stack.
inline constexpr Size most_unpacked = 48;

/// The matrix in full, its columns rounded_up(n, side) apart.
BAYWORK_KERNEL_HELPER void unpack(Size n, const double* packed, double* full) {
  const Size rows = rounded_up(n, side);
  for (Size j = 0; j < rows; ++j) {
    const Size top = j / side * side;
    for (Size i = top; i < rows; i += lanes, packed += lanes) at(full + i + j * rows).v = at(packed).v;
    if (j % 4 != 3) continue;
    for (Size i = top + side; i < rows; i += 4)
      transpose_tile<false>(full + i + (j - 3) * rows, rows, full + j - 3 + i * rows, rows);
  }
}

/// Four vectors at a time, from the matrix in full.
BAYWORK_KERNEL_FUNCTION void apply_many(Size n, const double* packed, Size ld, const double* x, double* y, Size m) {
  if (n <= most_unpacked && m >= 4) {
    alignas(64) double full[most_unpacked * most_unpacked];
    const Size rows = rounded_up(n, side);
    unpack(n, packed, full);
    for (; m >= 4; m -= 4, x += 4 * ld, y += 4 * ld) product_chunks<4>(n, full, rows, x, y, ld);
  }
  for (; m > 0; --m, x += ld, y += ld) apply(n, packed, x, y);
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
