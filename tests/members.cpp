// SPDX-License-Identifier: MIT
// One member at a time: published beams, closed forms of Timoshenko's beam, and a member against the same one cut up.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "support/random_member.hpp"
#include "support/textbook.hpp"

using namespace baywork;
using namespace textbook;

namespace {

constexpr double pi = 3.14159265358979323846;
double sagging_end(const FrameAnswer& a, std::size_t m) { return a.members[m].end[5]; }

Frame equal_spans(std::size_t spans) {
  Frame f;
  for (std::size_t i = 0; i <= spans; ++i) f.add_node({static_cast<double>(i), 0, 0});
  for (std::size_t i = 0; i < spans; ++i) f.add_beam(i, i + 1, plane_section(1, 1, 1));
  f.hold_in_plane_xy();
  for (std::size_t i = 0; i <= spans; ++i) f.fix(i, {Motion::uy});
  f.fix(0, {Motion::ux});
  return f;
}

}  // namespace

TEST_CASE("equal continuous spans") {
  // AISC Steel Construction Manual, table 3-23 (value from memory); exact fractions by the three-moment equation.
  const std::vector<std::vector<double>> reactions{
      {3. / 8, 10. / 8}, {.4, 1.1}, {11. / 28, 32. / 28, 26. / 28}, {15. / 38, 43. / 38, 37. / 38}};
  const std::vector<std::vector<double>> moments{{-1. / 8}, {-.1}, {-3. / 28, -2. / 28}, {-4. / 38, -3. / 38}};
  for (std::size_t spans = 2; spans <= 5; ++spans) {
    FrameLoads loads;
    for (std::size_t i = 0; i < spans; ++i) loads.line(i, 1, {0, -1, 0});
    const FrameAnswer a = FrameSolver(equal_spans(spans)).solve(loads);
    const std::string what = std::to_string(spans) + " spans";
    for (std::size_t i = 0; i < reactions[spans - 2].size(); ++i)
      within(what + ", reaction", reaction(a, i, Motion::uy), reactions[spans - 2][i], 1e-12);
    for (std::size_t i = 0; i < moments[spans - 2].size(); ++i)
      within(what + ", moment", sagging_end(a, i), moments[spans - 2][i], 1e-12);
  }
}

TEST_CASE("influence lines of two and three spans") {
  // Three-moment equation: MB = -(x/4)(1 - x²) for a unit load in the first of two spans.
  const std::vector<double> at{0.25, 0.5, 1 / std::sqrt(3.0), 0.75};
  const std::vector<std::string> left{".69141", ".40625", ".32642", ".16797"},
      support{"-.0586", "-.09375", "-.09623", "-.0820"};
  const FrameSolver two(equal_spans(2)), three(equal_spans(3));
  for (std::size_t i = 0; i < at.size(); ++i) {
    FrameLoads loads;
    loads.force_on(0, at[i], {0, -1, 0});
    const FrameAnswer a = two.solve(loads);
    printed("MB", sagging_end(a, 0), support[i]);
    printed("RA", reaction(a, 0, Motion::uy), left[i]);
    within("MB by formula", sagging_end(a, 0), -at[i] / 4 * (1 - at[i] * at[i]), 1e-12);
  }
  const std::vector<std::vector<double>> reactions{{.4, .725, -.15, .025}, {-.075, .575, .575, -.075}};
  const std::vector<std::vector<double>> moments{{-.1, .025}, {-.075, -.075}};
  for (std::size_t span = 0; span < 2; ++span) {
    FrameLoads loads;
    loads.force_on(span, 0.5, {0, -1, 0});
    const FrameAnswer a = three.solve(loads);
    for (std::size_t i = 0; i < 4; ++i) within("reaction", reaction(a, i, Motion::uy), reactions[span][i], 1e-12);
    for (std::size_t i = 0; i < 2; ++i) within("moment", sagging_end(a, i), moments[span][i], 1e-12);
  }
}

TEST_CASE("straight, curved and twisted beams of a public benchmark") {
  // R. H. MacNeal, R. L. Harder, A proposed standard set of problems to test finite element accuracy, Finite Elements
  // in Analysis and Design 1 (1985) 3-20; values from memory. The printed twist of the straight beam (.03208) is not
  // used: Saint-Venant's torsion constant of the section gives .03408.
  const auto bar = [](double E, double nu, double along_y, double along_z) {
    FrameSection s;
    s.E = E;
    s.G = E / (2 * (1 + nu));
    s.A = along_y * along_z;
    s.Iz = along_z * std::pow(along_y, 3) / 12;
    s.Iy = along_y * std::pow(along_z, 3) / 12;
    s.shear_y = s.shear_z = s.A * 5 / 6;
    return s;
  };
  SUBCASE("straight") {
    Frame f;
    f.add_node({0, 0, 0});
    f.add_node({6, 0, 0});
    FrameSection s = bar(1e7, 0.3, 0.2, 0.1);
    s.J = 4.5776e-5;
    f.add_beam(0, 1, s);
    f.clamp(0);
    const FrameSolver solver(f);
    FrameLoads pull_it, in_plane, across;
    pull_it.force(1, {1, 0, 0});
    in_plane.force(1, {0, 1, 0});
    across.force(1, {0, 0, 1});
    printed("extension", solver.solve(pull_it).displacement(1).x, "3.0e-5");
    printed("in plane", solver.solve(in_plane).displacement(1).y, ".1081");
    printed("out of plane", solver.solve(across).displacement(1).z, ".4321");
  }
  SUBCASE("curved") {  // the printed values come from the theory of elasticity: 2 % and 0.5 % off a bar's
    const std::size_t pieces = 90;
    Frame f;
    FrameSection s = bar(1e7, 0.25, 0.2, 0.1);
    s.J = 4.5776e-5;
    for (std::size_t i = 0; i <= pieces; ++i) {
      const double t = pi / 2 * static_cast<double>(i) / static_cast<double>(pieces);
      f.add_node({4.22 * std::sin(t), 4.22 * std::cos(t), 0});
    }
    for (std::size_t i = 0; i < pieces; ++i) f.add_beam(i, i + 1, s);
    f.clamp(0);
    const FrameSolver solver(f);
    FrameLoads in_plane, across;
    in_plane.force(pieces, {1, 0, 0});
    across.force(pieces, {0, 0, 1});
    within("in plane", solver.solve(in_plane).displacement(pieces).x, 0.08734, 0.02);
    within("out of plane", solver.solve(across).displacement(pieces).z, 0.5022, 0.005);
  }
  SUBCASE("twisted") {  // 0.5 %: the printed values are those of beam theory to some digits
    const std::size_t pieces = 96;
    Frame f;
    FrameSection s = bar(29e6, 0.22, 1.1, 0.32);
    s.J = 0.0098;
    for (std::size_t i = 0; i <= pieces; ++i)
      f.add_node({12.0 * static_cast<double>(i) / static_cast<double>(pieces), 0, 0});
    for (std::size_t i = 0; i < pieces; ++i)
      f.members[f.add_beam(i, i + 1, s)].roll = pi / 2 * (static_cast<double>(i) + 0.5) / static_cast<double>(pieces);
    f.clamp(0);
    const FrameSolver solver(f);
    FrameLoads along_y, along_z;
    along_y.force(pieces, {0, 1, 0});
    along_z.force(pieces, {0, 0, 1});
    within("along the long side at the tip", solver.solve(along_z).displacement(pieces).z, 0.005424, 0.005);
    within("along the short side at the tip", solver.solve(along_y).displacement(pieces).y, 0.001754, 0.005);
  }
}

TEST_CASE("closed forms of a beam with shear strain") {
  // S. P. Timoshenko, Strength of Materials I and II (effect of shear on deflections); derived by the unit-load method.
  // Both bending planes: y carries Mz, z carries -My.
  const double E = 210e9, G = 81e9, L = 2.5, P = 7e3, w = 3e3, close = 1e-12;
  FrameSection s;
  s.E = E;
  s.G = G;
  s.A = 2e-3;
  s.Iy = 3e-6;
  s.Iz = 5e-6;
  s.J = 7e-6;
  s.shear_y = 8e-4;
  s.shear_z = 6e-4;
  s.thermal_expansion = 12e-6;
  Frame one, two;
  for (const double x : {0.0, L}) one.add_node({x, 0, 0});
  for (const double x : {0.0, L / 2, L}) two.add_node({x, 0, 0});
  one.add_beam(0, 1, s);
  two.add_beam(0, 1, s);
  two.add_beam(1, 2, s);
  one.clamp(0);
  two.clamp(0);
  const FrameSolver cantilever(one);
  one.clamp(1);
  two.clamp(2);
  const FrameSolver held(one), fixed(two);
  for (const std::size_t d : {std::size_t{1}, std::size_t{2}}) {
    const bool y = d == 1;
    const double EI = E * (y ? s.Iz : s.Iy), GA = G * (y ? s.shear_y : s.shear_z), sign = y ? 1 : -1;
    const std::size_t about = y ? 5 : 4;
    const auto along = [d](double v) {
      Vec3<> out;
      out[d] = v;
      return out;
    };
    const auto across = [y](double v) { return y ? Vec3<>{0, 0, v} : Vec3<>{0, v, 0}; };
    FrameLoads tip, spread, turn;
    tip.force(1, along(P));
    spread.line(0, L, along(w));
    turn.couple(1, across(P));
    const FrameAnswer a = cantilever.solve(tip), b = cantilever.solve(spread), c = cantilever.solve(turn);
    within("tip load", a.motions[6 + d], P * L * L * L / (3 * EI) + P * L / GA, close);
    within("slope under it", a.motions[6 + about], sign * P * L * L / (2 * EI), close);
    within("spread load", b.motions[6 + d], w * std::pow(L, 4) / (8 * EI) + w * L * L / (2 * GA), close);
    within("moment at the root", b.members[0].start[about], sign * -w * L * L / 2, close);
    within("tip couple", c.motions[6 + d], sign * P * L * L / (2 * EI), close);

    FrameLoads centre, both;
    centre.force(1, along(P));
    both.line(0, L / 2, along(w));
    both.line(1, L / 2, along(w));
    const FrameAnswer e = fixed.solve(centre), g = fixed.solve(both);
    within("fixed, centre load", e.motions[6 + d], P * L * L * L / (192 * EI) + P * L / (4 * GA), close);
    within("fixed, centre load, moment", e.members[0].start[about], sign * -P * L / 8, close);
    within("fixed, spread load", g.motions[6 + d], w * std::pow(L, 4) / (384 * EI) + w * L * L / (8 * GA), close);

    FrameLoads grown, sunk, hot;
    grown.line(0, 0, L, {}, along(w));
    sunk.settle(1, d == 1 ? Motion::uy : Motion::uz, 0.01);
    hot.temperature(0, 0, y ? 30 : 0, y ? 0 : 30);
    const double phi = 12 * EI / (GA * L * L);
    const FrameAnswer h = held.solve(grown);
    // triangular load: end rotations of the simple beam 7 wL³/(360 EI) and 8 wL³/(360 EI), held back by the end moments
    // through the flexibility a = L/(3EI), 1/(G As L)
    const double a3 = L / (3 * EI), shear = 1 / (GA * L), p = 7 * w * L * L * L / (360 * EI),
                 q = 8 * w * L * L * L / (360 * EI);
    const double det = 0.75 * a3 * a3 + 3 * a3 * shear;
    within("triangle, start", h.members[0].start[about], sign * -((a3 + shear) * p - (a3 / 2 - shear) * q) / det,
           1e-11);
    within("triangle, end", h.members[0].end[about], sign * -((a3 / 2 - shear) * p - (a3 + shear) * q) / det, 1e-11);
    within("settlement", held.solve(sunk).members[0].start[about], sign * -6 * EI * 0.01 / (L * L * (1 + phi)), close);
    within("gradient, free tip", cantilever.solve(hot).motions[6 + d], -s.thermal_expansion * 30 * L * L / 2, close);
    within("gradient, held", std::abs(held.solve(hot).members[0].end[about]), EI * s.thermal_expansion * 30, close);
  }
  FrameLoads hot, twist;
  hot.temperature(0, 40);
  twist.couple(1, {P, 0, 0});
  within("held, warmed", pull(held.solve(hot), 0), -E * s.A * s.thermal_expansion * 40, close);
  within("free, warmed", cantilever.solve(hot).displacement(1).x, s.thermal_expansion * 40 * L, close);
  within("twist", cantilever.solve(twist).rotation(1).x, P * L / (G * s.J), close);

  // No shear strain is the limit of a growing shear area.
  FrameLoads tip;
  tip.force(1, {0, P, 0});
  s.shear_y = s.shear_z = rigid_stiffness;
  Frame slim;
  for (const double x : {0.0, L}) slim.add_node({x, 0, 0});
  slim.add_beam(0, 1, s);
  slim.clamp(0);
  within("no shear strain", FrameSolver(slim).solve(tip).displacement(1).y, P * L * L * L / (3 * E * s.Iz), close);
  slim.members[0].section.shear_y = 1e12 * s.A;
  within("hardly any", FrameSolver(slim).solve(tip).displacement(1).y, P * L * L * L / (3 * E * s.Iz), 1e-11);
}

TEST_CASE("a loaded member equals the same one cut where its loads begin and end" *
          doctest::skip(std::numeric_limits<Real>::digits <= std::numeric_limits<double>::digits)) {
  double worst = 0;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    BasicMember<Real> m = random_member(r);
    BasicFrame<Real> whole;
    whole.add_node({r.in(-1, 1), r.in(-1, 1), r.in(-1, 1)});
    whole.add_node({r.in(2, 4), r.in(-2, 2), r.in(-2, 2)});
    whole.add_member(m);
    spring_all(whole, 0, r);
    spring_all(whole, 1, r);
    const MemberAxes<Real> axes = axes_of(whole, m);
    const Real L = axes.length, a = L * Real(r.in(0.05, 0.45)), b = L * Real(r.in(0.55, 0.95));

    BasicFrame<Real> parts = whole;
    parts.members.clear();
    const std::size_t na = parts.add_node(axes.start + a * axes.x), nb = parts.add_node(axes.start + b * axes.x);
    m.up = axes.z;  // the parts' own direction of "up" could differ by a rounding
    m.roll = 0;
    const std::array<std::size_t, 4> at{0, na, nb, 1};
    for (std::size_t i = 0; i < 3; ++i) {
      BasicMember<Real> part = m;
      part.from = at[i];
      part.to = at[i + 1];
      if (i > 0) part.start = {};
      if (i < 2) part.end = {};
      parts.add_member(part);
    }
    const auto some = [&r] { return Vec3<Real>{r.in(-1, 1), r.in(-1, 1), r.in(-1, 1)}; };
    BasicFrameLoads<Real> on_whole, on_parts;
    const Vec3<Real> p = some(), c = some(), q0 = some(), q1 = some(), t0 = 10 * some(), t1{Real(r.in(-9, 9)), 0, 0};
    const std::size_t what = r.below(6);
    if (what == 0 || what == 5) {
      on_whole.force_on(0, a, p);
      on_parts.force(na, axes.to_global(p));
    }
    if (what == 1 || what == 5) {
      on_whole.couple_on(0, b, c);
      on_parts.couple(nb, axes.to_global(c));
    }
    if (what == 2 || what == 5) {
      on_whole.line(0, a, b, q0, q1);
      on_parts.line(1, 0, b - a, q0, q1);
    }
    if (what == 3 || what == 5) {
      const auto between = [&](Real x) { return q0 + (x / L) * (q1 - q0); };
      on_whole.line(0, 0, L, q0, q1);
      on_parts.line(0, 0, a, q0, between(a));
      on_parts.line(1, 0, b - a, between(a), between(b));
      on_parts.line(2, 0, L - b, between(b), q1);
    }
    if (what == 4 || what == 5) {
      using Load = BasicMemberLoad<Real>;
      const auto heat = [](std::size_t i, const Vec3<Real>& first, Real last) {
        return Load{Load::Kind::temperature, i, 0, 0, first, {last, 0, 0}};
      };
      const auto mean = [&](Real x) { return t0.x + (x / L) * (t1.x - t0.x); };
      on_whole.on_members.push_back(heat(0, t0, t1.x));
      on_parts.on_members.push_back(heat(0, t0, mean(a)));
      on_parts.on_members.push_back(heat(1, {mean(a), t0.y, t0.z}, mean(b)));
      on_parts.on_members.push_back(heat(2, {mean(b), t0.y, t0.z}, t1.x));
    }
    const double off =
        end_difference(BasicFrameSolver<Real>(whole).solve(on_whole), BasicFrameSolver<Real>(parts).solve(on_parts), 2);
    CHECK(off < 1e-12);
    worst = (std::max)(worst, off);
  }
  MESSAGE("largest difference " << worst);
}

TEST_CASE("offsets are stiff stubs and end springs are short soft bars" *
          doctest::skip(std::numeric_limits<Real>::digits <= std::numeric_limits<double>::digits)) {
  double worst = 0;
  // The stubs are 1e6 times stiffer than the bar, the soft bars 1e-5 long: differences of those orders, some ten times
  // over, are allowed.
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    BasicMember<Real> m = random_member(r);
    const Real stiff = 1e6L, little = 1e-5L;
    for (BasicMemberEnd<Real>* e : {&m.start, &m.end})  // a released rod would leave a stub loose
      for (Real* k : {&e->axial, &e->torsion, &e->about_y, &e->about_z})
        if (!(*k > 0)) *k = 1;
    m.start.offset = {r.in(0.1, 0.3), r.in(-0.3, 0.3), r.in(0.1, 0.3)};
    m.end.offset = {r.in(-0.3, -0.1), r.in(-0.3, 0.3), r.in(-0.3, 0.3)};
    BasicFrame<Real> whole;
    whole.add_node({0, 0, 0});
    whole.add_node({r.in(2, 4), r.in(-2, 2), r.in(-2, 2)});
    whole.add_member(m);
    spring_all(whole, 0, r);
    spring_all(whole, 1, r);
    const MemberAxes<Real> axes = axes_of(whole, m);
    BasicFrame<Real> parts = whole;
    parts.members.clear();
    const std::size_t start = parts.add_node(axes.start), end = parts.add_node(axes.end);
    const std::size_t past_start = parts.add_node(axes.start + little * axes.x);
    const std::size_t past_end = parts.add_node(axes.end - little * axes.x);
    const BasicFrameSection<Real> rigid{stiff, stiff, 1, 1, 1, 1, Real(rigid_stiffness), Real(rigid_stiffness), 0, 0};
    const auto soft = [&](const BasicMemberEnd<Real>& e) {
      const auto finite = [&](Real k) { return is_infinite(k) ? stiff : k; };
      BasicFrameSection<Real> s;
      s.E = s.G = 1;
      s.A = little * finite(e.axial);
      s.J = little * finite(e.torsion);
      s.Iy = little * finite(e.about_y);
      s.Iz = little * finite(e.about_z);
      s.shear_y = little * finite(e.shear_y);
      s.shear_z = little * finite(e.shear_z);
      return s;
    };
    parts.add_beam(start, past_start, soft(m.start), axes.z);
    parts.add_beam(past_start, past_end, m.section, axes.z);
    parts.add_beam(past_end, end, soft(m.end), axes.z);
    parts.add_beam(0, start, rigid);
    parts.add_beam(end, 1, rigid);
    BasicFrameLoads<Real> on_whole, on_parts;
    const Vec3<Real> q{r.in(-1, 1), r.in(-1, 1), r.in(-1, 1)}, p{r.in(-1, 1), r.in(-1, 1), r.in(-1, 1)};
    on_whole.line(0, axes.length, q);
    on_parts.line(1, axes.length - 2 * little, q);
    for (BasicFrameLoads<Real>* l : {&on_whole, &on_parts}) {
      l->force(0, p);
      l->couple(1, q);
    }
    const BasicFrameAnswer<Real> one = BasicFrameSolver<Real>(whole).solve(on_whole);
    const double off = end_difference(one, BasicFrameSolver<Real>(parts).solve(on_parts), 2);
    CHECK(off < 1e-4);
    worst = (std::max)(worst, off);
  }
  MESSAGE("largest difference " << worst);
}

TEST_CASE("semi-rigid ends lie between pinned and rigid, and reach both") {
  // Closed form: equal springs k on a span under w: end moment wL²/12 / (1 + 2EI/(kL)) (slope deflection).
  const double EI = 2, L = 3, w = 1;
  for (const double k : {0.0, 1e-13, 0.01, 0.5, 2.0, 40.0, 1e13, rigid_stiffness}) {
    Frame f;
    f.add_node({0, 0, 0});
    f.add_node({L, 0, 0});
    f.add_beam(0, 1, plane_section(1, 1, EI));
    for (MemberEnd* e : {&f.members[0].start, &f.members[0].end}) e->about_z = e->about_y = k;
    f.clamp(0);
    f.clamp(1);
    FrameLoads loads;
    loads.line(0, L, {0, -w, -w});
    const FrameAnswer a = FrameSolver(f).solve(loads);
    const double expected = w * L * L / 12 * (k > 0 ? 1 / (1 + 2 * EI / (k * L)) : 0);
    INFO("spring " << k);
    CHECK(std::abs(a.members[0].start[5] - expected) < 1e-12);
    CHECK(std::abs(a.members[0].start[4] + expected) < 1e-12);
  }
}
