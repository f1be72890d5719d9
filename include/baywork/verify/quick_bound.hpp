// SPDX-License-Identifier: MIT
// What the interactions of an aluminium tube are at most, told without a power: most sections need no more.
#pragma once

#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>

#include <baywork/verify/en1999_buckling.hpp>

namespace baywork::verify::detail {

/// At least x^p for x >= 0 and 0 < p < 1, within a fiftieth where x is 1e-6 to 1; infinity from 1 on. Between two
/// powers of two x^p, which is concave, lies below its tangent.
class PowerAtMost {
 public:
  explicit PowerAtMost(double p) {
    const double middle = 0.72, at_middle = std::pow(middle, p);
    slope_ = p * at_middle / middle;
    start_ = at_middle - slope_ * middle;
    for (std::size_t i = 0; i < octaves; ++i) scale_[i] = std::pow(2.0, -p * static_cast<double>(i));
  }
  double operator()(double x) const {
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(x), exponent = bits >> 52U;
    if (exponent > 1022U || exponent + octaves <= 1022U)
      return x < 1.0 ? scale_[octaves - 1] : std::numeric_limits<double>::infinity();
    const double from_half = std::bit_cast<double>((bits & 0x000FFFFFFFFFFFFFU) | 0x3FE0000000000000U);
    return scale_[1022U - exponent] * (start_ + slope_ * from_half);
  }

 private:
  static constexpr std::uint64_t octaves = 24;
  double start_ = 0, slope_ = 0;
  std::array<double, octaves> scale_{};
};

/// Of a round tube with psi = 1.3, two moments taken as their resultant, the axial exponent fixed at 0.8.
class QuickBound {
 public:
  QuickBound() = default;
  explicit QuickBound(const en1999::BarResistance& r) : r_(&r), powers_(&powers()) {
    if (r.kind != ShapeKind::round_tube || r.psi != 1.3 || r.scope != Scope::covered) {
      r_ = nullptr;
      return;
    }
    for (std::size_t s = 0; s < at_.size(); ++s) {
      const double omega = en1999::omega_0(r, static_cast<en1999::Softening>(s)), haz = s == 0 ? 1.0 : r.rho_o_haz;
      at_[s] = {1.0 / omega, 1.0 / (omega * r.N_o_Rd), 1.0 / (omega * r.N_c_Rd), 0.5 * (1.0 - 1e-12) * haz * r.V_z_Rd,
                0.5 * r.V_z_Rd / r.T_Rd};
    }
    by_M_squared_ = 1.0 / (r.M_y_Rd * r.M_y_Rd);
  }

  /// Of 6.2.9 at one section; infinity where shear may lower the strength, or nothing is known.
  double bending_and_axial(const SectionForces& f, en1999::Softening s) const {
    if (r_ == nullptr) return std::numeric_limits<double>::infinity();
    const At& at = at_[static_cast<std::size_t>(s)];
    // V_Ed <= V_Rd/2, V_Rd = haz (1 - T_Ed/(haz T_Rd)) V
    const double half_V = at.half_V - at.half_V_by_T * magnitude(f.T);
    if (!(half_V > 0.0 && f.Vy * f.Vy + f.Vz * f.Vz <= half_V * half_V)) return std::numeric_limits<double>::infinity();
    const double n = magnitude(f.N) * (f.N >= 0.0 ? at.by_N_o : at.by_N_c);
    return n * powers_->of_0_3(n) + moment(f, at);
  }
  /// Of 6.3.3.1 where omega_x is omega_0.
  double beam_column(const SectionForces& f, const en1999::Buckling& b, en1999::Softening s) const {
    if (r_ == nullptr) return std::numeric_limits<double>::infinity();
    const At& at = at_[static_cast<std::size_t>(s)];
    const double n = -f.N * at.by_omega / (smaller(b.kappa_y * b.chi_y, b.kappa_z * b.chi_z) * r_->N_eff_Rd);
    return (n > 0.0 ? powers_->of_0_8(n) : 0.0) + at.by_omega * powers_->of_0_51(squared(f) * by_M_squared_);
  }

 private:
  struct Powers {
    PowerAtMost of_0_3{0.3}, of_0_51{0.51}, of_0_8{0.8};
  };
  static const Powers& powers() {
    static const Powers p;
    return p;
  }
  struct At {
    double by_omega = 0, by_N_o = 0, by_N_c = 0, half_V = 0, half_V_by_T = 0;
  };
  static double squared(const SectionForces& f) { return f.My * f.My + f.Mz * f.Mz; }
  /// m^1.02 = (m²)^0.51.
  double moment(const SectionForces& f, const At& at) const {
    return powers_->of_0_51(squared(f) * by_M_squared_ * at.by_omega * at.by_omega);
  }

  const en1999::BarResistance* r_ = nullptr;
  const Powers* powers_ = nullptr;
  double by_M_squared_ = 0;
  std::array<At, 3> at_{};  ///< by en1999::Softening
};

}  // namespace baywork::verify::detail
