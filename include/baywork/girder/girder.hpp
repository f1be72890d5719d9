// SPDX-License-Identifier: MIT
// The general girder: a ring of chords at stations along an axis, faces between neighbours, and how it is held.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/address.hpp>
#include <baywork/core/error.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/girder/bar.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/girder/diaphragms.hpp>
#include <baywork/girder/face.hpp>
#include <baywork/girder/names.hpp>
#include <baywork/girder/supports.hpp>

namespace baywork {

template <Scalar S = double>
struct BasicChord {
  std::string name;
  BasicBar<S> bar{};
};

template <Scalar S = double>
struct BasicGirderFace {
  std::string name;
  std::size_t first_chord = 0, second_chord = 0;
  BasicFace<S> panels{};
};

/// What ready-made girders become, and what any other ring of chords is typed in as.
template <Scalar S = double>
struct BasicGirder {
  std::vector<S> stations;               ///< distance along the axis, rising, first 0 [m]
  std::vector<BasicChord<S>> chords;
  std::vector<Vec3<S>> joints;           ///< of chord c at station i: joints[i * chords.size() + c] [m]
  std::vector<BasicGirderFace<S>> faces;
  BasicDiaphragms<S> diaphragms{};
  std::vector<std::size_t> splices;      ///< stations where modules meet
  Connector connector{};                 ///< of every chord there; not said: rigid
  BasicSupports<S> supports{};

  std::size_t bays() const noexcept { return stations.empty() ? 0 : stations.size() - 1; }
  S span() const { return stations.back(); }
  const Vec3<S>& joint(std::size_t station, std::size_t chord) const { return joints[station * chords.size() + chord]; }

  PartNames names() const {
    PartNames n;
    for (const BasicChord<S>& c : chords) n.chords.push_back(c.name);
    for (const BasicGirderFace<S>& f : faces) n.faces.push_back(f.name);
    return n;
  }
  std::size_t chord(const ChordRef& ref) const { return ref.in(names().chords); }
  std::size_t face(const FaceRef& ref) const { return ref.in(names().faces); }
  bool is_splice(std::size_t station) const {
    for (const std::size_t s : splices)
      if (s == station) return true;
    return false;
  }
  /// The bay that holds the place x along the axis (the last one for its end); -1 outside.
  int bay_at(double x) const {
    const double slack = 1e-9 * value_of(span());
    if (!(x >= -slack) || !(x <= value_of(span()) + slack)) return -1;
    for (std::size_t i = 0; i + 1 < stations.size(); ++i)
      if (x < value_of(stations[i + 1])) return static_cast<int>(i);
    return static_cast<int>(bays()) - 1;
  }
  /// The station at the place x, within a millionth of the span; -1 if there is none.
  int station_at(double x) const {
    for (std::size_t i = 0; i < stations.size(); ++i)
      if (std::abs(x - value_of(stations[i])) <= 1e-6 * value_of(span())) return static_cast<int>(i);
    return -1;
  }
};
using Girder = BasicGirder<double>;
using Chord = BasicChord<double>;
using GirderFace = BasicGirderFace<double>;

}  // namespace baywork
