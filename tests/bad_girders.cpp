// SPDX-License-Identifier: MIT
// Girders and loads that mean nothing or something impossible: each is refused in girder words, nothing half done.
#include <doctest/doctest.h>

#include <cstddef>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response.hpp>

namespace {

using namespace baywork;
using namespace baywork::literals;

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

Bar bar(double diameter = 60.3_mm, double wall = 5.0_mm) {
  return {RoundTube{diameter, wall}, material::en_aw_6082_t6()};
}

BoxGirder sound() {
  const Bar brace = bar(26.9_mm, 3.2_mm), cross = bar(48.3_mm, 4.0_mm);
  const Face side = braced(alternating, brace, cross);
  return {.bays = 6,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = bar(),
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .supports = simply_supported()};
}

/// The call throws an E whose message holds every fragment.
template <class E, class Call>
void refused(Call call, const std::vector<std::string>& fragments) {
  std::string message;
  try {
    call();
  } catch (const E& e) {
    message = e.what();
  } catch (const std::exception& e) {
    FAIL_CHECK("another kind of error: " << e.what());
    return;
  }
  INFO("message: " << message);
  CHECK(!message.empty());
  CHECK(message.find("; ") != std::string::npos);  // says what would be accepted
  for (const std::string& f : fragments) {
    INFO("wanted: " << f);
    CHECK(message.find(f) != std::string::npos);
  }
}

/// The sound box, changed, is refused before any frame is made.
template <class Change>
void bad(Change change, const std::vector<std::string>& fragments) {
  BoxGirder g = sound();
  change(g);
  refused<BadDescription>([&] { const Analysis a{g}; }, fragments);
}

/// The sound box refuses this action.
void bad_load(const Action& action, const std::vector<std::string>& fragments) {
  static const Analysis analysis{sound()};
  refused<BadDescription>([&] { (void)analysis.solve({action}); }, fragments);
}

struct Stub {
  std::vector<Piece> list;
  std::vector<Piece> pieces(const PanelSite&) const { return list; }
};

}  // namespace

TEST_CASE("the sound girder is accepted") {
  const Analysis analysis{sound()};
  CHECK(analysis.solve({self_weight()}).max_deflection() > 0);
}

TEST_CASE("bays, width and depth") {
  bad([](BoxGirder& g) { g.bays = 0; }, {"girder", "no bays"});
  for (const double v : {not_a_number, infinity, 0.0, -0.5}) {
    bad([v](BoxGirder& g) { g.bay_length = v; }, {"girder", "bay length is"});
    bad([v](BoxGirder& g) { g.width = v; }, {"girder", "width is"});
    bad([v](BoxGirder& g) { g.depth = v; }, {"girder", "depth is"});
    bad([v](BoxGirder& g) { g.end_width = v; }, {"girder, far end", "width is"});
    bad([v](BoxGirder& g) { g.end_depth = v; }, {"girder, far end", "depth is"});
    bad([v](BoxGirder& g) { g.bays = 0, g.bay_lengths = {0.5, v, 0.5}; }, {"bay 2", "bay length is"});
  }
  bad(
      [](BoxGirder& g) {
        g.bay_lengths = {0.5, 0.5};
      },
      {"6 bays are given, but 2 bay lengths", "one length for each bay"});
  bad([](BoxGirder& g) { g.bays = std::size_t{1} << 40; }, {"bays", "million"});
}

TEST_CASE("axis") {
  bad([](BoxGirder& g) { g.axis.camber = not_a_number; }, {"axis", "camber is"});
  bad([](BoxGirder& g) { g.axis.plan_radius = infinity; }, {"axis", "plan radius is"});
  bad([](BoxGirder& g) { g.axis.plan_radius = 0.2; }, {"axis", "plan radius is 0.2", "beyond half the width"});
  bad([](BoxGirder& g) { g.axis.plan_radius = -0.4; }, {"axis", "less than a full circle"});
}

TEST_CASE("bars that are missing or impossible") {
  bad([](BoxGirder& g) { g.chord = {}; }, {"bottom left chord", "no bar is given"});
  bad([](BoxGirder& g) { g.faces.top = open(Bar{}); }, {"top face", "cross member", "no bar is given"});
  bad([](BoxGirder& g) { g.faces.left = braced(alternating, Bar{}); },
      {"bay 1, left face, diagonal", "no bar is given"});
  bad([](BoxGirder& g) { g.faces.left = braced(k_braced, bar(26.9_mm, 3.2_mm)); },
      {"no posts for K diagonals", "a bar for the posts"});
  bad([](BoxGirder& g) { g.faces.left = braced(single_direction, bar(26.9_mm, 3.2_mm)); },
      {"no posts for single-direction diagonals"});
  bad([](BoxGirder& g) { g.faces.left = braced(mirrored_away, bar(26.9_mm, 3.2_mm)); },
      {"no posts for diagonals rising towards mid-span"});
  bad([](BoxGirder& g) { g.diaphragms.ends = true; }, {"diaphragms", "no bar is given"});
  refused<BadDescription>([] { bar(60.3_mm, 0.0); }, {"wall", "is 0"});
  refused<BadDescription>([] { bar(60.3_mm, not_a_number); }, {"wall", "is nan"});
  refused<BadDescription>([] { bar(-60.3_mm, 5.0_mm); }, {"diameter", "is -"});
  refused<BadDescription>([] { bar(60.3_mm, 31.0_mm); }, {"wall"});
  material::Material m = material::en_aw_6082_t6();
  m.E = infinity;
  refused<BadDescription>([&m] { Bar{RoundTube{60.3_mm, 5.0_mm}, m}; }, {"material", "modulus of elasticity is inf"});
  m = material::en_aw_6082_t6();
  m.density = -1;
  refused<BadDescription>([&m] { Bar{RoundTube{60.3_mm, 5.0_mm}, m}; }, {"material", "density is -1"});
}

TEST_CASE("joints, gaps and points of panels") {
  const Bar b = bar(26.9_mm, 3.2_mm);
  bad([&](BoxGirder& g) { g.faces.top = open(b, semi_rigid_joint(-1.0, 1e4)); },
      {"station 1, top face, cross member", "end stiffness", "is -1"});
  bad([&](BoxGirder& g) { g.faces.top = open(b, semi_rigid_joint(1e4, not_a_number)); },
      {"top face, cross member", "end stiffness", "nan"});
  bad([&](BoxGirder& g) { g.faces.left = braced(alternating, b, b, Joint{}, not_a_number); },
      {"bay 1, left face, diagonal", "gap at the chord is nan"});
  bad(
      [&](BoxGirder& g) {
        g.depth = g.width = 0.05, g.faces.top = open(b, Joint{1e4, 1e4, true});
      },
      {"top face", "surfaces touch", "deeper"});
  const auto own = [&](const PanelPoint& from, const PanelPoint& to) {
    return AnyPanel(Stub{{{from, to, Role::user, b, {}, 0.0}}});
  };
  bad(
      [&](BoxGirder& g) {
        g.faces.top = Face{{own({0, 0}, {1.2, 1})}};
      },
      {"bay 1, top face", "(1.2, 1)", "from 0 to 1"});
  bad(
      [&](BoxGirder& g) {
        g.faces.top = Face{{own({0, 0}, {not_a_number, 1})}};
      },
      {"bay 1, top face", "nan", "from 0 to 1"});
  bad(
      [&](BoxGirder& g) {
        g.faces.top = Face{{own({0, 0}, {0.5, 1})}};
      },
      {"bay 1, top face", "on a chord between two stations"});
  bad([&](BoxGirder& g) { g.faces.top = Face{{own({0, 0}, {0, 0})}}; }, {"bay 1, top face", "begins where it ends"});
}

TEST_CASE("panels that do not fit") {
  const Bar b = bar(48.3_mm, 4.0_mm);
  bad([&](BoxGirder& g) { g.faces.bottom = Face{open(b), open(b)}; }, {"bottom face", "2 panels are given for 6"});
  bad([](BoxGirder& g) { g.faces.bottom = g.faces.bottom.spanning(0); }, {"bottom face", "span 0 bays", "1 to 6"});
  bad([](BoxGirder& g) { g.faces.bottom = g.faces.bottom.spanning(7); }, {"bottom face", "span 7 bays", "1 to 6"});
  bad([](BoxGirder& g) { g.faces.bottom = g.faces.bottom.spanning(2, 2); }, {"bottom face", "begin 2 bays in"});
  refused<BadDescription>([&] { (void)Face(open(b)).with_panel(6, 6, open(b)); },
                          {"panel 7 is not there", "panels 1 to 6"});
  bad([](BoxGirder& g) { g.modules.at = {0}; }, {"splice", "station 1", "inner stations 2 to 6"});
  bad([](BoxGirder& g) { g.modules.at = {6}; }, {"splice", "station 7"});
  bad([&](BoxGirder& g) { g.diaphragms = diaphragms_at({7}, b); }, {"diaphragm", "station 8", "stations 1 to 7"});
}

TEST_CASE("supports") {
  bad([](BoxGirder& g) { g.supports = {}; }, {"girder", "no supports", "simply_supported()"});
  bad([](BoxGirder& g) { g.supports = hung_at({0.0}); }, {"supports", "1 places", "two places or more"});
  bad([](BoxGirder& g) { g.supports = hung_at({0.0, 1.3}); }, {"support at 1.3 m", "no station"});
  bad([](BoxGirder& g) { g.supports = continuous_over({0.0, 9.0}); }, {"support at 9 m", "from 0 to 3 m"});
  bad([](BoxGirder& g) { g.supports = continuous_over({0.0, not_a_number}); }, {"support at nan m", "finite"});
  bad([](BoxGirder& g) { g.supports = hung_at({0.0, 3.0}, -1e6); }, {"supports", "vertical stiffness is -1e+06"});
  bad([](BoxGirder& g) { g.supports = hung_at({0.0, 3.0}, not_a_number); }, {"supports", "vertical stiffness is nan"});
  bad([](BoxGirder& g) { g.supports = g.supports.with(hold(ChordOf::apex, 0.0)); },
      {"no chord called apex", "bottom left, bottom right, top right, top left"});
  bad([](BoxGirder& g) { g.supports = g.supports.with(hold("lower", 0.0)); }, {"no chord called lower"});
  bad([](BoxGirder& g) { g.supports = g.supports.with(hold(ChordOf::top_left, 0.25)); },
      {"support at 0.25 m, top left chord", "no station"});
  bad([](BoxGirder& g) { g.supports = g.supports.with(hold(ChordOf::top_left, 0.5).spring(Motion::uz, 0.0)); },
      {"top left chord", "spring stiffness is 0"});
  bad([](BoxGirder& g) { g.supports = g.supports.with(hold(ChordOf::top_left, 0.5).fix({Motion::uz}, infinity)); },
      {"top left chord", "prescribed displacement is inf"});
}

TEST_CASE("rings and typed-in girders") {
  RingGirder ring{.bays = 2,
                  .bay_length = 0.5,
                  .ring = {{"a", 0.0, 0.0, bar()}, {"b", 1.0, 0.0, bar()}, {"c", 0.0, 1.0, bar()}},
                  .faces = {open(bar(48.3_mm, 4.0_mm))},
                  .supports = cantilever()};
  CHECK(Analysis{ring}.solver().unknowns() == 2 * 3 * 6);
  RingGirder r = ring;
  r.ring.pop_back();
  refused<BadDescription>([&] { (void)r.girder(); }, {"2 chords", "three chords or more"});
  r = ring;
  r.ring[2].name = "a";
  refused<BadDescription>([&] { (void)r.girder(); }, {"a chord", "another chord has the same name"});
  r = ring;
  r.ring[1].name = "";
  refused<BadDescription>([&] { (void)r.girder(); }, {"chord 2", "no name"});
  r = ring;
  r.faces.push_back(r.faces[0]);
  refused<BadDescription>([&] { (void)r.girder(); }, {"2 faces are given for 3 chords"});
  r = ring;
  r.ring[1].y = not_a_number;
  refused<BadDescription>([&] { (void)r.girder(); }, {"station 1, b chord", "finite"});
  r = ring;
  r.ring[1].y = 0.0;  // on top of chord a
  refused<BadDescription>([&] { const Analysis a{r}; }, {"bay 1, a to b face", "no area"});
  Girder g = sound().girder();
  g.stations[3] = g.stations[2];
  refused<BadDescription>([&] { const Analysis a{g}; }, {"station 4", "beyond the one before"});
  g = sound().girder();
  g.joints.pop_back();
  refused<BadDescription>([&] { const Analysis a{g}; }, {"27 joints", "28"});
  g = sound().girder();
  g.faces[0].second_chord = 4;
  refused<BadDescription>([&] { const Analysis a{g}; }, {"bottom face", "two different chords"});
}

TEST_CASE("loads that are not there or not finite") {
  bad_load(self_weight(not_a_number), {"self-weight", "factor is nan"});
  bad_load(self_weight(-1.0), {"self-weight", "factor is -1"});
  bad_load(BasicSelfWeight<>{infinity, 1.0}, {"self-weight", "gravity is inf"});
  bad_load(line_load({}, 1000.0), {"line load", "names no chord"});
  bad_load(line_load({"handrail"}, 1000.0), {"no chord called handrail", "its chords are"});
  bad_load(line_load({std::size_t{4}}, 1000.0), {"no chord 5"});
  bad_load(line_load({ChordOf::top_left}, not_a_number), {"line load", "not finite"});
  bad_load(line_load({ChordOf::top_left}, 1000.0, {1.0, 3.5}), {"line load", "from 1 m to 3.5 m", "0 to 3 m"});
  bad_load(line_load({ChordOf::top_left}, 1000.0, {2.0, 1.0}), {"line load", "from 2 m to 1 m", "rising"});
  bad_load(point_load(ChordOf::top_left, 3.1, 1000.0), {"top left chord", "at 3.1 m", "from 0 to 3 m"});
  bad_load(point_load(ChordOf::top_left, -0.1, 1000.0), {"top left chord", "at -0.1 m"});
  bad_load(point_load(ChordOf::top_left, not_a_number, 1000.0), {"top left chord", "at nan m"});
  bad_load(point_load(ChordOf::top_left, 1.0, infinity), {"top left chord", "not finite"});
  bad_load(point_load(ChordOf::apex, 1.0, 1.0), {"no chord called apex"});
  bad_load(cross_member_load(Side::bottom, 7, 0.5, 1.0), {"station 8, bottom face", "no such station", "1 to 7"});
  bad_load(cross_member_load(Side::bottom, 2, 1.5, 1.0), {"station 3, bottom face", "fraction 1.5"});
  bad_load(cross_member_load(Side::bottom, 2, 0.5, not_a_number), {"station 3, bottom face", "not finite"});
  bad_load(cross_member_load(Side::base, 2, 0.5, 1.0), {"no face called base", "bottom, right, top, left"});
  bad_load(wind_on(Side::web, 400.0), {"no face called web"});
  bad_load(wind_on(Side::left, not_a_number), {"left face", "pressure is nan"});
  bad_load(wind_on(Side::left, 400.0, CarriedBy::chords, {0.1, 0.2}),
           {"left face", "no panel lies between 0.1 m and 0.2 m"});
  bad_load(wind_on_bars(-1.0, {0, 1, 0}), {"wind on bars", "pressure is -1"});
  bad_load(wind_on_bars(400.0, {0, 0, 0}), {"wind on bars", "direction is not given"});
  bad_load(wind_on_bars(400.0, {0, not_a_number, 0}), {"wind on bars", "direction is not given"});
  bad_load(warming(infinity), {"warming", "change of temperature is inf"});
  bad_load(warming_across(0.0, not_a_number), {"warming across", "height is nan"});
  bad_load(settlement(ChordOf::top_left, 0.0, Motion::uz, 0.01),
           {"settlement at 0 m, top left chord", "no support holds it along z"});
  bad_load(settlement(ChordOf::bottom_left, 0.2, Motion::uz, 0.01),
           {"settlement at 0.2 m, bottom left chord", "no station"});
  bad_load(settlement(ChordOf::bottom_left, 0.0, Motion::uz, not_a_number),
           {"settlement at 0 m", "displacement is nan"});
  BoxGirder g = sound();
  g.faces.right = braced(alternating, bar(26.9_mm, 3.2_mm));
  const Analysis no_posts{g};
  refused<BadDescription>([&] { (void)no_posts.solve({cross_member_load(Side::right, 2, 0.5, 1.0)}); },
                          {"station 3, right face", "none is there"});
  g.faces.right = Face{};
  g.diaphragms = diaphragms_every(1, bar(26.9_mm, 3.2_mm));
  const Analysis open_side{g};
  refused<BadDescription>([&] { (void)open_side.solve({wind_on(Side::right, 400.0)}); }, {"right face", "no panels"});
}

TEST_CASE("cases, combinations and questions") {
  const Analysis a{sound()}, b{sound()};
  refused<BadDescription>([&] { (void)a.solve(std::vector<Action>{}); }, {"load case", "no action is given"});
  refused<BadDescription>([&] { (void)a.solve(std::vector<LoadCase>{}); }, {"no case is given"});
  const LoadCase one{"own weight", Nature::permanent, {self_weight()}}, unnamed{"", Nature::wind, {self_weight()}};
  refused<BadDescription>([&] { (void)a.solve(std::vector<LoadCase>{one, unnamed}); }, {"load case 2", "no name"});
  refused<BadDescription>([&] { (void)a.solve(std::vector<LoadCase>{one, one}); }, {"own weight", "the same name"});
  const Cases cases = a.solve(std::vector<LoadCase>{one});
  refused<BadDescription>([&] { (void)cases["snow"]; }, {"no case called snow"});
  refused<BadDescription>(
      [&] {
        (void)cases.combine({"two", {1.0, 2.0}});
      },
      {"combination two", "2 factors are given for 1 cases"});
  refused<BadDescription>(
      [&] {
        (void)cases.combine({"odd", {not_a_number}});
      },
      {"combination odd", "a factor is nan"});
  const Response ra = a.solve({self_weight()}), rb = b.solve({self_weight()});
  refused<BadDescription>(
      [&] {
        (void)combine<double>({&ra, &rb}, {1.0, 1.0}, "mixed");
      },
      {"combination mixed", "different girders"});
  std::vector<CaseKind> many(13, {"wind", Nature::wind, ""});
  refused<BadDescription>([&] { (void)combinations(en1990::ultimate(), many); }, {"13 variable cases", "up to 12"});
  refused<BadDescription>([&] { (void)ra.chord(ChordOf::top_left).axial(6); }, {"bay 7", "bays 1 to 6"});
  refused<BadDescription>([&] { (void)ra.face(Side::left).diagonal(6); }, {"panel 7, left face"});
  refused<BadDescription>([&] { (void)ra.face(Side::left).diagonal(1, 1); },
                          {"panel 2, left face", "no such diagonal"});
  refused<BadDescription>([&] { (void)ra.face(Side::left).cross_member(9); },
                          {"station 10, left face", "no cross member"});
  refused<BadDescription>([&] { (void)ra.face("roof"); }, {"no face called roof"});
  refused<BadDescription>([&] { (void)ra.splice(2); }, {"station 3", "no splice"});
  for (const double x : {-0.1, 3.1, not_a_number}) {
    refused<BadDescription>([&] { (void)ra.deflection(ChordOf::top_left, x); }, {"a deflection at", "0 to 3 m"});
    refused<BadDescription>([&] { (void)ra.twist(x); }, {"a deflection at"});
  }
  refused<BadDescription>([] { (void)Response{}.girder(); }, {"response", "nothing has been solved"});
  for (const double t : {0.0, -1.0, not_a_number})
    refused<BadDescription>([t] { const Analysis c{sound(), t}; }, {"tolerance is"});
}

TEST_CASE("girders that can move are named with their motion") {
  const auto moves = [](const auto& girder, const std::vector<std::string>& fragments) {
    refused<UnstableFrame>([&] { const Analysis a{girder}; }, fragments);
  };
  BoxGirder g = sound();
  g.supports = held_by({hold(ChordOf::bottom_left, 0.0).fix({Motion::ux, Motion::uy, Motion::uz}),
                        hold(ChordOf::bottom_left, 3.0).fix({Motion::uy, Motion::uz})});
  // rolls about the line through both
  moves(g, {"girder", "the whole of it turns about x as one piece: the supports do not hold it"});
  g = sound();
  g.supports =
      held_by({hold(ChordOf::bottom_left, 0.0).fix({Motion::uz}), hold(ChordOf::bottom_right, 0.0).fix({Motion::uz}),
               hold(ChordOf::bottom_left, 3.0).fix({Motion::uz})});
  moves(g, {"girder"});
  g = sound();
  g.supports = held_by({hold(ChordOf::bottom_left, 0.0)});  // holds nothing
  moves(g, {"girder"});
  // pinned open faces all round: the chords slide along each other, but for the one that is held along x
  g = sound();
  g.faces.top = g.faces.bottom = g.faces.left = g.faces.right = open(bar(48.3_mm, 4.0_mm), pinned_joint());
  moves(g, {"girder", "the bottom right chord moves along x at stations 1 to 7 without any bar resisting"});
  LadderGirder l{
      .bays = 3,
      .bay_length = 0.5,
      .depth = 0.5,
      .chord = bar(),
      .web = Face{},
      .supports = held_by(
          {hold(ChordOf::bottom, 0.0).fix({Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz})})};
  moves(l, {"girder", "the top chord moves along x, y and z and turns about x, y and z as one piece"});
  l.web = open(bar(48.3_mm, 4.0_mm), pinned_joint());  // a pinned tie keeps the distance, and lets the rest go
  moves(l, {"girder", "the top chord moves along x at stations 1 to 4"});
  l.web = open(bar(48.3_mm, 4.0_mm));
  const Analysis sound_ladder{l};
  CHECK(sound_ladder.solve({self_weight()}).max_deflection() > 0);
}

TEST_CASE("a failed solve leaves the response and its girder as they were") {
  const Analysis analysis{sound()};
  AnalysisWorkspace space;
  Response r;
  analysis.solve({self_weight()}, r, space);
  const double before = r.axis_deflection(1.5).z, load = r.total_load().z, reaction = r.total_reaction().z;
  const std::vector<double> motions = r.answer().motions;
  const std::vector<std::vector<Action>> faults{
      {self_weight(), point_load(ChordOf::top_left, 4.0, 1.0)},
      {point_load(ChordOf::top_left, 1.0, 1.0), wind_on(Side::web, 1.0)},
      {wind_on(Side::left, 400.0), settlement(ChordOf::top_left, 1.0, Motion::uz, 1.0)},
      {}};
  for (const std::vector<Action>& f : faults) {
    CHECK_THROWS_AS(analysis.solve(f, r, space), BadDescription);
    CHECK(r.answer().motions == motions);
    CHECK(r.axis_deflection(1.5).z == before);
    CHECK(r.total_load().z == load);
    CHECK(r.total_reaction().z == reaction);
  }
  analysis.solve({self_weight()}, r, space);  // and the workspace is as good as new
  CHECK(r.answer().motions == motions);
}
