// SPDX-License-Identifier: MIT
// Axial force against bending moment of every bar, with the curves that the parent metal and the weld zones allow.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <baywork/response/response.hpp>
#include <baywork/show/plot.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/en1993_section.hpp>
#include <baywork/verify/en1999_section.hpp>
#include <baywork/verify/softened_parts.hpp>
#include <baywork/verify/welded_ends.hpp>

namespace baywork::show {

namespace detail {

/// Which moment a plot shows: both together (round sections), or one with the other left out of the curve.
enum class Moment : unsigned char { resultant, about_y, about_z };

/// One section of a bar, and how its metal is softened there; `across`: by a weld across the bar.
struct SectionPoint {
  double N = 0, My = 0, Mz = 0;
  en1999::Softening how = en1999::Softening::none;
  bool across = false;
  bool welded() const { return how != en1999::Softening::none; }
  double of(Moment m) const {
    return m == Moment::resultant ? std::hypot(My, Mz) : magnitude(m == Moment::about_y ? My : Mz);
  }
};

/// The moment at which the greatest utilisation of axial force, bending and both together reaches 1, for an axial force
/// and no shear; by bisection, since all three rise with the moment.
template <class UtilisationOf>
double moment_left(UtilisationOf utilisation, double N, double high) {
  double low = 0;
  if (!(utilisation(N, 0.0) <= 1.0)) return 0.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (utilisation(N, middle) <= 1.0 ? low : high) = middle;
  }
  return low;
}

/// The line of moments that are left, from the greatest compression to the greatest tension.
template <class UtilisationOf>
std::vector<std::pair<double, double>> limit_curve(UtilisationOf utilisation, double N_c, double N_t, double M) {
  std::vector<std::pair<double, double>> out;
  for (int i = -24; i <= 24; ++i) {
    const double N = i < 0 ? N_c * i / 24.0 : N_t * i / 24.0;
    out.emplace_back(N, magnitude(i) == 24 ? 0.0 : moment_left(utilisation, N, 1.5 * M));
  }
  return out;
}

/// Sections of all members of one bar: ends, both sides of where softened metal ends, places of greatest moments.
/// `of(length)`: how metal is softened over so long a part [m].
template <class Of>
std::vector<SectionPoint> section_points(const Response& r, std::size_t bar,
                                         const std::vector<verify::WeldedEnds>& ends, Of of) {
  std::vector<SectionPoint> out;
  for (std::size_t m = 0; m < r.model().bar_index.size(); ++m) {
    if (r.model().bar_index[m] != bar) continue;
    const MemberView v = r.member(m);
    const double l = v.length();
    verify::detail::SoftenedParts parts(ends[m], l, of);
    parts.mark_plain();
    const auto add = [&](double x) {
      const CutForces f = v.forces_at(x, x <= 0.0 ? CutSide::after : CutSide::before);
      SectionPoint p{f.N, f.My, f.Mz, parts.at(x)};
      for (const verify::WeldedPlace& w : ends[m].across)
        p.across = p.across || (p.welded() && magnitude(x - w.at) <= w.reach + 1e-12 * l);
      out.push_back(p);
    };
    add(0.0);
    add(l);
    for (const double x : parts.marks())
      if (x > 0.0 && x < l) add(x);
    for (const std::size_t c : {std::size_t{4}, std::size_t{5}}) {
      const Extremes e = v.extremes(c);
      for (const double x : {e.least_at, e.greatest_at})
        if (x > 0.0 && x < l) add(x);
    }
  }
  return out;
}

}  // namespace detail

/// One plot for each different bar (two, about y and about z, where its section is not round). The response's forces
/// are taken as design forces; curves are those of a cross-section without shear. Buckling is not in them.
inline std::string n_m_points(const Response& r, const verify::Basis& of_proof = {}, const Look& look = {}) {
  using detail::Moment;
  const verify::Basis basis = verify::with_use(of_proof);  // what is worn has less
  const GirderModel& model = r.model();
  const std::vector<verify::WeldedEnds> ends = verify::welded_ends(r.analysis(), basis.choices.heat);
  Picture p(look, "Axial force and bending of all bars, " + r.name(),
            "Points of sections against the curves of the parent metal and of weld zones, " +
                std::to_string(model.bars.size()) + " different bars.");
  bool any_weld = false, any_across = false, any_two = false;
  for (std::size_t b = 0; b < model.bars.size(); ++b) {
    const Bar& bar = model.bars[b];
    const bool round = is_round(bar.section.kind);
    const bool softens = bar.has_strength() && bar.material.family == material::Family::aluminium &&
                         bar.material.buckling_class != material::BucklingClass::none;
    const auto resistance = softens ? verify::aluminium_resistance(bar, basis) : en1999::BarResistance{};
    const std::vector<detail::SectionPoint> points = detail::section_points(r, b, ends, [&](double length) {
      return softens ? en1999::softening(resistance, length) : en1999::Softening::none;
    });
    std::vector<Moment> kinds{Moment::resultant};
    if (!round) kinds = {Moment::about_y, Moment::about_z};
    for (const Moment kind : kinds) {
      p.space(4);
      p.paragraph(capital(bar.text()) + (round                     ? ""
                                         : kind == Moment::about_y ? ", bending about y alone"
                                                                   : ", bending about z alone"),
                  "bw-ink");
      std::vector<std::vector<std::pair<double, double>>> curves;  // of the parent metal, of weld zones
      std::vector<const char*> names;
      std::string trouble;
      const auto forces = [&](double N, double M) {
        verify::SectionForces f;
        f.N = N;
        (kind == Moment::about_z ? f.Mz : f.My) = M;
        return f;
      };
      if (!bar.has_strength()) {
        trouble = "its material has no strength";
      } else if (softens) {
        const en1999::BarResistance& a = resistance;
        using enum en1999::Softening;
        const auto met = [&](en1999::Softening how) {
          return std::any_of(points.begin(), points.end(), [how](const auto& q) { return q.how == how; });
        };
        const bool two = met(within_width) && met(beyond_width);
        any_two = any_two || two;
        for (const en1999::Softening s : {none, within_width, beyond_width}) {
          if (s != none && !met(s)) continue;
          const double omega = en1999::omega_0(a, s);
          names.push_back(s == none           ? "parent metal"
                          : !two              ? "weld zone"
                          : s == within_width ? "short weld zone"
                                              : "long weld zone");
          curves.push_back(detail::limit_curve(
              [&](double N, double M) {
                const verify::SectionForces f = forces(N, M);
                return larger(en1999::bending(a, f, s).utilisation, en1999::bending_and_axial(a, f, s).utilisation);
              },
              omega * a.N_c_Rd, omega * a.N_o_Rd, kind == Moment::about_z ? a.M_z_Rd : a.M_y_Rd));
        }
        if (a.scope != verify::Scope::covered) trouble = verify::reason(a.scope);
      } else if (bar.material.family == material::Family::steel) {
        const en1993::BarResistance s = en1993::resistance(bar.section, bar.material, basis.steel);
        if (s.scope != verify::Scope::covered) trouble = verify::reason(s.scope);
        names.push_back("parent metal");
        curves.push_back(detail::limit_curve(
            [&](double N, double M) {
              const verify::SectionForces f = forces(N, M);
              return larger(en1993::bending(s, f).utilisation, en1993::bending_and_axial(s, f).utilisation);
            },
            s.N_c_Rd, s.N_pl_Rd, kind == Moment::about_z ? s.M_z_Rd : s.M_y_Rd));
      } else {
        trouble = "its material belongs to no standard that is checked";
      }
      if (!trouble.empty()) {
        p.paragraph("Outside the scope: " + trouble + ". No curve is drawn.", "bw-load");
        curves.clear();
      }
      PlotAxis x, y;
      x.words = "axial force, tension positive";
      y.words = kind == Moment::resultant ? "moment" : kind == Moment::about_y ? "moment about y" : "moment about z";
      x.low = x.high = y.low = y.high = 0;
      const auto take = [&](double N, double M) {
        x.low = smaller(x.low, N);
        x.high = larger(x.high, N);
        y.high = larger(y.high, M);
      };
      for (const auto& c : curves)
        for (const auto& [N, M] : c) take(N, M);
      for (const detail::SectionPoint& q : points) take(q.N, q.of(kind));
      x.unit = force_words.of(larger(-x.low, x.high));
      y.unit = moment_words.of(y.high);
      x.finish();
      y.finish();
      const double width = smaller(p.width() - 60, 560.0), height = smaller(0.5 * width, 190.0);
      const Plot plot(p, {p.left() + 46, p.y + 18}, width, height, x, y);
      for (std::size_t k = 0; k < curves.size(); ++k) {
        std::vector<Spot> line;
        for (const auto& [N, M] : curves[k]) line.push_back(plot.spot(N, M));
        p.svg.polyline(line, k == 0 ? "bw-ink bw-bold" : "bw-load bw-bold bw-dash");
        const auto& [N, M] = curves[k][k < 2 ? 36 : 12];  // half of the tension that it has; of compression
        const Spot at = plot.spot(N, M);
        p.labels.place(p.svg, names[k], k == 0 ? "bw-ink" : "bw-load", Letters::small,
                       {{at + Spot{k < 2 ? 8.0 : -8.0, -4}, k < 2 ? Anchor::start : Anchor::end},
                        {at + Spot{k < 2 ? -8.0 : 8.0, 12}, k < 2 ? Anchor::end : Anchor::start}});
      }
      p.svg.open("bw-n-m", {{"bar", std::to_string(b)},
                            {"px-per-N", baywork::text::number(plot.px_per_x(), 9)},
                            {"px-per-Nm", baywork::text::number(plot.px_per_y(), 9)}});
      for (const detail::SectionPoint& q : points) {
        const Spot at = plot.spot(q.N, q.of(kind));
        any_weld = any_weld || (q.welded() && !q.across);
        any_across = any_across || q.across;
        if (q.across)
          p.svg.rect(at - Spot{3.2, 3.2}, 6.4, 6.4, "bw-load");
        else if (q.welded())
          p.svg.circle(at, 3.2, "bw-load");
        else
          p.svg.circle(at, 1.8, "bw-pull-area");
      }
      p.svg.close();
      p.y += height + 52;
    }
  }
  p.paragraph(std::string("Dots: sections of the parent metal, within the full line where they hold.") +
              (any_weld ? " Rings: sections beside welds at joints, within the dashed line where they hold." : "") +
              (any_across ? " Squares: beside welds across a bar, likewise." : "") +
              (any_two ? " Long weld zones soften more of a bar's length than its least width." : "") +
              " Curves: axial force and bending of one cross-section without shear, by EN 1999-1-1 and EN 1993-1-1; "
              "buckling is not in them. Moments of round sections are the resultant of both axes.");
  return p.finished();
}

}  // namespace baywork::show
