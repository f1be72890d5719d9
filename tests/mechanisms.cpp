// SPDX-License-Identifier: MIT
// Mechanisms by name: each made on purpose, so that what moves is known beforehand; a chain's pivots and the sparse
// search must tell the same motion, and nothing that is sound may be called one.
#include <doctest/doctest.h>

#include <cstddef>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include <baywork/frame/girder_model.hpp>
#include <baywork/girder.hpp>
#include <baywork/material.hpp>
#include <baywork/section.hpp>
#include <baywork/solve/frame_solver.hpp>

#include "support/tube_section.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

using Words = std::pair<std::string, std::string>;

/// Every path of the solver refuses a mechanism in these words, and takes nothing that is sound for one.
void every_path_says(const Frame& f, const std::string& words) {
  for (const SolvePath path : {SolvePath::automatic, SolvePath::sparse, SolvePath::chain, SolvePath::chain_fast}) {
    INFO("path: " << name(path));
    try {
      const FrameSolver solver(f, SolverOptions{.path = path});
      CHECK(words == "");
    } catch (const UnstableFrame& e) {
      CHECK(words != "");
      CHECK(std::string(e.what()).find(words) != std::string::npos);
    } catch (const NotConverged&) {
      CHECK(words == "");
    } catch (const BadDescription&) {  // no chain, but one was asked for
      CHECK(path != SolvePath::automatic);
      CHECK(path != SolvePath::sparse);
    }
  }
}

/// What the chain and the sparse search say; "" for none, "no chain" where there is none. So do the solver's paths.
Words words_of(const Frame& f, bool sparse = true) {
  const detail::PreparedFrame<double> p(f);
  Words out{"no chain", ""};
  detail::ChainLayout layout = detail::ChainFinder<double>(p.frame).find();
  if (layout.found()) {
    const Mechanism m = detail::find_mechanism(p, detail::ChainBays<double>(p, std::move(layout)));
    out.first = m.words;
    CHECK(m.found != m.words.empty());
  }
  if (sparse) {
    out.second = detail::find_mechanism(p, p.stiffness_entries()).words;
    every_path_says(f, out.second);
  }
  return out;
}
void both_say(const Frame& f, const std::string& words) {
  const Words said = words_of(f);
  CHECK(said.first == words);
  CHECK(said.second == words);
}
void chain_says(const Frame& f, const std::string& words) { CHECK(words_of(f, false).first == words); }
void sparse_says(const Frame& f, const std::string& words) { CHECK(words_of(f).second == words); }

BoxGirder box(std::size_t bays) {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .supports = simply_supported()};
}
LadderGirder ladder(std::size_t bays) {
  return {
      .bays = bays, .bay_length = 0.5, .depth = 0.5, .chord = chord_bar(), .web = open(cross_bar()), .supports = cantilever()};
}
template <class G>
Frame frame_of(const G& g) {
  return model_of(g.girder()).frame;
}

/// Beams and nodes "a", "b", ... in one line along x, clamped at "a".
Frame line_of(std::size_t nodes) {
  Frame f;
  for (std::size_t i = 0; i < nodes; ++i)
    f.add_node({static_cast<double>(i), 0, 0}, std::string(1, static_cast<char>('a' + i)));
  for (std::size_t i = 0; i + 1 < nodes; ++i) f.add_beam(i, i + 1, tube_section());
  f.clamp(0);
  return f;
}
/// Releases bending about both axes at one end of every chord bar of a bay.
void release_chords(Frame& f, int bay, bool start, bool about_y = true, bool about_z = true) {
  for (Member& m : f.members)
    if (m.address.bay == bay && m.address.role == Role::chord) {
      MemberEnd& e = start ? m.start : m.end;
      if (about_y) e.about_y = 0;
      if (about_z) e.about_z = 0;
    }
}
std::string piece(const std::string& motion) {
  return "the whole of it " + motion + " as one piece: the supports do not hold it";
}

}  // namespace

TEST_CASE("each of the six rigid motions that the supports leave free is named, at any length") {
  // six holds of joints at the two ends; one left out leaves one motion, which statics tells: with z held at three
  // corners, y at two ends and x at one joint, the body is just held (common practice: six bars, not in one bundle)
  for (const std::size_t bays : {std::size_t{6}, std::size_t{5000}}) {
    const double end = 0.5 * static_cast<double>(bays);
    const std::vector<Hold> all{
        hold(ChordOf::bottom_left, 0.0).fix({Motion::ux}), hold(ChordOf::bottom_left, 0.0).fix({Motion::uy}),
        hold(ChordOf::bottom_left, end).fix({Motion::uy}), hold(ChordOf::bottom_left, 0.0).fix({Motion::uz}),
        hold(ChordOf::bottom_left, end).fix({Motion::uz}), hold(ChordOf::bottom_right, 0.0).fix({Motion::uz})};
    const auto without = [&](std::initializer_list<std::size_t> left_out) {
      BoxGirder g = box(bays);
      g.supports = {Supports::Way::individual, {}, rigid_stiffness, {}};
      for (std::size_t i = 0; i < all.size(); ++i) {
        bool out = false;
        for (const std::size_t j : left_out) out = out || i == j;
        if (!out) g.supports.holds.push_back(all[i]);
      }
      return frame_of(g);
    };
    INFO("bays: " << bays);
    both_say(without({0}), piece("moves along x"));
    both_say(without({1, 2}), piece("moves along y and turns about z"));
    both_say(without({2}), piece("turns about z"));
    both_say(without({4}), piece("turns about y"));
    both_say(without({5}), piece("turns about x"));
    both_say(without({0, 2}), piece("moves along x and turns about z"));
    both_say(without({3, 4, 5}), piece("moves along z and turns about x and y"));
    chain_says(without({}), "");
  }
  Frame f = frame_of(box(6));
  f.supports.clear();
  both_say(f, piece("moves along x, y and z and turns about x, y and z"));
}

TEST_CASE("a spring holds, however soft; a hold of a rotation that no bar shares does not") {
  Frame f = frame_of(box(6));
  f.supports.clear();
  for (const Motion m : {Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz}) f.spring(0, m, 10.0);
  both_say(f, "");
  Frame bars;  // a triangle of axial bars, its joints held in turning alone
  for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{1, 0, 0}, Vec3<>{0, 1, 0}}) bars.add_node(at);
  for (std::size_t i = 0; i < 3; ++i) bars.add_axial(i, (i + 1) % 3, 70e9, 1e-3);
  bars.hold_in_plane_xy();
  bars.fix(0, {Motion::ux, Motion::uy, Motion::rz});
  sparse_says(bars, piece("turns about z"));
}

TEST_CASE("a hinge through every chord of a station: the two pieces and the bay between them") {
  for (const std::size_t bays : {std::size_t{9}, std::size_t{5000}}) {
    const std::string last = std::to_string(bays + 1);
    INFO("bays: " << bays);
    Frame f = frame_of(ladder(bays));  // out of its plane the chords bend one beside the other
    release_chords(f, 2, true, true, true);
    if (bays < 100)
      both_say(f, "bay 3 is a hinge: stations 4 to " + last + " turn about z against stations 1 to 3");
    else
      chain_says(f, "bay 3 is a hinge: stations 4 to " + last + " turn about z against stations 1 to 3");
  }
  // a straight beam on two ends with a hinge: the two halves of a linkage
  Frame f = line_of(7);
  f.supports.clear();
  f.fix(0, {Motion::ux, Motion::uy, Motion::uz, Motion::rx});
  f.fix(6, {Motion::uy, Motion::uz});
  both_say(f, "");
  f.members[3].start.about_y = 0;
  both_say(
      f, "joints move along z without any bar resisting (node b; node c; node d; node e; and 1 more)");  // 1/3, 2/3, 1,
                                                                                                         // 2/3, 1/3
}

TEST_CASE("an open bay with all its joints pinned shears") {
  // chord bars of bay 3 pinned at both ends, no diagonal there: a parallelogram. The chords keep their turning about x
  for (const std::size_t bays : {std::size_t{9}, std::size_t{3000}}) {
    Frame f = frame_of(ladder(bays));
    for (const bool start : {true, false}) release_chords(f, 2, start, true, false);
    const std::string words =
        "bay 3 shears: stations 4 to " + std::to_string(bays + 1) + " move along z against stations 1 to 3";
    INFO("bays: " << bays);
    if (bays < 100)
      both_say(f, words);
    else
      chain_says(f, words);
  }
  BoxGirder g = box(9);  // and a box, of which no face has a diagonal in that bay
  g.faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = open(cross_bar()), .right = open(cross_bar())};
  g.supports = cantilever();
  Frame f = frame_of(g);
  for (const bool start : {true, false}) release_chords(f, 2, start, true, false);
  both_say(f, "bay 3 shears: stations 4 to 10 move along z against stations 1 to 3");
}

TEST_CASE("a box whose corners are pinned and that has no diaphragm distorts") {
  BoxGirder g = box(8);
  const Face face = braced(alternating, brace_bar(), cross_bar(), pinned_joint());
  g.faces = {.top = face, .bottom = face, .left = face, .right = face};
  const Words said = words_of(frame_of(g));
  CHECK(said.first == said.second);
  CHECK(said.first.find("the cross-section of stations ") == 0);
  CHECK(said.first.find(" distorts: its corners' angles change") != std::string::npos);
  g.diaphragms = end_diaphragms(brace_bar());
  const Words kept = words_of(frame_of(g));  // what is left: chords spin between posts that are pinned to them
  CHECK(kept.first == kept.second);
  CHECK(kept.first.find(" turns about its own axis at stations 1 to 9 ") != std::string::npos);
}

TEST_CASE("chords that slide, spin or hang on nothing") {
  LadderGirder l = ladder(5);
  l.web = open(cross_bar(), pinned_joint());
  l.supports = held_by(
      {hold(ChordOf::bottom, 0.0).fix({Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz})});
  both_say(frame_of(l), "the top chord moves along x at stations 1 to 6 without any bar resisting");
  l.web = Face{};
  both_say(frame_of(l),
           "the top chord moves along x, y and z and turns about x, y and z as one piece: the supports do not hold it");
  // cross members that are free to turn about themselves and pinned otherwise let a chord spin where its own torsion is
  // cut on both sides; both chords' other motions are held by the clamped start
  Frame f = frame_of(ladder(6));
  for (Member& m : f.members) {
    if (m.address.role == Role::chord && m.address.chord == 1 && m.address.bay == 2) m.start.torsion = 0;
    if (m.address.role == Role::chord && m.address.chord == 1 && m.address.bay == 4) m.end.torsion = 0;
    if (m.address.role == Role::cross_member && m.address.station >= 2 && m.address.station <= 5)
      for (MemberEnd* e : {&m.start, &m.end}) e->about_y = e->about_z = 0;
  }
  const Words said = words_of(f);
  CHECK(said.first == said.second);
  CHECK(said.first == "the top chord turns about its own axis at stations 4 to 5 without any bar resisting");
}

TEST_CASE("a joint inside the girder that is tied by bars in one line alone") {
  Frame f = frame_of(box(8));
  const std::size_t a = 4 * 3, b = 4 * 4;  // the same chord's joints at two stations
  const Vec3<> middle = 0.5 * (f.nodes[a].at + f.nodes[b].at);
  Node n;
  n.at = middle;
  n.address.station = 3;
  n.address.face = 0;
  f.nodes.push_back(n);
  f.add_axial(a, f.nodes.size() - 1, 70e9, 1e-3);
  f.add_axial(f.nodes.size() - 1, b, 70e9, 1e-3);
  const Words said = words_of(f);
  CHECK(said.first == said.second);
  CHECK(said.first == "joints move along y without any bar resisting (station 4, bottom face)");
  f.add_axial(a + 1, f.nodes.size() - 1, 70e9, 1e-3);  // now held across, and still loose up and down
  both_say(f, "joints move along z without any bar resisting (station 4, bottom face)");
}

TEST_CASE("several joints inside bays that are loose: one of them is named") {
  Frame f = line_of(8);
  for (const std::size_t at : {std::size_t{2}, std::size_t{4}}) {
    const std::size_t n = f.add_node({static_cast<double>(at) + 0.5, 0.25, 0}, "inner " + std::to_string(at));
    f.add_axial(at, n, 70e9, 1e-3);
    f.add_axial(n, at + 1, 70e9, 1e-3);
  }
  both_say(f, "joints move along z without any bar resisting (node inner 2)");
}

TEST_CASE("typed-in frames are told by their labels") {
  Frame f = line_of(6);
  f.members[3].start = pinned_end();  // hangs on a pin at d
  const Words said = words_of(f);
  CHECK(said.first == said.second);
  CHECK(said.first == "joints move along y without any bar resisting (node e; node f)");
}

TEST_CASE("sound girders are no mechanisms, however slender or uneven") {
  for (const std::size_t bays : {std::size_t{3}, std::size_t{200}, std::size_t{2000}}) {
    INFO("bays: " << bays);
    both_say(frame_of(box(bays)), "");
    both_say(frame_of(ladder(bays)), "");
  }
  chain_says(frame_of(box(20000)), "");
  Frame f = frame_of(ladder(60));  // soft joints: nine orders below the bars
  for (Member& m : f.members)
    if (m.address.role == Role::chord) m.start.about_y = m.start.about_z = 1e-3;
  both_say(f, "");
  f = line_of(9);
  f.members[4].start.about_y = 1e-6;  // a hinge in all but name is none
  both_say(f, "");
}
