// SPDX-License-Identifier: MIT
// A stretch of equal cells seen from its two ends, in a mixed form whose compliances only ever add up.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <type_traits>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/solve/detail/aligned_vector.hpp>
#include <baywork/solve/detail/kernels.hpp>
#include <baywork/solve/detail/twofold.hpp>

namespace baywork::detail {

/// Leading dimension that the kernels accept for a matrix of order n.
constexpr std::size_t leading_dimension(std::size_t n) { return (n + 7) / 8 * 8; }

/// Eliminates the leading k unknowns of a small symmetric matrix (lower triangle); returns the smallest pivot against
/// the diagonal it started from.
template <class R>
double eliminate_part(std::size_t n, std::size_t k, std::size_t ld, R* w) {
  std::size_t worst = 0;
  return KernelsOf<R>::eliminate(k, n - k, ld, w, &worst);
}
/// The eliminated unknowns x[0..k) from those kept, x[k..n): what makes the quadratic form stationary.
template <class R>
void recover_part(std::size_t n, std::size_t k, std::size_t ld, const R* w, R* x) {
  for (std::size_t i = 0; i < k; ++i) x[i] = R(0);
  KernelsOf<R>::backward(k, n - k, ld, w, x);
}
/// Unit roundoff of the numbers computed with, twofold ones included.
template <class R>
struct RunRoundoff {
  static double value() { return unit_roundoff<R>(); }
};
template <class F>
struct RunRoundoff<Twofold<F>> {
  static double value() { return unit_roundoff<F>() * unit_roundoff<F>(); }
};

/// Six rigid motions about a point (displacement, rotation), or the force and moment that do work on them.
template <class R>
using Six = std::array<R, 6>;

template <class R>
Six<R> zero_six() {
  return {R(0), R(0), R(0), R(0), R(0), R(0)};
}
/// The rigid motion r, seen from a point that lies `arm` away.
template <class R>
Six<R> carried(const Six<R>& r, const Vec3<R>& arm) {
  const Vec3<R> c = cross(Vec3<R>{r[3], r[4], r[5]}, arm);
  return {R(r[0] + c.x), R(r[1] + c.y), R(r[2] + c.z), r[3], r[4], r[5]};
}
/// The force and moment f at a point that lies `arm` away, as seen from here.
template <class R>
Six<R> resultant(const Six<R>& f, const Vec3<R>& arm) {
  const Vec3<R> c = cross(arm, Vec3<R>{f[0], f[1], f[2]});
  return {f[0], f[1], f[2], R(f[3] + c.x), R(f[4] + c.y), R(f[5] + c.z)};
}

/// A segment of the run between two stations that lie `reach` apart.
///
/// Motions of a station: u = R r + a, with r its six rigid motions about a reference point, R the lever arms, and a
/// the local motions, zero in six motions that fix r. Let T be the rigid continuation of r along the segment and
/// s = r' - T r. No strain comes from r: with W(s, a, a') the strain energy less the work of the loads, and p the
/// loads' resultant about the left reference, the segment's potential is W - p·r. The resultant at the right end,
/// conjugate to s, is N = ∂W/∂s; the left end feels -Tᵀ N - p.
///
/// Stiffness against (r, r') holds EI/L³ beside EA and loses n⁴ digits over n cells. Here N takes the place of s:
///   Ψ(N, a, a') = stationary value over s of W - N·s = ½ xᵀ H x,  x = (N, 1, a, a'),
/// a partial Legendre transform. Its gradients are -s = H_N x, and the forces on a and a'. The compliance F = -H_NN is
/// what a cantilever clamped at the left shows at its right end.
/// Segments 1 and 2 joined: r_m = T₁ r + s₁ gives s = T₂ s₁ + s₂ and a work p₂·s₁ of the second one's loads, so
///   Ψ(N, a, a') = stationary value over a_m of Ψ₁(T₂ᵀ N + p₂, a, a_m) + Ψ₂(N, a_m, a'),   p = p₁ + T₁ᵀ p₂,
/// that is, F = T₂ F₁ T₂ᵀ + F₂ + B M⁻¹ Bᵀ with M = H₁_a'a' + H₂_aa, B = -(T₂ H₁_Na' + H₂_Na): a sum of positive terms,
/// in which nothing cancels however long the segments are. Ends feel each other's local motions less and less; once
/// H_aa' has died out below the roundoff, a and a' drop out of the elimination. Substructures after J. S.
/// Przemieniecki, Theory of Matrix Structural Analysis, ch. 9 (value from memory); the mixed form is derived here.
template <class R>
struct RunSegment {
  /// The elimination that it comes from (lower triangle, column-major): `inside` unknowns, then what is left: N (6), 1,
  /// a (m), a' (m). H_a'a is void unless `coupled`.
  AlignedVector<R> front;
  std::size_t inside = 0, ld = 0;
  std::size_t felt = 0;  ///< leading rows that the unknowns inside know of
  Six<R> load = zero_six<R>();
  Vec3<R> reach{};
  bool coupled = true;  ///< whether a and a' feel each other

  /// Makes room for so many unknowns inside.
  void set_size(std::size_t m, std::size_t unknowns) {
    const std::size_t order = unknowns + 7 + 2 * m;
    inside = unknowns;
    felt = order;
    ld = leading_dimension(order);
    front.resize(ld * order);
  }
  /// Column j of what is left, from its own first row on.
  R* column(std::size_t j) { return front.data() + (inside + j) * ld + inside; }
  const R* column(std::size_t j) const { return front.data() + (inside + j) * ld + inside; }

  void note_coupling(std::size_t m) {
    const double small = RunRoundoff<R>::value() / 64;
    coupled = false;
    for (std::size_t j = 0; j < m && !coupled; ++j) {
      const R* c = column(7 + j);
      for (std::size_t i = 0; i < m && !coupled; ++i) {
        const double k = value_of(c[7 + m + i]);
        if (k == 0.0) continue;
        coupled = !(k * k <= small * small * std::abs(value_of(c[7 + j]) * value_of(column(7 + m + i)[7 + m + i])));
      }
    }
  }

  /// The unknowns inside (first in x), from what acts at the right end and the local motions at both.
  void inside_from(std::size_t m, const Six<R>& N, const R* a, const R* b, std::vector<R>& x) const {
    x.assign(ld, R(0));
    for (std::size_t k = 0; k < 6; ++k) x[inside + k] = N[k];
    x[inside + 6] = R(1);
    for (std::size_t i = 0; i < m; ++i) {
      x[inside + 7 + i] = a[i];
      x[inside + 7 + m + i] = b[i];
    }
    recover_part(felt, inside, ld, front.data(), x.data());
  }
};

/// s of a segment: -H_N x.
template <class R>
Six<R> relative_motion(const RunSegment<R>& seg, std::size_t m, const Six<R>& N, const R* a, const R* b) {
  Six<R> s = zero_six<R>();
  for (std::size_t c = 0; c < 6; ++c) {
    const R* h = seg.column(c);
    R sum = h[6];
    for (std::size_t k = 0; k < 6; ++k) sum += R((k < c ? seg.column(k)[c] : h[k]) * N[k]);
    for (std::size_t i = 0; i < m; ++i) sum += R(h[7 + i] * a[i]);
    for (std::size_t i = 0; i < m; ++i) sum += R(h[7 + m + i] * b[i]);
    s[c] = R(-sum);
  }
  return s;
}

/// Joins segments: eliminates the local motions a_m between two of them. Keeps its memory.
template <class R>
class RunJoiner {
 public:
  /// Joins left and right into `out`, which is neither of the two.
  void join(std::size_t m, const RunSegment<R>& left, const RunSegment<R>& right, RunSegment<R>& out) {
    out.set_size(m, m);
    // a' comes last, and where nothing feels it there it is left out
    if (!right.coupled) out.felt -= left.coupled ? m : 2 * m;
    with_size(m, [&](auto size) {
      turn(size, left, right);
      gather(size, left, right, out);
    });
    if (!(eliminate_part(out.felt, m, out.ld, out.front.data()) > 1e-14))
      fail<UnstableFrame>("uniform run", "the joints of a station between two cells can move without any bar resisting",
                          "a cell whose stations keep their shape is accepted");
    const Six<R> moved = resultant(right.load, left.reach);
    for (std::size_t k = 0; k < 6; ++k) out.load[k] = R(left.load[k] + moved[k]);
    out.reach = left.reach + right.reach;
    out.coupled = left.coupled && right.coupled;
    if (out.coupled) out.note_coupling(m);
  }

 private:
  /// Calls what(m); the sizes of two, three and four chords are known when compiled, which halves the time of copying.
  template <class What>
  static void with_size(std::size_t m, const What& what) {
    if constexpr (std::is_same_v<R, double>) {
      if (m == 6) return what(std::integral_constant<std::size_t, 6>{});
      if (m == 12) return what(std::integral_constant<std::size_t, 12>{});
      if (m == 18) return what(std::integral_constant<std::size_t, 18>{});
    }
    what(m);
  }

  /// turned_: Ψ₁'s columns N and 1 after N₁ = T₂ᵀ N + p₂, on the rows a and a_m.
  template <class Size>
  void turn(const Size m, const RunSegment<R>& left, const RunSegment<R>& right) {
    const std::array<R, 3> d{right.reach.x, right.reach.y, right.reach.z};
    const Six<R> p = right.load;
    const std::size_t rows = 2 * m;
    turned_.resize(7 * rows);
    std::array<const R*, 7> l{};
    for (std::size_t c = 0; c < 7; ++c) l[c] = left.column(c) + 7;
    for (std::size_t c = 0; c < 3; ++c) {  // a column at a time: all together would not run on lanes
      const std::size_t x = (c + 1) % 3, y = (c + 2) % 3;
      const R *const force = l[c], *const at_x = l[3 + x], *const at_y = l[3 + y];
      R* const t = turned_.data() + c * rows;
      for (std::size_t i = 0; i < rows; ++i) t[i] = R(force[i] + (at_x[i] * d[y] - at_y[i] * d[x]));
    }
    for (std::size_t c = 3; c < 6; ++c) std::copy(l[c], l[c] + rows, turned_.data() + c * rows);
    R* const t = turned_.data() + 6 * rows;
    for (std::size_t i = 0; i < rows; ++i) {
      R work = R(l[0][i] * p[0] + l[1][i] * p[1] + l[2][i] * p[2]);
      work += R(l[3][i] * p[3] + l[4][i] * p[4] + l[5][i] * p[5]);
      t[i] = R(l[6][i] + work);
    }
  }

  /// The columns of Ψ₁ + Ψ₂. Whole squares are copied, of which the lower triangles count: no remainders for lanes.
  template <class Size>
  void gather(const Size m, const RunSegment<R>& left, const RunSegment<R>& right, RunSegment<R>& out) const {
    const std::size_t a1 = 7, b1 = 7 + m, one = m + 6, a_at = m + 7, b_at = a_at + m, rows = 2 * m, ld = out.ld;
    std::array<const R*, 7> g2{};
    for (std::size_t c = 0; c < 7; ++c) g2[c] = right.column(c) + a1;
    const auto cleared = [&](std::size_t column) {  // the kernels want rows beyond the order to be zero
      R* to = out.front.data() + column * ld;
      for (std::size_t i = 0; i < 8; ++i) to[ld - 8 + i] = R(0);
      return to;
    };
    for (std::size_t j = 0; j < m; ++j) {
      R* to = cleared(j);
      const R *from1 = left.column(b1 + j) + b1, *from2 = right.column(a1 + j) + a1;
      for (std::size_t i = 0; i < m; ++i) to[i] = R(from1[i] + from2[i]);
      for (std::size_t c = 0; c < 7; ++c) to[m + c] = R(turned_[c * rows + m + j] + g2[c][j]);
      for (std::size_t i = 0; i < m; ++i) to[a_at + i] = left.coupled ? left.column(a1 + i)[b1 + j] : R(0);
      for (std::size_t i = 0; i < m; ++i) to[b_at + i] = right.coupled ? from2[m + i] : R(0);
    }
    for (std::size_t c = 0; c < 7; ++c) {
      R* to = cleared(m + c);
      for (std::size_t i = 0; i < m; ++i) to[a_at + i] = turned_[c * rows + i];
      for (std::size_t i = 0; i < m; ++i) to[b_at + i] = g2[c][m + i];
    }
    gather_resultants(left, right, out);
    out.front[one * ld + one] = R(0);
    for (std::size_t j = 0; j < m; ++j) {
      R *const to_a = cleared(a_at + j), *const to_b = cleared(b_at + j);
      const R *const a = left.column(a1 + j) + a1, *const b = right.column(b1 + j) + b1;
      for (std::size_t i = 0; i < m; ++i) to_a[a_at + i] = a[i];
      for (std::size_t i = 0; i < m; ++i) to_a[b_at + i] = R(0);
      for (std::size_t i = 0; i < m; ++i) to_b[b_at + i] = b[i];
    }
  }

  /// Rows and columns N, 1 among themselves: T₂ H₁ T₂ᵀ + H₂.
  static void gather_resultants(const RunSegment<R>& left, const RunSegment<R>& right, RunSegment<R>& out) {
    const Vec3<R>& d = right.reach;
    std::array<Six<R>, 6> f{};
    Six<R> push = zero_six<R>();
    for (std::size_t r = 0; r < 6; ++r) {
      push[r] = left.column(r)[6];
      for (std::size_t c = 0; c < 6; ++c) {
        f[r][c] = left.column(r < c ? r : c)[r < c ? c : r];
        push[r] += R(f[r][c] * right.load[c]);
      }
      f[r] = carried(f[r], d);
    }
    push = carried(push, d);
    for (std::size_t c = 0; c < 6; ++c) {
      R* to = out.column(c);
      const R* from = right.column(c);
      const Six<R> column = carried(Six<R>{f[0][c], f[1][c], f[2][c], f[3][c], f[4][c], f[5][c]}, d);
      for (std::size_t r = c; r < 6; ++r) to[r] = R(column[r] + from[r]);
      to[6] = R(push[c] + from[6]);
    }
  }

  std::vector<R> turned_;
};

}  // namespace baywork::detail
