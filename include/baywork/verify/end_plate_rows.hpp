// SPDX-License-Identifier: MIT
// The rows of bolted end plates.
#pragma once

#include <cmath>

#include <baywork/verify/bolted.hpp>
#include <baywork/verify/splice_rows.hpp>

namespace baywork::verify::detail {

inline constexpr const char* aluminium_plate =
    "EN 1993-1-8 with the strength beside welds: engineering judgement, EN 1999-1-1 Annex B has its own T-stub";

inline en1993::TStub end_plate_stub(const SpliceSite& at, const BoltedEndPlate& c) {
  en1993::TStub s = en1993::end_plate_stub(c, at.chord.section.height);
  s.f_web = s.f_bolt = part_strength(c.plate_material, c.plate, is_aluminium(c.plate_material), at.basis).f;
  s.F_t = 2.0 * en1993::bolt_tension(c.bolt, at.basis.steel.gamma_M2);
  return s;
}

inline const char* end_plate_outside(const SpliceSite& at, const BoltedEndPlate& c) {
  const char* why = unknown_metal({&c.plate_material});
  if (why[0] == '\0') why = splice_weld_outside(at, c.plate_material, c.plate, c.throat);
  if (why[0] != '\0') return why;
  const double head = 0.5 * c.bolt.head;
  return end_plate_stub(at, c).m < head ? "splice: bolts are so near the chord that head or nut stand on the weld" : "";
}

inline void add_end_plate_rows(const SpliceSite& at, const BoltedEndPlate& c, const SectionForces& f) {
  const double gamma = at.basis.steel.gamma_M2, gamma_plate = gamma_M2(c.plate_material, at.basis);
  const char* label = is_aluminium(c.plate_material) ? aluminium_plate : "";
  const en1993::TStub stub = end_plate_stub(at, c);
  const PartStrength plate = part_strength(c.plate_material, c.plate, is_aluminium(c.plate_material), at.basis);
  const en1993::BoltCircle circle{c.bolts, c.bolt_circle};
  const double M = std::hypot(f.My, f.Mz) + magnitude(f.N) * c.eccentricity, V = std::hypot(f.Vy, f.Vz);
  const double F_t = circle.tension(f.N, M), F_v = circle.shear(V, f.T), F_T = 0.5 * stub.resistance();
  const double n = static_cast<double>(c.bolts), F_t_Rd = en1993::bolt_tension(c.bolt, gamma);
  const Number tension{"F_t,Ed", F_t, kilonewton}, shear{"F_v,Ed", F_v, kilonewton},
      eccentric{"e", c.eccentricity, metre};

  add_row(at, compare(F_t, F_T, en1993::t_stub_clause), "({a}/{b} + 4*{c}/({b}*{d}))/{e}",
          {{"N_Ed", f.N, kilonewton},
           {"n", n, plain},
           {"M_Ed", M, kilonewton_metre},
           {"D", c.bolt_circle, metre},
           {"F_T,Rd", F_T, kilonewton},
           {"mode", static_cast<double>(stub.mode()), plain},
           {"m", stub.m, metre},
           {"n of the stub", stub.n(), metre},
           {"l_eff,1", stub.l_eff_1(), metre},
           {"F_t,Rd", F_t_Rd, kilonewton},
           eccentric},
          label);
  // prying is in the bolt: at the stub's resistance it carries no more than F_t,Rd
  const double with_prying = F_t * F_t_Rd / F_T, F_v_Rd = en1993::bolt_shear(c.bolt, gamma);
  add_row(at, en1993::bolt_interaction(F_v, with_prying, c.bolt, gamma), "{a}/{b} + {c}/(1.4*{d})",
          {shear,
           {"F_v,Rd", F_v_Rd, kilonewton},
           tension,
           {"F_T,Rd", F_T, kilonewton},
           {"V", V, kilonewton},
           {"T", f.T, kilonewton_metre}},
          "bolt in shear and tension, prying with it");
  const double B = en1993::bolt_punching(c.bolt, c.plate, plate.fu, gamma_plate);
  add_row(at, compare(with_prying, B, en1993::bolt_clause), "{a}*{b}/({c}*{d})",
          {tension, {"F_t,Rd", F_t_Rd, kilonewton}, {"F_T,Rd", F_T, kilonewton}, {"B_p,Rd", B, kilonewton}},
          "bolt's head through the plate, prying with it");
  const double edge = smaller(stub.e, 0.5 * pi_v<double> * c.bolt_circle / n);
  const double F_b = en1993::bolt_bearing(c.bolt, c.hole, edge, edge, c.plate, plate.fu, gamma_plate);
  add_row(at, compare(F_v, F_b, en1993::bolt_clause), "{a}/{b}",
          {shear, {"F_b,Rd", F_b, kilonewton}, {"t", c.plate, metre}, {"e_1, e_2", edge, metre}}, "plate in bearing");

  SectionForces weld = f;
  weld.My = M;
  weld.Mz = 0;
  add_splice_weld(at, c.plate_material, c.plate, c.throat, weld);
  if (c.eccentricity == 0.0) return;
  const SectionData<double>& s = at.chord.section;
  const PartStrength wall = part_strength(at.chord.material, s.wall, is_aluminium(at.chord.material), at.basis);
  add_row(at, interaction_row(magnitude(f.N) / (s.area * wall.f) + M / (s.Wel_y * wall.f), "EN 1993-1-1 6.2.1 (7)"),
          "{a}/{b} + {c}/{d}",
          {{"N_Ed", magnitude(f.N), kilonewton},
           {"N_Rd", s.area * wall.f, kilonewton},
           {"M_Ed", M, kilonewton_metre},
           {"M_Rd", s.Wel_y * wall.f, kilonewton_metre},
           eccentric},
          "chord at the plate with the moment N e, elastic");
}

}  // namespace baywork::verify::detail
