// SPDX-License-Identifier: MIT
// The deformed girder: elevation and plan, a cross-section's distortion, and how open panels lose their right angles.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/deflections.hpp>
#include <baywork/response/panel_table.hpp>
#include <baywork/show/support_symbols.hpp>
#include <baywork/show/unfolded.hpp>
#include <baywork/show/views.hpp>

namespace baywork::show {

namespace detail {

/// Points of a curve on the page, at(t) for t from 0 to 1, until straight lines leave it by less than 0.004 px.
template <class At>
std::vector<Spot> smooth(At at) {
  std::vector<Spot> out{at(0.0)};
  const auto add = [&](auto&& self, double from, const Spot& a, double to, const Spot& b, int left) -> void {
    const double middle = 0.5 * (from + to);
    const Spot m = at(middle), l = at(0.5 * (from + middle)), r = at(0.5 * (middle + to));
    const double off =
        larger(distance(m, 0.5 * (a + b)), larger(distance(l, a + 0.25 * (b - a)), distance(r, a + 0.75 * (b - a))));
    if (left > 0 && off > 0.004) {
      self(self, from, a, middle, m, left - 1);
      self(self, middle, m, to, b, left - 1);
    } else {
      out.push_back(b);
    }
  };
  add(add, 0.0, out[0], 1.0, at(1.0), 8);
  return out;
}

/// A bar of round length: 1, 2 or 5 of some unit, 30 to 75 px long at `px_per_metre`.
inline void scale_bar(Picture& p, double px_per_metre, const std::string& what) {
  if (!(px_per_metre > 0.0)) return;
  const double size = round_step(30.0 / px_per_metre), y = p.y + 6, end = p.left() + size * px_per_metre;
  p.svg.line({p.left(), y}, {end, y}, "bw-pull bw-bold");
  p.svg.line({p.left(), y - 4}, {p.left(), y + 4}, "bw-pull");
  p.svg.line({end, y - 4}, {end, y + 4}, "bw-pull");
  p.labels.place(p.svg, motion_words(size) + what, "bw-ink", Letters::small, {{{end + 8, y + 3.5}}});
  p.space(16);
}

/// Where a quantity of the chords is greatest by magnitude.
struct Greatest {
  double value = 0;
  std::size_t member = no_member;
};
inline Greatest greatest_along(const Response& r, const Vec3<>& direction) {
  Greatest out;
  for (const std::size_t m : r.model().chord_members) {
    const Extremes e = r.member(m).displacement_extremes(direction);
    const double v = magnitude(e.least) > magnitude(e.greatest) ? e.least : e.greatest;
    if (magnitude(v) > magnitude(out.value) * (1.0 + 1e-9)) out = {v, m};
  }
  return out;
}

/// How a cross-section moves: mean, turn about the axis, what no rigid motion explains, and the most that a chord moves
/// against the mean.
struct SectionMotion {
  std::size_t station = 0;
  Vec3<> mean{};
  double turn = 0, distortion = 0, most = 0;
};
inline SectionMotion section_motion(const Response& r, std::size_t station) {
  const Girder& g = r.girder();
  SectionMotion out{station, r.axis_deflection(g.stations[station]), r.twist(g.stations[station])};
  const std::size_t n = g.chords.size(), bay = station < g.bays() ? station : station - 1;
  Vec3<> centre{}, along{};
  for (std::size_t c = 0; c < n; ++c) {
    centre += (1.0 / static_cast<double>(n)) * g.joint(station, c);
    along += g.joint(bay + 1, c) - g.joint(bay, c);
  }
  along = unit(along);
  for (std::size_t c = 0; c < n; ++c) {
    const Vec3<> arm = g.joint(station, c) - centre;
    Vec3<> own = r.answer().displacement(r.model().chord_node(station, c)) - out.mean;
    own -= dot(own, along) * along;
    out.most = larger(out.most, length(own));
    out.distortion = larger(out.distortion, length(own - out.turn * cross(along, arm)));
  }
  return out;
}

/// One cross-section at rest (dashed) and moved, its mean motion taken off.
inline void moved_section(Picture& p, const Response& r, const SectionMotion& s) {
  const GirderModel& model = r.model();
  const Girder& g = model.girder;
  const double size = 110;
  p.paragraph("Cross-section at station " + std::to_string(s.station + 1) +
                  ", seen along the girder, its mean motion taken off",
              "bw-ink");
  p.space(34);
  const EndView probe(g, s.station, {0, 0}, size);
  const EndView view(
      g, s.station,
      {p.left() + 40 + 0.5 * probe.px_per_metre() * probe.wide(), p.y + 0.5 * probe.px_per_metre() * probe.high()},
      size);
  std::vector<std::size_t> bars;
  for (const FaceMembers& f : model.faces)
    bars.insert(bars.end(), f.cross_members[s.station].begin(), f.cross_members[s.station].end());
  for (const std::size_t m : model.diaphragm_members)
    if (model.frame.members[m].address.station == static_cast<int>(s.station)) bars.push_back(m);
  double most = 0;  // bars may bow more than their joints move
  const auto seen = [&](const Vec3<>& u) { most = larger(most, distance({}, view.moved({}, u, 1.0) - view.spot({}))); };
  for (std::size_t c = 0; c < g.chords.size(); ++c)
    seen(r.answer().displacement(model.chord_node(s.station, c)) - s.mean);
  for (const std::size_t m : bars)
    for (int i = 1; i < 16; ++i) seen(r.member(m).displacement(fraction{i / 16.0}) - s.mean);
  const double scale = most > 0.0 ? 26.0 / most : 0.0;
  p.svg.open("bw-section", {{"px-per-m", baywork::text::number(scale, 9)}, {"station", std::to_string(s.station)}});
  for (const GirderFace& f : g.faces)
    p.svg.line(view.spot(g.joint(s.station, f.first_chord)), view.spot(g.joint(s.station, f.second_chord)),
               "bw-quiet bw-dash");
  for (const std::size_t m : bars) {
    const MemberView v = r.member(m);
    const MemberAxes<>& a = v.axes();
    p.svg.open("", {{"member", std::to_string(m)}});
    p.svg.polyline(smooth([&](double t) {
                     return view.moved(a.start + t * (a.end - a.start), v.displacement(fraction{t}) - s.mean, scale);
                   }),
                   "bw-pull bw-bold");
    p.svg.close();
  }
  for (std::size_t c = 0; c < g.chords.size(); ++c) {
    const Spot at =
        view.moved(g.joint(s.station, c), r.answer().displacement(model.chord_node(s.station, c)) - s.mean, scale);
    p.svg.circle(at, 4, "bw-page");
    p.svg.circle(at, 4, "bw-pull bw-bold");
  }
  p.svg.close();
  p.y = view.bottom_edge() + 40;
  scale_bar(p, scale, " of displacement");
  p.paragraph("Turn about the axis " + turn_words(s.turn) +
              " (positive: clockwise as seen here); what no rigid motion explains, the distortion: " +
              motion_words(s.distortion) + ".");
}

/// A face's open panels as they shear, with the change of their right angles.
inline void sheared_panels(Picture& p, const Response& r, std::size_t f, double most) {
  const Girder& g = r.girder();
  const GirderFace& face = g.faces[f];
  const PanelTable table = panel_table(r, f);
  p.space(4);
  p.paragraph(capital(face.name) + " face: change of the right angles of open panels", "bw-ink");
  const StripParts parts(g, p.look_width());
  const double height = 30, scale = most > 0.0 ? 0.5 / most : 0.0;  // the greatest leans 1 in 2
  const double per_metre = (p.width() - 60) / parts.longest, left = p.left() + 22;
  const double sense = strip_second_above(g, f) ? 1.0 : -1.0;
  const OneUnit unit = turn_words.of(most);
  for (std::size_t part = 0; part < parts.size(); ++part) {
    p.space(6);
    const double top = p.y, bottom = top + height;
    const auto x_of = [&](std::size_t station) {
      return left + per_metre * (g.stations[station] - g.stations[parts.ends[part]]);
    };
    const auto each = [&](auto visit) {
      for (std::size_t i = 0; i < table.panels.size(); ++i) {
        const PanelRow& row = table.panels[i];
        if (face.panels.panel(i).facts().layout == Layout::open && row.first_station >= parts.ends[part] &&
            row.last_station <= parts.ends[part + 1])
          visit(i, row);
      }
    };
    p.svg.open("bw-angles", {{"face", face.name}, {"lean-per-rad", baywork::text::number(scale, 9)}});
    each([&](std::size_t i, const PanelRow& row) {
      const double x0 = x_of(row.first_station) + 1.5, x1 = x_of(row.last_station) - 1.5;
      p.svg.rect({x0, top}, x1 - x0, height, "bw-quiet bw-dash");
      // the angle at the first chord becomes smaller: the second chord goes along x against the first
      const double lean = 0.5 * scale * row.angle_change * height * sense;
      p.svg.open("", {{"panel", std::to_string(i)}});
      p.svg.polygon({{x0 + lean, top}, {x1 + lean, top}, {x1 - lean, bottom}, {x0 - lean, bottom}},
                    "bw-pull-area bw-pale");
      p.svg.close();
    });
    p.svg.close();
    each([&](std::size_t, const PanelRow& row) {
      p.labels.place(
          p.svg, unit(row.angle_change, most), "bw-pull", Letters::small,
          {{{0.5 * (x_of(row.first_station) + x_of(row.last_station)), 0.5 * (top + bottom) + 3.5}, Anchor::middle}});
    });
    p.y = bottom + 6;
  }
}

}  // namespace detail

inline std::string deformed_shape(const Response& r, const Look& look = {}) {
  const GirderModel& model = r.model();
  const Girder& g = model.girder;
  const detail::Greatest z = detail::greatest_along(r, {0, 0, 1}), y = detail::greatest_along(r, {0, 1, 0});
  const auto tell = [&](const detail::Greatest& e, const char* what, const char* plus, const char* minus_word) {
    if (e.member == no_member) return std::string("No ") + what + " motion";
    return std::string("Greatest ") + what + " motion of the chords " + motion_words(magnitude(e.value)) + ' ' +
           (e.value > 0 ? plus : minus_word) + ": " + model.frame.name_of_member(e.member);
  };
  const std::string greatest =
      tell(z, "vertical", "up", "down") + ". " + tell(y, "horizontal", "to the left", "to the right") + ".";
  Picture p(look, "Deformed shape, " + r.name(), greatest);
  const double most = r.max_deflection(), along = magnitude(detail::greatest_along(r, {1, 0, 0}).value);
  const double scale = most > 0.0 ? smaller(30.0 / most, 20.0 / larger(along, 1e-300)) : 0.0;  // not off the page
  std::string scale_words;
  for (const Seen seen : {Seen::from_right, Seen::from_above}) {
    FlatView view(p, model, seen, 34, 34);
    view.draw_bars("bw-quiet bw-thin", "bw-quiet bw-dash");
    p.svg.open("bw-deformed", {{"seen", seen == Seen::from_right ? "elevation" : "plan"},
                               {"px-per-m", baywork::text::number(scale, 9)}});
    for (std::size_t m = 0; m < model.frame.members.size(); ++m) {
      const MemberView v = r.member(m);
      const MemberAxes<>& a = v.axes();
      if (!view.visible(view.spot(a.start), view.spot(a.end)) && model.frame.members[m].address.role != Role::chord)
        continue;
      p.svg.open("", {{"member", std::to_string(m)}});
      p.svg.polyline(detail::smooth([&](double t) {
                       return view.moved(a.start + t * (a.end - a.start), v.displacement(fraction{t}), scale);
                     }),
                     model.frame.members[m].address.role == Role::chord ? "bw-pull bw-bold" : "bw-pull");
      p.svg.close();
    }
    p.svg.close();
    draw_supports(p, view);
    if (seen == Seen::from_right && scale > 0.0)
      scale_words = " Displacements are drawn to " + baywork::text::number(scale / view.px_per_metre(), 3) +
                    " times the scale of lengths.";
  }
  detail::scale_bar(p, scale, " of displacement");
  p.paragraph(greatest + scale_words);

  detail::SectionMotion worst = detail::section_motion(r, 0);
  detail::SectionMotion turned = worst;
  double most_mean = 0;
  std::size_t most_moved = 0;
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    const detail::SectionMotion s = detail::section_motion(r, i);
    if (s.distortion > worst.distortion * (1.0 + 1e-6)) worst = s;
    if (s.most > turned.most * (1.0 + 1e-6)) turned = s;
    if (length(s.mean) > most_mean * (1.0 + 1e-6)) {
      most_mean = length(s.mean);
      most_moved = i;
    }
  }
  if (!(worst.distortion > 0.01 * turned.most)) worst = turned;
  if (!(worst.most > 1e-6 * most)) worst = detail::section_motion(r, most_moved);
  detail::moved_section(p, r, worst);

  double most_angle = 0;
  std::vector<std::size_t> open_faces;
  for (std::size_t f = 0; f < g.faces.size(); ++f) {
    bool any = false;
    if (g.faces[f].panels.empty()) continue;
    const PanelTable table = panel_table(r, f);
    for (std::size_t i = 0; i < table.panels.size(); ++i)
      if (g.faces[f].panels.panel(i).facts().layout == Layout::open) {
        any = true;
        most_angle = larger(most_angle, magnitude(table.panels[i].angle_change));
      }
    if (any) open_faces.push_back(f);
  }
  for (const std::size_t f : open_faces) detail::sheared_panels(p, r, f, most_angle);
  if (!open_faces.empty())
    p.paragraph(
        std::string("Values in ") + turn_words.of(most_angle).name +
        "; positive: the angle between the face's first chord and the cross member at the panel's start becomes "
        "smaller. Greatest " +
        turn_words(most_angle) + ", drawn as a lean of 1 in 2.");
  return p.finished();
}

}  // namespace baywork::show
