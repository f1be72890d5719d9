// SPDX-License-Identifier: MIT
// What each action puts on a girder: its whole force and moment by hand, and what it must do to the girder.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response.hpp>

#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

constexpr double pi = 3.14159265358979323846;


/// Six bays of 0.5 m, 0.4 m wide, 0.6 m deep.
BoxGirder box() {
  const Face side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = 6,
          .bay_length = 0.5,
          .width = 0.4,
          .depth = 0.6,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .supports = simply_supported()};
}

LadderGirder ladder(std::size_t bays, double bay, double depth, const Face& web) {
  return {.bays = bays, .bay_length = bay, .depth = depth, .chord = chord_bar(), .web = web, .supports = cantilever()};
}

struct Total {
  Vec3<> force{}, moment{};  ///< moment about the origin
};

/// Sum of the frame's loads; a straight line load is two triangles.
Total total(const Analysis& a, const std::vector<Action>& actions) {
  FrameLoads loads;
  a.reduce(actions, loads);
  Total t;
  const auto add = [&t](const Vec3<>& at, const Vec3<>& f) {
    t.force += f;
    t.moment += cross(at, f);
  };
  for (const NodeLoad& l : loads.on_nodes) {
    add(a.model().frame.nodes[l.node].at, l.force);
    t.moment += l.couple;
  }
  for (const MemberLoad& l : loads.on_members) {
    const MemberAxes<>& axes = a.axes(l.member);
    const double b = l.b - l.a;
    if (l.kind == MemberLoad::Kind::force) add(axes.start + l.a * axes.x, axes.to_global(l.first));
    if (l.kind == MemberLoad::Kind::couple) t.moment += axes.to_global(l.first);
    if (l.kind == MemberLoad::Kind::line) {
      add(axes.start + (l.a + b / 3) * axes.x, 0.5 * b * axes.to_global(l.first));
      add(axes.start + (l.b - b / 3) * axes.x, 0.5 * b * axes.to_global(l.last));
    }
  }
  return t;
}

/// Loads sum to this force and moment about the origin, and the supports answer with their opposite.
void sums_to(const Analysis& a, const Action& action, const Vec3<>& force, const Vec3<>& moment) {
  const Total t = total(a, {action});
  const double size = length(force) + length(moment);
  INFO("force " << t.force.x << " " << t.force.y << " " << t.force.z << ", by hand " << force.x << " " << force.y << " "
                << force.z);
  INFO("moment " << t.moment.x << " " << t.moment.y << " " << t.moment.z << ", by hand " << moment.x << " " << moment.y
                 << " " << moment.z);
  CHECK(length(t.force - force) < 1e-11 * size);
  CHECK(length(t.moment - moment) < 1e-11 * size);
  const Response r = a.solve({action});
  CHECK(length(r.total_load() - force) < 1e-11 * size);
  Vec3<> back{}, turn{};
  for (const Reaction& s : r.answer().reactions) {
    const Vec3<> f{s.value[0], s.value[1], s.value[2]};
    back += f;
    turn += cross(a.model().frame.nodes[s.node].at, f) + Vec3<>{s.value[3], s.value[4], s.value[5]};
  }
  CHECK(length(back + force) < 1e-9 * size);
  CHECK(length(turn + moment) < 1e-9 * size);
}

/// What a force at a place sums to.
void sums_to_force_at(const Analysis& a, const Action& action, const Vec3<>& force, const Vec3<>& at) {
  sums_to(a, action, force, cross(at, force));
}

/// Largest force or moment anywhere in the bars.
double largest_force(const Response& r) {
  double most = 0;
  for (const MemberAnswer& m : r.answer().members)
    for (std::size_t k = 0; k < 6; ++k) most = (std::max)({most, std::abs(m.start[k]), std::abs(m.end[k])});
  return most;
}

double area(double diameter, double wall) { return pi * wall * (diameter - wall); }

}  // namespace

TEST_CASE("self-weight is volume times density times gravity") {
  // EN AW-6082: 2700 kg/m³ (EN 1999-1-1, 3.2.5); standard gravity 9.80665 m/s² (ISO 80000-3)
  const double chords = 4 * 3.0, cross = 7 * (2 * 0.4 + 2 * 0.6), braces = 12 * std::hypot(0.5, 0.6);
  const double volume = chords * area(60.3_mm, 5.0_mm) + cross * area(48.3_mm, 4.0_mm) + braces * area(26.9_mm, 3.2_mm);
  const Analysis a{box()};
  sums_to_force_at(a, self_weight(), {0, 0, -2700 * 9.80665 * volume}, {1.5, 0, 0});
  sums_to_force_at(a, self_weight(1.1), {0, 0, -1.1 * 2700 * 9.80665 * volume}, {1.5, 0, 0});
  BoxGirder sized = box();  // what lies inside the chords still weighs
  sized.faces.top = sized.faces.bottom = open(cross_bar(), Joint{1e4, 1e4, true});
  sums_to_force_at(Analysis{sized}, self_weight(), {0, 0, -2700 * 9.80665 * volume}, {1.5, 0, 0});
}

TEST_CASE("line loads: whole, partial, trapezoid, on several chords, in any direction") {
  const Analysis a{box()};
  sums_to_force_at(a, line_load({ChordOf::top_left}, 800.0), {0, 0, -2400}, {1.5, 0.2, 0.3});
  sums_to_force_at(a, line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 800.0), {0, 0, -2400}, {1.5, 0, -0.3});
  sums_to_force_at(a, line_load({ChordOf::top_right}, 800.0, {0.7, 2.1}), {0, 0, -800 * 1.4}, {1.4, -0.2, 0.3});
  sums_to_force_at(a, line_load({ChordOf::top_right}, 800.0, {0.6, 0.9}), {0, 0, -240},
                   {0.75, -0.2, 0.3});  // inside one bay
  // trapezoid from 300 to 900 N/m over 0.2 ... 2.9 m: centroid at b (q0 + 2 q1) / (3 (q0 + q1)) from its start
  const double b = 2.7, whole = 600 * b, centroid = 0.2 + b * (300 + 1800) / (3 * 1200.0);
  sums_to_force_at(a, line_load({ChordOf::top_left}, {0, 300, 0}, {0, 900, 0}, {0.2, 2.9}), {0, whole, 0},
                   {centroid, 0.2, 0.3});
  // a load that changes its direction: 600 N/m along x and y, crosswise triangles
  sums_to(a, line_load({ChordOf::top_left}, {600, 0, 0}, {0, 600, 0}), {900, 900, 0},
          cross(Vec3<>{1.0, 0.2, 0.3}, Vec3<>{900, 0, 0}) + cross(Vec3<>{2.0, 0.2, 0.3}, Vec3<>{0, 900, 0}));
}

TEST_CASE("line loads count metres of axis, whatever the chord's own length") {
  BoxGirder g = box();
  g.axis.plan_radius = 4.0;
  const Analysis curved{g};
  for (const ChordOf c : {ChordOf::top_left, ChordOf::top_right}) {
    const Total t = total(curved, {line_load({c}, 800.0)});
    CHECK(t.force.z == doctest::Approx(-2400).epsilon(1e-12));
    CHECK(t.moment.y == doctest::Approx(2400 * 1.5).epsilon(1e-12));  // symmetric about mid-length
  }
  g = box();
  g.axis.camber = 0.3;
  g.end_depth = 0.3;
  sums_to(Analysis{g}, line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 800.0), {0, 0, -2400},
          {0, 2400 * 1.5, 0});
}

TEST_CASE("point loads on chords, with couples") {
  const Analysis a{box()};
  for (const double x : {0.0, 0.5, 0.83, 2.999, 3.0})
    sums_to_force_at(a, point_load(ChordOf::bottom_right, x, 1200.0), {0, 0, -1200}, {x, -0.2, -0.3});
  const Vec3<> f{100, -200, 300}, m{40, 50, -60};
  sums_to(a, point_load(ChordOf::top_left, 1.3, f, m), f, cross(Vec3<>{1.3, 0.2, 0.3}, f) + m);
}

TEST_CASE("a load between joints does what it does on a joint put there") {
  BoxGirder g = box();
  const Analysis plain{g};
  g.bays = 0;
  for (int i = 0; i < 6; ++i) g.bay_lengths.insert(g.bay_lengths.end(), {0.2, 0.3});  // panels over two bays each
  for (Face* f : {&g.faces.top, &g.faces.bottom, &g.faces.left, &g.faces.right}) *f = f->spanning(2);
  const Analysis split{g};
  for (const Action& action : {Action{point_load(ChordOf::bottom_left, 1.2, {100, 200, -900}, {30, -20, 50})},
                               Action{line_load({ChordOf::top_left}, {50, 100, -300}, {0, 0, -900}, {0.7, 1.2})}}) {
    const Response r = plain.solve({action}), s = split.solve({action});
    for (const ChordOf c : {ChordOf::bottom_left, ChordOf::top_right})
      for (const double x : {0.25, 0.7, 1.1, 1.2, 1.25, 2.6})
        CHECK(length(r.deflection(c, x) - s.deflection(c, x)) < 1e-11 * r.max_deflection());
    const CutForces f = r.chord(ChordOf::bottom_left).bay(2).forces_at(0.1),
                    h = s.chord(ChordOf::bottom_left).bay(4).forces_at(0.1);
    for (std::size_t k = 0; k < 6; ++k) CHECK(f[k] == doctest::Approx(h[k]).epsilon(1e-8).scale(1.0));
    CHECK(r.twist(1.2) == doctest::Approx(s.twist(1.2)).epsilon(1e-9));
  }
}

TEST_CASE("loads on cross members: plain, between chord surfaces, split by a K") {
  BoxGirder g = box();
  sums_to_force_at(Analysis{g}, cross_member_load(Side::bottom, 2, 0.25, 700.0), {0, 0, -700},
                   {1.0, 0.2 - 0.25 * 0.4, -0.3});
  g.faces.bottom = open(cross_bar(), Joint{1e4, 1e4, true});
  g.faces.left = braced(k_braced, brace_bar(), cross_bar());
  const Analysis a{g};
  for (const double at : {0.0, 0.02, 0.5, 0.99, 1.0})  // the first and last 30 mm are inside the chords
    sums_to_force_at(a, cross_member_load(Side::bottom, 2, at, 700.0), {0, 0, -700}, {1.0, 0.2 - at * 0.4, -0.3});
  const Vec3<> f{30, -40, 50}, m{5, 6, 7};
  for (const double at : {0.2, 0.5, 0.8})  // lower and upper half of the post
    sums_to(a, cross_member_load(Side::left, 3, at, f, m), f, cross(Vec3<>{1.5, 0.2, -0.3 + at * 0.6}, f) + m);
}

TEST_CASE("pressure on a face is pressure times area, however it is carried") {
  for (const CarriedBy by : {CarriedBy::nearest_edge, CarriedBy::chords, CarriedBy::cross_members})
    for (const double depth : {0.3, 0.5, 0.9}) {  // shorter than, equal to and longer than a bay
      BoxGirder g = box();
      g.depth = depth;
      const Analysis a{g};
      const double whole = 400.0 * 3.0 * depth;
      sums_to_force_at(a, wind_on(Side::left, 400.0, by), {0, -whole, 0}, {1.5, 0.2, 0});
      sums_to_force_at(a, wind_on(Side::right, 400.0, by), {0, whole, 0}, {1.5, -0.2, 0});
      sums_to_force_at(a, wind_on(Side::top, -400.0, by), {0, 0, 400.0 * 3.0 * 0.4}, {1.5, 0, depth / 2});
      sums_to_force_at(a, wind_on(Side::left, 400.0, by, {0.6, 1.2}), {0, -whole / 6, 0},
                       {0.75, 0.2, 0});                 // the panel whose middle is in
      g.faces.left = braced(alternating, brace_bar());  // no posts: all to the chords
      sums_to_force_at(Analysis{g}, wind_on(Side::left, 400.0, by), {0, -whole, 0}, {1.5, 0.2, 0});
      g.faces.left = Face(braced(k_braced, brace_bar(), cross_bar())).spanning(2);
      sums_to_force_at(Analysis{g}, wind_on(Side::left, 400.0, by), {0, -whole, 0}, {1.5, 0.2, 0});
    }
  const LadderGirder l = ladder(4, 0.5, 0.5, open(cross_bar()));
  sums_to_force_at(Analysis{l}, wind_on(Side::web, 100.0), {0, -100, 0}, {1, 0, 0});  // from the left
}

TEST_CASE("pressure on tapered, curved and sloping faces") {
  for (const CarriedBy by : {CarriedBy::nearest_edge, CarriedBy::chords, CarriedBy::cross_members}) {
    BoxGirder g = box();
    g.end_depth = 0.2;  // a trapezoid of 3 m × (0.6 + 0.2) / 2
    CHECK(total(Analysis{g}, {wind_on(Side::left, 400.0, by)}).force.y ==
          doctest::Approx(-400 * 3.0 * 0.4).epsilon(1e-12));
    g = box();
    g.axis.plan_radius = 3.0;  // the chord's string between both ends, abreast of the axis: 2 (R - y) sin(L / 2R)
    const Total t = total(Analysis{g}, {wind_on(Side::left, 400.0, by)});
    CHECK(t.force.y == doctest::Approx(-400 * 0.6 * 2 * 2.8 * std::sin(0.5)).epsilon(1e-12));
    CHECK(std::abs(t.force.x) < 1e-9);
    // sloping faces: the sum of a closed surface's pressures vanishes lengthwise, p times projections across
    const TriangularGirder tri{
        .bays = 4,
        .bay_length = 0.5,
        .width = 0.6,
        .depth = 0.4,
        .chord = chord_bar(),
        .faces = {.base = open(cross_bar()), .left = open(cross_bar()), .right = open(cross_bar())},
        .supports = simply_supported()};
    const Analysis a{tri};
    sums_to_force_at(a, wind_on(Side::left, 400.0, by), {0, -400 * 2.0 * 0.4, -400 * 2.0 * 0.3}, {1.0, 0.15, 0.0});
    const Total all =
        total(a, {wind_on(Side::left, 400.0, by), wind_on(Side::right, 400.0, by), wind_on(Side::base, 400.0, by)});
    CHECK(length(all.force) < 1e-9);
    CHECK(length(all.moment) < 1e-9);
  }
}

TEST_CASE("the nearest edge: 45 degree lines") {
  // By hand: each cross member takes the triangle h (h/2)/2 = h²/4, each chord half the rest of a h.
  const LadderGirder l = ladder(1, 2.0, 1.0, open(cross_bar()));
  const Analysis a{l};
  FrameLoads loads;
  a.reduce({wind_on(Side::web, 100.0)}, loads);
  std::vector<double> carried(a.model().frame.members.size(), 0.0);
  for (const MemberLoad& m : loads.on_members)
    carried[m.member] += 0.5 * (m.b - m.a) * length(a.axes(m.member).to_global(m.first + m.last));
  for (const std::size_t station : {std::size_t{0}, std::size_t{1}})
    CHECK(carried[a.model().faces[0].cross_members[station][0]] == doctest::Approx(100 * 0.25).epsilon(1e-12));
  for (const std::size_t c : {std::size_t{0}, std::size_t{1}})
    CHECK(carried[a.model().chord_member(0, c)] == doctest::Approx(100 * 0.75).epsilon(1e-12));
}

TEST_CASE("wind on bars: c q D along the wind's part square to each bar") {
  const Analysis a{box()};
  const double q = 500, c = 1.2;
  const double upright = 14 * 0.6 * 48.3_mm, braces = 12 * std::hypot(0.5, 0.6) * 26.9_mm, along_x = 4 * 3.0 * 60.3_mm,
               along_y = 14 * 0.4 * 48.3_mm;
  sums_to_force_at(a, wind_on_bars(q, {0, 3, 0}), {0, c * q * (along_x + upright + braces), 0}, {1.5, 0, 0});
  // along x a brace of length d meets the wind under an angle: the part square to it is h/d, and (h/d)² of it along
  // x, s h/d² up or down: c q D s h²/d² downwards where it rises (mean x 1.25 m), upwards where it falls (1.75 m)
  const double d = std::hypot(0.5, 0.6), slope = 0.6 / d, lift = c * q * 26.9_mm * 0.5 * 0.36 / (d * d);
  sums_to(a, wind_on_bars(q, {1, 0, 0}), {c * q * (upright + along_y + braces * slope * slope * slope), 0, 0},
          {0, 6 * lift * (1.25 - 1.75), 0});
  CHECK(total(a, {wind_on_bars(q, {0, 0, -1}, 2.0)}).force.z ==
        doctest::Approx(-2.0 * q * (along_x + along_y + braces * std::pow(0.5 / std::hypot(0.5, 0.6), 3)))
            .epsilon(1e-12));
}

TEST_CASE("warming that nothing hinders only lengthens") {
  // six motions held: free to grow; EN AW-6082 23e-6 1/K (EN 1999-1-1, 3.2.5)
  BoxGirder g = box();
  const Analysis a{g};
  const double alpha = 23e-6, full = 70e9 * area(60.3_mm, 5.0_mm) * alpha * 30;
  const Response r = a.solve({warming(30.0)});
  CHECK(largest_force(r) < 1e-9 * full);
  CHECK(r.axis_deflection(3.0).x == doctest::Approx(alpha * 30 * 3.0).epsilon(1e-9));
  CHECK(r.deflection(ChordOf::top_right, 1.7).x == doctest::Approx(alpha * 30 * 1.7).epsilon(1e-9));
  // a field that is linear across is free of stress too, and bends the axis to α g L²/8 at mid-span
  const Response across = a.solve({warming_across(40.0, 100.0)});
  CHECK(largest_force(across) < 1e-9 * full);
  const double mid = across.axis_deflection(1.5).z - across.axis_deflection(0.0).z;
  CHECK(mid == doctest::Approx(alpha * 100 * 9.0 / 8).epsilon(1e-9));  // hotter above: it arches up
  g.faces.left = Face{braced(crossed, brace_bar(), cross_bar())};      // also where bars are in each other's way
  g.faces.right = braced(k_braced, brace_bar(), cross_bar());
  const Analysis redundant{g};
  CHECK(largest_force(redundant.solve({warming_across(40.0, 100.0), warming(-20.0)})) < 1e-9 * full);
  // a post that ends at the chords' surfaces is as warm there as the field is there
  g.faces.left = open(cross_bar(), Joint{1e4, 1e4, true});
  const Analysis sized{g};
  FrameLoads loads;
  sized.reduce({warming_across(0.0, 100.0)}, loads);
  const std::size_t post = sized.model().faces[sized.girder().face(Side::left)].cross_members[2][0];
  CHECK(loads.on_members[post].member == post);
  CHECK(loads.on_members[post].last.x == doctest::Approx(100.0 * (0.3 - 60.3_mm / 2)).epsilon(1e-12));
}

TEST_CASE("warming that is hindered: E A alpha T") {
  LadderGirder l = ladder(3, 0.5, 0.5, Face{});
  for (const ChordOf c : {ChordOf::bottom, ChordOf::top})
    l.supports =
        l.supports.with(hold(c, 1.5).fix({Motion::ux, Motion::uy, Motion::uz, Motion::rx, Motion::ry, Motion::rz}));
  const Analysis a{l};
  const double force = 70e9 * area(60.3_mm, 5.0_mm) * 23e-6 * 30;
  const Response both = a.solve({warming(30.0)}), one = a.solve({warming_of(ChordOf::top, 30.0)}),
                 across = a.solve({warming_across(0, 40.0)});
  CHECK(both.chord(ChordOf::bottom).axial(1) == doctest::Approx(-force).epsilon(1e-9));
  CHECK(both.chord(ChordOf::top).axial(1) == doctest::Approx(-force).epsilon(1e-9));
  CHECK(one.chord(ChordOf::top).axial(1) == doctest::Approx(-force).epsilon(1e-9));
  CHECK(std::abs(one.chord(ChordOf::bottom).axial(1)) < 1e-9 * force);
  CHECK(across.chord(ChordOf::top).axial(1) == doctest::Approx(-force / 3).epsilon(1e-9));  // 40 K/m × 0.25 m
  CHECK(across.chord(ChordOf::bottom).axial(1) == doctest::Approx(force / 3).epsilon(1e-9));
}

TEST_CASE("settlements of held, sprung and redundant supports") {
  BoxGirder g = box();
  g.supports = continuous_over({0.0, 1.5, 3.0});
  const Analysis a{g};
  const Response r = a.solve({settlement(ChordOf::bottom_left, 1.5, Motion::uz, -0.004),
                              settlement(ChordOf::bottom_right, 1.5, Motion::uz, -0.004)});
  CHECK(r.deflection(ChordOf::bottom_left, 1.5).z == doctest::Approx(-0.004).epsilon(1e-12));
  double middle = 0, ends = 0;
  for (const Response::SupportReaction& s : r.reactions()) (s.address.station == 3 ? middle : ends) += s.force.z;
  CHECK(middle < -100.0);  // pulled down
  CHECK(ends == doctest::Approx(-middle).epsilon(1e-9));
  CHECK(length(r.total_load()) == 0.0);
  // sprung and statically held: carried along without force
  g.supports = held_by({hold(ChordOf::bottom_left, 0.0).fix({Motion::ux, Motion::uy, Motion::uz}),
                        hold(ChordOf::bottom_right, 0.0).fix({Motion::uz}),
                        hold(ChordOf::bottom_left, 3.0).fix({Motion::uy}).spring(Motion::uz, 1e5)});
  const Analysis sprung{g};
  const Response s = sprung.solve({settlement(ChordOf::bottom_left, 3.0, Motion::uz, 0.01)});
  CHECK(s.deflection(ChordOf::bottom_left, 3.0).z == doctest::Approx(0.01).epsilon(1e-9));
  CHECK(largest_force(s) < 1e-9 * 1e5 * 0.01);
}

TEST_CASE("combinations of EN 1990 (6.10) against lists made by hand") {
  // gamma 1.35/1.0 and 1.5; psi0: imposed 0.7, wind 0.6, snow 0.5, temperature 0.6 (EN 1990:2002, Tables A1.1, A1.2(B))
  const auto listed = [](const CombinationSet& set, const std::vector<CaseKind>& cases) {
    std::string out;
    for (const Combination& c : combinations(set, cases)) {
      for (const double f : c.factors) out += text::number(f) + " ";
      out.back() = ';';
    }
    return out;
  };
  const std::vector<CaseKind> three{
      {"weight", Nature::permanent, ""}, {"people", Nature::imposed, ""}, {"wind", Nature::wind, ""}};
  CHECK(listed(en1990::ultimate(), three) ==
        "1.35 0 0;1.35 1.5 0;1.35 0 1.5;1.35 1.5 0.9;1.35 1.05 1.5;"
        "1 0 0;1 1.5 0;1 0 1.5;1 1.5 0.9;1 1.05 1.5;");
  CHECK(listed(en1990::characteristic(), three) == "1 0 0;1 1 0;1 0 1;1 1 0.6;1 0.7 1;");
  const std::vector<CaseKind> others{
      {"weight", Nature::permanent, ""}, {"snow", Nature::snow, ""}, {"summer", Nature::temperature, ""}};
  CHECK(listed(en1990::equilibrium(), others) ==
        "1.1 0 0;1.1 1.5 0;1.1 0 1.5;1.1 1.5 0.9;1.1 0.75 1.5;"
        "0.9 0 0;0.9 1.5 0;0.9 0 1.5;0.9 1.5 0.9;0.9 0.75 1.5;");
  // winds from two sides exclude each other
  const std::vector<CaseKind> winds{
      {"weight", Nature::permanent, ""}, {"from left", Nature::wind, "wind"}, {"from right", Nature::wind, "wind"}};
  CHECK(listed(en1990::ultimate(), winds) == "1.35 0 0;1.35 1.5 0;1.35 0 1.5;1 0 0;1 1.5 0;1 0 1.5;");
  CHECK(combinations(en1990::ultimate(), three)[3].name == "1.35 weight + 1.5 people + 0.9 wind");
}

TEST_CASE("a combination of cases is the case of the combined loads") {
  const Analysis a{box()};
  const Cases cases =
      a.solve(std::vector<LoadCase>{{"weight", Nature::permanent, {self_weight()}},
                                    {"people", Nature::imposed, {line_load({ChordOf::bottom_left}, 900.0)}},
                                    {"wind", Nature::wind, {wind_on(Side::left, 400.0)}}});
  const Response sum = cases.combine({"uls", {1.35, 1.05, 1.5}});
  const Response direct =
      a.solve({self_weight(1.35), line_load({ChordOf::bottom_left}, 1.05 * 900.0), wind_on(Side::left, 600.0)});
  CHECK(length(sum.total_load() - direct.total_load()) < 1e-10 * length(direct.total_load()));
  for (const double x : {0.4, 1.5, 2.2})
    CHECK(length(sum.deflection(ChordOf::bottom_left, x) - direct.deflection(ChordOf::bottom_left, x)) < 1e-11);
  const auto at = [](const Response& r) {
    return r.face(Side::bottom).cross_member(2).moment(in_plane, fraction{0.3});
  };
  CHECK(at(sum) == doctest::Approx(at(direct)).epsilon(1e-9));
  CHECK(sum.name() == "uls");
}
