// SPDX-License-Identifier: MIT
// Small dense kernels of a chain of stations, for any scalar: the plain form that the fast ones must agree with.
#pragma once

#include <cstddef>
#include <cstdint>

#include <baywork/core/scalar.hpp>

namespace baywork::detail {

/// Unknowns of a half of a station of four nodes that is its own mirror image.
inline constexpr std::size_t joint_half = 12;
/// Which of its joints face each other, and what the mirror does to a joint's motions: 1 or -1.
template <class S>
struct JointMirror {
  std::uint8_t one[2] = {}, other[2] = {};
  S sign[6] = {};
};

/// A 6 x 6 block of a sparse matrix C: rows 6 row..6 row + 5, columns 6 column..6 column + 5.
/// Column-major with leading dimension 8; rows 6 and 7 are zero and stay so.
template <class S>
struct BasicBlock6 {
  int row = 0, column = 0;
  int size = 6;  ///< 3 where nothing but the first three rows and columns is not zero: a bar's block
  S value[48];

  explicit BasicBlock6(int at_row = 0, int at_column = 0) : row(at_row), column(at_column) {
    for (S& v : value) v = S(0);
  }
  /// With at(i, j) in row i, column j.
  template <class At>
  BasicBlock6(int at_row, int at_column, const At& at) : row(at_row), column(at_column) {
    for (std::size_t j = 0; j < 6; ++j) {
      for (std::size_t i = 0; i < 6; ++i) value[i + 8 * j] = at(i, j);
      value[6 + 8 * j] = value[7 + 8 * j] = S(0);
    }
  }
  /// Finds out its size.
  void measure() {
    const auto empty = [&](std::size_t j, std::size_t from) {
      return value_of(value[8 * j + 5]) == 0.0 && value_of(value[8 * j + 4]) == 0.0 && value_of(value[8 * j + 3]) == 0.0 &&
             (from == 3 || (value_of(value[8 * j]) == 0.0 && value_of(value[8 * j + 1]) == 0.0 && value_of(value[8 * j + 2]) == 0.0));
    };
    size = empty(5, 0) && empty(4, 0) && empty(3, 0) && empty(2, 3) && empty(1, 3) && empty(0, 3) ? 3 : 6;
  }
  S& operator()(std::size_t i, std::size_t j) { return value[i + 8 * j]; }
  const S& operator()(std::size_t i, std::size_t j) const { return value[i + 8 * j]; }
  std::size_t first_row() const { return 6 * static_cast<std::size_t>(row); }
  std::size_t first_column() const { return 6 * static_cast<std::size_t>(column); }
};

/// What is not zero in a matrix, row by row, for a kernel (see RowLists).
template <class S>
struct RowsOf {
  std::size_t rows = 0;
  const std::uint32_t* end = nullptr;     ///< of each row, in `column`
  const std::uint32_t* column = nullptr;
  const S* value = nullptr;
};
/// Blocks row by row, three columns at a time (see BlockRows).
template <class S>
struct BlockRowsOf {
  std::size_t rows = 0;
  const std::uint32_t* end = nullptr;
  const std::uint32_t* column = nullptr;
  const S* value = nullptr;
};

/// The smallest of several pivot ratios and whose it is; a NaN once met stays.
struct SmallestRatio {
  double value = 1.0;
  std::size_t index = 0;

  void see(double ratio, std::size_t i) {
    if (value != value || ratio >= value) return;
    value = ratio;
    index = i;
  }
};

/// The kernels without vectors. Matrices are column-major, `ld` apart from column to column. What each one does, and
/// the bounds on its arguments, stands at `Kernels` (kernels.hpp).
template <class S>
struct PlainKernels {
  using Size = std::size_t;
  using Block = BasicBlock6<S>;

  /// By L D Lᵀ, the inverse of L, and L⁻ᵀ D⁻¹ L⁻¹, all in place.
  static double invert(Size n, Size ld, S* a) {
    Size worst = 0;
    const double ratio = eliminate(n, 0, ld, a, &worst);
    // Column j of L⁻¹: x_i = -(l_ij + sum over j < k < i of l_ik x_k), from the last column to the first, since
    // column j reads L in the columns right of it. Those already hold L⁻¹ = M: x = -M (column j of L).
    for (Size j = n; j-- > 0;)
      for (Size i = n; i-- > j + 1;) {
        S sum = a[i + j * ld];
        for (Size k = j + 1; k < i; ++k) sum += S(a[i + k * ld] * a[k + j * ld]);
        a[i + j * ld] = S(-sum);
      }
    // A⁻¹_ij = sum over k >= i of M_ki M_kj / d_k for i >= j: rows from the top, so that rows below are still M.
    for (Size j = 0; j < n; ++j)
      for (Size i = j; i < n; ++i) {
        S sum = i == j ? S(a[i + i * ld]) : S(a[i + j * ld] * a[i + i * ld]);
        for (Size k = i + 1; k < n; ++k) {
          S left = S(a[k + i * ld] * a[k + k * ld]);
          sum += S(left * a[k + j * ld]);
        }
        a[j + i * ld] = sum;
      }
    for (Size j = 0; j < n; ++j)
      for (Size i = j + 1; i < n; ++i) a[i + j * ld] = a[j + i * ld];
    return ratio;
  }

  /// Column by column; each takes what the columns before it subtract, so its diagonal is the given one until then.
  static double eliminate(Size n1, Size n2, Size ld, S* k, Size* worst) {
    const Size n = n1 + n2;
    SmallestRatio smallest;
    for (Size j = 0; j < n; ++j) {
      const double given = value_of(k[j + j * ld]);
      for (Size q = 0; q < (j < n1 ? j : n1); ++q) {
        S factor = S(k[j + q * ld] / k[q + q * ld]);  // l_jq d_q; the diagonal holds 1/d_q
        for (Size i = j; i < n; ++i) k[i + j * ld] -= S(k[i + q * ld] * factor);
      }
      if (j >= n1) continue;
      const double pivot = value_of(k[j + j * ld]);
      smallest.see(pivot / (given < 0.0 ? -given : given), j);
      S inverse = S(S(1) / k[j + j * ld]);
      for (Size i = j + 1; i < n; ++i) k[i + j * ld] = S(k[i + j * ld] * inverse);
      k[j + j * ld] = inverse;
    }
    *worst = smallest.index;
    return smallest.value;
  }

  static void add_blocks(const Block* blocks, Size count, S* to, Size ld) {
    for (const Block* b = blocks; b != blocks + count; ++b)
      for (Size j = 0; j < 6; ++j)
        for (Size i = 0; i < 6; ++i) to[b->first_row() + i + (b->first_column() + j) * ld] += (*b)(i, j);
  }

  static void times_blocks(Size n1, Size n2, Size ld, const S* p, const Block* blocks, Size count, Size ldx, S* x) {
    for (Size j = 0; j < n2; ++j)
      for (Size i = 0; i < ldx; ++i) x[i + j * ldx] = S(0);
    for (const Block* b = blocks; b != blocks + count; ++b)
      for (Size j = 0; j < 6; ++j)
        for (Size k = 0; k < 6; ++k)
          for (Size i = 0; i < n1; ++i)
            x[i + (b->first_column() + j) * ldx] += S(p[i + (b->first_row() + k) * ld] * (*b)(k, j));
  }

  static void minus_blocks_transposed(Size n1, Size n2, Size ldx, const S* x, const Block* blocks, Size count, Size ldd,
                                      S* d, S* minus_xt) {
    for (Size j = 0; j < n2; ++j) {
      minus_transposed_times(blocks, count, x + j * ldx, d + j * ldd);
      for (Size i = 0; i < n1; ++i) minus_xt[j + i * ldd] = S(-x[i + j * ldx]);
    }
  }

  static Size packed_size(Size n) { return n * (n + 1) / 2; }

  static void pack(Size n, Size ld, const S* full, S* packed) {
    for (Size j = 0; j < n; ++j)
      for (Size i = j; i < n; ++i) *packed++ = full[i + j * ld];
  }

  static void apply(Size n, const S* packed, const S* x, S* y) {
    for (Size i = 0; i < n; ++i) y[i] = S(0);
    for (Size j = 0; j < n; ++j) {
      S sum = S(*packed++ * x[j]);
      for (Size i = j + 1; i < n; ++i, ++packed) {
        y[i] += S(*packed * x[j]);
        sum += S(*packed * x[i]);
      }
      y[j] += sum;
    }
  }

  static void apply_many(Size n, const S* packed, Size ld, const S* x, S* y, Size m) {
    for (Size r = 0; r < m; ++r) apply(n, packed, x + r * ld, y + r * ld);
  }

  static void minus_blocks_times(const Block* blocks, Size count, const S* x, S* y) {
    for (const Block* b = blocks; b != blocks + count; ++b)
      for (Size j = 0; j < 6; ++j)
        for (Size i = 0; i < 6; ++i) y[b->first_row() + i] -= S((*b)(i, j) * x[b->first_column() + j]);
  }
  static void minus_transposed_times(const Block* blocks, Size count, const S* x, S* y) {
    for (const Block* b = blocks; b != blocks + count; ++b)
      for (Size j = 0; j < 6; ++j)
        for (Size i = 0; i < 6; ++i) y[b->first_column() + j] -= S((*b)(i, j) * x[b->first_row() + i]);
  }

  static void forward(Size n1, Size n2, Size ld, const S* l, S* h) {
    for (Size j = 0; j < n1; ++j)
      for (Size i = j + 1; i < n1 + n2; ++i) h[i] -= S(l[i + j * ld] * h[j]);
  }
  static void backward(Size n1, Size n2, Size ld, const S* l, S* h) {
    for (Size j = n1; j-- > 0;) {
      S sum = S(h[j] * l[j + j * ld]);
      for (Size i = j + 1; i < n1 + n2; ++i) sum -= S(l[i + j * ld] * h[i]);
      h[j] = sum;
    }
  }

  static void minus_times(Size rows, Size columns, Size ld, const S* a, Size count, const S* const* x, S* const* y) {
    for (Size k = 0; k < count; ++k)
      for (Size c = 0; c < columns; ++c)
        for (Size r = 0; r < rows; ++r) y[k][r] -= S(a[r + c * ld] * x[k][c]);
  }
  static void minus_block_rows(const BlockRowsOf<S>& c, const S* from, S* x) {
    Size k = 0;
    for (Size r = 0; r < c.rows; ++r)
      for (; k < c.end[r]; ++k)
        for (Size j = 0; j < 3; ++j)
          for (Size i = 0; i < 6; ++i) x[6 * r + i] -= S(c.value[24 * k + 8 * j + i] * from[c.column[k] + j]);
  }
  static void apply_in_place(Size n, const S* packed, S* x) {
    S given[48];
    for (Size i = 0; i < n; ++i) given[i] = x[i];
    apply(n, packed, given, x);
  }

  static double join(const S* left, const S* right, const S* own, S* given, S* swept, S* turned, S* joined) {
    constexpr Size n = joint_half, two = 2 * n, all = 3 * n;
    double least = 1.0;
    for (Size h = 0; h < 2; ++h) {  // a half after the other, each in a matrix of its own: the joint, first, last
      S front[all * all], inverse[n * n];
      for (Size i = 0; i < all * all; ++i) front[i] = S(0);
      for (Size c = 0; c < n; ++c) {
        for (Size r = 0; r < n; ++r) {
          front[r + c * all] = S(S(left[2 * (n + r + (n + c) * two) + h] + right[2 * (r + c * two) + h]) + own[2 * (r + c * n) + h]);
          front[n + r + c * all] = left[2 * (n + c + r * two) + h];
          front[two + r + c * all] = right[2 * (n + r + c * two) + h];
          front[n + r + (n + c) * all] = left[2 * (r + c * two) + h];
          front[two + r + (two + c) * all] = right[2 * (n + r + (n + c) * two) + h];
          inverse[r + c * n] = front[r + c * all];
        }
        given[2 * c + h] = front[c + c * all];
      }
      const double ratio = invert(n, n, inverse);
      if (!(ratio >= least)) least = ratio > 0.0 ? ratio : 0.0;
      for (Size c = 0; c < n; ++c)
        for (Size r = 0; r < all; ++r) {
          S sum = S(0);
          for (Size k = 0; k < n && r >= n; ++k) sum += S(front[r + k * all] * inverse[k + c * n]);
          swept[2 * (r + c * all) + h] = r < n ? inverse[r + c * n] : sum;
          if (r >= n) turned[2 * (c + (r - n) * n) + h] = sum;
        }
      for (Size c = 0; c < two; ++c)
        for (Size r = c; r < two; ++r) {
          S sum = front[n + r + (n + c) * all];
          for (Size k = 0; k < n; ++k) sum -= S(swept[2 * (n + r + k * all) + h] * front[n + c + k * all]);
          joined[2 * (r + c * two) + h] = sum;
        }
    }
    return least;
  }
  static void through_joint(const S* swept, Size count, S* const* middle, S* const* first, S* const* last) {
    constexpr Size two = 2 * joint_half, all = 3 * joint_half;
    for (Size k = 0; k < count; ++k) {
      S given[two];
      for (Size i = 0; i < two; ++i) given[i] = middle[k][i], middle[k][i] = S(0);
      for (Size c = 0; c < joint_half; ++c)
        for (Size i = 0; i < two; ++i) {
          const S* const column = swept + 2 * c * all + i;
          const S& x = given[2 * c + i % 2];
          middle[k][i] += S(column[0] * x), first[k][i] -= S(column[two] * x), last[k][i] -= S(column[2 * two] * x);
        }
    }
  }
  static void back_through_joint(const S* turned, Size count, S* const* middle, const S* const* first, const S* const* last) {
    constexpr Size two = 2 * joint_half;
    for (Size k = 0; k < count; ++k)
      for (Size c = 0; c < joint_half; ++c)
        for (Size i = 0; i < two; ++i)
          middle[k][i] -= S(S(turned[two * c + i] * first[k][2 * c + i % 2]) + S(turned[two * (joint_half + c) + i] * last[k][2 * c + i % 2]));
  }

  static void to_halves(const JointMirror<S>& m, S* x) {
    S h[2 * joint_half];
    for (Size i = 0; i < joint_half; ++i) {
      const Size k = i % 6;
      const S a = x[6 * m.one[i / 6] + k], b = S(m.sign[k] * x[6 * m.other[i / 6] + k]);
      h[2 * i] = S(a + b), h[2 * i + 1] = S(a - b);
    }
    for (Size i = 0; i < 2 * joint_half; ++i) x[i] = h[i];
  }
  static void from_halves(const JointMirror<S>& m, S* x) {
    S u[2 * joint_half];
    for (Size i = 0; i < joint_half; ++i) {
      const Size k = i % 6;
      const S a = S(S(0.5) * x[2 * i]), b = S(S(0.5) * x[2 * i + 1]);
      u[6 * m.one[i / 6] + k] = S(a + b), u[6 * m.other[i / 6] + k] = S(m.sign[k] * S(a - b));
    }
    for (Size i = 0; i < 2 * joint_half; ++i) x[i] = u[i];
  }

  static void to_halves_group(const JointMirror<S>& m, Size ld, const S* columns, Size count, S* group) {
    for (Size i = 0; i < joint_half; ++i)
      for (Size c = 0; c < 8; ++c) {
        const Size one = 6 * m.one[i / 6] + i % 6 + c * ld, other = 6 * m.other[i / 6] + i % 6 + c * ld;
        const S a = c < count ? columns[one] : S(0), b = c < count ? S(m.sign[i % 6] * columns[other]) : S(0);
        group[8 * i + c] = S(a + b), group[8 * (joint_half + i) + c] = S(a - b);
      }
  }
  static void from_halves_group(const JointMirror<S>& m, Size ld, const S* group, Size count, S* columns) {
    for (Size i = 0; i < joint_half; ++i)
      for (Size c = 0; c < count; ++c) {
        const S a = S(S(0.5) * group[8 * i + c]), b = S(S(0.5) * group[8 * (joint_half + i) + c]);
        columns[6 * m.one[i / 6] + i % 6 + c * ld] = S(a + b);
        columns[6 * m.other[i / 6] + i % 6 + c * ld] = S(m.sign[i % 6] * S(a - b));
      }
  }

  static void apply_groups(Size n, const S* packed, Size groups, const S* x, S* y) {
    for (; groups > 0; --groups, x += 8 * n, y += 8 * n) {
      const S* p = packed;
      for (Size u = 0; u < 8 * n; ++u) y[u] = S(0);
      for (Size j = 0; j < n; ++j)
        for (Size i = j; i < n; ++i, ++p)
          for (Size k = 0; k < 8; ++k) {
            y[8 * i + k] += S(*p * x[8 * j + k]);
            if (i > j) y[8 * j + k] += S(*p * x[8 * i + k]);
          }
    }
  }
  static void times_groups(bool minus, Size rows, Size columns, Size step, Size ld, const S* a, Size groups, Size x_apart, const S* x, Size y_apart, S* y) {
    for (; groups > 0; --groups, x += x_apart, y += y_apart)
      for (Size r = 0; r < rows; ++r)
        for (Size k = 0; k < 8; ++k) {
          S sum = S(0);
          for (Size c = 0; c < columns; ++c) sum += S(a[r * step + c * ld] * x[8 * c + k]);
          y[8 * r + k] = minus ? S(y[8 * r + k] - sum) : sum;
        }
  }
  static void rows_groups(bool minus, const RowsOf<S>& c, Size groups, Size x_size, const S* x, S* y) {
    for (; groups > 0; --groups, x += 8 * x_size)
      for (Size r = 0, e = 0; r < c.rows; ++r, y += 8)
        for (const Size first = e; e < c.end[r]; ++e)
          for (Size k = 0; k < 8; ++k) {
            const S part = S(c.value[e] * x[8 * c.column[e] + k]);
            y[k] = minus ? S(y[k] - part) : (e == first ? part : S(y[k] + part));
          }
  }
  static void to_group(Size n, Size ld, const S* columns, Size count, S* group) {
    for (Size i = 0; i < n; ++i)
      for (Size k = 0; k < 8; ++k) group[8 * i + k] = k < count ? columns[i + k * ld] : S(0);
  }
  static void from_group(Size n, Size ld, const S* group, Size count, S* columns) {
    for (Size i = 0; i < n; ++i)
      for (Size k = 0; k < count; ++k) columns[i + k * ld] = group[8 * i + k];
  }
};

}  // namespace baywork::detail
