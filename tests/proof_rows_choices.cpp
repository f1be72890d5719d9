// SPDX-License-Identifier: MIT
// Rows of slender sections and of all choices of a basis can be recomputed from what they print; each clause is met.
#include <doctest/doctest.h>

#include <initializer_list>
#include <string>

#include <baywork/verify.hpp>

#include "support/recomputed_rows.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using verify::Check;
using verify::Row;

const RoundTube<> chord_tube{60.3_mm, 5.0_mm}, cross_tube{48.3_mm, 4.0_mm}, brace_tube{26.9_mm, 3.2_mm};

/// Two cantilever bars under a great load close to their supports: shear above half its resistance.
verify::Proof sheared(const Bar& bar, double V) {
  const LadderGirder ladder{
      .bays = 1, .bay_length = 0.4, .depth = 0.8, .chord = bar, .web = open(bar), .supports = cantilever()};
  const Analysis analysis{ladder};
  return verify::by_material(analysis.solve({point_load(ChordOf::bottom, 0.01, V), point_load(ChordOf::top, 0.01, V)}));
}

void clauses_seen(const Seen& seen, const std::string& standard, std::initializer_list<const char*> clauses) {
  for (const char* c : clauses) {
    const std::string clause = standard + " " + c;
    INFO(clause);
    CHECK(seen.clauses.count(clause) == 1);
  }
}

}  // namespace

TEST_CASE("rows of aluminium: slender walls, choices, welds along; every clause") {
  Seen seen;
  const material::Material tube = material::en_aw_6082_t6();
  const material::Material profile = material::en_aw_6082_t6(material::Product::hollow_extrusion);
  const RectangularHollow box{120.0_mm, 60.0_mm, 3.0_mm}, small{50.0_mm, 40.0_mm, 3.0_mm},
      thin{30.0_mm, 30.0_mm, 3.0_mm};
  const auto slender = proof_of(box, small, thin, profile, 4e3);
  recompute_all("slender box", slender, seen);
  all_checks_seen("slender box", seen);
  const auto thin_tube = proof_of(RoundTube{150.0_mm, 1.5_mm}, cross_tube, brace_tube, tube, 4e3);
  recompute_all("class 4 tube", thin_tube, seen);
  all_checks_seen("class 4 tube", seen);
  CHECK(en1999::resistance(box.data(), profile, {}, en1999::Welded::yes).class_N == 4);
  CHECK(en1999::resistance(RoundTube{150.0_mm, 1.5_mm}.data(), tube, {}, en1999::Welded::yes).class_N == 4);
  const Bar web{RectangularHollow{200.0_mm, 80.0_mm, 3.0_mm}, profile};
  CHECK(en1999::resistance(web.section, profile).slender_webs);
  const verify::Proof much_shear = sheared(web, 30e3);
  recompute_all("slender webs", much_shear, seen);
  CHECK(any_text(much_shear, "(f_o,V/f_o)"));

  verify::Basis literal, rising, arcs, where;
  literal.choices.round = en1999::RoundForm::components;
  rising.choices.axial_exponent = en1999::AxialExponent::by_chi;
  arcs.choices.softened = verify::SoftenedMetal::arcs;
  where.choices.welds = verify::WeldsOnWave::where_they_are;
  const auto of_tubes = [&](const verify::Basis& basis) {
    return proof_of(chord_tube, cross_tube, brace_tube, tube, 2e3, 0.0, basis);
  };
  const auto word_by_word = of_tubes(literal);
  recompute_all("word by word", word_by_word, seen);
  CHECK(any_text(word_by_word, "^1.7)^0.6"));
  CHECK_FALSE(any_text(of_tubes({}), "^1.7)^0.6"));
  recompute_all("exponent by chi", of_tubes(rising), seen);
  const IShape i{80.0_mm, 60.0_mm, 4.0_mm, 5.0_mm};
  const material::Material open_profile = material::en_aw_6082_t6(material::Product::open_extrusion);
  recompute_all("I, exponents by chi", proof_of(i, i, i, open_profile, 2e3, 0.0, rising), seen);
  recompute_all("arcs", proof_of(RoundTube{114.3_mm, 5.0_mm}, brace_tube, brace_tube, tube, 2e3, 0.0, arcs), seen);
  recompute_all("welds where they are", of_tubes(where), seen);
  for (const char* what : {"word by word", "exponent by chi", "I, exponents by chi", "arcs", "welds where they are"})
    all_checks_seen(what, seen);

  const Bar railed = Bar{chord_tube, tube}.welded_along({.lines = 1, .width = 10.0_mm});
  const auto with_rail = proof_of(railed, Bar{cross_tube, tube}, Bar{brace_tube, tube}, 2e3);
  recompute_all("rail", with_rail, seen);
  all_checks_seen("rail", seen);
  CHECK(any_text(with_rail, "kappa*chi*"));
  const auto plain = of_tubes({});
  CHECK_FALSE(any_text(plain, "kappa"));
  recompute_all("plain", plain, seen);
  recompute_all("much shear", sheared(Bar{chord_tube, tube}, 25e3), seen);
  recompute_all("I", proof_of(i, i, i, open_profile, 2e3), seen);
  // annealed metal, which no weld softens: the clauses of unsoftened sections govern
  const material::Material soft = material::en_aw_5083_o();
  recompute_all("I, annealed", proof_of(i, i, i, material::en_aw_5083_o(material::Product::open_extrusion), 1e3), seen);
  recompute_all("much shear, annealed", sheared(Bar{chord_tube, soft}, 22e3), seen);
  clauses_seen(seen, "EN 1999-1-1:2007",
               {"6.2.3", "6.2.4", "6.2.5", "6.2.6", "6.2.7", "6.2.7.3", "6.2.9.1", "6.2.9.2", "6.2.9.3", "6.2.10",
                "6.3.1", "6.3.3.1", "6.3.3.1 (6.62)"});
}

TEST_CASE("rows of steel: slender walls, C_m by the table; every clause") {
  Seen seen;
  const material::Material m = material::s355h();
  const RectangularHollow box{150.0_mm, 80.0_mm, 3.0_mm}, small{50.0_mm, 40.0_mm, 3.0_mm},
      thin{30.0_mm, 30.0_mm, 3.0_mm};
  const en1993::BarResistance r = en1993::resistance(box.data(), m);
  CHECK((r.class_N == 4 && r.class_M_z == 4));
  const auto slender = proof_of(box, small, thin, m, 8e3);
  recompute_all("slender box", slender, seen);
  all_checks_seen("slender box", seen);
  CHECK(any_clause(slender, "6.2.9.3"));
  const Bar web{RectangularHollow{250.0_mm, 100.0_mm, 3.0_mm}, m};
  CHECK(en1993::resistance(web.section, m).V_z_Rd < web.section.web_area_z * 355e6 / 1.7320508);
  recompute_all("slender webs", sheared(web, 60e3), seen);

  verify::Basis table, code;
  table.choices.moment_factors = verify::MomentFactorRule::table;
  code.lengths.rule = verify::LengthRule::code;
  const auto of_tubes = [&](const verify::Basis& basis) {
    return proof_of(chord_tube, cross_tube, brace_tube, m, 5e3, 0.0, basis);
  };
  const auto by_table = of_tubes(table);
  recompute_all("C_m by the table", by_table, seen);
  all_checks_seen("C_m by the table", seen);
  CHECK(any_text(by_table, "(k_yy/C_my)*(C_my*M_y,Ed)"));
  recompute_all("lengths by code", of_tubes(code), seen);
  all_checks_seen("lengths by code", seen);
  recompute_all("slender box, C_m by the table", proof_of(box, small, thin, m, 8e3, 0.0, table), seen);

  recompute_all("hollow", proof_of(RectangularHollow{80.0_mm, 50.0_mm, 4.0_mm}, small, thin, m, 5e3), seen);
  recompute_all("class 3 tube", proof_of(RoundTube{150.0_mm, 3.0_mm}, RoundTube{150.0_mm, 3.0_mm}, brace_tube, m, 5e3),
                seen);
  recompute_all("much shear", sheared(Bar{chord_tube, m}, 60e3), seen);
  clauses_seen(seen, "EN 1993-1-1:2005",
               {"6.2.3", "6.2.4", "6.2.5", "6.2.6", "6.2.7", "6.2.9.1", "6.2.10", "6.2.1 (5)", "6.2.9.3", "6.3.1",
                "6.3.3 (6.61)", "6.3.3 (6.62)"});
}
