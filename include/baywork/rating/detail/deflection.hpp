// SPDX-License-Identifier: MIT
// Deflections that grow with a load factor, at the chords' joints and in the middle of their bays.
#pragma once

#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include <baywork/rating/terms.hpp>
#include <baywork/response/cases.hpp>

namespace baywork::rating::detail {

/// Displacements of all chords at both ends and in the middle of every bay: the chord's own sag is in them.
inline std::vector<Vec3<>> chord_displacements(const Response& r) {
  std::vector<Vec3<>> out;
  const std::size_t chords = r.girder().chords.size(), stations = r.girder().stations.size();
  for (std::size_t s = 0; s < stations; ++s)
    for (std::size_t c = 0; c < chords; ++c) {
      out.push_back(r.answer().displacement(r.model().chord_node(s, c)));
      if (s + 1 < stations) out.push_back(r.member(r.model().chord_member(s, c)).displacement(fraction{0.5}));
    }
  return out;
}

/// Of one service combination, without the load asked for.
struct DeflectionLine {
  double factor = 0;  ///< of the load asked for
  std::vector<Vec3<>> whole, variable;

  const std::vector<Vec3<>>& of(DeflectionOf d) const { return d == DeflectionOf::whole ? whole : variable; }
};

/// `kinds` of what is placed, and last of the load asked for.
inline std::vector<DeflectionLine> deflection_lines(const Cases* placed, const std::vector<CaseKind>& kinds,
                                                    const CombinationSet& service, std::size_t points) {
  std::vector<std::vector<Vec3<>>> of_case;
  for (std::size_t i = 0; i + 1 < kinds.size(); ++i) of_case.push_back(chord_displacements((*placed)[i]));
  std::vector<DeflectionLine> out;
  for (const Combination& c : combinations(service, kinds)) {
    DeflectionLine line{c.factors.back(), std::vector<Vec3<>>(points), std::vector<Vec3<>>(points)};
    for (std::size_t i = 0; i + 1 < kinds.size(); ++i)
      for (std::size_t p = 0; p < points; ++p) {
        const Vec3<> u = c.factors[i] * of_case[i][p];
        line.whole[p] += u;
        if (kinds[i].nature != Nature::permanent) line.variable[p] += u;
      }
    out.push_back(std::move(line));
  }
  return out;
}

/// Greatest displacement [m] of any point in any service combination at a load factor.
inline double deflection_at(const std::vector<DeflectionLine>& lines, const std::vector<Vec3<>>& unit, DeflectionOf of,
                            double factor) {
  double most = 0;
  for (const DeflectionLine& l : lines)
    for (std::size_t p = 0; p < unit.size(); ++p) {
      const Vec3<> own = l.factor * factor * unit[p];
      most = larger(most, length(l.of(of)[p] + own));
    }
  return most;
}

/// The load factor at which a displacement first reaches `limit` [m]; infinity where none does. Displacements are
/// straight in the factor, so their lengths are convex: from below the limit each passes it once at most,
/// |u0 + x u1|^2 = limit^2.
inline double deflection_factor(const std::vector<DeflectionLine>& lines, const std::vector<Vec3<>>& unit,
                                DeflectionOf of, double limit) {
  double least = std::numeric_limits<double>::infinity();
  for (const DeflectionLine& l : lines)
    for (std::size_t p = 0; p < unit.size(); ++p) {
      const Vec3<> u0 = l.of(of)[p], u1 = l.factor * unit[p];
      const double a = dot(u1, u1), b = 2.0 * dot(u0, u1), c = dot(u0, u0) - limit * limit;
      if (!(a > 0.0)) continue;
      const double root = std::sqrt(larger(0.0, b * b - 4.0 * a * c));
      least = smaller(least, b > 0.0 ? -2.0 * c / (b + root) : (root - b) / (2.0 * a));
    }
  return least;
}

}  // namespace baywork::rating::detail
