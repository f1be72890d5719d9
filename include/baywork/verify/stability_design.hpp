// SPDX-License-Identifier: MIT
// The search of a proof for the worst of every chord pair: as one column, as a built-up strut, and whether forces of
// first order hold for it.
#pragma once

#include <cstddef>
#include <limits>
#include <span>
#include <string>
#include <vector>

#include <baywork/response/response.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/stability_column.hpp>
#include <baywork/verify/stability_eigenvalue.hpp>
#include <baywork/verify/stability_forces.hpp>
#include <baywork/verify/stability_span.hpp>
#include <baywork/verify/stability_strut.hpp>
#include <baywork/verify/stability_sway.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify::detail {

class StabilityDesign {
 public:
  explicit StabilityDesign(const Given& given)
      : analysis_(given.analysis), model_(given.analysis.model()), basis_(given.basis) {
    if (!basis_.stability.checked) return;
    ColumnMaker maker(given.analysis, basis_, given.not_designed);
    pairs_ = maker.make();
    worst_.resize(pairs_.size());
    struts_.resize(pairs_.size());
    first_order_.resize(pairs_.size());
    for (std::size_t i = 0; i < pairs_.size(); ++i)
      if (has_formula(pairs_[i])) struts_[i] = PairStrut(model_, basis_, maker.welds(), pairs_[i]);
  }

  bool idle() const noexcept { return !basis_.stability.checked; }

  void search(const Response& r, std::size_t combination) {
    if (idle()) return;
    take_state([&](std::size_t m) { return axial_force(r, m); }, at_hand_);
    take(at_hand_, combination);
  }

  // what a rating asks: all pairs are one part, as they share the frame's eigenvalue

  using State = StabilityState;
  std::size_t parts() const noexcept { return 1; }

  template <class Forces>
  void state(std::size_t, const Forces& forces, StabilityState& out) const {
    take_state([&](std::size_t m) { return forces.in_middle(m); }, out);
  }
  double utilisation(std::size_t i, const StabilityState& s) const { return worst_row(i, s, 0).utilisation; }
  /// At least every utilisation for forces within the hull of several states. All rises with N, dN and the length;
  /// falls with the pull opposite; and rises, at one N, with the part of the buckling load: N/chi does, as chi lambda²
  /// does with lambda. That part is max -u'Gu/u'Ku over all motions u, with G straight in the loads: a greatest of
  /// straight functions, convex, and greatest at one of the states.
  double bound(std::size_t, std::span<const StabilityState* const> states) const {
    double most = 0, part = 0;
    for (const StabilityState* s : states) part = larger(part, s->part);
    for (std::size_t i = 0; i < pairs_.size(); ++i)
      most = larger(most, bound_of_pair(i, states, part * (1.0 + eigenvalue_known_to)));
    return most;
  }
  /// The row of greatest utilisation; with none where nothing is pushed.
  Row worst_row(std::size_t, const StabilityState& s, std::size_t combination) const {
    StabilityDesign alone(*this);
    alone.take(s, combination);
    std::vector<Row> rows;
    alone.add_rows(rows);
    Row worst;
    for (const Row& r : rows)
      if (r.utilisation > worst.utilisation) worst = r;
    return worst;
  }

  void add_rows(std::vector<Row>& out) const {
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const PairColumn& p = pairs_[i];
      const Worst& w = worst_[i];
      if (w.outside[0] != '\0') {
        out.push_back(outside(row_at(p, w.station), w.outside));
        continue;
      }
      if (w.utilisation > no_force) out.push_back(row(p, w));
      struts_[i].add_rows(out, [&](std::size_t station) { return row_at(p, station); });
      const char* said = second_order(p, first_order_[i].N / first_order_[i].N_cr);
      if (said[0] != '\0') out.push_back(outside(row_at(p, first_order_[i].station), said));
    }
  }

  void add_words(Words& out) const {
    out.assumptions.push_back(std::string("Forces are those of linear first-order analysis") +
                              (basis_.stability.imperfections || basis_.stability.sway.height > 0.0
                                   ? "."
                                   : " without imperfections."));
    if (idle()) {
      out.not_covered.push_back(
          "Stability of the girder as a whole, sway of open faces, second-order effects and imperfections.");
      return;
    }
    const bool eigenvalue = basis_.stability.by_eigenvalue;
    if (eigenvalue)
      out.assumptions.push_back(
          "Chord pairs, and chords that no face holds sideways: columns whose critical load is their greatest "
          "compression times the load factor at which the whole frame buckles (linear eigenvalue, supports as "
          "described, joints as stiff as described), at most Euler's load of the chords' bays.");
    else
      out.assumptions.push_back(
          "Chord pairs: two chords and the face between them as one column soft in shear, EN 1993-1-1 6.4.1, between "
          "the stations where fixed supports keep both from moving sideways, under their greatest compression all "
          "along; cross members and posts that form rings tie it to the opposite pair where that is not compressed.");
    out.assumptions.push_back(
        "The same pairs as built-up struts, EN 1993-1-1 6.4.1 and 6.4.3.1: bow L/500, the greatest chord force with "
        "the greatest shear of the face; rings do not help. Aluminium takes these forces too, with EN 1999-1-1's "
        "strengths.");
    out.assumptions.push_back(
        basis_.stability.imperfections
            ? "Bows of compressed chord pairs of straight girders, where they are held (EN 1993-1-1 5.3.3, q_d with "
              "the face's own deflection) to both sides join every combination, but for pairs with less than a "
              "twentieth of its greatest push. With them system lengths hold in open faces, up to a third of the "
              "critical load. Columns and struts have their own bows on top, on the safe side."
            : "Without bows (stability.imperfections) forces of first order are taken to hold up to a tenth of the "
              "critical load (EN 1993-1-1 5.2.1 (3)); system lengths in open faces are not on the safe side beyond.");
    if (!model_.girder.splices.empty()) {
      if (baywork::detail::why_not_straight(model_.girder).empty())
        out.assumptions.push_back(
            "Splices of compressed chord pairs push on the face between them with alpha_m N_Ed/100 to both sides, in "
            "every combination (EN 1993-1-1 5.3.3 (4)).");
      else
        out.not_covered.push_back(
            "What splices push on the faces of a girder that is not straight (EN 1993-1-1 5.3.3 (4)).");
    }
    const InitialSway& sway = basis_.stability.sway;
    if (sway.height > 0.0)
      out.assumptions.push_back("Stands out of plumb by 1/" + baywork::text::number(1.0 / angle_of(sway), 4) +
                                " (h = " + baywork::text::number(sway.height) + " m, " +
                                std::to_string(sway.columns) +
                                " in a row; EN 1993-1-1 and EN 1999-1-1 5.3.2 (3)): that share of every downward load "
                                "pushes level, to all four sides in turn. The stands must carry it.");
    out.not_covered.push_back(
        std::string(
            eigenvalue
                ? ""
                : "Buckling of the girder as a whole in modes other than a chord pair's in the plane of its face; ") +
        (sway.height > 0.0 ? (eigenvalue ? "Stability" : "stability") : (eigenvalue ? "Sway" : "sway")) +
        " of what the girder hangs from or stands on.");
  }

 private:
  struct Worst {
    const char* outside = "";
    double utilisation = 0, N = 0, dN = 0, tension = 1;
    bool rings = false;
    PairAnswer answer{};
    std::size_t station = 0, combination = 0;
  };
  /// Where N_Ed/N_cr is greatest.
  struct FirstOrder {
    double N = 0, N_cr = 1;
    std::size_t station = 0;
  };
  /// 5.2.1 (3): forces of first order hold up to a tenth of the critical load; 5.2.2 (5): amplified ones up to a third.
  double first_order_holds_to(const PairColumn& p) const {
    return basis_.stability.imperfections && p.takes_bows ? 1.0 / 3.0 : 0.1;
  }
  const char* second_order(const PairColumn& p, double part) const {
    if (part <= first_order_holds_to(p)) return "";
    if (part > 1.0 / 3.0)
      return "more than a third of the critical load: second order is needed (EN 1993-1-1 5.2.2 (5))";
    return basis_.stability.imperfections
               ? "more than a tenth of the critical load, and no bows can be made for it (EN 1993-1-1 5.2.1 (3))"
               : "more than a tenth of the critical load, and forces are of first order without bows (EN 1993-1-1 "
                 "5.2.1 (3)): ask for stability.imperfections";
  }
  static bool has_formula(const PairColumn& p) { return p.outside[0] == '\0' && p.no_formula[0] == '\0'; }

  template <class Axial>
  void take_state(const Axial& axial, StabilityState& out) const {
    out.of.clear();
    for (const PairColumn& p : pairs_) out.of.emplace_back(model_, p.where, axial);
    out.part = 0;
    if (!basis_.stability.by_eigenvalue) return;
    std::vector<double> forces;
    for (std::size_t m = 0; m < model_.frame.members.size(); ++m) forces.push_back(axial(m));
    out.part = 1.0 / critical_factor(analysis_, forces, eigenvalue_known_to).factor;
  }
  void take(const StabilityState& s, std::size_t combination) {
    for (std::size_t i = 0; i < pairs_.size(); ++i) search_pair(i, s, combination);
  }

  void search_pair(std::size_t i, const StabilityState& s, std::size_t combination) {
    const PairColumn& p = pairs_[i];
    const PairForces& own = s.of[i];
    const std::size_t last = PairForces::last(model_.girder);
    double N = 0, dN = 0, size = 0;
    std::size_t station = 0;
    for (std::size_t k = 1; k < last; ++k) {
      dN = larger(dN, own.difference(k));
      size = larger(size, magnitude(own.sum(k)));
      if (own.sum(k) <= N) continue;
      N = own.sum(k);
      station = k;
    }
    if (!(N > larger(forces_known_to * size, pair_pushed_from * dN))) return;
    Worst w{p.outside, 0.0, N, dN, 1.0, p.opposite != i, {}, station, combination};
    if (w.outside[0] == '\0') w.outside = p.no_formula;
    double length = 0;
    if (has_formula(p)) {
      const PairForces& far = s.of[p.opposite];
      bool beyond = false;
      for (std::size_t k = 1; k < last; ++k) {
        const double n = own.sum(k);
        if (!(n > pushed_from * N)) continue;
        beyond = beyond || is_beyond(p.where, k);
        w.tension = smaller(w.tension, -far.sum(k) / n);
      }
      w.rings = w.rings && w.tension >= 0.0;
      w.answer = answer_of(p, model_.girder.stations, beyond, w.tension, w.rings);
      w.outside = w.answer.outside;
      if (w.outside[0] == '\0') length = w.answer.length;
    }
    if (basis_.stability.by_eigenvalue && p.outside[0] == '\0') {
      w.outside = "";
      w.answer = answer_of(p, N / s.part);
    }
    w.utilisation =
        w.outside[0] != '\0' ? std::numeric_limits<double>::infinity() : pair_utilisation(p, w.answer, N, dN);
    if (w.utilisation > worst_[i].utilisation) worst_[i] = w;
    if (w.outside[0] != '\0') return;
    if (length > 0.0) struts_[i].search(N, dN, length, station, combination);
    FirstOrder& f = first_order_[i];
    if (N / w.answer.N_cr_sway > f.N / f.N_cr) f = {N, w.answer.N_cr_sway, station};
  }

  double bound_of_pair(std::size_t i, std::span<const StabilityState* const> states, double part) const {
    static constexpr double never = std::numeric_limits<double>::infinity();
    const PairColumn& p = pairs_[i];
    const PairSpan f(p.where, p.opposite, i, PairForces::last(model_.girder), states);
    if (!(f.N_most > pair_pushed_from * f.dN_least)) return 0.0;
    if (p.outside[0] != '\0' || (!has_formula(p) && !basis_.stability.by_eigenvalue)) return never;
    double most = 0;
    const auto take = [&](const PairAnswer& a) {
      most = larger(
          most, f.N_most / a.N_cr_sway > first_order_holds_to(p) ? never : pair_utilisation(p, a, f.N_most, f.dN_most));
    };
    if (basis_.stability.by_eigenvalue) take(answer_of(p, f.N_most / part));
    if (!has_formula(p)) return most;
    const bool may_ring = p.opposite != i && f.tension_most >= 0.0, must_ring = may_ring && f.tension_least >= 0.0;
    for (const bool beyond : {false, true}) {
      if (beyond ? !f.may_reach_beyond : f.must_reach_beyond) continue;
      for (const bool rings : {false, true}) {
        if (rings ? !may_ring : must_ring) continue;
        const PairAnswer a = answer_of(p, model_.girder.stations, beyond, f.tension_least, rings);
        const bool outside = a.outside[0] != '\0';
        if (!basis_.stability.by_eigenvalue) outside ? void(most = never) : take(a);
        if (!outside) most = larger(most, struts_[i].bound(f.N_most, f.dN_most, a.length));
      }
    }
    return most;
  }

  Row row_at(const PairColumn& p, std::size_t station) const {
    Row row;
    row.address.station = static_cast<int>(station);
    if (p.alone()) {
      row.address.chord = static_cast<int>(p.where.first);
      row.chord = PartName(model_.frame.names.chords[p.where.first]);
    } else {
      row.address.face = static_cast<int>(p.where.face);
      row.face = PartName(model_.frame.names.faces[p.where.face]);
    }
    return row;
  }

  Row row(const PairColumn& p, const Worst& w) const {
    Row row = row_at(p, w.station);
    row.check = Check::chord_pair;
    row.standard = p.aluminium ? "EN 1999-1-1:2007" : "EN 1993-1-1:2005";
    const bool formula = w.answer.half_waves > 0;
    row.clause = p.aluminium || !formula ? "6.3.1" : "6.3.1, N_cr as 6.4.1";
    if (p.aluminium && formula) row.reason = "N_cr of the pair as EN 1993-1-1 6.4.1";
    if (!formula) row.reason = "N_cr from the eigenvalue of the whole frame";
    row.combination = w.combination;
    row.demand = row.utilisation = w.utilisation;
    row.formula = w.dN == 0.0 ? "{a}/({b}*{c}*{d})" : "{a}/({b}*{c}*{d}) + {e}/((1 - {a}/{f})*{c}*{d})";
    row.add("N_Ed", w.N, kilonewton);
    row.add(chi_of(p.welded_along), w.answer.chi);
    row.add("omega_0", p.omega_0);
    row.add("N_c,Rd", p.N_Rd, kilonewton);
    row.add(w.dN == 0.0 ? "" : "dN_Ed", w.dN, kilonewton);
    row.add("N_cr", w.answer.N_cr, kilonewton);
    row.add("lambda", w.answer.lambda);
    if (!formula) return row;
    row.add("half waves", static_cast<double>(w.answer.half_waves));
    row.add("L", w.answer.length, metre);
    row.add("S_v", p.column.shear_stiffness, kilonewton);
    if (w.rings) {
      row.add("c of the rings", p.behind.racking, kilonewton_per_square_metre);
      row.add("tension opposite/N_Ed", smaller(1.0, w.tension));
    }
    return row;
  }

  /// Forces that should vanish do so within the solver's tolerance of the largest.
  static constexpr double forces_known_to = 1e-9;
  static constexpr double eigenvalue_known_to = 1e-6;

  const Analysis& analysis_;
  const GirderModel& model_;
  Basis basis_;
  std::vector<PairColumn> pairs_;
  std::vector<Worst> worst_;
  std::vector<PairStrut> struts_;
  std::vector<FirstOrder> first_order_;
  StabilityState at_hand_{};  ///< kept for its memory
};

}  // namespace baywork::verify::detail
