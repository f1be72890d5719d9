// SPDX-License-Identifier: MIT
// The girder file's format, said once for both ways: every field by its key, unit and rule.
//
// Bindings name every member of a struct, so that a new member does not compile until it is written as well.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/girder/girder.hpp>
#include <baywork/json/format_connector.hpp>
#include <baywork/json/rule.hpp>
#include <baywork/json/words.hpp>

namespace baywork::detail {

template <class Io>
void fields(Io& io, material::StrengthStep& v) {
  auto& [max_thickness, yield, ultimate, haz_yield, haz_ultimate] = v;
  io.number("max_thickness_m", max_thickness, Rule::positive);
  io.number("yield_Pa", yield, Rule::positive);
  io.number("ultimate_Pa", ultimate, Rule::positive);
  io.number("haz_yield_Pa", haz_yield, Rule::positive);
  io.number("haz_ultimate_Pa", haz_ultimate, Rule::positive);
}

template <class Io>
void fields(Io& io, material::Material& v) {
  auto& [name, source, family, buckling_class, product, E, G, density, thermal_expansion, steps, alloy_group, welding] =
      v;
  io.words("name", name);
  io.words("source", source);
  io.choice("family", family);
  io.choice("buckling_class", buckling_class);
  io.choice("product", product);
  io.choice("alloy_group", alloy_group);
  io.choice("welding", welding);
  io.number("E_Pa", E, Rule::positive);
  io.number("G_Pa", G, Rule::positive);
  io.number("density_kg_per_m3", density, Rule::not_negative);
  io.number("thermal_expansion_per_K", thermal_expansion, Rule::any);
  io.list("strengths", steps, Amount::steps);
}

template <class Io>
void fields(Io& io, PlateElement<double>& v) {
  auto& [c, t, outstand, bends_about_y] = v;
  io.number("c_m", c, Rule::not_negative);
  io.number("t_m", t, Rule::not_negative);
  io.flag("outstand", outstand);
  io.flag("bends_about_y", bends_about_y);
}

template <class Io>
void fields(Io& io, SectionData<double>& v) {
  auto& [designation, kind, area, Iy, Iz, Wel_y, Wel_z, Wpl_y, Wpl_z, shear_y, shear_z, It, Wt, iy, iz, perimeter,
         height, width, wall, inner_radius, web_area_y, web_area_z, plates, n_plates] = v;
  io.words("designation", designation);
  io.choice("shape", kind);
  io.number("area_m2", area, Rule::positive);
  io.number("Iy_m4", Iy, Rule::positive);
  io.number("Iz_m4", Iz, Rule::positive);
  io.number("Wel_y_m3", Wel_y, Rule::positive);
  io.number("Wel_z_m3", Wel_z, Rule::positive);
  io.number("Wpl_y_m3", Wpl_y, Rule::not_negative);
  io.number("Wpl_z_m3", Wpl_z, Rule::not_negative);
  io.number("shear_y_m2", shear_y, Rule::positive_or_rigid);
  io.number("shear_z_m2", shear_z, Rule::positive_or_rigid);
  io.number("It_m4", It, Rule::positive);
  io.number("Wt_m3", Wt, Rule::not_negative);
  io.number("iy_m", iy, Rule::not_negative);
  io.number("iz_m", iz, Rule::not_negative);
  io.number("perimeter_m", perimeter, Rule::not_negative);
  io.number("height_m", height, Rule::not_negative);
  io.number("width_m", width, Rule::not_negative);
  io.number("wall_m", wall, Rule::not_negative);
  io.number("inner_radius_m", inner_radius, Rule::not_negative);
  io.number("web_area_y_m2", web_area_y, Rule::not_negative);
  io.number("web_area_z_m2", web_area_z, Rule::not_negative);
  std::vector<PlateElement<double>> used(plates.begin(), plates.begin() + static_cast<std::ptrdiff_t>(n_plates));
  io.list("plates", used, Amount::plates);
  n_plates = used.size();
  for (std::size_t i = 0; i < n_plates; ++i) plates[i] = used[i];
}

template <class Io>
void fields(Io& io, WeldsAlong& v) {
  auto& [lines, width] = v;
  io.count("lines", lines, 999);
  io.number("width_m", width, Rule::not_negative);
}

template <class Io>
void fields(Io& io, WeldAcross& v) {
  auto& [at, width] = v;
  io.number("at_m", at, Rule::not_negative);
  io.number("width_m", width, Rule::not_negative);
}

/// The strength is not a field: it is the material's for the section's wall.
template <class Io>
void fields(Io& io, Bar& v) {
  auto& [section, material, strength, along, across, given] = v;
  io.material("material", material);
  io.object("section", section);
  if (io.has("welds_along", along.lines != 0 || bits_of(along.width) != 0)) io.object("welds_along", along);
  if (io.has("welds_across", !across.empty())) io.list("welds_across", across, Amount::parts);
}

template <class Io>
void fields(Io& io, Joint& v) {
  auto& [in_plane, out_of_plane, to_chord_surface] = v;
  io.number("in_plane_Nm_per_rad", in_plane, Rule::stiffness);
  io.number("out_of_plane_Nm_per_rad", out_of_plane, Rule::stiffness);
  io.flag("to_chord_surface", to_chord_surface);
}

/// A panel as words and bars: what a braced or open panel was made of.
struct PanelText {
  Layout layout = Layout::none;
  bool from_first_chord = true;  ///< of the layouts that can begin at either chord
  Bar brace{}, cross{};          ///< `cross`: an open panel's cross member, or a braced one's post
  Joint joint{};
  double gap = 0;
};

inline bool begins_at_either(Layout l) { return l == Layout::single_direction || l == Layout::alternating; }

template <class Io>
void fields(Io& io, PanelText& v) {
  io.choice("layout", v.layout);
  if (v.layout == Layout::none) return;
  if (v.layout == Layout::open) {
    io.bar("cross_member", v.cross);
  } else {
    if (begins_at_either(v.layout)) io.flag("from_first_chord", v.from_first_chord);
    io.bar("brace", v.brace);
    const bool needs_posts = v.layout != Layout::alternating && v.layout != Layout::crossed;
    io.bar("post", v.cross, !needs_posts);
    io.number("gap_m", v.gap, Rule::any);
  }
  io.object("joint", v.joint);
}

struct FaceText {
  std::string name;
  std::size_t first_chord = 0, second_chord = 0, span = 1, offset = 0;
  std::vector<PanelText> panels;
};

template <class Io>
void fields(Io& io, FaceText& v) {
  io.words("name", v.name);
  io.count("first_chord", v.first_chord);
  io.count("second_chord", v.second_chord);
  io.count("span_bays", v.span);
  io.count("offset_bays", v.offset);
  io.list("panels", v.panels, Amount::panels);
}

template <class Io>
void fields(Io& io, Chord& v) {
  auto& [name, bar] = v;
  io.words("name", name);
  io.bar("bar", bar);
}

template <class Io>
void fields(Io& io, Diaphragms& v) {
  auto& [bar, ends, every, at, crossed] = v;
  io.bar("bar", bar, true);
  io.flag("ends", ends);
  io.count("every_bays", every);
  io.counts("at_stations", at, Amount::stations);
  io.flag("crossed", crossed);
}

inline bool is_free(const Restraint& r) {
  return r.kind == Restraint::Kind::free && bits_of(r.stiffness) == 0 && bits_of(r.displacement) == 0;
}

template <class Io>
void fields(Io& io, Hold& v) {
  auto& [chord, x, motion] = v;
  io.chord("chord", chord);
  io.number("x_m", x, Rule::any);
  const auto held = [](auto& in, std::array<Restraint, 6>& all) {
    for (std::size_t i = 0; i < all.size(); ++i) {
      const char* key = json_word(static_cast<Motion>(i));
      if (!in.has(key, !is_free(all[i]))) continue;
      in.object(key, all[i], [i](auto& each, Restraint& r) {
        auto& [kind, stiffness, displacement] = r;
        each.choice("held", kind);
        each.number(i < 3 ? "stiffness_N_per_m" : "stiffness_Nm_per_rad", stiffness, Rule::stiffness);
        each.number(i < 3 ? "displacement_m" : "displacement_rad", displacement, Rule::any);
      });
    }
  };
  io.object("motions", motion, held);
}

template <class Io>
void fields(Io& io, Supports& v) {
  auto& [way, at, stiffness, holds] = v;
  io.choice("way", way);
  io.numbers("at_m", at, Amount::parts);
  io.number("stiffness_N_per_m", stiffness, Rule::stiffness);
  io.list("holds", holds, Amount::parts);
}

/// The girder, its faces as texts.
struct GirderText {
  Girder girder;
  std::vector<FaceText> faces;
};

template <class Io>
void fields(Io& io, GirderText& v) {
  auto& [stations, chords, joints, made_faces, diaphragms, splices, connector, supports] = v.girder;
  io.numbers("stations_m", stations, Amount::stations);
  io.list("chords", chords, Amount::parts);
  io.points("joints_m", joints, stations.size(), chords.size());
  io.list("faces", v.faces, Amount::parts);
  PartNames names;
  for (const Chord& c : chords) names.chords.push_back(c.name);
  for (const FaceText& f : v.faces) names.faces.push_back(f.name);
  io.names(std::move(names));
  io.object("diaphragms", diaphragms);
  io.counts("splices", splices, Amount::stations);
  if (io.has("connector", is_described(connector))) io.object("connector", connector);
  io.object("supports", supports);
}

}  // namespace baywork::detail
