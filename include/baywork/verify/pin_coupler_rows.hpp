// SPDX-License-Identifier: MIT
// The rows of a pin-and-fork coupler.
#pragma once

#include <cmath>

#include <baywork/verify/splice_rows.hpp>

namespace baywork::verify::detail {

/// What the pin, its plates and their weld feel of the chord's forces at the pin.
struct CouplerForces {
  double F = 0;         ///< across the pin, with what moments about the other axes put on its plates [N]
  double F_pull = 0;    ///< the same as far as it pulls
  double H = 0;         ///< along the pin [N]
  double V = 0;         ///< across the pin and the chord [N]
  double M_across = 0;  ///< about the axis square to pin and chord, at the pin, and the torque [Nm]
};

/// N and the shear across the pin make F = sqrt(N² + V²). A moment M about the axis square to pin and chord and a
/// torque T pull the fork's two plates to and fro, (|M| + |T|)/z each, z = b + 2c + a between their middles; so that F
/// counts as if both plates had the greater force, 2 (|M| + |T|)/z is added (safe side; derived here).
inline CouplerForces coupler_forces(const PinCoupler& c, const SectionForces& f) {
  const bool level = c.axis == PinAxis::level;
  const double z = c.blade + 2.0 * c.gap + c.fork;
  CouplerForces out;
  out.V = magnitude(level ? f.Vz : f.Vy);
  out.H = magnitude(level ? f.Vy : f.Vz);
  out.M_across = magnitude(level ? f.Mz : f.My) + magnitude(f.T);
  const double more = 2.0 * out.M_across / z;
  out.F = std::hypot(f.N, out.V) + more;
  out.F_pull = std::hypot(larger(f.N, 0.0), out.V) + more;
  return out;
}

/// A plate at its root: N/(w t f) + 6 M/(t w² f) + 6 M'/(w t² f), M in its plane, M' across it; elastic sum, EN
/// 1993-1-1 6.2.1 (7).
struct PlateRoot {
  double t = 0, w = 0, N = 0, M = 0, M_flat = 0;
  double N_Rd(double f) const { return w * t * f; }
  double M_Rd(double f) const { return t * w * w / 6.0 * f; }
  double M_flat_Rd(double f) const { return w * t * t / 6.0 * f; }
  double sum(double f) const { return ratio(N, N_Rd(f)) + ratio(M, M_Rd(f)) + ratio(M_flat, M_flat_Rd(f)); }
};

inline const char* coupler_outside(const SpliceSite& at, const PinCoupler& c) {
  const char* why = unknown_metal({&c.plate_material, &c.pin_material});
  if (why[0] != '\0' || c.throat == 0.0) return why;
  return splice_weld_outside(at, c.plate_material, smaller(c.blade, c.fork), c.throat);
}

inline void add_coupler_rows(const SpliceSite& at, const PinCoupler& c, const SectionForces& forces) {
  const CouplerForces k = coupler_forces(c, forces);
  const PinRules r = pin_rules(c.plate_material, at.basis);
  const bool softened = c.welded && is_aluminium(c.plate_material);
  const PartStrength blade = part_strength(c.plate_material, c.blade, softened, at.basis),
                     fork = part_strength(c.plate_material, c.fork, softened, at.basis),
                     pin = part_strength(c.pin_material, c.pin, false, at.basis);
  const PinStack stack{c.pin, c.blade, c.fork, c.gap};
  const double f_blade = smaller(blade.fy, pin.fy), f_fork = smaller(fork.fy, pin.fy);
  const ClauseRow shear = pin_shear(0.5 * k.F, stack, pin.fu, r), bend = pin_bending(k.F, stack, pin.fy, r);
  const Number F{"F_Ed", k.F, kilonewton}, N{"N", forces.N, kilonewton}, V{"V across the pin", k.V, kilonewton},
      M{"M and T", k.M_across, kilonewton_metre};

  add_row(at, shear, "{a}/(2*{b})", {F, {"F_v,Rd", shear.resistance, kilonewton}, {"d", c.pin, metre}, N, V, M},
          "pin in shear");
  const auto bearing = [&](double share, double t, double f, const char* what) {
    const ClauseRow b = pin_bearing(share * k.F, t, c.pin, f, r);
    add_row(at, b, share == 1.0 ? "{a}/{b}" : "{a}/(2*{b})",
            {F, {"F_b,Rd", b.resistance, kilonewton}, {"t", t, metre}, {"d", c.pin, metre}, N, V, M}, what);
  };
  bearing(1.0, c.blade, f_blade, "blade in bearing");
  bearing(0.5, c.fork, f_fork, "plate of the fork in bearing");
  add_row(at, pin_interaction(k.F, stack, pin.fy, pin.fu, r), "({a}/{b})^2 + ({c}/(2*{d}))^2",
          {{"M_Ed", bend.effect, kilonewton_metre},
           {"M_Rd", bend.resistance, kilonewton_metre},
           F,
           {"F_v,Rd", shear.resistance, kilonewton},
           {"a", c.fork, metre},
           {"b", c.blade, metre},
           {"c", c.gap, metre},
           N,
           V,
           M},
          "pin in bending and shear");

  const auto edge = [&](bool end) {
    const double have = end ? c.end : c.side;
    const auto row = [&](double F_plate, double t, double f) {
      return end ? pin_end(F_plate, t, c.hole, f, have, r) : pin_side(F_plate, t, c.hole, f, have, r);
    };
    const ClauseRow of_blade = row(k.F_pull, c.blade, blade.fy), of_fork = row(0.5 * k.F_pull, c.fork, fork.fy);
    const bool b = of_blade.utilisation >= of_fork.utilisation;
    add_row(at, b ? of_blade : of_fork, end ? "{a}/({b}*({c} - 2*{d}/3))" : "{a}/({b}*({c} - {d}/3))",
            {{"F_Ed", b ? k.F_pull : 0.5 * k.F_pull, kilonewton},
             {"(2 t f/gamma per m)", 2.0 * (b ? c.blade * blade.fy : c.fork * fork.fy) / r.gamma_bearing, kilonewton},
             {end ? "a" : "c", have, metre},
             {"d_0", c.hole, metre},
             {"t", b ? c.blade : c.fork, metre},
             N,
             V,
             M},
            end ? "metal between the hole and the plate's end" : "metal between the hole and the plate's sides");
  };
  edge(true);
  edge(false);

  const double w = c.hole + 2.0 * c.side;
  const PlateRoot root_blade{c.blade, w, k.F, k.V * c.reach, k.H * c.reach + k.M_across},
      root_fork{c.fork, w, 0.5 * k.F, 0.5 * k.V * c.reach, k.H * c.reach};
  const bool b = root_blade.sum(blade.f) >= root_fork.sum(fork.f);
  const PlateRoot& root = b ? root_blade : root_fork;
  const double f = b ? blade.f : fork.f;
  add_row(at, interaction_row(root.sum(f), "EN 1993-1-1 6.2.1 (7)"), "{a}/{b} + {c}/{d} + {e}/{f}",
          {{"N_Ed", root.N, kilonewton},
           {"N_Rd", root.N_Rd(f), kilonewton},
           {"M_Ed", root.M, kilonewton_metre},
           {"M_Rd", root.M_Rd(f), kilonewton_metre},
           {"M_flat,Ed", root.M_flat, kilonewton_metre},
           {"M_flat,Rd", root.M_flat_Rd(f), kilonewton_metre},
           {"t", root.t, metre},
           {"w", root.w, metre},
           {"reach", c.reach, metre},
           {"V along the pin", k.H, kilonewton}},
          b ? "blade at its root, elastic" : "plate of the fork at its root, elastic");

  if (c.throat > 0.0) {
    SectionForces weld = forces;
    weld.My = magnitude(forces.My) + magnitude(forces.Vz) * c.reach;
    weld.Mz = magnitude(forces.Mz) + magnitude(forces.Vy) * c.reach;
    add_splice_weld(at, c.plate_material, smaller(c.blade, c.fork), c.throat, weld);
  }
  if (!c.replaceable) return;
  const char* safe = "pin that is drawn again; under the design forces (safe side)";
  const ClauseRow again = pin_bearing_replaceable(k.F, c.blade, c.pin, f_blade, r),
                  fork_again = pin_bearing_replaceable(0.5 * k.F, c.fork, c.pin, f_fork, r);
  const bool of_blade = again.utilisation >= fork_again.utilisation;
  const ClauseRow& worse = of_blade ? again : fork_again;
  add_row(at, worse, of_blade ? "{a}/{b}" : "{a}/(2*{b})", {F, {"F_b,Rd,ser", worse.resistance, kilonewton}, N, V, M},
          safe);
  const ClauseRow turned = pin_bending_replaceable(k.F, stack, pin.fy, r);
  add_row(at, turned, "{a}/{b}",
          {{"M_Ed", turned.effect, kilonewton_metre}, {"M_Rd,ser", turned.resistance, kilonewton_metre}, F}, safe);
  const double E = larger(c.plate_material.E, c.pin_material.E);
  const ClauseRow contact =
      pin_contact(k.F, smaller(c.blade, 2.0 * c.fork), c.pin, c.hole, E, smaller(f_blade, f_fork), r);
  add_row(at, contact, "{a}/{b}",
          {{"sigma_h,Ed", contact.effect, megapascal},
           {"f_h,Rd", contact.resistance, megapascal},
           F,
           {"d_0 - d", c.hole - c.pin, metre}},
          safe);
}

}  // namespace baywork::verify::detail
