// SPDX-License-Identifier: MIT
// The steps of a solution for many right-hand sides, some at a time beside each other in the lanes.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// Lanes that the right-hand sides of one pass fill, at most: four rows of them stay in registers.
inline constexpr Size widest_pass = lanes == 2 ? 2 : 3;

/// rows += four numbers of a matrix's column, `apart` from each other, times one row of right-hand sides.
template <Size width, Size... Cell>
BAYWORK_KERNEL_HELPER void add_row(Lanes* rows, const double* p, const double* x, std::index_sequence<Cell...>) {
  const Lanes v = *p - Lanes{};
  ((rows[Cell] = BAYWORK_KERNEL_MADD(v, at(x + Cell * lanes).v, rows[Cell])), ...);
}
template <Size width>
BAYWORK_KERNEL_HELPER void add_column(Lanes* rows, const double* p, Size apart, const double* x) {
  constexpr std::make_index_sequence<width> cells;
  add_row<width>(rows, p, x, cells);
  add_row<width>(rows + width, p + apart, x, cells);
  add_row<width>(rows + 2 * width, p + 2 * apart, x, cells);
  add_row<width>(rows + 3 * width, p + 3 * apart, x, cells);
}
template <Size width, bool minus, bool fresh>
BAYWORK_KERNEL_HELPER void put_rows(const Lanes* rows, double* y) {
  for (Size k = 0; k < 4 * width; ++k) {
    Place& to = at(y + k * lanes);
    if (minus)
      to.v = fresh ? -rows[k] : to.v - rows[k];
    else
      to.v = fresh ? rows[k] : to.v + rows[k];
  }
}

/// y = -m x, or y -= m x.
template <Size width, bool fresh>
BAYWORK_KERNEL_HELPER void minus_times_many(const TiledMatrix<double>& m, const double* x, double* y) {
  constexpr std::make_index_sequence<4 * width> cells;
  const double* v = m.value.data();
  const std::uint32_t *c = m.column.data(), *const columns = c;
  for (Size t = 0; t < m.end.size(); ++t, y += 4 * width * lanes) {
    Lanes rows[4 * width];
    clear(rows, cells);
    for (const std::uint32_t* const end = columns + m.end[t]; c != end; ++c, v += 4)
      add_column<width>(rows, v, 1, x + *c * width * lanes);
    put_rows<width, true, fresh>(rows, y);
  }
}

/// y = p x, or y += p x.
template <Size width, bool fresh>
BAYWORK_KERNEL_HELPER void apply_pass(Size n, const double* packed, const double* x, double* y) {
  constexpr std::make_index_sequence<4 * width> cells;
  const Size height = rounded_up(n, side);
  for (Size i = 0; i < n; i += 4) {
    Lanes rows[4 * width];
    clear(rows, cells);
    const Size own = i / side * side;
    const double* p = packed;  // block columns before the own one and the own one itself, then its rows mirrored
    Size j = 0;
    for (Size top = 0; top <= own; top += side) {
      const Size length = height - top;
      p += i - top;
      for (; j < top + side; ++j, p += length) add_column<width>(rows, p, 1, x + j * width * lanes);
      p -= i - top;
    }
    const Size length = height - own;
    p += (i - own) * length - side * length + side;
    for (; j < height; ++j, ++p) add_column<width>(rows, p, length, x + j * width * lanes);
    put_rows<width, false, fresh>(rows, y + i * width * lanes);
  }
}

/// Right-hand sides from columns `ldx` apart to rows of lanes (to = true) or back. Rows past `rows` become zero.
template <Size width, bool to>
BAYWORK_KERNEL_HELPER void turn_pass(Size rows, Size length, double* x, Size ldx, Size m, double* beside) {
  constexpr Size all = width * lanes;
  const Size whole_rows = rows / 4 * 4, whole_columns = m / 4 * 4;
  for (Size i = 0; i < whole_rows; i += 4)
    for (Size c = 0; c < whole_columns; c += 4) {
      if (to)
        transpose_tile<false>(x + i + c * ldx, ldx, beside + c + i * all, all);
      else
        transpose_tile<false>(beside + c + i * all, all, x + i + c * ldx, ldx);
    }
  for (Size i = 0; i < (to ? length : rows); ++i)
    for (Size c = i < whole_rows ? whole_columns : 0; c < (to ? all : m); ++c) {
      if (to)
        beside[c + i * all] = i < rows && c < m ? x[i + c * ldx] : 0.0;
      else
        x[i + c * ldx] = beside[c + i * all];
    }
}

template <Size width>
BAYWORK_KERNEL_FUNCTION void solve_pass(const ChainStepLists<double>& lists, double* x, Size ldx, Size m,
                                        double* work) {
  constexpr Size all = width * lanes;
  const auto place = [](std::ptrdiff_t at) { return static_cast<Size>(at) * all; };
  double *const right = work, *const found = right + lists.length * all, *const t = found + lists.length * all;
  const Size rows = (ldx < lists.length) ? ldx : lists.length;
  turn_pass<width, true>(rows, lists.length, x, ldx, m, right);
  for (Size list = 0; list < 2; ++list)
    for (const ChainStep<double>* s = lists.first[list]; s != lists.first[list] + lists.count[list]; ++s) {
      double* const own = found + place(s->at);
      apply_pass<width, true>(s->order, s->pivot, right + place(s->at), own);
      for (Size k = 0; k < s->neighbours; ++k)
        minus_times_many<width, false>(*s->next[k].down, own, right + place(s->next[k].at));
    }
  for (Size list = 2; list-- > 0;)
    for (const ChainStep<double>* s = lists.first[list] + lists.count[list]; s-- != lists.first[list];) {
      if (s->neighbours == 0) continue;
      minus_times_many<width, true>(*s->next[0].up, found + place(s->next[0].at), t);
      if (s->neighbours > 1) minus_times_many<width, false>(*s->next[1].up, found + place(s->next[1].at), t);
      for (Size i = rounded_up(s->order, 4) * all; i < rounded_up(s->order, side) * all; ++i) t[i] = 0.0;
      apply_pass<width, false>(s->order, s->pivot, t, found + place(s->at));
    }
  turn_pass<width, false>(rows, lists.length, x, ldx, m, found);
}

BAYWORK_KERNEL_FUNCTION void solve_many(const ChainStepLists<double>& lists, double* x, Size ldx, Size m,
                                        double* work) {
  constexpr Size most = widest_pass * lanes;
  for (; m > 0; x += (m < most ? m : most) * ldx, m -= (m < most ? m : most)) {
    const Size now = m < most ? m : most;
    if (now <= lanes && lanes > 2)
      solve_pass<1>(lists, x, ldx, now, work);
    else if (now <= 2 * lanes)
      solve_pass<2>(lists, x, ldx, now, work);
    else
      solve_pass<widest_pass>(lists, x, ldx, now, work);
  }
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
