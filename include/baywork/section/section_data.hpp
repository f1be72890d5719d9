// SPDX-License-Identifier: MIT
// What a cross-section is to the rest of the library, whatever its shape.
#pragma once

#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <string>
#include <type_traits>
#include <utility>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>

namespace baywork {

/// The family a clause asks for ("circular hollow", "I"). `other` is a user's own shape.
enum class ShapeKind : std::uint8_t {
  round_tube,
  rectangular_hollow,
  solid_round,
  solid_rectangle,
  i_shape,
  channel,
  other
};
/// The same from all sides.
inline bool is_round(ShapeKind k) { return k == ShapeKind::round_tube || k == ShapeKind::solid_round; }

/// A flat part of a section's wall, for classification: c is the clear length, t the thickness [m].
template <Scalar S = double>
struct PlateElement {
  S c = S(0);
  S t = S(0);
  bool outstand = false;       ///< held on one edge only
  bool bends_about_y = false;  ///< true: a web in bending about y (stress varies along it); false: a flange of My
};

/// Geometry of one cross-section. Axes y (horizontal, across) and z (up) through the centroid, principal.
/// Units m, m², m³, m⁴. For a section whose stress peak differs on the two sides the smaller modulus is given.
template <Scalar S = double>
struct SectionData {
  std::string designation;  ///< "round tube 60.3 x 5"; as printed
  ShapeKind kind = ShapeKind::other;
  S area = S(0);                 ///< A
  S Iy = S(0), Iz = S(0);        ///< second moments; My bends in the x-z plane with Iy
  S Wel_y = S(0), Wel_z = S(0);  ///< elastic moduli
  S Wpl_y = S(0), Wpl_z = S(0);  ///< plastic moduli
  S shear_y = S(0),
    shear_z = S(0);               ///< shear areas for stiffness (Timoshenko), for Vy and Vz; infinity: no shear strain
  S It = S(0);                    ///< Saint-Venant torsion constant
  S Wt = S(0);                    ///< torsion modulus: largest torsional shear stress is T / Wt
  S iy = S(0), iz = S(0);         ///< radii of gyration
  S perimeter = S(0);             ///< outer perimeter
  S height = S(0), width = S(0);  ///< overall extents along z and y (a tube's diameter)
  S wall = S(0);                  ///< largest wall thickness; for solids the smaller extent
  S inner_radius = S(0);          ///< of a hollow section's corner
  S web_area_y = S(0), web_area_z = S(0);  ///< area of the parts parallel to Vy and Vz that codes count for shear
  std::array<PlateElement<S>, 4> plates{};
  std::size_t n_plates = 0;
};

/// Throws BadDescription unless the data can carry a beam: for sections filled in by hand or by a user's own shape.
/// Shear areas may be infinite (no shear strain); plastic moduli, Wt and what only codes use may be zero (not given).
template <class S>
void validate(const SectionData<S>& d) {
  const std::string place = d.designation.empty() ? std::string("section without a designation") : d.designation;
  require::positive(d.area, place, "area");
  require::positive(d.Iy, place, "second moment Iy");
  require::positive(d.Iz, place, "second moment Iz");
  require::positive(d.It, place, "torsion constant");
  if (!is_infinite(d.shear_y)) require::positive(d.shear_y, place, "shear area for Vy");
  if (!is_infinite(d.shear_z)) require::positive(d.shear_z, place, "shear area for Vz");
  require::positive(d.Wel_y, place, "elastic modulus Wel_y");
  require::positive(d.Wel_z, place, "elastic modulus Wel_z");
  require::not_negative(d.Wpl_y, place, "plastic modulus Wpl_y");
  require::not_negative(d.Wpl_z, place, "plastic modulus Wpl_z");
  require::not_negative(d.Wt, place, "torsion modulus");
}

/// A shape gives its section data once; a user's own type needs only this.
template <class T>
concept Shape = requires(const T& shape) {
  requires Scalar<std::remove_cvref_t<decltype(shape.data().area)>>;
  requires std::same_as<std::remove_cvref_t<decltype(shape.data())>,
                        SectionData<std::remove_cvref_t<decltype(shape.data().area)>>>;
};

/// The scalar of a shape's data.
template <Shape T>
using shape_scalar_t = std::remove_cvref_t<decltype(std::declval<const T&>().data().area)>;

}  // namespace baywork
