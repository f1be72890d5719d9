// SPDX-License-Identifier: MIT
// The kept fast factor of a chain: many loads side by side against one at a time and against the frame's own stiffness,
// with bays joined and one by one.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <random>
#include <vector>

#include <doctest/doctest.h>

#include <Eigen/Core>
#include <Eigen/SparseCore>

#include <baywork/frame.hpp>
#include <baywork/girder.hpp>
#include <baywork/solve.hpp>
#include <baywork/solve/detail/chain_engine.hpp>

#include "support/tubes.hpp"

using namespace baywork;

namespace {

GirderModel box(std::size_t bays, bool irregular) {
  std::mt19937 g(7);
  std::uniform_real_distribution<double> u(0.8, 1.2);
  BoxGirder b{.bay_lengths = std::vector<double>(bays, 0.5), .width = 0.4, .depth = 0.5, .chord = chord_bar()};
  if (irregular)
    for (double& l : b.bay_lengths) l *= u(g);
  const Face side = braced(alternating, brace_bar(), cross_bar());
  b.faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side};
  b.diaphragms = end_diaphragms(brace_bar());
  b.supports = simply_supported();
  return model_of(b.girder());
}
GirderModel ladder(std::size_t bays) {
  const LadderGirder l{.bay_lengths = std::vector<double>(bays, 0.5), .depth = 0.5, .chord = chord_bar(), .web = open(cross_bar()), .supports = simply_supported()};
  return model_of(l.girder());
}

/// `space` comes from other girders: what it keeps of a factor must not be taken for another's.
void check_many(const GirderModel& m, std::size_t longest, detail::FastChain<double>::ManySpace& space) {
  CAPTURE(longest);
  const detail::PreparedFrame<double> p(m.frame);
  detail::ChainLayout layout = detail::ChainFinder<double>(p.frame).find();
  REQUIRE(layout.why_not.empty());
  detail::ChainEngine<double> engine(p, layout);
  REQUIRE(engine.factor(p, true, longest, one_after_the_other));
  const detail::ChainRuns<double>& runs = engine.runs();
  CHECK((longest == 1) == (runs.stations() == layout.stations.size()));

  // The stiffness in the order of the solver's vectors; places of motions that are held or nobody's hold nothing.
  const std::size_t n = runs.length();
  std::vector<Eigen::Index> place(6 * p.frame.nodes.size(), -1);
  for (std::size_t s = 0; s < layout.stations.size(); ++s) {
    std::size_t at = runs.start(s);
    for (const std::uint32_t* i = layout.stations.begin(s); i != layout.stations.end(s); ++i)
      for (std::size_t k = 0; k < 6; ++k, ++at)
        if (const int number = p.freedoms.of(*i, k); number >= 0) place[static_cast<std::size_t>(number)] = static_cast<Eigen::Index>(at);
  }
  Eigen::MatrixXd k = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(n), static_cast<Eigen::Index>(n));
  for (const auto& e : p.stiffness_entries()) {
    const Eigen::Index r = place[static_cast<std::size_t>(e.row)], c = place[static_cast<std::size_t>(e.column)];
    k(r, c) += e.value;
    if (r != c) k(c, r) += e.value;
  }
  std::vector<double> work(engine.work_size());
  for (const std::size_t count : {std::size_t{0}, std::size_t{1}, std::size_t{5}, std::size_t{8}, std::size_t{29}, std::size_t{70}}) {
    CAPTURE(count);
    const std::size_t ld = n + 3;
    Eigen::MatrixXd b = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(ld), static_cast<Eigen::Index>(count));
    std::mt19937 g(static_cast<unsigned>(count));
    std::uniform_real_distribution<double> u(-1.0, 1.0);
    for (Eigen::Index c = 0; c < b.cols(); ++c)
      for (const Eigen::Index at : place)
        if (at >= 0) b(at, c) = u(g);
    Eigen::MatrixXd x = Eigen::MatrixXd::Constant(b.rows(), b.cols(), 9.0), in_place = b;
    engine.fast().solve_many(b.data(), x.data(), ld, count, space);
    engine.fast().solve_many(in_place.data(), in_place.data(), ld, count, space);
    for (Eigen::Index c = 0; c < b.cols(); ++c) {
      Eigen::VectorXd one = b.col(c).head(static_cast<Eigen::Index>(n));
      runs.gather(one.data(), work.data());
      engine.fast().solve(one.data(), work.data());
      runs.spread(one.data());
      Eigen::VectorXd many = Eigen::VectorXd::Zero(one.size()), f = many;
      for (const Eigen::Index at : place)
        if (at >= 0) {
          many(at) = x(at, c);
          f(at) = b(at, c);
          CHECK(in_place(at, c) == x(at, c));
        }
      // Stable elimination leaves a residual of a small multiple of n eps |K| |x|, however ill-conditioned K is.
      const double bound = 100.0 * 2.3e-16 * k.cwiseAbs().rowwise().sum().maxCoeff() * many.cwiseAbs().maxCoeff();
      CHECK((k * many - f).cwiseAbs().maxCoeff() <= bound);
      CHECK((many - one).cwiseAbs().maxCoeff() <= 1e-11 * one.cwiseAbs().maxCoeff());
    }
  }
}

}  // namespace

TEST_CASE("a kept fast factor: many loads at once are each of them alone, and balance the stiffness") {
  detail::FastChain<double>::ManySpace space;
  for (const std::size_t longest : {std::size_t{1}, std::size_t{64}}) {
    check_many(box(40, false), longest, space);
    check_many(box(21, false), longest, space);
    check_many(ladder(24), longest, space);
  }
  check_many(box(12, true), 1, space);  // no two bays alike
}
