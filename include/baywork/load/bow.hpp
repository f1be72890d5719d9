// SPDX-License-Identifier: MIT
// What stands for the bow and the kinks of two chords under compression: actions across them that hold each other.
#pragma once

#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/load/actions.hpp>

namespace baywork {

/// Two chords that bow together, and where along the axis [m].
struct BowedChords {
  ChordRef first, second;
  double from = 0, to = 0;
};

namespace detail {
inline void check_bow(const BowedChords& c) {
  require::finite(c.from, "bow of two chords", "start");
  require::finite(c.to, "bow of two chords", "end");
  if (!(c.from < c.to))
    fail<BadDescription>("bow of two chords",
                         "it reaches from " + text::number(c.from) + " m to " + text::number(c.to) + " m",
                         "rising places are accepted");
}
inline void push(std::vector<Action>& out, const BowedChords& c, double x, const Vec3<>& force) {
  out.push_back(point_load(c.first, x, 0.5 * force));
  out.push_back(point_load(c.second, x, 0.5 * force));
}
}  // namespace detail

/// A parabola held at both ends under a push N that is the same all along: q = N 8 e0/L² across [N/m, both chords
/// together], and at both ends what the push there, turned by the bow's slope 4 e0/L, gives back: -q L/2 each. In all
/// no force and no couple, so that supports feel nothing (EN 1993-1-1:2005, figures 5.4 and 5.6, values from memory).
inline std::vector<Action> bow_between_holds(const BowedChords& c, const Vec3<>& q) {
  detail::check_bow(c);
  std::vector<Action> out{line_load({c.first, c.second}, q, q, {c.from, c.to})};
  for (const double x : {c.from, c.to}) detail::push(out, c, x, -0.5 * (c.to - c.from) * q);
  return out;
}

/// Half of such a bow over an overhang from its root to its tip: q = N 8 e0/(2 a)² with the tip e0 aside, and -q a at
/// the tip where the push comes in. In all no force, and the couple q a²/2 = N e0 of that push. The first overhang of a
/// girder has its root behind its tip.
inline std::vector<Action> bow_of_overhang(ChordRef first, ChordRef second, double root, double tip, const Vec3<>& q) {
  const bool rising = root < tip;
  const BowedChords c{std::move(first), std::move(second), rising ? root : tip, rising ? tip : root};
  detail::check_bow(c);
  std::vector<Action> out{line_load({c.first, c.second}, q, q, {c.from, c.to})};
  detail::push(out, c, tip, -(c.to - c.from) * q);
  return out;
}

/// A kink at a splice: `force` across there, and back at the places before and after it in the lever's shares
/// (EN 1993-1-1:2005, 5.3.3 (4) and figure 5.7, values from memory).
inline std::vector<Action> kink_at(const BowedChords& c, double x, const Vec3<>& force) {
  detail::check_bow(c);
  require::finite(x, "kink of two chords", "place");
  if (!(c.from < x && x < c.to))
    fail<BadDescription>("kink of two chords", "it is at " + text::number(x) + " m, not between its neighbours",
                         "places between " + text::number(c.from) + " m and " + text::number(c.to) + " m are accepted");
  std::vector<Action> out;
  detail::push(out, c, x, force);
  detail::push(out, c, c.from, -(c.to - x) / (c.to - c.from) * force);
  detail::push(out, c, c.to, -(x - c.from) / (c.to - c.from) * force);
  return out;
}

}  // namespace baywork
