// SPDX-License-Identifier: MIT
// Deflection lines, the motion of the axis, and twist.
#pragma once

#include <cstddef>

#include <baywork/core/error.hpp>
#include <baywork/response/response.hpp>

namespace baywork {

namespace detail {
template <class S>
Vec3<S> chord_deflection(const BasicResponse<S>& r, std::size_t chord, const S& x) {
  const BasicGirder<S>& g = r.girder();
  const int bay = is_finite(x) ? g.bay_at(value_of(x)) : -1;
  if (bay < 0)
    fail<BadDescription>("girder", "a deflection at " + text::number(x) + " m is asked for", "0 to " + text::number(g.span()) + " m is accepted");
  const std::size_t b = static_cast<std::size_t>(bay);
  const S t = S((x - g.stations[b]) / (g.stations[b + 1] - g.stations[b]));
  const BasicMemberView<S> m = r.member(r.model().chord_member(b, chord));
  return m.displacement_at(S(t * m.length()));
}
}  // namespace detail

template <Scalar S>
Vec3<S> BasicResponse<S>::deflection(const ChordRef& ref, const S& x) const {
  return detail::chord_deflection(*this, ref.in(model().frame.names.chords), x);
}

template <Scalar S>
Vec3<S> BasicResponse<S>::axis_deflection(const S& x) const {
  const std::size_t n = girder().chords.size();
  Vec3<S> sum{};
  for (std::size_t c = 0; c < n; ++c) sum += detail::chord_deflection(*this, c, x);
  return S(S(1) / S(static_cast<double>(n))) * sum;
}

/// Least squares of u = u0 + θ × r over the chords: θ = Σ (r × u)·t / Σ |r|² square to the axis's direction t, with r
/// from the chords' centre.
template <Scalar S>
S BasicResponse<S>::twist(const S& x) const {
  const BasicGirder<S>& g = girder();
  const Vec3<S> mean = axis_deflection(x);
  const std::size_t b = static_cast<std::size_t>(g.bay_at(value_of(x))), n = g.chords.size();
  const S t = S((x - g.stations[b]) / (g.stations[b + 1] - g.stations[b]));
  const auto at = [&](std::size_t c) { return g.joint(b, c) + t * (g.joint(b + 1, c) - g.joint(b, c)); };
  Vec3<S> centre{}, along{};
  for (std::size_t c = 0; c < n; ++c) {
    centre += S(S(1) / S(static_cast<double>(n))) * at(c);
    along += g.joint(b + 1, c) - g.joint(b, c);
  }
  along = unit(along);
  S top = S(0), bottom = S(0);
  for (std::size_t c = 0; c < n; ++c) {
    Vec3<S> r = at(c) - centre;
    r -= dot(r, along) * along;
    top += dot(cross(r, detail::chord_deflection(*this, c, x) - mean), along);
    bottom += dot(r, r);
  }
  return S(top / bottom);
}

template <Scalar S>
S BasicResponse<S>::max_deflection() const {
  S most = S(0);
  const auto take = [&](const Vec3<S>& u) {
    if (value_of(dot(u, u)) > 0.0) most = larger(most, length(u));
  };
  for (std::size_t i = 0; i < model().chord_members.size(); ++i) {
    const BasicMemberView<S> m = member(model().chord_members[i]);
    take(m.displacement(fraction{0}));
    take(m.displacement(fraction{1}));
    for (const Vec3<S>& axis : {m.axes().y, m.axes().z}) {
      const BasicExtremes<S> e = m.displacement_extremes(axis);
      take(m.displacement_at(e.least_at));
      take(m.displacement_at(e.greatest_at));
    }
  }
  return most;
}

}  // namespace baywork
