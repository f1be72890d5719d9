// SPDX-License-Identifier: MIT
// A proof over every state of the hoists: each combination with all level, each off level, each slack.
#pragma once

#include <memory>
#include <utility>
#include <vector>

#include <baywork/response/hoists.hpp>
#include <baywork/verify/prove.hpp>

namespace baywork::verify {

/// As by_material, in every combination of the set and, for each, in every state of the hoists; the proof's
/// combinations are named after both. A state that does not hang is a row outside the scope at its hoist, so that the
/// proof does not pass: where no hoist may fail, ask for `each_slack = false`. Slack hoists under the factors of
/// lasting situations are on the safe side: EN 1990 6.4.3.3 would allow those of accidents. The stability of the whole
/// is not asked here: a column's holds and a frame's eigenvalue would take slack lines as holding, and bows are made for
/// girders on all their hoists.
inline Proof on_hoists(const Cases& cases, const CombinationSet& set, const HoistCases& hoists = {},
                       const Basis& basis = {}, Standards which = Standards::by_material) {
  require_method(set, which);
  if (basis.stability.checked)
    fail<BadDescription>("proof on hoists", "the girder as a whole is to be checked for stability",
                         "bars, joints and splices are: prove the stability on all hoists, with verify::by_material");
  detail::Search search(cases.analysis(), basis, which);
  std::vector<Combination> states;
  std::vector<Row> falls;
  const auto lines = std::make_shared<const HoistLines>(cases.analysis());
  std::vector<bool> fallen(lines->hoists().size(), false);
  for (const Combination& c : combinations(set, cases.kinds())) {
    const HoistStudy study(lines, cases.combine(c), hoists);
    for (const HoistCase& state : study.cases()) {
      if (state.hangs)
        search.take(state.response, states.size());
      else if (!fallen[state.hoist]) {
        fallen[state.hoist] = true;
        Row row;
        row.address.station = static_cast<int>(lines->hoists()[state.hoist].station);
        row.combination = states.size();
        falls.push_back(detail::outside(row, state.gone ? "the girder does not hang without the hoist here"
                                                        : "the girder does not hang with the hoist here off level"));
      }
      states.push_back({c.name + ", " + state.name, c.factors});
    }
  }
  return search.proof(std::move(states), words(set) + ", each in every state of the hoists", std::move(falls));
}

}  // namespace baywork::verify
