// SPDX-License-Identifier: MIT
// What the slack of connectors adds to a girder's deflection.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/response/response.hpp>
#include <baywork/solve/member_stiffness.hpp>

namespace baywork {

/// Comes on top of the elastic deflection: a printed value of its own, as slack may or may not be taken up before the
/// girder is hung.
template <Scalar S = double>
struct BasicSlackSag {
  std::vector<Vec3<S>> at_station;          ///< motion of the girder's axis [m], mean of its chords
  std::vector<BasicReaction<S>> reactions;  ///< that it brings about: none unless the girder is held more than needed
  std::size_t opened = 0;                   ///< connectors that pull and so have opened

  /// Greatest motion down [m], and where (0 where nothing sags).
  S greatest() const {
    S most = S(0);
    for (const Vec3<S>& u : at_station) most = larger(most, S(-u.z));
    return most;
  }
};
using SlackSag = BasicSlackSag<double>;

namespace detail {
/// Loads that make a chord's member longer by its connector's slack: the forces k s that would shorten it again.
template <Scalar S>
void open_connector(const BasicAnalysis<S>& analysis, std::size_t member, BasicFrameLoads<S>& loads) {
  const BasicMember<S>& m = analysis.model().frame.members[member];
  const MemberAxes<S>& axes = analysis.axes(member);
  const S slack = S(fit_of(analysis.girder().connector).slack);
  const Vec3<S> push = S(stiffness_of(m, axes.length).axial * slack) * axes.x;
  loads.force(m.from, -push);
  loads.force(m.to, push);
}
}  // namespace detail

/// Every connector that pulls in the response has opened by its slack; those that push are in contact. The frame is
/// solved with the chord ends before them longer by that much (the forces k s that would shorten them again are put on
/// its joints), so that continuous girders and uneven slack are covered. In a girder on two supports a and b this is
/// the kink s/h, with both chords of one side s longer at x_j: sag (s/h) (x_j - a)(b - x)/(b - a) beyond it, and
/// likewise before it; (s/h) x_j (L - x_j)/L under it. (Virtual work: a unit load's force in each connector times s.)
/// x_j lies in the splice's gap; without a gap, at the joint opposite in the panel before.
template <Scalar S>
BasicSlackSag<S> slack_sag(const BasicResponse<S>& r) {
  const BasicGirder<S>& g = r.girder();
  const S slack = S(fit_of(g.connector).slack);
  BasicSlackSag<S> out;
  out.at_station.resize(g.stations.size());
  if (!(value_of(slack) > 0.0)) return out;
  double most = 0;
  for (const BasicMemberAnswer<S>& m : r.answer().members) most = larger(most, magnitude(value_of(m.start[0])));
  BasicFrameLoads<S> loads;
  for (const std::size_t s : g.splices)
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      const std::size_t i = r.model().chord_member(s - 1, c);
      if (!(value_of(r.member(i).forces(fraction{1}, CutSide::before).N) > 1e-9 * most)) continue;
      ++out.opened;
      detail::open_connector(r.analysis(), i, loads);
    }
  if (out.opened == 0) return out;
  const BasicFrameAnswer<S> answer = r.analysis().solver().solve(loads);
  const S share = S(S(1) / S(static_cast<double>(g.chords.size())));
  for (std::size_t i = 0; i < g.stations.size(); ++i)
    for (std::size_t c = 0; c < g.chords.size(); ++c)
      out.at_station[i] += share * answer.displacement(r.model().chord_node(i, c));
  out.reactions = answer.reactions;
  return out;
}

}  // namespace baywork
