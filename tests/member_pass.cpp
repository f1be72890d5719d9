// SPDX-License-Identifier: MIT
// Members passed through four at a time: against one at a time in wider numbers, against rigid motion, against changes.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include <baywork/solve/detail/carry_along.hpp>
#include <baywork/solve/detail/certify.hpp>
#include <baywork/solve/detail/member_pass.hpp>
#include <baywork/solve/frame_solver.hpp>

#include "support/convert.hpp"
#include "support/varied_frames.hpp"

using namespace baywork;

namespace {

using Wide = long double;
using detail::Twofold;
using Prepared = detail::PreparedFrame<double>;
constexpr double u2 = 0x1p-106;  // the square of the unit roundoff

std::vector<Twofold<double>> any_motions(varied::Random& r, std::size_t nodes) {
  std::vector<Twofold<double>> u(6 * nodes);
  for (Twofold<double>& v : u) v = Twofold<double>::sum(r.in(-1, 1) * std::exp(r.in(-10, 0)), r.in(-1, 1) * 0x1p-54);
  return u;
}

Twofold<Wide> wide(const Twofold<double>& v) { return Twofold<Wide>(v.hi) + Twofold<Wide>(v.lo); }

/// Forces on each node as the absolute parts that they are summed from: what errors are measured against.
std::vector<double> parts_of(const Prepared& p, double motion) {
  std::vector<double> parts(6 * p.frame.nodes.size(), 0.0);
  for (std::size_t i = 0; i < p.frame.members.size(); ++i) {
    const auto& in = p.sort(i).plain;
    const auto& z = in.stiffness.about_z;
    const auto& y = in.stiffness.about_y;
    const double arms = length(in.geometry.arm_start) + length(in.geometry.arm_end);
    const double strain = motion * (1 + arms) * (1 + 1 / in.length);
    const double q = strain * (in.stiffness.axial + in.stiffness.torsion + std::abs(z.start) + std::abs(z.cross) +
                               z.end + z.shear + std::abs(y.start) + std::abs(y.cross) + y.end + y.shear);
    for (const std::size_t node : {p.frame.members[i].from, p.frame.members[i].to})
      for (std::size_t k = 0; k < 6; ++k) parts[6 * node + k] += q * (1 + 1 / in.length) * (1 + arms);
  }
  return parts;
}

std::vector<Twofold<double>> member_forces(const Prepared& p, const std::vector<Twofold<double>>& u, detail::Sizes& s) {
  std::vector<Twofold<double>> f(u.size());
  p.add_member_forces(u, 1.0, f, &s[2]);
  return f;
}

/// The same members one at a time.
Prepared ungrouped(Prepared p) {
  p.groups = {};
  p.groups_at_support = {};
  return p;
}

}  // namespace

TEST_CASE("four members at a time answer motions as one by one in wider numbers" *
          doctest::skip(std::numeric_limits<Wide>::digits <= std::numeric_limits<double>::digits)) {
  double worst = 0;
  for (std::uint64_t seed = 1; seed <= 150; ++seed) {
    INFO("seed " << seed);
    const varied::Case c = varied::any_case(seed);
    varied::Random r(seed + 1000);
    const Prepared p(c.frame);
    const detail::PreparedFrame<Wide> prepared(converted<Wide>(c.frame));
    CHECK(p.groups.empty() != detail::has_twofold_lanes());
    const std::vector<Twofold<double>> u = any_motions(r, c.frame.nodes.size());
    std::vector<Twofold<Wide>> w, exact(u.size());
    for (const Twofold<double>& v : u) w.push_back(wide(v));
    std::array<double, 2> exact_sizes{};
    prepared.add_member_forces(w, 1.0, exact, exact_sizes.data());
    detail::Sizes s{};
    const std::vector<Twofold<double>> found = member_forces(p, u, s);
    const std::vector<double> parts = parts_of(p, 1.0);
    for (std::size_t i = 0; i < u.size(); ++i) {
      const Twofold<Wide> off = exact[i] - wide(found[i]);
      worst = (std::max)(worst, std::abs(value_of(off)) / (parts[i] * u2));
    }
    CHECK(s[2] == doctest::Approx(exact_sizes[0]).epsilon(1e-13));
    CHECK(s[3] == doctest::Approx(exact_sizes[1]).epsilon(1e-13));
  }
  MESSAGE("largest error: " << worst << " u² of the absolute parts");
  CHECK(worst < 8);
}

TEST_CASE("a rigid motion meets no force, to twice the digits") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    INFO("seed " << seed);
    const varied::Case c = varied::any_case(seed);
    varied::Random r(seed);
    const Prepared p(c.frame);
    const Vec3<> turn = r.vector(1), way = r.vector(1);
    std::vector<Twofold<double>> u(6 * c.frame.nodes.size());
    double far = 1;
    for (std::size_t n = 0; n < c.frame.nodes.size(); ++n) {
      const Vec3<>& at = c.frame.nodes[n].at;
      far = (std::max)(far, length(at));
      for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t a = (k + 1) % 3, b = (k + 2) % 3;  // way + turn × at
        u[6 * n + k] = Twofold<double>(way[k]) + Twofold<double>::product(turn[a], at[b]) -
                       Twofold<double>::product(turn[b], at[a]);
        u[6 * n + 3 + k] = turn[k];
      }
    }
    detail::Sizes s{};
    const std::vector<Twofold<double>> f = member_forces(p, u, s);
    const std::vector<double> parts = parts_of(p, 4 * far);
    for (std::size_t i = 0; i < u.size(); ++i) CHECK(std::abs(f[i].value()) <= 8 * u2 * parts[i]);
  }
}

TEST_CASE("joints are carried along with the rigid motion of one of them, to twice the digits" *
          doctest::skip(std::numeric_limits<Wide>::digits <= std::numeric_limits<double>::digits)) {
  double worst = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    INFO("seed " << seed);
    varied::Random r(seed);
    const std::size_t count = 1 + seed % 9;
    Frame f;
    for (std::size_t n = 0; n < 2 * count + 1; ++n) f.add_node(r.vector(seed % 3 == 0 ? 1e5 : 3.0));
    std::vector<std::uint32_t> nodes;
    for (std::size_t i = 0; i < count; ++i) nodes.push_back(static_cast<std::uint32_t>(2 * (count - i)));
    std::array<Twofold<double>, 6> base{};
    for (Twofold<double>& v : base) v = Twofold<double>::sum(r.in(-1, 1) * std::exp(r.in(-10, 20)), r.in(-1, 1) * 0x1p-54);
    std::vector<double> besides;
    for (std::size_t k = 0; k < 6 * count; ++k) besides.push_back(r.in(-1, 1) * std::exp(r.in(-20, 10)));
    std::vector<Twofold<double>> motions(6 * f.nodes.size(), 7.0);
    detail::carry_along(f, 1, base, nodes.data(), count, besides.data(), motions);
    for (std::size_t n = 0; n < f.nodes.size(); ++n) {
      const auto at = std::find(nodes.begin(), nodes.end(), n);
      for (std::size_t k = 0; k < 6; ++k) {
        const Twofold<double>& found = motions[6 * n + k];
        if (at == nodes.end()) {  // not asked for, not touched
          CHECK(found.value() == 7.0);
          continue;
        }
        const std::size_t i = static_cast<std::size_t>(at - nodes.begin());
        std::vector<std::pair<Twofold<Wide>, Twofold<Wide>>> products{{wide(base[k]), Wide(1)}, {Wide(besides[6 * i + k]), Wide(1)}};
        if (k < 3)
          for (const std::size_t a : {(k + 1) % 3, (k + 2) % 3}) {
            const std::size_t b = 3 - k - a;
            const Twofold<Wide> arm = Twofold<Wide>(f.nodes[n].at[b]) - Twofold<Wide>(f.nodes[1].at[b]);
            products.push_back({a == (k + 1) % 3 ? wide(base[3 + a]) : -wide(base[3 + a]), arm});
          }
        Twofold<Wide> exact;
        double parts = 0;
        for (const auto& [x, y] : products) {
          exact += x * y;
          parts += static_cast<double>(std::abs((x * y).value()));
        }
        worst = (std::max)(worst, static_cast<double>(std::abs((wide(found) - exact).value())) / (parts * u2));
        CHECK(std::abs(found.lo) <= 0x1p-53 * std::abs(found.hi));
      }
    }
  }
  MESSAGE("largest error: " << worst << " u² of the absolute parts");
  CHECK(worst < 8);
}

TEST_CASE("motions are added and seen at once") {
  for (std::size_t nodes = 0; nodes < 40; ++nodes) {
    varied::Random r(nodes);
    const std::vector<Twofold<double>> d = any_motions(r, nodes), before = any_motions(r, nodes);
    std::vector<Twofold<double>> u = before;
    detail::Sizes of_d{0.0, 1e-4, 5.0, 6.0}, of_u{}, expected_d = of_d, expected_u{};
    detail::add_motions(d, u, of_d, of_u);
    for (std::size_t i = 0; i < u.size(); ++i) {
      const Twofold<double> sum = before[i] + d[i];
      CHECK(std::abs((u[i] - sum).value()) <= 4 * u2 * (std::abs(before[i].hi) + std::abs(d[i].hi)));
      detail::see(d[i].value(), expected_d[i % 6 / 3]);
      detail::see(u[i].value(), expected_u[i % 6 / 3]);
    }
    CHECK(of_d == expected_d);
    CHECK(of_u == expected_u);
    detail::Sizes seen{};
    detail::see_motions(u, seen);
    CHECK(seen == expected_u);
  }
}

TEST_CASE("a long girder's groups follow it from end to end, each member in one of them") {
  Frame f;  // a ladder, listed kind by kind
  const FrameSection s{.E = 70e9, .G = 26e9, .A = 1e-3, .Iy = 1e-6, .Iz = 1e-6, .J = 2e-6};
  constexpr std::size_t bays = 900;
  for (std::size_t i = 0; i <= bays; ++i)
    for (const double z : {0.0, 0.5}) f.add_node({0.5 * static_cast<double>(i), 0, z});
  for (std::size_t chord = 0; chord < 2; ++chord)
    for (std::size_t i = 0; i < bays; ++i) f.add_beam(2 * i + chord, 2 * i + 2 + chord, s);
  for (std::size_t i = 0; i <= bays; ++i) f.add_beam(2 * i, 2 * i + 1, s);
  f.clamp(0);
  const Prepared p(f);
  if (p.groups.empty()) return;
  std::vector<int> met(f.members.size(), 0);
  std::size_t last = 0;
  for (const detail::MemberGroup& g : p.groups.groups()) {
    for (const std::uint32_t m : g.member)
      if (m != detail::MemberGroup::none) ++met[m];
    if (g.member.back() == detail::MemberGroup::none) continue;
    CHECK(g.from[0] + 300 > last);  // never back by more than a part of it
    last = (std::max)(last, std::size_t{g.from[0]});
  }
  CHECK(std::all_of(met.begin(), met.end(), [](int n) { return n == 1; }));
}

TEST_CASE("answers of members are the same in groups and one by one, loaded or not") {
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    INFO("seed " << seed);
    const varied::Case c = varied::any_case(seed);
    varied::Random r(seed);
    const Prepared p(c.frame), one_by_one = ungrouped(p);
    std::vector<Twofold<double>> u = any_motions(r, c.frame.nodes.size()), force(u.size());
    detail::LoadedMembers<Twofold<double>> loaded;
    loaded.clear(c.frame.members.size());
    p.reduce(c.loads, force, loaded);
    std::vector<MemberAnswer> grouped(c.frame.members.size()), single(c.frame.members.size());
    detail::Sizes s{}, t{};
    detail::answer_members(p, u, loaded, grouped, s);
    detail::answer_members(one_by_one, u, loaded, single, t);
    for (std::size_t k = 2; k < 4; ++k) CHECK(s[k] == doctest::Approx(t[k]).epsilon(1e-15));
    for (std::size_t i = 0; i < grouped.size(); ++i)
      for (std::size_t k = 0; k < 6; ++k) {
        const double size = k < 3 ? t[2] : t[3];
        CHECK(std::abs(grouped[i].start[k] - single[i].start[k]) <= 4e-16 * size);
        CHECK(std::abs(grouped[i].end[k] - single[i].end[k]) <= 4e-16 * size);
        CHECK(std::abs(grouped[i].modes[k] - single[i].modes[k]) <= 4e-16 * std::abs(single[i].modes[k]) + 1e-25);
      }
  }
}

TEST_CASE("members of one sort that are loaded alike, nearly alike or twice: as each load on its own") {
  for (const bool equal : {true, false})
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      INFO("seed " << seed);
      varied::Random r(seed);
      Frame f;  // a line of bars, equal or no two alike
      for (int i = 0; i <= 12; ++i) f.add_node({equal ? 0.5 * i : 0.5 * i * (1 + 0.01 * i), 0.25 * i, 0.125 * i});
      const FrameSection section = varied::any_case(1).frame.members[0].section;
      for (std::size_t i = 0; i < 12; ++i) f.add_beam(i, i + 1, section);
      f.clamp(0);
      const Prepared p(f);
      CHECK((p.sorts.size() == 1) == equal);
      const Vec3<> usual = r.vector(1000);
      FrameLoads all;
      for (std::size_t i = 0; i < 12; ++i)
        for (int again = r.chance(0.2) ? 2 : 1; again > 0; --again) {
          MemberLoad l;
          l.member = i;
          l.b = 0.375;
          l.first = l.last = usual;
          if (r.chance(0.2)) l.last.y = std::nextafter(usual.y, 1e9);
          if (r.chance(0.1)) l.kind = MemberLoad::Kind::temperature;
          all.on_members.push_back(l);
        }
      std::vector<Twofold<double>> whole(78), one_by_one(78);
      detail::LoadedMembers<Twofold<double>> loaded;
      loaded.clear(12);
      p.reduce(all, whole, loaded);
      double size = 0;
      for (const MemberLoad& l : all.on_members) {
        FrameLoads one;
        one.on_members = {l};
        loaded.clear(12);
        p.reduce(one, one_by_one, loaded);
      }
      for (const Twofold<double>& x : one_by_one) size = (std::max)(size, std::abs(x.value()));
      for (std::size_t i = 0; i < 78; ++i) CHECK(std::abs((whole[i] - one_by_one[i]).value()) <= 64 * u2 * size);
    }
}

TEST_CASE("a changed member answers as in a frame made with it") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    INFO("seed " << seed);
    varied::Case c = varied::any_case(seed);
    varied::Random r(seed);
    Prepared p(c.frame);
    for (int change = 0; change < 3; ++change) {
      const std::size_t member = change < 2 ? 0 : r.below(c.frame.members.size());
      c.frame.members[member].section.A *= r.in(0.5, 2);
      c.frame.members[member].section.Iz *= r.in(0.5, 2);
      p.frame.members[member].section = c.frame.members[member].section;
      p.renew_member(member);
    }
    const std::vector<Twofold<double>> u = any_motions(r, c.frame.nodes.size());
    detail::Sizes s{}, t{};
    const Prepared fresh(c.frame);
    const std::vector<Twofold<double>> found = member_forces(p, u, s), expected = member_forces(fresh, u, t);
    std::vector<Twofold<double>> at_supports(u.size());
    p.add_member_forces_at_supports(u, 1.0, at_supports);
    const std::vector<double> parts = parts_of(fresh, 1.0);
    for (std::size_t i = 0; i < u.size(); ++i) {
      CHECK(std::abs((found[i] - expected[i]).value()) <= 8 * u2 * parts[i]);
      if (p.freedoms.number[i] == detail::Freedoms::held)
        CHECK(std::abs((at_supports[i] - expected[i]).value()) <= 8 * u2 * parts[i]);
    }
  }
}

TEST_CASE("a correction or an answer that is no number is never certified") {
  const double nan = std::numeric_limits<double>::quiet_NaN(), infinity = std::numeric_limits<double>::infinity();
  const varied::Case c = varied::any_case(3);
  const Prepared p(c.frame);
  for (const double bad : {nan, infinity})
    for (std::size_t k = 0; k < 4; ++k)
      for (const bool in_answer : {false, true}) {
        detail::Certifier<double> certifier(p, std::vector<Twofold<double>>(6 * c.frame.nodes.size()));
        detail::Sizes correction{1e-9, 1e-9, 1e-9, 1e-9}, answer{1, 1, 1, 1};
        certifier.first({1, 1, 1, 1});
        (in_answer ? answer : correction)[k] = bad;
        CHECK_FALSE(certifier.wants_more(correction, answer));
        CHECK_FALSE(certifier.result().worst() < 1);
      }
  for (const Prepared& way : {p, ungrouped(p)})  // such a motion shows in the sizes
    for (std::size_t node = 0; node < c.frame.nodes.size(); ++node) {
      std::vector<Twofold<double>> u(6 * c.frame.nodes.size(), 1.0);
      u[6 * node] = nan;
      detail::Sizes s{}, t{};
      detail::see_motions(u, s);
      detail::see_member_forces(way, u, t);
      CHECK(!is_finite(s[0]));
      CHECK(!is_finite(t[2]));
    }
}
