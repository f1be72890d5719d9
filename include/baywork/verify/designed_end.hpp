// SPDX-License-Identifier: MIT
// One end of a bar on a chord, with all that its joint and weld are checked with.
#pragma once

#include <baywork/verify/designed_weld.hpp>
#include <baywork/verify/en1999_joint.hpp>

namespace baywork::verify::detail {

/// One end with all that does not change with the loads.
struct DesignedEnd {
  TubeJoint tubes{};
  en1993::JointResistance unstressed{};  ///< least over what the joint may be: T or Y, X, K or N with each neighbour
  double f_face = 0;                     ///< design strength that the chord's compression is compared with [Pa]
  bool aluminium = false;
  const char* outside = "";
  bool checked = false;  ///< nothing of the joint is outside the scope
  bool gap_checked = false;  ///< bars in two planes, and a gap after this one
  DesignedWeld weld{};
  bool weld_checked = false;
};

}  // namespace baywork::verify::detail
