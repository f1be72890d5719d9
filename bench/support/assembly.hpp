// SPDX-License-Identifier: MIT
// How every foreign method gets its matrix: a band filled member by member, a pattern taken from it, values put in
// place.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "job.hpp"

namespace bench {

enum class Triangle { lower, upper };

/// Calls use(member, entries) for every member. Members that share their numbers are worked out once.
template <class Use>
void for_each_member(const Job& job, std::vector<MemberEntries<double>>& shared, Use use) {
  const Prepared& p = job.prepared;
  const std::size_t sorts = p.sorts.size(), members = p.sort_of.size();
  if (2 * sorts > members) {
    MemberEntries<double> e;
    for (std::size_t i = 0; i < members; ++i) {
      member_entries(plain_of(p, p.sort_of[i]), e);
      use(i, e);
    }
    return;
  }
  shared.resize(sorts);
  for (std::size_t s = 0; s < sorts; ++s) member_entries(plain_of(p, s), shared[s]);
  for (std::size_t i = 0; i < members; ++i) use(i, shared[p.sort_of[i]]);
}

/// The band of one triangle. Lower: column c's entry in row c + d at c (w + 1) + d. Upper: the entry in row c - d
/// there.
class Band {
 public:
  void assemble(const Job& job, Triangle triangle) {
    n_ = job.unknowns();
    width_ = static_cast<std::size_t>(job.numbering.half_band) + 1;
    values_.assign(n_ * width_, 0.0);
    const int w = static_cast<int>(width_);
    for_each_member(job, shared_, [&](std::size_t i, const MemberEntries<double>& e) {
      const int* number = job.numbers[i].data();
      for (std::size_t k = 0; k < e.count; ++k) {
        const int a = number[e.row[k]], b = number[e.column[k]];
        if ((a | b) < 0) continue;
        const int low = (std::min)(a, b), high = (std::max)(a, b);
        values_[static_cast<std::size_t>((triangle == Triangle::lower ? low : high)) * static_cast<std::size_t>(w) +
                static_cast<std::size_t>(high - low)] += e.value[k];
      }
    });
  }
  std::size_t size() const { return n_; }
  std::size_t width() const { return width_; }
  double* values() { return values_.data(); }
  const double* values() const { return values_.data(); }
  double* column(std::size_t c) { return values_.data() + c * width_; }
  const double* column(std::size_t c) const { return values_.data() + c * width_; }

 private:
  std::size_t n_ = 0, width_ = 0;
  std::vector<double> values_;
  std::vector<MemberEntries<double>> shared_;
};

/// Compressed columns of one triangle, rows rising, in arrays that the method owns.
struct Columns {
  int* begin;     ///< one more than there are columns
  int* row;       ///< room for all of the band
  double* value;  ///< likewise

  /// Takes the entries of the band that are not zero; returns their number.
  std::size_t take(const Band& band, Triangle triangle) const {
    const std::size_t n = band.size(), w = band.width();
    std::size_t next = 0;
    for (std::size_t c = 0; c < n; ++c) {
      begin[c] = static_cast<int>(next);
      const double* v = band.column(c);
      const std::size_t most = triangle == Triangle::lower ? (std::min)(w, n - c) : (std::min)(w, c + 1);
      for (std::size_t k = 0; k < most; ++k) {
        const std::size_t d = triangle == Triangle::lower ? k : most - 1 - k;
        row[next] = static_cast<int>(triangle == Triangle::lower ? c + d : c - d);
        value[next] = v[d];
        next += v[d] != 0.0 ? 1U : 0U;
      }
    }
    begin[n] = static_cast<int>(next);
    return next;
  }
};

/// Where each entry of each member goes in the values of the columns: worked out once, then values follow without
/// search.
class Places {
 public:
  Places() = default;
  Places(const Job& job, const Columns& columns, Triangle triangle) {
    end_.reserve(job.numbers.size());
    for_each_member(job, shared_, [&](std::size_t i, const MemberEntries<double>& e) {
      for (std::size_t k = 0; k < e.count; ++k) {
        const int a = job.numbers[i][e.row[k]], b = job.numbers[i][e.column[k]];
        if ((a | b) < 0) continue;
        const int c = triangle == Triangle::lower ? (std::min)(a, b) : (std::max)(a, b);
        const int r = a + b - c;
        const int* last = columns.row + columns.begin[c + 1];
        const int* at = std::lower_bound<const int*>(columns.row + columns.begin[c], last, r);
        if (at == last || *at != r) continue;  // a sum that came out as zero
        to_.push_back(static_cast<std::int32_t>(at - columns.row));
        from_.push_back(static_cast<unsigned char>(k));
      }
      end_.push_back(to_.size());
    });
  }
  void fill(const Job& job, double* values, std::size_t count) {
    std::fill(values, values + count, 0.0);
    std::size_t k = 0;
    for_each_member(job, shared_, [&](std::size_t i, const MemberEntries<double>& e) {
      for (const std::size_t last = end_[i]; k < last; ++k) values[to_[k]] += e.value[from_[k]];
    });
  }

 private:
  std::vector<std::int32_t> to_;
  std::vector<unsigned char> from_;
  std::vector<std::size_t> end_;
  std::vector<MemberEntries<double>> shared_;
};

}  // namespace bench
