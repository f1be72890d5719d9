// SPDX-License-Identifier: MIT
// Where along a member its metal is softened, and how: beside the welds at its ends, and beside those across it.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include <baywork/verify/found.hpp>
#include <baywork/verify/welded_ends.hpp>

namespace baywork::verify::detail {

class SoftenedParts {
 public:
  SoftenedParts() = default;
  /// `of(length)`: how metal is softened over so long a part [m]. Parts that meet count as longer than the bar is wide
  /// (safe side).
  template <class Of>
  SoftenedParts(const WeldedEnds& ends, double length, Of of)
      : length_(length),
        reach_{ends.start.reach, ends.end.reach},
        marks_{ends.start.reach, length - ends.end.reach},
        ends_{of(ends.start.length), of(ends.end.length)} {
    for (const WeldedPlace& w : ends.across) {
      const en1999::Softening s = of(2.0 * w.reach);
      if (s != Softening::none)
        across_.push_back({larger(0.0, w.at - w.reach), smaller(length, w.at + w.reach), s});
    }
    if (across_.empty()) return;
    std::sort(across_.begin(), across_.end(), [](const Part& a, const Part& b) { return a.from < b.from; });
    for (std::size_t i = 0; i < across_.size(); ++i) {
      Part& p = across_[i];
      if (ends_[0] != Softening::none && p.from <= reach_[0]) p.how = ends_[0] = Softening::beyond_width;
      if (ends_[1] != Softening::none && p.to >= length - reach_[1]) p.how = ends_[1] = Softening::beyond_width;
      for (std::size_t j = 0; j < i; ++j)
        if (across_[j].to >= p.from) p.how = across_[j].how = Softening::beyond_width;
    }
    all_marks_.assign(marks_.begin(), marks_.end());
    for (const Part& p : across_) {
      for (const double x : {p.from, 0.5 * (p.from + p.to), p.to}) all_marks_.push_back(x);
      if (p.from < 0.5 * length && 0.5 * length < p.to) all_marks_.push_back(0.5 * length);  // top of the wave
    }
  }

  en1999::Softening at(double x) const {
    const double slack = 1e-12 * length_;
    const bool at_start = ends_[0] != Softening::none && x <= reach_[0] + slack;
    const bool at_end = ends_[1] != Softening::none && x >= length_ - reach_[1] - slack;
    if ((at_start && ends_[0] == Softening::beyond_width) || (at_end && ends_[1] == Softening::beyond_width) ||
        (at_start && at_end))
      return Softening::beyond_width;
    Softening out = at_start || at_end ? Softening::within_width : Softening::none;
    for (const Part& p : across_)
      if (x >= p.from - slack && x <= p.to + slack && p.how > out) out = p.how;
    return out;
  }

  /// Lets marks() have the places just outside of softened parts as well. What buckles between welds near its ends
  /// needs them: there it has chi, at the welds chi omega_x, which may be more.
  void mark_plain() {
    if (across_.empty()) all_marks_.assign(marks_.begin(), marks_.end());
    each_plain([&](double from, double to) {
      all_marks_.push_back(from);
      all_marks_.push_back(to);
    });
  }
  /// Places at which it begins or ends, and within parts across.
  std::span<const double> marks() const {
    return all_marks_.empty() ? std::span<const double>(marks_) : std::span<const double>(all_marks_);
  }

  /// Places of which one is at least as weak as any other; the middle of a buckling wave is the weakest.
  struct Weakest {
    std::array<Place, 2> places{};
    std::size_t count = 0;
    const Place* begin() const { return places.data(); }
    const Place* end() const { return places.data() + count; }
  };
  Weakest weakest() const {
    const bool touch = reach_[0] + reach_[1] >= length_;
    const auto any = [&](Softening s) {
      return ends_[0] == s || ends_[1] == s ||
             std::any_of(across_.begin(), across_.end(), [s](const Part& p) { return p.how == s; });
    };
    const bool longer = any(Softening::beyond_width), local = any(Softening::within_width);
    Weakest out;
    const auto add = [&](Softening s) { out.places[out.count++] = {0.5 * length_, 0, s}; };
    if (longer || (local && touch)) add(Softening::beyond_width);
    if (local) add(Softening::within_width);
    if (!longer && !local) add(Softening::none);  // weaker nowhere than a softened place
    return out;
  }

  /// The longest part that is surely not softened: none where welds meet.
  Skipped not_softened() const {
    Skipped longest{};
    each_plain([&](double from, double to) {
      if (to - from > longest.to - longest.from) longest = {from, to};
    });
    return longest;
  }

  /// Whether a weld lies across it farther than so much from both ends.
  bool inside(double margin) const {
    return std::any_of(across_.begin(), across_.end(),
                       [&](const Part& p) { return p.to > margin && p.from < length_ - margin; });
  }

 private:
  using Softening = en1999::Softening;
  struct Part {
    double from = 0, to = 0;
    Softening how = Softening::none;
  };

  /// Calls visit(from, to) for every part that is surely not softened.
  template <class Visit>
  void each_plain(Visit visit) const {
    const double slack = 2e-12 * length_;
    double from = ends_[0] != Softening::none ? reach_[0] + slack : 0.0;
    const double last = ends_[1] != Softening::none ? length_ - reach_[1] - slack : length_;
    for (const Part& p : across_) {
      if (from < smaller(p.from - slack, last)) visit(from, smaller(p.from - slack, last));
      from = larger(from, p.to + slack);
    }
    if (from < last) visit(from, last);
  }

  double length_ = 0;
  std::array<double, 2> reach_{}, marks_{};
  std::array<Softening, 2> ends_{};  ///< at start and end
  std::vector<Part> across_;         ///< by their places
  std::vector<double> all_marks_;    ///< where there are more than two
};

}  // namespace baywork::verify::detail
