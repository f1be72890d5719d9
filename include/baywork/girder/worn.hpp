// SPDX-License-Identifier: MIT
// Bars that have lost a part of their wall to wear.
#pragma once

#include <baywork/girder/bar.hpp>
#include <baywork/section/rectangular_hollow.hpp>
#include <baywork/section/round_tube.hpp>

namespace baywork {

/// The tube with the share `loss` of its wall gone from the outside, all round: least stiffness and least resistance
/// for a given wall. The metal keeps the strength of the wall it was made with, also where the table gives thinner
/// walls more. What is lighter is analysed so: loads that help by their weight are the lesser for it. Discard limits
/// are often 10 % of the wall (common practice).
inline Bar worn(const Bar& bar, double loss) {
  const SectionData<double>& s = bar.section;
  const std::string place = "worn " + (bar.given ? s.designation : std::string("bar"));
  if (!(loss >= 0.0) || !(loss < 1.0))
    fail<BadDescription>(place, "the share of its wall that is lost is " + text::number(loss),
                         "0 to below 1 is accepted");
  if (s.kind != ShapeKind::round_tube && s.kind != ShapeKind::rectangular_hollow)
    fail<BadDescription>(place, "it is not a hollow section",
                         "round tubes and rectangular hollow sections are accepted");
  if (loss == 0.0) return bar;

  material::Material metal = bar.material;
  if (!metal.steps.empty()) metal.steps = {bar.strength};
  const double off = loss * s.wall, wall = s.wall - off;
  Bar out;
  if (s.kind == ShapeKind::round_tube) {
    out = Bar(RoundTube<double>{s.height - 2.0 * off, wall}, metal);
  } else {
    // perimeter = 2 (h + b) - 2 (4 - pi) r tells the outer radius
    const double radius = (2.0 * (s.height + s.width) - s.perimeter) / (2.0 * (4.0 - pi_v<double>));
    out = Bar(RectangularHollow<double>{s.height - 2.0 * off, s.width - 2.0 * off, wall,
                                        corners_of_radii(larger(0.0, radius - off), s.inner_radius)},
              metal);
  }
  out.along = bar.along;
  out.across = bar.across;
  out.section.designation += " (worn from " + s.designation + ")";
  return out;
}

}  // namespace baywork
