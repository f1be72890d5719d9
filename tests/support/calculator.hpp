// SPDX-License-Identifier: MIT
// Recomputes printed formulas as a reader with a calculator would.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <string>
#include <utility>

#include <doctest/doctest.h>

/// Numbers, + - * / ^, sqrt and parentheses. What a number is may be said anew: with units, or nudged.
class Calculator {
 public:
  explicit Calculator(std::string s) : s_(std::move(s)) {}
  virtual ~Calculator() = default;
  double run() {
    const double v = sum();
    skip();
    REQUIRE(i_ == s_.size());
    return v;
  }

 private:
  void skip() {
    while (i_ < s_.size() && s_[i_] == ' ') ++i_;
  }
  bool take(char c) {
    skip();
    if (i_ >= s_.size() || s_[i_] != c) return false;
    ++i_;
    return true;
  }
  double sum() {
    double v = take('-') ? -product() : product();
    for (;;) {
      if (take('+'))
        v += product();
      else if (take('-'))
        v -= product();
      else
        return v;
    }
  }
  double product() {
    double v = power();
    for (;;) {
      if (take('*'))
        v *= power();
      else if (take('/'))
        v /= power();
      else
        return v;
    }
  }
  double power() {
    const double v = atom();
    return take('^') ? std::pow(v, atom()) : v;
  }
  double atom() {
    if (take('(')) {
      const double v = sum();
      REQUIRE(take(')'));
      return v;
    }
    skip();
    if (take("sqrt(")) {
      const double v = std::sqrt(sum());
      REQUIRE(take(')'));
      return v;
    }
    const std::size_t begin = i_;
    char* end = nullptr;
    const double v = std::strtod(s_.c_str() + i_, &end);
    REQUIRE_MESSAGE(end != s_.c_str() + i_, "a number was expected: " << s_.substr(i_));
    i_ = static_cast<std::size_t>(end - s_.c_str());
    return number(v, s_.substr(begin, i_ - begin));
  }
  std::string s_;
  std::size_t i_ = 0;

 protected:
  /// Takes these characters if they come next.
  bool take(const std::string& word) {
    if (s_.compare(i_, word.size(), word) != 0) return false;
    i_ += word.size();
    return true;
  }
  /// The value of a number just read, from its digits.
  virtual double number(double v, const std::string&) { return v; }
};
