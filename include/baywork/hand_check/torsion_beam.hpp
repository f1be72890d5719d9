// SPDX-License-Identifier: MIT
// The girder as a shaft: torque along it, and its stiffness by Bredt.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <baywork/closed_form/continuous_beam.hpp>
#include <baywork/closed_form/torsion.hpp>
#include <baywork/hand_check/axis_loads.hpp>
#include <baywork/hand_check/beam_supports.hpp>
#include <baywork/hand_check/girder_beam.hpp>

namespace baywork {

/// GJ phi'' = -t is the equation of a simple beam's moment under the load t: GJ phi is that moment M less a line
/// through its values at neighbouring places held against roll; past the last ones the line has the slope that M has at
/// the free end, where T = GJ phi' is zero. T is the torque on the positive cut, about +x.
struct TorsionBeam {
  bool acts = false;        ///< the loads turn the girder somewhere
  double size = 0;          ///< largest |T| [N m]
  std::vector<double> phi;  ///< GJ times the twist, at stations [N m^2]
  std::vector<double> T;    ///< mean torque in each bay [N m]
  std::string no_torque;    ///< why T is not known
  closed_form::ClosedForm<> GJ{};
  std::string no_stiffness;  ///< why GJ is not known
};

namespace detail {

/// Area inside the ring of the chords, in the order of the faces that join them [m^2]; 0 where these make no ring.
inline double enclosed_area(const std::vector<HandFace>& faces) {
  if (faces.size() < 3) return 0;
  double twice = 0, y = faces[0].y2, z = faces[0].z2;
  std::size_t at = faces[0].second_chord, used = 0;
  std::vector<char> done(faces.size(), 0);
  done[0] = 1;
  twice += faces[0].y1 * faces[0].z2 - faces[0].z1 * faces[0].y2;
  for (std::size_t step = 1; step < faces.size(); ++step)
    for (std::size_t i = 0; i < faces.size(); ++i) {
      const HandFace& f = faces[i];
      if (done[i] || (f.first_chord != at && f.second_chord != at)) continue;
      const bool forward = f.first_chord == at;
      const double yn = forward ? f.y2 : f.y1, zn = forward ? f.z2 : f.z1;
      twice += y * zn - z * yn;
      y = yn;
      z = zn;
      at = forward ? f.second_chord : f.first_chord;
      done[i] = 1;
      ++used;
      break;
    }
  return used + 1 == faces.size() && at == faces[0].first_chord ? std::abs(twice) / 2 : 0;
}

/// The chords whose two faces bring their diagonals to different places.
inline int unmatched_chords(const Response& r, const GirderBeam& g) {
  int count = 0;
  for (std::size_t c = 0; c < g.chords.size(); ++c) {
    std::vector<std::set<std::pair<int, bool>>> ends;  // station, and whether the diagonal goes on from there
    for (const HandFace& f : g.faces) {
      if (f.first_chord != c && f.second_chord != c) continue;
      std::set<std::pair<int, bool>> here;
      for (const PanelMembers& p : r.model().faces[f.face].panels)
        for (const std::size_t d : p.diagonals) {
          const Member& m = r.model().frame.members[d];
          for (const std::size_t node : {m.from, m.to}) {
            const Address& a = r.model().frame.nodes[node].address;
            if (a.chord == static_cast<int>(c))
              here.insert({a.station, a.station == static_cast<int>(p.first_station)});
          }
        }
      ends.push_back(std::move(here));
    }
    if (ends.size() == 2 && !ends[0].empty() && !ends[1].empty() && ends[0] != ends[1]) ++count;
  }
  return count;
}

inline std::string why_no_bredt(const GirderBeam& g, double area) {
  if (!(area > 0) || g.faces.size() > 4) return "three or four faces must make a ring";
  for (const HandFace& f : g.faces) {
    if (!f.no_closed_form.empty()) return "the " + f.name + " face has no closed form: " + f.no_closed_form;
    if (!f.braced()) return "the chords' own torsion and warping matter beside an open face";
  }
  for (std::size_t i = 0; i < g.faces.size(); ++i)
    if (g.faces.size() == 4) {
      const double here = g.faces[i].S(), there = g.faces[g.opposite[i]].S();
      if (g.opposite[i] == i || std::abs(here - there) > 1e-6 * here) return "opposite faces differ";
    }
  if (!g.keeps_shape) return "no diaphragms keep the section's shape";
  return "";
}

inline void find_torque(const Girder& girder, const std::vector<std::size_t>& held, const AxisLoads& loads,
                        TorsionBeam& t) {
  const std::vector<double>& x = girder.stations;
  const double L = girder.span();
  double reach = 0;
  for (const Vec3<>& j : girder.joints) reach = (std::max)(reach, std::hypot(j.y, j.z));
  const closed_form::ContinuousBeam<> line({L, 1, rigid_stiffness, {{0}, {L}}}, loads.torque);
  for (const double at : x) t.phi.push_back(line.moment(at));
  const double start = line.shear(0), end = line.shear(L);
  double size = (std::max)(std::abs(start), std::abs(end));
  for (std::size_t b = 0; b < girder.bays(); ++b)
    size = (std::max)(size, std::abs(t.phi[b + 1] - t.phi[b]) / (x[b + 1] - x[b]));
  t.acts = size > 1e-9 * reach * loads.size;
  if (held.empty()) {
    t.no_torque = "no place is held against roll";
    t.phi.assign(x.size(), 0.0);
    return;
  }
  std::vector<double> phi = t.phi;
  for (std::size_t i = 0; i < x.size(); ++i) {
    std::size_t next = 0;  // the first held place not before this station
    while (next < held.size() && held[next] < i) ++next;
    if (next == 0)
      phi[i] -= t.phi[held.front()] + start * (x[i] - x[held.front()]);
    else if (next == held.size())
      phi[i] -= t.phi[held.back()] + end * (x[i] - x[held.back()]);
    else {
      const double xa = x[held[next - 1]], xb = x[held[next]], part = (x[i] - xa) / (xb - xa);
      phi[i] -= (1 - part) * t.phi[held[next - 1]] + part * t.phi[held[next]];
    }
  }
  t.phi = std::move(phi);
  for (std::size_t b = 0; b < girder.bays(); ++b) {
    t.T.push_back((t.phi[b + 1] - t.phi[b]) / (x[b + 1] - x[b]));
    t.size = (std::max)(t.size, std::abs(t.T.back()));
  }
}

}  // namespace detail

inline TorsionBeam torsion_beam(const Response& r, const GirderBeam& g, const AxisLoads& loads) {
  TorsionBeam t;
  const Girder& girder = r.girder();
  if (!g.not_straight.empty()) {
    t.no_torque = t.no_stiffness = g.not_straight;
    t.acts = true;
    return t;
  }
  detail::find_torque(girder, roll_supports(r), loads, t);
  const double area = detail::enclosed_area(g.faces);
  t.no_stiffness = detail::why_no_bredt(g, area);
  if (!t.no_stiffness.empty()) return t;
  std::vector<closed_form::TorsionFace<>> faces;
  for (const HandFace& f : g.faces) faces.push_back({f.h, f.S()});
  double own = 0, EA = 0;
  for (const Chord& c : girder.chords) {
    own += c.bar.material.G * c.bar.section.It;
    EA += c.bar.material.E * c.bar.section.area / static_cast<double>(girder.chords.size());
  }
  t.GJ = closed_form::bredt_torsion_stiffness(area, faces, {detail::unmatched_chords(r, g), g.faces[0].s, EA}, own);
  return t;
}

}  // namespace baywork
