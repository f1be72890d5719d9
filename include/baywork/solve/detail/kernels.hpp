// SPDX-License-Identifier: MIT
// Small dense kernels of a chain of stations: for double the fastest set of instructions of the machine it runs on.
#pragma once

#include <cstddef>
#include <cstdint>
#include <type_traits>
#include <utility>

#include <baywork/solve/detail/plain_kernels.hpp>

namespace baywork::detail {

using Block6 = BasicBlock6<double>;

enum class InstructionSet { plain, avx2, avx512 };

/// What follows holds for every set. Matrices are column-major; each leading dimension (`ld...`, counted in numbers) is
/// at least the row count rounded up to a multiple of 8. Rows from the row count on are zero and stay zero. Vectors are
/// padded in the same way. No argument need be aligned; none may overlap another.
struct Kernels {
  using Size = std::size_t;

  /// a (n x n, symmetric positive definite; only the lower triangle counts) becomes its inverse, in full.
  /// Returns the smallest of pivot/|given diagonal|. If that is not above zero (NaN included), a is not positive
  /// definite and its contents are void.
  double (*invert)(Size n, Size ld, double* a);

  /// Eliminates the first n1 unknowns of a symmetric k of order n1 + n2; only the lower triangle counts.
  /// On return column j < n1 holds 1/d_j on the diagonal and the unit lower L below it, of k = L D Lᵀ; the lower
  /// triangle of the last n2 rows and columns holds the Schur complement. Returns as `invert` does; *worst is whose
  /// ratio it is.
  double (*eliminate)(Size n1, Size n2, Size ld, double* k, Size* worst);

  /// to += the blocks.
  void (*add_blocks)(const Block6* blocks, Size count, double* to, Size ld);

  /// x (n1 x n2) = p c, p n1 x n1 in full, c the sum of the blocks. Columns of x past n2 are not touched.
  void (*times_blocks)(Size n1, Size n2, Size ld, const double* p, const Block6* blocks, Size count, Size ldx,
                       double* x);

  /// d (n2 x n2) -= cᵀ x for a symmetric product, c n1 x n2: the lower triangle of d is right after it, the upper one
  /// void. On return minus_xt (n2 x n1, ldd apart) is -xᵀ.
  void (*minus_blocks_transposed)(Size n1, Size n2, Size ldx, const double* x, const Block6* blocks, Size count,
                                  Size ldd, double* d, double* minus_xt);

  /// Numbers in a packed symmetric matrix of order n. The order of the numbers in it belongs to the instruction set.
  Size (*packed_size)(Size n);
  void (*pack)(Size n, Size ld, const double* full, double* packed);
  /// y = p x.
  void (*apply)(Size n, const double* packed, const double* x, double* y);
  /// x := p x; n at most 48.
  void (*apply_in_place)(Size n, const double* packed, double* x);
  /// y = p x for m columns of x and y, ld apart.
  void (*apply_many)(Size n, const double* packed, Size ld, const double* x, double* y, Size m);

  /// y -= c x and y -= cᵀ x.
  void (*minus_blocks_times)(const Block6* blocks, Size count, const double* x, double* y);
  void (*minus_transposed_times)(const Block6* blocks, Size count, const double* x, double* y);

  /// With l from `eliminate` and h = (h_e, h_k), n1 + n2 numbers: h_e becomes L11⁻¹ h_e and h_k becomes h_k - L21 h_e.
  void (*forward)(Size n1, Size n2, Size ld, const double* l, double* h);
  /// With h = (h_e after `forward`, k): h_e becomes e = L11⁻ᵀ (D⁻¹ h_e - L21ᵀ k).
  void (*backward)(Size n1, Size n2, Size ld, const double* l, double* h);

  /// y[k] -= a x[k] for `count` vectors wherever they stand, a of rows x columns in full. No y is an x or another y.
  void (*minus_times)(Size rows, Size columns, Size ld, const double* a, Size count, const double* const* x,
                      double* const* y);
  /// x -= c from.
  void (*minus_block_rows)(const BlockRowsOf<double>& c, const double* from, double* x);

  // A joint of four nodes between two segments that are their own mirror images. Number i of both halves stands in [2 i]
  // and [2 i + 1]; a half has h = joint_half numbers; nothing is padded.
  /// Segments `left` and `right`, each the lower triangles of the stiffness of its first and last station (2 h), with what
  /// the joint between has on its own (h), become `joined`. With P the inverse of what the joint has from all three,
  /// which started from the diagonal `given`, and C what couples it to first and last: `swept` (3 h x h) is P and below
  /// it C P, `turned` (h x 2 h) is (C P)ᵀ. Returns as `invert` does.
  double (*join)(const double* left, const double* right, const double* own, double* given, double* swept,
                 double* turned, double* joined);
  /// For `count` vectors wherever they stand: (first, last) -= C P middle, and middle := P middle.
  void (*through_joint)(const double* swept, Size count, double* const* middle, double* const* first,
                        double* const* last);
  /// The way back: middle -= (C P)ᵀ (first, last).
  void (*back_through_joint)(const double* turned, Size count, double* const* middle, const double* const* first,
                             const double* const* last);

  /// A station's motions or forces to those of both halves, and back.
  void (*to_halves)(const JointMirror<double>& mirror, double* x);
  void (*from_halves)(const JointMirror<double>& mirror, double* x);
  /// The same for `count` (at most eight) columns, ld apart, to a group that zeros fill up, and back. In groups (see
  /// below) what the mirror turns about stands after what it keeps.
  void (*to_halves_group)(const JointMirror<double>& mirror, Size ld, const double* columns, Size count, double* group);
  void (*from_halves_group)(const JointMirror<double>& mirror, Size ld, const double* group, Size count,
                            double* columns);

  // Many vectors in groups of eight that stand side by side: number u of vector k of a group is its [8 u + k]. Groups
  // follow each other without padding.
  /// y = p x; n at most 48.
  void (*apply_groups)(Size n, const double* packed, Size groups, const double* x, double* y);
  /// y = a x, or y -= a x, a of rows x columns in full, its rows `step` (1 or 2) and its columns `ld` apart; `x_apart`, `y_apart`:
  /// from group to group.
  void (*times_groups)(bool minus, Size rows, Size columns, Size step, Size ld, const double* a, Size groups,
                       Size x_apart, const double* x, Size y_apart, double* y);
  /// y = c x, or y -= c x, c by single rows, of which those without numbers are left alone; `x_size`: numbers of a vector
  /// in x.
  void (*rows_groups)(bool minus, const RowsOf<double>& c, Size groups, Size x_size, const double* x, double* y);
  /// `count` (at most eight) columns, ld apart, to a group that zeros fill up, and back.
  void (*to_group)(Size n, Size ld, const double* columns, Size count, double* group);
  void (*from_group)(Size n, Size ld, const double* group, Size count, double* columns);
};

}  // namespace baywork::detail

#if defined(__x86_64__) && !defined(BAYWORK_PLAIN_KERNELS)
#define BAYWORK_DISPATCHED_KERNELS 1
#endif

#if defined(BAYWORK_SOLVER_ELSEWHERE) && !defined(BAYWORK_SOLVER_HERE)
namespace baywork::detail {
const Kernels* kernels(InstructionSet set);  // see the end of frame_solver.hpp
}
#else

#define BAYWORK_KERNEL_SET plain_set
#define BAYWORK_KERNEL_LANES 2
#define BAYWORK_KERNEL_TARGET
#define BAYWORK_KERNEL_MADD(a, b, c) ((a) * (b) + (c))
#include <baywork/solve/detail/kernel_bodies.hpp>

#ifdef BAYWORK_DISPATCHED_KERNELS

// Fused multiply and add on lanes, which the language has no operator for: newer compilers have one name for it.
#if defined(__has_builtin) && __has_builtin(__builtin_elementwise_fma)
#define BAYWORK_FUSED_4(a, b, c) __builtin_elementwise_fma(Lanes(a), Lanes(b), Lanes(c))
#define BAYWORK_FUSED_8 BAYWORK_FUSED_4
#else
#define BAYWORK_FUSED_4(a, b, c) __builtin_ia32_vfmaddpd256((a), (b), (c))
#define BAYWORK_FUSED_8(a, b, c) __builtin_ia32_vfmaddpd512_mask((a), (b), (c), static_cast<unsigned char>(255), 4)
#endif

#define BAYWORK_KERNEL_SET avx2_set
#define BAYWORK_KERNEL_LANES 4
#define BAYWORK_KERNEL_TARGET __attribute__((target("avx2,fma")))
#define BAYWORK_KERNEL_MADD BAYWORK_FUSED_4
#include <baywork/solve/detail/kernel_bodies.hpp>

#define BAYWORK_KERNEL_SET avx512_set
#define BAYWORK_KERNEL_LANES 8
#define BAYWORK_KERNEL_TARGET __attribute__((target("avx512f,avx512vl,avx512dq,avx2,fma")))
#define BAYWORK_KERNEL_MADD BAYWORK_FUSED_8
#define BAYWORK_KERNEL_REGISTER "v"
#include <baywork/solve/detail/kernel_bodies.hpp>

#undef BAYWORK_FUSED_4
#undef BAYWORK_FUSED_8
#endif

#ifdef BAYWORK_SOLVER_HERE
#define BAYWORK_KERNELS_INLINE
#else
#define BAYWORK_KERNELS_INLINE inline
#endif

namespace baywork::detail {

/// The kernels of one instruction set, or nullptr if this machine (or this build) cannot run them.
BAYWORK_KERNELS_INLINE const Kernels* kernels(InstructionSet set) {
#ifdef BAYWORK_DISPATCHED_KERNELS
  __builtin_cpu_init();  // may be called before constructors of other units have run
  const bool avx2 = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
  if (set == InstructionSet::avx2) return avx2 ? &avx2_set::all : nullptr;
  if (set == InstructionSet::avx512)
    return avx2 && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512vl") &&
                   __builtin_cpu_supports("avx512dq")
               ? &avx512_set::all
               : nullptr;
#endif
  return set == InstructionSet::plain ? &plain_set::all : nullptr;
}

}  // namespace baywork::detail

#undef BAYWORK_KERNELS_INLINE
#endif

namespace baywork::detail {

/// The widest set that this machine runs.
inline const Kernels& kernels() {
  static const Kernels* const chosen = [] {
    const Kernels* const widest = kernels(InstructionSet::avx512);
    const Kernels* const wide = kernels(InstructionSet::avx2);
    return widest ? widest : wide ? wide : kernels(InstructionSet::plain);
  }();
  return *chosen;
}

/// The kernels for a scalar: KernelsOf<S>::invert(n, ld, a). For double through the table, else without vectors.
template <class S>
struct KernelsOf : PlainKernels<S> {};

template <>
struct KernelsOf<double> {
  using Size = std::size_t;
  using Block = Block6;

  static double invert(Size n, Size ld, double* a) { return kernels().invert(n, ld, a); }
  static double eliminate(Size n1, Size n2, Size ld, double* k, Size* worst) {
    return kernels().eliminate(n1, n2, ld, k, worst);
  }
  static void add_blocks(const Block* blocks, Size count, double* to, Size ld) {
    kernels().add_blocks(blocks, count, to, ld);
  }
  static void times_blocks(Size n1, Size n2, Size ld, const double* p, const Block* blocks, Size count, Size ldx,
                           double* x) {
    kernels().times_blocks(n1, n2, ld, p, blocks, count, ldx, x);
  }
  static void minus_blocks_transposed(Size n1, Size n2, Size ldx, const double* x, const Block* blocks, Size count,
                                      Size ldd, double* d, double* minus_xt) {
    kernels().minus_blocks_transposed(n1, n2, ldx, x, blocks, count, ldd, d, minus_xt);
  }
  static Size packed_size(Size n) { return kernels().packed_size(n); }
  static void pack(Size n, Size ld, const double* full, double* packed) { kernels().pack(n, ld, full, packed); }
  static void apply(Size n, const double* packed, const double* x, double* y) { kernels().apply(n, packed, x, y); }
  static void apply_in_place(Size n, const double* packed, double* x) { kernels().apply_in_place(n, packed, x); }
  static void apply_many(Size n, const double* packed, Size ld, const double* x, double* y, Size m) {
    kernels().apply_many(n, packed, ld, x, y, m);
  }
  static void minus_blocks_times(const Block* blocks, Size count, const double* x, double* y) {
    kernels().minus_blocks_times(blocks, count, x, y);
  }
  static void minus_transposed_times(const Block* blocks, Size count, const double* x, double* y) {
    kernels().minus_transposed_times(blocks, count, x, y);
  }
  static void forward(Size n1, Size n2, Size ld, const double* l, double* h) { kernels().forward(n1, n2, ld, l, h); }
  static void backward(Size n1, Size n2, Size ld, const double* l, double* h) { kernels().backward(n1, n2, ld, l, h); }
  static void minus_times(Size rows, Size columns, Size ld, const double* a, Size count, const double* const* x,
                          double* const* y) {
    kernels().minus_times(rows, columns, ld, a, count, x, y);
  }
  static void minus_block_rows(const BlockRowsOf<double>& c, const double* from, double* x) {
    kernels().minus_block_rows(c, from, x);
  }
  static double join(const double* left, const double* right, const double* own, double* given, double* swept,
                     double* turned, double* joined) {
    return kernels().join(left, right, own, given, swept, turned, joined);
  }
  static void through_joint(const double* swept, Size count, double* const* middle, double* const* first,
                            double* const* last) {
    kernels().through_joint(swept, count, middle, first, last);
  }
  static void back_through_joint(const double* turned, Size count, double* const* middle, const double* const* first,
                                 const double* const* last) {
    kernels().back_through_joint(turned, count, middle, first, last);
  }
  static void to_halves(const JointMirror<double>& mirror, double* x) { kernels().to_halves(mirror, x); }
  static void from_halves(const JointMirror<double>& mirror, double* x) { kernels().from_halves(mirror, x); }
  static void to_halves_group(const JointMirror<double>& mirror, Size ld, const double* columns, Size count,
                              double* group) {
    kernels().to_halves_group(mirror, ld, columns, count, group);
  }
  static void from_halves_group(const JointMirror<double>& mirror, Size ld, const double* group, Size count,
                                double* columns) {
    kernels().from_halves_group(mirror, ld, group, count, columns);
  }
  static void apply_groups(Size n, const double* packed, Size groups, const double* x, double* y) {
    kernels().apply_groups(n, packed, groups, x, y);
  }
  static void times_groups(bool minus, Size rows, Size columns, Size step, Size ld, const double* a, Size groups,
                           Size x_apart, const double* x, Size y_apart, double* y) {
    kernels().times_groups(minus, rows, columns, step, ld, a, groups, x_apart, x, y_apart, y);
  }
  static void rows_groups(bool minus, const RowsOf<double>& c, Size groups, Size x_size, const double* x, double* y) {
    kernels().rows_groups(minus, c, groups, x_size, x, y);
  }
  static void to_group(Size n, Size ld, const double* columns, Size count, double* group) {
    kernels().to_group(n, ld, columns, count, group);
  }
  static void from_group(Size n, Size ld, const double* group, Size count, double* columns) {
    kernels().from_group(n, ld, group, count, columns);
  }
};

}  // namespace baywork::detail
