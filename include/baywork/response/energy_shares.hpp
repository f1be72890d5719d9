// SPDX-License-Identifier: MIT
// Where the strain energy goes: whether a face works by axial force or by bending.
#pragma once

#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/core/text.hpp>
#include <baywork/response/response.hpp>

namespace baywork {

/// Energy of the bars of one role; of cross members and diagonals, face by face (chords and diaphragms belong to none).
template <Scalar S = double>
struct BasicEnergyRow {
  std::string part;  ///< "chords", "bottom face, cross members"
  int face = -1;
  Role role = Role::chord;
  BasicEnergy<S> energy{};
};

template <Scalar S = double>
struct BasicEnergyShares {
  std::vector<BasicEnergyRow<S>> rows;
  BasicEnergy<S> total{};

  /// Energy of a face's own bars of one role; zero where it has none.
  BasicEnergy<S> of(std::size_t face, Role role) const {
    for (const BasicEnergyRow<S>& r : rows)
      if (r.face == static_cast<int>(face) && r.role == role) return r.energy;
    return {};
  }
};
using EnergyRow = BasicEnergyRow<double>;
using EnergyShares = BasicEnergyShares<double>;

template <Scalar S>
BasicEnergyShares<S> energy_shares(const BasicResponse<S>& r) {
  BasicEnergyShares<S> out;
  const BasicFrame<S>& frame = r.model().frame;
  for (std::size_t i = 0; i < frame.members.size(); ++i) {
    const Address& a = frame.members[i].address;
    std::size_t k = 0;
    while (k < out.rows.size() && (out.rows[k].role != a.role || out.rows[k].face != a.face)) ++k;
    if (k == out.rows.size()) {
      const std::string bars = std::string(name(a.role)) + "s";
      out.rows.push_back({a.face < 0 ? bars : r.girder().faces[static_cast<std::size_t>(a.face)].name + " face, " + bars, a.face, a.role, {}});
    }
    const BasicEnergy<S> e = r.member(i).energy();
    out.rows[k].energy += e;
    out.total += e;
  }
  return out;
}

/// Prints each part's energy in J and its ways in per cent of the whole.
template <Scalar S>
std::ostream& operator<<(std::ostream& out, const BasicEnergyShares<S>& s) {
  const double all = value_of(s.total.total());
  const auto share = [all](const S& v) { return text::right(all > 0 ? text::fixed(100 * value_of(v) / all, 1) : "-", 10); };
  out << "Strain energy " << text::number(all) << " J, shares in per cent\n  " << text::left("part", 30)
      << "     axial   bending     shear   torsion     total\n";
  for (const BasicEnergyRow<S>& r : s.rows)
    out << "  " << text::left(r.part, 30) << share(r.energy.axial) << share(r.energy.bending) << share(r.energy.shear)
        << share(r.energy.torsion) << share(r.energy.total()) << '\n';
  return out;
}

}  // namespace baywork
