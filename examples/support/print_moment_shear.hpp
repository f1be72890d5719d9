// SPDX-License-Identifier: MIT
// Moment against shear of one bay, as a table: half of the closed curve, the other half mirrors it.
#pragma once

#include <cstddef>
#include <iostream>
#include <vector>

#include "print_interaction.hpp"

namespace examples {

/// Prints the half with shear of one sign, from the greatest sagging moment to the greatest hogging one.
inline void print_moment_shear(const baywork::rating::Rater& rater, const baywork::rating::MomentShearTerms& terms) {
  using namespace baywork;
  const std::vector<rating::MomentShearPoint> domain = rating::moment_shear_domain(rater, terms);
  if (domain.empty()) {
    std::cout << "  nothing is left, or a bar is outside the scope\n";
    return;
  }
  std::cout << "         M         V  governed by\n       kNm        kN\n";
  for (std::size_t i = 0; i <= terms.rays / 2; ++i) {
    const rating::MomentShearPoint& p = domain[i];
    std::cout << text::right(rating::rounded_down(p.at.moment / 1e3, 2), 10)
              << text::right(rating::rounded_down(p.at.shear / 1e3, 2), 10) << "  "
              << (p.allowable.has_row ? rating::detail::note(p.allowable) : rating::name(p.allowable.verdict)) << '\n';
  }
}

}  // namespace examples
