// SPDX-License-Identifier: MIT
// Loads up to an allowable one, densely: what a search for the first failure must agree with.
#pragma once

#include <doctest/doctest.h>

#include <baywork/rating.hpp>

/// No load below the allowable one fails, and just above it something does, also where every bar and joint is searched
/// by itself, without what others would have spared it. Whether the utilisation falls anywhere on the way.
inline bool falls_below(const baywork::rating::Rater& rater, const baywork::Response& unit,
                        const baywork::rating::Allowable& a, int loads) {
  double before = rater.utilisation(unit, 0.0);
  bool falls = false;
  for (int i = 1; i <= loads; ++i) {
    const double u = rater.utilisation(unit, a.factor * i / loads);
    CHECK(u <= 1.0 + 1e-9);
    falls = falls || u < before * (1 - 1e-6);
    before = u;
  }
  CHECK(rater.utilisation(unit, a.factor * (1 + 1e-6)) > 1.0);
  CHECK(rater.allowable(unit, baywork::rating::Search::every_bar).factor == doctest::Approx(a.factor).epsilon(1e-9));
  return falls;
}
