// SPDX-License-Identifier: MIT
// One member with random stiffness, orientation, joints and rigid arms, in long double: what is compared with it are
// the formulas then, and not how places in between are rounded.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <baywork/frame/frame.hpp>
#include <baywork/solve/frame_answer.hpp>

#include "random.hpp"

using Real = long double;

inline baywork::BasicMemberEnd<Real> random_end(Random& r, bool may_release_rods) {
  baywork::BasicMemberEnd<Real> e;
  const auto tie = [&r](double stiffness, bool may_release) {
    const std::size_t kind = r.below(3);
    if (kind == 0 && may_release) return Real(0);
    return kind < 2 ? Real(baywork::rigid_stiffness) : Real(stiffness * r.over_orders(0.05, 20));
  };
  e.axial = tie(1, may_release_rods);
  e.torsion = tie(1, may_release_rods);
  e.shear_y = tie(1, false);
  e.shear_z = tie(1, false);
  e.about_y = tie(1, true);
  e.about_z = tie(1, true);
  if (r.chance(0.5)) e.offset = {r.in(-0.3, 0.3), r.in(-0.3, 0.3), r.in(-0.3, 0.3)};
  return e;
}

inline baywork::BasicMember<Real> random_member(Random& r) {
  baywork::BasicMember<Real> m;
  m.from = 0;
  m.to = 1;
  m.section = {
      r.in(1, 3), r.in(0.5, 1), r.in(0.5, 2), r.in(0.2, 2), r.in(0.2, 2), r.in(0.2, 2), r.in(0.5, 2), r.in(0.5, 2),
      0,          0.1};
  if (r.chance(0.3)) m.section.shear_y = m.section.shear_z = baywork::rigid_stiffness;
  const bool start_may_release = r.chance(0.5);  // rods of a bar may be released at one end only, or it is loose
  m.start = random_end(r, start_may_release);
  m.end = random_end(r, !start_may_release);
  m.roll = r.in(-3, 3);
  return m;
}

inline void spring_all(baywork::BasicFrame<Real>& f, std::size_t node, Random& r) {
  for (std::size_t k = 0; k < 6; ++k) f.spring(node, static_cast<baywork::Motion>(k), r.in(0.5, 2));
}

/// Largest difference of node motions and of the forces on the outer ends, where the second frame has the member in
/// parts.
inline double end_difference(const baywork::BasicFrameAnswer<Real>& whole, const baywork::BasicFrameAnswer<Real>& parts,
                             std::size_t last) {
  Real largest = 0, off = 0;
  for (std::size_t k = 0; k < 6; ++k) {
    const Real s = whole.members[0].start[k], e = whole.members[0].end[k];
    largest = (std::max)({largest, std::abs(s), std::abs(e)});
    off = (std::max)({off, std::abs(s - parts.members[0].start[k]), std::abs(e - parts.members[last].end[k])});
  }
  Real moved = 0, astray = 0;
  for (std::size_t k = 0; k < 12; ++k) {
    moved = (std::max)(moved, std::abs(whole.motions[k]));
    astray = (std::max)(astray, std::abs(whole.motions[k] - parts.motions[k]));
  }
  return static_cast<double>((std::max)(off / largest, astray / moved));
}
