// SPDX-License-Identifier: MIT
// Splices in the frame: connectors' springs, pins that turn, the gap between modules as an open panel, slack.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check.hpp>
#include <baywork/response.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"
#include "support/small_box.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

Bar chord_bar() { return {RoundTube{60.3_mm, 5.0_mm}, material::en_aw_6082_t6()}; }
Bar brace_bar() { return {RoundTube{33.7_mm, 3.2_mm}, material::en_aw_6082_t6()}; }
Bar stiff_bar() { return {RoundTube{168.3_mm, 10.0_mm}, material::s355h()}; }

/// Eight bays, modules of four.
BoxGirder box(const Bar& cross = brace_bar()) {
  BoxGirder b = small_box(8, chord_bar(), cross, brace_bar());
  b.modules = {.bays_each = 4};
  return b;
}

double pull(const Response& r, std::size_t station, std::size_t chord) { return r.splice(station)[chord].N; }

}  // namespace

TEST_CASE("a rigid connector changes nothing, and a spring gives way by N/k") {
  BoxGirder g = box();
  const std::vector<Action> load{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0_kN_per_m),
                                 point_load(ChordOf::top_left, 1.3, {0, -400, 0})};
  const Analysis plain{g};
  const Response before = plain.solve(load);
  g.modules.connector = plates();
  const Analysis same{g};
  const Response r = same.solve(load);
  for (std::size_t i = 0; i < before.answer().motions.size(); ++i)
    REQUIRE(r.answer().motions[i] == before.answer().motions[i]);

  // Virtual work: the unit load's forces in the rigid girder do work on the loads' deformations in the yielding one:
  // w = w_rigid + sum over the four connectors of n N/k. Exact, as the rest of the two girders is the same.
  const double k = 40e6;
  std::get<BoltedEndPlate>(g.modules.connector).fit.axial = k;
  const Analysis soft{g};
  const Response yielding = soft.solve(load);
  const Response unit = plain.solve({point_load(ChordOf::bottom_left, 1.5, 1.0)});
  double more = 0;
  for (std::size_t c = 0; c < 4; ++c) more += pull(unit, 4, c) * pull(yielding, 4, c) / k;
  const auto down = [](const Response& of) { return -of.deflection(ChordOf::bottom_left, 1.5).z; };
  CHECK(more > 0.05 * down(before));
  CHECK(close(down(yielding) - down(before), more, 1e-8));
}

TEST_CASE("all six springs of a connector give way by their force over their stiffness") {
  // Virtual work again, now with every spring and under loads that bend, shear and twist the girder:
  // w = w_rigid + sum over connectors and components of (unit load's force) (force)/k
  BoxGirder g = box();
  const Analysis plain{with_splice_gaps(g.girder(), {0.1, 0.01})};
  BoltedEndPlate c = plates();
  c.fit = {0.0, 60e6, 5e6, 8e6, 3e3, 20e3, 15e3};
  g.modules.connector = c;
  const Analysis soft{with_splice_gaps(g.girder(), {0.1, 0.01})};
  CHECK(soft.solver().path() != SolvePath::sparse);  // springs leave the chain of stations a chain
  const std::vector<Action> load{point_load(ChordOf::bottom_left, 1.3, Vec3<>{0, -1500, -4000}),
                                 point_load(ChordOf::top_right, 2.7, Vec3<>{200, 900, -300})};
  const Response before = plain.solve(load), after = soft.solve(load);
  const double k[] = {60e6, 5e6, 8e6, 3e3, 20e3, 15e3};  // in the order of the cut forces
  for (const Vec3<>& along : {Vec3<>{0, 0, -1}, Vec3<>{0, -1, 0}}) {
    const Response unit = plain.solve({point_load(ChordOf::top_left, 1.75, along)});
    double more = 0;
    for (std::size_t chord = 0; chord < 4; ++chord)
      for (std::size_t i = 0; i < 6; ++i) more += unit.splice(5)[chord][i] * after.splice(5)[chord][i] / k[i];
    const auto moved = [&](const Response& r) { return dot(r.deflection(ChordOf::top_left, 1.75), along); };
    CHECK(close(moved(after) - moved(before), more, 1e-7));
    CHECK(std::abs(more) > 0.02 * std::abs(moved(before)));
  }
}

TEST_CASE("a pin turns: no moment there, and shear times its distance at the end frames") {
  BoxGirder g = box();
  g.modules.connector = coupler();
  const double s = 0.12, e = 0.02;
  const Girder gapped = with_splice_gaps(g.girder(), {s, e});
  REQUIRE(gapped.stations.size() == 11);
  REQUIRE(gapped.splices == std::vector<std::size_t>{5});
  CHECK(gapped.stations[4] == doctest::Approx(1.94));
  CHECK(gapped.stations[5] == doctest::Approx(2.02));
  CHECK(gapped.stations[6] == doctest::Approx(2.06));
  const Analysis a{gapped};
  const Response r =
      a.solve({point_load(ChordOf::bottom_left, 1.0, 4.0_kN), point_load(ChordOf::bottom_right, 1.0, 4.0_kN)});
  double shear = 0;
  for (std::size_t c = 0; c < 4; ++c) {
    const CutForces left = r.member(r.model().chord_member(4, c)).forces(fraction{0}), pin = r.splice(5)[c],
                    right = r.member(r.model().chord_member(5, c)).forces(fraction{1}, CutSide::before);
    shear += pin.Vz;
    CHECK(std::abs(pin.My) < 1e-6);
    // dMy/dx = +Vz: -Vz (s/2 + e) before the pin, +Vz (s/2 - e) beyond it
    CHECK(close(left.My, -pin.Vz * (s / 2 + e), 1e-8));
    CHECK(close(right.My, pin.Vz * (s / 2 - e), 1e-8));
  }
  CHECK(close(std::abs(shear), 8e3 * 1.0 / 4.0, 1e-9));  // statics: P a/L beyond the load
  // an upright pin turns the other way
  std::get<PinCoupler>(g.modules.connector).axis = PinAxis::upright;
  const Analysis upright{with_splice_gaps(g.girder(), {s, e})};
  const Response u =
      upright.solve({line_load({ChordOf::top_left, ChordOf::bottom_left}, {0, -900, -900}, {0, -900, -900})});
  for (std::size_t c = 0; c < 4; ++c) {
    CHECK(std::abs(u.splice(5)[c].Mz) < 1e-6);
    CHECK(std::abs(u.splice(5)[c].My) > 0.1);
  }
}

TEST_CASE("nothing but the chords crosses a splice gap") {
  BoxGirder g = box();
  g.diaphragms = diaphragms_at({0, 4, 8}, brace_bar());
  const Girder gapped = with_splice_gaps(g.girder(), {0.1, 0.0});
  const GirderModel m = model_of(gapped);
  for (const FaceMembers& f : m.faces) {
    CHECK(f.cross_members[4].size() == 1);
    CHECK(f.cross_members[5].empty());
    CHECK(f.cross_members[6].size() == 1);
    CHECK(f.panels[4].diagonals.empty());
    CHECK(f.panels[5].diagonals.empty());
  }
  // diaphragms: at both ends and on both sides of the gap
  for (const std::size_t i : m.diaphragm_members) {
    const int at = m.frame.members[i].address.station;
    CHECK((at == 0 || at == 4 || at == 6 || at == 10));
  }
  CHECK(m.diaphragm_members.size() == 4);
  // the panels on both sides alternate as they did
  const auto rises = [&](const GirderModel& of, std::size_t panel) {
    const Member& d = of.frame.members[of.faces[1].panels[panel].diagonals[0]];
    return of.frame.nodes[d.to].at.z > of.frame.nodes[d.from].at.z;
  };
  const GirderModel old = model_of(g.girder());
  for (std::size_t b = 0; b < 8; ++b) CHECK(rises(m, b < 4 ? b : b + 2) == rises(old, b));

  const auto refused = [&](const SpliceGap& gap, const std::string& words) {
    try {
      (void)with_splice_gaps(g.girder(), gap);
      FAIL("accepted");
    } catch (const BadDescription& e) {
      CHECK(std::string(e.what()).find(words) != std::string::npos);
    }
  };
  refused({0.0, 0.0}, "length is 0");
  refused({0.1, 0.05}, "outside it");
  refused({0.5, 0.0}, "as long as the bay");
  g.faces.top = open(brace_bar());
  g.faces.top = g.faces.top.spanning(2);
  refused({0.1, 0.0}, "top face");
}

TEST_CASE("the panel across a splice bends its chords by V s/2") {
  // 8 bays, load left of the splice at 2 m: V = P a/L = 8 kN * 1/4 beyond it. Four chords, s = 0.2 m: V/4 * s/2 = 50 Nm
  // at each end, one way and the other; with stiff end frames also end by end. The girder's moment is 4 kNm there: its
  // own part in a chord, M Io/I = 4000 * 3.35e-7/(4 * 8.69e-4 * 0.25^2) = 6.2 Nm, is on both ends alike and drops out.
  BoxGirder g = box(stiff_bar());
  g.diaphragms = diaphragms_at({0, 4, 8}, stiff_bar());
  const Analysis a{with_splice_gaps(g.girder(), {0.2, 0.0})};
  const Response r =
      a.solve({point_load(ChordOf::bottom_left, 1.0, 4.0_kN), point_load(ChordOf::bottom_right, 1.0, 4.0_kN)});
  for (std::size_t c = 0; c < 4; ++c) {
    const double left = r.member(r.model().chord_member(4, c)).forces(fraction{0}).My,
                 right = r.member(r.model().chord_member(5, c)).forces(fraction{1}, CutSide::before).My;
    CHECK(close((left - right) / 2, -50.0, 0.02));
    CHECK(close(std::abs(left), 50.0, 0.2));
    CHECK(close(std::abs(right), 50.0, 0.2));
    CHECK(left * right < 0);
  }
  int rows = 0;
  const auto check = [&](const Response& of, double up, double side) {
    for (const HandCheck& row : hand_checks(of).rows) {
      if (row.quantity.find("across a splice") == std::string::npos) continue;
      ++rows;
      INFO(row.quantity << ": " << row.numbers << " = " << row.closed_form << ", solver " << row.solver << ", "
                        << row.reason);
      CHECK(row.valid);
      CHECK(row.agrees());
      const double hand = row.quantity.find("up") != std::string::npos ? up : side;
      CHECK(std::abs(row.solver - hand) < 1e-6 * (std::abs(hand) + 1));
    }
  };
  check(r, -50.0, 0.0);
  // wind along y as well, and a pin off the middle: V s is statics whatever the joint does; 0.6 kN/m over 4 m sideways
  // has no shear at mid-span; 300 N at 1 m there: V = 75 N, 75/4 * 0.2/2 = 1.875 Nm
  g.modules.connector = coupler();
  const Analysis pinned{with_splice_gaps(g.girder(), {0.2, 0.03})};
  check(pinned.solve({point_load(ChordOf::bottom_left, 1.0, Vec3<>{0, -300, -8000})}), -50.0, -1.875);
  CHECK(rows == 4);
  // on three hoists V is the frame's own
  g.supports = hung_at({0.0, 3.0, 4.0});
  const Analysis three{with_splice_gaps(g.girder(), {0.2, 0.03})};
  const Response continuous =
      three.solve({point_load(ChordOf::bottom_left, 1.0, 4.0_kN), point_load(ChordOf::bottom_right, 1.0, 4.0_kN)});
  double cut = 0;
  for (const CutForces& f : continuous.splice(5)) cut += f.Vz;
  CHECK(std::abs(cut) > 1000.0);
  // sideways nothing acts but what one-sided guys and alternating diagonals bring about
  double side = 0;
  for (const HandCheck& row : hand_checks(continuous).rows)
    if (row.quantity.find("across a splice, sideways") != std::string::npos) side = row.solver;
  CHECK(std::abs(side) < 1e-3);
  check(continuous, -cut / 4 * 0.1, side);
  // without a gap there is no such panel, and no row
  const Analysis none{g};
  for (const HandCheck& row : hand_checks(none.solve({self_weight()})).rows)
    CHECK(row.quantity.find("across") == std::string::npos);
}

TEST_CASE("slack kinks the girder at joints that pull") {
  BoxGirder g = box(stiff_bar());
  g.bays = 16;
  g.modules = {0, {6}};
  BoltedEndPlate loose = plates();
  loose.fit.slack = 1_mm;
  g.modules.connector = loose;
  const std::vector<Action> load{line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1.0_kN_per_m)};
  const Analysis a{g};
  const SlackSag sag = slack_sag(a.solve(load));
  CHECK(sag.opened == 2);  // the bottom chords; the top ones are pressed together
  // Kinematics: with both bottom chords s longer in bay 6 the braced sides turn about the top joint where the bay's
  // diagonal meets, x = 2.5 m of L = 8 m, by s/h = 2 mrad. The chords' own bending resists a little (E 4 Ich against
  // E Ach h^2, 1 to 2 %).
  const double kink = 1e-3 / 0.5;
  CHECK(close(-sag.at_station[6].z, kink * 2.5 * (8.0 - 3.0) / 8.0, 0.03));
  CHECK(close(-sag.at_station[12].z, kink * 2.5 * (8.0 - 6.0) / 8.0, 0.03));
  CHECK(close(sag.greatest(), kink * 2.5 * 5.5 / 8.0, 0.03));
  // across a gap the kink is in the gap: (s/h) x (L - x)/L at x = 3 m
  const Analysis gapped{with_splice_gaps(g.girder(), {0.1, 0.0})};
  const SlackSag in_gap = slack_sag(gapped.solve(load));
  CHECK(close(-in_gap.at_station[7].z, kink * 3.0 * 5.0 / 8.0, 0.03));
  for (const Reaction& r : sag.reactions)
    for (const double v : r.value) CHECK(std::abs(v) < 1e-5);  // held no more than needed
  // Virtual work, exact: s times the forces that a unit load at the place brings into the joints that opened.
  for (const std::size_t at : {std::size_t{3}, std::size_t{6}, std::size_t{11}}) {
    const double x = 0.5 * static_cast<double>(at);
    std::vector<Action> unit;
    for (const ChordOf c : {ChordOf::bottom_left, ChordOf::bottom_right, ChordOf::top_left, ChordOf::top_right})
      unit.push_back(point_load(c, x, 0.25));
    const Response u = a.solve(unit);
    CHECK(close(-sag.at_station[at].z, 1e-3 * (pull(u, 6, 0) + pull(u, 6, 1)), 1e-7));
  }
  // lifted instead, the top chords open, and the girder bows up by as much
  const SlackSag up = slack_sag(a.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, -1.0_kN_per_m)}));
  CHECK(up.opened == 2);
  CHECK(up.at_station[6].z > 0.9 * kink * 2.5 * 5.0 / 8.0);
  CHECK(up.greatest() < 1e-4);
  // on three supports the joint over a span cannot kink freely: the supports answer, in balance
  g.supports = hung_at({0.0, 4.0, 8.0});
  const Analysis three{g};
  const SlackSag held = slack_sag(three.solve(load));
  double sum = 0, most = 0;
  for (const Reaction& r : held.reactions) {
    sum += r.value[2];
    most = std::max(most, std::abs(r.value[2]));
  }
  CHECK(most > 100.0);
  CHECK(std::abs(sum) < 1e-6 * most);
}

TEST_CASE("connectors that mean nothing are refused") {
  const auto refused = [](const Connector& c, const std::string& words) {
    BoxGirder g = box();
    g.modules.connector = c;
    try {
      (void)g.girder();
      FAIL("accepted");
    } catch (const BadDescription& e) {
      INFO(e.what());
      CHECK(std::string(e.what()).find(words) != std::string::npos);
    }
  };
  PinCoupler p = coupler();
  p.hole = 15_mm;
  refused(p, "splice, pin and fork: the hole is smaller");
  p = coupler();
  p.fit.shear_z = 0;
  refused(p, "across the chord");
  p = coupler();
  p.fit.slack = -1;
  refused(p, "slack");
  BoltedEndPlate e = plates();
  e.bolts = 2;
  refused(e, "three bolts");
  e.bolts = 30;
  refused(e, "overlap");
  e.bolts = 4;
  e.bolt_circle = 18_mm;  // 14.1 mm along the circle, 12.7 mm straight across
  refused(e, "overlap");
  e.bolt_circle = 95_mm;
  e.diameter = 105_mm;
  refused(e, "over the edge");
  Spigot s = spigot();
  CHECK_NOTHROW(validate(Connector(s), "splice"));
  s.wall = 26_mm;
  refused(s, "wall");
  s.wall = 0;
  s.pins = 9;
  refused(s, "do not fit");
  CHECK_THROWS_AS((void)metric_bolt(13_mm, BoltClass::c8_8), BadDescription);
}

TEST_CASE("bolts have the standard's stress areas") {
  // EN ISO 898-1 Table 4 (values from memory): nominal stress areas, coarse thread, mm2
  const double table[][2] = {{8, 36.6}, {10, 58.0}, {12, 84.3}, {16, 157}, {20, 245}, {24, 353}, {27, 459}, {30, 561}};
  for (const auto& row : table) {
    const double area = metric_bolt(row[0] * mm, BoltClass::c8_8).stress_area / (mm * mm);
    CHECK(std::abs(area - row[1]) <= (row[1] < 100 ? 0.051 : 0.51));  // rounded to three digits there
  }
}
