// SPDX-License-Identifier: MIT
// Wind after EN 1991-1-4:2005: hand calculations beside the functions, and what the cases of a cladded face amount to.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/response.hpp>

#include "support/tubes.hpp"

using namespace baywork;
using namespace baywork::literals;

namespace {

/// Peak pressure against that of the basic velocity: c_e of Figure 4.2.
double exposure(en1991::Terrain terrain, double z) {
  const en1991::Site site{.basic_velocity = 25, .terrain = terrain};
  return en1991::peak_pressure(site, z) / (0.5 * 1.25 * 25 * 25);
}

struct Sum {
  Vec3<> force{}, moment{};  ///< on the girder, about the middle of the face
};
Sum of_reactions(const Analysis& a, const std::vector<Action>& actions, const Vec3<>& about) {
  const Response r = a.solve(actions);
  Sum s;
  for (const Reaction& q : r.answer().reactions) {
    const Vec3<> f{q.value[0], q.value[1], q.value[2]};
    s.force -= f;
    s.moment -= cross(a.model().frame.nodes[q.node].at - about, f) + Vec3<>{q.value[3], q.value[4], q.value[5]};
  }
  return s;
}

}  // namespace

TEST_CASE("mean velocity, turbulence and peak pressure: hand calculations") {
  // Category II, v_b,0 = 25 m/s, z = 10 m: k_r = 0.19, ln(10/0.05) = 5.298317, c_r = 1.006680, v_m = 25.16701 m/s,
  // I_v = 1/5.298317 = 0.1887392, q_p = (1 + 7 · 0.1887392) · 0.625 · 25.16701² = 2.3211744 · 395.8611 = 918.8626 Pa
  const en1991::Site site{.basic_velocity = 25};
  CHECK(en1991::mean_velocity(site, 10) == doctest::Approx(25.16701).epsilon(1e-6));
  CHECK(en1991::turbulence_intensity(site, 10) == doctest::Approx(0.1887392).epsilon(1e-6));
  CHECK(en1991::peak_pressure(site, 10) == doctest::Approx(918.86).epsilon(1e-4));
  // c_e at 10 m as read off Figure 4.2 (values from memory): 3.0, 2.8, 2.35, 1.7, 1.2
  CHECK(exposure(en1991::Terrain::sea, 10) == doctest::Approx(2.984).epsilon(5e-4));
  CHECK(exposure(en1991::Terrain::flat, 10) == doctest::Approx(2.769).epsilon(5e-4));
  CHECK(exposure(en1991::Terrain::farmland, 10) == doctest::Approx(2.352).epsilon(5e-4));
  CHECK(exposure(en1991::Terrain::suburb, 10) == doctest::Approx(1.709).epsilon(5e-4));
  CHECK(exposure(en1991::Terrain::town, 10) == doctest::Approx(1.176).epsilon(5e-4));
}

TEST_CASE("the least height, factors, and what is refused") {
  CHECK(exposure(en1991::Terrain::suburb, 1) == exposure(en1991::Terrain::suburb, 5));
  CHECK(exposure(en1991::Terrain::suburb, 5.1) > exposure(en1991::Terrain::suburb, 5));
  en1991::Site site{.basic_velocity = 20};
  const double whole = en1991::peak_pressure(site, 8);
  site.season = 0.8;  // q_p goes with the square
  CHECK(en1991::peak_pressure(site, 8) == doctest::Approx(0.64 * whole).epsilon(1e-14));
  CHECK(en1991::gust_pressure(20) == doctest::Approx(250.0));  // ½ · 1.25 · 20²
  CHECK_THROWS_AS(en1991::peak_pressure(site, 201), OutsideScope);
  CHECK_THROWS_AS(en1991::peak_pressure(en1991::Site{}, 10), BadDescription);
  CHECK_THROWS_AS(en1991::peak_pressure(site, std::nan("")), BadDescription);
  // a board 12 m wide and 4 m high: 1.80 from a lower edge of more than 1 m on (7.4.3)
  CHECK(en1991::force_coefficient({12, 4, 1.01}) == 1.8);
  CHECK(en1991::force_coefficient({4, 4, 0}) == 1.8);
  CHECK_THROWS_AS(en1991::force_coefficient({12, 4, 1.0}), OutsideScope);
  CHECK(en1991::reference_height({12, 4, 3}) == 5.0);
}

TEST_CASE("cases of a cladded face: one force, at the middle, a quarter of the width and of the height off it") {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  for (const bool box : {true, false}) {
    Girder g;
    if (box)
      g = BoxGirder{.bays = 12, .bay_length = 0.5, .width = 0.6, .depth = 0.8, .chord = chord_bar(),
                    .faces = {.top = side, .bottom = side, .left = side, .right = side}, .supports = simply_supported()}
              .girder();
    else
      g = LadderGirder{.bays = 12, .bay_length = 0.5, .depth = 0.8, .chord = chord_bar(), .web = side, .supports = cantilever()}
              .girder();
    const FaceRef face = box ? FaceRef(Side::left) : FaceRef(Side::web);
    const Analysis a(g);
    const GirderFace& f = g.faces[g.face(face)];
    const Vec3<> middle = 0.25 * (g.joint(0, f.first_chord) + g.joint(0, f.second_chord) + g.joint(12, f.first_chord) +
                                  g.joint(12, f.second_chord));
    const double q = 500, F = q * 6.0 * 0.8;  // [N], towards -y: wind from the left
    const std::vector<LoadCase> cases = en1991::wind_on_sign(g, face, q);
    REQUIRE(cases.size() == 5);
    // about z: a force -F at x = ± b/4 turns by -(± b/4) F; about x: at z = ± h/4 by + (± h/4) F
    const std::array<std::array<double, 2>, 5> turns{{{0, 0}, {0, F * 6.0 / 4}, {0, -F * 6.0 / 4}, {F * 0.8 / 4, 0}, {-F * 0.8 / 4, 0}}};
    for (std::size_t i = 0; i < 5; ++i) {
      INFO(cases[i].name);
      CHECK(cases[i].nature == Nature::wind);
      CHECK(cases[i].alternative == cases[0].alternative);
      const Sum s = of_reactions(a, cases[i].actions, middle);
      CHECK(s.force.y == doctest::Approx(-F).epsilon(1e-9));
      CHECK(std::abs(s.force.x) + std::abs(s.force.z) < 1e-7 * F);
      CHECK(std::abs(s.moment.x - turns[i][0]) < 1e-7 * F);
      CHECK(std::abs(s.moment.z - turns[i][1]) < 1e-7 * F);
    }
  }
}

TEST_CASE("round bars: 1.2 up to the drag crisis, then Figure 7.28 by hand") {
  // 60.3 mm at q_p = 919 Pa: v = sqrt(2 · 919/1.25) = 38.346 m/s, Re = 0.0603 · 38.346/15e-6 = 154,150
  CHECK(en1991::reynolds_number(0.0603, 919) == doctest::Approx(154150).epsilon(1e-4));
  CHECK(en1991::round_bar_coefficient(0.0603, 919) == 1.2);
  // 0.11/Re^1.4 = 1.2 at Re = (0.11/1.2)^(1/1.4) = 0.1814 million
  CHECK(std::pow(0.11 / 1.2, 1 / 1.4) == doctest::Approx(0.1814).epsilon(2e-3));
  // 0.5 m at 1000 Pa: v = 40, Re = 1.3333 million, k/b = 0.2/500: 1.2 + 0.18 lg(0.004)/(1 + 0.4 lg 1.3333) =
  // 1.2 + 0.18 · (-2.397940)/1.0499755 = 0.788915; smooth 0.11/1.3333^1.4 = 0.0735
  CHECK(en1991::round_bar_coefficient(0.5, 1000) == doctest::Approx(0.788915).epsilon(1e-5));
  // just beyond the crisis the smooth branch rules: Re = 0.2 million: 0.11/0.2^1.4 = 1.0470
  CHECK(en1991::round_bar_coefficient(0.2e6 * 15e-6 / 40, 1000) == doctest::Approx(1.0470).epsilon(1e-4));
  double before = 1.2;
  for (double d = 0.01; d < 0.1; d += 0.002) {  // never rises with the diameter up to there
    CHECK(en1991::round_bar_coefficient(d, 1000) <= before);
    before = en1991::round_bar_coefficient(d, 1000);
  }
  CHECK_THROWS_AS(en1991::round_bar_coefficient(5.0, 1000), OutsideScope);
  CHECK_THROWS_AS(en1991::round_bar_coefficient(0.0, 1000), BadDescription);
}

TEST_CASE("rectangular bars: Figures 7.23 and 7.24 (values from memory)") {
  CHECK(en1991::rectangular_bar_coefficient(0.1, 0.1) == doctest::Approx(2.1));
  CHECK(en1991::rectangular_bar_coefficient(0.7, 1.0) == doctest::Approx(2.4));
  CHECK(en1991::rectangular_bar_coefficient(0.01, 1.0) == doctest::Approx(2.0));
  CHECK(en1991::rectangular_bar_coefficient(50, 1.0) == doctest::Approx(0.9));
  // d/b = sqrt 2, half way between 1 and 2 on the logarithmic axis: (2.1 + 1.65)/2
  CHECK(en1991::rectangular_bar_coefficient(std::sqrt(2.0), 1.0) == doctest::Approx(1.875));
  CHECK(en1991::rectangular_bar_coefficient(0.1, 0.1, 0.01) == doctest::Approx(2.1 * 0.75));  // r/b = 0.1
  CHECK(en1991::rectangular_bar_coefficient(0.1, 0.1, 0.04) == doctest::Approx(1.05));        // 0.2 and more
}

TEST_CASE("wind tells round bars from flat-sided ones") {
  // a ladder of square posts, wind across: chords 2 · 3 m of 60.3 mm at 1.2, seven posts of 0.5 m and 40 mm at 2.1
  const Bar post{RectangularHollow{0.040, 0.040, 0.004}, material::en_aw_6082_t6()};
  const LadderGirder l{.bays = 6, .bay_length = 0.5, .depth = 0.5, .chord = chord_bar(), .web = open(post), .supports = cantilever()};
  const Analysis a(l);
  const Sum s = of_reactions(a, {wind_on_bars(400, {0, 1, 0})}, {});
  CHECK(s.force.y == doctest::Approx(400 * (1.2 * 6 * 0.0603 + 2.1 * 7 * 0.5 * 0.040)).epsilon(1e-9));
}

TEST_CASE("lattice: solidity by hand, coefficient, and the force on the girder") {
  // 12 bays of 0.5 m, width and depth 0.5 m, sides with 12 alternating diagonals of 26.9 mm and 13 posts of 48.3 mm between
  // chords of 60.3 mm: A_S = 12 · 0.0603 + 13 · 0.5 · 0.0483 + 12 · 0.707107 · 0.0269 = 0.7236 + 0.31395 + 0.228254 =
  // 1.265804 m²; enclosed 6 · 0.5603 = 3.3618 m²; phi = 0.376526
  const Face side = braced(alternating, brace_bar(), cross_bar());
  const Girder g = BoxGirder{.bays = 12, .bay_length = 0.5, .width = 0.5, .depth = 0.5, .chord = chord_bar(),
                             .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
                             .supports = simply_supported()}
                       .girder();
  const en1991::FaceAreas areas = en1991::face_areas(g, Side::left);
  CHECK(areas.round == doctest::Approx(1.265804).epsilon(1e-6));
  CHECK(areas.flat == 0.0);
  CHECK(areas.solidity() == doctest::Approx(0.376526).epsilon(1e-5));
  // 2.25 (1 - 1.5 · 0.376526) + 3.125 · 0.376526² = 0.979226 + 0.443037 = 1.422263
  const double c_f = en1991::lattice_coefficient(areas);
  CHECK(c_f == doctest::Approx(1.422263).epsilon(1e-5));
  // flat-sided: 1.76 · 2.25 (1 - 1.5 phi + phi²) = 3.96 (1 - 0.564789 + 0.141772) = 2.284850
  CHECK(en1991::lattice_coefficient({0, areas.solid(), areas.enclosed}) == doctest::Approx(2.284850).epsilon(1e-5));
  // few bars: 2.25, less than two faces of 1.2 without shadow
  CHECK(en1991::lattice_coefficient({1e-6, 0, 1}) == doctest::Approx(2.25).epsilon(1e-4));
  // top and bottom have bars along the wind alone: the whole force is q c_f A_S, inwards from the left: towards -y
  const Analysis a(g);
  const Sum s = of_reactions(a, {en1991::wind_on_lattice(g, Side::left, 600)}, {});
  CHECK(s.force.y == doctest::Approx(-600 * c_f * areas.solid()).epsilon(1e-9));
  CHECK(std::abs(s.force.z) < 1e-6);
  const Sum bars = of_reactions(a, {wind_on_bars(600, {0, -1, 0})}, {});
  CHECK(s.force.y > bars.force.y);  // the shadow spares (1 - 1.42/2.4)
  CHECK(s.force.y / bars.force.y == doctest::Approx(c_f / 2.4).epsilon(1e-9));
  // a diagonal without posts closes nothing: both cross members of the open panel beside it stand in the wind:
  // 2 · 1.0 · 0.0603 + sqrt(0.5) · 0.0269 + 2 · 0.5 · 0.0483 = 0.187921 m²
  const Girder mixed = BoxGirder{.bays = 2, .bay_length = 0.5, .width = 0.5, .depth = 0.5, .chord = chord_bar(),
                                 .faces = {.top = side, .bottom = side, .left = {braced(alternating, brace_bar()), open(cross_bar())}, .right = side},
                                 .supports = simply_supported()}
                           .girder();
  CHECK(en1991::face_areas(mixed, Side::left).round == doctest::Approx(0.187921).epsilon(1e-5));
  // wider than high: outside; so are three chords
  const Girder wide = BoxGirder{.bays = 4, .bay_length = 0.5, .width = 0.8, .depth = 0.5, .chord = chord_bar(),
                                .faces = {.top = side, .bottom = side, .left = side, .right = side}, .supports = simply_supported()}
                          .girder();
  CHECK_THROWS_AS((void)en1991::wind_on_lattice(wide, Side::left, 600), OutsideScope);
  CHECK(en1991::wind_on_lattice(wide, Side::top, 600).direction.z == doctest::Approx(-1.0));
  CHECK_THROWS_AS((void)en1991::lattice_coefficient({0.7, 0, 1}), OutsideScope);
}

TEST_CASE("signs in service and out of service exclude each other") {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  const Girder g = BoxGirder{.bays = 4, .bay_length = 0.5, .width = 0.5, .depth = 0.5, .chord = chord_bar(),
                             .faces = {.top = side, .bottom = side, .left = side, .right = side}, .supports = simply_supported()}
                       .girder();
  std::vector<LoadCase> cases = en1991::wind_on_sign(g, Side::left, en1991::gust_pressure(15), "in service");
  for (const LoadCase& c : en1991::wind_on_sign(g, Side::left, 900, "out of service")) cases.push_back(c);
  std::vector<CaseKind> kinds;
  for (const LoadCase& c : cases) kinds.push_back({c.name, c.nature, c.alternative});
  CHECK(combinations(en1990::ultimate(), kinds).size() == 11);  // each of ten, and none
}
