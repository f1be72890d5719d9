// SPDX-License-Identifier: MIT
// Welds of bars on chords by allowable stresses: by hand, in proofs and in ratings, and what is left outside.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/by_hand.hpp"
#include "support/recomputed_rows.hpp"
#include "support/refused.hpp"

using namespace baywork;
using namespace baywork::literals;
using verify::Check;
using verify::Row;
using verify::WeldPart;

namespace {

Bar us(double D, double t) { return {RoundTube{D, t}, material::us_6061_t6()}; }

BoxGirder box() {
  const Bar cross = us(48.3_mm, 4.0_mm), brace = us(26.9_mm, 3.2_mm);
  const Face side = braced(alternating, brace, cross);
  return {.bays = 8,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.6,
          .chord = us(60.3_mm, 5.0_mm),
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .supports = simply_supported()};
}
std::vector<LoadCase> loads() {
  return {LoadCase{"self-weight", Nature::permanent, {self_weight()}, {}},
          LoadCase{"screen", Nature::imposed, {point_load(ChordOf::bottom_left, 1.1, 4000.0)}, {}},
          LoadCase{"wind", Nature::wind, {wind_on(Side::left, 400.0)}, {}}};
}
verify::Basis welds(double throat) {
  verify::Basis b;
  b.joints = {.checked = true, .throat = throat, .welds_alone = true};
  return b;
}
std::vector<Row> of(const verify::Proof& proof, Check check) {
  std::vector<Row> out;
  for (const Row& r : proof.rows())
    if (r.check == check) out.push_back(r);
  return out;
}

}  // namespace

TEST_CASE("a fillet round a tube by hand: throat and legs") {
  // ADM 2020 I J.2.2, values from memory: F_sw of 5356 17 ksi = 117.2109 MPa, of 4043 11.5 ksi = 79.2897 MPa; F_tuw of
  // 6061-T6 24 ksi = 165.4742 MPa, F_suw = 0.6 · that = 99.2845 MPa; Omega 1.95, repeated use 0.85.
  // Tube 48.3 x 4.0 square on a chord, throat 4 mm: N = 10 kN, V = 2 kN. pi d = 151.7389 mm: n = 65.9027 N/mm,
  // v = 2 V/(pi d) = 26.3611 N/mm, together 70.9794 N/mm. Throat: 17.7449 MPa against 0.85 · 117.2109/1.95 = 51.0919
  // MPa. Leg 4 sqrt(2) = 5.656854 mm: 12.5475 MPa against 0.85 · 99.2845/1.95 = 43.2778 MPa.
  const verify::SaddleWeld w{48.3_mm, 4.0_mm, pi / 2, 4.0_mm};
  const verify::LineLoads l = verify::line_loads(w.d, {10e3, 2e3, 0, 0, 0, 0});
  const allowable::WeldMetal m = allowable::weld_metal(165.4742 * MPa, 165.4742 * MPa, en1999::Filler::en_5356);
  CHECK(close(allowable::weld_part(w, l, WeldPart::throat, m).utilisation, 17.7449 / 51.0919, 1e-5));
  CHECK(close(allowable::weld_part(w, l, WeldPart::face_on_brace, m).utilisation, 12.5475 / 43.2778, 1e-5));
  CHECK(close(allowable::weld(w, l, m).utilisation, 0.347313, 1e-5));
  CHECK(allowable::weakest_part(w, m) == WeldPart::throat);
  // a softer chord, F_tuw 17 ksi (117.2109 MPa): its leg governs, 12.5475 against 0.85 · 70.3265/1.95 = 30.6551 MPa
  const allowable::WeldMetal soft = allowable::weld_metal(165.4742 * MPa, 117.2109 * MPa, en1999::Filler::en_5356);
  CHECK(allowable::weakest_part(w, soft) == WeldPart::face_on_chord);
  CHECK(close(allowable::weld(w, l, soft).utilisation, 12.5475 / 30.6551, 1e-5));
  // at 30 degrees the leg is a/cos(15 degrees) = 1.035276 a: 99.2845 · 1.035276 = 102.787 < 117.211
  CHECK(allowable::weakest_part({48.3_mm, 4.0_mm, pi / 6, 4.0_mm}, m) != WeldPart::throat);
  // 4043: 17 / 11.5 times more in the throat
  const allowable::WeldMetal weak = allowable::weld_metal(165.4742 * MPa, 165.4742 * MPa, en1999::Filler::en_4043a);
  CHECK(close(allowable::weld(w, l, weak).utilisation, 0.347313 * 17.0 / 11.5, 1e-5));
  // never less than the directional form asks of the same throat with tension alone: sqrt(2) n as von Mises stress
  // against sqrt(3) F_sw is 0.816 of n against F_sw
  CHECK(allowable::weld_part(w, {l.n, 0.0}, WeldPart::throat, m).effect >=
        verify::equivalent(verify::throat_stress(w, {l.n, 0.0})) / std::sqrt(3.0));
}

TEST_CASE("the throat of full strength carries what the softened wall does, by throat or leg") {
  // t F_tuw = 4 · 165.4742 = 661.897 N/mm; throat 661.897/117.2109 = 5.64706 mm; leg 661.897/99.2845 = 6.66667 mm,
  // throat 6.66667/sqrt(2) = 4.71405 mm at 90 degrees, 6.66667 cos(15 degrees) = 6.43951 mm at 30
  const allowable::WeldMetal m = allowable::weld_metal(165.4742 * MPa, 165.4742 * MPa, en1999::Filler::en_5356);
  CHECK(close(allowable::full_strength_throat({48.3_mm, 4.0_mm, pi / 2, 1.0_mm}, m), 5.64706_mm, 1e-5));
  CHECK(close(allowable::full_strength_throat({48.3_mm, 4.0_mm, pi / 6, 1.0_mm}, m), 6.43951_mm, 1e-5));
  for (const double theta : {pi / 2, pi / 4, pi / 6}) {
    verify::SaddleWeld w{48.3_mm, 4.0_mm, theta, 1.0_mm};
    w.throat = allowable::full_strength_throat(w, m);
    const double n = 0.85 * 4.0_mm * 165.4742 * MPa / 1.95;  // what the wall may carry per metre
    CHECK(close(allowable::weld(w, {n, 0.0}, m).utilisation, 1.0, 1e-6));
  }
}

TEST_CASE("welds that are not covered carry nothing") {
  const allowable::WeldMetal m = allowable::weld_metal(165e6, 165e6, en1999::Filler::en_5356);
  using verify::WeldScope;
  CHECK(allowable::weld_scope({48.3_mm, 4.0_mm, pi / 2, 4.0_mm}, m) == WeldScope::covered);
  CHECK(allowable::weld_scope({48.3_mm, 4.0_mm, pi / 9, 4.0_mm}, m) == WeldScope::angle);
  // shorter than four legs: pi · 10 mm against 4 · 6 sqrt(2) mm
  CHECK(allowable::weld_scope({10.0_mm, 2.0_mm, pi / 2, 6.0_mm}, m) == WeldScope::short_weld);
  CHECK(allowable::weld_scope({48.3_mm, 4.0_mm, pi / 2, 4.0_mm}, {}) == WeldScope::bad_strength);
  CHECK(std::isinf(allowable::weld({48.3_mm, 4.0_mm, pi / 9, 4.0_mm}, {1.0, 0.0}, m).utilisation));
}

TEST_CASE("welds in a proof by allowable stresses: from the forces at the bars' ends, and recomputed from print") {
  const Analysis a{box()};
  const Cases cases = a.solve(loads());
  const verify::Proof proof = verify::allowable_stress(cases, asce7::allowable_stress(), welds(3.0_mm));
  const std::vector<Row> rows = of(proof, Check::weld);
  REQUIRE(rows.size() > 50);
  for (const Row& row : rows) {
    recompute_row(row);
    CHECK(std::string(row.standard) == "Aluminum Design Manual 2020");
    CHECK(std::string(row.clause) == "J.2.2");
    CHECK(std::string(row.reason) == allowable::label);
    // the same from the bar's end in that combination, throat and legs written out
    const Response r = cases.combine(proof.combinations()[row.combination]);
    const CutForces f = r.member(row.member).forces(fraction{row.x > 0.0 ? 1.0 : 0.0});
    const double d = a.model().bar(row.member).section.height;
    const bool pinned = a.model().frame.members[row.member].kind == MemberKind::axial;
    const double M = pinned ? 0.0 : std::hypot(f.My, f.Mz);
    const double n = std::abs(f.N) / (pi * d) + 4 * M / (pi * d * d);
    const double v = 2 * std::hypot(f.Vy, f.Vz) / (pi * d) + 2 * std::abs(f.T) / (pi * d * d);
    const Vec3<> along = a.axes(row.member).x;
    const double cosine = std::abs(along.x), half = 0.5 * std::acos(cosine);  // of the angle to a level chord
    const double per_metre = std::fmin(17.0 * 6.894757e6 * 3.0_mm, 0.6 * 24.0 * 6.894757e6 * 3.0_mm / std::cos(half));
    CHECK(close(row.utilisation, std::hypot(n, v) / (0.85 * per_metre / 1.95), 1e-6));
  }
  CHECK(of(proof, Check::outside_scope).empty());
  CHECK(of(proof, Check::joint).empty());
  const auto said = [](const std::vector<std::string>& lines, const std::string& words) {
    for (const std::string& l : lines)
      if (has(l, words)) return true;
    return false;
  };
  CHECK(said(proof.assumptions(), "J.2.2, Omega = 1.95"));
  CHECK(said(proof.not_covered(), "walls of the chords"));
  // a thinner throat is worse, wear as well
  const auto worst = [&](const verify::Basis& b) {
    double most = 0;
    for (const Row& r : of(verify::allowable_stress(cases, asce7::allowable_stress(), b), Check::weld))
      most = std::fmax(most, r.utilisation);
    return most;
  };
  const double at_3 = worst(welds(3.0_mm));
  CHECK(close(worst(welds(4.0_mm)), 0.75 * at_3, 1e-9));
  verify::Basis worn = welds(3.0_mm);
  worn.use = 0.85;
  CHECK(close(worst(worn), at_3 / 0.85, 1e-9));
}

TEST_CASE("chord walls have no allowable stresses: asked for, the proof does not pass") {
  const Analysis a{box()};
  const Cases cases = a.solve(std::vector<LoadCase>{loads()[0]});
  verify::Basis walls = welds(3.0_mm);
  CHECK(verify::allowable_stress(cases, asce7::allowable_stress(), walls).passes());
  walls.joints.welds_alone = false;
  const verify::Proof proof = verify::allowable_stress(cases, asce7::allowable_stress(), walls);
  CHECK(!proof.passes());
  REQUIRE(!proof.outside_scope().empty());
  CHECK(has(proof.verdict(), "no allowable stress is given for the chord's wall"));
  CHECK(!of(proof, Check::weld).empty());
  verify::Basis no_throat;
  no_throat.joints = {.checked = true, .welds_alone = true};
  CHECK(has(refused([&] { (void)verify::allowable_stress(cases, asce7::allowable_stress(), no_throat); }),
            "no throat is given"));
  // by the Eurocodes welds may be asked for alone as well
  BoxGirder steel = box();
  steel.chord = {RoundTube{60.3_mm, 5.0_mm}, material::s355h()};
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, material::s355h()};
  steel.faces = {.top = open(cross), .bottom = open(cross), .left = open(cross), .right = open(cross)};
  const Analysis of_steel{steel};
  const verify::Proof en = verify::by_material(of_steel.solve(loads()), en1990::ultimate(), welds(3.0_mm));
  CHECK(of(en, Check::joint).empty());
  CHECK(of(en, Check::weld).size() > 50);
}

TEST_CASE("welds by allowable stresses inside an allowable load") {
  rating::Terms terms;
  terms.set = asce7::allowable_stress();
  terms.standards = verify::Standards::allowable_stress;
  const Analysis a{box()};
  const std::vector<LoadCase> placed{loads()[0]};
  const Response unit = a.solve({point_load(ChordOf::bottom_left, 1.1, 1000.0)});
  const rating::Allowable bars = rating::Rater(a.solve(placed), terms).allowable(unit);
  terms.basis = welds(1.0_mm);  // so thin that they govern
  const rating::Allowable with = rating::Rater(a.solve(placed), terms).allowable(unit);
  CHECK(with.factor < bars.factor);
  CHECK(with.row.check == Check::weld);
  std::vector<LoadCase> loaded = placed;
  loaded.push_back({"load", Nature::imposed, {point_load(ChordOf::bottom_left, 1.1, 1000.0 * with.factor)}, {}});
  const verify::Proof proof = verify::allowable_stress(a.solve(loaded), terms.set, terms.basis);
  CHECK(close(proof.worst().utilisation, 1.0, 1e-9));
}
