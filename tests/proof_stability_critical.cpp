// SPDX-License-Identifier: MIT
// Critical loads of compressed chord pairs: closed forms beside the eigenvalue problems of whole frames and of beams.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <Eigen/Core>
#include <Eigen/Eigenvalues>

#include <baywork/verify.hpp>

#include "support/dense_buckling.hpp"
#include "support/rows.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;

Bar tube(double d, double t) { return {RoundTube{d, t}, material::s355h()}; }

std::vector<verify::PairColumn> columns(const Analysis& a) {
  const verify::Basis basis;
  return verify::detail::ColumnMaker(a, basis, std::vector<bool>(a.model().frame.members.size(), false)).make();
}

/// 1 N of compression in two chords together, `pull` of tension in the others.
std::vector<double> flanges(const GirderModel& m, std::size_t first, std::size_t second, double pull) {
  std::vector<double> N(m.frame.members.size(), 0.0);
  for (std::size_t b = 0; b < m.girder.bays(); ++b)
    for (std::size_t c = 0; c < m.girder.chords.size(); ++c)
      N[m.chord_member(b, c)] = c == first || c == second ? -0.5 : 0.5 * pull;
  return N;
}

/// A flat ladder kept in its plane, ends held sideways.
Frame in_plane_ladder(const Analysis& a) {
  Frame f = a.model().frame;
  f.supports.clear();
  for (std::size_t i = 0; i < f.nodes.size(); ++i) f.fix(i, {Motion::uz, Motion::rx, Motion::ry});
  f.fix(0, {Motion::uy});
  f.fix(a.model().chord_node(a.girder().bays(), 0), {Motion::uy});
  f.fix(a.model().chord_node(a.girder().bays() / 2, 0), {Motion::ux});
  return f;
}

BoxGirder box(std::size_t bays, const Face& flange, const Face& side) {
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.6,
          .chord = tube(60.3_mm, 4.0_mm),
          .faces = {.top = flange, .bottom = flange, .left = side, .right = side},
          .diaphragms = end_diaphragms(tube(60.3_mm, 4.0_mm)),
          .supports = simply_supported()};
}

/// Length of the column with hinged ends that buckles at the load of a beam from 0 over a support at `span` to a free
/// tip at span + a, under the same N everywhere or in the overhang alone; by cubic beam elements.
double buckling_length(double before, double span, double a, double N_span) {
  constexpr int n = 24;
  const std::vector<double> parts{before, span, a};
  const int nodes = 3 * n + 1;
  Eigen::MatrixXd K = Eigen::MatrixXd::Zero(2 * nodes, 2 * nodes), G = K;
  for (int e = 0; e < 3 * n; ++e) {
    const std::size_t part = static_cast<std::size_t>(e / n);
    const double h = parts[part] / n, N = part == 1 ? N_span : 1.0;
    if (h == 0.0) {
      K.block<2, 2>(2 * e, 2 * e) += 1e12 * Eigen::Matrix2d::Identity();
      K.block<2, 2>(2 * e + 2, 2 * e + 2) += 1e12 * Eigen::Matrix2d::Identity();
      K.block<2, 2>(2 * e, 2 * e + 2) -= 1e12 * Eigen::Matrix2d::Identity();
      K.block<2, 2>(2 * e + 2, 2 * e) -= 1e12 * Eigen::Matrix2d::Identity();
      continue;
    }
    Eigen::Matrix4d k, g;
    k << 12, 6 * h, -12, 6 * h, 6 * h, 4 * h * h, -6 * h, 2 * h * h, -12, -6 * h, 12, -6 * h, 6 * h, 2 * h * h, -6 * h,
        4 * h * h;
    g << 36, 3 * h, -36, 3 * h, 3 * h, 4 * h * h, -3 * h, -h * h, -36, -3 * h, 36, -3 * h, 3 * h, -h * h, -3 * h,
        4 * h * h;
    K.block<4, 4>(2 * e, 2 * e) += k / (h * h * h);
    G.block<4, 4>(2 * e, 2 * e) += N / (30 * h) * g;
  }
  for (const int held : {n, 2 * n}) K(2 * held, 2 * held) += 1e9;
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> s(G, K, Eigen::EigenvaluesOnly);
  return 3.14159265358979 * std::sqrt(s.eigenvalues().maxCoeff());
}

/// Of every member, in its middle.
std::vector<double> axial_forces(const Response& r) {
  std::vector<double> N;
  for (std::size_t m = 0; m < r.model().frame.members.size(); ++m) N.push_back(r.member(m).forces(fraction{0.5}).N);
  return N;
}

}  // namespace

TEST_CASE("the dense witness gives the textbook's buckling loads") {
  // Euler's cases: pi² EI/L² of a hinged bar, pi² EI/(4 L²) of a cantilever (S. P. Timoshenko, J. M. Gere, Theory of
  // Elastic Stability, 2.1 and 2.3, values from memory)
  const FrameSection s{.E = 210e9, .G = 81e9, .A = 1e-3, .Iy = 2e-7, .Iz = 1e-7, .J = 3e-7};
  const double P = 3.14159265358979 * 3.14159265358979 * 210e9 * 1e-7;
  Frame f;
  f.add_node({0, 0, 0});
  f.add_node({1, 0, 0});
  f.add_beam(0, 1, s);
  f.fix(0, {Motion::ux, Motion::uy, Motion::uz, Motion::rx});
  f.fix(1, {Motion::uy, Motion::uz});
  CHECK(DenseBuckling(f, 8).critical_factor({-1.0}) == Approx(P).epsilon(1e-4));
  f.supports.clear();
  f.clamp(0);
  CHECK(DenseBuckling(f, 8).critical_factor({-1.0}) == Approx(P / 4).epsilon(1e-4));
}

TEST_CASE("flat ladders: a shear-soft column is on the safe side of the whole frame's eigenvalue, and near it") {
  for (const bool diagonals : {false, true})
    for (const std::size_t bays : {std::size_t{6}, std::size_t{10}, std::size_t{20}})
      for (const double cross : {33.7_mm, 48.3_mm, 60.3_mm, 114.3_mm}) {
        const Face open_face = open(tube(cross, 4.0_mm));
        const Face braced_face = braced(single_direction, tube(cross / 2, 2.0_mm), tube(cross, 4.0_mm));
        const Analysis a{LadderGirder{.bays = bays,
                                      .bay_length = 0.5,
                                      .depth = 0.5,
                                      .flat = true,
                                      .chord = tube(60.3_mm, 4.0_mm),
                                      .web = diagonals ? braced_face : open_face,
                                      .supports = simply_supported()}};
        const verify::PairColumn p = columns(a)[0];
        REQUIRE(p.outside[0] == '\0');
        const verify::PairAnswer found = verify::answer_of(p, a.girder().stations, false, 0.0, false);
        const double exact = DenseBuckling(in_plane_ladder(a), 2).critical_factor(flanges(a.model(), 0, 1, 0.0));
        INFO("diagonals " << diagonals << ", bays " << bays << ", cross " << cross << ": " << found.N_cr << ", "
                          << exact);
        CHECK(found.N_cr <= 1.005 * exact);
        // beyond twice Euler's load of a chord between stations the mode is another
        if (found.N_cr > 0.999 * 2 * en1993::euler_load(210e9, p.column.I_ch, 0.5)) continue;
        // soft cross members at the ends hold a short ladder's chords more than those of a long one
        CHECK(found.N_cr >= (bays == 20 ? 0.93 : 0.8) * exact);
      }
}

TEST_CASE("boxes: a pair tied by rings to the opposite one, against the whole frame's eigenvalue") {
  double ground_too_much = 0;
  for (const std::size_t bays : {std::size_t{8}, std::size_t{14}})
    for (const bool diagonals : {false, true})
      for (const double post : {26.9_mm, 48.3_mm, 88.9_mm})
        for (const double pull : {0.0, 1.0}) {
          const Face side = braced(alternating, tube(42.4_mm, 2.6_mm), tube(post, 4.0_mm));
          const Analysis a{box(bays, diagonals ? side : Face(open(tube(post, 4.0_mm))), side)};
          const std::vector<verify::PairColumn> all = columns(a);
          const verify::PairColumn& top = all[2];
          REQUIRE(top.outside[0] == '\0');
          REQUIRE(top.behind.racking > 0.0);
          const verify::PairAnswer found = verify::answer_of(top, a.girder().stations, false, pull, true);
          const verify::PairAnswer alone = verify::answer_of(top, a.girder().stations, false, pull, false);
          const double exact = DenseBuckling(a.model().frame).critical_factor(flanges(a.model(), 3, 2, pull));
          INFO("bays " << bays << ", diagonals " << diagonals << ", post " << post << ", pull " << pull << ": "
                       << found.N_cr << " with rings, " << alone.N_cr << " without, exact " << exact);
          CHECK(found.N_cr <= 1.025 * exact);
          CHECK(found.N_cr >= alone.N_cr);
          if (found.N_cr < 0.9 * 2 * en1993::euler_load(210e9, top.column.I_ch, 0.5)) CHECK(found.N_cr >= 0.75 * exact);
          verify::HeldPair ground = top.column;
          ground.length = found.length;
          ground.restraint = top.behind.racking;
          const double ratio = verify::critical_load(ground).N_cr / exact;
          if (ratio > ground_too_much) ground_too_much = ratio;
        }
  // springs to the ground in place of the opposite pair, as for a U-frame on a deck, promise far too much
  CHECK(ground_too_much > 2.0);
}

TEST_CASE("the racking of a ring: against the frame solver") {
  for (const double soft : {rigid_stiffness, 2e4}) {
    const verify::Ring ring{.E = 210e9,
                            .height = 0.7,
                            .I_post = 1.2e-7,
                            .width = 0.5,
                            .I_near = 2.5e-7,
                            .I_far = 0.8e-7,
                            .joint_near = soft,
                            .joint_far = soft};
    const auto section = [](double I) {
      return FrameSection{.E = 210e9, .G = 81e9, .A = 1.0, .Iy = I, .Iz = I, .J = I};
    };
    Frame f;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{0, 0.5, 0}, Vec3<>{0, 0, 0.7}, Vec3<>{0, 0.5, 0.7}})
      f.add_node(at);
    const std::size_t far = f.add_beam(0, 1, section(ring.I_far)), near = f.add_beam(2, 3, section(ring.I_near));
    f.add_beam(0, 2, section(ring.I_post));
    f.add_beam(1, 3, section(ring.I_post));
    if (soft != rigid_stiffness)
      for (const std::size_t m : {far, near})
        for (MemberEnd* e : {&f.members[m].start, &f.members[m].end}) e->about_y = e->about_z = soft;
    for (std::size_t i = 0; i < 4; ++i) f.fix(i, {Motion::ux, Motion::uz});
    f.fix(0, {Motion::uy});
    f.fix(1, {Motion::uy});
    FrameLoads loads;
    loads.force(2, {0, 500.0, 0});
    loads.force(3, {0, 500.0, 0});
    const double moved = FrameSolver(f).solve(loads).displacement(2).y;
    CHECK(1000.0 / moved == Approx(verify::racking_stiffness(ring)).epsilon(1e-4));
  }
  // by hand, h = b = 0.5 m, all I = 1e-7 m4: 24 · 210e9/(0.25 · (0.5/1e-7 + 0.5/1e-7)) = 2.016e6 N/m
  CHECK(verify::racking_stiffness(
            {.E = 210e9, .height = 0.5, .I_post = 1e-7, .width = 0.5, .I_near = 1e-7, .I_far = 1e-7}) ==
        Approx(2.016e6).epsilon(1e-12));
  CHECK_THROWS_AS(verify::racking_stiffness({.E = 210e9, .height = 0.5}), BadDescription);
}

TEST_CASE("overhangs: a column of the span and twice the overhangs is on the safe side of the beam's eigenvalue") {
  for (const double span : {0.2, 0.5, 1.0, 2.0, 4.0, 10.0})
    for (const double N_span : {0.0, 1.0}) {
      CHECK(buckling_length(0.0, span, 1.0, N_span) <= span + 2.0);
      CHECK(buckling_length(1.0, span, 1.0, N_span) <= span + 4.0);
      CHECK(buckling_length(0.4, span, 1.0, N_span) <= span + 2.8);
    }
  verify::ChordPair p;
  const std::vector<double> stations{0, 1, 2, 3, 4, 5, 6};
  CHECK(verify::column_length(p, stations, false) == 0.0);  // nothing holds it
  p.held = {1, 5};
  CHECK(verify::column_length(p, stations, false) == 4.0);
  CHECK(verify::column_length(p, stations, true) == 8.0);
  p.held = {0};
  CHECK(verify::column_length(p, stations, true) == 0.0);  // it may swing about its hold
  p.clamped_first = p.clamped_last = true;
  CHECK(verify::column_length(p, stations, true) == 12.0);
}

TEST_CASE("the critical factor of a solved girder: against the dense witness") {
  struct Loaded {
    std::string what;
    Girder girder;
    std::vector<Action> actions;
  };
  const Face side = braced(alternating, tube(42.4_mm, 2.6_mm), tube(48.3_mm, 4.0_mm));
  const Face open_face = open(tube(48.3_mm, 4.0_mm));
  BoxGirder strut = box(10, open_face, side), overhang = strut, loose = strut, bent = strut;
  overhang.diaphragms = diaphragms_at({0, 3, 7, 10}, tube(42.4_mm, 2.6_mm));
  overhang.supports = hung_at({1.5, 3.5});
  loose.diaphragms = {};
  bent.axis.camber = 0.1;
  const LadderGirder ladder{.bays = 8,
                            .bay_length = 0.5,
                            .depth = 0.6,
                            .chord = tube(60.3_mm, 4.0_mm),
                            .web = open_face,
                            .supports = simply_supported()};
  const TriangularGirder triangle{.bays = 8,
                                  .bay_length = 0.5,
                                  .width = 0.5,
                                  .depth = 0.5,
                                  .chord = tube(60.3_mm, 4.0_mm),
                                  .faces = {.base = open_face, .left = side, .right = side},
                                  .supports = simply_supported()};
  const std::vector<Action> on_top{line_load({ChordOf::top_left, ChordOf::top_right}, 1e3)};
  const std::vector<Loaded> all{
      {"box", strut.girder(), on_top},
      {"box pulled up", strut.girder(), {line_load({ChordOf::top_left, ChordOf::top_right}, -1e3)}},
      {"box with overhangs", overhang.girder(), on_top},
      {"box without diaphragms", loose.girder(), on_top},
      {"cambered box", bent.girder(), on_top},
      {"box pressed along",
       strut.girder(),
       {point_load(ChordOf::top_left, 5.0, Vec3<>{-1e4, 0, 0}),
        point_load(ChordOf::top_right, 5.0, Vec3<>{-1e4, 0, 0})}},
      {"ladder", ladder.girder(), {line_load({ChordOf::top}, 1e3)}},
      {"triangle", triangle.girder(), {line_load({ChordOf::apex}, 1e3)}}};
  for (const Loaded& l : all) {
    const Analysis a{l.girder};
    const Response r = a.solve(l.actions);
    const std::vector<double> N = axial_forces(r);
    const verify::CriticalFactor found = verify::critical_factor(r, 1e-8);
    INFO(l.what << ": " << found.factor << " in " << found.steps << " steps, error " << found.error);
    const double finer = DenseBuckling(a.model().frame, 2).critical_factor(N);
    CHECK(found.factor == Approx(DenseBuckling(a.model().frame).critical_factor(N)).epsilon(1e-5));
    CHECK(std::fmin(found.factor, found.one_bar) <= 1.015 * finer);  // one cubic for a bay
    if (found.factor < found.one_bar) CHECK(found.factor >= 0.985 * finer);
  }
  // nothing pushed, nothing to buckle
  const LadderGirder pulled{.bays = 4,
                            .bay_length = 0.5,
                            .depth = 0.5,
                            .chord = tube(60.3_mm, 4.0_mm),
                            .web = open_face,
                            .supports = cantilever()};
  const Analysis a{pulled};
  const Response r =
      a.solve({point_load(ChordOf::top, 2.0, Vec3<>{1e3, 0, 0}), point_load(ChordOf::bottom, 2.0, Vec3<>{1e3, 0, 0})});
  CHECK(std::isinf(verify::critical_factor(r).factor));
}

TEST_CASE("a proof by the eigenvalue: girders and holds that closed forms do not know") {
  verify::Basis by_formula, by_eigenvalue;
  by_formula.stability = {.checked = true};
  by_eigenvalue.stability = {.checked = true, .by_eigenvalue = true};
  const auto pair_row = [](const verify::Proof& p, const std::string& name) {
    for (const verify::Row& r : p.rows())
      if (r.check == verify::Check::chord_pair && (r.face.text() == name || r.chord.text() == name)) return r;
    FAIL("no row of " << name);
    return verify::Row{};
  };
  const auto N_cr = [](const verify::Row& r) { return number(r, "N_cr"); };
  const Face side = braced(alternating, tube(42.4_mm, 2.6_mm), tube(48.3_mm, 4.0_mm));
  const Face open_face = open(tube(48.3_mm, 4.0_mm));
  const std::vector<Action> on_top{line_load({ChordOf::top_left, ChordOf::top_right}, 2e3)};
  {
    // the closed form takes the greatest compression all along, the frame the one that is there
    const Analysis a{box(12, open_face, side)};
    const Response r = a.solve(on_top);
    const verify::Row formula = pair_row(verify::by_material(r, by_formula), "top"),
                      frame = pair_row(verify::by_material(r, by_eigenvalue), "top");
    CHECK(N_cr(formula) < N_cr(frame));
    CHECK(N_cr(formula) > 0.5 * N_cr(frame));
    CHECK(frame.utilisation <= formula.utilisation);
  }
  {
    // A ladder's upper chord: by hand from the dense witness, curve a (alpha 0.21), A 707.4867 mm2, 355 N/mm2.
    const LadderGirder ladder{.bays = 8,
                              .bay_length = 0.5,
                              .depth = 0.6,
                              .chord = tube(60.3_mm, 4.0_mm),
                              .web = open_face,
                              .supports = simply_supported()};
    const Analysis a{ladder};
    const Response r = a.solve({line_load({ChordOf::top}, 1e3)});
    CHECK_FALSE(verify::by_material(r, by_formula).passes());
    const verify::Proof p = verify::by_material(r, by_eigenvalue);
    CHECK(p.passes());
    const verify::Row row = pair_row(p, "top");
    const std::vector<double> N = axial_forces(r);
    double push = 0;
    for (std::size_t b = 0; b + 1 < 8; ++b)
      push = std::fmax(push, -0.5 * (N[a.model().chord_member(b, 1)] + N[a.model().chord_member(b + 1, 1)]));
    const double critical = push * DenseBuckling(a.model().frame).critical_factor(N);
    const double l = std::sqrt(707.4867e-6 * 355e6 / critical), f = 0.5 * (1 + 0.21 * (l - 0.2) + l * l);
    CHECK(row.utilisation == Approx(push * (f + std::sqrt(f * f - l * l)) / (707.4867e-6 * 355e6)).epsilon(1e-4));
    CHECK(std::string(row.reason).find("eigenvalue") != std::string::npos);
  }
  BoxGirder bent = box(12, open_face, side), loose = bent;
  bent.axis.camber = 0.1;
  loose.diaphragms = {};
  for (const BoxGirder& girder : {bent, loose}) {
    const Analysis a{girder};
    const Response r = a.solve(on_top);
    CHECK_FALSE(verify::by_material(r, by_formula).passes());
    const verify::Proof p = verify::by_material(r, by_eigenvalue);
    CHECK(p.passes());
    CHECK(pair_row(p, "top").utilisation > 0.0);
    // loads of which the frame buckles do not pass
    const double factor = verify::critical_factor(r).factor;
    std::vector<Action> beyond{line_load({ChordOf::top_left, ChordOf::top_right}, 2e3 * 1.01 * factor)};
    const verify::Proof buckled = verify::by_material(a.solve(beyond), by_eigenvalue);
    CHECK_FALSE(buckled.passes());
    bool said = false;
    for (const verify::Row& o : buckled.outside_scope())
      said = said || std::string(o.reason).find("a third of the critical load") != std::string::npos;
    CHECK(said);
  }
  {
    // no bows can be made for a cambered girder: forces of first order hold up to a tenth of the critical load
    verify::Basis with_bows = by_eigenvalue;
    with_bows.stability.imperfections = true;
    const Analysis a{bent};
    const double factor = verify::critical_factor(a.solve(on_top)).factor;
    for (const double part : {0.095, 0.105}) {
      const verify::Proof p = verify::by_material(
          a.solve({line_load({ChordOf::top_left, ChordOf::top_right}, 2e3 * part * factor)}), with_bows);
      bool said = false;
      for (const verify::Row& o : p.outside_scope())
        said = said || std::string(o.reason).find("no bows can be made") != std::string::npos;
      CHECK(said == (part > 0.1));
    }
  }
  verify::Basis lonely;
  lonely.stability = {.checked = false, .by_eigenvalue = true};
  const Analysis a{bent};
  CHECK_THROWS_AS(verify::by_material(a.solve(on_top), lonely), BadDescription);
}
