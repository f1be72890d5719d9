// SPDX-License-Identifier: MIT
// One cell of a run: from its members and loads to a segment, and back to the motions inside it.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <type_traits>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/solve/detail/member_matrix.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/detail/run_segment.hpp>
#include <baywork/solve/detail/run_station.hpp>

namespace baywork::detail {

/// The member's numbers in the precision of R.
template <class R, class S>
const MemberIn<R>& member_in(const MemberSort<S>& s) {
  if constexpr (std::is_same_v<R, S>)
    return s.plain;
  else
    return s.accurate;
}

/// What a cell's description is to the arithmetic: numbers of the unknowns and lever arms. The local motions of the
/// first station, the motions inside and those of the last station are counted with the rigid motion of the first
/// station at rest; so no rigid motion ever meets a member's stiffness, and nothing cancels.
template <class S, class R>
class RunCell {
 public:
  RunCell(const PreparedFrame<S>& prepared, const RunStation& station) : p_(prepared), st_(station) {
    const BasicFrame<S>& f = p_.frame;
    m_ = st_.locals;
    inner_.assign(6 * f.nodes.size(), -1);
    int next = 0;
    for (std::size_t n = 0; n < f.nodes.size(); ++n) {
      const Vec3<S>&at = f.nodes[n].at, &from = f.nodes[st_.first[0]].at;
      lever_.push_back({R(R(at.x) - R(from.x)), R(R(at.y) - R(from.y)), R(R(at.z) - R(from.z))});
      if (st_.joint_of[n] >= 0) continue;
      for (std::size_t k = 0; k < 6; ++k)
        if (p_.freedoms.of(n, k) >= 0) inner_[6 * n + k] = next++;
    }
    inside_ = static_cast<std::size_t>(next);
    matrices_.resize(p_.sorts.size());
    for (std::size_t i = 0; i < p_.sorts.size(); ++i)
      put_member_matrix(member_in<R>(p_.sorts[i]),
                        [&](std::size_t r, std::size_t c, const R& v) { matrices_[i][12 * r + c] = v; });
    reach_ = lever_[st_.last[0]];
    for (std::size_t i = 0; i < st_.last.size(); ++i) lever_[st_.last[i]] = lever_[st_.first[i]];
    // first station's reference: the joint that gives it, or the first one
    std::size_t r = 0;
    while (r + 1 < st_.first.size() && st_.local[6 * r + 3] != RunStation::reference) ++r;
    if (st_.local[6 * r + 3] != RunStation::reference) r = 0;
    const Vec3<R> origin = lever_[st_.first[r]];
    for (Vec3<R>& d : lever_) d -= origin;
  }

  std::size_t locals() const { return m_; }
  const Vec3<R>& reach() const { return reach_; }
  /// From the station's reference point to a joint of its own.
  const Vec3<R>& arm(std::size_t joint) const { return lever_[st_.first[joint]]; }

  /// Loads as forces on the cell's nodes (six per node, added). `closing`: of the members in the last station instead,
  /// with loads on nodes where `nodes` says so.
  void reduce(const BasicFrameLoads<S>& loads, bool closing, std::vector<R>& force, bool nodes = false) const {
    if (!closing || nodes) add_node_loads(loads, force);
    for (const BasicMemberLoad<S>& l : loads.on_members) {
      if ((st_.closes[l.member] != 0) != closing) continue;
      const BasicMember<S>& m = p_.frame.members[l.member];
      const MemberIn<R>& in = member_in<R>(p_.sort(l.member));
      MemberLoading<R> loading;
      if constexpr (std::is_same_v<R, S>)
        add_loading(m, in.length, l, loading);
      else
        add_loading(p_.sort(l.member).wide, in.length, widened<R>(l), loading);
      add_loading_forces(in, loading, in.stiffness * loading.modes, force.data() + 6 * m.from, force.data() + 6 * m.to);
    }
    for (std::size_t i = 0; i < force.size(); ++i)
      if (value_of(force[i]) != 0.0 && is_idle(i))
        fail<UnstableFrame>(
            p_.frame.name_of_node(i / 6),
            std::string("a couple acts in the ") + motion_names[i % 6] + ", but only axial bars meet there",
            "a joint with a beam, or no couple, is accepted");
  }

  /// Eliminates all but N, 1, a, a'.
  void eliminate(const std::vector<R>& force, RunSegment<R>& out) const {
    const std::size_t k = inside_ + 6, n = k + 7 + 2 * m_;
    out.set_size(m_, k);
    const std::size_t ld = out.ld;
    R* const w = out.front.data();
    for (std::size_t j = 0; j < n; ++j) std::fill(w + j * ld + j, w + (j + 1) * ld, R(0));
    for (std::size_t i = 0; i < p_.frame.members.size(); ++i)
      if (st_.closes[i] == 0) add_member(i, ld, w);
    for (std::size_t c = 0; c < 6; ++c) w[(inside_ + c) * ld + k + c] = R(-1);  // -N·s
    out.load = zero_six<R>();
    Six<R> at_right = zero_six<R>();
    for (std::size_t node = 0; node < p_.frame.nodes.size(); ++node) {
      const R* f = force.data() + 6 * node;
      const Six<R> whole = resultant(Six<R>{f[0], f[1], f[2], f[3], f[4], f[5]}, lever_[node]);
      const bool on_last = st_.on_last[node] != 0;
      for (std::size_t c = 0; c < 6; ++c) {
        (on_last ? at_right : out.load)[c] += whole[c];
        const int at = place(node, c, k);
        if (at >= 0) one_entry(at, k, ld, w) -= f[c];
      }
    }
    for (std::size_t c = 0; c < 6; ++c) w[(inside_ + c) * ld + k + 6] = R(-at_right[c]);
    at_right = resultant(at_right, reach_);
    for (std::size_t c = 0; c < 6; ++c) out.load[c] += at_right[c];
    const double ratio = eliminate_part(n, k, ld, w);
    if (!(ratio > 1e-14))
      fail<UnstableFrame>("uniform run", "the cell, held at its two stations, can move without any bar resisting",
                          "a diagonal, a rigid joint or a bar that resists this motion is accepted");
    out.reach = reach_;
    out.coupled = true;
  }

  /// Motions of all the cell's nodes against the rigid motion of its first station (six per node).
  void motions(const RunSegment<R>& own, const Six<R>& N, const R* a, const R* b, std::vector<R>& x,
               std::vector<R>& u) const {
    own.inside_from(m_, N, a, b, x);
    const std::size_t k = own.inside;
    const Six<R> s{x[inside_], x[inside_ + 1], x[inside_ + 2], x[inside_ + 3], x[inside_ + 4], x[inside_ + 5]};
    u.assign(6 * p_.frame.nodes.size(), R(0));
    for (std::size_t node = 0; node < p_.frame.nodes.size(); ++node) {
      const Six<R> rigid = carried(s, lever_[node]);
      for (std::size_t c = 0; c < 6; ++c) {
        if (const int at = place(node, c, k); at >= 0) u[6 * node + c] = x[static_cast<std::size_t>(at)];
        if (st_.on_last[node] != 0 && !is_idle(6 * node + c)) u[6 * node + c] += rigid[c];
      }
    }
  }

  /// Rigid motion r of the first station, added to the motions of the cell's nodes.
  void add_rigid(const Six<R>& r, std::vector<R>& u) const {
    for (std::size_t node = 0; node < p_.frame.nodes.size(); ++node) {
      const Six<R> rigid = carried(r, st_.on_last[node] != 0 ? lever_[node] + reach_ : lever_[node]);
      for (std::size_t c = 0; c < 6; ++c)
        if (!is_idle(6 * node + c)) u[6 * node + c] += rigid[c];
    }
  }

  /// Motions of a station's joints (six per joint).
  void station_motions(const Six<R>& r, const R* a, std::vector<R>& u) const {
    u.assign(6 * st_.first.size(), R(0));
    for (std::size_t i = 0; i < st_.first.size(); ++i) {
      const Six<R> rigid = carried(r, arm(i));
      for (std::size_t c = 0; c < 6; ++c) {
        const int number = st_.local[6 * i + c];
        if (number == RunStation::idle) continue;
        u[6 * i + c] = rigid[c];
        if (number >= 0) u[6 * i + c] += a[number];
      }
    }
  }

  /// Calls put(i, j, value) with the stiffness of the members in the last station against its local motions, i >= j,
  /// and put(i, -1, force) with the loads on them; returns the resultant of those about the reference.
  template <class Put>
  Six<R> closing(const std::vector<R>& force, const Put& put) const {
    for (std::size_t i = 0; i < p_.frame.members.size(); ++i) {
      if (st_.closes[i] == 0) continue;
      const BasicMember<S>& m = p_.frame.members[i];
      std::array<int, 12> at{};
      for (std::size_t c = 0; c < 12; ++c) at[c] = local(c < 6 ? m.from : m.to, c % 6);
      for (std::size_t r = 0; r < 12; ++r)
        for (std::size_t c = 0; c < 12; ++c)
          if (at[r] >= at[c] && at[c] >= 0) put(at[r], at[c], matrices_[p_.sort_of[i]][12 * r + c]);
    }
    Six<R> whole = zero_six<R>();
    for (const std::size_t node : st_.last) {
      const R* f = force.data() + 6 * node;
      const Six<R> part = resultant(Six<R>{f[0], f[1], f[2], f[3], f[4], f[5]}, lever_[node]);
      for (std::size_t c = 0; c < 6; ++c) {
        whole[c] += part[c];
        if (local(node, c) >= 0) put(local(node, c), -1, f[c]);
      }
    }
    return whole;
  }

 private:
  int local(std::size_t node, std::size_t c) const {
    return st_.local[6 * static_cast<std::size_t>(st_.joint_of[node]) + c];
  }
  bool is_idle(std::size_t i) const {
    const std::size_t node = i / 6;
    return st_.joint_of[node] >= 0 ? local(node, i % 6) == RunStation::idle : inner_[i] < 0;
  }
  /// Row of a motion in the cell's matrix: inside, s, N, 1, a, a'; -1 where it has none of its own.
  int place(std::size_t node, std::size_t c, std::size_t k) const {
    if (st_.joint_of[node] < 0) return inner_[6 * node + c];
    const int number = local(node, c);
    return number < 0 ? -1 : number + static_cast<int>(k + 7 + (st_.on_last[node] != 0 ? m_ : 0));
  }
  /// Entry (1, row) of the lower triangle.
  static R& one_entry(int row, std::size_t k, std::size_t ld, R* w) {
    const std::size_t one = k + 6, i = static_cast<std::size_t>(row);
    return i < one ? w[i * ld + one] : w[one * ld + i];
  }

  /// Adds a member; where it ends at the last station, u = R s + a' there.
  void add_member(std::size_t i, std::size_t ld, R* w) const {
    const BasicMember<S>& m = p_.frame.members[i];
    const std::size_t k = inside_ + 6;
    const std::array<R, 144>& matrix = matrices_[p_.sort_of[i]];
    std::array<int, 12> at{};
    for (std::size_t c = 0; c < 6; ++c) {
      at[c] = place(m.from, c, k);
      at[6 + c] = place(m.to, c, k);
    }
    // a node's motions are numbered upwards, and all of one end come before all of the other
    const std::size_t later = *std::max_element(at.begin(), at.begin() + 6) > *std::max_element(at.begin() + 6, at.end()) ? 0 : 6;
    const auto add_block = [&](std::size_t row, std::size_t column) {
      for (std::size_t c = column; c < column + 6; ++c) {
        if (at[c] < 0) continue;
        R* const to = w + static_cast<std::size_t>(at[c]) * ld;
        for (std::size_t r = row == column ? c : row; r < row + 6; ++r)
          if (at[r] >= 0) to[at[r]] += matrix[12 * c + r];
      }
    };
    add_block(0, 0);
    add_block(6, 6);
    add_block(later, 6 - later);
    const bool from_last = st_.on_last[m.from] != 0, to_last = st_.on_last[m.to] != 0;
    if (!from_last && !to_last) return;
    const std::size_t end = from_last ? 0 : 6;
    const Vec3<R>& arm = lever_[from_last ? m.from : m.to];
    std::array<Six<R>, 12> work;  // Rᵀ of the end's forces, for each of the member's motions
    for (std::size_t c = 0; c < 12; ++c) {
      Six<R> f;
      for (std::size_t r = 0; r < 6; ++r) f[r] = matrix[12 * (end + r) + c];
      work[c] = resultant(f, arm);
      if (at[c] < 0) continue;
      const std::size_t x = static_cast<std::size_t>(at[c]);
      for (std::size_t r = 0; r < 6; ++r) {
        R& entry = x < k ? w[x * ld + inside_ + r] : w[(inside_ + r) * ld + x];
        entry += work[c][r];
      }
    }
    for (std::size_t r = 0; r < 6; ++r) {
      Six<R> f;
      for (std::size_t c = 0; c < 6; ++c) f[c] = work[end + c][r];
      f = resultant(f, arm);
      for (std::size_t c = 0; c <= r; ++c) w[(inside_ + c) * ld + inside_ + r] += f[c];
    }
  }

  const PreparedFrame<S>& p_;
  const RunStation& st_;
  std::size_t m_ = 0, inside_ = 0;
  std::vector<std::array<R, 144>> matrices_;  ///< of each sort of member
  std::vector<int> inner_;                    ///< six per node: number of a motion inside the cell
  std::vector<Vec3<R>> lever_;  ///< of each node from the reference point of its station (inside: of the first one)
  Vec3<R> reach_{};
};

}  // namespace baywork::detail
