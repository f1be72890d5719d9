// SPDX-License-Identifier: MIT
// LAPACK's Cholesky factorisation of a band, the band filled member by member where the factor then stands.
#pragma once

#include <cstddef>
#include <cstring>
#include <vector>

#include "assembly.hpp"

extern "C" {
// Fortran passes the length of a text behind all other arguments.
void dpbtrf_(const char* triangle, const int* n, const int* width, double* band, const int* leading, int* info,
             std::size_t);
void dpbtrs_(const char* triangle, const int* n, const int* width, const int* count, const double* band,
             const int* leading, double* b, const int* rows, int* info, std::size_t);
}

namespace bench {

class LapackBand {
 public:
  static constexpr const char* name = "lapack_band";

  explicit LapackBand(const Job& job)
      : job_(job), n_(job.numbering.count), width_(job.numbering.half_band), leading_(width_ + 1) {
    matrix_.assemble(job, Triangle::lower);
    refactor();
  }
  void full(const double* b, double* x) {
    refactor();
    solve(b, x, 1);
  }
  void refactor() {
    band_.assemble(job_, Triangle::lower);
    dpbtrf_("L", &n_, &width_, band_.values(), &leading_, &info_, 1);
  }
  /// With the copy of the matrix that a factorisation in place needs.
  void factor() {
    std::memcpy(band_.values(), matrix_.values(), band_.size() * band_.width() * sizeof(double));
    dpbtrf_("L", &n_, &width_, band_.values(), &leading_, &info_, 1);
  }
  void solve(const double* b, double* x, std::size_t count) {
    if (!good()) return;
    std::memcpy(x, b, band_.size() * count * sizeof(double));
    const int columns = static_cast<int>(count);
    int info = 0;
    dpbtrs_("L", &n_, &width_, &columns, band_.values(), &leading_, x, &n_, &info, 1);
  }
  bool good() const { return info_ == 0; }
  const std::vector<int>& number() const { return job_.numbering.number; }

  double factor_bytes() const { return static_cast<double>(band_.size() * band_.width() * sizeof(double)); }
  double factor_flops() const {
    double sum = 0;
    for (std::size_t c = 0; c < band_.size(); ++c) sum += column_length(c) * column_length(c);
    return sum;
  }
  double solve_flops() const {
    double sum = 0;
    for (std::size_t c = 0; c < band_.size(); ++c) sum += 4 * column_length(c) - 2;
    return sum;
  }

 private:
  double column_length(std::size_t c) const { return static_cast<double>((std::min)(band_.width(), band_.size() - c)); }

  const Job& job_;
  int n_, width_, leading_, info_ = 0;
  Band matrix_, band_;
};

}  // namespace bench
