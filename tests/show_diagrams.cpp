// SPDX-License-Identifier: MIT
// Diagrams along bars: sides known by hand, and coordinates read back against the response at random places.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
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

/// The areas of a member's diagram on the first strip that shows it.
std::vector<svg::Point> outline(const svg::Element& picture, std::size_t member) {
  for (const svg::Element* g : picture.with("data-member")) {
    if (g->at("data-member") != std::to_string(member)) continue;
    std::vector<svg::Point> out;
    for (const svg::Element& area : g->children)
      if (area.name == "polygon")
        for (const svg::Point& p : area.points()) out.push_back(p);
    return out;
  }
  return {};
}
double scale_of(const svg::Element& picture) {
  return std::stod(picture.with("data-px-per-unit").at(0)->at("data-px-per-unit"));
}
double lowest(const std::vector<svg::Point>& line) {  // on the page: greatest y
  double y = -1e9;
  for (const svg::Point& p : line) y = std::fmax(y, p.y);
  return y;
}
double highest(const std::vector<svg::Point>& line) {
  double y = 1e9;
  for (const svg::Point& p : line) y = std::fmin(y, p.y);
  return y;
}

/// One braced bay between two supports: the chords are beams of their own between pinned posts.
LadderGirder one_bay() {
  LadderGirder g{.bays = 1,
                 .bay_length = 2.0,
                 .depth = 0.5,
                 .chord = chord_bar(),
                 .web = braced(single_direction, brace_bar(), cross_bar(), pinned_joint()),
                 .supports = simply_supported()};
  for (const std::size_t c : {0U, 1U}) g.supports = g.supports.with(hold(c, 0.0).fix({Motion::rx}));
  return g;
}

/// Clamped at its left end, an open panel long.
LadderGirder portal() {
  return {.bays = 1,
          .bay_length = 1.0,
          .depth = 0.5,
          .chord = chord_bar(),
          .web = open(cross_bar()),
          .supports = cantilever()};
}

}  // namespace

TEST_CASE("a simple beam has its tension below, and the left half of its shear above") {
  // w L^2 / 8 at mid-span, w L / 2 at the ends; any book of statics
  const double w = 300.0, L = 2.0;
  const Analysis a{one_bay()};
  const Response r = a.solve({line_load({ChordOf::bottom}, w)});
  const std::size_t beam = a.model().chord_member(0, 0);

  const svg::Element moments = svg::parsed(show::bending_moments(r, in_plane));
  const std::vector<svg::Point> m = outline(moments, beam);
  REQUIRE(m.size() > 4);
  const double axis = m.front().y;
  CHECK(m.back().y == Approx(axis));
  CHECK(highest(m) >= axis - 0.01);  // nowhere above the beam
  CHECK(lowest(m) - axis == Approx(scale_of(moments) * w * L * L / 8).epsilon(1e-9).scale(1e4));
  // the parabola at a quarter: three quarters of the greatest
  const double quarter = 0.75 * m.front().x + 0.25 * m.back().x;
  CHECK(svg::distance_to(m, {quarter, axis + scale_of(moments) * 0.75 * w * L * L / 8}) < 0.012);

  const svg::Element shears = svg::parsed(show::shear_forces(r, in_plane));
  const std::vector<svg::Point> v = outline(shears, beam);
  const double half = scale_of(shears) * w * L / 2;
  CHECK(svg::distance_to(v, {v.front().x, v.front().y - half}) < 0.012);  // left end: above
  CHECK(svg::distance_to(v, {v.back().x, v.back().y + half}) < 0.012);    // right end: below
  CHECK(svg::distance_to(v, {0.5 * (v.front().x + v.back().x), v.front().y}) < 0.012);

  // a load upwards turns both
  const std::vector<svg::Point> up =
      outline(svg::parsed(show::bending_moments(a.solve({line_load({ChordOf::bottom}, -w)}), in_plane)), beam);
  CHECK(lowest(up) <= axis + 0.01);
  CHECK(highest(up) < axis - 5.0);
}

TEST_CASE("the four corners of a portal panel have their tension where hand calculation has it") {
  // A frame of one open panel, clamped on the left, pushed down at its right end: each chord is a cantilever with a
  // stiff end. At the clamp both chords have their tension above. At the right, past the point of contraflexure, below;
  // there the post takes the same moments: tension stays inside at the upper corner, outside at the lower one.
  const Analysis a{portal()};
  const Response r = a.solve({point_load(ChordOf::bottom, 1.0, 500.0), point_load(ChordOf::top, 1.0, 500.0)});
  const svg::Element picture = svg::parsed(show::bending_moments(r, in_plane));
  for (const std::size_t chord : {0U, 1U}) {
    const std::vector<svg::Point> m = outline(picture, a.model().chord_member(0, chord));
    REQUIRE(m.size() >= 4);
    const double axis = m.front().y;
    CHECK(m[1].y < axis - 3.0);             // left end: above
    CHECK(m[m.size() - 2].y > axis + 3.0);  // right end: below
  }
  const std::vector<svg::Point> post = outline(picture, a.model().faces[0].cross_members[1][0]);
  REQUIRE(post.size() >= 4);
  for (const svg::Point& p : post) {
    const double axis = post.front().x, middle = 0.5 * (post.front().y + post.back().y);
    if (p.y < middle - 1.0) CHECK(p.x <= axis + 0.01);  // upper half: inside, to the left
    if (p.y > middle + 1.0) CHECK(p.x >= axis - 0.01);  // lower half: outside
  }
  // at a corner of two bars both moments are one
  const std::vector<svg::Point> top = outline(picture, a.model().chord_member(0, 1));
  const bool post_starts_below = post.front().y > post.back().y;
  const svg::Point at_top = post_starts_below ? post[post.size() - 2] : post[1];
  CHECK(std::abs(at_top.x - post.front().x) ==
        Approx(std::abs(top[top.size() - 2].y - top.front().y)).epsilon(1e-3).scale(10));
}

TEST_CASE("out of plane the outside of a girder is above its bars") {
  // A ladder looks to its left (+y). Pushed to the left at mid-height of a cantilever's end, it bends about z with its
  // tension on the right, which is the inside; pushed to the right, on the outside.
  const Analysis a{portal()};
  for (const double push : {1.0, -1.0}) {
    const Response r = a.solve({point_load(ChordOf::bottom, 1.0, Vec3<>{0, 300 * push, 0}),
                                point_load(ChordOf::top, 1.0, Vec3<>{0, 300 * push, 0})});
    const svg::Element picture = svg::parsed(show::bending_moments(r, out_of_plane));
    const bool outside_left = a.model().faces[0].normals[0].y > 0;
    CHECK(outside_left);
    const std::vector<svg::Point> m = outline(picture, a.model().chord_member(0, 0));
    const double tip = m[1].y - m.front().y;  // at the clamp; down the page is inside
    CHECK((push > 0 ? tip > 5.0 : tip < -5.0));
  }
}

TEST_CASE("a face on which nothing could be seen is told of in words") {
  // Loaded down almost alike at both lower chords a box has its shear in its upright faces; the level ones have next to none.
  const auto side = braced(alternating, brace_bar(), cross_bar());
  const BoxGirder box{.bays = 8,
                      .bay_length = 0.5,
                      .width = 0.5,
                      .depth = 0.5,
                      .chord = chord_bar(),
                      .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
                      .supports = simply_supported()};
  const Analysis a{box};
  const Response r =
      a.solve({self_weight(), point_load(ChordOf::bottom_left, 1.5, 900.0), point_load(ChordOf::bottom_right, 1.5, 890.0)});
  const GirderModel& model = a.model();
  std::vector<double> greatest;  // shear of a bar without loads but its own weight is greatest at an end
  for (std::size_t f = 0; f < model.faces.size(); ++f) {
    std::vector<std::size_t> bars;
    for (std::size_t b = 0; b < 8; ++b)
      for (const std::size_t c : {a.girder().faces[f].first_chord, a.girder().faces[f].second_chord})
        bars.push_back(model.chord_member(b, c));
    for (const auto& at : model.faces[f].cross_members) bars.insert(bars.end(), at.begin(), at.end());
    for (const auto& panel : model.faces[f].panels) bars.insert(bars.end(), panel.diagonals.begin(), panel.diagonals.end());
    greatest.push_back(0.0);
    for (const std::size_t m : bars)
      for (const double t : {0.0, 1.0}) {
        const MemberView v = r.member(m);
        const CutForces cut = v.forces(fraction{t});
        const Vec3<> in_face = cross(v.axes().x, model.faces[f].normals[0]);
        greatest[f] = std::fmax(greatest[f], std::abs(dot(v.axes().to_global({0, cut.Vy, cut.Vz}), in_face)));
      }
  }
  const double most = *std::max_element(greatest.begin(), greatest.end());
  for (const double width : {360.0, 1600.0}) {
    const svg::Element picture = svg::parsed(show::shear_forces(r, in_plane, {.width = width}));
    std::string all_words;
    for (const svg::Element* t : picture.all([](const svg::Element& e) { return e.name == "text"; }))
      all_words += t->text + ' ';
    std::size_t drawn = 0;
    for (std::size_t f = 0; f < greatest.size(); ++f) {
      const std::string name = a.girder().faces[f].name;
      bool has_strip = false;
      for (const svg::Element* strip : picture.of_class("bw-diagram"))
        has_strip = has_strip || strip->at("data-face") == name;
      CHECK(has_strip == (greatest[f] >= most / 8));
      drawn += has_strip ? 1U : 0U;
      const std::string told = show::capital(name) + " face: greatest shear " + show::force_words(greatest[f]) + ", not drawn";
      CHECK((all_words.find(told) != std::string::npos) == !has_strip);
    }
    CHECK(drawn >= 2);
    CHECK(drawn < greatest.size());
  }
  // a ladder that nothing twists
  const Analysis flat{portal()};
  const std::string nothing = show::torsion(flat.solve({point_load(ChordOf::top, 1.0, 500.0)}));
  CHECK(nothing.find(">Web face: no torsion<") != std::string::npos);
  CHECK(nothing.find("There is no torsion") != std::string::npos);
}

namespace {

enum class Drawn : std::uint8_t { moment_in, moment_out, shear_in, shear_out, torsion, panel };
constexpr const char* drawn_names[] = {"moment in plane",    "moment out of plane", "shear in plane",
                                       "shear out of plane", "torsion",             "panel"};

std::string picture_of(Drawn kind, const Response& r, std::size_t face, std::size_t panel, const show::Look& look) {
  switch (kind) {
    case Drawn::moment_in: return show::bending_moments(r, in_plane, look);
    case Drawn::moment_out: return show::bending_moments(r, out_of_plane, look);
    case Drawn::shear_in: return show::shear_forces(r, in_plane, look);
    case Drawn::shear_out: return show::shear_forces(r, out_of_plane, look);
    case Drawn::torsion: return show::torsion(r, look);
    case Drawn::panel: return show::panel_drawing(r, face, panel, look);
  }
  return {};
}

/// How far off its diagram a bar's value lies at a random place; 0 where it is too small to tell its side.
double miss_of(const svg::Element& bar, std::size_t face, Drawn kind, double scale, const Response& r, double t) {
  const GirderModel& model = r.model();
  const Girder& g = r.girder();
  const std::size_t member = std::stoul(bar.at("data-member"));
  const MemberView v = r.member(member);
  const Address& at = model.frame.members[member].address;
  // the normal of the face at this bar, from its chords alone
  const std::size_t bay = at.bay >= 0      ? static_cast<std::size_t>(at.bay)
                          : at.station > 0 ? static_cast<std::size_t>(at.station) - 1
                                           : 0;
  const auto& panels = model.faces[face].panels;
  std::size_t panel = 0;
  while (panel + 1 < panels.size() &&
         panels[panel].last_station <= (at.bay >= 0 ? bay : static_cast<std::size_t>(at.station)))
    ++panel;
  if (panels.empty()) return 0;
  const Vec3<> n = model.faces[face].normals[panel];

  std::vector<svg::Point> line;
  for (const svg::Element& area : bar.children)
    if (area.name == "polygon")
      for (const svg::Point& p : area.points()) line.push_back(p);
  const svg::Point start = line.front(), end = line.back();
  const svg::Point on{start.x + t * (end.x - start.x), start.y + t * (end.y - start.y)};
  const double l = std::hypot(end.x - start.x, end.y - start.y);
  const svg::Point square{-(end.y - start.y) / l, (end.x - start.x) / l};
  const bool upright = std::abs(end.x - start.x) < 0.05 * l;

  const CutForces f = v.forces(fraction{t});
  const Vec3<> moment = v.axes().to_global({0, f.My, f.Mz});
  // a cut's forces are what the part beyond does to the part before: what the left (upper) part does is their opposite
  // where it comes before
  const bool left_first = upright ? end.y > start.y : end.x > start.x;
  const Vec3<> force = (left_first ? -1.0 : 1.0) * v.axes().to_global({0, f.Vy, f.Vz});
  const Vec3<> in_face = cross(v.axes().x, n);
  const double value = kind == Drawn::moment_in || kind == Drawn::panel ? dot(moment, n)
                       : kind == Drawn::moment_out                      ? dot(moment, cross(n, v.axes().x))
                       : kind == Drawn::shear_in                        ? dot(force, in_face)
                       : kind == Drawn::shear_out                       ? dot(force, n)
                                                                        : f.T;
  // towards the stretched fibres, or where the shear acts, on the page: along the girder to the right, towards the upper
  // chord upwards; what is out of the plane stands above the bar or to its left
  const std::size_t station = panels[panel].first_station;
  const Vec3<> rise = g.joint(station, g.faces[face].second_chord) - g.joint(station, g.faces[face].first_chord);
  const Vec3<> run = g.joint(station + 1, g.faces[face].first_chord) - g.joint(station, g.faces[face].first_chord);
  const bool second_above = std::abs(rise.z) > 0.1 * length(rise) ? rise.z > 0 : rise.y > 0;
  svg::Point to{dot(in_face, unit(run)), (second_above ? -1.0 : 1.0) * dot(in_face, unit(rise))};
  if (kind == Drawn::moment_out || kind == Drawn::shear_out || kind == Drawn::torsion)
    to = upright ? svg::Point{-1, 0} : svg::Point{0, -1};
  if (scale * std::abs(value) < 0.1) return 0;
  const double off = to.x * square.x + to.y * square.y > 0 ? scale * value : -scale * value;
  return svg::distance_to(line, {on.x + off * square.x, on.y + off * square.y});
}

}  // namespace

TEST_CASE("diagrams are the response, at random places of random girders") {
  for (const Drawn kind : {Drawn::moment_in, Drawn::moment_out, Drawn::shear_in, Drawn::shear_out, Drawn::torsion,
                           Drawn::panel}) {
    CAPTURE(drawn_names[static_cast<std::size_t>(kind)]);
    std::size_t compared = 0;
    double worst = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      girders::Random description(seed);
      const Girder g = girders::DescribedGirder(description, 24).alone();
      const Analysis a(g);
      ::Random chance(seed);
      const Response r = a.solve(pictures::two_cases(g, chance)[1]);
      const show::Look look{.width = chance.in(300, 1700)};
      const std::size_t times = kind == Drawn::panel ? 8 : 1;
      for (std::size_t i = 0; i < times; ++i) {
        const std::size_t face = chance.below(g.faces.size());
        if (kind == Drawn::panel && g.faces[face].panels.empty()) continue;
        const std::size_t panel = kind == Drawn::panel ? chance.below(a.model().faces[face].panels.size()) : 0;
        const svg::Element picture = svg::parsed(picture_of(kind, r, face, panel, look));
        for (const svg::Element* strip : picture.of_class(kind == Drawn::panel ? "bw-panel" : "bw-diagram")) {
          const bool one = kind == Drawn::panel;
          const double scale = std::stod(strip->at(one ? "data-px-per-Nm" : "data-px-per-unit"));
          for (const svg::Element& bar : strip->children) {
            const double miss =
                miss_of(bar, one ? face : g.face(strip->at("data-face")), kind, scale, r, chance.in(0.02, 0.98));
            worst = std::fmax(worst, miss);
            compared += miss > 0 ? 1U : 0U;
          }
        }
      }
    }
    MESSAGE("compared ", compared, ", farthest ", worst, " px");
    CHECK(compared > 600);
    CHECK(worst < 0.0145);  // two roundings of 0.005 px in x and y each, and 0.004 px of the curve
  }
}
