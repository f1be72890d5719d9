// SPDX-License-Identifier: MIT
// What members with the same numbers share: stiffness and geometry, once in the scalar and once to twice its digits.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/solve/detail/twofold.hpp>
#include <baywork/solve/member_loading.hpp>
#include <baywork/solve/member_stiffness.hpp>

namespace baywork::detail {

/// A member in the number type R, wherever it lies.
template <class R>
struct MemberIn {
  R length = R(0);
  MemberStiffness<R> stiffness{};
  MemberGeometry<R> geometry{};

  Vec3<R> to_global(const Vec3<R>& l) const { return l.x * geometry.x + l.y * geometry.y + l.z * geometry.z; }
};

template <class S>
struct MemberSort {
  MemberIn<S> plain{};
  MemberIn<accurate_t<S>> accurate{};  ///< residuals are those of the frame as it was given
  BasicMember<accurate_t<S>> wide{};   ///< what loads along it meet
};

/// Sections and end springs of m in the number type R: all that its loading needs.
template <class R, class S>
BasicMember<R> widened(const BasicMember<S>& m) {
  const auto end = [](const BasicMemberEnd<S>& e) {
    return BasicMemberEnd<R>{R(e.axial), R(e.shear_y), R(e.shear_z), R(e.torsion), R(e.about_y), R(e.about_z), {}};
  };
  const BasicFrameSection<S>& s = m.section;
  BasicMember<R> w;
  w.kind = m.kind;
  w.section = {R(s.E), R(s.G), R(s.A), R(s.Iy), R(s.Iz), R(s.J), R(s.shear_y), R(s.shear_z), R(0), R(s.thermal_expansion)};
  w.start = end(m.start);
  w.end = end(m.end);
  return w;
}

/// A load along a member in the number type R.
template <class R, class S>
BasicMemberLoad<R> widened(const BasicMemberLoad<S>& l) {
  const auto wide = [](const Vec3<S>& v) { return Vec3<R>{R(v.x), R(v.y), R(v.z)}; };
  return {static_cast<typename BasicMemberLoad<R>::Kind>(l.kind), l.member, R(l.a), R(l.b), wide(l.first), wide(l.last)};
}

/// Adds the loads on nodes to forces, six per node.
template <class R, class S>
void add_node_loads(const BasicFrameLoads<S>& loads, std::vector<R>& force) {
  for (const BasicNodeLoad<S>& l : loads.on_nodes)
    for (std::size_t k = 0; k < 3; ++k) {
      force[6 * l.node + k] += R(l.force[k]);
      force[6 * l.node + 3 + k] += R(l.couple[k]);
    }
}

/// Adds to the forces on its two nodes (six each) what loads along a member put on them; `held`: what the loads' own
/// strains would take.
template <class R>
void add_loading_forces(const MemberIn<R>& m, const MemberLoading<R>& l, const MemberModes<R>& held, R* start, R* end) {
  m.geometry.add_end_forces(held, start, end);
  const Vec3<R> fs = m.to_global(l.start), fe = m.to_global(l.end);
  const Vec3<R> ms = l.start_torque * m.geometry.x + cross(m.geometry.arm_start, fs);
  const Vec3<R> me = l.end_torque * m.geometry.x + cross(m.geometry.arm_end, fe);
  for (std::size_t k = 0; k < 3; ++k) {
    start[k] -= fs[k];
    start[3 + k] -= ms[k];
    end[k] -= fe[k];
    end[3 + k] -= me[k];
  }
}

template <class S>
MemberSort<S> sort_of_member(const BasicFrame<S>& frame, const BasicMember<S>& m) {
  using A = accurate_t<S>;
  MemberSort<S> s;
  const MemberAxes<A> axes = axes_in<A, S>(frame, m);
  s.wide = widened<A>(m);
  s.accurate.length = axes.length;
  s.accurate.stiffness = stiffness_of(s.wide, axes.length);
  s.accurate.geometry = geometry_in<A, S>(axes, m);
  const MemberIn<A>& a = s.accurate;
  const auto plain = [](const A& x) { return rounded<S>(x); };
  const auto plain3 = [&](const Vec3<A>& v) { return Vec3<S>{plain(v.x), plain(v.y), plain(v.z)}; };
  const auto bending = [&](const BendingStiffness<A>& b) {
    return BendingStiffness<S>{plain(b.start), plain(b.cross), plain(b.end), plain(b.shear)};
  };
  s.plain.length = plain(a.length);
  s.plain.stiffness = {plain(a.stiffness.axial), plain(a.stiffness.torsion), bending(a.stiffness.about_z), bending(a.stiffness.about_y)};
  s.plain.geometry = {plain3(a.geometry.x), plain3(a.geometry.y), plain3(a.geometry.z), plain(a.geometry.per_length),
                      plain3(a.geometry.arm_start), plain3(a.geometry.arm_end), a.geometry.has_arms};
  return s;
}

/// Sorts the members of a frame: those whose numbers agree to the last bit (and whose ends differ by the same exact
/// vector) are worked out once. A girder of equal bays has a handful of sorts, however long it is.
template <class S>
class MemberSorter {
 public:
  /// The sort of m, made anew unless one like it is known.
  std::uint32_t operator()(const BasicFrame<S>& frame, const BasicMember<S>& m, std::vector<MemberSort<S>>& sorts) {
    if constexpr (std::floating_point<S>) {
      const Key key = key_of(frame, m);
      for (const std::uint32_t known : followers_[last_])  // girders repeat: most often it is what came next before
        if (known != none && same_bits(keys_[known], key)) return seen(known);
      std::uint64_t hash = 0x9E37'79B9'7F4A'7C15ULL;
      for (const S& v : key) hash = (hash ^ bits(v)) * 0xD6E8'FEB8'6659'FD93ULL, hash ^= hash >> 32;
      auto [at, last] = known_.equal_range(hash);
      for (; at != last; ++at)
        if (keys_[at->second] == key) return seen(at->second);
      const auto index = static_cast<std::uint32_t>(sorts.size());
      known_.emplace(hash, index);
      keys_.push_back(key);
      followers_.push_back({none, none});
      seen(index);
    }
    sorts.push_back(sort_of_member(frame, m));
    return static_cast<std::uint32_t>(sorts.size() - 1);
  }

 private:
  using Key = std::array<S, 39>;
  static constexpr std::uint32_t none = static_cast<std::uint32_t>(-1);

  static bool same_bits(const Key& a, const Key& b) {
    return std::equal(a.begin(), a.end(), b.begin(), [](const S& x, const S& y) { return x == y && std::signbit(x) == std::signbit(y); });
  }
  /// Notes that it came after the last one.
  std::uint32_t seen(std::uint32_t sort) {
    std::array<std::uint32_t, 2>& after = followers_[last_];
    if (after[0] != sort) after = {sort, after[0]};
    last_ = sort + 1;
    return sort;
  }

  static std::uint64_t bits(const S& v) { return bits_of(static_cast<double>(v)); }
  static Key key_of(const BasicFrame<S>& frame, const BasicMember<S>& m) {
    using A = accurate_t<S>;
    Key k{};
    std::size_t n = 0;
    const auto put = [&](const S& v) { k[n++] = v; };
    const auto put3 = [&](const Vec3<S>& v) { put(v.x), put(v.y), put(v.z); };
    const BasicFrameSection<S>& s = m.section;
    for (const S& v : {s.E, s.G, s.A, s.Iy, s.Iz, s.J, s.shear_y, s.shear_z, s.thermal_expansion}) put(v);
    for (const BasicMemberEnd<S>* e : {&m.start, &m.end}) {
      for (const S& v : {e->axial, e->shear_y, e->shear_z, e->torsion, e->about_y, e->about_z}) put(v);
      put3(e->offset);
    }
    put3(m.up);
    put(m.roll);
    put(m.kind == MemberKind::axial ? S(1) : S(0));
    const Vec3<S>&from = frame.nodes[m.from].at, &to = frame.nodes[m.to].at;
    for (std::size_t i = 0; i < 3; ++i) {
      const A d = A(A(to[i]) + A(m.end.offset[i])) - A(A(from[i]) + A(m.start.offset[i]));
      put(d.hi);
      put(d.lo);
    }
    return k;
  }

  std::unordered_multimap<std::uint64_t, std::uint32_t> known_;
  std::vector<Key> keys_;
  std::vector<std::array<std::uint32_t, 2>> followers_{{none, none}};  ///< of the beginning, then of each sort: the last two
  std::size_t last_ = 0;
};

}  // namespace baywork::detail
