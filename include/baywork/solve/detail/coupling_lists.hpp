// SPDX-License-Identifier: MIT
// What is not zero in the coupling of two stations, in the order in which a product with vectors goes through it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <type_traits>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/solve/detail/aligned_vector.hpp>
#include <baywork/solve/detail/plain_kernels.hpp>

namespace baywork::detail {

/// A number that carries derivatives counts: they need not be zero where it is.
template <class S>
bool is_nothing(const S& v) {
  if constexpr (std::is_arithmetic_v<S>)
    return v == S(0);
  else
    return false;
}

/// A sum of blocks, or its transpose, in full, columns `ld` apart.
template <class S>
void in_full(const std::vector<BasicBlock6<S>>& blocks, bool turned, std::size_t ld, std::size_t columns, std::vector<S>& full) {
  full.assign(ld * columns, S(0));
  for (const BasicBlock6<S>& b : blocks) {
    S* const at = full.data() + (turned ? b.first_column() + b.first_row() * ld : b.first_row() + b.first_column() * ld);
    for (std::size_t j = 0; j < 6; ++j)
      for (std::size_t i = 0; i < 6; ++i) at[turned ? j + i * ld : i + j * ld] += b(i, j);
  }
}

/// Row by row what is not zero (all, where most of the matrix is not).
template <class S>
struct RowLists {
  std::vector<std::uint32_t> end;     ///< of each row, in `column`
  std::vector<std::uint32_t> column;
  std::vector<S> value;

  RowsOf<S> view() const { return {end.size(), end.data(), column.data(), value.data()}; }

  /// Of a sum of blocks, or of its transpose. `full`: scratch.
  void make(const std::vector<BasicBlock6<S>>& blocks, bool turned, std::size_t rows, std::size_t columns, std::vector<S>& full) {
    std::size_t something = 0;
    for (const BasicBlock6<S>& b : blocks)
      for (std::size_t j = 0; j < 6; ++j)
        for (std::size_t i = 0; i < 6; ++i) something += is_nothing(b(i, j)) ? 0U : 1U;
    end.clear();
    column.clear();
    value.clear();
    const bool all = 2 * something > rows * columns;
    if (all) in_full(blocks, turned, rows, columns, full);
    column.reserve(all ? rows * columns : something);
    value.reserve(all ? rows * columns : something);
    const auto put = [this](std::size_t c, const S& v) {
      column.push_back(static_cast<std::uint32_t>(c));
      value.push_back(v);
    };
    for (std::size_t r = 0; r < rows; ++r) {
      for (std::size_t c = 0; all && c < columns; ++c) put(c, full[c * rows + r]);
      for (const BasicBlock6<S>& b : blocks) {
        if (all || static_cast<std::size_t>(turned ? b.column : b.row) != r / 6) continue;
        for (std::size_t k = 0; k < 6; ++k)
          if (const S& v = turned ? b(k, r % 6) : b(r % 6, k); !is_nothing(v)) put((turned ? b.first_row() : b.first_column()) + k, v);
      }
      end.push_back(static_cast<std::uint32_t>(column.size()));
    }
  }
};

/// A matrix of both halves of a station (12 x 12 each, as pairs): what is not zero, for the halves that hold much of
/// nothing, and in full for the others.
template <class S>
struct HalvedProduct {
  RowLists<S> rows;             ///< of both halves, one after the other
  std::array<bool, 2> full{};
  std::vector<S> value;         ///< pairs, columns without padding; none where no half is full

  /// Columns `ld` pairs apart.
  void make(const S* pairs, std::size_t ld) {
    constexpr std::size_t n = joint_half;
    const auto at = [&](std::size_t h, std::size_t r, std::size_t c) -> const S& { return pairs[2 * (r + c * ld) + h]; };
    for (std::size_t h = 0; h < 2; ++h) {
      std::size_t something = 0;
      for (std::size_t c = 0; c < n; ++c)
        for (std::size_t r = 0; r < n; ++r) something += is_nothing(at(h, r, c)) ? 0U : 1U;
      full[h] = 4 * something > 3 * n * n;  // a number by itself costs about a third more
    }
    rows = {};
    for (std::size_t i = 0; i < 2 * n; ++i) {
      const std::size_t h = i / n, r = i % n;
      for (std::size_t c = 0; c < n && !full[h]; ++c)
        if (!is_nothing(at(h, r, c))) rows.column.push_back(static_cast<std::uint32_t>(h * n + c)), rows.value.push_back(at(h, r, c));
      rows.end.push_back(static_cast<std::uint32_t>(rows.column.size()));
    }
    value.clear();
    for (std::size_t c = 0; c < n && (full[0] || full[1]); ++c) value.insert(value.end(), pairs + 2 * c * ld, pairs + 2 * (c * ld + n));
  }
};

/// Blocks row by row, for one vector: of each row of blocks, three columns at a time that are not all zero.
template <class S>
struct BlockRows {
  std::vector<std::uint32_t> end;     ///< of each row of blocks, in `column`
  std::vector<std::uint32_t> column;  ///< the first of each three
  AlignedVector<S> value;             ///< 3 x 8 for each three: columns of six numbers and two zeros

  std::size_t bytes() const noexcept { return value.size() * sizeof(S) + (end.size() + column.size()) * sizeof(std::uint32_t); }

  BlockRowsOf<S> view() const { return {end.size(), end.data(), column.data(), value.data()}; }

  /// Of blocks, or of their transposes, in this many rows of blocks.
  void make(const std::vector<BasicBlock6<S>>& blocks, bool turned, std::size_t rows) {
    end.clear();
    column.clear();
    value.clear();
    column.reserve(2 * blocks.size());
    value.reserve(48 * blocks.size());
    for (std::size_t r = 0; r < rows; ++r) {
      for (const BasicBlock6<S>& b : blocks) {
        if (static_cast<std::size_t>(turned ? b.column : b.row) != r) continue;
        for (std::size_t first = 0; first < 6; first += 3) {
          bool any = false;
          for (std::size_t j = first; j < first + 3; ++j)
            for (std::size_t i = 0; i < 6; ++i) any = any || !is_nothing(turned ? b(j, i) : b(i, j));
          if (!any) continue;
          column.push_back(static_cast<std::uint32_t>((turned ? b.first_row() : b.first_column()) + first));
          for (std::size_t j = first; j < first + 3; ++j)
            for (std::size_t i = 0; i < 8; ++i) value.push_back(i < 6 ? (turned ? b(j, i) : b(i, j)) : S(0));
        }
      }
      end.push_back(static_cast<std::uint32_t>(column.size()));
    }
  }
};

/// C and Cᵀ, for one vector.
template <class S>
struct CouplingLists {
  BlockRows<S> plain, turned;

  std::size_t bytes() const noexcept { return plain.bytes() + turned.bytes(); }
};

}  // namespace baywork::detail
