// SPDX-License-Identifier: MIT
// A frame and its loads in another number type, every number carried over exactly.
#pragma once

#include <array>
#include <cstddef>
#include <utility>

#include <baywork/frame.hpp>

namespace exact {

template <class T, class S>
baywork::Vec3<T> in(const baywork::Vec3<S>& v) {
  return {T(v.x), T(v.y), T(v.z)};
}

template <class T, class S>
baywork::BasicMemberEnd<T> in(const baywork::BasicMemberEnd<S>& e) {
  return {T(e.axial), T(e.shear_y), T(e.shear_z), T(e.torsion), T(e.about_y), T(e.about_z), in<T>(e.offset)};
}

template <class T, class S>
baywork::BasicFrameSection<T> in(const baywork::BasicFrameSection<S>& s) {
  return {T(s.E), T(s.G), T(s.A), T(s.Iy), T(s.Iz), T(s.J), T(s.shear_y), T(s.shear_z), T(s.mass_per_metre), T(s.thermal_expansion)};
}

template <class T, class S>
baywork::BasicFrame<T> in(const baywork::BasicFrame<S>& f) {
  baywork::BasicFrame<T> out;
  for (const auto& n : f.nodes) out.add_node(in<T>(n.at), n.label);
  for (const auto& m : f.members)
    out.add_member({m.from, m.to, in<T>(m.section), in<T>(m.up), T(m.roll), m.kind, in<T>(m.start), in<T>(m.end), m.label, {}});
  for (const auto& s : f.supports) {
    baywork::BasicSupport<T> t;
    t.node = s.node;
    for (std::size_t k = 0; k < 6; ++k) {
      t.motion[k].kind = static_cast<typename baywork::BasicRestraint<T>::Kind>(s.motion[k].kind);
      t.motion[k].stiffness = T(s.motion[k].stiffness);
      t.motion[k].displacement = T(s.motion[k].displacement);
    }
    out.supports.push_back(t);
  }
  return out;
}

template <class T, class S>
baywork::BasicFrameLoads<T> in(const baywork::BasicFrameLoads<S>& l) {
  baywork::BasicFrameLoads<T> out;
  for (const auto& p : l.on_nodes) out.on_nodes.push_back({p.node, in<T>(p.force), in<T>(p.couple)});
  for (const auto& p : l.on_members)
    out.on_members.push_back({static_cast<typename baywork::BasicMemberLoad<T>::Kind>(p.kind), p.member, T(p.a), T(p.b), in<T>(p.first), in<T>(p.last)});
  for (const auto& p : l.motions) out.motions.push_back({p.node, p.motion, T(p.displacement)});
  return out;
}

}  // namespace exact
