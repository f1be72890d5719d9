// SPDX-License-Identifier: MIT
// A pair of chords and the face between them as one column: its critical load, its slenderness, what it may carry.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/verify/en1993_buckling.hpp>
#include <baywork/verify/en1999_buckling.hpp>
#include <baywork/verify/stability_pairs.hpp>
#include <baywork/verify/stability_ring.hpp>
#include <baywork/verify/welded_ends.hpp>

namespace baywork::verify {

/// All of a pair that no load changes; or of a chord alone, `first` and `second` alike, that no face holds sideways.
struct PairColumn {
  ChordPair where{};
  const char* outside = "";     ///< why it is not checked; empty where it is
  const char* no_formula = "";  ///< why its critical load has no closed form; empty where it has
  bool braced = false;          ///< the face between has diagonals
  HeldPair column{};            ///< its length is that of the question asked
  BoxBehind behind{};           ///< racking 0: no rings, or no box
  std::size_t opposite = 0;     ///< the pair behind, among all pairs; itself where there are no rings
  bool aluminium = false;
  material::BucklingClass buckling_class = material::BucklingClass::a;
  en1993::BucklingCurve curve = en1993::BucklingCurve::d;
  double N_bay = 0;    ///< Euler's load of one chord over its longest bay [N]
  double N_Rk = 0;     ///< of both chords, A_eff f or A f [N]
  double N_Rd = 0;     ///< the same over gamma_M1, welds at the stations left out [N]
  double omega_0 = 1;  ///< beside the welds at the stations, in the middle of the wave (safe side)
  bool welded_along = false;
  double softened_share = 1;  ///< A_1 / A of welds along the chords

  bool takes_bows = false;  ///< bows can be made for it: a pair that is held, of a straight girder
  bool alone() const noexcept { return where.first == where.second; }
  /// With kappa where its chords are welded along.
  double chi(double lambda) const {
    if (!aluminium) return en1993::reduction_factor(curve, lambda);
    const double kappa = welded_along ? en1999::kappa_longitudinal(buckling_class, lambda, softened_share) : 1.0;
    return kappa * en1999::reduction_factor(buckling_class, lambda);
  }
};

/// A pair in one combination.
struct PairAnswer {
  const char* outside = "";
  double length = 0;     ///< of the column [m]; 0 where the frame's eigenvalue stands for it
  double N_cr = 0;       ///< at most Euler's load of the chords' bays [N]
  double N_cr_sway = 0;  ///< without that limit: what first-order forces are compared with [N]
  std::size_t half_waves = 0;
  double lambda = 0, chi = 1;
};

inline void set_slenderness(const PairColumn& p, PairAnswer& a) {
  a.lambda = std::sqrt(p.N_Rk / a.N_cr);
  a.chi = p.chi(a.lambda);
}

/// N_cr at most twice Euler's load of one chord between two stations, where the mode would be another.
inline PairAnswer answer_of(const PairColumn& p, const std::vector<double>& stations, bool overhangs_too,
                            double tension, bool rings) {
  PairAnswer a;
  a.length = column_length(p.where, stations, overhangs_too);
  if (!(a.length > 0.0)) {
    a.outside = "chord pair: nothing holds both chords sideways where they are compressed";
    return a;
  }
  HeldPair column = p.column;
  column.length = a.length;
  if (a.length < 3.0 * column.bay * (1.0 - 1e-9)) {
    a.outside = "chord pair: fewer than three bays lie between its holds";
    return a;
  }
  BoxBehind behind = p.behind;
  behind.tension = smaller(1.0, larger(0.0, tension));
  // shorter girders have no waves of more than a ring or two
  const bool tied = rings && behind.racking > 0.0 && a.length > 5.5 * column.bay;
  const CriticalLoad c = tied ? critical_load(column, behind) : critical_load(column);
  a.N_cr_sway = c.N_cr;
  a.N_cr = smaller(c.N_cr, 2.0 * p.N_bay);
  a.half_waves = c.half_waves;
  set_slenderness(p, a);
  return a;
}

/// The same where the whole frame buckles at N_cr in the pair.
inline PairAnswer answer_of(const PairColumn& p, double N_cr) {
  PairAnswer a;
  a.N_cr_sway = N_cr;
  a.N_cr = smaller(N_cr, (p.alone() ? 1.0 : 2.0) * p.N_bay);
  set_slenderness(p, a);
  return a;
}

/// N/(chi omega_0 N_Rd) + dN/((1 - N/N_cr) omega_0 N_Rd), N the compression of both chords, dN the difference of their
/// forces: the worse chord has (N + dN)/2. Elastic second order: N and the bow behind chi stress it by f(N), f(0) = 0
/// and f(chi N_Rd) = 1, which is convex and so at most N/(chi N_Rd); dN grows by 1/(1 - N/N_cr). Derived here. Infinite
/// from N_cr on.
inline double pair_utilisation(const PairColumn& p, const PairAnswer& a, double N, double dN) {
  const double axial = ratio(N, a.chi * p.omega_0 * p.N_Rd);
  if (dN == 0.0) return axial;
  return axial + ratio(dN, larger(0.0, 1.0 - N / a.N_cr) * p.omega_0 * p.N_Rd);
}

namespace detail {

/// How the factor of buckling is printed.
inline const char* chi_of(bool welded_along) { return welded_along ? "(kappa*chi)" : "chi"; }

/// Makes the columns of all pairs of a girder.
class ColumnMaker {
 public:
  ColumnMaker(const Analysis& analysis, const Basis& basis, const std::vector<bool>& not_designed)
      : model_(analysis.model()),
        girder_(model_.girder),
        basis_(basis),
        skip_(not_designed),
        beam_(girder_beam(girder_)),
        welds_(welded_ends(analysis, basis.choices.heat)) {
    for (ChordPair& w : chord_pairs(analysis, beam_)) {
      PairColumn p;
      p.where = std::move(w);
      out_.push_back(std::move(p));
    }
  }
  std::vector<PairColumn> make() {
    for (std::size_t i = 0; i < out_.size(); ++i) prepare(i);
    const std::size_t pairs = out_.size();
    for (std::size_t c = 0; c < girder_.chords.size(); ++c) {
      if (!is_alone(c, pairs)) continue;
      PairColumn p;
      p.where.first = p.where.second = c;
      p.opposite = out_.size();
      p.no_formula = "no face holds this compressed chord sideways";
      strength(p);
      out_.push_back(std::move(p));
    }
    return std::move(out_);
  }
  const std::vector<WeldedEnds>& welds() const noexcept { return welds_; }

 private:
  /// Bending of a bar out of the plane of its face: in the ring.
  static double I_ring(const Bar& bar) { return bar.section.Iy; }

  /// No two faces that are not parallel meet at this chord.
  bool is_alone(std::size_t c, std::size_t pairs) const {
    const auto meets = [&](std::size_t i) { return out_[i].where.first == c || out_[i].where.second == c; };
    for (std::size_t i = 0; i < pairs; ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (meets(i) && meets(j) && length(cross(out_[i].where.across, out_[j].where.across)) > 0.2) return false;
    return true;
  }

  void prepare(std::size_t i) {
    PairColumn& p = out_[i];
    p.opposite = i;
    const HandFace& f = beam_.faces[i];
    p.braced = f.layout != Layout::open;
    p.takes_bows = beam_.not_straight.empty() && !p.where.held.empty();
    const Bar &bar = girder_.chords[f.first_chord].bar, &other = girder_.chords[f.second_chord].bar;
    if (bar.section.designation != other.section.designation || bar.section.area != other.section.area ||
        bar.material.name != other.material.name)
      p.outside = "chord pair: its chords differ";
    strength(p);
    if (!f.no_closed_form.empty()) p.no_formula = "chord pair: its face has no closed form of its shear stiffness";
    if (!beam_.not_straight.empty()) p.no_formula = "chord pair: the girder is curved, cambered or tapered";
    if (p.outside[0] != '\0' || p.no_formula[0] != '\0') return;
    const double EI = baywork::detail::in_plane_of(bar, -f.tz(), f.ty()).EI;
    p.column = {.length = 1.0,
                .bay = f.s,
                .width = f.h,
                .E = bar.material.E,
                .A_ch = bar.section.area,
                .I_ch = EI / bar.material.E,
                .shear_stiffness = shear_stiffness(f, EI)};
    rings(p, i);
  }

  /// S of the face. Of an open one with the chord's part of 1/S raised from a²/(24 E I) to a²/(2 pi² E I): what it
  /// softens to as its chords near their own buckling between cross members; EN 1993-1-1 (6.73) has the same limit.
  static double shear_stiffness(const HandFace& f, double EI) {
    if (f.layout != Layout::open) return f.stiffness.value;
    return 1.0 / (1.0 / f.S() + (1.0 / (2.0 * pi_v<double> * pi_v<double>)-1.0 / 24.0) * f.s * f.s / EI);
  }

  void strength(PairColumn& p) {
    const Bar& bar = girder_.chords[p.where.first].bar;
    const double chords = p.alone() ? 1.0 : 2.0;
    double bay = 0;
    for (std::size_t b = 0; b < girder_.bays(); ++b) {
      bay = larger(bay, girder_.stations[b + 1] - girder_.stations[b]);
      for (const std::size_t c : {p.where.first, p.where.second})
        if (skip_[model_.chord_member(b, c)]) p.outside = "chord pair: its chords are not checked themselves";
    }
    if (p.outside[0] != '\0') return;
    p.N_bay = en1993::euler_load(bar.material.E, smaller(bar.section.Iy, bar.section.Iz), bay);
    p.aluminium = bar.material.family == material::Family::aluminium;
    if (!p.aluminium) {
      const en1993::BarResistance r = en1993::resistance(bar.section, bar.material, basis_.steel);
      const en1993::Buckling b = en1993::buckling(r, bar.section, bar.material.E, 1.0, 1.0);
      p.curve = en1993::imperfection(b.curve_y) > en1993::imperfection(b.curve_z) ? b.curve_y : b.curve_z;
      p.N_Rk = chords * r.N_Rk;
      p.N_Rd = p.N_Rk / r.gamma_M1;
      return;
    }
    const en1999::BarResistance r = aluminium_resistance(bar, basis_);
    p.buckling_class = r.buckling_class;
    p.welded_along = r.welded_along;
    p.softened_share = r.softened_share;
    p.N_Rk = chords * r.A_eff * r.fo;
    p.N_Rd = chords * r.N_c_Rd;
    for (std::size_t b = 0; b < girder_.bays(); ++b)
      for (const std::size_t c : {p.where.first, p.where.second})
        p.omega_0 = smaller(
            p.omega_0, en1999::omega_0(r, en1999::softening(r, longest_softened(welds_[model_.chord_member(b, c)]))));
  }

  /// Rings stand where all four faces of a box have a bar: at the longest panel of any face.
  void rings(PairColumn& p, std::size_t i) {
    const std::size_t far = beam_.opposite[i];
    if (girder_.chords.size() != 4 || beam_.faces.size() != 4 || far == i) return;
    const HandFace &near_face = beam_.faces[i], &far_face = beam_.faces[far];
    Ring ring{.E = p.column.E, .width = near_face.h};
    double a = 0, side = rigid_stiffness, I_post = rigid_stiffness, post_joint = rigid_stiffness;
    for (const HandFace& f : beam_.faces) {
      const bool is_side = &f != &near_face && &f != &far_face;
      if (!f.no_closed_form.empty() || !f.facts.cross.given || !(f.facts.joint.out_of_plane > 0.0)) return;
      if (is_side && magnitude(f.ty() * near_face.ty() + f.tz() * near_face.tz()) > 1e-9) return;
      ring.E = smaller(ring.E, f.facts.cross.material.E);
      a = larger(a, f.s);
      if (!is_side) continue;
      ring.height = f.h;
      side = smaller(side, f.stiffness.value);
      I_post = smaller(I_post, I_ring(f.facts.cross));
      post_joint = smaller(post_joint, f.facts.joint.out_of_plane);
    }
    for (const HandFace& f : beam_.faces)
      if (std::abs(a / f.s - std::round(a / f.s)) > 1e-9) return;
    const auto one_after_other = [&](double joint) {
      const double turn = (is_infinite(joint) ? 0.0 : 1.0 / joint) + (is_infinite(post_joint) ? 0.0 : 1.0 / post_joint);
      return turn > 0.0 ? 1.0 / turn : rigid_stiffness;
    };
    ring.I_post = I_post;
    ring.I_near = I_ring(near_face.facts.cross);
    ring.I_far = I_ring(far_face.facts.cross);
    ring.joint_near = one_after_other(near_face.facts.joint.out_of_plane);
    ring.joint_far = one_after_other(far_face.facts.joint.out_of_plane);
    const Bar& c = girder_.chords[far_face.first_chord].bar;
    const Bar& d = girder_.chords[far_face.second_chord].bar;
    const double EA = smaller(c.material.E * c.section.area, d.material.E * d.section.area);
    const double EI = baywork::detail::in_plane_of(c, -far_face.tz(), far_face.ty()).EI;
    p.behind = {ring.height, EA, shear_stiffness(far_face, EI), side, racking_stiffness(ring) / a, 0.0};
    p.opposite = far;
    p.column.bay = a;
  }

  const GirderModel& model_;
  const Girder& girder_;
  const Basis& basis_;
  const std::vector<bool>& skip_;
  GirderBeam beam_;
  std::vector<WeldedEnds> welds_;
  std::vector<PairColumn> out_;
};

}  // namespace detail

}  // namespace baywork::verify
