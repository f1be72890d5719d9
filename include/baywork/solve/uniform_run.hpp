// SPDX-License-Identifier: MIT
// Long girders of equal cells: solved by joining equal stretches, at a cost that grows with the logarithm of their length.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/validate.hpp>
#include <baywork/solve/detail/run_engine.hpp>
#include <baywork/solve/run_description.hpp>

namespace baywork {

/// Scratch memory of a run's solve, owned by the caller and reused.
template <Scalar S = double>
class BasicRunWorkspace {
  template <Scalar T>
  friend class BasicUniformRun;
  detail::RunEngine<S, S> engine_;
};

template <Scalar S = double>
struct BasicCertifiedRun {
  BasicRunAnswer<S> answer;
  Certificate certificate{};
};

/// A girder of `cells` equal cells in a row. The cell is a frame without supports; its last station is its first one
/// moved by the period. Each cell owns the members of its first station; those that the frame has in its last station
/// exist once, at the end of the run. A cell may hold several bays (alternating diagonals need two); keep it short,
/// since inside a cell digits are lost as in any stiffness method.
///
/// The whole frame is never built: a stretch between two supports, single loads or wanted places costs as many joins as
/// its length has binary digits, and its digits do not wear off with length (see detail::RunSegment). `solve` computes
/// in the scalar itself; `certified` in twice its digits, and tells how far `solve` is off.
template <Scalar S = double>
class BasicUniformRun {
 public:
  BasicUniformRun(BasicFrame<S> cell, BasicRunLayout<S> layout)
      : prepared_(std::move(cell)), layout_(std::move(layout)) {
    for (const BasicSupport<S>& s : prepared_.frame.supports)
      for (const BasicRestraint<S>& r : s.motion)
        if (r.kind != BasicRestraint<S>::Kind::free)
          fail<BadDescription>("uniform run", "its cell has a support at " + prepared_.frame.name_of_node(s.node),
                               "supports of the run's stations are accepted");
    if (layout_.cells == 0) fail<BadDescription>("uniform run", "it has no cells", "one cell or more are accepted");
    station_ = detail::run_station(prepared_, layout_);
    check_supports();
    check_rigid_motions();
  }

  const BasicFrame<S>& cell() const noexcept { return prepared_.frame; }
  const BasicRunLayout<S>& layout() const noexcept { return layout_; }
  /// Nodes of the cell's first station, in the order of a station's motions.
  const std::vector<std::size_t>& joints() const noexcept { return station_.first; }

  BasicRunAnswer<S> solve(const BasicRunLoads<S>& loads, const RunWanted& wanted) const {
    BasicRunWorkspace<S> space;
    BasicRunAnswer<S> answer;
    solve(loads, wanted, answer, space);
    return answer;
  }
  void solve(const BasicRunLoads<S>& loads, const RunWanted& wanted, BasicRunAnswer<S>& answer,
             BasicRunWorkspace<S>& space) const {
    check(loads, wanted);
    space.engine_.solve(prepared_, station_, layout_, loads, wanted, answer);
  }

  /// The answer from numbers of twice the digits. The certificate's errors are the differences between it and what
  /// `solve` returns, so they bound the errors of both; each against the largest value of its kind in the answer, a
  /// kind that is all but absent against a thousandth of the other by a member's length (see Certificate).
  BasicCertifiedRun<S> certified(const BasicRunLoads<S>& loads,
                                 const RunWanted& wanted) const requires std::floating_point<S> {
    BasicCertifiedRun<S> out;
    const BasicRunAnswer<S> plain = solve(loads, wanted);
    detail::RunEngine<S, detail::accurate_t<S>> engine;
    engine.solve(prepared_, station_, layout_, loads, wanted, out.answer);
    out.certificate = difference(plain, out.answer);
    return out;
  }

 private:
  void check_supports() const {
    for (const BasicRunSupport<S>& s : layout_.supports) {
      const std::string place = "support at station " + std::to_string(s.station + 1);
      if (s.station > layout_.cells)
        fail<BadDescription>(place, "the run has no such station",
                             "stations 1 to " + std::to_string(layout_.cells + 1) + " are accepted");
      if (s.node >= prepared_.frame.nodes.size() || station_.joint_of[s.node] < 0 || station_.on_last[s.node] != 0)
        fail<BadDescription>(place, "node " + std::to_string(s.node + 1) + " is not on the cell's first station",
                             "a joint of it is accepted");
      for (const BasicRestraint<S>& r : s.motion) {
        if (r.kind == BasicRestraint<S>::Kind::spring) require::positive(r.stiffness, place, "spring stiffness");
        require::finite(r.displacement, place, "prescribed displacement");
      }
      for (const BasicRunSupport<S>& other : layout_.supports)
        if (&other != &s && other.station == s.station && other.node == s.node)
          fail<BadDescription>(place, "a joint is held by two supports", "one support for each joint is accepted");
    }
  }

  /// The supports against the six rigid motions of the whole run, by largest pivots: a matter of geometry alone, since
  /// the cells themselves pass on all six resultants. Each rotation is measured by the largest lever that it has.
  void check_rigid_motions() const {
    std::vector<std::array<double, 6>> rows;
    std::array<double, 6> size{};
    const Vec3<S>& origin = prepared_.frame.nodes[station_.first[0]].at;
    const Vec3<S> period = prepared_.frame.nodes[station_.last[0]].at - origin;
    for (const BasicRunSupport<S>& s : layout_.supports) {
      const Vec3<S> d = prepared_.frame.nodes[s.node].at - origin + S(static_cast<double>(s.station)) * period;
      const double x = value_of(d.x), y = value_of(d.y), z = value_of(d.z);
      const std::array<std::array<double, 6>, 6> motion{{{1, 0, 0, 0, z, -y},
                                                         {0, 1, 0, -z, 0, x},
                                                         {0, 0, 1, y, -x, 0},
                                                         {0, 0, 0, 1, 0, 0},
                                                         {0, 0, 0, 0, 1, 0},
                                                         {0, 0, 0, 0, 0, 1}}};
      for (std::size_t k = 0; k < 6; ++k) {
        if (s.motion[k].kind == BasicRestraint<S>::Kind::free) continue;
        if (station_.local[6 * static_cast<std::size_t>(station_.joint_of[s.node]) + k] == detail::RunStation::idle)
          continue;
        rows.push_back(motion[k]);
        for (std::size_t c = 0; c < 6; ++c) size[c] = (std::max)(size[c], std::abs(motion[k][c]));
      }
    }
    for (int step = 0; step < 6; ++step) {
      std::size_t row = 0, column = 6;
      double best = 1e-12;
      for (std::size_t r = 0; r < rows.size(); ++r)
        for (std::size_t c = 0; c < 6; ++c)
          if (size[c] > 0 && std::abs(rows[r][c]) > best * size[c])
            best = std::abs(rows[row = r][column = c]) / size[c];
      if (column == 6)
        fail<UnstableFrame>("uniform run", "it can move as a whole without any support resisting",
                            "supports that hold all its six rigid motions are accepted");
      const std::array<double, 6> pivot = rows[row];
      for (std::array<double, 6>& other : rows) {
        const double factor = other[column] / pivot[column];
        for (std::size_t c = 0; c < 6; ++c) other[c] -= factor * pivot[c];
        other[column] = 0;
      }
      rows[row] = {};
    }
  }

  void check(const BasicRunLoads<S>& loads, const RunWanted& wanted) const {
    check(loads.everywhere);
    for (const BasicCellLoads<S>& l : loads.at) {
      require_cell(l.cell);
      check(l.loads);
      for (const BasicMemberLoad<S>& load : l.loads.on_members)
        if (station_.closes[load.member] != 0 && l.cell + 1 != layout_.cells)
          fail<BadDescription>(
              "load on " + prepared_.frame.name_of_member(load.member) + " of cell " + std::to_string(l.cell + 1),
              "the last station's members belong to the next cell", "a load on that cell's first station is accepted");
    }
    for (const std::size_t c : wanted.cells) require_cell(c);
    for (const std::size_t s : wanted.stations)
      if (s > layout_.cells)
        fail<BadDescription>("uniform run", "station " + std::to_string(s + 1) + " is asked for",
                             "stations 1 to " + std::to_string(layout_.cells + 1) + " are accepted");
  }
  void check(const BasicFrameLoads<S>& loads) const {
    validate(loads, prepared_.frame);  // refuses motions of supports too: the cell has none
  }
  void require_cell(std::size_t c) const {
    if (c >= layout_.cells)
      fail<BadDescription>("uniform run", "cell " + std::to_string(c + 1) + " is named",
                           "cells 1 to " + std::to_string(layout_.cells) + " are accepted");
  }

  Certificate difference(const BasicRunAnswer<S>& a, const BasicRunAnswer<S>& b) const {
    std::array<double, 4> size{}, apart{};  // displacements, rotations, forces, moments
    const auto see = [&](std::size_t kind, const S& x, const S& y) {
      size[kind] = (std::max)(size[kind], std::abs(value_of(y)));
      const double d = std::abs(value_of(S(x - y)));
      if (!(d <= apart[kind])) apart[kind] = d;
    };
    const auto motions = [&](const std::vector<S>& x, const std::vector<S>& y) {
      for (std::size_t i = 0; i < x.size(); ++i) see(i % 6 < 3 ? 0 : 1, x[i], y[i]);
    };
    const auto forces = [&](const std::array<S, 6>& x, const std::array<S, 6>& y) {
      for (std::size_t k = 0; k < 6; ++k) see(k < 3 ? 2 : 3, x[k], y[k]);
    };
    for (std::size_t i = 0; i < a.stations.size(); ++i) motions(a.stations[i].motions, b.stations[i].motions);
    for (std::size_t i = 0; i < a.cells.size(); ++i) {
      motions(a.cells[i].motions, b.cells[i].motions);
      for (std::size_t m = 0; m < a.cells[i].members.size(); ++m) {
        forces(a.cells[i].members[m].start, b.cells[i].members[m].start);
        forces(a.cells[i].members[m].end, b.cells[i].members[m].end);
      }
    }
    for (std::size_t i = 0; i < a.reactions.size(); ++i) forces(a.reactions[i].value, b.reactions[i].value);
    const double shortest = prepared_.shortest, longest = prepared_.longest;
    const auto error = [&](std::size_t kind, double floor) {
      const double by = (std::max)(size[kind], floor);
      return by > 0 ? apart[kind] / by : apart[kind];
    };
    Certificate c;
    c.displacement_error = (std::max)(error(0, 1e-3 * size[1] * shortest), error(1, 1e-3 * size[0] / longest));
    c.force_error = (std::max)(error(2, 1e-3 * size[3] / longest), error(3, 1e-3 * size[2] * shortest));
    return c;
  }

  detail::PreparedFrame<S> prepared_;
  BasicRunLayout<S> layout_;
  detail::RunStation station_;
};

using UniformRun = BasicUniformRun<double>;
using RunWorkspace = BasicRunWorkspace<double>;
using CertifiedRun = BasicCertifiedRun<double>;

}  // namespace baywork
