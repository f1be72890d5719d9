// SPDX-License-Identifier: MIT
// A straight beam for closed forms: stiffness, supports, loads.
#pragma once

#include <vector>

#include <baywork/core/error.hpp>
#include <baywork/core/scalar.hpp>

namespace baywork::closed_form {

/// A support at x [m]. It holds the beam's line with a spring [N/m] and its section's turn with another [N m/rad];
/// infinite is rigid, zero is free. `settlement` [m] is how far down its foot has gone.
template <Scalar S = double>
struct BeamSupport {
  S x = S(0);
  S stiffness = S(rigid_stiffness);
  S settlement = S(0);
  S rotational_stiffness = S(0);
};

/// A clamped end: rigid against both.
template <Scalar S>
BeamSupport<S> clamp_at(const S& x) {
  return {x, S(rigid_stiffness), S(0), S(rigid_stiffness)};
}

/// Length [m], EI [N m^2], shear stiffness [N] (infinite: no shear strain); any supports between 0 and length.
template <Scalar S = double>
struct StraightBeam {
  S length = S(0);
  S EI = S(0);
  S shear_stiffness = S(rigid_stiffness);
  std::vector<BeamSupport<S>> supports{};
};

/// P [N] down at x [m].
template <Scalar S = double>
struct BeamPointLoad {
  S P = S(0), x = S(0);
};
/// A couple at x that raises the sagging moment right of it by C [N m].
template <Scalar S = double>
struct BeamCouple {
  S C = S(0), x = S(0);
};
/// Down, from qa [N/m] at x = a to qb at x = b, straight between.
template <Scalar S = double>
struct BeamLineLoad {
  S qa = S(0), qb = S(0), a = S(0), b = S(0);
};

template <Scalar S = double>
struct BeamLoads {
  std::vector<BeamPointLoad<S>> points{};
  std::vector<BeamLineLoad<S>> lines{};
  std::vector<BeamCouple<S>> couples{};
};

/// True if the supports hold the beam against moving and turning, `without` (an index, or -1) left out.
template <Scalar S>
bool holds(const StraightBeam<S>& beam, int without = -1) {
  int lines = 0;
  int turns = 0;
  for (std::size_t i = 0; i < beam.supports.size(); ++i) {
    if (static_cast<int>(i) != without && value_of(beam.supports[i].stiffness) > 0.0) ++lines;
    if (value_of(beam.supports[i].rotational_stiffness) > 0.0) ++turns;
  }
  return lines >= 2 || (lines == 1 && turns >= 1);
}

namespace detail {
/// Throws unless lengths, stiffnesses, places and loads make sense and the beam is held.
template <class S>
void check_beam(const StraightBeam<S>& beam, const BeamLoads<S>& loads) {
  const char* const place = "beam";
  require::positive(beam.length, place, "length");
  require::positive(beam.EI, place, "bending stiffness");
  if (!is_infinite(beam.shear_stiffness)) require::positive(beam.shear_stiffness, place, "shear stiffness");
  const auto on_beam = [&](const S& x, const char* what) {
    if (!is_finite(x) || value_of(x) < 0.0 || value_of(x) > value_of(beam.length))
      fail<BadDescription>(place, std::string(what) + " is at x = " + text::number(x) + " m",
                           "places from 0 to " + text::number(beam.length) + " m are accepted");
  };
  for (std::size_t i = 0; i < beam.supports.size(); ++i) {
    const BeamSupport<S>& s = beam.supports[i];
    on_beam(s.x, "a support");
    require::stiffness(s.stiffness, place, "stiffness of a support");
    require::stiffness(s.rotational_stiffness, place, "rotational stiffness of a support");
    require::finite(s.settlement, place, "settlement of a support");
    for (std::size_t j = 0; j < i; ++j)
      if (!(magnitude(S(s.x - beam.supports[j].x)) > S(0)))
        fail<BadDescription>(place, "two supports are at x = " + text::number(s.x) + " m",
                             "one support per place is accepted");
  }
  for (const BeamPointLoad<S>& p : loads.points) {
    on_beam(p.x, "a point load");
    require::finite(p.P, place, "a point load");
  }
  for (const BeamCouple<S>& c : loads.couples) {
    on_beam(c.x, "a couple");
    require::finite(c.C, place, "a couple");
  }
  for (const BeamLineLoad<S>& q : loads.lines) {
    on_beam(q.a, "a line load");
    on_beam(q.b, "a line load");
    require::finite(q.qa, place, "a line load");
    require::finite(q.qb, place, "a line load");
    require::positive(S(q.b - q.a), place, "extent of a line load");
  }
  if (!holds(beam))
    fail<UnstableFrame>(place, "the supports let it move or turn",
                        "two supports, or one and a rotational spring, are accepted");
}
}  // namespace detail

}  // namespace baywork::closed_form
