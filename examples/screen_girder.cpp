// SPDX-License-Identifier: MIT
// The harbour cinema: a box girder hung at two points carries a fabric screen in the wind.
//
//          guys and hoists                    guys and hoists
//               |                                  |
//    o---o---o--o--o---o---o---o---o---o---o---o---o--o---o---o     sides braced: they carry weight by axial force
//    | / | \ | / \ | / | \ | / | \ | / | \ | / | \ | / \ | / | \ |  top and bottom open: they carry wind by bending
//    o---o---o--o--o---o---o---o---o---o---o---o---o--o---o---o
//    0 m        2 m          screen, 8 m x 4.5 m      10 m      12 m
//
//   screen_girder               prints the page
//   screen_girder --out DIR     and writes its numbers into DIR: CSV tables, results.json, girder.json
#include <cstddef>
#include <iostream>
#include <string>
#include <utility>
#include <vector>

#include <baywork/baywork.hpp>

#include "support/girder_between_hoists.hpp"
#include "support/print_interaction.hpp"
#include "support/report_files.hpp"
#include "support/result_files.hpp"

using namespace baywork;
using namespace baywork::literals;

namespace {

constexpr double wind_in_service = 0.5 * 1.25 * 14.0 * 14.0;      // Pa, gusts of 14 m/s: above, the screen is rolled up
constexpr double wind_out_of_service = 0.5 * 1.25 * 20.0 * 20.0;  // Pa, gusts of 20 m/s: above, the girder is lowered
constexpr double sheet = 1.8;  // force coefficient of a sign (EN 1991-1-4, 7.4.3, value from memory)
constexpr double roll = 1.2;   // of a round roll (EN 1991-1-4, 7.9.2, value from memory)

BoxGirder screen_girder() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};  // sizes of EN 10220
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  return {.bays = 24, .bay_length = 0.5_m, .width = 0.5_m, .depth = 0.5_m, .chord = chord,
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .diaphragms = diaphragms_at({0, 4, 20, 24}, brace),
          .modules = {.bays_each = 8},
          // two hoists at each place, on the upper chords; guys on the lower chord, where most of the wind comes in
          .supports = held_by({hold(ChordOf::top_left, 2.0_m).fix({Motion::uz}), hold(ChordOf::top_right, 2.0_m).fix({Motion::uz}),
                               hold(ChordOf::top_left, 10.0_m).fix({Motion::uz}), hold(ChordOf::top_right, 10.0_m).fix({Motion::uz}),
                               hold(ChordOf::bottom_right, 2.0_m).fix({Motion::ux, Motion::uy}),
                               hold(ChordOf::bottom_right, 10.0_m).fix({Motion::uy})})};
}

std::vector<LoadCase> load_cases() {
  const Reach screen{2.0_m, 10.0_m};
  const std::vector<ChordRef> lower{ChordOf::bottom_left, ChordOf::bottom_right};
  const Vec3<> across{0, -1, 0};
  const Vec3<> on_screen = wind_in_service * sheet * (4.5_m / 2) * across, on_roll = wind_out_of_service * roll * 0.3_m * across;
  return {
      {"self-weight", Nature::permanent, {self_weight(1.05)}},
      {"screen", Nature::permanent, {line_load(lower, 60.0_N_per_m, screen)}},
      {"projector", Nature::imposed, {point_load(ChordOf::bottom_left, 6.15_m, 0.45_kN), point_load(ChordOf::bottom_right, 6.15_m, 0.45_kN)}},
      {"wind in service", Nature::wind,
       {line_load(lower, on_screen, on_screen, screen), wind_on(Side::left, wind_in_service * sheet, CarriedBy::nearest_edge, screen),
        wind_on_bars(wind_in_service, across)}, "wind"},
      {"wind out of service", Nature::wind, {line_load(lower, on_roll, on_roll, screen), wind_on_bars(wind_out_of_service, across)}, "wind"}};
}

void print_model(const Analysis& a) {
  const Girder& g = a.girder();
  std::cout << "MODEL\n  box girder, " << g.bays() << " bays of 0.5 m, 0.5 m x 0.5 m between chord axes, span " << text::number(g.span()) << " m\n"
            << "  " << g.chords.size() << " chords, " << a.model().frame.members.size() << " members, " << a.solver().unknowns() << " unknowns\n";
  for (const Bar& b : a.model().bars)
    std::cout << "  " << text::left(b.text(), 54) << "A " << text::quantity(b.section.area, 1e-6, "mm2") << ", I "
              << text::quantity(b.section.Iy, 1e-12, "mm4") << ", " << text::number(b.mass_per_metre()) << " kg/m\n";
  std::cout << "  hung from the upper chords at 2 m and 10 m, guyed sideways there at the lower right chord\n\n";
}

void print_loads() {
  std::cout << "LOADS\n"
            << "  self-weight          all bars x 9.80665 m/s2 x 1.05 for fittings\n"
            << "  screen               60 N/m x 8 m = 480 N down, shared by the lower chords, 2 m to 10 m\n"
            << "  projector            2 x 450 N down on the lower chords at 6.15 m, between joints\n"
            << "  wind in service      q = 0.5 x 1.25 x 14^2 = " << text::number(wind_in_service) << " Pa; screen's upper half 1.8 x q x 4.5/2 = "
            << text::number(sheet * wind_in_service * 2.25) << " N/m x 8 m = " << text::number(sheet * wind_in_service * 2.25 * 8) << " N;\n"
            << "                       border cloth on the left face 1.8 x q x 0.5 x 8 = " << text::number(sheet * wind_in_service * 4)
            << " N; bare bars 1.2 x q x D x length each\n"
            << "  wind out of service  q = 0.5 x 1.25 x 20^2 = " << text::number(wind_out_of_service) << " Pa; rolled screen 1.2 x q x 0.3 = "
            << text::number(roll * wind_out_of_service * 0.3) << " N/m x 8 m = " << text::number(roll * wind_out_of_service * 0.3 * 8)
            << " N; bare bars as above\n\n";
}

void print_cases(const Cases& cases) {
  std::cout << "CASES (forces in N; each load's total is met by the reactions)\n"
            << "  case                      load x        y          z   reaction x       y          z   deflection mm  certified\n";
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const Response& r = cases[i];
    const Vec3<> l = r.total_load(), s = r.total_reaction();
    const auto cell = [](double v, std::size_t w) { return text::right(text::fixed(v + 0.0, 2), w); };
    std::cout << "  " << text::left(r.name(), 22) << cell(l.x, 10) << cell(l.y, 10) << cell(l.z, 11) << cell(s.x, 11) << cell(s.y, 10)
              << cell(s.z, 11) << text::right(text::fixed(1e3 * r.max_deflection(), 4), 14) << text::right(text::number(r.certificate().worst(), 2), 11) << '\n';
  }
  std::cout << "\nREACTIONS (N, what each support does to the girder)\n";
  for (std::size_t i = 0; i < cases.size(); ++i)
    for (const auto& r : cases[i].reactions())
      std::cout << "  " << text::left(cases[i].name(), 22) << text::left(text_of(r.address, cases.analysis().model().frame.names), 34)
                << text::right(text::fixed(r.force.x + 0.0, 2), 10) << text::right(text::fixed(r.force.y + 0.0, 2), 12)
                << text::right(text::fixed(r.force.z + 0.0, 2), 12) << '\n';
  std::cout << '\n';
}

/// Hoists only pull; the frame's supports would also push. Every combination must leave each of them a pull.
void print_hoists(const Cases& cases, const verify::Proof& proof) {
  std::cout << "HOISTS (least and greatest pull in any combination, N; guys carry y)\n";
  const Frame& frame = cases.analysis().model().frame;
  const std::vector<ReactionRange> ranges = reaction_ranges(cases, proof.combinations());
  for (std::size_t s = 0; s < ranges.size(); ++s) {
    if (frame.supports[s].motion[2].kind == Restraint::Kind::free) continue;
    const EnvelopeRange& pull = ranges[s][2];
    std::cout << "  " << text::left(frame.name_of_node(frame.supports[s].node), 30) << text::right(text::fixed(pull.least, 2), 10)
              << text::right(text::fixed(pull.most, 2), 12) << "   " << (pull.least > 0 ? "pulls always" : "GOES SLACK: the answer does not hold")
              << ", least in " << proof.combinations()[pull.least_in].name << '\n';
  }
  std::cout << '\n';
}

void print_splices(const Response& r) {
  std::cout << "SPLICES, " << r.name() << " (rigid here; their connectors are not proved)\n";
  for (const std::size_t s : r.girder().splices) {
    const auto cuts = r.splice(s);
    for (std::size_t c = 0; c < cuts.size(); ++c)
      std::cout << "  station " << s + 1 << ", " << text::left(r.girder().chords[c].name + " chord", 20) << " N " << text::right(text::fixed(cuts[c].N, 2), 10)
                << " N   Vy " << text::right(text::fixed(cuts[c].Vy, 2), 8) << " N   Vz " << text::right(text::fixed(cuts[c].Vz, 2), 8) << " N   My "
                << text::right(text::fixed(cuts[c].My, 3), 8) << " Nm   Mz " << text::right(text::fixed(cuts[c].Mz, 3), 8) << " Nm\n";
  }
  std::cout << '\n';
}

struct Ratings {
  rating::LoadTable table;
  std::vector<rating::InteractionPoint> curve;
};

/// What the girder may carry beside all that acts on it already, and tables of the same girder between two hoists, which
/// are given back as data.
Ratings print_rating(const Cases& cases) {
  const rating::Rater rater(cases);
  std::cout << "WHAT IT MAY CARRY BESIDES (imposed, characteristic, shared by the lower chords; all cases above stay on it)\n";
  for (const rating::Pattern p : {rating::Pattern::uniform, rating::Pattern::centre_point, rating::Pattern::cantilever_end}) {
    const rating::Allowable a = rater.allowable(rating::pattern_load(cases.analysis(), p).unit);
    std::cout << "  " << text::left(rating::name(p), 16);
    if (a.is_load())
      std::cout << rating::rounded_down(a.factor / 1e3, 2) << (rating::points(p) == 0 ? " kN/m" : " kN") << ", by " << examples::bar_of(a.row)
                << ", " << verify::name(a.row.check) << " in " << a.combination << '\n';
    else
      std::cout << rating::name(a.verdict) << '\n';
  }
  rating::TableTerms terms;
  terms.placed = {{"self-weight", Nature::permanent, {self_weight(1.05)}}};
  terms.loading.points_at = rating::PointsAt::stations;
  terms.orientation = "braced faces upright, open faces level";
  rating::LoadTable table = rating::load_table(std::vector<double>{6, 8, 10, 12}, examples::girder_between_hoists, terms);
  std::cout << '\n' << table;
  const Analysis eight{examples::girder_between_hoists(8.0)};  // the distance of the two hoists
  auto at_middle = examples::print_interaction(rating::Rater(eight.solve(terms.placed), terms.terms));
  std::cout << '\n';
  return {std::move(table), std::move(at_middle)};
}

void print_cautions() {
  std::cout << "CAUTIONS\n"
               "  This is a calculation aid, not a load certificate: a licensed engineer who has the standards must check it, and\n"
               "  local codes and authorities decide. It holds for the geometry, alloy, temper and welds entered, and for no other.\n"
               "  Loads are static; hoists are taken as level and equally stiff; loads and slings act as drawn, on all chords named.\n"
               "  Outdoors: wind limits, the screen's removal and the guys belong into an operations plan. Not proved here: joints,\n"
               "  welds, splices, stability of the whole, hoists, slings, towers, guys, ground, fatigue, ice, people under the load.\n"
               "  Joints of open faces are taken as rigid; welded joints of thin tubes are softer. Clauses and factors marked as\n"
               "  values from memory must be checked against the standards before use.\n";
}

}  // namespace

int main(int argc, char** argv) {
  std::string folder;
  if (argc == 3 && std::string(argv[1]) == "--out") {
    folder = argv[2];
  } else if (argc != 1) {
    std::cerr << "usage: screen_girder [--out DIR]\n";
    return 2;
  }
  try {
    const Analysis analysis{screen_girder()};
    const Cases cases = analysis.solve(load_cases());
    const auto proof = verify::by_material(cases, en1990::ultimate());
    const Response& wind = cases["wind in service"];
    const PortalTable portal = portal_table(panel_table(wind, Side::bottom));

    std::cout << "HARBOUR CINEMA, SCREEN GIRDER (baywork " << version_text << ")\n\n";
    print_model(analysis);
    print_loads();
    print_cases(cases);
    print_hoists(cases, proof);
    std::cout << "PROOF, " << proof << "\n\n";
    std::cout << "OPEN FACE\n" << portal << '\n' << energy_shares(wind) << '\n';
    const Ratings ratings = print_rating(cases);
    print_splices(cases.combine(proof.combinations()[proof.worst().combination]));
    std::vector<HandChecks> checks;
    for (std::size_t i = 0; i < cases.size(); ++i) checks.push_back(hand_checks(cases[i]));
    std::cout << "HAND CHECKS\n";
    for (const HandChecks& c : checks) std::cout << c << '\n';
    print_cautions();
    if (!folder.empty()) {
      const PanelTable panels = panel_table(wind, Side::bottom);
      const std::vector<DataTable> tables{model_data(analysis), case_data(cases), reaction_data(cases), member_force_data(cases),
                                    panel_data(panels), cross_member_data(panels), hand_check_data(checks), proof_row_data(proof),
                                    proof_term_data(proof), load_table_data(ratings.table), load_table_term_data(ratings.table),
                                    interaction_data(ratings.curve)};
      const show::ReportParts parts{.title = "Harbour cinema, screen girder",
                                    .loads = load_cases(),
                                    .tables = {ratings.table},
                                    .interaction = {{"the girder between two hoists 8 m apart, wind at its middle", ratings.curve}},
                                    .hoists = {HoistStudy(cases.combine({"all loads in service, unfactored", {1, 1, 1, 1, 0}}))}};
      std::cout << "\nwritten: " << examples::write_report(folder, cases, proof, parts)
                << "\nwritten: " << examples::write_results(folder, tables, analysis.girder(), load_cases()) << '\n';
    }
    return 0;
  } catch (const std::exception& e) {
    std::cerr << "screen_girder: " << e.what() << '\n';
    return 1;
  }
}
