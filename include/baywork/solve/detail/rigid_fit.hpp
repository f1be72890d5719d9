// SPDX-License-Identifier: MIT
// Rigid motions: those of a frame or of an unconnected part of it that no support resists, and the best fit to a
// motion.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>

namespace baywork::detail {

/// A rigid motion (t, ω · reach) about a centre, or a row that it is multiplied with.
using SixRow = std::array<double, 6>;

inline double dot(const SixRow& a, const SixRow& b) {
  double sum = 0;
  for (std::size_t i = 0; i < 6; ++i) sum += a[i] * b[i];
  return sum;
}

/// The span of rows taken in one by one, kept as an orthonormal basis (Gram–Schmidt, each row twice).
class RowSpace {
 public:
  /// Rows are of order 1; what is left below 1e-9 of that is counted as rounding.
  void add(const SixRow& row) {
    SixRow rest = outside(outside(row));
    const double size = std::sqrt(dot(rest, rest));
    if (!(size > 1e-9)) return;
    for (double& v : rest) v /= size;
    basis_.push_back(rest);
  }
  SixRow outside(SixRow row) const {
    for (const SixRow& b : basis_) {
      const double f = dot(b, row);
      for (std::size_t i = 0; i < 6; ++i) row[i] -= f * b[i];
    }
    return row;
  }
  bool full() const { return basis_.size() == 6; }
  const std::vector<SixRow>& basis() const { return basis_; }
  /// An orthonormal basis of what no row sees.
  std::vector<SixRow> complement() const {
    RowSpace all = *this;
    for (std::size_t i = 0; i < 6; ++i) {
      SixRow e{};
      e[i] = 1;
      all.add(e);
    }
    return {all.basis_.begin() + static_cast<std::ptrdiff_t>(basis_.size()), all.basis_.end()};
  }

 private:
  std::vector<SixRow> basis_;
};

/// Nodes with the centre and the reach that their rigid motions are written in.
struct RigidBody {
  std::vector<std::uint32_t> nodes;
  std::array<double, 3> centre{};
  double reach = 1.0;  ///< [m]

  template <class S>
  RigidBody(const BasicFrame<S>& frame, std::vector<std::uint32_t> of) : nodes(std::move(of)) {
    for (const std::uint32_t n : nodes)
      for (std::size_t k = 0; k < 3; ++k)
        centre[k] += value_of(frame.nodes[n].at[k]) / static_cast<double>(nodes.size());
    double most = 0;
    for (const std::uint32_t n : nodes)
      for (std::size_t k = 0; k < 3; ++k) most = (std::max)(most, std::abs(value_of(frame.nodes[n].at[k]) - centre[k]));
    if (most > 0) reach = most;
  }

  /// Motion k of a node (a rotation times the reach) in terms of (t, ω reach).
  template <class S>
  SixRow row(const BasicFrame<S>& frame, std::size_t node, std::size_t k) const {
    SixRow r{};
    r[k] = 1;
    if (k >= 3) return r;
    const std::size_t j = (k + 1) % 3, l = (k + 2) % 3;  // (ω × d)_k = ω_j d_l - ω_l d_j
    r[3 + j] = (value_of(frame.nodes[node].at[l]) - centre[l]) / reach;
    r[3 + l] = -(value_of(frame.nodes[node].at[j]) - centre[j]) / reach;
    return r;
  }
};

/// Nodes that turn with the bars there: where a beam meets them, or an axial bar with a rigid arm.
template <class S>
std::vector<char> nodes_that_turn(const BasicFrame<S>& frame) {
  std::vector<char> turn(frame.nodes.size(), 0);
  const auto has_arm = [](const Vec3<S>& v) {
    return value_of(v.x) != 0.0 || value_of(v.y) != 0.0 || value_of(v.z) != 0.0;
  };
  for (const BasicMember<S>& m : frame.members) {
    if (m.kind == MemberKind::beam || has_arm(m.start.offset)) turn[m.from] = 1;
    if (m.kind == MemberKind::beam || has_arm(m.end.offset)) turn[m.to] = 1;
  }
  return turn;
}

/// A part of the frame, unconnected to the rest, and the rigid motions of it that the supports leave free.
struct FreePart {
  RigidBody body;
  std::vector<SixRow> moves;  ///< orthonormal
};

/// The nodes of each unconnected part.
template <class S>
std::vector<std::vector<std::uint32_t>> parts_of(const BasicFrame<S>& frame) {
  std::vector<std::uint32_t> root(frame.nodes.size());
  for (std::uint32_t n = 0; n < root.size(); ++n) root[n] = n;
  const auto find = [&](std::size_t n) {
    while (root[n] != n) n = root[n] = root[root[n]];
    return static_cast<std::uint32_t>(n);
  };
  for (const BasicMember<S>& m : frame.members) {
    const std::uint32_t a = find(m.from), b = find(m.to);
    root[(std::max)(a, b)] = (std::min)(a, b);
  }
  std::vector<std::vector<std::uint32_t>> parts;
  std::vector<std::size_t> part(root.size(), 0);
  for (std::uint32_t n = 0; n < root.size(); ++n) {
    const std::uint32_t r = find(n);
    if (r == n) {
      part[n] = parts.size();
      parts.emplace_back();
    }
    parts[part[r]].push_back(n);
  }
  return parts;
}

/// Parts that the supports let move as one piece. Exact whatever the stiffnesses and the length: rigid motion strains
/// no member, so the rows of the held and sprung motions alone decide.
template <class S>
std::vector<FreePart> free_parts(const BasicFrame<S>& frame) {
  std::vector<FreePart> out;
  const std::vector<char> turn = nodes_that_turn(frame);
  std::vector<std::vector<std::size_t>> supports(frame.nodes.size());
  for (std::size_t j = 0; j < frame.supports.size(); ++j) supports[frame.supports[j].node].push_back(j);
  for (std::vector<std::uint32_t>& nodes : parts_of(frame)) {
    const RigidBody body(frame, std::move(nodes));
    RowSpace held, moved;
    for (const std::uint32_t n : body.nodes)
      for (const std::size_t j : supports[n])
        for (std::size_t k = 0; k < 6; ++k)
          if (frame.supports[j].motion[k].kind != BasicRestraint<S>::Kind::free && (k < 3 || turn[n] != 0))
            held.add(body.row(frame, n, k));
    if (held.full()) continue;
    for (const std::uint32_t n : body.nodes) {
      for (std::size_t k = 0; k < (turn[n] != 0 ? 6U : 3U); ++k) moved.add(body.row(frame, n, k));
      if (moved.full()) break;
    }
    for (const SixRow& nothing : moved.complement()) held.add(nothing);  // axial bars in one line, about that line
    if (!held.full()) out.push_back({body, held.complement()});
  }
  return out;
}

/// Solves the 6 × 6 system a x = b by Gauss with row pivoting; tiny pivots (a rotation about the only line the nodes
/// lie on) give zero.
inline SixRow solve_small(std::array<std::array<double, 7>, 6> a) {
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
  SixRow x{};
  for (std::size_t i = 0; i < 6; ++i) x[i] = a[i][6] / a[i][i];
  return x;
}

/// The rigid motion nearest to a motion of nodes (least squares), and how far at most the motion is from it [m].
struct RigidFit {
  SixRow motion{};  ///< (t, ω reach) about the body's centre
  double off = 0;
};

/// `turns`: which nodes' rotations count.
template <class S>
RigidFit fit_rigid(const BasicFrame<S>& frame, const RigidBody& body, const std::vector<char>& turns,
                   const std::vector<double>& u) {
  std::array<std::array<double, 7>, 6> a{};
  const auto each = [&](const auto& take) {
    for (const std::uint32_t n : body.nodes)
      for (std::size_t k = 0; k < (turns[n] != 0 ? 6U : 3U); ++k)
        take(body.row(frame, n, k), u[6 * n + k] * (k < 3 ? 1.0 : body.reach));
  };
  each([&](const SixRow& r, double v) {
    for (std::size_t p = 0; p < 6; ++p) {
      for (std::size_t q = 0; q < 6; ++q) a[p][q] += r[p] * r[q];
      a[p][6] += r[p] * v;
    }
  });
  RigidFit out;
  out.motion = solve_small(a);
  each([&](const SixRow& r, double v) { out.off = (std::max)(out.off, std::abs(dot(r, out.motion) - v)); });
  return out;
}

}  // namespace baywork::detail
