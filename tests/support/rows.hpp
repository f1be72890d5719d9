// SPDX-License-Identifier: MIT
// Rows of a proof looked up, and the numbers that they print.
#pragma once

#include <cstddef>
#include <string>

#include <doctest/doctest.h>

#include <baywork/verify/proof.hpp>

/// Null where the member has none.
inline const baywork::verify::Row* find(const baywork::verify::Proof& p, std::size_t member, baywork::verify::Check c) {
  for (const baywork::verify::Row& r : p.rows())
    if (r.member == member && r.check == c) return &r;
  return nullptr;
}
/// 0 where there is no row.
inline double utilisation(const baywork::verify::Proof& p, std::size_t member, baywork::verify::Check c) {
  const baywork::verify::Row* r = find(p, member, c);
  return r == nullptr ? 0.0 : r->utilisation;
}

/// In SI units.
inline double number(const baywork::verify::Row& r, const std::string& symbol) {
  for (std::size_t i = 0; i < r.n_numbers; ++i)
    if (r.numbers[i].symbol == symbol) return r.numbers[i].value;
  FAIL("no number " << symbol << " in " << baywork::verify::text(r));
  return 0.0;
}
