// SPDX-License-Identifier: MIT
// Wind after EN 1991-1-4: peak velocity pressure of a site, and the load cases of a cladded face.
#pragma once

#include <cmath>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/text.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/load/actions.hpp>
#include <baywork/load/load_case.hpp>

/// Recommended values of EN 1991-1-4:2005+A1:2010; nationally determined parameters are fields. Values from memory:
/// check them against the standard and the national annex, which also says which basic velocity a site has.
namespace baywork::en1991 {

/// Terrain categories 0, I, II, III and IV (Table 4.1).
enum class Terrain : std::uint8_t { sea, flat, farmland, suburb, town };

/// Roughness length z0 and least height z_min [m] (Table 4.1).
struct Roughness {
  double z0 = 0, z_min = 0;
};
inline Roughness roughness(Terrain t) {
  switch (t) {
    case Terrain::sea: return {0.003, 1};
    case Terrain::flat: return {0.01, 1};
    case Terrain::farmland: return {0.05, 2};
    case Terrain::suburb: return {0.3, 5};
    case Terrain::town: return {1.0, 10};
  }
  return {};
}

struct Site {
  double basic_velocity = 0;  ///< v_b,0 [m/s]: ten-minute mean at 10 m over farmland, once in fifty years
  Terrain terrain = Terrain::farmland;
  double direction = 1, season = 1;    ///< c_dir, c_season
  double orography = 1;                ///< c_o
  double turbulence = 1;               ///< k_l
  double air_density = 1.25;           ///< [kg/m³]
};

inline void validate(const Site& s) {
  const char* place = "wind site";
  require::positive(s.basic_velocity, place, "basic velocity");
  require::positive(s.direction, place, "directional factor");
  require::positive(s.season, place, "season factor");
  require::positive(s.orography, place, "orography factor");
  require::positive(s.turbulence, place, "turbulence factor");
  require::positive(s.air_density, place, "air density");
}

namespace detail {
/// ln(z / z0), z at least z_min; heights above 200 m are outside the standard (4.3.2).
inline double log_height(const Site& s, double z) {
  require::not_negative(z, "wind site", "height");
  if (z > 200.0) fail<OutsideScope>("wind site", "a height of " + text::number(z) + " m", "heights up to 200 m are accepted (EN 1991-1-4 4.3.2)");
  const Roughness r = roughness(s.terrain);
  return std::log(larger(z, r.z_min) / r.z0);
}
}  // namespace detail

/// v_b = c_dir c_season v_b,0 (4.1) [m/s].
inline double basic_velocity(const Site& s) { return s.direction * s.season * s.basic_velocity; }

/// v_m(z) = c_r c_o v_b, c_r = k_r ln(z/z0), k_r = 0.19 (z0/0.05)^0.07 (4.3) to (4.5) [m/s].
inline double mean_velocity(const Site& s, double z) {
  validate(s);
  const double k_r = 0.19 * std::pow(roughness(s.terrain).z0 / 0.05, 0.07);
  return k_r * detail::log_height(s, z) * s.orography * basic_velocity(s);
}

/// I_v(z) = k_l / (c_o ln(z/z0)) (4.7).
inline double turbulence_intensity(const Site& s, double z) {
  validate(s);
  return s.turbulence / (s.orography * detail::log_height(s, z));
}

/// q_p(z) = (1 + 7 I_v) ½ ρ v_m² (4.8) [Pa].
inline double peak_pressure(const Site& s, double z) {
  const double v = mean_velocity(s, z);
  return (1.0 + 7.0 * turbulence_intensity(s, z)) * 0.5 * s.air_density * v * v;
}

/// ½ ρ v² of a gust [Pa]: the limit up to which a structure stays in service is given as a gust velocity (common
/// practice; the operations plan says who measures it, where, and what is then taken down).
inline double gust_pressure(double velocity, double air_density = 1.25) {
  require::not_negative(velocity, "wind", "gust velocity");
  require::positive(air_density, "wind", "air density");
  return 0.5 * air_density * velocity * velocity;
}

/// A cladded face as a signboard (7.4.3) [m].
struct Sign {
  double width = 0, height = 0;
  double lower_edge = 0;  ///< above the ground
};
/// c_f = 1.80 where the lower edge stands more than h/4 above the ground, or the board is no wider than high. Any other
/// is a free-standing wall (7.4.1), which is not covered.
inline double force_coefficient(const Sign& s) {
  require::positive(s.width, "sign", "width");
  require::positive(s.height, "sign", "height");
  require::not_negative(s.lower_edge, "sign", "height of its lower edge");
  if (!(s.lower_edge > s.height / 4) && s.width > s.height)
    fail<OutsideScope>("sign", "its lower edge is " + text::number(s.lower_edge) + " m above the ground",
                       "more than a quarter of its height, or a board no wider than high, is accepted: else it is a wall (EN 1991-1-4 7.4.1)");
  return 1.8;
}
/// z_e = z_g + h/2 (7.4.3) [m].
inline double reference_height(const Sign& s) { return s.lower_edge + s.height / 2; }
/// c_f q_p(z_e) [Pa], c_s c_d = 1.
inline double pressure_on(const Sign& s, const Site& site) { return force_coefficient(s) * peak_pressure(site, reference_height(s)); }

/// The cases of a pressure [Pa] on a cladded face, of which one acts at a time: on the whole; with its resultant a
/// quarter of the width towards either end (7.4.3 (2): the same force on one half; with a middle panel, both halves take
/// it, on the safe side); and a quarter of the height up and down, so that the girder is always twisted (common
/// practice: the standard's eccentricity is along the width alone). Cases of the same word `alternative` exclude each
/// other: winds in service and out of service, from any side.
inline std::vector<LoadCase> wind_on_sign(const Girder& g, const FaceRef& face, double pressure, const std::string& name = "wind",
                                          const std::string& alternative = "wind") {
  require::finite(pressure, "wind on sign", "pressure");
  const GirderFace& f = g.faces[g.face(face)];
  const double middle = g.span() / 2;
  const auto one = [&](const char* where, std::vector<Action> actions) {
    return LoadCase{name + where, Nature::wind, std::move(actions), alternative};
  };
  // square to the face, towards the inside: a quarter of the height's share goes from one chord to the other
  const std::size_t end = g.bays();
  const auto across = [&](std::size_t station) { return g.joint(station, f.second_chord) - g.joint(station, f.first_chord); };
  Vec3<> inside{};
  for (std::size_t c = 0; c < g.chords.size(); ++c) inside += g.joint(0, c) - g.joint(0, f.first_chord);
  Vec3<> square = unit(cross(g.joint(end, f.first_chord) - g.joint(0, f.first_chord), across(0)));
  const double towards = dot(square, inside);
  if (towards < 0.0 || (towards <= 1e-9 * length(across(0)) && square.y > 0.0)) square = -square;  // a ladder's: from the left
  const auto twist = [&](double sign) {
    const double p = sign * pressure / 4;
    const Vec3<> first = (p * length(across(0))) * square, last = (p * length(across(end))) * square;
    return std::vector<Action>{wind_on(face, pressure), line_load({ChordRef(f.second_chord)}, first, last),
                               line_load({ChordRef(f.first_chord)}, -first, -last)};
  };
  const bool second_is_up = across(0).z >= 0.0;
  return {one(" on the whole", {wind_on(face, pressure)}),
          one(" towards the start", {wind_on(face, 2 * pressure, CarriedBy::nearest_edge, {0.0, middle})}),
          one(" towards the end", {wind_on(face, 2 * pressure, CarriedBy::nearest_edge, {middle, g.span()})}),
          one(" high", twist(second_is_up ? 1 : -1)), one(" low", twist(second_is_up ? -1 : 1))};
}

}  // namespace baywork::en1991
