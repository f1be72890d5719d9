// SPDX-License-Identifier: MIT
// The solver against hand calculations that share no line with it, through the table that users print.
#include <doctest/doctest.h>

#include <cctype>
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/hand_check.hpp>
#include <baywork/load.hpp>
#include <baywork/response.hpp>

#include "support/calculator.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

auto zigzag() { return braced(alternating, brace_bar(), cross_bar()); }

BoxGirder demo() {
  return {.bays = 24,
          .bay_length = 0.5_m,
          .width = 0.5_m,
          .depth = 0.5_m,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = zigzag(), .right = zigzag()},
          .supports = simply_supported()};
}
LadderGirder ladder(Face web) {
  return {.bays = 24,
          .bay_length = 0.5_m,
          .depth = 0.5_m,
          .chord = chord_bar(),
          .web = std::move(web),
          .supports = simply_supported()};
}
TriangularGirder triangular() {
  return {.bays = 24,
          .bay_length = 0.5_m,
          .width = 0.5_m,
          .depth = 0.45_m,
          .chord = chord_bar(),
          .faces = {.base = zigzag(), .left = zigzag(), .right = zigzag()},
          .supports = simply_supported()};
}
const std::vector<ChordRef> box_bottom{ChordOf::bottom_left, ChordOf::bottom_right}, ladder_bottom{ChordOf::bottom},
    triangle_base{ChordOf::base_left, ChordOf::base_right};

/// Printed with nine digits, differences of large numbers lose some: compared on the sum of the formula's parts.
void recomputes(const std::string& numbers, double value, double scale) {
  INFO(numbers);
  CHECK(std::abs(Calculator(numbers).run() - value) <= 2e-6 * (std::max)(std::abs(value), scale));
}

/// In SI units a girder has no stiffness, force or motion near 1e-12: what is printed there is rounding.
bool shows_rounding(const std::string& words) {
  for (std::size_t at = words.find("e-"); at != std::string::npos; at = words.find("e-", at + 1))
    if (std::isdigit(static_cast<unsigned char>(words[at + 2])) != 0 && std::stoi(words.substr(at + 2)) >= 12) return true;
  return false;
}

/// Solves, and checks all that holds of every table. Returns it for what is special.
template <class G>
HandChecks table_of(const char* what, const G& girder, const std::vector<Action>& actions) {
  const Analysis analysis(girder);
  const HandChecks t = hand_checks(analysis.solve(actions));
  CAPTURE(what);
  REQUIRE(t.rows.size() >= 6);
  int valid = 0;
  for (const HandCheck& row : t.rows) {
    CAPTURE(row.quantity);
    CAPTURE(row.where);
    CAPTURE(row.solver);
    CAPTURE(row.closed_form);
    CAPTURE(row.numbers);
    CHECK_FALSE(shows_rounding(row.numbers + ' ' + row.printed(row.closed_form)));
    if (row.valid) CHECK_FALSE(shows_rounding(row.printed(row.solver)));
    if (!row.valid) {
      CHECK_FALSE(row.reason.empty());
      continue;
    }
    ++valid;
    CHECK(std::abs(row.difference()) <= row.expected);
    CHECK(row.expected <= 0.16);
    recomputes(row.numbers, row.closed_form, row.scale);
  }
  for (const HandBasis& b : t.basis) recomputes(b.numbers, b.value, 0);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(t.rows[i].valid);
    CHECK(std::abs(t.rows[i].difference()) <= 1e-9);
  }
  CHECK(valid >= 4);
  CHECK(t.agree());
  return t;
}

/// The valid rows of a quantity; at least one is asked for.
std::vector<HandCheck> valid_rows(const HandChecks& t, const std::string& begins) {
  std::vector<HandCheck> out;
  for (const HandCheck& row : t.rows)
    if (row.valid && row.quantity.rfind(begins, 0) == 0) out.push_back(row);
  std::ostringstream all;
  all << t;
  CAPTURE(all.str());
  CAPTURE(begins);
  REQUIRE_FALSE(out.empty());
  return out;
}
const HandCheck& not_covered_row(const HandChecks& t, const std::string& begins, const std::string& why) {
  for (const HandCheck& row : t.rows)
    if (!row.valid && row.quantity.rfind(begins, 0) == 0 && row.reason.find(why) != std::string::npos) return row;
  std::ostringstream all;
  all << t;
  FAIL(begins, " has no row with the reason: ", why, "\n", all.str());
  return t.rows.front();
}

}  // namespace

TEST_CASE("box with braced sides: simply supported") {
  const HandChecks t = table_of("uniform", demo(), {self_weight(), line_load(box_bottom, 500.0)});
  CHECK(valid_rows(t, "deflection of the axis, down").size() == 1);  // mid-span is the largest
  valid_rows(t, "largest chord force");
  CHECK(valid_rows(t, "largest force of a diagonal").size() == 2);
  not_covered_row(t, "end moment of a chord", "no shear");
  not_covered_row(t, "twist", "no torque");
  not_covered_row(t, "deflection of the axis, along -y", "no load");

  const HandChecks p = table_of(
      "points", demo(), {point_load(ChordOf::bottom_left, 6.0, 600.0), point_load(ChordOf::bottom_right, 6.0, 600.0)});
  valid_rows(p, "deflection of the axis, down");
  valid_rows(p, "largest chord force");
  // R. C. Hibbeler, Structural Analysis, beams with one load (value from memory): R = P/2 at each end
  for (const HandCheck& row : valid_rows(p, "reaction, up"))
    CHECK(row.closed_form == doctest::Approx(600).epsilon(1e-12));
}

TEST_CASE("box with braced sides: wind needs diaphragms where supports lie on one side") {
  const HandChecks soft = table_of("no diaphragms", demo(), {wind_on(Side::left, 400.0)});
  not_covered_row(soft, "deflection of the axis, along -y", "no diaphragms");
  BoxGirder stiff = demo();
  stiff.diaphragms = diaphragms_every(4, brace_bar());
  const HandChecks t = table_of("diaphragms", stiff, {wind_on(Side::left, 400.0)});
  valid_rows(t, "deflection of the axis, along -y");
  CHECK(valid_rows(t, "end moment of a chord").size() == 2);  // both open faces share the wind
  CHECK(valid_rows(t, "end moment of a cross member").size() == 2);
  // half of 0.4 kPa * 0.5 m * 12 m = 2400 N at each end
  for (const HandCheck& row : valid_rows(t, "reaction, along y"))
    CHECK(row.closed_form == doctest::Approx(1200).epsilon(1e-12));
}

TEST_CASE("box with braced sides: hung, continuous, cantilever") {
  BoxGirder hung = demo();
  hung.supports = hung_at({2.0, 10.0});
  const HandChecks t = table_of("hung", hung, {self_weight(), line_load(box_bottom, 500.0)});
  valid_rows(t, "deflection of the axis, down");
  valid_rows(t, "force of a diagonal where the shear is smooth");
  not_covered_row(t, "largest force of a diagonal", "chords carry more");

  BoxGirder three = demo();
  three.supports = continuous_over({0.0, 6.0, 12.0});
  const HandChecks c = table_of("three", three, {self_weight(), line_load(box_bottom, 500.0)});
  CHECK(valid_rows(c, "reaction, up").size() == 3);
  CHECK(valid_rows(c, "reaction, up")[1].expected == 0.05);

  // the middle support lowered by 4 mm takes less
  const HandChecks s =
      table_of("settled", three,
               {line_load(box_bottom, 500.0), settlement(ChordOf::bottom_left, 6.0, Motion::uz, -0.004),
                settlement(ChordOf::bottom_right, 6.0, Motion::uz, -0.004)});
  CHECK(valid_rows(s, "reaction, up").size() == 3);
  CHECK(s.rows[4].closed_form < c.rows[4].closed_form);

  BoxGirder out = demo();
  out.bays = 12;
  out.supports = cantilever();
  const HandChecks k =
      table_of("cantilever", out,
               {self_weight(), line_load(box_bottom, 500.0), point_load(ChordOf::bottom_left, 6.0, 100.0),
                point_load(ChordOf::bottom_right, 6.0, 100.0)});
  CHECK(valid_rows(k, "deflection of the axis, down").size() == 2);
}

TEST_CASE("box braced all round: torque by Bredt") {
  BoxGirder box = demo();
  box.faces = {.top = zigzag(), .bottom = zigzag(), .left = zigzag(), .right = zigzag()};
  box.diaphragms = diaphragms_every(4, brace_bar());
  const HandChecks t = table_of("torque", box, {point_load(ChordOf::bottom_left, 6.0, 1200.0)});
  valid_rows(t, "twist");
  const std::vector<HandCheck> d = valid_rows(t, "largest force of a diagonal");
  REQUIRE(d.size() == 2);  // of the sides: V/2 +- T/(2b) is a quarter and three quarters of 600 N
  CHECK(std::abs(d[1].closed_form / d[0].closed_form) == doctest::Approx(3).epsilon(1e-9));
  not_covered_row(t, "largest force of a diagonal", "strain stretches");
  box.diaphragms = {};
  not_covered_row(table_of("no diaphragms", box, {point_load(ChordOf::bottom_left, 6.0, 1200.0)}), "twist",
                  "no diaphragms");
}

TEST_CASE("open ladder: portal method and shear-flexible beam") {
  for (const auto& actions : std::vector<std::vector<Action>>{
           {self_weight(), line_load(ladder_bottom, 500.0)},
           {point_load(ChordOf::bottom, 6.0, 1000.0)},
           {point_load(ChordOf::bottom, 4.0, 700.0), point_load(ChordOf::top, 8.0, 1000.0)}}) {
    const HandChecks t = table_of("open", ladder(open(cross_bar())), actions);
    valid_rows(t, "deflection of the axis, down");
    valid_rows(t, "end moment of a chord");
    valid_rows(t, "end moment of a cross member");
    valid_rows(t, "largest chord force");
  }
  // 1 kN at mid-span: V = 500 N; end moment of a cross member V a/2 = 125 N m (portal method)
  const HandChecks t = table_of("point", ladder(open(cross_bar())), {point_load(ChordOf::bottom, 6.0, 1000.0)});
  CHECK(std::abs(valid_rows(t, "end moment of a cross member")[0].closed_form) == doctest::Approx(125).epsilon(1e-9));
  // across its web the chords bend alone: exact
  const HandChecks w = table_of("wind", ladder(open(cross_bar())), {wind_on_bars(500.0, {0, 1, 0})});
  CHECK(std::abs(valid_rows(w, "deflection of the axis, along -y")[0].difference()) < 1e-9);
}

TEST_CASE("ladder of every layout") {
  const Bar b = brace_bar(), p = cross_bar();
  const std::vector<std::pair<const char*, Face>> webs{{"alternating", braced(alternating, b, p)},
                                                       {"reversed", braced(alternating_reversed, b, p)},
                                                       {"single", braced(single_direction, b, p)},
                                                       {"single reversed", braced(single_direction_reversed, b, p)},
                                                       {"towards", braced(mirrored_towards, b, p)},
                                                       {"away", braced(mirrored_away, b, p)},
                                                       {"crossed", braced(crossed, b, p)},
                                                       {"K", braced(k_braced, b, p)},
                                                       {"two bays", Face(braced(alternating, b, p)).spanning(2)}};
  for (const auto& [what, web] : webs)
    for (const auto& actions : std::vector<std::vector<Action>>{{self_weight(), line_load(ladder_bottom, 500.0)},
                                                                {point_load(ChordOf::bottom, 6.0, 1000.0)}}) {
      const HandChecks t = table_of(what, ladder(web), actions);
      valid_rows(t, "deflection of the axis, down");
      valid_rows(t, "largest chord force");
      valid_rows(t, "largest force of a diagonal");
    }
}

TEST_CASE("triangular girder: statics of three faces") {
  const HandChecks t = table_of("uniform", triangular(), {self_weight(), line_load(triangle_base, 500.0)});
  valid_rows(t, "deflection of the axis, down");
  CHECK(valid_rows(t, "largest force of a diagonal").size() == 2);
  const HandChecks e = table_of("one chord", triangular(), {point_load(ChordOf::base_left, 6.0, 1000.0)});
  valid_rows(e, "twist");
  const HandChecks w = table_of("wind", triangular(), {wind_on(Side::left, 300.0)});
  valid_rows(w, "deflection of the axis, along -y");
}

namespace {
/// A zigzag that does not say what it is.
struct OwnPanel {
  Bar bar, post;
  std::vector<Piece> pieces(const PanelSite&) const {
    return {{{0, 0}, {0, 1}, Role::cross_member, post, {}, 0},
            {{1, 0}, {1, 1}, Role::cross_member, post, {}, 0},
            {{0, 0}, {1, 1}, Role::diagonal, bar, {}, 0}};
  }
};
}  // namespace

TEST_CASE("what no closed form covers says why") {
  const std::vector<Action> load{self_weight(), line_load(ladder_bottom, 500.0)};
  const HandChecks own = table_of("own panel", ladder(OwnPanel{brace_bar(), cross_bar()}), load);
  not_covered_row(own, "deflection of the axis, down", "own panel");
  not_covered_row(own, "largest chord force", "own panel");
  not_covered_row(own, "largest force of a diagonal", "own panel");

  LadderGirder bent = ladder(open(cross_bar()));
  bent.axis.camber = 0.2;
  const Analysis a(bent);
  const HandChecks c = hand_checks(a.solve(load));
  not_covered_row(c, "deflection", "cambered");
  not_covered_row(c, "reaction, up", "cambered");

  const HandChecks gap = table_of("gap", ladder(braced(alternating, brace_bar(), cross_bar(), Joint{}, 0.03)), load);
  not_covered_row(gap, "largest force of a diagonal", "beside the joints");
  const HandChecks warm = table_of("warm", demo(), {self_weight(), warming_of(ChordOf::top_left, 20.0)});
  not_covered_row(warm, "deflection", "temperature");
  LadderGirder uneven = ladder(open(cross_bar()));
  uneven.bays = 0;
  uneven.bay_lengths.assign(12, 0.5);
  uneven.bay_lengths.push_back(0.4);
  not_covered_row(table_of("uneven", uneven, {point_load(ChordOf::bottom, 3.0, 1000.0)}),
                  "deflection of the axis, down", "differ in length");
}

TEST_CASE("a plane that is only taken along by the other one is not promised") {
  // wind from the left with a fraction of a per cent of its force upwards; supports and guys on different chords
  BoxGirder g = demo();
  g.diaphragms = diaphragms_at({0, 4, 20, 24}, brace_bar());
  g.supports = held_by({hold(ChordOf::top_left, 2.0).fix({Motion::uz}), hold(ChordOf::top_right, 2.0).fix({Motion::uz}),
                        hold(ChordOf::top_left, 10.0).fix({Motion::uz}), hold(ChordOf::top_right, 10.0).fix({Motion::uz}),
                        hold(ChordOf::bottom_right, 2.0).fix({Motion::ux, Motion::uy}),
                        hold(ChordOf::bottom_right, 10.0).fix({Motion::uy})});
  const Analysis a{g};
  const HandChecks t = hand_checks(a.solve({line_load(box_bottom, Vec3<>{0, -500, 0.5}, Vec3<>{0, -500, 0.5})}));
  CHECK(t.agree());
  std::size_t sideways = 0, down = 0;
  for (const HandCheck& row : t.rows) {
    if (row.quantity == "deflection of the axis, along -y" && row.valid) ++sideways;
    if (row.quantity == "deflection of the axis, down") {
      ++down;
      CHECK_FALSE(row.valid);
      CHECK(row.reason.find("other plane") != std::string::npos);
    }
  }
  CHECK(sideways >= 1);
  CHECK(down >= 1);
}

TEST_CASE("settlements and warming alone: no loads, still sums") {
  table_of("settled", demo(),
           {settlement(ChordOf::bottom_left, 12.0, Motion::uz, -0.01),
            settlement(ChordOf::bottom_right, 12.0, Motion::uz, -0.01)});
  table_of("warm", demo(), {warming(30.0)});
}

TEST_CASE("rounding is printed as nothing, what is small as it is, and data keep both") {
  HandCheck row = detail::compared(detail::hand_row("sum", "all supports", "N", 2.37e-13), 1e-9,
                                   {-4e-14, true, "{a}", "", {{"a", -4e-14}}});
  row.scale = 2000.0;
  CHECK(row.printed(row.solver) == "0");
  CHECK(row.printed(row.closed_form) == "0");
  CHECK(row.solver == 2.37e-13);
  HandChecks t{"screen", {}, {row}};
  std::ostringstream people;
  people << t;
  CHECK(people.str().find("2.37e-13") == std::string::npos);
  row.scale = 1e-6;  // beside motions of a thousandth of a millimetre a millionth of them is small, not rounding
  row.solver = 2.5e-12;
  CHECK(row.printed(row.solver) == "2.5e-12");
  // nothing to measure against but itself: shown as it is
  CHECK(detail::not_covered(detail::hand_row("twist", "", "rad", 3e-15), "no torque acts").printed(3e-15) == "3e-15");
}

TEST_CASE("the table finds a wrong number") {
  HandCheck row = detail::compared(detail::hand_row("deflection", "middle", "m", 0.011), 0.05,
                                   {0.01, true, "{a}", "", {{"a", 0.01}}});
  CHECK(row.valid);
  CHECK(row.difference() == doctest::Approx(0.1));
  CHECK_FALSE(row.agrees());
  HandChecks t;
  t.rows.push_back(row);
  CHECK_FALSE(t.agree());
  std::ostringstream out;
  out << t;
  CHECK(out.str().find("DIFFERS") != std::string::npos);
}
