// SPDX-License-Identifier: MIT
// Frames, bars and loads held against each other bit by bit.
#pragma once

#include <array>
#include <cstddef>
#include <string>

#include <baywork/frame.hpp>
#include <baywork/load.hpp>

namespace same_bits {

using namespace baywork;

inline bool same(double a, double b) { return detail::bits_of(a) == detail::bits_of(b); }
inline bool same(const Vec3<>& a, const Vec3<>& b) { return same(a.x, b.x) && same(a.y, b.y) && same(a.z, b.z); }
inline bool same(const FrameSection& a, const FrameSection& b) {
  return same(a.E, b.E) && same(a.G, b.G) && same(a.A, b.A) && same(a.Iy, b.Iy) && same(a.Iz, b.Iz) && same(a.J, b.J) &&
         same(a.shear_y, b.shear_y) && same(a.shear_z, b.shear_z) && same(a.mass_per_metre, b.mass_per_metre) &&
         same(a.thermal_expansion, b.thermal_expansion);
}
inline bool same(const MemberEnd& a, const MemberEnd& b) {
  return same(a.axial, b.axial) && same(a.shear_y, b.shear_y) && same(a.shear_z, b.shear_z) &&
         same(a.torsion, b.torsion) && same(a.about_y, b.about_y) && same(a.about_z, b.about_z) &&
         same(a.offset, b.offset);
}
inline bool same(const material::Material& a, const material::Material& b) {
  if (a.name != b.name || a.source != b.source || a.family != b.family || a.buckling_class != b.buckling_class ||
      a.product != b.product || a.alloy_group != b.alloy_group || a.welding != b.welding || !same(a.E, b.E) ||
      !same(a.G, b.G) || !same(a.density, b.density) || !same(a.thermal_expansion, b.thermal_expansion) ||
      a.steps.size() != b.steps.size())
    return false;
  for (std::size_t i = 0; i < a.steps.size(); ++i)
    if (!same(a.steps[i].max_thickness, b.steps[i].max_thickness) || !same(a.steps[i].yield, b.steps[i].yield) ||
        !same(a.steps[i].ultimate, b.steps[i].ultimate) || !same(a.steps[i].haz_yield, b.steps[i].haz_yield) ||
        !same(a.steps[i].haz_ultimate, b.steps[i].haz_ultimate))
      return false;
  return true;
}
inline bool same(const SectionData<>& a, const SectionData<>& b) {
  bool all = a.designation == b.designation && a.kind == b.kind && a.n_plates == b.n_plates;
  const auto numbers = [](const SectionData<>& s) {
    return std::array{s.area,    s.Iy,      s.Iz,   s.Wel_y,        s.Wel_z,      s.Wpl_y,     s.Wpl_z,
                      s.shear_y, s.shear_z, s.It,   s.Wt,           s.iy,         s.iz,        s.perimeter,
                      s.height,  s.width,   s.wall, s.inner_radius, s.web_area_y, s.web_area_z};
  };
  const auto p = numbers(a), q = numbers(b);
  for (std::size_t i = 0; i < p.size(); ++i) all = all && same(p[i], q[i]);
  for (std::size_t i = 0; all && i < a.n_plates; ++i)
    all = same(a.plates[i].c, b.plates[i].c) && same(a.plates[i].t, b.plates[i].t) &&
          a.plates[i].outstand == b.plates[i].outstand && a.plates[i].bends_about_y == b.plates[i].bends_about_y;
  return all;
}
inline bool same(const Bar& a, const Bar& b) {
  return a.given == b.given && same(a.section, b.section) && same(a.material, b.material) &&
         same(a.strength.yield, b.strength.yield) && same(a.strength.ultimate, b.strength.ultimate) &&
         same(a.strength.haz_yield, b.strength.haz_yield) && same(a.strength.haz_ultimate, b.strength.haz_ultimate) &&
         same(a.strength.max_thickness, b.strength.max_thickness) && a.along.lines == b.along.lines &&
         same(a.along.width, b.along.width);
}

/// What differs first between two models of girders; empty where nothing does.
inline std::string difference(const GirderModel& a, const GirderModel& b) {
  const Frame &f = a.frame, &g = b.frame;
  const auto at = [](const char* what, std::size_t i) { return what + (" " + std::to_string(i)); };
  if (f.nodes.size() != g.nodes.size() || f.members.size() != g.members.size() ||
      f.supports.size() != g.supports.size())
    return "sizes";
  for (std::size_t i = 0; i < f.nodes.size(); ++i)
    if (!same(f.nodes[i].at, g.nodes[i].at) || !(f.nodes[i].address == g.nodes[i].address)) return at("node", i);
  for (std::size_t i = 0; i < f.members.size(); ++i) {
    const Member &m = f.members[i], &n = g.members[i];
    if (m.from != n.from || m.to != n.to || m.kind != n.kind || !(m.address == n.address) || !same(m.up, n.up) ||
        !same(m.roll, n.roll) || !same(m.section, n.section) || !same(m.start, n.start) || !same(m.end, n.end))
      return at("member", i);
    if (a.bar_index[i] != b.bar_index[i] || !same(a.bar(i), b.bar(i))) return at("bar of member", i);
  }
  for (std::size_t i = 0; i < f.supports.size(); ++i) {
    if (f.supports[i].node != g.supports[i].node) return at("support", i);
    for (std::size_t k = 0; k < 6; ++k) {
      const Restraint &r = f.supports[i].motion[k], &s = g.supports[i].motion[k];
      if (r.kind != s.kind || !same(r.stiffness, s.stiffness) || !same(r.displacement, s.displacement))
        return at("support", i);
    }
  }
  if (f.names.chords != g.names.chords || f.names.faces != g.names.faces) return "names";
  if (a.girder.splices != b.girder.splices || a.girder.supports.way != b.girder.supports.way)
    return "splices or supports";
  for (std::size_t i = 0; i < a.girder.stations.size(); ++i)
    if (!same(a.girder.stations[i], b.girder.stations[i])) return at("station", i);
  for (std::size_t i = 0; i < a.girder.faces.size(); ++i) {
    const Face &p = a.girder.faces[i].panels, &q = b.girder.faces[i].panels;
    if (p.span() != q.span() || p.offset() != q.offset() || p.given() != q.given()) return at("face", i);
    for (std::size_t k = 0; k < p.given(); ++k)
      if (p.panel(k).facts().layout != q.panel(k).facts().layout ||
          !same(p.panel(k).facts().brace, q.panel(k).facts().brace))
        return at("panel", k);
  }
  return "";
}

/// The same for loads on a frame.
inline std::string difference(const FrameLoads& a, const FrameLoads& b) {
  if (a.on_nodes.size() != b.on_nodes.size() || a.on_members.size() != b.on_members.size() ||
      a.motions.size() != b.motions.size())
    return "sizes";
  for (std::size_t i = 0; i < a.on_nodes.size(); ++i)
    if (a.on_nodes[i].node != b.on_nodes[i].node || !same(a.on_nodes[i].force, b.on_nodes[i].force) ||
        !same(a.on_nodes[i].couple, b.on_nodes[i].couple))
      return "load on a node";
  for (std::size_t i = 0; i < a.on_members.size(); ++i) {
    const auto &p = a.on_members[i], &q = b.on_members[i];
    if (p.member != q.member || p.kind != q.kind || !same(p.a, q.a) || !same(p.b, q.b) || !same(p.first, q.first) ||
        !same(p.last, q.last))
      return "load on a member";
  }
  for (std::size_t i = 0; i < a.motions.size(); ++i)
    if (a.motions[i].node != b.motions[i].node || a.motions[i].motion != b.motions[i].motion ||
        !same(a.motions[i].displacement, b.motions[i].displacement))
      return "motion of the ground";
  return "";
}

}  // namespace same_bits
