// SPDX-License-Identifier: MIT
// Solid rounds (rods, pins) and solid rectangles (flats).
#pragma once

#include <cmath>

#include <baywork/section/detail/lengths.hpp>
#include <baywork/section/detail/shear_flow.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork {

/// Solid round bar, `diameter` in m. Closed forms of the disc; the shear area is 6/7 A (shear_area_round).
template <Scalar S = double>
struct SolidRound {
  S diameter = S(0);

  SectionData<S> data() const {
    const std::string place = detail::designation("solid round", {value_of(diameter)});
    detail::require_length(diameter, place, "diameter");

    const S pi = pi_v<S>;
    SectionData<S> d;
    d.designation = place;
    d.kind = ShapeKind::solid_round;
    d.area = S(pi * diameter * diameter / S(4));
    d.Iy = d.Iz = S(d.area * diameter * diameter / S(16));
    d.Wel_y = d.Wel_z = S(S(2) * d.Iy / diameter);
    d.Wpl_y = d.Wpl_z = S(detail::cube(diameter) / S(6));
    d.shear_y = d.shear_z = detail::shear_area_round(d.area, diameter, S(0));
    d.It = S(S(2) * d.Iy);
    d.Wt = S(S(2) * d.Wel_y);
    d.perimeter = S(pi * diameter);
    d.height = d.width = d.wall = diameter;
    d.web_area_y = d.web_area_z = d.area;
    detail::set_radii_of_gyration(d);
    return d;
  }
};

template <class A>
SolidRound(A) -> SolidRound<common_scalar_t<A>>;

namespace detail {

/// Torsion of a rectangle, long side a, short side b [m].
template <class S>
struct RectangleTorsion {
  S It;  ///< [m⁴]
  S Wt;  ///< [m³]

  /// Prandtl's membrane series (S. P. Timoshenko, J. N. Goodier, Theory of Elasticity, art. 109), odd n:
  ///   It = a b³ (1/3 - 64 b / (pi⁵ a) sum tanh(x) / n⁵),  x = n pi a / (2 b),
  ///   tau_max = T b / It (1 - 8 / pi² sum 1 / (n² cosh x)), at the middle of the long side.
  /// With tanh x = 1 - 2 / (exp(2x) + 1) and sum 1 / n⁵ = 31/32 zeta(5), both series lose at least a factor exp(pi)
  /// from term to term, so that 15 terms leave nothing in long double.
  RectangleTorsion(const S& a, const S& b) {
    using std::exp;
    const S pi = pi_v<S>;
    const S odd_fifths = constant<S>(1.00452376279513961613351031501L);  // 31/32 zeta(5)
    S fifth = S(0), second = S(0);
    for (int i = 14; i >= 0; --i) {
      const S n = S(2 * i + 1);
      const S e = S(exp(S(-(n * pi * a / (S(2) * b)))));  // exp(-x)
      const S e2 = S(e * e);
      fifth += S(S(2) * e2 / ((S(1) + e2) * cube(n) * n * n));
      second += S(S(2) * e / ((S(1) + e2) * n * n));
    }
    It = S(a * cube(b) * (S(1) / S(3) - S(64) * b / (cube(pi) * pi * pi * a) * (odd_fifths - fifth)));
    Wt = S(It / (b * (S(1) - S(8) * second / (pi * pi))));
  }
};

}  // namespace detail

/// Solid rectangle, lengths in m: `height` along z, `width` along y. Shear areas 5/6 A, Jourawski's parabola, which is
/// exact without lateral contraction. Torsion by the full series (RectangleTorsion).
template <Scalar S = double>
struct SolidRectangle {
  S height = S(0);
  S width = S(0);

  SectionData<S> data() const {
    const std::string place = detail::designation("solid rectangle", {value_of(height), value_of(width)});
    detail::require_length(height, place, "height");
    detail::require_length(width, place, "width");

    SectionData<S> d;
    d.designation = place;
    d.kind = ShapeKind::solid_rectangle;
    d.area = S(height * width);
    d.Iy = S(d.area * height * height / S(12));
    d.Iz = S(d.area * width * width / S(12));
    d.Wel_y = S(d.area * height / S(6));
    d.Wel_z = S(d.area * width / S(6));
    d.Wpl_y = S(d.area * height / S(4));
    d.Wpl_z = S(d.area * width / S(4));
    d.shear_y = d.shear_z = S(S(5) * d.area / S(6));
    const detail::RectangleTorsion<S> torsion(larger(height, width), smaller(height, width));
    d.It = torsion.It;
    d.Wt = torsion.Wt;
    d.perimeter = S(S(2) * (height + width));
    d.height = height;
    d.width = width;
    d.wall = smaller(height, width);
    d.web_area_y = d.web_area_z = d.area;
    detail::set_radii_of_gyration(d);
    return d;
  }
};

template <class A, class B>
SolidRectangle(A, B) -> SolidRectangle<common_scalar_t<A, B>>;

}  // namespace baywork
