// SPDX-License-Identifier: MIT
// A girder as it is seen from its right side, from above, and along its axis.
#pragma once

#include <cstddef>
#include <string_view>

#include <baywork/frame/girder_model.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/show/picture.hpp>
#include <baywork/show/words.hpp>

namespace baywork::show {

enum class Seen : unsigned char { from_right, from_above };
inline const char* name(Seen s) {
  return s == Seen::from_right ? "Elevation, seen from the right" : "Plan, seen from above";
}

/// Elevation or plan: x runs to the right of the page, z or y upwards. Lies below what the picture has so far.
class FlatView {
 public:
  static constexpr double inset = 14, tallest = 260;

  /// `above` and `below` are kept free for what is drawn beside the girder [px].
  FlatView(Picture& picture, const GirderModel& model, Seen seen, double above, double below, double least_height = 34)
      : picture_(picture), model_(model), seen_(seen) {
    bool first = true;
    for (const Vec3<>& p : model.girder.joints) {
      const double v = up(p);
      if (first || p.x < x_low_) x_low_ = p.x;
      if (first || p.x > x_high_) x_high_ = p.x;
      if (first || v < low_) low_ = v;
      if (first || v > high_) high_ = v;
      first = false;
    }
    const double width = picture.width() - 2 * inset, height = high_ - low_;
    x_scale_ = width / (x_high_ - x_low_);
    if (height > 1e-6 * (x_high_ - x_low_)) {  // a flat ladder seen from its edge is a line
      x_scale_ = smaller(x_scale_, tallest / height);
      y_scale_ = larger(x_scale_, least_height / height);
    } else {
      y_scale_ = x_scale_;
    }
    picture.paragraph(name(seen), "bw-ink");
    picture.space(above);
    top_ = picture.y;
    picture.space(height * y_scale_ + below);
  }

  Seen seen() const noexcept { return seen_; }
  const GirderModel& model() const noexcept { return model_; }
  double up(const Vec3<>& v) const { return seen_ == Seen::from_right ? v.z : v.y; }
  Spot spot(const Vec3<>& p) const {
    return {picture_.left() + inset + x_scale_ * (p.x - x_low_), top_ + y_scale_ * (high_ - up(p))};
  }
  /// A displacement drawn `scale` px per metre.
  Spot moved(const Vec3<>& p, const Vec3<>& u, double scale) const {
    return spot(p) + Spot{scale * u.x, -scale * up(u)};
  }
  double px_per_metre() const noexcept { return x_scale_; }
  double stretch() const noexcept { return y_scale_ / x_scale_; }
  double top() const noexcept { return top_; }
  double bottom() const { return top_ + y_scale_ * (high_ - low_); }

  /// Whether a bar is seen as more than a point.
  bool visible(const Spot& a, const Spot& b) const { return distance(a, b) > 0.3; }
  void draw_bars(std::string_view cls, std::string_view chord_cls) {
    picture_.svg.open("bw-view");
    for (const Member& m : model_.frame.members) {
      const MemberAxes<> axes = axes_of(model_.frame, m);
      const Spot a = spot(axes.start), b = spot(axes.end);
      if (visible(a, b)) picture_.svg.line(a, b, m.address.role == Role::chord ? chord_cls : cls);
    }
    picture_.svg.close();
  }

 private:
  Picture& picture_;
  const GirderModel& model_;
  Seen seen_;
  double x_low_ = 0, x_high_ = 1, low_ = 0, high_ = 0, x_scale_ = 1, y_scale_ = 1, top_ = 0;
};

/// The cross-section at a station, seen along the axis with z up, so that left is left.
class EndView {
 public:
  /// Its greater side is drawn `size` px long.
  EndView(const Girder& g, std::size_t station, const Spot& centre, double size) : station_(station), centre_(centre) {
    const std::size_t n = g.chords.size(), a = station > 0 ? station - 1 : 0,
                      b = station < g.bays() ? station + 1 : station;
    Vec3<> along{};
    for (std::size_t c = 0; c < n; ++c) {
      along += g.joint(b, c) - g.joint(a, c);
      middle_ += (1.0 / static_cast<double>(n)) * g.joint(station, c);
    }
    // square to the ring of chords where it has an area, else to the line between two
    Vec3<> square{};
    for (std::size_t c = 0; c < n; ++c)
      square += cross(g.joint(station, c) - middle_, g.joint(station, (c + 1) % n) - middle_);
    const Vec3<> across = g.joint(station, n - 1) - g.joint(station, 0);
    if (length(square) < 1e-9 * dot(across, across))
      square = along - (dot(along, across) / dot(across, across)) * across;
    along = dot(square, along) < 0.0 ? unit(-square) : unit(square);
    const Vec3<> up = magnitude(along.z) < 0.99 ? Vec3<>{0, 0, 1} : Vec3<>{1, 0, 0};
    left_ = unit(cross(up, along));
    up_ = cross(along, left_);
    double least_x = 0, most_x = 0, least_y = 0, most_y = 0;
    for (std::size_t c = 0; c < n; ++c) {
      const Vec3<> r = g.joint(station, c) - middle_;
      const double x = -dot(r, left_), y = dot(r, up_);
      least_x = smaller(least_x, x);
      most_x = larger(most_x, x);
      least_y = smaller(least_y, y);
      most_y = larger(most_y, y);
    }
    wide_ = most_x - least_x;
    high_ = most_y - least_y;
    middle_ -= (0.5 * (least_x + most_x)) * left_;
    middle_ += (0.5 * (least_y + most_y)) * up_;
    scale_ = size / larger(wide_, high_);
  }

  std::size_t station() const noexcept { return station_; }
  double px_per_metre() const noexcept { return scale_; }
  double wide() const noexcept { return wide_; }  ///< between the outermost chord axes [m]
  double high() const noexcept { return high_; }
  Spot spot(const Vec3<>& p) const {
    const Vec3<> r = p - middle_;
    return centre_ + Spot{-scale_ * dot(r, left_), -scale_ * dot(r, up_)};
  }
  /// A displacement in the section's plane drawn `scale` px per metre.
  Spot moved(const Vec3<>& p, const Vec3<>& u, double scale) const {
    return spot(p) + Spot{-scale * dot(u, left_), -scale * dot(u, up_)};
  }
  const Spot& centre() const noexcept { return centre_; }
  double left_edge() const { return centre_.x - 0.5 * scale_ * wide_; }
  double right_edge() const { return centre_.x + 0.5 * scale_ * wide_; }
  double top_edge() const { return centre_.y - 0.5 * scale_ * high_; }
  double bottom_edge() const { return centre_.y + 0.5 * scale_ * high_; }

 private:
  std::size_t station_;
  Spot centre_;
  Vec3<> middle_{}, left_{}, up_{};
  double wide_ = 0, high_ = 0, scale_ = 1;
};

}  // namespace baywork::show
