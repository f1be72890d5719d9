// SPDX-License-Identifier: MIT
// What each hoist carries when all hang level, when each in turn is off level, and when another is slack.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/hoists.hpp>
#include <baywork/show/legend.hpp>
#include <baywork/show/support_symbols.hpp>

namespace baywork::show {

/// Least and greatest pull of one hoist over some cases of a study, and the cases they stand in.
struct HoistRange {
  double least = 0, greatest = 0;
  std::size_t least_in = 0, greatest_in = 0;  ///< 0: all level
};

namespace detail {

/// A hoist's pull in a case that hangs; what is rounding alone is nothing.
inline double pull_of(const HoistStudy& study, const HoistCase& c, std::size_t hoist) {
  return c.pull[hoist] > HoistStudy::rounding * magnitude(study.total()) ? c.pull[hoist] : 0.0;
}

}  // namespace detail

/// Over the level tolerances: all level, and each hoist off level. `others_slack`: the cases in which another hoist
/// carries nothing as well.
inline HoistRange hoist_range(const HoistStudy& study, std::size_t hoist, bool others_slack) {
  const double level = detail::pull_of(study, study.cases()[0], hoist);
  HoistRange out{level, level, 0, 0};
  for (std::size_t i = 1; i < study.cases().size(); ++i) {
    const HoistCase& c = study.cases()[i];
    if (!c.hangs || (c.gone && (!others_slack || c.hoist == hoist))) continue;
    const double pull = detail::pull_of(study, c, hoist);
    if (pull < out.least) {
      out.least = pull;
      out.least_in = i;
    }
    if (pull > out.greatest) {
      out.greatest = pull;
      out.greatest_in = i;
    }
  }
  return out;
}

/// Below an elevation a bar for each hoist from zero on; lines that are slack in any case but their own are greyed.
inline std::string hoist_reactions(const HoistStudy& study, const Look& look = {}) {
  const std::vector<HoistCase>& cases = study.cases();
  const GirderModel& model = cases[0].response.model();
  double most = 0;
  bool any_slack = false, any_farther = false, any_off = false;
  std::vector<bool> slack_line(model.frame.supports.size(), false);
  for (const HoistCase& c : cases) {
    any_off = any_off || (!c.gone && &c != cases.data());
    if (!c.hangs) continue;
    for (const double pull : c.pull) most = larger(most, pull);
    std::size_t line = 0;  // lines are numbered as the supports that hold along z
    for (std::size_t s = 0; s < model.frame.supports.size(); ++s) {
      if (model.frame.supports[s].motion[2].kind == Restraint::Kind::free) continue;
      const int station = model.frame.nodes[model.frame.supports[s].node].address.station;
      std::size_t h = 0;
      while (study.hoists()[h].station != static_cast<std::size_t>(station)) ++h;
      if (!c.gone && (c.slack[line] || detail::pull_of(study, c, h) == 0.0)) any_slack = slack_line[s] = true;
      ++line;
    }
  }
  Picture p(look, "What each hoist carries",
            std::to_string(study.hoists().size()) + " hoists, " + force_words(study.total()) + " in all, in " +
                std::to_string(cases.size()) + " states; the greatest pull is " + force_words(most) + ".");
  {
    FlatView view(p, model, Seen::from_right, 34, 30);
    view.draw_bars("bw-quiet bw-thin", "bw-quiet");
    draw_supports(p, view, slack_line);
    for (const Hoist& h : study.hoists()) {
      Spot at{0, view.bottom() + 14};
      for (const std::size_t c : {std::size_t{0}, model.girder.chords.size() - 1})
        at.x += 0.5 * view.spot(model.girder.joint(h.station, c)).x;
      p.labels.place(p.svg, std::to_string(&h - study.hoists().data() + 1), "bw-hold", Letters::words,
                     {{at, Anchor::middle}});
    }
  }
  const double zero = p.left() + 1, scale = most > 0.0 ? (p.width() - 4) / most : 0.0;
  for (std::size_t h = 0; h < study.hoists().size(); ++h) {
    const HoistRange off = hoist_range(study, h, false), all = hoist_range(study, h, true);
    const double level = detail::pull_of(study, cases[0], h);
    std::string words = "Hoist " + std::to_string(h + 1) + " at " + metres(study.hoists()[h].x) + ": " +
                        force_words(level) + " all level";
    const auto in = [&](double pull, std::size_t i) { return force_words(pull) + " (" + cases[i].name + ')'; };
    const auto other = [&](double pull) { return force_words(pull) != force_words(level); };  // as it is printed
    if (off.least < level && other(off.least)) words += "; least " + in(off.least, off.least_in);
    if (off.greatest > level && other(off.greatest)) words += "; greatest " + in(off.greatest, off.greatest_in);
    if (all.greatest > off.greatest) words += "; " + in(all.greatest, all.greatest_in);
    const bool gone = off.least == 0.0;
    bool needed = false;
    for (const HoistCase& c : cases) needed = needed || (c.gone && c.hoist == h && !c.hangs);
    if (gone) words += ". GOES SLACK";
    if (needed) words += ". The girder does not hang without it";
    p.space(2);
    p.paragraph(words + '.', gone ? "bw-load" : "bw-ink");
    p.svg.open("bw-hoist", {{"hoist", std::to_string(h)}, {"px-per-N", baywork::text::number(scale, 9)}});
    p.svg.line({zero, p.y + 6}, {zero + scale * all.greatest, p.y + 6}, "bw-quiet");
    const bool farther = all.greatest > off.greatest || all.least < off.least;
    any_farther = any_farther || farther;
    if (farther)
      p.svg.rect({zero + scale * all.least, p.y + 3}, scale * (all.greatest - all.least), 6, "bw-quiet bw-dash");
    p.svg.rect({zero + scale * off.least, p.y + 1}, larger(scale * (off.greatest - off.least), 1.5), 10,
               "bw-hold-area");
    p.svg.rect({zero + scale * level - 3, p.y - 2}, 6, 16, "bw-veil bw-clear");
    p.svg.line({zero + scale * level, p.y - 2}, {zero + scale * level, p.y + 14}, "bw-ink bw-bold");
    p.svg.line({zero, p.y - 1}, {zero, p.y + 13}, "bw-ink");
    p.svg.close();
    p.space(18);
  }
  std::vector<detail::Swatch> entries;
  if (any_off) entries.push_back({"each hoist off level", "bw-hold-area"});
  if (any_farther) entries.push_back({"another hoist slack as well", "bw-quiet bw-dash"});
  if (!entries.empty()) detail::legend(p, entries);
  p.paragraph("Pulls from zero at the left, to one scale; the bold mark is all level. Lines only pull; their sum is " +
              force_words(study.total()) + " in every state." +
              (any_slack ? " Grey and dashed: slack in one of the states off level." : ""));
  const std::string symbols = support_legend(model);
  if (!symbols.empty()) p.paragraph(symbols);
  return p.finished();
}

}  // namespace baywork::show
