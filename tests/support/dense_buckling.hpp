// SPDX-License-Identifier: MIT
// The least load factor at which a frame buckles, by textbook matrices and a general library's dense solver.
#pragma once

#include <cstddef>
#include <vector>

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <Eigen/Eigenvalues>

#include <baywork/frame.hpp>

/// Beams: stiffness with shear, and the geometric stiffness of cubic shapes; axial bars: those of a string. Both after
/// J. S. Przemieniecki, Theory of Matrix Structural Analysis, 5.6 and 15.2 (values from memory). Rigid joints without
/// arms, rigid supports. Every beam is cut into `pieces`, every axial bar is one.
class DenseBuckling {
 public:
  explicit DenseBuckling(const baywork::Frame& frame, std::size_t pieces = 1) : frame_(frame), pieces_(pieces) {
    nodes_ = frame.nodes.size();
    for (const baywork::Member& m : frame.members)
      if (m.kind == baywork::MemberKind::beam) nodes_ += pieces - 1;
    free_.assign(6 * nodes_, -1);
    std::vector<bool> fixed(6 * nodes_, false);
    for (const baywork::Support& s : frame.supports)
      for (std::size_t k = 0; k < 6; ++k) fixed[6 * s.node + k] = s.motion[k].kind == baywork::Restraint::Kind::fixed;
    n_ = 0;
    for (std::size_t i = 0; i < fixed.size(); ++i)
      if (!fixed[i]) free_[i] = n_++;
  }

  /// N of each member, tension positive; reference forces times the answer buckle.
  double critical_factor(const std::vector<double>& N) const {
    const auto [K, G] = assembled(N);
    const Eigen::LLT<Eigen::MatrixXd> k(K);
    const Eigen::MatrixXd left = k.matrixL().solve(G);
    const Eigen::MatrixXd both = k.matrixL().solve(left.transpose());
    return -1.0 / Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(both, Eigen::EigenvaluesOnly).eigenvalues()[0];
  }

  /// Motions of all nodes, six each, of second order under the forces N alone, from an unstrained frame whose nodes lie
  /// off by `bow` (and are turned with it): (K + G) u = -G bow.
  Eigen::VectorXd second_order(const std::vector<double>& N, const Eigen::VectorXd& bow) const {
    const auto [K, G] = assembled(N);
    Eigen::VectorXd start(n_), out = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(6 * nodes_));
    for (std::size_t i = 0; i < free_.size(); ++i)
      if (free_[i] >= 0) start[free_[i]] = bow[static_cast<Eigen::Index>(i)];
    const Eigen::VectorXd u = Eigen::LLT<Eigen::MatrixXd>(K + G).solve(-G * start);
    for (std::size_t i = 0; i < free_.size(); ++i)
      if (free_[i] >= 0) out[static_cast<Eigen::Index>(i)] = u[free_[i]];
    return out;
  }

 private:
  struct Assembled {
    Eigen::MatrixXd K, G;
  };
  Assembled assembled(const std::vector<double>& N) const {
    Assembled out{Eigen::MatrixXd::Zero(n_, n_), Eigen::MatrixXd::Zero(n_, n_)};
    std::size_t next = frame_.nodes.size();
    for (std::size_t i = 0; i < frame_.members.size(); ++i) {
      const baywork::Member& m = frame_.members[i];
      const std::size_t cuts = m.kind == baywork::MemberKind::beam ? pieces_ : 1;
      std::size_t from = m.from;
      for (std::size_t c = 0; c < cuts; ++c) {
        const std::size_t to = c + 1 == cuts ? m.to : next++;
        add(m, from, to, static_cast<double>(cuts), N[i], out.K, out.G);
        from = to;
      }
    }
    return out;
  }

  using Matrix = Eigen::Matrix<double, 12, 12>;

  static void put(Matrix& k, int i, int j, double v) { k(i, j) = k(j, i) = v; }
  /// Bending in the plane of motion v (1 or 2) and turn r (5 or 4); s = +1 where v' = r, -1 where v' = -r.
  static void bend(Matrix& k, int v, int r, double s, double a, double b, double c, double d) {
    put(k, v, v, a), put(k, v + 6, v + 6, a), put(k, v, v + 6, -a);
    put(k, v, r, s * b), put(k, v, r + 6, s * b), put(k, v + 6, r, -s * b), put(k, v + 6, r + 6, -s * b);
    put(k, r, r, c), put(k, r + 6, r + 6, c), put(k, r, r + 6, d);
  }

  void add(const baywork::Member& m, std::size_t from, std::size_t to, double cuts, double N, Eigen::MatrixXd& K,
           Eigen::MatrixXd& G) const {
    const auto axes = baywork::axes_of(frame_, m);
    const baywork::FrameSection& s = m.section;
    const double L = axes.length / cuts;
    Matrix k = Matrix::Zero(), g = Matrix::Zero();
    put(k, 0, 0, s.E * s.A / L), put(k, 6, 6, s.E * s.A / L), put(k, 0, 6, -s.E * s.A / L);
    if (m.kind == baywork::MemberKind::beam) {
      put(k, 3, 3, s.G * s.J / L), put(k, 9, 9, s.G * s.J / L), put(k, 3, 9, -s.G * s.J / L);
      const auto plane = [&](int v, int r, double sign, double EI, double GA) {
        const double phi = 12 * EI / (GA * L * L), f = EI / (L * (1 + phi));  // GA infinite: phi = 0
        bend(k, v, r, sign, 12 * f / (L * L), 6 * f / L, (4 + phi) * f, (2 - phi) * f);
        bend(g, v, r, sign, 6 * N / (5 * L), N / 10, 2 * N * L / 15, -N * L / 30);
      };
      plane(1, 5, 1, s.E * s.Iz, s.G * s.shear_y);
      plane(2, 4, -1, s.E * s.Iy, s.G * s.shear_z);
    } else {
      for (const int v : {1, 2}) put(g, v, v, N / L), put(g, v + 6, v + 6, N / L), put(g, v, v + 6, -N / L);
    }
    Eigen::Matrix3d t;
    t << axes.x.x, axes.x.y, axes.x.z, axes.y.x, axes.y.y, axes.y.z, axes.z.x, axes.z.y, axes.z.z;
    Matrix T = Matrix::Zero();
    for (const int i : {0, 3, 6, 9}) T.block<3, 3>(i, i) = t;
    const Matrix kg = T.transpose() * k * T, gg = T.transpose() * g * T;
    const auto at = [&](int i) { return free_[6 * (i < 6 ? from : to) + static_cast<std::size_t>(i % 6)]; };
    for (int i = 0; i < 12; ++i)
      for (int j = 0; j < 12; ++j)
        if (at(i) >= 0 && at(j) >= 0) K(at(i), at(j)) += kg(i, j), G(at(i), at(j)) += gg(i, j);
  }

  const baywork::Frame& frame_;
  std::size_t pieces_, nodes_ = 0;
  Eigen::Index n_ = 0;
  std::vector<Eigen::Index> free_;
};
