// SPDX-License-Identifier: MIT
// Structural steels of EN 1993-1-1 Table 3.1: plates and open sections, hot-finished and cold-formed hollow sections.
#pragma once

#include <string>

#include <baywork/material/material.hpp>

namespace baywork::material {

namespace detail {

/// fy and fu [MPa] for walls up to 40 mm and above 40 up to 80 mm; a zero: none given.
struct SteelRow {
  double fy_40, fu_40, fy_80, fu_80;
};

/// A steel with the constants of EN 1993-1-1:2005 3.2.6 (there G is rounded to 81 000 N/mm²) and the density of
/// EN 1991-1-1 Table A.4. Welds do not soften it: the values beside welds are the parent metal's.
inline Material steel(const char* grade, const char* product_standard, Product product, const SteelRow& row) {
  Material m;
  m.name = std::string(grade) + ", " + name(product) + ", " + product_standard;
  m.source = "EN 1993-1-1:2005 Table 3.1, value from memory";
  m.family = Family::steel;
  m.product = product;
  m.E = 210e9;
  m.G = 81e9;
  m.density = 7850;
  m.thermal_expansion = 12e-6;
  m.steps.push_back({0.040, row.fy_40 * 1e6, row.fu_40 * 1e6, row.fy_40 * 1e6, row.fu_40 * 1e6});
  if (row.fy_80 > 0.0) m.steps.push_back({0.080, row.fy_80 * 1e6, row.fu_80 * 1e6, row.fy_80 * 1e6, row.fu_80 * 1e6});
  return m;
}

/// Hollow sections: EN 10210-1 where hot finished, EN 10219-1 where cold formed; a row of zeros: not listed.
inline Material hollow_steel(const char* grade, Product product, const SteelRow& hot, const SteelRow& cold) {
  if (product == Product::hot_finished && hot.fy_40 > 0.0) return steel(grade, "EN 10210-1", product, hot);
  if (product == Product::cold_formed && cold.fy_40 > 0.0) return steel(grade, "EN 10219-1", product, cold);
  fail<BadDescription>(std::string("material ") + grade, std::string("it is not listed as ") + name(product),
                       std::string(hot.fy_40 > 0.0 ? name(Product::hot_finished) : "") +
                           (hot.fy_40 > 0.0 && cold.fy_40 > 0.0 ? ", " : "") +
                           (cold.fy_40 > 0.0 ? name(Product::cold_formed) : "") + " is accepted");
}

}  // namespace detail

// Plates and open sections, EN 10025-2 and EN 10025-3.
inline Material s235() { return detail::steel("S235", "EN 10025-2", Product::rolled, {235, 360, 215, 360}); }
inline Material s275() { return detail::steel("S275", "EN 10025-2", Product::rolled, {275, 430, 255, 410}); }
/// fu 490 N/mm² up to 40 mm as corrected in 2009; the first print had 510.
inline Material s355() { return detail::steel("S355", "EN 10025-2", Product::rolled, {355, 490, 335, 470}); }
inline Material s420n() { return detail::steel("S420 N/NL", "EN 10025-3", Product::rolled, {420, 520, 390, 520}); }
inline Material s460n() { return detail::steel("S460 N/NL", "EN 10025-3", Product::rolled, {460, 540, 430, 540}); }

// Hollow sections. Cold-formed ones are listed for walls up to 40 mm.
inline Material s235h(Product p = Product::hot_finished) {
  return detail::hollow_steel("S235 H", p, {235, 360, 215, 340}, {235, 360, 0, 0});
}
inline Material s275h(Product p = Product::hot_finished) {
  return detail::hollow_steel("S275 H", p, {275, 430, 255, 410}, {275, 430, 0, 0});
}
inline Material s355h(Product p = Product::hot_finished) {
  return detail::hollow_steel("S355 H", p, {355, 510, 335, 490}, {355, 510, 0, 0});
}
inline Material s355nh(Product p = Product::hot_finished) {
  return detail::hollow_steel("S355 NH/NLH", p, {355, 490, 335, 470}, {355, 470, 0, 0});
}
/// Hot finished only; its cold-formed counterpart is S420 MH/MLH.
inline Material s420nh(Product p = Product::hot_finished) {
  return detail::hollow_steel("S420 NH/NLH", p, {420, 540, 390, 520}, {0, 0, 0, 0});
}
inline Material s420mh(Product p = Product::cold_formed) {
  return detail::hollow_steel("S420 MH/MLH", p, {0, 0, 0, 0}, {420, 500, 0, 0});
}
inline Material s460nh(Product p = Product::hot_finished) {
  return detail::hollow_steel("S460 NH/NLH", p, {460, 560, 430, 550}, {460, 550, 0, 0});
}

}  // namespace baywork::material
