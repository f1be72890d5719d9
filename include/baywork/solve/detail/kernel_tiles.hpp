// SPDX-License-Identifier: MIT
// Eight pivots at a time, by whole tiles: what the inverse and the partial factor share where there are eight lanes.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET
#if BAYWORK_KERNEL_LANES == 8

namespace baywork::detail::BAYWORK_KERNEL_SET {

// L of the pivot block stands, with its sign turned, in minus_l: column q from 8 q on.
template <Size row>
BAYWORK_KERNEL_HELPER void add_with_row(const Lanes& minus_l, const Lanes& column, Lanes& c) {
  c = BAYWORK_KERNEL_MADD(minus_l, __builtin_shufflevector(column, column, row, row, row, row, row, row, row, row), c);
}
template <Size q, Size... Later>
BAYWORK_KERNEL_HELPER void take_pivot(Lanes* c, double* minus_l, double* inverse, std::index_sequence<Later...>) {
  const Lanes d = 1.0 / __builtin_shufflevector(c[q], c[q], q, q, q, q, q, q, q, q), l = -c[q] * d;
  at(minus_l + 8 * q).v = l;
  inverse[q] = d[0];
  (add_with_row<q + 1 + Later>(l, c[q], c[q + 1 + Later]), ...);
}
template <Size... Q>
BAYWORK_KERNEL_HELPER void factor_tile(const double* a, Size ld, double* minus_l, double* inverse,
                                       std::index_sequence<Q...> all) {
  Lanes c[8];
  load<1>(c, a, ld, all);
  (take_pivot<Q>(c, minus_l, inverse, std::make_index_sequence<7 - Q>{}), ...);
}
template <Size q, Size... Later>
BAYWORK_KERNEL_HELPER void pass_on(Lanes* b, const double* minus_l, std::index_sequence<Later...>) {
  ((b[q + 1 + Later] = BAYWORK_KERNEL_MADD(b[q], (minus_l[9 * q + 1 + Later] - Lanes{}), b[q + 1 + Later])), ...);
}

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
#endif
