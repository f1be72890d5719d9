// SPDX-License-Identifier: MIT
// A brace welded to a chord, both of them round tubes: geometry, forces, and where the joint clauses hold at all.
#pragma once

#include <cmath>
#include <cstdint>

#include <baywork/core/scalar.hpp>
#include <baywork/verify/clause_row.hpp>

namespace baywork::verify {

/// What the chord does with the brace's force. T and Y: it takes it in shear. X: it hands it on to a brace on its other
/// side. K and N: a partner on the same side takes the component across the chord back.
enum class JointType : std::uint8_t { t_or_y, x, k_or_n };

/// The brace that shares the joint in K and N joints.
struct JointPartner {
  double d = 0, t = 0;  ///< outer diameter and wall [m]
  double theta = 0;     ///< to the chord [rad], on its own side: at most pi / 2
  double gap = 0;       ///< between the two on the chord's face [m], without welds; negative: they overlap
};

/// One brace on a chord. Lengths in m; index 0 is the chord and 1 the brace, as in EN 1993-1-8.
struct TubeJoint {
  double d0 = 0, t0 = 0, d1 = 0, t1 = 0;
  double theta = pi_v<double> / 2.0;  ///< angle between brace and chord [rad], the acute one
  JointType type = JointType::t_or_y;
  JointPartner partner{};           ///< K and N only
  bool compressed = true;           ///< K and N only: this brace is the compressed one of the two
  bool overlaps = false;            ///< overlapped K and N only: this brace lies on its partner
  bool hidden_seam_welded = false;  ///< overlapped K and N only
  double planes = 1;                ///< mu of Table 7.7 for braces in a second plane, see multiplanar_xx()

  double beta() const { return d1 / d0; }
  double gamma() const { return d0 / (2.0 * t0); }
  /// Punching needs room between the walls of the chord.
  bool can_punch() const {
    return d1 <= (d0 - 2.0 * t0) * (1.0 + 1e-12) && !(type == JointType::k_or_n && partner.gap < 0.0);
  }
  double overlap() const {
    const double on = overlaps ? d1 / std::sin(theta) : partner.d / std::sin(partner.theta);
    return -partner.gap / on;
  }
};

/// Gap [m] on the chord's face between two braces whose axes meet `eccentricity` [m] beyond the chord's axis, seen from
/// the braces: (d0/2 + e) (cot theta1 + cot theta2) less half of each footprint d / sin(theta). Negative: they overlap.
/// (Hand derivation.)
inline double gap_between(double d0, double d1, double theta1, double d2, double theta2, double eccentricity = 0) {
  const double cot = std::cos(theta1) / std::sin(theta1) + std::cos(theta2) / std::sin(theta2);
  return (0.5 * d0 + eccentricity) * cot - 0.5 * d1 / std::sin(theta1) - 0.5 * d2 / std::sin(theta2);
}

/// Table 7.7 of EN 1993-1-8 (values from memory): factors mu on the resistance of each plane of a joint with braces in
/// two planes 60 to 90 degrees apart. TT: 1, KK: 0.9; XX: 1 + 0.33 N2/N1 with their signs, N1 the greater.
inline constexpr double multiplanar_kk = 0.9;
inline double multiplanar_xx(double N_1, double N_2) {
  const bool swap = magnitude(N_2) > magnitude(N_1);
  const double big = swap ? N_2 : N_1, small = swap ? N_1 : N_2;
  return big == 0.0 ? 1.0 : 1.0 + 0.33 * small / big;
}

/// What the end of the brace brings [N, Nm]: in the plane of brace and chord, and out of it. Signs do not matter.
struct BraceForces {
  double N = 0, M_ip = 0, M_op = 0;
};

/// What the chord carries at the joint [N, Nm]; N is positive in tension. EN 1993-1-8 takes N_p,Ed = N_0,Ed without the
/// braces' components along the chord; the more compressed side of the joint instead is on the safe side.
struct ChordForces {
  double N = 0, M_y = 0, M_z = 0;
};

/// sigma_p,Ed = -N / A + M / W_el [Pa]: the greatest compression in the chord, from axial force AND bending; at open
/// nodes bending is all of it. Never below 0.
inline double chord_compression(const TubeJoint& j, const ChordForces& f) {
  const double inner = j.d0 - 2.0 * j.t0;
  const double area = pi_v<double> * j.t0 * (j.d0 - j.t0);
  const double modulus = area * (j.d0 * j.d0 + inner * inner) / (8.0 * j.d0);
  const double sigma = std::hypot(f.M_y, f.M_z) / modulus - f.N / area;
  return sigma <= 0.0 ? 0.0 : sigma;
}

/// Why a joint is not checked.
enum class JointScope : std::uint8_t {
  covered,
  not_tubes,
  narrow_brace,
  wide_brace,
  wall_too_thin,
  chord_too_thick,
  stocky_chord,
  slender_chord,
  stocky_brace,
  slender_brace,
  section_class,
  flat_angle,
  angle_not_acute,
  close_braces,
  narrow_gap,
  little_overlap,
  much_overlap,
  wide_over_narrow,
  bad_planes_factor,
  strong_metal,
  bad_strength
};

inline const char* reason(JointScope scope) {
  switch (scope) {
    case JointScope::covered: return "";
    case JointScope::not_tubes: return "joint: a diameter, wall or angle is not that of a round tube";
    case JointScope::narrow_brace: return "joint: the brace is narrower than 0.2 of the chord";
    case JointScope::wide_brace: return "joint: the brace is wider than the chord";
    case JointScope::wall_too_thin: return "joint: a wall is thinner than 2.5 mm";
    case JointScope::chord_too_thick: return "joint: the chord's wall is thicker than 25 mm";
    case JointScope::stocky_chord: return "joint: the chord's diameter is below 10 times its wall";
    case JointScope::slender_chord:
      return "joint: the chord's diameter is above 50 times its wall, in X joints 40 times";
    case JointScope::stocky_brace: return "joint: the brace's diameter is below 10 times its wall";
    case JointScope::slender_brace: return "joint: the brace's diameter is above 50 times its wall";
    case JointScope::section_class: return "joint: chord or brace is not of class 1 or 2";
    case JointScope::flat_angle: return "joint: brace and chord meet at less than 30 degrees";
    case JointScope::angle_not_acute: return "joint: the angle between brace and chord is above 90 degrees";
    case JointScope::close_braces: return "joint: the braces are less than 30 degrees apart";
    case JointScope::narrow_gap: return "joint: the gap between the braces is below the sum of their walls";
    case JointScope::little_overlap: return "joint: the braces overlap by less than 25 %";
    case JointScope::much_overlap: return "joint: the overlap is above 60 % (80 % with the hidden seam welded)";
    case JointScope::wide_over_narrow: return "joint: the wider brace lies on the narrower one";
    case JointScope::bad_planes_factor: return "joint: the factor for braces in a second plane is not positive";
    case JointScope::strong_metal: return "joint: the metal is stronger than the joint formulas were tested with";
    case JointScope::bad_strength: return "joint: a strength or partial factor is not positive";
  }
  return "";
}

namespace detail {

inline bool is_tube(double d, double t) { return is_finite(d) && is_finite(t) && t > 0.0 && 2.0 * t < d; }

inline JointScope brace_scope(double d, double t, double theta, double d0) {
  constexpr double slack = 1e-9;
  if (!is_tube(d, t) || !is_finite(theta)) return JointScope::not_tubes;
  if (d / d0 < 0.2 - slack) return JointScope::narrow_brace;
  if (d / d0 > 1.0 + slack) return JointScope::wide_brace;
  if (t < 0.0025 * (1.0 - slack)) return JointScope::wall_too_thin;
  if (d / t < 10.0 - slack) return JointScope::stocky_brace;
  if (d / t > 50.0 + slack) return JointScope::slender_brace;
  if (theta < pi_v<double> / 6.0 - slack) return JointScope::flat_angle;
  if (theta > pi_v<double> / 2.0 + slack) return JointScope::angle_not_acute;
  return JointScope::covered;
}

inline JointScope pair_scope(const TubeJoint& j) {
  constexpr double slack = 1e-9;
  const JointPartner& p = j.partner;
  if (!is_finite(p.gap)) return JointScope::not_tubes;
  if (pi_v<double> - j.theta - p.theta < pi_v<double> / 6.0 - slack) return JointScope::close_braces;
  if (p.gap >= 0.0) return p.gap < (j.t1 + p.t) * (1.0 - slack) ? JointScope::narrow_gap : JointScope::covered;
  if (j.overlap() < 0.25 - slack) return JointScope::little_overlap;
  if (j.overlap() > (j.hidden_seam_welded ? 0.8 : 0.6) + slack) return JointScope::much_overlap;
  const double above = j.overlaps ? j.d1 : p.d, below = j.overlaps ? p.d : j.d1;
  return above > below * (1.0 + slack) ? JointScope::wide_over_narrow : JointScope::covered;
}

}  // namespace detail

/// The geometric limits of EN 1993-1-8 7.1.1, 7.1.2 and Table 7.1 (values from memory). The class of the tubes and the
/// strength of their metal are asked for by each standard.
inline JointScope geometric_scope(const TubeJoint& j) {
  constexpr double slack = 1e-9;
  if (!detail::is_tube(j.d0, j.t0)) return JointScope::not_tubes;
  if (j.t0 < 0.0025 * (1.0 - slack)) return JointScope::wall_too_thin;
  if (j.t0 > 0.025 * (1.0 + slack)) return JointScope::chord_too_thick;
  if (j.d0 / j.t0 < 10.0 - slack) return JointScope::stocky_chord;
  if (j.d0 / j.t0 > (j.type == JointType::x ? 40.0 : 50.0) + slack) return JointScope::slender_chord;
  if (!(j.planes > 0.0) || !is_finite(j.planes)) return JointScope::bad_planes_factor;
  const JointScope own = detail::brace_scope(j.d1, j.t1, j.theta, j.d0);
  if (own != JointScope::covered || j.type != JointType::k_or_n) return own;
  const JointScope other = detail::brace_scope(j.partner.d, j.partner.t, j.partner.theta, j.d0);
  return other != JointScope::covered ? other : detail::pair_scope(j);
}

}  // namespace baywork::verify
