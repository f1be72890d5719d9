// SPDX-License-Identifier: MIT
// A girder as a frame, with the way back: which member is which part of the girder.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/address.hpp>
#include <baywork/frame/detail/girder_bars.hpp>
#include <baywork/frame/detail/panel_joints.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/frame/girder_supports.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/girder/validate.hpp>

namespace baywork {

inline constexpr std::size_t no_member = static_cast<std::size_t>(-1);

/// One panel of a face in the frame.
struct PanelMembers {
  std::size_t first_station = 0, last_station = 0;
  std::vector<std::size_t> diagonals;  ///< and bars of a user's own panel
};

/// One face in the frame.
template <Scalar S = double>
struct BasicFaceMembers {
  std::vector<PanelMembers> panels;
  std::vector<std::vector<std::size_t>> cross_members;  ///< at each station: none, one, or the pieces of a split post
  std::vector<Vec3<S>> normals;                         ///< of each panel, unit, out of the girder
};

/// The frame of a girder. Nodes are numbered station by station: chord joints first, then joints of faces; the node
/// of chord c at station i is nodes_of_station[i] + c.
template <Scalar S = double>
struct BasicGirderModel {
  BasicGirder<S> girder;
  BasicFrame<S> frame;
  std::vector<std::size_t> nodes_of_station;
  std::vector<std::size_t> chord_members;        ///< of chord c in bay b: chord_members[b * chords + c]
  std::vector<BasicFaceMembers<S>> faces;        ///< in the girder's order
  std::vector<std::size_t> diaphragm_members;
  std::vector<BasicBar<S>> bars;                 ///< each different bar once
  std::vector<std::size_t> bar_index;            ///< of each member

  std::size_t chord_node(std::size_t station, std::size_t chord) const { return nodes_of_station[station] + chord; }
  std::size_t chord_member(std::size_t bay, std::size_t chord) const { return chord_members[bay * girder.chords.size() + chord]; }
  const BasicBar<S>& bar(std::size_t member) const { return bars[bar_index[member]]; }
};
using GirderModel = BasicGirderModel<double>;
using FaceMembers = BasicFaceMembers<double>;

namespace detail {

template <class S>
class ModelMaker {
 public:
  explicit ModelMaker(BasicGirder<S> g) {
    validate(g);
    model_.girder = std::move(g);
    model_.frame.names = girder().names();
  }

  BasicGirderModel<S> make() {
    for (const BasicChord<S>& c : girder().chords) chord_bars_.push_back(member_bar(c.bar, bars_));
    joints_ = place_joints(girder(), bars_);
    make_room();
    add_nodes();
    add_chords();
    for (std::size_t f = 0; f < girder().faces.size(); ++f) add_face(f);
    add_diaphragms();
    model_.frame.supports = supports_of(girder(), model_.nodes_of_station);
    return std::move(model_);
  }

 private:
  const BasicGirder<S>& girder() const { return model_.girder; }

  /// Growing vectors of a long girder would need twice the memory.
  void make_room() {
    std::size_t pieces = 0;
    for (const std::vector<PlacedPanel<S>>& face : joints_.panels)
      for (std::size_t p = 0; p < face.size(); ++p)
        for (const PlacedPiece<S>& piece : face[p].pieces)
          if (p == 0 || piece.across_at != face[p].first) ++pieces;
    const std::size_t chords = girder().chords.size();
    model_.nodes_of_station.reserve(girder().stations.size());
    model_.chord_members.reserve(girder().bays() * chords);
    model_.frame.nodes.reserve(girder().stations.size() * chords + joints_.face_joints.size());
    model_.frame.members.reserve(girder().bays() * chords + pieces);
    model_.bar_index.reserve(girder().bays() * chords + pieces);
  }

  void add_nodes() {
    std::size_t next_face_joint = 0;
    for (std::size_t i = 0; i < girder().stations.size(); ++i) {
      model_.nodes_of_station.push_back(model_.frame.nodes.size());
      for (std::size_t c = 0; c < girder().chords.size(); ++c) {
        Address a;
        a.station = static_cast<int>(i);
        a.chord = static_cast<int>(c);
        model_.frame.nodes.push_back({girder().joint(i, c), "", a});
      }
      for (; next_face_joint < joints_.face_joints.size() && joints_.face_joints[next_face_joint].station == i; ++next_face_joint) {
        FaceJoint<S>& j = joints_.face_joints[next_face_joint];
        Address a;
        a.station = static_cast<int>(i);
        a.face = static_cast<int>(j.face);
        j.node = model_.frame.nodes.size();
        model_.frame.nodes.push_back({j.at, "", a});
      }
    }
  }

  std::size_t add(BasicMember<S> m, const MemberBar<S>& bar, const std::string& place) {
    if (bar.index == MemberBar<S>::not_given) fail<BadDescription>(place, "no bar is given for it", "a bar (section and material) is accepted");
    m.section = bar.section;
    number_of_bar_.resize(bars_.size(), no_member);
    std::size_t& number = number_of_bar_[bar.index];
    if (number == no_member) {
      number = model_.bars.size();
      model_.bars.push_back(bars_[bar.index]);
    }
    model_.bar_index.push_back(number);
    return model_.frame.add_member(std::move(m));
  }

  void add_chords() {
    for (std::size_t b = 0; b < girder().bays(); ++b)
      for (std::size_t c = 0; c < girder().chords.size(); ++c) {
        BasicMember<S> m;
        m.from = model_.chord_node(b, c);
        m.to = model_.chord_node(b + 1, c);
        m.up = {S(0), S(0), S(1)};
        m.address.bay = static_cast<int>(b);
        m.address.chord = static_cast<int>(c);
        m.address.has_role = true;
        m.address.role = Role::chord;
        if (girder().is_splice(b + 1)) m.end = end_at(fit_of(girder().connector));
        model_.chord_members.push_back(add(std::move(m), chord_bars_[c], girder().chords[c].name + " chord"));
      }
  }

  /// The chord's end before a splice: its connector's springs.
  static BasicMemberEnd<S> end_at(const ConnectorFit& f) {
    return {S(f.axial), S(f.shear_y), S(f.shear_z), S(f.torsion), S(f.about_y), S(f.about_z), {}};
  }

  void add_face(std::size_t f) {
    BasicFaceMembers<S> out;
    out.cross_members.resize(girder().stations.size());
    std::vector<std::size_t> closed_by(girder().stations.size(), no_member);
    out.panels.reserve(joints_.panels[f].size());
    out.normals.reserve(joints_.panels[f].size());
    for (std::size_t p = 0; p < joints_.panels[f].size(); ++p) {
      const PlacedPanel<S>& panel = joints_.panels[f][p];
      out.panels.push_back({panel.first, panel.last, {}});
      out.normals.push_back(panel.normal);
      int along = 0, several = 0;
      for (const PlacedPiece<S>& piece : panel.pieces) several += piece.across_at == no_member ? 1 : 0;
      for (const PlacedPiece<S>& piece : panel.pieces) {
        const std::size_t s = piece.across_at;
        if (s != no_member && closed_by[s] != no_member && closed_by[s] != p) continue;  // the panel before has closed it
        if (s != no_member) closed_by[s] = p;
        const std::size_t i = add_piece(f, panel, piece, s != no_member ? static_cast<int>(out.cross_members[s].size()) : along++, several);
        (s != no_member ? out.cross_members[s] : out.panels.back().diagonals).push_back(i);
      }
    }
    number_split_posts(out);
    model_.faces.push_back(std::move(out));
  }

  void number_split_posts(const BasicFaceMembers<S>& face) {
    for (const std::vector<std::size_t>& at : face.cross_members)
      if (at.size() == 1) model_.frame.members[at[0]].address.piece = -1;
  }

  std::size_t add_piece(std::size_t f, const PlacedPanel<S>& panel, const PlacedPiece<S>& piece, int number, int several) {
    BasicMember<S> m;
    m.from = joints_.node(piece.from, model_.nodes_of_station);
    m.to = joints_.node(piece.to, model_.nodes_of_station);
    m.up = panel.normal;
    m.address.face = static_cast<int>(f);
    m.address.has_role = true;
    m.address.role = piece.role;
    if (piece.across_at != no_member) {
      m.address.station = static_cast<int>(piece.across_at);
      m.address.piece = number;
    } else {
      m.address.bay = static_cast<int>(panel.first);
      m.address.piece = several > 1 ? number : -1;
    }
    const std::string place = text_of(m.address, model_.frame.names);
    require::finite(piece.gap, place, "gap at the chord");
    if (piece.role == Role::diagonal) {
      m.kind = MemberKind::axial;
      m.start.offset = arm_of(panel, piece.from, piece.from_along, piece.gap);
      m.end.offset = arm_of(panel, piece.to, piece.to_along, piece.gap);
    } else {
      m.start.about_z = m.end.about_z = piece.joint.in_plane;
      m.start.about_y = m.end.about_y = piece.joint.out_of_plane;
      if (piece.joint.to_chord_surface) {
        const Vec3<S> along = unit(model_.frame.nodes[m.to].at - model_.frame.nodes[m.from].at);
        m.start.offset = half_chord(piece.from) * along;
        m.end.offset = S(-half_chord(piece.to)) * along;
        const Vec3<S> whole = model_.frame.nodes[m.to].at - model_.frame.nodes[m.from].at;
        if (!(value_of(S(half_chord(piece.from) + half_chord(piece.to))) < value_of(length(whole))))
          fail<BadDescription>(place, "the chords' surfaces touch each other", "a face deeper than its chords are thick is accepted");
      }
    }
    return add(std::move(m), piece.bar, place);
  }

  /// Arm from a chord joint to where a diagonal's axis meets the chord, towards the middle of the panel.
  Vec3<S> arm_of(const PlacedPanel<S>& panel, const JointKey& key, double along, const S& gap) const {
    if (value_of(gap) == 0.0 || key.chord == no_member) return {};
    const Vec3<S> d = girder().joint(panel.last, key.chord) - girder().joint(panel.first, key.chord);
    return (along < 0.5 ? gap : S(-gap)) * unit(d);
  }
  S half_chord(const JointKey& key) const {
    if (key.chord == no_member) return S(0);
    const SectionData<S>& s = girder().chords[key.chord].bar.section;
    return S(larger(s.height, s.width) / S(2));
  }

  void add_diaphragms() {
    const BasicDiaphragms<S>& d = girder().diaphragms;
    const std::size_t n = girder().chords.size();
    for (std::size_t i = 0; i < girder().stations.size(); ++i) {
      if (d.none() || !d.has(i, girder().bays())) continue;
      int number = 0;
      for (std::size_t f = 0; f < girder().faces.size(); ++f)
        if (model_.faces[f].cross_members[i].empty())
          add_diaphragm_bar(i, girder().faces[f].first_chord, girder().faces[f].second_chord, number++);
      for (std::size_t a = 0; a < n; ++a)
        for (std::size_t b = a + 1; b < n; ++b)
          if (n > 3 && (a == 0 || d.crossed) && !neighbours(a, b)) add_diaphragm_bar(i, a, b, number++);
    }
  }
  bool neighbours(std::size_t a, std::size_t b) const {
    for (const BasicGirderFace<S>& f : girder().faces)
      if ((f.first_chord == a && f.second_chord == b) || (f.first_chord == b && f.second_chord == a)) return true;
    return false;
  }
  void add_diaphragm_bar(std::size_t station, std::size_t a, std::size_t b, int number) {
    BasicMember<S> m;
    m.from = model_.chord_node(station, a);
    m.to = model_.chord_node(station, b);
    m.kind = MemberKind::axial;
    m.up = {S(1), S(0), S(0)};
    m.address.station = static_cast<int>(station);
    m.address.piece = number;
    m.address.has_role = true;
    m.address.role = Role::diaphragm;
    model_.diaphragm_members.push_back(add(std::move(m), member_bar(girder().diaphragms.bar, bars_), text_of(m.address, model_.frame.names)));
  }

  BasicGirderModel<S> model_;
  std::vector<BasicBar<S>> bars_;             ///< all that are given, used or not
  std::vector<std::size_t> number_of_bar_;    ///< of those used, in the model
  std::vector<MemberBar<S>> chord_bars_;
  PlacedJoints<S> joints_;
};

}  // namespace detail

/// Makes the frame: chords and cross members as rigid-jointed beams (cross members with their joint's springs in and
/// out of the face's plane, chords with their connectors' springs at splices, on the end of the bay before), diagonals
/// and diaphragm bars as axial bars, arms for gaps and joint sizes.
template <Scalar S>
BasicGirderModel<S> model_of(BasicGirder<S> girder) {
  return detail::ModelMaker<S>(std::move(girder)).make();
}

}  // namespace baywork
