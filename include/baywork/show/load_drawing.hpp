// SPDX-License-Identifier: MIT
// The loads of a case where they act, with their values and units, and in words.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include <baywork/load/load_case.hpp>
#include <baywork/response/analysis.hpp>
#include <baywork/show/load_words.hpp>
#include <baywork/show/support_symbols.hpp>
#include <baywork/show/views.hpp>

namespace baywork::show {

namespace detail {

/// "480 N down, 1.20 kN to the right".
inline std::string direction_words(const Vec3<>& v, const Units& units) {
  const double size = length(v);
  std::string out;
  const auto say = [&](double part, const char* plus, const char* minus_word) {
    if (magnitude(part) <= 1e-9 * size) return;
    out += (out.empty() ? "" : ", ") + units(magnitude(part)) + ' ' + (part > 0 ? plus : minus_word);
  };
  say(v.z, "up", "down");
  say(v.y, "to the left", "to the right");
  say(v.x, "forwards", "backwards");
  return out.empty() ? "nothing" : out;
}

/// One action as the drawing has it: arrows from `from` to `to` on the axis, at points of a line, and its words.
struct DrawnAction {
  std::string words;
  std::string value{};                                     ///< short, for beside the arrows
  std::vector<std::pair<std::size_t, std::size_t>> lines;  ///< pairs of chords: arrows end midway between the two
  Vec3<> first{}, last{}, total{};
  double from = 0, to = 0;  ///< equal for a single arrow
  double across = 0.5;      ///< where between the two chords, from the first
  bool outside = false;     ///< a pressure: its arrows come from outside and end at the girder
};

/// Sum of the forces that an action becomes.
inline Vec3<> total_of(const Analysis& a, const Action& action) {
  FrameLoads loads;
  a.reduce({action}, loads);
  Vec3<> sum{};
  for (const auto& l : loads.on_nodes) sum += l.force;
  for (const auto& l : loads.on_members) {
    using Kind = MemberLoad::Kind;
    if (l.kind == Kind::force) sum += a.axes(l.member).to_global(l.first);
    if (l.kind == Kind::line) sum += (0.5 * (l.b - l.a)) * a.axes(l.member).to_global(l.first + l.last);
  }
  return sum;
}

/// Where an action acts, in which direction, and how large it is said to be.
inline DrawnAction drawn(const Analysis& analysis, const Action& action) {
  const Girder& g = analysis.girder();
  DrawnAction d;
  d.words = words_of(action, &g);
  d.total = total_of(analysis, action);
  const auto reach = [&](const Reach& r) {
    d.from = r.from ? *r.from : 0.0;
    d.to = r.to ? *r.to : g.span();
  };
  std::visit(
      [&]<class A>(const A& a) {
        if constexpr (std::is_same_v<A, BasicLineLoad<>>) {
          for (const ChordRef& c : a.chords) d.lines.emplace_back(g.chord(c), g.chord(c));
          d.first = a.first;
          d.last = a.last;
          d.value = line_load_words(larger(length(a.first), length(a.last)));
          reach(a.reach);
        } else if constexpr (std::is_same_v<A, BasicChordPoint<>>) {
          d.lines.emplace_back(g.chord(a.chord), g.chord(a.chord));
          d.first = d.last = a.force;
          d.value = force_words(length(a.force));
          d.from = d.to = a.x;
        } else if constexpr (std::is_same_v<A, BasicCrossMemberPoint<>>) {
          const GirderFace& f = g.faces[g.face(a.face)];
          d.lines.emplace_back(f.first_chord, f.second_chord);
          d.across = a.fraction;
          d.first = d.last = a.force;
          d.value = force_words(length(a.force));
          d.from = d.to = a.station < g.stations.size() ? g.stations[a.station] : 0.0;
        } else if constexpr (std::is_same_v<A, BasicFacePressure<>>) {
          const GirderFace& f = g.faces[g.face(a.face)];
          d.lines.emplace_back(f.first_chord, f.second_chord);
          d.first = d.last = d.total;
          d.value = pressure_words(magnitude(a.pressure));
          d.outside = true;
          reach(a.reach);
        } else if constexpr (std::is_same_v<A, BasicWindOnBars<>>) {
          d.lines.emplace_back(0, g.chords.size() - 1);
          d.first = d.last = a.direction;
          d.value = pressure_words(a.pressure);
          d.outside = true;
          reach({});
        }  // what has no place of its own is told in words alone
      },
      action);
  return d;
}

/// The point of a chord at x along the axis.
inline Vec3<> on_chord(const Girder& g, std::size_t chord, double x) {
  const int bay = g.bay_at(x);
  const auto b = static_cast<std::size_t>(bay < 0 ? 0 : bay);
  const double t = (x - g.stations[b]) / (g.stations[b + 1] - g.stations[b]);
  return g.joint(b, chord) + t * (g.joint(b + 1, chord) - g.joint(b, chord));
}

inline constexpr double lane_height = 36;

/// A direction as a view shows it, y down the page.
inline Spot seen_as(Seen seen, const Vec3<>& v) { return {v.x, seen == Seen::from_right ? -v.z : -v.y}; }

/// Whether enough of an action points along a view's page to be drawn there.
inline bool shows(Seen seen, const DrawnAction& d) {
  const double most = larger(distance({}, seen_as(seen, d.first)), distance({}, seen_as(seen, d.last)));
  return most > 0.15 * larger(length(d.first), length(d.last));
}
/// From where arrows come: -1 above, 1 below, 0 for what is not drawn in this view.
inline int side_of(Seen seen, const DrawnAction& d) {
  if (d.lines.empty() || !shows(seen, d)) return 0;
  return seen_as(seen, d.first).y >= 0.0 ? -1 : 1;
}

/// Arrows of one action in one view, as far as it is seen there, and its letter; those from outside in their own lane.
inline void draw_action(Picture& p, const FlatView& view, const DrawnAction& d, const std::string& letter, int lane) {
  if (!shows(view.seen(), d)) return;
  const Girder& g = view.model().girder;
  const Spot first = seen_as(view.seen(), d.first), last = seen_as(view.seen(), d.last);
  const double most = larger(distance({}, first), distance({}, last));
  const bool single = d.from == d.to;
  bool named = false;
  for (const auto& ends : d.lines) {
    const auto tip = [&](double x) {
      const Spot sa = view.spot(on_chord(g, ends.first, x)), sb = view.spot(on_chord(g, ends.second, x));
      Spot s = sa + d.across * (sb - sa);
      if (d.outside && magnitude(first.y) > magnitude(first.x))  // to the girder's edge that it comes upon
        s.y = first.y > 0 ? smaller(sa.y, sb.y) - 3 - lane_height * lane : larger(sa.y, sb.y) + 3 + lane_height * lane;
      return s;
    };
    const double px = distance(tip(d.from), tip(d.to));
    // a single arrow begins clear of the girder, where its words can be read
    const double onto = first.y > 0 ? tip(d.from).y - view.top() : view.bottom() - tip(d.from).y;
    const bool along_page = magnitude(first.x) > magnitude(first.y);
    const double reach = !single ? 16.0 : along_page ? 24.0 : larger(24.0, onto + 14.0);
    const int n = single ? 0 : px < 24.0 ? 1 : static_cast<int>(px / 24.0);
    std::vector<Spot> tails;
    for (int i = 0; i <= n; ++i) {
      const double t = n == 0 ? 0.0 : static_cast<double>(i) / n;
      const Spot v = (reach / most) * (first + t * (last - first)), at = tip(d.from + t * (d.to - d.from));
      tails.push_back(at - v);
      p.svg.arrow(at - v, at, "bw-load");
    }
    if (n > 0) p.svg.polyline(tails, "bw-load");
    if (named) continue;
    const Spot middle = tails[tails.size() / 2], v = (1.0 / most) * first;
    const Spot beyond = middle - 9.0 * v + Spot{0, 4};
    for (const std::string& words : {letter + ": " + d.value, letter}) {
      const double step = 0.5 * width_of(words) + 8;
      named = named || p.labels.place(p.svg, words, "bw-load", Letters::words,
                                      {{beyond, Anchor::middle},
                                       {beyond + Spot{step, 0}, Anchor::middle},
                                       {beyond - Spot{step, 0}, Anchor::middle},
                                       {beyond + Spot{2 * step, 0}, Anchor::middle},
                                       {beyond - Spot{2 * step, 0}, Anchor::middle}});
    }
  }
}

}  // namespace detail

inline std::string load_drawing(const Analysis& analysis, const LoadCase& load_case, const Look& look = {}) {
  const GirderModel& model = analysis.model();
  std::vector<detail::DrawnAction> actions;
  std::string all;
  Vec3<> sum{};
  for (std::size_t i = 0; i < load_case.actions.size(); ++i) {
    detail::DrawnAction d = detail::drawn(analysis, load_case.actions[i]);
    const std::string letter =
        i < 26 ? std::string(1, static_cast<char>('a' + static_cast<int>(i))) : std::to_string(i + 1);
    d.words = letter + ": " + d.words;
    if (length(d.total) > 0.0) d.words += "; in all " + detail::direction_words(d.total, force_words);
    d.words += '.';
    all += (i > 0 ? " " : "") + d.words;
    sum += d.total;
    actions.push_back(std::move(d));
  }
  bool shown_from_above = false;
  for (const detail::DrawnAction& d : actions)
    shown_from_above = shown_from_above || detail::side_of(Seen::from_above, d) != 0;
  Picture p(look, "Loads of the case " + load_case.name +
                      (load_case.name == name(load_case.nature) ? "" : std::string(" (") + name(load_case.nature) + ")"), all);
  for (const Seen seen : {Seen::from_right, Seen::from_above}) {
    // what acts on the girder's bars has the lane next to them, what comes from outside one of its own farther out
    std::array<int, 2> lanes{}, outside{};  // above, below
    for (const detail::DrawnAction& d : actions)
      if (const int side = detail::side_of(seen, d); side != 0) {
        const std::size_t k = side < 0 ? 0 : 1;
        (d.outside ? outside[k] : lanes[k]) = d.outside ? outside[k] + 1 : 1;
      }
    const bool nothing = lanes[0] + lanes[1] + outside[0] + outside[1] == 0;
    if (nothing && (seen == Seen::from_above || shown_from_above)) continue;
    FlatView view(p, model, seen, 40 + detail::lane_height * larger(0, lanes[0] + outside[0] - 1),
                  34 + detail::lane_height * (outside[1] == 0 ? 0 : lanes[1] + outside[1]));
    view.draw_bars("bw-quiet bw-thin", "bw-quiet");
    draw_supports(p, view);
    for (std::size_t i = 0; i < actions.size(); ++i) {
      const detail::DrawnAction& d = actions[i];
      const int side = detail::side_of(seen, d);
      if (side == 0) continue;
      int& lane = lanes[side < 0 ? 0 : 1];
      p.svg.open("bw-action", {{"action", std::to_string(i)}});
      detail::draw_action(p, view, d, d.words.substr(0, d.words.find(':')),
                          d.outside ? lane++ : 0);
      p.svg.close();
    }
  }
  for (const detail::DrawnAction& d : actions) p.paragraph(d.words, "bw-ink");
  p.paragraph(
      "Sum of all forces: " + detail::direction_words(sum, force_words) +
      ". Arrows point as the loads act; their lengths are not to one scale. Forwards is along the girder's axis.");
  return p.finished();
}

}  // namespace baywork::show
