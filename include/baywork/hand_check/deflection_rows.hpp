// SPDX-License-Identifier: MIT
// Deflections of the axis against the shear-flexible beam.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/face_shares.hpp>
#include <baywork/hand_check/row.hpp>
#include <baywork/response/deflections.hpp>

namespace baywork::detail {

/// Length over which the chords' own stiffness rounds a kink of the shear deflection [m]: sqrt(EIo (1 - Io/I)/S). Less
/// than half a panel does not leave the joint, and counts as none.
inline double rounding_length(const GirderBeam& g, const PlaneBeam& p) {
  double own = 0;
  for (const auto& c : g.chords) own += g.E * (p.vertical ? c.own_vertical : c.own_horizontal);
  const double part = 1 - own / p.beam.EI;
  const double l =
      part > 0 && !is_infinite(p.beam.shear_stiffness) ? std::sqrt(own * part / p.beam.shear_stiffness) : 0.0;
  return !g.faces.empty() && l > g.faces.front().s / 2 ? l : 0.0;
}

/// How far M/S at x is rounded off by the chords' own bending [N m]: every force P at xj, rounded over l, takes
/// P l/2 exp(-|x - xj|/l) off the corner of M. Loads count as they push down, reactions up; a clamp counts twice (its
/// mirror image), the ends of the beam not at all (the chords' own moment is zero there).
inline double rounding_at(const PlaneBeam& p, const closed_form::BeamLoads<>& loads, double l, double x) {
  if (!(l > 0)) return 0;
  double sum = 0;
  const double slack = 1e-9 * p.beam.length;
  const auto add = [&](double P, double at) { sum += P * l / 2 * std::exp(-std::abs(x - at) / l); };
  for (const auto& load : loads.points)
    if (load.x > slack && load.x < p.beam.length - slack) add(load.P, load.x);
  for (std::size_t i = 0; i < p.supports.supports.size(); ++i) {
    const auto& s = p.supports.supports[i];
    const bool inside = s.x > slack && s.x < p.beam.length - slack;
    if (s.rotational_stiffness > 0)
      add(-2 * p.solved->reaction(i), s.x);
    else if (inside)
      add(-p.solved->reaction(i), s.x);
  }
  return sum;
}

/// w = A/EI + (B - R)/S + w0: A is the double integral of the moments [N m^3], B how far M(x) stands above the straight
/// line between its values at the outermost supports [N m] (dw/dx = t + V/S and V = dM/dx), R what the chords round off
/// its corners, w0 the supports' own sinking. Clamped at one end: B = M(x) - M(clamp). The rounding solves
/// g - l^2 g'' = V/S for the shear strain g (a beam of flanges that bend by themselves; derived here).
inline closed_form::ClosedForm<> deflection_form(const GirderBeam& g, const PlaneBeam& p,
                                                 const closed_form::BeamLoads<>& loads, double x) {
  const auto& beam = *p.solved;
  const auto& supports = p.beam.supports;
  const double a = supports.front().x, b = supports.back().x, l = rounding_length(g, p);
  const double t = b > a ? (x - a) / (b - a) : 0.0;
  const double B = plainly(beam.moment(x) - ((1 - t) * beam.moment(a) + t * beam.moment(b)), p.moment_size);
  // every support holds the rounded line, so the neighbouring ones are its ends
  std::size_t next = 1;
  while (next + 1 < supports.size() && supports[next].x < x) ++next;
  const double xa = supports[supports.size() > 1 ? next - 1 : 0].x, xb = supports[supports.size() > 1 ? next : 0].x;
  const double u = xb > xa ? (x - xa) / (xb - xa) : 0.0;
  const double R = plainly(
      rounding_at(p, loads, l, x) - ((1 - u) * rounding_at(p, loads, l, xa) + u * rounding_at(p, loads, l, xb)),
      p.moment_size);
  const double S = p.beam.shear_stiffness, w = beam.deflection(x);
  const double w0 = plainly((1 - t) * beam.deflection(a) + t * beam.deflection(b), std::abs(w) + std::abs(B / S));
  const double A = (w - w0 - B / S) * p.beam.EI;
  return {A / p.beam.EI + (B - R) / S + w0,
          true,
          "{A}/{EI} + ({B} - {R})/{S} + {w0}",
          "constant EI and S",
          {{"A", A}, {"EI", p.beam.EI}, {"B", B}, {"R", R}, {"S", S}, {"w0", w0}}};
}

inline void add_deflections(const Response& r, const HandModel& h, const PlaneBeam& p, std::vector<HandCheck>& rows) {
  const Girder& g = r.girder();
  const std::string quantity = p.vertical ? "deflection of the axis, down" : "deflection of the axis, along -y";
  const auto solver = [&](std::size_t i) {
    const Vec3<> u = r.axis_deflection(g.stations[i]);
    return p.vertical ? -u.z : -u.y;
  };
  const std::size_t middle = g.bays() / 2;
  if (p.loaded && (!p.no_deflection.empty() || !p.solved)) {
    const HandCheck row = hand_row(quantity, place_text(middle, g.stations[middle]), "m", solver(middle));
    rows.push_back(not_covered(row, p.no_deflection.empty() ? p.no_forces : p.no_deflection));
    return;
  }
  if (!p.loaded) {
    rows.push_back(not_covered(hand_row(quantity, place_text(middle, g.stations[middle]), "m", solver(middle)),
                               "no load acts in this plane"));
    return;
  }
  std::size_t largest = 0;
  double most = -1;
  for (std::size_t i = 0; i < g.stations.size(); ++i)
    if (const double w = std::abs(p.solved->deflection(g.stations[i])); w > most) most = w, largest = i;
  // A girder that moves far more across this plane also moves a little in it (distortion, unequal supports), which the
  // plane beam knows nothing of: a twentieth of the other motion is the least that the promise is given for.
  double across = 0;
  for (const double x : g.stations) across = (std::max)(across, std::abs(p.vertical ? r.axis_deflection(x).y : r.axis_deflection(x).z));
  const std::string reason = most < across / 20 ? "the girder moves far more in the other plane, and takes this one along" : "";
  for (const std::size_t i : {middle, largest}) {
    if (i == largest && largest == middle && !rows.empty() && rows.back().quantity == quantity) continue;
    HandCheck row = hand_row(quantity, place_text(i, g.stations[i]), "m", solver(i));
    row = compared(row, 0.05,
                   deflection_form(h.girder, p, p.vertical ? h.loads.vertical : h.loads.horizontal, g.stations[i]), reason);
    row.scale = i == largest ? 0.0 : most / 4;  // a place that hardly moves beside one that does
    rows.push_back(row);
  }
}

}  // namespace baywork::detail
