// SPDX-License-Identifier: MIT
// Cross-sections against EN 10210-2 and EN 10219-2, against theory, and against an integration of their outlines.
#include <baywork/section.hpp>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <limits>
#include <string>
#include <type_traits>
#include <vector>

#include <doctest/doctest.h>
#include <Eigen/Core>
#include <unsupported/Eigen/AutoDiff>

#include <baywork/core/units.hpp>

using namespace baywork;
using namespace baywork::literals;

namespace {

using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, 1, 1>>;

/// Half a unit of the last printed digit of "18.7"; whole numbers from 1000 that end in 0 have three digits.
double half_unit(const std::string& print) {
  const std::size_t point = print.find('.');
  if (point != std::string::npos) return 0.5 * std::pow(10.0, -static_cast<double>(print.size() - point - 1));
  return print.size() > 3 && print.back() == '0' ? 5.0 : 0.5;
}

/// Computed and printed agree to half a unit of the print.
template <std::size_t N>
void check_prints(const std::string& what, const std::array<double, N>& computed,
                  const std::array<const char*, N>& print) {
  for (std::size_t i = 0; i < N; ++i) {
    INFO(what << ", value " << i + 1 << " printed " << print[i] << ", computed " << computed[i]);
    CHECK(std::fabs(computed[i] - std::strtod(print[i], nullptr)) <= half_unit(print[i]) * (1.0 + 1e-9));
  }
}

constexpr double cm2 = 1e-4, cm3 = 1e-6, cm4 = 1e-8;

/// A SHS or CHS line: side or diameter and wall in mm; A, I, i, Wel, Wpl, It, Ct in cm.
struct SymmetricLine {
  double size, wall;
  std::array<const char*, 7> print;
};

void check_line(const SectionData<double>& d, const SymmetricLine& line) {
  check_prints<7>(d.designation,
                  {d.area / cm2, d.Iy / cm4, d.iy * 100, d.Wel_y / cm3, d.Wpl_y / cm3, d.It / cm4, d.Wt / cm3},
                  line.print);
  CHECK(d.Iz == doctest::Approx(d.Iy).epsilon(1e-14));
  CHECK(d.Wpl_z == doctest::Approx(d.Wpl_y).epsilon(1e-14));
}

/// A RHS line: height, width, wall in mm; A, Iy, Iz, iy, iz, Wel_y, Wel_z, Wpl_y, Wpl_z, It, Ct in cm.
struct RectangularLine {
  double height, width, wall;
  std::array<const char*, 11> print;
};

void check_line(const SectionData<double>& d, const RectangularLine& line) {
  check_prints<11>(d.designation,
                   {d.area / cm2, d.Iy / cm4, d.Iz / cm4, d.iy * 100, d.iz * 100, d.Wel_y / cm3, d.Wel_z / cm3,
                    d.Wpl_y / cm3, d.Wpl_z / cm3, d.It / cm4, d.Wt / cm3},
                   line.print);
}

}  // namespace

// Tables of square hollow sections: EN 10210-2:2006 and EN 10219-2:2006 Annex B.
TEST_CASE("square hollow sections are those of EN 10210-2 and EN 10219-2") {
  const std::vector<SymmetricLine> hot{
      {40, 2.6, {"3.82", "8.80", "1.52", "4.40", "5.31", "14.0", "6.41"}},
      {40, 3.2, {"4.60", "10.2", "1.49", "5.11", "6.28", "16.5", "7.42"}},
      {40, 4.0, {"5.59", "11.8", "1.45", "5.91", "7.44", "19.5", "8.54"}},
      {50, 4.0, {"7.19", "25.0", "1.86", "9.99", "12.3", "40.4", "14.5"}},
      {50, 5.0, {"8.73", "28.9", "1.82", "11.6", "14.5", "47.6", "16.7"}},
      {50, 6.3, {"10.6", "32.8", "1.76", "13.1", "17.0", "55.2", "18.8"}},
      {60, 5.0, {"10.7", "53.3", "2.23", "17.8", "21.9", "86.4", "25.7"}},
      {60, 8.0, {"16.0", "69.7", "2.09", "23.2", "30.4", "118", "33.4"}},
      {70, 4.0, {"10.4", "74.7", "2.68", "21.3", "25.5", "118", "31.2"}},
      {80, 4.0, {"12.0", "114", "3.09", "28.6", "34.0", "180", "41.9"}},
      {80, 6.3, {"18.1", "162", "2.99", "40.5", "49.7", "262", "58.7"}},
      {80, 8.0, {"22.4", "189", "2.91", "47.3", "59.5", "312", "68.3"}},
      // values from memory
      {100, 5, {"18.7", "279", "3.86", "55.9", "66.4", "439", "81.8"}},
      {120, 6.3, {"28.2", "603", "4.62", "100", "120", "950", "147"}},
      {150, 8, {"44.8", "1490", "5.77", "199", "237", "2350", "291"}},
      {200, 10, {"74.9", "4470", "7.72", "447", "531", "7030", "655"}},
  };
  const std::vector<SymmetricLine> cold{
      // values from memory; all three corner rules
      {100, 4, {"14.9", "226", "3.89", "45.3", "53.3", "362", "68.1"}},
      {100, 5, {"18.4", "271", "3.84", "54.2", "64.6", "441", "81.7"}},
      {100, 8, {"27.2", "366", "3.67", "73.2", "91.1", "645", "114"}},
      {150, 6, {"33.6", "1146", "5.84", "153", "180", "1833", "230"}},
      {200, 10, {"72.6", "4251", "7.65", "425", "508", "7072", "651"}},
      {200, 12.5, {"87.0", "4859", "7.47", "486", "594", "8502", "765"}},
  };
  for (const SymmetricLine& line : hot) check_line(SquareHollow{line.size * 1e-3, line.wall * 1e-3}.data(), line);
  for (const SymmetricLine& line : cold)
    check_line(SquareHollow{line.size * 1e-3, line.wall * 1e-3, cold_formed_corners}.data(), line);
}

// EN 10210-2:2006 Annex B, table of rectangular hollow sections (values from memory).
TEST_CASE("rectangular hollow sections, hot finished, are those of EN 10210-2") {
  const std::vector<RectangularLine> lines{
      {100, 50, 5, {"13.7", "167", "54.3", "3.48", "1.99", "33.3", "21.7", "42.6", "25.8", "135", "36.9"}},
      {120, 80, 6.3, {"23.2", "440", "230", "4.36", "3.15", "73.3", "57.6", "91.0", "68.2", "487", "92.9"}},
      {150, 100, 8, {"36.8", "1087", "569", "5.44", "3.94", "145", "114", "180", "135", "1203", "183"}},
      {250, 150, 10, {"74.9", "6174", "2755", "9.08", "6.06", "494", "367", "611", "426", "6090", "605"}},
  };
  for (const RectangularLine& line : lines)
    check_line(RectangularHollow{line.height * 1e-3, line.width * 1e-3, line.wall * 1e-3}.data(), line);
}

// EN 10219-2:2006 Annex B, table of rectangular hollow sections.
TEST_CASE("rectangular hollow sections, cold formed, are those of EN 10219-2") {
  const std::vector<RectangularLine> lines{
      {40, 20, 2, {"2.14", "4.05", "1.34", "1.38", ".79", "2.02", "1.34", "2.61", "1.60", "3.45", "2.36"}},
      {40, 20, 3, {"3.01", "5.21", "1.68", "1.32", ".75", "2.60", "1.68", "3.50", "2.12", "4.57", "3.00"}},
      {40, 30, 2.5, {"3.09", "6.45", "4.10", "1.45", "1.15", "3.23", "2.74", "4.03", "3.30", "8.47", "4.46"}},
      {40, 30, 3, {"3.61", "7.27", "4.60", "1.42", "1.13", "3.63", "3.07", "4.61", "3.77", "9.72", "5.03"}},
      {50, 30, 2, {"2.94", "9.54", "4.29", "1.80", "1.21", "3.81", "2.86", "4.74", "3.33", "9.77", "4.84"}},
      {50, 30, 3, {"4.21", "12.83", "5.70", "1.75", "1.16", "5.13", "3.80", "6.57", "4.58", "13.53", "6.49"}},
      {50, 30, 4, {"5.35", "15.25", "6.69", "1.69", "1.12", "6.10", "4.46", "8.05", "5.58", "16.53", "7.71"}},
      {60, 40, 2, {"3.74", "18.41", "9.83", "2.22", "1.62", "6.14", "4.92", "7.47", "5.65", "20.70", "8.12"}},
      {60, 40, 3, {"5.41", "25.38", "13.44", "2.17", "1.58", "8.46", "6.72", "10.53", "7.94", "29.28", "11.17"}},
  };
  for (const RectangularLine& line : lines)
    check_line(RectangularHollow{line.height * 1e-3, line.width * 1e-3, line.wall * 1e-3, cold_formed_corners}.data(),
               line);
}

// EN 10210-2:2006 and EN 10219-2:2006 Annex B, tables of circular hollow sections (values from memory).
TEST_CASE("circular hollow sections are those of EN 10210-2 and EN 10219-2") {
  const std::vector<SymmetricLine> lines{
      {26.9, 2.3, {"1.78", "1.36", ".874", "1.01", "1.40", "2.71", "2.02"}},
      {42.4, 3.2, {"3.94", "7.62", "1.39", "3.59", "4.93", "15.2", "7.19"}},
      {48.3, 3.2, {"4.53", "11.6", "1.60", "4.80", "6.52", "23.2", "9.59"}},
      {48.3, 4.0, {"5.57", "13.8", "1.57", "5.70", "7.87", "27.5", "11.4"}},
      {76.1, 3.2, {"7.33", "48.8", "2.58", "12.8", "17.0", "97.6", "25.6"}},
      {88.9, 5.0, {"13.2", "116", "2.97", "26.2", "35.2", "233", "52.4"}},
      {114.3, 5.0, {"17.2", "257", "3.87", "45.0", "59.8", "514", "89.9"}},
      {168.3, 10, {"49.7", "1564", "5.61", "186", "251", "3128", "372"}},
      {193.7, 10, {"57.7", "2442", "6.50", "252", "338", "4883", "504"}},
      {219.1, 10, {"65.7", "3598", "7.40", "328", "438", "7197", "657"}},
      {323.9, 12.5, {"122", "14847", "11.0", "917", "1213", "29693", "1833"}},
  };
  for (const SymmetricLine& line : lines) check_line(RoundTube{line.size * 1e-3, line.wall * 1e-3}.data(), line);
}

// IPE 200: Euronorm 19-57. UPE 200: DIN 1026-2. Values from memory: A, Iy, Wel_y, Wpl_y, iy, Iz, Wpl_z, iz [cm],
// perimeter [m]. The It of both tables is left out: it counts the junctions, see IShape.
TEST_CASE("open sections with root radii are those of their standards") {
  const auto values = [](const SectionData<double>& d) {
    return std::array<double, 9>{d.area / cm2, d.Iy / cm4,    d.Wel_y / cm3, d.Wpl_y / cm3, d.iy * 100,
                                 d.Iz / cm4,   d.Wpl_z / cm3, d.iz * 100,    d.perimeter};
  };
  const SectionData<double> ipe = IShape{200_mm, 100_mm, 5.6_mm, 8.5_mm, 12_mm}.data();
  check_prints<9>("IPE 200", values(ipe),
                  {"28.48", "1943", "194.3", "220.6", "8.26", "142.4", "44.61", "2.24", "0.768"});
  CHECK(ipe.plates[0].c == doctest::Approx(0.159));
  CHECK(ipe.plates[1].c == doctest::Approx(0.0352));
  CHECK(ipe.It < 6.98 * cm4);
  CHECK(ipe.It > 0.7 * 6.98 * cm4);
  check_prints<9>("UPE 200", values(Channel{200_mm, 80_mm, 6_mm, 11_mm, 13_mm}.data()),
                  {"29.0", "1909", "191", "220", "8.11", "187", "62.2", "2.54", "0.697"});
}

namespace {

constexpr double pi = 3.14159265358979323846;

/// A closed outline in y, z, and what Green's theorem says of it: the witness for rounded shapes.
struct Point {
  double y, z;
};
using Outline = std::vector<Point>;

/// Adds a quarter circle from `angle` on, counter-clockwise (turn +1) or clockwise (-1), as 4000 chords.
void add_arc(Outline& o, double y, double z, double r, double angle, double turn = 1) {
  for (int i = 0; i <= 4000; ++i) {
    const double a = angle + turn * pi / 2 * i / 4000;
    o.push_back({y + r * std::cos(a), z + r * std::sin(a)});
  }
}

Outline rounded_rectangle(double height, double width, double r) {
  Outline o;
  const double y = width / 2 - r, z = height / 2 - r;
  add_arc(o, y, z, r, 0);
  add_arc(o, -y, z, r, pi / 2);
  add_arc(o, -y, -z, r, pi);
  add_arc(o, y, -z, r, 3 * pi / 2);
  return o;
}

/// Origin at the back of the web, mid height.
Outline channel_outline(double h, double b, double tw, double tf, double r) {
  Outline o{{0, h / 2}, {0, -h / 2}, {b, -h / 2}, {b, -h / 2 + tf}};
  add_arc(o, tw + r, -h / 2 + tf + r, r, -pi / 2, -1);
  add_arc(o, tw + r, h / 2 - tf - r, r, pi, -1);
  o.insert(o.end(), {{b, h / 2 - tf}, {b, h / 2}});
  return o;
}

struct Moments {
  double A = 0, Sy = 0, Sz = 0, Iy = 0, Iz = 0;  // integrals of 1, z, y, z², y²
};

Moments moments(const Outline& o, double sign = 1) {
  Moments m;
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Point a = o[i], b = o[(i + 1) % o.size()];
    const double c = sign * (a.y * b.z - b.y * a.z);
    m.A += c / 2;
    m.Sz += c * (a.y + b.y) / 6;
    m.Sy += c * (a.z + b.z) / 6;
    m.Iz += c * (a.y * a.y + a.y * b.y + b.y * b.y) / 12;
    m.Iy += c * (a.z * a.z + a.z * b.z + b.z * b.z) / 12;
  }
  return m;
}

/// The part beyond y = p (or z = p).
Outline beyond(const Outline& o, double p, bool along_y) {
  Outline out;
  const auto at = [along_y](Point a) { return along_y ? a.y : a.z; };
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Point a = o[i], b = o[(i + 1) % o.size()];
    if (at(a) >= p) out.push_back(a);
    if ((at(a) - p) * (at(b) - p) < 0) {
      const double f = (p - at(a)) / (at(b) - at(a));
      out.push_back({a.y + f * (b.y - a.y), a.z + f * (b.z - a.z)});
    }
  }
  return out;
}

using Lengths = std::array<double, 5>;  // mm

}  // namespace

// Height, width, wall, outer and inner radius.
TEST_CASE("hollow sections agree with an integration along their outline") {
  for (const Lengths& c : {Lengths{100, 60, 5, 7.5, 5}, Lengths{60, 100, 8, 20, 12}, Lengths{80, 80, 3, 0, 0},
                           Lengths{50, 30, 4, 2, 6}, Lengths{60, 60, 10, 30, 20}}) {
    const SectionData<double> d =
        RectangularHollow{c[0] * 1e-3, c[1] * 1e-3, c[2] * 1e-3, corners_of_radii(c[3] * 1e-3, c[4] * 1e-3)}.data();
    INFO(d.designation);
    const Outline outer = rounded_rectangle(c[0], c[1], c[3]);
    const Outline inner = rounded_rectangle(c[0] - 2 * c[2], c[1] - 2 * c[2], c[4]);
    const Moments o = moments(outer), i = moments(inner, -1);
    CHECK(d.area * 1e6 == doctest::Approx(o.A + i.A).epsilon(1e-6));
    CHECK(d.Iy * 1e12 == doctest::Approx(o.Iy + i.Iy).epsilon(1e-6));
    CHECK(d.Iz * 1e12 == doctest::Approx(o.Iz + i.Iz).epsilon(1e-6));
    const double above = moments(beyond(outer, 0, false)).Sy + moments(beyond(inner, 0, false), -1).Sy;
    CHECK(d.Wpl_y * 1e9 == doctest::Approx(2 * above).epsilon(1e-6));
    const double right = moments(beyond(outer, 0, true)).Sz + moments(beyond(inner, 0, true), -1).Sz;
    CHECK(d.Wpl_z * 1e9 == doctest::Approx(2 * right).epsilon(1e-6));
  }
}

// Height, width, web, flange, root radius: plastic axis in the web, in the fillets, in the flanges; no fillets.
TEST_CASE("channels agree with an integration along their outline, wherever the plastic axis lies") {
  for (const Lengths& c : {Lengths{200, 80, 14, 11, 5}, Lengths{200, 80, 6, 11, 13}, Lengths{100, 80, 6, 7, 4},
                           Lengths{100, 40, 5, 6, 0}}) {
    const SectionData<double> d = Channel{c[0] * 1e-3, c[1] * 1e-3, c[2] * 1e-3, c[3] * 1e-3, c[4] * 1e-3}.data();
    INFO(d.designation);
    const Outline o = channel_outline(c[0], c[1], c[2], c[3], c[4]);
    const Moments m = moments(o);
    const double centroid = m.Sz / m.A;
    CHECK(d.area * 1e6 == doctest::Approx(m.A).epsilon(1e-6));
    CHECK(d.Iy * 1e12 == doctest::Approx(m.Iy).epsilon(1e-6));
    CHECK(d.Iz * 1e12 == doctest::Approx(m.Iz - m.A * centroid * centroid).epsilon(1e-6));
    CHECK(d.Wel_z * 1e9 == doctest::Approx((m.Iz - m.A * centroid * centroid) / (c[1] - centroid)).epsilon(1e-6));
    CHECK(d.Wpl_y * 1e9 == doctest::Approx(2 * moments(beyond(o, 0, false)).Sy).epsilon(1e-6));
    double low = 0, high = c[1];
    for (int k = 0; k < 50; ++k) {
      const double p = (low + high) / 2;
      (moments(beyond(o, p, true)).A > m.A / 2 ? low : high) = p;
    }
    const Moments right = moments(beyond(o, low, true));
    CHECK(d.Wpl_z * 1e9 == doctest::Approx(2 * (right.Sz - low * right.A) + m.A * low - m.Sz).epsilon(1e-6));
  }
}

// G. R. Cowper, The shear coefficient in Timoshenko's beam theory, J. Appl. Mech. 33 (1966), Table 1, with Poisson's
// ratio 0 (formulas from memory).
TEST_CASE("shear areas are Cowper's without lateral contraction") {
  CHECK(SolidRound{1.0}.data().shear_z / SolidRound{1.0}.data().area == doctest::Approx(6.0 / 7).epsilon(1e-14));
  CHECK(SolidRectangle{2.0, 1.0}.data().shear_y == doctest::Approx(10.0 / 12 * 2).epsilon(1e-14));
  const SectionData<double> ring = RoundTube{2.0, 0.4}.data();
  const double q = std::pow(1 + 0.6 * 0.6, 2);
  CHECK(ring.shear_y / ring.area == doctest::Approx(6 * q / (7 * q + 20 * 0.36)).epsilon(1e-14));
  constexpr double t = 1e-6;
  for (const double n : {0.3, 1.0, 2.0}) {  // width / height
    const auto kappa = [n](double m, double flanges) {
      return 10 * std::pow(1 + 3 * m, 2) / (12 + 72 * m + 150 * m * m + 90 * m * m * m + flanges * n * n);
    };
    const SectionData<double> box = RectangularHollow{1.0, n, t, corners_of_radii(0, 0)}.data();
    CHECK(box.shear_z / box.area == doctest::Approx(kappa(n, 10 * (3 * n + 3 * n * n))).epsilon(1e-5));
    const SectionData<double> i = IShape{1.0, n, t, 2 * t}.data();
    const double m = 2 * n * 2;
    CHECK(i.shear_z / i.area == doctest::Approx(kappa(m, 30 * (m + m * m))).epsilon(1e-5));
  }
  const SectionData<double> strip = Channel{1.0, 2e-6, 1e-6, 1e-6}.data();  // hardly a flange
  CHECK(strip.shear_z / strip.area == doctest::Approx(5.0 / 6).epsilon(1e-4));
}

// S. P. Timoshenko, J. N. Goodier, Theory of Elasticity, art. 109, table: It = k1 a b³, Wt = k2 a b² (from memory).
TEST_CASE("a solid rectangle twists as in Timoshenko and Goodier") {
  constexpr double at_five = 0.00051;  // 0.2915002 is printed as 0.291: a hair more than half a unit
  using Row = std::array<double, 3>;
  for (const auto& [ratio, k1, k2] : {Row{1, 0.1406, 0.208}, Row{1.5, 0.196, 0.231}, Row{2, 0.229, 0.246},
                                      Row{3, 0.263, 0.267}, Row{5, 0.291, 0.291}, Row{10, 0.312, 0.312}}) {
    const SectionData<double> d = SolidRectangle{ratio, 1.0}.data();
    CHECK(std::fabs(d.It / ratio - k1) <= (ratio == 1.0 ? 0.00005 : 0.0005));
    CHECK(std::fabs(d.Wt / ratio - k2) <= (ratio == 5.0 ? at_five : 0.0005));
    CHECK(SolidRectangle{1.0, ratio}.data().It == doctest::Approx(d.It).epsilon(1e-15));
  }
  CHECK(SolidRectangle{1000.0, 1.0}.data().It == doctest::Approx((1000 - 0.63025) / 3).epsilon(1e-8));
}

namespace {

/// What stiffness and strength use: a length to the power given beside it.
template <class S>
std::vector<S> values(const SectionData<S>& d) {
  return {d.area,    d.Iy,      d.Iz, d.Wel_y, d.Wel_z, d.Wpl_y, d.Wpl_z,
          d.shear_y, d.shear_z, d.It, d.Wt,    d.iy,    d.iz,    d.perimeter};
}
constexpr std::array<int, 14> powers{2, 4, 4, 3, 3, 3, 3, 2, 2, 4, 3, 1, 1, 1};

/// Every shape, all lengths in proportion to `s`, the wall t apart.
template <class S>
std::vector<SectionData<S>> all_shapes(const S& s, const S& t) {
  const auto m = [&s](double length) { return S(s * S(length)); };
  return {RoundTube<S>{m(60.3), t}.data(),
          RectangularHollow<S>{m(100), m(60), t}.data(),
          SquareHollow<S>{m(80), t, cold_formed_corners}.data(),
          SolidRound<S>{t}.data(),
          SolidRectangle<S>{m(20), t}.data(),
          IShape<S>{m(100), m(60), t, m(7), m(6)}.data(),
          Channel<S>{m(200), m(80), t, m(11), m(13)}.data()};
}

}  // namespace

TEST_CASE("all shapes scale, carry derivatives and hold long double") {
  const auto plain = all_shapes<double>(1e-3, 5e-3);
  const auto large = all_shapes<double>(1.1e-3, 5.5e-3);
  constexpr double step = 1e-7;
  const auto less = all_shapes<double>(1e-3, 5e-3 - step), more = all_shapes<double>(1e-3, 5e-3 + step);
  const auto dual = all_shapes<Dual>(Dual(1e-3), Dual(5e-3, 1, 0));
  const auto wide = all_shapes<long double>(1e-3L, 5e-3L);
  for (std::size_t k = 0; k < plain.size(); ++k) {
    const auto p = values(plain[k]), l = values(large[k]), a = values(less[k]), b = values(more[k]);
    const auto d = values(dual[k]);
    for (std::size_t i = 0; i < p.size(); ++i) {
      INFO(plain[k].designation << ", value " << i);
      CHECK(l[i] == doctest::Approx(p[i] * std::pow(1.1, powers[i])).epsilon(1e-12));
      CHECK(d[i].value() == doctest::Approx(p[i]).epsilon(1e-14));
      const double slope = (b[i] - a[i]) / (2 * step);
      CHECK(std::fabs(d[i].derivatives()[0] - slope) <= 1e-6 * std::fabs(slope) + 1e-7 * p[i] / 5e-3);
      CHECK(static_cast<double>(values(wide[k])[i]) == doctest::Approx(p[i]).epsilon(1e-13));
    }
  }
  // A wall of a ten-thousandth, in long double: I against the difference of fourth powers, beyond what double holds.
  const long double D = 1.0L, t = 1e-4L, inner = D - 2 * t;
  const long double direct = pi_v<long double> / 64 * (D * D * D * D - inner * inner * inner * inner);
  CHECK(std::fabs(RoundTube{D, t}.data().Iy / direct - 1) < 1e4L * 8 * std::numeric_limits<long double>::epsilon());
  static_assert(std::is_same_v<decltype(RoundTube{60.3_mm, Dual(0.005)}), RoundTube<Dual>>);
  static_assert(std::is_same_v<decltype(RoundTube{1, 1e-1L}), RoundTube<long double>>);
}

TEST_CASE("thin walls, turned sections, plates and names") {
  const SectionData<double> tube = RoundTube{1.0, 1e-9}.data();
  CHECK(tube.It == doctest::Approx(pi * 1e-9 / 4).epsilon(1e-8));  // 2 pi r³ t
  CHECK(tube.shear_z / tube.area == doctest::Approx(0.5).epsilon(1e-8));
  // A square whose corners are quarter circles throughout is a tube; B.3 then only rounds the t³ term.
  const auto rounded = SquareHollow{0.1, 0.004, corners_of_radii(0.05, 0.046)}.data(),
             round = RoundTube{0.1, 0.004}.data();
  CHECK(rounded.Iy == doctest::Approx(round.Iy).epsilon(1e-12));
  CHECK(std::fabs(rounded.It / round.It - 1) < std::pow(4.0 / 48, 2) / 12 * 1.1);
  const auto tall = RectangularHollow{100_mm, 50_mm, 5_mm}.data(), flat = RectangularHollow{50_mm, 100_mm, 5_mm}.data();
  CHECK(tall.Iy == doctest::Approx(flat.Iz).epsilon(1e-14));
  CHECK(tall.shear_y == doctest::Approx(flat.shear_z).epsilon(1e-14));
  REQUIRE(tall.n_plates == 2);
  CHECK(tall.plates[0].c == doctest::Approx(0.085));  // h - 3 T, EN 1993-1-1 Table 5.2
  CHECK(tall.plates[1].c == doctest::Approx(0.035));
  CHECK(RoundTube{60.3_mm, 5_mm}.data().designation == "round tube 60.3 x 5");
  CHECK(SquareHollow{100_mm, 10_mm, cold_formed_corners}.data().inner_radius == doctest::Approx(0.015));
}
