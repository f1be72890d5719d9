// SPDX-License-Identifier: MIT
// The members that loads act along: what each load case keeps of them, and nothing of the others.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/solve/detail/member_sorts.hpp>
#include <baywork/solve/member_loading.hpp>

namespace baywork::detail {

/// largest := max(largest, |x|), NaN being the largest of all.
inline void see(double x, double& largest) {
  const double size = std::abs(x);
  if (!(size <= largest) && largest == largest) largest = size;
}

/// A member's forces against its strains v, and its shear forces (q2 + q3)/L and (q4 + q5)/L.
template <class A>
struct MemberForces {
  MemberModes<A> q{};
  std::array<A, 2> across{};

  MemberForces() = default;
  MemberForces(const MemberIn<A>& in, const MemberModes<A>& v)
      : q(in.stiffness * v),
        across{A((q[2] + q[3]) * in.geometry.per_length), A((q[4] + q[5]) * in.geometry.per_length)} {}

  /// Takes the largest force and the largest moment into sizes[2].
  void seen_in(double* sizes) const {
    see(value_of(q[0]), sizes[0]);
    for (const A& f : across) see(value_of(f), sizes[0]);
    for (std::size_t k = 1; k < 6; ++k) see(value_of(q[k]), sizes[1]);
  }
};

template <class A>
class LoadedMembers {
 public:
  struct Loaded {
    std::uint32_t member = 0;
    MemberLoading<A> loading{};
    MemberForces<A> held{};       ///< what the load's own strains would take
    std::array<A, 12> forces{};   ///< on the nodes of its start and end, global axes
    std::uint32_t loads = 0, load = 0;  ///< how many, and the last one's number
  };

  /// Forgets the last load case. Takes memory the first time alone, for every member: no later case takes more.
  void clear(std::size_t members) {
    if (slot_.size() != members) {
      slot_.assign(members, none);
      loaded_.clear();
      loaded_.reserve(members);
    }
    for (const Loaded& l : loaded_) slot_[l.member] = none;
    loaded_.clear();
  }
  /// A member, from now on a loaded one.
  Loaded& operator[](std::size_t member) {
    std::uint32_t& slot = slot_[member];
    if (slot == none) {
      slot = static_cast<std::uint32_t>(loaded_.size());
      loaded_.emplace_back();
      loaded_.back().member = static_cast<std::uint32_t>(member);
    }
    return loaded_[slot];
  }
  /// The member of each sort that was worked out last, to be set by the caller: nullptr for none.
  void forget_sorts(std::size_t sorts) { of_sort_.assign(sorts, nullptr); }
  const Loaded*& of_sort(std::size_t sort) { return of_sort_[sort]; }
  bool empty() const noexcept { return loaded_.empty(); }
  /// nullptr where no load acts along the member.
  const Loaded* of(std::size_t member) const { return slot_[member] == none ? nullptr : &loaded_[slot_[member]]; }
  typename std::vector<Loaded>::iterator begin() { return loaded_.begin(); }
  typename std::vector<Loaded>::iterator end() { return loaded_.end(); }

 private:
  static constexpr std::uint32_t none = 0xFFFF'FFFF;
  std::vector<std::uint32_t> slot_;
  std::vector<Loaded> loaded_;
  std::vector<const Loaded*> of_sort_;
};

}  // namespace baywork::detail
