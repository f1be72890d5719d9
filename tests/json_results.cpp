// SPDX-License-Identifier: MIT
// Tables of results as JSON: cells under their columns' names, nothing and infinity told apart, tables of one name
// joined; and words of the library that the schemas must know.
#include <doctest/doctest.h>

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <limits>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <baywork/json.hpp>
#include <baywork/rating.hpp>

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

/// All words that a schema accepts somewhere.
void collect_words(const Json& schema, std::set<std::string>& out) {
  if (schema.is_object()) {
    if (schema.contains("const") && schema["const"].is_string()) out.insert(schema["const"].get<std::string>());
    if (schema.contains("enum"))
      for (const Json& word : schema["enum"]) out.insert(word.get<std::string>());
  }
  if (schema.is_structured())
    for (const Json& part : schema) collect_words(part, out);
}
std::set<std::string> words_of_schema(const std::string& name) {
  std::ifstream in(std::filesystem::path(__FILE__).parent_path() / "../docs/schema" / name);
  std::set<std::string> out;
  collect_words(Json::parse(in), out);
  return out;
}
template <class E>
void all_known(const std::set<std::string>& words) {
  std::size_t n = 0;
  detail::for_each_word<E>([&](E, const char* word) {
    CHECK_MESSAGE(words.count(word) == (word == std::string("casting") ? 0 : 1), std::string(word));  // no girder has one
    ++n;
  });
  CHECK(n > 1);
}

}  // namespace

TEST_CASE("the schemas know every word that a table or girder file can hold") {
  const std::set<std::string> results = words_of_schema("results.schema.json");
  for (int i = 0; *name(static_cast<verify::Check>(i)) != '\0'; ++i)
    CHECK_MESSAGE(results.count(name(static_cast<verify::Check>(i))) == 1, name(static_cast<verify::Check>(i)));
  for (int i = 0; *name(static_cast<rating::Verdict>(i)) != '\0'; ++i)
    CHECK_MESSAGE(results.count(name(static_cast<rating::Verdict>(i))) == 1, name(static_cast<rating::Verdict>(i)));
  all_known<Nature>(results);
  const std::set<std::string> girder = words_of_schema("girder.schema.json");
  all_known<ShapeKind>(girder);
  all_known<PinAxis>(girder);
  all_known<BoltClass>(girder);
  all_known<material::Family>(girder);
  all_known<material::BucklingClass>(girder);
  all_known<material::Product>(girder);
  all_known<material::AlloyGroup>(girder);
  all_known<material::Welding>(girder);
  all_known<Layout>(girder);
  all_known<Supports::Way>(girder);
  all_known<Restraint::Kind>(girder);
  all_known<Motion>(girder);
  all_known<Nature>(girder);
  all_known<CarriedBy>(girder);
  for (const char* word : detail::action_words) CHECK_MESSAGE(girder.count(word) == 1, word);
  for (const char* word : connector_names) CHECK_MESSAGE(girder.count(word) == 1, word);
}

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
  for (const double v : {std::numeric_limits<double>::quiet_NaN(), -std::numeric_limits<double>::infinity()}) {
    t = table("things");
    t.rows[1][1] = v;  // not by way of number_cell: it must not be taken for infinity
    CHECK_THROWS_WITH_AS(written({t}), doctest::Contains("table things, row 2: number_m is "), BadDescription);
  }
  t = table("things");
  t.rows[0][0] = std::string("\xE2\x82");  // a character cut off
  CHECK_THROWS_WITH_AS(written({t}), "table things: a name or text is not UTF-8; text in UTF-8 is accepted",
                       BadDescription);
  t.rows[0][0] = std::string("\xEF\xBF\xBD");  // the replacement character itself is a character like others
  CHECK(Json::parse(written({t}))["tables"]["things"][0]["words"] == "\xEF\xBF\xBD");
}
