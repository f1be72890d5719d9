// SPDX-License-Identifier: MIT
// Limits within which the forces of a member stay, between its ends and in any combination of load cases.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

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
/// Bernstein), and these add up as loads do. Those of y and z lie beside each other: two are dealt with at once.
struct Controls {
  static constexpr std::size_t count = 18;
  std::array<double, count> value;

  Controls() = default;  // with no values yet: zeros would be written over
  explicit Controls(const baywork::detail::Stretch<double>& s) {
    const double L = s.length();
    for (const auto& [component, force] : {std::pair(0U, N), std::pair(1U, Vy), std::pair(2U, Vz)}) {
      const std::array<double, 4> c = s.polynomial(component);
      at(force, 0) = c[0];
      at(force, 1) = c[0] + 0.5 * c[1] * L;
      at(force, 2) = c[0] + (c[1] + c[2] * L) * L;
    }
    value[T] = s.start.T;
    for (const auto& [component, force] : {std::pair(4U, My), std::pair(5U, Mz)}) {
      const std::array<double, 4> c = s.polynomial(component);
      at(force, 0) = c[0];
      at(force, 1) = c[0] + c[1] * L / 3.0;
      at(force, 2) = c[0] + (2.0 * c[1] + c[2] * L) * L / 3.0;
      at(force, 3) = c[0] + (c[1] + (c[2] + c[3] * L) * L) * L;
    }
  }
  /// Of a member without loads along it: forces that act on its start, and where it ends.
  Controls(const std::array<double, 6>& start, double from, double to) {
    for (std::size_t i = 0; i < 3; ++i) {
      at(N, i) = -start[0];
      at(Vy, i) = -start[1];
      at(Vz, i) = -start[2];
    }
    value[T] = -start[3];
    for (std::size_t i = 0; i < 4; ++i) {
      const double x = from + (to - from) * static_cast<double>(i) / 3.0;
      at(My, i) = -start[4] - x * start[2];
      at(Mz, i) = -start[5] + x * start[1];
    }
  }
  /// A multiple of others.
  Controls(double factor, const Controls& c) {
    for (std::size_t i = 0; i < count; ++i) value[i] = factor * c.value[i];
  }
  void add(double factor, const Controls& c) {
    for (std::size_t i = 0; i < count; ++i) value[i] += factor * c.value[i];
  }

  /// Of a part of the stretch, from u to v of its length: less lies between its control values.
  Controls part(double u, double v) const {
    const auto mix = [](double a, double b, double t) { return a + t * (b - a); };
    Controls out;
    for (const Force f : {N, Vy, Vz}) {  // the polar form at (u, u), (u, v), (v, v)
      const double at_u = mix(at(f, 0), at(f, 1), u), then_u = mix(at(f, 1), at(f, 2), u);
      const double at_v = mix(at(f, 0), at(f, 1), v), then_v = mix(at(f, 1), at(f, 2), v);
      out.at(f, 0) = mix(at_u, then_u, u);
      out.at(f, 1) = mix(at_u, then_u, v);
      out.at(f, 2) = mix(at_v, then_v, v);
    }
    out.value[T] = value[T];
    for (const Force f : {My, Mz}) {
      const auto polar = [&](double x, double y, double z) {
        const double a = mix(at(f, 0), at(f, 1), x), b = mix(at(f, 1), at(f, 2), x), c = mix(at(f, 2), at(f, 3), x);
        return mix(mix(a, b, y), mix(b, c, y), z);
      };
      out.at(f, 0) = polar(u, u, u);
      out.at(f, 1) = polar(u, u, v);
      out.at(f, 2) = polar(u, v, v);
      out.at(f, 3) = polar(v, v, v);
    }
    return out;
  }

  /// Takes all forces of the stretch into a range.
  void widen(ForceRange& r) const {
    for (std::size_t i = 0; i < 3; ++i) {
      r.N_least = value[N + i] < r.N_least ? value[N + i] : r.N_least;
      r.N_most = value[N + i] > r.N_most ? value[N + i] : r.N_most;
    }
    ForceRange::raise(r.others.T, value[T]);
    std::array<double, 2> V{r.others.Vy, r.others.Vz}, M{r.others.My, r.others.Mz};
    for (std::size_t i = 0; i < 3; ++i)
      for (std::size_t k = 0; k < 2; ++k) ForceRange::raise(V[k], value[Vy + 2 * i + k]);
    for (std::size_t i = 0; i < 4; ++i)
      for (std::size_t k = 0; k < 2; ++k) ForceRange::raise(M[k], value[My + 2 * i + k]);
    r.others.Vy = V[0];
    r.others.Vz = V[1];
    r.others.My = M[0];
    r.others.Mz = M[1];
  }

  double first_N() const noexcept { return value[N]; }

 private:
  /// Where each force's values begin; N's lie one after the other, the others' every second.
  enum Force : std::size_t { N = 0, T = 3, Vy = 4, Vz = 5, My = 10, Mz = 11 };
  double& at(Force f, std::size_t i) { return value[f + i * (f == N ? 1 : 2)]; }
  double at(Force f, std::size_t i) const { return value[f + i * (f == N ? 1 : 2)]; }
};

}  // namespace baywork::verify::detail
