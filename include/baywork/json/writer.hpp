// SPDX-License-Identifier: MIT
// Fields into an object of a file, and materials and bars into its lists, each once. The reader takes the same names.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <baywork/girder/names.hpp>
#include <baywork/json/bits.hpp>
#include <baywork/json/format.hpp>
#include <baywork/json/girder_words.hpp>
#include <baywork/json/print.hpp>

namespace baywork::detail {

/// The lists that bars and materials of a file are taken from, and their places by their bits.
struct JsonLists {
  std::map<std::string, std::size_t> known_materials{}, known_bars{};
  Written materials = Written::array(), bars = Written::array();
  PartNames names{};  ///< of the girder, once it is written
};

class JsonWriter {
 public:
  JsonWriter(JsonLists& lists, std::string place) : lists_(lists), place_(std::move(place)) {}

  void number(const char* key, double v, Rule rule) {
    if (!meets(v, rule)) fail<BadDescription>(place_, std::string(key) + " is " + text::number(v), accepted(rule));
    out_[key] = is_infinite(v) ? Written("rigid") : Written(v);
  }
  void number(const char* key, const std::optional<double>& v) {
    if (v)
      number(key, *v, Rule::any);
    else
      out_[key] = nullptr;
  }
  void words(const char* key, const std::string& v) { out_[key] = json_words(v, place_); }
  template <class E>
  void choice(const char* key, E v) {
    if (json_word(v)[0] == '\0')
      fail<BadDescription>(place_, std::string(key) + " is none that files know", all_words<E>() + " are accepted");
    out_[key] = json_word(v);
  }
  void flag(const char* key, bool v) { out_[key] = v; }
  void count(const char* key, std::size_t v) { out_[key] = v; }
  void count(const char* key, int v, int most) {
    if (v < 0 || v > most)
      fail<BadDescription>(place_, std::string(key) + " is " + std::to_string(v),
                           "0 to " + std::to_string(most) + " are accepted");
    out_[key] = v;
  }
  void vector(const char* key, const Vec3<>& v) { out_[key] = point(key, v); }
  void chord(const char* key, const ChordRef& v) { out_[key] = part(v, lists_.names.chords); }
  void chord(const char* key, const std::optional<ChordRef>& v) {
    out_[key] = v ? part(*v, lists_.names.chords) : Written(nullptr);
  }
  void face(const char* key, const FaceRef& v) { out_[key] = part(v, lists_.names.faces); }
  void chords(const char* key, const std::vector<ChordRef>& v) {
    Written& list = out_[key] = Written::array();
    for (const ChordRef& c : v) list.push_back(part(c, lists_.names.chords));
  }
  void bar(const char* key, const Bar& v, bool optional = false) {
    if (v.given)
      out_[key] = place_of(v);
    else if (optional)
      out_[key] = nullptr;
    else
      fail<BadDescription>(place_, std::string("no bar is given as ") + key,
                           "a bar (section and material) is accepted");
  }
  void material(const char* key, material::Material& v) {
    out_[key] = listed(v, "material " + shown(v.name), lists_.known_materials, lists_.materials);
  }
  void numbers(const char* key, const std::vector<double>& v, Amount) {
    Written& list = out_[key] = Written::array();
    for (const double x : v) list.push_back(finite(key, x));
  }
  void counts(const char* key, const std::vector<std::size_t>& v, Amount) { out_[key] = v; }
  void points(const char* key, const std::vector<Vec3<>>& v, std::size_t rows, std::size_t in_row) {
    Written& list = out_[key] = Written::array();
    for (std::size_t i = 0; i < rows; ++i) {
      Written row = Written::array();
      for (std::size_t c = 0; c < in_row; ++c) row.push_back(point(key, v[i * in_row + c]));
      list.push_back(std::move(row));
    }
  }
  template <class T>
  void list(const char* key, std::vector<T>& v, Amount) {
    Written& all = out_[key] = Written::array();
    for (std::size_t i = 0; i < v.size(); ++i) {
      JsonWriter each(lists_, place_ + ", " + key + " " + std::to_string(i + 1));
      fields(each, v[i]);
      all.push_back(std::move(each.out_));
    }
  }
  template <class T, class Fields = FieldsOf>
  void object(const char* key, T& v, Fields fill = {}) {
    JsonWriter in(lists_, place_);
    fill(in, v);
    out_[key] = std::move(in.out_);
  }
  std::size_t kind_of(const char* key, std::span<const char* const> kinds, std::size_t which) {
    out_[key] = kinds[which];
    return which;
  }
  void names(PartNames n) { lists_.names = std::move(n); }
  bool has(const char*, bool there) { return there; }
  Written take() { return std::move(out_); }

  /// A bar's place in the file's list. Bars of the same bits are one.
  std::size_t place_of(const Bar& v) {
    check_strength(v);
    Bar bar = v;
    return listed(bar, "bar " + shown(bar.section.designation), lists_.known_bars, lists_.bars);
  }

 private:
  template <class T>
  std::size_t listed(T& v, const std::string& place, std::map<std::string, std::size_t>& known, Written& list) {
    const auto [at, is_new] = known.emplace(bits_of_fields(v), known.size());
    if (!is_new) return at->second;
    JsonWriter in(lists_, place);
    fields(in, v);
    list.push_back(std::move(in.out_));
    return at->second;
  }
  static void check_strength(const Bar& bar) {
    const material::StrengthStep said =
        bar.material.steps.empty() ? material::StrengthStep{} : material::strength(bar.material, bar.section.wall);
    if (bits_of_fields(said) != bits_of_fields(bar.strength))
      fail<BadDescription>("bar " + shown(bar.section.designation),
                           "its strength is not that of its material for its wall",
                           "a strength that the material gives is accepted");
  }
  Written finite(const char* key, double v) const {
    if (!is_finite(v))
      fail<BadDescription>(place_, std::string(key) + " has " + text::number(v), "finite numbers are accepted");
    return v;
  }
  Written point(const char* key, const Vec3<>& v) const {
    return {finite(key, v.x), finite(key, v.y), finite(key, v.z)};
  }
  /// Throws BadDescription where the girder has no such part.
  template <class Ref>
  Written part(const Ref& v, const std::vector<std::string>& names) const {
    const std::size_t index = v.in(names);
    return v.word.empty() ? Written(index) : json_words(v.word, place_);
  }

  JsonLists& lists_;
  std::string place_;
  Written out_ = Written::object();
};

}  // namespace baywork::detail
