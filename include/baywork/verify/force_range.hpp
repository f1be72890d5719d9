// SPDX-License-Identifier: MIT
// Limits within which the forces of a member stay, between its ends and in any combination of load cases.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

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
    raise(others.Vy, f.Vy);
    raise(others.Vz, f.Vz);
    raise(others.T, f.T);
    raise(others.My, f.My);
    raise(others.Mz, f.Mz);
  }
  friend struct Controls;
  /// By value, so that it takes two instructions: this is done some hundred thousand times in a proof.
  static void raise(double& most, double v) {
    const double size = std::abs(v);
    most = size > most ? size : most;
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
  /// Of a member without loads along it: forces that act on its start, and where it ends.
  Controls(const std::array<double, 6>& start, double from, double to) {
    for (const std::size_t i : {0U, 1U, 2U}) value[3 * i] = value[3 * i + 1] = value[3 * i + 2] = -start[i];
    value[9] = -start[3];
    for (std::size_t i = 0; i < 4; ++i) {
      const double x = from + (to - from) * static_cast<double>(i) / 3.0;
      value[10 + i] = -start[4] - x * start[2];
      value[14 + i] = -start[5] + x * start[1];
    }
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
    for (std::size_t i = 0; i < 3; ++i) {
      r.N_least = value[i] < r.N_least ? value[i] : r.N_least;
      r.N_most = value[i] > r.N_most ? value[i] : r.N_most;
      ForceRange::raise(r.others.Vy, value[3 + i]);
      ForceRange::raise(r.others.Vz, value[6 + i]);
    }
    ForceRange::raise(r.others.T, value[9]);
    for (std::size_t i = 0; i < 4; ++i) {
      ForceRange::raise(r.others.My, value[10 + i]);
      ForceRange::raise(r.others.Mz, value[14 + i]);
    }
  }
};

}  // namespace baywork::verify::detail
