// SPDX-License-Identifier: MIT
// Ready loads in the trade's words, of unit size, between a girder's supports or on its overhang.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include <baywork/response/analysis.hpp>

namespace baywork::rating {

enum class Pattern : std::uint8_t {
  uniform,
  centre_point,
  third_points,    ///< two equal loads
  quarter_points,  ///< three
  fifth_points,    ///< four
  cantilever_end,
  cantilever_uniform
};
inline constexpr std::array<Pattern, 5> patterns_between_supports{
    Pattern::uniform, Pattern::centre_point, Pattern::third_points, Pattern::quarter_points, Pattern::fifth_points};
inline constexpr std::array<Pattern, 2> patterns_on_overhangs{Pattern::cantilever_end, Pattern::cantilever_uniform};

inline const char* name(Pattern p) {
  switch (p) {
    case Pattern::uniform: return "uniform";
    case Pattern::centre_point: return "centre point";
    case Pattern::third_points: return "third points";
    case Pattern::quarter_points: return "quarter points";
    case Pattern::fifth_points: return "fifth points";
    case Pattern::cantilever_end: return "cantilever end";
    case Pattern::cantilever_uniform: return "cantilever uniform";
  }
  return "";
}
/// Number of equal point loads; 0 for a uniform one.
inline std::size_t points(Pattern p) {
  switch (p) {
    case Pattern::uniform:
    case Pattern::cantilever_uniform: return 0;
    case Pattern::centre_point:
    case Pattern::cantilever_end: return 1;
    case Pattern::third_points: return 2;
    case Pattern::quarter_points: return 3;
    case Pattern::fifth_points: return 4;
  }
  return 0;
}
inline bool on_overhang(Pattern p) { return p == Pattern::cantilever_end || p == Pattern::cantilever_uniform; }

/// Where point loads sit: exactly at their places, also between stations, or at the station nearest to each.
enum class PointsAt : std::uint8_t { places, stations };

/// How a pattern is put on a girder.
struct Loading {
  std::vector<ChordRef> chords{};  ///< that share the load equally; none: the lower ones at the first station
  PointsAt points_at = PointsAt::places;
  Vec3<> direction{0, 0, -1};  ///< of the load; it need not be of length 1
};

/// A pattern on one girder: 1 N at each point, or 1 N/m.
struct PatternLoad {
  Pattern pattern = Pattern::uniform;
  std::vector<Action> unit;
  double from = 0, to = 0;       ///< the loaded part of the axis, between supports or on the overhang [m]
  std::vector<double> places{};  ///< of point loads [m]

  double length() const { return to - from; }
  double total() const { return places.empty() ? length() : static_cast<double>(places.size()); }  ///< of the unit load
};

namespace detail {

/// Stations that are held in any direction, rising.
inline std::vector<std::size_t> held_stations(const GirderModel& model) {
  std::vector<bool> held(model.girder.stations.size(), false);
  for (const Support& s : model.frame.supports) {
    const int station = model.frame.nodes[s.node].address.station;
    if (station >= 0) held[static_cast<std::size_t>(station)] = true;
  }
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < held.size(); ++i)
    if (held[i]) out.push_back(i);
  return out;
}

inline std::vector<ChordRef> lower_chords(const Girder& g) {
  std::vector<ChordRef> out;
  for (const std::size_t c : baywork::detail::extreme_chords(g, 0, true)) out.emplace_back(c);
  return out;
}

}  // namespace detail

/// The pattern of unit size on a girder: between its outermost supports, on overhangs on the longer of its free ends.
/// Throws BadDescription where there is no such part, or where two points would fall on one station.
inline PatternLoad pattern_load(const Analysis& analysis, Pattern pattern, const Loading& loading = {}) {
  const Girder& g = analysis.girder();
  const std::string place = std::string("load pattern ") + name(pattern);
  const std::vector<std::size_t> held = detail::held_stations(analysis.model());
  if (held.empty()) fail<BadDescription>(place, "the girder is held at no station", "a girder on supports is accepted");
  const double first = g.stations[held.front()], last = g.stations[held.back()], end = g.span();
  const bool at_start = first > end - last;  // the longer overhang
  PatternLoad out{pattern, {}, first, last};
  if (on_overhang(pattern)) {
    out.from = at_start ? 0.0 : last;
    out.to = at_start ? first : end;
  }
  if (!(out.to - out.from > 1e-9 * end))
    fail<BadDescription>(place,
                         on_overhang(pattern) ? "the girder has no overhang" : "the girder is held at one station",
                         on_overhang(pattern) ? "a cantilever, or supports away from an end, is accepted"
                                              : "two supported stations are accepted");
  const std::vector<ChordRef> chords = loading.chords.empty() ? detail::lower_chords(g) : loading.chords;
  const double size = length(loading.direction);
  require::positive(size, place.c_str(), "length of the direction");
  const Vec3<> one = (1.0 / size) * loading.direction;
  const std::size_t n = points(pattern);
  if (n == 0) {
    out.unit.push_back(line_load(chords, one, one, {out.from, out.to}));
    return out;
  }
  for (std::size_t i = 1; i <= n; ++i) {
    double x = out.from + out.length() * static_cast<double>(i) / static_cast<double>(n + 1);
    if (pattern == Pattern::cantilever_end) x = at_start ? 0.0 : end;
    if (loading.points_at == PointsAt::stations) {
      double nearest = g.stations[0];
      for (const double s : g.stations)
        if (std::abs(s - x) < std::abs(nearest - x) - 1e-9 * end) nearest = s;
      x = nearest;
      if (!out.places.empty() && x <= out.places.back())
        fail<BadDescription>(place, "two of its loads fall on one station",
                             "more stations, or loads at their places, are accepted");
    }
    out.places.push_back(x);
    for (const ChordRef& c : chords)
      out.unit.push_back(point_load(c, x, (1.0 / static_cast<double>(chords.size())) * one));
  }
  return out;
}

}  // namespace baywork::rating
