// SPDX-License-Identifier: MIT
// How wrong an answer truly is, measured the way a certificate says it.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/solve.hpp>

/// Largest motions and forces of each kind: displacements, rotations, forces, moments.
using LargestOfKind = std::array<double, 4>;

/// A billionth of the forces and moments that would hold every joint still under these loads: every node clamped, the
/// supports moved.
inline LargestOfKind least_forces(const baywork::Frame& f, const baywork::FrameLoads& loads) {
  baywork::Frame held = f;
  std::vector<char> supported(f.nodes.size(), 0);
  for (baywork::Support& s : held.supports) {
    supported[s.node] = 1;
    for (baywork::Restraint& r : s.motion) r.kind = baywork::Restraint::Kind::fixed;
  }
  baywork::Restraint fixed;
  fixed.kind = baywork::Restraint::Kind::fixed;
  for (std::size_t n = 0; n < held.nodes.size(); ++n)
    if (supported[n] == 0) held.supports.push_back({n, {fixed, fixed, fixed, fixed, fixed, fixed}});
  LargestOfKind largest{};
  for (const baywork::Reaction& r : baywork::FrameSolver(held).solve(loads).reactions)
    for (std::size_t k = 0; k < 6; ++k)
      largest[k < 3 ? 2 : 3] = (std::max)(largest[k < 3 ? 2 : 3], 1e-9 * std::abs(r.value[k]));
  return largest;
}

/// Motions first, forces second: each kind against its largest value, at least `size`; one that is all but absent
/// against a thousandth of its partner. `truth` is an answer in a number type T wider than double.
template <class T>
std::array<double, 2> relative_error(const baywork::Frame& f, const baywork::FrameAnswer& a,
                                     const baywork::BasicFrameAnswer<T>& truth, LargestOfKind size = {}) {
  LargestOfKind off{};
  const auto take = [&](std::size_t kind, double found, const T& exact) {
    size[kind] = (std::max)(size[kind], std::abs(baywork::value_of(exact)));
    off[kind] = (std::max)(off[kind], std::abs(baywork::value_of(T(T(found) - exact))));
  };
  for (std::size_t i = 0; i < a.motions.size(); ++i) take(i % 6 < 3 ? 0 : 1, a.motions[i], truth.motions[i]);
  for (std::size_t i = 0; i < a.members.size(); ++i)
    for (std::size_t k = 0; k < 6; ++k) {
      take(k < 3 ? 2 : 3, a.members[i].start[k], truth.members[i].start[k]);
      take(k < 3 ? 2 : 3, a.members[i].end[k], truth.members[i].end[k]);
    }
  double shortest = (std::numeric_limits<double>::max)(), longest = 0;
  for (const baywork::Member& m : f.members) {
    shortest = (std::min)(shortest, axes_of(f, m).length);
    longest = (std::max)(longest, axes_of(f, m).length);
  }
  size[0] = (std::max)(size[0], 1e-3 * size[1] * shortest);
  size[1] = (std::max)(size[1], 1e-3 * size[0] / longest);
  size[2] = (std::max)(size[2], 1e-3 * size[3] / longest);
  size[3] = (std::max)(size[3], 1e-3 * size[2] * shortest);
  const auto relative = [&](std::size_t k) { return size[k] > 0 ? off[k] / size[k] : 0.0; };
  return {(std::max)(relative(0), relative(1)), (std::max)(relative(2), relative(3))};
}

/// The same as the certificate promises it: forces at least against a billionth of those that hold all joints still.
template <class T>
std::array<double, 2> true_error(const baywork::Frame& f, const baywork::FrameLoads& loads,
                                 const baywork::FrameAnswer& a, const baywork::BasicFrameAnswer<T>& truth) {
  return relative_error(f, a, truth, least_forces(f, loads));
}
