// SPDX-License-Identifier: MIT
// The small dense kernels of a chain, each set of instructions and each scalar, against Eigen's dense matrices.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "support/kernel_cases.hpp"

using namespace kernel_cases;

TEST_CASE("chain kernels: the inverse of a positive definite matrix") {
  // N. J. Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., 14.1 and 14.4: a forward error of c n eps
  // times the condition number; both inverses compared have one, c = 4 stands for the two together.
  for (const double condition : {1e1, 1e4, 1e8})
    for (const Size n : orders)
      for_each_set([&](const Kernels& k) {
        CAPTURE(n);
        CAPTURE(condition);
        const Size ld = padded(n);
        const Matrix a = positive_definite(n, condition);
        std::vector<double> v = stored(a, ld);
        poison_upper(v, n, ld);
        const double ratio = k.invert(n, ld, v.data());
        const Matrix exact = a.llt().solve(Matrix::Identity(a.rows(), a.cols()));
        const Matrix inverse = read(v, n, n, ld);
        CHECK(largest(inverse - exact) <= 4.0 * static_cast<double>(n) * epsilon * condition * largest(exact));
        CHECK(largest(inverse - inverse.transpose()) == 0.0);
        CHECK(padding_is_zero(v, n, ld));
        // The pivots are the squared diagonal of the Cholesky factor.
        const Matrix l = a.llt().matrixL();
        double smallest = 1.0;
        for (Eigen::Index i = 0; i < l.rows(); ++i) smallest = (std::min)(smallest, l(i, i) * l(i, i) / a(i, i));
        CHECK(std::abs(ratio - smallest) <= 4.0 * static_cast<double>(n) * epsilon * condition * smallest);
      });
}

TEST_CASE("chain kernels: what is not positive definite is said") {
  for (const Size n : orders)
    for_each_set([&](const Kernels& k) {
      CAPTURE(n);
      const Size ld = padded(n);
      for (Size bad = 0; bad < n; bad += 5) {
        CAPTURE(bad);
        // A diagonal entry too small for the row beside it, one below zero, an empty row, a row that is a copy, a NaN.
        for (int kind = 0; kind < 5; ++kind) {
          CAPTURE(kind);
          Matrix a = positive_definite(n, 100.0);
          const Eigen::Index i = index(bad), other = index(bad == 0 ? 1 : bad - 1);
          if (kind == 0) a(i, i) = a(i, other) * a(i, other) / a(other, other) * 0.5;
          if (kind == 1) a.row(i).setZero(), a.col(i).setZero(), a(i, i) = -1.0;
          if (kind == 2) a.row(i).setZero(), a.col(i).setZero();
          if (kind == 3) a = Matrix::Identity(a.rows(), a.cols()), a(i, other) = a(other, i) = 1.0;
          if (kind == 4) a(i, i) = std::numeric_limits<double>::quiet_NaN();
          std::vector<double> v = stored(a, ld), w = v;
          CHECK_FALSE(k.invert(n, ld, v.data()) > 0.0);
          Size worst = n;
          CHECK_FALSE(k.eliminate(n, 0, ld, w.data(), &worst) > 0.0);
          if (kind == 1 || kind == 2) CHECK(worst == bad);
        }
      }
    });
}

TEST_CASE("chain kernels: partial factor, Schur complement and the two sweeps") {
  const double condition = 1e4;
  for (const Size n1 : {Size{1}, Size{3}, Size{6}, Size{12}, Size{18}, Size{24}, Size{30}, Size{42}, Size{66}})
    for (const Size n2 : {Size{0}, Size{5}, Size{6}, Size{12}, Size{18}, Size{24}, Size{30}, Size{42}, Size{66}}) {
      const Size n = n1 + n2, ld = padded(n);
      if (n < 2) continue;
      const Matrix a = positive_definite(n, condition);
      const Eigen::Index e = index(n1), m = index(n2);
      const auto factor = a.topLeftCorner(e, e).llt();
      const Matrix right = random(n, 1), given = random(n2, 1);
      Matrix schur(m, m), first = right.topRows(e);
      if (n2 > 0) {
        schur = a.bottomRightCorner(m, m) - a.bottomLeftCorner(m, e) * factor.solve(Matrix(a.topRightCorner(e, m)));
        first -= a.topRightCorner(e, m) * given;
      }
      first = factor.solve(first).eval();
      const double bound = 8.0 * static_cast<double>(n) * epsilon * condition;
      for_each_set([&](const Kernels& k) {
        CAPTURE(n1);
        CAPTURE(n2);
        std::vector<double> v = stored(a, ld);
        poison_upper(v, n, ld);
        Size worst = n;
        const double ratio = k.eliminate(n1, n2, ld, v.data(), &worst);
        CHECK(ratio > 0.0);
        REQUIRE(worst < n1);
        const Matrix got = read(v, n, n, ld);
        CHECK(std::abs(1.0 / got(index(worst), index(worst)) / a(index(worst), index(worst)) - ratio) <=
              4.0 * epsilon * ratio);
        // k = L diag(D, S) Lᵀ, entry by entry.
        Matrix l = Matrix::Identity(a.rows(), a.rows()), d = Matrix::Zero(a.rows(), a.rows());
        for (Eigen::Index j = 0; j < a.rows(); ++j)
          for (Eigen::Index i = j; i < a.rows(); ++i) {
            if (j < e && i > j) l(i, j) = got(i, j);
            if (j < e && i == j) d(i, i) = 1.0 / got(i, i);
            if (j >= e) d(i, j) = d(j, i) = got(i, j);
          }
        CHECK(largest(l * d * l.transpose() - a) <= 4.0 * static_cast<double>(n) * epsilon);  // largest of a: below 1
        if (n2) CHECK(largest(d.bottomRightCorner(m, m) - schur) <= bound * largest(a));
        CHECK(padding_is_zero(v, n, ld));

        std::vector<double> h = stored(right, ld);
        k.forward(n1, n2, ld, v.data(), h.data());
        const Vector forward = l.triangularView<Eigen::UnitLower>().solve(right);
        const Matrix reduced = read(h, n, 1, ld);
        CHECK(largest(reduced - forward) <= bound * largest(forward));
        for (Size i = 0; i < n2; ++i) h[n1 + i] = given(index(i), 0);
        k.backward(n1, n2, ld, v.data(), h.data());
        CHECK(largest(read(h, n1, 1, ld) - first) <= bound * largest(first));
        CHECK(padding_is_zero(h, n, ld));
      });
    }
}

TEST_CASE_TEMPLATE("chain kernels: other scalars", S, double, Wide, Dual) {
  using K = KernelsOf<S>;
  for (const Size n : {Size{12}, Size{18}, Size{24}}) {
    CAPTURE(n);
    const Size ld = padded(n);
    const double bound = 200.0 * static_cast<double>(n) * epsilon;
    const Matrix a = positive_definite(n, 10.0), exact = a.llt().solve(Matrix::Identity(a.rows(), a.cols()));
    const Coupling c = coupling(n, n);
    const std::vector<BasicBlock6<S>> blocks = blocks_of<S>(c);
    std::vector<S> v = stored<S>(a, ld), packed(K::packed_size(n), S(0.0)), x(ld * n, S(0.0)), y = x, scratch = x;
    CHECK(K::invert(n, ld, v.data()) > 0.0);
    CHECK(largest(read(v, n, n, ld) - exact) <= bound * largest(exact));
    K::times_blocks(n, n, ld, v.data(), blocks.data(), blocks.size(), ld, x.data());
    CHECK(largest(read(x, n, n, ld) - exact * c.dense) <= bound * largest(exact));
    K::minus_blocks_transposed(n, n, ld, x.data(), blocks.data(), blocks.size(), ld, y.data(), scratch.data());
    const Matrix product = c.dense.transpose() * exact * c.dense;
    CHECK(largest(lower(read(y, n, n, ld) + product)) <= bound * largest(product));
    K::pack(n, ld, v.data(), packed.data());
    K::apply_many(n, packed.data(), ld, stored<S>(a, ld).data(), y.data(), n);
    CHECK(largest(read(y, n, n, ld) - Matrix::Identity(a.rows(), a.cols())) <= bound);
    std::vector<S> h = stored<S>(random(n, 1), ld), e(ld, S(0.0));
    const Matrix right = read(h, n, 1, ld);
    K::apply(n, packed.data(), h.data(), e.data());
    CHECK(largest(read(e, n, 1, ld) - exact * right) <= bound * largest(exact));
    std::vector<S> k = stored<S>(a, ld);
    Size worst = n;
    CHECK(K::eliminate(n, 0, ld, k.data(), &worst) > 0.0);
    K::forward(n, 0, ld, k.data(), h.data());
    K::backward(n, 0, ld, k.data(), h.data());
    CHECK(largest(read(h, n, 1, ld) - exact * right) <= bound * largest(exact));
    std::vector<S> one = stored<S>(right, ld), two = one;
    const std::vector<S> ones = one;
    K::minus_blocks_times(blocks.data(), blocks.size(), ones.data(), one.data());
    K::minus_transposed_times(blocks.data(), blocks.size(), ones.data(), two.data());
    CHECK(largest(read(one, n, 1, ld) - (right - c.dense * right)) <= bound);
    CHECK(largest(read(two, n, 1, ld) - (right - c.dense.transpose() * right)) <= bound);
  }
}

TEST_CASE("chain kernels: long double is more than double, and a derivative is one") {
  const Size n = 18, ld = padded(n);
  const Matrix a = positive_definite(n, 1e8), direction = random(n, n), change = direction + direction.transpose();
  std::vector<Wide> wide = stored<Wide>(a, ld);
  KernelsOf<Wide>::invert(n, ld, wide.data());
  Eigen::Matrix<Wide, Eigen::Dynamic, Eigen::Dynamic> inverse(index(n), index(n));
  for (Size j = 0; j < n; ++j)
    for (Size i = 0; i < n; ++i) inverse(index(i), index(j)) = wide[i + j * ld];
  const auto rest = (a.cast<Wide>() * inverse).eval();
  const Wide off = (rest - decltype(rest)::Identity(index(n), index(n))).cwiseAbs().maxCoeff();
  const Wide wide_epsilon = std::numeric_limits<Wide>::epsilon();
  CHECK(off <= Wide(4 * n) * wide_epsilon * Wide(1e8));

  // d(A⁻¹) = -A⁻¹ dA A⁻¹.
  const Matrix mild = positive_definite(n, 10.0), exact = mild.llt().solve(Matrix::Identity(mild.rows(), mild.cols()));
  std::vector<Dual> dual = stored<Dual>(mild, ld);
  for (Size j = 0; j < n; ++j)
    for (Size i = 0; i < n; ++i) dual[i + j * ld].derivatives()(0) = change(index(i), index(j));
  KernelsOf<Dual>::invert(n, ld, dual.data());
  const Matrix slope = -exact * change * exact;
  for (Size j = 0; j < n; ++j)
    for (Size i = 0; i < n; ++i)
      CHECK(std::abs(dual[i + j * ld].derivatives()(0) - slope(index(i), index(j))) <= 1e4 * epsilon * largest(slope));
}
