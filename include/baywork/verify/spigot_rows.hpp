// SPDX-License-Identifier: MIT
// The rows of a spigot and its pins.
#pragma once

#include <cmath>

#include <baywork/verify/spigot.hpp>
#include <baywork/verify/splice_rows.hpp>

namespace baywork::verify::detail {

inline const char* spigot_outside(const SpliceSite& at, const Spigot& c) {
  if (at.chord.section.kind != ShapeKind::round_tube) return "splice: the chord is not a round tube";
  const double inner = at.chord.section.height - 2.0 * at.chord.section.wall;
  if (c.diameter > inner * (1.0 + 1e-9))
    fail<BadDescription>("splice, spigot", "it is " + text::quantity(c.diameter, 1e-3, "mm") + " thick",
                         "at most the chord's inner diameter, " + text::quantity(inner, 1e-3, "mm") + ", is accepted");
  if (static_cast<double>(c.pins) * c.hole + 2.0 * c.end > c.reach * (1.0 + 1e-9))
    fail<BadDescription>("splice, spigot", "its holes and the metal at both ends do not fit into its reach",
                         "a longer reach, or less metal at the ends, is accepted");
  return unknown_metal({&at.chord.material, &c.spigot_material, &c.pin_material});
}

inline void add_spigot_rows(const SpliceSite& at, const Spigot& c, const SectionForces& f) {
  const SectionData<double>& tube = at.chord.section;
  const bool solid = c.wall == 0.0;
  const double pins = static_cast<double>(c.pins), across = solid ? c.diameter : c.wall;
  const PartStrength chord = part_strength(at.chord.material, tube.wall, c.welded && is_aluminium(at.chord.material),
                                           at.basis),
                     spigot = part_strength(c.spigot_material, across, false, at.basis),
                     pin = part_strength(c.pin_material, c.pin, false, at.basis);
  const PinRules r = pin_rules(is_aluminium(c.spigot_material) ? c.spigot_material : at.chord.material, at.basis);
  // each plane of a pin carries N/(2 pins) along the chord and the torque's T/(pins D) around it
  const auto on_pin = [&](double N) { return std::hypot(N / pins, 2.0 * f.T / (pins * c.diameter)); };
  const double F = on_pin(f.N), F_pull = on_pin(larger(f.N, 0.0));
  // a hollow spigot pushes the pin at its walls: as an inner plate of twice their thickness beside the chord's
  const PinStack stack{c.pin, solid ? c.diameter : 2.0 * c.wall, tube.wall,
                       0.5 * (tube.height - c.diameter) - tube.wall};
  const ClauseRow shear = pin_shear(0.5 * F, stack, pin.fu, r), bend = pin_bending(F, stack, pin.fy, r);
  const Number force{"F_Ed", F, kilonewton}, N{"N", f.N, kilonewton}, T{"T", f.T, kilonewton_metre};

  add_row(at, shear, "{a}/(2*{b})", {force, {"F_v,Rd", shear.resistance, kilonewton}, {"pins", pins, plain}, N, T},
          "pin in shear");
  add_row(at, pin_interaction(F, stack, pin.fy, pin.fu, r), "({a}/{b})^2 + ({c}/(2*{d}))^2",
          {{"M_Ed", bend.effect, kilonewton_metre},
           {"M_Rd", bend.resistance, kilonewton_metre},
           force,
           {"F_v,Rd", shear.resistance, kilonewton},
           N,
           T},
          "pin in bending and shear");
  const ClauseRow wall = pin_bearing(0.5 * F, tube.wall, c.pin, smaller(chord.fy, pin.fy), r);
  add_row(at, wall, "{a}/(2*{b})", {force, {"F_b,Rd", wall.resistance, kilonewton}, {"t", tube.wall, metre}, N, T},
          "chord's wall in bearing");
  const ClauseRow own = pin_bearing(solid ? F : 0.5 * F, across, c.pin, smaller(spigot.fy, pin.fy), r);
  add_row(at, own, solid ? "{a}/{b}" : "{a}/(2*{b})",
          {force, {"F_b,Rd", own.resistance, kilonewton}, {"t", across, metre}, N, T}, "spigot in bearing");
  const ClauseRow of_chord = pin_end(0.5 * F_pull, tube.wall, c.hole, chord.fy, c.end, r),
                  of_spigot = pin_end(solid ? F_pull : 0.5 * F_pull, across, c.hole, spigot.fy, c.end, r);
  const bool chord_end = of_chord.utilisation >= of_spigot.utilisation;
  add_row(at, chord_end ? of_chord : of_spigot, "{a}/({b}*({c} - 2*{d}/3))",
          {{"F_Ed", chord_end || !solid ? 0.5 * F_pull : F_pull, kilonewton},
           {"(2 t f/gamma per m)", 2.0 * (chord_end ? tube.wall * chord.fy : across * spigot.fy) / r.gamma_bearing,
            kilonewton},
           {"a", c.end, metre},
           {"d_0", c.hole, metre},
           {"t", chord_end ? tube.wall : across, metre},
           N,
           T},
          chord_end ? "metal between the hole and the chord's end" : "metal between the hole and the spigot's end");

  const SpigotContact contact{c.reach, std::hypot(f.Vy, f.Vz), std::hypot(f.My, f.Mz)};
  const double first = c.end + 0.5 * c.hole, last = c.pins == 1 ? first : c.reach - first;
  // of two holes the first sees more of it; where others lie between them is not said
  const double of_spigot_there = c.pins <= 2 ? contact.spigot_moment(first) : contact.spigot_moment_most();
  const HoledRound tube_section = holed_round(tube.height, tube.wall, c.hole),
                   bar = holed_round(c.diameter, c.wall, c.hole);
  const auto net = [&](const HoledRound& s, const material::Material& m, double fu, double M, const char* what) {
    const double gamma = gamma_M2(m, at.basis), N_Rd = 0.9 * s.A_net * fu / gamma, M_Rd = s.W_net * fu / gamma;
    add_row(at,
            interaction_row(ratio(f.N, N_Rd) + ratio(M, M_Rd), is_aluminium(m) ? "EN 1999-1-1 6.2.3 (2), 6.2.5.1 (2)"
                                                                              : "EN 1993-1-1 6.2.3 (2), 6.2.5 (4)"),
            "{a}/{b} + {c}/{d}",
            {{"N_Ed", magnitude(f.N), kilonewton},
             {"N_u,Rd", N_Rd, kilonewton},
             {"M_Ed", M, kilonewton_metre},
             {"M_u,Rd", M_Rd, kilonewton_metre},
             {"A_net", s.A_net, square_millimetre}},
            what);
  };
  net(tube_section, at.chord.material, chord.fu, contact.tube_moment(last), "chord at the hole, sum");
  net(bar, c.spigot_material, spigot.fu, of_spigot_there, "spigot at the hole, sum");
  const double M = contact.spigot_moment_most(), N_Rd = bar.A * spigot.f, M_Rd = bar.W * spigot.f;
  add_row(at, interaction_row(ratio(f.N, N_Rd) + ratio(M, M_Rd), "EN 1993-1-1 6.2.1 (7)"), "{a}/{b} + {c}/{d}",
          {{"N_Ed", magnitude(f.N), kilonewton},
           {"N_Rd", N_Rd, kilonewton},
           {"M_Ed", M, kilonewton_metre},
           {"M_Rd", M_Rd, kilonewton_metre},
           {"V", contact.V, kilonewton},
           {"l", contact.l, metre}},
          "spigot between the chords, elastic");
  // Av = 0.6 A of round tubes in EN 1999-1-1 6.2.6; solid ones have more
  const double V_Rd = 0.6 * bar.A * spigot.f / std::sqrt(3.0);
  add_row(at, compare(contact.V, V_Rd, "EN 1993-1-1 6.2.6"), "{a}/{b}",
          {{"V_Ed", contact.V, kilonewton}, {"V_Rd", V_Rd, kilonewton}}, "spigot in shear");
  const double q = contact.q_mouth(), q_Rd = 1.5 * c.diameter * smaller(chord.fy, spigot.fy) / r.gamma_bearing;
  const Number push{"V_Ed", contact.V, kilonewton}, l{"l", contact.l, metre},
      moment{"M_Ed", contact.M, kilonewton_metre};
  add_row(at, compare(q, q_Rd, r.resistance), "(4*{a}/{b} + 6*{c}/{b}^2)/{d}",
          {push, l, moment, {"(q_Rd per m)", q_Rd, kilonewton}}, "chord's mouth in bearing on the spigot");
  const double ring = tube.wall * chord.f;
  add_row(at, compare(ring_stress(q, tube.wall), chord.f, "EN 1993-1-1 6.2.1 (7)"), "(2*{a}/{b} + 3*{c}/{b}^2)/{d}",
          {push, l, moment, {"(t f per m)", ring, kilonewton}}, "chord's mouth in ring tension");
}

}  // namespace baywork::verify::detail
