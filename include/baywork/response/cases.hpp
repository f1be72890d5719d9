// SPDX-License-Identifier: MIT
// Several solved cases, and their linear combinations.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/load/load_case.hpp>
#include <baywork/response/response.hpp>

namespace baywork {

/// Sum of factor × response. The certificate is the sum of the parts' errors against the sum's own size, so it tells
/// where parts all but cancel. Throws for responses of different analyses, or factors that are not finite. `loads` is
/// scratch: once it and `out` have grown, nothing is allocated. `out` must not be one of the parts.
template <Scalar S>
void combine(const std::vector<const BasicResponse<S>*>& parts, const std::vector<double>& factors, const std::string& name, BasicResponse<S>& out,
             BasicFrameLoads<S>& loads) {
  if (parts.empty() || parts.size() != factors.size())
    fail<BadDescription>("combination " + name, std::to_string(factors.size()) + " factors are given for " + std::to_string(parts.size()) + " cases",
                         "one factor for each case is accepted");
  for (std::size_t p = 0; p < parts.size(); ++p) {
    if (&parts[p]->analysis() != &parts[0]->analysis())
      fail<BadDescription>("combination " + name, "its cases are of different girders", "cases of one analysis are accepted");
    if (!is_finite(factors[p]))
      fail<BadDescription>("combination " + name, "a factor is " + text::number(factors[p]), "finite factors are accepted");
  }
  const BasicFrameAnswer<S>& like = parts[0]->answer_;
  out.analysis_ = parts[0]->analysis_;
  out.name_ = name;
  out.answer_.motions.assign(like.motions.size(), S(0));
  out.answer_.members.resize(like.members.size());
  out.answer_.reactions.resize(like.reactions.size());
  for (std::size_t i = 0; i < like.reactions.size(); ++i) out.answer_.reactions[i] = {like.reactions[i].node, {}};
  for (BasicMemberAnswer<S>& m : out.answer_.members)
    for (std::size_t k = 0; k < 6; ++k) m.start[k] = m.end[k] = m.modes[k] = S(0);
  for (BasicReaction<S>& r : out.answer_.reactions)
    for (S& v : r.value) v = S(0);
  loads.clear();
  const auto size_of = [](const BasicFrameAnswer<S>& a, bool force) {
    double s = 0;
    if (!force)
      for (const S& u : a.motions) s = (std::max)(s, std::abs(value_of(u)));
    else
      for (const BasicMemberAnswer<S>& m : a.members)
        for (std::size_t k = 0; k < 6; ++k) s = (std::max)({s, std::abs(value_of(m.start[k])), std::abs(value_of(m.end[k]))});
    return s;
  };
  double motion_error = 0, force_error = 0;
  out.answer_.certificate = {};
  for (std::size_t p = 0; p < parts.size(); ++p) {
    const BasicResponse<S>& part = *parts[p];
    if (factors[p] == 0.0) continue;
    const S f = S(factors[p]);
    loads.add(part.loads(), f);
    for (std::size_t i = 0; i < out.answer_.motions.size(); ++i) out.answer_.motions[i] += S(f * part.answer_.motions[i]);
    for (std::size_t i = 0; i < out.answer_.members.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) {
        out.answer_.members[i].start[k] += S(f * part.answer_.members[i].start[k]);
        out.answer_.members[i].end[k] += S(f * part.answer_.members[i].end[k]);
        out.answer_.members[i].modes[k] += S(f * part.answer_.members[i].modes[k]);
      }
    for (std::size_t i = 0; i < out.answer_.reactions.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) out.answer_.reactions[i].value[k] += S(f * part.answer_.reactions[i].value[k]);
    motion_error += std::abs(factors[p]) * part.certificate().displacement_error * size_of(part.answer_, false);
    force_error += std::abs(factors[p]) * part.certificate().force_error * size_of(part.answer_, true);
    out.answer_.certificate.equilibrium = (std::max)(out.answer_.certificate.equilibrium, part.certificate().equilibrium);
  }
  const double motion = size_of(out.answer_, false), force = size_of(out.answer_, true);
  out.answer_.certificate.displacement_error = motion > 0 ? motion_error / motion : 0.0;
  out.answer_.certificate.force_error = force > 0 ? force_error / force : 0.0;
  out.take_loads(loads);
}

template <Scalar S>
BasicResponse<S> combine(const std::vector<const BasicResponse<S>*>& parts, const std::vector<double>& factors, const std::string& name) {
  BasicResponse<S> out;
  BasicFrameLoads<S> loads;
  combine<S>(parts, factors, name, out, loads);
  return out;
}

/// Solved cases of one analysis, in the order given, with what combination rules need to know of them.
template <Scalar S = double>
class BasicCases {
 public:
  BasicCases(const BasicAnalysis<S>& analysis, std::vector<BasicResponse<S>> responses, std::vector<CaseKind> kinds)
      : analysis_(&analysis), responses_(std::move(responses)), kinds_(std::move(kinds)) {}

  std::size_t size() const noexcept { return responses_.size(); }
  const BasicResponse<S>& operator[](std::size_t i) const { return responses_[i]; }
  const BasicResponse<S>& operator[](const std::string& name) const {
    for (const BasicResponse<S>& r : responses_)
      if (r.name() == name) return r;
    fail<BadDescription>("load cases", "there is no case called " + name, "names of solved cases are accepted");
  }
  const std::vector<CaseKind>& kinds() const noexcept { return kinds_; }
  const BasicAnalysis<S>& analysis() const noexcept { return *analysis_; }

  BasicResponse<S> combine(const Combination& c) const {
    std::vector<const BasicResponse<S>*> parts;
    for (const BasicResponse<S>& r : responses_) parts.push_back(&r);
    return baywork::combine<S>(parts, c.factors, c.name);
  }

 private:
  const BasicAnalysis<S>* analysis_;
  std::vector<BasicResponse<S>> responses_;
  std::vector<CaseKind> kinds_;
};
using Cases = BasicCases<double>;

template <Scalar S>
void BasicAnalysis<S>::solve(const std::vector<BasicAction<S>>& actions, BasicResponse<S>& response, BasicAnalysisWorkspace<S>& space) const& {
  if (actions.empty()) fail<BadDescription>("load case", "no action is given", "one action or more is accepted");
  space.loads.clear();
  reduce(actions, space.loads);
  solver_.solve(space.loads, response.answer_, space.solve);
  response.analysis_ = this;
  response.take_loads(space.loads);
}

template <Scalar S>
BasicResponse<S> BasicAnalysis<S>::solve(const std::vector<BasicAction<S>>& actions) const& {
  BasicResponse<S> r;
  BasicAnalysisWorkspace<S> space;
  solve(actions, r, space);
  r.name_ = "one case";
  return r;
}

template <Scalar S>
BasicResponse<S> BasicAnalysis<S>::solve(const BasicLoadCase<S>& load_case) const& {
  BasicResponse<S> r = solve(load_case.actions);
  r.name_ = load_case.name;
  return r;
}

template <Scalar S>
BasicResponse<S> BasicAnalysis<S>::solve(const BasicFrameLoads<S>& loads, const std::string& name) const& {
  BasicResponse<S> r;
  BasicSolveWorkspace<S> space;
  solver_.solve(loads, r.answer_, space);
  r.analysis_ = this;
  r.name_ = name;
  r.take_loads(loads);
  return r;
}

template <Scalar S>
BasicCases<S> BasicAnalysis<S>::solve(const std::vector<BasicLoadCase<S>>& cases) const& {
  if (cases.empty()) fail<BadDescription>("load cases", "no case is given", "one case or more is accepted");
  std::vector<BasicResponse<S>> responses;
  std::vector<CaseKind> kinds;
  for (const BasicLoadCase<S>& c : cases) {
    if (c.name.empty()) fail<BadDescription>("load case " + std::to_string(responses.size() + 1), "it has no name", "a name for each case is accepted");
    for (const CaseKind& k : kinds)
      if (k.name == c.name) fail<BadDescription>("load case " + c.name, "another case has the same name", "different names are accepted");
    responses.push_back(solve(c));
    kinds.push_back({c.name, c.nature, c.alternative});
  }
  return {*this, std::move(responses), std::move(kinds)};
}

}  // namespace baywork
