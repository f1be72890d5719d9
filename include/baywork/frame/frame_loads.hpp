// SPDX-License-Identifier: MIT
// One load case of a frame as plain data: on nodes, along members, and as motions of supports.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame.hpp>

namespace baywork {

/// Force [N] and couple [Nm] on a node, global axes.
template <Scalar S = double>
struct BasicNodeLoad {
  std::size_t node = 0;
  Vec3<S> force{}, couple{};
};

/// What acts along a member. Local axes of the member; positions a <= b from the start of its flexible length [m].
template <Scalar S = double>
struct BasicMemberLoad {
  enum class Kind : std::uint8_t {
    line,         ///< N/m, from `first` at a to `last` at b, straight between
    force,        ///< N at a (`first`)
    couple,       ///< Nm at a (`first`), on the cross-section
    temperature,  ///< K: mean of the section from first.x at the start to last.x at the end of the member;
                  ///< first.y and first.z are the gradients across it, dT/dy and dT/dz [K/m]
  } kind = Kind::line;
  std::size_t member = 0;
  S a = S(0), b = S(0);
  Vec3<S> first{}, last{};
};

/// A motion of a fixed or sprung support in this load case [m, rad], on top of the frame's own.
template <Scalar S = double>
struct BasicSupportMotion {
  std::size_t node = 0;
  Motion motion = Motion::uz;
  S displacement = S(0);
};

template <Scalar S = double>
struct BasicFrameLoads {
  std::vector<BasicNodeLoad<S>> on_nodes;
  std::vector<BasicMemberLoad<S>> on_members;
  std::vector<BasicSupportMotion<S>> motions;

  void clear() noexcept {
    on_nodes.clear();
    on_members.clear();
    motions.clear();
  }
  void force(std::size_t node, const Vec3<S>& f) { on_nodes.push_back({node, f, {}}); }
  void couple(std::size_t node, const Vec3<S>& m) { on_nodes.push_back({node, {}, m}); }
  /// Line load in the member's local axes over its whole flexible length `l`.
  void line(std::size_t member, const S& l, const Vec3<S>& q) { line(member, S(0), l, q, q); }
  void line(std::size_t member, const S& a, const S& b, const Vec3<S>& at_a, const Vec3<S>& at_b) {
    on_members.push_back({BasicMemberLoad<S>::Kind::line, member, a, b, at_a, at_b});
  }
  void force_on(std::size_t member, const S& a, const Vec3<S>& f) {
    on_members.push_back({BasicMemberLoad<S>::Kind::force, member, a, a, f, {}});
  }
  void couple_on(std::size_t member, const S& a, const Vec3<S>& m) {
    on_members.push_back({BasicMemberLoad<S>::Kind::couple, member, a, a, m, {}});
  }
  /// Uniform temperature change [K] and gradients across the section [K/m].
  void temperature(std::size_t member, const S& mean, const S& gradient_y = S(0), const S& gradient_z = S(0)) {
    on_members.push_back({BasicMemberLoad<S>::Kind::temperature, member, S(0), S(0), {mean, gradient_y, gradient_z}, {mean, S(0), S(0)}});
  }
  void settle(std::size_t node, Motion motion, const S& displacement) { motions.push_back({node, motion, displacement}); }

  /// Appends f times another case.
  void add(const BasicFrameLoads& other, const S& f) {
    for (BasicNodeLoad<S> l : other.on_nodes) {
      l.force = f * l.force;
      l.couple = f * l.couple;
      on_nodes.push_back(l);
    }
    for (BasicMemberLoad<S> l : other.on_members) {
      l.first = f * l.first;
      l.last = f * l.last;
      on_members.push_back(l);
    }
    for (BasicSupportMotion<S> l : other.motions) {
      l.displacement = S(f * l.displacement);
      motions.push_back(l);
    }
  }
};

using NodeLoad = BasicNodeLoad<double>;
using MemberLoad = BasicMemberLoad<double>;
using SupportMotion = BasicSupportMotion<double>;
using FrameLoads = BasicFrameLoads<double>;

}  // namespace baywork
