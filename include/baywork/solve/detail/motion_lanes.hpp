// SPDX-License-Identifier: MIT
// Motions of all nodes, added and seen in one pass, in lanes.
#pragma once

#include <cstddef>

#include <baywork/solve/detail/twofold_lanes.hpp>

#ifdef BAYWORK_DISPATCHED_KERNELS

namespace baywork::detail::twofold_lane {

/// Values of the six motions of nodes, each twice: those that have been largest in each of their places.
struct LargestMotions {
  Bits first{}, middle{}, last{};
};

BAYWORK_LANES_HELPER void see_pairs(const Lanes& v, Bits& largest) {
  see(v + __builtin_shufflevector(v, v, 1, 0, 3, 2), largest);
}
/// A node's motions, (hi, lo) six times.
BAYWORK_LANES_HELPER void see_node(const double* u, LargestMotions& m) {
  const Lanes a = at(u).v, b = at(u + 4).v, c = at(u + 8).v;
  see_pairs(a, m.first);
  see_pairs(b, m.middle);
  see_pairs(c, m.last);
}
/// Displacements and rotations apart.
BAYWORK_LANES_HELPER void tell(const LargestMotions& m, double* sizes) {
  const Bits moved = __builtin_shufflevector(m.middle, m.middle, 0, 1, 0, 1), turned = __builtin_shufflevector(m.middle, m.middle, 2, 3, 2, 3);
  tell(Largest{m.first > moved ? m.first : moved, m.last > turned ? m.last : turned}, sizes);
}

/// The largest displacement and rotation of `nodes` nodes, taken into `sizes`.
BAYWORK_LANES_FUNCTION void see_motions(const double* u, std::size_t nodes, double* sizes) {
  LargestMotions m;
  for (const double* const end = u + 12 * nodes; u != end; u += 12) see_node(u, m);
  tell(m, sizes);
}
/// u += d, both seen.
BAYWORK_LANES_FUNCTION void add_motions(const double* d, std::size_t nodes, double* u, double* sizes_d, double* sizes_u) {
  LargestMotions in_d, in_u;
  for (const double* const end = d + 12 * nodes; d != end; d += 12, u += 12) {
    for (std::size_t i = 0; i < 12; i += 4) {
      const Lanes loaded = at(d + i).v;  // before a reference is taken, which would promise its alignment
      add_pair(u + i, loaded);
    }
    see_node(d, in_d);
    see_node(u, in_u);
  }
  tell(in_d, sizes_d);
  tell(in_u, sizes_u);
}

}  // namespace baywork::detail::twofold_lane

#endif
