// SPDX-License-Identifier: MIT
// Long uniform girders: the same as the girder built bar by bar, as beams of their length, and to the last digits.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/solve/frame_solver.hpp>
#include <baywork/solve/uniform_run.hpp>

#include "support/run_frames.hpp"

using namespace baywork;

namespace {

RunLayout layout_of(const runs::Cell& cell, std::size_t cells) {
  RunLayout l;
  l.cells = cells;
  l.first = cell.first;
  l.last = cell.last;
  return l;
}

void clamp(RunLayout& l, std::size_t station, std::size_t node) {
  l.fix(station, node, {Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz});
}

}  // namespace

TEST_CASE("a run answers as the girder built bar by bar: random cells, supports, springs, loads") {
  // Both are solutions of the same equations; the built one is certified to 1e-10 by twofold residuals.
  Random r(2024);
  double worst_exact = 0, worst_plain = 0;
  for (int trial = 0; trial < 120; ++trial) {
    const std::size_t chords = 1 + r.below(4);
    const runs::Cell cell = runs::random_cell(r, chords);
    const std::size_t n = trial < 12 ? static_cast<std::size_t>(trial) + 1 : 1 + r.below(40);
    RunLayout layout = layout_of(cell, n);
    clamp(layout, 0, cell.first[r.below(chords)]);
    for (std::size_t k = r.below(4); k > 0; --k) {
      const std::size_t station = r.below(n + 1), node = cell.first[r.below(chords)];
      const Motion motion = static_cast<Motion>(r.below(6));
      if (layout.restraint(station, node, motion).kind != Restraint::Kind::free) continue;
      if (r.chance(0.5))
        layout.fix(station, node, {motion}, r.chance(0.5) ? r.in(-1e-3, 1e-3) : 0.0);
      else
        layout.spring(station, node, motion, r.over_orders(1e2, 1e12));
    }
    if (r.chance(0.3)) clamp(layout, n, cell.first[chords - 1]);
    RunLoads loads;
    if (r.chance(0.8)) loads.everywhere = runs::random_loads(r, cell.frame);
    for (std::size_t k = 1 + r.below(3); k > 0; --k) {
      FrameLoads some;
      some.force(cell.first[0], r.vector(1e4));
      some.force(cell.last[0], r.vector(1e4));
      loads.at.push_back({r.below(n), some});
    }
    if (r.chance(0.7)) loads.at.push_back({n - 1, runs::random_loads(r, cell.frame)});
    if (r.chance(0.5)) {  // on the run's last station alone: its joints, and a bar between them where there is one
      FrameLoads end;
      end.force(cell.last[r.below(chords)], r.vector(1e4));
      const std::set<std::size_t> ends(cell.last.begin(), cell.last.end());
      const auto& bars = cell.frame.members;
      for (std::size_t i = 0; i < bars.size(); ++i)
        if (ends.count(bars[i].from) + ends.count(bars[i].to) == 2)
          end.line(i, 0.5 * length(cell.frame.nodes[bars[i].to].at - cell.frame.nodes[bars[i].from].at), r.vector(1e3));
      loads.at.push_back({n - 1, end});
    }
    RunWanted wanted;
    wanted.stations = {0, n, r.below(n + 1), n / 2};
    wanted.cells = {0, n - 1, r.below(n)};
    const UniformRun run(cell.frame, layout);
    const runs::Built b = runs::built(cell, layout);
    const FrameAnswer whole = FrameSolver(b.frame, 1e-9).solve(runs::built(b, loads));
    const CertifiedRun certified = run.certified(loads, wanted);
    CAPTURE(trial);
    CAPTURE(chords);
    CAPTURE(n);
    const double exact = runs::difference(cell, certified.answer, b, whole);
    CHECK(exact < 1e-14 + whole.certificate.worst());
    const double plain = runs::difference(cell, run.solve(loads, wanted), b, whole);
    CHECK(plain < 1e-9);  // bars here are slender, soft-jointed and of all directions within one cell
    worst_exact = (std::max)(worst_exact, exact);
    worst_plain = (std::max)(worst_plain, plain);
  }
  MESSAGE("largest difference: twofold " << worst_exact << ", plain " << worst_plain);
}

TEST_CASE("stations of pinned joints: a box truss of axial bars alone") {
  runs::Cell cell;
  const auto node = [](std::size_t i, std::size_t k) { return 4 * i + k % 4; };
  for (std::size_t i = 0; i < 2; ++i)
    for (std::size_t k = 0; k < 4; ++k)
      cell.frame.add_node({1.5 * static_cast<double>(i), k == 1 || k == 2 ? 1.0 : 0.0, k >= 2 ? 1.25 : 0.0});
  for (std::size_t i = 0; i < 2; ++i) {
    for (std::size_t k = 0; k < 4; ++k) {
      cell.frame.add_axial(node(i, k), node(i, k + 1), 70e9, 5e-4);
      if (i > 0) continue;
      cell.frame.add_axial(node(0, k), node(1, k), 70e9, 1e-3);
      cell.frame.add_axial(node(0, k), node(1, k + 1), 70e9, 3e-4);
    }
    cell.frame.add_axial(node(i, 0), node(i, 2), 70e9, 4e-4);
  }
  cell.first = {0, 1, 2, 3};
  cell.last = {4, 5, 6, 7};
  for (const std::size_t n : {1U, 2U, 5U, 24U}) {
    RunLayout layout = layout_of(cell, n);
    layout.fix(0, 0, {Motion::ux, Motion::uy, Motion::uz});
    layout.fix(0, 1, {Motion::uz});
    layout.fix(n, 0, {Motion::uy, Motion::uz});
    RunLoads loads;
    loads.everywhere.force(2, {100, 20, -1000});
    loads.at.push_back({n / 2, {}});
    loads.at[0].loads.force(3, {0, 500, 0});
    RunWanted wanted{{0, n / 2, n}, {0, n - 1}};
    const runs::Built b = runs::built(cell, layout);
    const RunAnswer answer = UniformRun(cell.frame, layout).solve(loads, wanted);
    CHECK(runs::difference(cell, answer, b, FrameSolver(b.frame).solve(runs::built(b, loads))) < 1e-12);
  }
}

TEST_CASE("stations are found from the period, and loads along members are those of every cell") {
  const runs::Cell cell = runs::box(2, 1, 2, true);
  RunLayout layout = layout_of(cell, 7), found;
  clamp(layout, 0, 0);
  found = layout;
  found.first.clear();
  found.last.clear();
  found.period = {4, 0, 0};
  RunLoads loads;
  for (std::size_t i = 0; i < cell.frame.members.size(); ++i)
    loads.everywhere.line(
        i, length(cell.frame.nodes[cell.frame.members[i].to].at - cell.frame.nodes[cell.frame.members[i].from].at),
        {0, 10, -100});
  const UniformRun run(cell.frame, found);
  CHECK(run.joints() == cell.first);
  const runs::Built b = runs::built(cell, layout);
  const RunWanted wanted{{7, 3}, {6, 2, 2}};
  CHECK(runs::difference(cell, run.solve(loads, wanted), b, FrameSolver(b.frame).solve(runs::built(b, loads))) < 1e-12);
}

namespace {

/// A box on four bearings under the load q per cell, shared by its four joints.
struct SimpleSpan {
  runs::Cell cell;
  RunLayout layout;
  RunLoads loads;

  SimpleSpan(std::size_t cells, double length, double depth, std::size_t bays, bool braced, double q)
      : cell(runs::box(length, depth, bays, braced)), layout(layout_of(cell, cells)) {
    layout.fix(0, 0, {Motion::ux, Motion::uy, Motion::uz});
    layout.fix(0, 1, {Motion::uz});
    layout.fix(cells, 0, {Motion::uy, Motion::uz});
    layout.fix(cells, 1, {Motion::uz});
    // a cell's load in halves on its two stations: q on every station inside, q/2 at the ends
    for (const std::size_t n : cell.first) loads.everywhere.force(n, {0, 0, -q / 8});
    for (const std::size_t n : cell.last) loads.everywhere.force(n, {0, 0, -q / 8});
  }
};

}  // namespace

TEST_CASE("a long open box bends and shears as a beam does") {
  // Bending: a force P at the distance c from the nearer bearing moves mid-span by P c (3 L² - 4 c²)/(48 EI) (any
  // handbook of simple beams; value from memory), summed here over equal forces at equal steps.
  // Shear: a panel of two chords and its post gives 1/GA = a h/(12 E I_post) + a²/(24 E I_chord) (S. Timoshenko,
  // J. M. Gere, Theory of Elastic Stability, 2.18, battened columns, value from memory), half of it for two side by
  // side.
  const double a = 1.5, h = 1, P = 1000, E = 210e9, A = 1e-3, chord = 5e-7, post = 8e-8;
  const double EI0 = E * 4 * A * h * h / 4, EI = EI0 + E * 4 * chord;
  const double per_GA = (a * h / (12 * E * post) + a * a / (24 * E * chord)) / 2;
  const auto deflection = [&](std::size_t n) {
    const SimpleSpan span(n, a, h, 1, false, P);
    const RunAnswer r = UniformRun(span.cell.frame, span.layout).solve(span.loads, {{n / 2}, {}});
    return -(r.stations[0].motions[2] + r.stations[0].motions[20]) / 2;
  };
  const auto beam = [&](double n) {
    const double k = n / 2, L = n * a;
    const double sum1 = (k - 1) * k / 2, sum3 = sum1 * sum1;
    return P / (48 * EI) * (2 * (3 * L * L * a * sum1 - 4 * a * a * a * sum3) + L * L * L);
  };
  // The shear strain grows with the moment, P n² a/8 at mid-span; the chords' own bending takes its share of both.
  const auto shear = [&](double n) { return P * n * n * a / 8 * per_GA * (EI0 / EI) * (EI0 / EI); };
  for (const std::size_t n : {200U, 2000U, 20000U}) {
    const double x = static_cast<double>(n), w = deflection(n);
    CAPTURE(n);
    // both ends disturb a panel or so: a share of about 1/n of the shear part
    CHECK(std::abs(w - beam(x) - shear(x)) < (1e-3 + 2 / x) * shear(x));
  }
  for (const std::size_t n : {100000000U, 1000000000U}) {
    const double x = static_cast<double>(n);
    CHECK(deflection(n) / (beam(x) + shear(x)) == doctest::Approx(1).epsilon(1e-12));
  }
}

TEST_CASE("a row less a multiple of another in twice the digits, and three numbers behind it at most are touched") {
  using detail::Twofold;
  Random r(11);
  double worst = 0;
  for (std::size_t n = 1; n <= 40; ++n) {
    const auto any = [&] { return Twofold<double>(r.in(-1, 1)) + Twofold<double>(r.in(-1e-17, 1e-17)); };
    std::vector<Twofold<double>> row, other;
    for (std::size_t i = 0; i < n; ++i) row.push_back(any()), other.push_back(i % 3 == 0 ? Twofold<double>(0) : any());
    row.resize(n + 4), other.resize(n + 4);
    row.back() = Twofold<double>(7);
    const Twofold<double> factor = any();
    const std::vector<Twofold<double>> before = row;
    detail::subtract_multiple(factor, other.data(), n, row.data());
    for (std::size_t i = 0; i < n; ++i) {
      const Twofold<double> expected = before[i] - factor * other[i], apart = row[i] - expected;
      worst = (std::max)(worst, std::abs(apart.value()));
      CHECK(row[i].hi + row[i].lo == row[i].hi);  // the second number is what the first one cannot hold
    }
    CHECK(row.back().value() == 7);
  }
  CHECK(worst < 8 * std::ldexp(1.0, -106));  // a few units of the second number's last place, of terms below 1
}

TEST_CASE("digits do not wear off with length") {
  for (const bool braced : {true, false})
    for (const std::size_t n : {10U, 1000U, 10000U, 100000U, 1000000U, 1000000000U}) {
      const SimpleSpan span(n, 2, 1, 2, braced, 1000);
      const CertifiedRun r = UniformRun(span.cell.frame, span.layout).certified(span.loads, {{n / 2}, {n / 2}});
      MESSAGE(n << " cells: displacements " << r.certificate.displacement_error << ", forces "
                << r.certificate.force_error);
      CHECK(r.certificate.worst() < 2e-12);
      // statics: each bearing takes a quarter of all loads, the first two and the last two half each
      double first = 0, last = 0;
      for (const RunReaction& bearing : r.answer.reactions) (bearing.station == 0 ? first : last) += bearing.value[2];
      CHECK(first == doctest::Approx(500.0 * static_cast<double>(n)).epsilon(1e-14));
      CHECK(last == doctest::Approx(500.0 * static_cast<double>(n)).epsilon(1e-14));
    }
}

TEST_CASE("a thousand cells agree with the frame solver's twofold residuals") {
  const SimpleSpan span(1000, 2, 1, 1, false, 1000);
  const runs::Built b = runs::built(span.cell, span.layout);
  const FrameAnswer whole = FrameSolver(b.frame).solve(runs::built(b, span.loads));
  const RunWanted wanted{{0, 500, 777}, {0, 499, 999}};
  const double apart =
      runs::difference(span.cell, UniformRun(span.cell.frame, span.layout).solve(span.loads, wanted), b, whole);
  MESSAGE("apart " << apart << ", frame solver's own bound " << whole.certificate.worst());
  CHECK(apart < 1e-12 + whole.certificate.worst());
}

TEST_CASE("work there is work here: reciprocity over a hundred thousand cells on five supports") {
  // Betti, Maxwell (any textbook of structural mechanics).
  const std::size_t n = 100000, p = 31234, q = 77777;
  const runs::Cell cell = runs::box(2, 1, 1, false);
  RunLayout layout = layout_of(cell, n);
  clamp(layout, 0, 0);
  for (const std::size_t s : {20000U, 50000U, 80000U, 100000U}) {
    layout.fix(s, 0, {Motion::uy, Motion::uz});
    layout.spring(s, 1, Motion::uz, 1e5);
  }
  const UniformRun run(cell.frame, layout);
  RunLoads at_p, at_q;
  at_p.at.push_back({p, {}});
  at_p.at[0].loads.force(2, {0, 700, -1000});
  at_q.at.push_back({q, {}});
  at_q.at[0].loads.couple(3, {500, 800, 0});
  const std::vector<double> at_q_by_p = run.solve(at_p, {{q}, {}}).stations[0].motions,
                            at_p_by_q = run.solve(at_q, {{p}, {}}).stations[0].motions;
  const double one = 700 * at_p_by_q[13] - 1000 * at_p_by_q[14], other = 500 * at_q_by_p[21] + 800 * at_q_by_p[22];
  CHECK(std::abs(one) > 0);
  CHECK(one == doctest::Approx(other).epsilon(1e-10));
}

TEST_CASE("runs that mean nothing are refused in words") {
  const runs::Cell cell = runs::box(2, 1, 1, true);
  RunLayout layout = layout_of(cell, 5);
  clamp(layout, 0, 0);
  const auto says = [](const auto& work, const std::string& words) {
    try {
      work();
    } catch (const Error& e) {
      INFO(e.what());
      CHECK(std::string(e.what()).find(words) != std::string::npos);
      return;
    }
    FAIL("nothing was thrown: " << words);
  };
  const auto layout_says = [&](auto spoil, const std::string& words) {
    says(
        [&] {
          RunLayout l = layout;
          spoil(l);
          UniformRun(cell.frame, l);
        },
        words);
  };
  layout_says([](RunLayout& l) { l.cells = 0; }, "no cells");
  layout_says([](RunLayout& l) { std::swap(l.last[0], l.last[1]); }, "does not match its first");
  layout_says([](RunLayout& l) { l.last.pop_back(); }, "does not match its first");
  layout_says([](RunLayout& l) { l.first.clear(), l.last.clear(); }, "period");
  layout_says([](RunLayout& l) { l.fix(6, 0, {Motion::uz}); }, "no such station");
  layout_says([](RunLayout& l) { l.fix(1, 4, {Motion::uz}); }, "not on the cell's first station");
  says(
      [&] {
        Frame f = cell.frame;
        f.clamp(0);
        UniformRun(f, layout);
      },
      "its cell has a support");
  const UniformRun run(cell.frame, layout);
  says([&] { run.solve({}, {{6}, {}}); }, "station 7");
  says([&] { run.solve({}, {{}, {5}}); }, "cell 6");
  says(
      [&] {
        RunLoads l;
        l.everywhere.settle(0, Motion::uz, 0.1);
        run.solve(l, {});
      },
      "settlement");
  says(
      [&] {
        RunLoads l;
        l.at.push_back({1, {}});
        l.at[0].loads.line(cell.frame.members.size() - 1, 1, {0, 0, -1});
        run.solve(l, {});
      },
      "belong to the next cell");
  RunLoads weight;
  weight.everywhere.force(0, {0, 0, -1});
  const auto unstable = [&](RunLayout l, const Frame& f, const std::string& words) {
    says([&] { UniformRun(f, l).solve(weight, {}); }, words);
  };
  RunLayout loose = layout_of(cell, 5);
  loose.fix(0, 0, {Motion::ux, Motion::uy, Motion::uz});
  unstable(loose, cell.frame, "it can move as a whole");
  loose.fix(5, 0, {Motion::uy, Motion::uz});  // turns about the line through both joints
  unstable(loose, cell.frame, "it can move as a whole");
  Frame hinged;  // two stations tied by axial bars alone: no shear passes
  for (std::size_t k = 0; k < 8; ++k) hinged.add_node(cell.frame.nodes[k].at);
  for (std::size_t k = 0; k < 4; ++k) {
    hinged.add_axial(k, k + 4, 1e9, 1e-3);
    hinged.add_beam(k, (k + 1) % 4, cell.frame.members[0].section);
  }
  unstable(layout, hinged, "the cell, held at its two stations, can move");
}
