// SPDX-License-Identifier: MIT
// Whether the loads along a bar are of the kind that tables of moment diagrams are made for.
#pragma once

#include <array>
#include <cstddef>

#include <baywork/core/vec3.hpp>
#include <baywork/response/cut_forces.hpp>

namespace baywork::verify::detail {

/// Loads that are alike on both halves of the bar, along each axis all to one side, and nowhere weaker towards the
/// middle: spread evenly, as a tent or a trapezoid (what a panel of fabric gives to the bars round it), a force in the
/// middle. Their moments as of a simple beam are greatest in the middle, and their diagram is no fuller than that of a
/// load spread evenly. Warmth bends nothing by itself.
inline bool strongest_in_the_middle(const MemberLoads<double>& loads, double length) {
  struct Piece {
    double from = 0, to = 0;
    Vec3<> first{}, last{};
  };
  std::array<Piece, 16> pieces{};
  std::size_t n = 0;
  Vec3<> least{}, most{};
  const auto take = [&](const Vec3<>& q) {
    for (std::size_t i = 0; i < 3; ++i) {
      least[i] = smaller(least[i], q[i]);
      most[i] = larger(most[i], q[i]);
    }
  };
  for (const MemberLoad& l : loads) {
    if (l.kind == MemberLoad::Kind::couple) return false;
    if (l.kind != MemberLoad::Kind::force) continue;
    if (magnitude(l.a - 0.5 * length) > 1e-9 * length) return false;
    take(l.first);
  }
  baywork::detail::for_each_stretch({}, loads, length, [&](const baywork::detail::Stretch<double>& s) {
    if (n < pieces.size()) pieces[n] = {s.from, s.to, s.load, s.load + s.length() * s.load_slope};
    ++n;
  });
  if (n > pieces.size()) return false;
  const auto equal = [](const Vec3<>& a, const Vec3<>& b) {
    return baywork::length(a - b) <= 1e-9 * (baywork::length(a) + baywork::length(b));
  };
  const auto weaker = [](const Vec3<>& a, const Vec3<>& b) {
    for (std::size_t i = 0; i < 3; ++i)
      if (magnitude(a[i]) > magnitude(b[i]) + 1e-9 * baywork::length(b)) return false;
    return true;
  };
  for (std::size_t i = 0; i < n; ++i) {
    const Piece &p = pieces[i], &mirror = pieces[n - 1 - i];
    take(p.first);
    take(p.last);
    if (magnitude(p.from + mirror.to - length) > 1e-9 * length || !equal(p.first, mirror.last) ||
        !equal(p.last, mirror.first))
      return false;
    if (2 * i + 1 < n && !(weaker(p.first, p.last) && weaker(p.last, pieces[i + 1].first))) return false;
  }
  for (std::size_t i = 0; i < 3; ++i)
    if (least[i] < 0.0 && most[i] > 0.0) return false;
  return true;
}

}  // namespace baywork::verify::detail
