// SPDX-License-Identifier: MIT
// Is a motion that of the whole frame as one rigid body, and which one?
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/solve/detail/freedoms.hpp>

namespace baywork::detail {

/// Solves the 6 × 6 system a x = b by Gauss with complete row pivoting; tiny pivots (a rotation about the only line the
/// nodes lie on) give zero.
inline std::array<double, 6> solve_small(std::array<std::array<double, 7>, 6> a) {
  double largest = 0;
  for (std::size_t i = 0; i < 6; ++i) largest = (std::max)(largest, std::abs(a[i][i]));
  for (std::size_t c = 0; c < 6; ++c) {
    std::size_t best = c;
    for (std::size_t r = c + 1; r < 6; ++r)
      if (std::abs(a[r][c]) > std::abs(a[best][c])) best = r;
    std::swap(a[c], a[best]);
    if (std::abs(a[c][c]) < 1e-12 * largest) {
      a[c].fill(0.0);
      a[c][c] = 1.0;
      continue;
    }
    for (std::size_t r = 0; r < 6; ++r) {
      if (r == c) continue;
      const double f = a[r][c] / a[c][c];
      for (std::size_t k = c; k < 7; ++k) a[r][k] -= f * a[c][k];
    }
  }
  std::array<double, 6> x{};
  for (std::size_t i = 0; i < 6; ++i) x[i] = a[i][6] / a[i][i];
  return x;
}

/// Least-squares rigid motion (t, ω) about the centroid of the nodes; "" unless all nodes follow it, also in turning
/// where anything there resists that (a straight bar that spins moves none of its nodes).
template <class S>
std::string words_of_rigid_motion(const BasicFrame<S>& frame, const std::vector<double>& u) {
  const std::size_t n = frame.nodes.size();
  std::array<double, 3> c{};
  for (const BasicNode<S>& node : frame.nodes)
    for (std::size_t k = 0; k < 3; ++k) c[k] += value_of(node.at[k]) / static_cast<double>(n);
  double reach = 0;
  for (const BasicNode<S>& node : frame.nodes)
    for (std::size_t k = 0; k < 3; ++k) reach = (std::max)(reach, std::abs(value_of(node.at[k]) - c[k]));
  if (!(reach > 0)) return "";
  const auto rows = [&](std::size_t i, std::size_t k) {  // u_k of node i in terms of (t, ω reach)
    std::array<double, 6> r{};
    std::array<double, 3> d{};
    for (std::size_t j = 0; j < 3; ++j) d[j] = (value_of(frame.nodes[i].at[j]) - c[j]) / reach;
    r[k] = 1;
    const std::size_t j = (k + 1) % 3, l = (k + 2) % 3;  // (ω × d)_k = ω_j d_l - ω_l d_j
    r[3 + j] = d[l];
    r[3 + l] = -d[j];
    return r;
  };
  const std::vector<char> resists = nodes_that_resist_turning(frame);
  std::array<std::array<double, 7>, 6> a{};
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = 0; k < 3; ++k) {
      const std::array<double, 6> r = rows(i, k);
      if (resists[i] != 0) {
        a[3 + k][3 + k] += 1;
        a[3 + k][6] += u[6 * i + 3 + k] * reach;
      }
      for (std::size_t p = 0; p < 6; ++p) {
        for (std::size_t q = 0; q < 6; ++q) a[p][q] += r[p] * r[q];
        a[p][6] += r[p] * u[6 * i + k];
      }
    }
  const std::array<double, 6> x = solve_small(a);
  double most = 0;
  for (const double v : x) most = (std::max)(most, std::abs(v));
  if (!(most > 0)) return "";
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = 0; k < 3; ++k) {
      const std::array<double, 6> r = rows(i, k);
      double fit = 0;
      for (std::size_t p = 0; p < 6; ++p) fit += r[p] * x[p];
      if (std::abs(fit - u[6 * i + k]) > 1e-5 * most) return "";
      if (resists[i] != 0 && std::abs(x[3 + k] / reach - u[6 * i + 3 + k]) * reach > 1e-5 * most) return "";
    }
  std::string out;
  for (std::size_t k = 0; k < 6; ++k) {
    if (std::abs(x[k]) < 0.3 * most) continue;
    out += out.empty() ? "" : " and ";
    out += k < 3 ? std::string("moves along ") + motion_names[k] : std::string("turns in a ") + motion_names[k];
  }
  return "the whole of it " + out + " as one piece: the supports do not hold it";
}

}  // namespace baywork::detail
