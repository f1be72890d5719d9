// SPDX-License-Identifier: MIT
// The lines that hold a girder up: which there are, and what each pulls when the end of another rises.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/cases.hpp>

namespace baywork {

/// All joints held along z at one station: a hoist with its slings, or a stand; each joint by a line that can only push
/// the girder up.
struct Hoist {
  std::size_t station = 0;
  double x = 0;                    ///< along the axis [m]
  std::vector<std::size_t> lines;  ///< numbers of lines
};

/// Of a girder held along z at two stations or more; for all its load cases.
class HoistLines {
 public:
  explicit HoistLines(const Analysis& analysis) {
    find(analysis.model());
    move_each(analysis);
  }

  const std::vector<Hoist>& hoists() const noexcept { return hoists_; }
  std::size_t size() const noexcept { return supports_.size(); }

  /// Of a line in a response [N].
  double pull(const Response& r, std::size_t line) const { return r.answer().reactions[supports_[line]].value[2]; }
  /// Change of line i's pull per metre by which line j's end rises [N/m].
  double stiffness(std::size_t i, std::size_t j) const { return C_[i][j]; }
  const std::vector<std::vector<double>>& stiffness() const noexcept { return C_; }

  /// All ends at rest: what the girder's own prescribed motions bring, which is in every response once.
  const Response& at_rest() const noexcept { return at_rest_; }
  /// The same with a line's end risen by 1 m.
  const Response& risen(std::size_t line) const { return risen_[line]; }

 private:
  void find(const GirderModel& model) {
    for (std::size_t s = 0; s < model.frame.supports.size(); ++s) {
      if (model.frame.supports[s].motion[2].kind == Restraint::Kind::free) continue;
      const Address& a = model.frame.nodes[model.frame.supports[s].node].address;
      for (std::size_t k = 3; k < 6; ++k)
        if (model.frame.supports[s].motion[k].kind != Restraint::Kind::free)
          fail<BadDescription>("hoists, " + text_of(a, model.frame.names), "the joint is clamped",
                               "joints held by lines that only pull are accepted");
      const auto station = static_cast<std::size_t>(a.station);
      std::size_t h = 0;
      while (h < hoists_.size() && hoists_[h].station != station) ++h;
      if (h == hoists_.size()) hoists_.push_back({station, model.girder.stations[station], {}});
      hoists_[h].lines.push_back(supports_.size());
      supports_.push_back(s);
    }
    if (hoists_.size() < 2)
      fail<BadDescription>("hoists", "the girder is held along z at " + std::to_string(hoists_.size()) + " stations",
                           "a girder on two hoists or more is accepted");
    std::sort(hoists_.begin(), hoists_.end(), [](const Hoist& a, const Hoist& b) { return a.station < b.station; });
  }

  void move_each(const Analysis& analysis) {
    const GirderModel& model = analysis.model();
    const auto moved = [&](std::size_t line, double by) {
      const Address& at = model.frame.nodes[model.frame.supports[supports_[line]].node].address;
      return analysis.solve({settlement(static_cast<std::size_t>(at.chord),
                                        model.girder.stations[static_cast<std::size_t>(at.station)], Motion::uz, by)});
    };
    at_rest_ = moved(0, 0.0);
    C_.assign(size(), std::vector<double>(size(), 0.0));
    for (std::size_t j = 0; j < size(); ++j) {
      risen_.push_back(moved(j, 1.0));
      for (std::size_t i = 0; i < size(); ++i) C_[i][j] = pull(risen_[j], i) - pull(at_rest_, i);
    }
  }

  std::vector<Hoist> hoists_;
  std::vector<std::size_t> supports_;  ///< of the frame, each line's
  Response at_rest_;
  std::vector<Response> risen_;
  std::vector<std::vector<double>> C_;
};

}  // namespace baywork
