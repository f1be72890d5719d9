// SPDX-License-Identifier: MIT
// Four twofold numbers side by side, for machines with AVX2 and fused multiply-add: a residual's sums, four at a time.
#pragma once

#include <cstddef>
#include <cstdint>

#include <baywork/solve/detail/kernels.hpp>
#include <baywork/solve/detail/twofold.hpp>

namespace baywork::detail {

/// Lanes of a group: four, whatever wider registers a machine has.
inline constexpr std::size_t twofold_lanes = 4;

/// Whether this build and this machine can run what is below.
inline bool has_twofold_lanes() {
  static const bool has = kernels(InstructionSet::avx2) != nullptr;
  return has;
}

}  // namespace baywork::detail

#ifdef BAYWORK_DISPATCHED_KERNELS

#define BAYWORK_LANES_FUNCTION __attribute__((target("avx2,fma"))) inline
#define BAYWORK_LANES_HELPER __attribute__((target("avx2,fma"), always_inline)) inline
#if defined(__has_builtin) && __has_builtin(__builtin_elementwise_fma)
#define BAYWORK_LANES_FUSED(a, b, c) __builtin_elementwise_fma((a), (b), (c))
#else
#define BAYWORK_LANES_FUSED(a, b, c) __builtin_ia32_vfmaddpd256((a), (b), (c))
#endif

namespace baywork::detail::twofold_lane {

using Lanes __attribute__((vector_size(32))) = double;
using LanesInMemory __attribute__((vector_size(32), aligned(8), may_alias)) = double;
using Bits __attribute__((vector_size(32))) = std::int64_t;

struct __attribute__((may_alias)) Place {
  LanesInMemory v;
};
BAYWORK_LANES_HELPER const Place& at(const double* p) { return *reinterpret_cast<const Place*>(p); }
BAYWORK_LANES_HELPER Place& at(double* p) { return *reinterpret_cast<Place*>(p); }

/// hi + lo without the promise that lo is small: no step tidies up but tidy(). Every sum or product of such numbers is
/// still right to a few u² of its absolute parts (u the unit roundoff), since lo never holds more than a few u of them
/// and is summed with an error of u of itself. After T. Ogita, S. M. Rump, S. Oishi, Accurate sum and dot product, SIAM
/// J. Sci. Comput. 26 (2005) 1955-1988, algorithms Sum2 and Dot2 (value from memory; the bound is derived anew here).
struct Twofolds {
  Lanes hi, lo;
};

BAYWORK_LANES_HELPER void add(const Twofolds& a, const Twofolds& b, Twofolds& out) {
  const Lanes s = a.hi + b.hi;
  const Lanes t = s - a.hi;
  const Lanes lost = (a.hi - (s - t)) + (b.hi - t);
  out.lo = lost + (a.lo + b.lo);
  out.hi = s;
}
BAYWORK_LANES_HELPER void subtract(const Twofolds& a, const Twofolds& b, Twofolds& out) {
  const Lanes s = a.hi - b.hi;
  const Lanes t = s - a.hi;
  const Lanes lost = (a.hi - (s - t)) - (b.hi + t);
  out.lo = lost + (a.lo - b.lo);
  out.hi = s;
}
/// The rounded product has a second use in the fused step, so that no compiler can fuse it into a sum that follows.
BAYWORK_LANES_HELPER void multiply(const Twofolds& a, const Twofolds& b, Twofolds& out) {
  const Lanes p = a.hi * b.hi;
  const Lanes lost = BAYWORK_LANES_FUSED(a.hi, b.hi, (-p));
  out.lo = BAYWORK_LANES_FUSED(a.hi, b.lo, (BAYWORK_LANES_FUSED(a.lo, b.hi, lost)));
  out.hi = p;
}
/// out += a b and out -= a b.
BAYWORK_LANES_HELPER void add_product(const Twofolds& a, const Twofolds& b, Twofolds& out) {
  Twofolds p;
  multiply(a, b, p);
  add(out, p, out);
}
BAYWORK_LANES_HELPER void subtract_product(const Twofolds& a, const Twofolds& b, Twofolds& out) {
  Twofolds p;
  multiply(a, b, p);
  subtract(out, p, out);
}
BAYWORK_LANES_HELPER void dot(const Twofolds* a, const Twofolds* b, Twofolds& out) {
  multiply(a[0], b[0], out);
  add_product(a[1], b[1], out);
  add_product(a[2], b[2], out);
}
/// Makes lo as small as it can be, for hi that is not much smaller.
BAYWORK_LANES_HELPER void tidy(Twofolds& a) {
  const Lanes s = a.hi + a.lo;
  a.lo = a.lo - (s - a.hi);
  a.hi = s;
}
/// out += a × b, all three lengths of three; and out -= a × b.
BAYWORK_LANES_HELPER void add_cross(const Twofolds* a, const Twofolds* b, Twofolds* out) {
  for (std::size_t i = 0, j = 1, k = 2; i < 3; ++i, j = (j + 1) % 3, k = (k + 1) % 3) {
    add_product(a[j], b[k], out[i]);
    subtract_product(a[k], b[j], out[i]);
  }
}
BAYWORK_LANES_HELPER void subtract_cross(const Twofolds* a, const Twofolds* b, Twofolds* out) {
  for (std::size_t i = 0, j = 1, k = 2; i < 3; ++i, j = (j + 1) % 3, k = (k + 1) % 3) {
    subtract_product(a[j], b[k], out[i]);
    add_product(a[k], b[j], out[i]);
  }
}

/// largest = max(largest, |x|) lane by lane. As whole numbers: bits of absolute values are in their order, NaN on top.
BAYWORK_LANES_HELPER void see(const Lanes& x, Bits& largest) {
  const Bits size = reinterpret_cast<Bits>(x) & 0x7FFF'FFFF'FFFF'FFFFLL;
  largest = size > largest ? size : largest;
}

/// Largest of two kinds that have been met, forces and moments or displacements and rotations, as bits.
struct Largest {
  Bits force{}, moment{};
};
/// Largest over the lanes, each of both taken into `sizes`.
BAYWORK_LANES_HELPER void tell(const Largest& largest, double* sizes) {
  Bits force = largest.force, moment = largest.moment;
  const Lanes known = {sizes[0], sizes[0], sizes[1], sizes[1]};
  const Bits force2 = __builtin_shufflevector(force, moment, 0, 1, 4, 5),
             moment2 = __builtin_shufflevector(force, moment, 2, 3, 6, 7);
  Bits both = force2 > moment2 ? force2 : moment2;
  const Bits turned = __builtin_shufflevector(both, both, 1, 0, 3, 2);
  both = turned > both ? turned : both;
  see(known, both);
  const Lanes result = reinterpret_cast<Lanes>(both);
  sizes[0] = result[0];
  sizes[1] = result[2];
}

/// Rows become columns of a 4 x 4 tile.
BAYWORK_LANES_HELPER void transpose(Lanes& a, Lanes& b, Lanes& c, Lanes& d) {
  const Lanes ab_even = __builtin_shufflevector(a, b, 0, 4, 2, 6), ab_odd = __builtin_shufflevector(a, b, 1, 5, 3, 7);
  const Lanes cd_even = __builtin_shufflevector(c, d, 0, 4, 2, 6), cd_odd = __builtin_shufflevector(c, d, 1, 5, 3, 7);
  a = __builtin_shufflevector(ab_even, cd_even, 0, 1, 4, 5);
  b = __builtin_shufflevector(ab_odd, cd_odd, 0, 1, 4, 5);
  c = __builtin_shufflevector(ab_even, cd_even, 2, 3, 6, 7);
  d = __builtin_shufflevector(ab_odd, cd_odd, 2, 3, 6, 7);
}

/// Two twofold numbers that lie one after the other, (hi, lo, hi, lo), += two others.
BAYWORK_LANES_HELPER void add_pair(double* to, const Lanes& b) {
  const Lanes a = at(to).v;
  const Lanes s = a + b;
  const Lanes t = s - a;
  const Lanes lost = (a - (s - t)) + (b - t);
  const Lanes moved = __builtin_shufflevector(lost, Lanes{}, 4, 0, 4, 2);  // what the hi lost goes to the lo
  at(to).v = s + moved;
}
BAYWORK_LANES_HELPER void subtract_four(const Twofolds& factor, const double* other, double* row) {
  const Lanes a = at(row).v, b = at(row + 4).v, c = at(other).v, d = at(other + 4).v;
  Twofolds to{__builtin_shufflevector(a, b, 0, 4, 2, 6), __builtin_shufflevector(a, b, 1, 5, 3, 7)};
  const Twofolds by{__builtin_shufflevector(c, d, 0, 4, 2, 6), __builtin_shufflevector(c, d, 1, 5, 3, 7)};
  subtract_product(factor, by, to);
  tidy(to);
  at(row).v = __builtin_shufflevector(to.hi, to.lo, 0, 4, 2, 6);
  at(row + 4).v = __builtin_shufflevector(to.hi, to.lo, 1, 5, 3, 7);
}
/// `fours` times four numbers of a row, (hi, lo) each, -= a number times those of another row.
BAYWORK_LANES_FUNCTION void subtract_multiple(const double* factor, const double* other, std::size_t fours,
                                              double* row) {
  const Twofolds by{factor[0] - Lanes{}, factor[1] - Lanes{}};
  for (std::size_t i = 0; i < fours; ++i) subtract_four(by, other + 8 * i, row + 8 * i);
}

}  // namespace baywork::detail::twofold_lane

#endif
