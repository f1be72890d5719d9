// SPDX-License-Identifier: MIT
// Typing in textbook frames: plane sections, loads given in global axes, and comparison with a printed number.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <string>

#include <doctest/doctest.h>

#include <baywork/frame/frame.hpp>
#include <baywork/frame/frame_loads.hpp>
#include <baywork/frame/member_axes.hpp>
#include <baywork/solve/frame_solver.hpp>

namespace textbook {

/// Half a unit of the last digit of "-1.3522e-3".
inline double half_unit(const std::string& print) {
  const std::size_t power = print.find('e'), point = print.find('.');
  const std::string digits = print.substr(0, power);
  const int exponent = power == std::string::npos ? 0 : std::atoi(print.c_str() + power + 1);
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(digits.size() - point - 1);
  return 0.5 * std::pow(10.0, exponent - decimals);
}

/// Computed rounds to the print (half a unit of its last digit).
inline void printed(const std::string& what, double computed, const std::string& print) {
  INFO(what << ": printed " << print << ", computed " << baywork::text::number(computed, 10));
  CHECK(std::abs(computed - std::strtod(print.c_str(), nullptr)) <= half_unit(print) * (1.0 + 1e-9));
}

/// Computed agrees with a published value that its source itself reached by hand arithmetic, or by another theory, or
/// with a formula: `relative` is the deviation that the caller states and explains.
inline void within(const std::string& what, double computed, double published, double relative) {
  INFO(what << ": published " << baywork::text::number(published, 10) << ", computed "
            << baywork::text::number(computed, 10));
  CHECK(std::abs(computed - published) <= relative * std::abs(published));
}

/// The value is zero against `scale`.
inline void vanishes(const std::string& what, double computed, double scale) {
  INFO(what << ": should vanish, computed " << baywork::text::number(computed, 10));
  CHECK(std::abs(computed) <= 1e-9 * scale);
}

/// A section for plane frames in x-y without shear strain.
inline baywork::FrameSection plane_section(double E, double A, double I) {
  baywork::FrameSection s;
  s.E = s.G = E;
  s.A = A;
  s.Iy = s.Iz = s.J = I;
  return s;
}

/// An area that makes bars of inertia I all but inextensible: N/(EA) is then some 1e-8 of the bending.
inline double stiff_area(double I) { return 1e8 * I; }

inline baywork::Vec3<> local(const baywork::Frame& f, std::size_t member, const baywork::Vec3<>& global) {
  return axes_of(f, f.members[member]).to_local(global);
}
inline double length_of(const baywork::Frame& f, std::size_t member) { return axes_of(f, f.members[member]).length; }

/// A uniform load given in global axes, per metre of the member.
inline void uniform(baywork::FrameLoads& loads, const baywork::Frame& f, std::size_t member, const baywork::Vec3<>& q) {
  loads.line(member, length_of(f, member), local(f, member, q));
}

/// Tension.
inline double pull(const baywork::FrameAnswer& a, std::size_t member) { return a.members[member].end[0]; }

/// The support's force or moment on the frame.
inline double reaction(const baywork::FrameAnswer& a, std::size_t node, baywork::Motion m) {
  for (const baywork::Reaction& r : a.reactions)
    if (r.node == node) return r.value[static_cast<std::size_t>(m)];
  return 0.0;
}

}  // namespace textbook
