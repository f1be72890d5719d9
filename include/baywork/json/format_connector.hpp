// SPDX-License-Identifier: MIT
// The fields of connectors in files: one list for reading and for writing.
#pragma once

#include <baywork/girder/connector.hpp>
#include <baywork/json/fields.hpp>
#include <baywork/json/rule.hpp>
#include <baywork/json/words.hpp>

namespace baywork::detail {

template <class Io>
void fields(Io& io, ConnectorFit& v) {
  auto& [slack, axial, shear_y, shear_z, torsion, about_y, about_z] = v;
  io.number("slack_m", slack, Rule::not_negative);
  io.number("axial_N_per_m", axial, Rule::positive_or_rigid);
  io.number("shear_y_N_per_m", shear_y, Rule::positive_or_rigid);
  io.number("shear_z_N_per_m", shear_z, Rule::positive_or_rigid);
  io.number("torsion_Nm_per_rad", torsion, Rule::stiffness);
  io.number("about_y_Nm_per_rad", about_y, Rule::stiffness);
  io.number("about_z_Nm_per_rad", about_z, Rule::stiffness);
}

template <class Io>
void fields(Io&, RigidSplice&) {}

template <class Io>
void fields(Io& io, PinCoupler& v) {
  auto& [pin, hole, blade, fork, gap, end, side, reach, plate_material, pin_material, welded, replaceable, throat, axis,
         fit] = v;
  io.number("pin_m", pin, Rule::positive);
  io.number("hole_m", hole, Rule::positive);
  io.number("blade_m", blade, Rule::positive);
  io.number("fork_m", fork, Rule::positive);
  io.number("gap_m", gap, Rule::not_negative);
  io.number("end_m", end, Rule::positive);
  io.number("side_m", side, Rule::positive);
  io.number("reach_m", reach, Rule::positive);
  io.material("plate_material", plate_material);
  io.material("pin_material", pin_material);
  io.flag("welded", welded);
  io.flag("replaceable", replaceable);
  io.number("throat_m", throat, Rule::not_negative);
  io.choice("axis", axis);
  io.object("fit", fit);
}

template <class Io>
void fields(Io& io, Bolt& v) {
  auto& [diameter, stress_area, head, grade] = v;
  io.number("diameter_m", diameter, Rule::positive);
  io.number("stress_area_m2", stress_area, Rule::positive);
  io.number("head_m", head, Rule::not_negative);
  io.choice("grade", grade);
}

template <class Io>
void fields(Io& io, BoltedEndPlate& v) {
  auto& [plate, diameter, bolt_circle, bolts, bolt, hole, eccentricity, throat, plate_material, fit] = v;
  io.number("plate_m", plate, Rule::positive);
  io.number("diameter_m", diameter, Rule::positive);
  io.number("bolt_circle_m", bolt_circle, Rule::positive);
  io.count("bolts", bolts);
  io.object("bolt", bolt);
  io.number("hole_m", hole, Rule::positive);
  io.number("eccentricity_m", eccentricity, Rule::not_negative);
  io.number("throat_m", throat, Rule::positive);
  io.material("plate_material", plate_material);
  io.object("fit", fit);
}

template <class Io>
void fields(Io& io, Spigot& v) {
  auto& [diameter, wall, reach, pin, hole, pins, end, spigot_material, pin_material, welded, fit] = v;
  io.number("diameter_m", diameter, Rule::positive);
  io.number("wall_m", wall, Rule::not_negative);
  io.number("reach_m", reach, Rule::positive);
  io.number("pin_m", pin, Rule::positive);
  io.number("hole_m", hole, Rule::positive);
  io.count("pins", pins);
  io.number("end_m", end, Rule::positive);
  io.material("spigot_material", spigot_material);
  io.material("pin_material", pin_material);
  io.flag("welded", welded);
  io.object("fit", fit);
}

template <class Io>
void fields(Io& io, Connector& v) {
  fields_of_kind(io, "kind", connector_names, v);
}

}  // namespace baywork::detail
