// SPDX-License-Identifier: MIT
// What all diagrams along bars share: exact curves on the unfolded girder, to one scale, with their values.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/show/bar_curve.hpp>
#include <baywork/show/legend.hpp>
#include <baywork/show/unfolded.hpp>
#include <baywork/show/words.hpp>

namespace baywork::show {

/// What one kind of diagram is and says of itself.
struct DiagramWords {
  std::string title;       ///< "Bending in the plane of each face"
  std::string quantity;    ///< "moment"
  std::string convention;  ///< printed below, a sentence or more
  Units units;
  /// What is above and below zero has words of its own and looks different; none: the side drawn on says all.
  std::string positive{}, negative{};
};

namespace detail {

/// What is smaller than this part of the greatest value has no number, and a face of nothing else no diagram.
inline constexpr double worth_a_number = 0.125;

/// Above the bar as it lies on the page; of an upright one, to its left.
inline Spot above(const StripBar& b) {
  const bool upright = magnitude(b.to.x - b.from.x) < 0.05 * distance(b.from, b.to);
  const bool turn = upright ? b.side.x > 0.0 : b.side.y > 0.0;
  return turn ? -1.0 * b.side : b.side;
}
/// Whether a bar runs from its left to its right end on the page; an upright one, downwards.
inline bool runs_to_right(const StripBar& b) {
  const bool upright = magnitude(b.to.x - b.from.x) < 0.05 * distance(b.from, b.to);
  return upright ? b.to.y > b.from.y : b.to.x > b.from.x;
}

/// Where along a bar the label of a place stands: at the ends of upright bars far enough in to be clear of the chords.
inline double off_the_chords(double t, const StripBar& b) {
  const double height = magnitude(b.to.y - b.from.y);
  if (magnitude(b.to.x - b.from.x) > 0.3 * distance(b.from, b.to) || height < 30.0) return t;
  const double in = 10.0 / height;
  return t < in ? in : t > 1.0 - in ? 1.0 - in : t;
}

/// Draws one curve as areas between it and the bar, each of one sign where signs differ.
inline void curve_areas(Picture& p, const std::vector<CurvePoint>& curve, const StripBar& b, double length,
                        const Spot& side, double scale, bool signs) {
  const auto spot = [&](double x, double v) { return b.at(x / length) + scale * v * side; };
  const auto draw = [&](const std::vector<CurvePoint>& run, bool negative) {
    std::vector<Spot> area{spot(run.front().x, 0)};
    for (const CurvePoint& c : run) area.push_back(spot(c.x, c.value));
    area.push_back(spot(run.back().x, 0));
    if (negative)
      p.svg.polygon(area, "bw-bend", Hatch::level);
    else
      p.svg.polygon(area, "bw-bend-area bw-pale");
  };
  if (!signs) return draw(curve, false);
  std::vector<CurvePoint> run{curve.front()};
  for (std::size_t i = 1; i < curve.size(); ++i) {
    const CurvePoint &a = curve[i - 1], &c = curve[i];
    if ((a.value < 0.0) != (c.value < 0.0)) {
      const double t = a.value / (a.value - c.value);
      const CurvePoint zero{a.x + t * (c.x - a.x), 0.0};
      run.push_back(zero);
      draw(run, a.value < 0.0);
      run = {zero};
    }
    run.push_back(c);
  }
  draw(run, run.back().value < 0.0);
}

}  // namespace detail

/// The girder unfolded with a diagram along every bar. `weights(bar, axes)` says what is drawn of the cut forces;
/// `side(bar)` where on the page values above zero go, a unit vector square to the bar.
template <class WeightsOf, class SideOf>
std::string strip_diagram(const Response& r, const DiagramWords& words, const Look& look, WeightsOf weights,
                          SideOf side) {
  const GirderModel& model = r.model();
  const Girder& g = model.girder;
  const StripParts parts(g, look.width);
  double pitch = 1e9;
  for (std::size_t i = 1; i < g.stations.size(); ++i) pitch = smaller(pitch, g.stations[i] - g.stations[i - 1]);
  pitch *= (look.width - 2 * (Picture::margin + StripLayout{}.inset)) / parts.longest;
  const double reach = larger(9.0, smaller(0.8 * pitch, 26.0));  // of the greatest value [px]

  // the greatest values first: all is to one scale, and faces on which nothing would be seen are told of in words
  double most = 0;
  std::size_t most_in = 0;
  std::vector<std::vector<double>> most_on(parts.size(), std::vector<double>(g.faces.size(), 0.0));
  for (std::size_t part = 0; part < parts.size(); ++part) {
    Picture sketch(look, "", "");
    const Unfolded all(sketch, model, parts.of(part, {}));
    for (const std::size_t f : all.faces())
      for (const StripBar& b : all.bars(f))
        for (const CurvePoint& c : bar_curve(r, b.member, weights(b, r.analysis().axes(b.member)), 1e300)) {
          most_on[part][f] = larger(most_on[part][f], magnitude(c.value));
          if (magnitude(c.value) > most * (1.0 + 1e-9)) {  // of equal ones the first, whatever their rounding
            most = magnitude(c.value);
            most_in = b.member;
          }
        }
  }
  const std::string greatest = most > 0.0 ? "Greatest " + words.quantity + ' ' + words.units(most) + ": " +
                                                model.frame.name_of_member(most_in) + "."
                                          : "There is no " + words.quantity + ".";
  Picture p(look, words.title + ", " + r.name(), "Diagrams along all bars of the unfolded girder. " + greatest);
  const double scale = most > 0.0 ? reach / most : 0.0;
  const OneUnit unit = words.units.of(most);
  struct Label {
    double size;  // in millionths of the greatest: what is equal but for rounding keeps its order
    Spot tip, side;
    std::string words;
  };
  const bool signs = !words.negative.empty();
  bool left_out = false;
  for (std::size_t part = 0; part < parts.size(); ++part) {
    std::vector<Label> labels;
    StripLayout layout = parts.of(part, {.room = reach + 13, .least_height = larger(44.0, 2 * reach + 22)});
    for (const double v : most_on[part]) {
      layout.own_room.push_back(scale * v + 13);
      const bool seen = most > 0.0 && v >= detail::worth_a_number * most;
      left_out = left_out || !seen;
      layout.instead.push_back(seen ? ""
                               : v < 1e-9 * most || v == 0.0
                                   ? "no " + words.quantity
                                   : "greatest " + words.quantity + ' ' + words.units(v) + ", not drawn");
    }
    Unfolded strips(p, model, std::move(layout));
    for (const std::size_t f : strips.faces()) {
      p.svg.open("bw-diagram", {{"face", g.faces[f].name}, {"px-per-unit", baywork::text::number(scale, 9)}});
      for (const StripBar& b : strips.bars(f)) {
        const MemberAxes<>& axes = r.analysis().axes(b.member);
        const Spot to = side(b);
        std::vector<CurvePoint> curve = bar_curve(r, b.member, weights(b, axes), scale > 0.0 ? 0.004 / scale : 1e300);
        double own = 0, least = 1e300;
        for (CurvePoint& c : curve) {
          if (magnitude(c.value) < 1e-9 * most) c.value = 0.0;  // rounding alone has no side
          own = larger(own, scale * magnitude(c.value));
          least = smaller(least, scale * magnitude(c.value));
        }
        if (own < 0.05) continue;
        p.svg.open("", {{"member", std::to_string(b.member)}});
        detail::curve_areas(p, curve, b, axes.length, to, scale, signs);
        p.svg.close();
        const auto label = [&](double x, double v) {
          const Spot at = b.at(detail::off_the_chords(x / axes.length, b));
          labels.push_back({std::round(1e6 * magnitude(v) / most), at + scale * v * to, v < 0.0 ? -1.0 * to : to,
                            unit(signs ? v : magnitude(v), most)});
        };
        if (own < detail::worth_a_number * reach) continue;
        if (own - least < 1e-6 * own) {
          label(0.5 * axes.length, curve.front().value);
          continue;
        }
        for (std::size_t i = 0; i < curve.size(); ++i) {
          const auto size = [&](std::size_t k) { return k < curve.size() ? magnitude(curve[k].value) : 0.0; };
          const double v = size(i) * (1.0 + 1e-9);
          if (v >= size(i - 1) && v >= size(i + 1) && v >= detail::worth_a_number * most)
            label(curve[i].x, curve[i].value);
        }
      }
      p.svg.close();
    }
    strips.draw_bars("bw-ink");
    std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.size > b.size; });
    for (const Label& l : labels) {
      const bool across = magnitude(l.side.x) > 0.7;
      const LabelPlace outside =
          across ? LabelPlace{l.tip + 3.0 * l.side + Spot{0, 3.5}, l.side.x > 0 ? Anchor::start : Anchor::end}
                 : LabelPlace{l.tip + Spot{0, l.side.y > 0 ? 11.0 : -3.5}, Anchor::middle};
      p.labels.place(p.svg, l.words, "bw-bend", Letters::small, {outside});
    }
    if (most > 0.0) strips.draw_stations();
  }
  if (signs && most > 0.0)
    detail::legend(p, {{words.positive, "bw-bend-area bw-pale"}, {words.negative, "bw-bend", Hatch::level}});
  p.paragraph(
      greatest + ' ' + words.convention + (most > 0.0 ? std::string(" Values in ") + unit.name + '.' : "") +
      (most > 0.0 && left_out ? " Faces on which nothing reaches an eighth of the greatest are not drawn." : ""));
  return p.finished();
}

}  // namespace baywork::show
