// SPDX-License-Identifier: MIT
// Circular hollow sections.
#pragma once

#include <baywork/section/detail/lengths.hpp>
#include <baywork/section/detail/shear_flow.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork {

/// Circular hollow section, lengths in m. `diameter` is the outer one.
template <Scalar S = double>
struct RoundTube {
  S diameter = S(0);
  S wall = S(0);

  /// Closed forms of the ring, as in EN 10210-2:2006 B.2 and EN 10219-2:2006 B.2; differences of powers are factored
  /// so that a thin wall costs no digits. `web_area` is 2 A / pi, EN 1993-1-1 6.2.6(3)g.
  SectionData<S> data() const {
    const std::string place = detail::designation("round tube", {value_of(diameter), value_of(wall)});
    detail::require_length(diameter, place, "diameter");
    detail::require_length(wall, place, "wall thickness");
    detail::require_below(wall, S(diameter / S(2)), place, "wall thickness", "the radius");

    const S pi = pi_v<S>;
    const S inner = S(diameter - S(2) * wall);
    SectionData<S> d;
    d.designation = place;
    d.kind = ShapeKind::round_tube;
    d.area = S(pi * wall * (diameter - wall));
    d.Iy = d.Iz = S(d.area * (diameter * diameter + inner * inner) / S(16));
    d.Wel_y = d.Wel_z = S(S(2) * d.Iy / diameter);
    d.Wpl_y = d.Wpl_z = S(wall * (diameter * diameter + diameter * inner + inner * inner) / S(3));
    d.shear_y = d.shear_z = detail::shear_area_round(d.area, diameter, inner);
    d.It = S(S(2) * d.Iy);
    d.Wt = S(S(2) * d.Wel_y);
    d.perimeter = S(pi * diameter);
    d.height = d.width = diameter;
    d.wall = wall;
    d.web_area_y = d.web_area_z = S(S(2) * d.area / pi);
    detail::set_radii_of_gyration(d);
    return d;
  }
};

template <class A, class B>
RoundTube(A, B) -> RoundTube<common_scalar_t<A, B>>;

}  // namespace baywork
