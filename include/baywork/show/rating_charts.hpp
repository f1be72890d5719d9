// SPDX-License-Identifier: MIT
// What a girder may carry: load tables as columns, and vertical with horizontal loads as a closed curve.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/rating/interaction.hpp>
#include <baywork/rating/table_text.hpp>
#include <baywork/show/legend.hpp>
#include <baywork/show/plot.hpp>

namespace baywork::show {

inline Limit limit_of(const rating::Allowable& a) {
  if (a.verdict == rating::Verdict::deflection) return Limit::deflection;
  return a.verdict == rating::Verdict::member && a.has_row ? limit_of(a.row) : Limit::none;
}

/// One row of columns for each pattern: the total load over the spans, filled by what limits it.
inline std::string load_table_chart(const rating::LoadTable& t, const Look& look = {}) {
  const std::size_t patterns = t.rows.empty() ? 0 : t.rows[0].cells.size();
  double most = 0;
  for (const rating::TableRow& r : t.rows)
    for (const rating::TableCell& c : r.cells)
      if (c.allowable.is_load()) most = larger(most, c.total);
  Picture p(look, "Allowable loads over the span",
            std::to_string(patterns) + " load patterns on " + std::to_string(t.rows.size()) + " spans, totals up to " +
                force_words(most) + ".");
  const double height = 58, scale = most > 0.0 ? height / most : 0.0;
  const double pitch = p.width() / static_cast<double>(t.rows.empty() ? 1 : t.rows.size()),
               wide = smaller(0.84 * pitch, 34.0);
  const OneUnit unit = force_words.of(most);
  std::array<bool, 6> met{};
  std::vector<std::string> notes;
  double widest = 0;
  for (const rating::TableRow& r : t.rows)
    widest = larger(widest, width_of(baywork::text::number(r.span, 4), Letters::small));
  const std::size_t step = every(pitch, widest);
  for (std::size_t k = 0; k < patterns; ++k) {
    p.space(4);
    p.paragraph(capital(rating::name(t.rows[0].cells[k].pattern)), "bw-ink");
    const double zero = p.y + height + 14;
    p.svg.open("bw-table",
               {{"pattern", rating::name(t.rows[0].cells[k].pattern)}, {"px-per-N", baywork::text::number(scale, 9)}});
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
      const rating::TableCell& c = t.rows[i].cells[k];
      const Limit l = limit_of(c.allowable);
      met[static_cast<std::size_t>(l)] = true;
      const LimitLook& ink = limit_looks[static_cast<std::size_t>(l)];
      const double h = c.allowable.is_load() ? scale * c.total : 0.0,
                   x = p.left() + pitch * (static_cast<double>(i) + 0.5) - 0.5 * wide;
      p.svg.open("", {{"row", std::to_string(i)}});
      if (c.allowable.is_load()) p.svg.rect({x, zero - h}, wide, larger(h, 0.5), ink.cls, ink.hatch);
      p.svg.close();
      const std::string note = rating::detail::note(c.allowable);
      if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(note);
    }
    p.svg.close();
    p.svg.line({p.left(), zero}, {p.right(), zero}, "bw-ink");
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
      const rating::TableCell& c = t.rows[i].cells[k];
      const double x = p.left() + pitch * (static_cast<double>(i) + 0.5);
      // rounded down: a load printed is never more than the one found
      const std::string words = c.allowable.is_load() ? rating::rounded_down(c.total / unit.size, unit.decimals(most))
                                : c.allowable.verdict == rating::Verdict::nothing_left ? "0"
                                                                                       : "-";
      p.labels.place(p.svg, words, "bw-ink", Letters::small,
                     {{{x, zero - (c.allowable.is_load() ? scale * c.total : 0.0) - 3}, Anchor::middle}});
      if (i % step == 0)
        p.labels.place(p.svg, baywork::text::number(t.rows[i].span, 4), "bw-quiet", Letters::small,
                       {{{x, zero + 12}, Anchor::middle}});
    }
    p.y = zero + 18;
  }
  std::vector<detail::Swatch> entries;
  for (std::size_t l = 0; l < met.size(); ++l)
    if (met[l] && l != static_cast<std::size_t>(Limit::none))
      entries.push_back({std::string("limited by ") + limit_words[l], limit_looks[l].cls, limit_looks[l].hatch});
  if (!entries.empty()) detail::legend(p, entries);
  p.paragraph(std::string("Below the columns: span in m. Above them: the sum of the pattern's loads in ") + unit.name +
              ", characteristic, rounded down; one scale for all. 0: nothing is left; -: no limit found, or outside "
              "the scope.");
  p.paragraph("What limits:", "bw-quiet");
  for (const std::string& s : notes) p.paragraph(capital(s) + ".", "bw-quiet", Letters::small);
  p.paragraph("What they stand on:", "bw-quiet");
  for (const std::string& s : rating::assumptions(t)) p.paragraph(s, "bw-quiet", Letters::small);
  return p.finished();
}

/// The curve of rating::interaction_curve; loads to the right are horizontal, downward ones are drawn downwards.
inline std::string interaction_picture(const std::vector<rating::InteractionPoint>& curve, const Look& look = {}) {
  Picture p(look, "Vertical and horizontal uniform loads together",
            curve.empty() ? "There is no curve: nothing is left, or a bar is outside the scope."
                          : "Closed curve of what the girder may carry of both, " + std::to_string(curve.size() - 1) +
                                " points.");
  if (curve.empty()) {
    p.paragraph("There is no curve: what is placed already leaves nothing, or a bar is outside the scope.", "bw-load");
    return p.finished();
  }
  PlotAxis x, y;
  x.words = "horizontal, to the right";
  y.words = "upwards";
  x.low = x.high = y.low = y.high = 0;
  std::array<bool, 6> met{};
  for (const rating::InteractionPoint& q : curve) {
    x.low = smaller(x.low, q.horizontal);
    x.high = larger(x.high, q.horizontal);
    y.low = smaller(y.low, -q.vertical);
    y.high = larger(y.high, -q.vertical);
    met[static_cast<std::size_t>(limit_of(q.allowable))] = true;
  }
  x.unit = line_load_words.of(larger(-x.low, x.high));
  y.unit = line_load_words.of(larger(-y.low, y.high));
  x.finish();
  y.finish();
  const double width = smaller(p.width() - 60, 520.0), height = smaller(0.8 * width, 360.0);
  const Plot plot(p, {p.left() + 46, p.y + 20}, width, height, x, y);
  std::vector<Spot> line;
  for (const rating::InteractionPoint& q : curve) line.push_back(plot.spot(q.horizontal, -q.vertical));
  p.svg.open("bw-interaction", {{"px-per-x", baywork::text::number(plot.px_per_x(), 9)},
                                {"px-per-y", baywork::text::number(plot.px_per_y(), 9)}});
  p.svg.polygon(line, "bw-ink bw-pale");
  p.svg.close();
  for (std::size_t i = 0; i + 1 < curve.size(); ++i) limit_mark(p.svg, line[i], limit_of(curve[i].allowable));
  p.y += height + 54;
  std::vector<Limit> limits;
  std::vector<std::string> words;
  for (std::size_t l = 0; l < met.size(); ++l) {
    if (!met[l]) continue;
    limits.push_back(static_cast<Limit>(l));
    words.push_back((limits.back() == Limit::none ? "" : "limited by ") + std::string(limit_words[l]));
  }
  detail::legend(
      p, words,
      [&](std::size_t i, const Spot& corner) {
        limit_mark(p.svg, corner + Spot{5, 5}, limits[i]);
      },
      10);
  p.paragraph(
      "Both loads act between the supports and are characteristic. Each mark was computed, and the girder carries less "
      "of the same two as well. The straight lines between marks were not, and may lie beyond what it carries: "
      "buckling with bending leaves less than in proportion. Downward loads lie below zero. Each axis has its own "
      "scale.");
  return p.finished();
}

}  // namespace baywork::show
