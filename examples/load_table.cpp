// SPDX-License-Identifier: MIT
// The harbour cinema plans its next summers: how much may its girder carry between two hoists, 6 m to 16 m apart, and
// how much beside the screen and the wind on it? A complete load table, a beam's hand calculation beside it, what is
// left after the screen with the stability of the whole in it, wind together with weight, and the moment and shear that
// a girder with open sides carries together.
#include <cstddef>
#include <iostream>
#include <string>
#include <vector>

#include <baywork/rating.hpp>

#include "support/girder_between_hoists.hpp"
#include "support/print_interaction.hpp"
#include "support/print_moment_shear.hpp"

using namespace baywork;
using namespace baywork::literals;

namespace {

LoadCase own() { return {"self-weight", Nature::permanent, {self_weight(1.05)}}; }

std::string cell(double v, int decimals, std::size_t width) { return text::right(text::fixed(v, decimals), width); }

void print_hand_table(const rating::LoadTable& table) {
  std::cout << "\nBESIDE IT, BY HAND: a beam with one moment and one shear, each from one bar in axial force alone\n"
               "  (load of each point in kN, or per metre; 'M' or 'V' governs; 'found' is the table's share of it)\n\n"
               "    span       M       V";
  for (const rating::TableCell& c : table.rows[0].cells)
    std::cout << text::right(rating::name(c.pattern), 18) << "  found";
  std::cout << "\n       m     kNm      kN\n";
  for (const rating::TableRow& r : table.rows) {
    const Analysis analysis{examples::girder_between_hoists(r.span)};
    const rating::HandCapacity hand = rating::hand_capacity(analysis);
    std::cout << cell(r.span, 2, 8) << cell(hand.M / 1e3, 1, 8) << cell(hand.V / 1e3, 1, 8);
    for (const rating::TableCell& c : r.cells) {
      const rating::HandLoad h = rating::hand_load(hand, c.pattern, r.span);
      std::cout << cell(h.least() / 1e3, 2, 16) << (h.by_moment < h.by_shear ? " M" : " V")
                << cell(c.each / h.least(), 2, 7);
    }
    std::cout << '\n';
  }
  std::cout
      << "  The table is below the beam where chords bend between or beside loads, and where moment and axial force\n"
         "  meet in one bar: the beam has no answer to either.\n";
}

void print_left_over(double span) {
  const Analysis analysis{examples::girder_between_hoists(span)};
  constexpr double q = 0.5 * 1.25 * 14.0 * 14.0, sheet = 1.8;  // gusts of 14 m/s; a sign's coefficient, from memory
  const std::vector<ChordRef> lower{ChordOf::bottom_left, ChordOf::bottom_right};
  const Vec3<> on_screen{0, -q * sheet * (4.5_m / 2), 0};
  rating::Terms terms;
  terms.deflection = rating::DeflectionLimit{200, rating::DeflectionOf::whole, 0};
  terms.basis.stability = {.checked = true, .imperfections = true};
  const rating::Rater rater(
      analysis.solve(std::vector{own(), LoadCase{"screen", Nature::permanent, {line_load(lower, 60.0_N_per_m)}},
                                 LoadCase{"wind", Nature::wind, {line_load(lower, on_screen, on_screen)}}}),
      terms);
  std::cout << "\nWHAT IS LEFT on " << span
            << " m beside self-weight, a screen of 60 N/m and wind on it (gusts of 14 m/s), in kN each or kN/m;\n"
            << "chord pairs checked as columns and struts with bows; deflection of all loads at most span/200\n";
  for (const rating::Pattern p : rating::patterns_between_supports) {
    const rating::Allowable a = rater.allowable(rating::pattern_load(analysis, p).unit);
    std::cout << "  " << text::left(rating::name(p), 16);
    if (!a.is_load()) {
      std::cout << rating::name(a.verdict) << '\n';
      continue;
    }
    std::cout << rating::rounded_down(a.factor / 1e3, 2) << ", by " << rating::name(a.verdict) << ": "
              << verify::place(a.row) << ", " << verify::name(a.row.check) << " at "
              << text::fixed(a.row.utilisation, 3) << " in " << a.combination << "; "
              << text::fixed(1e3 * a.deflection, 1) << " mm\n";
  }
}

/// The short girder over the projector: light passes through its sides, so that they are open as well.
void print_open_sides() {
  BoxGirder girder = examples::girder_between_hoists(4.0);
  girder.faces.left = girder.faces.right = girder.faces.top;
  const Analysis analysis{girder};
  std::cout << "\nMOMENT WITH SHEAR in the middle bay of a girder open on all sides, 4 m, beside its self-weight;\n"
               "characteristic, for loads of factor 1.5; what governs in the last column\n";
  examples::print_moment_shear(rating::Rater(analysis.solve(std::vector{own()})), {.rays = 16});
}

}  // namespace

int main() {
  rating::TableTerms terms;
  terms.placed = {own()};
  terms.loading.points_at = rating::PointsAt::stations;
  terms.orientation = "braced faces upright, open faces level";
  const rating::LoadTable table = rating::load_table(std::vector<double>{6, 8, 10, 12, 14, 16}, examples::girder_between_hoists, terms);
  std::cout << table;
  print_hand_table(table);
  print_left_over(12.0);
  const Analysis twelve{examples::girder_between_hoists(12.0)};
  examples::print_interaction(rating::Rater(twelve.solve(std::vector{own()})));
  print_open_sides();
  std::cout
      << "\nHoists, slings and guys, joints and splices are not in any number above, the stability of the whole only\n"
         "where it is said.\n"
         "A calculation aid: results must be checked by a licensed engineer against the standards that apply.\n";
}
