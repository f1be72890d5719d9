// SPDX-License-Identifier: MIT
// The segments of a run and its supports, put together from left to right.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <type_traits>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/motion.hpp>
#include <baywork/solve/detail/run_cell.hpp>
#include <baywork/solve/detail/run_segment.hpp>
#include <baywork/solve/detail/twofold_lanes.hpp>

namespace baywork::detail {

/// A held motion of a station: u = R r + a at one joint; `compliance` is that of the spring, zero where it is fixed.
template <class R>
struct RunTie {
  Six<R> lever = zero_six<R>();
  int local = RunStation::reference;
  R compliance = R(0), displacement = R(0);
  R force = R(0);  ///< found: what the girder does to the support
};

/// One station with supports, or an end of the run.
template <class R>
struct RunHold {
  std::vector<RunTie<R>> ties;
  // what the solution finds
  Six<R> r = zero_six<R>();
  std::vector<R> a;
  Six<R> N = zero_six<R>();  ///< resultant at the right end of the segment that begins here
  // elimination, kept for the way back
  AlignedVector<R> front;
  std::vector<R> rows;
  std::vector<accurate_t<R>> wide_rows;
  std::vector<std::size_t> order;
  std::size_t by_parts = 0;  ///< local motions eliminated in `front`
  const RunSegment<R>* after = nullptr;
};

/// n numbers of a row -= factor times those of another; three more behind them, in both, may be touched.
template <class Q>
void subtract_multiple(const Q& factor, const Q* other, std::size_t n, Q* row) {
#ifdef BAYWORK_DISPATCHED_KERNELS
  if constexpr (std::is_same_v<Q, Twofold<double>>)
    if (has_twofold_lanes())
      return twofold_lane::subtract_multiple(reinterpret_cast<const double*>(&factor),
                                             reinterpret_cast<const double*>(other), (n + 3) / 4,
                                             reinterpret_cast<double*>(row));
#endif
  for (std::size_t j = 0; j < n; ++j)
    if (value_of(other[j]) != 0.0) row[j] -= Q(factor * other[j]);
}

/// Makes the potential of the whole run stationary,
///   Σ Ψ_k(N_k, a_k-1, a_k) + Σ N_k·(r_k - T_k r_k-1) - Σ p_k·r_k-1 + Σ λ_j (R_j r + a_j - d_j) - ½ Σ c_j λ_j²,
/// with a tie's force λ and compliance c (fixed: 0, so that stiff and rigid are no different). Station by station the
/// unknowns a, r, λ and the next N are eliminated: a by its positive stiffness, the others by rows of largest pivot,
/// measured in units of each resultant's own compliance. A rigid motion that nothing holds yet costs no digits: its
/// columns meet the ones of T, and only those. Where more than six motions are held, forces follow from small
/// differences of large compliances (a twist beside a deflection): then these last rows are reckoned in twice the
/// digits. Where a segment's ends do not feel each other's local motions, N alone sees a', and sees it with r' as the six
/// numbers q = r' + Gᵀ a', G = H_a'N: the front ends in q, and S, which it leaves there, becomes S on r', G S between a'
/// and r', and H_a'a' + G S Gᵀ on a'.
template <class R>
class RunAssembly {
 public:
  /// `closing`: put into the last station's front by the caller through the given function.
  template <class Closing>
  void solve(std::size_t m, std::vector<RunHold<R>>& holds, const std::vector<const RunSegment<R>*>& segments,
             const Closing& closing) {
    m_ = m;
    std::size_t ties = 0;
    for (const RunHold<R>& h : holds) ties += h.ties.size();
    wide_ = ties > 6;
    carried_.assign((m + 6) * (m + 7), R(0));
    for (std::size_t i = 0; i < holds.size(); ++i)
      forward(holds[i], i > 0 ? segments[i - 1] : nullptr, i < segments.size() ? segments[i] : nullptr, closing);
    next_.assign(m + 6, R(0));
    for (std::size_t i = holds.size(); i-- > 0;) backward(holds[i]);
  }

 private:
  /// How many numbers a front keeps of the next station: a' and r', or q.
  std::size_t kept_of(const RunSegment<R>* after) const { return after == nullptr ? 0 : (after->coupled ? m_ + 6 : 6); }

  /// Fills a front.
  template <class Closing>
  void put(RunHold<R>& hold, const Closing& closing) const {
    const RunSegment<R>* const after = hold.after;
    const std::size_t m = m_, t = hold.ties.size(), r_at = m, t_at = m + 6, n_at = t_at + t, kept = kept_of(after);
    const std::size_t block = n_at + (after != nullptr ? 6 : 0), n = block + kept + 1, ld = leading_dimension(n), one = n - 1;
    const bool coupled = kept > 6;
    AlignedVector<R>& w = hold.front;
    const auto at = [&](std::size_t row, std::size_t column) -> R& { return w[column * ld + row]; };
    w.assign(ld * n, R(0));
    for (std::size_t c = 0; c < m + 6; ++c) {
      for (std::size_t i = c; i < m + 6; ++i) at(i, c) = carried_[c * (m + 7) + i];
      at(one, c) = carried_[c * (m + 7) + m + 6];
    }
    for (std::size_t j = 0; j < t; ++j) {
      const RunTie<R>& tie = hold.ties[j];
      for (std::size_t c = 0; c < 6; ++c) at(t_at + j, r_at + c) = tie.lever[c];
      if (tie.local >= 0) at(t_at + j, static_cast<std::size_t>(tie.local)) = R(1);
      at(t_at + j, t_at + j) = R(-tie.compliance);
      at(one, t_at + j) = R(-tie.displacement);
    }
    if (after != nullptr) {
      const std::size_t b_at = block, q_at = block + kept - 6;
      for (std::size_t j = 0; j < m; ++j) {
        const R* a = after->column(7 + j);
        for (std::size_t i = j; i < m; ++i) at(i, j) += a[7 + i];
        for (std::size_t c = 0; c < 6; ++c) at(n_at + c, j) = after->column(c)[7 + j];
        at(one, j) += after->column(6)[7 + j];
        if (!coupled) continue;
        const R* b = after->column(7 + m + j);
        for (std::size_t i = 0; i < m; ++i) at(b_at + i, j) = a[7 + m + i];
        for (std::size_t i = j; i < m; ++i) at(b_at + i, b_at + j) = b[7 + m + i];
        for (std::size_t c = 0; c < 6; ++c) at(b_at + j, n_at + c) = after->column(c)[7 + m + j];
        at(one, b_at + j) = after->column(6)[7 + m + j];
      }
      for (std::size_t c = 0; c < 6; ++c) {
        for (std::size_t i = c; i < 6; ++i) at(n_at + i, n_at + c) = after->column(c)[i];
        at(one, n_at + c) = after->column(c)[6];
        at(q_at + c, n_at + c) = R(1);
        at(one, r_at + c) -= after->load[c];
        Six<R> unit = zero_six<R>();
        unit[c] = R(1);
        unit = carried(unit, after->reach);
        for (std::size_t i = 0; i < 6; ++i) at(n_at + i, r_at + c) = R(-unit[i]);
      }
    } else {
      closing([&](std::size_t row, std::size_t column, const R& v) { at(row == m + 6 ? one : row, column) += v; });
    }
    for (std::size_t j = 0; j < m; ++j)  // a motion that no bar meets at this end of the run
      if (value_of(at(j, j)) == 0.0) at(j, j) = R(1);
  }

  /// Unknowns of a front: a, r, ties, N | a' and r' of the next station, or q | 1.
  template <class Closing>
  void forward(RunHold<R>& hold, const RunSegment<R>* before, const RunSegment<R>* after, const Closing& closing) {
    const std::size_t m = m_, block = m + 6 + hold.ties.size() + (after != nullptr ? 6 : 0), n = block + kept_of(after) + 1;
    const std::size_t ld = leading_dimension(n);
    hold.after = after;
    put(hold, closing);
    const std::vector<double> unit = units(hold, before, ld);
    hold.by_parts = m;
    if (m > 0 && !(eliminate_part(n, m, ld, hold.front.data()) > 1e-9)) {
      hold.by_parts = 0;  // only the supports hold this end in shape: rows of largest pivot for all
      put(hold, closing);
    }
    if (wide_)
      eliminate_by_rows(hold, hold.wide_rows, block, n, ld, unit);
    else
      eliminate_by_rows(hold, hold.rows, block, n, ld, unit);
    if (after != nullptr && n == block + 7) spread(*after);
  }

  /// carried_, from q to a' and r'.
  void spread(const RunSegment<R>& after) {
    const std::size_t m = m_, ld = m + 7;
    std::array<R, 42> s;
    std::copy_n(carried_.begin(), s.size(), s.begin());
    for (std::size_t c = 0; c < 6; ++c) std::copy_n(s.data() + 7 * c, 7, carried_.data() + (m + c) * ld + m);
    for (std::size_t j = 0; j < m; ++j) {
      std::array<R, 7> gs;  // row j of G S, and of G times the loads
      gs.fill(R(0));
      for (std::size_t c = 0; c < 6; ++c)
        for (std::size_t d = 0; d < 7; ++d) gs[d] += R(after.column(c)[7 + m + j] * s[7 * c + d]);
      R* const to = carried_.data() + j * ld;
      for (std::size_t i = j; i < m; ++i) {
        to[i] = after.column(7 + m + j)[7 + m + i];
        for (std::size_t c = 0; c < 6; ++c) to[i] += R(gs[c] * after.column(c)[7 + m + i]);
      }
      std::copy_n(gs.begin(), 6, to + m);
      to[m + 6] = R(after.column(6)[7 + m + j] + gs[6]);
    }
  }

  /// In which units each unknown of the block is measured: powers in which its matrix has entries near 1.
  std::vector<double> units(const RunHold<R>& hold, const RunSegment<R>* before, std::size_t ld) const {
    const RunSegment<R>* const after = hold.after;
    const std::size_t m = m_, n_at = m + 6 + hold.ties.size();
    std::vector<double> unit(n_at + 6, 1.0);
    std::array<double, 6> rigid{};
    for (std::size_t c = 0; c < 6; ++c) rigid[c] = rigid_stiffness;
    const auto root_compliance = [&](const RunSegment<R>& s, std::size_t c) {
      return std::sqrt(std::abs(value_of(s.column(c)[c])));
    };
    if (before != nullptr)
      for (std::size_t c = 0; c < 6; ++c) rigid[c] = root_compliance(*before, c);
    if (after != nullptr)
      for (std::size_t c = 0; c < 6; ++c) {
        Six<R> one = zero_six<R>();
        one[c] = R(1);
        one = carried(one, after->reach);
        double most = 0;
        for (std::size_t i = 0; i < 6; ++i)
          most = larger(most, std::abs(value_of(one[i])) / root_compliance(*after, i));
        rigid[c] = smaller(rigid[c], 1.0 / most);
        unit[n_at + c] = 1.0 / root_compliance(*after, c);
      }
    for (std::size_t j = 0; j < m; ++j) unit[j] = 1.0 / std::sqrt(std::abs(value_of(hold.front[j * (ld + 1)])));
    for (std::size_t c = 0; c < 6; ++c) unit[m + c] = rigid[c];
    for (std::size_t j = 0; j < hold.ties.size(); ++j) {
      const RunTie<R>& tie = hold.ties[j];
      double most = std::sqrt(value_of(tie.compliance));
      for (std::size_t c = 0; c < 6; ++c) most = larger(most, std::abs(value_of(tie.lever[c])) * rigid[c]);
      if (tie.local >= 0) most = larger(most, unit[static_cast<std::size_t>(tie.local)]);
      unit[m + 6 + j] = 1.0 / most;
    }
    return unit;
  }

  /// A row with the three numbers behind it that subtract_multiple() may touch.
  static constexpr std::size_t row_length(std::size_t size) { return size + 3; }

  /// Gauss with row exchanges within the block; what is left is carried to the next station.
  template <class Q>
  void eliminate_by_rows(RunHold<R>& hold, std::vector<Q>& b, std::size_t block, std::size_t n, std::size_t ld,
                         const std::vector<double>& unit) {
    const std::size_t done = hold.by_parts, pivots = block - done, size = n - done, kept = n - 1 - block;
    const std::size_t apart = row_length(size);
    b.assign(apart * size, Q(0));
    for (std::size_t c = 0; c < size; ++c)
      for (std::size_t i = c; i < size; ++i)
        b[c * apart + i] = b[i * apart + c] = Q(hold.front[(done + c) * ld + done + i]);
    hold.order.resize(pivots);
    for (std::size_t i = 0; i < pivots; ++i) hold.order[i] = i;
    for (std::size_t c = 0; c < pivots; ++c) {
      const auto entry = [&](std::size_t i) { return std::abs(value_of(b[hold.order[i] * apart + c])); };
      std::size_t best = c;
      double most = -1;
      for (std::size_t i = c; i < pivots; ++i) {
        const double v = entry(i) * unit[done + hold.order[i]];
        if (v <= most) continue;
        most = v;
        best = i;
      }
      if (done + c >= m_ && done + c < m_ + 6) {  // ties are geometry: no segment's compliance is mixed into them
        double lever = 0, tied = 0;
        for (const RunTie<R>& tie : hold.ties) lever = larger(lever, std::abs(value_of(tie.lever[done + c - m_])));
        for (std::size_t i = c; i < pivots; ++i) {
          const std::size_t row = done + hold.order[i];
          if (row < m_ + 6 || row >= m_ + 6 + hold.ties.size()) continue;
          if (!(entry(i) > larger(tied, 1e-6 * lever))) continue;
          tied = entry(i);
          best = i;
        }
      }
      if (!(most * unit[done + c] > (done < m_ ? 1e-13 : 0.0)))
        fail<UnstableFrame>("uniform run",
                            "the joints of a station with supports can move without any support or bar resisting",
                            "a station that keeps its shape, by its own bars or its supports, is accepted");
      std::swap(hold.order[c], hold.order[best]);
      Q* const pivot = b.data() + hold.order[c] * apart;
      const Q inverse = pivot[c] = Q(Q(1) / pivot[c]);  // kept for the way back
      const auto subtract = [&](Q* row) {
        if (value_of(row[c]) != 0.0) subtract_multiple(Q(row[c] * inverse), pivot + c + 1, size - c - 1, row + c + 1);
      };
      for (std::size_t i = c + 1; i < pivots; ++i) subtract(b.data() + hold.order[i] * apart);
      for (std::size_t i = pivots; i + 1 < size; ++i) subtract(b.data() + i * apart);
    }
    for (std::size_t c = 0; c < kept; ++c)
      for (std::size_t i = 0; i <= kept; ++i)
        carried_[c * (kept + 1) + i] =
            rounded_to<R>(b[(pivots + (std::min)(c, i)) * apart + pivots + (std::max)(c, i)]);
  }

  /// Finds the block's unknowns from those of the next station.
  void backward(RunHold<R>& hold) {
    const std::size_t m = m_, t = hold.ties.size(), kept = kept_of(hold.after), done = hold.by_parts;
    const std::size_t block = m + 6 + t + (hold.after != nullptr ? 6 : 0), n = block + kept + 1;
    x_.assign(leading_dimension(n), R(0));
    if (wide_)
      backward_by_rows(hold, hold.wide_rows, wide_x_, block - done, n - done);
    else
      backward_by_rows(hold, hold.rows, narrow_x_, block - done, n - done);
    if (done > 0) recover_part(n, done, leading_dimension(n), hold.front.data(), x_.data());
    hold.a.assign(x_.begin(), x_.begin() + static_cast<std::ptrdiff_t>(m));
    for (std::size_t c = 0; c < 6; ++c) hold.r[c] = x_[m + c];
    for (std::size_t j = 0; j < t; ++j) hold.ties[j].force = x_[m + 6 + j];
    if (hold.after != nullptr)
      for (std::size_t c = 0; c < 6; ++c) hold.N[c] = x_[m + 6 + t + c];
    for (std::size_t i = 0; i < m + 6; ++i) next_[i] = x_[i];
  }

  template <class Q>
  void backward_by_rows(const RunHold<R>& hold, const std::vector<Q>& rows, std::vector<Q>& x, std::size_t pivots,
                        std::size_t size) {
    const std::size_t m = m_, done = hold.by_parts, kept = size - 1 - pivots, apart = row_length(size);
    x.resize(size);
    for (std::size_t i = 0; i < kept; ++i) x[pivots + i] = Q(next_[m + 6 - kept + i]);
    for (std::size_t c = 0; kept == 6 && c < 6; ++c) {
      R from_a = R(0);
      for (std::size_t j = 0; j < m; ++j) from_a += R(hold.after->column(c)[7 + m + j] * next_[j]);
      x[pivots + c] += Q(from_a);
    }
    x[size - 1] = Q(1);
    std::fill(x.begin(), x.begin() + static_cast<std::ptrdiff_t>(pivots), Q(0));
    for (std::size_t j = size; j-- > 0;) {  // column by column: the sums of all rows run beside each other
      if (j < pivots) x[j] = Q(x[j] * rows[hold.order[j] * apart + j]);
      for (std::size_t i = 0; i < (std::min)(j, pivots); ++i) x[i] -= Q(rows[hold.order[i] * apart + j] * x[j]);
      x_[done + j] = rounded_to<R>(x[j]);
    }
  }

  template <class T, class Q>
  static T rounded_to(const Q& v) {
    if constexpr (std::is_same_v<T, Q>)
      return v;
    else
      return rounded<T>(v);
  }

  std::size_t m_ = 0;
  bool wide_ = false;
  std::vector<R> carried_;  ///< stiffness of all to the left against a and r (square), and its loads as a last column
  std::vector<R> next_, x_, narrow_x_;
  std::vector<accurate_t<R>> wide_x_;
};

}  // namespace baywork::detail
