// SPDX-License-Identifier: MIT
// Welds of round tubes (EN 1993-1-8 4.5, EN 1999-1-1 8.6.3) against hand calculations and the true line of the weld.
#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <string>

#include <doctest/doctest.h>

#include <baywork/verify/weld.hpp>

#include "support/by_hand.hpp"

namespace {

using namespace baywork;
using verify::LineLoads;
using verify::SaddleWeld;
using verify::SectionForces;
using verify::WeldPart;
using verify::WeldScope;
using verify::WeldStress;

SaddleWeld upright() { return {30 * mm, 3 * mm, 90 * deg, 4 * mm}; }
SaddleWeld slanting() { return {30 * mm, 3 * mm, 45 * deg, 4 * mm}; }
constexpr en1993::WeldMetal s235{235 * MPa, 360 * MPa};
constexpr en1999::WeldMetal alloy_6082{210 * MPa, 185 * MPa, 185 * MPa};

using Vector = std::array<double, 3>;
double dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
Vector cross(const Vector& a, const Vector& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
Vector sum(double a, const Vector& x, double b, const Vector& y) {
  return {a * x[0] + b * y[0], a * x[1] + b * y[1], a * x[2] + b * y[2]};
}

// The wall of a thin brace of radius 1 brings its own stresses (N, moments, shear flow, torque) to the line where it
// meets a chord of radius 1 / beta. Each element of the line has its own angle psi between the walls and its own
// direction; its throat halves psi. Returns the greatest equivalent stress for a throat of 1.
double along_the_true_line(double beta, double theta, const SectionForces& f) {
  const double R = 1 / beta;
  const Vector axis{std::cos(theta), 0, std::sin(theta)}, e1{std::sin(theta), 0, -std::cos(theta)}, e2{0, 1, 0};
  double worst = 0;
  constexpr int n = 360;
  for (int i = 0; i < n; ++i) {
    const double u = 2 * pi * i / n, c = std::cos(u), s = std::sin(u);
    const Vector off_brace = sum(c, e1, s, e2), round = sum(-s, e1, c, e2);
    const Vector off_chord{0, s / R, std::sqrt(1 - s * s / (R * R))};
    Vector line = cross(off_brace, off_chord);
    const double size = std::sqrt(dot(line, line));
    for (double& x : line) x /= size;
    const double cos_psi = -dot(off_brace, off_chord);
    const double pull = f.N / (2 * pi) + (f.My * c + f.Mz * s) / pi;
    const double flow = (f.Vy * s + f.Vz * c) / pi + f.T / (2 * pi);
    const Vector force = sum(pull, axis, flow, round);
    const double perimeter_per_line = std::fabs(dot(line, round));
    const double along = dot(force, line) * perimeter_per_line;
    const double aslant = dot(force, cross(off_brace, line)) * perimeter_per_line;
    // sin²(psi/2) and cos²(psi/2)
    const double normal = aslant * std::sqrt((1 - cos_psi) / 2), across = aslant * std::sqrt((1 + cos_psi) / 2);
    worst = (std::max)(worst, verify::equivalent({normal, across, along}));
  }
  return worst;
}

double by_the_formula(double theta, const SectionForces& f) {
  return verify::equivalent(verify::throat_stress({2, 0.1, theta, 1}, verify::line_loads(2, f)));
}

}  // namespace

TEST_CASE("line loads of a thin ring") {
  // Hand calculation, d = 30 mm: N = 10 kN, M = 100 Nm: 10000/94.2478 + 4 100000/2827.43 = 106.103 + 141.471 =
  // 247.574 N/mm; V = 2 kN, T = 50 Nm: 4000/94.2478 + 100000/2827.43 = 42.4413 + 35.3678 = 77.8091 N/mm.
  const LineLoads l = verify::line_loads(30 * mm, {10e3, 2e3, 0, 50, 100, 0});
  CHECK(close(l.n, 247.574e3, 1e-5));
  CHECK(close(l.v, 77.8091e3, 1e-5));
  // signs have no effect, two components count as their resultant
  const LineLoads back = verify::line_loads(30 * mm, {-10e3, -1.2e3, 1.6e3, -50, 60, -80});
  CHECK(close(back.n, l.n, 1e-12));
  CHECK(close(back.v, l.v, 1e-12));
  const LineLoads none = verify::line_loads(30 * mm, {});
  CHECK((none.n == 0.0 && none.v == 0.0));
}

TEST_CASE("throat of an upright and of a slanting tube") {
  // Hand calculation, a = 4 mm: 90 degrees sqrt(2 247.574² + 3 77.8091²)/4 = 93.7913 MPa; n alone at 45 degrees
  // 247.574 sqrt(2.707107)/4 = 101.835 MPa. Legs: 4 sqrt(2) = 5.65685 mm, 4/cos(22.5°) = 4.32957 mm.
  const LineLoads l{247.574e3, 77.8091e3};
  const WeldStress s = verify::throat_stress(upright(), l);
  CHECK(close(s.normal, s.across, 1e-12));
  CHECK(close(verify::equivalent(s), 93.7913 * MPa, 1e-5));
  CHECK(close(verify::equivalent(verify::throat_stress(slanting(), {l.n, 0})), 101.835 * MPa, 1e-5));
  CHECK(close(verify::leg(upright()), 5.65685 * mm, 1e-5));
  CHECK(close(verify::leg(slanting()), 4.32957 * mm, 1e-5));
}

TEST_CASE("the weld's formula holds along the true line of the saddle") {
  // For each force alone it is exact or safe, at every width and angle: N and the in-plane moment are worst at the
  // heel. Forces together are put at one place though they peak at several; only N with a torque does peak everywhere,
  // and there the slope of the line lets the formula be exceeded by up to 1.8 %.
  unsigned state = 7;
  const auto next = [&] {
    state = state * 1664525U + 1013904223U;
    return (state >> 8U) / 8388608.0 - 1.0;
  };
  for (const double beta : {0.2, 0.5, 0.8, 0.999})
    for (const double angle : {30.0, 45.0, 60.0, 75.0, 90.0}) {
      const double theta = angle * deg;
      const auto share = [&](const SectionForces& f) {
        return along_the_true_line(beta, theta, f) / by_the_formula(theta, f);
      };
      CHECK(close(share({1, 0, 0, 0, 0, 0}), 1.0, 1e-9));
      CHECK(close(share({0, 0, 0, 0, 1, 0}), 1.0, 1e-9));
      CHECK(share({0, 0, 0, 0, 0, 1}) < 1.0);
      CHECK(share({0, 1, 0, 0, 0, 0}) < 1.0 + 1e-9);
      CHECK(share({0, 0, 1, 0, 0, 0}) < 1.0 + 1e-9);
      CHECK(close(share({0, 0, 0, 1, 0, 0}), 1.0, 1e-9));
      for (int i = 0; i < 200; ++i) CHECK(share({next(), next(), next(), next(), next(), next()}) < 1.018);
      for (int i = 1; i < 100; ++i) CHECK(share({1, 0, 0, 0.05 * i, 0, 0}) < 1.018);
    }
}

TEST_CASE("EN 1993 directional method") {
  // Table 4.1: 0.8, 0.85, 0.9, 1.0. Hand calculation, S235: 360/(0.8 1.25) = 360 MPa, 0.9 360/1.25 = 259.2 MPa.
  CHECK(en1993::correlation_factor(235 * MPa) == 0.8);
  CHECK(en1993::correlation_factor(275 * MPa) == 0.85);
  CHECK(en1993::correlation_factor(355 * MPa) == 0.9);
  CHECK(en1993::correlation_factor(355.1 * MPa) == 1.0);
  CHECK(en1993::correlation_factor(460 * MPa) == 1.0);
  const LineLoads l{247.574e3, 77.8091e3};
  const verify::ClauseRow row = en1993::weld(upright(), l, s235);
  CHECK(close(row.utilisation, 93.7913 / 360, 1e-5));
  CHECK(close(row.resistance, 360 * MPa, 1e-12));
  // A butt-like pull: normal alone, 200/259.2 is worse than 200/360. Along alone: 100 sqrt(3)/360.
  CHECK(close(en1993::fillet_weld({200 * MPa, 0, 0}, s235).utilisation, 200 / 259.2, 1e-12));
  CHECK(close(en1993::fillet_weld({0, 0, -100 * MPa}, s235).utilisation, 100 * std::sqrt(3.0) / 360, 1e-12));
  CHECK(close(en1993::fillet_weld({0, 100 * MPa, 0}, s235).utilisation, 100 * std::sqrt(3.0) / 360, 1e-12));
  // a round brace is never governed by the normal stress: sqrt(2) beta_w >= 1.13 against 1/(0.9 sqrt(2)) = 0.79
  CHECK(en1993::weld(upright(), {l.n, 0}, s235).resistance == row.resistance);
  // half the throat, twice the stress; as much more with gamma_M2
  SaddleWeld thick = upright();
  thick.throat = 3 * mm;
  CHECK(close(en1993::weld(thick, l, s235).utilisation, row.utilisation * 4 / 3, 1e-12));
  CHECK(close(en1993::weld(upright(), l, s235, {.gamma_M2 = 2.5}).utilisation, 2 * row.utilisation, 1e-12));
}

TEST_CASE("EN 1993: a weld as strong as the tube") {
  // Published for fillet welds of hollow sections: a >= 0.92 t, 0.96 t and 1.11 t in S235, S275 and S355 (fu 510), as
  // in J. Wardenier et al., Design guide for circular hollow section joints, 2nd ed., on welds (values from memory). By
  // hand: sqrt(2) fy beta_w gamma_M2 / fu.
  SaddleWeld w = upright();
  w.t = 1;  // per metre of wall
  CHECK(close(en1993::full_strength_throat(w, s235), 0.923167, 1e-5));
  CHECK(close(en1993::full_strength_throat(w, {275 * MPa, 430 * MPa}), 0.960966, 1e-5));
  CHECK(close(en1993::full_strength_throat(w, {355 * MPa, 510 * MPa}), 1.107454, 1e-5));
  CHECK(close(en1993::full_strength_throat(w, {460 * MPa, 560 * MPa}), 1.452094, 1e-5));
  // at 45 degrees by sqrt(2.707107/2) = 1.163423 more
  w.theta = 45 * deg;
  CHECK(close(en1993::full_strength_throat(w, s235), 0.923167 * 1.163423, 1e-5));
  // That throat under the wall's own yield force is just used up: n = t fy.
  SaddleWeld full = slanting();
  full.throat = en1993::full_strength_throat(full, s235);
  CHECK(close(en1993::weld(full, {full.t * 235 * MPa, 0}, s235).utilisation, 1.0, 1e-12));
  CHECK(close(en1993::full_strength(full, s235).utilisation, 1.0, 1e-12));
  CHECK(close(en1993::full_strength(upright(), s235).utilisation, 3 * 0.923167 / 4, 1e-5));
}

TEST_CASE("EN 1999 weld metal") {
  // EN 1999-1-1 Table 8.8 (values from memory); the softer filler never has more.
  CHECK(en1999::weld_metal_strength("6082", en1999::Filler::en_5356) == 210 * MPa);
  CHECK(en1999::weld_metal_strength("6082", en1999::Filler::en_4043a) == 190 * MPa);
  CHECK(en1999::weld_metal_strength("7020", en1999::Filler::en_4043a) == 210 * MPa);
  CHECK(en1999::weld_metal_strength("5083", en1999::Filler::en_4043a) == 0.0);
  CHECK(en1999::weld_metal_strength("2024", en1999::Filler::en_5356) == 0.0);
  for (const char* alloy : {"5083", "6005A", "6060", "6061", "6082", "7020"})
    CHECK(en1999::weld_metal_strength(alloy, en1999::Filler::en_5356) >
          en1999::weld_metal_strength(alloy, en1999::Filler::en_4043a));
  CHECK(close(en1999::fillet_weld({0, 0, 100 * MPa}, 210 * MPa).utilisation, 100 * std::sqrt(3.0) / 168, 1e-12));
}

TEST_CASE("EN 1999 throat, toe and fusion faces") {
  // Hand calculation, n = 100 and v = 30 N/mm, a = 4 mm, t = 3 mm: throat sqrt(20000 + 2700)/4 = 37.6663 MPa of
  // 210/1.25 = 168; toe sqrt(10000 + 2700)/3 = 37.5648 MPa of 185/1.25 = 148; leg 5.65685 mm: on the brace
  // sqrt(3 (10000 + 900))/5.65685 = 31.9668 MPa, on the chord sqrt(12700)/5.65685 = 19.9217 MPa of 148.
  const LineLoads l{100e3, 30e3};
  const SaddleWeld w = upright();
  CHECK(close(en1999::weld_part(w, l, WeldPart::toe, alloy_6082).utilisation, 37.5648 / 148, 1e-5));
  CHECK(close(en1999::weld_part(w, l, WeldPart::face_on_brace, alloy_6082).utilisation, 31.9668 / 148, 1e-5));
  CHECK(close(en1999::weld_part(w, l, WeldPart::face_on_chord, alloy_6082).utilisation, 19.9217 / 148, 1e-5));
  CHECK(close(en1999::fillet_weld(verify::throat_stress(w, l), 210 * MPa).utilisation, 37.6663 / 168, 1e-5));
  CHECK(close(en1999::weld(w, l, alloy_6082).utilisation, 37.5648 / 148, 1e-5));
  // 45 degrees, leg 4.32957 mm: throat sqrt(2.707107 10000 + 2700)/4 = 43.1357, brace 41.7666, chord
  // sqrt(10000 (0.5 + 1.5) + 2700)/4.32957 = 34.7991 MPa; now a face governs: 41.7666/148 = 0.282 > 0.257.
  CHECK(close(en1999::fillet_weld(verify::throat_stress(slanting(), l), 210 * MPa).utilisation, 43.1357 / 168, 1e-5));
  CHECK(close(en1999::weld_part(slanting(), l, WeldPart::face_on_chord, alloy_6082).utilisation, 34.7991 / 148, 1e-5));
  CHECK(close(en1999::weld(slanting(), l, alloy_6082).utilisation, 41.7666 / 148, 1e-5));
  // Each part governs in its turn: a weak filler, a thin wall, a weak chord.
  CHECK(std::string(en1999::weld(w, l, {100 * MPa, 185 * MPa, 185 * MPa}).clause) == "EN 1999-1-1 8.6.3.3");
  CHECK(close(en1999::weld(w, l, {100 * MPa, 185 * MPa, 185 * MPa}).utilisation, 37.6663 / 80, 1e-5));
  CHECK(close(en1999::weld(w, l, {210 * MPa, 185 * MPa, 60 * MPa}).utilisation, 19.9217 / 48, 1e-5));
  SaddleWeld thin = w;
  thin.t = 1.5 * mm;
  CHECK(close(en1999::weld(thin, l, alloy_6082).utilisation, 2 * 37.5648 / 148, 1e-5));
  CHECK(close(en1999::weld(w, l, alloy_6082, {.gamma_Mw = 2.5}).utilisation, 2 * 37.5648 / 148, 1e-5));
  // Throat as strong as the softened wall, 6082 with 5356: larger of 185 sqrt(2)/210 = 1.245855 t and
  // sqrt(3/2) = 1.224745 t; under the wall's force the weld is then just used up, and so is the toe.
  SaddleWeld full = w;
  full.throat = en1999::full_strength_throat(w, alloy_6082);
  CHECK(close(full.throat, 1.245855 * w.t, 1e-5));
  const LineLoads wall{w.t * 148 * MPa, 0};
  CHECK(close(en1999::fillet_weld(verify::throat_stress(full, wall), 210 * MPa).utilisation, 1.0, 1e-12));
  CHECK(close(en1999::weld(full, wall, alloy_6082).utilisation, 1.0, 1e-12));
}

TEST_CASE("limits of the weld clauses: beyond them nothing passes") {
  const auto steel = [](double d, double t, double theta, double throat) {
    return en1993::weld_scope({d * mm, t * mm, theta * deg, throat * mm}, s235);
  };
  CHECK(steel(30, 3, 90, 3) == WeldScope::covered);
  CHECK(steel(30, 3, 90, 2.99) == WeldScope::thin_throat);
  CHECK(steel(30, 3, 30, 4) == WeldScope::covered);
  CHECK(steel(30, 3, 29.9, 4) == WeldScope::angle);
  CHECK(steel(30, 3, 90.1, 4) == WeldScope::angle);
  CHECK(steel(30, 15, 90, 4) == WeldScope::not_a_tube);
  CHECK(steel(30, 3, 90, 0) == WeldScope::not_a_tube);
  CHECK(steel(30, 3, 90, std::nan("")) == WeldScope::not_a_tube);
  CHECK(steel(9.56, 3, 90, 3) == WeldScope::covered);     // pi 9.56 = 30.03 mm
  CHECK(steel(9.54, 3, 90, 3) == WeldScope::short_weld);  // 29.97 mm
  CHECK(steel(30, 3, 90, 15.7) == WeldScope::covered);    // 94.25 mm, 6 throats 94.2
  CHECK(steel(30, 3, 90, 15.8) == WeldScope::short_weld);
  CHECK(en1993::weld_scope(upright(), {}) == WeldScope::bad_strength);
  const auto alloy = [](double throat, const en1999::WeldMetal& m) {
    SaddleWeld w = upright();
    w.throat = throat * mm;
    return en1999::weld_scope(w, m);
  };
  CHECK(alloy(11.7, alloy_6082) == WeldScope::covered);  // 8 throats 93.6 mm
  CHECK(alloy(11.8, alloy_6082) == WeldScope::short_weld);
  CHECK(alloy(4, {0, 185 * MPa, 185 * MPa}) == WeldScope::bad_strength);
  CHECK(alloy(4, {210 * MPa, 185 * MPa, 0}) == WeldScope::bad_strength);
  SaddleWeld flat = upright();
  flat.theta = 20 * deg;
  CHECK(std::isinf(en1993::weld(flat, {}, s235).utilisation));
  CHECK(std::isinf(en1993::full_strength(flat, s235).utilisation));
  CHECK(std::isinf(en1999::weld(flat, {}, alloy_6082).utilisation));
  CHECK(en1993::weld(upright(), {}, s235).utilisation == 0.0);
  for (int s = 0; s <= static_cast<int>(WeldScope::bad_strength); ++s)
    CHECK(std::string(verify::reason(static_cast<WeldScope>(s))).empty() == (s == 0));
}
