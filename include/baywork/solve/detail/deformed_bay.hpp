// SPDX-License-Identifier: MIT
// A bay's stiffness against deformations alone: the far station's motion counted from the near one's rigid continuation.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include <baywork/solve/detail/rigid_arms.hpp>

namespace baywork::detail {

/// With the near station's reference at rest, u_near = a, u_far = R s + a' (R: lever arms of the far station): the
/// energy ½ (s, a, a')ᵀ K (s, a, a'). Order s (6), a (n1 - 6), six empty rows for r', a' (n2 - 6); lower triangle.
template <class S>
struct DeformedBay {
  std::size_t n1 = 0, n2 = 0, ld = 0;
  std::vector<S> k;
};

/// `near_first`: the near station is the bay's first one.
template <class S>
void deform_bay(const NodeMatrix<S>& m, bool near_first, const Vec3<S>* far_arms, DeformedBay<S>& out) {
  const std::size_t near = near_first ? 0 : m.second, far = near_first ? m.second : 0;
  out.n1 = near_first ? m.n1 : m.n2;
  out.n2 = near_first ? m.n2 : m.n1;
  const std::size_t n1 = out.n1, n2 = out.n2, all = n1 + n2;
  out.ld = padded(all);
  out.k.assign(out.ld * all, S(0));
  S* const k = out.k.data();
  const std::size_t ld = out.ld;
  const auto far_near = [&](std::size_t r, std::size_t c) { return near_first ? m.at(c, far + r) : m.at(r, near + c); };
  const auto far_far = [&](std::size_t r, std::size_t c) { return r < c ? m.at(far + c, far + r) : m.at(far + r, far + c); };
  // Rᵀ K: what the far station's forces amount to at its reference, for one column
  std::vector<S> column(n2);
  std::array<S, 6> sum{};
  const auto add_up = [&] {
    sum.fill(S(0));
    for (std::size_t p = 0; p < n2; p += 6) add_resultant(column.data() + p, far_arms[p / 6], sum.data());
  };
  for (std::size_t c = 6; c < n1; ++c) {
    for (std::size_t r = 0; r < n2; ++r) column[r] = far_near(r, c);
    add_up();
    for (std::size_t i = 0; i < 6; ++i) k[i * ld + c] = sum[i];
    for (std::size_t r = c; r < n1; ++r) k[c * ld + r] = m.at(near + r, near + c);
    for (std::size_t r = 6; r < n2; ++r) k[c * ld + n1 + r] = column[r];
  }
  std::vector<S> rows(6 * n2);  // Rᵀ K_far,far by columns of six
  for (std::size_t c = 0; c < n2; ++c) {
    for (std::size_t r = 0; r < n2; ++r) column[r] = far_far(r, c);
    add_up();
    std::copy(sum.begin(), sum.end(), rows.begin() + static_cast<std::ptrdiff_t>(6 * c));
    if (c < 6) continue;
    for (std::size_t i = 0; i < 6; ++i) k[i * ld + n1 + c] = sum[i];
    for (std::size_t r = c; r < n2; ++r) k[(n1 + c) * ld + n1 + r] = column[r];
  }
  for (std::size_t i = 0; i < 6; ++i) {
    std::array<S, 6> line{};
    line.fill(S(0));
    for (std::size_t p = 0; p < n2; p += 6) {
      std::array<S, 6> at{};
      for (std::size_t j = 0; j < 6; ++j) at[j] = rows[6 * (p + j) + i];
      add_resultant(at.data(), far_arms[p / 6], line.data());
    }
    for (std::size_t j = 0; j <= i; ++j) k[j * ld + i] = line[j];
  }
}

/// Deformed bays, kept for types that occur more than once.
template <class S>
class DeformedBays {
 public:
  void clear() { kept_.clear(); }

  const DeformedBay<S>& get(const ChainRuns<S>& bays, const ChainArms<S>& arms, std::size_t bay,
                            bool near_first, NodeMatrix<S>& node_scratch, DeformedBay<S>& scratch) {
    const std::size_t far = near_first ? bay + 1 : bay, count = bays.unknowns(far) / 6;
    const Vec3<S>* const to = arms.plain(far);
    if (bays.type(bay).count < 2) {
      bays.matrix(bay, node_scratch);
      deform_bay(node_scratch, near_first, to, scratch);
      return scratch;
    }
    std::vector<Kept>& list = kept_[bays.type_index(bay)];
    for (const Kept& k : list)
      if (same(k.arms, to, count)) return k.bay;
    if (list.size() >= 8) {  // arms that differ from bay to bay: keeping them is of no use
      bays.matrix(bay, node_scratch);
      deform_bay(node_scratch, near_first, to, scratch);
      return scratch;
    }
    list.push_back({std::vector<Vec3<S>>(to, to + count), {}});
    bays.matrix(bay, node_scratch);
    deform_bay(node_scratch, near_first, to, list.back().bay);
    return list.back().bay;
  }

 private:
  struct Kept {
    std::vector<Vec3<S>> arms;
    DeformedBay<S> bay;
  };
  static bool same(const std::vector<Vec3<S>>& a, const Vec3<S>* b, std::size_t n) {
    if constexpr (!std::floating_point<S>) return false;
    if (a.size() != n) return false;
    for (std::size_t i = 0; i < n; ++i)
      for (std::size_t k = 0; k < 3; ++k)
        if (value_of(a[i][k]) != value_of(b[i][k])) return false;
    return true;
  }
  std::unordered_map<std::uint32_t, std::vector<Kept>> kept_;
};

}  // namespace baywork::detail
