// SPDX-License-Identifier: MIT
// The report: cautions first, every row that governs with its numbers, equal bytes for equal input, a digest that tells
// inputs apart.
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/baywork.hpp>
#include <baywork/show/report.hpp>

using namespace baywork;
using namespace baywork::literals;

namespace {

BoxGirder cinema(double bay_length = 0.5) {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy}, cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  return {.bays = 8,
          .bay_length = bay_length,
          .width = 0.5_m,
          .depth = 0.5_m,
          .chord = chord,
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .supports = simply_supported()};
}

std::vector<LoadCase> loads(double wind = 400.0) {
  return {{"self-weight", Nature::permanent, {self_weight()}},
          {"screen <cloth & battens>", Nature::imposed, {point_load(ChordOf::bottom_left, 1.1_m, 1.2_kN)}},
          {"wind", Nature::wind, {wind_on(Side::left, wind)}}};
}

struct Made {
  Analysis analysis;
  Cases cases;
  verify::Proof proof;
  explicit Made(const BoxGirder& g = cinema(), const std::vector<LoadCase>& l = loads(),
                const CombinationSet& set = en1990::ultimate(), const verify::Basis& basis = {})
      : analysis{g}, cases(analysis.solve(l)), proof(verify::by_material(cases, set, basis)) {}
};

/// As it reads: places where a line may break are no part of the words.
std::string read_from(std::string page) {
  for (std::size_t at = page.find("<wbr/>"); at != std::string::npos; at = page.find("<wbr/>", at)) page.erase(at, 6);
  return page;
}

std::size_t count(const std::string& in, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = in.find(what); at != std::string::npos; at = in.find(what, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("the digest is SHA-256 (NIST FIPS 180-4, examples for one block, two blocks, and a million letters)") {
  const auto of = [](const std::string& s) {
    show::detail::Sha256 sha;
    sha.take(s);
    return sha.text();
  };
  CHECK(of("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(of(std::string(1000000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
  CHECK(of("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("the digest of the input changes with the last bit of anything, and with nothing else") {
  const Made one;
  const std::string digest = show::input_digest(one.cases, one.proof);
  CHECK(digest.size() == 64);
  CHECK(show::input_digest(Made().cases, Made().proof) == digest);
  const auto other = [&](const Made& m) { return show::input_digest(m.cases, m.proof) != digest; };
  CHECK(other(Made(cinema(std::nextafter(0.5, 1.0)))));
  CHECK(other(Made(cinema(), loads(std::nextafter(400.0, 500.0)))));
  CombinationSet set = en1990::ultimate();
  set.permanent_unfavourable = std::nextafter(set.permanent_unfavourable, 2.0);
  CHECK(other(Made(cinema(), loads(), set)));
  verify::Basis basis;
  basis.aluminium.gamma_M1 = 1.2;
  CHECK(other(Made(cinema(), loads(), en1990::ultimate(), basis)));
  const auto lugged = [](double at, double width) {
    BoxGirder g = cinema();
    g.chord = g.chord.welded_across({{at, width}});
    const Made m(g);
    return show::input_digest(m.cases, m.proof);
  };
  const std::string with_lug = lugged(1.1, 0.05);
  CHECK(with_lug != digest);
  CHECK(lugged(std::nextafter(1.1, 2.0), 0.05) != with_lug);
  CHECK(lugged(1.1, std::nextafter(0.05, 1.0)) != with_lug);
}

TEST_CASE("equal input gives equal bytes, in under 1.5 MB") {
  const Made a, b;
  const std::string one = show::report(a.cases, a.proof, {.loads = loads()});
  CHECK(one == show::report(b.cases, b.proof, {.loads = loads()}));
  CHECK(one.size() < 1500000);
}

TEST_CASE("cautions come first; all that was assumed, is not covered and governs is there") {
  const Made m;
  const std::string page = read_from(show::report(m.cases, m.proof, {.title = "Screen <girder>", .loads = loads()}));
  CHECK(page.find("<title>Screen &lt;girder&gt;</title>") != std::string::npos);
  std::size_t last = 0;
  for (const std::string& c : show::cautions()) {
    const std::size_t at = page.find(show::escaped(c));
    REQUIRE(at != std::string::npos);
    CHECK(at > last);
    last = at;
  }
  CHECK(page.find("passes the checks made") > last);  // no verdict before the last caution
  for (const std::string& s : m.proof.assumptions()) CHECK(page.find(show::escaped(s)) != std::string::npos);
  for (const std::string& s : m.proof.not_covered()) CHECK(page.find(show::escaped(s)) != std::string::npos);
  for (const verify::Row& r : m.proof.governing()) {
    CHECK(page.find(show::escaped(verify::text(r))) != std::string::npos);
    CHECK(page.find(show::escaped(place(r))) != std::string::npos);
  }
  for (const Combination& c : m.proof.combinations()) CHECK(page.find(show::escaped(c.name)) != std::string::npos);
  CHECK(page.find(show::input_digest(m.cases, m.proof)) != std::string::npos);
  CHECK(page.find(version_text) != std::string::npos);
  CHECK(page.find("<cloth") == std::string::npos);  // a name with markup stays text
  CHECK(page.find("1.2 kN down on the bottom left chord at 1.1 m") != std::string::npos);
  CHECK(page.find("EN AW-6082") != std::string::npos);
  // nothing from outside: no link but to its own sections, no script, no font
  CHECK(count(page, "href=\"") == count(page, "href=\"#s"));
  for (const char* s : {"<script", "src=", "url(", "@import", "<link"}) CHECK(page.find(s) == std::string::npos);
}

TEST_CASE("a proof that fails is told as an alarm, before any number") {
  const Made m(cinema(), {{"self-weight", Nature::permanent, {self_weight()}},
                          {"much", Nature::imposed, {point_load(ChordOf::bottom_left, 2.1_m, 100.0_kN)}}});
  REQUIRE_FALSE(m.proof.passes());
  const std::string page = show::report(m.cases, m.proof);
  CHECK(page.find("<p class=\"alarm\">Proof: fails") != std::string::npos);
}

TEST_CASE("a hoist that goes slack is told as an alarm although the bars hold") {
  // 2 kN up at one of two hoists of a girder that weighs less
  BoxGirder g = cinema();
  g.supports = hung_at({0.5, 3.5});
  const std::vector<LoadCase> uplift{{"self-weight", Nature::permanent, {self_weight()}},
                                     {"uplift", Nature::imposed, {point_load(ChordOf::top_left, 0.5_m, -2.0_kN)}}};
  const Made m(g, uplift);
  REQUIRE(m.proof.passes());
  const std::string page = show::report(m.cases, m.proof), words = "<p class=\"alarm\">GOES SLACK: ";
  CHECK(page.find(words + "station 2, top left chord, hung, in 1 self-weight + 1.5 uplift") <
        page.find("Taken for granted</h2>"));
  CHECK(count(page, words) == 1);
  const Made level(g, {uplift[0]});
  CHECK(count(show::report(level.cases, level.proof), words) == 0);
}

TEST_CASE("which hoist carries what is told beside its picture") {
  BoxGirder g = cinema();
  g.supports = hung_at({0.5, 1.5, 3.5});
  const Made m(g);
  const HoistStudy study(m.cases[0]);
  const std::string page = show::report(m.cases, m.proof, {.hoists = {study}});
  const std::size_t picture = page.find("aria-label=\"What each hoist carries\""),
                    table = page.find("aria-label=\"Which hoist carries what\"");
  CHECK(picture < table);
  CHECK(table != std::string::npos);
  CHECK(page.find("Hoist 2 at 1.5 m: ", picture) < table);
}

TEST_CASE("supports in words: the drawing and the report say the same, with values as entered") {
  BoxGirder g = cinema();
  g.supports = simply_supported().with(hold(ChordOf::top_left, 2.0_m).spring(Motion::uz, 123456.0));
  const Made m(g);
  bool found = false;
  for (const Support& s : m.analysis.model().frame.supports) {
    const std::string words = show::held_words(m.analysis.model(), s);
    CHECK(show::support_words(m.analysis.model()).find(words) != std::string::npos);
    CHECK(show::report(m.cases, m.proof).find("<td>" + words + "</td>") != std::string::npos);
    found = found || words == "z (hung) (spring 123.456 kN/m)";
  }
  CHECK(found);
}

TEST_CASE("actions in words: values, units and places as they were given") {
  using show::words_of;
  CHECK(words_of(Action{self_weight(1.05)}) == "mass of all bars x 9.80665 m/s2 x 1.05");
  CHECK(words_of(Action{line_load({ChordOf::top_left, ChordOf::top_right}, 60.0, {2.0, 10.0})}) ==
        "0.06 kN/m down from 2 m to 10 m, shared by top left chord, top right chord");
  CHECK(words_of(Action{point_load(ChordRef(std::size_t{1}), 3.0, Vec3<>{0, -500, 0}, {0, 0, 20})}) ==
        "0.5 kN to the right and couple 0.02 kNm about z on the chord 2 at 3 m");
  CHECK(words_of(Action{wind_on(Side::left, 400.0, CarriedBy::chords)}) ==
        "pressure 400 Pa on the outside of the left face over the whole girder, to the chords");
  CHECK(words_of(Action{settlement(ChordOf::apex, 6.0, Motion::uz, -0.01)}) ==
        "support of the apex chord at 6 m moves -10 mm, z");
  CHECK(words_of(Action{warming_of(ChordOf::top, 20)}) == "20 K warmer: top chord");
}
