// SPDX-License-Identifier: MIT
// Chords that a face holds together or sideways: hand calculations, an eigenvalue problem by a general library, and the
// frame solver.
#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <limits>

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <Eigen/Eigenvalues>

#include <baywork/solve/frame_solver.hpp>
#include <baywork/verify.hpp>

using namespace baywork;

namespace {

// A tube 60 x 4 mm: A = 703.717 mm², I = 277264 mm⁴ (EN 10210-2, annex B formulas).
constexpr double A = 703.717e-6, I = 277.264e-9, E = 210e9;

en1993::BuiltUp strut(bool battened) {
  return {.length = 6, .h0 = 0.5, .A_ch = A, .I_ch = I, .shear_stiffness = 1e7, .E = E, .battened = battened, .bay = 0.5};
}

/// Smallest critical load of a shear-flexible column on springs, ends held sideways and free to turn, by finite
/// elements linear in w and phi with one point for shear: potential ½ ∫ E I phi'² + S (w' - phi)² + c w² - N w'².
double by_elements(double EI, double S, double c, double L, int n) {
  const double h = L / n;
  Eigen::MatrixXd K = Eigen::MatrixXd::Zero(2 * n + 2, 2 * n + 2), G = K;
  for (int e = 0; e < n; ++e) {
    const int w = 2 * e, p = w + 1;  // then w + 2, p + 2
    Eigen::Vector4d slope(-1 / h, 0, 1 / h, 0), turn(0, 0.5, 0, 0.5), bend(0, -1 / h, 0, 1 / h);
    const Eigen::Vector4d shear = slope - turn;
    K.block<4, 4>(w, w) += h * (EI * bend * bend.transpose() + S * shear * shear.transpose());
    G.block<4, 4>(w, w) += h * slope * slope.transpose();
    for (const int a : {0, 2})
      for (const int b : {0, 2}) K(w + a, w + b) += c * h * (a == b ? 1.0 / 3 : 1.0 / 6);
    static_cast<void>(p);
  }
  const double held = 1e6 * (S / h + EI / (h * h * h));
  K(0, 0) += held;
  K(2 * n, 2 * n) += held;
  // 1/N = largest eigenvalue of K⁻¹ G
  const Eigen::LLT<Eigen::MatrixXd> k(K);
  const Eigen::MatrixXd left = k.matrixL().solve(G);
  const Eigen::MatrixXd both = k.matrixL().solve(left.transpose());
  return 1 / Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(both, Eigen::EigenvaluesOnly).eigenvalues().maxCoeff();
}

}  // namespace

TEST_CASE("EN 1993-1-1 6.4: a laced and a battened strut by hand") {
  // laced: I_eff = 0.5 · 0.5² · 703.717e-6 = 8.796463e-5 m⁴; N_cr = pi² · 210e9 · 8.796463e-5 / 36 = 5.064363e6 N;
  // e0 = 12 mm; N = 100 kN: 1 - 0.1/5.064363 - 0.1/10 = 0.9702542; M = 1200 / 0.9702542 = 1236.789 Nm;
  // N_ch = 50 kN + 1236.789 / 0.5 = 52.473577 kN; V = pi · 1236.789 / 6 = 647.5811 N
  const en1993::BuiltUpForces laced = en1993::built_up_forces(strut(false), 100e3);
  CHECK(en1993::effective_second_moment(strut(false)) == doctest::Approx(8.796463e-5).epsilon(1e-6));
  CHECK(laced.stable);
  CHECK(laced.N_cr == doctest::Approx(5.064363e6).epsilon(1e-6));
  CHECK(laced.M_Ed == doctest::Approx(1236.789).epsilon(1e-6));
  CHECK(laced.N_ch == doctest::Approx(52473.58).epsilon(1e-6));
  CHECK(laced.V_Ed == doctest::Approx(647.581).epsilon(1e-5));
  CHECK(laced.chord_moment == 0.0);
  // battened: I1 = 8.796463e-5 + 2 · 277.264e-9 = 8.851916e-5, i0 = sqrt(I1 / (2 A)) = 0.2507892 m, lambda = 23.9,
  // mu = 1, I_eff = I1: N_cr = 5.096290e6 N, 1 - 0.01962212 - 0.01 = 0.9703779, M = 1236.631 Nm, V = 647.4985 N;
  // panel moments V a/4 = 80.9373, V a/2 = 161.8746 Nm, shear V a/h0 = V
  const en1993::BuiltUpForces battened = en1993::built_up_forces(strut(true), 100e3);
  CHECK(battened.N_cr == doctest::Approx(5.096290e6).epsilon(1e-6));
  CHECK(battened.M_Ed == doctest::Approx(1236.631).epsilon(1e-6));
  CHECK(battened.chord_moment == doctest::Approx(80.9373).epsilon(1e-5));
  CHECK(battened.batten_moment == doctest::Approx(2 * battened.chord_moment));
  CHECK(battened.batten_shear == doctest::Approx(battened.V_Ed));
  // Table 6.8 (values from memory)
  CHECK(en1993::batten_efficiency(75) == 1.0);
  CHECK(en1993::batten_efficiency(100) == doctest::Approx(2.0 / 3));
  CHECK(en1993::batten_efficiency(150) == 0.0);
  // (6.73), n = 1, I_b = 1e-7: 24 · 210e9 · 277.264e-9 / (0.25 · (1 + 2 · 277.264e-9 · 0.5 / (1e-7 · 0.5))) = 853995 N;
  // with endlessly stiff battens 24 E I / a² = 5.5896e6 N is above the cap 2 pi² E I / a² = 4.59734e6 N
  CHECK(en1993::batten_shear_stiffness(E, I, 1e-7, 0.5, 0.5) == doctest::Approx(853995).epsilon(1e-5));
  CHECK(en1993::batten_shear_stiffness(E, I, 1e9, 0.5, 0.5) == doctest::Approx(4.59734e6).epsilon(1e-5));
}

TEST_CASE("EN 1993-1-1 6.4: limits, and what is refused") {
  en1993::BuiltUp b = strut(false);
  const en1993::BuiltUpForces none = en1993::built_up_forces(b, 0.0, 50.0);
  CHECK(none.M_Ed == 50.0);
  CHECK(none.N_ch == doctest::Approx(100.0));  // M / h0
  // the critical load with shear: 1/(1/N_cr + 1/S_v)
  const double N_v = 1 / (1 / none.N_cr + 1 / b.shear_stiffness);
  CHECK(en1993::built_up_forces(b, 0.999 * N_v).stable);
  const en1993::BuiltUpForces beyond = en1993::built_up_forces(b, 1.001 * N_v);
  CHECK_FALSE(beyond.stable);
  CHECK(std::isinf(beyond.M_Ed));
  CHECK(std::isinf(beyond.N_ch));
  b.length = 1.4;
  CHECK_THROWS_AS(en1993::built_up_forces(b, 1.0), OutsideScope);
  CHECK_THROWS_AS(en1993::built_up_forces(strut(true), -1.0), BadDescription);
  CHECK_THROWS_AS(en1993::built_up_forces(strut(true), std::nan("")), BadDescription);
}

TEST_CASE("EN 1993-1-1 5.3.2 and 5.3.3: imperfections by hand") {
  // h = 5 m: alpha_h = 2/sqrt(5) = 0.8944272; m = 2: alpha_m = sqrt(0.75) = 0.8660254
  CHECK(en1993::initial_sway(5, 1) == doctest::Approx(0.8944272 / 200).epsilon(1e-7));
  CHECK(en1993::initial_sway(5, 2) == doctest::Approx(0.8944272 * 0.8660254 / 200).epsilon(1e-7));
  CHECK(en1993::initial_sway(2, 1) == doctest::Approx(1.0 / 200));        // 2/sqrt(2) > 1
  CHECK(en1993::initial_sway(100, 1) == doctest::Approx(2.0 / 3 / 200));  // 2/10 < 2/3
  // two chords of 50 kN each over 6 m: e0 = 0.8660254 · 12 mm = 10.3923 mm, q = 100 kN · 8 · e0 / 36 = 230.94 N/m
  CHECK(en1993::bracing_load(100e3, 6, 2) == doctest::Approx(230.940).epsilon(1e-5));
  CHECK(en1993::bracing_load(100e3, 6, 2, 0.0103923) == doctest::Approx(2 * 230.940).epsilon(1e-5));
  CHECK(en1993::splice_force(100e3, 1) == doctest::Approx(1000.0));
}

TEST_CASE("a pair of chords on springs: against an eigenvalue problem solved by elements") {
  // EI = 210e9 · A b²/2 with b = 0.4; soft, middling and stiff springs let one, a few or many half waves govern
  const double EI = E * A * 0.08;
  for (const double S : {2e5, 2e6, 1e9})
    for (const double c : {0.0, 2e3, 5e4, 4e5}) {
      const verify::HeldPair p{.length = 12, .bay = 0.5, .width = 0.4, .E = E, .A_ch = A, .shear_stiffness = S, .restraint = c};
      const verify::CriticalLoad found = verify::critical_load(p);
      INFO("S " << S << ", c " << c << ", half waves " << found.half_waves);
      if (found.half_waves == 12) continue;  // bounded by the bays, which the elements know nothing of
      CHECK(by_elements(EI, S, c, 12, 160) == doctest::Approx(found.N_cr).epsilon(5e-3));
    }
  // many half waves of a chord that does not shear: Engesser
  const verify::HeldPair p{.length = 600, .bay = 0.1, .width = 0.4, .E = E, .A_ch = A,
                           .shear_stiffness = std::numeric_limits<double>::infinity(), .restraint = 1e5};
  CHECK(verify::critical_load(p).N_cr == doctest::Approx(2 * std::sqrt(EI * 1e5)).epsilon(2e-3));
  CHECK(verify::engesser_load(E, I, 1e5 * 0.5, 0.5) == doctest::Approx(2 * std::sqrt(E * I * 1e5)));
  // never more than shear lets through, beside what springs and the chords' own bending give
  verify::HeldPair soft = p;
  soft.shear_stiffness = 1e4;
  soft.restraint = 0;
  CHECK(verify::critical_load(soft).N_cr < 1e4);
  soft.I_ch = I;
  CHECK(verify::critical_load(soft).N_cr > E * I * 2 * 9.8696 / 360000);
}

TEST_CASE("a cross frame open at the top: against the frame solver") {
  for (const double joint : {rigid_stiffness, 4e5}) {
    const verify::CrossFrame f{.E = E, .post_height = 0.7, .I_post = I, .width = 0.5, .I_cross = 2 * I, .joint = joint};
    FrameSection post{.E = E, .G = 81e9, .A = 1.0, .Iy = I, .Iz = I, .J = I}, cross = post;
    cross.Iy = cross.Iz = 2 * I;
    Frame frame;
    for (const Vec3<>& at : {Vec3<>{0, 0, 0}, Vec3<>{0, 0.5, 0}, Vec3<>{0, 0, 0.7}, Vec3<>{0, 0.5, 0.7}}) frame.add_node(at);
    frame.add_beam(0, 1, cross);
    for (const std::size_t foot : {std::size_t{0}, std::size_t{1}}) {
      const std::size_t m = frame.add_beam(foot, foot + 2, post);
      if (joint != rigid_stiffness) frame.members[m].start.about_y = frame.members[m].start.about_z = joint;
    }
    frame.fix(0, {Motion::ux, Motion::uy, Motion::uz});
    frame.fix(1, {Motion::ux, Motion::uz});
    for (const std::size_t top : {std::size_t{2}, std::size_t{3}}) frame.fix(top, {Motion::ux});
    FrameLoads loads;
    loads.force(2, {0, -1000.0, 0});
    loads.force(3, {0, 1000.0, 0});
    const FrameAnswer a = FrameSolver(frame).solve(loads);
    const double moved = 0.5 * (a.displacement(3).y - a.displacement(2).y);
    CHECK(1000.0 / moved == doctest::Approx(verify::cross_frame_stiffness(f)).epsilon(1e-4));
  }
}
