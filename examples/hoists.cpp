// SPDX-License-Identifier: MIT
// The harbour cinema's screen girder on three hoists: which hoist carries what when they are not level, or one is
// slack, and whether girder and couplers stand it.
//
//     hoist 1                       hoist 2                       hoist 3
//        |                             |                             |
//  o-----o---------------o-=-o---------o---------o-=-o---------------o-----o   three modules, pins and forks between
//  |  /  |     ...       |   |   ...   |     ... |   |       ...     |  \  |   them: nothing but the chords crosses
//  o-----o---------------o-=-o---------o---------o-=-o---------------o-----o   the two gaps
//  0 m   1 m              4 m         6 m         8 m              11 m  12 m
#include <algorithm>
#include <cstddef>
#include <iostream>
#include <string>
#include <vector>

#include <baywork/hand_check.hpp>
#include <baywork/verify.hpp>

using namespace baywork;
using namespace baywork::literals;

namespace {

constexpr double wind = 0.5 * 1.25 * 14.0 * 14.0;  // Pa, gusts of 14 m/s: above, the screen is rolled up
constexpr double sheet = 1.8;  // force coefficient of a sign (EN 1991-1-4, 7.4.3, value from memory)

/// Two slings at each hoist, on the upper chords; guys on the lower right chord, where the wind on the screen comes in.
Supports hoists_and_guys() {
  Supports s = held_by({hold(ChordOf::bottom_right, 1.0_m).fix({Motion::ux, Motion::uy}),
                        hold(ChordOf::bottom_right, 6.0_m).fix({Motion::uy}),
                        hold(ChordOf::bottom_right, 11.0_m).fix({Motion::uy})});
  for (const double x : {1.0_m, 6.0_m, 11.0_m})
    for (const ChordOf upper : {ChordOf::top_left, ChordOf::top_right}) s = s.with(hold(upper, x).fix({Motion::uz}));
  return s;
}

Girder screen_girder() {
  const auto alloy = material::en_aw_6082_t6();
  const Bar chord{RoundTube{60.3_mm, 5.0_mm}, alloy};  // sizes of EN 10220
  const Bar cross{RoundTube{48.3_mm, 4.0_mm}, alloy};
  const Bar brace{RoundTube{26.9_mm, 3.2_mm}, alloy};
  const auto side = braced(alternating, brace, cross);
  const PinCoupler coupler{.pin = 20_mm,
                           .hole = 20.3_mm,
                           .blade = 25_mm,
                           .fork = 14_mm,
                           .gap = 0.5_mm,
                           .end = 28_mm,
                           .side = 24_mm,
                           .reach = 40_mm,
                           .plate_material = material::en_aw_6082_t6(material::Product::rod_or_bar),
                           .pin_material = material::s355(),
                           .throat = 5_mm,
                           .fit = {.slack = 0.3_mm}};
  BoxGirder girder;
  girder.bays = 24;
  girder.bay_length = 0.5_m;
  girder.width = 0.5_m;
  girder.depth = 0.5_m;
  girder.chord = chord;
  girder.faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side};
  girder.diaphragms = diaphragms_at({0, 2, 8, 12, 16, 22, 24}, brace);
  girder.modules = {.bays_each = 8};
  girder.supports = hoists_and_guys();
  girder.modules.connector = coupler;
  return with_splice_gaps(girder.girder(), {.length = 0.12_m});
}

std::vector<LoadCase> load_cases() {
  const Reach screen{2.0_m, 10.0_m};
  const std::vector<ChordRef> lower{ChordOf::bottom_left, ChordOf::bottom_right};
  const Vec3<> on_screen{0, -wind * sheet * 4.5_m / 2, 0};
  return {{"self-weight", Nature::permanent, {self_weight(1.05)}},
          {"screen", Nature::permanent, {line_load(lower, 60.0_N_per_m, screen)}},
          {"projector",
           Nature::imposed,
           {point_load(ChordOf::bottom_left, 3.2_m, 0.9_kN), point_load(ChordOf::bottom_right, 3.2_m, 0.9_kN)}},
          {"wind", Nature::wind, {line_load(lower, on_screen, on_screen, screen)}}};
}

/// The governing row of each check of bars (above a tenth), and of each part of the couplers.
void print_governing(const verify::Proof& proof) {
  std::vector<verify::Row> rows, parts;
  for (const verify::Row& r : proof.governing())
    if (r.check != verify::Check::splice && r.utilisation > 0.1) rows.push_back(r);
  for (const verify::Row& r : proof.rows()) {
    if (r.check != verify::Check::splice) continue;
    const auto same = [&](const verify::Row& o) { return std::string(o.reason) == r.reason; };
    const auto old = std::find_if(parts.begin(), parts.end(), same);
    if (old == parts.end())
      parts.push_back(r);
    else if (old->utilisation < r.utilisation)
      *old = r;
  }
  rows.insert(rows.end(), parts.begin(), parts.end());
  for (const verify::Row& r : rows)
    std::cout << "  " << text::fixed(r.utilisation, 3) << "  "
              << text::left(r.check == verify::Check::splice ? r.reason : name(r.check), 46) << place(r) << '\n'
              << "         " << proof.combinations()[r.combination].name << '\n';
}

}  // namespace

int main() {
  try {
    const Analysis analysis{screen_girder()};
    const Cases cases = analysis.solve(load_cases());
    const Response all = cases.combine({"all loads, unfactored", {1, 1, 1, 1}});
    const double off = 0.025;  // metres: what levelling by eye leaves

    std::cout << "HARBOUR CINEMA, SCREEN GIRDER ON THREE HOISTS\n\n" << HoistStudy(all, {.off_level = off}) << '\n';

    const SlackSag sag = slack_sag(all);
    std::cout << "Deflection " << text::fixed(1e3 * all.max_deflection(), 2) << " mm; slack of 0.3 mm in " << sag.opened
              << " connectors that pull adds up to " << text::fixed(1e3 * sag.greatest(), 2) << " mm\n\n";

    for (const HandCheck& row : hand_checks(all).rows)
      if (row.quantity.find("across a splice") != std::string::npos)
        std::cout << row.quantity << ", " << row.where << "\n  " << row.formula << " = " << row.numbers << " = "
                  << text::number(row.closed_form, 5)
                  << " Nm; the frame's, mean of chords and ends: " << text::number(row.solver, 5) << " Nm\n";

    const verify::Proof proof = verify::on_hoists(cases, en1990::ultimate(), {.off_level = off, .each_slack = false});
    std::cout << "\nPROOF, every combination with all level and each hoist off level\n  " << proof.verdict() << '\n';
    print_governing(proof);
    const verify::Proof slack = verify::on_hoists(cases, en1990::ultimate(), {.off_level = 0, .each_slack = true});
    std::cout << "  and with each hoist slack: " << slack.verdict() << '\n';

    std::cout << "\nCAUTIONS\n"
                 "  A calculation aid: a licensed engineer who has the standards must check it. Hoists run at "
                 "different speeds and\n"
                 "  settle: more than two want load cells, and no number here replaces them. Lines are taken to pull "
                 "straight up and\n"
                 "  only up; guys carry all that acts sideways. Hoists, slings, what they hang from, lifting factors, "
                 "securing of\n"
                 "  pins and the stability of the whole are not proved. A hoist that goes slack is an accident, not a "
                 "load case to\n"
                 "  live with.\n";
    return 0;
  } catch (const std::exception& e) {
    std::cerr << "hoists: " << e.what() << '\n';
    return 1;
  }
}
