// SPDX-License-Identifier: MIT
// Box, triangular and ladder girders: thin descriptions with named faces that become the general girder.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/girder/axis.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/girder/validate.hpp>

namespace baywork {

/// Runs of bays between splices: after every `bays_each` bays (0: one piece), and at the stations `at`; and what joins
/// the chords there.
struct Modules {
  std::size_t bays_each = 0;
  std::vector<std::size_t> at{};
  Connector connector{};

  std::vector<std::size_t> splices(std::size_t bays) const {
    std::vector<std::size_t> out = at;
    for (std::size_t s = bays_each; bays_each > 0 && s < bays; s += bays_each) out.push_back(s);
    return out;
  }
};

namespace detail {

/// Fills the parts all ready-made girders share; `offset(c, t)` gives chord c's y and z at t = 0 … 1 of the length.
template <class S, class Description, class Offset>
BasicGirder<S> make_girder(const Description& d, std::vector<BasicChord<S>> chords, std::vector<BasicGirderFace<S>> faces,
                           const S& half_width, Offset offset) {
  BasicGirder<S> g;
  g.stations = stations_of(d.bays, d.bay_length, d.bay_lengths);
  check_axis(d.axis, g.stations.back(), half_width);
  g.chords = std::move(chords);
  g.faces = std::move(faces);
  g.diaphragms = d.diaphragms;
  g.splices = d.modules.splices(g.bays());
  g.connector = d.modules.connector;
  g.supports = d.supports;
  g.joints.reserve(g.stations.size() * g.chords.size());
  for (const S& s : g.stations)
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      const std::array<S, 2> yz = offset(c, S(s / g.stations.back()));
      g.joints.push_back(d.axis.point(s, g.stations.back(), yz[0], yz[1]));
    }
  validate(g);
  return g;
}

/// Linear from `start` to `end` where an end value is given.
template <class S>
S tapered(const S& start, const std::optional<S>& end, const S& t) {
  return end ? S(start + t * (*end - start)) : start;
}

template <class S>
void check_size(const S& v, const std::optional<S>& end, const char* what) {
  require::positive(v, "girder", what);
  if (end) require::positive(*end, "girder, far end", what);
}

}  // namespace detail

template <Scalar S = double>
struct BasicBoxFaces {
  BasicFace<S> top{}, bottom{}, left{}, right{};
};
using BoxFaces = BasicBoxFaces<double>;

/// Chords that differ from `chord`, in the order bottom left, bottom right, top right, top left; not given: alike.
template <Scalar S = double>
struct BasicBoxChords {
  BasicBar<S> bottom_left{}, bottom_right{}, top_right{}, top_left{};
};
using BoxChords = BasicBoxChords<double>;

/// Four chords on the corners of a rectangle, `width` across and `depth` high between chord axes; the axis runs
/// through its middle. Looking along x, left is +y.
template <Scalar S = double>
struct BasicBoxGirder {
  std::size_t bays = 0;
  S bay_length = S(0);
  std::vector<S> bay_lengths{};             ///< individual lengths, instead of bays × bay_length [m]
  S width = S(0), depth = S(0);             ///< [m]
  std::optional<S> end_width{}, end_depth{};  ///< tapered linearly to these at the far end
  BasicBar<S> chord{};
  BasicBoxChords<S> chords{};
  BasicBoxFaces<S> faces{};
  BasicDiaphragms<S> diaphragms{};
  Modules modules{};
  BasicAxis<S> axis{};
  BasicSupports<S> supports{};

  BasicGirder<S> girder() const {
    detail::check_size(width, end_width, "width");
    detail::check_size(depth, end_depth, "depth");
    const auto bar = [&](const BasicBar<S>& own) { return own.given ? own : chord; };
    return detail::make_girder<S>(
        *this,
        {{name(ChordOf::bottom_left), bar(chords.bottom_left)},
         {name(ChordOf::bottom_right), bar(chords.bottom_right)},
         {name(ChordOf::top_right), bar(chords.top_right)},
         {name(ChordOf::top_left), bar(chords.top_left)}},
        {{"bottom", 0, 1, faces.bottom}, {"right", 1, 2, faces.right}, {"top", 3, 2, faces.top}, {"left", 0, 3, faces.left}},
        S(width / S(2)), [this](std::size_t c, const S& t) {
          const S y = S(detail::tapered(width, end_width, t) / S(2)), z = S(detail::tapered(depth, end_depth, t) / S(2));
          return std::array<S, 2>{c == 0 || c == 3 ? y : S(-y), c < 2 ? S(-z) : z};
        });
  }
};
using BoxGirder = BasicBoxGirder<double>;

template <Scalar S = double>
struct BasicTriangularFaces {
  BasicFace<S> base{}, left{}, right{};
};
using TriangularFaces = BasicTriangularFaces<double>;

/// Two base chords `width` apart and an apex chord `depth` above them (below where `apex_down`). The axis runs through
/// the middle of the height.
template <Scalar S = double>
struct BasicTriangularGirder {
  std::size_t bays = 0;
  S bay_length = S(0);
  std::vector<S> bay_lengths{};
  S width = S(0), depth = S(0);
  std::optional<S> end_width{}, end_depth{};
  bool apex_down = false;
  BasicBar<S> chord{}, apex_chord{};  ///< apex_chord not given: like the others
  BasicTriangularFaces<S> faces{};
  BasicDiaphragms<S> diaphragms{};
  Modules modules{};
  BasicAxis<S> axis{};
  BasicSupports<S> supports{};

  BasicGirder<S> girder() const {
    detail::check_size(width, end_width, "width");
    detail::check_size(depth, end_depth, "depth");
    return detail::make_girder<S>(
        *this,
        {{name(ChordOf::base_left), chord}, {name(ChordOf::base_right), chord}, {name(ChordOf::apex), apex_chord.given ? apex_chord : chord}},
        {{"base", 0, 1, faces.base}, {"right", 1, 2, faces.right}, {"left", 0, 2, faces.left}}, S(width / S(2)),
        [this](std::size_t c, const S& t) {
          const S y = S(detail::tapered(width, end_width, t) / S(2)), z = S(detail::tapered(depth, end_depth, t) / S(2));
          const bool up = (c == 2) != apex_down;
          return std::array<S, 2>{c == 2 ? S(0) : (c == 0 ? y : S(-y)), up ? z : S(-z)};
        });
  }
};
using TriangularGirder = BasicTriangularGirder<double>;

/// Two chords `depth` apart, one above the other (side by side where `flat`), with one face, the web.
template <Scalar S = double>
struct BasicLadderGirder {
  std::size_t bays = 0;
  S bay_length = S(0);
  std::vector<S> bay_lengths{};
  S depth = S(0);
  std::optional<S> end_depth{};
  bool flat = false;
  BasicBar<S> chord{}, top_chord{};  ///< top_chord not given: like the bottom one
  BasicFace<S> web{};
  BasicDiaphragms<S> diaphragms{};
  Modules modules{};
  BasicAxis<S> axis{};
  BasicSupports<S> supports{};

  BasicGirder<S> girder() const {
    detail::check_size(depth, end_depth, "depth");
    return detail::make_girder<S>(
        *this, {{name(ChordOf::bottom), chord}, {name(ChordOf::top), top_chord.given ? top_chord : chord}}, {{"web", 0, 1, web}},
        flat ? S(depth / S(2)) : S(0), [this](std::size_t c, const S& t) {
          const S half = S(detail::tapered(depth, end_depth, t) / S(2));
          const S at = c == 0 ? S(-half) : half;
          return flat ? std::array<S, 2>{at, S(0)} : std::array<S, 2>{S(0), at};
        });
  }
};
using LadderGirder = BasicLadderGirder<double>;

/// A chord of a ring, at y (to the left) and z (up) from the axis [m].
template <Scalar S = double>
struct BasicRingChord {
  std::string name;
  S y = S(0), z = S(0);
  BasicBar<S> bar{};
};
using RingChord = BasicRingChord<double>;

/// Any closed ring of three or more chords; face i lies between chord i and the next one, the last back to the first.
template <Scalar S = double>
struct BasicRingGirder {
  std::size_t bays = 0;
  S bay_length = S(0);
  std::vector<S> bay_lengths{};
  std::vector<BasicRingChord<S>> ring{};
  std::vector<BasicFace<S>> faces{};  ///< one for all, or one for each
  BasicDiaphragms<S> diaphragms{};
  Modules modules{};
  BasicAxis<S> axis{};
  BasicSupports<S> supports{};

  BasicGirder<S> girder() const {
    const std::size_t n = ring.size();
    if (n < 3) fail<BadDescription>("girder", "its ring has " + std::to_string(n) + " chords", "three chords or more are accepted");
    if (faces.size() != 1 && faces.size() != n)
      fail<BadDescription>("girder", std::to_string(faces.size()) + " faces are given for " + std::to_string(n) + " chords",
                           "one face for all, or one for each chord, is accepted");
    std::vector<BasicChord<S>> chords;
    std::vector<BasicGirderFace<S>> sides;
    S reach = S(0);
    for (std::size_t c = 0; c < n; ++c) {
      chords.push_back({ring[c].name, ring[c].bar});
      sides.push_back({ring[c].name + " to " + ring[(c + 1) % n].name, c, (c + 1) % n, faces.size() == 1 ? faces[0] : faces[c]});
      reach = larger(reach, magnitude(ring[c].y));
    }
    return detail::make_girder<S>(*this, std::move(chords), std::move(sides), reach,
                                  [this](std::size_t c, const S&) { return std::array<S, 2>{ring[c].y, ring[c].z}; });
  }
};
using RingGirder = BasicRingGirder<double>;

}  // namespace baywork
