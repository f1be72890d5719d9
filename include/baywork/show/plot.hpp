// SPDX-License-Identifier: MIT
// A plot of two quantities: an area with axes through zero, round numbers at its edges, and what governs as marks.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/show/picture.hpp>
#include <baywork/show/words.hpp>
#include <baywork/verify/row.hpp>

namespace baywork::show {

/// A range of values in SI units and the unit its numbers are written in.
struct PlotAxis {
  double low = 0, high = 1;
  OneUnit unit{};
  std::string words;  ///< "vertical load"

  /// Widens it so that zero lies within, and by a twentieth on both sides.
  void finish() {
    low = smaller(low, 0.0);
    high = larger(high, 0.0);
    if (!(high > low)) high = low + 1.0;
    const double more = 0.05 * (high - low);
    low = low < 0.0 ? low - more : low;
    high = high > 0.0 ? high + more : high;
  }
};

class Plot {
 public:
  /// Its area's corner above and to the left, with room for numbers below (16 px) and to the left (44 px) beside it.
  Plot(Picture& p, const Spot& corner, double width, double height, PlotAxis x, PlotAxis y)
      : corner_(corner), width_(width), height_(height), x_(std::move(x)), y_(std::move(y)) {
    p.svg.rect(corner, width, height, "bw-grid");
    for (const double v : ticks(x_, width / 56)) {
      const double at = spot(v, y_.low).x;
      p.svg.line({at, corner.y}, {at, corner.y + height}, v == 0.0 ? "bw-quiet" : "bw-grid");
      p.labels.place(p.svg, number(v, x_), "bw-quiet", Letters::small,
                     {{{at, corner.y + height + 13}, Anchor::middle}});
    }
    for (const double v : ticks(y_, height / 36)) {
      const double at = spot(x_.low, v).y;
      p.svg.line({corner.x, at}, {corner.x + width, at}, v == 0.0 ? "bw-quiet" : "bw-grid");
      p.labels.place(p.svg, number(v, y_), "bw-quiet", Letters::small, {{{corner.x - 5, at + 3.5}, Anchor::end}});
    }
    p.labels.place(p.svg, y_.words + " [" + y_.unit.name + "]", "bw-ink", Letters::small,
                   {{{corner.x - 40, corner.y - 6}}});
    p.labels.place(p.svg, x_.words + " [" + x_.unit.name + "]", "bw-ink", Letters::small,
                   {{{corner.x + width, corner.y + height + 27}, Anchor::end}});
  }

  Spot spot(double x, double y) const {
    return {corner_.x + width_ * (x - x_.low) / (x_.high - x_.low),
            corner_.y + height_ * (y_.high - y) / (y_.high - y_.low)};
  }
  double px_per_x() const { return width_ / (x_.high - x_.low); }
  double px_per_y() const { return height_ / (y_.high - y_.low); }

 private:
  /// Multiples of 1, 2 or 5 of a power of ten, at most about `most` of them.
  static std::vector<double> ticks(const PlotAxis& a, double most) {
    const double step = round_step((a.high - a.low) / a.unit.size / larger(most, 2.0));
    std::vector<double> out;
    for (double i = std::ceil(a.low / a.unit.size / step); i * step <= a.high / a.unit.size; i += 1.0)
      out.push_back((i == 0.0 ? 0.0 : i * step) * a.unit.size);
    return out;
  }
  static std::string number(double v, const PlotAxis& a) {
    return with_minus(baywork::text::number(v / a.unit.size, 4));
  }

  Spot corner_;
  double width_, height_;
  PlotAxis x_, y_;
};

/// What limits a load, in the groups that charts tell apart.
enum class Limit : unsigned char { chord, cross_member, diagonal, other_bar, deflection, none };
inline constexpr std::array<const char*, 6> limit_words{"a chord",     "a cross member", "a diagonal",
                                                        "another bar", "deflection",     "no limit found"};

/// Class and hatching of a column: different without colour.
struct LimitLook {
  const char* cls;
  Hatch hatch;
};
inline constexpr std::array<LimitLook, 6> limit_looks{{{"bw-pull-area", Hatch::none},
                                                       {"bw-bend", Hatch::level},
                                                       {"bw-push", Hatch::slanted},
                                                       {"bw-load", Hatch::crossed},
                                                       {"bw-hold", Hatch::upright},
                                                       {"bw-quiet bw-dash", Hatch::none}}};

inline Limit limit_of(const verify::Row& row) {
  if (!row.address.has_role) return Limit::other_bar;
  return row.address.role == Role::chord          ? Limit::chord
         : row.address.role == Role::cross_member ? Limit::cross_member
         : row.address.role == Role::diagonal     ? Limit::diagonal
                                                  : Limit::other_bar;
}

/// A mark 8 px wide: circle, square, triangle, diamond, cross, ring.
inline void limit_mark(Svg& svg, const Spot& at, Limit l) {
  const std::string cls = limit_looks[static_cast<std::size_t>(l)].cls;
  const std::string ink = cls.substr(0, cls.find("-area"));
  switch (l) {
    case Limit::chord: svg.circle(at, 3.6, "bw-pull-area"); break;
    case Limit::cross_member: svg.rect(at - Spot{3.5, 3.5}, 7, 7, "bw-bend-area"); break;
    case Limit::diagonal:
      svg.polygon({at + Spot{0, -4.5}, at + Spot{4, 3.5}, at + Spot{-4, 3.5}}, "bw-push-area");
      break;
    case Limit::deflection:
      svg.polygon({at + Spot{0, -5}, at + Spot{5, 0}, at + Spot{0, 5}, at + Spot{-5, 0}}, "bw-hold-area");
      break;
    default:
      svg.line(at + Spot{-4, -4}, at + Spot{4, 4}, ink + " bw-bold");
      svg.line(at + Spot{-4, 4}, at + Spot{4, -4}, ink + " bw-bold");
  }
}

}  // namespace baywork::show
