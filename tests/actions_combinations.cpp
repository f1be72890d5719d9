// SPDX-License-Identifier: MIT
// Combination sets against lists made by hand: by nature, several together, notional loads, accidents.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include <baywork/load.hpp>

#include "support/refused.hpp"

using namespace baywork;

namespace {

std::string listed(const CombinationSet& set, const std::vector<CaseKind>& cases) {
  std::string out;
  for (const Combination& c : combinations(set, cases)) {
    for (const double f : c.factors) out += text::number(f) + " ";
    out.back() = ';';
  }
  return out;
}

const CaseKind weight{"weight", Nature::permanent, ""}, people{"people", Nature::imposed, ""},
    wind{"wind", Nature::wind, ""}, snow{"snow", Nature::snow, ""}, summer{"summer", Nature::temperature, ""};

}  // namespace

TEST_CASE("each nature has its own gamma") {
  // event structures: 1.35 / 1.0, imposed 1.35, wind 1.5, no psi_0 (common practice, values from memory)
  CHECK(listed(event_practice::ultimate(), {weight, people, wind}) ==
        "1.35 0 0;1.35 1.35 0;1.35 0 1.5;1.35 1.35 1.5;"
        "1 0 0;1 1.35 0;1 0 1.5;1 1.35 1.5;");
  // and a set of one's own: plain data
  CombinationSet own = event_practice::ultimate();
  own.permanent_unfavourable = 1.1;
  own.wind = {1.2, 0.5};
  CHECK(listed(own, {weight, people, wind}) ==
        "1.1 0 0;1.1 1.35 0;1.1 0 1.2;1.1 1.35 0.6;1.1 1.35 1.2;"
        "1 0 0;1 1.35 0;1 0 1.2;1 1.35 0.6;1 1.35 1.2;");
}

TEST_CASE("allowable-stress combinations, ASCE/SEI 7-05 2.4.1 (values from memory)") {
  // D; D + L; D + W; D + 0.75 L + 0.75 W; the same with 0.6 D
  CHECK(listed(asce7::allowable_stress(), {weight, people, wind}) ==
        "1 0 0;1 1 0;1 0 1;1 0.75 0.75;0.6 0 0;0.6 1 0;0.6 0 1;0.6 0.75 0.75;");
  // D + L + T in full; D + 0.75 (L + S) + T
  const std::string all = listed(asce7::allowable_stress(), {weight, people, snow, summer});
  CHECK(has(all, "1 1 0 1;"));
  CHECK(has(all, "1 0.75 0.75 1;"));
  CHECK(!has(all, "1 1 1 "));
}

TEST_CASE("notional loads act in full beside whatever leads, and lead nothing themselves") {
  const CaseKind lean{"lean", Nature::notional, ""};
  // EN 1990: gamma 1.5 of the notional load beside 1.5 people, 1.5 people + 0.9 wind, 1.05 people + 1.5 wind
  CHECK(listed(en1990::ultimate(), {weight, people, wind, lean}) ==
        "1.35 0 0 0;1.35 1.5 0 0;1.35 0 1.5 0;1.35 1.5 0.9 0;1.35 1.05 1.5 0;"
        "1.35 0 0 1.5;1.35 1.5 0 1.5;1.35 0 1.5 1.5;1.35 1.5 0.9 1.5;1.35 1.05 1.5 1.5;"
        "1 0 0 0;1 1.5 0 0;1 0 1.5 0;1 1.5 0.9 0;1 1.05 1.5 0;"
        "1 0 0 1.5;1 1.5 0 1.5;1 0 1.5 1.5;1 1.5 0.9 1.5;1 1.05 1.5 1.5;");
  // allowable stress: with the load it stems from, it is not one of several
  CHECK(has(listed(asce7::allowable_stress(), {weight, people, lean}), "1 1 1;"));
}

TEST_CASE("accidental combinations, EN 1990 (6.11b): G + A + psi_1 Q_1 + psi_2 Q_i, one accident at a time") {
  const CaseKind left{"left hoist slack", Nature::accidental, ""}, right{"right hoist slack", Nature::accidental, ""};
  // psi_1 and psi_2: imposed 0.7 and 0.6, wind 0.2 and 0 (EN 1990:2002 Table A1.1, categories C and D, values from
  // memory)
  CHECK(listed(en1990::accidental(), {weight, people, wind, left, right}) ==
        "1 0 0 0 0;1 0.7 0 0 0;1 0 0.2 0 0;1 0.6 0.2 0 0;"
        "1 0 0 1 0;1 0.7 0 1 0;1 0 0.2 1 0;1 0.6 0.2 1 0;"
        "1 0 0 0 1;1 0.7 0 0 1;1 0 0.2 0 1;1 0.6 0.2 0 1;");
  // any other set leaves accidents out
  for (const CombinationSet& set : {en1990::ultimate(), event_practice::ultimate(), asce7::allowable_stress()})
    for (const Combination& c : combinations(set, {weight, people, left})) CHECK(c.factors[2] == 0.0);
}

TEST_CASE("wind in service and out of service exclude each other; many exclusive cases cost little") {
  std::vector<CaseKind> cases{weight, people};
  for (int i = 0; i < 30; ++i) cases.push_back({"wind " + std::to_string(i), Nature::wind, "wind"});
  // 1 + 30 sets without people: 31; with people alone 1, and with each wind two: 61
  CHECK(combinations(en1990::ultimate(), cases).size() == 2 * (31 + 61));
  for (const Combination& c : combinations(en1990::ultimate(), cases)) {
    int winds = 0;
    for (std::size_t i = 2; i < cases.size(); ++i) winds += c.factors[i] != 0.0;
    CHECK(winds <= 1);
  }
}

TEST_CASE("several words: one shared is enough to exclude") {
  CHECK(detail::share_word("wind, hoists move", "screen,hoists move"));
  CHECK(detail::share_word("wind", "wind"));
  CHECK(!detail::share_word("wind", "windy"));
  CHECK(!detail::share_word("a, b", "c ,d"));
  CHECK(!detail::share_word("", ""));
  CHECK(!detail::share_word(" , ", ","));
  const CaseKind rest{"rest", Nature::imposed, "screen"}, moving{"moving", Nature::imposed, "screen, hoists move"},
      breeze{"in service", Nature::wind, "wind"}, storm{"out of service", Nature::wind, "wind, hoists move"};
  // by hand: nothing; rest; moving; breeze; rest + breeze twice, moving + breeze twice; storm; rest + storm twice
  const std::vector<Combination> all = combinations(en1990::characteristic(), {rest, moving, breeze, storm});
  CHECK(all.size() == 11);
  for (const Combination& c : all) CHECK(!(c.factors[1] != 0.0 && c.factors[3] != 0.0));
}

TEST_CASE("a set in words says whose values it has; impossible factors are refused") {
  CHECK(words(en1990::ultimate()) ==
        "EN 1990 (6.10) ultimate, EN 1990:2002+A1:2005, Tables A1.1 and A1.2(B), recommended values: permanent 1.35 "
        "and 1, "
        "imposed 1.5 (psi_0 0.7), wind 1.5 (psi_0 0.6), snow 1.5 (psi_0 0.5), temperature 1.5 (psi_0 0.6)");
  CHECK(has(words(event_practice::ultimate()), "values from memory"));
  CHECK(has(words(asce7::allowable_stress()), "0.75 of imposed, wind and snow where several act together"));
  CHECK(has(words(en1990::accidental()), "accidental 1"));
  CombinationSet bad = en1990::ultimate();
  bad.wind.gamma = -1.5;
  try {
    (void)combinations(bad, {weight, wind});
    FAIL("a negative factor was taken");
  } catch (const BadDescription& e) {
    CHECK(has(e.what(), "EN 1990 (6.10) ultimate, wind"));
    CHECK(has(e.what(), "factor is -1.5"));
  }
}
