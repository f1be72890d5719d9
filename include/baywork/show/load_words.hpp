// SPDX-License-Identifier: MIT
// Actions told in words with their values and units, as a report lists them.
#pragma once

#include <cstddef>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

#include <baywork/core/text.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/load/actions.hpp>

namespace baywork::show {

namespace detail {

/// A chord or face by the word it was named by, by its name in the girder, or by its number.
inline std::string part(const std::string& word, std::size_t index, const char* kind,
                        const std::vector<std::string>& names) {
  const std::string& known = word.empty() && index < names.size() ? names[index] : word;
  return known.empty() ? std::string(kind) + ' ' + std::to_string(index + 1) : known + ' ' + kind;
}

/// Components that are there: "20 Nm about z, …".
inline std::string components(const Vec3<>& v, const char* unit, double size, const char* way) {
  std::string out;
  const auto add = [&](double value, const char* axis) {
    if (value != 0.0) out += (out.empty() ? "" : ", ") + baywork::text::quantity(value, size, unit) + ' ' + way + axis;
  };
  add(v.x, " x");
  add(v.y, " y");
  add(v.z, " z");
  return out.empty() ? "nothing" : out;
}

/// The way that a vector along one axis points, empty where it is oblique. Right is seen along the girder.
inline std::string way_of(const Vec3<>& v) {
  if (v.y == 0.0 && v.z == 0.0) return v.x > 0.0 ? "forwards" : "backwards";
  if (v.x == 0.0 && v.z == 0.0) return v.y > 0.0 ? "to the left" : "to the right";
  if (v.x == 0.0 && v.y == 0.0) return v.z > 0.0 ? "up" : "down";
  return "";
}

/// "1.2 kN down", or components where it is oblique.
inline std::string directed_words(const Vec3<>& v, const char* unit) {
  const std::string way = way_of(v);
  if (way.empty() || !(length(v) > 0.0)) return components(v, unit, 1e3, "along");
  return baywork::text::quantity(length(v), 1e3, unit) + ' ' + way;
}

inline std::string point_words(const Vec3<>& force, const Vec3<>& couple) {
  std::string what = length(force) > 0.0 ? directed_words(force, "kN") : "";
  if (length(couple) > 0.0)
    what += (what.empty() ? "couple " : " and couple ") + components(couple, "kNm", 1e3, "about");
  return what.empty() ? "nothing" : what;
}

inline std::string reach_words(const Reach& r) {
  const auto at = [](double x) { return baywork::text::quantity(x, 1.0, "m"); };
  if (!r.from && !r.to) return "over the whole girder";
  if (!r.to) return "from " + at(*r.from) + " on";
  return "from " + at(r.from ? *r.from : 0.0) + " to " + at(*r.to);
}

}  // namespace detail

/// One line, without a full stop. A girder gives the names of chords and faces that are told by number.
inline std::string words_of(const Action& action, const Girder* girder = nullptr) {
  using baywork::text::number;
  using baywork::text::quantity;
  const PartNames names = girder != nullptr ? girder->names() : PartNames{};
  const auto chord = [&names](const ChordRef& c) { return detail::part(c.word, c.index, "chord", names.chords); };
  const auto face = [&names](const FaceRef& f) { return detail::part(f.word, f.index, "face", names.faces); };
  return std::visit(
      [&]<class A>(const A& a) -> std::string {
        if constexpr (std::is_same_v<A, BasicSelfWeight<>>)
          return "mass of all bars x " + number(a.gravity) + " m/s2" +
                 (a.factor == 1.0 ? "" : " x " + number(a.factor)) +
                 (a.towards.x == 0.0 && a.towards.y == 0.0 && a.towards.z < 0.0
                      ? ""
                      : " towards (" + number(a.towards.x) + ", " + number(a.towards.y) + ", " + number(a.towards.z) + ')');
        else if constexpr (std::is_same_v<A, BasicLineLoad<>>) {
          std::string on;
          for (const ChordRef& c : a.chords) on += (on.empty() ? "" : ", ") + chord(c);
          const bool even = a.first.x == a.last.x && a.first.y == a.last.y && a.first.z == a.last.z;
          return detail::directed_words(a.first, "kN/m") +
                 (even ? "" : " changing to " + detail::directed_words(a.last, "kN/m")) + ' ' +
                 detail::reach_words(a.reach) + ", shared by " + on;
        } else if constexpr (std::is_same_v<A, BasicChordPoint<>>) {
          return detail::point_words(a.force, a.couple) + " on the " + chord(a.chord) +
                 " at " + quantity(a.x, 1.0, "m");
        } else if constexpr (std::is_same_v<A, BasicCrossMemberPoint<>>) {
          return detail::point_words(a.force, a.couple) + " on the cross member of the " +
                 face(a.face) + " at station " + std::to_string(a.station + 1) + ", " +
                 number(a.fraction) + " of its length from the first chord";
        } else if constexpr (std::is_same_v<A, BasicFacePressure<>>) {
          const char* to = a.carried_by == CarriedBy::nearest_edge ? "to the nearest edges"
                           : a.carried_by == CarriedBy::chords     ? "to the chords"
                                                                   : "to the cross members";
          return "pressure " + quantity(a.pressure, 1.0, "Pa") + " on the outside of the " +
                 face(a.face) + ' ' + detail::reach_words(a.reach) + ", " + to;
        } else if constexpr (std::is_same_v<A, BasicWindOnBars<>>)
          return "wind of " + quantity(a.pressure, 1.0, "Pa") + " on every bare bar, force coefficient " +
                 number(a.force_coefficient) + " (flat-sided " + number(a.flat_coefficient) + "), blowing " +
                 (detail::way_of(a.direction).empty()
                      ? "to (" + number(a.direction.x) + ", " + number(a.direction.y) + ", " + number(a.direction.z) +
                            ')'
                      : detail::way_of(a.direction));
        else if constexpr (std::is_same_v<A, BasicWarming<>>)
          return quantity(a.change, 1.0, "K") +
                 " warmer: " + (a.chord ? chord(*a.chord) : std::string("all bars"));
        else if constexpr (std::is_same_v<A, BasicWarmingAcross<>>)
          return "warmer across the girder by " + quantity(a.per_metre_y, 1.0, "K/m") + " along y and " +
                 quantity(a.per_metre_z, 1.0, "K/m") + " along z";
        else {
          static_assert(std::is_same_v<A, BasicSettlement<>>, "an action that has no words yet");
          const bool turn = a.motion >= Motion::rx;
          return "support of the " + chord(a.chord) + " at " + quantity(a.x, 1.0, "m") +
                 " moves " + (turn ? quantity(a.displacement, 1.0, "rad") : quantity(a.displacement, 1e-3, "mm")) +
                 ", " + motion_names[static_cast<std::size_t>(a.motion)];
        }
      },
      action);
}

}  // namespace baywork::show
