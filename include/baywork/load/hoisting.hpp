// SPDX-License-Identifier: MIT
// What hoists add while they move: dynamic factors, and the load cases at rest and in motion.
#pragma once

#include <algorithm>
#include <cstdint>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/load/load_case.hpp>

namespace baywork {

/// EN 13001-2 and EN 1991-3 Table 2.5 (values from memory: check them against the standards).
namespace en13001 {

/// How hard a hoist takes up its load: HC1 the softest, HC4 the stiffest.
enum class HoistingClass : std::uint8_t { hc1, hc2, hc3, hc4 };

/// phi_2 = phi_2,min + beta_2 v.
struct DynamicFactor {
  double phi_2_min = 1;
  double beta_2 = 0;  ///< [s/m]
};
/// phi_2,min 1.05, 1.10, 1.15, 1.20 and beta_2 0.17, 0.34, 0.51, 0.68 s/m.
inline DynamicFactor dynamic_factor(HoistingClass c) {
  switch (c) {
    case HoistingClass::hc1: return {1.05, 0.17};
    case HoistingClass::hc2: return {1.10, 0.34};
    case HoistingClass::hc3: return {1.15, 0.51};
    case HoistingClass::hc4: return {1.20, 0.68};
  }
  return {};
}
/// phi_2 at a steady hoisting speed [m/s].
inline double phi_2(HoistingClass c, double speed) {
  require::not_negative(speed, "hoisting", "hoisting speed [m/s]");
  const DynamicFactor f = dynamic_factor(c);
  return f.phi_2_min + f.beta_2 * speed;
}

}  // namespace en13001

/// A state of the hoists and what it multiplies lifted weights by: {"moving", phi_2}, {"emergency stop", 1.4}. The
/// factor of a stop is the maker's of the hoist; 1.1 to 1.4 are used (common practice).
struct HoistState {
  std::string name;
  double phi = 1;
};

namespace detail {

/// An action `factor` times as large, where it is a weight or a load that hangs.
inline Action lifted(Action action, double factor) {
  std::visit(
      [factor](auto& a) {
        using A = std::remove_cvref_t<decltype(a)>;
        if constexpr (std::is_same_v<A, BasicSelfWeight<>>) {
          a.factor *= factor;
        } else if constexpr (std::is_same_v<A, BasicLineLoad<>>) {
          a.first = factor * a.first;
          a.last = factor * a.last;
        } else if constexpr (std::is_same_v<A, BasicChordPoint<>> || std::is_same_v<A, BasicCrossMemberPoint<>>) {
          a.force = factor * a.force;
          a.couple = factor * a.couple;
        } else if constexpr (std::is_same_v<A, BasicFacePressure<>>) {
          a.pressure *= factor;
        } else {
          fail<BadDescription>("hoisting", "wind, temperature or settlement is among what is lifted",
                               "self-weight, line loads, point loads and pressures are accepted");
        }
      },
      action);
  return action;
}

}  // namespace detail

/// A payload at rest and in every state of the hoists: cases that exclude each other. In motion it is phi times as
/// large, and (phi - 1) times what is lifted with it, the self-weight as a rule, comes on top: all of it as an action
/// of the payload's nature, since it comes and goes with it. States of motion have the alternative "hoists move" as
/// well: what never meets them, wind out of service, is given it, too. The reactions of these cases are the hoists'
/// loads in motion.
inline std::vector<LoadCase> while_hoisted(const LoadCase& payload, const std::vector<Action>& lifted_too,
                                           const std::vector<HoistState>& states) {
  if (payload.nature == Nature::permanent)
    fail<BadDescription>("hoisting, load case " + payload.name, "it is permanent", "a variable nature is accepted");
  LoadCase rest = payload;
  if (rest.alternative.empty()) {
    rest.alternative = rest.name;
    std::replace(rest.alternative.begin(), rest.alternative.end(), ',', ' ');  // one word
  }
  std::vector<LoadCase> out{rest};
  for (const HoistState& s : states) {
    const std::string place = "hoisting, " + (s.name.empty() ? std::string("a state without a name") : s.name);
    require::finite(s.phi, place, "dynamic factor");
    if (s.phi < 1.0)
      fail<BadDescription>(place, "the dynamic factor is " + text::number(s.phi), "1 or more is accepted");
    LoadCase c{rest.name + ", " + s.name, rest.nature, {}, rest.alternative + ", hoists move"};
    for (const Action& a : payload.actions) c.actions.push_back(detail::lifted(a, s.phi));
    for (const Action& a : lifted_too) c.actions.push_back(detail::lifted(a, s.phi - 1.0));
    out.push_back(std::move(c));
  }
  return out;
}

}  // namespace baywork
