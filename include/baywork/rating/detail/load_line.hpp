// SPDX-License-Identifier: MIT
// What a search asks of a solved load: forces at the ends of all members, how far they reach along them, cuts.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/stability_forces.hpp>
#include <baywork/verify/stability_sway.hpp>

namespace baywork::rating::detail {

inline verify::SectionForces sum(const verify::SectionForces& a, const verify::SectionForces& b, double f) {
  return {a.N + f * b.N, a.Vy + f * b.Vy, a.Vz + f * b.Vz, a.T + f * b.T, a.My + f * b.My, a.Mz + f * b.Mz};
}

/// Forces on both ends of a member, and how far the loads along it may take its forces beyond them.
struct MemberReach {
  verify::SectionForces start{}, end{}, along{};

  void add(double f, const MemberReach& r) {
    start = sum(start, r.start, f);
    end = sum(end, r.end, f);
    along = sum(along, r.along, magnitude(f));
  }
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

/// Forces on the cuts at both ends of a member, and N in its middle.
struct MemberCuts {
  std::array<verify::SectionForces, 2> ends{};
  double N_in_middle = 0;
};
inline std::vector<MemberCuts> cuts_of(const Response& r) {
  std::vector<MemberCuts> out(r.model().frame.members.size());
  for (std::size_t m = 0; m < out.size(); ++m)
    out[m] = {{verify::detail::cut_at_end(r, m, true), verify::detail::cut_at_end(r, m, false)},
              verify::detail::axial_force(r, m)};
  return out;
}

/// A solved load, with what is asked of it again and again.
struct Unit {
  const Response& response;
  std::vector<MemberReach> reach;
  std::vector<MemberCuts> cuts;
  explicit Unit(const Response& r) : response(r), reach(reaches(r)), cuts(cuts_of(r)) {}
};

/// One combination without the load asked for, upright or with one way of initial sway. `factor` is that load's own.
struct Line {
  std::size_t combination = 0;
  double factor = 0;
  std::optional<Response> placed{};   ///< not there where nothing is placed
  std::optional<Unit> there{};        ///< of what is placed
  std::optional<std::size_t> sway{};  ///< which of verify::detail::sway_ways
  bool placed_sways = false;

  std::string words() const { return sway ? verify::detail::words_of_sway(*sway) : ""; }
};

/// The load asked for, and with what of it pushes level as the stands lean.
class Load {
 public:
  /// `phi` is 0 where no sway is asked for.
  Load(const Response& r, double phi) : upright_(r) {
    if (!(phi > 0.0)) return;
    for (std::size_t way = 0; way < leaning_.size(); ++way)
      if (std::optional<Response> all = leaning(r, way, phi)) leaning_[way].emplace(std::move(*all));
  }
  bool sways() const noexcept { return leaning_[0] || leaning_[2]; }
  const Unit& on(const Line& line) const {
    return line.sway && leaning_[*line.sway] ? leaning_[*line.sway]->unit : upright_;
  }

  /// Loads with phi of what weighs among them pushing level; none where nothing weighs.
  static std::optional<Response> leaning(const Response& r, std::size_t way, double phi) {
    const auto pushed = verify::detail::solve_sideways(r, verify::detail::sway_ways[way].d, r.name());
    if (!pushed) return {};
    return combine<double>({&r, &*pushed}, {1.0, phi}, r.name());
  }

 private:
  struct Leaning {
    Response response;
    Unit unit;
    explicit Leaning(Response r) : response(std::move(r)), unit(response) {}
    Leaning(const Leaning&) = delete;
    Leaning& operator=(const Leaning&) = delete;
  };
  Unit upright_;
  std::array<std::optional<Leaning>, verify::detail::sway_ways.size()> leaning_;
};

}  // namespace baywork::rating::detail
