// SPDX-License-Identifier: MIT
// What an allowable load is, what limits it, and how it is printed.
#pragma once

#include <cstdint>
#include <limits>
#include <ostream>
#include <string>

#include <baywork/core/text.hpp>
#include <baywork/verify/row.hpp>

namespace baywork::rating {

/// What an allowable load is limited by, or why it is no number.
enum class Verdict : std::uint8_t {
  member,         ///< a check of a bar reaches 1
  topic,          ///< a check beyond single bars does: a joint, a weld, a splice, a chord pair
  deflection,     ///< the deflection limit is reached first
  nothing_left,   ///< what is placed already fails, or deflects too much
  not_limited,    ///< nothing is reached up to Terms::most
  outside_scope,  ///< a bar, or what bars make, is not covered by the checks: no load is given
};
inline const char* name(Verdict v) {
  switch (v) {
    case Verdict::member: return "a bar";
    case Verdict::topic: return "a joint, splice or chord pair";
    case Verdict::deflection: return "deflection";
    case Verdict::nothing_left: return "nothing left";
    case Verdict::not_limited: return "not limited";
    case Verdict::outside_scope: return "outside the scope";
  }
  return "";
}

/// How a search spares itself work: a part is searched only below the least crossing found so far, or every one in
/// every combination by itself, for comparison.
enum class Search : std::uint8_t { below_least, every_bar };

/// Owns all it says: it may outlive girder and analysis.
struct Allowable {
  Verdict verdict = Verdict::outside_scope;
  /// Characteristic load as a multiple of the unit load; 0 where nothing is left or a bar is outside the scope, and
  /// Terms::most where nothing limits it.
  double factor = 0;
  /// The governing check at that load: its utilisation is 1, or just below. With the verdict `deflection` the worst
  /// check there; with `nothing_left` that of what is placed; with `outside_scope` the bar. None where !has_row.
  verify::Row row{};
  bool has_row = false;
  std::string combination;  ///< in words, of the row; with the bow that is in it
  /// The utilisation leaps past 1 at this load, where a check begins (compression) or a cross-section changes its
  /// class, or the scope of the checks ends: `beyond` is the worst check a millionth above.
  bool jumps = false;
  verify::Row beyond{};
  /// Greatest displacement of any chord's joint or bay middle at this load [m], characteristic: of all actions, and of
  /// those that are not permanent, slack of splices with it. That of what is placed where nothing is left.
  double deflection = 0, variable_deflection = 0;
  double deflection_limit = std::numeric_limits<double>::infinity();  ///< [m]

  bool is_load() const noexcept {
    return verdict == Verdict::member || verdict == Verdict::topic || verdict == Verdict::deflection;
  }
};

/// The verdict with its load factor, the governing check with its numbers, both sides of a leap, the deflection.
inline std::ostream& operator<<(std::ostream& out, const Allowable& a) {
  using baywork::text::number;
  if (a.is_load())
    out << "allowable load factor " << number(a.factor) << ", limited by " << name(a.verdict);
  else if (a.verdict == Verdict::not_limited)
    out << "not limited up to the load factor " << number(a.factor);
  else
    out << name(a.verdict);
  if (a.has_row) out << '\n' << a.row;
  if (!a.combination.empty()) out << "\nin " << a.combination;
  if (a.jumps) out << "\nthe utilisation leaps at this load; just above it: " << a.beyond;
  return out << "\ndeflection " << baywork::text::quantity(a.deflection, 1e-3, "mm", 4) << ", of variable loads "
             << baywork::text::quantity(a.variable_deflection, 1e-3, "mm", 4);
}

}  // namespace baywork::rating
