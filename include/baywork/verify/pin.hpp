// SPDX-License-Identifier: MIT
// Pins between two outer plates and one inner: EN 1993-1-8 3.13 and EN 1999-1-1 8.5.14.
#pragma once

#include <cmath>

#include <baywork/core/scalar.hpp>
#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1993_class.hpp>
#include <baywork/verify/en1999_class.hpp>

namespace baywork::verify {

/// What the two standards' pin clauses differ in: partial factors and where they stand.
struct PinRules {
  double gamma_shear = 1.25, gamma_bearing = 1.0, gamma_ser = 1.0;
  const char *resistance = "", *geometry = "", *contact = "";
};

/// A pin of diameter d through plates: the inner one b thick, outer ones a each, gaps c between them [m].
struct PinStack {
  double d = 0, b = 0, a = 0, c = 0;

  double area() const { return pi_v<double> / 4.0 * d * d; }
  double W_el() const { return pi_v<double> / 32.0 * d * d * d; }
  /// M_Ed = F (b + 4c + 2a)/8 [Nm], Figure 3.11: F spread over the inner plate, half of it over each outer one. (Seen
  /// in print; also statics: F/2 (a/2 + c) + F b/8.)
  double moment(double F) const { return magnitude(F) * (b + 4.0 * c + 2.0 * a) / 8.0; }
};

/// Shear of one plane of the pin against 0.6 A fup / gamma, Table 3.10.
inline ClauseRow pin_shear(double V, const PinStack& pin, double fup, const PinRules& r) {
  return compare(V, 0.6 * pin.area() * fup / r.gamma_shear, r.resistance);
}

/// Bearing F of a plate t thick against 1.5 t d fy / gamma, fy the lower of pin and plate.
inline ClauseRow pin_bearing(double F, double t, double d, double fy, const PinRules& r) {
  return compare(F, 1.5 * t * d * fy / r.gamma_bearing, r.resistance);
}

/// Bending of the pin against 1.5 Wel fyp / gamma.
inline ClauseRow pin_bending(double F, const PinStack& pin, double fyp, const PinRules& r) {
  return compare(pin.moment(F), 1.5 * pin.W_el() * fyp / r.gamma_bearing, r.resistance);
}

/// Shear and bending together: (M/M_Rd)² + (V/V_Rd)². F is what the inner plate brings, each plane carries half.
inline ClauseRow pin_interaction(double F, const PinStack& pin, double fyp, double fup, const PinRules& r) {
  const double m = pin_bending(F, pin, fyp, r).utilisation, v = pin_shear(0.5 * F, pin, fup, r).utilisation;
  return interaction_row(m * m + v * v, r.resistance);
}

/// A pin that is drawn again and again, under the characteristic force: bearing against 0.6 t d fy / gamma_M6,ser and
/// bending against 0.8 Wel fyp / gamma_M6,ser, Table 3.10.
inline ClauseRow pin_bearing_replaceable(double F_ser, double t, double d, double fy, const PinRules& r) {
  return compare(F_ser, 0.6 * t * d * fy / r.gamma_ser, r.resistance);
}
inline ClauseRow pin_bending_replaceable(double F_ser, const PinStack& pin, double fyp, const PinRules& r) {
  return compare(pin.moment(F_ser), 0.8 * pin.W_el() * fyp / r.gamma_ser, r.resistance);
}

/// Contact stress of such a pin, 3.13.2 (3.14) and (3.15): 0.591 sqrt(E F (d0 - d)/(d² t)) against 2.5 fy /
/// gamma_M6,ser [Pa]. (Hertz, two cylinders of one E with nu = 0.3: sqrt(E F (d0 - d)/(pi (1 - nu²) d d0 t)), and d d0
/// is put as d².)
inline double pin_contact_stress(double F_ser, double t, double d, double d0, double E) {
  return 0.591 * std::sqrt(E * magnitude(F_ser) * (d0 - d) / (d * d * t));
}
inline ClauseRow pin_contact(double F_ser, double t, double d, double d0, double E, double fy, const PinRules& r) {
  return compare(pin_contact_stress(F_ser, t, d, d0, E), 2.5 * fy / r.gamma_ser, r.contact);
}

/// Type A of Table 3.9: a plate t thick needs F gamma/(2 t fy) + 2 d0/3 beyond the hole to its end, and + d0/3 to each
/// side. Said as the force [N] that the metal there takes, so that half of it is half used: 2 t fy (end - 2
/// d0/3)/gamma, 2 t fy (side - d0/3)/gamma.
inline ClauseRow pin_end(double F, double t, double d0, double fy, double end, const PinRules& r) {
  return compare(F, larger(0.0, 2.0 * t * fy * (end - 2.0 * d0 / 3.0) / r.gamma_bearing), r.geometry);
}
inline ClauseRow pin_side(double F, double t, double d0, double fy, double side, const PinRules& r) {
  return compare(F, larger(0.0, 2.0 * t * fy * (side - d0 / 3.0) / r.gamma_bearing), r.geometry);
}

}  // namespace baywork::verify

namespace baywork::en1993 {

/// 3.13: shear by gamma_M2, bearing and bending by gamma_M0, serviceability by gamma_M6,ser.
inline verify::PinRules pin_rules(const PartialFactors& f = {}) {
  return {f.gamma_M2,
          f.gamma_M0,
          f.gamma_M6_ser,
          "EN 1993-1-8 3.13.2, Table 3.10",
          "EN 1993-1-8 3.13.1, Table 3.9",
          "EN 1993-1-8 3.13.2 (3.14)"};
}

}  // namespace baywork::en1993

namespace baywork::en1999 {

/// 8.5.14: the same criteria with fo for fy and gamma_Mp throughout (values and table numbers from memory). What is
/// drawn again is not asked there: EN 1993-1-8's limits are taken, with its gamma_M6,ser.
inline verify::PinRules pin_rules(const PartialFactors& f = {}, double gamma_M6_ser = 1.0) {
  return {f.gamma_Mp,
          f.gamma_Mp,
          gamma_M6_ser,
          "EN 1999-1-1 8.5.14, Table 8.7",
          "EN 1999-1-1 8.5.14, Table 8.6",
          "EN 1993-1-8 3.13.2 (3.14)"};
}

}  // namespace baywork::en1999
