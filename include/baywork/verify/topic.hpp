// SPDX-License-Identifier: MIT
// What a topic of a proof is: made once for a girder, shown every combination, then asked for its rows and words.
#pragma once

#include <concepts>
#include <cstddef>
#include <string>
#include <vector>

#include <baywork/response/response.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/row.hpp>

namespace baywork::verify::detail {

/// What topics are made from.
struct Given {
  const Analysis& analysis;
  const Basis& basis;
  const std::vector<bool>& not_designed;  ///< members of which nothing is checked
};

/// One line each.
struct Words {
  std::vector<std::string> assumptions, not_covered;
};

/// Keeps the worst it has been shown, so that its size does not grow with combinations. A topic that the basis does not
/// ask for does nothing but say what is therefore not covered; with an `idle()` that tells, no combination is made for
/// it.
template <class T>
concept Topic = std::constructible_from<T, const Given&> &&
    requires(T topic, const T& searched, const Response& response, std::vector<Row>& rows, Words& words) {
  topic.search(response, std::size_t{});
  searched.add_rows(rows);
  searched.add_words(words);
};

}  // namespace baywork::verify::detail
