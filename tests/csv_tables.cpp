// SPDX-License-Identifier: MIT
// Tables of results: their numbers are the library's, in balance, and read back from CSV as the same bits.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/baywork.hpp>
#include <baywork/data.hpp>

#include "support/random.hpp"
#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;

/// RFC 4180 read back, by its grammar: records of fields, fields with or without quotation marks.
std::vector<std::vector<std::string>> records(const std::string& text) {
  std::vector<std::vector<std::string>> out;
  std::size_t i = 0;
  while (i < text.size()) {
    out.emplace_back();
    for (bool more = true; more;) {
      std::string field;
      if (text[i] == '"') {
        for (++i; text[i] != '"' || text[i + 1] == '"'; ++i) {
          field += text[i];
          if (text[i] == '"') ++i;
        }
        ++i;
      } else {
        while (text[i] != ',' && text[i] != '\r') field += text[i++];
      }
      out.back().push_back(field);
      more = text[i] == ',';
      if (!more) REQUIRE(text.substr(i, 2) == "\r\n");
      i += more ? 1 : 2;
    }
  }
  return out;
}
std::vector<std::vector<std::string>> written(const DataTable& t) {
  std::ostringstream out;
  write_csv(out, t);
  return records(out.str());
}

BoxGirder box() {
  const auto side = braced(alternating, brace_bar(), cross_bar());
  return {.bays = 8,
          .bay_length = 0.5_m,
          .width = 0.5_m,
          .depth = 0.5_m,
          .chord = chord_bar(),
          .faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side},
          .diaphragms = end_diaphragms(brace_bar()),
          .supports = simply_supported()};
}
std::vector<LoadCase> cases_of_box() {
  return {{"self-weight", Nature::permanent, {self_weight()}},
          {"screen, \"rolled\"", Nature::imposed, {line_load({"bottom left", "bottom right"}, 60.0)}},
          {"wind", Nature::wind, {wind_on(Side::left, 200.0)}}};
}

/// The number in a column of a row.
double number(const DataTable& t, std::size_t row, const std::string& column) {
  for (std::size_t c = 0; c < t.columns.size(); ++c)
    if (t.columns[c] == column) {
      if (const auto* v = std::get_if<double>(&t.rows[row][c])) return *v;
      if (const auto* n = std::get_if<std::size_t>(&t.rows[row][c])) return static_cast<double>(*n);
      return std::numeric_limits<double>::quiet_NaN();
    }
  FAIL("no column " << column);
  return 0;
}
std::string words(const DataTable& t, std::size_t row, const std::string& column) {
  for (std::size_t c = 0; c < t.columns.size(); ++c)
    if (t.columns[c] == column) return std::get<std::string>(t.rows[row][c]);
  FAIL("no column " << column);
  return "";
}

}  // namespace

TEST_CASE("numbers written for data read back as the same bits") {
  Random r(4180);
  std::vector<double> all{0.1,      1.0 / 3.0,
                          1e5,      123456789012345680.0,
                          5e-324,   std::numeric_limits<double>::denorm_min() * 3,
                          2.5e-310, std::numeric_limits<double>::max(),
                          1e22,     9007199254740993.0,
                          0.3};
  for (int i = 0; i < 2000; ++i) all.push_back((r.chance(0.5) ? 1 : -1) * r.over_orders(1e-300, 1e300));
  for (const double v : all) {
    CAPTURE(v);
    CHECK(std::strtod(text::exact(v).c_str(), nullptr) == v);
  }
  CHECK(text::exact(0.1) == "0.1");
  CHECK(text::exact(-0.25) == "-0.25");
}

TEST_CASE("CSV follows RFC 4180: quotation marks, line ends, cells with nothing in them") {
  DataTable t{"t", {"plain", "with, comma"}, {}};
  detail::RowFiller(t) << "say \"now\"" << 0.1;
  detail::RowFiller(t) << "two\r\nlines" << std::numeric_limits<double>::quiet_NaN();
  detail::RowFiller(t) << "" << std::numeric_limits<double>::infinity();
  detail::RowFiller(t) << DataCell{} << true;
  detail::RowFiller(t) << std::size_t{7} << -0.0;
  std::ostringstream out;
  write_csv(out, t);
  // RFC 4180, section 2: rules 1 (CRLF), 3 (header), 4 (commas), 6 and 7 (quotation marks)
  CHECK(out.str() ==
        "plain,\"with, comma\"\r\n\"say \"\"now\"\"\",0.1\r\n\"two\r\nlines\",\r\n\"\",inf\r\n,true\r\n7,0\r\n");
  CHECK(records(out.str())[1][0] == "say \"now\"");
  CHECK(records(out.str())[2][0] == "two\r\nlines");

  t.rows[0].pop_back();
  CHECK_THROWS_WITH_AS(write_csv(out, t), "table t, row 1: it has 1 cells; 2, one for each column, are accepted",
                       BadDescription);
}

TEST_CASE("tables of a solved girder: loads balance reactions, reactions their cases, members their ends") {
  const Analysis a{box()};
  const Cases cases = a.solve(cases_of_box());
  const DataTable c = case_data(cases), r = reaction_data(cases);
  REQUIRE(c.rows.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    double largest = 0;
    for (const char* axis : {"x", "y", "z"}) {
      const std::string x = axis;
      double sum = 0;
      for (std::size_t k = 0; k < r.rows.size(); ++k)
        if (words(r, k, "case") == words(c, i, "case")) sum += number(r, k, "force_" + x + "_N");
      largest = std::max(largest, std::abs(number(c, i, "load_" + x + "_N")));
      CHECK(sum == doctest::Approx(number(c, i, "reaction_" + x + "_N")));
      CHECK(std::abs(sum + number(c, i, "load_" + x + "_N")) < 1e-9 * (1 + largest));
    }
    CHECK(number(c, i, "certified_error") < 1e-10);
  }
  // 60 N/m x 4 m
  CHECK(number(c, 1, "load_z_N") == doctest::Approx(-240.0));
  CHECK(words(c, 2, "nature") == "wind");

  const DataTable m = member_force_data(cases);
  REQUIRE(m.rows.size() == 3 * a.model().frame.members.size());
  for (std::size_t i = 0; i < m.rows.size(); ++i)
    for (const std::string f : {"N", "Vy", "Vz", "T", "My", "Mz"}) {
      const std::string unit = f[0] == 'N' || f[0] == 'V' ? "_N" : "_Nm";
      const double least = number(m, i, f + "_least" + unit), greatest = number(m, i, f + "_greatest" + unit);
      const double slack = 1e-9 * (1 + std::abs(least) + std::abs(greatest));
      for (const char* end : {"_start", "_end"}) {
        CHECK(number(m, i, f + end + unit) >= least - slack);
        CHECK(number(m, i, f + end + unit) <= greatest + slack);
      }
    }
  // N of a bottom chord under its self-weight is tension at mid-span: positive
  const std::size_t mid = a.model().chord_member(3, 0);
  CHECK(words(m, mid, "place") == "bay 4, bottom left chord");
  CHECK(number(m, mid, "bay") == 4);
  CHECK(number(m, mid, "chord") == 1);
  CHECK(number(m, mid, "N_start_N") > 0);

  const DataTable model = model_data(a);
  CHECK(number(model, 0, "bays") == 8);
  CHECK(number(model, 0, "span_m") == doctest::Approx(4.0));
}

TEST_CASE("tables of an open face: the portal method beside the solver") {
  const Analysis a{box()};
  const Cases cases = a.solve(cases_of_box());
  const PanelTable panels = panel_table(cases["wind"], Side::bottom);
  const DataTable p = panel_data(panels), c = cross_member_data(panels);
  REQUIRE(p.rows.size() == 8);
  REQUIRE(c.rows.size() == 9);
  for (std::size_t i = 0; i < 8; ++i) {
    // each of two chords takes half the shear and bends about its middle: V/2 x a/2 (portal method, common practice)
    CHECK(number(p, i, "portal_chord_Nm") ==
          doctest::Approx(std::abs(number(p, i, "shear_N")) * number(p, i, "length_m") / 4));
    CHECK(number(p, i, "shear_by_diagonals_N") == 0.0);
    CHECK(number(p, i, "bay") == static_cast<double>(i + 1));
  }
  CHECK(!is_finite(number(c, 8, "portal_Nm")));  // no panel begins at the last station
  CHECK(written(c)[9].back().empty());
}

TEST_CASE("every table's CSV has its cells: numbers as the same bits, words as they are") {
  const Analysis a{box()};
  const Cases cases = a.solve(cases_of_box());
  const verify::Proof proof = verify::by_material(cases, en1990::ultimate());
  rating::TableTerms terms;
  terms.patterns = {rating::Pattern::uniform, rating::Pattern::centre_point};
  const auto of_bays = [](std::size_t bays) {
    BoxGirder b = box();
    b.bays = bays;
    return b;
  };
  const rating::LoadTable loads = rating::load_table(std::vector<std::size_t>{8, 12}, of_bays, terms);
  const PanelTable panels = panel_table(cases["wind"], Side::bottom);
  const std::vector<DataTable> all{model_data(a),
                                   case_data(cases),
                                   reaction_data(cases),
                                   member_force_data(cases),
                                   panel_data(panels),
                                   cross_member_data(panels),
                                   hand_check_data({hand_checks(cases[0]), hand_checks(cases[2])}),
                                   proof_row_data(proof),
                                   proof_term_data(proof),
                                   load_table_data(loads),
                                   load_table_term_data(loads),
                                   interaction_data(rating::interaction_curve(rating::Rater(cases), {.rays = 8}))};
  for (const DataTable& t : all) {
    CAPTURE(t.name);
    CHECK(!t.rows.empty());
    const auto read = written(t);
    REQUIRE(read.size() == t.rows.size() + 1);
    CHECK(read[0] == t.columns);
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
      REQUIRE(read[i + 1].size() == t.columns.size());
      for (std::size_t c = 0; c < t.columns.size(); ++c) {
        const std::string& cell = read[i + 1][c];
        if (const auto* v = std::get_if<double>(&t.rows[i][c])) CHECK(std::strtod(cell.c_str(), nullptr) == *v);
        if (const auto* n = std::get_if<std::size_t>(&t.rows[i][c])) CHECK(cell == std::to_string(*n));
        if (const auto* s = std::get_if<std::string>(&t.rows[i][c])) CHECK(cell == *s);
      }
    }
  }
  const DataTable& rows = all[7];
  double most = 0;
  for (std::size_t i = 0; i < rows.rows.size(); ++i) most = std::max(most, number(rows, i, "utilisation"));
  CHECK(most == proof.worst().utilisation);
  CHECK(words(all[8], 0, "text") == proof.verdict());
  // a uniform load has no points, points have no load per metre
  const DataTable& table = all[9];
  REQUIRE(table.rows.size() == 4);
  CHECK(!is_finite(number(table, 0, "each_N")));
  CHECK(!is_finite(number(table, 1, "uniform_N_per_m")));
  CHECK(number(table, 0, "total_N") == doctest::Approx(4.0 * number(table, 0, "uniform_N_per_m")));
  CHECK(number(table, 1, "total_N") == number(table, 1, "each_N"));
}

TEST_CASE("where a bar is outside the scope, no load is told and the utilisation is infinite") {
  material::Material soft = material::en_aw_6082_t6();
  soft.steps.clear();  // no strengths: no check can be made
  BoxGirder b = box();
  b.chord = Bar{RoundTube{60.3_mm, 5.0_mm}, soft};
  const Analysis a{b};
  const Cases cases = a.solve(cases_of_box());
  const DataTable rows = proof_row_data(verify::by_material(cases, en1990::ultimate()));
  std::size_t outside = 0;
  for (std::size_t i = 0; i < rows.rows.size(); ++i) {
    if (words(rows, i, "check") != "outside the scope") continue;
    ++outside;
    CHECK(number(rows, i, "utilisation") == std::numeric_limits<double>::infinity());
    CHECK(std::holds_alternative<std::monostate>(rows.rows[i][11]));
    CHECK(!words(rows, i, "reason").empty());
  }
  CHECK(outside > 0);
  rating::TableTerms terms;
  terms.patterns = {rating::Pattern::uniform};
  const DataTable t = load_table_data(rating::load_table(
      std::vector<int>{8}, [&](int) { return b; }, terms));
  CHECK(words(t, 0, "verdict") == "outside the scope");
  CHECK(!is_finite(number(t, 0, "uniform_N_per_m")));
  CHECK(!is_finite(number(t, 0, "total_N")));
}
