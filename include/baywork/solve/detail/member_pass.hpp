// SPDX-License-Identifier: MIT
// Passes over all members of a frame: what they answer to motions of the nodes, how large their forces are.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/solve/detail/loaded_members.hpp>
#include <baywork/solve/detail/motion_lanes.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/frame_answer.hpp>

namespace baywork::detail {

/// Largest value of each kind: displacements, rotations, forces, moments.
using Sizes = std::array<double, 4>;

template <class A>
void see_motions(const std::vector<A>& u, Sizes& s) {
#ifdef BAYWORK_DISPATCHED_KERNELS
  if constexpr (std::same_as<A, Twofold<double>>) {
    if (has_twofold_lanes()) return twofold_lane::see_motions(reinterpret_cast<const double*>(u.data()), u.size() / 6, s.data());
  }
#endif
  for (std::size_t i = 0; i < u.size(); i += 6)
    for (std::size_t k = 0; k < 3; ++k) {
      see(value_of(u[i + k]), s[0]);
      see(value_of(u[i + 3 + k]), s[1]);
    }
}

/// u += d; both are seen.
template <class A>
void add_motions(const std::vector<A>& d, std::vector<A>& u, Sizes& of_d, Sizes& of_u) {
#ifdef BAYWORK_DISPATCHED_KERNELS
  if constexpr (std::same_as<A, Twofold<double>>) {
    if (has_twofold_lanes())
      return twofold_lane::add_motions(reinterpret_cast<const double*>(d.data()), u.size() / 6, reinterpret_cast<double*>(u.data()), of_d.data(), of_u.data());
  }
#endif
  for (std::size_t i = 0; i < u.size(); ++i) u[i] += d[i];
  see_motions(d, of_d);
  see_motions(u, of_u);
}

/// A member's answer from its strains v, its forces without what acts along it, f, and that, l.
template <class S, class A = accurate_t<S>>
BasicMemberAnswer<S> member_answer(const MemberModes<A>& v, const MemberForces<A>& f, const MemberLoading<A>& l) {
  const auto plain = [](const A& x) { return rounded<S>(x); };
  BasicMemberAnswer<S> out;
  for (std::size_t k = 0; k < 6; ++k) out.modes[k] = plain(v[k]);
  out.start = {plain(A(l.start.x - f.q[0])),
               plain(A(l.start.y + f.across[0])),
               plain(A(l.start.z - f.across[1])),
               plain(A(l.start_torque - f.q[1])),
               plain(f.q[4]),
               plain(f.q[2])};
  out.end = {plain(A(l.end.x + f.q[0])),
             plain(A(l.end.y - f.across[0])),
             plain(A(l.end.z + f.across[1])),
             plain(A(l.end_torque + f.q[1])),
             plain(f.q[5]),
             plain(f.q[3])};
  return out;
}
/// The same from node motions in the residual's precision, whether loads act along the member or not.
template <class S>
BasicMemberAnswer<S> member_answer(const PreparedFrame<S>& p, std::size_t i, const std::vector<accurate_t<S>>& u,
                                   const LoadedMembers<accurate_t<S>>& loaded) {
  using A = accurate_t<S>;
  const BasicMember<S>& m = p.frame.members[i];
  const MemberIn<A>& in = p.sort(i).accurate;
  const MemberModes<A> v = in.geometry.deformations(&u[6 * m.from], &u[6 * m.to]);
  const auto* const l = loaded.of(i);
  if (l == nullptr) return member_answer<S>(v, MemberForces<A>(in, v), MemberLoading<A>{});
  MemberModes<A> net = v;
  for (std::size_t k = 0; k < 6; ++k) net[k] -= l->loading.modes[k];
  return member_answer<S>(v, MemberForces<A>(in, net), l->loading);
}

template <class S>
void see_answer(const BasicMemberAnswer<S>& a, Sizes& s) {
  for (std::size_t k = 0; k < 6; ++k) {
    see(value_of(a.start[k]), s[k < 3 ? 2 : 3]);
    see(value_of(a.end[k]), s[k < 3 ? 2 : 3]);
  }
}

/// The members' forces alone, seen in `s`.
template <class S>
void see_member_forces(const PreparedFrame<S>& p, const std::vector<accurate_t<S>>& u, Sizes& s) {
  using A = accurate_t<S>;
#ifdef BAYWORK_DISPATCHED_KERNELS
  if constexpr (std::same_as<S, double>) {
    if (!p.groups.empty())
      return twofold_lane::see_forces(p.groups.lanes(), p.groups.groups().data(), p.groups.groups().size(),
                                      reinterpret_cast<const double*>(u.data()), &s[2]);
  }
#endif
  for (std::size_t i = 0; i < p.frame.members.size(); ++i) {
    const BasicMember<S>& m = p.frame.members[i];
    const MemberIn<A>& in = p.sort(i).accurate;
    MemberForces<A>(in, in.geometry.deformations(&u[6 * m.from], &u[6 * m.to])).seen_in(&s[2]);
  }
}

#ifdef BAYWORK_DISPATCHED_KERNELS
/// The answers of a group of which some members are loaded: the forces of those once more, less what their loads hold.
inline void answer_loaded_group(const MemberGroup& g, const KeptForces& kept,
                                const LoadedMembers<Twofold<double>>& loaded, std::vector<MemberAnswer>& answers,
                                Sizes& s) {
  for (std::size_t lane = 0; lane < twofold_lanes; ++lane) {
    const std::size_t i = g.member[lane];
    if (i == MemberGroup::none) continue;
    MemberAnswer& a = answers[i];
    if (const auto* l = loaded.of(i); l != nullptr) {
      const auto left = [&](std::size_t k, const Twofold<double>& by_loads) {
        return Twofold<double>::tidy(kept[k][0][lane], kept[k][1][lane]) - by_loads;
      };
      MemberForces<Twofold<double>> f;
      for (std::size_t k = 0; k < 6; ++k) f.q[k] = left(k, l->held.q[k]);
      for (std::size_t k = 0; k < 2; ++k) f.across[k] = left(6 + k, l->held.across[k]);
      MemberModes<Twofold<double>> v;
      for (std::size_t k = 0; k < 6; ++k) v[k] = a.modes[k];
      a = member_answer<double>(v, f, l->loading);
    }
    see_answer(a, s);
  }
}
#endif

/// Every member's answer to the motions u; forces on its ends are seen in `s`.
template <class S>
void answer_members(const PreparedFrame<S>& p, const std::vector<accurate_t<S>>& u,
                    const LoadedMembers<accurate_t<S>>& loaded, std::vector<BasicMemberAnswer<S>>& answers, Sizes& s) {
#ifdef BAYWORK_DISPATCHED_KERNELS
  if constexpr (std::same_as<S, double>) {
    static_assert(sizeof(MemberAnswer) == 18 * sizeof(double));
    const std::vector<MemberGroup>& groups = p.groups.groups();
    const auto answer = [&](const MemberGroup* first, std::size_t count, KeptForces* kept) {
      twofold_lane::answer(p.groups.lanes(), first, count, reinterpret_cast<const double*>(u.data()),
                           reinterpret_cast<double*>(answers.data()), kept, &s[2]);
    };
    const auto is_loaded = [&](const MemberGroup& g) {
      return std::any_of(g.member.begin(), g.member.end(),
                         [&](std::uint32_t i) { return i != MemberGroup::none && loaded.of(i) != nullptr; });
    };
    KeptForces kept;
    for (std::size_t i = 0, next = 0; i < groups.size(); i = next) {  // groups without loads in one go
      next = loaded.empty() ? groups.size() : i;
      while (next < groups.size() && !is_loaded(groups[next])) ++next;
      answer(&groups[i], next - i, nullptr);
      if (next == groups.size()) break;
      answer(&groups[next], 1, &kept);
      answer_loaded_group(groups[next++], kept, loaded, answers, s);
    }
    if (!p.groups.empty()) return;
  }
#endif
  for (std::size_t i = 0; i < answers.size(); ++i) {
    answers[i] = member_answer(p, i, u, loaded);
    see_answer(answers[i], s);
  }
}

}  // namespace baywork::detail
