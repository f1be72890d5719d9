// SPDX-License-Identifier: MIT
// What is not zero in the coupling of two stations, in the order in which a product with vectors goes through it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <type_traits>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/solve/detail/aligned_vector.hpp>
#include <baywork/solve/detail/plain_kernels.hpp>

namespace baywork::detail {

/// A sum of blocks, or its transpose, cut into bands of `height` rows; of each band, the columns in which anything is not
/// zero (all, where most of the matrix is not): with four rows, an even number of them.
template <class S, std::size_t height>
struct Bands {
  std::vector<std::uint32_t> end;     ///< of each band, in `column`
  std::vector<std::uint32_t> column;
  AlignedVector<S> value;             ///< `height` per entry of `column`

  std::size_t bytes() const noexcept { return value.size() * sizeof(S) + (end.size() + column.size()) * sizeof(std::uint32_t); }

  BandsOf<S> view() const { return {end.size(), end.data(), column.data(), value.data()}; }

  /// Of a sum of blocks, or of its transpose. `full`: scratch.
  void make(const std::vector<BasicBlock6<S>>& blocks, bool turned, std::size_t rows, std::size_t columns, std::vector<S>& full) {
    const std::size_t bands = (rows + height - 1) / height, ld = bands * height;
    full.assign(ld * columns, S(0));
    for (const BasicBlock6<S>& b : blocks) {
      S* const at = full.data() + (turned ? b.first_column() + b.first_row() * ld : b.first_row() + b.first_column() * ld);
      for (std::size_t j = 0; j < 6; ++j)
        for (std::size_t i = 0; i < 6; ++i) at[turned ? j + i * ld : i + j * ld] += b(i, j);
    }
    const std::size_t something = static_cast<std::size_t>(std::count_if(full.begin(), full.end(), [](const S& v) { return !is_nothing(v); }));
    const bool all = 2 * something > rows * columns;
    end.resize(bands);
    column.resize(bands * (columns + 1));
    value.resize(ld * (columns + 1));
    std::uint32_t count = 0;
    for (std::size_t band = 0; band < bands; ++band) {
      for (std::size_t c = 0; c < columns; ++c) {
        const S* const v = full.data() + band * height + c * ld;
        bool any = all;
        for (std::size_t r = 0; r < height; ++r) {
          value[count * height + r] = v[r];
          any = any || !is_nothing(v[r]);
        }
        column[count] = static_cast<std::uint32_t>(c);
        count += any ? 1 : 0;
      }
      if (height > 1 && count % 2 != 0) {  // taken in twos
        std::fill_n(value.begin() + static_cast<std::ptrdiff_t>(count * height), height, S(0));
        column[count++] = 0;
      }
      end[band] = count;
    }
    column.resize(count);
    value.resize(count * height);
  }

 private:
  /// A number that carries derivatives is kept: they need not be zero where it is.
  static bool is_nothing(const S& v) {
    if constexpr (std::is_arithmetic_v<S>)
      return v == S(0);
    else
      return false;
  }
};

/// C and Cᵀ, for one vector.
template <class S>
struct CouplingLists {
  Bands<S, 4> plain, turned;

  std::size_t bytes() const noexcept { return plain.bytes() + turned.bytes(); }
};

}  // namespace baywork::detail
