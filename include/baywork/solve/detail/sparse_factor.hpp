// SPDX-License-Identifier: MIT
// L D Lᵀ of a sparse stiffness matrix by Eigen, kept as plain arrays that own no aligned storage.
#pragma once

#include <cstddef>
#include <vector>

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include <baywork/core/scalar.hpp>

namespace baywork::detail {

/// One entry of the lower triangle, row >= column.
template <class S>
struct Entry {
  int row = 0, column = 0;
  S value = S(0);
};

/// The kept factorisation. Eigen's own objects live only inside compute(): their alignment depends on the compiler's
/// flags, these arrays do not. Solving allocates nothing.
template <class S>
class SparseFactor {
 public:
  /// Factors the symmetric matrix given by the sum of its entries. `reorder`: find an order of little fill first.
  /// False where a pivot is zero, negative or not finite; `smallest_pivot_ratio()` tells how near others came.
  bool compute(std::size_t n, const std::vector<Entry<S>>& entries, bool reorder) {
    n_ = n;
    using Matrix = Eigen::SparseMatrix<S, Eigen::ColMajor, int>;
    const int size = static_cast<int>(n);
    place_.resize(n);
    for (std::size_t i = 0; i < n; ++i) place_[i] = static_cast<int>(i);
    if (reorder) find_order(size, entries);

    std::vector<Eigen::Triplet<S, int>> triplets;
    triplets.reserve(entries.size());
    for (const Entry<S>& e : entries) {
      const int r = place_[static_cast<std::size_t>(e.row)], c = place_[static_cast<std::size_t>(e.column)];
      triplets.emplace_back(r > c ? r : c, r > c ? c : r, e.value);
    }
    Matrix k(size, size);
    k.setFromTriplets(triplets.begin(), triplets.end());
    std::vector<double> diagonal(n, 0.0);
    for (std::size_t i = 0; i < n; ++i) diagonal[i] = value_of(k.coeff(static_cast<int>(i), static_cast<int>(i)));

    Eigen::SimplicialLDLT<Matrix, Eigen::Lower, Eigen::NaturalOrdering<int>> ldlt;
    ldlt.analyzePattern(k);
    ldlt.factorize(k);
    if (ldlt.info() != Eigen::Success) {
      ratio_ = 0.0;
      return false;
    }
    const Matrix& l = ldlt.matrixL().nestedExpression();
    column_.assign(l.outerIndexPtr(), l.outerIndexPtr() + n + 1);
    row_.assign(l.innerIndexPtr(), l.innerIndexPtr() + l.nonZeros());
    value_.assign(l.valuePtr(), l.valuePtr() + l.nonZeros());
    pivot_inverse_.resize(n);
    const auto d = ldlt.vectorD();
    bool good = true;
    ratio_ = 1.0;
    for (std::size_t i = 0; i < n; ++i) {
      const S pivot = d.coeff(static_cast<Eigen::Index>(i));
      const double p = value_of(pivot);
      if (!is_finite(p) || !(p > 0.0)) good = false;
      const double relative = diagonal[i] > 0.0 ? p / diagonal[i] : 0.0;
      if (relative < ratio_) ratio_ = relative;
      pivot_inverse_[i] = S(S(1) / pivot);
    }
    return good;
  }

  /// Smallest pivot against the diagonal it started from: near the unit roundoff the matrix is singular in all but name.
  double smallest_pivot_ratio() const noexcept { return ratio_; }

  std::size_t bytes() const noexcept {
    return value_.size() * (sizeof(S) + sizeof(int)) + n_ * (sizeof(S) + 2 * sizeof(int));
  }

  /// Additions and multiplications of factoring: a column of m numbers takes m + m (m + 1).
  double flops() const {
    double sum = 0.0;
    for (std::size_t j = 0; j < n_; ++j) {
      const double m = static_cast<double>(column_[j + 1] - column_[j]);
      sum += m * (m + 2.0);
    }
    return sum;
  }
  /// Of one solution: two for each number of L, on the way in and on the way back, and one for each pivot.
  double solve_flops() const { return 4.0 * static_cast<double>(value_.size()) + static_cast<double>(n_); }

  /// x := K⁻¹ x, with `work` of the same length.
  void solve(S* x, S* work) const {
    for (std::size_t i = 0; i < n_; ++i) work[place_[i]] = x[i];
    for (std::size_t j = 0; j < n_; ++j) {
      const S xj = work[j];
      for (int k = column_[j]; k < column_[j + 1]; ++k)
        work[static_cast<std::size_t>(row_[static_cast<std::size_t>(k)])] -= S(value_[static_cast<std::size_t>(k)] * xj);
    }
    for (std::size_t j = n_; j-- > 0;) {
      S sum = S(work[j] * pivot_inverse_[j]);
      for (int k = column_[j]; k < column_[j + 1]; ++k)
        sum -= S(value_[static_cast<std::size_t>(k)] * work[static_cast<std::size_t>(row_[static_cast<std::size_t>(k)])]);
      work[j] = sum;
    }
    for (std::size_t i = 0; i < n_; ++i) x[i] = work[static_cast<std::size_t>(place_[i])];
  }

 private:
  void find_order(int size, const std::vector<Entry<S>>& entries) {
    std::vector<Eigen::Triplet<double, int>> pattern;
    pattern.reserve(2 * entries.size());
    for (const Entry<S>& e : entries) {
      pattern.emplace_back(e.row, e.column, 1.0);
      pattern.emplace_back(e.column, e.row, 1.0);
    }
    Eigen::SparseMatrix<double, Eigen::ColMajor, int> k(size, size);
    k.setFromTriplets(pattern.begin(), pattern.end());
    Eigen::AMDOrdering<int>::PermutationType p;
    Eigen::AMDOrdering<int> order;
    order(k, p);  // p.indices()[new] = old
    for (int i = 0; i < size; ++i) place_[static_cast<std::size_t>(p.indices()[i])] = i;
  }

  std::size_t n_ = 0;
  std::vector<int> place_;  ///< where unknown i stands in the factored matrix
  std::vector<int> column_, row_;
  std::vector<S> value_, pivot_inverse_;
  double ratio_ = 1.0;
};

}  // namespace baywork::detail
