// SPDX-License-Identifier: MIT
// Initial sway of what a girder stands on, EN 1993-1-1:2005 and EN 1999-1-1:2007 5.3.2, as level forces in every
// combination.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/built_up.hpp>
#include <baywork/verify/stability_imperfections.hpp>

namespace baywork::verify {

namespace detail {

/// What weighs in these loads, pushing along the unit vector `d` instead, each where it acts. Couples have no part.
inline FrameLoads sideways(const Analysis& analysis, const FrameLoads& loads, const Vec3<>& d) {
  const auto down = [](const Vec3<>& f) { return magnitude(f.z) > 1e-12 * length(f) ? -f.z : 0.0; };  // no rounding
  FrameLoads out;
  for (const NodeLoad& l : loads.on_nodes)
    if (down(l.force) != 0.0) out.force(l.node, down(l.force) * d);
  for (MemberLoad l : loads.on_members) {
    if (l.kind != MemberLoad::Kind::line && l.kind != MemberLoad::Kind::force) continue;
    const MemberAxes<>& axes = analysis.axes(l.member);
    const double first = down(axes.to_global(l.first)), last = down(axes.to_global(l.last));
    if (first == 0.0 && last == 0.0) continue;
    l.first = axes.to_local(first * d);
    l.last = axes.to_local(last * d);
    out.on_members.push_back(l);
  }
  return out;
}

}  // namespace detail

/// phi of 5.3.2 (3) a: 1/200 alpha_h alpha_m (values from memory; EN 1999-1-1 5.3.2 (3) a is the same).
inline double angle_of(const InitialSway& s) {
  return en1993::initial_sway(s.height, static_cast<double>(s.columns));
}

/// Every combination as it is, and out of plumb by phi towards +y, -y, +x and -x, one at a time (5.3.2 (8)): phi times
/// every downward force of the combination pushes level where it acts, 5.3.2 (7). Upward forces lessen that. Nothing is
/// disregarded for great level forces, as 5.3.2 (4) would allow (safe side). The supports feel phi times what weighs:
/// the stands must carry it, and give it back at their feet (figure 5.4, from memory).
inline ImperfectCases with_sway(const Cases& cases, const std::vector<Combination>& combinations,
                                const InitialSway& sway) {
  const Analysis& analysis = cases.analysis();
  if (analysis.girder().supports.way == Supports::Way::hung)
    fail<BadDescription>("initial sway", "the girder hangs: its lines find their own plumb",
                         "girders that stand are accepted; notional_loads() for those that hang");
  const double phi = angle_of(sway);
  struct Direction {
    const char* plus;
    const char* minus;
    Vec3<> d;
  };
  const std::array<Direction, 2> directions{{{"+y", "-y", {0, 1, 0}}, {"+x", "-x", {1, 0, 0}}}};
  std::vector<Response> responses;
  std::vector<CaseKind> kinds = cases.kinds();
  for (std::size_t i = 0; i < cases.size(); ++i) responses.push_back(cases[i]);
  std::array<std::vector<std::size_t>, 2> unit;  // of each case; 0 where nothing weighs
  for (std::size_t k = 0; k < 2; ++k)
    for (std::size_t i = 0; i < cases.size(); ++i) {
      const FrameLoads loads = detail::sideways(analysis, cases[i].loads(), directions[k].d);
      const bool any = !loads.on_nodes.empty() || !loads.on_members.empty();
      unit[k].push_back(any ? responses.size() : 0);
      if (!any) continue;
      const std::string name = "weight of " + cases[i].name() + " pushing towards " + directions[k].plus;
      responses.push_back(analysis.solve(loads, name));
      kinds.push_back({name, Nature::permanent, ""});
    }
  ImperfectCases out{{analysis, std::move(responses), std::move(kinds)}, {}, {}};
  for (const Combination& given : combinations) {
    std::vector<double> factors = given.factors;
    factors.resize(out.cases.size(), 0.0);
    out.combinations.push_back({given.name, factors});
    for (std::size_t k = 0; k < 2; ++k)
      for (const double sign : {1.0, -1.0}) {
        std::vector<double> with = factors;
        bool any = false;
        for (std::size_t i = 0; i < given.factors.size(); ++i)
          if (unit[k][i] != 0 && given.factors[i] != 0.0) {
            with[unit[k][i]] = sign * phi * given.factors[i];
            any = true;
          }
        if (any)
          out.combinations.push_back({given.name + " + initial sway towards " +
                                          (sign > 0.0 ? directions[k].plus : directions[k].minus),
                                      std::move(with)});
      }
  }
  return out;
}
inline ImperfectCases with_sway(const Cases& cases, const CombinationSet& set, const InitialSway& sway) {
  return with_sway(cases, combinations(set, cases.kinds()), sway);
}

}  // namespace baywork::verify
