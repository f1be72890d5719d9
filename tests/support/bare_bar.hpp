// SPDX-License-Identifier: MIT
// Bars given by bare numbers, as hand calculations use them.
#pragma once

#include <string>

#include <baywork/girder.hpp>

/// A, I about both axes and J each by itself.
struct BareShape {
  double A = 0, I = 0, J = 0, shear = baywork::rigid_stiffness;
  baywork::SectionData<> data() const {
    namespace text = baywork::text;
    baywork::SectionData<> d;
    d.designation = "A " + text::number(A) + ", I " + text::number(I) + ", J " + text::number(J);
    d.area = A;
    d.Iy = d.Iz = I;
    d.Wel_y = d.Wel_z = 1;
    d.It = J;
    d.shear_y = d.shear_z = shear;
    return d;
  }
};

/// E, and G for a Poisson's ratio of 0.3.
inline baywork::Bar bare(double E, double A, double I, double J, double shear = baywork::rigid_stiffness) {
  baywork::material::Material m;
  m.name = "elastic";
  m.E = E;
  m.G = E / 2.6;
  return {BareShape{A, I, J, shear}, m};
}
