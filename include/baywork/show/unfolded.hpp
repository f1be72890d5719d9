// SPDX-License-Identifier: MIT
// A girder unfolded: its faces as strips below each other, each bar where it lies, with a side to draw values on.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/frame/girder_model.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/show/picture.hpp>

namespace baywork::show {

/// A bar as it lies on a strip. Chords lie on two.
struct StripBar {
  std::size_t member = no_member, face = 0;
  Spot from, to;  ///< of its flexible length
  Spot side;      ///< unit, square to the bar on the page: where (bar's x) × (face's outward normal) points
  Vec3<> normal;  ///< of the face at the bar, out of the girder

  Spot at(double fraction) const { return from + fraction * (to - from); }
};

/// Lays the strips out and draws nothing but what it is asked for. On each strip x runs along the girder as its
/// stations count; the chord that lies higher is above, of two level ones the left one.
class Unfolded {
 public:
  /// `room`: kept free above and below each strip for diagrams [px]. `faces`: all where none is named.
  Unfolded(Picture& picture, const GirderModel& model, double room, std::vector<std::size_t> faces = {},
           double least_height = 40)
      : picture_(picture), model_(model), faces_(std::move(faces)) {
    if (faces_.empty())
      for (std::size_t f = 0; f < girder().faces.size(); ++f) faces_.push_back(f);
    deepest_ = 0;
    for (const std::size_t f : faces_)
      for (std::size_t i = 0; i < girder().stations.size(); ++i) deepest_ = larger(deepest_, depth(f, i));
    x_scale_ = (picture.width() - 2 * inset) / girder().span();
    y_scale_ = larger(x_scale_, least_height / deepest_);
    strips_.resize(girder().faces.size());
    for (const std::size_t f : faces_) lay(f, room);
  }

  static constexpr double inset = 14;  ///< px between the page's margin and the girder's ends

  const GirderModel& model() const noexcept { return model_; }
  const Girder& girder() const noexcept { return model_.girder; }
  const std::vector<std::size_t>& faces() const noexcept { return faces_; }
  double x_of(double along) const { return picture_.left() + inset + x_scale_ * along; }
  double px_per_metre() const noexcept { return x_scale_; }
  /// How many times heights are drawn larger than lengths.
  double stretch() const noexcept { return y_scale_ / x_scale_; }
  /// Upper and lower edge of a strip's bars [px].
  double top_of(std::size_t face) const { return strips_[face].middle - 0.5 * deepest_ * y_scale_; }
  double bottom_of(std::size_t face) const { return strips_[face].middle + 0.5 * deepest_ * y_scale_; }

  /// All bars of a face: chords, cross members and posts, then what is inside the panels.
  std::vector<StripBar> bars(std::size_t face) const {
    std::vector<StripBar> out;
    const GirderFace& g = girder().faces[face];
    for (std::size_t b = 0; b < girder().bays(); ++b)
      for (const std::size_t c : {g.first_chord, g.second_chord})
        out.push_back(bar(face, model_.chord_member(b, c), b));
    const FaceMembers& m = model_.faces[face];
    for (std::size_t s = 0; s < m.cross_members.size(); ++s)
      for (const std::size_t i : m.cross_members[s]) out.push_back(bar(face, i, s < girder().bays() ? s : s - 1));
    for (const PanelMembers& p : m.panels)
      for (const std::size_t i : p.diagonals) out.push_back(bar(face, i, p.first_station));
    return out;
  }

  /// Which side of a bar is free: -1 above it (the strip's upper chord), 1 below it (the lower one), 0 for what lies
  /// between the chords.
  double beside(const StripBar& b) const {
    const double y = 0.5 * (b.from.y + b.to.y), middle = strips_[b.face].middle;
    if (model_.frame.members[b.member].address.role != Role::chord) return 0.0;
    return y < middle ? -1.0 : 1.0;
  }

  /// The bars as thin lines.
  void draw_bars(std::string_view cls = "bw-quiet") {
    for (const std::size_t f : faces_) {
      picture_.svg.open("bw-face", {{"face", girder().faces[f].name}});
      for (const StripBar& b : bars(f)) picture_.svg.line(b.from, b.to, cls);
      picture_.svg.close();
    }
  }

  /// Numbers of stations below the last strip, as many as have room, and the span.
  void draw_stations() {
    const std::size_t n = girder().stations.size();
    double pitch = 1e9;
    for (std::size_t i = 1; i < n; ++i)
      pitch = smaller(pitch, x_scale_ * (girder().stations[i] - girder().stations[i - 1]));
    const std::size_t step = every(pitch, width_of(std::to_string(n), Letters::small));
    const double y = picture_.y + 2;
    picture_.svg.line({x_of(0), y}, {x_of(girder().span()), y}, "bw-quiet");
    for (std::size_t i = 0; i < n; ++i) {
      const double x = x_of(girder().stations[i]);
      const bool named = i % step == 0;
      picture_.svg.line({x, y}, {x, y + (named ? 5 : 3)}, girder().is_splice(i) ? "bw-ink bw-bold" : "bw-quiet");
      if (named)
        picture_.labels.place(picture_.svg, std::to_string(i + 1), "bw-quiet", Letters::small,
                              {{{x, y + 16}, Anchor::middle}});
    }
    picture_.y = y + 20;
    std::string words = "Stations are numbered below; span " + baywork::text::number(girder().span(), 5) + " m";
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

  void lay(std::size_t f, double room) {
    const GirderFace& g = girder().faces[f];
    Vec3<> rise{};
    for (std::size_t i = 0; i < girder().stations.size(); ++i)
      rise += girder().joint(i, g.second_chord) - girder().joint(i, g.first_chord);
    const double size = length(rise);
    Strip& s = strips_[f];
    s.second_above = std::abs(rise.z) > 0.1 * size ? rise.z > 0.0 : rise.y > 0.0;
    const std::string& upper = girder().chords[s.second_above ? g.second_chord : g.first_chord].name;
    const std::string& lower = girder().chords[s.second_above ? g.first_chord : g.second_chord].name;
    picture_.space(4);
    picture_.paragraph(g.name + " face: above the " + upper + " chord, below the " + lower + " chord", "bw-ink");
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
      const Vec3<> m0 = 0.5 * (a0 + b0), along = 0.5 * (a1 + b1) - m0;
      const double t = dot(p - m0, along) / dot(along, along);
      if (t > 1.0 + 1e-9 && b + 1 < girder().bays()) continue;
      out.t = t;
      out.bay = b;
      out.first = a0 + t * (a1 - a0);
      out.across = b0 + t * (b1 - b0) - out.first;
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

  Picture& picture_;
  const GirderModel& model_;
  std::vector<std::size_t> faces_;
  std::vector<Strip> strips_;
  double deepest_ = 0, x_scale_ = 1, y_scale_ = 1;
};

}  // namespace baywork::show
