// SPDX-License-Identifier: MIT
// Panel drawing, load tables, interaction and N-M points read back by an XML parser; bad requests.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <tuple>
#include <vector>

#include <baywork/show.hpp>

#include "support/parsed_svg.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;

BoxGirder box(std::size_t bays = 12) {
  const auto side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = bays,
          .bay_length = 0.5_m,
          .width = 0.5_m,
          .depth = 0.4_m,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .supports = simply_supported()};
}
std::vector<const svg::Element*> texts(const svg::Element& s) {
  return s.all([](const svg::Element& e) { return e.name == "text"; });
}
bool says(const svg::Element& s, const std::string& words) {
  for (const svg::Element* t : texts(s))
    if (t->text.find(words) != std::string::npos) return true;
  return false;
}

}  // namespace

TEST_CASE("a panel under constant shear looks as the portal method says") {
  // An open ladder of equal bars throughout, clamped, its end pushed by V and turned so that the bending moment of the
  // whole vanishes in the middle of panel 7. There, by statics and antisymmetry, each chord carries V/2 and has no
  // moment in its middle: V a / 4 at its ends. The chords' own bending takes the share s = I / (I + A h^2 / 4) of the
  // moment of the whole, their axial forces the rest, whose steps (1 - s) V a / h are the shear of the cross members:
  // these have (1 - s) V a / 2 at their ends. The portal method is the limit of s = 0.
  const double V = 800.0, a = 0.5, h = 0.5, couple = V * (7.0 - 3.25);
  const LadderGirder l{.bays = 14,
                       .bay_length = a,
                       .depth = h,
                       .chord = chord_bar(),
                       .web = open(chord_bar()),
                       .supports = cantilever()};
  const double I_own = chord_bar().section.Iy, share = I_own / (I_own + chord_bar().section.area * h * h / 4);
  const Analysis analysis{l};
  const Response r = analysis.solve({point_load(ChordOf::bottom, 7.0, Vec3<>{couple / h, 0, -V / 2}),
                                     point_load(ChordOf::top, 7.0, Vec3<>{-couple / h, 0, -V / 2})});
  const svg::Element s = svg::parsed(show::panel_drawing(r, Side::web, 6));
  const svg::Element& panel = *s.of_class("bw-panel").at(0);
  const double scale = std::stod(panel.at("data-px-per-Nm"));
  std::size_t chords = 0, posts = 0;
  for (const svg::Element& bar : panel.children) {
    const auto p = bar.children.at(0).points();
    const bool chord = std::abs(p.back().x - p.front().x) > std::abs(p.back().y - p.front().y);
    const double moment = chord ? V * a / 4 : (1 - share) * V * a / 2;
    const double first = chord ? p[1].y - p.front().y : p[1].x - p.front().x;
    const double last = chord ? p[p.size() - 2].y - p.back().y : p[p.size() - 2].x - p.back().x;
    CHECK(std::abs(std::abs(first) - scale * moment) < 0.0101);
    CHECK(std::abs(std::abs(last) - scale * moment) < 0.0101);
    CHECK(first * last < 0);
    if (chord) CHECK(first < 0);  // the end is pushed down: at the left end of each chord bar tension is above
    ++(chord ? chords : posts);
  }
  CHECK(chords == 2);
  CHECK(posts == 2);
  // the dashed lines of the portal method lie on the outlines but for s, and rings in the middle of all four bars
  for (const svg::Element* dashed :
       s.all([](const svg::Element& e) { return e.name == "polyline" && e.is("bw-dash"); })) {
    double nearest = 1e9;
    for (const svg::Element& bar : panel.children)
      for (const svg::Point& end : dashed->points())
        nearest = std::fmin(nearest, svg::distance_to(bar.children[0].points(), end));
    CHECK(nearest < 34 * share + 0.0101);  // 34 px: the greatest moment
  }
  std::size_t rings = 0;
  for (const svg::Element* ring : s.all([](const svg::Element& e) { return e.name == "circle" && e.is("bw-bend"); }))
    for (const svg::Element& bar : panel.children) {
      const auto p = bar.children[0].points();
      const double dx = ring->number("cx") - 0.5 * (p.front().x + p.back().x),
                   dy = ring->number("cy") - 0.5 * (p.front().y + p.back().y);
      rings += std::hypot(dx, dy) < 0.5 ? 1U : 0U;
    }
  CHECK(rings == 4);
  CHECK(says(s, "V 800 N"));
  CHECK(says(s, "Moments on the tension side"));
}

TEST_CASE("a load table's columns are its loads, hatched by what limits them") {
  rating::TableTerms terms;
  terms.terms.deflection = rating::DeflectionLimit{300};
  const rating::LoadTable t = rating::load_table(
      std::vector<std::size_t>{4, 8, 16, 28}, [](std::size_t n) { return box(n); }, terms);
  const svg::Element s = svg::parsed(show::load_table_chart(t));
  const auto rows = s.of_class("bw-table");
  REQUIRE(rows.size() == rating::patterns_between_supports.size());
  std::size_t by_bars = 0, by_deflection = 0;
  for (std::size_t k = 0; k < rows.size(); ++k)
    for (const svg::Element& column : rows[k]->children) {
      const rating::TableCell& c = t.rows[std::stoul(column.at("data-row"))].cells[k];
      CHECK(column.children.at(0).number("height") ==
            Approx(std::stod(rows[k]->at("data-px-per-N")) * c.total).epsilon(1e-3));
      const bool deflection = c.allowable.verdict == rating::Verdict::deflection;
      CHECK(column.children[0].is("bw-hold") == deflection);
      ++(deflection ? by_deflection : by_bars);
    }
  CHECK(by_bars > 0);
  CHECK(by_deflection > 0);
  CHECK(says(s, "No load certificate"));
  // printed loads are never above those found
  for (const rating::TableRow& row : t.rows)
    CHECK(std::stod(rating::rounded_down(row.cells[0].total / 1e3, 1)) * 1e3 <= row.cells[0].total);
}

TEST_CASE("the interaction curve goes through its points") {
  const Analysis a{box()};
  const rating::Rater rater(a);
  const auto curve = rating::interaction_curve(rater, {.rays = 12});
  REQUIRE(curve.size() == 13);
  const svg::Element s = svg::parsed(show::interaction_picture(curve));
  const svg::Element& g = *s.of_class("bw-interaction").at(0);
  const auto p = g.children.at(0).points();
  const double x = std::stod(g.at("data-px-per-x")), y = std::stod(g.at("data-px-per-y"));
  for (std::size_t i = 0; i < p.size(); ++i) {
    CHECK(p[i].x - p[0].x == Approx(x * (curve[i].horizontal - curve[0].horizontal)).epsilon(1e-6).scale(1e4));
    CHECK(p[i].y - p[0].y ==
          Approx(y * (curve[i].vertical - curve[0].vertical)).epsilon(1e-6).scale(1e4));  // down is down
  }
  CHECK(says(svg::parsed(show::interaction_picture({})), "There is no curve"));
}

TEST_CASE("hoists reach over their level tolerances, as the girder does whose slings' ends are moved") {
  // three hoists of two slings each; all lines pull throughout, so that a moved end is a settlement like any other
  BoxGirder g = box();
  g.supports = hung_at({0.5, 2.5, 5.5});
  const Analysis a{g};
  const double off = 0.0002;
  const std::vector<Action> loads{self_weight(), line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 800.0)};
  const HoistStudy study(a.solve(loads), {.off_level = off, .each_slack = true});
  const auto pulls = [&](const Response& r) {
    std::vector<double> out;
    for (const Hoist& h : study.hoists()) {
      out.push_back(0.0);
      for (const auto& reaction : r.reactions())
        if (reaction.address.station == static_cast<int>(h.station)) out.back() += reaction.force.z;
    }
    return out;
  };
  std::vector<std::vector<double>> states{pulls(a.solve(loads))};
  for (const Hoist& h : study.hoists())
    for (const double by : {off, -off}) {
      std::vector<Action> moved = loads;
      for (const ChordOf c : {ChordOf::top_left, ChordOf::top_right})
        moved.push_back(settlement(c, h.x, Motion::uz, by));
      states.push_back(pulls(a.solve(moved)));
    }
  const svg::Element s = svg::parsed(show::hoist_reactions(study, {.width = 2400}));
  const auto bars = s.of_class("bw-hoist");
  REQUIRE(bars.size() == 3);
  double level_sum = 0;
  for (std::size_t h = 0; h < 3; ++h) {
    const double scale = std::stod(bars[h]->at("data-px-per-N"));
    double least = states[0][h], greatest = states[0][h];
    for (const auto& state : states) {
      REQUIRE(state[h] > 0);
      least = std::fmin(least, state[h]);
      greatest = std::fmax(greatest, state[h]);
    }
    const auto part = [&](const char* name, const char* cls) -> const svg::Element& {
      return *bars[h]->all([&](const svg::Element& e) { return e.name == name && e.is(cls); }).at(0);
    };
    const svg::Element &range = part("rect", "bw-hold-area"), &level = part("line", "bw-bold");
    const double zero = part("line", "bw-quiet").number("x1");
    CHECK(scale * (greatest - least) > 2);
    CHECK(std::abs(range.number("x") - zero - scale * least) < 0.02);
    CHECK(std::abs(range.number("width") - scale * (greatest - least)) < 0.02);
    CHECK(std::abs(level.number("x1") - zero - scale * states[0][h]) < 0.02);
    level_sum += (level.number("x1") - zero) / scale;
    // with the middle hoist slack the outer two carry half each, by statics; the dashed bars reach there
    if (h != 1) CHECK(std::abs(part("line", "bw-quiet").number("x2") - zero - scale * study.total() / 2) < 0.1);
  }
  CHECK(level_sum == Approx(study.total()).epsilon(1e-3));
  CHECK(says(s, "Hoist 1 at 0.5 m: "));
  CHECK(says(s, "another hoist slack as well"));
  CHECK(says(s, "The girder does not hang without it"));  // the third: the load lies beyond the second
}

TEST_CASE("hoists that another leaves without load go slack, both of a pair, and nothing of rounding is printed") {
  // The middle one of three, raised far, carries a girder whose load lies above it alone: by symmetry the outer two
  // hang loose.
  BoxGirder g = box();
  g.supports = hung_at({0.5, 3.0, 5.5});
  const Analysis a{g};
  const HoistStudy study(a.solve({self_weight()}), {.off_level = 0.05, .each_slack = false});
  const svg::Element s = svg::parsed(show::hoist_reactions(study, {.width = 2400}));  // no words broken
  std::size_t slack = 0;
  for (const svg::Element* t : texts(s)) {
    slack += t->text.find("GOES SLACK") != std::string::npos ? 1U : 0U;
    CHECK(t->text.find("e-") == std::string::npos);
  }
  CHECK(slack == 3);
  for (const svg::Element* bar : s.of_class("bw-hoist"))
    CHECK(bar->all([](const svg::Element& e) { return e.name == "rect" && e.is("bw-hold-area"); })[0]->number("x") ==
          Approx(bar->children.at(0).number("x1")));  // from zero on
}

TEST_CASE("N-M curves pass through the resistances worked out by hand, and points are the response's") {
  // EN AW-6082 T6 tube 60.3 x 5: A = pi (60.3^2 - 50.3^2) / 4 = 868.65 mm2, Wpl = (60.3^3 - 50.3^3) / 6 = 15332 mm3,
  // fo 250 N/mm2 (EN 1999-1-1 Table 3.2b, value from memory), gamma_M1 1.1. N_o,Rd = 197.42 kN; class 2 in bending:
  // M_Rd = 3.4846 kNm.
  const Analysis a{box()};
  const Response r = a.solve({self_weight(), wind_on(Side::left, 800.0)});
  const svg::Element s = svg::parsed(show::n_m_points(r));
  const svg::Element& g = *s.of_class("bw-n-m").at(0);
  const double per_N = std::stod(g.at("data-px-per-N")), per_Nm = std::stod(g.at("data-px-per-Nm"));
  const svg::Element& parent =
      *s.all([](const svg::Element& e) { return e.name == "polyline" && e.is("bw-ink"); }).at(0);
  const auto p = parent.points();
  const double N = 868.65037 * 250 / 1.1, M = 15332.1167 * 250 / 1.1 / 1e3;
  CHECK(p.back().x - p.front().x == Approx(per_N * 2 * N).epsilon(1e-4));
  double top = 1e9;
  for (const svg::Point& q : p) top = std::fmin(top, q.y);
  CHECK(p.front().y - top == Approx(per_Nm * M).epsilon(1e-4));
  // half the axial force leaves (1 - 0.5^1.3)^(1 / 1.02) of the moment, 6.2.9.2
  const double at = p[24].x + 0.5 * (p.back().x - p[24].x);
  CHECK(svg::distance_to(p, {at, p.front().y - per_Nm * M * std::pow(1 - std::pow(0.5, 1.3), 1 / 1.02)}) < 0.05);
  // worn to 0.85, it has 0.85 of all
  verify::Basis worn;
  worn.use = 0.85;
  const svg::Element used = svg::parsed(show::n_m_points(r, worn));
  const auto v = used.all([](const svg::Element& e) { return e.name == "polyline" && e.is("bw-ink"); }).at(0)->points();
  CHECK(v.back().x - v.front().x ==
        Approx(std::stod(used.of_class("bw-n-m").at(0)->at("data-px-per-N")) * 2 * 0.85 * N).epsilon(1e-4));

  const double zero_x = 0.5 * (p.front().x + p.back().x), zero_y = p.front().y;
  std::size_t met = 0, asked = 0;
  for (const std::size_t m : a.model().chord_members) {
    const CutForces f = r.member(m).forces(fraction{0});
    const double x = zero_x + per_N * f.N, y = zero_y - per_Nm * std::hypot(f.My, f.Mz);
    ++asked;
    for (const svg::Element& c : g.children)
      if (std::hypot(c.number("cx") - x, c.number("cy") - y) < 0.02 && c.is("bw-load")) {  // a ring: beside a weld
        ++met;
        break;
      }
  }
  CHECK(met == asked);

  // steel, S355, no weld zone: N_pl,Rd = A fy; M_pl,Rd = Wpl fy; a ring of thin metal has cos(pi n / 2) of it at most
  BoxGirder steel = box();
  const auto s355 = material::s355();
  steel.chord = {RoundTube{60.3_mm, 5.0_mm}, s355};
  const Analysis b{steel};
  const svg::Element t = svg::parsed(show::n_m_points(b.solve({self_weight()})));
  const svg::Element& first = *t.of_class("bw-n-m").at(0);
  const auto q = t.all([](const svg::Element& e) { return e.name == "polyline" && e.is("bw-ink"); }).at(0)->points();
  CHECK(q.back().x - q.front().x == Approx(std::stod(first.at("data-px-per-N")) * 2 * 868.65037 * 355).epsilon(1e-4));
  double above = 1e9;
  for (const svg::Point& w : q) above = std::fmin(above, w.y);
  CHECK(q.front().y - above == Approx(std::stod(first.at("data-px-per-Nm")) * 15332.1167 * 355 / 1e3).epsilon(1e-4));
}

TEST_CASE("sections beside welds across a bar are marked against the curve of their own softened length") {
  // Tube 48.3 x 4 of EN AW-6082 T6, welded across in its middle: MIG, b_haz 20 mm (EN 1999-1-1:2007 6.1.6.3, value from
  // memory). A lug of 10 mm softens 50 mm, more than the tube is wide: omega_0 = 125/250; one of 5 mm softens 45 mm:
  // omega_0 = (185/1.25)/(250/1.1) = 0.6512 (6.2.9.3, Table 3.2b; values from memory).
  // A = pi (48.3^2 - 40.3^2)/4 = 556.69 mm2: N_o,Rd = 126.52 kN.
  for (const auto& [lug, name, omega] : {std::tuple{10_mm, "long weld zone", 0.5}, {5_mm, "weld zone", 0.651200}}) {
    BoxGirder g = box();
    const Bar cross{RoundTube{48.3_mm, 4.0_mm}, material::en_aw_6082_t6()};
    g.faces.bottom = open(cross.welded_across({{0.25, lug}}));
    const Analysis a{g};
    const Response r = a.solve({cross_member_load(Side::bottom, 2, 0.5, 2.0_kN)});
    const GirderModel& model = a.model();
    const std::size_t m = model.faces[a.girder().face(Side::bottom)].cross_members[2].front();
    const svg::Element s = svg::parsed(show::n_m_points(r));
    const std::string bar = std::to_string(model.bar_index[m]);
    const auto plots = s.of_class("bw-n-m");
    const auto plot = std::find_if(plots.begin(), plots.end(), [&](const auto* e) { return e->at("data-bar") == bar; });
    REQUIRE(plot != plots.end());
    const double per_N = (*plot)->number("data-px-per-N"), per_Nm = (*plot)->number("data-px-per-Nm");
    // its curves: the last ones before its points
    std::vector<const svg::Element*> curves;
    for (const svg::Element& e : s.children) {
      if (&e == *plot) break;
      if (e.is("bw-n-m")) curves.clear();
      if (e.name == "polyline") curves.push_back(&e);
    }
    double widest_dashed = 0;
    bool met = false;
    for (const svg::Element* c : curves) {
      if (!c->is("bw-dash")) continue;
      const auto p = c->points();
      met = met || std::abs((p.back().x - p.front().x) / per_N - 2 * omega * 126.52e3) < 60.0;
      widest_dashed = std::fmax(widest_dashed, p.back().x - p.front().x);
    }
    CHECK(met);
    CHECK(widest_dashed < curves.at(0)->points().back().x - curves.at(0)->points().front().x);
    CHECK(std::any_of(s.children.begin(), s.children.end(),
                      [words = std::string(name)](const svg::Element& e) { return e.text == words; }));
    // the load's place lies in the middle of the softened metal
    const auto p = curves.at(0)->points();
    const CutForces f = r.member(m).forces(fraction{0.5});
    const double x = 0.5 * (p.front().x + p.back().x) + per_N * f.N, y = p.front().y - per_Nm * std::hypot(f.My, f.Mz);
    std::size_t squares = 0;
    bool in_middle = false;
    for (const svg::Element& e : (*plot)->children) {
      if (e.name != "rect") continue;
      ++squares;
      in_middle = in_middle || std::hypot(e.number("x") + e.number("width") / 2 - x,
                                          e.number("y") + e.number("height") / 2 - y) < 0.02;
    }
    CHECK(squares >= 3 * 13);  // of every cross member of the face at least the weld's middle and both its ends
    CHECK(in_middle);
    CHECK(show::n_m_points(r).find("Squares: beside welds across a bar") != std::string::npos);
  }
  const Analysis without{box()};
  CHECK(show::n_m_points(without.solve({self_weight()})).find("Squares") == std::string::npos);
}

TEST_CASE("impossible pictures are refused in girder words") {
  const Analysis a{box()};
  const Response r = a.solve({self_weight()});
  CHECK_THROWS_WITH_AS(show::axial_forces(r, {.width = 100}),
                       "picture: a width of 100 px is asked for; 240 to 4000 px are accepted", BadDescription);
  CHECK_THROWS_AS(show::axial_forces(r, {.width = std::nan("")}), BadDescription);
  CHECK_THROWS_WITH_AS(show::panel_drawing(r, Side::bottom, 12),
                       "bottom face: a drawing of panel 13 is asked for; panels 1 to 12 are accepted", BadDescription);
  CHECK_THROWS_AS(show::panel_drawing(r, "deck", 0), BadDescription);
  const Cases cases = a.solve(std::vector<LoadCase>{{"self-weight", Nature::permanent, {self_weight()}}});
  CHECK_THROWS_AS(show::reactions(cases, {}), BadDescription);
  // a proof's rows are of one girder: those of another have no place on it
  const Analysis longer{box(20)};
  const Cases other = longer.solve(std::vector<LoadCase>{{"self-weight", Nature::permanent, {self_weight()}}});
  CHECK_THROWS_AS(show::utilisation_map(a.model(), verify::by_material(other, en1990::ultimate())), BadDescription);
}
