// SPDX-License-Identifier: MIT
// One exception type per kind of fault; each says where, what was given and what would be accepted.
#pragma once

#include <stdexcept>
#include <string>
#include <type_traits>
#include <utility>

#include <baywork/core/config.hpp>
#include <baywork/core/scalar.hpp>
#include <baywork/core/text.hpp>

namespace baywork {

/// Base of all faults. what() is "place: problem; accepted".
class Error : public std::runtime_error {
 public:
  Error(std::string place, const std::string& problem, const std::string& accepted)
      : std::runtime_error(place + ": " + problem + (accepted.empty() ? "" : "; " + accepted)), place_(std::move(place)) {}
  /// Where, in girder words ("bay 3, bottom face") or a typed-in frame's own labels.
  const std::string& place() const noexcept { return place_; }

 private:
  std::string place_;
};

/// A description that means nothing or something impossible (NaN, no wall, a load beyond the end).
class BadDescription : public Error {
  using Error::Error;
};
/// The frame, or a part of it, can move without any member resisting.
class UnstableFrame : public Error {
  using Error::Error;
};
/// The certified error stayed above the asked tolerance.
class NotConverged : public Error {
  using Error::Error;
};
/// A clause was asked for something its standard does not cover.
class OutsideScope : public Error {
  using Error::Error;
};

/// Throws an E through the one macro. `accepted` says what would have been taken.
template <class E>
[[noreturn]] void fail(std::string place, const std::string& problem, const std::string& accepted = "") {
  BAYWORK_THROW(E(std::move(place), problem, accepted));
}

namespace require {

namespace detail {
/// A place is given as words, or as a callable that makes them: then a check that is met makes none.
template <class Place>
std::string said(const Place& place) {
  if constexpr (std::is_invocable_v<const Place&>)
    return place();
  else
    return place;
}
}  // namespace detail

/// v must be a finite number; `what` names it ("wall thickness").
template <class S, class Place>
void finite(const S& v, const Place& place, const char* what) {
  if (!is_finite(v))
    fail<BadDescription>(detail::said(place), std::string(what) + " is " + text::number(v), "a finite number is accepted");
}
/// v must be finite and above zero.
template <class S, class Place>
void positive(const S& v, const Place& place, const char* what) {
  if (!is_finite(v) || !(value_of(v) > 0.0))
    fail<BadDescription>(detail::said(place), std::string(what) + " is " + text::number(v), "a finite number above zero is accepted");
}
/// v must be finite and not below zero.
template <class S, class Place>
void not_negative(const S& v, const Place& place, const char* what) {
  if (!is_finite(v) || !(value_of(v) >= 0.0))
    fail<BadDescription>(detail::said(place), std::string(what) + " is " + text::number(v),
                         "a finite number, zero or above, is accepted");
}
/// v must be zero or above; +infinity ("rigid") is allowed.
template <class S, class Place>
void stiffness(const S& v, const Place& place, const char* what) {
  if (!is_infinite(v) && (!is_finite(v) || !(value_of(v) >= 0.0)))
    fail<BadDescription>(detail::said(place), std::string(what) + " is " + text::number(v),
                         "zero (released), a finite stiffness above zero, or infinity (rigid) is accepted");
}

}  // namespace require

}  // namespace baywork
