// SPDX-License-Identifier: MIT
// The factorisation behind a solver: chooses the path, and gives motions for forces whichever it is.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/solve/detail/chain_engine.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
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

  /// Throws UnstableFrame or NotConverged where the frame cannot be factored, BadDescription where the path asked for
  /// cannot be taken.
  void choose(const PreparedFrame<S>& p, const SolverOptions& o) {
    if (o.path != SolvePath::sparse) {
      ChainLayout layout = ChainFinder<S>(p.frame).find();
      why_ = layout.why_not;
      if (layout.found()) {
        const bool turning = layout.turning;
        chain_.emplace(p, std::move(layout));
        if (take_chain(p, o, turning)) return;
        chain_.reset();
      } else if (o.path != SolvePath::automatic) {
        fail<BadDescription>("solver", std::string("the path \"") + name(o.path) + "\" is asked for, but the frame is no chain: " + why_,
                             "a chain, or the sparse path, is accepted");
      }
    } else {
      why_ = "it was asked for";
    }
    path_ = SolvePath::sparse;
    if (!factor_sparse(p)) refused_.say();
  }

  /// After a member or a support has changed. False where the frame has become unstable or too soft to tell: refused().
  bool renew_member(const PreparedFrame<S>& p, std::size_t member, const SolverOptions& o) {
    if (!chain_) return factor_sparse(p);
    return sound(p, chain_->refactor_member(p, member, o.run_both));
  }
  bool renew_support(const PreparedFrame<S>& p, std::size_t node, const SolverOptions& o) {
    if (!chain_) return factor_sparse(p);
    return sound(p, chain_->refactor_support(p, node, o.run_both));
  }
  const Refused& refused() const noexcept { return refused_; }

  std::size_t work_size(const PreparedFrame<S>& p) const { return chain_ ? chain_->work_size() : 2 * p.freedoms.count; }

  /// motions := K⁻¹ force, six per node.
  void solve(const PreparedFrame<S>& p, const std::vector<A>& force, std::vector<A>& motions, std::vector<S>& work) const {
    if (chain_) return chain_->solve(p, force, motions, work);
    S* const x = work.data();
    for (std::size_t i = 0; i < force.size(); ++i)
      if (const int k = p.freedoms.number[i]; k >= 0) x[static_cast<std::size_t>(k)] = rounded<S>(force[i]);
    sparse_.solve(x, x + p.freedoms.count);
    for (std::size_t i = 0; i < motions.size(); ++i)
      if (const int k = p.freedoms.number[i]; k >= 0) motions[i] = A(x[static_cast<std::size_t>(k)]);
  }

 private:
  /// Whether the chain stands, `factored` or not; pivots so far below the stiffness they started from are looked at again,
  /// in deformations and with twice the digits.
  bool sound(const PreparedFrame<S>& p, bool factored) {
    if (factored && chain_->smallest_pivot_ratio() > (chain_->is_fast() ? 1e-11 : 1e-12)) return true;
    return accept(find_mechanism(p, chain_->bays()), factored, p);
  }
  bool accept(const Mechanism& m, bool factored, const PreparedFrame<S>& p) {
    if (factored && !m.found) return true;
    refused_ = reason_to_refuse(m, p);
    return false;
  }

  /// The fast form where one correction brings it within the tolerance, else deformations; false leaves the sparse path.
  bool take_chain(const PreparedFrame<S>& p, const SolverOptions& o, bool turning) {
    if (o.path != SolvePath::chain) {
      const bool factored = chain_->factor(p, true, 64, o.run_both), asked = o.path == SolvePath::chain_fast;
      const double left = factored && (asked || chain_->smallest_pivot_ratio() > 1e-11) ? first_error(p) : 1.0;
      if (asked || (factored && (left < 1e-7 || left * left < 0.01 * o.tolerance))) {
        if (!sound(p, factored)) refused_.say();
        path_ = SolvePath::chain_fast;
        why_ = "a chain, short enough for the fast form: it leaves " + text::number(left, 2) + " before correction";
        return true;
      }
    }
    if (!turning) {
      why_ = "a chain with stations where nothing resists turning";
      if (o.path == SolvePath::chain) fail<BadDescription>("solver", "deformations are asked for, but the frame is " + why_, "the sparse path is accepted");
      return false;
    }
    if (!sound(p, chain_->factor(p, false, 8, o.run_both))) {
      if (refused_.unstable || o.path == SolvePath::chain) refused_.say();
      why_ = "a chain whose pivots are lost in rounding";
      return false;
    }
    path_ = SolvePath::chain;
    why_ = "a chain, counted in deformations";
    return true;
  }

  /// What one solution leaves of itself: the next correction against it, for a load of all sorts.
  double first_error(const PreparedFrame<S>& p) const {
    const std::size_t size = 6 * p.frame.nodes.size();
    std::vector<A> force(size, A(0)), u(size, A(0)), d(size, A(0)), answer(size, A(0));
    const std::vector<A> ground(6 * p.frame.supports.size(), A(0));
    std::vector<S> work(work_size(p));
    for (std::size_t i = 0; i < size; ++i)
      if (p.freedoms.number[i] >= 0) force[i] = A(S(i % 6 < 3 ? 1.0 + 0.37 * static_cast<double>(i % 7) : 0.0));
    chain_->solve(p, force, u, work);
    p.add_internal_forces(u, ground, answer);
    for (std::size_t i = 0; i < size; ++i) answer[i] = p.freedoms.number[i] >= 0 ? A(force[i] - answer[i]) : A(0);
    chain_->solve(p, answer, d, work);
    double whole = 0, rest = 0;
    for (std::size_t i = 0; i < size; ++i) {
      const double scale = i % 6 < 3 ? 1.0 : p.longest;
      whole = (std::max)(whole, std::abs(value_of(u[i])) * scale);
      rest = (std::max)(rest, std::abs(value_of(d[i])) * scale);
    }
    return rest <= whole && whole > 0 ? rest / whole : 1.0;
  }

  bool factor_sparse(const PreparedFrame<S>& p) {
    const std::vector<Entry<S>> entries = p.stiffness_entries();
    const bool reorder = node_reach(p.frame) > 12;  // a girder's own order is the better one
    const bool good = sparse_.compute(p.freedoms.count, entries, reorder);
    if (good && sparse_.smallest_pivot_ratio() > 1e-9) return true;
    return accept(find_mechanism(p, entries), good, p);
  }

  SolvePath path_ = SolvePath::sparse;
  std::string why_;
  Refused refused_;
  std::optional<ChainEngine<S>> chain_;
  SparseFactor<S> sparse_;
};

}  // namespace baywork::detail
