// SPDX-License-Identifier: MIT
// Results as tidy tables: one row for each thing measured, one column for each thing told, units in the names.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/vec3.hpp>

namespace baywork {

/// Nothing (not known, or not meant here), a number in SI units, a count, yes or no, words. Infinity is a number: the
/// utilisation where nothing resists, or of what is outside the scope. What is no number is told as nothing.
using DataCell = std::variant<std::monostate, double, std::size_t, bool, std::string>;

/// Stations, bays and panels are counted from 1, as in print.
struct DataTable {
  std::string name;  ///< "reactions": a file's name or a key
  std::vector<std::string> columns;
  std::vector<std::vector<DataCell>> rows;
};

namespace detail {

inline DataCell number_cell(double v) {
  if (!is_finite(v) && !is_infinite(v)) return {};
  return v == 0.0 ? 0.0 : v;  // no sign that means nothing
}
/// A part counted from 0, -1 where it is not said.
inline DataCell part_cell(int i) {
  if (i < 0) return {};
  return static_cast<std::size_t>(i) + 1;
}
/// Words, or nothing.
inline DataCell word_cell(std::string s) {
  if (s.empty()) return {};
  return s;
}

/// Adds cells to the last row of a table.
class RowFiller {
 public:
  explicit RowFiller(DataTable& t) : table_(t) { table_.rows.emplace_back().reserve(t.columns.size()); }
  RowFiller& operator<<(double v) { return put(number_cell(v)); }
  RowFiller& operator<<(std::size_t v) { return put(v); }
  RowFiller& operator<<(bool v) { return put(v); }
  RowFiller& operator<<(std::string v) { return put(std::move(v)); }
  RowFiller& operator<<(const char* v) { return put(std::string(v)); }
  RowFiller& operator<<(const Vec3<>& v) { return *this << v.x << v.y << v.z; }
  RowFiller& operator<<(DataCell c) { return put(std::move(c)); }

 private:
  RowFiller& put(DataCell c) {
    table_.rows.back().push_back(std::move(c));
    return *this;
  }
  DataTable& table_;
};

}  // namespace detail

/// Throws BadDescription where a row has another number of cells than there are columns, or a cell what is no number.
inline void validate(const DataTable& t) {
  for (std::size_t i = 0; i < t.rows.size(); ++i) {
    const std::vector<DataCell>& row = t.rows[i];
    const auto place = [&] { return "table " + t.name + ", row " + std::to_string(i + 1); };
    if (row.size() != t.columns.size())
      fail<BadDescription>(place(), "it has " + std::to_string(row.size()) + " cells",
                           std::to_string(t.columns.size()) + ", one for each column, are accepted");
    for (std::size_t c = 0; c < row.size(); ++c)
      if (const auto* v = std::get_if<double>(&row[c]); v != nullptr && !is_finite(*v) && !is_infinite(*v))
        fail<BadDescription>(place(), t.columns[c] + " is " + text::number(*v),
                             "a finite number, infinity or nothing is accepted");
  }
}

}  // namespace baywork
