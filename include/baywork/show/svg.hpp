// SPDX-License-Identifier: MIT
// Writing SVG: elements with classes and data, numbers in one form, text that stays text.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/core/text.hpp>

namespace baywork::show {

/// A place on the page, in px: x to the right, y down.
struct Spot {
  double x = 0, y = 0;
  friend Spot operator+(const Spot& a, const Spot& b) { return {a.x + b.x, a.y + b.y}; }
  friend Spot operator-(const Spot& a, const Spot& b) { return {a.x - b.x, a.y - b.y}; }
  friend Spot operator*(double f, const Spot& a) { return {f * a.x, f * a.y}; }
};
inline double distance(const Spot& a, const Spot& b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// Text for XML and HTML: markup escaped; what is not allowed there at all becomes a space.
inline std::string escaped(std::string_view s) {
  std::string out;
  out.reserve(s.size());
  for (const char c : s) switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      default: out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  return out;
}

/// A length on the page: two decimals (a fiftieth of what an eye can tell), no needless zeros.
inline std::string px(double v) {
  if (!(std::abs(v) < 1e13)) return text::fixed(v, 2);
  const long long hundredths = std::llround(100.0 * v), size = hundredths < 0 ? -hundredths : hundredths;
  std::string out = hundredths < 0 ? "-" : "";
  out += std::to_string(size / 100);
  if (size % 100 == 0) return out;
  out += '.';
  out += static_cast<char>('0' + size % 100 / 10);
  if (size % 10 != 0) out += static_cast<char>('0' + size % 10);
  return out;
}

/// Lines that fill an area: drawn as lines, for patterns become megabytes in print.
enum class Hatch : unsigned char { none, slanted, crossed, level, upright };

namespace detail {

/// Calls line(a, b) for each line of a family across a polygon: those along `d` (unit), `pitch` px apart, counted from
/// the page's corner, so that neighbouring areas match.
template <class Line>
void hatch_lines(const std::vector<Spot>& polygon, const Spot& d, double pitch, Line line) {
  const auto along = [&d](const Spot& p) { return p.x * d.x + p.y * d.y; };
  const auto off = [&d](const Spot& p) { return p.y * d.x - p.x * d.y; };
  double least = 1e300, most = -1e300;
  for (const Spot& p : polygon) {
    least = off(p) < least ? off(p) : least;
    most = off(p) > most ? off(p) : most;
  }
  std::vector<double> crossings;
  for (double v = (std::floor(least / pitch) + 0.5) * pitch; v < most; v += pitch) {
    crossings.clear();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Spot &p = polygon[i], &q = polygon[(i + 1) % polygon.size()];
      if ((off(p) < v) == (off(q) < v)) continue;
      crossings.push_back(along(p) + (v - off(p)) / (off(q) - off(p)) * (along(q) - along(p)));
    }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
      line(crossings[i] * d + v * Spot{-d.y, d.x}, crossings[i + 1] * d + v * Spot{-d.y, d.x});
  }
}

}  // namespace detail

enum class Anchor : unsigned char { start, middle, end };

/// Elements in the order of drawing. `cls` is one or several classes of style.hpp.
class Svg {
 public:
  using Data = std::initializer_list<std::pair<const char*, std::string>>;

  /// A group; data become data-… attributes, for those who read drawings by program.
  void open(std::string_view cls, Data data = {}) {
    out_ += "<g";
    cls_is(cls);
    for (const auto& [key, value] : data) out_ += " data-" + std::string(key) + "=\"" + escaped(value) + "\"";
    out_ += ">\n";
  }
  void close() { out_ += "</g>\n"; }

  void line(const Spot& a, const Spot& b, std::string_view cls) {
    out_ += "<line x1=\"" + px(a.x) + "\" y1=\"" + px(a.y) + "\" x2=\"" + px(b.x) + "\" y2=\"" + px(b.y) + '"';
    end(cls);
  }
  void polyline(const std::vector<Spot>& at, std::string_view cls) { points("polyline", at, cls); }
  /// An area with its outline; hatched ones are told apart without colour.
  void polygon(const std::vector<Spot>& at, std::string_view cls, Hatch hatch = Hatch::none) {
    points("polygon", at, cls);
    if (hatch != Hatch::none) hatched(at, cls, hatch);
  }
  void rect(const Spot& corner, double width, double height, std::string_view cls, Hatch hatch = Hatch::none) {
    out_ += "<rect x=\"" + px(corner.x) + "\" y=\"" + px(corner.y) + "\" width=\"" + px(width) + "\" height=\"" +
            px(height) + '"';
    end(cls);
    const Spot w{width, 0.0}, h{0.0, height};
    if (hatch != Hatch::none) hatched({corner, corner + w, corner + w + h, corner + h}, cls, hatch);
  }
  /// The lines of a hatching alone.
  void hatched(const std::vector<Spot>& area, std::string_view cls, Hatch hatch) {
    static constexpr double slant = 0.70710678118654752;
    std::string d;
    const auto add = [&d](const Spot& a, const Spot& b) {
      if (!(distance(a, b) > 0.1)) return;
      const std::string x = px(b.x), y = px(b.y), from_x = px(a.x), from_y = px(a.y);
      d += 'M' + from_x + ' ' + from_y + (y == from_y ? 'H' + x : x == from_x ? 'V' + y : 'L' + x + ' ' + y);
    };
    if (hatch == Hatch::level)
      detail::hatch_lines(area, {1.0, 0.0}, 3.0, add);
    else if (hatch == Hatch::upright)
      detail::hatch_lines(area, {0.0, 1.0}, 4.0, add);
    else
      detail::hatch_lines(area, {slant, -slant}, 3.5, add);
    if (hatch == Hatch::crossed) detail::hatch_lines(area, {slant, slant}, 3.5, add);
    if (d.empty()) return;
    out_ += "<path d=\"" + d + '"';
    end(std::string(cls) + " bw-thin");
  }
  void circle(const Spot& centre, double radius, std::string_view cls) {
    out_ += "<circle cx=\"" + px(centre.x) + "\" cy=\"" + px(centre.y) + "\" r=\"" + px(radius) + '"';
    end(cls);
  }
  /// `at` is on the text's base line.
  void text(const Spot& at, std::string_view words, std::string_view cls, Anchor anchor = Anchor::start) {
    out_ += "<text x=\"" + px(at.x) + "\" y=\"" + px(at.y) + '"';
    if (anchor != Anchor::start) out_ += anchor == Anchor::middle ? " text-anchor=\"middle\"" : " text-anchor=\"end\"";
    cls_is(cls);
    out_ += '>' + escaped(words) + "</text>\n";
  }
  /// An arrow from tail to tip with a filled head.
  void arrow(const Spot& tail, const Spot& tip, std::string_view cls) {
    const double l = distance(tail, tip);
    if (!(l > 0.0)) return;
    const Spot d = (1.0 / l) * (tip - tail), n{-d.y, d.x};
    const double head = l < 8.0 ? l : 8.0;
    const Spot neck = tip - head * d;
    line(tail, neck, cls);
    polygon({tip, neck + 0.4 * head * n, neck - 0.4 * head * n}, std::string(cls) + " bw-head");
  }

  const std::string& str() const noexcept { return out_; }

 private:
  void cls_is(std::string_view cls) {
    if (!cls.empty()) out_ += " class=\"" + std::string(cls) + '"';
  }
  void end(std::string_view cls) {
    cls_is(cls);
    out_ += "/>\n";
  }
  void points(const char* kind, const std::vector<Spot>& at, std::string_view cls) {
    out_ += '<' + std::string(kind) + " points=\"";
    for (std::size_t i = 0; i < at.size(); ++i) {
      if (i > 0) out_ += ' ';
      out_ += px(at[i].x);
      out_ += ',';
      out_ += px(at[i].y);
    }
    out_ += '"';
    end(cls);
  }
  std::string out_;
};

}  // namespace baywork::show
