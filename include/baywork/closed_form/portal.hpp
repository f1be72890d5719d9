// SPDX-License-Identifier: MIT
// The portal method for open panels: member moments from the panel shear alone.
#pragma once

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>

namespace baywork::closed_form {

/// Magnitudes in one open panel with equal chords [N, m, N m].
template <Scalar S = double>
struct PortalPanel {
  S chord_shear = S(0);              ///< V/2 in each chord
  S chord_end_moment = S(0);         ///< V a/4 at both ends; zero at mid-panel
  S cross_member_moment = S(0);      ///< V a/2 at both ends of a cross member between two such panels
  S end_cross_member_moment = S(0);  ///< V a/4 at both ends of the last cross member
  S cross_member_shear = S(0);       ///< V a/h, also the step of the chord's axial force at that cross member
  S end_cross_member_shear = S(0);   ///< V a/(2h), also the chord's axial force in the panel at a free end
};

/// Panel of length a between cross members, chord axes h apart, face shear V (any sign; all results change with it).
/// Each chord takes V/2 and has its contraflexure at mid-panel, so its end moment is (V/2)(a/2). A cross member takes
/// the chord end moments of both its panels; equal at its two ends, so its shear is twice its end moment over h.
/// Exact for equal chords in a row of equal panels under constant V; otherwise an estimate, poorest beside load points
/// with a large step of V. Source: derived by statics; the portal method of R. C. Hibbeler, Structural Analysis,
/// chapter "Approximate analysis" (value from memory); figure 6.11 of EN 1993-1-1 gives the same moments (value from
/// memory).
template <Scalar S>
PortalPanel<S> portal_panel(const S& V, const S& a, const S& h) {
  require::finite(V, "portal method", "panel shear");
  require::positive(a, "portal method", "panel length");
  require::positive(h, "portal method", "face depth");
  PortalPanel<S> p;
  p.chord_shear = S(V / S(2));
  p.chord_end_moment = S(V * a / S(4));
  p.cross_member_moment = S(V * a / S(2));
  p.end_cross_member_moment = p.chord_end_moment;
  p.cross_member_shear = S(V * a / h);
  p.end_cross_member_shear = S(V * a / (S(2) * h));
  return p;
}

/// End moment of the cross member between two panels that differ: (V_left a_left + V_right a_right)/4, equal chords.
/// V_right = 0 is the last cross member. Source: sum of the chord end moments of portal_panel at the joint.
template <Scalar S>
S portal_cross_member_moment(const S& V_left, const S& a_left, const S& V_right, const S& a_right) {
  return S((V_left * a_left + V_right * a_right) / S(4));
}

}  // namespace baywork::closed_form
