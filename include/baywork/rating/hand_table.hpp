// SPDX-License-Identifier: MIT
// The hand calculation beside a load table: a beam with one moment and one shear that it may carry.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>

#include <baywork/closed_form/beam_formulas.hpp>
#include <baywork/closed_form/chord_group.hpp>
#include <baywork/hand_check/girder_beam.hpp>
#include <baywork/load/en1990.hpp>
#include <baywork/rating/detail/member_trace.hpp>
#include <baywork/rating/patterns.hpp>

namespace baywork::rating {

/// One moment, one shear force, and the stiffnesses of a girder as a beam, for vertical loads. A reason that is not
/// empty says why a hand calculation does not hold.
struct HandCapacity {
  double M = 0;   ///< [Nm], design value: the weakest chord in axial force alone
  double V = 0;   ///< [N], design value: the weakest diagonal in axial force alone
  double EI = 0;  ///< [N m²]
  double S = 0;   ///< shear stiffness [N]
  double g = 0;   ///< self-weight of all bars [N/m], characteristic, spread evenly
  std::string no_hand_calculation;
};

/// M: chord forces under plane sections (closed_form::chord_forces) against tension, compression and buckling of one
/// bar; V: shared by braced faces in proportion to their stiffness, N = V d/h in each diagonal, half of it in crossed
/// ones. EI and S as in hand checks. Bending of bars, joints and eccentricity are left out: that is what the whole
/// verification adds.
inline HandCapacity hand_capacity(const Analysis& analysis, const verify::Basis& basis = {},
                                  verify::Standards standards = verify::Standards::by_material) {
  const Girder& g = analysis.girder();
  const GirderBeam beam = girder_beam(g);
  HandCapacity out;
  out.no_hand_calculation = beam.not_straight.empty() ? beam.no_stiffness[0] : beam.not_straight;
  if (!out.no_hand_calculation.empty()) return out;
  out.EI = beam.EI[0].value;
  out.S = beam.S[0].value;
  const verify::detail::MemberDesign design(analysis, verify::with_use(basis), standards);
  if (!design.outside_rows().empty()) {
    out.no_hand_calculation = "a bar is outside the scope";
    return out;
  }
  for (std::size_t m = 0; m < analysis.model().bar_index.size(); ++m)
    out.g += analysis.model().bar(m).mass_per_metre() * analysis.axes(m).length * standard_gravity / g.span();

  // the axial force alone that a bar carries, pulled or pushed [N]
  detail::Trace trace;
  const auto resistance = [&](std::size_t m, double sign) {
    double low = 0, high = 1e12;
    while (high - low > 1e-12 * high) {
      const double N = low > 0.0 && high > 4.0 * low ? std::sqrt(low * high) : 0.5 * (low + high);
      detail::trace(design, m, {-sign * N, 0, 0, 0, 0, 0}, {}, 0, trace);
      (detail::utilisation(design, m, trace) <= 1.0 ? low : high) = N;
    }
    return low;
  };
  const std::size_t middle = g.bays() / 2;
  const auto chord_N = closed_form::chord_forces<double>(beam.chords, {0.0, 1.0, 0.0});
  double u_M = 0, u_V = 0;
  for (std::size_t c = 0; c < g.chords.size(); ++c)
    u_M = larger(u_M, magnitude(chord_N[c].N) /
                          resistance(analysis.model().chord_member(middle, c), chord_N[c].N < 0 ? -1.0 : 1.0));
  double stiffness = 0;
  for (const HandFace& f : beam.faces) stiffness += f.S() * f.tz() * f.tz();
  for (const HandFace& f : beam.faces) {
    if (std::abs(f.tz()) < 1e-9) continue;
    if (!f.braced()) {
      out.no_hand_calculation = "the " + f.name + " face is open: its bars bend";
      return out;
    }
    const double share = f.S() * std::abs(f.tz()) / stiffness;  // of the girder's vertical shear
    const double N = share * f.diagonal() / f.h / (f.layout == Layout::crossed ? 2.0 : 1.0);
    for (const PanelMembers& p : analysis.model().faces[f.face].panels)
      for (const std::size_t m : p.diagonals) u_V = larger(u_V, N / resistance(m, -1.0));
  }
  out.M = 1.0 / u_M;
  out.V = 1.0 / u_V;
  return out;
}

/// What the hand calculation allows of a pattern [N each, or N/m], characteristic.
struct HandLoad {
  double by_moment = 0, by_shear = 0;
  double deflection = 0;  ///< of the load alone, at the lesser of the two: mid-span, or a cantilever's tip [m]

  double least() const { return smaller(by_moment, by_shear); }
};

/// gamma_G g and gamma_Q times the load against M and V, greatest moment and greatest shear of each taken together:
/// (M - gamma_G M_g)/(gamma_Q M_1), (V - gamma_G V_g)/(gamma_Q V_1) with the moments, shears and deflections of
/// closed_form (L between supports, or of a cantilever that is clamped: the turn of a real root comes on top).
inline HandLoad hand_load(const HandCapacity& c, Pattern pattern, double L,
                          const CombinationSet& set = en1990::ultimate()) {
  if (!c.no_hand_calculation.empty())
    fail<BadDescription>("hand calculation", c.no_hand_calculation,
                         "straight prismatic girders with braced sides are accepted");
  const bool cantilever = on_overhang(pattern);
  const auto unit = [&](double size) {
    if (pattern == Pattern::uniform) return closed_form::simple_span_uniform(size, L, c.EI, c.S);
    if (pattern == Pattern::cantilever_uniform) return closed_form::cantilever_uniform(size, L, c.EI, c.S);
    if (pattern == Pattern::cantilever_end) return closed_form::cantilever_end_load(size, L, c.EI, c.S);
    return closed_form::simple_span_equal_points(static_cast<int>(points(pattern)), size, L, c.EI, c.S);
  };
  const auto own = cantilever ? closed_form::cantilever_uniform(c.g, L, c.EI, c.S)
                              : closed_form::simple_span_uniform(c.g, L, c.EI, c.S);
  const auto one = unit(1.0);
  const double G = set.permanent_unfavourable, Q = set.imposed.gamma;
  HandLoad out;
  out.by_moment = larger(0.0, (c.M - G * magnitude(own.moment.value)) / (Q * magnitude(one.moment.value)));
  out.by_shear = larger(0.0, (c.V - G * own.reaction.value) / (Q * one.reaction.value));
  out.deflection = unit(out.least()).deflection.value;
  return out;
}

}  // namespace baywork::rating
