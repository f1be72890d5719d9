// SPDX-License-Identifier: MIT
// One row of a proof: numbers alone, from which its text, the formula with its numbers, is made on demand.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <ostream>
#include <string>

#include <baywork/core/address.hpp>
#include <baywork/core/text.hpp>
#include <baywork/frame/girder_model.hpp>
#include <baywork/verify/clause_row.hpp>

namespace baywork::verify {

/// What a row checks. `outside_scope` is a row that could not be checked.
enum class Check : std::uint8_t {
  axial,
  bending,
  shear,
  torsion,
  bending_and_axial,
  buckling,
  beam_column,
  joint,
  weld,
  chord_pair,
  built_up,
  splice,
  outside_scope
};
inline constexpr std::size_t n_member_checks = 7;  ///< those of a bar by itself, the first ones

inline const char* name(Check c) {
  switch (c) {
    case Check::axial: return "axial force";
    case Check::bending: return "bending";
    case Check::shear: return "shear";
    case Check::torsion: return "torsion";
    case Check::bending_and_axial: return "bending and axial force";
    case Check::buckling: return "buckling";
    case Check::beam_column: return "buckling with bending";
    case Check::joint: return "joint with the chord";
    case Check::weld: return "weld";
    case Check::chord_pair: return "chord pair as a column";
    case Check::built_up: return "chord pair as one strut";
    case Check::splice: return "splice";
    case Check::outside_scope: return "outside the scope";
  }
  return "";
}

/// Unit in which a number is printed.
struct Unit {
  const char* name;
  double size;  ///< in SI units
};
inline constexpr Unit plain{"", 1.0}, kilonewton{" kN", 1e3}, kilonewton_metre{" kNm", 1e3}, metre{" m", 1.0},
    square_millimetre{" mm2", 1e-6}, megapascal{" MPa", 1e6}, kilonewton_per_square_metre{" kN/m2", 1e3};

/// A number of a formula: its symbol (static text), its value in SI units and the unit it is printed in. A number that
/// the formula does not use is printed beside it, unless it has no symbol.
struct Number {
  const char* symbol;
  double value;
  Unit unit;
};

/// A girder's own name of a face or chord, cut after 31 characters: rows own all they print and allocate nothing.
struct PartName {
  std::array<char, 32> characters{};

  PartName() = default;
  explicit PartName(const std::string& s) { s.copy(characters.data(), characters.size() - 1); }
  std::string text() const { return characters.data(); }
};

/// One check at its governing place. A value of its own: texts by pointer are static.
struct Row {
  const char* standard = "";  ///< "EN 1999-1-1:2007"
  const char* clause = "";    ///< "6.2.9.3"
  Check check = Check::outside_scope;
  std::size_t member = no_member;  ///< of the frame; no_member where the row is of a face, a station or the girder
  Address address{};
  double x = 0;                 ///< from the member's start [m]
  std::size_t combination = 0;  ///< of Proof::combinations()
  bool softened = false;        ///< beside a weld that softens
  double demand = 0;            ///< [N, Nm], or the left side of an interaction formula
  double resistance = 1;        ///< [N, Nm], or 1
  double utilisation = 0;       ///< fulfilled at 1 and below; infinity where nothing resists or nothing is known
  const char* reason = "";      ///< why it is outside the scope; else what to hold against it
  /// The left side. {a}, {b}, ... are the numbers in their order; a plain factor of exactly 1 is left out.
  const char* formula = "";
  std::array<Number, 20> numbers{};  ///< n_numbers of them; the others are zeros, which cost least to make
  std::size_t n_numbers = 0;
  PartName face{}, chord{};

  void add(const char* symbol, double value, Unit unit = plain) {
    if (n_numbers < numbers.size()) numbers[n_numbers++] = {symbol, value, unit};
  }
  void take(const ClauseRow& answer) {
    demand = answer.effect;
    resistance = answer.resistance;
    utilisation = answer.utilisation;
  }
  bool fulfilled() const noexcept { return utilisation <= 1.0; }
};

namespace detail {

inline std::string token(std::size_t i) {
  return std::string("{") + static_cast<char>('a' + static_cast<int>(i)) + "}";
}

inline void replace_all(std::string& in, const std::string& what, const std::string& by) {
  for (std::size_t at = in.find(what); at != std::string::npos; at = in.find(what, at + by.size()))
    in.replace(at, what.size(), by);
}

/// The formula without its factors of 1, and without parentheses that then hold one number only.
inline std::string shortened(const Row& row) {
  std::string out = row.formula;
  for (std::size_t i = 0; i < row.n_numbers; ++i) {
    if (row.numbers[i].unit.name[0] != '\0' || row.numbers[i].value != 1.0) continue;
    replace_all(out, token(i) + "*", "");
    replace_all(out, "/" + token(i), "");
  }
  for (std::size_t at = out.find("({"); at != std::string::npos; at = out.find("({", at + 1)) {
    const bool alone = out.compare(at + 3, 2, "})") == 0 && (at + 5 == out.size() || out[at + 5] != '^') &&
                       (at == 0 || out[at - 1] != 't');  // not sqrt({a})
    if (alone) out = out.substr(0, at) + out.substr(at + 1, 3) + out.substr(at + 5);
  }
  return out;
}

/// What is left of a resistance may be nothing: there a utilisation has no number.
inline constexpr const char* no_resistance = "no resistance";

inline std::string printed(const Number& n) {
  return is_infinite(n.value) ? no_resistance : text::number(n.value / n.unit.size) + n.unit.name;
}

}  // namespace detail

/// "N_Ed/N_o,Rd = 12.3456 kN/159.943 kN = 0.0771875": the formula, its numbers and the utilisation. For a row outside
/// the scope its reason.
inline std::string text(const Row& row) {
  if (row.check == Check::outside_scope) return std::string("outside the scope: ") + row.reason;
  const std::string formula = detail::shortened(row);
  std::string symbols = formula, values = formula;
  for (std::size_t i = 0; i < row.n_numbers; ++i) {
    detail::replace_all(symbols, detail::token(i), row.numbers[i].symbol);
    detail::replace_all(values, detail::token(i), detail::printed(row.numbers[i]));
  }
  return symbols + " = " + values + " = " +
         (is_infinite(row.utilisation) ? detail::no_resistance : baywork::text::number(row.utilisation));
}

/// The utilisation with four decimals, for tables; "-" for a row outside the scope.
inline std::string utilisation_of(const Row& row) {
  if (row.check == Check::outside_scope) return "-";
  return is_infinite(row.utilisation) ? detail::no_resistance : baywork::text::fixed(row.utilisation, 4);
}

/// The numbers behind those of the formula: "L_cr = 0.5 m, lambda = 0.34"; empty where there are none.
inline std::string notes(const Row& row) {
  std::string out;
  for (std::size_t i = 0; i < row.n_numbers; ++i) {
    if (row.numbers[i].symbol[0] == '\0' || std::string(row.formula).find(detail::token(i)) != std::string::npos)
      continue;
    out += (out.empty() ? "" : ", ") + std::string(row.numbers[i].symbol) + " = " + detail::printed(row.numbers[i]);
  }
  return out;
}

/// "bay 12, bottom left chord, 0.25 m from its start".
inline std::string place(const Row& row) {
  PartNames names;
  if (row.address.face >= 0) names.faces.resize(static_cast<std::size_t>(row.address.face) + 1, row.face.text());
  if (row.address.chord >= 0) names.chords.resize(static_cast<std::size_t>(row.address.chord) + 1, row.chord.text());
  std::string out = text_of(row.address, names);
  if (row.member != no_member && row.check != Check::outside_scope)
    out += ", " + baywork::text::number(row.x, 4) + " m from its start" + (row.softened ? " (beside a weld)" : "");
  return out;
}

/// Place, check, standard and clause, formula with numbers, and the numbers behind it.
inline std::ostream& operator<<(std::ostream& out, const Row& row) {
  out << place(row) << ": ";
  if (row.check == Check::outside_scope) return out << text(row);
  const std::string more = notes(row);
  return out << name(row.check) << ", " << row.standard << ' ' << row.clause << ", combination " << row.combination + 1
             << ": " << text(row) << (more.empty() ? "" : "; ") << more << (row.reason[0] == '\0' ? "" : "; ")
             << row.reason;
}

}  // namespace baywork::verify
