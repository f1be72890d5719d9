// SPDX-License-Identifier: MIT
// Products of vectors with a full matrix, and of one with rows of blocks.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// One chunk of row tiles for one vector. Columns take turns in two sums: one alone would wait for its last addition.
template <Size tiles, Size... Tile>
BAYWORK_KERNEL_HELPER void minus_chunk(Size columns, Size ld, const double* a, const double* x, double* y,
                                       std::index_sequence<Tile...>) {
  Lanes even[tiles], odd[tiles];
  clear(even, std::make_index_sequence<tiles>{});
  clear(odd, std::make_index_sequence<tiles>{});
  Size c = 0;
  for (; c + 2 <= columns; c += 2, a += 2 * ld) {
    const Lanes x0 = x[c] - Lanes{}, x1 = x[c + 1] - Lanes{};
    ((even[Tile] = BAYWORK_KERNEL_MADD(at(a + Tile * lanes).v, x0, even[Tile])), ...);
    ((odd[Tile] = BAYWORK_KERNEL_MADD(at(a + ld + Tile * lanes).v, x1, odd[Tile])), ...);
  }
  if (c < columns) {
    const Lanes x0 = x[c] - Lanes{};
    ((even[Tile] = BAYWORK_KERNEL_MADD(at(a + Tile * lanes).v, x0, even[Tile])), ...);
  }
  ((at(y + Tile * lanes).v -= even[Tile] + odd[Tile]), ...);
}
/// The same for four vectors: each number of a, once read, meets all of them.
template <Size tiles, Size... Tile, Size... Cell>
BAYWORK_KERNEL_HELPER void minus_four(Size columns, Size ld, const double* a, const double* const* x, double* const* y,
                                      Size row, std::index_sequence<Tile...>, std::index_sequence<Cell...> cells) {
  Lanes block[4 * tiles];
  clear(block, cells);
  for (Size c = 0; c < columns; ++c, a += ld) {
    Lanes column[] = {at(a + Tile * lanes).v...};
    (keep(column[Tile]), ...);
    ((block[Cell] = BAYWORK_KERNEL_MADD(column[Cell % tiles], (x[Cell / tiles][c] - Lanes{}), block[Cell])), ...);
  }
  ((at(y[Cell / tiles] + row + Cell % tiles * lanes).v -= block[Cell]), ...);
}
template <Size tiles>
BAYWORK_KERNEL_HELPER void minus_chunk_of_all(Size columns, Size ld, const double* a, Size count,
                                              const double* const* x, double* const* y, Size row) {
  constexpr std::make_index_sequence<tiles> all;
  Size k = 0;
  for (; k + 4 <= count; k += 4)
    minus_four<tiles>(columns, ld, a, x + k, y + k, row, all, std::make_index_sequence<4 * tiles>{});
  for (; k < count; ++k) minus_chunk<tiles>(columns, ld, a, x[k], y[k] + row, all);
}
BAYWORK_KERNEL_FUNCTION void minus_times(Size rows, Size columns, Size ld, const double* a, Size count,
                                         const double* const* x, double* const* y) {
  Size tiles = tiles_of(rows), row = 0;
  for (; tiles >= 3; tiles -= 3, row += 3 * lanes) minus_chunk_of_all<3>(columns, ld, a + row, count, x, y, row);
  for (; tiles > 0; --tiles, row += lanes) minus_chunk_of_all<1>(columns, ld, a + row, count, x, y, row);
}

/// Six sums of one row of blocks. The three columns have sums of their own: one would wait for its last addition.
inline constexpr Size lanes_of_six = tiles_of(6);
template <Size... Tile>
BAYWORK_KERNEL_HELPER void add_up_row(const double*& v, const std::uint32_t*& column, const std::uint32_t* end,
                                      const double* from, Lanes* sum, std::index_sequence<Tile...> tiles) {
  Lanes a[lanes_of_six], b[lanes_of_six];
  clear(sum, tiles), clear(a, tiles), clear(b, tiles);
  for (; column != end; ++column, v += 24) {
    const double* const f = from + *column;
    const Lanes f0 = f[0] - Lanes{}, f1 = f[1] - Lanes{}, f2 = f[2] - Lanes{};
    ((sum[Tile] = BAYWORK_KERNEL_MADD(at(v + Tile * lanes).v, f0, sum[Tile])), ...);
    ((a[Tile] = BAYWORK_KERNEL_MADD(at(v + 8 + Tile * lanes).v, f1, a[Tile])), ...);
    ((b[Tile] = BAYWORK_KERNEL_MADD(at(v + 16 + Tile * lanes).v, f2, b[Tile])), ...);
  }
  ((sum[Tile] += a[Tile] + b[Tile]), ...);
}
/// x -= c from. Two rows of blocks are twelve numbers, which are stored by fours as they will be read.
BAYWORK_KERNEL_FUNCTION void minus_block_rows(const BlockRowsOf<double>& c, const double* from, double* x) {
  constexpr std::make_index_sequence<lanes_of_six> tiles;
  const double* v = c.value;
  const std::uint32_t *column = c.column, *end = c.end;
  Lanes p[lanes_of_six], q[lanes_of_six];
  Size r = c.rows;
  for (; r >= 2; r -= 2, end += 2, x += 12) {
    add_up_row(v, column, c.column + end[0], from, p, tiles);
    add_up_row(v, column, c.column + end[1], from, q, tiles);
#if BAYWORK_KERNEL_LANES == 8
    part(x).v -= __builtin_shufflevector(p[0], p[0], 0, 1, 2, 3);
    part(x + 4).v -= __builtin_shufflevector(p[0], q[0], 4, 5, 8, 9);
    part(x + 8).v -= __builtin_shufflevector(q[0], q[0], 2, 3, 4, 5);
#elif BAYWORK_KERNEL_LANES == 4
    part(x).v -= p[0];
    part(x + 4).v -= __builtin_shufflevector(p[1], q[0], 0, 1, 4, 5);
    part(x + 8).v -= __builtin_shufflevector(q[0], q[1], 2, 3, 4, 5);
#else
    for (Size t = 0; t < 3; ++t) at(x + 2 * t).v -= p[t], at(x + 6 + 2 * t).v -= q[t];
#endif
  }
  if (r == 0) return;
  add_up_row(v, column, c.column + end[0], from, p, tiles);
#if BAYWORK_KERNEL_LANES == 8
  part(x).v -= __builtin_shufflevector(p[0], p[0], 0, 1, 2, 3);
  pair(x + 4).v -= __builtin_shufflevector(p[0], p[0], 4, 5);
#elif BAYWORK_KERNEL_LANES == 4
  part(x).v -= p[0];
  pair(x + 4).v -= __builtin_shufflevector(p[1], p[1], 0, 1);
#else
  for (Size t = 0; t < 3; ++t) at(x + 2 * t).v -= p[t];
#endif
}

BAYWORK_KERNEL_FUNCTION void apply_in_place(Size n, const double* packed, double* x) {
  if (kept_in_registers(n)) return apply(n, packed, x, x);
  alignas(64) double given[most_unpacked];
  for (Size i = 0; i < rounded_up(n, side); i += lanes) at(given + i).v = at(x + i).v;
  apply(n, packed, given, x);
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
