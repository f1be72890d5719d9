// SPDX-License-Identifier: MIT
// A long girder of equal cells in words: how often the cell comes, what holds it, what loads it, what is asked of it.
#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <vector>

#include <baywork/core/motion.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/solve/frame_answer.hpp>

namespace baywork {

/// Holds a joint of one station of the run. Station k is the first station of cell k, station `cells` the last one of
/// all; `node` is the joint's place in the cell's first station, as a node of the cell's frame.
template <Scalar S = double>
struct BasicRunSupport {
  std::size_t station = 0;
  std::size_t node = 0;
  std::array<BasicRestraint<S>, 6> motion{};  ///< ux, uy, uz, rx, ry, rz in global axes
};

template <Scalar S = double>
struct BasicRunLayout {
  std::size_t cells = 1;
  /// From a station to the next [m]; needed only where the two lists below are empty: then a station's joints are found
  /// as the nodes that have a partner just that far away.
  Vec3<S> period{};
  std::vector<std::size_t> first, last;  ///< the cell's nodes on its two stations, partners in the same order
  std::vector<BasicRunSupport<S>> supports{};

  BasicRestraint<S>& restraint(std::size_t station, std::size_t node, Motion motion) {
    for (BasicRunSupport<S>& s : supports)
      if (s.station == station && s.node == node) return s.motion[static_cast<std::size_t>(motion)];
    supports.push_back({station, node, {}});
    return supports.back().motion[static_cast<std::size_t>(motion)];
  }
  void fix(std::size_t station, std::size_t node, std::initializer_list<Motion> motions, const S& displacement = S(0)) {
    for (const Motion m : motions) restraint(station, node, m) = {BasicRestraint<S>::Kind::fixed, S(0), displacement};
  }
  void spring(std::size_t station, std::size_t node, Motion motion, const S& stiffness) {
    restraint(station, node, motion) = {BasicRestraint<S>::Kind::spring, stiffness, S(0)};
  }
};

template <Scalar S = double>
struct BasicCellLoads {
  std::size_t cell = 0;
  BasicFrameLoads<S> loads{};
};

/// Loads in the words of the cell's frame. Members that lie in the cell's last station exist once, at the end of the
/// run: so do loads on them. Motions of supports belong to the layout.
template <Scalar S = double>
struct BasicRunLoads {
  BasicFrameLoads<S> everywhere{};      ///< on every cell
  std::vector<BasicCellLoads<S>> at{};  ///< on chosen cells, on top of that
};

struct RunWanted {
  std::vector<std::size_t> stations{};  ///< 0 to `cells`
  std::vector<std::size_t> cells{};     ///< 0 to `cells` - 1
};

template <Scalar S = double>
struct BasicStationAnswer {
  std::size_t station = 0;
  std::vector<S> motions{};  ///< six for each node of the layout's `first`: ux, uy, uz [m], rx, ry, rz [rad]
};

template <Scalar S = double>
struct BasicCellAnswer {
  std::size_t cell = 0;
  std::vector<S> motions{};                     ///< six for each node of the cell's frame
  std::vector<BasicMemberAnswer<S>> members{};  ///< the last station's members: zero but in the last cell
};

template <Scalar S = double>
struct BasicRunReaction {
  std::size_t station = 0, node = 0;
  std::array<S, 6> value{};  ///< what the support does to the girder [N, Nm]
};

/// In the order in which things were asked for; reactions in the order of the layout's supports.
template <Scalar S = double>
struct BasicRunAnswer {
  std::vector<BasicStationAnswer<S>> stations;
  std::vector<BasicCellAnswer<S>> cells;
  std::vector<BasicRunReaction<S>> reactions;
};

using RunSupport = BasicRunSupport<double>;
using RunLayout = BasicRunLayout<double>;
using CellLoads = BasicCellLoads<double>;
using RunLoads = BasicRunLoads<double>;
using StationAnswer = BasicStationAnswer<double>;
using CellAnswer = BasicCellAnswer<double>;
using RunReaction = BasicRunReaction<double>;
using RunAnswer = BasicRunAnswer<double>;

}  // namespace baywork
