// SPDX-License-Identifier: MIT
// How a girder is held: ready ways in the trade's words, or any chord joint by itself.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <utility>
#include <vector>

#include <baywork/core/motion.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/girder/names.hpp>

namespace baywork {

/// One chord joint at the station at `x` (distance along the axis [m]) held in any of its six motions.
template <Scalar S = double>
struct BasicHold {
  ChordRef chord;
  S x = S(0);
  std::array<BasicRestraint<S>, 6> motion{};

  BasicHold fix(std::initializer_list<Motion> motions, const S& displacement = S(0)) const {
    BasicHold h = *this;
    for (const Motion m : motions) {
      h.motion[static_cast<std::size_t>(m)].kind = BasicRestraint<S>::Kind::fixed;
      h.motion[static_cast<std::size_t>(m)].displacement = displacement;
    }
    return h;
  }
  BasicHold spring(Motion m, const S& stiffness) const {
    BasicHold h = *this;
    h.motion[static_cast<std::size_t>(m)].kind = BasicRestraint<S>::Kind::spring;
    h.motion[static_cast<std::size_t>(m)].stiffness = stiffness;
    return h;
  }
};
using Hold = BasicHold<double>;
inline Hold hold(ChordRef chord, double x) { return {std::move(chord), x, {}}; }

/// A way of holding the whole girder, turned into holds when its chords and stations are known.
///
/// simply_supported: lower chords at both ends along y and z, along x at the first station's first lower chord.
/// hung: upper chords at the given places along z (`stiffness` of each line, infinity for rigid) and y; x as above.
///       Slings do not hold sideways: the y hold stands for guys, and its reaction must be carried by them.
/// cantilever: all six motions of every chord joint at the first station.
/// continuous: as simply supported, at the given places.
/// Where the chords held at a place stand in one vertical line, all chords there are also held along y (a fork), or
/// nothing would keep the girder from rolling over.
template <Scalar S = double>
struct BasicSupports {
  enum class Way : std::uint8_t { individual, simply_supported, hung, cantilever, continuous } way = Way::individual;
  std::vector<S> at;                     ///< places along the axis [m], for hung and continuous
  S stiffness = S(rigid_stiffness);      ///< vertical, of each hold [N/m]
  std::vector<BasicHold<S>> holds;       ///< further single holds

  BasicSupports with(BasicHold<S> h) const {
    BasicSupports s = *this;
    s.holds.push_back(std::move(h));
    return s;
  }
};
using Supports = BasicSupports<double>;

template <Scalar S = double>
BasicSupports<S> simply_supported() {
  return {BasicSupports<S>::Way::simply_supported, {}, S(rigid_stiffness), {}};
}
template <Scalar S = double>
BasicSupports<S> cantilever() {
  return {BasicSupports<S>::Way::cantilever, {}, S(rigid_stiffness), {}};
}
template <Scalar S = double>
BasicSupports<S> hung_at(std::vector<S> places, const S& stiffness = S(rigid_stiffness)) {
  return {BasicSupports<S>::Way::hung, std::move(places), stiffness, {}};
}
inline Supports hung_at(std::initializer_list<double> places) { return hung_at<double>(std::vector<double>(places)); }
template <Scalar S = double>
BasicSupports<S> continuous_over(std::vector<S> places, const S& stiffness = S(rigid_stiffness)) {
  return {BasicSupports<S>::Way::continuous, std::move(places), stiffness, {}};
}
inline Supports continuous_over(std::initializer_list<double> places) {
  return continuous_over<double>(std::vector<double>(places));
}
inline Supports held_by(std::initializer_list<Hold> holds) {
  return {Supports::Way::individual, {}, rigid_stiffness, std::vector<Hold>(holds)};
}

}  // namespace baywork
