// SPDX-License-Identifier: MIT
// The factorisation behind a solver: chooses the path, and gives motions for forces whichever it is.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/solve/detail/chain_engine.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/detail/rate_of_correction.hpp>
#include <baywork/solve/detail/sparse_factor.hpp>
#include <baywork/solve/mechanism.hpp>
#include <baywork/solve/solve_path.hpp>

namespace baywork::detail {

/// Why a frame cannot be factored; say() throws it.
struct Refused {
  bool unstable = false;
  std::string place, problem, accepted;

  [[noreturn]] void say() const {
    if (unstable) fail<UnstableFrame>(place, problem, accepted);
    fail<NotConverged>(place, problem, accepted);
  }
};

template <class S>
Refused reason_to_refuse(const Mechanism& m, const PreparedFrame<S>& p) {
  if (m.found)
    return {true, p.frame.names.chords.empty() ? "frame" : "girder", m.words,
            "add a support, a diagonal, a diaphragm or a rigid joint that resists this motion"};
  return {false, "frame", "its softest motion is too soft against its stiffest bar to be told from a free one",
          "stiffnesses within about fourteen orders of magnitude are accepted"};
}

template <class S>
class FrameFactor {
 public:
  using A = accurate_t<S>;

  SolvePath path() const noexcept { return path_; }
  const std::string& why() const noexcept { return why_; }
  std::size_t bytes() const noexcept { return chain_ ? chain_->bytes() : sparse_.bytes(); }

  /// By which corrections with this factorisation shrink.
  double rate() const noexcept { return rate_; }

  /// Throws UnstableFrame or NotConverged where the frame cannot be factored, BadDescription where the path asked for
  /// cannot be taken.
  void choose(const PreparedFrame<S>& p, const SolverOptions& o) {
    if (!chosen(p, o)) refused_.say();
  }
  /// After a member or a support has changed. False where the frame has become unstable or too soft to tell: refused().
  bool renew_member(const PreparedFrame<S>& p, std::size_t member, const SolverOptions& o) {
    return renewed(p, o, [&] { return chain_->refactor_member(p, member, o.run_both); });
  }
  bool renew_support(const PreparedFrame<S>& p, std::size_t node, const SolverOptions& o) {
    return renewed(p, o, [&] { return chain_->refactor_support(p, node, o.run_both); });
  }
  const Refused& refused() const noexcept { return refused_; }

  std::size_t work_size(const PreparedFrame<S>& p) const { return chain_ ? chain_->work_size() : 2 * p.freedoms.count; }

  /// motions := K⁻¹ force, six per node; none where a motion is held or idle.
  void solve(const PreparedFrame<S>& p, const std::vector<A>& force, std::vector<A>& motions, std::vector<S>& work) const {
    if (chain_) return chain_->solve(p, force, motions, work);
    S* const x = work.data();
    for (std::size_t i = 0; i < force.size(); ++i)
      if (const int k = p.freedoms.number[i]; k >= 0) x[static_cast<std::size_t>(k)] = rounded<S>(force[i]);
    sparse_.solve(x, x + p.freedoms.count);
    for (std::size_t i = 0; i < motions.size(); ++i) {
      const int k = p.freedoms.number[i];
      motions[i] = k >= 0 ? A(x[static_cast<std::size_t>(k)]) : A(0);
    }
  }

 private:
  /// Whether the chain stands, `factored` or not; pivots so far below the stiffness they started from are looked at again,
  /// in deformations and with twice the digits.
  bool sound(const PreparedFrame<S>& p, bool factored) {
    if (factored && chain_->smallest_pivot_ratio() > sound_ratio()) return true;
    return accept(find_mechanism(p, chain_->bays()), factored, p);
  }
  double sound_ratio() const { return chain_->is_fast() ? 1e-11 : 1e-12; }
  bool accept(const Mechanism& m, bool factored, const PreparedFrame<S>& p) {
    if (factored && !m.found) return true;
    refused_ = reason_to_refuse(m, p);
    return false;
  }

  /// False where the frame is refused.
  bool chosen(const PreparedFrame<S>& p, const SolverOptions& o) {
    chain_.reset();
    if (o.path == SolvePath::sparse) {
      why_ = "it was asked for";
    } else {
      ChainLayout layout = ChainFinder<S>(p.frame).find();
      why_ = layout.why_not;
      if (layout.found()) {
        const bool turning = layout.turning;
        chain_.emplace(p, std::move(layout));
        const Taken taken = take_chain(p, o, turning);
        if (taken != Taken::no) return taken == Taken::yes;
        chain_.reset();
      } else if (o.path != SolvePath::automatic) {
        fail<BadDescription>("solver", std::string("the path \"") + name(o.path) + "\" is asked for, but the frame is no chain: " + why_,
                             "a chain, or the sparse path, is accepted");
      }
    }
    path_ = SolvePath::sparse;
    return factor_sparse(p);
  }

  /// A change that takes the path chosen before out of its depth is answered by choosing anew.
  template <class Refactor>
  bool renewed(const PreparedFrame<S>& p, const SolverOptions& o, const Refactor& refactor) {
    if (!chain_) return factor_sparse(p);
    const bool stands = sound(p, refactor()) && corrects(p, 1.0);
    if (o.path != SolvePath::automatic || (!stands && refused_.unstable)) return stands;
    return (stands && rate_ < enough(o)) || chosen(p, o);
  }

  enum class Taken { yes, no, refused };
  /// The fast form where one correction brings it within the tolerance, else deformations, where corrections converge.
  Taken take_chain(const PreparedFrame<S>& p, const SolverOptions& o, bool turning) {
    if (o.path == SolvePath::chain_fast || (o.path == SolvePath::automatic && !is_hopeless_for_fast(o))) {
      path_ = SolvePath::chain_fast;
      const bool factored = chain_->factor(p, true, chain_->longest(true), o.run_both), asked = o.path == SolvePath::chain_fast;
      if (asked || (factored && chain_->smallest_pivot_ratio() > sound_ratio())) {
        if (!sound(p, factored) || !corrects(p, asked ? 1.0 : enough(o))) return Taken::refused;
        why_ = "a chain, short enough for the fast form: a correction leaves " + text::number(rate_, 2) + " of the error";
        if (asked || rate_ < enough(o)) return Taken::yes;
      }
    }
    if (!turning) {
      why_ = "a chain with stations where nothing resists turning";
      if (o.path == SolvePath::chain) fail<BadDescription>("solver", "deformations are asked for, but the frame is " + why_, "the sparse path is accepted");
      return Taken::no;
    }
    path_ = SolvePath::chain;
    const bool asked = o.path == SolvePath::chain;
    if (!sound(p, chain_->factor(p, false, chain_->longest(false), o.run_both)) || !corrects(p, asked ? 1.0 : enough(o))) {
      if (refused_.unstable || asked) return Taken::refused;
      why_ = "a chain whose pivots are lost in rounding";
      return Taken::no;
    }
    if (!asked && !(rate_ < enough(o))) {
      why_ = "a chain whose bars differ so much in stiffness that corrections do not converge";
      return Taken::no;
    }
    why_ = "a chain, counted in deformations";
    return Taken::yes;
  }
  /// Over n bays from hold to hold the fast form loses about 2e-19 n⁴ or more (measured on boxes). Far beyond what one
  /// correction can make good, trying it costs as much as what is taken then.
  bool is_hopeless_for_fast(const SolverOptions& o) const {
    const double n = static_cast<double>(chain_->longest_span());
    return 1e-20 * n * n * n * n > enough_for_fast(o);
  }
  /// The rate at which corrections with the path taken must shrink for it to be kept.
  double enough(const SolverOptions& o) const {
    return path_ == SolvePath::chain_fast ? enough_for_fast(o) : 0.1;
  }
  static double enough_for_fast(const SolverOptions& o) { return (std::max)(1e-7, std::sqrt(0.01 * o.tolerance)); }
  /// Measures the rate, as far as `limit`. Pivots can look sound where nothing but rounding holds the frame, but then
  /// nothing is corrected: that is looked at again, too. False where it is a mechanism.
  bool corrects(const PreparedFrame<S>& p, double limit) {
    std::vector<S> work(work_size(p));
    rate_ = rate_of_correction(p, limit, [&](const auto& forces, auto& motions) { solve(p, forces, motions, work); });
    if (rate_ < 0.1 || limit < 0.1) return true;
    return accept(chain_ ? find_mechanism(p, chain_->bays()) : find_mechanism(p, p.stiffness_entries()), true, p);
  }

  bool factor_sparse(const PreparedFrame<S>& p) {
    const std::vector<Entry<S>> entries = p.stiffness_entries();
    const bool reorder = node_reach(p.frame) > 12;  // a girder's own order is the better one
    const bool good = sparse_.compute(p.freedoms.count, entries, reorder);
    return ((good && sparse_.smallest_pivot_ratio() > 1e-9) || accept(find_mechanism(p, entries), good, p)) && corrects(p, 1.0);
  }

  SolvePath path_ = SolvePath::sparse;
  double rate_ = 0;
  std::string why_;
  Refused refused_;
  std::optional<ChainEngine<S>> chain_;
  SparseFactor<S> sparse_;
};

}  // namespace baywork::detail
