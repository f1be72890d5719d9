// SPDX-License-Identifier: MIT
// Materials against the tables of EN 1993-1-1 and EN 1999-1-1.
#include <baywork/material.hpp>

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/core/units.hpp>

using namespace baywork;
using namespace baywork::literals;
using namespace baywork::material;

namespace {

/// One printed row: thickness asked for [mm], then MPa.
struct Row {
  Material material;
  double thickness;
  double yield, ultimate, haz_yield, haz_ultimate;
};

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    INFO(row.material.name << " at " << row.thickness << " mm");
    CHECK_NOTHROW(validate(row.material));
    const StrengthStep& s = strength(row.material, row.thickness * 1e-3);
    CHECK(s.yield == doctest::Approx(row.yield * 1e6).epsilon(1e-14));
    CHECK(s.ultimate == doctest::Approx(row.ultimate * 1e6).epsilon(1e-14));
    CHECK(s.haz_yield == doctest::Approx(row.haz_yield * 1e6).epsilon(1e-14));
    CHECK(s.haz_ultimate == doctest::Approx(row.haz_ultimate * 1e6).epsilon(1e-14));
  }
}

}  // namespace

// EN 1999-1-1:2007 Table 3.2b: fo, fu, fo,haz, fu,haz; both sides of each thickness step.
TEST_CASE("aluminium alloys are those of EN 1999-1-1 Table 3.2b") {
  check({
      {en_aw_5083_o(), 200, 110, 270, 110, 270},
      {en_aw_5083_h12(), 10, 200, 280, 135, 270},
      {en_aw_5083_h14(), 5, 235, 300, 135, 270},
      {en_aw_6060_t5(), 5, 120, 160, 50, 80},
      {en_aw_6060_t5(Product::open_extrusion), 5.01, 100, 140, 50, 80},
      {en_aw_6060_t6(), 15, 140, 170, 60, 100},
      {en_aw_6060_t6(Product::drawn_tube), 20, 160, 215, 60, 100},
      {en_aw_6060_t64(), 15, 120, 180, 60, 100},
      {en_aw_6060_t66(), 3, 160, 215, 65, 110},
      {en_aw_6060_t66(Product::hollow_extrusion), 3.01, 150, 195, 65, 110},
      {en_aw_6061_t6(), 20, 240, 260, 115, 175},
      {en_aw_6063_t5(), 3, 130, 175, 60, 100},
      {en_aw_6063_t5(Product::hollow_extrusion), 25, 110, 160, 60, 100},
      {en_aw_6063_t6(), 25, 160, 195, 65, 110},
      {en_aw_6063_t6(Product::drawn_tube), 4, 190, 220, 65, 110},
      {en_aw_6063_t66(), 10, 200, 245, 75, 130},
      {en_aw_6063_t66(Product::open_extrusion), 10.01, 180, 225, 75, 130},
      {en_aw_6063_t66(Product::drawn_tube), 4, 195, 230, 75, 130},
      {en_aw_6005a_t6(Product::open_extrusion), 5, 225, 270, 115, 165},
      {en_aw_6005a_t6(Product::open_extrusion), 5.01, 215, 260, 115, 165},
      {en_aw_6005a_t6(Product::rod_or_bar), 10.01, 200, 250, 115, 165},
      {en_aw_6005a_t6(), 5, 215, 255, 115, 165},
      {en_aw_6005a_t6(Product::hollow_extrusion), 5.01, 200, 250, 115, 165},
      {en_aw_6106_t6(), 10, 200, 250, 95, 160},
  });
  // values from memory
  check({
      {en_aw_5754_o(), 5, 80, 180, 80, 180},
      {en_aw_5754_o(Product::rolled), 5, 80, 190, 80, 190},  // Table 3.2a
      {en_aw_6061_t6(Product::drawn_tube), 5, 240, 290, 115, 175},
      {en_aw_6082_t4(), 25, 110, 205, 100, 160},
      {en_aw_6082_t5(), 5, 230, 270, 125, 185},
      {en_aw_6082_t6(), 5, 250, 290, 125, 185},
      {en_aw_6082_t6(), 5.01, 260, 310, 125, 185},
      {en_aw_6082_t6(Product::hollow_extrusion), 15, 260, 310, 125, 185},
      {en_aw_6082_t6(Product::rod_or_bar), 20, 250, 295, 125, 185},
      {en_aw_6082_t6(Product::rod_or_bar), 20.1, 260, 310, 125, 185},
      {en_aw_6082_t6(Product::drawn_tube), 5, 255, 310, 125, 185},
      {en_aw_6082_t6(Product::drawn_tube), 5.1, 240, 310, 125, 185},
      {en_aw_7020_t6(), 15, 290, 350, 205, 280},
      {en_aw_7020_t6(), 15.1, 275, 350, 205, 280},
  });
}

// EN 1999-1-1:2007 3.2.5 and the BC column of Table 3.2b.
TEST_CASE("aluminium's constants, buckling classes and sources") {
  const Material m = en_aw_6082_t6();
  CHECK(m.E == 70e9);
  CHECK(m.G == 27e9);
  CHECK(m.density == 2700);
  CHECK(m.thermal_expansion == 23e-6);
  CHECK(m.family == Family::aluminium);
  CHECK(m.name == "EN AW-6082 T6, extruded tube");
  CHECK(m.buckling_class == BucklingClass::a);
  CHECK(en_aw_6063_t6().buckling_class == BucklingClass::a);
  CHECK(en_aw_6060_t64().buckling_class == BucklingClass::a);
  CHECK(en_aw_5083_h14().buckling_class == BucklingClass::a);
  CHECK(en_aw_5083_h12().buckling_class == BucklingClass::b);
  CHECK(en_aw_6060_t5().buckling_class == BucklingClass::b);
  CHECK(en_aw_6063_t5().buckling_class == BucklingClass::b);
  CHECK(en_aw_6082_t4().buckling_class == BucklingClass::b);
  CHECK(en_aw_5083_o().alloy_group == AlloyGroup::annealed);
  CHECK(en_aw_5083_h12().alloy_group == AlloyGroup::work_hardened_5xxx);
  CHECK(m.source == "EN 1999-1-1:2007 Table 3.2b, value from memory");
  CHECK(en_aw_6063_t6().source == "EN 1999-1-1:2007 Table 3.2b");
  CHECK(en_aw_5754_o(Product::rolled).source == "EN 1999-1-1:2007 Table 3.2a, value from memory");
}

// EN 1993-1-1:2005 Table 3.1 (values from memory): fy, fu up to 40 mm and above.
TEST_CASE("steels are those of EN 1993-1-1 Table 3.1") {
  const auto row = [](const Material& m, double t, double fy, double fu) { return Row{m, t, fy, fu, fy, fu}; };
  check({
      row(s235(), 40, 235, 360),
      row(s235(), 40.1, 215, 360),
      row(s275(), 40, 275, 430),
      row(s275(), 80, 255, 410),
      row(s355(), 40, 355, 490),
      row(s355(), 80, 335, 470),
      row(s420n(), 40, 420, 520),
      row(s420n(), 80, 390, 520),
      row(s460n(), 40, 460, 540),
      row(s460n(), 80, 430, 540),
      row(s235h(), 40, 235, 360),
      row(s235h(), 80, 215, 340),
      row(s275h(), 40, 275, 430),
      row(s275h(), 80, 255, 410),
      row(s355h(), 40, 355, 510),
      row(s355h(), 80, 335, 490),
      row(s355nh(), 40, 355, 490),
      row(s355nh(), 80, 335, 470),
      row(s420nh(), 40, 420, 540),
      row(s420nh(), 80, 390, 520),
      row(s460nh(), 40, 460, 560),
      row(s460nh(), 80, 430, 550),
      row(s235h(Product::cold_formed), 5, 235, 360),
      row(s275h(Product::cold_formed), 5, 275, 430),
      row(s355h(Product::cold_formed), 5, 355, 510),
      row(s355nh(Product::cold_formed), 5, 355, 470),
      row(s420mh(), 5, 420, 500),
      row(s460nh(Product::cold_formed), 5, 460, 550),
  });
  CHECK(s355h().E == 210e9);  // 3.2.6
  CHECK(s355h().G == 81e9);
  CHECK(s355h().G == doctest::Approx(s355h().E / 2.6).epsilon(0.003));  // Poisson's ratio 0.3, rounded
  CHECK(s355h().thermal_expansion == 12e-6);
  CHECK(s355h().density == 7850);
  CHECK(s355h().buckling_class == BucklingClass::none);
}

// EN 1999-1-1:2007 Table 3.2b, footnote on HAZ values (from memory).
TEST_CASE("TIG welds and thick walls leave less beside the weld") {
  check({
      {welded_by(en_aw_6082_t6(), Welding::mig), 5, 250, 290, 125, 185},
      {welded_by(en_aw_6082_t6(), Welding::mig), 15, 260, 310, 125, 185},
      {welded_by(en_aw_6082_t6(), Welding::tig), 5, 250, 290, 100, 148},
      {welded_by(en_aw_6082_t6(), Welding::tig), 6, 260, 310, 100, 148},
      {welded_by(en_aw_6082_t6(), Welding::tig), 6.1, 260, 310, 80, 118.4},
      {welded_by(en_aw_7020_t6(), Welding::tig), 5, 290, 350, 164, 224},
      {welded_by(en_aw_7020_t6(), Welding::mig), 16, 275, 350, 164, 224},
      {welded_by(en_aw_6063_t6(), Welding::mig), 15.1, 160, 195, 52, 88},
      {welded_by(en_aw_5083_h12(), Welding::tig), 6, 200, 280, 135, 270},
      {welded_by(en_aw_5083_h12(), Welding::tig), 6.1, 200, 280, 121.5, 243},
      {welded_by(en_aw_5083_o(), Welding::tig), 20, 110, 270, 110, 270},
      {welded_by(s355h(), Welding::tig), 20, 355, 510, 355, 510},
  });
  CHECK(welded_by(en_aw_6082_t6(), Welding::tig).name == "EN AW-6082 T6, extruded tube, TIG");
}

// EN 1999-1-1:2007 6.1.6.3 (values from memory).
TEST_CASE("the heat-affected zone reaches as far as EN 1999-1-1 6.1.6.3 says") {
  const Material m = en_aw_6082_t6(), zinc = en_aw_7020_t6();
  CHECK(haz_extent(m, 6_mm, Welding::mig) == doctest::Approx(0.020));
  CHECK(haz_extent(m, 6.1_mm, Welding::mig) == doctest::Approx(0.030));
  CHECK(haz_extent(m, 12_mm, Welding::mig) == doctest::Approx(0.030));
  CHECK(haz_extent(m, 25_mm, Welding::mig) == doctest::Approx(0.035));
  CHECK(haz_extent(m, 26_mm, Welding::mig) == doctest::Approx(0.040));
  CHECK(haz_extent(m, 5_mm, Welding::tig) == doctest::Approx(0.030));
  CHECK(haz_extent(m, 5_mm, Welding::mig, {.heat_paths = 2}) == doctest::Approx(0.030));
  CHECK(haz_extent(m, 5_mm, Welding::mig, {.heat_paths = 3}) == doctest::Approx(0.020));
  CHECK(haz_extent(m, 5_mm, Welding::mig, {.interpass_celsius = 90}) == doctest::Approx(0.025));
  CHECK(haz_extent(zinc, 5_mm, Welding::mig, {.interpass_celsius = 100}) == doctest::Approx(0.030));
  CHECK(haz_extent(m, 5_mm, Welding::mig, {.interpass_celsius = 20}) == doctest::Approx(0.020));
  CHECK(haz_extent(en_aw_5083_o(), 5_mm, Welding::mig) == 0.0);
  CHECK(haz_extent(s355h(), 5_mm, Welding::mig) == 0.0);
}

TEST_CASE("a user's own material is filled in and validated") {
  const Material own{.name = "own alloy",
                     .source = "mill certificate",
                     .family = Family::aluminium,
                     .E = 69e9,
                     .G = 26e9,
                     .density = 2700,
                     .thermal_expansion = 23e-6,
                     .steps = {{10_mm, 205e6, 250e6, 100e6, 150e6}}};
  CHECK_NOTHROW(validate(own));
  CHECK(strength(own, 10_mm).yield == 205e6);
}
