// SPDX-License-Identifier: MIT
// The certified error of an answer: never below the true one, not far above it, and able to fail.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <Eigen/Core>
#include <unsupported/Eigen/AutoDiff>

#include <baywork/solve/frame_solver.hpp>

#include "support/convert.hpp"
#include "support/random_frame.hpp"

using namespace baywork;

namespace {

using Real = long double;
using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, 1, 1>>;

/// A line of `pieces` beams along a skew direction, clamped at one end: its softest motion is some 1/pieces⁴ soft.
RandomFrame slender_cantilever(Random& r) {
  RandomFrame out;
  const std::size_t pieces = 1 + r.below(60);
  const Vec3<> step = r.in(0.2, 2) * unit(r.vector(1));
  const FrameSection s = random_section(r);
  for (std::size_t i = 0; i <= pieces; ++i) out.frame.add_node(static_cast<double>(i) * step);
  for (std::size_t i = 0; i < pieces; ++i) out.frame.add_beam(i, i + 1, s);
  out.frame.clamp(0);
  return out;
}

/// A girder of two to four chords with rigid joints, simply supported, of up to 60 bays; braced in half of the cases.
RandomFrame long_girder(Random& r) {
  RandomFrame out;
  Frame& f = out.frame;
  const std::size_t n = 2 + r.below(3), bays = 5 + r.below(56);
  const double depth = r.in(0.2, 0.8), bay = r.in(0.3, 1.2);
  const FrameSection chord = random_section(r), post = random_section(r);
  const bool braced = r.chance(0.5);
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t c = 0; c < n; ++c) {
      const double turn = 6.283185307179586 * static_cast<double>(c) / static_cast<double>(n) + 0.3;
      f.add_node({bay * static_cast<double>(i), depth * std::cos(turn), depth * std::sin(turn)});
    }
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t c = 0; c < n; ++c) {
      if (i < bays) f.add_beam(n * i + c, n * (i + 1) + c, chord);
      if (n > 2 || c == 0) f.add_beam(n * i + c, n * i + (c + 1) % n, post);
      if (braced && i < bays && (n > 2 || c == 0)) f.add_axial(n * i + c, n * (i + 1) + (c + 1) % n, post.E, post.A);
    }
  for (std::size_t c = 0; c < n; ++c) f.fix(c, {Motion::ux, Motion::uy, Motion::uz});
  for (std::size_t c = 0; c < n; ++c) f.fix(n * bays + c, {Motion::uy, Motion::uz});
  return out;
}

/// Error of each kind against its largest value; a kind that is all but absent (a thousandth) against the other one,
/// with the shortest or the longest member between lengths and angles. Motions first, forces second.
std::array<double, 2> true_error(const Frame& f, const FrameAnswer& a, const BasicFrameAnswer<Real>& exact) {
  std::array<Real, 4> off{}, size{};
  const auto take = [&](std::size_t kind, double value, Real truth) {
    off[kind] = (std::max)(off[kind], std::abs(Real(value) - truth));
    size[kind] = (std::max)(size[kind], std::abs(truth));
  };
  Real shortest = 1e30L, longest = 0;
  for (const Member& m : f.members) {
    shortest = (std::min)(shortest, Real(axes_of(f, m).length));
    longest = (std::max)(longest, Real(axes_of(f, m).length));
  }
  for (std::size_t i = 0; i < a.motions.size(); ++i) take(i % 6 < 3 ? 0 : 1, a.motions[i], exact.motions[i]);
  for (std::size_t i = 0; i < a.members.size(); ++i)
    for (std::size_t k = 0; k < 6; ++k) {
      take(k < 3 ? 2 : 3, a.members[i].start[k], exact.members[i].start[k]);
      take(k < 3 ? 2 : 3, a.members[i].end[k], exact.members[i].end[k]);
    }
  const std::array<Real, 4> floored{
      (std::max)(size[0], size[1] * shortest / 1000), (std::max)(size[1], size[0] / longest / 1000),
      (std::max)(size[2], size[3] / longest / 1000), (std::max)(size[3], size[2] * shortest / 1000)};
  const auto relative = [&](std::size_t k) { return floored[k] > 0 ? static_cast<double>(off[k] / floored[k]) : 0.0; };
  return {(std::max)(relative(0), relative(1)), (std::max)(relative(2), relative(3))};
}

}  // namespace

// Needs a long double with more digits than a double to know the true error.
TEST_CASE("the certified error is never below the true one" *
          doctest::skip(std::numeric_limits<Real>::digits <= std::numeric_limits<double>::digits)) {
  std::vector<double> motion_ratios, force_ratios;
  double largest = 0, largest_true = 0;
  for (std::uint64_t seed = 1; seed <= 480; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    const RandomFrame f = seed % 4 == 0 ? slender_cantilever(r) : seed % 8 == 1 ? long_girder(r) : random_frame(r);
    FrameLoads loads;
    random_node_loads(r, f, loads);
    if (r.chance(0.6)) random_member_loads(r, f, loads);
    if (r.chance(0.2)) loads.settle(0, Motion::uz, r.in(-0.01, 0.01));
    const FrameAnswer a = FrameSolver(f.frame).solve(loads);
    const BasicFrameAnswer<Real> exact = BasicFrameSolver<Real>(converted<Real>(f.frame)).solve(converted<Real>(loads));
    CHECK(exact.certificate.worst() < 1e-17);
    const std::array<double, 2> error = true_error(f.frame, a, exact);
    CHECK(a.certificate.displacement_error >= error[0]);
    CHECK(a.certificate.force_error >= error[1]);
    CHECK(a.certificate.worst() < 1e-10);
    largest = (std::max)(largest, a.certificate.worst());
    largest_true = (std::max)({largest_true, error[0], error[1]});
    motion_ratios.push_back(a.certificate.displacement_error / (std::max)(error[0], 0x1p-54));
    force_ratios.push_back(a.certificate.force_error / (std::max)(error[1], 0x1p-54));
  }
  for (std::vector<double>* ratios : {&motion_ratios, &force_ratios}) {
    std::sort(ratios->begin(), ratios->end());
    MESSAGE("certified over true error: least " << ratios->front() << ", median " << (*ratios)[ratios->size() / 2]);
    CHECK((*ratios)[ratios->size() / 2] <= 100);
  }
  MESSAGE("largest certified error " << largest << ", largest true error " << largest_true);
}

TEST_CASE("the certificate can fail") {
  Random r(7);
  const RandomFrame f = random_frame(r);
  FrameLoads loads;
  random_node_loads(r, f, loads);
  // No answer rounded to a double is right to 17 digits: the solver must say so instead of handing one out.
  CHECK_THROWS_AS(FrameSolver(f.frame, 1e-17).solve(loads), NotConverged);
  FrameAnswer kept = FrameSolver(f.frame).solve(loads);
  const FrameAnswer before = kept;
  SolveWorkspace space;
  CHECK_THROWS_AS(FrameSolver(f.frame, 1e-17).solve(loads, kept, space), NotConverged);
  CHECK(kept.motions == before.motions);

  // Corrections as a wrong factor would make them: they do not shrink, or only slowly.
  const detail::PreparedFrame<double> p(f.frame);
  for (const double shrink : {1.0, 0.5, 0.01}) {
    const std::vector<detail::accurate_t<double>> balanced(6 * f.frame.nodes.size(), 0.0);
    detail::Certifier<double> certifier(p, balanced);
    const detail::Sizes answer{1.0, 1.0, 0.0, 0.0};
    double correction = 1e-6;
    certifier.first({correction, correction, 0.0, 0.0});
    for (int step = 1; step < 3; ++step) {
      correction *= shrink;
      certifier.wants_more({correction, correction, 0.0, 0.0}, answer);
    }
    correction *= shrink;
    INFO("corrections shrink by " << shrink << ", certified " << certifier.result().displacement_error);
    const double left = shrink < 1 ? correction / (1 - shrink) : 1e-6;  // what the corrections not made would still add
    CHECK(certifier.result().displacement_error >= 0.9 * left);
  }
}

TEST_CASE("exact closed forms are met to a few roundings") {
  double worst = 0;
  const auto compare = [&worst](double computed, double exact) {
    worst = (std::max)(worst, std::abs(computed / exact - 1));
  };
  Random r(11);
  for (const std::size_t pieces : {std::size_t{1}, std::size_t{10}, std::size_t{100}, std::size_t{400}}) {
    // S. P. Timoshenko, cantilever with shear: P L³/(3EI) + P L/(G As); L = pieces/4, exact in binary.
    const double L = static_cast<double>(pieces) / 4;
    const FrameSection s = random_section(r);
    Frame f;
    for (std::size_t i = 0; i <= pieces; ++i) f.add_node({static_cast<double>(i) / 4, 0, 0});
    for (std::size_t i = 0; i < pieces; ++i) f.add_beam(i, i + 1, s);
    f.clamp(0);
    FrameLoads loads;
    loads.force(pieces, {3, 5, -7});
    const FrameAnswer a = FrameSolver(f).solve(loads);
    const auto shear = [&s](double area) { return is_infinite(area) ? 0.0 : 1 / (s.G * area); };
    compare(a.displacement(pieces).x, 3 * L / (s.E * s.A));
    compare(a.displacement(pieces).y, 5 * L * L * L / (3 * s.E * s.Iz) + 5 * L * shear(s.shear_y));
    compare(a.displacement(pieces).z, -7 * L * L * L / (3 * s.E * s.Iy) - 7 * L * shear(s.shear_z));
    compare(a.rotation(pieces).z, 5 * L * L / (2 * s.E * s.Iz));
    compare(a.members[0].start[5], -5 * L);
  }
  {  // a thread 1e30 times softer than the bar that it hangs on
    const double EI = 7e4, softer = 1e-30;
    Frame f;
    for (const double x : {0.0, 2.0, 4.0}) f.add_node({x, 0, 0});
    FrameSection s;
    s.E = 70e9;
    s.G = 27e9;
    s.A = 1e-3;
    s.Iy = s.Iz = s.J = 1e-6;
    f.add_beam(0, 1, s);
    for (double* v : {&s.A, &s.Iy, &s.Iz, &s.J}) *v *= softer;
    f.add_beam(1, 2, s);
    f.clamp(0);
    FrameLoads loads;
    loads.force(2, {0, 0, 1});
    compare(FrameSolver(f).solve(loads).displacement(2).z, 8 / (3 * EI * softer));
  }
  MESSAGE("largest relative difference " << worst);
  CHECK(worst < 1e-10);
}

TEST_CASE("derivatives pass through the solver") {
  // Cantilever: v = P L³/(3 E Iz), so dv/dIz = -v/Iz.
  Frame f;
  f.add_node({0, 0, 0});
  f.add_node({2, 1, 0.5});
  FrameSection s;
  s.E = 70e9;
  s.G = 27e9;
  s.A = 1e-3;
  s.Iy = 3e-6;
  s.Iz = 2e-6;
  s.J = 4e-6;
  f.add_beam(0, 1, s);
  f.clamp(0);
  FrameLoads loads;
  loads.force(1, 1000.0 * axes_of(f, f.members[0]).y);
  BasicFrame<Dual> g = converted<Dual>(f);
  g.members[0].section.Iz.derivatives()(0) = 1;
  const BasicFrameAnswer<Dual> a = BasicFrameSolver<Dual>(g).solve(converted<Dual>(loads));
  const MemberAxes<> axes = axes_of(f, f.members[0]);
  const double v = dot(Vec3<>{value_of(a.motions[6]), value_of(a.motions[7]), value_of(a.motions[8])}, axes.y);
  const auto slope = [&a](std::size_t i) { return a.motions[i].derivatives()(0); };
  const double dv = dot(Vec3<>{slope(6), slope(7), slope(8)}, axes.y);
  CHECK(v == doctest::Approx(1000 * std::pow(axes.length, 3) / (3 * s.E * s.Iz)).epsilon(1e-12));
  CHECK(dv == doctest::Approx(-v / s.Iz).epsilon(1e-12));

  // Random frames: against central differences of the double solver.
  for (std::uint64_t seed = 900; seed < 920; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    const RandomFrame random = random_frame(r);
    FrameLoads pushed;
    random_node_loads(r, random, pushed);
    random_member_loads(r, random, pushed);
    const std::size_t member = r.below(random.first_cross_member), last = 6 * random.frame.nodes.size() - 4;
    BasicFrame<Dual> d = converted<Dual>(random.frame);
    d.members[member].section.Iz.derivatives()(0) = 1;
    const BasicFrameAnswer<Dual> found = BasicFrameSolver<Dual>(d).solve(converted<Dual>(pushed));
    const double step = 1e-4 * random.frame.members[member].section.Iz;
    const auto at = [&](double more) {
      Frame changed = random.frame;
      changed.members[member].section.Iz += more;
      return FrameSolver(changed).solve(pushed);
    };
    const FrameAnswer up = at(step), down = at(-step);
    double largest = 0;
    for (std::size_t i = last - 2; i <= last; ++i) largest = (std::max)(largest, std::abs(value_of(found.motions[i])));
    for (std::size_t i = last - 2; i <= last; ++i)
      CHECK(std::abs(found.motions[i].derivatives()(0) - (up.motions[i] - down.motions[i]) / (2 * step)) <
            1e-6 * largest / random.frame.members[member].section.Iz);
  }
}
