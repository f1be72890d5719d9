// SPDX-License-Identifier: MIT
// The two end stations of a cell: which joints are partners, which motions they have, and which six fix the station.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/solve/detail/freedoms.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/run_description.hpp>

namespace baywork::detail {

struct RunStation {
  static constexpr int idle = -2, reference = -1;

  std::vector<std::size_t> first, last;  ///< nodes of the cell's frame, partners in the same order
  std::vector<int> local;                ///< six per joint: its number among the local motions, or one of the above
  std::size_t locals = 0;                ///< how many
  std::vector<int> joint_of;             ///< of each node of the frame: its place in `first`, or -1
  std::vector<char> on_last;             ///< of each node of the frame
  std::vector<char> closes;              ///< of each member: it lies in the last station
};

namespace detail_run {

template <class S>
void find_partners(const BasicFrame<S>& f, const Vec3<S>& period, RunStation& out) {
  const double size = std::sqrt(value_of(dot(period, period)));
  if (!(size > 0) || !is_finite(period))
    fail<BadDescription>("uniform run", "neither the joints of the cell's two stations nor its period are given",
                         "a period that is finite and not zero, or two lists of joints, are accepted");
  for (std::size_t i = 0; i < f.nodes.size(); ++i)
    for (std::size_t j = 0; j < f.nodes.size(); ++j) {
      const Vec3<S> d = f.nodes[j].at - f.nodes[i].at - period;
      if (std::sqrt(value_of(dot(d, d))) > 1e-9 * size) continue;
      out.first.push_back(i);
      out.last.push_back(j);
    }
  if (out.first.empty())
    fail<BadDescription>("uniform run", "no two joints of the cell are a period apart",
                         "a cell as long as its period is accepted");
}

template <class S>
void check_partners(const BasicFrame<S>& f, RunStation& s) {
  const std::string place = "uniform run";
  if (s.first.size() != s.last.size() || s.first.empty())
    fail<BadDescription>(place,
                         "the cell's last station does not match its first: they have " +
                             std::to_string(s.last.size()) + " and " + std::to_string(s.first.size()) + " joints",
                         "stations with the same joints are accepted");
  for (const std::vector<std::size_t>* list : {&s.first, &s.last})
    for (const std::size_t n : *list)
      if (n >= f.nodes.size())
        fail<BadDescription>(place, "joint " + std::to_string(n + 1) + " of a station does not exist",
                             "nodes 1 to " + std::to_string(f.nodes.size()) + " are accepted");
  const Vec3<S> period = f.nodes[s.last[0]].at - f.nodes[s.first[0]].at;
  const double size = std::sqrt(value_of(dot(period, period)));
  if (!(size > 0)) fail<BadDescription>(place, "the cell has no length", "stations apart from each other are accepted");
  s.joint_of.assign(f.nodes.size(), -1);
  s.on_last.assign(f.nodes.size(), 0);
  for (std::size_t i = 0; i < s.first.size(); ++i) {
    const Vec3<S> d = f.nodes[s.last[i]].at - f.nodes[s.first[i]].at - period;
    if (!(std::sqrt(value_of(dot(d, d))) <= 1e-9 * size))
      fail<BadDescription>(place, "the cell's last station does not match its first at " + f.name_of_node(s.last[i]),
                           "a last station that is the first one moved along is accepted");
    for (const std::size_t n : {s.first[i], s.last[i]}) {
      if (s.joint_of[n] >= 0)
        fail<BadDescription>(place, f.name_of_node(n) + " belongs to a station twice", "each joint once is accepted");
      s.joint_of[n] = static_cast<int>(i);
    }
    s.on_last[s.last[i]] = 1;
  }
}

/// Six translations that fix a station of joints without turning stiffness: the largest pivots of its lever arms.
template <class S>
void choose_reference_translations(const BasicFrame<S>& f, RunStation& s) {
  std::vector<std::array<double, 6>> rows;
  double size = 0;
  const auto arm = [&](std::size_t i) {
    const Vec3<S> d = f.nodes[s.first[i]].at - f.nodes[s.first[0]].at;
    return std::array<double, 3>{value_of(d.x), value_of(d.y), value_of(d.z)};
  };
  for (std::size_t i = 0; i < s.first.size(); ++i)
    for (const double v : arm(i)) size = std::abs(v) > size ? std::abs(v) : size;
  for (std::size_t i = 0; i < s.first.size(); ++i) {
    const std::array<double, 3> d = arm(i);
    const double x = d[0] / size, y = d[1] / size, z = d[2] / size;
    rows.push_back({1, 0, 0, 0, z, -y});
    rows.push_back({0, 1, 0, -z, 0, x});
    rows.push_back({0, 0, 1, y, -x, 0});
  }
  std::array<bool, 6> used{};
  for (int step = 0; step < 6; ++step) {
    std::size_t row = 0, column = 0;
    double best = 0;
    for (std::size_t r = 0; r < rows.size(); ++r)
      for (std::size_t c = 0; c < 6; ++c)
        if (!used[c] && std::abs(rows[r][c]) > best) best = std::abs(rows[row = r][column = c]);
    if (!(best > 1e-6))
      fail<BadDescription>("uniform run", "the joints of the cell's stations lie on a line and carry no couples",
                           "a station with three pinned joints apart, or with a joint where beams meet, is accepted");
    used[column] = true;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (r == row) continue;
      const double factor = rows[r][column] / rows[row][column];
      for (std::size_t c = 0; c < 6; ++c) rows[r][c] -= factor * rows[row][c];
    }
    rows[row] = {};
    s.local[6 * (row / 3) + row % 3] = RunStation::reference;
  }
}

}  // namespace detail_run

template <class S>
RunStation run_station(const PreparedFrame<S>& p, const BasicRunLayout<S>& layout) {
  const BasicFrame<S>& f = p.frame;
  RunStation s;
  s.first = layout.first;
  s.last = layout.last;
  if (s.first.empty() && s.last.empty()) detail_run::find_partners(f, layout.period, s);
  detail_run::check_partners(f, s);
  const std::vector<char> resists = nodes_that_resist_turning(f);
  s.local.assign(6 * s.first.size(), 0);
  bool fixed = false;  // by the six motions of the first joint that resists turning
  for (std::size_t i = 0; i < s.first.size(); ++i) {
    const bool turns = resists[s.first[i]] != 0 || resists[s.last[i]] != 0;
    for (std::size_t k = 0; k < 6; ++k)
      if (turns && !fixed)
        s.local[6 * i + k] = RunStation::reference;
      else if (!turns && k >= 3)
        s.local[6 * i + k] = RunStation::idle;
    fixed = fixed || turns;
  }
  if (!fixed) detail_run::choose_reference_translations(f, s);
  for (int& number : s.local)
    if (number == 0) number = static_cast<int>(s.locals++);
  for (const BasicMember<S>& m : f.members) s.closes.push_back(s.on_last[m.from] != 0 && s.on_last[m.to] != 0 ? 1 : 0);
  return s;
}

}  // namespace baywork::detail
