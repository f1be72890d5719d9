// SPDX-License-Identifier: MIT
// Which hoist carries what, and what the chords then carry, over all cases of a study.
#pragma once

#include <cmath>
#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <baywork/response/hoists.hpp>

namespace baywork {

/// One greatest value over all cases, bays and places of a chord.
struct HoistExtreme {
  double value = 0;  ///< N or Nm
  std::size_t bay = 0, in = 0;
};
/// Of one chord: greatest pull and push, and greatest moments up and down (My) and sideways (Mz), as sizes.
struct ChordEnvelope {
  std::string chord;
  HoistExtreme tension{}, compression{}, M_y{}, M_z{};
};

/// Over all cases that hang, exact along every bay.
inline std::vector<ChordEnvelope> chord_envelopes(const HoistStudy& study) {
  const Response& level = study.cases()[0].response;
  std::vector<ChordEnvelope> out;
  for (std::size_t c = 0; c < level.girder().chords.size(); ++c) {
    ChordEnvelope e;
    e.chord = level.girder().chords[c].name;
    for (std::size_t i = 0; i < study.cases().size(); ++i)
      for (std::size_t b = 0; study.cases()[i].hangs && b < level.girder().bays(); ++b) {
        const MemberView bar = study.cases()[i].response.member(level.model().chord_member(b, c));
        const auto take = [&](HoistExtreme& most, double v) {
          if (v > most.value) most = {v, b, i};
        };
        const Extremes N = bar.extremes(0);
        take(e.tension, N.greatest);
        take(e.compression, -N.least);
        take(e.M_y, bar.extremes(4).largest());
        take(e.M_z, bar.extremes(5).largest());
      }
    out.push_back(std::move(e));
  }
  return out;
}

/// The table that answers "which hoist carries what", the cases in which a line is slack, and the chords' envelopes.
inline std::ostream& operator<<(std::ostream& out, const HoistStudy& study) {
  using namespace text;
  const std::vector<HoistCase>& cases = study.cases();
  const auto kN = [](double v) { return right(fixed(v / 1e3, 3), 10); };
  out << "Which hoist carries what (kN; load in all " << fixed(study.total() / 1e3, 3) << " kN)\n"
      << "  hoist   place m     least     level  greatest  share level %  slack if lowered mm  least in; greatest in\n";
  for (std::size_t h = 0; h < study.hoists().size(); ++h) {
    const HoistShare s = study.share(h);
    const double share = study.total() == 0.0 ? 0.0 : 100.0 * s.level / study.total();
    out << right(std::to_string(h + 1), 7) << right(number(study.hoists()[h].x, 5), 10) << kN(s.least) << kN(s.level)
        << kN(s.greatest) << right(fixed(share, 1), 15)
        << right(s.needed             ? "needed"
                 : s.slack_from > 0.0 ? fixed(1e3 * s.slack_from, 2)
                                      : "-",
                 21)
        << "  " << cases[s.least_in].name << "; " << cases[s.greatest_in].name << '\n';
  }
  out << "  the pulls' sum meets the load in every case within " << number(study.imbalance(), 2) << " of it\n";
  for (const HoistCase& c : cases) {
    if (!c.hangs) {
      out << "  " << c.name << ": THE GIRDER DOES NOT HANG\n";
      continue;
    }
    for (std::size_t h = 0; h < study.hoists().size(); ++h) {
      std::size_t n = 0;
      for (const std::size_t l : study.hoists()[h].lines) n += c.slack[l] ? 1U : 0U;
      if (n == 0 || (c.gone && c.hoist == h)) continue;
      out << "  " << c.name << ": hoist " << h + 1
          << (n == study.hoists()[h].lines.size() ? " is slack" : " is slack on one side") << '\n';
    }
  }
  out << "Chords over these cases (kN, kNm)\n  chord                tension  in bay  compression  in bay       M "
         "up/down  in bay      M sideways  in bay\n";
  for (const ChordEnvelope& e : chord_envelopes(study)) {
    out << "  " << left(e.chord, 18);
    std::size_t width = 10;
    for (const HoistExtreme* x : {&e.tension, &e.compression, &e.M_y, &e.M_z}) {
      out << right(fixed(x->value / 1e3, 3), width) << right(std::to_string(x->bay + 1), 8);
      width = x == &e.tension ? 13 : 16;
    }
    out << '\n';
  }
  return out;
}

}  // namespace baywork
