// SPDX-License-Identifier: MIT
// What people ask of a solved girder, asked and answered in girder words.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/response/analysis.hpp>
#include <baywork/response/member_view.hpp>

namespace baywork {

/// Which bending of a face's bar is meant: in the plane of the face, or out of it.
enum class Plane : std::uint8_t { in_plane, out_of_plane };
inline constexpr Plane in_plane = Plane::in_plane, out_of_plane = Plane::out_of_plane;

template <Scalar S>
class BasicChordView;
template <Scalar S>
class BasicFaceView;

/// A solved case, or a linear combination of cases. Owns its numbers; refers to its analysis, which must live.
template <Scalar S = double>
class BasicResponse {
 public:
  BasicResponse() = default;

  const std::string& name() const noexcept { return name_; }
  const BasicAnalysis<S>& analysis() const {
    if (analysis_ == nullptr) fail<BadDescription>("response", "nothing has been solved into it", "a response from an analysis is accepted");
    return *analysis_;
  }
  const BasicGirder<S>& girder() const { return analysis().girder(); }
  const BasicGirderModel<S>& model() const { return analysis().model(); }
  const BasicFrameAnswer<S>& answer() const noexcept { return answer_; }
  const Certificate& certificate() const noexcept { return answer_.certificate; }
  const BasicFrameLoads<S>& loads() const noexcept { return loads_; }

  /// The loads along a member of the frame.
  MemberLoads<S> loads_on(std::size_t member) const {
    const std::size_t from = first_load_[member];
    return {loads_.on_members.data() + from, first_load_[member + 1] - from};
  }

  /// Any member of the frame, by its number.
  BasicMemberView<S> member(std::size_t i) const {
    const BasicMember<S>& m = model().frame.members[i];
    return {m, analysis().axes(i), answer_.members[i], loads_on(i), answer_.displacement(m.from), answer_.rotation(m.from),
            answer_.displacement(m.to), answer_.rotation(m.to)};
  }
  BasicChordView<S> chord(const ChordRef& ref) const;
  BasicFaceView<S> face(const FaceRef& ref) const;

  /// Displacement of a chord's axis at x along the girder [m], global axes, exact between joints.
  Vec3<S> deflection(const ChordRef& ref, const S& x) const;
  /// Mean displacement of all chords at x: the motion of the girder's axis.
  Vec3<S> axis_deflection(const S& x) const;
  /// Turn of the cross-section at x about the girder's axis [rad]: the best fit to the chords' displacements.
  S twist(const S& x) const;
  /// Largest displacement of any point of any chord along each of x, y, z and in length [m]: found between joints too.
  S max_deflection() const;

  /// Sum of all loads, and of all reactions [N].
  Vec3<S> total_load() const noexcept { return total_load_; }
  Vec3<S> total_reaction() const {
    Vec3<S> r{};
    for (const BasicReaction<S>& s : answer_.reactions) r += Vec3<S>{s.value[0], s.value[1], s.value[2]};
    return r;
  }
  struct SupportReaction {
    Address address;
    Vec3<S> force, couple;  ///< what the support does to the girder, global axes
  };
  std::vector<SupportReaction> reactions() const {
    std::vector<SupportReaction> out;
    for (const BasicReaction<S>& r : answer_.reactions)
      out.push_back({model().frame.nodes[r.node].address, {r.value[0], r.value[1], r.value[2]}, {r.value[3], r.value[4], r.value[5]}});
    return out;
  }

  /// Cut forces of the chords at a splice (the station's cut, on the bay before it), by chord.
  std::vector<BasicCutForces<S>> splice(std::size_t station) const {
    if (!girder().is_splice(station))
      fail<BadDescription>("station " + std::to_string(station + 1), "there is no splice", "stations with a splice are accepted");
    std::vector<BasicCutForces<S>> out;
    for (std::size_t c = 0; c < girder().chords.size(); ++c)
      out.push_back(member(model().chord_member(station - 1, c)).forces(fraction{1}, CutSide::before));
    return out;
  }

 private:
  friend class BasicAnalysis<S>;
  template <Scalar T>
  friend void combine(const std::vector<const BasicResponse<T>*>&, const std::vector<double>&, const std::string&, BasicResponse<T>&,
                      BasicFrameLoads<T>&);

  /// Sorts the member loads by member (stable, without allocating once grown) and sums all loads.
  void take_loads(const BasicFrameLoads<S>& loads) {
    const std::size_t n = model().frame.members.size();
    first_load_.assign(n + 1, 0);
    for (const BasicMemberLoad<S>& l : loads.on_members) ++first_load_[l.member + 1];
    for (std::size_t i = 0; i < n; ++i) first_load_[i + 1] += first_load_[i];
    next_.assign(first_load_.begin(), first_load_.end());
    loads_.on_members.resize(loads.on_members.size());
    for (const BasicMemberLoad<S>& l : loads.on_members) loads_.on_members[next_[l.member]++] = l;
    loads_.on_nodes = loads.on_nodes;
    loads_.motions = loads.motions;
    total_load_ = {};
    using Kind = typename BasicMemberLoad<S>::Kind;
    for (const BasicNodeLoad<S>& l : loads_.on_nodes) total_load_ += l.force;
    for (const BasicMemberLoad<S>& l : loads_.on_members) {
      const MemberAxes<S>& axes = analysis().axes(l.member);
      if (l.kind == Kind::force) total_load_ += axes.to_global(l.first);
      if (l.kind == Kind::line) total_load_ += S((l.b - l.a) / S(2)) * axes.to_global(l.first + l.last);
    }
  }

  const BasicAnalysis<S>* analysis_ = nullptr;
  std::string name_;
  BasicFrameAnswer<S> answer_;
  BasicFrameLoads<S> loads_;
  std::vector<std::size_t> first_load_, next_;
  Vec3<S> total_load_{};
};
using Response = BasicResponse<double>;

/// The chords' cut forces, asked by bay.
template <Scalar S = double>
class BasicChordView {
 public:
  BasicChordView(const BasicResponse<S>& r, std::size_t chord) : r_(r), chord_(chord) {}
  BasicMemberView<S> bay(std::size_t b) const {
    if (b >= r_.girder().bays())
      fail<BadDescription>("bay " + std::to_string(b + 1), "the girder has no such bay", "bays 1 to " + std::to_string(r_.girder().bays()) + " are accepted");
    return r_.member(r_.model().chord_member(b, chord_));
  }
  /// N at the middle of a bay (tension positive) [N].
  S axial(std::size_t b) const { return bay(b).forces(fraction{0.5}).N; }

 private:
  const BasicResponse<S>& r_;
  std::size_t chord_;
};

/// A bar of a face, with its two bendings named after the face.
template <Scalar S = double>
class BasicFaceBarView : public BasicMemberView<S> {
 public:
  explicit BasicFaceBarView(const BasicMemberView<S>& m) : BasicMemberView<S>(m) {}
  /// Bending moment at a fraction of the length: about the face's normal (in plane), or about the other axis.
  S moment(Plane plane, fraction at, CutSide side = CutSide::after) const {
    const BasicCutForces<S> f = this->forces(at, side);
    return plane == Plane::in_plane ? f.Mz : f.My;
  }
  S shear(Plane plane, fraction at, CutSide side = CutSide::after) const {
    const BasicCutForces<S> f = this->forces(at, side);
    return plane == Plane::in_plane ? f.Vy : f.Vz;
  }
};

template <Scalar S = double>
class BasicFaceView {
 public:
  BasicFaceView(const BasicResponse<S>& r, std::size_t face) : r_(r), face_(face) {}
  std::size_t index() const noexcept { return face_; }

  /// The cross member or post at a station (its first piece, where a K splits it).
  BasicFaceBarView<S> cross_member(std::size_t station) const {
    const auto& all = r_.model().faces[face_].cross_members;
    if (station >= all.size() || all[station].empty())
      fail<BadDescription>("station " + std::to_string(station + 1) + ", " + r_.girder().faces[face_].name + " face", "no cross member is there",
                           "stations with a cross member are accepted");
    return BasicFaceBarView<S>(r_.member(all[station][0]));
  }
  /// A diagonal (or own bar) of a panel.
  BasicFaceBarView<S> diagonal(std::size_t panel, std::size_t number = 0) const {
    const auto& all = r_.model().faces[face_].panels;
    if (panel >= all.size() || number >= all[panel].diagonals.size())
      fail<BadDescription>("panel " + std::to_string(panel + 1) + ", " + r_.girder().faces[face_].name + " face", "no such diagonal is there",
                           "diagonals that the panel has are accepted");
    return BasicFaceBarView<S>(r_.member(all[panel].diagonals[number]));
  }

 private:
  const BasicResponse<S>& r_;
  std::size_t face_;
};

using ChordView = BasicChordView<double>;
using FaceView = BasicFaceView<double>;
using FaceBarView = BasicFaceBarView<double>;

template <Scalar S>
BasicChordView<S> BasicResponse<S>::chord(const ChordRef& ref) const {
  return {*this, ref.in(model().frame.names.chords)};
}
template <Scalar S>
BasicFaceView<S> BasicResponse<S>::face(const FaceRef& ref) const {
  return {*this, ref.in(model().frame.names.faces)};
}

}  // namespace baywork
