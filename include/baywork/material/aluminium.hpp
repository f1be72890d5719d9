// SPDX-License-Identifier: MIT
// Wrought aluminium alloys of EN 1999-1-1 with their strength beside welds.
#pragma once

#include <string>

#include <baywork/material/detail/aluminium_table.hpp>
#include <baywork/material/material.hpp>

namespace baywork::material {

// Each function gives the rows of EN 1999-1-1:2007 Table 3.2b (with A1) for one alloy, temper and product form, with
// the constants of clause 3.2.5. Walls beyond the table's thickness throw when their strength is asked for. A product
// form that the table does not list for the temper throws BadDescription. The values beside welds are for MIG welding
// and walls up to 15 mm; `welded_by` (haz.hpp) takes them to other cases.

inline Material en_aw_5083_o(Product p = Product::extruded_tube) { return detail::from_table("5083", "O", p); }
inline Material en_aw_5083_h12(Product p = Product::drawn_tube) { return detail::from_table("5083", "H12", p); }
inline Material en_aw_5083_h14(Product p = Product::drawn_tube) { return detail::from_table("5083", "H14", p); }
/// Product::rolled gives sheet and plate of Table 3.2a.
inline Material en_aw_5754_o(Product p = Product::extruded_tube) { return detail::from_table("5754", "O", p); }

inline Material en_aw_6005a_t6(Product p = Product::extruded_tube) { return detail::from_table("6005A", "T6", p); }
inline Material en_aw_6060_t5(Product p = Product::extruded_tube) { return detail::from_table("6060", "T5", p); }
inline Material en_aw_6060_t6(Product p = Product::extruded_tube) { return detail::from_table("6060", "T6", p); }
inline Material en_aw_6060_t64(Product p = Product::extruded_tube) { return detail::from_table("6060", "T64", p); }
inline Material en_aw_6060_t66(Product p = Product::extruded_tube) { return detail::from_table("6060", "T66", p); }
inline Material en_aw_6061_t6(Product p = Product::extruded_tube) { return detail::from_table("6061", "T6", p); }
inline Material en_aw_6063_t5(Product p = Product::extruded_tube) { return detail::from_table("6063", "T5", p); }
inline Material en_aw_6063_t6(Product p = Product::extruded_tube) { return detail::from_table("6063", "T6", p); }
inline Material en_aw_6063_t66(Product p = Product::extruded_tube) { return detail::from_table("6063", "T66", p); }
/// Listed for extruded profiles only.
inline Material en_aw_6106_t6(Product p = Product::hollow_extrusion) { return detail::from_table("6106", "T6", p); }
inline Material en_aw_6082_t4(Product p = Product::extruded_tube) { return detail::from_table("6082", "T4", p); }
/// Listed for extruded profiles only.
inline Material en_aw_6082_t5(Product p = Product::hollow_extrusion) { return detail::from_table("6082", "T5", p); }
/// The tube row below 5 mm is read as that of open and hollow profiles.
inline Material en_aw_6082_t6(Product p = Product::extruded_tube) { return detail::from_table("6082", "T6", p); }

inline Material en_aw_7020_t6(Product p = Product::extruded_tube) { return detail::from_table("7020", "T6", p); }

}  // namespace baywork::material
