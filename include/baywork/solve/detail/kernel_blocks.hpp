// SPDX-License-Identifier: MIT
// Products with a sparse matrix of 6 x 6 blocks.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// Six columns of x = p c, or of x += p c, in one chunk of row tiles: the blocks of c in block column `column`.
template <Size tiles, bool add>
BAYWORK_KERNEL_HELPER void block_column_chunk(const double* p, Size ld, const Block6* blocks, Size count, int column,
                                              double* x, Size ldx) {
  constexpr std::make_index_sequence<6 * tiles> cells;
  Lanes block[6 * tiles];
  if (add)
    load<tiles>(block, x, ldx, cells);
  else
    clear(block, cells);
  for (const Block6* b = blocks; b != blocks + count; ++b)
    if (b->column == column) {
      if (b->size == 3)
        add_products<tiles, 3>(block, 3, p + b->first_row() * ld, ld, b->value, 8, 1);
      else
        add_products<tiles, 6>(block, 6, p + b->first_row() * ld, ld, b->value, 8, 1);
    }
  store<tiles>(block, x, ldx, cells);
}
template <bool add>
BAYWORK_KERNEL_HELPER void block_column(Size top, Size rows, const double* p, Size ld, const Block6* blocks, Size count,
                                        int column, double* x, Size ldx) {
  Size i = top;
  for (; i + lanes < rows; i += 2 * lanes) block_column_chunk<2, add>(p + i, ld, blocks, count, column, x + i, ldx);
  if (i < rows) block_column_chunk<1, add>(p + i, ld, blocks, count, column, x + i, ldx);
}

/// By fours and twos: what is added up again and again must be read in the parts in which it was stored.
BAYWORK_KERNEL_FUNCTION void add_blocks(const Block6* blocks, Size count, double* to, Size ld) {
  for (const Block6* b = blocks; b != blocks + count; ++b) {
    double* c = to + b->first_row() + b->first_column() * ld;
    const double* v = b->value;
    for (Size j = 0; j < 6; ++j, c += ld, v += 8) {
      for (Size i = 0; i < 4; i += lanes_of_part) part(c + i).v += part(v + i).v;
      pair(c + 4).v += pair(v + 4).v;
    }
  }
}

BAYWORK_KERNEL_FUNCTION void times_blocks(Size n1, Size n2, Size ld, const double* p, const Block6* blocks, Size count,
                                          Size ldx, double* x) {
  for (Size j = 0; 6 * j < n2; ++j)
    block_column<false>(0, n1, p, ld, blocks, count, static_cast<int>(j), x + 6 * j * ldx, ldx);
}

/// D is symmetric and so is Cᵀ X: D -= Xᵀ C, which runs down whole columns of Xᵀ.
BAYWORK_KERNEL_FUNCTION void minus_blocks_transposed(Size n1, Size n2, Size ldx, const double* x, const Block6* blocks,
                                                     Size count, Size ldd, double* d, double* minus_xt) {
  Size i = 0;
  for (; i + 4 <= n1; i += 4) {
    Size j = 0;
    for (; j + 4 <= n2; j += 4) transpose_tile<true>(x + i + j * ldx, ldx, minus_xt + j + i * ldd, ldd);
    for (; j < n2; ++j)
      for (Size r = 0; r < 4; ++r) minus_xt[j + (i + r) * ldd] = -x[i + r + j * ldx];
  }
  for (; i < n1; ++i)
    for (Size j = 0; j < n2; ++j) minus_xt[j + i * ldd] = -x[i + j * ldx];
  for (Size c = 0; c < n1; ++c)
    for (Size j = n2; j < rounded_up(n2, lanes); ++j) minus_xt[j + c * ldd] = 0.0;
  for (Size j = 0; 6 * j < n2; ++j)
    block_column<true>(tile_start(6 * j), n2, minus_xt, ldd, blocks, count, static_cast<int>(j), d + 6 * j * ldd, ldd);
}

/// Row tiles of one block.
inline constexpr Size six = tiles_of(6);

/// Six rows of y, `columns` vectors: y -= v x, v 6 x 6 with leading dimension 8. Rows past the sixth are not touched.
template <Size columns>
BAYWORK_KERNEL_HELPER void minus_block_times(const double* v, const double* x, Size ldx, double* y, Size ldy) {
  Lanes block[six * columns];
  clear(block, std::make_index_sequence<six * columns>{});
  add_products<six, columns>(block, 6, v, 8, x, ldx, 1);
  for (Size c = 0; c < columns; ++c, y += ldy) {
#if BAYWORK_KERNEL_LANES == 2
    for (Size t = 0; t < six; ++t) at(y + 2 * t).v -= block[six * c + t];
#else
#if BAYWORK_KERNEL_LANES == 4
    part(y).v -= block[six * c];
    const Lanes& last = block[six * c + 1];
    y[4] -= last[0], y[5] -= last[1];
#else
    part(y).v -= __builtin_shufflevector(block[c], block[c], 0, 1, 2, 3);
    y[4] -= block[c][4], y[5] -= block[c][5];
#endif
#endif
  }
}

BAYWORK_KERNEL_FUNCTION void minus_blocks_times(const Block6* blocks, Size count, const double* x, double* y) {
  for (const Block6* b = blocks; b != blocks + count; ++b)
    minus_block_times<1>(b->value, x + b->first_column(), 8, y + b->first_row(), 8);
}

BAYWORK_KERNEL_FUNCTION void minus_transposed_times(const Block6* blocks, Size count, const double* x, double* y) {
  constexpr std::make_index_sequence<6> columns;
  for (const Block6* b = blocks; b != blocks + count; ++b) {
    const double* const xs = x + b->first_row();
#if BAYWORK_KERNEL_LANES == 2
    const Lanes tiles[] = {-at(xs).v, -at(xs + 2).v, -at(xs + 4).v};
#elif BAYWORK_KERNEL_LANES == 4
    const Lanes tiles[] = {-at(xs).v, Lanes{-xs[4], -xs[5], 0.0, 0.0}};
#else
    const Lanes tiles[] = {Lanes{-xs[0], -xs[1], -xs[2], -xs[3], -xs[4], -xs[5], 0.0, 0.0}};
#endif
    Lanes sums[6];
    clear(sums, columns);
    for (Size t = 0; t < six; ++t) add_dots(sums, b->value + t * lanes, 8, tiles[t], columns);
    double last[4] = {};
    double* const ys = y + b->first_column();
    add_sums(sums, ys);
    add_sums(sums + 2, last);
    ys[4] += last[2], ys[5] += last[3];
  }
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
