// SPDX-License-Identifier: MIT
// A plain chart with logarithmic axes as SVG: text stays text, lines differ by dashes and greys.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include "results.hpp"

namespace bench {

inline std::string short_number(double v) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", v);
  return text;
}

/// `strong` lines are baywork's own.
struct Chart {
  std::string title, vertical;
  Rows rows;
  std::vector<std::string> strong;

  static constexpr double width = 560, height = 430;

  /// The chart with its upper left corner at x = `left`.
  std::string svg(double left) const {
    double low = 1e300, high = -1e300, from = 1e300, to = -1e300;
    for (const auto& r : rows.rows)
      for (const auto& [n, v] : r.second)
        if (v > 0) {
          low = (std::min)(low, std::floor(std::log10(v)));
          high = (std::max)(high, std::ceil(std::log10(v)));
          from = (std::min)(from, std::log10(static_cast<double>(n)));
          to = (std::max)(to, std::log10(static_cast<double>(n)));
        }
    if (!(low < high)) low -= 1, high = low + 2;
    if (!(from < to)) to = from + 1;
    const auto x = [&](double log_n) { return left + 64 + (log_n - from) / (to - from) * 296; };
    const auto y = [&](double log_v) { return 380 - (log_v - low) / (high - low) * 330; };

    std::string out = text(left + 64, 24, title, "start", 14);
    out += text(left + 64, 40, vertical, "start", 11) + text(left + 212, 418, "bays", "middle", 11);
    const double every = high - low > 12 ? 4 : (high - low > 6 ? 2 : 1);
    for (double e = std::ceil(low / every) * every; e <= high + 1e-9; e += every) {
      out += line(x(from), y(e), x(to), y(e), "#ddd");
      out += text(left + 58, y(e) + 4, power_of_ten(e), "end", 11);
    }
    for (const std::size_t n : rows.bays()) {
      const double at = x(std::log10(static_cast<double>(n)));
      out += line(at, y(low), at, y(low) + 5, "#000") + text(at, y(low) + 18, std::to_string(n), "middle", 11);
    }
    out += line(x(from), y(low), x(to), y(low), "#000") + line(x(from), y(low), x(from), y(high), "#000");

    std::vector<Label> labels;
    std::size_t foreign = 0;
    for (const auto& [name, series] : rows.rows) {
      const bool own = std::find(strong.begin(), strong.end(), name) != strong.end();
      constexpr std::array<const char*, 4> dashes{"", "6 3", "2 3", "8 3 2 3"};
      constexpr std::array<const char*, 2> greys{"#777", "#444"};
      const std::string colour = own ? "#000" : greys[foreign / dashes.size() % greys.size()];
      const std::string dash = own ? "" : dashes[foreign % dashes.size()];
      foreign += own ? 0U : 1U;
      std::string points;
      double end = 0;
      for (const auto& [n, v] : series)
        if (v > 0) {
          end = y(std::log10(v));
          points += short_number(x(std::log10(static_cast<double>(n)))) + "," + short_number(end) + " ";
        }
      if (points.empty()) continue;
      points.pop_back();
      const std::string look = std::string("\" fill=\"none\" stroke=\"") + colour + "\" stroke-width=\"" +
                               (own ? "2.5" : "1.5") + "\"" +
                               (dash.empty() ? "" : " stroke-dasharray=\"" + dash + "\"") + "/>\n";
      out += "<polyline points=\"" + points + look;
      labels.push_back({end, name, look, own});
    }
    return out + placed(labels, x(to) + 6);
  }

 private:
  struct Label {
    double at;  ///< height of the line's end
    std::string name, look;
    bool own;
  };
  /// A piece of each line and its name beside its end, moved apart where they would lie on each other.
  static std::string placed(std::vector<Label> labels, double left) {
    constexpr double apart = 13;
    std::sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) { return a.at < b.at; });
    for (std::size_t i = 1; i < labels.size(); ++i) labels[i].at = (std::max)(labels[i].at, labels[i - 1].at + apart);
    double lowest = 384;
    for (std::size_t i = labels.size(); i-- > 0;) {
      labels[i].at = (std::min)(labels[i].at, lowest);
      lowest = labels[i].at - apart;
    }
    std::string out;
    for (const Label& l : labels) {
      const std::string y = short_number(l.at);
      out += "<polyline points=\"" + short_number(left) + "," + y + " " + short_number(left + 22) + "," + y + l.look;
      out += text(left + 26, l.at + 4, l.name, "start", 11, l.own);
    }
    return out;
  }
  static std::string power_of_ten(double e) {
    char text[16];
    std::snprintf(text, sizeof text, std::abs(e) <= 4 ? "%g" : "%.0e", std::pow(10.0, e));
    return text;
  }
  static std::string text(double x, double y, const std::string& words, const char* anchor, int size,
                          bool bold = false) {
    return "<text x=\"" + short_number(x) + "\" y=\"" + short_number(y) + "\" font-size=\"" + std::to_string(size) +
           "\" text-anchor=\"" + anchor + "\"" + (bold ? " font-weight=\"bold\"" : "") + ">" + words + "</text>\n";
  }
  static std::string line(double x1, double y1, double x2, double y2, const char* colour) {
    return "<line x1=\"" + short_number(x1) + "\" y1=\"" + short_number(y1) + "\" x2=\"" + short_number(x2) +
           "\" y2=\"" + short_number(y2) + "\" stroke=\"" + colour + "\"/>\n";
  }
};

/// Charts side by side as one drawing.
inline std::string drawing(const std::vector<Chart>& charts) {
  const double width = Chart::width * static_cast<double>(charts.size());
  std::string out =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + short_number(width) + " " +
      short_number(Chart::height) + "\" width=\"" + short_number(width) + "\" height=\"" + short_number(Chart::height) +
      "\" font-family=\"sans-serif\" fill=\"#000\">\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
  for (std::size_t i = 0; i < charts.size(); ++i) out += charts[i].svg(Chart::width * static_cast<double>(i));
  return out + "</svg>\n";
}

}  // namespace bench
