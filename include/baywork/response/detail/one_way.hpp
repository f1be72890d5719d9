// SPDX-License-Identifier: MIT
// Supports that only pull: which of them are slack, and by how much their joints then stand above them.
#pragma once

#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/core/scalar.hpp>

namespace baywork::detail {

/// Reactions R = q + C x of lines that pull or are slack: R >= 0, x >= 0, R x = 0, where x is how much the end of a
/// line would have to rise to follow its joint, and C the reactions' change per unit rise (symmetric, not negative
/// definite). Lines that are `gone` have R = 0 whatever x is.
///
/// The lines that are gone are eliminated first; the rest is a linear complementarity problem, which Lemke's method
/// solves for such C, or else shows that there is no solution: then nothing would hold the girder. Source: R. W.
/// Cottle, J.-S. Pang, R. E. Stone, The Linear Complementarity Problem, chapter 4 (value from memory); the answer is
/// checked by the caller, not the way to it. Pivots below 1e-8 of the scaled C count as none.
class OneWay {
 public:
  using Matrix = std::vector<std::vector<double>>;

  /// `least`: a C this small [N/m] is no stiffness at all.
  OneWay(Matrix C, std::vector<double> q, const std::vector<bool>& gone, double least)
      : C_(std::move(C)), q_(std::move(q)), scale_(q_.size(), 1.0), x_(q_.size(), 0.0) {
    for (std::size_t i = 0; i < q_.size(); ++i) (gone[i] ? gone_ : one_way_).push_back(i);
    for (const double v : q_) most_ = larger(most_, magnitude(v));
    for (std::size_t i = 0; i < q_.size(); ++i) scale_[i] = C_[i][i] > least ? 1.0 / std::sqrt(C_[i][i]) : 0.0;
    for (std::size_t i = 0; i < q_.size(); ++i)
      for (std::size_t j = 0; j < q_.size(); ++j) C_[i][j] *= scale_[i] * scale_[j];
    for (std::size_t i = 0; i < q_.size(); ++i)
      if (scale_[i] > 0.0) q_[i] *= scale_[i];
    solved_ = eliminate();
    if (!solved_) return;
    for (std::size_t i = 0; i < q_.size(); ++i)
      if (is_rounding(i, q_[i])) q_[i] = 0.0;
    solved_ = pivot();
    for (std::size_t i = 0; i < q_.size(); ++i) x_[i] *= scale_[i];
  }

  /// False where no state is in balance, or none was found.
  bool solved() const noexcept { return solved_; }
  bool gave_up() const noexcept { return gave_up_; }
  const std::vector<double>& x() const noexcept { return x_; }

 private:
  static constexpr double no_pivot = 1e-8;
  /// Of the greatest reaction given: a line that pushes by no more is just unloaded, and holds the girder as it is.
  static constexpr double known_to = 1e-9;
  bool is_rounding(std::size_t i, double scaled) const {
    return magnitude(scaled) <= known_to * most_ * (scale_[i] > 0.0 ? scale_[i] : 1.0);
  }

  /// x_G = -C_GG^-1 (q_G + C_GN x_N), into q and C of the others.
  bool eliminate() {
    double most = 0;
    for (const double v : q_) most = larger(most, magnitude(v));
    for (const std::size_t g : gone_) {
      const double pivot = C_[g][g];
      if (!(pivot > no_pivot)) {
        if (std::abs(q_[g]) > 1e-9 * most) return false;
        continue;
      }
      for (std::size_t i = 0; i < q_.size(); ++i) {
        if (i == g) continue;
        const double f = C_[i][g] / pivot;
        if (f == 0.0) continue;
        for (std::size_t j = 0; j < q_.size(); ++j)
          if (j != g) C_[i][j] -= f * C_[g][j];
        q_[i] -= f * q_[g];
        C_[i][g] = 0.0;
      }
    }
    return true;
  }
  void substitute() {
    for (const std::size_t g : gone_) {
      double sum = q_[g];
      for (const std::size_t i : one_way_) sum += C_[g][i] * x_[i];
      x_[g] = C_[g][g] > no_pivot ? -sum / C_[g][g] : 0.0;
    }
  }

  /// Lemke's tableau: columns w (reactions), z (the x), z0, right side. Row i begins as w_i - C z - z0 = q_i.
  bool pivot() {
    const std::size_t n = one_way_.size(), z0 = 2 * n, right = 2 * n + 1;
    std::vector<std::size_t> basis(n);
    Matrix t(n, std::vector<double>(2 * n + 2, 0.0));
    std::size_t row = n;
    double least = 0;
    for (std::size_t i = 0; i < n; ++i) {
      basis[i] = i;
      t[i][i] = 1.0;
      for (std::size_t j = 0; j < n; ++j) t[i][n + j] = -C_[one_way_[i]][one_way_[j]];
      t[i][z0] = -1.0;
      t[i][right] = q_[one_way_[i]];
      if (t[i][right] < least) {
        least = t[i][right];
        row = i;
      }
    }
    std::size_t entering = z0;
    for (std::size_t step = 0; row < n; ++step) {
      if (step == 50 * (n + 1)) {
        gave_up_ = true;
        return false;
      }
      exchange(t, row, entering);
      const std::size_t left = basis[row];
      basis[row] = entering;
      if (left == z0) break;
      entering = left < n ? left + n : left - n;
      row = n;
      double best = 0;
      for (std::size_t i = 0; i < n; ++i) {
        if (!(t[i][entering] > no_pivot)) continue;
        const double ratio = t[i][right] / t[i][entering];
        if (row < n && (ratio > best || (ratio == best && basis[i] != z0))) continue;
        best = ratio;
        row = i;
      }
      if (row == n) break;  // nothing stops the motion
    }
    for (std::size_t i = 0; i < n; ++i) {
      if (basis[i] == z0) {  // by which all lines together push
        for (const std::size_t line : one_way_)
          if (!is_rounding(line, t[i][right])) return false;
      } else if (basis[i] >= n) {
        x_[one_way_[basis[i] - n]] = larger(t[i][right], 0.0);  // below only by rounding
      }
    }
    substitute();
    return true;
  }
  static void exchange(Matrix& t, std::size_t row, std::size_t column) {
    const double p = t[row][column];
    for (double& v : t[row]) v /= p;
    for (std::size_t i = 0; i < t.size(); ++i) {
      const double f = t[i][column];
      if (i == row || f == 0.0) continue;
      for (std::size_t j = 0; j < t[i].size(); ++j) t[i][j] -= f * t[row][j];
    }
  }

  Matrix C_;
  std::vector<double> q_, scale_, x_;
  double most_ = 0;  ///< of the reactions given [N]
  std::vector<std::size_t> gone_, one_way_;
  bool solved_ = false, gave_up_ = false;
};

}  // namespace baywork::detail
