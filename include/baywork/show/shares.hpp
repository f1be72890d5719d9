// SPDX-License-Identifier: MIT
// How the girder carries: each panel's shear by diagonals or by bending, and where the strain energy goes.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/energy_shares.hpp>
#include <baywork/response/panel_table.hpp>
#include <baywork/show/legend.hpp>
#include <baywork/show/words.hpp>

namespace baywork::show {

/// Columns over the panels of each face: the shear in the face's plane, in two parts that add up with their signs.
inline std::string shear_shares(const Response& r, const Look& look = {}) {
  const Girder& g = r.girder();
  std::vector<PanelTable> tables;
  double most = 0;
  std::string where;
  for (std::size_t f = 0; f < g.faces.size(); ++f) {
    if (g.faces[f].panels.empty()) continue;
    tables.push_back(panel_table(r, f));
    for (const PanelRow& row : tables.back().panels)
      for (const double v : {row.diagonals_shear, row.shear - row.diagonals_shear, row.shear})
        if (magnitude(v) > most) {
          most = magnitude(v);
          where = "panel " + std::to_string(&row - tables.back().panels.data() + 1) + " of the " + tables.back().face +
                  " face";
        }
  }
  const std::string greatest =
      most > 0.0 ? "Greatest part " + force_words(most) + ", " + where + "." : "There is no shear.";
  Picture p(look, "How panels carry shear, " + r.name(), greatest);
  const double reach = 34, scale = most > 0.0 ? reach / most : 0.0, per_metre = (p.width() - 28) / g.span();
  const OneUnit unit = force_words.of(most);
  for (const PanelTable& t : tables) {
    p.space(4);
    p.paragraph(capital(t.face) + " face", "bw-ink");
    double up = 0, down = 0;
    for (const PanelRow& row : t.panels) {
      const double a = row.diagonals_shear, b = row.shear - a;
      up = larger(up, scale * (larger(a, 0.0) + larger(b, 0.0)));
      down = larger(down, scale * (larger(-a, 0.0) + larger(-b, 0.0)));
    }
    const double zero = p.y + 16 + up;
    const auto x_of = [&](std::size_t station) { return p.left() + 14 + per_metre * g.stations[station]; };
    p.svg.open("bw-shares", {{"face", t.face}, {"px-per-N", baywork::text::number(scale, 9)}});
    for (std::size_t i = 0; i < t.panels.size(); ++i) {
      const PanelRow& row = t.panels[i];
      const double x0 = x_of(row.first_station) + 1, x1 = x_of(row.last_station) - 1;
      double above = 0, below = 0;
      p.svg.open("", {{"panel", std::to_string(i)}});
      const auto column = [&](double v, bool bending) {
        const double h = scale * v;
        double& from = h > 0.0 ? above : below;
        if (magnitude(h) > 0.05)
          p.svg.rect({x0, zero - larger(from + h, from)}, x1 - x0, magnitude(h), bending ? "bw-bend" : "bw-pull-area",
                     bending ? Hatch::level : Hatch::none);
        from += h;
      };
      column(row.diagonals_shear, false);
      column(row.shear - row.diagonals_shear, true);
      p.svg.close();
    }
    p.svg.close();
    p.svg.line({x_of(0), zero}, {x_of(g.bays()), zero}, "bw-ink");
    std::vector<const PanelRow*> by_size;
    for (const PanelRow& row : t.panels) by_size.push_back(&row);
    std::stable_sort(by_size.begin(), by_size.end(), [](const PanelRow* a, const PanelRow* b) {
      return magnitude(a->shear) > magnitude(b->shear) * (1.0 + 1e-9);
    });
    for (const PanelRow* row : by_size) {
      if (magnitude(row->shear) < 0.02 * most) continue;
      const double a = row->diagonals_shear, b = row->shear - a;
      const double high = scale * (larger(a, 0.0) + larger(b, 0.0)), low = scale * (larger(-a, 0.0) + larger(-b, 0.0));
      const double x = 0.5 * (x_of(row->first_station) + x_of(row->last_station));
      p.labels.place(p.svg, unit(row->shear, most), "bw-ink", Letters::small,
                     {{{x, row->shear > 0.0 ? zero - high - 3 : zero + low + 11}, Anchor::middle}});
    }
    p.y = zero + down + 16;
  }
  detail::legend(
      p, {{"by axial force of diagonals", "bw-pull-area"}, {"by bending of the chords", "bw-bend", Hatch::level}});
  p.paragraph(
      greatest +
      " Panels stand at their places along the girder. Shear in the plane of the face at mid-panel, positive from its "
      "first to its second chord; one scale for all faces; numbers are the sum of both parts" +
      (most > 0.0 ? std::string(" in ") + unit.name : "") + ".");
  return p.finished();
}

/// A bar for each part of the girder, as long as its share of all energy, split by the way it is stored.
inline std::string energy_picture(const Response& r, const Look& look = {}) {
  const EnergyShares shares = energy_shares(r);
  const double all = shares.total.total();
  const auto per_cent = [all](double v) {
    return all > 0.0 ? baywork::text::fixed(100 * v / all, 1) + " %" : std::string("none");
  };
  Picture p(look, "Strain energy, " + r.name(),
            energy_words(all) + " in all; by axial force " + per_cent(shares.total.axial) + ", by bending " +
                per_cent(shares.total.bending) + ", by shear " + per_cent(shares.total.shear) + ", by torsion " +
                per_cent(shares.total.torsion) + ".");
  double most = 0;
  for (const EnergyRow& row : shares.rows) most = larger(most, row.energy.total());
  const double scale = most > 0.0 ? p.width() / most : 0.0;
  for (const EnergyRow& row : shares.rows) {
    const Energy& e = row.energy;
    p.space(2);
    p.paragraph(capital(row.part) + ": " + energy_words(e.total()) + ", " + per_cent(e.total()) + " of all", "bw-ink");
    double x = p.left();
    p.svg.open("bw-energy", {{"part", row.part}, {"px-per-J", baywork::text::number(scale, 9)}});
    const auto piece = [&](double v, const char* cls, Hatch hatch) {
      if (scale * v > 0.05) p.svg.rect({x, p.y}, scale * v, 13, cls, hatch);
      x += scale * v;
    };
    piece(e.axial, "bw-pull-area", Hatch::none);
    piece(e.bending, "bw-bend", Hatch::level);
    piece(e.shear, "bw-push", Hatch::slanted);
    piece(e.torsion, "bw-load", Hatch::crossed);
    p.svg.close();
    p.space(17);
  }
  detail::legend(p, {{"axial force " + per_cent(shares.total.axial), "bw-pull-area"},
                     {"bending " + per_cent(shares.total.bending), "bw-bend", Hatch::level},
                     {"shear " + per_cent(shares.total.shear), "bw-push", Hatch::slanted},
                     {"torsion " + per_cent(shares.total.torsion), "bw-load", Hatch::crossed}});
  p.paragraph("Energy of the bars themselves, " + energy_words(all) +
              " in all; lengths are in proportion, the longest over the whole width.");
  return p.finished();
}

}  // namespace baywork::show
