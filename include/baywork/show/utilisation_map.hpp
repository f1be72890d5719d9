// SPDX-License-Identifier: MIT
// How far each bar is used: shades, widths and hatching by steps, numbers, and what governs in words.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/show/legend.hpp>
#include <baywork/show/unfolded.hpp>
#include <baywork/verify/proof.hpp>

namespace baywork::show {

namespace detail {

/// Steps of utilisation: up to 0.25, 0.5, 0.75, 1, above 1, outside the scope.
inline std::size_t step_of(double utilisation, bool outside) {
  if (outside) return 5;
  return utilisation <= 0.25 ? 0 : utilisation <= 0.5 ? 1 : utilisation <= 0.75 ? 2 : utilisation <= 1.0 ? 3 : 4;
}
inline constexpr std::array<const char*, 6> step_words{"to 0.25", "to 0.50", "to 0.75",
                                                       "to 1.00", "above 1", "outside the scope"};

/// An area in a step's shade; the last two also hatched, so that they stand out in any print.
inline void step_area(Picture& p, const std::vector<Spot>& area, std::size_t step) {
  if (step == 5) {
    p.svg.polygon(area, "bw-load bw-dash", Hatch::level);
  } else if (step == 4) {
    p.svg.polygon(area, "bw-load-area bw-pale");
    p.svg.hatched(area, "bw-load", Hatch::crossed);
  } else {
    p.svg.polygon(area, "bw-use-" + std::to_string(step + 1));
    if (step == 3) p.svg.hatched(area, "bw-blank", Hatch::slanted);
  }
}
/// Half the width of a bar in a step [px].
inline double step_half(std::size_t step) { return 1.5 + 0.75 * static_cast<double>(step < 5 ? step : 3); }

/// "0.8431 buckling, EN 1999-1-1:2007 6.3.1: bay 12, top left chord": a row in a line.
inline std::string row_words(const verify::Row& r) {
  if (r.check == verify::Check::outside_scope) return "outside the scope: " + verify::place(r) + ": " + r.reason;
  const std::string u = is_infinite(r.utilisation) ? "no resistance left: " : digits_of(r.utilisation) + ' ';
  return u + name(r.check) + ", " + r.standard + ' ' + r.clause + ": " + verify::place(r);
}

}  // namespace detail

/// `model` is that of the proof's analysis. Rows of a whole face or of the girder belong to no bar and are named below.
inline std::string utilisation_map(const GirderModel& model, const verify::Proof& proof, const Look& look = {}) {
  std::vector<double> used(model.frame.members.size(), 0.0);
  std::vector<char> outside(used.size(), 0);
  std::vector<const verify::Row*> whole;
  for (const verify::Row& r : proof.rows()) {
    if (r.member == no_member) {
      whole.push_back(&r);
      continue;
    }
    if (r.member >= used.size() || model.frame.members[r.member].address.role != r.address.role)
      fail<BadDescription>(verify::place(r), "the proof has a bar that this girder has not",
                           "the model of the proof's own girder is accepted");
    if (!(r.utilisation <= used[r.member])) used[r.member] = r.utilisation;  // also what is no number
    if (r.check == verify::Check::outside_scope) outside[r.member] = 1;
  }
  Picture p(look, "Utilisation of all bars", proof.verdict() + ".");
  struct Label {
    double value, rank;  // what is equal but for rounding keeps its order
    std::string words;
    LabelPlace place;
  };
  bool met_outside = false, none_left = false;
  const StripParts parts(model.girder, look.width);
  for (std::size_t part = 0; part < parts.size(); ++part) {
    Unfolded strips(p, model, parts.of(part, {.room = 18}));
    strips.draw_bars();
    std::vector<Label> labels;
    for (const std::size_t f : strips.faces()) {
      p.svg.open("bw-utilisation", {{"face", model.girder.faces[f].name}});
      for (const StripBar& b : strips.bars(f)) {
        const double u = used[b.member];
        if (u <= 0.0) continue;
        const std::size_t step = detail::step_of(u, outside[b.member] != 0);
        const std::string words = step == 5 ? "out" : is_finite(u) ? baywork::text::fixed(u, 2) : "none left";
        met_outside = met_outside || step == 5;
        none_left = none_left || (step != 5 && !is_finite(u));
        const Spot s = detail::step_half(step) * b.side;
        p.svg.open("", {{"member", std::to_string(b.member)}, {"utilisation", is_finite(u) ? baywork::text::number(u, 9) : words}});
        detail::step_area(p, {b.from + s, b.to + s, b.to - s, b.from - s}, step);
        p.svg.close();
        labels.push_back({u, is_finite(u) ? std::round(1e6 * u) : 1e300, words, strips.beside(b, detail::step_half(step))});
      }
      p.svg.close();
    }
    std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.rank > b.rank; });
    for (const Label& l : labels) {
      if (l.value < 0.1) break;
      p.labels.place(p.svg, l.words, l.value > 1.0 ? "bw-load" : "bw-ink", Letters::small, {l.place});
    }
    strips.draw_stations();
  }
  const std::vector<std::string> steps(detail::step_words.begin(), detail::step_words.end() - (met_outside ? 0 : 1));
  detail::legend(p, steps, [&p](std::size_t s, const Spot& at) {
    const double h = detail::step_half(s), y = at.y + 5;
    detail::step_area(p, {{at.x, y - h}, {at.x + 26, y - h}, {at.x + 26, y + h}, {at.x, y + h}}, s);
  });
  p.paragraph(
      "Width and shade of each bar: the greatest of its checks over " + std::to_string(proof.combinations().size()) +
      (proof.combinations().size() == 1 ? " combination" : " combinations") + "; the number is that utilisation" +
      (none_left ? ", \"none left\": one of the checks finds no resistance left." : "."));
  p.paragraph(capital(proof.verdict()) + ".", "bw-ink");
  const std::vector<verify::Row> governing = proof.governing();
  for (std::size_t i = 0; i < governing.size() && i < 4; ++i)
    p.paragraph((i == 0 ? "Governs: " : "Then: ") + detail::row_words(governing[i]) + ".");
  for (const verify::Row* r : whole) p.paragraph("Of no single bar: " + detail::row_words(*r) + ".");
  return p.finished();
}

}  // namespace baywork::show
