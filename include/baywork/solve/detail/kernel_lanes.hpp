// SPDX-License-Identifier: MIT
// Lanes, register blocks and 4 x 4 tiles: what the kernels of one instruction set are made of.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

using Size = std::size_t;
inline constexpr Size lanes = BAYWORK_KERNEL_LANES;
/// Lanes in registers, and the same wherever doubles lie. Never passed or returned by value: that would be an ABI.
using Lanes __attribute__((vector_size(8 * BAYWORK_KERNEL_LANES))) = double;
using LanesInMemory __attribute__((vector_size(8 * BAYWORK_KERNEL_LANES), aligned(8), may_alias)) = double;
/// Lanes at any double. (A struct, since a reference to the bare type loses its alignment with one compiler.)
struct __attribute__((may_alias)) Place {
  LanesInMemory v;
};
BAYWORK_KERNEL_HELPER const Place& at(const double* p) { return *reinterpret_cast<const Place*>(p); }
BAYWORK_KERNEL_HELPER Place& at(double* p) { return *reinterpret_cast<Place*>(p); }

template <Size n>
inline constexpr std::integral_constant<Size, n> fixed{};

constexpr Size tiles_of(Size n) { return (n + lanes - 1) / lanes; }
constexpr Size rounded_up(Size n, Size to) { return (n + to - 1) / to * to; }
constexpr Size tile_start(Size row) { return row / lanes * lanes; }

// A register block of c: `tiles` row tiles times `columns` columns. Cells are counted down the columns. Everything is
// expanded from index sequences, so that the block stays in registers at any optimisation level.
template <Size... Cell>
BAYWORK_KERNEL_HELPER void clear(Lanes* block, std::index_sequence<Cell...>) {
  ((block[Cell] = Lanes{}), ...);
}
template <Size tiles, Size... Cell>
BAYWORK_KERNEL_HELPER void load(Lanes* block, const double* c, Size ldc, std::index_sequence<Cell...>) {
  ((block[Cell] = at(c + Cell % tiles * lanes + Cell / tiles * ldc).v), ...);
}
template <Size tiles, Size... Cell>
BAYWORK_KERNEL_HELPER void store(const Lanes* block, double* c, Size ldc, std::index_sequence<Cell...>) {
  ((at(c + Cell % tiles * lanes + Cell / tiles * ldc).v = block[Cell]), ...);
}
/// Read once and kept in a register: else a compiler may read w anew for every column, and reading is what is short.
BAYWORK_KERNEL_HELPER void keep([[maybe_unused]] Lanes& w) {
#ifdef BAYWORK_KERNEL_REGISTER
  asm("" : "+" BAYWORK_KERNEL_REGISTER(w));
#endif
}
/// block += w z, w one column of row tiles, z one number per column, `apart` from each other.
template <Size tiles, Size... Tile, Size... Cell>
BAYWORK_KERNEL_HELPER void add_outer(Lanes* block, const double* w, const double* z, Size apart,
                                     std::index_sequence<Tile...>, std::index_sequence<Cell...>) {
  Lanes column[] = {at(w + Tile * lanes).v...};
  (keep(column[Tile]), ...);
  ((block[Cell] = BAYWORK_KERNEL_MADD(column[Cell % tiles], (z[Cell / tiles * apart] - Lanes{}), block[Cell])), ...);
}
template <Size tiles, Size columns>
BAYWORK_KERNEL_HELPER void add_products(Lanes* block, Size depth, const double* w, Size ldw, const double* z,
                                        Size apart, Size z_step) {
  for (Size r = 0; r < depth; ++r)
    add_outer<tiles>(block, w + r * ldw, z + r * z_step, apart, std::make_index_sequence<tiles>{},
                     std::make_index_sequence<tiles * columns>{});
}

/// c += w zᵀ for `columns` columns and one chunk of row tiles.
template <Size tiles, Size columns, class Depth>
BAYWORK_KERNEL_HELPER void update_chunk(Depth depth, const double* w, Size ldw, const double* z, Size ldz, double* c,
                                        Size ldc) {
  constexpr std::make_index_sequence<tiles * columns> cells;
  Lanes block[tiles * columns];
  load<tiles>(block, c, ldc, cells);
  add_products<tiles, columns>(block, depth, w, ldw, z, 1, ldz);
  store<tiles>(block, c, ldc, cells);
}
template <Size columns, class Depth>
BAYWORK_KERNEL_HELPER void update_columns(Depth depth, Size tiles, const double* w, Size ldw, const double* z, Size ldz,
                                          double* c, Size ldc) {
  for (; tiles >= 3; tiles -= 3, w += 3 * lanes, c += 3 * lanes)
    update_chunk<3, columns>(depth, w, ldw, z, ldz, c, ldc);
  if (tiles == 2) update_chunk<2, columns>(depth, w, ldw, z, ldz, c, ldc);
  if (tiles == 1) update_chunk<1, columns>(depth, w, ldw, z, ldz, c, ldc);
}
/// Columns [first, last) of a symmetric c, of which the lower triangle counts, += w zᵀ, both of `depth` columns, which
/// is one of `fixed` where it is known when compiled; rows up to `rows`.
template <class Depth>
BAYWORK_KERNEL_FUNCTION void update_lower(Depth depth, Size first, Size last, Size rows, const double* w, Size ldw,
                                          const double* z, Size ldz, double* c, Size ldc) {
  Size j = first;
  for (; j + 4 <= last; j += 4) {
    const Size top = tile_start(j);
    update_columns<4>(depth, tiles_of(rows - top), w + top, ldw, z + j, ldz, c + top + j * ldc, ldc);
  }
  for (; j < last; ++j) {
    const Size top = tile_start(j);
    update_columns<1>(depth, tiles_of(rows - top), w + top, ldw, z + j, ldz, c + top + j * ldc, ldc);
  }
}

/// The parts of lanes that a 4 x 4 tile is moved and added up in.
#if BAYWORK_KERNEL_LANES == 2
using Part = Lanes;
using PartPlace = Place;
#else
using Part __attribute__((vector_size(32))) = double;
using PartInMemory __attribute__((vector_size(32), aligned(8), may_alias)) = double;
struct __attribute__((may_alias)) PartPlace {
  PartInMemory v;
};
#endif
/// Two doubles anywhere.
using PairInMemory __attribute__((vector_size(16), aligned(8), may_alias)) = double;
struct __attribute__((may_alias)) PairPlace {
  PairInMemory v;
};
BAYWORK_KERNEL_HELPER const PairPlace& pair(const double* p) { return *reinterpret_cast<const PairPlace*>(p); }
BAYWORK_KERNEL_HELPER PairPlace& pair(double* p) { return *reinterpret_cast<PairPlace*>(p); }
inline constexpr Size lanes_of_part = lanes < 4 ? lanes : 4;
BAYWORK_KERNEL_HELPER const PartPlace& part(const double* p) { return *reinterpret_cast<const PartPlace*>(p); }
BAYWORK_KERNEL_HELPER PartPlace& part(double* p) { return *reinterpret_cast<PartPlace*>(p); }

#if BAYWORK_KERNEL_LANES > 2
/// A 4 x 4 tile turned in registers.
BAYWORK_KERNEL_HELPER void turn_parts(Part* t) {
  const Part ab_even = __builtin_shufflevector(t[0], t[1], 0, 4, 2, 6);
  const Part ab_odd = __builtin_shufflevector(t[0], t[1], 1, 5, 3, 7);
  const Part cd_even = __builtin_shufflevector(t[2], t[3], 0, 4, 2, 6);
  const Part cd_odd = __builtin_shufflevector(t[2], t[3], 1, 5, 3, 7);
  t[0] = __builtin_shufflevector(ab_even, cd_even, 0, 1, 4, 5);
  t[1] = __builtin_shufflevector(ab_odd, cd_odd, 0, 1, 4, 5);
  t[2] = __builtin_shufflevector(ab_even, cd_even, 2, 3, 6, 7);
  t[3] = __builtin_shufflevector(ab_odd, cd_odd, 2, 3, 6, 7);
}
#endif
/// to = fromᵀ, or -fromᵀ, for 4 x 4 tiles.
template <bool minus>
BAYWORK_KERNEL_HELPER void transpose_tile(const double* from, Size ld_from, double* to, Size ld_to) {
#if BAYWORK_KERNEL_LANES == 2
  for (Size j = 0; j < 4; j += 2)
    for (Size i = 0; i < 4; i += 2) {
      Part a = part(from + i + j * ld_from).v, b = part(from + i + (j + 1) * ld_from).v;
      if (minus) a = -a, b = -b;
      part(to + j + i * ld_to).v = __builtin_shufflevector(a, b, 0, 2);
      part(to + j + (i + 1) * ld_to).v = __builtin_shufflevector(a, b, 1, 3);
    }
#else
  Part t[4] = {part(from).v, part(from + ld_from).v, part(from + 2 * ld_from).v, part(from + 3 * ld_from).v};
  if (minus) t[0] = -t[0], t[1] = -t[1], t[2] = -t[2], t[3] = -t[3];
  turn_parts(t);
  part(to).v = t[0], part(to + ld_to).v = t[1], part(to + 2 * ld_to).v = t[2], part(to + 3 * ld_to).v = t[3];
#endif
}

/// Four columns and as many rows as there are lanes, turned: to[r], r < 4, is row r of a tile of four rows.
#if BAYWORK_KERNEL_LANES == 2
BAYWORK_KERNEL_HELPER void load_rows(const double* from, Size ld, Lanes* to) {
  for (Size r = 0; r < 4; r += 2) {
    const Lanes a = at(from + r).v, b = at(from + r + ld).v;
    to[r] = __builtin_shufflevector(a, b, 0, 2), to[r + 1] = __builtin_shufflevector(a, b, 1, 3);
  }
}
#elif BAYWORK_KERNEL_LANES == 4
BAYWORK_KERNEL_HELPER void load_rows(const double* from, Size ld, Lanes* to) {
  const Lanes a = at(from).v, b = at(from + ld).v, c = at(from + 2 * ld).v, d = at(from + 3 * ld).v;
  const Lanes ab_even = __builtin_shufflevector(a, b, 0, 4, 2, 6), ab_odd = __builtin_shufflevector(a, b, 1, 5, 3, 7);
  const Lanes cd_even = __builtin_shufflevector(c, d, 0, 4, 2, 6), cd_odd = __builtin_shufflevector(c, d, 1, 5, 3, 7);
  to[0] = __builtin_shufflevector(ab_even, cd_even, 0, 1, 4, 5);
  to[1] = __builtin_shufflevector(ab_odd, cd_odd, 0, 1, 4, 5);
  to[2] = __builtin_shufflevector(ab_even, cd_even, 2, 3, 6, 7);
  to[3] = __builtin_shufflevector(ab_odd, cd_odd, 2, 3, 6, 7);
}
#else
BAYWORK_KERNEL_HELPER void load_pair(const double* p, const double* q, Lanes& both) {
  both = __builtin_shufflevector(part(p).v, part(q).v, 0, 1, 2, 3, 4, 5, 6, 7);
}
/// `apart`: from the first column to the fifth; 0 where the first four are all there are.
BAYWORK_KERNEL_HELPER void load_rows(const double* from, Size ld, Size apart, Lanes* to) {
  Lanes a, b, c, d;
  load_pair(from, from + apart, a), load_pair(from + ld, from + ld + apart, b);
  load_pair(from + 2 * ld, from + 2 * ld + apart, c), load_pair(from + 3 * ld, from + 3 * ld + apart, d);
  const Lanes ab_even = __builtin_shufflevector(a, b, 0, 8, 2, 10, 4, 12, 6, 14);
  const Lanes ab_odd = __builtin_shufflevector(a, b, 1, 9, 3, 11, 5, 13, 7, 15);
  const Lanes cd_even = __builtin_shufflevector(c, d, 0, 8, 2, 10, 4, 12, 6, 14);
  const Lanes cd_odd = __builtin_shufflevector(c, d, 1, 9, 3, 11, 5, 13, 7, 15);
  to[0] = __builtin_shufflevector(ab_even, cd_even, 0, 1, 8, 9, 4, 5, 12, 13);
  to[1] = __builtin_shufflevector(ab_odd, cd_odd, 0, 1, 8, 9, 4, 5, 12, 13);
  to[2] = __builtin_shufflevector(ab_even, cd_even, 2, 3, 10, 11, 6, 7, 14, 15);
  to[3] = __builtin_shufflevector(ab_odd, cd_odd, 2, 3, 10, 11, 6, 7, 14, 15);
}
BAYWORK_KERNEL_HELPER void load_rows(const double* from, Size ld, Lanes* to) { load_rows(from, ld, 4 * ld, to); }
#endif

/// sums[K] += column K of v times x, lane by lane.
template <Size... K>
BAYWORK_KERNEL_HELPER void add_dots(Lanes* sums, const double* v, Size ldv, const Lanes& x, std::index_sequence<K...>) {
  ((sums[K] = BAYWORK_KERNEL_MADD(at(v + K * ldv).v, x, sums[K])), ...);
}

#if BAYWORK_KERNEL_LANES > 2
/// to[k] = the sum of the lanes of sums[k], for four k.
BAYWORK_KERNEL_HELPER void sum_lanes(const Lanes* sums, Part& to) {
#if BAYWORK_KERNEL_LANES == 8
  const Part a =
      __builtin_shufflevector(sums[0], sums[0], 0, 1, 2, 3) + __builtin_shufflevector(sums[0], sums[0], 4, 5, 6, 7);
  const Part b =
      __builtin_shufflevector(sums[1], sums[1], 0, 1, 2, 3) + __builtin_shufflevector(sums[1], sums[1], 4, 5, 6, 7);
  const Part c =
      __builtin_shufflevector(sums[2], sums[2], 0, 1, 2, 3) + __builtin_shufflevector(sums[2], sums[2], 4, 5, 6, 7);
  const Part d =
      __builtin_shufflevector(sums[3], sums[3], 0, 1, 2, 3) + __builtin_shufflevector(sums[3], sums[3], 4, 5, 6, 7);
#else
  const Part a = sums[0], b = sums[1], c = sums[2], d = sums[3];
#endif
  const Part ab = __builtin_shufflevector(a, b, 0, 4, 2, 6) + __builtin_shufflevector(a, b, 1, 5, 3, 7);
  const Part cd = __builtin_shufflevector(c, d, 0, 4, 2, 6) + __builtin_shufflevector(c, d, 1, 5, 3, 7);
  to = __builtin_shufflevector(ab, cd, 0, 1, 4, 5) + __builtin_shufflevector(ab, cd, 2, 3, 6, 7);
}
#endif

/// y[k] += the sum of the lanes of sums[k], for four k.
BAYWORK_KERNEL_HELPER void add_sums(const Lanes* sums, double* y) {
#if BAYWORK_KERNEL_LANES == 2
  for (Size k = 0; k < 4; k += 2)
    part(y + k).v +=
        __builtin_shufflevector(sums[k], sums[k + 1], 0, 2) + __builtin_shufflevector(sums[k], sums[k + 1], 1, 3);
#else
  Part four{};
  sum_lanes(sums, four);
  part(y).v += four;
#endif
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
