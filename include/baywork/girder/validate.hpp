// SPDX-License-Identifier: MIT
// Refuses girders that mean nothing, naming the part in girder words.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/girder/connector.hpp>
#include <baywork/girder/girder.hpp>

namespace baywork {

namespace detail {

template <class S>
void validate_face(const BasicGirder<S>& g, std::size_t f) {
  const BasicGirderFace<S>& face = g.faces[f];
  const std::string place = face.name + " face";
  if (face.first_chord >= g.chords.size() || face.second_chord >= g.chords.size() || face.first_chord == face.second_chord)
    fail<BadDescription>(place, "it does not lie between two chords", "two different chords of the girder are accepted");
  if (face.panels.empty()) return;
  if (face.panels.span() == 0 || face.panels.span() > g.bays())
    fail<BadDescription>(place, "its panels span " + std::to_string(face.panels.span()) + " bays",
                         "1 to " + std::to_string(g.bays()) + " bays are accepted");
  if (face.panels.offset() >= face.panels.span() && face.panels.offset() != 0)
    fail<BadDescription>(place, "its panels begin " + std::to_string(face.panels.offset()) + " bays in",
                         "less than a panel's span is accepted");
  const std::size_t panels = face.panels.boundaries(g.bays()).size() - 1;
  if (face.panels.given() != 1 && face.panels.given() != panels)
    fail<BadDescription>(place, std::to_string(face.panels.given()) + " panels are given for " + std::to_string(panels),
                         "one panel for all, or one for each, is accepted");
}

template <class S>
void validate_holds(const BasicGirder<S>& g) {
  for (const BasicHold<S>& h : g.supports.holds) {
    const std::size_t c = g.chord(h.chord);
    const std::string place = "support at " + text::number(h.x) + " m, " + g.chords[c].name + " chord";
    require::finite(h.x, place, "place along the girder");
    if (g.station_at(value_of(h.x)) < 0)
      fail<BadDescription>(place, "no station is there", "places of stations (bay boundaries) are accepted");
    for (const BasicRestraint<S>& r : h.motion) {
      if (r.kind == BasicRestraint<S>::Kind::spring) require::positive(r.stiffness, place, "spring stiffness");
      require::finite(r.displacement, place, "prescribed displacement");
    }
  }
  for (const S& x : g.supports.at) {
    const std::string place = "support at " + text::number(x) + " m";
    require::finite(x, place, "place along the girder");
    if (g.station_at(value_of(x)) < 0)
      fail<BadDescription>(place, "no station is there", "places of stations (bay boundaries) from 0 to " +
                           text::number(g.span()) + " m are accepted");
  }
  if (!is_infinite(g.supports.stiffness)) require::positive(g.supports.stiffness, "supports", "vertical stiffness");
  using Way = typename BasicSupports<S>::Way;
  const Way way = g.supports.way;
  if (way == Way::individual && g.supports.holds.empty())
    fail<BadDescription>("girder", "it has no supports", "simply_supported(), hung_at(), cantilever(), continuous_over() or single holds are accepted");
  if ((way == Way::hung || way == Way::continuous) && g.supports.at.size() < 2)
    fail<BadDescription>("supports", std::to_string(g.supports.at.size()) + " places are given", "two places or more are accepted");
}

}  // namespace detail

/// Throws BadDescription for the first fault found.
template <Scalar S>
void validate(const BasicGirder<S>& g) {
  if (g.stations.size() < 2) fail<BadDescription>("girder", "it has no bays", "one bay or more is accepted");
  if (g.chords.size() < 2)
    fail<BadDescription>("girder", "it has " + std::to_string(g.chords.size()) + " chords", "two chords or more are accepted");
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    require::finite(g.stations[i], "station " + std::to_string(i + 1), "distance along the axis");
    if (i > 0 && !(value_of(g.stations[i]) > value_of(g.stations[i - 1])))
      fail<BadDescription>("station " + std::to_string(i + 1), "it does not lie beyond the one before", "rising distances are accepted");
  }
  if (g.joints.size() != g.stations.size() * g.chords.size())
    fail<BadDescription>("girder", std::to_string(g.joints.size()) + " joints are given",
                         std::to_string(g.stations.size() * g.chords.size()) + " (one for each chord at each station) are accepted");
  for (std::size_t c = 0; c < g.chords.size(); ++c) {
    const std::string place = g.chords[c].name.empty() ? "chord " + std::to_string(c + 1) : g.chords[c].name + " chord";
    if (g.chords[c].name.empty()) fail<BadDescription>(place, "it has no name", "a name for each chord is accepted");
    if (!g.chords[c].bar.given) fail<BadDescription>(place, "no bar is given for it", "a bar (section and material) is accepted");
    for (std::size_t d = 0; d < c; ++d)
      if (g.chords[d].name == g.chords[c].name) fail<BadDescription>(place, "another chord has the same name", "different names are accepted");
    for (std::size_t i = 0; i < g.stations.size(); ++i)
      if (!is_finite(g.joint(i, c)))
        fail<BadDescription>("station " + std::to_string(i + 1) + ", " + place, "its joint is not at a finite place", "finite coordinates are accepted");
  }
  for (std::size_t f = 0; f < g.faces.size(); ++f) detail::validate_face(g, f);
  for (const std::size_t s : g.splices)
    if (s == 0 || s >= g.bays())
      fail<BadDescription>("splice", "it is at station " + std::to_string(s + 1),
                           "inner stations 2 to " + std::to_string(g.bays()) + " are accepted");
  validate(g.connector, "splice");
  if (!g.diaphragms.none() && !g.diaphragms.bar.given)
    fail<BadDescription>("diaphragms", "no bar is given for them", "a bar (section and material) is accepted");
  for (const std::size_t s : g.diaphragms.at)
    if (s > g.bays())
      fail<BadDescription>("diaphragm", "it is at station " + std::to_string(s + 1),
                           "stations 1 to " + std::to_string(g.bays() + 1) + " are accepted");
  detail::validate_holds(g);
}

}  // namespace baywork
