// SPDX-License-Identifier: MIT
// Joints carried along with the rigid motion of one of them, to twice the digits: four at a time where the machine can.
#pragma once

#include <algorithm>
#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/solve/detail/rigid_arms.hpp>
#include <baywork/solve/detail/twofold_lanes.hpp>

#ifdef BAYWORK_DISPATCHED_KERNELS

namespace baywork::detail::twofold_lane {

/// Four joints: where they are, the six numbers that each moves besides, and where its motions go ((hi, lo) six times).
struct FourJoints {
  std::array<const Vec3<double>*, twofold_lanes> at{};
  std::array<const double*, twofold_lanes> besides{};
  std::array<double*, twofold_lanes> motions{};
};

/// See carry_along below; `r`: (hi, lo) six times.
BAYWORK_LANES_FUNCTION void carry_four(const double* r, const Vec3<double>& base, const FourJoints& j) {
  Twofolds d[3], u[6];
  for (std::size_t k = 0; k < 3; ++k) {
    const Twofolds from{base[k] - Lanes{}, Lanes{}}, to{Lanes{(*j.at[0])[k], (*j.at[1])[k], (*j.at[2])[k], (*j.at[3])[k]}, Lanes{}};
    subtract(to, from, d[k]);
  }
  for (std::size_t k = 0; k < 6; ++k) u[k] = {r[2 * k] - Lanes{}, r[2 * k + 1] - Lanes{}};
  for (std::size_t k = 0, m = 1, n = 2; k < 3; ++k, m = (m + 1) % 3, n = (n + 1) % 3) {
    Twofolds turned;
    multiply(u[3 + m], d[n], turned);
    subtract_product(u[3 + n], d[m], turned);
    add(u[k], turned, u[k]);
  }
  Lanes besides[8];  // numbers 0 to 3, and 2 to 5, of four joints; then one number of all four
  for (std::size_t i = 0; i < 4; ++i) {
    besides[i] = at(j.besides[i]).v;
    besides[4 + i] = at(j.besides[i] + 2).v;
  }
  transpose(besides[0], besides[1], besides[2], besides[3]);
  transpose(besides[4], besides[5], besides[6], besides[7]);
  for (std::size_t k = 0; k < 6; ++k) {
    add(u[k], {besides[k < 4 ? k : k + 2], Lanes{}}, u[k]);
    tidy(u[k]);
  }
  for (std::size_t i = 0; i < 3; ++i) {
    Lanes a = u[2 * i].hi, b = u[2 * i].lo, c = u[2 * i + 1].hi, e = u[2 * i + 1].lo;
    transpose(a, b, c, e);
    at(j.motions[0] + 4 * i).v = a;
    at(j.motions[1] + 4 * i).v = b;
    at(j.motions[2] + 4 * i).v = c;
    at(j.motions[3] + 4 * i).v = e;
  }
}

}  // namespace baywork::detail::twofold_lane

#endif

namespace baywork::detail {

/// motions of `count` nodes, six each := r of the node `base` continued to them, t + ω × d and ω, + what each moves
/// besides, six numbers each.
template <class S>
void carry_along(const BasicFrame<S>& frame, std::size_t base, const std::array<accurate_t<S>, 6>& r,
                 const std::uint32_t* nodes, std::size_t count, const S* besides, std::vector<accurate_t<S>>& motions) {
  using A = accurate_t<S>;
#ifdef BAYWORK_DISPATCHED_KERNELS
  if constexpr (std::same_as<S, double>) {
    if (has_twofold_lanes()) {
      for (std::size_t first = 0; first < count; first += twofold_lanes) {
        twofold_lane::FourJoints four;
        for (std::size_t lane = 0; lane < twofold_lanes; ++lane) {
          const std::size_t i = (std::min)(first + lane, count - 1);  // the last one again where fewer are left
          four.at[lane] = &frame.nodes[nodes[i]].at;
          four.besides[lane] = besides + 6 * i;
          four.motions[lane] = reinterpret_cast<double*>(motions.data() + 6 * std::size_t{nodes[i]});
        }
        twofold_lane::carry_four(reinterpret_cast<const double*>(r.data()), frame.nodes[base].at, four);
      }
      return;
    }
  }
#endif
  for (std::size_t i = 0; i < count; ++i) {
    const std::array<A, 6> rigid = rigid_motion(r, arm_between(frame, base, nodes[i]));
    for (std::size_t k = 0; k < 6; ++k) motions[6 * std::size_t{nodes[i]} + k] = A(rigid[k] + A(besides[6 * i + k]));
  }
}

}  // namespace baywork::detail
