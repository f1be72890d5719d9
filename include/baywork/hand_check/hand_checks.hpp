// SPDX-License-Identifier: MIT
// Every headline number of a response beside its hand calculation.
#pragma once

#include <algorithm>
#include <cstddef>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/hand_check/chord_rows.hpp>
#include <baywork/hand_check/deflection_rows.hpp>
#include <baywork/hand_check/face_rows.hpp>
#include <baywork/hand_check/row.hpp>
#include <baywork/hand_check/splice_panel.hpp>
#include <baywork/hand_check/statics_rows.hpp>
#include <baywork/hand_check/twist_rows.hpp>

namespace baywork {

/// A stiffness that rows use, with its formula.
struct HandBasis {
  std::string quantity, unit;
  double value = 0;
  std::string formula, numbers;  ///< in symbols, and with numbers put in
};

struct HandChecks {
  std::string response;
  std::vector<HandBasis> basis;
  std::vector<HandCheck> rows;

  /// No valid row differs by more than it promises.
  bool agree() const {
    return std::all_of(rows.begin(), rows.end(), [](const HandCheck& row) { return row.agrees(); });
  }
};

namespace detail {
inline void add_basis(HandChecks& out, std::string quantity, const char* unit, const closed_form::ClosedForm<>& f) {
  if (f.numbers.empty()) return;
  out.basis.push_back({std::move(quantity), unit, f.value, closed_form::symbols(f.formula),
                       closed_form::numbers_in(f.formula, f.numbers, hand_digits)});
}
}  // namespace detail

/// Sums, reactions, deflections, the largest chord force, each face's diagonal or portal moments, chords across splices,
/// and twist. What no closed form covers has a row that says why.
inline HandChecks hand_checks(const Response& r) {
  const HandModel h(r);
  HandChecks out;
  out.response = r.name();
  if (h.girder.not_straight.empty()) {
    detail::add_basis(out, "EI, vertical", "N m^2", h.girder.EI[0]);
    detail::add_basis(out, "EI, horizontal", "N m^2", h.girder.EI[1]);
    for (const HandFace& f : h.girder.faces) {
      detail::add_basis(out, "S of the " + f.name + " face", "N", f.stiffness);
      detail::add_basis(out, "S of its rigid posts", "N", f.frame);
    }
    detail::add_basis(out, "S, vertical", "N", h.girder.S[0]);
    detail::add_basis(out, "S, horizontal", "N", h.girder.S[1]);
    detail::add_basis(out, "GJ", "N m^2", h.torsion.GJ);
  }
  detail::add_sums(r, h, out.rows);
  for (const PlaneBeam* p : {&h.vertical, &h.horizontal}) detail::add_reactions(r, h, *p, out.rows);
  for (const PlaneBeam* p : {&h.vertical, &h.horizontal}) detail::add_deflections(r, h, *p, out.rows);
  detail::add_chord_force(r, h, out.rows);
  detail::add_faces(r, h, out.rows);
  detail::add_splice_panels(r, h, out.rows);
  detail::add_twist(r, h, out.rows);
  return out;
}

/// SI units throughout, so that every line can be recomputed as it stands.
inline std::ostream& operator<<(std::ostream& out, const HandChecks& t) {
  out << "By hand, " << t.response << " (SI units; difference against the hand calculation)\n";
  for (const HandBasis& b : t.basis)
    out << "  " << text::left(b.quantity, 22) << " = " << b.formula << " = " << b.numbers << " = "
        << text::number(b.value, 7) << ' ' << b.unit << '\n';
  std::size_t what = 8, where = 5;
  for (const HandCheck& r : t.rows) {
    what = (std::max)(what, r.quantity.size());
    where = (std::max)(where, r.where.size());
  }
  out << "  " << text::left("quantity", what) << "  " << text::left("where", where)
      << "        solver       by hand  unit  difference  promised\n";
  for (const HandCheck& r : t.rows) {
    const bool known = is_finite(r.closed_form), measured = known && is_finite(r.difference());
    out << "  " << text::left(r.quantity, what) << "  " << text::left(r.where, where) << "  "
        << text::right(r.printed(r.solver), 12) << "  "
        << text::right(known ? r.printed(r.closed_form) : "-", 12) << "  " << text::left(r.unit, 4) << "  "
        << text::right(measured ? text::fixed(100 * r.difference(), 3) + " %" : "-", 10) << "  "
        << text::right(r.valid ? text::number(100 * r.expected) + " %" : "-", 8) << '\n';
    if (!r.numbers.empty())
      out << "      " << r.formula << " = " << r.numbers << " = " << r.printed(r.closed_form) << '\n';
    if (!r.valid)
      out << "      " << r.reason << '\n';
    else if (!r.agrees())
      out << "      DIFFERS by more than promised\n";
  }
  return out;
}

}  // namespace baywork
