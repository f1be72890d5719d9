// SPDX-License-Identifier: MIT
// What a search through combinations keeps: of each check of a member the worst place so far, however many there are.
#pragma once

#include <array>
#include <cstddef>
#include <limits>

#include <baywork/verify/clause_row.hpp>
#include <baywork/verify/en1999_section.hpp>
#include <baywork/verify/force_range.hpp>
#include <baywork/verify/row.hpp>
#include <baywork/verify/sections.hpp>

namespace baywork::verify::detail {

/// A utilisation that rounding leaves of no force at all: the solver's tolerance is 1e-10 of the largest force.
inline constexpr double no_force = 1e-9;

/// Gives a row its member's address and names.
inline void address(const GirderModel& model, std::size_t m, Row& row) {
  row.member = m;
  row.address = model.frame.members[m].address;
  const PartNames& names = model.frame.names;
  if (row.address.face >= 0) row.face = PartName(names.faces[static_cast<std::size_t>(row.address.face)]);
  if (row.address.chord >= 0) row.chord = PartName(names.chords[static_cast<std::size_t>(row.address.chord)]);
}
/// A row of a member with its address and names, and nothing found yet.
inline Row row_of(const GirderModel& model, std::size_t m) {
  Row row;
  address(model, m, row);
  return row;
}

/// Makes it one that could not be checked.
inline Row outside(Row row, const char* reason) {
  row.check = Check::outside_scope;
  row.reason = reason;
  row.utilisation = std::numeric_limits<double>::infinity();
  return row;
}

/// Forces on the cut at one end of a member, with all loads on it taken in.
inline SectionForces cut_at_end(const Response& r, std::size_t m, bool at_start) {
  const double x = at_start ? 0.0 : r.analysis().axes(m).length;
  const CutForces f = baywork::detail::cut_forces(r.answer().members[m].start, r.loads_on(m), x,
                                                  at_start ? CutSide::before : CutSide::after);
  return {f.N, f.Vy, f.Vz, f.T, f.My, f.Mz};
}

/// Where along a member, and in which combination.
struct Place {
  double x = 0;
  std::size_t combination = 0;
  en1999::Softening softening = en1999::Softening::none;
};

/// What a check says of forces at a place, with its formula and numbers.
template <class Design>
void take_answer(const Design& design, Check c, const SectionForces& f, const Place& at, Row& row) {
  const ClauseRow r = design.check(c, f, at);
  row.standard = Design::standard;
  row.clause = r.clause + Design::clause_prefix.size();  // the row names its standard apart
  row.softened = at.softening != en1999::Softening::none;
  row.take(r);
  design.explain(c, f, at, row);
}

/// The worst of one check.
struct Found {
  double utilisation = 0;
  SectionForces forces{};
  Place place{};

  /// Of equals the first combination counts, whatever the order in which they come, and in it the first section.
  void take(double u, const SectionForces& f, const Place& at) {
    if (!(u > utilisation) && !(u == utilisation && at.combination < place.combination)) return;
    utilisation = u;
    forces = f;
    place = at;
  }
};
using FoundOfMember = std::array<Found, n_member_checks>;

/// Greatest compression and greatest moments of a member in one combination, wherever they are.
struct GreatestForces {
  SectionForces forces{};  ///< N <= 0; My, Mz >= 0
  SectionForces whole{};   ///< what checks of the whole member take: the same, with moments times C_m where it is known
  SectionForces bound{};   ///< at least `whole`, and nowhere more between two load factors than at the greater of them
  double x = 0;            ///< of the greatest moment

  void take(const SectionForces& f, double at) {
    forces.N = smaller(forces.N, f.N);
    if (magnitude(f.My) > forces.My || magnitude(f.Mz) > forces.Mz) x = at;
    forces.My = larger(forces.My, magnitude(f.My));
    forces.Mz = larger(forces.Mz, magnitude(f.Mz));
  }
};

}  // namespace baywork::verify::detail
