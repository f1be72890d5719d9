// SPDX-License-Identifier: MIT
// Cross-frames in a station's plane: what keeps a cross-section's shape.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <vector>

#include <baywork/core/scalar.hpp>
#include <baywork/girder/bar.hpp>

namespace baywork {

/// Stations that have a diaphragm. Each is made of axial bars in the station's plane: one diagonal for every chord
/// that can be triangulated from the first chord (all of them where `crossed`), and ring bars in the faces that have
/// no cross member there. Two and three chords cannot distort and get ring bars alone.
template <Scalar S = double>
struct BasicDiaphragms {
  BasicBar<S> bar{};
  bool ends = false;            ///< at the first and last station
  std::size_t every = 0;        ///< at every so-manieth station from the start; 0: none
  std::vector<std::size_t> at;  ///< and at these stations, counted from 0
  bool crossed = false;

  bool none() const noexcept { return !ends && every == 0 && at.empty(); }
  bool has(std::size_t station, std::size_t last) const {
    if (ends && (station == 0 || station == last)) return true;
    if (every > 0 && station % every == 0) return true;
    for (const std::size_t s : at)
      if (s == station) return true;
    return false;
  }
};
using Diaphragms = BasicDiaphragms<double>;

template <Scalar S>
BasicDiaphragms<S> end_diaphragms(const BasicBar<S>& bar) {
  return {bar, true, 0, {}, false};
}
template <Scalar S>
BasicDiaphragms<S> diaphragms_every(std::size_t bays, const BasicBar<S>& bar) {
  return {bar, true, bays, {}, false};
}
template <Scalar S>
BasicDiaphragms<S> diaphragms_at(std::initializer_list<std::size_t> stations, const BasicBar<S>& bar) {
  return {bar, false, 0, std::vector<std::size_t>(stations), false};
}

}  // namespace baywork
