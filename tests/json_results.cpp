// SPDX-License-Identifier: MIT
// Tables of results as JSON: cells under their columns' names, nothing and infinity told apart, tables of one name
// joined.
#include <doctest/doctest.h>

#include <cstddef>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/json.hpp>

namespace {

using namespace baywork;
using Json = nlohmann::json;

std::string written(const std::vector<DataTable>& tables) {
  std::ostringstream out;
  write_json(out, tables);
  return out.str();
}

DataTable table(const std::string& name) {
  DataTable t{name, {"words", "number_m", "count", "yes"}, {}};
  detail::RowFiller(t) << "two\nlines, \"quoted\" \xC3\xBC" << 0.1 << std::size_t{18446744073709551615U} << true;
  detail::RowFiller(t) << DataCell{} << std::numeric_limits<double>::infinity() << DataCell{} << false;
  detail::RowFiller(t) << "" << std::numeric_limits<double>::quiet_NaN() << std::size_t{0} << DataCell{};
  return t;
}

}  // namespace

TEST_CASE("cells of a table come back from JSON as they were") {
  const std::string text = written({table("things")});
  const Json file = Json::parse(text);
  CHECK(file["format"] == "baywork results");
  CHECK(file["version"] == 1);
  CHECK(file["software"] == std::string("baywork ") + version_text);
  const Json& rows = file["tables"]["things"];
  REQUIRE(rows.size() == 3);
  CHECK(rows[0]["words"] == "two\nlines, \"quoted\" \xC3\xBC");
  CHECK(rows[0]["number_m"].get<double>() == 0.1);
  CHECK(rows[0]["count"].get<std::size_t>() == 18446744073709551615U);
  CHECK(rows[0]["yes"] == true);
  CHECK(rows[1]["words"].is_null());
  CHECK(rows[1]["number_m"] == "infinite");  // JSON has no infinity (RFC 8259, section 6)
  CHECK(rows[1]["yes"] == false);
  CHECK(rows[2]["words"] == "");
  CHECK(rows[2]["number_m"].is_null());
  CHECK(rows[2]["count"] == 0);
  CHECK(rows[2]["yes"].is_null());
  CHECK(written({table("things")}) == text);
}

TEST_CASE("tables of one name are joined, others stand beside each other, none is an empty object") {
  const Json file = Json::parse(written({table("panels"), table("cases"), table("panels")}));
  CHECK(file["tables"].size() == 2);
  CHECK(file["tables"]["panels"].size() == 6);
  CHECK(file["tables"]["cases"].size() == 3);
  DataTable empty = table("none");
  empty.rows.clear();
  CHECK(Json::parse(written({empty}))["tables"]["none"] == Json::array());
  CHECK(Json::parse(written({}))["tables"] == Json::object());
}

TEST_CASE("what JSON cannot hold is refused") {
  DataTable t = table("things");
  t.rows[1].pop_back();
  CHECK_THROWS_WITH_AS(written({t}), "table things, row 2: it has 3 cells; 4, one for each column, are accepted",
                       BadDescription);
  t = table("things");
  t.rows[0][0] = std::string("\xE2\x82");  // a character cut off
  CHECK_THROWS_WITH_AS(written({t}), "table things: a name or text is not UTF-8; text in UTF-8 is accepted",
                       BadDescription);
  t.rows[0][0] = std::string("\xEF\xBF\xBD");  // the replacement character itself is a character like others
  CHECK(Json::parse(written({t}))["tables"]["things"][0]["words"] == "\xEF\xBF\xBD");
}
