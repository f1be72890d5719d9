// SPDX-License-Identifier: MIT
// Rectangular and square hollow sections, hot finished, cold formed or extruded.
#pragma once

#include <cstdint>

#include <baywork/section/detail/lengths.hpp>
#include <baywork/section/detail/shear_flow.hpp>
#include <baywork/section/detail/spandrel.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork {

/// How a hollow section's corners are rounded. Plain numbers: derivatives run through the wall thickness.
struct Corners {
  enum class Rule : std::uint8_t { hot_finished, cold_formed, radii };
  Rule rule = Rule::hot_finished;
  double outer_radius = 0;  ///< [m], for Rule::radii
  double inner_radius = 0;  ///< [m], for Rule::radii
};

/// EN 10210-2:2006 B.3: outer radius 1.5 T, inner radius 1.0 T.
inline constexpr Corners hot_finished_corners{Corners::Rule::hot_finished, 0, 0};
/// EN 10219-2:2006 B.3: outer radius 2.0 T, 2.5 T, 3.0 T and inner radius 1.0 T, 1.5 T, 2.0 T for T up to 6 mm, up to
/// 10 mm, above.
inline constexpr Corners cold_formed_corners{Corners::Rule::cold_formed, 0, 0};
/// Radii as drawn [m] (extrusions); both zero for sharp corners.
constexpr Corners corners_of_radii(double outer, double inner) { return {Corners::Rule::radii, outer, inner}; }

namespace detail {

template <class S>
struct CornerRadii {
  S outer;
  S inner;
};

template <class S>
CornerRadii<S> corner_radii(const Corners& corners, const S& wall) {
  constexpr double rounding = 1e-9;
  const double t = value_of(wall) * (1.0 - rounding);
  switch (corners.rule) {
    case Corners::Rule::radii: return {S(corners.outer_radius), S(corners.inner_radius)};
    case Corners::Rule::cold_formed:
      if (t <= 6e-3) return {S(S(2) * wall), wall};
      if (t <= 10e-3) return {S(S(5) * wall / S(2)), S(S(3) * wall / S(2))};
      return {S(S(3) * wall), S(S(2) * wall)};
    case Corners::Rule::hot_finished: break;
  }
  return {S(S(3) * wall / S(2)), wall};
}

template <class S>
void require_corners(const S& height, const S& width, const S& wall, const CornerRadii<S>& r,
                     const std::string& place) {
  const S half = S(smaller(height, width) / S(2));
  require_radius(r.outer, place, "outer corner radius");
  require_radius(r.inner, place, "inner corner radius");
  require_up_to(r.outer, half, place, "outer corner radius", "half the smaller side");
  require_up_to(r.inner, S(half - wall), place, "inner corner radius", "half the smaller clear side");
  // On the diagonal the inner arc must stay inside the outer one.
  const double outer = value_of(r.outer), inner = value_of(r.inner), t = value_of(wall);
  if (1.4142135623730951 * (outer - t - inner) + inner >= outer)
    fail<BadDescription>(place,
                         "corner radii " + millimetres(r.outer) + " outside and " + millimetres(r.inner) +
                             " inside leave no wall in the corner",
                         "an outer radius nearer to the inner radius plus the wall is accepted");
}

/// Data of a rectangular hollow section; `place` is its designation.
template <class S>
SectionData<S> hollow_data(const S& h, const S& b, const S& t, const Corners& corners, const std::string& place) {
  require_below(t, S(smaller(h, b) / S(2)), place, "wall thickness", "half the smaller side");
  const CornerRadii<S> r = corner_radii(corners, t);
  require_corners(h, b, t, r, place);

  const S pi = pi_v<S>;
  const S hi = S(h - S(2) * t), bi = S(b - S(2) * t);
  const Spandrel<S> out(r.outer), in(r.inner);
  const S out_z = S(h / S(2) - out.offset), out_y = S(b / S(2) - out.offset);
  const S in_z = S(hi / S(2) - in.offset), in_y = S(bi / S(2) - in.offset);

  SectionData<S> d;
  d.designation = place;
  d.kind = ShapeKind::rectangular_hollow;
  d.area = S(S(2) * t * (b + h - S(2) * t) - S(4) * (out.area - in.area));
  d.Iy = S((b * cube(h) - bi * cube(hi)) / S(12) - S(4) * (out.about(out_z) - in.about(in_z)));
  d.Iz = S((h * cube(b) - hi * cube(bi)) / S(12) - S(4) * (out.about(out_y) - in.about(in_y)));
  d.Wel_y = S(S(2) * d.Iy / h);
  d.Wel_z = S(S(2) * d.Iz / b);
  d.Wpl_y = S((b * h * h - bi * hi * hi) / S(4) - S(4) * (out.area * out_z - in.area * in_z));
  d.Wpl_z = S((h * b * b - hi * bi * bi) / S(4) - S(4) * (out.area * out_y - in.area * in_y));
  d.shear_z = shear_area_webs(S(h - t), S(b - t), S(S(2) * t), t);
  d.shear_y = shear_area_webs(S(b - t), S(h - t), S(S(2) * t), t);

  const S rounding = S((S(4) - pi) * (r.outer + r.inner) / S(2));  // (4 - pi) times the middle line's radius
  const S middle = S(S(2) * (b + h - S(2) * t) - S(2) * rounding);
  const S enclosed = S((b - t) * (h - t) - square(S((r.outer + r.inner) / S(2))) * (S(4) - pi));
  const S k = S(S(2) * enclosed * t / middle);
  d.It = S(cube(t) * middle / S(3) + S(2) * k * enclosed);
  d.Wt = S(d.It / (t + k / t));

  d.perimeter = S(S(2) * (b + h) - S(2) * (S(4) - pi) * r.outer);
  d.height = h;
  d.width = b;
  d.wall = t;
  d.inner_radius = r.inner;
  d.web_area_z = S(d.area * h / (b + h));
  d.web_area_y = S(d.area * b / (b + h));
  const S off = corners.rule == Corners::Rule::radii ? S(S(2) * (t + r.inner)) : S(S(3) * t);
  d.plates[0] = {larger(S(0), S(h - off)), t, false, true};
  d.plates[1] = {larger(S(0), S(b - off)), t, false, false};
  d.n_plates = 2;
  set_radii_of_gyration(d);
  return d;
}

}  // namespace detail

/// Rectangular hollow section, lengths in m: `height` along z, `width` along y, both outer.
///
/// A, I, W, It and Wt (there called Ct) by EN 10210-2:2006 and EN 10219-2:2006 B.3, which are exact for bending and
/// Bredt plus Saint-Venant about the middle line for torsion. Shear areas by the flow in the middle line
/// (shear_area_webs), with the corners taken square. `web_area` is A h / (b + h) and A b / (b + h), EN 1993-1-1
/// 6.2.6(3)f. Plates: [0] the walls along z, [1] those along y; c is side - 3 T for the two standard corners (EN
/// 1993-1-1 Table 5.2), and the flat between the inner roots where radii are given.
template <Scalar S = double>
struct RectangularHollow {
  S height = S(0);
  S width = S(0);
  S wall = S(0);
  Corners corners = hot_finished_corners;

  SectionData<S> data() const {
    const std::string place =
        detail::designation("rectangular hollow", {value_of(height), value_of(width), value_of(wall)});
    detail::require_length(height, place, "height");
    detail::require_length(width, place, "width");
    detail::require_length(wall, place, "wall thickness");
    return detail::hollow_data(height, width, wall, corners, place);
  }
};

template <class A, class B, class C>
RectangularHollow(A, B, C) -> RectangularHollow<common_scalar_t<A, B, C>>;
template <class A, class B, class C>
RectangularHollow(A, B, C, Corners) -> RectangularHollow<common_scalar_t<A, B, C>>;

/// Square hollow section, lengths in m; data as of RectangularHollow with both sides alike.
template <Scalar S = double>
struct SquareHollow {
  S side = S(0);
  S wall = S(0);
  Corners corners = hot_finished_corners;

  SectionData<S> data() const {
    const std::string place = detail::designation("square hollow", {value_of(side), value_of(wall)});
    detail::require_length(side, place, "side");
    detail::require_length(wall, place, "wall thickness");
    return detail::hollow_data(side, side, wall, corners, place);
  }
};

template <class A, class B>
SquareHollow(A, B) -> SquareHollow<common_scalar_t<A, B>>;
template <class A, class B>
SquareHollow(A, B, Corners) -> SquareHollow<common_scalar_t<A, B>>;

}  // namespace baywork
