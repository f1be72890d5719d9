// SPDX-License-Identifier: MIT
// Eigen's simplicial Cholesky factorisations, in Eigen's own order (AMD) and in the girder's.
#pragma once

#include <cstddef>
#include <vector>

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "assembly.hpp"

namespace bench {

template <class Solver>
class EigenMethod {
 public:
  explicit EigenMethod(const Job& job) : job_(job) {
    const auto n = static_cast<Eigen::Index>(job.unknowns());
    matrix_.resize(n, n);
    build();
    places_ = Places(job, columns(), Triangle::lower);
    solver_.analyzePattern(matrix_);
    factor();
  }
  void full(const double* b, double* x) {
    build();
    solver_.compute(matrix_);
    solve(b, x, 1);
  }
  void refactor() {
    places_.fill(job_, matrix_.valuePtr(), static_cast<std::size_t>(matrix_.nonZeros()));
    factor();
  }
  void factor() { solver_.factorize(matrix_); }
  void solve(const double* b, double* x, std::size_t count) {
    const Eigen::Index n = matrix_.rows(), k = static_cast<Eigen::Index>(count);
    if (!good()) return;
    if (k == 1)
      Eigen::VectorXd::Map(x, n) = solver_.solve(Eigen::VectorXd::Map(b, n));
    else
      Eigen::MatrixXd::Map(x, n, k) = solver_.solve(Eigen::MatrixXd::Map(b, n, k));
  }
  bool good() const { return solver_.info() == Eigen::Success; }
  const std::vector<int>& number() const { return job_.numbering.number; }

  double factor_bytes() const {
    const auto nonzeros = static_cast<double>(factor_matrix().nonZeros()), n = static_cast<double>(matrix_.rows());
    return nonzeros * (sizeof(double) + sizeof(int)) + n * (sizeof(int) + (keeps_diagonal ? sizeof(double) : 0));
  }
  double factor_flops() const {
    double sum = 0;
    for (Eigen::Index c = 0; c < matrix_.rows(); ++c) {
      const double below = column_length(c) + (keeps_diagonal ? 1.0 : 0.0);
      sum += below * below;
    }
    return sum;
  }
  double solve_flops() const {
    const auto n = static_cast<double>(matrix_.rows());
    return 4 * static_cast<double>(factor_matrix().nonZeros()) + (keeps_diagonal ? n : -2 * n);
  }

 private:
  static constexpr bool keeps_diagonal = requires(const Solver& s) { s.vectorD(); };

  const Eigen::SparseMatrix<double>& factor_matrix() const { return solver_.matrixL().nestedExpression(); }
  double column_length(Eigen::Index c) const {
    const int* begin = factor_matrix().outerIndexPtr();
    return static_cast<double>(begin[c + 1] - begin[c]);
  }
  Columns columns() { return {matrix_.outerIndexPtr(), matrix_.innerIndexPtr(), matrix_.valuePtr()}; }
  void build() {
    band_.assemble(job_, Triangle::lower);
    matrix_.resizeNonZeros(static_cast<Eigen::Index>(band_.size() * band_.width()));
    matrix_.resizeNonZeros(static_cast<Eigen::Index>(columns().take(band_, Triangle::lower)));
  }

  const Job& job_;
  Band band_;
  Eigen::SparseMatrix<double> matrix_;
  Places places_;
  Solver solver_;
};

using EigenMatrix = Eigen::SparseMatrix<double>;

struct EigenLlt : EigenMethod<Eigen::SimplicialLLT<EigenMatrix, Eigen::Lower, Eigen::AMDOrdering<int>>> {
  using EigenMethod::EigenMethod;
  static constexpr const char* name = "eigen_llt";
};
struct EigenLdlt : EigenMethod<Eigen::SimplicialLDLT<EigenMatrix, Eigen::Lower, Eigen::AMDOrdering<int>>> {
  using EigenMethod::EigenMethod;
  static constexpr const char* name = "eigen_ldlt";
};
struct EigenLltNatural : EigenMethod<Eigen::SimplicialLLT<EigenMatrix, Eigen::Lower, Eigen::NaturalOrdering<int>>> {
  using EigenMethod::EigenMethod;
  static constexpr const char* name = "eigen_llt_natural";
};

}  // namespace bench
