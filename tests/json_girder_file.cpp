// SPDX-License-Identifier: MIT
// Girders and loads through JSON and back: the same frame, the same loads and the same file, bit for bit.
#include <doctest/doctest.h>

#include <algorithm>
#include <clocale>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/json.hpp>
#include <baywork/response.hpp>

#include "support/random_described_girders.hpp"
#include "support/same_bits.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using girders::Random;

std::string written(const GirderFile& file) {
  std::ostringstream out;
  write_json(out, file);
  return out.str();
}

/// Where a folder is named from outside, files are kept for another program to look at.
void keep(const std::string& name, const std::string& text) {
  if (const char* folder = std::getenv("BAYWORK_KEEP_JSON")) {
    std::filesystem::create_directories(folder);
    std::ofstream(std::filesystem::path(folder) / (name + ".json"), std::ios::binary) << text;
  }
}

bool has_own_panel(const Girder& g) {
  for (const GirderFace& f : g.faces)
    for (std::size_t i = 0; i < f.panels.given(); ++i)
      if (f.panels.panel(i).facts().layout == Layout::other) return true;
  return false;
}

Connector random_connector(Random& r) {
  const ConnectorFit fit{r.in(0, 0.002),
                         r.over_orders(1e6, 1e9),
                         rigid_stiffness,
                         r.over_orders(1e6, 1e9),
                         rigid_stiffness,
                         r.in(0, 1e5),
                         0.0};
  const auto plate = material::s355();
  switch (r.below(4)) {
    case 0:
      return PinCoupler{.pin = 16_mm,
                        .hole = 17_mm,
                        .blade = 12_mm,
                        .fork = 8_mm,
                        .gap = 1_mm,
                        .end = 22_mm,
                        .side = 20_mm,
                        .reach = r.in(0.03, 0.06),
                        .plate_material = plate,
                        .pin_material = material::s355(),
                        .welded = r.chance(0.5),
                        .replaceable = r.chance(0.5),
                        .throat = 4_mm,
                        .axis = r.chance(0.5) ? PinAxis::level : PinAxis::upright,
                        .fit = fit};
    case 1:
      return BoltedEndPlate{.plate = 12_mm,
                            .diameter = 130_mm,
                            .bolt_circle = 95_mm,
                            .bolts = 3 + r.below(4),
                            .bolt = metric_bolt(12_mm, static_cast<BoltClass>(r.below(7))),
                            .hole = 13_mm,
                            .eccentricity = r.in(0, 0.005),
                            .throat = 5_mm,
                            .plate_material = plate,
                            .fit = fit};
    case 2:
      return Spigot{.diameter = 48_mm,
                    .wall = r.chance(0.5) ? 0.0 : 5e-3,
                    .reach = 120_mm,
                    .pin = 10_mm,
                    .hole = 11_mm,
                    .pins = 1 + r.below(3),
                    .end = 30_mm,
                    .spigot_material = plate,
                    .pin_material = plate,
                    .welded = r.chance(0.5),
                    .fit = fit};
    default: return RigidSplice{};
  }
}

/// The girder of a seed, held further here and there, sometimes with splices and welds along its chords.
Girder random_described(std::uint64_t seed) {
  Random r(seed);
  Girder g = girders::DescribedGirder(r, 20).alone();
  if (r.chance(0.5)) {
    Hold h = hold(r.below(g.chords.size()), g.stations[r.below(g.stations.size())]);
    h = r.chance(0.5) ? h.fix({Motion::uy, Motion::rz}, r.in(-0.01, 0.01))
                      : h.spring(Motion::uz, r.over_orders(1e3, 1e7));
    if (r.chance(0.5)) h.chord = g.chords[r.below(g.chords.size())].name;
    g.supports = g.supports.with(h);
  }
  for (std::size_t s = 1; s < g.bays(); ++s)
    if (r.chance(0.1)) g.splices.push_back(s);
  g.connector = random_connector(r);
  for (Chord& c : g.chords)
    if (r.chance(0.2)) c.bar = c.bar.welded_along({1 + static_cast<int>(r.below(2)), r.in(0, 0.03)});
  for (Chord& c : g.chords)
    if (r.chance(0.2)) c.bar = c.bar.welded_across({{r.in(0, 1) * g.span(), r.in(0, 0.05)}, {r.in(0, 1), 0.0}});
  return g;
}

Action random_action(Random& r, const Girder& g) {
  const ChordRef chord =
      r.chance(0.5) ? ChordRef(r.below(g.chords.size())) : ChordRef(g.chords[r.below(g.chords.size())].name);
  const FaceRef face =
      r.chance(0.5) ? FaceRef(r.below(g.faces.size())) : FaceRef(g.faces[r.below(g.faces.size())].name);
  const double L = g.span();
  const Reach reach = r.chance(0.5) ? Reach{} : Reach{r.in(0, 0.4) * L, r.in(0.6, 1) * L};
  switch (r.below(9)) {
    case 0: return BasicSelfWeight<>{r.in(9, 10), r.in(1, 1.2), r.chance(0.5) ? Vec3<>{0, 0, -1} : r.vector(1)};
    case 1: return line_load({chord, std::size_t{0}}, r.vector(100), r.vector(100), reach);
    case 2: return point_load(chord, r.in(0, L), r.vector(1e3), r.vector(10));
    case 3: return cross_member_load(face, r.below(g.stations.size()), r.in(0, 1), r.vector(100), r.vector(1));
    case 4: return wind_on(face, r.in(-500, 500), static_cast<CarriedBy>(r.below(3)), reach);
    case 5: return BasicWindOnBars<>{r.in(0, 500), r.vector(1), r.in(0.5, 2), r.chance(0.5) ? 2.1 : r.in(1.5, 2.5)};
    case 6: return r.chance(0.5) ? warming(r.in(-30, 30)) : warming_of(chord, r.in(-30, 30));
    case 7: return warming_across(r.in(-9, 9), r.in(-9, 9));
    default:
      return settlement(chord, g.stations[r.below(g.stations.size())], static_cast<Motion>(r.below(6)),
                        r.in(-0.1, 0.1));
  }
}

}  // namespace

TEST_CASE("random girders: the same frame bit for bit, and the same bytes when written again") {
  std::size_t own = 0, read_back = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    GirderFile file{random_described(seed), {}};
    if (has_own_panel(file.girder)) {
      ++own;
      CHECK_THROWS_AS(written(file), BadDescription);
      continue;
    }
    Random r(seed + 1000);
    for (std::size_t c = 0; c < r.below(4); ++c) {
      LoadCase lc{"case " + std::to_string(c), static_cast<Nature>(r.below(7)), {}, r.chance(0.5) ? "wind" : ""};
      for (std::size_t a = 0; a < 1 + r.below(5); ++a) lc.actions.push_back(random_action(r, file.girder));
      file.load_cases.push_back(lc);
    }
    const std::string text = written(file);
    if (seed <= 60) keep("random_" + std::to_string(seed), text);
    const GirderFile again = read_girder_json(text);
    ++read_back;
    CHECK(written(again) == text);
    const GirderModel p = model_of(file.girder), q = model_of(again.girder);
    CHECK(same_bits::difference(p, q) == "");
    CHECK(words_of(again.girder.connector) == words_of(file.girder.connector));  // with every number of it
    REQUIRE(again.load_cases.size() == file.load_cases.size());
    for (std::size_t c = 0; c < file.load_cases.size(); ++c) {
      const LoadCase &l = file.load_cases[c], &m = again.load_cases[c];
      CHECK(l.name == m.name);
      CHECK(l.nature == m.nature);
      CHECK(l.alternative == m.alternative);
      REQUIRE(l.actions.size() == m.actions.size());
      for (std::size_t i = 0; i < l.actions.size(); ++i) CHECK(l.actions[i].index() == m.actions[i].index());
    }
  }
  MESSAGE(read_back << " girders read back, " << own << " with panels of another type refused");
  CHECK(read_back >= 150);
  CHECK(own >= 10);
}

TEST_CASE("actions of a file load a girder as those it was written from") {
  std::size_t actions = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    Random r(seed);
    BoxGirder box{.bays = 6, .bay_length = 0.5, .width = 0.4, .depth = 0.6, .chord = chord_bar()};
    const Face side = braced(alternating, brace_bar(), cross_bar());
    box.faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side};
    box.supports = cantilever();
    GirderFile file{box.girder(), {{"all", Nature::wind, {}, ""}}};
    for (int k = 0; k < 12; ++k) {
      const Action a = random_action(r, file.girder);
      // the ground moves where the girder is held: at its start
      if (const auto* s = std::get_if<BasicSettlement<>>(&a); s != nullptr && s->x > 0.0) continue;
      file.load_cases[0].actions.push_back(a);
    }
    const GirderFile again = read_girder_json(written(file));
    const Analysis p{file.girder}, q{again.girder};
    FrameLoads of_p, of_q;
    p.reduce(file.load_cases[0].actions, of_p);
    q.reduce(again.load_cases[0].actions, of_q);
    CHECK(!of_p.on_members.empty());
    CHECK(same_bits::difference(of_p, of_q) == "");
    actions += file.load_cases[0].actions.size();
  }
  CHECK(actions > 300);
}

TEST_CASE("every layout, either way round, and bars of every shape and material") {
  const auto steel = material::s355h(material::Product::hot_finished);
  const auto alloy = material::welded_by(material::en_aw_6082_t6(), material::Welding::tig);
  const Bar chord{RectangularHollow{80.0_mm, 60.0_mm, 4.0_mm, hot_finished_corners}, steel},
      round{SolidRound{20.0_mm}, steel}, flat{SolidRectangle{40.0_mm, 10.0_mm}, steel},
      beam{IShape{100.0_mm, 55.0_mm, 4.1_mm, 5.7_mm, 7.0_mm}, steel},
      channel{Channel{80.0_mm, 45.0_mm, 6.0_mm, 8.0_mm, 8.0_mm}, steel}, tube{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Joint soft{1e5, 2e4, true};
  const std::vector<AnyPanel> panels{braced(single_direction, round, tube, soft, 0.01),
                                     braced(single_direction_reversed, flat, tube),
                                     braced(mirrored_towards, round, beam, pinned_joint()),
                                     braced(mirrored_away, round, channel, rigid_joint(), -0.005),
                                     braced(alternating, tube),
                                     braced(alternating_reversed, round, tube),
                                     braced(crossed, round),
                                     braced(k_braced, round, tube),
                                     open(tube, semi_rigid_joint(1e4, 0.1)),
                                     AnyPanel{}};
  LadderGirder l{.bays = panels.size(),
                 .bay_length = 0.7,
                 .depth = 0.9,
                 .chord = chord,
                 .web = Face(panels),
                 .supports = cantilever()};
  l.axis.camber = 0.1;
  GirderFile file{l.girder(), {}};
  file.girder.chords[0].name =
      "unten \"links\"\\ \xC3\xBC\xE2\x82\xAC\xF0\x9F\x98\x80\n";  // UTF-8, marks and a line end
  const std::string text = written(file);
  keep("layouts", text);
  const GirderFile again = read_girder_json(text);
  CHECK(same_bits::difference(model_of(file.girder), model_of(again.girder)) == "");
  CHECK(again.girder.chords[0].name == file.girder.chords[0].name);
  CHECK(written(again) == text);
  const auto& first = again.girder.faces[0].panels.panel(0).facts();
  CHECK(first.layout == Layout::single_direction);
  CHECK(first.joint.to_chord_surface);
  CHECK(same_bits::same(first.cross.material, alloy));
  // bars that are alike are written once, and so are materials
  CHECK(std::count(text.begin(), text.end(), '\n') < 400);
  CHECK(text.find("round tube 48.3 x 4") == text.rfind("round tube 48.3 x 4"));
}

TEST_CASE("numbers at the edge of what a double is come back as they were") {
  const double all[] = {5e-324, 2.2250738585072014e-308, 1.7976931348623157e308, 0.1, 1.0 / 3.0,
                        -0.0,   123456789.12345679};
  for (const double v : all) {
    CAPTURE(v);
    LadderGirder l{.bays = 1,
                   .bay_length = 1,
                   .depth = 1,
                   .chord = chord_bar(),
                   .web = open(cross_bar()),
                   .supports = cantilever()};
    GirderFile file{l.girder(), {{"one", Nature::imposed, {point_load("top", v, {v, -v, v})}, ""}}};
    file.girder.supports = file.girder.supports.with(hold("top", 1.0).fix({Motion::ux}, v));
    const GirderFile again = read_girder_json(written(file));
    const auto& load = std::get<BasicChordPoint<>>(again.load_cases[0].actions[0]);
    CHECK(same_bits::same(load.x, v));
    CHECK(same_bits::same(load.force, Vec3<>{v, -v, v}));
    CHECK(same_bits::same(again.girder.supports.holds[0].motion[0].displacement, v));
  }
}

TEST_CASE("a decimal comma of the program's locale changes nothing") {
  const char* name = nullptr;
  for (const char* l : {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "fr_FR.utf8"})
    if (name == nullptr && std::setlocale(LC_NUMERIC, l) != nullptr) name = l;
  std::setlocale(LC_NUMERIC, "C");
  if (name == nullptr) {
    MESSAGE("no locale with a decimal comma is installed here");
    return;
  }
  std::uint64_t seed = 1;
  while (has_own_panel(random_described(seed))) ++seed;
  const GirderFile file{random_described(seed), {}};
  const std::string text = written(file);
  std::setlocale(LC_NUMERIC, name);
  const std::string there = written(file);
  const GirderFile again = read_girder_json(text);
  std::setlocale(LC_NUMERIC, "C");
  CHECK(there == text);
  CHECK(written(again) == text);
}

namespace {

/// A user's own panel that says it is crossed, with one diagonal left out.
struct HalfCrossed {
  Bar bar;
  std::vector<Piece> pieces(const PanelSite&) const { return {Piece{{0, 0}, {1, 1}, Role::diagonal, bar, {}, 0.0}}; }
  PanelFacts facts() const { return {Layout::crossed, bar, {}, {}, 0.0}; }
};

}  // namespace

TEST_CASE("what files cannot hold is refused, not changed") {
  LadderGirder l{
      .bays = 4, .bay_length = 1, .depth = 1, .chord = chord_bar(), .web = open(cross_bar()), .supports = cantilever()};
  l.web = Face().with_panel(0, 4, open(cross_bar())).with_panel(2, 4, girders::JoinedCross{brace_bar()});
  CHECK_THROWS_WITH_AS(
      written({l.girder(), {}}),
      "bay 3, web face: its panel is of a type of your own, which files do not know; open panels and the library's "
      "layouts of diagonals are accepted",
      BadDescription);
  l.web = Face(HalfCrossed{brace_bar()});
  CHECK_THROWS_WITH_AS(written({l.girder(), {}}), doctest::Contains("web face: its panel is of a type of your own"),
                       BadDescription);

  l.web = open(cross_bar());
  GirderFile file{l.girder(), {}};
  file.girder.chords[0].bar.strength.yield *= 2;
  CHECK_THROWS_WITH_AS(written(file), doctest::Contains("its strength is not that of its material"), BadDescription);
  for (const int lines : {-1, 1000}) {
    file = {l.girder(), {}};
    file.girder.chords[0].bar.along.lines = lines;
    CHECK_THROWS_WITH_AS(written(file),
                         doctest::Contains(("lines is " + std::to_string(lines) + "; 0 to 999 are accepted").c_str()),
                         BadDescription);
  }
  file = {l.girder(), {}};
  file.girder.chords[0].name = "\xFF";
  CHECK_THROWS_WITH_AS(written(file), doctest::Contains("not UTF-8"), BadDescription);
  file = {l.girder(), {}};
  file.girder.chords[1].bar.section.perimeter = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_WITH_AS(written(file), doctest::Contains("perimeter_m is nan"), BadDescription);
  file = {l.girder(), {{"one", Nature::wind, {wind_on("web", std::numeric_limits<double>::infinity())}, ""}}};
  CHECK_THROWS_WITH_AS(written(file), doctest::Contains("pressure_Pa is inf"), BadDescription);
  file = {l.girder(), {{"one", Nature::wind, {point_load("middle", 1.0, 5.0)}, ""}}};
  CHECK_THROWS_WITH_AS(written(file), doctest::Contains("there is no chord called middle"), BadDescription);
  file = {l.girder(), {}};
  file.girder.joints.pop_back();
  CHECK_THROWS_AS(written(file), BadDescription);
}
