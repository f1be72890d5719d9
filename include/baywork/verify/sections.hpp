// SPDX-License-Identifier: MIT
// The sections of a member at which its checks can govern: found exactly, not sampled.
#pragma once

#include <array>
#include <cstddef>
#include <span>

#include <baywork/response/cut_forces.hpp>
#include <baywork/response/detail/polynomial.hpp>
#include <baywork/verify/clause_row.hpp>

namespace baywork::verify {

/// Weights under which two moments (and two shear forces) become one: m = (My w_y)² + (Mz w_z)². 1 / resistance;
/// equal ones for a round section give its resultant.
struct Weights {
  double My = 1, Mz = 1, Vy = 1, Vz = 1;
};
template <class BarResistance>
Weights weights_of(const BarResistance& r) {
  const auto w = [](double R) { return R > 0.0 ? 1.0 / R : 0.0; };
  return {w(r.M_y_Rd), w(r.M_z_Rd), w(r.V_y_Rd), w(r.V_z_Rd)};
}

namespace detail {

/// Coefficients of (p² w_p² + q² w_q²)' / 2 = w_p² p p' + w_q² q q'; p and q of degree 3 at most.
inline std::array<double, 6> slope_of_squares(const std::array<double, 4>& p, double w_p,
                                              const std::array<double, 4>& q, double w_q) {
  std::array<double, 6> out{};
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 1; j < 4; ++j)
      out[i + j - 1] += static_cast<double>(j) * (w_p * w_p * p[i] * p[j] + w_q * w_q * q[i] * q[j]);
  return out;
}

}  // namespace detail

/// Sections strictly between two places along a member [m].
struct Skipped {
  double from = 0, to = 0;

  bool any() const noexcept { return from < to; }
  bool holds(double x) const noexcept { return from < x && x < to; }
};

/// Calls visit(x, forces) at both ends, at both sides of every place where loads begin, end or act, at `marks` (places
/// where the bar's resistance changes), and on loaded stretches wherever N, Vy, Vz, My, Mz or the weighted sums of
/// their squares turn. Between these no axial force, moment or shear force is greater, and no resultant of a round
/// section. An interaction of several forces can be greater in between only on loaded stretches: there eighths are
/// visited as well. A load just at an end acts on the joint there: no section of the bar lies between the two.
/// Allocates nothing.
///
/// `skip(stretch)` is asked after the ends and marks of every loaded stretch, and names a part of it, no more, in which
/// no others need be visited.
template <class Visit, class Skip>
void for_each_section(const std::array<double, 6>& start, const MemberLoads<double>& loads, double length,
                      const Weights& w, std::span<const double> marks, Visit visit, Skip skip) {
  using baywork::detail::roots_between;
  baywork::detail::for_each_stretch(start, loads, length, [&](const baywork::detail::Stretch<double>& s) {
    std::array<std::array<double, 4>, 6> c{};
    for (std::size_t i = 0; i < 6; ++i) c[i] = s.polynomial(i);
    const auto at = [&](double t) {
      const auto v = [&](std::size_t i) { return baywork::detail::evaluate(c[i], t); };
      visit(s.from + t, SectionForces{v(0), v(1), v(2), v(3), v(4), v(5)});
    };
    at(0.0);
    at(s.length());
    for (const double x : marks)
      if (x > s.from && x < s.to) at(x - s.from);
    const auto none = [](const Vec3<>& v) { return v.x == 0.0 && v.y == 0.0 && v.z == 0.0; };
    if (none(s.load) && none(s.load_slope)) return;
    const Skipped skipped = skip(s);
    if (skipped.from <= s.from && skipped.to >= s.to) return;
    const auto at_roots = [&](const auto& slope) {
      const auto roots = roots_between(slope, 0.0, s.length());
      for (std::size_t i = 0; i < roots.count; ++i)
        if (!skipped.holds(s.from + roots.at[i])) at(roots.at[i]);
    };
    const auto of_squares = [&](std::size_t p, double w_p, std::size_t q, double w_q) {
      using baywork::detail::keeps_sign;
      const std::array<double, 6> slope = detail::slope_of_squares(c[p], w_p, c[q], w_q);
      if (!skipped.any() || !keeps_sign(slope, 0.0, skipped.from - s.from) ||
          !keeps_sign(slope, skipped.to - s.from, s.length()))
        at_roots(slope);
    };
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{4}, std::size_t{5}}) {
      const std::array<double, 3> slope{c[i][1], 2.0 * c[i][2], 3.0 * c[i][3]};
      if (slope[1] != 0.0 || slope[2] != 0.0) at_roots(slope);
    }
    of_squares(4, w.My, 5, w.Mz);
    of_squares(1, w.Vy, 2, w.Vz);
    for (int i = 1; i < 8; ++i) {
      const double t = s.length() * i / 8.0;
      if (!skipped.holds(s.from + t)) at(t);
    }
  });
}
}  // namespace baywork::verify
