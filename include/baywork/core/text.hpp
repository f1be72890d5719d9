// SPDX-License-Identifier: MIT
// Numbers as text: one way to print, so that everything printed can be recomputed.
#pragma once

#include <array>
#include <charconv>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <version>

#include <baywork/core/scalar.hpp>

namespace baywork::text {

/// Printed numbers with a point: a program may have set a locale with a decimal comma.
inline std::string with_point(std::string s) {
  for (char& c : s)
    if (c == ',') c = '.';
  return s;
}

/// v with `digits` significant digits (1 to 17), the shortest of fixed and scientific form; locale-independent sign
/// and digits. "-0" prints as "0".
template <class S>
std::string number(const S& v, int digits = 6) {
  double x = value_of(v);
  if (x == 0.0) x = 0.0;
  std::array<char, 64> buffer{};
  const int n = std::snprintf(buffer.data(), buffer.size(), "%.*g", digits, x);
  return with_point({buffer.data(), static_cast<std::size_t>(n > 0 ? n : 0)});
}

/// v with as few digits as still give the same number when read back (at most 17): for data, where `number` is for people.
template <class S>
std::string exact(const S& v) {
  const double x = value_of(v);
#ifdef __cpp_lib_to_chars
  std::array<char, 32> buffer{};
  return {buffer.data(), std::to_chars(buffer.data(), buffer.data() + buffer.size(), x).ptr};
#else
  std::array<char, 64> buffer{};
  for (int digits = 15; digits <= 17; ++digits) {
    std::snprintf(buffer.data(), buffer.size(), "%.*g", digits, x);
    if (std::strtod(buffer.data(), nullptr) == x) break;  // read in the locale that it was written in
  }
  return with_point(buffer.data());
#endif
}

/// v with a fixed number of decimals; what rounds to nothing prints without a sign.
template <class S>
std::string fixed(const S& v, int decimals) {
  std::array<char, 400> buffer{};
  const int n = std::snprintf(buffer.data(), buffer.size(), "%.*f", decimals, value_of(v));
  std::string out = with_point({buffer.data(), static_cast<std::size_t>(n > 0 ? n : 0)});
  if (out.find_first_not_of("-0.") == std::string::npos && !out.empty() && out[0] == '-') out.erase(0, 1);
  return out;
}

/// `number` in another unit: quantity(0.0603, 1e-3, "mm") is "60.3 mm".
template <class S>
std::string quantity(const S& v, double unit, const char* name, int digits = 6) {
  return number(value_of(v) / unit, digits) + " " + name;
}

/// s, padded with spaces to at least `width` characters: left or right aligned.
inline std::string left(std::string s, std::size_t width) {
  if (s.size() < width) s.append(width - s.size(), ' ');
  return s;
}
inline std::string right(std::string s, std::size_t width) {
  if (s.size() < width) s.insert(0, width - s.size(), ' ');
  return s;
}

}  // namespace baywork::text
