// SPDX-License-Identifier: MIT
// One end of a bar on a chord, with all that its joint and weld are checked with and the worst found of them.
#pragma once

#include <cstddef>

#include <baywork/core/vec3.hpp>
#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1999_joint.hpp>
#include <baywork/verify/weld.hpp>

namespace baywork::verify::detail {

/// One end with all that does not change with the loads.
struct DesignedEnd {
  TubeJoint tubes{};
  en1993::JointResistance unstressed{};  ///< least over what the joint may be: T or Y, X, K or N with each neighbour
  double f_face = 0;                     ///< design strength that the chord's compression is compared with [Pa]
  bool aluminium = false;
  const char* outside = "";
  bool checked = false;  ///< nothing of the joint is outside the scope
  SaddleWeld weld{};
  en1993::WeldMetal steel_weld{};
  en1999::WeldMetal aluminium_weld{};
  const char* weld_outside = "";
  bool weld_checked = false;

  BraceForces own{};  ///< in the combination at hand
  SectionForces cut{};
  Vec3<> pull{};  ///< on the joint, global axes [N]

  struct Worst {
    double utilisation = 0, n_p = 0, own_N = 0;
    BraceForces forces{};
    std::size_t combination = 0;
  } joint{};
  bool gap_checked = false;  ///< bars in two planes, and a gap after this one
  struct WorstGap {
    double utilisation = 0, N = 0, V = 0;
    std::size_t combination = 0;
  } gap{};
  struct WorstWeld {
    double utilisation = 0;
    LineLoads loads{};
    std::size_t combination = 0;
  } seam{};
};

}  // namespace baywork::verify::detail
