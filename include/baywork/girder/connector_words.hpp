// SPDX-License-Identifier: MIT
// A connector in words: every number of its description, for those who check and build it.
#pragma once

#include <string>

#include <baywork/girder/connector.hpp>

namespace baywork {

namespace detail {

inline std::string millimetres(const char* what, double v) {
  return std::string(what) + text::quantity(v, 1e-3, "mm", 9);
}

inline std::string words_of(const RigidSplice&) { return ""; }
inline std::string words_of(const PinCoupler& c) {
  return millimetres(": pin ", c.pin) + millimetres(" in holes of ", c.hole) +
         (c.axis == PinAxis::level ? ", level" : ", upright") + millimetres("; blade ", c.blade) +
         millimetres(", fork 2 x ", c.fork) + millimetres(", gaps ", c.gap) + millimetres("; beyond the hole ", c.end) +
         millimetres(" to the end, ", c.side) + millimetres(" to the sides, pin to root ", c.reach) + "; plates " +
         c.plate_material.name + (c.welded ? ", welded" : ", not welded") + "; pin " + c.pin_material.name +
         (c.replaceable ? ", drawn again and again" : "") +
         (c.throat > 0.0 ? millimetres("; fillet to the chord ", c.throat) : "");
}
inline std::string words_of(const BoltedEndPlate& c) {
  return millimetres(": plates ", c.plate) + millimetres(" thick, ", c.diameter) + " wide, " + c.plate_material.name +
         "; " + std::to_string(c.bolts) + millimetres(" bolts of ", c.bolt.diameter) + ", stress area " +
         text::quantity(c.bolt.stress_area, 1e-6, "mm2", 9) + millimetres(", head ", c.bolt.head) + ", class " +
         name(c.bolt.grade) + millimetres(", in holes of ", c.hole) + millimetres(" on a circle of ", c.bolt_circle) +
         millimetres(", eccentric by ", c.eccentricity) + millimetres("; fillet to the chord ", c.throat);
}
inline std::string words_of(const Spigot& c) {
  return millimetres(": ", c.diameter) + (c.wall > 0.0 ? millimetres(", wall ", c.wall) : ", solid") +
         millimetres(", reaching ", c.reach) + " into each chord, " + c.spigot_material.name + "; " +
         std::to_string(c.pins) + millimetres(" pins of ", c.pin) + millimetres(" in holes of ", c.hole) +
         millimetres(" in each chord, ", c.end) + " from the hole's edge to the end, " + c.pin_material.name +
         (c.welded ? "; chords softened there" : "");
}

}  // namespace detail

/// "pin and fork: pin 20 mm in holes of 20.3 mm, level; blade 25 mm, ...; slack 0.3 mm".
inline std::string words_of(const Connector& c) {
  const double slack = fit_of(c).slack;
  return name(c) + std::visit([](const auto& t) { return detail::words_of(t); }, c) +
         (slack > 0.0 ? detail::millimetres("; slack ", slack) : "");
}

}  // namespace baywork
