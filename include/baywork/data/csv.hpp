// SPDX-License-Identifier: MIT
// A table as comma-separated values (RFC 4180).
#pragma once

#include <ostream>
#include <string>
#include <string_view>

#include <baywork/core/text.hpp>
#include <baywork/data/table.hpp>

namespace baywork {

namespace detail {

/// RFC 4180, 2.5 to 2.7: in quotation marks where a comma, quotation mark or line break is inside, the marks doubled.
/// An empty text is written "", so that it is not taken for a cell with nothing in it.
inline void write_csv_text(std::ostream& out, std::string_view s) {
  if (!s.empty() && s.find_first_of(",\"\r\n") == std::string_view::npos) {
    out << s;
    return;
  }
  out << '"';
  for (const char c : s) {
    if (c == '"') out << '"';
    out << c;
  }
  out << '"';
}

}  // namespace detail

/// A line of column names, then one for each row, each ended by CR LF. Numbers read back as the same numbers, infinity
/// is `inf`, yes and no are `true` and `false`, and nothing is an empty cell. Words are written as they are: a
/// spreadsheet takes those that begin with = + - @ for formulas.
inline std::ostream& write_csv(std::ostream& out, const DataTable& t) {
  validate(t);
  const char* comma = "";
  for (const std::string& c : t.columns) {
    out << comma;
    detail::write_csv_text(out, c);
    comma = ",";
  }
  out << "\r\n";
  for (const std::vector<DataCell>& row : t.rows) {
    comma = "";
    for (const DataCell& cell : row) {
      out << comma;
      if (const auto* v = std::get_if<double>(&cell)) out << text::exact(*v);
      if (const auto* n = std::get_if<std::size_t>(&cell)) out << std::to_string(*n);
      if (const auto* b = std::get_if<bool>(&cell)) out << (*b ? "true" : "false");
      if (const auto* s = std::get_if<std::string>(&cell)) detail::write_csv_text(out, *s);
      comma = ",";
    }
    out << "\r\n";
  }
  return out;
}

}  // namespace baywork
