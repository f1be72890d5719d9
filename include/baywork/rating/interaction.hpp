// SPDX-License-Identifier: MIT
// Vertical and horizontal uniform loads together: a closed curve of what a girder may carry of both.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/rating/detail/closed_curve.hpp>
#include <baywork/rating/patterns.hpp>

namespace baywork::rating {

/// A point of the curve: uniform loads between the supports, characteristic [N/m], down and towards -y positive (wind
/// from the left), and what governs there. Where a direction is not limited the loads are those of Terms::most.
struct InteractionPoint {
  double vertical = 0, horizontal = 0;
  Allowable allowable{};
};

/// How the curve is made. The vertical load is shared by the lower chords, or those named; the horizontal one by all
/// chords, so that it acts at their centre, and `eccentricity` below it turns the girder as well.
struct InteractionTerms {
  std::size_t rays = 32;
  double eccentricity = 0;  ///< of the horizontal load, below the chords' centre [m]: cladding or a cloth that hangs
  std::vector<ChordRef> vertical_on{};
};

namespace detail {

/// A torque of 1 Nm/m about +x on the chords' joints: forces across, in proportion to the distance from the chords'
/// centre, f = t x r / sum r^2 in each bay's middle section.
inline void add_unit_torque(const Girder& g, double from, double to, double size, std::vector<Action>& out) {
  const std::size_t n = g.chords.size();
  for (std::size_t b = 0; b < g.bays(); ++b) {
    const double start = larger(from, g.stations[b]), end = smaller(to, g.stations[b + 1]);
    if (!(end > start)) continue;
    std::vector<Vec3<>> at;
    Vec3<> centre{};
    for (std::size_t c = 0; c < n; ++c) {
      at.push_back(0.5 * (g.joint(b, c) + g.joint(b + 1, c)));
      centre += (1.0 / static_cast<double>(n)) * at.back();
    }
    double sum = 0;
    for (Vec3<>& r : at) {
      r -= centre;
      sum += r.y * r.y + r.z * r.z;
    }
    for (std::size_t c = 0; c < n; ++c) {
      const Vec3<> f{0.0, -size * at[c].z / sum, size * at[c].y / sum};
      out.push_back(line_load({ChordRef(c)}, f, f, {start, end}));
    }
  }
}

}  // namespace detail

/// Allowable pairs along rays, see detail::closed_curve(): counter-clockwise from (+, 0) and closed. The two loads are
/// solved once each; together they count as one action, with one factor. Empty where what is placed leaves nothing or a
/// bar is outside the scope: Rater::allowable says why.
inline std::vector<InteractionPoint> interaction_curve(const Rater& rater, const InteractionTerms& terms = {}) {
  require::finite(terms.eccentricity, "interaction curve", "eccentricity");
  const Analysis& analysis = rater.analysis();
  const Girder& g = analysis.girder();
  const PatternLoad down = pattern_load(analysis, Pattern::uniform, {terms.vertical_on, PointsAt::places, {0, 0, -1}});
  std::vector<ChordRef> all;
  for (std::size_t c = 0; c < g.chords.size(); ++c) all.emplace_back(c);
  PatternLoad across = pattern_load(analysis, Pattern::uniform, {all, PointsAt::places, {0, -1, 0}});
  // r x F about +x, with r = (0, 0, -e) and F = (0, -1, 0): -e
  if (terms.eccentricity != 0.0) detail::add_unit_torque(g, across.from, across.to, -terms.eccentricity, across.unit);
  const Response v = analysis.solve(down.unit), h = analysis.solve(across.unit);
  std::vector<InteractionPoint> out;
  for (detail::CurvePoint& p : detail::closed_curve("interaction curve", terms.rays, [&](double a, double b) {
         return rater.allowable(combine<double>({&v, &h}, {a, b}, "vertical and horizontal"));
       }))
    out.push_back({p.first, p.second, std::move(p.allowable)});
  return out;
}

}  // namespace baywork::rating
