// SPDX-License-Identifier: MIT
// The steps of a solution for one right-hand side, station after station.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

#if BAYWORK_KERNEL_LANES == 8
#define BAYWORK_PART_MADD(a, b, c) ((a) * (b) + (c))
#else
#define BAYWORK_PART_MADD BAYWORK_KERNEL_MADD
#endif

/// Parts of a tile of four rows.
inline constexpr Size parts = 4 / lanes_of_part;

/// sums[tile * parts + part] += the tiles' column times x; a tile's column starts every `apart` numbers.
template <Size tiles>
BAYWORK_KERNEL_HELPER void add_tiles(Part* sums, const double* v, Size apart, double x) {
  const Part xs = x - Part{};
  for (Size t = 0; t < tiles; ++t)
    for (Size q = 0; q < parts; ++q)
      sums[t * parts + q] =
          BAYWORK_PART_MADD(part(v + t * apart + q * lanes_of_part).v, xs, sums[t * parts + q]);
}
/// y = -(even + odd), or y -= even + odd.
template <Size tiles, bool fresh>
BAYWORK_KERNEL_HELPER void put_tiles(const Part* even, const Part* odd, double* y) {
  for (Size q = 0; q < tiles * parts; ++q) {
    const Part sum = even[q] + odd[q];
    PartPlace& to = part(y + q * lanes_of_part);
    if (fresh)
      to.v = -sum;
    else
      to.v -= sum;
  }
}
template <Size tiles, bool fresh>
BAYWORK_KERNEL_HELPER void full_tiles(Size columns, const double* v, const double* x, double* y) {
  Part even[tiles * parts] = {}, odd[tiles * parts] = {};
  for (Size c = 0; c < columns; c += 2) {
    add_tiles<tiles>(even, v + 4 * c, 4 * columns, x[c]);
    add_tiles<tiles>(odd, v + 4 * c + 4, 4 * columns, x[c + 1]);
  }
  put_tiles<tiles, fresh>(even, odd, y);
}
/// y = -m x, or y -= m x.
template <bool fresh>
BAYWORK_KERNEL_HELPER void minus_times(const TiledMatrix<double>& m, const double* x, double* y) {
  const double* v = m.value.data();
  const Size tiles = m.end.size();
  if (m.full) {
    Size t = 0;
    for (; t + 3 <= tiles; t += 3, v += 12 * m.columns) full_tiles<3, fresh>(m.columns, v, x, y + 4 * t);
    for (; t < tiles; ++t, v += 4 * m.columns) full_tiles<1, fresh>(m.columns, v, x, y + 4 * t);
    return;
  }
  const std::uint32_t *c = m.column.data(), *const columns = c;
  for (Size t = 0; t < tiles; ++t) {
    Part even[parts] = {}, odd[parts] = {};
    for (const std::uint32_t* const end = columns + m.end[t]; c != end; c += 2, v += 8) {
      add_tiles<1>(even, v, 4, x[c[0]]);
      add_tiles<1>(odd, v + 4, 4, x[c[1]]);
    }
    put_tiles<1, fresh>(even, odd, y + 4 * t);
  }
}

/// One tile of a packed block column's four columns x, for its rows (y) and, mirrored, for its columns (sums).
template <bool below>
BAYWORK_KERNEL_HELPER void add_tile(const double* p, Size length, const Lanes* xs, const double* x, Lanes& y,
                                    Lanes* sums) {
  const Lanes v0 = at(p).v, v1 = at(p + length).v, v2 = at(p + 2 * length).v, v3 = at(p + 3 * length).v;
  Lanes left = v0 * xs[0], right = v1 * xs[1];
  left = BAYWORK_KERNEL_MADD(v2, xs[2], left), right = BAYWORK_KERNEL_MADD(v3, xs[3], right);
  y += left + right;
  if (!below) return;
  const Lanes xi = at(x).v;
  sums[0] = BAYWORK_KERNEL_MADD(v0, xi, sums[0]), sums[1] = BAYWORK_KERNEL_MADD(v1, xi, sums[1]);
  sums[2] = BAYWORK_KERNEL_MADD(v2, xi, sums[2]), sums[3] = BAYWORK_KERNEL_MADD(v3, xi, sums[3]);
}
/// Block column `top` of `tiles`; y[top] is complete after it and goes to `out`.
template <Size top, Size tiles, Size... Below>
BAYWORK_KERNEL_HELPER void add_block_column(const double* p, const double* x, Lanes* y, double* out,
                                            std::index_sequence<Below...>) {
  constexpr Size length = (tiles - top) * lanes;
  Lanes sums[side];
  for (Size c = 0; c < side; c += 4) {
    const double *const columns = p + c * length, *const xc = x + top * lanes + c;
    const Lanes xs[] = {xc[0] - Lanes{}, xc[1] - Lanes{}, xc[2] - Lanes{}, xc[3] - Lanes{}};
    clear(sums + c, std::make_index_sequence<4>{});
    add_tile<false>(columns, length, xs, x, y[top], sums + c);
    (add_tile<true>(columns + (Below + 1) * lanes, length, xs, x + (top + 1 + Below) * lanes, y[top + 1 + Below],
                    sums + c),
     ...);
  }
  at(out + top * lanes).v = y[top];
  if (sizeof...(Below) > 0)
    for (Size c = 0; c < side; c += 4) add_sums(sums + c, out + top * lanes + c);
}
/// out = p x, or out += p x, without a way through memory for a small order. `out` may be x if nothing is added to.
template <bool add, Size tiles, Size... Top>
BAYWORK_KERNEL_HELPER void apply_tiles(const double* p, const double* x, double* out, std::index_sequence<Top...> all) {
  Lanes y[tiles];
  if (add)
    load<tiles>(y, out, 0, all);
  else
    clear(y, all);
  (add_block_column<Top, tiles>(p + side * lanes * (Top * tiles - Top * (Top - 1) / 2), x, y, out,
                                std::make_index_sequence<tiles - Top - 1>{}),
   ...);
}
template <bool add, Size tiles>
BAYWORK_KERNEL_HELPER void apply_tiles(const double* p, const double* x, double* out) {
  apply_tiles<add, tiles>(p, x, out, std::make_index_sequence<tiles>{});
}
/// x = p x, or x += p t; `z`: scratch.
template <bool add>
BAYWORK_KERNEL_HELPER void apply_in_place(Size n, const double* p, const double* t, double* x, double* z) {
#if BAYWORK_KERNEL_LANES > 2
  switch (tiles_of(n)) {
    case 1: return apply_tiles<add, 1>(p, t, x);
    case 2: return apply_tiles<add, 2>(p, t, x);
    case 3: return apply_tiles<add, 3>(p, t, x);
    case 5: return apply_tiles<add, 5>(p, t, x);
    case 6: return apply_tiles<add, 6>(p, t, x);
    default: break;
  }
#endif
  apply(n, p, t, z);
  for (Size i = 0; i < n; i += lanes) {
    if (add)
      at(x + i).v += at(z + i).v;
    else
      at(x + i).v = at(z + i).v;
  }
}

BAYWORK_KERNEL_FUNCTION void down(const ChainStep<double>* steps, Size count, double* x, double* scratch) {
  for (const ChainStep<double>* s = steps; s != steps + count; ++s) {
    double* const own = x + s->at;
    apply_in_place<false>(s->order, s->pivot, own, own, scratch);
    for (Size k = 0; k < s->neighbours; ++k) minus_times<false>(*s->next[k].down, own, x + s->next[k].at);
  }
}

BAYWORK_KERNEL_FUNCTION void up(const ChainStep<double>* steps, Size count, double* x, double* scratch) {
  for (const ChainStep<double>* s = steps + count; s-- != steps;) {
    if (s->neighbours == 0) continue;
    double* const t = scratch;
    minus_times<true>(*s->next[0].up, x + s->next[0].at, t);
    if (s->neighbours > 1) minus_times<false>(*s->next[1].up, x + s->next[1].at, t);
    for (Size i = rounded_up(s->order, 4); i < rounded_up(s->order, side); ++i) t[i] = 0.0;
    apply_in_place<true>(s->order, s->pivot, t, x + s->at, t + rounded_up(s->order, 8));
  }
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#undef BAYWORK_PART_MADD

#endif
