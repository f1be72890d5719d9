// SPDX-License-Identifier: MIT
// All sections at which a member is checked under one load, and what holds between two loads.
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <utility>
#include <vector>

#include <baywork/verify/member_design.hpp>

namespace baywork::rating::detail {

using verify::Check;
using verify::SectionForces;
using verify::detail::ForceRange;
using verify::detail::MemberDesign;
using verify::detail::Place;

/// The sections of a member, and the greatest forces along it.
struct Trace {
  std::vector<std::pair<SectionForces, Place>> sections;
  verify::detail::GreatestForces greatest{};
};
inline void trace(const MemberDesign& members, std::size_t m, const std::array<double, 6>& start,
                  const MemberLoads<double>& loads, std::size_t combination, Trace& out) {
  out.sections.clear();
  members.visit(m, [&](const auto& design) {
    out.greatest = members.walk(design, m, start, loads, combination,
                                [&](const SectionForces& f, const Place& at) { out.sections.emplace_back(f, at); });
  });
}

/// Greatest utilisation of a member at the sections of a trace.
inline double utilisation(const MemberDesign& members, std::size_t m, const Trace& t) {
  double most = 0;
  members.visit(m, [&]<class Design>(const Design& design) {
    for (const auto& [f, at] : t.sections)
      for (const Check c : Design::section_checks) most = larger(most, design.check(c, f, at).utilisation);
    for (const Check c : Design::whole_checks) most = larger(most, design.check(c, t.greatest.whole, {}).utilisation);
  });
  return most;
}

/// At least every utilisation of a member for all forces within a range, wherever along it.
inline double bound_anywhere(const MemberDesign& members, std::size_t m, const ForceRange& range) {
  double most = 0;
  members.visit(m, [&]<class Design>(const Design& design) {
    for (const Place& at : members.weakest(m))
      for (const Check c : Design::section_checks)
        most = larger(most, MemberDesign::section_bound(design, c, range, at));
    for (const Check c : Design::whole_checks) most = larger(most, MemberDesign::whole_bound(design, c, range));
  });
  return most;
}

/// The same for all forces within the hull of some traces, section by section; where it is above 1 it may be less.
inline double bound_between(const MemberDesign& members, std::size_t m, std::span<const Trace* const> traces) {
  const Trace& a = *traces[0];
  for (const Trace* t : traces)
    if (t->sections.size() != a.sections.size()) return std::numeric_limits<double>::infinity();
  double most = 0;
  members.visit(m, [&]<class Design>(const Design& design) {
    const auto take = [&](const ForceRange& range, const Place& at) {
      for (const Check c : Design::section_checks)
        most = larger(most, MemberDesign::section_bound(design, c, range, at));
    };
    for (std::size_t i = 0; i < a.sections.size() && most <= 1.0; ++i) {
      ForceRange range(a.sections[i].first);
      for (const Trace* t : traces) range.take(t->sections[i].first);
      take(range, a.sections[i].second);
      for (const Trace* t : traces)
        if (t->sections[i].second.softening != a.sections[i].second.softening) take(range, t->sections[i].second);
    }
    ForceRange whole(a.greatest.bound);
    for (const Trace* t : traces) whole.take(t->greatest.bound);
    for (const Check c : Design::whole_checks) most = larger(most, MemberDesign::whole_bound(design, c, whole));
  });
  return most;
}

}  // namespace baywork::rating::detail
