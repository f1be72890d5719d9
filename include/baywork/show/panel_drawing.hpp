// SPDX-License-Identifier: MIT
// One panel of a face, drawn large: shear, moments, points of contraflexure, and the portal method beside the solver.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/hand_check/panel_portal.hpp>
#include <baywork/show/strip_diagram.hpp>

namespace baywork::show {

namespace detail {

/// Rows of words and right-aligned numbers from (x, y) on, the first row the head; returns where it ends. On a page too
/// narrow for that the numbers stand below their words.
inline double number_table(Picture& p, double left, double y, const std::vector<std::vector<std::string>>& rows) {
  std::vector<double> widths(rows[0].size(), 0.0);
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = larger(widths[i], width_of(row[i], Letters::small));
  double whole = 0;
  for (const double w : widths) whole += w + 16;
  const bool below = left + whole - 16 > p.right();
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const char* ink = r == 0 ? "bw-quiet" : "bw-ink";
    y += 15;
    double x = below ? left + 10 : left + widths[0];
    p.labels.place(p.svg, rows[r][0], ink, Letters::small, {{{left, y}}});
    if (below) y += 13;
    for (std::size_t i = 1; i < rows[r].size(); ++i) {
      x += widths[i] + 16;
      p.labels.place(p.svg, rows[r][i], ink, Letters::small, {{{x, y}, Anchor::end}});
    }
    if (r == 0) p.svg.line({left, y + 4}, {x, y + 4}, "bw-grid");
  }
  return y;
}

/// Which way the panel's shear bends its bars: 1 where n × x points from the first to the second chord, else -1.
inline double sense_of_panel(const Girder& g, const GirderFace& f, const Vec3<>& normal, std::size_t station) {
  const Vec3<> along = g.joint(station + 1, f.first_chord) - g.joint(station, f.first_chord);
  const Vec3<> across = g.joint(station, f.second_chord) - g.joint(station, f.first_chord);
  return dot(cross(normal, along), across) < 0.0 ? -1.0 : 1.0;
}

}  // namespace detail

/// Panels count from 0. The portal method's moments about the face's normal n, from dm/dx = −V/2 along each chord and
/// no moment in its middle: ±s V a/4 at a chord's start and end, with s = 1 where n × x points from the first to the
/// second chord and −1 elsewhere; the cross member takes both panels' at each joint, −s (V₁ a₁ + V₂ a₂)/4 at the first
/// chord.
inline std::string panel_drawing(const Response& r, const FaceRef& face, std::size_t panel, const Look& look = {}) {
  const GirderModel& model = r.model();
  const Girder& g = model.girder;
  const PanelTable table = panel_table(r, face);
  if (panel >= table.panels.size())
    fail<BadDescription>(table.face + " face", "a drawing of panel " + std::to_string(panel + 1) + " is asked for",
                         "panels 1 to " + std::to_string(table.panels.size()) + " are accepted");
  const std::size_t f = face.in(model.frame.names.faces);
  const GirderFace& own = g.faces[f];
  const PanelRow& row = table.panels[panel];
  const double s = detail::sense_of_panel(g, own, model.faces[f].normals[panel], row.first_station);
  const auto Va4 = [&](std::size_t p) {
    return p < table.panels.size() ? 0.25 * table.panels[p].shear * table.panels[p].length : 0.0;
  };
  const double chord_portal = s * Va4(panel);
  const std::array<double, 2> cross_portal{-s * ((panel > 0 ? Va4(panel - 1) : 0.0) + Va4(panel)),
                                           -s * (Va4(panel) + Va4(panel + 1))};

  const std::string where = std::string("Panel ") + std::to_string(panel + 1) + " of the " + own.name + " face";
  const bool open_panel = own.panels.panel(panel).facts().layout == Layout::open;
  Picture p(look, where + ", " + r.name(),
            where + ", shear " + force_words(row.shear) + ". Greatest end moment of the chords " +
                moment_words(row.chord_moment()) + ", by the portal method " + moment_words(magnitude(chord_portal)) +
                ".");
  const bool side_by_side = look.width >= 660;
  const double reach = 34, inset = look.width < 760 ? 84.0 : 110.0, table_width = 300, top = p.y;
  Unfolded strip(p, model,
                 {.room = reach + 30,
                  .faces = {f},
                  .least_height = 130,
                  .tallest = 240,
                  .inset = inset,
                  .beside = side_by_side ? table_width : 0.0,
                  .first_station = row.first_station,
                  .last_station = row.last_station});
  struct Drawn {
    StripBar bar;
    std::vector<CurvePoint> curve;
    double length;
  };
  std::vector<Drawn> drawn;
  double most = larger(magnitude(cross_portal[0]), larger(magnitude(cross_portal[1]), magnitude(chord_portal)));
  const auto weights = [&](const StripBar& b) {
    const MemberAxes<>& a = r.analysis().axes(b.member);
    return Weights{0, 0, 0, 0, dot(a.y, b.normal), dot(a.z, b.normal)};
  };
  for (const StripBar& b : strip.bars(f)) {
    for (const CurvePoint& c : bar_curve(r, b.member, weights(b), 1e300)) most = larger(most, magnitude(c.value));
    drawn.push_back({b, {}, r.analysis().axes(b.member).length});
  }
  const double scale = most > 0.0 ? reach / most : 0.0;
  p.svg.open("bw-panel", {{"px-per-Nm", baywork::text::number(scale, 9)}});
  for (Drawn& d : drawn) {
    d.curve = bar_curve(r, d.bar.member, weights(d.bar), scale > 0.0 ? 0.004 / scale : 1e300);
    p.svg.open("", {{"member", std::to_string(d.bar.member)}});
    detail::curve_areas(p, d.curve, d.bar, d.length, d.bar.side, scale, false);
    p.svg.close();
  }
  p.svg.close();
  for (const Drawn& d : drawn) p.svg.line(d.bar.from, d.bar.to, "bw-ink bw-bold");

  // the portal method, dashed
  const auto dashed = [&](const StripBar& first, const StripBar& last, double at_start, double at_end) {
    p.svg.polyline({first.from + scale * at_start * first.side, last.to + scale * at_end * last.side},
                   "bw-load bw-dash");
  };
  const std::size_t bays = row.last_station - row.first_station;
  for (const std::size_t c : {std::size_t{0}, std::size_t{1}})
    dashed(drawn[c].bar, drawn[2 * (bays - 1) + c].bar, chord_portal, -chord_portal);
  for (const Drawn& d : drawn) {
    const Address& a = model.frame.members[d.bar.member].address;
    if (a.role != Role::cross_member || a.piece > 0) continue;
    const bool end = a.station == static_cast<int>(row.last_station);
    if (!end && a.station != static_cast<int>(row.first_station)) continue;
    const auto& pieces = model.faces[f].cross_members[static_cast<std::size_t>(a.station)];
    for (const Drawn& e : drawn)
      if (e.bar.member == pieces.back()) dashed(d.bar, e.bar, cross_portal[end], -cross_portal[end]);
  }

  // the panel's shear as the two sides of a cut push each other
  const Spot middle = strip.spot_on(f, 0.5);
  const bool up = strip.second_above(f) == (row.shear > 0.0);  // what the right part does to the left one
  if (magnitude(row.shear) > 0.0) {
    const Spot tall{0, up ? -22.0 : 22.0};
    p.svg.line(middle - Spot{0, 30}, middle + Spot{0, 30}, "bw-quiet bw-dash");
    p.svg.arrow(middle + Spot{-7, 0} - tall, middle + Spot{-7, 0} + tall, "bw-ink");
    p.svg.arrow(middle + Spot{7, 0} + tall, middle + Spot{7, 0} - tall, "bw-ink");
    const std::string shear = "V " + force_words(magnitude(row.shear));
    p.labels.place(p.svg, shear, "bw-ink", Letters::words,
                   {{middle + Spot{0, 44}, Anchor::middle}, {middle + Spot{0, -36}, Anchor::middle}});
  }
  for (const Drawn& d : drawn) {
    const double own_most = most > 0.0 ? most : 1.0;
    for (std::size_t i = 1; i < d.curve.size(); ++i) {
      const CurvePoint &a = d.curve[i - 1], &b = d.curve[i];
      if ((a.value < 0.0) == (b.value < 0.0) || larger(magnitude(a.value), magnitude(b.value)) < 1e-3 * own_most)
        continue;
      const double x = a.x + a.value / (a.value - b.value) * (b.x - a.x);
      p.svg.circle(d.bar.at(x / d.length), 3.5, "bw-page");
      p.svg.circle(d.bar.at(x / d.length), 3.5, "bw-bend bw-bold");
    }
    for (const std::size_t end : {std::size_t{0}, d.curve.size() - 1}) {
      const CurvePoint& c = d.curve[end];
      if (magnitude(c.value) < 0.03 * most) continue;
      const double t = c.x / d.length, in = 16.0 / larger(32.0, distance(d.bar.from, d.bar.to));
      const Spot out = c.value < 0.0 ? -1.0 * d.bar.side : d.bar.side;
      const Spot tip = d.bar.at(t < 0.5 ? t + in : t - in) + scale * magnitude(c.value) * out;
      const bool across = magnitude(out.x) > 0.7;
      p.labels.place(
          p.svg, moment_words(magnitude(c.value)), "bw-bend", Letters::small,
          {across ? LabelPlace{tip + Spot{out.x > 0 ? 5.0 : -5.0, 3.5}, out.x > 0 ? Anchor::start : Anchor::end}
                  : LabelPlace{tip + Spot{0, out.y > 0 ? 13.0 : -5.0}, Anchor::middle}});
    }
  }
  strip.draw_stations();

  const OneUnit unit = moment_words.of(most);
  const auto size = [&](double v) { return unit(magnitude(v), most); };
  const auto part = [](double v) { return is_finite(v) ? baywork::text::fixed(v, 3) : std::string("none"); };
  std::vector<std::vector<std::string>> rows{{std::string("end moments in ") + unit.name, "solver", "portal"}};
  const auto add_chord = [&](const std::string& chord, double start, double end) {
    rows.push_back({chord + ", station " + std::to_string(row.first_station + 1), size(start), size(chord_portal)});
    rows.push_back({chord + ", station " + std::to_string(row.last_station + 1), size(end), size(chord_portal)});
  };
  add_chord(g.chords[own.first_chord].name, row.first_chord_start, row.first_chord_end);
  add_chord(g.chords[own.second_chord].name, row.second_chord_start, row.second_chord_end);
  for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
    const CrossMemberRow& c = table.cross_members[end == 0 ? row.first_station : row.last_station];
    if (!c.present) continue;
    const std::string name = "cross member " + std::to_string(c.station + 1) + ", at ";
    rows.push_back({name + g.chords[own.first_chord].name, size(c.first_end), size(cross_portal[end])});
    rows.push_back({name + g.chords[own.second_chord].name, size(c.second_end), size(cross_portal[end])});
  }
  rows.push_back({g.chords[own.first_chord].name + ", no moment at", part(row.first_chord_zero), "0.500"});
  rows.push_back({g.chords[own.second_chord].name + ", no moment at", part(row.second_chord_zero), "0.500"});
  if (side_by_side)
    p.y = larger(p.y, detail::number_table(p, p.right() - table_width, top + 60, rows) + 8);
  else
    p.y = detail::number_table(p, p.left(), p.y, rows) + 8;
  p.paragraph(
      "Panel " + metres(row.length) + " \xC3\x97 " + metres(row.depth) + ", shear " +
      force_words(magnitude(row.shear)) +
      (row.diagonals_shear != 0.0 ? ", of which diagonals carry " + force_words(magnitude(row.diagonals_shear)) : "") +
      ". Arrows: what the parts beside a cut do to each other. Moments on the tension side; rings: points of "
      "contraflexure; dashed: the portal method, V a/4 in each chord, the sum of both panels in a cross member" +
      (open_panel ? "." : "; it is made for open panels, which this one is not."));
  return p.finished();
}

}  // namespace baywork::show
