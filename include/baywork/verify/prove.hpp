// SPDX-License-Identifier: MIT
// Making a proof: every combination of a set through every check of every member.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/joint_design.hpp>
#include <baywork/verify/member_search.hpp>
#include <baywork/verify/proof.hpp>
#include <baywork/verify/stability_design.hpp>
#include <baywork/verify/stability_imperfections.hpp>
#include <baywork/verify/stability_sway.hpp>
#include <baywork/verify/splice_design.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify {

namespace detail {

/// All that is searched besides the bars by themselves: a new topic is one line here.
using Topics = std::tuple<JointDesign, StabilityDesign, SpliceDesign>;

/// The bars first, then every topic in turn.
class Search {
 public:
  Search(const Analysis& analysis, const Basis& basis, Standards which)
      : basis_(with_use(basis)),
        use_(basis.use),
        design_(analysis, basis_, which),
        members_(design_),
        topics_(topics_from<Topics>({analysis, basis_, design_.not_designed(), which})) {}
  Search(const Search&) = delete;
  Search& operator=(const Search&) = delete;

  /// Takes in combinations of these cases, one factor each.
  void take(const std::vector<const Response*>& parts, const std::vector<Combination>& all) {
    members_.search(parts, all);
    if (std::apply([](const auto&... t) { return (is_idle(t) && ...); }, topics_)) return;
    Response sum;
    FrameLoads scratch;
    for (std::size_t i = 0; i < all.size(); ++i) {
      combine<double>(parts, all[i].factors, all[i].name, sum, scratch);
      std::apply([&](auto&... t) { (t.search(sum, i), ...); }, topics_);
    }
  }

  /// Takes in a response that is no sum of others, as one of the combinations.
  void take(const Response& solved, std::size_t combination) {
    members_.search(solved, combination);
    std::apply([&](auto&... t) { (t.search(solved, combination), ...); }, topics_);
  }

  /// `further` rows join those of the topics.
  Proof proof(std::vector<Combination> all, const std::string& set, std::vector<Row> further = {}) const {
    std::vector<Row> of_topics = std::move(further);
    Words words;
    words.assumptions = {"Combinations: " + set + "."};
    if (use_ < 1.0)
      words.assumptions.push_back("Wear: " + baywork::text::number(use_) +
                                  " of every resistance (k_use); gamma_M and Omega below are the standards' over k_use.");
    design_.add_words(words);
    const auto add = [&](const Topic auto& t) {
      t.add_rows(of_topics);
      t.add_words(words);
    };
    std::apply([&](const auto&... t) { (add(t), ...); }, topics_);
    std::stable_sort(of_topics.begin(), of_topics.end(),
                     [](const Row& a, const Row& b) { return a.member < b.member; });
    words.assumptions.push_back(
        "Clauses, constants and strengths are in part values from memory: compare them with the standards and national "
        "annexes in force.");
    for (const char* s : {"Supports, slings and what they hang from, local effects where loads are brought in.",
                          "Fatigue, fire, damage and wear.", "Deflection, vibration and overturning.",
                          "The proof is an aid: it must be checked by a licensed engineer who has the standards."})
      words.not_covered.push_back(s);
    return {members_.rows(of_topics), std::move(all), std::move(words.assumptions), std::move(words.not_covered)};
  }

 private:
  Basis basis_;  // first: the others are made from it
  double use_;
  MemberDesign design_;
  MemberSearch members_;
  Topics topics_;
};

inline Proof prove(const Cases& cases, std::vector<Combination> all, const std::string& set, const Basis& basis,
                   Standards which, std::vector<Row> further = {}) {
  Search search(cases.analysis(), basis, which);
  std::vector<const Response*> parts;
  for (std::size_t i = 0; i < cases.size(); ++i) parts.push_back(&cases[i]);
  search.take(parts, all);
  return search.proof(std::move(all), set, std::move(further));
}

/// With sway, bows and kinks where the basis asks for them and the girder can be given them; where not, the stability
/// rows and words say so.
template <class = void>  // a template, so that a program may compile it once
Proof prove_as_asked(const Cases& cases, std::vector<Combination> all, const std::string& set, const Basis& basis,
                     Standards which) {
  validate(basis);
  const Stability& asked = basis.stability;
  const Girder& g = cases.analysis().girder();
  const bool bows = asked.imperfections, kinks = asked.checked && !g.splices.empty();
  const bool can = (bows || kinks) && can_be_imperfect(g), sways = asked.sway.height > 0.0;
  if (!can && !sways) return prove(cases, std::move(all), set, basis, which);
  ImperfectCases with =
      sways ? with_sway(cases, all, asked.sway) : bows ? with_imperfections(cases, all) : with_kinks(cases, all);
  if (sways && can)
    with = bows ? with_imperfections(with.cases, with.combinations) : with_kinks(with.cases, with.combinations);
  std::vector<Row> further = rows_of_unstable(with);
  return prove(with.cases, std::move(with.combinations), set, basis, which, std::move(further));
}

#ifdef BAYWORK_SOLVER_ELSEWHERE  // see the end of solve/frame_solver.hpp
extern template Proof prove_as_asked<void>(const Cases&, std::vector<Combination>, const std::string&, const Basis&,
                                           Standards);
#endif

}  // namespace detail

/// Checks every bar by the standard of its material, EN 1999-1-1 (aluminium) or EN 1993-1-1 (steel), in every
/// combination of the set. With `which` set to one standard, bars of the other family are outside the scope.
inline Proof by_material(const Cases& cases, const CombinationSet& set, const Basis& basis = {},
                         Standards which = Standards::by_material) {
  require_method(set, which);
  return detail::prove_as_asked<void>(cases, combinations(set, cases.kinds()), words(set), basis, which);
}

/// The same of one response as it was solved: its loads are taken as design loads.
inline Proof by_material(const Response& response, const Basis& basis = {}, Standards which = Standards::by_material) {
  const Cases alone(response.analysis(), {response}, {{response.name(), Nature::permanent, ""}});
  return detail::prove_as_asked<void>(alone, {{response.name() + ", as solved", {1.0}}},
                                "one, as solved; its loads are taken as design loads", basis, which);
}

/// Allowable stresses of the Aluminum Design Manual after ANSI E1.2, for round aluminium tubes; others are outside the
/// scope. Asks for a set of unfactored loads, such as asce7::allowable_stress(). Low confidence: see allowable::label.
inline Proof allowable_stress(const Cases& cases, const CombinationSet& set, const Basis& basis = {}) {
  return by_material(cases, set, basis, Standards::allowable_stress);
}
inline Proof allowable_stress(const Response& response, const Basis& basis = {}) {
  return by_material(response, basis, Standards::allowable_stress);
}

/// EN 1999-1-1 for aluminium bars; others are outside the scope.
inline Proof en1999(const Cases& cases, const CombinationSet& set, const Basis& basis = {}) {
  return by_material(cases, set, basis, Standards::aluminium);
}
inline Proof en1999(const Response& response, const Basis& basis = {}) {
  return by_material(response, basis, Standards::aluminium);
}

/// EN 1993-1-1 for steel bars; others are outside the scope.
inline Proof en1993(const Cases& cases, const CombinationSet& set, const Basis& basis = {}) {
  return by_material(cases, set, basis, Standards::steel);
}
inline Proof en1993(const Response& response, const Basis& basis = {}) {
  return by_material(response, basis, Standards::steel);
}

}  // namespace baywork::verify
