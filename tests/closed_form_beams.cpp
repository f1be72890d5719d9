// SPDX-License-Identifier: MIT
// The exact beam on any supports against handbook tables, the explicit formulas, and the laws of elastic beams.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <vector>

#include <baywork/closed_form.hpp>

namespace {

using namespace baywork::closed_form;
using Beam = StraightBeam<double>;
using Loads = BeamLoads<double>;
using Exact = ContinuousBeam<double>;

constexpr double rigid = baywork::rigid_stiffness;

double difference(double a, double b) { return std::abs(a - b) / (std::max)(std::abs(a), std::abs(b)); }

Beam simple(double L, double EI = 1.0, double S = rigid) { return {L, EI, S, {{0.0}, {L}}}; }
Beam equal_spans(int spans, double l = 1.0, double EI = 1.0, double S = rigid) {
  Beam beam{spans * l, EI, S, {}};
  for (int i = 0; i <= spans; ++i) beam.supports.push_back({i * l});
  return beam;
}
Loads uniform(double q, double a, double b) { return {{}, {{q, q, a, b}}, {}}; }
Loads point(double P, double x) { return {{{P, x}}, {}, {}}; }

// A beam with everything: shear, springs, settlements, a clamp spring, overhangs; and loads of every kind.
Beam mixed() { return {11.0, 3e6, 4e6, {{1.0, 2e6, 0.003}, {4.0}, {6.5, 8e5, -0.002, 5e5}, {10.0, rigid, 0.001}}}; }
Loads mixed_loads() {
  return {{{1500.0, 0.0}, {4000.0, 5.1}, {-700.0, 10.5}},
          {{300.0, 900.0, 0.5, 8.0}, {500.0, 0.0, 7.0, 11.0}},
          {{250.0, 3.3}}};
}

}  // namespace

TEST_CASE("coefficients of load tables: simply supported spans and cantilevers") {
  // W. C. Young and R. G. Budynas, Roark's Formulas, chapter 8 (values from memory) for bending; shear M/S. L = EI = 1.
  struct Line {
    double bend, shear, M, R;
  };
  const std::array<Line, 4> table{{{1.0 / 48, 0.25, 0.25, 0.5},
                                   {23.0 / 648, 1.0 / 3, 1.0 / 3, 1.0},
                                   {19.0 / 384, 0.5, 0.5, 1.5},
                                   {0.063, 0.6, 0.6, 2.0}}};
  for (int n = 1; n <= 4; ++n) {
    Loads loads;
    for (int i = 1; i <= n; ++i) loads.points.push_back({1.0, static_cast<double>(i) / (n + 1)});
    const Line& t = table[static_cast<std::size_t>(n - 1)];
    for (const double S : {rigid, 5.0}) {
      const Exact e(simple(1.0, 1.0, S), loads);
      const auto f = simple_span_equal_points(n, 1.0, 1.0, 1.0, S);
      CHECK(difference(e.deflection(0.5), t.bend + t.shear / S) <= 1e-13);
      CHECK(difference(f.deflection.value, e.deflection(0.5)) <= 1e-13);
      CHECK(difference(e.moment(0.5), t.M) <= 1e-13);
      CHECK(difference(f.moment.value, t.M) <= 1e-13);
      CHECK(difference(f.reaction.value, t.R) <= 1e-13);
      CHECK(difference(e.reaction(1), t.R) <= 1e-13);
    }
  }
  for (const double S : {rigid, 5.0}) {
    const Exact e(simple(1.0, 1.0, S), uniform(1.0, 0.0, 1.0));
    CHECK(difference(e.deflection(0.5), 5.0 / 384 + 0.125 / S) <= 1e-13);
    CHECK(difference(e.moment(0.5), 0.125) <= 1e-13);
    CHECK(difference(simple_span_uniform(1.0, 1.0, 1.0, S).deflection.value, e.deflection(0.5)) <= 1e-13);
    const Beam cantilever{1.0, 1.0, S, {clamp_at(0.0)}};
    const Exact u(cantilever, uniform(1.0, 0.0, 1.0));
    CHECK(difference(u.deflection(1.0), 1.0 / 8 + 0.5 / S) <= 1e-13);
    CHECK(difference(u.moment(0.0), -0.5) <= 1e-13);
    CHECK(difference(cantilever_uniform(1.0, 1.0, 1.0, S).deflection.value, u.deflection(1.0)) <= 1e-13);
    const Exact p(cantilever, point(1.0, 1.0));
    CHECK(difference(p.deflection(1.0), 1.0 / 3 + 1.0 / S) <= 1e-13);
    CHECK(difference(cantilever_end_load(1.0, 1.0, 1.0, S).deflection.value, p.deflection(1.0)) <= 1e-13);
    CHECK(difference(p.shear(0.5), 1.0) <= 1e-13);
  }
  // AISC Manual, table 3-23, case 2 (values from memory, three digits): load rising to W = q L/2 in all,
  // M 0.1283 W L at 0.5774 L, w 0.01304 W L^3/EI at 0.519 L.
  const Exact ramp(simple(1.0), {{}, {{0.0, 2.0, 0.0, 1.0}}, {}});
  CHECK(difference(ramp.moment(std::sqrt(1.0 / 3)), 0.1283) <= 5e-4);
  CHECK(std::abs(ramp.shear(std::sqrt(1.0 / 3))) <= 1e-14);
  CHECK(difference(ramp.deflection(0.519), 0.01304) <= 5e-4);
  CHECK(difference(ramp.reaction(1), 2.0 / 3) <= 1e-14);
}

TEST_CASE("MacNeal and Harder's straight cantilever") {
  // R. H. MacNeal and R. L. Harder, Finite Elements in Analysis and Design 1 (1985): L 6, 0.2 x 0.1, E 1e7, nu 0.3,
  // unit tip load: 0.1081 in plane, 0.4321 out of plane (values from memory; shear area 5/6).
  const double S = 1e7 / 2.6 * 0.02 * 5.0 / 6.0;
  CHECK(difference(cantilever_end_load(1.0, 6.0, 1e7 * 0.1 * 0.008 / 12, S).deflection.value, 0.1081) <= 2e-4);
  CHECK(difference(cantilever_end_load(1.0, 6.0, 1e7 * 0.2 * 0.001 / 12, S).deflection.value, 0.4321) <= 2e-4);
}

TEST_CASE("continuous beams of equal spans under a uniform load") {
  // AISC Manual, table 3-22c (values from memory), exact by the three-moment equation: reactions in q l, moments in q
  // l^2.
  struct Row {
    std::vector<double> R, M;
  };
  const std::array<Row, 4> rows{
      {{{3. / 8, 10. / 8, 3. / 8}, {-1. / 8}},
       {{.4, 1.1, 1.1, .4}, {-.1, -.1}},
       {{11. / 28, 32. / 28, 26. / 28, 32. / 28, 11. / 28}, {-3. / 28, -2. / 28, -3. / 28}},
       {{15. / 38, 43. / 38, 37. / 38, 37. / 38, 43. / 38, 15. / 38}, {-4. / 38, -3. / 38, -3. / 38, -4. / 38}}}};
  for (int n = 2; n <= 5; ++n) {
    const Exact e(equal_spans(n), uniform(1.0, 0.0, n));
    const Row& row = rows[static_cast<std::size_t>(n - 2)];
    for (std::size_t i = 0; i < row.R.size(); ++i) CHECK(difference(e.reaction(i), row.R[i]) <= 1e-12);
    for (std::size_t i = 0; i < row.M.size(); ++i)
      CHECK(difference(e.moment(static_cast<double>(i + 1)), row.M[i]) <= 1e-12);
  }
  // Largest field moments and deflections, same source, to half a unit of the last printed digit: +0.080 in the end of
  // three spans, +0.025 in the middle one; +0.0772 and +0.0364 of four. Deflections 0.0069 q l^4/EI (three), 0.0065
  // (four).
  const Exact three(equal_spans(3), uniform(1.0, 0.0, 3.0));
  CHECK(difference(three.moment(0.4), 0.080) <= 1e-12);
  CHECK(difference(three.moment(1.5), 0.025) <= 1e-12);
  CHECK(std::abs(three.deflection(0.446) - 0.0069) <= 5e-5);
  const Exact four(equal_spans(4), uniform(1.0, 0.0, 4.0));
  CHECK(std::abs(four.moment(0.393) - 0.0772) <= 5e-5);
  CHECK(std::abs(four.moment(1.536) - 0.0364) <= 5e-5);
  CHECK(std::abs(four.deflection(0.440) - 0.0065) <= 5e-5);
  // One of two spans loaded: R 7/16, 10/16, -1/16; field moment 49/512 (AISC table 3-23, value from memory).
  const Exact one(equal_spans(2), uniform(1.0, 0.0, 1.0));
  CHECK(difference(one.reaction(0), 7.0 / 16) <= 1e-12);
  CHECK(difference(one.reaction(1), 10.0 / 16) <= 1e-12);
  CHECK(difference(one.reaction(2), -1.0 / 16) <= 1e-12);
  CHECK(difference(one.moment(7.0 / 16), 49.0 / 512) <= 1e-12);
  // Three spans, first two loaded: R 0.383, 1.200, 0.450, -0.033; M -0.1167, -0.0333 (AISC table 3-22c, from memory).
  const Exact two(equal_spans(3), uniform(1.0, 0.0, 2.0));
  const std::array<double, 4> R{0.383, 1.200, 0.450, -0.033};
  for (std::size_t i = 0; i < 4; ++i) CHECK(std::abs(two.reaction(i) - R[i]) <= 5e-4);
  CHECK(std::abs(two.moment(1.0) + 0.1167) <= 5e-5);
  CHECK(std::abs(two.moment(2.0) + 0.0333) <= 5e-5);
}

TEST_CASE("influence lines of two and three spans") {
  // Three-moment equation: unit load at x in span 1 of two: M = -(x/4)(1 - x^2) at the middle support.
  const std::array<double, 4> x{0.25, 0.5, 1.0 / std::sqrt(3.0), 0.75}, M{-.0586, -.09375, -.09623, -.0820},
      R{.69141, .40625, .32642, .16797};
  for (std::size_t i = 0; i < 4; ++i) {
    const Exact e(equal_spans(2), point(1.0, x[i]));
    CHECK(difference(e.moment(1.0), -(x[i] / 4) * (1 - x[i] * x[i])) <= 1e-12);
    CHECK(std::abs(e.moment(1.0) - M[i]) <= 5.1e-5);
    CHECK(std::abs(e.reaction(0) - R[i]) <= 5.1e-6);
  }
  const Exact a(equal_spans(3), point(1.0, 0.5));
  const Exact b(equal_spans(3), point(1.0, 1.5));
  const std::array<double, 4> Ra{.4, .725, -.15, .025}, Rb{-.075, .575, .575, -.075};
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(difference(a.reaction(i), Ra[i]) <= 1e-12);
    CHECK(difference(b.reaction(i), Rb[i]) <= 1e-12);
  }
  CHECK(difference(a.moment(1.0), -0.1) <= 1e-12);
  CHECK(difference(a.moment(2.0), 0.025) <= 1e-12);
  CHECK(difference(b.moment(2.0), -0.075) <= 1e-12);
}

TEST_CASE("clamped and propped beams") {
  const auto clamped = [](double L, double EI, double S) { return Beam{L, EI, S, {clamp_at(0.0), clamp_at(L)}}; };
  // R. C. Hibbeler, Structural Analysis, table of fixed-end moments (values from memory); a load rising linearly:
  // w L^2/30 at its thin end, w L^2/20 at the other; a triangle with its peak at mid-span 5 w L^2/96.
  // A published example of moment distribution prints 14.628, -21.943; 26.743, -29.828 for 4 m + 3 m under 0 to 48
  // kN/m.
  const double w = 48.0 * 4.0 / 7.0;
  const Exact first(clamped(4.0, 1.0, rigid), {{}, {{0.0, w, 0.0, 4.0}}, {}});
  CHECK(difference(first.moment(0.0), -w * 16 / 30) <= 1e-12);
  CHECK(difference(first.moment(0.0), -14.628) <= 5e-5);
  CHECK(difference(first.moment(4.0), -21.943) <= 5e-5);
  const Exact second(clamped(3.0, 1.0, rigid), {{}, {{w, 48.0, 0.0, 3.0}}, {}});
  CHECK(difference(second.moment(0.0), -26.743) <= 5e-5);
  CHECK(difference(second.moment(3.0), -29.828) <= 5e-5);
  const Exact peak(clamped(8.0, 1.0, rigid), {{}, {{0.0, 24.0, 0.0, 4.0}, {24.0, 0.0, 4.0, 8.0}}, {}});
  CHECK(difference(peak.moment(0.0), -5.0 * 24 * 64 / 96) <= 1e-12);
  // AISC Manual, table 3-23, cases 12 and 13 (values from memory): propped beams.
  const Beam propped{1.0, 1.0, rigid, {clamp_at(0.0), {1.0}}};
  const Exact pu(propped, uniform(1.0, 0.0, 1.0));
  CHECK(difference(pu.reaction(1), 3.0 / 8) <= 1e-12);
  CHECK(difference(pu.moment(0.0), -1.0 / 8) <= 1e-12);
  CHECK(difference(pu.moment(5.0 / 8), 9.0 / 128) <= 1e-12);
  CHECK(difference(pu.deflection(1.0 - 0.4215), 1.0 / 185) <= 2e-3);
  const Exact pp(propped, point(1.0, 0.5));
  CHECK(difference(pp.reaction(1), 5.0 / 16) <= 1e-12);
  CHECK(difference(pp.moment(0.0), -3.0 / 16) <= 1e-12);
  CHECK(difference(pp.moment(0.5), 5.0 / 32) <= 1e-12);
  CHECK(difference(pp.deflection(1.0 - 0.447), 0.009317) <= 1e-3);

  // J. S. Przemieniecki, Theory of Matrix Structural Analysis, chapter 5 (value from memory), f = 12 EI/(S L^2): end
  // moment 6 EI/(L^2 (1 + f)) and shear 12 EI/(L^3 (1 + f)) per unit settlement; (4 + f) EI/(L (1 + f)) per unit turn
  // of an end with carry-over (2 - f)/(4 + f).
  const double L = 5.0, EI = 2e6;
  for (const double S : {rigid, 7e5}) {
    const double f = S == rigid ? 0.0 : 12 * EI / (S * L * L);
    Beam sunk = clamped(L, EI, S);
    sunk.supports[1].settlement = 0.01;
    const Exact e(sunk, {});
    CHECK(difference(e.reaction(0), 0.12 * EI / (L * L * L * (1 + f))) <= 1e-12);
    CHECK(difference(e.moment(0.0), -0.06 * EI / (L * L * (1 + f))) <= 1e-12);
    CHECK(difference(e.moment(L), 0.06 * EI / (L * L * (1 + f))) <= 1e-12);
    const Exact turned({L, EI, S, {{0.0}, clamp_at(L)}}, {{}, {}, {{1.0, 0.0}}});
    CHECK(difference(turned.rotation(0.0), (1 + f) * L / ((4 + f) * EI)) <= 1e-12);
    CHECK(difference(turned.moment(L), -(2 - f) / (4 + f)) <= 1e-12);
    // The explicit formulas against the exact beam.
    const Exact u(clamped(L, EI, S), uniform(700.0, 0.0, L));
    const auto fu = clamped_span_uniform(700.0, L, EI, S);
    CHECK(difference(u.moment(0.0), fu.moment.value) <= 1e-12);
    CHECK(difference(u.deflection(L / 2), fu.deflection.value) <= 1e-12);
    CHECK(difference(u.reaction(0), fu.reaction.value) <= 1e-12);
    const Exact c(clamped(L, EI, S), point(900.0, L / 2));
    const auto fc = clamped_span_centre_load(900.0, L, EI, S);
    CHECK(difference(c.moment(0.0), fc.moment.value) <= 1e-12);
    CHECK(difference(c.moment(L / 2), -fc.moment.value) <= 1e-12);
    CHECK(difference(c.deflection(L / 2), fc.deflection.value) <= 1e-12);
    const Exact a(clamped(L, EI, S), point(900.0, 1.3));
    CHECK(difference(a.moment(0.0), clamped_span_point_left_moment(900.0, 1.3, L, EI, S).value) <= 1e-12);
    CHECK(difference(a.moment(L), clamped_span_point_left_moment(900.0, L - 1.3, L, EI, S).value) <= 1e-12);
    const Beam prop{L, EI, S, {clamp_at(0.0), {L}}};
    CHECK(difference(Exact(prop, uniform(700.0, 0.0, L)).reaction(1),
                     propped_span_uniform_reaction(700.0, L, EI, S).value) <= 1e-12);
    CHECK(difference(Exact(prop, point(900.0, L / 2)).reaction(1),
                     propped_span_centre_load_reaction(900.0, L, EI, S).value) <= 1e-12);
  }
}

TEST_CASE("simple span and overhang formulas against the exact beam") {
  const double L = 7.0, EI = 3e6;
  for (const double S : {rigid, 9e5}) {
    const Exact t(simple(L, EI, S), {{}, {{200.0, 900.0, 0.0, L}}, {}});
    const auto ft = simple_span_trapezoid(200.0, 900.0, L, EI, S);
    CHECK(difference(t.deflection(L / 2), ft.deflection.value) <= 1e-12);
    CHECK(difference(t.moment(L / 2), ft.moment.value) <= 1e-12);
    CHECK(difference(t.reaction(1), ft.reaction.value) <= 1e-12);
    const Exact p(simple(L, EI, S), point(800.0, 2.0));
    const auto fp = simple_span_point(800.0, 2.0, L, EI, S);
    CHECK(difference(p.deflection(2.0), fp.deflection.value) <= 1e-12);
    CHECK(difference(p.moment(2.0), fp.moment.value) <= 1e-12);
    CHECK(difference(p.reaction(0), fp.reaction.value) <= 1e-12);
    CHECK(difference(p.shear(2.0, StepSide::before) - p.shear(2.0), 800.0) <= 1e-12);
    const Exact m(simple(L, EI, S), uniform(400.0, 2.0, 5.0));
    const auto fm = simple_span_middle_part(400.0, 3.0, L, EI, S);
    CHECK(difference(m.deflection(L / 2), fm.deflection.value) <= 1e-12);
    CHECK(difference(m.moment(L / 2), fm.moment.value) <= 1e-12);
    const double c = 1.8;
    const Beam over{L + 2 * c, EI, S, {{c}, {c + L}}};
    const Exact o(over, uniform(400.0, 0.0, L + 2 * c));
    const auto fo = overhangs_uniform(400.0, L, c, EI, S);
    CHECK(difference(o.moment(c), fo.support_moment.value) <= 1e-12);
    CHECK(difference(o.moment(c + L / 2), fo.mid_moment.value) <= 1e-12);
    CHECK(difference(o.deflection(c + L / 2), fo.mid_deflection.value) <= 1e-12);
    CHECK(difference(o.deflection(0.0), fo.tip_deflection.value) <= 1e-12);
    CHECK(difference(o.deflection(L + 2 * c), fo.tip_deflection.value) <= 1e-12);
    const Exact e(over, point(400.0, 0.0));
    const auto fe = overhang_end_load(400.0, L, c, EI, S);
    CHECK(difference(e.reaction(0), fe.reaction.value) <= 1e-12);
    CHECK(difference(e.moment(c), fe.moment.value) <= 1e-12);
    CHECK(difference(e.deflection(0.0), fe.deflection.value) <= 1e-12);
  }
  CHECK_FALSE(simple_span_point(1.0, 8.0, L, EI, rigid).moment.valid);
  CHECK_FALSE(simple_span_middle_part(1.0, 8.0, L, EI, rigid).moment.valid);
}

TEST_CASE("two spans: elastic and lowered supports, slack") {
  // Limits (AISC table 3-22c, value from memory; statics): 5/8 of the load without shear strain, 1/2 for vanishing S.
  CHECK(difference(two_equal_spans_uniform(1.0, 6.0, 1.0, rigid).middle_reaction.value, 0.625 * 12) <= 1e-14);
  CHECK(difference(two_equal_spans_uniform(1.0, 6.0, 1.0, 1e-12).middle_reaction.value, 0.5 * 12) <= 1e-11);
  // l 6 m, q 1 kN/m, E Ach h^2 and two faces of a girder with 0.4 m faces (hand evaluation): 7.425, 7.397, 6.711 kN.
  const double E = 70e9, EI = E * 6e-4 * 0.16;
  const auto R = [EI](double face) { return two_equal_spans_uniform(1.0, 6.0, EI, 2 * face).middle_reaction.value; };
  CHECK(std::abs(R(alternating_face_stiffness(E, 2.5e-4, 0.5, 0.4).value) - 7.425) <= 5e-4);
  CHECK(std::abs(R(single_direction_face_stiffness(E, 2.5e-4, 1.5e-4, 0.5, 0.4).value) - 7.397) <= 5e-4);
  CHECK(std::abs(R(open_face_stiffness(E * 1.5e-7, E * 0.8e-7, 0.5, 0.4).value) - 6.711) <= 5e-4);
  // Settlement: the middle moment rises by 3 EI d/l^2 (three-moment equation).
  Beam sunk = equal_spans(2, 3.0, 2e6);
  sunk.supports[1].settlement = 0.01;
  CHECK(difference(Exact(sunk, {}).moment(3.0), 3 * 2e6 * 0.01 / 9) <= 1e-12);
  for (const double S : {rigid, 4e5}) {
    const TwoSpanSupports<double> soft{3e6, 1e6, 0.004};
    Beam beam = equal_spans(2, 6.0, EI, S);
    beam.supports = {{0.0, 3e6}, {6.0, 1e6, 0.004}, {12.0, 3e6}};
    const Exact e(beam, uniform(900.0, 0.0, 12.0));
    const auto f = two_equal_spans_uniform(900.0, 6.0, EI, S, soft);
    CHECK(difference(e.reaction(1), f.middle_reaction.value) <= 1e-12);
    CHECK(difference(e.reaction(0), f.end_reaction.value) <= 1e-12);
    CHECK(difference(slack_settlement(beam, uniform(900.0, 0.0, 12.0), 1).value, f.slack_lowering.value) <= 1e-11);
    beam.supports[1].settlement = f.slack_lowering.value;
    CHECK(std::abs(Exact(beam, uniform(900.0, 0.0, 12.0)).reaction(1)) <= 1e-9);
    CHECK_FALSE(
        two_equal_spans_uniform(900.0, 6.0, EI, S, {3e6, 1e6, 1.01 * f.slack_lowering.value}).middle_reaction.valid);
  }
  // A support that is needed never goes slack by settling; one among many does where the criterion says.
  CHECK_FALSE(slack_settlement(simple(5.0), uniform(1.0, 0.0, 5.0), 0).valid);
  Beam many = mixed();
  many.supports[1].settlement = slack_settlement(many, mixed_loads(), 1).value;
  CHECK(std::abs(Exact(many, mixed_loads()).reaction(1)) <= 1e-8);
}

TEST_CASE("beam on many springs is a beam on elastic foundation") {
  // M. Hetenyi, Beams on Elastic Foundation (value from memory): w = P beta/(2 k), M = P/(4 beta), dip over at
  // pi/(4 beta) + n pi/beta; beta^4 = k/(4 EI). Springs k a every a = 0.05/beta, beam 20/beta long.
  Beam beam{20.0, 1.0, rigid, {}};
  for (int i = 0; i <= 400; ++i) beam.supports.push_back({i * 0.05, 4.0 * 0.05});
  const Exact e(beam, point(1.0, 10.0));
  CHECK(difference(e.deflection(10.0), 1.0 / 8) <= 1e-5);
  CHECK(difference(e.moment(10.0), 1.0 / 4) <= 2e-3);
  CHECK(difference(e.deflection(13.14159265358979), -std::exp(-3.14159265358979) / 8) <= 1e-3);
}

TEST_CASE("laws every elastic beam keeps") {
  const Beam beam = mixed();
  const Loads loads = mixed_loads();
  const Exact e(beam, loads);
  // Balance of forces and moments (clamp spring included), loads summed by hand.
  const double down = 1500 + 4000 - 700 + 600 * 7.5 + 250 * 4.0;
  double up = 0;
  for (std::size_t i = 0; i < 4; ++i) up += e.reaction(i);
  CHECK(difference(up, down) <= 1e-13);
  const double about_0 =
      4000 * 5.1 - 700 * 10.5 + 600 * 7.5 * 0.5 + 7.5 * 7.5 * (300 + 2 * 900) / 6 + 1000 * (7 + 4.0 / 3) + 250;
  double moment = -e.support_couple(2);
  for (std::size_t i = 0; i < 4; ++i) moment += e.reaction(i) * beam.supports[i].x;
  CHECK(difference(moment, about_0) <= 1e-13);
  // Supports obey their springs; free ends carry nothing.
  for (std::size_t i = 0; i < 4; ++i) {
    const auto& s = beam.supports[i];
    const double give = s.stiffness == rigid ? 0.0 : e.reaction(i) / s.stiffness;
    CHECK(std::abs(e.deflection(s.x) - s.settlement - give) <= 1e-15);
  }
  CHECK(difference(e.support_couple(2), -5e5 * e.rotation(6.5)) <= 1e-10);
  CHECK(difference(e.moment(6.5) - e.moment(6.5, StepSide::before), e.support_couple(2)) <= 1e-12);
  CHECK(std::abs(e.moment(11.0)) <= 1e-9);
  CHECK(std::abs(e.shear(11.0)) <= 1e-9);
  CHECK(difference(e.shear(0.0), -1500.0) <= 1e-12);
  // Differential equations by central differences: V = M', M = -EI t', w' = t + V/S.
  for (const double x : {0.7, 2.2, 5.7, 7.5, 9.1}) {
    const double d = 1e-4;
    CHECK(difference((e.moment(x + d) - e.moment(x - d)) / (2 * d), e.shear(x)) <= 1e-6);
    CHECK(difference(-3e6 * (e.rotation(x + d) - e.rotation(x - d)) / (2 * d), e.moment(x)) <= 1e-6);
    CHECK(difference((e.deflection(x + d) - e.deflection(x - d)) / (2 * d), e.rotation(x) + e.shear(x) / 4e6) <= 1e-6);
  }
  // Superposition: loads one by one, settlements alone.
  Beam level = beam;
  for (auto& s : level.supports) s.settlement = 0;
  const Exact parts[] = {Exact(level, {loads.points, {}, {}}), Exact(level, {{}, loads.lines, {}}),
                         Exact(level, {{}, {}, loads.couples}), Exact(beam, {})};
  double w = 0, M = 0;
  for (const Exact& p : parts) w += p.deflection(5.0), M += p.moment(5.0);
  CHECK(difference(w, e.deflection(5.0)) <= 1e-12);
  CHECK(difference(M, e.moment(5.0)) <= 1e-12);
  // Maxwell: deflection at b from a load at a, and the other way; turn at b from a load at a = deflection from a
  // couple.
  const Exact at_a(level, point(1.0, 2.5)), at_b(level, point(1.0, 8.7)), couple_b(level, {{}, {}, {{1.0, 8.7}}});
  CHECK(difference(at_a.deflection(8.7), at_b.deflection(2.5)) <= 1e-11);
  CHECK(difference(at_a.rotation(8.7), couple_b.deflection(2.5)) <= 1e-11);
  // Energy: half the load's work is stored in bending, shear and springs (Simpson between the steps).
  const std::array<double, 7> steps{0.0, 1.0, 2.5, 4.0, 6.5, 10.0, 11.0};
  double energy = 0;
  for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
    const double a = steps[i], l = steps[i + 1] - a;
    const auto density = [&](double x, StepSide side) {
      const double m = at_a.moment(x, side), v = at_a.shear(x, side);
      return m * m / (2 * 3e6) + v * v / (2 * 4e6);
    };
    energy +=
        l / 6 *
        (density(a, StepSide::after) + 4 * density(a + l / 2, StepSide::after) + density(a + l, StepSide::before));
  }
  energy += std::pow(at_a.reaction(0), 2) / (2 * 2e6) + std::pow(at_a.reaction(2), 2) / (2 * 8e5) +
            std::pow(at_a.support_couple(2), 2) / (2 * 5e5);
  CHECK(difference(energy, at_a.deflection(2.5) / 2) <= 1e-11);
  // A beam turned end for end answers the same, mirrored.
  const Beam ten = equal_spans(10, 4.0, 2e6, 5e5);
  const Exact left(ten, point(1.0, 5.0)), right(ten, point(1.0, 35.0));
  for (std::size_t i = 0; i <= 10; ++i) CHECK(std::abs(left.reaction(i) - right.reaction(10 - i)) <= 1e-12);
  CHECK(difference(left.deflection(6.0), right.deflection(34.0)) <= 1e-12);
  // A large shear stiffness runs into the beam without shear strain.
  Beam stiff = beam;
  stiff.shear_stiffness = 1e18;
  Beam no_shear = beam;
  no_shear.shear_stiffness = rigid;
  CHECK(difference(Exact(stiff, loads).reaction(1), Exact(no_shear, loads).reaction(1)) <= 1e-10);
}

TEST_CASE("beams that mean nothing are refused") {
  CHECK_THROWS_AS(Exact({1.0, 1.0, rigid, {{0.5}}}, {}), baywork::UnstableFrame);
  CHECK_THROWS_AS(Exact({1.0, 1.0, rigid, {{0.0}, {0.0}}}, {}), baywork::BadDescription);
  CHECK_THROWS_AS(Exact({1.0, 1.0, rigid, {{0.0}, {1.5}}}, {}), baywork::BadDescription);
  CHECK_THROWS_AS(Exact(simple(1.0), point(1.0, 1.5)), baywork::BadDescription);
  CHECK_THROWS_AS(Exact(simple(1.0), {{}, {{1.0, 1.0, 0.5, 0.5}}, {}}), baywork::BadDescription);
  CHECK_THROWS_AS(Exact(simple(1.0, std::nan("")), {}), baywork::BadDescription);
  CHECK_THROWS_AS(simple_span_equal_points(5, 1.0, 1.0, 1.0, rigid), baywork::BadDescription);
}
