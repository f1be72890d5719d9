// SPDX-License-Identifier: MIT
// A girder with its frame and factorisation, ready for load cases.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/frame/girder_loads.hpp>
#include <baywork/frame/girder_model.hpp>
#include <baywork/load/load_case.hpp>
#include <baywork/solve/frame_solver.hpp>

namespace baywork {

template <Scalar S>
class BasicResponse;
template <Scalar S>
class BasicCases;

/// Scratch memory for solving again and again without allocating.
template <Scalar S = double>
struct BasicAnalysisWorkspace {
  BasicFrameLoads<S> loads;
  BasicSolveWorkspace<S> solve;
};
using AnalysisWorkspace = BasicAnalysisWorkspace<double>;

/// Owns girder, frame and factorisation. `const` is safe from many threads. It stays where it was made: responses
/// refer to it, and must not outlive it.
template <Scalar S = double>
class BasicAnalysis {
 public:
  /// Takes the general girder, or any description with a girder() (box, triangular, ladder, ring).
  explicit BasicAnalysis(BasicGirder<S> girder, double tolerance = 1e-10)
      : model_(model_of(std::move(girder))), axes_(axes_of_members(model_.frame)), solver_(model_.frame, tolerance) {}
  template <class Description>
    requires requires(const Description& d) { { d.girder() } -> std::same_as<BasicGirder<S>>; }
  explicit BasicAnalysis(const Description& d, double tolerance = 1e-10) : BasicAnalysis(d.girder(), tolerance) {}
  BasicAnalysis(const BasicAnalysis&) = delete;
  BasicAnalysis& operator=(const BasicAnalysis&) = delete;

  const BasicGirder<S>& girder() const noexcept { return model_.girder; }
  const BasicGirderModel<S>& model() const noexcept { return model_; }
  const BasicFrameSolver<S>& solver() const noexcept { return solver_; }
  const MemberAxes<S>& axes(std::size_t member) const { return axes_[member]; }

  /// One case of these actions together.
  BasicResponse<S> solve(const std::vector<BasicAction<S>>& actions) const&;
  BasicResponse<S> solve(const BasicLoadCase<S>& load_case) const&;
  /// Loads of the frame itself as a case of this name.
  BasicResponse<S> solve(const BasicFrameLoads<S>& loads, const std::string& name) const&;
  /// Several cases, to be combined.
  BasicCases<S> solve(const std::vector<BasicLoadCase<S>>& cases) const&;
  /// Into an existing response: allocates nothing once response and workspace have grown to size. On a throw the
  /// response keeps what it was.
  void solve(const std::vector<BasicAction<S>>& actions, BasicResponse<S>& response, BasicAnalysisWorkspace<S>& space) const&;

  // a response of a temporary analysis would refer to nothing
  BasicResponse<S> solve(const std::vector<BasicAction<S>>&) const&& = delete;
  BasicResponse<S> solve(const BasicLoadCase<S>&) const&& = delete;
  BasicResponse<S> solve(const BasicFrameLoads<S>&, const std::string&) const&& = delete;
  BasicCases<S> solve(const std::vector<BasicLoadCase<S>>&) const&& = delete;

  /// Actions as loads of the frame.
  void reduce(const std::vector<BasicAction<S>>& actions, BasicFrameLoads<S>& out) const {
    for (const BasicAction<S>& a : actions) add_action(model_, axes_, a, out);
  }

 private:
  BasicGirderModel<S> model_;
  std::vector<MemberAxes<S>> axes_;
  BasicFrameSolver<S> solver_;
};

template <class Description>
BasicAnalysis(const Description& d) -> BasicAnalysis<std::remove_cvref_t<decltype(d.girder().stations[0])>>;

using Analysis = BasicAnalysis<double>;

}  // namespace baywork
