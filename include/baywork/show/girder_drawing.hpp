// SPDX-License-Identifier: MIT
// The girder itself: elevation, plan, cross-section, all faces side by side, with dimensions, modules, welds, supports.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/show/dimensions.hpp>
#include <baywork/show/support_symbols.hpp>
#include <baywork/show/unfolded.hpp>
#include <baywork/show/views.hpp>
#include <baywork/verify/welded_ends.hpp>

namespace baywork::show {

namespace detail {

/// Where bars of a role are of this kind, if there are others of another: " (top left, top right)", by the names of
/// chords or faces, or empty.
inline std::string where_else_another(const GirderModel& model, std::size_t bar, Role role) {
  const PartNames& names = model.frame.names;
  const auto part_of = [](const Address& a) { return a.chord >= 0 ? a.chord : a.face; };
  std::vector<int> own;
  bool others = false;
  for (std::size_t m = 0; m < model.bar_index.size(); ++m) {
    const Address& a = model.frame.members[m].address;
    if (a.role != role || part_of(a) < 0) continue;
    if (model.bar_index[m] != bar)
      others = true;
    else if (std::find(own.begin(), own.end(), part_of(a)) == own.end())
      own.push_back(part_of(a));
  }
  if (!others) return "";
  std::string out;
  for (const int i : own)
    out += (out.empty() ? " (" : ", ") +
           (role == Role::chord ? names.chords : names.faces)[static_cast<std::size_t>(i)];
  return out.empty() ? out : out + ')';
}

/// "RoundTube 60.3 x 5, alloy: chords, diagonals": each different bar with the roles that it has.
inline std::vector<std::string> bar_list(const GirderModel& model) {
  std::vector<std::string> out;
  for (std::size_t b = 0; b < model.bars.size(); ++b) {
    std::string roles;
    std::size_t count = 0;
    for (const Role role : {Role::chord, Role::cross_member, Role::diagonal, Role::diaphragm, Role::user}) {
      std::size_t n = 0;
      for (std::size_t m = 0; m < model.bar_index.size(); ++m)
        n += model.bar_index[m] == b && model.frame.members[m].address.role == role ? 1U : 0U;
      count += n;
      if (n == 0) continue;
      roles += (roles.empty() ? "" : ", ");
      if (role == Role::diaphragm)
        roles += "bars of diaphragms";
      else
        roles += std::string(name(role)) + "s" + where_else_another(model, b, role);
    }
    if (count > 0) out.push_back(model.bars[b].text() + ": " + roles);
  }
  return out;
}

/// Bays in words: "24 × 0.5 m = 12 m" where they are alike.
inline std::string bays_in_words(const Girder& g) {
  const double first = g.stations[1];
  for (std::size_t i = 1; i < g.bays(); ++i)
    if (std::abs(g.stations[i + 1] - g.stations[i] - first) > 1e-9 * g.span()) return "";
  return std::to_string(g.bays()) + " \xC3\x97 " + metres(first) + " = " + metres(g.span());
}

/// Rows of dimensions below an elevation: bays, modules, the whole.
inline void axis_dimensions(Picture& p, const FlatView& view) {
  const Girder& g = view.model().girder;
  std::vector<double> at;  // the chords' mean place on the page
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    double x = 0;
    for (std::size_t c = 0; c < g.chords.size(); ++c)
      x += view.spot(g.joint(i, c)).x / static_cast<double>(g.chords.size());
    at.push_back(x);
  }
  const std::string alike = bays_in_words(g);
  const auto row = [&](const std::vector<std::size_t>& marks, const std::vector<std::string>& words) {
    std::vector<double> xs;
    for (const std::size_t m : marks) xs.push_back(at[m]);
    p.space(16);
    dimension_row(p, p.y, xs, words);
    p.space(4);
  };
  if (alike.empty()) {
    std::vector<std::size_t> all;
    std::vector<std::string> words;
    for (std::size_t i = 0; i < g.stations.size(); ++i) {
      all.push_back(i);
      if (i > 0) words.push_back(baywork::text::number(g.stations[i] - g.stations[i - 1], 4));
    }
    row(all, words);
  }
  if (!g.splices.empty()) {
    std::vector<std::size_t> marks{0};
    std::vector<std::string> words;
    for (std::size_t i = 1; i < g.stations.size(); ++i) {
      if (i < g.bays() && !g.is_splice(i)) continue;
      words.push_back("module " + std::to_string(marks.size()) + ": " +
                      metres(g.stations[i] - g.stations[marks.back()]));
      marks.push_back(i);
    }
    row(marks, words);
  }
  row({0, g.bays()}, {alike.empty() ? std::to_string(g.bays()) + " bays, " + metres(g.span()) : alike});
}

/// Station numbers above a view, as many as have room, and marks of splices across the girder.
inline void mark_stations(Picture& p, const FlatView& view) {
  const Girder& g = view.model().girder;
  std::vector<double> x, top, bottom;
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    double mean = 0, high = 1e9, low = -1e9;
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      const Spot s = view.spot(g.joint(i, c));
      mean += s.x / static_cast<double>(g.chords.size());
      high = smaller(high, s.y);
      low = larger(low, s.y);
    }
    x.push_back(mean);
    top.push_back(high);
    bottom.push_back(low);
  }
  double pitch = 1e9;
  for (std::size_t i = 1; i < x.size(); ++i) pitch = smaller(pitch, magnitude(x[i] - x[i - 1]));
  const std::size_t step = every(pitch, width_of(std::to_string(x.size()), Letters::small) + 4);
  for (std::size_t i = 0; i < x.size(); ++i) {
    if (g.is_splice(i)) {
      p.svg.line({x[i] - 1.5, top[i] - 5}, {x[i] - 1.5, bottom[i] + 5}, "bw-load");
      p.svg.line({x[i] + 1.5, top[i] - 5}, {x[i] + 1.5, bottom[i] + 5}, "bw-load");
    }
    if (i % step == 0)
      p.labels.place(p.svg, std::to_string(i + 1), "bw-quiet", Letters::small,
                     {{{x[i], view.top() - 26}, Anchor::middle}});
  }
}

/// The cross-section with names of chords and faces, width and depth.
inline void cross_section(Picture& p, const GirderModel& model) {
  const Girder& g = model.girder;
  p.paragraph("Cross-section at station 1, seen along the girder", "bw-ink");
  double beside = 0;  // room for names of chords on both sides
  for (const Chord& c : g.chords) beside = larger(beside, width_of(c.name, Letters::small) + 24);
  const double room = p.width() - 2 * beside - 60, size = larger(60.0, smaller(room, p.width() < 700 ? 100.0 : 150.0));
  const double top = p.y + 24;
  const EndView probe(g, 0, {0, 0}, size);
  const double wide = probe.px_per_metre() * probe.wide();
  const EndView view(g, 0,
                     {p.left() + beside + 0.5 * wide + 0.5 * larger(0.0, room - wide),
                      top + 0.5 * probe.px_per_metre() * probe.high()},
                     size);
  p.svg.open("bw-section");
  for (std::size_t f = 0; f < g.faces.size(); ++f) {
    const GirderFace& face = g.faces[f];
    const bool bar = !model.faces[f].cross_members[0].empty();
    p.svg.line(view.spot(g.joint(0, face.first_chord)), view.spot(g.joint(0, face.second_chord)),
               bar ? "bw-ink" : "bw-quiet bw-dash");
  }
  for (const std::size_t m : model.diaphragm_members) {
    const Member& bar = model.frame.members[m];
    if (bar.address.station == 0)
      p.svg.line(view.spot(model.frame.nodes[bar.from].at), view.spot(model.frame.nodes[bar.to].at), "bw-quiet");
  }
  for (std::size_t c = 0; c < g.chords.size(); ++c) {
    const SectionData<double>& s = g.chords[c].bar.section;
    const double r = larger(3.0, 0.5 * view.px_per_metre() * larger(s.height, s.width));
    p.svg.circle(view.spot(g.joint(0, c)), r, "bw-page");
    p.svg.circle(view.spot(g.joint(0, c)), r, "bw-ink bw-bold");
  }
  p.svg.close();
  for (std::size_t c = 0; c < g.chords.size(); ++c) {
    const Spot at = view.spot(g.joint(0, c));
    const bool left = at.x < view.centre().x - 1;
    const bool low = at.y > view.centre().y + 1;
    const double away = 10 + 0.5 * view.px_per_metre() * g.chords[c].bar.section.height;
    const LabelPlace at_side{{at.x + (left ? -away : away), at.y + 4}, left ? Anchor::end : Anchor::start};
    const LabelPlace over{{at.x, at.y + (low ? away + 6 : -away)}, Anchor::middle};
    const LabelPlace under{{at.x, at.y + (low ? away + 18 : -away - 12)}, Anchor::middle};
    const bool alone = magnitude(at.x - view.centre().x) <= 1;
    p.labels.place(p.svg, g.chords[c].name, "bw-ink", Letters::small,
                   {alone ? over : at_side, alone ? at_side : over, under});
  }
  for (const GirderFace& face : g.faces) {
    const Spot middle = 0.5 * (view.spot(g.joint(0, face.first_chord)) + view.spot(g.joint(0, face.second_chord)));
    const Spot in = middle + 0.3 * (view.centre() - middle);
    const LabelPlace inside{in + Spot{0, 3.5}, Anchor::middle};
    const LabelPlace aside{in + Spot{9, 3.5}};  // of a ladder: not on its bar
    p.labels.place(p.svg, face.name, "bw-quiet", Letters::small,
                   {distance(in, middle) < 1.0 ? aside : inside, {middle + Spot{0, 3.5}, Anchor::middle}});
  }
  const auto rounded = [](double v) { return baywork::text::number(v, 4) + " m"; };
  p.y = view.bottom_edge() + 34;
  if (view.wide() > 1e-9) {
    dimension_row(p, p.y, {view.left_edge(), view.right_edge()}, {rounded(view.wide())});
    p.space(6);
  }
  if (view.high() > 1e-9)
    dimension_upright(p, view.right_edge() + beside + 10, view.top_edge(), view.bottom_edge(), rounded(view.high()));
  p.space(6);
}

}  // namespace detail

inline std::string girder_drawing(const Analysis& analysis, const Look& look = {}) {
  const GirderModel& model = analysis.model();
  const Girder& g = model.girder;
  Picture p(look, "The girder",
            std::to_string(g.bays()) + " bays, span " + metres(g.span()) + ", " + std::to_string(g.chords.size()) +
                " chords, " + std::to_string(g.faces.size()) + (g.faces.size() == 1 ? " face. " : " faces. ") +
                support_words(model));
  std::string stretched;
  for (const Seen seen : {Seen::from_right, Seen::from_above}) {
    FlatView view(p, model, seen, 38, 24);
    view.draw_bars("bw-ink bw-thin", "bw-ink bw-bold");
    draw_supports(p, view);
    detail::mark_stations(p, view);
    if (seen == Seen::from_right) detail::axis_dimensions(p, view);
    if (view.stretch() > 1.005)
      stretched += (stretched.empty() ? "Drawn larger than lengths: heights of the " : ", of the ") +
                   std::string(seen == Seen::from_right ? "elevation " : "plan ") +
                   baywork::text::number(view.stretch(), 3) + " times";
    p.space(8);
  }
  if (!stretched.empty()) p.paragraph(stretched + ".", "bw-quiet", Letters::small);
  detail::cross_section(p, model);

  const std::vector<verify::WeldedEnds> ends = verify::welded_ends(analysis);
  bool softened = false, across = false;
  const StripParts parts(g, look.width, 14);
  for (std::size_t part = 0; part < parts.size(); ++part) {
    Unfolded strips(p, model, parts.of(part, {.room = 10, .least_height = 30}));
    for (const std::size_t f : strips.faces()) {
      p.svg.open("bw-welds", {{"face", g.faces[f].name}});
      for (const StripBar& b : strips.bars(f)) {
        const double length = analysis.axes(b.member).length;
        const verify::WeldedEnds& e = ends[b.member];
        if (e.start.reach > 0.0) p.svg.line(b.from, b.at(smaller(1.0, e.start.reach / length)), "bw-load bw-band");
        if (e.end.reach > 0.0) p.svg.line(b.at(larger(0.0, 1.0 - e.end.reach / length)), b.to, "bw-load bw-band");
        for (const verify::WeldedPlace& w : e.across)
          p.svg.line(b.at(larger(0.0, (w.at - w.reach) / length)), b.at(smaller(1.0, (w.at + w.reach) / length)),
                     "bw-load bw-band");
        softened = softened || e.start.reach > 0.0 || e.end.reach > 0.0;
        across = across || !e.across.empty();
      }
      p.svg.close();
    }
    strips.draw_bars("bw-ink");
    strips.draw_stations();
  }
  std::string legend;
  if (softened || across)
    legend += std::string("Wide bands: metal softened by the welds at joints") + (across ? " and across bars. " : ". ");
  if (!g.splices.empty()) legend += "Double lines across the girder: splices. ";
  p.paragraph(legend + support_legend(model));
  p.paragraph(support_words(model));
  for (const std::string& s : detail::bar_list(model)) p.paragraph(capital(s) + ".", "bw-ink");
  return p.finished();
}

}  // namespace baywork::show
