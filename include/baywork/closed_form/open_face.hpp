// SPDX-License-Identifier: MIT
// Shear stiffness of one open face (no diagonals), and how its shear splits between unequal chords.
#pragma once

#include <baywork/closed_form/formula.hpp>

namespace baywork::closed_form {

/// Equal chords, bending only: S = 24 E Ic/{s^2 [1 + 2 Ic h/(Ib s)]} [N]; s panel length, h distance of the chord axes,
/// EI_chord of one chord, EI_cross of the cross member, in the face's plane [N m^2].
/// Derivation: chord V/2 with contraflexure at mid-panel gives s^2/(24 E Ic); the joints turn by (V s/2) h/(6 E Ib).
/// Range: repeating panels, rigid joints without size. Sources: Timoshenko and Gere, Theory of Elastic Stability,
/// art. 2.18; EN 1993-1-1, equation (6.73) without its cap (values from memory).
template <Scalar S>
ClosedForm<S> open_face_stiffness(const S& EI_chord, const S& EI_cross, const S& s, const S& h) {
  require::positive(EI_chord, "open face", "bending stiffness of the chord");
  require::positive(EI_cross, "open face", "bending stiffness of the cross member");
  require::positive(s, "open face", "panel length");
  require::positive(h, "open face", "face depth");
  return {S(S(24) * EI_chord / (s * s * (S(1) + S(2) * EI_chord * h / (EI_cross * s)))),
          true,
          "24*{EIc}/({s}^2*(1 + 2*{EIc}*{h}/({EIb}*{s})))",
          "repeating panels, equal chords, rigid joints without size, bending alone",
          {{"EIc", value_of(EI_chord)}, {"EIb", value_of(EI_cross)}, {"s", value_of(s)}, {"h", value_of(h)}}};
}

/// An open face with all that can make it softer or stiffer. Stiffnesses in the face's plane: EI [N m^2], shear GA [N],
/// joint [N m/rad]; infinite: that part does not deform.
template <Scalar S = double>
struct OpenFace {
  S s = S(0);  ///< panel length between cross-member axes [m]
  S h = S(0);  ///< distance of the chord axes [m]
  S EI_chord_1 = S(0);
  S EI_chord_2 = S(0);
  S EI_cross = S(0);
  S GA_chord_1 = S(rigid_stiffness);  ///< shear stiffness G Av of the chord itself
  S GA_chord_2 = S(rigid_stiffness);
  S GA_cross = S(rigid_stiffness);
  S joint = S(rigid_stiffness);  ///< spring at each end of the cross member, where it meets the rigid part
  S rigid_along = S(0);          ///< rigid part of the chord at each panel end (half a cross member's depth) [m]
  S rigid_across = S(0);         ///< rigid part of the cross member at each end (half a chord's depth) [m]
};

template <Scalar S = double>
struct OpenFaceAnswer {
  ClosedForm<S> stiffness;  ///< S of the face [N]
  S share_1 = S(0);         ///< V1/V: part of the face's shear in chord 1; chord 2 has the rest
};

/// Stiffness of an open face and its shear split. Under the face shear V chord i takes V_i, with contraflexure at
/// mid-panel and the end moment V_i s/2; the cross member's end moment at chord i is V_i s (interior joint).
/// Flexibilities, with clear lengths s' = s - 2 rigid_along and h' = h - 2 rigid_across, k the joint spring:
///   c_i   = s'^3/(12 EI_i s) + s'/(GA_i s)                       chord i against its joints
///   alpha = s [h'^3/(6 EIb h^2) + (h'/h)^2/k]                    cross member, equal end moments (S-shape)
///   sigma = s [h'/(2 EIb) + 1/k]                                 cross member, opposite end moments (C-shape)
/// Equal strain of both chords, g = c_i V_i + alpha V/2 +- sigma (V1 - V2)/2, gives
///   V1/V  = (c2 + sigma)/(c1 + c2 + 2 sigma)
///   1/S   = alpha/2 + s h'/(h^2 GAb) + [c1 c2 + sigma (c1 + c2)/2]/(c1 + c2 + 2 sigma).
/// Source: derived here by slope deflection; for equal chords without joint size it is open_face_stiffness.
/// Range: repeating panels; moments at the faces of rigid joints are smaller than those at the axes.
template <Scalar S>
OpenFaceAnswer<S> open_face(const OpenFace<S>& f) {
  const char* const place = "open face";
  require::positive(f.EI_chord_1, place, "bending stiffness of chord 1");
  require::positive(f.EI_chord_2, place, "bending stiffness of chord 2");
  require::positive(f.EI_cross, place, "bending stiffness of the cross member");
  require::positive(f.s, place, "panel length");
  require::positive(f.h, place, "face depth");
  require::not_negative(f.rigid_along, place, "rigid length along the chord");
  require::not_negative(f.rigid_across, place, "rigid length across the face");
  for (const S& stiff : {f.GA_chord_1, f.GA_chord_2, f.GA_cross, f.joint})
    if (!is_infinite(stiff)) require::positive(stiff, place, "shear or joint stiffness");
  const S sc = S(f.s - S(2) * f.rigid_along);
  const S hc = S(f.h - S(2) * f.rigid_across);
  require::positive(sc, place, "clear length of the chord");
  require::positive(hc, place, "clear length of the cross member");
  const S joint = detail::flexibility(f.joint);
  const S c1 = S(detail::cube(sc) / (S(12) * f.EI_chord_1 * f.s) + sc / f.s * detail::flexibility(f.GA_chord_1));
  const S c2 = S(detail::cube(sc) / (S(12) * f.EI_chord_2 * f.s) + sc / f.s * detail::flexibility(f.GA_chord_2));
  const S alpha = S(f.s * (detail::cube(hc) / (S(6) * f.EI_cross * f.h * f.h) + hc * hc / (f.h * f.h) * joint));
  const S sigma = S(f.s * (hc / (S(2) * f.EI_cross) + joint));
  const S shear = S(f.s * hc / (f.h * f.h) * detail::flexibility(f.GA_cross));
  const S sum = S(c1 + c2 + S(2) * sigma);
  const S flexibility = S(alpha / S(2) + shear + (c1 * c2 + sigma * (c1 + c2) / S(2)) / sum);
  OpenFaceAnswer<S> answer;
  answer.share_1 = S((c2 + sigma) / sum);
  answer.stiffness = {S(S(1) / flexibility),
                      true,
                      "1/({alpha}/2 + {b} + ({c1}*{c2} + {sigma}*({c1} + {c2})/2)/({c1} + {c2} + 2*{sigma}))",
                      "repeating panels, contraflexure of the chords at mid-panel",
                      {{"alpha", value_of(alpha)},
                       {"sigma", value_of(sigma)},
                       {"b", value_of(shear)},
                       {"c1", value_of(c1)},
                       {"c2", value_of(c2)}}};
  return answer;
}

}  // namespace baywork::closed_form
