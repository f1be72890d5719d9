// SPDX-License-Identifier: MIT
// Products that solve with a chain's factor, each set of instructions against Eigen's dense matrices.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "support/kernel_cases.hpp"

using namespace kernel_cases;

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

        const Matrix given = random(n1, n2);
        std::vector<double> sum = stored(given, ld1);
        k.add_blocks(c.blocks.data(), c.blocks.size(), sum.data(), ld1);
        CHECK(largest(read(sum, n1, n2, ld1) - (given + c.dense)) <= 4.0 * epsilon);  // three numbers below 1 at most
        CHECK(padding_is_zero(sum, n1, ld1));

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

TEST_CASE("chain kernels: a full matrix times vectors wherever they stand") {
  for (const Size rows : {Size{1}, Size{6}, Size{18}, Size{24}, Size{35}, Size{72}})
    for (const Size columns : {Size{1}, Size{5}, Size{24}, Size{47}})
      for (const Size count : {Size{1}, Size{3}, Size{4}, Size{9}})
        for_each_set([&](const Kernels& k) {
          CAPTURE(rows);
          CAPTURE(columns);
          CAPTURE(count);
          const Size ld = padded(rows);
          const Matrix a = random(rows, columns), x = random(columns, count), y = random(rows, count);
          const std::vector<double> given = stored(x, columns);
          std::vector<double> v = stored(y, ld);
          std::vector<const double*> from;
          std::vector<double*> to;
          Matrix expected = y;
          for (Size i = 0; i < count; ++i) {  // the last vector meets the first place
            from.push_back(given.data() + (count - 1 - i) * columns);
            to.push_back(v.data() + i * ld);
            expected.col(index(i)) -= a * x.col(index(count - 1 - i));
          }
          k.minus_times(rows, columns, ld, stored(a, ld).data(), count, from.data(), to.data());
          CHECK(largest(read(v, rows, count, ld) - expected) <= static_cast<double>(columns) * epsilon);
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
      for (Size j = 0; j < 6; ++j)  // and one of a bar
        for (Size i = 0; i < 6; ++i)
          if (Block6& b = c.blocks[0]; i >= 3 || j >= 3) {
            c.dense(index(b.first_row() + i), index(b.first_column() + j)) -= b(i, j);
            b(i, j) = 0.0;
          }
      for (const bool turned : {false, true}) {
        const Size to = turned ? n2 : n1, from = turned ? n1 : n2, ld = padded(to);
        const Matrix a = turned ? Matrix(c.dense.transpose()) : c.dense;
        BlockRows<double> block_rows;
        RowLists<double> rows;
        block_rows.make(c.blocks, turned, to / 6);
        rows.make(c.blocks, turned, to, from, full);
        CHECK(block_rows.column.size() == 2 * c.blocks.size() - 1);
        Size numbers = 0;
        for (const Block6& b : c.blocks)
          for (const double v : b.value) numbers += v != 0.0 ? 1U : 0U;
        CHECK(rows.value.size() == (2 * numbers > to * from ? to * from : numbers));
        const Matrix x = random(from, 1), y = random(to, 1), p = positive_definite(to, 100.0), less = y - a * x;
        const double bound = 100.0 * epsilon;  // sums of at most 48 products below 2
        for_each_set([&](const Kernels& k) {
          CAPTURE(n1);
          CAPTURE(n2);
          CAPTURE(turned);
          std::vector<double> v = stored(y, ld), packed(k.packed_size(to));
          const std::vector<double> given = stored(x, padded(from));
          k.minus_block_rows(block_rows.view(), given.data(), v.data());
          CHECK(largest(read(v, to, 1, ld) - less) <= bound);
          CHECK(padding_is_zero(v, to, ld));
          k.pack(to, ld, stored(p, ld).data(), packed.data());
          k.apply_in_place(to, packed.data(), v.data());
          CHECK(largest(read(v, to, 1, ld) - p * less) <= 10.0 * bound);
          CHECK(padding_is_zero(v, to, ld));
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
            k.rows_groups(true, rows.view(), groups, from, u.data(), v.data());
            CHECK(largest(columns_of(v) - (ys - a * xs)) <= bound);
            std::vector<double> w = v;
            k.rows_groups(false, rows.view(), groups, from, u.data(), w.data());
            Matrix set = a * xs;
            for (Size r = 0; r < to; ++r)  // rows without numbers are left alone
              if (a.row(index(r)).isZero(0.0)) set.row(index(r)) = ys.row(index(r));
            CHECK(largest(columns_of(w) - set) <= bound);
            k.apply_groups(to, packed.data(), groups, v.data(), z.data());
            CHECK(largest(columns_of(z) - p * (ys - a * xs)) <= 10.0 * bound);
            regroup(ys, to, v);
            for (const Size step : {Size{1}, Size{2}}) {  // rows side by side, and with others between them
              Matrix apart = Matrix::Constant(index(step * to), index(from), 7.0);
              for (Size r = 0; r < to; ++r) apart.row(index(step * r)) = a.row(index(r));
              const std::vector<double> wide = stored(apart, step * to);
              regroup(ys, to, v);
              k.times_groups(true, to, from, step, step * to, wide.data(), groups, 8 * from, u.data(), 8 * to, v.data());
              CHECK(largest(columns_of(v) - (ys - a * xs)) <= bound);
              k.times_groups(false, to, from, step, step * to, wide.data(), groups, 8 * from, u.data(), 8 * to, v.data());
              CHECK(largest(columns_of(v) - a * xs) <= bound);
            }
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
