// SPDX-License-Identifier: MIT
// A load table as text: its assumptions first, then spans against patterns, then what governs.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/rating/load_table.hpp>

namespace baywork::rating {

/// What must stand above a table for it to be used; one line each.
inline std::vector<std::string> assumptions(const LoadTable& t) {
  using baywork::text::number;
  const Terms& terms = t.terms.terms;
  std::vector<std::string> out;
  out.push_back("A calculation aid: to be checked by a licensed engineer. No load certificate.");
  out.push_back("Girder: " + t.girder + "; supports: " + t.supports + "; orientation: " + t.terms.orientation + ".");
  std::string placed;
  for (const LoadCase& c : t.terms.placed)
    placed += (placed.empty() ? "" : ", ") + c.name + " (" + name(c.nature) + ")";
  out.push_back(placed.empty() ? "Nothing is placed before the load: the self-weight is NOT deducted."
                               : "Already deducted, with their factors: " + placed + ".");
  out.push_back("Loads are characteristic; the load counts as " + std::string(name(terms.nature)) + ". Factors: " +
                words(terms.set) + ".");
  const verify::Joints& joints = terms.basis.joints;
  out.push_back("Checked: every bar, by " + verify::words(terms.standards, terms.basis) +
                (terms.basis.use < 1.0 ? ", worn: " + number(terms.basis.use) + " of every resistance" : "") +
                (!joints.checked       ? ". Not checked: joints, "
                 : joints.throat > 0.0 ? "; joints of round tubes and their welds, by EN 1993-1-8 7.4. Not checked: "
                                       : "; joints of round tubes, by EN 1993-1-8 7.4. Not checked: welds, ") +
                "splices, stability of the whole, supports.");
  std::string chords;
  for (const ChordRef& c : t.terms.loading.chords)
    chords += (chords.empty() ? "" : ", ") + (c.word.empty() ? "chord " + std::to_string(c.index + 1) : c.word);
  out.push_back("Loads are shared equally by " + (chords.empty() ? std::string("the lower chords") : chords) +
                (t.terms.loading.points_at == PointsAt::stations
                     ? ", point loads at the nearest station."
                     : ", point loads at their places, also between stations."));
  out.push_back("'each' is the load of EACH point, or per metre where uniform; 'total' is the sum of all. kg: kN / " +
                number(t.terms.gravity) + " m/s2. Rounded down.");
  out.push_back(std::string("Deflection: at the load given, characteristic, of ") + name(t.terms.shown) +
                (terms.deflection
                     ? "; limit: length/" + number(terms.deflection->ratio) + " of " + name(terms.deflection->of) + "."
                     : "; no limit is set."));
  out.push_back("Loads are static: no dynamic factor is included.");
  out.push_back(
      "Loads of different columns must NOT be added; spans between rows or beyond them must NOT be interpolated.");
  return out;
}

namespace detail {

/// What governs, without place: the same note for many cells.
inline std::string note(const Allowable& a) {
  if (a.verdict == Verdict::deflection) return "deflection limit";
  if (a.verdict == Verdict::not_limited) return "not limited";
  if (!a.has_row) return "nothing left: what is placed deflects too much";
  std::string where = a.row.chord.text().empty() ? "" : a.row.chord.text() + " ";
  if (!a.row.face.text().empty()) where += a.row.face.text() + " face, ";
  const std::string bar = where + (a.row.address.has_role ? name(a.row.address.role) : "bar");
  if (a.verdict == Verdict::outside_scope) return std::string("outside the scope: ") + bar + ", " + a.row.reason;
  return (a.verdict == Verdict::nothing_left ? "nothing left: " : "") + bar + ": " + name(a.row.check) + ", " +
         a.row.standard + " " + a.row.clause + (a.row.softened ? ", beside a weld" : "") +
         (a.jumps ? "; the utilisation leaps there" : "");
}

}  // namespace detail

/// v rounded towards zero: a printed load is never more than the one found, in either direction. What is within 1e-9 of
/// the next step takes it.
inline std::string rounded_down(double v, int decimals) {
  const double scale = std::pow(10.0, decimals);
  return baywork::text::fixed(std::trunc(v * scale * (1.0 + 1e-9)) / scale, decimals);
}

/// The head, blocks of up to three patterns, and the notes of the last column of each.
inline std::ostream& operator<<(std::ostream& out, const LoadTable& t) {
  using baywork::text::left;
  using baywork::text::right;
  static constexpr std::size_t width = 47, in_block = 3;
  out << "ALLOWABLE LOADS\n";
  for (const std::string& s : assumptions(t)) out << "  " << s << '\n';
  std::vector<std::string> notes;
  const auto number_of = [&notes](const std::string& s) {
    const auto at = std::find(notes.begin(), notes.end(), s);
    const auto i = static_cast<std::size_t>(at - notes.begin());
    if (at == notes.end()) notes.push_back(s);
    return i + 1;
  };
  const std::size_t columns = t.rows.empty() ? 0 : t.rows[0].cells.size();
  for (std::size_t from = 0; from < columns; from += in_block) {
    const std::size_t to = (std::min)(columns, from + in_block);
    out << '\n' << left("", 8);
    for (std::size_t c = from; c < to; ++c) out << left(std::string("  | ") + name(t.rows[0].cells[c].pattern), width);
    out << '\n' << right("span", 8);
    for (std::size_t c = from; c < to; ++c)
      out << "  |" << right(points(t.rows[0].cells[c].pattern) == 0 ? "each/m" : "each", 8) << right("each", 8)
          << right("total", 9) << right("total", 8) << right("defl.", 7) << right("by", 4);
    out << '\n' << right("m", 8);
    for (std::size_t c = from; c < to; ++c)
      out << "  |" << right("kN", 8) << right("kg", 8) << right("kN", 9) << right("kg", 8) << right("mm", 7)
          << left("", 4);
    out << '\n';
    for (const TableRow& r : t.rows) {
      out << right(baywork::text::fixed(r.span, 2), 8);
      for (std::size_t c = from; c < to; ++c) {
        const TableCell& cell = r.cells[c];
        const std::string by = "(" + std::to_string(number_of(detail::note(cell.allowable))) + ")";
        out << "  |";
        if (cell.allowable.is_load())
          out << right(rounded_down(cell.each / 1e3, 2), 8) << right(rounded_down(cell.each / t.terms.gravity, 0), 8)
              << right(rounded_down(cell.total / 1e3, 2), 9) << right(rounded_down(cell.total / t.terms.gravity, 0), 8)
              << right(baywork::text::fixed(1e3 * cell.deflection, 1), 7);
        else
          out << right(name(cell.allowable.verdict), 40);
        out << right(by, 4);
      }
      out << '\n';
    }
  }
  out << '\n';
  for (std::size_t i = 0; i < notes.size(); ++i) out << "  (" << i + 1 << ") " << notes[i] << '\n';
  return out;
}

}  // namespace baywork::rating
