// SPDX-License-Identifier: MIT
// Girders that are their own mirror images, joined half by half: the kernels against Eigen's dense matrices, and whole
// girders against the same ones joined station by station, wherever the mirror stands.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <random>
#include <vector>

#include <doctest/doctest.h>

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <baywork/frame.hpp>
#include <baywork/girder.hpp>
#include <baywork/solve.hpp>
#include <baywork/solve/detail/chain_engine.hpp>

#include "support/kernel_cases.hpp"
#include "support/retold_frames.hpp"
#include "support/tubes.hpp"

using namespace baywork;
using kernel_cases::for_each_set;
using kernel_cases::index;
using kernel_cases::largest;
using kernel_cases::Matrix;
using Size = std::size_t;

namespace {

constexpr Size half = detail::joint_half;

/// Both halves of a matrix as the kernels hold them.
std::vector<double> in_pairs(const std::array<Matrix, 2>& m) {
  std::vector<double> v(static_cast<Size>(2 * m[0].size()));
  for (Size h = 0; h < 2; ++h)
    for (Eigen::Index i = 0; i < m[h].size(); ++i) v[2 * static_cast<Size>(i) + h] = m[h].data()[i];
  return v;
}
Matrix out_of_pairs(const std::vector<double>& v, Size h, Size rows, Size columns) {
  return Matrix::NullaryExpr(index(rows), index(columns), [&](Eigen::Index i, Eigen::Index j) {
    return v[2 * static_cast<Size>(i + j * index(rows)) + h];
  });
}
Matrix lower(const Matrix& m) { return m.triangularView<Eigen::Lower>(); }

BoxGirder box(Size bays) {
  BoxGirder b{.bays = bays, .bay_length = 0.5, .width = 0.4, .depth = 0.5, .chord = chord_bar()};
  const Face side = braced(alternating, brace_bar(), cross_bar());
  b.faces = {.top = open(cross_bar()), .bottom = open(cross_bar()), .left = side, .right = side};
  b.supports = simply_supported();
  return b;
}

detail::ChainEngine<double> engine_of(const detail::PreparedFrame<double>& p, bool fast, Size longest) {
  detail::ChainLayout layout = detail::ChainFinder<double>(p.frame).find();
  REQUIRE(layout.why_not.empty());
  detail::ChainEngine<double> engine(p, layout);
  REQUIRE(engine.factor(p, fast, longest, one_after_the_other));
  return engine;
}
/// Motions under the same random forces.
std::vector<double> motions_of(const detail::ChainEngine<double>& e, const detail::PreparedFrame<double>& p) {
  using A = detail::ChainEngine<double>::A;
  std::mt19937 g(11);
  std::uniform_real_distribution<double> u(-1.0, 1.0);
  std::vector<A> force(6 * p.frame.nodes.size(), A(0.0)), motion(force);
  for (Size i = 0; i < force.size(); ++i)
    if (const double f = u(g); p.freedoms.number[i] >= 0) force[i] = A(f);
  std::vector<double> work(e.work_size()), out;
  e.solve(p, force, motion, work);
  for (const A& m : motion) out.push_back(value_of(m));
  return out;
}

/// A frame turned about; its supports hold what they held where axes become axes, else all displacements.
Frame turned(const physics::Turn& t, const Frame& frame) {
  Frame out = t.of(frame);
  for (Size i = 0; i < out.supports.size(); ++i)
    for (Size k = 0; k < 6; ++k) {
      const Vec3<> axis = t({k % 3 == 0 ? 1.0 : 0.0, k % 3 == 1 ? 1.0 : 0.0, k % 3 == 2 ? 1.0 : 0.0});
      for (Size j = 0; j < 3; ++j)
        if (std::abs(axis[j]) == 1.0) out.supports[i].motion[j + k / 3 * 3] = frame.supports[i].motion[k];
      if (k < 3 && std::abs(axis.x * axis.y) > 0) out.supports[i].motion[k].kind = BasicRestraint<double>::Kind::fixed;
    }
  return out;
}

/// Joined in halves or not, and the same motions as joined station by station; in both forms.
void check_girder(const Frame& frame, bool in_halves) {
  const detail::PreparedFrame<double> p(frame);
  const std::vector<double> plain = motions_of(engine_of(p, true, 1), p);
  double size = 0;
  for (const double u : plain) size = (std::max)(size, std::abs(u));
  for (const bool fast : {true, false}) {
    CAPTURE(fast);
    const detail::ChainEngine<double> joined = engine_of(p, fast, fast ? 64 : 8);
    CHECK(joined.runs().in_halves() == in_halves);
    if (in_halves) CHECK(joined.runs().stations() < joined.layout().stations.size());
    const std::vector<double> u = motions_of(joined, p);
    double off = 0;
    for (Size i = 0; i < u.size(); ++i) off = (std::max)(off, std::abs(u[i] - plain[i]));
    CHECK(off <= 1e-10 * size);  // forty bays lose about 1e-11 in the plain form, too: 3e-18 n⁴
  }
}

}  // namespace

TEST_CASE("halves: two segments joined at a station, against dense elimination") {
  for (int turn = 0; turn < 5; ++turn) {
    std::array<Matrix, 2> left, right, own;
    for (Size h = 0; h < 2; ++h) {
      left[h] = kernel_cases::positive_definite(2 * half, 1e3);
      right[h] = kernel_cases::positive_definite(2 * half, 1e3);
      own[h] = kernel_cases::positive_definite(half, 10.0);
    }
    const std::array<Matrix, 2> l{lower(left[0]), lower(left[1])}, r{lower(right[0]), lower(right[1])},
        o{lower(own[0]), lower(own[1])};
    for_each_set([&](const detail::Kernels& k) {
      std::vector<double> given(2 * half), swept(6 * half * half), turned(4 * half * half), joined(8 * half * half);
      const double ratio = k.join(in_pairs(l).data(), in_pairs(r).data(), in_pairs(o).data(), given.data(), swept.data(),
                                  turned.data(), joined.data());
      const Eigen::Index n = index(half);
      double least = 1.0;
      for (Size h = 0; h < 2; ++h) {
        const Matrix middle = left[h].bottomRightCorner(n, n) + right[h].topLeftCorner(n, n) + own[h];
        Matrix c(2 * n, n), ends = Matrix::Zero(2 * n, 2 * n);
        c << left[h].topRightCorner(n, n), right[h].bottomLeftCorner(n, n);
        ends.topLeftCorner(n, n) = left[h].topLeftCorner(n, n);
        ends.bottomRightCorner(n, n) = right[h].bottomRightCorner(n, n);
        const Matrix inverse = middle.llt().solve(Matrix::Identity(n, n)), cp = c * inverse;
        const double small = 1e3 * 1e3 * 2e-16;
        const Matrix got = out_of_pairs(swept, h, 3 * half, half);
        CHECK(largest(got.topRows(n) - inverse) <= small * largest(inverse));
        CHECK(largest(got.bottomRows(2 * n) - cp) <= small * largest(cp));
        CHECK(out_of_pairs(turned, h, half, 2 * half) == got.bottomRows(2 * n).transpose());
        CHECK(largest(lower(out_of_pairs(joined, h, 2 * half, 2 * half)) - lower(ends - cp * c.transpose())) <= small);
        for (Eigen::Index i = 0; i < n; ++i)
          CHECK(std::abs(given[2 * static_cast<Size>(i) + h] - middle(i, i)) <= 1e-15 * middle(i, i));
        const Matrix factor = middle.llt().matrixL();
        for (Eigen::Index i = 0; i < n; ++i) least = (std::min)(least, factor(i, i) * factor(i, i) / middle(i, i));
      }
      CHECK(std::abs(ratio - least) <= 1e-10 * least);

      for (Size count = 1; count <= 6; ++count) {
        const Matrix x = kernel_cases::random(6 * half, count);  // of each vector: first, middle, last, both halves
        Matrix there = x, back = x;
        const auto places = [&](Matrix& m) {
          std::array<std::vector<double*>, 3> at;
          for (Size v = 0; v < count; ++v)
            for (Size s = 0; s < 3; ++s) at[s].push_back(m.col(index(v)).data() + 2 * half * s);
          return at;
        };
        auto at = places(there);
        k.through_joint(swept.data(), count, at[1].data(), at[0].data(), at[2].data());
        at = places(back);
        const std::array<std::vector<const double*>, 2> ends{std::vector<const double*>(at[0].begin(), at[0].end()),
                                                             std::vector<const double*>(at[2].begin(), at[2].end())};
        k.back_through_joint(turned.data(), count, at[1].data(), ends[0].data(), ends[1].data());
        for (Size v = 0; v < count; ++v)
          for (Size h = 0; h < 2; ++h) {
            const auto part = [&](const Matrix& m, Size s) {
              return Eigen::VectorXd(Eigen::VectorXd::NullaryExpr(index(half), [&](Eigen::Index i) {
                return m(index(2 * half * s + h) + 2 * i, index(v));
              }));
            };
            const Matrix got = out_of_pairs(swept, h, 3 * half, half);
            const Matrix p = got.topRows(n), c1 = got.middleRows(n, n), c2 = got.bottomRows(n);
            const double small = 1e-13 * (1.0 + largest(got));
            CHECK(largest(part(there, 1) - p * part(x, 1)) <= small);
            CHECK(largest(part(there, 0) - (part(x, 0) - c1 * part(x, 1))) <= small);
            CHECK(largest(part(there, 2) - (part(x, 2) - c2 * part(x, 1))) <= small);
            CHECK(largest(part(back, 1) - (part(x, 1) - c1.transpose() * part(x, 0) - c2.transpose() * part(x, 2))) <= small);
            CHECK(part(back, 0) == part(x, 0));
            CHECK(part(back, 2) == part(x, 2));
          }
      }
    });
  }
}

TEST_CASE("halves: a joint that is not positive definite is said") {
  for (const double bad : {-1.0, 0.0, std::numeric_limits<double>::quiet_NaN()})
    for (Size at = 0; at < 2 * half; at += 5)
      for_each_set([&](const detail::Kernels& k) {
        CAPTURE(bad);
        CAPTURE(at);
        std::array<Matrix, 2> segment, own;
        for (Size h = 0; h < 2; ++h) segment[h] = Matrix::Zero(2 * index(half), 2 * index(half)), own[h] = Matrix::Identity(index(half), index(half));
        own[at % 2](index(at / 2), index(at / 2)) = bad;
        std::vector<double> given(2 * half), swept(6 * half * half), turned(4 * half * half), joined(8 * half * half);
        const std::vector<double> s = in_pairs(segment);
        CHECK_FALSE(k.join(s.data(), s.data(), in_pairs(own).data(), given.data(), swept.data(), turned.data(), joined.data()) > 0.0);
      });
}

TEST_CASE("halves: motions to halves and back, one by one and side by side") {
  for (const auto& joints : {std::array<Size, 4>{0, 1, 3, 2}, std::array<Size, 4>{0, 2, 1, 3}})
    for_each_set([&](const detail::Kernels& k) {
      detail::JointMirror<double> m;
      for (Size p = 0; p < 2; ++p)
        m.one[p] = static_cast<std::uint8_t>(joints[p]), m.other[p] = static_cast<std::uint8_t>(joints[2 + p]);
      const std::array<double, 6> sign{1, -1, 1, -1, 1, -1};
      std::copy(sign.begin(), sign.end(), m.sign);
      for (Size count = 1; count <= 8; ++count) {
        CAPTURE(count);
        const Size ld = 2 * half + 3;
        const Matrix x = kernel_cases::random(ld, count);
        std::vector<double> group(16 * half, 7.0);
        k.to_halves_group(m, ld, x.data(), count, group.data());
        Matrix back = Matrix::Zero(index(ld), index(count));
        k.from_halves_group(m, ld, group.data(), count, back.data());
        CHECK(largest(back.topRows(2 * index(half)) - x.topRows(2 * index(half))) <= 4e-16);
        for (Size c = 0; c < 8; ++c) {
          std::vector<double> u(2 * half, 0.0);
          if (c < count) std::copy_n(x.col(index(c)).data(), 2 * half, u.begin());
          const std::vector<double> given = u;
          k.to_halves(m, u.data());
          for (Size i = 0; i < half; ++i) {
            const double a = given[6 * m.one[i / 6] + i % 6], b = sign[i % 6] * given[6 * m.other[i / 6] + i % 6];
            CHECK(u[2 * i] == a + b);
            CHECK(u[2 * i + 1] == a - b);
            CHECK(group[8 * i + c] == a + b);
            CHECK(group[8 * (half + i) + c] == a - b);
          }
          k.from_halves(m, u.data());
          for (Size i = 0; i < 2 * half; ++i) CHECK(std::abs(u[i] - given[i]) <= 4e-16);
        }
      }
    });
}

TEST_CASE("halves: boxes that are their own mirror images, wherever the mirror stands") {
  for (const Size bays : {Size{7}, Size{16}, Size{39}, Size{40}}) {
    CAPTURE(bays);
    const Frame frame = model_of(box(bays).girder()).frame;
    check_girder(frame, true);
    // along y with the mirror across x, on its side with the mirror across z; told mirrored
    check_girder(turned({{Vec3<>{0, -1, 0}, Vec3<>{1, 0, 0}, Vec3<>{0, 0, 1}}}, frame), true);
    check_girder(turned({{Vec3<>{1, 0, 0}, Vec3<>{0, 0, -1}, Vec3<>{0, 1, 0}}}, frame), true);
    check_girder(turned({{Vec3<>{1, 0, 0}, Vec3<>{0, -1, 0}, Vec3<>{0, 0, 1}}, -1}, frame), true);
    // askew in plan the mirror is across no axis (nor are two bays alike to the last bit)
    check_girder(turned({{Vec3<>{0.8, -0.6, 0}, Vec3<>{0.6, 0.8, 0}, Vec3<>{0, 0, 1}}}, frame), false);
  }
}

TEST_CASE("halves: what the two sides are decides") {
  BoxGirder plan_braced = box(24), one_sided = box(24), zigzag = box(24), held = box(24), softer = box(24);
  plan_braced.faces.top = braced(crossed, brace_bar(), cross_bar());
  check_girder(model_of(plan_braced.girder()).frame, true);
  one_sided.faces.left = open(cross_bar());
  check_girder(model_of(one_sided.girder()).frame, false);
  zigzag.faces.top = braced(alternating, brace_bar(), cross_bar());  // in plan from one side to the other
  check_girder(model_of(zigzag.girder()).frame, false);
  held.supports = continuous_over<double>({0.0, 4.0, 9.0, 12.0});  // sideways at one chord each
  check_girder(model_of(held.girder()).frame, true);
  Frame frame = model_of(softer.girder()).frame;
  for (Member& m : frame.members) {  // chords of one side a hair's breadth softer than those of the other
    const Vec3<>&a = frame.nodes[m.from].at, &b = frame.nodes[m.to].at;
    if (a.y > 0 && b.y > 0 && std::abs(b.x - a.x) > 0.4 && std::abs(b.z - a.z) < 0.1) m.section.A *= 1 + 1e-12;
  }
  check_girder(frame, false);
}

TEST_CASE("halves: a changed bar or support is as if the girder had been made so") {
  const GirderModel m = model_of(box(40).girder());
  FrameSolver changed(m.frame);
  Frame frame = m.frame;
  const Size chord = m.chord_member(17, 1);
  frame.members[chord].section.A *= 0.7;
  changed.change_member(chord, frame.members[chord].section);
  FrameLoads loads;
  loads.force(m.chord_node(20, 0), {100.0, 300.0, -1e3});
  const FrameAnswer a = changed.solve(loads), b = FrameSolver(frame).solve(loads), c = FrameSolver(frame, {.path = SolvePath::sparse}).solve(loads);
  double size = 0;
  for (const double u : c.motions) size = (std::max)(size, std::abs(u));
  for (Size i = 0; i < a.motions.size(); ++i) {
    CHECK(std::abs(a.motions[i] - b.motions[i]) <= 1e-14 * size);
    CHECK(std::abs(a.motions[i] - c.motions[i]) <= 1e-14 * size);
  }
}
