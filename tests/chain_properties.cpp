// SPDX-License-Identifier: MIT
// Thousands of random girders on every path of the solver, each held against a solution with 106 bits made apart from
// the library's; and what must not change an answer: threads, and the way a frame has come to be what it is.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/frame.hpp>
#include <baywork/solve.hpp>
#include <baywork/solve/two_threads.hpp>

#include "support/random_described_girders.hpp"
#include "support/reference_solution.hpp"
#include "support/true_error.hpp"

using namespace baywork;
using girders::Random;
using girders::RandomGirder;

namespace {

constexpr std::array<SolvePath, 4> paths{SolvePath::automatic, SolvePath::chain, SolvePath::chain_fast,
                                         SolvePath::sparse};

std::string words(std::uint64_t seed, const RandomGirder& g) {
  return "seed " + std::to_string(seed) + ", " + g.character + ", " + std::to_string(g.chords) + " chords, " +
         std::to_string(g.bays) + " bays";
}

/// Whether a frame can be solved that way.
bool takes(const Frame& f, SolvePath path) {
  try {
    return FrameSolver(f, SolverOptions{.path = path}).path() == path;
  } catch (const Error&) {
    return false;
  }
}

/// Certified against true errors, motions and forces apart.
struct Tally {
  std::vector<double> ratios;
  double certified = 0, off = 0;

  void check(const FrameAnswer& a, const std::array<double, 2>& error) {
    const std::array<double, 2> promised{a.certificate.displacement_error, a.certificate.force_error};
    for (std::size_t k = 0; k < 2; ++k) {
      CHECK(promised[k] >= error[k]);
      ratios.push_back(promised[k] / (std::max)(error[k], std::ldexp(1.0, -54)));
      certified = (std::max)(certified, promised[k]);
      off = (std::max)(off, error[k]);
    }
  }
  double median() {
    std::sort(ratios.begin(), ratios.end());
    return ratios[ratios.size() / 2];
  }
};

/// Motions and forces of both answers are the same to the last bit.
bool same(const FrameAnswer& a, const FrameAnswer& b) {
  bool all = a.motions == b.motions;
  for (std::size_t i = 0; i < a.members.size(); ++i)
    all = all && a.members[i].start == b.members[i].start && a.members[i].end == b.members[i].end;
  return all;
}

/// A changed solver and one made anew from the changed frame differ by no more than both certify.
void agree(const RandomGirder& g, const FrameSolver& changed, const FrameSolver& anew) {
  const FrameAnswer a = changed.solve(g.loads), b = anew.solve(g.loads);
  BasicFrameAnswer<reference::Number> wide;
  wide.motions.assign(b.motions.begin(), b.motions.end());
  for (const MemberAnswer& m : b.members) {
    wide.members.emplace_back();
    std::copy(m.start.begin(), m.start.end(), wide.members.back().start.begin());
    std::copy(m.end.begin(), m.end.end(), wide.members.back().end.begin());
  }
  const std::array<double, 2> apart = true_error(anew.frame(), g.loads, a, wide);
  CHECK(apart[0] <= a.certificate.displacement_error + b.certificate.displacement_error);
  CHECK(apart[1] <= a.certificate.force_error + b.certificate.force_error);
}

/// Other restraints that hold the same motions.
std::array<Restraint, 6> held_otherwise(Random& r, std::array<Restraint, 6> motion) {
  for (Restraint& m : motion)
    if (m.kind != Restraint::Kind::free && r.chance(0.7)) {
      m.kind = m.kind == Restraint::Kind::fixed || r.chance(0.5) ? Restraint::Kind::spring : Restraint::Kind::fixed;
      m.stiffness = girders::springiness(r);
    }
  return motion;
}

}  // namespace

TEST_CASE("random girders: on every path the certified error is never below the true one and seldom far above it") {
  std::map<SolvePath, Tally> asked;
  std::map<SolvePath, std::size_t> taken;
  std::map<std::size_t, int> chords;
  double correction = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    const RandomGirder g = girders::random_girder(seed);
    INFO(words(seed, g));
    ++chords[g.chords];
    reference::Solution exact(g.frame);
    REQUIRE(exact.sound());
    const reference::Answer truth = exact.solve(g.loads);
    correction = (std::max)(correction, exact.last_correction());
    const LargestOfKind least = least_forces(g.frame, g.loads);
    const bool chain = takes(g.frame, SolvePath::chain) && takes(g.frame, SolvePath::chain_fast);
    for (const SolvePath path : paths) {
      if (!chain && (path == SolvePath::chain || path == SolvePath::chain_fast)) continue;
      INFO("path: " << std::string(name(path)));
      const FrameSolver solver(g.frame, SolverOptions{.path = path});
      if (path != SolvePath::automatic) CHECK(solver.path() == path);
      ++taken[path];
      const FrameAnswer a = solver.solve(g.loads);
      asked[path].check(a, relative_error(g.frame, a, truth, least));
    }
  }
  for (std::size_t n = 2; n <= 6; ++n) CHECK(chords[n] >= 100);
  for (const SolvePath path : {SolvePath::chain, SolvePath::chain_fast, SolvePath::sparse}) CHECK(taken[path] >= 40);
  CHECK(correction < 1e-20);  // the truth's own error, far below what is measured with it
  for (auto& [path, t] : asked) {
    const double median = t.median();
    MESSAGE(std::string(name(path)) << ": taken " << taken[path] << " times; certified against true error: least ratio "
                                    << t.ratios.front() << ", median " << median << "; largest certified "
                                    << t.certified << ", largest true " << t.off);
    CHECK(median <= 100);
  }
}

TEST_CASE("random girders: a changed bar or support gives what a solver made anew gives") {
  std::size_t bars = 0, supports = 0;
  for (std::uint64_t seed = 3001; seed <= 3300; ++seed) {
    const RandomGirder g = girders::random_girder(seed, 30);
    INFO(words(seed, g));
    const bool chain = takes(g.frame, SolvePath::chain) && takes(g.frame, SolvePath::chain_fast);
    Random r(seed);
    for (const SolvePath asked : {SolvePath::chain, SolvePath::chain_fast}) {
      if (!chain) continue;
      INFO("path: " << std::string(name(asked)));
      FrameSolver solver(g.frame, SolverOptions{.path = asked});
      Frame changed = g.frame;
      for (int change = 0; change < 3; ++change) {
        if (r.chance(0.5)) {
          const std::size_t m = r.below(changed.members.size());
          FrameSection& s = changed.members[m].section;
          for (double* const x : {&s.A, &s.Iy, &s.Iz, &s.J}) *x *= r.over_orders(0.2, 5);
          solver.change_member(m, s);
          ++bars;
        } else {
          Support& s = changed.supports[r.below(changed.supports.size())];
          s.motion = held_otherwise(r, s.motion);
          solver.change_support(s.node, s.motion);
          ++supports;
        }
        agree(g, solver, FrameSolver(changed, SolverOptions{.path = asked}));
      }
    }
  }
  CHECK(bars > 300);
  CHECK(supports > 300);
}

TEST_CASE("random girders: a change that would let one fall is refused, and all stays as it was") {
  std::size_t tried = 0;
  for (std::uint64_t seed = 4001; seed <= 4100; ++seed) {
    Random r(seed);
    RandomGirder g = girders::TypedGirder(r, 20).make();  // all its parts hang together: one clamp holds it
    INFO(words(seed, g));
    g.frame.supports.clear();
    g.loads = {};
    g.frame.clamp(r.below(g.frame.nodes.size()));
    g.loads.force(r.below(g.frame.nodes.size()), r.vector(1e3));
    const bool chain = takes(g.frame, SolvePath::chain_fast);
    FrameSolver solver(g.frame, SolverOptions{.path = chain ? SolvePath::chain_fast : SolvePath::sparse});
    CHECK_THROWS_AS(solver.change_support(g.frame.supports[0].node, {}), UnstableFrame);
    Frame loose = g.frame;
    loose.supports.clear();
    CHECK_THROWS_AS(FrameSolver{loose}, UnstableFrame);
    agree(g, solver, FrameSolver(g.frame));
    if (solver.path() != SolvePath::sparse) ++tried;
  }
  CHECK(tried > 50);
}

TEST_CASE("random girders: two threads give the same to the last bit") {
  std::size_t met = 0;
  for (std::uint64_t seed = 5001; seed <= 5200; ++seed) {
    const RandomGirder g = girders::random_girder(seed, 30);
    INFO(words(seed, g));
    if (!takes(g.frame, SolvePath::chain) || !takes(g.frame, SolvePath::chain_fast)) continue;
    for (const SolvePath path : {SolvePath::chain, SolvePath::chain_fast}) {
      const FrameSolver one(g.frame, SolverOptions{.path = path});
      const FrameSolver two(g.frame, SolverOptions{.path = path, .run_both = in_two_threads});
      CHECK(same(one.solve(g.loads), two.solve(g.loads)));
      ++met;
    }
  }
  CHECK(met > 200);
}
