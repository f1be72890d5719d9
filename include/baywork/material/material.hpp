// SPDX-License-Identifier: MIT
// What a bar is made of: elastic constants, and strengths that may step with the wall thickness.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>

namespace baywork::material {

enum class Family : std::uint8_t { steel, aluminium, other };

/// EN 1999-1-1 buckling class (material curve); steels and others carry `none`.
enum class BucklingClass : std::uint8_t { none, a, b };

/// How the product was made; strengths and buckling curves depend on it.
enum class Product : std::uint8_t {
  hot_finished,
  cold_formed,
  open_extrusion,
  hollow_extrusion,
  extruded_tube,
  drawn_tube,
  rod_or_bar,
  rolled,
  cast
};

inline const char* name(Product p) {
  switch (p) {
    case Product::hot_finished: return "hot-finished hollow section";
    case Product::cold_formed: return "cold-formed hollow section";
    case Product::open_extrusion: return "open extrusion";
    case Product::hollow_extrusion: return "hollow extrusion";
    case Product::extruded_tube: return "extruded tube";
    case Product::drawn_tube: return "drawn tube";
    case Product::rod_or_bar: return "rod or bar";
    case Product::rolled: return "rolled";
    case Product::cast: return "casting";
  }
  return "product";
}

/// What gave an aluminium alloy its strength decides what a weld takes away. `none`: welds take nothing (steel).
enum class AlloyGroup : std::uint8_t { none, annealed, work_hardened_5xxx, heat_treated_6xxx, heat_treated_7xxx };

enum class Welding : std::uint8_t { unspecified, mig, tig };

/// Strengths valid for walls up to and including `max_thickness` [m]; Pa.
struct StrengthStep {
  double max_thickness = 0;
  double yield = 0;         ///< fy (steel) or fo (aluminium)
  double ultimate = 0;      ///< fu
  double haz_yield = 0;     ///< fo,haz; equal to `yield` where welding does not soften
  double haz_ultimate = 0;  ///< fu,haz
};

struct Material {
  std::string name;    ///< "EN AW-6082 T6, extruded tube"
  std::string source;  ///< standard and table; says "value from memory" where it is one
  Family family = Family::other;
  BucklingClass buckling_class = BucklingClass::none;
  Product product = Product::hot_finished;
  double E = 0, G = 0;              ///< Pa
  double density = 0;               ///< kg/m³
  double thermal_expansion = 0;     ///< 1/K
  std::vector<StrengthStep> steps;  ///< by rising max_thickness
  AlloyGroup alloy_group = AlloyGroup::none;
  Welding welding = Welding::unspecified;  ///< the process that the values beside welds hold for, once said
};

/// The step that holds for a wall of `thickness` [m]. Throws BadDescription beyond the last one.
const StrengthStep& strength(const Material& m, double thickness);

/// Throws BadDescription unless every constant is finite, positive and in order.
void validate(const Material& m);

inline const StrengthStep& strength(const Material& m, double thickness) {
  for (const StrengthStep& s : m.steps)
    if (thickness <= s.max_thickness * (1.0 + 1e-12)) return s;
  const double last = m.steps.empty() ? 0.0 : m.steps.back().max_thickness;
  fail<BadDescription>("material " + m.name,
                       "no strength is given for a wall of " + text::quantity(thickness, 1e-3, "mm"),
                       "walls up to " + text::quantity(last, 1e-3, "mm") + " are accepted");
}

inline void validate(const Material& m) {
  const std::string place = "material " + (m.name.empty() ? std::string("without a name") : m.name);
  require::positive(m.E, place, "modulus of elasticity");
  require::positive(m.G, place, "shear modulus");
  require::not_negative(m.density, place, "density");
  require::finite(m.thermal_expansion, place, "thermal expansion");
  if (m.product == Product::cast)
    fail<BadDescription>(place, "it is a casting", "wrought products are accepted: castings have other rules");
  double before = 0;
  for (const StrengthStep& s : m.steps) {
    require::positive(s.max_thickness, place, "largest thickness of a strength step");
    require::positive(s.yield, place, "yield strength");
    require::positive(s.ultimate, place, "ultimate strength");
    require::positive(s.haz_yield, place, "yield strength beside welds");
    require::positive(s.haz_ultimate, place, "ultimate strength beside welds");
    if (!(s.max_thickness > before))
      fail<BadDescription>(place, "strength steps are not in order of thickness", "rising thicknesses are accepted");
    if (s.haz_yield > s.yield || s.haz_ultimate > s.ultimate)
      fail<BadDescription>(place, "the metal beside a weld is stronger than the parent metal",
                           "values up to the parent metal's are accepted");
    before = s.max_thickness;
  }
}

}  // namespace baywork::material
