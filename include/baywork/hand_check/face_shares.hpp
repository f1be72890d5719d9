// SPDX-License-Identifier: MIT
// What each face carries of the girder's shear and torque.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/closed_form/small_equations.hpp>
#include <baywork/hand_check/plane_beam.hpp>
#include <baywork/hand_check/torsion_beam.hpp>

namespace baywork {

/// Force along each face on the positive cut, from its first chord to its second, for the girder's cut forces Vy, Vz
/// [N] and torque T about the reference point [N m].
struct FaceShares {
  std::vector<double> V;
  std::string unknown;  ///< why they are not known
};

/// One face: V along it. Two that are not parallel: by components. Three: statics, sum F t = V and sum F arm = T. Two
/// pairs of opposite faces: each half of V (plane sections, whatever their stiffness), and Bredt's flow T b/(2A).
inline FaceShares face_shares(const GirderBeam& g, double Vy, double Vz, double T, double torque_matters) {
  FaceShares out;
  const std::vector<HandFace>& f = g.faces;
  out.V.assign(f.size(), 0.0);
  const bool turns = std::abs(T) > torque_matters;
  if (f.size() == 1) {
    out.V[0] = Vy * f[0].ty() + Vz * f[0].tz();
    if (turns) out.unknown = "one face carries no torque";
    return out;
  }
  if (f.size() == 2 && g.opposite[0] == 0) {
    if (turns) out.unknown = "two faces carry no torque";
    out.V = closed_form::detail::solve_small<double>({{f[0].ty(), f[1].ty()}, {f[0].tz(), f[1].tz()}}, {Vy, Vz});
    return out;
  }
  if (f.size() == 3 && detail::enclosed_area(f) > 0) {
    out.V = closed_form::detail::solve_small<double>(
        {{f[0].ty(), f[1].ty(), f[2].ty()}, {f[0].tz(), f[1].tz(), f[2].tz()}, {f[0].arm(), f[1].arm(), f[2].arm()}},
        {Vy, Vz, T});
    return out;
  }
  bool pairs = f.size() == 2 || f.size() == 4;
  for (std::size_t i = 0; i < f.size(); ++i) pairs = pairs && g.opposite[i] != i;
  if (!pairs) {
    out.unknown = "shares are known for one face, two, three, and two opposite pairs";
    return out;
  }
  if (turns && (!g.keeps_shape || f.size() == 2))
    out.unknown = "torque acts, and no diaphragms keep the section's shape";
  for (const HandFace& face : f)
    if (turns && !face.braced())
      out.unknown = "torque acts beside an open face: the chords' own torsion and warping matter";
  const double area = detail::enclosed_area(f);
  for (std::size_t i = 0; i < f.size(); ++i) {
    out.V[i] = (Vy * f[i].ty() + Vz * f[i].tz()) / 2;
    if (turns && area > 0) out.V[i] += closed_form::bredt_face_force(T, f[i].h, area) * (f[i].arm() < 0 ? -1 : 1);
  }
  return out;
}

/// Everything by hand of one response.
struct HandModel {
  GirderBeam girder;
  AxisLoads loads;
  PlaneBeam vertical, horizontal;
  TorsionBeam torsion;

  explicit HandModel(const Response& r)
      : girder(girder_beam(r.girder())),
        loads(axis_loads(r, girder.y0, girder.z0)),
        vertical(plane_beam(r, girder, loads, true)),
        horizontal(plane_beam(r, girder, loads, false)),
        torsion(torsion_beam(r, girder, loads)) {}

  const PlaneBeam& plane(bool is_vertical) const { return is_vertical ? vertical : horizontal; }

  /// Mean shear of the bays from `first` on, `bays` of them, and the faces' parts of it. The beam's V is what the left
  /// part is pushed up by; the cut force on it is its opposite.
  FaceShares shares(std::size_t first, std::size_t bays) const {
    double Vz = 0, Vy = 0, T = 0;
    for (std::size_t b = first; b < first + bays; ++b) {
      const double part = 1.0 / static_cast<double>(bays);
      if (vertical.solved) Vz -= part * vertical.V[b];
      if (horizontal.solved) Vy -= part * horizontal.V[b];
      if (torsion.no_torque.empty()) T += part * torsion.T[b];
    }
    return face_shares(girder, Vy, Vz, T, 1e-3 * torque_scale());
  }
  /// Why face shares are not known anywhere: a plane that carries load without a beam.
  std::string no_shares() const {
    for (const PlaneBeam* p : {&vertical, &horizontal}) {
      if (!p->loaded) continue;
      if (!p->no_forces.empty()) return p->no_forces;
      if (!girder.keeps_shape && p->supports.off_centre)
        return "supports lie beside the middle, and no diaphragms keep the section's shape";
    }
    if (!girder.not_straight.empty()) return girder.not_straight;
    if (!torsion.no_torque.empty() && torsion.acts) return torsion.no_torque;
    if (loads.temperature) return "a temperature acts";
    return "";
  }
  /// Force against which others are rounding: the loads, and what full restraint of warming and settlements would make.
  double force_scale(const Response& r) const {
    double strain = 0;
    for (const MemberLoad& l : r.loads().on_members)
      if (l.kind == MemberLoad::Kind::temperature)
        strain = (std::max)(strain, r.model().frame.members[l.member].section.thermal_expansion *
                                        (std::max)(std::abs(l.first.x), std::abs(l.last.x)));
    double moved = 0;
    for (const SupportMotion& m : r.loads().motions) moved = (std::max)(moved, std::abs(m.displacement));
    for (const Support& s : r.model().frame.supports)
      for (const Restraint& m : s.motion) moved = (std::max)(moved, std::abs(m.displacement));
    return loads.size + girder.E * girder.group.A * (strain + moved / r.girder().span());
  }
  /// Torque against which others are small: all loads at the edge of the section [N m].
  double torque_scale() const {
    double reach = 0;
    for (const auto& c : girder.chords) reach = (std::max)(reach, std::hypot(c.y - girder.y0, c.z - girder.z0));
    return reach * loads.size;
  }
};

}  // namespace baywork
