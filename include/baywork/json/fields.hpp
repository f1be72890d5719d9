// SPDX-License-Identifier: MIT
// What all lists of fields share: the fields of whatever is held, and one of several kinds that a word chooses.
#pragma once

#include <array>
#include <cstddef>
#include <type_traits>
#include <variant>

namespace baywork::detail {

/// How lists and objects come to the fields of what they hold.
struct FieldsOf {
  template <class Io, class T>
  void operator()(Io& io, T& v) const {
    fields(io, v);
  }
};

/// A value before its fields are read; what points at a chord or face points at the first.
template <class T>
T blank() {
  if constexpr (std::is_default_constructible_v<T>)
    return T{};
  else
    return T{std::size_t{0}};
}

/// The word in `key` says which alternative it is; that one's fields follow. `words`: in the order of the alternatives.
template <class Io, std::size_t n, class... T>
void fields_of_kind(Io& io, const char* key, const std::array<const char*, n>& words, std::variant<T...>& v) {
  static_assert(n == sizeof...(T), "a kind has no word and fields in files yet");
  const std::size_t which = io.kind_of(key, words, v.index());
  if (which != v.index()) {
    std::size_t i = 0;
    static_cast<void>(((which == i++ && (v.template emplace<T>(blank<T>()), true)) || ...));
  }
  std::visit([&io](auto& each) { fields(io, each); }, v);
}

}  // namespace baywork::detail
