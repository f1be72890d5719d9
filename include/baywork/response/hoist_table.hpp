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

namespace detail {

/// What is to be said of a case: which hoists are slack, apart from the one that is taken away.
inline std::string hoist_words(const HoistStudy& study, const HoistCase& c) {
  if (!c.hangs) return "THE GIRDER DOES NOT HANG";
  std::string out;
  for (std::size_t h = 0; h < study.hoists().size(); ++h) {
    std::size_t n = 0;
    for (const std::size_t l : study.hoists()[h].lines) n += c.slack[l] ? 1U : 0U;
    if (n == 0 || (c.gone && c.hoist == h)) continue;
    out += (out.empty() ? "hoist " : ", hoist ") + std::to_string(h + 1) +
           (n == study.hoists()[h].lines.size() ? " is slack" : " is slack on one side");
  }
  return out;
}

}  // namespace detail

/// The table that answers "which hoist carries what", the cases and who is slack in them, and the chords' envelopes.
inline std::ostream& operator<<(std::ostream& out, const HoistStudy& study) {
  using namespace text;
  const auto kN = [](double v) { return right(fixed(v / 1e3, 3), 10); };
  const auto count = [](std::size_t i, std::size_t width) { return right(std::to_string(i + 1), width); };
  out << "Which hoist carries what (kN; load in all " << fixed(study.total() / 1e3, 3) << " kN)\n"
      << "  hoist   place m     level   share %     least  in case  greatest  in case  slack if lowered by mm\n";
  for (std::size_t h = 0; h < study.hoists().size(); ++h) {
    const HoistShare s = study.share(h);
    const double share = study.total() == 0.0 ? 0.0 : 100.0 * s.level / study.total();
    out << count(h, 7) << right(number(study.hoists()[h].x, 5), 10) << kN(s.level) << right(fixed(share, 1), 10)
        << kN(s.least) << count(s.least_in, 9) << kN(s.greatest) << count(s.greatest_in, 9)
        << right(s.needed             ? "it is needed"
                 : s.slack_from > 0.0 ? fixed(1e3 * s.slack_from, 2)
                                      : "-",
                 24)
        << '\n';
  }
  out << "  in every case the pulls' sum meets the load within " << number(study.imbalance(), 2) << " of it\n  cases\n";
  for (std::size_t i = 0; i < study.cases().size(); ++i) {
    const std::string words = detail::hoist_words(study, study.cases()[i]);
    out << count(i, 7) << "  " << study.cases()[i].name << (words.empty() ? "" : ": ") << words << '\n';
  }
  out << "Chords over these cases (kN and kNm; where and in which case)\n";
  for (const ChordEnvelope& e : chord_envelopes(study)) {
    const auto say = [&](const char* what, const HoistExtreme& x) {
      out << what << fixed(x.value / 1e3, 3) << " (bay " << x.bay + 1 << ", " << x.in + 1 << ")";
    };
    out << "  " << left(e.chord + " chord", 20);
    say(" pull ", e.tension);
    say(", push ", e.compression);
    say(", M up and down ", e.M_y);
    say(", sideways ", e.M_z);
    out << '\n';
  }
  return out;
}

}  // namespace baywork
