// SPDX-License-Identifier: MIT
// Tables of results as JSON (schema: docs/schema/results.schema.json).
#pragma once

#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/core/config.hpp>
#include <baywork/data/table.hpp>
#include <baywork/json/print.hpp>

namespace baywork {

/// {"format": "baywork results", "version": 1, "software": ..., "tables": {"cases": [{"case": "wind", ...}, ...],
/// ...}}: each table under its name, a row as an object. Nothing is null, infinity the word "infinite". The same tables
/// give the same bytes. Tables of one name, of several faces for example, become one. Throws BadDescription for a row
/// that does not fit its columns, or words that are not UTF-8.
inline void write_json(std::ostream& out, const std::vector<DataTable>& tables) {
  detail::Written all = {
      {"format", "baywork results"}, {"version", 1}, {"software", std::string("baywork ") + version_text}};
  detail::Written& in = all["tables"] = detail::Written::object();
  for (const DataTable& t : tables) {
    validate(t);
    detail::Written& rows = in[t.name];
    if (rows.is_null()) rows = detail::Written::array();
    for (const std::vector<DataCell>& row : t.rows) {
      detail::Written object = detail::Written::object();
      for (std::size_t c = 0; c < row.size(); ++c) {
        detail::Written& value = object[t.columns[c]];
        if (const auto* v = std::get_if<double>(&row[c]))
          value = is_finite(*v) ? detail::Written(*v) : detail::Written("infinite");
        if (const auto* n = std::get_if<std::size_t>(&row[c])) value = *n;
        if (const auto* b = std::get_if<bool>(&row[c])) value = *b;
        if (const auto* s = std::get_if<std::string>(&row[c])) value = detail::json_words(*s, "table " + t.name);
      }
      rows.push_back(std::move(object));
    }
  }
  detail::print_json(out, all);
  out << '\n';
}

}  // namespace baywork
