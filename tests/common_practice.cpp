// SPDX-License-Identifier: MIT
// What people who build open and braced girders have always seen: each observation here is common practice.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <baywork/response.hpp>

#include "support/tubes.hpp"

namespace {

using namespace baywork;
using namespace baywork::literals;


/// 24 bays of 0.5 m, 0.5 m wide and deep: braced sides with posts, open top and bottom, on supports at both ends.
BoxGirder girder_with(const Bar& cross) {
  const Face side = braced(alternating, tube(26.9_mm, 3.2_mm), cross);
  return {.bays = 24,
          .bay_length = 0.5,
          .width = 0.5,
          .depth = 0.5,
          .chord = tube(60.3_mm, 5.0_mm),
          .faces = {.top = open(cross), .bottom = open(cross), .left = side, .right = side},
          .supports = simply_supported()};
}
Bar usual_cross() { return tube(48.3_mm, 4.0_mm); }

/// The same seen from its side: a ladder whose web is that face, 2 kN/m on its bottom chord.
Response laid(const Analysis& a) { return a.solve({line_load({ChordOf::bottom}, 2000.0)}); }
LadderGirder ladder_with(const Face& web) {
  return {.bays = 24,
          .bay_length = 0.5,
          .depth = 0.5,
          .chord = tube(60.3_mm, 5.0_mm),
          .web = web,
          .supports = simply_supported()};
}

/// Largest in-plane moment of a cross member of a face [Nm].
double cross_moment(const Response& r, Side face, std::size_t station) {
  const FaceBarView m = r.face(face).cross_member(station);
  return (std::max)(std::abs(m.moment(in_plane, fraction{0})), std::abs(m.moment(in_plane, fraction{1})));
}

/// How far the right angles of a panel close: the slope of the chords' lines from station to station plus the lean of
/// the cross members' lines from chord to chord, mean of both ends [rad].
double angle_change(const Response& r, std::size_t panel) {
  const double s = 0.5, h = 0.5, x = static_cast<double>(panel) * s;
  const auto lean = [&](double at) {
    return (r.deflection(ChordOf::top, at).x - r.deflection(ChordOf::bottom, at).x) / h;
  };
  return (r.axis_deflection(x + s).z - r.axis_deflection(x).z) / s + 0.5 * (lean(x) + lean(x + s));
}

}  // namespace

TEST_CASE("common practice: cross members bend in an open face and barely in a braced one") {
  const Analysis open_one{ladder_with(open(usual_cross()))},
      braced_one{ladder_with(braced(alternating, tube(26.9_mm, 3.2_mm), usual_cross()))};
  const Response o = laid(open_one), b = laid(braced_one);
  for (const std::size_t station : {std::size_t{1}, std::size_t{4}, std::size_t{8}}) {
    INFO("station " << station);
    CHECK(cross_moment(o, Side::web, station) > 10 * cross_moment(b, Side::web, station));
  }
  // energy: an open face's cross members bend; a braced face's diagonals pull and push
  double bending = 0, along = 0;
  for (std::size_t i = 0; i < 24; ++i) along += b.face(Side::web).diagonal(i).energy().axial;
  for (std::size_t i = 0; i <= 24; ++i) bending += b.face(Side::web).cross_member(i).energy().bending;
  CHECK(along > 10 * bending);
  const Energy middle = o.face(Side::web).cross_member(4).energy();
  CHECK(middle.bending > 100 * middle.axial);
}

TEST_CASE("common practice: in a box under wind the open faces' cross members bend, the braced faces' hardly") {
  const Analysis a{girder_with(usual_cross())};
  const Response across =
      a.solve({line_load({ChordOf::bottom_left, ChordOf::top_left, ChordOf::bottom_right, ChordOf::top_right},
                         {0, 1600, 0}, {0, 1600, 0})});
  const Response down = a.solve({line_load({ChordOf::bottom_left, ChordOf::bottom_right}, 1600.0)});
  CHECK(cross_moment(across, Side::bottom, 2) > 10 * cross_moment(down, Side::left, 2));
  CHECK(cross_moment(across, Side::bottom, 2) > cross_moment(across, Side::bottom, 6));
}

TEST_CASE("common practice: the right angle of an open face changes most at the supports and stays at mid-span") {
  const Analysis a{ladder_with(open(usual_cross()))};
  const Response r = laid(a);
  std::vector<double> change;
  for (std::size_t i = 0; i < 12; ++i) change.push_back(std::abs(angle_change(r, i)));
  const std::size_t most = static_cast<std::size_t>(std::max_element(change.begin(), change.end()) - change.begin());
  CHECK(most <= 1);  // the stiff last cross member may move it by one panel
  for (std::size_t i = 2; i < 12; ++i) CHECK(change[i] < change[i - 1]);
  CHECK(change[11] < 0.1 * change[most]);
  for (std::size_t i = 0; i < 12; ++i)
    CHECK(angle_change(r, 23 - i) == doctest::Approx(-angle_change(r, i)).epsilon(1e-6));  // opens, closes
}

TEST_CASE("common practice: thicker cross members deflect an open girder less and are distorted less") {
  double deflection = 1e9, turn = 1e9;
  for (const double diameter : {38.0_mm, 48.3_mm, 60.3_mm}) {
    const Analysis a{ladder_with(open(tube(diameter, 4.0_mm)))};
    const Response r = laid(a);
    // its own distortion: how far its ends turn against the line between them, M h/(6 E I) for equal end moments
    const double own = cross_moment(r, Side::web, 2) * 0.5 / (6 * 70e9 * tube(diameter, 4.0_mm).section.Iy);
    CHECK(r.max_deflection() < deflection);
    CHECK(own < turn);
    deflection = r.max_deflection();
    turn = own;
  }
}

TEST_CASE("common practice: the braced face is at least ten times stiffer in shear than the open one") {
  const auto stiffness = [](Face web) {
    LadderGirder l = ladder_with(web);
    l.supports = cantilever();
    const Analysis a{l};
    const Response r =
        a.solve({point_load(ChordOf::bottom, 12.0, {0, 0, 500.0}), point_load(ChordOf::top, 12.0, {0, 0, 500.0})});
    double strain = 0;  // of panels away from both ends
    for (std::size_t i = 8; i < 16; ++i) strain += angle_change(r, i) / 8;
    return 1000.0 / strain;
  };
  const double braced_one = stiffness(braced(alternating, tube(26.9_mm, 3.2_mm), usual_cross())),
               open_one = stiffness(open(usual_cross()));
  INFO("braced " << braced_one << " N, open " << open_one << " N");
  CHECK(open_one > 0);
  CHECK(braced_one > 10 * open_one);
}

TEST_CASE("common practice: a box without diaphragms is distorted more by a load on one side") {
  const auto distortion = [](const BoxGirder& g) {
    const Analysis a{g};
    const Response r = a.solve({point_load(ChordOf::bottom_left, 6.0, 5000.0)});
    // change of the difference between the section's two diagonals
    const double x = 6.0;
    const auto along = [&](ChordOf one, ChordOf other, const Vec3<>& way) {
      return dot(r.deflection(other, x) - r.deflection(one, x), unit(way));
    };
    return std::abs(along(ChordOf::bottom_left, ChordOf::top_right, {0, -1, 1}) -
                    along(ChordOf::bottom_right, ChordOf::top_left, {0, 1, 1}));
  };
  BoxGirder g = girder_with(usual_cross());
  const double bare = distortion(g);
  g.diaphragms = end_diaphragms(usual_cross());
  const double ends = distortion(g);
  g.diaphragms = diaphragms_every(4, usual_cross());
  const double several = distortion(g);
  INFO("without " << bare << " m, at the ends " << ends << " m, at every fourth station " << several << " m");
  CHECK(bare > ends);
  CHECK(ends > several);
  CHECK(bare > 5 * several);
}
