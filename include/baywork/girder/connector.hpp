// SPDX-License-Identifier: MIT
// What joins the chords of two modules: pin and fork, bolted end plates, or a spigot, with stiffness and slack.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <type_traits>
#include <variant>

#include <baywork/core/error.hpp>
#include <baywork/girder/bolt.hpp>
#include <baywork/material/material.hpp>

namespace baywork {

/// How a connector gives way between the two chord ends it joins. Springs in the chord's local axes (z leans up, y lies
/// across), N/m and Nm/rad: infinity is rigid, zero released (axial and shear may not be). `slack`: how far it opens
/// before it pulls [m]; pushed, it is in contact at once.
struct ConnectorFit {
  double slack = 0;
  double axial = rigid_stiffness, shear_y = rigid_stiffness, shear_z = rigid_stiffness;
  double torsion = rigid_stiffness, about_y = rigid_stiffness, about_z = rigid_stiffness;
};

/// Chords carry on as if they were one; how, is not described and not proved.
struct RigidSplice {};

/// Whether a pin lies level across the girder, so that the joint may turn up and down, or stands upright.
enum class PinAxis : std::uint8_t { level, upright };

/// A blade of one module in a fork of the next, held by one pin. Lengths in m.
///
///                  pin
///         |=========o===|              plate of the fork
///   chord |      |--o----------| chord   blade, with a gap on either side
///         |=========o===|              plate of the fork
///         |<-reach->|                  from the plates' root, where coupler and chord are welded together
///
/// `end`: from the edge of the hole to the plates' end; `side`: to their sides.
struct PinCoupler {
  double pin = 0;    ///< diameter
  double hole = 0;   ///< diameter
  double blade = 0;  ///< thickness of the blade
  double fork = 0;   ///< thickness of each plate of the fork
  double gap = 0;    ///< between blade and fork, each side
  double end = 0, side = 0, reach = 0;
  material::Material plate_material{}, pin_material{};
  bool welded = true;        ///< the plates are softened where aluminium
  bool replaceable = false;  ///< the pin is drawn again and again: EN 1993-1-8 Table 3.10 then asks for more
  double throat = 0;         ///< of the fillet between coupler and chord, all round; 0: that weld is not described
  PinAxis axis = PinAxis::level;
  ConnectorFit fit{};
};

/// A round plate on each chord end, bolted together. Lengths in m.
struct BoltedEndPlate {
  double plate = 0;        ///< thickness of each plate
  double diameter = 0;     ///< of the plates
  double bolt_circle = 0;  ///< diameter
  std::size_t bolts = 0;   ///< evenly on the circle
  Bolt bolt{};
  double hole = 0;          ///< diameter
  double eccentricity = 0;  ///< between the axes of bolt circle and chord
  double throat = 0;        ///< of the fillet between plate and chord, all round
  material::Material plate_material{};
  ConnectorFit fit{};
};

/// A round bar or tube that reaches into both chords, tubes themselves, and is pinned to each. Lengths in m.
struct Spigot {
  double diameter = 0;
  double wall = 0;       ///< 0: solid
  double reach = 0;      ///< into each chord
  double pin = 0;        ///< diameter; through chord and spigot
  double hole = 0;       ///< diameter
  std::size_t pins = 1;  ///< in each chord, all in one plane one behind the other
  double end = 0;        ///< from the edge of the first hole to the chord's end, and to the spigot's end
  material::Material spigot_material{}, pin_material{};
  bool welded = false;  ///< something is welded to the chord there: it is softened where aluminium
  ConnectorFit fit{};
};

using Connector = std::variant<RigidSplice, PinCoupler, BoltedEndPlate, Spigot>;

inline bool is_described(const Connector& c) { return !std::holds_alternative<RigidSplice>(c); }

/// In the order of Connector's alternatives.
inline constexpr std::array connector_names{"rigid splice", "pin and fork", "bolted end plates", "spigot"};
inline const char* name(const Connector& c) { return connector_names[c.index()]; }

/// What the chords' frame takes over: a pin turns about its own axis whatever else is said.
inline ConnectorFit fit_of(const Connector& c) {
  return std::visit(
      []<class T>(const T& t) -> ConnectorFit {
        if constexpr (std::is_same_v<T, RigidSplice>) {
          return {};
        } else {
          ConnectorFit f = t.fit;
          if constexpr (std::is_same_v<T, PinCoupler>) (t.axis == PinAxis::level ? f.about_y : f.about_z) = 0.0;
          return f;
        }
      },
      c);
}

/// Whether chords are softer for their connectors.
inline bool gives_way(const ConnectorFit& f) {
  for (const double k : {f.axial, f.shear_y, f.shear_z, f.torsion, f.about_y, f.about_z})
    if (!is_infinite(k)) return true;
  return false;
}

namespace detail {

inline void check_fit(const ConnectorFit& f, const std::string& place) {
  require::not_negative(f.slack, place, "slack");
  for (const double k : {f.axial, f.shear_y, f.shear_z})
    if (!is_infinite(k)) require::positive(k, place, "stiffness of a connector along or across the chord");
  for (const double k : {f.torsion, f.about_y, f.about_z})
    require::stiffness(k, place, "stiffness of a connector against turning");
}

inline void check_hole(double pin, double hole, const std::string& place) {
  require::positive(pin, place, "diameter of the pin or bolt");
  require::positive(hole, place, "diameter of the hole");
  if (hole < pin)
    fail<BadDescription>(place, "the hole is smaller than what goes through it", "a hole as wide or wider is accepted");
}

inline void check(const RigidSplice&, const std::string&) {}
inline void check(const PinCoupler& c, const std::string& place) {
  check_hole(c.pin, c.hole, place);
  require::positive(c.blade, place, "thickness of the blade");
  require::positive(c.fork, place, "thickness of the fork's plates");
  require::not_negative(c.gap, place, "gap between blade and fork");
  require::positive(c.end, place, "distance from the hole to the plates' end");
  require::positive(c.side, place, "distance from the hole to the plates' sides");
  require::positive(c.reach, place, "distance from the pin to the root of the plates");
  require::not_negative(c.throat, place, "throat of the weld");
  material::validate(c.plate_material);
  material::validate(c.pin_material);
  check_fit(c.fit, place);
}
inline void check(const BoltedEndPlate& c, const std::string& place) {
  require::positive(c.bolt.stress_area, place, "stress area of the bolts");
  check_hole(c.bolt.diameter, c.hole, place);
  require::positive(c.plate, place, "thickness of the plates");
  require::positive(c.bolt_circle, place, "diameter of the bolt circle");
  require::not_negative(c.eccentricity, place, "eccentricity");
  require::positive(c.throat, place, "throat of the weld");
  if (!(c.diameter > c.bolt_circle + c.hole))
    fail<BadDescription>(place, "the bolts' holes reach over the edge of the plates",
                         "plates wider than the bolt circle and a hole are accepted");
  if (c.bolts < 3)
    fail<BadDescription>(place, std::to_string(c.bolts) + " bolts are given", "three bolts or more are accepted");
  if (const double pitch = c.bolt_circle * std::sin(pi_v<double> / static_cast<double>(c.bolts)); !(pitch > c.hole))
    fail<BadDescription>(place, "the bolts' holes overlap", "fewer bolts or a larger circle are accepted");
  material::validate(c.plate_material);
  check_fit(c.fit, place);
}
inline void check(const Spigot& c, const std::string& place) {
  check_hole(c.pin, c.hole, place);
  require::positive(c.diameter, place, "diameter of the spigot");
  require::not_negative(c.wall, place, "wall of the spigot");
  require::positive(c.reach, place, "reach of the spigot into the chord");
  require::positive(c.end, place, "distance from the hole to the end");
  if (!(2.0 * c.wall < c.diameter))
    fail<BadDescription>(place, "the spigot's wall is thicker than its radius",
                         "a thinner wall, or 0 for a solid spigot, is accepted");
  if (!(c.hole < c.diameter))
    fail<BadDescription>(place, "the hole is as wide as the spigot", "a smaller hole is accepted");
  if (c.pins == 0) fail<BadDescription>(place, "it has no pins", "one pin or more in each chord is accepted");
  if (!(static_cast<double>(c.pins) * c.hole + c.end < c.reach))
    fail<BadDescription>(place, "its holes do not fit into its reach", "a longer reach is accepted");
  material::validate(c.spigot_material);
  material::validate(c.pin_material);
  check_fit(c.fit, place);
}

}  // namespace detail

/// Throws BadDescription for the first fault.
inline void validate(const Connector& c, const std::string& place) {
  std::visit([&](const auto& t) { detail::check(t, place + ", " + name(c)); }, c);
}

}  // namespace baywork
