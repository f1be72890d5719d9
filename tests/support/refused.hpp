// SPDX-License-Identifier: MIT
// What a call is refused with, and words in a text.
#pragma once

#include <string>

#include <baywork/core/error.hpp>

/// The message of its BadDescription; empty where it throws none.
template <class F>
std::string refused(F f) {
  try {
    f();
  } catch (const baywork::BadDescription& e) {
    return e.what();
  }
  return "";
}

inline bool has(const std::string& in, const std::string& what) { return in.find(what) != std::string::npos; }
