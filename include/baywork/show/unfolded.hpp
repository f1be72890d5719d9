// SPDX-License-Identifier: MIT
// A girder unfolded: its faces as strips below each other, each bar where it lies, with a side to draw values on.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/frame/girder_model.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/show/picture.hpp>
#include <baywork/show/words.hpp>

namespace baywork::show {

/// A bar as it lies on a strip. Chords lie on two.
struct StripBar {
  std::size_t member = no_member, face = 0;
  Spot from, to;  ///< of its flexible length
  Spot side;      ///< unit, square to the bar on the page: where (bar's x) × (face's outward normal) points
  Vec3<> normal;  ///< of the face at the bar, out of the girder

  Spot at(double fraction) const { return from + fraction * (to - from); }
};

/// Which chord of a face is above on its strip: the one that lies higher, of two level ones the left one.
inline bool strip_second_above(const Girder& g, std::size_t face) {
  Vec3<> rise{};
  for (std::size_t i = 0; i < g.stations.size(); ++i)
    rise += g.joint(i, g.faces[face].second_chord) - g.joint(i, g.faces[face].first_chord);
  return std::abs(rise.z) > 0.1 * length(rise) ? rise.z > 0.0 : rise.y > 0.0;
}

/// How strips are laid out.
struct StripLayout {
  double room = 14;                  ///< kept free above and below each strip for diagrams [px]
  std::vector<std::size_t> faces{};  ///< all where none is named
  double least_height = 40;          ///< of the deepest strip [px]
  double tallest = 200;              ///< [px]: a short deep girder does not fill the page, or it would grow beyond it
  double inset = 14;                 ///< px between the page's margin and the girder's ends
  double beside = 0;                 ///< px kept free to the right for other things
  std::size_t first_station = 0, last_station = no_member;  ///< the part shown; the whole
  double least_length = 0;             ///< [m] that the strip has room for, so that parts have one scale
  std::vector<double> own_room{};      ///< `room` of each face [px], where they differ
  std::vector<std::string> instead{};  ///< of each face: words in place of its strip, none where it is drawn
};

/// A long girder on a narrow page is broken like a line of text: parts of about as many bays each, none of them drawn
/// shorter than `least_pitch` px on the average.
struct StripParts {
  std::vector<std::size_t> ends{0};  ///< stations: part i reaches from ends[i] to ends[i + 1]
  double longest = 0;                ///< [m]

  /// Breaks where no panel of any face is cut, if there are such stations.
  StripParts(const Girder& g, double page_width, double least_pitch = 20) {
    std::vector<bool> cut(g.bays() + 1, false);
    for (const GirderFace& f : g.faces) {
      if (f.panels.empty()) continue;
      std::vector<bool> own(g.bays() + 1, true);
      for (const std::size_t s : f.panels.boundaries(g.bays())) own[s] = false;
      for (std::size_t s = 0; s <= g.bays(); ++s) cut[s] = cut[s] || own[s];
    }
    const double wide = page_width - 2 * Picture::margin - 2 * StripLayout{}.inset;
    const double asked = std::ceil(static_cast<double>(g.bays()) * least_pitch / larger(wide, 1.0) - 1e-9);
    const auto n = static_cast<std::size_t>(larger(1.0, asked));
    for (std::size_t i = 1; i < n; ++i) {
      std::size_t s = i * g.bays() / n;
      while (s > ends.back() && cut[s]) --s;
      if (s > ends.back()) ends.push_back(s);
    }
    if (g.bays() > ends.back()) ends.push_back(g.bays());
    for (std::size_t i = 1; i < ends.size(); ++i)
      longest = larger(longest, g.stations[ends[i]] - g.stations[ends[i - 1]]);
  }
  std::size_t size() const noexcept { return ends.size() - 1; }
  StripLayout of(std::size_t part, StripLayout layout) const {
    layout.first_station = ends[part];
    layout.last_station = ends[part + 1];
    layout.least_length = longest;
    return layout;
  }
};

/// Lays the strips out and draws nothing but what it is asked for. On each strip x runs along the girder as its
/// stations count; the chord that lies higher is above, of two level ones the left one.
class Unfolded {
 public:
  Unfolded(Picture& picture, const GirderModel& model, StripLayout layout)
      : picture_(picture), model_(model), layout_(std::move(layout)) {
    if (layout_.faces.empty())
      for (std::size_t f = 0; f < girder().faces.size(); ++f) layout_.faces.push_back(f);
    if (layout_.last_station == no_member) layout_.last_station = girder().bays();
    for (const std::size_t f : faces())
      for (std::size_t i = 0; i <= girder().bays(); ++i) deepest_ = larger(deepest_, depth(f, i));
    const double shown = larger(girder().stations[last()] - girder().stations[first()], layout_.least_length);
    x_scale_ = smaller((picture.width() - 2 * layout_.inset - layout_.beside) / shown, layout_.tallest / deepest_);
    y_scale_ = larger(x_scale_, layout_.least_height / deepest_);
    left_ = picture.left() + layout_.inset;
    strips_.resize(girder().faces.size());
    layout_.instead.resize(girder().faces.size());
    std::vector<std::size_t> drawn;
    for (const std::size_t f : faces()) {
      if (layout_.instead[f].empty()) {
        lay(f, layout_.own_room.empty() ? layout_.room : layout_.own_room[f]);
        drawn.push_back(f);
        continue;
      }
      picture_.space(4);
      picture_.paragraph(capital(girder().faces[f].name) + " face" + part_words() + ": " + layout_.instead[f],
                         "bw-quiet");
    }
    layout_.faces = std::move(drawn);
  }

  const GirderModel& model() const noexcept { return model_; }
  const Girder& girder() const noexcept { return model_.girder; }
  const std::vector<std::size_t>& faces() const noexcept { return layout_.faces; }
  double x_of(double along) const { return left_ + x_scale_ * (along - girder().stations[first()]); }
  double px_per_metre() const noexcept { return x_scale_; }
  /// How many times heights are drawn larger than lengths.
  double stretch() const noexcept { return y_scale_ / x_scale_; }
  /// Upper and lower edge of a strip's bars [px].
  double top_of(std::size_t face) const { return strips_[face].middle - 0.5 * deepest_ * y_scale_; }
  double bottom_of(std::size_t face) const { return strips_[face].middle + 0.5 * deepest_ * y_scale_; }

  bool second_above(std::size_t face) const { return strips_[face].second_above; }
  /// The middle of a strip's height at a part of the length shown.
  Spot spot_on(std::size_t face, double part) const {
    const double from = girder().stations[first()], to = girder().stations[last()];
    return {x_of(from + part * (to - from)), strips_[face].middle};
  }

  /// All bars of a face: chords, cross members and posts, then what is inside the panels.
  std::vector<StripBar> bars(std::size_t face) const {
    std::vector<StripBar> out;
    const GirderFace& g = girder().faces[face];
    for (std::size_t b = first(); b < last(); ++b)
      for (const std::size_t c : {g.first_chord, g.second_chord})
        out.push_back(bar(face, model_.chord_member(b, c), b));
    const FaceMembers& m = model_.faces[face];
    for (std::size_t s = first(); s <= last(); ++s)
      for (const std::size_t i : m.cross_members[s]) out.push_back(bar(face, i, s < girder().bays() ? s : s - 1));
    for (const PanelMembers& p : m.panels)
      if (p.first_station >= first() && p.last_station <= last())
        for (const std::size_t i : p.diagonals) out.push_back(bar(face, i, p.first_station));
    return out;
  }

  /// Where small words stand that belong to a whole bar drawn `half` px to both sides: above the strip's upper chord,
  /// below its lower one, on what lies between the two.
  LabelPlace beside(const StripBar& b, double half) const {
    const Spot at = b.at(0.5);
    if (model_.frame.members[b.member].address.role != Role::chord) return {at + Spot{0, 3.5}, Anchor::middle};
    return {at + Spot{0, at.y < strips_[b.face].middle ? -half - 3 : half + 11}, Anchor::middle};
  }

  /// The bars as thin lines.
  void draw_bars(std::string_view cls = "bw-quiet") {
    for (const std::size_t f : faces()) {
      picture_.svg.open("bw-face", {{"face", girder().faces[f].name}});
      for (const StripBar& b : bars(f)) picture_.svg.line(b.from, b.to, cls);
      picture_.svg.close();
    }
  }

  /// Numbers of stations below the last strip, as many as have room, and the span.
  void draw_stations() {
    double pitch = 1e9;
    for (std::size_t i = first() + 1; i <= last(); ++i)
      pitch = smaller(pitch, x_scale_ * (girder().stations[i] - girder().stations[i - 1]));
    const std::size_t step = every(pitch, width_of(std::to_string(last() + 1), Letters::small));
    const double y = picture_.y + 2;
    picture_.svg.line({x_of(girder().stations[first()]), y}, {x_of(girder().stations[last()]), y}, "bw-quiet");
    for (std::size_t i = first(); i <= last(); ++i) {
      const double x = x_of(girder().stations[i]);
      const bool named = (i - first()) % step == 0;
      picture_.svg.line({x, y}, {x, y + (named ? 5 : 3)}, girder().is_splice(i) ? "bw-ink bw-bold" : "bw-quiet");
      if (named)
        picture_.labels.place(picture_.svg, std::to_string(i + 1), "bw-quiet", Letters::small,
                              {{{x, y + 16}, Anchor::middle}});
    }
    picture_.y = y + 20;
    if (layout_.least_length > 0.0 && last() < girder().bays()) return;  // words once, below the last part
    std::string words = "Stations are numbered below, bay 1 lies between stations 1 and 2; span " +
                        baywork::text::number(girder().span(), 5) + " m";
    if (!girder().splices.empty()) words += "; bold marks: splices";
    if (stretch() > 1.005) words += "; heights are drawn " + baywork::text::number(stretch(), 3) + " times larger";
    picture_.paragraph(words + ".", "bw-quiet", Letters::small);
  }

 private:
  struct Strip {
    double middle = 0;
    bool second_above = true;
  };

  double depth(std::size_t f, std::size_t station) const {
    const GirderFace& g = girder().faces[f];
    return length(girder().joint(station, g.second_chord) - girder().joint(station, g.first_chord));
  }

  static std::string layout_words(const GirderFace& g) {
    const Layout first = g.panels.empty() ? Layout::none : g.panels.panel(0).facts().layout;
    for (std::size_t i = 1; i < g.panels.given(); ++i)
      if (g.panels.panel(i).facts().layout != first) return "panels of several kinds";
    return first == Layout::none ? "without panels" : name(first);
  }

  std::string part_words() const {
    if (first() == 0 && last() == girder().bays()) return "";
    return ", stations " + std::to_string(first() + 1) + " to " + std::to_string(last() + 1);
  }

  void lay(std::size_t f, double room) {
    const GirderFace& g = girder().faces[f];
    Strip& s = strips_[f];
    s.second_above = strip_second_above(girder(), f);
    const std::string& upper = girder().chords[s.second_above ? g.second_chord : g.first_chord].name;
    const std::string& lower = girder().chords[s.second_above ? g.first_chord : g.second_chord].name;
    picture_.space(4);
    picture_.paragraph(capital(g.name) + " face, " + layout_words(g) + part_words() + ": " + upper + " chord above, " +
                           lower + " chord below",
                       "bw-ink");
    picture_.space(room);
    s.middle = picture_.y + 0.5 * deepest_ * y_scale_;
    picture_.space(deepest_ * y_scale_ + room);
  }

  /// Where along a bay a point lies, and which directions on the strip its surroundings have.
  struct Place {
    double t = 0;  ///< 0 to 1 along the bay
    std::size_t bay = 0;
    Vec3<> first, across, along;
  };
  Place place_in(std::size_t f, const Vec3<>& p, std::size_t bay) const {
    const GirderFace& g = girder().faces[f];
    Place out;
    for (std::size_t b = bay;; ++b) {
      const Vec3<> a0 = girder().joint(b, g.first_chord), a1 = girder().joint(b + 1, g.first_chord);
      const Vec3<> b0 = girder().joint(b, g.second_chord), b1 = girder().joint(b + 1, g.second_chord);
      // p = (1 − s) a(t) + s b(t) by turns: exact for what lies on a station, also where chords are not alike
      double t = 0, s = 0.5;
      Vec3<> along{};
      for (int turn = 0; turn < 4; ++turn) {
        const Vec3<> start = a0 + s * (b0 - a0);
        along = a1 + s * (b1 - a1) - start;
        t = dot(p - start, along) / dot(along, along);
        out.first = a0 + t * (a1 - a0);
        out.across = b0 + t * (b1 - b0) - out.first;
        s = dot(p - out.first, out.across) / dot(out.across, out.across);
      }
      if (t > 1.0 + 1e-9 && b + 1 < girder().bays()) continue;
      out.t = t;
      out.bay = b;
      out.along = along;
      return out;
    }
  }
  Spot spot(std::size_t f, const Vec3<>& p, std::size_t bay) const {
    const Place at = place_in(f, p, bay);
    const double x = girder().stations[at.bay] + at.t * (girder().stations[at.bay + 1] - girder().stations[at.bay]);
    const double s = dot(p - at.first, at.across) / dot(at.across, at.across) - 0.5;
    const double up = (strips_[f].second_above ? s : -s) * length(at.across);
    return {x_of(x), strips_[f].middle - y_scale_ * up};
  }

  StripBar bar(std::size_t f, std::size_t member, std::size_t bay) const {
    const MemberAxes<double> axes = axes_of(model_.frame, model_.frame.members[member]);
    StripBar out;
    out.member = member;
    out.face = f;
    out.from = spot(f, axes.start, bay);
    out.to = spot(f, axes.end, bay);
    const Place at = place_in(f, 0.5 * (axes.start + axes.end), bay);
    const FaceMembers& m = model_.faces[f];
    std::size_t panel = 0;
    while (panel + 1 < m.panels.size() && m.panels[panel].last_station <= at.bay) ++panel;
    out.normal = m.normals.empty() ? unit(cross(at.along, at.across)) : m.normals[panel];
    const Vec3<> side = cross(axes.x, out.normal);
    const double up = dot(side, at.across) * (strips_[f].second_above ? 1.0 : -1.0) / length(at.across);
    const Spot rough{dot(side, at.along) / length(at.along), -up};
    const double l = distance(out.from, out.to);
    const Spot square = (1.0 / l) * Spot{-(out.to.y - out.from.y), out.to.x - out.from.x};
    out.side = (square.x * rough.x + square.y * rough.y >= 0.0 ? 1.0 : -1.0) * square;
    return out;
  }

  std::size_t first() const noexcept { return layout_.first_station; }
  std::size_t last() const noexcept { return layout_.last_station; }

  Picture& picture_;
  const GirderModel& model_;
  StripLayout layout_;
  std::vector<Strip> strips_;
  double deepest_ = 0, x_scale_ = 1, y_scale_ = 1, left_ = 0;
};

}  // namespace baywork::show
