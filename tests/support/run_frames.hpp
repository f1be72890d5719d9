// SPDX-License-Identifier: MIT
// Cells of long uniform girders, random ones among them, and the same girders built bar by bar to compare with.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/solve/frame_answer.hpp>
#include <baywork/solve/run_description.hpp>

#include "random_frame.hpp"

namespace runs {

using namespace baywork;

/// Coordinates that a double holds exactly after any number of periods: so that both descriptions are the same frame.
inline double coarse(double x) { return std::round(x * 1024) / 1024; }
inline Vec3<> coarse(const Vec3<>& v) { return {coarse(v.x), coarse(v.y), coarse(v.z)}; }

struct Cell {
  Frame frame;
  std::vector<std::size_t> first, last;
};

/// A box of four tube-like chords, `bays` bays of `length` by `depth` with beam posts and, where asked for, diagonals
/// in all four faces that change direction from bay to bay.
inline Cell box(double length, double depth, std::size_t bays, bool braced) {
  Cell c;
  FrameSection chord, brace;
  chord = {210e9, 81e9, 1e-3, 5e-7, 5e-7, 1e-6};
  brace = {210e9, 81e9, 4e-4, 8e-8, 8e-8, 1.6e-7};
  const auto node = [](std::size_t i, std::size_t k) { return 4 * i + k % 4; };
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t k = 0; k < 4; ++k)
      c.frame.add_node({length * static_cast<double>(i), k == 1 || k == 2 ? depth : 0.0, k >= 2 ? depth : 0.0});
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t k = 0; k < 4; ++k) {
      c.frame.add_beam(node(i, k), node(i, k + 1), brace);
      if (i == bays) continue;
      c.frame.add_beam(node(i, k), node(i + 1, k), chord);
      if (braced && i % 2 == 0) c.frame.add_beam(node(i, k), node(i + 1, k + 1), brace);
      if (braced && i % 2 == 1) c.frame.add_beam(node(i, k + 1), node(i + 1, k), brace);
    }
  for (std::size_t k = 0; k < 4; ++k) {
    c.first.push_back(node(0, k));
    c.last.push_back(node(bays, k));
  }
  return c;
}

/// One to four chords of beams with soft joints and rigid arms, one to three bays, a skew period, posts, random braces.
inline Cell random_cell(Random& r, std::size_t chords) {
  Cell c;
  const std::size_t bays = 1 + r.below(3);
  const double depth = r.in(0.5, 1.5), bay = r.in(0.6, 2);
  const Vec3<> step = coarse(Vec3<>{bay, r.in(-0.3, 0.3), r.in(-0.3, 0.3)});
  std::vector<Vec3<>> shape;
  for (std::size_t k = 0; k < chords; ++k) {
    const double turn = 6.283185307179586 * static_cast<double>(k) / static_cast<double>(chords) + 0.3;
    shape.push_back(coarse(Vec3<>{r.in(-0.2, 0.2), depth * std::cos(turn), depth * std::sin(turn)}));
  }
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t k = 0; k < chords; ++k) {
      Vec3<> at = shape[k] + static_cast<double>(i) * step;
      if (i > 0 && i < bays) at += coarse(r.vector(0.1));
      c.frame.add_node(at);
    }
  const auto add = [&](std::size_t a, std::size_t b) -> Member& {
    Member m;
    m.from = a;
    m.to = b;
    m.section = random_section(r);
    const Vec3<> along = c.frame.nodes[b].at - c.frame.nodes[a].at;
    do m.up = r.vector(1);
    while (length(cross(m.up, along)) < 0.2 * length(along) * length(m.up));
    for (MemberEnd* e : {&m.start, &m.end}) {
      if (r.chance(0.2)) e->about_y = m.section.E * m.section.Iy * r.over_orders(0.1, 50);
      if (r.chance(0.1)) e->axial = m.section.E * m.section.A * r.over_orders(0.1, 50);
      if (r.chance(0.15)) e->offset = coarse(r.vector(0.08));
    }
    c.frame.add_member(m);
    return c.frame.members.back();
  };
  const auto node = [&](std::size_t i, std::size_t k) { return chords * i + k % chords; };
  for (std::size_t i = 0; i < bays; ++i)
    for (std::size_t k = 0; k < chords; ++k) add(node(i, k), node(i + 1, k));
  for (std::size_t i = 0; i <= bays; ++i)
    for (std::size_t k = 0; chords > 1 && k < (chords == 2 ? 1 : chords); ++k) add(node(i, k), node(i, k + 1));
  for (std::size_t n = r.below(6); chords > 1 && n > 0; --n) {
    const std::size_t i = r.below(bays), k = r.below(chords);
    Member& m = add(node(i, k), node(i + 1, k + 1 + r.below(chords - 1)));
    if (r.chance(0.4)) m.kind = MemberKind::axial;
  }
  for (std::size_t k = 0; k < chords; ++k) {
    c.first.push_back(node(0, k));
    c.last.push_back(node(bays, k));
  }
  return c;
}

/// The girder of `layout.cells` cells bar by bar: `node[cell][i]` and `member[cell][i]` are places of the cell's parts.
struct Built {
  Frame frame;
  std::vector<std::vector<std::size_t>> node, member;
};

inline Built built(const Cell& cell, const RunLayout& layout) {
  Built b;
  const Vec3<> period = cell.frame.nodes[cell.last[0]].at - cell.frame.nodes[cell.first[0]].at;
  const auto place = [](const std::vector<std::size_t>& list, std::size_t n) {
    return static_cast<std::size_t>(std::find(list.begin(), list.end(), n) - list.begin());
  };
  for (std::size_t c = 0; c < layout.cells; ++c) {
    std::vector<std::size_t> at(cell.frame.nodes.size()), bars(cell.frame.members.size());
    for (std::size_t n = 0; n < at.size(); ++n) {
      const std::size_t i = place(cell.first, n);
      at[n] = c > 0 && i < cell.first.size()
                  ? b.node[c - 1][cell.last[i]]
                  : b.frame.add_node(cell.frame.nodes[n].at + static_cast<double>(c) * period);
    }
    for (std::size_t m = 0; m < bars.size(); ++m) {
      Member copy = cell.frame.members[m];
      const bool closes =
          place(cell.last, copy.from) < cell.last.size() && place(cell.last, copy.to) < cell.last.size();
      if (closes && c + 1 < layout.cells) {
        bars[m] = static_cast<std::size_t>(-1);
        continue;
      }
      copy.from = at[copy.from];
      copy.to = at[copy.to];
      bars[m] = b.frame.add_member(copy);
    }
    b.node.push_back(at);
    b.member.push_back(bars);
  }
  for (const RunSupport& s : layout.supports) {
    const std::size_t n =
        s.station < layout.cells ? b.node[s.station][s.node] : b.node.back()[cell.last[place(cell.first, s.node)]];
    b.frame.supports.push_back({n, s.motion});
  }
  return b;
}

inline FrameLoads built(const Built& b, const RunLoads& loads) {
  FrameLoads all;
  const auto add = [&](const FrameLoads& some, std::size_t c) {
    for (NodeLoad l : some.on_nodes) {
      l.node = b.node[c][l.node];
      all.on_nodes.push_back(l);
    }
    for (MemberLoad l : some.on_members) {
      l.member = b.member[c][l.member];
      if (l.member < b.frame.members.size()) all.on_members.push_back(l);
    }
  };
  for (std::size_t c = 0; c < b.node.size(); ++c) add(loads.everywhere, c);
  for (const CellLoads& l : loads.at) add(l.loads, l.cell);
  return all;
}

/// Largest difference of what the run's answer holds from the built frame's answer, each kind of number against the
/// largest of its kind in the latter.
inline double difference(const Cell& cell, const RunAnswer& run, const Built& b, const FrameAnswer& whole) {
  std::array<double, 4> size{}, apart{};
  const auto see = [&](std::size_t kind, double x, double y) {
    apart[kind] = (std::max)(apart[kind], std::abs(x - y));
  };
  for (std::size_t i = 0; i < whole.motions.size(); ++i)
    size[i % 6 / 3] = (std::max)(size[i % 6 / 3], std::abs(whole.motions[i]));
  for (const MemberAnswer& m : whole.members)
    for (std::size_t k = 0; k < 6; ++k)
      size[2 + k / 3] = (std::max)({size[2 + k / 3], std::abs(m.start[k]), std::abs(m.end[k])});
  const auto motions = [&](const double* x, std::size_t n) {
    for (std::size_t k = 0; k < 6; ++k) see(k / 3, x[k], whole.motions[6 * n + k]);
  };
  for (const StationAnswer& s : run.stations)
    for (std::size_t i = 0; i < cell.first.size(); ++i)
      motions(&s.motions[6 * i],
              s.station < b.node.size() ? b.node[s.station][cell.first[i]] : b.node.back()[cell.last[i]]);
  for (const CellAnswer& c : run.cells) {
    for (std::size_t n = 0; n < b.node[c.cell].size(); ++n) motions(&c.motions[6 * n], b.node[c.cell][n]);
    for (std::size_t m = 0; m < c.members.size(); ++m)
      for (std::size_t k = 0; k < 6; ++k) {
        if (b.member[c.cell][m] >= whole.members.size()) continue;
        const MemberAnswer& same = whole.members[b.member[c.cell][m]];
        see(2 + k / 3, c.members[m].start[k], same.start[k]);
        see(2 + k / 3, c.members[m].end[k], same.end[k]);
      }
  }
  for (std::size_t j = 0; j < run.reactions.size(); ++j)
    for (std::size_t k = 0; k < 6; ++k) see(2 + k / 3, run.reactions[j].value[k], whole.reactions[j].value[k]);
  double worst = 0;
  for (std::size_t kind = 0; kind < 4; ++kind)
    worst = (std::max)(worst, size[kind] > 0 ? apart[kind] / size[kind] : 0.0);
  return worst;
}

/// Loads of every kind on some members and nodes of the cell.
inline FrameLoads random_loads(Random& r, const Frame& f) {
  FrameLoads loads;
  for (std::size_t n = 0; n < f.nodes.size(); ++n) {
    if (r.chance(0.6)) continue;
    loads.force(n, r.vector(1000));
    loads.couple(n, r.vector(300));
  }
  RandomFrame wrapped;
  wrapped.frame = f;
  random_member_loads(r, wrapped, loads);
  return loads;
}

}  // namespace runs
