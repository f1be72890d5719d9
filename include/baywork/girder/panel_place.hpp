// SPDX-License-Identifier: MIT
// Where the panels of a face stand in the girder, and where their points lie.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/girder/panel.hpp>

namespace baywork {

/// What panel p of a face is told of its place; `bounds`: the face's boundaries().
template <Scalar S>
BasicPanelSite<S> panel_site(const BasicGirder<S>& g, const BasicGirderFace<S>& f, const std::vector<std::size_t>& bounds,
                             std::size_t p) {
  const std::size_t first = bounds[p], last = bounds[p + 1];
  return {p, bounds.size() - 1, length(g.joint(last, f.first_chord) - g.joint(first, f.first_chord)),
          length(g.joint(first, f.second_chord) - g.joint(first, f.first_chord))};
}

/// A point of the panel between two stations: straight between its corners.
template <Scalar S>
Vec3<S> point_of(const BasicGirder<S>& g, const BasicGirderFace<S>& f, std::size_t first, std::size_t last,
                 const PanelPoint& p) {
  const auto across = [&](std::size_t station) {
    return S(1.0 - p.across) * g.joint(station, f.first_chord) + S(p.across) * g.joint(station, f.second_chord);
  };
  return S(1.0 - p.along) * across(first) + S(p.along) * across(last);
}

}  // namespace baywork
