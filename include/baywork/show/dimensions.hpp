// SPDX-License-Identifier: MIT
// Dimension lines with oblique ticks, their words above the line or beside it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/show/labels.hpp>
#include <baywork/show/picture.hpp>

namespace baywork::show {

namespace detail {
inline void tick(Svg& svg, const Spot& at) { svg.line(at + Spot{-3, 3}, at + Spot{3, -3}, "bw-ink"); }
}  // namespace detail

/// A level row at height y with ticks at `xs` and words[i] between tick i and the next, where they have room.
inline void dimension_row(Picture& p, double y, const std::vector<double>& xs, const std::vector<std::string>& words) {
  if (xs.size() < 2) return;
  p.svg.line({xs.front() - 3, y}, {xs.back() + 3, y}, "bw-ink bw-thin");
  for (const double x : xs) detail::tick(p.svg, {x, y});
  for (std::size_t i = 0; i + 1 < xs.size() && i < words.size(); ++i)
    if (width_of(words[i], Letters::small) + 6.0 <= xs[i + 1] - xs[i] || xs.size() == 2)
      p.labels.place(p.svg, words[i], "bw-ink", Letters::small, {{{0.5 * (xs[i] + xs[i + 1]), y - 3}, Anchor::middle}});
}

/// An upright one at x between y1 and y2, its words to the right.
inline void dimension_upright(Picture& p, double x, double y1, double y2, const std::string& words) {
  p.svg.line({x, y1 - 3}, {x, y2 + 3}, "bw-ink bw-thin");
  detail::tick(p.svg, {x, y1});
  detail::tick(p.svg, {x, y2});
  p.labels.place(p.svg, words, "bw-ink", Letters::small, {{{x + 6, 0.5 * (y1 + y2) + 3.5}}});
}

}  // namespace baywork::show
