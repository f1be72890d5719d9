// SPDX-License-Identifier: MIT
// Joints of round tubes in aluminium. No clause of EN 1999-1-1 gives them: engineering judgement, needs a test.
#pragma once

#include <baywork/verify/en1993_joint.hpp>
#include <baywork/verify/en1999_class.hpp>

namespace baywork::en1999 {

/// What every aluminium joint row is to say of itself.
inline constexpr const char* joint_label = "engineering judgement, needs a test";

/// What a joint asks of the metal beside its welds, and of the parent metal for its class [Pa].
struct JointMetal {
  double fo_haz = 0, fu_haz = 0;  ///< f_o,haz and f_u,haz of the chord
  double fo0 = 0, fo1 = 0;        ///< f_o of chord and brace
  double E = 70e9;
  material::BucklingClass class0 = material::BucklingClass::a, class1 = material::BucklingClass::a;
  Welded softened = Welded::yes;  ///< no: annealed metal
};

/// A steel joint deforms with f / E: 0.9 is asked for above 355 MPa, and above 460 MPa nothing was tested. An aluminium
/// face reaches the deformation of a steel of strength f at f E / 210 GPa, so it is asked for there as well.
inline double steel_of_equal_strain(const JointMetal& m) { return m.fo_haz * 210e9 / m.E; }

/// The formulas of EN 1993-1-8 with weld-zone strengths: f_o,haz / gamma_M1 for the chord's face, and for punching the
/// lesser of that and f_u,haz / gamma_M2. The chord's compression is compared with f_o,haz, as it is softened all
/// round. Tubes of class 1 or 2 (EN 1999-1-1 6.1.4, welded walls). Engineering judgement, needs a test.
inline en1993::JointResistance joint_resistance(const verify::TubeJoint& j, const verify::ChordForces& chord,
                                                const JointMetal& m, const PartialFactors& factors = {}) {
  using verify::JointScope;
  const JointScope geometry = verify::geometric_scope(j);
  if (geometry != JointScope::covered) return en1993::detail::outside(geometry);
  if (!(m.fo_haz > 0.0 && m.fu_haz > 0.0 && m.fo0 > 0.0 && m.fo1 > 0.0 && m.E > 0.0 && factors.gamma_M1 > 0.0 &&
        factors.gamma_M2 > 0.0))
    return en1993::detail::outside(JointScope::bad_strength);
  if (m.class0 == material::BucklingClass::none || m.class1 == material::BucklingClass::none)
    return en1993::detail::outside(JointScope::section_class);
  const double like_steel = steel_of_equal_strain(m);
  if (en1993::detail::out_of_steel(like_steel)) return en1993::detail::outside(JointScope::strong_metal);
  const auto class_of = [&](double d, double t, double fo, material::BucklingClass c) {
    return classify(tube_slenderness(d, t), fo, class_limits(c, m.softened, false)).class_;
  };
  if (class_of(j.d0, j.t0, m.fo0, m.class0) > 2 || class_of(j.d1, j.t1, m.fo1, m.class1) > 2)
    return en1993::detail::outside(JointScope::section_class);
  const double face = m.fo_haz / factors.gamma_M1;
  return en1993::under_compression(en1993::unstressed_joint(j, face, smaller(face, m.fu_haz / factors.gamma_M2),
                                                            j.planes * en1993::detail::strong_steel_factor(like_steel)),
                                   verify::chord_compression(j, chord) / face);
}

namespace detail {
inline verify::ClauseRow judged(verify::ClauseRow row, const char* clause) {
  row.clause = clause;
  return row;
}
}  // namespace detail

inline verify::ClauseRow joint_axial(const en1993::JointResistance& r, double N) {
  return detail::judged(en1993::joint_axial(r, N),
                        "EN 1993-1-8 7.4.2 Table 7.2 with f_haz, engineering judgement, needs a test");
}
inline verify::ClauseRow joint_in_plane(const en1993::JointResistance& r, double M_ip) {
  return detail::judged(en1993::joint_in_plane(r, M_ip),
                        "EN 1993-1-8 7.4.2 Table 7.5 with f_haz, engineering judgement, needs a test");
}
inline verify::ClauseRow joint_out_of_plane(const en1993::JointResistance& r, double M_op) {
  return detail::judged(en1993::joint_out_of_plane(r, M_op),
                        "EN 1993-1-8 7.4.2 Table 7.5 with f_haz, engineering judgement, needs a test");
}
inline verify::ClauseRow joint_interaction(const en1993::JointResistance& r, const verify::BraceForces& f) {
  return detail::judged(en1993::joint_interaction(r, f),
                        "EN 1993-1-8 7.4.2 (7.3) with f_haz, engineering judgement, needs a test");
}

}  // namespace baywork::en1999
