// SPDX-License-Identifier: MIT
// Pictures read back by an XML parser: what is drawn is what was computed, and all of them are well-formed.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/show.hpp>

#include "support/all_pictures.hpp"
#include "support/parsed_svg.hpp"
#include "support/random_described_girders.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;

constexpr double px_digits = 0.0101;  // two roundings to 0.01 px

BoxGirder box(std::size_t bays = 12) {
  const auto side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = bays,
          .bay_length = 0.5_m,
          .width = 0.5_m,
          .depth = 0.5_m,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .modules = {.bays_each = 4},
          .supports = hung_at({1.0, 5.0})};
}
std::vector<LoadCase> cases_of() {
  return {{"self-weight", Nature::permanent, {self_weight()}},
          {"wind", Nature::wind, {wind_on(Side::left, 400.0_Pa)}},
          {"projector", Nature::imposed, {point_load(ChordOf::bottom_left, 3.1_m, 900.0_N)}}};
}
/// Relative luminance and contrast of two colours, WCAG 2.1, "relative luminance" and "contrast ratio".
double luminance(const std::string& colour) {
  double out = 0;
  const double weights[] = {0.2126, 0.7152, 0.0722};
  for (std::size_t i = 0; i < 3; ++i) {
    const double v = std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16) / 255.0;
    out += weights[i] * (v <= 0.03928 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4));
  }
  return out;
}
double contrast(const std::string& a, const std::string& b) {
  const double x = luminance(a), y = luminance(b);
  return (std::fmax(x, y) + 0.05) / (std::fmin(x, y) + 0.05);
}

}  // namespace

TEST_CASE("text stands out at least 4.5 to 1 on both pages") {
  CHECK(contrast("#000000", "#ffffff") == Approx(21.0));
  CHECK(contrast("#777777", "#ffffff") == Approx(4.48).epsilon(0.005));  // the well-known grey that just fails
  for (const show::Ink& i : show::inks) {
    CAPTURE(i.cls);
    CHECK(contrast(i.light, show::light_page) >= 4.5);
    CHECK(contrast(i.light, "#ffffff") >= 4.5);  // in print
    CHECK(contrast(i.dark, show::dark_page) >= 4.5);
  }
  // shades of utilisation are no text, but each is seen on its page and told from the one before it
  const char *before_light = show::light_page, *before_dark = show::dark_page;
  for (const show::Ink& i : show::shades) {
    CAPTURE(i.cls);
    CHECK(contrast(i.light, before_light) >= 1.35);
    CHECK(contrast(i.dark, before_dark) >= 1.35);
    CHECK(contrast(i.light, show::light_page) >= 1.8);
    CHECK(contrast(i.dark, show::dark_page) >= 1.8);
    before_light = i.light;
    before_dark = i.dark;
  }
  // and every text takes one of these inks
  const Analysis a{box()};
  ::Random chance(3);
  for (const auto& [kind, picture] : pictures::all_of(a, chance, {})) {
    const svg::Element s = svg::parsed(picture);
    for (const svg::Element* t : s.all([](const svg::Element& e) { return e.name == "text"; })) {
      CAPTURE(t->text);
      CHECK(std::any_of(show::inks.begin(), show::inks.end(), [&](const show::Ink& i) { return t->is(i.cls); }));
    }
  }
}

TEST_CASE("pictures of random girders are well-formed, name themselves, and refer to nothing outside") {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    girders::Random description(seed);
    const Analysis a(girders::DescribedGirder(description, 40).alone());
    ::Random chance(seed);
    for (const auto& named : pictures::all_of(a, chance, {.width = chance.in(240, 2000)})) {
      CAPTURE(named.first);
      const std::string& picture = named.second;
      const svg::Element s = svg::parsed(picture);
      CHECK(s.name == "svg");
      CHECK(s.at("role") == "img");
      CHECK(!s.children.at(0).text.empty());
      CHECK(!s.children.at(1).text.empty());
      CHECK(s.at("aria-labelledby") == s.children[0].at("id") + " " + s.children[1].at("id"));
      CHECK(picture.find("url(") == std::string::npos);
      CHECK(picture.find("nan") == std::string::npos);
      CHECK(picture.find("inf") == std::string::npos);
    }
  }
}

TEST_CASE("where nothing is left of a resistance no number is printed, and it counts as a failure, not as out of scope") {
  const Analysis a{box()};  // torques beyond the bars' own leave nothing for shear (EN 1999-1-1 6.2.7)
  const Cases cases = a.solve(std::vector<LoadCase>{
      {"far too much", Nature::permanent, {point_load(ChordOf::top_left, 3.2, {0, 1e9, 0})}}});
  const verify::Proof proof = verify::by_material(cases, en1990::ultimate());
  CHECK(!proof.passes());
  CHECK(proof.outside_scope().empty());
  CHECK(proof.worst().utilisation == std::numeric_limits<double>::infinity());
  CHECK(proof.verdict() == "fails, nothing resists at " + verify::place(proof.worst()));
  CHECK(verify::text(proof.worst()).ends_with(" = no resistance"));
  std::ostringstream printed;
  printed << proof;
  CHECK(printed.str().find("inf") == std::string::npos);
  CHECK(printed.str().find("no resistance  ") != std::string::npos);
  const std::string picture = show::utilisation_map(a.model(), proof);
  CHECK(picture.find(">none left<") != std::string::npos);
  CHECK(picture.find("no resistance left: ") != std::string::npos);
  CHECK(picture.find("outside the scope") == std::string::npos);
  CHECK(picture.find("inf") == std::string::npos);
}

TEST_CASE("names of a girder's own are text and nothing else") {
  Girder g = box().girder();
  g.chords[0].name = "<script>\"&'";
  g.faces[0].name = "floor & <b>";
  const Analysis a(g);
  const Response r = a.solve({self_weight()});
  const svg::Element s = svg::parsed(show::axial_forces(r));
  bool found = false;
  for (const svg::Element* t : s.all([](const svg::Element& e) { return e.name == "text"; }))
    found = found || t->text.find("loor & <b> face") != std::string::npos;
  CHECK(found);
  CHECK(s.all([](const svg::Element& e) { return e.name == "script" || e.name == "b"; }).empty());
}

TEST_CASE("axial forces are as wide as they are large") {
  const Analysis a{box()};
  const Response r = a.solve({self_weight(), wind_on(Side::left, 400.0)});
  const svg::Element s = svg::parsed(show::axial_forces(r));
  std::size_t n = 0;
  for (const svg::Element* strip : s.of_class("bw-axial"))
    for (const svg::Element& bar : strip->children) {
      const double N = r.member(std::stoul(bar.at("data-member"))).forces(fraction{0.5}).N;
      const auto p = bar.children.at(0).points();
      const double width = std::hypot(p[3].x - p[0].x, p[3].y - p[0].y);
      CHECK(std::abs(width - std::stod(strip->at("data-px-per-N")) * std::abs(N)) < 1.5 * px_digits);
      CHECK(bar.children[0].is(N > 0 ? "bw-pull-area" : "bw-push"));
      ++n;
    }
  CHECK(n > 60);
}

TEST_CASE("the deformed girder lies where the response says") {
  double worst = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    girders::Random description(seed);
    const Analysis a(girders::DescribedGirder(description, 20).alone());
    ::Random chance(seed);
    const Response r = a.solve(pictures::two_cases(a.girder(), chance)[1]);
    const show::Look look{.width = chance.in(300, 1200)};
    const svg::Element s = svg::parsed(show::deformed_shape(r, look));
    for (const svg::Element* view : s.of_class("bw-deformed")) {
      // where the page has the girder: two points of it that are known, from the lines at rest of the same view
      show::Picture sketch(look, "", "");
      const bool elevation = view->at("data-seen") == "elevation";
      const show::FlatView flat(sketch, a.model(), elevation ? show::Seen::from_right : show::Seen::from_above, 0, 0);
      const double scale = std::stod(view->at("data-px-per-m"));
      double shift = 0;
      bool known = false;
      for (const svg::Element& bar : view->children) {
        const MemberView v = r.member(std::stoul(bar.at("data-member")));
        const auto line = bar.children.at(0).points();
        const Vec3<> u0 = v.displacement(fraction{0});
        const show::Spot start = flat.spot(v.axes().start);
        const double up = elevation ? u0.z : u0.y;
        if (!known) shift = line.front().y - (start.y - scale * up);  // how far down the page the view begins
        known = true;
        const double t = chance.in(0, 1);
        const Vec3<> u = v.displacement(fraction{t}), p = v.axes().start + t * (v.axes().end - v.axes().start);
        const show::Spot at = flat.spot(p);
        const svg::Point expected{at.x + scale * u.x, at.y + shift - scale * (elevation ? u.z : u.y)};
        worst = std::fmax(worst, svg::distance_to(line, expected));
      }
      CHECK(known);
    }
  }
  CHECK(worst <
        0.025);  // roundings of the line and of the one place that the view was found by, and 0.004 px of the curve
}

TEST_CASE("a cross-section is seen from behind, moved as the response says and never off its place") {
  const auto side = braced(alternating, brace_bar(), cross_bar());
  const TriangularGirder triangular{.bays = 8,
                                    .bay_length = 0.5_m,
                                    .width = 0.6_m,
                                    .depth = 0.4_m,
                                    .chord = chord_bar(),
                                    .faces = {.base = open(cross_bar()), .left = side, .right = side},
                                    .supports = simply_supported()};
  const LadderGirder ladder{.bays = 10,
                            .bay_length = 0.5_m,
                            .depth = 0.5_m,
                            .chord = chord_bar(),
                            .web = open(cross_bar()),
                            .supports = simply_supported()};
  for (const Girder& g : {box().girder(), triangular.girder(), ladder.girder()}) {
    const Analysis a(g);
    const FaceRef sheet = g.faces.size() == 1 ? FaceRef(std::size_t{0}) : FaceRef(Side::left);
    const Response r = a.solve({self_weight(), wind_on(sheet, 300.0), point_load(std::size_t{0}, 2.2, 500.0)});
    const svg::Element s = svg::parsed(show::deformed_shape(r));
    const svg::Element& section = *s.of_class("bw-section").at(0);
    const double scale = std::stod(section.at("data-px-per-m"));
    const auto station = static_cast<std::size_t>(std::stoul(section.at("data-station")));
    Vec3<> mean{};
    for (std::size_t c = 0; c < g.chords.size(); ++c)
      mean += (1.0 / static_cast<double>(g.chords.size())) * r.answer().displacement(a.model().chord_node(station, c));
    // dashed: the faces at rest, which give the place and the scale of the cross-section; left is left, up is up
    const svg::Element& rest = section.children.at(0);
    const Vec3<> first = g.joint(station, g.faces[0].first_chord), second = g.joint(station, g.faces[0].second_chord);
    const double drawn = std::hypot(rest.number("x2") - rest.number("x1"), rest.number("y2") - rest.number("y1"));
    const double k = drawn / length(second - first);
    double most = 0;
    std::size_t bars = 0;
    for (const svg::Element* bar : section.with("data-member")) {
      const MemberView v = r.member(std::stoul(bar->at("data-member")));
      const auto line = bar->children.at(0).points();
      for (const double t : {0.0, 0.13, 0.5, 0.77, 1.0}) {
        const Vec3<> u = v.displacement(fraction{t}) - mean,
                     p = v.axes().start + t * (v.axes().end - v.axes().start) - first;
        const svg::Point at{rest.number("x1") - k * p.y - scale * u.y, rest.number("y1") - k * p.z - scale * u.z};
        CHECK(svg::distance_to(line, at) < 0.03);
        most = std::fmax(most, scale * std::hypot(u.y, u.z));
      }
      ++bars;
    }
    CHECK(bars >= g.faces.size());
    CHECK(most > 13);  // seen, and
    CHECK(most < 27);  // within the 34 px kept free around it
  }
}

TEST_CASE("open panels lean as their angles change") {
  // A ladder clamped at its left end, pushed down at its right one: the second (upper) chord goes backwards against the
  // first, so that the angle at the first chord's left end becomes larger and the panel leans to the left.
  const LadderGirder l{.bays = 4,
                       .bay_length = 0.5_m,
                       .depth = 0.5_m,
                       .chord = chord_bar(),
                       .web = open(cross_bar()),
                       .supports = cantilever()};
  const Analysis a{l};
  const Response r = a.solve({point_load(ChordOf::bottom, 2.0_m, 300.0), point_load(ChordOf::top, 2.0_m, 300.0)});
  const svg::Element s = svg::parsed(show::deformed_shape(r));
  const svg::Element& face = *s.of_class("bw-angles").at(0);
  const PanelTable t = panel_table(r, std::size_t{0});
  const double scale = std::stod(face.at("data-lean-per-rad"));
  std::size_t panels = 0;
  double most = 0;
  for (const svg::Element* panel : face.with("data-panel")) {
    const auto p = panel->children.at(0).points();
    const double lean = (p[0].x - p[3].x) / (p[3].y - p[0].y);
    const double change = t.panels[std::stoul(panel->at("data-panel"))].angle_change;
    CHECK(std::abs(lean - scale * change) < 0.001);
    CHECK(lean < 0);
    CHECK(std::abs(lean - (p[1].x - p[2].x) / (p[2].y - p[1].y)) < 0.001);
    most = std::fmax(most, std::abs(lean));
    ++panels;
  }
  CHECK(panels == 4);
  CHECK(most == Approx(0.5).epsilon(0.002));  // the greatest leans 1 in 2
}

TEST_CASE("loads stand where they act and point as they do; stations are numbered at their places") {
  const Analysis a{box()};
  const LoadCase all{"all",
                     Nature::imposed,
                     {line_load({ChordOf::bottom_left}, 90.0, {1.3, 4.6}),
                      point_load(ChordOf::top_left, 2.45_m, Vec3<>{0, 700, 0}), wind_on(Side::left, 300.0)}};
  const svg::Element s = svg::parsed(show::load_drawing(a, all));
  show::Picture sketch({}, "", "");
  const show::FlatView flat(sketch, a.model(), show::Seen::from_right, 0, 0);
  const auto x = [&](double along) { return flat.spot({along, 0, 0}).x; };
  const auto heads = [&](std::size_t view, const std::string& action) {
    std::vector<std::vector<svg::Point>> out;
    std::size_t n = 0;
    for (const svg::Element* g : s.of_class("bw-action"))
      if (g->at("data-action") == action && n++ == view)
        for (const svg::Element& head : g->children)
          if (head.name == "polygon") out.push_back(head.points());
    return out;
  };
  const auto line = heads(0, "0"), point = heads(0, "1"), wind = heads(0, "2");
  REQUIRE(line.size() > 3);
  CHECK(std::abs(line.front()[0].x - x(1.3)) < px_digits);
  CHECK(std::abs(line.back()[0].x - x(4.6)) < px_digits);
  for (const auto& head : line) CHECK(head[0].y > head[1].y);  // down
  REQUIRE(point.size() == 1);
  CHECK(std::abs(point[0][0].x - x(2.45)) < px_digits);
  CHECK(point[0][0].y < point[0][1].y);  // to the left: up the plan
  REQUIRE(wind.size() > 3);
  CHECK(std::abs(wind.front()[0].x - x(0.0)) < px_digits);
  CHECK(std::abs(wind.back()[0].x - x(6.0)) < px_digits);
  for (const auto& head : wind) CHECK(head[0].y > head[1].y);  // comes from the left: down the plan

  const svg::Element drawing = svg::parsed(show::girder_drawing(a));
  std::vector<std::size_t> seen(13, 0);
  for (const svg::Element* t : drawing.all([](const svg::Element& e) { return e.name == "text"; }))
    if (t->text.find_first_not_of("0123456789") == std::string::npos) {
      const auto i = static_cast<std::size_t>(std::stoul(t->text)) - 1;
      REQUIRE(i < seen.size());
      CHECK(std::abs(t->number("x") - x(0.5 * static_cast<double>(i))) < px_digits);
      ++seen[i];
    }
  for (const std::size_t n : seen) CHECK(n == 3);  // elevation, plan, faces
}

TEST_CASE("utilisations are the proof's, and bars outside the scope never look as if they passed") {
  const Analysis a{box()};
  const Cases cases = a.solve(cases_of());
  const verify::Proof proof = verify::by_material(cases, en1990::ultimate());
  std::vector<double> most(a.model().frame.members.size(), 0.0);
  for (const verify::Row& r : proof.rows()) most[r.member] = std::fmax(most[r.member], r.utilisation);
  const svg::Element s = svg::parsed(show::utilisation_map(a.model(), proof));
  const auto bars = s.with("data-utilisation");
  CHECK(bars.size() > 100);
  for (const svg::Element* b : bars) {
    const double u = std::stod(b->at("data-utilisation"));
    CHECK(u == Approx(most[std::stoul(b->at("data-member"))]).epsilon(1e-8));
    const int step = u <= 0.25 ? 1 : u <= 0.5 ? 2 : u <= 0.75 ? 3 : 4;
    if (u <= 1.0) CHECK(b->children.at(0).is("bw-use-" + std::to_string(step)));
  }
  // steel only: every aluminium bar is outside the scope
  const svg::Element out = svg::parsed(show::utilisation_map(a.model(), verify::en1993(cases, en1990::ultimate())));
  for (const svg::Element* b : out.with("data-utilisation")) {
    CHECK(b->children.at(0).is("bw-dash"));
    CHECK(b->children.at(0).is("bw-load"));
    for (int step = 1; step <= 5; ++step) CHECK(!b->children.at(0).is("bw-use-" + std::to_string(step)));
  }
}

TEST_CASE("shear and energy are shared out on the page as in the tables") {
  const Analysis a{box()};
  const Response r = a.solve({self_weight(), wind_on(Side::left, 400.0)});
  const svg::Element shear = svg::parsed(show::shear_shares(r));
  for (const svg::Element* face : shear.of_class("bw-shares")) {
    const PanelTable t = panel_table(r, face->at("data-face"));
    const double scale = std::stod(face->at("data-px-per-N"));
    for (const svg::Element& panel : face->children) {
      const PanelRow& row = t.panels[std::stoul(panel.at("data-panel"))];
      double diagonals = 0, bending = 0;
      for (const svg::Element& part : panel.children)
        if (part.name == "rect") (part.is("bw-bend") ? bending : diagonals) += part.number("height");
      CHECK(std::abs(diagonals - scale * std::abs(row.diagonals_shear)) < 0.051);  // parts below 0.05 px are left out
      CHECK(std::abs(bending - scale * std::abs(row.shear - row.diagonals_shear)) < 0.051);
    }
  }
  const svg::Element energy = svg::parsed(show::energy_picture(r));
  const EnergyShares shares = energy_shares(r);
  const auto parts = energy.of_class("bw-energy");
  REQUIRE(parts.size() == shares.rows.size());
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Energy& e = shares.rows[i].energy;
    const double scale = std::stod(parts[i]->at("data-px-per-J"));
    const auto drawn = [&](const char* cls) {
      for (const svg::Element& piece : parts[i]->children)
        if (piece.name == "rect" && piece.is(cls)) return piece.number("width");
      return 0.0;
    };
    CHECK(std::abs(drawn("bw-pull-area") - scale * e.axial) < 0.051);  // parts below 0.05 px are left out
    CHECK(std::abs(drawn("bw-bend") - scale * e.bending) < 0.051);
    CHECK(std::abs(drawn("bw-push") - scale * e.shear) < 0.051);
    CHECK(std::abs(drawn("bw-load") - scale * e.torsion) < 0.051);
  }
}

TEST_CASE("reactions reach from their least to their greatest value, and a line that would push goes slack") {
  const Analysis a{box()};
  // 4 kN upwards at the overhang's end lifts the other hoists
  std::vector<LoadCase> described = cases_of();
  described.push_back({"uplift", Nature::imposed, {point_load(ChordOf::top_left, 6.0_m, -4.0_kN)}});
  const Cases cases = a.solve(described);
  const auto all = combinations(en1990::ultimate(), cases.kinds());
  const svg::Element s = svg::parsed(show::reactions(cases, all));
  const auto bars = s.of_class("bw-reaction");
  std::size_t slack = 0;
  double zero = 0;
  for (const svg::Element* b : bars) {
    const auto support = std::stoul(b->at("data-support")), motion = std::stoul(b->at("data-motion"));
    double least = 1e300, greatest = -1e300;
    for (const Combination& c : all) {
      const Response r = cases.combine(c);
      double v = 0;
      for (const auto& reaction : r.answer().reactions)
        if (reaction.node == a.model().frame.supports[support].node) v += reaction.value[motion];
      least = std::fmin(least, v);
      greatest = std::fmax(greatest, v);
    }
    const double scale = std::stod(b->at("data-px-per-unit"));
    const svg::Element& bar = b->children.at(0);
    if (scale * (greatest - least) > 2)
      CHECK(std::abs(bar.number("width") - scale * (greatest - least)) < 2 * px_digits);
    if (zero == 0) zero = bar.number("x") - scale * least;
    CHECK(std::abs(bar.number("x") - zero - scale * least) < 3 * px_digits);
    slack += bar.is("bw-dash") ? 1U : 0U;
    if (motion == 2) CHECK(bar.is("bw-dash") == (least < 0));
  }
  CHECK(slack > 0);
  CHECK(slack < bars.size());
}

TEST_CASE("a slack hoist is seen although another hangs before it; what holds its joint sideways stays as it is") {
  // 2 kN up where one of the two hoists of a station hangs: that one alone would push. Seen from the right the two lie
  // on each other, the left one behind.
  for (const ChordOf lifted : {ChordOf::top_left, ChordOf::top_right}) {
    const Analysis a{box()};
    const Cases cases =
        a.solve(std::vector<LoadCase>{{"self-weight", Nature::permanent, {self_weight()}},
                                      {"uplift", Nature::imposed, {point_load(lifted, 1.0_m, -2.0_kN)}}});
    const auto all = combinations(en1990::ultimate(), cases.kinds());
    std::size_t gone = 0;
    for (const show::HeldReaction& r : show::held_reactions(cases, all)) gone += r.goes_slack() ? 1U : 0U;
    REQUIRE(gone == 1);
    const svg::Element s = svg::parsed(show::reactions(cases, all));
    const svg::Element& supports = *s.of_class("bw-supports").at(0);
    std::size_t slack_rings = 0, rings = 0;
    for (const svg::Element& e : supports.children)
      if (e.name == "circle") {
        ++rings;
        slack_rings += e.is("bw-dash") ? 1U : 0U;
      }
    CHECK(rings == 2);
    CHECK(slack_rings == 1);
    for (const svg::Element& e : supports.children)
      if (e.name == "polygon") CHECK(e.is("bw-hold"));  // triangles: what holds along x
  }
}
