// SPDX-License-Identifier: MIT
// A matrix with many zeros in tiles of four rows, and the steps of a solution that such matrices link.
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/core/scalar.hpp>

namespace baywork::detail {

/// Four rows at a time, the columns in which they are not all zero: per tile an even number of them (a zero one may fill
/// up), each with its four numbers. Rows past the last are zero.
template <class S>
struct TiledMatrix {
  std::size_t columns = 0;
  bool full = false;                  ///< every tile has all columns, in order
  std::vector<S> value;               ///< four per entry
  std::vector<std::uint32_t> column;  ///< of each entry
  std::vector<std::uint32_t> end;     ///< of each tile: one past its last entry

  /// Takes a rows x columns matrix, by columns `ld` apart.
  void take(std::size_t rows, std::size_t columns_of_it, const S* first, std::size_t ld) {
    columns = columns_of_it;
    column.clear();
    end.clear();
    column.reserve((rows + 3) / 4 * (columns + columns % 2));
    end.reserve((rows + 3) / 4);
    for (std::size_t top = 0; top < rows; top += 4) {
      const std::size_t height = rows - top < 4 ? rows - top : 4, begin = column.size();
      for (std::size_t c = 0; c < columns; ++c)
        if (counts(first + c * ld + top, height)) column.push_back(static_cast<std::uint32_t>(c));
      if ((column.size() - begin) % 2 != 0) column.push_back(filler);
      end.push_back(static_cast<std::uint32_t>(column.size()));
    }
    full = columns % 2 == 0 && column.size() == columns * end.size();
    value.assign(4 * column.size(), S(0));
    std::size_t e = 0;
    for (std::size_t t = 0; t < end.size(); ++t) {
      const std::size_t top = 4 * t, height = rows - top < 4 ? rows - top : 4;
      for (; e < end[t]; ++e) {
        if (column[e] == filler)
          column[e] = 0;
        else
          for (std::size_t r = 0; r < height; ++r) value[4 * e + r] = first[column[e] * ld + top + r];
      }
    }
  }

 private:
  static constexpr std::uint32_t filler = static_cast<std::uint32_t>(-1);

  /// A number that has a derivative counts even where it is zero.
  static bool counts(const S* v, std::size_t height) {
    if constexpr (!std::floating_point<S>) return true;
    for (std::size_t r = 0; r < height; ++r)
      if (value_of(v[r]) != 0.0) return true;
    return false;
  }
};

/// One eliminated station of a solution, P its pivot's inverse, and up to two stations it is coupled to.
/// Down: x := P x there, then x_k -= down_k x at each neighbour. Up: x -= P (sum of up_k x_k); up_k is the transpose of
/// down_k. Without a neighbour (the last station) there is nothing to do on the way up.
template <class S>
struct ChainStep {
  struct Neighbour {
    std::ptrdiff_t at = 0;
    const TiledMatrix<S>*down = nullptr, *up = nullptr;
  };
  const S* pivot = nullptr;  ///< packed
  std::size_t order = 0;
  std::ptrdiff_t at = 0;     ///< where the station's numbers stand in x
  std::size_t neighbours = 0;
  Neighbour next[2];
};

}  // namespace baywork::detail
