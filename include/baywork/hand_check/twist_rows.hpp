// SPDX-License-Identifier: MIT
// The twist of the section against Bredt's torsional stiffness.
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

/// Torque about the reference point that V makes if the section does not turn: its distance from the shear centre.
inline double torque_of_shear(const GirderBeam& g, double Vy, double Vz) {
  double yy = 0, zz = 0, yz = 0;
  for (const HandFace& f : g.faces) {
    const double S = f.S();
    yy += S * f.ty() * f.ty(), zz += S * f.tz() * f.tz(), yz += S * f.ty() * f.tz();
  }
  const double det = yy * zz - yz * yz, gy = (Vy * zz - Vz * yz) / det, gz = (Vz * yy - Vy * yz) / det;
  double T = 0;
  for (const HandFace& f : g.faces) T += f.S() * (gy * f.ty() + gz * f.tz()) * f.arm();
  return T;
}

inline void add_twist(const Response& r, const HandModel& h, std::vector<HandCheck>& rows) {
  const Girder& g = r.girder();
  const TorsionBeam& t = h.torsion;
  std::size_t at = g.bays() / 2;
  for (std::size_t i = 0; i < t.phi.size(); ++i)
    if (std::abs(t.phi[i]) > std::abs(t.phi[at]) * (1 + 1e-9)) at = i;
  const HandCheck row = hand_row("twist, about x", place_text(at, g.stations[at]), "rad", r.twist(g.stations[at]));
  std::string why = !t.acts                   ? "no torque acts"
                    : !t.no_torque.empty()    ? t.no_torque
                    : !t.no_stiffness.empty() ? t.no_stiffness
                    : h.loads.temperature     ? "a temperature acts"
                                              : "";
  double V_y = 0, V_z = 0;
  for (const double v : h.vertical.V) V_z = (std::max)(V_z, std::abs(v));
  for (const double v : h.horizontal.V) V_y = (std::max)(V_y, std::abs(v));
  if (why.empty() && t.size < 0.02 * h.torque_scale()) why = "little torque acts: small differences beside it decide";
  if (why.empty() &&
      std::abs(torque_of_shear(h.girder, V_y, 0)) + std::abs(torque_of_shear(h.girder, 0, V_z)) > 0.01 * t.size)
    why = "loads do not go through the shear centre";
  if (!why.empty()) return rows.push_back(not_covered(row, why));
  rows.push_back(
      compared(row, 0.10, {t.phi[at] / t.GJ.value, true, "{M}/{GJ}", "", {{"M", t.phi[at]}, {"GJ", t.GJ.value}}}));
}

}  // namespace baywork::detail
