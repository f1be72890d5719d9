// SPDX-License-Identifier: MIT
// What a panel is: given its corners, a list of pieces. Any type that can say this is a panel.
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/address.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/girder/bar.hpp>

namespace baywork {

/// A point of a panel. `along` runs from 0 at its first station to 1 at its last, `across` from 0 at the face's first
/// chord to 1 at its second. The four corners are chord joints; other points become joints of the face itself, and
/// must lie on a station (`along` 0 or 1) or inside the panel.
struct PanelPoint {
  double along = 0;
  double across = 0;
  friend bool operator==(const PanelPoint&, const PanelPoint&) = default;
};

/// One bar of a panel. Diagonals become axial bars, all else rigid-jointed beams with `joint` at both ends.
template <Scalar S = double>
struct BasicPiece {
  PanelPoint from{}, to{};
  Role role = Role::cross_member;
  BasicBar<S> bar{};
  BasicJoint<S> joint{};
  S gap = S(0);  ///< of a diagonal: its axis meets the chord's axis this far from the joint, towards mid-panel [m]
};
using Piece = BasicPiece<double>;

/// Where a panel stands in its face.
template <Scalar S = double>
struct BasicPanelSite {
  std::size_t index = 0, count = 1;  ///< the how-manieth of how many panels of the face
  S length = S(0), depth = S(0);     ///< along the first chord, and between the chords at the first station [m]
};
using PanelSite = BasicPanelSite<double>;

/// The layouts that closed forms know. `other`: a user's own panel, without a closed form.
enum class Layout : std::uint8_t { none, open, single_direction, mirrored_towards, mirrored_away, alternating, crossed, k, other };

inline const char* name(Layout l) {
  switch (l) {
    case Layout::none: return "nothing";
    case Layout::open: return "open";
    case Layout::single_direction: return "single-direction diagonals";
    case Layout::mirrored_towards: return "diagonals falling towards mid-span";
    case Layout::mirrored_away: return "diagonals rising towards mid-span";
    case Layout::alternating: return "alternating diagonals";
    case Layout::crossed: return "crossed diagonals";
    case Layout::k: return "K diagonals";
    case Layout::other: return "own panel";
  }
  return "own panel";
}

/// What a hand calculation needs to know of a panel.
template <Scalar S = double>
struct BasicPanelFacts {
  Layout layout = Layout::other;
  BasicBar<S> brace{}, cross{};  ///< `cross` is not given where there are no posts
  BasicJoint<S> joint{};
  S gap = S(0);
};
using PanelFacts = BasicPanelFacts<double>;

/// A panel lists its pieces at its first and last station and between. Where two panels of a face meet, the cross
/// members of the left one stand.
template <class P, class S>
concept PanelOf = requires(const P& p, const BasicPanelSite<S>& site) {
  { p.pieces(site) } -> std::convertible_to<std::vector<BasicPiece<S>>>;
} && std::copy_constructible<P>;
template <class P>
concept Panel = PanelOf<P, double>;

/// Any panel by value: erased once, called once per panel when the frame is made, never in the numerics.
template <Scalar S = double>
class BasicAnyPanel {
 public:
  BasicAnyPanel() = default;  ///< no panel: the chords pass by alone
  template <class P>
    requires(!std::same_as<P, BasicAnyPanel> && PanelOf<P, S>)  // in this order, or the question would ask itself
  BasicAnyPanel(P panel) {  // NOLINT(google-explicit-constructor): a panel is an any-panel
    if constexpr (requires { { panel.facts() } -> std::convertible_to<BasicPanelFacts<S>>; })
      facts_ = panel.facts();
    else
      facts_.layout = Layout::other;
    pieces_ = [p = std::move(panel)](const BasicPanelSite<S>& site) { return std::vector<BasicPiece<S>>(p.pieces(site)); };
  }

  bool empty() const noexcept { return !pieces_; }
  std::vector<BasicPiece<S>> pieces(const BasicPanelSite<S>& site) const {
    return pieces_ ? pieces_(site) : std::vector<BasicPiece<S>>{};
  }
  const BasicPanelFacts<S>& facts() const noexcept { return facts_; }

 private:
  std::function<std::vector<BasicPiece<S>>(const BasicPanelSite<S>&)> pieces_;
  BasicPanelFacts<S> facts_{Layout::none, {}, {}, {}, S(0)};
};
using AnyPanel = BasicAnyPanel<double>;

}  // namespace baywork
