// SPDX-License-Identifier: MIT
// A number as the unevaluated sum of two: about twice the digits, for residuals.
#pragma once

#include <cmath>
#include <type_traits>
#include <utility>

#include <baywork/core/scalar.hpp>

#if defined(__FAST_MATH__)
#error "baywork: -ffast-math reorders sums and would break the error certificate of every solve; compile this unit without fast-math"
#endif

namespace baywork::detail {

/// hi + lo with |lo| <= ulp(hi)/2. Sums after Knuth's two-sum, products through fma, quotient and root by one
/// Newton correction. Sources: D. E. Knuth, The Art of Computer Programming vol. 2, 4.2.2; T. J. Dekker, A
/// floating-point technique for extending the available precision, Numer. Math. 18 (1971) 224-242.
template <std::floating_point F>
struct Twofold {
  F hi = F(0), lo = F(0);

  constexpr Twofold() = default;
  constexpr Twofold(F h) : hi(h) {}
  constexpr Twofold(F h, F l) : hi(h), lo(l) {}
  template <std::integral Int>
  constexpr Twofold(Int i) : hi(static_cast<F>(i)) {}

  constexpr F value() const { return hi + lo; }

  static Twofold sum(F a, F b) {
    const F s = a + b;
    const F t = s - a;
    return {s, (a - (s - t)) + (b - t)};
  }
  static Twofold product(F a, F b) {
    const F p = a * b;
    return {p, std::fma(a, b, -p)};
  }
  static Twofold tidy(F h, F l) {
    const F s = h + l;
    return {s, l - (s - h)};
  }

  friend Twofold operator-(const Twofold& a) { return {-a.hi, -a.lo}; }
  friend Twofold operator+(const Twofold& a, const Twofold& b) {
    const Twofold h = sum(a.hi, b.hi);
    const Twofold l = sum(a.lo, b.lo);
    const Twofold t = tidy(h.hi, h.lo + l.hi);
    return tidy(t.hi, t.lo + l.lo);
  }
  friend Twofold operator-(const Twofold& a, const Twofold& b) { return a + (-b); }
  friend Twofold operator*(const Twofold& a, const Twofold& b) {
    const Twofold p = product(a.hi, b.hi);
    return tidy(p.hi, p.lo + (a.hi * b.lo + a.lo * b.hi));
  }
  friend Twofold operator/(const Twofold& a, const Twofold& b) {
    const F q = a.hi / b.hi;
    const Twofold rest = a - Twofold(q) * b;
    const F q2 = rest.hi / b.hi;
    const Twofold rest2 = rest - Twofold(q2) * b;
    return tidy(q, q2) + Twofold(rest2.hi / b.hi);
  }
  Twofold& operator+=(const Twofold& b) { return *this = *this + b; }
  Twofold& operator-=(const Twofold& b) { return *this = *this - b; }

  friend Twofold sqrt(const Twofold& a) {
    if (!(a.hi > F(0))) return Twofold(F(0));
    const F r = std::sqrt(a.hi);
    const Twofold rest = a - product(r, r);
    return tidy(r, rest.hi / (r + r));
  }
  friend Twofold sin(const Twofold& a) { return sine_and_versine(a).first; }
  friend Twofold cos(const Twofold& a) { return Twofold(F(1)) - sine_and_versine(a).second; }

 private:
  /// sin a and 1 - cos a: power series at a/2ⁿ, then n times sin 2t = 2 sin t cos t and 1 - cos 2t = 2 (1 - cos t)(1 + cos t).
  static std::pair<Twofold, Twofold> sine_and_versine(const Twofold& a) {
    int halvings = 0;
    F scale = F(1);
    for (; std::abs(a.hi * scale) > F(1) / F(64); scale /= F(2)) ++halvings;
    const Twofold t = a * Twofold(scale);
    Twofold sine, versine, term = t;  // term = tᵏ/k!
    for (int k = 1; k < 22; ++k) {
      Twofold& sum = k % 2 == 1 ? sine : versine;
      const bool minus = k % 4 == 3 || k % 4 == 0;
      sum += minus ? -term : term;
      term = term * t / Twofold(k + 1);
    }
    for (int i = 0; i < halvings; ++i) {
      sine = Twofold(2) * sine * (Twofold(1) - versine);
      versine = Twofold(2) * versine * (Twofold(2) - versine);
    }
    return {sine, versine};
  }
};

/// The number type residuals are summed in: twofold where the scalar is a plain number, else the scalar itself.
template <class S>
struct Accurate {
  using type = S;
};
template <std::floating_point F>
struct Accurate<F> {
  using type = Twofold<F>;
};
template <class S>
using accurate_t = typename Accurate<S>::type;

/// Rounds to the scalar.
template <class S>
S rounded(const accurate_t<S>& x) {
  if constexpr (std::floating_point<S>)
    return x.hi + x.lo;
  else
    return x;
}

/// Unit roundoff of the scalar's plain part.
template <class S>
double unit_roundoff() {
  if constexpr (std::floating_point<S>)
    return static_cast<double>(std::numeric_limits<S>::epsilon()) / 2.0;
  else
    return std::numeric_limits<double>::epsilon() / 2.0;
}

}  // namespace baywork::detail
