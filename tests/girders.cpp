// SPDX-License-Identifier: MIT
// From a girder in words to its frame: how many bars and joints, where they lie, what they are called, how it is held.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response.hpp>

#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;


/// A box of 0.5 m bays with braced sides and open top and bottom.
BoxGirder box(std::size_t bays) {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.4,
          .depth = 0.6,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .supports = simply_supported()};
}

/// An upright ladder with this web, cantilevered so that the web alone decides what is there.
LadderGirder ladder(std::size_t bays, const Face& web) {
  return {.bays = bays, .bay_length = 0.5, .depth = 0.6, .chord = chord_bar(), .web = web, .supports = cantilever()};
}

std::size_t count(const GirderModel& m, Role role) {
  std::size_t n = 0;
  for (const Member& member : m.frame.members) n += member.address.role == role ? 1 : 0;
  return n;
}

bool near(const Vec3<>& a, const Vec3<>& b) { return length(a - b) < 1e-12; }

/// The diagonals of a ladder's web, panel by panel: '/' rises from the bottom chord, '\' falls from the top one.
std::string drawn(const Face& web, std::size_t bays) {
  const GirderModel m = model_of(ladder(bays, web).girder());
  std::string out;
  for (const PanelMembers& panel : m.faces[0].panels) {
    if (!out.empty()) out += ' ';
    for (const std::size_t i : panel.diagonals) {
      const Vec3<> d = m.frame.nodes[m.frame.members[i].to].at - m.frame.nodes[m.frame.members[i].from].at;
      out += d.x * d.z > 0 ? '/' : '\\';
    }
  }
  return out;
}

struct PostInTheMiddle {
  std::vector<Piece> pieces(const PanelSite& site) const {
    CHECK(site.length == doctest::Approx(0.5).epsilon(1e-12));
    CHECK(site.depth == doctest::Approx(0.6).epsilon(1e-12));
    return {{{0, 0}, {0.5, 0.5}, Role::user, brace_bar(), {}, 0.0},
            {{0.5, 0.5}, {1, 1}, Role::user, brace_bar(), {}, 0.0},
            {{0, 1}, {0.5, 0.5}, Role::user, brace_bar(), {}, 0.0},
            {{0.5, 0.5}, {1, 0}, Role::user, brace_bar(), {}, 0.0}};
  }
};

}  // namespace

TEST_CASE("a box girder has the bars and joints one can count") {
  const GirderModel m = model_of(box(24).girder());
  CHECK(m.frame.nodes.size() == 4 * 25);
  CHECK(count(m, Role::chord) == 4 * 24);
  CHECK(count(m, Role::cross_member) == 4 * 25);
  CHECK(count(m, Role::diagonal) == 2 * 24);
  CHECK(count(m, Role::diaphragm) == 0);
  CHECK(m.bars.size() == 3);
  CHECK(m.faces.size() == 4);
  CHECK(m.faces[0].panels.size() == 24);
  CHECK(near(m.frame.nodes[m.chord_node(3, 0)].at, {1.5, 0.2, -0.3}));   // bottom left: left is +y
  CHECK(near(m.frame.nodes[m.chord_node(3, 1)].at, {1.5, -0.2, -0.3}));  // bottom right
  CHECK(near(m.frame.nodes[m.chord_node(3, 2)].at, {1.5, -0.2, 0.3}));   // top right
  CHECK(near(m.frame.nodes[m.chord_node(3, 3)].at, {1.5, 0.2, 0.3}));    // top left
}

TEST_CASE("every bar and joint can say where it is") {
  const GirderModel m = model_of(box(6).girder());
  const std::size_t left = m.girder.face(Side::left), top = m.girder.face("top");
  CHECK(m.frame.name_of_member(m.chord_member(2, 3)) == "bay 3, top left chord");
  CHECK(m.frame.name_of_member(m.faces[left].panels[2].diagonals[0]) == "bay 3, left face, diagonal");
  CHECK(m.frame.name_of_member(m.faces[top].cross_members[4][0]) == "station 5, top face, cross member");
  CHECK(m.frame.name_of_node(m.chord_node(6, 1)) == "station 7, bottom right chord");
  for (std::size_t i = 0; i < m.frame.members.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) CHECK(m.frame.name_of_member(i) != m.frame.name_of_member(j));
  for (std::size_t i = 0; i < m.frame.nodes.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) CHECK(m.frame.name_of_node(i) != m.frame.name_of_node(j));
}

TEST_CASE("face normals point out of the girder") {
  const GirderModel m = model_of(box(2).girder());
  CHECK(near(m.faces[m.girder.face(Side::left)].normals[0], {0, 1, 0}));
  CHECK(near(m.faces[m.girder.face(Side::right)].normals[0], {0, -1, 0}));
  CHECK(near(m.faces[m.girder.face(Side::top)].normals[0], {0, 0, 1}));
  CHECK(near(m.faces[m.girder.face(Side::bottom)].normals[0], {0, 0, -1}));
}

TEST_CASE("each layout of diagonals") {
  const Bar &d = brace_bar(), &p = cross_bar();
  CHECK(drawn(braced(single_direction, d, p), 4) == "/ / / /");
  CHECK(drawn(braced(single_direction_reversed, d, p), 4) == "\\ \\ \\ \\");
  CHECK(drawn(braced(alternating, d, p), 5) == "/ \\ / \\ /");
  CHECK(drawn(braced(alternating, d), 4) == "/ \\ / \\");
  CHECK(drawn(braced(alternating_reversed, d, p), 4) == "\\ / \\ /");
  CHECK(drawn(braced(mirrored_towards, d, p), 6) == "\\ \\ \\ / / /");
  CHECK(drawn(braced(mirrored_away, d, p), 6) == "/ / / \\ \\ \\");
  CHECK(drawn(braced(crossed, d, p), 3) == "/\\ /\\ /\\");
  CHECK(drawn(braced(k_braced, d, p), 3) == "/\\ /\\ /\\");
  CHECK(drawn(open(p), 3).empty());
  for (std::size_t n = 1; n < 9; ++n) {
    std::string towards = drawn(braced(mirrored_towards, d, p), n), away = drawn(braced(mirrored_away, d, p), n);
    for (char& c : away) c = c == '/' ? '\\' : (c == '\\' ? '/' : c);
    CHECK(towards == away);
  }
}

TEST_CASE("posts stand where they are given, and once") {
  CHECK(count(model_of(ladder(4, braced(alternating, brace_bar())).girder()), Role::cross_member) == 0);
  CHECK(count(model_of(ladder(4, braced(alternating, brace_bar(), cross_bar())).girder()), Role::cross_member) == 5);
  CHECK(count(model_of(ladder(4, open(cross_bar())).girder()), Role::cross_member) == 5);
  const Bar other{RoundTube{33.7_mm, 3.0_mm}, material::en_aw_6082_t6()};
  // where two panels meet, the cross member of the left one stands
  const GirderModel m = model_of(ladder(2, Face{open(cross_bar()), open(other)}).girder());
  REQUIRE(m.faces[0].cross_members[1].size() == 1);
  CHECK(m.bar(m.faces[0].cross_members[1][0]).section.designation == cross_bar().section.designation);
  CHECK(m.bar(m.faces[0].cross_members[2][0]).section.designation == other.section.designation);
  const Face mixed = Face(braced(crossed, brace_bar(), cross_bar())).with_panel(1, 3, open(cross_bar()));
  CHECK(drawn(mixed, 3) == "/\\  /\\");
  const Face hole = Face(open(cross_bar())).with_panel(1, 3, AnyPanel{});
  CHECK(count(model_of(ladder(3, hole).girder()), Role::cross_member) == 4);
}

TEST_CASE("a K splits its posts at their middle") {
  const GirderModel m = model_of(ladder(3, braced(k_braced, brace_bar(), cross_bar())).girder());
  CHECK(m.frame.nodes.size() == 2 * 4 + 3);
  CHECK(count(m, Role::cross_member) == 1 + 2 * 3);
  CHECK(count(m, Role::diagonal) == 6);
  CHECK(m.faces[0].cross_members[0].size() == 1);
  REQUIRE(m.faces[0].cross_members[2].size() == 2);
  const std::size_t lower = m.faces[0].cross_members[2][0], upper = m.faces[0].cross_members[2][1];
  CHECK(m.frame.members[lower].to == m.frame.members[upper].from);
  CHECK(near(m.frame.nodes[m.frame.members[lower].to].at, {1.0, 0.0, 0.0}));
  CHECK(m.frame.name_of_member(upper) == "station 3, web face, cross member 2");
  CHECK(m.frame.name_of_member(m.faces[0].panels[1].diagonals[0]) == "bay 2, web face, diagonal 1");
  CHECK(m.frame.nodes[m.frame.members[lower].to].address.station == 2);  // numbered with its station
}

TEST_CASE("panels over two bays, half a panel off their neighbours") {
  CHECK(Face{}.spanning(2, 1).boundaries(6) == std::vector<std::size_t>{0, 1, 3, 5, 6});
  CHECK(Face{}.spanning(2).boundaries(5) == std::vector<std::size_t>{0, 2, 4, 5});
  BoxGirder g = box(6);
  g.faces.left = Face(braced(alternating, brace_bar())).spanning(2);
  g.faces.right = Face(braced(alternating, brace_bar())).spanning(2, 1);
  const GirderModel m = model_of(g.girder());
  const FaceMembers& right = m.faces[m.girder.face(Side::right)];
  CHECK(m.faces[m.girder.face(Side::left)].panels.size() == 3);
  REQUIRE(right.panels.size() == 4);
  CHECK(right.panels[1].first_station == 1);
  CHECK(right.panels[1].last_station == 3);
  const Member& diagonal = m.frame.members[right.panels[1].diagonals[0]];
  CHECK(std::abs(m.frame.nodes[diagonal.to].at.x - m.frame.nodes[diagonal.from].at.x) == doctest::Approx(1.0));
}

TEST_CASE("gaps and joint sizes are rigid arms") {
  const GirderModel m = model_of(ladder(2, braced(alternating, brace_bar(), cross_bar(), Joint{}, 0.03)).girder());
  const Member& d = m.frame.members[m.faces[0].panels[1].diagonals[0]];  // falls from the top chord
  CHECK(near(d.start.offset, {0.03, 0, 0}));
  CHECK(near(d.end.offset, {-0.03, 0, 0}));
  Joint joint = rigid_joint();
  joint.to_chord_surface = true;
  const GirderModel sized = model_of(ladder(2, open(cross_bar(), joint)).girder());
  const MemberAxes<> a = axes_of(sized.frame, sized.frame.members[sized.faces[0].cross_members[1][0]]);
  CHECK(a.length == doctest::Approx(0.6 - 0.0603).epsilon(1e-12));
  CHECK(near(a.start, {0.5, 0.0, -0.3 + 0.03015}));
}

TEST_CASE("joints' springs act in the face's plane and out of it") {
  const GirderModel m = model_of(box(2).girder());
  BoxGirder g = box(2);
  g.faces.top = open(cross_bar(), semi_rigid_joint(1e4, 2e4));
  const GirderModel soft = model_of(g.girder());
  const std::size_t i = soft.faces[soft.girder.face(Side::top)].cross_members[1][0];
  const MemberAxes<> a = axes_of(soft.frame, soft.frame.members[i]);
  CHECK(std::abs(a.z.z) == doctest::Approx(1.0));  // local z is the face's normal: Mz bends in the face
  CHECK(soft.frame.members[i].end.about_z == 1e4);
  CHECK(soft.frame.members[i].start.about_y == 2e4);
  CHECK(is_infinite(m.frame.members[i].end.about_z));
}

TEST_CASE("diaphragms at the ends, at intervals, and where asked") {
  BoxGirder g = box(6);
  g.diaphragms = end_diaphragms(brace_bar());
  CHECK(count(model_of(g.girder()), Role::diaphragm) == 2);  // one diagonal each; all faces have cross members
  g.diaphragms = diaphragms_every(2, brace_bar());
  CHECK(count(model_of(g.girder()), Role::diaphragm) == 4);
  g.diaphragms.every = 4;  // stations 0, 4 and the end
  CHECK(count(model_of(g.girder()), Role::diaphragm) == 3);
  g.diaphragms = diaphragms_at({3}, brace_bar());
  CHECK(count(model_of(g.girder()), Role::diaphragm) == 1);
  g.diaphragms.crossed = true;
  const GirderModel m = model_of(g.girder());
  REQUIRE(m.diaphragm_members.size() == 2);
  CHECK(m.frame.name_of_member(m.diaphragm_members[1]) == "station 4, diaphragm 2");
  g.faces.left = g.faces.right = braced(alternating, brace_bar());  // no posts: the diaphragm has ring bars there
  CHECK(count(model_of(g.girder()), Role::diaphragm) == 4);
}

TEST_CASE("taper, camber and plan curve place the joints") {
  BoxGirder g = box(4);
  g.end_width = 0.2;
  g.end_depth = 0.4;
  const Girder tapered = g.girder();
  CHECK(near(tapered.joint(4, 3), {2.0, 0.1, 0.2}));
  CHECK(near(tapered.joint(2, 1), {1.0, -0.15, -0.25}));
  g = box(4);
  g.axis.camber = 0.08;
  const Girder cambered = g.girder();
  CHECK(near(cambered.joint(0, 0), {0.0, 0.2, -0.3}));
  CHECK(near(cambered.joint(2, 0), {1.0, 0.2, -0.22}));
  CHECK(near(cambered.joint(1, 0), {0.5, 0.2, -0.3 + 0.75 * 0.08}));
  for (const double radius : {5.0, -5.0}) {
    g = box(4);
    g.axis.plan_radius = radius;
    const Girder curved = g.girder();
    const Vec3<> centre{1.0, radius, 0.0};  // abreast of mid-length, to the left where positive
    for (std::size_t i = 0; i < 5; ++i) {
      const Vec3<> left = curved.joint(i, 3) - centre, right = curved.joint(i, 2) - centre;
      CHECK(std::hypot(left.x, left.y) == doctest::Approx(std::abs(radius - 0.2)).epsilon(1e-12));
      CHECK(std::hypot(right.x, right.y) == doctest::Approx(std::abs(radius + 0.2)).epsilon(1e-12));
      CHECK(length(curved.joint(i, 3) - curved.joint(i, 2)) == doctest::Approx(0.4).epsilon(1e-12));
    }
    CHECK(near(curved.joint(2, 3), {1.0, 0.2, 0.3}));
  }
  g = box(0);
  g.bay_lengths = {0.3, 0.7, 0.5};
  CHECK(g.girder().stations == std::vector<double>{0.0, 0.3, 1.0, 1.5});
}

TEST_CASE("triangular girders, ladders and rings") {
  const TriangularGirder t{.bays = 2,
                           .bay_length = 1.0,
                           .width = 0.6,
                           .depth = 0.5,
                           .chord = chord_bar(),
                           .apex_chord = cross_bar(),
                           .faces = {.base = open(cross_bar()),
                                     .left = braced(alternating, brace_bar()),
                                     .right = braced(alternating, brace_bar())},
                           .supports = simply_supported()};
  const GirderModel m = model_of(t.girder());
  CHECK(near(m.girder.joint(1, m.girder.chord(ChordOf::apex)), {1, 0, 0.25}));
  CHECK(near(m.girder.joint(1, m.girder.chord(ChordOf::base_left)), {1, 0.3, -0.25}));
  CHECK(m.bar(m.chord_member(0, 2)).section.designation == cross_bar().section.designation);
  CHECK(dot(m.faces[m.girder.face(Side::left)].normals[0], {0, 1, 0}) > 0);
  CHECK(dot(m.faces[m.girder.face(Side::right)].normals[0], {0, 1, 0}) < 0);
  TriangularGirder down = t;
  down.apex_down = true;
  CHECK(near(down.girder().joint(1, 2), {1, 0, -0.25}));
  CHECK(near(down.girder().joint(1, 0), {1, 0.3, 0.25}));

  LadderGirder l = ladder(2, open(cross_bar()));
  CHECK(near(l.girder().joint(1, l.girder().chord(ChordOf::top)), {0.5, 0, 0.3}));
  CHECK(near(model_of(l.girder()).faces[0].normals[0], {0, 1, 0}));
  l.flat = true;
  CHECK(near(l.girder().joint(1, 1), {0.5, 0.3, 0}));

  RingGirder ring{.bays = 3,
                  .bay_length = 0.5,
                  .faces = {open(cross_bar())},
                  .diaphragms = end_diaphragms(brace_bar()),
                  .supports = cantilever()};
  for (std::size_t i = 0; i < 6; ++i) {
    const double angle = static_cast<double>(i) * pi_v<double> / 3;
    ring.ring.push_back({"chord " + std::to_string(i), 0.5 * std::cos(angle), 0.5 * std::sin(angle), chord_bar()});
  }
  const GirderModel hexagon = model_of(ring.girder());
  CHECK(hexagon.faces.size() == 6);
  CHECK(count(hexagon, Role::cross_member) == 6 * 4);
  CHECK(count(hexagon, Role::diaphragm) == 2 * 3);  // a hexagon is triangulated by three diagonals from one corner
  CHECK(hexagon.girder.face("chord 5 to chord 0") == 5);
  for (std::size_t f = 0; f < 6; ++f) {
    const Vec3<> middle = 0.5 * (hexagon.girder.joint(0, f) + hexagon.girder.joint(0, (f + 1) % 6));
    CHECK(dot(hexagon.faces[f].normals[0], middle) > 0.4);
  }
}

TEST_CASE("a user's own panel is a panel") {
  static_assert(Panel<PostInTheMiddle>);
  const GirderModel m = model_of(ladder(2, Face{AnyPanel(PostInTheMiddle{}), open(cross_bar())}).girder());
  CHECK(m.frame.nodes.size() == 6 + 1);
  CHECK(count(m, Role::user) == 4);
  CHECK(near(m.frame.nodes[2].at, {0.25, 0, 0}));  // after the two chord joints of the first station
  CHECK(m.frame.name_of_member(m.faces[0].panels[0].diagonals[2]) == "bay 1, web face, bar 3");
  CHECK(AnyPanel(PostInTheMiddle{}).facts().layout == Layout::other);
  CHECK(AnyPanel(open(cross_bar())).facts().layout == Layout::open);
  CHECK(AnyPanel(braced(k_braced, brace_bar(), cross_bar())).facts().layout == Layout::k);
}

TEST_CASE("each chord may have its own bar") {
  BoxGirder g = box(2);
  g.chords.top_left = cross_bar();
  const GirderModel m = model_of(g.girder());
  CHECK(m.bar(m.chord_member(1, 3)).section.designation == cross_bar().section.designation);
  CHECK(m.bar(m.chord_member(1, 2)).section.designation == chord_bar().section.designation);
}

TEST_CASE("bars that differ in strength or welds alone stay apart") {
  // had they been taken for one another, the second would have been checked with the first one's strength
  const auto bars_of = [](const Bar& other) {
    BoxGirder g = box(4);
    g.faces.top = open(other);
    return Analysis{g}.model().bars.size();
  };
  CHECK(bars_of(cross_bar()) == 3);
  for (double material::StrengthStep::*value :
       {&material::StrengthStep::yield, &material::StrengthStep::ultimate, &material::StrengthStep::haz_ultimate}) {
    Bar weaker = cross_bar();
    weaker.strength.*value *= 0.9;
    CHECK(bars_of(weaker) == 4);
  }
  CHECK(bars_of(cross_bar().welded_along({1, 0.0})) == 4);
  CHECK(bars_of(cross_bar().welded_across({{0.1, 0.0}})) == 4);
  Bar heavier = cross_bar();
  heavier.material.density *= 1.1;
  CHECK(bars_of(heavier) == 4);
}

TEST_CASE("splices lie between modules, and their cuts carry the girder's moment") {
  BoxGirder g = box(6);
  g.faces.left = g.faces.right = open(cross_bar());  // beside a station no diagonal is cut
  g.modules.bays_each = 2;
  CHECK(g.girder().splices == std::vector<std::size_t>{2, 4});
  g.modules = {0, {3}};
  const Analysis analysis{g};
  CHECK(analysis.girder().is_splice(3));
  const Response r = analysis.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 2000.0)});
  double moment = 0, axial = 0;
  for (std::size_t c = 0; c < 4; ++c) {
    const CutForces f = r.splice(3)[c];
    const MemberAxes<>& a = analysis.axes(analysis.model().chord_member(2, c));
    axial += f.N;
    moment += dot(a.to_global(f.moment()), {0, 1, 0}) + f.N * analysis.girder().joint(3, c).z;
  }
  CHECK(std::abs(axial) < 1e-8 * 2000);
  CHECK(-moment == doctest::Approx(2000.0 * 3.0 * 3.0 / 8).epsilon(1e-9));  // statics: q L² / 8, bottom pulled
}

TEST_CASE("supports in trade words") {
  const auto held = [](const GirderModel& m) {
    std::string out;
    for (const Support& s : m.frame.supports) {
      out += m.frame.name_of_node(s.node) + ":";
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind != Restraint::Kind::free)
          out += std::string(" ") + "xyzuvw"[k] + (s.motion[k].kind == Restraint::Kind::spring ? "~" : "");
      out += "; ";
    }
    return out;
  };
  BoxGirder g = box(2);
  CHECK(held(model_of(g.girder())) ==
        "station 1, bottom left chord: x y z; station 1, bottom right chord: z; "
        "station 3, bottom left chord: y z; station 3, bottom right chord: z; ");
  g.supports = hung_at({0.5, 1.0});
  CHECK(held(model_of(g.girder())) ==
        "station 2, top right chord: x y z; station 2, top left chord: z; "
        "station 3, top right chord: y z; station 3, top left chord: z; ");
  g.supports = hung_at({0.0, 1.0}, 1e6);
  CHECK(held(model_of(g.girder())).find("station 1, top left chord: z~; ") != std::string::npos);
  g.supports = continuous_over({0.0, 0.5, 1.0});
  CHECK(model_of(g.girder()).frame.supports.size() == 6);
  // chords above each other: a fork, so that the girder cannot roll over
  LadderGirder l = ladder(2, open(cross_bar()));
  l.supports = simply_supported();
  CHECK(held(model_of(l.girder())) ==
        "station 1, bottom chord: x y z; station 1, top chord: y; "
        "station 3, bottom chord: y z; station 3, top chord: y; ");
  l.supports = cantilever();
  CHECK(held(model_of(l.girder())) == "station 1, bottom chord: x y z u v w; station 1, top chord: x y z u v w; ");
  l.supports = held_by({hold(ChordOf::top, 0.5).fix({Motion::ux, Motion::rz}).spring(Motion::uz, 5.0)});
  CHECK(held(model_of(l.girder())) == "station 2, top chord: x z~ w; ");
}

TEST_CASE("springs give way by reaction over stiffness, and settlements carry a statically held girder along") {
  BoxGirder g = box(4);
  g.supports = hung_at({0.0, 2.0}, 2.5e5);
  const Analysis sprung{g};
  const Response r = sprung.solve({line_load({ChordOf::top_left, ChordOf::top_right}, 1000.0)});
  for (const Response::SupportReaction& s : r.reactions())
    CHECK(s.force.z == doctest::Approx(500.0).epsilon(1e-9));  // q L / 4
  CHECK(r.deflection(ChordOf::top_left, 0.0).z == doctest::Approx(-500.0 / 2.5e5).epsilon(1e-9));
  const auto ground = hold(ChordOf::bottom_left, 0.0).fix({Motion::ux, Motion::uy, Motion::uz});
  const auto across = hold(ChordOf::bottom_right, 0.0).fix({Motion::uz});
  const auto far = hold(ChordOf::bottom_left, 2.0).fix({Motion::uy, Motion::uz});  // six motions held in all
  g.supports = held_by({ground, across, far});
  const Analysis determinate{g};
  const Response moved = determinate.solve({settlement(ChordOf::bottom_left, 2.0, Motion::uz, -0.01)});
  for (const Response::SupportReaction& s : moved.reactions()) CHECK(length(s.force) < 1e-5);
  CHECK(moved.deflection(ChordOf::bottom_left, 1.0).z == doctest::Approx(-0.005).epsilon(1e-9));
  CHECK(moved.axis_deflection(2.0).z == doctest::Approx(-0.01).epsilon(1e-9));
  // the same motion written into the support itself is there in every case
  g.supports = held_by({ground, across, hold(ChordOf::bottom_left, 2.0).fix({Motion::uz}, -0.01).fix({Motion::uy})});
  const Analysis prescribed{g};
  const Response too = prescribed.solve({self_weight(0.0)});
  CHECK(too.deflection(ChordOf::bottom_left, 1.0).z == doctest::Approx(-0.005).epsilon(1e-9));
}
