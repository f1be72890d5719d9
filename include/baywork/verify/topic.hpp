// SPDX-License-Identifier: MIT
// What a topic of a proof is: made once for a girder, shown every combination, then asked for its rows and words.
#pragma once

#include <concepts>
#include <cstddef>
#include <span>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <baywork/response/response.hpp>
#include <baywork/verify/basis.hpp>
#include <baywork/verify/row.hpp>
#include <baywork/verify/standards.hpp>

namespace baywork::verify::detail {

/// What topics are made from.
struct Given {
  const Analysis& analysis;
  const Basis& basis;
  const std::vector<bool>& not_designed;  ///< members of which nothing is checked
  Standards which = Standards::by_material;
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

inline bool is_idle(const Topic auto& topic) {
  if constexpr (requires { topic.idle(); }) return topic.idle();
  return false;
}

/// A topic that an allowable load can be searched for as well. Its checks take forces on the cuts of members: at their
/// ends as forces(member, at_start), and N in their middle as forces.in_middle(member). From them state(part, forces,
/// out) makes what the checks of one part take. bound(part, states) is at least every utilisation for forces within the
/// hull of those of the states: straight between them.
template <class T>
concept RatedTopic = Topic<T> &&
    requires(const T& t, std::size_t i, const typename T::State& s, std::span<const typename T::State* const> states) {
  { t.parts() } -> std::convertible_to<std::size_t>;
  { t.utilisation(i, s) } -> std::convertible_to<double>;
  { t.bound(i, states) } -> std::convertible_to<double>;
  { t.worst_row(i, s, i) } -> std::same_as<Row>;
};

/// A tuple of topics, each made from the same.
template <class Tuple>
Tuple topics_from(const Given& given) {
  return [&]<std::size_t... i>(std::index_sequence<i...>) { return Tuple{std::tuple_element_t<i, Tuple>(given)...}; }
  (std::make_index_sequence<std::tuple_size_v<Tuple>>{});
}

}  // namespace baywork::verify::detail
