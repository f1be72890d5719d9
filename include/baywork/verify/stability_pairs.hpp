// SPDX-License-Identifier: MIT
// The pairs of chords of a girder that may buckle together with the face between them, and where they are held.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include <baywork/hand_check/girder_beam.hpp>
#include <baywork/response/analysis.hpp>

namespace baywork::verify {

/// Two chords that a face joins. They buckle in the face's plane, square to the girder's axis.
struct ChordPair {
  std::size_t face = 0, first = 0, second = 0;  ///< face and chords of the girder
  Vec3<> across{};                              ///< from the first chord to the second, unit
  std::vector<std::size_t> held{};              ///< stations that keep both chords from moving along `across`, rising
  bool clamped_first = false, clamped_last = false;  ///< the first and last of them keep the face from turning as well
};

namespace detail {

/// Finds what keeps a station's joints in place, from its fixed supports alone: springs may give way.
class HoldFinder {
 public:
  explicit HoldFinder(const Analysis& analysis) : model_(analysis.model()), girder_(model_.girder) {}

  bool holds(std::size_t station, const ChordPair& pair) const {
    const bool first = holds_chord(station, pair.first, pair.across),
               second = holds_chord(station, pair.second, pair.across);
    if ((first || second) && has_bar(station, pair.face)) return true;
    return (first && second) || (keeps_shape(station) && holds_section(station));
  }
  /// Both chords are held along the girder there, so that the face between them cannot turn in its plane.
  bool clamps(std::size_t station, const ChordPair& pair) const {
    return fixed(station, pair.first, Motion::ux) && fixed(station, pair.second, Motion::ux);
  }

 private:
  bool fixed(std::size_t station, std::size_t chord, Motion m) const {
    for (const Support& s : model_.frame.supports)
      if (s.node == model_.chord_node(station, chord))
        return s.motion[static_cast<std::size_t>(m)].kind == Restraint::Kind::fixed;
    return false;
  }
  bool holds_chord(std::size_t station, std::size_t chord, const Vec3<>& d) const {
    const bool y = fixed(station, chord, Motion::uy), z = fixed(station, chord, Motion::uz);
    return (y || magnitude(d.y) < 1e-9) && (z || magnitude(d.z) < 1e-9);
  }
  /// The face has a cross member or a ring bar there, which hands a hold of one chord on to the other.
  bool has_bar(std::size_t station, std::size_t face) const {
    return !model_.faces[face].cross_members[station].empty() || girder_.diaphragms.has(station, girder_.bays());
  }
  bool keeps_shape(std::size_t station) const {
    if (girder_.diaphragms.has(station, girder_.bays())) return true;
    if (girder_.chords.size() != 3) return false;
    for (const FaceMembers& f : model_.faces)
      if (f.cross_members[station].empty()) return false;
    return model_.faces.size() == 3;
  }
  /// Neither motion along y and z nor roll is left to a section that keeps its shape: the fixed motions of its joints
  /// have rank 3 in (y, z, roll).
  bool holds_section(std::size_t station) const {
    std::vector<std::array<double, 3>> rows;
    double size = 0;
    for (std::size_t c = 0; c < girder_.chords.size(); ++c)
      size = larger(size, length(girder_.joint(station, c) - girder_.joint(station, 0)));
    for (std::size_t c = 0; c < girder_.chords.size(); ++c) {
      const Vec3<> at = girder_.joint(station, c) - girder_.joint(station, 0);
      if (fixed(station, c, Motion::uy)) rows.push_back({1.0, 0.0, -at.z / size});
      if (fixed(station, c, Motion::uz)) rows.push_back({0.0, 1.0, at.y / size});
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        for (std::size_t k = 0; k < j; ++k) {
          const auto &a = rows[i], &b = rows[j], &c = rows[k];
          const double det = a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
                             a[2] * (b[0] * c[1] - b[1] * c[0]);
          if (magnitude(det) > 1e-6) return true;
        }
    return false;
  }

  const GirderModel& model_;
  const Girder& girder_;
};

}  // namespace detail

/// The pairs of all faces that have panels, of a straight prismatic girder.
inline std::vector<ChordPair> chord_pairs(const Analysis& analysis, const GirderBeam& beam) {
  const detail::HoldFinder finder(analysis);
  const Girder& g = analysis.girder();
  std::vector<ChordPair> out;
  for (const HandFace& f : beam.faces) {
    ChordPair p{f.face, f.first_chord, f.second_chord, {0.0, f.ty(), f.tz()}};
    for (std::size_t i = 0; i < g.stations.size(); ++i)
      if (finder.holds(i, p)) p.held.push_back(i);
    if (!p.held.empty()) {
      p.clamped_first = finder.clamps(p.held.front(), p);
      p.clamped_last = finder.clamps(p.held.back(), p);
    }
    out.push_back(std::move(p));
  }
  return out;
}

/// Length [m] of the column that a pair is taken for, ends held and free to turn: the longest stretch between holds;
/// where the pair is compressed beyond its last hold too, that and twice each overhang. An overhang of length a and the
/// span l before it buckle at no less than a column of l + 2 a (checked by an eigenvalue problem); one that is clamped
/// at no less than 2 a. 0: nothing says so.
inline double column_length(const ChordPair& p, const std::vector<double>& stations, bool overhangs_too) {
  if (p.held.empty()) return 0.0;
  double span = 0;
  for (std::size_t i = 1; i < p.held.size(); ++i) span = larger(span, stations[p.held[i]] - stations[p.held[i - 1]]);
  const double before = stations[p.held.front()], after = stations.back() - stations[p.held.back()];
  if (!overhangs_too) return span;
  const auto overhang = [&](double a, bool clamped) { return a > 0.0 && !clamped && span == 0.0 ? -1.0 : 2.0 * a; };
  const double one = overhang(before, p.clamped_first), other = overhang(after, p.clamped_last);
  if (one < 0.0 || other < 0.0) return 0.0;
  return span + one + other;
}

}  // namespace baywork::verify
