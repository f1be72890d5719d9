// SPDX-License-Identifier: MIT
// The first load factor at which a part's utilisation passes 1, though it need not grow all the way there.
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <vector>

#include <baywork/rating/detail/course.hpp>
#include <baywork/rating/detail/member_trace.hpp>

namespace baywork::rating::detail {

/// Searches one part of a girder in one course of forces: a bar, or a part of a topic. A part has a `State` at each
/// load factor, that state's utilisation, and a bound that is at most 1 only if every utilisation between two states
/// is. Ranges whose bound is at most 1 are done with; others are halved, the lower half first. A range narrower than a
/// hundred-thousandth of the load factor with both ends below 1 is taken as below 1.
template <class Part>
class FirstCrossing {
 public:
  using State = typename Part::State;
  explicit FirstCrossing(Part& part) : part_(part) {}

  /// The first crossing in (0, to): the last factor found to hold. `to` where there is none. At 0 the part holds.
  double search(double to) {
    if (part_.surely_holds(0.0, to)) return to;
    floor_ = 1e-25 * to;
    State at_0, at_to;
    part_.state(0.0, at_0);
    part_.state(to, at_to);
    const double found = within(0.0, at_0, to, at_to, part_.utilisation(at_to));
    return found < 0.0 ? to : found;
  }

 private:
  static constexpr double narrow = 1e-5, exact = 1e-13;  // of the load factor

  /// The first crossing between a and b, or -1; a holds, `u_b` is the utilisation at b.
  double within(double a, const State& at_a, double b, const State& at_b, double u_b) {
    if (b <= floor_) return u_b > 1.0 ? a : -1.0;
    if (b - a <= narrow * b) return u_b > 1.0 ? halved(a, b) : -1.0;
    if (u_b <= 1.0 && (part_.surely_holds(a, b) || part_.bound(at_a, at_b) <= 1.0)) return -1.0;
    const double middle = 0.5 * (a + b);
    State at_middle;
    part_.state(middle, at_middle);
    const double u = part_.utilisation(at_middle);
    const double lower = within(a, at_a, middle, at_middle, u);
    if (lower >= 0.0) return lower;
    return within(middle, at_middle, b, at_b, u_b);
  }
  double halved(double a, double b) {
    State s;
    while (b - a > exact * b) {
      const double middle = 0.5 * (a + b);
      part_.state(middle, s);
      (part_.utilisation(s) > 1.0 ? b : a) = middle;
    }
    return a;
  }

  Part& part_;
  double floor_ = 0;
};

/// One bar. All checks rise with the sizes of the forces, so that the check of the greatest sizes at the corners of a
/// range of load factors bounds all that lies between. Sections that move along a loaded bar as the load grows are
/// bounded by where they stand there; besides them, the eighths of each loaded stretch stay in place.
class MemberPart {
 public:
  struct State {
    double factor = 0;
    Trace trace{};
  };
  MemberPart(const MemberDesign& design, const Course& course, std::size_t m)
      : design_(design), course_(course), m_(m) {}

  /// Whether the bar can be seen to stay at 1 or below from its end forces alone.
  bool surely_holds(double from, double to) const {
    return bound_anywhere(design_, m_, course_.range(m_, from, to)) <= 1.0;
  }
  void state(double factor, State& out) {
    out.factor = factor;
    trace_at(course_.at(factor), out.trace);
  }
  double utilisation(const State& s) const { return detail::utilisation(design_, m_, s.trace); }
  double bound(const State& a, const State& b) {
    if (course_.is_straight()) return bound_between(design_, m_, std::array{&a.trace, &b.trace});
    const Corners corners = course_.corners(a.factor, b.factor);
    std::array<const Trace*, 4> traces{};
    for (std::size_t i = 0; i < traces.size(); ++i) {
      trace_at(corners.at[i], corners_[i]);
      traces[i] = &corners_[i];
    }
    return bound_between(design_, m_, traces);
  }

 private:
  void trace_at(const Times& times, Trace& out) {
    const MemberState s = course_.member(times, m_, loads_);
    trace(design_, m_, s.start, s.loads, course_.combination(), out);
  }

  const MemberDesign& design_;
  const Course& course_;
  std::size_t m_;
  std::vector<MemberLoad> loads_;
  std::array<Trace, 4> corners_{};
};

/// One part of a topic.
template <class Topic>
class TopicPart {
 public:
  struct State {
    double factor = 0;
    typename Topic::State at{};
  };
  TopicPart(const Topic& topic, const Course& course, std::size_t i) : topic_(topic), course_(course), i_(i) {}

  bool surely_holds(double from, double to) { return bound_of_corners(from, to) <= 1.0; }
  void state(double factor, State& out) const {
    out.factor = factor;
    topic_.state(i_, ForcesAt{course_, course_.at(factor)}, out.at);
  }
  double utilisation(const State& s) const { return topic_.utilisation(i_, s.at); }
  double bound(const State& a, const State& b) {
    if (course_.is_straight()) return topic_.bound(i_, std::array{&a.at, &b.at});
    return bound_of_corners(a.factor, b.factor);
  }

 private:
  double bound_of_corners(double from, double to) {
    const Corners corners = course_.corners(from, to);
    std::array<const typename Topic::State*, 4> states{};
    for (std::size_t i = 0; i < corners.count; ++i) {
      topic_.state(i_, ForcesAt{course_, corners.at[i]}, corners_[i]);
      states[i] = &corners_[i];
    }
    return topic_.bound(i_, std::span(states.data(), corners.count));
  }

  const Topic& topic_;
  const Course& course_;
  std::size_t i_;
  std::array<typename Topic::State, 4> corners_{};
};

/// Whether the bow of one course grows without end.
class BowPart {
 public:
  using State = double;
  explicit BowPart(const Course& course) : course_(course) {}

  bool surely_holds(double from, double to) const { return !course_.may_be_endless(from, to); }
  void state(double factor, double& out) const { out = factor; }
  double utilisation(double factor) const {
    return course_.endless(factor) ? std::numeric_limits<double>::infinity() : 0.0;
  }
  double bound(double from, double to) const {
    return course_.may_be_endless(from, to) ? std::numeric_limits<double>::infinity() : 0.0;
  }

 private:
  const Course& course_;
};

}  // namespace baywork::rating::detail
