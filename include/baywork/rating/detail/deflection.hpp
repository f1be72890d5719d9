// SPDX-License-Identifier: MIT
// Deflections that grow with a load factor, at the chords' joints and in the middle of their bays, slack of splices
// with them.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>
#include <vector>

#include <baywork/rating/terms.hpp>
#include <baywork/response/cases.hpp>
#include <baywork/response/slack_sag.hpp>
#include <baywork/verify/found.hpp>

namespace baywork::rating::detail {

/// What deflections ask of a solved load; straight in it.
struct Motion {
  std::vector<Vec3<>> points;  ///< elastic; all chords at both ends and in the middle of every bay
  std::vector<double> pulls;   ///< N in every connector with slack
  double size = 0;             ///< at least every bar's axial force, in which the solver's rounding is known

  void add(double f, const Motion& m) {
    for (std::size_t p = 0; p < points.size(); ++p) points[p] += f * m.points[p];
    for (std::size_t c = 0; c < pulls.size(); ++c) pulls[c] += f * m.pulls[c];
    size += magnitude(f) * m.size;
  }
};

/// Of one service combination, without the load asked for.
struct DeflectionLine {
  double factor = 0;  ///< of the load asked for
  Motion placed, permanent;
};

/// Splices with slack open by it wherever they pull (slack_sag()); each then moves the whole girder by a motion of its
/// own, and these add up. What variable loads deflect is what all do less what permanent loads do alone, so that slack
/// which these have opened before is no part of it.
class Deflections {
 public:
  Deflections() = default;
  Deflections(const Analysis& analysis, const Cases* placed, const std::vector<CaseKind>& kinds,
              const CombinationSet& service)
      : analysis_(&analysis) {
    find_openings();
    std::vector<Motion> of_case;
    for (std::size_t i = 0; i + 1 < kinds.size(); ++i) of_case.push_back(motion((*placed)[i]));
    for (const Combination& c : combinations(service, kinds)) {
      DeflectionLine line{c.factors.back(), none(), none()};
      for (std::size_t i = 0; i + 1 < kinds.size(); ++i) {
        line.placed.add(c.factors[i], of_case[i]);
        if (kinds[i].nature == Nature::permanent) line.permanent.add(c.factors[i], of_case[i]);
      }
      lines_.push_back(std::move(line));
    }
  }

  Motion motion(const Response& r) const {
    Motion out;
    for_each_point([&](std::size_t s, std::size_t c, bool middle) {
      out.points.push_back(middle ? r.member(r.model().chord_member(s, c)).displacement(fraction{0.5})
                                  : r.answer().displacement(r.model().chord_node(s, c)));
    });
    for (const Opening& o : openings_) out.pulls.push_back(verify::detail::cut_at_end(r, o.member, false).N);
    for (const MemberAnswer& m : r.answer().members) out.size = larger(out.size, magnitude(m.start[0]));
    return out;
  }

  /// Greatest displacement [m] of any point in any service combination at a load factor.
  double at(const Motion& load, DeflectionOf of, double factor) const {
    double most = 0;
    for (const DeflectionLine& l : lines_) {
      const std::vector<Vec3<>> still = start(l, load, of, factor);
      for (std::size_t p = 0; p < still.size(); ++p)
        most = larger(most, length(still[p] + (l.factor * factor) * load.points[p]));
    }
    return most;
  }

  /// The load factor at which a displacement first passes `limit` [m]; infinity where none does. Between two factors at
  /// which a connector opens or closes displacements are straight, so their lengths are convex: from below the limit
  /// each passes it once at most, |u0 + x u1|^2 = limit^2. Where a connector opens they leap.
  double first(const Motion& load, DeflectionOf of, double limit) const {
    static constexpr double infinite = std::numeric_limits<double>::infinity();
    double least = infinite;
    for (const DeflectionLine& l : lines_) {
      std::vector<double> turns{0.0};
      for (std::size_t c = 0; c < openings_.size(); ++c) {
        const double x = -over(l, load, c, 0.0) / (over(l, load, c, 1.0) - over(l, load, c, 0.0));
        if (x > 0.0 && x < infinite) turns.push_back(x);
      }
      std::sort(turns.begin(), turns.end());
      for (std::size_t k = 0; k < turns.size() && turns[k] < least; ++k) {
        const bool last = k + 1 == turns.size();
        const double a = turns[k], b = last ? infinite : turns[k + 1];
        const std::vector<Vec3<>> still = start(l, load, of, last ? 2.0 * a + 1.0 : 0.5 * (a + b));
        for (std::size_t p = 0; p < still.size(); ++p) {
          const Vec3<> u1 = l.factor * load.points[p];
          const double more = passes(still[p] + a * u1, u1, limit);
          if (a + more <= b) least = smaller(least, more > 0.0 ? a + more : a * (1.0 - before_leap));
        }
      }
    }
    return least;
  }

 private:
  struct Opening {
    std::size_t member = 0;
    std::vector<Vec3<>> points;
  };
  static constexpr double known_to = 1e-9;  // of the greatest axial force
  static constexpr double before_leap = 1e-12;

  template <class Visit>
  void for_each_point(Visit visit) const {
    const std::size_t chords = analysis_->girder().chords.size(), stations = analysis_->girder().stations.size();
    for (std::size_t s = 0; s < stations; ++s)
      for (std::size_t c = 0; c < chords; ++c) {
        visit(s, c, false);
        if (s + 1 < stations) visit(s, c, true);
      }
  }
  Motion none() const {
    const Girder& g = analysis_->girder();
    return {std::vector<Vec3<>>(g.chords.size() * (2 * g.stations.size() - 1)), std::vector<double>(openings_.size()),
            0.0};
  }

  void find_openings() {
    const Girder& g = analysis_->girder();
    if (!(fit_of(g.connector).slack > 0.0)) return;
    const GirderModel& model = analysis_->model();
    for (const std::size_t station : g.splices)
      for (std::size_t chord = 0; chord < g.chords.size(); ++chord) {
        Opening o{model.chord_member(station - 1, chord), {}};
        FrameLoads loads;
        baywork::detail::open_connector(*analysis_, o.member, loads);
        const FrameAnswer answer = analysis_->solver().solve(loads);
        for_each_point([&](std::size_t s, std::size_t c, bool middle) {
          if (!middle) {
            o.points.push_back(answer.displacement(model.chord_node(s, c)));
            return;
          }
          const std::size_t i = model.chord_member(s, c);
          const Member& m = model.frame.members[i];
          const MemberView bar{m,
                               analysis_->axes(i),
                               answer.members[i],
                               {},
                               answer.displacement(m.from),
                               answer.rotation(m.from),
                               answer.displacement(m.to),
                               answer.rotation(m.to)};
          Vec3<> u = bar.displacement(fraction{0.5});
          // the loads stretch the bar itself; it is its connector that opens
          if (i == o.member)
            u -= length(loads.on_nodes[0].force) * analysis_->axes(i).length / (2.0 * m.section.E * m.section.A) *
                 analysis_->axes(i).x;
          o.points.push_back(u);
        });
        openings_.push_back(std::move(o));
      }
  }

  /// Above 0 where a connector pulls; straight in the factor.
  double over(const DeflectionLine& l, const Motion& load, std::size_t c, double factor) const {
    const double f = l.factor * factor;
    return l.placed.pulls[c] + f * load.pulls[c] - known_to * (l.placed.size + f * load.size);
  }
  /// Points without what the load asked for bends elastically; connectors as they are at a factor.
  std::vector<Vec3<>> start(const DeflectionLine& l, const Motion& load, DeflectionOf of, double factor) const {
    std::vector<Vec3<>> out = l.placed.points;
    const bool variable = of == DeflectionOf::variable;
    if (variable)
      for (std::size_t p = 0; p < out.size(); ++p) out[p] -= l.permanent.points[p];
    for (std::size_t c = 0; c < openings_.size(); ++c) {
      const bool before = variable && l.permanent.pulls[c] > known_to * l.permanent.size;
      const double opens = (over(l, load, c, factor) > 0.0 ? 1.0 : 0.0) - (before ? 1.0 : 0.0);
      if (opens == 0.0) continue;
      for (std::size_t p = 0; p < out.size(); ++p) out[p] += opens * openings_[c].points[p];
    }
    return out;
  }
  /// The x >= 0 at which |u0 + x u1| passes a limit; 0 where it is above it.
  static double passes(const Vec3<>& u0, const Vec3<>& u1, double limit) {
    const double a = dot(u1, u1), b = 2.0 * dot(u0, u1), c = dot(u0, u0) - limit * limit;
    if (c > 0.0) return 0.0;
    if (!(a > 0.0)) return std::numeric_limits<double>::infinity();
    const double root = std::sqrt(larger(0.0, b * b - 4.0 * a * c));
    return b > 0.0 ? -2.0 * c / (b + root) : (root - b) / (2.0 * a);
  }

  const Analysis* analysis_ = nullptr;
  std::vector<Opening> openings_;
  std::vector<DeflectionLine> lines_;
};

}  // namespace baywork::rating::detail
