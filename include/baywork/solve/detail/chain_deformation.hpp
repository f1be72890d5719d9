// SPDX-License-Identifier: MIT
// The chain in deformation coordinates: rigid motion never meets stiffness, so a girder may be as long as it likes.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <baywork/solve/detail/chain_fast.hpp>
#include <baywork/solve/detail/chain_ground.hpp>
#include <baywork/solve/detail/deformation_step.hpp>
#include <baywork/solve/detail/deformed_bay.hpp>
#include <baywork/solve/detail/kernels.hpp>
#include <baywork/solve/detail/rigid_arms.hpp>

namespace baywork::detail {

template <class S>
class DeformationChain {
 public:
  using A = accurate_t<S>;

  bool compute(const PreparedFrame<S>& p, const ChainRuns<S>& runs, const ChainGround<S>& ground, RunBoth run = one_after_the_other) {
    bays_ = &runs;
    arms_ = ChainArms<S>(p.frame, runs);
    place();
    return refactor(p, ground, 0, stations() - 1, run);
  }
  /// Factors anew after a change in bays or stations `first` to `last`; takes up at the last checkpoint before them.
  bool refactor(const PreparedFrame<S>& p, const ChainGround<S>& ground, std::size_t first, std::size_t last, RunBoth run = one_after_the_other) {
    ground_ = &ground;
    Task task{this, &p, (std::min)(first, meet_), (std::max)((std::min)(last, stations() - 1), meet_)};
    run([](void* c) { static_cast<Task*>(c)->self->sweep(*static_cast<Task*>(c)->p, true, static_cast<Task*>(c)->first); },
        [](void* c) { static_cast<Task*>(c)->self->sweep(*static_cast<Task*>(c)->p, false, static_cast<Task*>(c)->last); }, &task);
    return meet(p);
  }

  const ChainArms<S>& arms() const noexcept { return arms_; }
  std::size_t stations() const noexcept { return bays_->stations(); }
  double smallest_pivot_ratio() const noexcept { return smallest_of(ratio_); }
  std::size_t bytes() const noexcept { return (factor_.size() + left_marks_.size() + right_marks_.size()) * sizeof(S); }
  /// Additions and multiplications of factoring: eliminating one unknown before m others takes m + m (m + 1).
  double flops() const {
    return sum_of_pivots([](double m) { return m * (m + 2.0); });
  }
  /// Of one solution: each of those m twice, on the way in and on the way back.
  double solve_flops() const {
    return sum_of_pivots([](double m) { return 4.0 * m + 1.0; });
  }
  std::size_t work_size() const noexcept { return bays_->length() + 4 * widest_ + 32; }

  /// Motions under forces x on the stations' joints (ChainRuns says where each stands); x then holds (r, a) of each.
  /// `add(j, place, motions)` receives the answer at this chain's stations, six motions per joint to twice the digits, or
  /// `add.others(j, r, a)` that of all but the first joint, as its motions r and the deformations a of the others;
  /// `add.segment(j, near_first, near, s, near_q, far_q)` what it takes to follow a segment: its near reference's motions,
  /// the far one's deviation s from their rigid continuation, and (r, a) of both.
  template <class Add>
  void solve(S* x, const Add& add, S* work) const {
    S* const y = work;
    S* const h = y + bays_->length();
    for (std::size_t i = 0; i < stations(); ++i) collect(i, x + start_[i]);
    for (std::size_t i = 0; i < meet_; ++i) forward(i, true, x, y, h);
    for (std::size_t i = stations() - 1; i > meet_; --i) forward(i, false, x, y, h);
    std::array<A, 6> at_meet;
    const std::size_t n = bays_->unknowns(meet_);
    std::copy(x + start_[meet_], x + start_[meet_] + n, h + 6);
    std::fill(h + 6 + n, h + 6 + padded(n), S(0));
    S* const q = h + 6;  // r, a; the substitutions count s in between
    substitute(ties(meet_), ties_end(meet_), n, arms_.plain(meet_), static_cast<const Vec3<S>*>(nullptr),
               [&](std::size_t target, std::size_t source, const S& f) { q[target] += S(f * q[source - 6]); });
    hold(meet_, [&](std::size_t u) { q[u] = S(0); });
    K::forward(n, 0, padded(n), meeting_.data(), q);
    K::backward(n, 0, padded(n), meeting_.data(), q);
    for (std::size_t k = 0; k < 6; ++k) at_meet[k] = A(q[k]);
    finish(meet_, at_meet, q, x, add);
    for (const bool forward : {true, false}) {
      std::array<A, 6> r = at_meet;
      if (forward)
        for (std::size_t i = meet_; i-- > 0;) back(i, true, x, y, h, r, add);
      else
        for (std::size_t i = meet_ + 1; i < stations(); ++i) back(i, false, x, y, h, r, add);
    }
  }

 private:
  using K = KernelsOf<S>;
  using Matrix = std::vector<S>;
  static constexpr std::size_t checkpoint = 16;  ///< stations from one kept intermediate state to the next
  struct Task {
    DeformationChain* self;
    const PreparedFrame<S>* p;
    std::size_t first, last;
  };

  std::size_t far_of(std::size_t i, bool forward) const { return forward ? i + 1 : i - 1; }
  std::size_t ld_of(std::size_t i, bool forward) const { return padded(bays_->unknowns(i) + bays_->unknowns(far_of(i, forward))); }
  Vec3<S> step_of(std::size_t i, bool forward) const { return forward ? arms_.step(i) : -arms_.step(i - 1); }
  const GroundTie<S>* ties(std::size_t i) const { return ground_->begin(bays_->station(i)); }
  const GroundTie<S>* ties_end(std::size_t i) const { return ground_->end(bays_->station(i)); }
  template <class Hold>
  void hold(std::size_t i, const Hold& at) const {
    for (const GroundTie<S>* t = ties(i); t != ties_end(i); ++t)
      if (t->kind != GroundTie<S>::Kind::spring) at(static_cast<std::size_t>(t->unknown));
  }

  /// Sum over all eliminated unknowns of what(number of those after it).
  template <class What>
  double sum_of_pivots(const What& what) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < stations(); ++i) {
      const std::size_t n1 = bays_->unknowns(i), n2 = i == meet_ ? 0 : bays_->unknowns(far_of(i, i < meet_));
      for (std::size_t j = 0; j < n1; ++j) sum += what(static_cast<double>(n1 + n2 - j - 1));
    }
    return sum;
  }

  void place() {
    const std::size_t n = stations();
    meet_ = n / 2;
    start_.clear();
    factor_start_.assign(1, 0);
    ratio_.assign(n, 1.0);
    widest_ = 0;
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t u = bays_->unknowns(i);
      start_.push_back(bays_->start(bays_->station(i)));
      factor_start_.push_back(factor_start_.back() + (i == meet_ ? 0 : ld_of(i, i < meet_) * u));
      widest_ = (std::max)(widest_, padded(u));
    }
    factor_.resize(factor_start_.back());
    const std::size_t mark = widest_ * widest_;
    left_marks_.assign((meet_ / checkpoint + 1) * mark, S(0));
    right_marks_.assign(((n - 1 - meet_) / checkpoint + 1) * mark, S(0));
    left_.assign(mark, S(0));
    right_.assign(mark, S(0));
  }

  /// State S (n x n over r, a; lower triangle) of what has been eliminated before a station, from one end on.
  void sweep(const PreparedFrame<S>& p, bool forward, std::size_t from) {
    const std::size_t end = forward ? 0 : stations() - 1, mark = widest_ * widest_;
    std::vector<S>& marks = forward ? left_marks_ : right_marks_;
    std::size_t done = (forward ? from : end - from) / checkpoint;
    std::size_t i = forward ? done * checkpoint : end - done * checkpoint;
    Matrix s(marks.begin() + static_cast<std::ptrdiff_t>(done * mark), marks.begin() + static_cast<std::ptrdiff_t>((done + 1) * mark));
    Matrix k, general;
    NodeMatrix<S> node_scratch;
    DeformedBay<S> scratch;
    DeformedBays<S> kept;
    for (; i != meet_; i = far_of(i, forward)) {
      const std::size_t passed = forward ? i : end - i;
      if (passed % checkpoint == 0) std::copy(s.begin(), s.end(), marks.begin() + static_cast<std::ptrdiff_t>(passed / checkpoint * mark));
      const DeformedBay<S>& bay = kept.get(*bays_, arms_, forward ? i : i - 1, forward, node_scratch, scratch);
      bays_->bays().add_station_deformed(p, bays_->station(i), s.data(), padded(bays_->unknowns(i)), general);
      const std::size_t lds = padded(bay.n1);
      if (ground_->holds(bays_->station(i)))
        general_step(ties(i), ties_end(i), arms_.plain(i), step_of(i, forward), bay, s.data(), lds, bay.ld, k, general);
      else
        plain_step(ties(i), ties_end(i), step_of(i, forward), bay, s.data(), lds, k);
      std::size_t worst = 0;
      const std::size_t n1 = bay.n1, n2 = bay.n2;
      ratio_[i] = K::eliminate(n1, n2, bay.ld, k.data(), &worst);
      see_sizes(i, 0, n1, bay.ld, k.data());
      std::copy(k.begin(), k.begin() + static_cast<std::ptrdiff_t>(bay.ld * n1), factor_.begin() + static_cast<std::ptrdiff_t>(factor_start_[i]));
      for (std::size_t c = 0; c < n2; ++c)
        for (std::size_t r = c; r < n2; ++r) s[c * padded(n2) + r] = k[(n1 + c) * bay.ld + n1 + r];
    }
    (forward ? left_ : right_).swap(s);
  }

  /// The diagonals that `eliminate` starts from may hold what rounding has left of nothing: pivots are compared with the
  /// stiffness of bays, too, from unknown `from` on. `l`: from `eliminate`, 1/pivot on the diagonal.
  void see_sizes(std::size_t i, std::size_t from, std::size_t n, std::size_t ld, const S* l) {
    double least = ratio_[i];
    const GroundTie<S>* tie = ties(i);
    for (std::size_t u = from; u < n; ++u) {
      while (tie != ties_end(i) && tie->unknown < u) ++tie;
      if (tie != ties_end(i) && tie->unknown == u) continue;  // held, idle or on a spring of any size
      const double size = bays_->bays().size_of_pivot(u, 1.0 / value_of(l[u * ld + u]));
      if (!(size >= least)) least = size;
    }
    ratio_[i] = least;
  }
  bool meet(const PreparedFrame<S>& p) {
    const std::size_t n = bays_->unknowns(meet_), ld = padded(n);
    Matrix m(ld * n, S(0));
    for (std::size_t k = 0; k < ld * n; ++k) m[k] = S(left_[k] + right_[k]);
    Matrix scratch;
    bays_->bays().add_station_deformed(p, bays_->station(meet_), m.data(), ld, scratch);
    end_step(ties(meet_), ties_end(meet_), arms_.plain(meet_), n, ld, m.data());
    std::size_t worst = 0;
    ratio_[meet_] = K::eliminate(n, 0, ld, m.data(), &worst);
    see_sizes(meet_, 6, n, ld, m.data());  // r is held by the supports alone: soft in a long girder
    meeting_.swap(m);
    return smallest_pivot_ratio() > 0.0;
  }

  /// Forces on a station's joints -> (g_r, g_a).
  void collect(std::size_t i, S* x) const {
    const std::size_t n = bays_->unknowns(i);
    for (std::size_t u = 6; u < n; u += 6) add_resultant(x + u, arms_.plain(i)[u / 6], x);
  }

  void forward(std::size_t i, bool forward, S* x, S* y, S* h) const {
    const std::size_t far = far_of(i, forward), n1 = bays_->unknowns(i), n2 = bays_->unknowns(far);
    S* const g = x + start_[i];
    const Vec3<S> d = step_of(i, forward);
    // coordinates r, s, a, r', a'
    for (std::size_t k = 0; k < padded(n1 + n2) + 6; ++k) h[k] = S(0);
    for (std::size_t u = 0; u < n1; ++u) h[u < 6 ? u : u + 6] = g[u];
    substitute(ties(i), ties_end(i), n1, arms_.plain(i), &d, [&](std::size_t target, std::size_t source, const S& factor) { h[target] += S(factor * h[source]); });
    const std::array<std::size_t, 6> slot = slots(ties(i), ties_end(i));
    for (std::size_t u = 0; u < 6; ++u) h[6 + u] = h[slot[u]];
    hold(i, [&](std::size_t u) { h[6 + u] = S(0); });
    K::forward(n1, n2, ld_of(i, forward), factor_.data() + factor_start_[i], h + 6);
    std::copy(h + 6, h + 6 + n1, y + start_[i]);
    S* const next = x + start_[far];
    for (std::size_t u = 0; u < n2; ++u) next[u] += h[6 + n1 + u];
  }
  template <class Add>
  void back(std::size_t i, bool forward, S* x, const S* y, S* h, std::array<A, 6>& r, const Add& add) const {
    const std::size_t far = far_of(i, forward), n1 = bays_->unknowns(i), n2 = bays_->unknowns(far);
    std::copy(y + start_[i], y + start_[i] + n1, h);
    std::copy(x + start_[far], x + start_[far] + n2, h + n1);
    std::fill(h + n1 + n2, h + padded(n1 + n2), S(0));
    K::backward(n1, n2, ld_of(i, forward), factor_.data() + factor_start_[i], h);
    const std::array<std::size_t, 6> slot = slots(ties(i), ties_end(i));
    const Vec3<A> d = forward ? arms_.step_wide(i) : -arms_.step_wide(i - 1);
    std::array<A, 6> near;
    for (std::size_t k = 3; k < 6; ++k) near[k] = slot[k] == k ? A(h[k]) : A(r[k] - A(h[k]));
    const Vec3<A> turned = cross(Vec3<A>{near[3], near[4], near[5]}, d);
    for (std::size_t k = 0; k < 3; ++k) near[k] = slot[k] == k ? A(h[k]) : A(A(r[k] - A(h[k])) - turned[k]);
    finish(i, near, h, x, add);
    const std::array<A, 6> continued = rigid_motion(near, d);
    std::array<S, 6> s;
    for (std::size_t k = 0; k < 6; ++k) s[k] = slot[k] == k ? rounded<S>(A(r[k] - continued[k])) : h[k];
    add.segment((std::min)(i, far), forward, near, s, x + start_[i], x + start_[far]);
    r = near;
  }

  /// Hands out a station's motions and leaves (r, a) in x for its neighbour; e: a, or y where a motion is tied.
  template <class Add>
  void finish(std::size_t i, const std::array<A, 6>& r, const S* e, S* x, const Add& add) const {
    const std::size_t n = bays_->unknowns(i);
    S* const q = x + start_[i];
    for (std::size_t k = 0; k < 6; ++k) q[k] = rounded<S>(r[k]);
    add(i, std::size_t{0}, r);
    if (!ground_->holds(bays_->station(i))) {
      std::copy(e + 6, e + n, q + 6);
      return add.others(i, r, q + 6);
    }
    const GroundTie<S>* tie = ties(i);
    for (std::size_t p = 1; p < n / 6; ++p) {
      std::array<A, 6> u = rigid_motion(r, arms_.wide(i)[p]);
      for (std::size_t k = 0; k < 6; ++k) {
        const std::size_t at = 6 * p + k;
        while (tie != ties_end(i) && tie->unknown < at) ++tie;
        const bool own = tie != ties_end(i) && tie->unknown == at && tie->kind != GroundTie<S>::Kind::idle;
        const A motion = own ? A(e[at]) : A(u[k] + A(e[at]));
        q[at] = own ? rounded<S>(A(motion - u[k])) : e[at];
        u[k] = motion;
      }
      add(i, p, u);
    }
  }

  const ChainRuns<S>* bays_ = nullptr;
  const ChainGround<S>* ground_ = nullptr;
  ChainArms<S> arms_;
  std::size_t meet_ = 0, widest_ = 0;
  std::vector<std::size_t> start_, factor_start_;
  std::vector<S> factor_, meeting_, left_, right_, left_marks_, right_marks_;
  std::vector<double> ratio_;
};

}  // namespace baywork::detail
