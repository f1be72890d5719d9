// SPDX-License-Identifier: MIT
// Axial forces of all bars as widths: tension plain, compression hatched, both in words.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/response.hpp>
#include <baywork/show/legend.hpp>
#include <baywork/show/unfolded.hpp>
#include <baywork/show/words.hpp>

namespace baywork::show {

/// The girder unfolded; each bar as wide as its axial force at mid-length, the greatest 14 px.
inline std::string axial_forces(const Response& r, const Look& look = {}) {
  const GirderModel& model = r.model();
  double pull = 0, push = 0;
  std::size_t most_pulled = 0, most_pushed = 0;
  for (std::size_t m = 0; m < model.frame.members.size(); ++m) {
    const double N = r.member(m).forces(fraction{0.5}).N;
    if (N > pull * (1.0 + 1e-9)) {
      pull = N;
      most_pulled = m;
    }
    if (N < push * (1.0 + 1e-9)) {
      push = N;
      most_pushed = m;
    }
  }
  const auto tell = [&](double N, std::size_t m, const char* word) {
    return N == 0.0 ? std::string("no ") + word
                    : "greatest " + std::string(word) + ' ' + force_words(magnitude(N)) + " in " +
                          model.frame.name_of_member(m);
  };
  const std::string greatest = tell(pull, most_pulled, "tension") + "; " + tell(push, most_pushed, "compression");
  Picture p(look, "Axial forces, " + r.name(), "Widths show axial forces of all bars; " + greatest + ".");
  const double most = larger(pull, -push), widest = 14, scale = most > 0.0 ? widest / most : 0.0;
  struct Label {
    double size;  // in millionths of the greatest: what is equal but for rounding keeps its order
    LabelPlace place;
    std::string words;
    bool pulled;
  };
  const StripParts parts(model.girder, look.width);
  for (std::size_t part = 0; part < parts.size(); ++part) {
    Unfolded strips(p, model, parts.of(part, {.room = 0.5 * widest + 14}));
    strips.draw_bars();
    std::vector<Label> labels;
    for (const std::size_t f : strips.faces()) {
      p.svg.open("bw-axial", {{"face", model.girder.faces[f].name}, {"px-per-N", baywork::text::number(scale, 9)}});
      for (const StripBar& b : strips.bars(f)) {
        const double N = r.member(b.member).forces(fraction{0.5}).N, w = 0.5 * scale * magnitude(N);
        if (w < 0.15) continue;
        p.svg.open("", {{"member", std::to_string(b.member)}, {"N", baywork::text::number(N, 9)}});
        const Spot s = w * b.side;
        const std::vector<Spot> area{b.from + s, b.to + s, b.to - s, b.from - s};
        if (N > 0.0)
          p.svg.polygon(area, "bw-pull-area");
        else
          p.svg.polygon(area, "bw-push", Hatch::slanted);
        p.svg.close();
        labels.push_back({std::round(1e6 * magnitude(N) / most), strips.beside(b, w), force_words(N), N > 0.0});
      }
      p.svg.close();
    }
    // the greatest first, as long as there is room
    std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.size > b.size; });
    for (const Label& l : labels) {
      if (l.size < 2e4) break;
      p.labels.place(p.svg, l.words, l.pulled ? "bw-pull" : "bw-push", Letters::small, {l.place});
    }
    strips.draw_stations();
  }
  detail::legend(p, {{"tension", "bw-pull-area"}, {"compression", "bw-push", Hatch::slanted}});
  p.paragraph("Widths are in proportion to the force at mid-length, tension positive: " + greatest + ".");
  return p.finished();
}

}  // namespace baywork::show
