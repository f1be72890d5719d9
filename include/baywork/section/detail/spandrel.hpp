// SPDX-License-Identifier: MIT
// The piece between a right-angled corner and the quarter circle that rounds it: corners and root fillets.
#pragma once

#include <baywork/core/scalar.hpp>
#include <baywork/section/detail/lengths.hpp>

namespace baywork::detail {

/// Square of side r minus a quarter disc of radius r about the far corner. Both axes through the corner are alike.
/// Area (1 - pi/4) r²; centroid at r (10 - 3 pi) / (12 - 3 pi) from either edge; own second moment
/// (1/3 - pi/16 - 1 / (3 (12 - 3 pi))) r⁴. Derived from the moments of square and quarter disc; EN 10210-2:2006
/// Annex B uses the same three for the corners of hollow sections.
template <class S>
struct Spandrel {
  S area;
  S offset;         ///< centroid from the corner, along either edge [m]
  S second_moment;  ///< about its own centroid [m⁴]

  explicit Spandrel(const S& radius) {
    const S pi = pi_v<S>;
    area = S((S(1) - pi / S(4)) * radius * radius);
    offset = S((S(10) - S(3) * pi) / (S(12) - S(3) * pi) * radius);
    second_moment = S((S(1) / S(3) - pi / S(16) - S(1) / (S(3) * (S(12) - S(3) * pi))) * square(S(radius * radius)));
  }

  /// Second moment about an axis at `distance` [m] from the piece's centroid.
  S about(const S& distance) const { return S(second_moment + area * distance * distance); }
};

}  // namespace baywork::detail
