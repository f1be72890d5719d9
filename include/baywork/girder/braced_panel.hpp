// SPDX-License-Identifier: MIT
// The braced panels: each layout of diagonals is a type of its own, all made into one panel template.
#pragma once

#include <array>
#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/girder/panel.hpp>

namespace baywork {

/// Up to two diagonals of one panel.
struct DiagonalLines {
  std::array<std::pair<PanelPoint, PanelPoint>, 2> line{};
  std::size_t count = 0;
};

namespace layout {

inline constexpr PanelPoint first_start{0, 0}, first_end{1, 0}, second_start{0, 1}, second_end{1, 1};
inline DiagonalLines rising() { return {{{{first_start, second_end}, {}}}, 1}; }
inline DiagonalLines falling() { return {{{{second_start, first_end}, {}}}, 1}; }
inline bool in_first_half(std::size_t index, std::size_t count) { return 2 * index + 1 < count + (count % 2); }

/// Every diagonal the same way: from the first chord at the start to the second chord at the end of its panel, or
/// from the second to the first. Without posts this would not carry shear.
struct SingleDirection {
  bool from_first_chord = true;
  static constexpr Layout kind = Layout::single_direction;
  static constexpr bool needs_posts = true, split_posts = false;
  DiagonalLines lines(std::size_t, std::size_t) const { return from_first_chord ? rising() : falling(); }
};
/// Mirrored about mid-span; going towards mid-span each diagonal falls from the second chord to the first.
struct MirroredTowards {
  static constexpr Layout kind = Layout::mirrored_towards;
  static constexpr bool needs_posts = true, split_posts = false;
  DiagonalLines lines(std::size_t i, std::size_t n) const { return in_first_half(i, n) ? falling() : rising(); }
};
/// Mirrored about mid-span; going towards mid-span each diagonal rises from the first chord to the second.
struct MirroredAway {
  static constexpr Layout kind = Layout::mirrored_away;
  static constexpr bool needs_posts = true, split_posts = false;
  DiagonalLines lines(std::size_t i, std::size_t n) const { return in_first_half(i, n) ? rising() : falling(); }
};
/// A zigzag, with or without posts; `from_first_chord` says where it starts.
struct Alternating {
  bool from_first_chord = true;
  static constexpr Layout kind = Layout::alternating;
  static constexpr bool needs_posts = false, split_posts = false;
  DiagonalLines lines(std::size_t i, std::size_t) const { return (i % 2 == 0) == from_first_chord ? rising() : falling(); }
};
/// Both diagonals, not joined where they cross; both carry tension and compression.
struct Crossed {
  static constexpr Layout kind = Layout::crossed;
  static constexpr bool needs_posts = false, split_posts = false;
  DiagonalLines lines(std::size_t, std::size_t) const {
    return {{{{first_start, second_end}, {second_start, first_end}}}, 2};
  }
};
/// Two diagonals from the corners at the start to the middle of the post at the end.
struct K {
  static constexpr Layout kind = Layout::k;
  static constexpr bool needs_posts = true, split_posts = true;
  DiagonalLines lines(std::size_t, std::size_t) const {
    return {{{{first_start, PanelPoint{1, 0.5}}, {second_start, PanelPoint{1, 0.5}}}}, 2};
  }
};

}  // namespace layout

inline constexpr layout::SingleDirection single_direction{};
inline constexpr layout::SingleDirection single_direction_reversed{false};
inline constexpr layout::MirroredTowards mirrored_towards{};
inline constexpr layout::MirroredAway mirrored_away{};
inline constexpr layout::Alternating alternating{};
inline constexpr layout::Alternating alternating_reversed{false};
inline constexpr layout::Crossed crossed{};
inline constexpr layout::K k_braced{};

/// A panel that carries shear by axial force: diagonals of one layout, posts where a post bar is given.
template <class L, Scalar S = double>
struct BasicBracedPanel {
  L layout{};
  BasicBar<S> brace{};
  BasicBar<S> post{};      ///< not given: no posts
  BasicJoint<S> joint{};   ///< of the posts
  S gap = S(0);            ///< eccentricity of the diagonals at the chords (see BasicPiece) [m]

  std::vector<BasicPiece<S>> pieces(const BasicPanelSite<S>& site) const {
    if (L::needs_posts && !post.given)
      fail<BadDescription>("braced panel", std::string("there are no posts for ") + name(L::kind), "a bar for the posts is accepted");
    std::vector<BasicPiece<S>> out;
    if (post.given) {
      if (!L::split_posts || site.index == 0) out.push_back({{0, 0}, {0, 1}, Role::cross_member, post, joint, S(0)});
      if (L::split_posts) {
        out.push_back({{1, 0}, {1, 0.5}, Role::cross_member, post, joint, S(0)});
        out.push_back({{1, 0.5}, {1, 1}, Role::cross_member, post, joint, S(0)});
      } else {
        out.push_back({{1, 0}, {1, 1}, Role::cross_member, post, joint, S(0)});
      }
    }
    const DiagonalLines d = layout.lines(site.index, site.count);
    for (std::size_t i = 0; i < d.count; ++i)
      out.push_back({d.line[i].first, d.line[i].second, Role::diagonal, brace, {}, gap});
    return out;
  }
  BasicPanelFacts<S> facts() const { return {L::kind, brace, post, joint, gap}; }
};
template <class L>
using BracedPanel = BasicBracedPanel<L, double>;

/// Diagonals without posts.
template <class L, Scalar S>
BasicBracedPanel<L, S> braced(const L& how, const BasicBar<S>& brace) {
  return {how, brace, {}, {}, S(0)};
}
/// Diagonals and posts. `gap` is the brace eccentricity at the chords [m].
template <class L, Scalar S>
BasicBracedPanel<L, S> braced(const L& how, const BasicBar<S>& brace, const BasicBar<S>& post, const BasicJoint<S>& joint = {},
                              const S& gap = S(0)) {
  return {how, brace, post, joint, gap};
}

}  // namespace baywork
