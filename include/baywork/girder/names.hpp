// SPDX-License-Identifier: MIT
// How people point at chords and faces: by the trade's names, a girder's own, or a number.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>

namespace baywork {

/// Faces of ready-made girders: a box has all of the first four, a triangular girder base, left and right, a ladder web.
/// Looking along x with z up, left is +y.
enum class Side : std::uint8_t { top, bottom, left, right, base, web };
inline const char* name(Side s) {
  switch (s) {
    case Side::top: return "top";
    case Side::bottom: return "bottom";
    case Side::left: return "left";
    case Side::right: return "right";
    case Side::base: return "base";
    case Side::web: return "web";
  }
  return "";
}

/// Chords of ready-made girders: four of a box, apex and two base chords of a triangular girder, two of a ladder.
enum class ChordOf : std::uint8_t { bottom_left, bottom_right, top_right, top_left, apex, base_left, base_right, bottom, top };
inline const char* name(ChordOf c) {
  switch (c) {
    case ChordOf::bottom_left: return "bottom left";
    case ChordOf::bottom_right: return "bottom right";
    case ChordOf::top_right: return "top right";
    case ChordOf::top_left: return "top left";
    case ChordOf::apex: return "apex";
    case ChordOf::base_left: return "base left";
    case ChordOf::base_right: return "base right";
    case ChordOf::bottom: return "bottom";
    case ChordOf::top: return "top";
  }
  return "";
}

namespace detail {
/// A part by name, or by number where the name is empty.
struct PartRef {
  std::string word;
  std::size_t index = 0;

  std::size_t find(const std::vector<std::string>& names, const char* kind, const char* kinds) const {
    if (word.empty()) {
      if (index < names.size()) return index;
      fail<BadDescription>("girder", std::string("there is no ") + kind + " " + std::to_string(index + 1), accepted(names, kinds));
    }
    for (std::size_t i = 0; i < names.size(); ++i)
      if (names[i] == word) return i;
    fail<BadDescription>("girder", std::string("there is no ") + kind + " called " + word, accepted(names, kinds));
  }

 private:
  static std::string accepted(const std::vector<std::string>& names, const char* kinds) {
    std::string out = std::string("its ") + kinds + " are ";
    for (std::size_t i = 0; i < names.size(); ++i) out += (i ? ", " : "") + names[i];
    return out;
  }
};
}  // namespace detail

/// Points at a face: Side::bottom, "bottom", or std::size_t{0}.
struct FaceRef : detail::PartRef {
  FaceRef(Side s) { word = name(s); }                       // NOLINT(google-explicit-constructor)
  FaceRef(const char* w) { word = w; }                      // NOLINT(google-explicit-constructor)
  FaceRef(std::string w) { word = std::move(w); }           // NOLINT(google-explicit-constructor)
  FaceRef(std::size_t i) { index = i; }                     // NOLINT(google-explicit-constructor)
  std::size_t in(const std::vector<std::string>& names) const { return find(names, "face", "faces"); }
};

/// Points at a chord: ChordOf::top_left, "top left", or std::size_t{3}.
struct ChordRef : detail::PartRef {
  ChordRef(ChordOf c) { word = name(c); }                   // NOLINT(google-explicit-constructor)
  ChordRef(const char* w) { word = w; }                     // NOLINT(google-explicit-constructor)
  ChordRef(std::string w) { word = std::move(w); }          // NOLINT(google-explicit-constructor)
  ChordRef(std::size_t i) { index = i; }                    // NOLINT(google-explicit-constructor)
  std::size_t in(const std::vector<std::string>& names) const { return find(names, "chord", "chords"); }
};

}  // namespace baywork
