// SPDX-License-Identifier: MIT
// Where on a girder: station, bay, face, chord, role. Counted from 0 in code and from 1 in print.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace baywork {

/// What a bar does in the girder. `user` is for pieces of a user's own panel type that are none of the others.
enum class Role : std::uint8_t { chord, cross_member, diagonal, diaphragm, user };

inline const char* name(Role r) {
  switch (r) {
    case Role::chord: return "chord";
    case Role::cross_member: return "cross member";
    case Role::diagonal: return "diagonal";
    case Role::diaphragm: return "diaphragm";
    case Role::user: return "bar";
  }
  return "bar";
}

/// A place on a girder; a part that is -1 is not said. All parts count from 0.
struct Address {
  int station = -1;  ///< the plane x = x_i that holds one node per chord
  int bay = -1;      ///< between stations bay and bay + 1
  int face = -1;     ///< between two neighbouring chords
  int chord = -1;    ///< continuous along x
  int piece = -1;    ///< the how-manieth bar of its role in its panel, where there are several
  bool has_role = false;
  Role role = Role::chord;

  friend bool operator==(const Address&, const Address&) = default;
};

/// The names a girder gives its chords and faces ("bottom left", "top").
struct PartNames {
  std::vector<std::string> chords;
  std::vector<std::string> faces;
};

/// "bay 3, bottom face, diagonal": an address in the girder's words, counted from 1.
inline std::string text_of(const Address& a, const PartNames& names) {
  std::string out;
  const auto say = [&out](const std::string& part) {
    if (!out.empty()) out += ", ";
    out += part;
  };
  const auto named = [](const std::vector<std::string>& list, int i, const char* word) {
    const bool known = i >= 0 && static_cast<std::size_t>(i) < list.size() && !list[static_cast<std::size_t>(i)].empty();
    return known ? list[static_cast<std::size_t>(i)] + " " + word : std::string(word) + " " + std::to_string(i + 1);
  };
  if (a.bay >= 0) say("bay " + std::to_string(a.bay + 1));
  if (a.station >= 0) say("station " + std::to_string(a.station + 1));
  if (a.face >= 0) say(named(names.faces, a.face, "face"));
  if (a.chord >= 0) say(named(names.chords, a.chord, "chord"));
  if (a.has_role && a.role != Role::chord)
    say(std::string(name(a.role)) + (a.piece >= 0 ? " " + std::to_string(a.piece + 1) : ""));
  if (out.empty()) out = "girder";
  return out;
}

}  // namespace baywork
