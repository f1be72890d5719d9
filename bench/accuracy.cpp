// SPDX-License-Identifier: MIT
// How many digits each method leaves, against a solution in twofold numbers: mid-span deflection and member forces.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <exception>
#include <fstream>
#include <string>
#include <vector>

#include <baywork/solve/frame_solver.hpp>

#include "support/methods.hpp"
#include "support/reference.hpp"

namespace {

using namespace bench;

struct Error {
  std::string method;
  double deflection = 0, forces = 0;
  std::string failure;  ///< empty: it has an answer
};

/// Deflection against the true one; forces and moments each against the largest of their kind, the worse of the two.
Error error_of(const std::string& method, const Job& job, const Reference& right, const std::vector<double>& motions,
               const std::vector<std::array<double, 12>>& forces) {
  Error e{method, 0, 0, ""};
  const std::size_t at = 6 * job.mid_node + 2;
  e.deflection = std::abs((Wide(motions[at]) - right.motions[at]).value() / right.motions[at].value());
  std::array<double, 2> worst{}, largest{};
  for (std::size_t i = 0; i < forces.size(); ++i)
    for (std::size_t k = 0; k < 12; ++k) {
      const std::size_t kind = k % 6 < 3 ? 0 : 1;
      const double d = std::abs(forces[i][k] - right.forces[i][k]);
      worst[kind] = std::isnan(d) ? INFINITY : (std::max)(worst[kind], d);
      largest[kind] = (std::max)(largest[kind], std::abs(right.forces[i][k]));
    }
  e.forces = (std::max)(worst[0] / largest[0], worst[1] / largest[1]);
  return e;
}

Error error_of_answer(const std::string& method, const Job& job, const Reference& right, const FrameAnswer& a) {
  std::vector<std::array<double, 12>> forces(a.members.size());
  for (std::size_t i = 0; i < forces.size(); ++i) {
    std::copy(a.members[i].start.begin(), a.members[i].start.end(), forces[i].begin());
    std::copy(a.members[i].end.begin(), a.members[i].end.end(), forces[i].begin() + 6);
  }
  return error_of(method, job, right, a.motions, forces);
}

/// Displacements by M, member forces from them in double as usual; or M's own answer where it gives one.
template <bench::Method M>
Error measured(const Job& job, const Reference& right) {
  M method(job);
  if (!method.good()) return {M::name, 0, 0, "not positive definite"};
  if constexpr (requires {
                  { method.answer(job.loads) } -> std::convertible_to<FrameAnswer>;
                }) {
    return error_of_answer(M::name, job, right, method.answer(job.loads));
  } else {
    const std::vector<double> b = job.right_hand_sides(method.number(), length_of(method), 1);
    std::vector<double> x(b.size(), 0.0);
    method.solve(b.data(), x.data(), 1);
    std::vector<double> motions(method.number().size(), 0.0);
    for (std::size_t i = 0; i < motions.size(); ++i)
      if (const int at = method.number()[i]; at >= 0) motions[i] = x[static_cast<std::size_t>(at)];
    const Prepared& p = job.prepared;
    std::vector<std::array<double, 12>> forces;
    forces.reserve(p.frame.members.size());
    for (std::size_t i = 0; i < p.frame.members.size(); ++i) {
      const Member& m = p.frame.members[i];
      forces.push_back(end_forces(plain_of(p, p.sort_of[i]), &motions[6 * m.from], &motions[6 * m.to]));
    }
    return error_of(M::name, job, right, motions, forces);
  }
}

std::string words(const Error& e, double Error::*what) {
  if (!e.failure.empty()) return e.failure;
  char text[32];
  std::snprintf(text, sizeof text, "%.1e", e.*what);
  return text;
}

void measure(Kind kind, const std::vector<std::size_t>& bays, std::ofstream& csv) {
  for (const std::size_t n : bays) {
    const Job job(kind, n);
    const Reference right(job);
    std::printf("\n%s, %zu bays: ", name(kind), n);
    if (!right.found) {
      std::printf("no reference (last correction %.1e)\n", right.last_correction);
      continue;
    }
    std::printf("deflection %.6e m, last correction of the reference %.0e\n",
                right.motions[6 * job.mid_node + 2].value(), right.last_correction);
    std::vector<Error> errors;
    for_each_method([&]<class M>() { errors.push_back(measured<M>(job, right)); });
    std::printf("  %-28s %-22s %s\n", "", "mid-span deflection", "member forces");
    for (const Error& e : errors) {
      std::printf("  %-28s %-22s %s\n", e.method.c_str(), words(e, &Error::deflection).c_str(),
                  e.failure.empty() ? words(e, &Error::forces).c_str() : "");
      if (csv.is_open())
        csv << name(kind) << ',' << e.method << ',' << n << ','
            << (e.failure.empty() ? words(e, &Error::deflection) + ',' + words(e, &Error::forces)
                                  : std::string("none,none"))
            << '\n';
    }
    std::fflush(stdout);
  }
}

}  // namespace

int main(int argc, char** argv) try {
  use_one_thread();
  std::vector<std::size_t> bays{10, 40, 160, 1000, 10000};
  std::ofstream csv;
  for (int i = 1; i < argc; ++i) {
    const std::string a = argv[i];
    if (a == "--long") {
      bays.push_back(100000);
    } else if (a == "--short") {
      bays = {10, 40, 160};
    } else if (a.rfind("--csv=", 0) == 0) {
      csv.open(a.substr(6));
      csv << "girder,method,bays,deflection,forces\n";
    } else {
      std::fprintf(stderr, "usage: bench_accuracy [--short | --long] [--csv=FILE]\n");
      return 1;
    }
  }
  std::printf("Relative errors; forces and moments against the largest of their kind. With %s.\n", libraries());
  for (const Kind k : {Kind::box, Kind::irregular, Kind::tapered, Kind::curved, Kind::arched, Kind::many_supports})
    measure(k, bays, csv);
  return 0;
} catch (const std::exception& e) {
  std::fprintf(stderr, "bench_accuracy: %s\n", e.what());
  return 1;
}
