// SPDX-License-Identifier: MIT
// Room for words: how wide a text may become at most, and labels that never lie on each other.
#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include <baywork/show/svg.hpp>

namespace baywork::show {

/// Sizes of text in px: titles, words, and small print.
enum class Letters : unsigned char { title, words, small };
inline double size_of(Letters l) { return l == Letters::title ? 15.0 : l == Letters::words ? 12.0 : 10.0; }
inline const char* class_of(Letters l) {
  return l == Letters::title ? "bw-title" : l == Letters::words ? "" : "bw-small";
}

/// An upper bound of a text's width [px]: for each character the greater advance of the two free fonts DejaVu Sans and
/// Liberation Sans (measured, rounded up to 0.01 em); the fonts named in style.hpp are not wider.
inline double width_of(std::string_view s, Letters letters = Letters::words) {
  static constexpr std::array<unsigned char, 95> hundredths{
      32, 41, 46, 84, 64, 96, 78, 28, 40,  40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
      64, 64, 34, 34, 84, 84, 84, 56, 102, 69, 69, 73, 78, 67, 62, 78, 76, 30, 50, 67, 56, 87, 75, 79,
      67, 79, 73, 67, 62, 74, 69, 99, 69,  67, 69, 40, 34, 40, 84, 56, 50, 62, 64, 55, 64, 62, 36, 64,
      64, 28, 28, 58, 28, 98, 64, 62, 64,  64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84};
  double em = 0;
  for (std::size_t i = 0; i < s.size(); ++i) {
    const char c = s[i];
    const auto u = static_cast<unsigned char>(c);
    if (u >= 0x80 && u < 0xC0) continue;  // the rest of a character of several bytes
    const bool minus = s.substr(i, 3) == "\xE2\x88\x92";
    em += minus ? 0.84 : u >= 32 && u < 127 ? hundredths[u - 32U] / 100.0 : 1.03;
  }
  return em * size_of(letters);
}

/// A rectangle on the page.
struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;
  bool meets(const Box& o) const { return left < o.right && o.left < right && top < o.bottom && o.top < bottom; }
  bool within(const Box& o) const { return left >= o.left && right <= o.right && top >= o.top && bottom <= o.bottom; }
};

/// The box of a text by its base line.
inline Box box_of(const Spot& at, std::string_view words, Anchor anchor, Letters letters) {
  const double w = width_of(words, letters), h = size_of(letters);
  const double left = anchor == Anchor::start ? at.x : anchor == Anchor::middle ? at.x - 0.5 * w : at.x - w;
  return {left, at.y - 0.95 * h, left + w, at.y + 0.27 * h};
}

/// Where a label may go; the first free place is taken.
struct LabelPlace {
  Spot at;
  Anchor anchor = Anchor::start;
};

/// Keeps the places of all words on a page. Who comes first is served first: ask in the order of importance.
class Labels {
 public:
  explicit Labels(const Box& page = {}) : page_(page) {}
  void page(const Box& b) { page_ = b; }
  /// Nothing may be written here any more.
  void taken(const Box& b) { taken_.push_back(b); }
  bool free(const Box& b) const {
    if (!b.within(page_)) return false;
    for (const Box& t : taken_)
      if (t.meets(b)) return false;
    return true;
  }
  /// How far down a box must go to lie clear of all words [px].
  double way_below(Box b) const {
    const double start = b.top;
    for (bool met = true; met;) {
      met = false;
      for (const Box& t : taken_) {
        if (!t.meets(b)) continue;
        b.bottom += t.bottom - b.top;
        b.top = t.bottom;
        met = true;
      }
    }
    return b.top - start;
  }
  /// Writes at the first place that is free, with a rim in the page's colour against lines behind it; false, and
  /// nothing written, where none is.
  bool place(Svg& svg, std::string_view words, std::string_view cls, Letters letters,
             std::initializer_list<LabelPlace> places) {
    for (const LabelPlace& p : places) {
      const Box b = box_of(p.at, words, p.anchor, letters);
      if (!free(b)) continue;
      taken({b.left - 5, b.top, b.right + 5, b.bottom});
      const std::string more = letters == Letters::words ? " bw-halo" : std::string(" bw-halo ") + class_of(letters);
      svg.text(p.at, words, std::string(cls) + more, p.anchor);
      return true;
    }
    return false;
  }

 private:
  Box page_;
  std::vector<Box> taken_;
};

/// Every how-manieth of a row of labels `pitch` px apart has room if each is `width` wide: 1, 2, 5, 10, 20, …
inline std::size_t every(double pitch, double width) {
  static constexpr std::array<std::size_t, 3> steps{1, 2, 5};
  std::size_t ten = 1;
  for (int i = 0; i < 9; ++i, ten *= 10)
    for (const std::size_t s : steps)
      if (static_cast<double>(s * ten) * pitch >= width + 4.0) return s * ten;
  return ten;
}

/// Words broken into lines no wider than `width`; a single word may be wider.
inline std::vector<std::string> lines_of(std::string_view words, double width, Letters letters) {
  std::vector<std::string> out;
  std::string line;
  for (std::size_t from = 0; from < words.size();) {
    std::size_t to = words.find(' ', from);
    if (to == std::string_view::npos) to = words.size();
    const std::string word(words.substr(from, to - from));
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (!line.empty() && width_of(longer, letters) > width) {
      out.push_back(line);
      line = word;
    } else {
      line = longer;
    }
    from = to + 1;
  }
  if (!line.empty()) out.push_back(line);
  return out;
}

}  // namespace baywork::show
