// SPDX-License-Identifier: MIT
// Moment against shear in one panel: a closed curve of what a girder may carry of both, for open faces above all.
#pragma once

#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include <baywork/rating/detail/closed_curve.hpp>

namespace baywork::rating {

/// Vertical bending and shear of the whole girder in the middle of a bay: sagging positive [Nm], and upward on the part
/// before the cut positive [N]; characteristic, as all loads of a rating.
struct MomentShear {
  double moment = 0, shear = 0;
};

/// A point of the curve, and what governs there.
struct MomentShearPoint {
  MomentShear at{};
  Allowable allowable{};
};

struct MomentShearTerms {
  static constexpr std::size_t middle = (std::numeric_limits<std::size_t>::max)();
  std::size_t bay = middle;  ///< counted from 0
  std::size_t rays = 32;
};

namespace detail {

/// From all forces and couples before the cut, loads and reactions: about (x, z),
/// M = sum of (z_i - z) Fx - (x_i - x) Fz + My, V = sum of Fz. Line loads are not in it.
inline MomentShear moment_shear_at(const Response& r, double x, double z) {
  MomentShear out;
  const auto take = [&](const Vec3<>& at, const Vec3<>& force, double couple_y) {
    if (at.x > x) return;
    out.moment += (at.z - z) * force.x - (at.x - x) * force.z + couple_y;
    out.shear += force.z;
  };
  const std::vector<Node>& nodes = r.model().frame.nodes;
  for (const NodeLoad& l : r.loads().on_nodes) take(nodes[l.node].at, l.force, l.couple.y);
  for (const MemberLoad& l : r.loads().on_members) {
    const MemberAxes<>& axes = r.analysis().axes(l.member);
    const Vec3<> at = axes.start + l.a * axes.x, value = axes.to_global(l.first);
    if (l.kind == MemberLoad::Kind::force) take(at, value, 0.0);
    if (l.kind == MemberLoad::Kind::couple) take(at, {}, value.y);
  }
  for (const Reaction& s : r.answer().reactions)
    take(nodes[s.node].at, {s.value[0], s.value[1], s.value[2]}, s.value[4]);
  return out;
}

}  // namespace detail

/// Allowable pairs along rays, see detail::closed_curve(): counter-clockwise from (+, 0) and closed.
/// Two patterns make them independent: end couples, as forces along the chords at both ends in proportion to their
/// height above the chords' mean, bend all bays alike; and a pair of forces, up at the bay's start and down at its end,
/// shared by all chords, shears this bay alone but for what the pair's couple asks of the supports. What both bring to
/// M and V in the middle of the bay is taken from the equilibrium of the part before it, and set to the ray's. Empty
/// where what is placed leaves nothing or a bar is outside the scope. Throws BadDescription for a bay that is not
/// there, or a girder whose chords all lie at one height.
inline std::vector<MomentShearPoint> moment_shear_domain(const Rater& rater, const MomentShearTerms& terms = {}) {
  const std::string place = "moment against shear";
  const Analysis& analysis = rater.analysis();
  const Girder& g = analysis.girder();
  const std::size_t bay = terms.bay == MomentShearTerms::middle ? g.bays() / 2 : terms.bay, n = g.chords.size();
  if (bay >= g.bays())
    fail<BadDescription>(place, "there is no bay " + std::to_string(bay + 1),
                         "bays 1 to " + std::to_string(g.bays()) + " are accepted");

  std::vector<Action> couples, pair;
  for (const std::size_t station : {std::size_t{0}, g.bays()}) {
    double mean = 0, squares = 0;
    for (std::size_t c = 0; c < n; ++c) mean += g.joint(station, c).z / static_cast<double>(n);
    for (std::size_t c = 0; c < n; ++c) squares += std::pow(g.joint(station, c).z - mean, 2);
    if (!(squares > 0.0))
      fail<BadDescription>(place, "all chords lie at one height", "a girder with depth is accepted");
    const double sign = station == 0 ? 1.0 : -1.0;
    for (std::size_t c = 0; c < n; ++c)
      couples.push_back(point_load(ChordRef(c), g.stations[station],
                                   Vec3<>{sign * (g.joint(station, c).z - mean) / squares, 0.0, 0.0}));
  }
  double height = 0;
  for (const std::size_t station : {bay, bay + 1})
    for (std::size_t c = 0; c < n; ++c) {
      const double share = 1.0 / static_cast<double>(n);
      pair.push_back(point_load(ChordRef(c), g.stations[station], Vec3<>{0.0, 0.0, station == bay ? share : -share}));
      height += 0.5 * share * g.joint(station, c).z;
    }

  const Response bent = analysis.solve(couples), sheared = analysis.solve(pair);
  const double x = 0.5 * (g.stations[bay] + g.stations[bay + 1]);
  const MomentShear a = detail::moment_shear_at(bent, x, height), b = detail::moment_shear_at(sheared, x, height);
  const double both = a.moment * b.shear - b.moment * a.shear;
  if (!(std::abs(both) > 1e-9 * (std::abs(a.moment * b.shear) + std::abs(b.moment * a.shear))))
    fail<BadDescription>(place, "moment and shear of bay " + std::to_string(bay + 1) + " cannot be set apart",
                         "a bay between supports is accepted");
  std::vector<MomentShearPoint> out;
  for (detail::CurvePoint& p : detail::closed_curve(place, terms.rays, [&](double M, double V) {
         const std::vector<double> sizes{(M * b.shear - V * b.moment) / both, (V * a.moment - M * a.shear) / both};
         return rater.allowable(combine<double>({&bent, &sheared}, sizes, "moment and shear"));
       }))
    out.push_back({{p.first, p.second}, std::move(p.allowable)});
  return out;
}

}  // namespace baywork::rating
