// SPDX-License-Identifier: MIT
// Displacements and member forces to twice the digits of double, to measure the errors of others by.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "job.hpp"

namespace bench {

using Wide = baywork::detail::Twofold<double>;

/// Forces and moments on both ends of a member, local axes: start fx, fy, fz, mx, my, mz, then end.
template <class R>
std::array<R, 12> end_forces(const baywork::detail::MemberIn<R>& m, const R* start, const R* end) {
  const MemberModes<R> q = m.stiffness * m.geometry.deformations(start, end);
  const R vy = R(R(q[2] + q[3]) * m.geometry.per_length), vz = R(R(q[4] + q[5]) * m.geometry.per_length);
  return {R(-q[0]), vy, R(-vz), R(-q[1]), q[4], q[2], q[0], R(-vy), vz, q[1], q[5], q[3]};
}

/// A band as L D Lᵀ in twofold numbers: column c's entry in row c + d stands at c (w + 1) + d.
class WideBand {
 public:
  explicit WideBand(const Job& job) : n_(job.unknowns()) {
    const Prepared& p = job.prepared;
    std::vector<MemberEntries<Wide>> entries(2 * p.sorts.size() < p.sort_of.size() ? p.sorts.size() : 0);
    for (std::size_t s = 0; s < entries.size(); ++s) member_entries(accurate_of(p, s), entries[s]);
    // In wider numbers another entry may not be zero: the band is measured anew.
    MemberEntries<Wide> own;
    const auto each = [&](auto use) {
      for (std::size_t i = 0; i < p.sort_of.size(); ++i) {
        if (entries.empty()) member_entries(accurate_of(p, p.sort_of[i]), own);
        const MemberEntries<Wide>& e = entries.empty() ? own : entries[p.sort_of[i]];
        for (std::size_t k = 0; k < e.count; ++k) {
          const int a = job.numbers[i][e.row[k]], b = job.numbers[i][e.column[k]];
          if ((a | b) >= 0)
            use(static_cast<std::size_t>((std::min)(a, b)), static_cast<std::size_t>((std::max)(a, b)), e.value[k]);
        }
      }
    };
    each([this](std::size_t low, std::size_t high, const Wide&) { width_ = (std::max)(width_, high - low + 1); });
    value_.resize(n_ * width_);
    each([this](std::size_t low, std::size_t high, const Wide& v) { value_[low * width_ + high - low] += v; });
  }
  /// False unless all pivots are positive.
  bool factor() {
    std::vector<Wide> scaled(width_);
    for (std::size_t c = 0; c < n_; ++c) {
      Wide* column = &value_[c * width_];
      if (!(column[0].hi > 0)) return false;
      const std::size_t most = (std::min)(width_, n_ - c);
      for (std::size_t d = 1; d < most; ++d) scaled[d] = column[d] / column[0];
      for (std::size_t d = 1; d < most; ++d) {
        if (scaled[d].hi == 0.0) continue;
        Wide* other = &value_[(c + d) * width_];
        for (std::size_t r = d; r < most; ++r) other[r - d] -= scaled[d] * column[r];
      }
      for (std::size_t d = 1; d < most; ++d) column[d] = scaled[d];
    }
    return true;
  }
  void solve(std::vector<Wide>& x) const {
    for (std::size_t c = 0; c < n_; ++c)
      for (std::size_t d = 1, most = (std::min)(width_, n_ - c); d < most; ++d)
        x[c + d] -= value_[c * width_ + d] * x[c];
    for (std::size_t c = n_; c-- > 0;) {
      Wide sum = x[c] / value_[c * width_];
      for (std::size_t d = 1, most = (std::min)(width_, n_ - c); d < most; ++d)
        sum -= value_[c * width_ + d] * x[c + d];
      x[c] = sum;
    }
  }

 private:
  std::size_t n_ = 0, width_ = 1;
  std::vector<Wide> value_;
};

/// Solved by the band, then corrected with residuals summed member by member, which a rigid motion does not touch.
/// Rounding 2^-106 in the assembled band costs about 1e-33 n⁴ of the first solution on n bays per span, and as little
/// of each correction.
struct Reference {
  std::vector<Wide> motions;                   ///< six per node
  std::vector<std::array<double, 12>> forces;  ///< of each member, rounded from the accurate ones
  double last_correction = 1;  ///< largest part of the last correction of displacements, of the largest one
  bool found = false;

  explicit Reference(const Job& job) {
    const Prepared& p = job.prepared;
    WideBand band(job);
    if (!band.factor()) return;
    motions.assign(6 * p.frame.nodes.size(), Wide{});
    const std::vector<Wide> ground(6 * p.frame.supports.size(), Wide{});
    std::vector<Wide> rest(motions.size()), step(job.unknowns());
    for (int k = 0; k < 6 && (k < 2 || last_correction > 1e-26); ++k) {
      std::fill(rest.begin(), rest.end(), Wide{});
      p.add_internal_forces(motions, ground, rest);
      for (Wide& r : rest) r = -r;
      for (const NodeLoad& l : job.loads.on_nodes)
        for (std::size_t i = 0; i < 3; ++i) rest[6 * l.node + i] += Wide(l.force[i]);
      for (std::size_t i = 0; i < rest.size(); ++i)
        if (const int at = job.numbering.number[i]; at >= 0) step[static_cast<std::size_t>(at)] = rest[i];
      band.solve(step);
      double largest = 0, correction = 0;
      for (std::size_t i = 0; i < motions.size(); ++i)
        if (const int at = job.numbering.number[i]; at >= 0) {
          const Wide& d = step[static_cast<std::size_t>(at)];
          motions[i] += d;
          if (i % 6 >= 3) continue;
          correction = (std::max)(correction, std::abs(d.hi));
          largest = (std::max)(largest, std::abs(motions[i].hi));
        }
      last_correction = correction / largest;
    }
    found = last_correction < 1e-18;
    for (std::size_t i = 0; i < p.frame.members.size(); ++i) {
      const Member& m = p.frame.members[i];
      const std::array<Wide, 12> f = end_forces(accurate_of(p, p.sort_of[i]), &motions[6 * m.from], &motions[6 * m.to]);
      std::array<double, 12> plain{};
      for (std::size_t k = 0; k < 12; ++k) plain[k] = f[k].value();
      forces.push_back(plain);
    }
  }
};

}  // namespace bench
