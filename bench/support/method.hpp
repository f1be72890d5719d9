// SPDX-License-Identifier: MIT
// What a method of solving a girder must offer to be measured.
#pragma once

#include <concepts>
#include <cstddef>
#include <vector>

#include "job.hpp"

namespace bench {

/// M(job) makes all ready: the methods below can be called at once and in any order. A right-hand side is in the order
/// of number(), columns one after the other.
///   full         from the job's members to displacements, nothing kept but memory
///   refactor     values of the stiffness and its factor anew, pattern and analysis kept
///   factor       the factor alone
///   solve        `count` right-hand sides with the kept factor
///   good         the last factorisation went through
///   factor_bytes, factor_flops, solve_flops   what the factor holds; additions and multiplications of factor() and of
///                one solution, counted from the structure
template <class M>
concept Method = std::constructible_from<M, const Job&> &&
    requires(M m, const M c, const double* b, double* x, std::size_t count) {
  { M::name } -> std::convertible_to<const char*>;
  m.full(b, x);
  m.refactor();
  m.factor();
  m.solve(b, x, count);
  { c.good() } -> std::convertible_to<bool>;
  { c.number() } -> std::convertible_to<const std::vector<int>&>;
  { c.factor_bytes() } -> std::convertible_to<double>;
  { c.factor_flops() } -> std::convertible_to<double>;
  { c.solve_flops() } -> std::convertible_to<double>;
};

/// Numbers of a right-hand side in a method's own order, which may leave some out.
template <class M>
std::size_t length_of(const M& method) {
  int last = -1;
  for (const int at : method.number()) last = at > last ? at : last;
  return static_cast<std::size_t>(last + 1);
}

}  // namespace bench
