// SPDX-License-Identifier: MIT
// A girder and its load cases as a JSON file, and back without loss (schema: docs/schema/girder.schema.json).
#pragma once

#include <cstddef>
#include <ostream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/girder/panel_place.hpp>
#include <baywork/girder/validate.hpp>
#include <baywork/json/format_loads.hpp>
#include <baywork/json/panel_text.hpp>
#include <baywork/json/reader.hpp>
#include <baywork/json/writer.hpp>

namespace baywork {

/// What a girder file holds. SI units, which the keys name; stations, bays, bars and materials are counted from 0;
/// "rigid" is an infinite stiffness.
struct GirderFile {
  Girder girder;
  std::vector<LoadCase> load_cases{};
};

namespace detail {

inline constexpr const char* girder_format = "baywork girder";
inline constexpr std::size_t girder_version = 1;

inline FaceText face_text(const Girder& g, std::size_t f) {
  const auto& [name, first_chord, second_chord, face] = g.faces[f];
  FaceText out{name, first_chord, second_chord, face.span(), face.offset(), {}};
  if (face.empty()) return out;
  const std::vector<std::size_t> at = face.boundaries(g.bays());
  std::vector<PanelSite> sites;
  for (std::size_t p = 0; p + 1 < at.size(); ++p)
    sites.push_back(panel_site(g, g.faces[f], at, p));
  if (face.given() == 1) {
    out.panels.push_back(text_of(face.panel(0), sites, name + " face"));
    return out;
  }
  for (std::size_t p = 0; p < sites.size(); ++p)
    out.panels.push_back(
        text_of(face.panel(p), {sites[p]}, "bay " + std::to_string(at[p] + 1) + ", " + name + " face"));
  return out;
}

inline material::Material read_material(const Json& at, JsonSource& source) {
  material::Material m;
  JsonReader in(at, source);
  fields(in, m);
  in.done();
  source.within(at, [&m] { material::validate(m); });
  return m;
}

/// The bar of a file's list, with the strength that its material gives for its wall.
inline Bar read_bar(const Json& at, JsonSource& source) {
  Bar bar;
  JsonReader in(at, source);
  fields(in, bar);
  in.done();
  source.within(at, [&bar] {
    validate(bar.section);
    if (!bar.material.steps.empty()) bar.strength = material::strength(bar.material, bar.section.wall);
  });
  bar.given = true;
  return bar;
}

inline Girder made(GirderText&& text) {
  for (FaceText& f : text.faces) {
    std::vector<AnyPanel> panels;
    for (const PanelText& p : f.panels) panels.push_back(panel_of(p));
    text.girder.faces.push_back(
        {std::move(f.name), f.first_chord, f.second_chord, Face(std::move(panels)).spanning(f.span, f.offset)});
  }
  return std::move(text.girder);
}

}  // namespace detail

/// Each bar and material is written once. The same girder gives the same bytes. Throws BadDescription for a girder that
/// is not valid, a panel of a user's own type, or a bar whose strength is not its material's: files hold no such thing.
inline void write_json(std::ostream& out, const GirderFile& file) {
  validate(file.girder);
  detail::JsonLists lists;
  detail::JsonWriter girder(lists, "girder");
  detail::GirderText text{file.girder, {}};
  for (std::size_t f = 0; f < file.girder.faces.size(); ++f) text.faces.push_back(detail::face_text(file.girder, f));
  detail::fields(girder, text);
  detail::JsonWriter cases(lists, "load cases");
  std::vector<LoadCase> load_cases = file.load_cases;
  cases.list("load_cases", load_cases, detail::Amount::parts);
  detail::Written all = {{"format", detail::girder_format}, {"version", detail::girder_version}};
  all["materials"] = std::move(lists.materials);
  all["bars"] = std::move(lists.bars);
  all["girder"] = girder.take();
  all["load_cases"] = std::move(cases.take()["load_cases"]);
  detail::print_json(out, all);
  out << '\n';
}

/// Reads what write_json has written: the same girder, bit for bit. Anything else, from a broken file to a girder that
/// means nothing, throws BadDescription with its place in the file and the girder part; nothing is half made.
inline GirderFile read_girder_json(std::string_view text, const JsonLimits& limits = {}) {
  const detail::Json root = detail::parse_json(text, limits);
  detail::JsonSource source{root, limits};
  detail::JsonReader in(root, source);
  std::string format;
  std::size_t version = 0;
  in.words("format", format);
  in.count("version", version);
  if (format != detail::girder_format || version != detail::girder_version)
    source.refuse(
        root, "it is of the format " + detail::shown(format) + ", version " + std::to_string(version),
        std::string(detail::girder_format) + ", version " + std::to_string(detail::girder_version) + ", is accepted");
  GirderFile out;
  in.each("materials", detail::Amount::parts,
          [&source](const detail::Json& at) { source.materials.push_back(detail::read_material(at, source)); });
  in.each("bars", detail::Amount::stations,
          [&source](const detail::Json& at) { source.bars.push_back(detail::read_bar(at, source)); });
  detail::GirderText girder;
  in.object("girder", girder);
  out.girder = detail::made(std::move(girder));
  source.within(root["girder"], [&out] { validate(out.girder); });
  in.list("load_cases", out.load_cases, detail::Amount::parts);
  in.done();
  return out;
}

}  // namespace baywork
