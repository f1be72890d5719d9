// SPDX-License-Identifier: MIT
// Choices as words in files, both ways. A new enumerator does not compile until it has its word here.
#pragma once

#include <cstddef>
#include <string>

#include <baywork/core/motion.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/girder/panel.hpp>
#include <baywork/girder/supports.hpp>
#include <baywork/load/load_case.hpp>
#include <baywork/material/material.hpp>
#include <baywork/section/section_data.hpp>

namespace baywork::detail {

inline const char* json_word(ShapeKind k) {
  switch (k) {
    case ShapeKind::round_tube: return "round tube";
    case ShapeKind::rectangular_hollow: return "rectangular hollow";
    case ShapeKind::solid_round: return "solid round";
    case ShapeKind::solid_rectangle: return "solid rectangle";
    case ShapeKind::i_shape: return "I";
    case ShapeKind::channel: return "channel";
    case ShapeKind::other: return "other";
  }
  return "";
}
inline const char* json_word(PinAxis a) {
  switch (a) {
    case PinAxis::level: return "level";
    case PinAxis::upright: return "upright";
  }
  return "";
}
inline const char* json_word(BoltClass c) { return name(c); }
inline const char* json_word(material::Family f) {
  switch (f) {
    case material::Family::steel: return "steel";
    case material::Family::aluminium: return "aluminium";
    case material::Family::other: return "other";
  }
  return "";
}
inline const char* json_word(material::BucklingClass c) {
  switch (c) {
    case material::BucklingClass::none: return "none";
    case material::BucklingClass::a: return "A";
    case material::BucklingClass::b: return "B";
  }
  return "";
}
inline const char* json_word(material::Product p) {
  const char* word = name(p);
  return std::string(word) == "product" ? "" : word;
}
inline const char* json_word(material::AlloyGroup g) {
  switch (g) {
    case material::AlloyGroup::none: return "none";
    case material::AlloyGroup::annealed: return "annealed";
    case material::AlloyGroup::work_hardened_5xxx: return "work-hardened 5xxx";
    case material::AlloyGroup::heat_treated_6xxx: return "heat-treated 6xxx";
    case material::AlloyGroup::heat_treated_7xxx: return "heat-treated 7xxx";
  }
  return "";
}
inline const char* json_word(material::Welding w) {
  switch (w) {
    case material::Welding::unspecified: return "unspecified";
    case material::Welding::mig: return "MIG";
    case material::Welding::tig: return "TIG";
  }
  return "";
}
/// A panel whose layout has no word is a user's own.
inline const char* json_word(Layout l) {
  switch (l) {
    case Layout::none: return "none";
    case Layout::open: return "open";
    case Layout::single_direction: return "single direction";
    case Layout::mirrored_towards: return "mirrored towards";
    case Layout::mirrored_away: return "mirrored away";
    case Layout::alternating: return "alternating";
    case Layout::crossed: return "crossed";
    case Layout::k: return "K";
    case Layout::other: return "";
  }
  return "";
}
inline const char* json_word(Supports::Way w) {
  switch (w) {
    case Supports::Way::individual: return "individual";
    case Supports::Way::simply_supported: return "simply supported";
    case Supports::Way::hung: return "hung";
    case Supports::Way::cantilever: return "cantilever";
    case Supports::Way::continuous: return "continuous";
  }
  return "";
}
inline const char* json_word(Restraint::Kind k) {
  switch (k) {
    case Restraint::Kind::free: return "free";
    case Restraint::Kind::fixed: return "fixed";
    case Restraint::Kind::spring: return "spring";
  }
  return "";
}
inline const char* json_word(Motion m) {
  switch (m) {
    case Motion::ux: return "ux";
    case Motion::uy: return "uy";
    case Motion::uz: return "uz";
    case Motion::rx: return "rx";
    case Motion::ry: return "ry";
    case Motion::rz: return "rz";
  }
  return "";
}
inline const char* json_word(Nature n) { return name(n); }
inline const char* json_word(CarriedBy c) {
  switch (c) {
    case CarriedBy::nearest_edge: return "nearest edge";
    case CarriedBy::chords: return "chords";
    case CarriedBy::cross_members: return "cross members";
  }
  return "";
}

/// Calls visit(choice, word) for every choice that has a word; all enumerations here count from 0 without gaps.
template <class E, class Visit>
void for_each_word(Visit visit) {
  for (int i = 0; i < 32; ++i) {
    const char* word = json_word(static_cast<E>(i));
    if (word[0] != '\0') visit(static_cast<E>(i), word);
  }
}
/// False where no choice has this word.
template <class E>
bool choice_of(const std::string& word, E& out) {
  bool found = false;
  for_each_word<E>([&](E e, const char* w) {
    if (word != w) return;
    out = e;
    found = true;
  });
  return found;
}
/// "steel, aluminium, other".
template <class E>
std::string all_words() {
  std::string out;
  for_each_word<E>([&out](E, const char* w) { out += (out.empty() ? "" : ", ") + std::string(w); });
  return out;
}

}  // namespace baywork::detail
