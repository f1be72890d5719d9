// SPDX-License-Identifier: MIT
// What an allowable load is asked under: factors, partial factors, the load's nature, a deflection limit.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include <baywork/core/error.hpp>
#include <baywork/load/en1990.hpp>
#include <baywork/verify/prove.hpp>

namespace baywork::rating {

/// Which part of the deflection a limit holds: of all actions, or of those that are not permanent.
enum class DeflectionOf : std::uint8_t { whole, variable };
inline const char* name(DeflectionOf d) { return d == DeflectionOf::whole ? "all loads" : "variable loads"; }

/// At most length / `ratio`. Values used: 100 to 200 for temporary structures, 250 to 400 for screens and permanent
/// ones (common practice).
struct DeflectionLimit {
  double ratio = 200;
  DeflectionOf of = DeflectionOf::whole;
  double length = 0;  ///< [m]; 0: the girder's span
};

/// All that stands behind an allowable load but the girder and the load themselves.
struct Terms {
  CombinationSet set = en1990::ultimate();
  CombinationSet service = en1990::characteristic();  ///< for deflections
  verify::Basis basis{};
  verify::Standards standards = verify::Standards::by_material;
  Nature nature = Nature::imposed;  ///< of the load asked for
  std::string alternative{};        ///< as in LoadCase: cases with this word are never there together with it
  std::optional<DeflectionLimit> deflection{};
  double most = 1e9;  ///< the load factor up to which is searched; beyond it a load is "not limited"
};

inline void validate(const Terms& t) {
  require::positive(t.most, "allowable load", "the greatest load factor");
  verify::require_method(t.set, t.standards);
  if (!(t.set.factor(t.nature, true) > 0.0))
    fail<BadDescription>("allowable load",
                         std::string("its nature is ") + name(t.nature) + ", which " + t.set.name + " leaves out",
                         "a nature with a factor above zero is accepted");
  if (!t.deflection) return;
  require::positive(t.deflection->ratio, "allowable load", "span over deflection");
  require::not_negative(t.deflection->length, "allowable load", "length of the deflection limit");
}

}  // namespace baywork::rating
