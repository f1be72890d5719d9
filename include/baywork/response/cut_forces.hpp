// SPDX-License-Identifier: MIT
// Forces on a cut through a member, and the loads that change them along it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include <baywork/core/scalar.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/solve/frame_answer.hpp>

namespace baywork {

/// What the part beyond a cut does to the part before it, in the member's local axes: N (tension positive), Vy, Vz [N],
/// T, My, Mz [Nm]. With q the load per length: dN/dx = −qx, dVy/dx = −qy, dVz/dx = −qz, dMz/dx = −Vy, dMy/dx = +Vz.
template <Scalar S = double>
struct BasicCutForces {
  S N = S(0), Vy = S(0), Vz = S(0), T = S(0), My = S(0), Mz = S(0);

  const S& operator[](std::size_t i) const { return i == 0 ? N : i == 1 ? Vy : i == 2 ? Vz : i == 3 ? T : i == 4 ? My : Mz; }
  Vec3<S> force() const { return {N, Vy, Vz}; }
  Vec3<S> moment() const { return {T, My, Mz}; }
};
using CutForces = BasicCutForces<double>;
inline constexpr std::array<const char*, 6> cut_force_names{"N", "Vy", "Vz", "T", "My", "Mz"};

/// Which side of a cut, where a point force or couple acts just there.
enum class CutSide : std::uint8_t { before, after };

/// The loads on one member, a run of a response's sorted list.
template <Scalar S = double>
struct MemberLoads {
  const BasicMemberLoad<S>* first = nullptr;
  std::size_t count = 0;
  const BasicMemberLoad<S>* begin() const { return first; }
  const BasicMemberLoad<S>* end() const { return first + count; }
};

namespace detail {

/// Forces on the cut at x: minus what acts on the part before it (its end forces and the loads up to x).
template <class S>
BasicCutForces<S> cut_forces(const std::array<S, 6>& start, const MemberLoads<S>& loads, const S& x, CutSide side) {
  using Kind = typename BasicMemberLoad<S>::Kind;
  Vec3<S> f{start[0], start[1], start[2]}, m{start[3], start[4], start[5]};
  m.y += S(x * start[2]);  // moment about the cut: (−x, 0, 0) × f = (0, x fz, −x fy)
  m.z -= S(x * start[1]);
  for (const BasicMemberLoad<S>& l : loads) {
    const double reach = value_of(l.a) - value_of(x);
    if (l.kind == Kind::temperature || reach > 0.0) continue;
    if (l.kind == Kind::line) {
      const S to = smaller(x, l.b);
      const S length = S(to - l.a);
      if (!(value_of(length) > 0.0)) continue;
      const Vec3<S> at_end = l.first + S(length / (l.b - l.a)) * (l.last - l.first);
      const Vec3<S> total = S(length / S(2)) * (l.first + at_end);
      // about the cut: two triangles, from a and from the load's end
      const S arm_first = S(x - l.a - length / S(3)), arm_last = S(x - l.a - S(2) * length / S(3));
      const Vec3<S> first = S(length / S(2)) * l.first, last = S(length / S(2)) * at_end;
      f += total;
      m.y += S(arm_first * first.z + arm_last * last.z);
      m.z -= S(arm_first * first.y + arm_last * last.y);
    } else if (reach < 0.0 || side == CutSide::after) {
      if (l.kind == Kind::force) {
        f += l.first;
        m.y += S((x - l.a) * l.first.z);
        m.z -= S((x - l.a) * l.first.y);
      } else {
        m += l.first;
      }
    }
  }
  return {S(-f.x), S(-f.y), S(-f.z), S(-m.x), S(-m.y), S(-m.z)};
}

/// A stretch of a member between two places where its loads change: there all forces are polynomials.
template <class S>
struct Stretch {
  S from = S(0), to = S(0);
  BasicCutForces<S> start{};       ///< just after `from`
  Vec3<S> load{}, load_slope{};    ///< q at `from`, and its change per metre

  S length() const { return S(to - from); }
  /// Coefficients in t = x − from, ascending, of component c (order of cut_force_names).
  std::array<S, 4> polynomial(std::size_t c) const {
    const S half = S(S(1) / S(2)), sixth = S(S(1) / S(6));
    switch (c) {
      case 0: return {start.N, S(-load.x), S(-(half * load_slope.x)), S(0)};
      case 1: return {start.Vy, S(-load.y), S(-(half * load_slope.y)), S(0)};
      case 2: return {start.Vz, S(-load.z), S(-(half * load_slope.z)), S(0)};
      case 3: return {start.T, S(0), S(0), S(0)};
      case 4: return {start.My, start.Vz, S(-(half * load.z)), S(-(sixth * load_slope.z))};
      default: return {start.Mz, S(-start.Vy), S(half * load.y), S(sixth * load_slope.y)};
    }
  }
};

/// The first place beyond `from` where loads begin, end or act; the member's length where there is none.
template <class S>
S next_place(const MemberLoads<S>& loads, const S& from, const S& length) {
  const double tiny = 1e-12 * value_of(length);
  S to = length;
  for (const BasicMemberLoad<S>& l : loads) {
    if (l.kind == BasicMemberLoad<S>::Kind::temperature) continue;
    for (const S* place : {&l.a, &l.b})
      if (value_of(*place) > value_of(from) + tiny && value_of(*place) < value_of(to)) to = *place;
  }
  return to;
}

/// Between two places with none between them.
template <class S>
Stretch<S> stretch_between(const std::array<S, 6>& start, const MemberLoads<S>& loads, const S& from, const S& to) {
  using Kind = typename BasicMemberLoad<S>::Kind;
  Stretch<S> s;
  s.from = from;
  s.to = to;
  s.start = cut_forces(start, loads, from, CutSide::after);
  const double middle = 0.5 * (value_of(from) + value_of(to));
  for (const BasicMemberLoad<S>& l : loads) {
    if (l.kind != Kind::line || middle < value_of(l.a) || middle > value_of(l.b)) continue;
    const Vec3<S> slope = S(S(1) / (l.b - l.a)) * (l.last - l.first);
    s.load += l.first + S(from - l.a) * slope;
    s.load_slope += slope;
  }
  return s;
}

/// Calls visit(stretch) for every stretch of a member from its start to its end; allocates nothing.
template <class S, class Visit>
void for_each_stretch(const std::array<S, 6>& start, const MemberLoads<S>& loads, const S& length, Visit visit) {
  const double tiny = 1e-12 * value_of(length);
  S from = S(0);
  while (value_of(from) < value_of(length) - tiny) {
    const S to = next_place(loads, from, length);
    visit(stretch_between(start, loads, from, to));
    from = to;
  }
}

}  // namespace detail
}  // namespace baywork
