// SPDX-License-Identifier: MIT
// Laws that every girder must obey, on hundreds of random ones: equilibrium, reciprocity, superposition, invariance
// under rotation, mirroring and change of units, balance of energy, limits of joint and shear stiffness.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

#include <baywork/response.hpp>

#include "support/random.hpp"

namespace {

using namespace baywork;

constexpr unsigned girders = 500;

/// Units to type a girder in: metres and newtons times these.
struct Units {
  double metre = 1, newton = 1;
};

Bar random_bar(Random& r, const Units& u, double least, double most) {
  material::Material m = r.chance(0.7) ? material::en_aw_6082_t6() : material::s355();
  m.steps.clear();
  m.E *= u.newton / (u.metre * u.metre);
  m.G *= u.newton / (u.metre * u.metre);
  const double diameter = r.in(least, most) * u.metre;
  return {RoundTube{diameter, diameter * r.in(0.06, 0.12)}, m};
}

Face random_face(Random& r, const Units& u) {
  const Bar brace = random_bar(r, u, 0.02, 0.03), post = random_bar(r, u, 0.03, 0.05);
  const double spring = u.newton * u.metre, gap = r.chance(0.3) ? r.in(0.0, 0.05) * u.metre : 0.0;
  Joint joint;
  if (r.chance(0.4)) joint = semi_rigid_joint(r.over_orders(3e3, 1e6) * spring, r.over_orders(3e3, 1e6) * spring);
  joint.to_chord_surface = r.chance(0.3);
  switch (r.below(9)) {
    case 0: return braced(single_direction, brace, post, joint, gap);
    case 1: return braced(single_direction_reversed, brace, post, joint, gap);
    case 2: return braced(mirrored_towards, brace, post, joint, gap);
    case 3: return braced(mirrored_away, brace, post, joint, gap);
    case 4: return braced(alternating, brace, post, joint, gap);
    case 5: return braced(alternating_reversed, brace, post, joint, gap);
    case 6: return braced(crossed, brace, post, joint, gap);
    case 7: return braced(k_braced, brace, post, joint, gap);
    default: return open(post, joint);
  }
}

enum class Held { any, cantilever };

/// A box, triangular girder or ladder of 3 to 8 bays (or as many as asked for), of any faces, sizes, taper, camber and
/// diaphragms.
Girder random_girder(Random& r, Held held = Held::any, const Units& u = {}, std::size_t bays = 0) {
  std::vector<double> lengths;
  for (std::size_t n = bays > 0 ? bays : 3 + r.below(6); n > 0; --n) lengths.push_back(r.in(0.4, 0.8) * u.metre);
  const double middle = lengths[0] + lengths[1], span = std::accumulate(lengths.begin(), lengths.end(), 0.0);
  const auto size = [&] { return r.in(0.3, 0.8) * u.metre; };
  const auto face = [&] { return random_face(r, u); };
  const auto begun = [&](auto g) {
    g.bay_lengths = lengths;
    g.depth = size();
    g.chord = random_bar(r, u, 0.045, 0.065);
    if (r.chance(0.3)) g.axis.camber = r.in(-0.05, 0.1) * u.metre;
    if (r.chance(0.4)) g.diaphragms = diaphragms_every(1 + r.below(3), random_bar(r, u, 0.02, 0.03));
    if (r.chance(0.3)) g.end_depth = size();
    const double stiffness = r.over_orders(1e5, 1e7) * u.newton / u.metre;
    const std::array<Supports, 4> ways{cantilever(), simply_supported(), hung_at<double>({0.0, span}, stiffness),
                                       continuous_over({0.0, middle, span})};
    g.supports = ways[held == Held::any ? r.below(4) : 0];
    return g;
  };
  const std::size_t kind = r.below(4);
  if (kind == 0) {
    LadderGirder g = begun(LadderGirder{});
    g.flat = r.chance(0.5);
    g.web = face();
    return g.girder();
  }
  if (kind == 1) {
    TriangularGirder g = begun(TriangularGirder{});
    g.width = size();
    g.apex_down = r.chance(0.5);
    g.faces = {face(), face(), face()};
    return g.girder();
  }
  BoxGirder g = begun(BoxGirder{});
  g.width = size();
  if (r.chance(0.3)) g.end_width = size();
  g.faces = {face(), face(), face(), face()};
  return g.girder();
}

/// Forces on chords, cross members and faces; `all`: also own weight, wind, couples and warming.
std::vector<Action> random_actions(Random& r, const Girder& g, bool all, const Units& u = {}) {
  std::vector<Action> out;
  const double newton = u.newton, metre = u.metre, span = g.span();
  const auto chord = [&] { return ChordRef(r.below(g.chords.size())); };
  const auto face = [&] { return FaceRef(r.below(g.faces.size())); };
  const Reach reach{r.in(0, 0.4) * span, r.in(0.5, 1.0) * span};
  const CarriedBy by = static_cast<CarriedBy>(r.below(3));
  out.push_back(BasicChordPoint<>{chord(), r.in(0, span), r.vector(1000 * newton), {}});
  out.push_back(BasicLineLoad<>{{chord()}, r.vector(500 * newton / metre), r.vector(500 * newton / metre), reach});
  out.push_back(BasicCrossMemberPoint<>{face(), 1 + r.below(g.bays()), r.in(0, 1), r.vector(500 * newton), {}});
  out.push_back(BasicFacePressure<>{face(), r.in(-500, 500) * newton / (metre * metre), by, {}});
  if (!all) return out;
  out.push_back(BasicChordPoint<>{chord(), r.in(0, span), {}, r.vector(200)});
  out.push_back(self_weight(r.in(0.5, 1.5)));
  out.push_back(wind_on_bars(r.in(100, 800), r.vector(1)));
  out.push_back(warming(r.in(-30, 30)));
  out.push_back(warming_of(chord(), r.in(-30, 30)));
  out.push_back(warming_across(r.in(-30, 30), r.in(-30, 30)));
  return out;
}

/// Two numbers agree to `digits` against `size`.
void same(double a, double b, double size, double digits) {
  INFO(a << " and " << b << " of size " << size);
  CHECK(std::abs(a - b) <= digits * size);
}

double largest(const std::vector<double>& v) {
  double most = 0;
  for (const double x : v) most = (std::max)(most, std::abs(x));
  return most;
}
double largest_force(const FrameAnswer& a) {
  double most = 0;
  for (const MemberAnswer& m : a.members)
    for (const double x : m.start) most = (std::max)(most, std::abs(x));
  return most;
}

/// Calls visit(member, node, end, forces on it) for both ends of every bar.
template <class Visit>
void for_each_end(const Frame& f, const FrameAnswer& a, Visit visit) {
  for (std::size_t i = 0; i < f.members.size(); ++i) {
    visit(i, f.members[i].from, f.members[i].start, a.members[i].start);
    visit(i, f.members[i].to, f.members[i].end, a.members[i].end);
  }
}

/// Calls check(random) for each seed, with the seed in every message.
template <class Check>
void for_each_seed(unsigned first, Check check) {
  for (unsigned seed = first; seed < first + girders; ++seed) {
    INFO("seed " << seed);
    Random r(seed);
    check(r);
  }
}

/// Twice the strain energy of bars, joint springs and support springs.
double twice_energy(const Response& r) {
  double sum = 0;
  const auto spring = [&sum](double force, double stiffness) {
    if (!is_infinite(stiffness) && stiffness > 0) sum += force * force / stiffness;
  };
  const Frame& f = r.model().frame;
  for (std::size_t i = 0; i < f.members.size(); ++i) sum += 2 * r.member(i).energy().total();
  for_each_end(f, r.answer(), [&](std::size_t, std::size_t, const MemberEnd& e, const std::array<double, 6>& q) {
    spring(q[4], e.about_y);
    spring(q[5], e.about_z);
  });
  for (std::size_t j = 0; j < f.supports.size(); ++j)
    for (std::size_t k = 0; k < 6; ++k) spring(r.answer().reactions[j].value[k], f.supports[j].motion[k].stiffness);
  return sum;
}

/// Loads times the displacements of the places they act on. Between load changes displacements are of degree five and
/// loads straight, so that four Gauss points on each stretch are exact.
double work(const Response& r) {
  constexpr std::array<std::array<double, 2>, 4> gauss{{{-0.86113631159405258, 0.34785484513745386},
                                                        {-0.33998104358485626, 0.65214515486254614},
                                                        {0.33998104358485626, 0.65214515486254614},
                                                        {0.86113631159405258, 0.34785484513745386}}};
  double sum = 0;
  for (const NodeLoad& l : r.loads().on_nodes)
    sum += dot(l.force, r.answer().displacement(l.node)) + dot(l.couple, r.answer().rotation(l.node));
  for (const MemberLoad& l : r.loads().on_members) {
    const MemberView m = r.member(l.member);
    if (l.kind == MemberLoad::Kind::force) sum += dot(m.axes().to_global(l.first), m.displacement_at(l.a));
    if (l.kind != MemberLoad::Kind::line) continue;
    std::vector<double> cuts{l.a, l.b};
    for (const MemberLoad& other : r.loads().on_members)
      if (other.member == l.member)
        for (const double x : {other.a, other.b})
          if (x > l.a && x < l.b) cuts.push_back(x);
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t c = 0; c + 1 < cuts.size(); ++c)
      for (const auto& [at, weight] : gauss) {
        const double half = (cuts[c + 1] - cuts[c]) / 2, x = cuts[c] + half * (1 + at);
        const Vec3<> q = l.first + ((x - l.a) / (l.b - l.a)) * (l.last - l.first);
        sum += half * weight * dot(m.axes().to_global(q), m.displacement_at(x));
      }
  }
  return sum;
}

void stands_still(const Analysis& a, const Response& s) {
  CHECK(s.certificate().worst() < 1e-10);
  CHECK(s.certificate().equilibrium < 1e-10);
  std::vector<double> rest(6 * a.model().frame.nodes.size(), 0.0);
  double size = 0;
  const auto add = [&](std::size_t node, const Vec3<>& force, const Vec3<>& couple) {
    for (std::size_t k = 0; k < 3; ++k) {
      rest[6 * node + k] += force[k];
      rest[6 * node + 3 + k] += couple[k];
      size = (std::max)({size, std::abs(force[k]), std::abs(couple[k])});
    }
  };
  for_each_end(a.model().frame, s.answer(),
               [&](std::size_t i, std::size_t node, const MemberEnd& e, const std::array<double, 6>& q) {
                 const Vec3<> force = a.axes(i).to_global({q[0], q[1], q[2]});
                 add(node, -force, -(a.axes(i).to_global({q[3], q[4], q[5]}) + cross(e.offset, force)));
               });
  for (const NodeLoad& l : s.loads().on_nodes) add(l.node, l.force, l.couple);
  for (const Reaction& q : s.answer().reactions)
    add(q.node, {q.value[0], q.value[1], q.value[2]}, {q.value[3], q.value[4], q.value[5]});
  same(largest(rest), 0.0, size, 1e-10);
}

}  // namespace

TEST_CASE("equilibrium of the whole and of every joint, to a certified error, up to sixty bays") {
  const auto check = [](Random& r, std::size_t bays) {
    const Analysis a{random_girder(r, Held::any, {}, bays)};
    stands_still(a, a.solve(random_actions(r, a.girder(), true)));
  };
  for_each_seed(1000, [&](Random& r) { check(r, 0); });
  for (std::size_t bays = 10; bays <= 60; bays += 5) {
    INFO(bays << " bays, seed " << bays);
    Random r(bays);
    for (int i = 0; i < 3; ++i) check(r, bays);
  }
}

TEST_CASE("reciprocity: each of two forces moves the other's place alike (Maxwell, Betti)") {
  for_each_seed(2000, [](Random& r) {
    const Analysis a{random_girder(r)};
    const std::size_t c1 = r.below(a.girder().chords.size()), c2 = r.below(a.girder().chords.size());
    const double x1 = r.in(0, a.girder().span()), x2 = r.in(0, a.girder().span());
    const Vec3<> p1 = r.vector(1000), p2 = r.vector(1000);
    const Response s1 = a.solve({BasicChordPoint<>{c1, x1, p1, {}}}), s2 = a.solve({BasicChordPoint<>{c2, x2, p2, {}}});
    const double own = std::sqrt(std::abs(dot(p1, s1.deflection(c1, x1)) * dot(p2, s2.deflection(c2, x2))));
    same(dot(p1, s2.deflection(c1, x1)), dot(p2, s1.deflection(c2, x2)), own, 1e-9);
    CHECK(dot(p1, s1.deflection(c1, x1)) >= 0.0);
    CHECK(std::abs(dot(p1, s2.deflection(c1, x1))) <= own * (1 + 1e-9));  // the stiffness is positive definite
  });
}

TEST_CASE("superposition: a sum of cases is the case of the sum") {
  for_each_seed(3000, [](Random& r) {
    const Analysis a{random_girder(r)};
    const std::vector<Action> first = random_actions(r, a.girder(), true), second = random_actions(r, a.girder(), true);
    std::vector<Action> both = first;
    both.insert(both.end(), second.begin(), second.end());
    const Response s1 = a.solve(first), s2 = a.solve(second), s = a.solve(both),
                   sum = combine<double>({&s1, &s2}, {1.0, 1.0}, "sum");
    const double size = largest(s1.answer().motions) + largest(s2.answer().motions);
    for (std::size_t i = 0; i < s.answer().motions.size(); ++i)
      same(sum.answer().motions[i], s.answer().motions[i], size, 1e-10);
  });
}

TEST_CASE("a turned girder answers with turned motions and the same forces in its bars") {
  for_each_seed(4000, [](Random& r) {
    const Analysis a{random_girder(r, Held::cantilever)};
    FrameLoads loads;
    a.reduce(random_actions(r, a.girder(), true), loads);
    // columns of a rotation: an orthogonal right-handed triad
    const Vec3<> e1 = unit(r.vector(1)), e2 = unit(cross(e1, r.vector(1))), e3 = cross(e1, e2);
    const auto turned = [&](const Vec3<>& v) { return v.x * e1 + v.y * e2 + v.z * e3; };
    Frame f = a.model().frame;
    for (Node& n : f.nodes) n.at = turned(n.at);
    for (Member& m : f.members) {
      m.up = turned(m.up);
      m.start.offset = turned(m.start.offset);
      m.end.offset = turned(m.end.offset);
    }
    FrameLoads turned_loads = loads;
    for (NodeLoad& l : turned_loads.on_nodes) {
      l.force = turned(l.force);
      l.couple = turned(l.couple);
    }
    const FrameAnswer plain = a.solver().solve(loads), other = FrameSolver(f).solve(turned_loads);
    const double size = largest(plain.motions), force = largest_force(plain);
    for (std::size_t n = 0; n < f.nodes.size(); ++n) {
      CHECK(length(turned(plain.displacement(n)) - other.displacement(n)) <= 1e-9 * size);
      CHECK(length(turned(plain.rotation(n)) - other.rotation(n)) <= 1e-9 * size);
    }
    for (std::size_t i = 0; i < f.members.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) same(plain.members[i].start[k], other.members[i].start[k], force, 1e-8);
  });
}

TEST_CASE("a girder whose left and right change places answers in mirror image") {
  for_each_seed(5000, [](Random& r) {
    const Girder g = random_girder(r, Held::cantilever);
    Girder m = g;
    for (Vec3<>& joint : m.joints) joint.y = -joint.y;
    const std::size_t chord = r.below(g.chords.size());
    const double x = r.in(0, g.span()), z = r.in(-20, 20);
    const Vec3<> p = r.vector(1000), wind = r.vector(1);
    const auto mirrored = [](const Vec3<>& v) { return Vec3<>{v.x, -v.y, v.z}; };
    const Analysis a{g}, b{m};
    const Response s = a.solve({point_load(chord, x, p), wind_on_bars(400, wind), self_weight(), warming_across(z, 9)});
    const Response t = b.solve(
        {point_load(chord, x, mirrored(p)), wind_on_bars(400, mirrored(wind)), self_weight(), warming_across(-z, 9)});
    const double size = s.max_deflection();
    for (std::size_t c = 0; c < g.chords.size(); ++c) {
      CHECK(length(s.deflection(c, x) - mirrored(t.deflection(c, x))) <= 1e-9 * size);
      same(t.chord(c).axial(0), s.chord(c).axial(0), largest_force(s.answer()), 1e-9);
    }
    same(s.twist(x), -t.twist(x), size, 1e-8);
  });
}

TEST_CASE("millimetres and kilonewtons give the same girder") {
  for_each_seed(6000, [](Random& r) {
    Random q = r;
    const Units u{1000.0, 0.001};
    const Analysis a{random_girder(r)}, b{random_girder(q, Held::any, u)};
    const FrameAnswer s = a.solve(random_actions(r, a.girder(), false)).answer();
    const FrameAnswer t = b.solve(random_actions(q, b.girder(), false, u)).answer();
    const double size = largest(s.motions), force = largest_force(s);
    for (std::size_t n = 0; n < a.model().frame.nodes.size(); ++n) {
      CHECK(length(t.displacement(n) - u.metre * s.displacement(n)) <= 1e-8 * u.metre * size);
      CHECK(length(t.rotation(n) - s.rotation(n)) <= 1e-8 * size);
    }
    for (std::size_t i = 0; i < s.members.size(); ++i)
      same(t.members[i].start[0], u.newton * s.members[i].start[0], u.newton * force, 1e-8);
  });
}

TEST_CASE("the loads' work is twice the energy of bars, joints and springs (Clapeyron)") {
  for_each_seed(7000, [](Random& r) {
    const Analysis a{random_girder(r)};
    std::vector<Action> actions = random_actions(r, a.girder(), false);
    actions.push_back(self_weight());
    const Response s = a.solve(actions);
    CHECK(twice_energy(s) > 0);
    same(work(s), twice_energy(s), twice_energy(s), 1e-8);
  });
}

TEST_CASE("joints between pinned and rigid: stiffer joints give less way, and both ends are met") {
  for_each_seed(8000, [](Random& r) {
    Girder g = random_girder(r, Held::cantilever);
    const std::size_t face = r.below(g.faces.size());
    const Bar cross = random_bar(r, {}, 0.03, 0.05);
    const Vec3<> p = r.vector(1000);
    const std::size_t chord = r.below(g.chords.size());
    const double x = r.in(0.3, 1.0) * g.span();
    const auto gives = [&](const Joint& joint) {
      g.faces[face].panels = open(cross, joint);
      const Analysis a{g};
      return dot(p, a.solve({BasicChordPoint<>{chord, x, p, {}}}).deflection(chord, x));
    };
    const double pinned = gives(pinned_joint()), rigid = gives(rigid_joint());
    double before = pinned;
    for (const double k : {1e-3, 1e3, 1e4, 1e5, 1e6, 1e11}) {
      const double now = gives(semi_rigid_joint(k, k));
      INFO("spring " << k << ": " << now << " after " << before);
      CHECK(now <= before * (1 + 1e-9));
      if (k == 1e-3) same(now, pinned, pinned, 1e-4);
      before = now;
    }
    same(before, rigid, rigid, 1e-5);
  });
}

TEST_CASE("bars that do not shear are the limit of bars that hardly do, and give less way") {
  for_each_seed(9000, [](Random& r) {
    const Analysis a{random_girder(r)};
    FrameLoads loads;
    const std::size_t node = a.model().chord_node(a.girder().bays() - 1, 0);
    const Vec3<> p = r.vector(1000);
    loads.force(node, p);
    const auto gives = [&](double factor) {
      Frame f = a.model().frame;
      for (Member& m : f.members) {
        m.section.shear_y *= factor;
        m.section.shear_z *= factor;
      }
      return dot(p, FrameSolver(f).solve(loads).displacement(node));
    };
    const double timoshenko = gives(1.0), nearly = gives(1e7), euler = gives(rigid_stiffness);
    CHECK(timoshenko > euler);
    CHECK(nearly >= euler * (1 - 1e-9));
    same(nearly, euler, euler, 1e-6 * (timoshenko / euler));
  });
}
