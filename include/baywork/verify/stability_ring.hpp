// SPDX-License-Identifier: MIT
// A compressed pair of chords of a box, held sideways through the rings of its cross members by the rest of the box.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

#include <baywork/verify/held_chords.hpp>

namespace baywork::verify {

/// A rectangular ring in one cross-section: two posts and two cross members, rigidly jointed or by springs.
struct Ring {
  double E = 0;                             ///< [Pa]
  double height = 0, I_post = 0;            ///< h [m]; the weaker post, bending in the ring's plane [m⁴]
  double width = 0, I_near = 0, I_far = 0;  ///< b [m]; cross members of the pair's face and of the other one [m⁴]
  double joint_near = rigid_stiffness, joint_far = rigid_stiffness;  ///< cross member against post, of each corner [Nm]
};

/// Force across per unit of motion of the near side against the far one, corners free to turn, sides not moving along
/// themselves [N/m]. Posts carry H/2 each and bend in an S; with f = b/(6 E I) + 1/joint of each side, al = h/(6 E
/// I_p), T = H h/2 the sum of the moments at a post's ends, the least complementary energy has the near one
///   M = T (3 al + f_far)/(6 al + f_near + f_far),
/// and 1/k = h² [al (3 m² - 3 m + 1) + f_near m²/2 + f_far (1 - m)²/2], m = M/T. For equal cross members
/// k = 24 E/[h² (h/I_p + b/I)]. Derived here; tested against the frame solver.
inline double racking_stiffness(const Ring& r) {
  const char* place = "ring of cross members";
  require::positive(r.E, place, "modulus");
  require::positive(r.height, place, "height");
  require::positive(r.I_post, place, "second moment of a post");
  require::positive(r.width, place, "width");
  require::positive(r.I_near, place, "second moment of a cross member");
  require::positive(r.I_far, place, "second moment of a cross member");
  for (const double joint : {r.joint_near, r.joint_far})
    if (!is_infinite(joint)) require::positive(joint, place, "joint stiffness");
  const auto turn = [&](double second_moment, double joint) {
    return r.width / (6.0 * r.E * second_moment) + (is_infinite(joint) ? 0.0 : 1.0 / joint);
  };
  const double al = r.height / (6.0 * r.E * r.I_post), near = turn(r.I_near, r.joint_near),
               far = turn(r.I_far, r.joint_far);
  const double m = (3.0 * al + far) / (6.0 * al + near + far);
  const double c = al * (3.0 * m * m - 3.0 * m + 1.0) + 0.5 * near * m * m + 0.5 * far * (1.0 - m) * (1.0 - m);
  return 1.0 / (r.height * r.height * c);
}

/// What stands behind a pair of a box of four chords: the opposite pair and the sides.
struct BoxBehind {
  double depth = 0;                 ///< h between the two faces [m]
  double EA_far = 0;                ///< of one chord of the opposite pair [N]
  double shear_stiffness_far = 0;   ///< S of the opposite face [N]
  double shear_stiffness_side = 0;  ///< S of the softer side [N]
  double racking = 0;               ///< c of the rings per metre of girder [N/m²]
  double tension = 0;               ///< tau: pull in the opposite pair over the push in this one, 0 to 1
};

namespace detail {

/// Whether a symmetric matrix is positive definite: all pivots of its elimination are above zero.
template <std::size_t n>
bool is_stable(std::array<std::array<double, n>, n> k) {
  for (std::size_t p = 0; p < n; ++p) {
    if (!(k[p][p] > 0.0)) return false;
    for (std::size_t i = p + 1; i < n; ++i)
      for (std::size_t j = p + 1; j < n; ++j) k[i][j] -= k[i][p] / k[p][p] * k[p][j];
  }
  return true;
}

/// N of `half_waves` half waves, see below; `below` where that is no less.
inline double load_of_wave(const HeldPair& p, const BoxBehind& q, std::size_t half_waves, double below) {
  const double k = static_cast<double>(half_waves) * pi_v<double> / p.length, b = p.width, h = q.depth;
  std::array<std::array<double, 5>, 5> energy{};  // of v, v', w, u, u'
  const auto add = [&energy](double stiffness, const std::array<double, 5>& of) {
    for (std::size_t i = 0; i < 5; ++i)
      for (std::size_t j = 0; j < 5; ++j) energy[i][j] += stiffness * of[i] * of[j];
  };
  add(p.shear_stiffness, {k, 0.0, 0.0, 2.0 / b, 0.0});
  add(q.shear_stiffness_far, {0.0, k, 0.0, 0.0, 2.0 / b});
  add(2.0 * q.shear_stiffness_side, {0.0, 0.0, k, 1.0 / h, -1.0 / h});
  add(2.0 * p.E * p.A_ch * k * k, {0.0, 0.0, 0.0, 1.0, 0.0});
  add(2.0 * q.EA_far * k * k, {0.0, 0.0, 0.0, 0.0, 1.0});
  add(q.racking, {1.0, -1.0, 2.0 * h / b, 0.0, 0.0});
  add(2.0 * p.E * p.I_ch * k * k * k * k, {1.0, 0.0, 0.0, 0.0, 0.0});
  const auto stable = [&](double N) {
    auto left = energy;
    left[0][0] -= N * k * k;
    left[1][1] += q.tension * N * k * k;
    left[2][2] -= (1.0 - q.tension) * N * k * k;
    return is_stable(left);
  };
  double low = 0.0, high = smaller(below, energy[0][0] / (k * k));  // v alone, all else held
  if (high == below && stable(below)) return below;
  for (int i = 0; i < 100 && low < high * (1.0 - 1e-14); ++i) {
    const double middle = 0.5 * (low + high);
    (stable(middle) ? low : high) = middle;
  }
  return low;
}

}  // namespace detail

/// Least N of the pair over n half waves, 1 <= n <= L/(2a), with the box behind it. Sines of the motions v of the pair
/// across, v' of the opposite pair and w of the sides up and down, and cosines of the motions u, u' of their chords
/// along, alike but opposite in the two chords of a pair, have with k = n pi/L the energy
///   S (k v + 2 u/b)² + S' (k v' + 2 u'/b)² + 2 S_side (k w + (u - u')/h)² + 2 E A k² u² + 2 E A' k² u'²
///   + c (v - v' + 2 h w/b)² + 2 E I_ch k⁴ v²  -  N k² (v² + w²) + tau N k² (v'² + w²),
/// whose first loss of definiteness is N. The opposite pair moves, too: springs c to the ground in its place, as for a
/// U-frame on a deck, are NOT on the safe side (up to six times too much in the tests). Without rings it is
/// critical_load() of the pair alone; the pair's own `restraint` is not used. Derived here; tested against the
/// eigenvalue problem of the whole frame.
inline CriticalLoad critical_load(const HeldPair& p, const BoxBehind& q) {
  const char* place = "box behind a pair of chords";
  require::not_negative(q.racking, place, "racking stiffness");
  require::not_negative(q.tension, place, "tension in the opposite pair");
  if (q.tension > 1.0)
    fail<BadDescription>(place, "its tension is " + text::number(q.tension), "0 to 1 of the compression is accepted");
  HeldPair alone = p;
  alone.restraint = 0.0;
  CriticalLoad out = critical_load(alone);
  if (q.racking == 0.0) return out;
  require::positive(p.shear_stiffness, place, "shear stiffness");
  require::positive(q.depth, place, "depth");
  require::positive(q.EA_far, place, "stiffness of a chord");
  require::positive(q.shear_stiffness_far, place, "shear stiffness of the opposite face");
  require::positive(q.shear_stiffness_side, place, "shear stiffness of the sides");
  out.half_waves = 0;
  const std::size_t most = static_cast<std::size_t>(larger(1.0, std::floor(p.length / (2.0 * p.bay) * (1.0 + 1e-12))));
  for (std::size_t n = 1; n <= most; ++n) {
    const double least = out.half_waves == 0 ? std::numeric_limits<double>::infinity() : out.N_cr;
    const double N = detail::load_of_wave(p, q, n, least);
    if (N < least) out = {N, n};
  }
  return out;
}

}  // namespace baywork::verify
