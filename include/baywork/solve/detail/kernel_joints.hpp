// SPDX-License-Identifier: MIT
// Joints between two segments of a girder that is its own mirror image: both halves of a station's motions at once.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

#if BAYWORK_KERNEL_LANES == 2
// Two lanes are one pair: nothing is gained by it.
BAYWORK_KERNEL_FUNCTION double join(const double* left, const double* right, const double* own, double* given,
                                    double* swept, double* turned, double* joined) {
  return PlainKernels<double>::join(left, right, own, given, swept, turned, joined);
}
BAYWORK_KERNEL_FUNCTION void through_joint(const double* swept, Size count, double* const* middle, double* const* first,
                                           double* const* last) {
  PlainKernels<double>::through_joint(swept, count, middle, first, last);
}
BAYWORK_KERNEL_FUNCTION void back_through_joint(const double* turned, Size count, double* const* middle,
                                                const double* const* first, const double* const* last) {
  PlainKernels<double>::back_through_joint(turned, count, middle, first, last);
}
#else
// Number i of both halves stands in [2 i] and [2 i + 1]: a pair, which lanes hold several of. What one half waits for, the
// other does meanwhile.
inline constexpr Size pairs = lanes / 2, half = joint_half;
inline constexpr Size half_tiles = half / pairs, leading = 2 * half;  // leading dimension of matrices of `half` rows

/// One pair in all lanes. (There is an instruction for it, which not every compiler makes out of a shuffle.)
BAYWORK_KERNEL_HELPER void spread(const double* from, Lanes& to) {
#if BAYWORK_KERNEL_LANES == 8 && defined(BAYWORK_KERNEL_REGISTER) && !defined(__clang__)
  to = __builtin_ia32_broadcastf64x2_512_mask(pair(from).v, Lanes{}, static_cast<unsigned char>(255));
#elif BAYWORK_KERNEL_LANES == 8
  to = __builtin_shufflevector(pair(from).v, pair(from).v, 0, 1, 0, 1, 0, 1, 0, 1);
#else
  to = Lanes{from[0], from[1], from[0], from[1]};
#endif
}
/// A matrix of pairs turned, `rows` and `columns` of the given one; leading dimensions in numbers.
BAYWORK_KERNEL_HELPER void turn_pairs(Size rows, Size columns, const double* from, Size ld, double* to, Size ld_to) {
#if BAYWORK_KERNEL_LANES == 8
  for (Size c = 0; c < columns; c += 4)
    for (Size r = 0; r < rows; r += 4) {
      const double* const f = from + 2 * r + c * ld;
      double* const t = to + 2 * c + r * ld_to;
      const Lanes x = at(f).v, y = at(f + ld).v, z = at(f + 2 * ld).v, w = at(f + 3 * ld).v;
      const Lanes xy_low = __builtin_shufflevector(x, y, 0, 1, 2, 3, 8, 9, 10, 11);
      const Lanes xy_high = __builtin_shufflevector(x, y, 4, 5, 6, 7, 12, 13, 14, 15);
      const Lanes zw_low = __builtin_shufflevector(z, w, 0, 1, 2, 3, 8, 9, 10, 11);
      const Lanes zw_high = __builtin_shufflevector(z, w, 4, 5, 6, 7, 12, 13, 14, 15);
      at(t).v = __builtin_shufflevector(xy_low, zw_low, 0, 1, 4, 5, 8, 9, 12, 13);
      at(t + ld_to).v = __builtin_shufflevector(xy_low, zw_low, 2, 3, 6, 7, 10, 11, 14, 15);
      at(t + 2 * ld_to).v = __builtin_shufflevector(xy_high, zw_high, 0, 1, 4, 5, 8, 9, 12, 13);
      at(t + 3 * ld_to).v = __builtin_shufflevector(xy_high, zw_high, 2, 3, 6, 7, 10, 11, 14, 15);
    }
#else
  for (Size c = 0; c < columns; ++c)
    for (Size r = 0; r < rows; ++r) pair(to + 2 * c + r * ld_to).v = pair(from + 2 * r + c * ld).v;
#endif
}

/// Pair `i` of lanes in all of them.
template <Size i>
BAYWORK_KERNEL_HELPER void in_all(const Lanes& from, Lanes& to) {
#if BAYWORK_KERNEL_LANES == 8
  to = __builtin_shufflevector(from, from, 2 * i, 2 * i + 1, 2 * i, 2 * i + 1, 2 * i, 2 * i + 1, 2 * i, 2 * i + 1);
#else
  to = __builtin_shufflevector(from, from, 2 * i, 2 * i + 1, 2 * i, 2 * i + 1);
#endif
}

// A = L D Lᵀ of order `half`, a's columns by row tiles from the diagonal's on: -L goes into minus_l, 1/D into inverse.
template <Size q, Size p>
BAYWORK_KERNEL_HELPER void lose_pair_pivot(Lanes* a, const Lanes* minus_l) {
  Lanes number;
  in_all<p % pairs>(a[q * half_tiles + p / pairs], number);
  for (Size t = p / pairs; t < half_tiles; ++t)
    a[p * half_tiles + t] = BAYWORK_KERNEL_MADD(minus_l[t], number, a[p * half_tiles + t]);
}
template <Size q, Size... Later>
BAYWORK_KERNEL_HELPER void take_pair_pivot(Lanes* a, double* minus_l, double* inverse, std::index_sequence<Later...>) {
  Lanes d, l[half_tiles];
  in_all<q % pairs>(a[q * half_tiles + q / pairs], d);
  d = 1.0 / d;
  pair(inverse + 2 * q).v = __builtin_shufflevector(d, d, 0, 1);
  for (Size t = q / pairs; t < half_tiles; ++t) {
    l[t] = -a[q * half_tiles + t] * d;
    at(minus_l + q * leading + t * lanes).v = l[t];
  }
  (lose_pair_pivot<q, q + 1 + Later>(a, l), ...);
}
template <Size... Q>
BAYWORK_KERNEL_FUNCTION void factor_pairs(const double* from, double* minus_l, double* inverse,
                                          std::index_sequence<Q...>) {
  Lanes a[half * half_tiles];
  for (Size c = 0; c < half; ++c)
    for (Size t = c / pairs; t < half_tiles; ++t) a[c * half_tiles + t] = at(from + c * leading + t * lanes).v;
  (take_pair_pivot<Q>(a, minus_l, inverse, std::make_index_sequence<half - 1 - Q>{}), ...);
}

// Row tiles of B, column after column, from column `start` on: before it there is nothing, or nothing is asked for.
template <Size tiles, Size q, Size... Tile>
BAYWORK_KERNEL_HELPER void pass_pair(Lanes* b, Size from, const double* minus_l, std::index_sequence<Tile...>) {
  Lanes number;
  spread(minus_l, number);
  ((b[q * tiles + Tile] = BAYWORK_KERNEL_MADD(b[from * tiles + Tile], number, b[q * tiles + Tile])), ...);
}
template <Size tiles, Size q, Size... Later>
BAYWORK_KERNEL_HELPER void pass_pair_on([[maybe_unused]] Lanes* b, const double* minus_l, std::index_sequence<Later...>) {
  (pass_pair<tiles, q + 1 + Later>(b, q, minus_l + q * leading + 2 * (q + 1 + Later), std::make_index_sequence<tiles>{}),
   ...);
}
template <Size tiles, Size start, Size q, Size... Before>
BAYWORK_KERNEL_HELPER void pass_pair_back([[maybe_unused]] Lanes* b, const double* minus_l, std::index_sequence<Before...>) {
  (pass_pair<tiles, start + Before>(b, q, minus_l + (start + Before) * leading + 2 * q, std::make_index_sequence<tiles>{}),
   ...);
}
/// B := B L⁻ᵀ D⁻¹ L⁻¹; on the way -Z = -B L⁻ᵀ and Y = Z D⁻¹ where they are asked for, tiles `step` apart.
template <Size tiles, Size start, Size... Q>
BAYWORK_KERNEL_HELPER void pass_pairs(Lanes* b, const double* minus_l, const double* inverse, double* minus_z, double* y,
                                      Size step, std::index_sequence<Q...>) {
  (pass_pair_on<tiles, start + Q>(b, minus_l, std::make_index_sequence<half - 1 - start - Q>{}), ...);
  for (Size q = start; q < half; ++q) {
    Lanes d;
    spread(inverse + 2 * q, d);
    for (Size t = 0; t < tiles; ++t) {
      Lanes& z = b[q * tiles + t];
      if (y != nullptr) at(minus_z + q * 2 * leading + t * step).v = -z;
      z *= d;
      if (y != nullptr) at(y + q * 2 * leading + t * step).v = z;
    }
  }
  (pass_pair_back<tiles, start, half - 1 - Q>(b, minus_l, std::make_index_sequence<half - 1 - start - Q>{}), ...);
}
/// Rows of a unit matrix become the inverse: row tile `tile`, of which columns from `start` on.
template <Size start>
BAYWORK_KERNEL_FUNCTION void invert_rows(Size tile, const double* minus_l, const double* inverse, double* out) {
  constexpr Size apart = 3 * leading;
  Lanes b[half] = {};
  for (Size k = 0; k < pairs; ++k) b[tile * pairs + k][2 * k] = b[tile * pairs + k][2 * k + 1] = 1.0;
  pass_pairs<1, start>(b, minus_l, inverse, nullptr, nullptr, 0, std::make_index_sequence<half - start>{});
  for (Size c = start; c < half; ++c) at(out + c * apart + tile * lanes).v = b[c];
  for (Size c = start + pairs; c < half && start == tile * pairs; c += pairs)
    turn_pairs(pairs, pairs, out + 2 * start + c * apart, apart, out + 2 * c + start * apart, apart);
}
/// With eight lanes from the diagonal on, else whole rows, which is less to compile.
BAYWORK_KERNEL_HELPER void invert_pairs(const double* minus_l, const double* inverse, double* out) {
#if BAYWORK_KERNEL_LANES == 8
  invert_rows<0>(0, minus_l, inverse, out);
  invert_rows<pairs>(1, minus_l, inverse, out);
  invert_rows<2 * pairs>(2, minus_l, inverse, out);
#else
  for (Size tile = half_tiles; tile-- > 0;) invert_rows<0>(tile, minus_l, inverse, out);
#endif
}
/// A row tile of each of two couplings.
BAYWORK_KERNEL_FUNCTION void pass_couplings(const double* first, Size ld_first, const double* last, Size ld_last,
                                            const double* minus_l, const double* inverse, double* minus_z, double* y,
                                            double* swept) {
  constexpr std::make_index_sequence<half> all;
  constexpr Size tiles = lanes == 8 ? 2 : 1;  // as many as there are registers for
  for (Size k = 0; k < 2; k += tiles) {
    Lanes b[half * tiles];
    for (Size c = 0; c < half; ++c)
      for (Size t = 0; t < tiles; ++t)
        b[c * tiles + t] = k + t == 0 ? at(first + c * ld_first).v : at(last + c * ld_last).v;
    pass_pairs<tiles, 0>(b, minus_l, inverse, minus_z + k * leading, y + k * leading, leading, all);
    for (Size c = 0; c < half; ++c)
      for (Size t = 0; t < tiles; ++t) at(swept + c * 3 * leading + (k + t) * leading).v = b[c * tiles + t];
  }
}

/// Four columns and `tiles` row tiles of c + (-Z) Yᵀ; c is none where there is nothing yet.
template <Size tiles, Size... Tile, Size... Cell>
BAYWORK_KERNEL_HELPER void lose_chunk(const double* c, Size ldc, const double* minus_z, const double* y, double* to,
                                      std::index_sequence<Tile...>, std::index_sequence<Cell...> cells) {
  constexpr Size apart = 2 * leading;
  Lanes block[4 * tiles];
  if (c == nullptr)
    clear(block, cells);
  else
    load<tiles>(block, c, ldc, cells);
  for (Size q = 0; q < half; ++q, minus_z += apart, y += apart) {
    Lanes column[] = {at(minus_z + Tile * lanes).v...}, number[4];
    (keep(column[Tile]), ...);
    spread(y, number[0]), spread(y + 2, number[1]), spread(y + 4, number[2]), spread(y + 6, number[3]);
    ((block[Cell] = BAYWORK_KERNEL_MADD(column[Cell % tiles], number[Cell / tiles], block[Cell])), ...);
  }
  store<tiles>(block, to, apart, cells);
}
template <Size tiles>
BAYWORK_KERNEL_HELPER void lose(const double* c, Size ldc, const double* minus_z, const double* y, double* to) {
  lose_chunk<tiles>(c, ldc, minus_z, y, to, std::make_index_sequence<tiles>{}, std::make_index_sequence<4 * tiles>{});
}
/// Four columns from `column` on, of rows `first` to `half`.
BAYWORK_KERNEL_HELPER void lose_columns(Size first, const double* c, Size ldc, const double* minus_z, const double* y,
                                        double* to) {
  Size tile = first / pairs;
  for (; tile + 3 <= half_tiles; tile += 3)
    lose<3>(c == nullptr ? c : c + tile * lanes, ldc, minus_z + tile * lanes, y, to + tile * lanes);
  for (; tile + 2 <= half_tiles; tile += 2)
    lose<2>(c == nullptr ? c : c + tile * lanes, ldc, minus_z + tile * lanes, y, to + tile * lanes);
  for (; tile < half_tiles; ++tile)
    lose<1>(c == nullptr ? c : c + tile * lanes, ldc, minus_z + tile * lanes, y, to + tile * lanes);
}

BAYWORK_KERNEL_FUNCTION double join(const double* left, const double* right, const double* own, double* given,
                                    double* swept, double* turned, double* joined) {
  constexpr std::make_index_sequence<half> all;
  constexpr Size two = 2 * leading, three = 3 * leading;
  alignas(64) double a[half * leading], minus_l[half * leading], inverse[leading], first[half * leading];
  alignas(64) double minus_z[half * two], y[half * two];
  const double* const left_22 = left + half * two + leading;
  const double* const right_22 = right + half * two + leading;
  for (Size c = 0; c < half; ++c) {
    for (Size t = c / pairs; t < half_tiles; ++t)
      at(a + c * leading + t * lanes).v =
          at(left_22 + c * two + t * lanes).v + at(right + c * two + t * lanes).v + at(own + c * leading + t * lanes).v;
    pair(given + 2 * c).v = pair(a + c * leading + 2 * c).v;
  }
  turn_pairs(half, half, left + leading, two, first, leading);
  factor_pairs(a, minus_l, inverse, all);
  invert_pairs(minus_l, inverse, swept);
  for (Size r = 0; r < leading; r += lanes)
    pass_couplings(first + r, leading, right + leading + r, two, minus_l, inverse, minus_z + r, y + r, swept + leading + r);
  turn_pairs(2 * half, half, swept + leading, three, turned, leading);
  for (Size c = 0; c < half; c += 4) {
    lose_columns(c, left + c * two, two, minus_z, y + 2 * c, joined + c * two);
    lose_columns(0, nullptr, 0, minus_z + leading, y + 2 * c, joined + leading + c * two);
    lose_columns(c, right_22 + c * two, two, minus_z + leading, y + leading + 2 * c, joined + half * two + leading + c * two);
  }
  double largest = 0.0;
  for (Size u = 0; u < leading; ++u) {
    const double share = (given[u] < 0.0 ? -given[u] : given[u]) * inverse[u];
    if (share >= 0.0 && share <= largest) continue;
    largest = share;
    if (!(share >= 0.0)) break;
  }
  return 1.0 / largest;
}

/// sums += a x for `count` vectors and `tiles` row tiles. With one vector, columns take turns in two sums: one alone would
/// wait for its last addition.
template <Size tiles, Size count, Size... Tile, Size... Cell>
BAYWORK_KERNEL_HELPER void add_pair_products(Lanes* sums, Size ld, const double* a, const double* const* x,
                                             std::index_sequence<Tile...>, std::index_sequence<Cell...>) {
  constexpr Size turns = count == 1 ? 2 : 1;
  for (Size c = 0; c < half; c += turns, a += turns * ld)
    for (Size t = 0; t < turns; ++t) {
      Lanes column[] = {at(a + t * ld + Tile * lanes).v...}, number[count];
      (keep(column[Tile]), ...);
      for (Size k = 0; k < count; ++k) spread(x[k] + 2 * (c + t), number[k]);
      Lanes* const to = sums + t * tiles;
      ((to[Cell] = BAYWORK_KERNEL_MADD(column[Cell % tiles], number[Cell / tiles], to[Cell])), ...);
    }
}
/// y -= a x + b z, or y = a x.
template <Size count>
BAYWORK_KERNEL_HELPER void pair_product(bool minus, Size ld, const double* a, const double* const* x, const double* b,
                                        const double* const* z, double* const* y) {
  constexpr Size tiles = 3;
  static_assert(half_tiles % tiles == 0);
  constexpr std::make_index_sequence<tiles> rows;
  constexpr std::make_index_sequence<tiles * count> cells;
  for (Size row = 0; row < leading; row += tiles * lanes) {
    Lanes sums[tiles * (count == 1 ? 2 : count)] = {};
    add_pair_products<tiles, count>(sums, ld, a + row, x, rows, cells);
    if (b != nullptr) add_pair_products<tiles, count>(sums, ld, b + row, z, rows, cells);
    for (Size k = 0; k < count; ++k)
      for (Size t = 0; t < tiles; ++t) {
        const Lanes sum = count == 1 ? sums[t] + sums[tiles + t] : sums[tiles * k + t];
        Place& place = at(y[k] + row + t * lanes);
        place.v = minus ? place.v - sum : sum;
      }
  }
}
template <Size count>
BAYWORK_KERNEL_FUNCTION void pass_some_on(const double* swept, double* const* middle, double* const* first,
                                          double* const* last) {
  constexpr Size ld = 3 * leading;
  alignas(64) double kept[count * leading];
  double* given[count];
  for (Size k = 0; k < count; ++k) {
    given[k] = kept + k * leading;
    for (Size i = 0; i < leading; i += lanes) at(given[k] + i).v = at(middle[k] + i).v;
  }
  pair_product<count>(true, ld, swept + leading, given, nullptr, nullptr, first);
  pair_product<count>(true, ld, swept + 2 * leading, given, nullptr, nullptr, last);
  pair_product<count>(false, ld, swept, given, nullptr, nullptr, middle);
}
template <Size count>
BAYWORK_KERNEL_FUNCTION void take_some_back(const double* turned, double* const* middle, const double* const* first,
                                            const double* const* last) {
  pair_product<count>(true, leading, turned, first, turned + half * leading, last, middle);
}

BAYWORK_KERNEL_FUNCTION void through_joint(const double* swept, Size count, double* const* middle, double* const* first,
                                           double* const* last) {
  for (; count >= 4; count -= 4, middle += 4, first += 4, last += 4) pass_some_on<4>(swept, middle, first, last);
  if (count == 3) return pass_some_on<3>(swept, middle, first, last);
  if (count == 2) return pass_some_on<2>(swept, middle, first, last);
  if (count == 1) pass_some_on<1>(swept, middle, first, last);
}
BAYWORK_KERNEL_FUNCTION void back_through_joint(const double* turned, Size count, double* const* middle,
                                                const double* const* first, const double* const* last) {
  for (; count >= 4; count -= 4, middle += 4, first += 4, last += 4) take_some_back<4>(turned, middle, first, last);
  if (count == 3) return take_some_back<3>(turned, middle, first, last);
  if (count == 2) return take_some_back<2>(turned, middle, first, last);
  if (count == 1) take_some_back<1>(turned, middle, first, last);
}
#endif

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
