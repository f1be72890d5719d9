// SPDX-License-Identifier: MIT
// Load tables: one row for each span, allowable loads of several patterns beside each other.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/rating/allowable.hpp>
#include <baywork/rating/patterns.hpp>

namespace baywork::rating {

/// What a table is made under.
struct TableTerms {
  Terms terms{};  ///< a deflection limit without a length takes that of the pattern's part of the girder
  std::vector<Pattern> patterns{patterns_between_supports.begin(), patterns_between_supports.end()};
  Loading loading{};
  /// There before any load; its weight is deducted.
  std::vector<LoadCase> placed{LoadCase{"self-weight", Nature::permanent, {self_weight()}, {}}};
  double gravity = 9.81;  ///< m/s², behind the kg; 10 is also used (common practice)
  DeflectionOf shown = DeflectionOf::variable;
  std::string orientation = "as described, z up";  ///< printed in the head
};

/// One pattern on one span.
struct TableCell {
  Pattern pattern = Pattern::uniform;
  Allowable allowable{};
  double each = 0;        ///< allowable load of each point [N], or per metre of a uniform one [N/m]; characteristic
  double total = 0;       ///< [N]
  double length = 0;      ///< of the loaded part [m]
  double deflection = 0;  ///< at that load, of the part that the terms show [m]
};
struct TableRow {
  double span = 0;  ///< length of the girder [m]
  std::vector<TableCell> cells;
};

/// Owns all it says.
struct LoadTable {
  TableTerms terms{};
  std::vector<TableRow> rows;
  std::string girder;     ///< of the first row, in words
  std::string supports;   ///< of all rows, in words
  bool spliced = false;   ///< any row
  Connector connector{};  ///< of the first row with splices
};

namespace detail {

inline std::string words_of_girder(const Girder& g) {
  std::string out = std::to_string(g.chords.size()) + " chords " + g.chords[0].bar.text();
  for (const Chord& c : g.chords)
    if (c.bar.text() != g.chords[0].bar.text()) out += ", " + c.name + " " + c.bar.text();
  return out;
}

inline std::string words_of_supports(const Girder& g) {
  switch (g.supports.way) {
    case Supports::Way::individual: return "joints held one by one, as described";
    case Supports::Way::simply_supported: return "lower chords held at both ends";
    case Supports::Way::hung: return "upper chords hung at the places described, held sideways there";
    case Supports::Way::cantilever: return "all chords clamped at the first station";
    case Supports::Way::continuous: return "lower chords held at the places described";
  }
  return "";
}

inline TableRow table_row(const Analysis& analysis, const TableTerms& t) {
  TableRow row{analysis.girder().span(), std::vector<TableCell>(t.patterns.size())};
  std::vector<PatternLoad> loads;
  for (const Pattern p : t.patterns) loads.push_back(pattern_load(analysis, p, t.loading));
  const auto rate_all = [&](const Rater& rater, double length) {
    for (std::size_t i = 0; i < loads.size(); ++i) {
      const PatternLoad& l = loads[i];
      if (length > 0.0 && l.length() != length) continue;
      const Allowable a = rater.allowable(l.unit);
      const double deflection = t.shown == DeflectionOf::whole ? a.deflection : a.variable_deflection;
      row.cells[i] = {l.pattern, a, a.factor, a.factor * l.total(), l.length(), deflection};
    }
  };
  const auto with = [&](const Terms& terms, double length) {
    if (t.placed.empty())
      rate_all(Rater(analysis, terms), length);
    else
      rate_all(Rater(analysis.solve(t.placed), terms), length);
  };
  if (!t.terms.deflection || t.terms.deflection->length > 0.0) {
    with(t.terms, 0.0);
    return row;
  }
  // one limit for each length of a loaded part
  std::vector<double> lengths;
  for (const PatternLoad& l : loads) {
    bool met = false;
    for (const double known : lengths) met = met || known == l.length();
    if (!met) lengths.push_back(l.length());
  }
  for (const double length : lengths) {
    Terms own = t.terms;
    own.deflection->length = length;
    with(own, length);
  }
  return row;
}

}  // namespace detail

/// A table over anything that girder_of makes a girder of: spans in metres, numbers of bays. Every row is solved and
/// verified anew: no row is taken from another. Throws BadDescription for a girder that has no place for a pattern.
template <class Argument, class GirderOf>
LoadTable load_table(const std::vector<Argument>& arguments, GirderOf girder_of, TableTerms terms = {}) {
  if (arguments.empty() || terms.patterns.empty())
    fail<BadDescription>("load table", arguments.empty() ? "no span is given" : "no pattern is given",
                         "one or more of each is accepted");
  require::positive(terms.gravity, "load table", "gravity");
  LoadTable out;
  out.terms = std::move(terms);
  for (const Argument& a : arguments) {
    const Analysis analysis{girder_of(a)};
    if (out.rows.empty()) {
      out.girder = detail::words_of_girder(analysis.girder());
      out.supports = detail::words_of_supports(analysis.girder());
    }
    if (!out.spliced && !analysis.girder().splices.empty()) {
      out.spliced = true;
      out.connector = analysis.girder().connector;
    }
    out.rows.push_back(detail::table_row(analysis, out.terms));
  }
  return out;
}

}  // namespace baywork::rating
