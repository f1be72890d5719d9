// SPDX-License-Identifier: MIT
// How hard the two chords of a face are pushed in a response.
#pragma once

#include <cstddef>

#include <baywork/response/cut_forces.hpp>
#include <baywork/response/response.hpp>
#include <baywork/verify/stability_pairs.hpp>

namespace baywork::verify::detail {

/// N of a member in its middle; tension positive [N]. Loads at its ends may be on it or on its joints.
inline double axial_force(const Response& r, std::size_t member) {
  const double middle = 0.5 * r.analysis().axes(member).length;
  return baywork::detail::cut_forces(r.answer().members[member].start, r.loads_on(member), middle, CutSide::after).N;
}

/// Pushes in the two chords of a face at an inner station [N]: the mean of the bays beside it, so that the chords'
/// steps at zigzag diagonals even out.
class PairForces {
 public:
  PairForces(const Response& r, const ChordPair& pair) : r_(r), pair_(pair) {}
  /// Of both together; compression positive. Of a chord alone where both are the same.
  double sum(std::size_t station) const {
    return push(station, pair_.first) + (pair_.first == pair_.second ? 0.0 : push(station, pair_.second));
  }
  /// Between the two.
  double difference(std::size_t station) const {
    return magnitude(push(station, pair_.first) - push(station, pair_.second));
  }

 private:
  double push(std::size_t station, std::size_t chord) const {
    double sum = 0;
    for (const std::size_t bay : {station - 1, smaller(station, r_.girder().bays() - 1)})
      sum -= axial_force(r_, r_.model().chord_member(bay, chord));
    return 0.5 * sum;
  }
  const Response& r_;
  const ChordPair& pair_;
};

}  // namespace baywork::verify::detail
