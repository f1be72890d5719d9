// SPDX-License-Identifier: MIT
// The chords as one section: centroid, bending stiffness in both directions, and each chord's share of N and M.
#pragma once

#include <vector>

#include <baywork/closed_form/formula.hpp>

namespace baywork::closed_form {

/// One chord in the cross-section: place [m], area [m^2], own second moments for vertical and horizontal bending [m^4].
template <Scalar S = double>
struct ChordArea {
  S y = S(0), z = S(0);
  S A = S(0);
  S own_vertical = S(0);
  S own_horizontal = S(0);
};

/// Second moments about the common centroid, own parts included (parallel-axis theorem) [m, m^2, m^4].
template <Scalar S = double>
struct ChordGroup {
  S y = S(0), z = S(0);  ///< centroid; the neutral axis of pure bending goes through it
  S A = S(0);
  S I_vertical = S(0);    ///< sum (A dz^2 + own): bending by vertical loads
  S I_horizontal = S(0);  ///< sum (A dy^2 + own): bending by horizontal loads
  S I_mixed = S(0);       ///< sum A dy dz; zero for sections with a line of symmetry along y or z
};

template <Scalar S>
ChordGroup<S> chord_group(const std::vector<ChordArea<S>>& chords) {
  ChordGroup<S> g;
  for (const ChordArea<S>& c : chords) {
    require::positive(c.A, "chord group", "area of a chord");
    require::not_negative(c.own_vertical, "chord group", "own second moment of a chord");
    require::not_negative(c.own_horizontal, "chord group", "own second moment of a chord");
    g.A += c.A;
    g.y += S(c.A * c.y);
    g.z += S(c.A * c.z);
  }
  require::positive(g.A, "chord group", "sum of the chord areas");
  g.y = S(g.y / g.A);
  g.z = S(g.z / g.A);
  for (const ChordArea<S>& c : chords) {
    const S dy = S(c.y - g.y);
    const S dz = S(c.z - g.z);
    g.I_vertical += S(c.A * dz * dz + c.own_vertical);
    g.I_horizontal += S(c.A * dy * dy + c.own_horizontal);
    g.I_mixed += S(c.A * dy * dz);
  }
  return g;
}

/// What the girder's section carries at one place [N, N m]: N pulls at the centroid; M_vertical > 0 sags (pulls at
/// small z), M_horizontal > 0 pulls at small y.
template <Scalar S = double>
struct SectionForces {
  S N = S(0), M_vertical = S(0), M_horizontal = S(0);
};

/// A chord's part: axial force (tension positive) and its own bending moments, same signs as the girder's.
template <Scalar S = double>
struct ChordForce {
  S N = S(0), M_vertical = S(0), M_horizontal = S(0);
};

/// Chord forces of a girder whose sections stay plane: N_i = A_i [N/A - (kv dz_i + kh dy_i)], own moments I_own k,
/// with Iv kv + Im kh = M_vertical and Im kv + Ih kh = M_horizontal (k is E times the curvature [Pa/m]).
/// Range: any number of chords of one modulus, any places; braced faces, or open ones at mid-panel (the moments of open
/// panels come on top: portal_panel). A ladder carries no moment across its plane unless its chords have own second
/// moments; it throws UnstableFrame. Source: beam theory for unsymmetric bending (Timoshenko, Strength of Materials,
/// part I; value from memory).
template <Scalar S>
std::vector<ChordForce<S>> chord_forces(const std::vector<ChordArea<S>>& chords, const SectionForces<S>& f) {
  const ChordGroup<S> g = chord_group(chords);
  const S trace = S(g.I_vertical + g.I_horizontal);
  const S det = S(g.I_vertical * g.I_horizontal - g.I_mixed * g.I_mixed);
  S kv = S(0);
  S kh = S(0);
  const double size = value_of(trace);
  if (value_of(det) > 1e-14 * size * size) {
    kv = S((f.M_vertical * g.I_horizontal - f.M_horizontal * g.I_mixed) / det);
    kh = S((f.M_horizontal * g.I_vertical - f.M_vertical * g.I_mixed) / det);
  } else {
    // All chords on one line: I = trace * u u^T, which answers only moments along u.
    if (size > 0.0) {
      kv = S(f.M_vertical / trace);
      kh = S(f.M_horizontal / trace);
    }
    const double left_v = value_of(S(f.M_vertical - g.I_vertical * kv - g.I_mixed * kh));
    const double left_h = value_of(S(f.M_horizontal - g.I_mixed * kv - g.I_horizontal * kh));
    const double given = std::hypot(value_of(f.M_vertical), value_of(f.M_horizontal));
    if (std::hypot(left_v, left_h) > 1e-10 * given)
      fail<UnstableFrame>("chord group", "the chords lie on one line and a moment acts across it",
                          "chords with own second moments, or a moment along that line, are accepted");
  }
  std::vector<ChordForce<S>> out;
  out.reserve(chords.size());
  for (const ChordArea<S>& c : chords)
    out.push_back(
        {S(c.A * (f.N / g.A - kv * (c.z - g.z) - kh * (c.y - g.y))), S(c.own_vertical * kv), S(c.own_horizontal * kh)});
  return out;
}

/// n >= 3 equal chords on a circle of radius R: sum A d^2 = n A R^2/2 about every axis through the centre [m^4].
/// Source: sum of cos^2 over n >= 3 equally spaced angles is n/2.
template <Scalar S>
ClosedForm<S> ring_second_moment(int n, const S& R, const S& A) {
  require::positive(R, "ring of chords", "radius");
  require::positive(A, "ring of chords", "area of a chord");
  return {S(S(n) * A * R * R / S(2)),
          n >= 3,
          "{n}*{A}*{R}^2/2",
          "three or more equal chords, equally spaced on a circle",
          {{"n", static_cast<double>(n)}, {"A", value_of(A)}, {"R", value_of(R)}}};
}

}  // namespace baywork::closed_form
