// SPDX-License-Identifier: MIT
// A pair of chords as a built-up strut, EN 1993-1-1:2005 6.4: its chords between stations and its cross members.
#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include <baywork/verify/built_up.hpp>
#include <baywork/verify/en1993_member.hpp>
#include <baywork/verify/en1999_member.hpp>
#include <baywork/verify/stability_column.hpp>

namespace baywork::verify::detail {

/// A bar of the strut with its own resistances: of aluminium beside its welds, in the middle of its buckling wave.
struct StrutBar {
  bool aluminium = false;
  double length = 0;
  en1999::BarResistance of_aluminium{};
  en1993::BarResistance of_steel{};
  en1999::Buckling aluminium_buckling{};
  en1993::Buckling steel_buckling{};
  en1999::Softening softening = en1999::Softening::none;

  StrutBar() = default;
  StrutBar(const Bar& bar, const Basis& basis, double L, double softened_length) : length(L) {
    const SectionData<double>& s = bar.section;
    aluminium = bar.material.family == material::Family::aluminium;
    if (aluminium) {
      of_aluminium = aluminium_resistance(bar, basis);
      aluminium_buckling = en1999::buckling(of_aluminium, s, bar.material.E, L, L);
      softening = en1999::softening(of_aluminium, softened_length);
    } else {
      of_steel = en1993::resistance(s, bar.material, basis.steel);
      steel_buckling = en1993::buckling(of_steel, s, bar.material.E, L, L);
    }
  }
  Place place() const { return {0.5 * length, 0, softening}; }
  AluminiumMember as_aluminium() const { return {&of_aluminium, aluminium_buckling, length, length, length, false}; }
  SteelMember as_steel() const { return {&of_steel, steel_buckling, length, length}; }

  ClauseRow check(Check c, const SectionForces& f) const {
    return aluminium ? as_aluminium().check(c, f, place()) : as_steel().check(c, f, place());
  }
  /// At least the utilisation under f and all smaller forces of the same signs.
  double most(Check c, const SectionForces& f) const {
    return aluminium ? as_aluminium().most(c, f, place(), 0.0) : as_steel().most(c, f, place(), 0.0);
  }
  void fill(Check c, const SectionForces& f, Row& row) const {
    aluminium ? take_answer(as_aluminium(), c, f, place(), row) : take_answer(as_steel(), c, f, place(), row);
  }
  /// With kappa where it is welded along.
  double chi() const {
    const en1999::Buckling& b = aluminium_buckling;
    return aluminium ? smaller(b.kappa_y * b.chi_y, b.kappa_z * b.chi_z)
                     : smaller(steel_buckling.chi_y, steel_buckling.chi_z);
  }
  const char* chi_name() const { return chi_of(of_aluminium.welded_along); }
  double omega_0() const { return aluminium ? en1999::omega_0(of_aluminium, softening) : 1.0; }
  /// Of the section in compression, over gamma_M1 [N].
  double N_Rd() const { return aluminium ? of_aluminium.N_c_Rd : of_steel.N_Rk / of_steel.gamma_M1; }
};

/// The strut's three checks and the worst of each so far.
class PairStrut {
 public:
  PairStrut() = default;
  PairStrut(const GirderModel& model, const Basis& basis, const std::vector<WeldedEnds>& welds, const PairColumn& pair)
      : strut_{1.0,           pair.column.width, pair.column.A_ch, pair.column.I_ch, pair.column.shear_stiffness,
               pair.column.E, !pair.braced,      pair.column.bay} {
    const auto longest = [&](double most, std::size_t m) {
      return larger(most, longest_softened(welds[m]));
    };
    double on_chord = 0, on_cross = 0;
    for (std::size_t b = 0; b < model.girder.bays(); ++b)
      for (const std::size_t c : {pair.where.first, pair.where.second})
        on_chord = longest(on_chord, model.chord_member(b, c));
    chord_ = StrutBar(model.girder.chords[pair.where.first].bar, basis, pair.column.bay, on_chord);
    horizontal_ = magnitude(pair.where.across.y) > magnitude(pair.where.across.z);
    if (pair.braced) return;
    std::size_t any = 0;
    for (const std::vector<std::size_t>& at : model.faces[pair.where.face].cross_members)
      for (const std::size_t m : at) on_cross = longest(on_cross, m), any = m;
    cross_ = StrutBar(model.bar(any), basis, pair.column.width, on_cross);
  }

  /// N > 0 in both chords together, dN between them: M_I = dN/2 times their distance.
  void search(double N, double dN, double length, std::size_t station, std::size_t combination) {
    en1993::BuiltUp b = strut_;
    b.length = length;
    const double M_I = 0.5 * dN * b.h0;
    const en1993::BuiltUpForces f = en1993::built_up_forces(b, N, M_I);
    const double own[] = {of_chord(f), of_panel(f).utilisation, of_cross_member(f).utilisation};
    for (std::size_t i = 0; i < 3; ++i)
      if (own[i] > worst_[i].utilisation) worst_[i] = {own[i], N, M_I, length, b, f, station, combination};
  }

  /// At least what the three checks come to under N and dN and all less: M_Ed = (N e_0 + M_I)/(1 - N/N_cr - N/S_v) of
  /// 6.4.1 rises with both, and with it N_ch and V_Ed.
  double bound(double N, double dN, double length) const {
    en1993::BuiltUp b = strut_;
    b.length = length;
    const en1993::BuiltUpForces f = en1993::built_up_forces(b, N, 0.5 * dN * b.h0);
    if (!f.stable) return std::numeric_limits<double>::infinity();
    if (!strut_.battened) return of_chord(f);
    return larger(of_chord(f), larger(chord_.most(Check::beam_column, panel(f)),
                                      cross_.most(Check::bending_and_axial, cross_member(f))));
  }

  /// `at` gives a row of the face at a station, to be filled.
  template <class At>
  void add_rows(std::vector<Row>& out, At at) const {
    for (std::size_t i = 0; i < 3; ++i) {
      const Worst& w = worst_[i];
      if (!(w.utilisation > no_force)) continue;
      Row row = at(w.station);
      row.check = Check::built_up;
      row.combination = w.combination;
      row.address.has_role = true;
      row.address.role = i == 2 ? Role::cross_member : Role::chord;
      if (!w.forces.stable) {
        out.push_back(outside(row, "chord pair as a strut: its compression is above the critical load with shear"));
        continue;
      }
      if (i == 0) explain_chord(w, row);
      if (i == 1) chord_.fill(Check::beam_column, panel(w.forces), row);
      if (i == 2) cross_.fill(Check::bending_and_axial, cross_member(w.forces), row);
      if (i > 0)
        row.reason =
            i == 1 ? "N_ch,Ed and V_Ed a/4 of EN 1993-1-1 6.4.1, 6.4.3.1" : "V_Ed a/2 of EN 1993-1-1 6.4.1, 6.4.3.1";
      out.push_back(row);
    }
  }

 private:
  struct Worst {
    double utilisation = 0, N = 0, M_I = 0, length = 0;
    en1993::BuiltUp strut{};
    en1993::BuiltUpForces forces{};
    std::size_t station = 0, combination = 0;
  };

  /// Chord and cross member at a station near the ends, where V_Ed is greatest, with the greatest N_ch (6.4.3.1 (2)).
  SectionForces panel(const en1993::BuiltUpForces& f) const {
    SectionForces s;
    s.N = -f.N_ch;
    (horizontal_ ? s.Mz : s.My) = f.chord_moment;
    return s;
  }
  static SectionForces cross_member(const en1993::BuiltUpForces& f) {
    SectionForces s;
    s.Vy = f.batten_shear;
    s.Mz = f.batten_moment;  // in the face's plane
    return s;
  }
  double of_chord(const en1993::BuiltUpForces& f) const {
    return ratio(f.N_ch, chord_.chi() * chord_.omega_0() * chord_.N_Rd());
  }
  ClauseRow of_panel(const en1993::BuiltUpForces& f) const {
    if (!strut_.battened) return {};
    return f.stable ? chord_.check(Check::beam_column, panel(f)) : never();
  }
  ClauseRow of_cross_member(const en1993::BuiltUpForces& f) const {
    if (!strut_.battened) return {};
    return f.stable ? cross_.check(Check::bending_and_axial, cross_member(f)) : never();
  }
  static ClauseRow never() { return {std::numeric_limits<double>::infinity(), 0.0, 0.0, ""}; }

  void explain_chord(const Worst& w, Row& row) const {
    const double I_eff = en1993::effective_second_moment(w.strut);
    row.standard = chord_.aluminium ? AluminiumMember::standard : SteelMember::standard;
    row.clause = chord_.aluminium ? "6.3.1" : "6.4.1 (6.69)";
    if (chord_.aluminium) row.reason = "N_ch,Ed of EN 1993-1-1 6.4.1 (6.69)";
    row.softened = chord_.softening != en1999::Softening::none;
    row.demand = row.utilisation = w.utilisation;
    row.formula = "({a}/2 + ({a}*{b} + {c})*{d}/(1 - {a}/{e} - {a}/{f}))/({g}*{h}*{i})";
    row.add("N_Ed", w.N, kilonewton);
    row.add("e_0", w.forces.e0, metre);
    row.add("M_I,Ed", w.M_I, kilonewton_metre);
    row.add("h_0*A_ch/(2*I_eff)", w.strut.h0 * w.strut.A_ch / (2.0 * I_eff));
    row.add("N_cr", w.forces.N_cr, kilonewton);
    row.add("S_v", w.strut.shear_stiffness, kilonewton);
    row.add(chord_.chi_name(), chord_.chi());
    row.add("omega_0", chord_.omega_0());
    row.add("N_c,Rd", chord_.N_Rd(), kilonewton);
    row.add("L", w.length, metre);
    row.add("L_cr of the chord", chord_.length, metre);
    row.add("M_Ed", w.forces.M_Ed, kilonewton_metre);
    row.add("V_Ed", w.forces.V_Ed, kilonewton);
  }

  en1993::BuiltUp strut_{};
  StrutBar chord_{}, cross_{};
  bool horizontal_ = true;
  Worst worst_[3]{};
};

}  // namespace baywork::verify::detail
