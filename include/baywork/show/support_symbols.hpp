// SPDX-License-Identifier: MIT
// How a girder is held, as symbols and in words: on the ground, hung from lines, by springs, clamped.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <baywork/core/text.hpp>
#include <baywork/show/views.hpp>

namespace baywork::show {

/// Whether a support along z hangs the girder: it holds a chord above the middle of the cross-section.
inline bool is_hung(const GirderModel& model, const Support& s) {
  const Address& a = model.frame.nodes[s.node].address;
  if (s.motion[2].kind == Restraint::Kind::free || a.station < 0) return false;
  const auto i = static_cast<std::size_t>(a.station);
  double low = model.girder.joint(i, 0).z, high = low;
  for (std::size_t c = 1; c < model.girder.chords.size(); ++c) {
    low = smaller(low, model.girder.joint(i, c).z);
    high = larger(high, model.girder.joint(i, c).z);
  }
  for (std::size_t k = 3; k < 6; ++k)
    if (s.motion[k].kind != Restraint::Kind::free) return false;  // clamped
  return high - low > 1e-6 * model.girder.span() && model.frame.nodes[s.node].at.z > 0.5 * (low + high);
}

namespace detail {

/// From the joint outwards along d (unit): a line or a zigzag, then a ring (hung), or a triangle's base on the ground.
inline void support_symbol(Svg& svg, const Spot& at, const Spot& d, bool spring, bool hung, std::string_view cls) {
  const Spot n{-d.y, d.x};
  const std::string ink(cls);
  if (spring) {
    std::vector<Spot> zigzag{at, at + 3.0 * d};
    for (int i = 0; i < 4; ++i) zigzag.push_back(at + (4.5 + 2.0 * i) * d + (i % 2 == 0 ? 3.5 : -3.5) * n);
    zigzag.push_back(at + 12.0 * d);
    zigzag.push_back(at + 15.0 * d);
    svg.polyline(zigzag, ink);
  } else if (hung) {
    svg.line(at, at + 15.0 * d, ink);
  } else {
    svg.polygon({at, at + 10.0 * d + 6.0 * n, at + 10.0 * d - 6.0 * n}, ink);
  }
  if (hung) {
    svg.circle(at + 18.0 * d, 3, ink);
    return;
  }
  const Spot ground = at + (spring ? 15.0 : 10.0) * d;
  svg.line(ground + 8.0 * n, ground - 8.0 * n, ink + " bw-bold");
  for (int i = -1; i <= 1; ++i)
    svg.line(ground + (6.0 * i) * n, ground + (6.0 * i + 3.0) * n + 4.0 * d, ink + " bw-thin");
}

}  // namespace detail

/// Symbols of all supports as one view shows them; `slack` says of which the line goes slack, none where it is empty.
/// Symbols that lie on each other are drawn once, and a slack line is never hidden behind another.
inline void draw_supports(Picture& p, const FlatView& view, const std::vector<bool>& slack = {}) {
  const GirderModel& model = view.model();
  std::vector<std::array<double, 4>> drawn;
  const double middle_x = view.spot({0.5 * (model.girder.joints.front().x + model.girder.joints.back().x), 0, 0}).x;
  const std::size_t upright = view.seen() == Seen::from_right ? 2 : 1;
  const auto draw = [&](const Support& s, const Spot& at, const Spot& d, std::size_t motion, bool hung, bool gone) {
    if (s.motion[motion].kind == Restraint::Kind::free) return;
    for (const auto& o : drawn)
      if (std::abs(o[0] - at.x) + std::abs(o[1] - at.y) < 1.0 && o[2] == d.x && o[3] == d.y) return;
    drawn.push_back({at.x, at.y, d.x, d.y});
    detail::support_symbol(p.svg, at, d, s.motion[motion].kind == Restraint::Kind::spring, hung,
                           gone ? "bw-quiet bw-dash" : "bw-hold");
  };
  p.svg.open("bw-supports");
  for (const bool gone : {true, false})
    for (std::size_t i = 0; i < model.frame.supports.size(); ++i) {
      const Support& s = model.frame.supports[i];
      const Spot at = view.spot(model.frame.nodes[s.node].at);
      const bool hung = upright == 2 && is_hung(model, s);
      if (gone != (hung && i < slack.size() && slack[i])) continue;
      const bool above = hung || (upright == 1 && at.y < 0.5 * (view.top() + view.bottom()) - 1.0);
      draw(s, at, {0, above ? -1.0 : 1.0}, upright, hung, gone);
      draw(s, at, {at.x <= middle_x ? -1.0 : 1.0, 0}, 0, false, false);
      bool turns = false;
      for (std::size_t k = 3; k < 6; ++k) turns = turns || s.motion[k].kind != Restraint::Kind::free;
      if (turns) p.svg.rect(at - Spot{4, 4}, 8, 8, "bw-hold bw-bold");
    }
  p.svg.close();
}

/// Directions as all words and tables have them.
inline constexpr const char* axes_words = "x along the girder, y to the left, z up";

/// "x, y (spring 200 kN/m), z (hung)": what a support holds.
inline std::string held_words(const GirderModel& model, const Support& s) {
  using baywork::text::quantity;
  std::string out;
  for (std::size_t k = 0; k < 6; ++k) {
    const Restraint& r = s.motion[k];
    if (r.kind == Restraint::Kind::free) continue;
    out += (out.empty() ? "" : ", ") + std::string(motion_names[k]);
    if (k == 2 && is_hung(model, s)) out += " (hung)";
    if (r.kind == Restraint::Kind::spring)
      out += " (spring " + quantity(r.stiffness, 1e3, k < 3 ? "kN/m" : "kNm/rad") + ')';
    if (r.displacement != 0.0)
      out += " (moved " + (k < 3 ? quantity(r.displacement, 1e-3, "mm") : quantity(r.displacement, 1.0, "rad")) + ')';
  }
  return out;
}

/// "Held at station 1: bottom left chord x, y, z; bottom right chord z. At ..."
inline std::string support_words(const GirderModel& model) {
  if (model.frame.supports.empty()) return "It is held nowhere.";
  std::string out = "Held";
  int last = -2;
  for (const Support& s : model.frame.supports) {
    const Address& a = model.frame.nodes[s.node].address;
    out += a.station == last ? ";" : last == -2 ? " at" : ". At";
    if (a.station != last) out += " station " + std::to_string(a.station + 1) + ":";
    last = a.station;
    if (a.chord >= 0) out += " " + model.girder.chords[static_cast<std::size_t>(a.chord)].name + " chord";
    std::size_t fixed = 0;
    for (const Restraint& r : s.motion) fixed += r.kind == Restraint::Kind::fixed && r.displacement == 0.0 ? 1U : 0U;
    out += ' ' + (fixed == 6 ? std::string("clamped") : held_words(model, s));
  }
  return out + ".";
}

/// What the symbols mean, of those kinds that a girder has.
inline std::string support_legend(const GirderModel& model) {
  bool hung = false, ground = false, spring = false, clamp = false;
  for (const Support& s : model.frame.supports) {
    const bool hangs = is_hung(model, s);
    hung = hung || hangs;
    for (std::size_t k = 0; k < 6; ++k) {
      const Restraint::Kind kind = s.motion[k].kind;
      spring = spring || kind == Restraint::Kind::spring;
      clamp = clamp || (k >= 3 && kind != Restraint::Kind::free);
      ground = ground || (k < 3 && !(k == 2 && hangs) && kind == Restraint::Kind::fixed);
    }
  }
  std::string out;
  const auto say = [&out](bool there, const char* words) {
    if (there) out += (out.empty() ? "" : "; ") + std::string(words);
  };
  say(ground, "triangle on hatched line: held by the ground or a guy");
  say(hung, "line with ring: hung from a sling or hoist");
  say(spring, "zigzag: spring");
  say(clamp, "square: rotation held");
  return out.empty() ? out : capital(out) + ".";
}

}  // namespace baywork::show
