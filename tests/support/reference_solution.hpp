// SPDX-License-Identifier: MIT
// Frames solved apart from the library's solver, with 106 bits throughout: assembled whole, factored as a skyline.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/solve/detail/twofold.hpp>
#include <baywork/solve/frame_answer.hpp>
#include <baywork/solve/member_loading.hpp>
#include <baywork/solve/member_stiffness.hpp>

#include "convert.hpp"

namespace reference {

using Number = baywork::detail::Twofold<double>;
using Answer = baywork::BasicFrameAnswer<Number>;  // its reactions and certificate stay empty

/// Symmetric matrix, each row from its first entry to the diagonal, as L D Lᵀ. Rounding 2⁻¹⁰⁶ in every sum (Dot2 of
/// T. Ogita, S. M. Rump, S. Oishi, Accurate sum and dot product, SIAM J. Sci. Comput. 26 (2005), taken to twofold
/// terms).
class Skyline {
 public:
  explicit Skyline(std::vector<std::size_t> first) : first_(std::move(first)), begin_(first_.size() + 1, 0) {
    for (std::size_t i = 0; i < first_.size(); ++i) begin_[i + 1] = begin_[i] + (i - first_[i] + 1);
    value_.resize(begin_.back());
  }
  /// Entry of the lower triangle inside the skyline, row >= column.
  Number& at(std::size_t row, std::size_t column) { return value_[begin_[row] + (column - first_[row])]; }

  /// False unless all pivots are positive. The factors take the matrix's place: rows of L, D on the diagonal.
  bool factor() {
    for (std::size_t i = 0; i < first_.size(); ++i) {
      for (std::size_t j = first_[i]; j < i; ++j) {
        const std::size_t from = (std::max)(first_[i], first_[j]);
        at(i, j) -= dot(&at(i, from), &at(j, from), j - from);
      }
      Number& pivot = at(i, i);
      for (std::size_t j = first_[i]; j < i; ++j) {
        const Number l = at(i, j) / at(j, j);
        pivot -= l * at(i, j);
        at(i, j) = l;
      }
      if (!(pivot.hi > 0)) return false;
    }
    return true;
  }
  void solve(std::vector<Number>& x) const {
    const std::size_t n = first_.size();
    for (std::size_t i = 0; i < n; ++i) x[i] -= dot(&value_[begin_[i]], &x[first_[i]], i - first_[i]);
    for (std::size_t i = 0; i < n; ++i) x[i] = x[i] / value_[begin_[i + 1] - 1];
    for (std::size_t i = n; i-- > 0;)
      for (std::size_t j = first_[i]; j < i; ++j) x[j] -= value_[begin_[i] + (j - first_[i])] * x[i];
  }

  static Number dot(const Number* a, const Number* b, std::size_t n) {
    double hi = 0, lo = 0;
    for (std::size_t k = 0; k < n; ++k) {
      const Number p = Number::product(a[k].hi, b[k].hi), s = Number::sum(hi, p.hi);
      hi = s.hi;
      lo += s.lo + (p.lo + (a[k].hi * b[k].lo + a[k].lo * b[k].hi));
    }
    return Number::sum(hi, lo);
  }

 private:
  std::vector<std::size_t> first_, begin_;
  std::vector<Number> value_;
};

/// One frame: K = Σ Bᵀ k B of its free motions; forces on joints come member by member from their deformations.
class Solution {
 public:
  /// Throws nothing: `sound()` is false where the stiffness is not positive definite.
  explicit Solution(const baywork::Frame& f) : frame_(converted<Number>(f)), number_(6 * f.nodes.size(), 0) {
    members_.reserve(f.members.size());
    for (const auto& m : frame_.members) {
      const baywork::MemberAxes<Number> axes = baywork::axes_in<Number>(frame_, m);
      members_.push_back({baywork::geometry_in<Number>(axes, m), baywork::stiffness_of(m, axes.length), axes.length});
    }
    number_unknowns();
    assemble();
  }
  bool sound() const { return sound_; }
  /// The part of the last answer that its second correction made, of the largest motion: how far off it still was.
  double last_correction() const { return last_correction_; }

  Answer solve(const baywork::FrameLoads& given) {
    const baywork::BasicFrameLoads<Number> loads = converted<Number>(given);
    std::vector<baywork::MemberLoading<Number>> loading(members_.size());
    for (const auto& l : loads.on_members)
      baywork::add_loading(frame_.members[l.member], members_[l.member].length, l, loading[l.member]);
    const std::vector<Number> ground = ground_motions(loads);
    std::vector<Number> u(number_.size());
    for (std::size_t i = 0; i < u.size(); ++i)
      if (number_[i] == held) u[i] = ground[i];
    for (int step = 0; step < 3; ++step) {
      const std::vector<Number> force = unbalanced(loads, loading, ground, u);
      std::vector<Number> d(unknowns_);
      for (std::size_t i = 0; i < u.size(); ++i)
        if (number_[i] >= 0) d[static_cast<std::size_t>(number_[i])] = force[i];
      stiffness_.solve(d);
      double correction = 0, largest = std::numeric_limits<double>::min();
      for (std::size_t i = 0; i < u.size(); ++i) {
        if (number_[i] >= 0) {
          correction = (std::max)(correction, std::abs(d[static_cast<std::size_t>(number_[i])].hi));
          u[i] += d[static_cast<std::size_t>(number_[i])];
        }
        largest = (std::max)(largest, std::abs(u[i].hi));
      }
      last_correction_ = correction / largest;
    }
    Answer a;
    for (std::size_t i = 0; i < members_.size(); ++i) a.members.push_back(member_answer(i, loading[i], u));
    a.motions = std::move(u);
    return a;
  }

 private:
  static constexpr int held = -1, idle = -2;
  struct MemberParts {
    baywork::MemberGeometry<Number> geometry;
    baywork::MemberStiffness<Number> stiffness;
    Number length;
  };
  using Modes = baywork::MemberModes<Number>;

  /// Nodes in the order in which a wave through the members reaches them, from a node that an earlier wave reached
  /// last.
  std::vector<std::size_t> order_of_nodes() const {
    std::vector<std::vector<std::size_t>> next(frame_.nodes.size());
    for (const auto& m : frame_.members) {
      next[m.from].push_back(m.to);
      next[m.to].push_back(m.from);
    }
    const auto wave = [&next](std::size_t start) {
      std::vector<std::size_t> reached;
      std::vector<char> seen(next.size(), 0);
      for (std::size_t turn = 0; turn <= next.size(); ++turn) {  // further starts where the frame falls into parts
        const std::size_t from = turn == 0 ? start : turn - 1;
        if (seen[from] != 0) continue;
        seen[from] = 1;
        reached.push_back(from);
        for (std::size_t at = reached.size() - 1; at < reached.size(); ++at)
          for (const std::size_t n : next[reached[at]])
            if (seen[n] == 0) {
              seen[n] = 1;
              reached.push_back(n);
            }
      }
      return reached;
    };
    return wave(wave(0).back());
  }

  /// A rotation that only axial bars meet is idle: nothing resists it.
  void number_unknowns() {
    std::vector<char> turns(frame_.nodes.size(), 0);
    const auto tie = [&turns](const auto& m, std::size_t node, const baywork::Vec3<Number>& arm) {
      if (m.kind == baywork::MemberKind::beam || dot(arm, arm).hi > 0) turns[node] = 1;
    };
    for (const auto& m : frame_.members) {
      tie(m, m.from, m.start.offset);
      tie(m, m.to, m.end.offset);
    }
    for (std::size_t i = 0; i < number_.size(); ++i)
      if (i % 6 >= 3 && turns[i / 6] == 0) number_[i] = idle;
    using Kind = baywork::BasicRestraint<Number>::Kind;
    for (const auto& s : frame_.supports)
      for (std::size_t k = 0; k < 6; ++k) {
        if (s.motion[k].kind == Kind::fixed) number_[6 * s.node + k] = held;
        if (s.motion[k].kind == Kind::spring) number_[6 * s.node + k] = 0;
      }
    int count = 0;
    for (const std::size_t n : order_of_nodes())
      for (std::size_t k = 0; k < 6; ++k)
        if (number_[6 * n + k] >= 0) number_[6 * n + k] = count++;
    unknowns_ = static_cast<std::size_t>(count);
  }

  std::array<int, 12> numbers_of(std::size_t member) const {
    std::array<int, 12> out{};
    for (std::size_t k = 0; k < 6; ++k) {
      out[k] = number_[6 * frame_.members[member].from + k];
      out[6 + k] = number_[6 * frame_.members[member].to + k];
    }
    return out;
  }

  void assemble() {
    std::vector<std::size_t> first(unknowns_);
    for (std::size_t i = 0; i < unknowns_; ++i) first[i] = i;
    for (std::size_t m = 0; m < members_.size(); ++m) {
      const std::array<int, 12> at = numbers_of(m);
      for (const int row : at)
        for (const int column : at)
          if (column >= 0 && row >= column)
            first[static_cast<std::size_t>(row)] =
                (std::min)(first[static_cast<std::size_t>(row)], static_cast<std::size_t>(column));
    }
    stiffness_ = Skyline(std::move(first));
    for (std::size_t m = 0; m < members_.size(); ++m) {
      const std::array<int, 12> at = numbers_of(m);
      std::array<Modes, 12> b{}, kb{};  // columns of B and of k B
      for (std::size_t c = 0; c < 12; ++c) {
        std::array<Number, 12> motion{};
        motion[c] = Number(1);
        b[c] = members_[m].geometry.deformations(motion.data(), motion.data() + 6);
        kb[c] = members_[m].stiffness * b[c];
      }
      for (std::size_t r = 0; r < 12; ++r)
        for (std::size_t c = 0; c < 12; ++c) {
          if (at[c] < 0 || at[r] < at[c]) continue;
          Number& sum = stiffness_.at(static_cast<std::size_t>(at[r]), static_cast<std::size_t>(at[c]));
          sum += Skyline::dot(b[r].data(), kb[c].data(), 6);
        }
    }
    using Kind = baywork::BasicRestraint<Number>::Kind;
    for (const auto& s : frame_.supports)
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind == Kind::spring) {
          const std::size_t i = static_cast<std::size_t>(number_[6 * s.node + k]);
          stiffness_.at(i, i) += s.motion[k].stiffness;
        }
    sound_ = stiffness_.factor();
  }

  /// Six per node: where the ground under a support goes.
  std::vector<Number> ground_motions(const baywork::BasicFrameLoads<Number>& loads) const {
    std::vector<Number> out(number_.size());
    for (const auto& s : frame_.supports)
      for (std::size_t k = 0; k < 6; ++k) out[6 * s.node + k] = s.motion[k].displacement;
    for (const auto& l : loads.motions) out[6 * l.node + static_cast<std::size_t>(l.motion)] += l.displacement;
    return out;
  }

  /// What loads, members and springs leave on the joints when these stand at u.
  std::vector<Number> unbalanced(const baywork::BasicFrameLoads<Number>& loads,
                                 const std::vector<baywork::MemberLoading<Number>>& loading,
                                 const std::vector<Number>& ground, const std::vector<Number>& u) const {
    std::vector<Number> out(number_.size());
    for (const auto& l : loads.on_nodes)
      for (std::size_t k = 0; k < 3; ++k) {
        out[6 * l.node + k] += l.force[k];
        out[6 * l.node + 3 + k] += l.couple[k];
      }
    for (std::size_t i = 0; i < members_.size(); ++i) {
      const baywork::BasicMember<Number>& m = frame_.members[i];
      const baywork::MemberGeometry<Number>& g = members_[i].geometry;
      const auto on_joint = [&](std::size_t node, const std::array<Number, 6>& on_bar,
                                const baywork::Vec3<Number>& arm) {
        const baywork::Vec3<Number> f = on_bar[0] * g.x + on_bar[1] * g.y + on_bar[2] * g.z;
        const baywork::Vec3<Number> c = on_bar[3] * g.x + on_bar[4] * g.y + on_bar[5] * g.z + cross(arm, f);
        for (std::size_t k = 0; k < 3; ++k) {
          out[6 * node + k] -= f[k];
          out[6 * node + 3 + k] -= c[k];
        }
      };
      const baywork::BasicMemberAnswer<Number> a = member_answer(i, loading[i], u);
      on_joint(m.from, a.start, g.arm_start);
      on_joint(m.to, a.end, g.arm_end);
    }
    using Kind = baywork::BasicRestraint<Number>::Kind;
    for (const auto& s : frame_.supports)
      for (std::size_t k = 0; k < 6; ++k)
        if (s.motion[k].kind == Kind::spring)
          out[6 * s.node + k] += s.motion[k].stiffness * (ground[6 * s.node + k] - u[6 * s.node + k]);
    return out;
  }

  /// Forces on both ends, local axes: a simple beam under its loads, with the end moments q that its joints bend into
  /// it. Moments about z, in equilibrium: a force along y of (q2 + q3)/L on the start; about y: -(q4 + q5)/L along z.
  baywork::BasicMemberAnswer<Number> member_answer(std::size_t i, const baywork::MemberLoading<Number>& l,
                                                   const std::vector<Number>& u) const {
    const baywork::BasicMember<Number>& m = frame_.members[i];
    baywork::BasicMemberAnswer<Number> a;
    a.modes = members_[i].geometry.deformations(&u[6 * m.from], &u[6 * m.to]);
    Modes strain = a.modes;
    for (std::size_t k = 0; k < 6; ++k) strain[k] -= l.modes[k];
    const Modes q = members_[i].stiffness * strain;
    const Number fy = (q[2] + q[3]) / members_[i].length, fz = -((q[4] + q[5]) / members_[i].length);
    a.start = {l.start.x - q[0], l.start.y + fy, l.start.z + fz, l.start_torque - q[1], q[4], q[2]};
    a.end = {l.end.x + q[0], l.end.y - fy, l.end.z - fz, l.end_torque + q[1], q[5], q[3]};
    return a;
  }

  baywork::BasicFrame<Number> frame_;
  std::vector<MemberParts> members_;
  std::vector<int> number_;  ///< six per node
  std::size_t unknowns_ = 0;
  Skyline stiffness_{{}};
  bool sound_ = false;
  double last_correction_ = 0;
};

}  // namespace reference
