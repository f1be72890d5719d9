// SPDX-License-Identifier: MIT
// A force along a bar as a line through exact points, close enough that no eye can tell it from the curve.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/response/response.hpp>

namespace baywork::show {

/// How the six cut forces (order of cut_force_names) make up what is drawn.
using Weights = std::array<double, 6>;

struct CurvePoint {
  double x = 0;  ///< from the bar's start [m]
  double value = 0;
};

/// All points needed for straight lines between them to lie within `tolerance` of the curve, its inner extremes and
/// both sides of its jumps among them. Between changes of load the curve is a cubic c; a line over a length h leaves it
/// by at most h²/8 of its greatest |c''|.
inline std::vector<CurvePoint> bar_curve(const Response& r, std::size_t member, const Weights& w, double tolerance) {
  std::vector<CurvePoint> out;
  const double length = r.analysis().axes(member).length;
  const auto add = [&out](double x, double v) {
    if (out.empty() || out.back().x != x || out.back().value != v) out.push_back({x, v});
  };
  baywork::detail::for_each_stretch(
      r.answer().members[member].start, r.loads_on(member), length, [&](const baywork::detail::Stretch<double>& s) {
        std::array<double, 4> c{};
        for (std::size_t k = 0; k < 6; ++k) {
          if (w[k] == 0.0) continue;
          const std::array<double, 4> p = s.polynomial(k);
          for (std::size_t i = 0; i < 4; ++i) c[i] += w[k] * p[i];
        }
        const double l = s.length();
        const auto roots = baywork::detail::roots_between(std::array<double, 3>{c[1], 2 * c[2], 3 * c[3]}, 0.0, l);
        double from = 0;
        add(s.from, c[0]);
        for (std::size_t i = 0; i <= roots.count; ++i) {
          const double to = i < roots.count ? roots.at[i] : l, h = to - from;
          const double bend = larger(magnitude(2 * c[2] + 6 * c[3] * from), magnitude(2 * c[2] + 6 * c[3] * to));
          const double pieces = std::ceil(h * std::sqrt(bend / (8.0 * tolerance)));
          const int n = pieces > 1.0 ? static_cast<int>(smaller(pieces, 200.0)) : 1;
          for (int k = 1; k <= n; ++k) {
            const double t = k == n ? to : from + h * k / n;
            add(s.from + t, baywork::detail::evaluate(c, t));
          }
          from = to;
        }
      });
  return out;
}

}  // namespace baywork::show
