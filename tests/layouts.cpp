// SPDX-License-Identifier: MIT
// Every layout of panels, typed as a girder and solved, against closed forms and hand derivations of its shear and
// torsion.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <baywork/closed_form.hpp>
#include <baywork/response.hpp>

#include "support/bare_bar.hpp"

namespace {

using namespace baywork;
namespace cf = closed_form;

void within(const std::string& what, double computed, double expected, double relative) {
  INFO(what << ": by hand " << text::number(expected, 10) << ", solved " << text::number(computed, 10));
  CHECK(std::abs(computed - expected) <= relative * std::abs(expected));
}

/// V = 1 at the tip of a cantilevered ladder of 40 panels, half on each chord.
std::vector<Action> tip_shear(double length) {
  return {point_load(ChordOf::bottom, length, {0, 0, 0.5}), point_load(ChordOf::top, length, {0, 0, 0.5})};
}

/// Shear stiffness V/γ between stations 14 and 26: chords that hardly stretch leave shear alone, and what the clamped
/// root and the loaded tip do dies out as exp(-x/λ), λ = sqrt(2 E Ic/S), here about a bay. All load and all measuring
/// is at bottom joints of even stations, where every layout has a diagonal or a cross member.
double shear_stiffness(const LadderGirder& l) {
  const Analysis a{l};
  const double s = l.bay_length;
  const Response r = a.solve({point_load(ChordOf::bottom, 40 * s, {0, 0, 1.0})});
  return 12 * s / (r.deflection(ChordOf::bottom, 26 * s).z - r.deflection(ChordOf::bottom, 14 * s).z);
}

LadderGirder ladder(double s, double h, const Bar& chord, const Face& web, std::size_t bays = 40) {
  return {.bays = bays, .bay_length = s, .depth = h, .chord = chord, .web = web, .supports = cantilever()};
}

/// The torque 1 at the far end of a girder with these chords, as the shear flow 1/(2A) along each edge of its ring,
/// half of an edge's force on each of its two joints.
std::vector<Action> tip_torque(const Girder& g, const std::vector<std::size_t>& ring) {
  const std::size_t end = g.bays(), n = ring.size();
  double twice_area = 0;
  for (std::size_t i = 0; i < n; ++i) twice_area += cross(g.joint(end, ring[i]), g.joint(end, ring[(i + 1) % n])).x;
  std::vector<Action> out;
  for (std::size_t i = 0; i < n; ++i) {
    const Vec3<> half = (0.5 / twice_area) * (g.joint(end, ring[(i + 1) % n]) - g.joint(end, ring[i]));
    out.push_back(point_load(ring[i], g.span(), half));
    out.push_back(point_load(ring[(i + 1) % n], g.span(), half));
  }
  return out;
}

/// Holds the first section's shape and its rigid motions, free to warp: x at three joints leaves a box its warping.
Supports free_to_warp(std::size_t chords) {
  Supports s;
  for (std::size_t c = 0; c < chords; ++c) {
    Hold h = hold(c, 0.0).fix({Motion::uy, Motion::uz});
    s.holds.push_back(c < 3 ? h.fix({Motion::ux}) : h);
  }
  return s;
}

}  // namespace

TEST_CASE("shear stiffness of braced faces: solved ladders against closed forms") {
  // bars that hardly bend (I 1e-13 m⁴) and chords that hardly stretch (1e6 m²) make the pin-jointed panel of the
  // formulas
  const double E = 70e9, Ad = 2.5e-4, Av = 1.5e-4;
  const Bar chord = bare(E, 1e6, 1e-13, 1e-13), brace = bare(E, Ad, 1e-13, 1e-13), post = bare(E, Av, 1e-13, 1e-13);
  for (const auto& size : {std::pair{0.5, 0.4}, std::pair{0.5, 0.5}, std::pair{0.4, 0.7}}) {
    const double s = size.first, h = size.second;
    const auto solved = [&](const Face& web) { return shear_stiffness(ladder(s, h, chord, web)); };
    const double alternate = cf::alternating_face_stiffness(E, Ad, s, h).value;
    const double single = cf::single_direction_face_stiffness(E, Ad, Av, s, h).value;
    within("alternating", solved(braced(alternating, brace)), alternate, 1e-5);
    within("alternating with posts", solved(braced(alternating, brace, post)), alternate, 1e-5);
    within("alternating reversed", solved(braced(alternating_reversed, brace, post)), alternate, 1e-5);
    within("single direction", solved(braced(single_direction, brace, post)), single, 1e-5);
    within("single direction reversed", solved(braced(single_direction_reversed, brace, post)), single, 1e-5);
    within("crossed", solved(braced(crossed, brace, post)), cf::crossed_face_stiffness(E, Ad, s, h).value, 1e-5);
    within("K", solved(braced(k_braced, brace, post)), cf::k_face_stiffness(E, Ad, Av, s, h).value, 1e-5);
  }
}

TEST_CASE("diagonals mirrored about mid-span are single-direction ones on each half") {
  const double E = 70e9, Ad = 2.5e-4, Av = 1.5e-4, s = 0.5, h = 0.4;
  const Bar chord = bare(E, 1e6, 1e-13, 1e-13), brace = bare(E, Ad, 1e-13, 1e-13), post = bare(E, Av, 1e-13, 1e-13);
  const double expected = cf::single_direction_face_stiffness(E, Ad, Av, s, h).value;
  for (const bool towards : {true, false}) {
    const Face web = towards ? Face(braced(mirrored_towards, brace, post)) : Face(braced(mirrored_away, brace, post));
    LadderGirder l = ladder(s, h, chord, web);
    const Analysis a{l};
    const Response r = a.solve(tip_shear(40 * s));
    for (const double x : {5 * s, 25 * s})
      within("mirrored", 10 * s / (r.axis_deflection(x + 10 * s).z - r.axis_deflection(x).z), expected, 1e-5);
    // in a simple girder under downward load diagonals that fall towards mid-span pull, rising ones push
    l.supports = simply_supported();
    const Analysis simple{l};
    const Response q = simple.solve({line_load({ChordOf::top}, 100.0)});
    for (const std::size_t panel : {std::size_t{1}, std::size_t{38}})
      CHECK((towards ? 1 : -1) * q.face(Side::web).diagonal(panel).forces(fraction{0.5}).N > 0);
  }
}

TEST_CASE("shear stiffness of open faces: chords and cross members that bend") {
  const double E = 70e9, Ic = 1.5e-7, Ib = 0.8e-7;
  for (const auto& [s, h] : {std::pair{0.5, 0.4}, std::pair{0.4, 0.8}}) {
    const Bar chord = bare(E, 1e6, Ic, 2 * Ic), cross = bare(E, 1e-3, Ib, 2 * Ib);
    within("open", shear_stiffness(ladder(s, h, chord, open(cross))),
           cf::open_face_stiffness(E * Ic, E * Ib, s, h).value, 1e-5);
    cf::OpenFace<> f{.s = s, .h = h, .EI_chord_1 = E * Ic, .EI_chord_2 = E * Ic, .EI_cross = E * Ib};
    const double k = 3e4;
    f.joint = k;
    within("semi-rigid", shear_stiffness(ladder(s, h, chord, open(cross, semi_rigid_joint(k, k)))),
           cf::open_face(f).stiffness.value, 1e-5);
    const double Avc = 3e-4, Avb = 2e-4, G = E / 2.6;
    f.GA_chord_1 = f.GA_chord_2 = G * Avc;
    f.GA_cross = G * Avb;
    const Bar shearing_chord = bare(E, 1e6, Ic, 2 * Ic, Avc), shearing_cross = bare(E, 1e-3, Ib, 2 * Ib, Avb);
    within("with shear strains",
           shear_stiffness(ladder(s, h, shearing_chord, open(shearing_cross, semi_rigid_joint(k, k)))),
           cf::open_face(f).stiffness.value, 1e-5);
  }
}

TEST_CASE("unequal chords share the shear of an open face") {
  const double E = 70e9, Ib = 0.8e-7, s = 0.5, h = 0.4;
  LadderGirder l = ladder(s, h, bare(E, 1e6, 3e-7, 6e-7), open(bare(E, 1e-3, Ib, 2 * Ib)));
  l.top_chord = bare(E, 1e6, 1e-7, 2e-7);
  const cf::OpenFaceAnswer<> expected =
      cf::open_face(cf::OpenFace<>{.s = s, .h = h, .EI_chord_1 = E * 3e-7, .EI_chord_2 = E * 1e-7, .EI_cross = E * Ib});
  within("stiffness", shear_stiffness(l), expected.stiffness.value, 1e-5);
  const Analysis a{l};
  const Response r = a.solve(tip_shear(40 * s));
  const auto shear = [&](ChordOf c) { return std::abs(r.chord(c).bay(20).forces(fraction{0.5}).Vz); };
  within("share of the thicker chord", shear(ChordOf::bottom), expected.share_1, 1e-5);
  within("share of the thinner chord", shear(ChordOf::top), 1 - expected.share_1, 1e-5);
}

TEST_CASE("moments of an open panel: V a/4 in the chords, V a/2 in inner and V a/4 in end cross members") {
  // exact for equal chords under constant shear (derived by statics: contraflexure at mid-panel). At the tip the last
  // cross member's moments are V a/4 only where its neighbour panels do not differ: here cross members 100 times
  // stiffer.
  const double E = 70e9, a = 0.5, h = 0.4;
  const Analysis analysis{ladder(a, h, bare(E, 1e6, 1e-7, 2e-7), open(bare(E, 1e-3, 1e-3, 2e-3)))};
  const Response r = analysis.solve(tip_shear(40 * a));
  const cf::PortalPanel<> p = cf::portal_panel(1.0, a, h);
  for (const ChordOf c : {ChordOf::bottom, ChordOf::top}) {
    const MemberView m = r.chord(c).bay(20);
    within("chord shear", std::abs(m.forces(fraction{0.3}).Vz), p.chord_shear, 1e-5);
    within("chord moment at its end", std::abs(m.forces(fraction{0}).My), p.chord_end_moment, 1e-5);
    within("chord moment at its other end", std::abs(m.forces(fraction{1}).My), p.chord_end_moment, 1e-5);
    CHECK(std::abs(m.forces(fraction{0.5}).My) < 1e-5 * p.chord_end_moment);
    std::array<double, 4> place{};
    REQUIRE(m.contraflexure(1.0, 0.0, place.data(), place.size()) == 1);
    CHECK(place[0] == doctest::Approx(a / 2).epsilon(1e-4));
    within("step of the chord force", std::abs(r.chord(c).axial(20) - r.chord(c).axial(19)), p.cross_member_shear,
           1e-5);
    // chord forces: moment at mid-panel over the depth
    within("chord force", std::abs(r.chord(c).axial(20)), 19.5 * a / h, 1e-5);
  }
  const FaceBarView inner = r.face(Side::web).cross_member(20), last = r.face(Side::web).cross_member(40);
  within("inner cross member", std::abs(inner.moment(in_plane, fraction{0})), p.cross_member_moment, 1e-5);
  within("inner cross member, other end", std::abs(inner.moment(in_plane, fraction{1})), p.cross_member_moment, 1e-5);
  within("inner cross member's shear", std::abs(inner.shear(in_plane, fraction{0.5})), p.cross_member_shear, 1e-5);
  within("last cross member", std::abs(last.moment(in_plane, fraction{0})), p.end_cross_member_moment, 1e-3);
  within("chord force in the last panel", std::abs(r.chord(ChordOf::top).axial(39)), p.end_cross_member_shear, 1e-3);
}

TEST_CASE("chord forces of a braced ladder are moment over depth") {
  // method of sections: a diagonal's panel has its moment about the joint opposite to the chord asked for
  const double E = 70e9, s = 0.5, h = 0.4;
  const Bar bar = bare(E, 1e-3, 1e-13, 1e-13);
  LadderGirder l = ladder(s, h, bar, braced(alternating, bar, bar));
  l.bays = 8;
  l.supports = simply_supported();
  const Analysis a{l};
  const Response r = a.solve({point_load(ChordOf::bottom, 4 * s, 1000.0)});
  // panel 3 falls from the top chord at station 3 to the bottom at station 4; M(x) = 500 x
  within("bottom chord, about the top joint at station 3", r.chord(ChordOf::bottom).axial(3), 500 * 3 * s / h, 1e-6);
  within("top chord, about the bottom joint at station 4", r.chord(ChordOf::top).axial(3), -500 * 4 * s / h, 1e-6);
  within("diagonal", r.face(Side::web).diagonal(3).forces(fraction{0.5}).N, 500 * std::hypot(s, h) / h, 1e-6);
}

TEST_CASE("open girders by slope deflection") {
  // Derived: chords and posts inextensible (A 1e7 times I), E 1, loads half on each chord. Two panels a = h = 1, I 1:
  // the post answers 6 θ/h, the chord's ends 6 δ - 4 θ and 6 δ - 2 θ, with sum 1/4, so θ = 1/56 and δ = 10 θ/6 = 5/168.
  const auto unit_load = [](double x) {
    return std::array<Action, 2>{point_load(ChordOf::bottom, x, 0.5), point_load(ChordOf::top, x, 0.5)};
  };
  LadderGirder two = ladder(1.0, 1.0, bare(1, 1e7, 1, 1), open(bare(1, 1e7, 1, 1)), 2);
  two.supports = simply_supported();
  const Analysis a{two};
  const std::array<Action, 2> middle = unit_load(1.0);
  const Response r = a.solve(std::vector<Action>(middle.begin(), middle.end()));
  const auto moment = [](const Response& q, std::size_t bay, double at) {
    return std::abs(q.chord(ChordOf::bottom).bay(bay).forces(fraction{at}).My);
  };
  const auto post = [](const Response& q, std::size_t station) {
    return std::abs(q.face(Side::web).cross_member(station).moment(in_plane, fraction{0}));
  };
  within("chord force", r.chord(ChordOf::bottom).axial(0), 3.0 / 14, 1e-5);
  within("outer moment", moment(r, 0, 0), 3.0 / 28, 1e-5);
  within("inner moment", moment(r, 0, 1), 1.0 / 7, 1e-5);
  within("end post", post(r, 0), 3.0 / 28, 1e-5);
  CHECK(post(r, 1) < 1e-6);
  within("deflection", -r.axis_deflection(1.0).z, 5.0 / 168, 1e-5);
  // six panels a = 1.5, h = 1, posts twice as stiff, a load at each inner joint (slope deflection, solved by hand)
  LadderGirder six = ladder(1.5, 1.0, bare(1, 1e7, 1, 1), open(bare(1, 1e7, 2, 2)), 6);
  six.supports = simply_supported();
  const Analysis b{six};
  std::vector<Action> all;
  for (int i = 1; i < 6; ++i)
    for (const Action& action : unit_load(1.5 * i)) all.push_back(action);
  const Response q = b.solve(all);
  const std::array<double, 3> axial{1.92742, 4.79847, 6.29202}, outer{0.96371, 0.52424, 0.14601},
      inner{0.91129, 0.60076, 0.22899}, posts{0.96371, 1.43552, 0.74678};
  for (std::size_t i = 0; i < 3; ++i) {
    INFO("panel " << i + 1);
    within("chord force", q.chord(ChordOf::bottom).axial(i), axial[i], 1e-5);
    within("outer moment", moment(q, i, 0), outer[i], 4e-5);
    within("inner moment", moment(q, i, 1), inner[i], 4e-5);
    within("post", post(q, i), posts[i], 1e-5);
  }
  CHECK(post(q, 3) < 1e-5);
  within("deflection", -q.axis_deflection(4.5).z, 0.965843, 1e-5);
}

TEST_CASE("open cantilevers: bending as a beam plus shear, ever better with length") {
  // a 1 m, h 1.2 m, Ich 1e-4, Ipost 2e-4 m⁴, Ach 1e-2 m², E 210 GPa, 1 kN at the tip: L³/(3 E I) + L/S, with
  // I = h² A/2 + 2 Ich and S of the closed form. The clamped root stiffens the first panel: less the longer it is.
  double before = 1.0;
  for (const auto& [n, solved, error] : {std::tuple{4, 2.852807e-5, 0.09}, std::tuple{8, 1.413620e-4, 0.025},
                                         std::tuple{16, 9.436067e-4, 0.006}, std::tuple{32, 7.160709e-3, 0.0012}}) {
    const Bar chord = bare(2.1e11, 1e-2, 1e-4, 1e-4), post = bare(2.1e11, 1e-2, 2e-4, 1e-4);
    const LadderGirder l = ladder(1.0, 1.2, chord, open(post), static_cast<std::size_t>(n));
    const Analysis a{l};
    const double length = n, tip = 1000 * a.solve(tip_shear(length)).axis_deflection(length).z;
    const double smeared = 1000 * (length * length * length / (3 * 2.1e11 * (0.72e-2 + 2e-4)) +
                                   length / cf::open_face_stiffness(2.1e7, 4.2e7, 1.0, 1.2).value);
    within("beam solution of the same frame", tip, solved, 1e-6);
    within("beam with shear", tip, smeared, error);
    CHECK(smeared > tip);
    CHECK(smeared / tip - 1 < before);
    before = smeared / tip - 1;
  }
}

namespace {

/// Torsional stiffness T/θ' of a box of 48 bays, b 0.5 m, h 0.4 m, s 0.5 m, between its quarter points.
double torsion_stiffness(const BoxFaces& faces) {
  const BoxGirder g{.bays = 48,
                    .bay_length = 0.5,
                    .width = 0.5,
                    .depth = 0.4,
                    .chord = bare(70e9, 6e-4, 1.5e-7, 3e-7),
                    .faces = faces,
                    .supports = free_to_warp(4)};
  const Analysis a{g};
  const Response r = a.solve(tip_torque(a.girder(), {1, 2, 3, 0}));  // counterclockwise seen against x
  return 12.0 / (r.twist(18.0) - r.twist(6.0));
}

}  // namespace

TEST_CASE("torsion of boxes: Bredt's formula by layout and by how diagonals meet") {
  const double E = 70e9, Ad = 2.5e-4, Av = 1.5e-4, b = 0.5, h = 0.4, s = 0.5, Ic = 1.5e-7, Ib = 0.8e-7, EA = E * 6e-4;
  const Bar brace = bare(E, Ad, 1e-8, 2e-8), cross = bare(E, Av, Ib, 2 * Ib);
  // own torsion: θ' in each chord; and in each cross member, whose joints lean by θ' times their distance from the axis
  const double own = E / 2.6 * (4 * 2 * Ic + 2 * Ib * (2 * b + 2 * h) / s);
  const auto bredt = [&](double S_bottom, double S_top, double S_side, int unmatched, double more) {
    return cf::bredt_torsion_stiffness(b * h, {{b, S_bottom}, {h, S_side}, {b, S_top}, {h, S_side}}, {unmatched, s, EA},
                                       more)
        .value;
  };
  const auto zigzag = [&](double depth) { return cf::alternating_face_stiffness(E, Ad, s, depth).value; };
  const auto single = [&](double depth) { return cf::single_direction_face_stiffness(E, Ad, Av, s, depth).value; };
  const double open_flat = cf::open_face_stiffness(E * Ic, E * Ib, s, b).value,
               open_side = cf::open_face_stiffness(E * Ic, E * Ib, s, h).value;
  // posts pinned in the face: rigid ones would add the open face's stiffness, 1 to 2 per cent here
  const Joint p = semi_rigid_joint(0.0, rigid_stiffness);
  const Face x = braced(crossed, brace, cross, p), z = braced(alternating, brace, cross, p),
             y = braced(alternating_reversed, brace, cross, p);
  const Face n = braced(single_direction, brace, cross, p), m = braced(single_direction_reversed, brace, cross, p),
             o = open(cross);
  // top and left faces run from the top left and bottom left chord to the others: forward zigzags meet at two chords
  within("crossed", torsion_stiffness({.top = x, .bottom = x, .left = x, .right = x}),
         bredt(2 * zigzag(b), 2 * zigzag(b), 2 * zigzag(h), 0, own), 0.003);
  within("zigzags that meet at every chord", torsion_stiffness({.top = y, .bottom = z, .left = z, .right = y}),
         bredt(zigzag(b), zigzag(b), zigzag(h), 0, own), 0.003);
  within("zigzags that meet at two chords", torsion_stiffness({.top = z, .bottom = z, .left = z, .right = z}),
         bredt(zigzag(b), zigzag(b), zigzag(h), 2, own), 0.003);
  within("zigzags that meet nowhere", torsion_stiffness({.top = y, .bottom = z, .left = y, .right = z}),
         bredt(zigzag(b), zigzag(b), zigzag(h), 4, own), 0.003);
  within("single direction, alternate hands", torsion_stiffness({.top = m, .bottom = n, .left = n, .right = m}),
         bredt(single(b), single(b), single(h), 0, own), 0.003);
  within("single direction, two and two", torsion_stiffness({.top = n, .bottom = n, .left = n, .right = n}),
         bredt(single(b), single(b), single(h), 2, own), 0.003);
  within("single direction, all of one hand", torsion_stiffness({.top = m, .bottom = n, .left = m, .right = n}),
         bredt(single(b), single(b), single(h), 4, own), 0.003);
  // open faces: between the formula without and with the bars' own torsion, since nothing but bending holds the shape
  const auto between = [](double solved, double low, double high) {
    INFO("solved " << solved << ", by hand " << low << " to " << high);
    CHECK(solved >= low);
    CHECK(solved <= high);
  };
  between(torsion_stiffness({.top = y, .bottom = o, .left = z, .right = y}),
          bredt(open_flat, zigzag(b), zigzag(h), 0, 0.0), bredt(open_flat, zigzag(b), zigzag(h), 0, own));
  between(torsion_stiffness({.top = o, .bottom = o, .left = z, .right = y}),
          bredt(open_flat, open_flat, zigzag(h), 0, 0.0), bredt(open_flat, open_flat, zigzag(h), 0, own));
  between(torsion_stiffness({.top = o, .bottom = o, .left = o, .right = o}),
          bredt(open_flat, open_flat, open_side, 0, 0.0), bredt(open_flat, open_flat, open_side, 0, own));
}

TEST_CASE("a triangular girder in torsion and under a load on its apex") {
  // Derived: equilateral side 0.8, panels 1, T 1: face shear V = 2 T/(√3 side), diagonals ±V d/side, and in chords
  // whose two diagonals never meet -V a/side. Pin-jointed bars.
  const double side = 0.8, V = 2 / (std::sqrt(3.0) * side), d = std::hypot(1.0, side);
  const Bar bar = bare(70e9, 5e-4, 1e-14, 1e-14);
  const TriangularGirder g{.bays = 8,
                           .bay_length = 1.0,
                           .width = side,
                           .depth = side * std::sqrt(3.0) / 2,
                           .chord = bar,
                           .faces = {.base = braced(single_direction, bar, bar),
                                     .left = braced(single_direction_reversed, bar, bar),
                                     .right = braced(single_direction, bar, bar)},
                           .supports = free_to_warp(3)};
  const Analysis a{g};
  const Response r = a.solve(tip_torque(a.girder(), {1, 2, 0}));
  CHECK(V == doctest::Approx(1.443376).epsilon(1e-6));
  const double diagonal = r.face(Side::base).diagonal(4).forces(fraction{0.5}).N;
  within("diagonal", std::abs(diagonal), 2.310528, 1e-5);
  for (const Side f : {Side::left, Side::right})
    within("diagonal", r.face(f).diagonal(4).forces(fraction{0.5}).N, diagonal, 1e-6);
  for (const ChordOf c : {ChordOf::base_left, ChordOf::base_right, ChordOf::apex})
    within("chord", r.chord(c).axial(4), diagonal > 0 ? -1.804220 : 1.804220, 1e-5);
  const Response q = a.solve({point_load(ChordOf::apex, 8.0, 1.0)});
  const double left = q.face(Side::left).diagonal(4).forces(fraction{0.5}).N,
               right = q.face(Side::right).diagonal(4).forces(fraction{0.5}).N;
  within("left diagonal", std::abs(left), 1 / (2 * std::cos(pi_v<double> / 6)) * d / side, 1e-5);
  within("right diagonal", right, -left, 1e-6);  // mirrored hands
  CHECK(std::abs(q.face(Side::base).diagonal(4).forces(fraction{0.5}).N) < 1e-6);
}

TEST_CASE("a square open box in torsion") {
  // Derived: a = h = 1, Ich 1, Ipost 1.5, E 1, T 1, bars that hardly twist or stretch: V = T/(2 h) in each face, chord
  // moments V a/4 in both planes, post moments V a/2, twist 2 V/(S h) per metre with 1/S = 1/18 + 1/24
  const Face o = open(bare(1, 1e7, 1.5, 1e-6));
  const BoxGirder g{.bays = 30,
                    .bay_length = 1.0,
                    .width = 1.0,
                    .depth = 1.0,
                    .chord = bare(1, 1e7, 1, 1e-6),
                    .faces = {.top = o, .bottom = o, .left = o, .right = o},
                    .supports = free_to_warp(4)};
  const Analysis a{g};
  const Response r = a.solve(tip_torque(a.girder(), {1, 2, 3, 0}));
  const CutForces f = r.chord(ChordOf::top_left).bay(15).forces(fraction{0});
  within("chord moment", std::abs(f.My), 0.125, 1e-3);
  within("chord moment across", std::abs(f.Mz), 0.125, 1e-3);
  within("post moment", std::abs(r.face(Side::left).cross_member(15).moment(in_plane, fraction{0})), 0.25, 1e-3);
  within("twist per metre", (r.twist(20.0) - r.twist(10.0)) / 10, 1.0 / 18 + 1.0 / 24, 1e-3);
}
