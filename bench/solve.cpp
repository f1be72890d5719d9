// SPDX-License-Identifier: MIT
// One run that compares baywork's ways of solving a girder with general libraries, each used as its documentation
// advises.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <exception>
#include <map>
#include <memory>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response.hpp>
#include <baywork/solve/frame_solver.hpp>

#include "support/methods.hpp"
#include "support/peak.hpp"
#include "support/uniform_method.hpp"

namespace {

using namespace bench;

double peak_flops = 0;

/// Girders stay prepared for all methods and repetitions.
const Job& job_of(Kind kind, std::size_t bays) {
  static std::map<std::pair<Kind, std::size_t>, std::unique_ptr<Job>> jobs;
  std::unique_ptr<Job>& job = jobs[{kind, bays}];
  if (!job) job = std::make_unique<Job>(kind, bays);
  return *job;
}

enum class Task { full, refactor, factor, one_load, hundred_loads };

const char* name(Task t) {
  constexpr std::array<const char*, 5> names{"full", "refactor", "factor", "one_load", "hundred_loads"};
  return names[static_cast<std::size_t>(t)];
}

template <bench::Method M>
void run(benchmark::State& state, Task task, Kind kind, std::size_t bays) {
  const Job& job = job_of(kind, bays);
  M method(job);
  if (!method.good()) {
    state.SkipWithError("not positive definite");
    return;
  }
  const std::size_t count = task == Task::hundred_loads ? 100 : 1;
  if constexpr (requires { method.for_further_loads(); })
    if (task == Task::one_load || task == Task::hundred_loads) method.for_further_loads();
  const std::vector<double> b = job.right_hand_sides(method.number(), length_of(method), count);
  std::vector<double> x(b.size());
  for (auto _ : state) {
    switch (task) {
      case Task::full: method.full(b.data(), x.data()); break;
      case Task::refactor: method.refactor(); break;
      case Task::factor: method.factor(); break;
      default: method.solve(b.data(), x.data(), count);
    }
    benchmark::DoNotOptimize(x.data());
    benchmark::ClobberMemory();
  }
  double flops = 0;
  if (task == Task::full || task == Task::refactor || task == Task::factor) flops += method.factor_flops();
  if (task != Task::refactor && task != Task::factor) flops += method.solve_flops() * static_cast<double>(count);
  state.counters["bytes_per_bay"] = method.factor_bytes() / static_cast<double>(bays);
  if (!(flops > 0)) return;
  state.counters["flops"] = flops;
  state.counters["share_of_peak"] =
      benchmark::Counter(flops / peak_flops, benchmark::Counter::kIsIterationInvariantRate);
}

template <bench::Method M>
void add(Task task, Kind kind, std::size_t bays) {
  const std::string which = kind == Kind::box ? "" : std::string("/") + bench::name(kind);
  const std::string row = std::string(name(task)) + "/" + M::name + which + "/bays:" + std::to_string(bays);
  benchmark::RegisterBenchmark(row.c_str(), run<M>, task, kind, bays)->Unit(benchmark::kMicrosecond);
}

void run_uniform(benchmark::State& state, Task task, std::size_t bays) {
  ChainUniform method(job_of(Kind::box, bays), task == Task::hundred_loads ? 100 : 1);
  for (auto _ : state) {
    method.solve();
    benchmark::DoNotOptimize(method.middle());
    benchmark::ClobberMemory();
  }
}
void add_uniform(std::size_t bays) {
  for (const Task t : {Task::full, Task::one_load, Task::hundred_loads}) {
    const std::string row = std::string(name(t)) + "/" + ChainUniform::name + "/bays:" + std::to_string(bays);
    benchmark::RegisterBenchmark(row.c_str(), run_uniform, t, bays)->Unit(benchmark::kMicrosecond);
  }
}

/// A point load between two joints, put in girder words, to the forces in all members: kept analysis and response.
void run_point_load(benchmark::State& state, std::size_t bays) {
  const Analysis analysis{girder(Kind::box, bays)};
  const std::vector<Action> actions{point_load(ChordOf::bottom_left, 0.26 * static_cast<double>(bays), 1.0_kN)};
  Response response;
  AnalysisWorkspace space;
  for (auto _ : state) {
    analysis.solve(actions, response, space);
    benchmark::ClobberMemory();
  }
}

/// Largest difference of displacements from the certified answer, against the largest displacement; likewise rotations.
template <bench::Method M>
double difference(const FrameAnswer& right, const M& method, const std::vector<double>& x) {
  double worst[2] = {0, 0}, largest[2] = {0, 0};
  for (std::size_t i = 0; i < right.motions.size(); ++i) {
    const int at = method.number()[i];
    const double found = at >= 0 ? x[static_cast<std::size_t>(at)] : 0.0;
    const std::size_t kind = i % 6 < 3 ? 0 : 1;
    largest[kind] = (std::max)(largest[kind], std::abs(right.motions[i]));
    worst[kind] = (std::max)(worst[kind], std::abs(found - right.motions[i]));
  }
  const double all = (std::max)(worst[0] / largest[0], worst[1] / largest[1]);
  return std::isnan(all) ? 1.0 : all;
}

/// Every way through a method must lead to the certified answer; false, and said, where one does not.
template <bench::Method M>
bool right(Kind kind) {
  const Job& job = job_of(kind, 40);
  const FrameAnswer answer = FrameSolver(job.prepared.frame).solve(job.loads);
  M method(job);
  const std::vector<double> b = job.right_hand_sides(method.number(), length_of(method), 3);
  std::vector<double> x(b.size(), 0.0);
  const auto met = [&](const char* way) {
    const double d = method.good() ? difference(answer, method, x) : 1.0;
    if (d <= 1e-6) return true;
    std::fprintf(stderr, "bench_solve: %s is wrong by %.1e (%s, %s)\n", M::name, d, bench::name(kind), way);
    return false;
  };
  method.full(b.data(), x.data());
  bool all = met("full");
  std::fill(x.begin(), x.end(), 0.0);
  method.refactor();
  method.solve(b.data(), x.data(), 1);
  all = met("refactor and one load") && all;
  std::fill(x.begin(), x.end(), 0.0);
  method.factor();
  method.solve(b.data(), x.data(), 3);
  all = met("factor and several loads") && all;
  if constexpr (requires { method.for_further_loads(); }) {
    method.for_further_loads();
    method.solve(b.data(), x.data(), 3);
    all = met("a factor for further loads") && all;
  }
  const std::vector<double> first(x.begin() + static_cast<std::ptrdiff_t>(2 * length_of(method)), x.end());
  method.solve(b.data() + 2 * length_of(method), x.data(), 1);
  for (std::size_t i = 0; i < first.size(); ++i)
    if (!(std::abs(first[i] - x[i]) <= 1e-9 * (std::abs(x[i]) + 1e-3))) {
      std::fprintf(stderr, "bench_solve: %s answers the same load differently alone and among others\n", M::name);
      return false;
    }
  return all;
}

bool uniform_right() {
  const Job& job = job_of(Kind::box, 40);
  const FrameAnswer answer = FrameSolver(job.prepared.frame).solve(job.loads);
  ChainUniform method(job);
  method.solve();
  const double right = answer.motions[6 * job.mid_node + 2], d = std::abs(method.middle()[2] / right - 1);
  if (d <= 1e-9) return true;
  std::fprintf(stderr, "bench_solve: %s is wrong by %.1e\n", ChainUniform::name, d);
  return false;
}

std::vector<std::size_t> bays_asked_for(int& argc, char** argv) {
  std::string list = "10,40,160,1000";
  int kept = 1;
  for (int i = 1; i < argc; ++i) {
    const std::string a = argv[i];
    if (a.rfind("--bays=", 0) == 0)
      list = a.substr(7);
    else
      argv[kept++] = argv[i];
  }
  argc = kept;
  std::vector<std::size_t> bays;
  std::istringstream in(list);
  for (std::string word; std::getline(in, word, ',');) bays.push_back(std::stoul(word));
  return bays;
}

}  // namespace

int main(int argc, char** argv) try {
  use_one_thread();
  const std::vector<std::size_t> bays = bays_asked_for(argc, argv);
  // What the command line says comes later and stands.
  std::vector<std::string> words{argv[0], "--benchmark_enable_random_interleaving=true", "--benchmark_repetitions=5",
                                 "--benchmark_min_time=0.05", "--benchmark_report_aggregates_only=true"};
  words.insert(words.end(), argv + 1, argv + argc);
  std::vector<char*> all;
  for (std::string& w : words) all.push_back(w.data());
  int count = static_cast<int>(all.size());
  benchmark::Initialize(&count, all.data());
  if (benchmark::ReportUnrecognizedArguments(count, all.data())) return 1;

  bool good = true;
  for_each_method([&]<class M>() {
    for (const Kind s : {Kind::box, Kind::irregular, Kind::triangular, Kind::ladder}) good = right<M>(s) && good;
  });
  if (!uniform_right() || !good) return 1;

  peak_flops = measured_peak();
  char peak[32];
  std::snprintf(peak, sizeof peak, "%.1f", peak_flops / 1e9);
  benchmark::AddCustomContext("peak_gflops", peak);
  benchmark::AddCustomContext("libraries", libraries());
  benchmark::AddCustomContext("half_bandwidth_of_box", std::to_string(job_of(Kind::box, 40).numbering.half_band));
#ifdef BAYWORK_BENCH_NATIVE
  benchmark::AddCustomContext("instructions", "of this machine (-march=native)");
#else
  benchmark::AddCustomContext("instructions", "the compiler's default");
#endif

  for_each_method([&]<class M>() {
    for (const std::size_t n : bays) {
      for (const Task t : {Task::full, Task::refactor, Task::factor, Task::one_load, Task::hundred_loads})
        add<M>(t, Kind::box, n);
      for (const Kind s : {Kind::irregular, Kind::triangular, Kind::ladder}) add<M>(Task::full, s, n);
    }
  });
  for (const std::size_t n : bays) {
    if (ChainUniform::takes(n)) add_uniform(n);
    benchmark::RegisterBenchmark(("point_load/certified/bays:" + std::to_string(n)).c_str(), run_point_load, n)
        ->Unit(benchmark::kMicrosecond);
  }
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return 0;
} catch (const std::exception& e) {
  std::fprintf(stderr, "bench_solve: %s\n", e.what());
  return 1;
}
