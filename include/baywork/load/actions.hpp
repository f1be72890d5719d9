// SPDX-License-Identifier: MIT
// What acts on a girder, in girder words.
#pragma once

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include <baywork/core/motion.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/girder/names.hpp>

namespace baywork {

inline constexpr double standard_gravity = 9.80665;  ///< m/s² (ISO 80000-3)

/// Places along the axis [m], measured like stations; whole girder where not given.
template <Scalar S = double>
struct BasicReach {
  std::optional<S> from{}, to{};
};
using Reach = BasicReach<double>;

/// Mass of all bars times gravity, along −z unless said otherwise.
template <Scalar S = double>
struct BasicSelfWeight {
  S gravity = S(standard_gravity);
  S factor = S(1);  ///< for what the model does not know: fittings, welds
  Vec3<S> towards{S(0), S(0), S(-1)};  ///< of any length: a girder that is tilted, or pushed sideways by its weight
};

/// A line load [N per metre of axis], given as a whole and shared equally between the chords named; straight from
/// `first` at the reach's start to `last` at its end.
template <Scalar S = double>
struct BasicLineLoad {
  std::vector<ChordRef> chords;
  Vec3<S> first{}, last{};
  BasicReach<S> reach{};
};

/// A force [N] and couple [Nm] at any place along a chord.
template <Scalar S = double>
struct BasicChordPoint {
  ChordRef chord;
  S x = S(0);  ///< along the axis [m]
  Vec3<S> force{}, couple{};
};

/// A force and couple on a cross member or post, at a fraction of its length from the face's first chord.
template <Scalar S = double>
struct BasicCrossMemberPoint {
  FaceRef face;
  std::size_t station = 0;
  S fraction = S(0);
  Vec3<S> force{}, couple{};
};

/// Which bars a pressure on a panel goes to: each edge takes what is nearest to it (45° lines from the corners), the
/// chords take half each, or the cross members do. Where an edge has no cross member its share goes to the chords.
enum class CarriedBy : std::uint8_t { nearest_edge, chords, cross_members };

/// Pressure on a cladded face [Pa], positive against the outside of the girder (towards its inside); on a ladder's
/// web positive from the left.
template <Scalar S = double>
struct BasicFacePressure {
  FaceRef face;
  S pressure = S(0);
  CarriedBy carried_by = CarriedBy::nearest_edge;
  BasicReach<S> reach{};  ///< whole panels: those whose middle lies within it
};

/// Wind on every bare bar: c q D along the wind's part square to the bar, without shielding (safe side). `pressure` q
/// [Pa], `direction` where the wind blows to. The default coefficients are those of round bars below the drag crisis and
/// of square sharp-edged ones (EN 1991-1-4, 7.9.2 and 7.6, values from memory); en1991_bars.hpp has others.
template <Scalar S = double>
struct BasicWindOnBars {
  S pressure = S(0);
  Vec3<S> direction{};
  S force_coefficient = S(1.2);  ///< of round bars
  S flat_coefficient = S(2.1);   ///< of all others
};

/// A change of temperature [K] of all bars, or of one chord.
template <Scalar S = double>
struct BasicWarming {
  S change = S(0);
  std::optional<ChordRef> chord{};
};

/// Temperature that changes straight across the girder [K/m], zero on its axis: bars are warmed by where they lie.
template <Scalar S = double>
struct BasicWarmingAcross {
  S per_metre_y = S(0), per_metre_z = S(0);
};

/// A held or sprung joint moves with its ground [m, rad].
template <Scalar S = double>
struct BasicSettlement {
  ChordRef chord;
  S x = S(0);
  Motion motion = Motion::uz;
  S displacement = S(0);
};

template <Scalar S = double>
using BasicAction = std::variant<BasicSelfWeight<S>, BasicLineLoad<S>, BasicChordPoint<S>, BasicCrossMemberPoint<S>,
                                 BasicFacePressure<S>, BasicWindOnBars<S>, BasicWarming<S>, BasicWarmingAcross<S>, BasicSettlement<S>>;
using Action = BasicAction<double>;

// Ready words. Weights and downward loads are given as positive numbers.

inline BasicSelfWeight<> self_weight(double factor = 1.0) { return {standard_gravity, factor, {0, 0, -1}}; }
/// w [N/m] downwards in all, shared by the chords.
inline BasicLineLoad<> line_load(std::vector<ChordRef> chords, double w, Reach reach = {}) {
  return {std::move(chords), {0, 0, -w}, {0, 0, -w}, reach};
}
inline BasicLineLoad<> line_load(std::vector<ChordRef> chords, const Vec3<>& first, const Vec3<>& last, Reach reach = {}) {
  return {std::move(chords), first, last, reach};
}
/// P [N] downwards at x along a chord.
inline BasicChordPoint<> point_load(ChordRef chord, double x, double P) { return {std::move(chord), x, {0, 0, -P}, {}}; }
inline BasicChordPoint<> point_load(ChordRef chord, double x, const Vec3<>& force, const Vec3<>& couple = {}) {
  return {std::move(chord), x, force, couple};
}
/// P [N] downwards on the cross member of a face at a station (counted from 0).
inline BasicCrossMemberPoint<> cross_member_load(FaceRef face, std::size_t station, double fraction, double P) {
  return {std::move(face), station, fraction, {0, 0, -P}, {}};
}
inline BasicCrossMemberPoint<> cross_member_load(FaceRef face, std::size_t station, double fraction, const Vec3<>& force,
                                                 const Vec3<>& couple = {}) {
  return {std::move(face), station, fraction, force, couple};
}
/// Wind pressure on a cladded face; negative for suction.
inline BasicFacePressure<> wind_on(FaceRef face, double pressure, CarriedBy by = CarriedBy::nearest_edge, Reach reach = {}) {
  return {std::move(face), pressure, by, reach};
}
inline BasicWindOnBars<> wind_on_bars(double pressure, const Vec3<>& direction, double force_coefficient = 1.2,
                                      double flat_coefficient = 2.1) {
  return {pressure, direction, force_coefficient, flat_coefficient};
}
inline BasicWarming<> warming(double kelvin) { return {kelvin, {}}; }
inline BasicWarming<> warming_of(ChordRef chord, double kelvin) { return {kelvin, std::move(chord)}; }
inline BasicWarmingAcross<> warming_across(double per_metre_y, double per_metre_z) { return {per_metre_y, per_metre_z}; }
inline BasicSettlement<> settlement(ChordRef chord, double x, Motion motion, double displacement) {
  return {std::move(chord), x, motion, displacement};
}

}  // namespace baywork
