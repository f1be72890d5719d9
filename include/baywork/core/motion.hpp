// SPDX-License-Identifier: MIT
// The six motions of a joint and the ways in which each can be held.
#pragma once

#include <array>
#include <cstdint>

#include <baywork/core/scalar.hpp>

namespace baywork {

/// In the order of every six-component array: three displacements [m], three rotations [rad], global axes.
enum class Motion : std::uint8_t { ux, uy, uz, rx, ry, rz };
inline constexpr std::array<const char*, 6> motion_names{"x", "y", "z", "rotation about x", "rotation about y",
                                                         "rotation about z"};

/// How one motion is held.
template <Scalar S = double>
struct BasicRestraint {
  enum class Kind : std::uint8_t { free, fixed, spring } kind = Kind::free;
  S stiffness = S(0);     ///< N/m or Nm/rad, for a spring
  S displacement = S(0);  ///< prescribed motion of the ground side [m, rad], present in every load case
};
using Restraint = BasicRestraint<double>;

}  // namespace baywork
