// SPDX-License-Identifier: MIT
// Reactions of every support with their range over cases or combinations, and which lines go slack.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/show/support_symbols.hpp>

namespace baywork::show {

/// Least and greatest of one held motion's reaction, what the support does to the girder, and where.
struct ReactionRange {
  std::size_t support = 0, motion = 0;
  double least = 0, greatest = 0;
  std::size_t least_in = 0, greatest_in = 0;  ///< of the combinations given
};

/// Of every held motion, over these combinations of the cases.
inline std::vector<ReactionRange> reaction_ranges(const Cases& cases, const std::vector<Combination>& combinations) {
  if (combinations.empty())
    fail<BadDescription>("reactions", "no combination is given", "one combination or more is accepted");
  std::vector<ReactionRange> out;
  const GirderModel& model = cases.analysis().model();
  for (std::size_t s = 0; s < model.frame.supports.size(); ++s) {
    const Support& support = model.frame.supports[s];
    for (std::size_t m = 0; m < 6; ++m) {
      if (support.motion[m].kind == Restraint::Kind::free) continue;
      ReactionRange range{s, m};
      for (std::size_t k = 0; k < combinations.size(); ++k) {
        double v = 0;
        for (std::size_t i = 0; i < cases.size(); ++i)
          for (const auto& r : cases[i].answer().reactions)
            if (r.node == support.node) v += combinations[k].factors[i] * r.value[m];
        if (k == 0 || v < range.least) {
          range.least = v;
          range.least_in = k;
        }
        if (k == 0 || v > range.greatest) {
          range.greatest = v;
          range.greatest_in = k;
        }
      }
      out.push_back(range);
    }
  }
  return out;
}

/// Each case alone, as combinations.
inline std::vector<Combination> each_alone(const Cases& cases) {
  std::vector<Combination> out;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    std::vector<double> factors(cases.size(), 0.0);
    factors[i] = 1.0;
    out.push_back({cases[i].name(), std::move(factors)});
  }
  return out;
}

/// A bar from the least to the greatest value for every held motion, below an elevation with the supports. Slings and
/// hoists only pull: where a hung support's least reaction is below zero it is greyed and said to go slack.
inline std::string reactions(const Cases& cases, const std::vector<Combination>& combinations, const Look& look = {}) {
  const GirderModel& model = cases.analysis().model();
  std::vector<ReactionRange> ranges = reaction_ranges(cases, combinations);
  double most_force = 0, most_couple = 0;
  for (const ReactionRange& r : ranges) {
    double& most = r.motion < 3 ? most_force : most_couple;
    most = larger(most, larger(magnitude(r.least), magnitude(r.greatest)));
  }
  for (ReactionRange& r : ranges)  // what is rounding alone is nothing
    for (double* v : {&r.least, &r.greatest})
      if (magnitude(*v) < 1e-9 * (r.motion < 3 ? most_force : most_couple)) *v = 0.0;
  const auto slack = [&](const ReactionRange& r) {
    return r.motion == 2 && is_hung(model, model.frame.supports[r.support]) && r.least < 0.0;
  };
  std::size_t n_slack = 0;
  for (const ReactionRange& r : ranges) n_slack += slack(r) ? 1U : 0U;
  Picture p(look, "Reactions",
            std::to_string(ranges.size()) + " reactions over " + std::to_string(combinations.size()) +
                " combinations, forces up to " + force_words(most_force) + "; " + std::to_string(n_slack) +
                " lines go slack.");
  {
    FlatView view(p, model, Seen::from_right, 34, 30);
    view.draw_bars("bw-quiet bw-thin", "bw-quiet");
    draw_supports(p, view, [&](std::size_t s) {
      for (const ReactionRange& r : ranges)
        if (r.support == s && slack(r)) return true;
      return false;
    });
  }
  const double half = 0.5 * p.width() - 4, middle = p.left() + 0.5 * p.width();
  for (const ReactionRange& r : ranges) {
    const Address& a = model.frame.nodes[model.frame.supports[r.support].node].address;
    const bool force = r.motion < 3, gone = slack(r);
    const double most = force ? most_force : most_couple, scale = most > 0.0 ? half / most : 0.0;
    const Units& units = force ? force_words : moment_words;
    p.space(2);
    const bool hung = r.motion == 2 && is_hung(model, model.frame.supports[r.support]);
    const std::string range = r.least == r.greatest ? units(r.least) : units(r.least) + " to " + units(r.greatest);
    p.paragraph(capital(text_of(a, model.frame.names)) + ", " + motion_names[r.motion] + (hung ? " (hung)" : "") +
                    ": " + range +
                    (gone ? ". GOES SLACK, so that the answer does not hold, in " + combinations[r.least_in].name : ""),
                gone ? "bw-load" : "bw-ink");
    const double x0 = middle + scale * smaller(r.least, 0.0), x1 = middle + scale * larger(r.greatest, 0.0);
    const double from = middle + scale * r.least, to = middle + scale * r.greatest;
    p.svg.line({x0 < middle ? x0 : middle, p.y + 5}, {x1 > middle ? x1 : middle, p.y + 5}, "bw-quiet");
    p.svg.open("bw-reaction", {{"support", std::to_string(r.support)},
                               {"motion", std::to_string(r.motion)},
                               {"px-per-unit", baywork::text::number(scale, 9)}});
    p.svg.rect({from, p.y + 1}, larger(to - from, 1.5), 8, gone ? "bw-quiet bw-dash" : "bw-hold-area");
    p.svg.close();
    p.svg.line({middle, p.y - 1}, {middle, p.y + 11}, "bw-ink");
    p.space(14);
  }
  p.paragraph(
      "What each support does to the girder, global axes, upwards and to the left positive. Bars reach from the least "
      "to the "
      "greatest value over " +
      std::to_string(combinations.size()) + (combinations.size() == 1 ? " combination" : " combinations") +
      "; the upright line is zero; forces have one scale" + (most_couple > 0.0 ? ", couples another" : "") + ".");
  const std::string symbols = support_legend(model);
  if (!symbols.empty()) p.paragraph(symbols + (n_slack > 0 ? " Grey and dashed: goes slack." : ""));
  return p.finished();
}

}  // namespace baywork::show
