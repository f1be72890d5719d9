// SPDX-License-Identifier: MIT
// Torsion of a girder with three or four faces: Bredt's shear flow round the section.
#pragma once

#include <vector>

#include <baywork/closed_form/formula.hpp>

namespace baywork::closed_form {

/// A face in torsion: width b between chord axes [m], shear stiffness [N].
template <Scalar S = double>
struct TorsionFace {
  S b = S(0);
  S stiffness = S(0);
};

/// What a girder's faces do in chords where their diagonals do not meet at common nodes.
template <Scalar S = double>
struct UnmatchedChords {
  int count = 0;  ///< chords whose two faces are not mirror images of each other about that chord
  S s = S(0);     ///< panel length (projection of one diagonal) [m]
  S EA = S(0);    ///< of one chord [N]
};

/// Torsional stiffness GJ [N m^2] = 4 A^2/(sum b_i^2/S_i + n s^2/(EA)) + sum of the chords' own G J.
/// Derivation: the flow q = T/(2A) is the same in every face (free to warp), so a face carries q b_i and strains by
/// q b_i/S_i; the twist per length is q sum(b_i^2/S_i)/(2A). In an unmatched chord the diagonals of its two faces load
/// different nodes and leave the axial force +-q s in it, which adds the energy q^2 s^2/(2 EA) per length.
/// Range: three or four faces of a closed section that keeps its shape (diaphragms or stiff joints), uniform torque,
/// ends free to warp; the chords' own part only if the section keeps its shape. Source: Bredt's two formulas for
/// thin-walled tubes (Timoshenko and Goodier, Theory of Elasticity, chapter on torsion; value from memory) with
/// G t_i = S_i/b_i; the term with n is derived here.
template <Scalar S>
ClosedForm<S> bredt_torsion_stiffness(const S& enclosed_area, const std::vector<TorsionFace<S>>& faces,
                                      const UnmatchedChords<S>& unmatched = {}, const S& sum_GJ_chords = S(0)) {
  const char* const place = "torsion";
  require::positive(enclosed_area, place, "enclosed area");
  require::not_negative(sum_GJ_chords, place, "the chords' own torsional stiffness");
  S sum = S(0);
  for (const TorsionFace<S>& f : faces) {
    require::positive(f.b, place, "width of a face");
    require::positive(f.stiffness, place, "shear stiffness of a face");
    sum += S(f.b * f.b / f.stiffness);
  }
  if (faces.size() < 3)
    fail<BadDescription>(place, std::to_string(faces.size()) + " faces do not enclose an area",
                         "three faces or more are accepted");
  S chord = S(0);
  if (unmatched.count > 0) {
    require::positive(unmatched.s, place, "panel length");
    require::positive(unmatched.EA, place, "axial stiffness of a chord");
    chord = S(S(unmatched.count) * unmatched.s * unmatched.s / unmatched.EA);
  }
  return {S(S(4) * enclosed_area * enclosed_area / (sum + chord) + sum_GJ_chords),
          faces.size() <= 4,
          "4*{A}^2/({sum(b^2/S)} + {n*s^2/EA}) + {sum GJ}",
          "three or four faces, the section keeps its shape and is free to warp",
          {{"A", value_of(enclosed_area)},
           {"sum(b^2/S)", value_of(sum)},
           {"n*s^2/EA", value_of(chord)},
           {"sum GJ", value_of(sum_GJ_chords)}}};
}

/// Force along a face of width b under the torque T: V = T b/(2A) [N]; positive the way T turns. Bredt's flow times b.
template <Scalar S>
S bredt_face_force(const S& T, const S& b, const S& enclosed_area) {
  require::positive(enclosed_area, "torsion", "enclosed area");
  return S(T * b / (S(2) * enclosed_area));
}

}  // namespace baywork::closed_form
