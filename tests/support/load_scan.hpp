// SPDX-License-Identifier: MIT
// Random loads beside what is placed; loads up to an allowable one, densely, and whole proofs: what a search for the
// first failure must agree with.
#pragma once

#include <cstddef>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/rating.hpp>

inline baywork::rating::Terms terms_with(const baywork::verify::Stability& s) {
  baywork::rating::Terms out;
  out.basis.stability = s;
  return out;
}

/// One or two forces in any direction on chords, from a fifth of the span on: cantilevers are clamped at 0.
template <class Random>
std::vector<baywork::Action> random_point_loads(Random& r, const baywork::Girder& g) {
  std::vector<baywork::Action> out;
  for (std::size_t i = 0, n = 1 + r.below(2); i < n; ++i)
    out.push_back(baywork::point_load(baywork::ChordRef(r.below(g.chords.size())), r.in(0.2, 1) * g.span(),
                                      baywork::Vec3<>{r.in(-1, 1), r.in(-1, 1), r.in(-1, 1)}));
  return out;
}

/// What is placed: at least `least` of all that is allowed of a first load. The load rated is often against it, so that
/// it helps at first.
struct PlacedAndLoad {
  baywork::Response there;
  baywork::Cases placed;
  baywork::Response unit;

  /// `next()` solves another load.
  template <class Random, class Next>
  PlacedAndLoad(Random& r, const baywork::Response& first, double allowed, double least, const Next& next)
      : there(baywork::combine<double>({&first}, {r.in(least, 0.95) * allowed * 1.5 / 1.35}, "placed")),
        placed(first.analysis(), {there}, {{"placed", baywork::Nature::permanent, ""}}),
        unit(beside(r, first, next())) {}

  /// The proof of all cases together, solved and combined anew, passes below an allowable load and fails above it;
  /// calls compare(proof, share of the load).
  template <class Compare>
  void prove_beside(const baywork::rating::Terms& terms, double factor, const Compare& compare) const {
    for (const double share : {0.3, 1 - 1e-6, 1 + 1e-6}) {
      const baywork::Response load = baywork::combine<double>({&unit}, {share * factor}, "load");
      const baywork::Cases both(unit.analysis(), {there, load},
                                {{"placed", baywork::Nature::permanent, ""}, {"load", baywork::Nature::imposed, ""}});
      const baywork::verify::Proof proof = baywork::verify::by_material(both, terms.set, terms.basis);
      CHECK(proof.passes() == (share < 1));
      compare(proof, share);
    }
  }

 private:
  template <class Random>
  static baywork::Response beside(Random& r, const baywork::Response& first, const baywork::Response& other) {
    const double against = r.chance(0.6) ? r.in(-1, 0) : 0.0, share = r.in(0.2, 1.0);
    return baywork::combine<double>({&first, &other}, {against, share}, "load");
  }
};

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
