// SPDX-License-Identifier: MIT
// Elimination for the few equations of a beam on supports; the closed forms borrow nothing from the frame's solver.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>

namespace baywork::closed_form::detail {

/// Solves A x = b by Gauss with row exchange; A is given row by row. Throws UnstableFrame if A is singular.
template <Scalar S>
std::vector<S> solve_small(std::vector<std::vector<S>> A, std::vector<S> b) {
  const std::size_t n = b.size();
  for (std::size_t k = 0; k < n; ++k) {
    std::size_t best = k;
    for (std::size_t i = k + 1; i < n; ++i)
      if (value_of(magnitude(A[i][k])) > value_of(magnitude(A[best][k]))) best = i;
    if (!(value_of(magnitude(A[best][k])) > 0.0))
      fail<UnstableFrame>("beam", "its equations have no single answer", "supports that hold the beam are accepted");
    std::swap(A[k], A[best]);
    std::swap(b[k], b[best]);
    for (std::size_t i = k + 1; i < n; ++i) {
      const S f = S(A[i][k] / A[k][k]);
      for (std::size_t j = k + 1; j < n; ++j) A[i][j] = S(A[i][j] - f * A[k][j]);
      b[i] = S(b[i] - f * b[k]);
    }
  }
  for (std::size_t k = n; k-- > 0;) {
    for (std::size_t j = k + 1; j < n; ++j) b[k] = S(b[k] - A[k][j] * b[j]);
    b[k] = S(b[k] / A[k][k]);
  }
  return b;
}

}  // namespace baywork::closed_form::detail
