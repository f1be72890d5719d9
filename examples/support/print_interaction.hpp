// SPDX-License-Identifier: MIT
// Weight and wind together, as a table: a quarter of the interaction curve, the wind at the middle and below it.
#pragma once

#include <cstddef>
#include <iostream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

namespace examples {

/// "bay 12, top left chord": the place without the section.
inline std::string bar_of(const baywork::verify::Row& row) {
  const std::string place = baywork::verify::place(row);
  return place.substr(0, place.rfind(", "));
}

/// Prints a quarter of two curves and gives back all of the one with the wind at the middle.
inline std::vector<baywork::rating::InteractionPoint> print_interaction(const baywork::rating::Rater& rater) {
  using namespace baywork;
  std::cout << "\nWEIGHT WITH WIND on " << text::number(rater.analysis().girder().span())
            << " m: uniform loads down and across together, kN/m; the wind at the girder's middle, and 1 m\n"
            << "below it (a cloth that hangs)\n"
            << "      down    across  governed by                              |      down    across  governed by\n";
  const auto at_middle = rating::interaction_curve(rater, {.rays = 24});
  const auto below = rating::interaction_curve(rater, {.rays = 24, .eccentricity = 1.0});
  const auto half = [](const rating::InteractionPoint& p) {
    return text::right(rating::rounded_down(p.vertical / 1e3, 2), 10) +
           text::right(rating::rounded_down(p.horizontal / 1e3, 2), 10) + "  " +
           text::left(bar_of(p.allowable.row), 40);
  };
  for (std::size_t i = 0; i <= 6 && i < at_middle.size() && i < below.size(); ++i)
    std::cout << half(at_middle[i]) << " |" << half(below[i]) << '\n';
  return at_middle;
}

}  // namespace examples
