// SPDX-License-Identifier: MIT
// A motion that nothing resists, found from the supports, a chain's pivots or inverse iteration, and told in words.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <Eigen/Eigenvalues>

#include <baywork/core/scalar.hpp>
#include <baywork/solve/detail/chain_mechanism.hpp>
#include <baywork/solve/detail/motion_words.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/detail/rigid_fit.hpp>

namespace baywork {

/// A free motion: six values per node, the largest displacement or rotation times the longest member's length 1.
struct Mechanism {
  bool found = false;
  std::vector<double> motions;
  std::string words;  ///< "stations 2 to 9 of the top face move along y ..."
};

namespace detail {

/// Stiffness of each motion on its own, six per node; nothing where it is held or idle, and a trace of the largest one
/// where an unknown has none at all.
template <class S>
std::vector<double> own_stiffness(const PreparedFrame<S>& p) {
  std::vector<double> out(6 * p.frame.nodes.size(), 0.0);
  for (std::size_t i = 0; i < p.frame.members.size(); ++i) {
    const BasicMember<S>& m = p.frame.members[i];
    put_member_matrix(p.sort(i).plain, [&](std::size_t r, std::size_t c, const S& v) {
      if (r == c) out[r < 6 ? 6 * m.from + r : 6 * m.to + r - 6] += value_of(v);
    });
  }
  for (const BasicSupport<S>& s : p.frame.supports)
    for (std::size_t k = 0; k < 6; ++k)
      if (s.motion[k].kind == BasicRestraint<S>::Kind::spring) out[6 * s.node + k] += value_of(s.motion[k].stiffness);
  const double largest = *std::max_element(out.begin(), out.end());
  for (std::size_t i = 0; i < out.size(); ++i)
    out[i] = p.freedoms.number[i] < 0 ? 0.0 : (std::max)(out[i], largest > 0 ? 1e-14 * largest : 1.0);
  return out;
}

/// Strain energy of u, summed from deformations in twofold precision, against the energy of the same motions taken one
/// by one: near rounding squared no member resists; a slender but sound girder stays far above (about 1/n⁴ for n bays).
template <class S>
double stiffness_quotient(const PreparedFrame<S>& p, const std::vector<accurate_t<S>>& u,
                          const std::vector<double>& own) {
  using A = accurate_t<S>;
  std::vector<A> force(u.size(), A(0));
  const std::vector<A> ground(6 * p.frame.supports.size(), A(0));
  p.add_internal_forces(u, ground, force);
  double energy = 0, scale = 0;
  for (std::size_t i = 0; i < u.size(); ++i) {
    energy += value_of(A(force[i] * u[i]));
    scale += own[i] * value_of(u[i]) * value_of(u[i]);
  }
  return scale > 0 ? std::abs(energy) / scale : 1.0;
}

/// Free motions of any frame: inverse iteration with a block of motions on a slightly stiffened matrix, then the
/// softest combinations of the block by their energies (Rayleigh–Ritz; G. H. Golub, C. F. Van Loan, Matrix
/// Computations, 8.2, value from memory), of which those below 1e-20 count.
template <class S>
std::vector<std::vector<double>> sparse_free_motions(const PreparedFrame<S>& p, const std::vector<Entry<S>>& entries) {
  using A = accurate_t<S>;
  std::vector<std::vector<double>> out;
  const std::size_t n = p.freedoms.count, size = p.freedoms.number.size();
  if (n == 0) return out;
  const std::vector<double> own = own_stiffness(p);
  std::vector<double> diagonal(n, 0.0);
  for (std::size_t i = 0; i < size; ++i)
    if (const int k = p.freedoms.number[i]; k >= 0) diagonal[static_cast<std::size_t>(k)] = own[i];

  SparseFactor<double> factor;
  const auto factored = [&](double more) {
    std::vector<Entry<double>> stiffened;
    stiffened.reserve(entries.size() + n);
    for (const Entry<S>& e : entries) stiffened.push_back({e.row, e.column, value_of(e.value)});
    for (std::size_t i = 0; i < n; ++i)
      stiffened.push_back({static_cast<int>(i), static_cast<int>(i), more * diagonal[i]});
    return factor.compute(n, stiffened, node_reach(p.frame) > 12);
  };
  if (!factored(1e-13) && !factored(1e-11)) return out;

  const auto m = static_cast<Eigen::Index>((std::min)(n, std::size_t{12}));
  Eigen::MatrixXd x(static_cast<Eigen::Index>(n), m);  // motions times the root of their own stiffness
  double seed = 0.5;
  for (double& v : x.reshaped()) {
    seed = std::fmod(seed * 997.0 + 0.123, 1.0);
    v = seed - 0.5;
  }
  std::vector<A> u, force;
  const std::vector<A> ground(6 * p.frame.supports.size(), A(0));
  const auto weight = [&](std::size_t i) { return std::sqrt(diagonal[i]); };
  const auto motions = [&](const Eigen::VectorXd& column) {
    u.assign(size, A(0));
    for (std::size_t i = 0; i < size; ++i)
      if (const int k = p.freedoms.number[i]; k >= 0) u[i] = A(S(column[k] / weight(static_cast<std::size_t>(k))));
  };
  const auto answer_to = [&](const Eigen::VectorXd& column) {  // the stiffness times it
    motions(column);
    force.assign(size, A(0));
    p.add_internal_forces(u, ground, force);
    Eigen::VectorXd y(column.size());
    for (std::size_t i = 0; i < size; ++i)
      if (const int k = p.freedoms.number[i]; k >= 0) y[k] = value_of(force[i]) / weight(static_cast<std::size_t>(k));
    return y;
  };
  std::vector<double> work(n), rhs(n);
  const auto solve = [&](const Eigen::VectorXd& b) {
    for (std::size_t i = 0; i < n; ++i) rhs[i] = b[static_cast<Eigen::Index>(i)] * weight(i);
    factor.solve(rhs.data(), work.data());
    Eigen::VectorXd y(b.size());
    for (std::size_t i = 0; i < n; ++i) y[static_cast<Eigen::Index>(i)] = rhs[i] * weight(i);
    return y;
  };
  for (int step = 0; step < 4; ++step) {
    for (Eigen::Index c = 0; c < m; ++c) {
      if (step == 0)
        x.col(c) = solve(x.col(c));
      else  // the same iteration as a correction, which keeps the digits that the factor has lost
        x.col(c) -= solve(answer_to(x.col(c)));
    }
    for (int pass = 0; pass < 2; ++pass)  // Gram–Schmidt, twice
      for (Eigen::Index c = 0; c < m; ++c) {
        for (Eigen::Index q = 0; q < c; ++q) x.col(c) -= x.col(q).dot(x.col(c)) * x.col(q);
        const double norm = x.col(c).norm();
        if (!(norm > 0)) return out;
        x.col(c) /= norm;
      }
  }
  Eigen::MatrixXd answered(static_cast<Eigen::Index>(n), m);
  for (Eigen::Index c = 0; c < m; ++c) answered.col(c) = answer_to(x.col(c));
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> ritz(x.transpose() * answered);
  for (Eigen::Index c = 0; c < m; ++c) {
    motions(x * ritz.eigenvectors().col(c));
    if (!(stiffness_quotient(p, u, own) < 1e-20)) continue;
    out.emplace_back(size);
    for (std::size_t i = 0; i < size; ++i) out.back()[i] = value_of(u[i]);
  }
  return out;
}

/// Of all combinations of the free motions, the one in which a single joint's motion takes the least others along: the
/// projection of that motion alone on the free ones. It depends on what is free, not on how it was found.
inline std::vector<double> plainest_motion(std::vector<std::vector<double>> free, double arm) {
  const std::size_t size = free.front().size();
  const auto weight = [&](std::size_t i) { return i % 6 < 3 ? 1.0 : arm; };
  std::vector<std::vector<double>> basis;  // weighted, orthonormal
  for (std::vector<double>& v : free) {
    for (std::size_t i = 0; i < size; ++i) v[i] *= weight(i);
    const auto norm = [&] {
      double sum = 0;
      for (const double x : v) sum += x * x;
      return std::sqrt(sum);
    };
    const auto scale = [&](double f) {
      for (double& x : v) x *= f;
    };
    if (double s = norm(); s > 0) scale(1.0 / s);
    for (int pass = 0; pass < 2; ++pass)
      for (const std::vector<double>& b : basis) {
        double f = 0;
        for (std::size_t i = 0; i < size; ++i) f += b[i] * v[i];
        for (std::size_t i = 0; i < size; ++i) v[i] -= f * b[i];
      }
    if (const double s = norm(); s > 1e-6) {
      scale(1.0 / s);
      basis.push_back(std::move(v));
    }
  }
  // the motion with the largest share in the free ones, the first of equals; a rotation only where no displacement is
  // free
  std::size_t best = 0;
  double most = 0;
  const auto look = [&](bool turning) {
    for (std::size_t i = 0; i < size; ++i) {
      if ((i % 6 >= 3) != turning) continue;
      double share = 0;
      for (const std::vector<double>& b : basis) share += b[i] * b[i];
      if (share > 1.001 * most) most = share, best = i;
    }
  };
  look(false);
  if (!(most > 1e-6)) look(true);
  std::vector<double> u(size, 0.0);
  double largest = 0;
  for (const std::vector<double>& b : basis)
    for (std::size_t i = 0; i < size; ++i) u[i] += b[best] * b[i];
  for (const double v : u) largest = (std::max)(largest, std::abs(v));
  for (std::size_t i = 0; i < size; ++i) u[i] /= largest * weight(i);
  return u;
}

/// What the supports leave free comes first: it needs no factors.
template <class S>
Mechanism free_as_one_piece(const PreparedFrame<S>& p) {
  Mechanism out;
  const std::vector<FreePart> parts = free_parts(p.frame);
  if (parts.empty()) return out;
  const FreePart& part = parts.front();
  out.found = true;
  out.words = words_of(part, p.frame);
  out.motions.assign(6 * p.frame.nodes.size(), 0.0);
  const std::vector<char> turn = nodes_that_turn(p.frame);
  double largest = 0;
  for (const std::uint32_t n : part.body.nodes)
    for (std::size_t k = 0; k < (turn[n] != 0 ? 6U : 3U); ++k) {
      double& u = out.motions[6 * n + k];
      u = dot(part.body.row(p.frame, n, k), part.moves.front()) / (k < 3 ? 1.0 : part.body.reach);
      largest = (std::max)(largest, std::abs(u) * (k < 3 ? 1.0 : p.longest));
    }
  for (double& u : out.motions) u /= largest;
  return out;
}

template <class S>
Mechanism mechanism_of(const PreparedFrame<S>& p, std::vector<std::vector<double>> free) {
  Mechanism out;
  if (free.empty()) return out;
  out.found = true;
  out.motions = plainest_motion(std::move(free), p.longest);
  out.words = MotionWords<S>(p.frame, out.motions, p.longest).say();
  return out;
}

/// Searches any frame for a motion that nothing resists.
template <class S>
Mechanism find_mechanism(const PreparedFrame<S>& p, const std::vector<Entry<S>>& entries) {
  if (Mechanism m = free_as_one_piece(p); m.found) return m;
  return mechanism_of(p, sparse_free_motions(p, entries));
}
/// The same for a chain, from its pivots.
template <class S>
Mechanism find_mechanism(const PreparedFrame<S>& p, const ChainBays<S>& bays) {
  if (!bays.layout().turning) return find_mechanism(p, p.stiffness_entries());
  if (Mechanism m = free_as_one_piece(p); m.found) return m;
  const std::vector<double> own = own_stiffness(p);
  const auto energy_share = [&](const std::vector<accurate_t<S>>& u) { return stiffness_quotient(p, u, own); };
  return mechanism_of(p, ChainMechanism<S>(p, bays, own, energy_share).found());
}

}  // namespace detail
}  // namespace baywork
