// SPDX-License-Identifier: MIT
// Dynamic factors of hoists, notional horizontal loads and wear: by their totals, and by what they do to a proof.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"
#include "support/refused.hpp"
#include "support/tubes.hpp"

using namespace baywork;
using namespace baywork::literals;
using en13001::HoistingClass;

namespace {

BoxGirder box(const Bar& chord = chord_bar()) {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = 8,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.6,
          .chord = chord,
          .faces = {.top = side, .bottom = open(cross_bar()), .left = side, .right = side},
          .supports = simply_supported()};
}
LoadCase own_weight() { return {"self-weight", Nature::permanent, {self_weight(1.1)}, {}}; }
LoadCase screen() {
  return {"screen",
          Nature::imposed,
          {line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 800.0),
           point_load(ChordOf::bottom_left, 1.3, Vec3<>{10, 20, -3000}, Vec3<>{0, 40, 0}),
           cross_member_load(Side::bottom, 4, 0.3, 500.0)},
          {}};
}
Vec3<> total(const Analysis& a, const LoadCase& c) { return a.solve(c).total_load(); }

}  // namespace

TEST_CASE("phi_2 = phi_2,min + beta_2 v, EN 13001-2 and EN 1991-3 Table 2.5 (values from memory)") {
  // 4 m/min = 1/15 m/s: 1.05 + 0.17/15, 1.10 + 0.34/15, 1.15 + 0.51/15, 1.20 + 0.68/15
  CHECK(close(en13001::phi_2(HoistingClass::hc1, 1.0 / 15), 1.0613333333, 1e-9));
  CHECK(close(en13001::phi_2(HoistingClass::hc2, 1.0 / 15), 1.1226666667, 1e-9));
  CHECK(close(en13001::phi_2(HoistingClass::hc3, 1.0 / 15), 1.184, 1e-12));
  CHECK(close(en13001::phi_2(HoistingClass::hc4, 1.0 / 15), 1.2453333333, 1e-9));
  CHECK(en13001::phi_2(HoistingClass::hc2, 0.0) == 1.10);
  CHECK(has(refused([] { (void)en13001::phi_2(HoistingClass::hc2, -0.1); }), "hoisting speed"));
}

TEST_CASE("hoists in motion: phi times the payload and phi - 1 times the weight, as cases that exclude each other") {
  const Analysis a{box()};
  const double phi = en13001::phi_2(HoistingClass::hc2, 4.0 / 60);
  const std::vector<LoadCase> cases =
      while_hoisted(screen(), own_weight().actions, {{"moving", phi}, {"emergency stop", 1.4}});
  REQUIRE(cases.size() == 3);
  const double G = total(a, own_weight()).z, Q = total(a, screen()).z;
  CHECK(close(Q, -(800.0 * 4 + 3000 + 500), 1e-12));
  CHECK(close(total(a, cases[0]).z, Q, 1e-12));
  CHECK(close(total(a, cases[1]).z, phi * Q + (phi - 1) * G, 1e-12));
  CHECK(close(total(a, cases[2]).z, 1.4 * Q + 0.4 * G, 1e-12));
  CHECK(close(total(a, cases[2]).y, 1.4 * 20, 1e-12));
  for (const LoadCase& c : cases) {
    CHECK(c.nature == Nature::imposed);
    CHECK(detail::share_word(c.alternative, "screen"));
    CHECK(detail::share_word(c.alternative, "hoists move") == (&c != &cases[0]));
  }
  CHECK(cases[1].name == "screen, moving");
  // in no combination are two of them together
  std::vector<LoadCase> all{own_weight()};
  all.insert(all.end(), cases.begin(), cases.end());
  for (const Combination& c : combinations(en1990::ultimate(), a.solve(all).kinds()))
    CHECK((c.factors[1] != 0.0) + (c.factors[2] != 0.0) + (c.factors[3] != 0.0) <= 1);
  // what is not lifted, or would be lifted by less than its weight, is refused
  CHECK(has(refused([&] { (void)while_hoisted(screen(), {warming(10)}, {{"moving", 1.1}}); }), "among what is lifted"));
  CHECK(has(refused([&] {
              (void)while_hoisted(screen(), {}, {{"moving", 0.9}});
            }),
            "hoisting, moving: the dynamic factor is 0.9"));
  CHECK(has(refused([&] { (void)while_hoisted(own_weight(), {}, {{"moving", 1.1}}); }), "it is permanent"));
}

TEST_CASE("notional loads: the share of the vertical total, level, at the height where it acts") {
  const BoxGirder g = box();
  const Analysis a{g};
  const double V = -total(a, own_weight()).z - total(a, screen()).z;
  const std::vector<LoadCase> cases = notional_loads(a.girder(), {own_weight(), screen()}, notional_usual);
  REQUIRE(cases.size() == 4);
  const std::vector<Vec3<>> directions{{0, 1, 0}, {0, -1, 0}, {1, 0, 0}, {-1, 0, 0}};
  for (std::size_t i = 0; i < 4; ++i) {
    INFO(cases[i].name);
    CHECK(cases[i].nature == Nature::notional);
    CHECK(length(total(a, cases[i]) - 0.05 * V * directions[i]) < 1e-10 * V);
  }
  // by hand: 3000 N on the top left chord, 0.6 m above the supports on the lower chords, 0.5 m apart: 150 N towards +y
  // are held by as much sideways, and turn the girder by 150 · 0.6 = 90 Nm about its axis, which a pair of 90/0.5 = 180
  // N up on the left (y = +0.25) and down on the right holds, shared by the two ends
  const LoadCase point{"point", Nature::imposed, {point_load(ChordOf::top_left, 2.0, 3000.0)}, {}};
  const Response r = a.solve(notional_loads(a.girder(), {point}, 0.05)[0]);
  double side = 0, left = 0, right = 0;
  for (const Response::SupportReaction& s : r.reactions()) {
    const Vec3<> at =
        a.girder().joint(static_cast<std::size_t>(s.address.station), static_cast<std::size_t>(s.address.chord));
    side += s.force.y;
    (at.y > 0.0 ? left : right) += s.force.z;
  }
  CHECK(close(side, -150.0, 1e-9));
  CHECK(close(left, 180.0, 1e-9));
  CHECK(close(right, -180.0, 1e-9));
  // uplift lessens them, a sideways pull has no share
  const std::vector<LoadCase> uplift = notional_loads(
      a.girder(),
      {own_weight(), LoadCase{"pull", Nature::imposed, {point_load(ChordOf::top_left, 2.0, Vec3<>{0, 900, 100})}, {}}},
      0.1);
  CHECK(close(total(a, uplift[0]).y, 0.1 * (-total(a, own_weight()).z - 100), 1e-9));
  // wind on an upright face weighs nothing; snow as a pressure is asked for as line loads
  const LoadCase wind{"wind", Nature::wind, {wind_on(Side::left, 400.0)}, {}},
      snow{"snow", Nature::snow, {wind_on(Side::top, 400.0)}, {}};
  CHECK(close(total(a, notional_loads(a.girder(), {own_weight(), wind}, 0.1)[0]).y, -0.1 * total(a, own_weight()).z,
              1e-9));
  CHECK(has(refused([&] { (void)notional_loads(a.girder(), {snow}, 0.1); }), "top face"));
  CHECK(has(refused([&] { (void)notional_loads(a.girder(), {wind}, 0.1); }), "none of the cases has a vertical load"));
  CHECK(has(refused([&] { (void)notional_loads(a.girder(), {own_weight()}, 0.0); }), "share of the vertical loads"));
}

TEST_CASE("self-weight along any direction has the same size") {
  const Analysis a{box()};
  const Vec3<> down = a.solve({self_weight()}).total_load();
  const Vec3<> tilted = a.solve({BasicSelfWeight<>{standard_gravity, 1.0, {0, 3, -4}}}).total_load();
  CHECK(length(tilted - magnitude(down.z) * Vec3<>{0, 0.6, -0.8}) < 1e-9 * length(down));
  CHECK(has(refused([&] {
              (void)a.solve({BasicSelfWeight<>{standard_gravity, 1.0, {0, 0, 0}}});
            }),
            "direction is not given"));
}

TEST_CASE("worn tubes: the wall is lost outside, the metal keeps its strength") {
  // 60.3 x 5 with 10 % of its wall gone: 59.3 x 4.5; A = pi 4.5 (59.3 - 4.5) = 774.717 mm2,
  // I = pi (59.3^4 - 50.3^4)/64 = 292776 mm4 (ring)
  const Bar w = worn(chord_bar(), 0.10);
  CHECK(close(w.section.height, 59.3_mm, 1e-12));
  CHECK(close(w.section.wall, 4.5_mm, 1e-12));
  CHECK(close(w.section.area, pi * 4.5 * 54.8 * 1e-6, 1e-12));
  CHECK(close(w.section.Iy, pi * (std::pow(59.3, 4) - std::pow(50.3, 4)) / 64 * 1e-12, 1e-12));
  CHECK(has(w.text(), "worn from round tube 60.3 x 5"));
  // 6082-T6 as extruded tube has 260 MPa above 5 mm, 250 up to it; 6060-T66 150 above 3 mm, 160 up to it: a wall of 3.2
  // mm worn to 2.88 keeps its 150 MPa
  const Bar thin{RoundTube{48.3_mm, 3.2_mm}, material::en_aw_6060_t66(material::Product::hollow_extrusion)};
  CHECK(thin.strength.yield == 150e6);
  CHECK(worn(thin, 0.10).strength.yield == 150e6);
  CHECK(material::strength(worn(thin, 0.10).material, 2.88_mm).yield == 150e6);
  // a sharp-cornered 80 x 50 x 5 at 20 %: 78 x 48 x 4, A = 78 48 - 70 40 = 944 mm2
  const Bar box_bar{RectangularHollow{80_mm, 50_mm, 5_mm, corners_of_radii(0, 0)}, material::en_aw_6082_t6()};
  CHECK(close(worn(box_bar, 0.2).section.area, 944e-6, 1e-12));
  // rounded corners are worn along: outer radius 7.5 - 1, inner 5: A = 944 + (4 - pi)(5^2 - 6.5^2)
  const Bar rounded{RectangularHollow{80_mm, 50_mm, 5_mm}, material::en_aw_6082_t6()};
  CHECK(close(worn(rounded, 0.2).section.area, (944 + (4 - pi) * (25 - 42.25)) * 1e-6, 1e-9));
  CHECK(worn(chord_bar(), 0.0).section.designation == chord_bar().section.designation);
  CHECK(has(refused([] { (void)worn(chord_bar(), 1.0); }), "the share of its wall that is lost is 1"));
  CHECK(has(refused([] {
              (void)worn(Bar{SolidRound{12_mm}, material::en_aw_6082_t6()}, 0.1);
            }),
            "not a hollow section"));
  // a girder of worn chords sags more and weighs less
  const Analysis fresh{box()}, used{box(worn(chord_bar(), 0.10))};
  CHECK(total(used, own_weight()).z > total(fresh, own_weight()).z);
  CHECK(used.solve(screen()).axis_deflection(2.0).z < fresh.solve(screen()).axis_deflection(2.0).z);
}

TEST_CASE("k_use is taken of every resistance, in proofs and ratings, and is printed") {
  const Analysis a{box()};
  const Cases cases = a.solve(std::vector{own_weight(), screen()});
  verify::Basis worn_basis;
  worn_basis.joints = {.checked = true, .throat = 4_mm};
  const verify::Proof whole = verify::by_material(cases, en1990::ultimate(), worn_basis);
  worn_basis.use = verify::worn_use;
  const verify::Proof used = verify::by_material(cases, en1990::ultimate(), worn_basis);
  REQUIRE(whole.rows().size() == used.rows().size());
  std::size_t compared = 0;
  for (std::size_t i = 0; i < whole.rows().size(); ++i) {
    const verify::Row &w = whole.rows()[i], &u = used.rows()[i];
    REQUIRE(w.check == u.check);
    if (w.check == verify::Check::outside_scope) continue;
    INFO(w << "\n" << u);
    switch (w.check) {
      case verify::Check::axial:
      case verify::Check::bending:
      case verify::Check::torsion:
      case verify::Check::buckling:
      case verify::Check::weld: CHECK(close(u.utilisation, w.utilisation / 0.85, 1e-9)); break;
      case verify::Check::joint: CHECK(u.utilisation >= w.utilisation / 0.85 * (1 - 1e-9)); break;
      default: CHECK(u.utilisation > w.utilisation); break;
    }
    ++compared;
  }
  CHECK(compared > 100);
  bool printed = false;
  for (const std::string& s : used.assumptions()) printed = printed || has(s, "0.85 of every resistance (k_use)");
  CHECK(printed);
  // a rating: the load found makes the proof just 1
  rating::Terms terms;
  terms.basis.use = verify::worn_use;
  const rating::Rater rater(a.solve(std::vector{own_weight()}), terms);
  const double factor = rater.allowable(screen().actions).factor;
  CHECK(factor > 0.0);
  std::vector<Action> full;
  for (const Action& action : screen().actions) full.push_back(detail::lifted(action, factor));
  const verify::Proof at_it =
      verify::by_material(a.solve(std::vector{own_weight(), LoadCase{"screen", Nature::imposed, full, {}}}),
                          en1990::ultimate(), terms.basis);
  CHECK(close(at_it.worst().utilisation, 1.0, 1e-9));
  for (const double bad : {0.0, 1.1, std::nan("")}) {
    terms.basis.use = bad;
    CHECK(has(refused([&] { (void)verify::by_material(cases, en1990::ultimate(), terms.basis); }), "factor of use"));
  }
}

TEST_CASE("k_use is taken of connectors, too: of pins of aluminium and of steel, also where they are drawn again") {
  for (const material::Material& m : {material::en_aw_6082_t6(material::Product::rod_or_bar), material::s355()}) {
    BoxGirder spliced = box();
    if (m.family == material::Family::steel) spliced.chord.material = material::s355h();
    PinCoupler often_drawn = coupler();
    often_drawn.plate_material = m;
    often_drawn.replaceable = true;
    spliced.modules = {0, {4}, often_drawn};
    const Analysis a{spliced};
    const Response r = a.solve(screen().actions);
    verify::Basis worn_basis;
    worn_basis.use = verify::worn_use;
    const auto rows = [&](const verify::Basis& basis) {
      std::vector<verify::Row> out;
      for (const verify::Row& row : verify::by_material(r, basis).rows())
        if (row.check == verify::Check::splice) out.push_back(row);
      return out;
    };
    const std::vector<verify::Row> whole = rows({}), used = rows(worn_basis);
    REQUIRE(whole.size() >= 4 * 11);
    REQUIRE(whole.size() == used.size());
    for (std::size_t i = 0; i < whole.size(); ++i) {
      INFO(whole[i] << "\n" << used[i]);
      const bool squares = std::string(whole[i].reason) == "pin in bending and shear";
      CHECK(close(used[i].utilisation, whole[i].utilisation / (squares ? 0.85 * 0.85 : 0.85), 1e-9));
    }
  }
}
