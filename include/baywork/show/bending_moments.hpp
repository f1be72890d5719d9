// SPDX-License-Identifier: MIT
// Bending moments on the tension side: in the plane of each face, or out of it.
#pragma once

#include <string>

#include <baywork/show/strip_diagram.hpp>

namespace baywork::show {

/// A moment m about the direction a, square to the bar's axis x, stretches the fibres towards x × a: stresses k (r·d)
/// have the moment ∫ r × x k (r·d) dA = k I (d × x), and d = x × a gives d × x = a.
/// In plane a is the face's normal n, so m > 0 lies at the side x × n, where StripBar::side points. Out of plane
/// a = n × x, and m > 0 stretches the outside: x × (n × x) = n.
inline std::string bending_moments(const Response& r, Plane plane, const Look& look = {}) {
  if (plane == Plane::in_plane)
    return strip_diagram(
        r,
        {"Bending in the plane of each face", "moment",
         "Moments are drawn on the tension side, to one scale for all bars, and have no sign.", moment_words},
        look,
        [](const StripBar& b, const MemberAxes<>& a) {
          return Weights{0, 0, 0, 0, dot(a.y, b.normal), dot(a.z, b.normal)};
        },
        [](const StripBar& b) { return b.side; });
  return strip_diagram(
      r,
      {"Bending out of the plane of each face", "moment",
       "Plain areas above a bar, or to the left of an upright one, stand for tension on the outside of the girder, the "
       "side that the reader looks at; hatched ones on the other side for tension on the inside. One scale for all "
       "bars.",
       moment_words, "tension outside", "tension inside"},
      look,
      [](const StripBar& b, const MemberAxes<>& a) {
        const Vec3<> about = cross(b.normal, a.x);
        return Weights{0, 0, 0, 0, dot(a.y, about), dot(a.z, about)};
      },
      [](const StripBar& b) { return detail::above(b); });
}

}  // namespace baywork::show
