// SPDX-License-Identifier: MIT
// A girder's way of being held as supports of its frame.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/core/motion.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/girder/girder.hpp>

namespace baywork {

namespace detail {

/// Chords whose joints at a station are lowest (or highest), within a millionth of the span.
template <class S>
std::vector<std::size_t> extreme_chords(const BasicGirder<S>& g, std::size_t station, bool lowest) {
  double best = value_of(g.joint(station, 0).z);
  for (std::size_t c = 1; c < g.chords.size(); ++c) {
    const double z = value_of(g.joint(station, c).z);
    best = lowest ? (std::min)(best, z) : (std::max)(best, z);
  }
  std::vector<std::size_t> out;
  for (std::size_t c = 0; c < g.chords.size(); ++c)
    if (std::abs(value_of(g.joint(station, c).z) - best) <= 1e-6 * value_of(g.span())) out.push_back(c);
  return out;
}

template <class S>
class SupportMaker {
 public:
  SupportMaker(const BasicGirder<S>& g, const std::vector<std::size_t>& nodes_of_station) : g_(g), nodes_(nodes_of_station) {}

  std::vector<BasicSupport<S>> make() {
    using Way = typename BasicSupports<S>::Way;
    switch (g_.supports.way) {
      case Way::individual: break;
      case Way::simply_supported: rest({0, g_.bays()}, true); break;
      case Way::hung: rest(stations(), false); break;
      case Way::continuous: rest(stations(), true); break;
      case Way::cantilever:
        for (std::size_t c = 0; c < g_.chords.size(); ++c)
          for (std::size_t m = 0; m < 6; ++m) at(0, c, static_cast<Motion>(m)).kind = BasicRestraint<S>::Kind::fixed;
        break;
    }
    for (const BasicHold<S>& h : g_.supports.holds)
      for (std::size_t m = 0; m < 6; ++m)
        if (h.motion[m].kind != BasicRestraint<S>::Kind::free)
          at(static_cast<std::size_t>(g_.station_at(value_of(h.x))), g_.chord(h.chord), static_cast<Motion>(m)) = h.motion[m];
    return std::move(out_);
  }

 private:
  std::vector<std::size_t> stations() const {
    std::vector<std::size_t> s;
    for (const S& x : g_.supports.at) s.push_back(static_cast<std::size_t>(g_.station_at(value_of(x))));
    return s;
  }
  /// Holds the lower (upper) chords at each station along z, the first of them along y, and one joint along x.
  void rest(const std::vector<std::size_t>& where, bool lower) {
    using Kind = typename BasicRestraint<S>::Kind;
    for (std::size_t i = 0; i < where.size(); ++i) {
      const std::vector<std::size_t> chords = extreme_chords(g_, where[i], lower);
      bool in_line = true;
      for (const std::size_t c : chords) {
        BasicRestraint<S>& z = at(where[i], c, Motion::uz);
        z.kind = is_infinite(g_.supports.stiffness) ? Kind::fixed : Kind::spring;
        z.stiffness = g_.supports.stiffness;
        const double apart = value_of(g_.joint(where[i], c).y) - value_of(g_.joint(where[i], chords[0]).y);
        in_line = in_line && std::abs(apart) <= 1e-6 * value_of(g_.span());
      }
      at(where[i], chords[0], Motion::uy).kind = Kind::fixed;
      if (in_line)
        for (std::size_t c = 0; c < g_.chords.size(); ++c) at(where[i], c, Motion::uy).kind = Kind::fixed;
      if (i == 0) at(where[i], chords[0], Motion::ux).kind = Kind::fixed;
    }
  }
  BasicRestraint<S>& at(std::size_t station, std::size_t chord, Motion m) {
    const std::size_t node = nodes_[station] + chord;
    for (BasicSupport<S>& s : out_)
      if (s.node == node) return s.motion[static_cast<std::size_t>(m)];
    out_.push_back({node, {}});
    return out_.back().motion[static_cast<std::size_t>(m)];
  }

  const BasicGirder<S>& g_;
  const std::vector<std::size_t>& nodes_;
  std::vector<BasicSupport<S>> out_;
};

}  // namespace detail

template <Scalar S>
std::vector<BasicSupport<S>> supports_of(const BasicGirder<S>& g, const std::vector<std::size_t>& nodes_of_station) {
  return detail::SupportMaker<S>(g, nodes_of_station).make();
}

}  // namespace baywork
