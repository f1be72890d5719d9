// SPDX-License-Identifier: MIT
// Bows and splices' kinks of compressed chord pairs as further load cases, EN 1993-1-1:2005 5.3.3, in every
// combination.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/load/bow.hpp>
#include <baywork/response/cases.hpp>
#include <baywork/verify/built_up.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/stability_forces.hpp>
#include <baywork/verify/stability_pairs.hpp>

namespace baywork::verify {

/// Cases with those of unit bows and kinks behind them, and combinations with factors for all.
struct ImperfectCases {
  Cases cases;
  std::vector<Combination> combinations;
  /// Combinations, by their new number, in which a bow would grow without end, and the face: the push is above the
  /// critical one. They are not made.
  struct Unstable {
    std::size_t combination = 0, face = 0;
  };
  std::vector<Unstable> unstable{};
};

namespace detail {

/// The unit cases of one girder's pairs and what the answers make of them.
class Imperfections {
 public:
  explicit Imperfections(const Analysis& analysis)
      : analysis_(analysis), girder_(analysis.girder()), beam_(girder_beam(girder_)) {
    if (!beam_.not_straight.empty())
      fail<OutsideScope>("imperfections", beam_.not_straight, "straight prismatic girders are accepted");
    for (ChordPair& p : chord_pairs(analysis, beam_)) {
      if (p.held.empty()) continue;
      Bowed b{std::move(p), {}, {}, 0.0, 0, 0};
      find_stretches(b);
      bowed_.push_back(std::move(b));
    }
  }

  /// From a hold to the next, or from a hold to a free tip; stations.
  struct Stretch {
    std::size_t from = 0, to = 0;
    bool overhang = false;
  };
  struct Bowed {
    ChordPair pair;
    std::vector<Stretch> stretches;
    std::vector<double> lengths;     ///< L of 5.3.3 of each; of an overhang twice its own
    double deflection = 0;           ///< of the unit bow, over L/500: the greatest; 0 until it is solved
    std::size_t bow = 0, kinks = 0;  ///< numbers of their cases

    bool is_stable(double push) const { return 1.0 - push * deflection > 0.0; }
    /// Multiples of the unit cases under a push and the pair's other deflection over L/500.
    double times_bow(double push, double bent) const {
      return push * (en1993::shared_imperfection(2.0) + bent) / (1.0 - push * deflection);
    }
    static double times_kinks(double push) { return push * en1993::shared_imperfection(2.0); }
  };

  /// Of the combination's greatest push: pairs with less are left as they are.
  static constexpr double least_push = 0.05;

  std::vector<Bowed>& bowed() noexcept { return bowed_; }
  const std::vector<Bowed>& bowed() const noexcept { return bowed_; }

  /// With kinks alone where no bows are asked for.
  ImperfectCases with(const Cases& cases, const std::vector<Combination>& combinations, bool bows) {
    std::vector<Response> responses;
    std::vector<CaseKind> kinds = cases.kinds();
    for (std::size_t i = 0; i < cases.size(); ++i) responses.push_back(cases[i]);
    const auto add_case = [&](Response r) {
      kinds.push_back({r.name(), Nature::permanent, ""});
      responses.push_back(std::move(r));
      return responses.size() - 1;
    };
    for (Bowed& b : bowed_) {
      if (bows) b.bow = add_case(solve_bow(b));
      if (!girder_.splices.empty()) b.kinks = add_case(solve_kinks(b));
    }
    ImperfectCases out{{analysis_, std::move(responses), std::move(kinds)}, {}, {}};
    for (const Combination& c : combinations) add(cases.combine(c), c, bows, out);
    return out;
  }

  /// The unit bow; its deflection is known from then on.
  Response solve_bow(Bowed& b) const {
    Response out = analysis_.solve(LoadCase{"bow of the " + name_of(b), Nature::permanent, unit_bow(b)});
    b.deflection = greatest(deflections(b, out));
    return out;
  }
  Response solve_kinks(const Bowed& b) const {
    return analysis_.solve(LoadCase{"kinks of the " + name_of(b), Nature::permanent, unit_kinks(b)});
  }

  /// Motions of the pair's stations across, from the line between its holds (at an overhang from the tangent at its
  /// root), over L/500 of their stretch; straight in the loads.
  std::vector<double> deflections(const Bowed& b, const Response& r) const {
    const auto moved = [&](std::size_t station) {
      Vec3<> sum{};
      for (const std::size_t c : {b.pair.first, b.pair.second})
        sum += r.answer().displacement(r.model().chord_node(station, c));
      return 0.5 * dot(sum, b.pair.across);
    };
    std::vector<double> out;
    for (std::size_t i = 0; i < b.stretches.size(); ++i) {
      const Stretch& s = b.stretches[i];
      const std::size_t other = !s.overhang               ? s.to
                                : s.to > s.from           ? (s.from > 0 ? s.from - 1 : s.from + 1)
                                : s.from < girder_.bays() ? s.from + 1
                                                          : s.from - 1;
      const double slope = (moved(other) - moved(s.from)) / (at(other) - at(s.from));
      const std::size_t low = smaller(s.from, s.to), high = larger(s.from, s.to);
      for (std::size_t k = low; k <= high; ++k)
        out.push_back((moved(k) - moved(s.from) - slope * (at(k) - at(s.from))) * 500.0 / b.lengths[i]);
    }
    return out;
  }

  /// Pushes in both chords of a pair by inner station; straight in the loads.
  std::vector<double> pushes(const Bowed& b, const Response& r) const {
    const PairForces forces(r, b.pair);
    std::vector<double> out;
    for (std::size_t s = 1; s < PairForces::last(girder_); ++s) out.push_back(forces.sum(s));
    return out;
  }
  std::string words_of_bow(const Bowed& b, double times) const {
    return "bow (" + baywork::text::number(8e-3 * times / (500.0 * longest(b)), 4) + " kN/m) of the " + name_of(b);
  }
  std::string words_of_kinks(const Bowed& b, double times) const {
    return "kinks (" + baywork::text::number(1e-5 * times, 4) + " kN) of the " + name_of(b);
  }

  static double greatest(const std::vector<double>& deflections) {
    double most = 0;
    for (const double d : deflections) most = larger(most, magnitude(d));
    return most;
  }

 private:
  double at(std::size_t station) const { return girder_.stations[station]; }
  std::string name_of(const Bowed& b) const { return girder_.faces[b.pair.face].name + " face"; }

  void find_stretches(Bowed& b) const {
    const std::vector<std::size_t>& held = b.pair.held;
    const std::size_t last = girder_.bays();
    const auto add = [&](std::size_t from, std::size_t to, bool overhang) {
      b.stretches.push_back({from, to, overhang});
      b.lengths.push_back(magnitude(at(to) - at(from)) * (overhang ? 2.0 : 1.0));
    };
    if (held.front() > 0) add(held.front(), 0, true);
    for (std::size_t i = 1; i < held.size(); ++i) add(held[i - 1], held[i], false);
    if (held.back() < last) add(held.back(), last, true);
  }

  /// For 1 N of push and e0 = L/500: q = 8/(500 L), to alternating sides from hold to hold.
  std::vector<Action> unit_bow(const Bowed& b) const {
    std::vector<Action> out;
    double side = 1.0;
    for (std::size_t i = 0; i < b.stretches.size(); ++i, side = -side) {
      const Stretch& s = b.stretches[i];
      const Vec3<> q = side * 8.0 / (500.0 * b.lengths[i]) * b.pair.across;
      const std::vector<Action> one = s.overhang
                                          ? bow_of_overhang(b.pair.first, b.pair.second, at(s.from), at(s.to), q)
                                          : bow_between_holds({b.pair.first, b.pair.second, at(s.from), at(s.to)}, q);
      out.insert(out.end(), one.begin(), one.end());
    }
    return out;
  }
  /// For 1 N of push: 1/100 at every splice.
  std::vector<Action> unit_kinks(const Bowed& b) const {
    std::vector<Action> out;
    for (const std::size_t s : girder_.splices) {
      const std::vector<Action> one =
          kink_at({b.pair.first, b.pair.second, at(s - 1), at(s + 1)}, at(s), 0.01 * b.pair.across);
      out.insert(out.end(), one.begin(), one.end());
    }
    return out;
  }

  /// The combination as it is, and with every bow and the kinks of every face that matters, to both sides.
  void add(const Response& r, const Combination& given, bool bows, ImperfectCases& out) const {
    std::vector<double> factors = given.factors;
    factors.resize(out.cases.size(), 0.0);
    out.combinations.push_back({given.name, factors});
    std::vector<double> push(bowed_.size());
    double most = 0;
    for (std::size_t i = 0; i < bowed_.size(); ++i) {
      for (const double p : pushes(bowed_[i], r)) push[i] = larger(push[i], p);
      most = larger(most, push[i]);
    }
    const auto both_sides = [&](std::size_t unit, double factor, const std::string& words) {
      for (const bool plus : {true, false}) {
        std::vector<double> with = factors;
        with[unit] = plus ? factor : -factor;
        out.combinations.push_back({given.name + (plus ? " + " : " - ") + words, std::move(with)});
      }
    };
    for (std::size_t i = 0; i < bowed_.size(); ++i) {
      const Bowed& b = bowed_[i];
      if (!(push[i] > least_push * most)) continue;
      if (!b.is_stable(push[i])) {
        out.unstable.push_back({out.combinations.size() - 1, b.pair.face});
        continue;
      }
      const double kinks = Bowed::times_kinks(push[i]);
      if (bows) {
        const double bow = b.times_bow(push[i], greatest(deflections(b, r)));
        both_sides(b.bow, bow, words_of_bow(b, bow));
      }
      if (b.kinks != 0) both_sides(b.kinks, kinks, words_of_kinks(b, kinks));
    }
  }
  static double longest(const Bowed& b) {
    double l = 0;
    for (const double x : b.lengths) l = larger(l, x);
    return l;
  }

  const Analysis& analysis_;
  const Girder& girder_;
  GirderBeam beam_;
  std::vector<Bowed> bowed_;
};

/// Bows are those of straight prismatic girders.
inline bool can_be_imperfect(const Girder& g) { return baywork::detail::why_not_straight(g).empty(); }

inline Row row_of_unstable(const Girder& g, std::size_t face, std::size_t combination) {
  Row row;
  row.address.face = static_cast<int>(face);
  row.face = PartName(g.faces[face].name);
  row.combination = combination;
  return outside(row, "chord pair: its bow grows without end, the compression is above the critical load");
}
/// One row outside the scope for each face whose bow grows without end.
inline std::vector<Row> rows_of_unstable(const ImperfectCases& with) {
  std::vector<Row> out;
  for (const ImperfectCases::Unstable& u : with.unstable) {
    const Row row = row_of_unstable(with.cases.analysis().girder(), u.face, u.combination);
    bool said = false;
    for (const Row& r : out) said = said || r.address == row.address;
    if (!said) out.push_back(row);
  }
  return out;
}

}  // namespace detail

/// The equivalent forces of EN 1993-1-1:2005 5.3.3 in every combination, solved on the factorisation that is there.
/// N_Ed is the greatest push in both chords of a face together at any station, which is M_Ed/h where the girder bends.
/// Bow, (5.12) and (5.13): q_d = N_Ed 8 (e0 + delta_q)/L², e0 = alpha_m L/500, m = 2 chords, L from hold to hold (twice
/// an overhang), to both sides, alternating along the girder, as actions that hold each other: supports feel the couple
/// N_Ed e0 of overhangs alone. delta_q is the face's own deflection under q_d and the combination: with that of the
/// unit bow, d, and of the combination, both over L/500, the equation of q_d is linear and is solved, not iterated:
///   q_d = q(e0 = L/500) N_Ed (alpha_m + r)/(1 - N_Ed d).
/// Kinks, (4): alpha_m N_Ed/100 at all splices at once, without the bow. Faces with less than a twentieth of the
/// greatest push are left as they are. Sway of stands, 5.3.2: with_sway(). EN 1999-1-1:2007 5.3.3 is the same.
/// Values from memory, check against the standard and the national annex.
inline ImperfectCases with_imperfections(const Cases& cases, const std::vector<Combination>& combinations) {
  return detail::Imperfections(cases.analysis()).with(cases, combinations, true);
}
/// The kinks alone: the bracing has to resist them also where bows are left out, 5.3.3 (4) and (5).
inline ImperfectCases with_kinks(const Cases& cases, const std::vector<Combination>& combinations) {
  return detail::Imperfections(cases.analysis()).with(cases, combinations, false);
}
inline ImperfectCases with_imperfections(const Cases& cases, const CombinationSet& set) {
  return with_imperfections(cases, combinations(set, cases.kinds()));
}

}  // namespace baywork::verify
