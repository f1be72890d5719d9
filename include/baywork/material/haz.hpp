// SPDX-License-Identifier: MIT
// The heat-affected zone beside welds in aluminium: how weak, and how far.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include <baywork/material/material.hpp>

namespace baywork::material {

namespace detail {

/// What a welding process leaves of the table's values beside welds, for walls up to `limit` and beyond it.
struct HazReduction {
  double limit;  ///< [m]
  double below;
  double above;
};

inline HazReduction haz_reduction(AlloyGroup group, Welding process) {
  const bool heat_treated = group == AlloyGroup::heat_treated_6xxx || group == AlloyGroup::heat_treated_7xxx;
  if (!heat_treated && group != AlloyGroup::work_hardened_5xxx) return {0.015, 1.0, 1.0};
  if (process == Welding::mig) return {0.015, 1.0, heat_treated ? 0.8 : 0.9};
  return heat_treated ? HazReduction{0.006, 0.8, 0.64} : HazReduction{0.006, 1.0, 0.9};
}

}  // namespace detail

/// The material with its values beside welds for one process: EN 1999-1-1:2007 Table 3.2b, footnote on the HAZ values
/// (value from memory). The table is for MIG and walls up to 15 mm. TIG up to 6 mm: 0.8 times for heat-treated alloys
/// (6xxx, 7xxx), unchanged for work-hardened ones (5xxx). Thicker walls: a further 0.8 (6xxx, 7xxx) or 0.9 (5xxx).
/// Nothing is taken from temper O nor from steel. Said once: a second process throws.
inline Material welded_by(Material m, Welding process) {
  const std::string place = "material " + m.name;
  if (process == Welding::unspecified)
    fail<BadDescription>(place, "the welding process is not said", "MIG and TIG are accepted");
  if (m.welding != Welding::unspecified)
    fail<BadDescription>(place, "its welding process has been said before", "one process is accepted");
  m.welding = process;
  const detail::HazReduction r = detail::haz_reduction(m.alloy_group, process);
  std::vector<StrengthStep> steps;
  double before = 0;
  const auto add = [&steps](StrengthStep s, double up_to, double factor) {
    s.max_thickness = up_to;
    s.haz_yield *= factor;
    s.haz_ultimate *= factor;
    steps.push_back(s);
  };
  for (const StrengthStep& s : m.steps) {
    const bool splits = r.below > r.above && before < r.limit && r.limit < s.max_thickness;
    if (splits) add(s, r.limit, r.below);
    add(s, s.max_thickness, s.max_thickness <= r.limit ? r.below : r.above);
    before = s.max_thickness;
  }
  m.steps = std::move(steps);
  m.name += process == Welding::mig ? ", MIG" : ", TIG";
  return m;
}

/// How a weld's heat gets away, where it differs from the clause's case.
struct WeldHeat {
  int heat_paths = 0;             ///< of a fillet weld: plates that carry heat away; 0 stands for the usual number
  double interpass_celsius = 60;  ///< temperature of the metal before the next run [°C]
};

/// Extent b_haz [m] of the softened zone from a weld: EN 1999-1-1:2007 6.1.6.3 (value from memory).
///
/// MIG: 20, 30, 35, 40 mm for walls up to 6, 12, 25 mm and above; TIG up to 6 mm: 30 mm. `thickness` [m] is the mean of
/// the joined parts. It holds for butt welds (two heat paths) and for fillet welds with three; a fillet weld with n
/// paths takes 3 / n of it. Above 60 °C between runs it grows by 1 + (T - 60) / 120, in 7xxx alloys by
/// 1 + 1.5 (T - 60) / 120. Zero where welds do not soften (temper O, steel).
inline double haz_extent(const Material& m, double thickness, Welding process, const WeldHeat& heat = {}) {
  const auto place = [&] { return "heat-affected zone of " + m.name; };
  require::positive(thickness, place, "thickness [m]");
  require::finite(heat.interpass_celsius, place, "interpass temperature [°C]");
  if (heat.heat_paths < 0 || heat.heat_paths > 4)
    fail<BadDescription>(place(), "a weld with " + std::to_string(heat.heat_paths) + " heat paths",
                         "1 to 4, or 0 for the usual number, is accepted");
  if (process == Welding::unspecified)
    fail<BadDescription>(place(), "the welding process is not said", "MIG and TIG are accepted");
  if (m.alloy_group == AlloyGroup::none || m.alloy_group == AlloyGroup::annealed) return 0.0;

  const double t = thickness * (1.0 - 1e-12);
  double extent = t <= 0.006 ? 0.020 : (t <= 0.012 ? 0.030 : (t <= 0.025 ? 0.035 : 0.040));
  if (process == Welding::tig) {
    if (t > 0.006)
      fail<OutsideScope>(place(), "TIG welding of a " + text::quantity(thickness, 1e-3, "mm") + " wall",
                         "EN 1999-1-1 6.1.6.3 gives TIG values up to 6 mm");
    extent = 0.030;
  }
  const double over = heat.interpass_celsius > 60.0 ? (heat.interpass_celsius - 60.0) / 120.0 : 0.0;
  extent *= 1.0 + (m.alloy_group == AlloyGroup::heat_treated_7xxx ? 1.5 : 1.0) * over;
  return heat.heat_paths == 0 ? extent : extent * 3.0 / heat.heat_paths;
}

}  // namespace baywork::material
