// SPDX-License-Identifier: MIT
// The same frame and loads, exactly, in another scalar.
#pragma once

#include <cstddef>

#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>

template <class T>
baywork::Vec3<T> converted(const baywork::Vec3<>& v) {
  return {T(v.x), T(v.y), T(v.z)};
}

template <class T>
baywork::BasicMemberEnd<T> converted(const baywork::MemberEnd& e) {
  return {T(e.axial), T(e.shear_y), T(e.shear_z), T(e.torsion), T(e.about_y), T(e.about_z), converted<T>(e.offset)};
}

template <class T>
baywork::BasicFrameSection<T> converted(const baywork::FrameSection& s) {
  return {T(s.E),
          T(s.G),
          T(s.A),
          T(s.Iy),
          T(s.Iz),
          T(s.J),
          T(s.shear_y),
          T(s.shear_z),
          T(s.mass_per_metre),
          T(s.thermal_expansion)};
}

template <class T>
baywork::BasicFrame<T> converted(const baywork::Frame& f) {
  baywork::BasicFrame<T> out;
  for (const baywork::Node& n : f.nodes) out.nodes.push_back({converted<T>(n.at), n.label, n.address});
  for (const baywork::Member& m : f.members)
    out.members.push_back({m.from, m.to, converted<T>(m.section), converted<T>(m.up), T(m.roll), m.kind,
                           converted<T>(m.start), converted<T>(m.end), m.label, m.address});
  for (const baywork::Support& s : f.supports) {
    out.supports.push_back({s.node, {}});
    for (std::size_t k = 0; k < 6; ++k) {
      using Kind = typename baywork::BasicRestraint<T>::Kind;
      const baywork::Restraint& r = s.motion[k];
      out.supports.back().motion[k] = {static_cast<Kind>(r.kind), T(r.stiffness), T(r.displacement)};
    }
  }
  return out;
}

template <class T>
baywork::BasicFrameLoads<T> converted(const baywork::FrameLoads& loads) {
  baywork::BasicFrameLoads<T> out;
  for (const baywork::NodeLoad& l : loads.on_nodes)
    out.on_nodes.push_back({l.node, converted<T>(l.force), converted<T>(l.couple)});
  for (const baywork::MemberLoad& l : loads.on_members) {
    using Kind = typename baywork::BasicMemberLoad<T>::Kind;
    out.on_members.push_back(
        {static_cast<Kind>(l.kind), l.member, T(l.a), T(l.b), converted<T>(l.first), converted<T>(l.last)});
  }
  for (const baywork::SupportMotion& l : loads.motions) out.motions.push_back({l.node, l.motion, T(l.displacement)});
  return out;
}
