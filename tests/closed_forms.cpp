// SPDX-License-Identifier: MIT
// Closed forms of panels, faces and whole sections against standards, textbooks and hand calculation.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include <Eigen/Core>
#include <unsupported/Eigen/AutoDiff>

#include <baywork/closed_form.hpp>

#include "support/calculator.hpp"

namespace {

using namespace baywork::closed_form;

double difference(double a, double b) { return std::abs(a - b) / (std::max)(std::abs(a), std::abs(b)); }

void recompute(const ClosedForm<double>& f) {
  CAPTURE(with_numbers(f));
  CHECK(difference(Calculator(numbers_in(f.formula, f.numbers, 17)).run(), f.value) <= 1e-13);
}
void recompute(const BeamFormulas<double>& f) {
  recompute(f.reaction);
  recompute(f.moment);
  recompute(f.deflection);
}

// A girder used below: E 70 GPa, panels 0.5 m, faces 0.5 m and 0.4 m wide.
constexpr double E = 70e9, Ac = 6e-4, Ad = 2.5e-4, Av = 1.5e-4, Ic = 1.5e-7, Ib = 0.8e-7, s = 0.5, h = 0.4, b = 0.5;

}  // namespace

TEST_CASE("portal method: moments of open panels") {
  // R. C. Hibbeler, Structural Analysis, portal method (value from memory): chord end moment V a/4. Six panels of 1.5
  // m, unit loads at the interior panel points: V = 2.5, 1.5, 0.5.
  CHECK(portal_panel(2.5, 1.5, 1.0).chord_end_moment == 0.9375);
  CHECK(portal_panel(1.5, 1.5, 1.0).chord_end_moment == 0.5625);
  CHECK(portal_panel(0.5, 1.5, 1.0).chord_end_moment == 0.1875);
  // Hibbeler, example 7-6 (value from memory): column shears of two equal bays 5, 10, 5 under 20 kN: half and whole of
  // a bay's 10 kN, as two chords share one panel's V.
  CHECK(portal_panel(10.0, 4.0, 8.0).chord_shear == 5.0);
  // EN 1993-1-1, figure 6.11 (value from memory): chord V a/4, interior batten V a/2, its shear V a/h0.
  const auto p = portal_panel(12.0, 1.0, 0.6);
  CHECK(p.chord_end_moment == 3.0);
  CHECK(p.cross_member_moment == 6.0);
  CHECK(p.end_cross_member_moment == 3.0);
  CHECK(difference(p.cross_member_shear, 20.0) <= 1e-15);
  CHECK(difference(p.end_cross_member_shear, 10.0) <= 1e-15);
  // Balance of the cross member: its shear times h is the sum of its end moments; and of the joint.
  CHECK(difference(p.cross_member_shear * 0.6, 2.0 * p.cross_member_moment) <= 1e-15);
  CHECK(portal_cross_member_moment(2.5, 1.5, 1.5, 1.5) == 1.5);
  CHECK(portal_cross_member_moment(12.0, 1.0, 0.0, 1.0) == p.end_cross_member_moment);
  // Middle panel point of an even, symmetric girder: V changes its sign, the cross member is idle.
  CHECK(portal_cross_member_moment(0.5, 1.5, -0.5, 1.5) == 0.0);
  CHECK_THROWS_AS(portal_panel(1.0, 0.0, 1.0), baywork::BadDescription);
}

TEST_CASE("shear stiffness of braced faces") {
  // EN 1993-1-1, figure 6.9 (value from memory), evaluated by hand: E 2.1e8 kN/m2, h 0.8 m, Ad 3e-4, Av 2e-4 m2,
  // one plane. Its module of V and X lacing is two projections, a = 2 s = 2 m; of N lacing one.
  CHECK(difference(single_direction_face_stiffness(2.1e8, 3e-4, 2e-4, 1.0, 0.8).value, 14057.48) <= 5e-7);
  CHECK(difference(alternating_face_stiffness(2.1e8, 3e-4, 1.0, 0.8).value, 19197.95) <= 5e-7);
  CHECK(difference(crossed_face_stiffness(2.1e8, 3e-4, 1.0, 0.8).value, 38395.89) <= 5e-7);
  // Three-dimensional stiffness calculation of the girder above (not published, four digits).
  CHECK(difference(single_direction_face_stiffness(E, Ad, Av, s, h).value, 3.792e6) <= 2e-4);
  CHECK(difference(alternating_face_stiffness(E, Ad, s, h).value, 5.333e6) <= 2e-4);
  CHECK(difference(crossed_face_stiffness(E, Ad, s, h).value, 1.0666e7) <= 2e-4);
  CHECK(difference(k_face_stiffness(E, Ad, Av, s, h).value, 4.130e6) <= 2e-4);
  // Hand values with a 3-4-5 triangle: d = 5; K: half depth 4 -> h = 8.
  CHECK(diagonal_length(3.0, 4.0) == 5.0);
  CHECK(difference(alternating_face_stiffness(1.0, 125.0, 3.0, 4.0).value, 48.0) <= 1e-15);
  CHECK(difference(k_face_stiffness(1.0, 125.0, 2.0, 3.0, 8.0).value, 1.0 / (2.0 / 192.0 + 8.0 / 24.0)) <= 1e-15);
  // Stiff posts leave the diagonals' part alone.
  CHECK(difference(single_direction_face_stiffness(1.0, 125.0, 1e30, 3.0, 4.0).value, 48.0) <= 1e-14);
  CHECK_THROWS_AS(alternating_face_stiffness(E, 0.0, s, h), baywork::BadDescription);
}

TEST_CASE("shear stiffness of open faces") {
  // EN 1993-1-1, equation (6.73), two planes of battens (value from memory): Ich 1e7, Ib 2e7 mm4, a 1 m, h0 0.6 m,
  // 38769.2 kN.
  CHECK(difference(open_face_stiffness(2.1e11 * 1e-5, 2.0 * 2.1e11 * 2e-5, 1.0, 0.6).value, 38769.2e3) <= 2e-6);
  // The girder above, three-dimensional stiffness calculation (not published).
  CHECK(difference(open_face_stiffness(E * Ic, E * Ib, s, h).value, 2.520e5) <= 2e-4);
  // S. Timoshenko and J. M. Gere, Theory of Elastic Stability, art. 2.18 (value from memory): 1/S = a h/(12 E Ib) +
  // a^2/(24 E Ic); a = h = 1, Ic = 1, Ib = 1.5: 7/72.
  CHECK(difference(open_face_stiffness(1.0, 1.5, 1.0, 1.0).value, 72.0 / 7.0) <= 1e-15);

  OpenFace<double> f;
  f.s = s, f.h = h, f.EI_chord_1 = f.EI_chord_2 = E * Ic, f.EI_cross = E * Ib;
  CHECK(difference(open_face(f).stiffness.value, open_face_stiffness(E * Ic, E * Ib, s, h).value) <= 1e-14);
  CHECK(open_face(f).share_1 == 0.5);
  // Each added softness adds its own flexibility, by hand: 1/(2 GAc) + s/(h GAb) + s/(2 k).
  OpenFace<double> soft = f;
  soft.GA_chord_1 = soft.GA_chord_2 = 5e6, soft.GA_cross = 4e6, soft.joint = 1e5;
  CHECK(difference(1.0 / open_face(soft).stiffness.value,
                   1.0 / open_face(f).stiffness.value + 1.0 / 1e7 + s / (h * 4e6) + s / 2e5) <= 1e-13);
  // Unequal chords by slope deflection: c1 = s^2/(12 EI1), c2, beta = s h/(6 EIb):
  // V1/V = (c2 + 3 beta)/(c1 + c2 + 6 beta), 1/S = [c1 c2 + 2 beta (c1 + c2) + 3 beta^2]/(c1 + c2 + 6 beta).
  OpenFace<double> u = f;
  u.s = 1.0, u.h = 2.0, u.EI_chord_1 = 1.0 / 12.0, u.EI_chord_2 = 1.0 / 24.0, u.EI_cross = 1.0 / 3.0;  // c 1, 2; beta 1
  CHECK(difference(open_face(u).share_1, 5.0 / 9.0) <= 1e-15);
  CHECK(difference(open_face(u).stiffness.value, 9.0 / 11.0) <= 1e-15);
  // A soft cross member ties the two chord shears together: both take half.
  u.EI_cross = 1e-9;
  CHECK(difference(open_face(u).share_1, 0.5) <= 1e-8);
  // Rigid joints: s^2 -> s'^3/s and s h -> s h'^3/h^2.
  OpenFace<double> r = f;
  r.rigid_along = 0.02, r.rigid_across = 0.03;
  const double sc = 0.46, hc = 0.34;
  CHECK(difference(1.0 / open_face(r).stiffness.value,
                   sc * sc * sc / (24.0 * E * Ic * s) + s * hc * hc * hc / (h * h * 12.0 * E * Ib)) <= 1e-13);
  r.rigid_along = 0.25;
  CHECK_THROWS_AS(open_face(r), baywork::BadDescription);
}

TEST_CASE("open girder as a cantilever: smeared bending and shear") {
  // n panels a = 1, h = 1.2 m, Ich 1e-4, Ib 2e-4 m4, Ach 1e-2 m2, E 2.1e8 kPa, tip load 1 kN (hand evaluation of
  // L^3/(3 EI) + L/S; a frame calculation gives 0.9989 of the last one).
  const double Ec = 2.1e8;
  const auto g = chord_group<double>({{0.0, 0.6, 1e-2, 1e-4, 0.0}, {0.0, -0.6, 1e-2, 1e-4, 0.0}});
  CHECK(difference(g.I_vertical, 0.5 * 1.44 * 1e-2 + 2e-4) <= 1e-14);
  const double S = open_face_stiffness(Ec * 1e-4, Ec * 2e-4, 1.0, 1.2).value;
  const double published[] = {3.11883e-5, 1.44745e-4, 9.48434e-4, 7.16843e-3};
  double L = 4.0;
  for (const double w : published) {
    CHECK(difference(cantilever_end_load(1.0, L, Ec * g.I_vertical, S).deflection.value, w) <= 2e-6);
    L *= 2.0;
  }
  CHECK(difference(7.160709e-3, cantilever_end_load(1.0, 32.0, Ec * g.I_vertical, S).deflection.value) <= 1.2e-3);
}

TEST_CASE("shear of whole girders") {
  using F = SectionFace<double>;
  // Box: two sides carry vertical shear, top and bottom horizontal shear.
  const auto box =
      girder_shear<double>({F{0, 0, b, 0, 1.0}, F{b, 0, b, h, 2.0}, F{b, h, 0, h, 1.0}, F{0, h, 0, 0, 2.0}});
  CHECK(box.zz == 4.0);
  CHECK(box.yy == 2.0);
  CHECK(box.yz == 0.0);
  // Equilateral triangle: sides at 60 degrees, 2 sin^2 60 = 1.5 both ways (isotropic).
  const double t = std::sqrt(3.0) / 2.0;
  const auto tri = girder_shear<double>({F{0, 0, 1, 0, 1.0}, F{1, 0, 0.5, t, 1.0}, F{0.5, t, 0, 0, 1.0}});
  CHECK(difference(tri.zz, 1.5) <= 1e-15);
  CHECK(difference(tri.yy, 1.5) <= 1e-15);
  CHECK(std::abs(tri.yz) <= 1e-15);
  // Vertical V = 1 at the apex, side 0.8 m, panels 1 m (statics): side diagonals V/(2 cos 30) d/0.8 = 0.924211.
  const double strain = 1.0 / tri.zz;
  CHECK(difference(strain * t * diagonal_length(1.0, 0.8) / 0.8, 0.924211) <= 1e-6);
  // A ladder resists nothing across its plane.
  CHECK(girder_shear<double>({F{0, 0, 0, h, 3.0}}).yy == 0.0);
  // Equal opposite faces: both limits agree.
  CHECK(unequal_opposite_faces_stiffness(3.0, 3.0).value == 6.0);
  CHECK(difference(unequal_opposite_faces_stiffness(1.0, 29.0).value, 4.0 * 29.0 / 30.0) <= 1e-15);
}

TEST_CASE("torsion by Bredt's flow") {
  // Face forces, triangle of side 0.8 m, T = 1, panels 1 m (Bredt, statics): V 1.443376, diagonal 2.310528,
  // chord 1.804220.
  const double A = 0.64 * std::sqrt(3.0) / 4.0;
  const double V = bredt_face_force(1.0, 0.8, A);
  CHECK(difference(V, 1.443376) <= 1e-6);
  CHECK(difference(V * diagonal_length(1.0, 0.8) / 0.8, 2.310528) <= 1e-6);
  CHECK(difference(V * 1.0 / 0.8, 1.804220) <= 1e-6);
  // Square open girder, a = h = 1, EIc 1, EIb 1.5: twist 0.0972222 per unit torque, chord moment 0.125, post 0.25
  // (hand value; a frame calculation gives 0.09710, 0.1250, 0.2498).
  const double So = open_face_stiffness(1.0, 1.5, 1.0, 1.0).value;
  const std::vector<TorsionFace<double>> square(4, {1.0, So});
  CHECK(difference(1.0 / bredt_torsion_stiffness(1.0, square).value, 0.0972222) <= 3e-7);
  CHECK(portal_panel(bredt_face_force(1.0, 1.0, 1.0), 1.0, 1.0).chord_end_moment == 0.125);
  CHECK(portal_panel(bredt_face_force(1.0, 1.0, 1.0), 1.0, 1.0).cross_member_moment == 0.25);

  // The girder above; second column: three-dimensional frame calculation with 24 and 48 panels (not published), kN m2.
  const auto box = [](double S_b, double S_h, double S_top) {
    return std::vector<TorsionFace<double>>{{b, S_b}, {h, S_h}, {b, S_top}, {h, S_h}};
  };
  const auto GJ = [](const std::vector<TorsionFace<double>>& faces, int unmatched) {
    return bredt_torsion_stiffness(b * h, faces, UnmatchedChords<double>{unmatched, s, E * Ac}).value / 1e3;
  };
  const double zb = alternating_face_stiffness(E, Ad, s, b).value, zh = alternating_face_stiffness(E, Ad, s, h).value;
  const double nb = single_direction_face_stiffness(E, Ad, Av, s, b).value;
  const double nh = single_direction_face_stiffness(E, Ad, Av, s, h).value;
  const double ob = open_face_stiffness(E * Ic, E * Ib, s, b).value,
               oh = open_face_stiffness(E * Ic, E * Ib, s, h).value;
  CHECK(difference(GJ(box(2.0 * zb, 2.0 * zh, 2.0 * zb), 0), 2273.0) <= 1e-3);
  CHECK(difference(GJ(box(zb, zh, zb), 0), 1136.0) <= 1e-3);
  CHECK(difference(GJ(box(zb, zh, zb), 2), 1048.0) <= 1e-3);
  CHECK(difference(GJ(box(zb, zh, zb), 4), 972.0) <= 1e-3);
  CHECK(difference(GJ(box(nb, nh, nb), 0), 752.0) <= 1e-3);
  CHECK(difference(GJ(box(nb, nh, nb), 2), 712.0) <= 1e-3);
  CHECK(difference(GJ(box(nb, nh, nb), 4), 676.0) <= 1e-3);
  CHECK(difference(GJ(box(zb, zh, ob), 0), 125.0) <= 5e-3);
  CHECK(difference(GJ(box(ob, zh, ob), 0), 66.0) <= 1e-2);
  CHECK(difference(GJ(box(ob, oh, ob), 0), 44.0) <= 1e-2);
  // The chords' own G J is added.
  CHECK(difference(bredt_torsion_stiffness(1.0, square, UnmatchedChords<double>{}, 3.0).value, 3.0 + 72.0 / 7.0) <=
        1e-14);
  CHECK_THROWS_AS(bredt_torsion_stiffness(1.0, std::vector<TorsionFace<double>>(2, {1.0, So})),
                  baywork::BadDescription);
}

TEST_CASE("chord group: forces from both moments") {
  using C = ChordArea<double>;
  // Rectangle: N = -+ M/(2h) -+ M/(2b) (linear statics).
  const std::vector<C> box{{0, 0, Ac, 0, 0}, {b, 0, Ac, 0, 0}, {b, h, Ac, 0, 0}, {0, h, Ac, 0, 0}};
  const auto n = chord_forces(box, {0.0, 8.0, 3.0});
  CHECK(difference(n[0].N, 8.0 / (2 * h) + 3.0 / (2 * b)) <= 1e-14);
  CHECK(difference(n[1].N, 8.0 / (2 * h) - 3.0 / (2 * b)) <= 1e-14);
  CHECK(difference(n[2].N, -8.0 / (2 * h) - 3.0 / (2 * b)) <= 1e-14);
  CHECK(difference(n[3].N, -8.0 / (2 * h) + 3.0 / (2 * b)) <= 1e-14);
  CHECK(difference(chord_group(box).I_vertical, Ac * h * h) <= 1e-14);
  // Triangle, apex up: apex -M/h, base +M/(2h) each; horizontally +-M/b, apex idle.
  const std::vector<C> tri{{0, 0, Ac, 0, 0}, {b, 0, Ac, 0, 0}, {b / 2, h, Ac, 0, 0}};
  const auto t = chord_forces(tri, {6.0, 8.0, 0.0});
  CHECK(difference(t[2].N, 2.0 - 8.0 / h) <= 1e-14);
  CHECK(difference(t[0].N, 2.0 + 4.0 / h) <= 1e-14);
  const auto th = chord_forces(tri, {0.0, 0.0, 3.0});
  CHECK(difference(th[0].N, 3.0 / b) <= 1e-14);
  CHECK(std::abs(th[2].N) <= 1e-13);
  // Unequal chords: centroid by the lever rule, couple M/h all the same.
  const std::vector<C> ladder{{0, 0, 3.0, 0, 0}, {0, 2.0, 1.0, 0, 0}};
  CHECK(chord_group(ladder).z == 0.5);
  CHECK(chord_group(ladder).I_vertical == 3.0);
  CHECK(difference(chord_forces(ladder, {0.0, 5.0, 0.0})[0].N, 2.5) <= 1e-15);
  CHECK_THROWS_AS(chord_forces(ladder, {0.0, 5.0, 1.0}), baywork::UnstableFrame);
  // Own stiffness across the ladder: each chord bends by its own, in proportion.
  const std::vector<C> own{{0, 0, 3.0, 0, 0.2}, {0, 2.0, 1.0, 0, 0.3}};
  CHECK(difference(chord_forces(own, {0.0, 0.0, 1.0})[1].M_horizontal, 0.6) <= 1e-14);
  // An L-shaped group (no symmetry): the forces balance both moments.
  const std::vector<C> skew{{0, 0, 1.0, 0.01, 0.02}, {2, 0, 2.0, 0, 0}, {0, 3, 1.5, 0.03, 0}};
  const auto k = chord_forces(skew, {4.0, 7.0, -2.0});
  const auto g = chord_group(skew);
  double N = 0, Mv = 0, Mh = 0;
  for (std::size_t i = 0; i < skew.size(); ++i) {
    N += k[i].N;
    Mv += k[i].M_vertical - k[i].N * (skew[i].z - g.z);
    Mh += k[i].M_horizontal - k[i].N * (skew[i].y - g.y);
  }
  CHECK(difference(N, 4.0) <= 1e-14);
  CHECK(difference(Mv, 7.0) <= 1e-14);
  CHECK(difference(Mh, -2.0) <= 1e-14);
  // Ring: n A R^2/2 against the sum over its chords, at any angle.
  for (int count = 3; count <= 7; ++count) {
    std::vector<C> ring;
    for (int i = 0; i < count; ++i) {
      const double angle = 0.3 + 2.0 * baywork::pi_v<double> * i / count;
      ring.push_back({0.7 * std::cos(angle), 0.7 * std::sin(angle), Ac, 0, 0});
    }
    CHECK(difference(chord_group(ring).I_vertical, ring_second_moment(count, 0.7, Ac).value) <= 1e-14);
    CHECK(difference(chord_group(ring).I_horizontal, ring_second_moment(count, 0.7, Ac).value) <= 1e-14);
  }
  CHECK_FALSE(ring_second_moment(2, 0.7, Ac).valid);
}

TEST_CASE("every formula printed with its numbers recomputes to its value") {
  const double inf = baywork::rigid_stiffness;
  recompute(alternating_face_stiffness(E, Ad, s, h));
  recompute(single_direction_face_stiffness(E, Ad, Av, s, h));
  recompute(crossed_face_stiffness(E, Ad, s, h));
  recompute(k_face_stiffness(E, Ad, Av, s, h));
  recompute(open_face_stiffness(E * Ic, E * Ib, s, h));
  recompute(open_face(OpenFace<double>{s, h, E * Ic, 2 * E * Ic, E * Ib, 5e6, 6e6, 7e6, 1e5, 0.01, 0.02}).stiffness);
  recompute(unequal_opposite_faces_stiffness(1e5, 2e6));
  recompute(bredt_torsion_stiffness(0.2, std::vector<TorsionFace<double>>(4, {0.5, 2e6}),
                                    UnmatchedChords<double>{2, s, E * Ac}, 4e3));
  recompute(ring_second_moment(3, 0.3, Ac));
  for (const double S : {3e5, inf}) {
    recompute(simple_span_uniform(1e3, 12.0, 6e6, S));
    recompute(simple_span_trapezoid(1e3, -250.0, 12.0, 6e6, S));
    recompute(simple_span_trapezoid(1e3, 3e3, 12.0, 6e6, S));
    for (int i = 1; i <= 4; ++i) recompute(simple_span_equal_points(i, 1e3, 12.0, 6e6, S));
    recompute(simple_span_point(1e3, 3.0, 12.0, 6e6, S));
    recompute(simple_span_point(1e3, 8.0, 12.0, 6e6, S));
    recompute(simple_span_middle_part(1e3, 5.0, 12.0, 6e6, S));
    recompute(cantilever_uniform(1e3, 3.0, 6e6, S));
    recompute(cantilever_end_load(-1e3, 3.0, 6e6, S));
    recompute(clamped_span_uniform(1e3, 12.0, 6e6, S));
    recompute(clamped_span_centre_load(1e3, 12.0, 6e6, S));
    recompute(clamped_span_point_left_moment(1e3, 4.0, 12.0, 6e6, S));
    recompute(propped_span_uniform_reaction(1e3, 12.0, 6e6, S));
    recompute(propped_span_centre_load_reaction(1e3, 12.0, 6e6, S));
    const auto o = overhangs_uniform(1e3, 12.0, 2.0, 6e6, S);
    for (const auto& f : {o.support_moment, o.mid_moment, o.mid_deflection, o.tip_deflection}) recompute(f);
    recompute(overhang_end_load(1e3, 12.0, 2.0, 6e6, S));
    const auto two = two_equal_spans_uniform(1e3, 6.0, 6e6, S, TwoSpanSupports<double>{2e6, 1e6, 0.004});
    for (const auto& f : {two.middle_reaction, two.end_reaction, two.slack_lowering}) recompute(f);
  }
  StraightBeam<double> beam{12.0, 6e6, 3e5, {{0.0}, {6.0}, {12.0}}};
  recompute(slack_settlement(beam, BeamLoads<double>{{{1e3, 4.0}}, {}, {}}, 1));
  // The form of the text, whole.
  CHECK(with_numbers(simple_span_uniform(1000.0, 12.0, 6e6, inf).moment) == "q*L^2/8 = 1000*12^2/8 = 18000");
  CHECK_THROWS_AS(numbers_in("2*{x}", {}), baywork::BadDescription);
}

TEST_CASE("closed forms carry derivatives") {
  using D = Eigen::AutoDiffScalar<Eigen::Matrix<double, 1, 1>>;
  const auto var = [](double v) { return D(v, 1, 0); };
  // d w/d q of a linear formula is w/q; d S/d Ad of a single diagonal is S/Ad.
  const auto w = simple_span_uniform(var(1e3), D(12.0), D(6e6), D(3e5)).deflection.value;
  CHECK(difference(w.derivatives()(0), w.value() / 1e3) <= 1e-14);
  const auto S = crossed_face_stiffness(D(E), var(Ad), D(s), D(h)).value;
  CHECK(difference(S.derivatives()(0), S.value() / Ad) <= 1e-14);
  // Against central differences where it is not linear.
  const auto open = [](const auto& EI) {
    using T = std::decay_t<decltype(EI)>;
    OpenFace<T> f;
    f.s = T(s), f.h = T(h), f.EI_chord_1 = EI, f.EI_chord_2 = T(2e4), f.EI_cross = T(6e3), f.joint = T(1e5);
    return open_face(f).stiffness.value;
  };
  const D So = open(var(1e4));
  CHECK(difference(So.derivatives()(0), (open(1e4 + 1.0) - open(1e4 - 1.0)) / 2.0) <= 1e-7);
  const auto R = [](const auto& EI) {
    using T = std::decay_t<decltype(EI)>;
    const StraightBeam<T> beam{T(12.0), EI, T(3e5), {{T(0.0)}, {T(5.0), T(1e6)}, clamp_at(T(12.0))}};
    return ContinuousBeam<T>(beam, BeamLoads<T>{{{T(1e3), T(3.0)}}, {{T(10.0), T(90.0), T(1.0), T(9.0)}}, {}})
        .moment(T(7.0));
  };
  const D M = R(var(6e6));
  CHECK(difference(M.derivatives()(0), (R(6e6 + 600.0) - R(6e6 - 600.0)) / 1200.0) <= 1e-6);
  const auto G = bredt_torsion_stiffness(D(0.2), std::vector<TorsionFace<D>>(4, {D(0.5), var(2e6)}));
  CHECK(difference(G.value.derivatives()(0), G.value.value() / 2e6) <= 1e-14);
  CHECK(chord_forces<D>({{D(0), D(0), D(1), D(0), D(0)}, {D(0), D(2), D(1), D(0), D(0)}}, {D(0), var(5.0), D(0)})[0]
            .N.derivatives()(0) == 0.5);
  CHECK(difference(two_equal_spans_uniform(var(1e3), D(6.0), D(6e6), D(3e5)).middle_reaction.value.derivatives()(0),
                   two_equal_spans_uniform(1.0, 6.0, 6e6, 3e5).middle_reaction.value) <= 1e-14);
}
