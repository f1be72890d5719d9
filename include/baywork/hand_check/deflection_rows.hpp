// SPDX-License-Identifier: MIT
// Deflections of the axis against the shear-flexible beam.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/face_shares.hpp>
#include <baywork/hand_check/row.hpp>
#include <baywork/response/deflections.hpp>

namespace baywork::detail {

/// w = A/EI + B/S + w0: A is the double integral of the moments [N m^3], B how far M(x) stands above the straight line
/// between its values at the outermost supports [N m] (dw/dx = t + V/S and V = dM/dx), w0 the supports' own sinking.
/// Clamped at one end: B = M(x) - M(clamp).
inline closed_form::ClosedForm<> deflection_form(const PlaneBeam& p, double x) {
  const auto& beam = *p.solved;
  const double w = beam.deflection(x), M = beam.moment(x);
  const double a = p.beam.supports.front().x, b = p.beam.supports.back().x;
  const double t = b > a ? (x - a) / (b - a) : 0.0;
  const double B = M - ((1 - t) * beam.moment(a) + t * beam.moment(b));
  const double w0 = (1 - t) * beam.deflection(a) + t * beam.deflection(b);
  const double shear = is_infinite(p.beam.shear_stiffness) ? 0.0 : B / p.beam.shear_stiffness;
  const double A = (w - w0 - shear) * p.beam.EI;
  return {w, true, "{A}/{EI} + {B}/{S} + {w0}", "constant EI and S",
          {{"A", A}, {"EI", p.beam.EI}, {"B", B}, {"S", p.beam.shear_stiffness}, {"w0", w0}}};
}

inline void add_deflections(const Response& r, const PlaneBeam& p, const AxisLoads& loads, std::vector<HandCheck>& rows) {
  const Girder& g = r.girder();
  const std::string quantity = p.vertical ? "deflection of the axis, down" : "deflection of the axis, along -y";
  const auto solver = [&](std::size_t i) {
    const Vec3<> u = r.axis_deflection(g.stations[i]);
    return p.vertical ? -u.z : -u.y;
  };
  const std::size_t middle = g.bays() / 2;
  if (!p.no_deflection.empty() || !p.solved) {
    const HandCheck row = hand_row(quantity, place_text(middle, g.stations[middle]), "m", solver(middle));
    rows.push_back(not_covered(row, p.no_deflection.empty() ? p.no_forces : p.no_deflection));
    return;
  }
  std::size_t largest = 0;
  double most = -1;
  for (std::size_t i = 0; i < g.stations.size(); ++i)
    if (const double w = std::abs(p.solved->deflection(g.stations[i])); w > most) most = w, largest = i;
  const bool loaded = p.load_size > 1e-12 * loads.size || most > 0;
  std::size_t shortest = g.bays();  // bays between neighbouring supports, or of an overhang
  std::size_t before = 0;
  for (std::size_t i = 0; i <= p.supports.stations.size(); ++i) {
    const std::size_t at = i < p.supports.stations.size() ? p.supports.stations[i] : g.bays();
    if (at > before && i > 0) shortest = (std::min)(shortest, at - before);
    before = at;
  }
  for (const std::size_t i : {middle, largest}) {
    if (i == largest && largest == middle && !rows.empty() && rows.back().quantity == quantity) continue;
    HandCheck row = hand_row(quantity, place_text(i, g.stations[i]), "m", solver(i));
    if (!loaded) {
      rows.push_back(not_covered(row, "no load acts in this plane"));
      return;
    }
    row = compared(row, 0.05, deflection_form(p, g.stations[i]), shortest < 6 && i == largest ? "" : "");
    row.scale = i == largest ? 0.0 : most / 4;  // a place that hardly moves beside one that does
    rows.push_back(row);
  }
}

}  // namespace baywork::detail
