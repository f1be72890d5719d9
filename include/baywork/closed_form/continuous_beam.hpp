// SPDX-License-Identifier: MIT
// A shear-flexible beam of constant stiffness on any supports under any loads, exact at every x.
#pragma once

#include <cstdint>
#include <vector>

#include <baywork/closed_form/beam_loads.hpp>
#include <baywork/closed_form/formula.hpp>
#include <baywork/closed_form/small_equations.hpp>

namespace baywork::closed_form {

/// Which side of x is meant where a force or couple makes a step.
enum class StepSide : std::uint8_t { before, after };

/// Timoshenko beam on supports. Signs: loads, settlements and deflection w down; reactions up; sagging moment positive;
/// V = dM/dx; the section's turn t with dt/dx = -M/EI, and dw/dx = t + V/S. SI units.
///
/// Every force c gives M = c <x - a>, and loads spread or ramped give the higher powers of Macaulay's bracket; with
/// <r>^n = (r^n + sign(r) r^n)/2 the polynomials r^n of all forces together are a straight line as soon as the forces
/// balance. So the half sign(r) r^n/2 alone is kept: it is symmetric from left to right and loses no digits over many
/// spans. Unknown are the reactions, the clamp couples and the straight line; the equations are the balance of forces
/// and moments and, at each support, w = settlement + R/k and t = -C/k_turn.
/// Source: W. H. Macaulay, Messenger of Mathematics 48 (1919) for the bracket; shear after S. Timoshenko (values from
/// memory); derived here. Range: small displacements, constant EI and S.
template <Scalar S = double>
class ContinuousBeam {
 public:
  ContinuousBeam(const StraightBeam<S>& beam, const BeamLoads<S>& loads) : beam_(beam) {
    detail::check_beam(beam, loads);
    shear_ = S(beam.EI / (beam.length * beam.length) * detail::flexibility(beam.shear_stiffness));
    add_loads(loads);
    find_unknowns();
  }

  /// Force of support i on the beam, up [N].
  const S& reaction(std::size_t i) const { return reactions_[i]; }
  /// Couple of support i: the step that it makes in the sagging moment [N m].
  const S& support_couple(std::size_t i) const { return couples_[i]; }

  /// Downward deflection [m].
  S deflection(const S& x) const { return S(w(at(x)) * detail::cube(beam_.length) / beam_.EI); }
  /// Turn of the section, positive where it goes down with x [rad].
  S rotation(const S& x) const { return S(turn(at(x)) * beam_.length * beam_.length / beam_.EI); }
  /// Sagging moment [N m].
  S moment(const S& x, StepSide side = StepSide::after) const {
    const S r = at(x);
    S sum = S(0);
    for (const Term& t : terms_) sum += S(t.c * half_bracket(S(r - t.a), t.n, sign_at_step(r, side)));
    return S(sum * beam_.length);
  }
  /// Shear force, positive if the part left of x pushes up [N].
  S shear(const S& x, StepSide side = StepSide::after) const {
    const S r = at(x);
    S sum = S(0);
    for (const Term& t : terms_)
      if (t.n > 0) sum += S(t.c * half_bracket(S(r - t.a), t.n - 1, sign_at_step(r, side)));
    return sum;
  }

 private:
  /// c <r - a>^n/n! in the moment, in units of length L and stiffness EI: n = 0 couple, 1 force, 2 spread, 3 ramp.
  struct Term {
    S c;
    S a;
    int n;
  };

  /// sign(r) r^n/(2 n!), with the given sign at r = 0.
  static S half_bracket(const S& r, int n, double sign_at_zero) {
    const double v = value_of(r);
    S p = S(v > 0.0 ? 0.5 : (v < 0.0 ? -0.5 : 0.5 * sign_at_zero));
    for (int i = 1; i <= n; ++i) p = S(p * r / S(i));
    return p;
  }
  /// At the beam's ends the side inside the beam is always meant.
  static double sign_at_step(const S& r, StepSide side) {
    if (value_of(r) <= 0.0) return 1.0;
    if (value_of(r) >= 1.0) return -1.0;
    return side == StepSide::after ? 1.0 : -1.0;
  }
  S at(const S& x) const {
    if (!is_finite(x) || value_of(x) < 0.0 || value_of(x) > value_of(beam_.length))
      fail<BadDescription>("beam", "x is " + text::number(x) + " m",
                           "places from 0 to " + text::number(beam_.length) + " m are accepted");
    return S(x / beam_.length);
  }
  /// What one term gives to w and to the turn at r, without the straight line.
  S w_of(const S& r, const Term& t) const {
    S sum = S(-half_bracket(S(r - t.a), t.n + 2, 0.0));
    if (t.n > 0) sum += S(shear_ * half_bracket(S(r - t.a), t.n, 0.0));
    return S(t.c * sum);
  }
  static S turn_of(const S& r, const Term& t) { return S(-t.c * half_bracket(S(r - t.a), t.n + 1, 0.0)); }
  S w(const S& r) const {
    S sum = S(line_w_ + line_turn_ * r);
    for (const Term& t : terms_) sum += w_of(r, t);
    return sum;
  }
  S turn(const S& r) const {
    S sum = line_turn_;
    for (const Term& t : terms_) sum += turn_of(r, t);
    return sum;
  }

  void add_loads(const BeamLoads<S>& loads) {
    const S L = beam_.length;
    for (const BeamPointLoad<S>& p : loads.points) {
      terms_.push_back({S(-p.P), S(p.x / L), 1});
      down_ += p.P;
      turning_ += S(p.P * p.x / L);
    }
    for (const BeamCouple<S>& c : loads.couples) {
      terms_.push_back({S(c.C / L), S(c.x / L), 0});
      turning_ += S(c.C / L);
    }
    for (const BeamLineLoad<S>& q : loads.lines) {
      const S a = S(q.a / L);
      const S b = S(q.b / L);
      const S ramp = S((q.qb - q.qa) / (b - a) * L);
      terms_.push_back({S(-q.qa * L), a, 2});
      terms_.push_back({S(-ramp), a, 3});
      terms_.push_back({S(q.qb * L), b, 2});
      terms_.push_back({ramp, b, 3});
      const S width = S(b - a);
      down_ += S((q.qa + q.qb) * width * L / S(2));
      turning_ += S((q.qa + q.qb) * width * L / S(2) * a + (q.qa + S(2) * q.qb) * width * width * L / S(6));
    }
  }

  void find_unknowns() {
    const std::vector<BeamSupport<S>>& supports = beam_.supports;
    struct Unknown {
      std::size_t support;
      bool is_couple;
      Term term;
    };
    std::vector<Unknown> unknowns;
    for (std::size_t i = 0; i < supports.size(); ++i) {
      const S a = S(supports[i].x / beam_.length);
      if (value_of(supports[i].stiffness) > 0.0) unknowns.push_back({i, false, {S(1), a, 1}});
      if (value_of(supports[i].rotational_stiffness) > 0.0) unknowns.push_back({i, true, {S(1), a, 0}});
    }
    const std::size_t m = unknowns.size();
    std::vector<std::vector<S>> A(m + 2, std::vector<S>(m + 2, S(0)));
    std::vector<S> b(m + 2, S(0));
    const S unit_w = S(beam_.EI / detail::cube(beam_.length));
    const S unit_turn = S(beam_.EI / beam_.length);
    for (std::size_t i = 0; i < m; ++i) {
      const BeamSupport<S>& s = supports[unknowns[i].support];
      const bool couple = unknowns[i].is_couple;
      const S r = unknowns[i].term.a;
      for (std::size_t j = 0; j < m; ++j) A[i][j] = couple ? turn_of(r, unknowns[j].term) : w_of(r, unknowns[j].term);
      for (const Term& t : terms_) b[i] = S(b[i] - (couple ? turn_of(r, t) : w_of(r, t)));
      if (couple) {
        A[i][i] = S(A[i][i] + unit_turn * detail::flexibility(s.rotational_stiffness));
        A[i][m + 1] = S(1);
      } else {
        A[i][i] = S(A[i][i] - unit_w * detail::flexibility(s.stiffness));
        A[i][m] = S(1);
        A[i][m + 1] = r;
        b[i] = S(b[i] + unit_w * s.settlement);
      }
      // Balance: sum R = loads down; sum (R a) - sum C = moment of the loads about x = 0.
      A[m][i] = S(couple ? 0 : 1);
      A[m + 1][i] = couple ? S(-1) : r;
    }
    b[m] = down_;
    b[m + 1] = turning_;
    const std::vector<S> x = detail::solve_small(A, b);
    reactions_.assign(supports.size(), S(0));
    couples_.assign(supports.size(), S(0));
    for (std::size_t i = 0; i < m; ++i) {
      Term t = unknowns[i].term;
      t.c = x[i];
      terms_.push_back(t);
      if (unknowns[i].is_couple)
        couples_[unknowns[i].support] = S(x[i] * beam_.length);
      else
        reactions_[unknowns[i].support] = x[i];
    }
    line_w_ = x[m];
    line_turn_ = x[m + 1];
  }

  StraightBeam<S> beam_;
  S shear_ = S(0);  ///< EI/(S L^2)
  std::vector<Term> terms_;
  std::vector<S> reactions_, couples_;
  S down_ = S(0), turning_ = S(0);  ///< loads: sum, and moment about x = 0 over L
  S line_w_ = S(0), line_turn_ = S(0);
};

/// How far down the foot of support i must be for its reaction to be zero [m]: R_i(0)/c, with c the loss of reaction
/// per unit settlement; lower than that, a support that only pushes (or a sling) is slack. The support's own settlement
/// does not count, all others' do. Not valid (value 0) where the beam needs the support: its reaction then does not
/// change.
template <Scalar S>
ClosedForm<S> slack_settlement(StraightBeam<S> beam, const BeamLoads<S>& loads, std::size_t i) {
  if (i >= beam.supports.size())
    fail<BadDescription>("beam", "there is no support " + std::to_string(i + 1),
                         "supports 1 to " + std::to_string(beam.supports.size()) + " are accepted");
  ClosedForm<S> out;
  out.formula = "{R}/{c}";
  out.range = "a support that the beam can do without";
  out.valid = value_of(beam.supports[i].stiffness) > 0.0 && holds(beam, static_cast<int>(i));
  if (!out.valid) return out;
  beam.supports[i].settlement = S(0);
  const S R = ContinuousBeam<S>(beam, loads).reaction(i);
  for (BeamSupport<S>& s : beam.supports) s.settlement = S(0);
  // A settlement of the beam's own size keeps the loss of reaction in proportion to the others.
  const S unit = beam.length;
  beam.supports[i].settlement = unit;
  const S c = S(-ContinuousBeam<S>(beam, BeamLoads<S>{}).reaction(i) / unit);
  out.value = S(R / c);
  out.numbers = {{"R", value_of(R)}, {"c", value_of(c)}};
  return out;
}

}  // namespace baywork::closed_form
