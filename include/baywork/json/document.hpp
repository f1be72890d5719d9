// SPDX-License-Identifier: MIT
// JSON text from anywhere to values in memory, within limits: what is wrong is told with its line and column, or its
// place.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include <baywork/core/error.hpp>
#include <baywork/json/girder_words.hpp>

namespace baywork {

/// What a file may hold at most: a file from anywhere cannot fill the memory or stall the program. The worst file
/// within these takes 0.9 GB and a second (measured); wider limits read larger girders.
struct JsonLimits {
  std::size_t bytes = std::size_t{32} << 20U;
  std::size_t values = 2'000'000;  ///< numbers, words, lists and objects
  std::size_t depth = 16;          ///< lists and objects within each other
  std::size_t text = 500;          ///< bytes of one name or text
  std::size_t stations = 20'000;   ///< and bars, splices, actions of a case; single panels: twice as many in all
  std::size_t parts = 1'000;       ///< chords, faces, materials, single supports, load cases
  std::size_t steps = 16;          ///< of a material's strength by thickness
};

namespace detail {

/// Takes the parser's events one by one, so that every limit holds before memory is used.
class JsonBuilder : public nlohmann::json_sax<Json> {
 public:
  explicit JsonBuilder(const JsonLimits& limits) : limits_(limits) {}

  bool null() override { return add(nullptr); }
  bool boolean(bool v) override { return add(v); }
  bool number_integer(number_integer_t v) override { return add(v); }
  bool number_unsigned(number_unsigned_t v) override { return add(v); }
  bool number_float(number_float_t v, const string_t&) override { return add(v); }
  bool binary(binary_t&) override { return false; }
  bool string(string_t& v) override { return fits(v) && add(std::move(v)); }
  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& k) override {
    if (!fits(k)) return false;
    if (open_.back()->contains(k))
      return refuse("the key " + shown(k) + " is given twice", "each key once is accepted");
    key_ = std::move(k);
    return true;
  }
  bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& e) override {
    position_ = position;
    const std::string what = e.what();  // "[json.exception.parse_error.101] parse error at line 1, column 2: ..."
    const std::size_t at = what.find(": "), after = what.find("] ");
    problem_ = at != std::string::npos      ? what.substr(at + 2)
               : after != std::string::npos ? what.substr(after + 2)
                                            : what;
    if (problem_.size() > 200) problem_ = problem_.substr(0, 197) + "...";
    for (char& c : problem_)  // the parser quotes what it has read
      if (static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) > 0x7E) c = '?';
    std::replace(problem_.begin(), problem_.end(), ';', ',');
    return false;
  }

  Json take() { return std::move(root_); }
  /// Says what stopped the parser.
  [[noreturn]] void fail_in(std::string_view text) const {
    if (open_at_fault_ != nullptr) fail<BadDescription>(place_in(root_, *open_at_fault_), problem_, accepted_);
    const std::size_t end = (std::min)(position_ > 0 ? position_ - 1 : 0, text.size());
    std::size_t line = 1, column = 1;
    for (std::size_t i = 0; i < end; ++i) {
      ++column;
      if (text[i] != '\n') continue;
      ++line;
      column = 1;
    }
    fail<BadDescription>("girder file, line " + std::to_string(line) + ", column " + std::to_string(column), problem_,
                         "JSON (RFC 8259) is accepted");
  }

 private:
  bool refuse(std::string problem, std::string accepted) {
    problem_ = std::move(problem);
    accepted_ = std::move(accepted);
    open_at_fault_ = open_.empty() ? &root_ : open_.back();
    return false;
  }
  bool fits(const string_t& s) {
    if (s.size() <= limits_.text) return true;
    return refuse("a text has " + std::to_string(s.size()) + " bytes",
                  "up to " + std::to_string(limits_.text) + " are accepted");
  }
  bool add(Json v) { return put(std::move(v)) != nullptr; }
  bool open(Json v) {
    if (open_.size() >= limits_.depth)
      return refuse("lists and objects lie deeper than " + std::to_string(limits_.depth) + " within each other",
                    "up to " + std::to_string(limits_.depth) + " are accepted");
    Json* made = put(std::move(v));
    if (made != nullptr) open_.push_back(made);
    return made != nullptr;
  }
  bool close() {
    open_.pop_back();
    return true;
  }
  Json* put(Json v) {
    if (++values_ > limits_.values) {
      refuse("there are more than " + std::to_string(limits_.values) + " values",
             "up to " + std::to_string(limits_.values) + " are accepted");
      return nullptr;
    }
    if (open_.empty()) {
      root_ = std::move(v);
      return &root_;
    }
    Json& in = *open_.back();
    if (in.is_array()) {
      in.push_back(std::move(v));
      return &in.back();
    }
    return &(in[key_] = std::move(v));
  }

  const JsonLimits& limits_;
  Json root_;
  std::vector<Json*> open_;
  std::string key_, problem_, accepted_;
  std::size_t values_ = 0, position_ = 0;
  const Json* open_at_fault_ = nullptr;
};

/// Throws BadDescription for anything that is not one JSON value within the limits, each key of an object once.
inline Json parse_json(std::string_view text, const JsonLimits& limits) {
  if (text.size() > limits.bytes)
    fail<BadDescription>("girder file", "it has " + std::to_string(text.size()) + " bytes",
                         "up to " + std::to_string(limits.bytes) + " are accepted");
  JsonBuilder builder(limits);
  if (!Json::sax_parse(text.begin(), text.end(), &builder)) builder.fail_in(text);
  return builder.take();
}

}  // namespace detail
}  // namespace baywork
