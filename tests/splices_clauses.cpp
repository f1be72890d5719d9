// SPDX-License-Identifier: MIT
// The clauses of connectors by hand: pins, bolts, T-stubs, spigots.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <functional>

#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/connectors.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using verify::PinStack;

constexpr double kN = 1e3;

double integral(const std::function<double(double)>& f, double a, double b) {  // Simpson: exact for cubics
  constexpr int n = 200;
  double sum = f(a) + f(b);
  for (int i = 1; i < n; ++i) sum += f(a + (b - a) * i / n) * (i % 2 ? 4 : 2);
  return sum * (b - a) / n / 3;
}

}  // namespace

TEST_CASE("a steel pin by EN 1993-1-8 3.13") {
  // Independent hand calculation. Pin d = 20 mm of S355 (355/490 MPa), blade b = 20, fork a = 10, gaps c = 1 mm of
  // S235, hole d0 = 21, F = 60 kN.
  const PinStack pin{20 * mm, 20 * mm, 10 * mm, 1 * mm};
  const verify::PinRules r = en1993::pin_rules();
  const double F = 60 * kN;
  // A = 314.159 mm2; 0.6 * 314.159 * 490/1.25 = 73.890 kN against 30 kN
  const verify::ClauseRow shear = verify::pin_shear(F / 2, pin, 490 * MPa, r);
  CHECK(close(shear.resistance, 73890, 1e-5));
  CHECK(close(shear.utilisation, 0.40601, 1e-5));
  // Wel = pi 20^3/32 = 785.398 mm3; M_Rd = 1.5 * 785.398 * 355 = 418.224 kNmm; M_Ed = 60 (20 + 4 + 20)/8 = 330 kNmm
  const verify::ClauseRow bend = verify::pin_bending(F, pin, 355 * MPa, r);
  CHECK(close(bend.effect, 330.0, 1e-12));
  CHECK(close(bend.resistance, 418.224, 1e-5));
  // statics of the same: F/2 (a/2 + c) + F b/8 = 30 * 6 + 60 * 2.5 = 330 kNmm
  CHECK(close(pin.moment(F), F / 2 * (5 * mm + 1 * mm) + F * 20 * mm / 8, 1e-12));
  // (330/418.224)^2 + 0.40601^2 = 0.62261 + 0.16485
  CHECK(close(verify::pin_interaction(F, pin, 355 * MPa, 490 * MPa, r).utilisation, 0.78745, 2e-5));
  // bearing 1.5 * 20 * 20 * 235 = 141 kN for the blade, and the same against half the force for each plate of the fork
  CHECK(close(verify::pin_bearing(F, 20 * mm, 20 * mm, 235 * MPa, r).utilisation, 60.0 / 141.0, 1e-12));
  CHECK(close(verify::pin_bearing(F / 2, 10 * mm, 20 * mm, 235 * MPa, r).utilisation, 60.0 / 141.0, 1e-12));
  // drawn again: 0.6 * 20 * 20 * 235 = 56.4 kN; 0.8 * 785.398 * 355 = 223.053 kNmm;
  // 0.591 sqrt(210000 * 60000 * 1/(400 * 20)) = 741.70 MPa against 2.5 * 235
  CHECK(close(verify::pin_bearing_replaceable(F, 20 * mm, 20 * mm, 235 * MPa, r).utilisation, 60 / 56.4, 1e-12));
  CHECK(close(verify::pin_bending_replaceable(F, pin, 355 * MPa, r).utilisation, 330 / 223.053, 1e-5));
  CHECK(
      close(verify::pin_contact(F, 20 * mm, 20 * mm, 21 * mm, 210e9, 235 * MPa, r).utilisation, 741.70 / 587.5, 1e-5));
  // Hertz (Johnson, Contact Mechanics, 4.2, value from memory): p = sqrt(F' E*/(pi R)), E* = E/(2 (1 - nu^2)),
  // 1/R = 2/d - 2/d0: with d d0 for d^2 the clause's constant
  const double R = 1 / (2 / (20 * mm) - 2 / (21 * mm)), E_star = 210e9 / (2 * (1 - 0.09));
  CHECK(close(verify::pin_contact_stress(F, 20 * mm, 20 * mm, 21 * mm, 210e9) * std::sqrt(20.0 / 21.0),
              std::sqrt(F / (20 * mm) * E_star / (pi * R)), 1e-3));
  // Table 3.9 type A: 60000/(2 * 20 * 235) = 6.3830 mm, + 2/3 * 21 = 20.383 to the end, + 21/3 = 13.383 to the sides:
  // with just that, 1; with 25 and 20 mm the same said as forces, 60/(9.4 * (25 - 14)), 60/(9.4 * (20 - 7))
  CHECK(close(verify::pin_end(F, 20 * mm, 21 * mm, 235 * MPa, 20.38298 * mm, r).utilisation, 1.0, 1e-6));
  CHECK(close(verify::pin_side(F, 20 * mm, 21 * mm, 235 * MPa, 13.38298 * mm, r).utilisation, 1.0, 1e-6));
  CHECK(close(verify::pin_end(F, 20 * mm, 21 * mm, 235 * MPa, 25 * mm, r).utilisation, 60 / (9.4 * 11), 1e-9));
  CHECK(close(verify::pin_side(F, 20 * mm, 21 * mm, 235 * MPa, 20 * mm, r).utilisation, 60 / (9.4 * 13), 1e-9));
  // a hole at the very edge holds nothing
  CHECK(verify::pin_end(1.0, 20 * mm, 21 * mm, 235 * MPa, 14 * mm, r).utilisation > 1e9);
  // no gap and thin plates: the pin hardly bends; a gap adds F c/2
  const PinStack tight{20 * mm, 1e-9, 1e-9, 0}, open{20 * mm, 1e-9, 1e-9, 8 * mm};
  CHECK(tight.moment(F) < 1e-3);
  CHECK(close(open.moment(F) - tight.moment(F), F / 2 * 8 * mm, 1e-9));
}

TEST_CASE("in aluminium gamma_Mp divides bearing and bending, and softened plates count") {
  // EN AW-6082 T6 beside a weld, fo,haz = 125 MPa: 1.5 * 20 * 20 * 125/1.25 = 60.0 kN, 0.425 of the steel plate's
  const verify::PinRules r = en1999::pin_rules();
  CHECK(close(verify::pin_bearing(60 * kN, 20 * mm, 20 * mm, 125 * MPa, r).utilisation, 1.0, 1e-12));
  // ends: 60000 * 1.25/(2 * 20 * 125) + 14 = 29 mm
  CHECK(close(verify::pin_end(60 * kN, 20 * mm, 21 * mm, 125 * MPa, 29 * mm, r).utilisation, 1.0, 1e-12));
  // an aluminium pin, fo = 260: 1.5 * 785.398 * 260/1.25 = 245.04 kNmm
  const PinStack pin{20 * mm, 20 * mm, 10 * mm, 1 * mm};
  CHECK(close(verify::pin_bending(60 * kN, pin, 260 * MPa, r).resistance, 245.044, 1e-5));
  CHECK(close(verify::pin_shear(30 * kN, pin, 310 * MPa, r).resistance, 0.6 * 314.1593e-6 * 310e6 / 1.25, 1e-6));
  CHECK(r.gamma_bearing > en1993::pin_rules().gamma_bearing);
}

TEST_CASE("bolts of class 8.8 and 10.9 carry what design tables say") {
  // Design resistances, gamma_M2 = 1.25, of the usual tables (as in the tables of the Steel Construction Institute,
  // values from memory): tension and single shear through the thread in kN. There areas (157 mm2: up to 0.3 %) and
  // results (101: up to 0.5 %) are rounded to three digits.
  struct Line {
    double d;
    BoltClass grade;
    double tension, shear;
  };
  const Line table[] = {{12, BoltClass::c8_8, 48.6, 32.4}, {16, BoltClass::c8_8, 90.4, 60.3},
                        {20, BoltClass::c8_8, 141, 94.1},  {24, BoltClass::c8_8, 203, 136},
                        {30, BoltClass::c8_8, 323, 215},   {20, BoltClass::c10_9, 176, 98.0},
                        {24, BoltClass::c10_9, 254, 141}};
  for (const Line& l : table) {
    const Bolt b = metric_bolt(l.d * mm, l.grade);
    CHECK(close(en1993::bolt_tension(b), l.tension * kN, 5e-3));
    CHECK(close(en1993::bolt_shear(b), l.shear * kN, 5e-3));
  }
  // M12 through a 10 mm plate of S235 (fu 360), d0 = 13, e1 = 20, e2 = 18: k1 = 2.8 * 18/13 - 1.7 = 2.17692,
  // alpha_b = 20/39 = 0.512821: 2.17692 * 0.512821 * 360 * 12 * 10/1.25 = 38.582 kN
  const Bolt m12 = metric_bolt(12_mm, BoltClass::c8_8);
  CHECK(close(en1993::bolt_bearing(m12, 13 * mm, 20 * mm, 18 * mm, 10 * mm, 360 * MPa), 38582, 1e-5));
  // far from edges: k1 = 2.5, alpha_b = 1: 2.5 * 360 * 120/1.25 = 86.4 kN; a soft bolt counts: 4.6 in fu 490
  CHECK(close(en1993::bolt_bearing(m12, 13 * mm, 60 * mm, 60 * mm, 10 * mm, 360 * MPa), 86400, 1e-12));
  const Bolt soft = metric_bolt(12_mm, BoltClass::c4_6);
  CHECK(close(en1993::bolt_bearing(soft, 13 * mm, 60 * mm, 60 * mm, 10 * mm, 490 * MPa), 2.5 * 400e6 * 120e-6 / 1.25,
              1e-12));
  // at the very edge nothing is left
  CHECK(en1993::bolt_bearing(m12, 13 * mm, 20 * mm, 5 * mm, 10 * mm, 360 * MPa) == 0.0);
  // punching: 0.6 pi 18 * 10 * 360/1.25 = 97.716 kN
  CHECK(close(en1993::bolt_punching(m12, 10 * mm, 360 * MPa), 97716, 1e-5));
  // 10 kN shear and 30 kN tension: 10/32.36 + 30/(1.4 * 48.54)
  const double Fv = 0.6 * 800e6 * m12.stress_area / 1.25, Ft = 0.9 * 800e6 * m12.stress_area / 1.25;
  CHECK(close(en1993::bolt_interaction(10 * kN, 30 * kN, m12).utilisation, 10e3 / Fv + 30e3 / (1.4 * Ft), 1e-12));
}

TEST_CASE("T-stubs fail in three ways") {
  // Independent hand calculation: m = 30, e = 40, t = 15, pitch 100 mm, f = 275 MPa, two M20 8.8 of As = 245 mm2:
  // l_eff = min(2 pi 30 = 188.5, 4 * 30 + 1.25 * 40 = 170, 100) = 100; M_pl = 0.25 * 100 * 225 * 275 = 1.546875 kNm.
  // Mode 1: 4 * 1.546875/0.030 = 206.25 kN. Mode 2, n = min(40, 37.5): F_t = 2 * 0.9 * 800 * 245/1.25 = 282.24 kN;
  // (2 * 1546.875 + 37.5 * 282.24)/67.5 = 202.63 kN. Mode 3: 282.24 kN.
  en1993::TStub s{.m = 30 * mm,
                  .e = 40 * mm,
                  .t = 15 * mm,
                  .pitch = 100 * mm,
                  .f_web = 275 * MPa,
                  .f_bolt = 275 * MPa,
                  .F_t = 282.24 * kN,
                  .bolt_area = 245e-6,
                  .grip = 60 * mm};
  CHECK(close(s.l_eff_1(), 100 * mm, 1e-12));
  CHECK(close(s.n(), 37.5 * mm, 1e-12));
  CHECK(close(s.F_1(), 206.25 * kN, 1e-9));
  CHECK(close(s.F_2(), 202.6333 * kN, 1e-5));
  CHECK(close(s.resistance(), s.F_2(), 1e-12));
  CHECK(s.mode() == 2);
  CHECK(close(en1993::t_stub(101.3167 * kN, s).utilisation, 0.5, 1e-5));
  // statics of mode 2, one half: the bolt's F_t/2 and the prying force Q at n beyond it turn the flange's M_pl at the
  // web
  const double F = s.F_2() / 2, Q = s.F_t / 2 - F;
  CHECK(Q > 0);
  CHECK(close(F * s.m - Q * s.n(), s.M_pl(s.l_eff_2(), s.f_web), 1e-9));
  // wide pitch: circular pattern 2 pi m in mode 1; narrow flange: 4 m + 1.25 e
  s.pitch = 1.0;
  s.e = 200 * mm;
  CHECK(close(s.l_eff_1(), 2 * pi * 30 * mm, 1e-12));
  s.e = 35 * mm;
  CHECK(close(s.l_eff_1(), (120 + 43.75) * mm, 1e-12));
  CHECK(close(s.l_eff_2(), (120 + 43.75) * mm, 1e-12));
  // thin: mode 1; thick: mode 3; stronger with every millimetre
  double before = 0;
  for (double t = 4; t < 60; t += 0.5) {
    s.t = t * mm;
    s.grip = 0;
    CHECK(s.resistance() >= before);
    before = s.resistance();
    if (t < 8) CHECK(s.mode() == 1);
  }
  CHECK(s.mode() == 3);
  // L_b* = 8.8 * 30^3 * 245/(100 * 15^3) = 172.48 mm: with longer bolts nothing pries, 2 M_pl/m = 103.125 kN
  s.t = 15 * mm;
  s.e = 40 * mm;
  s.pitch = 100 * mm;
  s.grip = 172 * mm;
  CHECK(s.pries());
  s.grip = 173 * mm;
  CHECK(!s.pries());
  CHECK(close(s.resistance(), 103.125 * kN, 1e-9));
  // softened at the web alone: mode 1 loses that half: (2 * 125 + 2 * 250)/(4 * 250) of an unwelded one
  s.grip = 60 * mm;
  s.f_web = 125 * MPa;
  s.f_bolt = 250 * MPa;
  CHECK(close(s.F_1(), 206.25 * kN * 250 / 275 * 0.75, 1e-9));
}

TEST_CASE("bolts on a circle balance force, moment, shear and torque") {
  for (const std::size_t n : {std::size_t{3}, std::size_t{4}, std::size_t{6}, std::size_t{8}})
    for (double turn = 0; turn < 2; turn += 0.17) {
      const en1993::BoltCircle c{n, 0.1};
      const double N = 20 * kN, M = 700, per = static_cast<double>(n);
      double sum = 0, moment = 0, worst = 0;
      for (std::size_t i = 0; i < n; ++i) {
        const double y = 0.05 * std::cos(turn + 2 * pi * static_cast<double>(i) / per),
                     F = N / per + M * y / (per * 0.05 * 0.05 / 2);
        sum += F;
        moment += F * y;
        worst = std::max(worst, F);
      }
      CHECK(close(sum, N, 1e-12));
      CHECK(close(moment, M, 1e-12));
      CHECK(worst <= c.tension(N, M) * (1 + 1e-12));
      CHECK(c.tension(N, M) * std::cos(pi / per) <= worst * (1 + 1e-9));
    }
  const en1993::BoltCircle c{4, 0.1};
  CHECK(close(c.tension(20 * kN, 700), (5 + 7) * kN, 1e-12));   // 20/4 + 4 * 0.7/(4 * 0.1)
  CHECK(c.tension(-50 * kN, 700) == 0.0);                       // pressed together
  CHECK(close(c.shear(6 * kN, 200), (1.5 + 1.0) * kN, 1e-12));  // 6/4 + 2 * 0.2/(4 * 0.1)
}

TEST_CASE("end plates give way by their bolts and plates") {
  // By hand: 60.3 tube, six M12 (84.267 mm2) on 110 mm, plates 15 mm, 4 mm throat: m = 24.85 - 4.5255 = 20.3245 mm,
  // l_eff = pi 60.3/6 = 31.573 mm. One bolt: 210e9 * 0.8 * 84.267e-6/0.0444 = 318.85 MN/m; one plate: 210e9 * 0.45 *
  // 0.031573 * (15/20.3245)^3 = 1199.4 MN/m. Together 1/(1/318.85 + 2/1199.4) = 208.17; six: 1249.0 MN/m; 0.11^2/8 of
  // it: 1.8891 MNm.
  BoltedEndPlate c = plates();
  c.fit.slack = 0.2_mm;
  const ConnectorFit f = en1993::end_plate_fit(c, 60.3 * mm);
  CHECK(close(f.axial, 1249.0e6, 2e-4));
  CHECK(close(f.about_y, 1.8891e6, 2e-4));
  CHECK(f.about_z == f.about_y);
  CHECK(is_infinite(f.shear_y));
  CHECK(f.slack == 0.2_mm);
  // six springs on a circle turn as their sum of k y^2 says, however they lie
  double turning = 0;
  for (int i = 0; i < 6; ++i) turning += f.axial / 6 * std::pow(55 * mm * std::cos(0.3 + i * pi / 3), 2);
  CHECK(close(turning, f.about_y, 1e-9));
  BoltedEndPlate tight = c;
  tight.bolt_circle = 65_mm;
  CHECK_THROWS_AS((void)en1993::end_plate_fit(tight, 60.3 * mm), BadDescription);
}

TEST_CASE("a spigot's contact balances shear and moment") {
  for (const double V : {0.0, 3e3})
    for (const double M : {0.0, 400.0}) {
      if (V == 0 && M == 0) continue;
      const verify::SpigotContact c{0.12, V, M};
      const double q0 = c.q_mouth(), q1 = -(2 * V / 0.12 + 6 * M / (0.12 * 0.12));
      const auto q = [&](double x) { return q0 + (q1 - q0) * x / 0.12; };
      CHECK(integral(q, 0, 0.12) == doctest::Approx(V).epsilon(1e-9).scale(M / 0.12));
      CHECK(integral([&](double x) { return q(x) * x; }, 0, 0.12) == doctest::Approx(-M).epsilon(1e-9).scale(V * 0.12));
      double most = 0;
      for (double x = 0; x <= 0.12; x += 0.001) {
        // the part from the mouth to x: M + V x less what the pressure has taken
        const double taken = integral([&](double s) { return q(s) * (x - s); }, 0, x);
        CHECK(c.spigot_moment(x) == doctest::Approx(M + V * x - taken).epsilon(1e-9).scale(M + V * 0.12));
        CHECK(c.tube_moment(x) == doctest::Approx(taken).epsilon(1e-9).scale(M + V * 0.12));
        most = std::max(most, c.spigot_moment(x));
      }
      CHECK(most <= c.spigot_moment_most() * (1 + 1e-12));
      CHECK(most >= 0.85 * c.spigot_moment_most());
    }
  // V alone: V l 4/27 at l/3
  const verify::SpigotContact c{0.12, 3e3, 0};
  CHECK(close(c.spigot_moment(0.04), 3e3 * 0.12 * 4 / 27, 1e-12));
  // the ring: a push q on the inner half is held by the walls on both sides: q = 2 t sigma
  CHECK(close(verify::ring_stress(50e3, 5 * mm), 5 * MPa, 1e-12));
}

TEST_CASE("net sections of a tube and a bar with a hole across") {
  // 60.3 x 5, hole 12.5: A = pi * 5 * 55.3 = 868.65, less 2 * 12.5 * 5 = 743.65 mm2;
  // I = pi/64 (60.3^4 - 50.3^4) = 334.77e3; less 125 (27.65^2 + 25/12) = 95.83e3: 238.94e3; W = 238.94e3/30.15 = 7925
  // mm3
  const verify::HoledRound t = verify::holed_round(60.3 * mm, 5 * mm, 12.5 * mm);
  CHECK(close(t.A, 868.65e-6, 1e-5));
  CHECK(close(t.A_net, 743.65e-6, 1e-5));
  CHECK(close(t.W_net, 7925e-9, 2e-4));
  // solid 50, hole 12.5: A = 1963.5 - 625 = 1338.5 mm2; I = 306.80e3 - 12.5 * 50^3/12 = 130.21e3: 176.59e3; W 7063.6
  // mm3
  const verify::HoledRound s = verify::holed_round(50 * mm, 0, 12.5 * mm);
  CHECK(close(s.A_net, 1338.5e-6, 1e-4));
  CHECK(close(s.W_net, 7063.6e-9, 1e-4));
  CHECK(close(s.W, pi / 32 * 125e-6, 1e-9));
}

TEST_CASE("forces of a coupler and of its plates by statics") {
  const PinCoupler level{.pin = 20_mm, .hole = 21_mm, .blade = 20_mm, .fork = 10_mm, .gap = 1_mm};
  // N 30, Vz 40: F = 50 kN; Vy along the pin; no more from moments
  const verify::detail::CouplerForces f = verify::detail::coupler_forces(level, {30 * kN, 7 * kN, 40 * kN, 0, 0, 0});
  CHECK(close(f.F, 50 * kN, 1e-12));
  CHECK(close(f.H, 7 * kN, 1e-12));
  CHECK(close(f.V, 40 * kN, 1e-12));
  // Mz = 0.32 kNm on two plates 20 + 2 + 10 = 32 mm apart: 10 kN to and fro on each: the worse plate has
  // 50/2 + 10 kN = 70/2
  CHECK(close(verify::detail::coupler_forces(level, {30 * kN, 0, 40 * kN, 0, 0, 320}).F, 70 * kN, 1e-12));
  CHECK(close(verify::detail::coupler_forces(level, {30 * kN, 0, 40 * kN, -320, 0, 0}).F, 70 * kN, 1e-12));
  // pushed: only the shear pulls on the plates' ends
  CHECK(close(verify::detail::coupler_forces(level, {-30 * kN, 0, 40 * kN, 0, 0, 0}).F_pull, 40 * kN, 1e-12));
  PinCoupler upright = level;
  upright.axis = PinAxis::upright;
  CHECK(close(verify::detail::coupler_forces(upright, {30 * kN, 40 * kN, 7 * kN, 0, 320, 0}).F, 70 * kN, 1e-12));
  // a plate 50 x 10 of 235 MPa: N_Rd 117.5 kN, in its plane 10 * 50^2/6 * 235 = 979.17 Nm, across it 50 * 100/6 * 235 =
  // 195.83 Nm: 23.5/117.5 + 97.917/979.17 + 19.583/195.83 = 0.4
  const verify::detail::PlateRoot p{10 * mm, 50 * mm, 23.5 * kN, 97.9167, 19.58333};
  CHECK(close(p.sum(235 * MPa), 0.4, 1e-6));
}
