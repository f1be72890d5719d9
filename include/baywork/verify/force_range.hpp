// SPDX-License-Identifier: MIT
// Limits within which the forces of a member stay, between its ends and in any combination of load cases.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/response/cut_forces.hpp>
#include <baywork/verify/clause_row.hpp>

namespace baywork::verify::detail {

/// Forces that all lie within these limits: N between two values, the others up to their magnitudes.
struct ForceRange {
  double N_least = 0, N_most = 0;
  SectionForces others{};  ///< its N is not used

  ForceRange() = default;
  explicit ForceRange(const SectionForces& f) : N_least(f.N), N_most(f.N) { take_others(f); }
  void take(const SectionForces& f) {
    N_least = smaller(N_least, f.N);
    N_most = larger(N_most, f.N);
    take_others(f);
  }
  void take(const ForceRange& r) {
    N_least = smaller(N_least, r.N_least);
    N_most = larger(N_most, r.N_most);
    take_others(r.others);
  }
  bool crosses_zero() const noexcept { return N_least <= 0.0 && N_most >= 0.0; }

 private:
  void take_others(const SectionForces& f) {
    others.Vy = larger(others.Vy, magnitude(f.Vy));
    others.Vz = larger(others.Vz, magnitude(f.Vz));
    others.T = larger(others.T, magnitude(f.T));
    others.My = larger(others.My, magnitude(f.My));
    others.Mz = larger(others.Mz, magnitude(f.Mz));
  }
};

/// Control values of the six forces along one stretch: three each of N, Vy and Vz, which are of degree two at most, one
/// of T, four each of My and Mz. A polynomial stays between the least and the greatest of its control values (those of
/// Bernstein), and these add up as loads do.
struct Controls {
  static constexpr std::size_t count = 18;
  std::array<double, count> v{};

  Controls() = default;
  explicit Controls(const baywork::detail::Stretch<double>& s) {
    const double L = s.length();
    const auto two = [&](std::size_t component, std::size_t at) {
      const std::array<double, 4> c = s.polynomial(component);
      v[at] = c[0];
      v[at + 1] = c[0] + 0.5 * c[1] * L;
      v[at + 2] = c[0] + (c[1] + c[2] * L) * L;
    };
    const auto three = [&](std::size_t component, std::size_t at) {
      const std::array<double, 4> c = s.polynomial(component);
      v[at] = c[0];
      v[at + 1] = c[0] + c[1] * L / 3.0;
      v[at + 2] = c[0] + (2.0 * c[1] + c[2] * L) * L / 3.0;
      v[at + 3] = c[0] + (c[1] + (c[2] + c[3] * L) * L) * L;
    };
    two(0, 0);
    two(1, 3);
    two(2, 6);
    v[9] = s.start.T;
    three(4, 10);
    three(5, 14);
  }
  void add(double factor, const Controls& c) {
    for (std::size_t i = 0; i < count; ++i) v[i] += factor * c.v[i];
  }

  /// Takes all forces of the stretch into a range.
  void widen(ForceRange& r) const {
    r.N_least = smaller(r.N_least, smaller(smaller(v[0], v[1]), v[2]));
    r.N_most = larger(r.N_most, larger(larger(v[0], v[1]), v[2]));
    const auto most = [&](std::size_t from, std::size_t n, double& out) {
      for (std::size_t i = from; i < from + n; ++i) out = larger(out, magnitude(v[i]));
    };
    most(3, 3, r.others.Vy);
    most(6, 3, r.others.Vz);
    most(9, 1, r.others.T);
    most(10, 4, r.others.My);
    most(14, 4, r.others.Mz);
  }
};

}  // namespace baywork::verify::detail
