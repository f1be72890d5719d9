// SPDX-License-Identifier: MIT
// The small dense kernels of a chain, each set of instructions and each scalar, against Eigen's dense matrices.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <Eigen/LU>
#include <Eigen/QR>
#include <unsupported/Eigen/AutoDiff>

#include <baywork/solve/detail/coupling_lists.hpp>
#include <baywork/solve/detail/kernels.hpp>

// Eight lanes on the instructions for four: the logic of the widest set, on machines without it.
#if defined(__x86_64__)
#define BAYWORK_KERNEL_SET eight_lanes_set
#define BAYWORK_KERNEL_LANES 8
#define BAYWORK_KERNEL_TARGET __attribute__((target("avx2,fma")))
#define BAYWORK_KERNEL_MADD(a, b, c) ((a) * (b) + (c))
#include <baywork/solve/detail/kernel_bodies.hpp>
#endif

namespace {

using namespace baywork::detail;
using Size = std::size_t;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using Wide = long double;
using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, 1, 1>>;

constexpr double epsilon = std::numeric_limits<double>::epsilon();
constexpr Size orders[] = {6, 12, 18, 24, 30, 42, 54};  // 54: beyond what the fast ones keep on the stack

Size padded(Size n) { return (n + 7) / 8 * 8; }
Eigen::Index index(Size n) { return static_cast<Eigen::Index>(n); }

std::mt19937& generator() {
  static std::mt19937 g(20240611);
  return g;
}
Matrix random(Size rows, Size columns) {
  std::uniform_real_distribution<double> u(-1.0, 1.0);
  return Matrix::NullaryExpr(index(rows), index(columns), [&] { return u(generator()); });
}
/// Q diag(1 .. 1/condition) Qᵀ with Q orthogonal.
Matrix positive_definite(Size n, double condition) {
  const Matrix q = Eigen::HouseholderQR<Matrix>(random(n, n)).householderQ();
  Vector values(index(n));
  for (Size i = 0; i < n; ++i)
    values(index(i)) = std::pow(condition, -static_cast<double>(i) / static_cast<double>(n - 1));
  const Matrix a = q * values.asDiagonal() * q.transpose();
  return (a + a.transpose()) / 2.0;
}

/// A matrix in the kernels' storage: `ld` apart, padding rows zero.
template <class S = double>
std::vector<S> stored(const Matrix& a, Size ld) {
  std::vector<S> v(ld * static_cast<Size>(a.cols()), S(0.0));
  for (Eigen::Index j = 0; j < a.cols(); ++j)
    for (Eigen::Index i = 0; i < a.rows(); ++i) v[static_cast<Size>(i) + static_cast<Size>(j) * ld] = S(a(i, j));
  return v;
}
template <class S>
Matrix read(const std::vector<S>& v, Size rows, Size columns, Size ld) {
  return Matrix::NullaryExpr(index(rows), index(columns), [&](Eigen::Index i, Eigen::Index j) {
    return baywork::value_of(v[static_cast<Size>(i) + static_cast<Size>(j) * ld]);
  });
}
/// The strict upper triangle filled with NaN: what a kernel must not read.
void poison_upper(std::vector<double>& v, Size n, Size ld) {
  for (Size j = 0; j < n; ++j)
    for (Size i = 0; i < j; ++i) v[i + j * ld] = std::numeric_limits<double>::quiet_NaN();
}
template <class S>
bool padding_is_zero(const std::vector<S>& v, Size rows, Size ld) {
  for (Size k = 0; k < v.size(); ++k)
    if (k % ld >= rows && baywork::value_of(v[k]) != 0.0) return false;
  return true;
}

struct Coupling {
  std::vector<Block6> blocks;
  Matrix dense;
};
/// Blocks on the two diagonals of an n1 x n2 matrix, the first one twice (blocks at one place add up).
Coupling coupling(Size n1, Size n2) {
  Coupling c{{}, Matrix::Zero(index(n1), index(n2))};
  const auto add = [&](Size row, Size column) {
    Block6 b(static_cast<int>(row), static_cast<int>(column));
    for (Size j = 0; j < 6; ++j)
      for (Size i = 0; i < 6; ++i) {
        b(i, j) = random(1, 1)(0, 0);
        c.dense(index(6 * row + i), index(6 * column + j)) += b(i, j);
      }
    c.blocks.push_back(b);
  };
  for (Size r = n1 / 6; r-- > 0;) {
    if (r < n2 / 6) add(r, r);
    if (r + 1 < n2 / 6) add(r, r + 1);
  }
  add(0, 0);
  return c;
}
template <class S>
std::vector<BasicBlock6<S>> blocks_of(const Coupling& c) {
  std::vector<BasicBlock6<S>> all;
  for (const Block6& b : c.blocks) {
    all.emplace_back(b.row, b.column);
    for (Size k = 0; k < 48; ++k) all.back().value[k] = S(b.value[k]);
  }
  return all;
}

template <class Use>
void for_each_set(const Use& use) {
  const auto with = [&](const std::string& name, const Kernels* set) {
    CAPTURE(name);
    if (set) use(*set);
  };
  REQUIRE(kernels(InstructionSet::plain) != nullptr);
  with("plain", kernels(InstructionSet::plain));
  with("avx2", kernels(InstructionSet::avx2));
  with("avx512", kernels(InstructionSet::avx512));
#if defined(__x86_64__)
  if (kernels(InstructionSet::avx2)) with("eight lanes", &eight_lanes_set::all);
#endif
  // The form for any scalar, with double.
  using P = PlainKernels<double>;
  const Kernels any{&P::invert,
                    &P::eliminate,
                    &P::times_blocks,
                    &P::minus_blocks_transposed,
                    &P::packed_size,
                    &P::pack,
                    &P::apply,
                    &P::apply_many,
                    &P::minus_blocks_times,
                    &P::minus_transposed_times,
                    &P::forward,
                    &P::backward,
                    &P::minus_times,
                    &P::minus_bands,
                    &P::advance,
                    &P::apply_groups,
                    &P::minus_times_groups,
                    &P::minus_rows_groups,
                    &P::to_group,
                    &P::from_group};
  with("any scalar", &any);
}

double largest(const Matrix& m) { return m.cwiseAbs().maxCoeff(); }
Matrix lower(const Matrix& m) { return m.triangularView<Eigen::Lower>(); }

}  // namespace

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

TEST_CASE("chain kernels: products with blocks") {
  for (const Size n1 : orders)
    for (const Size n2 : {Size{6}, Size{12}, Size{18}, Size{24}, Size{42}})
      for_each_set([&](const Kernels& k) {
        CAPTURE(n1);
        CAPTURE(n2);
        const Size ld1 = padded(n1), ld2 = padded(n2);
        const Coupling c = coupling(n1, n2);
        const Matrix p = positive_definite(n1, 100.0), d = positive_definite(n2, 100.0);
        // Every number is a sum of at most 6 * 42 products below 2.
        const double bound = 1000.0 * epsilon;
        std::vector<double> x(ld1 * n2, 7.0), scratch(n1 * ld2), v = stored(d, ld2);
        k.times_blocks(n1, n2, ld1, stored(p, ld1).data(), c.blocks.data(), c.blocks.size(), ld1, x.data());
        const Matrix product = p * c.dense;
        CHECK(largest(read(x, n1, n2, ld1) - product) <= bound);
        k.minus_blocks_transposed(n1, n2, ld1, x.data(), c.blocks.data(), c.blocks.size(), ld2, v.data(),
                                  scratch.data());
        const Matrix less = d - c.dense.transpose() * product;
        CHECK(largest(lower(read(v, n2, n2, ld2) - less)) <= bound * 6.0);
        CHECK(padding_is_zero(v, n2, ld2));

        const Matrix a = random(n1, 1), b = random(n2, 1);
        std::vector<double> y1 = stored(a, ld1), y2 = stored(b, ld2);
        const std::vector<double> x1 = y1, x2 = y2;
        k.minus_blocks_times(c.blocks.data(), c.blocks.size(), x2.data(), y1.data());
        k.minus_transposed_times(c.blocks.data(), c.blocks.size(), x1.data(), y2.data());
        CHECK(largest(read(y1, n1, 1, ld1) - (a - c.dense * b)) <= bound);
        CHECK(largest(read(y2, n2, 1, ld2) - (b - c.dense.transpose() * a)) <= bound);
        CHECK((padding_is_zero(y1, n1, ld1) && padding_is_zero(y2, n2, ld2)));
      });
}

TEST_CASE("chain kernels: products with a packed symmetric matrix") {
  for (const Size n : orders)
    for_each_set([&](const Kernels& k) {
      CAPTURE(n);
      const Size ld = padded(n);
      const Matrix p = positive_definite(n, 100.0);
      std::vector<double> packed(k.packed_size(n));
      if (n == 24) CHECK(packed.size() <= 384);
      k.pack(n, ld, stored(p, ld).data(), packed.data());
      for (const Size m : {Size{1}, Size{4}, Size{11}}) {
        const Matrix x = random(n, m);
        std::vector<double> y(ld * m, 0.0), z(ld, 0.0);
        const std::vector<double> given = stored(x, ld);
        k.apply_many(n, packed.data(), ld, given.data(), y.data(), m);
        k.apply(n, packed.data(), given.data(), z.data());
        const double bound = static_cast<double>(n) * epsilon;  // |p| and |x| below 1: n products, sums below n/2
        CHECK(largest(read(y, n, m, ld) - p * x) <= bound);
        CHECK(largest(read(z, n, 1, ld) - p * x.col(0)) <= bound);
        CHECK((padding_is_zero(y, n, ld) && padding_is_zero(z, n, ld)));
      }
    });
}

TEST_CASE("chain kernels: a full matrix times a vector") {
  for (const Size rows : {Size{1}, Size{6}, Size{18}, Size{24}, Size{35}, Size{72}})
    for (const Size columns : {Size{1}, Size{5}, Size{24}, Size{47}})
      for_each_set([&](const Kernels& k) {
        CAPTURE(rows);
        CAPTURE(columns);
        const Size ld = padded(rows);
        const Matrix a = random(rows, columns), x = random(columns, 1), y = random(rows, 1);
        std::vector<double> v = stored(y, ld);
        k.minus_times(rows, columns, ld, stored(a, ld).data(), stored(x, columns).data(), v.data());
        CHECK(largest(read(v, rows, 1, ld) - (y - a * x)) <= static_cast<double>(columns) * epsilon);
        CHECK(padding_is_zero(v, rows, ld));
      });
}

TEST_CASE("chain kernels: what is not zero in a coupling, and the step of a solution with it") {
  std::vector<double> full;
  for (const Size n1 : {Size{6}, Size{12}, Size{18}, Size{24}, Size{30}, Size{42}, Size{48}})
    for (const Size n2 : {Size{6}, Size{18}, Size{24}, Size{42}}) {
      Coupling c = coupling(n1, n2);
      for (Block6& b : c.blocks)  // most of it empty, as with members along an axis
        for (Size j = 0; j < 6; ++j)
          for (Size i = 0; i < 6; ++i)
            if ((i + 2 * j) % 3 != 0) {
              c.dense(index(b.first_row() + i), index(b.first_column() + j)) -= b(i, j);
              b(i, j) = 0.0;
            }
      for (const bool turned : {false, true}) {
        const Size to = turned ? n2 : n1, from = turned ? n1 : n2, ld = padded(to);
        const Matrix a = turned ? Matrix(c.dense.transpose()) : c.dense;
        Bands<double, 4> fours;
        Bands<double, 1> rows;
        fours.make(c.blocks, turned, to, from, full);
        rows.make(c.blocks, turned, to, from, full);
        CHECK(rows.value.size() == static_cast<Size>((a.array().abs() > epsilon).count()));
        const Matrix x = random(from, 1), y = random(to, 1), p = positive_definite(to, 100.0), less = y - a * x;
        const double bound = 100.0 * epsilon;  // sums of at most 48 products below 2
        for_each_set([&](const Kernels& k) {
          CAPTURE(n1);
          CAPTURE(n2);
          CAPTURE(turned);
          std::vector<double> v = stored(y, ld), packed(k.packed_size(to)), z(ld, 0.0), w = v;
          const std::vector<double> given = stored(x, padded(from));
          k.minus_bands(fours.view(), given.data(), v.data());
          CHECK(largest(read(v, to, 1, ld) - less) <= bound);
          CHECK(padding_is_zero(v, to, ld));
          k.pack(to, ld, stored(p, ld).data(), packed.data());
          v = w;
          k.advance(to, packed.data(), fours.view(), given.data(), v.data(), z.data());
          CHECK(largest(read(v, to, 1, ld) - less) <= bound);
          CHECK(largest(read(z, to, 1, ld) - p * less) <= 10.0 * bound);
          k.advance(to, packed.data(), fours.view(), given.data(), w.data(), w.data());  // in place
          CHECK(largest(read(w, to, 1, ld) - p * less) <= 10.0 * bound);
          CHECK((padding_is_zero(z, to, ld) && padding_is_zero(w, to, ld)));
        });
        for (const Size groups : {Size{1}, Size{3}, Size{5}}) {
          const Matrix xs = random(from, 8 * groups), ys = random(to, 8 * groups);
          for_each_set([&](const Kernels& k) {
            CAPTURE(n1);
            CAPTURE(n2);
            CAPTURE(turned);
            CAPTURE(groups);
            std::vector<double> packed(k.packed_size(to)), u(8 * groups * from), v(8 * groups * to), z(v.size(), 0.5);
            k.pack(to, ld, stored(p, ld).data(), packed.data());
            const auto regroup = [&](const Matrix& m, Size n, std::vector<double>& all) {
              const std::vector<double> columns = stored(m, padded(n));
              for (Size g = 0; g < groups; ++g) k.to_group(n, padded(n), columns.data() + 8 * g * padded(n), 8, all.data() + 8 * g * n);
            };
            const auto columns_of = [&](const std::vector<double>& all) {
              std::vector<double> columns(8 * groups * ld, 0.0);
              for (Size g = 0; g < groups; ++g) k.from_group(to, ld, all.data() + 8 * g * to, 8, columns.data() + 8 * g * ld);
              return read(columns, to, 8 * groups, ld);
            };
            regroup(xs, from, u);
            regroup(ys, to, v);
            k.minus_rows_groups(rows.view(), groups, from, u.data(), v.data());
            CHECK(largest(columns_of(v) - (ys - a * xs)) <= bound);
            k.apply_groups(to, packed.data(), groups, v.data(), z.data());
            CHECK(largest(columns_of(z) - p * (ys - a * xs)) <= 10.0 * bound);
            regroup(ys, to, v);
            k.minus_times_groups(to, from, stored(a, to).data(), groups, u.data(), v.data());
            CHECK(largest(columns_of(v) - (ys - a * xs)) <= bound);
          });
        }
      }
    }
}

TEST_CASE("chain kernels: columns side by side and back") {
  for (const Size n : {Size{1}, Size{6}, Size{18}, Size{23}})
    for (const Size count : {Size{1}, Size{3}, Size{4}, Size{7}, Size{8}})
      for_each_set([&](const Kernels& k) {
        CAPTURE(n);
        CAPTURE(count);
        const Size ld = padded(n) + 3;
        const Matrix a = random(n, count);
        std::vector<double> group(8 * n, 7.0), back(ld * count, 0.0);
        const std::vector<double> columns = stored(a, ld);
        k.to_group(n, ld, columns.data(), count, group.data());
        for (Size u = 0; u < n; ++u)
          for (Size c = 0; c < 8; ++c) CHECK(group[8 * u + c] == (c < count ? a(index(u), index(c)) : 0.0));
        k.from_group(n, ld, group.data(), count, back.data());
        CHECK(back == columns);
      });
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
