// SPDX-License-Identifier: MIT
// Channels with parallel flanges.
#pragma once

#include <cmath>

#include <baywork/section/detail/lengths.hpp>
#include <baywork/section/detail/spandrel.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork {

/// Channel with parallel flanges, lengths in m: web along z, flanges towards +y; `height` and `width` overall, `web`
/// and `flange` thicknesses, `root_radius` of the two fillets.
///
/// All data are about the centroid. The shear centre lies behind the web, not at the centroid: a load through the
/// centroid also twists the bar, and that part is not in these data. Wel_z is the smaller one, at the flange tips for
/// usual proportions. A, I, W: rectangles and fillets, exact. It: sum of b t³ / 3 over flanges and clear web; Wt = It /
/// t of the thickest part. Shear areas: flow in the middle line, As = I² / integral of S² / t ds, corners square, no
/// fillets. Plates: [0] web between the roots, [1] flange outstand.
template <Scalar S = double>
struct Channel {
  S height = S(0);
  S width = S(0);
  S web = S(0);
  S flange = S(0);
  S root_radius = S(0);

  SectionData<S> data() const {
    const std::string place =
        detail::designation("channel", {value_of(height), value_of(width), value_of(web), value_of(flange)});
    detail::require_length(height, place, "height");
    detail::require_length(width, place, "width");
    detail::require_length(web, place, "web thickness");
    detail::require_length(flange, place, "flange thickness");
    detail::require_radius(root_radius, place, "root radius");
    detail::require_below(flange, S(height / S(2)), place, "flange thickness", "half the height");
    detail::require_below(web, width, place, "web thickness", "the width");
    const S clear = S(height - S(2) * flange);
    detail::require_up_to(root_radius, S(clear / S(2)), place, "root radius", "half the clear web");
    detail::require_up_to(root_radius, S(width - web), place, "root radius", "the flange outstand");

    const detail::Spandrel<S> fillet(root_radius);
    const S root_z = S(clear / S(2) - fillet.offset), root_y = S(web + fillet.offset);
    SectionData<S> d;
    d.designation = place;
    d.kind = ShapeKind::channel;
    d.area = S(S(2) * width * flange + clear * web + S(2) * fillet.area);
    const S centroid = S((flange * width * width + clear * web * web / S(2) + S(2) * fillet.area * root_y) / d.area);
    const S tip = S(width - centroid);
    d.Iy =
        S((width * detail::cube(height) - (width - web) * detail::cube(clear)) / S(12) + S(2) * fillet.about(root_z));
    // About the back first: the parts start there; the fillets about the centroid.
    const S at_back =
        S((S(2) * flange * detail::cube(width) + clear * detail::cube(web)) / S(3) + S(2) * fillet.about(root_y));
    d.Iz = S(at_back - d.area * centroid * centroid);
    d.Wel_y = S(S(2) * d.Iy / height);
    d.Wel_z = S(d.Iz / larger(tip, centroid));
    d.Wpl_y = S((width * height * height - (width - web) * clear * clear) / S(4) + S(2) * fillet.area * root_z);
    d.Wpl_z = plastic_modulus_z(d.area, centroid, fillet);
    set_shear_areas(d);
    d.It = S((S(2) * width * detail::cube(flange) + clear * detail::cube(web)) / S(3));
    d.wall = larger(web, flange);
    d.Wt = S(d.It / d.wall);
    d.perimeter = S(S(4) * width + S(2) * (height - web) - (S(4) - pi_v<S>)*root_radius);
    d.height = height;
    d.width = width;
    d.web_area_z = S(clear * web);
    d.web_area_y = S(S(2) * width * flange);
    d.plates[0] = {S(clear - S(2) * root_radius), web, false, true};
    d.plates[1] = {S(width - web - root_radius), flange, true, false};
    d.n_plates = 2;
    detail::set_radii_of_gyration(d);
    return d;
  }

 private:
  /// Wpl = integral |y - p| dA with p halving the area, from the back: 2 M(p) - A (centroid - p), where M is the first
  /// moment about p of what lies beyond p. W is stationary in p, so p itself need not carry derivatives.
  S plastic_modulus_z(const S& area, const S& centroid, const detail::Spandrel<S>& fillet) const {
    const S half = S(area / S(2));
    S p = S(half / height);
    S beyond;
    if (value_of(p) <= value_of(web)) {  // in the web
      const S rest = S(web - p);
      beyond = S(height * rest * rest / S(2) + flange * (width - web) * (width + web - S(2) * p) +
                 S(2) * fillet.area * (web + fillet.offset - p));
    } else {
      p = S(width - half / (S(2) * flange));
      if (value_of(p) < value_of(web) + value_of(root_radius)) p = axis_in_fillets(value_of(half));
      const S rest = S(width - p);
      beyond = S(flange * rest * rest);
      const S v = S(web + root_radius - p);  // how far the fillets reach beyond the axis
      if (value_of(v) > 0.0) beyond += S(S(2) * fillet_moment(v));
    }
    return S(S(2) * beyond - area * (centroid - p));
  }

  /// First moment about the axis of the fillet's part beyond it, v from its end: integral (v - x)(r - sqrt(r² - x²))
  /// dx.
  S fillet_moment(const S& v) const {
    using std::asin;
    const S r = root_radius;
    const S w2 = S(r * r - v * v);
    const S w = root(w2);
    const S segment = S((v * w + r * r * asin(S(v / r))) / S(2));
    return S(r * v * v / S(2) - v * segment + (detail::cube(r) - w2 * w) / S(3));
  }

  /// The axis that halves the area where it crosses the fillets, by bisection.
  S axis_in_fillets(double half) const {
    const double r = value_of(root_radius), t = value_of(flange), b = value_of(width);
    double low = value_of(web), high = low + r;
    const double end = high;
    for (int i = 0; i < 60; ++i) {
      const double p = 0.5 * (low + high), v = end - p;
      const double one_fillet = r * v - 0.5 * (v * std::sqrt(r * r - v * v) + r * r * std::asin(v / r));
      (2.0 * t * (b - p) + 2.0 * one_fillet > half ? low : high) = p;
    }
    return S(0.5 * (low + high));
  }

  void set_shear_areas(SectionData<S>& d) const {
    const S h = S(height - flange), b = S(width - web / S(2));
    const S t = flange;
    // Vz: S = t s h / 2 from the tips, then p - web z² / 2 in the web.
    const S Iy = S(web * detail::cube(h) / S(12) + b * t * h * h / S(2));
    const S p = S(b * t * h / S(2) + web * h * h / S(8));
    const S h3 = detail::cube(h);
    const S in_web = S((p * p * h - p * web * h3 / S(12) + web * web * h3 * h * h / S(320)) / web);
    d.shear_z = S(Iy * Iy / (t * h * h * detail::cube(b) / S(6) + in_web));
    // Vy: S = t (e s - s² / 2) from the tips, e = tip to centroid, falling to zero at the middle of the web.
    const S y = S(b * b * t / (S(2) * b * t + h * web));
    const S e = S(b - y);
    const S offset = S(b / S(2) - y);
    const S b3 = detail::cube(b);
    const S Iz = S(S(2) * t * (b3 / S(12) + b * offset * offset) + web * h * y * y);
    const S at_web = S(t * b * (e - b / S(2)));
    const S in_flanges = S(S(2) * t * (e * e * b3 / S(3) - e * b3 * b / S(4) + b3 * b * b / S(20)));
    d.shear_y = S(Iz * Iz / (in_flanges + at_web * at_web * h / (S(3) * web)));
  }
};

template <class A, class B, class C, class D>
Channel(A, B, C, D) -> Channel<common_scalar_t<A, B, C, D>>;
template <class A, class B, class C, class D, class E>
Channel(A, B, C, D, E) -> Channel<common_scalar_t<A, B, C, D, E>>;

}  // namespace baywork
