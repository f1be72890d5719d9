// SPDX-License-Identifier: MIT
// A girder on several hoists: all level, each off level, each slack; what each then carries. Lines only pull.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/response/detail/one_way.hpp>
#include <baywork/response/hoist_lines.hpp>

namespace baywork {

/// Which cases are looked at besides all level.
struct HoistCases {
  double off_level = 0.02;  ///< each hoist by so much too high, and too low [m]; 0: not looked at
  bool each_slack = true;   ///< each hoist in turn carries nothing
};

/// One state of the hoists, proved: no line pushes the girder down, and none is slack whose joint has not risen above
/// it.
struct HoistCase {
  std::string name;
  std::size_t hoist = static_cast<std::size_t>(-1);  ///< the one that is off level or slack
  bool gone = false;                                 ///< it carries nothing, however far that leaves its joints to sink
  bool hangs = true;         ///< false: the girder would fall or roll over; there is no response then
  std::vector<double> pull;  ///< of each hoist, up [N]
  /// Of each line's joint above the line's end [m]: 0 where it pulls, below 0 where it is gone.
  std::vector<double> rise;
  std::vector<bool> slack;  ///< each line
  Response response{};
};

/// Of one hoist over all cases that hang.
struct HoistShare {
  double least = 0, level = 0, greatest = 0;  ///< pull [N]
  std::size_t least_in = 0, greatest_in = 0;  ///< case
  double slack_from = 0;  ///< lowered by so much and more, it carries nothing [m]; 0 where the girder needs it
  bool needed = false;
};

class HoistStudy {
 public:
  static constexpr double rounding = 1e-7;  ///< what a line may push, of the load, and what an answer may be wrong by

  /// `level`: any solved case or combination of a girder held along z at two stations or more. Its supports push and
  /// pull; here they only pull. Every case is made of it and of unit motions of the lines' ends: a slack line is one
  /// whose end has followed its joint until it carries nothing.
  explicit HoistStudy(const Response& level, const HoistCases& which = {})
      : HoistStudy(std::make_shared<const HoistLines>(level.analysis()), level, which) {}
  /// The same for one of many responses of an analysis, whose lines have been found before.
  HoistStudy(std::shared_ptr<const HoistLines> lines, const Response& level, const HoistCases& which = {})
      : lines_(std::move(lines)), total_(-level.total_load().z) {
    require::not_negative(which.off_level, "hoists", "how far each is off level");
    add(level, "all level", none, 0.0, false);
    if (!cases_[0].hangs)
      fail<UnstableFrame>("hoists", "the girder lifts off: no set of lines that only pull holds it",
                          "loads between the hoists are accepted");
    for (std::size_t h = 0; h < hoists().size() && which.off_level > 0.0; ++h)
      for (const double sign : {1.0, -1.0})
        add(level, words(h) + text::quantity(which.off_level, 1e-3, sign > 0 ? "mm high" : "mm low", 4), h,
            sign * which.off_level, false);
    for (std::size_t h = 0; h < hoists().size() && which.each_slack; ++h) add(level, words(h) + "slack", h, 0.0, true);
  }

  const std::vector<Hoist>& hoists() const noexcept { return lines_->hoists(); }
  /// The first one is all level.
  const std::vector<HoistCase>& cases() const& noexcept { return cases_; }
  const std::vector<HoistCase>& cases() const&& = delete;  // of a temporary study they would be gone
  double total() const noexcept { return total_; }         ///< load downwards [N]

  HoistShare share(std::size_t hoist) const {
    HoistShare out;
    out.least = out.level = out.greatest = cases_[0].pull[hoist];
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      const HoistCase& c = cases_[i];
      if (c.gone && c.hoist == hoist) {
        out.needed = !c.hangs;
        if (c.hangs)
          for (const std::size_t l : hoists()[hoist].lines) out.slack_from = larger(out.slack_from, -c.rise[l]);
      }
      if (!c.hangs) continue;
      if (c.pull[hoist] < out.least) {
        out.least = c.pull[hoist];
        out.least_in = i;
      }
      if (c.pull[hoist] > out.greatest) {
        out.greatest = c.pull[hoist];
        out.greatest_in = i;
      }
    }
    return out;
  }
  /// Largest difference between the lines' sum and the load, over the load, of any case.
  double imbalance() const {
    double most = 0;
    for (const HoistCase& c : cases_) {
      if (!c.hangs) continue;
      double sum = -total_;
      for (const double p : c.pull) sum += p;
      most = larger(most, magnitude(sum));
    }
    return total_ == 0.0 ? 0.0 : most / magnitude(total_);
  }

 private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);
  std::string words(std::size_t h) const {
    return "hoist " + std::to_string(h + 1) + " at " + text::number(hoists()[h].x, 4) + " m ";
  }

  void add(const Response& level, std::string name, std::size_t hoist, double by, bool gone) {
    const std::size_t n = lines_->size();
    HoistCase out;
    out.name = std::move(name);
    out.hoist = hoist;
    out.gone = gone;
    std::vector<double> ends(n, 0.0), R(n);
    std::vector<bool> is_gone(n, false);
    if (hoist != none)
      for (const std::size_t l : hoists()[hoist].lines) {
        ends[l] = by;
        is_gone[l] = gone;
      }
    double size = magnitude(total_);
    for (std::size_t i = 0; i < n; ++i) {
      R[i] = lines_->pull(level, i);
      for (std::size_t j = 0; j < n; ++j) R[i] += lines_->stiffness(i, j) * ends[j];
      size = larger(size, magnitude(R[i]));
    }
    const detail::OneWay lines(lines_->stiffness(), R, is_gone, 1e-6 * size / level.girder().span());
    if (lines.gave_up())
      fail<NotConverged>("hoists, " + out.name, "which lines are slack was not found", "fewer lines are accepted");
    out.hangs = lines.solved();
    for (const double x : lines.x()) out.hangs = out.hangs && magnitude(x) < level.girder().span();
    if (out.hangs) {
      std::vector<const Response*> parts{&level, &lines_->at_rest()};
      std::vector<double> factors{1.0, 0.0};
      for (std::size_t j = 0; j < n; ++j) {
        parts.push_back(&lines_->risen(j));
        factors.push_back(ends[j] + lines.x()[j]);
        factors[1] -= factors.back();
      }
      out.response = combine(parts, factors, level.name() + ", " + out.name);
      prove(out, lines.x(), is_gone, size);
    }
    cases_.push_back(std::move(out));
  }

  /// No answer leaves unless, in the response itself, every line pulls or is slack and none both or neither.
  void prove(HoistCase& c, const std::vector<double>& x, const std::vector<bool>& gone, double size) const {
    const double slack = rounding * size;
    if (!(c.response.certificate().worst() <= rounding))
      fail<NotConverged>("hoists, " + c.name,
                         "its certified error is " + text::number(c.response.certificate().worst(), 3),
                         "errors up to " + text::number(rounding) + " are accepted");
    c.pull.assign(hoists().size(), 0.0);
    c.rise = x;
    c.slack.assign(x.size(), false);
    for (std::size_t h = 0; h < hoists().size(); ++h)
      for (const std::size_t l : hoists()[h].lines) {
        const double R = lines_->pull(c.response, l);
        c.slack[l] = gone[l] || x[l] > 0.0;
        const bool holds = c.slack[l] ? magnitude(R) <= slack : R >= -slack && x[l] == 0.0;
        if (!holds)
          fail<NotConverged>("hoists, " + c.name, "a line is found to push " + text::number(-R) + " N",
                             "lines that only pull are accepted");
        c.pull[h] += R;
      }
  }

  std::shared_ptr<const HoistLines> lines_;
  double total_;
  std::vector<HoistCase> cases_;
};

}  // namespace baywork
