// SPDX-License-Identifier: MIT
// The design of all joints of bars with chords, and of their welds: what is known before any load, and the search.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/response/cut_forces.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/prepared_joints.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify::detail {

/// What acts on one end of a bar on a chord.
struct EndForces {
  BraceForces own{};
  SectionForces cut{};
  Vec3<> pull{};  ///< on the joint, global axes [N]
};

/// What the checks at one end take.
struct JointState {
  BraceForces joint{};  ///< with those of other bars that it answers for
  double own_N = 0, n_p = 0;
  std::array<std::pair<double, double>, 2> gap{};  ///< N and V in the chord, told from either side
  LineLoads seam{};
  EndForces own{};
  std::vector<double> N_beside{};  ///< of all bars on this side, in the order of BraceEnd::same_side
};

/// Joints and welds of all bars on the chords. `ends(member, at_start)` are the forces on the cut at a member's end.
class JointDesign {
 public:
  explicit JointDesign(const Given& given)
      : analysis_(given.analysis),
        model_(given.analysis.model()),
        basis_(given.basis),
        by_stress_(given.which == Standards::allowable_stress) {
    if (!basis_.joints.checked) return;
    prepared_ = JointPreparer(given).take();
    worst_.resize(designed().size());
  }

  bool idle() const noexcept { return !basis_.joints.checked; }

  void search(const Response& response, std::size_t combination) {
    const auto ends = [&](std::size_t m, bool at_start) { return cut_at_end(response, m, at_start); };
    forces_.clear();  // of all ends once: several joints ask for each
    for (std::size_t i = 0; i < designed().size(); ++i) forces_.push_back(forces(i, ends));
    const auto of = [&](std::size_t j) -> const EndForces& { return forces_[j]; };
    JointState& s = at_hand_;
    for (std::size_t i = 0; i < designed().size(); ++i) {
      take_state(i, ends, of, s);
      WorstOfEnd& w = worst_[i];
      const DesignedEnd& d = designed()[i];
      const auto keep = [&](Worst& worst, double u) {
        if (!(u > worst.utilisation)) return;
        worst.utilisation = u;
        worst.at = s;
        worst.combination = combination;
      };
      if (d.checked) keep(w.joint, row_of_joint(d, s.joint, s.n_p).utilisation);
      if (d.gap_checked) keep(w.gap, gap_utilisation(d, s));
      // a weld's check rises with both line loads
      const LineLoads& worst = w.seam.at.seam;
      if (d.weld_checked && (s.seam.n > worst.n || s.seam.v > worst.v)) keep(w.seam, d.weld.check(s.seam, basis_).utilisation);
    }
  }

  // what a rating asks: parts are ends of bars

  using State = JointState;
  std::size_t parts() const noexcept { return designed().size(); }

  template <class Ends>
  void state(std::size_t i, Ends ends, JointState& out) const {
    take_state(
        i, ends, [&](std::size_t j) { return forces(j, ends); }, out);
  }
  double utilisation(std::size_t i, const JointState& s) const {
    const DesignedEnd& d = designed()[i];
    double most = 0;
    if (d.checked) most = row_of_joint(d, s.joint, s.n_p).utilisation;
    if (d.gap_checked) most = larger(most, gap_utilisation(d, s));
    if (d.weld_checked) most = larger(most, d.weld.check(s.seam, basis_).utilisation);
    return most;
  }
  /// At least every utilisation for forces within the hull of several states. Sizes of forces, n_p and line loads are
  /// convex there, and greatest at one of them; so is the gap's sum of squares. Other bars count with their sum unless
  /// they surely pull where this one pushes.
  double bound(std::size_t i, std::span<const JointState* const> states) const {
    const DesignedEnd& d = designed()[i];
    const std::vector<std::size_t>& side = places().ends[i].same_side;
    const auto greatest = [&](auto value) {
      double most = value(*states[0]);
      for (const JointState* s : states) most = larger(most, value(*s));
      return most;
    };
    double most = 0;
    if (d.checked) {
      BraceForces f;
      for (std::size_t j = 0; j < side.size(); ++j) {
        const auto surely = [&](double sign) {  // the other bar has no force of this sign, this one none of the opposite
          return greatest([&](const JointState& s) { return sign * s.N_beside[j]; }) <= 0.0 &&
                 greatest([&](const JointState& s) { return -sign * s.own_N; }) <= 0.0;
        };
        if (side[j] == i || !(surely(1.0) || surely(-1.0)))
          f.N += greatest([&](const JointState& s) { return magnitude(s.N_beside[j]); }) * places().ends[side[j]].sine;
      }
      f.N /= places().ends[i].sine;
      f.M_ip = greatest([](const JointState& s) { return magnitude(s.joint.M_ip); });
      f.M_op = greatest([](const JointState& s) { return magnitude(s.joint.M_op); });
      most = row_of_joint(d, f, greatest([](const JointState& s) { return s.n_p; })).utilisation;
    }
    if (d.gap_checked) most = larger(most, greatest([&](const JointState& s) { return gap_utilisation(d, s); }));
    if (d.weld_checked) {
      const LineLoads l{greatest([](const JointState& s) { return s.seam.n; }),
                        greatest([](const JointState& s) { return s.seam.v; })};
      most = larger(most, d.weld.check(l, basis_).utilisation);
    }
    return most;
  }
  /// The row of greatest utilisation.
  Row worst_row(std::size_t i, const JointState& s, std::size_t combination) const {
    const DesignedEnd& d = designed()[i];
    const Worst w{0.0, s, combination};
    Row out;
    if (d.checked) out = joint_row(i, w);
    if (d.gap_checked && gap_utilisation(d, s) > out.utilisation) out = gap_row(i, w);
    if (d.weld_checked && d.weld.check(s.seam, basis_).utilisation > out.utilisation) out = weld_row(i, w);
    return out;
  }
  /// By end, in the order of the joints along the girder; one row outside the scope for each bar that has a reason.
  void add_rows(std::vector<Row>& out) const {
    std::vector<bool> said(model_.bar_index.size());
    const auto say = [&](std::size_t m, const char* reason) {
      if (reason[0] == '\0' || said[m]) return;
      said[m] = true;
      out.push_back(outside(row_of(model_, m), reason));
    };
    for (std::size_t i = 0; i < designed().size(); ++i) {
      const DesignedEnd& d = designed()[i];
      const WorstOfEnd& w = worst_[i];
      if (w.joint.utilisation > no_force) out.push_back(joint_row(i, w.joint));
      if (w.gap.utilisation > no_force) out.push_back(gap_row(i, w.gap));
      if (w.seam.utilisation > no_force) out.push_back(weld_row(i, w.seam));
      say(places().ends[i].member, d.outside);
      say(places().ends[i].member, d.weld.outside);
    }
    for (const std::size_t m : places().elsewhere) say(m, "joint: it ends on another bar of a face, not on a chord");
  }

  void add_words(Words& out) const {
    const bool welds = basis_.joints.throat > 0.0;
    out.not_covered.push_back(!basis_.joints.checked ? "Joints, welds, eccentricities inside joints."
                              : welds                ? "Eccentricities inside joints."
                                                     : "Welds, eccentricities inside joints.");
    if (!basis_.joints.checked) return;
    if (basis_.joints.welds_alone)
      out.not_covered.push_back("What bars do to the walls of the chords at joints: welds alone were asked for.");
    else if (!by_stress_) add_words_of_joints(out.assumptions);
    if (!welds) return;
    const std::string by =
        by_stress_ ? "; Aluminum Design Manual 2020 J.2.2, Omega = " + baywork::text::number(basis_.allowable.rupture) +
                         ", force per length as shear of throat or leg. Low confidence, " + allowable::label + "."
                   : "; EN 1993-1-8 7.3.1 may ask for the bar's full strength.";
    out.assumptions.push_back("Welds: fillets all round every bar, throat " +
                              baywork::text::number(basis_.joints.throat * 1e3) +
                              " mm, under line loads spread evenly" + by);
  }

 private:
  void add_words_of_joints(std::vector<std::string>& out) const {
    out.push_back(
        "Joints of round tubes: EN 1993-1-8 7.4, the least of what the joint may be (T or Y, X, K or N with each "
        "neighbour), 0.9 of it with bars in a second plane, moments where the bars' flexible length ends. At its ends "
        "the girder's chord is taken to go on beyond the joint or to be closed by a stiff plate.");
    if (std::any_of(designed().begin(), designed().end(), [](const DesignedEnd& d) { return d.aluminium; }))
      out.push_back(std::string("Aluminium joints: the same with the strengths beside welds, ") +
                    en1999::joint_label + ".");
  }

  struct Worst {
    double utilisation = 0;
    JointState at{};
    std::size_t combination = 0;
  };
  struct WorstOfEnd {
    Worst joint{}, gap{}, seam{};
  };

  const BraceEnds& places() const noexcept { return prepared_.places; }
  const std::vector<DesignedEnd>& designed() const noexcept { return prepared_.ends; }

  template <class Ends>
  EndForces forces(std::size_t i, Ends ends) const {
    const BraceEnd& e = places().ends[i];
    const MemberAxes<>& axes = analysis_.axes(e.member);
    EndForces out;
    out.cut = ends(e.member, e.at_start);
    // but for rounding
    if (model_.frame.members[e.member].kind == MemberKind::axial) out.cut.My = out.cut.Mz = 0.0;
    const Vec3<> moment = out.cut.My * axes.y + out.cut.Mz * axes.z;
    out.pull = (e.at_start ? 1.0 : -1.0) * axes.to_global({out.cut.N, out.cut.Vy, out.cut.Vz});
    out.own = {out.cut.N, dot(moment, e.across_plane), dot(moment, cross(axes.x, e.across_plane))};
    return out;
  }

  /// `of(j)` are the forces of end j.
  template <class Ends, class Of>
  void take_state(std::size_t i, Ends ends, Of of, JointState& out) const {
    const BraceEnd& e = places().ends[i];
    const DesignedEnd& d = designed()[i];
    out.own = of(i);
    out.own_N = out.own.own.N;
    out.N_beside.clear();
    for (const std::size_t j : e.same_side) out.N_beside.push_back(j == i ? out.own_N : of(j).own.N);
    out.joint = gathered(i, out);
    out.n_p = d.checked ? compression(e, d.tubes, ends) / d.f_face : 0.0;
    if (d.gap_checked) out.gap = in_gap(i, ends, of);
    if (d.weld_checked) out.seam = line_loads(d.weld.geometry.d, out.own.cut);
  }

  /// Of the bars on this side that all pull, or all push, the one that does so most across the chord answers for their
  /// sum, as if it were its own: Table 7.6 for KT joints (value from memory). The others answer for themselves.
  BraceForces gathered(std::size_t i, const JointState& s) const {
    const std::vector<std::size_t>& side = places().ends[i].same_side;
    BraceForces f = s.own.own;
    const double own = magnitude(f.N) * places().ends[i].sine;
    double across = 0;
    for (std::size_t j = 0; j < side.size(); ++j) {
      const double other = magnitude(s.N_beside[j]) * places().ends[side[j]].sine;
      if (!(s.N_beside[j] * f.N > 0.0)) continue;
      if (other > own * (1.0 + 1e-9)) return f;
      across += other;
    }
    f.N = across / places().ends[i].sine;
    return f;
  }

  /// Greatest compression in the chord on either side of the joint [Pa]: one of them is without the braces' components
  /// along it, as N_p,Ed is.
  template <class Ends>
  double compression(const BraceEnd& e, const TubeJoint& tubes, Ends ends) const {
    double worst = 0;
    for (const std::size_t c : {e.chord_before, e.chord_after}) {
      if (c == no_member) continue;
      const SectionForces f = ends(c, c == e.chord_after);
      worst = larger(worst, chord_compression(tubes, {f.N, f.My, f.Mz}));
    }
    return worst;
  }

  /// N and V of the chord in the gap after end i: from the chord before and the bars up to there, and from those
  /// beyond, which differ by what is brought in at the joint itself.
  template <class Ends, class Of>
  std::array<std::pair<double, double>, 2> in_gap(std::size_t i, Ends ends, Of of) const {
    const BraceEnd& e = places().ends[i];
    const double at = e.middle + e.half + 0.5 * prepared_.gap_after(i);
    Vec3<> before{}, beyond{};
    const auto chord_force = [&](std::size_t c, bool start) {
      const SectionForces f = ends(c, start);
      return analysis_.axes(c).to_global({f.N, f.Vy, f.Vz});
    };
    if (e.chord_before != no_member) before = chord_force(e.chord_before, false);
    if (e.chord_after != no_member) beyond = chord_force(e.chord_after, true);
    for (std::size_t j = e.first; j < e.last; ++j) {
      if (places().ends[j].middle < at)
        before -= of(j).pull;
      else
        beyond += of(j).pull;
    }
    const Vec3<> along = analysis_.axes(e.chord()).x;
    std::array<std::pair<double, double>, 2> out;
    for (const bool second : {false, true}) {
      const Vec3<>& force = second ? beyond : before;
      const double N = dot(force, along);
      out[second] = {N, length(force - N * along)};
    }
    return out;
  }
  static ClauseRow row_of_gap(const DesignedEnd& d, const std::pair<double, double>& N_and_V) {
    return en1993::joint_gap(en1993::chord_in_gap(d.tubes, d.f_face), N_and_V.first, N_and_V.second);
  }
  static double gap_utilisation(const DesignedEnd& d, const JointState& s) {
    return larger(row_of_gap(d, s.gap[0]).utilisation, row_of_gap(d, s.gap[1]).utilisation);
  }

  static ClauseRow row_of_joint(const DesignedEnd& d, const BraceForces& f, double n_p) {
    const en1993::JointResistance r = en1993::under_compression(d.unstressed, n_p);
    return d.aluminium ? en1999::joint_interaction(r, f) : en1993::joint_interaction(r, f);
  }

  Row row_at(std::size_t i, Check check, const ClauseRow& answer, std::size_t combination) const {
    const BraceEnd& e = places().ends[i];
    Row row = row_of(model_, e.member);
    row.check = check;
    // the row names its standard apart
    row.clause = answer.clause + (by_stress_ && check == Check::weld ? std::string_view("ADM 2020 I ").size()
                                                                     : std::string_view("EN 1993-1-8 ").size());
    row.x = e.at_start ? 0.0 : analysis_.axes(e.member).length;
    row.combination = combination;
    row.softened =
        designed()[i].aluminium && model_.bar(e.chord()).material.alloy_group != material::AlloyGroup::annealed;
    row.take(answer);
    return row;
  }

  Row joint_row(std::size_t i, const Worst& worst) const {
    const DesignedEnd& d = designed()[i];
    const JointState& w = worst.at;
    const en1993::JointResistance r = en1993::under_compression(d.unstressed, w.n_p);
    Row row = row_at(i, Check::joint, row_of_joint(d, w.joint, w.n_p), worst.combination);
    row.standard = "EN 1993-1-8:2005";
    if (d.aluminium) {
      row.clause = "7.4.2 (7.3), f_haz";
      row.reason = en1999::joint_label;
    }
    const bool bends = w.joint.M_ip != 0.0 || w.joint.M_op != 0.0;
    row.formula = bends ? "{a}/{b} + ({c}/{d})^2 + {e}/{f}" : "{a}/{b}";
    row.add("N_Ed", magnitude(w.joint.N), kilonewton);
    row.add("N_Rd", r.N_Rd, kilonewton);
    if (bends) {
      row.add("M_ip,Ed", magnitude(w.joint.M_ip), kilonewton_metre);
      row.add("M_ip,Rd", r.M_ip_Rd, kilonewton_metre);
      row.add("M_op,Ed", magnitude(w.joint.M_op), kilonewton_metre);
      row.add("M_op,Rd", r.M_op_Rd, kilonewton_metre);
    }
    row.add("k_p", r.k_p);
    row.add("n_p", w.n_p);
    row.add("beta", d.tubes.beta());
    row.add("gamma", d.tubes.gamma());
    row.add("sin(theta)", std::sin(d.tubes.theta));
    row.add("N of this bar", w.own_N, kilonewton);
    return row;
  }

  Row gap_row(std::size_t i, const Worst& worst) const {
    const DesignedEnd& d = designed()[i];
    const en1993::ChordInGap r = en1993::chord_in_gap(d.tubes, d.f_face);
    const auto& gap = worst.at.gap;
    const bool second = row_of_gap(d, gap[1]).utilisation > row_of_gap(d, gap[0]).utilisation;
    const auto& [N, V] = gap[second];
    Row row = row_at(i, Check::joint, row_of_gap(d, gap[second]), worst.combination);
    row.standard = "EN 1993-1-8:2005";
    if (d.aluminium) row.reason = en1999::joint_label;
    row.formula = "({a}/{b})^2 + ({c}/{d})^2";
    row.add("N_0,Ed", magnitude(N), kilonewton);
    row.add("N_pl,0,Rd", r.N_pl_Rd, kilonewton);
    row.add("V_0,Ed", V, kilonewton);
    row.add("V_pl,0,Rd", r.V_pl_Rd, kilonewton);
    return row;
  }

  Row weld_row(std::size_t i, const Worst& worst) const {
    const DesignedEnd& d = designed()[i];
    const LineLoads& l = worst.at.seam;
    Row row = row_at(i, Check::weld, d.weld.check(l, basis_), worst.combination);
    row.standard = d.weld.standard();
    d.weld.explain(l, basis_, row);
    row.add("a of full strength", d.weld.full_strength_throat(basis_), metre);
    row.add("sin(theta)", std::sin(d.weld.geometry.theta));
    return row;
  }

  const Analysis& analysis_;
  const GirderModel& model_;
  Basis basis_;
  bool by_stress_;
  PreparedJoints prepared_;
  std::vector<WorstOfEnd> worst_;
  // in the combination at hand, and kept for their memory
  std::vector<EndForces> forces_;
  JointState at_hand_{};
};

}  // namespace baywork::verify::detail
