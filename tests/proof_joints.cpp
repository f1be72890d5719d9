// SPDX-License-Identifier: MIT
// Joints and welds in a proof: every row beside a hand calculation from the frame's forces, and what it must not pass.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/rows.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using verify::Check;
using verify::Proof;
using verify::Row;

verify::Basis with_joints(double throat = 0.0) {
  verify::Basis basis;
  basis.joints = {.checked = true, .throat = throat};
  return basis;
}

const material::Material& steel() {
  static const material::Material m = material::s235h();
  return m;
}
Bar chord(const material::Material& m = steel()) { return {RoundTube{76.1_mm, 5.0_mm}, m}; }
Bar tube(const material::Material& m = steel()) { return {RoundTube{42.4_mm, 4.0_mm}, m}; }

LadderGirder ladder(const Face& web, const Bar& chords = chord()) {
  return {.bays = 4, .bay_length = 0.5_m, .depth = 0.5_m, .chord = chords, .web = web, .supports = cantilever()};
}

std::vector<Row> rows_of(const Proof& p, Check c) {
  std::vector<Row> out;
  for (const Row& r : p.rows())
    if (r.check == c) out.push_back(r);
  return out;
}

/// Greatest compression in the 76.1 x 5 chord on both sides of the joint that a row tells of, over f.
double compression(const Response& r, const Row& row, double f) {
  const double A = pi / 4 * (0.0761 * 0.0761 - 0.0661 * 0.0661);
  const double W = pi / 32 * (std::pow(0.0761, 4) - std::pow(0.0661, 4)) / 0.0761;
  const Member& bar = r.model().frame.members[row.member];
  const std::size_t node = row.x == 0.0 ? bar.from : bar.to;
  double worst = 0;
  for (std::size_t m = 0; m < r.model().frame.members.size(); ++m) {
    const Member& c = r.model().frame.members[m];
    if (c.address.role != Role::chord || (c.from != node && c.to != node)) continue;
    const CutForces at = r.member(m).forces(fraction{c.from == node ? 0.0 : 1.0});
    worst = (std::max)(worst, std::hypot(at.My, at.Mz) / W - at.N / A);
  }
  return worst / f;
}

/// Whether the proof fails because of a bar outside the scope whose reason begins so.
bool fails_for(const Proof& p, const std::string& reason) {
  CHECK(!p.passes());
  for (const Row& row : p.outside_scope())
    if (std::string(row.reason).find(reason) == 0) return true;
  return false;
}

}  // namespace

TEST_CASE("joints of an open face: each row beside a hand calculation") {
  // T joints, 42.4 x 4 on 76.1 x 5 in S235, EN 1993-1-8 Tables 7.2 and 7.5: beta = 0.557162, gamma = 7.61,
  // f t0² = 5875 N. N = 5875 7.61^0.2 (2.8 + 14.2 beta²); moments: face 4.85 5875 d1 sqrt(gamma) beta and
  // 5875 d1 2.7/(1 - 0.81 beta), both times k_p; punching 235/sqrt(3) 5 d1² for either.
  const Analysis analysis{ladder(open(tube()))};
  const Response r = analysis.solve(
      {point_load(ChordOf::top, 1.7_m, Vec3<>{-3e3, 0, -2e3}), point_load(ChordOf::bottom, 2.0_m, Vec3<>{0, 300, 0})});
  const Proof proof = verify::by_material(r, with_joints());
  const std::vector<Row> joints = rows_of(proof, Check::joint);
  REQUIRE(joints.size() == 8);  // both ends of four cross members; the fifth lies between clamps
  const double d1 = 0.0424, beta = d1 / 0.0761, gamma = 7.61, f = 235e6, ft2 = f * 0.005 * 0.005;
  double most_n_p = 0, most_op = 0;
  for (const Row& row : joints) {
    const double n_p = compression(r, row, f), k_p = 1 - 0.3 * n_p * (1 + n_p);
    const double punching = f / std::sqrt(3.0) * 0.005 * d1 * d1;
    const double N_Rd = k_p * ft2 * std::pow(gamma, 0.2) * (2.8 + 14.2 * beta * beta);
    const double ip_Rd = (std::min)(punching, k_p * ft2 * d1 * 4.85 * std::sqrt(gamma) * beta);
    const double op_Rd = (std::min)(punching, k_p * ft2 * d1 * 2.7 / (1 - 0.81 * beta));
    // Mz bends a bar of a face in its plane, My out of it.
    const CutForces at = r.member(row.member).forces(fraction{row.x == 0.0 ? 0.0 : 1.0});
    const double u = std::abs(at.N) / N_Rd + std::pow(at.Mz / ip_Rd, 2) + std::abs(at.My) / op_Rd;
    CHECK(row.utilisation == Approx(u).epsilon(1e-9));
    CHECK(number(row, "n_p") == Approx(n_p).epsilon(1e-9));
    most_n_p = (std::max)(most_n_p, n_p);
    most_op = (std::max)(most_op, std::abs(at.My) / op_Rd);
  }
  CHECK(most_n_p > 0.05);  // the chord's bending counts
  CHECK(most_op > 0.01);
  CHECK(number(joints[0], "M_ip,Rd") == Approx(f / std::sqrt(3.0) * 0.005 * d1 * d1));
}

TEST_CASE("joints of two diagonals: the lesser of Y and K, and forces across the chord") {
  // Diagonals at 45 degrees, gap 76.1 - 42.4 sqrt(2) = 16.137 mm = 3.22744 t0. Y: 7.61^0.2 (2.8 + 14.2 beta²) =
  // 10.8179; K: k_g = 7.61^0.2 (1 + 0.024 7.61^1.2/(1 + exp(1.61372 - 1.33))), times 1.8 + 10.2 beta.
  const Analysis analysis{ladder(braced(alternating, tube()))};
  // the second load turns the shear about at a joint of two diagonals: there both pull or both push
  const Response r = analysis.solve(
      {point_load(ChordOf::top, 2.0_m, Vec3<>{0, 0, -2e3}), point_load(ChordOf::bottom, 1.0_m, Vec3<>{0, 0, 5e3})});
  const Proof proof = verify::by_material(r, with_joints());
  CHECK(proof.outside_scope().empty());
  const double beta = 0.0424 / 0.0761, s = std::sqrt(0.5), ft2 = 235e6 * 0.005 * 0.005;
  const double k_g = std::pow(7.61, 0.2) * (1 + 0.024 * std::pow(7.61, 1.2) /
                                                    (1 + std::exp(0.5 * (76.1 - 42.4 * std::sqrt(2.0)) / 5 - 1.33)));
  const double Y = ft2 / s * std::pow(7.61, 0.2) * (2.8 + 14.2 * beta * beta), K = ft2 / s * k_g * (1.8 + 10.2 * beta);
  int pairs = 0, together = 0;
  for (const Row& row : rows_of(proof, Check::joint)) {
    const Member& bar = r.model().frame.members[row.member];
    const std::size_t node = row.x == 0.0 ? bar.from : bar.to;
    double same = 0, most = 0;
    int here = 0;
    const double N = r.member(row.member).forces(fraction{0.5}).N;
    for (std::size_t m = 0; m < r.model().frame.members.size(); ++m) {
      const Member& other = r.model().frame.members[m];
      if (other.address.role != Role::diagonal || (other.from != node && other.to != node)) continue;
      ++here;
      const double own = r.member(m).forces(fraction{0.5}).N;
      if (own * N > 0) same += std::abs(own);
      if (own * N > 0) most = (std::max)(most, std::abs(own));
    }
    pairs += here == 2 ? 1 : 0;
    if (most > 1.000001 * std::abs(N)) same = std::abs(N);  // the other one answers for both
    together += same > 1.01 * std::abs(N) ? 1 : 0;
    const double n_p = compression(r, row, 235e6), k_p = 1 - 0.3 * n_p * (1 + n_p);
    const double N_Rd = k_p * (here == 2 ? (std::min)(Y, K) : Y);
    CHECK(row.utilisation == Approx(same / N_Rd).epsilon(1e-6));
  }
  CHECK(pairs >= 4);
  CHECK(together >= 1);
  CHECK(Y != Approx(K).epsilon(0.01));
}

TEST_CASE("two diagonals and a post between them") {
  // 60.3 x 5 on 76.1 x 5: both diagonals lie on the post by 34.74/85.28 = 41 %. Diagonal and post: k_g of -34.74
  // mm, 2.2 of it above 1. The two diagonals, kept apart by the post, count with the least gap, 10 mm, and that
  // governs: k_g = 7.61^0.2 (1 + 0.024 7.61^1.2/(1 + exp(1 - 1.33))) times 1.8 + 10.2 beta, below Y's 2.8 + 14.2 beta².
  const Bar wide{RoundTube{60.3_mm, 5.0_mm}, steel()};
  const Analysis analysis{ladder(braced(alternating, wide, wide))};
  const Response r = analysis.solve({point_load(ChordOf::top, 2.0_m, Vec3<>{0, 0, -2e3})});
  const double beta = 60.3 / 76.1, ft2 = 235e6 * 0.005 * 0.005, power = std::pow(7.61, 0.2);
  const auto K = [&](double g) {
    return power * (1 + 0.024 * std::pow(7.61, 1.2) / (1 + std::exp(0.5 * g - 1.33))) * (1.8 + 10.2 * beta);
  };
  const double Y = power * (2.8 + 14.2 * beta * beta);
  const double lapped = (38.05 - 30.15 * std::sqrt(2.0) - 30.15) / 5;
  CHECK(K(2) < Y);
  CHECK(Y < K(lapped));
  int three = 0, two = 0;
  for (const Row& row : rows_of(verify::by_material(r, with_joints()), Check::joint)) {
    const Member& bar = r.model().frame.members[row.member];
    const std::size_t node = row.x == 0.0 ? bar.from : bar.to;
    int here = 0;
    for (const Member& m : r.model().frame.members)
      here += m.address.role != Role::chord && (m.from == node || m.to == node) ? 1 : 0;
    const double factor = number(row, "N_Rd") / number(row, "k_p") * number(row, "sin(theta)") / ft2;
    if (bar.address.role != Role::diagonal || here == 1) continue;
    CHECK(factor == Approx(here == 3 ? K(2) : Y).epsilon(1e-9));
    (here == 3 ? three : two) += 1;
  }
  CHECK(three >= 2);
  CHECK(two >= 1);
}

TEST_CASE("bars in a second plane: nine tenths") {
  const auto rd = [](const auto& girder) {
    const Analysis analysis{girder};
    const Response r = analysis.solve({point_load(ChordOf::bottom_left, 1.0_m, Vec3<>{0, 0, -1.0})});
    const Proof p = verify::by_material(r, with_joints());
    for (const Row& row : rows_of(p, Check::joint))
      if (row.address.role == Role::cross_member) return number(row, "N_Rd") / number(row, "k_p");
    return 0.0;
  };
  const auto side = open(tube());
  BoxGirder box{.bays = 4,
                .bay_length = 0.5,
                .width = 0.5,
                .depth = 0.5,
                .chord = chord(),
                .faces = {.top = side, .bottom = side, .left = side, .right = side},
                .supports = simply_supported()};
  const double beta = 0.0424 / 0.0761;
  CHECK(rd(box) == Approx(0.9 * 5875 * std::pow(7.61, 0.2) * (2.8 + 14.2 * beta * beta)).epsilon(1e-9));
}

TEST_CASE("the chord in the gap between braces of two planes") {
  // Table 7.7: (N0/N_pl,0)² + (V0/V_pl,0)² with what the chord and the bars beyond the gap bring to it. 76.1 x 5 in
  // S235: A = 1116.84 mm², N_pl = 262.457 kN, V_pl = 235/sqrt(3) 2 A/pi = 96.4672 kN.
  const auto side = braced(alternating, tube());
  const BoxGirder box{.bays = 6,
                      .bay_length = 0.5,
                      .width = 0.5,
                      .depth = 0.5,
                      .chord = chord(),
                      .faces = {.top = side, .bottom = side, .left = side, .right = side},
                      .supports = cantilever()};
  const Analysis analysis{box};
  const Response r = analysis.solve({point_load(ChordOf::top_left, 3.0_m, Vec3<>{0, 1e3, -2e3})});
  const std::vector<Member>& bars = r.model().frame.members;
  int seen = 0;
  for (const Row& row : rows_of(verify::by_material(r, with_joints()), Check::joint)) {
    if (std::string(row.clause) != "7.4.3 Table 7.7") continue;
    CHECK(number(row, "N_pl,0,Rd") == Approx(262.457e3).epsilon(1e-5));
    CHECK(number(row, "V_pl,0,Rd") == Approx(96.4672e3).epsilon(1e-5));
    const std::size_t node = row.x == 0.0 ? bars[row.member].from : bars[row.member].to;
    const Vec3<> here = r.model().frame.nodes[node].at;
    if (here.x == 0.0 || here.x > 2.9) continue;  // supported or loaded
    Vec3<> force{};                               // of all that lies beyond the joint, x pointing along the girder
    for (std::size_t m = 0; m < bars.size(); ++m) {
      if (bars[m].from != node && bars[m].to != node) continue;
      const std::size_t other = bars[m].from == node ? bars[m].to : bars[m].from;
      if (r.model().frame.nodes[other].at.x < here.x) continue;
      const bool start = bars[m].from == node;
      const CutForces f = r.member(m).forces(fraction{start ? 0.0 : 1.0});
      force += (start ? 1.0 : -1.0) * r.member(m).axes().to_global(f.force());
    }
    CHECK(number(row, "N_0,Ed") == Approx(std::abs(force.x)).epsilon(1e-6));
    CHECK(number(row, "V_0,Ed") == Approx(std::hypot(force.y, force.z)).epsilon(1e-6));
    ++seen;
  }
  CHECK(seen > 5);
}

TEST_CASE("joints are checked only where asked for, and change no other row") {
  const Analysis analysis{ladder(open(tube()))};
  const Response r = analysis.solve({point_load(ChordOf::top, 2.0_m, Vec3<>{0, 0, -2e3})});
  const Proof without = verify::by_material(r), with = verify::by_material(r, with_joints(3.0_mm));
  std::vector<Row> rest;
  for (const Row& row : with.rows())
    if (row.check != Check::joint && row.check != Check::weld) rest.push_back(row);
  REQUIRE(rest.size() == without.rows().size());
  for (std::size_t i = 0; i < rest.size(); ++i) {
    CHECK(rest[i].utilisation == without.rows()[i].utilisation);
    CHECK(rest[i].check == without.rows()[i].check);
  }
  CHECK(rows_of(with, Check::joint).size() == 8);
  CHECK(rows_of(with, Check::weld).size() == 8);
  const auto leaves_out = [](const Proof& p, const std::string& begins) {
    for (const std::string& s : p.not_covered())
      if (s.find(begins) == 0) return true;
    return false;
  };
  CHECK(leaves_out(without, "Joints, welds"));
  CHECK_FALSE(leaves_out(with, "Joints"));
  CHECK_FALSE(leaves_out(with, "Welds"));
  CHECK(leaves_out(verify::by_material(r, with_joints()), "Welds"));
  verify::Basis halfway;
  halfway.joints.throat = 3.0_mm;
  CHECK_THROWS_AS(verify::by_material(r, halfway), BadDescription);
}

TEST_CASE("welds: line loads of the bar's end on its own throat") {
  // sqrt(2 n² + 3 v²)/a against 360/(0.8 1.25) = 360 MPa (S235), d = 42.4 mm, a = 3 mm.
  const Analysis analysis{ladder(open(tube()))};
  const Response r = analysis.solve({point_load(ChordOf::top, 1.7_m, Vec3<>{-3e3, 400, -2e3})});
  for (const Row& row : rows_of(verify::by_material(r, with_joints(3.0_mm)), Check::weld)) {
    const CutForces at = r.member(row.member).forces(fraction{row.x == 0.0 ? 0.0 : 1.0});
    const double d = 0.0424;
    const double n = std::abs(at.N) / (pi * d) + 4 * std::hypot(at.My, at.Mz) / (pi * d * d);
    const double v = 2 * std::hypot(at.Vy, at.Vz) / (pi * d) + 2 * std::abs(at.T) / (pi * d * d);
    CHECK(row.utilisation == Approx(std::sqrt(2 * n * n + 3 * v * v) / 0.003 / 360e6).epsilon(1e-9));
    CHECK(number(row, "a of full strength") == Approx(0.923167 * 0.004).epsilon(1e-5));  // in S235 0.92 t
  }
}

TEST_CASE("twice the load: the joints' utilisation more than doubles, at mirrored places it is the same") {
  const Analysis analysis{ladder(open(tube()))};
  const auto worst = [&](double x, double P) {
    double most = 0;
    const Response r = analysis.solve({point_load(ChordOf::top, x, Vec3<>{0, 0, -P})});
    for (const Row& row : rows_of(verify::by_material(r, with_joints()), Check::joint))
      most = (std::max)(most, row.utilisation);
    return most;
  };
  CHECK(worst(1.3, 4e3) > 2.0 * worst(1.3, 2e3));
  CHECK(worst(1.3, -2e3) > 0.0);
  // a ladder on both ends, loaded 0.7 m from either
  const auto on_two = [](double x) {
    LadderGirder g = ladder(open(tube()));
    g.supports = simply_supported();
    const Analysis a{g};
    double most = 0;
    const Response r = a.solve({point_load(ChordOf::top, x, Vec3<>{0, 0, -2e3})});
    for (const Row& row : rows_of(verify::by_material(r, with_joints()), Check::joint))
      most = (std::max)(most, row.utilisation);
    return most;
  };
  CHECK(on_two(0.7) == Approx(on_two(1.3)).epsilon(1e-3));
}

TEST_CASE("what the joint clauses do not cover fails the proof, with its reason") {
  const auto proof = [](const LadderGirder& g, double throat = 0.0) {
    const Analysis analysis{g};
    return verify::by_material(analysis.solve({point_load(ChordOf::top, 2.0_m, Vec3<>{0, 0, -1e3})}),
                               with_joints(throat));
  };
  CHECK(proof(ladder(open(tube()))).passes());
  const Bar thick{RoundTube{26.9_mm, 3.2_mm}, steel()}, alloy{RoundTube{42.4_mm, 4.0_mm}, material::en_aw_6082_t6()};
  const Bar square{SquareHollow{60.0_mm, 4.0_mm}, steel()};
  CHECK(fails_for(proof(ladder(open(thick))), "joint: the brace's diameter is below 10 times"));
  CHECK(fails_for(proof(ladder(open(tube()), square)), "joint: chord or brace is not a round tube"));
  CHECK(fails_for(proof(ladder(open(alloy))), "joint: chord and brace are of different metals"));
  const LadderGirder k = ladder(braced(k_braced, tube(), tube()));
  CHECK(fails_for(proof(k), "joint: it ends on another bar"));
  CHECK(fails_for(proof(k), "joint: brace and chord meet at less than 30 degrees"));  // 0.25 m up in 0.5 m
  // Post and diagonal: 38.05 - 29.98 - 21.2 = -13.13 mm, 22 % of the diagonal's footprint. With 10 mm of eccentricity
  // -3.13 mm; with 20 mm a gap of 6.87 mm, below 8 mm; with 25 mm there is room.
  const auto with_gap = [&](double gap) { return proof(ladder(braced(mirrored_towards, tube(), tube(), {}, gap))); };
  CHECK(fails_for(with_gap(0.0), "joint: the braces overlap by less than 25 %"));
  CHECK(fails_for(with_gap(10.0_mm), "joint: the braces overlap by less than 25 %"));
  CHECK(fails_for(with_gap(20.0_mm), "joint: the gap between the braces is below"));
  CHECK(with_gap(25.0_mm).passes());
  // A diaphragm's diagonal meets the chord at 45 degrees to both faces.
  const auto side = open(tube());
  const BoxGirder box{.bays = 4,
                      .bay_length = 0.5,
                      .width = 0.5,
                      .depth = 0.5,
                      .chord = chord(),
                      .faces = {.top = side, .bottom = side, .left = side, .right = side},
                      .diaphragms = {.bar = tube(), .at = {2}},
                      .supports = cantilever()};
  const Analysis of_box{box};
  const Proof across =
      verify::by_material(of_box.solve({point_load(ChordOf::top_left, 2.0_m, Vec3<>{0, 0, -1e3})}), with_joints());
  CHECK(fails_for(across, "joint: bars meet the chord in planes that are not 60 to 90"));
  // a bar with two such ends is one bar, and the fifth is outside without a force
  CHECK(proof(ladder(open(thick))).verdict().find("not proved: 5 bars are outside") == 0);
  // filler metal for an alloy that the table does not name
  const material::Material m6063 = material::en_aw_6063_t6(), m6082 = material::en_aw_6082_t6();
  CHECK(fails_for(proof(ladder(open(tube(m6063)), chord(m6063)), 3.0_mm), "weld: a strength is not known"));
  CHECK(proof(ladder(open(tube(m6082)), chord(m6082)), 3.0_mm).passes());
  CHECK(fails_for(proof(ladder(open(tube())), 2.9_mm), "weld: the throat is below 3 mm"));
}
