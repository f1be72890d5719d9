// SPDX-License-Identifier: MIT
// Compressed chords that an open face or its cross frames alone hold sideways.
#pragma once

#include <cmath>
#include <cstddef>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>

namespace baywork::verify {

/// A pair of chords that buckles sideways as one, with the face between them; held by springs along its length.
struct HeldPair {
  double length = 0;           ///< L [m]
  double bay = 0;              ///< a [m]
  double width = 0;            ///< b [m], between the chords' axes
  double E = 0;                ///< [Pa]
  double A_ch = 0;             ///< of one chord [m²]
  double I_ch = 0;             ///< of one chord, bending sideways [m⁴]
  double shear_stiffness = 0;  ///< S of the face between them [N]
  double restraint = 0;        ///< c: sideways force per metre of length and of motion [N/m²]
};

struct CriticalLoad {
  double N_cr = 0;            ///< of the pair [N]
  std::size_t half_waves = 0;  ///< of the mode
};

/// Least over n half waves, 1 <= n <= L/(2a), of
///   P/(1 + P/S) + c (L/(n pi))² + n² pi² 2 E I_ch / L²,   P = n² pi² E I / L²,   I = A_ch b²/2.
/// Derivation: a sine of n half waves costs bending (P) and shear (S) of the pair as a girder, one after the other, so
/// their compliances add; beside them the springs and the chords' own bending, whose stiffnesses add (energy method;
/// S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability, 2.10 on elastic foundation, 2.17 on shear: values from
/// memory). Half waves shorter than two bays are no motion of the pair as a whole: without that bound the sum would
/// slide down to S. For S infinite and I_ch = 0 the least over real n is 2 sqrt(E I c) (Engesser).
inline CriticalLoad critical_load(const HeldPair& p) {
  const char* place = "chords held by a face";
  require::positive(p.length, place, "length");
  require::positive(p.bay, place, "bay length");
  require::positive(p.width, place, "width");
  require::positive(p.E, place, "modulus");
  require::positive(p.A_ch, place, "area of a chord");
  require::not_negative(p.I_ch, place, "second moment of a chord");
  require::not_negative(p.restraint, place, "restraint");
  if (!(p.shear_stiffness > 0.0))
    fail<BadDescription>(place, "its shear stiffness is " + text::number(p.shear_stiffness), "a number above zero, also infinity, is accepted");
  CriticalLoad out;
  const double k = pi_v<double> / p.length, bending = p.E * p.A_ch * p.width * p.width / 2.0;
  const std::size_t most = static_cast<std::size_t>(larger(1.0, std::floor(p.length / (2.0 * p.bay) * (1.0 + 1e-12))));
  for (std::size_t n = 1; n <= most; ++n) {
    const double kn = k * static_cast<double>(n), P = kn * kn * bending;
    const double N = P / (1.0 + P / p.shear_stiffness) + p.restraint / (kn * kn) + kn * kn * 2.0 * p.E * p.I_ch;
    if (out.half_waves == 0 || N < out.N_cr) out = {N, n};
  }
  return out;
}

/// A cross frame open at the top: two posts on a cross member. Values as in EN 1993-2 Table D.3 (from memory), derived.
struct CrossFrame {
  double E = 0;                        ///< [Pa]
  double post_height = 0, I_post = 0;  ///< h [m], second moment of a post [m⁴]
  double width = 0, I_cross = 0;       ///< b [m], second moment of the cross member [m⁴]
  double joint = rigid_stiffness;      ///< turning stiffness between post and cross member [Nm]
};

/// Sideways force at the top of one post per unit of its motion, both tops moving oppositely [N/m]:
///   1/C = h³/(3 E I_post) + h² b/(2 E I_cross) + h²/k_joint.
/// A force F at the top bends the post as a cantilever and turns its foot by M b/(2 E I_cross), M = F h, the cross member
/// being bent by equal and opposite end moments.
inline double cross_frame_stiffness(const CrossFrame& f) {
  const char* place = "cross frame";
  require::positive(f.E, place, "modulus");
  require::positive(f.post_height, place, "height of the posts");
  require::positive(f.I_post, place, "second moment of a post");
  require::positive(f.width, place, "width");
  require::positive(f.I_cross, place, "second moment of the cross member");
  const double h = f.post_height;
  return 1.0 / (h * h * h / (3.0 * f.E * f.I_post) + h * h * f.width / (2.0 * f.E * f.I_cross) + (is_infinite(f.joint) ? 0.0 : h * h / f.joint));
}

/// N_cr = 2 sqrt(E I c) of ONE chord on a continuous restraint c = C/a [N/m²] (F. Engesser 1884; EN 1993-2 6.3.4.2,
/// from memory): many half waves, chord far longer than one of them.
inline double engesser_load(double E, double I_ch, double cross_frame, double bay) {
  require::positive(E, "compressed chord", "modulus");
  require::positive(I_ch, "compressed chord", "second moment");
  require::positive(cross_frame, "compressed chord", "stiffness of a cross frame");
  require::positive(bay, "compressed chord", "distance of cross frames");
  return 2.0 * std::sqrt(E * I_ch * cross_frame / bay);
}

}  // namespace baywork::verify
