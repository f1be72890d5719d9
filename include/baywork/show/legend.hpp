// SPDX-License-Identifier: MIT
// Legends: samples of inks and hatchings with their words, in as many lines as they need.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/show/picture.hpp>

namespace baywork::show::detail {

/// draw(i, corner) draws the i-th sample, at most 26 px wide and 10 px high, from its upper left corner on.
template <class Draw>
void legend(Picture& p, const std::vector<std::string>& words, Draw draw, double sample = 26) {
  double x = p.left();
  p.space(4);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const double wide = sample + 6 + width_of(words[i]) + 16;
    if (x > p.left() && x + wide > p.right()) {
      x = p.left();
      p.space(18);
    }
    draw(i, Spot{x, p.y});
    p.labels.place(p.svg, words[i], "bw-ink", Letters::words, {{{x + sample + 6, p.y + 9}}});
    x += wide;
  }
  p.space(18);
}

struct Swatch {
  std::string words;
  const char* cls;
  Hatch hatch = Hatch::none;
};
inline void legend(Picture& p, const std::vector<Swatch>& entries) {
  std::vector<std::string> words;
  for (const Swatch& s : entries) words.push_back(s.words);
  legend(p, words, [&](std::size_t i, const Spot& at) { p.svg.rect(at, 26, 10, entries[i].cls, entries[i].hatch); });
}

}  // namespace baywork::show::detail
