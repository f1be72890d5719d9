// SPDX-License-Identifier: MIT
// A proof as a whole: utilisations beside a hand calculation, symmetry, monotony, brute force, and what it must not
// pass.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/verify.hpp>

#include "support/rows.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;
using doctest::Approx;
using verify::Check;
using verify::Proof;
using verify::Row;

const material::Material& alloy() {
  static const material::Material m = material::en_aw_6082_t6();
  return m;
}
Bar chord_bar(const material::Material& m) { return {RoundTube{60.3_mm, 5.0_mm}, m}; }
Bar cross_bar(const material::Material& m) { return {RoundTube{48.3_mm, 4.0_mm}, m}; }
Bar brace_bar(const material::Material& m) { return {RoundTube{26.9_mm, 3.2_mm}, m}; }

BoxGirder box(const material::Material& m, std::size_t bays = 8) {
  const auto side = braced(mirrored_towards, brace_bar(m), cross_bar(m));
  return {.bays = bays,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = chord_bar(m),
          .faces = {.top = open(cross_bar(m)), .bottom = open(cross_bar(m)), .left = side, .right = side},
          .supports = simply_supported()};
}
LoadCase own() { return {"self-weight", Nature::permanent, {self_weight()}}; }
LoadCase wind() { return {"wind", Nature::wind, {wind_on(Side::left, 400.0)}}; }
LoadCase hung(double x = 1.1, double P = 2e3) {
  return {"hung", Nature::imposed, {point_load(ChordOf::bottom_left, x, P)}};
}

/// Forces that should vanish do so within the solver's tolerance, 1e-10 of the largest.
constexpr double forces_known_to = 1e-9;

const Row& row_of(const Proof& p, std::size_t member, Check c) {
  REQUIRE(find(p, member, c) != nullptr);
  return *find(p, member, c);
}

/// Two cantilever bars 0.8 m long, each with N and a transverse F at its tip; the posts between them carry nothing.
LadderGirder two_cantilevers(const Bar& bar, const Bar& post) {
  return {.bays = 1,
          .bay_length = 0.8,
          .depth = 0.5,
          .chord = bar,
          .web = open(post, pinned_joint()),
          .supports = cantilever()};
}
std::vector<Action> tips(double N, double F) {
  return {point_load(ChordOf::bottom, 0.8, Vec3<>{N, 0, -F}), point_load(ChordOf::top, 0.8, Vec3<>{N, 0, -F})};
}

}  // namespace

TEST_CASE("a welded aluminium cantilever agrees with the hand calculation") {
  // 60.3 x 5 of EN AW-6082 T6: A 868.650 mm2, I 334766 mm4, Wel 11103.3 mm3, Wpl 15332.1 mm3; fo 250, fo,haz 125,
  // fu,haz 185 N/mm2 (EN 1999-1-1 Table 3.2b, values from memory). The post's footprint 48.3 + 2 x 20 = 88.3 mm exceeds
  // the least width 60.3 mm: omega_0 = 125 / 250. Welded class 2 (beta 9.98, limits 9 and 13): alpha = Wpl / Wel.
  const Analysis analysis{two_cantilevers(chord_bar(alloy()), cross_bar(alloy()))};
  const double A = 868.6503687, I = 334765.9082, Wel = 11103.34687, Wpl = 15332.11667, N = 20e3, F = 400.0, L = 800.0;
  const double M = F * L;
  const Proof p = verify::en1999(analysis.solve(tips(-N, F)));
  const std::size_t chord = analysis.model().chord_member(0, 0);
  CHECK(utilisation(p, chord, Check::axial) == Approx(N / (0.5 * A * 250 / 1.1)).epsilon(1e-6));
  CHECK(utilisation(p, chord, Check::shear) == Approx(F / (0.5 * 0.6 * A * 250 / std::sqrt(3.0) / 1.1)).epsilon(1e-6));
  // 6.2.5.1 at the weld: the lesser of 0.5 Wpl fo / 1.1 and Wel fu,haz / 1.25
  CHECK(utilisation(p, chord, Check::bending) == Approx(M / (Wel * 185 / 1.25)).epsilon(1e-6));
  CHECK(Wel * 185 / 1.25 < 0.5 * Wpl * 250 / 1.1);
  const double n = N / (0.5 * A * 250 / 1.1), m = M / (0.5 * Wpl * 250 / 1.1);
  CHECK(utilisation(p, chord, Check::bending_and_axial) == Approx(std::pow(n, 1.3) + std::pow(m, 1.02)).epsilon(1e-6));
  CHECK(row_of(p, chord, Check::bending_and_axial).x == Approx(0.0));
  CHECK(row_of(p, chord, Check::bending_and_axial).softened);

  // 6.3.1 over the bay's length, class A: alpha 0.20, lambda_0 0.10; a weld at mid-wave: chi omega_x = 0.5 chi
  const double N_cr = 3.14159265358979 * 3.14159265358979 * 70e3 * I / (L * L), lambda = std::sqrt(A * 250 / N_cr);
  const double phi = 0.5 * (1 + 0.20 * (lambda - 0.10) + lambda * lambda);
  const double chi = 1 / (phi + std::sqrt(phi * phi - lambda * lambda));
  const double n_b = N / (0.5 * chi * A * 250 / 1.1);
  CHECK(utilisation(p, chord, Check::buckling) == Approx(n_b).epsilon(1e-6));
  CHECK(utilisation(p, chord, Check::beam_column) ==
        Approx(std::pow(n_b, 0.8) + std::pow(M / (Wpl * 250 / 1.1), 1.02) / 0.5).epsilon(1e-6));
  CHECK(p.worst().check == Check::beam_column);

  // partial factors are arguments: without bending, resistance goes with 1 / gamma_M1
  verify::Basis basis;
  basis.aluminium.gamma_M1 = 1.21;
  const Proof other = verify::en1999(analysis.solve(tips(-N, F)), basis);
  CHECK(utilisation(other, chord, Check::axial) == Approx(1.1 * utilisation(p, chord, Check::axial)).epsilon(1e-9));
  // and so are buckling lengths: twice the length, a quarter of N_cr
  verify::Basis sway;
  sway.lengths.chord = {2.0, 2.0};
  const double l2 = 2 * lambda, phi2 = 0.5 * (1 + 0.20 * (l2 - 0.10) + l2 * l2);
  const double chi2 = 1 / (phi2 + std::sqrt(phi2 * phi2 - l2 * l2));
  CHECK(utilisation(verify::en1999(analysis.solve(tips(-N, F)), sway), chord, Check::buckling) ==
        Approx(N / (0.5 * chi2 * A * 250 / 1.1)).epsilon(1e-6));
}

TEST_CASE("a steel cantilever agrees with the hand calculation") {
  // The same tube of S355 H, hot finished (EN 1993-1-1 Table 3.1 355 N/mm2, curve a: alpha 0.21; values from memory).
  const material::Material m = material::s355h();
  const Analysis analysis{two_cantilevers(chord_bar(m), cross_bar(m))};
  const double A = 868.6503687, I = 334765.9082, Wpl = 15332.11667, N = 60e3, F = 2000.0, L = 800.0, fy = 355.0;
  const Proof p = verify::en1993(analysis.solve(tips(-N, F)));
  const std::size_t chord = analysis.model().chord_member(0, 1);
  const double n = N / (A * fy), mm = F * L / (Wpl * fy);
  CHECK(utilisation(p, chord, Check::axial) == Approx(n).epsilon(1e-6));
  CHECK(utilisation(p, chord, Check::bending) == Approx(mm).epsilon(1e-6));
  CHECK(utilisation(p, chord, Check::shear) ==
        Approx(F / (2 * A / 3.14159265358979 * fy / std::sqrt(3.0))).epsilon(1e-6));
  CHECK(utilisation(p, chord, Check::bending_and_axial) == Approx(mm / (1 - std::pow(n, 1.7))).epsilon(1e-6));
  const double lambda = std::sqrt(A * fy / (3.14159265358979 * 3.14159265358979 * 210e3 * I / (L * L)));
  const double phi = 0.5 * (1 + 0.21 * (lambda - 0.2) + lambda * lambda);
  const double chi = 1 / (phi + std::sqrt(phi * phi - lambda * lambda)), n_b = n / chi;
  CHECK(utilisation(p, chord, Check::buckling) == Approx(n_b).epsilon(1e-6));
  const double k = lambda - 0.2 < 0.8 ? 1 + (lambda - 0.2) * n_b : 1 + 0.8 * n_b;
  CHECK(utilisation(p, chord, Check::beam_column) == Approx(n_b + k * mm).epsilon(1e-6));
  for (const Row& r : p.rows()) CHECK_FALSE(r.softened);
}

TEST_CASE("system lengths reach from hold to hold") {
  const Analysis ladder{LadderGirder{.bays = 4,
                                     .bay_length = 0.5,
                                     .depth = 0.5,
                                     .chord = chord_bar(alloy()),
                                     .web = open(cross_bar(alloy())),
                                     .supports = simply_supported()}};
  const auto in_ladder = verify::system_lengths(ladder)[ladder.model().chord_member(1, 1)];
  CHECK(in_ladder.about_y == Approx(0.5));  // in the web
  CHECK(in_ladder.about_z == Approx(2.0));  // nothing holds a ladder's chord sideways but its ends

  BoxGirder two_bay_sides = box(alloy(), 4);
  const Face side = braced(mirrored_towards, brace_bar(alloy()), cross_bar(alloy()));
  two_bay_sides.faces.left = two_bay_sides.faces.right = side.spanning(2);
  const Analysis staggered{two_bay_sides};
  const auto lengths = verify::system_lengths(staggered);
  const auto& chord = lengths[staggered.model().chord_member(1, 2)];
  CHECK(chord.about_y == Approx(1.0));
  CHECK(chord.about_z == Approx(0.5));

  BoxGirder k = box(alloy(), 4);
  k.faces.left = k.faces.right = braced(k_braced, brace_bar(alloy()), cross_bar(alloy()));
  const Analysis with_k{k};
  const std::vector<std::size_t>& post = with_k.model().faces[1].cross_members[2];
  REQUIRE(post.size() == 2);
  CHECK(verify::system_lengths(with_k)[post[0]].about_z == Approx(0.25));
  CHECK(verify::system_lengths(with_k)[post[0]].about_y == Approx(0.5));
}

TEST_CASE("softened metal reaches as far as footprints and 6.1.6.3 say") {
  // Posts alone: footprint 48.3, b_haz 20 mm (MIG, mean wall 4.5 mm; value from memory).
  const Analysis ladder{two_cantilevers(chord_bar(alloy()), cross_bar(alloy()))};
  const auto ends = verify::welded_ends(ladder);
  const auto& chord = ends[ladder.model().chord_member(0, 0)];
  CHECK(chord.start.reach == Approx(0.0483 / 2 + 0.020));
  CHECK(chord.end.length == Approx(0.0483 + 0.040));
  const auto& post = ends[ladder.model().faces[0].cross_members[1][0]];
  CHECK(post.start.reach == Approx(0.0603 / 2 + 0.020));
  CHECK(post.start.length == Approx(0.020));
  // A brace at 45 degrees: its middle lies 60.3 / 2 from the joint, half its footprint is 26.9 / (2 sin 45).
  const Analysis girder{box(alloy())};
  const GirderModel& model = girder.model();
  const auto all = verify::welded_ends(girder);
  // falling from the top at the first station
  const auto& top = all[model.chord_member(0, 3)];
  CHECK(top.start.reach == Approx(0.0603 / 2 + 0.0269 / std::sqrt(2.0) + 0.020));
  CHECK(top.end.reach == Approx(0.0483 / 2 + 0.020));
  const auto& brace = all[model.faces[3].panels[0].diagonals[0]];
  CHECK(brace.end.reach == Approx(0.0603 / std::sqrt(2.0) + 0.0269 / 2 + 0.020));
  // TIG: 30 mm; steel is not softened
  const material::Material tig = material::welded_by(alloy(), material::Welding::tig);
  CHECK(verify::welded_ends(Analysis{two_cantilevers(chord_bar(tig), cross_bar(tig))})[0].start.reach ==
        Approx(0.0483 / 2 + 0.030));
  CHECK(verify::welded_ends(Analysis{box(material::s355h())})[0].start.reach == 0.0);
}

TEST_CASE("a mirrored load has mirrored utilisations") {
  const Analysis analysis{box(alloy())};
  const Proof left = verify::en1999(analysis.solve({own(), hung(1.1)}), en1990::ultimate());
  const Proof right = verify::en1999(analysis.solve({own(), hung(4.0 - 1.1)}), en1990::ultimate());
  for (std::size_t b = 0; b < 8; ++b)
    for (std::size_t c = 0; c < 4; ++c)
      for (std::size_t k = 0; k < verify::n_member_checks; ++k) {
        const double u = utilisation(left, analysis.model().chord_member(b, c), static_cast<Check>(k));
        CHECK(utilisation(right, analysis.model().chord_member(7 - b, c), static_cast<Check>(k)) ==
              Approx(u).epsilon(1e-7));
      }
  CHECK(right.worst().utilisation == Approx(left.worst().utilisation).epsilon(1e-7));
}

TEST_CASE("utilisations grow with the loads: linear checks in proportion") {
  for (const material::Material& m : {alloy(), material::s355h()}) {
    const Analysis analysis{box(m)};
    const Proof once = verify::by_material(analysis.solve(hung(1.1, 2e3)));
    const Proof thrice = verify::by_material(analysis.solve(hung(1.1, 6e3)));
    for (const Row& r : once.rows()) {
      const double u = utilisation(thrice, r.member, r.check);
      const bool linear = r.check == Check::axial || r.check == Check::bending || r.check == Check::torsion ||
                          r.check == Check::buckling;
      if (linear)
        CHECK(std::abs(u - 3.0 * r.utilisation) <= 1e-7 * u + forces_known_to);
      else
        CHECK_MESSAGE(u > r.utilisation - forces_known_to, verify::place(r) << ": " << verify::text(r));
    }
    CHECK(thrice.worst().utilisation > once.worst().utilisation);
  }
}

TEST_CASE("a further case, and so further combinations, never lower a utilisation; worst() is the greatest") {
  const Analysis analysis{box(alloy())};
  const Proof few = verify::en1999(analysis.solve({own(), wind()}), en1990::ultimate());
  const Proof more = verify::en1999(analysis.solve({own(), wind(), hung()}), en1990::ultimate());
  CHECK(more.combinations().size() > few.combinations().size());
  for (const Row& r : few.rows()) CHECK(utilisation(more, r.member, r.check) >= r.utilisation * (1 - 1e-12));
  double most = 0;
  for (const Row& r : more.rows()) most = r.utilisation > most ? r.utilisation : most;
  CHECK(more.worst().utilisation == most);
  const std::vector<Row> governing = more.governing();
  CHECK(governing.front().utilisation == most);
  for (const Row& r : more.rows()) {
    bool covered = false;
    for (const Row& g : governing)
      covered = covered || (g.check == r.check && g.address.role == r.address.role && g.utilisation >= r.utilisation);
    CHECK(covered);
  }
  CHECK(more.rows_of(0).size() >= 5);
  CHECK(more.passes());
  CHECK(more.verdict().find("passes") == 0);
}

TEST_CASE("no sampled section of any combination exceeds the rows, and each row is attained") {
  const Bar hollow{RectangularHollow{60.0_mm, 40.0_mm, 4.0_mm}, material::s355h()};
  for (const Bar& chord : {chord_bar(material::s355h()), hollow, chord_bar(alloy())}) {
    BoxGirder girder = box(chord.material);
    girder.chord = chord;
    const bool steel = chord.material.family == material::Family::steel;
    const Analysis analysis{girder};
    const Cases cases = analysis.solve({own(), wind(), hung()});
    const Proof p = verify::by_material(cases, en1990::ultimate());
    std::vector<std::vector<double>> sampled(analysis.model().bar_index.size(), std::vector<double>(5, 0.0));
    std::size_t attained = 0;
    for (std::size_t i = 0; i < p.combinations().size(); ++i) {
      const Response response = cases.combine(p.combinations()[i]);
      for (std::size_t m = 0; m < sampled.size(); ++m) {
        const Bar& bar = analysis.model().bar(m);
        const auto checks = [&](double x, CutSide side) {
          const CutForces c = response.member(m).forces_at(x, side);
          const verify::SectionForces f{c.N, c.Vy, c.Vz, c.T, c.My, c.Mz};
          if (steel) {
            const auto r = en1993::resistance(bar.section, bar.material);
            return std::vector<double>{en1993::axial(r, f.N).utilisation, en1993::bending(r, f).utilisation,
                                       en1993::shear(r, f).utilisation, en1993::torsion(r, f.T).utilisation,
                                       en1993::bending_and_axial(r, f).utilisation};
          }
          const auto r = en1999::resistance(bar.section, bar.material, {}, en1999::Welded::yes);
          return std::vector<double>{en1999::axial(r, f.N).utilisation, en1999::bending(r, f).utilisation,
                                     en1999::shear(r, f).utilisation, en1999::torsion(r, f.T).utilisation,
                                     en1999::bending_and_axial(r, f).utilisation};
        };
        const double L = response.member(m).length();
        for (int k = 0; k <= 60; ++k)
          for (const CutSide side : {CutSide::before, CutSide::after}) {
            const std::vector<double> u = checks(L * k / 60, side);
            for (std::size_t c = 0; c < 5; ++c) sampled[m][c] = u[c] > sampled[m][c] ? u[c] : sampled[m][c];
          }
        for (const Row& r : p.rows_of(m))
          if (r.combination == i && static_cast<std::size_t>(r.check) < 5 && !r.softened) {
            const std::size_t c = static_cast<std::size_t>(r.check);
            const double before = checks(r.x, CutSide::before)[c], after = checks(r.x, CutSide::after)[c];
            CHECK((before > after ? before : after) == Approx(r.utilisation).epsilon(1e-9));
            ++attained;
          }
      }
    }
    for (std::size_t m = 0; m < sampled.size(); ++m)
      for (std::size_t c = 0; c < 4; ++c)
        CHECK(sampled[m][c] <= utilisation(p, m, static_cast<Check>(c)) * (1 + 1e-9) + 1e-15);
    // N with M may be greater between the exact extremes of each, but hardly
    for (std::size_t m = 0; m < sampled.size(); ++m)
      CHECK(sampled[m][4] <= utilisation(p, m, Check::bending_and_axial) * (1 + 1e-3) + 1e-15);
    CHECK(attained > 0);
  }
}

TEST_CASE("metal that welds do not soften is utilised less at the joints") {
  material::Material kept = alloy();
  for (material::StrengthStep& s : kept.steps) {
    s.haz_yield = s.yield;
    s.haz_ultimate = s.ultimate;
  }
  const Analysis softened{box(alloy())}, whole{box(kept)};
  const Proof soft = verify::en1999(softened.solve({own(), hung()}), en1990::ultimate());
  const Proof hard = verify::en1999(whole.solve({own(), hung()}), en1990::ultimate());
  std::size_t at_welds = 0;
  for (const Row& r : soft.rows()) {
    CHECK(utilisation(hard, r.member, r.check) <= r.utilisation * (1 + 1e-9));
    if (!r.softened) continue;
    ++at_welds;
    CHECK(utilisation(hard, r.member, r.check) < 0.999 * r.utilisation);
  }
  CHECK(at_welds > 50);
}

TEST_CASE("what is outside the scope never passes") {
  const auto check = [](const BoxGirder& girder, const std::string& reason, auto prove) {
    const Analysis analysis{girder};
    const Proof p = prove(analysis.solve({own(), hung(1.1, 10.0)}));
    INFO(p.verdict());
    CHECK_FALSE(p.passes());
    CHECK(p.verdict().find("pass") == std::string::npos);
    CHECK(p.verdict().find(reason) != std::string::npos);
    CHECK(p.outside_scope().size() > 0);
    CHECK(std::isinf(p.worst().utilisation));
    CHECK(verify::text(p.worst()).find(reason) != std::string::npos);
    return p;
  };
  const auto by_material = [](const Cases& c) { return verify::by_material(c, en1990::ultimate()); };
  const auto aluminium = [](const Cases& c) { return verify::en1999(c, en1990::ultimate()); };
  const auto steel = [](const Cases& c) { return verify::en1993(c, en1990::ultimate()); };

  // D / t = 100 exceeds the limit 59.6 of class 3 for 355 N/mm2
  BoxGirder thin = box(material::s355h());
  thin.chord = {RoundTube{200.0_mm, 2.0_mm}, material::s355h()};
  const Proof p = check(thin, "class 4", by_material);
  CHECK(p.outside_scope().size() == 32);

  material::Material nameless = alloy();
  nameless.name = "own alloy";
  nameless.steps.clear();
  check(box(nameless), "gives no strength", by_material);
  nameless.family = material::Family::other;
  check(box(nameless), "neither steel nor aluminium", by_material);

  BoxGirder mixed = box(alloy());
  mixed.faces.left = mixed.faces.right = braced(mirrored_towards, brace_bar(material::s355h()), cross_bar(alloy()));
  check(mixed, "steel bar", aluminium);
  check(mixed, "aluminium bar", steel);
  const Analysis analysis{mixed};
  const Proof both = by_material(analysis.solve({own(), hung(1.1, 10.0)}));
  CHECK(both.passes());
  CHECK(both.outside_scope().empty());

  BoxGirder i_chord = box(material::s355());
  i_chord.chord = {IShape{80.0_mm, 60.0_mm, 4.0_mm, 5.0_mm}, material::s355()};
  const Proof open_section = check(i_chord, "lateral-torsional", by_material);
  CHECK(utilisation(open_section, 0, Check::bending_and_axial) > 0.0);

  BoxGirder thick = box(material::welded_by(alloy(), material::Welding::tig));
  thick.chord = {RoundTube{100.0_mm, 10.0_mm}, material::welded_by(alloy(), material::Welding::tig)};
  check(thick, "TIG", by_material);

  verify::Basis bad;
  bad.steel.gamma_M1 = 0.0;
  CHECK_THROWS_AS(verify::by_material(analysis.solve(std::vector<LoadCase>{own()}), en1990::ultimate(), bad),
                  BadDescription);
  CHECK_THROWS_AS(Proof{}.worst(), BadDescription);
  CHECK_FALSE(Proof{}.passes());
}

TEST_CASE("overloaded bars fail and are named") {
  const Analysis analysis{box(alloy())};
  const Proof p = verify::en1999(analysis.solve({own(), hung(1.1, 200e3)}), en1990::ultimate());
  CHECK_FALSE(p.passes());
  CHECK(p.verdict().find("fails") == 0);
  CHECK(p.verdict().find("bottom left chord") != std::string::npos);
  CHECK(p.outside_scope().empty());
}
