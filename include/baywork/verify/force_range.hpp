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
  std::array<double, count> value{};

  Controls() = default;
  explicit Controls(const baywork::detail::Stretch<double>& s) {
    const double L = s.length();
    const auto two = [&](std::size_t component, std::size_t at) {
      const std::array<double, 4> c = s.polynomial(component);
      value[at] = c[0];
      value[at + 1] = c[0] + 0.5 * c[1] * L;
      value[at + 2] = c[0] + (c[1] + c[2] * L) * L;
    };
    const auto three = [&](std::size_t component, std::size_t at) {
      const std::array<double, 4> c = s.polynomial(component);
      value[at] = c[0];
      value[at + 1] = c[0] + c[1] * L / 3.0;
      value[at + 2] = c[0] + (2.0 * c[1] + c[2] * L) * L / 3.0;
      value[at + 3] = c[0] + (c[1] + (c[2] + c[3] * L) * L) * L;
    };
    two(0, 0);
    two(1, 3);
    two(2, 6);
    value[9] = s.start.T;
    three(4, 10);
    three(5, 14);
  }
  void add(double factor, const Controls& c) {
    for (std::size_t i = 0; i < count; ++i) value[i] += factor * c.value[i];
  }

  /// Of a part of the stretch, from u to v of its length: less lies between its control values.
  Controls part(double u, double v) const {
    const auto mix = [](double a, double b, double t) { return a + t * (b - a); };
    Controls out;
    for (const std::size_t i : {0U, 3U, 6U}) {  // the polar form at (u, u), (u, v), (v, v)
      const double at_u = mix(value[i], value[i + 1], u), then_u = mix(value[i + 1], value[i + 2], u);
      const double at_v = mix(value[i], value[i + 1], v), then_v = mix(value[i + 1], value[i + 2], v);
      out.value[i] = mix(at_u, then_u, u);
      out.value[i + 1] = mix(at_u, then_u, v);
      out.value[i + 2] = mix(at_v, then_v, v);
    }
    out.value[9] = value[9];
    for (const std::size_t i : {10U, 14U}) {
      const auto polar = [&](double x, double y, double z) {
        const double a = mix(value[i], value[i + 1], x), b = mix(value[i + 1], value[i + 2], x);
        const double c = mix(value[i + 2], value[i + 3], x);
        return mix(mix(a, b, y), mix(b, c, y), z);
      };
      out.value[i] = polar(u, u, u);
      out.value[i + 1] = polar(u, u, v);
      out.value[i + 2] = polar(u, v, v);
      out.value[i + 3] = polar(v, v, v);
    }
    return out;
  }

  /// Takes all forces of the stretch into a range.
  void widen(ForceRange& r) const {
    r.N_least = smaller(r.N_least, smaller(smaller(value[0], value[1]), value[2]));
    r.N_most = larger(r.N_most, larger(larger(value[0], value[1]), value[2]));
    const auto most = [&](std::size_t from, std::size_t n, double& out) {
      for (std::size_t i = from; i < from + n; ++i) out = larger(out, magnitude(value[i]));
    };
    most(3, 3, r.others.Vy);
    most(6, 3, r.others.Vz);
    most(9, 1, r.others.T);
    most(10, 4, r.others.My);
    most(14, 4, r.others.Mz);
  }
};

}  // namespace baywork::verify::detail
