// SPDX-License-Identifier: MIT
// Actions that come and go together, and how they combine by named factors.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/text.hpp>
#include <baywork/load/actions.hpp>

namespace baywork {

/// The kinds of action that combination rules tell apart. `notional`: horizontal loads that stand for all that is out
/// of plumb. `accidental`: what should never happen, a hoist that goes slack.
enum class Nature : std::uint8_t { permanent, imposed, wind, snow, temperature, notional, accidental };
inline const char* name(Nature n) {
  switch (n) {
    case Nature::permanent: return "permanent";
    case Nature::imposed: return "imposed";
    case Nature::wind: return "wind";
    case Nature::snow: return "snow";
    case Nature::temperature: return "temperature";
    case Nature::notional: return "notional";
    case Nature::accidental: return "accidental";
  }
  return "";
}

/// `alternative`: cases with the same word here exclude each other (wind in service, wind out of service). Several
/// words are parted by commas; one that two cases share is enough.
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

/// Where the safety of a set lies: in its factors together with those of resistances, or in allowable stresses alone.
enum class Method : std::uint8_t { limit_states, allowable_stress };

/// Factors of one kind of variable action: gamma where it leads, gamma psi_0 beside a leading one.
struct VariableFactors {
  double gamma = 1.5;
  double psi0 = 1.0;
};

/// Factors of a combination rule, as data. Ready sets: en1990.hpp, other_sets.hpp; any other is typed in.
struct CombinationSet {
  std::string name;        ///< "EN 1990 (6.10) ultimate"
  std::string edition;     ///< standard, edition and tables
  std::string annex;       ///< whose nationally determined values: "recommended values"
  std::string confidence;  ///< what to hold against the values: "values from memory"; empty where nothing
  double permanent_unfavourable = 1.35, permanent_favourable = 1.0;
  VariableFactors imposed{}, wind{}, snow{}, temperature{};
  /// Taken of imposed, wind and snow actions, the leading one too, where two or more of them act together.
  double several = 1.0;
  /// Of accidental actions, one at a time, beside any others; 0 leaves them out.
  double accidental = 0.0;
  Method method = Method::limit_states;

  /// Of a variable action, `leading` or beside others. Notional loads stem from loads that are there whatever leads:
  /// they take the factor of imposed ones in full.
  double factor(Nature n, bool leading) const {
    const auto of = [leading](const VariableFactors& f) { return f.gamma * (leading ? 1.0 : f.psi0); };
    switch (n) {
      case Nature::permanent: return permanent_unfavourable;
      case Nature::imposed: return of(imposed);
      case Nature::wind: return of(wind);
      case Nature::snow: return of(snow);
      case Nature::temperature: return of(temperature);
      case Nature::notional: return imposed.gamma;
      case Nature::accidental: return accidental;
    }
    return 0.0;
  }
};

inline void validate(const CombinationSet& set) {
  const std::string place = "combination set " + (set.name.empty() ? std::string("without a name") : set.name);
  require::not_negative(set.permanent_unfavourable, place, "factor of unfavourable permanent actions");
  require::not_negative(set.permanent_favourable, place, "factor of favourable permanent actions");
  for (const Nature n : {Nature::imposed, Nature::wind, Nature::snow, Nature::temperature, Nature::accidental}) {
    require::not_negative(
        set.factor(n, true), [&] { return place + ", " + baywork::name(n); }, "factor");
    require::not_negative(
        set.factor(n, false), [&] { return place + ", " + baywork::name(n); }, "factor beside others");
  }
  require::not_negative(set.several, place, "factor where several act together");
}

/// All that stands behind a set, in one line.
inline std::string words(const CombinationSet& set) {
  using text::number;
  std::string out = set.name + ", " + set.edition + (set.annex.empty() ? "" : ", " + set.annex) + ": permanent " +
                    number(set.permanent_unfavourable) + " and " + number(set.permanent_favourable);
  const auto add = [&out](const char* what, const VariableFactors& f) {
    out += std::string(", ") + what + " " + number(f.gamma) + (f.psi0 == 1.0 ? "" : " (psi_0 " + number(f.psi0) + ")");
  };
  add("imposed", set.imposed);
  add("wind", set.wind);
  add("snow", set.snow);
  add("temperature", set.temperature);
  if (set.several != 1.0) out += ", " + number(set.several) + " of imposed, wind and snow where several act together";
  if (set.accidental != 0.0) out += ", accidental " + number(set.accidental);
  return out + (set.confidence.empty() ? "" : "; " + set.confidence);
}

namespace detail {

inline std::string words_of(const std::vector<double>& factors, const std::vector<CaseKind>& cases) {
  std::string out;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (factors[i] == 0.0) continue;
    out += (out.empty() ? "" : " + ") + text::number(factors[i], 4) + " " + cases[i].name;
  }
  return out;
}

/// Whether two lists of words, parted by commas, have one in common.
inline bool share_word(std::string_view a, std::string_view b) {
  const auto next = [](std::string_view& from) {
    const std::size_t end = from.find(',');
    std::string_view word = from.substr(0, end);
    from = end == std::string_view::npos ? std::string_view{} : from.substr(end + 1);
    while (!word.empty() && word.front() == ' ') word.remove_prefix(1);
    while (!word.empty() && word.back() == ' ') word.remove_suffix(1);
    return word;
  };
  while (!a.empty()) {
    const std::string_view word = next(a);
    for (std::string_view rest = b; !rest.empty();)
      if (next(rest) == word && !word.empty()) return true;
  }
  return false;
}

/// Every set of variable cases of which no two exclude each other, as accidental ones always do. At most 2^12 sets.
inline std::vector<std::vector<std::size_t>> compatible_sets(const CombinationSet& set,
                                                             const std::vector<CaseKind>& cases) {
  const auto exclude = [&cases](std::size_t i, std::size_t j) {
    return share_word(cases[i].alternative, cases[j].alternative) ||
           (cases[i].nature == Nature::accidental && cases[j].nature == Nature::accidental);
  };
  std::vector<std::vector<std::size_t>> out{{}};
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (cases[i].nature == Nature::permanent || (cases[i].nature == Nature::accidental && set.accidental == 0.0))
      continue;
    for (std::size_t k = 0, before = out.size(); k < before; ++k) {
      if (std::any_of(out[k].begin(), out[k].end(), [&](std::size_t j) { return exclude(i, j); })) continue;
      out.push_back(out[k]);
      out.back().push_back(i);
    }
    if (out.size() <= (std::size_t{1} << 12U)) continue;
    const auto variable = std::count_if(cases.begin(), cases.end(),
                                        [](const CaseKind& c) { return c.nature != Nature::permanent; });
    fail<BadDescription>("combinations", std::to_string(variable) + " variable cases are given",
                         "up to 12 that may act together are accepted: `alternative` tells which exclude each other");
  }
  return out;
}

}  // namespace detail

/// All combinations of a set over the cases: permanent actions at both factors; every compatible set of variable
/// actions, each of them leading in turn and the others at ψ0. Equal combinations are made once.
inline std::vector<Combination> combinations(const CombinationSet& set, const std::vector<CaseKind>& cases) {
  validate(set);
  std::vector<Combination> out;
  std::set<std::vector<double>> made;
  const auto add = [&](const std::vector<double>& factors) {
    if (made.insert(factors).second) out.push_back({detail::words_of(factors, cases), factors});
  };
  const auto leads = [&](std::size_t i) {
    return cases[i].nature != Nature::notional && cases[i].nature != Nature::accidental;
  };
  const auto is_reduced = [&](std::size_t i) { return leads(i) && cases[i].nature != Nature::temperature; };
  const std::vector<std::vector<std::size_t>> sets = detail::compatible_sets(set, cases);
  for (const double permanent : {set.permanent_unfavourable, set.permanent_favourable})
    for (const std::vector<std::size_t>& variable : sets) {
      std::vector<double> factors(cases.size(), 0.0);
      for (std::size_t i = 0; i < cases.size(); ++i)
        if (cases[i].nature == Nature::permanent) factors[i] = permanent;
      const bool several = std::count_if(variable.begin(), variable.end(), is_reduced) > 1;
      const auto add_with = [&](std::size_t leading) {
        for (const std::size_t i : variable)
          factors[i] = set.factor(cases[i].nature, i == leading) * (several && is_reduced(i) ? set.several : 1.0);
        add(factors);
      };
      if (std::none_of(variable.begin(), variable.end(), leads)) add_with(cases.size());
      for (const std::size_t i : variable)
        if (leads(i)) add_with(i);
    }
  return out;
}

}  // namespace baywork
