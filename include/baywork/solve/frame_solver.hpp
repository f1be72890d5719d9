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
#include <baywork/solve/detail/frame_factor.hpp>
#include <baywork/solve/detail/prepared_frame.hpp>
#include <baywork/solve/frame_answer.hpp>
#include <baywork/solve/mechanism.hpp>
#include <baywork/solve/solve_path.hpp>

namespace baywork {

/// Scratch memory of a solve, owned by the caller: with it and a kept answer, further solves allocate nothing.
template <Scalar S = double>
struct BasicSolveWorkspace {
  std::vector<S> work;
  detail::LoadedMembers<detail::accurate_t<S>> loaded;
  std::vector<detail::accurate_t<S>> ground, held, motions, correction, residual;
  std::vector<BasicMemberAnswer<S>> members;  ///< of an answer that is not yet certified
};

/// A linear elastic frame, checked and factored once. Safe to use from many threads (each with a workspace).
///
/// A frame that is a chain of stations is found out and takes the chain's path; any other the sparse one (see path() and
/// why()). Every answer is corrected with residuals that are summed member by member, stiffness and loads in twofold
/// precision, then certified (see Certificate). Throws UnstableFrame, naming the motion, where nothing resists one;
/// NotConverged where the certified error stays above the tolerance. Derivative-carrying scalars take the same paths in
/// their own precision.
template <Scalar S = double>
class BasicFrameSolver {
 public:
  explicit BasicFrameSolver(BasicFrame<S> frame, double tolerance = 1e-10) : BasicFrameSolver(std::move(frame), SolverOptions{tolerance}) {}
  BasicFrameSolver(BasicFrame<S> frame, const SolverOptions& options);

  const BasicFrame<S>& frame() const noexcept { return prepared_.frame; }
  std::size_t unknowns() const noexcept { return prepared_.freedoms.count; }
  /// Local axes and flexible length of a member.
  MemberAxes<S> axes(std::size_t member) const { return axes_of(prepared_.frame, prepared_.frame.members[member]); }
  double tolerance() const noexcept { return options_.tolerance; }
  /// The path taken: chain, chain_fast or sparse.
  SolvePath path() const noexcept { return factor_.path(); }
  /// Why that path, and if it is not a chain's, why not: in words.
  const std::string& why() const noexcept { return factor_.why(); }
  /// Bytes that the factorisation holds.
  std::size_t factor_bytes() const noexcept { return factor_.bytes(); }

  /// Gives a member another section; a chain is factored anew from its bay to the middle alone. On a throw all is as it was.
  void change_member(std::size_t member, const BasicFrameSection<S>& section);
  /// Gives a joint's support other restraints (it must have one); factors anew as little as change_member does.
  void change_support(std::size_t node, const std::array<BasicRestraint<S>, 6>& motion);

  BasicFrameAnswer<S> solve(const BasicFrameLoads<S>& loads) const {
    BasicSolveWorkspace<S> space;
    BasicFrameAnswer<S> answer;
    solve(loads, answer, space);
    return answer;
  }

  /// Solves into existing storage. On a throw the answer is unchanged.
  void solve(const BasicFrameLoads<S>& loads, BasicFrameAnswer<S>& answer, BasicSolveWorkspace<S>& w) const;

 private:
  /// residual := forces on the nodes when none of the unknowns has moved. True if supports move: motions then holds theirs.
  bool start(const BasicFrameLoads<S>& loads, BasicSolveWorkspace<S>& w) const {
    using A = detail::accurate_t<S>;
    const BasicFrame<S>& f = prepared_.frame;
    const std::size_t size = 6 * f.nodes.size();
    w.residual.assign(size, A(0));
    w.ground.assign(6 * f.supports.size(), A(0));
    w.held.assign(6 * f.supports.size(), A(0));
    w.work.resize(factor_.work_size(prepared_));
    w.correction.resize(size);
    w.motions.resize(size);
    w.members.resize(f.members.size());
    w.loaded.clear(f.members.size());
    prepared_.reduce(loads, w.residual, w.loaded);
    for (std::size_t i = 0; prepared_.freedoms.any_idle && i < size; ++i)
      if (prepared_.freedoms.number[i] == detail::Freedoms::idle && value_of(w.residual[i]) != 0.0)
        fail<UnstableFrame>(f.name_of_node(i / 6), std::string("a couple acts in the ") + motion_names[i % 6] +
                            ", but only axial bars meet there", "a joint with a beam, or no couple, is accepted");
    prepared_.ground_motions(loads, w.ground);
    if (std::all_of(w.ground.begin(), w.ground.end(), [](const A& g) { return value_of(g) == 0.0; })) return false;
    std::fill(w.motions.begin(), w.motions.end(), A(0));
    for (std::size_t j = 0; j < f.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k)
        if (f.supports[j].motion[k].kind == BasicRestraint<S>::Kind::fixed)
          w.motions[6 * f.supports[j].node + k] = w.ground[6 * j + k];
    detail::Sizes unseen{};
    prepared_.add_member_forces(w.motions, -1.0, w.residual, &unseen[2]);
    prepared_.add_spring_forces(w.motions, w.ground, -1.0, w.residual);
    return true;
  }

  /// Forces on held motions go to the supports: beside them a factor would round away what is left elsewhere.
  void give_to_supports(BasicSolveWorkspace<S>& w) const {
    using A = detail::accurate_t<S>;
    for (std::size_t j = 0; j < prepared_.frame.supports.size(); ++j)
      for (std::size_t k = 0; k < 6; ++k) {
        const BasicSupport<S>& s = prepared_.frame.supports[j];
        if (s.motion[k].kind != BasicRestraint<S>::Kind::fixed) continue;
        w.held[6 * j + k] += w.residual[6 * s.node + k];
        w.residual[6 * s.node + k] = A(0);
      }
  }

  /// u := K⁻¹ residual.
  void find_motions(BasicSolveWorkspace<S>& w, std::vector<detail::accurate_t<S>>& u) const {
    give_to_supports(w);
    factor_.solve(prepared_, w.residual, u, w.work);
  }
  /// residual -= what members and springs answer to u; the members' forces are seen in `s`.
  void balance(const std::vector<detail::accurate_t<S>>& u, BasicSolveWorkspace<S>& w, detail::Sizes& s) const {
    prepared_.add_member_forces(u, -1.0, w.residual, &s[2]);
    prepared_.add_spring_forces(u, -1.0, w.residual);
  }

  void finish(const BasicFrameLoads<S>& loads, const Certificate& found, BasicFrameAnswer<S>& answer,
              BasicSolveWorkspace<S>& w) const {
    using A = detail::accurate_t<S>;
    const BasicFrame<S>& f = prepared_.frame;
    answer.certificate = found;
    answer.motions.resize(w.motions.size());
    for (std::size_t i = 0; i < w.motions.size(); ++i) answer.motions[i] = detail::rounded<S>(w.motions[i]);
    answer.members.swap(w.members);
    w.members.reserve(f.members.size());  // for the next solve; until then its pages stay untouched
    prepared_.add_member_forces_at_supports(w.correction, -1.0, w.residual);  // the last correction is not balanced yet
    give_to_supports(w);
    answer.reactions.resize(f.supports.size());
    for (std::size_t j = 0; j < f.supports.size(); ++j) {
      const BasicSupport<S>& s = f.supports[j];
      answer.reactions[j].node = s.node;
      for (std::size_t k = 0; k < 6; ++k) {
        const std::size_t i = 6 * s.node + k;
        S r = S(0);
        if (s.motion[k].kind == BasicRestraint<S>::Kind::fixed) r = S(-detail::rounded<S>(w.held[6 * j + k]));
        if (s.motion[k].kind == BasicRestraint<S>::Kind::spring)
          r = detail::rounded<S>(A(A(s.motion[k].stiffness) * (w.ground[6 * j + k] - w.motions[i])));
        answer.reactions[j].value[k] = r;
      }
    }
    answer.certificate.equilibrium = detail::equilibrium_error(prepared_, loads, answer);
  }

  detail::PreparedFrame<S> prepared_;
  SolverOptions options_;
  detail::FrameFactor<S> factor_;
};

template <Scalar S>
BasicFrameSolver<S>::BasicFrameSolver(BasicFrame<S> frame, const SolverOptions& options) : prepared_(std::move(frame)), options_(options) {
  if (!is_finite(options.tolerance) || !(options.tolerance > 0))
    fail<BadDescription>("solver", "the tolerance is " + text::number(options.tolerance), "a finite number above zero is accepted");
  factor_.choose(prepared_, options_);
}

template <Scalar S>
void BasicFrameSolver<S>::change_member(std::size_t member, const BasicFrameSection<S>& section) {
  if (member >= prepared_.frame.members.size())
    fail<BadDescription>("frame", "member " + std::to_string(member + 1) + " is to be changed, which does not exist",
                         "members 1 to " + std::to_string(prepared_.frame.members.size()) + " are accepted");
  BasicMember<S>& m = prepared_.frame.members[member];
  detail::validate_section(section, m.kind == MemberKind::beam, [&] { return prepared_.frame.name_of_member(member); });
  const BasicFrameSection<S> before = m.section;
  m.section = section;
  prepared_.renew_member(member);
  if (factor_.renew_member(prepared_, member, options_)) return;
  const detail::Refused refused = factor_.refused();
  m.section = before;
  prepared_.renew_member(member);
  factor_.choose(prepared_, options_);
  refused.say();
}

template <Scalar S>
void BasicFrameSolver<S>::change_support(std::size_t node, const std::array<BasicRestraint<S>, 6>& motion) {
  BasicSupport<S>* support = nullptr;
  for (BasicSupport<S>& s : prepared_.frame.supports)
    if (s.node == node) support = &s;
  if (support == nullptr)
    fail<BadDescription>(prepared_.frame.name_of_node(node), "no support is there to be changed", "a joint with a support is accepted");
  const std::array<BasicRestraint<S>, 6> before = support->motion;
  detail::validate_restraints(motion, [&] { return "support at " + prepared_.frame.name_of_node(node); });
  support->motion = motion;
  prepared_.renew_supports();
  if (factor_.renew_support(prepared_, node, options_)) return;
  const detail::Refused refused = factor_.refused();
  support->motion = before;
  prepared_.renew_supports();
  factor_.choose(prepared_, options_);
  refused.say();
}

template <Scalar S>
void BasicFrameSolver<S>::solve(const BasicFrameLoads<S>& loads, BasicFrameAnswer<S>& answer, BasicSolveWorkspace<S>& w) const {
  validate(loads, prepared_.frame);
  const bool supports_move = start(loads, w);
  detail::Certifier<S> certifier(prepared_, w.residual, factor_.rate());
  detail::Sizes correction{}, reached{};
  std::vector<detail::accurate_t<S>>& first = supports_move ? w.correction : w.motions;
  find_motions(w, first);
  if (supports_move)
    detail::add_motions(w.correction, w.motions, correction, reached);
  else
    detail::see_motions(first, correction);
  balance(first, w, correction);
  certifier.first(correction);
  for (;;) {
    find_motions(w, w.correction);
    correction = reached = {};
    detail::add_motions(w.correction, w.motions, correction, reached);
    detail::see_member_forces(prepared_, w.correction, correction);
    detail::answer_members(prepared_, w.motions, w.loaded, w.members, reached);
    if (!certifier.wants_more(correction, reached)) break;
    balance(w.correction, w, correction);
  }
  const Certificate found = certifier.result();
  if (!(found.worst() <= options_.tolerance))
    fail<NotConverged>("frame", "the certified error of its answer is " + text::number(found.worst(), 3),
                       "errors up to the tolerance " + text::number(options_.tolerance, 3) + " are accepted: ask for fewer digits, or shorten it");
  finish(loads, found, answer, w);
}

using FrameSolver = BasicFrameSolver<double>;
using SolveWorkspace = BasicSolveWorkspace<double>;

// Most of what including this costs is compiling the solver for double, then the proof (verify/prove.hpp). A program of
// many units may do so once: with BAYWORK_SOLVER_ELSEWHERE defined for all, some hold what cmake/solver_once.cpp and
// cmake/proof_once.cpp do.
#ifdef BAYWORK_SOLVER_ELSEWHERE
extern template class BasicFrameSolver<double>;
#endif

}  // namespace baywork
