// SPDX-License-Identifier: MIT
// The open panel: chords tied by cross members alone, which carries shear by bending.
#pragma once

#include <vector>

#include <baywork/girder/panel.hpp>

namespace baywork {

/// A cross member at each end and nothing between.
template <Scalar S = double>
struct BasicOpenPanel {
  BasicBar<S> cross{};
  BasicJoint<S> joint{};

  std::vector<BasicPiece<S>> pieces(const BasicPanelSite<S>&) const {
    return {{{0, 0}, {0, 1}, Role::cross_member, cross, joint, S(0)}, {{1, 0}, {1, 1}, Role::cross_member, cross, joint, S(0)}};
  }
  BasicPanelFacts<S> facts() const { return {Layout::open, {}, cross, joint, S(0)}; }
};
using OpenPanel = BasicOpenPanel<double>;

/// An open panel of this cross member, rigidly jointed unless another joint is given.
template <Scalar S>
BasicOpenPanel<S> open(const BasicBar<S>& cross, const BasicJoint<S>& joint = {}) {
  return {cross, joint};
}

}  // namespace baywork
