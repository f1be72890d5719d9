// SPDX-License-Identifier: MIT
// The first load factor at which a part's utilisation passes 1, though it need not grow all the way there.
#pragma once

#include <cstddef>
#include <vector>

#include <baywork/rating/detail/load_line.hpp>
#include <baywork/rating/detail/member_trace.hpp>

namespace baywork::rating::detail {

/// Searches one part of a girder in one combination: a bar, or a joint. A part has a `State` at each load factor, that
/// state's utilisation, and a bound that is at most 1 only if every utilisation between two states is. Ranges whose
/// bound is at most 1 are done with; others are halved, the lower half first. A range narrower than a
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

/// One bar. A section's forces change in proportion to the load factor, and all checks rise with the sizes of the
/// forces, so that the check of the greatest sizes at the two ends of a range bounds all that lies between. Sections
/// that move along a loaded bar as the load grows are bounded by where they stand at the two ends; besides them, the
/// eighths of each loaded stretch stay in place.
class MemberPart {
 public:
  using State = Trace;
  MemberPart(const MemberDesign& design, const Line& line, const Unit& unit, std::size_t m)
      : design_(design), line_(line), unit_(unit), m_(m) {}

  /// Whether the bar can be seen to stay at 1 or below from its end forces alone.
  bool surely_holds(double from, double to) const {
    return bound_anywhere(design_, m_, range_between(line_, unit_, m_, from, to)) <= 1.0;
  }
  void state(double at, Trace& out) {
    const MemberState s = detail::state(line_, unit_, m_, at, loads_);
    trace(design_, m_, s.start, s.loads, line_.combination, out);
  }
  double utilisation(const Trace& t) const { return detail::utilisation(design_, m_, t); }
  double bound(const Trace& a, const Trace& b) const { return bound_between(design_, m_, a, b); }

 private:
  const MemberDesign& design_;
  const Line& line_;
  const Unit& unit_;
  std::size_t m_;
  std::vector<MemberLoad> loads_;
};

/// One part of a topic whose checks take forces at the ends of members, which are straight in the load factor.
template <class Topic>
class TopicPart {
 public:
  using State = typename Topic::State;
  TopicPart(const Topic& topic, const Line& line, const EndsOfMembers& unit, std::size_t i)
      : topic_(topic), line_(line), unit_(unit), i_(i) {}

  bool surely_holds(double from, double to) {
    state(from, low_);
    state(to, high_);
    return bound(low_, high_) <= 1.0;
  }
  void state(double at, State& out) const {
    const double f = line_.factor * at;
    topic_.state(
        i_,
        [&](std::size_t m, bool at_start) {
          const std::size_t k = at_start ? 0 : 1;
          return sum(line_.placed ? line_.ends[m][k] : verify::SectionForces{}, unit_[m][k], f);
        },
        out);
  }
  double utilisation(const State& s) const { return topic_.utilisation(i_, s); }
  double bound(const State& a, const State& b) const { return topic_.bound(i_, a, b); }

 private:
  const Topic& topic_;
  const Line& line_;
  const EndsOfMembers& unit_;
  std::size_t i_;
  State low_{}, high_{};
};

}  // namespace baywork::rating::detail
