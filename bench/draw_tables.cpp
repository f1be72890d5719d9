// SPDX-License-Identifier: MIT
// Writes a run's tables into README.md, between its markers, and the figure beside it.
#include <cmath>
#include <cstdio>
#include <exception>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "support/chart.hpp"
#include "support/results.hpp"

namespace {

using namespace bench;

const std::vector<std::string> own{"chain", "chain_fast", "chain_uniform", "sparse", "certified"};

std::string time_words(double v) {
  char text[32];
  std::snprintf(text, sizeof text, v < 10 ? "%.1f" : "%.0f", v);
  return text;
}
std::string error_words(double v) {
  if (v < 0) return "none";
  char text[32];
  std::snprintf(text, sizeof text, "%.0e", v);
  return text;
}

template <class Words>
std::string table(const Rows& rows, const std::string& corner, Words words) {
  std::string out = "| " + corner + " |", rule = "|---|";
  const std::vector<std::size_t> bays = rows.bays();
  for (const std::size_t n : bays) {
    out.append(" ").append(std::to_string(n)).append(" |");
    rule += "---:|";
  }
  out += "\n" + rule + "\n";
  for (const auto& [name, series] : rows.rows) {
    out.append("| `").append(name).append("` |");
    for (const std::size_t n : bays)
      out.append(" ").append(series.count(n) != 0 ? words(series.at(n)) : "").append(" |");
    out += "\n";
  }
  return out + "\n";
}

std::string said_of(const Run& run, const std::string& key) {
  const auto at = run.context.find(key);
  return at == run.context.end() ? "not known" : at->second;
}

std::string tables(const Run& run, const Accuracy& accuracy, const std::string& figure) {
  const std::string file = figure.substr(figure.find_last_of('/') + 1);
  std::string out = "![Time per bay and error, by method, over the number of bays](" + file + ")\n\nOne thread at " +
                    said_of(run, "mhz_per_cpu") + " MHz, measured peak " + said_of(run, "peak_gflops") +
                    " GFlop/s; instructions: " + said_of(run, "instructions") +
                    "; libraries: " + said_of(run, "libraries") +
                    ".\nHalf-bandwidth of the box: " + said_of(run, "half_bandwidth_of_box") + ".\n";
  if (said_of(run, "library_build_type") == "debug")
    out += "The benchmark library reports itself as a debug build: short times carry a little more of its own cost.\n";
  out += "\nMedian times in µs over the number of bays. Box girder:\n\n";
  for (const char* task : {"full", "refactor", "factor", "one_load", "hundred_loads"})
    if (run.time.count(task) != 0) out += table(run.time.at(task), task, time_words);
  out += "Other girders:\n\n";
  for (const char* task : {"full/irregular", "full/triangular", "full/ladder"})
    if (run.time.count(task) != 0) out += table(run.time.at(task), task, time_words);
  if (run.bytes.count("factor") != 0) {
    out += "Bytes per bay that the factor of the box holds:\n\n";
    out += table(run.bytes.at("factor"), "bytes", [](double v) { return std::to_string(std::lround(v)); });
  }
  out += "Relative error of the mid-span deflection, then of member forces (each kind against its largest):\n\n";
  for (const auto& [girder, rows] : accuracy.deflection) {
    out += table(rows, girder + ", deflection", error_words);
    out += table(accuracy.forces.at(girder), girder + ", forces", error_words);
  }
  return out;
}

void put_between_markers(const std::string& file, const std::string& words) {
  std::ifstream in = bench::detail::opened(file);
  const std::string all{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  const std::string begin = "<!-- tables: begin -->\n", end = "<!-- tables: end -->";
  const std::size_t a = all.find(begin), b = all.find(end);
  if (a == std::string::npos || b == std::string::npos || b < a)
    baywork::fail<baywork::BadDescription>(file, "it has no place for the tables",
                                           "lines " + begin + "and " + end + " are accepted");
  std::ofstream(file) << all.substr(0, a + begin.size()) << words << all.substr(b);
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 5) {
    std::fprintf(stderr, "usage: bench_draw_tables SOLVE.json ACCURACY.csv README.md FIGURE.svg\n");
    return 1;
  }
  const Run run = read_run(argv[1]);
  const Accuracy accuracy = read_accuracy(argv[2]);
  put_between_markers(argv[3], tables(run, accuracy, argv[4]));
  Chart time{"From members to displacements", "µs per bay", {}, own},
      error{"Error of the mid-span deflection", "relative", {}, own};
  if (run.time.count("full") != 0)
    for (const auto& [name, series] : run.time.at("full").rows)
      for (const auto& [n, t] : series) time.rows[name][n] = t / static_cast<double>(n);
  if (accuracy.deflection.count("box") != 0) error.rows = accuracy.deflection.at("box");
  std::ofstream(argv[4]) << drawing({time, error});
  return 0;
} catch (const std::exception& e) {
  std::fprintf(stderr, "bench_draw_tables: %s\n", e.what());
  return 1;
}
