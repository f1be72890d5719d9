// SPDX-License-Identifier: MIT
// Panels of any type as the words of a file, and back.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <baywork/girder/braced_panel.hpp>
#include <baywork/girder/open_panel.hpp>
#include <baywork/json/bits.hpp>

namespace baywork::detail {

inline AnyPanel panel_of(const PanelText& t) {
  const auto made = [&t](const auto& layout) { return AnyPanel(braced(layout, t.brace, t.cross, t.joint, t.gap)); };
  switch (t.layout) {
    case Layout::open: return open(t.cross, t.joint);
    case Layout::single_direction: return made(layout::SingleDirection{t.from_first_chord});
    case Layout::mirrored_towards: return made(mirrored_towards);
    case Layout::mirrored_away: return made(mirrored_away);
    case Layout::alternating: return made(layout::Alternating{t.from_first_chord});
    case Layout::crossed: return made(crossed);
    case Layout::k: return made(k_braced);
    case Layout::none:
    case Layout::other: break;
  }
  return {};
}

inline bool alike(const Piece& p, const Piece& q) {
  const auto& [from, to, role, bar, joint, gap] = p;
  return from == q.from && to == q.to && role == q.role && bits_of(gap) == bits_of(q.gap) &&
         bits_of_fields(joint) == bits_of_fields(q.joint) && bar.given == q.bar.given &&
         (!bar.given || bits_of_fields(bar) == bits_of_fields(q.bar));
}
inline bool alike(const AnyPanel& a, const AnyPanel& b, const std::vector<PanelSite>& sites) {
  for (const PanelSite& site : sites) {
    const std::vector<Piece> p = a.pieces(site), q = b.pieces(site);
    if (p.size() != q.size()) return false;
    for (std::size_t i = 0; i < p.size(); ++i)
      if (!alike(p[i], q[i])) return false;
  }
  return true;
}

/// Says of a panel whose type is forgotten what it was made of. A panel that facts() speak for is believed only where
/// it lists the same pieces as a panel made of these facts, at every place that it has in the girder.
inline PanelText text_of(const AnyPanel& panel, const std::vector<PanelSite>& sites, const std::string& place) {
  PanelText out;
  if (panel.empty()) return out;
  const PanelFacts& f = panel.facts();
  out.layout = f.layout;
  out.brace = f.brace;
  out.cross = f.cross;
  out.joint = f.joint;
  out.gap = f.gap;
  if (json_word(f.layout)[0] != '\0' && f.layout != Layout::none)
    for (const bool first : {true, false}) {
      out.from_first_chord = first;
      if (alike(panel, panel_of(out), sites)) return out;
      if (!begins_at_either(f.layout)) break;
    }
  fail<BadDescription>(place, "its panel is of a type of your own, which files do not know",
                       "open panels and the library's layouts of diagonals are accepted");
}

}  // namespace baywork::detail
