// SPDX-License-Identifier: MIT
// The worst of every check of every member over all combinations, without walking members that cannot hold it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <type_traits>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/member_design.hpp>
#include <baywork/verify/member_ranges.hpp>

namespace baywork::verify::detail {

/// Member by member: limits of the forces in each combination are sums of those of the cases (see Controls), and bound
/// every check at the member's weakest place. For each check the combination of seemingly greatest forces is walked
/// first, section by section; then all others that a bound does not keep below what is found. Answers are those of
/// walking everything, to the last bit: a bound has to be below by `margin`, far above rounding.
class MemberSearch {
 public:
  explicit MemberSearch(const MemberDesign& design) : design_(design), found_(design.size()) {}

  /// Takes in combinations of these cases, one factor each.
  void search(const std::vector<const Response*>& parts, const std::vector<Combination>& all) {
    ranges_.begin(parts, all);
    for (std::size_t m = 0; m < found_.size(); ++m)
      design_.visit(m, [&](const auto& design) {
        search_member(design, m, parts[0]->analysis().axes(m).length, all.size());
      });
  }

  /// Takes in one response as it was solved, all of it walked.
  void search(const Response& solved, std::size_t combination) {
    for (std::size_t m = 0; m < found_.size(); ++m)
      design_.search_member(m, solved.answer().members[m].start, solved.loads_on(m), combination, found_[m]);
  }

  const FoundOfMember& found(std::size_t m) const { return found_[m]; }

  /// Rows of what has been found, by member and in the order of checks, each member's followed by its own of `others`,
  /// which lie by member. Utilisations that may be rounding are left out.
  std::vector<Row> rows(const std::vector<Row>& others = {}) const {
    std::size_t n = others.size();
    for (std::size_t m = 0; m < found_.size(); ++m) {
      for (const Found& f : found_[m]) n += f.utilisation > no_force;
      n += design_.is_outside(m);
    }
    std::vector<Row> out;
    out.reserve(n);  // rows are large: growing would move them all again
    auto other = others.begin();
    for (std::size_t m = 0; m < found_.size(); ++m) {
      const Row* before = nullptr;
      for (std::size_t c = 0; c < n_member_checks; ++c) {
        if (!(found_[m][c].utilisation > no_force)) continue;
        Row& row = out.emplace_back();
        design_.fill_row(m, static_cast<Check>(c), found_[m][c], row, before);
        before = &row;
      }
      if (design_.is_outside(m)) out.push_back(design_.outside_row(m));
      for (; other != others.end() && other->member == m; ++other) out.push_back(*other);
    }
    out.insert(out.end(), other, others.end());
    return out;
  }

 private:
  static constexpr double margin = 1e-9;
  static constexpr std::size_t block = 32;  // combinations looked at together: memory does not grow with their number
  using Checks = std::uint32_t;

  struct Held {
    ForceRange range{};
    std::size_t combination = 0;
    Checks walked = 0;
  };
  /// What is known of a member before any combination.
  struct Known {
    std::size_t m = 0;
    SoftenedParts::Weakest weakest{};
    Skipped plain{};
    Weights w{};
    double length = 0, pulled = 0, pushed = 0;  ///< utilisation of 1 N
  };

  static constexpr Checks one(Check c) { return Checks{1} << static_cast<unsigned>(c); }
  static constexpr bool holds(Checks set, Check c) { return (set & one(c)) != 0; }
  template <class List>
  static constexpr Checks set_of(const List& checks) {
    Checks out = 0;
    for (const Check c : checks) out |= one(c);
    return out;
  }

  template <class Design>
  void search_member(const Design& design, std::size_t m, double length, std::size_t combinations) {
    ranges_.prepare(m);
    Known k{m, design_.weakest(m), design_.not_softened(m), design.weights(), length};
    k.pulled = design.check(Check::axial, {1.0}, k.weakest.places[0]).utilisation;
    k.pushed = design.check(Check::axial, {-1.0}, k.weakest.places[0]).utilisation;
    constexpr Checks every = set_of(Design::section_checks) | set_of(Design::whole_checks);
    for (std::size_t first = 0; first < combinations; first += block) {
      const std::size_t n = smaller(block, combinations - first);
      for (std::size_t i = 0; i < n; ++i) {
        held_[i].combination = first + i;
        held_[i].walked = 0;
        ranges_.take(first + i, held_[i].range);
      }
      choose(every, k, n);
      for (std::size_t i = 0; i < n; ++i)
        if (held_[i].walked != 0) walk(design, k, held_[i].combination, held_[i].walked);
      ForceRange rest;
      bool any = false;
      for (std::size_t i = 0; i < n; ++i) {
        if (held_[i].walked != 0) {
          walk_open(design, k, held_[i], every & ~held_[i].walked);
          continue;
        }
        if (any)
          rest.take(held_[i].range);
        else
          rest = held_[i].range;
        any = true;
      }
      const Checks open = any ? exceedable(design, k, every, rest) : 0;
      for (std::size_t i = 0; i < n && open != 0; ++i)
        if (held_[i].walked == 0) walk_open(design, k, held_[i], open);
    }
  }

  /// Walks a combination for those of these checks that no bound keeps below what is found.
  template <class Design>
  void walk_open(const Design& design, const Known& k, const Held& h, Checks checks) {
    if (k.weakest.count == 1)
      for (const Check c : Design::section_checks)
        if (holds(checks, c) && surely_less(design, c, h.range, k.weakest.places[0].softening, of(k.m, c)))
          checks &= ~one(c);
    if (checks != 0) checks = exceedable(design, k, checks, h.range);
    if ((checks & ~one(Check::torsion)) != 0) checks = exceedable_by_part(design, k, checks, h.combination);
    if (checks == one(Check::torsion) && torque_is_found(k, h.combination)) return;
    if (checks != 0) walk(design, k, h.combination, checks);
  }

  /// Whether all forces that a check reads are below those at which it was found worst.
  static bool below(Check c, const ForceRange& r, const Found& found) {
    const auto less = [](double size, double by) { return size == 0.0 || size < (1.0 - margin) * magnitude(by); };
    const SectionForces &o = r.others, &g = found.forces;
    const auto pushed = [&] { return less(larger(-r.N_least, 0.0), smaller(g.N, 0.0)); };
    const auto pulled = [&] { return less(larger(r.N_most, 0.0), larger(g.N, 0.0)); };
    const auto bent = [&] { return less(o.My, g.My) && less(o.Mz, g.Mz); };
    const auto sheared = [&] { return less(o.Vy, g.Vy) && less(o.Vz, g.Vz) && less(o.T, g.T); };
    switch (c) {
      case Check::axial: return pushed() && pulled();
      case Check::bending: return bent();
      case Check::shear: return sheared();
      case Check::torsion: return less(o.T, g.T);
      case Check::buckling: return pushed();
      case Check::beam_column: return pushed() && bent();
      default: return bent() && sheared() && pushed() && pulled();
    }
  }
  /// Whether forces below those found, at a place no weaker, need not be checked.
  template <class Design>
  static bool surely_less(const Design& design, Check c, const ForceRange& r, en1999::Softening weakest,
                          const Found& found) {
    return found.place.softening == weakest && Design::rises(c) && !design.depends_on_x(c) && below(c, r, found) &&
           !is_infinite(found.utilisation);
  }

  /// Whether the torque of a combination, the same all along where no couple acts, is no greater than the one found, not
  /// even in its last bit: dividing keeps that order. Loads without a part in it leave many combinations alike in it.
  bool torque_is_found(const Known& k, std::size_t combination) const {
    const Found& found = of(k.m, Check::torsion);
    if (k.weakest.count != 1 || found.place.softening != k.weakest.places[0].softening ||
        combination < found.place.combination)
      return false;
    double T = 0;
    bool couples = false;
    ranges_.each_part(combination, [&](const Response& part, double factor, std::size_t) {
      for (const MemberLoad& l : part.loads_on(k.m)) couples = couples || l.kind == MemberLoad::Kind::couple;
      T += factor * part.answer().members[k.m].start[3];
    });
    return !couples && magnitude(T) <= magnitude(found.forces.T);
  }

  /// Marks, for each check, the combination that it is likely to be worst in.
  void choose(Checks every, const Known& k, std::size_t n) {
    std::array<double, n_member_checks> most{};
    std::array<std::size_t, n_member_checks> at{};
    for (std::size_t i = 0; i < n; ++i) {
      const ForceRange& r = held_[i].range;
      const SectionForces& o = r.others;
      const double pushed = -k.pushed * r.N_least, axial = larger(pushed, k.pulled * r.N_most);
      const double y = k.w.My * o.My, z = k.w.Mz * o.Mz;
      const auto take = [&](Check c, double size) {
        const auto j = static_cast<std::size_t>(c);
        if (!(size > most[j])) return;
        most[j] = size;
        at[j] = i;
      };
      take(Check::axial, axial);
      take(Check::buckling, pushed);
      take(Check::bending, y * y + z * z);
      take(Check::shear, k.w.Vy * k.w.Vy * o.Vy * o.Vy + k.w.Vz * k.w.Vz * o.Vz * o.Vz);
      take(Check::torsion, o.T);
      take(Check::bending_and_axial, axial + y + z);
      take(Check::beam_column, pushed > 0.0 ? 2.0 * pushed + y + z : 0.0);
    }
    for (std::size_t j = 0; j < n_member_checks; ++j)
      if (most[j] > 0.0) held_[at[j]].walked |= every & one(static_cast<Check>(j));
  }

  /// Calls visit for every check of single sections as a constant, so that what depends on it is settled when compiled.
  template <class Design, class Visit>
  static void each_section_check(Visit visit) {
    [&]<std::size_t... i>(std::index_sequence<i...>) {
      (visit(std::integral_constant<Check, Design::section_checks[i]>{}), ...);
    }(std::make_index_sequence<Design::section_checks.size()>{});
  }
  Found& of(std::size_t m, Check c) { return found_[m][static_cast<std::size_t>(c)]; }
  const Found& of(std::size_t m, Check c) const { return found_[m][static_cast<std::size_t>(c)]; }
  double limit(std::size_t m, Check c) const { return larger((1.0 - margin) * of(m, c).utilisation, 0.5 * no_force); }

  /// Which of these checks forces within the range may take to what is found already, or beyond.
  template <class Design>
  Checks exceedable(const Design& design, const Known& k, Checks checks, const ForceRange& range) const {
    Checks out = 0;
    for (const Check c : Design::section_checks) {
      if (!holds(checks, c)) continue;
      double bound = 0;
      const double enough = limit(k.m, c);
      for (const Place& at : k.weakest)
        bound = larger(bound, MemberDesign::section_bound(design, c, range, at, enough));
      if (!(bound < enough)) out |= one(c);
    }
    for (const Check c : Design::whole_checks)
      if (holds(checks, c) && !(MemberDesign::whole_bound(design, c, range) < limit(k.m, c))) out |= one(c);
    return out;
  }

  /// The same, with softened and other parts of the member by themselves, halved in the middle.
  template <class Design>
  Checks exceedable_by_part(const Design& design, const Known& k, Checks checks, std::size_t combination) const {
    const std::array<double, 5> cuts{0.0, k.plain.from, larger(k.plain.from, smaller(0.5 * k.length, k.plain.to)),
                                     k.plain.to, k.length};
    std::array<ForceRange, 2> ranges{};  // softened, plain
    std::array<bool, 2> any{};
    for (std::size_t s = 0; s < ranges_.stretches().size(); ++s) {
      const auto [from, to] = ranges_.stretches()[s];
      const Controls sum = ranges_.controls(s, combination);
      for (std::size_t z = 0; z < 4; ++z) {
        const double a = larger(from, cuts[z]), b = smaller(to, cuts[z + 1]);
        if (!(a < b)) continue;
        const std::size_t is_plain = z == 1 || z == 2 ? 1 : 0;
        const Controls own = sum.part((a - from) / (to - from), (b - from) / (to - from));
        ForceRange& r = ranges[is_plain];
        if (!any[is_plain]) r.N_least = r.N_most = own.first_N();
        any[is_plain] = true;
        own.widen(r);
      }
    }
    for (ForceRange& r : ranges) ranges_.widen(r);
    Checks out = any[0] ? exceedable(design, k, checks, ranges[0]) : 0;
    out |= checks & set_of(Design::whole_checks);
    if (!any[1]) return out;
    const ForceRange& plain = ranges[1];
    const Place at{0.5 * k.length, 0, en1999::Softening::none};
    for (const Check c : Design::section_checks)
      if (const double enough = limit(k.m, c); holds(checks & ~out, c) &&
                                               !(MemberDesign::section_bound(design, c, plain, at, enough) < enough))
        out |= one(c);
    return out;
  }

  /// Takes one combination's forces into some checks.
  template <class Design>
  void walk(const Design& design, const Known& known, std::size_t combination, Checks checks) {
    const std::size_t m = known.m;
    std::array<double, 6> start{};
    loads_.clear();
    ranges_.each_part(combination, [&](const Response& part, double factor, std::size_t) {
      const std::array<double, 6>& own = part.answer().members[m].start;
      for (std::size_t k = 0; k < 6; ++k) start[k] += factor * own[k];
      for (MemberLoad l : part.loads_on(m)) {
        l.first = factor * l.first;
        l.last = factor * l.last;
        loads_.push_back(l);
      }
    });
    const auto visit = [&](const SectionForces& f, const Place& at) {
      const ForceRange range(f);
      each_section_check<Design>([&](auto constant) {
        constexpr Check c = decltype(constant)::value;
        if (holds(checks, c) && !surely_less(design, c, range, at.softening, of(m, c)) &&
            !(MemberDesign::quick_bound(design, c, f, at) < limit(m, c)))
          of(m, c).take(design.check(c, f, at).utilisation, f, at);
      });
    };
    const auto skip = [&](const baywork::detail::Stretch<double>& s) { return skippable(design, known, checks, s); };
    const GreatestForces greatest =
        design_.walk(design, m, start, MemberLoads<double>{loads_.data(), loads_.size()}, combination, visit, skip);
    const Place at{greatest.x, combination, en1999::Softening::none};
    for (const Check c : Design::whole_checks)
      if (holds(checks, c)) of(m, c).take(design.check(c, greatest.whole, at).utilisation, greatest.whole, at);
  }

  /// Between its ends a loaded stretch need not be walked for a torque, which does not change along it, nor between the
  /// welds where no check there comes near what its ends have shown.
  template <class Design>
  Skipped skippable(const Design& design, const Known& k, Checks checks,
                    const baywork::detail::Stretch<double>& s) const {
    if ((checks & set_of(Design::whole_checks)) != 0) return {};
    if (checks == one(Check::torsion)) return {s.from, s.to};
    const Skipped out{larger(k.plain.from, s.from), smaller(k.plain.to, s.to)};
    if (!out.any()) return {};
    const Controls own(s);
    ForceRange range;
    range.N_least = range.N_most = own.first_N();
    own.widen(range);
    const Place at{0.5 * (out.from + out.to), 0, en1999::Softening::none};
    for (const Check c : Design::section_checks)
      if (const double enough = limit(k.m, c);
          holds(checks, c) && !(MemberDesign::section_bound(design, c, range, at, enough) < enough))
        return {};
    return out;
  }

  const MemberDesign& design_;
  std::vector<FoundOfMember> found_;

  // of the member at hand
  MemberRanges ranges_{};
  std::array<Held, block> held_{};
  std::vector<MemberLoad> loads_;
};

}  // namespace baywork::verify::detail
