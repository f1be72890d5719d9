// SPDX-License-Identifier: MIT
// Sections and materials that cannot be: each is refused, and the message says where, what and what would do.
#include <baywork/material.hpp>
#include <baywork/section.hpp>

#include <initializer_list>
#include <limits>
#include <string>
#include <type_traits>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/core/units.hpp>

using namespace baywork;
using namespace baywork::literals;

namespace {

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double inf = std::numeric_limits<double>::infinity();

/// f throws an E whose message holds all words.
template <class E = BadDescription, class F>
void refused(F f, std::initializer_list<const char*> words) {
  std::string message;
  try {
    f();
  } catch (const E& error) {
    message = error.what();
  }
  INFO("message: " << message);
  CHECK_FALSE(message.empty());
  for (const char* word : words) {
    INFO("word: " << word);
    CHECK(message.find(word) != std::string::npos);
  }
}

template <class T>
void bad(const T& shape, std::initializer_list<const char*> words) {
  refused([&shape] { (void)shape.data(); }, words);
}

/// A user's own shape: known by its stiffness alone.
struct OwnShape {
  double area = 1e-3;
  SectionData<double> data() const {
    SectionData<double> d;
    d.designation = "own shape";
    d.area = area;
    d.Iy = d.Iz = d.It = 1e-6;
    d.Wel_y = d.Wel_z = 1e-5;
    d.shear_y = d.shear_z = rigid_stiffness;
    return d;
  }
};

material::Material own_material() {
  material::Material m;
  m.name = "own alloy";
  m.E = 70e9;
  m.G = 26e9;
  m.density = 2700;
  m.steps = {{0.01, 200e6, 240e6, 100e6, 150e6}, {0.02, 190e6, 230e6, 100e6, 150e6}};
  return m;
}

}  // namespace

TEST_CASE("round tubes and rods that cannot be") {
  bad(RoundTube{60.3_mm, 0.0}, {"round tube 60.3 x 0", "wall thickness is 0 mm", "above zero is accepted"});
  bad(RoundTube{60.3_mm, -5_mm}, {"wall thickness is -5 mm"});
  bad(RoundTube{60.3_mm, no_number}, {"wall thickness is", "nan", "finite"});
  bad(RoundTube{0.0, 5_mm}, {"round tube 0 x 5", "diameter is 0 mm"});
  bad(RoundTube{inf, 5_mm}, {"diameter is inf"});
  bad(RoundTube<>{}, {"diameter is 0 mm"});
  bad(RoundTube{60_mm, 30_mm}, {"round tube 60 x 30", "wall thickness is 30 mm", "less than the radius, 30 mm"});
  bad(RoundTube{60_mm, 40_mm}, {"wall thickness is 40 mm", "radius"});
  bad(SolidRound{0.0}, {"solid round 0", "diameter is 0 mm"});
  bad(SolidRound{-20_mm}, {"diameter is -20 mm"});
  bad(SolidRound{no_number}, {"diameter is"});
}

TEST_CASE("solid rectangles that cannot be") {
  bad(SolidRectangle{0.0, 10_mm}, {"solid rectangle 0 x 10", "height is 0 mm"});
  bad(SolidRectangle{10_mm, -1_mm}, {"width is -1 mm"});
  bad(SolidRectangle{10_mm, no_number}, {"width is"});
}

TEST_CASE("hollow sections that cannot be") {
  bad(RectangularHollow{100_mm, 50_mm, 0.0}, {"rectangular hollow 100 x 50 x 0", "wall thickness is 0 mm"});
  bad(RectangularHollow{100_mm, 50_mm, 25_mm}, {"wall thickness is 25 mm", "less than half the smaller side, 25 mm"});
  bad(RectangularHollow{-100_mm, 50_mm, 5_mm}, {"height is -100 mm"});
  bad(RectangularHollow{100_mm, no_number, 5_mm}, {"width is"});
  bad(RectangularHollow{100_mm, 50_mm, inf}, {"wall thickness is inf"});
  bad(SquareHollow{0.0, 5_mm}, {"square hollow 0 x 5", "side is 0 mm"});
  // Cold formed at 5 mm: outer radius 10 mm, more than half of 18 mm.
  bad(SquareHollow{18_mm, 5_mm, cold_formed_corners}, {"outer corner radius is 10 mm", "half the smaller side, 9 mm"});
  // Hot finished: the inner radius 1.0 T does not fit either.
  bad(SquareHollow{16_mm, 5_mm}, {"inner corner radius is 5 mm", "half the smaller clear side, 3 mm"});
  bad(SquareHollow{100_mm, 5_mm, corners_of_radii(-1_mm, 0)}, {"outer corner radius is -1 mm", "zero or above"});
  bad(SquareHollow{100_mm, 5_mm, corners_of_radii(5_mm, no_number)}, {"inner corner radius is"});
  bad(SquareHollow{100_mm, 5_mm, corners_of_radii(51_mm, 45_mm)}, {"outer corner radius is 51 mm", "50 mm"});
  bad(SquareHollow{100_mm, 5_mm, corners_of_radii(5_mm, 46_mm)}, {"inner corner radius is 46 mm", "45 mm"});
  bad(SquareHollow{100_mm, 5_mm, corners_of_radii(40_mm, 0)}, {"leave no wall in the corner", "40 mm outside"});
}

TEST_CASE("open sections that cannot be") {
  bad(IShape{200_mm, 100_mm, 0.0, 8_mm}, {"I 200 x 100 x 0 x 8", "web thickness is 0 mm"});
  bad(IShape{200_mm, 100_mm, 6_mm, 100_mm}, {"flange thickness is 100 mm", "half the height"});
  bad(IShape{200_mm, 100_mm, 100_mm, 8_mm}, {"web thickness is 100 mm", "less than the width"});
  bad(IShape{200_mm, 100_mm, 6_mm, 8_mm, 48_mm}, {"root radius is 48 mm", "the flange outstand, 47 mm"});
  bad(IShape{40_mm, 100_mm, 6_mm, 8_mm, 13_mm}, {"root radius is 13 mm", "half the clear web, 12 mm"});
  bad(IShape{200_mm, 100_mm, 6_mm, 8_mm, -1_mm}, {"root radius is -1 mm"});
  bad(IShape{200_mm, no_number, 6_mm, 8_mm}, {"width is"});
  bad(Channel{200_mm, 80_mm, 6_mm, 0.0}, {"channel 200 x 80 x 6 x 0", "flange thickness is 0 mm"});
  bad(Channel{200_mm, 80_mm, 80_mm, 11_mm}, {"web thickness is 80 mm"});
  bad(Channel{20_mm, 80_mm, 6_mm, 11_mm}, {"flange thickness is 11 mm", "half the height, 10 mm"});
  bad(Channel{200_mm, 80_mm, 6_mm, 11_mm, no_number}, {"root radius is"});
  bad(Channel{inf, 80_mm, 6_mm, 11_mm}, {"height is inf"});
}

TEST_CASE("a user's own shape is a shape, and is refused where it cannot carry") {
  static_assert(Shape<OwnShape> && Shape<RoundTube<>> && Shape<Channel<long double>> && !Shape<int>);
  static_assert(std::is_same_v<shape_scalar_t<SolidRound<long double>>, long double>);
  CHECK_NOTHROW(validate(OwnShape{}.data()));
  CHECK_NOTHROW(validate(RoundTube{60.3_mm, 5_mm}.data()));
  refused([] { validate(OwnShape{.area = 0}.data()); }, {"own shape", "area is 0"});
  refused([] { validate(OwnShape{.area = no_number}.data()); }, {"own shape", "area is"});
  const auto changed = [](auto change) {
    return [change] {
      SectionData<double> d = OwnShape{}.data();
      change(d);
      validate(d);
    };
  };
  refused(changed([](SectionData<double>& d) { d.Iy = -1; }), {"second moment Iy is -1"});
  refused(changed([](SectionData<double>& d) { d.It = 0; }), {"torsion constant is 0"});
  refused(changed([](SectionData<double>& d) { d.shear_z = 0; }), {"shear area for Vz is 0"});
  refused(changed([](SectionData<double>& d) { d.Wpl_y = no_number; }), {"plastic modulus Wpl_y"});
  refused(changed([](SectionData<double>& d) {
            d.designation.clear();
            d.Wel_z = 0;
          }),
          {"section without a designation", "Wel_z is 0"});
}

TEST_CASE("materials that cannot be") {
  using material::Product;
  refused([] { material::en_aw_6106_t6(Product::drawn_tube); },
          {"EN AW-6106 T6", "not listed as drawn tube", "open extrusion, hollow extrusion is accepted"});
  refused([] { material::en_aw_6082_t6(Product::cast); }, {"EN AW-6082 T6", "not listed as casting", "drawn tube"});
  refused([] { material::en_aw_5083_h14(Product::extruded_tube); }, {"EN AW-5083 H14", "extruded tube"});
  refused([] { material::en_aw_6082_t5(Product::extruded_tube); }, {"EN AW-6082 T5", "not listed as extruded tube"});
  refused([] { material::en_aw_6060_t64(Product::hot_finished); }, {"not listed as hot-finished hollow section"});
  refused([] { material::s420nh(Product::cold_formed); }, {"S420 NH/NLH", "hot-finished hollow section is accepted"});
  refused([] { material::s355h(Product::rolled); }, {"S355 H", "not listed as rolled"});
  refused([] { (void)strength(material::en_aw_6060_t66(), 5_mm); }, {"a wall of 5 mm", "walls up to 3 mm"});
  refused([] { (void)strength(material::s355h(Product::cold_formed), 41_mm); }, {"a wall of 41 mm", "up to 40 mm"});
  refused([] { welded_by(material::en_aw_6082_t6(), material::Welding::unspecified); },
          {"welding process is not said"});
  refused([] { welded_by(welded_by(material::en_aw_6082_t6(), material::Welding::tig), material::Welding::tig); },
          {"has been said before"});
  refused<OutsideScope>([] { haz_extent(material::en_aw_6082_t6(), 8_mm, material::Welding::tig); },
                        {"8 mm", "up to 6 mm"});
  refused([] { haz_extent(material::en_aw_6082_t6(), 0, material::Welding::mig); }, {"thickness"});
  refused([] { haz_extent(material::en_aw_6082_t6(), 5_mm, material::Welding::mig, {.heat_paths = 5}); },
          {"5 heat paths"});

  CHECK_NOTHROW(validate(own_material()));
  const auto changed = [](auto change) {
    return [change] {
      material::Material m = own_material();
      change(m);
      validate(m);
    };
  };
  refused(changed([](material::Material& m) { m.E = 0; }), {"own alloy", "modulus of elasticity is 0"});
  refused(changed([](material::Material& m) { m.G = no_number; }), {"shear modulus"});
  refused(changed([](material::Material& m) { m.product = Product::cast; }), {"casting"});
  refused(changed([](material::Material& m) { m.steps[1].max_thickness = 0.005; }), {"not in order"});
  refused(changed([](material::Material& m) { m.steps[0].haz_yield = 210e6; }), {"stronger than the parent metal"});
  refused(changed([](material::Material& m) { m.steps[0].ultimate = 0; }), {"ultimate strength is 0"});
}
