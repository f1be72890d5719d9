// SPDX-License-Identifier: MIT
// Bows and kinks of chord pairs that grow with a load factor, faster than the load does.
#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <baywork/rating/detail/load_line.hpp>
#include <baywork/verify/stability_imperfections.hpp>

namespace baywork::rating::detail {

/// Values that are straight in the load factor: at 0, and their growth.
struct Straight {
  std::vector<double> at_0, growth;

  double at(std::size_t i, double factor) const { return at_0[i] + factor * growth[i]; }
  std::size_t size() const noexcept { return at_0.size(); }
};

/// Limits of a number.
struct Limits {
  double least = 0, most = 0;
};

/// Pushes of a pair by station, and its deflections over L/500, in one combination.
struct PairGrowth {
  Straight push, bent;

  /// The greatest push, at least 0: convex in the factor.
  double push_at(double factor) const {
    double out = 0;
    for (std::size_t i = 0; i < push.size(); ++i) out = larger(out, push.at(i, factor));
    return out;
  }
  double bent_at(double factor) const {
    double out = 0;
    for (std::size_t i = 0; i < bent.size(); ++i) out = larger(out, magnitude(bent.at(i, factor)));
    return out;
  }
  /// Of all factors from a to b: a greatest of convex functions is no more than at the ends, and no less than the
  /// greatest of what each is at least.
  Limits push_between(double a, double b) const {
    Limits out{0.0, larger(push_at(a), push_at(b))};
    for (std::size_t i = 0; i < push.size(); ++i) out.least = larger(out.least, smaller(push.at(i, a), push.at(i, b)));
    return out;
  }
  Limits bent_between(double a, double b) const {
    Limits out{0.0, larger(bent_at(a), bent_at(b))};
    for (std::size_t i = 0; i < bent.size(); ++i) {
      const double u = bent.at(i, a), v = bent.at(i, b);
      if (u * v > 0.0) out.least = larger(out.least, smaller(magnitude(u), magnitude(v)));
    }
    return out;
  }
};

/// One bow, or the kinks of one pair, of unit size.
struct UnitBow {
  std::size_t pair = 0;
  bool kinks = false;
  Response response;
  Unit unit;
  UnitBow(std::size_t p, bool k, Response r) : pair(p), kinks(k), response(std::move(r)), unit(response) {}
  UnitBow(const UnitBow&) = delete;
  UnitBow& operator=(const UnitBow&) = delete;
};

/// All bows of a girder, and how great they are at a load factor: what verify::with_imperfections() makes of each
/// combination. Push and deflection are convex in the factor and the bow's size rises with both.
class Bows {
 public:
  /// Kinks alone where no bows are asked for.
  Bows(const Analysis& analysis, bool bows) : made_(analysis) {
    for (std::size_t i = 0; i < made_.bowed().size(); ++i) {
      if (bows) units_.emplace_back(i, false, made_.solve_bow(made_.bowed()[i]));
      if (!analysis.girder().splices.empty()) units_.emplace_back(i, true, made_.solve_kinks(made_.bowed()[i]));
    }
  }

  const std::deque<UnitBow>& units() const noexcept { return units_; }
  std::size_t face(const UnitBow& b) const { return made_.bowed()[b.pair].pair.face; }
  /// Of all pairs in one combination; `load` may be none.
  std::vector<PairGrowth> growth(const Line& line, const Unit* load) const {
    std::vector<PairGrowth> out;
    for (const verify::detail::Imperfections::Bowed& b : made_.bowed()) {
      const auto straight = [&](auto values) {
        Straight s;
        if (line.placed) s.at_0 = values(*line.placed);
        if (load != nullptr) s.growth = values(load->response);
        for (double& v : s.growth) v *= line.factor;
        s.at_0.resize(larger(s.at_0.size(), s.growth.size()), 0.0);
        s.growth.resize(s.at_0.size(), 0.0);
        return s;
      };
      out.push_back({straight([&](const Response& r) { return made_.pushes(b, r); }),
                     straight([&](const Response& r) { return made_.deflections(b, r); })});
    }
    return out;
  }

  /// Whether the bow grows without end; never where it is not made.
  bool endless(const UnitBow& u, const std::vector<PairGrowth>& all, double factor) const {
    const double push = all[u.pair].push_at(factor);
    return push > made_.least_push * greatest(all, factor) && !made_.bowed()[u.pair].is_stable(push);
  }
  bool may_be_endless(const UnitBow& u, const std::vector<PairGrowth>& all, double from, double to) const {
    return !made_.bowed()[u.pair].is_stable(all[u.pair].push_between(from, to).most);
  }
  /// Surely at no factor from a to b: some station's push, which is straight, is great enough at both; a pair's own
  /// greatest push is convex and so below what is straight and above it there.
  bool never_made(const UnitBow& u, const std::vector<PairGrowth>& all, double a, double b) const {
    const double at_a = all[u.pair].push_at(a), at_b = all[u.pair].push_at(b);
    for (const PairGrowth& g : all)
      for (std::size_t i = 0; i < g.push.size(); ++i)
        if (at_a <= made_.least_push * g.push.at(i, a) && at_b <= made_.least_push * g.push.at(i, b)) return true;
    return false;
  }
  /// Multiple of the unit bow; 0 where none is made.
  double times(const UnitBow& u, const std::vector<PairGrowth>& all, double factor) const {
    const double push = all[u.pair].push_at(factor);
    return push > made_.least_push * greatest(all, factor) ? times(u, push, all[u.pair].bent_at(factor)) : 0.0;
  }
  /// Within which that stays; from 0 where it may not be made.
  Limits times(const UnitBow& u, const std::vector<PairGrowth>& all, double from, double to) const {
    const Limits push = all[u.pair].push_between(from, to), bent = all[u.pair].bent_between(from, to);
    Limits greatest_push{0.0, larger(greatest(all, from), greatest(all, to))};
    for (const PairGrowth& g : all) greatest_push.least = larger(greatest_push.least, g.push_between(from, to).least);
    if (!(push.most > made_.least_push * greatest_push.least)) return {};
    const double most =
        u.kinks ? verify::detail::Imperfections::Bowed::times_kinks(push.most) : times(u, push.most, bent.most);
    const bool made =
        push.least > made_.least_push * greatest_push.most && !(u.kinks && may_be_endless(u, all, from, to));
    return {made ? times(u, push.least, bent.least) : 0.0, most};
  }
  std::string words(const UnitBow& u, double times) const {
    const verify::detail::Imperfections::Bowed& b = made_.bowed()[u.pair];
    return u.kinks ? made_.words_of_kinks(b, times) : made_.words_of_bow(b, times);
  }

 private:
  /// Of an endless one a size beyond all that is carried.
  double times(const UnitBow& u, double push, double bent) const {
    const verify::detail::Imperfections::Bowed& b = made_.bowed()[u.pair];
    if (u.kinks) return b.is_stable(push) ? b.times_kinks(push) : 0.0;
    return b.is_stable(push) ? smaller(b.times_bow(push, bent), beyond_all) : beyond_all;
  }
  static double greatest(const std::vector<PairGrowth>& all, double factor) {
    double out = 0;
    for (const PairGrowth& g : all) out = larger(out, g.push_at(factor));
    return out;
  }
  static constexpr double beyond_all = 1e30;

  verify::detail::Imperfections made_;
  std::deque<UnitBow> units_;
};

}  // namespace baywork::rating::detail
