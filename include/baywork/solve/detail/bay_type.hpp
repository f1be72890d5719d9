// SPDX-License-Identifier: MIT
// What bays of one type share: their stiffness by 6 x 6 blocks.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

#include <baywork/solve/detail/kernels.hpp>

namespace baywork::detail {

/// Rows of a padded column: a multiple of eight, so that whole vectors fit.
inline constexpr std::size_t padded(std::size_t n) { return (n + 7) / 8 * 8; }

/// A bay's or segment's stiffness over the motions of its stations' nodes, six each, global axes, by columns. Of the
/// parts of both stations the lower triangles count, and the part between them in rows of the first, columns of the
/// second station.
template <class S>
struct NodeMatrix {
  std::size_t n1 = 0, n2 = 0;  ///< unknowns of the first and second station
  std::size_t second = 0;      ///< row of the second station's first unknown: n1 padded
  std::size_t ld = 0;
  std::vector<S> k;

  S& at(std::size_t r, std::size_t c) { return k[c * ld + r]; }
  const S& at(std::size_t r, std::size_t c) const { return k[c * ld + r]; }
};

/// Room for `size` numbers that each use writes before it reads; at a cache line, where whole vectors move fastest.
template <class S>
class Room {
 public:
  explicit Room(std::size_t size) : all_(new S[size + line / sizeof(S) + 1]), begin_(all_.get()) {
    begin_ += (line - reinterpret_cast<std::uintptr_t>(begin_) % line) % line / sizeof(S);
  }
  S* begin() const noexcept { return begin_; }

 private:
  static constexpr std::size_t line = 64;
  std::unique_ptr<S[]> all_;
  S* begin_;
};

/// The blocks of the transposed matrix.
template <class S>
void turn(const std::vector<BasicBlock6<S>>& blocks, std::vector<BasicBlock6<S>>& turned) {
  turned.clear();
  turned.reserve(blocks.size());
  for (const BasicBlock6<S>& b : blocks) turned.emplace_back(b.column, b.row, [&](std::size_t i, std::size_t j) { return b(j, i); }).size = b.size;
}

/// What bays that are alike share for as long as the factor lives: their stiffness by 6 x 6 blocks, where it is not zero,
/// since most bars run from one station to the other and each station's part is then one block for each joint.
template <class S>
struct BayType {
  std::uint32_t example = 0, count = 0;        ///< first bay of the type, number of them
  std::vector<BasicBlock6<S>> blocks;          ///< between the stations, by columns
  std::vector<BasicBlock6<S>> first, second;   ///< of each station alone: blocks of the lower triangle
  std::size_t inner = 0;                       ///< unknowns of the joints inside, which are condensed
  double inner_ratio = 1.0;                    ///< smallest pivot ratio of the joints inside
  std::vector<S> to_inner;                     ///< inner x (n1 + n2): motions inside = held_inner f - to_inner u
  std::vector<S> held_inner;                   ///< inner²: flexibility with both stations held
};

/// Numbers that the blocks hold.
template <class S>
double numbers_in(const std::vector<BasicBlock6<S>>& blocks) {
  double sum = 0.0;
  for (const BasicBlock6<S>& b : blocks) sum += b.size * b.size;
  return sum;
}

/// to += the sum of the blocks, which stand by columns, from column `first` on.
template <class S>
void add_blocks(const std::vector<BasicBlock6<S>>& blocks, S* to, std::size_t ld, std::size_t first = 0) {
  std::size_t skipped = 0;
  while (skipped < blocks.size() && blocks[skipped].first_column() < first) ++skipped;
  KernelsOf<S>::add_blocks(blocks.data() + skipped, blocks.size() - skipped, to, ld);
}

/// The stiffness of a type, in full, between stations of n1 and n2 unknowns.
template <class S>
void put_together(const BayType<S>& t, std::size_t n1, std::size_t n2, NodeMatrix<S>& m) {
  m.n1 = n1;
  m.n2 = n2;
  m.second = padded(n1);
  m.ld = m.second + padded(n2);
  m.k.assign(m.ld * (m.second + n2), S(0));
  add_blocks(t.first, m.k.data(), m.ld);
  add_blocks(t.second, &m.at(m.second, m.second), m.ld);
  add_blocks(t.blocks, &m.at(0, m.second), m.ld);
}

}  // namespace baywork::detail
