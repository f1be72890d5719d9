// SPDX-License-Identifier: MIT
// Reactions of every support with their range over cases or combinations, and which lines go slack.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/envelope.hpp>
#include <baywork/show/support_symbols.hpp>

namespace baywork::show {

/// One held motion of one support and the range of its reaction; what is rounding alone is nothing.
struct HeldReaction {
  std::size_t support = 0, motion = 0;
  EnvelopeRange range{};
  bool hung = false;
  /// Slings and hoists only pull: below zero the model would push with one.
  bool goes_slack() const { return hung && range.least < 0.0; }
};

/// Of every held motion, over these combinations of the cases.
inline std::vector<HeldReaction> held_reactions(const Cases& cases, const std::vector<Combination>& combinations) {
  const GirderModel& model = cases.analysis().model();
  const std::vector<ReactionRange> all = reaction_ranges(cases, combinations);
  std::array<double, 2> most{};  // of forces, of couples
  for (const ReactionRange& r : all)
    for (std::size_t m = 0; m < 6; ++m)
      most[m / 3] = larger(most[m / 3], larger(magnitude(r[m].least), magnitude(r[m].most)));
  std::vector<HeldReaction> out;
  for (std::size_t s = 0; s < all.size(); ++s)
    for (std::size_t m = 0; m < 6; ++m) {
      const Support& support = model.frame.supports[s];
      if (support.motion[m].kind == Restraint::Kind::free) continue;
      HeldReaction held{s, m, all[s][m], m == 2 && is_hung(model, support)};
      for (double* v : {&held.range.least, &held.range.most})
        if (magnitude(*v) < 1e-9 * most[m / 3]) *v = 0.0;
      out.push_back(held);
    }
  return out;
}

/// A bar from the least to the greatest value for every held motion, below an elevation with the supports. A hung
/// support that would push is greyed and said to go slack.
inline std::string reactions(const Cases& cases, const std::vector<Combination>& combinations, const Look& look = {}) {
  const GirderModel& model = cases.analysis().model();
  const std::vector<HeldReaction> all = held_reactions(cases, combinations);
  double most_force = 0, most_couple = 0;
  std::vector<bool> slack(model.frame.supports.size(), false);
  std::size_t n_slack = 0;
  for (const HeldReaction& r : all) {
    double& most = r.motion < 3 ? most_force : most_couple;
    most = larger(most, larger(magnitude(r.range.least), magnitude(r.range.most)));
    slack[r.support] = slack[r.support] || r.goes_slack();
    n_slack += r.goes_slack() ? 1U : 0U;
  }
  const std::string over =
      std::to_string(combinations.size()) + (combinations.size() == 1 ? " combination" : " combinations");
  Picture p(look, "Reactions",
            std::to_string(all.size()) + " reactions over " + over + ", forces up to " + force_words(most_force) +
                "; " + std::to_string(n_slack) + (n_slack == 1 ? " line goes slack." : " lines go slack."));
  {
    FlatView view(p, model, Seen::from_right, 34, 30);
    view.draw_bars("bw-quiet bw-thin", "bw-quiet");
    draw_supports(p, view, slack);
  }
  const double half = 0.5 * p.width() - 4, middle = p.left() + 0.5 * p.width();
  for (const HeldReaction& r : all) {
    const Address& a = model.frame.nodes[model.frame.supports[r.support].node].address;
    const bool force = r.motion < 3, gone = r.goes_slack();
    const double most = force ? most_force : most_couple, scale = most > 0.0 ? half / most : 0.0;
    const double least = r.range.least, greatest = r.range.most;
    const Units& units = force ? force_words : moment_words;
    p.space(2);
    const std::string range = least == greatest ? units(least) : units(least) + " to " + units(greatest);
    p.paragraph(
        capital(text_of(a, model.frame.names)) + ", " + motion_names[r.motion] + (r.hung ? " (hung)" : "") + ": " +
            range +
            (gone ? ". GOES SLACK, so that the answer does not hold, in " + combinations[r.range.least_in].name : ""),
        gone ? "bw-load" : "bw-ink");
    const double from = middle + scale * least, to = middle + scale * greatest;
    p.svg.line({smaller(from, middle), p.y + 5}, {larger(to, middle), p.y + 5}, "bw-quiet");
    p.svg.open("bw-reaction", {{"support", std::to_string(r.support)},
                               {"motion", std::to_string(r.motion)},
                               {"px-per-unit", baywork::text::number(scale, 9)}});
    p.svg.rect({from, p.y + 1}, larger(to - from, 1.5), 8, gone ? "bw-quiet bw-dash" : "bw-hold-area");
    p.svg.close();
    p.svg.line({middle, p.y - 1}, {middle, p.y + 11}, "bw-ink");
    p.space(14);
  }
  p.paragraph("What each support does to the girder: " + std::string(axes_words) +
              ". Bars reach from the least to the greatest value over " + over +
              "; the upright line is zero; forces have one scale" + (most_couple > 0.0 ? ", couples another" : "") +
              ".");
  const std::string symbols = support_legend(model);
  if (!symbols.empty()) p.paragraph(symbols + (n_slack > 0 ? " Grey and dashed: goes slack." : ""));
  return p.finished();
}

}  // namespace baywork::show
