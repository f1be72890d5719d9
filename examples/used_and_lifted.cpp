// SPDX-License-Identifier: MIT
// The harbour cinema's girder in its fifth summer: worn tubes, hoists in motion, all that hangs out of plumb, wind in and
// out of service. Proved by partial factors and, beside it, by allowable stresses.
#include <iostream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

using namespace baywork;
using namespace baywork::literals;

namespace {

/// 10 m between its ends; `loss`: share of every wall that is worn away.
BoxGirder girder(double loss) {
  const material::Material alloy = material::us_6061_t6();
  const auto used = [&](double diameter, double wall) { return worn(Bar{RoundTube{diameter, wall}, alloy}, loss); };
  const Bar chord = used(60.3_mm, 5.0_mm), cross = used(48.3_mm, 4.0_mm), brace = used(26.9_mm, 3.2_mm);
  const Face side = braced(alternating, brace, cross);
  return {.bays = 20, .bay_length = 0.5_m, .width = 0.5_m, .depth = 0.5_m, .chord = chord,
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side}, .supports = simply_supported()};
}

std::vector<LoadCase> load_cases(const Girder& g) {
  const std::vector<ChordRef> lower{ChordOf::bottom_left, ChordOf::bottom_right};
  const LoadCase own{"self-weight", Nature::permanent, {self_weight(1.05)}, {}};
  const LoadCase screen{"screen", Nature::imposed, {line_load(lower, 300.0_N_per_m)}, {}};
  std::vector<LoadCase> out{own};
  const auto take = [&out](std::vector<LoadCase> more) { out.insert(out.end(), more.begin(), more.end()); };
  take(while_hoisted(screen, own.actions,
                     {{"moving at 4 m/min", en13001::phi_2(en13001::HoistingClass::hc2, 4.0 / 60)}, {"emergency stop", 1.4}}));
  take(notional_loads(g, {own, screen}, notional_usual));
  // in service up to gusts of 14 m/s, with cloth on the left face; out of service it is rolled up
  take(en1991::wind_on_sign(g, Side::left, 1.8 * en1991::gust_pressure(14.0), "wind in service"));
  const double peak = en1991::peak_pressure({.basic_velocity = 24, .terrain = en1991::Terrain::sea, .season = 0.8}, 8.0);
  out.push_back({"wind out of service", Nature::wind, {en1991::wind_on_lattice(g, Side::left, peak)}, "wind, hoists move"});
  return out;
}

void print(const std::string& what, const verify::Proof& p) {
  const verify::Row& worst = p.worst();
  std::cout << what << ": " << p.verdict() << "\n  " << verify::name(worst.check) << ", " << worst.standard << ' ' << worst.clause
            << ", in " << p.combinations()[worst.combination].name << "\n  " << verify::text(worst) << "\n\n";
}

}  // namespace

int main() {
  for (const double loss : {0.0, 0.10}) {
    verify::Basis basis;
    if (loss > 0.0) basis.use = verify::worn_use;
    const Analysis analysis{girder(loss)};
    const std::vector<LoadCase> load = load_cases(analysis.girder());
    const Cases cases = analysis.solve(load);
    std::cout << (loss == 0.0 ? "AS NEW\n" : "TEN PER CENT OF EVERY WALL WORN AWAY\n") << "chords "
              << analysis.girder().chords[0].bar.text() << "; " << load.size() << " load cases, "
              << combinations(en1990::ultimate(), cases.kinds()).size() << " combinations by EN 1990\n\n";
    print("EN 1999-1-1 with EN 1990", verify::by_material(cases, en1990::ultimate(), basis));
    print("EN 1999-1-1 with event practice", verify::by_material(cases, event_practice::ultimate(), basis));
    print("Allowable stresses", verify::allowable_stress(cases, asce7::allowable_stress()));
  }
  std::cout << "Factors behind each: " << words(en1990::ultimate()) << ".\n  " << words(event_practice::ultimate()) << ".\n  "
            << words(asce7::allowable_stress()) << ".\n"
            << "Joints, splices, hoists and the stability of the whole are not in any line above. A calculation aid: to be\n"
               "checked by a licensed engineer against the standards that apply.\n";
}
