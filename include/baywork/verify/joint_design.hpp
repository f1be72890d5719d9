// SPDX-License-Identifier: MIT
// The design of all joints of bars with chords, and of their welds: what is known before any load, and the search.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <baywork/response/cases.hpp>
#include <baywork/response/cut_forces.hpp>
#include <baywork/verify/brace_ends.hpp>
#include <baywork/verify/designed_end.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify::detail {

class JointDesign {
 public:
  explicit JointDesign(const Given& given)
      : analysis_(given.analysis), model_(given.analysis.model()), basis_(given.basis) {
    if (!basis_.joints.checked) return;
    places_ = brace_ends(analysis_);
    designed_.resize(places_.ends.size());
    const std::vector<bool>& skip = given.not_designed;
    for (std::size_t i = 0; i < designed_.size(); ++i)
      if (!skip[places_.ends[i].member] && !skip[places_.ends[i].chord()]) prepare(i);
  }

  bool idle() const noexcept { return !basis_.joints.checked; }

  void search(const Response& response, std::size_t combination) {
    for (std::size_t i = 0; i < designed_.size(); ++i) take_forces(i, response);
    for (std::size_t i = 0; i < designed_.size(); ++i) {
      DesignedEnd& d = designed_[i];
      if (d.checked) {
        const BraceForces f = gathered(i);
        const double n_p = compression(places_.ends[i], d.tubes, response) / d.f_face;
        const double u = row_of_joint(d, f, n_p).utilisation;
        if (u > d.joint.utilisation) d.joint = {u, n_p, d.own.N, f, combination};
      }
      if (d.gap_checked) take_gap(i, response, combination);
      if (d.weld_checked) {
        const LineLoads l = line_loads(d.weld.d, d.cut);
        const double u = row_of_weld(d, l).utilisation;
        if (u > d.seam.utilisation) d.seam = {u, l, combination};
      }
    }
  }

  /// By end, in the order of the joints along the girder; one row outside the scope for each bar that has a reason.
  void add_rows(std::vector<Row>& out) const {
    std::vector<bool> said(model_.bar_index.size());
    const auto say = [&](std::size_t m, const char* reason) {
      if (reason[0] == '\0' || said[m]) return;
      said[m] = true;
      out.push_back(outside(row_of(model_, m), reason));
    };
    for (std::size_t i = 0; i < designed_.size(); ++i) {
      const DesignedEnd& d = designed_[i];
      if (d.joint.utilisation > no_force) out.push_back(joint_row(i));
      if (d.gap.utilisation > no_force) out.push_back(gap_row(i));
      if (d.seam.utilisation > no_force) out.push_back(weld_row(i));
      say(places_.ends[i].member, d.outside);
      say(places_.ends[i].member, d.weld_outside);
    }
    for (const std::size_t m : places_.elsewhere) say(m, "joint: it ends on another bar of a face, not on a chord");
  }

  void add_words(Words& out) const {
    const bool welds = basis_.joints.throat > 0.0;
    out.not_covered.push_back(!basis_.joints.checked ? "Joints, welds, eccentricities inside joints."
                              : welds                ? "Eccentricities inside joints."
                                                     : "Welds, eccentricities inside joints.");
    if (!basis_.joints.checked) return;
    out.assumptions.push_back(
        "Joints of round tubes: EN 1993-1-8 7.4, the least of what the joint may be (T or Y, X, K or N with each "
        "neighbour), 0.9 of it with bars in a second plane, moments where the bars' flexible length ends. At its ends "
        "the girder's chord is taken to go on beyond the joint or to be closed by a stiff plate.");
    if (std::any_of(designed_.begin(), designed_.end(), [](const DesignedEnd& d) { return d.aluminium; }))
      out.assumptions.push_back(std::string("Aluminium joints: the same with the strengths beside welds, ") +
                                en1999::joint_label + ".");
    if (welds)
      out.assumptions.push_back("Welds: fillets all round every bar, throat " +
                                baywork::text::number(basis_.joints.throat * 1e3) +
                                " mm, under line loads spread evenly; EN 1993-1-8 7.3.1 may ask for the bar's full "
                                "strength.");
  }

 private:
  static TubeJoint tubes_of(const SectionData<double>& chord, const SectionData<double>& brace, double theta) {
    return {.d0 = chord.height, .t0 = chord.wall, .d1 = brace.height, .t1 = brace.wall, .theta = theta};
  }

  void prepare(std::size_t i) {
    const BraceEnd& e = places_.ends[i];
    DesignedEnd& d = designed_[i];
    const Bar &chord = model_.bar(e.chord()), &brace = model_.bar(e.member);
    d.aluminium = chord.material.family == material::Family::aluminium;
    if (chord.material.family != brace.material.family) {
      d.outside = "joint: chord and brace are of different metals";
      return;
    }
    if (chord.section.kind != ShapeKind::round_tube || brace.section.kind != ShapeKind::round_tube) {
      d.outside = "joint: chord or brace is not a round tube";
      return;
    }
    if (e.other_planes) {
      d.outside = "joint: bars meet the chord in planes that are not 60 to 90 degrees apart";
      return;
    }
    d.tubes = tubes_of(chord.section, brace.section, e.theta());
    if (e.second_plane) d.tubes.planes = e.opposite ? multiplanar_xx(1.0, -1.0) : multiplanar_kk;
    d.f_face = d.aluminium ? chord.strength.haz_yield / basis_.aluminium.gamma_M1
                           : chord.strength.yield / basis_.steel.gamma_M5;
    d.unstressed = resistance(d, chord, brace);
    if (e.opposite) take_least(d, chord, brace, JointType::x, {});
    const std::vector<std::size_t>& row = e.same_side;
    const auto own = std::find(row.begin(), row.end(), i);
    for (auto other = row.begin(); other != row.end(); ++other)
      if (other != own) take_pair(i, *other, other + 1 == own || own + 1 == other, chord, brace);
    d.outside = reason(d.unstressed.scope);
    d.checked = d.unstressed.scope == JointScope::covered;
    d.gap_checked = d.checked && e.second_plane && row.back() != i && gap_after(i) > 0.0;
    if (basis_.joints.throat > 0.0) prepare_weld(d, chord, brace);
  }

  en1993::JointResistance resistance(const DesignedEnd& d, const Bar& chord, const Bar& brace) const {
    if (!d.aluminium)
      return en1993::joint_resistance(d.tubes, {}, chord.strength.yield, brace.strength.yield, basis_.steel);
    const bool annealed = chord.material.alloy_group == material::AlloyGroup::annealed;
    const en1999::JointMetal m{chord.strength.haz_yield,
                               chord.strength.haz_ultimate,
                               chord.strength.yield,
                               brace.strength.yield,
                               chord.material.E,
                               chord.material.buckling_class,
                               brace.material.buckling_class,
                               annealed ? en1999::Welded::no : en1999::Welded::yes};
    return en1999::joint_resistance(d.tubes, {}, m, basis_.aluminium);
  }

  /// The same joint taken as of another type: the lesser resistance stays. Load that K and N hand from brace to brace
  /// and load that T and Y bring into the chord mix; with the least of all it does not matter how.
  void take_least(DesignedEnd& d, const Bar& chord, const Bar& brace, JointType type, const JointPartner& partner) {
    if (d.unstressed.scope != JointScope::covered) return;
    DesignedEnd as = d;
    as.tubes.type = type;
    as.tubes.partner = partner;
    // Both answer to the compressed brace's diameter: the smaller is on the safe side. The narrower, or else the
    // flatter, lies on the other.
    const double own = d.tubes.d1, other = partner.d;
    as.tubes.compressed = own <= other;
    as.tubes.overlaps = own < other || (own == other && d.tubes.theta <= partner.theta);
    const en1993::JointResistance r = resistance(as, chord, brace);
    if (r.scope != JointScope::covered) {
      d.unstressed = r;
      return;
    }
    d.unstressed.N_face = smaller(d.unstressed.N_face, r.N_face);
    d.unstressed.N_punching = smaller(d.unstressed.N_punching, r.N_punching);
  }

  /// Bars that are not neighbours have another between them that keeps them apart: their gap, greater, has the smaller
  /// k_g, and is asked nothing more.
  void take_pair(std::size_t i, std::size_t other, bool neighbours, const Bar& chord, const Bar& brace) {
    const BraceEnd &e = places_.ends[i], &o = places_.ends[other];
    DesignedEnd& d = designed_[i];
    const SectionData<double>& s = model_.bar(o.member).section;
    if (s.kind != ShapeKind::round_tube) {
      d.unstressed.scope = JointScope::not_tubes;
      return;
    }
    const double gap = magnitude(o.middle - e.middle) - e.half - o.half;
    take_least(d, chord, brace, JointType::k_or_n,
               {s.height, s.wall, o.theta(), neighbours ? gap : larger(gap, d.tubes.t1 + s.wall)});
    // Two that lean the same way are closer than their acute angles tell.
    if (d.unstressed.scope == JointScope::covered && dot(e.away, o.away) > std::cos(pi_v<double> / 6.0) + 1e-9)
      d.unstressed.scope = JointScope::close_braces;
  }

  std::size_t next(std::size_t i) const {
    const std::vector<std::size_t>& row = places_.ends[i].same_side;
    return *(std::find(row.begin(), row.end(), i) + 1);
  }
  double gap_after(std::size_t i) const {
    const BraceEnd &e = places_.ends[i], &o = places_.ends[next(i)];
    return o.middle - o.half - e.middle - e.half;
  }

  void prepare_weld(DesignedEnd& d, const Bar& chord, const Bar& brace) {
    d.weld = {d.tubes.d1, d.tubes.t1, d.tubes.theta, basis_.joints.throat};
    if (d.aluminium) {
      const double fw = smaller(en1999::weld_metal_strength(en1999::alloy_of(chord.material), basis_.joints.filler),
                                en1999::weld_metal_strength(en1999::alloy_of(brace.material), basis_.joints.filler));
      d.aluminium_weld = {fw, brace.strength.haz_ultimate, chord.strength.haz_ultimate};
      d.weld_outside = reason(en1999::weld_scope(d.weld, d.aluminium_weld, basis_.aluminium));
    } else {
      const double fu0 = chord.strength.ultimate, fu1 = brace.strength.ultimate;
      const double fy = fu0 == fu1  ? larger(chord.strength.yield, brace.strength.yield)
                        : fu0 < fu1 ? chord.strength.yield
                                    : brace.strength.yield;
      d.steel_weld = {fy, smaller(fu0, fu1)};
      d.weld_outside = reason(en1993::weld_scope(d.weld, d.steel_weld, basis_.steel));
    }
    d.weld_checked = d.weld_outside[0] == '\0';
  }

  static SectionForces cut(const Response& response, std::size_t m, bool at_start, double length) {
    const std::array<double, 6>& start = response.answer().members[m].start;
    const CutForces f = baywork::detail::cut_forces(start, response.loads_on(m), at_start ? 0.0 : length,
                                                    at_start ? CutSide::before : CutSide::after);
    return {f.N, f.Vy, f.Vz, f.T, f.My, f.Mz};
  }

  void take_forces(std::size_t i, const Response& response) {
    const BraceEnd& e = places_.ends[i];
    const MemberAxes<>& axes = analysis_.axes(e.member);
    DesignedEnd& d = designed_[i];
    d.cut = cut(response, e.member, e.at_start, axes.length);
    if (model_.frame.members[e.member].kind == MemberKind::axial) d.cut.My = d.cut.Mz = 0.0;  // but for rounding
    const Vec3<> moment = d.cut.My * axes.y + d.cut.Mz * axes.z;
    d.pull = (e.at_start ? 1.0 : -1.0) * axes.to_global({d.cut.N, d.cut.Vy, d.cut.Vz});
    d.own = {d.cut.N, dot(moment, e.across_plane), dot(moment, cross(axes.x, e.across_plane))};
  }

  /// Of the bars on this side that all pull, or all push, the one that does so most across the chord answers for their
  /// sum, as if it were its own: Table 7.6 for KT joints (value from memory). The others answer for themselves.
  BraceForces gathered(std::size_t i) const {
    BraceForces f = designed_[i].own;
    const double own = magnitude(f.N) * places_.ends[i].sine;
    double across = 0;
    for (const std::size_t j : places_.ends[i].same_side) {
      const double other = magnitude(designed_[j].own.N) * places_.ends[j].sine;
      if (!(designed_[j].own.N * f.N > 0.0)) continue;
      if (other > own * (1.0 + 1e-9)) return f;
      across += other;
    }
    f.N = across / places_.ends[i].sine;
    return f;
  }

  /// Greatest compression in the chord on either side of the joint [Pa]: one of them is without the braces' components
  /// along it, as N_p,Ed is.
  double compression(const BraceEnd& e, const TubeJoint& tubes, const Response& response) const {
    double worst = 0;
    for (const std::size_t c : {e.chord_before, e.chord_after}) {
      if (c == no_member) continue;
      const SectionForces f = cut(response, c, c == e.chord_after, analysis_.axes(c).length);
      worst = larger(worst, chord_compression(tubes, {f.N, f.My, f.Mz}));
    }
    return worst;
  }

  /// The chord in the gap after end i: from the chord before and the bars up to there, and from those beyond, which
  /// differ by what is brought in at the joint itself.
  void take_gap(std::size_t i, const Response& response, std::size_t combination) {
    const BraceEnd& e = places_.ends[i];
    const double at = e.middle + e.half + 0.5 * gap_after(i);
    Vec3<> before{}, beyond{};
    const auto chord_force = [&](std::size_t c, bool start) {
      const SectionForces f = cut(response, c, start, analysis_.axes(c).length);
      return analysis_.axes(c).to_global({f.N, f.Vy, f.Vz});
    };
    if (e.chord_before != no_member) before = chord_force(e.chord_before, false);
    if (e.chord_after != no_member) beyond = chord_force(e.chord_after, true);
    for (std::size_t j = e.first; j < e.last; ++j) {
      if (places_.ends[j].middle < at)
        before -= designed_[j].pull;
      else
        beyond += designed_[j].pull;
    }
    const Vec3<> along = analysis_.axes(e.chord()).x;
    for (const Vec3<>& force : {before, beyond}) {
      const double N = dot(force, along), V = length(force - N * along);
      const double u =
          en1993::joint_gap(en1993::chord_in_gap(designed_[i].tubes, designed_[i].f_face), N, V).utilisation;
      if (u > designed_[i].gap.utilisation) designed_[i].gap = {u, N, V, combination};
    }
  }

  static ClauseRow row_of_joint(const DesignedEnd& d, const BraceForces& f, double n_p) {
    const en1993::JointResistance r = en1993::under_compression(d.unstressed, n_p);
    return d.aluminium ? en1999::joint_interaction(r, f) : en1993::joint_interaction(r, f);
  }
  ClauseRow row_of_weld(const DesignedEnd& d, const LineLoads& l) const {
    return d.aluminium ? en1999::weld(d.weld, l, d.aluminium_weld, basis_.aluminium)
                       : en1993::weld(d.weld, l, d.steel_weld, basis_.steel);
  }

  Row row_at(std::size_t i, Check check, const ClauseRow& answer, std::size_t combination) const {
    const BraceEnd& e = places_.ends[i];
    Row row = row_of(model_, e.member);
    row.check = check;
    row.clause = answer.clause + std::string_view("EN 1993-1-8 ").size();  // the row names its standard apart
    row.x = e.at_start ? 0.0 : analysis_.axes(e.member).length;
    row.combination = combination;
    row.softened =
        designed_[i].aluminium && model_.bar(e.chord()).material.alloy_group != material::AlloyGroup::annealed;
    row.demand = answer.effect;
    row.resistance = answer.resistance;
    row.utilisation = answer.utilisation;
    return row;
  }

  Row joint_row(std::size_t i) const {
    const DesignedEnd& d = designed_[i];
    const DesignedEnd::Worst& w = d.joint;
    const en1993::JointResistance r = en1993::under_compression(d.unstressed, w.n_p);
    Row row = row_at(i, Check::joint, row_of_joint(d, w.forces, w.n_p), w.combination);
    row.standard = "EN 1993-1-8:2005";
    if (d.aluminium) {
      row.clause = "7.4.2 (7.3), f_haz";
      row.reason = en1999::joint_label;
    }
    const bool bends = w.forces.M_ip != 0.0 || w.forces.M_op != 0.0;
    row.formula = bends ? "{a}/{b} + ({c}/{d})^2 + {e}/{f}" : "{a}/{b}";
    row.add("N_Ed", magnitude(w.forces.N), kilonewton);
    row.add("N_Rd", r.N_Rd, kilonewton);
    if (bends) {
      row.add("M_ip,Ed", magnitude(w.forces.M_ip), kilonewton_metre);
      row.add("M_ip,Rd", r.M_ip_Rd, kilonewton_metre);
      row.add("M_op,Ed", magnitude(w.forces.M_op), kilonewton_metre);
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

  Row gap_row(std::size_t i) const {
    const DesignedEnd& d = designed_[i];
    const en1993::ChordInGap r = en1993::chord_in_gap(d.tubes, d.f_face);
    Row row = row_at(i, Check::joint, en1993::joint_gap(r, d.gap.N, d.gap.V), d.gap.combination);
    row.standard = "EN 1993-1-8:2005";
    if (d.aluminium) row.reason = en1999::joint_label;
    row.formula = "({a}/{b})^2 + ({c}/{d})^2";
    row.add("N_0,Ed", magnitude(d.gap.N), kilonewton);
    row.add("N_pl,0,Rd", r.N_pl_Rd, kilonewton);
    row.add("V_0,Ed", d.gap.V, kilonewton);
    row.add("V_pl,0,Rd", r.V_pl_Rd, kilonewton);
    return row;
  }

  Row weld_row(std::size_t i) const {
    const DesignedEnd& d = designed_[i];
    const LineLoads& l = d.seam.loads;
    Row row = row_at(i, Check::weld, row_of_weld(d, l), d.seam.combination);
    row.standard = d.aluminium ? "EN 1999-1-1:2007" : "EN 1993-1-8:2005";
    const WeldPart part =
        d.aluminium ? en1999::weakest_part(d.weld, l, d.aluminium_weld, basis_.aluminium) : WeldPart::throat;
    const WeldStress s = part_stress(d.weld, l, part);
    row.formula = "sqrt(({a})^2 + 3*({b})^2 + 3*({c})^2)/{d}";
    row.add("sigma", s.normal, megapascal);
    row.add("tau", s.across, megapascal);
    row.add("tau_par", s.along, megapascal);
    row.add(!d.aluminium               ? "(f_u/(beta_w*gamma_M2))"
            : part == WeldPart::throat ? "(f_w/gamma_Mw)"
                                       : "(f_u,haz/gamma_Mw)",
            row.resistance, megapascal);
    row.add("a", d.weld.throat, metre);
    row.add("a of full strength",
            d.aluminium ? en1999::full_strength_throat(d.weld, d.aluminium_weld)
                        : en1993::full_strength_throat(d.weld, d.steel_weld, basis_.steel),
            metre);
    row.add("sin(theta)", std::sin(d.weld.theta));
    return row;
  }

  const Analysis& analysis_;
  const GirderModel& model_;
  Basis basis_;
  BraceEnds places_;
  std::vector<DesignedEnd> designed_;
};

}  // namespace baywork::verify::detail
