// SPDX-License-Identifier: MIT
// Writing SVG: elements with classes and data, numbers in one form, text that stays text.
#pragma once

#include <cmath>
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
  std::string out = text::fixed(v, 2);
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out;
}

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
  void polyline(const std::vector<Spot>& at, std::string_view cls) { points("polyline", at, cls, ""); }
  /// `fill` names a pattern of style.hpp, for areas that must be told apart without colour.
  void polygon(const std::vector<Spot>& at, std::string_view cls, std::string_view fill = "") {
    points("polygon", at, cls, fill);
  }
  void rect(const Spot& corner, double width, double height, std::string_view cls, std::string_view fill = "") {
    out_ += "<rect x=\"" + px(corner.x) + "\" y=\"" + px(corner.y) + "\" width=\"" + px(width) + "\" height=\"" +
            px(height) + '"';
    filled(fill);
    end(cls);
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
  void filled(std::string_view pattern) {
    if (!pattern.empty()) out_ += " style=\"fill:url(#" + std::string(pattern) + ")\"";
  }
  void end(std::string_view cls) {
    cls_is(cls);
    out_ += "/>\n";
  }
  void points(const char* kind, const std::vector<Spot>& at, std::string_view cls, std::string_view fill) {
    out_ += '<' + std::string(kind) + " points=\"";
    for (std::size_t i = 0; i < at.size(); ++i) out_ += (i ? " " : "") + px(at[i].x) + ',' + px(at[i].y);
    out_ += '"';
    filled(fill);
    end(cls);
  }

  std::string out_;
};

}  // namespace baywork::show
