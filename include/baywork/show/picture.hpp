// SPDX-License-Identifier: MIT
// One picture: title, drawing, and the convention it follows printed below; as a file of its own or within a page.
#pragma once

#include <string>
#include <string_view>
#include <utility>

#include <baywork/core/error.hpp>
#include <baywork/show/labels.hpp>
#include <baywork/show/style.hpp>
#include <baywork/show/svg.hpp>

namespace baywork::show {

/// How a picture is wanted. It is laid out for its width and stays legible there: scaling a wide one down does not.
struct Look {
  double width = 800;      ///< px; 240 to 4000
  std::string id = "bw";   ///< begins every id in it: pictures of one page need different ones; letters, digits, '-'
  bool with_style = true;  ///< false where the page has style_rules() already
};

/// Collects a picture from top to bottom; its height comes of what is in it.
class Picture {
 public:
  static constexpr double margin = 12;

  /// `description` is for those who do not see it: what it shows, and its main numbers.
  Picture(Look look, std::string title, std::string description)
      : look_(std::move(look)), title_(std::move(title)), description_(std::move(description)) {
    if (!(look_.width >= 240.0) || !(look_.width <= 4000.0))
      fail<BadDescription>("picture", "a width of " + baywork::text::number(look_.width) + " px is asked for",
                           "240 to 4000 px are accepted");
    labels.page({2.0, 0.0, look_.width - 2.0, 1e9});
    y = margin;
    paragraph(title_, "bw-ink", Letters::title);
  }

  Svg svg;
  Labels labels;
  double y = 0;  ///< all above is used [px]

  double look_width() const noexcept { return look_.width; }
  double left() const noexcept { return margin; }
  double right() const noexcept { return look_.width - margin; }
  double width() const noexcept { return right() - left(); }

  /// Lines of words over the whole width, below all that is there.
  void paragraph(std::string_view words, std::string_view cls = "bw-quiet", Letters letters = Letters::words) {
    const double h = size_of(letters);
    for (const std::string& line : lines_of(words, width(), letters)) {
      y += 1.3 * h;
      y += labels.way_below(box_of({left(), y - 0.3 * h}, line, Anchor::start, letters));
      const Spot at{left(), y - 0.3 * h};
      labels.taken(box_of(at, line, Anchor::start, letters));
      svg.text(at, line, letters == Letters::words ? std::string(cls) : std::string(cls) + ' ' + class_of(letters));
    }
    y += 0.2 * h;
  }
  void space(double height) { y += height; }

  /// The whole as text; nothing may be added after.
  std::string finished() const {
    const std::string w = px(look_.width), h = px(y + margin);
    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"bw\" role=\"img\" viewBox=\"0 0 " + w + ' ' +
                      h + "\" width=\"" + w + "\" height=\"" + h + "\" aria-labelledby=\"" + look_.id + "-t " +
                      look_.id + "-d\">\n<title id=\"" + look_.id + "-t\">" + escaped(title_) +
                      "</title>\n<desc id=\"" + look_.id + "-d\">" + escaped(description_) + "</desc>\n";
    if (look_.with_style) out += "<style>\n" + style_rules() + "</style>\n";
    out += "<rect class=\"bw-page\" x=\"0\" y=\"0\" width=\"" + w + "\" height=\"" + h + "\"/>\n";
    return out + svg.str() + "</svg>\n";
  }

 private:
  Look look_;
  std::string title_, description_;
};

}  // namespace baywork::show
