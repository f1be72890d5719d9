// SPDX-License-Identifier: MIT
// The design of all members of a girder: what is known of each before any load, and its checks under given forces.
#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <limits>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/verify/allowable_member.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/code_lengths.hpp>
#include <baywork/verify/en1993_member.hpp>
#include <baywork/verify/en1999_member.hpp>
#include <baywork/verify/standards.hpp>
#include <baywork/verify/member_words.hpp>
#include <baywork/verify/softened_parts.hpp>
#include <baywork/verify/system_lengths.hpp>
#include <baywork/verify/topic.hpp>
#include <baywork/verify/welded_ends.hpp>

namespace baywork::verify {

namespace detail {

/// Why a bar cannot be checked; empty where it can. Lateral-torsional buckling leaves the other checks in force.
struct OutsideReason {
  const char* text = "";
  bool nothing_checked = true;
};

class MemberDesign {
 public:
  MemberDesign(const Analysis& analysis, const Basis& basis, Standards which)
      : analysis_(analysis), model_(analysis.model()), basis_(basis) {
    validate(basis);
    if (which == Standards::allowable_stress && basis.stability.checked)
      fail<BadDescription>("allowable stresses", "the girder as a whole is to be checked for stability",
                           "bars and welds are checked by this route");
    prepare_bars(which);
    for (const en1999::BarResistance& r : aluminium_) quick_.emplace_back(r);
    prepare_members(which);
  }
  MemberDesign(const MemberDesign&) = delete;  // members point to resistances in it
  MemberDesign& operator=(const MemberDesign&) = delete;

  /// Takes one member's forces into `found`.
  void search_member(std::size_t m, const std::array<double, 6>& start, const MemberLoads<double>& loads,
                     std::size_t combination, FoundOfMember& found) const {
    visit(m, [&]<class Design>(const Design& design) {
      const GreatestForces greatest =
          walk(design, m, start, loads, combination, [&](const SectionForces& f, const Place& at) {
            for (const Check c : Design::section_checks)
              found[static_cast<std::size_t>(c)].take(design.check(c, f, at).utilisation, f, at);
          });
      const Place at{greatest.x, combination, en1999::Softening::none};
      for (const Check c : Design::whole_checks)
        found[static_cast<std::size_t>(c)].take(design.check(c, greatest.whole, at).utilisation, greatest.whole, at);
    });
  }

  SoftenedParts::Weakest weakest(std::size_t m) const { return members_[m].softened.weakest(); }
  Skipped not_softened(std::size_t m) const { return members_[m].softened.not_softened(); }

  /// Calls visit(design) where member m has one.
  template <class Visit>
  void visit(std::size_t m, Visit visit) const {
    std::visit(
        [&]<class Design>(const Design& design) {
          if constexpr (!std::is_same_v<Design, std::monostate>) visit(design);
        },
        members_[m].design);
  }

  /// At least the utilisation, told quickly; infinity where it cannot be.
  template <class Design>
  static double quick_bound(const Design& design, Check c, const SectionForces& f, const Place& at) {
    if constexpr (requires { design.at_most(c, f, at); })
      return design.at_most(c, f, at);
    else
      return std::numeric_limits<double>::infinity();
  }
  /// At least the utilisation of a check of single sections, for all forces within a range; what is below `enough` is
  /// not told any closer.
  template <class Design>
  static double section_bound(const Design& design, Check c, const ForceRange& range, const Place& at,
                              double enough = 0.0) {
    const double least = range.crosses_zero() ? 0.0 : smaller(magnitude(range.N_least), magnitude(range.N_most));
    SectionForces f = range.others;
    double most = 0;
    const auto at_N = [&](double N) {
      f.N = N;
      const double quick = quick_bound(design, c, f, at);
      most = larger(most, quick < enough ? quick : design.most(c, f, at, least));
    };
    if (range.N_least < 0.0) at_N(range.N_least);
    if (range.N_most >= 0.0) at_N(range.N_most);
    return most;
  }
  /// The same of a check of the whole member.
  template <class Design>
  static double whole_bound(const Design& design, Check c, const ForceRange& range) {
    SectionForces f = range.others;
    f.N = smaller(range.N_least, 0.0);
    return design.most(c, f, {}, 0.0);
  }

  /// Visits every section of a member with its place; the greatest forces met. `skip` as in for_each_section.
  template <class Design, class Visit, class Skip>
  GreatestForces walk(const Design& design, std::size_t m, const std::array<double, 6>& start,
                      const MemberLoads<double>& loads, std::size_t combination, Visit visit, Skip skip) const {
    const Designed& d = members_[m];
    const double length = analysis_.axes(m).length;
    GreatestForces greatest;
    const auto at = [&](double x, const SectionForces& f) {
      if constexpr (Design::whole_checks.size() != 0) greatest.take(f, x);
      visit(f, Place{x, combination, d.softened.at(x)});
    };
    for_each_section(start, loads, length, design.weights(), d.softened.marks(), at, skip);
    design.take_whole(greatest, start, loads, length);
    return greatest;
  }

  template <class Design, class Visit>
  GreatestForces walk(const Design& design, std::size_t m, const std::array<double, 6>& start,
                      const MemberLoads<double>& loads, std::size_t combination, Visit visit) const {
    return walk(design, m, start, loads, combination, visit, [](const auto&) { return Skipped{}; });
  }

  /// The row of one check, from where it was found. A row is large: it is made where it shall stay.
  /// `before`: another row of the member, which has its names already.
  void fill_row(std::size_t m, Check c, const Found& found, Row& out, const Row* before = nullptr) const {
    if (before == nullptr) {
      address(model_, m, out);
    } else {
      out.member = m;
      out.address = before->address;
      out.face = before->face;
      out.chord = before->chord;
    }
    visit(m, [&](const auto& design) { fill(design, c, found, out); });
  }
  Row row(std::size_t m, Check c, const Found& found) const {
    Row out;
    fill_row(m, c, found, out);
    return out;
  }
  std::size_t size() const noexcept { return members_.size(); }

  /// Whether there is a reason why member m, or a part of its checks, is outside the scope, and its row.
  bool is_outside(std::size_t m) const { return members_[m].outside.text[0] != '\0'; }
  Row outside_row(std::size_t m) const { return detail::outside(row_of(model_, m), members_[m].outside.text); }
  std::vector<Row> outside_rows() const {
    std::vector<Row> out;
    for (std::size_t m = 0; m < members_.size(); ++m)
      if (is_outside(m)) out.push_back(outside_row(m));
    return out;
  }

  /// Members of which nothing is checked.
  std::vector<bool> not_designed() const {
    std::vector<bool> out(members_.size());
    for (std::size_t m = 0; m < members_.size(); ++m)
      out[m] = std::holds_alternative<std::monostate>(members_[m].design);
    return out;
  }
  void add_words(Words& out) const {
    BarsOfGirder bars{uses<AluminiumMember>(), uses<SteelMember>()};
    for (const Bar& b : model_.bars) {
      if (b.material.family != material::Family::aluminium) continue;
      bars.unspecified_welding = bars.unspecified_welding || b.material.welding == material::Welding::unspecified;
      bars.welded_along = bars.welded_along || b.along.lines > 0;
      bars.welded_across = bars.welded_across || !b.across.empty();
    }
    add_member_words(basis_, bars, out);
    if (uses<AllowableMember>()) allowable::add_words(basis_.allowable, out.assumptions);
    out.not_covered.push_back("Lateral-torsional buckling of open sections, warping torsion.");
  }

 private:
  struct Designed {
    std::variant<std::monostate, AluminiumMember, SteelMember, AllowableMember> design{};
    OutsideReason outside{};
    SoftenedParts softened{};
  };

  template <class T>
  bool uses() const {
    for (const Designed& d : members_)
      if (std::holds_alternative<T>(d.design)) return true;
    return false;
  }

  /// Section resistances, once for each different bar.
  void prepare_bars(Standards which) {
    aluminium_.resize(model_.bars.size());
    steel_.resize(model_.bars.size());
    allowable_.resize(model_.bars.size());
    outside_.resize(model_.bars.size());
    for (std::size_t i = 0; i < model_.bars.size(); ++i) {
      const Bar& bar = model_.bars[i];
      const bool is_aluminium = bar.material.family == material::Family::aluminium;
      if (bar.material.family == material::Family::other)
        outside_[i] = {"its material is neither steel nor aluminium"};
      else if (which == Standards::steel && is_aluminium)
        outside_[i] = {"an aluminium bar: EN 1993-1-1 alone was asked for"};
      else if (which == Standards::aluminium && !is_aluminium)
        outside_[i] = {"a steel bar: EN 1999-1-1 alone was asked for"};
      else if (!bar.has_strength())
        outside_[i] = {"its material gives no strength"};
      else if (which == Standards::allowable_stress && !is_aluminium)
        outside_[i] = {"a steel bar: allowable stresses are given for aluminium alone"};
      else if (is_aluminium && bar.material.buckling_class == material::BucklingClass::none)
        outside_[i] = {"its alloy has no buckling class"};
      else if (which == Standards::allowable_stress)
        outside_[i] = {
            (allowable_[i] = allowable::tube_strength(bar.section, allowable::metal_of(bar.material, bar.section.wall),
                                                      basis_.allowable, allowable::affected_along(bar)))
                .outside};
      else if (is_aluminium)
        outside_[i] = outside_by(aluminium_[i] = aluminium_resistance(bar, basis_));
      else
        outside_[i] = outside_by(steel_[i] = en1993::resistance(bar.section, bar.material, basis_.steel));
    }
  }
  template <class Resistance>
  static OutsideReason outside_by(const Resistance& r) {
    if (r.scope != Scope::covered) return {reason(r.scope)};
    if (r.needs_lateral_check) return {"lateral-torsional buckling of an open or flat section is not covered", false};
    return {""};
  }

  void prepare_members(Standards which) {
    const std::vector<SystemLength> lengths = system_lengths(analysis_);
    const bool by_stress = which == Standards::allowable_stress;
    const std::vector<WeldedEnds> ends =
        welded_ends(analysis_, basis_.choices.heat, by_stress ? allowable::weld_extent : 0.0);
    const bool by_code = basis_.lengths.rule == LengthRule::code;
    const bool ask_sway = by_code || basis_.choices.welds == WeldsOnWave::where_they_are ||
                          basis_.choices.moment_factors == MomentFactorRule::table;
    const OpenBars open = ask_sway ? open_bars(analysis_) : OpenBars{std::vector<Sway>(lengths.size()), {}};
    const std::vector<BucklingFactors> code =
        by_code ? code_lengths(analysis_, open) : std::vector<BucklingFactors>(lengths.size());
    members_.resize(model_.bar_index.size());
    for (std::size_t m = 0; m < members_.size(); ++m) {
      Designed& d = members_[m];
      const std::size_t bar = model_.bar_index[m];
      d.outside = outside_[bar];
      if (d.outside.text[0] != '\0' && d.outside.nothing_checked) continue;
      const Member& member = model_.frame.members[m];
      const BucklingFactors& k = basis_.lengths.of(member.address.role);
      const double L_y = k.about_y * code[m].about_y * lengths[m].about_y;
      const double L_z = k.about_z * code[m].about_z * lengths[m].about_z;
      const SectionData<double>& s = model_.bars[bar].section;
      const double E = model_.bars[bar].material.E;
      if (model_.bars[bar].material.family == material::Family::steel) {
        d.design = SteelMember{
            &steel_[bar], en1993::buckling(steel_[bar], s, E, L_y, L_z), L_y, L_z, basis_.choices.moment_factors,
            open.sway[m]};
        continue;
      }
      const double length = analysis_.axes(m).length;
      if (by_stress) {
        const allowable::TubeStrength& r = allowable_[bar];
        d.softened = {ends[m], length, [&](double soft) { return allowable::softening(r, soft); }};
        d.design = allowable_member(r, basis_.allowable, model_.frame, member, length, ends[m], d.softened,
                                    larger(lengths[m].about_y, lengths[m].about_z), larger(L_y, L_z));
        continue;
      }
      if (!ends[m].known) {
        d.outside = {"TIG welding of walls above 6 mm: the extent of the softened metal is not given"};
        continue;
      }
      d.softened = {ends[m], length, [&](double soft) { return en1999::softening(aluminium_[bar], soft); }};
      const bool pinned = member.kind == MemberKind::axial;
      const auto on_wave = [&](bool sways, double L_cr) {
        return pinned || (basis_.choices.welds == WeldsOnWave::where_they_are && !sways &&
                          magnitude(L_cr - length) <= 1e-9 * length);
      };
      const bool wave_y = on_wave(open.sway[m].about_y, L_y), wave_z = on_wave(open.sway[m].about_z, L_z);
      if (wave_y || wave_z) d.softened.mark_plain();
      d.design = AluminiumMember{resistance_with_arcs(bar, ends[m]),
                                 en1999::buckling(aluminium_[bar], s, E, L_y, L_z),
                                 L_y,
                                 L_z,
                                 length,
                                 wave_y,
                                 wave_z,
                                 basis_.choices.round,
                                 basis_.choices.axial_exponent};
      AluminiumMember& made = std::get<AluminiumMember>(d.design);
      if (made.r == &aluminium_[bar] && made.form == en1999::RoundForm::resultant &&
          made.exponent == en1999::AxialExponent::fixed)
        made.quick = &quick_[bar];
    }
  }

  /// Those of the bar, or, where arcs are asked for and no weld lies across it, of its wall softened over the wider arc
  /// of its two ends.
  const en1999::BarResistance* resistance_with_arcs(std::size_t bar, const WeldedEnds& ends) {
    const double arc =
        larger(ends.start.length > 0.0 ? ends.start.arc : 0.0, ends.end.length > 0.0 ? ends.end.arc : 0.0);
    if (basis_.choices.softened == SoftenedMetal::whole_section || !(arc < en1999::whole_section) ||
        !ends.across.empty())
      return &aluminium_[bar];
    for (std::size_t i = 0; i < arcs_.size(); ++i)
      if (arc_of_[i] == std::pair(bar, arc)) return &arcs_[i];
    arc_of_.emplace_back(bar, arc);
    return &arcs_.emplace_back(en1999::softened_arc(aluminium_[bar], arc, basis_.aluminium));
  }

  template <class Design>
  static void fill(const Design& design, Check c, const Found& found, Row& row) {
    row.check = c;
    row.x = found.place.x;
    row.combination = found.place.combination;
    take_answer(design, c, found.forces, found.place, row);
  }

  const Analysis& analysis_;
  const GirderModel& model_;
  Basis basis_;
  std::vector<en1999::BarResistance> aluminium_;
  std::vector<QuickBound> quick_;  ///< of aluminium_
  std::vector<en1993::BarResistance> steel_;
  std::vector<allowable::TubeStrength> allowable_;
  std::deque<en1999::BarResistance> arcs_;  ///< members point to them
  std::vector<std::pair<std::size_t, double>> arc_of_;
  std::vector<OutsideReason> outside_;
  std::vector<Designed> members_;
};

}  // namespace detail
}  // namespace baywork::verify
