// SPDX-License-Identifier: MIT
// The load factor at which a solved girder buckles as a whole frame, from its kept factorisation.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include <baywork/verify/stability_forces.hpp>

namespace baywork::verify {

/// alpha_cr of EN 1993-1-1:2005 5.2.1: the loads times `factor` buckle. Infinite where no factor above zero does.
struct CriticalFactor {
  double factor = std::numeric_limits<double>::infinity();
  double error = 0;  ///< of the factor, relative: bound of the last step
  /// The factor that brings some bar to Euler's load of its own length. From there on `factor` is too high for modes in
  /// which bars buckle between their ends; those are the bars' own checks.
  double one_bar = std::numeric_limits<double>::infinity();
  int steps = 0;
};

namespace detail {

/// What axial forces do to a frame that moves, as small as it moves: K u = -f G u, with K the frame's stiffness and G
/// the geometric stiffness of its members. The energy of N in one plane of a member with the turn p of its chord line
/// and the turns s, e of its ends from it (cubic shape) is
///   N/2 integral v'² = N L/2 [p² + (2 s² - s e + 2 e²)/15].
/// Axial bars, and planes in which an end has a spring, take the first part alone.
/// A motion is kept as these p, s, e of all members in both planes (`turns`) with the forces that work on them
/// (`couples`) under which the frame moves so: K u = -B' couples, B u = turns. Then u1' K u2 = -turns1 · couples2.
class GeometricStiffness {
 public:
  /// `forces`: N of all members, in their middles.
  GeometricStiffness(const Analysis& analysis, const std::vector<double>& forces)
      : analysis_(analysis), frame_(analysis.model().frame) {
    const std::size_t n = frame_.members.size();
    double most = 0;
    for (const double N : forces) most = larger(most, magnitude(N));
    for (std::size_t i = 0; i < n; ++i) {
      const bool rounding = magnitude(forces[i]) < 1e-9 * most;  // the solver's tolerance is 1e-10
      const double N = rounding ? 0.0 : forces[i], L = analysis_.axes(i).length;
      const Member& m = frame_.members[i];
      const bool beam = m.kind == MemberKind::beam;
      const auto rigid = [](double k) { return is_infinite(k); };
      const bool z = beam && rigid(m.start.about_z) && rigid(m.end.about_z),
                 y = beam && rigid(m.start.about_y) && rigid(m.end.about_y);
      if (N < 0.0 && beam) {
        const double EI = m.section.E * smaller(m.section.Iy, m.section.Iz);
        one_bar_ = smaller(one_bar_, pi_v<double> * pi_v<double> * EI / (L * L) / -N);
      }
      NL_.push_back(N * L);
      bends_.push_back({z, y});
    }
  }
  std::size_t size() const noexcept { return 6 * NL_.size(); }
  bool any_push() const {
    for (const double n : NL_)
      if (n < 0.0) return true;
    return false;
  }

  /// Factor at which some beam reaches Euler's load of its own length.
  double one_bar() const noexcept { return one_bar_; }

  /// Forces of the turns.
  void forces(const std::vector<double>& turns, std::vector<double>& out) const {
    out.resize(turns.size());
    for (std::size_t i = 0; i < NL_.size(); ++i)
      for (std::size_t plane = 0; plane < 2; ++plane) {
        const std::size_t k = 6 * i + 3 * plane;
        const double n = NL_[i], b = bends_[i][plane] ? n / 30.0 : 0.0;
        out[k] = n * turns[k];
        out[k + 1] = b * (4.0 * turns[k + 1] - turns[k + 2]);
        out[k + 2] = b * (4.0 * turns[k + 2] - turns[k + 1]);
      }
  }

  /// Turns of the frame under the negative of these forces.
  void turns(const std::vector<double>& couples, std::vector<double>& out) {
    loads_.on_nodes.resize(frame_.nodes.size());  // on them, not on members: whose loads cost a solver far more
    for (std::size_t n = 0; n < loads_.on_nodes.size(); ++n) loads_.on_nodes[n] = {n, {}, {}};
    for (std::size_t i = 0; i < NL_.size(); ++i) {
      const Member& m = frame_.members[i];
      const MemberAxes<>& axes = analysis_.axes(i);
      const double* z = &couples[6 * i];
      const double* y = z + 3;
      // p = (v end - v start)/L about z, -(w end - w start)/L about y; s and e are turns less p
      const double Fy = -(z[0] - z[1] - z[2]) / axes.length, Fz = (y[0] - y[1] - y[2]) / axes.length;
      const Vec3<> force = axes.to_global({0.0, Fy, Fz});
      NodeLoad& from = loads_.on_nodes[m.from];
      NodeLoad& to = loads_.on_nodes[m.to];
      from.force -= force;
      from.couple -= cross(m.start.offset, force) + axes.to_global({0.0, y[1], z[1]});
      to.force += force;
      to.couple += cross(m.end.offset, force) - axes.to_global({0.0, y[2], z[2]});
    }
    analysis_.solver().solve(loads_, answer_, space_);
    out.assign(size(), 0.0);
    for (std::size_t i = 0; i < NL_.size(); ++i) {
      const Member& m = frame_.members[i];
      const MemberAxes<>& axes = analysis_.axes(i);
      const auto end = [&](std::size_t node, const Vec3<>& arm) {
        return axes.to_local(answer_.displacement(node) + cross(answer_.rotation(node), arm));
      };
      const Vec3<> d = (1.0 / axes.length) * (end(m.to, m.end.offset) - end(m.from, m.start.offset));
      double* t = &out[6 * i];
      t[0] = d.y;
      t[3] = -d.z;
      const std::array<double, 6>& modes = answer_.members[i].modes;
      if (bends_[i][0]) t[1] = modes[2], t[2] = modes[3];
      if (bends_[i][1]) t[4] = modes[4], t[5] = modes[5];
    }
  }

 private:
  const Analysis& analysis_;
  const Frame& frame_;
  double one_bar_ = std::numeric_limits<double>::infinity();
  std::vector<double> NL_;
  std::vector<std::array<bool, 2>> bends_;  ///< about z, about y
  FrameLoads loads_;
  FrameAnswer answer_;
  SolveWorkspace space_;
};

/// Greatest eigenvalue of a symmetric tridiagonal matrix, and the last component of its unit vector.
struct TopOfTridiagonal {
  double value = 0, last = 0;
};
inline TopOfTridiagonal top_of_tridiagonal(const std::vector<double>& a, const std::vector<double>& b) {
  const std::size_t n = a.size();
  double low = a[0], high = a[0];
  for (std::size_t i = 0; i < n; ++i) {
    const double r = (i > 0 ? magnitude(b[i - 1]) : 0.0) + (i + 1 < n ? magnitude(b[i]) : 0.0);
    low = smaller(low, a[i] - r);
    high = larger(high, a[i] + r);
  }
  // below the greatest eigenvalue some pivot of (x - T) is not positive
  const auto above_all = [&](double x) {
    double d = 1.0;
    for (std::size_t i = 0; i < n; ++i) {
      d = x - a[i] - (i > 0 ? b[i - 1] * b[i - 1] / d : 0.0);
      if (!(d > 0.0)) return false;
    }
    return true;
  };
  for (int k = 0; k < 200 && high - low > 1e-15 * larger(magnitude(low), magnitude(high)); ++k) {
    const double x = 0.5 * (low + high);
    (above_all(x) ? high : low) = x;
  }
  // components by the pivots from above: y[i+1] = d[i] y[i]/b[i]; signs do not matter
  TopOfTridiagonal out{high, 1.0};
  double d = high - a[0], y = 1.0, sum = 1.0;
  for (std::size_t i = 0; i + 1 < n; ++i) {
    y *= b[i] != 0.0 ? d / b[i] : 0.0;
    sum += y * y;
    d = high - a[i + 1] - (d != 0.0 ? b[i] * b[i] / d : 0.0);
  }
  out.last = magnitude(y) / std::sqrt(sum);
  return out;
}

}  // namespace detail

/// Least factor above zero by which a response's loads buckle its frame, members' forces N growing with them and
/// small bending before buckling left out. Solves K u = -f G u by the method of Lanczos in the inner product u' K u,
/// every step one solution on the kept factorisation, all steps kept orthogonal (C. Lanczos 1950; B. N. Parlett, The
/// Symmetric Eigenvalue Problem, 13 and 15, values from memory). The error is Parlett's bound of the step. Every bar
/// bends as one cubic, which is true to 1.5 % below `one_bar`. Tested against a dense solver with textbook matrices.
/// `forces` are N of all members of the frame, in their middles.
inline CriticalFactor critical_factor(const Analysis& analysis, const std::vector<double>& forces,
                                      double tolerance = 1e-6) {
  require::positive(tolerance, "critical load factor", "tolerance");
  detail::GeometricStiffness g(analysis, forces);
  CriticalFactor out;
  out.one_bar = g.one_bar();
  if (!g.any_push()) return out;
  struct Wave {
    std::vector<double> turns, couples;
  };
  const auto product = [](const Wave& u, const Wave& v) {  // six sums side by side: one would wait for itself
    std::array<double, 6> sums{};
    for (std::size_t i = 0; i < u.turns.size(); i += 6)
      for (std::size_t k = 0; k < 6; ++k) sums[k] -= u.turns[i + k] * v.couples[i + k];
    return sums[0] + sums[1] + sums[2] + sums[3] + sums[4] + sums[5];
  };
  const auto add = [](Wave& to, double f, const Wave& u) {
    for (std::size_t i = 0; i < to.turns.size(); ++i) to.turns[i] += f * u.turns[i], to.couples[i] += f * u.couples[i];
  };
  const auto scale = [](Wave& u, double f) {
    for (double& x : u.turns) x *= f;
    for (double& x : u.couples) x *= f;
  };
  Wave next;
  next.couples.resize(g.size());
  unsigned long long seed = 88172645463325252ULL;  // of Marsaglia's xorshift: any start that no symmetry is blind to
  for (double& x : next.couples) {
    seed ^= seed << 13;
    seed ^= seed >> 7;
    seed ^= seed << 17;
    x = static_cast<double>(seed >> 11) / 9007199254740992.0 - 0.5;
  }
  g.turns(next.couples, next.turns);
  // once through G: what G does not see is of no use
  g.forces(next.turns, next.couples);
  g.turns(next.couples, next.turns);
  double size = std::sqrt(larger(product(next, next), 0.0));
  if (!(size > 0.0)) return out;
  scale(next, 1.0 / size);

  std::vector<Wave> basis;
  std::vector<double> a, b;
  for (out.steps = 1; out.steps <= 200; ++out.steps) {
    basis.push_back(next);
    g.forces(basis.back().turns, next.couples);
    g.turns(next.couples, next.turns);
    a.push_back(product(basis.back(), next));
    for (int twice = 0; twice < 2; ++twice)
      for (const Wave& q : basis) add(next, -product(q, next), q);
    size = std::sqrt(larger(product(next, next), 0.0));
    const detail::TopOfTridiagonal top = detail::top_of_tridiagonal(a, b);
    if (top.value > 0.0) {
      out.factor = 1.0 / top.value;
      out.error = size * top.last / top.value;
    }
    const bool all = size <= 1e-13 * (magnitude(top.value) + magnitude(a.back()));
    if ((top.value > 0.0 && out.error < tolerance && out.steps > 3) || all) return out;
    b.push_back(size);
    scale(next, 1.0 / size);
  }
  fail<NotConverged>("critical load factor", "it is known to " + text::number(out.error) + " after 200 steps",
                     "a tolerance of " + text::number(tolerance) + " was asked for");
}

inline CriticalFactor critical_factor(const Response& response, double tolerance = 1e-6) {
  std::vector<double> forces;
  for (std::size_t i = 0; i < response.model().frame.members.size(); ++i)
    forces.push_back(detail::axial_force(response, i));
  return critical_factor(response.analysis(), forces, tolerance);
}

}  // namespace baywork::verify
