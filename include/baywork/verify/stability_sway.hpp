// SPDX-License-Identifier: MIT
// Initial sway of what a girder stands on, EN 1993-1-1:2005 and EN 1999-1-1:2007 5.3.2, as level forces in every
// combination.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
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

/// The four ways to lean, 5.3.2 (8).
struct SwayWay {
  const char* words;
  Vec3<> d;
};
inline constexpr std::array<SwayWay, 4> sway_ways{
    {{"+y", {0, 1, 0}}, {"-y", {0, -1, 0}}, {"+x", {1, 0, 0}}, {"-x", {-1, 0, 0}}}};
inline std::string words_of_sway(std::size_t way) {
  return std::string(" + initial sway towards ") + sway_ways[way].words;
}

/// What weighs in a response, pushing level instead, solved; none where nothing weighs.
inline std::optional<Response> solve_sideways(const Response& r, const Vec3<>& d, const std::string& name) {
  const FrameLoads loads = sideways(r.analysis(), r.loads(), d);
  if (loads.on_nodes.empty() && loads.on_members.empty()) return {};
  return r.analysis().solve(loads, name);
}

inline void require_stands(const Girder& g) {
  if (g.supports.way == Supports::Way::hung)
    fail<BadDescription>("initial sway", "the girder hangs: its lines find their own plumb",
                         "girders that stand are accepted; notional_loads() for those that hang");
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
  detail::require_stands(cases.analysis().girder());
  const double phi = angle_of(sway);
  std::vector<Response> responses;
  std::vector<CaseKind> kinds = cases.kinds();
  for (std::size_t i = 0; i < cases.size(); ++i) responses.push_back(cases[i]);
  std::array<std::vector<std::size_t>, 2> unit;  // of each case along y and x; 0 where nothing weighs
  for (std::size_t k = 0; k < 2; ++k)
    for (std::size_t i = 0; i < cases.size(); ++i) {
      const detail::SwayWay& way = detail::sway_ways[2 * k];
      const std::string name = "weight of " + cases[i].name() + " pushing towards " + way.words;
      std::optional<Response> pushed = detail::solve_sideways(cases[i], way.d, name);
      unit[k].push_back(pushed ? responses.size() : 0);
      if (!pushed) continue;
      responses.push_back(std::move(*pushed));
      kinds.push_back({name, Nature::permanent, ""});
    }
  ImperfectCases out{{cases.analysis(), std::move(responses), std::move(kinds)}, {}, {}};
  for (const Combination& given : combinations) {
    std::vector<double> factors = given.factors;
    factors.resize(out.cases.size(), 0.0);
    out.combinations.push_back({given.name, factors});
    for (std::size_t way = 0; way < detail::sway_ways.size(); ++way) {
      std::vector<double> with = factors;
      bool any = false;
      for (std::size_t i = 0; i < given.factors.size(); ++i) {
        const std::size_t pushed = unit[way / 2][i];
        if (pushed == 0 || given.factors[i] == 0.0) continue;
        with[pushed] = (way % 2 == 0 ? phi : -phi) * given.factors[i];
        any = true;
      }
      if (any) out.combinations.push_back({given.name + detail::words_of_sway(way), std::move(with)});
    }
  }
  return out;
}
inline ImperfectCases with_sway(const Cases& cases, const CombinationSet& set, const InitialSway& sway) {
  return with_sway(cases, combinations(set, cases.kinds()), sway);
}

}  // namespace baywork::verify
