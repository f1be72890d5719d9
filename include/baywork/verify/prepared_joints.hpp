// SPDX-License-Identifier: MIT
// What is known of all joints of bars with chords before any load: resistances, welds, and what is outside the scope.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <baywork/verify/brace_ends.hpp>
#include <baywork/verify/designed_end.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify::detail {

struct PreparedJoints {
  BraceEnds places{};
  std::vector<DesignedEnd> ends{};

  std::size_t next(std::size_t i) const {
    const std::vector<std::size_t>& row = places.ends[i].same_side;
    return *(std::find(row.begin(), row.end(), i) + 1);
  }
  double gap_after(std::size_t i) const {
    const BraceEnd &e = places.ends[i], &o = places.ends[next(i)];
    return o.middle - o.half - e.middle - e.half;
  }
};

class JointPreparer {
 public:
  explicit JointPreparer(const Given& given)
      : analysis_(given.analysis), model_(given.analysis.model()), basis_(given.basis), which_(given.which) {
    out_.places = brace_ends(analysis_);
    out_.ends.resize(out_.places.ends.size());
    const std::vector<bool>& skip = given.not_designed;
    for (std::size_t i = 0; i < out_.ends.size(); ++i)
      if (!skip[out_.places.ends[i].member] && !skip[out_.places.ends[i].chord()]) prepare(i);
  }
  PreparedJoints take() { return std::move(out_); }

 private:
  static TubeJoint tubes_of(const SectionData<double>& chord, const SectionData<double>& brace, double theta) {
    return {.d0 = chord.height, .t0 = chord.wall, .d1 = brace.height, .t1 = brace.wall, .theta = theta};
  }

  void prepare(std::size_t i) {
    const BraceEnd& e = out_.places.ends[i];
    DesignedEnd& d = out_.ends[i];
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
    d.tubes = tubes_of(chord.section, brace.section, e.theta());
    prepare_weld(d, chord, brace);
    if (basis_.joints.welds_alone) return;
    if (e.other_planes) {
      d.outside = "joint: bars meet the chord in planes that are not 60 to 90 degrees apart";
      return;
    }
    if (which_ == Standards::allowable_stress) {
      d.outside = "joint: no allowable stress is given for the chord's wall (joints.welds_alone leaves it out)";
      return;
    }
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
    d.gap_checked = d.checked && e.second_plane && row.back() != i && out_.gap_after(i) > 0.0;
  }

  void prepare_weld(DesignedEnd& d, const Bar& chord, const Bar& brace) const {
    if (!(basis_.joints.throat > 0.0)) return;
    d.weld = designed_weld({d.tubes.d1, d.tubes.t1, d.tubes.theta, basis_.joints.throat},
                           {brace.material, brace.strength}, {chord.material, chord.strength}, basis_, which_);
    d.weld_checked = d.weld.outside[0] == '\0';
  }

  en1993::JointResistance resistance(const DesignedEnd& d, const Bar& chord, const Bar& brace) const {
    if (!d.aluminium)
      return en1993::joint_resistance(d.tubes, {}, chord.strength.yield, brace.strength.yield, basis_.steel);
    const en1999::JointMetal m{chord.strength.haz_yield,
                               chord.strength.haz_ultimate,
                               chord.strength.yield,
                               brace.strength.yield,
                               chord.material.E,
                               chord.material.buckling_class,
                               brace.material.buckling_class,
                               en1999::welded_at_joints(chord.material)};
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
    const BraceEnd &e = out_.places.ends[i], &o = out_.places.ends[other];
    DesignedEnd& d = out_.ends[i];
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

  const Analysis& analysis_;
  const GirderModel& model_;
  const Basis& basis_;
  Standards which_;
  PreparedJoints out_;
};

}  // namespace baywork::verify::detail
