// SPDX-License-Identifier: MIT
// Which standards a proof asks, which sets of factors go with them, and their names for print.
#pragma once

#include <cstdint>
#include <string>

#include <baywork/core/error.hpp>
#include <baywork/core/text.hpp>
#include <baywork/load/load_case.hpp>
#include <baywork/verify/basis.hpp>

namespace baywork::verify {

/// EN 1999-1-1 or EN 1993-1-1 by each bar's material; one of the two alone; or allowable stresses, which are given for
/// aluminium. Bars of the other family are then outside the scope.
enum class Standards : std::uint8_t { by_material, aluminium, steel, allowable_stress };

/// Safety lies in the loads or in the stresses: a set of one method with resistances of the other has it twice, or not
/// at all.
inline void require_method(const CombinationSet& set, Standards which) {
  const bool by_stress = which == Standards::allowable_stress;
  if ((set.method == Method::allowable_stress) == by_stress) return;
  fail<BadDescription>("combination set " + set.name,
                       by_stress ? "its loads are factored, and stresses are to be allowable ones"
                                 : "its loads are unfactored, and resistances have partial factors",
                       by_stress ? "a set whose method is allowable_stress is accepted"
                                 : "a set whose method is limit_states, or verify::allowable_stress, is accepted");
}

/// "EN 1999-1-1 (gamma_M1 1.1, gamma_M2 1.25) or EN 1993-1-1 (gamma_M0 1, gamma_M1 1)".
inline std::string words(Standards which, const Basis& b) {
  using text::number;
  if (which == Standards::allowable_stress)
    return "allowable stresses, Aluminum Design Manual 2020 after ANSI E1.2 (Omega " + number(b.allowable.yielding) +
           " and " + number(b.allowable.rupture) + ", repeated use " + number(b.allowable.repeated_use) +
           "; low confidence, " + allowable::label + ")";
  const std::string aluminium =
      "EN 1999-1-1 (gamma_M1 " + number(b.aluminium.gamma_M1) + ", gamma_M2 " + number(b.aluminium.gamma_M2) + ")";
  const std::string steel =
      "EN 1993-1-1 (gamma_M0 " + number(b.steel.gamma_M0) + ", gamma_M1 " + number(b.steel.gamma_M1) + ")";
  if (which == Standards::aluminium) return aluminium;
  return which == Standards::steel ? steel : aluminium + " or " + steel;
}

}  // namespace baywork::verify
