// SPDX-License-Identifier: MIT
// Which joints the panels of a girder need, and between which of them each piece runs.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/vec3.hpp>
#include <baywork/frame/detail/girder_bars.hpp>
#include <baywork/girder/girder.hpp>
#include <baywork/girder/panel.hpp>
#include <baywork/girder/panel_place.hpp>

namespace baywork::detail {

/// A joint of a chord (chord set) or of a face (`face_joint` set), npos where it is not.
struct JointKey {
  std::size_t station = 0;
  std::size_t chord = static_cast<std::size_t>(-1);
  std::size_t face_joint = static_cast<std::size_t>(-1);
};

/// A joint of a face itself: the middle of a K's post, or a point inside a user's panel. It is numbered with its station.
template <class S>
struct FaceJoint {
  std::size_t station = 0, face = 0;
  double along = 0, across = 0;  ///< `along` is 0 on the station, else the fraction of the panel that begins there
  Vec3<S> at{};
  std::size_t node = 0;
};

template <class S>
struct PlacedPiece {
  JointKey from{}, to{};
  double from_along = 0, to_along = 0;  ///< in its panel, from 0 to 1
  Role role = Role::cross_member;
  BasicJoint<S> joint{};
  S gap = S(0);
  MemberBar<S> bar{};
  std::size_t across_at = static_cast<std::size_t>(-1);  ///< station, for a cross member that lies in one
};

template <class S>
struct PlacedPanel {
  std::size_t first = 0, last = 0;  ///< stations
  Vec3<S> normal{};
  std::vector<PlacedPiece<S>> pieces;
};

template <class S>
struct PlacedJoints {
  std::vector<std::vector<PlacedPanel<S>>> panels;  ///< of each face
  std::vector<FaceJoint<S>> face_joints;            ///< by station

  std::size_t node(const JointKey& key, const std::vector<std::size_t>& nodes_of_station) const {
    if (key.chord != static_cast<std::size_t>(-1)) return nodes_of_station[key.station] + key.chord;
    return face_joints[key.face_joint].node;
  }
};

/// Unit normal of a panel: cross product of its diagonals, out of the girder; of a ladder, to the left of first to
/// second chord seen along x.
template <class S>
Vec3<S> panel_normal(const BasicGirder<S>& g, std::size_t f, std::size_t first, std::size_t last) {
  const std::size_t a = g.faces[f].first_chord, b = g.faces[f].second_chord;
  const Vec3<S> rising = g.joint(last, b) - g.joint(first, a), falling = g.joint(last, a) - g.joint(first, b);
  Vec3<S> n = cross(rising, falling);  // for a = bottom, b = top: (x + z) × (x - z) = +y, to the left
  if (!(value_of(dot(n, n)) > 0.0))
    fail<BadDescription>("bay " + std::to_string(first + 1) + ", " + g.faces[f].name + " face", "the panel has no area",
                         "two chords apart are accepted");
  n = unit(n);
  Vec3<S> middle{}, centre{};
  const S share = S(S(1) / S(static_cast<double>(g.chords.size())));
  for (std::size_t c = 0; c < g.chords.size(); ++c) middle += share * g.joint(first, c);
  centre = S(S(1) / S(2)) * (g.joint(first, a) + g.joint(first, b));
  const double out = value_of(dot(n, centre - middle));
  const double size = value_of(length(g.joint(first, b) - g.joint(first, a)));
  return out < -1e-9 * size ? -n : n;
}

template <class S>
class JointPlacer {
 public:
  JointPlacer(const BasicGirder<S>& g, std::vector<BasicBar<S>>& bars) : g_(g), bars_(bars) {}

  PlacedJoints<S> place() {
    for (std::size_t f = 0; f < g_.faces.size(); ++f) place_face(f);
    sort_by_station();
    return std::move(out_);
  }

 private:
  void place_face(std::size_t f) {
    std::vector<PlacedPanel<S>> panels;
    const BasicFace<S>& face = g_.faces[f].panels;
    if (!face.empty()) {
      const std::vector<std::size_t> at = face.boundaries(g_.bays());
      panels.reserve(at.size());
      for (std::size_t p = 0; p + 1 < at.size(); ++p) panels.push_back(place_panel(f, p, at));
    }
    out_.panels.push_back(std::move(panels));
  }

  PlacedPanel<S> place_panel(std::size_t f, std::size_t p, const std::vector<std::size_t>& at) {
    PlacedPanel<S> panel;
    panel.first = at[p];
    panel.last = at[p + 1];
    panel.normal = panel_normal(g_, f, panel.first, panel.last);
    const std::string where = "bay " + std::to_string(panel.first + 1) + ", " + g_.faces[f].name + " face";
    const std::vector<BasicPiece<S>> pieces = g_.faces[f].panels.panel(p).pieces(panel_site(g_, g_.faces[f], at, p));
    panel.pieces.reserve(pieces.size());
    for (const BasicPiece<S>& piece : pieces) {
      PlacedPiece<S>& placed = panel.pieces.emplace_back();
      placed.from = key(f, panel, piece.from, where);
      placed.to = key(f, panel, piece.to, where);
      if (piece.from == piece.to) fail<BadDescription>(where, "a piece begins where it ends", "two different points are accepted");
      const bool square = piece.from.along == piece.to.along && (piece.from.along == 0.0 || piece.from.along == 1.0);
      if (square) placed.across_at = piece.from.along == 0.0 ? panel.first : panel.last;
      placed.from_along = piece.from.along;
      placed.to_along = piece.to.along;
      placed.role = piece.role;
      placed.joint = piece.joint;
      placed.gap = piece.gap;
      placed.bar = member_bar(piece.bar, bars_);
    }
    return panel;
  }

  JointKey key(std::size_t f, const PlacedPanel<S>& panel, const PanelPoint& p, const std::string& where) {
    const bool inside = p.along >= 0.0 && p.along <= 1.0 && p.across >= 0.0 && p.across <= 1.0;
    if (!inside)
      fail<BadDescription>(where, "a piece ends at (" + text::number(p.along) + ", " + text::number(p.across) + ") of its panel",
                           "points from 0 to 1 along and across are accepted");
    const bool on_station = p.along == 0.0 || p.along == 1.0, on_chord = p.across == 0.0 || p.across == 1.0;
    if (on_chord && !on_station)
      fail<BadDescription>(where, "a piece ends on a chord between two stations", "stations where panels have points are accepted");
    JointKey k;
    k.station = p.along == 1.0 ? panel.last : panel.first;
    if (on_chord) {
      k.chord = p.across == 0.0 ? g_.faces[f].first_chord : g_.faces[f].second_chord;
      return k;
    }
    FaceJoint<S> j;
    j.station = k.station;
    j.face = f;
    j.along = on_station ? 0.0 : p.along;
    j.across = p.across;
    for (std::size_t i = 0; i < out_.face_joints.size(); ++i) {
      const FaceJoint<S>& old = out_.face_joints[i];
      if (old.station == j.station && old.face == f && std::abs(old.along - j.along) < 1e-9 && std::abs(old.across - j.across) < 1e-9) {
        k.face_joint = i;
        return k;
      }
    }
    j.at = point_of(g_, g_.faces[f], panel.first, panel.last, p);
    out_.face_joints.push_back(j);
    k.face_joint = out_.face_joints.size() - 1;
    return k;
  }

  void sort_by_station() {
    std::vector<std::size_t> order(out_.face_joints.size()), place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) {
      return out_.face_joints[a].station < out_.face_joints[b].station;
    });
    std::vector<FaceJoint<S>> sorted;
    for (std::size_t i = 0; i < order.size(); ++i) {
      sorted.push_back(out_.face_joints[order[i]]);
      place[order[i]] = i;
    }
    out_.face_joints = std::move(sorted);
    for (std::vector<PlacedPanel<S>>& face : out_.panels)
      for (PlacedPanel<S>& panel : face)
        for (PlacedPiece<S>& piece : panel.pieces)
          for (JointKey* k : {&piece.from, &piece.to})
            if (k->face_joint != static_cast<std::size_t>(-1)) k->face_joint = place[k->face_joint];
  }

  const BasicGirder<S>& g_;
  std::vector<BasicBar<S>>& bars_;
  PlacedJoints<S> out_;
};

/// `bars` takes each different bar of the panels that it does not hold yet.
template <class S>
PlacedJoints<S> place_joints(const BasicGirder<S>& g, std::vector<BasicBar<S>>& bars) {
  return JointPlacer<S>(g, bars).place();
}

}  // namespace baywork::detail
