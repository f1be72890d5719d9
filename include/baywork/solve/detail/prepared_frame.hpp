// SPDX-License-Identifier: MIT
// A frame with everything that does not depend on the load worked out: members twice, unknowns.
#pragma once

#include <algorithm>
#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/validate.hpp>
#include <baywork/solve/detail/freedoms.hpp>
#include <baywork/solve/detail/loaded_members.hpp>
#include <baywork/solve/detail/member_groups.hpp>
#include <baywork/solve/detail/member_matrix.hpp>
#include <baywork/solve/detail/member_sorts.hpp>
#include <baywork/solve/detail/sparse_factor.hpp>
#include <baywork/solve/detail/twofold.hpp>
#include <baywork/solve/member_loading.hpp>
#include <baywork/solve/member_stiffness.hpp>

namespace baywork::detail {

template <class S>
struct PreparedFrame {
  using A = accurate_t<S>;

  BasicFrame<S> frame;
  std::vector<MemberSort<S>> sorts;
  std::vector<std::uint32_t> sort_of;     ///< of each member
  std::vector<std::uint32_t> at_support;  ///< members with a held motion at one of their nodes
  /// For double, all members and those at supports in groups, where the machine can pass through them so.
  typename GroupsOf<S>::type groups, groups_at_support;
  Freedoms freedoms;
  double shortest = 0, longest = 0;  ///< member lengths [m]

  explicit PreparedFrame(BasicFrame<S> f) : frame(std::move(f)) {
    sort_of.reserve(frame.members.size());
    shortest = rigid_stiffness;
    MemberSorter<S> sorter;
    std::vector<char> resists(frame.nodes.size(), 0);
    validate(frame, [&](std::size_t i) {
      sort_of.push_back(sorter(frame, frame.members[i], sorts));
      see_turning(frame.members[i], resists);
    });
    see_turning_springs(frame, resists);
    freedoms = number_freedoms(frame, resists);
    find_members_at_supports();
    if constexpr (std::same_as<S, double>)
      groups.make(frame, sorts, sort_of, [this](const auto& take) {
        for (std::size_t i = 0; i < frame.members.size(); ++i) take(static_cast<std::uint32_t>(i));
      });
    for (const MemberSort<S>& s : sorts) {
      shortest = (std::min)(shortest, value_of(s.plain.length));
      longest = (std::max)(longest, value_of(s.plain.length));
    }
  }

  /// Takes a member's new numbers; one that has changed before keeps the sort of its own.
  void renew_member(std::size_t member) {
    const MemberSort<S> made = sort_of_member(frame, frame.members[member]);
    const auto known = std::find_if(renewed_.begin(), renewed_.end(), [&](const auto& r) { return r.first == member; });
    if (known != renewed_.end()) {
      sorts[known->second] = made;
    } else {
      renewed_.push_back({static_cast<std::uint32_t>(member), static_cast<std::uint32_t>(sorts.size())});
      sort_of[member] = static_cast<std::uint32_t>(sorts.size());
      sorts.push_back(made);
    }
    if constexpr (std::same_as<S, double>)
      for (MemberGroups* g : {&groups, &groups_at_support}) g->renew(static_cast<std::uint32_t>(member), made);
  }
  /// Takes other restraints of the supports.
  void renew_supports() {
    freedoms = number_freedoms(frame, nodes_that_resist_turning(frame));
    find_members_at_supports();
  }

  const MemberSort<S>& sort(std::size_t member) const { return sorts[sort_of[member]]; }

  /// Lower triangle of the stiffness of the unknowns, as a sum of entries.
  std::vector<Entry<S>> stiffness_entries() const {
    std::vector<Entry<S>> entries;
    entries.reserve(frame.members.size() * 78 + 6 * frame.supports.size());
    for (std::size_t i = 0; i < frame.members.size(); ++i) {
      const BasicMember<S>& m = frame.members[i];
      std::array<int, 12> number{};
      for (std::size_t k = 0; k < 6; ++k) {
        number[k] = freedoms.of(m.from, k);
        number[6 + k] = freedoms.of(m.to, k);
      }
      put_member_matrix(sort(i).plain, [&](std::size_t r, std::size_t c, const S& v) {
        if (number[c] >= 0 && number[r] >= number[c] && value_of(v) != 0.0) entries.push_back({number[r], number[c], v});
      });
    }
    for (const BasicSupport<S>& s : frame.supports)
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind == BasicRestraint<S>::Kind::spring)
          entries.push_back({freedoms.of(s.node, k), freedoms.of(s.node, k), s.motion[k].stiffness});
    return entries;
  }

  /// Adds to `force` (six per node) what members and springs answer to the motions u; `ground` are the support motions.
  void add_internal_forces(const std::vector<A>& u, const std::vector<A>& ground, std::vector<A>& force) const {
    std::array<double, 2> unseen{};
    add_member_forces(u, 1.0, force, unseen.data());
    add_spring_forces(u, ground, 1.0, force);
  }
  /// force += sign K u of all members; `sizes` takes their largest force and moment, and keeps larger ones.
  void add_member_forces(const std::vector<A>& u, double sign, std::vector<A>& force, double* sizes) const {
    if constexpr (std::same_as<S, double>) {
      if (!groups.empty()) return add_in_groups(groups, u, sign, force, sizes);
    }
    for (std::size_t i = 0; i < frame.members.size(); ++i) add_member(i, u, sign, force, sizes);
  }
  /// The same for the members with a held motion at one of their nodes.
  void add_member_forces_at_supports(const std::vector<A>& u, double sign, std::vector<A>& force) const {
    std::array<double, 2> unseen{};
    if constexpr (std::same_as<S, double>) {
      if (!groups_at_support.empty()) return add_in_groups(groups_at_support, u, sign, force, unseen.data());
    }
    for (const std::uint32_t i : at_support) add_member(i, u, sign, force, unseen.data());
  }
  /// force += sign k (u - ground) of all springs, or sign k u.
  void add_spring_forces(const std::vector<A>& u, const std::vector<A>& ground, double sign,
                         std::vector<A>& force) const {
    for_each_spring([&](std::size_t i, std::size_t at_ground, const S& k) {
      force[i] += A(A(sign) * A(k) * A(u[i] - ground[at_ground]));
    });
  }
  void add_spring_forces(const std::vector<A>& u, double sign, std::vector<A>& force) const {
    for_each_spring([&](std::size_t i, std::size_t, const S& k) { force[i] += A(A(sign) * A(k) * u[i]); });
  }

  /// The members that loads act along, each with what they do to it.
  void add_loadings(const BasicFrameLoads<S>& loads, LoadedMembers<A>& loaded) const {
    for (const BasicMemberLoad<S>& l : loads.on_members) add_loading_of(l, loaded[l.member].loading);
  }
  /// Loads as forces on the nodes (six per node, added), and the loaded members (kept for their forces). A load case
  /// mostly loads all bars of a sort alike, once each: then one of them is worked out for all.
  void reduce(const BasicFrameLoads<S>& loads, std::vector<A>& force, LoadedMembers<A>& loaded) const {
    add_node_loads(loads, force);
    const std::vector<BasicMemberLoad<S>>& along = loads.on_members;
    for (std::size_t i = 0; i < along.size(); ++i) {
      typename LoadedMembers<A>::Loaded& l = loaded[along[i].member];
      l.load = static_cast<std::uint32_t>(i);
      ++l.loads;
    }
    for (const BasicMemberLoad<S>& each : along)
      if (typename LoadedMembers<A>::Loaded& l = loaded[each.member]; l.loads > 1) add_loading_of(each, l.loading);
    loaded.forget_sorts(sorts.size());
    for (typename LoadedMembers<A>::Loaded& l : loaded) {
      const BasicMember<S>& m = frame.members[l.member];
      const typename LoadedMembers<A>::Loaded*& known = loaded.of_sort(sort_of[l.member]);
      if (l.loads == 1 && known != nullptr && alike(along[known->load], along[l.load])) {
        l.loading = known->loading;
        l.held = known->held;
        l.forces = known->forces;
      } else {
        if (l.loads == 1) {
          add_loading_of(along[l.load], l.loading);
          known = &l;
        }
        const MemberIn<A>& in = sort(l.member).accurate;
        l.held = MemberForces<A>(in, l.loading.modes);
        l.forces.fill(A(0));
        add_loading_forces(in, l.loading, l.held.q, l.forces.data(), l.forces.data() + 6);
      }
      for (std::size_t k = 0; k < 6; ++k) {
        force[6 * m.from + k] += l.forces[k];
        force[6 * m.to + k] += l.forces[6 + k];
      }
    }
  }

  /// Motions of the ground under each support (six per support) in this load case.
  void ground_motions(const BasicFrameLoads<S>& loads, std::vector<A>& ground) const {
    for (std::size_t j = 0; j < frame.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k) ground[6 * j + k] = A(frame.supports[j].motion[k].displacement);
    for (const BasicSupportMotion<S>& l : loads.motions)
      for (std::size_t j = 0; j < frame.supports.size(); ++j)
        if (frame.supports[j].node == l.node) ground[6 * j + static_cast<std::size_t>(l.motion)] += A(l.displacement);
  }

 private:
  void add_loading_of(const BasicMemberLoad<S>& l, MemberLoading<A>& loading) const {
    add_loading(sort(l.member).wide, sort(l.member).accurate.length, widened<A>(l), loading);
  }
  /// Whether two loads do the same to two members of one sort.
  static bool alike(const BasicMemberLoad<S>& a, const BasicMemberLoad<S>& b) {
    if constexpr (!std::floating_point<S>) {
      return false;
    } else {
      const auto same = [](const Vec3<S>& x, const Vec3<S>& y) { return x.x == y.x && x.y == y.y && x.z == y.z; };
      return a.kind == b.kind && a.a == b.a && a.b == b.b && same(a.first, b.first) && same(a.last, b.last);
    }
  }
  /// each(motion, place in ground, stiffness)
  template <class Each>
  void for_each_spring(const Each& each) const {
    for (std::size_t j = 0; j < frame.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k)
        if (const BasicRestraint<S>& r = frame.supports[j].motion[k]; r.kind == BasicRestraint<S>::Kind::spring)
          each(6 * frame.supports[j].node + k, 6 * j + k, r.stiffness);
  }
  void add_in_groups([[maybe_unused]] const MemberGroups& all, [[maybe_unused]] const std::vector<A>& u,
                     [[maybe_unused]] double sign, [[maybe_unused]] std::vector<A>& force,
                     [[maybe_unused]] double* sizes) const {
#ifdef BAYWORK_DISPATCHED_KERNELS
    twofold_lane::add_end_forces(all.lanes(), all.groups().data(), all.groups().size(),
                                 reinterpret_cast<const double*>(u.data()), sign,
                                 reinterpret_cast<double*>(force.data()), sizes);
#endif
  }
  void add_member(std::size_t i, const std::vector<A>& u, double sign, std::vector<A>& force, double* sizes) const {
    const BasicMember<S>& m = frame.members[i];
    const MemberIn<A>& in = sort(i).accurate;
    MemberForces<A> f(in, in.geometry.deformations(&u[6 * m.from], &u[6 * m.to]));
    f.seen_in(sizes);
    if (sign < 0)
      for (A& q : f.q) q = A(-q);
    in.geometry.add_end_forces(f.q, &force[6 * m.from], &force[6 * m.to]);
  }

  void find_members_at_supports() {
    at_support.clear();
    for (std::size_t i = 0; i < frame.members.size(); ++i) {
      const BasicMember<S>& m = frame.members[i];
      bool held = false;
      for (std::size_t k = 0; k < 6; ++k)
        held = held || freedoms.of(m.from, k) == Freedoms::held || freedoms.of(m.to, k) == Freedoms::held;
      if (held) at_support.push_back(static_cast<std::uint32_t>(i));
    }
    if constexpr (std::same_as<S, double>)
      groups_at_support.make(frame, sorts, sort_of, [this](const auto& take) {
        for (const std::uint32_t i : at_support) take(i);
      });
  }

  std::vector<std::pair<std::uint32_t, std::uint32_t>> renewed_;  ///< members that have changed, and their own sorts
};

}  // namespace baywork::detail
