// SPDX-License-Identifier: MIT
// A station that is its own mirror image: motions that the mirror keeps and motions that it turns about do not meet.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include <baywork/solve/detail/bay_type.hpp>
#include <baywork/solve/detail/chain_layout.hpp>

namespace baywork::detail {

/// A plane across a global axis that takes each joint of a station to another one. It takes a displacement along its normal
/// and a rotation about an axis in it to their negatives, everything else to itself: σ. With x and x' the motions of two
/// joints that face each other, s = x + σ x' is what the mirror keeps, a = x - σ x' what it turns about. A stiffness that
/// is its own mirror image, K_x'y' = σ K_xy σ and K_x'y = σ K_xy' σ, then falls into two halves,
///   K_s = K_xy + K_xy' σ,   K_a = K_xy - K_xy' σ,
/// each of which takes its motions to its forces, f ± σ f'. Symmetric and antisymmetric parts of a load are common
/// practice; the halves of the stiffness are derived here.
/// Stations of four joints, as boxes have them: number i of both halves stands in [2 i] and [2 i + 1].
template <class S>
struct ChainMirror {
  static constexpr std::size_t pairs = 2, joints = 2 * pairs, half = joint_half;

  bool found = false;
  JointMirror<S> joint;                      ///< joints by their places in the station; σ
  std::array<std::uint8_t, joints> pair_of{}, side_of{};
  std::array<std::array<S, 48>, 4> image{};  ///< what σ does to a block: to its rows (1), its columns (2), both (3)

  /// The mirror across axis `normal` of these joints; none where one of them lies in its plane.
  static ChainMirror across(std::size_t normal, const BasicFrame<S>& frame, const std::uint32_t* first, const std::uint32_t* last) {
    ChainMirror m;
    if (last - first != joints) return m;
    const auto at = [&](std::size_t i, std::size_t k) { return value_of(frame.nodes[first[i]].at[k]); };
    double middle = 0, size = 0;
    for (std::size_t i = 0; i < joints; ++i) middle += at(i, normal) / static_cast<double>(joints);
    for (std::size_t i = 0; i < joints; ++i) size = (std::max)(size, std::abs(at(i, normal) - middle));
    const auto face = [&](std::size_t i, std::size_t j) {
      double off = std::abs(at(i, normal) + at(j, normal) - 2 * middle);
      for (const std::size_t k : {(normal + 1) % 3, (normal + 2) % 3}) off = (std::max)(off, std::abs(at(i, k) - at(j, k)));
      return off <= 1e-9 * size;
    };
    std::size_t found = 0;
    for (std::size_t i = 0; i < joints; ++i)
      for (std::size_t j = i + 1; j < joints; ++j)
        if (face(i, j) && found < pairs) {
          m.joint.one[found] = static_cast<std::uint8_t>(i), m.joint.other[found] = static_cast<std::uint8_t>(j);
          m.pair_of[i] = m.pair_of[j] = static_cast<std::uint8_t>(found++);
          m.side_of[j] = 1;
        }
    m.found = found == pairs && m.joint.one[0] != m.joint.one[1] && m.joint.other[0] != m.joint.other[1] && m.joint.one[1] != m.joint.other[0];
    for (std::size_t k = 0; k < 6; ++k) m.joint.sign[k] = S((k % 3 == normal) == (k < 3) ? -1 : 1);
    for (std::size_t how = 0; how < 4; ++how)
      for (std::size_t k = 0; k < 48; ++k) m.image[how][k] = k % 8 > 5 ? S(0) : S(((how & 1) != 0 ? m.joint.sign[k % 8] : S(1)) * ((how & 2) != 0 ? m.joint.sign[k / 8] : S(1)));
    return m;
  }

  /// A station's motions or forces to those of both halves, and back.
  void split(S* x) const { KernelsOf<S>::to_halves(joint, x); }
  void join(S* x) const { KernelsOf<S>::from_halves(joint, x); }
  /// Whether blocks are their own mirror image. `lower`: they are the lower triangle of a symmetric part. What rounding
  /// has made different is let pass: 16 of its units against the sizes of row and column, size_of(joint, motion)².
  template <class Row, class Column>
  bool reflects(const std::vector<BasicBlock6<S>>& blocks, bool lower, const Row& row_size, const Column& column_size) const {
    constexpr double small = 16 * std::numeric_limits<double>::epsilon();
    for (const BasicBlock6<S>& b : blocks) {
      const int row = facing(b.row), column = facing(b.column);
      const bool turned = lower && row < column;
      const auto facing_it = std::find_if(blocks.begin(), blocks.end(), [&](const BasicBlock6<S>& k) {
        return k.row == (turned ? column : row) && k.column == (turned ? row : column);
      });
      if (facing_it == blocks.end()) return false;
      if (&*facing_it < &b) continue;  // seen from there
      std::array<S, 48> seen;
      if (turned)
        for (std::size_t k = 0; k < 48; ++k) seen[k] = k % 8 > 5 ? S(0) : (*facing_it)(k / 8, k % 8);
      else
        std::copy(facing_it->value, facing_it->value + 48, seen.begin());
      std::array<double, 48> off;
      double any = 0.0;
      for (std::size_t k = 0; k < 48; ++k) {
        off[k] = value_of(b.value[k]) - value_of(S(image[3][k] * seen[k]));
        any += std::abs(off[k]);
      }
      if (any == 0.0) continue;
      for (std::size_t k = 0; k < 48; ++k)
        if (off[k] != 0.0 && !(off[k] * off[k] <= small * small * row_size(b.row, k % 8) * column_size(b.column, k / 8))) return false;
    }
    return true;
  }

  /// Adds blocks that are their own mirror image to both halves, columns `ld` pairs apart. `lower`: they are the lower
  /// triangle of a symmetric part, and the lower triangle is what they add to.
  void add(const std::vector<BasicBlock6<S>>& blocks, bool lower, S* to, std::size_t ld) const {
    for (const BasicBlock6<S>& b : blocks) {
      const std::size_t r = static_cast<std::size_t>(b.row), c = static_cast<std::size_t>(b.column);
      if (side_of[r] == 0 && (!lower || pair_of[r] >= pair_of[c]))
        add_one<false>(b, side_of[c] == 0, to + 12 * (pair_of[r] + ld * pair_of[c]), ld);
      else if (lower && side_of[c] == 0 && pair_of[c] >= pair_of[r])
        add_one<true>(b, side_of[r] == 0, to + 12 * (pair_of[c] + ld * pair_of[r]), ld);
    }
  }
  /// The same of a coupling's transpose.
  void add_turned(const std::vector<BasicBlock6<S>>& blocks, S* to, std::size_t ld) const {
    for (const BasicBlock6<S>& b : blocks) {
      const std::size_t r = static_cast<std::size_t>(b.column), c = static_cast<std::size_t>(b.row);
      if (side_of[r] == 0) add_one<true>(b, side_of[c] == 0, to + 12 * (pair_of[r] + ld * pair_of[c]), ld);
    }
  }

  /// The 6 x 6 blocks of both stations' joints that the two halves of a matrix make up, by columns. `lower`: of its lower
  /// triangle, from lower triangles; else from the halves of its transpose.
  void put_together(const S* halves, std::size_t ld, bool lower, std::vector<BasicBlock6<S>>& blocks) const {
    blocks.clear();
    blocks.reserve(lower ? joints * (joints + 1) / 2 : joints * joints);
    for (std::size_t c = 0; c < joints; ++c)
      for (std::size_t r = lower ? c : 0; r < joints; ++r) {
        const bool turned = !lower || pair_of[r] < pair_of[c];
        const S* const from = halves + 12 * (turned ? pair_of[c] + pair_of[r] * ld : pair_of[r] + pair_of[c] * ld);
        BasicBlock6<S>& b = blocks.emplace_back(static_cast<int>(r), static_cast<int>(c));
        const S across = S(side_of[r] == side_of[c] ? 0.5 : -0.5);
        std::array<S, 48> sum{};
        for (std::size_t j = 0; j < 6; ++j)
          for (std::size_t i = 0; i < 6; ++i) sum[8 * j + i] = S(S(S(0.5) * from[2 * (j * ld + i)]) + S(across * from[2 * (j * ld + i) + 1]));
        if (lower && pair_of[r] == pair_of[c])
          for (std::size_t j = 1; j < 6; ++j)
            for (std::size_t i = 0; i < j; ++i) sum[8 * j + i] = sum[8 * i + j];
        const std::array<S, 48>& turning = image[side_of[r] + 2U * side_of[c]];
        if (turned)
          for (std::size_t k = 0; k < 48; ++k) b.value[k] = k % 8 > 5 ? S(0) : S(turning[k] * sum[8 * (k % 8) + k / 8]);
        else
          for (std::size_t k = 0; k < 48; ++k) b.value[k] = S(turning[k] * sum[k]);
      }
  }

 private:
  int facing(int of) const {
    const std::size_t j = static_cast<std::size_t>(of);
    return side_of[j] == 0 ? joint.other[pair_of[j]] : joint.one[pair_of[j]];
  }
  template <bool turned>
  void add_one(const BasicBlock6<S>& b, bool same_side, S* to, std::size_t ld) const {
    for (std::size_t j = 0; j < 6; ++j) {
      const S kept = same_side ? S(1) : joint.sign[j], turned_about = same_side ? S(1) : S(-joint.sign[j]);
      for (std::size_t i = 0; i < 6; ++i) {
        const S& v = turned ? b(j, i) : b(i, j);
        to[2 * (j * ld + i)] += S(kept * v), to[2 * (j * ld + i) + 1] += S(turned_about * v);
      }
    }
  }
};

}  // namespace baywork::detail
