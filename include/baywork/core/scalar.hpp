// SPDX-License-Identifier: MIT
// Which numbers the library computes with: double, long double, or a scalar that carries derivatives.
#pragma once

#include <bit>
#include <cmath>
#include <concepts>
#include <cstdint>
#include <limits>
#include <type_traits>

namespace baywork {

/// A number that stands for a plain one and may carry more (derivatives): `x.value()` is the plain part.
template <class S>
concept CarriesValue = !std::is_arithmetic_v<S> && requires(const S& x) { x.value(); };

/// What every template argument named S must be.
template <class S>
concept Scalar = std::floating_point<S> || CarriesValue<S>;

/// The plain number behind x, for comparisons, messages and printing.
template <class T>
constexpr double value_of(const T& x) {
  if constexpr (std::is_arithmetic_v<T>)
    return static_cast<double>(x);
  else
    return value_of(x.value());
}

namespace detail {
/// The bits of a double. Some standard libraries of C++20 compilers do not have bit_cast yet; the compilers do.
constexpr std::uint64_t bits_of(double x) {
#ifdef __cpp_lib_bit_cast
  return std::bit_cast<std::uint64_t>(x);
#else
  return __builtin_bit_cast(std::uint64_t, x);
#endif
}
}  // namespace detail

/// False for NaN and infinities. Looks at the bits, so that it also holds under relaxed floating-point flags.
template <class T>
constexpr bool is_finite(const T& x) {
  constexpr std::uint64_t exponent = 0x7FF0'0000'0000'0000ULL;
  return (detail::bits_of(value_of(x)) & exponent) != exponent;
}

/// True for +infinity alone (an infinite shear area or joint stiffness means "rigid"); also bitwise.
template <class T>
constexpr bool is_infinite(const T& x) {
  return detail::bits_of(value_of(x)) == 0x7FF0'0000'0000'0000ULL;
}

/// +infinity as a plain number: "rigid" for stiffnesses and shear areas.
inline constexpr double rigid_stiffness = std::numeric_limits<double>::infinity();

namespace detail {
template <class A, class B>
struct Common {
  using type = std::common_type_t<A, B>;
};
template <CarriesValue A, class B>
struct Common<A, B> {
  using type = A;
};
template <class A, CarriesValue B>
  requires(!CarriesValue<A>)
struct Common<A, B> {
  using type = B;
};
template <class... T>
struct CommonOf;
template <class A>
struct CommonOf<A> {
  using type = std::conditional_t<std::is_integral_v<A>, double, A>;
};
template <class A, class B, class... T>
struct CommonOf<A, B, T...> : CommonOf<typename Common<A, B>::type, T...> {};
}  // namespace detail

/// The scalar that holds all of T...: a derivative-carrying one where there is one, never an integer.
template <class... T>
using common_scalar_t = typename detail::CommonOf<std::remove_cvref_t<T>...>::type;

/// π to the digits of the scalar.
template <class S>
inline const S pi_v = [] {
  constexpr long double pi = 3.14159265358979323846264338327950288L;
  if constexpr (std::floating_point<S>)
    return static_cast<S>(pi);
  else
    return S(static_cast<double>(pi));
}();

/// |x| and comparisons by value that work for every scalar (and are not caught by macros named min or max).
template <class S>
S magnitude(const S& x) {
  return value_of(x) < 0.0 ? S(-x) : x;
}
template <class S>
const S& larger(const S& a, const S& b) {
  return value_of(a) < value_of(b) ? b : a;
}
template <class S>
const S& smaller(const S& a, const S& b) {
  return value_of(b) < value_of(a) ? b : a;
}
template <class S>
S root(const S& x) {
  using std::sqrt;
  return S(sqrt(x));
}

}  // namespace baywork
