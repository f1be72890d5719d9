// SPDX-License-Identifier: MIT
// A bar as it is bought: a shape of a material.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/material/material.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork {

/// Welds along a bar's whole length, as those of a rail for the screen's edge or of a seam.
struct WeldsAlong {
  int lines = 0;     ///< how many run side by side; 0: none
  double width = 0;  ///< of what each line holds on the bar: a rail's foot; 0 for a seam [m]
};

/// A weld across a bar between its ends, as that of a lug or a clamp plate.
struct WeldAcross {
  double at = 0;     ///< its middle, from the bar's start [m]: of a chord along the girder's axis
  double width = 0;  ///< of what it holds along the bar [m]
};

/// Section data and material, evaluated once: one type whatever the shape. A default-made bar is "not given".
template <Scalar S = double>
struct BasicBar {
  SectionData<S> section{};
  material::Material material{};
  material::StrengthStep strength{};  ///< of this wall; all zero where the material gives no strengths
  WeldsAlong along{};
  std::vector<WeldAcross> across{};
  bool given = false;

  BasicBar() = default;
  /// Throws BadDescription for an impossible shape or material, or a wall that the material has no strength for.
  template <Shape T>
  BasicBar(const T& shape, material::Material of) : material(std::move(of)), given(true) {
    const auto data = shape.data();
    section = cast(data);
    material::validate(material);
    if (!material.steps.empty()) strength = material::strength(material, value_of(section.wall));
  }

  /// The same with welds along it.
  BasicBar welded_along(const WeldsAlong& welds) const {
    if (welds.lines < 0)
      fail<BadDescription>(text(), std::to_string(welds.lines) + " welds along it", "0 and more are accepted");
    require::not_negative(welds.width, text(), "width that a weld along it holds");
    BasicBar b = *this;
    b.along = welds;
    return b;
  }

  /// The same with welds across it, each bar of its kind at the same places.
  BasicBar welded_across(std::vector<WeldAcross> welds) const {
    for (const WeldAcross& w : welds) {
      require::not_negative(w.at, text(), "place of a weld across it");
      require::not_negative(w.width, text(), "width that a weld across it holds");
    }
    BasicBar b = *this;
    b.across = std::move(welds);
    return b;
  }

  S mass_per_metre() const { return S(section.area * S(material.density)); }
  bool has_strength() const noexcept { return strength.yield > 0; }
  std::string text() const {
    std::string out = section.designation + ", " + material.name;
    if (along.lines > 0)
      out += ", " + std::to_string(along.lines) + (along.lines == 1 ? " weld" : " welds") + " along it";
    if (along.lines > 0 && along.width > 0.0) out += " on " + baywork::text::quantity(along.width, 1e-3, "mm");
    for (std::size_t i = 0; i < across.size(); ++i)
      out += (i == 0 ? ", welds across it at " : ", ") + baywork::text::number(across[i].at) + " m";
    return out;
  }

 private:
  template <class T>
  static SectionData<S> cast(const SectionData<T>& d) {
    if constexpr (std::is_same_v<T, S>) {
      return d;
    } else {
      SectionData<S> s;
      s.designation = d.designation;
      s.kind = d.kind;
      s.area = S(d.area);
      s.Iy = S(d.Iy);
      s.Iz = S(d.Iz);
      s.Wel_y = S(d.Wel_y);
      s.Wel_z = S(d.Wel_z);
      s.Wpl_y = S(d.Wpl_y);
      s.Wpl_z = S(d.Wpl_z);
      s.shear_y = S(d.shear_y);
      s.shear_z = S(d.shear_z);
      s.It = S(d.It);
      s.Wt = S(d.Wt);
      s.iy = S(d.iy);
      s.iz = S(d.iz);
      s.perimeter = S(d.perimeter);
      s.height = S(d.height);
      s.width = S(d.width);
      s.wall = S(d.wall);
      s.inner_radius = S(d.inner_radius);
      s.web_area_y = S(d.web_area_y);
      s.web_area_z = S(d.web_area_z);
      s.n_plates = d.n_plates;
      for (std::size_t i = 0; i < d.n_plates; ++i)
        s.plates[i] = {S(d.plates[i].c), S(d.plates[i].t), d.plates[i].outstand, d.plates[i].bends_about_y};
      return s;
    }
  }
};

using Bar = BasicBar<double>;

/// How the end of a cross member or post is joined to the chord: rotational stiffness in the plane of the face and out
/// of it [Nm/rad], infinity for rigid and zero for pinned. `to_chord_surface`: the bar's flexible length ends at the
/// chord's surface and a rigid arm goes on to its axis; otherwise it goes from axis to axis.
template <Scalar S = double>
struct BasicJoint {
  S in_plane = S(rigid_stiffness);
  S out_of_plane = S(rigid_stiffness);
  bool to_chord_surface = false;
};
using Joint = BasicJoint<double>;

inline Joint rigid_joint() { return {}; }
inline Joint pinned_joint() { return {0.0, 0.0, false}; }
template <Scalar S>
BasicJoint<S> semi_rigid_joint(const S& in_plane, const S& out_of_plane) {
  return {in_plane, out_of_plane, false};
}

}  // namespace baywork
