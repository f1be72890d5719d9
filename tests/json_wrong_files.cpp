// SPDX-License-Identifier: MIT
// Girder files that are wrong: each is refused with its place in the file and the girder part, nothing half made.
#include <doctest/doctest.h>

#include <cstddef>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/json.hpp>

#include "support/tubes.hpp"

namespace {

using namespace baywork;
using Json = nlohmann::json;

const std::string& sound() {
  static const std::string text = [] {
    const auto side = braced(alternating, brace_bar(), cross_bar());
    BoxGirder box{.bays = 4, .bay_length = 0.5, .width = 0.5, .depth = 0.5, .chord = chord_bar()};
    box.faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side};
    for (std::size_t i = 0; i < 4; ++i) box.faces.bottom = box.faces.bottom.with_panel(i, 4, open(cross_bar()));
    box.diaphragms = diaphragms_at({0, 2, 4}, brace_bar());
    box.modules = {.bays_each = 2};
    box.supports =
        held_by({hold("bottom left", 0.0).fix({Motion::ux, Motion::uy, Motion::uz}),
                 hold("bottom right", 0.0).fix({Motion::uz}), hold("bottom left", 2.0).fix({Motion::uy, Motion::uz}),
                 hold("bottom right", 2.0).spring(Motion::uz, 1e6)});
    std::ostringstream out;
    write_json(
        out,
        GirderFile{
            box.girder(),
            {{"self-weight", Nature::permanent, {self_weight()}},
             {"wind", Nature::wind, {wind_on(Side::left, 200.0), settlement("bottom left", 2.0, Motion::uz, -0.01)}}}});
    return out.str();
  }();
  return text;
}

/// The message of the fault that reading the text ends in; empty where it is read.
std::string fault(const std::string& text, const JsonLimits& limits = {}) {
  try {
    read_girder_json(text, limits);
  } catch (const BadDescription& e) {
    CHECK(!e.place().empty());
    return e.what();
  }
  return "";
}
void refused(const std::string& text, const std::vector<std::string>& fragments, const JsonLimits& limits = {}) {
  const std::string message = fault(text, limits);
  INFO("message: " << message);
  CHECK(!message.empty());
  CHECK(message.size() < 1000);
  CHECK(message.find("; ") != std::string::npos);  // says what would be accepted
  for (const std::string& f : fragments) {
    INFO("wanted: " << f);
    CHECK(message.find(f) != std::string::npos);
  }
}
/// A file with one value changed.
void with(Json file, const char* pointer, const Json& value, const std::vector<std::string>& fragments) {
  CAPTURE(std::string(pointer));
  file.at(Json::json_pointer(pointer)) = value;
  refused(file.dump(), fragments);
}
void with(const char* pointer, const Json& value, const std::vector<std::string>& fragments) {
  with(Json::parse(sound()), pointer, value, fragments);
}
/// The sound file's text with a part of it put in place of another.
std::string with_text(const std::string& what, const std::string& by) {
  std::string text = sound();
  const std::size_t at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), by);
}

}  // namespace

TEST_CASE("the sound file is read, and its girder makes a frame") {
  CHECK(fault(sound()) == "");
  CHECK(model_of(read_girder_json(sound()).girder).frame.members.size() > 40);
  CHECK(fault("\xEF\xBB\xBF" + sound()) == "");  // a byte-order mark before it does no harm
}

TEST_CASE("text that is not JSON: line and column") {
  refused("", {"girder file, line 1, column 1", "unexpected end of input"});
  refused("{\n  \"format\": \"baywork girder\",\n  \"version\" 1\n}",
          {"girder file, line 3, column 13", "expected ':'"});
  refused(sound() + "x", {"invalid literal", "expected end of input"});
  refused(with_text("\"stations_m\": [0.0,", "\"stations_m\": [NaN,"), {"line ", "column 18", "invalid literal"});
  refused(with_text("\"stations_m\": [0.0,", "\"stations_m\": [-Infinity,"), {"column ", "invalid number"});
  refused(with_text("\"stations_m\": [0.0,", "\"stations_m\": [1e999,"), {"column ", "number overflow"});
  refused(with_text("bottom left", "bottom \xFF left"), {"ill-formed UTF-8"});
  refused(with_text("bottom left", "bottom \n left"), {"control character"});
  refused(with_text("bottom left", "\\ud800 left"), {"invalid string"});
  refused(std::string(3, '\0'), {"line 1, column 1"});
}

TEST_CASE("cut off anywhere, it is refused") {
  std::size_t cuts = 0;
  for (std::size_t n = 0; n + 1 < sound().size(); n += n < 600 ? 1 : 37) {
    const std::string message = fault(sound().substr(0, n));
    CHECK(!message.empty());
    CHECK(message.find("line ") != std::string::npos);
    ++cuts;
  }
  CHECK(cuts > 700);
}

TEST_CASE("limits: size, depth, values, text, stations, parts") {
  refused("[" + std::string(200'000, '['), {"deeper than 16", "up to 16 are accepted"});
  std::string deep = "{\"girder\": ";
  for (int i = 0; i < 100'000; ++i) deep += "{\"a\":";
  refused(deep, {"girder", "deeper than 16"});
  JsonLimits few;
  few.bytes = 1000;
  refused(sound(), {"girder file: it has " + std::to_string(sound().size()) + " bytes", "up to 1000"}, few);
  few = {};
  few.values = 100;
  refused(sound(), {"more than 100 values"}, few);
  few = {};
  few.text = 10;
  refused(sound(), {"a text has ", "up to 10"}, few);
  few = {};
  few.stations = 3;
  refused(sound(), {"stations (/girder/stations_m)", "5 stations_m are given", "up to 3"}, few);
  few = {};
  few.parts = 3;
  refused(sound(), {"/girder/chords", "4 chords are given", "up to 3"}, few);
  few = {};
  few.stations = 5;  // 4 + 1 + 1 + 1 panels are fewer than twice as many
  CHECK(fault(sound(), few) == "");
  Json file = Json::parse(sound());
  Json& panels = file["girder"]["faces"][2]["panels"];
  while (panels.size() < 6) panels.push_back(panels[0]);
  refused(file.dump(), {"top face (/girder/faces/2/panels)", "6 panels are given", "up to 5"}, few);
  // memory follows what is read: a list of a million empty lists is stopped while it is read
  std::string lists = "[[]";
  for (int i = 0; i < 3'000'000; ++i) lists += ",[]";
  refused(lists, {"more than 2000000 values"});
}

TEST_CASE("keys: twice, unknown, missing") {
  refused(with_text("\"splices\": [2]", "\"splices\": [2], \"splices\": []"),
          {"girder (/girder)", "the key splices is given twice"});
  refused(with_text("\"E_Pa\"", "\"E_Pa\": 1.0, \"E_Pa\""),
          {"material EN AW-6082 T6", "(/materials/0)", "given twice"});
  with("/girder/faces/1",
       Json::parse(sound())["girder"]["faces"][1].patch(
           Json::parse(R"([{"op": "add", "path": "/span_m", "value": 1}])")),
       {"right face (/girder/faces/1/span_m)", "the key span_m is not known here", "span_bays"});
  with("/girder/faces/0/panels/2",
       Json::parse(sound())["girder"]["faces"][0]["panels"][2].patch(
           Json::parse(R"([{"op": "remove", "path": "/joint"}])")),
       {"bay 3, bottom face (/girder/faces/0/panels/2)", "the key joint is missing"});
  Json file = Json::parse(sound());
  file["comment"] = "hello";
  refused(file.dump(), {"girder file (/comment)", "the key comment is not known here"});
  refused("{}", {"girder file (the whole)", "the key format is missing"});
}

TEST_CASE("another format or version") {
  with("/version", 2, {"version 2", "version 1, is accepted"});
  with("/format", "baywork results", {"baywork results"});
  refused("[]", {"girder file (the whole)", "it is array", "an object is accepted"});
  refused("null", {"it is null"});
}

TEST_CASE("wrong types and numbers that cannot be, in girder words") {
  with("/girder/faces/0/panels/2/joint/in_plane_Nm_per_rad", -1.0,
       {"bay 3, bottom face (/girder/faces/0/panels/2/joint/in_plane_Nm_per_rad)", "is -1", "\"rigid\""});
  with("/girder/faces/0/panels/2/joint/in_plane_Nm_per_rad", "stiff", {"bay 3, bottom face", "the words \"stiff\""});
  with("/girder/faces/3/panels/0/gap_m", nullptr, {"left face (/girder/faces/3/panels/0/gap_m)", "is null"});
  with("/girder/faces/3/panels/0/layout", "zigzag", {"left face", "layout is zigzag", "alternating, crossed, K"});
  with("/girder/faces/3/panels/0/brace", 7, {"left face", "brace is 7, but there are 3 bars"});
  with("/girder/faces/3/panels/0/brace", nullptr, {"left face", "brace is null"});
  with("/girder/faces/0/panels/1/cross_member", -1, {"bay 2, bottom face", "cross_member is -1", "whole number"});
  with("/girder/faces/3/panels/0/from_first_chord", 1, {"left face", "from_first_chord is 1", "true and false"});
  with("/girder/stations_m/3", "1.5", {"station 4 (/girder/stations_m/3)", "\"1.5\""});
  with("/girder/joints_m/2/1/0", true, {"station 3, bottom right chord (/girder/joints_m/2/1/0)", "has true"});
  with("/girder/joints_m/2/1", {1.0, 2.0}, {"station 3, bottom right chord", "not a list of three"});
  with("/girder/joints_m", {}, {"girder (/girder/joints_m)", "is null", "a list"});
  with("/girder/chords/2/name", 5, {"chord 3 (/girder/chords/2/name)", "name is 5"});
  with("/bars/0/section/wall_m", -0.004, {"bar 1 (round tube", "wall_m is -0.004", "zero or above"});
  with("/bars/1/section/area_m2", 0, {"bar 2 (round tube", "area_m2 is 0", "above zero"});
  with("/bars/1/section/shear_y_m2", 0, {"shear_y_m2 is 0", "or \"rigid\""});
  with("/bars/1/section/Iy_m4", "rigid", {"bar 2", "Iy_m4 is the words \"rigid\""});
  with("/bars/0/section/plates", Json::array({1, 2, 3, 4, 5}), {"5 plates are given", "up to 4"});
  with("/bars/0/material", 1, {"bar 1", "material is 1, but there are 1 materials"});
  with("/materials/0/E_Pa", -7e10, {"material EN AW-6082 T6", "E_Pa is -7e+10"});
  with("/materials/0/family", "wood", {"family is wood", "steel, aluminium, other are accepted"});
  with("/girder/supports/way", "hanging", {"supports (/girder/supports/way)", "hanging", "hung"});
  with("/girder/supports/holds/1/chord", "bottom middle",
       {"support at 0 m, bottom middle chord", "no chord called bottom middle"});
  with("/girder/supports/holds/1/chord", 4, {"support at 0 m", "chord is 4", "below 4"});
  with("/girder/supports/holds/3/motions/uz/held", "glued",
       {"support at 2 m, bottom right chord", "held is glued", "free, fixed, spring"});
  with("/girder/diaphragms/every_bays", 1.5, {"diaphragms", "every_bays is 1.5", "whole number"});
  with("/girder/splices/0", -2, {"splices (/girder/splices/0)", "is -2"});
  with("/load_cases/1/nature", "storm", {"load case wind (/load_cases/1/nature)", "storm"});
  with("/load_cases/1/actions/0/face", "front", {"load case wind, action 1", "no face called front"});
  with("/load_cases/1/actions/0/pressure_Pa", {},
       {"load case wind, action 1 (/load_cases/1/actions/0/pressure_Pa)", "is null"});
  with("/load_cases/1/actions/1/action", "earthquake",
       {"load case wind, action 2", "action is earthquake", "settlement are accepted"});
  with("/load_cases/1/actions/1/motion", "rz", {"load case wind, action 2", "the key displacement_rad is missing"});
}

TEST_CASE("counts that do not fit each other, and what the library itself finds wrong") {
  Json file = Json::parse(sound());
  file["girder"]["joints_m"].erase(4);
  refused(file.dump(), {"girder (/girder/joints_m)", "4 are given", "5, one for each station"});
  file = Json::parse(sound());
  file["girder"]["joints_m"][1].erase(3);
  refused(file.dump(), {"station 2 (/girder/joints_m/1)", "3 are given", "4, one for each chord"});
  file = Json::parse(sound());
  file["girder"]["faces"][0]["panels"].erase(3);
  refused(file.dump(), {"bottom face (/girder)", "3 panels are given for 4"});
  with("/girder/stations_m/2", 0.25, {"station 3 (/girder)", "does not lie beyond the one before"});
  with("/girder/chords/3/name", "bottom left", {"bottom left chord (/girder)", "another chord has the same name"});
  with("/girder/faces/2/first_chord", 4, {"top face (/girder)", "does not lie between two chords"});
  with("/girder/faces/2/span_bays", 0, {"top face (/girder)", "span 0 bays"});
  with("/girder/faces/2/span_bays", 18446744073709551615U, {"top face (/girder)"});
  with("/girder/faces/0/offset_bays", 18446744073709551615U, {"bottom face (/girder)", "bays in"});
  with("/girder/splices/0", 4, {"splice (/girder)", "station 5"});
  with("/girder/supports/holds", Json::array(), {"girder (/girder)", "it has no supports"});
  with("/girder/supports/holds/2/x_m", 1.75, {"support at 1.75 m, bottom left chord", "no station is there"});
  with("/girder/diaphragms/at_stations/1", 5, {"diaphragm (/girder)", "station 6"});
  with("/materials/0/strengths/0/haz_yield_Pa", 1e12, {"(/materials/0)", "beside a weld is stronger"});
  Json thin = Json::parse(sound())["materials"][0]["strengths"][0];
  thin["max_thickness_m"] = 0.001;
  with("/materials/0/strengths", Json::array({thin}), {"(/bars/0)", "no strength is given for a wall of 5 mm"});
  with("/materials/0/product", "casting", {"material EN AW-6082 T6, extruded tube (/materials/0)", "it is a casting"});
}

TEST_CASE("splices' connectors, welds along bars, keys that may be left out") {
  Json file = Json::parse(sound());
  file["bars"][0]["welds_along"] = Json::parse(R"({"lines": 2, "width_m": 0.03})");
  file["bars"][0]["welds_across"] = Json::parse(R"([{"at_m": 0.3, "width_m": 0.05}, {"at_m": 0.9, "width_m": 0}])");
  file["load_cases"][0]["actions"][0]["towards"] = {0.0, 0.1, -1.0};
  file["load_cases"][1]["actions"].push_back(Json::parse(
      R"({"action": "wind on bars", "pressure_Pa": 200, "direction": [0, -1, 0], "force_coefficient": 1.2})"));
  file["load_cases"][1]["actions"][2]["flat_coefficient"] = 2.0;
  file["girder"]["connector"] = Json::parse(R"({
    "kind": "pin and fork", "pin_m": 0.016, "hole_m": 0.017, "blade_m": 0.012, "fork_m": 0.008, "gap_m": 0.001,
    "end_m": 0.022, "side_m": 0.02, "reach_m": 0.05, "plate_material": 0, "pin_material": 0, "welded": true,
    "replaceable": false, "throat_m": 0.004, "axis": "level", "fit": {"slack_m": 0.0003, "axial_N_per_m": 1e8,
    "shear_y_N_per_m": "rigid", "shear_z_N_per_m": "rigid", "torsion_Nm_per_rad": "rigid",
    "about_y_Nm_per_rad": 0, "about_z_Nm_per_rad": 1e5}})");
  REQUIRE(fault(file.dump()) == "");
  const std::string place = "connector of the splices (/girder/connector";
  with(file, "/girder/connector", nullptr, {place + ")", "it is null", "an object"});
  with(file, "/girder/connector/kind", "glue",
       {place + "/kind)", "glue", "rigid splice, pin and fork, bolted end plates, spigot are accepted"});
  with(file, "/girder/connector/kind", "spigot", {place + ")", "the key diameter_m is missing"});
  with(file, "/girder/connector/kind", "rigid splice", {place + "/", "is not known here"});
  with(file, "/girder/connector/pin_m", 0, {place + "/pin_m)", "pin_m is 0", "above zero"});
  with(file, "/girder/connector/axis", "z", {place + "/axis)", "axis is z", "level, upright are accepted"});
  with(file, "/girder/connector/plate_material", 1, {place, "plate_material is 1, but there are 1 materials"});
  with(file, "/girder/connector/fit/axial_N_per_m", 0, {place + "/fit/axial_N_per_m)", "is 0", "or \"rigid\""});
  with(file, "/girder/connector/fit/about_y_Nm_per_rad", -1, {place + "/fit/about_y_Nm_per_rad)", "is -1"});
  with(file, "/girder/connector/fit/slack_m", "rigid", {place + "/fit/slack_m)", "the words \"rigid\""});
  with(file, "/girder/connector/fit", Json::object(), {place + "/fit)", "the key slack_m is missing"});
  with(file, "/girder/connector/hole_m", 0.015, {"splice, pin and fork (/girder)", "the hole is smaller"});
  with(file, "/bars/0/welds_along/lines", 1000, {"bar 1 (round tube", "(/bars/0/welds_along/lines)", "up to 999"});
  with(file, "/bars/0/welds_along/lines", 18446744073709551615U, {"(/bars/0/welds_along/lines)", "up to 999"});
  with(file, "/bars/0/welds_along/lines", -1, {"lines is -1", "whole number"});
  with(file, "/bars/0/welds_along/width_m", -0.03, {"(/bars/0/welds_along/width_m)", "zero or above"});
  with(file, "/bars/0/welds_along", nullptr, {"(/bars/0/welds_along)", "it is null"});
  with(file, "/bars/0/welds_across", nullptr, {"(/bars/0/welds_across)", "welds_across is null", "a list"});
  with(file, "/bars/0/welds_across/1/at_m", -0.9, {"(/bars/0/welds_across/1/at_m)", "zero or above"});
  with(file, "/bars/0/welds_across/0/width_m", "wide", {"(/bars/0/welds_across/0/width_m)", "\"wide\""});
  with(file, "/load_cases/0/actions/0/towards", nullptr, {"load case self-weight, action 1", "[x, y, z] is accepted"});
  with(file, "/load_cases/0/actions/0/towards/2", "down", {"load case self-weight, action 1", "\"down\""});
  with(file, "/load_cases/1/actions/2/flat_coefficient", "flat", {"load case wind, action 3", "flat_coefficient is"});
}

TEST_CASE("words of the file are told without control characters and cut short") {
  std::string name(400, 'a');
  name[0] = '\x1B';
  Json file = Json::parse(sound());
  file["girder"]["faces"][0]["name"] = name;
  file["girder"]["faces"][0]["span_bays"] = "two";
  const std::string message = fault(file.dump());
  CHECK(message.find('\x1B') == std::string::npos);
  CHECK(message.find("?aaa") == 0);
  CHECK(message.size() < 300);
}
