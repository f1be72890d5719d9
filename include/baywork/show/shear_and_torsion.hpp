// SPDX-License-Identifier: MIT
// Shear in and out of the plane of each face, and torsion, along every bar.
#pragma once

#include <string>

#include <baywork/show/strip_diagram.hpp>

namespace baywork::show {

/// The cut forces are what the part beyond a cut does to the part before it; what the left part does to the right one
/// is minus that where the bar runs to the right. Of a beam under a load the left half then lies above its bar.
inline std::string shear_forces(const Response& r, Plane plane, const Look& look = {}) {
  const auto left_on_right = [](const StripBar& b, const MemberAxes<>& a, const Vec3<>& direction) {
    const double sign = detail::runs_to_right(b) ? -1.0 : 1.0;
    return Weights{0, sign * dot(a.y, direction), sign * dot(a.z, direction), 0, 0, 0};
  };
  const std::string which =
      "the left part of a bar does to its right part; of upright bars, the upper to the lower part.";
  if (plane == Plane::in_plane)
    return strip_diagram(
        r,
        {"Shear in the plane of each face", "shear",
         "Drawn to the side towards which it acts, as what " + which + " One scale for all bars.", force_words},
        look, [&](const StripBar& b, const MemberAxes<>& a) { return left_on_right(b, a, cross(a.x, b.normal)); },
        [](const StripBar& b) { return b.side; });
  return strip_diagram(
      r,
      {"Shear out of the plane of each face", "shear",
       "Plain areas above a bar, or to the left of an upright one: a push to the outside of the girder; hatched ones: "
       "to "
       "the inside. It is what " +
           which + " One scale for all bars.",
       force_words, "to the outside", "to the inside"},
      look, [&](const StripBar& b, const MemberAxes<>& a) { return left_on_right(b, a, b.normal); },
      [](const StripBar& b) { return detail::above(b); });
}

inline std::string torsion(const Response& r, const Look& look = {}) {
  return strip_diagram(
      r,
      {"Torsion of all bars", "torsion",
       "Plain areas above a bar, or to the left of an upright one, are positive: at both ends the couple turns as a "
       "right-hand screw that moves out of the bar. Hatched ones turn the other way. One scale for all bars.",
       moment_words, "right-hand", "left-hand"},
      look, [](const StripBar&, const MemberAxes<>&) { return Weights{0, 0, 0, 1, 0, 0}; },
      [](const StripBar& b) { return detail::above(b); });
}

}  // namespace baywork::show
