// SPDX-License-Identifier: MIT
// Random girders as frames that are chains of bays: typed in bar by bar here, described as girders in
// random_described_girders.hpp. Every one is sound: chords and posts are tied rigidly or by springs, chord 0
// throughout.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

#include <baywork/frame.hpp>

#include "varied_frames.hpp"

namespace girders {

using namespace baywork;
using varied::Random;
using Motions = std::initializer_list<Motion>;

struct RandomGirder {
  std::string character;
  Frame frame;
  FrameLoads loads;
  std::size_t chords = 0, bays = 0;
};

/// Mostly short: half of all up to 8 bays, one in ten up to `most`.
inline std::size_t number_of_bays(Random& r, std::size_t most) {
  const double p = r.in(0, 1);
  return 2 + r.below((std::min)(p < 0.5 ? std::size_t{7} : p < 0.9 ? std::size_t{17} : std::size_t{59}, most - 1));
}

/// Lengths of bays: all alike, or each its own.
inline std::vector<double> bay_lengths(Random& r, std::size_t bays) {
  const double typical = r.over_orders(0.3, 3), irregular = r.chance(0.5) ? r.in(0, 0.6) : 0.0;
  std::vector<double> out(bays);
  for (double& l : out) l = typical * (1 + irregular * r.in(-1, 1));
  return out;
}

inline double springiness(Random& r) { return r.over_orders(1e3, 1e12); }

/// Holds all motions of a node by springs, or some rigidly.
inline void sprung_clamp(Random& r, Frame& f, std::size_t node) {
  const double stiff = springiness(r);
  for (std::size_t k = 0; k < 6; ++k)
    if (r.chance(0.2))
      f.fix(node, {static_cast<Motion>(k)});
    else
      f.spring(node, static_cast<Motion>(k), stiff * r.over_orders(0.1, 10));
}

/// Further supports anywhere: rigid, sprung, of one motion or of several.
inline void further_supports(Random& r, Frame& f) {
  for (std::size_t n = 1 + r.below(5); n > 0; --n) {
    const std::size_t node = r.below(f.nodes.size());
    for (std::size_t k = 0; k < 6; ++k) {
      const Motion m = static_cast<Motion>(k);
      if (f.holds(node, m) || !r.chance(0.3)) continue;
      if (r.chance(0.5))
        f.fix(node, {m});
      else
        f.spring(node, m, springiness(r));
    }
  }
}

/// One kind of load or several on random parts; or a line load on every member.
inline void add_loads(Random& r, RandomGirder& g) {
  const Frame& f = g.frame;
  std::vector<char> beam_meets(f.nodes.size(), 0);
  for (const Member& m : f.members)
    if (m.kind == MemberKind::beam) beam_meets[m.from] = beam_meets[m.to] = 1;
  const bool single = r.chance(0.5);
  const std::size_t only = r.below(9), size = 1 + r.below(6);
  const auto wanted = [&](std::size_t kind) { return single ? kind == only : r.chance(0.4); };
  for (std::size_t repeat = 0; repeat < size; ++repeat) {
    const std::size_t m = r.below(f.members.size()), n = r.below(f.nodes.size());
    const double l = axes_of(f, f.members[m]).length, a = r.in(0, l), b = r.in(a, l);
    const Vec3<> p = r.vector(1e3), q = r.vector(1e3), warmth = r.vector(50);
    if (wanted(0)) g.loads.force(n, p);
    if (wanted(1) && beam_meets[n] != 0) g.loads.couple(n, q);
    if (wanted(2)) g.loads.line(m, a, b, p, q);
    if (wanted(3)) g.loads.force_on(m, a, p);
    if (wanted(4) && f.members[m].kind == MemberKind::beam) g.loads.couple_on(m, b, q);
    if (wanted(5)) g.loads.temperature(m, warmth.x, 2 * warmth.y, 2 * warmth.z);
    if (wanted(6))
      for (const std::size_t s = r.below(f.supports.size()); const std::size_t k : {0U, 1U, 2U, 3U, 4U, 5U})
        if (f.supports[s].motion[k].kind != Restraint::Kind::free)
          g.loads.settle(f.supports[s].node, static_cast<Motion>(k), r.in(-0.01, 0.01));
  }
  const Vec3<> q = r.vector(500);
  if (wanted(7))
    for (std::size_t m = 0; m < f.members.size(); ++m) {
      const MemberAxes<> axes = axes_of(f, f.members[m]);
      g.loads.line(m, axes.length, axes.to_local(q));
    }
  if (wanted(8))
    for (std::size_t n = 0; n < f.nodes.size(); ++n) g.loads.force(n, q);
  if (g.loads.on_nodes.empty() && g.loads.on_members.empty() && g.loads.motions.empty())
    g.loads.force(f.nodes.size() - 1, q);
}

/// The same frame with its nodes and members in another order, before any loads.
inline Frame shuffled(Random& r, const Frame& f) {
  const auto order = [&r](std::size_t n) {
    std::vector<std::size_t> to(n);
    std::iota(to.begin(), to.end(), std::size_t{0});
    for (std::size_t i = n; i > 1; --i) std::swap(to[i - 1], to[r.below(i)]);
    return to;
  };
  const std::vector<std::size_t> node = order(f.nodes.size()), member = order(f.members.size());
  Frame out = f;
  for (std::size_t n = 0; n < node.size(); ++n) out.nodes[node[n]] = f.nodes[n];
  for (std::size_t m = 0; m < member.size(); ++m) {
    Member& moved = out.members[member[m]] = f.members[m];
    moved.from = node[moved.from];
    moved.to = node[moved.to];
  }
  for (Support& s : out.supports) s.node = node[s.node];
  return out;
}

/// Makes a girder bar by bar. Node of chord c at station i: stations_[i][c].
class TypedGirder {
 public:
  TypedGirder(Random& r, std::size_t most_bays) : r_(r), chords_(2 + r.below(5)), bays_(number_of_bays(r, most_bays)) {}

  RandomGirder make() {
    add_stations();
    for (std::size_t i = 0; i <= bays_; ++i) {
      for (std::size_t c = 0; i < bays_ && c < chords_; ++c) add_chord(i, c);
      for (std::size_t k = 0; k < faces(); ++k) add_post(i, k);
      for (std::size_t k = 0; i < bays_ && k < faces(); ++k) add_panel(i, k);
    }
    if (r_.chance(0.3)) add_bars_across_bays();
    hold();
    RandomGirder g{"typed in, " + held_, std::move(f_), {}, chords_, bays_};
    if (r_.chance(0.3)) {
      g.frame = shuffled(r_, g.frame);
      g.character += ", shuffled";
    }
    add_loads(r_, g);
    return g;
  }

 private:
  std::size_t faces() const { return chords_ == 2 ? 1 : chords_; }
  std::size_t next(std::size_t c) const { return (c + 1) % chords_; }
  std::size_t node(std::size_t i, std::size_t c) const { return stations_[i][c]; }

  /// A straight or bent axis that points anywhere, cross-sections that grow or shrink, joints a little off their
  /// places.
  void add_stations() {
    const std::vector<double> lengths = bay_lengths(r_, bays_);
    const double whole = std::accumulate(lengths.begin(), lengths.end(), 0.0);
    depth_ = (std::min)(r_.over_orders(0.3, 2), whole);
    const double taper = r_.chance(0.3) ? r_.in(0.4, 2.5) : 1.0, jitter = r_.chance(0.3) ? 0.03 * depth_ : 0.0;
    const double bend = r_.chance(0.3) ? r_.in(-0.3, 0.3) : 0.0, sway = r_.chance(0.3) ? r_.in(-0.3, 0.3) : 0.0;
    const std::array<Vec3<>, 3> axes =
        r_.chance(0.5) ? varied::any_axes(r_) : std::array<Vec3<>, 3>{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
    up_ = axes[1] + 0.37 * axes[2] + 0.11 * axes[0];
    double x = 0;
    for (std::size_t i = 0; i <= bays_; ++i) {
      const double t = x / whole, scale = 0.5 * depth_ * (1 + (taper - 1) * t);
      const Vec3<> centre = x * axes[0] + (whole * bend * t * t) * axes[1] + (whole * sway * t * (1 - t)) * axes[2];
      stations_.emplace_back();
      for (std::size_t c = 0; c < chords_; ++c) {
        const double turn = 6.283185307179586 * static_cast<double>(c) / static_cast<double>(chords_) + 0.3;
        stations_.back().push_back(f_.add_node(centre + (scale * std::cos(turn)) * axes[1] +
                                               (scale * std::sin(turn)) * axes[2] + r_.vector(jitter)));
      }
      if (i < bays_) x += lengths[i];
    }
    braced_throughout_ = r_.below(8);  // a face without posts, where the girder has it
    spread_ = r_.chance(0.5) ? r_.in(1, 3) : 1.0;
  }

  /// `of` its usual size; the member is returned for changes until the next one comes.
  Member& add_bar(std::size_t from, std::size_t to, double of) {
    Member m;
    m.from = from;
    m.to = to;
    m.section = varied::section(r_, of * 0.07 * depth_ * r_.over_orders(1 / spread_, spread_));
    m.up = up_;
    m.roll = r_.chance(0.1) ? r_.in(-3, 3) : 0.0;
    const Vec3<> along = f_.nodes[to].at - f_.nodes[from].at;
    if (length(cross(m.up, along)) < 0.1 * length(m.up) * length(along))
      m.up = cross(along, Vec3<>{along.z, along.x, 0.5 * along.y + depth_});
    const double bend = m.section.E * m.section.Iz / length(along), rod = m.section.E * m.section.A / length(along);
    for (MemberEnd* e : {&m.start, &m.end}) {
      if (r_.chance(0.08)) e->about_y = bend * r_.over_orders(0.1, 100);
      if (r_.chance(0.08)) e->about_z = bend * r_.over_orders(0.1, 100);
      if (r_.chance(0.04)) e->torsion = bend * r_.over_orders(0.1, 100);
      if (r_.chance(0.04)) e->axial = rod * r_.over_orders(0.1, 100);
      if (r_.chance(0.04)) e->shear_z = rod * r_.over_orders(0.01, 100);
      if (r_.chance(0.05)) e->offset = r_.vector(0.05 * (std::min)(depth_, length(along)));
    }
    f_.add_member(std::move(m));
    return f_.members.back();
  }

  /// A chord bar; or with a joint inside the bay, or spliced by a short soft piece; hinged now and then where posts
  /// stand, but never chord 0.
  void add_chord(std::size_t i, std::size_t c) {
    const std::size_t from = node(i, c), to = node(i + 1, c);
    const double p = r_.in(0, 1);
    if (p < 0.08) {
      const bool splice = p < 0.04;
      const double at = splice ? r_.in(0.02, 0.1) : r_.in(0.3, 0.7);
      const Vec3<> place = (1 - at) * f_.nodes[from].at + at * f_.nodes[to].at;
      const std::size_t between = f_.add_node(place);
      Member& first = add_bar(from, between, 1);
      if (splice) first.section.E *= r_.over_orders(0.01, 1);
      add_bar(between, to, 1);
    } else {
      Member& whole = add_bar(from, to, 1);
      if (c > 0 && i > 0 && braced_throughout_ >= faces() && p > 0.95) whole.start.about_y = whole.start.about_z = 0;
    }
  }

  void add_post(std::size_t i, std::size_t k) {
    if (k != braced_throughout_) add_bar(node(i, k), node(i, next(k)), 0.8);
  }

  /// Open; braced one way, the other or both; K to the middle of a further post; a joint where diagonals cross.
  void add_panel(std::size_t i, std::size_t k) {
    const std::array<std::size_t, 4> corner{node(i, k), node(i, next(k)), node(i + 1, k), node(i + 1, next(k))};
    const auto brace = [&](std::size_t a, std::size_t b) {
      Member& m = add_bar(a, b, 0.5);
      if (k != braced_throughout_ && r_.chance(0.6)) {
        m.kind = MemberKind::axial;
        m.start.offset = m.end.offset = {};
      }
    };
    const auto middle = [&](std::size_t a, std::size_t b) { return 0.5 * (f_.nodes[a].at + f_.nodes[b].at); };
    const std::size_t way = k == braced_throughout_ ? 1 + r_.below(3) : r_.below(6);
    if (way == 1 || way == 3) brace(corner[0], corner[3]);
    if (way == 2 || way == 3) brace(corner[1], corner[2]);
    if (way == 4) {
      const std::size_t joint = f_.add_node(middle(corner[2], corner[3]));
      add_bar(corner[2], joint, 0.8);
      add_bar(joint, corner[3], 0.8);
      brace(corner[0], joint);
      brace(corner[1], joint);
    }
    if (way == 5) {
      const std::size_t joint = f_.add_node(0.5 * (middle(corner[0], corner[3]) + middle(corner[1], corner[2])));
      for (const std::size_t c : corner) add_bar(c, joint, 0.5);
    }
  }

  void add_bars_across_bays() {
    for (std::size_t n = 1 + r_.below(4); n > 0 && bays_ > 2; --n) {
      const std::size_t i = r_.below(bays_ - 1), c = r_.below(chords_);
      Member& m = add_bar(node(i, c), node(i + 2, next(c)), 0.5);
      if (r_.chance(0.5)) {
        m.kind = MemberKind::axial;
        m.start.offset = m.end.offset = {};
      }
    }
  }

  void hold() {
    const Motions places{Motion::ux, Motion::uy, Motion::uz};
    const std::size_t middle = bays_ / 2;
    switch (r_.below(6)) {
      case 0:
        held_ = "on its ends";
        for (std::size_t c = 0; c < chords_; ++c) f_.fix(node(0, c), places);
        f_.fix(node(bays_, 0), places);
        break;
      case 1:
        held_ = "clamped at both ends";
        for (std::size_t c = 0; c < chords_; ++c) {
          f_.clamp(node(0, c));
          f_.clamp(node(bays_, c));
        }
        break;
      case 2:
        held_ = "cantilevered";
        for (std::size_t c = 0; c < chords_; ++c) f_.clamp(node(0, c));
        break;
      case 3:
        held_ = "clamped in mid-length";
        for (std::size_t c = 0; c < chords_; ++c) f_.clamp(node(middle, c));
        break;
      case 4:
        held_ = "on many supports";
        f_.clamp(node(0, 0));
        for (std::size_t i = 1; i <= bays_; i += 1 + r_.below(4))
          f_.fix(node(i, r_.below(chords_)), {Motion::uy, Motion::uz});
        break;
      default:
        held_ = "on springs";
        sprung_clamp(r_, f_, node(0, 0));
        sprung_clamp(r_, f_, node(bays_, 0));
        break;
    }
    if (r_.chance(0.5)) further_supports(r_, f_);
  }

  Random& r_;
  std::size_t chords_, bays_;
  Frame f_;
  std::vector<std::vector<std::size_t>> stations_;
  std::size_t braced_throughout_ = 0;
  double depth_ = 1, spread_ = 1;
  Vec3<> up_{};
  std::string held_;
};

}  // namespace girders
