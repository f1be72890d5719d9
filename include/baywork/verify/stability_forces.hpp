// SPDX-License-Identifier: MIT
// How hard the two chords of a face are pushed in a response.
#pragma once

#include <cstddef>
#include <vector>

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
  PairForces(const Response& r, const ChordPair& pair)
      : PairForces(r.model(), pair, [&](std::size_t m) { return axial_force(r, m); }) {}
  /// `axial(member)` is N in its middle.
  template <class Axial>
  PairForces(const GirderModel& model, const ChordPair& pair, const Axial& axial)
      : alone_(pair.first == pair.second),
        first_(pushes(model, pair.first, axial)),
        second_(alone_ ? first_ : pushes(model, pair.second, axial)) {}
  /// Inner stations are 1 ... last() - 1; a girder of one bay counts with the joint at its end.
  static std::size_t last(const Girder& g) { return larger(g.bays(), std::size_t{2}); }

  /// Of both together; compression positive. Of a chord alone where both are the same.
  double sum(std::size_t station) const { return first_[station] + (alone_ ? 0.0 : second_[station]); }
  /// Between the two.
  double difference(std::size_t station) const { return magnitude(first_more(station)); }
  /// By how much the first is pushed more than the second.
  double first_more(std::size_t station) const { return first_[station] - second_[station]; }

 private:
  /// By station.
  template <class Axial>
  static std::vector<double> pushes(const GirderModel& model, std::size_t chord, const Axial& axial) {
    const std::size_t bays = model.girder.bays();
    std::vector<double> out(last(model.girder), 0.0);
    double before = axial(model.chord_member(0, chord));
    for (std::size_t s = 1; s < out.size(); ++s) {
      const double after = s < bays ? axial(model.chord_member(s, chord)) : before;
      out[s] = -0.5 * (before + after);
      before = after;
    }
    return out;
  }

  bool alone_;
  std::vector<double> first_, second_;
};

}  // namespace baywork::verify::detail
