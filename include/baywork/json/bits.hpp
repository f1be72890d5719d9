// SPDX-License-Identifier: MIT
// The fields of a bar, joint or strength as bytes: equal where all of it is, bit for bit. Much cheaper to compare than
// text.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include <baywork/json/format.hpp>

namespace baywork::detail {

/// Takes the fields that format.hpp names, as the writer does.
class JsonBits {
 public:
  void number(const char*, double v, Rule) { put(bits_of(v)); }
  void words(const char*, const std::string& v) {
    put(v.size());
    out_ += v;
  }
  template <class E>
  void choice(const char*, E v) {
    out_ += static_cast<char>(v);
  }
  bool has(const char*, bool there) {
    flag("", there);
    return there;
  }
  void count(const char*, std::size_t v) { put(v); }
  void count(const char*, int v, int) { put(static_cast<std::uint64_t>(v)); }
  void flag(const char*, bool v) { out_ += v ? '1' : '0'; }
  template <class T>
  void list(const char*, std::vector<T>& v, Amount) {
    put(v.size());
    for (T& each : v) fields(*this, each);
  }
  template <class T>
  void object(const char*, T& v) {
    fields(*this, v);
  }
  void material(const char*, material::Material& v) { fields(*this, v); }
  std::string take() { return std::move(out_); }

 private:
  void put(std::uint64_t v) {
    for (unsigned shift = 0; shift < 64; shift += 8) out_ += static_cast<char>(v >> shift & 0xFFU);
  }
  std::string out_;
};

template <class T>
std::string bits_of_fields(T v) {
  JsonBits bits;
  fields(bits, v);
  return bits.take();
}

}  // namespace baywork::detail
