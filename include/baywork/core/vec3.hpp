// SPDX-License-Identifier: MIT
// Points, directions, forces: three plain numbers, laid out the same whatever the compiler's flags.
#pragma once

#include <cstddef>

#include <baywork/core/scalar.hpp>

namespace baywork {

/// Components along x (span), y (horizontal across), z (up); a right-handed system.
template <Scalar S = double>
struct Vec3 {
  S x = S(0);
  S y = S(0);
  S z = S(0);

  S& operator[](std::size_t i) { return i == 0 ? x : (i == 1 ? y : z); }
  const S& operator[](std::size_t i) const { return i == 0 ? x : (i == 1 ? y : z); }

  Vec3& operator+=(const Vec3& b) {
    x += b.x;
    y += b.y;
    z += b.z;
    return *this;
  }
  Vec3& operator-=(const Vec3& b) {
    x -= b.x;
    y -= b.y;
    z -= b.z;
    return *this;
  }
  friend Vec3 operator+(Vec3 a, const Vec3& b) { return a += b; }
  friend Vec3 operator-(Vec3 a, const Vec3& b) { return a -= b; }
  friend Vec3 operator-(const Vec3& a) { return {S(-a.x), S(-a.y), S(-a.z)}; }
  friend Vec3 operator*(const S& f, const Vec3& a) { return {S(f * a.x), S(f * a.y), S(f * a.z)}; }
  friend Vec3 operator*(const Vec3& a, const S& f) { return f * a; }
};

template <class S>
S dot(const Vec3<S>& a, const Vec3<S>& b) {
  return S(a.x * b.x + a.y * b.y + a.z * b.z);
}
template <class S>
Vec3<S> cross(const Vec3<S>& a, const Vec3<S>& b) {
  return {S(a.y * b.z - a.z * b.y), S(a.z * b.x - a.x * b.z), S(a.x * b.y - a.y * b.x)};
}
template <class S>
S length(const Vec3<S>& a) {
  return root(dot(a, a));
}
/// a / |a|; the caller has made sure that |a| > 0.
template <class S>
Vec3<S> unit(const Vec3<S>& a) {
  return S(S(1) / length(a)) * a;
}
template <class S>
bool is_finite(const Vec3<S>& a) {
  return is_finite(a.x) && is_finite(a.y) && is_finite(a.z);
}

}  // namespace baywork
