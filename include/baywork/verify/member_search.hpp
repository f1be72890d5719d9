// SPDX-License-Identifier: MIT
// The worst of every check of every member over all combinations, without walking members that cannot hold it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/member_design.hpp>

namespace baywork::verify::detail {

/// Member by member: limits of the forces in each combination are sums of those of the cases (see Controls), and bound
/// every check at the member's weakest place. A combination is walked, section by section, for those checks alone whose
/// bound is not below what is found already; the seemingly worst one first, and the rest is bounded all at once.
/// Answers are those of walking everything, to the last bit: a bound has to be below by `margin`, far above rounding.
class MemberSearch {
 public:
  explicit MemberSearch(const MemberDesign& design) : design_(design), found_(design.size()) {}

  /// Takes in combinations of these cases, one factor each.
  void search(const std::vector<const Response*>& parts, const std::vector<Combination>& all) {
    greatest_factor_ = 0;
    for (const Combination& c : all)
      for (const double f : c.factors) greatest_factor_ = larger(greatest_factor_, magnitude(f));
    for (std::size_t m = 0; m < found_.size(); ++m)
      design_.visit(m, [&](const auto& design) { search_member(design, m, parts, all); });
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
      for (std::size_t c = 0; c < n_member_checks; ++c)
        if (found_[m][c].utilisation > no_force) out.push_back(design_.row(m, static_cast<Check>(c), found_[m][c]));
      if (design_.is_outside(m)) out.push_back(design_.outside_row(m));
      for (; other != others.end() && other->member == m; ++other) out.push_back(*other);
    }
    out.insert(out.end(), other, others.end());
    return out;
  }

 private:
  static constexpr double margin = 1e-9, rounding = 1e-12;
  static constexpr std::size_t block = 32;  // combinations looked at together: memory does not grow with their number
  using Checks = std::uint32_t;

  struct Held {
    ForceRange range{};
    double score = 0;
    std::size_t combination = 0;
  };

  template <class List>
  static constexpr Checks set_of(const List& checks) {
    Checks out = 0;
    for (const Check c : checks) out |= Checks{1} << static_cast<unsigned>(c);
    return out;
  }
  static constexpr bool holds(Checks set, Check c) { return (set >> static_cast<unsigned>(c) & 1U) != 0; }

  template <class Design>
  void search_member(const Design& design, std::size_t m, const std::vector<const Response*>& parts,
                     const std::vector<Combination>& all) {
    prepare(m, parts);
    const MemberDesign::Weakest weakest = design_.weakest(m);
    const Weights w = design.weights();
    const auto size_of = [&](double N) { return design.check(Check::axial, {N}, weakest.places[0]).utilisation; };
    const double pulled = size_of(1.0), pushed = size_of(-1.0);
    double N_walked[2] = {0, 0};  // most pushed and pulled
    for (std::size_t first = 0; first < all.size(); first += block) {
      std::size_t n = 0;
      for (std::size_t k = first; k < all.size() && n < block; ++k, ++n) {
        Held& h = held_[n];
        h = {range_of(all[k].factors), 0.0, k};
        h.score = larger(-pushed * h.range.N_least, pulled * h.range.N_most) + w.My * h.range.others.My +
                  w.Mz * h.range.others.Mz;
      }
      Checks open = set_of(Design::section_checks) | set_of(Design::whole_checks);
      while (n > 0) {
        std::size_t worst = 0;
        for (std::size_t i = 1; i < n; ++i)
          if (held_[i].score > held_[worst].score) worst = i;
        const Held h = held_[worst];
        held_[worst] = held_[--n];
        if (const Checks now = exceedable(design, m, open, h.range, weakest); now != 0) {
          walk(design, m, parts, all[h.combination].factors, h.combination, now);
          N_walked[0] = smaller(N_walked[0], h.range.N_least);
          N_walked[1] = larger(N_walked[1], h.range.N_most);
        }
        if (n == 0) break;
        ForceRange rest = held_[0].range;
        for (std::size_t i = 1; i < n; ++i) rest.take(held_[i].range);
        if (axial_alone_ && rest.N_least >= (1.0 - margin) * N_walked[0] && rest.N_most <= (1.0 - margin) * N_walked[1])
          break;
        open = exceedable(design, m, open, rest, weakest);
        if (open == 0) break;
      }
    }
  }

  double limit(std::size_t m, Check c) const {
    return larger((1.0 - margin) * found_[m][static_cast<std::size_t>(c)].utilisation, 0.5 * no_force);
  }

  /// Which of these checks forces within the range may take to what is found already, or beyond.
  template <class Design>
  Checks exceedable(const Design& design, std::size_t m, Checks checks, const ForceRange& range,
                    const MemberDesign::Weakest& weakest) const {
    Checks out = 0;
    const auto take = [&](Check c, double bound) {
      if (!(bound < limit(m, c))) out |= Checks{1} << static_cast<unsigned>(c);
    };
    for (const Check c : Design::section_checks) {
      if (!holds(checks, c)) continue;
      double bound = 0;
      for (const Place& at : weakest) bound = larger(bound, MemberDesign::section_bound(design, c, range, at));
      take(c, bound);
    }
    for (const Check c : Design::whole_checks)
      if (holds(checks, c)) take(c, MemberDesign::whole_bound(design, c, range));
    return out;
  }

  /// Control values of every case on every stretch between places where any case's loads begin, end or act.
  void prepare(std::size_t m, const std::vector<const Response*>& parts) {
    const double length = parts[0]->analysis().axes(m).length;
    controls_.clear();
    bool loaded = false;
    double from = 0;
    while (from < length * (1.0 - 1e-12)) {
      double to = length;
      for (const Response* part : parts) {
        const MemberLoads<double> loads = part->loads_on(m);
        loaded = loaded || loads.count > 0;
        to = smaller(to, baywork::detail::next_place(loads, from, length));
      }
      for (const Response* part : parts)
        controls_.emplace_back(
            baywork::detail::stretch_between(part->answer().members[m].start, part->loads_on(m), from, to));
      from = to;
    }
    ForceRange all;
    slack_ = {};
    for (std::size_t i = 0; i < controls_.size(); ++i) {
      ForceRange own;
      controls_[i].widen(own);
      all.take(own);
      const double r = rounding * greatest_factor_;
      slack_.N += r * larger(-own.N_least, own.N_most);
      slack_.Vy += r * own.others.Vy;
      slack_.Vz += r * own.others.Vz;
      slack_.T += r * own.others.T;
      slack_.My += r * own.others.My;
      slack_.Mz += r * own.others.Mz;
    }
    const SectionForces& o = all.others;
    axial_alone_ = !loaded && o.Vy == 0.0 && o.Vz == 0.0 && o.T == 0.0 && o.My == 0.0 && o.Mz == 0.0;
  }

  /// All forces of the member in one combination, and what rounding may add to them.
  ForceRange range_of(const std::vector<double>& factors) const {
    ForceRange out;
    for (std::size_t s = 0; s < controls_.size(); s += factors.size()) {
      Controls sum;
      for (std::size_t p = 0; p < factors.size(); ++p)
        if (factors[p] != 0.0) sum.add(factors[p], controls_[s + p]);
      if (s == 0) out.N_least = out.N_most = sum.v[0];
      sum.widen(out);
    }
    out.N_least -= slack_.N;
    out.N_most += slack_.N;
    out.others.Vy += slack_.Vy;
    out.others.Vz += slack_.Vz;
    out.others.T += slack_.T;
    out.others.My += slack_.My;
    out.others.Mz += slack_.Mz;
    return out;
  }

  /// Takes one combination's forces into some checks.
  template <class Design>
  void walk(const Design& design, std::size_t m, const std::vector<const Response*>& parts,
            const std::vector<double>& factors, std::size_t combination, Checks checks) {
    std::array<double, 6> start{};
    loads_.clear();
    for (std::size_t p = 0; p < parts.size(); ++p) {
      const double f = factors[p];
      if (f == 0.0) continue;
      const std::array<double, 6>& own = parts[p]->answer().members[m].start;
      for (std::size_t k = 0; k < 6; ++k) start[k] += f * own[k];
      for (MemberLoad l : parts[p]->loads_on(m)) {
        l.first = f * l.first;
        l.last = f * l.last;
        loads_.push_back(l);
      }
    }
    FoundOfMember& found = found_[m];
    const auto visit = [&](const SectionForces& f, const Place& at) {
      for (const Check c : Design::section_checks)
        if (holds(checks, c)) found[static_cast<std::size_t>(c)].take(design.check(c, f, at).utilisation, f, at);
    };
    const auto skip = [&](const baywork::detail::Stretch<double>& s, const auto& forces) {
      return skippable(design, m, checks, s, forces);
    };
    const GreatestForces greatest =
        design_.walk(design, m, start, MemberLoads<double>{loads_.data(), loads_.size()}, combination, visit, skip);
    const Place at{greatest.x, combination, en1999::Softening::none};
    for (const Check c : Design::whole_checks)
      if (holds(checks, c))
        found[static_cast<std::size_t>(c)].take(design.check(c, greatest.forces, at).utilisation, greatest.forces, at);
  }

  /// Between the welds a loaded stretch need not be walked where no check there comes near what its ends have shown.
  template <class Design>
  Skipped skippable(const Design& design, std::size_t m, Checks checks, const baywork::detail::Stretch<double>& s,
                    const std::array<std::array<double, 4>, 6>& forces) const {
    if ((checks & set_of(Design::whole_checks)) != 0) return {};
    const Skipped plain = design_.not_softened(m);
    const Skipped out{larger(plain.from, s.from), smaller(plain.to, s.to)};
    if (!out.any()) return {};
    if (may_turn(forces, design.weights(), 0.0, out.from - s.from) ||
        may_turn(forces, design.weights(), out.to - s.from, s.length()))
      return {};
    const Controls own(s);
    ForceRange range;
    range.N_least = range.N_most = own.v[0];
    own.widen(range);
    const Place at{0.5 * (out.from + out.to), 0, en1999::Softening::none};
    for (const Check c : Design::section_checks)
      if (holds(checks, c) && !(MemberDesign::section_bound(design, c, range, at) < limit(m, c))) return {};
    return out;
  }

  struct Interval {
    double low = 0, high = 0;
    void take(double v) {
      low = smaller(low, v);
      high = larger(high, v);
    }
    /// Not of one sign beyond doubt, nor nothing at all.
    bool mixed(double scale) const {
      return !(low > rounding * scale || high < -rounding * scale || (low == 0.0 && high == 0.0));
    }
  };
  /// Whether a force, or a sum of squares (see Weights), may turn between two places of a stretch.
  static bool may_turn(const std::array<std::array<double, 4>, 6>& forces, const Weights& w, double from, double to) {
    if (!(from < to)) return false;
    const double d = to - from;
    std::array<Interval, 6> value{}, slope{};
    std::array<double, 6> size{}, steep{};
    for (const std::size_t i : {0U, 1U, 2U, 4U, 5U}) {
      const std::array<double, 4>& c = forces[i];
      const double v = c[0] + (c[1] + (c[2] + c[3] * from) * from) * from;
      const double v1 = c[1] + (2.0 * c[2] + 3.0 * c[3] * from) * from, v2 = 2.0 * c[2] + 6.0 * c[3] * from;
      value[i] = {v, v};
      value[i].take(v + v1 * d / 3.0);
      value[i].take(v + (2.0 * v1 + 0.5 * v2 * d) * d / 3.0);
      value[i].take(v + (v1 + (0.5 * v2 + c[3] * d) * d) * d);
      slope[i] = {v1, v1};
      slope[i].take(v1 + 0.5 * v2 * d);
      slope[i].take(v1 + (v2 + 3.0 * c[3] * d) * d);
      steep[i] = magnitude(c[1]) + (2.0 * magnitude(c[2]) + 3.0 * magnitude(c[3]) * to) * to;
      size[i] = magnitude(c[0]) + steep[i] * to;
      if (slope[i].mixed(steep[i])) return true;
    }
    const auto squares = [&](std::size_t p, double w_p, std::size_t q, double w_q) {
      Interval sum;
      double scale = 0;
      for (const auto& [i, weight] : {std::pair(p, w_p * w_p), std::pair(q, w_q * w_q)}) {
        const Interval &a = value[i], &b = slope[i];
        Interval product{a.low * b.low, a.low * b.low};
        product.take(a.low * b.high);
        product.take(a.high * b.low);
        product.take(a.high * b.high);
        sum.low += weight * product.low;
        sum.high += weight * product.high;
        scale += weight * size[i] * steep[i];
      }
      return sum.mixed(scale);
    };
    return squares(4, w.My, 5, w.Mz) || squares(1, w.Vy, 2, w.Vz);
  }

  const MemberDesign& design_;
  std::vector<FoundOfMember> found_;
  double greatest_factor_ = 0;

  // of the member at hand
  std::vector<Controls> controls_;  ///< stretch by stretch, of each case
  SectionForces slack_{};
  bool axial_alone_ = false;
  std::array<Held, block> held_{};
  std::vector<MemberLoad> loads_;
};

}  // namespace baywork::verify::detail
