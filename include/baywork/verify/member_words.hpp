// SPDX-License-Identifier: MIT
// What the checks of bars take for granted, in words: the basis as it was chosen.
#pragma once

#include <string>
#include <vector>

#include <baywork/core/text.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify::detail {

inline std::string length_words(const BucklingLengths& lengths) {
  const std::string where =
      "between joints, of chords between the stations that hold them. They hold for bars whose ends stay in place.";
  if (lengths.rule == LengthRule::system) return "Buckling lengths are system lengths times their factors: " + where;
  return "Buckling lengths are system lengths times their factors, in braced faces of steel less by EN 1993-1-1 BB.1 "
         "(0.9, thin braces 0.75; diagonals and posts welded all round): " +
         where;
}

/// What the words depend on besides the basis: the bars of a girder.
struct BarsOfGirder {
  bool aluminium = false, steel = false;
  bool unspecified_welding = false, welded_along = false, welded_across = false;  ///< any aluminium bar
};

inline void add_aluminium_words(const Basis& basis, const BarsOfGirder& bars, std::vector<std::string>& says) {
  using baywork::text::number;
  const Choices& c = basis.choices;
  says.push_back("EN 1999-1-1: gamma_M1 = " + number(basis.aluminium.gamma_M1) +
                 ", gamma_M2 = " + number(basis.aluminium.gamma_M2) + " (nationally determined).");
  says.push_back(
      std::string("Every joint is welded: aluminium bars are softened over their whole section at welded "
                  "ends, chords at every station where a bar joins them or modules meet, over the footprints "
                  "and the extent of 6.1.6.3 beside them") +
      (c.softened == SoftenedMetal::arcs
           ? "; round chords over the arcs of their footprints and that extent, with as much opposite."
           : "."));
  says.push_back(
      c.welds == WeldsOnWave::where_they_are
          ? "Welds lie where they are on the buckling wave of pinned bars, and of others that do not sway and "
            "whose buckling length goes from end to end; else in its middle, on the safe side."
          : "Buckling of welded chords and cross members takes their welds as lying in the middle of the "
            "buckling wave, on the safe side; that of pinned bars takes them where they are.");
  if (c.round == en1999::RoundForm::components)
    says.push_back("Two moments of a round bar count as 6.2.9.2 and 6.3.3.1 have them word by word.");
  if (c.axial_exponent == en1999::AxialExponent::by_chi)
    says.push_back("Exponents of axial force in 6.3.3.1 rise with chi, at least 0.8.");
  if (c.heat.interpass_celsius > 60.0)
    says.push_back("Welds are laid at up to " + number(c.heat.interpass_celsius) + " degrees Celsius between runs.");
  if (c.heat.heat_paths != 0) says.push_back("Welds have " + std::to_string(c.heat.heat_paths) + " heat paths.");
  if (bars.welded_along)
    says.push_back("Welds along bars soften what they hold and the extent of 6.1.6.3 to both sides of it.");
  if (bars.welded_across)
    says.push_back(
        "Welds across bars soften their whole section over what they hold and the extent of 6.1.6.3 beside it; the "
        "welds themselves are not checked.");
  if (bars.unspecified_welding) says.push_back("Welding is taken as MIG where the material does not say.");
}

inline void add_member_words(const Basis& basis, const BarsOfGirder& bars, Words& out) {
  using baywork::text::number;
  std::vector<std::string>& says = out.assumptions;
  says.push_back(length_words(basis.lengths));
  if (bars.aluminium) add_aluminium_words(basis, bars, says);
  if (bars.steel)
    says.push_back("EN 1993-1-1: gamma_M0 = " + number(basis.steel.gamma_M0) +
                   ", gamma_M1 = " + number(basis.steel.gamma_M1) + " (nationally determined); C_m " +
                   (basis.choices.moment_factors == MomentFactorRule::one
                        ? "= 1 (safe side)."
                        : "of Table B.3, at least 0.9 for bars that may sway."));
}

}  // namespace baywork::verify::detail
