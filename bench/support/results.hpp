// SPDX-License-Identifier: MIT
// Reads what the benchmark programs wrote.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>

namespace bench {

/// One curve or one row of a table: values over numbers of bays. A negative value: the method has no answer.
using Series = std::map<std::size_t, double>;

/// Rows in the order in which they were first met.
struct Rows {
  std::vector<std::pair<std::string, Series>> rows;

  Series& operator[](const std::string& name) {
    const auto at = std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.first == name; });
    if (at != rows.end()) return at->second;
    return rows.emplace_back(name, Series{}).second;
  }
  std::vector<std::size_t> bays() const {
    std::vector<std::size_t> all;
    for (const auto& r : rows)
      for (const auto& [n, value] : r.second)
        if (std::find(all.begin(), all.end(), n) == all.end()) all.push_back(n);
    std::sort(all.begin(), all.end());
    return all;
  }
};

/// Medians of a run: by task and girder ("full", "full/ladder", ...), the methods' times [µs] and bytes per bay.
struct Run {
  std::map<std::string, Rows> time, bytes;
  std::map<std::string, std::string> context;
};

namespace detail {

inline std::ifstream opened(const std::string& file) {
  std::ifstream in(file);
  if (!in)
    baywork::fail<baywork::BadDescription>(file, "it cannot be read",
                                           "a file that a benchmark program wrote is accepted");
  return in;
}

/// Key and value of a line `"key": value,`; quotes taken off.
inline std::pair<std::string, std::string> key_and_value(const std::string& line) {
  const std::size_t a = line.find('"'), b = line.find("\": ");
  if (a == std::string::npos || b == std::string::npos) return {};
  std::string value = line.substr(b + 3);
  while (!value.empty() && (value.back() == ',' || value.back() == '\r')) value.pop_back();
  if (value.size() >= 2 && value.front() == '"') value = value.substr(1, value.size() - 2);
  return {line.substr(a + 1, b - a - 1), value};
}

inline std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) parts.push_back(part);
  return parts;
}

}  // namespace detail

/// Google Benchmark's JSON, which has one key on each line. Methods come in the order of the program's registration.
inline Run read_run(const std::string& file) {
  std::ifstream in = detail::opened(file);
  Run run;
  std::vector<std::pair<int, std::map<std::string, std::string>>> medians;
  std::map<std::string, std::string> entry;
  bool in_context = true;
  for (std::string line; std::getline(in, line);) {
    if (line.find("\"benchmarks\"") != std::string::npos) in_context = false;
    const auto [key, value] = detail::key_and_value(line);
    if (!key.empty()) (in_context ? run.context : entry)[key] = value;
    if (!in_context && line.find('}') != std::string::npos) {
      if (entry["aggregate_name"] == "median") medians.emplace_back(std::atoi(entry["family_index"].c_str()), entry);
      entry.clear();
    }
  }
  std::stable_sort(medians.begin(), medians.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [order, m] : medians) {
    const std::vector<std::string> part = detail::split(m["run_name"], '/');  // task, method, girder if not box, bays:n
    if (part.size() < 3 || part.back().rfind("bays:", 0) != 0) continue;
    const std::string group = part.size() == 4 ? part[0] + "/" + part[2] : part[0];
    const auto bays = static_cast<std::size_t>(std::strtoul(part.back().c_str() + 5, nullptr, 10));
    run.time[group][part[1]][bays] = std::atof(m["real_time"].c_str());
    run.bytes[group][part[1]][bays] = std::atof(m["bytes_per_bay"].c_str());
  }
  return run;
}

/// By girder: the methods' errors of mid-span deflection and of member forces.
struct Accuracy {
  std::map<std::string, Rows> deflection, forces;
};

inline Accuracy read_accuracy(const std::string& file) {
  std::ifstream in = detail::opened(file);
  Accuracy a;
  std::string line;
  std::getline(in, line);  // the heading
  while (std::getline(in, line)) {
    const std::vector<std::string> part = detail::split(line, ',');
    if (part.size() != 5) continue;
    const auto bays = static_cast<std::size_t>(std::strtoul(part[2].c_str(), nullptr, 10));
    a.deflection[part[0]][part[1]][bays] = part[3] == "none" ? -1.0 : std::atof(part[3].c_str());
    a.forces[part[0]][part[1]][bays] = part[4] == "none" ? -1.0 : std::atof(part[4].c_str());
  }
  return a;
}

}  // namespace bench
