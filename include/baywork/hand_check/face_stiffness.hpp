// SPDX-License-Identifier: MIT
// Each face of a girder as a hand calculation sees it: its place in the section and its shear stiffness.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/closed_form/face_shear.hpp>
#include <baywork/closed_form/open_face.hpp>
#include <baywork/girder/girder.hpp>

namespace baywork {

/// One face that has panels. y, z of its chords from the section's reference point, at the first station [m].
struct HandFace {
  std::size_t face = 0;
  std::string name;
  Layout layout = Layout::none;
  PanelFacts facts{};
  std::size_t first_chord = 0, second_chord = 0;
  double y1 = 0, z1 = 0, y2 = 0, z2 = 0;
  double s = 0, h = 0;                    ///< panel length, distance of the chord axes [m]
  std::size_t span = 1;                   ///< bays of one panel
  double share_1 = 0.5;                   ///< an open face: the first chord's part of its shear
  closed_form::ClosedForm<> stiffness{};  ///< of the diagonals, or of an open face [N]
  closed_form::ClosedForm<> frame{};      ///< that chords and rigid posts of a braced face add by bending [N]
  std::string no_closed_form;             ///< why there is none; empty where there is

  double ty() const { return (y2 - y1) / h; }
  double tz() const { return (z2 - z1) / h; }
  /// Moment of a unit force along the face, about +x [m].
  double arm() const { return y1 * tz() - z1 * ty(); }
  /// Both carry side by side, as they are strained alike: derived here for repeating panels.
  double S() const { return stiffness.value + frame.value; }
  /// The part of V that the diagonals carry.
  double diagonals_part() const { return stiffness.value / S(); }
  bool braced() const { return layout != Layout::open && layout != Layout::none && layout != Layout::other; }
  /// Length of one diagonal; that of a K rises half of the depth [m].
  double diagonal() const { return closed_form::diagonal_length(s, layout == Layout::k ? h / 2 : h); }
};

namespace detail {

/// EI and shear stiffness of a chord for bending in the plane of a face whose unit normal is (ny, nz).
struct InPlane {
  double EI = 0, GA = 0;
};
inline InPlane in_plane_of(const Bar& bar, double ny, double nz) {
  // bending about y strains along z, so it goes with the shear area for Vz
  const double second_moment = bar.section.Iy * ny * ny + bar.section.Iz * nz * nz;
  const double f = (ny * ny / bar.section.shear_z + nz * nz / bar.section.shear_y) / bar.material.G;
  return {bar.material.E * second_moment, f > 0 ? 1 / f : rigid_stiffness};
}

inline std::string not_regular(const Girder& g, const Face& face) {
  if (face.given() > 1) return "its panels are given one by one";
  if (face.offset() > 0) return "its panels are shifted along the girder";
  if (g.bays() % face.span() != 0) return "its last panel is shorter";
  const double a = g.stations[1] - g.stations[0];
  for (std::size_t i = 1; i < g.bays(); ++i)
    if (std::abs(g.stations[i + 1] - g.stations[i] - a) > 1e-9 * g.span()) return "its bays differ in length";
  return "";
}

/// Stiffness by bending of chords and cross members; says why not, or nothing.
inline std::string bending_stiffness(const Girder& g, HandFace& f, closed_form::ClosedForm<>& out) {
  const Bar &c1 = g.chords[f.first_chord].bar, &c2 = g.chords[f.second_chord].bar;
  const double ny = -f.tz(), nz = f.ty();
  const bool square = std::abs(ny * nz) < 1e-9;
  const auto round = [](const Bar& b) { return std::abs(b.section.Iy - b.section.Iz) <= 1e-9 * b.section.Iy; };
  if (!square && !(round(c1) && round(c2))) return "its chords bend about no principal axis";
  if (!(f.facts.joint.in_plane > 0)) return "its cross members are pinned";
  const auto half = [](const Bar& b) { return (std::max)(b.section.height, b.section.width) / 2; };
  if (f.facts.joint.to_chord_surface && half(c1) != half(c2)) return "its joints differ in size";
  const InPlane p1 = in_plane_of(c1, ny, nz), p2 = in_plane_of(c2, ny, nz);
  closed_form::OpenFace<> o;
  o.s = f.s;
  o.h = f.h;
  o.EI_chord_1 = p1.EI;
  o.EI_chord_2 = p2.EI;
  o.GA_chord_1 = p1.GA;
  o.GA_chord_2 = p2.GA;
  const Bar& b = f.facts.cross;
  o.EI_cross = b.material.E * b.section.Iz;  // local z of cross members is the face's normal
  o.GA_cross = b.material.G * b.section.shear_y;
  o.joint = f.facts.joint.in_plane;
  if (f.facts.joint.to_chord_surface) o.rigid_across = half(c1);
  const closed_form::OpenFaceAnswer<> a = closed_form::open_face(o);
  out = a.stiffness;
  f.share_1 = a.share_1;
  return "";
}

inline void braced_stiffness(const Girder& g, HandFace& f) {
  if (f.facts.gap != 0) {
    f.no_closed_form = "its diagonals meet the chords beside the joints";
    return;
  }
  const double E = f.facts.brace.material.E, Ad = f.facts.brace.section.area;
  // a post of another modulus counts with its area times the ratio of both
  const double Av = f.facts.cross.given ? f.facts.cross.section.area * (f.facts.cross.material.E / E) : 0.0;
  switch (f.layout) {
    case Layout::alternating: f.stiffness = closed_form::alternating_face_stiffness(E, Ad, f.s, f.h); break;
    case Layout::crossed: f.stiffness = closed_form::crossed_face_stiffness(E, Ad, f.s, f.h); break;
    case Layout::k: f.stiffness = closed_form::k_face_stiffness(E, Ad, Av, f.s, f.h); break;
    case Layout::single_direction:
    case Layout::mirrored_towards:
    case Layout::mirrored_away: f.stiffness = closed_form::single_direction_face_stiffness(E, Ad, Av, f.s, f.h); break;
    default: f.no_closed_form = "it is an own panel"; return;
  }
  if (f.facts.cross.given && f.facts.joint.in_plane > 0) f.no_closed_form = bending_stiffness(g, f, f.frame);
}

}  // namespace detail

/// All faces with panels, about the point (y0, z0) of a prismatic girder's section.
inline std::vector<HandFace> hand_faces(const Girder& g, double y0, double z0) {
  std::vector<HandFace> out;
  for (std::size_t i = 0; i < g.faces.size(); ++i) {
    const GirderFace& face = g.faces[i];
    if (face.panels.empty() || (face.panels.given() == 1 && face.panels.panel(0).empty())) continue;
    HandFace f;
    f.face = i;
    f.name = face.name;
    f.facts = face.panels.panel(0).facts();
    f.layout = f.facts.layout;
    f.first_chord = face.first_chord;
    f.second_chord = face.second_chord;
    const Vec3<>&a = g.joint(0, face.first_chord), &b = g.joint(0, face.second_chord);
    f.y1 = a.y - y0;
    f.z1 = a.z - z0;
    f.y2 = b.y - y0;
    f.z2 = b.z - z0;
    f.h = std::hypot(b.y - a.y, b.z - a.z);
    f.span = face.panels.span();
    f.no_closed_form = detail::not_regular(g, face.panels);
    if (f.no_closed_form.empty()) {
      f.s = g.stations[f.span] - g.stations[0];
      if (f.layout == Layout::open)
        f.no_closed_form = detail::bending_stiffness(g, f, f.stiffness);
      else
        detail::braced_stiffness(g, f);
    }
    out.push_back(std::move(f));
  }
  return out;
}

}  // namespace baywork
