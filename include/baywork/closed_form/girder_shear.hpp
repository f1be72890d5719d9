// SPDX-License-Identifier: MIT
// Shear stiffness of a whole girder, vertically and horizontally, from its faces.
#pragma once

#include <vector>

#include <baywork/closed_form/formula.hpp>

namespace baywork::closed_form {

/// One face as seen in the cross-section: from chord (y1, z1) to chord (y2, z2) [m], and its shear stiffness [N].
template <Scalar S = double>
struct SectionFace {
  S y1 = S(0), z1 = S(0), y2 = S(0), z2 = S(0);
  S stiffness = S(0);
};

/// V_y = yy g_y + yz g_z and V_z = yz g_y + zz g_z [N]; g the shear strains of a section that does not turn.
template <Scalar S = double>
struct GirderShear {
  S yy = S(0), zz = S(0), yz = S(0);
};

/// Sum of the faces' components: a face along the unit vector t sees the strain g.t and answers with S (g.t) t, so
/// yy = sum S t_y^2, zz = sum S t_z^2, yz = sum S t_y t_z. Zero: no face resists (a ladder across its plane; its chords
/// then bend on their own). Exact for one face, for three faces, and for boxes with equal opposite faces, under loads
/// through the shear centre. For unequal opposite faces of a box it is the upper limit (short girders, free warping);
/// see unequal_opposite_faces_stiffness. Source: derived here from compatibility of a section that keeps its shape.
template <Scalar S>
GirderShear<S> girder_shear(const std::vector<SectionFace<S>>& faces) {
  GirderShear<S> sum;
  for (const SectionFace<S>& f : faces) {
    require::not_negative(f.stiffness, "girder shear", "shear stiffness of a face");
    const S dy = S(f.y2 - f.y1);
    const S dz = S(f.z2 - f.z1);
    const S b2 = S(dy * dy + dz * dz);
    require::positive(b2, "girder shear", "squared width of a face");
    sum.yy += S(f.stiffness * dy * dy / b2);
    sum.zz += S(f.stiffness * dz * dz / b2);
    sum.yz += S(f.stiffness * dy * dz / b2);
  }
  return sum;
}

/// Two unequal opposite faces of a LONG four-chord box of equal chords, load midway between them: plane sections
/// fix the chord forces and so give each face V/2 whatever its stiffness; S = 4/(1/S1 + 1/S2) [N] for the midway line.
/// Short girders are between this and S1 + S2. Source: derived here (energy of two faces with V/2 each).
template <Scalar S>
ClosedForm<S> unequal_opposite_faces_stiffness(const S& S1, const S& S2) {
  require::positive(S1, "girder shear", "shear stiffness of the first face");
  require::positive(S2, "girder shear", "shear stiffness of the second face");
  return {S(S(4) / (S(1) / S1 + S(1) / S2)),
          true,
          "4/(1/{S1} + 1/{S2})",
          "long box of four equal chords, load midway between the two faces",
          {{"S1", value_of(S1)}, {"S2", value_of(S2)}}};
}

}  // namespace baywork::closed_form
