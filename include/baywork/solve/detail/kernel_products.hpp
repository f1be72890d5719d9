// SPDX-License-Identifier: MIT
// Products of one vector with a full matrix and with one in bands.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

/// One chunk of row tiles. Columns take turns in two sums, since one alone would wait for its last addition.
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

BAYWORK_KERNEL_FUNCTION void minus_times(Size rows, Size columns, Size ld, const double* a, const double* x,
                                         double* y) {
  Size tiles = tiles_of(rows);
  for (; tiles >= 3; tiles -= 3, a += 3 * lanes, y += 3 * lanes)
    minus_chunk<3>(columns, ld, a, x, y, std::make_index_sequence<3>{});
  for (; tiles > 0; --tiles, a += lanes, y += lanes)
    minus_chunk<1>(columns, ld, a, x, y, std::make_index_sequence<1>{});
}

/// x -= c from.
BAYWORK_KERNEL_FUNCTION void minus_bands(const BandsOf<double>& c, const double* from, double* x) {
  constexpr Size parts = 4 / lanes_of_part;
  const double* v = c.value;
  const std::uint32_t *k = c.column, *end = c.end;
  for (const std::uint32_t* const last = end + c.bands; end != last; ++end, x += 4) {
    Part even[parts] = {}, odd[parts] = {};
    for (const std::uint32_t* const stop = c.column + *end; k != stop; k += 2, v += 8) {
      const Part f0 = from[k[0]] - Part{}, f1 = from[k[1]] - Part{};
      for (Size p = 0; p < parts; ++p) {
        even[p] += part(v + p * lanes_of_part).v * f0;
        odd[p] += part(v + 4 + p * lanes_of_part).v * f1;
      }
    }
    for (Size p = 0; p < parts; ++p) part(x + p * lanes_of_part).v -= even[p] + odd[p];
  }
}

BAYWORK_KERNEL_FUNCTION void advance(Size n, const double* packed, const BandsOf<double>& c, const double* from,
                                     double* x, double* y) {
  minus_bands(c, from, x);
  if (x != y || kept_in_registers(n)) return apply(n, packed, x, y);
  alignas(64) double given[most_unpacked];
  for (Size i = 0; i < rounded_up(n, side); i += lanes) at(given + i).v = at(x + i).v;
  apply(n, packed, given, y);
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
