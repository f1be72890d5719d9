// SPDX-License-Identifier: MIT
// Actions that come and go together, and how they combine by named factors.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/load/actions.hpp>

namespace baywork {

/// The kinds of action that combination rules tell apart.
enum class Nature : std::uint8_t { permanent, imposed, wind, snow, temperature };
inline const char* name(Nature n) {
  switch (n) {
    case Nature::permanent: return "permanent";
    case Nature::imposed: return "imposed";
    case Nature::wind: return "wind";
    case Nature::snow: return "snow";
    case Nature::temperature: return "temperature";
  }
  return "";
}

/// `alternative`: cases with the same word here exclude each other (wind in service, wind out of service).
template <Scalar S = double>
struct BasicLoadCase {
  std::string name;
  Nature nature = Nature::permanent;
  std::vector<BasicAction<S>> actions;
  std::string alternative{};
};
using LoadCase = BasicLoadCase<double>;

/// What a combination rule needs to know of a case.
struct CaseKind {
  std::string name;
  Nature nature = Nature::permanent;
  std::string alternative;
};

/// One factor for each case, in their order; 0 leaves a case out.
struct Combination {
  std::string name;  ///< "1.35 self-weight + 1.5 wind + 0.9 projector"
  std::vector<double> factors;
};

/// Factors of a combination rule, as data: ψ0 by nature, γ for permanent actions that hurt and that help, γ for variable.
struct CombinationSet {
  std::string name;     ///< "EN 1990 (6.10), ultimate, STR"
  std::string edition;  ///< standard, edition, annex
  double permanent_unfavourable = 1.35, permanent_favourable = 1.0;
  double variable = 1.5;
  double psi0_imposed = 0.7, psi0_wind = 0.6, psi0_snow = 0.5, psi0_temperature = 0.6;

  double psi0(Nature n) const {
    switch (n) {
      case Nature::permanent: return 1.0;
      case Nature::imposed: return psi0_imposed;
      case Nature::wind: return psi0_wind;
      case Nature::snow: return psi0_snow;
      case Nature::temperature: return psi0_temperature;
    }
    return 1.0;
  }
};

namespace detail {

inline std::string words_of(const std::vector<double>& factors, const std::vector<CaseKind>& cases) {
  std::string out;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (factors[i] == 0.0) continue;
    out += (out.empty() ? "" : " + ") + text::number(factors[i], 4) + " " + cases[i].name;
  }
  return out;
}

/// Every set of variable cases of which no two exclude each other (2^n subsets, n at most 12).
inline std::vector<std::vector<std::size_t>> compatible_sets(const std::vector<CaseKind>& cases) {
  std::vector<std::size_t> variable;
  for (std::size_t i = 0; i < cases.size(); ++i)
    if (cases[i].nature != Nature::permanent) variable.push_back(i);
  if (variable.size() > 12)
    fail<BadDescription>("combinations", std::to_string(variable.size()) + " variable cases are given", "up to 12 are accepted");
  std::vector<std::vector<std::size_t>> out;
  for (std::size_t bits = 0; bits < (std::size_t{1} << variable.size()); ++bits) {
    std::vector<std::size_t> set;
    bool fits = true;
    for (std::size_t k = 0; k < variable.size(); ++k) {
      if ((bits >> k & 1U) == 0) continue;
      for (const std::size_t other : set)
        fits = fits && (cases[variable[k]].alternative.empty() || cases[variable[k]].alternative != cases[other].alternative);
      set.push_back(variable[k]);
    }
    if (fits) out.push_back(std::move(set));
  }
  return out;
}

}  // namespace detail

/// All combinations of a set over the cases: permanent actions at both factors; every compatible set of variable
/// actions, each of them leading in turn and the others at ψ0. Equal combinations are made once.
inline std::vector<Combination> combinations(const CombinationSet& set, const std::vector<CaseKind>& cases) {
  std::vector<Combination> out;
  const auto add = [&](const std::vector<double>& factors) {
    for (const Combination& c : out)
      if (c.factors == factors) return;
    out.push_back({detail::words_of(factors, cases), factors});
  };
  for (const double permanent : {set.permanent_unfavourable, set.permanent_favourable})
    for (const std::vector<std::size_t>& variable : detail::compatible_sets(cases)) {
      std::vector<double> factors(cases.size(), 0.0);
      for (std::size_t i = 0; i < cases.size(); ++i)
        if (cases[i].nature == Nature::permanent) factors[i] = permanent;
      if (variable.empty()) add(factors);
      for (const std::size_t leading : variable) {
        for (const std::size_t i : variable) factors[i] = set.variable * (i == leading ? 1.0 : set.psi0(cases[i].nature));
        add(factors);
      }
    }
  return out;
}

}  // namespace baywork
