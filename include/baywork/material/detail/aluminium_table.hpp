// SPDX-License-Identifier: MIT
// The rows of EN 1999-1-1 Table 3.2b (and one of Table 3.2a) that girders are made of.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include <baywork/material/material.hpp>

namespace baywork::material::detail {

constexpr unsigned bit(Product p) { return 1U << static_cast<unsigned>(p); }

// The table's product forms: EP/O, EP/H, ET, ER/B, DT.
inline constexpr unsigned ep_open = bit(Product::open_extrusion);
inline constexpr unsigned ep_hollow = bit(Product::hollow_extrusion);
inline constexpr unsigned ep = ep_open | ep_hollow;
inline constexpr unsigned et = bit(Product::extruded_tube);
inline constexpr unsigned erb = bit(Product::rod_or_bar);
inline constexpr unsigned dt = bit(Product::drawn_tube);
inline constexpr unsigned sheet = bit(Product::rolled);

/// Walls up to and including `up_to` [mm], above those of the row before it for the same product; MPa.
struct AluminiumRow {
  std::string_view alloy;
  std::string_view temper;
  unsigned products;
  double up_to;
  double fo, fu, fo_haz, fu_haz;
  BucklingClass buckling_class;
  bool from_memory;  ///< not compared with a print of the table
};

inline constexpr BucklingClass class_a = BucklingClass::a;
inline constexpr BucklingClass class_b = BucklingClass::b;

inline constexpr auto aluminium_rows = std::to_array<AluminiumRow>({
    {"5083", "O", et | ep | erb, 200, 110, 270, 110, 270, class_b, false},
    {"5083", "H12", dt, 10, 200, 280, 135, 270, class_b, false},
    {"5083", "H14", dt, 5, 235, 300, 135, 270, class_a, false},
    {"5754", "O", et | ep | erb, 25, 80, 180, 80, 180, class_b, true},
    {"5754", "O", sheet, 100, 80, 190, 80, 190, class_b, true},
    {"6005A", "T6", ep_open | erb, 5, 225, 270, 115, 165, class_a, false},
    {"6005A", "T6", ep_open | erb, 10, 215, 260, 115, 165, class_a, false},
    {"6005A", "T6", ep_open | erb, 25, 200, 250, 115, 165, class_a, false},
    {"6005A", "T6", ep_hollow | et, 5, 215, 255, 115, 165, class_a, false},
    {"6005A", "T6", ep_hollow | et, 10, 200, 250, 115, 165, class_a, false},
    {"6060", "T5", ep | et | erb, 5, 120, 160, 50, 80, class_b, false},
    {"6060", "T5", ep, 25, 100, 140, 50, 80, class_b, false},
    {"6060", "T6", ep | et | erb, 15, 140, 170, 60, 100, class_a, false},
    {"6060", "T6", dt, 20, 160, 215, 60, 100, class_a, false},
    {"6060", "T64", ep | et | erb, 15, 120, 180, 60, 100, class_a, false},
    {"6060", "T66", ep | et | erb, 3, 160, 215, 65, 110, class_a, false},
    {"6060", "T66", ep, 25, 150, 195, 65, 110, class_a, false},
    {"6061", "T6", ep | et | erb, 20, 240, 260, 115, 175, class_a, false},
    {"6061", "T6", dt, 20, 240, 290, 115, 175, class_a, true},
    {"6063", "T5", ep | et | erb, 3, 130, 175, 60, 100, class_b, false},
    {"6063", "T5", ep, 25, 110, 160, 60, 100, class_b, false},
    {"6063", "T6", ep | et | erb, 25, 160, 195, 65, 110, class_a, false},
    {"6063", "T6", dt, 20, 190, 220, 65, 110, class_a, false},
    {"6063", "T66", ep | et | erb, 10, 200, 245, 75, 130, class_a, false},
    {"6063", "T66", ep, 25, 180, 225, 75, 130, class_a, false},
    {"6063", "T66", dt, 20, 195, 230, 75, 130, class_a, false},
    {"6106", "T6", ep, 10, 200, 250, 95, 160, class_a, false},
    {"6082", "T4", ep | et | erb, 25, 110, 205, 100, 160, class_b, true},
    {"6082", "T5", ep, 5, 230, 270, 125, 185, class_b, true},
    {"6082", "T6", ep | et, 5, 250, 290, 125, 185, class_a, true},
    {"6082", "T6", ep | et, 15, 260, 310, 125, 185, class_a, true},
    {"6082", "T6", erb, 20, 250, 295, 125, 185, class_a, true},
    {"6082", "T6", erb, 150, 260, 310, 125, 185, class_a, true},
    {"6082", "T6", dt, 5, 255, 310, 125, 185, class_a, true},
    {"6082", "T6", dt, 20, 240, 310, 125, 185, class_a, true},
    {"7020", "T6", ep | et | erb, 15, 290, 350, 205, 280, class_a, true},
    {"7020", "T6", ep | et | erb, 40, 275, 350, 205, 280, class_a, true},
    {"7020", "T6", dt, 20, 280, 350, 205, 280, class_a, true},
});

constexpr AlloyGroup group_of(std::string_view alloy, std::string_view temper) {
  if (temper == "O") return AlloyGroup::annealed;
  if (alloy.front() == '5') return AlloyGroup::work_hardened_5xxx;
  return alloy.front() == '6' ? AlloyGroup::heat_treated_6xxx : AlloyGroup::heat_treated_7xxx;
}

/// "extruded tube, drawn tube": what the table lists for an alloy and temper.
inline std::string products_of(std::string_view alloy, std::string_view temper) {
  unsigned all = 0;
  for (const AluminiumRow& row : aluminium_rows)
    if (row.alloy == alloy && row.temper == temper) all |= row.products;
  std::string out;
  for (unsigned i = 0; i <= static_cast<unsigned>(Product::cast); ++i)
    if (const Product p = static_cast<Product>(i); (all & bit(p)) != 0)
      out += (out.empty() ? "" : ", ") + std::string(name(p));
  return out;
}

/// The material of all rows for one alloy, temper and product form.
inline Material from_table(std::string_view alloy, std::string_view temper, Product product) {
  Material m;
  const std::string grade = "EN AW-" + std::string(alloy) + " " + std::string(temper);
  m.name = grade + ", " + name(product);
  m.family = Family::aluminium;
  m.product = product;
  m.E = 70e9;
  m.G = 27e9;
  m.density = 2700;
  m.thermal_expansion = 23e-6;
  m.alloy_group = group_of(alloy, temper);
  bool from_memory = false;
  for (const AluminiumRow& row : aluminium_rows) {
    if (row.alloy != alloy || row.temper != temper || (row.products & bit(product)) == 0) continue;
    m.steps.push_back({row.up_to * 1e-3, row.fo * 1e6, row.fu * 1e6, row.fo_haz * 1e6, row.fu_haz * 1e6});
    m.buckling_class = row.buckling_class;
    from_memory = from_memory || row.from_memory;
  }
  if (m.steps.empty())
    fail<BadDescription>("material " + grade, std::string("it is not listed as ") + name(product),
                         products_of(alloy, temper) + " is accepted");
  m.source = std::string("EN 1999-1-1:2007 Table ") + (product == Product::rolled ? "3.2a" : "3.2b") +
             (from_memory ? ", value from memory" : "");
  return m;
}

}  // namespace baywork::material::detail
