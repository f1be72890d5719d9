// SPDX-License-Identifier: MIT
// JSON as text that people read and compare line by line: the same value gives the same bytes.
#pragma once

#include <cstddef>
#include <ostream>
#include <string>

#include <nlohmann/json.hpp>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>

namespace baywork::detail {

/// Keys stay in the order they were given in.
using Written = nlohmann::ordered_json;

/// One line where that has up to 100 characters, else one line for each part. Numbers by the shortest text that reads
/// back as the same bits.
inline void print_json(std::ostream& out, const Written& v, std::size_t indent = 0) {
  if (!v.is_structured() || v.empty()) {
    out << v.dump();
    return;
  }
  // parts are looked at only where the whole may be short: a long list is not written twice
  if (v.size() <= 20) {
    const std::string line = v.dump();
    if (line.size() <= 100) {
      out << line;
      return;
    }
  }
  const std::string gap(indent + 1, ' ');
  const char* before = v.is_object() ? "{\n" : "[\n";
  for (auto i = v.begin(); i != v.end(); ++i) {
    out << before << gap;
    if (v.is_object()) out << Written(i.key()).dump() << ": ";
    print_json(out, *i, indent + 1);
    before = ",\n";
  }
  out << '\n' << std::string(indent, ' ') << (v.is_object() ? '}' : ']');
}

/// Words as JSON. Throws BadDescription where they are not UTF-8: JSON has no way to write them.
inline Written json_words(const std::string& s, const std::string& place) {
  const std::string line = Written(s).dump(-1, ' ', false, Written::error_handler_t::replace);
  if (line.find("\xEF\xBF\xBD") != std::string::npos && Written::parse(line).get_ref<const std::string&>() != s)
    fail<BadDescription>(place, "a name or text is not UTF-8", "text in UTF-8 is accepted");
  return s;
}

}  // namespace baywork::detail
