// SPDX-License-Identifier: MIT
// Limits of the forces of one member after the other, in every combination of several cases.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/force_range.hpp>

namespace baywork::verify::detail {

class MemberRanges {
 public:
  /// Of combinations of these cases, one factor each, which must live as long as they are asked for: memory does not
  /// grow with their number.
  void begin(std::span<const Response* const> parts, std::span<const Combination> all) {
    parts_ = parts;
    all_ = all;
    greatest_factor_ = 0;
    for (const Combination& c : all)
      for (const double f : c.factors) greatest_factor_ = larger(greatest_factor_, magnitude(f));
  }

  /// Calls visit(case, factor, its number) for every case that has a part in a combination.
  template <class Visit>
  void each_part(std::size_t combination, Visit visit) const {
    const std::vector<double>& factors = all_[combination].factors;
    for (std::size_t p = 0; p < factors.size(); ++p)
      if (factors[p] != 0.0) visit(*parts_[p], factors[p], p);
  }

  /// Control values of every case on every stretch between places where any case's loads begin, end or act.
  void prepare(std::size_t m) {
    const double length = parts_[0]->analysis().axes(m).length;
    controls_.clear();
    stretches_.clear();
    double from = 0;
    while (from < length * (1.0 - 1e-12)) {
      double to = length;
      for (const Response* part : parts_)
        to = smaller(to, baywork::detail::next_place(part->loads_on(m), from, length));
      for (const Response* part : parts_) {
        const std::array<double, 6>& start = part->answer().members[m].start;
        const MemberLoads<double> loads = part->loads_on(m);
        if (loads.count == 0)
          controls_.emplace_back(start, from, to);
        else
          controls_.emplace_back(baywork::detail::stretch_between(start, loads, from, to));
      }
      stretches_.emplace_back(from, to);
      from = to;
    }
    slack_ = {};
    const double r = rounding * greatest_factor_;
    for (const Controls& c : controls_) {
      ForceRange own;
      c.widen(own);
      slack_.N += r * larger(-own.N_least, own.N_most);
      slack_.Vy += r * own.others.Vy;
      slack_.Vz += r * own.others.Vz;
      slack_.T += r * own.others.T;
      slack_.My += r * own.others.My;
      slack_.Mz += r * own.others.Mz;
    }
  }

  // of the member prepared last

  const std::vector<std::pair<double, double>>& stretches() const noexcept { return stretches_; }
  Controls controls(std::size_t stretch, std::size_t combination) const {
    const std::vector<double>& factors = all_[combination].factors;
    const Controls* of_case = &controls_[stretch * parts_.size()];
    std::size_t p = 0;
    while (p + 1 < factors.size() && factors[p] == 0.0) ++p;
    Controls sum(factors[p], of_case[p]);
    for (++p; p < factors.size(); ++p)
      if (factors[p] != 0.0) sum.add(factors[p], of_case[p]);
    return sum;
  }
  /// All its forces in one combination.
  void take(std::size_t combination, ForceRange& out) const {
    out = {};
    for (std::size_t s = 0; s < stretches_.size(); ++s) {
      const Controls sum = controls(s, combination);
      if (s == 0) out.N_least = out.N_most = sum.first_N();
      sum.widen(out);
    }
    widen(out);
  }
  /// By what rounding may add.
  void widen(ForceRange& r) const {
    r.N_least -= slack_.N;
    r.N_most += slack_.N;
    r.others.Vy += slack_.Vy;
    r.others.Vz += slack_.Vz;
    r.others.T += slack_.T;
    r.others.My += slack_.My;
    r.others.Mz += slack_.Mz;
  }

 private:
  static constexpr double rounding = 1e-12;

  std::span<const Response* const> parts_;
  std::span<const Combination> all_;
  double greatest_factor_ = 0;

  std::vector<std::pair<double, double>> stretches_;
  std::vector<Controls> controls_;  ///< stretch by stretch, of each case
  SectionForces slack_{};
};

}  // namespace baywork::verify::detail
