// SPDX-License-Identifier: MIT
// A motion that nothing resists, told in the girder's words (stations, faces, chords) or by a typed-in frame's labels.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/motion.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/frame/frame.hpp>
#include <baywork/solve/detail/rigid_fit.hpp>

namespace baywork::detail {

/// "x", "x and z", "x, y and z"
inline std::string listed(const std::vector<std::string>& parts) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i)
    out += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
  return out;
}

/// "station 4", "stations 2 to 9", "stations 2, 4 and 6", from rising numbers counted from 0.
inline std::string stations_text(const std::vector<int>& stations) {
  const auto number = [](int s) { return std::to_string(s + 1); };
  if (stations.size() == 1) return "station " + number(stations[0]);
  if (stations.back() - stations.front() + 1 == static_cast<int>(stations.size()))
    return "stations " + number(stations.front()) + " to " + number(stations.back());
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < stations.size() && i < 4; ++i) parts.push_back(number(stations[i]));
  if (stations.size() > 4) parts.back() = std::to_string(stations.size() - 3) + " more";
  return "stations " + listed(parts);
}

/// Axes along which a three-part of a motion points.
inline std::vector<std::string> axes_of(const double* v) {
  double most = 0;
  for (std::size_t k = 0; k < 3; ++k) most = (std::max)(most, std::abs(v[k]));
  std::vector<std::string> out;
  for (std::size_t k = 0; k < 3; ++k)
    if (most > 0 && std::abs(v[k]) >= 0.4 * most) out.push_back(motion_names[k]);
  return out;
}

/// Tells a motion (six numbers per node, m and rad) that is not rigid as a whole.
template <class S>
class MotionWords {
 public:
  /// `arm`: a rotation of 1 counts as a displacement of this [m].
  MotionWords(const BasicFrame<S>& frame, const std::vector<double>& u, double arm)
      : frame_(frame), u_(u), arm_(arm), turns_(nodes_that_turn(frame)) {
    bool located = !frame.names.chords.empty();
    for (const BasicNode<S>& n : frame.nodes) located = located && n.address.station >= 0;
    if (!located) return;
    for (std::uint32_t n = 0; n < frame.nodes.size(); ++n) {
      const auto s = static_cast<std::size_t>(frame.nodes[n].address.station);
      if (s >= at_.size()) at_.resize(s + 1);
      at_[s].push_back(n);
    }
    for (const std::vector<std::uint32_t>& nodes : at_) located = located && !nodes.empty();
    if (!located) at_.clear();
  }

  std::string say() const {
    std::string out;
    if (at_.size() > 1) out = pieces();
    if (out.empty() && at_.size() > 1) out = distortion();
    return (out.empty() ? joints() : out);
  }

 private:
  double size_of(std::size_t node, std::size_t kind) const {
    return std::abs(u_[6 * node + kind]) * (kind < 3 ? 1.0 : arm_);
  }

  RigidBody body(std::size_t first, std::size_t last) const {
    std::vector<std::uint32_t> nodes;
    for (std::size_t s = first; s <= last; ++s) nodes.insert(nodes.end(), at_[s].begin(), at_[s].end());
    return {frame_, std::move(nodes)};
  }
  /// Unit vector along the girder at a station.
  std::array<double, 3> along(std::size_t station) const {
    const std::size_t first = station > 0 ? station - 1 : 0, last = (std::min)(station + 1, at_.size() - 1);
    const RigidBody a = body(first, first), b = body(last, last);
    std::array<double, 3> d{};
    double size = 0;
    for (std::size_t k = 0; k < 3; ++k) d[k] = b.centre[k] - a.centre[k], size += d[k] * d[k];
    for (double& v : d) v /= size > 0 ? std::sqrt(size) : 1.0;
    return d;
  }

  /// One bay gives way between two rigid pieces, or a piece moves between bays that do.
  std::string pieces() const {
    const std::size_t bays = at_.size() - 1;
    std::vector<double> off(bays);
    double most = 0;
    for (std::size_t b = 0; b < bays; ++b) {
      off[b] = fit_rigid(frame_, body(b, b + 1), turns_, u_).off;
      most = (std::max)(most, off[b]);
    }
    std::vector<std::size_t> soft;
    for (std::size_t b = 0; b < bays; ++b)
      if (off[b] > 0.01 * most) soft.push_back(b);
    if (soft.size() == 1 && bays > 1) return one_bay(soft[0]);
    if (soft.empty() || soft.size() > 3 || bays < 4) return "";
    std::size_t best = 0;  // the piece before soft[best], or after the last one
    double best_size = 0;
    const auto range = [&](std::size_t i) {
      return std::pair{i == 0 ? std::size_t{0} : soft[i - 1] + 1, i == soft.size() ? bays : soft[i]};
    };
    for (std::size_t i = 0; i <= soft.size(); ++i) {
      const auto [first, last] = range(i);
      if (i > 0 && i < soft.size() && first == last) return "";  // a single station between two soft bays
      for (std::size_t s = first; s <= last; ++s)
        for (const std::uint32_t n : at_[s])
          for (std::size_t k = 0; k < 3; ++k)
            if (size_of(n, k) > 1.001 * best_size) best = i, best_size = size_of(n, k);
    }
    const auto [first, last] = range(best);
    std::array<double, 3> sum{};
    for (std::size_t s = first; s <= last; ++s)
      for (const std::uint32_t n : at_[s])
        for (std::size_t k = 0; k < 3; ++k) sum[k] += size_of(n, k);
    std::vector<std::string> names;
    for (const std::size_t b : soft) names.push_back(std::to_string(b + 1));
    return "bays " + listed(names) + " give way: " + range_text(first, last) + (first == last ? " moves" : " move") +
           " along " + listed(axes_of(sum.data())) + " as one piece";
  }
  std::string one_bay(std::size_t b) const {
    const RigidBody around = body(b, b + 1);
    const auto motion = [&](std::size_t first, std::size_t last) {
      RigidBody piece = body(first, last);
      piece.centre = around.centre;
      piece.reach = around.reach;
      return fit_rigid(frame_, piece, turns_, u_).motion;
    };
    SixRow d = motion(b + 1, (std::min)(b + 2, at_.size() - 1));
    const SixRow left = motion(b > 0 ? b - 1 : 0, b);
    double slide = 0, turn = 0;
    for (std::size_t k = 0; k < 6; ++k) {
      d[k] -= left[k];
      (k < 3 ? slide : turn) += d[k] * d[k];
    }
    const std::array<double, 3> axis = along(b);
    const bool turning = turn > 0.01 * slide;
    double lengthwise = 0;
    for (std::size_t k = 0; k < 3; ++k) lengthwise += d[turning ? 3 + k : k] * axis[k];
    const bool mainly = lengthwise * lengthwise > 0.5 * (turning ? turn : slide);
    const std::string how = mainly ? " gives way: " : turning ? " is a hinge: " : " shears: ";
    const bool one = b + 2 == at_.size();
    return "bay " + std::to_string(b + 1) + how + range_text(b + 1, at_.size() - 1) +
           (turning ? (one ? " turns about " : " turn about ") : (one ? " moves along " : " move along ")) +
           listed(axes_of(turning ? &d[3] : d.data())) + " against " + range_text(0, b);
  }
  static std::string range_text(std::size_t first, std::size_t last) {
    std::vector<int> s;
    for (std::size_t i = first; i <= last; ++i) s.push_back(static_cast<int>(i));
    return stations_text(s);
  }

  /// Stations whose chords move against each other across the girder.
  std::string distortion() const {
    const std::vector<char> none(frame_.nodes.size(), 0);
    std::vector<double> off(at_.size(), 0.0);
    double most = 0, largest = 0, turned = 0;
    for (std::size_t s = 0; s < at_.size(); ++s) {
      std::vector<std::uint32_t> chords;
      for (const std::uint32_t n : at_[s])
        if (frame_.nodes[n].address.chord >= 0) chords.push_back(n);
      for (const std::uint32_t n : at_[s])
        for (std::size_t k = 0; k < 3; ++k) {
          largest = (std::max)(largest, size_of(n, k));
          turned = (std::max)(turned, size_of(n, 3 + k));
        }
      if (chords.size() < 4) continue;
      const RigidBody section(frame_, chords);
      const SixRow fit = fit_rigid(frame_, section, none, u_).motion;
      const std::array<double, 3> axis = along(s);
      std::vector<double> moved;
      for (const std::uint32_t n : chords) {
        double lengthwise = 0, across = 0, own = 0, own_lengthwise = 0;
        for (std::size_t k = 0; k < 3; ++k) {
          const double rest = u_[6 * n + k] - dot(section.row(frame_, n, k), fit);
          lengthwise += rest * axis[k];
          across += rest * rest;
          own_lengthwise += u_[6 * n + k] * axis[k];
          own += u_[6 * n + k] * u_[6 * n + k];
        }
        off[s] = (std::max)(off[s], root((std::max)(0.0, across - lengthwise * lengthwise)));
        moved.push_back(root((std::max)(0.0, own - own_lengthwise * own_lengthwise)));
      }
      std::sort(moved.begin(), moved.end());
      if (moved[moved.size() - 2] < 0.1 * moved.back()) off[s] = 0;  // one chord alone
      most = (std::max)(most, off[s]);
    }
    if (!(most > 0.1 * largest) || !(most > 1e-6 * turned)) return "";
    std::vector<int> stations;
    for (std::size_t s = 0; s < off.size(); ++s)
      if (off[s] > 0.1 * most) stations.push_back(static_cast<int>(s));
    return "the cross-section of " + stations_text(stations) + " distorts: its corners' angles change";
  }

  /// Which joints move, and along or about which axes.
  std::string joints() const {
    std::array<double, 6> share{};
    for (std::size_t i = 0; i < u_.size(); ++i) share[i % 6] += size_of(i / 6, i % 6);
    const bool turning = !(share[0] + share[1] + share[2] > 1e-6 * (share[3] + share[4] + share[5]));
    const std::size_t base = turning ? 3 : 0;
    const std::vector<std::string> axes = axes_of(&share[base]);
    double most = 0;
    std::vector<double> size(frame_.nodes.size(), 0.0);
    for (std::size_t n = 0; n < size.size(); ++n) {
      for (std::size_t k = base; k < base + 3; ++k) size[n] = (std::max)(size[n], size_of(n, k));
      most = (std::max)(most, size[n]);
    }
    std::vector<std::uint32_t> moving;
    for (std::uint32_t n = 0; n < size.size(); ++n)
      if (size[n] >= 0.3 * most) moving.push_back(n);
    const std::string way = (turning ? "turn" : "move"), where = (turning ? " about " : " along ") + listed(axes);
    const std::string end = " without any bar resisting";
    if (!at_.empty())
      if (std::string out = in_girder(moving, way, where, turning); !out.empty()) return out + end;
    return "joints " + way + where + end + names(moving);
  }
  /// "" where joints of faces move: those are named one by one.
  std::string in_girder(const std::vector<std::uint32_t>& moving, const std::string& way, const std::string& where,
                        bool turning) const {
    std::vector<int> stations, chords;
    for (const std::uint32_t n : moving) {
      const Address& a = frame_.nodes[n].address;
      if (a.chord < 0) return "";
      stations.push_back(a.station);
      chords.push_back(a.chord);
    }
    for (std::vector<int>* list : {&stations, &chords}) {
      std::sort(list->begin(), list->end());
      list->erase(std::unique(list->begin(), list->end()), list->end());
    }
    const std::string range = stations_text(stations);
    const std::string verb = way + (stations.size() == 1 ? "s" : "");
    if (chords.size() == frame_.names.chords.size() && chords.size() > 1) return range + " " + verb + where;
    if (const std::string face = face_of(chords); !face.empty()) return range + " of the " + face + " " + verb + where;
    std::vector<std::string> list;
    for (const int c : chords) list.push_back(frame_.names.chords[static_cast<std::size_t>(c)]);
    const bool one = chords.size() == 1;
    return "the " + listed(list) + (one ? " chord " + way + "s" : " chords " + way) +
           (turning && one && about_itself(moving) ? " about its own axis" : where) + " at " + range;
  }
  bool about_itself(const std::vector<std::uint32_t>& moving) const {
    double own = 0, all = 0;
    for (const std::uint32_t n : moving) {
      const std::array<double, 3> axis = along(static_cast<std::size_t>(frame_.nodes[n].address.station));
      double part = 0;
      for (std::size_t k = 0; k < 3; ++k) {
        part += u_[6 * n + 3 + k] * axis[k];
        all += u_[6 * n + 3 + k] * u_[6 * n + 3 + k];
      }
      own += part * part;
    }
    return own > 0.9 * all;
  }
  /// The face that lies between just these chords: the chords that its bars end at.
  std::string face_of(const std::vector<int>& chords) const {
    if (chords.size() != 2) return "";
    for (const BasicMember<S>& m : frame_.members) {
      if (m.address.face < 0 || static_cast<std::size_t>(m.address.face) >= frame_.names.faces.size()) continue;
      const int a = frame_.nodes[m.from].address.chord, b = frame_.nodes[m.to].address.chord;
      if ((std::min)(a, b) == chords[0] && (std::max)(a, b) == chords[1])
        return frame_.names.faces[static_cast<std::size_t>(m.address.face)] + " face";
    }
    return "";
  }
  std::string names(const std::vector<std::uint32_t>& moving) const {
    std::string some;
    for (std::size_t i = 0; i < moving.size() && i < 4; ++i)
      some += (some.empty() ? "" : "; ") + frame_.name_of_node(moving[i]);
    if (moving.size() > 4) some += "; and " + std::to_string(moving.size() - 4) + " more";
    return " (" + some + ")";
  }

  const BasicFrame<S>& frame_;
  const std::vector<double>& u_;
  double arm_;
  std::vector<char> turns_;
  std::vector<std::vector<std::uint32_t>> at_;  ///< nodes of each station of a girder
};

/// "the whole of it moves along x and turns about z as one piece: the supports do not hold it"
template <class S>
std::string words_of(const FreePart& part, const BasicFrame<S>& frame) {
  RowSpace held, slides, turns;
  {  // what stops a displacement without turning
    RowSpace free;
    for (const SixRow& m : part.moves) free.add(m);
    held = {};
    for (SixRow row : free.complement()) {
      for (std::size_t k = 3; k < 6; ++k) row[k] = 0;
      held.add(row);
    }
    for (std::size_t k = 3; k < 6; ++k) {
      SixRow e{};
      e[k] = 1;
      held.add(e);
    }
  }
  for (const SixRow& t : held.complement()) slides.add(t);
  for (SixRow m : part.moves) {
    m[0] = m[1] = m[2] = 0;
    turns.add(m);
  }
  const auto axes = [](const RowSpace& space, std::size_t base) {
    std::vector<std::string> out;
    for (std::size_t k = 0; k < 3; ++k) {
      SixRow e{};
      e[base + k] = 1;
      const SixRow rest = space.outside(e);
      if (1.0 - dot(rest, rest) > 0.15) out.push_back(motion_names[k]);
    }
    return out;
  };
  const std::vector<std::string> along = axes(slides, 0), about = axes(turns, 3);
  std::string who = "the whole of it";
  if (part.body.nodes.size() < frame.nodes.size()) {
    std::vector<std::string> chords;
    bool joints = false;
    for (std::size_t c = 0; c < frame.names.chords.size(); ++c)
      for (const std::uint32_t n : part.body.nodes)
        if (frame.nodes[n].address.chord == static_cast<int>(c)) {
          chords.push_back(frame.names.chords[c]);
          break;
        }
    for (const std::uint32_t n : part.body.nodes) joints = joints || frame.nodes[n].address.chord < 0;
    if (!chords.empty() && !joints) {
      who = "the " + listed(chords) + (chords.size() == 1 ? " chord" : " chords together");
    } else {
      who = "the part of " + frame.name_of_node(part.body.nodes.front());
      if (part.body.nodes.size() > 1) who += " to " + frame.name_of_node(part.body.nodes.back());
    }
  }
  std::string out = who;
  if (!along.empty()) out += " moves along " + listed(along);
  if (!about.empty()) out += std::string(along.empty() ? "" : " and") + " turns about " + listed(about);
  return out + " as one piece: the supports do not hold it";
}

}  // namespace baywork::detail
