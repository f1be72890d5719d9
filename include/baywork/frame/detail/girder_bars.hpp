// SPDX-License-Identifier: MIT
// The bars of a girder: each different one once, and the bare numbers that its members take from it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/girder/bar.hpp>

namespace baywork {

template <Scalar S>
BasicFrameSection<S> frame_section(const BasicBar<S>& bar) {
  BasicFrameSection<S> s;
  s.E = S(bar.material.E);
  s.G = S(bar.material.G);
  s.A = bar.section.area;
  s.Iy = bar.section.Iy;
  s.Iz = bar.section.Iz;
  s.J = bar.section.It;
  s.shear_y = bar.section.shear_y;
  s.shear_z = bar.section.shear_z;
  s.mass_per_metre = bar.mass_per_metre();
  s.thermal_expansion = S(bar.material.thermal_expansion);
  return s;
}

namespace detail {

/// What a member keeps of its bar: a long girder has no room for all of it in every member.
template <class S>
struct MemberBar {
  static constexpr std::size_t not_given = static_cast<std::size_t>(-1);

  BasicFrameSection<S> section{};
  std::size_t index = not_given;  ///< among the different bars
};

/// Whether two bars may stand for each other in every calculation.
template <class S>
bool alike(const BasicBar<S>& a, const BasicBar<S>& b) {
  const SectionData<S>&p = a.section, &q = b.section;
  const material::Material &m = a.material, &n = b.material;
  const material::StrengthStep &s = a.strength, &t = b.strength;
  return p.designation == q.designation && value_of(p.area) == value_of(q.area) && value_of(p.Iy) == value_of(q.Iy) &&
         value_of(p.Iz) == value_of(q.Iz) && m.name == n.name && m.E == n.E && m.G == n.G && m.density == n.density &&
         m.thermal_expansion == n.thermal_expansion && m.buckling_class == n.buckling_class && m.product == n.product &&
         m.welding == n.welding && s.yield == t.yield && s.ultimate == t.ultimate && s.haz_yield == t.haz_yield &&
         s.haz_ultimate == t.haz_ultimate && a.along.lines == b.along.lines && a.along.width == b.along.width &&
         std::equal(a.across.begin(), a.across.end(), b.across.begin(), b.across.end(),
                    [](const WeldAcross& u, const WeldAcross& v) { return u.at == v.at && u.width == v.width; });
}

template <class S>
MemberBar<S> member_bar(const BasicBar<S>& bar, std::vector<BasicBar<S>>& bars) {
  if (!bar.given) return {};
  std::size_t index = 0;
  while (index < bars.size() && !alike(bars[index], bar)) ++index;
  if (index == bars.size()) bars.push_back(bar);
  return {frame_section(bar), index};
}

}  // namespace detail
}  // namespace baywork
