// SPDX-License-Identifier: MIT
// Matrices and couplings for the kernels of a chain, and every set of instructions that this machine has.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <Eigen/LU>
#include <Eigen/QR>
#include <unsupported/Eigen/AutoDiff>

#include <baywork/solve/detail/bay_type.hpp>
#include <baywork/solve/detail/coupling_lists.hpp>
#include <baywork/solve/detail/kernels.hpp>

// Eight lanes on the instructions for four: the logic of the widest set, on machines without it.
#if defined(__x86_64__)
#define BAYWORK_KERNEL_SET eight_lanes_set
#define BAYWORK_KERNEL_LANES 8
#define BAYWORK_KERNEL_TARGET __attribute__((target("avx2,fma")))
#define BAYWORK_KERNEL_MADD(a, b, c) ((a) * (b) + (c))
#include <baywork/solve/detail/kernel_bodies.hpp>
#endif

namespace kernel_cases {

using namespace baywork::detail;
using Size = std::size_t;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using Wide = long double;
using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, 1, 1>>;

inline constexpr double epsilon = std::numeric_limits<double>::epsilon();
inline constexpr Size orders[] = {6, 12, 18, 24, 30, 42, 54};  // 54: beyond what the fast ones keep on the stack

inline Eigen::Index index(Size n) { return static_cast<Eigen::Index>(n); }

inline std::mt19937& generator() {
  static std::mt19937 g(20240611);
  return g;
}
inline Matrix random(Size rows, Size columns) {
  std::uniform_real_distribution<double> u(-1.0, 1.0);
  return Matrix::NullaryExpr(index(rows), index(columns), [&] { return u(generator()); });
}
/// Q diag(1 .. 1/condition) Qᵀ with Q orthogonal.
inline Matrix positive_definite(Size n, double condition) {
  const Matrix q = Eigen::HouseholderQR<Matrix>(random(n, n)).householderQ();
  Vector values(index(n));
  for (Size i = 0; i < n; ++i)
    values(index(i)) = std::pow(condition, -static_cast<double>(i) / static_cast<double>(n - 1));
  const Matrix a = q * values.asDiagonal() * q.transpose();
  return (a + a.transpose()) / 2.0;
}

/// A matrix in the kernels' storage: `ld` apart, padding rows zero.
template <class S = double>
std::vector<S> stored(const Matrix& a, Size ld) {
  std::vector<S> v(ld * static_cast<Size>(a.cols()), S(0.0));
  for (Eigen::Index j = 0; j < a.cols(); ++j)
    for (Eigen::Index i = 0; i < a.rows(); ++i) v[static_cast<Size>(i) + static_cast<Size>(j) * ld] = S(a(i, j));
  return v;
}
template <class S>
Matrix read(const std::vector<S>& v, Size rows, Size columns, Size ld) {
  return Matrix::NullaryExpr(index(rows), index(columns), [&](Eigen::Index i, Eigen::Index j) {
    return baywork::value_of(v[static_cast<Size>(i) + static_cast<Size>(j) * ld]);
  });
}
/// The strict upper triangle filled with NaN: what a kernel must not read.
inline void poison_upper(std::vector<double>& v, Size n, Size ld) {
  for (Size j = 0; j < n; ++j)
    for (Size i = 0; i < j; ++i) v[i + j * ld] = std::numeric_limits<double>::quiet_NaN();
}
template <class S>
bool padding_is_zero(const std::vector<S>& v, Size rows, Size ld) {
  for (Size k = 0; k < v.size(); ++k)
    if (k % ld >= rows && baywork::value_of(v[k]) != 0.0) return false;
  return true;
}

struct Coupling {
  std::vector<Block6> blocks;
  Matrix dense;
};
/// Blocks on the two diagonals of an n1 x n2 matrix, the first one twice (blocks at one place add up).
inline Coupling coupling(Size n1, Size n2) {
  Coupling c{{}, Matrix::Zero(index(n1), index(n2))};
  const auto add = [&](Size row, Size column) {
    Block6 b(static_cast<int>(row), static_cast<int>(column));
    for (Size j = 0; j < 6; ++j)
      for (Size i = 0; i < 6; ++i) {
        b(i, j) = random(1, 1)(0, 0);
        c.dense(index(6 * row + i), index(6 * column + j)) += b(i, j);
      }
    c.blocks.push_back(b);
  };
  for (Size r = n1 / 6; r-- > 0;) {
    if (r < n2 / 6) add(r, r);
    if (r + 1 < n2 / 6) add(r, r + 1);
  }
  add(0, 0);
  return c;
}
template <class S>
std::vector<BasicBlock6<S>> blocks_of(const Coupling& c) {
  std::vector<BasicBlock6<S>> all;
  for (const Block6& b : c.blocks) {
    all.emplace_back(b.row, b.column);
    for (Size k = 0; k < 48; ++k) all.back().value[k] = S(b.value[k]);
  }
  return all;
}

template <class Use>
void for_each_set(const Use& use) {
  const auto with = [&](const std::string& name, const Kernels* set) {
    CAPTURE(name);
    if (set) use(*set);
  };
  REQUIRE(kernels(InstructionSet::plain) != nullptr);
  with("plain", kernels(InstructionSet::plain));
  with("avx2", kernels(InstructionSet::avx2));
  with("avx512", kernels(InstructionSet::avx512));
#if defined(__x86_64__)
  if (kernels(InstructionSet::avx2)) with("eight lanes", &eight_lanes_set::all);
#endif
  // The form for any scalar, with double.
  using P = PlainKernels<double>;
  const Kernels any{&P::invert,
                    &P::eliminate,
                    &P::add_blocks,
                    &P::times_blocks,
                    &P::minus_blocks_transposed,
                    &P::packed_size,
                    &P::pack,
                    &P::apply,
                    &P::apply_in_place,
                    &P::apply_many,
                    &P::minus_blocks_times,
                    &P::minus_transposed_times,
                    &P::forward,
                    &P::backward,
                    &P::minus_times,
                    &P::minus_block_rows,
                    &P::join,
                    &P::through_joint,
                    &P::back_through_joint,
                    &P::to_halves,
                    &P::from_halves,
                    &P::to_halves_group,
                    &P::from_halves_group,
                    &P::apply_groups,
                    &P::times_groups,
                    &P::rows_groups,
                    &P::to_group,
                    &P::from_group};
  with("any scalar", &any);
}

inline double largest(const Matrix& m) { return m.cwiseAbs().maxCoeff(); }
inline Matrix lower(const Matrix& m) { return m.triangularView<Eigen::Lower>(); }

}  // namespace kernel_cases
