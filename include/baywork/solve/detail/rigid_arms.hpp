// SPDX-License-Identifier: MIT
// Positions within a chain: from a station's reference to its joints, and from station to station.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include <baywork/core/vec3.hpp>
#include <baywork/solve/detail/chain_runs.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>

namespace baywork::detail {

/// A term of a linear combination: factor times unknown number `of`.
template <class S>
struct Term {
  std::size_t of = 0;
  S factor = S(0);
};

/// Motion k of the point at `arm` from a reference that moves by r = (t, ω): t + ω × arm, or ω. As up to three terms.
template <class S>
std::size_t rigid_terms(std::size_t k, const Vec3<S>& arm, std::array<Term<S>, 3>& out) {
  out[0] = {k, S(1)};
  if (k >= 3) return 1;
  const std::size_t j = (k + 1) % 3, l = (k + 2) % 3;  // (ω × d)_k = ω_j d_l - ω_l d_j
  out[1] = {3 + j, arm[l]};
  out[2] = {3 + l, S(-arm[j])};
  return 3;
}

/// Motions of the point at `arm`, given the reference's.
template <class R>
std::array<R, 6> rigid_motion(const std::array<R, 6>& r, const Vec3<R>& arm) {
  const Vec3<R> w{r[3], r[4], r[5]}, d = cross(w, arm);
  return {R(r[0] + d.x), R(r[1] + d.y), R(r[2] + d.z), r[3], r[4], r[5]};
}

/// Adds to the six forces at the reference what six forces at `arm` amount to there: f and m + arm × f.
template <class R>
void add_resultant(const R* force, const Vec3<R>& arm, R* out) {
  const Vec3<R> f{force[0], force[1], force[2]}, m = cross(arm, f);
  for (std::size_t k = 0; k < 3; ++k) {
    out[k] += f[k];
    out[3 + k] += R(force[3 + k] + m[k]);
  }
}

/// From one node to another: exact to twice the digits.
template <class S>
Vec3<accurate_t<S>> arm_between(const BasicFrame<S>& frame, std::size_t from, std::size_t to) {
  using A = accurate_t<S>;
  const Vec3<S>&a = frame.nodes[from].at, &b = frame.nodes[to].at;
  return {A(A(b.x) - A(a.x)), A(A(b.y) - A(a.y)), A(A(b.z) - A(a.z))};
}

/// Positions along a chain, once in the scalar and once to twice its digits.
template <class S>
class ChainArms {
 public:
  using A = accurate_t<S>;

  ChainArms() = default;
  ChainArms(const BasicFrame<S>& frame, const ChainRuns<S>& runs) {
    const Lists& stations = runs.bays().layout().stations;
    const auto put = [](std::vector<Vec3<A>>& wide, std::vector<Vec3<S>>& plain, const Vec3<A>& d) {
      wide.push_back(d);
      plain.push_back({rounded<S>(d.x), rounded<S>(d.y), rounded<S>(d.z)});
    };
    for (std::size_t j = 0; j < runs.stations(); ++j) {
      const std::size_t s = runs.station(j), ref = *stations.begin(s);
      first_.push_back(plain_.size());
      for (const std::uint32_t* n = stations.begin(s); n != stations.end(s); ++n) put(wide_, plain_, arm_between(frame, ref, *n));
      if (j + 1 < runs.stations()) put(step_wide_, step_, arm_between(frame, ref, *stations.begin(runs.station(j + 1))));
    }
  }

  const Vec3<S>* plain(std::size_t j) const { return plain_.data() + first_[j]; }
  const Vec3<A>* wide(std::size_t j) const { return wide_.data() + first_[j]; }
  /// From the reference of station j to that of the next one.
  const Vec3<S>& step(std::size_t j) const { return step_[j]; }
  const Vec3<A>& step_wide(std::size_t j) const { return step_wide_[j]; }

 private:
  std::vector<std::size_t> first_;
  std::vector<Vec3<S>> plain_, step_;
  std::vector<Vec3<A>> wide_, step_wide_;
};

}  // namespace baywork::detail
