// SPDX-License-Identifier: MIT
// Fields out of an object of a file. `fields` of format.hpp names them; the writer takes the same names.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/girder/bar.hpp>
#include <baywork/girder/names.hpp>
#include <baywork/json/document.hpp>
#include <baywork/json/fields.hpp>
#include <baywork/json/rule.hpp>
#include <baywork/json/words.hpp>

namespace baywork::detail {

/// What all parts of one file share.
struct JsonSource {
  const Json& root;
  const JsonLimits& limits;
  std::vector<material::Material> materials{};
  std::vector<Bar> bars{};
  PartNames names{};  ///< of the girder, once it is read
  std::size_t panels = 0;

  [[noreturn]] void refuse(const Json& at, const std::string& problem, const std::string& accepted) const {
    fail<BadDescription>(place_in(root, at), problem, accepted);
  }
  /// A fault found by the library itself gets the file's place as well.
  template <class Call>
  auto within(const Json& at, Call call) const {
#if defined(__cpp_exceptions) || defined(__EXCEPTIONS) || defined(_CPPUNWIND)
    try {
      return call();
    } catch (const BadDescription& e) {
      JsonPath path;
      path.find(root, at);
      fail<BadDescription>(shown(e.place()) + " (" + path.pointer() + ")",
                           std::string(e.what()).substr(e.place().size() + 2));
    }
#else
    static_cast<void>(at);
    return call();
#endif
  }
};

/// Reads one object: every field asked for must be there, and at the end no other may be.
class JsonReader {
 public:
  JsonReader(const Json& object, JsonSource& source) : in_(object), source_(source) {
    if (!object.is_object()) refuse(object, std::string("it is ") + object.type_name(), "an object is accepted");
  }

  void number(const char* key, double& v, Rule rule) {
    const Json& at = field(key);
    if (may_be_rigid(rule) && at.is_string() && at.get_ref<const std::string&>() == "rigid") {
      v = rigid_stiffness;
      return;
    }
    if (!at.is_number()) refuse(at, std::string(key) + " is " + kind(at), accepted(rule));
    v = at.get<double>();
    if (!meets(v, rule)) refuse(at, std::string(key) + " is " + text::number(v), accepted(rule));
  }
  void number(const char* key, std::optional<double>& v) {
    if (field(key).is_null()) {
      v.reset();
    } else {
      number(key, v.emplace(), Rule::any);
    }
  }
  void words(const char* key, std::string& v) {
    const Json& at = field(key);
    if (!at.is_string()) refuse(at, std::string(key) + " is " + kind(at), "words are accepted");
    v = at.get<std::string>();
  }
  template <class E>
  void choice(const char* key, E& v) {
    const Json& at = field(key);
    if (!at.is_string() || !choice_of(at.get_ref<const std::string&>(), v))
      refuse(at, std::string(key) + " is " + (at.is_string() ? shown(at.get<std::string>()) : kind(at)),
             all_words<E>() + " are accepted");
  }
  void flag(const char* key, bool& v) {
    const Json& at = field(key);
    if (!at.is_boolean()) refuse(at, std::string(key) + " is " + kind(at), "true and false are accepted");
    v = at.get<bool>();
  }
  void count(const char* key, std::size_t& v) { v = whole(field(key), key); }
  void count(const char* key, int& v, int most) {
    const Json& at = field(key);
    const std::size_t n = whole(at, key);
    if (n > static_cast<std::size_t>(most))
      refuse(at, std::string(key) + " is " + std::to_string(n), "up to " + std::to_string(most) + " are accepted");
    v = static_cast<int>(n);
  }
  void vector(const char* key, Vec3<>& v) {
    const std::array<double, 3> xyz = point(field(key), key);
    v = {xyz[0], xyz[1], xyz[2]};
  }
  void chord(const char* key, ChordRef& v) { v = part<ChordRef>(field(key), key, source_.names.chords); }
  void face(const char* key, FaceRef& v) { v = part<FaceRef>(field(key), key, source_.names.faces); }
  void chord(const char* key, std::optional<ChordRef>& v) {
    if (field(key).is_null())
      v.reset();
    else
      v = part<ChordRef>(field(key), key, source_.names.chords);
  }
  void chords(const char* key, std::vector<ChordRef>& v) {
    v.clear();
    for (const Json& at : some(key, source_.limits.parts)) v.push_back(part<ChordRef>(at, key, source_.names.chords));
  }
  /// A bar or material of the file's own list, by its place there; `optional`: none is null.
  void bar(const char* key, Bar& v, bool optional = false) {
    if (optional && field(key).is_null())
      v = {};
    else
      v = listed(key, source_.bars, "bars");
  }
  void material(const char* key, material::Material& v) { v = listed(key, source_.materials, "materials"); }

  void numbers(const char* key, std::vector<double>& v, Amount most) {
    v.clear();
    for (const Json& at : some(key, limit(most))) v.push_back(one(at, key));
  }
  void counts(const char* key, std::vector<std::size_t>& v, Amount most) {
    v.clear();
    for (const Json& at : some(key, limit(most))) v.push_back(whole(at, key));
  }
  /// Rows of points: one list for each station, one point for each chord in it.
  void points(const char* key, std::vector<Vec3<>>& v, std::size_t rows, std::size_t in_row) {
    const Json& all = some(key, source_.limits.stations);
    expect(all, rows, "station");
    v.clear();
    v.reserve(rows * in_row);
    for (const Json& row : all) {
      if (!row.is_array()) refuse(row, "it is " + kind(row), "a list of points is accepted");
      expect(row, in_row, "chord");
      for (const Json& at : row) {
        const std::array<double, 3> xyz = point(at, "the joint");
        v.push_back({xyz[0], xyz[1], xyz[2]});
      }
    }
  }
  /// Calls read_one for each element of a list.
  template <class ReadOne>
  void each(const char* key, Amount most, ReadOne read_one) {
    for (const Json& at : some(key, limit(most))) read_one(at);
  }
  template <class T>
  void list(const char* key, std::vector<T>& v, Amount most) {
    v.clear();
    const Json& all = some(key, limit(most));
    if (most == Amount::panels) source_.panels += all.size();
    for (const Json& at : all) {
      v.push_back(blank<T>());
      read(at, v.back(), FieldsOf{});
    }
  }
  template <class T, class Fields = FieldsOf>
  void object(const char* key, T& v, Fields fill = {}) {
    read(field(key), v, fill);
  }
  /// One of a list of kinds: the word in `key` chooses it.
  std::size_t kind_of(const char* key, std::span<const char* const> kinds, std::size_t) {
    const Json& at = field(key);
    std::string all;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      if (at.is_string() && at.get_ref<const std::string&>() == kinds[i]) return i;
      all += (i ? ", " : "") + std::string(kinds[i]);
    }
    refuse(at, std::string(key) + " is " + (at.is_string() ? shown(at.get<std::string>()) : kind(at)),
           all + " are accepted");
  }
  void names(PartNames n) { source_.names = std::move(n); }
  /// Whether a field that may be left out is there.
  bool has(const char* key, bool) {
    asked_.push_back(key);
    return in_.contains(key);
  }
  void done() const {
    for (auto i = in_.begin(); i != in_.end(); ++i) {
      if (std::find(asked_.begin(), asked_.end(), i.key()) != asked_.end()) continue;
      std::string all;
      for (const std::string_view key : asked_) all += (all.empty() ? "" : ", ") + std::string(key);
      refuse(*i, "the key " + shown(i.key()) + " is not known here", all + " are accepted");
    }
  }
  [[noreturn]] void refuse(const Json& at, const std::string& problem, const std::string& accepted) const {
    source_.refuse(at, problem, accepted);
  }

 private:
  template <class T, class Fields>
  void read(const Json& at, T& v, Fields fill) {
    JsonReader in(at, source_);
    fill(in, v);
    in.done();
  }
  const Json& field(const char* key) {
    if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.push_back(key);
    const auto found = in_.find(key);
    if (found == in_.end())
      refuse(in_, std::string("the key ") + key + " is missing", "every key of the format is needed");
    return *found;
  }
  const Json& some(const char* key, std::size_t most) {
    const Json& at = field(key);
    if (!at.is_array()) refuse(at, std::string(key) + " is " + kind(at), "a list is accepted");
    if (at.size() > most)
      refuse(at, std::to_string(at.size()) + " " + key + " are given",
             "up to " + std::to_string(most) + " are accepted");
    return at;
  }
  void expect(const Json& at, std::size_t n, const char* part) const {
    if (at.size() != n)
      refuse(at, std::to_string(at.size()) + " are given",
             std::to_string(n) + ", one for each " + part + ", are accepted");
  }
  std::size_t limit(Amount a) const {
    switch (a) {
      case Amount::plates: return std::tuple_size_v<decltype(SectionData<>::plates)>;
      case Amount::parts: return source_.limits.parts;
      case Amount::steps: return source_.limits.steps;
      case Amount::panels: return 2 * source_.limits.stations - source_.panels;
      case Amount::stations: break;
    }
    return source_.limits.stations;
  }
  static std::string kind(const Json& v) {
    if (v.is_number()) return text::number(v.get<double>());
    return v.is_string()    ? "the words \"" + shown(v.get<std::string>()) + "\""
           : v.is_null()    ? "null"
           : v.is_boolean() ? (v.get<bool>() ? "true" : "false")
                            : std::string("a list or an object");
  }
  double one(const Json& at, const char* what) const {
    if (!at.is_number()) refuse(at, std::string(what) + " has " + kind(at), "numbers are accepted");
    return at.get<double>();
  }
  std::size_t whole(const Json& at, const char* what) const {
    if (!at.is_number_unsigned())
      refuse(at, std::string(what) + " is " + kind(at), "a whole number, zero or above, is accepted");
    return at.get<std::size_t>();
  }
  std::array<double, 3> point(const Json& at, const char* what) const {
    if (!at.is_array() || at.size() != 3)
      refuse(at, std::string(what) + " is not a list of three", "[x, y, z] is accepted");
    return {one(at[0], what), one(at[1], what), one(at[2], what)};
  }
  template <class T>
  const T& listed(const char* key, const std::vector<T>& all, const char* which) {
    const Json& at = field(key);
    const std::size_t i = whole(at, key);
    if (i >= all.size())
      refuse(
          at,
          std::string(key) + " is " + std::to_string(i) + ", but there are " + std::to_string(all.size()) + " " + which,
          "places in the list " + std::string(which) + ", counted from 0, are accepted");
    return all[i];
  }
  /// A chord or face by its name, or by its number, counted from 0.
  template <class Ref>
  Ref part(const Json& at, const char* what, const std::vector<std::string>& names) const {
    if (at.is_string() && !at.get_ref<const std::string&>().empty()) {
      const std::string& word = at.get_ref<const std::string&>();
      if (std::find(names.begin(), names.end(), word) != names.end()) return Ref(word);
      refuse(at, "there is no " + std::string(what) + " called " + shown(word),
             "names of the girder's own are accepted");
    }
    if (!at.is_number_unsigned() || at.get<std::size_t>() >= names.size())
      refuse(at, std::string(what) + " is " + kind(at),
             "a name, or a number below " + std::to_string(names.size()) + ", is accepted");
    return Ref(at.get<std::size_t>());
  }

  const Json& in_;
  JsonSource& source_;
  std::vector<std::string_view> asked_;
};

}  // namespace baywork::detail
