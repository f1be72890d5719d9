// SPDX-License-Identifier: MIT
// A face: the panels between two neighbouring chords, alike throughout or one by one.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/girder/panel.hpp>

namespace baywork {

/// Panels of a face. One panel given: all are like it. Several: one for each panel in turn. A panel spans `span` bays;
/// the first boundary between panels lies `offset` bays from the start (0: at the start), so that the panels of one
/// face can lie half a panel off those of its neighbour.
template <Scalar S = double>
class BasicFace {
 public:
  BasicFace() = default;  ///< no panels: nothing between the two chords
  template <PanelOf<S> P>
  BasicFace(P panel) : panels_{BasicAnyPanel<S>(std::move(panel))} {}  // NOLINT(google-explicit-constructor)
  BasicFace(std::initializer_list<BasicAnyPanel<S>> panels) : panels_(panels) {}
  explicit BasicFace(std::vector<BasicAnyPanel<S>> panels) : panels_(std::move(panels)) {}

  /// The same with panels over several bays, the first boundary `offset` bays from the start.
  BasicFace spanning(std::size_t bays, std::size_t offset = 0) const {
    BasicFace f = *this;
    f.span_ = bays;
    f.offset_ = offset;
    return f;
  }
  /// The same with another panel at one place (counted from 0), in a girder of `count` panels.
  BasicFace with_panel(std::size_t at, std::size_t count, BasicAnyPanel<S> panel) const {
    if (at >= count)
      fail<BadDescription>("face", "panel " + std::to_string(at + 1) + " is not there",
                           "panels 1 to " + std::to_string(count) + " are accepted");
    BasicFace f = *this;
    if (f.panels_.empty()) f.panels_.assign(1, {});
    if (f.panels_.size() == 1) f.panels_.assign(count, f.panels_[0]);
    f.panels_.at(at) = std::move(panel);
    return f;
  }

  bool empty() const noexcept { return panels_.empty(); }
  std::size_t span() const noexcept { return span_; }
  std::size_t offset() const noexcept { return offset_; }
  /// Number of panels given one by one; 1 where all are alike.
  std::size_t given() const noexcept { return panels_.size(); }
  const BasicAnyPanel<S>& panel(std::size_t i) const { return panels_.size() == 1 ? panels_[0] : panels_[i]; }

  /// Stations at which the panels of a girder of `bays` bays begin, and the last one's end.
  std::vector<std::size_t> boundaries(std::size_t bays) const {
    std::vector<std::size_t> out{0};
    if (offset_ > 0 && offset_ < bays) out.push_back(offset_);
    while (out.back() < bays) out.push_back(out.back() + span_ < bays ? out.back() + span_ : bays);
    return out;
  }

 private:
  std::vector<BasicAnyPanel<S>> panels_;
  std::size_t span_ = 1, offset_ = 0;
};
using Face = BasicFace<double>;

}  // namespace baywork
