// SPDX-License-Identifier: MIT
// Writes a run's tables into bench/README.md, between its markers, the figure beside it, and a summary into README.md.
#include <algorithm>
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
  for (const char* task : {"full", "refactor", "factor", "one_load", "hundred_loads", "point_load"})
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

/// A method of this row and its value; the least one where `names` is empty: of the sparse libraries.
struct Best {
  std::string name;
  double value = -1;
};
Best best_of(const Rows& rows, std::size_t bays, const std::vector<std::string>& names) {
  Best best;
  for (const auto& [name, series] : rows.rows) {
    const bool sparse = std::find(own.begin(), own.end(), name) == own.end() && name != "lapack_band";
    if (names.empty() ? !sparse : std::find(names.begin(), names.end(), name) == names.end()) continue;
    const auto at = series.find(bays);
    if (at != series.end() && at->second >= 0 && (best.value < 0 || at->second < best.value)) best = {name, at->second};
  }
  return best;
}

/// The few numbers that a reader of the first page wants.
std::string summary(const Run& run, const Accuracy& accuracy) {
  std::string out = "| box girder, times in µs | baywork | best sparse library | LAPACK band |\n|---|---:|---:|---:|\n";
  const auto line = [&](const char* words, const char* task, std::size_t bays, const char* method) {
    const auto rows = run.time.find(task);
    if (rows == run.time.end()) return;
    out.append("| ").append(words);
    for (const std::vector<std::string>& names : std::vector<std::vector<std::string>>{{method}, {}, {"lapack_band"}}) {
      const Best best = best_of(rows->second, bays, names);
      out.append(" | ").append(best.value < 0 ? "" : time_words(best.value));
      if (names.empty() && best.value >= 0) out.append(" (`").append(best.name).append("`)");
    }
    out += " |\n";
  };
  line("40 bays: from checked members to displacements", "full", 40, "chain_fast");
  line("40 bays: one further load", "one_load", 40, "chain_fast");
  line("the same, certified, with all member forces", "one_load", 40, "certified");
  line("40 bays: a hundred loads", "hundred_loads", 40, "chain_fast");
  line("1000 bays: from checked members to displacements", "full", 1000, "chain_fast");
  line("the same, counted in deformations", "full", 1000, "chain");
  line("1000 equal bays, mid-span alone (`UniformRun`)", "full", 1000, "chain_uniform");
  const auto box = accuracy.deflection.find("box");
  if (box == accuracy.deflection.end()) return out + "\n";
  out += "\n| relative error of the mid-span deflection | ";
  std::string rule = "\n|---|", certified = "\n| baywork, certified | ", best = "\n| best general library | ";
  for (const std::size_t n : box->second.bays()) {
    out.append(std::to_string(n)).append(" bays | ");
    rule += "---:|";
    certified.append(error_words(best_of(box->second, n, {"certified"}).value)).append(" | ");
    const Best sparse = best_of(box->second, n, {}), band = best_of(box->second, n, {"lapack_band"});
    const bool first = band.value < 0 || (sparse.value >= 0 && sparse.value < band.value);
    best.append(error_words(first ? sparse.value : band.value)).append(" | ");
  }
  return out + rule + certified + best + "\n\n";
}

void put_between_markers(const std::string& file, const std::string& what, const std::string& words) {
  std::ifstream in = bench::detail::opened(file);
  const std::string all{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  const std::string begin = "<!-- " + what + ": begin -->\n", end = "<!-- " + what + ": end -->";
  const std::size_t a = all.find(begin), b = all.find(end);
  if (a == std::string::npos || b == std::string::npos || b < a)
    baywork::fail<baywork::BadDescription>(file, "it has no place for the tables",
                                           "lines " + begin + "and " + end + " are accepted");
  std::ofstream(file) << all.substr(0, a + begin.size()) << words << all.substr(b);
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 6) {
    std::fprintf(stderr, "usage: bench_draw_tables SOLVE.json ACCURACY.csv bench/README.md FIGURE.svg README.md\n");
    return 1;
  }
  const Run run = read_run(argv[1]);
  const Accuracy accuracy = read_accuracy(argv[2]);
  put_between_markers(argv[3], "tables", tables(run, accuracy, argv[4]));
  put_between_markers(argv[5], "solver numbers", summary(run, accuracy));
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
