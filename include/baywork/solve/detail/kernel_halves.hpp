// SPDX-License-Identifier: MIT
// Motions and forces of a station to those of both halves, what its mirror keeps and what it turns about, and back.
// A part of kernel_bodies.hpp, which is included once per instruction set.

#ifdef BAYWORK_KERNEL_SET

namespace baywork::detail::BAYWORK_KERNEL_SET {

#if BAYWORK_KERNEL_LANES == 2
BAYWORK_KERNEL_FUNCTION void to_halves(const JointMirror<double>& m, double* x) {
  PlainKernels<double>::to_halves(m, x);
}
BAYWORK_KERNEL_FUNCTION void from_halves(const JointMirror<double>& m, double* x) {
  PlainKernels<double>::from_halves(m, x);
}
BAYWORK_KERNEL_FUNCTION void to_halves_group(const JointMirror<double>& m, Size ld, const double* columns, Size count,
                                             double* group) {
  PlainKernels<double>::to_halves_group(m, ld, columns, count, group);
}
BAYWORK_KERNEL_FUNCTION void from_halves_group(const JointMirror<double>& m, Size ld, const double* group, Size count,
                                               double* columns) {
  PlainKernels<double>::from_halves_group(m, ld, group, count, columns);
}
#else
// Six numbers are moved as four and two. All are read before any is written, and straight to their places: what was
// stored in parts and is read as a whole at once has to wait.
BAYWORK_KERNEL_FUNCTION void to_halves(const JointMirror<double>& m, double* x) {
  Part keeps[2], turns[2];
  PairInMemory keeps_last[2], turns_last[2];
  for (Size p = 0; p < 2; ++p) {
    const double *const one = x + 6 * m.one[p], *const other = x + 6 * m.other[p];
    const Part a = part(one).v, b = part(other).v * part(m.sign).v;
    const PairInMemory c = pair(one + 4).v, d = pair(other + 4).v * pair(m.sign + 4).v;
    keeps[p] = a + b, turns[p] = a - b, keeps_last[p] = c + d, turns_last[p] = c - d;
  }
  for (Size p = 0; p < 2; ++p, x += 12) {
    part(x).v = __builtin_shufflevector(keeps[p], turns[p], 0, 4, 1, 5);
    part(x + 4).v = __builtin_shufflevector(keeps[p], turns[p], 2, 6, 3, 7);
    pair(x + 8).v = __builtin_shufflevector(keeps_last[p], turns_last[p], 0, 2);
    pair(x + 10).v = __builtin_shufflevector(keeps_last[p], turns_last[p], 1, 3);
  }
}
BAYWORK_KERNEL_FUNCTION void from_halves(const JointMirror<double>& m, double* x) {
  Part one[2], other[2];
  PairInMemory one_last[2], other_last[2];
  for (Size p = 0; p < 2; ++p) {
    const double* const from = x + 12 * p;
    const Part a = part(from).v * 0.5, b = part(from + 4).v * 0.5;
    const PairInMemory c = pair(from + 8).v * 0.5, d = pair(from + 10).v * 0.5;
    const Part keeps = __builtin_shufflevector(a, b, 0, 2, 4, 6), turns = __builtin_shufflevector(a, b, 1, 3, 5, 7);
    const PairInMemory keeps_last = __builtin_shufflevector(c, d, 0, 2), turns_last = __builtin_shufflevector(c, d, 1, 3);
    one[p] = keeps + turns, other[p] = (keeps - turns) * part(m.sign).v;
    one_last[p] = keeps_last + turns_last, other_last[p] = (keeps_last - turns_last) * pair(m.sign + 4).v;
  }
  for (Size p = 0; p < 2; ++p) {
    part(x + 6 * m.one[p]).v = one[p], pair(x + 6 * m.one[p] + 4).v = one_last[p];
    part(x + 6 * m.other[p]).v = other[p], pair(x + 6 * m.other[p] + 4).v = other_last[p];
  }
}
/// Numbers 0 to 3 of a joint in four columns, turned: to[i] is number i of all four.
BAYWORK_KERNEL_HELPER void load_turned(const double* from, Size ld, Part* to) {
  for (Size c = 0; c < 4; ++c) to[c] = part(from + c * ld).v;
  turn_parts(to);
}
/// Numbers 4 and 5 of two joints.
BAYWORK_KERNEL_HELPER void load_last_turned(const double* a, const double* b, Size ld, Part* to) {
  for (Size c = 0; c < 4; ++c) to[c] = __builtin_shufflevector(part(a + 2 + c * ld).v, part(b + 2 + c * ld).v, 2, 3, 6, 7);
  turn_parts(to);
}
BAYWORK_KERNEL_HELPER void store_turned(Part* t, double* to, Size ld) {
  turn_parts(t);
  for (Size c = 0; c < 4; ++c) part(to + c * ld).v = t[c];
}
BAYWORK_KERNEL_HELPER void store_last_turned(Part* t, double* a, double* b, Size ld) {
  turn_parts(t);
  for (Size c = 0; c < 4; ++c) {
    pair(a + 4 + c * ld).v = __builtin_shufflevector(t[c], t[c], 0, 1);
    pair(b + 4 + c * ld).v = __builtin_shufflevector(t[c], t[c], 2, 3);
  }
}
/// Four rows of both halves from those of joints that face each other, or the other way round.
BAYWORK_KERNEL_HELPER void split_row(const Part& a, const Part& b, double sign, double* to) {
  const Part facing = sign * b;
  part(to).v = a + facing, part(to + 8 * joint_half).v = a - facing;
}
BAYWORK_KERNEL_HELPER void unite_row(const double* from, double sign, Part& a, Part& b) {
  const Part keeps = 0.5 * part(from).v, turns = 0.5 * part(from + 8 * joint_half).v;
  a = keeps + turns, b = sign * (keeps - turns);
}
BAYWORK_KERNEL_FUNCTION void to_halves_group(const JointMirror<double>& m, Size ld, const double* columns, Size count,
                                             double* group) {
  if (count % 4 != 0) return PlainKernels<double>::to_halves_group(m, ld, columns, count, group);
  for (Size i = 0; i < 2 * joint_half && count == 4; ++i) part(group + 8 * i + 4).v = Part{};
  for (Size c = 0; c < count; c += 4, columns += 4 * ld, group += 4) {
    Part a[4], b[4];
    for (Size p = 0; p < 2; ++p) {
      load_turned(columns + 6 * m.one[p], ld, a), load_turned(columns + 6 * m.other[p], ld, b);
      for (Size i = 0; i < 4; ++i) split_row(a[i], b[i], m.sign[i], group + 8 * (6 * p + i));
    }
    load_last_turned(columns + 6 * m.one[0], columns + 6 * m.one[1], ld, a);
    load_last_turned(columns + 6 * m.other[0], columns + 6 * m.other[1], ld, b);
    for (Size i = 0; i < 4; ++i) split_row(a[i], b[i], m.sign[4 + i % 2], group + 8 * (4 + i % 2 + 6 * (i / 2)));
  }
}
BAYWORK_KERNEL_FUNCTION void from_halves_group(const JointMirror<double>& m, Size ld, const double* group, Size count,
                                               double* columns) {
  if (count % 4 != 0) return PlainKernels<double>::from_halves_group(m, ld, group, count, columns);
  for (Size c = 0; c < count; c += 4, columns += 4 * ld, group += 4) {
    Part a[4], b[4];
    for (Size p = 0; p < 2; ++p) {
      for (Size i = 0; i < 4; ++i) unite_row(group + 8 * (6 * p + i), m.sign[i], a[i], b[i]);
      store_turned(a, columns + 6 * m.one[p], ld), store_turned(b, columns + 6 * m.other[p], ld);
    }
    for (Size i = 0; i < 4; ++i) unite_row(group + 8 * (4 + i % 2 + 6 * (i / 2)), m.sign[4 + i % 2], a[i], b[i]);
    store_last_turned(a, columns + 6 * m.one[0], columns + 6 * m.one[1], ld);
    store_last_turned(b, columns + 6 * m.other[0], columns + 6 * m.other[1], ld);
  }
}
#endif

}  // namespace baywork::detail::BAYWORK_KERNEL_SET

#endif
