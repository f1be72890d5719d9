// SPDX-License-Identifier: MIT
// A motion that nothing resists, found by inverse iteration and told in the frame's own words.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/detail/rigid_fit.hpp>

namespace baywork {

/// A free motion: six values per node, largest displacement or rotation times member length about 1.
struct Mechanism {
  bool found = false;
  std::vector<double> motions;
  std::string words;  ///< "stations 2 to 9 move along y, ..."
};

namespace detail {

/// Strain energy of u, summed from deformations in twofold precision, against the energy of the same motions taken one
/// by one: below 1e-20 no member resists; a slender but sound girder stays far above (about 1/n⁴ for n bays).
template <class S>
double stiffness_quotient(const PreparedFrame<S>& p, const std::vector<S>& u, const std::vector<double>& diagonal) {
  using A = accurate_t<S>;
  std::vector<A> wide(u.size(), A(0)), force(u.size(), A(0));
  for (std::size_t i = 0; i < u.size(); ++i) wide[i] = A(u[i]);
  const std::vector<A> ground(6 * p.frame.supports.size(), A(0));
  p.add_internal_forces(wide, ground, force);
  double energy = 0, scale = 0;
  for (std::size_t i = 0; i < u.size(); ++i) {
    energy += value_of(A(force[i] * wide[i]));
    scale += diagonal[i] * value_of(u[i]) * value_of(u[i]);
  }
  return scale > 0 ? std::abs(energy) / scale : 1.0;
}

/// Words for the free motion of part of a frame.
template <class S>
std::string words_of_motion(const PreparedFrame<S>& p, const std::vector<double>& u) {
  const BasicFrame<S>& frame = p.frame;
  const double arm = p.longest;
  double most = 0;
  for (std::size_t i = 0; i < u.size(); ++i) most = (std::max)(most, std::abs(u[i]) * (i % 6 < 3 ? 1.0 : arm));
  std::array<double, 6> share{};
  for (std::size_t i = 0; i < u.size(); ++i) share[i % 6] += std::abs(u[i]) * (i % 6 < 3 ? 1.0 : arm);
  std::size_t kind = 0;
  const double translations = share[0] + share[1] + share[2];
  if (translations > 1e-6 * (share[3] + share[4] + share[5])) {
    for (std::size_t k = 1; k < 3; ++k)
      if (share[k] > share[kind]) kind = k;
  } else {
    kind = 3;
    for (std::size_t k = 4; k < 6; ++k)
      if (share[k] > share[kind]) kind = k;
  }
  int first = -1, last = -1;
  std::string some;
  std::size_t moving = 0;
  for (std::size_t n = 0; n < frame.nodes.size(); ++n) {
    if (std::abs(u[6 * n + kind]) * (kind < 3 ? 1.0 : arm) < 0.3 * most) continue;
    const int station = frame.nodes[n].address.station;
    if (station >= 0) {
      first = first < 0 ? station : (std::min)(first, station);
      last = (std::max)(last, station);
    }
    if (moving < 4) some += (some.empty() ? "" : "; ") + frame.name_of_node(n);
    ++moving;
  }
  if (moving > 4) some += "; and " + std::to_string(moving - 4) + " more";
  std::string out;
  if (first >= 0)
    out = (first == last ? "station " + std::to_string(first + 1)
                         : "stations " + std::to_string(first + 1) + " to " + std::to_string(last + 1)) + ": ";
  out += kind < 3 ? std::string("joints move along ") + motion_names[kind]
                  : std::string("joints turn in a ") + motion_names[kind];
  return out + " without any bar resisting (" + some + ")";
}

/// Searches the softest motion of the unknowns by inverse iteration on a slightly stiffened matrix.
template <class S>
Mechanism find_mechanism(const PreparedFrame<S>& p, const std::vector<Entry<S>>& entries) {
  Mechanism out;
  const std::size_t n = p.freedoms.count;
  std::vector<double> diagonal(n, 0.0);
  for (const Entry<S>& e : entries)
    if (e.row == e.column) diagonal[static_cast<std::size_t>(e.row)] += value_of(e.value);
  double largest = 0;
  for (const double d : diagonal) largest = (std::max)(largest, d);
  if (!(largest > 0)) largest = 1;
  for (double& d : diagonal)
    if (!(d > 1e-14 * largest)) d = 1e-14 * largest;  // a motion with no stiffness at all

  std::vector<Entry<S>> shifted = entries;
  for (std::size_t i = 0; i < n; ++i) shifted.push_back({static_cast<int>(i), static_cast<int>(i), S(1e-11 * diagonal[i])});
  SparseFactor<S> factor;
  if (!factor.compute(n, shifted, node_reach(p.frame) > 12)) return out;
  std::vector<S> x(n, S(0)), work(n, S(0)), full(6 * p.frame.nodes.size(), S(0));
  std::vector<double> full_diagonal(full.size(), 0.0);
  double seed = 0.5;
  for (S& v : x) {
    seed = std::fmod(seed * 997.0 + 0.123, 1.0);
    v = S(seed - 0.5);
  }
  for (int step = 0; step < 16; ++step) {
    for (std::size_t i = 0; i < n; ++i) x[i] = S(x[i] * diagonal[i]);
    factor.solve(x, work);
    double size = 0;
    for (std::size_t i = 0; i < n; ++i) size = (std::max)(size, std::abs(value_of(x[i])) * root(diagonal[i]));
    if (!(size > 0)) return out;
    for (S& v : x) v = S(v * (1.0 / size));
  }
  for (std::size_t i = 0; i < full.size(); ++i)
    if (const int k = p.freedoms.number[i]; k >= 0) {
      full[i] = x[static_cast<std::size_t>(k)];
      full_diagonal[i] = diagonal[static_cast<std::size_t>(k)];
    }
  if (stiffness_quotient(p, full, full_diagonal) > 1e-20) return out;
  out.found = true;
  out.motions.resize(full.size());
  double most = 0;
  for (std::size_t i = 0; i < full.size(); ++i)
    most = (std::max)(most, std::abs(value_of(full[i])) * (i % 6 < 3 ? 1.0 : p.longest));
  for (std::size_t i = 0; i < full.size(); ++i) out.motions[i] = value_of(full[i]) / most;
  out.words = words_of_rigid_motion(p.frame, out.motions);
  if (out.words.empty()) out.words = words_of_motion(p, out.motions);
  return out;
}

}  // namespace detail
}  // namespace baywork
