// SPDX-License-Identifier: MIT
// Splices as a topic of a proof: every connector under the forces of every combination, the worst of each row kept.
#pragma once

#include <cstddef>
#include <span>
#include <type_traits>
#include <variant>
#include <vector>

#include <baywork/girder/connector_words.hpp>
#include <baywork/response/cases.hpp>
#include <baywork/verify/end_plate_rows.hpp>
#include <baywork/verify/found.hpp>
#include <baywork/verify/pin_coupler_rows.hpp>
#include <baywork/verify/spigot_rows.hpp>
#include <baywork/verify/topic.hpp>

namespace baywork::verify::detail {

class SpliceDesign {
 public:
  explicit SpliceDesign(const Given& given)
      : model_(given.analysis.model()), basis_(given.basis), by_stress_(given.which == Standards::allowable_stress) {
    const Girder& g = model_.girder;
    if (!is_described(g.connector)) return;
    std::vector<Row> none;
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      outside_.push_back(by_stress_ ? "splice: allowable stresses are given for bars alone"
                                    : std::visit(
                                          [&](const auto& t) {
                                            return outside_of({g.chords[c].bar, basis_, none}, t);
                                          },
                                          g.connector));
      for (const std::size_t s : g.splices) places_.push_back({s, c, {}});
    }
  }

  bool idle() const noexcept { return places_.empty(); }

  void search(const Response& response, std::size_t combination) {
    for (Place& p : places_) {
      if (outside_[p.chord][0] != '\0') continue;
      find(p, cut_at_end(response, member_before(p), false), found_);
      if (p.worst.empty()) p.worst.resize(found_.size());
      for (std::size_t i = 0; i < found_.size(); ++i) {
        if (!(found_[i].utilisation > p.worst[i].utilisation)) continue;
        p.worst[i] = found_[i];
        p.worst[i].combination = combination;
      }
    }
  }

  // what a rating asks: parts are connectors, their states the forces on the chord's end

  using State = SectionForces;
  std::size_t parts() const noexcept { return places_.size(); }

  template <class Ends>
  void state(std::size_t i, const Ends& ends, SectionForces& out) const {
    out = ends(member_before(places_[i]), false);
  }
  double utilisation(std::size_t i, const SectionForces& f) const { return worst_row(i, f, 0).utilisation; }
  /// At least every utilisation for forces within the hull of some. All rows rise with the sizes of shears,
  /// torque and moments; along N alone each rises with a convex function of it (|N|, max(N, 0), N/n + 4 |N| e/(n D),
  /// their resultants and squares) and so is greatest at one end of its range.
  double bound(std::size_t i, std::span<const SectionForces* const> states) const {
    ForceRange range(*states[0]);
    for (const SectionForces* s : states) range.take(*s);
    SectionForces f = range.others;
    f.N = range.N_least;
    const double at_least = utilisation(i, f);
    f.N = range.N_most;
    return larger(at_least, utilisation(i, f));
  }
  /// The row of greatest utilisation.
  Row worst_row(std::size_t i, const SectionForces& f, std::size_t combination) const {
    const Place& p = places_[i];
    if (outside_[p.chord][0] != '\0') return outside(placed(p, {}), outside_[p.chord]);
    std::vector<Row> rows;
    find(p, f, rows);
    std::size_t worst = 0;
    for (std::size_t k = 1; k < rows.size(); ++k)
      if (rows[k].utilisation > rows[worst].utilisation) worst = k;
    rows[worst].combination = combination;
    return placed(p, rows[worst]);
  }

  /// Splice by splice for each chord: rows of a station and a chord, of no member.
  void add_rows(std::vector<Row>& out) const {
    for (const Place& p : places_) {
      if (outside_[p.chord][0] != '\0') out.push_back(outside(placed(p, {}), outside_[p.chord]));
      for (const Row& row : p.worst)
        if (row.utilisation > no_force) out.push_back(placed(p, row));
    }
  }

  void add_words(Words& out) const {
    const Girder& g = model_.girder;
    if (g.splices.empty()) return;
    if (!is_described(g.connector)) {
      out.not_covered.push_back("Splices: chords carry on rigidly there, their connectors are not described.");
      return;
    }
    out.assumptions.push_back("Splices: in every chord " + words_of(g.connector) + ".");
    if (by_stress_) return;
    out.assumptions.push_back(
        "Splices: EN 1993-1-8 3.13, 3.6 and 6.2.4, EN 1999-1-1 8.5.14 for aluminium with gamma_Mp = " +
        baywork::text::number(basis_.aluminium.gamma_Mp) +
        "; the sizes of all force components add up; slack is taken as closed.");
    if (const PinCoupler* c = std::get_if<PinCoupler>(&g.connector); c != nullptr && c->throat == 0.0)
      out.not_covered.push_back("Splices: what joins couplers and chords is not described.");
    if (std::holds_alternative<PinCoupler>(g.connector))
      out.not_covered.push_back("Splices: buckling of pushed chords that turn about their pins.");
    out.not_covered.push_back("Splices: securing of pins and bolts, tolerances, impact when slack is taken up.");
  }

 private:
  struct Place {
    std::size_t station = 0, chord = 0;
    std::vector<Row> worst;  ///< of each row of the connector
  };

  std::size_t member_before(const Place& p) const { return model_.chord_member(p.station - 1, p.chord); }
  Row placed(const Place& p, Row row) const {
    row.address.station = static_cast<int>(p.station);
    row.address.chord = static_cast<int>(p.chord);
    row.chord = PartName(model_.girder.chords[p.chord].name);
    return row;
  }
  /// All rows of a connector under forces on the chord's end.
  void find(const Place& p, const SectionForces& f, std::vector<Row>& out) const {
    out.clear();
    const SpliceSite at{model_.girder.chords[p.chord].bar, basis_, out};
    std::visit([&](const auto& t) { add(f, at, t); }, model_.girder.connector);
  }

  template <class T>
  static const char* outside_of(const SpliceSite& at, const T& t) {
    if constexpr (std::is_same_v<T, PinCoupler>) return coupler_outside(at, t);
    if constexpr (std::is_same_v<T, BoltedEndPlate>) return end_plate_outside(at, t);
    if constexpr (std::is_same_v<T, Spigot>) return spigot_outside(at, t);
    return "";
  }
  template <class T>
  static void add(const SectionForces& f, const SpliceSite& at, const T& t) {
    if constexpr (std::is_same_v<T, PinCoupler>) add_coupler_rows(at, t, f);
    if constexpr (std::is_same_v<T, BoltedEndPlate>) add_end_plate_rows(at, t, f);
    if constexpr (std::is_same_v<T, Spigot>) add_spigot_rows(at, t, f);
  }

  const GirderModel& model_;
  Basis basis_;
  bool by_stress_;
  std::vector<const char*> outside_;  ///< by chord
  std::vector<Place> places_;
  std::vector<Row> found_;
};

}  // namespace baywork::verify::detail
