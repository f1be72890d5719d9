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
