// SPDX-License-Identifier: MIT
// Random ladder, triangular, box and ring girders in their own words: faces of every layout, ways of being held.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include <baywork/frame.hpp>
#include <baywork/girder.hpp>

#include "random_girders.hpp"
#include "tubes.hpp"

namespace girders {

/// Four bars from the corners to a joint in the middle of the panel.
struct JoinedCross {
  Bar bar{};
  std::vector<Piece> pieces(const PanelSite&) const {
    const PanelPoint middle{0.5, 0.5};
    const auto to_middle = [&](const PanelPoint& corner) { return Piece{corner, middle, Role::user, bar, {}, 0.0}; };
    return {to_middle({0, 0}), to_middle({0, 1}), to_middle({1, 0}), to_middle({1, 1})};
  }
};

class DescribedGirder {
 public:
  DescribedGirder(Random& r, std::size_t most_bays) : r_(r), lengths_(bay_lengths(r, number_of_bays(r, most_bays))) {
    for (const double l : lengths_) places_.push_back(places_.back() + l);
    depth_ = (std::min)(r_.over_orders(0.3, 2), places_.back());
    pinned_ = r_.chance(0.3);
  }

  /// As described, with no further supports or loads; nothing else may keep a chord between pinned posts from spinning.
  Girder alone() {
    Girder g = girder();
    if (pinned_)
      for (std::size_t c = 0; c < g.chords.size(); ++c)
        g.supports = g.supports.with(hold(c, 0.0).fix({Motion::rx}));
    return g;
  }

  RandomGirder make() {
    const Girder g = girder();
    GirderModel model = model_of(g);
    RandomGirder out{"described " + held_, std::move(model.frame), {}, g.chords.size(), g.bays()};
    if (pinned_)  // nothing else may keep a chord from spinning in its joints
      for (std::size_t c = 0; c < g.chords.size(); ++c) out.frame.fix(model.chord_node(0, c), {Motion::rx});
    if (r_.chance(0.3)) further_supports(r_, out.frame);
    if (r_.chance(0.2)) {
      out.frame = shuffled(r_, out.frame);
      out.character += ", shuffled";
    }
    add_loads(r_, out);
    return out;
  }

 private:
  Bar bar(double of) {
    const double diameter = of * 0.08 * depth_ * r_.over_orders(0.6, 1.6);
    return tube(diameter, (std::min)(diameter * r_.in(0.05, 0.2), 0.015));
  }
  Joint joint() {
    if (pinned_) return pinned_joint();
    return r_.chance(0.5) ? rigid_joint() : semi_rigid_joint(r_.over_orders(1e3, 1e7), r_.over_orders(1e3, 1e7));
  }

  AnyPanel panel() {
    const Bar brace = bar(0.5), post = bar(0.8);
    const double gap = r_.chance(0.3) ? 0.03 * lengths_[0] : 0.0;
    switch (r_.below(pinned_ ? 8 : 10)) {
      case 0: return braced(single_direction, brace, post, joint(), gap);
      case 1: return braced(single_direction_reversed, brace, post, joint(), gap);
      case 2: return braced(mirrored_towards, brace, post, joint(), gap);
      case 3: return braced(mirrored_away, brace, post, joint(), gap);
      case 4: return braced(alternating, brace, post, joint(), gap);
      case 5: return braced(crossed, brace, post, joint(), gap);
      case 6:
        return braced(k_braced, brace, post, pinned_ ? rigid_joint() : joint(), gap);  // its middle joint must not fold
      case 7: return pinned_ ? AnyPanel(braced(alternating, brace)) : AnyPanel(JoinedCross{brace});
      default: return open(post, joint());
    }
  }
  /// One panel for all bays, or each its own; over one bay or two, from the start or half a panel on.
  Face face() {
    const std::size_t bays = lengths_.size(), span = bays > 2 && r_.chance(0.2) ? 2 : 1,
                      offset = span == 2 ? r_.below(2) : 0;
    const std::size_t panels = Face().spanning(span, offset).boundaries(bays).size() - 1;
    std::vector<AnyPanel> all(r_.chance(0.5) ? 1 : panels);
    for (AnyPanel& p : all) p = panel();
    return Face(std::move(all)).spanning(span, offset);
  }

  Supports supports() {
    const double stiff = r_.chance(0.5) ? springiness(r_) : rigid_stiffness;
    std::vector<double> some{0.0};
    for (std::size_t i = 1; i + 1 < places_.size(); ++i)
      if (r_.chance(0.2)) some.push_back(places_[i]);
    some.push_back(places_.back());
    switch (r_.below(4)) {
      case 0: held_ = "on its ends"; return simply_supported();
      case 1: held_ = "cantilevered"; return cantilever();
      case 2: held_ = "hung"; return hung_at<double>(some, stiff);
      default: held_ = "continuous"; return continuous_over<double>(some, stiff);
    }
  }

  /// What all descriptions share. Cross-sections of four chords and more keep their shape by diaphragms wherever not
  /// every cross member is stiff in its joints.
  template <class Description>
  Girder finished(Description d) {
    d.bay_lengths = lengths_;
    d.supports = supports();
    d.diaphragms = end_diaphragms(bar(0.5));
    if (r_.chance(0.3)) d.diaphragms.every = 1 + r_.below(3);
    d.diaphragms.crossed = r_.chance(0.3);
    if (r_.chance(0.3)) d.axis.camber = r_.in(-0.1, 0.1) * places_.back();
    if (r_.chance(0.2))
      d.axis.plan_radius = (r_.chance(0.5) ? 1 : -1) * (depth_ + places_.back() * r_.over_orders(0.5, 5));
    return d.girder();
  }
  Girder girder() {
    const bool tapers = r_.chance(0.3);
    const double width = depth_ * r_.in(0.6, 1.5);
    switch (r_.below(4)) {
      case 0: {
        LadderGirder l{.depth = depth_, .flat = r_.chance(0.3), .chord = bar(1), .web = face()};
        if (tapers) l.end_depth = depth_ * r_.in(0.5, 2);
        return finished(std::move(l));
      }
      case 1: {
        TriangularGirder t{
            .width = width, .depth = depth_, .apex_down = r_.chance(0.5), .chord = bar(1), .apex_chord = bar(1)};
        t.faces = {.base = face(), .left = face(), .right = face()};
        if (tapers) t.end_width = width * r_.in(0.5, 2);
        return finished(std::move(t));
      }
      case 2: {
        BoxGirder b{.width = width, .depth = depth_, .chord = bar(1)};
        b.chords.top_left = bar(1);
        b.faces = {.top = face(), .bottom = face(), .left = face(), .right = face()};
        if (tapers) b.end_depth = depth_ * r_.in(0.5, 2);
        return finished(std::move(b));
      }
      default: {
        RingGirder g;
        const std::size_t n = 3 + r_.below(4);
        for (std::size_t c = 0; c < n; ++c) {
          const double turn = 6.283185307179586 * (static_cast<double>(c) + 0.25) / static_cast<double>(n);
          g.ring.push_back(
              {"chord " + std::to_string(c + 1), 0.5 * width * std::cos(turn), 0.5 * depth_ * std::sin(turn), bar(1)});
          g.faces.push_back(face());
        }
        return finished(std::move(g));
      }
    }
  }

  Random& r_;
  std::vector<double> lengths_, places_{0.0};
  double depth_ = 1;
  bool pinned_ = false;  ///< all posts: then no face is open
  std::string held_;
};

/// The girder of a seed, at most `most_bays` (3 or more) long.
inline RandomGirder random_girder(std::uint64_t seed, std::size_t most_bays = 60) {
  Random r(seed);
  return r.chance(0.5) ? TypedGirder(r, most_bays).make() : DescribedGirder(r, most_bays).make();
}

}  // namespace girders
