// SPDX-License-Identifier: MIT
// baywork's own methods, in the same terms as the foreign ones.
#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <vector>

#include <baywork/solve/detail/chain_engine.hpp>
#include <baywork/solve/detail/sparse_factor.hpp>
#include <baywork/solve/frame_solver.hpp>

#include "method.hpp"

namespace bench {

namespace own = baywork::detail;

/// Unknowns where they stand among six per node.
inline std::vector<int> numbers_of_nodes(const Job& job) {
  std::vector<int> number = job.prepared.freedoms.number;
  for (std::size_t i = 0; i < number.size(); ++i)
    if (number[i] >= 0) number[i] = static_cast<int>(i);
  return number;
}

/// What both forms of the chain do alike: found, factored, kept.
class OfChain {
 public:
  OfChain(const Job& job, bool fast) : job_(job), layout_(own::ChainFinder<double>(job.prepared.frame).find()), fast_(fast) {
    refactor();
  }
  void refactor() {
    engine_ = std::make_unique<own::ChainEngine<double>>(job_.prepared, layout_);
    factor();
  }
  void factor() { good_ = engine_->factor(job_.prepared, fast_, longest(*engine_), baywork::one_after_the_other); }
  bool good() const { return good_; }
  double factor_bytes() const { return static_cast<double>(engine_->bytes()); }
  double factor_flops() const {
    return engine_->runs().made().flops() + (fast_ ? engine_->fast().flops() : engine_->deformation().flops());
  }
  double solve_flops() const {
    return engine_->runs().solve_flops() + (fast_ ? engine_->fast().solve_flops() : engine_->deformation().solve_flops());
  }

 protected:
  std::size_t longest(const own::ChainEngine<double>& e) const { return joins_ ? e.longest(fast_) : 1; }
  void join_nothing() { joins_ = false; }
  /// A chain found and factored anew.
  own::ChainEngine<double> made_anew() {
    own::ChainEngine<double> engine(job_.prepared, own::ChainFinder<double>(job_.prepared.frame).find());
    good_ = engine.factor(job_.prepared, fast_, longest(engine), baywork::one_after_the_other);
    return engine;
  }

  const Job& job_;
  own::ChainLayout layout_;
  std::unique_ptr<own::ChainEngine<double>> engine_;

 private:
  bool fast_;
  bool joins_ = true;
  bool good_ = false;
};

/// The chain's fast form, without certificate. `full` finds the chain, too. Joining equal bays makes the factor cheaper and
/// each solution dearer unless it is done in halves: a factor that is kept for further loads does without.
class ChainFast : public OfChain {
 public:
  static constexpr const char* name = "chain_fast";

  explicit ChainFast(const Job& job) : OfChain(job, true), number_(6 * job.prepared.frame.nodes.size(), -1) {
    for (std::size_t s = 0; s < layout_.stations.size(); ++s) {
      std::size_t at = engine_->runs().start(s);
      for (const std::uint32_t* n = layout_.stations.begin(s); n != layout_.stations.end(s); ++n)
        for (std::size_t k = 0; k < 6; ++k, ++at)
          if (job.prepared.freedoms.of(*n, k) >= 0) number_[6 * *n + k] = static_cast<int>(at);
    }
    length_ = length_of(*this);
    padded_.assign(engine_->runs().length(), 0.0);
  }
  void full(const double* b, double* x) { solve_with(made_anew(), b, x); }
  void for_further_loads() {
    if (engine_->runs().in_halves()) return;
    join_nothing();
    factor();
  }
  void solve(const double* b, double* x, std::size_t count) {
    if (count == 1) return solve_with(*engine_, b, x);
    if (length_ == padded_.size()) return engine_->fast().solve_many(b, x, length_, count, many_);
    rows_.assign(padded_.size() * count, 0.0);
    for (std::size_t k = 0; k < count; ++k) std::copy(b + k * length_, b + (k + 1) * length_, rows_.data() + k * padded_.size());
    engine_->fast().solve_many(rows_.data(), rows_.data(), padded_.size(), count, many_);
    for (std::size_t k = 0; k < count; ++k) std::copy_n(rows_.data() + k * padded_.size(), length_, x + k * length_);
  }
  const std::vector<int>& number() const { return number_; }

 private:
  void solve_with(const own::ChainEngine<double>& e, const double* b, double* x) {
    double* const to = length_ == padded_.size() ? x : padded_.data();
    std::copy(b, b + length_, to);
    work_.resize(e.work_size());
    e.runs().gather(to, work_.data());
    e.fast().solve(to, work_.data());
    e.runs().spread(to);
    if (to != x) std::copy(to, to + length_, x);
  }

  std::vector<int> number_;
  std::size_t length_ = 0;
  std::vector<double> work_, padded_, rows_;
  own::FastChain<double>::ManySpace many_;
};

/// The chain in deformations, without certificate; takes forces on nodes and gives their motions, twofold.
class Chain : public OfChain {
 public:
  static constexpr const char* name = "chain";

  explicit Chain(const Job& job)
      : OfChain(job, false), number_(numbers_of_nodes(job)), force_(number_.size()), motions_(force_.size()), length_(length_of(*this)) {}
  void full(const double* b, double* x) { solve_with(made_anew(), b, x); }
  void solve(const double* b, double* x, std::size_t count) {
    for (std::size_t k = 0; k < count; ++k) solve_with(*engine_, b + k * length_, x + k * length_);
  }
  const std::vector<int>& number() const { return number_; }

 private:
  void solve_with(const own::ChainEngine<double>& e, const double* b, double* x) {
    for (std::size_t i = 0; i < length_; ++i) force_[i] = own::Twofold<double>(b[i]);
    work_.resize(e.work_size());
    e.solve(job_.prepared, force_, motions_, work_);
    for (std::size_t i = 0; i < length_; ++i) x[i] = motions_[i].value();
  }

  std::vector<int> number_;
  std::vector<own::Twofold<double>> force_, motions_;
  std::size_t length_;
  std::vector<double> work_;
};

/// The sparse path's factor, without certificate.
class Sparse {
 public:
  static constexpr const char* name = "sparse";

  explicit Sparse(const Job& job) : job_(job), number_(job.prepared.freedoms.number), entries_(job.prepared.stiffness_entries()) { factor(); }
  void full(const double* b, double* x) {
    refactor();
    solve(b, x, 1);
  }
  void refactor() {
    entries_ = job_.prepared.stiffness_entries();
    factor();
  }
  void factor() { good_ = factor_.compute(job_.prepared.freedoms.count, entries_, false); }
  void solve(const double* b, double* x, std::size_t count) {
    const std::size_t n = job_.prepared.freedoms.count;
    work_.resize(n);
    std::copy(b, b + n * count, x);
    for (std::size_t k = 0; k < count; ++k) factor_.solve(x + k * n, work_.data());
  }
  bool good() const { return good_; }
  const std::vector<int>& number() const { return number_; }
  double factor_bytes() const { return static_cast<double>(factor_.bytes()); }
  double factor_flops() const { return factor_.flops(); }
  double solve_flops() const { return factor_.solve_flops(); }

 private:
  const Job& job_;
  std::vector<int> number_;
  std::vector<own::Entry<double>> entries_;
  own::SparseFactor<double> factor_;
  std::vector<double> work_;
  bool good_ = false;
};

/// What a user calls: the frame checked and factored, loads reduced, the answer corrected and certified, all member forces.
class Certified {
 public:
  static constexpr const char* name = "certified";

  explicit Certified(const Job& job)
      : job_(job), number_(numbers_of_nodes(job)), solver_(std::make_unique<baywork::FrameSolver>(job.prepared.frame)) {}
  void full(const double* b, double* x) {
    solver_ = std::make_unique<baywork::FrameSolver>(job_.prepared.frame);
    solve(b, x, 1);
  }
  void refactor() { solver_ = std::make_unique<baywork::FrameSolver>(job_.prepared.frame); }
  void factor() { refactor(); }
  void solve(const double* b, double* x, std::size_t count) {
    const std::size_t length = length_of(*this);
    for (std::size_t k = 0; k < count; ++k) {
      loads_.clear();
      for (std::size_t n = 0; 6 * n < length; ++n) {
        const double* const f = b + k * length + 6 * n;
        if (6 * n + 3 > length || (f[0] == 0.0 && f[1] == 0.0 && f[2] == 0.0)) continue;
        loads_.force(n, {f[0], f[1], f[2]});
      }
      solver_->solve(loads_, answer_, space_);
      std::copy(answer_.motions.begin(), answer_.motions.begin() + static_cast<std::ptrdiff_t>(length), x + k * length);
    }
  }
  bool good() const { return true; }
  const std::vector<int>& number() const { return number_; }
  baywork::FrameAnswer answer(const baywork::FrameLoads& loads) { return solver_->solve(loads); }
  double factor_bytes() const { return static_cast<double>(solver_->factor_bytes()); }
  double factor_flops() const { return 0; }  // not counted
  double solve_flops() const { return 0; }

 private:
  const Job& job_;
  std::vector<int> number_;
  std::unique_ptr<baywork::FrameSolver> solver_;
  baywork::FrameLoads loads_;
  baywork::FrameAnswer answer_;
  baywork::SolveWorkspace space_;
};

/// Calls use.operator()<M>() for each of baywork's own methods M (see Method).
template <class Use>
void for_each_own_method(Use&& use) {
  use.template operator()<ChainFast>();
  use.template operator()<Chain>();
  use.template operator()<Sparse>();
  use.template operator()<Certified>();
}

}  // namespace bench
