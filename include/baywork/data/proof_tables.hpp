// SPDX-License-Identifier: MIT
// Tables of proofs and ratings: rows with their formulas, what a proof says, load tables, interaction curves.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/data/table.hpp>
#include <baywork/rating/interaction.hpp>
#include <baywork/rating/load_table.hpp>
#include <baywork/rating/table_text.hpp>
#include <baywork/verify/proof.hpp>

namespace baywork {

/// One row for each row of the proof, in its order; `formula` is the text that can be recomputed.
inline DataTable proof_row_data(const verify::Proof& proof) {
  DataTable t{"proof_rows",
              {"utilisation", "check", "standard", "clause", "place", "member", "role", "combination", "beside_weld",
               "demand", "resistance", "formula", "notes", "reason"},
              {}};
  for (const verify::Row& r : proof.rows()) {
    const bool checked = r.check != verify::Check::outside_scope;
    detail::RowFiller row(t);
    row << r.utilisation << name(r.check) << detail::word_cell(r.standard) << detail::word_cell(r.clause) << place(r)
        << (r.member == no_member ? DataCell{} : DataCell{r.member + 1})
        << (r.address.has_role ? DataCell{std::string(name(r.address.role))} : DataCell{})
        << (checked ? DataCell{proof.combinations()[r.combination].name} : DataCell{}) << r.softened;
    if (checked)
      row << r.demand << r.resistance << verify::text(r);
    else
      row << DataCell{} << DataCell{} << DataCell{};
    row << detail::word_cell(notes(r)) << detail::word_cell(r.reason);
  }
  return t;
}

/// What belongs beside the rows, one line each: the verdict, the combinations in their order, what is taken for granted
/// and what is not covered.
inline DataTable proof_term_data(const verify::Proof& proof) {
  DataTable t{"proof_terms", {"topic", "text"}, {}};
  detail::RowFiller(t) << "verdict" << proof.verdict();
  for (const Combination& c : proof.combinations()) detail::RowFiller(t) << "combination" << c.name;
  for (const std::string& s : proof.assumptions()) detail::RowFiller(t) << "taken for granted" << s;
  for (const std::string& s : proof.not_covered()) detail::RowFiller(t) << "not covered" << s;
  return t;
}

namespace detail {

/// The columns that put_allowable fills, behind those given.
inline std::vector<std::string> with_allowable(std::vector<std::string> columns) {
  for (const char* c : {"verdict", "check", "standard", "clause", "place", "combination", "leaps"})
    columns.emplace_back(c);
  return columns;
}
inline void put_allowable(RowFiller& row, const rating::Allowable& a) {
  row << name(a.verdict);
  if (a.has_row)
    row << name(a.row.check) << word_cell(a.row.standard) << word_cell(a.row.clause) << place(a.row)
        << word_cell(a.combination);
  else
    row << DataCell{} << DataCell{} << DataCell{} << DataCell{} << DataCell{};
  row << a.jumps;
}

}  // namespace detail

/// One row for each span and pattern: the load (characteristic) and what governs. No load is told where none is
/// allowed or nothing limits it: `verdict` says which. Never read without load_table_term_data.
inline DataTable load_table_data(const rating::LoadTable& table) {
  DataTable t{"load_table",
              detail::with_allowable({"span_m", "pattern", "each_N", "uniform_N_per_m", "total_N", "loaded_length_m",
                                      "deflection_m", "deflection_limit_m"}),
              {}};
  for (const rating::TableRow& r : table.rows)
    for (const rating::TableCell& c : r.cells) {
      const bool uniform = rating::points(c.pattern) == 0, load = c.allowable.is_load();
      const auto where = [](bool there, double v) { return there ? detail::number_cell(v) : DataCell{}; };
      detail::RowFiller row(t);
      row << r.span << name(c.pattern) << where(load && !uniform, c.each) << where(load && uniform, c.each)
          << where(load, c.total) << c.length << where(load, c.deflection)
          << where(is_finite(c.allowable.deflection_limit), c.allowable.deflection_limit);
      detail::put_allowable(row, c.allowable);
    }
  return t;
}

/// What must stand beside a load table, one line each.
inline DataTable load_table_term_data(const rating::LoadTable& table) {
  DataTable t{"load_table_terms", {"text"}, {}};
  for (const std::string& s : rating::assumptions(table)) detail::RowFiller(t) << s;
  return t;
}

/// One row for each point of the curve, in its order.
inline DataTable interaction_data(const std::vector<rating::InteractionPoint>& curve) {
  DataTable t{"interaction", detail::with_allowable({"vertical_N_per_m", "horizontal_N_per_m"}), {}};
  for (const rating::InteractionPoint& p : curve) {
    detail::RowFiller row(t);
    row << p.vertical << p.horizontal;
    detail::put_allowable(row, p.allowable);
  }
  return t;
}

}  // namespace baywork
