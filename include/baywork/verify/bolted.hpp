// SPDX-License-Identifier: MIT
// Bolts in shear, tension and both, EN 1993-1-8 Table 3.4, and end plates as T-stubs with prying, 6.2.4.
#pragma once

#include <cmath>
#include <cstddef>

#include <baywork/girder/bolt.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/verify/clause_row.hpp>

namespace baywork::en1993 {

inline constexpr const char* bolt_clause = "EN 1993-1-8 3.6, Table 3.4";
inline constexpr const char* t_stub_clause = "EN 1993-1-8 6.2.4, Table 6.2";

/// F_t,Rd = 0.9 fub As / gamma_M2 [N], Table 3.4 (value from memory).
inline double bolt_tension(const Bolt& b, double gamma_M2 = 1.25) {
  return 0.9 * ultimate_of(b.grade) * b.stress_area / gamma_M2;
}

/// F_v,Rd = alpha_v fub As / gamma_M2 [N] of one plane through the thread: 0.6 for classes 4.6, 5.6 and 8.8, 0.5 for
/// the harder-drawn 4.8, 5.8, 6.8 and 10.9 (value from memory).
inline double bolt_shear(const Bolt& b, double gamma_M2 = 1.25) {
  const bool tough = b.grade == BoltClass::c4_6 || b.grade == BoltClass::c5_6 || b.grade == BoltClass::c8_8;
  return (tough ? 0.6 : 0.5) * ultimate_of(b.grade) * b.stress_area / gamma_M2;
}

/// F_b,Rd = k1 alpha_b fu d t / gamma_M2 [N] of an edge bolt: k1 = min(2.8 e2/d0 - 1.7, 2.5), alpha_b = min(e1/(3 d0),
/// fub/fu, 1); e1 along the force, e2 across, from the hole's axis to the plate's edge (value from memory).
inline double bolt_bearing(const Bolt& b, double d0, double e1, double e2, double t, double fu,
                           double gamma_M2 = 1.25) {
  const double k1 = smaller(2.8 * e2 / d0 - 1.7, 2.5);
  const double alpha = smaller(smaller(e1 / (3.0 * d0), ultimate_of(b.grade) / fu), 1.0);
  return larger(0.0, k1) * alpha * fu * b.diameter * t / gamma_M2;
}

/// B_p,Rd = 0.6 pi dm t fu / gamma_M2 [N]: head or nut through the plate; dm taken across the flats (safe side).
inline double bolt_punching(const Bolt& b, double t, double fu, double gamma_M2 = 1.25) {
  return 0.6 * pi_v<double> * b.head * t * fu / gamma_M2;
}

/// Shear and tension together: F_v/F_v,Rd + F_t/(1.4 F_t,Rd).
inline verify::ClauseRow bolt_interaction(double F_v, double F_t, const Bolt& b, double gamma_M2 = 1.25) {
  return verify::interaction_row(
      verify::ratio(F_v, bolt_shear(b, gamma_M2)) + verify::ratio(F_t, bolt_tension(b, gamma_M2)) / 1.4, bolt_clause);
}

/// A T-stub of one bolt row: a bolt on either side of its web. Lengths in m, strengths in Pa.
struct TStub {
  double m = 0;          ///< from the web (less 0.8 throats sqrt(2)) to the bolts' axis
  double e = 0;          ///< from the bolts' axis to the flange's edge
  double t = 0;          ///< thickness of the flange
  double pitch = 0;      ///< length of flange that belongs to the row
  double f_web = 0;      ///< design strength of the flange at the web (beside its weld)
  double f_bolt = 0;     ///< at the bolts
  double F_t = 0;        ///< both bolts [N]
  double bolt_area = 0;  ///< stress area of one
  double grip = 0;       ///< bolt elongation length: plates, washers, half of head and nut

  /// n = min(e, 1.25 m), up to which the flange can pry.
  double n() const { return smaller(e, 1.25 * m); }
  /// Circular patterns 2 pi m, others 4 m + 1.25 e, in a row of bolts the pitch: Tables 6.4 to 6.6 (values from
  /// memory).
  double l_eff_1() const { return smaller(smaller(2.0 * pi_v<double> * m, 4.0 * m + 1.25 * e), pitch); }
  double l_eff_2() const { return smaller(4.0 * m + 1.25 * e, pitch); }
  /// Plastic moment of the flange, 0.25 l_eff t² f.
  double M_pl(double l_eff, double f) const { return 0.25 * l_eff * t * t * f; }
  /// Bolts longer than L_b* = 8.8 m³ As/(l_eff,1 t³) stretch too far for the flange to pry (Table 6.2, value from
  /// memory).
  bool pries() const { return grip <= 8.8 * m * m * m * bolt_area / (l_eff_1() * t * t * t); }

  /// Mode 1: the flange yields at web and bolts, (2 M_web + 2 M_bolt)/m = 4 M_pl/m. Without prying 2 M_web/m.
  double F_1() const { return (2.0 * M_pl(l_eff_1(), f_web) + (pries() ? 2.0 * M_pl(l_eff_1(), f_bolt) : 0.0)) / m; }
  /// Mode 2: it yields at the web, and the bolts break under load and prying, (2 M_web + n F_t)/(m + n).
  double F_2() const { return pries() ? (2.0 * M_pl(l_eff_2(), f_web) + n() * F_t) / (m + n()) : F_1(); }
  /// Mode 3: the bolts alone.
  double F_3() const { return F_t; }
  double resistance() const { return smaller(smaller(F_1(), F_2()), F_3()); }
  int mode() const {
    const double F = resistance();
    return F == F_1() ? 1 : F == F_2() ? 2 : 3;
  }
};

inline verify::ClauseRow t_stub(double F, const TStub& s) { return verify::compare(F, s.resistance(), t_stub_clause); }

/// Bolts evenly on a circle of diameter D under N, a moment M, shear V and torque T: the worst one's tension
/// N/n + 4 M/(n D) (turning about the circle's centre: safe side of a plate that is pressed on one edge), never below
/// 0, and shear V/n + 2 T/(n D). (Statics: sum of (D/2)² cos² over n bolts is n D²/8.)
struct BoltCircle {
  std::size_t bolts = 0;
  double D = 0;

  double tension(double N, double M) const {
    const double n = static_cast<double>(bolts);
    return larger(0.0, N / n + 4.0 * magnitude(M) / (n * D));
  }
  double shear(double V, double T) const {
    const double n = static_cast<double>(bolts);
    return magnitude(V) / n + 2.0 * magnitude(T) / (n * D);
  }
};

/// The T-stub of a round end plate on a tube of diameter D, without strengths: its web is the tube's wall, each bolt's
/// part of the plate is half of it. That the plate is full, not a ring, is what holds its hinge at the wall. Pitch: the
/// bolts' share of the wall's length (safe side, shorter than on the circle). Grip: both plates, two washers, half of
/// head and nut, 2 t + 1.2 d (common practice).
inline TStub end_plate_stub(const BoltedEndPlate& c, double D) {
  TStub s;
  s.m = 0.5 * (c.bolt_circle - D) - 0.8 * c.throat * std::sqrt(2.0);
  s.e = 0.5 * (c.diameter - c.bolt_circle);
  s.t = c.plate;
  s.pitch = pi_v<double> * D / static_cast<double>(c.bolts);
  s.bolt_area = c.bolt.stress_area;
  s.grip = 2.0 * c.plate + 1.2 * c.bolt.diameter;
  return s;
}

/// Springs of end plates that are pulled apart, on a tube of diameter D: for each bolt half of k_10 = 1.6 As/L_b and,
/// for each of the two plates, half of k_5 = 0.9 l_eff t³/m³, one after the other (EN 1993-1-8 Table 6.11, values from
/// memory). All n bolts along the chord; n (D_b/2)²/2 of it against bending. Pushed plates are in contact and stiffer:
/// with these springs a girder is on the soft side. Shear and torsion stay rigid.
inline ConnectorFit end_plate_fit(const BoltedEndPlate& c, double D) {
  const TStub s = end_plate_stub(c, D);
  if (!(s.m > 0.0))
    fail<BadDescription>("splice, bolted end plates", "the bolts stand on the chord's weld",
                         "a larger bolt circle is accepted");
  constexpr double bolt_E = 210e9;
  const double bolt = bolt_E * 0.8 * s.bolt_area / s.grip;
  const double plate = c.plate_material.E * 0.45 * s.l_eff_1() * s.t * s.t * s.t / (s.m * s.m * s.m);
  const double n = static_cast<double>(c.bolts), one = 1.0 / (1.0 / bolt + 2.0 / plate);
  ConnectorFit fit = c.fit;
  fit.axial = n * one;
  fit.about_y = fit.about_z = n * one * c.bolt_circle * c.bolt_circle / 8.0;
  return fit;
}

}  // namespace baywork::en1993
