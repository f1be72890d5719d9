// SPDX-License-Identifier: MIT
// Proofs over the states of the hoists: the worst of all, named after it, and a fall that does not pass.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/verify.hpp>

#include "support/small_box.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using verify::Proof;
using verify::Row;

BoxGirder box(Supports supports) {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy}, brace{RoundTube{33.7_mm, 3.2_mm}, alloy};
  BoxGirder b = small_box(16, chord, brace, brace, std::move(supports));
  b.diaphragms = end_diaphragms(brace);
  return b;
}
const std::vector<LoadCase> loads{
    {"self-weight", Nature::permanent, {self_weight()}},
    {"screen", Nature::imposed, {line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 0.8_kN_per_m)}}};

double of_axial_in(const Proof& p, std::size_t member) {
  for (const Row& r : p.rows_of(member))
    if (r.check == verify::Check::axial) return r.utilisation;
  return 0;
}

}  // namespace

TEST_CASE("a proof over the hoists' states keeps the worst of them") {
  const Analysis a{box(hung_at({0.0, 4.0, 8.0}))};
  const Cases cases = a.solve(loads);
  const Proof all = verify::on_hoists(cases, en1990::ultimate(), {0.005, false});
  std::vector<double> most(a.model().frame.members.size(), 0.0);
  std::size_t n = 0;
  for (const Combination& c : combinations(en1990::ultimate(), cases.kinds())) {
    const HoistStudy study(cases.combine(c), {0.005, false});
    for (const HoistCase& s : study.cases()) {
      REQUIRE(s.hangs);
      REQUIRE(all.combinations()[n].name == c.name + ", " + s.name);
      ++n;
      const Proof one = verify::by_material(s.response);
      for (std::size_t m = 0; m < most.size(); ++m) most[m] = std::max(most[m], of_axial_in(one, m));
    }
  }
  CHECK(n == all.combinations().size());
  for (std::size_t m = 0; m < most.size(); ++m) CHECK(std::abs(of_axial_in(all, m) - most[m]) <= 1e-9 * most[m]);
  CHECK(all.passes());
  // off level is worse than level, and the row says in which state
  const Proof level = verify::by_material(cases, en1990::ultimate());
  CHECK(all.worst().utilisation > 1.05 * level.worst().utilisation);
  CHECK(all.combinations()[all.worst().combination].name.find("5 mm") != std::string::npos);

  const Analysis heavy{box(hung_at({0.0, 3.5, 8.0}))};
  const Proof falls = verify::on_hoists(heavy.solve(loads), en1990::ultimate(), {0.005, true});
  CHECK(!falls.passes());
  const std::vector<Row> outside = falls.outside_scope();
  REQUIRE(outside.size() == 1);
  CHECK(outside[0].address.station == 16);  // without the last one the centre at 4 m lies beyond the hoist at 3.5 m
  CHECK(std::string(outside[0].reason) == "the girder does not hang without the hoist here");
  CHECK(falls.verdict().find("station 17: the girder does not hang") != std::string::npos);
}

TEST_CASE("the stability of the whole is not asked of slack hoists: refused, not taken as held") {
  const Analysis a{box(hung_at({0.0, 4.0, 8.0}))};
  verify::Basis basis;
  basis.stability = {.checked = true};
  CHECK_THROWS_WITH_AS((void)verify::on_hoists(a.solve(loads), en1990::ultimate(), {}, basis),
                       doctest::Contains("the girder as a whole is to be checked for stability"), BadDescription);
}
