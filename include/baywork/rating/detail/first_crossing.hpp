// SPDX-License-Identifier: MIT
// The first load factor at which a member's utilisation passes 1, though it need not grow all the way there.
#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include <baywork/rating/detail/load_line.hpp>
#include <baywork/rating/detail/member_trace.hpp>

namespace baywork::rating::detail {

/// Searches one member in one combination. A section's forces change in proportion to the load factor, and all checks
/// rise with the sizes of the forces, so that the check of the greatest sizes at the two ends of a range bounds all
/// that lies between. Ranges whose bound is at most 1 are done with; others are halved, the lower half first. Sections
/// that move along a loaded bar as the load grows are bounded by where they stand at the two ends; besides them, the
/// eighths of each loaded stretch stay in place. A range narrower than a hundred-thousandth of the load factor with
/// both ends below 1 is taken as below 1.
class FirstCrossing {
 public:
  FirstCrossing(const verify::detail::MemberDesign& design, const Line& line, const Unit& unit)
      : design_(design), line_(line), unit_(unit) {}

  /// Whether member m can be seen to stay at 1 or below up to `to`, from its end forces alone.
  bool surely_holds(std::size_t m, double from, double to) const {
    return bound_anywhere(design_, m, range_between(line_, unit_, m, from, to)) <= 1.0;
  }

  /// The first crossing in (0, to): the last factor found to hold. `to` where there is none. At 0 the member holds.
  double search(std::size_t m, double to) {
    if (surely_holds(m, 0.0, to)) return to;
    m_ = m;
    floor_ = 1e-25 * to;
    Trace at_0, at_to;
    trace(0.0, at_0);
    trace(to, at_to);
    const double found = within(0.0, at_0, to, at_to, detail::utilisation(design_, m, at_to));
    return found < 0.0 ? to : found;
  }

  double utilisation(std::size_t m, double at) {
    m_ = m;
    Trace t;
    trace(at, t);
    return detail::utilisation(design_, m, t);
  }

 private:
  static constexpr double narrow = 1e-5, exact = 1e-13;  // of the load factor

  void trace(double at, Trace& out) {
    const MemberState s = state(line_, unit_, m_, at, loads_);
    detail::trace(design_, m_, s.start, s.loads, line_.combination, out);
  }

  /// The first crossing between a and b, or -1; a holds, `u_b` is the utilisation at b.
  double within(double a, const Trace& at_a, double b, const Trace& at_b, double u_b) {
    if (b <= floor_) return u_b > 1.0 ? a : -1.0;
    if (b - a <= narrow * b) return u_b > 1.0 ? halved(a, b) : -1.0;
    if (u_b <= 1.0 && (surely_holds(m_, a, b) || bound_between(design_, m_, at_a, at_b) <= 1.0)) return -1.0;
    const double middle = 0.5 * (a + b);
    Trace at_middle;
    trace(middle, at_middle);
    const double u = detail::utilisation(design_, m_, at_middle);
    const double lower = within(a, at_a, middle, at_middle, u);
    if (lower >= 0.0) return lower;
    return within(middle, at_middle, b, at_b, u_b);
  }
  double halved(double a, double b) {
    Trace t;
    while (b - a > exact * b) {
      const double middle = 0.5 * (a + b);
      trace(middle, t);
      (detail::utilisation(design_, m_, t) > 1.0 ? b : a) = middle;
    }
    return a;
  }

  const verify::detail::MemberDesign& design_;
  const Line& line_;
  const Unit& unit_;
  std::size_t m_ = 0;
  double floor_ = 0;
  std::vector<MemberLoad> loads_;
};

}  // namespace baywork::rating::detail
