// SPDX-License-Identifier: MIT
// Forces of one combination that grow with a load factor: what is placed, and the load times the factor.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/found.hpp>

namespace baywork::rating::detail {

/// Forces on both ends of a member, and how far the loads along it may take its forces beyond them.
struct MemberReach {
  verify::SectionForces start{}, end{}, along{};

  /// Takes all forces anywhere along the member into a range.
  void widen(verify::detail::ForceRange& range) const {
    for (const verify::SectionForces& f : {start, end}) {
      verify::SectionForces wide{f.N + along.N,
                                 magnitude(f.Vy) + along.Vy,
                                 magnitude(f.Vz) + along.Vz,
                                 magnitude(f.T) + along.T,
                                 magnitude(f.My) + along.My,
                                 magnitude(f.Mz) + along.Mz};
      range.take(wide);
      wide.N = f.N - along.N;
      range.take(wide);
    }
  }
};

/// Between its ends a member's forces stay within those of its ends plus: the sum of the loads' sizes for N, V and T;
/// for moments a quarter of that times the length (the simple beam under one force at mid-span) plus all couples.
inline std::vector<MemberReach> reaches(const Response& r) {
  std::vector<MemberReach> out(r.model().frame.members.size());
  for (std::size_t m = 0; m < out.size(); ++m) {
    const MemberAnswer& a = r.answer().members[m];
    MemberReach& o = out[m];
    // on the positive cut: minus what acts on the start, plus what acts on the end
    o.start = {-a.start[0], -a.start[1], -a.start[2], -a.start[3], -a.start[4], -a.start[5]};
    o.end = {a.end[0], a.end[1], a.end[2], a.end[3], a.end[4], a.end[5]};
    const double length = r.analysis().axes(m).length;
    for (const MemberLoad& l : r.loads_on(m)) {
      if (l.kind == MemberLoad::Kind::temperature) continue;
      const bool line = l.kind == MemberLoad::Kind::line;
      const double weight = line ? 0.5 * (l.b - l.a) : 1.0;
      const auto size = [&](double first, double last) {
        return weight * (magnitude(first) + (line ? magnitude(last) : 0.0));
      };
      const double x = size(l.first.x, l.last.x), y = size(l.first.y, l.last.y), z = size(l.first.z, l.last.z);
      if (l.kind == MemberLoad::Kind::couple) {
        o.along.T += x;
        o.along.My += y;
        o.along.Mz += z;
      } else {
        o.along.N += x;
        o.along.Vy += y;
        o.along.Vz += z;
        o.along.Mz += 0.25 * y * length;
        o.along.My += 0.25 * z * length;
      }
    }
  }
  return out;
}

inline verify::SectionForces sum(const verify::SectionForces& a, const verify::SectionForces& b, double f) {
  return {a.N + f * b.N, a.Vy + f * b.Vy, a.Vz + f * b.Vz, a.T + f * b.T, a.My + f * b.My, a.Mz + f * b.Mz};
}

/// Forces on the cuts at both ends of every member.
using EndsOfMembers = std::vector<std::array<verify::SectionForces, 2>>;
inline EndsOfMembers ends_of(const Response& r) {
  EndsOfMembers out(r.model().frame.members.size());
  for (std::size_t m = 0; m < out.size(); ++m)
    out[m] = {verify::detail::cut_at_end(r, m, true), verify::detail::cut_at_end(r, m, false)};
  return out;
}

/// One combination without the load asked for. `factor` is that load's own in it.
struct Line {
  std::size_t combination = 0;
  double factor = 0;
  std::optional<Response> placed{};  ///< not there where nothing is placed
  std::vector<MemberReach> reach{};
  EndsOfMembers ends{};
};

/// The load asked for, of unit size.
struct Unit {
  const Response& response;
  std::vector<MemberReach> reach;
  EndsOfMembers ends;
  explicit Unit(const Response& r) : response(r), reach(reaches(r)), ends(ends_of(r)) {}
};

/// End forces and loads of member m at the load factor `at`; `loads` is scratch that the answer points into.
struct MemberState {
  std::array<double, 6> start{};
  MemberLoads<double> loads{};
};
inline MemberState state(const Line& line, const Unit& unit, std::size_t m, double at, std::vector<MemberLoad>& loads) {
  MemberState s;
  loads.clear();
  const double f = line.factor * at;
  s.start = unit.response.answer().members[m].start;
  for (double& v : s.start) v *= f;
  if (line.placed) {
    for (std::size_t k = 0; k < 6; ++k) s.start[k] += line.placed->answer().members[m].start[k];
    for (const MemberLoad& l : line.placed->loads_on(m)) loads.push_back(l);
  }
  for (MemberLoad l : unit.response.loads_on(m)) {
    l.first = f * l.first;
    l.last = f * l.last;
    loads.push_back(l);
  }
  s.loads = {loads.data(), loads.size()};
  return s;
}

/// All that member m's forces can be between two load factors, anywhere along it.
inline verify::detail::ForceRange range_between(const Line& line, const Unit& unit, std::size_t m, double from,
                                                double to) {
  static constexpr MemberReach nothing{};
  const MemberReach& placed = line.placed ? line.reach[m] : nothing;
  const MemberReach& load = unit.reach[m];
  const auto reach_at = [&](double at) {
    const double f = line.factor * at;
    return MemberReach{sum(placed.start, load.start, f), sum(placed.end, load.end, f),
                       sum(placed.along, load.along, magnitude(f))};
  };
  const MemberReach low = reach_at(from), high = reach_at(to);
  verify::detail::ForceRange range(low.start);
  low.widen(range);
  high.widen(range);
  return range;
}

}  // namespace baywork::rating::detail
