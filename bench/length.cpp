// SPDX-License-Identifier: MIT
// Time and memory from a thousand bays to a million: the frame checked and factored, one load solved and certified.
// Memory is what comes on top of the frame.
#if defined(__GLIBC__) || __has_include(<malloc.h>)
#include <malloc.h>
#endif

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <fstream>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/solve/frame_solver.hpp>

#include "support/girders.hpp"

namespace {

/// Resident memory of this process [bytes], now or at its largest; 0 where the system does not tell in this way.
double resident(const char* which) {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.rfind(which, 0) == 0) return 1024.0 * std::strtod(line.c_str() + std::string(which).size(), nullptr);
  return 0;
}
/// Gives back what is free, so that memory taken from now on shows.
void forget_largest() {
#ifdef __GLIBC__
  malloc_trim(0);
#endif
  std::ofstream("/proc/self/clear_refs") << "5";
}
/// Keeps what is freed from now on, so that fresh pages, which cost more than arithmetic on some systems, are met once.
void keep_memory() {
#ifdef __GLIBC__
  mallopt(M_MMAP_MAX, 0);
  mallopt(M_TRIM_THRESHOLD, -1);
#endif
}

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Measured {
  double bays = 0, factor = 0, solve = 0;
};

Measured measure(bench::Kind kind, std::size_t bays) {
  using namespace baywork;
  using namespace baywork::literals;
  Measured m{static_cast<double>(bays), 1e300, 1e300};
  for (int run = 0; run < 3; ++run) {  // the first for memory, the others for time
    GirderModel model = model_of(bench::girder(kind, bays));
    const std::size_t mid_node = model.chord_node(bays / 2, 0);
    Frame frame = std::move(model.frame);
    model = {};
    FrameLoads loads;
    for (std::size_t i = 0; i < frame.nodes.size(); ++i) loads.force(i, {0.0, 0.0, -1.0_kN});
    if (run == 0) forget_largest();
    const double before = resident("VmRSS:");
    auto start = std::chrono::steady_clock::now();
    const FrameSolver solver(std::move(frame));
    m.factor = (std::min)(m.factor, seconds_since(start));
    const double peak_factor = resident("VmHWM:") - before;
    SolveWorkspace space;
    FrameAnswer answer;
    for (int again = 0; again < 3; ++again) {
      start = std::chrono::steady_clock::now();
      solver.solve(loads, answer, space);
      m.solve = (std::min)(m.solve, seconds_since(start));
      if (run == 0 && again == 0)
        std::printf("%10zu  %-22s %12.1f %12.3f %12.3f   %.1e  %.6e", bays, name(solver.path()),
                    static_cast<double>(solver.factor_bytes()) / m.bays, peak_factor / 1e9,
                    (resident("VmHWM:") - before) / 1e9, answer.certificate.worst(), answer.motions[6 * mid_node + 2]);
    }
  }
  std::printf(" %10.4f %10.4f\n", m.factor, m.solve);
  std::fflush(stdout);
  return m;
}

}  // namespace

int main(int argc, char** argv) try {
  std::string list = "1000,10000,100000";
  if (argc > 1) list = argv[1];
  std::vector<std::size_t> bays;
  std::istringstream in(list);
  for (std::string word; std::getline(in, word, ',');) bays.push_back(std::stoul(word));
  keep_memory();
  for (const bench::Kind kind : {bench::Kind::box, bench::Kind::irregular}) {
    std::printf("%s\n%10s  %-22s %12s %12s %12s   %s  %s %10s %10s\n", bench::name(kind), "bays", "path", "factor B/bay",
                "made [GB]", "solved [GB]", "certified", "middle [m]   ", "made [s]", "solved [s]");
    std::vector<Measured> all;
    for (const std::size_t n : bays)
      if (kind == bench::Kind::box || n <= 100000) all.push_back(measure(kind, n));  // else each bay keeps its own
    if (all.size() < 2) continue;
    const Measured &a = all.front(), &b = all.back();
    const double decades = std::log(b.bays / a.bays);
    std::printf("cost exponent: made %.3f, solved %.3f, both %.3f\n", std::log(b.factor / a.factor) / decades,
                std::log(b.solve / a.solve) / decades,
                std::log((b.factor + b.solve) / (a.factor + a.solve)) / decades);
  }
  return 0;
} catch (const std::exception& e) {
  std::fprintf(stderr, "bench_length: %s\n", e.what());
  return 1;
}
