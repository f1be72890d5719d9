// SPDX-License-Identifier: MIT
// How much a girder may carry of a load, on top of what is placed already, and what governs.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <numeric>
#include <ostream>
#include <string>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#include <baywork/rating/detail/deflection.hpp>
#include <baywork/rating/detail/first_crossing.hpp>
#include <baywork/rating/terms.hpp>

namespace baywork::rating {

/// What an allowable load is limited by, or why it is no number.
enum class Verdict : std::uint8_t {
  member,         ///< a check of a bar reaches 1
  topic,          ///< a check beyond single bars does: a joint, a weld, a splice
  deflection,     ///< the deflection limit is reached first
  nothing_left,   ///< what is placed already fails, or deflects too much
  not_limited,    ///< nothing is reached up to Terms::most
  outside_scope,  ///< a bar or joint is not covered by the checks: no load is given
};
inline const char* name(Verdict v) {
  switch (v) {
    case Verdict::member: return "a bar";
    case Verdict::topic: return "what bars meet in";
    case Verdict::deflection: return "deflection";
    case Verdict::nothing_left: return "nothing left";
    case Verdict::not_limited: return "not limited";
    case Verdict::outside_scope: return "outside the scope";
  }
  return "";
}

/// How a search spares itself work: a bar or joint is searched only below the least crossing found so far, or every one
/// in every combination by itself, for comparison.
enum class Search : std::uint8_t { below_least, every_bar };

/// Owns all it says: it may outlive girder and analysis.
struct Allowable {
  Verdict verdict = Verdict::outside_scope;
  /// Characteristic load as a multiple of the unit load; 0 where nothing is left or a bar is outside the scope, and
  /// Terms::most where nothing limits it.
  double factor = 0;
  /// The governing check at that load: its utilisation is 1, or just below. With the verdict `deflection` the worst
  /// check there; with `nothing_left` that of what is placed; with `outside_scope` the bar. None where !has_row.
  verify::Row row{};
  bool has_row = false;
  std::string combination;  ///< in words, of the row
  /// The utilisation leaps past 1 at this load, where a check begins (compression) or a cross-section changes its
  /// class: `beyond` is the worst check a millionth above.
  bool jumps = false;
  verify::Row beyond{};
  /// Greatest displacement of any chord's joint or bay middle at this load [m], characteristic: of all actions, and of
  /// those that are not permanent. That of what is placed where nothing is left.
  double deflection = 0, variable_deflection = 0;
  double deflection_limit = std::numeric_limits<double>::infinity();  ///< [m]

  bool is_load() const noexcept {
    return verdict == Verdict::member || verdict == Verdict::topic || verdict == Verdict::deflection;
  }
};

/// Rates one girder for any number of loads. What is placed is solved before, each case once; every load is solved
/// once with unit size. Loads are linear, so that no trial is ever solved. Connectors of splices count wherever they are
/// described. Stays where it was made; the analysis must outlive it.
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
  /// deflection its limit; to 1e-12 of itself. Where the basis asks for joints they count as bars do.
  Allowable allowable(const std::vector<Action>& unit) const { return allowable(analysis_.solve(unit)); }
  Allowable allowable(const Response& unit, Search how = Search::below_least) const {
    if (&unit.analysis() != &analysis_)
      fail<BadDescription>("allowable load", "the load was solved on another girder",
                           "one of the same analysis is accepted");
    const std::vector<Vec3<>> moves = detail::chord_displacements(unit);
    const detail::Unit load(unit);
    Allowable out = start(moves);
    if (out.verdict == Verdict::outside_scope || out.verdict == Verdict::nothing_left) return out;

    out.factor = terms_.most;
    const double by_deflection = deflection_factor(moves, out.deflection_limit);
    if (by_deflection <= out.factor) {
      out.factor = by_deflection;
      out.verdict = Verdict::deflection;
    }
    Governs by;
    if (search(load, how, out.factor, by)) {
      out.verdict = by.topic == bars ? Verdict::member : Verdict::topic;
      take_row(row_of(load, by, out.factor), out);
      look_beyond(load, by, out);
    } else if (out.verdict == Verdict::deflection) {
      take_worst(load, out);
    }
    take_deflections(moves, out.factor, out);
    return out;
  }

  /// The greatest utilisation of any bar or joint in any combination at a load factor: what a proof of all cases
  /// together says.
  double utilisation(const Response& unit, double factor) const {
    const detail::Unit load(unit);
    double most = 0;
    for_each_part(load, [&](auto& part, const Governs&) {
      typename std::remove_cvref_t<decltype(part)>::State s;
      part.state(factor, s);
      most = larger(most, part.utilisation(s));
    });
    return most;
  }

 private:
  static constexpr std::size_t bars = 0;
  /// A part in one combination: a bar, or a part of one of the topics, which count from 1.
  struct Governs {
    std::size_t line = 0, topic = bars, part = 0;
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
    look_at_placed();
    deflection_lines_ = detail::deflection_lines(placed, kinds, terms_.service, points());
  }

  /// Calls visit(topic, its number) for each that the basis asks for.
  template <class Visit>
  void for_each_topic(Visit visit) const {
    std::size_t number = bars;
    const auto one = [&](const auto& topic) {
      ++number;
      if (!verify::detail::is_idle(topic)) visit(topic, number);
    };
    std::apply([&](const auto&... t) { (one(t), ...); }, topics_);
  }
  /// Calls visit(part, where) for every part in every combination. Bars first, in a scattered order: neighbours are
  /// loaded alike, and a low crossing met early spares the others.
  template <class Visit>
  void for_each_part(const detail::Unit& load, Visit visit) const {
    const std::size_t n = design_.size();
    std::size_t step = 1 + 5 * n / 13;
    while (n > 0 && std::gcd(step, n) != 1) ++step;
    for (std::size_t i = 0, m = 0; i < n; ++i, m = (m + step) % n)
      for (std::size_t k = 0; k < lines_.size(); ++k) {
        detail::MemberPart part(design_, lines_[k], load, m);
        visit(part, Governs{k, bars, m});
      }
    for_each_topic([&](const auto& topic, std::size_t number) {
      if constexpr (verify::detail::RatedTopic<std::remove_cvref_t<decltype(topic)>>)
        for (std::size_t i = 0; i < topic.parts(); ++i)
          for (std::size_t k = 0; k < lines_.size(); ++k) {
            detail::TopicPart part(topic, lines_[k], load.ends, i);
            visit(part, Governs{k, number, i});
          }
    });
  }

  /// The worst row of what is placed, wherever a check might fail under it or is outside the scope.
  void look_at_placed() {
    const auto take = [this](const verify::Row& r) {
      if (has_placed_row_ && !(r.utilisation > placed_row_.utilisation)) return;
      placed_row_ = r;
      has_placed_row_ = true;
    };
    for (const verify::Row& r : design_.outside_rows()) take(r);
    for_each_topic([&](const auto& topic, std::size_t) {
      std::vector<verify::Row> rows;
      topic.add_rows(rows);  // nothing is searched in: those outside the scope alone
      for (const verify::Row& r : rows) take(r);
    });
    for (const detail::Line& l : lines_) {
      if (!l.placed) continue;
      for (std::size_t m = 0; m < design_.size(); ++m) {
        verify::detail::ForceRange range(l.reach[m].start);
        l.reach[m].widen(range);
        if (detail::bound_anywhere(design_, m, range) <= 1.0) continue;
        const verify::Row r = bar_row(m, l.placed->answer().members[m].start, l.placed->loads_on(m), l.combination);
        if (r.utilisation > 1.0) take(r);
      }
      const detail::EndsOfMembers nothing(design_.size());
      for_each_topic([&](const auto& topic, std::size_t) {
        if constexpr (verify::detail::RatedTopic<std::remove_cvref_t<decltype(topic)>>)
          for (std::size_t i = 0; i < topic.parts(); ++i) {
            const verify::Row r = topic_row(topic, l, nothing, i, 0.0);
            if (r.utilisation > 1.0) take(r);
          }
      });
    }
  }

  std::size_t points() const { return analysis_.girder().chords.size() * (2 * analysis_.girder().stations.size() - 1); }

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
    detail::Line line;
    line.combination = k;
    line.factor = own;
    if (placed != nullptr) {
      line.placed = placed->combine({combinations_[k].name, factors});
      line.reach = detail::reaches(*line.placed);
      line.ends = detail::ends_of(*line.placed);
    }
    bases_.push_back(std::move(factors));
    lines_.push_back(std::move(line));
  }

  /// What is there before any load.
  Allowable start(const std::vector<Vec3<>>& moves) const {
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
      if (!outside) out.combination = combinations_[placed_row_.combination].name;
    } else if (terms_.deflection) {
      const bool whole = terms_.deflection->of == DeflectionOf::whole;
      if ((whole ? out.deflection : out.variable_deflection) > out.deflection_limit)
        out.verdict = Verdict::nothing_left;
    }
    return out;
  }

  void take_deflections(const std::vector<Vec3<>>& moves, double factor, Allowable& out) const {
    out.deflection = detail::deflection_at(deflection_lines_, moves, DeflectionOf::whole, factor);
    out.variable_deflection = detail::deflection_at(deflection_lines_, moves, DeflectionOf::variable, factor);
  }
  double deflection_factor(const std::vector<Vec3<>>& moves, double limit) const {
    if (!terms_.deflection) return std::numeric_limits<double>::infinity();
    return detail::deflection_factor(deflection_lines_, moves, terms_.deflection->of, limit);
  }

  /// Lowers `factor` to the first crossing of any part in any combination; false where none lies below it.
  bool search(const detail::Unit& load, Search how, double& factor, Governs& by) const {
    bool any = false;
    const double limit = factor;
    for_each_part(load, [&](auto& part, const Governs& here) {
      if (lines_[here.line].factor == 0.0) return;
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
  template <class Topic>
  verify::Row topic_row(const Topic& topic, const detail::Line& line, const detail::EndsOfMembers& unit, std::size_t i,
                        double factor) const {
    typename Topic::State s;
    detail::TopicPart(topic, line, unit, i).state(factor, s);
    return topic.worst_row(i, s, line.combination);
  }
  verify::Row row_of(const detail::Unit& load, const Governs& by, double factor) const {
    const detail::Line& line = lines_[by.line];
    if (by.topic == bars) {
      std::vector<MemberLoad> loads;
      const detail::MemberState s = detail::state(line, load, by.part, factor, loads);
      return bar_row(by.part, s.start, s.loads, line.combination);
    }
    verify::Row out;
    for_each_topic([&](const auto& topic, std::size_t number) {
      if constexpr (verify::detail::RatedTopic<std::remove_cvref_t<decltype(topic)>>)
        if (number == by.topic) out = topic_row(topic, line, load.ends, by.part, factor);
    });
    return out;
  }
  void take_row(const verify::Row& row, Allowable& out) const {
    out.row = row;
    out.has_row = true;
    out.combination = combinations_[row.combination].name;
  }
  void take_worst(const detail::Unit& load, Allowable& out) const {
    double most = verify::detail::no_force;
    Governs worst;
    bool any = false;
    for_each_part(load, [&](auto& part, const Governs& here) {
      typename std::remove_cvref_t<decltype(part)>::State s;
      part.state(out.factor, s);
      const double u = part.utilisation(s);
      if (!(u > most)) return;
      most = u;
      worst = here;
      any = true;
    });
    if (any) take_row(row_of(load, worst, out.factor), out);
  }
  void look_beyond(const detail::Unit& load, const Governs& by, Allowable& out) const {
    static constexpr double leap = 1e-3;
    const verify::Row above = row_of(load, by, out.factor * (1.0 + 1e-6));
    out.jumps = above.utilisation > 1.0 + leap || out.row.utilisation < 1.0 - leap;
    if (out.jumps) out.beyond = above;
  }

  const Analysis& analysis_;
  Terms terms_;
  verify::Basis basis_;  // with what wear takes
  verify::detail::MemberDesign design_;
  verify::detail::Topics topics_;
  std::vector<Combination> combinations_;
  std::vector<std::vector<double>> bases_;  ///< of each line: the factors of what is placed
  std::vector<detail::Line> lines_;
  verify::Row placed_row_{};
  bool has_placed_row_ = false;
  std::vector<detail::DeflectionLine> deflection_lines_;
};

/// The verdict with its load factor, the governing check with its numbers, both sides of a leap, the deflection.
inline std::ostream& operator<<(std::ostream& out, const Allowable& a) {
  using baywork::text::number;
  if (a.is_load())
    out << "allowable load factor " << number(a.factor) << ", limited by " << name(a.verdict);
  else if (a.verdict == Verdict::not_limited)
    out << "not limited up to the load factor " << number(a.factor);
  else
    out << name(a.verdict);
  if (a.has_row) out << '\n' << a.row;
  if (!a.combination.empty()) out << "\nin " << a.combination;
  if (a.jumps) out << "\nthe utilisation leaps at this load; just above it: " << a.beyond;
  return out << "\ndeflection " << baywork::text::quantity(a.deflection, 1e-3, "mm", 4) << ", of variable loads "
             << baywork::text::quantity(a.variable_deflection, 1e-3, "mm", 4);
}

}  // namespace baywork::rating
