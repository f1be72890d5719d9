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
using girders::RandomGirder;
using girders::Random;

namespace {

constexpr std::array<SolvePath, 4> paths{SolvePath::automatic, SolvePath::chain, SolvePath::chain_fast, SolvePath::sparse};

std::string words(std::uint64_t seed, const RandomGirder& g) {
  return "seed " + std::to_string(seed) + ", " + g.character + ", " + std::to_string(g.chords) + " chords, " +
         std::to_string(g.bays) + " bays";
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

/// What a solver says after changes against the certificates of one made anew from the changed frame.
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
  std::map<SolvePath, Tally> tallies;
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
    for (const SolvePath path : paths) {
      INFO("path: " << name(path));
      if (path == SolvePath::chain && taken[SolvePath::automatic] == 0) continue;
      const FrameSolver solver(g.frame, SolverOptions{.path = path});
      const FrameAnswer a = solver.solve(g.loads);
      tallies[path].check(a, relative_error(g.frame, a, truth, least));
    }
  }
}
