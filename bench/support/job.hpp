// SPDX-License-Identifier: MIT
// One girder made ready for every method: checked members, a numbering that keeps the band narrow, a load.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/frame/girder_model.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>

#include "girders.hpp"
#include "member_entries.hpp"

namespace bench {

using Prepared = baywork::detail::PreparedFrame<double>;

/// The numbers of a member's sort.
inline const baywork::detail::MemberIn<double>& plain_of(const Prepared& p, std::size_t sort) {
  return p.sorts[sort].plain;
}
inline const baywork::detail::MemberIn<baywork::detail::Twofold<double>>& accurate_of(const Prepared& p,
                                                                                      std::size_t sort) {
  return p.sorts[sort].accurate;
}

/// Numbers of the unknowns, six per node in the frame's order of motions; below zero where a motion is none.
struct Numbering {
  std::vector<int> number;
  int count = 0;
  int half_band = 0;  ///< largest difference of two unknowns that a stiffness ties
};

/// How the unknowns of every station follow each other: nodes in this order, a node's turns before or after its
/// displacements.
struct StationOrder {
  std::array<std::size_t, 4> node{0, 1, 2, 3};
  unsigned turns_last = 0;  ///< one bit for each node
};

inline Numbering numbered(const GirderModel& m, const Prepared& p, const StationOrder& order) {
  constexpr std::array<std::size_t, 6> motions{3, 4, 5, 1, 2, 0};
  Numbering n;
  n.number.assign(6 * p.frame.nodes.size(), -1);
  const std::size_t chords = m.girder.chords.size();
  for (const std::size_t first : m.nodes_of_station)
    for (std::size_t c = 0; c < chords; ++c)
      for (std::size_t k = 0; k < 6; ++k) {
        const std::size_t node = first + order.node[c];
        const std::size_t motion = (order.turns_last >> c & 1U) != 0 ? motions[5 - k] : motions[k];
        if (p.freedoms.of(node, motion) >= 0) n.number[6 * node + motion] = n.count++;
      }
  return n;
}

inline std::array<int, 12> numbers_of(const Prepared& p, const Numbering& n, std::size_t member) {
  std::array<int, 12> out{};
  for (std::size_t k = 0; k < 6; ++k) {
    out[k] = n.number[6 * p.frame.members[member].from + k];
    out[6 + k] = n.number[6 * p.frame.members[member].to + k];
  }
  return out;
}

/// Largest difference of numbers over the members from `first` to `last`.
inline int half_band_of(const Prepared& p, const Numbering& n, const std::vector<MemberEntries<double>>& entries,
                        const std::vector<std::size_t>& members) {
  int widest = 0;
  for (const std::size_t i : members) {
    const std::array<int, 12> number = numbers_of(p, n, i);
    const MemberEntries<double>& e = entries[p.sort_of[i]];
    for (std::size_t k = 0; k < e.count; ++k) {
      const int a = number[e.row[k]], b = number[e.column[k]];
      if (a >= 0 && b >= 0) widest = (std::max)(widest, std::abs(a - b));
    }
  }
  return widest;
}

/// Tries every order of a station's nodes and keeps the one of the narrowest band over the first bays.
inline Numbering narrow_numbering(const GirderModel& m, const Prepared& p) {
  const std::size_t chords = m.girder.chords.size();
  if (p.frame.nodes.size() != chords * m.nodes_of_station.size())
    fail<BadDescription>("bench", "a station has joints between its chords", "chord joints alone are accepted");
  std::vector<MemberEntries<double>> entries(p.sorts.size());
  for (std::size_t s = 0; s < p.sorts.size(); ++s) member_entries(plain_of(p, s), entries[s]);
  std::vector<std::size_t> all(p.frame.members.size()), first;
  std::iota(all.begin(), all.end(), std::size_t{0});
  const std::size_t near = chords * (std::min)(m.nodes_of_station.size(), std::size_t{7});
  for (const std::size_t i : all)
    if (p.frame.members[i].from < near && p.frame.members[i].to < near) first.push_back(i);

  const auto first_nodes = near / chords;
  GirderModel piece;  // the first stations alone, so that a long girder is numbered once
  piece.girder.chords = m.girder.chords;
  piece.nodes_of_station.assign(m.nodes_of_station.begin(),
                                m.nodes_of_station.begin() + static_cast<std::ptrdiff_t>(first_nodes));
  StationOrder order, best;
  int narrowest = 1 << 30;
  do {
    for (order.turns_last = 0; order.turns_last < (1U << chords); ++order.turns_last) {
      const int width = half_band_of(p, numbered(piece, p, order), entries, first);
      if (width < narrowest) {
        narrowest = width;
        best = order;
      }
    }
  } while (std::next_permutation(order.node.begin(), order.node.begin() + static_cast<std::ptrdiff_t>(chords)));
  Numbering n = numbered(m, p, best);
  n.half_band = half_band_of(p, n, entries, all);
  return n;
}

struct Job {
  Prepared prepared;
  std::size_t bays = 0;
  std::size_t mid_node = 0;  ///< a lower chord's joint at mid-length or, held there, five bays on
  Numbering numbering;
  std::vector<std::array<int, 12>> numbers;  ///< of each member
  FrameLoads loads;                          ///< a force downwards and one across on every joint

  Job(Kind kind, std::size_t n) : Job(model_of(girder(kind, n))) {}
  explicit Job(const GirderModel& m) : prepared(m.frame), bays(m.girder.bays()), mid_node(m.chord_node(bays / 2, 0)) {
    for (const Support& s : prepared.frame.supports)
      for (const auto& motion : s.motion)
        if (motion.kind == BasicRestraint<double>::Kind::spring)
          fail<BadDescription>("bench", "a support is a spring", "rigid supports are accepted");
    if (prepared.freedoms.of(mid_node, 2) < 0) mid_node = m.chord_node(bays / 2 + 5, 0);  // not at a support
    numbering = narrow_numbering(m, prepared);
    numbers.reserve(prepared.frame.members.size());
    for (std::size_t i = 0; i < prepared.frame.members.size(); ++i)
      numbers.push_back(numbers_of(prepared, numbering, i));
    for (std::size_t i = 0; i < prepared.frame.nodes.size(); ++i)
      loads.force(i, {0.0, 0.1_kN * static_cast<double>(1 + i % 2), -1.0_kN});
  }
  std::size_t unknowns() const { return static_cast<std::size_t>(numbering.count); }

  /// The load as a right-hand side in an order of unknowns (six numbers per node), `length` numbers long; the k-th
  /// further one turns it about.
  std::vector<double> right_hand_sides(const std::vector<int>& number, std::size_t length, std::size_t count) const {
    std::vector<double> b(length * count, 0.0);
    for (std::size_t k = 0; k < count; ++k)
      for (const NodeLoad& l : loads.on_nodes)
        for (std::size_t i = 0; i < 3; ++i)
          if (const int at = number[6 * l.node + i]; at >= 0)
            b[k * length + static_cast<std::size_t>(at)] =
                k == 0 ? l.force[i] : l.force[i] * static_cast<double>((l.node + k) % 7);
    return b;
  }
};

}  // namespace bench
