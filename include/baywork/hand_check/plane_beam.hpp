// SPDX-License-Identifier: MIT
// The girder, its supports and its loads in one plane, solved as a beam.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <baywork/closed_form/continuous_beam.hpp>
#include <baywork/hand_check/axis_loads.hpp>
#include <baywork/hand_check/beam_supports.hpp>
#include <baywork/hand_check/girder_beam.hpp>

namespace baywork {

/// Vertical or horizontal bending. Signs of ContinuousBeam: loads and deflections down (along -y), reactions up.
struct PlaneBeam {
  bool vertical = true;
  PlaneSupports supports{};
  closed_form::StraightBeam<> beam{};
  double load_size = 0;       ///< sum of load magnitudes [N]
  bool loaded = false;        ///< loads or settlements act in this plane
  double moment_size = 0;     ///< largest |M| at a station [N m]
  std::string no_forces;      ///< why moments, shears and reactions are not known
  std::string no_deflection;  ///< why deflections are not known
  std::optional<closed_form::ContinuousBeam<>> solved;
  std::vector<double> M;  ///< sagging moment at stations, after a couple [N m]
  std::vector<double> M_before;
  std::vector<double> V;  ///< mean shear of each bay, (M1 - M0)/a: what joints at stations hand on [N]
  double at(std::size_t station) const { return 0.5 * (M[station] + M_before[station]); }
};

inline PlaneBeam plane_beam(const Response& r, const GirderBeam& g, const AxisLoads& loads, bool vertical) {
  const std::size_t k = vertical ? 0 : 1;
  const closed_form::BeamLoads<>& acting = vertical ? loads.vertical : loads.horizontal;
  PlaneBeam p;
  p.vertical = vertical;
  p.supports = plane_supports(r, vertical);
  p.no_forces = p.supports.not_a_beam;
  if (p.no_forces.empty() && !g.not_straight.empty()) p.no_forces = g.not_straight;
  p.beam = {r.girder().span(), g.EI[k].value, g.S[k].value, p.supports.supports};
  if (!(p.beam.shear_stiffness > 0)) p.beam.shear_stiffness = rigid_stiffness;
  if (p.no_forces.empty() && !closed_form::holds(p.beam)) p.no_forces = "the girder is not held like a beam";
  // a box that may lose its shape carries forces beside its middle by bending of its frames
  const bool loses_shape = !g.keeps_shape && p.supports.off_centre;
  p.no_deflection = !p.no_forces.empty()         ? p.no_forces
                    : !g.no_stiffness[k].empty() ? g.no_stiffness[k]
                    : loads.temperature          ? "a temperature acts"
                    : loses_shape ? "supports lie beside the middle, and no diaphragms keep the section's shape"
                                  : "";
  p.load_size = detail::size_of(acting, r.girder().span());
  p.loaded = p.load_size > 1e-9 * loads.size;
  for (const auto& s : p.supports.supports) p.loaded = p.loaded || s.settlement != 0.0;
  if (p.loaded && p.no_forces.empty() && !p.supports.determinate()) p.no_forces = p.no_deflection;
  if (!p.no_forces.empty()) return p;
  p.solved.emplace(p.beam, acting);
  using closed_form::StepSide;
  for (const double x : r.girder().stations) {
    p.M.push_back(p.solved->moment(x, StepSide::after));
    p.M_before.push_back(p.solved->moment(x, StepSide::before));
    p.moment_size = (std::max)(p.moment_size, std::abs(p.M.back()));
  }
  for (std::size_t b = 0; b < r.girder().bays(); ++b)
    p.V.push_back((p.M_before[b + 1] - p.M[b]) / (r.girder().stations[b + 1] - r.girder().stations[b]));
  return p;
}

}  // namespace baywork
