// SPDX-License-Identifier: MIT
// The way from a girder to its forces in other number types: long double, and one that carries a derivative.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <type_traits>
#include <vector>

#include <Eigen/Core>
#include <unsupported/Eigen/AutoDiff>

#include <baywork/baywork.hpp>

namespace {

using namespace baywork;
using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, 1, 1>>;
using Wide = long double;

/// What is varied: a box of 8 bays, braced on its sides, open at top and bottom with yielding joints, on springs.
enum Knob : std::size_t {
  chord_wall,
  cross_wall,
  brace_wall,
  cross_diameter,
  depth,
  bay_length,
  joint_stiffness,
  support_stiffness,
  gap,
  load_place,
  force,
  knobs
};
constexpr std::array<const char*, knobs> knob_names{
    "chord wall",      "cross-member wall", "brace wall", "cross-member diameter", "depth", "bay length",
    "joint stiffness", "support stiffness", "gap",        "place of the load",     "force"};
constexpr std::array<double, knobs> usual{0.005, 0.004, 0.0032, 0.0483, 0.55, 0.5, 2.0e4, 3.0e6, 0.03, 1.8, 2500.0};

template <class S>
using Knobs = std::array<S, knobs>;

template <class S>
Knobs<S> usual_knobs() {
  Knobs<S> k{};
  for (std::size_t i = 0; i < knobs; ++i) k[i] = S(usual[i]);
  return k;
}

template <class S>
BasicBar<S> tube(const S& diameter, const S& wall) {
  return {RoundTube<S>{diameter, wall}, material::en_aw_6082_t6()};
}

template <class S>
BasicBoxGirder<S> box(const Knobs<S>& k, const S& camber = S(0.05)) {
  const BasicBar<S> chord = tube<S>(S(0.0603), k[chord_wall]), cross = tube<S>(k[cross_diameter], k[cross_wall]);
  const BasicBar<S> brace = tube<S>(S(0.0269), k[brace_wall]);
  const BasicJoint<S> joint = semi_rigid_joint<S>(k[joint_stiffness], S(S(2) * k[joint_stiffness]));
  const BasicFace<S> side = braced(alternating, brace, cross, BasicJoint<S>{}, k[gap]), flat = open(cross, joint);
  BasicBoxGirder<S> g;
  g.bays = 8;
  g.bay_length = k[bay_length];
  g.width = S(0.5);
  g.depth = k[depth];
  g.chord = chord;
  g.faces = {flat, flat, side, side};
  g.diaphragms = end_diaphragms(brace);
  g.axis = {camber, S(0)};
  g.supports = hung_at<S>({S(0), S(S(8) * k[bay_length])}, k[support_stiffness]);
  return g;
}

/// Weight, a force between joints, one on a cross member, wind on bars and on a face, warming of one chord and across.
template <class S>
std::vector<BasicAction<S>> actions(const Knobs<S>& k) {
  return {BasicSelfWeight<S>{},
          BasicLineLoad<S>{{ChordOf::top_left, ChordOf::top_right}, {S(0), S(0), S(-500)}, {S(0), S(40), S(-900)}, {}},
          BasicChordPoint<S>{ChordOf::bottom_left, k[load_place], {S(0), S(300), S(-k[force])}, {S(0), S(20), S(0)}},
          BasicCrossMemberPoint<S>{Side::bottom, 3, S(0.3), {S(0), S(0), S(-800)}, {}},
          BasicFacePressure<S>{Side::left, S(200), CarriedBy::nearest_edge, {}},
          BasicWindOnBars<S>{S(150), {S(0), S(1), S(0)}, S(1.2)},
          BasicWarming<S>{S(20), ChordRef{ChordOf::top_left}},
          BasicWarmingAcross<S>{S(3), S(-8)},
          BasicSettlement<S>{ChordOf::top_right, S(0), Motion::uz, S(-0.002)}};
}

constexpr std::size_t answers = 8;
constexpr std::array<const char*, answers> answer_names{
    "deflection at mid-span", "twist at mid-span",       "chord force", "cross-member moment",
    "diagonal force",         "change of a right angle", "reaction",    "energy"};

/// What is asked of the solved girder, each by another way of the library.
template <class S>
std::array<S, answers> ask(const BasicResponse<S>& r) {
  const S middle = S(r.girder().span() / S(2));
  return {r.axis_deflection(middle).z,
          r.twist(middle),
          r.chord(ChordOf::bottom_right).axial(3),
          r.face(Side::bottom).cross_member(2).moment(in_plane, fraction{0}),
          r.face(Side::right).diagonal(1).forces(fraction{0.5}).N,
          panel_table(r, Side::top).panels[1].angle_change,
          r.reactions()[0].force.z,
          energy_shares(r).total.total()};
}

template <class S>
std::array<S, answers> solved(const Knobs<S>& k) {
  const BasicAnalysis<S> a{box(k)};
  return ask(a.solve(actions(k)));
}

/// The answers with one knob turned by this part of itself, in long double.
std::array<Wide, answers> turned(std::size_t knob, Wide part) {
  Knobs<Wide> k = usual_knobs<Wide>();
  k[knob] *= 1 + part;
  return solved(k);
}

}  // namespace

TEST_CASE("one girder in double and in long double: the same numbers, and the digits that long double has more") {
  const BasicAnalysis<> narrow{box(usual_knobs<double>())};
  const BasicAnalysis<Wide> wide{box(usual_knobs<Wide>())};
  const BasicResponse<> n = narrow.solve(actions(usual_knobs<double>()));
  const BasicResponse<Wide> w = wide.solve(actions(usual_knobs<Wide>()));
  static_assert(std::is_same_v<decltype(w.twist(Wide(1))), Wide>);
  CHECK(n.certificate().worst() < 1e-10);
  CHECK(w.certificate().worst() < 1e-12);
  const std::array<double, answers> in_double = ask(n);
  const std::array<Wide, answers> in_wide = ask(w);
  double apart = 0;  // whether the two ran on their own number types at all
  for (std::size_t i = 0; i < answers; ++i) {
    const double relative = std::abs(static_cast<double>((static_cast<Wide>(in_double[i]) - in_wide[i]) / in_wide[i]));
    INFO(std::string(answer_names[i]) << ": double " << in_double[i] << ", long double differs by " << relative);
    CHECK(relative < 1e-12);
    apart = (std::max)(apart, relative);
  }
  CHECK(apart > 0);

  // equilibrium and superposition are exact laws: in long double they hold beyond the digits of double
  if constexpr (std::numeric_limits<Wide>::digits > std::numeric_limits<double>::digits) {
    const Vec3<Wide> load = w.total_load(), reaction = w.total_reaction();
    INFO("load and reaction differ by " << static_cast<double>(length(load + reaction) / length(load)));
    CHECK(length(load + reaction) < 1e-16L * length(load));
    const Knobs<Wide> k = usual_knobs<Wide>();
    const std::vector<BasicAction<Wide>> all = actions(k);
    const std::vector<BasicAction<Wide>> first(all.begin(), all.begin() + 4), rest(all.begin() + 4, all.end());
    const BasicResponse<Wide> a = wide.solve(first), b = wide.solve(rest);
    const BasicResponse<Wide> sum = combine<Wide>({&a, &b}, {1.0, 1.0}, "both");
    const std::array<Wide, answers> added = ask(sum);
    for (std::size_t i = 0; i < answers; ++i) {
      INFO(std::string(answer_names[i]) << ": the sum differs by "
                                        << static_cast<double>((added[i] - in_wide[i]) / in_wide[i]));
      CHECK(std::abs(added[i] - in_wide[i]) < 1e-16L * std::abs(in_wide[i]));
    }
  }
}

TEST_CASE("derivatives carried through section, girder, loads and solver equal finite differences") {
  // Central differences over 1e-4 and 2e-4 of the value, one step of Richardson's extrapolation: error of fourth order.
  std::size_t checked = 0;  // derivatives that are not all but zero
  const std::array<Wide, answers> here = turned(0, 0);
  for (std::size_t knob = 0; knob < knobs; ++knob) {
    Knobs<Dual> k = usual_knobs<Dual>();
    k[knob].derivatives()(0) = 1.0;
    const std::array<Dual, answers> carried = solved(k);
    const Wide step = 1e-4L, size = static_cast<Wide>(usual[knob]);
    const std::array<Wide, answers> a = turned(knob, -2 * step), b = turned(knob, -step);
    const std::array<Wide, answers> c = turned(knob, step), d = turned(knob, 2 * step);
    for (std::size_t i = 0; i < answers; ++i) {
      const double expected = static_cast<double>((8 * (c[i] - b[i]) - (d[i] - a[i])) / (12 * step * size));
      const double derivative = carried[i].derivatives()(0);
      INFO(std::string(answer_names[i]) << " by " << std::string(knob_names[knob]) << ": carried "
                                        << text::number(derivative, 12) << ", by differences "
                                        << text::number(expected, 12));
      CHECK(carried[i].value() == doctest::Approx(static_cast<double>(here[i])).epsilon(1e-9));
      // relative to itself, or to a millionth of the answer's own size where the knob hardly matters
      const double own = std::abs(static_cast<double>(here[i] / size));
      checked += std::abs(expected) > 1e-3 * own ? 1U : 0U;
      CHECK(std::abs(derivative - expected) <= 1e-6 * (std::abs(expected) + 1e-6 * own));
    }
  }
  INFO(checked << " of " << knobs * answers << " derivatives matter");
  CHECK(checked > knobs * answers / 2);
}

TEST_CASE("each action alone carries its derivative by lengths, also where panels are square") {
  // The same differences. Answers that symmetry makes nothing are measured by what all actions together give.
  // The second pair is square to the last digit, the third one but for rounding of its stations.
  for (const auto& size_of : {std::array{0.5, 0.55}, std::array{0.5, 0.5}, std::array{0.3, 0.3}})
    for (const Knob knob : {depth, bay_length, chord_wall}) {
      const double bay = size_of[0], h = size_of[1];
      Knobs<Dual> k = usual_knobs<Dual>();
      k[bay_length] = Dual(bay);
      k[depth] = Dual(h);
      k[load_place] = Dual(1.7);
      k[knob].derivatives()(0) = 1.0;
      const BasicAnalysis<Dual> carried{box<Dual>(k, Dual(0.0))};
      const Wide step = 1e-4L, size = static_cast<Wide>(value_of(k[knob]));
      const auto at = [&](Wide part) {
        Knobs<Wide> w = usual_knobs<Wide>();
        w[bay_length] = static_cast<Wide>(bay);
        w[depth] = static_cast<Wide>(h);
        w[load_place] = 1.7;
        w[knob] *= 1 + part;
        std::vector<std::array<Wide, answers>> out;
        const BasicAnalysis<Wide> a{box<Wide>(w, 0)};
        out.push_back(ask(a.solve(actions(w))));
        for (const BasicAction<Wide>& one : actions(w)) out.push_back(ask(a.solve({one})));
        return out;
      };
      const auto a = at(-2 * step), b = at(-step), c = at(step), d = at(2 * step);
      const std::vector<BasicAction<Dual>> all = actions(k);
      for (std::size_t n = 0; n < all.size(); ++n) {
        const std::array<Dual, answers> alone = ask(carried.solve({all[n]}));
        for (std::size_t i = 0; i < answers; ++i) {
          const double expected =
              static_cast<double>((8 * (c[n + 1][i] - b[n + 1][i]) - (d[n + 1][i] - a[n + 1][i])) / (12 * step * size));
          const double derivative = alone[i].derivatives()(0), whole = std::abs(static_cast<double>(b[0][i] / size));
          INFO("bays of " << bay << " m, depth " << h << " m, action " << n + 1 << ": " << std::string(answer_names[i])
                          << " by " << std::string(knob_names[knob]) << ": carried " << text::number(derivative, 12)
                          << ", by differences " << text::number(expected, 12));
          CHECK(std::abs(derivative - expected) <= 1e-6 * std::abs(expected) + 1e-9 * whole);
        }
      }
    }
}

TEST_CASE("the mid-span deflection falls with the chord's wall as beam theory says") {
  // Uniform load on a long braced girder with slender chords: v = 5 w L^4/(384 E I), I = 4 A (h/2)^2 + 4 Ic, and shear
  // besides. So d ln v/d ln t = -(share of bending) d ln I/d ln t; the share of shear is taken from its closed form.
  const auto deflection = []<class S>(const S& wall) {
    BasicBoxGirder<S> g;
    const BasicBar<S> chord = tube<S>(S(0.0603), wall), cross = tube<S>(S(0.0483), S(0.004));
    const BasicBar<S> brace = tube<S>(S(0.0269), S(0.0032));
    const BasicFace<S> side = braced(alternating, brace, cross);
    g.bays = 24;
    g.bay_length = g.width = g.depth = S(0.5);
    g.chord = chord;
    g.faces = {open(cross), open(cross), side, side};
    g.supports = simply_supported<S>();
    const BasicAnalysis<S> a{g};
    const std::vector<ChordRef> all{ChordOf::bottom_left, ChordOf::bottom_right, ChordOf::top_right, ChordOf::top_left};
    const Vec3<S> w{S(0), S(0), S(-1000)};
    const BasicResponse<S> r = a.solve({BasicLineLoad<S>{all, w, w, {}}});
    return r.axis_deflection(S(6)).z;
  };
  Dual wall(0.005);
  wall.derivatives()(0) = 1.0;
  const Dual v = deflection(wall);

  const double D = 0.0603, t = 0.005, pi = std::acos(-1.0), E = 70e9, w = 1000, L = 12, s = 0.5, h = 0.5;
  const auto area = [&](double x) { return pi * x * (D - x); };
  const auto inertia = [&](double x) {
    return area(x) * h * h + 4 * pi / 64 * (std::pow(D, 4) - std::pow(D - 2 * x, 4));
  };
  const double A_brace = pi * 0.0032 * (0.0269 - 0.0032), d = std::sqrt(s * s + h * h);
  const double bending = 5 * w * std::pow(L, 4) / (384 * E * inertia(t));
  const double shear = w * L * L / 8 / (2 * E * A_brace * s * h * h / (d * d * d));  // two braced faces
  INFO("solved " << v.value() << " m, by hand " << -(bending + shear));
  CHECK(v.value() == doctest::Approx(-(bending + shear)).epsilon(0.01));
  const double up = std::log(inertia(t * 1.001)), down = std::log(inertia(t * 0.999));
  const double slope = (up - down) / (0.002 * t);  // d ln I/dt
  INFO("carried " << v.derivatives()(0) << ", by hand " << bending * slope);
  CHECK(v.derivatives()(0) == doctest::Approx(bending * slope).epsilon(0.02));
}

TEST_CASE("the derivative of what statics alone decides is exact") {
  // Weight 4 chords + the rest: dG/dt = 4 L rho g pi (D - 2t); half of it comes to each end of a symmetric girder. A
  // point load's reaction by its place: dR/dx = -P/L. Neither knows of any stiffness.
  const auto reaction_at_start = [](const Dual& wall, const Dual& place) {
    BasicBoxGirder<Dual> g;
    const BasicBar<Dual> cross = tube<Dual>(Dual(0.0483), Dual(0.004));
    const BasicFace<Dual> side = braced(alternating, tube<Dual>(Dual(0.0269), Dual(0.0032)), cross);
    g.bays = 6;
    g.bay_length = g.width = g.depth = Dual(0.5);
    g.chord = tube<Dual>(Dual(0.0603), wall);
    g.faces = {open(cross), open(cross), side, side};
    g.supports = simply_supported<Dual>();
    const BasicAnalysis<Dual> a{g};
    const Vec3<Dual> P{Dual(0), Dual(0), Dual(-1000)};
    const BasicResponse<Dual> r =
        a.solve({BasicSelfWeight<Dual>{}, BasicChordPoint<Dual>{ChordOf::top_left, place, P, {}}});
    Dual sum(0.0);
    for (const auto& s : r.reactions())
      if (s.address.station == 0) sum += s.force.z;
    return sum;
  };
  Dual wall(0.005), place(1.1);
  wall.derivatives()(0) = 1.0;
  const double by_wall = reaction_at_start(wall, Dual(1.1)).derivatives()(0);
  const double rho = material::en_aw_6082_t6().density;
  CHECK(by_wall == doctest::Approx(0.5 * 4 * 3.0 * rho * 9.80665 * std::acos(-1.0) * (0.0603 - 0.01)).epsilon(1e-9));
  place.derivatives()(0) = 1.0;
  CHECK(reaction_at_start(Dual(0.005), place).derivatives()(0) == doctest::Approx(-1000.0 / 3.0).epsilon(1e-9));
}
