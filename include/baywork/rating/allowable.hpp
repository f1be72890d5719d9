// SPDX-License-Identifier: MIT
// How much a girder may carry of a load, on top of what is placed already, and what governs.
#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <limits>
#include <numeric>
#include <optional>
#include <string>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#include <baywork/rating/detail/deflection.hpp>
#include <baywork/rating/detail/first_crossing.hpp>
#include <baywork/rating/terms.hpp>
#include <baywork/rating/verdict.hpp>

namespace baywork::rating {

/// Rates one girder for any number of loads. What is placed is solved before, each case once; every load is solved
/// once with unit size. Loads are linear, so that no trial is ever solved, and initial sway is, which is a share of
/// them; bows, which are not, stand as unit cases whose multiples are known at every load factor (detail::Bows).
/// Connectors of splices count wherever they are described, joints and the stability of the whole where the basis asks
/// for them. Stays where it was made; the analysis must outlive it.
class Rater {
 public:
  /// With nothing placed. Throws BadDescription for terms that cannot be.
  explicit Rater(const Analysis& analysis, Terms terms = {}) : Rater(analysis, nullptr, std::move(terms)) {}
  /// On top of these cases, with all their factors.
  explicit Rater(const Cases& placed, Terms terms = {}) : Rater(placed.analysis(), &placed, std::move(terms)) {}
  Rater(const Rater&) = delete;
  Rater& operator=(const Rater&) = delete;

  const Analysis& analysis() const noexcept { return analysis_; }
  const Terms& terms() const noexcept { return terms_; }

  /// The greatest load factor below the first at which a utilisation of any bar, check and combination passes 1, or a
  /// deflection its limit; to 1e-12 of itself.
  Allowable allowable(const std::vector<Action>& unit) const { return allowable(analysis_.solve(unit)); }
  Allowable allowable(const Response& unit, Search how = Search::below_least) const {
    if (&unit.analysis() != &analysis_)
      fail<BadDescription>("allowable load", "the load was solved on another girder",
                           "one of the same analysis is accepted");
    const detail::Motion moves = deflections_.motion(unit);
    const detail::Load load(unit, phi_);
    Allowable out = start(moves);
    if (out.verdict == Verdict::outside_scope || out.verdict == Verdict::nothing_left) return out;

    out.factor = terms_.most;
    const double by_deflection = terms_.deflection
                                     ? deflections_.first(moves, terms_.deflection->of, out.deflection_limit)
                                     : std::numeric_limits<double>::infinity();
    if (by_deflection <= out.factor) {
      out.factor = by_deflection;
      out.verdict = Verdict::deflection;
    }
    const Courses courses = courses_of(&load, out.factor);
    Governs by;
    if (search(courses, how, out.factor, by)) {
      out.verdict = by.topic == bars ? Verdict::member : Verdict::topic;
      take_row(courses, row_of(courses, by, out.factor), by, out);
      look_beyond(courses, by, out);
    } else if (out.verdict == Verdict::deflection) {
      take_worst(courses, out);
    }
    take_deflections(moves, out.factor, out);
    return out;
  }

  /// The greatest utilisation of any part in any combination at a load factor: at most what a proof of all cases together
  /// says, which walks combinations apart that differ in this load's factor alone.
  double utilisation(const Response& unit, double factor) const {
    const detail::Load load(unit, phi_);
    const Courses courses = courses_of(&load, factor);
    double most = 0;
    for_each_part(courses, [&](auto& part, const Governs&) {
      typename std::remove_cvref_t<decltype(part)>::State s{};
      part.state(factor, s);
      most = larger(most, part.utilisation(s));
    });
    return most;
  }

 private:
  static constexpr std::size_t bars = 0, endless_bow = (std::numeric_limits<std::size_t>::max)();
  /// A part in one course of forces: a bar, or a part of one of the topics, which count from 1.
  struct Governs {
    std::size_t course = 0, topic = bars, part = 0;
  };
  /// All combinations, each as it is and with every bow to both sides.
  struct Courses {
    std::vector<detail::Course> list;
    std::deque<std::vector<detail::PairGrowth>> growth;  ///< that they point into
  };

  Rater(const Analysis& analysis, const Cases* placed, Terms terms)
      : analysis_(analysis),
        terms_(std::move(terms)),
        basis_(verify::with_use(terms_.basis)),
        design_(analysis, basis_, terms_.standards),
        topics_(verify::detail::topics_from<verify::detail::Topics>(
            {analysis_, basis_, design_.not_designed(), terms_.standards})) {
    validate(terms_);
    std::vector<CaseKind> kinds;
    if (placed != nullptr) kinds = placed->kinds();
    kinds.push_back({"load", terms_.nature, terms_.alternative});
    combinations_ = combinations(terms_.set, kinds);
    for (std::size_t k = 0; k < combinations_.size(); ++k) add_line(placed, k);
    if (basis_.stability.sway.height > 0.0) add_sway();
    const bool bows = basis_.stability.imperfections,
               kinks = basis_.stability.checked && !analysis.girder().splices.empty();
    if ((bows || kinks) && verify::detail::can_be_imperfect(analysis.girder())) bows_.emplace(analysis, bows);
    look_at_placed();
    deflections_ = detail::Deflections(analysis, placed, kinds, terms_.service);
  }

  /// Calls visit(topic, its number) for each that the basis asks for.
  template <class Visit>
  void for_each_topic(Visit visit) const {
    std::size_t number = bars;
    const auto one = [&](const verify::detail::RatedTopic auto& topic) {
      ++number;
      if (!verify::detail::is_idle(topic)) visit(topic, number);
    };
    std::apply([&](const auto&... t) { (one(t), ...); }, topics_);
  }
  /// For load factors up to `to`.
  Courses courses_of(const detail::Load* loaded, double to) const {
    Courses out;
    for (const detail::Line& line : lines_) {
      if (line.sway && !line.placed_sways && (loaded == nullptr || !loaded->sways())) continue;
      const detail::Unit* load = loaded == nullptr ? nullptr : &loaded->on(line);
      out.list.emplace_back(line, load);
      if (!bows_) continue;
      out.growth.push_back(bows_->growth(line, load));
      for (const detail::UnitBow& bow : bows_->units()) {
        if (bows_->never_made(bow, out.growth.back(), 0.0, to)) continue;
        for (const double side : {1.0, -1.0}) out.list.emplace_back(line, load, *bows_, bow, side, out.growth.back());
      }
    }
    return out;
  }
  /// Calls visit(part, where) for every part in every course: whether bows end, then bars in a scattered order, as
  /// neighbours are loaded alike, and a low crossing met early spares the others; then topics.
  template <class Visit>
  void for_each_part(const Courses& courses, Visit visit) const {
    const std::vector<detail::Course>& all = courses.list;
    for (std::size_t k = 0; k < all.size(); ++k)
      if (all[k].bow() != nullptr) {
        detail::BowPart part(all[k]);
        visit(part, Governs{k, endless_bow, 0});
      }
    const std::size_t n = design_.size();
    std::size_t step = 1 + 5 * n / 13;
    while (n > 0 && std::gcd(step, n) != 1) ++step;
    for (std::size_t i = 0, m = 0; i < n; ++i, m = (m + step) % n)
      for (std::size_t k = 0; k < all.size(); ++k) {
        detail::MemberPart part(design_, all[k], m);
        visit(part, Governs{k, bars, m});
      }
    for_each_topic([&](const auto& topic, std::size_t number) {
      for (std::size_t i = 0; i < topic.parts(); ++i)
        for (std::size_t k = 0; k < all.size(); ++k) {
          detail::TopicPart part(topic, all[k], i);
          visit(part, Governs{k, number, i});
        }
    });
  }

  /// The worst row of what is placed, wherever a check might fail under it or is outside the scope.
  void look_at_placed() {
    const auto take = [this](const verify::Row& r, const std::string& words) {
      if (has_placed_row_ && !(r.utilisation > placed_row_.utilisation)) return;
      placed_row_ = r;
      placed_words_ = words;
      has_placed_row_ = true;
    };
    for (const verify::Row& r : design_.outside_rows()) take(r, "");
    for_each_topic([&](const auto& topic, std::size_t) {
      std::vector<verify::Row> rows;
      topic.add_rows(rows);  // nothing is searched in: those outside the scope alone
      for (const verify::Row& r : rows) take(r, "");
    });
    const Courses courses = courses_of(nullptr, 0.0);
    for_each_part(courses, [&](auto& part, const Governs& here) {
      if (part.surely_holds(0.0, 0.0)) return;
      const verify::Row r = row_of(courses, here, 0.0);
      if (r.utilisation > 1.0) take(r, words_of(courses.list[here.course], r, 0.0));
    });
  }

  /// Combinations that differ in the load's factor alone are one: the greatest factor meets every limit first.
  void add_line(const Cases* placed, std::size_t k) {
    std::vector<double> factors = combinations_[k].factors;
    const double own = factors.back();
    factors.pop_back();
    for (std::size_t i = 0; i < lines_.size(); ++i)
      if (bases_[i] == factors) {
        if (own > lines_[i].factor) {
          lines_[i].factor = own;
          lines_[i].combination = k;
        }
        return;
      }
    detail::Line& line = lines_.emplace_back();
    line.combination = k;
    line.factor = own;
    if (placed != nullptr) {
      line.placed = placed->combine({combinations_[k].name, factors});
      line.there.emplace(*line.placed);
    }
    bases_.push_back(std::move(factors));
  }

  /// Every line leaning to all sides as well.
  void add_sway() {
    verify::detail::require_stands(analysis_.girder());
    phi_ = verify::angle_of(basis_.stability.sway);
    for (std::size_t i = 0, upright = lines_.size(); i < upright; ++i)
      for (std::size_t way = 0; way < verify::detail::sway_ways.size(); ++way) {
        detail::Line& line = lines_.emplace_back();
        line.combination = lines_[i].combination;
        line.factor = lines_[i].factor;
        line.sway = way;
        line.placed = lines_[i].placed;
        if (!line.placed) continue;
        if (std::optional<Response> all = detail::Load::leaning(*line.placed, way, phi_)) {
          line.placed = std::move(all);
          line.placed_sways = true;
        }
        line.there.emplace(*line.placed);
      }
  }

  /// What is there before any load.
  Allowable start(const detail::Motion& moves) const {
    Allowable out;
    take_deflections(moves, 0.0, out);
    if (terms_.deflection) {
      const double length = terms_.deflection->length;
      out.deflection_limit = (length > 0.0 ? length : analysis_.girder().span()) / terms_.deflection->ratio;
    }
    out.verdict = Verdict::not_limited;
    if (has_placed_row_ && !placed_row_.fulfilled()) {
      const bool outside = placed_row_.check == verify::Check::outside_scope;
      out.verdict = outside ? Verdict::outside_scope : Verdict::nothing_left;
      out.row = placed_row_;
      out.has_row = true;
      out.combination = placed_words_;
    } else if (terms_.deflection) {
      const bool whole = terms_.deflection->of == DeflectionOf::whole;
      if ((whole ? out.deflection : out.variable_deflection) > out.deflection_limit)
        out.verdict = Verdict::nothing_left;
    }
    return out;
  }

  void take_deflections(const detail::Motion& moves, double factor, Allowable& out) const {
    out.deflection = deflections_.at(moves, DeflectionOf::whole, factor);
    out.variable_deflection = deflections_.at(moves, DeflectionOf::variable, factor);
  }

  /// Lowers `factor` to the first crossing of any part in any course; false where none lies below it.
  bool search(const Courses& courses, Search how, double& factor, Governs& by) const {
    bool any = false;
    const double limit = factor;
    for_each_part(courses, [&](auto& part, const Governs& here) {
      if (!courses.list[here.course].changes()) return;
      const double found = detail::FirstCrossing(part).search(how == Search::every_bar ? limit : factor);
      if (!(found < factor)) return;
      factor = found;
      by = here;
      any = true;
    });
    return any;
  }

  /// The worst row of a bar.
  verify::Row bar_row(std::size_t member, const std::array<double, 6>& start, const MemberLoads<double>& loads,
                      std::size_t combination) const {
    verify::detail::FoundOfMember found;
    design_.search_member(member, start, loads, combination, found);
    std::size_t worst = 0;
    for (std::size_t c = 1; c < found.size(); ++c)
      if (found[c].utilisation > found[worst].utilisation) worst = c;
    return design_.row(member, static_cast<verify::Check>(worst), found[worst]);
  }
  verify::Row row_of(const Courses& courses, const Governs& by, double factor) const {
    const detail::Course& course = courses.list[by.course];
    if (by.topic == bars) {
      std::vector<MemberLoad> loads;
      const detail::MemberState s = course.member(course.at(factor), by.part, loads);
      return bar_row(by.part, s.start, s.loads, course.combination());
    }
    verify::Row out;
    if (by.topic == endless_bow && course.endless(factor))
      out = verify::detail::row_of_unstable(analysis_.girder(), bows_->face(*course.bow()), course.combination());
    for_each_topic([&](const auto& topic, std::size_t number) {
      if (number != by.topic) return;
      typename std::remove_cvref_t<decltype(topic)>::State s{};
      topic.state(by.part, detail::ForcesAt{course, course.at(factor)}, s);
      out = topic.worst_row(by.part, s, course.combination());
    });
    return out;
  }
  /// Of a row outside the scope whatever the load: none.
  std::string words_of(const detail::Course& course, const verify::Row& row, double factor) const {
    return combinations_[row.combination].name + course.words(factor);
  }
  void take_row(const Courses& courses, const verify::Row& row, const Governs& by, Allowable& out) const {
    out.row = row;
    out.has_row = true;
    out.combination = words_of(courses.list[by.course], row, out.factor);
  }
  void take_worst(const Courses& courses, Allowable& out) const {
    double most = verify::detail::no_force;
    Governs worst;
    bool any = false;
    for_each_part(courses, [&](auto& part, const Governs& here) {
      typename std::remove_cvref_t<decltype(part)>::State s{};
      part.state(out.factor, s);
      const double u = part.utilisation(s);
      if (!(u > most)) return;
      most = u;
      worst = here;
      any = true;
    });
    if (any) take_row(courses, row_of(courses, worst, out.factor), worst, out);
  }
  /// Where the checks' scope ends with the least load already, there is none.
  void look_beyond(const Courses& courses, const Governs& by, Allowable& out) const {
    static constexpr double leap = 1e-3;
    const double above_at = out.factor > 0.0 ? out.factor * (1.0 + 1e-6) : 1e-20 * terms_.most;
    const verify::Row above = row_of(courses, by, above_at);
    out.jumps = above.utilisation > 1.0 + leap || out.row.utilisation < 1.0 - leap;
    if (!out.jumps) return;
    out.beyond = above;
    if (out.factor > 0.0 || above.check != verify::Check::outside_scope) return;
    out.verdict = Verdict::outside_scope;
    out.jumps = false;
    take_row(courses, above, by, out);
  }

  const Analysis& analysis_;
  Terms terms_;
  verify::Basis basis_;  // with what wear takes
  verify::detail::MemberDesign design_;
  verify::detail::Topics topics_;
  std::vector<Combination> combinations_;
  std::vector<std::vector<double>> bases_;  ///< of each line: the factors of what is placed
  std::deque<detail::Line> lines_;
  double phi_ = 0;  ///< of stands out of plumb
  std::optional<detail::Bows> bows_;
  verify::Row placed_row_{};
  std::string placed_words_;
  bool has_placed_row_ = false;
  detail::Deflections deflections_;
};

}  // namespace baywork::rating
