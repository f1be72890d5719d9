// SPDX-License-Identifier: MIT
// CHOLMOD: row by row (L D Lᵀ, its default for sparse factors) in AMD's order and in the girder's, and by dense blocks.
#pragma once

#include <cstddef>
#include <vector>

#include <cholmod.h>

#include "assembly.hpp"

namespace bench {

/// `triangle`: the one that the factorisation reads without turning the matrix over first.
template <int ordering, int blocks, Triangle triangle>
class CholmodMethod {
 public:
  explicit CholmodMethod(const Job& job) : job_(job) {
    cholmod_start(&common_);
    common_.nmethods = 1;
    common_.method[0].ordering = ordering;
    common_.postorder = ordering == CHOLMOD_NATURAL ? 0 : 1;
    common_.supernodal = blocks;
    common_.print = 0;
    common_.try_catch = 1;
    common_.quick_return_if_not_posdef = 1;
    begin_.resize(job.unknowns() + 1);
    build();
    places_ = Places(job, columns(), triangle);
    factor_ = cholmod_analyze(&matrix_, &common_);
    factor();
  }
  CholmodMethod(const CholmodMethod&) = delete;
  CholmodMethod& operator=(const CholmodMethod&) = delete;
  ~CholmodMethod() {
    cholmod_free_factor(&factor_, &common_);
    cholmod_free_dense(&solution_, &common_);
    cholmod_free_dense(&y_, &common_);
    cholmod_free_dense(&e_, &common_);
    cholmod_finish(&common_);
  }
  void full(const double* b, double* x) {
    cholmod_free_factor(&factor_, &common_);
    build();
    factor_ = cholmod_analyze(&matrix_, &common_);
    factor();
    solve(b, x, 1);
  }
  void refactor() {
    places_.fill(job_, value_.data(), matrix_.nzmax);
    factor();
  }
  void factor() { cholmod_factorize(&matrix_, factor_, &common_); }
  void solve(const double* b, double* x, std::size_t count) {
    if (!good()) return;
    cholmod_dense rhs{};
    rhs.nrow = rhs.d = job_.unknowns();
    rhs.ncol = count;
    rhs.nzmax = rhs.nrow * count;
    rhs.x = const_cast<double*>(b);  // read alone
    rhs.xtype = CHOLMOD_REAL;
    rhs.dtype = CHOLMOD_DOUBLE;
    cholmod_solve2(CHOLMOD_A, factor_, &rhs, nullptr, &solution_, nullptr, &y_, &e_, &common_);
    const auto* found = static_cast<const double*>(solution_->x);
    if (x != nullptr) std::copy(found, found + rhs.nzmax, x);
  }
  bool good() const { return common_.status == CHOLMOD_OK && factor_ != nullptr && factor_->minor == factor_->n; }
  const std::vector<int>& number() const { return job_.numbering.number; }

  double factor_bytes() const {
    const auto n = static_cast<double>(factor_->n);
    if (factor_->is_super != 0)
      return static_cast<double>(factor_->xsize) * sizeof(double) +
             (static_cast<double>(factor_->ssize) + 3 * static_cast<double>(factor_->nsuper) + 2 * n) * sizeof(int);
    return static_cast<double>(factor_->nzmax) * (sizeof(double) + sizeof(int)) + 6 * n * sizeof(int);
  }
  double factor_flops() const { return common_.fl; }
  double solve_flops() const { return 4 * common_.lnz - static_cast<double>(factor_->n); }

 private:
  Columns columns() { return {begin_.data(), row_.data(), value_.data()}; }
  void build() {
    band_.assemble(job_, triangle);
    row_.resize(band_.size() * band_.width());
    value_.resize(row_.size());
    matrix_ = {};
    matrix_.nrow = matrix_.ncol = band_.size();
    matrix_.nzmax = columns().take(band_, triangle);
    matrix_.p = begin_.data();
    matrix_.i = row_.data();
    matrix_.x = value_.data();
    matrix_.stype = triangle == Triangle::lower ? -1 : 1;
    matrix_.itype = CHOLMOD_INT;
    matrix_.xtype = CHOLMOD_REAL;
    matrix_.dtype = CHOLMOD_DOUBLE;
    matrix_.sorted = 1;
    matrix_.packed = 1;
  }

  const Job& job_;
  Band band_;
  std::vector<int> begin_, row_;
  std::vector<double> value_;
  Places places_;
  cholmod_common common_{};
  cholmod_sparse matrix_{};
  cholmod_factor* factor_ = nullptr;
  cholmod_dense *solution_ = nullptr, *y_ = nullptr, *e_ = nullptr;
};

struct CholmodSimplicial : CholmodMethod<CHOLMOD_AMD, CHOLMOD_SIMPLICIAL, Triangle::lower> {
  using CholmodMethod::CholmodMethod;
  static constexpr const char* name = "cholmod_simplicial";
};
struct CholmodSimplicialNatural : CholmodMethod<CHOLMOD_NATURAL, CHOLMOD_SIMPLICIAL, Triangle::upper> {
  using CholmodMethod::CholmodMethod;
  static constexpr const char* name = "cholmod_simplicial_natural";
};
struct CholmodSuper : CholmodMethod<CHOLMOD_NATURAL, CHOLMOD_SUPERNODAL, Triangle::lower> {
  using CholmodMethod::CholmodMethod;
  static constexpr const char* name = "cholmod_super";
};

}  // namespace bench
