// SPDX-License-Identifier: MIT
// The choices that the standards leave open, in whole proofs: buckling lengths by code, C_m, softened arcs, welds on
// the buckling wave, the form of two moments, welds along bars, heat.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/verify.hpp>

#include "support/by_hand.hpp"
#include "support/rows.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using verify::Basis;
using verify::Check;
using verify::LengthRule;
using verify::Proof;
using verify::Row;

Bar tube(double d, double t, const material::Material& m) { return {RoundTube{d * mm, t * mm}, m}; }

BoxGirder box(const material::Material& m, bool open_top, double chord = 60.3) {
  const Bar cross = tube(48.3, 4, m);
  const Face side = braced(alternating, tube(26.9, 3.2, m), cross);
  const Face top = open_top ? Face{open(cross)} : side;
  return {.bays = 6,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = tube(chord, 5, m),
          .faces = {.top = top, .bottom = top, .left = side, .right = side},
          .supports = simply_supported()};
}
Response loaded(const Analysis& a, double P = 4e3) {
  return a.solve({self_weight(), point_load(ChordOf::bottom_left, 1.1, P), wind_on(Side::left, 800.0)});
}
Basis by_code() {
  Basis b;
  b.lengths.rule = LengthRule::code;
  return b;
}
std::vector<verify::BucklingFactors> code_of(const Analysis& a) {
  return verify::code_lengths(a, verify::open_bars(a));
}

bool said(const Proof& proof, const std::string& word) {
  const auto has = [&word](const std::string& s) { return s.find(word) != std::string::npos; };
  return std::any_of(proof.assumptions().begin(), proof.assumptions().end(), has);
}

}  // namespace

TEST_CASE("chords of an open face never take 0.9 or 0.75 of their length") {
  // EN 1993-1-1 BB.1.3 speaks of chords and braces of lattice girders; bars of a face without diagonals sway.
  const Analysis a{box(material::s355h(), true)};
  const GirderModel& model = a.model();
  const auto k = code_of(a);
  for (std::size_t b = 0; b < 6; ++b)
    for (std::size_t c = 0; c < 4; ++c) {
      CHECK(k[model.chord_member(b, c)].about_y == 1.0);
      CHECK(k[model.chord_member(b, c)].about_z == 1.0);
    }
  std::size_t open_cross_members = 0;
  for (std::size_t m = 0; m < k.size(); ++m) {
    const Address& at = model.frame.members[m].address;
    if (at.role != Role::cross_member || at.face < 0) continue;
    const std::string& face = model.girder.faces[static_cast<std::size_t>(at.face)].name;
    if (face != "top" && face != "bottom") continue;
    ++open_cross_members;
    CHECK((k[m].about_y == 1.0 && k[m].about_z == 1.0));
  }
  CHECK(open_cross_members == 14);
  // and so the proof's rows: the length of the bay, whatever the rule
  const Response r = loaded(a);
  const Proof system = verify::en1993(r), code = verify::en1993(r, by_code());
  for (const Row& row : code.rows()) {
    if (row.check != Check::buckling) continue;
    if (row.address.role == Role::chord) CHECK(number(row, "L_cr") == Approx(0.5));
    if (row.address.role == Role::chord || row.address.role == Role::cross_member)
      CHECK(row.utilisation <= utilisation(system, row.member, row.check));
  }
  // one open panel among braced ones is enough for the chords beside it, and for the posts at its ends
  BoxGirder one = box(material::s355h(), false);
  one.faces.top = one.faces.top.with_panel(2, 6, open(tube(48.3, 4, material::s355h())));
  const Analysis mixed{one};
  const auto km = code_of(mixed);
  std::size_t top_left = 0;
  for (std::size_t c = 0; c < 4; ++c)
    if (mixed.model().girder.chords[c].name == "top left") top_left = c;
  CHECK(km[mixed.model().chord_member(2, top_left)].about_y == 1.0);
  CHECK(km[mixed.model().chord_member(2, top_left)].about_z == 1.0);
  CHECK(km[mixed.model().chord_member(1, top_left)].about_y == 0.9);
  // a ladder's chord sideways, and a chord beside a face that is not there, are not held by diagonals either
  BoxGirder missing = box(material::s355h(), false);
  missing.faces.top = Face{};
  const Analysis without{missing};
  CHECK(code_of(without)[without.model().chord_member(2, top_left)].about_z == 1.0);
  const Analysis ladder{LadderGirder{.bays = 4,
                                     .bay_length = 0.5,
                                     .depth = 0.5,
                                     .chord = tube(60.3, 5, material::s355h()),
                                     .web = box(material::s355h(), false).faces.left,
                                     .supports = simply_supported()}};
  CHECK(code_of(ladder)[ladder.model().chord_member(1, 1)].about_y == 0.9);
  CHECK(code_of(ladder)[ladder.model().chord_member(1, 1)].about_z == 1.0);
}

TEST_CASE("which bars sway: a triangular girder with an open base") {
  const Face side = box(material::s355h(), false).faces.left;
  const Analysis a{
      TriangularGirder{.bays = 4,
                       .bay_length = 0.5,
                       .width = 0.5,
                       .depth = 0.43,
                       .chord = tube(60.3, 5, material::s355h()),
                       .faces = {.base = open(tube(48.3, 4, material::s355h())), .left = side, .right = side},
                       .supports = simply_supported()}};
  const verify::OpenBars bars = verify::open_bars(a);
  const std::size_t base = a.model().chord_member(1, 0), apex = a.model().chord_member(1, 2);
  CHECK((!bars.sway[base].about_y && bars.sway[base].about_z && bars.in_open_face[base]));
  CHECK((!bars.sway[apex].about_y && !bars.sway[apex].about_z && !bars.in_open_face[apex]));
  CHECK((code_of(a)[base].about_y == 1.0 && code_of(a)[apex].about_z == 0.9));
}

TEST_CASE("EN 1993-1-1 BB.1.3: lengths in braced faces") {
  // Values from memory: hollow chords 0.9; braces welded to hollow chords 0.75 where d1/d0 < 0.6 (26.9/60.3 = 0.45);
  // wider ones (posts, 48.3/60.3 = 0.80) BB.1.1: 0.9 in the plane of the face, 1 out of it.
  const Analysis a{box(material::s355h(), false)};
  const GirderModel& model = a.model();
  const auto k = code_of(a);
  for (std::size_t m = 0; m < k.size(); ++m) {
    const Address& at = model.frame.members[m].address;
    INFO(text_of(at, model.frame.names));
    const double y = at.role == Role::chord ? 0.9 : at.role == Role::diagonal ? 0.75 : 1.0;
    const double z = at.role == Role::chord || at.role == Role::cross_member ? 0.9
                     : at.role == Role::diagonal                             ? 0.75
                                                                             : 1;
    CHECK(k[m].about_y == y);
    CHECK(k[m].about_z == z);
  }
  const Response r = loaded(a);
  const Proof code = verify::en1993(r, by_code());
  std::size_t chords = 0;
  for (const Row& row : code.rows())
    if (row.check == Check::buckling && row.address.role == Role::chord) {
      CHECK(number(row, "L_cr") == Approx(0.45));
      ++chords;
    }
  CHECK(chords > 4);
  // a user's factor comes on top; the words say which rule was taken
  Basis both = by_code();
  both.lengths.chord = {2.0, 2.0};
  const Proof on_top = verify::en1993(r, both);
  for (const Row& row : on_top.rows())
    if (row.check == Check::buckling && row.address.role == Role::chord) CHECK(number(row, "L_cr") == Approx(0.9));
  CHECK(said(code, "BB.1"));
  // EN 1999-1-1 has no such rule
  const Analysis light{box(material::en_aw_6082_t6(), false)};
  for (const verify::BucklingFactors& f : code_of(light)) CHECK((f.about_y == 1.0 && f.about_z == 1.0));
  // bars on a split post are none that the clause speaks of
  BoxGirder k_girder = box(material::s355h(), false);
  k_girder.faces.left = k_girder.faces.right =
      braced(k_braced, tube(26.9, 3.2, material::s355h()), tube(48.3, 4, material::s355h()));
  const Analysis with_k{k_girder};
  CHECK(code_of(with_k)[with_k.model().faces[1].panels[0].diagonals[0]].about_z == 1.0);
  // braces of 0.6 and more: 38 on 60.3 is 0.63
  BoxGirder wide = box(material::s355h(), false);
  wide.faces.left = wide.faces.right =
      braced(alternating, tube(38, 3.2, material::s355h()), tube(48.3, 4, material::s355h()));
  const Analysis w{wide};
  const std::size_t diagonal = w.model().faces[1].panels[0].diagonals[0];
  CHECK((code_of(w)[diagonal].about_y == 1.0 && code_of(w)[diagonal].about_z == 0.9));
}

TEST_CASE("C_m of Table B.3 by the diagrams of the bars, at least 0.9 where they may sway") {
  // The table once more, both columns, as the standard draws it (values from memory); the worse one counts.
  const auto table = [](double a, double s, double b) {
    const double h = std::fabs(a) >= std::fabs(b) ? a : b,
                 psi = h == 0 ? 0 : (std::fabs(a) >= std::fabs(b) ? b : a) / h;
    if (h == 0 && s == 0) return 1.0;
    double uniform = 0, point = 0;
    if (std::fabs(s) <= std::fabs(h)) {
      const double al = s / h;
      uniform = al >= 0 ? 0.2 + 0.8 * al : psi >= 0 ? 0.1 - 0.8 * al : 0.1 * (1 - psi) - 0.8 * al;
      point = al >= 0 ? 0.2 + 0.8 * al : psi >= 0 ? -0.8 * al : -0.2 * psi - 0.8 * al;
    } else {
      const double al = h / s, turn = al < 0 && psi < 0 ? 1 + 2 * psi : 1;
      uniform = 0.95 + 0.05 * al * turn;
      point = 0.90 + 0.10 * al * turn;
    }
    const double worse = uniform > point ? uniform : point;
    return worse > 0.4 ? worse : 0.4;
  };
  for (double a = -1; a <= 1; a += 0.125)
    for (double b = -1; b <= 1; b += 0.125)
      for (double s = -1.5; s <= 1.5; s += 0.125) {
        const en1993::MomentDiagram m{a, s, b};
        const double C = table(a, s, b), M = m.greatest();
        CHECK(en1993::moment_factor(m, false) == Approx(C).epsilon(1e-12));
        CHECK(en1993::moment_factor(m, true) == Approx(C > 0.9 ? C : 0.9).epsilon(1e-12));
        CHECK(C <= 1.0 + 1e-12);
        // the moment that counts, and its bound: above, and below the chord between any two diagrams
        CHECK(en1993::equivalent_moment(m, M, false) == Approx(C * M).epsilon(1e-12));
        CHECK(en1993::equivalent_moment(m, M + 1, false) == Approx(C * M + 1).epsilon(1e-12));
        for (const bool sways : {false, true}) {
          const auto bound = [&](const en1993::MomentDiagram& d) { return en1993::equivalent_moment_bound(d, sways); };
          CHECK(en1993::equivalent_moment(m, M, sways) <= bound(m) + 1e-12);
          const en1993::MomentDiagram other{b - 0.3, 0.7 * a, -s};
          CHECK(bound({0.5 * (a + other.start), 0.5 * (s + other.middle), 0.5 * (b + other.end)}) <=
                0.5 * (bound(m) + bound(other)) + 1e-12);
        }
      }
  CHECK(en1993::moment_factor({1, 0.5, 0}, false) == Approx(0.6));
  CHECK(en1993::moment_factor({0, 0, 0}, false) == 1.0);

  Basis by_table;
  by_table.choices.moment_factors = verify::MomentFactorRule::table;
  for (const bool open_top : {true, false}) {
    const Analysis a{box(material::s355h(), open_top)};
    const Response r = loaded(a);
    const Proof one = verify::en1993(r), with = verify::en1993(r, by_table);
    std::size_t compared = 0, below = 0;
    for (const Row& row : with.rows()) {
      if (row.check != Check::beam_column) continue;
      CHECK(row.utilisation <= utilisation(one, row.member, row.check) * (1 + 1e-12));
      const double length = r.member(row.member).length();
      const auto m = [&](double where) { return r.member(row.member).forces_at(where * length); };
      const Row* greatest = find(one, row.member, Check::beam_column);
      REQUIRE(greatest != nullptr);
      const double M = number(*greatest, "M_y,Ed"), given = number(row, "(C_my*M_y,Ed)");
      if (M < 1.0) continue;
      const double first = m(0).My, middle = m(0.5).My,
                   last = r.member(row.member).forces_at(length, CutSide::before).My;
      double C = table(first, middle, last);
      // bent up and down a chord leans on the braced sides; cross members of the open top and bottom sway
      const bool sways = open_top && row.address.role == Role::cross_member && row.address.face >= 0 &&
                         (a.model().girder.faces[static_cast<std::size_t>(row.address.face)].name == "top" ||
                          a.model().girder.faces[static_cast<std::size_t>(row.address.face)].name == "bottom");
      if (row.address.role == Role::diaphragm || sways) C = (std::max)(C, 0.9);
      INFO(verify::place(row));
      const double M_3 = en1993::MomentDiagram{first, middle, last}.greatest();
      const bool hung =
          row.address.role == Role::chord && row.address.bay == 2 && given == M;  // loads that are not even
      if (!hung) CHECK(given == Approx(C * M_3 + (M - M_3)).epsilon(1e-6));
      ++compared;
      below += C < 0.99;
      if (open_top && row.address.role == Role::chord) {
        const double Mz = number(*greatest, "M_z,Ed");
        CHECK(number(row, "(C_mz*M_z,Ed)") >= 0.9 * Mz * (1 - 1e-12));
      }
    }
    CHECK(compared > 20);
    CHECK(below > 10);
  }
}

TEST_CASE("C_m is for loads that are strongest in the middle of a bar") {
  using verify::detail::strongest_in_the_middle;
  const auto line = [](double a, double b, double first, double last) {
    MemberLoad l;
    l.kind = MemberLoad::Kind::line;
    l.a = a;
    l.b = b;
    l.first = {0, 0, first};
    l.last = {0, 0, last};
    return l;
  };
  const auto force = [](double a, double f) {
    MemberLoad l;
    l.kind = MemberLoad::Kind::force;
    l.a = l.b = a;
    l.first = {0, 0, f};
    return l;
  };
  const auto good = [](const std::vector<MemberLoad>& loads) {
    return strongest_in_the_middle({loads.data(), loads.size()}, 1.0);
  };
  CHECK(good({}));
  CHECK(good({line(0, 1, -2, -2)}));
  CHECK(good({line(0, 0.5, 0, -2), line(0.5, 1, -2, 0)}));                          // a tent
  CHECK(good({line(0, 0.3, 0, -2), line(0.3, 0.7, -2, -2), line(0.7, 1, -2, 0)}));  // a trapezoid
  CHECK(good({line(0, 1, -1, -1), line(0, 0.5, 0, -2), line(0.5, 1, -2, 0)}));      // on its own weight
  CHECK(good({line(0.2, 0.8, -1, -1)}));
  CHECK(good({force(0.5, -3), line(0, 1, -1, -1)}));
  CHECK_FALSE(good({force(0.4, -3)}));
  CHECK_FALSE(good({line(0, 1, 0, -2)}));                           // falls to one side
  CHECK_FALSE(good({line(0, 0.5, -2, -2)}));                        // one half alone
  CHECK_FALSE(good({line(0, 0.2, -2, -2), line(0.8, 1, -2, -2)}));  // strongest at the ends
  CHECK_FALSE(good({line(0, 0.5, -2, 0), line(0.5, 1, 0, -2)}));
  CHECK_FALSE(good({line(0, 1, -1, -1), force(0.5, 3)}));                                 // against each other
  CHECK_FALSE(good({line(0, 0.5, -1, -1), line(0, 0.5, -1, -1), line(0.5, 1, -1, -1)}));  // twice on one half
}

TEST_CASE("softened arcs of chords") {
  using verify::detail::arc_with_opposites;
  CHECK(arc_with_opposites({{0.0, 0.3}}) == Approx(0.3));
  CHECK(arc_with_opposites({{0.0, 0.3}, {pi, 0.3}}) == Approx(0.3));      // a bar opposite counts already
  CHECK(arc_with_opposites({{0.0, 0.3}, {pi / 2, 0.3}}) == Approx(0.6));  // two planes
  CHECK(arc_with_opposites({{0.1, 0.3}, {0.5, 0.3}}) == Approx(0.5));     // they overlap
  CHECK(arc_with_opposites({{-0.1, 0.3}, {pi - 0.1, 0.2}}) == Approx(0.3));
  CHECK(arc_with_opposites({{0.0, 1.6}}) == en1999::whole_section);
  CHECK(arc_with_opposites({{0.0, 0.9}, {pi / 2, 0.9}}) == Approx(pi / 2));

  // A ladder's chord 114.3 x 5 with posts 48.3: asin(48.3/114.3) + 20/54.65 = 0.802247, omega_0 = 1 - 0.5 0.718920
  const material::Material m = material::en_aw_6082_t6();
  const Analysis ladder{LadderGirder{.bays = 2,
                                     .bay_length = 0.8,
                                     .depth = 0.5,
                                     .chord = tube(114.3, 5, m),
                                     .web = open(tube(48.3, 4, m), pinned_joint()),
                                     .supports = cantilever()}};
  const std::size_t chord = ladder.model().chord_member(0, 0);
  CHECK(verify::welded_ends(ladder)[chord].start.arc == Approx(0.802247).epsilon(1e-6));
  const double N = 50e3;
  const Response r =
      ladder.solve({point_load(ChordOf::bottom, 1.6, Vec3<>{N, 0, 0}), point_load(ChordOf::top, 1.6, Vec3<>{N, 0, 0})});
  Basis arcs;
  arcs.choices.softened = verify::SoftenedMetal::arcs;
  const double A = pi / 4 * (114.3 * 114.3 - 104.3 * 104.3);
  // the footprint, 48.3 + 40 mm, is shorter than the chord is wide, 114.3 mm: 6.2.9.3 (1), rho_u,haz = 185/290
  CHECK(utilisation(verify::en1999(r), chord, Check::axial) == Approx(N / (A * 185 / 1.25)).epsilon(1e-6));
  CHECK(utilisation(verify::en1999(r, arcs), chord, Check::axial) ==
        Approx(N / (A * (1 - (1 - 185.0 / 290) * 0.718920) * 290 / 1.25)).epsilon(1e-6));
  // in a box the arcs of both planes meet all round, and nothing is gained; bars on the chord gain nothing either
  const Analysis a{box(m, true)};
  const Response in_box = loaded(a);
  const Proof whole = verify::en1999(in_box), refined = verify::en1999(in_box, arcs);
  for (const Row& row : refined.rows()) CHECK(row.utilisation == utilisation(whole, row.member, row.check));
  CHECK(said(refined, "arcs"));
}

TEST_CASE("welds where they are on the buckling wave, for bars that do not sway") {
  Basis where;
  where.choices.welds = verify::WeldsOnWave::where_they_are;
  const material::Material m = material::en_aw_6082_t6();
  const Analysis braced_one{box(m, false)}, open_one{box(m, true)};
  const Response rb = loaded(braced_one), ro = loaded(open_one);
  const Proof middle = verify::en1999(rb), refined = verify::en1999(rb, where);
  std::size_t less = 0;
  for (const Row& row : refined.rows()) {
    CHECK(row.utilisation <= utilisation(middle, row.member, row.check) * (1 + 1e-12));
    if (row.check != Check::buckling || row.address.role != Role::chord || !row.softened) continue;
    // 6.3.3.3 (2): omega_x = omega_0/(chi + (1 - chi) sin(pi x_s/l_c)), l_c the bay
    const double chi = number(row, "chi"),
                 omega_0 = number(row, "omega_x") * (chi + (1 - chi) * std::sin(pi * row.x / 0.5));
    CHECK((omega_0 == Approx(0.5) || omega_0 == Approx(185 * 1.1 / 1.25 / 250)));
    less += row.utilisation < 0.999 * utilisation(middle, row.member, row.check);
  }
  CHECK(less > 4);
  // in the open girder chords sway sideways: about z the weld stays in the middle, which governs them as it did
  const Proof open_middle = verify::en1999(ro), open_refined = verify::en1999(ro, where);
  for (const Row& row : open_refined.rows())
    if (row.check == Check::buckling && row.address.role == Role::chord)
      CHECK(row.utilisation == Approx(utilisation(open_middle, row.member, row.check)).epsilon(1e-12));
}

TEST_CASE("two moments word by word, exponents by chi") {
  const material::Material m = material::en_aw_6082_t6();
  const Analysis a{box(m, true)};
  const Response r = loaded(a);
  Basis literal, rising;
  literal.choices.round = en1999::RoundForm::components;
  rising.choices.axial_exponent = en1999::AxialExponent::by_chi;
  const Proof plain = verify::en1999(r), words = verify::en1999(r, literal), by_chi = verify::en1999(r, rising);
  std::size_t more = 0, lower = 0;
  for (const Row& row : plain.rows()) {
    const double u = utilisation(words, row.member, row.check);
    const bool with_moments = row.check == Check::bending_and_axial || row.check == Check::beam_column;
    CHECK(u >= row.utilisation * (1 - 1e-12));
    CHECK(u <= row.utilisation * (with_moments ? std::pow(2.0, 0.09) : 1.0) * (1 + 1e-12));
    more += u > 1.001 * row.utilisation;
    const double v = utilisation(by_chi, row.member, row.check);
    CHECK(v <= row.utilisation * (1 + 1e-12));
    lower += v < 0.999 * row.utilisation;
  }
  CHECK(more > 20);
  CHECK(lower > 10);
}

TEST_CASE("a bar says that it is welded along, and a basis how hot") {
  const material::Material m = material::en_aw_6082_t6();
  BoxGirder railed = box(m, true);
  railed.chord = railed.chord.welded_along({.lines = 1, .width = 10 * mm});
  const Analysis with{railed}, without{box(m, true)};
  const Proof p = verify::en1999(loaded(with)), q = verify::en1999(loaded(without));
  // 50 mm of 5 mm wall: A_1/A = 1 - 125/868.650 = 0.856099; tube 60.3 x 5 over 0.5 m: i = 19.6313 mm,
  // lambda = 500/19.6313/pi sqrt(250/70000) = 0.484499 (hand)
  std::size_t chords = 0;
  for (const Row& row : p.rows()) {
    const double before = utilisation(q, row.member, row.check);
    if (row.address.role != Role::chord) continue;
    CHECK(row.utilisation > before);
    if (row.check == Check::axial && !row.softened) CHECK(row.utilisation == Approx(before / 0.856099).epsilon(1e-5));
    if (row.check != Check::buckling) continue;
    const double lambda = number(row, "lambda"), share = number(row, "A_1/A");
    CHECK(lambda == Approx(0.484499).epsilon(1e-5));
    CHECK(share == Approx(0.856099).epsilon(1e-5));
    const double kappa =
        1 - (1 - share) * std::pow(10, -lambda) - (0.05 + 0.1 * share) * std::pow(lambda, 1.3 * (1 - lambda));
    CHECK(number(row, "kappa") == Approx(kappa).epsilon(1e-9));
    CHECK(row.utilisation == Approx(before / kappa).epsilon(1e-6));
    ++chords;
  }
  CHECK(chords > 6);
  CHECK_THROWS_AS((void)railed.chord.welded_along({.lines = -1}), BadDescription);
  CHECK_THROWS_AS((void)railed.chord.welded_along({.lines = 1, .width = -0.01}), BadDescription);
  CHECK(railed.chord.text().find("1 weld along it on 10 mm") != std::string::npos);
  std::string words;
  for (const std::string& w : p.assumptions()) words += w;
  CHECK(words.find("Welds along bars") != std::string::npos);
  // steel is not softened along it either
  CHECK_FALSE(verify::welded_along(tube(60.3, 5, material::s355h()).welded_along({.lines = 2})).any);
  CHECK(verify::welded_along(railed.chord).softened == Approx(250e-6));
  CHECK(verify::welded_along(railed.chord.welded_along({.lines = 9})).softened == railed.chord.section.area);

  // 6.1.6.3: 120 degrees Celsius between runs, 1 + 60/120 times as far: 30 mm; two heat paths, 3/2 times as well
  const std::size_t chord = without.model().chord_member(2, 0);
  const double cold = verify::welded_ends(without)[chord].start.reach;
  CHECK(verify::welded_ends(without, {.interpass_celsius = 120})[chord].start.reach == Approx(cold + 10 * mm));
  CHECK(verify::welded_ends(without, {.heat_paths = 2})[chord].start.reach == Approx(cold + 10 * mm));
  CHECK(verify::welded_along(railed.chord, {.interpass_celsius = 120}).softened == Approx(350e-6));
  Basis hot, wrong;
  hot.choices.heat.interpass_celsius = 120;
  const Proof warm = verify::en1999(loaded(without), hot);
  for (const Row& row : q.rows()) CHECK(utilisation(warm, row.member, row.check) >= row.utilisation * (1 - 1e-12));
  wrong.choices.heat.heat_paths = 7;
  CHECK_THROWS_AS((void)verify::en1999(loaded(without), wrong), BadDescription);
}
