// SPDX-License-Identifier: MIT
// From frame and loads to a certified answer; the factorisation is kept for further load cases.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/validate.hpp>
#include <baywork/solve/detail/certify.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/detail/sparse_factor.hpp>
#include <baywork/solve/frame_answer.hpp>
#include <baywork/solve/mechanism.hpp>

namespace baywork {

/// Scratch memory of a solve, owned by the caller: with it and a kept answer, further solves allocate nothing.
template <Scalar S = double>
struct BasicSolveWorkspace {
  std::vector<S> step, work;
  std::vector<MemberLoading<detail::accurate_t<S>>> loading;
  std::vector<detail::accurate_t<S>> force, ground, motions, residual;
};

/// A linear elastic frame, checked, numbered and factored once. Safe to use from many threads (each with a workspace).
///
/// Every answer is corrected with residuals that are summed member by member, stiffness and loads in twofold precision,
/// then certified (see Certificate). Throws UnstableFrame, naming the motion, where nothing resists one; NotConverged
/// where the certified error stays above the tolerance. Derivative-carrying scalars take the same path in their own
/// precision.
template <Scalar S = double>
class BasicFrameSolver {
 public:
  explicit BasicFrameSolver(BasicFrame<S> frame, double tolerance = 1e-10) : prepared_(std::move(frame)), tolerance_(tolerance) {
    if (!is_finite(tolerance) || !(tolerance > 0))
      fail<BadDescription>("solver", "the tolerance is " + text::number(tolerance), "a finite number above zero is accepted");
    const std::vector<detail::Entry<S>> entries = prepared_.stiffness_entries();
    const bool reorder = detail::node_reach(prepared_.frame) > 12;  // a girder's own order is the better one
    const bool good = factor_.compute(prepared_.freedoms.count, entries, reorder);
    if (good && factor_.smallest_pivot_ratio() > 1e-9) return;
    const Mechanism m = detail::find_mechanism(prepared_, entries);
    if (m.found)
      fail<UnstableFrame>(prepared_.frame.names.chords.empty() ? "frame" : "girder", m.words,
                          "add a support, a diagonal, a diaphragm or a rigid joint that resists this motion");
    if (!good)
      fail<NotConverged>("frame", "its softest motion is too soft against its stiffest bar to be told from a free one",
                         "stiffnesses within about fourteen orders of magnitude are accepted");
  }

  const BasicFrame<S>& frame() const noexcept { return prepared_.frame; }
  std::size_t unknowns() const noexcept { return prepared_.freedoms.count; }
  double tolerance() const noexcept { return tolerance_; }
  /// Local axes and flexible length of a member.
  const MemberAxes<S>& axes(std::size_t member) const { return prepared_.members[member].axes; }

  BasicFrameAnswer<S> solve(const BasicFrameLoads<S>& loads) const {
    BasicSolveWorkspace<S> space;
    BasicFrameAnswer<S> answer;
    solve(loads, answer, space);
    return answer;
  }

  /// Solves into existing storage. On a throw the answer is unchanged.
  void solve(const BasicFrameLoads<S>& loads, BasicFrameAnswer<S>& answer, BasicSolveWorkspace<S>& w) const {
    validate(loads, prepared_.frame);
    start(loads, w);
    if (at_rest(w))
      w.residual = w.force;
    else
      residual(w);
    detail::Certifier<S> certifier(prepared_, w.residual);
    for (int step = 0;; ++step) {
      for (std::size_t i = 0; i < w.residual.size(); ++i)
        if (const int k = prepared_.freedoms.number[i]; k >= 0)
          w.step[static_cast<std::size_t>(k)] = detail::rounded<S>(w.residual[i]);
      factor_.solve(w.step, w.work);
      for (std::size_t i = 0; i < w.motions.size(); ++i)
        if (const int k = prepared_.freedoms.number[i]; k >= 0)
          w.motions[i] += detail::accurate_t<S>(w.step[static_cast<std::size_t>(k)]);
      if (!certifier.wants_more(step, w.step, w.motions, w.loading)) break;
      residual(w);
    }
    const Certificate found = certifier.result();
    if (!(found.worst() <= tolerance_))
      fail<NotConverged>("frame", "the certified error of its answer is " + text::number(found.worst(), 3),
                         "errors up to the tolerance " + text::number(tolerance_, 3) + " are accepted: ask for fewer digits, or shorten it");
    finish(loads, found, answer, w);
  }

 private:
  void start(const BasicFrameLoads<S>& loads, BasicSolveWorkspace<S>& w) const {
    using A = detail::accurate_t<S>;
    const BasicFrame<S>& f = prepared_.frame;
    const std::size_t size = 6 * f.nodes.size();
    w.force.assign(size, A(0));
    w.ground.assign(6 * f.supports.size(), A(0));
    w.step.assign(prepared_.freedoms.count, S(0));
    w.work.assign(prepared_.freedoms.count, S(0));
    w.loading.assign(f.members.size(), MemberLoading<A>{});
    w.motions.assign(size, A(0));
    w.residual.assign(size, A(0));
    prepared_.reduce(loads, w.force, w.loading);
    prepared_.ground_motions(loads, w.ground);
    for (std::size_t j = 0; j < f.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k)
        if (f.supports[j].motion[k].kind == BasicRestraint<S>::Kind::fixed)
          w.motions[6 * f.supports[j].node + k] = w.ground[6 * j + k];
    for (std::size_t i = 0; i < size; ++i)
      if (prepared_.freedoms.number[i] == detail::Freedoms::idle && value_of(w.force[i]) != 0.0)
        fail<UnstableFrame>(f.name_of_node(i / 6), std::string("a couple acts in the ") + motion_names[i % 6] +
                            ", but only axial bars meet there", "a joint with a beam, or no couple, is accepted");
  }

  /// No support has moved yet: nothing answers.
  static bool at_rest(const BasicSolveWorkspace<S>& w) {
    return std::all_of(w.ground.begin(), w.ground.end(), [](const detail::accurate_t<S>& g) { return value_of(g) == 0.0; });
  }

  /// residual := loads - what members and springs answer; `at_supports`: only where a motion is held.
  void residual(BasicSolveWorkspace<S>& w, bool at_supports = false) const {
    using A = detail::accurate_t<S>;
    for (A& r : w.residual) r = A(0);
    prepared_.add_internal_forces(w.motions, w.ground, w.residual, at_supports);
    for (std::size_t i = 0; i < w.residual.size(); ++i) w.residual[i] = A(w.force[i] - w.residual[i]);
  }

  void finish(const BasicFrameLoads<S>& loads, const Certificate& found, BasicFrameAnswer<S>& answer,
              BasicSolveWorkspace<S>& w) const {
    using A = detail::accurate_t<S>;
    const BasicFrame<S>& f = prepared_.frame;
    answer.certificate = found;
    answer.motions.resize(w.motions.size());
    for (std::size_t i = 0; i < w.motions.size(); ++i) answer.motions[i] = detail::rounded<S>(w.motions[i]);
    answer.members.resize(f.members.size());
    for (std::size_t i = 0; i < f.members.size(); ++i)
      answer.members[i] = detail::member_answer(prepared_, i, w.motions, w.loading[i]);
    residual(w, true);  // what is left over at held motions is carried by the supports
    answer.reactions.resize(f.supports.size());
    for (std::size_t j = 0; j < f.supports.size(); ++j) {
      const BasicSupport<S>& s = f.supports[j];
      answer.reactions[j].node = s.node;
      for (std::size_t k = 0; k < 6; ++k) {
        const std::size_t i = 6 * s.node + k;
        S r = S(0);
        if (s.motion[k].kind == BasicRestraint<S>::Kind::fixed) r = S(-detail::rounded<S>(w.residual[i]));
        if (s.motion[k].kind == BasicRestraint<S>::Kind::spring)
          r = detail::rounded<S>(A(A(s.motion[k].stiffness) * (w.ground[6 * j + k] - w.motions[i])));
        answer.reactions[j].value[k] = r;
      }
    }
    answer.certificate.equilibrium = detail::equilibrium_error(prepared_, loads, answer);
  }

  detail::PreparedFrame<S> prepared_;
  detail::SparseFactor<S> factor_;  // the seam: a chain of bays may be factored otherwise behind the same two calls
  double tolerance_;
};

using FrameSolver = BasicFrameSolver<double>;
using SolveWorkspace = BasicSolveWorkspace<double>;

}  // namespace baywork
