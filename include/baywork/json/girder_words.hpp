// SPDX-License-Identifier: MIT
// Where in a girder file: its JSON pointer (RFC 6901), and which part of the girder that is.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include <baywork/core/text.hpp>

namespace baywork::detail {

using Json = nlohmann::json;

/// Text of a file in a message: no control characters, at most 60 bytes.
inline std::string shown(std::string s) {
  for (char& c : s)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = '?';
  if (s.size() <= 60) return s;
  std::size_t end = 57;
  while (end > 0 && (static_cast<unsigned char>(s[end]) & 0xC0U) == 0x80U) --end;  // not within a character
  return s.substr(0, end) + "...";
}

/// The way from a file's root to one of its values: keys, and places in lists.
struct JsonPath {
  struct Step {
    std::string key;
    std::size_t index = 0;
    bool in_list = false;
  };
  std::vector<Step> steps;

  /// False where the value is not below `from`. Looks for the very object, so that readers need not carry paths.
  bool find(const Json& from, const Json& value) {
    if (&from == &value) return true;
    if (from.is_object()) {
      for (auto i = from.begin(); i != from.end(); ++i)
        if (below({i.key(), 0, false}, *i, value)) return true;
    } else if (from.is_array()) {
      for (std::size_t i = 0; i < from.size(); ++i)
        if (below({"", i, true}, from[i], value)) return true;
    }
    return false;
  }
  std::string pointer() const {
    std::string out;
    for (const Step& s : steps) {
      out += '/';
      if (s.in_list) out += std::to_string(s.index);
      for (const char c : s.key) {
        const unsigned char u = static_cast<unsigned char>(c);
        if (c == '~' || c == '/')
          out += c == '~' ? "~0" : "~1";
        else
          out += u < 0x20 || u == 0x7F ? '?' : c;
      }
    }
    return out.empty() ? "the whole" : out;
  }
  bool has(std::size_t i, const char* key) const { return i < steps.size() && steps[i].key == key; }
  bool lists(std::size_t i) const { return i < steps.size() && steps[i].in_list; }

 private:
  bool below(Step step, const Json& next, const Json& value) {
    steps.push_back(std::move(step));
    if (find(next, value)) return true;
    steps.pop_back();
    return false;
  }
};

/// Reads a file that may be wrong anywhere, and never throws: for words of what else is wrong with it.
class GirderWords {
 public:
  explicit GirderWords(const Json& root) : root_(root) {}

  std::string of(const JsonPath& p) const {
    if (p.has(0, "materials") && p.lists(1))
      return "material " + name_or_number(member(root_, "materials"), p.steps[1].index, "name");
    if (p.has(0, "bars") && p.lists(1)) {
      const Json* bar = item(member(root_, "bars"), p.steps[1].index);
      return "bar " + name_or_number(bar, "section", p.steps[1].index);
    }
    if (p.has(0, "load_cases") && p.lists(1)) {
      const std::string words = "load case " + name_or_number(member(root_, "load_cases"), p.steps[1].index, "name");
      return p.lists(3) ? words + ", action " + std::to_string(p.steps[3].index + 1) : words;
    }
    return p.has(0, "girder") ? of_girder(p) : "girder file";
  }

 private:
  std::string of_girder(const JsonPath& p) const {
    const Json* girder = member(root_, "girder");
    const std::size_t i = p.lists(2) ? p.steps[2].index : 0;
    if (p.has(1, "stations_m")) return p.lists(2) ? station(i) : "stations";
    if (p.has(1, "joints_m") && p.lists(2))
      return station(i) + (p.lists(3) ? ", " + chord(girder, p.steps[3].index) : "");
    if (p.has(1, "chords") && p.lists(2)) return chord(girder, i);
    if (p.has(1, "faces") && p.lists(2)) return face(girder, i, p);
    if (p.has(1, "supports")) {
      if (!p.has(2, "holds") || !p.lists(3)) return "supports";
      const Json* hold = item(member(member(girder, "supports"), "holds"), p.steps[3].index);
      const Json *x = member(hold, "x_m"), *at = member(hold, "chord");
      if (x == nullptr || !x->is_number()) return "support " + std::to_string(p.steps[3].index + 1);
      return "support at " + text::number(x->get<double>()) + " m" +
             (at != nullptr && at->is_string() ? ", " + words(*at) + " chord" : "");
    }
    if (p.has(1, "diaphragms")) return "diaphragms";
    if (p.has(1, "splices")) return "splices";
    if (p.has(1, "connector")) return "connector of the splices";
    return "girder";
  }
  static std::string station(std::size_t i) { return "station " + std::to_string(i + 1); }
  static std::string chord(const Json* girder, std::size_t i) {
    const Json* name = member(item(member(girder, "chords"), i), "name");
    return name != nullptr && name->is_string() ? words(*name) + " chord" : "chord " + std::to_string(i + 1);
  }
  /// "bay 3, bottom face": the bay at which the panel begins, where panels are given one by one.
  static std::string face(const Json* girder, std::size_t i, const JsonPath& p) {
    const Json* face = item(member(girder, "faces"), i);
    const Json* name = member(face, "name");
    const std::string out =
        name != nullptr && name->is_string() ? words(*name) + " face" : "face " + std::to_string(i + 1);
    const Json *panels = member(face, "panels"), *span = member(face, "span_bays"),
               *offset = member(face, "offset_bays");
    if (!p.has(3, "panels") || !p.lists(4) || panels == nullptr || panels->size() < 2 || span == nullptr ||
        !span->is_number_unsigned())
      return out;
    const std::size_t panel = p.steps[4].index,
                      first = offset != nullptr && offset->is_number_unsigned() ? offset->get<std::size_t>() : 0;
    const std::size_t bay = first == 0   ? panel * span->get<std::size_t>()
                            : panel == 0 ? 0
                                         : first + (panel - 1) * span->get<std::size_t>();
    return "bay " + std::to_string(bay + 1) + ", " + out;
  }

  /// A member of an object, or nothing.
  static const Json* member(const Json* in, const char* key) {
    if (in == nullptr || !in->is_object()) return nullptr;
    const auto found = in->find(key);
    return found == in->end() ? nullptr : &*found;
  }
  static const Json* member(const Json& in, const char* key) { return member(&in, key); }
  static const Json* item(const Json* in, std::size_t i) {
    return in != nullptr && in->is_array() && i < in->size() ? &(*in)[i] : nullptr;
  }
  static std::string words(const Json& text) { return shown(text.get<std::string>()); }
  static std::string name_or_number(const Json* in, std::size_t i, const char* key) {
    const Json* name = member(item(in, i), key);
    return name != nullptr && name->is_string() ? words(*name) : std::to_string(i + 1);
  }
  static std::string name_or_number(const Json* bar, const char* section, std::size_t i) {
    const Json* name = member(member(bar, section), "designation");
    return std::to_string(i + 1) + (name != nullptr && name->is_string() ? " (" + words(*name) + ")" : "");
  }

  const Json& root_;
};

/// "bay 3, bottom face (/girder/faces/0/panels/2)": part and place of a value of a file.
inline std::string place_in(const Json& root, const Json& value) {
  JsonPath path;
  path.find(root, value);
  return GirderWords(root).of(path) + " (" + path.pointer() + ")";
}

}  // namespace baywork::detail
