// SPDX-License-Identifier: MIT
// A load table as text: its assumptions first, then spans against patterns, then what governs.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/girder/connector_words.hpp>
#include <baywork/rating/load_table.hpp>

namespace baywork::rating {

namespace detail {

/// What the table's loads are checked for, and what they are not.
inline std::string words_of_checks(const LoadTable& t) {
  using baywork::text::number;
  const verify::Basis& basis = t.terms.terms.basis;
  std::string checked = "Checked: every bar, by " + verify::words(t.terms.terms.standards, basis) +
                        (basis.use < 1.0 ? ", worn: " + number(basis.use) + " of every resistance" : "");
  std::string not_checked = ". Not checked: ";
  if (!basis.joints.checked) {
    not_checked += "joints, welds, ";
  } else {
    checked += "; joints of round tubes" + std::string(basis.joints.throat > 0.0 ? " and their welds" : "") +
               ", by EN 1993-1-8 7.4";
    if (!(basis.joints.throat > 0.0)) not_checked += "welds, ";
  }
  if (is_described(t.connector))
    checked += "; splices, in every chord " + words_of(t.connector);
  else if (t.spliced)
    not_checked += "splices (their connectors are not described), ";
  if (!basis.stability.checked) {
    not_checked += "stability of the whole, ";
  } else {
    checked += std::string("; chord pairs as columns and built-up struts, by EN 1993-1-1 6.3.1 and 6.4") +
               (basis.stability.by_eigenvalue ? " with the frame's eigenvalue" : "") +
               (basis.stability.imperfections ? ", bows and kinks of 5.3.3 in every combination"
                                              : ", without bows, with what splices push on faces (5.3.3 (4))");
    const verify::InitialSway& sway = basis.stability.sway;
    if (sway.height > 0.0)
      checked += "; stands out of plumb by 1/" + number(1.0 / verify::angle_of(sway), 4) +
                 " to all four sides, of what is placed and of the load (EN 1993-1-1 and EN 1999-1-1 5.3.2)";
    not_checked += sway.height > 0.0 ? "stability of what the girder stands on, "
                                     : "sway of what the girder hangs from or stands on, ";
  }
  return checked + not_checked + "supports.";
}

}  // namespace detail

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
  out.push_back("Loads are characteristic; the load counts as " + std::string(name(terms.nature)) +
                ". Factors: " + words(terms.set) + ".");
  out.push_back(detail::words_of_checks(t));
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
                (fit_of(t.connector).slack > 0.0 ? ", slack of splices with it" : "") +
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
  // rows of a face or a station are of no bar
  const bool of_bar = a.row.address.has_role || a.row.member != no_member;
  std::string what = a.row.chord.text() + (a.row.chord.text().empty() || of_bar ? "" : " chord");
  if (!a.row.face.text().empty()) what += (what.empty() ? "" : " ") + a.row.face.text() + " face" + (of_bar ? "," : "");
  if (of_bar)
    what += (what.empty() ? "" : " ") + std::string(a.row.address.has_role ? name(a.row.address.role) : "bar");
  if (a.verdict == Verdict::outside_scope) return "outside the scope: " + what + ", " + a.row.reason;
  const bool splice = a.row.check == verify::Check::splice;
  return (a.verdict == Verdict::nothing_left ? "nothing left: " : "") + what + ": " + name(a.row.check) +
         (splice ? std::string(", ") + a.row.reason : "") + ", " + a.row.standard + " " + a.row.clause +
         (a.row.softened ? ", beside a weld" : "") +
         (!a.jumps ? ""
          : a.beyond.check == verify::Check::outside_scope
              ? std::string("; beyond it outside the scope: ") + a.beyond.reason
              : "; the utilisation leaps there");
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
