// SPDX-License-Identifier: MIT
// What a solve returns: motions, member forces, reactions, and how far they can be wrong.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/core/vec3.hpp>

namespace baywork {

/// Bounds on the relative error of an answer, each against the largest value of its kind (displacements and rotations
/// apart, forces and moments apart), for the frame exactly as given in its numbers. A kind that is all but absent is
/// measured against a thousandth of the other one, by the shortest (moments, displacements) or longest member's length;
/// forces also against a billionth of those that would hold every joint still. `equilibrium` is the largest component of the sum
/// of loads and reactions, force and moment, against their largest parts.
struct Certificate {
  double displacement_error = 0;
  double force_error = 0;
  double equilibrium = 0;
  int refinements = 0;  ///< corrections made after the first solution

  double worst() const noexcept { return displacement_error < force_error ? force_error : displacement_error; }
};

template <Scalar S = double>
struct BasicReaction {
  std::size_t node = 0;
  std::array<S, 6> value{};  ///< what the support does to the frame, global axes: fx, fy, fz [N], mx, my, mz [Nm]
};

/// Forces on the two ends of a member and what is needed to follow them along it; local axes of the member.
template <Scalar S = double>
struct BasicMemberAnswer {
  std::array<S, 6> start{};  ///< forces and moments that act on the member's start: fx, fy, fz, mx, my, mz
  std::array<S, 6> end{};    ///< the same on its end
  std::array<S, 6> modes{};  ///< its deformations (see MemberModes), from the nodes
};

template <Scalar S = double>
struct BasicFrameAnswer {
  std::vector<S> motions;                         ///< six per node: ux, uy, uz [m], rx, ry, rz [rad], global axes
  std::vector<BasicMemberAnswer<S>> members;
  std::vector<BasicReaction<S>> reactions;        ///< one per support, in the frame's order
  Certificate certificate{};

  Vec3<S> displacement(std::size_t node) const { return {motions[6 * node], motions[6 * node + 1], motions[6 * node + 2]}; }
  Vec3<S> rotation(std::size_t node) const { return {motions[6 * node + 3], motions[6 * node + 4], motions[6 * node + 5]}; }
};

using Reaction = BasicReaction<double>;
using MemberAnswer = BasicMemberAnswer<double>;
using FrameAnswer = BasicFrameAnswer<double>;

}  // namespace baywork
