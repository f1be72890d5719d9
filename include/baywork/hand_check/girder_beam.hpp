// SPDX-License-Identifier: MIT
// A straight prismatic girder as the shear-flexible beam of a hand calculation.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/closed_form/chord_group.hpp>
#include <baywork/closed_form/girder_shear.hpp>
#include <baywork/closed_form/torsion.hpp>
#include <baywork/hand_check/face_stiffness.hpp>

namespace baywork {

/// Stiffnesses of the whole section, in SI units. A reason that is not empty says why a number is not known.
struct GirderBeam {
  std::string not_straight;  ///< the girder is no straight prismatic beam: nothing below holds
  double y0 = 0, z0 = 0;     ///< centroid of the chords' stiffnesses
  double E = 0;              ///< of the first chord; areas of others count with E/E1
  std::vector<closed_form::ChordArea<>> chords;
  closed_form::ChordGroup<> group{};
  std::vector<HandFace> faces;
  closed_form::ClosedForm<> EI[2], S[2];  ///< vertical, horizontal
  std::string no_stiffness[2];
  std::vector<std::size_t> opposite;  ///< of each face: the parallel one on the other side; itself where there is none
  bool keeps_shape = true;            ///< three chords or fewer, or diaphragms at the ends
};

namespace detail {

inline std::string why_not_straight(const Girder& g) {
  const double slack = 1e-9 * g.span();
  for (std::size_t i = 0; i < g.stations.size(); ++i)
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      const Vec3<>&p = g.joint(i, c), &q = g.joint(0, c);
      if (std::abs(p.x - g.stations[i]) > slack || std::abs(p.y - q.y) > slack || std::abs(p.z - q.z) > slack)
        return "the girder is curved, cambered or tapered";
    }
  return "";
}

class GirderBeamMaker {
 public:
  explicit GirderBeamMaker(const Girder& g) : g_(g) {}

  GirderBeam make() {
    b_.not_straight = why_not_straight(g_);
    b_.E = g_.chords[0].bar.material.E;
    for (std::size_t c = 0; c < g_.chords.size(); ++c) {
      const Bar& bar = g_.chords[c].bar;
      const double n = bar.material.E / b_.E;
      b_.chords.push_back(
          {g_.joint(0, c).y, g_.joint(0, c).z, n * bar.section.area, n * bar.section.Iy, n * bar.section.Iz});
    }
    b_.group = closed_form::chord_group(b_.chords);
    b_.y0 = b_.group.y;
    b_.z0 = b_.group.z;
    b_.keeps_shape =
        g_.chords.size() <= 3 || (g_.diaphragms.has(0, g_.bays()) && g_.diaphragms.has(g_.bays(), g_.bays()));
    b_.faces = hand_faces(g_, b_.y0, b_.z0);
    b_.opposite.resize(b_.faces.size());
    for (std::size_t i = 0; i < b_.faces.size(); ++i) b_.opposite[i] = opposite_of(i);
    for (const bool vertical : {true, false}) add_bending(vertical), add_shear(vertical);
    if (gives_way(fit_of(g_.connector)) && !g_.splices.empty())
      for (std::string& why : b_.no_stiffness) why = "connectors at splices give way";
    return std::move(b_);
  }

 private:
  std::size_t opposite_of(std::size_t i) const {
    const HandFace& f = b_.faces[i];
    for (std::size_t j = 0; j < b_.faces.size(); ++j) {
      const HandFace& o = b_.faces[j];
      const bool parallel = std::abs(f.ty() * o.tz() - f.tz() * o.ty()) < 1e-9;
      if (j != i && parallel && std::abs(f.h - o.h) < 1e-9 * f.h) return j;
    }
    return i;
  }

  void add_bending(bool vertical) {
    const double second_moment = vertical ? b_.group.I_vertical : b_.group.I_horizontal;
    double own = 0;
    for (const auto& c : b_.chords) own += vertical ? c.own_vertical : c.own_horizontal;
    b_.EI[vertical ? 0 : 1] = {b_.E * second_moment,
                               true,
                               "{E}*({sum(A*d^2)} + {sum(Iown)})",
                               "plane sections",
                               {{"E", b_.E}, {"sum(A*d^2)", second_moment - own}, {"sum(Iown)", own}}};
    if (std::abs(b_.group.I_mixed) > 1e-6 * (b_.group.I_vertical + b_.group.I_horizontal))
      b_.no_stiffness[vertical ? 0 : 1] = "the section bends vertically and horizontally at once";
  }

  /// Chords alone: no face resists in this plane, as in a ladder across its web.
  void chords_alone(bool vertical) {
    const std::size_t k = vertical ? 0 : 1;
    double GA = 0;
    for (const Chord& c : g_.chords) {
      if (c.bar.section.designation != g_.chords[0].bar.section.designation || c.bar.material.E != b_.E)
        b_.no_stiffness[k] = "its chords bend alone and differ";
      GA += in_plane_of(c.bar, vertical ? 1 : 0, vertical ? 0 : 1).GA;
    }
    const double d2 = vertical ? b_.group.I_vertical : b_.group.I_horizontal;
    double own = 0;
    for (const auto& c : b_.chords) own += vertical ? c.own_vertical : c.own_horizontal;
    if (d2 - own > 1e-9 * own) b_.no_stiffness[k] = "no face resists shear in this plane";
    b_.S[k] = {GA, true, "{sum(G*Av)}", "chords bend alone", {{"sum(G*Av)", GA}}};
  }

  void add_shear(bool vertical) {
    const std::size_t k = vertical ? 0 : 1;
    std::vector<closed_form::SectionFace<>> list;
    for (const HandFace& f : b_.faces) {
      const double share = vertical ? f.tz() * f.tz() : f.ty() * f.ty();
      if (share < 1e-12) continue;
      if (!f.no_closed_form.empty()) {
        b_.no_stiffness[k] = "the " + f.name + " face has no closed form: " + f.no_closed_form;
        return;
      }
      if (f.layout == Layout::open && share < 1 - 1e-9) b_.no_stiffness[k] = "inclined open faces bend shared chords";
      list.push_back({f.y1, f.z1, f.y2, f.z2, f.S()});
    }
    if (list.empty()) return chords_alone(vertical);
    const closed_form::GirderShear<> sum = closed_form::girder_shear(list);
    if (std::abs(sum.yz) > 1e-6 * (sum.yy + sum.zz))
      b_.no_stiffness[k] = "the section shears vertically and horizontally at once";
    if (list.size() == 2)
      if (const HandFace* f = first_across(vertical); f != nullptr && unequal(*f)) {
        b_.S[k] = closed_form::unequal_opposite_faces_stiffness(list[0].stiffness, list[1].stiffness);
        if (!is_long()) b_.no_stiffness[k] = "opposite faces differ, and the girder is too short for each to take half";
        return;
      }
    std::vector<closed_form::NamedNumber> n;
    static constexpr const char* symbols[] = {"S1", "S2", "S3", "S4"};
    static constexpr const char* cosines[] = {"c1", "c2", "c3", "c4"};
    static constexpr const char* formulas[] = {"{S1}*{c1}^2", "{S1}*{c1}^2 + {S2}*{c2}^2",
                                               "{S1}*{c1}^2 + {S2}*{c2}^2 + {S3}*{c3}^2",
                                               "{S1}*{c1}^2 + {S2}*{c2}^2 + {S3}*{c3}^2 + {S4}*{c4}^2"};
    const double value = vertical ? sum.zz : sum.yy;
    if (list.size() > 4) {
      b_.S[k] = {value, true, "{sum(S*c^2)}", "faces of a section that does not turn", {{"sum(S*c^2)", value}}};
      return;
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
      const double d = vertical ? list[i].z2 - list[i].z1 : list[i].y2 - list[i].y1;
      n.push_back({symbols[i], list[i].stiffness});
      n.push_back({cosines[i], std::abs(d) / std::hypot(list[i].y2 - list[i].y1, list[i].z2 - list[i].z1)});
    }
    b_.S[k] = {value, true, formulas[list.size() - 1], "faces of a section that does not turn", n};
  }

  const HandFace* first_across(bool vertical) const {
    for (std::size_t i = 0; i < b_.faces.size(); ++i)
      if (std::abs(vertical ? b_.faces[i].tz() : b_.faces[i].ty()) > 1 - 1e-9 && b_.opposite[i] != i)
        return &b_.faces[i];
    return nullptr;
  }
  bool unequal(const HandFace& f) const {
    for (std::size_t i = 0; i < b_.faces.size(); ++i)
      if (&b_.faces[i] == &f) {
        const HandFace& o = b_.faces[b_.opposite[i]];
        return std::abs(o.S() - f.S()) > 1e-6 * f.S();
      }
    return false;
  }
  /// Unequal opposite faces of a box take half of V each beyond the warping length sqrt(E Iw/GJ), Iw = A h^2 b^2/4.
  bool is_long() const {
    if (b_.faces.size() != 4 || g_.chords.size() != 4) return false;
    const double b = b_.faces[0].h, h = b_.faces[1].h;
    double sum = 0;
    for (const HandFace& f : b_.faces) {
      if (!f.no_closed_form.empty()) return false;
      sum += f.h * f.h / f.S();
    }
    const double EIw = b_.E * b_.chords[0].A * h * h * b * b / 4, GJ = 4 * b * b * h * h / sum;
    return g_.span() > 20 * std::sqrt(EIw / GJ);
  }

  const Girder& g_;
  GirderBeam b_;
};

}  // namespace detail

inline GirderBeam girder_beam(const Girder& g) { return detail::GirderBeamMaker(g).make(); }

}  // namespace baywork
