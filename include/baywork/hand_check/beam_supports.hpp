// SPDX-License-Identifier: MIT
// How a girder's joints are held, station by station, as supports of a beam.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/closed_form/beam_loads.hpp>
#include <baywork/response/response.hpp>

namespace baywork {

/// Supports of one plane of bending, with what a beam on a line cannot say.
struct PlaneSupports {
  std::vector<closed_form::BeamSupport<>> supports;  ///< by rising x
  std::vector<std::size_t> stations;                 ///< of each
  std::string not_a_beam;                            ///< why statics of a beam do not hold; empty where they do
  bool off_centre = false;                           ///< some place is held beside the middle of the section
  bool determinate() const {
    double turns = 0;
    for (const auto& s : supports) turns += s.rotational_stiffness > 0 ? 1 : 0;
    return not_a_beam.empty() && (turns == 0 ? supports.size() == 2 : (supports.size() == 1 && turns == 1));
  }
};

namespace detail {

class SupportReader {
 public:
  SupportReader(const Response& r, bool vertical) : r_(r), g_(r.girder()), vertical_(vertical) {}

  PlaneSupports read() {
    for (std::size_t i = 0; i < g_.stations.size(); ++i) read_station(i);
    if (along_x_ > 1) out_.not_a_beam = "the girder is held along x at several stations, which makes thrust";
    return out_;
  }

 private:
  static bool is_held(const Restraint& m) { return m.kind != Restraint::Kind::free; }
  const Support* at(std::size_t station, std::size_t chord) const {
    for (const Support& s : r_.model().frame.supports)
      if (s.node == r_.model().chord_node(station, chord)) return &s;
    return nullptr;
  }
  double displacement(const Support& s, Motion m) const {
    double d = s.motion[static_cast<std::size_t>(m)].displacement;
    for (const SupportMotion& l : r_.loads().motions)
      if (l.node == s.node && l.motion == m) d += l.displacement;
    return d;
  }
  /// How far a joint lies along the plane's load direction from the middle of the section, or across it.
  double offset(std::size_t station, std::size_t c, bool along) const {
    const bool z = along == vertical_;
    double mean = 0;
    for (std::size_t k = 0; k < g_.chords.size(); ++k) mean += z ? g_.joint(station, k).z : g_.joint(station, k).y;
    return (z ? g_.joint(station, c).z : g_.joint(station, c).y) - mean / static_cast<double>(g_.chords.size());
  }

  void read_station(std::size_t i) {
    closed_form::BeamSupport<> s{g_.stations[i], 0, 0, 0};
    const Motion across = vertical_ ? Motion::uz : Motion::uy;
    std::vector<double> along_x;  // offsets of joints held along x
    std::size_t held = 0, clamped = 0;
    double first = 0, moment = 0, size = 0;
    for (std::size_t c = 0; c < g_.chords.size(); ++c) {
      const Support* p = at(i, c);
      if (p == nullptr) continue;
      const Restraint& m = p->motion[static_cast<std::size_t>(across)];
      const Restraint& x = p->motion[static_cast<std::size_t>(Motion::ux)];
      if (is_held(m)) {
        s.stiffness += m.kind == Restraint::Kind::fixed ? rigid_stiffness : m.stiffness;
        const double d = displacement(*p, across);
        if (held++ == 0) first = d;
        if (std::abs(d - first) > 1e-12) out_.not_a_beam = "joints of one station settle differently";
        moment += offset(i, c, false);
        size = (std::max)(size, std::abs(offset(i, c, false)));
      }
      if (is_held(x)) {
        along_x.push_back(offset(i, c, true));
        if (x.kind == Restraint::Kind::spring) springs_ = true;
      }
      bool all = true, turns = false;
      for (std::size_t k = 0; k < 6; ++k) {
        all = all && p->motion[k].kind == Restraint::Kind::fixed;
        turns = turns || (k > 3 && is_held(p->motion[k]));
      }
      clamped += all ? 1 : 0;
      if (turns && !all) out_.not_a_beam = "joints are held against turning";
      if (displacement(*p, Motion::ux) != 0.0) out_.not_a_beam = "a support moves along x";
    }
    if (!along_x.empty()) ++along_x_;
    if (clamped > 0 && clamped < g_.chords.size()) out_.not_a_beam = "some of the chords are clamped";
    bool apart = false;
    for (const double z : along_x) apart = apart || std::abs(z - along_x.front()) > 1e-6 * g_.span();
    if (apart || clamped == g_.chords.size()) s.rotational_stiffness = rigid_stiffness;
    if (apart && springs_) out_.not_a_beam = "springs along x hold the section against turning";
    if (held > 0 && size > 0 && std::abs(moment) > 1e-6 * size) out_.off_centre = true;
    s.settlement = -first;
    if (s.stiffness > 0 || s.rotational_stiffness > 0) {
      out_.supports.push_back(s);
      out_.stations.push_back(i);
    }
  }

  const Response& r_;
  const Girder& g_;
  bool vertical_;
  PlaneSupports out_;
  std::size_t along_x_ = 0;
  bool springs_ = false;
};

}  // namespace detail

inline PlaneSupports plane_supports(const Response& r, bool vertical) {
  return detail::SupportReader(r, vertical).read();
}

/// Stations that cannot roll: z is held at two chords apart along y, or y at two chords apart along z.
inline std::vector<std::size_t> roll_supports(const Response& r) {
  const Girder& g = r.girder();
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < g.stations.size(); ++i) {
    std::vector<double> y, z;
    for (const Support& s : r.model().frame.supports)
      for (std::size_t c = 0; c < g.chords.size(); ++c) {
        if (s.node != r.model().chord_node(i, c)) continue;
        if (s.motion[2].kind == Restraint::Kind::fixed) y.push_back(g.joint(i, c).y);
        if (s.motion[1].kind == Restraint::Kind::fixed) z.push_back(g.joint(i, c).z);
      }
    bool held = false;
    for (const std::vector<double>* list : {&y, &z})
      for (const double v : *list) held = held || std::abs(v - list->front()) > 1e-6 * g.span();
    if (held) out.push_back(i);
  }
  return out;
}

}  // namespace baywork
