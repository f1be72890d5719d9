// SPDX-License-Identifier: MIT
// The girder file's load cases and actions, said once for both ways.
#pragma once

#include <array>
#include <cstddef>

#include <baywork/json/format.hpp>
#include <baywork/load/load_case.hpp>

namespace baywork::detail {

template <class Io>
void reach_fields(Io& io, Reach& v) {
  auto& [from, to] = v;
  io.number("from_m", from);
  io.number("to_m", to);
}
template <class Io>
void fields(Io& io, BasicSelfWeight<double>& v) {
  auto& [gravity, factor, towards] = v;
  io.number("gravity_m_per_s2", gravity, Rule::any);
  io.number("factor", factor, Rule::not_negative);
  const bool down = bits_of(towards.x) == 0 && bits_of(towards.y) == 0 && towards.z == -1.0;
  if (io.has("towards", !down)) io.vector("towards", towards);
}
template <class Io>
void fields(Io& io, BasicLineLoad<double>& v) {
  auto& [chords, first, last, reach] = v;
  io.chords("chords", chords);
  io.vector("first_N_per_m", first);
  io.vector("last_N_per_m", last);
  reach_fields(io, reach);
}
template <class Io>
void fields(Io& io, BasicChordPoint<double>& v) {
  auto& [chord, x, force, couple] = v;
  io.chord("chord", chord);
  io.number("x_m", x, Rule::any);
  io.vector("force_N", force);
  io.vector("couple_Nm", couple);
}
template <class Io>
void fields(Io& io, BasicCrossMemberPoint<double>& v) {
  auto& [face, station, fraction, force, couple] = v;
  io.face("face", face);
  io.count("station", station);
  io.number("fraction", fraction, Rule::any);
  io.vector("force_N", force);
  io.vector("couple_Nm", couple);
}
template <class Io>
void fields(Io& io, BasicFacePressure<double>& v) {
  auto& [face, pressure, carried_by, reach] = v;
  io.face("face", face);
  io.number("pressure_Pa", pressure, Rule::any);
  io.choice("carried_by", carried_by);
  reach_fields(io, reach);
}
template <class Io>
void fields(Io& io, BasicWindOnBars<double>& v) {
  auto& [pressure, direction, force_coefficient, flat_coefficient] = v;
  io.number("pressure_Pa", pressure, Rule::any);
  io.vector("direction", direction);
  io.number("force_coefficient", force_coefficient, Rule::any);
  const bool usual = bits_of(flat_coefficient) == bits_of(BasicWindOnBars<double>{}.flat_coefficient);
  if (io.has("flat_coefficient", !usual)) io.number("flat_coefficient", flat_coefficient, Rule::any);
}
template <class Io>
void fields(Io& io, BasicWarming<double>& v) {
  auto& [change, chord] = v;
  io.number("change_K", change, Rule::any);
  io.chord("chord", chord);
}
template <class Io>
void fields(Io& io, BasicWarmingAcross<double>& v) {
  auto& [per_metre_y, per_metre_z] = v;
  io.number("along_y_K_per_m", per_metre_y, Rule::any);
  io.number("along_z_K_per_m", per_metre_z, Rule::any);
}
template <class Io>
void fields(Io& io, BasicSettlement<double>& v) {
  auto& [chord, x, motion, displacement] = v;
  io.chord("chord", chord);
  io.number("x_m", x, Rule::any);
  io.choice("motion", motion);
  io.number(static_cast<std::size_t>(motion) < 3 ? "displacement_m" : "displacement_rad", displacement, Rule::any);
}

/// In the order of Action's alternatives.
inline constexpr std::array action_words{"self-weight",   "line load",    "chord point load", "cross member point load",
                                         "face pressure", "wind on bars", "warming",          "warming across",
                                         "settlement"};

template <class Io>
void fields(Io& io, Action& v) {
  fields_of_kind(io, "action", action_words, v);
}

template <class Io>
void fields(Io& io, LoadCase& v) {
  auto& [name, nature, actions, alternative] = v;
  io.words("name", name);
  io.choice("nature", nature);
  io.words("alternative", alternative);
  io.list("actions", actions, Amount::stations);
}

}  // namespace baywork::detail
