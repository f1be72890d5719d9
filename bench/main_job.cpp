// SPDX-License-Identifier: MIT
// Cost of the main job's steps, beside a general sparse library that factors and solves the same stiffness matrix.
#include <benchmark/benchmark.h>

#include <Eigen/SparseCholesky>

#include <baywork/response.hpp>

#include "support/girders.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

Girder box(std::size_t bays) { return bench::girder(bench::Kind::box, bays); }

void describe_to_frame(benchmark::State& state) {
  const Girder g = box(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(model_of(g));
}

void frame_to_factor(benchmark::State& state) {
  const GirderModel m = model_of(box(static_cast<std::size_t>(state.range(0))));
  for (auto _ : state) benchmark::DoNotOptimize(FrameSolver(m.frame));
}

/// The library's own sparse path on the same matrix: assembly from triplets, analysis, factorisation, one solution.
void eigen_assemble_factor_solve(benchmark::State& state) {
  const detail::PreparedFrame<double> p(model_of(box(static_cast<std::size_t>(state.range(0)))).frame);
  const auto n = static_cast<Eigen::Index>(p.freedoms.count);
  const Eigen::VectorXd b = Eigen::VectorXd::Ones(n);
  for (auto _ : state) {
    std::vector<Eigen::Triplet<double>> t;
    for (const auto& e : p.stiffness_entries()) t.emplace_back(e.row, e.column, e.value);
    Eigen::SparseMatrix<double> k(n, n);
    k.setFromTriplets(t.begin(), t.end());
    Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>> llt(k);
    benchmark::DoNotOptimize(Eigen::VectorXd(llt.solve(b)));
  }
}

void one_more_load_certified(benchmark::State& state) {
  const Analysis a{box(static_cast<std::size_t>(state.range(0)))};
  const std::vector<Action> actions{point_load(ChordOf::bottom_left, 3.1, 1.0_kN)};
  Response r;
  AnalysisWorkspace space;
  for (auto _ : state) a.solve(actions, r, space);
}

void eigen_one_more_load(benchmark::State& state) {
  const detail::PreparedFrame<double> p(model_of(box(static_cast<std::size_t>(state.range(0)))).frame);
  const auto n = static_cast<Eigen::Index>(p.freedoms.count);
  std::vector<Eigen::Triplet<double>> t;
  for (const auto& e : p.stiffness_entries()) t.emplace_back(e.row, e.column, e.value);
  Eigen::SparseMatrix<double> k(n, n);
  k.setFromTriplets(t.begin(), t.end());
  const Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>> llt(k);
  const Eigen::VectorXd b = Eigen::VectorXd::Ones(n);
  Eigen::VectorXd x(n);
  for (auto _ : state) {
    x = llt.solve(b);
    benchmark::DoNotOptimize(x.data());
  }
}

BENCHMARK(describe_to_frame)->ArgName("bays")->Arg(24)->Arg(40)->Unit(benchmark::kMicrosecond);
BENCHMARK(frame_to_factor)->ArgName("bays")->Arg(24)->Arg(40)->Unit(benchmark::kMicrosecond);
BENCHMARK(eigen_assemble_factor_solve)->ArgName("bays")->Arg(24)->Arg(40)->Unit(benchmark::kMicrosecond);
BENCHMARK(one_more_load_certified)->ArgName("bays")->Arg(24)->Arg(40)->Unit(benchmark::kMicrosecond);
BENCHMARK(eigen_one_more_load)->ArgName("bays")->Arg(24)->Arg(40)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
