// SPDX-License-Identifier: MIT
// What a proof takes for granted: partial factors, buckling lengths and how joints are welded, all of them data.
#pragma once

#include <cstddef>
#include <string>

#include <baywork/core/address.hpp>
#include <baywork/core/error.hpp>
#include <baywork/verify/allowable_tube.hpp>
#include <baywork/material/haz.hpp>
#include <baywork/verify/en1993_class.hpp>
#include <baywork/verify/en1999_buckling.hpp>
#include <baywork/verify/weld.hpp>

namespace baywork::verify {

/// Buckling length over system length, about the bar's own axes. Bars of a face: about_z buckles in the plane of the
/// face, about_y out of it. Chords: about_y buckles up or down, about_z sideways.
struct BucklingFactors {
  double about_y = 1, about_z = 1;
};

/// What a buckling length is before the factors by role: the system length, or what EN 1993-1-1 BB.1 allows for steel
/// bars of braced faces (see code_lengths()). Chords and cross members of open faces keep their system length in both.
enum class LengthRule : bool { system, code };

/// Factors by role. 1.0, the system length, holds for bars whose ends do not move sideways; in open faces less must not
/// be taken.
struct BucklingLengths {
  LengthRule rule = LengthRule::system;
  BucklingFactors chord{}, cross_member{}, diagonal{}, diaphragm{}, user{};

  const BucklingFactors& of(Role role) const noexcept {
    switch (role) {
      case Role::chord: return chord;
      case Role::cross_member: return cross_member;
      case Role::diagonal: return diagonal;
      case Role::diaphragm: return diaphragm;
      case Role::user: return user;
    }
    return user;
  }
};

/// Whether the joints of cross members and braces with the chords are checked, and their welds. Only round tubes of
/// tested proportions can be: with joints asked for, every other joint is outside the scope and the proof fails.
struct Joints {
  bool checked = false;
  double throat = 0;  ///< of the fillet all round every bar [m]; 0: welds are not checked
  en1999::Filler filler = en1999::Filler::en_5356;
  bool welds_alone = false;  ///< the chords' walls are left out: by allowable stresses they are outside the scope
};

/// Stands under a girder that may be out of plumb, EN 1993-1-1 and EN 1999-1-1 5.3.2 (3): see with_sway().
struct InitialSway {
  double height = 0;        ///< h [m], from their feet to the girder's top; 0: no sway is asked for
  std::size_t columns = 1;  ///< m: stands in a row that carry at least half of their mean load
};

/// Whether the girder as a whole is checked for stability: each pair of chords with the face between as one column, and
/// as a built-up strut. The frame's own forces stay those of first order unless `imperfections` adds bows to every
/// combination (with_imperfections()) and `sway` level forces (with_sway()). The bracing's force at splices, N/100, is
/// in every combination in any case (with_kinks()). Critical loads come from closed forms, or from the frame's own
/// eigenvalue (critical_factor(): slower), which also knows girders and holds that closed forms do not.
struct Stability {
  bool checked = false;
  bool imperfections = false;
  bool by_eigenvalue = false;
  InitialSway sway{};
};

/// What used equipment is often counted at (common practice; the owner's inspection says what holds).
inline constexpr double worn_use = 0.85;

/// How much of a chord's section the welds of bars on it soften: all of it, or the arcs that reach b_haz beyond their
/// footprints (round chords; see en1999::softened_arc()). The bars themselves are softened all round in both.
enum class SoftenedMetal : bool { whole_section, arcs };

/// Where on a bar's buckling wave its welded ends lie, EN 1999-1-1 6.3.3.3: in its middle (safe side), or where they
/// are, for bars that do not sway and whose buckling length goes from end to end. Pinned bars are always taken so.
enum class WeldsOnWave : bool { in_the_middle, where_they_are };

/// C_m of EN 1993-1-1 Table B.3: 1, which holds for every diagram, or the table's for the moments at both ends and in
/// the middle of a bar, at least 0.9 for bars that may sway.
enum class MomentFactorRule : bool { one, table };

/// Choices between forms that the standards leave open. All defaults are on the safe side but `round`, which is the
/// exact form of the standard's.
struct Choices {
  en1999::RoundForm round = en1999::RoundForm::resultant;
  en1999::AxialExponent axial_exponent = en1999::AxialExponent::fixed;
  SoftenedMetal softened = SoftenedMetal::whole_section;
  WeldsOnWave welds = WeldsOnWave::in_the_middle;
  material::WeldHeat heat{};  ///< of the welds at joints and along bars
  MomentFactorRule moment_factors = MomentFactorRule::one;
};

/// Nationally determined partial factors of both standards, safety factors of allowable stresses, buckling lengths,
/// choices, joints, the stability of the whole and wear.
struct Basis {
  en1999::PartialFactors aluminium{};
  en1993::PartialFactors steel{};
  allowable::SafetyFactors allowable{};
  BucklingLengths lengths{};
  Choices choices{};
  Joints joints{};
  Stability stability{};
  /// k_use, taken of every resistance of bars, joints, welds and connectors; `worn_use` or 1. Walls that have grown
  /// thinner are described as such (girder/worn.hpp).
  double use = 1;
};

inline void validate(const Basis& b) {
  const char* place = "basis of the proof";
  require::positive(b.aluminium.gamma_M1, place, "gamma_M1 of aluminium");
  require::positive(b.aluminium.gamma_M2, place, "gamma_M2 of aluminium");
  require::positive(b.aluminium.gamma_Mw, place, "gamma_Mw of aluminium");
  require::positive(b.aluminium.gamma_Mp, place, "gamma_Mp of aluminium");
  require::positive(b.steel.gamma_M6_ser, place, "gamma_M6,ser of steel");
  require::positive(b.steel.gamma_M0, place, "gamma_M0 of steel");
  require::positive(b.steel.gamma_M1, place, "gamma_M1 of steel");
  require::positive(b.steel.gamma_M2, place, "gamma_M2 of steel");
  require::positive(b.steel.gamma_M5, place, "gamma_M5 of steel");
  require::positive(b.allowable.yielding, place, "safety factor of yielding");
  require::positive(b.allowable.rupture, place, "safety factor of rupture");
  if (!(b.allowable.repeated_use > 0.0) || b.allowable.repeated_use > 1.0)
    fail<BadDescription>(place, "the factor of repeated use is " + text::number(b.allowable.repeated_use),
                         "above 0 and up to 1 is accepted");
  require::finite(b.choices.heat.interpass_celsius, place, "interpass temperature [°C]");
  if (b.choices.heat.heat_paths < 0 || b.choices.heat.heat_paths > 4)
    fail<BadDescription>(place, "welds with " + std::to_string(b.choices.heat.heat_paths) + " heat paths",
                         "1 to 4, or 0 for the usual number, is accepted");
  require::not_negative(b.joints.throat, place, "throat of the welds");
  if (!(b.use > 0.0) || b.use > 1.0)
    fail<BadDescription>(place, "the factor of use is " + text::number(b.use), "above 0 and up to 1 is accepted");
  if (b.joints.throat > 0.0 && !b.joints.checked)
    fail<BadDescription>(place, "a throat of the welds is given, but joints are not asked for",
                         "joints = {.checked = true, .throat = ...} is accepted");
  if (b.joints.welds_alone && !(b.joints.throat > 0.0))
    fail<BadDescription>(place, "welds alone are asked for, but no throat is given",
                         "joints = {.checked = true, .throat = ..., .welds_alone = true} is accepted");
  if ((b.stability.imperfections || b.stability.by_eigenvalue) && !b.stability.checked)
    fail<BadDescription>(place, "imperfections or an eigenvalue are asked for, but stability is not",
                         "stability = {.checked = true, .imperfections = true} is accepted");
  require::not_negative(b.stability.sway.height, place, "height of the stands");
  if (b.stability.sway.columns == 0)
    fail<BadDescription>(place, "initial sway of no columns", "one or more in a row is accepted");
  if (b.stability.sway.height > 0.0 && !b.stability.checked)
    fail<BadDescription>(place, "initial sway is asked for, but stability is not",
                         "stability = {.checked = true, .sway = {...}} is accepted");
  for (const Role r : {Role::chord, Role::cross_member, Role::diagonal, Role::diaphragm, Role::user}) {
    require::positive(b.lengths.of(r).about_y, place, "buckling length factor about y");
    require::positive(b.lengths.of(r).about_z, place, "buckling length factor about z");
  }
}

/// The basis with its factor of use in the partial and safety factors: resistances are values over gamma or Omega, and
/// gamma / k_use takes k_use of each. Its own factor of use is then 1.
inline Basis with_use(Basis b) {
  validate(b);
  for (double* gamma : {&b.aluminium.gamma_M1, &b.aluminium.gamma_M2, &b.aluminium.gamma_Mw, &b.aluminium.gamma_Mp,
                        &b.steel.gamma_M0, &b.steel.gamma_M1, &b.steel.gamma_M2, &b.steel.gamma_M5,
                        &b.steel.gamma_M6_ser, &b.allowable.yielding, &b.allowable.rupture})
    *gamma /= b.use;
  b.use = 1;
  return b;
}

}  // namespace baywork::verify
