// SPDX-License-Identifier: MIT
// Doubly symmetric I and H sections.
#pragma once

#include <baywork/section/detail/lengths.hpp>
#include <baywork/section/detail/shear_flow.hpp>
#include <baywork/section/detail/spandrel.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork {

/// Doubly symmetric I or H with parallel flanges, lengths in m: `height` along z and `width` along y, overall; `web`
/// and `flange` are thicknesses; `root_radius` is that of the four fillets (0: welded from plates, welds not counted).
///
/// A, I, W: rectangles and fillets, exact. It: sum of b t³ / 3 over flanges and clear web, which leaves out what the
/// junctions add (a rolled IPE 200 has a third more) and errs to the safe side; Wt = It / t of the thickest part.
/// Shear area: flow in the middle line for Vz (shear_area_webs); 5/6 of the flanges for Vy, which the web does not
/// help. `web_area`: the clear web for Vz, the flanges for Vy. Plates: [0] web between the roots, [1] flange outstand.
template <Scalar S = double>
struct IShape {
  S height = S(0);
  S width = S(0);
  S web = S(0);
  S flange = S(0);
  S root_radius = S(0);

  SectionData<S> data() const {
    const std::string place =
        detail::designation("I", {value_of(height), value_of(width), value_of(web), value_of(flange)});
    detail::require_length(height, place, "height");
    detail::require_length(width, place, "width");
    detail::require_length(web, place, "web thickness");
    detail::require_length(flange, place, "flange thickness");
    detail::require_radius(root_radius, place, "root radius");
    detail::require_below(flange, S(height / S(2)), place, "flange thickness", "half the height");
    detail::require_below(web, width, place, "web thickness", "the width");
    const S clear = S(height - S(2) * flange);
    detail::require_up_to(root_radius, S(clear / S(2)), place, "root radius", "half the clear web");
    detail::require_up_to(root_radius, S((width - web) / S(2)), place, "root radius", "the flange outstand");

    const detail::Spandrel<S> fillet(root_radius);
    const S root_z = S(clear / S(2) - fillet.offset), root_y = S(web / S(2) + fillet.offset);
    SectionData<S> d;
    d.designation = place;
    d.kind = ShapeKind::i_shape;
    d.area = S(S(2) * width * flange + clear * web + S(4) * fillet.area);
    d.Iy =
        S((width * detail::cube(height) - (width - web) * detail::cube(clear)) / S(12) + S(4) * fillet.about(root_z));
    d.Iz = S((S(2) * flange * detail::cube(width) + clear * detail::cube(web)) / S(12) + S(4) * fillet.about(root_y));
    d.Wel_y = S(S(2) * d.Iy / height);
    d.Wel_z = S(S(2) * d.Iz / width);
    d.Wpl_y = S((width * height * height - (width - web) * clear * clear) / S(4) + S(4) * fillet.area * root_z);
    d.Wpl_z = S((S(2) * flange * width * width + clear * web * web) / S(4) + S(4) * fillet.area * root_y);
    d.shear_z = detail::shear_area_webs(S(height - flange), width, web, flange);
    d.shear_y = S(S(5) * width * flange / S(3));
    d.It = S((S(2) * width * detail::cube(flange) + clear * detail::cube(web)) / S(3));
    d.wall = larger(web, flange);
    d.Wt = S(d.It / d.wall);
    d.perimeter = S(S(4) * width + S(2) * (height - web) - S(2) * (S(4) - pi_v<S>)*root_radius);
    d.height = height;
    d.width = width;
    d.web_area_z = S(clear * web);
    d.web_area_y = S(S(2) * width * flange);
    d.plates[0] = {S(clear - S(2) * root_radius), web, false, true};
    d.plates[1] = {S((width - web) / S(2) - root_radius), flange, true, false};
    d.n_plates = 2;
    detail::set_radii_of_gyration(d);
    return d;
  }
};

template <class A, class B, class C, class D>
IShape(A, B, C, D) -> IShape<common_scalar_t<A, B, C, D>>;
template <class A, class B, class C, class D, class E>
IShape(A, B, C, D, E) -> IShape<common_scalar_t<A, B, C, D, E>>;

}  // namespace baywork
