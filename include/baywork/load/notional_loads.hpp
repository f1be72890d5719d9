// SPDX-License-Identifier: MIT
// Notional horizontal loads: a share of what weighs, pushed sideways, for all that hangs or stands out of plumb.
#pragma once

#include <cmath>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/load/load_case.hpp>

namespace baywork {

/// Shares of the vertical loads in use (common practice): plumb and braced, usual, high or free-standing.
inline constexpr double notional_low = 0.025, notional_usual = 0.05, notional_high = 0.10;

namespace detail {

/// Whether a pressure on a face pushes level alone: both chords lie above one another all along.
inline bool is_upright(const Girder& g, const GirderFace& f) {
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    const Vec3<> across = g.joint(i, f.second_chord) - g.joint(i, f.first_chord);
    if (std::abs(across.y) > 1e-9 * length(across)) return false;
  }
  return true;
}

/// The action's own downward part, `share` of it, along the unit vector `d`; nothing where it pushes level alone.
inline void add_sideways(const Girder& g, const Action& action, double share, const Vec3<>& d,
                         std::vector<Action>& out) {
  std::visit(
      [&](const auto& a) {
        using A = std::remove_cvref_t<decltype(a)>;
        if constexpr (std::is_same_v<A, BasicSelfWeight<>>) {
          const double down = -unit(a.towards).z;
          if (down != 0.0)
            out.push_back(BasicSelfWeight<>{a.gravity, share * a.factor * std::abs(down), down > 0.0 ? d : -d});
        } else if constexpr (std::is_same_v<A, BasicLineLoad<>>) {
          BasicLineLoad<> b = a;
          b.first = (-share * a.first.z) * d;
          b.last = (-share * a.last.z) * d;
          if (a.first.z != 0.0 || a.last.z != 0.0) out.push_back(std::move(b));
        } else if constexpr (std::is_same_v<A, BasicChordPoint<>> || std::is_same_v<A, BasicCrossMemberPoint<>>) {
          A b = a;
          b.force = (-share * a.force.z) * d;
          b.couple = {};
          if (a.force.z != 0.0) out.push_back(std::move(b));
        } else if constexpr (std::is_same_v<A, BasicFacePressure<>>) {
          const GirderFace& f = g.faces[g.face(a.face)];
          if (!is_upright(g, f))
            fail<BadDescription>(f.name + " face", "a notional load is asked of a pressure that weighs",
                                 "the same weight as line loads on chords is accepted");
        }
      },
      action);
}

}  // namespace detail

/// Four cases that exclude each other, towards +y, -y, +x and -x: `share` of the downward loads of all `cases`
/// together, each where it acts. Upward loads lessen them; couples, temperature and settlements have no part in them.
inline std::vector<LoadCase> notional_loads(const Girder& g, const std::vector<LoadCase>& cases, double share,
                                            const std::string& alternative = "notional load") {
  const char* place = "notional loads";
  require::positive(share, place, "share of the vertical loads");
  std::vector<LoadCase> out;
  const auto towards = [&](const char* word, const Vec3<>& d) {
    LoadCase c{std::string("notional load ") + word, Nature::notional, {}, alternative};
    for (const LoadCase& from : cases)
      for (const Action& a : from.actions) detail::add_sideways(g, a, share, d, c.actions);
    if (c.actions.empty())
      fail<BadDescription>(place, "none of the cases has a vertical load",
                           "self-weight, line or point loads are accepted");
    out.push_back(std::move(c));
  };
  towards("+y", {0, 1, 0});
  towards("-y", {0, -1, 0});
  towards("+x", {1, 0, 0});
  towards("-x", {-1, 0, 0});
  return out;
}

}  // namespace baywork
