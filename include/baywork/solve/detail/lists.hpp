// SPDX-License-Identifier: MIT
// Many short lists in one piece of memory, and numbers sorted into them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace baywork::detail {

/// Lists of numbers one after the other: those of list i stand from first[i] to first[i + 1].
struct Lists {
  std::vector<std::uint32_t> first{0}, items;

  std::size_t size() const noexcept { return first.size() - 1; }
  std::size_t size(std::size_t i) const { return first[i + 1] - first[i]; }
  const std::uint32_t* begin(std::size_t i) const { return items.data() + first[i]; }
  const std::uint32_t* end(std::size_t i) const { return items.data() + first[i + 1]; }

  /// Sorts 0, 1, 2, ... into `count` lists by key_of(i); items without one (key beyond) are left out. Keeps their order.
  template <class KeyOf>
  static Lists sorted(std::size_t count, std::size_t n, const KeyOf& key_of) {
    Lists l;
    l.first.assign(count + 2, 0);
    for (std::size_t i = 0; i < n; ++i)
      if (const std::size_t k = key_of(i); k < count) ++l.first[k + 2];
    for (std::size_t k = 2; k < count + 2; ++k) l.first[k] += l.first[k - 1];
    l.items.resize(l.first.back());
    for (std::size_t i = 0; i < n; ++i)  // list k fills up from first[k + 1], which ends where list k + 1 begins
      if (const std::size_t k = key_of(i); k < count) l.items[l.first[k + 1]++] = static_cast<std::uint32_t>(i);
    l.first.pop_back();
    return l;
  }
  /// Takes off the lists from number `count` on.
  Lists split(std::size_t count) {
    const std::uint32_t at = first[count];
    Lists rest;
    rest.first.assign(first.begin() + static_cast<std::ptrdiff_t>(count), first.end());
    for (std::uint32_t& i : rest.first) i -= at;
    rest.items.assign(items.begin() + at, items.end());
    first.resize(count + 1);
    items.resize(at);
    return rest;
  }
};

}  // namespace baywork::detail
