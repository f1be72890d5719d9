// SPDX-License-Identifier: MIT
// Making a proof: every combination of a set through every check of every member.
#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/joint_design.hpp>
#include <baywork/verify/member_design.hpp>
#include <baywork/verify/proof.hpp>

namespace baywork::verify {

namespace detail {

inline std::vector<std::string> assumptions(const MemberDesign& design, const Basis& basis, const std::string& set) {
  using baywork::text::number;
  std::vector<std::string> out;
  out.push_back("Combinations: " + set + ".");
  out.push_back("Forces are those of linear first-order analysis without imperfections.");
  out.push_back(
      "Buckling lengths are system lengths times their factors: between joints, of chords between the stations that "
      "hold them. They hold for bars whose ends stay in place.");
  if (design.any_aluminium()) {
    out.push_back("EN 1999-1-1: gamma_M1 = " + number(basis.aluminium.gamma_M1) +
                  ", gamma_M2 = " + number(basis.aluminium.gamma_M2) + " (nationally determined).");
    out.push_back(
        "Every joint is welded: aluminium bars are softened over their whole section at welded ends, chords at every "
        "station where a bar joins them or modules meet, over the footprints and the extent of 6.1.6.3 beside them.");
    out.push_back(
        "Buckling of welded chords and cross members takes their welds as lying in the middle of the buckling wave, "
        "on the safe side; that of pinned bars takes them where they are.");
    if (design.any_unspecified_welding()) out.push_back("Welding is taken as MIG where the material does not say.");
  }
  if (design.any_steel())
    out.push_back("EN 1993-1-1: gamma_M0 = " + number(basis.steel.gamma_M0) +
                  ", gamma_M1 = " + number(basis.steel.gamma_M1) + " (nationally determined); C_m = 1 (safe side).");
  if (basis.joints.checked) {
    out.push_back(
        "Joints of round tubes: EN 1993-1-8 7.4, the least of what the joint may be (T or Y, X, K or N with each "
        "neighbour), 0.9 of it with bars in a second plane, moments where the bars' flexible length ends. At its ends "
        "the girder's chord is taken to go on beyond the joint or to be closed by a stiff plate.");
    if (design.any_aluminium())
      out.push_back(std::string("Aluminium joints: the same with the strengths beside welds, ") + en1999::joint_label +
                    ".");
    if (basis.joints.throat > 0.0)
      out.push_back("Welds: fillets all round every bar, throat " + number(basis.joints.throat * 1e3) +
                    " mm, under line loads spread evenly; EN 1993-1-8 7.3.1 may ask for the bar's full strength.");
  }
  out.push_back(
      "Clauses, constants and strengths are in part values from memory: compare them with the standards and national "
      "annexes in force.");
  return out;
}

inline std::vector<std::string> not_covered(const Joints& joints) {
  return {"Stability of the girder as a whole, sway of open faces, second-order effects and imperfections.",
          !joints.checked       ? "Joints, welds, splices and their connectors, eccentricities inside joints."
          : joints.throat > 0.0 ? "Splices and their connectors, eccentricities inside joints."
                                : "Welds, splices and their connectors, eccentricities inside joints.",
          "Supports, slings and what they hang from, local effects where loads are brought in.",
          "Lateral-torsional buckling of open sections, warping torsion, fatigue, fire, damage and wear.",
          "Deflection, vibration and overturning.",
          "The proof is an aid: it must be checked by a licensed engineer who has the standards."};
}

}  // namespace detail

namespace detail {

/// All that is searched: the bars and, where asked for, their joints.
class Search {
 public:
  Search(const Analysis& analysis, const Basis& basis, Standards which)
      : basis_(basis), members_(analysis, basis, which), joints_(analysis, basis, members_.not_designed()) {}

  void take(const Response& response, std::size_t combination) {
    members_.search(response, combination);
    joints_.search(response, combination);
  }
  Proof proof(std::vector<Combination> all, const std::string& set) const {
    std::vector<Row> rows = members_.rows();
    joints_.add_rows(rows);
    std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.member < b.member; });
    return {std::move(rows), std::move(all), assumptions(members_, basis_, set), not_covered(basis_.joints)};
  }

 private:
  Basis basis_;
  MemberDesign members_;
  JointDesign joints_;
};

}  // namespace detail

/// Checks every bar by the standard of its material, EN 1999-1-1 (aluminium) or EN 1993-1-1 (steel), in every
/// combination of the set. With `which` set to one standard, bars of the other family are outside the scope.
inline Proof by_material(const Cases& cases, const CombinationSet& set, const Basis& basis = {},
                         Standards which = Standards::by_material) {
  detail::Search search(cases.analysis(), basis, which);
  std::vector<Combination> all = combinations(set, cases.kinds());
  for (std::size_t i = 0; i < all.size(); ++i) search.take(cases.combine(all[i]), i);
  return search.proof(std::move(all), set.name + ", " + set.edition);
}

/// The same of one response as it was solved: its loads are taken as design loads.
inline Proof by_material(const Response& response, const Basis& basis = {}, Standards which = Standards::by_material) {
  detail::Search search(response.analysis(), basis, which);
  search.take(response, 0);
  return search.proof({{response.name() + ", as solved", {1.0}}},
                      "one, as solved; its loads are taken as design loads");
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
