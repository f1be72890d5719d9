// SPDX-License-Identifier: MIT
// Numbers as they stand on drawings: three digits, zeros kept, a true minus, the unit that leaves digits before the
// point.
#pragma once

#include <cmath>
#include <string>

#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>

namespace baywork::show {

inline const std::string minus = "\xE2\x88\x92";
/// A number as text with a true minus.
inline std::string with_minus(const std::string& number) {
  return number[0] == '-' ? minus + number.substr(1) : number;
}

/// "2.50", "−13.1", "0": `digits` significant ones, never an exponent for sizes that drawings show.
inline std::string digits_of(double v, int digits = 3) {
  const double size = magnitude(v);
  if (!(size > 0.0)) return "0";
  if (!is_finite(v)) return v < 0.0 ? minus + "\xE2\x88\x9E" : "\xE2\x88\x9E";  // infinity
  const int power = static_cast<int>(std::floor(std::log10(size) + 1e-9));
  const int decimals = digits - 1 - power;
  if (decimals > 9 || power > 12) return baywork::text::number(v, digits);
  return with_minus(baywork::text::fixed(v, decimals < 0 ? 0 : decimals));
}

/// One unit for many values, so that it is said once.
struct OneUnit {
  const char* name = "";
  double size = 1;  ///< in SI units

  /// As many as leave three digits of `greatest`.
  int decimals(double greatest) const {
    int out = 0;
    for (double most = magnitude(greatest) / size; most < 99.95 && out < 4; most *= 10.0) ++out;
    return greatest == 0.0 ? 2 : out;
  }
  /// Three digits of sizes about the greatest, fewer of small ones.
  std::string operator()(double v, double greatest) const {
    return with_minus(baywork::text::fixed(v / size, decimals(greatest)));
  }
};

/// In which of three units a size is written: a thousand of one is one of the next.
struct Units {
  const char* small;
  const char* middle;
  const char* large;
  double size_of_small = 1;  ///< in SI units

  /// The one that leaves one to three digits before the point; what would round to 1000 takes the next.
  OneUnit of(double v) const {
    const double in_small = magnitude(v / size_of_small);
    return in_small >= 999.5e3 ? OneUnit{large, 1e6 * size_of_small}
           : in_small >= 999.5 ? OneUnit{middle, 1e3 * size_of_small}
                               : OneUnit{small, size_of_small};
  }
  std::string operator()(double v) const {
    const OneUnit u = of(v);
    return digits_of(v / u.size) + ' ' + u.name;
  }
};
inline constexpr Units force_words{"N", "kN", "MN"}, moment_words{"Nm", "kNm", "MNm"},
    line_load_words{"N/m", "kN/m", "MN/m"}, pressure_words{"Pa", "kPa", "MPa"}, energy_words{"J", "kJ", "MJ"},
    turn_words{"mrad", "rad", "krad", 1e-3}, motion_words{"mm", "m", "km", 1e-3};

inline std::string capital(std::string s) {
  if (!s.empty() && s[0] >= 'a' && s[0] <= 'z') s[0] = static_cast<char>(s[0] - 'a' + 'A');
  return s;
}

/// The first of 1, 2 and 5 times a power of ten that is no less than v > 0: what a scale is divided by.
inline double round_step(double v) {
  const double ten = std::pow(10.0, std::floor(std::log10(v)));
  for (const double f : {1.0, 2.0, 5.0})
    if (f * ten >= v) return f * ten;
  return 10.0 * ten;
}

/// A length as a drawing gives it: "12.5 m", without needless zeros.
inline std::string metres(double v) { return baywork::text::number(v, 5) + " m"; }

}  // namespace baywork::show
