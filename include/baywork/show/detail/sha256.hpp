// SPDX-License-Identifier: MIT
// SHA-256 of bytes (NIST FIPS 180-4): the digest by which a report names its input.
#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace baywork::show::detail {

/// Takes bytes piece by piece; text() gives 64 hexadecimal digits of all taken so far.
class Sha256 {
 public:
  void take(std::string_view bytes) {
    for (const char c : bytes) {
      block_[size_ % 64] = static_cast<std::uint8_t>(c);
      if (++size_ % 64 == 0) mix();
    }
  }

  std::string text() const {
    Sha256 end = *this;
    const std::uint64_t bits = 8 * size_;
    end.take("\x80");
    while (end.size_ % 64 != 56) end.take(std::string_view("\0", 1));
    for (int i = 7; i >= 0; --i) {
      const char byte = static_cast<char>(bits >> (8 * i) & 255U);
      end.take(std::string_view(&byte, 1));
    }
    std::string out;
    for (const std::uint32_t h : end.state_)
      for (int i = 28; i >= 0; i -= 4) out += "0123456789abcdef"[h >> i & 15U];
    return out;
  }

 private:
  void mix() {
    // FIPS 180-4, 4.2.2: first 32 bits of the fractional parts of the cube roots of the first 64 primes
    static constexpr std::array<std::uint32_t, 64> k{
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};
    std::array<std::uint32_t, 64> w{};
    for (std::size_t i = 0; i < 16; ++i)
      for (std::size_t b = 0; b < 4; ++b) w[i] = w[i] << 8 | block_[4 * i + b];
    for (std::size_t i = 16; i < 64; ++i) {
      const std::uint32_t a = w[i - 15], b = w[i - 2];
      w[i] = w[i - 16] + (std::rotr(a, 7) ^ std::rotr(a, 18) ^ a >> 3) + w[i - 7] +
             (std::rotr(b, 17) ^ std::rotr(b, 19) ^ b >> 10);
    }
    auto [a, b, c, d, e, f, g, h] = state_;
    for (std::size_t i = 0; i < 64; ++i) {
      const std::uint32_t t1 =
          h + (std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25)) + ((e & f) ^ (~e & g)) + k[i] + w[i];
      const std::uint32_t t2 = (std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
      h = g;
      g = f;
      f = e;
      e = d + t1;
      d = c;
      c = b;
      b = a;
      a = t1 + t2;
    }
    const std::array<std::uint32_t, 8> more{a, b, c, d, e, f, g, h};
    for (std::size_t i = 0; i < 8; ++i) state_[i] += more[i];
  }

  // 5.3.3: first 32 bits of the fractional parts of the square roots of the first eight primes
  std::array<std::uint32_t, 8> state_{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                                      0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  std::array<std::uint8_t, 64> block_{};
  std::uint64_t size_ = 0;
};

}  // namespace baywork::show::detail
